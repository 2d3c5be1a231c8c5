//! Counts one written round.

use super::spaces::{Spaces, covers};
use super::tally::{Base, Stop, Tally};
use super::{Counting, Rules, Standing, doubts, nearest};
use crate::craft::{
    Begin, Close, Counted as What, Foundation, Group, Loops, Made, Op, Own, Round, Said, Spot, Stitch, abbreviation,
};
use crate::design::Work;
use crate::notation::tree::{Act, Item, Times};
use crate::notation::{Covers, Doubt, Turning, WrittenRound};
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
}

/// One way to read a round: what it is worked into, and whether its chain counts.
struct Reading {
    base: Base,
    /// Stitches passed over by slip stitches at the start.
    slipped: u32,
    /// Chains of the space that the slip stitches led into.
    landed: Option<u32>,
    /// Operations that come before the items.
    first: Vec<Op>,
    begin: Begin,
    /// What to work, where it isn't the items as they were written.
    items: Option<Vec<Item>>,
    /// True where stitches go into the kind below that they name.
    onto: bool,
    /// How it is meant, where that isn't what is written first.
    how: &'static str,
    /// True where a slip stitch at the end is the join.
    joins: bool,
    /// The count that its last words state.
    count: Option<u32>,
}

impl Reading {
    fn new(base: Base, first: Vec<Op>, begin: Begin) -> Self {
        Self {
            base,
            slipped: 0,
            landed: None,
            first,
            begin,
            items: None,
            onto: true,
            how: "",
            joins: false,
            count: None,
        }
    }
}

struct Outcome {
    ops: Vec<Op>,
    /// How they are gathered; empty where that can't be told.
    groups: Vec<Group>,
    used: u32,
    made: u32,
    /// Stitches passed over on the way to one of a kind.
    passed: u32,
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
    said: &Counting,
    rules: &Rules,
    report: &mut Report,
) -> Option<Counted> {
    let mut one = One { written, number, start, standing, said, rules, report };
    let foundation = one.foundation();
    let (base, flat) = one.base(foundation)?;
    let readings = one.readings(base, foundation, flat)?;
    let readings = one.meant(readings);
    let mut chosen: Option<(Reading, Result<Outcome, Stop>)> = None;
    let mut second = None;
    for reading in readings {
        let outcome = one.expand(&reading);
        let fits = outcome.as_ref().is_ok_and(|outcome| one.fits(&reading, outcome));
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
    // Found once, here: the round above may be worked into them.
    let spaces = Spaces::of(&outcome.ops);
    Some(Counted { round: one.finish(reading, outcome, flat), spaces, foundation, flat })
}

struct One<'a> {
    written: &'a WrittenRound,
    number: u32,
    start: bool,
    standing: &'a Standing,
    said: &'a Counting,
    rules: &'a Rules,
    report: &'a mut Report,
}

/// True where some item says to go into the ring.
fn into_ring(items: &[Item]) -> bool {
    items.iter().any(|item| match &item.act {
        Act::Run(op, _) => op.into == Spot::Stitch && op.consumed == 0,
        Act::Repeat(body, _) => into_ring(body),
        Act::Same { .. } => false,
    })
}

