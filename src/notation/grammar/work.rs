//! Stitches, skips and brackets.

use super::colour::in_colour;
use super::place::{Target, around, each, each_unsaid, next, place, short_more, space_alone, times};
use super::shaping::{alternate, every};
use super::special::{crossed_pairs, long_together, rounds_below, spiked};
use super::words::*;
use super::{Clause, DEEPEST, Input, Res, paused, separator, stops};
use crate::craft::{Build, Loops, Made, Op, Spot, Stitch};
use crate::notation::lex::{Kind, Token};
use crate::notation::tree::{Act, Item, Times};
use crate::notation::written::Doubt;
use crate::report::Place;
use winnow::combinator::{alt, not, opt, peek, repeat};
use winnow::prelude::*;
use winnow::token::any;

/// `sc2tog` as one word, `sc 2 tog`.
pub(super) fn together_word(input: &mut Input<'_>) -> Res<(Stitch, u32)> {
    let vocabulary = input.state.vocabulary;
    let one = take(move |token: &Token| {
        let word = token.word()?.strip_suffix("tog")?;
        let stem = word.trim_end_matches(|c: char| c.is_ascii_digit());
        Some((vocabulary.stem(stem)?, word.get(stem.len()..)?.parse().ok()?))
    });
    let spaced = (stitch, opt(word(&["next"])), number, opt(stitches_word), word(&["tog", "together"]));
    let long = long_together;
    // Two or more stitches of a kind that counts.
    let several = |(stitch, number): &(Stitch, u32)| *number > 1 && *stitch != Stitch::CH && stitch.row().counts > 0;
    alt((one, long, spaced.map(|(stitch, _, number, ..)| (stitch, number)))).verify(several).parse_next(input)
}

/// `scinc`, `dc2inc`, `sc3inc`, `scdec`: stitch and shaping in one word.
fn shaped_word(input: &mut Input<'_>) -> Res<Op> {
    let vocabulary = input.state.vocabulary;
    take(move |token: &Token| {
        let word = token.word()?;
        let (stem, up) = match word.strip_suffix("inc") {
            Some(stem) => (stem, true),
            None => (word.strip_suffix("dec")?, false),
        };
        let name = stem.trim_end_matches(|c: char| c.is_ascii_digit());
        let stitch = vocabulary.stem(name).filter(|stitch| stitch.is_plain_fabric())?;
        let count: u32 = stem.get(name.len()..)?.parse().unwrap_or(2);
        let fits = (2..=crate::limits::ROUND_WORDS as u32).contains(&count);
        fits.then(|| if up { Op::increase(stitch, count) } else { Op::decrease(stitch, count) })
    })
    .parse_next(input)
}

/// What is made, how many, and whether the number may also say in how many stitches.
pub(super) struct What {
    pub(super) op: Op,
    pub(super) number: Option<u32>,
    /// True for a stitch of the maker's own, of which several are so many of all that it makes.
    pub(super) own: bool,
}

