//! Rings that a first round is worked into.

use super::words::*;
use super::work::item;
use super::{Clause, Input, Res};
use crate::craft::Op;
use crate::notation::tree::{Act, Times};
use winnow::combinator::{alt, eof, opt, peek};
use winnow::prelude::*;

/// `mr 6`, `magic ring: 6`, `6 in MR`: so many of the stitch that the work is in.
pub(super) fn ring_of(input: &mut Input<'_>) -> Res<Clause> {
    let start = input.peek_token().map(|token| token.place).unwrap_or_default();
    if !input.state.first {
        return Err(());
    }
    let stops = || alt((sign(','), sign(';'), sign('.'), sign('='), open, dash));
    let ends = || peek(alt((eof.void(), stops())));
    let lead = (opt(word(&["make", "start", "begin"])), opt(word(&["with", "in"])), articles, magic);
    // `magic ring 5-dc popcorn` is one popcorn.
    let led = (lead, opt(alt((sign(':'), dash, word(&["with"]), word(&["of"])))), how_many.verify_map(|number| number));
    let led = led.map(|(.., number)| number);
    let ring = (preposition, articles, alt((magic, word(&["ring"]))));
    let trails = (number, ring).map(|(number, _)| number);
    let (number, ()) = (alt((led, trails)), ends()).parse_next(input)?;
    let act = Act::Run(Op::into_ring(input.state.main), Times::Exactly(number));
    Ok(Clause::Do(vec![item(act, start, input)]))
}

pub(super) fn ring_start(input: &mut Input<'_>) -> Res<Clause> {
    let make = alt((
        word(&["make", "form", "in", "into", "work"]),
        (word(&["start", "begin", "starting", "beginning"]), word(&["with"])).void(),
    ));
    // `magic ring with 6 sc`.
    let with = opt((word(&["with"]), peek(number)));
    let named = (opt(make), opt(word(&["in", "into"])), articles, magic, with).value(Clause::Ring);
    let bare =
        (word(&["make", "start"]), opt(word(&["with"])), articles, word(&["ring", "loop"])).value(Clause::MakeRing);
    // `…, all into the ring`.
    let all = (word(&["all", "everything"]), opt(word(&["worked", "work", "made"])), word(&["in", "into"]), articles);
    let all = (all, alt((magic, word(&["ring", "circle", "loop"])))).value(Clause::Ring);
    alt((all, named, bare)).parse_next(input)
}
