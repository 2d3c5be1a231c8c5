//! Side outlines: the circumference wanted at every slant length along the fabric, in millimetres.
//!
//! | shape | circumference c at slant length s, from c₀ where the part begins |
//! | --- | --- |
//! | flat | c₀ ± F s |
//! | flat, with an edge rounded by e | F s up to the radius R − e, then F (R − e + e sin((s − R + e) / e)): a quarter of a circle |
//! | dome | 2π r with r = a sin t, where t solves s = ∫₀ᵗ √(a² cos² + b² sin²): half an ellipse of radius a and rise b; for b = a it is r = a sin(s / a), half a ball |
//! | straight | c₀ |
//! | flare | c₀ + F s sin(angle), the angle from straight down |
//! | taper | from c₀ in a straight line to the circumference at its end, or c₀ ± F s sin(angle) |
//! | sphere | C sin(π s / L) with L = C / 2 from pole to pole |
//! | close | c₀ − F s, down to nothing |
//!
//! F is 2π, or 2n tan(π/n) where shaping is stacked into n corners, as a polygon of n sides has that circumference
//! over the radius to its sides.

use crate::units::{Angle, TURN};

/// An outline, in millimetres.
#[derive(Clone, Debug)]
pub(crate) struct Outline {
    pub(crate) curve: Curve,
    /// Slant length at which the part begins on its curve.
    pub(crate) from: f64,
    /// Slant length of the part.
    pub(crate) length: f64,
    /// Slant length over which it is shaped; the rest is worked even.
    pub(crate) shaped: f64,
    /// True where it ends in a point that is drawn together.
    pub(crate) closes: bool,
    /// True where it is a round that lies flat.
    pub(crate) flat: bool,
}

/// Circumference over slant length.
#[derive(Clone, Debug)]
pub(crate) enum Curve {
    /// A straight line.
    Line {
        /// Circumference at its beginning.
        start: f64,
        /// Change of circumference over slant length.
        slope: f64,
    },
    /// A quarter of an ellipse, from the pole to the equator.
    Ellipse {
        /// Radius at the equator.
        radius: f64,
        /// Arc length at equal steps of the ellipse's parameter.
        arc: Vec<f64>,
    },
    /// A disc that goes over into straight down by a quarter of a circle.
    Rounded {
        /// Radius where it begins to bend.
        disc: f64,
        /// Radius of the bend.
        bend: f64,
        /// Circumference over radius.
        factor: f64,
    },
    /// A great circle from pole to pole.
    Sine {
        /// Circumference at the equator.
        around: f64,
    },
}

/// What an outline starts from. Lengths in millimetres.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Base {
    /// Index of the size.
    pub(crate) size: usize,
    /// Circumference that the rounds before really give, 0 for a ring.
    pub(crate) real: f64,
    /// Circumference that was wished there.
    pub(crate) wished: f64,
    /// Slant length of the even rounds at the end.
    pub(crate) settled: f64,
    /// Circumference over radius of a flat piece.
    pub(crate) factor: f64,
}

impl Outline {
    /// A straight line over the whole of a part.
    pub(crate) fn line(start: f64, slope: f64, length: f64) -> Self {
        let curve = Curve::Line { start, slope };
        Self { curve, from: 0.0, length, shaped: length, closes: false, flat: false }
    }

    /// Circumference at a slant length from the part's beginning.
    pub(crate) fn around(&self, slant: f64) -> f64 {
        let s = slant + self.from;
        match &self.curve {
            Curve::Line { start, slope } => (start + slope * s).max(0.0),
            Curve::Ellipse { radius, arc } => TURN * radius * angle_at(arc, s).sin(),
            Curve::Rounded { disc, bend, factor } if s > *disc => {
                let turn = ((s - disc) / bend.max(f64::MIN_POSITIVE)).clamp(0.0, TURN / 4.0);
                factor * (disc + bend * Angle::from_radians(turn).sin())
            }
            Curve::Rounded { factor, .. } => factor * s.max(0.0),
            Curve::Sine { around } => {
                let turn = (s / (around / 2.0)).clamp(0.0, 1.0);
                around * Angle::from_radians(turn * TURN / 2.0).sin()
            }
        }
    }

    /// True where it is a disc that bends at its edge.
    pub(crate) fn bends(&self) -> bool {
        matches!(self.curve, Curve::Rounded { .. })
    }

    /// True where it still lies flat at a slant length from the part's beginning.
    pub(crate) fn lies_flat(&self, slant: f64) -> bool {
        match &self.curve {
            Curve::Rounded { disc, .. } => slant + self.from <= *disc,
            Curve::Line { .. } | Curve::Ellipse { .. } | Curve::Sine { .. } => self.flat,
        }
    }
}

/// The ellipse's parameter at an arc length, by straight lines between the entries of its table.
fn angle_at(arc: &[f64], s: f64) -> Angle {
    let above = arc.partition_point(|length| *length <= s);
    let (Some(low), Some(high)) = (arc.get(above.saturating_sub(1)), arc.get(above)) else {
        return Angle::from_radians(if above == 0 { 0.0 } else { TURN / 4.0 });
    };
    let share = (s - low) / (high - low).max(f64::MIN_POSITIVE);
    Angle::from_radians((above as f64 - 1.0 + share.clamp(0.0, 1.0)) * TURN / 4.0 / (arc.len() - 1) as f64)
}

/// How far round its curve a part begins that is entered where it is `start` round, as the angle from the pole to
/// there of a curve that is `around` at its equator.
pub(super) fn entered(start: f64, around: f64) -> f64 {
    if around > 0.0 { Angle::of_sine((start / around).clamp(0.0, 1.0)).radians() } else { 0.0 }
}