pub(super) fn what(input: &mut Input<'_>) -> Res<What> {
    let main = input.state.main;
    let number = how_many(input)?;
    if number.is_some() {
        opt(word(&["more", "additional", "further"])).parse_next(input)?;
    }
    let before = opt(loops).parse_next(input)?;
    let shell = (number_of_shell(number), word(&["shell", "shells", "sh"]));
    // `2-sc inc`.
    let so_many = ((peek(dash), number_of_shell(number)), word(UP)).map(|((_, op), ())| op);
    let together = together_word.map(|(stitch, count)| Op::decrease(stitch, count));
    let hyphen = || opt(take(|token: &Token| (token.kind == Kind::Dash(false)).then_some(())));
    let increase = (opt(stitch), hyphen(), word(UP)).map(|(stitch, ..)| stitch);
    // `double each stitch`.
    let double = (word(&["double"]), peek(word(EACH))).map(|_| None);
    let increase = alt((increase, double));
    let unseen = || opt(word(&["inv", "invisible", "simple", "regular"]));
    let decrease = (unseen(), opt(stitch), hyphen(), unseen(), word(DOWN)).map(|(_, stitch, ..)| stitch);
    // `increase 1 in next st` is one increase, and so is `dec 1 sc`.
    let single = || super::words::number.verify(|one| *one == 1);
    let of = || alt((stitch.map(Some), stitches_word.value(None)));
    let of_one = || alt((peek(preposition).value(None), (of(), peek(alt((preposition, stops)))).map(|(of, ())| of)));
    let one = || opt((single(), of_one()).map(|(_, of)| of)).map(Option::flatten);
    // `a shell of 5 dc`, `group of 3 dc`; looked for first, so that a bare shell is told as one.
    let groups = ["shell", "shells", "fan", "fans", "group", "groups", "set"];
    let rest = input.peek_slice(input.eof_offset());
    let of = rest.first().and_then(Token::word).is_some_and(|word| groups.contains(&word))
        && rest.get(1).and_then(Token::word) == Some("of");
    if of && number.is_none() {
        let (_, _, count, stitch) = (any, any, super::words::number, stitch).parse_next(input)?;
        return Ok(What { op: Op::increase(stitch, count), number: None, own: false });
    }
    let rest = input.peek_slice(input.eof_offset());
    let is_own = input.state.own.iter().any(|own| own.taken(rest).is_some());
    let own = own_stitch.map(|made| Op { into: Spot::Stitch, consumed: 1, made, loops: Loops::Both });
    let (mut op, number) = alt((
        own.map(|op| (op, number)),
        alt((shell.map(|(op, _)| op), so_many)).map(|op| (op, None)),
        together.map(|op| (op, number)),
        shaped_word.map(|op| (op, number)),
        (increase, one()).map(move |(stitch, of)| (Op::increase(stitch.or(of).unwrap_or(main), 2), number)),
        (decrease, one()).map(move |(stitch, of)| (Op::decrease(stitch.or(of).unwrap_or(main), 2), number)),
        stitch.map(|stitch| (Op::plain(stitch), number)),
    ))
    .parse_next(input)?;
    let after = opt(loops).parse_next(input)?;
    op.loops = before.or(after).unwrap_or_default();
    Ok(What { op, number, own: is_own })
}

/// `5-dc` of a `5-dc shell`; the number was taken before.
pub(super) fn number_of_shell<'i>(number: Option<u32>) -> impl Parser<Input<'i>, Op, ()> {
    move |input: &mut Input<'i>| {
        let (_, stitch) = (opt(dash), stitch).parse_next(input)?;
        number.map(|number| Op::increase(stitch, number)).ok_or(())
    }
}

