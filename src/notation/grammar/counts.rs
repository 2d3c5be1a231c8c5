//! Counts at the end of a round, and what turning chains count as.

use super::place::{place, times};
use super::words::*;
use super::work::together_word;
use super::{Clause, Counting, Input, Res, stops};
use crate::craft::{Build, Counted, Loops, Stitch};
use crate::notation::lex::{Kind, Token};
use winnow::combinator::{alt, eof, opt, peek, repeat};
use winnow::prelude::*;

/// The end of the round, or what may follow its count.
pub(super) fn end_or_pause(input: &mut Input<'_>) -> Res<()> {
    let start = input.checkpoint();
    let ends = input.next_token().is_none_or(|token| {
        matches!(token.kind, Kind::Sign(',' | ';' | '.'))
            || matches!(token.word(), Some("join" | "fasten" | "turn" | "do" | "sl" | "ss"))
    });
    input.reset(&start);
    if ends { Ok(()) } else { Err(()) }
}

pub(super) fn counted(input: &mut Input<'_>) -> Res<(u32, Counted)> {
    let rest = (
        word(&["in", "each", "per", "for", "at", "on"]),
        opt(word(&["each", "every", "the", "end", "all"])),
        opt(word(&["of"])),
        round_word,
    )
        .void();
    let all = (word(&["in"]), word(&["all", "total"])).void();
    let after = opt(alt((
        word(&["made", "total", "altogether", "rem", "remain", "remaining", "left"]),
        all,
        rest,
        word(&["each", "apiece"]),
    )));
    let stitches = (opt(word(&["total"])), stitches_word).value(Counted::Stitches);
    let spaces = unit.verify_map(|unit| match unit {
        // 0 for those of any length.
        Unit::Space(chains) => Some(Counted::Spaces(chains)),
        Unit::Stitch(_) => None,
    });
    (number, opt(alt((spaces, stitches, (stitch, opt(stitches_word)).map(|(stitch, _)| Counted::Of(stitch))))), after)
        .map(|(number, what, _)| (number, what.unwrap_or(Counted::Stitches)))
        .parse_next(input)
}

pub(super) fn counts_list(input: &mut Input<'_>) -> Res<Vec<(u32, Counted)>> {
    // Corners and points stand between stitches, and are none.
    let places = || (number, word(PLACES)).value(None);
    let mut one = alt((places(), counted.map(Some)));
    let mut list = Vec::from_iter(one.parse_next(input)?);
    // `30 sc, ch 6`; `ch 5 (1 dc, ch 2)` says what a chain stands for.
    let all = list.first().is_none_or(|(number, _)| *number > 1);
    let chain = (word(&["ch", "chain"]), number, peek(close)).verify(move |_| all);
    let chain = chain.map(|(_, number, ())| (number, Counted::Of(Stitch::CH)));
    let mut more = alt((chain.map(Some), one));
    while let Some(next) = opt((listing, more.by_ref())).parse_next(input)? {
        list.extend(next.1);
    }
    if list.is_empty() { Err(()) } else { Ok(list) }
}

/// What stands between the counts of a list.
fn listing(input: &mut Input<'_>) -> Res<()> {
    alt(((sign(','), opt(word(&["and"]))).void(), sign(';'), sign('/'), sign('&'), word(&["and", "plus"]), sign('+')))
        .parse_next(input)
}

/// The count of the round, in any of the usual positions.
pub(super) fn count(input: &mut Input<'_>) -> Res<Clause> {
    let bracketed =
        (open, opt(sign('=')), opt(total_lead), counts_list, opt(among), opt(sign('.')), close, count_follows)
            .map(|(_, _, _, list, ..)| list);
    let dashed = (alt((dash, sign('='), sign(':'))), opt(total_lead), counts_list, opt(dash), end_or_pause)
        .map(|(_, _, list, ..)| list);
    let told = (total_lead, counts_list, end_or_pause).map(|(_, list, _)| list);
    let bare = (counts_list, end_or_pause)
        .verify_map(|(list, _)| list.iter().all(|(_, what)| *what == Counted::Stitches).then_some(list));
    let others = alt(((open, others, close).void(), (others, end_or_pause).void())).value(Clause::Aside);
    let shaped = alt((word(UP), word(DOWN), stitch.void()));
    let made =
        (open, articles, opt(shaped), word(&["made", "complete", "completed", "formed"]), close).value(Clause::Aside);
    let picot =
        (open, stitch.verify(|stitch| stitch.row().build == Build::Picot), opt(word(&["made"])), close, count_follows);
    let made = alt((made, picot.value(Clause::Aside)));
    let right_or_wrong = alt((word(&["rs", "ws"]), (word(&["right", "wrong"]), word(&["side"])).void()));
    let side = (open, right_or_wrong, close).value(Clause::Aside);
    alt((alt((bracketed, dashed, told, bare)).map(Clause::Count), others, side, made)).parse_next(input)
}

