//! Ring layout of a round chart: where every stitch stands, as a scheme and not as the shape.
//!
//! Measures are stitch units: 1 is the height of a single crochet's ring. A place is an angle along the work, in
//! radians, growing the way the work runs, and a radius; a [`Frame`] turns it into a point.
//!
//! Every stitch stands on what it is worked into. The angles of a round are the least-squares compromise between the
//! angles of what it stands on, of what stands on it, and even spacing: a cyclic tridiagonal system. The rings are settled
//! one by one, outward and inward a fixed number of times, so a chart takes time linear in its stitches.

mod angles;
mod radii;
mod repeats;
mod rows;
mod settle;

use kurbo::Point;

pub use radii::{SLIP, cell_width, ring_height};
pub use repeats::repeats;
pub use rows::Row;

use crate::craft::{Close, Foundation, Op, Round, Spot};
use crate::design::Hand;
use crate::plan::SizePlan;
use crate::units::{Angle, TOLERANCE, TURN};

use radii::op_width;

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
    /// How it begins further on than the ring below, where it does.
    pub shift: Option<Shift>,
    /// Angle that a stitch one unit wide takes.
    pub unit: f64,
    /// Angle of every counted stitch of the round, in working order.
    pub heads: Vec<f64>,
    /// Every operation that makes something.
    pub seats: Vec<Seat>,
}

/// The beginning of a ring to which slip stitches lead.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Shift {
    /// Stitches of the ring below that are passed over.
    pub passed: usize,
    /// Stitches that the first operation uses up.
    pub under: usize,
    /// Width of what it makes, in stitch units.
    pub width: f64,
}

/// An operation in its place.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Seat {
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

    /// Radius at half height, at the start.
    pub fn middle(&self) -> f64 {
        (self.foot.0 + self.head.0) / 2.0
    }

    fn between(&self, (start, end): (f64, f64), along: f64) -> f64 {
        // Before its first cell and past its last a ring goes on level: what stands in the lane neither sinks nor
        // rises.
        let share = (along - self.from()) / (self.to() - self.from());
        start + (end - start) * share.clamp(0.0, 1.0)
    }

    /// The least room of a stitch: height of the ring, or width along it at half height, in stitch units. A ring of
    /// slip stitches is low, but its dots are as easily read as those of a full one.
    pub fn least_cell(&self) -> f64 {
        (self.unit * self.middle()).min((self.head.0 - self.foot.0).max(1.0))
    }
}

impl Rings {
    /// Outermost radius.
    pub fn outer(&self) -> f64 {
        self.rings.last().map_or(self.centre, |ring| ring.head.1.max(ring.head.0) + ring.margin + ring.crest)
    }

    /// The angles that ring `index` is worked into, from where it begins: those passed over come last.
    pub fn parents(&self, index: usize) -> Vec<f64> {
        let own = match index.checked_sub(1).and_then(|below| self.rings.get(below)) {
            Some(below) => &below.heads,
            None => &self.base,
        };
        // Slip stitches lead past the first parents without using them up: the round comes to them last, a turn
        // further on.
        let passed = self.rings.get(index).and_then(|ring| ring.shift).map_or(0, |shift| shift.passed);
        let (first, rest) = own.split_at(passed.min(own.len()));
        rest.iter().copied().chain(first.iter().map(|angle| angle + TURN)).collect()
    }

    /// Angle of the lane of ring `index` as the ring below has it: its own lane. A ring that begins further on has its lane
    /// half the width of that one before its first cell, so that its stitches lean as much one way as the other.
    fn lane_on_below(&self, index: usize) -> f64 {
        let Some(below) = index.checked_sub(1).and_then(|below| self.rings.get(below)) else { return 0.0 };
        match self.rings.get(index).and_then(|ring| ring.shift) {
            // Its own lane has no place on the ring below, for it begins between two stitches there.
            Some(_) => self.first_cell(index) - below.lane_width / 2.0,
            None => below.lane,
        }
    }

