//! Rounds in plain words: one sentence a step, no abbreviations, no brackets, as a screen reader speaks them well.
//!
//! `Round 5. Work one single crochet in each of the next four stitches, then work two single crochets in the next
//! stitch. Do this six times in all. You have 36 stitches.` A repeat inside a repeat gets a name first: a listener
//! can't see where brackets close.

use super::tree::{Act, Item, Times};
use super::write::{Sheet, Writer, without_first};
use crate::craft::{Begin, Below, Build, Close, Foundation, Loops, Made, Op, Round, Spot, Stitch, Terms};
use crate::plan::SizePlan;
use crate::words::{Arg, Words};

/// One round in sentences, its number first and its count last, worked into what is `below` it.
pub fn steps(round: &Round, below: Below<'_>, words: &Words, terms: Terms) -> Vec<String> {
    let sheet = Sheet::of(round, below);
    let teller = Teller { writer: Writer { words, terms }, sequences: Vec::new() };
    teller.round(&sheet, (round.number, round.number), round.after)
}

/// Rounds that share their sentences.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct ToldRound {
    /// Number of the first round.
    pub first: u32,
    /// Number of the last round.
    pub last: u32,
    /// Index into the parts of the size.
    pub part: usize,
    /// The sentences, in order.
    pub sentences: Vec<String>,
}

/// All rounds of a size in sentences, those that are the same told once.
pub fn rounds(size: &SizePlan, words: &Words, terms: Terms) -> Vec<ToldRound> {
    let writer = Writer { words, terms };
    let tell = |stretch: super::lines::Stretch| {
        let teller = Teller { writer, sequences: Vec::new() };
        let (first, last) = (stretch.first, stretch.last);
        let sentences = teller.round(&stretch.sheet, (first, last), stretch.count);
        ToldRound { first, last, part: stretch.part, sentences }
    };
    super::lines::stretches(size).into_iter().map(tell).collect()
}

/// The stitches after the last round that bring a spiral down, as one sentence; nothing for none.
pub fn step_down(stitches: &[Stitch], words: &Words, terms: Terms) -> Option<String> {
    let mut teller = Teller { writer: Writer { words, terms }, sequences: Vec::new() };
    let clauses: Vec<String> = stitches.iter().map(|stitch| teller.run(&Op::plain(*stitch), 1, false, None)).collect();
    let what = teller.then(clauses);
    (!stitches.is_empty()).then(|| teller.writer.say("say-step-down", &[("what", Arg::Text(&what))]))
}

struct Teller<'a> {
    writer: Writer<'a>,
    /// Sentences that name the inner repeats of the round, to be said first.
    sequences: Vec<String>,
}

/// A clause as a sentence.
fn sentence(clause: &str) -> String {
    let mut letters = clause.trim_end_matches(',').chars();
    let first = letters.next().map(|letter| letter.to_uppercase().to_string()).unwrap_or_default();
    format!("{first}{}.", letters.as_str())
}

