//! The lane between the last stitch of a round and the first: number, count, part names, join.

use super::Scene;
use crate::drawing::{Anchor, Item};
use crate::font::Face;
use crate::geometry::rings::Row;
use crate::plan::{Begin, Close};

/// What stands in the lane of one ring, in stitch units along it.
#[derive(Clone, Debug, Default, PartialEq)]
pub(super) struct Lane {
    chain: f64,
    label: f64,
    join: f64,
    number: String,
    count: String,
}

impl Lane {
    pub(super) fn of(scene: &Scene<'_>, row: &Row) -> Self {
        let Some(round) = scene.round_of(*row) else { return Self::default() };
        let number =
            if row.is_band() { format!("{}–{}", round.number, row.last + 1) } else { round.number.to_string() };
        let count = round.after.to_string();
        let width =
            Face::Bold.width(&number, scene.letters) + Face::Regular.width(&format!(" · {count}"), scene.letters);
        Self {
            chain: if matches!(round.begin, Begin::Chain { counts: false, .. }) { 0.6 } else { 0.0 },
            label: width / scene.unit + 0.5,
            join: if round.close == Close::Join { 0.8 } else { 0.0 },
            number,
            count,
        }
    }

    pub(super) fn width(&self) -> f64 {
        self.chain + self.label + self.join
    }
}

/// Number and count of a ring.
pub(super) fn draw(scene: &Scene<'_>, index: usize) -> Vec<Item> {
    let (Some(ring), Some(lane)) = (scene.ring(index), scene.lanes.get(index)) else { return Vec::new() };
    let radius = (ring.foot.0 + ring.head.0) / 2.0;
    let along = ring.from() - (lane.chain + lane.label / 2.0) / radius;
    let mut turn = scene.frame.clock(along).degrees().rem_euclid(360.0);
    if turn > 90.0 && turn < 270.0 {
        turn -= 180.0;
    }
    let size = scene.letters;
    let (bold, rest) = (Face::Bold.width(&lane.number, size), format!(" · {}", lane.count));
    let whole = bold + Face::Regular.width(&rest, size);
    let middle = scene.at(along, radius);
    let way = crate::units::Angle::from_degrees(turn).rotation();
    let drop = Face::Regular.cap_height(size) / 2.0;
    let place = |x: f64| middle + (way * kurbo::Point::new(x, drop)).to_vec2();
    let number = crate::drawing::TextItem {
        face: Face::Bold,
        turn,
        anchor: Anchor::Start,
        ..crate::drawing::TextItem::new(lane.number.clone(), place(-whole / 2.0), size)
    };
    let count =
        crate::drawing::TextItem { turn, ..crate::drawing::TextItem::new(rest, place(bold - whole / 2.0), size) };
    vec![Item::Text(number), Item::Text(count)]
}
