//! Recount of written rounds: every round expanded, used up against the round before, made against what it states.

mod doubts;

mod nearest;

mod one;

mod reading;

mod spaces;

mod tally;

mod telling;

use crate::craft::{Begin, Close, Foundation, Round, Stitch, Terms, abbreviation};
use crate::design::{Design, Said, Work};
use crate::limits;
use crate::notation::{Covers, Source, Stated, Wording, WrittenRound, read_with};
use crate::report::{Diagnostic, Place, Report};
use crate::units::Mm;
use one::round;
use spaces::Spaces;
use std::collections::BTreeMap;

/// Rounds that were written and add up.
#[derive(Clone, Debug, PartialEq)]
pub struct Recounted {
    /// What the first round of the piece is worked into; of no meaning in later parts.
    pub foundation: Foundation,
    /// The rounds, numbered on from those before; colour and part are filled in by the caller.
    pub rounds: Vec<Round>,
    /// Yarns that rounds name: index into `rounds`, name, where it stands. Each holds until the next.
    pub named: Vec<(usize, String, Place)>,
    /// True where the first of them is worked flat along a chain, and so can't be drawn as a round.
    pub flat: bool,
}

impl Recounted {
    const fn nothing() -> Self {
        Self { foundation: Foundation::Ring, rounds: Vec::new(), named: Vec::new(), flat: false }
    }
}

/// What the words of a round don't say themselves.
#[derive(Clone, Copy, Debug)]
pub struct Rules {
    /// Joined rounds or a spiral, where a round doesn't say.
    pub work: Work,
    /// The stitch that rounds are worked in, where they don't say.
    pub main: Stitch,
    /// Names of stitches, for suggestions.
    pub terms: Terms,
    /// Height of a round of the main stitch, where a swatch tells it; for rounds that are worked to a length.
    pub height: Option<Mm>,
}

/// Reads the written rounds of the part at `part` of the design and counts them against the `before` stitches that
/// stand there, the first round being number `first`. Nothing once the report holds an error about them.
pub(super) fn recount(
    design: &Design,
    part: usize,
    lines: &[Said<String>],
    (before, first): (u32, u32),
    report: &mut Report,
) -> Option<Recounted> {
    let main = design.parts.get(part).map_or(Stitch::SC, |part| part.stitch);
    let height = design.swatches.first().map(|swatch| swatch.gauge.height);
    let rules = Rules { work: design.work, main, terms: design.terms, height };
    let sources: Vec<Source<'_>> = lines.iter().map(|said| Source { text: &said.value, place: said.place }).collect();
    let mut own = Report::new();
    let written = read_with(&sources, (rules.terms, &design.stitches), rules.main, first, &mut own);
    let counted = rounds(&written, (before, first), &rules, &mut own);
    if let Some(flat) = written.first().filter(|_| counted.as_ref().is_some_and(|counted| counted.flat)) {
        own.add(
            Diagnostic::error("worked-flat", "this is worked flat along a chain; only work in the round is drawn")
                .at(flat.place)
                .help("join the chain to a ring, or start in an adjustable ring or in one chain: `ch 2, 6 sc in 2nd ch from hook`"),
        );
    }
    let failed = own.has_errors();
    for complaint in own.diagnostics {
        report.add(complaint);
    }
    counted.filter(|_| !failed)
}

/// Counts written rounds against the `before` stitches that stand there (0 at the start of the piece), the first of
/// them being round `first` of the piece. Nothing once the report holds an error; all rounds are counted even so, those
/// after a wrong one from the count it states.
pub fn rounds(
    written: &[WrittenRound],
    (before, first): (u32, u32),
    rules: &Rules,
    report: &mut Report,
) -> Option<Recounted> {
    // What the stated counts of all rounds say of chains at the start holds for those that leave it open.
    let open = |round: &&WrittenRound| round.begin.is_some_and(|begin| begin.counts.is_none());
    let learnt = match written.iter().filter(open).nth(1) {
        Some(_) => Counter::new(rules, &mut Report::new(), (before, first)).learn(written),
        None => Counting::new(),
    };
    let mut counter = Counter { learnt, ..Counter::new(rules, report, (before, first)) };
    // Rounds are counted in the order they stand in, whatever their numbers; a number out of turn is only told.
    counter.numbers(written, first);
    for round in written {
        counter.add(round);
    }
    counter.tell_uncounted();
    counter.tell_tall();
    (counter.complete && !counter.report.has_errors()).then(|| counter.kept.unwrap_or(counter.done))
}

