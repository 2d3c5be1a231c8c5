//! Marks outside the last ring where shaping that stacks makes corners: a chart draws every round as a ring, and the piece
//! that it shows is a polygon.

use kurbo::BezPath;

use super::Scene;
use crate::drawing::{Ends, Ink, Item, PathItem, Stroke};

/// How far the feet and the point of a mark lie outside the ring, and half its breadth, in stitch units.
const FEET: f64 = 0.25;
const POINT: f64 = 0.7;
const HALF: f64 = 0.55;

/// The marks: one each where the last round that shapes in all corners does so. None for a single repeat, which has one.
pub(super) fn draw(scene: &Scene<'_>) -> Option<Item> {
    let outer = scene.rings.rings.last()?;
    let ends = scene.round_of(outer.row).filter(|_| scene.share.is_none())?;
    let corners = scene.size.polygon_at(ends)?.corners;
    let places = scene.rings.rings.iter().rev().find_map(|ring| {
        let round = scene.round_of(ring.row)?;
        let (mut made, mut places) = (0_usize, Vec::new());
        for op in &round.ops {
            let next = made + op.count() as usize;
            if op.shapes() {
                let heads = ring.heads.get(made..next).filter(|heads| !heads.is_empty())?;
                places.push(heads.iter().sum::<f64>() / heads.len() as f64);
            }
            made = next;
        }
        (places.len() == corners as usize).then_some(places)
    })?;
    let mut path = BezPath::new();
    for along in places {
        let edge = outer.head_at(along) + outer.crest;
        let half = HALF / edge.max(1.0);
        path.move_to(scene.at(along - half, edge + FEET));
        path.line_to(scene.at(along, edge + POINT));
        path.line_to(scene.at(along + half, edge + FEET));
    }
    let stroke = Stroke { width: 0.35, ink: Ink::BLACK, ends: Ends::Round, dashes: Vec::new() };
    Some(Item::Path(PathItem { path, fill: None, stroke: Some(stroke) }))
}
