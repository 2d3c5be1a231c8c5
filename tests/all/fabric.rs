//! Fabric for the tests: plans built straight from counts, without a design file or a solver.
#![allow(dead_code, unreachable_pub)]

use roundelay::craft::{Foundation, Loops, Op, Round, Stitch};
use roundelay::design::{Design, Kind, Part, Shape, Size};
use roundelay::plan::{PartPlan, Plan, SizePlan};
use roundelay::units::{Gauge, Mm};

use crate::common::{self, bare, part};

/// Width and height of a single crochet in the tests, mm: 22 stitches and 24 rounds to 4 inches, as in a published
/// leaflet's gauge.
pub const W: f64 = 101.6 / 22.0;
pub const H: f64 = 101.6 / 24.0;
/// Thickness of the fabric in the tests, mm.
pub const THICK: f64 = 2.5;

/// One part of a test piece.
#[derive(Clone)]
pub struct Piece {
    pub name: &'static str,
    pub shape: Shape,
    pub stitch: Stitch,
    pub loops: Loops,
    pub counts: Vec<u32>,
}

pub fn piece(name: &'static str, shape: Shape, counts: impl IntoIterator<Item = u32>) -> Piece {
    Piece { name, shape, stitch: Stitch::SC, loops: Loops::Both, counts: counts.into_iter().collect() }
}

impl Piece {
    pub fn of(self, stitch: Stitch) -> Self {
        Self { stitch, ..self }
    }

    pub fn under(self, loops: Loops) -> Self {
        Self { loops, ..self }
    }
}

pub fn straight() -> Shape {
    Shape::straight(vec![Mm::ZERO])
}

pub fn flat() -> Shape {
    Shape::flat(vec![Mm::ZERO])
}

pub fn design(kind: Kind, pieces: &[Piece], sizes: Vec<Size>) -> Design {
    let made = |piece: &Piece| Part { loops: piece.loops, ..part(piece.name, piece.stitch, piece.shape.clone()) };
    Design { sizes, parts: pieces.iter().map(made).collect(), ..bare("Test piece", kind) }
}

/// A round from one count to the next, shaped any which way: the shape of the piece only asks for the counts.
fn round(number: u32, part: usize, piece: &Piece, before: u32, after: u32) -> Round {
    let (least, most) = (before.min(after), before.max(after));
    let stitch = piece.stitch;
    let mut ops = vec![Op::plain(stitch); least.saturating_sub(1) as usize];
    if before == 0 {
        ops = vec![Op::into_ring(stitch); after as usize];
    } else if after >= before {
        ops.push(Op::increase(stitch, most - least + 1));
    } else {
        ops.push(Op::decrease(stitch, most - least + 1));
    }
    let ops = ops.into_iter().map(|op| op.under(piece.loops)).collect();
    Round { part, stitch, ..common::round(number, ops) }
}

pub fn gauges() -> Vec<(Stitch, Gauge)> {
    let gauge = |height: f64| Gauge {
        width: Mm::new(W),
        height: Mm::new(height),
        thick: Mm::new(THICK),
        grams: None,
        assumed: false,
    };
    vec![
        (Stitch::SC, gauge(H)),
        (Stitch::HDC, gauge(1.5 * H)),
        (Stitch::DC, gauge(2.0 * H)),
        (Stitch::SL_ST, gauge(0.3 * H)),
        (Stitch::CH, gauge(0.4 * H)),
    ]
}

/// One size of a piece.
pub fn size(name: &str, head: Option<f64>, foundation: Foundation, pieces: &[Piece]) -> SizePlan {
    let (mut rounds, mut parts, mut before) = (Vec::new(), Vec::new(), 0);
    for (part, piece) in pieces.iter().enumerate() {
        let first = rounds.len() as u32 + 1;
        for (i, &after) in piece.counts.iter().enumerate() {
            let loops = if i == 0 { piece.loops } else { Loops::Both };
            rounds.push(round(rounds.len() as u32 + 1, part, &piece.clone().under(loops), before, after));
            before = after;
        }
        let around = Mm::new(W * f64::from(before));
        parts.push(PartPlan {
            target: around,
            reached: around,
            length: Mm::new(H * piece.counts.len() as f64),
            ..common::part_plan(piece.name, first, rounds.len() as u32)
        });
    }
    SizePlan {
        head: head.map(Mm::new),
        wanted: Mm::new(head.unwrap_or_default()),
        finished: Mm::new(head.unwrap_or_default()),
        foundation,
        ..common::size_plan(name, rounds, parts)
    }
}

/// A plan of one size.
pub fn plan(kind: Kind, foundation: Foundation, pieces: &[Piece]) -> Plan {
    several(kind, &[("M", None, foundation, pieces.to_vec())])
}

/// A plan of several sizes with the same parts.
pub fn several(kind: Kind, sizes: &[(&str, Option<f64>, Foundation, Vec<Piece>)]) -> Plan {
    let heads = sizes
        .iter()
        .map(|(name, head, ..)| Size { head: head.map(Mm::new), ..common::size(name, head.unwrap_or_default()) });
    let pieces = sizes.first().map(|(.., pieces)| pieces.clone()).unwrap_or_default();
    Plan {
        design: design(kind, &pieces, heads.collect()),
        gauges: gauges(),
        scales: Vec::new(),
        sizes: sizes.iter().map(|(name, head, foundation, pieces)| size(name, *head, *foundation, pieces)).collect(),
    }
}

/// Counts along a profile r(s) at a stitch width `w`, one every round height `H`, `n` rounds.
pub fn along(r: impl Fn(f64) -> f64, w: f64, n: u32) -> Vec<u32> {
    let count = |k: u32| (core::f64::consts::TAU * r(f64::from(k) * H) / w).round().max(1.0) as u32;
    (1..=n).map(count).collect()
}

/// Stitch width at which a flat disc grows by 6 stitches a round exactly: w = 2πh/6.
pub const SIX: f64 = core::f64::consts::TAU * H / 6.0;

/// The plan at another stitch width.
pub fn at_width(plan: Plan, width: f64) -> Plan {
    let gauges = plan.gauges.iter();
    let wider = |gauge: &Gauge| Gauge { width: Mm::new(width), thick: gauge.thick * (width / W), ..*gauge };
    let gauges = gauges.map(|(stitch, gauge)| (*stitch, wider(gauge))).collect();
    Plan { gauges, ..plan }
}
