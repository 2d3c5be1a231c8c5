//! In how many waves a piece ruffles: what only its mesh in space knows.

use rayon::prelude::*;

use super::Pattern;
use crate::geometry::mesh::{Fabric, Waves, mesh};
use crate::geometry::{FindingKind, SideShape};
use crate::limits;
use crate::plan::{Plan, SizePlan};
use crate::report::{Diagnostic, Place};
use crate::units::tidy;

impl Pattern {
    /// Notes on the waves of every size of which the shape says that it ruffles, sizes that share a sentence in one. Only
    /// these are relaxed in space; nothing is said of one that has more than [`limits::MESH`] stitches, or that gives way
    /// without waves.
    pub fn waves(&self) -> Vec<Diagnostic> {
        let sizes: Vec<(&SizePlan, &SideShape)> =
            self.plan.sizes.iter().zip(&self.shapes).filter(|(size, shape)| ruffles(size, shape)).collect();
        let found: Vec<Option<(Diagnostic, &str)>> = sizes
            .par_iter()
            .map(|(size, shape)| {
                let waves = mesh(&self.plan, size, shape, &Fabric::default()).waves?;
                let place = place_of(&self.plan, size, waves.round);
                Some((told(&waves, shape).at(place), &*size.name))
            })
            .collect();
        let mut notes: Vec<(Diagnostic, Vec<&str>)> = Vec::new();
        for (note, size) in found.into_iter().flatten() {
            match notes.iter_mut().find(|(other, _)| *other == note) {
                Some((_, sizes)) => sizes.push(size),
                None => notes.push((note, vec![size])),
            }
        }
        let all = self.plan.sizes.len();
        let of_sizes = |(note, sizes): (Diagnostic, Vec<&str>)| {
            let of = if sizes.len() == all { String::new() } else { format!("size {}: ", sizes.join(", ")) };
            Diagnostic { message: format!("{of}{}", note.message), ..note }
        };
        notes.into_iter().map(of_sizes).collect()
    }
}

/// True where it is worth relaxing a size to see its waves.
fn ruffles(size: &SizePlan, shape: &SideShape) -> bool {
    let found = shape.findings.iter().any(|finding| finding.kind == FindingKind::Ruffles);
    found && size.stitches() <= limits::MESH as u64
}

/// Where a round stands in the design, or its part.
fn place_of(plan: &Plan, size: &SizePlan, round: u32) -> Option<Place> {
    let round = size.rounds.iter().find(|own| own.number == round)?;
    round.place.or(plan.design.parts.get(round.part)?.name.place)
}

/// The note on waves, as whoever relaxes a piece gives it.
pub fn told(waves: &Waves, shape: &SideShape) -> Diagnostic {
    let meant = shape.findings.iter().any(|found| found.meant && (found.first..=found.last).contains(&waves.round));
    let high = tidy(waves.height.cm(), 1);
    let message = format!("round {} ruffles in {} waves, {high} cm from trough to crest", waves.round, waves.count);
    let help = "that is how the stitches lie in space; `check` says what to change, where it isn't meant";
    let note = Diagnostic::note("waves", message);
    if meant { note } else { note.help(help) }
}
