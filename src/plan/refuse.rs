//! Why a wish can't be met: the arithmetic, and the nearest thing that can be done.

use super::choose::{Entry, FEWEST, Task, Ways};
use super::explain::length;
use crate::report::{Diagnostic, Place};
use crate::units::Units;

/// A part whose counts can't be chosen.
pub(super) struct Impossible<'a> {
    pub(super) task: &'a Task,
    /// Name of the part.
    pub(super) part: &'a str,
    /// Name of the size.
    pub(super) size: &'a str,
    /// Number of its first round.
    pub(super) first: u32,
    /// Width of a stitch, mm.
    pub(super) width: f64,
    /// Units of lengths.
    pub(super) units: Units,
    /// Where the wish stands.
    pub(super) place: Option<Place>,
}

impl Impossible<'_> {
    /// The complaint.
    pub(super) fn diagnostic(&self) -> Diagnostic {
        let target = self.task.bands.last().map_or(0.0, |band| band.0);
        let (fewest, most) = self.task.reached().last().copied().unwrap_or_default();
        let (message, help) = if target + 0.5 < f64::from(FEWEST) {
            self.too_few(target)
        } else if target > f64::from(most) {
            self.out_of_reach(target, most, "grow", &format!("at most {} times", self.task.most))
        } else if target < f64::from(fewest) {
            self.out_of_reach(target, fewest, "shrink", "at least half")
        } else {
            self.unsteady(target)
        };
        Diagnostic::error("unreachable", message).help(help).at(self.place)
    }

    fn too_few(&self, target: f64) -> (String, String) {
        let message = format!(
            "the {} of size {} would end with {target:.0} stitches, and a round has at least {FEWEST}",
            self.part, self.size
        );
        let least = length(f64::from(FEWEST) * self.width, self.units);
        (message, format!("let it end {least} round or more, or close it"))
    }

    fn out_of_reach(&self, target: f64, limit: u32, verb: &str, factor: &str) -> (String, String) {
        let (shaped, from) = (self.shaped(), self.from());
        let rounds = if shaped == 1 { "1 shaped round".to_owned() } else { format!("{shaped} shaped rounds") };
        let message = format!(
            "the {} of size {} can't {verb} to {target:.0} stitches: from {from}, {rounds}, each {factor} the round \
             before, come to {limit}",
            self.part, self.size
        );
        let nearest = length(f64::from(limit) * self.width, self.units);
        let more = if verb == "grow" && self.task.most < 3 { ", let rounds triple" } else { "" };
        let settles = self.task.ways.len() > 1 && self.task.ways.last() == Some(&Ways::Even);
        let fewer = if settles { ", take even rounds from its end" } else { "" };
        let help = format!(
            "the nearest that can be done is {nearest} round ({limit} stitches) by round {}; make the part \
             longer{fewer}{more}, or bring the two circumferences together",
            self.first + self.task.bands.len() as u32 - 1
        );
        (message, help)
    }

    fn unsteady(&self, target: f64) -> (String, String) {
        let rounds = self.task.bands.len();
        let (from, part, size) = (self.from(), self.part, self.size);
        let message = format!(
            "no counts lead the {part} of size {size} from {from} to {target:.0} stitches in {rounds} rounds without \
             shaping against its outline"
        );
        (message, "change the count of the first round, or the circumference at the end".to_owned())
    }

    /// Rounds that may be shaped, the first round of a ring left out.
    fn shaped(&self) -> usize {
        let given = usize::from(matches!(self.task.entry, Entry::First { .. }));
        self.task.ways.iter().skip(given).filter(|ways| **ways != Ways::Even).count()
    }

    fn from(&self) -> String {
        match self.task.entry {
            Entry::First { least, most } if least == most => format!("a first round of {least}"),
            Entry::First { least, most } => format!("a first round of {least} to {most}"),
            Entry::After { count, .. } => format!("{count} stitches"),
        }
    }
}
