//! The symbols of a round, each on what it is worked into.

use kurbo::{BezPath, Point, Vec2};

use super::lane::Lane;
use super::placed::Placed;
use super::{PARTING, Scene, squeeze};
use crate::craft::{Begin, Build, Close, Foundation, Loops, Op, Round, Spot, Stitch};
use crate::drawing::symbols::{Fit, Stance};
use crate::drawing::{Ends, Item, PathItem, Sign, Stroke};
use crate::geometry::rings::{Ring, SLIP, Seat};
use crate::units::{EPSILON, TURN, hypot};

/// Tangent of the lean up to which a tall stitch is drawn leaning as it is.
const UPRIGHT: f64 = 0.1;

/// Lift of a foot shared by stitches that lie down, in stitch units; those that lean have a part of it.
const LIFT: f64 = 0.25;

/// How far below the feet of a first round the chains lie that it is worked into, in stitch units.
const CHAIN_BELOW: f64 = 0.3;

/// Least room from foot to foot under the chains of a space, in stitch units: a stroke and some air.
const NARROW: f64 = 0.17;

/// What the first ring stands on: a ring, chains, or the stitches of the round before.
pub(super) fn foundation(scene: &mut Scene<'_>) -> Vec<Item> {
    let begins = scene.ring(0).is_some_and(|ring| ring.row.first == 0);
    if let (Foundation::ChainRound(_), true) = (scene.size.foundation, begins) {
        return chains(scene);
    }
    if !scene.rings.base.is_empty() {
        return tops(scene).into_iter().collect();
    }
    let sign = match scene.size.foundation {
        Foundation::Ring => Sign::Ring,
        Foundation::ChainRing(chains) => Sign::ChainRing(chains),
        Foundation::ChainRound(chains) | Foundation::Chain(chains) => Sign::TurningChain(chains.min(20) as u8),
    };
    let fit = sign.fit();
    // Turned with the start, so that the tail of a ring hangs out away from it.
    let head = scene.at(0.0, fit.height / 2.0);
    vec![scene.symbol(sign, fit, (-head.to_vec2()).to_point(), head)]
}

/// The chains that an open tube begins on, one below each stitch of its first round.
fn chains(scene: &mut Scene<'_>) -> Vec<Item> {
    let Some(ring) = scene.ring(0).cloned() else { return Vec::new() };
    let sign = Sign::Stitch(Stitch::CH, Loops::Both);
    let seats: Vec<f64> = ring.seats.iter().map(|seat| seat.at).take_while(|at| *at < scene.until(&ring)).collect();
    let mut items = Vec::with_capacity(seats.len());
    for along in seats {
        let radius = ring.foot_at(along) - CHAIN_BELOW;
        let fit = Fit { width: ring.unit * radius, ..sign.fit() };
        let (foot, head) = (radius - fit.height / 2.0, radius + fit.height / 2.0);
        let (foot, head) = (scene.at(along, foot), scene.at(along, head));
        items.push(scene.symbol(sign, fit, foot, head));
    }
    items
}

/// The tops of the stitches before the first round shown, as short lines: they are there already.
fn tops(scene: &Scene<'_>) -> Option<Item> {
    let (base, ring) = (&scene.rings.base, scene.ring(0)?);
    // Shorter than a cell, so that they are seen to be several tops and not a line.
    let half = 0.32 * (ring.to() - ring.from()) / base.len() as f64;
    let mut path = BezPath::new();
    for along in base {
        let top = scene.arc(along - half, along + half, |along| ring.foot_at(along) - 0.3);
        path.extend(top.elements().iter().copied());
    }
    let stroke = Stroke { width: 0.35, ink: PARTING, ends: Ends::Butt, dashes: Vec::new() };
    Some(Item::Path(PathItem { path, fill: None, stroke: Some(stroke) }))
}

/// One ring's symbols, in working order.
pub(super) fn draw(scene: &mut Scene<'_>, index: usize) -> Vec<Item> {
    let Some(ring) = scene.ring(index).cloned() else { return Vec::new() };
    let Some(round) = scene.round_of(ring.row) else { return Vec::new() };
    let parents = scene.rings.parents(index);
    let labelled = scene.lanes.get(index).is_none_or(Lane::has_label);
    let items = Vec::with_capacity(ring.seats.len());
    let mut pass = Pass { scene, ring: &ring, parents: &parents, labelled, items };
    // The operations of one repeat are the first of so many equal shares.
    let shown = pass.scene.share.map_or(round.ops.len(), |repeats| round.ops.len() / repeats as usize);
    for seat in ring.seats.iter().take_while(|seat| seat.op < shown) {
        if let Some(op) = round.ops.get(seat.op) {
            let standing = pass.turning_chain(round, seat);
            pass.op(op, seat, standing);
        }
    }
    pass.ends(round);
    pass.slips();
    pass.finish()
}

