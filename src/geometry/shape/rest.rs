//! The fabric at rest: what every round would measure if nothing pulled at it.

use super::super::corners::{Cornered, cornered};
use super::findings::{FEW, SHOWS};
use crate::craft::{Build, Foundation, Loops, Round, Stitch};
use crate::design::Body;
use crate::plan::{Plan, SizePlan};
use crate::units::{Angle, Mm, TURN};

/// Slope from straight down at which a ruffle stands off on average, in degrees: our judgement, by how its mesh comes out.
const RUFFLE: f64 = 50.0;

/// A piece of fabric at rest. Lengths in mm.
#[derive(Clone, Debug)]
pub(in crate::geometry) struct Rest {
    /// Radius of the ring that the first round is worked into; 0 for one that pulls shut.
    pub(in crate::geometry) start: f64,
    /// The rounds.
    pub(in crate::geometry) rounds: Vec<RestRound>,
}

/// One round at rest. Lengths in mm, all above zero.
#[derive(Clone, Copy, Debug)]
pub(in crate::geometry) struct RestRound {
    /// Circumference at its top edge.
    pub(in crate::geometry) around: f64,
    /// Height along the fabric.
    pub(in crate::geometry) height: f64,
    /// Width of one stitch, on average.
    pub(in crate::geometry) width: f64,
    /// Thickness of its fabric.
    pub(in crate::geometry) thick: f64,
    /// Radius halfway up.
    pub(in crate::geometry) middle: f64,
    /// True where the round is worked under one loop only, so that the fabric folds freely at its foot.
    pub(in crate::geometry) folds: bool,
    /// True where the design wants the fabric to come back up here.
    pub(in crate::geometry) rises: bool,
    /// Circumference that would lie flat here, where the design wants the fabric flat.
    pub(in crate::geometry) flat: Option<f64>,
    /// Share of its own circumference that a ruffle takes up, standing in waves; 1 for all else.
    pub(in crate::geometry) gathered: f64,
    /// True where the fabric lies flat on a table: a mat's or a base's, nowhere lacking as much as shows.
    pub(in crate::geometry) blocked: bool,
}

impl RestRound {
    /// Area of the round.
    pub(in crate::geometry) fn area(&self) -> f64 {
        self.around * self.height
    }

    /// Radius at its top edge.
    pub(in crate::geometry) fn radius(&self) -> f64 {
        self.around / TURN
    }
}

impl Rest {
    /// Reads a size of a plan. Of a polygon the radius meant is that to its sides, which goes with its rounds as that of a
    /// circle does.
    pub(in crate::geometry) fn of(plan: &Plan, size: &SizePlan) -> Self {
        Self::read(plan, size, &cornered(plan, size))
    }

    /// The same on a head, which rounds whatever is shaped in corners.
    pub(in crate::geometry) fn on_a_head(plan: &Plan, size: &SizePlan) -> Self {
        Self::read(plan, size, &[])
    }

    fn read(plan: &Plan, size: &SizePlan, cornered: &[Cornered]) -> Self {
        let start = match size.foundation {
            Foundation::ChainRing(chains) => sane(plan.gauge(Stitch::CH).width) * f64::from(chains) / TURN,
            // A chain that is worked into one by one lies as wide as its stitches.
            Foundation::ChainRound(_) => size.rounds.first().map_or(0.0, |first| at_rest(plan, first).radius()),
            Foundation::Ring | Foundation::Chain(_) => 0.0,
        };
        let mut rises = false;
        let mut rounds = Vec::with_capacity(size.rounds.len());
        for (index, round) in size.rounds.iter().enumerate() {
            rises = rising(plan, size, round).unwrap_or(rises);
            let mut measured = at_rest(plan, round);
            let sides = measured.around * cornered.get(index).map_or(1.0, |round| round.sides());
            // What should lie flat does as far as its sides give way: they bow out between corners that are short of
            // stitches.
            let flat = rounds.last().map_or(start, RestRound::radius) + measured.height;
            let around =
                if wants_flat(plan, size, round) { (TURN * flat).clamp(sides, measured.around) } else { sides };
            (measured.around, measured.width) = (around, measured.width * around / measured.around);
            let foot = rounds.last().map_or(start, RestRound::radius);
            // What is meant to ruffle buckles, and widens no more than a brim of that slope does: else it would pull out what
            // it stands on.
            if is_ruffle(plan, round) {
                let room = (TURN * (foot + measured.height * Angle::from_degrees(RUFFLE).sin())).min(measured.around);
                measured.gathered = room / measured.around;
                (measured.around, measured.width) = (room, measured.width * measured.gathered);
            }
            let middle = (foot + measured.radius()) / 2.0;
            rounds.push(RestRound { rises, middle, folds: round.loops() != Loops::Both, ..measured });
        }
        let mut rest = Self { start, rounds };
        rest.lay_flat(plan, size);
        rest
    }
}

