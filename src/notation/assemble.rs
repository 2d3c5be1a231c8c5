//! Clauses → a written round.

use super::grammar::{Clause, Counting};
use super::tree::{Act, Item, Times};
use super::wording::Wording;
use super::written::{Covers, Doubt, JoinedTo, Stated, Turning, WrittenRound};
use crate::craft::{Build, Counted, Foundation, Loops, Made, Op, Spot, Stitch};
use crate::limits;
use crate::report::{Diagnostic, Place, Report};

/// Items in the making, with the asterisks seen so far.
#[derive(Default)]
struct Collector {
    items: Vec<Item>,
    star: Option<usize>,
    star_end: Option<usize>,
    doubts: Vec<Doubt>,
}

impl Collector {
    /// `ch 3, sl st in 3rd ch from hook`: a picot of the chains that stand last; false where they are none.
    fn picot(&mut self, nth: u32, items: &[Item]) -> bool {
        let slip =
            matches!(items, [Item { act: Act::Run(op, Times::Exactly(1)), .. }] if *op == Op::plain(Stitch::SL_ST));
        let Some(Item { act: Act::Run(Op { into: Spot::Air, made: Made::Same(Stitch::CH, chains), .. }, _), place }) =
            self.items.last()
        else {
            return false;
        };
        let known = Stitch::all().find(|stitch| {
            let row = stitch.row();
            row.build == Build::Picot && u32::from(row.stems) == *chains
        });
        // 0 is the stitch below them.
        let Some(picot) = known.filter(|_| slip && (nth == *chains || nth == 0)) else { return false };
        let op = Op { into: Spot::Air, consumed: 0, ..Op::plain(picot) };
        let item = Item { act: Act::Run(op, Times::Exactly(1)), place: *place };
        self.items.pop();
        self.items.push(item);
        true
    }

    /// What stands behind `ending with` at `at`: where it repeats how the last repeat ends anyway, it is only told.
    fn ending(&mut self, at: usize) {
        let tail = self.items.get(at..).unwrap_or_default();
        let Some(Item { act: Act::Repeat(body, _), .. }) = at.checked_sub(1).and_then(|last| self.items.get(last))
        else {
            return;
        };
        let same = |(one, other): (&Item, &Item)| one.act == other.act;
        if tail.len() <= body.len() && tail.iter().rev().zip(body.iter().rev()).all(same) {
            self.items.truncate(at);
        }
    }

    fn star(&mut self) {
        if self.star == Some(self.items.len()) && self.star_end.is_none() {
            // `*with white* sc around`: nothing is done between the two.
            self.star = None;
        } else if self.star.is_some() && self.star_end.is_none() {
            self.star_end = Some(self.items.len());
        } else {
            (self.star, self.star_end) = (Some(self.items.len()), None);
        }
    }

    /// Repeats what stands after the asterisk; false where there is none.
    fn again(&mut self, times: Times, (other, starred): (Option<u32>, bool), place: Place) -> bool {
        // Where no asterisk is spoken of, it is all of the round up to here.
        let all = (!starred && !self.items.is_empty()).then_some(0);
        let Some(star) = self.star.take().or(all) else { return false };
        let end = self.star_end.take().unwrap_or(self.items.len());
        if end == self.items.len() {
            let body = self.items.split_off(star.min(end));
            let start = body.first().map_or(place, |item| item.place);
            let length = (place.offset + place.length).saturating_sub(start.offset);
            let place = Place { length, ..start };
            self.doubts.extend(other.map(|other| Doubt::Often(place, other)));
            self.items.push(Item { act: Act::Repeat(body, times), place });
        } else {
            // Other things were done since: what the asterisks enclose comes once more at the end.
            let body = self.items.get(star..end).unwrap_or_default().to_vec();
            let times = match times {
                Times::Exactly(times) => Times::Exactly(times.saturating_sub(1)),
                Times::Around { .. } => times,
            };
            self.doubts.extend(other.map(|other| Doubt::Often(place, other.saturating_sub(1))));
            self.items.push(Item { act: Act::Repeat(body, times), place });
        }
        true
    }
}

