//! Which stitch hangs on which: the heads of all rounds as a net.

use std::iter::once;
use std::ops::Range;

use crate::craft::{Build, Close, Foundation, Loops, Op, Round, Spot, Stitch};
use crate::geometry::shape::Rest;
use crate::plan::{Plan, SizePlan};
use crate::units::{Mm, TURN};

/// What is nearer to the middle of a disc than so many rounds.
const MIDDLE: f64 = 6.0;

/// The head of one counted stitch, or a place of the ring that the first round is worked into.
#[derive(Clone, Debug, PartialEq)]
pub struct Head {
    /// Index of its round; nothing for the ring.
    pub round: Option<usize>,
    /// Index of its operation in the round.
    pub op: usize,
    /// How many of its operation came before it.
    pub nth: u32,
    /// The stitch.
    pub stitch: Stitch,
    /// Loops that its operation goes under.
    pub loops: Loops,
    /// True for the turning chain that stands for the first stitch.
    pub turning: bool,
    /// Where the hook went in; empty for chains over a gap, and for the ring.
    pub feet: Vec<Foot>,
    /// The head before it along the work.
    pub before: Option<usize>,
    /// The head after it.
    pub after: Option<usize>,
    /// Width at rest, mm.
    pub width: f64,
    /// Height at rest, mm.
    pub height: f64,
}

/// One foot of a stitch: a decrease has several.
#[derive(Clone, Debug, PartialEq)]
pub struct Foot {
    /// The heads it goes round: one stitch, or the chains of a space.
    pub on: Range<usize>,
    /// How far along the work the head stands beside the middle of the foot at rest, mm.
    pub lean: f64,
}

/// A picot, on the head of a stitch.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Crest {
    /// The head it stands on.
    pub on: usize,
    /// The picot.
    pub stitch: Stitch,
}

/// The net of one size.
#[derive(Clone, Debug, PartialEq)]
pub struct Net {
    /// All heads, from the ring on, in working order.
    pub heads: Vec<Head>,
    /// The heads of the ring.
    pub ring: Range<usize>,
    /// True where they are chains, each with a stitch in it.
    pub tube: bool,
    /// The heads of every round.
    pub rounds: Vec<Range<usize>>,
    /// The heads of the shorter stitches that bring a spiral down at its end.
    pub step: Range<usize>,
    /// Picots.
    pub crests: Vec<Crest>,
}

impl Net {
    /// Reads the net off a plan.
    pub(super) fn of(plan: &Plan, size: &SizePlan, rest: &Rest) -> Self {
        let first = size.rounds.first().map_or(0, |round| round.after as usize);
        let places = if rest.start > 0.0 { first.max(1) } else { 1 };
        let chains = match size.foundation {
            Foundation::ChainRing(chains) => f64::from(chains) * plan.gauge(Stitch::CH).width.mm(),
            // Worked into one by one they lie as wide as their stitches.
            Foundation::ChainRound(_) => TURN * rest.start,
            Foundation::Ring | Foundation::Chain(_) => 0.0,
        };
        let share = chains / places as f64;
        let tube = matches!(size.foundation, Foundation::ChainRound(_));
        let mut net =
            Self { heads: Vec::new(), ring: 0..places, tube, rounds: Vec::new(), step: 0..0, crests: Vec::new() };
        for place in 0..places {
            let (before, after) = around(0, places, place);
            net.heads.push(Head {
                round: None,
                op: 0,
                nth: 0,
                stitch: Stitch::CH,
                loops: Loops::Both,
                turning: false,
                feet: Vec::new(),
                before,
                after,
                width: share,
                height: 0.0,
            });
        }
        for (index, round) in size.rounds.iter().enumerate() {
            net.work(plan, index, round);
        }
        net.step_down(plan, size);
        net.join(size);
        if !net.tube {
            net.climb(size);
        }
        net
    }

    /// Share of the heads that are chains over gaps.
    pub(super) fn hangs(&self) -> f64 {
        let own = &self.heads[self.ring.end..];
        own.iter().filter(|head| head.feet.is_empty()).count() as f64 / own.len().max(1) as f64
    }

    /// Mean width of a stitch, mm.
    pub(super) fn width(&self) -> f64 {
        self.heads.iter().map(|head| head.width).sum::<f64>() / self.heads.len().max(1) as f64
    }

