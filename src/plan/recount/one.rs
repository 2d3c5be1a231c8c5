//! Counts one written round.

use super::reading::Reading;
use super::spaces::{Spaces, covers};
use super::tally::{Base, Stop, Tally};
use super::{Counting, Rules, Standing, doubts, nearest};
use crate::craft::{
    Begin, Build, Close, Counted as What, Foundation, Group, Loops, Made, Op, Own, Round, Said, Spot, Stitch,
};
use crate::design::Work;
use crate::notation::tree::{Act, Item};
use crate::notation::{Covers, Doubt, JoinedTo, WrittenRound};
use crate::report::{Diagnostic, Report};
use std::collections::BTreeMap;

/// Fewer chains than this in a joined chain are a ring to work into, not along.
const ALONG: u32 = 20;

/// A round that was counted.
pub(super) struct Counted {
    pub(super) round: Round,
    pub(super) spaces: Spaces,
    pub(super) foundation: Foundation,
    pub(super) flat: bool,
    /// Whether the chain at its start counts, where the stated count alone decides that: by chains and stitch.
    pub(super) taught: Option<((u32, bool), bool)>,
    /// The same, where what it is joined to tells it.
    pub(super) joined: Option<((u32, bool), bool)>,
}

pub(super) struct Outcome {
    ops: Vec<Op>,
    /// How they are gathered; empty where that can't be told.
    groups: Vec<Group>,
    used: u32,
    made: u32,
    /// Stitches passed over on the way to one of a kind.
    pub(super) passed: u32,
}

impl Outcome {
    fn chains(&self) -> u32 {
        let runs = self.ops.iter().flat_map(|op| op.made.runs());
        runs.filter(|(stitch, _)| *stitch == Stitch::CH).map(|(_, count)| count).sum()
    }
}

/// Counts one round. Nothing once it is complained about.
pub(super) fn round(
    written: &WrittenRound,
    number: u32,
    start: bool,
    standing: &Standing,
    (said, learnt): (&Counting, &Counting),
    rules: &Rules,
    report: &mut Report,
) -> Option<Counted> {
    let mut one = One { written, number, start, standing, said, learnt, rules, report };
    let foundation = one.foundation();
    let (base, flat) = one.base(foundation)?;
    let readings = one.readings(base, foundation, flat)?;
    let readings = one.meant(readings);
    let mut chosen: Option<(Reading, Result<Outcome, Stop>)> = None;
    let mut second = None;
    let (mut counting, mut idle) = (false, false);
    for reading in readings {
        let outcome = one.expand(&reading);
        let fits = outcome.as_ref().is_ok_and(|outcome| one.fits(&reading, outcome));
        if let Begin::Chain { counts, .. } = reading.begin {
            counting |= fits && counts;
            idle |= fits && !counts;
        }
        match &chosen {
            None => chosen = Some((reading, outcome)),
            Some((known, Ok(best))) if fits && one.fits(known, best) => {
                // Only what no number decides is a doubt.
                let other = outcome.as_ref().is_ok_and(|other| other.made != best.made);
                if other && reading.how != known.how && reading.begin == known.begin && reading.onto == known.onto {
                    second = Some((reading, outcome));
                    break;
                }
            }
            Some(_) if fits => chosen = Some((reading, outcome)),
            Some(_) => {}
        }
    }
    if let (Some((first, Ok(best))), Some((other, Ok(made)))) = (&chosen, &second) {
        one.two_meanings((first, best.made), (other, made.made));
    }
    let (reading, outcome) = chosen?;
    let outcome = match outcome {
        Ok(outcome) => outcome,
        Err(stop) => return one.stopped(stop, &reading),
    };
    if !one.agrees(&reading, &outcome) {
        return None;
    }
    one.tell_kinds(&reading, &outcome);
    one.tell_chain(&reading);
    one.tell_repeat(&reading);
    one.tell_passed(&reading);
    one.tell_loop();
    let foundation = if one.passes_chains(&reading) { Foundation::Ring } else { foundation };
    let taught = one.written.begin.filter(|begin| begin.counts.is_none() && one.written.stated.is_some());
    let taught = taught.filter(|_| counting != idle).map(|begin| (one.key(&begin), counting));
    // What it is joined to teaches more than a count that fits.
    let joined = one.written.begin.filter(|begin| begin.counts.is_none()).map(|begin| one.key(&begin));
    let joined = joined.zip(one.joined_to()).filter(|((_, tall), _)| *tall);
    // Found once, here: the round above may be worked into them.
    let spaces = Spaces::of(&outcome.ops);
    let along = matches!(base, Base::Stitches(_)) && !flat;
    let round = one.finish(reading, outcome, flat);
    let foundation = match foundation {
        // A stitch into each of the chains.
        Foundation::ChainRing(chains) if along && round.goes_into_each(chains) => Foundation::ChainRound(chains),
        foundation @ (Foundation::Ring
        | Foundation::ChainRing(_)
        | Foundation::ChainRound(_)
        | Foundation::Chain(_)) => foundation,
    };
    Some(Counted { round, spaces, foundation, flat, taught, joined })
}