/// Counts rounds that are worked onto one which is known stitch by stitch, its spaces and kinds too.
pub(super) fn onto(written: &[WrittenRound], below: &Round, rules: &Rules, report: &mut Report) -> Option<Vec<Round>> {
    let mut counter = Counter::new(rules, report, (below.after, below.number + 1));
    counter.standing.spaces = Some(Spaces::of(&below.ops));
    counter.standing.kinds = Some(spaces::kinds(&below.ops));
    for round in written {
        counter.add(round);
    }
    (counter.complete && !counter.report.has_errors()).then_some(counter.done.rounds)
}

/// What stands when a round begins.
#[derive(Clone, Debug)]
pub(super) struct Standing {
    /// Stitches, where they are known.
    count: Option<u32>,
    /// Chain spaces among them, where it is known how they were made.
    spaces: Option<Spaces>,
    /// Those stitches by kind, in order, where it is known how they were made.
    kinds: Option<Vec<Stitch>>,
}

/// By chains and whether a tall stitch follows them.
pub(super) type Counting = BTreeMap<(u32, bool), bool>;

/// True for a first round that is worked into a ring or a chain of its own.
fn begins(written: &WrittenRound) -> bool {
    let own = written.foundation.is_some() || written.from_hook.is_some() || one::into_ring(&written.items);
    written.numbered && written.first == 1 && own
}

/// True where a round is of one stitch alone.
fn all_of(round: &Round) -> bool {
    round.ops.iter().flat_map(|op| op.made.runs()).all(|(stitch, _)| stitch == round.stitch)
}

struct Counter<'a> {
    rules: &'a Rules,
    report: &'a mut Report,
    standing: Standing,
    number: u32,
    /// True once a round of the piece had a number.
    numbered: bool,
    /// The first piece, once another has begun.
    kept: Option<Recounted>,
    /// Whether turning chains of this length count before such stitches, once a round has said so.
    said: Counting,
    /// What most stated counts say of that.
    learnt: Counting,
    /// Rounds by the numbers they were written with, with what stood before each.
    known: BTreeMap<u32, (WrittenRound, Option<u32>)>,
    done: Recounted,
    complete: bool,
    /// Operations of the rounds so far.
    operations: u64,
    /// Rounds that state no count: number, stitches, place.
    uncounted: Vec<(u32, u32, Place)>,
    /// What stated counts told of chains at the start: how often that they count, and that they don't.
    taught: BTreeMap<(u32, bool), (u32, u32)>,
}

impl<'a> Counter<'a> {
    fn new(rules: &'a Rules, report: &'a mut Report, (before, first): (u32, u32)) -> Self {
        Self {
            rules,
            report,
            standing: Standing { count: Some(before), spaces: None, kinds: None },
            number: first,
            numbered: false,
            kept: None,
            said: Counting::new(),
            learnt: Counting::new(),
            known: BTreeMap::new(),
            done: Recounted::nothing(),
            complete: true,
            operations: 0,
            uncounted: Vec::new(),
            taught: BTreeMap::new(),
        }
    }

    /// What most stated counts say of chains at the start.
    fn learn(mut self, written: &[WrittenRound]) -> Counting {
        for round in written {
            self.add(round);
        }
        // One round alone tells nothing: its count may be the slip.
        let clear = self.taught.iter().filter(|(_, (yes, no))| yes.abs_diff(*no) > 1);
        clear.map(|(key, (yes, no))| (*key, yes > no)).collect()
    }

