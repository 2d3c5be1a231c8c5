//! Why the counts are as they are: sentences with the arithmetic in them.

use super::choose::{Entry, Task, unevenness};
use crate::craft::Stitch;
use crate::design::{Preference, Shape};
use crate::units::{Gauge, Units};

/// A gap over the length wanted that is worth a sentence: as a share of a round, and in mm.
const GAP: (f64, f64) = (0.2, 1.0);
/// Share of a gap that another stitch has to close to be named.
const CLOSES: f64 = 0.5;
/// Stitches off its circumference from which a round is said to be off.
const OFF: f64 = 0.05;

/// A length in the units of the design.
pub(super) fn length(mm: f64, units: Units) -> String {
    match units {
        Units::Cm if mm.abs() < 10.0 => format!("{mm:.1} mm"),
        Units::Cm => format!("{:.1} cm", mm / 10.0),
        Units::Inches => format!("{:.2} in", mm / 25.4),
    }
}

/// What a part came to, for its sentences.
pub(super) struct Solved<'a> {
    pub(super) task: &'a Task,
    pub(super) counts: &'a [u32],
    pub(super) shape: &'a Shape,
    pub(super) gauge: Gauge,
    pub(super) stitch: Stitch,
    pub(super) wanted: f64,
    /// Depth that it makes up for, mm; below zero for what the parts before it have too much.
    pub(super) made_up: f64,
    pub(super) first: u32,
    pub(super) growth: (f64, f64),
    pub(super) units: Units,
    pub(super) gauges: &'a [(Stitch, Gauge)],
    /// What each preference comes to, its own first: kinds of rounds, and stitches of the farthest round. Empty where all agree.
    pub(super) views: Vec<(Preference, usize, f64)>,
}