/// A stitch, where it goes, how often.
pub(super) fn work(input: &mut Input<'_>) -> Res<Clause> {
    let place_of_work = input.peek_token().map(|token| token.place).unwrap_or_default();
    opt((who, opt(sign(',')))).parse_next(input)?;
    let verb = opt((word(VERBS), opt(word(&["off"])))).parse_next(input)?.is_some();
    if let Some(act) = opt(alt((every, alternate))).parse_next(input)? {
        return Ok(Clause::Do(vec![item(act, place_of_work, input)]));
    }
    opt((word(&["beg", "beginning", "turning", "starting"]), peek(word(&["ch", "chain"])))).parse_next(input)?;
    if let Some(act) = opt(crossed_pairs).parse_next(input)? {
        return Ok(Clause::Do(vec![item(act, place_of_work, input)]));
    }
    if let Some(act) = opt(run_together).parse_next(input)? {
        return Ok(Clause::Do(vec![item(act, place_of_work, input)]));
    }
    articles(input)?;
    opt(how_tight).parse_next(input)?;
    let mut what = match opt(|input: &mut Input<'_>| several_as_one(input, verb)).parse_next(input)? {
        Some(op) => What { op, number: None, own: false },
        None => what(input)?,
    };
    opt(how_tight).parse_next(input)?;
    let plain = matches!(what.op.made, Made::Same(_, 1)) && what.op.into == Spot::Stitch;
    if let Made::Same(Stitch::CH, _) = what.op.made {
        let after = opt((opt(dash), number)).parse_next(input)?.map(|(_, number)| number);
        opt(how_tight).parse_next(input)?;
        // `6 ch 2` says two numbers.
        if after.is_some() && what.number.is_some() {
            return Err(());
        }
        let chains = Op::chains(after.or(what.number).unwrap_or(1));
        return Ok(Clause::Do(vec![item(Act::Run(chains, Times::Exactly(1)), place_of_work, input)]));
    }
    // `sc 6 in ring` is `6 sc in ring`.
    if what.number.is_none() && plain {
        what.number = opt((number, peek((peek(preposition), place))).map(|(number, _)| number)).parse_next(input)?;
    }
    let each_round = (preposition, word(&["each", "every", "both", "all"]), round_word);
    let each_round = what.number.is_some() && opt(peek(each_round)).parse_next(input)?.is_some();
    let bare = next.map(|target| (target, None));
    let bare = (peek(word(&["next"])), bare).map(|(_, found)| found);
    // `sc 3 sts`.
    let so_many =
        (number, stitches_word).map(|(number, ())| Target::Next(Unit::Stitch(None), Times::Exactly(number), false));
    let unsaid = what.number.is_none() && plain;
    let so_many = so_many.verify(move |_| unsaid).map(|target| (target, None));
    let bare = alt((bare, so_many, each_unsaid.map(|target| (target, None))));
    // `dc, ch 1, dc all in next st`.
    opt((word(&["all"]), peek(word(&["in", "into"])))).parse_next(input)?;
    let over = opt(peek(word(&["over", "across"]))).parse_next(input)?.is_some();
    if !each_round && let Some((target, loops)) = opt(alt((place, bare))).parse_next(input)? {
        // `sc in next st 2 rnds below`.
        if let Some(rounds) = opt(rounds_below).parse_next(input)? {
            what.op.made = spiked(&what.op.made, rounds).ok_or(())?;
        }
        let hook = match (target, &what.op.made) {
            (Target::FromHook(nth), Made::Same(stitch, 1)) => Some((nth, Op::plain(*stitch))),
            _ => None,
        };
        let act = match &hook {
            Some((_, op)) => Act::Run(op.clone(), Times::Exactly(what.number.unwrap_or(1))),
            None if over => over_several(&what, target).map_or_else(|| aim(&what, target, loops), Ok)?,
            None => aim(&what, target, loops)?,
        };
        let mut items = vec![item(act, place_of_work, input)];
        let doubt = match target {
            Target::Next(Unit::Stitch(Some(kind)), ..) => Some(Doubt::Onto(place_of_work, kind)),
            Target::Next(..) | Target::Same { .. } | Target::Ring | Target::FromHook(_) | Target::Skipped => None,
        };
        input.state.doubts.borrow_mut().extend(doubt);
        if let Target::Next(Unit::Stitch(_), Times::Exactly(2..), false) = target
            && plain
            && what.number.is_some_and(|number| target_is(&target, number))
        {
            input.state.doubts.borrow_mut().push(Doubt::Each(place_of_work));
        }
        let mut more =
            (word(&["and"]), opt(preposition), articles, alt((each, next, space_alone))).map(|(.., target)| target);
        while let Some(target) = opt(more.by_ref()).parse_next(input)? {
            items.push(item(aim(&what, target, loops)?, place_of_work, input));
        }
        opt(in_colour).parse_next(input)?;
        if let Some((nth, _)) = hook {
            return Ok(Clause::FromHook(nth, items));
        }
        return Ok(Clause::Do(items));
    }
    // `48 sc in each round` tells how many a round has.
    let mut rounds = (preposition, word(&["each", "every", "both", "all"]), round_word);
    if each_round {
        rounds.parse_next(input)?;
    }
    opt(in_colour).parse_next(input)?;
    let through = opt((preposition, loops).map(|(_, loops)| loops)).parse_next(input)?;
    let op = match through {
        Some(loops) => what.op.under(loops),
        None => what.op,
    };
    let op = if matches!(op.made, Made::Same(stitch, _) if stitch.row().build == Build::Picot) {
        Op { into: Spot::Air, consumed: 0, ..op }
    } else {
        op
    };
    // `1 inc x 6` is six of them.
    if what.number == Some(1) && opt(peek(short_more)).parse_next(input)?.is_some() {
        what.number = None;
    }
    let often = match (what.number, plain) {
        (Some(number), _) => Times::Exactly(number),
        (None, true) => {
            let often = alt((short_more.map(|(number, _)| number), number)).map(Times::Exactly);
            opt(alt((around, often))).parse_next(input)?.unwrap_or(Times::Exactly(1))
        }
        (None, false) => {
            let after = alt((times, around, number.map(Times::Exactly)));
            opt(after).parse_next(input)?.unwrap_or(Times::Exactly(1))
        }
    };
    opt(in_colour).parse_next(input)?;
    if matches!(often, Times::Exactly(_)) && through.is_none() {
        input.state.doubts.borrow_mut().push(Doubt::Bare(place_of_work));
    }
    Ok(Clause::Do(vec![item(Act::Run(op, often), place_of_work, input)]))
}

