//! Where the shaping of a round stands against that of the rounds before.
//!
//! Shaping that stands on shaping makes corners: a disc becomes a polygon. Of all ways to turn a balanced round, the
//! one with the least demerit is taken:
//!
//! demerit = 4 · (share of its shaping that stands on the last shaped round's shaping, where that is the round below)
//! \+ Σⱼ 2⁻ʲ · (nearness to the shaping of the j-th shaped round before, 0 halfway between, 1 on top of it)
//! \+ 2 · Σⱼ (the same, but 0 from a quarter between), in a flat piece, in a round so large that corners would show
//! \+ what the longer instruction costs
//!
//! Turning every second round by half a repeat is the trade's way, and makes a polygon of twice as many corners as there
//! are repeats. In a crown nobody sees them; of a mat of sixty rounds they stand out by a centimetre. Where the corners of
//! that polygon would lie further out than its sides by more than [`SHOWS`] stitches, rounds are turned by quarters, which
//! makes four times as many and a quarter of the bulge.
//!
//! A repeat that ends with its shaping costs nothing, one that begins with it little, and a round that begins within a
//! repeat (`sc 4, inc, [sc 9, inc] 5 times, sc 5`) more.

use super::corners::Corners;
use super::shaping::{Pattern, balanced};
use crate::craft::{Op, Stitch};
use crate::design::{Preference, Shaping};
use crate::units::{Angle, EPSILON, TURN};

/// Shaped rounds that are looked back at.
const MEMORY: usize = 3;
/// Demerit of shaping on shaping.
const STACKED: f64 = 4.0;
/// Demerit of a repeat that begins with its shaping, more where that falls on a turning chain that counts.
const BEGINS: f64 = 0.1;
const BEGINS_ON_CHAIN: f64 = 0.4;
/// Demerit of a round that begins within a repeat, and more where that isn't cut into halves.
const SPLIT: f64 = 0.25;
const LOPSIDED: f64 = 0.45;
/// Demerit of shaping in line with that of any round that is looked back at, where corners would show.
const IN_LINE: f64 = 2.0;
/// Stitch widths from which corners show that lie further out than the sides between them.
const SHOWS: f64 = 0.6;

/// How the rounds of a part are shaped.
#[derive(Clone, Copy, Debug)]
pub(super) struct Manner {
    /// Scattered or stacked.
    pub(super) shaping: Shaping,
    /// Weighs the length of the instruction.
    pub(super) prefer: Preference,
    /// True where the piece lies flat, so that corners would show.
    pub(super) flat: bool,
    /// True where a turning chain stands for the first stitch.
    pub(super) chain_counts: bool,
}

impl Manner {
    /// Demerit of beginning a round this far into a repeat of so many operations.
    fn price(&self, offset: u32, repeat: u32) -> f64 {
        let dear = match self.prefer {
            Preference::Easy => 2.0,
            Preference::Balanced => 1.0,
            Preference::Close => 0.5,
        };
        let price = match offset {
            0 => 0.0,
            1 if self.chain_counts => BEGINS_ON_CHAIN,
            1 => BEGINS,
            // `[2, inc, 2]` before `[1, inc, 3]`: as many plain stitches before the shaping as after it, or one more.
            _ if (2 * (offset - 1)).abs_diff(repeat.saturating_sub(1)) <= 1 => SPLIT,
            _ => LOPSIDED,
        };
        dear * price
    }
}

/// What is remembered of the rounds worked so far.
#[derive(Clone, Debug, Default)]
pub(super) struct Memory {
    /// Which stitches of the last round a shaping operation made.
    made: Vec<bool>,
    /// Places of the shaping of the last shaped rounds, latest first, as shares of the round.
    turns: Vec<Vec<f64>>,
    corners: Corners,
}

impl Memory {
    /// Forgets everything, for rounds that were not solved.
    pub(super) fn forget(&mut self) {
        *self = Self::default();
    }

