//! Where the stitches lie before the net is let go: on the predicted body of revolution.

use std::ops::Range;

use super::energy::Vec3;
use super::net::Net;
use crate::craft::Close;
use crate::geometry::shape::{Rest, SHOWS};
use crate::geometry::{RoundShape, SideShape};
use crate::plan::SizePlan;
use crate::units::{Angle, Mm, TURN, hypot};

/// Share of a stitch width by which the start strays from the body, so that a fabric that wants to buckle can.
const STRAY: f64 = 0.01;

/// Squeeze of a round, as a fraction, that makes it wave.
const SQUEEZED: f64 = SHOWS;

/// Most waves round the piece that the start has in it.
const WAVES: [f64; 7] = [2.0, 3.0, 4.0, 5.0, 6.0, 8.0, 11.0];

/// Longest wave of a ruffle that is meant, in lengths of it from its foot to its edge: it is held at its foot, so that a fabric
/// with two waves round the piece would have to lift all of that too.
const LONGEST: f64 = 3.0;

/// A net laid on a body of revolution.
pub(super) struct Start {
    /// Where the heads lie, mm.
    pub(super) points: Vec<Vec3>,
    /// Angle of every head along the work, radians, growing from round to round in a spiral.
    pub(super) angles: Vec<f64>,
}

/// Lays the net on the body, or flat where it is `pinned`: even in every round, each round turned so that its posts stand as straight as they can.
pub(super) fn lay(size: &SizePlan, net: &Net, rest: &Rest, body: &SideShape, pinned: bool) -> Start {
    let angles = angles(net);
    let edges = outline(Mm::new(rest.start), &body.rounds);
    let mut points = vec![Vec3::zeros(); net.heads.len()];
    for at in net.ring.clone() {
        let angle = Angle::from_radians(angles[at]);
        let radius = if net.ring.len() > 1 { rest.start } else { 0.0 };
        points[at] = Vec3::new(radius * angle.cos(), radius * angle.sin(), 0.0);
    }
    let least = least_waves(rest, body);
    for (round, own) in net.rounds.iter().enumerate() {
        let squeeze = body.rounds.get(round).filter(|_| !pinned).map_or(0.0, |round| -round.hoop_strain);
        for (i, at) in own.clone().enumerate() {
            let (mut edge, normal) = on_outline(&edges, (round + 1) as f64 + within(size, round, own, i));
            if pinned {
                edge[1] = 0.0;
            }
            let angle = Angle::from_radians(angles[at]);
            let off = net.heads[at].width
                * (STRAY * chance(at) + waves(squeeze, angle, (edge[0], least), net.heads[at].width));
            let (r, z) = (edge[0] + off * normal[0], edge[1] + off * normal[1]);
            points[at] = Vec3::new(r * angle.cos(), r * angle.sin(), z);
        }
    }
    for at in net.step.clone() {
        let Some(on) = net.heads[at].feet.first().map(|foot| foot.on.start) else { continue };
        let below = net.heads[on].feet.first().map_or(on, |foot| foot.on.start);
        let up = (points[on] - points[below]).try_normalize(1e-9).unwrap_or_else(Vec3::zeros);
        points[at] = points[on] + up * net.heads[at].height;
    }
    Start { points, angles }
}

/// How far the heads of every round lie from the axis on a body, mm.
pub(super) fn reaches(size: &SizePlan, net: &Net, body: &SideShape) -> Vec<(usize, f64)> {
    let edges = outline(body.start, &body.rounds);
    let of = |(round, own): (usize, &Range<usize>)| {
        let at = |(i, at)| (at, on_outline(&edges, (round + 1) as f64 + within(size, round, own, i)).0[0]);
        own.clone().enumerate().map(at).collect::<Vec<_>>()
    };
    net.rounds.iter().enumerate().flat_map(of).collect()
}

/// The outline of a body: where its start and the top edge of every round lie, as (r, z), mm.
pub(super) fn outline(start: Mm, rounds: &[RoundShape]) -> Vec<[f64; 2]> {
    let edges = rounds.iter().map(|round| [round.radius.mm(), round.height.mm()]);
    std::iter::once([start.mm(), 0.0]).chain(edges).collect()
}

/// By how much of a round a stitch lies off where it would in a ring: a spiral climbs by a round while it goes round
/// once, and in the middle of the round it is where a ring would be.
pub(super) fn within(size: &SizePlan, round: usize, own: &Range<usize>, nth: usize) -> f64 {
    let spiral = size.rounds.get(round).is_some_and(|round| round.close == Close::Spiral);
    if spiral { (nth as f64 + 0.5) / own.len() as f64 - 0.5 } else { 0.0 }
}

