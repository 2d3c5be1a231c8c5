//! Rounds that stray further from the shape than the design's tolerance allows: one warning a part.

use super::choose::{Entry, Task};
use super::explain::length;
use super::solve::Solver;
use super::{PartPlan, SizePlan};
use crate::design::{Design, Part, Tolerance};
use crate::report::{Diagnostic, Report};
use crate::units::{EPSILON, Mm, tidy};

/// Largest tolerance that can be written, as a share.
pub(super) const WIDEST: f64 = 0.1;

/// The round of a part that strays furthest over what is allowed.
#[derive(Clone, Copy, Debug)]
pub(super) struct Stray {
    /// The part, by index.
    part: usize,
    /// Number of the round.
    round: u32,
    /// Circumference over what is wanted, mm.
    off: Mm,
    /// Circumference wanted.
    wanted: Mm,
    /// The share of its circumference by which any round of the part strays, and so the tolerance that would do.
    enough: f64,
}

impl Stray {
    fn share(&self) -> f64 {
        (self.off / self.wanted).abs()
    }
}

impl Solver<'_> {
    /// Notes the round of a solved part that strays furthest beyond what is allowed, where any does. Even rounds keep what
    /// they are given, and a first round that the design says is as it says.
    pub(super) fn note_stray(&mut self, task: &Task, counts: &[u32], (first, width): (u32, f64)) {
        let said = matches!(task.entry, Entry::First { least, most } if least == most);
        let beyond = |(round, count): (usize, &u32)| {
            let off = task.distance(round, *count);
            let over = off.abs() / task.allowed.get(round).copied().unwrap_or(f64::INFINITY);
            (over > 1.0 + EPSILON).then_some((round, off, f64::from(*count) - off, over))
        };
        let strays = || counts.iter().enumerate().skip(usize::from(said)).filter_map(beyond);
        let Some((round, off, wanted, _)) = strays().max_by(|a, b| a.3.total_cmp(&b.3)) else { return };
        let enough = strays().map(|(_, off, wanted, _)| off.abs() / wanted).fold(0.0, f64::max);
        let (off, wanted) = (Mm::new(off * width), Mm::new(wanted * width));
        self.strays.push(Stray { part: self.parts.len(), round: first + round as u32, off, wanted, enough });
    }
}

/// Warns of every part of which any size strays, by the size in which it strays most. What the finished measure of a
/// size says already is not said again.
pub(super) fn tell(design: &Design, strays: &[Vec<Stray>], sizes: &mut [SizePlan], report: &mut Report) {
    for (index, part) in design.parts.iter().enumerate() {
        let of = |(size, own): (usize, &Vec<Stray>)| Some((size, *own.iter().find(|stray| stray.part == index)?));
        let found = strays.iter().enumerate().filter_map(of).filter(|(size, stray)| !told(sizes.get(*size), stray));
        let Some((size, stray)) = found.max_by(|a, b| a.1.share().total_cmp(&b.1.share())) else { continue };
        let Some(size) = sizes.get_mut(size) else { continue };
        let (message, help) = stray.sentences(design, part, size);
        size.warnings.push(message.clone());
        report.add(Diagnostic::warning("strays", message).at(part.name.place).help(help));
    }
}

/// True for the edge by which the size is measured.
fn told(size: Option<&SizePlan>, stray: &Stray) -> bool {
    let edge = |size: &SizePlan, part: &PartPlan| part.last == stray.round && part.reached == size.finished;
    size.is_some_and(|size| size.parts.get(stray.part).is_some_and(|part| edge(size, part)))
}