    /// The operations of a round from one count to another.
    pub(super) fn round(&mut self, stitch: Stitch, before: u32, after: u32, manner: &Manner) -> Vec<Op> {
        if before == after {
            // An even round covers the shaping below it: what comes next may stand anywhere. Its turns are remembered,
            // as shaping a round apart still shows as a line.
            self.made = vec![false; after as usize];
            return (0..after).map(|_| Op::plain(stitch)).collect();
        }
        // Corners that can't be, near the middle or with an odd change, are left to be spread, and begin anew after it.
        let cornered = match manner.shaping {
            Shaping::Corners(n) => self.corners.pattern(before, after, n),
            Shaping::Scattered => None,
        };
        let pattern = cornered.unwrap_or_else(|| {
            self.corners.clear();
            self.scattered(before, after, manner)
        });
        self.made = pattern.made();
        self.turns.insert(0, pattern.turns());
        self.turns.truncate(MEMORY);
        pattern.ops(stitch)
    }

    /// The balanced pattern that stacks least.
    fn scattered(&self, before: u32, after: u32, manner: &Manner) -> Pattern {
        let (length, change) = (before.min(after), after.abs_diff(before));
        let even = balanced(before, after);
        // Shaping in every stitch can't be turned.
        if change >= length {
            return even;
        }
        let mut best = (f64::INFINITY, 0);
        // Runs differ by at most one, so that turning by more than the longest comes to a turn that was tried.
        let repeat = length.div_ceil(change.max(1));
        for offset in 0..repeat {
            let demerit = self.demerit(&even, offset, manner.flat) + manner.price(offset, repeat);
            // The first of equals, which begins soonest: rounding must not choose between them.
            if demerit + EPSILON < best.0 {
                best = (demerit, offset);
            }
        }
        even.turned(best.1)
    }

    fn demerit(&self, pattern: &Pattern, offset: u32, flat: bool) -> f64 {
        let turned = pattern.turned(offset);
        let taken = turned.taken();
        let on = taken.iter().filter(|stitch| self.made.get(**stitch as usize).is_some_and(|made| *made)).count();
        let mut demerit = STACKED * on as f64 / taken.len().max(1) as f64;
        let (turns, mut weight) = (turned.turns(), 1.0);
        let in_line = if flat && bulge(turned.length, turns.len()) > SHOWS { IN_LINE } else { 0.0 };
        for before in &self.turns {
            weight /= 2.0;
            demerit += weight * nearness(&turns, before, 0.5) + in_line * nearness(&turns, before, 0.25);
        }
        demerit
    }
}

/// By how many stitch widths the corners lie further out than the sides of a round of so many stitches, where every second
/// round of so many repeats is turned by half of one.
fn bulge(length: u32, repeats: usize) -> f64 {
    let half = Angle::from_radians(TURN / 4.0 / repeats.max(1) as f64);
    f64::from(length) / TURN * (1.0 - half.cos())
}

/// Mean nearness of some turns to others, 1 where they fall together, 0 where they lie `reach` of the way from one to the
/// next of them or further.
fn nearness(turns: &[f64], others: &[f64], reach: f64) -> f64 {
    if turns.is_empty() || others.is_empty() {
        return 0.0;
    }
    let spacing = reach / others.len() as f64;
    let near = |turn: &f64| (1.0 - gap_to_nearest(*turn, others) / spacing).max(0.0);
    turns.iter().map(near).sum::<f64>() / turns.len() as f64
}

/// Distance from a turn to the nearest of some others in ascending order, the round closing on itself.
fn gap_to_nearest(turn: f64, others: &[f64]) -> f64 {
    let above = others.partition_point(|other| *other < turn);
    // Past the last comes the first, and before the first the last.
    let high = others.get(above).or(others.first()).copied().unwrap_or(0.0);
    let low = above.checked_sub(1).and_then(|at| others.get(at)).or(others.last()).copied().unwrap_or(0.0);
    apart(high, turn).min(apart(low, turn))
}

/// Distance of two turns, the shorter way round.
fn apart(one: f64, other: f64) -> f64 {
    let way = (one - other).abs();
    way.min(1.0 - way)
}
