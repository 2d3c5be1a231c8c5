//! Symbols of beginnings, ends and ways, and of chains that are no stitches of their own.

use kurbo::{Point, Vec2};

use super::Fit;
use super::pen::{CLEAR, Pen, WEIGHT};
use crate::drawing::Symbol;
use crate::units::Angle;

/// A point of a circle about (0, −0.5), degrees clockwise from the top.
fn on_circle(radius: f64, degrees: f64) -> Point {
    let angle = Angle::from_degrees(degrees);
    Point::new(radius * angle.sin(), -0.5 - radius * angle.cos())
}

/// An adjustable ring: a closed loop whose tail hangs out.
pub(super) fn ring() -> Symbol {
    let mut pen = Pen::new(WEIGHT);
    pen.oval(Point::new(0.0, -0.5), 0.36, 0.36, 0.0);
    let tail = on_circle(0.36, 150.0);
    pen.curve(tail, tail + Vec2::new(0.12, -0.1), tail + Vec2::new(0.2, 0.02), tail + Vec2::new(0.26, 0.16));
    pen.symbol()
}

/// A ring of chains; more than sixteen are drawn as sixteen.
pub(super) fn chain_ring(chains: u32) -> Symbol {
    let mut pen = Pen::new(WEIGHT * 0.8);
    let drawn = chains.clamp(3, 16);
    let radius = 0.36_f64.max(f64::from(drawn) * 0.36 / core::f64::consts::TAU);
    for i in 0..drawn {
        let turn = f64::from(i) * 360.0 / f64::from(drawn);
        let length = core::f64::consts::PI * radius / f64::from(drawn) * 0.86;
        pen.oval(on_circle(radius, turn), length, 0.1, Angle::from_degrees(turn).radians());
    }
    pen.symbol()
}

/// A slim triangle in the middle of a height, so slim that its point is not mistaken.
fn pointer(height: f64) -> [Point; 3] {
    let size = height.min(1.0);
    [(-0.44, 0.0), (0.3, -0.22), (0.3, 0.22)].map(|(x, y)| Point::new(x * size, y * size - height / 2.0))
}

/// An open triangle that points the way the work runs (to the left: anticlockwise at the top).
pub(super) fn start(fit: &Fit) -> Symbol {
    let mut pen = Pen::new(WEIGHT);
    pen.outline(&pointer(fit.height));
    pen.symbol()
}

/// The same triangle, filled: the yarn is cut.
pub(super) fn fasten_off() -> Symbol {
    let mut pen = Pen::new(WEIGHT);
    pen.outline(&pointer(1.0));
    pen.filled(&pointer(1.0));
    pen.symbol()
}

/// An arrow that bends with the round.
pub(super) fn direction() -> Symbol {
    let mut pen = Pen::new(WEIGHT);
    let tip = Point::new(-0.55, -0.38);
    pen.curve(Point::new(0.55, -0.38), Point::new(0.25, -0.68), Point::new(-0.25, -0.68), tip);
    pen.line(tip, tip + Vec2::new(0.08, -0.28));
    pen.line(tip, tip + Vec2::new(0.3, -0.02));
    pen.symbol()
}

/// Chains standing one on the other.
pub(super) fn turning_chain(chains: u8, fit: &Fit) -> Symbol {
    let mut pen = Pen::new(WEIGHT);
    let count = f64::from(chains.max(1));
    let room = fit.height - 2.0 * CLEAR;
    let length = room / count;
    let half = (length / 2.0 - 0.02).min(0.4);
    for i in 0..chains {
        let y = -CLEAR - length * (f64::from(i) + 0.5);
        pen.oval(Point::new(0.0, y), half.min(0.15), half, 0.0);
    }
    pen.set_aside(1.0, Point::new(0.0, -CLEAR), Point::new(fit.shift, CLEAR - fit.height));
    pen.symbol()
}

/// Chains in an arch.
pub(super) fn space(chains: u8) -> Symbol {
    let mut pen = Pen::new(WEIGHT);
    let count = f64::from(chains.max(1));
    for i in 0..chains {
        let off = f64::from(i) - (count - 1.0) / 2.0;
        let turn = off * 24.0;
        let at = Point::new(0.6 * off, -0.62 + 0.13 * off * off);
        pen.oval(at, 0.25, 0.15, Angle::from_degrees(turn).radians());
    }
    pen.symbol()
}

/// A slip stitch under the tie that closes the round.
pub(super) fn join() -> Symbol {
    let mut pen = Pen::new(WEIGHT);
    pen.dot(Point::new(0.0, -0.36), 0.17);
    pen.curve(Point::new(-0.34, -0.5), Point::new(-0.2, -0.8), Point::new(0.2, -0.8), Point::new(0.34, -0.5));
    pen.symbol()
}
