//! Ring layout of a round chart: where every stitch stands, as a scheme and not as the shape.
//!
//! Measures are stitch units: 1 is the height of a single crochet's ring. A place is an angle along the work, in
//! radians, growing the way the work runs, and a radius; a [`Frame`] turns it into a point.
//!
//! Every stitch stands on what it is worked into. The angles of a round are the least-squares compromise between the
//! angles of the parents and even spacing, a cyclic tridiagonal system, so a chart takes time linear in its stitches.

mod angles;
mod radii;
mod repeats;
mod rows;

use kurbo::Point;

pub use radii::{cell_width, ring_height};
pub use repeats::repeats;
pub use rows::Row;

use crate::design::Hand;
use crate::plan::{Close, Foundation, Made, Op, Round, SizePlan, Spot};
use crate::units::{Angle, TURN};

use angles::Node;

/// How hard the start of a round is held on the start of the round before, against one stitch.
const LANE_PULL: f64 = 12.0;

/// The most a lane takes of its ring, radians.
pub const WIDEST_LANE: f64 = 0.28 * TURN;

/// How much nearer the stitches of an increase stand to one another than other neighbours do, so that they are seen to
/// belong together.
pub const NEARER: f64 = 0.8;

/// How the rings lie on the page.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Frame {
    /// Clock position of the start, as an angle clockwise from twelve.
    pub start: Angle,
    /// Rounds run anticlockwise for the right hand, clockwise for the left.
    pub hand: Hand,
}

impl Frame {
    /// Direction from the centre at an angle along the work, clockwise from twelve.
    pub fn clock(&self, along: f64) -> Angle {
        let along = Angle::from_radians(along);
        match self.hand {
            Hand::Right => self.start - along,
            Hand::Left => self.start + along,
        }
    }

    /// The point at an angle along the work and a radius, the centre at (0, 0), y down.
    pub fn point(&self, along: f64, radius: f64) -> Point {
        let clock = self.clock(along);
        Point::new(radius * clock.sin(), -radius * clock.cos())
    }
}

/// A laid-out chart.
#[derive(Clone, Debug, PartialEq)]
pub struct Rings {
    /// Radius of the clear centre.
    pub centre: f64,
    /// Angles of the stitches that the first ring is worked into; empty for a start at the centre.
    pub base: Vec<f64>,
    /// The rings from the centre outward.
    pub rings: Vec<Ring>,
}

/// One ring: a round, or a band of rounds that are alike.
#[derive(Clone, Debug, PartialEq)]
pub struct Ring {
    /// The rounds it stands for.
    pub row: Row,
    /// Angle of the middle of the lane between the last stitch and the first.
    pub lane: f64,
    /// Width of that lane, radians.
    pub lane_width: f64,
    /// Radius of the feet at the start and at the end; they differ in a spiral.
    pub foot: (f64, f64),
    /// Radius of the heads at the start and at the end.
    pub head: (f64, f64),
    /// Clear margin below the feet and above the heads.
    pub margin: f64,
    /// Height of what stands on the heads and is no stitch of its own: picots.
    pub crest: f64,
    /// Angle that a stitch one unit wide takes.
    pub unit: f64,
    /// Angle of every counted stitch of the round, in working order.
    pub heads: Vec<f64>,
    /// Every operation that makes something.
    pub marks: Vec<Mark>,
}

/// An operation in its place.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Mark {
    /// Index into the operations of the round.
    pub op: usize,
    /// Angle of the middle of what it makes.
    pub at: f64,
    /// Index of its first stitch in [`Ring::heads`].
    pub first: usize,
    /// Index of the first stitch of the round before that it uses up.
    pub parent: usize,
}

impl Ring {
    /// Angle at which the first cell begins.
    pub fn from(&self) -> f64 {
        self.lane + self.lane_width / 2.0
    }

    /// Angle at which the last cell ends.
    pub fn to(&self) -> f64 {
        self.lane - self.lane_width / 2.0 + TURN
    }

    /// Radius of the feet at an angle.
    pub fn foot_at(&self, along: f64) -> f64 {
        self.between(self.foot, along)
    }

    /// Radius of the heads at an angle.
    pub fn head_at(&self, along: f64) -> f64 {
        self.between(self.head, along)
    }

    fn between(&self, (start, end): (f64, f64), along: f64) -> f64 {
        let share = (along - self.from()) / (self.to() - self.from());
        start + (end - start) * share.clamp(0.0, 1.0)
    }

    /// The least room of a stitch: height of the ring, or width along it at half height, in stitch units. A ring of
    /// slip stitches is low, but its dots are as easily read as those of a full one.
    pub fn least_cell(&self) -> f64 {
        let middle = (self.foot.0 + self.head.0) / 2.0;
        (self.unit * middle).min((self.head.0 - self.foot.0).max(1.0))
    }
}

impl Rings {
    /// Outermost radius.
    pub fn outer(&self) -> f64 {
        self.rings.last().map_or(self.centre, |ring| ring.head.1.max(ring.head.0) + ring.margin + ring.crest)
    }

