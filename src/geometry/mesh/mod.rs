//! The mesh of stitches in space: what no body of revolution can show, such as corners, ruffles, ovals and flaps.
//!
//! A node a stitch, at its head. [`net`](Net) says which hangs on which, `energy` what is minimised, `relax` how;
//! the search starts from the predicted body of revolution. The same plan gives the same numbers on every machine, and
//! time and memory are all but linear in the stitches.

mod energy;
mod net;
mod order;
mod relax;
mod start;
mod waves;
mod worn;

pub use energy::Vec3;
pub use net::{Crest, Foot, Head, Net};
pub use waves::Waves;

use super::shape::Rest;
use super::{FindingKind, SideShape};
use crate::limits;
use crate::plan::{Plan, SizePlan};
use crate::units::TURN;

/// Fall of the energy, as a share, that ends the search: of a piece that stands as its body does, and of one that waves.
const EVEN: (f64, f64) = (1e-3, 1e-4);

/// Share of chains over gaps above which a flat piece is lace, which is pinned out.
pub const LACE: f64 = 0.03;

/// A round of fewer stitches gives way to what its neighbours want.
const FEW: usize = 30;

/// A body lower than this share of its reach is flat work.
const FLAT: f64 = 0.25;

/// Fewer steps for more stitches: so many stitches are moved in all.
const EFFORT: usize = 1_600_000;

/// What the fabric is like.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Fabric {
    /// Stiffness against bending, that of a sheet as thick as the fabric being 1.
    pub bending: f64,
    /// Stiffness against shear, that against stretch being 1.
    pub shear: f64,
}

impl Default for Fabric {
    /// A little stiffer than the sheet, since yarn holds on to yarn, and softer against shear than against stretch: our
    /// judgement, by how hats, hexagons and ruffles come out.
    fn default() -> Self {
        Self { bending: 1.5, shear: 0.3 }
    }
}

/// A piece in space, mm: the axis is z, downward from where the work starts; seen from above, where the eye looks along
/// z, the work runs anticlockwise for the right hand.
#[derive(Clone, Debug, PartialEq)]
pub struct Mesh {
    /// Which stitch hangs on which.
    pub net: Net,
    /// Where the heads lie.
    pub points: Vec<Vec3>,
    /// Largest share by which a round is longer or shorter than at rest, on average over the round.
    pub strain: f64,
    /// True for flat work.
    pub flat: bool,
    /// True for lace, pinned out flat.
    pub pinned: bool,
    /// True where the piece was too large to be relaxed.
    pub too_large: bool,
    /// The waves in which the last of the rounds hangs that ruffle, as it is relaxed.
    pub waves: Option<Waves>,
}

/// Relaxes one size in space from its predicted body of revolution.
pub fn mesh(plan: &Plan, size: &SizePlan, body: &SideShape, fabric: &Fabric) -> Mesh {
    let rest = Rest::of(plan, size);
    let mut net = Net::of(plan, size, &rest);
    let pinned = lies_flat(body) && net.hangs() > LACE;
    let start = start::lay(size, &net, &rest, body, pinned);
    let ruffling = body.findings.iter().rfind(|finding| finding.kind == FindingKind::Ruffles).map(|it| it.last);
    let ruffles = ruffling.is_some();
    if !ruffles {
        settle(&mut net, body);
    }
    let mut points = start.points;
    let count = net.heads.len();
    let too_large = count > limits::MESH;
    if count > 3 && !too_large {
        let mut energy = energy::Energy::of(&net, &rest, body, fabric, pinned);
        if plan.design.kind.row().stuffed && !ruffles {
            energy = energy.filled(&net, &start::reaches(size, &net, body));
        }
        let order = order::dissect(&spots(&net, &start.angles));
        let even = if ruffles { EVEN.1 } else { EVEN.0 };
        relax::relax(&energy, &net, &mut points, &order, net.width(), (steps(&net), even));
    }
    centre(&mut points);
    upright(&net, &rest, &mut points);
    let strain = strain(&net, &points);
    let waves = ruffling.filter(|_| !too_large && !pinned).and_then(|round| {
        let own = net.rounds.get((round as usize).checked_sub(1)?)?;
        waves::waves(&points, own, round, net.heads.get(own.start)?.width)
    });
    Mesh { net, points, strain, flat: lies_flat(body), pinned, too_large, waves }
}