    /// How much the posts of a round mind their lean, from 0 to 1. In the middle of a spiral of stitches of one width
    /// they can't all stand straight, and having to they would push the middle aside; a tube's, which don't grow, can.
    pub(super) fn stands(&self, round: usize) -> f64 {
        let own = &self.rounds[round];
        let spiral = own.end < self.heads.len() && self.heads[own.end - 1].after == Some(own.end);
        // A tube that begins on a chain has no middle.
        if !spiral || self.tube || (round > 0 && self.rounds[round - 1].len() >= own.len()) {
            return 1.0;
        }
        let (wide, tall) = (self.heads[own.start].width, self.heads[own.end - 1].height);
        let reach = own.len() as f64 * wide / (TURN * tall);
        (reach / MIDDLE - 1.0).clamp(0.0, 1.0)
    }

    /// The heads that a round is worked into.
    fn below(&self, index: usize) -> Range<usize> {
        index.checked_sub(1).and_then(|below| self.rounds.get(below)).unwrap_or(&self.ring).clone()
    }

    fn work(&mut self, plan: &Plan, index: usize, round: &Round) {
        let (below, from) = (self.below(index), self.heads.len());
        let mut next = round.slipped as usize;
        let mut last = Vec::new();
        for (op, done) in round.ops.iter().enumerate() {
            if index > 0 && done.consumed > 0 {
                last = spots(&below, next, done);
                next += done.consumed as usize;
            }
            let made: Vec<Stitch> =
                done.made.runs().flat_map(|(stitch, count)| std::iter::repeat_n(stitch, count as usize)).collect();
            let counted = |stitch: &Stitch| stitch.row().counts > 0;
            let total: f64 =
                made.iter().filter(|s| counted(s)).map(|s| measure(plan.gauge_in(round.part, *s).width)).sum();
            let (mut nth, mut along) = (0, -total / 2.0);
            for stitch in made {
                if !counted(&stitch) {
                    if let Some(on) = self.heads.len().checked_sub(1) {
                        self.crests.push(Crest { on, stitch });
                    }
                    continue;
                }
                let gauge = plan.gauge_in(round.part, stitch);
                let (width, height) = (measure(gauge.width), measure(gauge.height));
                let stands = done.into != Spot::Air && !(stitch.row().build == Build::Chain && made_of_more(done));
                let ring = (index == 0).then(|| self.ring.start + (self.heads.len() - from) % self.ring.len());
                let feet = match ring {
                    Some(place) if stands => vec![Foot { on: place..place + 1, lean: 0.0 }],
                    // Each of two that cross stands on the place of the other.
                    None if stands && done.into == Spot::Crossed => {
                        let on = last.iter().rev().nth(nth as usize).cloned();
                        on.map(|on| Foot { on, lean: 0.0 }).into_iter().collect()
                    }
                    None if stands => feet(&last, along + width / 2.0, &self.heads),
                    Some(_) | None => Vec::new(),
                };
                let counts = matches!(round.begin, crate::craft::Begin::Chain { counts: true, .. });
                let turning = counts && self.heads.len() == from;
                self.heads.push(Head {
                    round: Some(index),
                    op,
                    nth,
                    stitch,
                    loops: done.loops,
                    turning,
                    feet,
                    before: None,
                    after: None,
                    width,
                    height,
                });
                nth += 1;
                along += width;
            }
        }
        self.rounds.push(from..self.heads.len());
    }

    /// The stitches that step down, on the first of the last round.
    fn step_down(&mut self, plan: &Plan, size: &SizePlan) {
        let Some(own) = self.rounds.last().cloned().filter(|own| own.len() > size.step_down.len()) else { return };
        let from = self.heads.len();
        for (on, stitch) in own.zip(&size.step_down) {
            let below = &self.heads[on];
            let foot = Foot { on: on..on + 1, lean: 0.0 };
            let head = Head {
                stitch: *stitch,
                nth: 0,
                turning: false,
                feet: vec![foot],
                height: measure(plan.gauge(*stitch).height),
                ..below.clone()
            };
            self.heads.push(head);
        }
        self.step = from..self.heads.len();
    }