/// The items of clauses in brackets; nothing where something else than work stands among them.
pub(crate) fn items(clauses: Vec<Clause>) -> Option<Vec<Item>> {
    let mut collector = Collector::default();
    for clause in clauses {
        match clause {
            Clause::Do(items) => collector.items.extend(items),
            Clause::SkipFirst(item) => collector.items.push(item),
            Clause::Star => collector.star(),
            Clause::Again(times, other, star) => {
                if !collector.again(times, (other, star), Place::default()) {
                    return None;
                }
            }
            Clause::Aside => {}
            Clause::FromHook(nth, items) => {
                if !collector.picot(nth, &items) {
                    return None;
                }
            }
            Clause::SlipIntoSpace(_)
            | Clause::Ending
            | Clause::Ahead(_)
            | Clause::Ring
            | Clause::FormRing
            | Clause::MakeRing
            | Clause::Join(..)
            | Clause::Loops(_) => return None,
            Clause::Colour(_)
            | Clause::JoinYarn(..)
            | Clause::Counts(..)
            | Clause::Rounds(_)
            | Clause::Until(_)
            | Clause::Evenly(..)
            | Clause::Count(_)
            | Clause::As(..)
            | Clause::Turn => return None,
        }
    }
    (!collector.items.is_empty()).then_some(collector.items)
}

/// Puts the clauses of one round together.
pub(crate) struct Builder<'r> {
    round: WrittenRound,
    collector: Collector,
    loops: Loops,
    /// Where loops are told behind work: how many items stand before.
    trailing: Option<usize>,
    /// Where what stands behind `ending with` begins.
    ending: Option<usize>,
    /// Where what is done so often begins, and how often.
    ahead: Option<(usize, u32)>,
    report: &'r mut Report,
}

impl<'r> Builder<'r> {
    pub(crate) fn new(
        (first, last): (u32, u32),
        numbered: bool,
        row: bool,
        place: Place,
        report: &'r mut Report,
    ) -> Self {
        let round = WrittenRound {
            first,
            last,
            numbered,
            foundation: None,
            from_hook: None,
            slipped: Vec::new(),
            begin: None,
            leads: None,
            loops: Loops::Both,
            items: Vec::new(),
            joined: None,
            joined_to: JoinedTo::Unsaid,
            stated: None,
            colour: None,
            next_colour: None,
            until: None,
            each: false,
            same_as: None,
            doubts: Vec::new(),
            row,
            wording: Wording::default(),
            place,
            whole: true,
        };
        Self {
            round,
            collector: Collector::default(),
            loops: Loops::Both,
            trailing: None,
            ending: None,
            ahead: None,
            report,
        }
    }

    /// Marks that some of the round could not be read.
    pub(crate) fn broken(&mut self, complaint: Option<Diagnostic>) {
        self.round.whole = false;
        if let Some(complaint) = complaint {
            self.report.add(complaint);
        }
    }

    /// The round, its wording left to be told.
    pub(crate) fn finish(mut self, doubts: Vec<Doubt>) -> WrittenRound {
        self.collector.doubts.extend(doubts);
        self.slip_to_same();
        self.end_with_join();
        if let Some(at) = self.ending {
            self.collector.ending(at);
        }
        if let Some((at, times)) = self.ahead
            && at < self.collector.items.len()
        {
            let body = self.collector.items.split_off(at);
            let place = body.first().map_or(self.round.place, |item| item.place);
            self.collector.items.push(Item { act: Act::Repeat(body, Times::Exactly(times)), place });
        }
        self.end_with_count();
        // `sc in each st around, picking up back loops only`.
        if self.trailing == Some(self.collector.items.len()) {
            let loops = self.loops;
            let items = std::mem::take(&mut self.collector.items);
            self.collector.items = items.into_iter().map(|item| item.under(loops)).collect();
        }
        self.round.items = self.collector.items;
        self.round.doubts = self.collector.doubts;
        self.round
    }

