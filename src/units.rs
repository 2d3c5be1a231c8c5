//! Lengths, angles and gauge: the only trigonometry and the only epsilons of the crate.
//!
//! Inside the library a length is always millimetres in [`Mm`]; centimetres, inches and points are made and read at
//! the edges only. Sines and cosines come from `libm`, so that the same input gives the same bytes on every machine.

#![allow(clippy::disallowed_methods, reason = "here libm's functions are given to all other rooms")]

use std::iter::Sum;
use std::ops::{Add, AddAssign, Div, Mul, Neg, Sub, SubAssign};

/// Two lengths or numbers nearer than this are the same, in millimetres or in the unit at hand.
pub const EPSILON: f64 = 1e-9;

/// Lengths nearer than this are the same length on paper, in millimetres or stitch units: the same lengths added up in
/// another order differ by less. Nothing shorter is divided by.
pub const TOLERANCE: f64 = 1e-6;

/// One turn, in radians.
pub const TURN: f64 = core::f64::consts::TAU;

/// A length in millimetres.
#[derive(Clone, Copy, Debug, Default, PartialEq, PartialOrd)]
pub struct Mm(f64);

impl Mm {
    /// No length.
    pub const ZERO: Self = Self(0.0);

    /// From millimetres.
    pub const fn new(mm: f64) -> Self {
        Self(mm)
    }

    /// From centimetres.
    pub const fn from_cm(cm: f64) -> Self {
        Self(cm * 10.0)
    }

    /// From inches of 25.4 mm.
    pub const fn from_inches(inches: f64) -> Self {
        Self(inches * 25.4)
    }

    /// From PostScript points, 72 to the inch.
    pub const fn from_points(points: f64) -> Self {
        Self(points * 25.4 / 72.0)
    }

    /// As bare millimetres.
    pub const fn mm(self) -> f64 {
        self.0
    }

    /// As centimetres.
    pub const fn cm(self) -> f64 {
        self.0 / 10.0
    }

    /// As inches.
    pub const fn inches(self) -> f64 {
        self.0 / 25.4
    }

    /// As PostScript points.
    pub const fn points(self) -> f64 {
        self.0 * 72.0 / 25.4
    }

    /// The length without its sign.
    pub const fn abs(self) -> Self {
        Self(self.0.abs())
    }

    /// The larger of two.
    pub const fn max(self, other: Self) -> Self {
        Self(self.0.max(other.0))
    }

    /// The smaller of two.
    pub const fn min(self, other: Self) -> Self {
        Self(self.0.min(other.0))
    }
}

impl Add for Mm {
    type Output = Self;
    fn add(self, other: Self) -> Self {
        Self(self.0 + other.0)
    }
}

impl AddAssign for Mm {
    fn add_assign(&mut self, other: Self) {
        self.0 += other.0;
    }
}

impl Sub for Mm {
    type Output = Self;
    fn sub(self, other: Self) -> Self {
        Self(self.0 - other.0)
    }
}

impl SubAssign for Mm {
    fn sub_assign(&mut self, other: Self) {
        self.0 -= other.0;
    }
}

impl Mul<f64> for Mm {
    type Output = Self;
    fn mul(self, by: f64) -> Self {
        Self(self.0 * by)
    }
}

impl Div<f64> for Mm {
    type Output = Self;
    fn div(self, by: f64) -> Self {
        Self(self.0 / by)
    }
}

impl Div for Mm {
    type Output = f64;
    fn div(self, other: Self) -> f64 {
        self.0 / other.0
    }
}

impl Neg for Mm {
    type Output = Self;
    fn neg(self) -> Self {
        Self(-self.0)
    }
}

impl Sum for Mm {
    fn sum<I: Iterator<Item = Self>>(lengths: I) -> Self {
        lengths.fold(Self::ZERO, Add::add)
    }
}

/// An angle, kept in radians.
#[derive(Clone, Copy, Debug, Default, PartialEq, PartialOrd)]
pub struct Angle(f64);

impl Angle {
    /// No turn.
    pub const ZERO: Self = Self(0.0);

    /// From radians.
    pub const fn from_radians(radians: f64) -> Self {
        Self(radians)
    }

    /// From degrees.
    pub const fn from_degrees(degrees: f64) -> Self {
        Self(degrees.to_radians())
    }

    /// As radians.
    pub const fn radians(self) -> f64 {
        self.0
    }

    /// As degrees.
    pub const fn degrees(self) -> f64 {
        self.0.to_degrees()
    }

    /// Sine, the same on every machine.
    pub fn sin(self) -> f64 {
        libm::sin(self.0)
    }

