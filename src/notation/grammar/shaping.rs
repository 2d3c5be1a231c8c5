//! Shaping that is told for the whole round: `inc in every 4th st`, `alternate sc and inc`.

use super::place::around;
use super::words::*;
use super::work::what;
use super::{Input, Res};
use crate::craft::{Made, Op, Spot};
use crate::notation::tree::{Act, Item, Times};
use winnow::combinator::{alt, opt, peek, repeat};
use winnow::prelude::*;

/// `inc in every 4th st`, `inc after every 3 sc`, `2 sc in every other st`: a stitch in each of so many, then the shaping,
/// all the way round; a decrease takes two of them.
pub(super) fn every(input: &mut Input<'_>) -> Res<Act> {
    let main = input.state.main;
    if let Some(op) = opt(every_together).parse_next(input)? {
        return Ok(Act::Run(op, Times::Around { leave: 0 }));
    }
    let up = alt((word(UP).value(true), word(DOWN).value(false)));
    let shaped =
        (opt(number), opt(stitch), up, opt((number.verify(|one| *one == 1), opt(alt((stitch.void(), stitches_word))))));
    let shaped = shaped.map(|(_, stitch, up, _)| (stitch, up));
    let two = (number.verify(|two| *two == 2), stitch).map(|(_, stitch)| (Some(stitch), true));
    let (stitch, up) = alt((shaped, two)).parse_next(input)?;
    let after = opt(alt((word(&["after"]).value(true), preposition.value(false)))).parse_next(input)?.unwrap_or(false);
    // `dec every 5th and 6th st`.
    let pair = (ordinal, word(&["and"]), ordinal).verify(|(one, _, two)| one.checked_add(1) == Some(*two) && !up);
    let nth = alt((pair.map(|(.., nth)| nth), ordinal, word(&["other", "second"]).value(2)));
    // `in 2nd st and every following 2nd st` begins with what it goes on with.
    let first = (articles, ordinal, opt(unit), word(&["and"]), opt(preposition)).map(|(_, nth, ..)| nth);
    let first = opt(first).parse_next(input)?;
    let mut each = (articles, word(&["every", "each"]), opt(word(&["following", "foll", "next"])));
    each.parse_next(input)?;
    let (nth, counted) = alt((nth.map(|nth| (nth, false)), number.map(|number| (number, true)))).parse_next(input)?;
    (opt(word(&["following", "foll", "next"])), unit).parse_next(input)?;
    (opt(word(&["after"])), opt(word(&["that"])), opt(around)).parse_next(input)?;
    // Every 3rd is the last of three; after every 3 comes a fourth.
    let nth = if after && counted { nth.saturating_add(1) } else { nth };
    if first.is_some_and(|first| first != nth) || nth < 2 {
        return Err(());
    }
    let stitch = stitch.unwrap_or(main);
    let place = input.previous_tokens().next().map(|token| token.place).unwrap_or_default();
    // After so many stitches a decrease takes two more.
    let (shape, taken) = match (up, after) {
        (true, _) => (Op::increase(stitch, 2), 1),
        (false, false) => (Op::decrease(stitch, 2), 2),
        (false, true) => (Op::decrease(stitch, 2), 1),
    };
    let shaped = Item { act: Act::Run(shape, Times::Exactly(1)), place };
    let left = nth.saturating_sub(taken);
    let plain = Item { act: Act::Run(Op::plain(stitch), Times::Exactly(left)), place };
    let body = if left > 0 { vec![plain, shaped] } else { vec![shaped] };
    Ok(Act::Repeat(body, Times::Around { leave: 0 }))
}

/// `sc every 2 sts together`.
fn every_together(input: &mut Input<'_>) -> Res<Op> {
    let main = input.state.main;
    let (stitch, _, number) = (opt(stitch), word(&["every", "each"]), number).parse_next(input)?;
    (alt((stitch_void, stitches_word)), word(&["tog", "together"]), opt(around)).parse_next(input)?;
    if number > 1 { Ok(Op::decrease(stitch.unwrap_or(main), number)) } else { Err(()) }
}

fn stitch_void(input: &mut Input<'_>) -> Res<()> {
    stitch.void().parse_next(input)
}

/// `alternate 1 sc and 1 inc all the way around`, `sc and inc alternately`.
pub(super) fn alternate(input: &mut Input<'_>) -> Res<Act> {
    let lead = word(&["alternate", "alternating", "alternately"]);
    let led = opt((lead, opt(word(&["between", "with"])))).parse_next(input)?.is_some();
    let start = input.peek_token().map(|token| token.place).unwrap_or_default();
    let place = || opt((preposition, articles, opt(word(&["next", "each"])), opt(number), unit));
    let mut one = (articles, what, place()).map(|(_, what, _)| {
        let times = Times::Exactly(what.number.unwrap_or(1));
        Item { act: Act::Run(what.op, times), place: start }
    });
    let mut body = vec![one.parse_next(input)?];
    let tie = || repeat::<_, (), (), _, _>(1.., alt((word(&["and", "then", "with"]), sign(','), sign('/'), sign('&'))));
    while let Some((_, next)) = opt((tie(), one.by_ref())).parse_next(input)? {
        body.push(next);
    }
    let trails = || word(&["alternately", "alternating", "alternatingly", "alternate", "alternatively"]);
    if !led {
        (opt(sign(',')), trails()).parse_next(input)?;
    }
    let whole = |item: &Item| matches!(&item.act, Act::Run(op, _) if op.consumed > 0 && op.into != Spot::Space && op.made != Made::Nothing);
    if body.len() < 2 || !body.iter().all(whole) {
        return Err(());
    }
    opt((opt(sign(',')), around)).parse_next(input)?;
    opt(peek(sign('.'))).parse_next(input)?;
    Ok(Act::Repeat(body, Times::Around { leave: 0 }))
}
