//! Gives instructions their words, short and exact.
//!
//! One house style throughout: counted repeats in square brackets, `sc in next 4 sts` for runs, `2 sc in next st` for
//! increases, `sc2tog` for decreases, the count in brackets at the end:
//! `[sc in next 4 sts, 2 sc in next st] 6 times (36)`. Where the numbers of several sizes differ they stand in the
//! trade's bracket form, `6 (7, 8) times`.

use super::across::{Gap, Gaps, Numbers};
use super::lines::Label;
use super::phrase::{Instruction, Join, Phrase, Reach, Stands, phrases};
use super::shorten::shorten;
use crate::craft::{Build, Counted, Foundation, Loops, Made, Op, Own, OwnStitch, Spot, Stitch, Terms};
use crate::words::{Arg, Language, Words, capital};

/// Writes in one language and one set of terms.
#[derive(Clone, Copy)]
pub struct Writer<'a> {
    /// The words.
    pub words: &'a Words,
    /// Names of stitches, where the language has two sets.
    pub terms: Terms,
}

impl Writer<'_> {
    /// A message of the catalogue with the terms added.
    pub(crate) fn say(&self, key: &str, args: &[(&'static str, Arg<'_>)]) -> String {
        let terms = match self.terms {
            Terms::Us => "US",
            Terms::Uk => "UK",
        };
        let mut all = vec![("terms", Arg::Text(terms))];
        all.extend_from_slice(args);
        self.words.with(key, &all)
    }

    fn with_what(&self, key: &str, what: &str, number: &str) -> String {
        self.say(key, &[("what", Arg::Text(what)), ("number", Arg::Text(number))])
    }

    /// `Rnd 5`, `Rnds 8–14`, `Rnds 8–14 (8–14, 9–16)`, and which sizes have the rounds where not all do.
    pub fn label(&self, label: &Label, gaps: Gaps) -> String {
        let key = if label.first == label.last { "round-label" } else { "rounds-label" };
        let (number, gap) = (label.first.spans(&label.last, gaps), gaps.word.space());
        let rounds = self.say(key, &[("number", Arg::Text(&number)), ("gap", Arg::Text(gap))]);
        if label.only.is_empty() { rounds } else { self.of_sizes(&label.only, &rounds, gaps) }
    }

    /// `Sizes S, M only:` before what is said for these sizes.
    pub fn of_sizes(&self, sizes: &[String], said: &str, gaps: Gaps) -> String {
        let number = sizes.first().is_some_and(|lead| lead.starts_with(|c: char| c.is_ascii_digit()));
        // Only a number is held to the word before it.
        let gap = if number { gaps.word } else { Gap::Open };
        let (count, sizes) = (sizes.len() as u32, sizes.join(", "));
        let (count, sizes) = (("count", Arg::Count(count)), ("sizes", Arg::Text(&sizes)));
        self.say("only-sizes", &[count, sizes, ("label", Arg::Text(said)), ("gap", Arg::Text(gap.space()))])
    }

    /// The stitches after the last round that bring a spiral down, as one sentence; nothing for none.
    pub fn step_down(&self, stitches: &[Stitch]) -> Option<String> {
        let ops: Vec<Op> = stitches.iter().map(|stitch| Op::plain(*stitch)).collect();
        let what = self.list(&shorten(&ops), Gaps::OPEN);
        (!ops.is_empty()).then(|| self.say("write-step-down", &[("what", Arg::Text(&what))]))
    }

    /// How a last round is closed flat, with so many stitches on each side.
    pub fn close_flat(&self, halves: &Numbers) -> String {
        let (number, stitch) = (halves.told(Gaps::OPEN), self.short(Stitch::SC));
        self.say("write-close-flat", &[("number", Arg::Text(&number)), ("stitch", Arg::Text(&stitch))])
    }

    /// Operations of a whole round, without its beginning, end and count.
    pub(crate) fn ops(&self, ops: &[Op]) -> String {
        self.list(&phrases(ops), Gaps::OPEN)
    }

    /// An instruction on one line of text with its count and the author's remarks after it:
    /// `[sc in next 4 sts, 2 sc in next st] 6 times (36)`.
    pub fn counted(&self, instruction: &Instruction) -> String {
        let (text, count) = (self.instruction(instruction, Gaps::OPEN), self.count(instruction, Gaps::OPEN));
        let differ = instruction.count.iter().any(|(_, count)| count.differ());
        let counted = if differ { format!("{text} – {count}") } else { format!("{text} ({count})") };
        std::iter::once(counted).chain(self.remarks(instruction)).collect::<Vec<_>>().join(". ")
    }

    /// What a round has: `36`, or `12 dc, 12 ch-2 sps` where there are spaces.
    pub fn count(&self, instruction: &Instruction, gaps: Gaps) -> String {
        if let Some(own) = self.own(instruction).filter(|own| !own.counted.is_empty()) {
            return own.counted.clone();
        }
        if let [(Counted::Stitches, number)] = &instruction.count[..] {
            return number.told(gaps);
        }
        self.tallied(&instruction.count, gaps)
    }

    /// Stitches of each kind and spaces: `12 dc, 12 ch-2 sps`.
    pub fn tallied(&self, count: &[(Counted, Numbers)], gaps: Gaps) -> String {
        let one = |(what, count): &(Counted, Numbers)| {
            let number = count.told(gaps);
            match what {
                Counted::Stitches => self.with_what("write-count-stitches", "", &number),
                Counted::Of(stitch) => {
                    let stitch = self.short(*stitch);
                    self.say("write-several", &[("number", Arg::Text(&number)), ("stitch", Arg::Text(&stitch))])
                }
                Counted::Spaces(chains) => {
                    let (chains, many) = (chains.to_string(), if count.all(1) { 1 } else { 2 });
                    let args = [("number", Arg::Text(&number)), ("chains", Arg::Text(&chains))];
                    self.say("write-count-spaces", &[args[0], args[1], ("count", Arg::Count(many))])
                }
            }
        };
        count.iter().map(one).collect::<Vec<_>>().join(", ")
    }

    /// The author's own words, where they are in this language and in these terms.
    pub fn own<'i>(&self, instruction: &'i Instruction) -> Option<&'i Own> {
        instruction.own().filter(|own| self.speaks(own))
    }

    /// True where an author's words are in this language and in these terms.
    pub fn speaks(&self, own: &Own) -> bool {
        self.words.language == Language::EN && own.terms == self.terms
    }

    /// Remarks that stand after the count: of an author's own words those that stood there, of words told anew all.
    pub fn remarks(&self, instruction: &Instruction) -> Vec<String> {
        let Some(said) = &instruction.said else { return Vec::new() };
        let within = if self.own(instruction).is_some() { &[][..] } else { &said.asides };
        let remark = |text: &String| self.say("write-remark", &[("text", Arg::Text(&capital(text)))]);
        within.iter().chain(&said.after).map(remark).collect()
    }

    /// An instruction without its count: the author's own words as they are, or one phrase after another.
    pub fn instruction(&self, instruction: &Instruction, gaps: Gaps) -> String {
        if let Some(own) = self.own(instruction) {
            return held(&own.words, gaps);
        }
        let phrases: Vec<String> = instruction.phrases().map(|phrase| self.phrase(phrase, gaps)).collect();
        phrases.join(", ")
    }

    fn list(&self, phrases: &[Phrase], gaps: Gaps) -> String {
        phrases.iter().map(|phrase| self.phrase(phrase, gaps)).collect::<Vec<_>>().join(", ")
    }

    /// A phrase in words.
    pub fn phrase(&self, phrase: &Phrase, gaps: Gaps) -> String {
        match phrase {
            Phrase::Foundation(foundation) => self.foundation(*foundation),
            Phrase::ChainRound(chains) => self.with_what("write-start-chain-round", "", &chains.told(gaps)),
            Phrase::Loops(Loops::Both) => String::new(),
            Phrase::Loops(Loops::Back) => self.say("write-all-back", &[]),
            Phrase::Loops(Loops::Front) => self.say("write-all-front", &[]),
            Phrase::Slips(op, times) => self.run(op, &Numbers::one(*times), Reach::Next, gaps),
            Phrase::TurningChain { chains, stands } => self.turning_chain(*chains, *stands),
            Phrase::RestTogether(op) => self.rest_together(op),
            Phrase::Rest { made, space } => {
                self.with_what(if *space { "write-same-space" } else { "write-same" }, &self.made(made), "")
            }
            Phrase::Run { op, times, reach } => self.run(op, times, *reach, gaps),
            Phrase::Repeat { body, times } => self.repeat(&self.list(body, gaps), times, gaps),
            Phrase::Join(join) => self.join(*join),
        }
    }

    /// `[…] 6 times`. A number in bracket form is long enough for a line to break after it.
    fn repeat(&self, what: &str, times: &Numbers, gaps: Gaps) -> String {
        let gap = if times.differ() { Gap::Open } else { gaps.word };
        let number = times.told(gaps);
        let (what, number) = (("what", Arg::Text(what)), ("number", Arg::Text(&number)));
        self.say("write-repeat", &[what, number, ("gap", Arg::Text(gap.space()))])
    }

    fn foundation(&self, foundation: Foundation) -> String {
        match foundation {
            Foundation::Ring => self.say("write-start-ring", &[]),
            Foundation::ChainRing(chains) | Foundation::ChainRound(chains) => {
                self.with_what("write-start-chain-ring", "", &chains.to_string())
            }
            Foundation::Chain(chains) => self.chains(chains),
        }
    }

    fn chains(&self, chains: u32) -> String {
        self.with_what("write-chains", "", &chains.to_string())
    }

    fn turning_chain(&self, chains: u8, stands: Stands) -> String {
        let number = chains.to_string();
        let args = [("number", Arg::Text(&number)), ("count", Arg::Count(chains.into()))];
        match stands {
            Stands::Together | Stands::Nothing { said: false } => self.chains(chains.into()),
            Stands::Nothing { said: true } => self.say("write-chain-counts-not", &args),
            Stands::First(stitch, loops) => {
                let stitch = self.looped(self.short(stitch), loops);
                self.say("write-chain-counts", &[args[0], args[1], ("stitch", Arg::Text(&stitch))])
            }
        }
    }

    fn rest_together(&self, op: &Op) -> String {
        let stitch = op.made.runs().next().map_or(Stitch::SC, |(stitch, _)| stitch);
        let (rest, others) = (Op::plain(stitch).under(op.loops), op.consumed.saturating_sub(1));
        let rest = self.run(&rest, &Numbers::one(others), Reach::Next, Gaps::OPEN);
        let whole = self.what(&op.clone().under(Loops::Both));
        self.say("write-counts-together", &[("what", Arg::Text(&rest)), ("stitch", Arg::Text(&whole))])
    }

    fn join(&self, join: Join) -> String {
        match join {
            Join::Top(chains) => self.with_what("write-join-chain", "", &chains.to_string()),
            Join::First(stitch) => self.say("write-join", &[("stitch", Arg::Text(&self.short(stitch)))]),
            Join::Slip => self.say("write-join-plain", &[]),
        }
    }

    /// One operation, so often.
    fn run(&self, op: &Op, times: &Numbers, reach: Reach, gaps: Gaps) -> String {
        let once = times.all(1);
        let number = times.told(Gaps::OPEN);
        let what = self.what(op);
        let pick = |keys: [&'static str; 6]| of_reach(keys, reach, once);
        match op.into {
            Spot::Skip => {
                let key = match (op.consumed == 1 && once, &op.made) {
                    (true, Made::Same(Stitch::CH, _)) => "write-skip-chain",
                    (false, Made::Same(Stitch::CH, _)) => "write-skip-chains",
                    (true, Made::Nothing | Made::Same(..) | Made::Mixed(_)) => "write-skip",
                    (false, Made::Nothing | Made::Same(..) | Made::Mixed(_)) => "write-skip-run",
                };
                self.with_what(key, "", &times.times(op.consumed).told(Gaps::OPEN))
            }
            Spot::Air if once => what,
            Spot::Air => self.repeat(&what, times, gaps),
            Spot::Crossed if once && reach != Reach::Around => self.with_what("write-crossed-next", &what, ""),
            Spot::Together | Spot::Crossed if reach == Reach::Around => {
                self.with_what("write-together-around", &what, &number)
            }
            Spot::Together if once => what,
            Spot::Together | Spot::Crossed => self.with_what("write-together-run", &what, &number),
            Spot::Space => {
                let chains = op.consumed.to_string();
                let key =
                    pick(alone(["write-space", "write-space-run", "write-space-around", "write-space-remaining"]));
                let args = [("what", &what), ("number", &number), ("chains", &chains)];
                self.say(key, &args.map(|(name, text)| (name, Arg::Text(text))))
            }
            Spot::Stitch if op.consumed == 0 => self.start(op, times, reach, gaps),
            Spot::Stitch => {
                let post = matches!(&op.made, Made::Same(stitch, _) if matches!(stitch.row().build, Build::Post(_)));
                let plain = matches!(op.made, Made::Same(_, 1));
                let key = match (post, plain) {
                    (true, _) => {
                        pick(alone(["write-post", "write-post-run", "write-post-around", "write-post-remaining"]))
                    }
                    (false, plain) => pick([
                        "write-next",
                        if plain { "write-next-run" } else { "write-next-each" },
                        "write-around",
                        "write-remaining",
                        "write-around-all",
                        "write-remaining-all",
                    ]),
                };
                self.with_what(key, &what, &number)
            }
        }
    }

    /// Stitches into what the piece starts from.
    fn start(&self, op: &Op, times: &Numbers, reach: Reach, gaps: Gaps) -> String {
        let once = times.all(1);
        if let Some(key) =
            chain_key(["write-next-chain", "write-next-chains", "write-each-chain", "write-rest-chains"], reach, once)
        {
            return self.with_what(key, &self.what(op), &times.told(Gaps::OPEN));
        }
        let what = match &op.made {
            Made::Same(stitch, 1) if !once => {
                let (name, number) = (self.short(*stitch), times.told(Gaps::OPEN));
                let args = [("number", Arg::Text(&number)), ("stitch", Arg::Text(&name))];
                self.looped(self.say("write-several", &args), op.loops)
            }
            Made::Nothing | Made::Same(..) | Made::Mixed(_) => self.what(op),
        };
        let text = if let Reach::Chain(chains) = reach {
            self.say("write-nth-chain", &[("what", Arg::Text(&what)), ("number", Arg::Count(chains))])
        } else {
            self.with_what("write-ring", &what, "")
        };
        // Several of one stitch are a number; several groups are a repeat.
        if once || matches!(op.made, Made::Same(_, 1)) { text } else { self.repeat(&text, times, gaps) }
    }

    /// What is made by one operation, without where: `sc`, `2 sc`, `(2 dc, ch 2, 2 dc)`, `sc2tog`.
    fn what(&self, op: &Op) -> String {
        let text = match (&op.made, op.into) {
            (Made::Same(stitch, _), Spot::Together) => {
                let (name, number) = (self.short(*stitch), op.consumed.to_string());
                self.say("write-together", &[("stitch", Arg::Text(&name)), ("number", Arg::Text(&number))])
            }
            (Made::Same(stitch, _), Spot::Crossed) => self.crossed(*stitch),
            (made, _) => self.made(made),
        };
        self.looped(text, op.loops)
    }

    /// What a pair of crossed stitches is called.
    pub fn crossed(&self, stitch: Stitch) -> String {
        self.say("write-crossed", &[("stitch", Arg::Text(&self.short(stitch)))])
    }

    fn looped(&self, text: String, loops: Loops) -> String {
        match loops {
            Loops::Both => text,
            Loops::Back => self.with_what("write-back", &text, ""),
            Loops::Front => self.with_what("write-front", &text, ""),
        }
    }

    /// What is made in one place: by its name where it is a stitch of the maker's own.
    fn made(&self, made: &Made) -> String {
        self.words.own(made).map_or_else(|| self.spelled(made), |own| self.own_name(own))
    }

    /// What rounds call a stitch of the maker's own.
    pub fn own_name(&self, own: &OwnStitch) -> String {
        if own.trade { self.say(&format!("{}-short", OwnStitch::V), &[]) } else { own.short.clone() }
    }

    /// What is made in one place, stitch by stitch: `(2 dc, ch 2, 2 dc)`.
    pub fn spelled(&self, made: &Made) -> String {
        let one = |(stitch, count): (Stitch, u32)| {
            let name = self.short(stitch);
            let number = count.to_string();
            match (stitch, count) {
                (Stitch::CH, count) => self.chains(count),
                (_, 1) => self.say("write-single", &[("stitch", Arg::Text(&name))]),
                _ => self.say("write-several", &[("number", Arg::Text(&number)), ("stitch", Arg::Text(&name))]),
            }
        };
        let parts: Vec<String> = made.runs().map(one).collect();
        match made {
            Made::Mixed(_) => format!("({})", parts.join(", ")),
            Made::Nothing | Made::Same(..) => parts.join(", "),
        }
    }
}

