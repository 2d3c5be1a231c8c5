//! The ways in which one round can be read: what it is worked into, and whether its chain counts.

use super::one::{One, first_stitch};
use super::spaces::Spaces;
use super::tally::Base;
use crate::craft::{Begin, Foundation, Op, Spot, Stitch};
use crate::design::Work;
use crate::notation::tree::{Act, Item, Times};
use crate::notation::{JoinedTo, Turning};
use crate::report::Diagnostic;

/// One way to read a round: what it is worked into, and whether its chain counts.
pub(super) struct Reading {
    pub(super) base: Base,
    /// Stitches passed over by slip stitches at the start.
    pub(super) slipped: u32,
    /// Chains of the space that the slip stitches led into.
    pub(super) landed: Option<u32>,
    /// Operations that come before the items.
    pub(super) first: Vec<Op>,
    pub(super) begin: Begin,
    /// What to work, where it isn't the items as they were written.
    pub(super) items: Option<Vec<Item>>,
    /// True where stitches go into the kind below that they name.
    pub(super) onto: bool,
    /// How it is meant, where that isn't what is written first.
    pub(super) how: &'static str,
    /// True where a slip stitch at the end is the join.
    pub(super) joins: bool,
    /// The count that its last words state.
    pub(super) count: Option<u32>,
}

impl Reading {
    pub(super) fn new(base: Base, first: Vec<Op>, begin: Begin) -> Self {
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

impl One<'_> {
    /// The ways in which the round can be read, the likeliest first.
    pub(super) fn readings(&mut self, base: Base, foundation: Foundation, flat: bool) -> Option<Vec<Reading>> {
        let plain = if self.joins() || self.number == 1 { Begin::Plain } else { Begin::Spiral };
        if flat {
            return Some(self.along_chain(base));
        }
        let Some(turning) = self.written.begin else {
            if !self.written.slipped.is_empty() {
                let stitches = Reading {
                    items: Some([&self.written.slipped[..], &self.written.items].concat()),
                    ..Reading::new(base, Vec::new(), plain)
                };
                let led = self.landing(base).ok();
                let led =
                    led.map(|(slipped, landed)| Reading { slipped, landed, ..Reading::new(base, Vec::new(), plain) });
                return Some(led.into_iter().chain([stitches]).collect());
            }
            let as_written = Reading::new(base, Vec::new(), plain);
            return Some(self.passed_chains(base).into_iter().chain([as_written]).collect());
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
        let counting = |counts: bool, chains: u8| {
            let op = match (base, landed) {
                (Base::Ring, _) => Op::into_ring(stitch),
                (Base::Stitches(_), Some(space)) => Op { into: Spot::Space, consumed: space, ..Op::plain(stitch) },
                (Base::Stitches(_), None) => Op::plain(stitch),
            };
            let mut first = if counts && !turning.included { vec![op.under(turning.loops)] } else { Vec::new() };
            // `ch 3, skip first st`: what doesn't count stands on nothing.
            if turning.skips && !counts {
                first.push(Op::skip(1));
            }
            // Chains beyond those of the stitch are a space behind it.
            let space = turning.chains.saturating_sub(u32::from(chains));
            first.extend((space > 0).then(|| Op::chains(space).under(turning.loops)));
            Reading { slipped, landed, ..Reading::new(base, first, Begin::Chain { chains, counts }) }
        };
        if let Some(counts) = turning.counts {
            return Some(vec![counting(counts, chains)]);
        }
        // A tall chain beside a first stitch that is passed over stands for it.
        let likely = self.likely(&turning, stitch) || (turning.skips && stitch.row().steps > 0);
        // One chain before single crochet never counts, unless that is said.
        let low = turning.chains == 1 && stitch.row().steps == 0;
        let mut readings = if low {
            vec![counting(likely, chains)]
        } else {
            vec![counting(likely, chains), counting(!likely, chains)]
        };
        // `ch 5, (dc in ring, ch 2) 11 times`: three chains are the stitch, two a space. Where it is joined tells which.
        match self.written.joined_to {
            JoinedTo::Chain(nth) if nth > 0 && nth < turning.chains => {
                readings.insert(0, counting(true, u8::try_from(nth).unwrap_or(chains)));
            }
            JoinedTo::Chain(_) | JoinedTo::Stitch => {}
            JoinedTo::Unsaid => {
                let own = stitch.row().turning;
                if stitch.row().steps > 0 && chains > own {
                    readings.push(counting(true, own));
                }
            }
        }
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

    /// `ch 4, 11 dc in 4th ch from hook`: the chains passed over are the first stitch, where that is a tall one.
    fn passed_chains(&self, base: Base) -> Option<Reading> {
        let nth = self.written.from_hook.filter(|_| base == Base::Ring)?;
        let stitch = first_stitch(&self.written.items)?;
        let chains = u8::try_from(nth.checked_sub(1)?).ok()?;
        let tall = stitch.row().steps > 0 && chains >= stitch.row().turning && chains > 1;
        let begin = Begin::Chain { chains, counts: true };
        tall.then(|| Reading::new(base, vec![Op::into_ring(stitch)], begin))
    }

    /// The slip stitches before the chain as stitches of the round, and the chain as a bridge between them.
    pub(super) fn slips_as_stitches(&self, base: Base, turning: Turning, begin: Begin) -> Reading {
        let chains = Act::Run(Op::chains(turning.chains).under(turning.loops), Times::Exactly(1));
        let chains = Item { act: chains, place: turning.place };
        let items = [&self.written.slipped[..], &[chains], &self.written.items].concat();
        Reading { items: Some(items), ..Reading::new(base, Vec::new(), begin) }
    }

    /// Where slip stitches before the turning chain lead to: stitches passed over, and the chains of the space that the
    /// last of them goes into. A complaint where they lead nowhere.
    pub(super) fn landing(&self, base: Base) -> Result<(u32, Option<u32>), Diagnostic> {
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
    pub(super) fn chain_counts(&self, turning: &Turning, stitch: Stitch) -> bool {
        let tall = stitch.row().steps > 0 && turning.chains > 1;
        match self.rules.work {
            Work::Joined { chain_counts } => tall && chain_counts,
            Work::Spiral => tall,
        }
    }

    /// The kind of chain that this is: its chains, and whether a tall stitch follows.
    pub(super) fn key(&self, turning: &Turning) -> (u32, bool) {
        let stitch = turning.stitch.or(first_stitch(&self.written.items)).unwrap_or(self.rules.main);
        (turning.chains, stitch.row().steps > 0)
    }

    /// Whether a chain at the start counts: as the author said elsewhere, as the round is joined, else as is usual.
    pub(super) fn likely(&self, turning: &Turning, stitch: Stitch) -> bool {
        let tall = stitch.row().steps > 0;
        let key = (turning.chains, tall);
        let joined = match self.written.joined_to {
            JoinedTo::Chain(_) => Some(true),
            JoinedTo::Stitch if tall => Some(false),
            JoinedTo::Stitch | JoinedTo::Unsaid => None,
        };
        let said = self.said.get(&key).copied();
        let learnt = || self.learnt.get(&key).copied();
        said.or(joined).or_else(learnt).unwrap_or_else(|| self.chain_counts(turning, stitch))
    }

    /// A row along a chain: the chains passed over stand for a first stitch where it is a tall one.
    pub(super) fn along_chain(&self, base: Base) -> Vec<Reading> {
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
}
