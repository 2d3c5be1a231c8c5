//! Expands the items of one round into operations, stitch by stitch.

use super::spaces::Spaces;
use crate::craft::{Build, Group, Made, Op, Spot, Stitch};
use crate::limits;
use crate::notation::Doubt;
use crate::notation::tree::{Act, Item, Times};
use crate::plan::spread;
use crate::report::{Diagnostic, Place};

/// What a round is worked into.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Base {
    /// So many stitches, one after another; nothing where it is not known how many.
    Stitches(Option<u32>),
    /// A ring, or one chain: everything goes into it.
    Ring,
}

/// Why expanding stopped.
pub(super) enum Stop {
    /// For this reason.
    Because(Diagnostic),
    /// The stitches of the round before aren't known; that was complained about.
    Unknown,
    /// A repeat that goes around doesn't divide: stitches there, used by one repeat, where.
    Leaves { available: u32, each: u32, body: Vec<Op>, place: Place },
}

pub(super) struct Tally<'a> {
    pub(super) ops: Vec<Op>,
    /// How they are gathered, of the items that are being counted.
    pub(super) groups: Vec<Group>,
    pub(super) used: u32,
    pub(super) base: Base,
    pub(super) spaces: Option<&'a Spaces>,
    pub(super) in_spaces: bool,
    /// Chains of the space in which the round begins, where it begins in one.
    pub(super) landed: Option<u32>,
    /// The stitches there by kind, and what goes into which kind; nothing where kinds are left alone.
    pub(super) onto: Option<(&'a [Stitch], &'a [Doubt])>,
    /// True where every stitch names the kind that it goes into.
    pub(super) all_named: bool,
    /// Stitches passed over on the way to one of a kind, chains left out.
    pub(super) passed: u32,
    /// Stitches at the end that chains bridge before the join: a repeat that goes around begins with so many skipped.
    pub(super) implied: u32,
}

/// Stitches that the items use up, as far as that is written.
fn uses(items: &[Item]) -> u64 {
    let one = |item: &Item| match &item.act {
        Act::Run(op, Times::Exactly(times)) => u64::from(op.consumed) * u64::from(*times),
        Act::Repeat(body, Times::Exactly(times)) => uses(body).saturating_mul(u64::from(*times)),
        Act::Run(_, Times::Around { .. }) | Act::Repeat(_, Times::Around { .. }) => 0,
        Act::Same { .. } | Act::Skipped(_) | Act::Evenly { .. } => 0,
    };
    items.iter().map(one).fold(0, u64::saturating_add)
}

/// True for a stitch of this kind, or one that makers call by it: a post stitch, a cluster of any size.
pub(super) fn is_kind(below: Stitch, kind: Stitch) -> bool {
    let build = |stitch: Stitch| std::mem::discriminant(&stitch.row().build);
    // An extended stitch is called by what it extends, which is all that tells one from another.
    let special = !kind.is_plain() && build(below) == build(kind) && kind.row().build != Build::Extended;
    below == kind || below.built_of() == Some(kind) || special
}

/// True for chains that bridge a gap.
fn is_air(item: &Item) -> bool {
    matches!(&item.act, Act::Run(op, Times::Exactly(_)) if op.into == Spot::Air)
}

/// Stitches that a repeat passes over under the chains that it begins with.
fn bridged(act: &Act) -> u32 {
    let Act::Repeat(body, _) = act else { return 0 };
    let after = body.iter().skip_while(|item| is_air(item));
    let skips = after.map_while(|item| match &item.act {
        Act::Run(op, Times::Exactly(times)) if op.into == Spot::Skip => Some(op.consumed.saturating_mul(*times)),
        Act::Run(..) | Act::Repeat(..) | Act::Same { .. } | Act::Skipped(_) | Act::Evenly { .. } => None,
    });
    if body.first().is_some_and(is_air) { skips.sum() } else { 0 }
}

fn stop<T>(code: &'static str, place: Place, message: impl Into<String>, help: &str) -> Result<T, Stop> {
    Err(Stop::Because(Diagnostic::error(code, message).at(place).help(help)))
}

impl<'a> Tally<'a> {
    pub(super) fn new(base: Base, spaces: Option<&'a Spaces>) -> Self {
        Self {
            ops: Vec::new(),
            groups: Vec::new(),
            used: 0,
            base,
            spaces,
            in_spaces: false,
            landed: None,
            onto: None,
            all_named: false,
            passed: 0,
            implied: 0,
        }
    }

