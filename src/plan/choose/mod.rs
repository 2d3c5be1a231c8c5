//! The choice of counts: a shortest path over (round, count), exact for the cost stated here.
//!
//! For a part of R rounds with counts n₁ … n_R, Δₖ = nₖ − nₖ₋₁, the cost is
//!
//! J = Σₖ ωₖ (dₖ / τₖ)² + λ Σₖ [Δₖ ≠ 0] (a · u(nₖ₋₁, Δₖ) + b · [Δₖ ≠ Δ of the last shaped round] + s · [|Δₖ| > g])
//! \+ λ Σₖ c · [round k is shaped and round k − 1 is not, or the other way round] + λ Σₖ e · v(k, Δₖ)
//!
//! - dₖ is the distance in stitches of nₖ from the band of circumferences wanted after round k, τₖ the tolerance there
//!   in stitches, from [`FINEST`] to [`COARSEST`]; ωₖ is 1, and more for the last round of the part: 10 where it
//!   has to fit, 2 where it is the free edge of a brim. A round's own repeat then changes for balanced rounds when
//!   an edge would else be more than τ off, for easy ones more than 2 τ.
//! - u is how uneven the repeats are: 1 − gcd(n, Δ) / |Δ|, and [`LOPSIDED`] where fewer than three repeats pull the
//!   fabric to one side. It is 0 where the repeats divide the round. Where n corners are stacked they take the place
//!   of Δ.
//! - g is the most a round can change and lie as flat fabric does, and a quarter more.
//! - v is 1 where the size solved before has another Δ in the same round of the part, so that sizes share instructions.
//! - a = [`UNEVEN`], b = [`CHANGED`], s = [`SUDDEN`], e = [`UNLIKE`]; c is 1 in a flat part, where an even round shows,
//!   and next to nothing elsewhere, so that even rounds fall where the shape has them; λ is 20 for easy rounds, 5 for balanced, 1 for
//!   close fit.
//!   A first round into a ring counts as shaped with Δ₁ = n₁; in a later part the first round pays no switch.
//!
//! Limits: at most `most` times and at least half the round before; never shaped against the outline; a round that
//! has to be even is; with n corners Δ is a multiple of n once there are 2n stitches to carry them, and a first
//! round is where it can be; the last count is
//! within half a repeat of its target, a repeat being |Δ| of the last shaped round, or is the nearest whole stitch (a
//! part without any shaping keeps the count it is given); and
//! |dₖ| is at most f τₖ for the first f of [`FAR`] that leaves any solution
//! (but never with windows of more than [`MOST_PAIRS`]: so far off, so large a piece is refused).
//!
//! The last limit keeps the windows of counts narrow, so that the cost is linear in rounds; [`path`] says what else is
//! left out and why it can't matter.

mod path;
mod windows;

use self::path::{Search, Table};
use crate::design::Preference;

/// Cost of repeats that don't divide the round.
pub(super) const UNEVEN: f64 = 2.0;
/// Cost of another number of repeats than before.
pub(super) const CHANGED: f64 = 2.0;
/// Unevenness of one or two repeats.
pub(super) const LOPSIDED: f64 = 2.0;
/// Cost of shaping faster than flat fabric takes.
pub(super) const SUDDEN: f64 = 2.0;
/// Cost of shaping a round otherwise than the size before.
pub(super) const UNLIKE: f64 = 0.25;
/// Smallest tolerance, in stitches.
pub(super) const FINEST: f64 = 0.4;
/// Largest tolerance, in stitches: beyond it a round of thousands would be off by more than an eye forgives.
pub(super) const COARSEST: f64 = 20.0;
/// Most pairs of counts of neighbouring rounds that are looked at.
pub(super) const MOST_PAIRS: u64 = 300_000_000;
/// Tolerances that a round may be off, tried in order.
pub(super) const FAR: [f64; 4] = [3.0, 10.0, 40.0, 200.0];
/// Fewest stitches that make a round.
pub(super) const FEWEST: u32 = 3;

