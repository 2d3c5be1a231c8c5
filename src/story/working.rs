//! How the piece is worked, and the abbreviations.

use super::Story;
use crate::craft::{
    Begin, Build, Close, Foundation, Loops, Made, Op, OwnStitch, Round, Spot, Stitch, Terms, abbreviation,
};
use crate::design::{Body, Hand, Part, Work};
use crate::notation::{Gaps, across};
use crate::plan::{PartPlan, ShapedIn, SizePlan};
use crate::story::{Block, Cell, Column, Run, Section, Table};
use crate::words::numbers::length;
use crate::words::{Arg, Language};
use std::collections::BTreeMap;

/// A yarn is carried to a round so many after the last one it was used in, and cut where it is longer (common practice).
const CARRIED: usize = 3;

impl Story<'_> {
    pub(super) fn working(&self) -> Section {
        let design = &self.plan.design;
        let mut keys = vec!["page-terms"];
        if self.plan.sizes.iter().any(|size| size.foundation == Foundation::Ring) {
            keys.push("page-ring-start");
        }
        if self.plan.sizes.iter().any(|size| matches!(size.foundation, Foundation::ChainRound(_))) {
            keys.push("page-chain-start");
        }
        match design.work {
            Work::Joined { .. } => {
                keys.push("page-joined");
                let rounds = self.plan.sizes.iter().flat_map(|size| &size.rounds);
                let counts = |round: &Round| matches!(round.begin, Begin::Chain { counts: true, .. });
                keys.extend(rounds.into_iter().any(counts).then_some("page-join-chain"));
            }
            Work::Spiral => {
                keys.push("page-spiral");
                if self.plan.sizes.iter().any(|size| size.rises()) {
                    keys.push("page-spiral-rise");
                }
            }
        }
        let ruffles = |part: &Part| matches!(&part.body, Body::Profile(profile) if profile.shape.form().ruffles);
        keys.extend(design.parts.iter().any(ruffles).then_some("page-ruffle"));
        keys.extend(self.turning_chains());
        keys.extend(self.first_places());
        if matches!(design.work, Work::Joined { .. }) {
            keys.push("page-seam");
        }
        keys.push("page-turned-never");
        keys.push("page-repeats");
        let ops = self.plan.sizes.iter().flat_map(|size| &size.rounds).flat_map(|round| &round.ops);
        let grouped = ops.into_iter().any(|op| matches!(op.made, Made::Mixed(_)));
        let rises = self.plan.sizes.iter().any(|size| size.rises());
        keys.extend((grouped || rises).then_some("page-groups"));
        keys.push("page-counts");
        if self.stitches().iter().any(|stitch| stitch.row().build == Build::Chain) {
            keys.push("page-chains-counted");
        }
        keys.extend(self.colour_changes());
        if self.plan.sizes.iter().filter_map(|size| size.rounds.last()).any(|last| last.stitch == Stitch::SL_ST) {
            keys.push("page-edge-loosely");
        }
        keys.extend(self.invisible().map(|_| "page-last-join"));
        if !self.illustrations.charts.is_empty() {
            keys.push(match design.hand {
                Hand::Right => "page-hand-right",
                Hand::Left => "page-hand-left",
            });
        }
        let mut items: Vec<Vec<Run>> = keys.into_iter().map(|key| vec![Run::new(self.say(key))]).collect();
        items.extend(self.of_one_part().into_iter().map(|said| vec![Run::new(said)]));
        if self.in_brackets() && self.plan.sizes.len() > 1 {
            let names: Vec<&str> = self.plan.sizes.iter().map(|size| size.name.as_str()).collect();
            let shown =
                names.split_first().map_or(String::new(), |(first, rest)| format!("{first} ({})", rest.join(", ")));
            items.push(vec![Run::new(self.words.with("page-brackets", &[("sizes", Arg::Text(&shown))]))]);
            let rows = self.tables().iter().flat_map(|table| &table.parts).flat_map(|part| &part.rows);
            let spare = rows.into_iter().any(|row| {
                let spans = || row.numbers.iter().flatten().map(|(first, last)| last - first);
                spans().min() != spans().max()
            });
            items.extend(spare.then(|| vec![Run::new(self.say("page-boxes-spare"))]));
        }
        self.section("working", "page-working", false, vec![Block::List { numbered: false, items }])
    }

    /// What has to be known before one part or round is begun: on which side a folded part is worked, and when a closed
    /// piece is filled.
    fn of_one_part(&self) -> Vec<String> {
        let rounds = |number: &dyn Fn(&SizePlan) -> Option<u32>| {
            let numbers: Vec<Option<u32>> = self.plan.sizes.iter().map(number).collect();
            across(&numbers, u32::to_string, Gaps::OPEN)
        };
        let mut said = self.multiples();
        said.extend(self.shaped_patterns());
        if let Some(part) = self.plan.sizes.first().and_then(|size| self.plan.folded(size)) {
            let first = rounds(&|size| self.plan.folded(size).map(|part| part.first));
            let args = [("part", Arg::Text(&part.name)), ("round", Arg::Text(&first))];
            said.extend([self.words.with("page-fold-side", &args), self.say("page-fold-loose")]);
        }
        if let Some(part) =
            self.plan.sizes.first().and_then(|size| size.parts.last()).filter(|part| part.folded.is_some())
        {
            let first = rounds(&|size| size.turned_up().map(|folded| folded.first));
            let length =
                |size: &SizePlan| Some(length(size.turned_up()?.length, self.plan.design.units, self.words.language));
            let lengths: Vec<Option<String>> = self.plan.sizes.iter().map(length).collect();
            let length = across(&lengths, String::clone, Gaps::OPEN);
            let args = [("part", Arg::Text(&part.name)), ("round", Arg::Text(&first)), ("length", Arg::Text(&length))];
            said.push(self.words.with("page-fold-up", &args));
        }
        if self.plan.sizes.iter().any(|size| self.plan.filled_before(size).is_some()) {
            let round = rounds(&|size| self.plan.filled_before(size));
            said.push(self.words.with("page-stuff", &[("round", Arg::Text(&round))]));
        }
        said
    }

    /// Which parts are worked over a multiple, with what they end with in every size.
    fn multiples(&self) -> Vec<String> {
        let Some(first) = self.plan.sizes.first() else { return Vec::new() };
        let told = |(index, part): (usize, &PartPlan)| {
            let multiple = part.multiple?.to_string();
            let last = |size: &SizePlan| {
                let last = size.parts.get(index)?.last.checked_sub(1)?;
                size.rounds.get(last as usize).map(|round| round.after)
            };
            let counts: Vec<Option<u32>> = self.plan.sizes.iter().map(last).collect();
            let count = across(&counts, u32::to_string, Gaps::OPEN);
            let args =
                [("part", Arg::Text(&part.name)), ("multiple", Arg::Text(&multiple)), ("count", Arg::Text(&count))];
            Some(self.words.with("page-multiple", &args))
        };
        first.parts.iter().enumerate().filter_map(told).collect()
    }

    /// In which rounds a part that is worked in a stitch pattern changes its count.
    fn shaped_patterns(&self) -> Vec<String> {
        let Some(first) = self.plan.sizes.first() else { return Vec::new() };
        let told = |part: &PartPlan| {
            let key = match part.shaped_in? {
                ShapedIn::Plain => "page-pattern-plain",
                ShapedIn::Between => "page-pattern-between",
            };
            Some(self.words.with(key, &[("part", Arg::Text(&part.name))]))
        };
        first.parts.iter().filter_map(told).collect()
    }

    /// What is said of the chains that rounds begin with; nothing where none does.
    fn turning_chains(&self) -> Option<&'static str> {
        let rounds = self.plan.sizes.iter().flat_map(|size| &size.rounds);
        let count = |round: &Round| match round.begin {
            Begin::Chain { counts, .. } => Some(counts),
            Begin::Spiral | Begin::Plain => None,
        };
        let (some, none) =
            rounds.filter_map(count).fold((false, false), |(some, none), counts| (some | counts, none | !counts));
        match (some, none) {
            (true, true) => Some("page-chain-counts-mixed"),
            (true, false) => Some("page-chain-counts"),
            (false, true) => Some("page-chain-counts-not"),
            (false, false) => None,
        }
    }

    /// Where the first stitch after the chains goes, in rounds that are worked into another one.
    fn first_places(&self) -> Vec<&'static str> {
        let begins = |round: &&Round| round.before > 0 && matches!(round.begin, Begin::Chain { .. });
        let rounds: Vec<&Round> = self.plan.sizes.iter().flat_map(|size| &size.rounds).filter(begins).collect();
        let counts = |round: &&Round| matches!(round.begin, Begin::Chain { counts: true, .. });
        let said = [
            ("page-chain-foot-counts", rounds.iter().any(counts)),
            ("page-chain-foot-counts-not", !rounds.iter().all(counts)),
            ("page-chain-foot-led", rounds.iter().any(|round| round.slipped > 0)),
        ];
        said.into_iter().filter_map(|(key, used)| used.then_some(key)).collect()
    }

    /// How colours are changed, what becomes of the yarn, and how the step of a spiral is softened; nothing where the
    /// colour stays.
    fn colour_changes(&self) -> Vec<&'static str> {
        let (mut joined, mut spiral, mut soon) = (false, false, false);
        for size in &self.plan.sizes {
            // The last round of each colour so far.
            let mut last: BTreeMap<Option<usize>, usize> = BTreeMap::new();
            for (index, round) in size.rounds.iter().enumerate() {
                let before = index.checked_sub(1).and_then(|before| size.rounds.get(before));
                if let Some(before) = before.filter(|before| before.colour != round.colour) {
                    joined |= before.close == Close::Join;
                    spiral |= before.close == Close::Spiral;
                    soon |= last.get(&round.colour).is_some_and(|last| index - last <= CARRIED);
                }
                last.insert(round.colour, index);
            }
        }
        let said = [
            ("page-colour-joined", joined),
            ("page-colour-spiral", spiral),
            ("page-colour-carry", soon),
            ("page-colour-cut", (joined || spiral) && !soon),
            ("page-colour-step", spiral),
        ];
        said.into_iter().filter_map(|(key, used)| used.then_some(key)).collect()
    }

    pub(super) fn abbreviations(&self) -> Section {
        let writer = self.writer();
        let foreign = self.words.language != Language::EN;
        let mut columns = vec![Column::words(self.say("page-short")), Column::wide(self.say("page-meaning"))];
        if foreign {
            columns.push(Column::words(self.say("page-us-term")));
        }
        let mut rows = Vec::new();
        for stitch in self.named_stitches() {
            let mut row = vec![Cell::bold(writer.short(stitch)), Cell::new(writer.name(stitch))];
            if foreign {
                let english = Run { language: Some(Language::EN), ..Run::new(abbreviation(stitch, Terms::Us)) };
                row.push(Cell { runs: vec![english], ..Cell::default() });
            }
            rows.push(row);
        }
        for own in self.own_stitches() {
            let whole = if own.trade { Some(self.say(OwnStitch::V)) } else { own.name.clone() };
            let meaning = whole.unwrap_or_else(|| writer.spelled(&own.made));
            let mut row = vec![Cell::bold(writer.own_name(own)), Cell::new(meaning)];
            if foreign {
                row.push(Cell::new(if own.trade { "V-st" } else { "–" }));
            }
            rows.push(row);
        }
        for key in self.general_terms() {
            let meaning = self.words.part(key, "meaning", &[self.terms()]);
            let short = self.say(key);
            // Some languages write a word out that others shorten; it stands for itself.
            if short == meaning {
                continue;
            }
            let mut row = vec![Cell::bold(short), Cell::new(meaning)];
            if foreign {
                row.push(Cell::new("–"));
            }
            rows.push(row);
        }
        let summary = self.say("page-abbreviations");
        let table = Table { summary, continued: String::new(), columns, head: true, row_heads: true, rows };
        let blocks = [Block::Table(table)].into_iter().chain(self.equivalents()).collect();
        self.section("abbreviations", "page-abbreviations", false, blocks)
    }

    /// The stitches that the instructions name: those made, the chains that begin a piece or a round, the slip stitch
    /// that joins.
    pub(super) fn named_stitches(&self) -> Vec<Stitch> {
        let made = self.stitches();
        let rounds = || self.plan.sizes.iter().flat_map(|size| &size.rounds);
        let begun = |from: fn(Foundation) -> bool| self.plan.sizes.iter().any(|size| from(size.foundation));
        let chains =
            begun(|from| from != Foundation::Ring) || rounds().any(|round| matches!(round.begin, Begin::Chain { .. }));
        let joins = begun(|from| matches!(from, Foundation::ChainRing(_) | Foundation::ChainRound(_)))
            || rounds().any(|round| round.close == Close::Join);
        let ends: Vec<Stitch> = self.plan.sizes.iter().flat_map(|size| size.step_down.iter().copied()).collect();
        let flat = self.plan.sizes.iter().any(|size| size.closed_flat().is_some());
        let named = |stitch: &Stitch| {
            made.contains(stitch)
                || (flat && *stitch == Stitch::SC)
                || ends.contains(stitch)
                || (chains && stitch.row().build == Build::Chain)
                || (joins && stitch.row().build == Build::Slip)
        };
        Stitch::all().filter(named).collect()
    }

    /// True where this word stands among the words of an author that are printed as they are.
    fn authors_write(&self, word: &str) -> bool {
        let writer = self.writer();
        let rounds = self.plan.sizes.iter().flat_map(|size| &size.rounds);
        let words = rounds.filter_map(Round::own).filter(|own| writer.speaks(own)).map(|own| &own.words);
        let mut words = words.flat_map(|words| words.split(|c: char| !c.is_alphanumeric()));
        words.any(|own| own.eq_ignore_ascii_case(word))
    }

    fn general_terms(&self) -> Vec<&'static str> {
        let ops = || self.plan.sizes.iter().flat_map(|size| &size.rounds).flat_map(|round| &round.ops);
        let any = |test: fn(&Op) -> bool| ops().any(test);
        let (together, skip) = match self.plan.design.terms {
            Terms::Us => ("page-tog", "sk"),
            Terms::Uk => ("page-tog-uk", "miss"),
        };
        // An author may write the word in full.
        let writer = self.writer();
        let ours = |round: &&Round| !round.own().is_some_and(|own| writer.speaks(own));
        let mut ours = self.plan.sizes.iter().flat_map(|size| &size.rounds).filter(ours);
        let skips = ours.any(|round| round.ops.iter().any(|op| op.into == Spot::Skip));
        let terms = [
            ("page-st", true),
            ("page-rnd", true),
            (together, any(|op| op.into == Spot::Together)),
            ("page-skip", skips || self.authors_write(skip)),
            ("page-blo", any(|op| op.loops == Loops::Back)),
            ("page-flo", any(|op| op.loops == Loops::Front)),
            ("page-sp", any(|op| op.into == Spot::Space || op.made.runs().any(|(stitch, _)| stitch == Stitch::CH))),
            ("page-inc", self.authors_write("inc")),
            ("page-dec", self.authors_write("dec")),
            ("page-rep", self.authors_write("rep")),
        ];
        terms.into_iter().filter_map(|(key, used)| used.then_some(key)).collect()
    }
}
