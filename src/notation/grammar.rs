//! Tokens of one round → clauses: what is said between two commas.
//!
//! Built from winnow parsers over tokens. Every check that fails notes how far it came, so that a complaint can point at
//! the word that could not be read and not at the start of its clause.

use super::lex::{Kind, Token};
use super::tree::{Act, Item, Times};
use super::vocabulary::Vocabulary;
use crate::plan::{Made, Op, Spot};
use crate::report::Place;
use crate::stitch::{Build, Loops, Stitch};
use std::cell::Cell;
use winnow::combinator::{alt, eof, opt, repeat};
use winnow::prelude::*;
use winnow::stream::{Stateful, TokenSlice};

/// Brackets may stand in brackets so deep.
pub(crate) const DEEPEST: u32 = 12;

/// What the parsers know beside the tokens.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Context<'i> {
    pub(crate) vocabulary: &'i Vocabulary,
    /// The stitch that `inc` and `dec` mean.
    pub(crate) main: Stitch,
    /// Tokens left at the check that came furthest.
    pub(crate) furthest: &'i Cell<usize>,
    /// Set once brackets stand too deep in brackets.
    pub(crate) too_deep: &'i Cell<bool>,
}

pub(crate) type Input<'i> = Stateful<TokenSlice<'i, Token>, Context<'i>>;
type Res<T> = Result<T, ()>;

/// What is said between two commas.
#[derive(Clone, Debug, PartialEq)]
pub(crate) enum Clause {
    /// Things to do.
    Do(Vec<Item>),
    /// Stitches in the k-th chain from the hook: k, and them with what follows.
    FromHook(u32, Vec<Item>),
    /// One or two asterisks.
    Star,
    /// `rep from *`: again so often.
    Again(Times),
    /// Makes an adjustable ring.
    Ring,
    /// Joins chains to form a ring.
    FormRing,
    /// Joins the round; false says not to.
    Join(bool),
    /// Loops for the whole round.
    Loops(Loops),
    /// The yarn to use.
    Colour(String),
    /// What the chain before counts as.
    Counts(Counting),
    /// The count at the end.
    Count(Vec<(u32, Counted)>),
    /// Work a round as another one.
    As(u32),
    /// Turn the work.
    Turn,
    /// Something for the maker's hands that changes no stitch.
    Aside,
}

/// What a turning chain counts as.
#[derive(Clone, Debug, PartialEq)]
pub(crate) enum Counting {
    /// As nothing.
    No,
    /// As the first stitch, of this kind, and so many chains after it.
    Yes(Option<Stitch>, Loops, u32),
    /// With the stitches after it as so many together.
    Together(u32),
}

/// What a stated count counts.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Counted {
    /// Stitches of any kind.
    Stitches,
    /// One kind of stitch.
    Of(Stitch),
    /// Spaces of so many chains.
    Spaces(u32),
}

/// Takes one token that gives a value.
fn take<'i, T>(check: impl Fn(&'i Token) -> Option<T>) -> impl Parser<Input<'i>, T, ()> {
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

