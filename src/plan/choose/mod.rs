//! The choice of counts: a shortest path over (round, count, gait), exact for the cost stated here.
//!
//! The rounds of a part are worked in gaits. A gait (Δ, m) changes one round of every m by Δ stitches and leaves the
//! others even; even rounds are the gait (0, 1). Its rate is Δ/m. For a part of R rounds with counts n₁ … n_R and the
//! gaits γ₁, γ₂ … they are worked in, each begun with its shaping, the cost is
//!
//! J = Σₖ ωₖ (dₖ / τₖ)² + λ Σₖ [Δₖ ≠ 0] (a · u(nₖ₋₁, Δₖ) + s · [|Δₖ| > g])
//! \+ Σⱼ (λ · c(γⱼ, γⱼ₊₁) + k(φⱼ₊₁ − φⱼ)) + Σₖ [Δₖ ≠ 0, m > 1] k(φ(Δₖ) − π/2) \
//! \+ λ · o · max(0, |n₁ − F| − ½)
//!
//! - dₖ is the distance in stitches of nₖ from the band of circumferences wanted after round k, τₖ the tolerance there
//!   in stitches, from [`FINEST`] to [`COARSEST`]; ωₖ is 1, and more for the last round of the part: 20 where it
//!   has to fit, 2 where it is the free edge of a brim.
//! - u is how uneven the repeats are: 1 − gcd(n, Δ) / |Δ|, and [`LOPSIDED`] where fewer than three repeats pull the
//!   fabric to one side. It is 0 where the repeats divide the round. Where n corners are stacked they take the place
//!   of Δ.
//! - g is the most a round can change and lie as flat fabric does, and a quarter more.
//! - c is what the change to another gait asks of the maker: [`EVENS`] for going over to even rounds, [`RHYTHM`] for the same repeats
//!   at other intervals, [`RELATED`] where the new number of repeats is one more or less, a divisor or a multiple,
//!   [`CHANGED`] for any other. The first gait of a later part is compared with the last number of repeats before it.
//! - φ = arccos(rate / F) is the angle from the horizontal at which fabric of that rate goes on, F the growth of flat
//!   fabric; k(θ) = κ θ² (1 + κ θ² / K), K = [`KNEE`], weighs the knees of the outline that the counts give. A part that goes on at a known angle pays for
//!   the knee at its end, one whose even rounds lie between shaped ones for each ledge that they make, and one that opens at the middle for the knee at its tip. κ is 0 in a flat part, which is laid flat.
//! - o = [`OPENING`] weighs a first round into a ring, where its count is free and the part opens flat, against the
//!   whole number of stitches nearest to F; a = [`UNEVEN`], s = [`SUDDEN`]; λ is 20 for easy rounds, 5 for balanced,
//!   1 for close fit. A first round into a ring begins the gait (n₁, 1).
//!
//! For several sizes the cost is Σ J + λ · e · (different numbers of repeats in all of them) + Σ t ((dᵢ₊₁ − dᵢ)/τ)², the
//! last sum over neighbouring sizes and the distances of their last rounds: [`joint`].
//!
//! Limits: at most `most` times and at least half the round before; a gait is left for another when its interval is
//! full, for even rounds at any time; in a part whose growth falls every gait has a lower rate than the one before
//! and no larger Δ, in one whose growth rises a higher rate and no smaller Δ, so that shaping that has fallen never rises again; never shaped against the
//! outline; a round that has to be even is; with n corners Δ is a multiple of n once there are 2n stitches to carry
//! them, and growth is from n on, and a first round is where it can be; the last count is one of the multiple asked for, and in a stitch pattern every count is one of its own; m is at most 3 where the outline is curved, and elsewhere the rate lies
//! near the one wanted, or is the next multiple of n above it, and two at every corner have no even rounds after them; the last count is within half a repeat of its target, a repeat being |Δ| of the last shaped
//! round or what the multiple repeats over, or is the nearest whole stitch (a part without any shaping keeps the count it is given); and |dₖ| is at most
//! f τₖ, and no more than the design allows where it says so, for the first row of [`FAR`] that leaves any solution:
//! the order of rates is given up before what the design allows, where it minds more than the edge, and that before it
//! is far (but never with windows of more than [`MOST_PAIRS`]: so far off, so large a piece is refused).
//!
//! The last limit keeps the windows of counts narrow, so that the cost is linear in rounds; [`path`] says what else is
//! left out and why it can't matter.

mod gait;
mod joint;
mod path;
mod windows;

pub(super) use self::joint::{Offer, Picked, choose_all};

use self::path::{Search, Table};
use crate::craft::Multiple;
use crate::design::Preference;
use crate::units::gcd;