/// `…, counting ch as 1 dc`: what is among the count.
fn among(input: &mut Input<'_>) -> Res<()> {
    let inside = take(|token: &Token| (!matches!(token.kind, Kind::Open(_) | Kind::Close(_))).then_some(()));
    // `36 dc, ch 3 counted as 1`.
    let chain = (
        articles,
        word(&["ch", "chain"]),
        opt(dash),
        opt(number),
        word(&["counted", "counts", "counting", "included"]),
    );
    let lead = alt((word(&["counting", "including", "incl"]), chain.void()));
    (opt(sign(',')), lead, repeat::<_, (), (), _, _>(1.., inside)).void().parse_next(input)
}

/// A list in which something stands that is no stitch, so that it can't be held against the round: `6 shells, 6 sc`.
fn others(input: &mut Input<'_>) -> Res<()> {
    let shaped = (word(&["v", "y", "x"]), opt(dash), stitches_word).void();
    let other = (number, alt((word(OTHERS), own_stitch.void(), shaped))).value(true);
    let mut one = alt((other, counted.value(false)));
    let mut any = one.parse_next(input)?;
    let mut more = (listing, one);
    while let Some((_, other)) = opt(more.by_ref()).parse_next(input)? {
        any |= other;
    }
    if any { Ok(()) } else { Err(()) }
}

/// What leads to a count: `total`, `you should have`, `for a total of`.
fn total_lead(input: &mut Input<'_>) -> Res<()> {
    let have = (
        opt(word(&["now"])),
        word(&["you", "there", "you'll", "you’ll", "you'd", "you’d"]),
        opt(word(&["should", "will", "now"])),
        opt(word(&["now"])),
        alt((
            word(&["have", "be", "are", "get", "see", "count"]),
            (word(&["end", "finish"]), opt(word(&["up"])), word(&["with"])).void(),
        )),
        opt(word(&["now"])),
    );
    let words = (opt(word(&["stitch", "st", "sts"])), word(&["total", "count", "tot"]));
    let total = (opt(word(&["for", "making"])), articles, words, opt(word(&["of", "stitches", "sts"])));
    // `… around for 24 sts`, `to make 24 sts`.
    let named = (number, alt((stitches_word, stitch.void())), end_or_pause);
    let so_many =
        (alt((word(&["for", "on"]), (word(&["to"]), word(&["make", "total", "have"])).void())), peek(named)).void();
    let total = alt((have.void(), total.void(), so_many));
    (total, opt(sign(':')), opt(sign('='))).void().parse_next(input)
}

/// Places of a round that are told with its count.
const PLACES: &[&str] = &["corner", "corners", "point", "points", "sides", "spokes"];

/// What is counted at the end of a round beside stitches.
const OTHERS: &[&str] = &[
    "petals", "points", "groups", "corners", "spokes", "scallops", "fans", "shells", "sides", "pairs", "ribs",
    "blocks", "squares", "leaves", "motifs", "repeats", "waves", "arches", "arch", "holes", "eyelets", "rays", "bars",
    "meshes",
];

/// After a bracketed count comes no number of times and no place.
pub(super) fn count_follows(input: &mut Input<'_>) -> Res<()> {
    let start = input.checkpoint();
    let goes_on = opt(alt((times.void(), place.void()))).parse_next(input)?.is_some();
    input.reset(&start);
    if goes_on { Err(()) } else { Ok(()) }
}

/// `(counts as dc)`, `(does not count as a st)`, with or without brackets.
pub(super) fn counting(input: &mut Input<'_>) -> Res<Clause> {
    let here = (opt(sign(',')), word(&["here", "now"]), word(&["and"])).void();
    let throughout = opt((opt(here), word(&["throughout"])));
    let bracketed = (open, counting_words, throughout, close).map(|(_, counting, ..)| counting);
    // `ch 3 (first dc)`.
    let first = (open, articles, ordinal.verify(|nth| *nth == 1), stitch, close);
    let first = first.map(|(_, _, _, stitch, ())| (None, Counting::Yes(Some(stitch), Loops::Both, 0)));
    let bracketed = alt((bracketed, first, stands_for));
    let bare =
        (counting_words, opt((word(&["here"]), word(&["and"]), word(&["throughout"])))).map(|(counting, _)| counting);
    alt((bracketed, bare)).map(|(chains, counting)| Clause::Counts(chains, counting)).parse_next(input)
}

/// `ch 4 (dc + ch 1)`: right behind a chain, what it stands for.
fn stands_for(input: &mut Input<'_>) -> Res<(Option<u32>, Counting)> {
    let mut before = input.previous_tokens().filter(|token| !matches!(token.kind, Kind::Dash(_)));
    let number_before = before.next().is_some_and(|token| token.number().is_some());
    if !number_before || !before.next().is_some_and(|token| matches!(token.word(), Some("ch" | "chain"))) {
        return Err(());
    }
    let one = || opt(number.verify(|one| *one == 1));
    let word_chain = || word(&["ch", "chain", "chs", "chains"]);
    let chains = alt((
        (word_chain(), opt(dash), number, opt(word(SPACE))).map(|(_, _, number, _)| number),
        (number, opt(dash), word_chain()).map(|(number, ..)| number),
    ));
    let tail = opt((listing, opt(articles), chains).map(|(.., chains)| chains));
    let which = (opt(sign('=')), articles, opt(ordinal.verify(|nth| *nth == 1)), one());
    let (_, _, stitch, chains, ()) = (open, which, stitch, tail, close).parse_next(input)?;
    peek(stops).parse_next(input)?;
    if stitch.row().counts == 0 || stitch == Stitch::CH {
        return Err(());
    }
    Ok((None, Counting::Yes(Some(stitch), Loops::Both, chains.unwrap_or(0))))
}