/// The outline at a number of rounds, with the direction square to it.
pub(super) fn on_outline(edges: &[[f64; 2]], at: f64) -> ([f64; 2], [f64; 2]) {
    let last = edges.len().saturating_sub(2);
    let low = (at.floor().max(0.0) as usize).min(last);
    let (Some(a), Some(b)) = (edges.get(low), edges.get(low + 1)) else {
        return (edges.first().copied().unwrap_or_default(), [0.0, 1.0]);
    };
    let share = at - low as f64;
    let way = [b[0] - a[0], b[1] - a[1]];
    let length = hypot(way[0], way[1]).max(1e-9);
    ([(a[0] + way[0] * share).max(0.0), a[1] + way[1] * share], [-way[1] / length, way[0] / length])
}

/// Fewest waves round a ruffle that is meant; none for what ruffles unasked, which may lift all that it stands on.
fn least_waves(rest: &Rest, body: &SideShape) -> f64 {
    let Some(meant) = body.findings.iter().rfind(|found| found.meant) else { return 0.0 };
    let first = (meant.first as usize).saturating_sub(1);
    let long: f64 = rest.rounds.iter().take(meant.last as usize).skip(first).map(|round| round.height).sum();
    let foot = first.checked_sub(1).and_then(|below| rest.rounds.get(below)).map_or(rest.start, |below| below.radius());
    let most = WAVES.iter().copied().fold(0.0, f64::max);
    (TURN * foot / (LONGEST * long.max(1e-9))).min(most)
}

/// Waves of many lengths in a round that is squeezed, in stitch widths: the net keeps those it wants.
fn waves(squeeze: f64, angle: Angle, (radius, least): (f64, f64), width: f64) -> f64 {
    if squeeze < SQUEEZED {
        return 0.0;
    }
    // A wave of m crests and height A makes the round longer by the share (mA/2r)².
    let room = 2.0 * radius / width * squeeze.sqrt();
    WAVES
        .iter()
        .enumerate()
        .filter(|(_, m)| **m >= least)
        .map(|(i, m)| 0.15 * room / m * (angle * *m + Angle::from_radians(i as f64 * 2.4)).cos())
        .sum()
}

/// A number from −1 to 1 that looks like chance and is the same for the same index.
fn chance(index: usize) -> f64 {
    let mixed = (index as u64 + 1).wrapping_mul(0x9e37_79b9_7f4a_7c15);
    let mixed = (mixed ^ (mixed >> 29)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
    (mixed >> 11) as f64 / (1_u64 << 52) as f64 - 1.0
}

/// Angle of every head along the work, radians, growing from round to round in a spiral: even in every round, each round
/// turned so that its posts stand as straight as they can.
pub(super) fn angles(net: &Net) -> Vec<f64> {
    let mut angles = vec![0.0; net.heads.len()];
    spread(net, net.ring.clone(), &mut angles);
    for own in &net.rounds {
        spread(net, own.clone(), &mut angles);
        // Means on a circle: of the turns by which the feet are ahead of the heads.
        let (mut sin, mut cos) = (0.0, 0.0);
        for at in own.clone() {
            for foot in net.heads[at].feet.iter().filter(|foot| foot.on.start >= net.ring.end) {
                let middle = (angles[foot.on.start] + angles[foot.on.end - 1]) / 2.0;
                let per = TURN / own.clone().map(|at| net.heads[at].width).sum::<f64>().max(1e-9);
                let ahead = Angle::from_radians(middle + foot.lean * per - angles[at]);
                sin += ahead.sin();
                cos += ahead.cos();
            }
        }
        let ahead = if sin == 0.0 && cos == 0.0 { 0.0 } else { Angle::of_vector(cos, sin).radians() };
        own.clone().for_each(|at| angles[at] += ahead);
    }
    for at in net.step.clone() {
        angles[at] = net.heads[at].feet.first().map_or(0.0, |foot| angles[foot.on.start]);
    }
    angles
}

/// Heads side by side, each with room by its width.
fn spread(net: &Net, own: std::ops::Range<usize>, angles: &mut [f64]) {
    let width = |at: usize| net.heads[at].width.max(1e-9);
    let per = TURN / own.clone().map(width).sum::<f64>().max(1e-9);
    let mut edge = 0.0;
    for at in own {
        angles[at] = edge + width(at) * per / 2.0;
        edge += width(at) * per;
    }
}