    /// `sl st in next 2 ch, sc in same sp`: the slip stitches lead to where the round begins.
    fn slip_to_same(&mut self) {
        let slips = self.collector.items.iter().take_while(|item| item.slips()).count();
        let next = self.collector.items.get(slips).map(|item| &item.act);
        if slips > 0 && self.round.begin.is_none() && matches!(next, Some(Act::Same { .. })) {
            let rest = self.collector.items.split_off(slips);
            self.round.slipped = std::mem::replace(&mut self.collector.items, rest);
        }
    }

    /// `sc in each st around, 24 sc`: once a stitch goes all the way round, so many of it are the count.
    fn end_with_count(&mut self) {
        let [.., around, last] = &self.collector.items[..] else { return };
        let Act::Run(all, Times::Around { leave: 0 }) = &around.act else { return };
        let Act::Run(Op { made: Made::Same(stitch, 1), .. }, Times::Exactly(number @ 2..)) = &last.act else { return };
        if self.round.stated.is_none() && all.made.runs().all(|(known, _)| known == *stitch) && self.bare(last) {
            let (number, stitch, place) = (*number, *stitch, last.place);
            self.collector.items.pop();
            self.count(&[(number, Counted::Of(stitch))], place);
        }
    }

    /// True where it names no place.
    fn bare(&self, item: &Item) -> bool {
        let here = |place: &Place| (place.line, place.offset) == (item.place.line, item.place.offset);
        self.collector.doubts.iter().any(|doubt| matches!(doubt, Doubt::Bare(place) if here(place)))
    }

    /// `…, sl st, ch 1`: the slip stitch joins, the chain begins the next round.
    fn end_with_join(&mut self) {
        let [body @ .., slip, chain] = &self.collector.items[..] else { return };
        let slips = matches!(&slip.act, Act::Run(op, Times::Exactly(1)) if *op == Op::plain(Stitch::SL_ST));
        let Act::Run(Op { into: Spot::Air, made: Made::Same(Stitch::CH, chains), .. }, _) = chain.act else { return };
        if slips && self.bare(slip) && !body.is_empty() {
            let place = chain.place;
            let length = body.len();
            self.collector.items.truncate(length);
            self.round.joined = Some(true);
            self.lead(chains, place);
        }
    }

    /// All of it is so many rounds: those of its number, or on from it where that is one.
    fn rounds(&mut self, number: u32, place: Place) {
        let own = self.round.last - self.round.first + 1;
        if own == 1 && number <= limits::ROUNDS {
            self.round.last = self.round.first.saturating_add(number.saturating_sub(1));
        } else if own != number {
            let message = format!("this speaks of {number} rounds, but is numbered as {own}");
            let help = "make the numbers and the words agree";
            self.broken(Some(Diagnostic::error("rounds-differ", message).at(place).help(help)));
        }
    }

    /// Takes back a stitch that goes all the way round, where how the round is shaped is told next.
    fn plain_around(&mut self) {
        let plain = |item: &Item| match &item.act {
            Act::Run(Op { into: Spot::Stitch, made: Made::Same(_, 1), .. }, Times::Around { leave: 0 }) => true,
            Act::Run(..) | Act::Repeat(..) | Act::Same { .. } | Act::Skipped(_) | Act::Evenly { .. } => false,
        };
        if self.collector.items.last().is_some_and(plain) {
            self.collector.items.pop();
        }
    }

    /// A chain after the join begins the next round.
    fn lead(&mut self, chains: u32, place: Place) {
        let (counts, stitch, loops, included, skips) = (None, None, Loops::Both, false, false);
        self.round.leads = Some(Turning { chains, counts, stitch, loops, included, skips, place });
    }

    /// True once there is something to do.
    pub(crate) fn has_work(&self) -> bool {
        !self.collector.items.is_empty()
    }

    /// True where no count can stand yet.
    pub(crate) fn is_fresh(&self) -> bool {
        self.nothing_yet() && self.round.same_as.is_none()
    }

    fn nothing_yet(&self) -> bool {
        self.collector.items.is_empty() && self.collector.star.is_none() && self.round.begin.is_none()
    }

