//! Stage 2, plan: [`Design`](crate::design::Design) → [`Plan`].
//!
//! Takes a design. Gives, for every size, whole numbers only: rounds, stitches, and what each is worked into. Promises
//! that an independent recount agrees: every round uses up exactly the stitches of the round before. Fails with the
//! arithmetic and the nearest thing that can be done, at the place of the wish that can't be met.

mod add;
mod audit;
mod chained;
mod choose;
mod colours;
mod corners;
mod explain;
mod finish;
mod fit;
mod gauges;
mod half;
mod measures;
mod multiples;
mod notes;
mod openings;
mod outcome;
mod part;
mod phase;
mod profile;
pub mod recount;
mod refuse;
mod shaping;
mod solve;
mod spread;
mod stacking;
mod strays;
mod stretches;
mod texture;
mod yarn;

pub use audit::audit;
pub use gauges::Scale;
pub use measures::{OVER_EARS, TO_BROW};
pub use solve::solve;
pub use spread::spread;
pub use stacking::{Polygon, Stacking, share_stacked};

use crate::craft::{Below, Foundation, Multiple, Piece, Round, Stitch};
use crate::design::{Design, Finish};
use crate::report::Diagnostic;
use crate::units::{Gauge, Mm};

/// A design solved or recounted, for every size.
#[derive(Clone, Debug, PartialEq)]
pub struct Plan {
    /// The design it came from.
    pub design: Design,
    /// One gauge for each stitch the plan uses.
    pub gauges: Vec<(Stitch, Gauge)>,
    /// For every part that has a pattern or a swatch of its own, how its stitches differ from their swatches.
    pub scales: Vec<Option<Scale>>,
    /// The sizes, in the order of the design.
    pub sizes: Vec<SizePlan>,
}

/// The plan of one size.
#[derive(Clone, Debug, PartialEq)]
pub struct SizePlan {
    /// Its name.
    pub name: String,
    /// Head circumference, for what is worn.
    pub head: Option<Mm>,
    /// Circumference that was aimed at.
    pub wanted: Mm,
    /// Circumference that the counts make, at rest, where the size is measured.
    pub finished: Mm,
    /// What the first round is worked into.
    pub foundation: Foundation,
    /// The rounds in working order; `rounds[i].number == i + 1`.
    pub rounds: Vec<Round>,
    /// The parts, which share out the rounds without gaps.
    pub parts: Vec<PartPlan>,
    /// How the last round ends.
    pub finish: Finish,
    /// Shorter stitches worked after the last round of a spiral, not counted.
    pub step_down: Vec<Stitch>,
    /// Yarn by colour.
    pub yarn: Vec<YarnUse>,
    /// Warnings about this size, in a maker's words.
    pub warnings: Vec<String>,
}

/// Rounds in which a part that is worked in a stitch pattern changes its count.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ShapedIn {
    /// The plain rounds of the pattern.
    Plain,
    /// Plain rounds between one time through the pattern and the next.
    Between,
}

/// One part of a size.
#[derive(Clone, Debug, PartialEq)]
pub struct PartPlan {
    /// Its name.
    pub name: String,
    /// Number of its first round.
    pub first: u32,
    /// Number of its last round.
    pub last: u32,
    /// Circumference wanted at its end; for recounted parts what the counts give.
    pub target: Mm,
    /// Circumference at its end at rest.
    pub reached: Mm,
    /// Slant length wanted; nothing for recounted parts.
    pub wanted_length: Option<Mm>,
    /// Slant length its rounds give.
    pub length: Mm,
    /// Stitches a round by which the wanted shape grows, on average over its shaped rounds.
    pub growth_needed: f64,
    /// Stitches a round by which the plan grows, on average over its shaped rounds.
    pub growth_used: f64,
    /// Largest distance of a round from its target circumference, signed.
    pub worst: Mm,
    /// What its last count was asked to be a multiple of.
    pub multiple: Option<Multiple>,
    /// What of its end is folded up.
    pub folded: Option<Folded>,
    /// Where a stitch pattern lets the count change, in a part that is shaped.
    pub shaped_in: Option<ShapedIn>,
    /// Why the counts are as they are, sentence by sentence.
    pub reasons: Vec<String>,
}