/// The first stitch named that is no chain.
pub(super) fn first_stitch(items: &[Item]) -> Option<Stitch> {
    items.iter().find_map(|item| match &item.act {
        Act::Run(op, _) => op.made.runs().map(|(stitch, _)| stitch).find(|stitch| *stitch != Stitch::CH),
        Act::Repeat(body, _) => first_stitch(body),
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
            (Foundation::ChainRing(chains), _) if !into_ring(&self.written.items) && chains >= ALONG => {
                Some((Base::Stitches(Some(chains)), false))
            }
            _ => Some((Base::Ring, false)),
        }
    }

    /// The ways in which the round can be read, the likeliest first.
    fn readings(&mut self, base: Base, foundation: Foundation, flat: bool) -> Option<Vec<Reading>> {
        let plain = if self.joins() || self.number == 1 { Begin::Plain } else { Begin::Spiral };
        if flat {
            return Some(self.along_chain(base));
        }
        let Some(turning) = self.written.begin else {
            return Some(vec![Reading::new(base, Vec::new(), plain)]);
        };
        let Ok(chains) = u8::try_from(turning.chains) else {
            let message = format!("a round can't begin with {} chains", turning.chains);
            self.report.add(Diagnostic::error("too-many-chains", message).at(turning.place));
            return None;
        };
        let stitch = turning.stitch.or(first_stitch(&self.written.items)).unwrap_or(self.rules.main);
        let (slipped, landed) = match self.landing(base) {
            Ok(landing) => landing,
            Err(complaint) => {
                // Slip stitches that lead nowhere are stitches of the round, where that comes out right.
                let stitches = self.slips_as_stitches(base, turning, plain);
                let fits = self.expand(&stitches).is_ok_and(|outcome| self.fits(&stitches, &outcome));
                if !fits {
                    self.report.add(complaint);
                }
                return fits.then(|| vec![stitches]);
            }
        };
        let counting = |counts: bool| {
            let op = match (base, landed) {
                (Base::Ring, _) => Op::into_ring(stitch),
                (Base::Stitches(_), Some(space)) => Op { into: Spot::Space, consumed: space, ..Op::plain(stitch) },
                (Base::Stitches(_), None) => Op::plain(stitch),
            };
            let first = if counts && !turning.included { vec![op.under(turning.loops)] } else { Vec::new() };
            Reading { slipped, landed, ..Reading::new(base, first, Begin::Chain { chains, counts }) }
        };
        if let Some(counts) = turning.counts {
            return Some(vec![counting(counts)]);
        }
        let said = self.said.get(&(turning.chains, stitch.row().steps > 0)).copied();
        let likely = said.unwrap_or_else(|| self.chain_counts(&turning, stitch));
        // One chain before single crochet never counts, unless that is said.
        let low = turning.chains == 1 && stitch.row().steps == 0;
        let mut readings = if low { vec![counting(likely)] } else { vec![counting(likely), counting(!likely)] };
        let over_stitches = matches!(base, Base::Stitches(_)) && !matches!(foundation, Foundation::ChainRing(_));
        if !self.joins() && over_stitches {
            // In a spiral chains may as well bridge a gap; likely so where stitches are passed over next. Over a ring
            // there is no gap.
            let chains = Op::chains(turning.chains).under(turning.loops);
            let bridge = Reading::new(base, vec![chains], plain);
            let skips =
                matches!(self.written.items.first(), Some(Item { act: Act::Run(op, _), .. }) if op.into == Spot::Skip);
            readings.insert(if skips { 0 } else { readings.len() }, bridge);
        }
        if !self.written.slipped.is_empty() {
            readings.push(self.slips_as_stitches(base, turning, plain));
        }
        Some(readings)
    }

    /// The slip stitches before the chain as stitches of the round, and the chain as a bridge between them.
    fn slips_as_stitches(&self, base: Base, turning: Turning, begin: Begin) -> Reading {
        let chains = Act::Run(Op::chains(turning.chains).under(turning.loops), Times::Exactly(1));
        let chains = Item { act: chains, place: turning.place };
        let items = [&self.written.slipped[..], &[chains], &self.written.items].concat();
        Reading { items: Some(items), ..Reading::new(base, Vec::new(), begin) }
    }

    /// Where slip stitches before the turning chain lead to: stitches passed over, and the chains of the space that the
    /// last of them goes into. A complaint where they lead nowhere.
    fn landing(&self, base: Base) -> Result<(u32, Option<u32>), Diagnostic> {
        let Base::Stitches(Some(before)) = base else { return Ok((0, None)) };
        let (mut at, mut landed, mut moved) = (0_u64, None::<u32>, false);
        for item in &self.written.slipped {
            let Act::Run(op, Times::Exactly(times)) = &item.act else { continue };
            for _ in 0..(*times).min(before) {
                // Past what the last slip stitch went into.
                let next = at + if moved || op.into == Spot::Stitch { landed.map_or(1, u64::from) } else { 0 };
                (at, landed) = if op.into == Spot::Stitch {
                    (next, None)
                } else {
                    let next = u32::try_from(next).unwrap_or(u32::MAX);
                    // Where the spaces aren't known, the next is taken to come after the stitch that was joined to.
                    let unknown = Some((next.max(1), op.consumed.max(1)));
                    let found = self.standing.spaces.as_ref().map_or(unknown, |spaces| spaces.after(next));
                    let Some((start, chains)) = found else {
                        let help = "count the chain spaces of the round before";
                        let message = "no chain space is left here to slip into";
                        return Err(Diagnostic::error("no-space", message).at(item.place).help(help));
                    };
                    (u64::from(start), Some(chains))
                };
                moved = true;
            }
        }
        // Slip stitches into the chains of a space lead into it, where the round goes on in the same space.
        let same_space = matches!(self.written.items.first(), Some(Item { act: Act::Same { space: true, .. }, .. }));
        let within = |spaces: &Spaces| u32::try_from(at).ok().and_then(|at| spaces.around(at));
        if let (true, None, Some((start, chains))) =
            (same_space, landed, self.standing.spaces.as_ref().and_then(within))
        {
            (at, landed) = (u64::from(start), Some(chains));
        }
        if at >= u64::from(before) {
            let place = self.written.slipped.first().map_or(self.written.place, |item| item.place);
            let message = format!("the slip stitches pass over {at} stitches, but only {before} stand there");
            let help = "slip to a stitch or a space of the round before, and begin there";
            return Err(Diagnostic::error("slipped-too-far", message).at(place).help(help));
        }
        Ok((at as u32, landed))
    }

    /// Whether a turning chain counts where nothing says so: never before single crochet, else as the design has it;
    /// before taller stitches it counts (the Craft Yarn Council's reading guide).
    fn chain_counts(&self, turning: &Turning, stitch: Stitch) -> bool {
        let tall = stitch.row().steps > 0 && turning.chains > 1;
        match self.rules.work {
            Work::Joined { chain_counts } => tall && chain_counts,
            Work::Spiral => tall,
        }
    }

    /// A row along a chain: the chains passed over stand for a first stitch where it is a tall one.
    fn along_chain(&self, base: Base) -> Vec<Reading> {
        let passed = self.written.from_hook.map_or(0, |nth| nth - 1);
        let stitch = first_stitch(&self.written.items).unwrap_or(self.rules.main);
        let over = |counts: bool| {
            let op = if counts { Op::decrease(stitch, passed) } else { Op::skip(passed) };
            let first = if passed > 0 { vec![op] } else { Vec::new() };
            Reading::new(base, first, Begin::Plain)
        };
        let counts = passed > 1 && stitch.row().steps > 0;
        vec![over(counts), over(!counts)]
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

    /// Says that a round can be meant in two ways, and which was taken.
    fn two_meanings(&mut self, (first, made): (&Reading, u32), (other, instead): (&Reading, u32)) {
        let as_written = |how: &str| if how.is_empty() { "as it stands".to_owned() } else { how.to_owned() };
        let message = format!(
            "round {} can be meant in two ways: {} it makes {made}, {} it makes {instead}",
            self.number,
            as_written(first.how),
            as_written(other.how)
        );
        let help = format!("{made} is taken; state the count at the end of the round, `({made})` or `({instead})`");
        self.report.add(Diagnostic::warning("two-meanings", message).at(self.written.place).help(help));
    }

    /// Says where the count alone makes a chain at the start count, or not, against what is usual.
    fn tell_chain(&mut self, reading: &Reading) {
        let (Some(turning), Begin::Chain { counts, .. }) = (self.written.begin, reading.begin) else { return };
        let stitch = turning.stitch.or(first_stitch(&self.written.items)).unwrap_or(self.rules.main);
        let said = turning.counts.or(self.said.get(&(turning.chains, stitch.row().steps > 0)).copied());
        if counts == said.unwrap_or_else(|| self.chain_counts(&turning, stitch)) {
            return;
        }
        let (chains, how) = (turning.chains, if counts { "counts as a stitch" } else { "does not count" });
        let message = format!("the count fits only if the ch-{chains} {how}");
        let help = format!("say so where it stands, `ch {chains} ({how})`, or check the count");
        self.report.add(Diagnostic::warning("chain-unsaid", message).at(turning.place).help(help));
    }

    /// Says where the count alone makes a round repeat all of its words; once, since who writes so does it all through.
    fn tell_repeat(&mut self, reading: &Reading) {
        if reading.how != doubts::REPEATED || self.report.diagnostics.iter().any(|known| known.code == "repeat-implied")
        {
            return;
        }
        let message = format!("round {} makes its count only where all of it is repeated around", self.number);
        let help = "say so, `[sc, inc] around`; rounds after it that leave it out are taken in the same way";
        self.report.add(Diagnostic::note("repeat-implied", message).at(self.written.place).help(help));
    }

    /// Says where stitches did not find the kind that they name, or passed over others on the way to it.
    fn tell_kinds(&mut self, reading: &Reading, outcome: &Outcome) {
        let named = self.written.doubts.iter().find_map(|doubt| match doubt {
            Doubt::Onto(place, kind) => Some((*place, *kind)),
            Doubt::Often(..) | Doubt::Each(_) | Doubt::Bare(_) => None,
        });
        let (Some((place, kind)), Some(_)) = (named, &self.standing.kinds) else { return };
        let kind = abbreviation(kind, self.rules.terms);
        if !reading.onto {
            let message = format!("this names a {kind} to work into, and the stitches below are not all {kind}");
            let help = "it comes out right only where it goes into whatever stands there: write `st` for it";
            self.report.add(Diagnostic::warning("no-such-kind", message).at(place).help(help));
        } else if outcome.passed > 0 {
            let message = format!("on the way to each {kind} this passes over {} other stitches", outcome.passed);
            let help = "write the skips out, `skip next st`, or `st` where any stitch is meant";
            self.report.add(Diagnostic::warning("kind-passed", message).at(place).help(help));
        }
    }

    fn joins(&self) -> bool {
        self.written.joined.unwrap_or(matches!(self.rules.work, Work::Joined { .. }))
    }

    fn expand(&self, reading: &Reading) -> Result<Outcome, Stop> {
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
        tally.ops.clone_from(&reading.first);
        tally.groups = (0..reading.first.len()).map(|at| Group { ops: at..at + 1, passes: Vec::new() }).collect();
        tally.used = reading.first.iter().map(|op| op.consumed).sum();
        tally.items(reading.items.as_ref().unwrap_or(&self.written.items), false)?;
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
            && tally.none_left()
        {
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
        match stated.covers {
            Covers::Stitches => stated.count == outcome.made || stated.count == outcome.made - chains,
            Covers::All => stated.count == outcome.made,
            Covers::Spaces => stated.count == chains,
        }
    }

    fn fits(&self, reading: &Reading, outcome: &Outcome) -> bool {
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
        if self.states(outcome) {
            return true;
        }
        if let Some(stated) = self.written.stated.as_ref().filter(|stated| stated.covers == Covers::Spaces) {
            self.report.add(nearest::other_spaces(stated, outcome.chains()));
            return false;
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
        Round { said: Some(self.said(&round, groups)), ..round }
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