fn word<'i>(words: &'static [&'static str]) -> impl Parser<Input<'i>, (), ()> {
    take(move |token: &Token| token.word().filter(|word| words.contains(word)).map(drop))
}

fn sign<'i>(sign: char) -> impl Parser<Input<'i>, (), ()> {
    take(move |token: &Token| (token.kind == Kind::Sign(sign)).then_some(()))
}

/// A whole number in digits or as a small word.
fn number(input: &mut Input<'_>) -> Res<u32> {
    const WORDS: [&str; 13] =
        ["zero", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve"];
    let spelled = |word: &str| WORDS.iter().position(|known| *known == word).map(|index| index as u32);
    let value = move |token: &Token| token.number().or_else(|| token.word().and_then(spelled));
    take(move |token: &Token| value(token).filter(|number| *number > 0)).parse_next(input)
}

/// `2nd`, `second`.
fn ordinal(input: &mut Input<'_>) -> Res<u32> {
    const WORDS: [&str; 6] = ["first", "second", "third", "fourth", "fifth", "sixth"];
    take(|token: &Token| match &token.kind {
        Kind::Ordinal(number) => Some(*number),
        Kind::Word(word) => WORDS.iter().position(|known| known == word).map(|index| index as u32 + 1),
        Kind::Number(_) | Kind::Open(_) | Kind::Close(_) | Kind::Sign(_) | Kind::Dash(_) => None,
    })
    .parse_next(input)
}

fn open(input: &mut Input<'_>) -> Res<()> {
    take(|token: &Token| matches!(token.kind, Kind::Open(_)).then_some(())).parse_next(input)
}

fn close(input: &mut Input<'_>) -> Res<()> {
    take(|token: &Token| matches!(token.kind, Kind::Close(_)).then_some(())).parse_next(input)
}

fn dash(input: &mut Input<'_>) -> Res<()> {
    take(|token: &Token| matches!(token.kind, Kind::Dash(_)).then_some(())).parse_next(input)
}

fn stitch(input: &mut Input<'_>) -> Res<Stitch> {
    let rest = input.peek_slice(input.eof_offset());
    match input.state.vocabulary.stitch(rest) {
        Some((stitch, taken)) => {
            input.next_slice(taken);
            Ok(stitch)
        }
        None => take(|_| None).parse_next(input),
    }
}

fn articles(input: &mut Input<'_>) -> Res<()> {
    repeat(0.., word(&["the", "a", "an"])).parse_next(input)
}

fn stitches_word(input: &mut Input<'_>) -> Res<()> {
    word(&["st", "sts", "stitch", "stitches", "loop", "loops", "lp", "lps"]).parse_next(input)
}

/// What is worked into: a space under so many chains (0: whatever comes), or a stitch.
#[derive(Clone, Copy, PartialEq)]
enum Unit {
    Stitch,
    Space(u32),
}

fn unit(input: &mut Input<'_>) -> Res<Unit> {
    let chains = (
        word(&["ch", "chain"]),
        opt(dash),
        opt(number),
        opt(dash),
        word(&["sp", "sps", "space", "spaces", "loop", "lp"]),
    );
    let space = word(&["sp", "sps", "space", "spaces"]).value(Unit::Space(0));
    alt((
        chains.map(|(_, _, number, _, _)| Unit::Space(number.unwrap_or(0))),
        space,
        (stitch, opt(stitches_word)).value(Unit::Stitch),
        stitches_word.value(Unit::Stitch),
    ))
    .parse_next(input)
}

/// Where stitches go.
#[derive(Clone, Copy)]
enum Target {
    /// In so many stitches or spaces, one after another; true where it says each.
    Next(Unit, Times, bool),
    Same,
    Ring,
    FromHook(u32),
}

fn around(input: &mut Input<'_>) -> Res<Times> {
    let leave = (word(&["last"]), opt(number), opt(unit));
    let to_last =
        (word(&["to", "until", "except", "before"]), articles, leave).map(|(_, _, (_, number, _))| number.unwrap_or(1));
    let to_end =
        (word(&["to", "until"]), articles, word(&["end"]), opt((word(&["of"]), articles, round_word))).value(0);
    let all_round = (word(&["around", "across", "round"]), opt(to_last_after)).map(|(_, leave)| leave.unwrap_or(0));
    alt((all_round, to_end, to_last)).map(|leave| Times::Around { leave }).parse_next(input)
}

fn to_last_after(input: &mut Input<'_>) -> Res<u32> {
    let leave = (word(&["to", "until", "except"]), articles, word(&["last"]), opt(number), opt(unit));
    leave.map(|(_, _, _, number, _)| number.unwrap_or(1)).parse_next(input)
}

fn round_word(input: &mut Input<'_>) -> Res<()> {
    word(&["rnd", "rnds", "round", "rounds", "rd", "row", "rows"]).parse_next(input)
}

fn each(input: &mut Input<'_>) -> Res<Target> {
    let lead = (word(&["each", "every", "all"]), opt(word(&["rem", "remaining", "of"])), articles);
    let next = opt(word(&["next", "following", "foll", "rem", "remaining"]));
    let (_, _, number, unit) = (lead, next, opt(number), opt(unit)).parse_next(input)?;
    let unit = unit.unwrap_or(Unit::Stitch);
    opt((word(&["and"]), opt(word(&["each"])), self::unit)).parse_next(input)?;
    let times = opt(around).parse_next(input)?;
    let times = number.map(Times::Exactly).or(times).unwrap_or(Times::Around { leave: 0 });
    Ok(Target::Next(unit, times, true))
}

fn next(input: &mut Input<'_>) -> Res<Target> {
    let lead =
        (articles, word(&["next", "following", "foll", "first", "last", "rem", "remaining"]), opt(number), opt(unit));
    let counted = (number, unit).map(|(number, unit)| (number, Some(unit)));
    let (number, unit) =
        alt((lead.map(|(_, _, number, unit)| (number.unwrap_or(1), unit)), counted)).parse_next(input)?;
    Ok(Target::Next(unit.unwrap_or(Unit::Stitch), Times::Exactly(number), false))
}

fn target(input: &mut Input<'_>) -> Res<Target> {
    let lead = (articles, opt((word(&["center", "centre", "middle"]), word(&["of"]), articles)));
    let ring = alt((magic, word(&["ring", "circle"])));
    let same = (word(&["same"]), opt(unit), opt((word(&["as"]), word(&["join", "joining"])))).value(Target::Same);
    let hook = (ordinal, word(&["ch", "chain"]), word(&["from"]), opt(word(&["the"])), word(&["hook"]));
    (
        lead,
        alt((
            (opt(word(&["rem", "remaining"])), each).map(|(_, target)| target),
            hook.map(|(nth, ..)| Target::FromHook(nth)),
            (ring).value(Target::Ring),
            same,
            (opt((word(&["post"]), word(&["of"]), articles)), next).map(|(_, target)| target),
            space_alone,
        )),
    )
        .map(|(_, target)| target)
        .parse_next(input)
}

/// `in ch-2 sp`, without a word for which.
fn space_alone(input: &mut Input<'_>) -> Res<Target> {
    match unit.parse_next(input)? {
        space @ Unit::Space(_) => Ok(Target::Next(space, Times::Exactly(1), false)),
        Unit::Stitch => Err(()),
    }
}

fn magic(input: &mut Input<'_>) -> Res<()> {
    let long = (word(&["magic", "adjustable", "sliding"]), word(&["ring", "circle", "loop"])).void();
    alt((long, word(&["mr"]))).parse_next(input)
}

fn loops(input: &mut Input<'_>) -> Res<Loops> {
    let short = alt((word(&["blo", "bl"]).value(Loops::Back), word(&["flo", "fl"]).value(Loops::Front)));
    let side = alt((word(&["back"]).value(Loops::Back), word(&["front"]).value(Loops::Front)));
    let long = (articles, side, word(&["loop", "loops", "lp", "lps"])).map(|(_, side, _)| side);
    (alt((short, long)), opt(word(&["only"]))).map(|(loops, _)| loops).parse_next(input)
}

fn preposition(input: &mut Input<'_>) -> Res<()> {
    alt((
        word(&["in", "into", "to", "on", "over", "through", "around", "round", "under"]),
        (word(&["working"]), word(&["in", "into"])).void(),
    ))
    .parse_next(input)
}

/// `in next 5 sts`, `in BLO of each st around`.
fn place(input: &mut Input<'_>) -> Res<(Target, Option<Loops>)> {
    let through = (loops, opt((word(&["of"]), articles))).map(|(loops, _)| loops);
    let (_, loops, target, after) =
        (preposition, opt(through), target, opt((opt(preposition), loops).map(|(_, loops)| loops)))
            .parse_next(input)?;
    Ok((target, loops.or(after)))
}

/// How often something in brackets or together is done.
fn times(input: &mut Input<'_>) -> Res<Times> {
    let word_times = alt((word(&["once"]).value(1), word(&["twice"]).value(2), word(&["thrice"]).value(3)));
    let counted = (opt(word(&["x"])), number, opt(word(&["x"])), opt(word(&["more"])), word(&["times", "time"]));
    let short =
        alt(((word(&["x"]), number).map(|(_, number)| number), (number, word(&["x"])).map(|(number, _)| number)));
    let total = opt(alt(((word(&["in"]), word(&["all", "total"])).void(), word(&["total", "altogether"]))));
    let exact = (alt((word_times, counted.map(|(_, number, ..)| number), short)), total);
    alt((
        exact.map(|(number, _)| Times::Exactly(number)),
        (opt(word(&["rep", "repeat", "all"])), around).map(|(_, times)| times),
    ))
    .parse_next(input)
}

/// `rep from * around`, `rep from * 5 more times`: the value is how often in all.
fn again(input: &mut Input<'_>) -> Res<Clause> {
    let star = (repeat::<_, (), (), _, _>(1.., sign('*')), ());
    let from = (
        opt(word(&["from"])),
        articles,
        opt(word(&["first"])),
        star,
        opt((word(&["to"]), repeat::<_, (), (), _, _>(1.., sign('*')))),
    );
    let (_, _, _, _) =
        (word(&["rep", "repeat"]), opt(from), opt(sign(',')), opt(word(&["for", "all"]))).parse_next(input)?;
    let more = alt((
        (number, word(&["times", "time"]), word(&["in"]), word(&["all", "total"])).map(|(number, ..)| number),
        (opt(word(&["a"])), opt(word(&["total"])), opt(word(&["of"])), word_more)
            .map(|(_, _, _, more)| more.saturating_add(1)),
    ));
    alt((more.map(Times::Exactly), around)).map(Clause::Again).parse_next(input)
}

/// `5 more times`, `5 times more`, `twice`, `once more`.
fn word_more(input: &mut Input<'_>) -> Res<u32> {
    let counted =
        (number, opt(word(&["more"])), word(&["times", "time"]), opt(word(&["more"]))).map(|(number, ..)| number);
    let spelled = alt((word(&["once"]).value(1), word(&["twice"]).value(2), word(&["thrice"]).value(3)));
    alt((counted, (spelled, opt(word(&["more"]))).map(|(number, _)| number))).parse_next(input)
}

fn as_round(input: &mut Input<'_>) -> Res<Clause> {
    let lead = alt((word(&["rep", "repeat"]), (opt(word(&["same"])), word(&["as"]), opt(word(&["for"]))).void()));
    (lead, round_word, number).map(|(_, _, number)| Clause::As(number)).parse_next(input)
}

/// The end of the round, or what may follow its count.
fn end_or_pause(input: &mut Input<'_>) -> Res<()> {
    let start = input.checkpoint();
    let ends = input.next_token().is_none_or(|token| {
        matches!(token.kind, Kind::Sign(',' | ';' | '.'))
            || matches!(token.word(), Some("join" | "fasten" | "turn" | "do" | "sl" | "ss"))
    });
    input.reset(&start);
    if ends { Ok(()) } else { Err(()) }
}

fn counted(input: &mut Input<'_>) -> Res<(u32, Counted)> {
    let after = opt(alt((word(&["made", "total", "altogether"]), (word(&["in"]), word(&["all", "total"])).void())));
    let stitches = (opt(word(&["total"])), stitches_word).value(Counted::Stitches);
    let spaces = unit.verify_map(|unit| match unit {
        Unit::Space(chains) => Some(Counted::Spaces(chains.max(1))),
        Unit::Stitch => None,
    });
    (number, opt(alt((spaces, stitches, (stitch, opt(stitches_word)).map(|(stitch, _)| Counted::Of(stitch))))), after)
        .map(|(number, what, _)| (number, what.unwrap_or(Counted::Stitches)))
        .parse_next(input)
}

fn counts_list(input: &mut Input<'_>) -> Res<Vec<(u32, Counted)>> {
    let mut list = vec![counted(input)?];
    while let Some(next) = opt((alt((sign(','), word(&["and"]), sign('+'))), counted)).parse_next(input)? {
        list.push(next.1);
    }
    Ok(list)
}

/// The count of the round, in any of the usual positions.
fn count(input: &mut Input<'_>) -> Res<Clause> {
    let bracketed =
        (open, opt(sign('=')), counts_list, opt(sign('.')), close, count_follows).map(|(_, _, list, ..)| list);
    let dashed = (alt((dash, sign('='), sign(':'))), counts_list, end_or_pause).map(|(_, list, _)| list);
    let bare = (counts_list, end_or_pause)
        .verify_map(|(list, _)| list.iter().all(|(_, what)| *what == Counted::Stitches).then_some(list));
    alt((bracketed, dashed, bare)).map(Clause::Count).parse_next(input)
}

/// After a bracketed count comes no number of times and no place.
fn count_follows(input: &mut Input<'_>) -> Res<()> {
    let start = input.checkpoint();
    let goes_on = opt(alt((times.void(), place.void()))).parse_next(input)?.is_some();
    input.reset(&start);
    if goes_on { Err(()) } else { Ok(()) }
}

/// `(counts as dc)`, `(does not count as a st)`, with or without brackets.
fn counting(input: &mut Input<'_>) -> Res<Clause> {
    let throughout = opt((opt(sign(',')), word(&["here", "now"]), word(&["and"]), word(&["throughout"])));
    let bracketed = (open, counting_words, throughout, close).map(|(_, counting, ..)| counting);
    let bare =
        (counting_words, opt((word(&["here"]), word(&["and"]), word(&["throughout"])))).map(|(counting, _)| counting);
    alt((bracketed, bare)).map(Clause::Counts).parse_next(input)
}

fn counting_words(input: &mut Input<'_>) -> Res<Counting> {
    let chain = opt((opt(word(&["the", "this", "first"])), word(&["ch", "chain"]), opt(dash), opt(number)));
    let not = alt((
        (word(&["does", "do", "will"]), word(&["not"]), word(&["count"])).void(),
        (word(&["doesn't", "doesn’t", "don't", "don’t", "never"]), word(&["count", "counts"])).void(),
        (word(&["not"]), word(&["counted"])).void(),
    ));
    let as_stitch = opt((
        word(&["as"]),
        articles,
        opt(word(&["first", "beg", "1st"])),
        opt(ordinal),
        opt(number),
        opt(alt((stitch.void(), stitches_word))),
    ));
    let no = (not, as_stitch).value(Counting::No);
    alt(((chain, no).map(|(_, no)| no), counts_yes)).parse_next(input)
}

fn counts_yes(input: &mut Input<'_>) -> Res<Counting> {
    let chain = opt((opt(word(&["the", "this", "first"])), word(&["ch", "chain"]), opt(dash), opt(number)));
    (chain, word(&["counts", "count", "counted"])).parse_next(input)?;
    let lead =
        (opt(word(&["together"])), word(&["as"]), articles, opt(word(&["first", "beg"])), opt(ordinal), opt(number));
    if opt(lead).parse_next(input)?.is_none() {
        return Ok(Counting::Yes(None, Loops::Both, 0));
    }
    if let Some((_, number)) = opt(together_word).parse_next(input)? {
        return Ok(Counting::Together(number));
    }
    let named = alt((stitch.map(Some), stitches_word.value(None)));
    let (stitch, _, through) = (named, opt(stitches_word), opt((opt(preposition), loops))).parse_next(input)?;
    let loops = through.map_or(Loops::Both, |(_, loops)| loops);
    let chains = opt((alt((sign(','), word(&["and"]), sign('+'))), word(&["ch", "chain"]), opt(dash), number))
        .parse_next(input)?;
    Ok(Counting::Yes(stitch, loops, chains.map_or(0, |(_, _, _, number)| number)))
}

/// `sc2tog` as one word, `sc 2 tog`.
fn together_word(input: &mut Input<'_>) -> Res<(Stitch, u32)> {
    let vocabulary = input.state.vocabulary;
    let one = take(move |token: &Token| {
        let word = token.word()?.strip_suffix("tog")?;
        let stem = word.trim_end_matches(|c: char| c.is_ascii_digit());
        Some((vocabulary.stem(stem)?, word.get(stem.len()..)?.parse().ok()?))
    });
    let spaced = (stitch, opt(word(&["next"])), number, opt(stitches_word), word(&["tog", "together"]));
    alt((one, spaced.map(|(stitch, _, number, ..)| (stitch, number)))).parse_next(input)
}

/// What is made, how many, and whether the number may also say in how many stitches.
struct What {
    op: Op,
    number: Option<u32>,
}

fn what(input: &mut Input<'_>) -> Res<What> {
    let main = input.state.main;
    // The number of `5-dc popcorn` belongs to the name of the stitch.
    let named = input.state.vocabulary.stitch(input.peek_slice(input.eof_offset())).is_some();
    let number = if named { None } else { opt(number).parse_next(input)? };
    let before = opt(loops).parse_next(input)?;
    let shell = (number_of_shell(number), word(&["shell", "shells", "sh"]));
    let together = together_word.map(|(stitch, count)| Op::decrease(stitch, count.max(1)));
    let increase = (opt(stitch), word(&["inc", "increase", "incs"]))
        .map(move |(stitch, _)| Op::increase(stitch.unwrap_or(main), 2));
    let decrease = (opt(stitch), word(&["dec", "decrease", "decs", "invdec"]))
        .map(move |(stitch, _)| Op::decrease(stitch.unwrap_or(main), 2));
    let (mut op, number) = alt((
        shell.map(|(op, _)| (op, None)),
        together.map(|op| (op, number)),
        increase.map(|op| (op, number)),
        decrease.map(|op| (op, number)),
        stitch.map(|stitch| (Op::plain(stitch), number)),
    ))
    .parse_next(input)?;
    let after = opt(loops).parse_next(input)?;
    op.loops = before.or(after).unwrap_or_default();
    Ok(What { op, number })
}

/// `5-dc` of a `5-dc shell`; the number was taken before.
fn number_of_shell<'i>(number: Option<u32>) -> impl Parser<Input<'i>, Op, ()> {
    move |input: &mut Input<'i>| {
        let (_, stitch) = (opt(dash), stitch).parse_next(input)?;
        number.map(|number| Op::increase(stitch, number)).ok_or(())
    }
}

/// A stitch, where it goes, how often.
fn work(input: &mut Input<'_>) -> Res<Clause> {
    let place_of_work = input.peek_token().map(|token| token.place).unwrap_or_default();
    let what = what(input)?;
    let plain = matches!(what.op.made, Made::Same(_, 1)) && what.op.into == Spot::Stitch;
    if let Made::Same(Stitch::CH, _) = what.op.made {
        let after = opt((opt(dash), number)).parse_next(input)?.map(|(_, number)| number);
        let chains = Op::chains(after.or(what.number).unwrap_or(1));
        return Ok(Clause::Do(vec![item(Act::Run(chains, Times::Exactly(1)), place_of_work, input)]));
    }
    if let Some((target, loops)) = opt(place).parse_next(input)? {
        let hook = match (target, &what.op.made) {
            (Target::FromHook(nth), Made::Same(stitch, 1)) => Some((nth, Op::plain(*stitch))),
            _ => None,
        };
        let act = match &hook {
            Some((_, op)) => Act::Run(op.clone(), Times::Exactly(what.number.unwrap_or(1))),
            None => aim(&what, target, loops)?,
        };
        let mut items = vec![item(act, place_of_work, input)];
        let mut more = (word(&["and"]), opt(preposition), alt((each, next))).map(|(_, _, target)| target);
        while let Some(target) = opt(more.by_ref()).parse_next(input)? {
            items.push(item(aim(&what, target, loops)?, place_of_work, input));
        }
        if let Some((nth, _)) = hook {
            return Ok(Clause::FromHook(nth, items));
        }
        return Ok(Clause::Do(items));
    }
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
    let often = match (what.number, plain) {
        (Some(number), _) => Times::Exactly(number),
        (None, true) => opt(alt((around, number.map(Times::Exactly)))).parse_next(input)?.unwrap_or(Times::Exactly(1)),
        (None, false) => {
            let after = alt((times, around, number.map(Times::Exactly)));
            opt(after).parse_next(input)?.unwrap_or(Times::Exactly(1))
        }
    };
    Ok(Clause::Do(vec![item(Act::Run(op, often), place_of_work, input)]))
}

/// The operation that puts what is made where it goes.
fn aim(what: &What, target: Target, loops: Option<Loops>) -> Res<Act> {
    let op = match loops {
        Some(loops) => what.op.clone().under(loops),
        None => what.op.clone(),
    };
    let many = match (&op.made, what.number) {
        (Made::Same(stitch, 1), Some(number)) if op.into == Spot::Stitch => Made::Same(*stitch, number),
        (made, _) => made.clone(),
    };
    match target {
        Target::Same => Ok(Act::SameStitch(many)),
        Target::Ring => match (&op.made, what.number) {
            (Made::Same(stitch, 1), number) => {
                Ok(Act::Run(Op::into_ring(*stitch).under(op.loops), Times::Exactly(number.unwrap_or(1))))
            }
            (made, _) => Ok(Act::Run(Op { consumed: 0, made: made.clone(), ..op }, Times::Exactly(1))),
        },
        Target::FromHook(_) => Err(()),
        Target::Next(Unit::Space(chains), often, _) => {
            Ok(Act::Run(Op { into: Spot::Space, consumed: chains, made: many, loops: op.loops }, often))
        }
        Target::Next(Unit::Stitch, often, each) => match (op.into, often) {
            (Spot::Together, Times::Exactly(stitches)) if stitches % op.consumed == 0 => {
                let often = Times::Exactly(stitches / op.consumed);
                Ok(Act::Run(op, often))
            }
            // `5 sc in next 5 sts` is one in each.
            (Spot::Stitch, Times::Exactly(stitches)) if !each && what.number == Some(stitches) && stitches > 1 => {
                Ok(Act::Run(op, often))
            }
            (Spot::Stitch, _) => Ok(Act::Run(Op { made: many, ..op }, often)),
            (Spot::Together | Spot::Space | Spot::Air | Spot::Skip, _) => Ok(Act::Run(op, often)),
        },
    }
}

/// An item that stands from `start` up to where the input is now.
fn item(act: Act, start: Place, input: &Input<'_>) -> Item {
    let last = input.previous_tokens().next().map(|token| token.place);
    let end = last.map_or(start.offset, |place| place.offset + place.length);
    Item { act, place: Place { length: end.saturating_sub(start.offset), ..start } }
}

fn skip(input: &mut Input<'_>) -> Res<Clause> {
    let start = input.peek_token().map(|token| token.place).unwrap_or_default();
    let which = opt(word(&["next", "first", "last", "following", "foll"]));
    let lead = (word(&["sk", "skip", "miss", "skipping", "missing"]), articles, which);
    let (_, number, unit) = (lead, opt(number), opt(unit)).parse_next(input)?;
    let each = match unit {
        Some(Unit::Space(chains)) => chains.max(1),
        Some(Unit::Stitch) | None => 1,
    };
    let op = Op::skip(number.unwrap_or(1).saturating_mul(each));
    Ok(Clause::Do(vec![item(Act::Run(op, Times::Exactly(1)), start, input)]))
}

/// Brackets: a repeat, or stitches that all go in one place.
fn bracket(input: &mut Input<'_>, depth: u32) -> Res<Clause> {
    let start = input.peek_token().map(|token| token.place).unwrap_or_default();
    open(input)?;
    if depth >= DEEPEST {
        input.state.too_deep.set(true);
        return Err(());
    }
    let mut body = Vec::new();
    while opt(close).parse_next(input)?.is_none() {
        if opt(separator).parse_next(input)?.is_none() {
            body.push(paused(input, depth + 1)?);
        }
    }
    let items = super::assemble::items(body).ok_or(())?;
    opt(word(&["all"])).parse_next(input)?;
    if let Some(often) = opt(times).parse_next(input)? {
        return Ok(Clause::Do(vec![item(Act::Repeat(items, often), start, input)]));
    }
    let (before, (target, after)) = (opt(loops), place).parse_next(input)?;
    let loops = before.or(after);
    let made = together_in_one(&items).ok_or(())?;
    let op = Op { into: Spot::Stitch, consumed: 1, made, loops: loops.unwrap_or_default() };
    let act = match target {
        Target::Same => Act::SameStitch(op.made),
        Target::Ring => Act::Run(Op { consumed: 0, ..op }, Times::Exactly(1)),
        Target::Next(Unit::Stitch, often, _) => Act::Run(op, often),
        Target::Next(Unit::Space(chains), often, _) => {
            Act::Run(Op { into: Spot::Space, consumed: chains, ..op }, often)
        }
        Target::FromHook(_) => return Err(()),
    };
    Ok(Clause::Do(vec![item(act, start, input)]))
}

/// The stitches of a bracket as made in one place; nothing where some of them can't be.
fn together_in_one(items: &[Item]) -> Option<Made> {
    let mut runs: Vec<(Stitch, u32)> = Vec::new();
    for item in items {
        let Act::Run(Op { into: Spot::Stitch | Spot::Air, made: Made::Same(stitch, count), .. }, Times::Exactly(times)) =
            &item.act
        else {
            return None;
        };
        let count = count.checked_mul(*times)?;
        match runs.last_mut() {
            Some((last, number)) if last == stitch => *number = number.checked_add(count)?,
            _ => runs.push((*stitch, count)),
        }
    }
    match runs[..] {
        [] => None,
        [(stitch, count)] => Some(Made::Same(stitch, count)),
        _ => Some(Made::Mixed(runs.into_boxed_slice())),
    }
}

/// What stands between clauses.
pub(crate) fn separator(input: &mut Input<'_>) -> Res<()> {
    alt((sign(','), sign(';'), sign('.'), sign(':'), word(&["and", "then"]))).parse_next(input)
}

/// Everything up to the next comma, semicolon, full stop or bracket.
fn rest_of_clause(input: &mut Input<'_>) -> Vec<Token> {
    let inside = take(|token: &Token| {
        let stop = matches!(token.kind, Kind::Sign(',' | ';' | '.' | ':') | Kind::Open(_) | Kind::Close(_));
        (!stop).then(|| token.clone())
    });
    repeat::<_, _, Vec<Token>, _, _>(0.., inside).parse_next(input).unwrap_or_default()
}

/// `join`, `sl st to first sc to join`, `join to form a ring`.
fn joining(input: &mut Input<'_>) -> Res<Clause> {
    let mut lead = alt((
        word(&["join", "form", "forming"]).value(true),
        (stitch.verify(|stitch| *stitch == Stitch::SL_ST), preposition).value(false),
        (word(&["invisible"]), word(&["join"])).value(true),
    ));
    let sure = lead.parse_next(input)?;
    let rest = rest_of_clause(input);
    let has = |words: &[&str]| rest.iter().any(|token| token.word().is_some_and(|word| words.contains(&word)));
    let first = rest.iter().any(|token| token.kind == Kind::Ordinal(1));
    if has(&["ring", "circle"]) {
        return Ok(Clause::FormRing);
    }
    if sure || first || has(&["first", "top", "beg", "beginning", "join"]) { Ok(Clause::Join(true)) } else { Err(()) }
}

fn aside(input: &mut Input<'_>) -> Res<Clause> {
    let not_join = (word(&["do", "don't", "don’t"]), opt(word(&["not"])), word(&["join"])).value(Clause::Join(false));
    let not_turn = (word(&["do", "don't", "don’t"]), opt(word(&["not"])), word(&["turn"])).value(Clause::Aside);
    let hands = word(&["fasten", "cut", "break", "end", "weave", "place", "pm", "move", "mark", "finish", "stuff"]);
    let mut hands = (hands, rest_of_clause_parser).value(Clause::Aside);
    if let Some(found) = opt(alt((not_join, not_turn, word(&["turn"]).value(Clause::Turn)))).parse_next(input)? {
        return Ok(found);
    }
    hands.parse_next(input)
}

fn rest_of_clause_parser(input: &mut Input<'_>) -> Res<()> {
    rest_of_clause(input);
    Ok(())
}

fn colour(input: &mut Input<'_>) -> Res<Clause> {
    let change = (word(&["change", "switch"]), word(&["to"])).void();
    alt((word(&["with", "using"]), change)).parse_next(input)?;
    let words: Vec<String> = rest_of_clause(input).iter().map(Token::show).collect();
    if words.is_empty() { Err(()) } else { Ok(Clause::Colour(words.join(" "))) }
}

fn round_loops(input: &mut Input<'_>) -> Res<Clause> {
    let working = (word(&["working", "work"]), word(&["in", "into", "through"]), loops).map(|(_, _, loops)| loops);
    let bare = (opt(word(&["in", "into", "through"])), loops, alt((sign(','), sign(':')))).map(|(_, loops, _)| loops);
    let found = alt((working, bare)).parse_next(input)?;
    opt(alt((sign(','), sign(':'), word(&["throughout"])))).parse_next(input)?;
    Ok(Clause::Loops(found))
}

fn ring_start(input: &mut Input<'_>) -> Res<Clause> {
    let make = alt((
        word(&["make", "form", "in", "into", "work"]),
        (word(&["start", "begin", "starting", "beginning"]), word(&["with"])).void(),
    ));
    (opt(make), opt(word(&["in", "into"])), articles, magic).value(Clause::Ring).parse_next(input)
}

/// One clause, `depth` brackets deep.
fn clause(input: &mut Input<'_>, depth: u32) -> Res<Clause> {
    let star = opt(times).map(|often| often.map_or(Clause::Star, Clause::Again));
    let star = (sign('*'), star).map(|(_, clause)| clause);
    let about = alt((count, counting, ring_start, joining, round_loops));
    let simple = alt((about, aside, as_round, again, star, colour));
    if let Some(found) = opt(simple).parse_next(input)? {
        return Ok(found);
    }
    let bracketed = input.peek_token().is_some_and(|token| matches!(token.kind, Kind::Open(_)));
    if bracketed { bracket(input, depth) } else { alt((skip, work)).parse_next(input) }
}

/// The count, where one stands here.
pub(crate) fn closing_count(input: &mut Input<'_>) -> Res<Clause> {
    count(input)
}

/// A count after a full stop at the very end: `18 sc.`
pub(crate) fn final_count(input: &mut Input<'_>) -> Res<Clause> {
    (counts_list, opt(sign('.')), eof).map(|(list, ..)| Clause::Count(list)).parse_next(input)
}

/// One clause with the pause that work needs after it.
pub(crate) fn paused(input: &mut Input<'_>, depth: u32) -> Res<Clause> {
    let found = clause(input, depth)?;
    if matches!(found, Clause::Do(_) | Clause::FromHook(..)) {
        pause(input)?;
    }
    Ok(found)
}

/// After work comes a pause, a bracket, an asterisk, a repeat, a join, or the end.
fn pause(input: &mut Input<'_>) -> Res<()> {
    let start = input.checkpoint();
    let fits = input.next_token().is_none_or(|token| match &token.kind {
        Kind::Open(_) | Kind::Close(_) | Kind::Dash(_) => true,
        Kind::Sign(sign) => ",;.:*=".contains(*sign),
        Kind::Word(word) => ["rep", "repeat", "join", "and", "then", "turn", "ending"].contains(&word.as_str()),
        Kind::Number(_) | Kind::Ordinal(_) => false,
    });
    input.reset(&start);
    if fits { Ok(()) } else { take(|_| None).parse_next(input) }
}