/// Cost of repeats that don't divide the round.
pub(super) const UNEVEN: f64 = 2.0;
/// Costs of going over to another gait.
pub(super) const CHANGED: f64 = 2.5;
pub(super) const RELATED: f64 = 1.5;
pub(super) const RHYTHM: f64 = 1.0;
pub(super) const EVENS: f64 = 0.5;
pub(super) const EVENS_FLAT: f64 = 1.5;
/// Cost κ θ² of a knee that is plainly seen, from which on it grows faster.
pub(in crate::plan) const KNEE: f64 = 16.0;
/// Unevenness of one or two repeats.
pub(super) const LOPSIDED: f64 = 2.0;
/// Cost of shaping faster than flat fabric takes.
pub(super) const SUDDEN: f64 = 2.0;
/// Cost of a stitch by which the first round misses the growth of flat fabric.
pub(super) const OPENING: f64 = 8.0;
/// Cost of a number of repeats that any of the sizes needs.
pub(super) const KINDS: f64 = 4.0;
/// Cost of a tolerance by which neighbouring sizes miss their step.
pub(super) const STEPS: f64 = 10.0;
/// Smallest tolerance, in stitches.
pub(super) const FINEST: f64 = 0.4;
/// Largest tolerance, in stitches: beyond it a round of thousands would be off by more than an eye forgives.
pub(super) const COARSEST: f64 = 20.0;
/// Most pairs of counts of neighbouring rounds that are looked at.
pub(super) const MOST_PAIRS: u64 = 300_000_000;
/// Tolerances that a round may be off, whether rates keep their order, and where what the design allows is held, tried
/// one after the other.
pub(super) const FAR: [(f64, bool, Held); 10] = [
    (2.75, true, Held::All),
    (4.0, false, Held::All),
    (4.0, true, Held::Edge),
    (2.0, true, Held::None),
    (4.0, true, Held::None),
    (4.0, false, Held::None),
    (10.0, true, Held::None),
    (10.0, false, Held::None),
    (40.0, false, Held::None),
    (200.0, false, Held::None),
];
/// Fewest stitches that make a round.
pub(super) const FEWEST: u32 = 3;

/// Cost within which a first solution is looked for, in units of λ, with what each round adds, and how often it is doubled.
const FIRST_BOUND: f64 = 3.5;
const BOUND_A_ROUND: f64 = 0.02;
const DOUBLED: u32 = 6;
/// Largest shaping whose unevenness is kept in a table.
const MOST_LOOKED_UP: u32 = 400;

/// What the counts of a part have to satisfy. The vectors hold one entry a round.
#[derive(Clone, Debug)]
pub(super) struct Task {
    /// Least and most stitches wanted, as fractions.
    pub(super) bands: Vec<(f64, f64)>,
    /// Tolerance in stitches.
    pub(super) tolerance: Vec<f64>,
    /// Most stitches off its band that the design allows; without end where it doesn't mind.
    pub(super) allowed: Vec<f64>,
    /// How each round may be shaped.
    pub(super) ways: Vec<Ways>,
    /// How it begins.
    pub(super) entry: Entry,
    /// Most a round may grow by, as a factor.
    pub(super) most: u32,
    /// Corners that shaping is stacked into; 1 for none.
    pub(super) corners: u32,
    /// What the last count is a multiple of, the corners being told apart.
    pub(super) multiple: Multiple,
    /// What every count is a multiple of.
    pub(super) throughout: Multiple,
    /// Weight ω of the distance at the last round.
    pub(super) edge: f64,
    /// Shaping g up to which a round is steady.
    pub(super) steady: f64,
    /// Growth F of flat fabric, stitches a round.
    pub(super) flat: f64,
    /// Weight κ of a knee, per square radian.
    pub(super) knee: f64,
    /// Rate at which the piece goes on after the part, where its shape says so.
    pub(super) leaves: Option<f64>,
    /// True where the part opens flat from its first round.
    pub(super) opens: bool,
    /// True where the outline is curved, so that every rate up to the largest is wanted somewhere.
    pub(super) curved: bool,
    /// How rates follow one another.
    pub(super) order: Order,
    /// Weighs how hard the rounds are to remember.
    pub(super) prefer: Preference,
}

/// Where rounds stray no further than the design allows.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Held {
    /// Everywhere.
    All,
    /// In the last round of the part.
    Edge,
    /// Nowhere.
    None,
}

/// How the rates of gaits follow one another, with their signs.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Order {
    /// Each is lower than the one before.
    Falls,
    /// Each is higher.
    Rises,
    /// In no order.
    Any,
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
    /// Either way, where a new stitch has another width; only in the first round, which is in no gait.
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
    /// The different numbers of repeats, ascending.
    pub(super) words: Vec<u64>,
}

/// How far and in what order counts are looked for.
#[derive(Clone, Debug)]
struct Attempt {
    /// Its place among those that are tried.
    rank: usize,
    order: Order,
    /// Lowest and highest count of every round.
    windows: Vec<(u32, u32)>,
    table: Table,
}