    pub(super) fn items(&mut self, items: &[Item], repeated: bool) -> Result<(), Stop> {
        for (index, item) in items.iter().enumerate() {
            let later = uses(items.get(index + 1..).unwrap_or_default());
            let (start, mut passes) = (self.ops.len(), Vec::new());
            match &item.act {
                Act::Same { made, .. } => self.same(made, item.place)?,
                Act::Skipped(op) => self.crossed(op, item.place)?,
                Act::Evenly { shape, plain, times } => self.evenly(shape, plain, *times, later, item.place)?,
                Act::Run(op, Times::Exactly(times)) => {
                    for _ in 0..*times {
                        self.seek(op, item.place)?;
                        self.push(op, item.place)?;
                    }
                }
                Act::Repeat(body, Times::Exactly(times)) => {
                    for _ in 0..*times {
                        passes.push(self.pass(body)?);
                    }
                    // `*ch 3, skip 1, sc in next; rep 6 more times, ch 3, join`: the last chains bridge as many.
                    let after = items.get(index + 1..).unwrap_or_default();
                    let airy = !repeated && !after.is_empty() && after.iter().all(is_air);
                    let left = |before: u32| before.checked_sub(self.used) == Some(bridged(&item.act));
                    if airy && matches!(self.base, Base::Stitches(Some(before)) if left(before)) {
                        self.implied = bridged(&item.act);
                    }
                }
                Act::Run(_, Times::Around { leave }) | Act::Repeat(_, Times::Around { leave }) => {
                    if repeated {
                        let help = "say how often instead: `[sc, inc] 6 times`";
                        return stop("around-in-repeat", item.place, "this goes around inside a repeat", help);
                    }
                    let after = items.get(index + 1..).unwrap_or_default();
                    let airy = !after.is_empty() && after.iter().all(is_air);
                    let bridged = if airy { bridged(&item.act) } else { 0 };
                    passes = self.around(item, later.max(u64::from(*leave)), bridged)?;
                }
            }
            if self.ops.len() > start {
                self.groups.push(Group { ops: start..self.ops.len(), passes });
            }
        }
        Ok(())
    }

    /// Works a repeat once and gives how its operations are gathered.
    fn pass(&mut self, body: &[Item]) -> Result<Vec<Group>, Stop> {
        let outer = std::mem::take(&mut self.groups);
        self.items(body, true)?;
        Ok(std::mem::replace(&mut self.groups, outer))
    }

    /// Works one thing until only `leave` stitches are left, or the `bridged` ones that each repeat begins with; gives what is done each time where that is a repeat.
    fn around(&mut self, item: &Item, leave: u64, bridged: u32) -> Result<Vec<Vec<Group>>, Stop> {
        let before = match self.base {
            Base::Stitches(Some(before)) => before,
            Base::Stitches(None) => return Err(Stop::Unknown),
            Base::Ring => {
                let help = "say how many stitches go into the ring: `6 sc in ring`";
                return stop("around-ring", item.place, "a ring has no stitches to go around", help);
            }
        };
        let end = u64::from(before).saturating_sub(leave);
        let (start, first) = (self.used, self.ops.len());
        if u64::from(start) >= end && before > 0 {
            let message = format!("all {before} stitches are used up before this goes around");
            return stop("around-nothing", item.place, message, "leave it out, or shorten what stands before it");
        }
        let mut passes = Vec::new();
        while u64::from(self.used) < end {
            // `*ch 3, skip 2, sc in next; rep around, ch 3, join`: what is left is bridged.
            if bridged > 0 && self.used > start && end - u64::from(self.used) == u64::from(bridged) {
                self.implied = bridged;
                break;
            }
            let (used, made) = (self.used, self.ops.len());
            match &item.act {
                Act::Run(op, _) => {
                    self.seek(op, item.place)?;
                    self.push(op, item.place)?;
                }
                Act::Repeat(body, _) => passes.push(self.pass(body)?),
                Act::Same { .. } | Act::Skipped(_) | Act::Evenly { .. } => {}
            }
            let each = self.used - used;
            if each == 0 {
                let help = "a repeat that goes around has to use up stitches of the round before";
                return stop("around-forever", item.place, "this goes around and uses up no stitches", help);
            }
            if u64::from(self.used) > end {
                let rest = if self.in_spaces { None } else { self.ops.get(made..) };
                let (body, available) = (rest.unwrap_or_default().to_vec(), (end as u32) - start);
                self.ops.truncate(first);
                return Err(Stop::Leaves { available, each, body, place: item.place });
            }
            // What is left behind the last space has nothing to go into and is passed over at the end.
            if self.in_spaces && self.spaces.is_some_and(|spaces| spaces.after(self.used).is_none()) {
                break;
            }
            if self.none_left() {
                break;
            }
        }
        Ok(passes)
    }

