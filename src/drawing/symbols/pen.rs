//! The one stroke logic of the symbol set: weights, terminals, proportions.
//!
//! All measures are in stitch units: 1 is the height of a single crochet's ring and the width of its cell.

use kurbo::{Affine, BezPath, Circle, Ellipse, Point, Rect, Shape, Vec2};

use crate::drawing::{CURVE, Ends, Ink, PathItem, Stroke, Symbol};
use crate::units::TOLERANCE;

/// Weight of every plain stroke.
pub(super) const WEIGHT: f64 = 0.11;

/// Weight of strokes that shape the fabric.
pub(super) const HEAVY: f64 = 0.17;

/// Clear room kept at foot and head, so that symbols of two rings never touch.
pub(super) const CLEAR: f64 = 0.14;

/// Half of a top bar.
pub(super) const BAR: f64 = 0.3;

/// Half of a slash across a stem.
pub(super) const SLASH: f64 = 0.2;

/// Draws one symbol: strokes of one weight with round ends, and filled shapes.
pub(super) struct Pen {
    weight: f64,
    strokes: BezPath,
    fills: BezPath,
}

impl Pen {
    pub(super) fn new(weight: f64) -> Self {
        Self { weight, strokes: BezPath::new(), fills: BezPath::new() }
    }

    pub(super) fn line(&mut self, from: Point, to: Point) {
        self.strokes.move_to(from);
        self.strokes.line_to(to);
    }

    /// A curve through a control point on either side.
    pub(super) fn curve(&mut self, from: Point, first: Point, second: Point, to: Point) {
        self.strokes.move_to(from);
        self.strokes.curve_to(first, second, to);
    }

    /// A bow from one point to another, its middle `bulge` to the right of the way from one to the other.
    pub(super) fn bow(&mut self, from: Point, to: Point, bulge: f64) {
        let way = to - from;
        let side = Vec2::new(-way.y, way.x) * (bulge / 0.75 / way.hypot().max(TOLERANCE));
        self.curve(from, from + way * 0.22 + side, to - way * 0.22 + side, to);
    }

    pub(super) fn oval(&mut self, centre: Point, rx: f64, ry: f64, turn: f64) {
        self.strokes.extend(Ellipse::new(centre, (rx, ry), turn).path_elements(CURVE));
    }

    pub(super) fn dot(&mut self, centre: Point, radius: f64) {
        self.fills.extend(Circle::new(centre, radius).path_elements(CURVE));
    }

    pub(super) fn outline(&mut self, points: &[Point]) {
        polygon(&mut self.strokes, points);
    }

    pub(super) fn filled(&mut self, points: &[Point]) {
        polygon(&mut self.fills, points);
    }

    /// A cross stroke of half length `half` over the way from one point to another, at the share `along`; `tilt` lifts
    /// its right end by that much.
    pub(super) fn across(&mut self, from: Point, to: Point, along: f64, half: f64, tilt: f64) {
        let way = (to - from) / (to - from).hypot().max(TOLERANCE);
        let right = Vec2::new(-way.y, way.x);
        let arm = right * half + way * tilt;
        let middle = from.lerp(to, along);
        self.line(middle - arm, middle + arm);
    }

    /// A bar of half length `half` that lies level at a head.
    pub(super) fn level(&mut self, head: Point, half: f64) {
        self.line(head - Vec2::new(half, 0.0), head + Vec2::new(half, 0.0));
    }

    /// Makes what was drawn upright on a foot narrower by a factor, and slants it so that its head comes to stand at a
    /// point at the same height.
    pub(super) fn set_aside(&mut self, girth: f64, foot: Point, head: Point) {
        let by = (head.x - foot.x) / (head.y - foot.y).min(-TOLERANCE);
        let slant = Affine::new([girth, 0.0, by, 1.0, -by * foot.y, 0.0]);
        self.strokes.apply_affine(slant);
        self.fills.apply_affine(slant);
    }

    pub(super) fn symbol(self) -> Symbol {
        let mut paths = Vec::new();
        let mut bounds: Option<Rect> = None;
        let mut grow = |rect: Rect| bounds = Some(bounds.map_or(rect, |all| all.union(rect)));
        if !self.fills.is_empty() {
            grow(self.fills.bounding_box());
            paths.push(PathItem { path: self.fills, fill: Some(Ink::BLACK), stroke: None });
        }
        if !self.strokes.is_empty() {
            grow(self.strokes.bounding_box().inflate(self.weight / 2.0, self.weight / 2.0));
            let stroke = Stroke { width: self.weight, ink: Ink::BLACK, ends: Ends::Round, dashes: Vec::new() };
            paths.push(PathItem { path: self.strokes, fill: None, stroke: Some(stroke) });
        }
        Symbol { paths, bounds: bounds.unwrap_or_default(), loose: false }
    }
}

fn polygon(path: &mut BezPath, points: &[Point]) {
    for (i, point) in points.iter().enumerate() {
        if i == 0 {
            path.move_to(*point);
        } else {
            path.line_to(*point);
        }
    }
    if !points.is_empty() {
        path.close_path();
    }
}
