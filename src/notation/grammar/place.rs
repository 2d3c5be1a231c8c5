//! Where stitches go, and how often.

use super::words::*;
use super::{Input, Res};
use crate::craft::{Loops, Stitch};
use crate::notation::lex::{Kind, Token};
use crate::notation::tree::Times;
use winnow::combinator::{alt, eof, not, opt, peek};
use winnow::prelude::*;

/// Where stitches go.
#[derive(Clone, Copy)]
pub(super) enum Target {
    /// In so many stitches or spaces, one after another; true where it says each.
    Next(Unit, Times, bool),
    /// Where the last stitch went; true where it says space.
    Same {
        space: bool,
    },
    Ring,
    FromHook(u32),
    /// In the stitch that was skipped just before the last one.
    Skipped,
}

pub(super) fn around(input: &mut Input<'_>) -> Res<Times> {
    let leave = (word(&["last"]), opt(number), opt(unit));
    let to_last = (alt((word(UNTIL), word(&["except", "before"]))), articles, leave)
        .map(|(_, _, (_, number, _))| number.unwrap_or(1));
    let to_end =
        || (word(UNTIL), articles, word(&["end", "marker"]), opt((word(&["of"]), articles, round_word))).value(0);
    let way = (articles, word(&["way"])).void();
    let evenly = word(&["evenly"]);
    let lead = opt(alt((evenly, (word(&["all"]), opt(way)).void())));
    let circle = word(&["circle", "hat", "piece", "ring", "work", "whole", "entire"]);
    let circle = opt((word(&["the", "this"]), alt((round_word, circle)), opt(round_word)));
    let all_round = (lead, (word(&["around", "across", "round"]), circle), opt(alt((to_last_after, to_end()))))
        .map(|(_, _, leave)| leave.unwrap_or(0));
    alt((all_round, to_end(), to_last)).map(|leave| Times::Around { leave }).parse_next(input)
}

pub(super) fn to_last_after(input: &mut Input<'_>) -> Res<u32> {
    let leave = (alt((word(UNTIL), word(&["except"]))), articles, word(&["last"]), opt(number), opt(unit));
    leave.map(|(_, _, _, number, _)| number.unwrap_or(1)).parse_next(input)
}

/// `2 sc each st`, `inc every stitch`, `2 sc per st`: each without a word for where.
pub(super) fn each_unsaid(input: &mut Input<'_>) -> Res<Target> {
    let which = opt(word(&["of", "the", "single", "remaining", "rem", "following"]));
    peek((word(EACH), which, articles, how_many, unit)).parse_next(input)?;
    each(input)
}

pub(super) fn each(input: &mut Input<'_>) -> Res<Target> {
    // `every single st`, but `every single crochet`.
    let single = (word(&["single"]), not(word(&["crochet"]))).void();
    let lead = (word(EACH), opt(single), opt(word(&["rem", "remaining", "of"])), articles);
    let next = opt(word(&["next", "following", "foll", "rem", "remaining", "first", "last", "other"]));
    let (_, _, number, unit) = (lead, next, how_many, opt(unit)).parse_next(input)?;
    let unit = unit.unwrap_or(Unit::Stitch(None));
    // `each dc and ch around`, `each st and in each ch` is each of either.
    let also = (word(&["and"]), opt(word(&["in", "into"])), opt(word(&["each"])), self::unit);
    let either = opt(also).parse_next(input)?.is_some();
    let unit = if either && matches!(unit, Unit::Stitch(_)) { Unit::Stitch(None) } else { unit };
    let previous = word(&["previous", "prev", "last"]);
    opt((word(&["of", "from"]), articles, previous, round_word)).parse_next(input)?;
    let times = opt(around).parse_next(input)?;
    let times = number.map(Times::Exactly).or(times).unwrap_or(Times::Around { leave: 0 });
    Ok(Target::Next(unit, times, true))
}

pub(super) fn next(input: &mut Input<'_>) -> Res<Target> {
    let lead = (
        articles,
        word(&["next", "following", "foll", "first", "last", "rem", "remaining", "any"]),
        how_many,
        opt(unit),
    );
    let counted = (number, unit).map(|(number, unit)| (number, Some(unit)));
    let (number, unit) =
        alt((lead.map(|(_, _, number, unit)| (number.unwrap_or(1), unit)), counted)).parse_next(input)?;
    Ok(Target::Next(unit.unwrap_or(Unit::Stitch(None)), Times::Exactly(number), false))
}