    /// So much shaping, spread evenly over what is left.
    fn evenly(&mut self, shape: &Op, plain: &Op, times: u32, later: u64, place: Place) -> Result<(), Stop> {
        let Base::Stitches(before) = self.base else {
            let help = "say how many stitches go into the ring: `6 sc in ring`";
            return stop("around-ring", place, "a ring has no stitches to spread this over", help);
        };
        let left = u64::from(before.ok_or(Stop::Unknown)?).saturating_sub(later).saturating_sub(u64::from(self.used));
        let free = left.checked_sub(u64::from(times) * u64::from(shape.consumed)).filter(|_| times > 0);
        let Some(free) = free.and_then(|free| u32::try_from(free).ok()) else {
            let message = format!("{times} of these don't go into {left} stitches");
            return stop("stitches-missing", place, message, "count the stitches of the round before");
        };
        for gap in spread(free, times, 0) {
            for _ in 0..gap {
                self.push(plain, place)?;
            }
            self.push(shape, place)?;
        }
        Ok(())
    }

    fn add(&mut self, op: Op, place: Place) -> Result<(), Stop> {
        if self.ops.len() >= limits::ROUND_STEPS {
            let message = format!("this round has more than {} steps", limits::ROUND_STEPS);
            return stop("round-too-long", place, message, "check its numbers of times");
        }
        match self.used.checked_add(op.consumed) {
            Some(used) => self.used = used,
            None => {
                return stop(
                    "too-many-stitches",
                    place,
                    "this uses up more stitches than can be counted",
                    "check its numbers",
                );
            }
        }
        if op
            .made
            .runs()
            .try_fold(0_u32, |sum, (_, count)| sum.checked_add(count))
            .is_none_or(|sum| sum > limits::IN_ONE_PLACE)
        {
            let message = format!("this makes more than {} stitches in one place", limits::IN_ONE_PLACE);
            return stop("too-many-stitches", place, message, "check its number");
        }
        self.ops.push(op);
        Ok(())
    }

    /// The kind that stitches written here go into.
    fn kind(&self, place: Place) -> Option<Stitch> {
        let (_, onto) = self.onto?;
        onto.iter().find_map(|doubt| match doubt {
            Doubt::Onto(at, kind) if (at.line, at.offset) == (place.line, place.offset) => Some(*kind),
            Doubt::Onto(..) | Doubt::Often(..) | Doubt::Each(_) | Doubt::Bare(_) | Doubt::Third(_) => None,
        })
    }

    /// Passes over what stands before the next stitch of the kind that is named.
    fn seek(&mut self, op: &Op, place: Place) -> Result<(), Stop> {
        let (Some(kind), Some((kinds, _)), Spot::Stitch) = (self.kind(place), self.onto, op.into) else {
            return Ok(());
        };
        let rest = kinds.get(self.used as usize..).unwrap_or_default();
        let Some(passed) = rest.iter().position(|below| is_kind(*below, kind)) else {
            let help = "name the stitch that stands there, or only `st`";
            return stop("no-such-kind", place, "no stitch of this kind is left here to work into", help);
        };
        if passed > 0 {
            let over = rest.get(..passed).unwrap_or_default();
            self.passed += over.iter().filter(|stitch| **stitch != Stitch::CH).count() as u32;
            self.add(Op::skip(passed as u32), place)?;
        }
        Ok(())
    }