/// The chain that is spoken of, where its number is told, and what it counts as.
pub(super) fn counting_words(input: &mut Input<'_>) -> Res<(Option<u32>, Counting)> {
    let chain = opt(chain_words);
    let not = alt((
        (word(&["does", "do", "will"]), word(&["not"]), word(&["count"])).void(),
        (word(&["doesn't", "doesn’t", "don't", "don’t", "never"]), word(&["count", "counts"])).void(),
        (word(&["not"]), word(&["counted", "counting", "included"])).void(),
        (word(&["not", "isn't", "isn’t"]), articles, stitches_word).void(),
        (word(&["is"]), word(&["not"]), peek((articles, stitches_word))).void(),
    ));
    let as_stitch = opt((
        word(&["as"]),
        articles,
        opt(word(&["first", "beg", "1st"])),
        opt(ordinal),
        how_many,
        opt(alt((stitch.void(), stitches_word))),
    ));
    let no = (not, as_stitch).value(Counting::No);
    alt(((chain, no).map(|(chains, no)| (chains.flatten(), no)), counts_yes)).parse_next(input)
}

fn counts_yes(input: &mut Input<'_>) -> Res<(Option<u32>, Counting)> {
    let lead = opt(word(&["to", "which", "that", "will", "always"]));
    let says = (lead, word(&["counts", "count", "counted", "counting", "stands", "acts", "serves", "standing"])).void();
    let is = (
        alt((word(&["as", "for", "is", "equals", "makes", "replaces", "replacing"]), sign('='))),
        peek((first_of, stitch)),
    )
        .void();
    let told = (opt(chain_words), says).map(|(chains, ())| (chains.flatten(), true));
    let (chain, said) = alt((told, is.value((None, false)))).parse_next(input)?;
    let lead = (opt(word(&["together"])), word(&["as", "for"]), first_of).void();
    let led = if said { opt(lead).parse_next(input)?.is_some() } else { opt(first_of).parse_next(input)?.is_some() };
    if !led {
        return Ok((chain, Counting::Yes(None, Loops::Both, 0)));
    }
    if let Some((_, number)) = opt(together_word).parse_next(input)? {
        return Ok((chain, Counting::Together(number)));
    }
    // `ch 1 and dc`: the chain is told first.
    let lead_chain =
        (word(&["ch", "chain"]), opt(dash), number, alt((word(&["and"]), sign('+'))), articles, peek(stitch));
    let first = opt(lead_chain.map(|(_, _, number, ..)| number)).parse_next(input)?;
    let named = alt((stitch.map(Some), stitches_word.value(None)));
    let (stitch, _, through) = (named, opt(stitches_word), opt((opt(preposition), loops))).parse_next(input)?;
    let loops = through.map_or(Loops::Both, |(_, loops)| loops);
    let word_chain = || word(&["ch", "chain"]);
    let chains = alt((
        (word_chain(), opt(dash), number, opt(word(SPACE))).map(|(_, _, number, _)| number),
        (number, opt(dash), word_chain()).map(|(number, ..)| number),
    ));
    let chains = opt((alt((sign(','), word(&["and"]), sign('+'))), chains)).parse_next(input)?;
    let chains = chains.map(|(_, number)| number).or(first).unwrap_or(0);
    Ok((chain, Counting::Yes(stitch, loops, chains)))
}

/// The chain that is spoken of: `this`, `the ch-3`, `turning ch of 3`.
fn chain_words(input: &mut Input<'_>) -> Res<Option<u32>> {
    let lead = (articles, opt(word(&["this", "first", "beg", "beginning", "turning", "starting", "initial", "these"])));
    let chain = (word(&["ch", "chain", "chains", "chs"]), opt(dash), opt(word(&["of"])), opt(number));
    let chain = chain.map(|(.., number)| number);
    let counted = (number, word(&["ch", "chain", "chains", "chs"])).map(|(number, ())| Some(number));
    let this = word(&["this"]).value(None);
    alt(((lead, alt((chain, counted))).map(|(_, number)| number), this)).parse_next(input)
}

/// `the first`, `your 1st`.
fn first_of(input: &mut Input<'_>) -> Res<()> {
    let which = opt(word(&["your", "the", "first", "beg", "beginning"]));
    (articles, which, opt(word(&["first"])), opt(ordinal), how_many).void().parse_next(input)
}

/// A count after a full stop at the very end: `18 sc.`
pub(crate) fn final_count(input: &mut Input<'_>) -> Res<Clause> {
    (counts_list, opt(sign('.')), eof).map(|(list, ..)| Clause::Count(list)).parse_next(input)
}
