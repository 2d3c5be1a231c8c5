//! Rounds in plain words: one sentence a step, no abbreviations, no brackets, as a screen reader speaks them well.
//!
//! `Round 5. Work one single crochet in each of the next four stitches, then work two single crochets in the next
//! stitch. Do this six times in all. You have 36 stitches.` A repeat inside a repeat gets a name first: a listener
//! can't see where brackets close.

use super::across::Numbers;
use super::lines::stretches;
use super::phrase::{Instruction, Join, Phrase, Reach, Stands};
use super::write::{Writer, alone, chain_key, of_reach};
use crate::craft::{Below, Build, Counted, Foundation, Loops, Made, Op, Piece, Round, Spot, Stitch, Terms};
use crate::words::{Arg, Words};

/// One round in sentences, its number first and its count last, worked into what is `below` it.
pub fn steps(round: &Round, below: Below<'_>, words: &Words, terms: Terms) -> Vec<String> {
    let teller = Teller { writer: Writer { words, terms }, sequences: Vec::new() };
    teller.round(&Instruction::of(round, below), (round.number, round.number))
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
    /// Index into the design's colours.
    pub colour: Option<usize>,
    /// The sentences, in order.
    pub sentences: Vec<String>,
}

/// All rounds of a piece in sentences, those that are the same told once.
pub fn rounds(piece: Piece<'_>, words: &Words, terms: Terms) -> Vec<ToldRound> {
    let writer = Writer { words, terms };
    let tell = |stretch: super::lines::Stretch| {
        let teller = Teller { writer, sequences: Vec::new() };
        let (first, last) = (stretch.first, stretch.last);
        let sentences = teller.round(&stretch.instruction, (first, last));
        ToldRound { first, last, part: stretch.part, colour: stretch.colour, sentences }
    };
    stretches(piece).into_iter().map(tell).collect()
}

/// The stitches after the last round that bring a spiral down, as one sentence; nothing for none.
pub fn step_down(stitches: &[Stitch], words: &Words, terms: Terms) -> Option<String> {
    let teller = Teller { writer: Writer { words, terms }, sequences: Vec::new() };
    let clauses: Vec<String> = stitches.iter().map(|stitch| teller.run(&Op::plain(*stitch), 1, Reach::Next)).collect();
    let what = teller.then(clauses);
    (!stitches.is_empty()).then(|| teller.writer.say("say-step-down", &[("what", Arg::Text(&what))]))
}

/// How a last round is closed flat, with so many stitches on each side.
pub fn close_flat(halves: u32, words: &Words, terms: Terms) -> String {
    let made = Writer { words, terms }.several(Stitch::SC, halves);
    words.with("say-close-flat", &[("made", Arg::Text(&made))])
}

struct Teller<'a> {
    writer: Writer<'a>,
    /// Sentences that name the inner repeats of the round, to be said first.
    sequences: Vec<String>,
}

/// A clause as a sentence.
fn sentence(clause: &str) -> String {
    let mut letters = clause.chars();
    let first = letters.next().map(|letter| letter.to_uppercase().to_string()).unwrap_or_default();
    format!("{first}{}.", letters.as_str())
}

/// What is made, in words. Where an aside closes it, a comma sets that off from words that follow, though not from the
/// end of the clause: a message takes the form that fits its place.
struct Told {
    /// Before further words: `one single crochet, through the back loop only,`.
    within: String,
    /// At the end of a clause: `one single crochet, through the back loop only`.
    last: String,
}