    /// The stitches that are left, where their kinds are known.
    pub(super) fn left_over(&self) -> &'a [Stitch] {
        self.onto.and_then(|(kinds, _)| kinds.get(self.used as usize..)).unwrap_or_default()
    }

    /// True where nothing is left to work into: only chains, or no stitch of the kinds that all of it is worked into.
    pub(super) fn none_left(&self) -> bool {
        let Some((_, onto)) = self.onto else { return false };
        let kinds = || {
            onto.iter().filter_map(|doubt| match doubt {
                Doubt::Onto(_, kind) if *kind != Stitch::CH => Some(*kind),
                Doubt::Onto(..) | Doubt::Often(..) | Doubt::Each(_) | Doubt::Bare(_) | Doubt::Third(_) => None,
            })
        };
        let rest = self.left_over();
        let chains = rest.iter().all(|stitch| *stitch == Stitch::CH);
        let none = self.all_named && !rest.iter().any(|stitch| kinds().any(|kind| is_kind(*stitch, kind)));
        kinds().next().is_some() && !rest.is_empty() && (chains || none)
    }

    fn push(&mut self, op: &Op, place: Place) -> Result<(), Stop> {
        match (op.into, self.base) {
            (Spot::Stitch, Base::Ring) => match op.made {
                Made::Same(stitch, count) => {
                    for _ in 0..count {
                        self.add(Op::into_ring(stitch).under(op.loops), place)?;
                    }
                    Ok(())
                }
                Made::Nothing | Made::Mixed(_) => self.add(Op { consumed: 0, ..op.clone() }, place),
            },
            (Spot::Together | Spot::Crossed | Spot::Skip | Spot::Space, Base::Ring) => {
                let help = "into a ring only whole stitches go: `6 sc in ring`";
                stop("not-in-ring", place, "this needs stitches to work into, and here is only a ring", help)
            }
            (Spot::Stitch, Base::Stitches(_)) if op.consumed == 0 => {
                let help = "only the first round goes into a ring";
                stop("no-ring", place, "this goes into a ring, but there are stitches to work into", help)
            }
            (Spot::Space, Base::Stitches(_)) => self.space(op, place),
            // Picots in a row are so many operations, as they are when they are written one by one.
            (Spot::Air, _) => match op.made {
                Made::Same(picot, count @ 2..) if picot.row().build == Build::Picot => {
                    (0..count).try_for_each(|_| self.add(Op { made: Made::Same(picot, 1), ..op.clone() }, place))
                }
                Made::Nothing | Made::Same(..) | Made::Mixed(_) => self.add(op.clone(), place),
            },
            (Spot::Stitch | Spot::Together | Spot::Crossed | Spot::Skip, _) => self.add(op.clone(), place),
        }
    }

    /// One more stitch in the one that was just passed over: it crosses the stitch worked since then.
    fn crossed(&mut self, op: &Op, place: Place) -> Result<(), Stop> {
        let at = self.ops.len().saturating_sub(2);
        let crosses = match self.ops.get(at..) {
            Some([skip, one]) => *skip == Op::skip(1).under(skip.loops) && one == op,
            Some(_) | None => false,
        };
        if !crosses {
            let help = "two stitches cross where one is skipped and one worked just before: `sk next st, dc in next st, \
                        dc in skipped st`";
            return stop("no-skipped", place, "no stitch was skipped just before that this could go into", help);
        }
        self.ops.truncate(at);
        self.groups.retain(|group| group.ops.start <= at);
        self.used -= 2;
        let Made::Same(stitch, _) = op.made else { return Ok(()) };
        self.add(Op::crossed(stitch).under(op.loops), place)
    }

    /// Works into the next chain space, passing over what stands before it.
    fn space(&mut self, op: &Op, place: Place) -> Result<(), Stop> {
        self.in_spaces = true;
        let Some(spaces) = self.spaces else {
            return self.add(Op { consumed: op.consumed.max(1), ..op.clone() }, place);
        };
        let Some((start, chains)) = spaces.after(self.used) else {
            let help = "count the chain spaces of the round before";
            return stop("no-space", place, "no chain space is left here to work into", help);
        };
        if op.consumed != 0 && op.consumed != chains {
            let message = format!("this goes into a ch-{} space, but the next space has {chains} chains", op.consumed);
            return stop("other-space", place, message, "make the number of chains the same in both rounds");
        }
        if start > self.used {
            self.add(Op::skip(start - self.used).under(op.loops), place)?;
        }
        self.add(Op { consumed: chains, ..op.clone() }, place)
    }

    /// More stitches in the place worked last; chains made since then come between.
    fn same(&mut self, made: &Made, place: Place) -> Result<(), Stop> {
        let foot = self.ops.iter().rposition(|op| op.into != Spot::Air);
        let Some(foot) = foot.filter(|at| matches!(self.ops[*at].into, Spot::Stitch | Spot::Space)) else {
            if self.used == 0 && self.ops.is_empty() {
                let (into, consumed) = self.landed.map_or((Spot::Stitch, 1), |chains| (Spot::Space, chains));
                let op = Op { into, consumed, made: made.clone(), loops: Default::default() };
                return self.push(&op, place);
            }
            return stop(
                "no-same",
                place,
                "nothing was worked yet that this could share its stitch with",
                "say `in next st`",
            );
        };
        let mut runs: Vec<(Stitch, u32)> = Vec::new();
        let between = self.ops.iter().skip(foot).flat_map(|op| op.made.runs());
        for (stitch, count) in between.chain(made.runs()) {
            match runs.last_mut() {
                Some((last, number)) if *last == stitch => *number = number.saturating_add(count),
                _ => runs.push((stitch, count)),
            }
        }
        self.ops.truncate(foot + 1);
        // Chains that came between are in that place now.
        self.groups.retain(|group| group.ops.start <= foot);
        let Some(op) = self.ops.pop() else { return Ok(()) };
        self.used -= op.consumed;
        let made = match runs[..] {
            [(stitch, count)] => Made::Same(stitch, count),
            _ => Made::Mixed(runs.into_boxed_slice()),
        };
        self.add(Op { made, ..op }, place)
    }
}
