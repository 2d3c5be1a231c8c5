//! Stitches of a maker's own, as a text defines them before its rounds or a design beside its parts:
//! `V-st: (dc, ch 1, dc) in one stitch`.

use super::complain::{complain, is_word};
use super::grammar::{self, Clause, Context, Notes};
use super::lex::{Kind, Source, Token, tokens};
use super::read::chunks;
use super::tongue::{self, Guess};
use super::tree::{Act, Item};
use super::vocabulary::Vocabulary;
use crate::craft::{Made, Op, OwnStitch, Stitch, Terms};
use crate::report::{Diagnostic, Place};
use std::ops::Range;
use winnow::stream::{Stateful, TokenSlice};

/// A name that rounds may say, and what it means.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Named {
    /// The name word by word, dashes left out.
    words: Vec<String>,
    /// What is made in one place.
    pub(crate) made: Made,
}

/// Most words of a name that rounds say.
const WORDS: usize = 3;

impl Named {
    /// The names of own stitches: what rounds call them, and their whole names where those are short.
    pub(super) fn all(own: &[OwnStitch]) -> Vec<Self> {
        let named = |own: &OwnStitch| {
            let names = [Some(&own.short), own.name.as_ref()].into_iter().flatten();
            let made = own.made.clone();
            names
                .filter_map(|name| words(name))
                .map(move |words| Self { words, made: made.clone() })
                .collect::<Vec<_>>()
        };
        own.iter().flat_map(named).collect()
    }

    /// How many tokens its name takes, where the tokens begin with it.
    pub(crate) fn taken(&self, tokens: &[Token]) -> Option<usize> {
        let mut at = 0;
        for (index, word) in self.words.iter().enumerate() {
            if index > 0 && tokens.get(at).is_some_and(|token| token.kind == Kind::Dash(false)) {
                at += 1;
            }
            let own = tokens.get(at)?.word()?;
            // `V-sts`, `V-stitch`, `shells`.
            let last = index + 1 == self.words.len();
            let many = last && own.strip_suffix('s') == Some(word);
            let stitch = |word: &str| ["st", "sts", "stitch", "stitches"].contains(&word);
            if own != word && !many && !(last && index > 0 && stitch(own) && stitch(word)) {
                return None;
            }
            at += 1;
        }
        Some(at)
    }
}

/// The words of a name; nothing where it is none that rounds could say.
fn words(name: &str) -> Option<Vec<String>> {
    let tokens = tokens(&[Source { text: name, place: None }]);
    let plain = |token: &Token| token.word().is_some() || matches!(token.kind, Kind::Dash(false));
    let words: Vec<String> = tokens.iter().filter_map(Token::word).map(str::to_owned).collect();
    (tokens.iter().all(plain) && (1..=WORDS).contains(&words.len())).then_some(words)
}

/// Why a name can't be that of an own stitch.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum NameFault {
    /// It has no words, or more than three, or something else than letters and hyphens.
    NoWords,
    /// This stitch is called so.
    Taken(Stitch),
    /// It means something else in rounds.
    Meant,
}

