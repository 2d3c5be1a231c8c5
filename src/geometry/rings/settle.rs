//! The angles of all rings: each between what it stands on and what stands on it.

use super::angles::{Node, solve};
use super::radii::{cell_width, op_width};
use super::{NEARER, Ring, Rings, Seat};
use crate::craft::{Made, Op, Round, Spot};
use crate::units::TURN;

/// Passes inward and outward again, after the first outward.
const PASSES: usize = 3;

/// How hard the start of a round is held on the starts of its neighbours, as a share of the stitches of the round. Less
/// lets the start drift as the stitches do, more makes the stitches beside it lean.
const HOLD: f64 = 2.0;

/// Hold of the very first lane, which is where the chart is asked to start.
const PINNED: f64 = 1e6;

/// Settles every ring: outward on what each is worked into, then inward and outward with what is worked into it as well,
/// so that stitches that will be joined draw together in the rounds before.
pub(super) fn all(rings: &mut Rings, rounds: &[&Round]) {
    // Outward: every ring needs the ring it stands on.
    for index in 0..rounds.len() {
        begin(rings, rounds, index);
    }
    // From the widest round on the stitches grow fewer: there it is the rounds above that say where stitches should
    // draw together, so these are heard alone once.
    let counts = rounds.iter().map(|round| round.after);
    let widest = counts.enumerate().max_by_key(|(_, count)| *count).map_or(0, |(index, _)| index);
    for index in (widest..rounds.len().saturating_sub(1)).rev() {
        again(rings, rounds, index, 0.0);
    }
    // Every ring hangs on both its neighbours: a fixed number of passes settles them in linear time.
    for _ in 0..PASSES {
        for index in (0..rounds.len()).rev() {
            again(rings, rounds, index, 1.0);
        }
        for index in 0..rounds.len() {
            again(rings, rounds, index, 1.0);
        }
    }
    for (ring, round) in rings.rings.iter_mut().zip(rounds) {
        for seat in &mut ring.seats {
            // What takes no room, such as a picot, was no node: it goes with the stitch before it.
            if round.ops.get(seat.op).is_some_and(|op| op_width(op) <= 0.0) {
                seat.at = seat.first.checked_sub(1).and_then(|last| ring.heads.get(last)).copied().unwrap_or(seat.at);
            }
        }
    }
}

/// Where the angles of two neighbours would be on one another. A lane takes a smaller share of a wider ring: what it gives
/// up goes to all stitches alike and not to those beside it alone.
#[derive(Clone, Copy)]
struct Onto {
    /// Angle on the lower ring at which the upper one begins.
    start: f64,
    /// Where the lane of the lower ring begins, and its width.
    lane: (f64, f64),
    /// Angle at which the first cell of the upper ring begins.
    from: f64,
    /// Angles of the upper ring for one of the lower.
    stretch: f64,
}

impl Onto {
    /// Between ring `index` and the one below it.
    fn below(rings: &Rings, index: usize) -> Option<Self> {
        let (below, ring) = (rings.rings.get(index.checked_sub(1)?)?, rings.rings.get(index)?);
        let start = rings.first_cell(index);
        let stretch = (ring.to() - ring.from()) / (below.to() - below.from());
        Some(Self { start, lane: (below.to(), below.lane_width), from: ring.from(), stretch })
    }

    fn up(&self, angle: f64) -> f64 {
        // Angles beyond the lane of the lower ring lie nearer by its width.
        let lane = if angle > self.lane.0 { self.lane.1 } else { 0.0 };
        self.from + (angle - self.start - lane) * self.stretch
    }

    fn down(&self, angle: f64) -> f64 {
        let angle = self.start + (angle - self.from) / self.stretch;
        if angle > self.lane.0 { angle + self.lane.1 } else { angle }
    }
}

/// Angles of the parents as the ring sees them.
fn parents(rings: &Rings, index: usize) -> Vec<f64> {
    let own = rings.parents(index);
    match Onto::below(rings, index) {
        Some(onto) => own.iter().map(|parent| onto.up(*parent)).collect(),
        None => own,
    }
}

/// Stands a ring on its parents for the first time.
fn begin(rings: &mut Rings, rounds: &[&Round], index: usize) {
    let lane = rings.lane_on_below(index);
    let (Some(ring), Some(round)) = (rings.rings.get_mut(index), rounds.get(index)) else { return };
    ring.lane = lane;
    let mut parent = 0;
    for (op, done) in round.ops.iter().enumerate() {
        let first = ring.heads.len();
        let cells = done.made.runs().flat_map(|(stitch, count)| {
            std::iter::repeat_n(cell_width(stitch), (count * u32::from(stitch.row().counts)) as usize)
        });
        // The stitches of an increase begin nearer to one another and stay so: later steps move them as one.
        let near = if increases(done) { NEARER } else { 1.0 };
        let mut edge = -near * op_width(done) * ring.unit / 2.0;
        for cell in cells {
            let cell = near * cell * ring.unit;
            ring.heads.push(edge + cell / 2.0);
            edge += cell;
        }
        if done.into != Spot::Skip {
            ring.seats.push(Seat { op, at: 0.0, first, parent });
        }
        parent += done.consumed as usize;
    }
    settle(rings, rounds, index, &[], 1.0);
}

