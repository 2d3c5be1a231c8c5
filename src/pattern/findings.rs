//! What the predicted shape has to say, for the report.

use crate::geometry::{Holds, SideShape, Worn};
use crate::plan::{Plan, SizePlan};
use crate::report::{Diagnostic, Place, Report};
use crate::units::tidy;

/// Findings become warnings at the round or the part they are about; sizes that share a sentence share a warning.
pub(super) fn tell(plan: &Plan, shapes: &[SideShape], report: &mut Report) {
    let mut told: Vec<(&str, Option<Place>, Vec<&str>, bool)> = Vec::new();
    for (size, shape) in plan.sizes.iter().zip(shapes) {
        for finding in &shape.findings {
            let round = size.rounds.iter().find(|round| round.number == finding.first);
            let part = plan.design.parts.get(round.map_or(0, |round| round.part));
            let place = round.and_then(|round| round.place).or(part.and_then(|part| part.name.place));
            match told.iter_mut().find(|(sentence, at, ..)| (*sentence, *at) == (&finding.sentence, place)) {
                Some((_, _, sizes, _)) => sizes.push(&size.name),
                None => told.push((&finding.sentence, place, vec![&size.name], finding.meant)),
            }
        }
    }
    for (sentence, place, sizes, meant) in told {
        let of = if sizes.len() == plan.sizes.len() { String::new() } else { format!("size {}: ", sizes.join(", ")) };
        let message = format!("{of}{}", sentence.trim_end_matches('.'));
        let found = if meant { Diagnostic::note("ruffle", message) } else { Diagnostic::warning("shape", message) };
        report.add(found.at(place));
    }
    for (index, (size, shape)) in plan.sizes.iter().zip(shapes).enumerate() {
        let place = plan.design.sizes.get(index).and_then(|size| size.place);
        let fit = shape.worn.as_ref().and_then(|worn| fit(plan, size, worn));
        fit.into_iter().for_each(|fit| report.add(fit.at(place)));
    }
}

/// Ease that holds without pressing (common practice: a close hat is made 5 % smaller than the head).
const SNUG: f64 = 0.95;

/// What a hat that slips or pinches is told, with the count and the ease that hold.
fn fit(plan: &Plan, size: &SizePlan, worn: &Worn) -> Option<Diagnostic> {
    let round = size.rounds.get(worn.tightest)?;
    let (number, percent) = (round.number, tidy((worn.grip * 100.0).abs(), 0));
    let head = format!("a head of {} cm", tidy(worn.head.around().cm(), 1));
    let around = plan.gauge_of(round).circumference(round.after);
    let count = (f64::from(round.after) * (worn.grip + 1.0) * SNUG).round();
    let help = format!(
        "`ease: -5 %` holds without pressing; of written rounds, round {number} then has about {count} stitches where it \
         has {} ({} cm around)",
        round.after,
        tidy(around.cm(), 1)
    );
    let found = match worn.holds() {
        Holds::Slips => {
            let message =
                format!("size {} slips on {head}: no round is less than {percent} % wider than it", size.name);
            Diagnostic::warning("hat-slips", message)
        }
        Holds::Pinches => {
            let message = format!("size {} pinches {head}: round {number} is stretched by {percent} %", size.name);
            Diagnostic::warning("hat-pinches", message)
        }
        Holds::Rests | Holds::Grips => return None,
    };
    Some(found.help(help))
}