    /// Warns of numbers that don't follow one another.
    fn numbers(&mut self, written: &[WrittenRound], first: u32) {
        let mut expected = written.first().map_or(first, |round| if round.first == 1 { 1 } else { first });
        for (index, round) in written.iter().enumerate() {
            if written.iter().take(index).any(|known| known.numbered) && begins(round) {
                expected = 1;
            }
            if round.first != expected {
                let what = if round.row { "Row" } else { "Rnd" };
                let message = match expected.checked_sub(1).filter(|last| *last > 0) {
                    Some(last) => format!("{what} {} follows {what} {last}", round.first),
                    None => format!("the first round is numbered {}", round.first),
                };
                let help = format!("{what} {expected} is expected here; rounds are counted in the order they stand in");
                self.report.add(Diagnostic::warning("round-number", message).at(round.place).help(help));
            }
            expected = round.last.saturating_add(1);
            // How many rounds a length takes is told by the swatch: whatever number follows.
            if round.until.is_some()
                && let Some(next) = written.get(index + 1)
            {
                expected = next.first;
            }
        }
    }

    fn add(&mut self, written: &WrittenRound) {
        if self.numbered && begins(written) {
            self.begin_piece(written.place);
        }
        self.numbered |= written.numbered;
        if let Some((length, place)) = written.until.filter(|_| written.first == written.last) {
            self.until(written, length, place);
            return;
        }
        let Some((from, to, place)) = written.same_as else { return self.count(written) };
        // Several rounds that repeat several others are so many rounds.
        let each = if from < to {
            let own = |number| WrittenRound { first: number, last: number, ..written.clone() };
            (written.first..=written.last).map(own).collect()
        } else {
            vec![written.clone()]
        };
        for own in each {
            let number = from + (own.first - written.first) % (to.max(from) - from + 1);
            match self.again(&own, number, place) {
                Some(again) => self.count(&again),
                None => self.lose(&own),
            }
        }
    }

    fn count(&mut self, written: &WrittenRound) {
        // `increase 6 sts evenly in each round`: each of them changes, and the count is that of the last.
        if written.each && written.first < written.last {
            for number in written.first..=written.last.min(written.first.saturating_add(limits::ROUNDS)) {
                let own = WrittenRound { first: number, last: number, ..written.clone() };
                let wording = Wording { count: String::new(), ..own.wording.clone() };
                let last = number == written.last;
                self.count(&if last { own } else { WrittenRound { stated: None, wording, ..own } });
            }
            return;
        }
        self.known.insert(written.first, (written.clone(), self.standing.count));
        if let Some(begin) = written.begin
            && let Some(counts) = begin.counts
        {
            let stitch = begin.stitch.or(one::first_stitch(&written.items)).unwrap_or(self.rules.main);
            self.said.insert((begin.chains, stitch.row().steps > 0), counts);
        }
        if !written.whole {
            self.lose(written);
            return;
        }
        let first = self.done.rounds.len();
        self.done.named.extend(written.colour.iter().map(|(name, place)| (first, name.clone(), *place)));
        let next = first.saturating_add((written.last - written.first) as usize + 1);
        let together = (self.number, self.number.saturating_add(written.last - written.first));
        self.done.named.extend(written.next_colour.iter().map(|(name, place)| (next, name.clone(), *place)));
        for number in written.first..=written.last {
            if self.done.rounds.len() >= limits::ROUNDS as usize {
                let message = format!("more than {} rounds", limits::ROUNDS);
                self.report.add(Diagnostic::error("too-many-rounds", message).at(written.place));
                self.complete = false;
                return;
            }
            if self.operations > limits::OPERATIONS {
                let message = format!("up to here the rounds have more than {} stitches", limits::OPERATIONS);
                let help = "look at the numbers of this round and of those before it";
                self.report.add(Diagnostic::error("piece-too-large", message).at(written.place).help(help));
                self.complete = false;
                return;
            }
            let before = self.standing.count;
            let start = self.number == 1 && before == Some(0);
            let counted =
                round(written, self.number, start, &self.standing, (&self.said, &self.learnt), self.rules, self.report);
            let Some(mut counted) = counted else {
                self.lose(written);
                return;
            };
            if let Some(own) = counted.round.said.as_mut().and_then(|said| said.own.as_mut()) {
                own.rounds = together;
            }
            self.done.flat |= counted.flat;
            // A join says it outright.
            for (taught, weight) in [(counted.taught, 1), (counted.joined, 2)] {
                let Some((key, counts)) = taught else { continue };
                let (yes, no) = self.taught.entry(key).or_default();
                (*yes, *no) = (*yes + u32::from(counts) * weight, *no + u32::from(!counts) * weight);
            }
            if start {
                self.done.foundation = counted.foundation;
            }
            if number == written.first {
                self.told(written, &counted.round);
            }
            let changes = before.is_some_and(|before| before != counted.round.after);
            let kinds = Some(spaces::kinds(&counted.round.ops));
            self.standing = Standing { count: Some(counted.round.after), spaces: Some(counted.spaces), kinds };
            let after = counted.round.after;
            self.operations += counted.round.ops.len() as u64;
            self.done.rounds.push(counted.round);
            self.number += 1;
            if changes && number < written.last {
                self.range_changes(written, before.unwrap_or_default(), after);
                return;
            }
        }
    }