/// What is wrong with the name of an own stitch; nothing where rounds can say it.
pub fn name_fault(name: &str, terms: Terms) -> Option<NameFault> {
    let Some(words) = words(name) else { return Some(NameFault::NoWords) };
    let vocabulary = Vocabulary::of(terms);
    let own = tokens(&[Source { text: name, place: None }]);
    if let Some((stitch, taken)) = vocabulary.stitch(&own)
        && taken == own.len()
    {
        return Some(NameFault::Taken(stitch));
    }
    // A shell is a word of the notation that says nothing without a number.
    if let [word] = &words[..]
        && is_word(word)
        && !["shell", "sh"].contains(&word.as_str())
    {
        return Some(NameFault::Meant);
    }
    // Whatever else rounds mean by it wins, so it has to come out as what it is defined to be.
    let made = Made::Mixed([(Stitch::TR, 3), (Stitch::CH, 7), (Stitch::DTR, 3)].into());
    let named = [Named { words, made: made.clone() }];
    let said = |text: &str| {
        let tokens = tokens(&[Source { text, place: None }]);
        let notes = Notes::default();
        let context = notes.context(vocabulary, Stitch::SC, &named);
        let mut input = Stateful { input: TokenSlice::new(&tokens), state: context };
        let read = grammar::paused(&mut input, 0);
        let right = |op: &Op| op.made == made;
        match read {
            Ok(Clause::Do(items)) if input.is_empty() => {
                matches!(&items[..], [Item { act: Act::Run(op, _), .. }] if right(op))
            }
            Ok(_) | Err(()) => false,
        }
    };
    let fits = said(&format!("{name} in next st")) && said(&format!("{name} in each st around"));
    (!fits).then_some(NameFault::Meant)
}

/// True where a text says this name.
pub fn mentions(text: &str, own: &OwnStitch) -> bool {
    let named = Named::all(std::slice::from_ref(own));
    let tokens = tokens(&[Source { text, place: None }]);
    (0..tokens.len()).any(|at| named.iter().any(|named| named.taken(tokens.get(at..).unwrap_or_default()).is_some()))
}

/// What a definition makes in one place, other own stitches among it.
pub fn defined_as(work: &Source<'_>, terms: Terms, own: &[OwnStitch]) -> Result<Made, Diagnostic> {
    let mut vocabulary = Vocabulary::of(terms);
    let own = [Named::all(own), Named::all(&[OwnStitch::v_stitch()])].concat();
    let mut body = tokens(std::slice::from_ref(work));
    let english = made(&body, vocabulary, &own);
    if english.is_err()
        && let Guess::Other(tongue) = tongue::guess(&body)
    {
        body = tongue.english(&body);
        vocabulary = Vocabulary::of(Terms::Us);
    }
    made(&body, vocabulary, &own).map_err(|stop| {
        let place = body.first().map(|token| token.place).or(work.place).unwrap_or_default();
        let in_rounds =
            |token: &Token| ["in", "into", "sk", "skip", "miss"].iter().any(|word| token.word() == Some(word));
        let several = body.get(stop).is_some_and(in_rounds) || stop >= body.len() || body.iter().any(tog);
        if several {
            let message = "this is not made in one place";
            let help = "write what goes into one stitch or space, `(2 dc, ch 1, 2 dc)`; what is skipped or worked \
                        together stands in the rounds themselves";
            return Diagnostic::error("own-stitch", message).at(place).help(help);
        }
        complain(&body, stop, vocabulary, false, place)
    })
}

fn tog(token: &Token) -> bool {
    token.word().is_some_and(|word| word.ends_with("tog") || word == "together")
}

/// What the tokens make in one place, or at which of them reading stopped.
fn made(body: &[Token], vocabulary: &Vocabulary, own: &[Named]) -> Result<Made, usize> {
    let notes = Notes::default();
    let body = without_place(body);
    let mut input = Stateful { input: TokenSlice::new(body), state: notes.context(vocabulary, Stitch::SC, own) };
    match grammar::made_in_one(&mut input) {
        Ok(made) if input.is_empty() => Ok(made),
        Ok(_) | Err(()) => Err(body.len().saturating_sub(notes.furthest.get().min(body.len()))),
    }
}

/// A definition without `in one stitch` and the full stop at its end.
fn without_place(body: &[Token]) -> &[Token] {
    let body = match body.iter().rposition(|token| matches!(token.word(), Some("in" | "into"))) {
        Some(at) => body.get(..at).unwrap_or_default(),
        None => body,
    };
    match body.last() {
        Some(last) if last.kind == Kind::Sign('.') => body.get(..body.len() - 1).unwrap_or_default(),
        Some(_) | None => body,
    }
}

