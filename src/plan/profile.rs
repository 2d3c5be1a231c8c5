//! Side outlines against rounds: how many a part takes, and which circumferences each may have.

use crate::design::Shaping;
use crate::design::shapes::{Curve, Outline};
use crate::units::{Angle, TURN};

/// How far another number of rounds may be from the length, in rounds: a whole round, and its rounding.
const A_ROUND_OFF: f64 = 1.05;
/// Most rounds of a flat part for which other numbers of rounds are tried.
const FEW_ROUNDS: f64 = 100.0;

/// Shares of its circumference by which a round within a flat part may lag behind it or lead and still block flat: common
/// practice works six a round at any gauge between 5.8 and 6.2, and what is too wide is taken up more easily.
const LAGS: f64 = 0.035;
const LEADS: f64 = 0.06;
/// The same where the first round is said.
const SAID: f64 = 0.12;

/// Circumference over the radius to the edge: 2π for a disc, 2n tan(π/n) for n stacked corners.
pub(super) fn factor(shaping: Shaping) -> f64 {
    match shaping {
        Shaping::Corners(n) if n >= 3 => 2.0 * f64::from(n) * Angle::from_radians(TURN / 2.0 / f64::from(n)).tan(),
        Shaping::Scattered | Shaping::Corners(_) => TURN,
    }
}

impl Outline {
    /// How many rounds of this height come nearest to the length; a closing part leaves one round's height to the
    /// yarn that draws the last round together.
    pub(super) fn rounds(&self, height: f64) -> f64 {
        (self.length / height).round() - f64::from(u8::from(self.closes))
    }

    /// Other numbers of rounds for a flat part that is only said by its circumference: those within a round of its
    /// length, where it isn't so large that none of this matters.
    pub(super) fn other_rounds(&self, height: f64) -> impl Iterator<Item = u32> + use<> {
        let (wanted, nearest) = (self.length / height, self.rounds(height));
        let few = self.flat && nearest <= FEW_ROUNDS;
        let near = move |other: &f64| few && *other >= 1.0 && (other - wanted).abs() <= A_ROUND_OFF;
        [nearest - 1.0, nearest + 1.0].into_iter().filter(near).map(|other| other as u32)
    }

    /// How much this number of rounds misses the length, 0 for half a round and 1 for a whole one.
    pub(super) fn misfit(&self, rounds: f64, height: f64) -> f64 {
        (2.0 * (rounds - self.length / height).abs() - 1.0).max(0.0)
    }

    /// Lowest and highest circumference wanted after each of `rounds` rounds, of which the last `settle` are even; `said`
    /// is the circumference of a first round of a given count.
    ///
    /// The length is seldom a whole number of rounds. What is left over may lie anywhere: the wish after round k is
    /// any circumference between c(k S / R), where it is shared among all rounds, c(k h), where it lies at the end, and
    /// c(S − (R − k) h), where it lies at the beginning. Flat fabric wants c(k h), but for what it
    /// gives when it is blocked. At the end of the part all are the same.
    pub(super) fn bands(&self, rounds: u32, settle: u32, height: f64, said: Option<f64>) -> Vec<(f64, f64)> {
        // Only a flare and a taper set length aside for the even rounds at their end.
        let settle = if self.shaped < self.length { settle } else { 0 };
        // Drawing in the last round takes the height of one more, so that a closing part narrows in as many and one.
        let steps = rounds.saturating_sub(settle) + u32::from(self.closes);
        let mut bands: Vec<(f64, f64)> = (1..=rounds).map(|k| self.band(k.min(steps), steps, height, said)).collect();
        if let Some(last) = bands.last_mut() {
            // An edge is one circumference, also a round before the point where a part closes.
            let edge = self.around(self.shaped * f64::from(rounds.min(steps)) / f64::from(steps.max(1)));
            *last = (edge, edge);
        }
        bands
    }

    /// The band after round k of so many over which the shape is worked.
    fn band(&self, k: u32, steps: u32, height: f64, said: Option<f64>) -> (f64, f64) {
        let shared = self.around(self.shaped * f64::from(k) / f64::from(steps.max(1)));
        let late = self.around((f64::from(k) * height).min(self.shaped));
        if self.lies_flat(f64::from(k) * height) {
            // A first round that is said sets the rate, where that lies nearly flat.
            let rate = said.map_or(1.0, |said| said / self.around(height)).clamp(1.0 - SAID, 1.0 + SAID);
            return ((1.0 - LAGS).min(rate) * late, (1.0 + LEADS).max(rate) * late);
        }
        // A straight outline changes by as much in every round: sharing out what is left over costs it nothing, and a
        // band would only let the counts bend it.
        if matches!(self.curve, Curve::Line { .. }) && !self.closes {
            return (shared, shared);
        }
        let early = self.around((self.shaped - f64::from(steps - k) * height).max(0.0));
        (shared.min(late).min(early), shared.max(late).max(early))
    }
}