/// Tolerances within which a first solution is looked for.
const NEAR: f64 = 1.0;
/// Largest shaping whose unevenness is kept in a table.
const MOST_LOOKED_UP: u32 = 400;

/// What the counts of a part have to satisfy. The vectors hold one entry a round.
#[derive(Clone, Debug)]
pub(super) struct Task {
    /// Least and most stitches wanted, as fractions.
    pub(super) bands: Vec<(f64, f64)>,
    /// Tolerance in stitches.
    pub(super) tolerance: Vec<f64>,
    /// How each round may be shaped.
    pub(super) ways: Vec<Ways>,
    /// How it begins.
    pub(super) entry: Entry,
    /// Most a round may grow by, as a factor.
    pub(super) most: u32,
    /// Corners that shaping is stacked into; 1 for none.
    pub(super) corners: u32,
    /// Weight ω of the distance at the last round.
    pub(super) edge: f64,
    /// Cost c of going from shaped rounds to even ones or back.
    pub(super) switch: f64,
    /// Shaping g up to which a round is steady.
    pub(super) steady: f64,
    /// Δ of the rounds of the size solved before; nothing beyond its last round.
    pub(super) alike: Vec<i64>,
    /// Weighs how hard the rounds are to remember.
    pub(super) prefer: Preference,
}

/// Ways a round may be shaped.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Ways {
    /// Not at all.
    Even,
    /// It may grow.
    Grow,
    /// It may shrink.
    Shrink,
    /// Either way, where a new stitch has another width.
    Both,
}

/// How a part begins.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Entry {
    /// A first round of any of these counts.
    First {
        /// Fewest.
        least: u32,
        /// Most.
        most: u32,
    },
    /// Worked onto a round.
    After {
        /// Its count.
        count: u32,
        /// Δ of the last shaped round.
        repeat: i64,
    },
}

/// Counts and what they cost.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Choice {
    /// One count a round.
    pub(super) counts: Vec<u32>,
    /// J of the module's description.
    pub(super) cost: f64,
}

/// The cheapest counts, or nothing where no counts keep the limits.
pub(super) fn choose(task: &Task) -> Option<Choice> {
    if !task.can_end() {
        return None;
    }
    let floors: Vec<f64> = (0..task.bands.len()).map(|round| task.floor(round)).collect();
    let mut left: f64 = floors.iter().sum();
    let rest: Vec<f64> = floors
        .iter()
        .map(|floor| {
            left -= floor;
            left.max(0.0)
        })
        .collect();
    let widest = |windows: &[(u32, u32)]| windows.iter().map(|(low, high)| high.saturating_sub(*low)).max();
    for (index, far) in FAR.into_iter().enumerate() {
        let windows = task.windows(far);
        if pairs(&windows) > MOST_PAIRS {
            return None;
        }
        let table = Table::new(widest(&windows).unwrap_or(0).min(MOST_LOOKED_UP));
        let search =
            |windows: &[(u32, u32)], bound: f64| Search { task, windows, rest: &rest, bound, table: &table }.run();
        // A solution nearer to the bands is found faster, and nothing dearer need be looked at then.
        let near = if index == 0 { search(&task.windows(NEAR), f64::INFINITY) } else { None };
        let bound = near.map_or(f64::INFINITY, |near| near.cost);
        if let Some(choice) = search(&windows, bound) {
            return Some(choice);
        }
    }
    None
}

/// Pairs of counts of neighbouring rounds.
fn pairs(windows: &[(u32, u32)]) -> u64 {
    let width = |(low, high): &(u32, u32)| u64::from((high + 1).saturating_sub(*low));
    let counts: Vec<u64> = windows.iter().map(width).collect();
    counts.windows(2).map(|pair| pair.iter().product::<u64>()).fold(0, u64::saturating_add)
}