/// `loosely`, `(not too tightly)`: nothing that counts.
fn how_tight(input: &mut Input<'_>) -> Res<()> {
    let how = || {
        let lead = repeat::<_, (), (), _, _>(0.., word(&["not", "too", "very", "quite", "fairly"]));
        (lead, word(&["loosely", "tightly", "loose", "tight"])).void()
    };
    alt((how(), (open, how(), close).void())).parse_next(input)
}

/// `sc the next 2 sts together`, `2 sc as 1 sc`: so many as one; of which stitch, where nothing says that, the verb has to
/// lead.
fn several_as_one(input: &mut Input<'_>, verb: bool) -> Res<Op> {
    let main = input.state.main;
    let named = opt((stitch, opt(word(&["over", "through", "across"])))).parse_next(input)?;
    let (_, _, number) = (articles, opt(word(&["next", "following", "foll", "first"])), number).parse_next(input)?;
    let unit = opt(unit).parse_next(input)?;
    let single = super::words::number.verify(|one| *one == 1);
    let one = (word(&["as", "into"]), single, opt(alt((stitch.void(), stitches_word)))).void();
    alt((word(&["tog", "together"]), one)).parse_next(input)?;
    let of = match (named, unit) {
        (Some((stitch, _)), _) | (None, Some(Unit::Stitch(Some(stitch)))) => stitch,
        (None, Some(Unit::Stitch(None))) | (None, None) => main,
        (None, Some(Unit::Space(_))) => return Err(()),
    };
    let said = verb || named.is_some() || unit.is_some();
    let fits = said && number > 1 && of != Stitch::CH && of.row().counts > 0;
    if fits { Ok(Op::decrease(of, number)) } else { Err(()) }
}

/// `2 sc inc x 6`: without a comma, both so often.
fn run_together(input: &mut Input<'_>) -> Res<Act> {
    let start = input.peek_token().map(|token| token.place).unwrap_or_default();
    let up = word(&["inc", "increase"]).value(true);
    let down = word(&["dec", "decrease"]).value(false);
    let (number, stitch, up, times) = (number, stitch, alt((up, down)), times).parse_next(input)?;
    let shaped = if up { Op::increase(stitch, 2) } else { Op::decrease(stitch, 2) };
    let body = [(Op::plain(stitch), number), (shaped, 1)];
    let body = body.map(|(op, number)| Item { act: Act::Run(op, Times::Exactly(number)), place: start });
    Ok(Act::Repeat(body.to_vec(), times))
}

