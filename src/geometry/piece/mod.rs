//! The piece in space, stitch by stitch: every stitch a patch of the relaxed mesh, seen from somewhere.
//!
//! The mesh has the axis downward; a piece stands right way up: hats and balls as worked from the top, baskets turned
//! over onto their base, and flat work with its right side up.

mod fold;
mod form;
mod seen;
mod view;

use std::collections::BTreeMap;
use std::ops::Range;

pub use form::{Form, facing};
pub use seen::{Seen, seen};
pub use view::{Eye, View};

use super::mesh::{Fabric, Mesh, Net, Vec3, Waves};
use crate::craft::{Loops, Stitch};
use crate::design::Hand;
use crate::geometry::SideShape;
use crate::plan::{Plan, SizePlan};
use crate::units::hypot;

/// A stitch in space.
#[derive(Clone, Debug, PartialEq)]
pub struct Patch {
    /// Index of its head in the mesh.
    pub head: usize,
    /// Index of its round.
    pub round: usize,
    /// The stitch.
    pub stitch: Stitch,
    /// Loops that it goes under.
    pub loops: Loops,
    /// Index into the design's colours.
    pub colour: Option<usize>,
    /// Colour of the round it stands on, where it stands on one.
    pub below: Option<usize>,
    /// Its corners, mm: the foot before and after, the head after and before. A chain over a gap has its strand as a
    /// narrow patch.
    pub corners: [Vec3; 4],
    /// True for a chain that bridges a gap.
    pub hangs: bool,
    /// Stitches of the round before that it closes together.
    pub feet: usize,
    /// True where nothing is worked into it: its top loops show.
    pub edge: bool,
    /// True for the turning chain that stands for a stitch.
    pub turning: bool,
    /// True for the first stitch of a joined round.
    pub seam: bool,
    /// True beside a gap.
    pub open: bool,
    /// The picot on its head.
    pub picot: Option<Stitch>,
}

/// A piece in space, right way up: mm, x and y level, z upward.
#[derive(Clone, Debug, PartialEq)]
pub struct Piece {
    /// The stitches, in working order.
    pub patches: Vec<Patch>,
    /// Where every head of the mesh lies.
    pub points: Vec<Vec3>,
    /// Level of the ground that it stands on.
    pub ground: f64,
    /// Greatest height above the ground.
    pub tall: f64,
    /// Greatest distance from the axis.
    pub reach: f64,
    /// Width of a stitch, on average.
    pub stitch: f64,
    /// True for flat work.
    pub flat: bool,
    /// True for flat work with holes, pinned out.
    pub lace: bool,
    /// True where the outside of the fabric is on the left of the work, as it is of all but mirrored pieces.
    pub mirrored: bool,
    /// The waves in which it ruffles, where it does.
    pub waves: Option<Waves>,
    /// The head form that it is put on, where it is.
    pub form: Option<Form>,
}

/// What a piece stands on.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Stand {
    /// The ground, or a table.
    #[default]
    Ground,
    /// The form of the head that it is made for.
    Head,
}

/// Half the thickness of the fabric, in widths of a stitch.
const HALF_THICK: f64 = 0.25;

/// Makes patches of a mesh.
pub fn piece(plan: &Plan, size: &SizePlan, mesh: &Mesh) -> Piece {
    let mirrored = plan.design.hand == Hand::Left;
    let over = plan.from_the_foot() && !mesh.flat;
    // Rounds start at the back, where makers keep the seam.
    let upright = |p: &Vec3| {
        let y = if mirrored != over { -p.y } else { p.y };
        Vec3::new(-y, p.x, if over { p.z } else { -p.z })
    };
    let net = &mesh.net;
    let mut points = mesh.points.clone();
    fold::turn_up(plan, size, net, &mut points);
    let points: Vec<Vec3> = points.iter().map(upright).collect();
    let patches = patches(size, net, &points);
    let count = patches.len().max(1) as f64;
    let stitch = net.heads.iter().skip(net.ring.end).map(|head| head.width).sum::<f64>() / count;
    let (ground, tall, reach) = room(&points);
    Piece {
        patches,
        points,
        ground,
        tall,
        reach,
        stitch,
        flat: mesh.flat,
        lace: mesh.pinned,
        mirrored,
        waves: mesh.waves,
        form: None,
    }
}