/// Words with the number of times held to its word where that is asked.
fn held(words: &str, gaps: Gaps) -> String {
    let mut text = String::new();
    let mut rest = words;
    while let Some(at) = rest.find(" times") {
        text.push_str(&rest[..at]);
        text.push_str(if text.ends_with(|c: char| c.is_ascii_digit()) { gaps.word.space() } else { " " });
        rest = &rest[at + 1..];
    }
    text + rest
}

/// Keys of what is worked into no chains.
pub(super) fn alone([one, more, around, remaining]: [&'static str; 4]) -> [&'static str; 6] {
    [one, more, around, remaining, around, remaining]
}

/// The key of these that says where a run goes: once, several times, all the way round, into all that is left, and the
/// last two where chains are among it.
pub(super) fn of_reach(keys: [&'static str; 6], reach: Reach, once: bool) -> &'static str {
    let [one, more, around, remaining, around_all, remaining_all] = keys;
    match (reach, once) {
        (Reach::Around | Reach::EachChain, _) => around,
        (Reach::Remaining | Reach::RestChains, _) => remaining,
        (Reach::AroundAll, _) => around_all,
        (Reach::RemainingAll, _) => remaining_all,
        (Reach::Next | Reach::Ring | Reach::Chain(_) | Reach::NextChains, true) => one,
        (Reach::Next | Reach::Ring | Reach::Chain(_) | Reach::NextChains, false) => more,
    }
}

/// The key of these for what goes into the chains of a ring one by one; nothing for all else.
pub(super) fn chain_key(keys: [&'static str; 4], reach: Reach, once: bool) -> Option<&'static str> {
    matches!(reach, Reach::NextChains | Reach::EachChain | Reach::RestChains)
        .then(|| of_reach(alone(keys), reach, once))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::common;
    use crate::craft::{Begin, Below, Close, Round};
    use crate::words::Language;

    fn round(number: u32, begin: Begin, close: Close, ops: Vec<Op>) -> Round {
        Round { begin, close, ..common::round(number, ops) }
    }

    fn written(round: &Round, foundation: Foundation, terms: Terms) -> String {
        let instruction = Instruction::of(round, Below::Foundation(foundation));
        Writer { words: &Words::of(Language::EN), terms }.counted(&instruction)
    }

    fn us(round: &Round) -> String {
        written(round, Foundation::Ring, Terms::Us)
    }

    fn spiral(ops: Vec<Op>) -> String {
        us(&round(2, Begin::Spiral, Close::Spiral, ops))
    }

    fn times(count: usize, ops: &[Op]) -> Vec<Op> {
        ops.iter().cycle().take(count * ops.len()).cloned().collect()
    }

    #[test]
    fn plain_rounds_and_shaping() {
        let (sc, inc, dec) = (Op::plain(Stitch::SC), Op::increase(Stitch::SC, 2), Op::decrease(Stitch::SC, 2));
        assert_eq!(spiral(times(72, std::slice::from_ref(&sc))), "sc in each st around (72)");
        assert_eq!(spiral(times(6, std::slice::from_ref(&inc))), "2 sc in each st around (12)");
        assert_eq!(spiral(times(6, std::slice::from_ref(&dec))), "sc2tog around (6)");
        let repeat = [vec![sc.clone(); 4], vec![inc]].concat();
        assert_eq!(spiral(times(6, &repeat)), "[sc in next 4 sts, 2 sc in next st] 6 times (36)");
        let repeat = [vec![sc; 2], vec![dec]].concat();
        assert_eq!(spiral(times(6, &repeat)), "[sc in next 2 sts, sc2tog] 6 times (18)");
    }

    #[test]
    fn a_first_round_says_what_it_is_worked_into() {
        let first = round(1, Begin::Spiral, Close::Spiral, times(6, &[Op::into_ring(Stitch::SC)]));
        assert_eq!(us(&first), "make an adjustable ring, 6 sc in ring (6)");
        let chain = written(&first, Foundation::Chain(2), Terms::Uk);
        assert_eq!(chain, "ch 2, 6 dc in 2nd ch from hook (6)");
        let ring = written(&first, Foundation::ChainRing(4), Terms::Us);
        assert_eq!(ring, "ch 4, sl st to first ch to form a ring, 6 sc in ring (6)");
    }

    #[test]
    fn joined_rounds_begin_with_their_chain_and_end_with_their_join() {
        let begin = Begin::Chain { chains: 3, counts: true };
        let ops = [vec![Op::increase(Stitch::DC, 2)], times(11, &[Op::increase(Stitch::DC, 2)])].concat();
        assert_eq!(
            us(&round(2, begin, Close::Join, ops)),
            "ch 3 (counts as dc), dc in same st, 2 dc in each remaining st, sl st to top of ch-3 to join (24)"
        );
        let begin = Begin::Chain { chains: 1, counts: false };
        let ops = times(8, &[Op::plain(Stitch::SC).under(Loops::Back)]);
        assert_eq!(
            us(&round(2, begin, Close::Join, ops)),
            "working in BLO, ch 1, sc in each st around, sl st to first sc to join (8)"
        );
    }

    const HELD: Gaps = Gaps { word: Gap::Held, bracket: Gap::Held, comma: Gap::Open };

    fn repeats(times: &[u32], tag: &str) -> String {
        let run = Phrase::Run { op: Op::increase(Stitch::SC, 2), times: Numbers::one(1), reach: Reach::Next };
        let repeat = Phrase::Repeat { body: vec![run], times: Numbers::several(times.iter().copied()) };
        let words = Words::of(Language::by_tag(tag).unwrap());
        Writer { words: &words, terms: Terms::Us }.phrase(&repeat, HELD)
    }

    #[test]
    fn the_number_of_times_holds_to_its_word() {
        assert_eq!(repeats(&[6], "en"), "[2 sc in next st] 6\u{a0}times");
        assert_eq!(repeats(&[5, 6, 6], "en"), "[2 sc in next st] 5\u{a0}(6, 6) times");
        assert_eq!(repeats(&[6], "de"), "[2 fM in die nächste M] 6-mal");
        assert_eq!(repeats(&[5, 6], "de"), "[2 fM in die nächste M] 5\u{a0}(6)-mal");
    }

    #[test]
    fn a_label_breaks_before_its_bracket() {
        let label = |first: &[u32], last: &[u32], only: &[&str], few: bool| {
            let numbers = |numbers: &[u32]| Numbers::several(numbers.iter().copied());
            let only = only.iter().map(|name| (*name).to_owned()).collect();
            let label = Label { first: numbers(first), last: numbers(last), only };
            let gaps = Gaps { word: Gap::Held, bracket: Gap::Open, comma: Gap::held(few) };
            Writer { words: &Words::of(Language::EN), terms: Terms::Us }.label(&label, gaps)
        };
        assert_eq!(label(&[8, 8, 7], &[9, 8, 9], &[], true), "Rnds\u{a0}8–9 (8,\u{a0}7–9)");
        assert_eq!(label(&[8, 8, 7], &[9, 8, 9], &[], false), "Rnds\u{a0}8–9 (8, 7–9)");
        assert_eq!(label(&[9], &[9], &["M"], true), "Size M only: Rnd\u{a0}9");
        assert_eq!(label(&[9, 9], &[9, 9], &["6 months", "M"], true), "Sizes\u{a0}6 months, M only: Rnd\u{a0}9");
    }
}