    /// Another piece begins: it is counted from nothing, and the first one is kept.
    fn begin_piece(&mut self, place: Place) {
        let message = "another piece begins here: its counts are checked, but only the first is planned and drawn";
        let help = "put each piece into a file of its own";
        self.report.add(Diagnostic::warning("another-piece", message).at(place).help(help));
        let piece = std::mem::replace(&mut self.done, Recounted::nothing());
        self.kept.get_or_insert(piece);
        self.standing = Standing { count: Some(0), spaces: None, kinds: None };
        self.number = 1;
        self.known.clear();
    }

    /// Works a round, or those that it repeats, until the piece is so long.
    fn until(&mut self, written: &WrittenRound, length: Mm, place: Place) {
        let Some(height) = self.rules.height.filter(|height| height.mm() > 0.0) else {
            let message = "how many rounds make this length is told by a swatch";
            let help = "give a swatch, or the number of rounds: `Rnds 5-12:`";
            self.report.add(Diagnostic::error("until-unmeasured", message).at(place).help(help));
            self.lose(written);
            return;
        };
        let tall = |stitch: Stitch| height * (stitch.row().height / self.rules.main.row().height);
        let so_far = self.done.rounds.iter().map(|round| tall(round.stitch)).sum::<Mm>();
        let named = |number: u32| {
            let known = self.known.range(..=number).next_back().map(|(_, (known, _))| known);
            known.and_then(|known| one::first_stitch(&known.items)).unwrap_or(self.rules.main)
        };
        let own = one::first_stitch(&written.items).unwrap_or(self.rules.main);
        let (from, to) = written.same_as.map_or((0, 0), |(from, to, _)| (from, to.max(from)));
        let each = match written.same_as {
            Some(_) => (from..=to).map(|number| tall(named(number))).sum::<Mm>(),
            None => tall(own),
        };
        let left = (length - so_far) / each;
        let times = if left > 0.0 { left.ceil().min(f64::from(limits::ROUNDS)) as u32 } else { 0 };
        let rounds = times.saturating_mul(to - from + 1);
        let message = match rounds {
            0 => "by the swatch the piece is that long already".to_owned(),
            _ => format!("by the swatch this is worked for {rounds} rounds"),
        };
        self.report.add(Diagnostic::note("until-measured", message).at(place));
        for index in 0..rounds {
            let number = self.number;
            let own = WrittenRound { first: number, last: number, until: None, ..written.clone() };
            match written.same_as {
                None => self.count(&own),
                Some((.., place)) => match self.again(&own, from + index % (to - from + 1), place) {
                    Some(again) => self.count(&again),
                    None => self.lose(&own),
                },
            }
            if !self.complete {
                return;
            }
        }
    }

    /// Looks at what a round says of its own count: nothing, or stitches of a kind it doesn't have.
    fn told(&mut self, written: &WrittenRound, round: &Round) {
        match &written.stated {
            None => self.uncounted.push((round.number, round.after, written.place)),
            Some(stated) => {
                // Spaces alone say nothing of the stitches between them.
                if stated.covers == Covers::Spaces {
                    self.uncounted.push((round.number, round.after, written.place));
                }
                if let Some(complaint) = nearest::other_kinds(stated, round, self.rules) {
                    self.report.add(complaint);
                }
            }
        }
    }