impl Rest {
    /// Finds what each round of a flat part would need to lie flat, and which parts will on a table.
    fn lay_flat(&mut self, plan: &Plan, size: &SizePlan) {
        let base = self.written_base(plan, size);
        let mut from = 0;
        for part in size.rounds.chunk_by(|a, b| a.part == b.part) {
            let to = from + part.len();
            let mut radius = if from == 0 { self.start } else { self.rounds[from - 1].radius() };
            // Of a disc with a rounded edge the rounds up to where it bends.
            let wanted = part.iter().take_while(|round| wants_flat(plan, size, round)).count();
            let fabric = &mut self.rounds[from..to];
            let base = base.saturating_sub(from).min(fabric.len());
            from = to;
            if base > 0 {
                for round in &mut fabric[..base] {
                    radius += round.height;
                    (round.flat, round.blocked) = (Some(TURN * radius), true);
                }
                continue;
            }
            let fabric = &mut fabric[..wanted];
            // What narrows lies flat inward.
            let narrows = part.iter().map(Round::change).sum::<i64>() < 0 && from > part.len();
            for round in fabric.iter_mut() {
                radius = if narrows { (radius - round.height).max(0.0) } else { radius + round.height };
                round.flat = Some(TURN * radius);
            }
            // A part is held as a whole: one round that cups for good would pull its neighbours up with it.
            let blocked = fabric.iter().all(|round| round.lacks() < SHOWS || round.around < FEW * round.width);
            let table = plan.design.kind.row().rests;
            fabric.iter_mut().for_each(|round| round.blocked = blocked && table);
        }
    }
}

impl Rest {
    /// How many of the first rounds of something written are the base that it stands on: those that would lie flat, up to
    /// the first that folds, but for even rounds at their end.
    fn written_base(&self, plan: &Plan, size: &SizePlan) -> usize {
        let row = plan.design.kind.row();
        let written =
            |round: &Round| plan.design.parts.get(round.part).is_some_and(|part| matches!(part.body, Body::Written(_)));
        if !(row.rests && row.from_the_foot) {
            return 0;
        }
        let (mut radius, mut base) = (self.start, 0);
        for (index, (round, fabric)) in size.rounds.iter().zip(&self.rounds).enumerate() {
            radius += fabric.height;
            let lacks = TURN * radius / fabric.around - 1.0;
            let few = fabric.around < FEW * fabric.width;
            if !written(round) || (index > 0 && fabric.folds) || (lacks >= SHOWS && !few) {
                break;
            }
            if round.change() > 0 && lacks < SHOWS {
                base = index + 1;
            }
        }
        base
    }
}

impl RestRound {
    /// What it lacks of lying flat, as a share of its own circumference.
    fn lacks(&self) -> f64 {
        self.flat.map_or(0.0, |flat| flat / self.around - 1.0)
    }
}

/// Whether the design wants a round flat: in flat parts as far as no edge bends them, and in all of a mat that was written
/// by hand.
fn wants_flat(plan: &Plan, size: &SizePlan, round: &Round) -> bool {
    match plan.design.parts.get(round.part).map(|part| &part.body) {
        Some(Body::Profile(profile)) => {
            let bends = index_of(plan, size).and_then(|size| profile.shape.bends_at(size)).zip(round.target);
            profile.shape.form().flat || bends.is_some_and(|(bends, target)| target <= bends)
        }
        Some(Body::Written(_)) => plan.design.kind.row().flat,
        None => false,
    }
}

/// True for a round of a part that is meant to ruffle.
pub(super) fn is_ruffle(plan: &Plan, round: &Round) -> bool {
    let part = plan.design.parts.get(round.part);
    part.is_some_and(|part| matches!(&part.body, Body::Profile(profile) if profile.shape.form().ruffles))
}

fn index_of(plan: &Plan, size: &SizePlan) -> Option<usize> {
    plan.sizes.iter().position(|other| other.name == size.name)
}

/// Whether a flare comes back up: beyond 90° from straight down. Other parts go on as they come.
fn rising(plan: &Plan, size: &SizePlan, round: &Round) -> Option<bool> {
    let part = plan.design.parts.get(round.part)?;
    let index = index_of(plan, size)?;
    match &part.body {
        Body::Profile(profile) => Some(profile.shape.flare_of(index)?.degrees() > 90.0),
        Body::Written(_) => None,
    }
}

/// Adds up the stitches of a round. Chains between stitches widen it and don't lower it; a round of chains alone has
/// the height of a chain. The smallest round counts as one stitch.
fn at_rest(plan: &Plan, round: &Round) -> RestRound {
    let main = plan.gauge_of(round);
    let (mut around, mut count, mut tall, mut heights, mut thick) = (0.0, 0.0, 0.0, 0.0, 0.0);
    for (stitch, made) in round.ops.iter().flat_map(|op| op.made.runs()) {
        let made = f64::from(made) * f64::from(stitch.row().counts);
        let gauge = plan.gauge_in(round.part, stitch);
        around += made * sane(gauge.width);
        count += made;
        if stitch.row().build != Build::Chain {
            tall += made;
            heights += made * sane(gauge.height);
            thick += made * sane(gauge.thick);
        }
    }
    if count < 1.0 {
        count = f64::from(round.after.max(1));
        around = count * sane(main.width);
    }
    let (height, thick) =
        if tall > 0.0 { (heights / tall, thick / tall) } else { (sane(main.height), sane(main.thick)) };
    RestRound {
        around,
        height,
        thick,
        middle: around / TURN,
        width: around / count,
        folds: false,
        rises: false,
        flat: None,
        gathered: 1.0,
        blocked: false,
    }
}

/// A length that can be reckoned with, whatever the gauge says.
fn sane(length: Mm) -> f64 {
    let mm = length.mm();
    if mm.is_finite() { mm.clamp(0.01, 10_000.0) } else { 5.0 }
}