/// Stitches that an operation makes in one place, picots among them.
fn feet(op: &Op) -> u32 {
    op.made.runs().map(|(_, count)| count).sum()
}

struct Pass<'a, 'b> {
    scene: &'a mut Scene<'b>,
    ring: &'a Ring,
    parents: &'a [f64],
    /// True where its label stands in its lane.
    labelled: bool,
    items: Vec<Placed>,
}

impl Pass<'_, '_> {
    fn foot(&self, along: f64) -> Point {
        self.scene.at(along, self.ring.foot_at(along))
    }

    fn head(&self, along: f64) -> Point {
        self.scene.at(along, self.ring.head_at(along))
    }

    fn stand(&mut self, sign: Sign, fit: Fit, foot: Point, head: Point) {
        self.items.push(Placed { sign, fit, foot, head, rooted: false });
    }

    /// The symbols, those that would meet drawn narrower.
    fn finish(mut self) -> Vec<Item> {
        squeeze::clear(&mut self.items, self.scene.unit, self.scene.frame.hand, &mut self.scene.flattened);
        self.items.iter().map(|placed| self.scene.put(placed)).collect()
    }

    fn put(&mut self, sign: Sign, foot: Point, head: Point, spread: f64) {
        self.put_within(sign, foot, head, spread, 1.0);
    }

    /// The same in a share of the cell's width. Tall stitches that lean stay upright at the head, so that their bars lie
    /// along the ring and never reach into the next.
    fn put_within(&mut self, sign: Sign, foot: Point, head: Point, spread: f64, share: f64) {
        let unit = self.scene.unit;
        let way = head - foot;
        let width = share * self.ring.unit * self.ring.middle();
        let fit = Fit { height: way.hypot() / unit, spread: spread / unit, shift: 0.0, bow: 0.0, width };
        // What lies level is the bar at its head; the arc of one loop at its foot has a say as well.
        let row = sign.row();
        let level = if row.of.loops != Loops::Both { foot.midpoint(head) } else { head };
        let up = level.to_vec2() / level.to_vec2().hypot().max(EPSILON);
        let (rise, aside) = (way.dot(up) / unit, way.dot(Vec2::new(-up.y, up.x)) / unit);
        let (fit, head) = if row.stance == Stance::Slanted && aside.abs() > UPRIGHT * rise.abs() {
            (Fit { height: rise.max(0.3), shift: aside, ..fit }, foot + up)
        } else {
            (fit, head)
        };
        self.items.push(Placed { sign, fit, foot, head, rooted: share < 1.0 });
    }

    /// Stitches that share a foot or a head, upright on the line `across` through the ends they don't share; the shared
    /// end stands aside where it must.
    fn put_shaped(&mut self, sign: Sign, foot: Point, head: Point, across: Vec2) {
        let unit = self.scene.unit;
        let way = head - foot;
        let up = Vec2::new(-across.y, across.x) / across.hypot().max(EPSILON);
        // The line through the ends is read either way, by the hand: up is where the head lies.
        let up = if up.dot(way) < 0.0 { -up } else { up };
        // The clear room at the foot is measured upright: what leans far from the ring below is lifted by what it lacks.
        let out = foot.to_vec2() / foot.to_vec2().hypot().max(EPSILON);
        let foot = foot + out * (LIFT * (1.0 - out.dot(up)).clamp(0.0, 1.0) * unit);
        let way = head - foot;
        // Two feet lie on a line; those between others lie above it, for the ring they stand on is round.
        let row = sign.row();
        let wide = across.hypot() / unit;
        let bowed = row.stance == Stance::SharedHead && row.of.count > 2;
        let fit = Fit {
            height: (way.dot(up) / unit).max(0.3),
            spread: wide,
            shift: way.dot(Vec2::new(-up.y, up.x)) / unit,
            bow: if bowed { wide * wide / (8.0 * self.ring.foot.0) } else { 0.0 },
            width: self.ring.unit * self.ring.middle(),
        };
        self.stand(sign, fit, foot, foot + up);
    }

    /// Chains of a turning chain that stands for the first stitch of the round.
    fn turning_chain(&self, round: &Round, seat: &Seat) -> Option<u8> {
        match round.begin {
            Begin::Chain { chains, counts: true } if seat.op == 0 => Some(chains),
            Begin::Chain { .. } | Begin::Spiral | Begin::Plain => None,
        }
    }