impl Told {
    fn args(&self) -> [(&'static str, &str); 2] {
        [("made", &self.within), ("made-last", &self.last)]
    }
}

impl Teller<'_> {
    fn say(&self, key: &str, args: &[(&'static str, &str)]) -> String {
        let args: Vec<(&'static str, Arg<'_>)> = args.iter().map(|(name, text)| (*name, Arg::Text(text))).collect();
        self.writer.say(key, &args)
    }

    /// A message about what is made.
    fn say_made(&self, key: &str, made: &Told, args: &[(&'static str, &str)]) -> String {
        self.say(key, &[&made.args(), args].concat())
    }

    fn round(mut self, instruction: &Instruction, (first, last): (u32, u32)) -> Vec<String> {
        let number = |number: u32| number.to_string();
        let heading = if first == last {
            self.say("say-round", &[("number", &number(first))])
        } else {
            self.say("say-rounds", &[("first", &number(first)), ("last", &number(last))])
        };
        let mut said = vec![heading];
        // Slip stitches are one sentence, whatever they go into.
        let slips = |phrase: &Phrase| matches!(phrase, Phrase::Slips(..));
        for together in instruction.opening.chunk_by(|one, next| slips(one) && slips(next)) {
            let clauses = together.iter().map(|phrase| self.clause(phrase)).collect();
            said.push(sentence(&self.then(clauses)));
        }
        let steps: Vec<String> = instruction.body.iter().flat_map(|phrase| self.step(phrase)).collect();
        said.append(&mut self.sequences);
        said.extend(steps);
        said.extend(instruction.closing.iter().map(|phrase| self.clause(phrase)));
        said.push(self.count(&instruction.count));
        let remarks = instruction.said.iter().flat_map(|said| said.asides.iter().chain(&said.after));
        said.extend(remarks.map(|text| self.say("say-remark", &[("text", text)])));
        said
    }

    /// What there is when the round is done: stitches, or stitches by kind and spaces.
    fn count(&self, count: &[(Counted, Numbers)]) -> String {
        if let [(Counted::Stitches, number)] = count {
            return self.writer.say("say-count", &[("count", Arg::Count(number.first()))]);
        }
        let one = |(what, count): &(Counted, Numbers)| {
            let count = count.first();
            let number = self.writer.number(count);
            let args = [("count", Arg::Count(count)), ("number", Arg::Text(&number))];
            match what {
                Counted::Stitches => self.writer.say("say-count-stitches", &args),
                Counted::Of(stitch) => self.writer.several(*stitch, count),
                Counted::Spaces(chains) => {
                    let chains = self.writer.several(Stitch::CH, *chains);
                    self.writer.say("say-count-spaces", &[args[0], args[1], ("chains", Arg::Text(&chains))])
                }
            }
        };
        let mut parts: Vec<String> = count.iter().map(one).collect();
        let last = parts.pop().unwrap_or_default();
        let what = match parts.is_empty() {
            true => last,
            false => self.say("say-and", &[("first", &parts.join(", ")), ("second", &last)]),
        };
        self.say("say-counts", &[("what", &what)])
    }

    /// A phrase as a sentence, or two for a repeat.
    fn step(&mut self, phrase: &Phrase) -> Vec<String> {
        let Phrase::Repeat { body, times } = phrase else { return vec![sentence(&self.clause(phrase))] };
        let clauses = body.iter().map(|phrase| self.clause(phrase)).collect();
        let mut said = vec![sentence(&self.then(clauses))];
        if times.first() > 1 {
            said.push(self.say("say-times", &[("number", &self.writer.number(times.first()))]));
        }
        said
    }

    /// A phrase as a clause; a repeat gets a name, to be told first.
    fn clause(&mut self, phrase: &Phrase) -> String {
        match phrase {
            Phrase::Foundation(foundation) => self.foundation(*foundation),
            Phrase::ChainRound(chains) => {
                self.say("say-start-chain-round", &[("made", &self.writer.several(Stitch::CH, chains.first()))])
            }
            Phrase::Loops(Loops::Both) => String::new(),
            Phrase::Loops(Loops::Back) => self.say("say-all-back", &[]),
            Phrase::Loops(Loops::Front) => self.say("say-all-front", &[]),
            Phrase::Slips(op, times) => self.run(op, *times, Reach::Next),
            Phrase::TurningChain { chains, stands } => self.turning_chain(u32::from(*chains), *stands),
            Phrase::RestTogether(op) => self.rest_together(op),
            Phrase::Rest { made, space } => {
                self.say_made(if *space { "say-same-space" } else { "say-same" }, &self.made(made, Loops::Both), &[])
            }
            Phrase::Run { op, times, reach } => self.run(op, times.first(), *reach),
            Phrase::Repeat { body, times } => {
                let clauses = body.iter().map(|phrase| self.clause(phrase)).collect();
                let what = self.then(clauses);
                let name = char::from_u32('A' as u32 + self.sequences.len() as u32).unwrap_or('Z').to_string();
                let told = self.say("say-sequence", &[("name", &name), ("what", &what)]);
                self.sequences.push(told);
                self.say("say-do-sequence", &[("name", &name), ("number", &self.writer.number(times.first()))])
            }
            Phrase::Join(Join::Top(_)) => self.say("say-join-chain", &[]),
            Phrase::Join(Join::First(_) | Join::Slip) => self.say("say-join", &[]),
        }
    }

    fn foundation(&self, foundation: Foundation) -> String {
        match foundation {
            Foundation::Ring => self.say("say-start-ring", &[]),
            Foundation::ChainRing(chains) | Foundation::ChainRound(chains) => {
                self.say("say-start-chain-ring", &[("made", &self.writer.several(Stitch::CH, chains))])
            }
            Foundation::Chain(chains) => self.chain(chains),
        }
    }

    fn chain(&self, chains: u32) -> String {
        self.say_made("say-make", &self.made(&Made::Same(Stitch::CH, chains), Loops::Both), &[])
    }

    fn turning_chain(&self, chains: u32, stands: Stands) -> String {
        let made = self.writer.several(Stitch::CH, chains);
        let args = [("count", Arg::Count(chains)), ("made", Arg::Text(&made))];
        match stands {
            Stands::Nothing { .. } => self.writer.say("say-chain-counts-not", &args),
            Stands::Together => self.chain(chains),
            Stands::First(stitch, _) => {
                let one = self.writer.several(stitch, 1);
                self.writer.say("say-chain-counts", &[args[0], args[1], ("stitch", Arg::Text(&one))])
            }
        }
    }

    fn rest_together(&self, op: &Op) -> String {
        let stitch = op.made.runs().next().map_or(Stitch::SC, |(stitch, _)| stitch);
        let rest = self.run(&Op::plain(stitch).under(op.loops), op.consumed.saturating_sub(1), Reach::Next);
        let whole = self.writer.several(stitch, op.consumed);
        self.say("say-counts-together", &[("what", &rest), ("made", &whole)])
    }

    fn then(&self, clauses: Vec<String>) -> String {
        let join = |first: String, second: String| self.say("say-then", &[("first", &first), ("second", &second)]);
        clauses.into_iter().reduce(join).unwrap_or_default()
    }

    fn run(&self, op: &Op, times: u32, reach: Reach) -> String {
        let made = self.made(&op.made, op.loops);
        let number = self.writer.number(times);
        let pick = |keys: [&'static str; 6]| of_reach(keys, reach, times == 1);
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
            Spot::Air => self.often(self.say_made("say-make", &made, &[]), times),
            Spot::Together => {
                let what = self.say_made("say-together", &made, &[("number", &self.writer.number(op.consumed))]);
                let even = reach == Reach::Around;
                if even { self.say("say-together-around", &[("what", &what)]) } else { self.often(what, times) }
            }
            Spot::Crossed => {
                let one = match &op.made {
                    Made::Same(stitch, _) => self.made(&Made::Same(*stitch, 1), op.loops),
                    Made::Nothing | Made::Mixed(_) => made,
                };
                let what = self.say_made("say-crossed", &one, &[]);
                let even = reach == Reach::Around;
                if even { self.say("say-together-around", &[("what", &what)]) } else { self.often(what, times) }
            }
            Spot::Space => {
                let chains = self.writer.several(Stitch::CH, op.consumed);
                let key = pick(alone(["say-space", "say-space-run", "say-space-around", "say-space-remaining"]));
                self.say_made(key, &made, &[("number", &number), ("chains", &chains)])
            }
            Spot::Stitch if op.consumed == 0 => self.start(op, times, reach),
            Spot::Stitch => {
                let post = matches!(&op.made, Made::Same(stitch, _) if matches!(stitch.row().build, Build::Post(_)));
                let key = if post {
                    pick(alone(["say-post", "say-post-run", "say-post-around", "say-post-remaining"]))
                } else {
                    pick([
                        "say-next",
                        "say-next-run",
                        "say-around",
                        "say-remaining",
                        "say-around-all",
                        "say-remaining-all",
                    ])
                };
                self.say_made(key, &made, &[("number", &number)])
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
    fn start(&self, op: &Op, times: u32, reach: Reach) -> String {
        let keys = ["say-next-chain", "say-next-chains", "say-each-chain", "say-rest-chains"];
        if let Some(key) = chain_key(keys, reach, times == 1) {
            let made = self.made(&op.made, op.loops);
            return self.say_made(key, &made, &[("number", &self.writer.number(times))]);
        }
        let (made, often) = match &op.made {
            Made::Same(stitch, 1) => (self.made(&Made::Same(*stitch, times), op.loops), 1),
            made @ (Made::Nothing | Made::Same(..) | Made::Mixed(_)) => (self.made(made, op.loops), times),
        };
        let what = if let Reach::Chain(nth) = reach {
            let [within, last] = made.args().map(|(name, text)| (name, Arg::Text(text)));
            self.writer.say("say-nth-chain", &[within, last, ("count", Arg::Count(nth))])
        } else {
            self.say_made("say-ring", &made, &[])
        };
        self.often(what, often)
    }

    /// What is made in one place: `two double crochets, two chains and two double crochets, all`, and the loops it is
    /// worked under.
    fn made(&self, made: &Made, loops: Loops) -> Told {
        let mut parts: Vec<String> = made.runs().map(|(stitch, count)| self.writer.several(stitch, count)).collect();
        let last = parts.pop().unwrap_or_default();
        let whole = if let Some(own) = self.writer.words.own(made) {
            let name = own.name.clone().unwrap_or_else(|| self.writer.own_name(own));
            self.say("say-own", &[("name", &name)])
        } else if parts.is_empty() {
            last
        } else {
            let both = self.say("say-and", &[("first", &parts.join(", ")), ("second", &last)]);
            self.say("say-all", &[("made", &both)])
        };
        let key = match loops {
            Loops::Both => return Told { within: whole.clone(), last: whole },
            Loops::Back => "say-through-back",
            Loops::Front => "say-through-front",
        };
        let made = [("made", Arg::Text(&whole))];
        Told { within: self.writer.words.part(key, "within", &made), last: self.writer.words.with(key, &made) }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::common;
    use crate::craft::{Begin, Close};
    use crate::words::Language;

    fn round(number: u32, begin: Begin, close: Close, ops: Vec<Op>) -> Round {
        Round { begin, close, ..common::round(number, ops) }
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
            "Toer 5. Haak één vaste in elk van de volgende vier steken, en haak twee vasten in de volgende steek. Doe dit in totaal zes keer. Je hebt 36 steken.",
        ];
        for (language, expected) in Language::ALL.into_iter().zip(expected) {
            assert_eq!(told(&shaped(), language), expected);
        }
    }

    #[test]
    fn what_is_left_after_a_chain_that_counts_in_every_language() {
        let begin = Begin::Chain { chains: 3, counts: true };
        let expected = [
            "Work one double crochet in each remaining stitch.",
            "Häkle ein Stäbchen in jede restliche Masche.",
            "Faites une bride dans chaque maille restante.",
            "Teje un punto alto en cada punto restante.",
            "Haak één stokje in elke resterende steek.",
        ];
        for (language, expected) in Language::ALL.into_iter().zip(expected) {
            let text = told(&round(2, begin, Close::Join, vec![Op::plain(Stitch::DC); 12]), language);
            assert!(text.contains(expected), "{text}");
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
             two stitches. Close the round with a slip stitch into the top of the chain at its start. You have six double crochets and one space \
             of two chains."
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
    fn an_aside_is_closed_before_further_words_alone() {
        let two = Op::decrease(Stitch::SC, 2).under(Loops::Back);
        let ops = vec![two.clone(), two, Op::plain(Stitch::SC).under(Loops::Front)];
        assert_eq!(
            told(&round(4, Begin::Spiral, Close::Spiral, ops.clone()), Language::EN),
            "Round 4. Work the next two stitches together as one single crochet, through the back loop only, and do so \
             two times in all. Work one single crochet, through the front loop only, in the next stitch. You have 3 \
             stitches."
        );
        for language in Language::ALL {
            let text = told(&round(4, Begin::Spiral, Close::Spiral, ops.clone()), language);
            assert!(!text.contains(",,") && !text.contains(",.") && !text.contains(", ,"), "{text}");
        }
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