impl Solved<'_> {
    /// Counts of the round before each round; the first round of a piece stands on nothing.
    fn steps(&self) -> impl Iterator<Item = (u32, u32)> + '_ {
        let start = match self.task.entry {
            Entry::First { .. } => None,
            Entry::After { count, .. } => Some(count),
        };
        let before = start.into_iter().chain(self.counts.iter().copied());
        let after = self.counts.iter().copied().skip(usize::from(start.is_none()));
        before.zip(after)
    }

    /// All sentences.
    pub(super) fn reasons(&self) -> Vec<String> {
        let mut reasons = vec![self.growth(), self.rounds()];
        reasons.extend(self.carried());
        reasons.extend(self.gap());
        reasons.extend(self.multiple());
        reasons.push(self.farthest());
        reasons.extend(self.memory());
        reasons.extend(self.preferences());
        reasons
    }

    fn growth(&self) -> String {
        let (needed, used) = self.growth;
        let end = self.task.bands.last().map_or(0.0, |band| band.0);
        let count = self.counts.last().copied().unwrap_or(0);
        if self.shape.form().even {
            return format!("{count} stitches all the way; the circumference asks for {end:.1}");
        }
        format!(
            "The shape changes by {needed:+.2} stitches a round, the plan by {used:+.2}; it ends with {count} stitches \
             where {end:.1} are wanted"
        )
    }

    fn rounds(&self) -> String {
        let rounds = self.counts.len();
        let height = self.gauge.height.mm();
        let given = rounds as f64 * height;
        let over = given - self.wanted;
        let side = if over < 0.0 { "less" } else { "more" };
        let noun = if rounds == 1 { "round" } else { "rounds" };
        format!(
            "{rounds} {noun} of {} give {}, {} {side} than the {} wanted",
            length(height, self.units),
            length(given, self.units),
            length(over.abs(), self.units),
            length(self.wanted, self.units),
        )
    }

    /// Why a part has a round more or less than its own length asks for.
    fn carried(&self) -> Option<String> {
        let own = (self.wanted / self.gauge.height.mm()).round();
        let rounds = self.counts.len() as f64;
        let more = match rounds - own {
            more if more > 0.5 => "more",
            more if more < -0.5 => "fewer",
            _ => return None,
        };
        let side = if self.made_up > 0.0 { "less" } else { "more" };
        let off = length(self.made_up.abs(), self.units);
        let shown = (self.made_up != 0.0).then_some((rounds - own).abs());
        shown.map(|many| {
            let noun = if many < 1.5 { "round" } else { "rounds" };
            format!("{many} {noun} {more} than its own length asks for, as the parts before it come to {off} {side} than wanted")
        })
    }

    /// What multiple the last count is, where one is asked for.
    fn multiple(&self) -> Option<String> {
        let (multiple, count) = (self.task.multiple, self.counts.last()?);
        (!multiple.is_any()).then(|| format!("{count} stitches are a multiple of {multiple}, as is asked for"))
    }

    /// Which stitch would close a gap that a whole number of rounds leaves.
    fn gap(&self) -> Option<String> {
        let height = self.gauge.height.mm();
        let over = self.counts.len() as f64 * height - self.wanted - self.made_up;
        if over.abs() < GAP.0 * height || over.abs() < GAP.1 {
            return None;
        }
        // One round of another stitch in place of one round, or added to them.
        let mut best: Option<(f64, String)> = None;
        for (stitch, gauge) in self.gauges {
            let row = stitch.row();
            if *stitch == self.stitch || !stitch.is_plain_fabric() {
                continue;
            }
            let other = gauge.height.mm();
            let verbs = [(over + other - height, "in place of one round"), (over + other, "added")];
            for (left, verb) in verbs {
                if left.abs() < CLOSES * over.abs() && best.as_ref().is_none_or(|(least, _)| left.abs() < *least) {
                    let left_over = length(left.abs(), self.units);
                    best = Some((left.abs(), format!("one round of {} {verb} would leave {left_over}", row.us.short)));
                }
            }
        }
        best.map(|(_, sentence)| format!("To come nearer: {sentence}"))
    }

    fn farthest(&self) -> String {
        let width = self.gauge.width.mm();
        let far = (0..self.counts.len())
            .map(|round| self.task.distance(round, self.counts.get(round).copied().unwrap_or(0)))
            .enumerate()
            .fold((0, 0.0_f64), |most, new| if new.1.abs() > most.1.abs() { new } else { most });
        if far.1.abs() < OFF {
            return "Every round has the circumference wanted".to_owned();
        }
        let count = self.counts.get(far.0).copied().map_or(1.0, f64::from);
        let percent = far.1 / (count - far.1).max(1.0) * 100.0;
        let off = far.1 * width;
        let (round, side) = (self.first + far.0 as u32, if off < 0.0 { "under" } else { "over" });
        let off = length(off.abs(), self.units);
        format!("Round {round} is farthest from its circumference, {off} {side} it ({percent:+.1} %)")
    }

    /// Whether the repeats of a round from one count to another don't divide it.
    fn is_uneven(&self, (before, after): &(u32, u32)) -> bool {
        unevenness(*before, i64::from(*after) - i64::from(*before), self.task.corners) > 0.0
    }

    /// What the other preferences would cost against this one.
    fn preferences(&self) -> Option<String> {
        let width = self.gauge.width.mm();
        let told = |(prefer, kinds, far): &(Preference, usize, f64)| {
            let name = match prefer {
                Preference::Easy => "easy",
                Preference::Balanced => "balanced",
                Preference::Close => "close",
            };
            let noun = if *kinds == 1 { "kind" } else { "kinds" };
            format!("{name} has {kinds} {noun} of rounds and strays {} at most", length(far * width, self.units))
        };
        let (own, others) = self.views.split_first()?;
        let others: Vec<String> = others.iter().map(told).collect();
        Some(format!("Of the preferences, {} (this one); {}", told(own), others.join("; ")))
    }

    fn memory(&self) -> Option<String> {
        let steps: Vec<(u32, u32)> = self.steps().collect();
        let shaped: Vec<&(u32, u32)> = steps.iter().filter(|(before, after)| before != after).collect();
        if shaped.is_empty() {
            return None;
        }
        let uneven = shaped.iter().filter(|step| self.is_uneven(step)).count();
        let even = steps.len() - shaped.len();
        let split = match uneven {
            0 => "all in repeats that divide the round".to_owned(),
            n => format!("{n} of them in repeats that don't divide the round and are spread"),
        };
        let shaped = shaped.len();
        Some(format!("{shaped} shaped and {even} even rounds, {split}"))
    }
}