    /// Cosine, the same on every machine.
    pub fn cos(self) -> f64 {
        libm::cos(self.0)
    }

    /// Tangent, the same on every machine.
    pub fn tan(self) -> f64 {
        libm::tan(self.0)
    }

    /// Turn of the plane by this angle about the origin: from the x axis towards the y axis.
    pub fn rotation(self) -> kurbo::Affine {
        let (sin, cos) = (self.sin(), self.cos());
        kurbo::Affine::new([cos, sin, -sin, cos, 0.0, 0.0])
    }

    /// The vector of length 1 at this angle from the x axis towards the y axis.
    pub fn direction(self) -> kurbo::Vec2 {
        kurbo::Vec2::new(self.cos(), self.sin())
    }

    /// The angle in [−π/2, π/2] of this sine, the same on every machine; that of the nearer end for a sine beyond ±1.
    pub fn of_sine(sine: f64) -> Self {
        Self(libm::asin(sine.clamp(-1.0, 1.0)))
    }

    /// The angle of the vector (`x`, `y`), in (−π, π].
    pub fn of_vector(x: f64, y: f64) -> Self {
        Self(libm::atan2(y, x))
    }
}

impl Add for Angle {
    type Output = Self;
    fn add(self, other: Self) -> Self {
        Self(self.0 + other.0)
    }
}

impl Sub for Angle {
    type Output = Self;
    fn sub(self, other: Self) -> Self {
        Self(self.0 - other.0)
    }
}

impl Mul<f64> for Angle {
    type Output = Self;
    fn mul(self, by: f64) -> Self {
        Self(self.0 * by)
    }
}

/// How large one stitch comes out in a maker's hands, from a swatch.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Gauge {
    /// Width of one stitch along the round.
    pub width: Mm,
    /// Height one round adds.
    pub height: Mm,
    /// Thickness of the fabric, as between two rulers laid on it without weight.
    pub thick: Mm,
    /// Grams of yarn in one stitch, where the swatch was weighed.
    pub grams: Option<f64>,
    /// True where the figures come from the usual height ratios and not from a swatch of this stitch.
    pub assumed: bool,
}

impl Gauge {
    /// Stitches a round by which a flat disc of this fabric grows: 2π h/w.
    pub fn flat_growth(&self) -> f64 {
        TURN * (self.height / self.width)
    }

    /// Circumference of a round of `count` stitches at rest.
    pub fn circumference(&self, count: u32) -> Mm {
        self.width * f64::from(count)
    }
}

/// √(x² + y²), the same on every machine.
pub fn hypot(x: f64, y: f64) -> f64 {
    libm::hypot(x, y)
}

/// The greatest number that divides both; of 0 and another, the other.
pub const fn gcd(a: u64, b: u64) -> u64 {
    if b == 0 { a } else { gcd(b, a % b) }
}

/// A number above zero to any power, the same on every machine.
pub fn power(base: f64, exponent: f64) -> f64 {
    libm::pow(base, exponent)
}

/// The one rounding through which numbers leave for a file: `decimals` places, and never a minus zero.
pub fn tidy(value: f64, decimals: u32) -> f64 {
    let scale = f64::from(10_u32.pow(decimals));
    let rounded = (value * scale).round() / scale;
    if rounded == 0.0 { 0.0 } else { rounded }
}

/// Units at the edges.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Units {
    /// Centimetres first.
    Cm,
    /// Inches first.
    Inches,
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn one_inch_is_72_points_and_25_4_mm() {
        assert!((Mm::from_inches(1.0).points() - 72.0).abs() < EPSILON);
        assert!((Mm::from_points(72.0).mm() - 25.4).abs() < EPSILON);
    }

    #[test]
    fn an_angle_is_found_again_from_its_sine_and_its_direction() {
        for degrees in [-90.0, -30.0, 0.0, 12.5, 90.0] {
            let angle = Angle::from_degrees(degrees);
            let way = angle.direction();
            assert!((Angle::of_sine(angle.sin()).degrees() - degrees).abs() < TOLERANCE);
            assert!((Angle::of_vector(way.x, way.y).degrees() - degrees).abs() < EPSILON);
        }
        assert!((Angle::of_sine(2.0).degrees() - 90.0).abs() < EPSILON);
        assert!((power(2.0, 0.5) * power(2.0, 0.5) - 2.0).abs() < EPSILON);
    }

    #[test]
    fn tidy_never_gives_minus_zero() {
        assert!(tidy(-0.0004, 3).is_sign_positive());
        assert!((tidy(1.23456, 3) - 1.235).abs() < EPSILON);
    }
}