/// Settles a ring between its neighbours; `below` is the weight of the one below.
fn again(rings: &mut Rings, rounds: &[&Round], index: usize, below: f64) {
    let above = drawn(rings, rounds, index);
    settle(rings, rounds, index, &above, below);
}

/// Where every stitch of a ring would stand under what is worked into it.
fn drawn(rings: &Rings, rounds: &[&Round], index: usize) -> Vec<Option<f64>> {
    let Some(((ring, above), round)) =
        rings.rings.get(index).zip(rings.rings.get(index + 1)).zip(rounds.get(index + 1))
    else {
        return Vec::new();
    };
    // Angles of the ring above mean nothing here until they are carried down past the difference of the lanes.
    let Some(onto) = Onto::below(rings, index + 1) else { return Vec::new() };
    let (count, passed) = (ring.heads.len(), above.shift.map_or(0, |shift| shift.passed));
    let mut ideals = vec![None; count];
    for seat in &above.seats {
        let Some(op) = round.ops.get(seat.op) else { continue };
        let used = op.consumed as usize;
        // Stitches worked together are drawn nearer than others, as those of an increase are.
        let near = used.saturating_sub(1) as f64 / 2.0;
        let step = NEARER / above.foot_at(seat.at);
        for (i, head) in (seat.parent + passed..).take(used).enumerate() {
            // What was passed over is worked last, a turn further on.
            let (head, turn) = if head < count { (head, 0.0) } else { (head - count, TURN) };
            if let Some(ideal) = ideals.get_mut(head) {
                *ideal = Some(onto.down(seat.at) - turn + (i as f64 - near) * step);
            }
        }
    }
    ideals
}

/// Finds the angles of one ring.
fn settle(rings: &mut Rings, rounds: &[&Round], index: usize, above: &[Option<f64>], below: f64) {
    let (Some(ring), Some(round)) = (rings.rings.get(index), rounds.get(index)) else { return };
    let under = parents(rings, index);
    let lane_below = index.checked_sub(1).map(|_| rings.lane_on_below(index));
    // A ring that begins elsewhere says nothing about where this one should.
    let next = rings.rings.get(index + 1).filter(|next| !above.is_empty() && next.shift.is_none());
    let lanes: Vec<f64> = lane_below.into_iter().chain(next.map(|next| next.lane)).collect();
    let ideal = if index == 0 { 0.0 } else { lanes.iter().sum::<f64>() / lanes.len().max(1) as f64 };
    // Where the chart begins is the reader's choice: the first lane doesn't yield to any stitch.
    let pull = if index == 0 { PINNED } else { HOLD * ring.heads.len() as f64 };
    let mut nodes = vec![Node { width: ring.lane_width, ideal: Some(ideal), pull, edge: 0.0 }];
    nodes.reserve(ring.seats.len());
    for seat in &ring.seats {
        let Some(op) = round.ops.get(seat.op) else { continue };
        let width = op_width(op) * ring.unit;
        // What takes no room would be a node without a cell, which can't be kept apart from its neighbours.
        if width > 0.0 {
            nodes.push(node(ring, seat, op, width, &under, above, below));
        }
    }
    let angles = solve(&nodes, ring.unit * ring.middle());
    if let Some(ring) = rings.rings.get_mut(index) {
        stand(ring, round, &angles);
    }
}

/// An operation between the stitches it uses up and those that use it up.
fn node(ring: &Ring, seat: &Seat, op: &Op, width: f64, parents: &[f64], above: &[Option<f64>], below: f64) -> Node {
    let (mut sum, mut pull) = (0.0, 0.0);
    let own = parents.get(seat.parent..seat.parent + op.consumed as usize).unwrap_or_default();
    if !own.is_empty() {
        // A shell of five or five together weigh as five: else the many plain stitches beside them would shift them.
        pull = below * f64::from(op.count().max(op.consumed));
        sum = pull * own.iter().sum::<f64>() / own.len() as f64;
    }
    let heads = ring.heads.iter().zip(above).skip(seat.first).take(op.count() as usize);
    for (head, ideal) in heads.filter_map(|(head, ideal)| Some((head, (*ideal)?))) {
        // The head is asked to move, but the operation moves as a whole: its own offset is taken off.
        sum += ideal - (head - seat.at);
        pull += 1.0;
    }
    let cells = op.made.runs().map(|(stitch, _)| cell_width(stitch)).filter(|cell| *cell > 0.0);
    // What may be given away is a share of a single cell, however many cells the operation has.
    let edge = cells.fold(f64::INFINITY, f64::min) * ring.unit / 2.0;
    Node { width, ideal: (pull > 0.0).then(|| sum / pull), pull, edge: edge.min(width / 2.0) }
}

/// Moves the stitches of a ring to where their operations have come to stand.
fn stand(ring: &mut Ring, round: &Round, angles: &[f64]) {
    let mut found = angles.iter();
    ring.lane = found.next().copied().unwrap_or(ring.lane);
    for seat in &mut ring.seats {
        let Some(op) = round.ops.get(seat.op).filter(|op| op_width(op) > 0.0) else { continue };
        let Some(at) = found.next() else { return };
        for head in ring.heads.iter_mut().skip(seat.first).take(op.count() as usize) {
            *head += at - seat.at;
        }
        seat.at = *at;
    }
}

/// True for two or three of one stitch in one stitch.
fn increases(op: &Op) -> bool {
    op.into == Spot::Stitch && op.consumed == 1 && matches!(op.made, Made::Same(_, 2..=3))
}