/// `2-dc cluster over next 2 sts`: so many stitches together.
fn over_several(what: &What, target: Target) -> Option<Act> {
    let Target::Next(Unit::Stitch(None), Times::Exactly(stitches), false) = target else { return None };
    let Made::Same(cluster, 1) = what.op.made else { return None };
    let row = cluster.row();
    let leg = cluster.built_of().filter(|_| row.build == Build::Cluster && what.number.is_none())?;
    let fits = stitches > 1 && u32::from(row.stems) == stitches;
    fits.then(|| Act::Run(Op::decrease(leg, stitches), Times::Exactly(1)))
}

/// True where it is just so many stitches.
fn target_is(target: &Target, number: u32) -> bool {
    matches!(target, Target::Next(_, Times::Exactly(stitches), _) if *stitches == number)
}

/// The operation that puts what is made where it goes.
pub(super) fn aim(what: &What, target: Target, loops: Option<Loops>) -> Res<Act> {
    let op = match loops {
        Some(loops) => what.op.clone().under(loops),
        None => what.op.clone(),
    };
    let many = match (&op.made, what.number) {
        (Made::Same(stitch, 1), Some(number)) if op.into == Spot::Stitch => Made::Same(*stitch, number),
        (made, Some(number)) if what.own => made.times(number).ok_or(())?,
        (made, _) => made.clone(),
    };
    match target {
        Target::Same { space } => Ok(Act::Same { made: many, space }),
        Target::Ring => match (&op.made, what.number) {
            (Made::Same(stitch, 1), number) => {
                Ok(Act::Run(Op::into_ring(*stitch).under(op.loops), Times::Exactly(number.unwrap_or(1))))
            }
            (made, number) => {
                let often = number.filter(|_| what.own).unwrap_or(1);
                Ok(Act::Run(Op { consumed: 0, made: made.clone(), ..op }, Times::Exactly(often)))
            }
        },
        Target::FromHook(_) => Err(()),
        Target::Skipped => match (&op.made, op.into) {
            (Made::Same(stitch, 1), Spot::Stitch) => Ok(Act::Skipped(Op::plain(*stitch).under(op.loops))),
            _ => Err(()),
        },
        Target::Next(Unit::Space(chains), often, _) => {
            Ok(Act::Run(Op { into: Spot::Space, consumed: chains, made: many, loops: op.loops }, often))
        }
        Target::Next(Unit::Stitch(_), often, each) => match (op.into, often) {
            (Spot::Together, Times::Exactly(stitches)) if stitches % op.consumed == 0 => {
                let often = Times::Exactly(stitches / op.consumed);
                Ok(Act::Run(op, often))
            }
            // `5 sc in next 5 sts` is one in each.
            (Spot::Stitch, Times::Exactly(stitches)) if !each && what.number == Some(stitches) && stitches > 1 => {
                Ok(Act::Run(op, often))
            }
            (Spot::Stitch, _) => Ok(Act::Run(Op { made: many, ..op }, often)),
            (Spot::Together | Spot::Crossed | Spot::Space | Spot::Air | Spot::Skip, _) => Ok(Act::Run(op, often)),
        },
    }
}

/// An item that stands from `start` up to where the input is now.
pub(super) fn item(act: Act, start: Place, input: &Input<'_>) -> Item {
    let last = input.previous_tokens().next().map(|token| token.place);
    let end = last.map_or(start.offset, |place| place.offset + place.length);
    Item { act, place: Place { length: end.saturating_sub(start.offset), ..start } }
}

pub(super) fn skip(input: &mut Input<'_>) -> Res<Clause> {
    let start = input.peek_token().map(|token| token.place).unwrap_or_default();
    let which =
        alt((ordinal.verify(|nth| *nth == 1).value(true), word(&["next", "last", "following", "foll"]).value(false)));
    let lead = (word(&["sk", "skip", "miss", "skipping", "missing"]), articles, opt(which));
    let ((.., first), number, own) = (lead, how_many, opt(own_stitch)).parse_next(input)?;
    // `sk next V-st`: all that it makes.
    let whole = own.map(|made| made.count());
    let unit = if whole.is_some() { None } else { opt(unit).parse_next(input)? };
    let first = first == Some(true);
    let each = match unit {
        None if whole.is_some() => whole.unwrap_or(1),
        Some(Unit::Space(chains)) => chains.max(1),
        Some(Unit::Stitch(_)) | None => 1,
    };
    let op = Op::skip(number.unwrap_or(1).saturating_mul(each));
    if first && op.consumed == 1 {
        return Ok(Clause::SkipFirst(item(Act::Run(op, Times::Exactly(1)), start, input)));
    }
    Ok(Clause::Do(vec![item(Act::Run(op, Times::Exactly(1)), start, input)]))
}

