//! Even rounds: one stitch in each, in the words that tell it for the whole round.

use super::counts::{count, end_or_pause};
use super::place::around;
use super::words::*;
use super::work::item;
use super::{Clause, Input, Res};
use crate::craft::Op;
use crate::notation::tree::{Act, Times};
use winnow::combinator::{alt, eof, opt, peek};
use winnow::prelude::*;

/// `work even`, `even in sc`, `a round of sc`, `continue in sc without increasing`: one stitch in each.
pub(super) fn even(input: &mut Input<'_>) -> Res<Clause> {
    let start = input.peek_token().map(|token| token.place).unwrap_or_default();
    let main = input.state.main;
    let keep = opt(word(&["work", "working", "continue", "keep", "crochet"])).parse_next(input)?.is_some();
    opt(word(&["working", "going"])).parse_next(input)?;
    if keep
        && opt((word(&["in"]), opt(word(&["established", "set", "the"])), word(&["pattern", "pat", "patt"])))
            .parse_next(input)?
            .is_some()
    {
        opt(around).parse_next(input)?;
        return Ok(Clause::As(0, 0, None));
    }
    let one =
        (alt((number.void(), word(&["a"]))), round_word, opt(word(&["even", "straight"])), opt(word(&["of", "in"])));
    let one = opt((one, peek(stitch))).parse_next(input)?.is_some();
    let straight = || word(&["even", "straight", "evenly"]);
    // `sc even`.
    let evenly = opt((stitch, peek(straight())).map(|(stitch, ())| stitch)).parse_next(input)?;
    let how = opt(straight()).parse_next(input)?.is_some();
    let tied = word(&["in", "with", "of"]);
    let named = match one {
        true => Some(stitch.parse_next(input)?),
        false => opt((tied, stitch).map(|(_, stitch)| stitch)).parse_next(input)?.or(evenly),
    };
    let after = opt(alt((straight(), without))).parse_next(input)?.is_some();
    let ends = alt((end_or_pause, peek(open), peek(word(&["for", "around"]))));
    let bare = named.is_some() && opt(peek(ends)).parse_next(input)?.is_some();
    if !(how || after || one || bare) {
        return Err(());
    }
    opt(around).parse_next(input)?;
    let act = Act::Run(Op::plain(named.unwrap_or(main)), Times::Around { leave: 0 });
    Ok(Clause::Do(vec![item(act, start, input)]))
}

/// `without increasing`, `no more decreases`.
fn without(input: &mut Input<'_>) -> Res<()> {
    let lead = (word(&["without", "no", "with"]), opt(word(&["no", "any"])), opt(word(&["more", "further"])));
    let shaping = alt((word(UP), word(DOWN), word(&["shaping"])));
    (lead, shaping, opt((word(&["or", "and"]), alt((word(UP), word(DOWN)))))).void().parse_next(input)
}

pub(super) fn no_shaping(input: &mut Input<'_>) -> Res<Clause> {
    let start = input.peek_token().map(|token| token.place).unwrap_or_default();
    let main = input.state.main;
    // Where nothing else is said, that is all of the round.
    if input.previous_tokens().next().is_none()
        && opt((without, opt(sign('.')), peek(alt((eof.void(), count.void()))))).parse_next(input)?.is_some()
    {
        let act = Act::Run(Op::plain(main), Times::Around { leave: 0 });
        return Ok(Clause::Do(vec![item(act, start, input)]));
    }
    (without, opt((word(&["in", "on"]), word(&["this", "these"]), round_word))).value(Clause::Aside).parse_next(input)
}
