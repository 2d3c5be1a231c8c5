//! Radii of the rings, and the room a stitch takes.

use super::{Ring, Row, foundation_radius, spirals};
use crate::plan::{Op, Round, SizePlan, Spot};
use crate::stitch::{Build, Stitch};
use crate::units::TURN;

/// Least width of a stitch's cell along its ring, in stitch units: below this a ring is pushed outward.
const LEAST_WIDTH: f64 = 0.9;

/// Height of a ring of this stitch, in stitch units: the table's ratio, with the shortest raised and the tallest
/// lowered so that both can be read.
pub fn ring_height(stitch: Stitch) -> f64 {
    let ratio = stitch.row().height;
    if ratio <= 2.0 { ratio.max(0.6) } else { 2.0 + 0.6 * (ratio - 2.0) }
}

/// Width of a stitch along its ring, in stitch units. Chains lie close.
pub fn cell_width(stitch: Stitch) -> f64 {
    match stitch.row().build {
        Build::Chain => 0.66,
        Build::Picot => 0.0,
        Build::Slip
        | Build::Cross
        | Build::Stem
        | Build::Post(_)
        | Build::Cluster
        | Build::Puff
        | Build::Bobble
        | Build::Popcorn => stitch.row().width,
    }
}

/// Width of everything an operation makes.
pub(super) fn op_width(op: &Op) -> f64 {
    op.made.runs().map(|(stitch, count)| cell_width(stitch) * f64::from(count)).sum()
}

/// Radius of the clear centre: the foundation, or the room that the stitches before a part need.
pub(super) fn centre(size: &SizePlan, before: u32) -> f64 {
    if before == 0 { foundation_radius(size.foundation) } else { (f64::from(before) / TURN).max(0.9) }
}

/// Height of a round: its tallest stitch that isn't a chain, or chains if there is nothing else.
fn height(round: &Round) -> f64 {
    let stitches = round.ops.iter().filter(|op| op.into != Spot::Air).flat_map(|op| op.made.runs());
    let tallest = stitches.map(|(stitch, _)| ring_height(stitch)).fold(0.0, f64::max);
    if tallest > 0.0 { tallest } else { 0.6 }
}

/// A ring standing on the one below, its angles still open. In a spiral the heads rise by the height of the round to
/// come, so that round runs into round without a step.
pub(super) fn stand(below: Option<&Ring>, centre: f64, row: Row, round: &Round, next: Option<&Round>) -> Ring {
    let own = height(round);
    // The first ring of a spiral half joins in the rise, so that its last stitch isn't twice as tall as its first.
    let rise = if spirals(round) { 0.6 * own } else { 0.0 };
    let foot = below.map_or((centre, centre + rise), |ring| (ring.head.0 + ring.margin, ring.head.1 + ring.margin));
    let width: f64 = round.ops.iter().map(op_width).sum();
    let needed = width * LEAST_WIDTH / TURN;
    let margin = if row.is_band() { 0.3 } else { 0.0 };
    let foot = (foot.0 + margin, foot.1 + margin);
    let least = needed + own * 0.4;
    let head = if spirals(round) {
        let start = (foot.0 + own).max(foot.1).max(least);
        (start, start + next.filter(|next| spirals(next)).map_or(own, height))
    } else {
        let closed = (foot.1 + own).max(least);
        (closed, closed)
    };
    Ring { row, lane: 0.0, lane_width: 0.0, foot, head, margin, unit: 0.0, heads: Vec::new(), marks: Vec::new() }
}