    /// A single round of tall stitches between rounds of single crochet, to which nothing climbs, is probably a slip: `dc`
    /// for `sc`, or a UK name.
    fn tell_tall(&mut self) {
        /// A stitch so many steps high needs chains to climb to it.
        const TALL: u8 = 2;
        let low = |round: &Round| round.stitch == Stitch::SC && all_of(round);
        let tall = |round: &Round| {
            let open = matches!(round.begin, Begin::Plain | Begin::Spiral) && round.close == Close::Spiral;
            let level = round.before == round.after && round.said.as_ref().is_none_or(|said| said.asides.is_empty());
            round.stitch.row().turning > TALL && open && level && all_of(round)
        };
        let slips = self.done.rounds.windows(3).filter(|three| low(&three[0]) && tall(&three[1]) && low(&three[2]));
        for three in slips {
            let (number, stitch) = (three[1].number, abbreviation(three[1].stitch, self.rules.terms));
            let sc = abbreviation(Stitch::SC, self.rules.terms);
            let message =
                format!("round {number} is all {stitch} between rounds of {sc}, and nothing is chained to climb to it");
            let help = format!("is {sc} meant? Where {stitch} is, nothing needs to be changed");
            self.report.add(Diagnostic::warning("tall-in-spiral", message).at(three[1].place).help(help));
        }
    }

    /// One note for all rounds that state no count, with the counts they make.
    fn tell_uncounted(&mut self) {
        const MOST: usize = 8;
        let Some((_, _, place)) = self.uncounted.first().copied() else { return };
        let one = |(number, count, _): &(u32, u32, Place)| format!("round {number} makes {count}");
        let mut told: Vec<String> = self.uncounted.iter().take(MOST).map(one).collect();
        if let Some(more) = self.uncounted.len().checked_sub(MOST).filter(|more| *more > 0) {
            told.push(format!("and so on for {more} more"));
        }
        let message = match self.uncounted.len() {
            1 => "a round states no count, so a slip in it shows only later",
            _ => "some rounds state no count, so a slip in them shows only later",
        };
        let help = format!("{}: write each count in brackets at the end of its round", told.join(", "));
        self.report.add(Diagnostic::note("no-count", message).at(place).help(help));
    }

    /// The round of that number once more. Its work is repeated; its stated count holds again only where it is worked
    /// into as many stitches.
    fn again(&mut self, written: &WrittenRound, number: u32, place: Place) -> Option<WrittenRound> {
        let known = self.known.range(..=number).next_back().map(|(_, known)| known);
        let Some((known, before)) = known.filter(|(known, _)| known.last >= number) else {
            let message = format!("round {number} is to be worked again, but no round of that number stands before");
            self.report.add(Diagnostic::error("no-such-round", message).at(place));
            return None;
        };
        let own = written.clone();
        let alike = before.is_some() && *before == self.standing.count && written.first == written.last;
        let stated = own.stated.or(known.stated.clone().filter(|_| written.items.is_empty() && alike));
        let (colour, next_colour) = (own.colour, own.next_colour);
        let (first, last, place) = (own.first, own.last, own.place);
        // `as Rnd 3` is true on the page only where rounds have there the numbers that they have here.
        let wording = if own.first == self.number { own.wording } else { known.wording.clone() };
        Some(WrittenRound { first, last, place, stated, colour, next_colour, wording, ..known.clone() })
    }

    /// Goes on from the stated count after a round that could not be counted.
    fn lose(&mut self, written: &WrittenRound) {
        self.complete = false;
        self.standing =
            Standing { count: written.stated.as_ref().and_then(Stated::stitches), spaces: None, kinds: None };
        self.number = self.number.saturating_add((written.last - written.first).saturating_add(1));
    }

    fn range_changes(&mut self, written: &WrittenRound, before: u32, after: u32) {
        let (first, last) = (written.first, written.last);
        let message = format!(
            "rounds {first}–{last} are written as one, but each changes the count: round {first} makes {after} stitches of {before}"
        );
        let help = format!("write out each of rounds {first}–{last} with its own count; only even rounds share a line");
        self.report.add(Diagnostic::error("range-changes", message).at(written.place).help(help));
        self.complete = false;
        if let Some(stated) = written.stated.as_ref().and_then(Stated::stitches) {
            self.standing.count = Some(stated);
        }
        self.number = self.number.saturating_add(last - first);
    }
}