    /// The first round of a spiral climbs by a whole round while it goes round once, so that the second can run on from
    /// its last stitch: makers grade its stitches from low to tall.
    fn climb(&mut self, size: &SizePlan) {
        let Some(own) = self.rounds.first().cloned() else { return };
        if size.rounds.len() < 2 || size.rounds.first().is_none_or(|round| round.close != Close::Spiral) {
            return;
        }
        // Of stitches of one width, so many to a round that the middle lies flat, the spiral is h √(1 + 8 f) / 2 from its
        // middle when the share f of the first round is worked.
        let count = own.len().max(1) as f64;
        let tall = self.heads[own.clone()].iter().map(|head| head.height).fold(0.0, f64::max);
        for (i, at) in own.enumerate() {
            let share = (i as f64 + 0.5) / count;
            self.heads[at].height = tall * (1.0 + 8.0 * share).sqrt() / 2.0;
        }
    }

    /// Joins every head to its neighbours along the work: a spiral runs on into the next round.
    fn join(&mut self, size: &SizePlan) {
        for (index, own) in self.rounds.clone().into_iter().enumerate() {
            let spiral = size.rounds.get(index).is_some_and(|round| round.close == Close::Spiral);
            for at in own.clone() {
                let after = match (at + 1 < own.end, spiral) {
                    (true, _) => Some(at + 1),
                    (false, false) => Some(own.start),
                    (false, true) => match self.rounds.get(index + 1) {
                        Some(next) => Some(next.start),
                        None => Some(self.step.start).filter(|_| !self.step.is_empty()),
                    },
                };
                if let Some(after) = after.filter(|after| *after != at) {
                    self.heads[at].after = Some(after);
                    self.heads[after].before = Some(at);
                }
            }
        }
        for at in self.step.clone() {
            self.heads[at].after = Some(at + 1).filter(|next| *next < self.step.end);
            if at > self.step.start {
                self.heads[at].before = Some(at - 1);
            }
        }
        // The first stitch of a spiral has the last of its round beside it.
        if let Some(own) = self.rounds.first().filter(|own| own.len() > 2) {
            let first = &mut self.heads[own.start];
            first.before = first.before.or(Some(own.end - 1));
        }
    }
}

/// A chain within a group, such as (dc, ch 2, dc), hangs between its neighbours.
fn made_of_more(op: &Op) -> bool {
    op.made.runs().any(|(stitch, _)| stitch.row().build != Build::Chain)
}

/// Neighbours of one place of a closed ring.
fn around(start: usize, count: usize, place: usize) -> (Option<usize>, Option<usize>) {
    if count < 2 {
        return (None, None);
    }
    (Some(start + (place + count - 1) % count), Some(start + (place + 1) % count))
}

/// The heads that an operation is worked into: one range for each foot.
fn spots(below: &Range<usize>, next: usize, op: &Op) -> Vec<Range<usize>> {
    let count = below.len().max(1);
    let place = |i: usize| below.start + (next + i) % count;
    let used = op.consumed as usize;
    match op.into {
        Spot::Together | Spot::Crossed => (0..used).map(|i| place(i)..place(i) + 1).collect(),
        // A space doesn't run across the end of a round.
        Spot::Space if place(0) + used <= below.end => once(place(0)..place(0) + used).collect(),
        Spot::Stitch | Spot::Space | Spot::Air | Spot::Skip => once(place(0)..place(0) + 1).collect(),
    }
}

/// The feet of a stitch whose head stands at `along` in its operation.
fn feet(spots: &[Range<usize>], along: f64, heads: &[Head]) -> Vec<Foot> {
    let wide = |on: &Range<usize>| heads.get(on.clone()).map_or(0.0, |own| own.iter().map(|head| head.width).sum());
    let total: f64 = spots.iter().map(wide).sum();
    let mut edge = -total / 2.0;
    let one = |on: &Range<usize>| {
        let middle = edge + wide(on) / 2.0;
        edge += wide(on);
        Foot { on: on.clone(), lean: along - middle }
    };
    spots.iter().map(one).collect()
}

/// A length that can be reckoned with, whatever the gauge says.
fn measure(length: Mm) -> f64 {
    let mm = length.mm();
    if mm.is_finite() { mm.clamp(0.01, 10_000.0) } else { 5.0 }
}