/// What a line defines, and which of its tokens are the names; nothing where it defines nothing.
fn definition(line: &[Token], context: Context<'_>) -> Option<(Vec<Range<usize>>, Made)> {
    const HEADS: &[&str] = &["abbreviations", "special", "stitches", "stitch", "key", "terms", "used", "notes"];
    let colon = |token: &Token| matches!(token.kind, Kind::Sign(':' | '=') | Kind::Dash(true));
    let head = line.iter().take_while(|token| token.word().is_some_and(|word| HEADS.contains(&word))).count();
    let from = match line.get(head) {
        Some(token) if head > 0 && colon(token) => head + 1,
        _ => 0,
    };
    let line = line.get(from..).unwrap_or_default();
    let end = line.iter().take(9).position(colon)?;
    let (name, body) = (line.get(..end).unwrap_or_default(), line.get(end + 1..).unwrap_or_default());
    // `V-stitch (V-st)` has two names.
    let bracket = |token: &Token| matches!(token.kind, Kind::Open(_) | Kind::Close(_));
    let mut names = Vec::new();
    let mut start = 0;
    for part in name.split(bracket) {
        let words = part.iter().filter(|token| token.word().is_some()).count();
        if (1..=WORDS).contains(&words) {
            names.push(from + start..from + start + part.len());
        }
        start += part.len() + 1;
    }
    // `Magic ring: 6 sc` is a round.
    let ring = |token: &Token| matches!(token.word(), Some("ring" | "circle" | "mr" | "round" | "rnd"));
    if name.iter().any(ring) {
        return None;
    }
    let mut input = Stateful { input: TokenSlice::new(without_place(body)), state: context };
    let made = grammar::made_in_one(&mut input).ok().filter(|_| input.is_empty())?;
    (!names.is_empty()).then_some((names, made))
}

/// The stitch that a line defines, under each of its names; nothing where it defines none.
pub(super) fn defined(line: &[Token], context: Context<'_>) -> Vec<Named> {
    let Some((names, made)) = definition(line, context) else { return Vec::new() };
    let words = |name: &Range<usize>| {
        let name = line.get(name.clone()).unwrap_or_default();
        name.iter().filter_map(Token::word).map(str::to_owned).collect()
    };
    names.iter().map(|name| Named { words: words(name), made: made.clone() }).collect()
}