    pub(crate) fn add(&mut self, clause: Clause, place: Place) {
        match clause {
            Clause::Do(items) => self.work(items, place),
            Clause::SkipFirst(item) => match &mut self.round.begin {
                Some(begin) if self.collector.items.is_empty() => begin.skips = true,
                _ => self.work(vec![item], place),
            },
            Clause::Ending => self.ending = Some(self.collector.items.len()),
            Clause::Ahead(times) => self.ahead = Some((self.collector.items.len(), times)),
            Clause::FromHook(nth, items) if self.has_work() && self.collector.picot(nth, &items) => {}
            Clause::FromHook(nth, items) => self.start_in_chain(nth, items),
            Clause::Star => {
                self.how_follows();
                self.collector.star();
            }
            Clause::Again(times, other, star) => {
                if !self.collector.again(times, (other, star), place) {
                    self.broken(Some(
                        Diagnostic::error(
                            "repeat-without-star",
                            "nothing is marked to repeat from: no * stands before",
                        )
                        .at(place)
                        .help("put * before the first stitch of the repeat"),
                    ));
                }
            }
            Clause::MakeRing if self.round.begin.is_some() => self.form_ring(place),
            // `all into the ring` may be one of chains that was made before.
            Clause::Ring | Clause::MakeRing => {
                self.round.foundation = self.round.foundation.or(Some(Foundation::Ring));
            }
            Clause::FormRing => self.form_ring(place),
            Clause::Join(joins, to) => {
                // A join before anything else brings in the yarn.
                let (chain, first) = (self.round.begin.is_some(), self.round.first == 1 || !self.round.numbered);
                if joins && chain && first && !self.has_work() && self.round.foundation.is_none() {
                    // `ch 20 and join`.
                    self.form_ring(place);
                } else if !(joins && self.nothing_yet()) {
                    self.round.joined = Some(joins);
                    self.round.joined_to = to;
                }
            }
            Clause::SlipIntoSpace(chains) if self.round.begin.is_none() && self.only_slips() => {
                let op = Op { into: Spot::Space, consumed: chains, ..Op::plain(Stitch::SL_ST) };
                self.collector.items.push(Item { act: Act::Run(op, Times::Exactly(1)), place });
            }
            Clause::SlipIntoSpace(_) => self.round.joined = Some(true),
            Clause::Loops(loops) => {
                self.loops = loops;
                self.trailing = self.has_work().then_some(self.collector.items.len());
                if self.nothing_yet() {
                    self.round.loops = loops;
                }
            }
            Clause::JoinYarn(name, begins) if self.nothing_yet() => {
                self.round.colour = name.map(|name| (name, place));
                if let Some(begins) = begins {
                    self.add(*begins, place);
                }
            }
            Clause::JoinYarn(..) => self.round.joined = Some(true),
            Clause::Colour(name) if self.has_work() => self.round.next_colour = Some((name, place)),
            Clause::Colour(name) => self.round.colour = Some((name, place)),
            Clause::Counts(chains, counting) => {
                // `ch 3 counts as dc` makes the chain as well.
                if let Some(chains) = chains.filter(|_| self.nothing_yet()) {
                    let act = Act::Run(Op::chains(chains), Times::Exactly(1));
                    self.work(vec![Item { act, place }], place);
                }
                self.counts(counting, place);
            }
            Clause::Rounds(number) => self.rounds(number, place),
            Clause::Until(length) => self.round.until = Some((length, place)),
            Clause::Evenly(item, each) => {
                self.round.each |= each;
                // `sc around, increasing 6 sc evenly` is one round, not two.
                self.plain_around();
                self.collector.items.push(item);
            }
            Clause::Count(list) => self.count(&list, place),
            Clause::As(first, last, often) => {
                // As the round before.
                let before = self.round.first.saturating_sub(1);
                let so_many = last.max(1) - 1;
                let (first, last) = if first == 0 { (before.saturating_sub(so_many), before) } else { (first, last) };
                self.round.same_as = Some((first, last, place));
                if let Some(often) = often {
                    self.rounds((last.saturating_sub(first) + 1).saturating_mul(often), place);
                }
            }
            Clause::Turn => self.turn(place),
            Clause::Aside => {}
        }
    }