pub(super) struct One<'a> {
    pub(super) written: &'a WrittenRound,
    pub(super) number: u32,
    pub(super) start: bool,
    pub(super) standing: &'a Standing,
    pub(super) said: &'a Counting,
    pub(super) learnt: &'a Counting,
    pub(super) rules: &'a Rules,
    pub(super) report: &'a mut Report,
}

/// True where some item says to go into the ring.
pub(super) fn into_ring(items: &[Item]) -> bool {
    items.iter().any(|item| match &item.act {
        Act::Run(op, _) => op.into == Spot::Stitch && op.consumed == 0,
        Act::Repeat(body, _) => into_ring(body),
        Act::Same { .. } | Act::Skipped(_) | Act::Evenly { .. } => false,
    })
}

/// The first stitch named that is no chain.
pub(super) fn first_stitch(items: &[Item]) -> Option<Stitch> {
    items.iter().find_map(|item| match &item.act {
        Act::Run(op, _) => op.made.runs().map(|(stitch, _)| stitch).find(|stitch| *stitch != Stitch::CH),
        Act::Repeat(body, _) => first_stitch(body),
        Act::Skipped(op) => op.made.runs().map(|(stitch, _)| stitch).next(),
        Act::Evenly { plain, .. } => plain.made.runs().map(|(stitch, _)| stitch).next(),
        Act::Same { made, .. } => made.runs().map(|(stitch, _)| stitch).find(|stitch| *stitch != Stitch::CH),
    })
}

