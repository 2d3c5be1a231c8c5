//! Clauses → a written round.

use super::grammar::{Clause, Counting};
use super::tree::{Act, Item, Times};
use super::wording::Wording;
use crate::craft::{Counted, Foundation, Loops, Made, Op, Spot, Stitch};
use crate::report::{Diagnostic, Place, Report};

/// A round as it was written, nothing expanded yet.
#[derive(Clone, Debug, PartialEq)]
pub struct WrittenRound {
    /// Number of the first round it stands for.
    pub first: u32,
    /// Number of the last round it stands for.
    pub last: u32,
    /// False where it goes without a number of its own.
    pub numbered: bool,
    /// What it is worked into, where it says so.
    pub foundation: Option<Foundation>,
    /// The chain from the hook that the first stitch goes into, for a start from a chain.
    pub from_hook: Option<u32>,
    /// Slip stitches before that chain, to begin further on.
    pub slipped: Vec<Item>,
    /// The chain it begins with.
    pub begin: Option<Turning>,
    /// The chain after its join, which the next round begins with.
    pub leads: Option<Turning>,
    /// Loops said for the whole round.
    pub loops: Loops,
    /// What to do.
    pub items: Vec<Item>,
    /// True where it closes with a join, false where it says not to.
    pub joined: Option<bool>,
    /// The count it states.
    pub stated: Option<Stated>,
    /// The yarn it names before its first stitch.
    pub colour: Option<(String, Place)>,
    /// The yarn it changes to once it has begun, which is that of the next round.
    pub next_colour: Option<(String, Place)>,
    /// The rounds it repeats, first and last.
    pub same_as: Option<(u32, u32, Place)>,
    /// What of it can be read in two ways.
    pub doubts: Vec<Doubt>,
    /// True where it calls itself a row.
    pub row: bool,
    /// What its author wrote.
    pub wording: Wording,
    /// Where it starts.
    pub place: Place,
    /// False where some of it could not be read; it was complained about.
    pub whole: bool,
}

impl WrittenRound {
    /// True where it only says what the first round is worked into.
    pub(crate) fn only_starts(&self) -> bool {
        let begun = self.foundation.is_some() || self.begin.is_some() || !(self.whole || self.numbered);
        self.items.is_empty() && self.stated.is_none() && self.same_as.is_none() && begun
    }
}

/// The chain that a round begins with.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Turning {
    /// Chains.
    pub chains: u32,
    /// Whether it counts as a stitch, where that is said.
    pub counts: Option<bool>,
    /// The stitch it counts as, where that is said.
    pub stitch: Option<Stitch>,
    /// Loops of that stitch.
    pub loops: Loops,
    /// True where the first item is the whole operation that the chain begins.
    pub included: bool,
    /// Where it stands.
    pub place: Place,
}

/// The count stated for a round.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Stated {
    /// How many.
    pub count: u32,
    /// Of what.
    pub covers: Covers,
    /// How many of what, as it was stated.
    pub list: Vec<(Counted, u32)>,
    /// Where it stands.
    pub place: Place,
}

/// What a stated count counts.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Covers {
    /// Stitches, and chains or not: chain spaces are often left out (common practice).
    Stitches,
    /// Stitches and the chains of spaces.
    All,
    /// The chains of spaces alone.
    Spaces,
}

impl Stated {
    /// Stitches of the round, where it states them.
    pub(crate) fn stitches(&self) -> Option<u32> {
        (self.covers != Covers::Spaces).then_some(self.count)
    }

    /// How many of which stitch, where it names them.
    pub(crate) fn kinds(&self) -> impl Iterator<Item = (Stitch, u32)> + '_ {
        self.list.iter().filter_map(|(what, count)| match what {
            Counted::Of(stitch) if *stitch != Stitch::CH => Some((*stitch, *count)),
            Counted::Of(_) | Counted::Stitches | Counted::Spaces(_) => None,
        })
    }
}

/// Items in the making, with the asterisks seen so far.
#[derive(Default)]
struct Collector {
    items: Vec<Item>,
    star: Option<usize>,
    star_end: Option<usize>,
    doubts: Vec<Doubt>,
}

/// What can be read in two ways; what closes decides.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Doubt {
    /// The repeat that stands here may be done so often instead.
    Often(Place, u32),
    /// `2 sc in next 2 sts`: one in each, or two in each.
    Each(Place),
    /// Stitches without a place: into the next ones, or into the space that is named after them.
    Bare(Place),
    /// Stitches that go into the next of this kind; where they can't, into whatever comes.
    Onto(Place, Stitch),
}