/// The stitches that written rounds define above the first of them, those that design files and rounds know by that name
/// already aside.
pub fn defined_in(sources: &[Source<'_>], terms: Terms, own: &[OwnStitch]) -> Vec<OwnStitch> {
    let vocabulary = Vocabulary::of(terms);
    let tokens = tokens(sources);
    let mut found: Vec<OwnStitch> = Vec::new();
    let mut known = Named::all(own);
    for chunk in chunks(&tokens, vocabulary).into_iter().take_while(|chunk| chunk.header.is_none()) {
        let notes = Notes::default();
        let context = notes.context(vocabulary, Stitch::SC, &known);
        let Some((names, made)) = definition(chunk.tokens, context) else { continue };
        let several = made.count() > 1 && made != Made::Same(Stitch::CH, made.count());
        let shown = |name: &Range<usize>| {
            let name = chunk.tokens.get(name.clone())?;
            let (first, last) = (name.first()?, name.last()?);
            let text = sources.get(first.source)?.text.get(first.start..last.start + last.place.length)?;
            name_fault(text, terms).is_none().then(|| (text.to_owned(), first.place))
        };
        let mut names: Vec<(String, Place)> = names.iter().filter_map(shown).collect();
        names.sort_by_key(|(name, _)| name.len());
        let mut names = names.into_iter();
        let Some((short, place)) = names.next().filter(|_| several) else { continue };
        let own = OwnStitch {
            short,
            name: names.next().map(|(name, _)| name),
            how: None,
            made,
            trade: false,
            place: Some(place),
        };
        known.extend(Named::all(std::slice::from_ref(&own)));
        found.push(own);
    }
    found
}

#[cfg(test)]
mod tests {
    use super::*;

    fn made_of(text: &str, terms: Terms) -> Result<Made, Diagnostic> {
        defined_as(&Source { text, place: None }, terms, &[OwnStitch::v_stitch()])
    }

    fn mixed(runs: &[(Stitch, u32)]) -> Made {
        Made::Mixed(runs.into())
    }

    #[test]
    fn a_definition_says_what_is_made_in_one_place() {
        let shell = mixed(&[(Stitch::DC, 2), (Stitch::CH, 1), (Stitch::DC, 2)]);
        for text in [
            "(2 dc, ch 1, 2 dc)",
            "2 dc, ch 1, 2 dc",
            "work (2 dc, ch 1, 2 dc) all in one stitch.",
            "[2 dc, ch 1, 2 dc] in next st",
        ] {
            assert_eq!(made_of(text, Terms::Us).as_ref().ok(), Some(&shell), "{text}");
        }
        assert_eq!(made_of("2 tr, ch 1, 2 tr", Terms::Uk).ok(), Some(shell.clone()));
        assert_eq!(made_of("2 Stb, 1 Lm, 2 Stb", Terms::Us).ok(), Some(shell));
        assert_eq!(made_of("5 dc", Terms::Us).ok(), Some(Made::Same(Stitch::DC, 5)));
        // One built of another: a V-stitch, a chain and a V-stitch.
        let double = mixed(&[(Stitch::DC, 1), (Stitch::CH, 1), (Stitch::DC, 2), (Stitch::CH, 1), (Stitch::DC, 1)]);
        assert_eq!(made_of("(V-st, V-st)", Terms::Us).ok(), Some(double));
    }

    #[test]
    fn what_is_no_definition_is_told() {
        let code = |text| made_of(text, Terms::Us).err().map(|why| why.code);
        assert_eq!(code("(2 dc, chh 1)"), Some("unknown-word"));
        assert_eq!(code("sc2tog"), Some("own-stitch"));
        assert_eq!(code("dc in next st, sk 2 sts, dc in next st"), Some("own-stitch"));
        assert!(code("").is_some() && code("(2 dc, ch 1").is_some());
    }

    #[test]
    fn names_are_those_that_rounds_can_say() {
        for name in ["shell", "knot", "V-st", "garden knot", "Muschel", "fan", "tulip st"] {
            assert_eq!(name_fault(name, Terms::Us), None, "{name}");
        }
        assert_eq!(name_fault("dc", Terms::Us), Some(NameFault::Taken(Stitch::DC)));
        assert_eq!(name_fault("dc", Terms::Uk), Some(NameFault::Taken(Stitch::SC)));
        assert_eq!(name_fault("Popcorn", Terms::Us), Some(NameFault::Taken(Stitch::POPCORN)));
        for name in ["join", "turn", "inc", "rep", "skip", "ring", "stitch", "work"] {
            assert_eq!(name_fault(name, Terms::Us), Some(NameFault::Meant), "{name}");
        }
        for name in ["", "3", "shell 5", "a b c d", "knot!"] {
            assert_eq!(name_fault(name, Terms::Us), Some(NameFault::NoWords), "{name}");
        }
    }

    #[test]
    fn a_text_defines_its_stitches_above_its_rounds() {
        let text = "Shell (Sh): (2 dc, ch 1, 2 dc) in one st\nInc: 2 sc in same st\nsc: single crochet\nRnd 1: 6 sc in ring (6)";
        let found = defined_in(&[Source { text, place: None }], Terms::Us, &[]);
        let names: Vec<(&str, Option<&str>)> =
            found.iter().map(|own| (own.short.as_str(), own.name.as_deref())).collect();
        assert_eq!(names, [("Sh", Some("Shell"))]);
        assert!(mentions("2 shells in next st", &found[0]) && mentions("Sh in ring", &found[0]));
        assert!(!mentions("5 dc in next st", &found[0]));
    }
}