/// Most steps in which a net is let go.
fn steps(net: &Net) -> usize {
    (EFFORT / net.heads.len().max(1)).clamp(60, 600)
}

/// True for a body so low that it is flat work.
pub fn lies_flat(body: &SideShape) -> bool {
    let (mut low, mut high, mut reach) = (0.0_f64, 0.0_f64, 0.0_f64);
    for round in &body.rounds {
        (low, high) = (low.min(round.height.mm()), high.max(round.height.mm()));
        reach = reach.max(round.radius.mm());
    }
    high - low < FLAT * reach
}

/// Where nothing ruffles, the few stitches in the middle of a disc give way altogether, as they do in the body.
fn settle(net: &mut Net, body: &SideShape) {
    let counts: Vec<usize> = net.rounds.iter().map(ExactSizeIterator::len).collect();
    for head in &mut net.heads {
        let Some(round) = head.round.filter(|round| counts.get(*round).is_some_and(|count| *count < FEW)) else {
            continue;
        };
        let Some(round) = body.rounds.get(round) else { continue };
        head.width *= 1.0 + round.hoop_strain;
        head.height *= 1.0 + round.slant_strain;
    }
}

/// Moves a piece so that its middle lies on the axis: a fabric in space drifts.
fn centre(points: &mut [Vec3]) {
    let mut middle = points.iter().sum::<Vec3>() / points.len().max(1) as f64;
    middle.z = 0.0;
    points.iter_mut().for_each(|point| *point -= middle);
}

/// Turns a piece so that what lies on a table does: the plane nearest to it becomes level.
fn upright(net: &Net, rest: &Rest, points: &mut [Vec3]) {
    let held = |head: &Head| head.round.and_then(|round| rest.rounds.get(round)).is_some_and(|round| round.blocked);
    let base: Vec<Vec3> = net.heads.iter().zip(points.iter()).filter(|(head, _)| held(head)).map(|(_, p)| *p).collect();
    let middle = base.iter().sum::<Vec3>() / base.len().max(1) as f64;
    // z = a x + b y about the middle, by least squares.
    let sum = |value: &dyn Fn(Vec3) -> f64| base.iter().map(|p| value(p - middle)).sum::<f64>();
    let (xx, xy, yy) = (sum(&|p| p.x * p.x), sum(&|p| p.x * p.y), sum(&|p| p.y * p.y));
    let (xz, yz) = (sum(&|p| p.x * p.z), sum(&|p| p.y * p.z));
    let whole = xx * yy - xy * xy;
    if whole <= 1e-9 * (xx + yy) * (xx + yy) {
        return;
    }
    let normal = Vec3::new(-(xz * yy - yz * xy) / whole, -(yz * xx - xz * xy) / whole, 1.0).normalize();
    let Some(across) = (Vec3::x() - normal * normal.x).try_normalize(1e-9) else { return };
    let along = normal.cross(&across);
    points.iter_mut().for_each(|p| *p = Vec3::new(p.dot(&across), p.dot(&along), p.dot(&normal)));
}

fn spots(net: &Net, angles: &[f64]) -> Vec<order::Spot> {
    let one = |(index, head): (usize, &Head)| {
        let own = head.round.map_or(&net.ring, |round| &net.rounds[round]);
        let turn = (angles[index] / TURN).rem_euclid(1.0);
        order::Spot { index, row: head.round.map_or(0.0, |round| (round + 1) as f64), turn, count: own.len() as f64 }
    };
    net.heads.iter().enumerate().map(one).collect()
}

/// Largest strain along a round, on average over the round.
fn strain(net: &Net, points: &[Vec3]) -> f64 {
    let one = |own: &std::ops::Range<usize>| {
        let (mut long, mut rest) = (0.0, 0.0);
        for at in own.clone() {
            let Some(after) = net.heads[at].after else { continue };
            long += (points[after] - points[at]).norm();
            rest += (net.heads[at].width + net.heads[after].width) / 2.0;
        }
        if rest > 0.0 { (long / rest - 1.0).abs() } else { 0.0 }
    };
    net.rounds.iter().skip(3).map(one).fold(0.0, f64::max)
}