    /// Angle on the ring below at which the first cell of ring `index` begins.
    fn first_cell(&self, index: usize) -> f64 {
        match self.rings.get(index).and_then(|ring| Some((ring.shift?, ring.unit))) {
            Some((shift, unit)) => self.begins_over(index) - shift.width * unit / 2.0,
            None => index.checked_sub(1).and_then(|below| self.rings.get(below)).map_or(0.0, Ring::from),
        }
    }

    /// Angle of the middle of what ring `index` begins on, where it begins further on than the one below; else that of
    /// the lane.
    pub fn begins_over(&self, index: usize) -> f64 {
        let Some(below) = index.checked_sub(1).and_then(|below| self.rings.get(below)) else { return 0.0 };
        let shift = self.rings.get(index).and_then(|ring| ring.shift);
        let under = shift.and_then(|shift| below.heads.get(shift.passed..shift.passed + shift.under));
        match (under.and_then(<[f64]>::first), under.and_then(<[f64]>::last)) {
            (Some(first), Some(last)) => (first + last) / 2.0,
            _ => below.lane,
        }
    }
}

/// Lays out the rings of `rows`. `lanes[i]` is the width wanted for the lane at the start of ring i, in stitch units; a
/// lane never takes more than [`WIDEST_LANE`]. Time and memory are linear in the stitches.
pub fn layout(size: &SizePlan, rows: &[Row], lanes: &[f64]) -> Rings {
    // Radii first: the angles hang on how wide a cell is at its radius, and never the other way round.
    let mut rings = rough(size, rows, lanes);
    let rounds: Vec<&Round> = rings.rings.iter().filter_map(|ring| size.rounds.get(ring.row.first)).collect();
    settle::all(&mut rings, &rounds);
    rings
}

/// The same without its angles: radii, lanes and the room of a stitch, which are enough to choose a scale.
pub fn rough(size: &SizePlan, rows: &[Row], lanes: &[f64]) -> Rings {
    let first = rows.first().and_then(|row| size.rounds.get(row.first));
    let before = first.map_or(0, |round| match size.foundation {
        Foundation::ChainRound(chains) if round.before == 0 => chains,
        Foundation::Ring | Foundation::ChainRing(_) | Foundation::ChainRound(_) | Foundation::Chain(_) => round.before,
    });
    let centre = radii::centre(size, before);
    let mut rings = radii::stack(size, rows, centre);
    for (index, ring) in rings.iter_mut().enumerate() {
        // Near the centre a lane as wide as its label would take the ring: there the label gives way, not the
        // stitches.
        let wanted = lanes.get(index).copied().unwrap_or(0.0) / ring.middle().max(0.1);
        ring.lane_width = wanted.min(WIDEST_LANE);
        let width: f64 = size.rounds.get(ring.row.first).map_or(0.0, |round| round.ops.iter().map(op_width).sum());
        ring.unit = (TURN - ring.lane_width) / width.max(TOLERANCE);
    }
    let base = rings.first().map_or(Vec::new(), |ring| {
        // The stitches before the first ring shown are not laid out: a part begins on stitches spread evenly.
        let step = (ring.to() - ring.from()) / f64::from(before.max(1));
        (0..before).map(|i| ring.from() + step * (f64::from(i) + 0.5)).collect()
    });
    Rings { centre, base, rings }
}

/// True where a ring runs on as a spiral.
fn spirals(round: &Round) -> bool {
    round.close == Close::Spiral
}

/// Stitches across the widest place of what an operation makes, for a foundation of chains.
fn foundation_radius(foundation: Foundation) -> f64 {
    match foundation {
        // Small, so that the chart is not mostly hole, but wide enough for the sign that stands in it.
        Foundation::Ring | Foundation::Chain(_) => 1.15,
        Foundation::ChainRing(chains) => (f64::from(chains) * 0.36 / TURN + 0.75).max(1.15),
        // Its chains lie round the clear centre, one below each stitch.
        Foundation::ChainRound(chains) => (f64::from(chains) / TURN).max(1.15),
    }
}

/// True for one plain stitch into one.
pub fn is_plain(op: &Op) -> bool {
    op.consumed == 1 && op.count() == 1 && op.into == Spot::Stitch
}