/// Makes patches of a hat's mesh on the form of its head; nothing for what isn't worn, or has no crown. `body` is its
/// predicted shape.
pub fn on_head(plan: &Plan, size: &SizePlan, mesh: &Mesh, body: &SideShape) -> Option<Piece> {
    let worn = body.worn.as_ref()?;
    let piece = piece(plan, size, &mesh.on_head(plan, size, body, &Fabric::default())?);
    let form = Form::under(worn.head, HALF_THICK * piece.stitch, piece.ground);
    let tall = piece.ground + piece.tall - form.foot;
    let reach = piece.reach.max(worn.head.widest());
    Some(Piece { ground: form.foot, tall, reach, form: Some(form), ..piece })
}

/// The ground under some points, their height above it and their reach from the axis.
fn room(points: &[Vec3]) -> (f64, f64, f64) {
    let (ground, top) =
        points.iter().fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), p| (low.min(p.z), high.max(p.z)));
    let reach = points.iter().map(|p| hypot(p.x, p.y)).fold(0.0, f64::max);
    if ground.is_finite() { (ground, top - ground, reach) } else { (0.0, 0.0, 0.0) }
}

impl Piece {
    /// What there is of it after so many rounds, every stitch where it comes to lie in the end.
    pub fn after(&self, rounds: usize) -> Self {
        let last = self.patches.iter().map(|patch| patch.round).max().unwrap_or(0);
        if rounds > last {
            return self.clone();
        }
        let mut patches: Vec<Patch> = self.patches.iter().filter(|patch| patch.round < rounds).cloned().collect();
        // Nothing is worked into the last of them yet.
        patches.iter_mut().filter(|patch| patch.round + 1 == rounds).for_each(|patch| patch.edge = true);
        // Heads stand in working order, those of the ring first.
        let heads = patches.iter().map(|patch| patch.head + 1).max().unwrap_or(0);
        let points: Vec<Vec3> = self.points.iter().take(heads).copied().collect();
        let (ground, tall, reach) = room(&points);
        Self { patches, points, ground, tall, reach, ..*self }
    }
}

/// Half way between two heads, or half a stitch beyond the last.
fn middle(points: &[Vec3], at: usize, to: Option<usize>, back: Option<usize>) -> Vec3 {
    match (to, back) {
        (Some(to), _) => (points[at] + points[to]) / 2.0,
        (None, Some(back)) => points[at] + (points[at] - points[back]) / 2.0,
        (None, None) => points[at],
    }
}

/// The ends of the stretch that some heads take: before the first and after the last.
fn stretch(net: &Net, points: &[Vec3], on: &Range<usize>) -> [Vec3; 2] {
    let (first, last) = (on.start, on.end.max(on.start + 1) - 1);
    let (a, b) = (&net.heads[first], &net.heads[last]);
    [middle(points, first, a.before, a.after), middle(points, last, b.after, b.before)]
}

/// What a stitch is worked into, as one stretch of the round below.
fn under(net: &Net, points: &[Vec3], head: usize) -> Option<[Vec3; 2]> {
    let feet = &net.heads[head].feet;
    let (first, last) = (feet.first()?, feet.last()?);
    Some([stretch(net, points, &first.on)[0], stretch(net, points, &last.on)[1]])
}