    /// The angles that ring `index` is worked into.
    pub fn parents(&self, index: usize) -> &[f64] {
        match index.checked_sub(1).and_then(|below| self.rings.get(below)) {
            Some(below) => &below.heads,
            None => &self.base,
        }
    }
}

/// Lays out the rings of `rows`. `lanes[i]` is the width wanted for the lane at the start of ring i, in stitch units; a
/// lane never takes more than [`WIDEST_LANE`]. Time and memory are linear in the stitches.
pub fn layout(size: &SizePlan, rows: &[Row], lanes: &[f64]) -> Rings {
    let first = rows.first().and_then(|row| size.rounds.get(row.first));
    let before = first.map_or(0, |round| round.before);
    let centre = radii::centre(size, before);
    let mut rings = Rings { centre, base: Vec::new(), rings: Vec::with_capacity(rows.len()) };
    for (index, mut ring) in radii::stack(size, rows, centre).into_iter().enumerate() {
        let Some(round) = size.rounds.get(ring.row.first) else { continue };
        let radius = (ring.foot.0 + ring.head.0) / 2.0;
        let wanted = lanes.get(index).copied().unwrap_or(0.0) / radius.max(0.1);
        ring.lane = rings.rings.last().map_or(0.0, |below| below.lane);
        ring.lane_width = wanted.min(WIDEST_LANE);
        if index == 0 {
            let step = (ring.to() - ring.from()) / f64::from(before.max(1));
            rings.base = (0..before).map(|i| ring.from() + step * (f64::from(i) + 0.5)).collect();
        }
        let wishes = wishes(&rings, &ring, index);
        settle(&mut ring, round, &wishes);
        rings.rings.push(ring);
    }
    rings
}

/// Where the stitches of a ring would stand by their parents. A lane takes a smaller share of a wider ring: what it gives
/// up goes to all stitches alike and not to those beside it alone.
fn wishes(rings: &Rings, ring: &Ring, index: usize) -> Vec<f64> {
    let parents = rings.parents(index);
    let Some(below) = rings.rings.last() else { return parents.to_vec() };
    let stretch = (ring.to() - ring.from()) / (below.to() - below.from());
    parents.iter().map(|parent| ring.from() + (parent - below.from()) * stretch).collect()
}

/// Finds the angles of one ring, by the angles that its stitches' parents wish for.
fn settle(ring: &mut Ring, round: &Round, parents: &[f64]) {
    let width: f64 = round.ops.iter().map(radii::op_width).sum();
    ring.unit = (TURN - ring.lane_width) / width.max(1e-6);
    let mut nodes = Vec::with_capacity(round.ops.len() + 1);
    nodes.push(Node { width: ring.lane_width, wish: Some(ring.lane), pull: LANE_PULL });
    let mut parent = 0;
    for op in &round.ops {
        let used = op.consumed as usize;
        let own = parents.get(parent..parent + used).unwrap_or_default();
        parent += used;
        let width = radii::op_width(op) * ring.unit;
        if width > 0.0 {
            let wish = (!own.is_empty()).then(|| own.iter().sum::<f64>() / own.len() as f64);
            nodes.push(Node { width, wish, pull: 1.0 });
        }
    }
    let angles = angles::solve(&nodes);
    let mut found = angles.into_iter();
    ring.lane = found.next().unwrap_or(ring.lane);
    stand_stitches(ring, round, found);
}

/// Deals the angles of the operations out to their stitches.
fn stand_stitches(ring: &mut Ring, round: &Round, mut found: impl Iterator<Item = f64>) {
    let mut parent = 0;
    for (index, op) in round.ops.iter().enumerate() {
        let width = radii::op_width(op);
        let first = ring.heads.len();
        let last_head = ring.heads.last().copied().unwrap_or(ring.from());
        let at = if width > 0.0 { found.next().unwrap_or(last_head) } else { last_head };
        let near = if increases(op) { NEARER } else { 1.0 };
        let mut edge = at - near * width * ring.unit / 2.0;
        for (stitch, count) in op.made.runs() {
            let cell = near * cell_width(stitch) * ring.unit;
            for _ in 0..count * u32::from(stitch.row().counts) {
                ring.heads.push(edge + cell / 2.0);
                edge += cell;
            }
        }
        if op.into != Spot::Skip {
            ring.marks.push(Mark { op: index, at, first, parent });
        }
        parent += op.consumed as usize;
    }
}

/// True where a ring runs on as a spiral.
fn spirals(round: &Round) -> bool {
    round.close == Close::Spiral
}

/// Stitches across the widest place of what an operation makes, for a foundation of chains.
fn foundation_radius(foundation: Foundation) -> f64 {
    match foundation {
        Foundation::Ring | Foundation::Chain(_) => 1.15,
        Foundation::ChainRing(chains) => (f64::from(chains) * 0.36 / TURN + 0.75).max(1.15),
    }
}

/// True for two or three of one stitch in one stitch.
fn increases(op: &Op) -> bool {
    op.into == Spot::Stitch && op.consumed == 1 && matches!(op.made, Made::Same(_, 2..=3))
}

/// True for one plain stitch into one.
pub fn is_plain(op: &Op) -> bool {
    op.consumed == 1 && op.count() == 1 && op.into == Spot::Stitch
}
