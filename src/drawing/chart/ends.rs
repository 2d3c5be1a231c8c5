//! Where the work begins, which way it runs, and how it ends.

use kurbo::Vec2;

use super::Scene;
use crate::craft::Loops;
use crate::drawing::symbols::Fit;
use crate::drawing::{Ends, Group, Ink, Item, Origin, PathItem, Role, Sign, Stroke};
use crate::geometry::rings::{Ring, ring_height};

/// How far outside the last round the arrow and the sign of the end stand, in stitch units.
const OUTSIDE: f64 = 0.6;

/// All signs of beginning, way and end.
pub(super) fn draw(scene: &mut Scene<'_>) -> Item {
    let mut items: Vec<Item> = start(scene).into_iter().collect();
    items.extend(step_down(scene));
    items.extend(way(scene));
    items.extend(end(scene));
    Item::Group(Group { id: "way".to_owned(), role: Role::Decoration, origin: Origin::None, items })
}

/// The sign of the start, at the foot of the first stitch; within the ring of chains that it is worked into, where there is one.
fn start(scene: &mut Scene<'_>) -> Option<Item> {
    let ring = scene.ring(0).filter(|ring| ring.row.first == 0)?;
    let (along, radius) = match scene.rings.base.is_empty() {
        true => (ring.from() - 0.12 / ring.foot.0, ring.foot.0 - 0.05),
        false => (ring.heads.first().copied().unwrap_or(ring.from()), ring.foot.0 - 0.8),
    };
    let (foot, head) = (scene.at(along, radius - 0.6), scene.at(along, radius));
    Some(scene.symbol(Sign::Start, Fit { height: 0.6, ..Sign::Start.fit() }, foot, head))
}

/// Shorter stitches after the last round of a spiral, on the first stitches of that round.
fn step_down(scene: &mut Scene<'_>) -> Vec<Item> {
    let stitches = scene.size.step_down.clone();
    let Some(ring) = scene.last_ring().cloned() else { return Vec::new() };
    let mut items = Vec::new();
    for (stitch, along) in stitches.into_iter().zip(&ring.heads) {
        let sign = Sign::Stitch(stitch, Loops::Both);
        let foot = ring.head_at(*along) + ring.crest;
        let (foot, head) = (scene.at(*along, foot), scene.at(*along, foot + ring_height(stitch)));
        items.push(scene.symbol(sign, sign.fit(), foot, head));
    }
    items
}

/// An arrow outside the last ring, from its first stitches on.
fn way(scene: &Scene<'_>) -> Option<Item> {
    let ring = scene.rings.rings.last()?;
    let radius = scene.rings.outer() + OUTSIDE;
    let past = (scene.size.step_down.len() as f64 + 1.0) * ring.unit;
    let from = ring.from() + past.min(0.5);
    let to = from + (6.0 / radius).min(0.6).min((scene.until(ring) - from) / 2.0);
    let mut path = scene.arc(from, to, |_| radius);
    let tip = scene.at(to, radius);
    let back = scene.at(to - 0.45 / radius, radius) - tip;
    for side in [-1.0, 1.0] {
        path.move_to(tip + back + Vec2::new(-back.y, back.x) * (0.6 * side));
        path.line_to(tip);
    }
    let stroke =
        Stroke { width: (0.11 * scene.unit).max(0.25), ink: Ink::BLACK, ends: Ends::Round, dashes: Vec::new() };
    Some(Item::Path(PathItem { path, fill: None, stroke: Some(stroke) }))
}

/// The sign of the end, outside the last stitch: of the last round, or of those that a spiral comes down over.
fn end(scene: &mut Scene<'_>) -> Option<Item> {
    let ring = scene.last_ring()?;
    let down = scene.size.step_down.iter().zip(&ring.heads).next_back();
    let last = down.map(|(stitch, along)| (*along, ring_height(*stitch)));
    let (along, over) = last.or_else(|| ring.heads.last().map(|along| (*along, 0.0)))?;
    let radius = ring.head_at(along) + ring.margin + ring.crest + over + 0.1;
    let (foot, head) = (scene.at(along, radius), scene.at(along, radius + 1.0));
    Some(scene.symbol(Sign::FastenOff, Sign::FastenOff.fit(), foot, head))
}

impl Scene<'_> {
    /// The ring of the last round of the piece, where this chart shows it to its end.
    fn last_ring(&self) -> Option<&Ring> {
        let last = self.rings.rings.last()?;
        (last.row.last + 1 == self.size.rounds.len() && self.share.is_none()).then_some(last)
    }
}
