//! What lies under the symbols: tints.

use kurbo::{BezPath, PathEl};

use super::Scene;
use crate::drawing::{Ends, Group, Ink, Item, Origin, PathItem, Role, Stroke};
use crate::geometry::rings::Ring;

/// Tint of every other round.
const TINT: Ink = Ink([238, 238, 238]);

pub(super) fn draw(scene: &Scene<'_>) -> Item {
    let mut items = Vec::new();
    for (index, ring) in scene.rings.rings.iter().enumerate() {
        if scene.options.tints && index % 2 == 1 {
            items.push(Item::Path(tint(scene, ring, TINT)));
        }
    }
    Item::Group(Group { id: "ground".to_owned(), role: Role::Decoration, origin: Origin::None, items })
}

/// A ring in one colour: one broad stroke where its height is the same all round, which is short to write.
fn tint(scene: &Scene<'_>, ring: &Ring, ink: Ink) -> PathItem {
    let (start, end) = (ring.head.0 - ring.foot.0, ring.head.1 - ring.foot.1);
    if (start - end).abs() < 0.02 {
        let path = edge(scene, ring, |along| (ring.foot_at(along) + ring.head_at(along)) / 2.0);
        let width = (start + 2.0 * ring.margin) * scene.unit;
        let stroke = Stroke { width, ink, ends: Ends::Butt, dashes: Vec::new() };
        return PathItem { path, fill: None, stroke: Some(stroke) };
    }
    let mut path = edge(scene, ring, |along| ring.head_at(along) + ring.margin);
    let inner = edge(scene, ring, |along| ring.foot_at(along) - ring.margin).reverse_subpaths();
    for element in inner.elements() {
        match *element {
            PathEl::MoveTo(to) => path.line_to(to),
            PathEl::LineTo(_) | PathEl::QuadTo(..) | PathEl::CurveTo(..) | PathEl::ClosePath => path.push(*element),
        }
    }
    path.close_path();
    PathItem { path, fill: Some(ink), stroke: None }
}

/// A line round a ring from its first cell to its last, at a radius that may change along it. Every eighth of a turn
/// is a cubic through its ends with the directions there.
pub(super) fn edge(scene: &Scene<'_>, ring: &Ring, radius: impl Fn(f64) -> f64) -> BezPath {
    let (from, to) = (ring.from(), ring.to());
    let pieces = 8;
    let step = (to - from) / f64::from(pieces);
    let mut path = BezPath::new();
    let at = |along: f64| scene.at(along, radius(along));
    let slope = |along: f64| (at(along + 1e-4) - at(along - 1e-4)) / 2e-4;
    path.move_to(at(from));
    for i in 0..pieces {
        let (a, b) = (from + step * f64::from(i), from + step * f64::from(i + 1));
        path.curve_to(at(a) + slope(a) * (step / 3.0), at(b) - slope(b) * (step / 3.0), at(b));
    }
    path
}