/// The end of a hat that is folded up, outward.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Folded {
    /// Number of its first round, at whose foot the fabric folds.
    pub first: u32,
    /// Length of its rounds along the fabric.
    pub length: Mm,
}

impl PartPlan {
    /// How far the end is from its target, in per cent of the target.
    pub fn deviation_percent(&self) -> f64 {
        if self.target.mm() == 0.0 { 0.0 } else { (self.reached / self.target - 1.0) * 100.0 }
    }
}

/// Yarn of one colour.
#[derive(Clone, Debug, PartialEq)]
pub struct YarnUse {
    /// Index into the design's colours; nothing for a single unnamed colour.
    pub colour: Option<usize>,
    /// Grams, allowance included.
    pub grams: f64,
    /// Metres, allowance included.
    pub metres: f64,
    /// Whole balls to buy, where the ball is known.
    pub balls: Option<u32>,
    /// True where no swatch was weighed and the figures come from the yarn weight table.
    pub estimated: bool,
}

impl Plan {
    /// The index of the size that is shown where one is.
    pub fn middle(&self) -> usize {
        self.sizes.len() / 2
    }

    /// The same rounds in our own words, the shortest, where an author wrote them; the author's remarks stay.
    #[must_use]
    pub fn told_anew(mut self) -> Self {
        for round in self.sizes.iter_mut().flat_map(|size| &mut size.rounds) {
            round.said = round.said.take().and_then(|said| said.told_anew());
        }
        self
    }

    /// The index of the size of this name, or a complaint with the sizes that there are.
    pub fn size_named(&self, name: &str) -> Result<usize, Diagnostic> {
        self.sizes.iter().position(|size| size.name == name).ok_or_else(|| {
            let names: Vec<&str> = self.sizes.iter().map(|size| size.name.as_str()).collect();
            let complaint = Diagnostic::error("unknown-size", format!("the design has no size `{name}`"));
            complaint.help(format!("its sizes are {}", names.join(", ")))
        })
    }

    /// The gauge of a stitch; every stitch of the plan has one.
    pub fn gauge(&self, stitch: Stitch) -> Gauge {
        gauges::of(&self.gauges, stitch)
    }

    /// The gauge of a stitch in the part of this index.
    pub fn gauge_in(&self, part: usize, stitch: Stitch) -> Gauge {
        let gauge = self.gauge(stitch);
        self.scales.get(part).copied().flatten().map_or(gauge, |scale| scale.applied(gauge))
    }

    /// The gauge of a round: of its stitch, or of all its stitches where its part has a pattern or a swatch of its own.
    pub fn gauge_of(&self, round: &Round) -> Gauge {
        gauges::of_round(&self.gauges, self.scales.get(round.part).copied().flatten(), round)
    }

    /// The rounds of every size with its name.
    pub fn pieces(&self) -> Vec<(Piece<'_>, &str)> {
        self.sizes.iter().map(|size| (size.piece(), size.name.as_str())).collect()
    }
}

impl SizePlan {
    /// The part of this index in [`Round::part`].
    pub fn part_of(&self, round: &Round) -> &PartPlan {
        &self.parts[round.part]
    }

    /// Its rounds and what they start from.
    pub fn piece(&self) -> Piece<'_> {
        Piece { foundation: self.foundation, rounds: &self.rounds }
    }

    /// What a round of this size is worked into.
    pub fn below(&self, round: &Round) -> Below<'_> {
        self.piece().below(round)
    }

    /// Colours that meet: those of rounds that follow one another, the lower index first, each pair once.
    pub fn meetings(&self) -> Vec<(usize, usize)> {
        let pairs = self.rounds.iter().zip(self.rounds.iter().skip(1));
        let pairs = pairs.filter_map(|(one, next)| one.colour.zip(next.colour));
        let mut pairs: Vec<(usize, usize)> =
            pairs.filter(|(one, next)| one != next).map(|(one, next)| (one.min(next), one.max(next))).collect();
        pairs.sort_unstable();
        pairs.dedup();
        pairs
    }

    /// All stitches of all rounds.
    pub fn stitches(&self) -> u64 {
        self.rounds.iter().map(|round| u64::from(round.stitches())).sum()
    }
}
