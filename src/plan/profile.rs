//! Side outlines of parts: the circumference wanted at every slant length along the fabric.
//!
//! | shape | circumference c at slant length s, from c₀ where the part begins |
//! | --- | --- |
//! | flat | c₀ ± F s |
//! | dome | 2π r with r = a sin t, where t solves s = ∫₀ᵗ √(a² cos² + b² sin²): half an ellipse of radius a and rise b; for b = a it is r = a sin(s / a), half a ball |
//! | straight | c₀ |
//! | flare | c₀ + F s sin(angle), the angle from straight down |
//! | taper | from c₀ in a straight line to the circumference at its end |
//! | sphere | C sin(π s / L) with L = C / 2 from pole to pole |
//! | close | c₀ − F s, down to nothing |
//!
//! F is 2π, or 2n tan(π/n) where shaping is stacked into n corners, as a polygon of n sides has that circumference
//! over the radius to its sides.

use crate::design::{Shape, Shaping};
use crate::units::{Angle, TURN};

/// Intervals of the dome's arc table; the length is then good to a millionth.
const ARC_STEPS: usize = 512;

/// Most rounds of a flat part for which other numbers of rounds are tried.
const FEW_ROUNDS: f64 = 100.0;

/// Shares of its circumference by which a round within a flat part may lag behind it or lead and still block flat: common
/// practice works six a round at any gauge between 5.8 and 6.2, and what is too wide is taken up more easily.
const LAGS: f64 = 0.035;
const LEADS: f64 = 0.06;
/// The same where the first round is said.
const SAID: f64 = 0.12;

/// An outline, in millimetres.
#[derive(Clone, Debug)]
pub(super) struct Outline {
    curve: Curve,
    /// Slant length at which the part begins on its curve.
    from: f64,
    /// Slant length of the part.
    pub(super) length: f64,
    /// Slant length over which it is shaped; the rest is worked even.
    pub(super) shaped: f64,
    /// True where it ends in a point that is drawn together.
    pub(super) closes: bool,
    /// True where it is a round that lies flat.
    flat: bool,
}

#[derive(Clone, Debug)]
enum Curve {
    Line { start: f64, slope: f64 },
    Ellipse { radius: f64, arc: Vec<f64> },
    Sine { around: f64 },
}

/// What an outline starts from.
#[derive(Clone, Copy, Debug)]
pub(super) struct Base {
    /// Index of the size.
    pub(super) size: usize,
    /// Circumference that the rounds before really give, 0 for a ring.
    pub(super) real: f64,
    /// Circumference that was wished there.
    pub(super) wished: f64,
    /// Slant length of the even rounds at the end.
    pub(super) settled: f64,
    /// Circumference over radius of a flat piece.
    pub(super) factor: f64,
}

/// Circumference over the radius to the edge: 2π for a disc, 2n tan(π/n) for n stacked corners.
pub(super) fn factor(shaping: Shaping) -> f64 {
    match shaping {
        Shaping::Corners(n) if n >= 3 => 2.0 * f64::from(n) * Angle::from_radians(TURN / 2.0 / f64::from(n)).tan(),
        Shaping::Scattered | Shaping::Corners(_) => TURN,
    }
}

impl Outline {
    /// The outline of a shape; nothing where the design lacks a value for the size.
    pub(super) fn new(shape: &Shape, base: Base) -> Option<Self> {
        let at = base.size;
        let line = |start: f64, slope: f64, length: f64| Self {
            curve: Curve::Line { start, slope },
            from: 0.0,
            length,
            shaped: length,
            closes: false,
            flat: false,
        };
        Some(match shape {
            Shape::Flat { around } => {
                let grows = around.get(at)?.mm() - base.real;
                Self {
                    flat: base.factor == TURN,
                    ..line(base.real, base.factor.copysign(grows), grows.abs() / base.factor)
                }
            }
            Shape::Straight { depth } => line(base.wished, 0.0, depth.get(at)?.mm()),
            Shape::Flare { width, angle } => {
                let width = width.get(at)?.mm();
                let flare = line(base.real, base.factor * angle.get(at)?.sin(), width);
                Self { shaped: width - base.settled, ..flare }
            }
            Shape::Taper { depth, around } => {
                let (depth, around) = (depth.get(at)?.mm(), around.get(at)?.mm());
                let shaped = depth - base.settled;
                Self { shaped, ..line(base.real, (around - base.real) / shaped.max(f64::MIN_POSITIVE), depth) }
            }
            Shape::Dome { around, rise } => dome(around.get(at)?.mm(), rise.get(at)?.mm(), base.real),
            Shape::Sphere { around } => sphere(around.get(at)?.mm(), base.real),
            Shape::Close => {
                let close = line(base.real, -base.factor, base.real / base.factor);
                Self { closes: true, ..close }
            }
        })
    }

