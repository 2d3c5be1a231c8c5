//! Joins: of rounds, of chains to a ring, and slip stitches that close a picot.

use super::words::*;
use super::work::item;
use super::{Clause, Input, Res, rest_of_clause};
use crate::craft::{Op, Stitch};
use crate::notation::lex::Kind;
use crate::notation::tree::{Act, Times};
use crate::notation::written::JoinedTo;
use winnow::combinator::{alt, not, opt, peek};
use winnow::prelude::*;

/// `join`, `sl st to first sc to join`, `join to form a ring`.
pub(super) fn joining(input: &mut Input<'_>) -> Res<Clause> {
    let one = number.verify(|number| *number == 1);
    let mut lead = alt((
        word(&["join", "form", "forming"]).value(true),
        (
            opt((word(&["with", "by"]), articles)),
            opt(one),
            stitch.verify(|stitch| *stitch == Stitch::SL_ST),
            preposition,
        )
            .value(false),
        (word(&["invisible"]), word(&["join"])).value(true),
        (word(&["close", "closing"]), opt(articles), opt(round_word), word(&["with", "by"]), articles, peek(stitch))
            .value(true),
    ));
    let closes = closes_chain(input);
    let amid = input.previous_tokens().any(|token| matches!(token.kind, Kind::Sign('*') | Kind::Open(_)));
    let start = input.peek_token().map(|token| token.place).unwrap_or_default();
    let sure = lead.parse_next(input)?;
    // `ch 3, sl st in top of last sc made`: a picot.
    let closed = |input: &mut Input<'_>| match amid {
        true => alt((last_made, first_chain)).parse_next(input),
        false => last_made(input),
    };
    if !sure && closes && opt(closed).parse_next(input)?.is_some() {
        let slip = Act::Run(Op::plain(Stitch::SL_ST), Times::Exactly(1));
        return Ok(Clause::FromHook(0, vec![item(slip, start, input)]));
    }
    if !sure && let Some(chains) = opt(first_space).parse_next(input)? {
        return Ok(Clause::SlipIntoSpace(chains));
    }
    let rest = rest_of_clause(input);
    let has = |words: &[&str]| rest.iter().any(|token| token.word().is_some_and(|word| words.contains(&word)));
    let first = rest.iter().any(|token| token.kind == Kind::Ordinal(1));
    // `sl st in ring` is a stitch.
    if has(&["ring", "circle"]) && (sure || first || has(&["first", "form", "forming", "make"])) {
        return Ok(Clause::FormRing);
    }
    // `sl st in 3rd of 4 ch`, but a stitch in the 2nd chain from the hook is worked.
    let chain = rest.iter().any(|token| matches!(token.kind, Kind::Ordinal(_))) && has(&["ch", "chain"]);
    let into_chain = chain && !has(&["hook"]);
    // `sl st to ch-3`.
    let chain_alone = has(&["ch", "chain"])
        && rest.iter().all(|token| token.word().is_none_or(|word| ["ch", "chain", "the"].contains(&word)));
    let joins =
        sure || chain_alone || first || into_chain || has(&["first", "top", "beg", "beginning", "join", "close"]);
    if !joins {
        return Err(());
    }
    let stitch = (0..rest.len()).find_map(|at| input.state.vocabulary.stitch(&rest[at..]).map(|(stitch, _)| stitch));
    let nth = rest.iter().find_map(|token| if let Kind::Ordinal(nth) = token.kind { Some(nth) } else { None });
    let to = match stitch {
        Some(Stitch::CH) if nth.is_some_and(|nth| nth > 1) || chain_alone || has(&["top", "beg", "beginning"]) => {
            JoinedTo::Chain(nth.filter(|_| has(&["of"]) || rest.len() > 2).unwrap_or(0))
        }
        Some(stitch) if stitch != Stitch::SL_ST && stitch != Stitch::CH => JoinedTo::Stitch,
        Some(_) | None => JoinedTo::Unsaid,
    };
    Ok(Clause::Join(true, to))
}

/// True behind `ch 3,`.
fn closes_chain(input: &Input<'_>) -> bool {
    let mut before = input.previous_tokens().filter(|token| !matches!(token.kind, Kind::Sign(',') | Kind::Dash(_)));
    let number = before.next().is_some_and(|token| token.number().is_some());
    number && before.next().is_some_and(|token| matches!(token.word(), Some("ch" | "chain")))
}

/// `top of last sc made`, `last st`, `the st just made`.
fn last_made(input: &mut Input<'_>) -> Res<()> {
    let top = opt((word(&["top", "side", "front"]), word(&["of"]), articles));
    let named = alt((stitches_word, stitch.void()));
    let last = (word(&["last", "previous"]), named, opt(word(&["made", "worked"]))).void();
    let just = (alt((stitches_word, stitch.void())), word(&["just"]), word(&["made", "worked"])).void();
    (articles, top, alt((last, just))).void().parse_next(input)
}

/// `first ch`, amid a repeat the first of the chains that stand before.
fn first_chain(input: &mut Input<'_>) -> Res<()> {
    let first = (articles, ordinal.verify(|nth| *nth == 1), word(&["ch", "chain"]), opt(word(&["made"])));
    // `first ch-3 picot` is none of them.
    (first, not(dash), peek(super::stops)).void().parse_next(input)
}

/// `first ch-2 sp` and nothing more: its chains, 0 where they aren't told.
fn first_space(input: &mut Input<'_>) -> Res<u32> {
    let space = |unit| match unit {
        Unit::Space(chains) => Some(chains),
        Unit::Stitch(_) => None,
    };
    let first = ordinal.verify(|nth| *nth == 1);
    let chains = (articles, first, unit.verify_map(space)).map(|(.., chains)| chains).parse_next(input)?;
    if rest_of_clause(input).is_empty() { Ok(chains) } else { Err(()) }
}
