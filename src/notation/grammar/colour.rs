//! Yarns: changes of colour, and yarns that are joined in.

use super::place::{Target, place};
use super::words::*;
use super::work::{What, aim, item};
use super::{Clause, Input, Res};
use crate::craft::{Op, Stitch};
use crate::notation::lex::{Kind, Token};
use winnow::combinator::{alt, opt, peek, repeat};
use winnow::prelude::*;

/// Colours that yarns are called by.
const COLOURS: &[&str] = &[
    "mc",
    "cc",
    "cc1",
    "cc2",
    "b",
    "c",
    "d",
    "e",
    "white",
    "black",
    "brown",
    "red",
    "blue",
    "green",
    "yellow",
    "orange",
    "pink",
    "purple",
    "grey",
    "gray",
    "beige",
    "cream",
    "tan",
    "gold",
    "silver",
    "ivory",
    "navy",
    "teal",
    "turquoise",
    "lilac",
    "violet",
    "mint",
    "peach",
    "coral",
    "mustard",
    "rose",
    "charcoal",
];

/// `12 sc in A`: the yarn that so many are worked with.
pub(super) fn in_colour(input: &mut Input<'_>) -> Res<()> {
    let start = input.eof_offset();
    word(&["in", "with", "using"]).parse_next(input)?;
    let shade = opt(word(&["light", "dark", "main", "contrasting", "contrast", "bright", "pale"]));
    let called = (opt(alt((word(&["yarn", "color", "colour"]), (articles, shade).void()))), word(COLOURS));
    let called = (called, opt(word(&["yarn", "color", "colour"]))).void();
    // `a` is an article unless nothing follows it.
    let a = (opt(word(&["yarn", "color", "colour"])), word(&["a"])).void();
    alt((called, a)).parse_next(input)?;
    peek(super::stops).parse_next(input)?;
    let end = input.eof_offset();
    input.state.asides.borrow_mut().push((start, end));
    Ok(())
}

pub(super) fn colour(input: &mut Input<'_>) -> Res<Clause> {
    let change = (word(&["change", "switch"]), word(&["to"])).void();
    alt((word(&["with", "using"]), change)).parse_next(input)?;
    // `with 1 sl st in first st` names no yarn.
    if opt(peek((articles, opt(number), stitch))).parse_next(input)?.is_some() {
        return Err(());
    }
    let words = yarn_words(input)?;
    // `with a 4 mm hook` and `using a marker` speak of tools.
    if words.iter().any(|word| ["hook", "marker", "markers", "needle"].contains(&word.as_str())) {
        return Ok(Clause::Aside);
    }
    yarn_name(&words).map(Clause::Colour).ok_or(())
}

/// `join tide with sl st in any st`, `join yarn B`, `join with sc in any ch-1 sp`.
pub(super) fn joining_yarn(input: &mut Input<'_>) -> Res<Clause> {
    const ELSE: [&str; 12] =
        ["to", "into", "rnd", "round", "rounds", "rd", "ring", "circle", "ends", "last", "first", "seam"];
    word(&["join", "attach"]).parse_next(input)?;
    let start = input.checkpoint();
    let mut words = yarn_words(input)?;
    let named = words.iter().position(|word| ["with", "in", "by"].contains(&word.as_str())).unwrap_or(words.len());
    input.reset(&start);
    let any = words.iter().any(|word| word == "any" || word == "standing");
    if words.iter().any(|word| ELSE.contains(&word.as_str())) && !any {
        return Err(());
    }
    words.truncate(named);
    let name = yarn_name(&words);
    for _ in 0..named {
        input.next_token();
    }
    let begins = opt(started).parse_next(input)?.flatten();
    if name.is_none() && begins.is_none() {
        return Err(());
    }
    yarn_words(input)?;
    Ok(Clause::JoinYarn(name, begins.map(Box::new)))
}

/// `with sl st in any ch-1 sp` leads into that space; `with a standing dc in any st` is the first stitch.
fn started(input: &mut Input<'_>) -> Res<Option<Clause>> {
    let begin = input.peek_token().map(|token| token.place).unwrap_or_default();
    opt((word(&["with", "by"]), articles)).parse_next(input)?;
    opt(word(&["standing", "first"])).parse_next(input)?;
    let slip = Stitch::SL_ST;
    let made = opt(stitch).parse_next(input)?.unwrap_or(slip);
    let (target, loops) = place(input)?;
    Ok(match target {
        Target::Next(Unit::Space(chains), ..) if made == slip => Some(Clause::SlipIntoSpace(chains)),
        Target::Next(unit, ..) if made != slip => {
            let target = Target::Next(unit, crate::notation::tree::Times::Exactly(1), false);
            let what = What { op: Op::plain(made), number: None, own: false };
            Some(Clause::Do(vec![item(aim(&what, target, loops)?, begin, input)]))
        }
        Target::Next(..) | Target::Same { .. } | Target::Ring | Target::FromHook(_) | Target::Skipped => None,
    })
}

/// Words that may name a yarn: up to the next stop, or where the next step is tied on: `with tide and sc in each st`.
fn yarn_words(input: &mut Input<'_>) -> Res<Vec<String>> {
    let inside = take(|token: &Token| {
        let sign = matches!(token.kind, Kind::Sign(',' | ';' | '.' | ':' | '*') | Kind::Open(_) | Kind::Close(_));
        let stop = sign || token.kind == Kind::Dash(true);
        (!stop && !matches!(token.word(), Some("and" | "then"))).then(|| token.show())
    });
    repeat(0.., inside).parse_next(input)
}

/// The name of a yarn without the words around it: `the colour tide in last st` is `tide`, `yarn A` is `a`.
fn yarn_name(words: &[String]) -> Option<String> {
    const AROUND: [&str; 6] = ["the", "a", "new", "yarn", "colour", "color"];
    // `change to tide in last st` tells where the change is made.
    let before: Vec<&str> = words.iter().map(String::as_str).take_while(|word| *word != "in").collect();
    let lead = before.iter().take_while(|word| AROUND.contains(word)).count();
    let name = match before.get(lead..).unwrap_or_default() {
        // Nothing but words around a name; but yarns are called A and B.
        [] => before.last().filter(|last| **last == "a").copied().into_iter().collect(),
        [name @ .., "yarn" | "colour" | "color"] => name.to_vec(),
        name => name.to_vec(),
    };
    (!name.is_empty()).then(|| name.join(" "))
}
