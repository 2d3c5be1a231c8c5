//! Single words, signs and names of stitches.

use super::{Input, Res};
use crate::craft::{Build, Loops, Made, Stitch};
use crate::notation::lex::{Kind, Token};
use crate::notation::written::Doubt;
use winnow::combinator::{alt, opt, peek, repeat};
use winnow::prelude::*;

/// Takes one token that gives a value.
pub(super) fn take<'i, T>(check: impl Fn(&'i Token) -> Option<T>) -> impl Parser<Input<'i>, T, ()> {
    move |input: &mut Input<'i>| {
        let left = input.eof_offset();
        let start = input.checkpoint();
        match input.next_token().and_then(&check) {
            Some(value) => Ok(value),
            None => {
                input.reset(&start);
                input.state.furthest.set(input.state.furthest.get().min(left));
                Err(())
            }
        }
    }
}

pub(super) fn word<'i>(words: &'static [&'static str]) -> impl Parser<Input<'i>, (), ()> {
    take(move |token: &Token| token.word().filter(|word| words.contains(word)).map(drop))
}

pub(super) fn sign<'i>(sign: char) -> impl Parser<Input<'i>, (), ()> {
    take(move |token: &Token| (token.kind == Kind::Sign(sign)).then_some(()))
}

/// A whole number in digits or in words up to ninety-nine.
pub(super) fn number(input: &mut Input<'_>) -> Res<u32> {
    const WORDS: [&str; 20] = [
        "zero",
        "one",
        "two",
        "three",
        "four",
        "five",
        "six",
        "seven",
        "eight",
        "nine",
        "ten",
        "eleven",
        "twelve",
        "thirteen",
        "fourteen",
        "fifteen",
        "sixteen",
        "seventeen",
        "eighteen",
        "nineteen",
    ];
    const TENS: [&str; 8] = ["twenty", "thirty", "forty", "fifty", "sixty", "seventy", "eighty", "ninety"];
    let small = |word: &str| WORDS.iter().position(|known| *known == word).map(|index| index as u32);
    let ten = |token: &Token| TENS.iter().position(|known| token.word() == Some(*known)).map(|at| at as u32 * 10 + 20);
    let one = take(move |token: &Token| token.word().and_then(small).filter(|number| (1..10).contains(number)));
    let tens = (take(ten), opt((opt(dash), one))).map(|(tens, one)| tens + one.map_or(0, |(_, one)| one));
    let value = move |token: &Token| token.number().or_else(|| token.word().and_then(small));
    alt((tens, take(move |token: &Token| value(token).filter(|number| *number > 0)))).parse_next(input)
}

/// More stitches, and fewer.
pub(super) const UP: &[&str] = &["inc", "incs", "increase", "increases", "increasing", "incr"];
pub(super) const DOWN: &[&str] = &["dec", "decs", "decrease", "decreases", "decreasing", "decr", "invdec"];

/// Verbs before work that say no more than that it is done.
pub(super) const VERBS: &[&str] = &[
    "work", "working", "make", "making", "start", "starting", "crochet", "do", "create", "place", "put", "add",
    "begin", "complete",
];

/// Words for what is done again.
pub(super) const AGAIN: &[&str] = &["rep", "reps", "repeat", "repeats", "repeated", "repeating", "again"];

/// Words for how far.
pub(super) const UNTIL: &[&str] = &["to", "until", "till", "til", "’til", "'til"];

/// Words for every one of those that stand there.
pub(super) const EACH: &[&str] = &["each", "every", "all", "both", "per"];

/// `2nd`, `second`.
pub(super) fn ordinal(input: &mut Input<'_>) -> Res<u32> {
    const WORDS: [&str; 12] = [
        "first", "second", "third", "fourth", "fifth", "sixth", "seventh", "eighth", "ninth", "tenth", "eleventh",
        "twelfth",
    ];
    take(|token: &Token| match &token.kind {
        Kind::Ordinal(number) => Some(*number).filter(|number| *number > 0),
        Kind::Word(word) => WORDS.iter().position(|known| known == word).map(|index| index as u32 + 1),
        Kind::Number(_) | Kind::Open(_) | Kind::Close(_) | Kind::Sign(_) | Kind::Dash(_) => None,
    })
    .parse_next(input)
}

pub(super) fn open(input: &mut Input<'_>) -> Res<()> {
    take(|token: &Token| matches!(token.kind, Kind::Open(_)).then_some(())).parse_next(input)
}

pub(super) fn close(input: &mut Input<'_>) -> Res<()> {
    take(|token: &Token| matches!(token.kind, Kind::Close(_)).then_some(())).parse_next(input)
}

pub(super) fn dash(input: &mut Input<'_>) -> Res<()> {
    take(|token: &Token| matches!(token.kind, Kind::Dash(_)).then_some(())).parse_next(input)
}

pub(super) fn stitch(input: &mut Input<'_>) -> Res<Stitch> {
    let rest = input.peek_slice(input.eof_offset());
    match input.state.vocabulary.stitch(rest) {
        Some((stitch, taken)) => {
            input.next_slice(taken);
            Ok(stitch)
        }
        None => take(|_| None).parse_next(input),
    }
}

/// A stitch that the text defines: what is made in one place.
pub(super) fn own_stitch(input: &mut Input<'_>) -> Res<Made> {
    let rest = input.peek_slice(input.eof_offset());
    let found = input.state.own.iter().find_map(|own| own.taken(rest).map(|taken| (own.made.clone(), taken)));
    match found {
        Some((made, taken)) => {
            input.next_slice(taken);
            Ok(made)
        }
        None => take(|_| None).parse_next(input),
    }
}

/// A number, unless it belongs to the name of a stitch, as that of `5-dc popcorn` does.
pub(super) fn how_many(input: &mut Input<'_>) -> Res<Option<u32>> {
    let rest = input.peek_slice(input.eof_offset());
    let named = input.state.vocabulary.stitch(rest).is_some() || numbered_space(rest).is_some();
    if named { Ok(None) } else { opt(number).parse_next(input) }
}

const CHAIN: &[&str] = &["ch", "chain"];
pub(super) const SPACE: &[&str] = &["sp", "sps", "space", "spaces", "loop", "loops", "lp", "lps"];

/// `2ch sp`, `2-ch sp`: a space under so many chains, and its tokens. With a blank, `2 ch sps` are two spaces.
fn numbered_space(tokens: &[Token]) -> Option<(u32, usize)> {
    let number = tokens.first()?.number().filter(|number| *number > 0)?;
    let dash = tokens.get(1).is_some_and(|token| token.kind == Kind::Dash(false));
    let at = if dash { 2 } else { 1 };
    let (first, chain) = (tokens.first()?.place, tokens.get(at)?);
    let joined = dash || first.offset + first.length == chain.place.offset;
    let is = |token: &Token, words: &[&str]| token.word().is_some_and(|word| words.contains(&word));
    let dashed = tokens.get(at + 1).is_some_and(|token| token.kind == Kind::Dash(false));
    let space = at + 1 + usize::from(dashed);
    (joined && is(chain, CHAIN) && is(tokens.get(space)?, SPACE)).then_some((number, space + 1))
}

pub(super) fn articles(input: &mut Input<'_>) -> Res<()> {
    repeat(0.., word(&["the", "a", "an"])).parse_next(input)
}

pub(super) fn stitches_word(input: &mut Input<'_>) -> Res<()> {
    word(&["st", "sts", "stitch", "stitches", "one", "ones"]).parse_next(input)
}

pub(super) fn round_word(input: &mut Input<'_>) -> Res<()> {
    word(&["rnd", "rnds", "round", "rounds", "rd", "row", "rows"]).parse_next(input)
}

/// What is worked into: a space under so many chains (0: whatever comes), or a stitch, of a kind where it names one.
#[derive(Clone, Copy, PartialEq)]
pub(super) enum Unit {
    Stitch(Option<Stitch>),
    Space(u32),
}

/// Who works, and that it is now: `you will now`, `just`.
pub(super) fn who(input: &mut Input<'_>) -> Res<()> {
    let one = word(&["you", "we", "i", "will", "now", "just", "simply", "please", "again"]);
    repeat::<_, (), (), _, _>(1.., one).parse_next(input)
}

pub(super) fn unit(input: &mut Input<'_>) -> Res<Unit> {
    if let Some((chains, taken)) = numbered_space(input.peek_slice(input.eof_offset())) {
        input.next_slice(taken);
        return Ok(Unit::Space(chains));
    }
    let corner = (opt(word(&["corner"])), word(CHAIN), opt(dash), opt(number), opt(dash), word(SPACE));
    let chains = corner.map(|(_, (), _, number, _, ())| number);
    // `in next lp st`: no space.
    let looped = stitch.verify(|stitch| stitch.row().build == Build::Loop);
    if let Some(stitch) = opt((looped, opt(stitches_word)).map(|(stitch, _)| stitch)).parse_next(input)? {
        return Ok(Unit::Stitch(Some(stitch)));
    }
    // `in next V-st`: into its space, where it has just one.
    if let Some(made) = opt(own_stitch).parse_next(input)? {
        let mut spaces = made.runs().filter(|(stitch, _)| *stitch == Stitch::CH);
        return match (spaces.next(), spaces.next()) {
            (Some((_, chains)), None) => Ok(Unit::Space(chains)),
            _ => take(|_| None).parse_next(input),
        };
    }
    // After chain loops a bare loop is one of them.
    let corners = (word(CHAIN), opt(dash), number, opt(dash), word(&["corner", "corners"]))
        .map(|(_, _, number, ..)| Unit::Space(number));
    let space = (opt(word(&["corner"])), word(SPACE)).value(Unit::Space(0));
    let corner = word(&["corner", "corners"]).value(Unit::Space(0));
    alt((
        chains.map(|number| Unit::Space(number.unwrap_or(0))),
        corners,
        space,
        corner,
        (stitch, opt(stitches_word)).map(|(stitch, _)| Unit::Stitch(Some(stitch))),
        stitches_word.value(Unit::Stitch(None)),
    ))
    .parse_next(input)
}

pub(super) fn loops(input: &mut Input<'_>) -> Res<Loops> {
    let short = alt((word(&["blo", "bl", "blp"]).value(Loops::Back), word(&["flo", "fl", "flp"]).value(Loops::Front)));
    let back = word(&["back", "backs", "rear"]).value(Loops::Back);
    let side = alt((back, word(&["front"]).value(Loops::Front), word(&["both"]).value(Loops::Both)));
    let long = (side, opt(word(&["the", "2", "two"])), word(&["loop", "loops", "lp", "lps"])).map(|(side, ..)| side);
    let start = input.peek_token().map(|token| token.place).unwrap_or_default();
    let behind = (ordinal.verify(|nth| *nth == 3), word(&["loop", "loops", "lp", "lps"])).void();
    let bump = (word(&["back"]), word(&["bump", "bumps", "hump", "humps", "bar", "ridge"])).void();
    let lead = (opt(word(&["only"])), articles);
    let third = (lead, alt((behind, bump)), opt(word(&["only"])));
    if opt(third).parse_next(input)?.is_some() {
        input.state.doubts.borrow_mut().push(Doubt::Third(start));
        return Ok(Loops::Back);
    }
    (opt(word(&["only"])), articles, alt((short, long)), opt(word(&["only"])))
        .map(|(_, _, loops, _)| loops)
        .parse_next(input)
}

pub(super) fn magic(input: &mut Input<'_>) -> Res<()> {
    let long = (word(&["magic", "magical", "adjustable", "sliding"]), word(&["ring", "circle", "loop"])).void();
    // In a later round `MC` is the main colour.
    let first = input.state.first;
    let short = take(move |token: &Token| {
        token.word().filter(|word| *word == "mr" || (first && ["mc", "ml", "aring"].contains(word))).map(drop)
    });
    alt((long, short)).parse_next(input)
}

pub(super) fn preposition(input: &mut Input<'_>) -> Res<()> {
    // `sl st across to corner`.
    opt((word(&["across", "over", "along"]), peek(word(&["to", "into"])))).parse_next(input)?;
    alt((
        word(&[
            "in", "into", "inside", "to", "on", "onto", "over", "across", "through", "thru", "around", "round",
            "under", "at",
        ]),
        (word(&["working"]), word(&["in", "into"])).void(),
        (word(&["along"]), opt(word(&["to", "into"]))).void(),
    ))
    .parse_next(input)
}