pub(super) fn target(input: &mut Input<'_>) -> Res<Target> {
    let within = (word(&["center", "centre", "middle", "top", "tip"]), word(&["of"]), articles);
    let lead = (articles, opt(within));
    let ring = alt((magic, word(&["ring", "circle", "it"])));
    let join = (word(&["as"]), articles, opt(word(&["last"])));
    let join = (join, alt((word(&["join", "joining"]), stitch.void(), word(&["beg"]))), opt((opt(dash), opt(number))));
    let as_join = opt(join);
    let own = opt(alt((unit, word(&["place", "spot", "corner"]).value(Unit::Stitch(None)))));
    let same = (word(&["same"]), own, as_join)
        .map(|(_, unit, _)| Target::Same { space: matches!(unit, Some(Unit::Space(_))) });
    // `sc in next 3, inc in 4th`.
    let first = (ordinal.verify(|nth| *nth == 1), stitches_word).void();
    let nth = (ordinal.verify(|nth| *nth > 1), opt(stitches_word), not(word(&["ch", "chain", "of"]))).void();
    let nth = alt((first, nth)).value(Target::Next(Unit::Stitch(None), Times::Exactly(1), false));
    // `in skipped st`, `in the st just skipped`.
    let passed = || word(&["skipped", "missed", "unworked"]);
    let skipped = alt((
        (opt(word(&["first", "last", "previous"])), passed(), opt(stitches_word)).void(),
        (stitches_word, opt(word(&["just"])), passed()).void(),
    ));
    let skipped = skipped.value(Target::Skipped);
    // `in base of ch-3`, `in st at base of ch`.
    let base = (
        word(&["base", "foot", "bottom"]),
        word(&["of"]),
        articles,
        opt(word(&["beg", "beginning", "first", "turning"])),
    );
    let base = (
        opt((opt(word(&["st", "stitch"])), word(&["at"]), articles)),
        base,
        alt((
            (number, opt(dash), word(&["ch", "chain"])).void(),
            (word(&["ch", "chain"]), opt((opt(dash), number))).void(),
        )),
    );
    let base = base.value(Target::Same { space: false });
    let link = (opt(word(&["ch", "chain"])), opt(alt((stitches_word, word(&["loop", "lp"])))));
    let hook = (ordinal, link, word(&["from"]), opt(word(&["the"])), word(&["hook"]));
    // `in first ch made`: the chain that was made first, whichever that is from the hook.
    let made = (ordinal.verify(|nth| *nth == 1), word(&["ch", "chain"]), word(&["made"])).value(Target::FromHook(0));
    // `sc in 1, inc in 1`.
    let so_many = (number, peek(ends)).map(|(number, ())| (None, number));
    // `sc in sc`.
    let kind = (stitch.verify(|kind| kind.row().counts > 0 && *kind != Stitch::CH), peek(ends));
    let kind = kind.map(|(kind, ())| (Some(kind), 1));
    // `sc in joining`: the first stitch.
    let joined = (word(&["joining"]), opt(stitches_word), peek(ends)).value((None, 1));
    let next_of = |(kind, number)| Target::Next(Unit::Stitch(kind), Times::Exactly(number), false);
    (
        lead,
        alt((
            (opt(word(&["rem", "remaining"])), each).map(|(_, target)| target),
            alt((hook.map(|(nth, ..)| Target::FromHook(nth)), made)),
            (ring).value(Target::Ring),
            alt((skipped, same)),
            base,
            (opt((word(&["post"]), word(&["of"]), articles)), next).map(|(_, target)| target),
            nth,
            alt((space_of_own, space_alone)),
            alt((so_many, kind, joined)).map(next_of),
        )),
    )
        .map(|(_, target)| target)
        .parse_next(input)
}

/// What may stand behind a number that is a place.
fn ends(input: &mut Input<'_>) -> Res<()> {
    let stop = |token: &Token| {
        let sign = matches!(token.kind, Kind::Sign(',' | ';' | '.' | '*') | Kind::Open(_) | Kind::Close(_));
        (sign || matches!(token.word(), Some("and" | "then" | "rep" | "repeat"))).then_some(())
    };
    alt((eof.void(), take(stop))).parse_next(input)
}