impl One<'_> {
    fn foundation(&mut self) -> Foundation {
        if !self.start {
            return Foundation::Ring;
        }
        let written = self.written;
        written.foundation.unwrap_or_else(|| {
            if !into_ring(&written.items) && written.from_hook.is_none() {
                let message = "the first round does not say what it is worked into: an adjustable ring is taken";
                let help = "write `6 sc in ring`, or `ch 2, 6 sc in 2nd ch from hook`, or `ch 4, sl st to first ch to form a ring`";
                self.report.add(Diagnostic::warning("start-unsaid", message).at(written.place).help(help));
            }
            Foundation::Ring
        })
    }

    /// What the round is worked into, and whether that is flat along a chain.
    fn base(&mut self, foundation: Foundation) -> Option<(Base, bool)> {
        if !self.start {
            return Some((Base::Stitches(self.standing.count), false));
        }
        match (foundation, self.written.from_hook) {
            (Foundation::Chain(chains), Some(nth)) if nth > chains => {
                let message = format!("the {nth}. chain from the hook is worked into, but only {chains} are made");
                let help = format!("make at least {nth} chains");
                self.report.add(Diagnostic::error("no-such-chain", message).at(self.written.place).help(help));
                None
            }
            (Foundation::Chain(chains), Some(nth)) if nth < chains => Some((Base::Stitches(Some(chains)), true)),
            (Foundation::ChainRing(chains), _)
                if !into_ring(&self.written.items) && (chains >= ALONG || self.along()) =>
            {
                Some((Base::Stitches(Some(chains)), false))
            }
            _ => Some((Base::Ring, false)),
        }
    }

    /// True where it names chains to work into: `sc in each ch`.
    fn along(&self) -> bool {
        self.written.doubts.iter().any(|doubt| matches!(doubt, Doubt::Onto(_, kind) if *kind == Stitch::CH))
    }

    /// Every reading in every way that its words can be meant: what goes into a kind that it names first goes there.
    fn meant(&self, readings: Vec<Reading>) -> Vec<Reading> {
        let named = self.written.doubts.iter().any(|doubt| matches!(doubt, Doubt::Onto(..)));
        let variants = doubts::variants(self.written);
        let mut meant = Vec::new();
        for onto in if named && self.standing.kinds.is_some() { vec![true, false] } else { vec![true] } {
            for variant in &variants {
                for reading in &readings {
                    let other = !variant.how.is_empty();
                    // Slip stitches that are stitches of the round are items of their own.
                    if other && reading.items.is_some() {
                        continue;
                    }
                    let items = if other { Some(doubts::each_is_next(&variant.items)) } else { reading.items.clone() };
                    let (how, joins, count) = (variant.how, variant.joins, variant.count);
                    meant.push(Reading { onto, how, joins, count, items, first: reading.first.clone(), ..*reading });
                }
            }
        }
        meant
    }

    /// Whether the chain at the start counts, where what the round is joined to tells that.
    fn joined_to(&self) -> Option<bool> {
        match self.written.joined_to {
            JoinedTo::Chain(_) => Some(true),
            JoinedTo::Stitch => Some(false),
            JoinedTo::Unsaid => None,
        }
    }

    pub(super) fn joins(&self) -> bool {
        self.written.joined.unwrap_or(matches!(self.rules.work, Work::Joined { .. }))
    }

    pub(super) fn expand(&self, reading: &Reading) -> Result<Outcome, Stop> {
        let stitches = self.standing.count.unwrap_or(0);
        let spaces = self.standing.spaces.as_ref().map(|spaces| spaces.rotated(reading.slipped, stitches));
        let mut tally = Tally::new(reading.base, spaces.as_ref());
        (tally.landed, tally.in_spaces) = (reading.landed, reading.landed.is_some());
        let kinds = self.standing.kinds.as_ref().filter(|kinds| reading.onto && !kinds.is_empty()).map(|kinds| {
            let mut kinds = kinds.clone();
            let by = reading.slipped as usize % kinds.len();
            kinds.rotate_left(by);
            kinds
        });
        tally.onto = kinds.as_ref().map(|kinds| (&kinds[..], &self.written.doubts[..]));
        let items = reading.items.as_ref().unwrap_or(&self.written.items);
        tally.all_named = doubts::all_named(items, &self.written.doubts);
        tally.ops.clone_from(&reading.first);
        tally.groups = (0..reading.first.len()).map(|at| Group { ops: at..at + 1, passes: Vec::new() }).collect();
        tally.used = reading.first.iter().map(|op| op.consumed).sum();
        tally.items(items, false)?;
        // Stitches behind the last chain space have nothing to be worked into.
        if let (true, Base::Stitches(Some(before))) = (tally.in_spaces, reading.base)
            && tally.used < before
            && spaces.as_ref().is_some_and(|spaces| spaces.after(tally.used).is_none())
        {
            tally.groups.push(Group { ops: tally.ops.len()..tally.ops.len() + 1, passes: Vec::new() });
            tally.ops.push(Op::skip(before - tally.used));
            tally.used = before;
        }
        if let Base::Stitches(Some(before)) = reading.base
            && tally.used < before
            && (tally.none_left() || tally.used + tally.implied == before)
        {
            let over = tally.left_over().iter().filter(|stitch| **stitch != Stitch::CH).count() as u32;
            tally.passed += if tally.implied > 0 { 0 } else { over };
            tally.groups.push(Group { ops: tally.ops.len()..tally.ops.len() + 1, passes: Vec::new() });
            tally.ops.push(Op::skip(before - tally.used));
            tally.used = before;
        }
        let counts = tally.ops.iter().map(|op| u64::from(op.count())).sum::<u64>();
        let made = u32::try_from(counts).map_err(|_| Stop::Unknown)?;
        let whole = covers(&tally.groups, 0..tally.ops.len());
        let groups = if whole { tally.groups } else { Vec::new() };
        Ok(Outcome { ops: tally.ops, groups, used: tally.used, made, passed: tally.passed })
    }

    /// True where the round makes what it states. Chain spaces are often left out of the stated count (common
    /// practice).
    fn states(&self, outcome: &Outcome) -> bool {
        let Some(stated) = &self.written.stated else { return true };
        let chains = outcome.chains();
        if stated.spaces.is_some_and(|spaces| spaces != Spaces::of(&outcome.ops).number()) {
            return false;
        }
        match stated.covers {
            Covers::Stitches => stated.count == outcome.made || stated.count == outcome.made - chains,
            Covers::All => stated.count == outcome.made,
            Covers::Spaces => stated.count == chains || stated.spaces.is_some(),
        }
    }

    pub(super) fn fits(&self, reading: &Reading, outcome: &Outcome) -> bool {
        let uses_all = match reading.base {
            Base::Stitches(Some(before)) => outcome.used == before,
            Base::Stitches(None) | Base::Ring => true,
        };
        uses_all && self.states(outcome) && reading.count.is_none_or(|count| count == outcome.made)
    }

    /// Complains where the round doesn't use up what stands, or doesn't make what it states.
    fn agrees(&mut self, reading: &Reading, outcome: &Outcome) -> bool {
        if let Base::Stitches(Some(before)) = reading.base
            && outcome.used != before
        {
            let complaint = nearest::unused(self.written, self.number, before, outcome.used, &outcome.ops, self.rules);
            self.report.add(complaint);
            return false;
        }
        let stitches = outcome.ops.iter().flat_map(|op| op.made.runs());
        if outcome.made == 0 || stitches.into_iter().all(|(stitch, _)| stitch == Stitch::CH) {
            let message = format!("round {} makes no stitches", self.number);
            self.report.add(Diagnostic::error("no-stitches", message).at(self.written.place));
            return false;
        }
        let deepest = |op: &Op| {
            op.made.runs().filter(|(stitch, _)| stitch.row().build == Build::Spike).map(|run| run.0.row().stems).max()
        };
        let deepest = outcome.ops.iter().filter_map(deepest).max().map_or(0, u32::from);
        if deepest >= self.number {
            let message = format!(
                "a stitch of round {} goes {deepest} rounds down, and only {} stand below",
                self.number,
                self.number - 1
            );
            let help = "work it in a later round, or fewer rounds down";
            self.report.add(Diagnostic::error("nothing-below", message).at(self.written.place).help(help));
            return false;
        }
        if self.states(outcome) {
            return true;
        }
        if let Some(stated) = &self.written.stated {
            let number = Spaces::of(&outcome.ops).number();
            let spaces = stated.spaces.filter(|spaces| *spaces != number).map(|_| number);
            if stated.covers == Covers::Spaces || spaces.is_some() {
                self.report.add(nearest::other_spaces(stated, outcome.chains(), spaces));
                return false;
            }
        }
        let before = match reading.base {
            Base::Stitches(before) => before,
            Base::Ring => None,
        };
        let chain = match (reading.begin, self.written.begin) {
            (Begin::Chain { chains, counts }, Some(_)) => Some((chains, counts)),
            _ => None,
        };
        self.report.add(nearest::miscounted(self.written, before, outcome.made, chain, self.rules));
        false
    }

    /// True where the chains passed over at the start of the piece are its first stitch: a ring and a chain that counts.
    pub(super) fn passes_chains(&self, reading: &Reading) -> bool {
        let counts = matches!(reading.begin, Begin::Chain { counts: true, .. });
        counts && reading.base == Base::Ring && self.written.begin.is_none() && self.written.from_hook.is_some()
    }

    fn stopped(&mut self, stop: Stop, reading: &Reading) -> Option<Counted> {
        match stop {
            Stop::Because(complaint) => self.report.add(complaint),
            Stop::Unknown => {}
            Stop::Leaves { available, each, body, place } => {
                let start = reading.first.iter().map(|op| op.consumed).sum();
                self.report.add(nearest::leaves(self.written, (available, each), start, &body, place, self.rules));
            }
        }
        None
    }

    fn finish(&self, reading: Reading, outcome: Outcome, flat: bool) -> Round {
        let passed = self.passes_chains(&reading);
        let (mut ops, mut groups) = (outcome.ops, outcome.groups);
        let mut before = outcome.used;
        // Chains go under no loop; they are only told with the others where the whole round is under one.
        if ops.windows(2).any(|pair| pair[0].loops != pair[1].loops) {
            ops.iter_mut().filter(|op| op.into == Spot::Air).for_each(|op| op.loops = Loops::Both);
        }
        // A first round worked along a joined chain stands on nothing: the chain is no round.
        if self.start && !flat {
            let mut from = Vec::with_capacity(ops.len() + 1);
            let mut off = Vec::with_capacity(ops.len());
            for op in ops {
                from.push(off.len());
                off.extend(off_chain(op));
            }
            from.push(off.len());
            (ops, groups, before) = (off, Group::moved(&groups, &from), 0);
        }
        let mut kinds: BTreeMap<Stitch, u64> = BTreeMap::new();
        for (stitch, count) in ops.iter().flat_map(|op| op.made.runs()) {
            *kinds.entry(stitch).or_default() += u64::from(count);
        }
        let rank = |(stitch, count): &(&Stitch, &u64)| (stitch.makes_fabric(), **count, std::cmp::Reverse(**stitch));
        let stitch = kinds.iter().max_by_key(rank).map_or(self.rules.main, |(stitch, _)| *stitch);
        let round = Round {
            number: self.number,
            part: 0,
            stitch,
            before,
            after: outcome.made,
            slipped: reading.slipped,
            ops,
            colour: None,
            begin: reading.begin,
            close: if self.joins() || reading.joins { Close::Join } else { Close::Spiral },
            target: None,
            place: Some(self.written.place),
            said: None,
        };
        let mut said = self.said(&round, groups);
        // It is printed as from a ring, so its author's words don't fit.
        if passed {
            said.own = None;
        }
        Round { said: Some(said), ..round }
    }

    /// What its author said of the round, which adds up.
    fn said(&self, round: &Round, groups: Vec<Group>) -> Said {
        let wording = &self.written.wording;
        let list = self.written.stated.as_ref().map_or(&[][..], |stated| &stated.list);
        let broken_down = list.iter().any(|(what, _)| *what != What::Stitches);
        let kept = broken_down && list.iter().all(|(what, count)| round.has(*what, *count));
        let own = Own {
            terms: self.rules.terms,
            rounds: (self.number, self.number),
            words: wording.words.clone(),
            yarn: self.written.colour.is_some(),
            count: if kept { list.to_vec() } else { Vec::new() },
            counted: if kept { wording.count.clone() } else { String::new() },
            groups,
        };
        let own = Some(own).filter(|own| !own.words.is_empty());
        Said { own, asides: wording.asides.clone(), after: wording.after.clone() }
    }
}

/// The operations of a first round, which use up nothing and skip nothing: several of one stitch in one place are so many, each by itself,
/// as they are in a ring.
fn off_chain(op: Op) -> Vec<Op> {
    match (op.into, &op.made) {
        (Spot::Skip, _) => Vec::new(),
        (Spot::Air, _) => vec![op],
        (_, Made::Same(stitch, count)) => vec![Op::into_ring(*stitch).under(op.loops); *count as usize],
        // Without chains between them, stitches of several kinds are so many as well: `(sc, hdc, 8 dc) in ring`.
        (_, Made::Mixed(runs)) if runs.iter().all(|(stitch, _)| stitch.makes_fabric()) => {
            let each = runs.iter().flat_map(|(stitch, count)| std::iter::repeat_n(*stitch, *count as usize));
            each.map(|stitch| Op::into_ring(stitch).under(op.loops)).collect()
        }
        (_, Made::Mixed(_) | Made::Nothing) => vec![Op { into: Spot::Stitch, consumed: 0, ..op }],
    }
}