    /// Warns of the first turn; what holds for it holds for those that follow.
    fn turn(&mut self, place: Place) {
        if self.report.diagnostics.iter().any(|known| known.code == "turned-work") {
            return;
        }
        let message = "the work is turned here, but the drawings show rounds worked without turning";
        let help = "leave `turn` out where the right side always faces the maker; where it doesn't, the counts hold, \
                    but read every other ring of the chart backwards";
        self.report.add(Diagnostic::warning("turned-work", message).at(place).help(help));
    }

    /// What follows `increase 6 sts evenly` tells how.
    fn how_follows(&mut self) {
        if let [Item { act: Act::Evenly { .. }, .. }] = self.collector.items[..] {
            self.collector.items.clear();
        }
    }

    fn work(&mut self, items: Vec<Item>, place: Place) {
        // `(ch 3, 2 dc, ch 2, 3 dc) in same sp`: the round begins with the chain.
        if let [Item { act: Act::Same { made: Made::Mixed(runs), space }, .. }] = &items[..]
            && let [(Stitch::CH, chains), rest @ ..] = &runs[..]
            && *chains > 1
            && self.round.begin.is_none()
            && self.only_slips()
        {
            let made = match rest {
                [(stitch, count)] => Made::Same(*stitch, *count),
                _ => Made::Mixed(rest.into()),
            };
            let chain = Item { act: Act::Run(Op::chains(*chains), Times::Exactly(1)), place };
            let rest = Item { act: Act::Same { made, space: *space }, place };
            self.work(vec![chain], place);
            return self.work(vec![rest], place);
        }
        // `sc around, inc in every 4th st` is one round, not two.
        if let [Item { act: Act::Repeat(_, Times::Around { .. }), .. }] = items[..] {
            self.plain_around();
        }
        self.how_follows();
        if self.round.begin.is_none()
            && self.only_slips()
            && let [Item { act: Act::Run(Op { into: Spot::Air, made: Made::Same(Stitch::CH, chains), .. }, _), .. }] =
                items[..]
        {
            self.round.slipped = std::mem::take(&mut self.collector.items);
            let (counts, stitch, loops, included, skips) = (None, None, self.loops, false, false);
            self.round.begin = Some(Turning { chains, counts, stitch, loops, included, skips, place });
            return;
        }
        if self.round.joined == Some(true)
            && self.has_work()
            && let [Item { act: Act::Run(Op { into: Spot::Air, made: Made::Same(Stitch::CH, chains), .. }, _), .. }] =
                items[..]
        {
            self.lead(chains, place);
            return;
        }
        let loops = self.loops;
        self.collector.items.extend(items.into_iter().map(|item| item.under(loops)));
    }

    /// True where nothing was worked yet but slip stitches into one stitch or space after another.
    fn only_slips(&self) -> bool {
        self.collector.star.is_none() && self.collector.items.iter().all(Item::slips)
    }

    fn start_in_chain(&mut self, nth: u32, items: Vec<Item>) {
        if nth == 0 && self.round.begin.is_none() {
            let message = "this goes into a chain that was made before, but none stands here that it can be";
            let place = items.first().map_or(self.round.place, |item| item.place);
            let help = "write the chain first: `ch 4, 11 dc in first ch made`, or `ch 3, sl st in 3rd ch from hook`";
            return self.broken(Some(Diagnostic::error("no-such-chain", message).at(place).help(help)));
        }
        let chain = |item: &Item| match &item.act {
            Act::Run(Op { into: Spot::Air, made: Made::Same(Stitch::CH, chains), .. }, Times::Exactly(1)) => {
                Some(*chains)
            }
            Act::Run(..) | Act::Repeat(..) | Act::Same { .. } | Act::Skipped(_) | Act::Evenly { .. } => None,
        };
        // `ch 4 (counts as ch 1 and dc), 11 dc in first ch made`: one of the four is what all goes into.
        if let (0, Some(begin), Some(of_it)) =
            (nth, self.round.begin.as_mut(), self.collector.items.iter().map(chain).sum::<Option<u32>>())
        {
            begin.chains = begin.chains.saturating_add(of_it);
            let chains = begin.chains;
            self.collector.items.clear();
            return self.start_in_chain(chains, items);
        }
        self.collector.items.extend(items);
        self.round.from_hook = Some(nth);
        if let Some(begin) = self.round.begin.take() {
            self.round.foundation = Some(Foundation::Chain(begin.chains));
        }
    }