fn patches(size: &SizePlan, net: &Net, points: &[Vec3]) -> Vec<Patch> {
    let mut used = vec![false; net.heads.len()];
    for foot in net.heads.iter().flat_map(|head| &head.feet) {
        used[foot.on.clone()].fill(true);
    }
    let crests: BTreeMap<usize, Stitch> = net.crests.iter().map(|crest| (crest.on, crest.stitch)).collect();
    let mut patches = Vec::with_capacity(net.heads.len());
    let last = net.rounds.len().saturating_sub(1);
    let step = (!net.step.is_empty()).then_some((last, &net.step));
    for (round, own) in net.rounds.iter().enumerate().chain(step) {
        let feet = feet_of(net, points, own);
        let info = size.rounds.get(round);
        let colour = info.and_then(|round| round.colour);
        let below = round.checked_sub(1).and_then(|below| size.rounds.get(below)).and_then(|round| round.colour);
        let joined = info.is_some_and(|round| round.close == crate::craft::Close::Join);
        for (i, at) in own.clone().enumerate() {
            let head = &net.heads[at];
            let [before, after] = stretch(net, points, &(at..at + 1));
            let hangs = head.feet.is_empty();
            let gap = |side: Option<usize>| side.is_some_and(|side| net.heads[side].feet.is_empty());
            let corners = match feet[i] {
                Some([a, b]) => [a, b, after, before],
                None => hanging(net, points, own, at, before, after),
            };
            patches.push(Patch {
                head: at,
                round,
                stitch: head.stitch,
                loops: head.loops,
                colour,
                below: below.or(colour),
                corners,
                hangs,
                feet: head.feet.len(),
                edge: !used[at],
                turning: head.turning,
                seam: joined && i == 0 && round > 0,
                open: gap(head.before) || gap(head.after),
                picot: crests.get(&at).copied(),
            });
        }
    }
    patches
}

/// A chain over a gap: a strand half as high as it is long, below the heads.
fn hanging(net: &Net, points: &[Vec3], own: &Range<usize>, at: usize, before: Vec3, after: Vec3) -> [Vec3; 4] {
    let stands = own.clone().min_by_key(|other| (net.heads[*other].feet.is_empty(), other.abs_diff(at)));
    let down = stands.and_then(|stands| {
        let foot = net.heads[stands].feet.first()?.on.start;
        (points[foot] - points[stands]).try_normalize(1e-9)
    });
    let down = down.unwrap_or_else(Vec3::zeros) * (0.45 * net.heads[at].width);
    [before + down, after + down, after, before]
}

/// The stretch of the round below that each stitch of a round stands on: stitches in one place share it, and what is
/// skipped between two stitches is closed by both.
fn feet_of(net: &Net, points: &[Vec3], own: &Range<usize>) -> Vec<Option<[Vec3; 2]>> {
    let mut feet: Vec<Option<[Vec3; 2]>> = own.clone().map(|at| under(net, points, at)).collect();
    let place = |at: usize| net.heads[at].feet.first().map(|foot| foot.on.clone());
    let standing: Vec<usize> = own.clone().filter(|at| place(*at).is_some()).collect();
    for group in standing.chunk_by(|a, b| place(*a) == place(*b)) {
        let count = group.len() as f64;
        for (j, at) in group.iter().enumerate().filter(|_| group.len() > 1) {
            if let Some([a, b]) = feet[at - own.start] {
                let share = |j: f64| a + (b - a) * (j / count);
                feet[at - own.start] = Some([share(j as f64), share(j as f64 + 1.0)]);
            }
        }
    }
    let last = own.len();
    for i in 0..last {
        let next = (i + 1) % last;
        if net.heads[own.start + i].after != Some(own.start + next) {
            continue;
        }
        if let (Some(here), Some(there)) = (feet[i], feet[next]) {
            let seam = (here[1] + there[0]) / 2.0;
            feet[i] = Some([here[0], seam]);
            feet[next] = Some([seam, there[1]]);
        }
    }
    feet
}

impl Patch {
    /// The point at `u` across (−½ before, ½ after) and `v` up (0 at the foot, 1 at the head), `lift` millimetres out.
    pub fn at(&self, u: f64, v: f64, lift: f64) -> Vec3 {
        let [a, b, c, d] = self.corners;
        let (foot, head) = (a + (b - a) * (u + 0.5), d + (c - d) * (u + 0.5));
        foot + (head - foot) * v + self.normal() * lift
    }

    /// The way out of the right side, of length 1.
    pub fn normal(&self) -> Vec3 {
        let [a, b, c, d] = self.corners;
        let across = (b - a) + (c - d);
        let up = (d - a) + (c - b);
        up.cross(&across).try_normalize(1e-12).unwrap_or_else(Vec3::z)
    }

    /// Width across its middle, mm.
    pub fn width(&self) -> f64 {
        let [a, b, c, d] = self.corners;
        ((b + c) / 2.0 - (a + d) / 2.0).norm()
    }

    /// Height up its middle, mm.
    pub fn height(&self) -> f64 {
        let [a, b, c, d] = self.corners;
        ((c + d) / 2.0 - (a + b) / 2.0).norm()
    }
}
