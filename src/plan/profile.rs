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
        };
        Some(match shape {
            Shape::Flat { around } => {
                let grows = around.get(at)?.mm() - base.real;
                line(base.real, base.factor.copysign(grows), grows.abs() / base.factor)
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

    /// Lowest and highest circumference wanted after each of `rounds` rounds, of which the last `settle` are even.
    ///
    /// The length is seldom a whole number of rounds. What is left over may lie anywhere: the wish after round k is
    /// any circumference between c(k S / R), where it is shared among all rounds, and c(S − (R − k) h), where it lies
    /// at the beginning. At the end of the part both are the same.
    pub(super) fn bands(&self, rounds: u32, settle: u32, height: f64) -> Vec<(f64, f64)> {
        let settle = if self.shaped < self.length { settle } else { 0 };
        let steps = rounds.saturating_sub(settle) + u32::from(self.closes);
        let band = |k: u32| {
            let k = k.min(steps);
            let shared = self.around(self.shaped * f64::from(k) / f64::from(steps.max(1)));
            let anchored = self.around((self.shaped - f64::from(steps - k) * height).max(0.0));
            (shared.min(anchored), shared.max(anchored))
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
    Outline { curve: Curve::Ellipse { radius, arc }, from, length, shaped: length, closes: false }
}

/// A ball, entered where it is as wide as the part's beginning.
fn sphere(around: f64, start: f64) -> Outline {
    let pole_to_pole = around / 2.0;
    let entered = if around > 0.0 { libm::asin((start / around).clamp(0.0, 1.0)) } else { 0.0 };
    let from = entered / (TURN / 2.0) * pole_to_pole;
    let length = pole_to_pole - from;
    Outline { curve: Curve::Sine { around }, from, length, shaped: length, closes: true }
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