impl Stray {
    fn sentences(&self, design: &Design, part: &Part, size: &SizePlan) -> (String, String) {
        let share = self.share();
        let side = if self.off > Mm::ZERO { "over" } else { "under" };
        let allowed = match design.tolerance {
            Tolerance::Usual => "beyond what edges are usually held to".to_owned(),
            Tolerance::Share(allowed) => format!("where `tolerance` allows {} %", tidy(allowed * 100.0, 2)),
            Tolerance::Length(allowed) => format!("where `tolerance` allows {}", length(allowed.mm(), design.units)),
        };
        let message = format!(
            "round {} of the {} of size {} is {} ({} %) {side} its circumference, {allowed}",
            self.round,
            part.name.value,
            size.name,
            length(self.off.mm().abs(), design.units),
            tidy(share * 100.0, 1),
        );
        // Rounded up, so that what is written is enough.
        let enough = (self.enough * 200.0 + EPSILON).ceil() / 2.0;
        let cure = if enough <= WIDEST * 100.0 {
            format!("no counts of this part stay nearer; `tolerance: {} %` says that this will do", tidy(enough, 1))
        } else {
            "no counts of this part stay nearer; give it another length, or work it in a shorter stitch".to_owned()
        };
        (message, cure)
    }
}

#[cfg(test)]
mod tests {
    use crate::design;
    use crate::plan::{Plan, solve};
    use crate::report::{Diagnostic, Report};

    fn dome(start: &str, tolerance: &str) -> (Plan, Vec<Diagnostic>) {
        let text = format!(
            "title: Cap\nswatch: {{stitch: dc, stitches: 18, rounds: 10, width: 13.6, height: 13.3}}\nease: 0 %\n\
             sizes: {{S: {{head: 50}}, L: {{head: 56}}}}\nwork: spiral\n{tolerance}\n\
             parts:\n  - crown: {{start: {start}, shape: dome}}\n  - side: {{depth: 8}}\n"
        );
        let mut report = Report::new();
        let plan = design::read(&text, &mut report).and_then(|design| solve(&design, &mut report));
        (plan.unwrap_or_else(|| panic!("{report:?}")), report.diagnostics)
    }

    /// The largest distance of a round of the crown from the wanted circumference: as a share, and in stitches.
    fn off(plan: &Plan) -> f64 {
        let crown = plan.sizes.iter().flat_map(|size| size.rounds.iter().take(size.parts[0].last as usize));
        let off = crown.map(|round| {
            let gauge = plan.gauge_of(round);
            let wanted = round.target.unwrap_or_default();
            let off = (gauge.circumference(round.after) - wanted).abs();
            (off / wanted).min(off / gauge.width * 0.02)
        });
        off.fold(0.0, f64::max)
    }

    #[test]
    fn what_is_allowed_is_held_and_changes_the_counts() {
        // Nobody asked: rounds that are easy to remember stray by more than 3 %. Asked for 1 %, or for half a stitch.
        let (easy, told) = dome("ring", "");
        assert!(off(&easy) > 0.03 && told.is_empty(), "{} {told:?}", off(&easy));
        let (held, told) = dome("ring", "tolerance: 1 %");
        assert!(off(&held) <= 0.0101 && told.is_empty(), "{} {told:?}", off(&held));
        let (wide, told) = dome("ring", "tolerance: 10 %");
        assert!(told.is_empty(), "{told:?}");
        let counts = |plan: &Plan| plan.sizes[1].rounds.iter().map(|round| round.after).collect::<Vec<u32>>();
        assert_ne!(counts(&held), counts(&wide));
    }

    #[test]
    fn what_can_not_be_held_is_told_once_a_part_with_a_cure_that_works() {
        // Eight stitches can at most be doubled, and a disc of these needs eleven, and then twenty-two.
        let (plan, told) = dome("ring of 8", "tolerance: 1 %");
        let [one] = told.as_slice() else { panic!("{told:?}") };
        assert_eq!(one.code, "strays");
        assert!(one.message.starts_with("round 2 of the crown of size "), "{}", one.message);
        assert!(one.message.contains(" under its circumference, where `tolerance` allows 1 %"), "{}", one.message);
        assert_eq!(plan.sizes.iter().map(|size| size.warnings.len()).sum::<usize>(), 1);
        let (_, told) = dome("ring of 10", "tolerance: 1 %");
        let help = told[0].help.as_deref().unwrap_or_default();
        let (_, cure) = help.split_once('`').and_then(|(_, rest)| rest.split_once("tolerance: ")).unwrap_or(("", help));
        let cure = cure.split('`').next().unwrap_or_default();
        let (_, told) = dome("ring of 10", &format!("tolerance: {cure}"));
        assert!(told.is_empty(), "{cure}: {told:?}");
    }
}