impl Teller<'_> {
    fn say(&self, key: &str, args: &[(&'static str, &str)]) -> String {
        let args: Vec<(&'static str, Arg<'_>)> = args.iter().map(|(name, text)| (*name, Arg::Text(text))).collect();
        self.writer.say(key, &args)
    }

    fn round(mut self, sheet: &Sheet, (first, last): (u32, u32), count: u32) -> Vec<String> {
        let number = |number: u32| number.to_string();
        let heading = if first == last {
            self.say("say-round", &[("number", &number(first))])
        } else {
            self.say("say-rounds", &[("first", &number(first)), ("last", &number(last))])
        };
        let mut said = vec![heading];
        said.extend(sheet.foundation.map(|foundation| sentence(&self.foundation(foundation))));
        match sheet.loops {
            Loops::Both => {}
            Loops::Back => said.push(sentence(&self.say("say-all-back", &[]))),
            Loops::Front => said.push(sentence(&self.say("say-all-front", &[]))),
        }
        said.extend(self.slips(sheet));
        said.extend(self.begin(sheet));
        let steps = self.body(sheet);
        said.append(&mut self.sequences);
        said.extend(steps);
        match (sheet.close, sheet.begin) {
            (Close::Spiral, _) => {}
            (Close::Join, Begin::Chain { counts: true, .. }) => said.push(self.say("say-join-chain", &[])),
            (Close::Join, Begin::Chain { .. } | Begin::Plain | Begin::Spiral) => said.push(self.say("say-join", &[])),
        }
        said.push(self.writer.say("say-count", &[("count", Arg::Count(count))]));
        said
    }

    fn foundation(&self, foundation: Foundation) -> String {
        match foundation {
            Foundation::Ring => self.say("say-start-ring", &[]),
            Foundation::ChainRing(chains) => {
                self.say("say-start-chain-ring", &[("made", &self.writer.several(Stitch::CH, chains))])
            }
            Foundation::Chain(chains) => self.say("say-make", &[("made", &self.writer.several(Stitch::CH, chains))]),
        }
    }

    /// The slip stitches that lead to where the round begins, as one sentence.
    fn slips(&mut self, sheet: &Sheet) -> Option<String> {
        let (stitches, space) = &sheet.slips;
        let slip = Op::plain(Stitch::SL_ST);
        let mut clauses = Vec::new();
        if *stitches > 0 {
            clauses.push(self.run(&slip, *stitches, false, None));
        }
        if let Some(space) = space {
            clauses.push(self.run(space, 1, false, None));
        }
        (!clauses.is_empty()).then(|| sentence(&self.then(clauses)))
    }

    fn begin(&mut self, sheet: &Sheet) -> Vec<String> {
        let Begin::Chain { chains, counts } = sheet.begin else { return Vec::new() };
        let made = self.writer.several(Stitch::CH, u32::from(chains));
        let args = [("count", Arg::Count(u32::from(chains))), ("made", Arg::Text(&made))];
        let Some(first) = sheet.first.as_ref().filter(|_| counts) else {
            return vec![sentence(&self.writer.say("say-chain-counts-not", &args))];
        };
        let stitch = first.made.runs().next().map_or(Stitch::SC, |(stitch, _)| stitch);
        if first.into == Spot::Together && first.consumed > 1 {
            let chain = self.say("say-make", &[("made", &made)]);
            let rest = Op::plain(stitch).under(first.loops);
            let rest = self.run(&rest, first.consumed - 1, false, None);
            let whole = self.writer.several(stitch, first.consumed);
            let counts = self.say("say-counts-together", &[("what", &rest), ("made", &whole)]);
            return vec![sentence(&chain), sentence(&counts)];
        }
        let one = self.writer.several(stitch, 1);
        let args = [args[0], args[1], ("stitch", Arg::Text(&one))];
        let mut said = vec![sentence(&self.writer.say("say-chain-counts", &args))];
        let rest = without_first(&first.made);
        if rest.runs().next().is_some() {
            let key = if first.into == Spot::Space { "say-same-space" } else { "say-same" };
            said.push(sentence(&self.say(key, &[("made", &self.made(&rest))])));
        }
        said
    }

    /// The steps of a round, each a sentence, or two for a repeat.
    fn body(&mut self, sheet: &Sheet) -> Vec<String> {
        let even = matches!(&sheet.body[..], [Item { act: Act::Run(op, _), .. }] if op.consumed > 0);
        let chain = match sheet.foundation {
            Some(Foundation::Chain(chains)) => Some(chains),
            Some(Foundation::Ring | Foundation::ChainRing(_)) | None => None,
        };
        let mut said = Vec::new();
        for item in &sheet.body {
            match &item.act {
                Act::Repeat(body, Times::Exactly(times)) => {
                    let clauses: Vec<String> = body.iter().map(|item| self.clause(item, chain)).collect();
                    said.push(sentence(&self.then(clauses)));
                    if *times > 1 {
                        said.push(self.say("say-times", &[("number", &self.writer.number(*times))]));
                    }
                }
                Act::Run(op, Times::Exactly(times)) => said.push(sentence(&self.run(op, *times, even, chain))),
                Act::Run(..) | Act::Repeat(..) | Act::Same { .. } => said.push(sentence(&self.clause(item, chain))),
            }
        }
        said
    }

    fn then(&self, clauses: Vec<String>) -> String {
        let join = |first: String, second: String| {
            self.say("say-then", &[("first", first.trim_end_matches(',')), ("second", &second)])
        };
        clauses.into_iter().reduce(join).unwrap_or_default()
    }

    /// One item inside a repeat.
    fn clause(&mut self, item: &Item, chain: Option<u32>) -> String {
        match &item.act {
            Act::Run(op, Times::Exactly(times)) => self.run(op, *times, false, chain),
            Act::Run(op, Times::Around { .. }) => self.run(op, 1, true, chain),
            Act::Same { made, .. } => self.say("say-same", &[("made", &self.made(made))]),
            Act::Repeat(body, times) => {
                let clauses: Vec<String> = body.iter().map(|item| self.clause(item, chain)).collect();
                let what = self.then(clauses);
                let name = char::from_u32('A' as u32 + self.sequences.len() as u32).unwrap_or('Z').to_string();
                let told = self.say("say-sequence", &[("name", &name), ("what", &what)]);
                self.sequences.push(told);
                let times = match times {
                    Times::Exactly(times) => *times,
                    Times::Around { .. } => 1,
                };
                self.say("say-do-sequence", &[("name", &name), ("number", &self.writer.number(times))])
            }
        }
    }

    fn run(&mut self, op: &Op, times: u32, even: bool, chain: Option<u32>) -> String {
        let made = self.looped(self.made(&op.made), op.loops);
        let number = self.writer.number(times);
        let pick = |one: &'static str, more: &'static str, around: &'static str| match (even, times) {
            (true, _) => around,
            (false, 1) => one,
            (false, _) => more,
        };
        match op.into {
            Spot::Skip => {
                let skipped = op.consumed.saturating_mul(times);
                let key = match (skipped, &op.made) {
                    (1, Made::Same(Stitch::CH, _)) => "say-skip-chain",
                    (_, Made::Same(Stitch::CH, _)) => "say-skip-chains",
                    (1, Made::Nothing | Made::Same(..) | Made::Mixed(_)) => "say-skip",
                    (_, Made::Nothing | Made::Same(..) | Made::Mixed(_)) => "say-skip-run",
                };
                self.say(key, &[("number", &self.writer.number(skipped))])
            }
            Spot::Air => self.often(self.say("say-make", &[("made", &made)]), times),
            Spot::Together => {
                let what = self.say("say-together", &[("made", &made), ("number", &self.writer.number(op.consumed))]);
                if even { self.say("say-together-around", &[("what", &what)]) } else { self.often(what, times) }
            }
            Spot::Space => {
                let chains = self.writer.several(Stitch::CH, op.consumed);
                let key = pick("say-space", "say-space-run", "say-space-around");
                self.say(key, &[("made", &made), ("number", &number), ("chains", &chains)])
            }
            Spot::Stitch if op.consumed == 0 => self.start(op, times, chain),
            Spot::Stitch => {
                let post = matches!(&op.made, Made::Same(stitch, _) if matches!(stitch.row().build, Build::Post(_)));
                let key = if post {
                    pick("say-post", "say-post-run", "say-post-around")
                } else {
                    pick("say-next", "say-next-run", "say-around")
                };
                self.say(key, &[("made", &made), ("number", &number)])
            }
        }
    }

    fn often(&self, what: String, times: u32) -> String {
        if times == 1 {
            what
        } else {
            self.say("say-often", &[("what", &what), ("number", &self.writer.number(times))])
        }
    }

    /// Stitches of a first round.
    fn start(&mut self, op: &Op, times: u32, chain: Option<u32>) -> String {
        let (made, often) = match &op.made {
            Made::Same(stitch, 1) => (self.writer.several(*stitch, times), 1),
            made @ (Made::Nothing | Made::Same(..) | Made::Mixed(_)) => (self.made(made), times),
        };
        let made = self.looped(made, op.loops);
        let what = match chain {
            None => self.say("say-ring", &[("made", &made)]),
            Some(nth) => self.writer.say("say-nth-chain", &[("made", Arg::Text(&made)), ("count", Arg::Count(nth))]),
        };
        self.often(what, often)
    }

    fn looped(&self, made: String, loops: Loops) -> String {
        match loops {
            Loops::Both => made,
            Loops::Back => self.say("say-through-back", &[("made", &made)]),
            Loops::Front => self.say("say-through-front", &[("made", &made)]),
        }
    }

    /// What is made in one place: `two double crochets, two chains and two double crochets, all`.
    fn made(&self, made: &Made) -> String {
        let mut parts: Vec<String> = made.runs().map(|(stitch, count)| self.writer.several(stitch, count)).collect();
        let Some(last) = parts.pop() else { return String::new() };
        if parts.is_empty() {
            return last;
        }
        let both = self.say("say-and", &[("first", &parts.join(", ")), ("second", &last)]);
        self.say("say-all", &[("made", &both)])
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::words::Language;

    fn round(number: u32, begin: Begin, close: Close, ops: Vec<Op>) -> Round {
        let sums = ops.iter().fold((0, 0), |(used, made), op| (used + op.consumed, made + op.count()));
        let (part, stitch, colour, target, place) = (0, Stitch::SC, None, None, None);
        Round {
            number,
            part,
            stitch,
            before: sums.0,
            after: sums.1,
            slipped: 0,
            ops,
            colour,
            begin,
            close,
            target,
            place,
        }
    }

    fn told(round: &Round, language: Language) -> String {
        steps(round, Below::Foundation(Foundation::Ring), &Words::of(language), Terms::Us).join(" ")
    }

    fn shaped() -> Round {
        let repeat = [vec![Op::plain(Stitch::SC); 4], vec![Op::increase(Stitch::SC, 2)]].concat();
        round(5, Begin::Spiral, Close::Spiral, vec![repeat; 6].concat())
    }

    #[test]
    fn a_shaped_round_in_every_language() {
        let expected = [
            "Round 5. Work one single crochet in each of the next four stitches, then work two single crochets in the next stitch. Do this six times in all. You have 36 stitches.",
            "Runde 5. Häkle eine feste Masche in jede der nächsten vier Maschen, dann häkle zwei feste Maschen in die nächste Masche. Mach das insgesamt sechs Mal. Du hast 36 Maschen.",
            "Tour 5. Faites une maille serrée dans chacune des quatre mailles suivantes, puis faites deux mailles serrées dans la maille suivante. Faites cela six fois en tout. Vous avez 36 mailles.",
            "Vuelta 5. Teje un punto bajo en cada uno de los cuatro puntos siguientes, luego teje dos puntos bajos en el punto siguiente. Haz esto seis veces en total. Tienes 36 puntos.",
            "Toer 5. Haak één vaste in elk van de volgende vier steken, daarna haak twee vasten in de volgende steek. Doe dit in totaal zes keer. Je hebt 36 steken.",
        ];
        for (language, expected) in Language::ALL.into_iter().zip(expected) {
            assert_eq!(told(&shaped(), language), expected);
        }
    }

    #[test]
    fn a_joined_round_with_a_group() {
        let group = Made::Mixed([(Stitch::DC, 2), (Stitch::CH, 2), (Stitch::DC, 2)].into());
        let group = Op { into: Spot::Stitch, consumed: 1, made: group, loops: Loops::Both };
        let ops = [vec![Op::increase(Stitch::DC, 2)], vec![group, Op::skip(2)]].concat();
        let begin = Begin::Chain { chains: 3, counts: true };
        assert_eq!(
            told(&round(2, begin, Close::Join, ops), Language::EN),
            "Round 2. Make three chains; they count as one double crochet. Work one double crochet in the same stitch. \
             Work two double crochets, two chains and two double crochets, all in the next stitch. Pass over the next \
             two stitches. Close the round with a slip stitch into the top of the chain at its start. You have 8 stitches."
        );
    }

    #[test]
    fn an_inner_repeat_gets_a_name() {
        let inner = vec![vec![Op::plain(Stitch::SC), Op::increase(Stitch::SC, 2)]; 3].concat();
        let outer = vec![[inner, vec![Op::plain(Stitch::HDC); 2]].concat(); 2].concat();
        assert_eq!(
            told(&round(9, Begin::Spiral, Close::Spiral, outer), Language::EN),
            "Round 9. Sequence A is this: work one single crochet in the next stitch, then work two single crochets in \
             the next stitch. Work sequence A three times, then work one half double crochet in each of the next two \
             stitches. Do this two times in all. You have 22 stitches."
        );
    }

    #[test]
    fn nothing_is_abbreviated_or_bracketed_in_any_language() {
        for language in Language::ALL {
            for stitch in Stitch::all() {
                let ops = vec![Op::plain(stitch), Op::chains(2), Op::decrease(Stitch::DC, 2).under(Loops::Back)];
                let text = told(&round(3, Begin::Chain { chains: 1, counts: false }, Close::Join, ops), language);
                assert!(!text.contains(['(', '[', '{', '*', '_']), "{text}");
                assert!(!text.contains("-say") && !text.contains("say-"), "{text}");
                assert!(!text.contains(",,") && !text.contains(",."), "{text}");
            }
        }
    }
}