    /// Circumference at a slant length from the part's beginning.
    pub(super) fn around(&self, slant: f64) -> f64 {
        let s = slant + self.from;
        match &self.curve {
            Curve::Line { start, slope } => (start + slope * s).max(0.0),
            Curve::Ellipse { radius, arc } => TURN * radius * Angle::from_radians(angle_at(arc, s)).sin(),
            Curve::Sine { around } => {
                let turn = (s / (around / 2.0)).clamp(0.0, 1.0);
                around * Angle::from_radians(turn * TURN / 2.0).sin()
            }
        }
    }

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
        let near = move |other: &f64| few && *other >= 1.0 && (other - wanted).abs() <= 1.05;
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
        let settle = if self.shaped < self.length { settle } else { 0 };
        let steps = rounds.saturating_sub(settle) + u32::from(self.closes);
        let band = |k: u32| {
            let k = k.min(steps);
            let shared = self.around(self.shaped * f64::from(k) / f64::from(steps.max(1)));
            let late = self.around((f64::from(k) * height).min(self.shaped));
            if self.flat {
                // A first round that is said sets the rate, where that lies nearly flat.
                let rate = said.map_or(1.0, |said| said / self.around(height)).clamp(1.0 - SAID, 1.0 + SAID);
                return ((1.0 - LAGS).min(rate) * late, (1.0 + LEADS).max(rate) * late);
            }
            if matches!(self.curve, Curve::Line { .. }) && !self.closes {
                return (shared, shared);
            }
            let early = self.around((self.shaped - f64::from(steps - k) * height).max(0.0));
            (shared.min(late).min(early), shared.max(late).max(early))
        };
        let mut bands: Vec<(f64, f64)> = (1..=rounds).map(band).collect();
        if let Some(last) = bands.last_mut() {
            // An edge is one circumference, also a round before the point where a part closes.
            let edge = self.around(self.shaped * f64::from(rounds.min(steps)) / f64::from(steps.max(1)));
            *last = (edge, edge);
        }
        bands
    }
}

/// Half an ellipse from the pole to its equator, entered where it is as wide as the part's beginning.
fn dome(around: f64, rise: f64, start: f64) -> Outline {
    let radius = around / TURN;
    let speed = |step: f64| {
        let t = Angle::from_radians(step * TURN / 4.0 / ARC_STEPS as f64);
        libm::hypot(radius * t.cos(), rise * t.sin())
    };
    let mut arc = vec![0.0];
    let mut length = 0.0;
    for step in 0..ARC_STEPS {
        // Simpson's rule over one interval.
        let at = step as f64;
        let mean = (speed(at) + 4.0 * speed(at + 0.5) + speed(at + 1.0)) / 6.0;
        length += mean * TURN / 4.0 / ARC_STEPS as f64;
        arc.push(length);
    }
    let entered = if around > 0.0 { libm::asin((start / around).clamp(0.0, 1.0)) } else { 0.0 };
    let step = entered / (TURN / 4.0) * ARC_STEPS as f64;
    let from = arc.get(step.floor() as usize).copied().unwrap_or(0.0);
    let length = length - from;
    Outline { curve: Curve::Ellipse { radius, arc }, from, length, shaped: length, closes: false, flat: false }
}

/// A ball, entered where it is as wide as the part's beginning.
fn sphere(around: f64, start: f64) -> Outline {
    let pole_to_pole = around / 2.0;
    let entered = if around > 0.0 { libm::asin((start / around).clamp(0.0, 1.0)) } else { 0.0 };
    let from = entered / (TURN / 2.0) * pole_to_pole;
    let length = pole_to_pole - from;
    Outline { curve: Curve::Sine { around }, from, length, shaped: length, closes: true, flat: false }
}

/// The ellipse's parameter at an arc length, by straight lines between the entries of its table.
fn angle_at(arc: &[f64], s: f64) -> f64 {
    let above = arc.partition_point(|length| *length <= s);
    let (Some(low), Some(high)) = (arc.get(above.saturating_sub(1)), arc.get(above)) else {
        return if above == 0 { 0.0 } else { TURN / 4.0 };
    };
    let share = (s - low) / (high - low).max(f64::MIN_POSITIVE);
    (above as f64 - 1.0 + share.clamp(0.0, 1.0)) * TURN / 4.0 / ARC_STEPS as f64
}