/// `in ch-1 sp of next V-st`, `in sp of each shell around`: the space of a stitch of the maker's own.
fn space_of_own(input: &mut Input<'_>) -> Res<Target> {
    let Unit::Space(said) = unit.parse_next(input)? else { return Err(()) };
    (word(&["of", "in"]), articles).parse_next(input)?;
    let every = alt((word(EACH).value(true), opt(word(&["next", "following", "foll", "first", "last"])).value(false)));
    let (every, _, own) = (every, articles, unit).parse_next(input)?;
    let chains = match own {
        Unit::Space(chains) if said == 0 || said == chains => chains,
        Unit::Space(_) | Unit::Stitch(_) => return Err(()),
    };
    let times =
        if every { opt(around).parse_next(input)?.unwrap_or(Times::Around { leave: 0 }) } else { Times::Exactly(1) };
    Ok(Target::Next(Unit::Space(chains), times, every))
}

/// `in ch-2 sp`, without a word for which.
pub(super) fn space_alone(input: &mut Input<'_>) -> Res<Target> {
    match unit.parse_next(input)? {
        space @ Unit::Space(_) => Ok(Target::Next(space, Times::Exactly(1), false)),
        Unit::Stitch(_) => Err(()),
    }
}

/// `in next 5 sts`, `in BLO of each st around`.
pub(super) fn place(input: &mut Input<'_>) -> Res<(Target, Option<Loops>)> {
    let through = (loops, opt((word(&["of"]), articles))).map(|(loops, _)| loops);
    let (_, loops, target, after) =
        (preposition, opt(through), target, opt((opt(preposition), loops).map(|(_, loops)| loops)))
            .parse_next(input)?;
    Ok((target, loops.or(after)))
}

/// `* 6` after brackets; before a stitch the asterisk begins a repeat of its own.
pub(super) fn starred(input: &mut Input<'_>) -> Res<u32> {
    let (_, number, times) = (sign('*'), number, opt(word(&["times", "time"]))).parse_next(input)?;
    if times.is_some() {
        return Ok(number);
    }
    let goes_on = input.peek_token().is_some_and(|token| token.word().is_some() || token.kind == Kind::Dash(false));
    if goes_on { Err(()) } else { Ok(number) }
}

/// How often something in brackets or together is done.
pub(super) fn times(input: &mut Input<'_>) -> Res<Times> {
    let word_times = alt((word(&["once"]).value(1), word(&["twice"]).value(2), word(&["thrice"]).value(3)));
    let counted = (opt(word(&["x"])), number, opt(word(&["x"])), opt(word(&["more"])), word(&["times", "time"]));
    let before = (word(&["x"]), number).map(|(_, number)| number);
    let short = alt((before, starred, (number, word(&["x"])).map(|(number, _)| number)));
    let total = opt(alt(((word(&["in"]), word(&["all", "total"])).void(), word(&["total", "altogether"]))));
    let of = opt((word(&["a"]), word(&["total"]), word(&["of"])));
    let counted = counted.map(|(_, number, ..)| number);
    // `6 times around` is 6 times.
    let exact = (of, alt((word_times, counted, short)), total, opt(word(&["around"])));
    // `[sc, inc] repeat 6 times` is 6 in all, `repeat 5 more times` as well.
    let pair = opt((open, close));
    let again = (word(AGAIN), pair, opt(word(&["for"])), alt((word_more, short_more)));
    alt((
        again.map(|(.., (number, more))| Times::Exactly(number.saturating_add(u32::from(more)))),
        exact.map(|(_, number, ..)| Times::Exactly(number)),
        (opt((word(AGAIN), opt((open, close)))), around).map(|(_, times)| times),
    ))
    .parse_next(input)
}

/// `x 6`, `6x`.
pub(super) fn short_more(input: &mut Input<'_>) -> Res<(u32, bool)> {
    let before = (word(&["x"]), number, opt(word(&["times"]))).map(|(_, number, _)| number);
    alt((before, (number, word(&["x"])).map(|(number, ())| number))).map(|number| (number, false)).parse_next(input)
}

/// `5 times`, `5 more times`, `5 times more`, `twice`, `once more`; true where it says more.
pub(super) fn word_more(input: &mut Input<'_>) -> Res<(u32, bool)> {
    let more = || opt(word(&["more"])).map(|more| more.is_some());
    let counted =
        (number, more(), word(&["times", "time"]), more()).map(|(number, before, (), after)| (number, before || after));
    let spelled = alt((word(&["once"]).value(1), word(&["twice"]).value(2), word(&["thrice"]).value(3)));
    alt((counted, (spelled, more()))).parse_next(input)
}
