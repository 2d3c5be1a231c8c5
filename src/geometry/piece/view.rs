//! From space to the page: an eye far away, or mildly near.

use kurbo::Point;

use super::Piece;
use crate::geometry::SideShape;
use crate::geometry::mesh::{Vec3, lies_flat};
use crate::units::Angle;

/// Where a piece is seen from.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Eye {
    /// Height of the eye over the horizon: 0° from the front, 90° from above.
    pub from: Angle,
    /// Turn of the piece about its axis, to the right.
    pub turn: Angle,
    /// Distance of the eye in reaches of the piece; nothing for parallel rays, which keep lengths.
    pub distance: Option<f64>,
}

/// Height of the eye over the horizon, degrees: for what stands, and for flat work.
const FROM: (f64, f64) = (24.0, 62.0);

/// The same for a hat on a head.
const ON_HEAD: f64 = 12.0;

/// How far away the eye is, in reaches of the piece: as one looks at a piece on a table.
const DISTANCE: f64 = 7.0;

impl Eye {
    /// What suits a piece of this body: from in front and a little above; flat work from above.
    pub fn usual(body: &SideShape) -> Self {
        let from = if lies_flat(body) { FROM.1 } else { FROM.0 };
        Self { from: Angle::from_degrees(from), turn: Angle::ZERO, distance: Some(DISTANCE) }
    }
}

impl Eye {
    /// What suits a piece where it lies or stands; `body` is its predicted shape. A head is met at its own height.
    pub fn of(piece: &Piece, body: &SideShape) -> Self {
        let usual = Self::usual(body);
        if piece.form.is_some() { Self { from: Angle::from_degrees(ON_HEAD), ..usual } } else { usual }
    }
}

/// The eye at work.
#[derive(Clone, Copy, Debug)]
pub struct View {
    right: Vec3,
    up: Vec3,
    /// Direction to the eye.
    pub to_eye: Vec3,
    distance: Option<f64>,
}

impl View {
    /// Looks at a piece of this reach about the origin.
    pub fn new(eye: &Eye, reach: f64) -> Self {
        let (sin, cos) = (eye.turn.sin(), eye.turn.cos());
        let (high, level) = (eye.from.sin(), eye.from.cos());
        let right = Vec3::new(cos, -sin, 0.0);
        let to_eye = Vec3::new(-sin * level, -cos * level, high);
        Self { right, up: to_eye.cross(&right), to_eye, distance: eye.distance.map(|d| d * reach.max(1e-6)) }
    }

    /// Where a point is seen, x to the right and y down, and how near it is.
    pub fn project(&self, p: &Vec3) -> (Point, f64) {
        let near = p.dot(&self.to_eye);
        let scale = self.distance.map_or(1.0, |distance| distance / (distance - near).max(distance * 0.1));
        (Point::new(p.dot(&self.right) * scale, -p.dot(&self.up) * scale), near)
    }

    /// A direction in the view: to the right, up, to the eye.
    pub fn turned(&self, way: &Vec3) -> Vec3 {
        Vec3::new(way.dot(&self.right), way.dot(&self.up), way.dot(&self.to_eye))
    }
}
