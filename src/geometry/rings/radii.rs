//! Radii of the rings, and the room a stitch takes.

use super::{Ring, Row, Shift, foundation_radius, spirals};
use crate::craft::{Build, Op, Round, Spot, Stitch};
use crate::plan::SizePlan;
use crate::units::TURN;

/// Least width of a stitch's cell along its ring, in stitch units: below this a ring is pushed outward.
pub(super) const LEAST_WIDTH: f64 = 0.86;

/// How far below the feet of a ring the slip stitches stand that lead to its start: half of the gap that they and a label
/// have there.
pub const SLIP: f64 = 0.45;

/// Height of a ring of this stitch, in stitch units: the table's ratio, with the shortest raised and the tallest
/// lowered so that both can be read.
pub fn ring_height(stitch: Stitch) -> f64 {
    let ratio = stitch.row().height;
    if stitch.row().build == Build::Picot {
        return 1.0;
    }
    // The marks at its foot need room; in the fabric it is as low as its round.
    if matches!(stitch.row().build, Build::Spike | Build::Loop) {
        return 1.4;
    }
    // As tall as they are, trebles would push the rounds outside them off the page.
    if ratio <= 2.0 { ratio.max(0.75) } else { 2.0 + 0.6 * (ratio - 2.0) }
}

/// Width of a stitch along its ring, in stitch units. Chains lie close.
pub fn cell_width(stitch: Stitch) -> f64 {
    match stitch.row().build {
        Build::Chain => 0.66,
        // A picot sits on the stitch before it and takes nothing from its neighbours.
        Build::Picot => 0.0,
        Build::Slip
        | Build::Cross
        | Build::Stem
        | Build::Post(_)
        | Build::Cluster
        | Build::Puff
        | Build::Bobble
        | Build::Popcorn
        | Build::Extended
        | Build::Long
        | Build::Spike
        | Build::Loop
        | Build::Reverse
        | Build::Linked => stitch.row().width,
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
    // Chains over a gap hang between stitches and have no say in how tall the round is.
    let stitches = round.ops.iter().filter(|op| op.into != Spot::Air).flat_map(|op| op.made.runs());
    let tallest = stitches.map(|(stitch, _)| ring_height(stitch)).fold(0.0, f64::max);
    if tallest > 0.0 { tallest } else { 0.75 }
}

/// The rings of `rows`, their angles still open: each stands on the one below, and where a round has more stitches than
/// room the rings below it give way too, in proportion, so that none is stretched alone.
pub(super) fn stack(size: &SizePlan, rows: &[Row], centre: f64) -> Vec<Ring> {
    let mut rings: Vec<Ring> = Vec::with_capacity(rows.len());
    let mut widths = Vec::with_capacity(rows.len());
    for (index, row) in rows.iter().enumerate() {
        let Some(round) = size.rounds.get(row.first) else { continue };
        // A spiral rises by the height of the round to come, and slip stitches to come need room above this one.
        let next = rows.get(index + 1).and_then(|row| size.rounds.get(row.first));
        rings.push(stand(rings.last(), centre, *row, round, next));
        widths.push(round.ops.iter().map(op_width).sum::<f64>());
    }
    give_room(&mut rings, &widths);
    rings
}

/// Moves rings outward until every cell has its least width at half the height of its ring.
fn give_room(rings: &mut [Ring], widths: &[f64]) {
    let mut share = 0.0_f64;
    let mut shares = vec![0.0; rings.len()];
    // From outside in, so that every ring knows the greatest share that any ring beyond it lacks.
    for (i, (ring, width)) in rings.iter().zip(widths).enumerate().rev() {
        let middle = (ring.foot.0 + ring.head.0) / 2.0;
        share = share.max(width * LEAST_WIDTH / TURN / middle - 1.0);
        shares[i] = share;
    }
    let mut moved = 0.0_f64;
    for (ring, share) in rings.iter_mut().zip(shares) {
        let before = moved;
        // Rings are only ever moved outward, and never less than those inside them.
        moved = moved.max(share * ring.head.0);
        // The feet at the end of a spiral stand on the heads of its own beginning, and move with them.
        let end = if ring.head.1 > ring.head.0 { moved } else { before.max(moved) };
        ring.foot = (ring.foot.0 + before, ring.foot.1 + if ring.foot.1 > ring.foot.0 { end } else { before });
        ring.head = (ring.head.0 + moved, ring.head.1 + moved);
    }
}

/// A ring standing on the one below. In a spiral the heads rise by the height of the round to come, so that round runs
/// into round without a step.
fn stand(below: Option<&Ring>, centre: f64, row: Row, round: &Round, next: Option<&Round>) -> Ring {
    let own = height(round);
    // The first ring of a spiral half joins in the rise, so that its last stitch isn't twice as tall as its first.
    let rise = match (spirals(round), round.before) {
        (false, _) => 0.0,
        (true, 0) => 0.6 * own,
        (true, _) => own,
    };
    let foot = below.map_or((centre, centre + rise), |ring| {
        let over = ring.margin + ring.crest;
        (ring.head.0 + over, ring.head.1 + over)
    });
    // A band stands for several rounds: the clear room says that something is left out.
    let margin = if row.is_band() { 0.3 } else { 0.0 };
    let foot = (foot.0 + margin, foot.1 + margin);
    let head = if spirals(round) {
        // The heads at the start carry the feet at the end, and are never lower than those.
        let start = (foot.0 + own).max(foot.1);
        (start, start + next.filter(|next| spirals(next)).map_or(own, height))
    } else {
        (foot.1 + own, foot.1 + own)
    };
    let picots = round.ops.iter().flat_map(|op| op.made.runs()).any(|(stitch, _)| stitch.row().build == Build::Picot);
    let slips = next.is_some_and(|next| next.slipped > 0);
    // What stands on the heads must clear the feet of the next round.
    let picots = if picots { ring_height(Stitch::PICOT) + 0.1 } else { 0.0 };
    let crest = picots + if slips { 2.0 * SLIP } else { 0.0 };
    let (heads, seats) = (Vec::new(), Vec::new());
    let shift = round.ops.first().filter(|_| round.slipped > 0 && below.is_some()).map(|op| Shift {
        passed: round.slipped as usize,
        under: op.consumed as usize,
        width: op_width(op),
    });
    Ring { row, lane: 0.0, lane_width: 0.0, foot, head, margin, crest, shift, unit: 0.0, heads, seats }
}