impl Attempt {
    fn new(task: &Task, rank: usize, (far, ordered, held): (f64, bool, Held)) -> Self {
        let windows = task.windows(far, held);
        let widest = windows.iter().map(|(low, high)| high.saturating_sub(*low)).max().unwrap_or(0);
        let order = if ordered { task.order } else { Order::Any };
        Self { rank, order, windows, table: Table::new(widest.min(MOST_LOOKED_UP)) }
    }
}

/// The cheapest counts for every last count, in ascending order; of numbers of repeats `words` only, where there are any.
fn ends(task: &Task, attempt: &Attempt, words: Option<&[u64]>, within: f64) -> Vec<Choice> {
    let Attempt { order, windows, table, .. } = attempt;
    Search { task, windows, bound: within, table, order: *order, words }.run()
}

/// The first attempt that leaves any solution, with the cheapest counts among others.
fn solutions(task: &Task) -> Option<(Attempt, Vec<Choice>)> {
    if !task.can_end() {
        return None;
    }
    for (rank, limits) in FAR.into_iter().enumerate() {
        if limits.2 == Held::All && !limits.1 && !task.strict() {
            continue;
        }
        if pairs(&task.windows(limits.0, limits.2)) > MOST_PAIRS {
            return None;
        }
        let attempt = Attempt::new(task, rank, limits);
        // Little is looked at within a small bound; it doubles until there is a solution.
        let first = task.lambda() * (FIRST_BOUND + task.bands.len() as f64 * BOUND_A_ROUND);
        let bounds = (0..DOUBLED).map(|doubled| first * f64::from(1_u32 << doubled));
        for bound in bounds.chain([f64::INFINITY]) {
            let found = ends(task, &attempt, None, bound);
            if !found.is_empty() {
                return Some((attempt, found));
            }
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
    /// True where the design minds what rounds before the last one come to: shaping then gives up its order for it.
    fn strict(&self) -> bool {
        self.allowed.iter().rev().skip(1).any(|allowed| allowed.is_finite())
    }

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

    /// Cost of shaping a round faster than flat fabric takes.
    fn sudden(&self, change: i64) -> f64 {
        if change.unsigned_abs() as f64 <= self.steady { 0.0 } else { self.lambda() * SUDDEN }
    }

    /// Cost of the first round into a ring.
    fn opening(&self, count: u32) -> f64 {
        if !self.opens {
            return 0.0;
        }
        let off = ((f64::from(count) - self.flat).abs() - 0.5).max(0.0);
        self.lambda() * OPENING * off + self.knee(self.flat, f64::from(count))
    }

    /// The number of repeats that stands before the first gait.
    fn standing(&self) -> u64 {
        match self.entry {
            Entry::First { least, .. } => u64::from(least),
            Entry::After { repeat, .. } => repeat.unsigned_abs(),
        }
    }

    /// Cost of the knee at the end of the part.
    fn leaving(&self, rate: f64) -> f64 {
        self.leaves.map_or(0.0, |leaves| self.knee(rate, leaves))
    }

    /// Tolerance of the last round in stitches.
    fn last_tolerance(&self) -> f64 {
        self.tolerance(self.bands.len().saturating_sub(1))
    }

    /// Distance of a last count from what is wanted, signed.
    fn last_distance(&self, count: u32) -> f64 {
        self.distance(self.bands.len().saturating_sub(1), count)
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
        let repeat = (repeat.unsigned_abs() as f64).max(f64::from(self.step()));
        self.distance(last, count).abs() <= (repeat / 2.0).max(0.5) + 1e-9
    }

    /// Stitches from one last count that fits the multiple to the next, with as many for each corner too.
    fn step(&self) -> u32 {
        let corners = Multiple::new(self.corners, 0);
        Multiple::new(self.multiple.of(), 0).both(corners).map_or(1, Multiple::of) * u32::from(!self.multiple.is_any())
    }

    /// True where a round may have this count, as far as the multiple goes.
    fn is_multiple(&self, round: usize, count: u32) -> bool {
        self.throughout.holds(count) && (round + 1 != self.bands.len() || self.multiple.holds(count))
    }
}

/// Whether a change of a round of `from` stitches is shaped in corners: where there are two stitches for each of them, and
/// where it grows from as many for each, so that a corner that can be even stays so.
fn stacks(from: u32, change: i64, corners: u32) -> bool {
    corners > 1 && (from / 2 >= corners || change > 0 && from.is_multiple_of(corners))
}

/// How uneven the repeats of a shaped round are, from 0 to [`LOPSIDED`].
pub(super) fn unevenness(from: u32, change: i64, corners: u32) -> f64 {
    let repeats = if stacks(from, change, corners) { u64::from(corners) } else { change.unsigned_abs() };
    if repeats < 3 {
        return LOPSIDED;
    }
    1.0 - gcd(u64::from(from), repeats) as f64 / repeats as f64
}

#[cfg(test)]
mod tests;