/// Brackets: a repeat, or stitches that all go in one place.
pub(super) fn bracket(input: &mut Input<'_>, depth: u32, before: Option<u32>) -> Res<Clause> {
    let start = input.peek_token().map(|token| token.place).unwrap_or_default();
    open(input)?;
    if depth >= DEEPEST {
        input.state.too_deep.set(true);
        return Err(());
    }
    let mut body = Vec::new();
    while opt(close).parse_next(input)?.is_none() {
        if opt(separator).parse_next(input)?.is_some() {
            continue;
        }
        body.push(match opt(bare_number).parse_next(input)? {
            Some(found) => found,
            None => paused(input, depth + 1)?,
        });
    }
    let items = crate::notation::assemble::items(body).ok_or(())?;
    if let Some(often) = before {
        return Ok(Clause::Do(vec![item(Act::Repeat(items, Times::Exactly(often)), start, input)]));
    }
    opt((word(&["all"]), peek(word(&["in", "into", "to"])))).parse_next(input)?;
    opt((alt((sign('*'), sign(','), sign(';'))), peek(word(AGAIN)))).parse_next(input)?;
    // `sc, inc, (sc, inc) 5 times more`: what stands before it may be the first.
    let more =
        alt(((number, word(&["more"]), word(&["times", "time"])), (number, word(&["times", "time"]), word(&["more"]))));
    if let Some((number, ..)) = opt(more).parse_next(input)? {
        input.state.doubts.borrow_mut().push(Doubt::Often(start, number.saturating_add(1)));
        return Ok(Clause::Do(vec![item(Act::Repeat(items, Times::Exactly(number)), start, input)]));
    }
    if let Some(often) = opt(times).parse_next(input)? {
        // `(dc, ch 1) 8 times in ring`; where there is no ring that is told.
        if input.state.first {
            opt((preposition, articles, alt((magic, word(&["ring", "circle", "loop"]))))).parse_next(input)?;
        }
        // `(puff, ch 1) twice in each ch-1 sp`: all of it there.
        if let Times::Exactly(number) = often
            && number <= MOST_THERE
            && let Some((target, after)) = opt(place.verify(|(target, _)| one_place(target))).parse_next(input)?
        {
            let all: Vec<Item> = (0..number).flat_map(|_| items.clone()).collect();
            return all_there(&all, (target, after), start, input);
        }
        return Ok(Clause::Do(vec![item(Act::Repeat(items, often), start, input)]));
    }
    if let Some(often) = opt(right_behind).parse_next(input)? {
        return Ok(Clause::Do(vec![item(Act::Repeat(items, Times::Exactly(often)), start, input)]));
    }
    let unsaid = each_unsaid.map(|target| (target, None));
    let (before, (target, after)) = (opt(loops), alt((place, unsaid))).parse_next(input)?;
    let loops = before.or(after);
    all_there(&items, (target, loops), start, input)
}

/// More than so much nobody works into one place.
const MOST_THERE: u32 = 24;

/// True where it says that all goes into one place, or into each.
const fn one_place(target: &Target) -> bool {
    matches!(target, Target::Next(_, _, true) | Target::Next(Unit::Space(_), ..) | Target::Same { .. })
}

/// `[sc, inc]6`: a number right behind its bracket; with a blank it would be the count.
fn right_behind(input: &mut Input<'_>) -> Res<u32> {
    let end = input.previous_tokens().next().map(|token| token.start + token.place.length);
    let often = take(move |token: &Token| token.number().filter(|_| Some(token.start) == end));
    let ends = alt((winnow::combinator::eof.void(), open, sign(','), sign('.'), sign(';'), sign('='), dash));
    (often, peek(ends)).map(|(often, ())| often).parse_next(input)
}