impl Task {
    /// Weight λ of what is hard to remember.
    pub(super) fn lambda(&self) -> f64 {
        match self.prefer {
            Preference::Easy => 20.0,
            Preference::Balanced => 5.0,
            Preference::Close => 1.0,
        }
    }

    /// Distance of a count from its band in stitches, signed.
    pub(super) fn distance(&self, round: usize, count: u32) -> f64 {
        let (low, high) = self.bands.get(round).copied().unwrap_or_default();
        let n = f64::from(count);
        n - n.clamp(low, high.max(low))
    }

    /// Tolerance of a round in stitches.
    fn tolerance(&self, round: usize) -> f64 {
        self.tolerance.get(round).copied().unwrap_or(FINEST).clamp(FINEST, COARSEST)
    }

    /// Cost of shaping a round otherwise than the size before.
    fn unlike(&self, round: usize, change: i64) -> f64 {
        if self.alike.get(round).is_none_or(|other| *other == change) { 0.0 } else { self.lambda() * UNLIKE }
    }

    /// Cost of shaping a round faster than flat fabric takes.
    fn sudden(&self, change: i64) -> f64 {
        if change.unsigned_abs() as f64 <= self.steady { 0.0 } else { self.lambda() * SUDDEN }
    }

    /// Cost of a stitch squared off the band.
    fn weight(&self, round: usize) -> f64 {
        let edge = if round + 1 == self.bands.len() { self.edge } else { 1.0 };
        let tolerance = self.tolerance(round);
        edge / (tolerance * tolerance)
    }

    fn deviation(&self, round: usize, count: u32) -> f64 {
        let distance = self.distance(round, count);
        self.weight(round) * distance * distance
    }

    /// The least a round can cost.
    fn floor(&self, round: usize) -> f64 {
        let (low, high) = self.bands.get(round).copied().unwrap_or_default();
        let near = [low.floor(), low.ceil(), high.floor()];
        let costs = near.map(|n| self.deviation(round, (n.clamp(0.0, 1e9) as u32).max(FEWEST)));
        costs.into_iter().fold(f64::INFINITY, f64::min)
    }

    fn way(&self, round: usize) -> Ways {
        self.ways.get(round).copied().unwrap_or(Ways::Even)
    }

    /// Fewest and most stitches onto which a round of `from` may be shaped.
    fn limits(&self, round: usize, from: u32) -> (u32, u32) {
        let (half, most) = (from.div_ceil(2), from.saturating_mul(self.most.max(1)));
        match self.way(round) {
            Ways::Even => (from, from),
            Ways::Grow => (from, most),
            Ways::Shrink => (half, from),
            Ways::Both => (half, most),
        }
    }

    /// True where no round may be shaped, so that the count is not this part's to choose.
    fn goes_on_even(&self) -> bool {
        self.ways.iter().all(|ways| *ways == Ways::Even)
    }

    fn edge_fits(&self, count: u32, repeat: i64) -> bool {
        if self.goes_on_even() {
            return true;
        }
        let last = self.bands.len().saturating_sub(1);
        self.distance(last, count).abs() <= (repeat.unsigned_abs() as f64 / 2.0).max(0.5) + 1e-9
    }
}

/// Whether a round of `from` stitches can carry corners.
fn stacks(from: u32, corners: u32) -> bool {
    corners > 1 && from / 2 >= corners
}

/// How uneven the repeats of a shaped round are, from 0 to [`LOPSIDED`].
pub(super) fn unevenness(from: u32, change: i64, corners: u32) -> f64 {
    let repeats = if stacks(from, corners) { u64::from(corners) } else { change.unsigned_abs() };
    if repeats < 3 {
        return LOPSIDED;
    }
    1.0 - gcd(u64::from(from), repeats) as f64 / repeats as f64
}

fn gcd(a: u64, b: u64) -> u64 {
    if b == 0 { a } else { gcd(b, a % b) }
}

#[cfg(test)]
mod tests;