impl Collector {
    fn star(&mut self) {
        if self.star.is_some() && self.star_end.is_none() {
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
            Clause::Star => collector.star(),
            Clause::Again(times, other, star) => {
                if !collector.again(times, (other, star), Place::default()) {
                    return None;
                }
            }
            Clause::Aside => {}
            Clause::SlipIntoSpace(_)
            | Clause::FromHook(..)
            | Clause::Ring
            | Clause::FormRing
            | Clause::MakeRing
            | Clause::Join(_)
            | Clause::Loops(_) => return None,
            Clause::Colour(_)
            | Clause::JoinYarn(_)
            | Clause::Counts(_)
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
            stated: None,
            colour: None,
            next_colour: None,
            same_as: None,
            doubts: Vec::new(),
            row,
            wording: Wording::default(),
            place,
            whole: true,
        };
        Self { round, collector: Collector::default(), loops: Loops::Both, report }
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
        self.end_with_join();
        self.end_with_count();
        self.round.items = self.collector.items;
        self.round.doubts = self.collector.doubts;
        self.round
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

    /// A chain after the join begins the next round.
    fn lead(&mut self, chains: u32, place: Place) {
        let (counts, stitch, loops, included) = (None, None, Loops::Both, false);
        self.round.leads = Some(Turning { chains, counts, stitch, loops, included, place });
    }

    /// True once there is something to do.
    pub(crate) fn has_work(&self) -> bool {
        !self.collector.items.is_empty()
    }

    fn nothing_yet(&self) -> bool {
        self.collector.items.is_empty() && self.collector.star.is_none() && self.round.begin.is_none()
    }

    pub(crate) fn add(&mut self, clause: Clause, place: Place) {
        match clause {
            Clause::Do(items) => self.work(items, place),
            Clause::FromHook(nth, items) => self.start_in_chain(nth, items),
            Clause::Star => self.collector.star(),
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
            Clause::Ring | Clause::MakeRing => self.round.foundation = Some(Foundation::Ring),
            Clause::FormRing => self.form_ring(place),
            Clause::Join(joins) => {
                // A join before anything else brings in the yarn.
                if !(joins && self.nothing_yet()) {
                    self.round.joined = Some(joins);
                }
            }
            Clause::SlipIntoSpace(chains) if self.round.begin.is_none() && self.only_slips() => {
                let op = Op { into: Spot::Space, consumed: chains, ..Op::plain(Stitch::SL_ST) };
                self.collector.items.push(Item { act: Act::Run(op, Times::Exactly(1)), place });
            }
            Clause::SlipIntoSpace(_) => self.round.joined = Some(true),
            Clause::Loops(loops) => {
                self.loops = loops;
                if self.nothing_yet() {
                    self.round.loops = loops;
                }
            }
            Clause::JoinYarn(name) if self.nothing_yet() => self.round.colour = Some((name, place)),
            Clause::JoinYarn(_) => self.round.joined = Some(true),
            Clause::Colour(name) if self.has_work() => self.round.next_colour = Some((name, place)),
            Clause::Colour(name) => self.round.colour = Some((name, place)),
            Clause::Counts(counting) => self.counts(counting, place),
            Clause::Count(list) => self.count(&list, place),
            Clause::As(first, last) => self.round.same_as = Some((first, last, place)),
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

    fn work(&mut self, items: Vec<Item>, place: Place) {
        if self.round.begin.is_none()
            && self.only_slips()
            && let [Item { act: Act::Run(Op { into: Spot::Air, made: Made::Same(Stitch::CH, chains), .. }, _), .. }] =
                items[..]
        {
            self.round.slipped = std::mem::take(&mut self.collector.items);
            let (counts, stitch, loops, included) = (None, None, self.loops, false);
            self.round.begin = Some(Turning { chains, counts, stitch, loops, included, place });
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
        self.collector.items.extend(items.into_iter().map(|item| under(item, loops)));
    }

    /// True where nothing was worked yet but slip stitches into one stitch or space after another.
    fn only_slips(&self) -> bool {
        let slip = Made::Same(Stitch::SL_ST, 1);
        let slips = |item: &Item| match &item.act {
            Act::Run(op, Times::Exactly(_)) if op.made == slip => {
                op.into == Spot::Space || (op.into == Spot::Stitch && op.consumed == 1)
            }
            Act::Run(..) | Act::Repeat(..) | Act::Same { .. } => false,
        };
        self.collector.star.is_none() && self.collector.items.iter().all(slips)
    }

    fn start_in_chain(&mut self, nth: u32, items: Vec<Item>) {
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
            Counted::Stitches | Counted::Of(_) => *count,
        };
        let count = list.iter().map(of).fold(0, u32::saturating_add);
        let space = |(_, what): &(u32, Counted)| matches!(what, Counted::Spaces(_) | Counted::Of(Stitch::CH));
        let covers = match (list.iter().all(space), list.iter().any(space)) {
            (true, _) => Covers::Spaces,
            (false, true) => Covers::All,
            (false, false) => Covers::Stitches,
        };
        let list = list.iter().map(|(count, what)| (*what, *count)).collect();
        self.round.stated = Some(Stated { count, covers, list, place });
    }
}

/// The item under other loops, all through, where it says none itself.
fn under(item: Item, loops: Loops) -> Item {
    if loops == Loops::Both {
        return item;
    }
    let act = match item.act {
        Act::Run(op, times) if op.loops == Loops::Both => Act::Run(op.under(loops), times),
        Act::Repeat(body, times) => Act::Repeat(body.into_iter().map(|item| under(item, loops)).collect(), times),
        act @ (Act::Run(..) | Act::Same { .. }) => act,
    };
    Item { act, ..item }
}