/// Stitches that all go to one place.
fn all_there(items: &[Item], (target, loops): (Target, Option<Loops>), start: Place, input: &Input<'_>) -> Res<Clause> {
    let made = together_in_one(items).ok_or(())?;
    let op = Op { into: Spot::Stitch, consumed: 1, made, loops: loops.unwrap_or_default() };
    if let Target::Next(Unit::Stitch(Some(kind)), ..) = target {
        input.state.doubts.borrow_mut().push(Doubt::Onto(start, kind));
    }
    Ok(Clause::Do(vec![item(all_in(op, target)?, start, input)]))
}

/// `in next sp make 4 dc, ch 2 and 4 dc`: the place, then all that goes there.
pub(super) fn placed(input: &mut Input<'_>) -> Res<Clause> {
    let start = input.peek_token().map(|token| token.place).unwrap_or_default();
    let (target, loops) = place(input)?;
    opt(sign(',')).parse_next(input)?;
    let verb = opt(alt((word(&["work", "make", "crochet", "do"]), sign(':')))).parse_next(input)?.is_some();
    let items = if input.peek_token().is_some_and(|token| matches!(token.kind, Kind::Open(_))) {
        open(input)?;
        let mut items = vec![loose(input)?];
        while opt(close).parse_next(input)?.is_none() {
            separator(input)?;
            opt(separator).parse_next(input)?;
            items.push(loose(input)?);
        }
        items
    } else if !verb && opt(peek((how_many, stitch))).parse_next(input)?.is_some() {
        // `in ring 6 sc`, `in next st 2 sc`.
        vec![loose(input)?]
    } else if verb {
        let mut items = vec![loose(input)?];
        while let Some(next) =
            opt((separator, opt(separator), loose, not(peek(alt((preposition, word(&["next"]))))))).parse_next(input)?
        {
            items.push(next.2);
        }
        items
    } else {
        return Err(());
    };
    opt(word(&["all"])).parse_next(input)?;
    all_there(&items, (target, loops), start, input)
}

/// Stitches that are all made in one place, which is told elsewhere: `dc, ch 1, dc`, with brackets or without.
pub(crate) fn made_in_one(input: &mut Input<'_>) -> Res<Made> {
    opt(word(&["work", "make", "working"])).parse_next(input)?;
    let bracketed = opt(open).parse_next(input)?.is_some();
    let mut items = vec![loose(input)?];
    while let Some((_, _, next)) = opt((separator, opt(separator), loose)).parse_next(input)? {
        items.push(next);
    }
    if bracketed {
        close(input)?;
    }
    opt(word(&["all"])).parse_next(input)?;
    together_in_one(&items).ok_or(())
}

/// `*2 sc* in each st`: asterisks around what goes in one place.
pub(super) fn starred_there(input: &mut Input<'_>) -> Res<Clause> {
    let start = input.peek_token().map(|token| token.place).unwrap_or_default();
    let star = || take(|token: &Token| (token.kind == Kind::Sign('*')).then_some(()));
    star().parse_next(input)?;
    let mut items = vec![loose(input)?];
    while let Some((_, _, next)) = opt((separator, opt(separator), loose)).parse_next(input)? {
        items.push(next);
    }
    star().parse_next(input)?;
    opt(word(&["all"])).parse_next(input)?;
    let place = place(input)?;
    all_there(&items, place, start, input)
}

/// Stitches or chains whose place is told elsewhere.
fn loose(input: &mut Input<'_>) -> Res<Item> {
    let start = input.peek_token().map(|token| token.place).unwrap_or_default();
    let what = what(input)?;
    let after = opt((opt(dash), number)).parse_next(input)?.map(|(_, number)| number);
    if after.is_some() && what.number.is_some() {
        return Err(());
    }
    let number = after.or(what.number).unwrap_or(1);
    let act = match what.op.made {
        Made::Same(Stitch::CH, _) => Act::Run(Op::chains(number), Times::Exactly(1)),
        Made::Same(..) | Made::Mixed(_) | Made::Nothing => Act::Run(what.op, Times::Exactly(number)),
    };
    Ok(item(act, start, input))
}