    fn op(&mut self, op: &Op, seat: &Seat, standing: Option<u8>) {
        match op.into {
            Spot::Skip => {}
            Spot::Air => self.air(op, seat),
            Spot::Together => self.together(op, seat),
            Spot::Crossed => self.crossed(op, seat),
            // A turning chain that stands for the first stitch parts it from the others of its increase.
            Spot::Stitch | Spot::Space => match Sign::shared(op).filter(|_| standing.is_none()) {
                Some(sign) => self.increase(sign, op.count() as usize, seat),
                None => self.fan(op, seat, standing),
            },
        }
    }

    /// The angle of the middle of what an operation uses up.
    fn under(&self, op: &Op, seat: &Seat) -> Option<f64> {
        let own = self.parents.get(seat.parent..seat.parent + op.consumed as usize)?;
        if own.is_empty() { None } else { Some(own.iter().sum::<f64>() / own.len() as f64) }
    }

    fn increase(&mut self, sign: Sign, count: usize, seat: &Seat) {
        let last = seat.first + count.saturating_sub(1);
        let (Some(&from), Some(&to)) = (self.ring.heads.get(seat.first), self.ring.heads.get(last)) else { return };
        let Some(&parent) = self.parents.get(seat.parent) else { return };
        let (from, to) = (self.head(from), self.head(to));
        let foot = self.foot(parent);
        self.put_shaped(sign, foot, from.midpoint(to), to - from);
    }

    fn together(&mut self, op: &Op, seat: &Seat) {
        let last = seat.parent + (op.consumed as usize).saturating_sub(1);
        let (Some(&from), Some(&to)) = (self.parents.get(seat.parent), self.parents.get(last)) else { return };
        let (from, to) = (self.foot(from), self.foot(to));
        if let Some(sign) = Sign::shared(op) {
            self.put_shaped(sign, from.midpoint(to), self.head(seat.at), to - from);
        }
    }

    /// Two stitches that cross: from two feet to two heads.
    fn crossed(&mut self, op: &Op, seat: &Seat) {
        let heads = (self.ring.heads.get(seat.first), self.ring.heads.get(seat.first + 1));
        let feet = (self.parents.get(seat.parent), self.parents.get(seat.parent + 1));
        let ((Some(&from), Some(&to)), (Some(&left), Some(&right))) = (heads, feet) else { return };
        let (from, to) = (self.head(from), self.head(to));
        let foot = self.foot(left).midpoint(self.foot(right));
        if let Some(sign) = Sign::shared(op) {
            self.put_shaped(sign, foot, from.midpoint(to), to - from);
        }
    }

    /// Stitches of their own heads from one foot; from several feet side by side where they go into a space.
    fn fan(&mut self, op: &Op, seat: &Seat, standing: Option<u8>) {
        let (under, step) = (self.under(op, seat), self.within(op, seat));
        let all = feet(op);
        let mut next = seat.first;
        let mut chains = standing;
        for (i, stitch) in
            op.made.runs().flat_map(|(stitch, count)| std::iter::repeat_n(stitch, count as usize)).enumerate()
        {
            // A picot has no foot of its own: it stands on the head of the stitch before.
            if stitch.row().counts == 0 {
                self.picot(stitch, self.ring.heads.get(next.saturating_sub(1)).copied().unwrap_or(seat.at));
                continue;
            }
            let Some(&head) = self.ring.heads.get(next) else { return };
            next += 1;
            // Chains between the stitches of a shell lie in a row with their heads and have no foot.
            if stitch == Stitch::CH {
                self.chain(head, 0.5);
                continue;
            }
            let spot = under.map_or(head, |under| under + (i as f64 - f64::from(all - 1) / 2.0) * step);
            let sign = chains.take().map_or(Sign::Stitch(stitch, op.loops), Sign::TurningChain);
            // From one foot several stems part slowly: narrower bars keep them apart further down.
            let share = if all > 1 { 0.72 } else { 1.0 };
            self.put_within(sign, self.foot(spot), self.head(head), 1.0, share);
        }
    }

    /// Angle from one foot to the next of stitches that go under the chains of one space; a narrow one is one foot, and
    /// stems that lean need more room to stay apart. Others rise from one foot.
    fn within(&self, op: &Op, seat: &Seat) -> f64 {
        if op.into != Spot::Space {
            return 0.0;
        }
        let own = self.parents.get(seat.parent..seat.parent + op.consumed as usize).unwrap_or_default();
        let foot = self.ring.foot_at(seat.at);
        let (Some(first), Some(last)) = (own.first(), own.last()) else { return 0.0 };
        let room = (last - first + 0.5 / foot) / f64::from(feet(op).max(1));
        let middle = (first + last) / 2.0;
        let heads = self.ring.heads.iter().skip(seat.first).take(op.count() as usize);
        let aside = heads.map(|head| (head - middle).abs()).fold(0.0, f64::max) * self.ring.middle();
        let high = self.ring.head.0 - self.ring.foot.0;
        if room * foot * high / hypot(high, aside) < NARROW { 0.0 } else { room.min(0.6 * self.ring.unit) }
    }