    fn form_ring(&mut self, place: Place) {
        match self.round.begin.take() {
            Some(begin) => self.round.foundation = Some(Foundation::ChainRing(begin.chains)),
            None => self.broken(Some(
                Diagnostic::error("ring-without-chain", "a ring is joined here, but no chain stands before it")
                    .at(place)
                    .help("write the chain first: `ch 4, sl st to first ch to form a ring`"),
            )),
        }
    }

    fn counts(&mut self, counting: Counting, place: Place) {
        let Some(begin) = self.round.begin.as_mut() else {
            self.report.add(
                Diagnostic::warning(
                    "counts-without-chain",
                    "this tells what a chain counts as, but the round begins without one",
                )
                .at(place),
            );
            return;
        };
        match counting {
            Counting::No => begin.counts = Some(false),
            Counting::Yes(stitch, loops, chains) => {
                (begin.counts, begin.stitch) = (Some(true), stitch);
                if loops != Loops::Both {
                    begin.loops = loops;
                }
                if chains > 0 {
                    // `ch 4 (counts as dc and ch 1)` is three chains and one more.
                    begin.chains = begin.chains.checked_sub(chains).filter(|left| *left > 0).unwrap_or(begin.chains);
                    let act = Act::Run(Op::chains(chains).under(self.loops), Times::Exactly(1));
                    self.collector.items.push(Item { act, place });
                }
            }
            Counting::Together(number) => match self.collector.items.as_mut_slice() {
                [Item { act: Act::Run(op, Times::Exactly(times)), .. }]
                    if op.into == Spot::Stitch && times.checked_add(1) == Some(number) =>
                {
                    *op = Op { into: Spot::Together, consumed: number, ..op.clone() };
                    *times = 1;
                    (begin.counts, begin.included) = (Some(true), true);
                }
                _ => self.report.add(
                    Diagnostic::error(
                        "counts-together",
                        format!(
                            "what stands here can't count as {number} together: the chain and {} more stitches would",
                            number.saturating_sub(1)
                        ),
                    )
                    .at(place),
                ),
            },
        }
    }

    fn count(&mut self, list: &[(u32, Counted)], place: Place) {
        let of = |(count, what): &(u32, Counted)| match what {
            Counted::Spaces(chains) => count.saturating_mul(*chains),
            // A picot counts for nothing.
            Counted::Of(stitch) => count.saturating_mul(u32::from(stitch.row().counts)),
            Counted::Stitches => *count,
        };
        let count = list.iter().map(of).fold(0, u32::saturating_add);
        let space = |(_, what): &(u32, Counted)| matches!(what, Counted::Spaces(_) | Counted::Of(Stitch::CH));
        let sized = |one: &(u32, Counted)| space(one) && one.1 != Counted::Spaces(0);
        let covers = match (list.iter().all(space), list.iter().any(sized)) {
            (true, _) => Covers::Spaces,
            (false, true) => Covers::All,
            (false, false) => Covers::Stitches,
        };
        let unnamed = list.iter().filter(|(_, what)| *what == Counted::Spaces(0)).map(|(count, _)| *count);
        let spaces = unnamed.clone().next().map(|_| unnamed.fold(0, u32::saturating_add));
        let list = list.iter().map(|(count, what)| (*what, *count)).collect();
        self.round.stated = Some(Stated { count, covers, spaces, list, place });
    }
}