/// How many tokens are the name of a group whose stitches stand in brackets behind it: `V-st`, `shell`.
pub(super) fn group_name(tokens: &[Token]) -> usize {
    let word =
        |at: usize, words: &[&str]| tokens.get(at).and_then(Token::word).is_some_and(|word| words.contains(&word));
    let dash = usize::from(tokens.get(1).is_some_and(|token| matches!(token.kind, Kind::Dash(_))));
    let length = match () {
        () if word(0, &["v", "y"]) && word(1 + dash, &["st", "stitch"]) => 2 + dash,
        () if word(0, &["shell", "fan", "group", "cluster"]) => 1,
        () => 0,
    };
    let opens = tokens.get(length).is_some_and(|token| matches!(token.kind, Kind::Open(_)));
    if opens { length } else { 0 }
}

/// Several stitches in one place.
fn all_in(op: Op, target: Target) -> Res<Act> {
    Ok(match target {
        Target::Same { space } => Act::Same { made: op.made, space },
        Target::Ring => Act::Run(Op { consumed: 0, ..op }, Times::Exactly(1)),
        Target::Next(Unit::Stitch(_), often, _) => Act::Run(op, often),
        Target::Next(Unit::Space(chains), often, _) => {
            Act::Run(Op { into: Spot::Space, consumed: chains, ..op }, often)
        }
        Target::FromHook(_) | Target::Skipped => return Err(()),
    })
}

/// The number of `(3, inc) x 6`: so many of the stitch that the round is worked in.
fn bare_number(input: &mut Input<'_>) -> Res<Clause> {
    let start = input.peek_token().map(|token| token.place).unwrap_or_default();
    let main = input.state.main;
    let pause = alt((sign(',').void(), sign(';').void(), close));
    let (number, ()) = (number, peek(pause)).parse_next(input)?;
    Ok(Clause::Do(vec![item(Act::Run(Op::plain(main), Times::Exactly(number)), start, input)]))
}

/// `2 in each`, `1 in next`: of the stitch that the round is worked in.
pub(super) fn number_in_place(input: &mut Input<'_>) -> Res<Clause> {
    let start = input.peek_token().map(|token| token.place).unwrap_or_default();
    let what = What { op: Op::plain(input.state.main), number: Some(number(input)?), own: false };
    let (target, loops) = place(input)?;
    match target {
        Target::Next(Unit::Stitch(_), ..) => Ok(Clause::Do(vec![item(aim(&what, target, loops)?, start, input)])),
        Target::Next(Unit::Space(_), ..) | Target::Same { .. } => Err(()),
        Target::Ring | Target::FromHook(_) | Target::Skipped => Err(()),
    }
}

/// The number of `inc, 2 (20)`, at the end of all work.
pub(super) fn number_before_count(input: &mut Input<'_>) -> Res<Clause> {
    let start = input.peek_token().map(|token| token.place).unwrap_or_default();
    let main = input.state.main;
    let (number, _) = (number, peek((open, super::counts::counts_list, close))).parse_next(input)?;
    Ok(Clause::Do(vec![item(Act::Run(Op::plain(main), Times::Exactly(number)), start, input)]))
}

/// The stitches of a bracket as made in one place; nothing where some of them can't be.
pub(super) fn together_in_one(items: &[Item]) -> Option<Made> {
    let mut runs: Vec<(Stitch, u32)> = Vec::new();
    for item in items {
        let Act::Run(Op { into: Spot::Stitch | Spot::Air, made, .. }, Times::Exactly(times)) = &item.act else {
            return None;
        };
        runs.extend(made.times(*times)?.runs());
    }
    Made::of_runs(runs)
}