    /// Chains over a gap, in an arch; a picot on the last stitch.
    fn air(&mut self, op: &Op, seat: &Seat) {
        let count = op.count() as usize;
        let heads: Vec<f64> = self.ring.heads.get(seat.first..seat.first + count).unwrap_or_default().to_vec();
        for (i, head) in heads.iter().enumerate() {
            self.chain(*head, (i as f64 + 0.5) / count as f64);
        }
        if let Some((picot, _)) = op.made.runs().find(|(stitch, _)| stitch.row().build == Build::Picot) {
            self.picot(picot, seat.at);
        }
    }

    /// A chain at the height of the heads; `share` says where in its arch it lies.
    fn chain(&mut self, along: f64, share: f64) {
        let width = self.ring.unit * (self.ring.head_at(along) - 0.5);
        let fit = Fit { width, ..Fit::of(Stitch::CH) };
        let arch = 0.8 * share * (1.0 - share);
        let middle = self.ring.head_at(along) - 0.46 + arch;
        let (foot, head) = (middle - fit.height / 2.0, middle + fit.height / 2.0);
        let (foot, head) = (self.scene.at(along, foot), self.scene.at(along, head));
        self.stand(Sign::Stitch(Stitch::CH, Loops::Both), fit, foot, head);
    }

    fn picot(&mut self, picot: Stitch, along: f64) {
        let head = self.ring.head_at(along);
        let fit = Fit { width: self.ring.unit * head, ..Fit::of(picot) };
        let radius = head + 0.08;
        let (foot, head) = (self.scene.at(along, radius), self.scene.at(along, radius + fit.height));
        self.stand(Sign::Stitch(picot, Loops::Both), fit, foot, head);
    }

    /// The slip stitches that lead from the join to where the round begins, on the heads of the ring below.
    fn slips(&mut self) {
        let Some(shift) = self.ring.shift else { return };
        // The first stitch is where the join went; the last slip stitch goes into what the round begins on.
        let over = self.parents.iter().rev().take(shift.passed.saturating_sub(1)).map(|along| along - TURN);
        let under = self.parents.get(..shift.under).unwrap_or_default();
        let into = under.iter().sum::<f64>() / under.len().max(1) as f64;
        let spots: Vec<f64> = over.chain([into]).collect();
        let fit = Fit::of(Stitch::SL_ST);
        for along in spots {
            let radius = self.ring.foot_at(along) - SLIP;
            let half = fit.height / 2.0;
            let (foot, head) = (self.scene.at(along, radius - half), self.scene.at(along, radius + half));
            self.stand(Sign::Stitch(Stitch::SL_ST, Loops::Both), fit, foot, head);
        }
    }

    /// Angle of the foot of the first stitch.
    fn first_foot(&self, round: &Round) -> Option<f64> {
        let seat = self.ring.seats.first()?;
        let op = round.ops.get(seat.op)?;
        let under = self.under(op, seat)?;
        match op.into {
            Spot::Together | Spot::Crossed => self.parents.get(seat.parent).copied(),
            Spot::Stitch | Spot::Space | Spot::Air | Spot::Skip => {
                Some(under - f64::from(feet(op).saturating_sub(1)) / 2.0 * self.within(op, seat))
            }
        }
    }

    /// What stands in the lane: a turning chain that counts for nothing, the join.
    fn ends(&mut self, round: &Round) {
        let radius = self.ring.middle();
        if let Begin::Chain { chains, counts: false } = round.begin {
            let along = self.ring.from() - 0.3 / radius;
            // It leans with the first stitch.
            let lean = self.first_foot(round).map_or(along, |first| along.min(first - 0.55 / self.ring.foot.0));
            // Where the label stands beside it, only so far as that leaves it room.
            let foot = if self.labelled { lean.max(along - 0.25 / radius) } else { lean };
            self.put(Sign::TurningChain(chains), self.foot(foot), self.head(along), 1.0);
        }
        if round.close == Close::Join && self.scene.share.is_none() {
            // The join lies past the last stitch, on the far side of the lane from the turning chain.
            let along = self.ring.to() + 0.5 / radius;
            let top = self.ring.head_at(along) + 0.12;
            let (foot, head) = (self.scene.at(along, top - 1.0), self.scene.at(along, top));
            self.stand(Sign::Join, Sign::Join.fit(), foot, head);
        }
    }
}
