//! Tokens of one round → clauses: what is said between two commas.
//!
//! Built from winnow parsers over tokens. Every check that fails notes how far it came, so that a complaint can point at
//! the word that could not be read and not at the start of its clause.

mod colour;

mod counts;

mod even;

mod join;

mod place;

mod ring;

mod shaping;

mod special;

mod words;

mod work;

use super::lex::{Kind, Token};
use super::own::Named;
use super::tree::{Act, Item, Times};
use super::vocabulary::Vocabulary;
use super::written::{Doubt, JoinedTo};
use crate::craft::{Counted, Loops, Op, Stitch};
use crate::units::Mm;
use colour::{colour, joining_yarn};
use counts::{count, counting, end_or_pause};
use even::{even, no_shaping};
use join::joining;
use place::{around, short_more, starred, times, word_more};
use ring::{ring_of, ring_start};
use special::in_front;
use std::cell::{Cell, RefCell};
use winnow::combinator::{alt, eof, not, opt, peek, repeat};
use winnow::prelude::*;
use winnow::stream::{Stateful, TokenSlice};
use words::*;
use work::{bracket, item, number_before_count, number_in_place, placed, skip, starred_there, work};

pub(crate) use counts::final_count;
pub(crate) use work::made_in_one;

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
    /// Remarks inside of brackets: tokens left where each starts and where it ends.
    pub(crate) asides: &'i RefCell<Vec<(usize, usize)>>,
    /// The author's own stitches.
    pub(crate) own: &'i [Named],
    /// What can be read in two ways, as far as was read.
    pub(crate) doubts: &'i RefCell<Vec<Doubt>>,
    /// True in the first round, where `MC` is a ring and no colour.
    pub(crate) first: bool,
}

/// What parsers note down while they read, for whoever reads on.
#[derive(Debug)]
pub(crate) struct Notes {
    pub(crate) furthest: Cell<usize>,
    pub(crate) too_deep: Cell<bool>,
    pub(crate) asides: RefCell<Vec<(usize, usize)>>,
    pub(crate) doubts: RefCell<Vec<Doubt>>,
}

impl Default for Notes {
    fn default() -> Self {
        let furthest = Cell::new(usize::MAX);
        Self { furthest, too_deep: Cell::default(), asides: RefCell::default(), doubts: RefCell::default() }
    }
}

impl Notes {
    pub(crate) fn context<'i>(&'i self, vocabulary: &'i Vocabulary, main: Stitch, own: &'i [Named]) -> Context<'i> {
        let Self { furthest, too_deep, asides, doubts } = self;
        Context { vocabulary, main, furthest, too_deep, asides, own, doubts, first: false }
    }
}

pub(crate) type Input<'i> = Stateful<TokenSlice<'i, Token>, Context<'i>>;

type Res<T> = Result<T, ()>;

/// What is said between two commas.
#[derive(Clone, Debug, PartialEq)]
pub(crate) enum Clause {
    /// Things to do.
    Do(Vec<Item>),
    /// Passes over the first stitch, on which the chain before it stands where that counts.
    SkipFirst(Item),
    /// Stitches in the k-th chain from the hook: k, and them with what follows.
    FromHook(u32, Vec<Item>),
    /// One or two asterisks.
    Star,
    /// `rep from *`: again so often; where that may be read two ways, how often else; false where it names no asterisk.
    Again(Times, Option<u32>, bool),
    /// Makes an adjustable ring.
    Ring,
    /// Makes a ring: of the chains before, or an adjustable one.
    MakeRing,
    /// Joins chains to form a ring.
    FormRing,
    /// Joins the round; false says not to.
    Join(bool, JoinedTo),
    /// A slip stitch into the first space under so many chains (0: whatever comes): the join of a round, or the way to
    /// the start of the next.
    SlipIntoSpace(u32),
    /// Loops for the whole round.
    Loops(Loops),
    /// The yarn to use.
    Colour(String),
    /// Joins in this yarn, or closes the round where something was worked before; and what the join itself is, where that
    /// begins the round.
    JoinYarn(Option<String>, Option<Box<Clause>>),
    /// What the chain before counts as, or one of so many chains.
    Counts(Option<u32>, Counting),
    /// The count at the end.
    Count(Vec<(u32, Counted)>),
    /// Work a round as another one, or several as others: the first and the last of those, or 0 and how many before it, and
    /// how often, where that is said.
    As(u32, u32, Option<u32>),
    /// Turn the work.
    Turn,
    /// Something for the maker's hands that changes no stitch.
    Aside,
    /// What follows stands at the end of the last repeat.
    Ending,
    /// What follows is done so often.
    Ahead(u32),
    /// All of it is so many rounds.
    Rounds(u32),
    /// As often as it takes until the piece is so long.
    Until(Mm),
    /// So many increases or decreases, evenly spread; true where it says in each round.
    Evenly(Item, bool),
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

/// `rep from * around`, `rep from * 5 more times`, `repeat 6 times`, `around`: how often in all, and where it may be
/// read two ways, how often else.
fn again(input: &mut Input<'_>) -> Res<Clause> {
    let star = (repeat::<_, (), (), _, _>(1.., mark), ());
    let ends = (
        alt((word(&["to", "and", "until"]), dash)),
        articles,
        opt(word(&["next", "second", "last"])),
        repeat::<_, (), (), _, _>(1.., mark),
    );
    let from = (opt(word(&["from", "between"])), articles, opt(word(&["first"])), star, opt(ends));
    let round = opt((word(&["of"]), articles, round_word));
    let begin = (word(&["from"]), articles, word(&["beg", "beginning", "start"]), round).void();
    let rep = opt(repeats).parse_next(input)?.is_some();
    let starred = if rep {
        let starred = opt(from).parse_next(input)?.is_some();
        if !starred {
            opt(alt((begin, repeated))).parse_next(input)?;
        }
        // `all the way around` says how far.
        let all = (word(&["all"]), peek(number)).void();
        (opt(sign(',')), opt(alt((word(&["for"]), all)))).parse_next(input)?;
        starred
    } else {
        false
    };
    let total = opt(alt(((word(&["in"]), word(&["all", "total"])).void(), word(&["total", "altogether"]))));
    let lead = (opt(word(&["a"])), opt(word(&["total"])), opt(word(&["of"])));
    let counted = (lead, alt((word_more, short_more)), total);
    let counted = counted.map(move |((_, of, _), (number, more), total)| {
        let more_times = number.saturating_add(1);
        match (more, of.is_some() || total.is_some()) {
            (_, true) => (number, None),
            (true, false) => (more_times, None),
            // What was worked once may be among them or not; without an asterisk it mostly is.
            (false, false) if starred => (more_times, Some(number)),
            (false, false) => (number, Some(more_times)),
        }
    });
    let exact = move |(number, other): (u32, Option<u32>)| Clause::Again(Times::Exactly(number), other, starred);
    if !rep {
        // `…, 6 times`: all of it, and nothing is left open.
        let bare = counted.map(|(number, _)| Clause::Again(Times::Exactly(number), None, false));
        return alt((bare, around.map(|times| Clause::Again(times, None, false)))).parse_next(input);
    }
    let ends = alt((end_or_pause, peek(count).void()));
    let bare = ends.value(Clause::Again(Times::Around { leave: 0 }, None, starred));
    alt((counted.map(exact), around.map(move |times| Clause::Again(times, None, starred)), bare)).parse_next(input)
}

/// What says that something is done again: `repeat`, `keep repeating`, `work this`, `continue in this way`.
fn repeats(input: &mut Input<'_>) -> Res<()> {
    let again = alt((word(AGAIN), word(&["all"])));
    let again = (opt(word(&["keep", "continue", "go"])), again).void();
    let this =
        (word(&["work", "working", "do", "doing", "crochet", "make"]), peek(word(&["this", "that", "these"]))).void();
    let way = (
        word(&["continue", "continuing", "cont", "keep", "carry", "go", "so"]),
        opt(word(&["going", "on", "working"])),
        opt((word(&["in", "like", "with"]), word(&["this", "that", "the", "same"]), opt(word(&["same"])))),
        opt(word(&["manner", "way", "fashion", "pattern", "this"])),
        peek(around),
    );
    alt((again, this, way.void())).parse_next(input)
}

/// What is repeated, in words: `this pattern`, `the sequence`, `( )`, `instructions in brackets`.
fn repeated(input: &mut Input<'_>) -> Res<()> {
    let which =
        word(&["this", "these", "that", "those", "the", "whole", "entire", "same", "above", "stitch", "st", "same"]);
    let what = word(&[
        "pattern",
        "patt",
        "pat",
        "sequence",
        "steps",
        "step",
        "sts",
        "stitches",
        "instructions",
        "set",
        "section",
        "part",
        "process",
        "combination",
        "combo",
        "bracket",
        "brackets",
        "everything",
        "it",
    ]);
    let within = (
        word(&["in", "inside", "within", "between"]),
        articles,
        word(&["brackets", "parentheses", "parenthesis", "bracket", "parens"]),
    );
    let words = (repeat::<_, (), (), _, _>(0.., which), opt(what), opt(within)).void();
    alt(((open, close).void(), words)).parse_next(input)
}

/// An asterisk, as a sign or in words.
fn mark(input: &mut Input<'_>) -> Res<()> {
    alt((sign('*'), word(&["asterisk", "asterisks", "star", "stars"]))).parse_next(input)
}

fn as_round(input: &mut Input<'_>) -> Res<Clause> {
    let lead = alt((word(&["rep", "repeat"]), (opt(word(&["work"])), opt(word(&["same"])), word(&["as"])).void()));
    let tie = alt((dash, word(&["and", "to", "through"]), sign('&')));
    let last = opt((tie, opt(alt((round_word, word(&["r"])))), number).map(|(.., number)| number));
    let often = opt(alt((word_more, short_more)).map(|(number, _)| number));
    let numbered =
        (alt((round_word, word(&["r"]))), number, last).map(|(_, first, last)| (first, last.unwrap_or(first)));
    // `same as 5th rnd`, `repeat 2nd and 3rd rnds`.
    let tie = alt((dash, word(&["and", "to", "through"]), sign('&')));
    let ordinals = (ordinal, opt((tie, ordinal).map(|(_, last)| last)), round_word);
    let ordinals = ordinals.map(|(first, last, ())| (first, last.unwrap_or(first)));
    // `repeat last rnd`, `as the last 2 rounds`.
    let last = (word(&["last", "previous", "prev", "preceding"]), opt(number), round_word);
    let last = last.map(|(_, number, ())| (0, number.unwrap_or(1)));
    (lead, opt(word(&["for"])), articles, alt((numbered, ordinals, last)), often)
        .map(|(.., (first, last), often)| Clause::As(first, last, often))
        .parse_next(input)
}

/// What stands between clauses.
pub(crate) fn separator(input: &mut Input<'_>) -> Res<()> {
    let signs = alt((sign(','), sign(';'), sign('.'), sign(':'), sign('!'), sign('+')));
    // A dash before a number leads to the count.
    let goes_on = take(|token: &Token| (token.word().is_some() || matches!(token.kind, Kind::Open(_))).then_some(()));
    let dash = || take(|token: &Token| (token.kind == Kind::Dash(true) && !token.starts_line).then_some(()));
    let often = (dash(), peek(alt((word_more, short_more)))).void();
    alt((signs, word(&["and", "then"]), often, (dash(), not(number), peek(goes_on)).void())).parse_next(input)
}

/// Everything up to the next comma, semicolon, full stop or bracket.
fn rest_of_clause(input: &mut Input<'_>) -> Vec<Token> {
    let inside = take(|token: &Token| {
        let sign = matches!(token.kind, Kind::Sign(',' | ';' | '.' | ':') | Kind::Open(_) | Kind::Close(_));
        // A dash between blanks leads to the count.
        let stop = sign || token.kind == Kind::Dash(true);
        (!stop).then(|| token.clone())
    });
    repeat::<_, _, Vec<Token>, _, _>(0.., inside).parse_next(input).unwrap_or_default()
}

fn aside(input: &mut Input<'_>) -> Res<Clause> {
    let rounds = opt((articles, opt(word(&["ends", "end", "each", "any", "these"])), opt(word(&["of"])), round_word));
    let but = opt((word(&["but"]), rest_of_clause_parser));
    let not_join = (word(&["do", "don't", "don’t"]), opt(word(&["not"])), word(&["join"]), rounds, but);
    let not_join = not_join.value(Clause::Join(false, JoinedTo::Unsaid));
    let not_turn = (word(&["do", "don't", "don’t"]), opt(word(&["not"])), word(&["turn"])).value(Clause::Aside);
    let hands = word(&[
        "fasten", "fo", "cut", "break", "end", "weave", "place", "pm", "move", "mark", "finish", "stuff", "leave",
        "leaving", "sew", "sewing", "pull", "pulling", "draw", "thread", "secure", "close", "hide", "trim", "being",
        "taking", "careful",
    ]);
    let mut hands = (hands, rest_of_clause_parser).value(Clause::Aside);
    // `In this rnd, work in back loops only`; `slip marker`.
    let here = (word(&["in", "on", "for"]), word(&["this", "these"]), opt(number), round_word, sign(','));
    let marker = (word(&["slip", "sl"]), articles, word(&["marker", "markers"]), rest_of_clause_parser);
    let sure = (word(&["making", "make", "be", "being"]), word(&["sure", "certain"]), rest_of_clause_parser);
    if opt(alt((here.void(), marker.void(), sure.void(), in_front, in_a_spiral, with_hook)))
        .parse_next(input)?
        .is_some()
    {
        return Ok(Clause::Aside);
    }
    if let Some(found) = opt(alt((not_join, not_turn, word(&["turn"]).value(Clause::Turn)))).parse_next(input)? {
        return Ok(found);
    }
    // `place 2 sc in next st` is work.
    if opt(peek((word(VERBS), articles, opt(number), stitch))).parse_next(input)?.is_some() {
        return Err(());
    }
    hands.parse_next(input)
}

/// `work in a continuous spiral`, `working in one continuous round`.
fn in_a_spiral(input: &mut Input<'_>) -> Res<()> {
    let lead = opt(word(&["work", "working", "worked", "crochet", "continue", "continuing"]));
    let how =
        repeat::<_, (), (), _, _>(0.., word(&["a", "an", "one", "the", "continuous", "single", "long", "unbroken"]));
    let what = alt((word(&["spiral", "spirals"]), (word(&["continuous"]), round_word).void()));
    let rounds = (word(&["continuous"]), round_word).void();
    (lead, word(&["in", "as"]), alt((rounds, (how, what).void()))).void().parse_next(input)
}

/// `using a 4.5 mm hook`.
fn with_hook(input: &mut Input<'_>) -> Res<()> {
    let size = (number, opt((sign('.'), number)), word(&["mm"]));
    (word(&["using", "with"]), articles, size, word(&["hook"]), opt(sign(','))).void().parse_next(input)
}

fn rest_of_clause_parser(input: &mut Input<'_>) -> Res<()> {
    rest_of_clause(input);
    Ok(())
}

fn round_loops(input: &mut Input<'_>) -> Res<Clause> {
    let into = || word(&["in", "into", "through", "thru", "under", "up"]);
    let verb = alt((word(&["working", "work", "worked", "picking", "inserting", "all"]), word(&["using", "catching"])));
    let working = (verb, opt((word(&["hook"]), not(sign(',')))), opt(into()), loops).map(|(.., loops)| loops);
    let stops = alt((sign(','), sign(':'), sign('.'), eof.void(), peek(open)));
    let bare = (opt(into()), loops, stops).map(|(_, loops, _)| loops);
    let found = alt((working, bare)).parse_next(input)?;
    opt(alt((sign(','), sign(':'), word(&["throughout"])))).parse_next(input)?;
    Ok(Clause::Loops(found))
}

/// `(BLO)` for the whole round.
fn bracket_loops(input: &mut Input<'_>) -> Res<Clause> {
    let within = (opt(word(&["in", "into", "through", "work", "working"])), opt(word(&["in"])), loops);
    (open, within, opt(word(&["throughout"])), close)
        .map(|(_, (.., loops), _, ())| Clause::Loops(loops))
        .parse_next(input)
}

/// `for 3 rounds`, `repeat this rnd twice more`, `work 3 rnds` before `even`.
fn for_rounds(input: &mut Input<'_>) -> Res<Clause> {
    let this = (word(AGAIN), word(&["this"]), round_word, word_more);
    if let Some((.., (number, _))) = opt(this).parse_next(input)? {
        return Ok(Clause::Rounds(number.saturating_add(1)));
    }
    // `work 3 rnds even`, `3 rounds of sc`.
    let how = alt((word(&["even", "straight", "evenly"]), (word(&["of", "in"]), stitch).void()));
    let many = (opt(word(&["work", "working", "crochet", "do"])), number, round_word, peek(how));
    if let Some((_, number, ..)) = opt(many).parse_next(input)? {
        return Ok(Clause::Rounds(number));
    }
    let lead = (word(&["for"]), opt(word(&["another", "the", "next"])));
    (lead, number, opt(word(&["more"])), round_word).map(|(_, number, ..)| Clause::Rounds(number)).parse_next(input)
}

/// `until piece measures 15 cm`, `until work is 4.5 inches long`.
fn until(input: &mut Input<'_>) -> Res<Clause> {
    let what = word(&["piece", "work", "it", "hat", "crown", "body", "side", "sides", "basket", "bowl", "total"]);
    let measures = (word(&["measures", "is", "are", "reaches"]), opt(word(&["about", "approximately"])));
    (word(&["until"]), articles, opt(what), measures).parse_next(input)?;
    let whole = number(input)?;
    let part = take(|token: &Token| token.number().map(|part| (part, token.place.length)));
    let part = opt((sign('.'), part))
        .parse_next(input)?
        .map_or(0.0, |(_, (part, digits))| (0..digits.min(9)).fold(f64::from(part), |value, _| value / 10.0));
    let inch = alt((word(&["in", "inch", "inches"]), sign('"'), sign('″'))).value(25.4);
    let unit = alt((word(&["cm"]).value(10.0), word(&["mm"]).value(1.0), inch)).parse_next(input)?;
    rest_of_clause(input);
    Ok(Clause::Until(Mm::new((f64::from(whole) + part) * unit)))
}

/// `increasing 6 sc evenly`, `decrease 8 sts evenly around`.
fn evenly(input: &mut Input<'_>) -> Res<Clause> {
    let start = input.peek_token().map(|token| token.place).unwrap_or_default();
    let main = input.state.main;
    opt(word(&["and"])).parse_next(input)?;
    let up = alt((word(UP).value(true), word(DOWN).value(false))).parse_next(input)?;
    let named = alt((alt((stitches_word, word(&["times"]))).value(None), stitch.map(Some)));
    let spaced = || opt(word(&["spaced", "spread", "distributed", "placed"]));
    let in_round = || {
        let within = word(&["in", "on", "over", "throughout", "during", "within", "across"]);
        let which = opt(alt((word(&["each", "every"]).value(true), word(&["the", "this", "next"]).value(false))));
        (within, which, opt(word(&["of", "these"])), round_word).map(|(_, each, ..)| each == Some(true))
    };
    let spread = (spaced(), word(&["evenly", "equally"]), spaced(), opt(alt((in_round(), around.value(false)))));
    let spread = spread.map(|(.., each)| each == Some(true));
    let spread = alt((spread, in_round()));
    let (number, named, each) = (number, opt(named), spread).parse_next(input)?;
    let stitch = named.flatten().unwrap_or(main);
    let shape = if up { Op::increase(stitch, 2) } else { Op::decrease(stitch, 2) };
    Ok(Clause::Evenly(item(Act::Evenly { shape, plain: Op::plain(stitch), times: number }, start, input), each))
}

/// `ending with`, `end last repeat with`: what follows stands at the end of the last repeat.
fn ending(input: &mut Input<'_>) -> Res<Clause> {
    let last = || opt((opt(word(&["last", "final"])), word(&["rep", "repeat"])));
    let with = (word(&["ending", "end"]), last(), word(&["with", "in", "by"])).void();
    let work = alt((word(&["sk", "skip", "miss", "ch", "chain"]), (how_many, stitch).void()));
    let bare = (word(&["ending"]), last(), peek(work)).void();
    alt((with, bare)).value(Clause::Ending).parse_next(input)
}

/// `6 times: sc, inc`: all that follows so often.
fn ahead(input: &mut Input<'_>) -> Res<Clause> {
    let lead = (opt(word(&["rep", "repeat", "work"])), number, word(&["times", "x"]));
    (lead, sign(':')).map(|((_, number, ()), ())| Clause::Ahead(number)).parse_next(input)
}

/// `6 x` before a bracket with work in it.
fn so_often(input: &mut Input<'_>) -> Res<u32> {
    let counts = (open, opt(sign('=')), number, opt(alt((stitches_word, stitch.void()))), close);
    // `6(sc, inc)`: without a blank between.
    let close_by = take(|token: &Token| Some(token.start + token.place.length));
    let close_by = (peek(close_by), number, peek(take(|token: &Token| Some(token.start))));
    let close_by = close_by.verify(|(end, _, start)| end == start).map(|(_, number, _)| number);
    let often = alt(((number, word(&["times", "x"])).map(|(number, ())| number), close_by));
    (often, not(counts), peek(open)).map(|(number, ..)| number).parse_next(input)
}

/// `6 x 1 inc`: so often one thing.
fn often_one(input: &mut Input<'_>) -> Res<u32> {
    let shaped = alt((word(UP), word(DOWN), word(&["crossed"]), stitch.void()));
    (number, word(&["times", "x"]), peek((opt(number), shaped))).map(|(number, ..)| number).parse_next(input)
}

/// What may stand before a bracket.
const WORK: &[&str] = &["rep", "repeat", "work", "crochet", "make", "do"];

/// One clause, `depth` brackets deep.
fn clause(input: &mut Input<'_>, depth: u32) -> Res<Clause> {
    // `*sc, inc* repeat 7 times` is told once the repeat itself is read.
    // `*dc, ch 1* 12 times in the ring`.
    let first = input.state.first;
    let ring = (preposition, articles, alt((magic, word(&["ring", "circle", "loop"]))));
    let ring = opt(ring.verify(move |_| first));
    let times = (not(word(AGAIN)), times, ring).map(|(_, times, _)| times);
    let often = alt(((sign('*'), times).map(|(_, times)| times), starred.map(Times::Exactly)));
    let often = often.map(|often| Clause::Again(often, None, false));
    let star = alt((often, sign('*').value(Clause::Star)));
    let about = alt((count, counting, ring_of, ring_start, joining_yarn, joining, round_loops));
    let simple =
        alt((about, aside, no_shaping, alt((ending, ahead, for_rounds, until, evenly)), as_round, again, star, colour));
    // `6 x (sc, inc)` is no repeat of what stands before.
    let ahead = (opt(word(WORK)), alt((so_often, often_one)));
    if let Some(found) = opt(starred_there).parse_next(input)? {
        return Ok(found);
    }
    if opt(peek(ahead)).parse_next(input)?.is_none()
        && let Some(found) = opt(simple).parse_next(input)?
    {
        return Ok(found);
    }
    if let Some(found) = opt(even).parse_next(input)? {
        return Ok(found);
    }
    if let Some(found) = opt(bracket_loops).parse_next(input)? {
        return Ok(found);
    }
    // `Repeat [sc, inc] around`, `work (sc, inc) 6 times`.
    let start = input.checkpoint();
    opt(word(WORK)).parse_next(input)?;
    // `V-st (dc, ch 1, dc) in each st`: the name, then what it is.
    let name = work::group_name(input.peek_slice(input.eof_offset()));
    input.next_slice(name);
    // `6 x (sc, inc)`.
    let before = opt(so_often).parse_next(input)?;
    let bracketed = input.peek_token().is_some_and(|token| matches!(token.kind, Kind::Open(_)));
    if !bracketed {
        input.reset(&start);
    }
    if bracketed {
        return bracket(input, depth, before);
    }
    let place = input.peek_token().map(|token| token.place).unwrap_or_default();
    if let Some(often) = opt(often_one).parse_next(input)? {
        let Clause::Do(items) = work(input)? else { return Err(()) };
        return Ok(Clause::Do(vec![item(Act::Repeat(items, Times::Exactly(often)), place, input)]));
    }
    alt((skip, placed, work, number_before_count, number_in_place)).parse_next(input)
}

/// The count, where one stands here.
pub(crate) fn closing_count(input: &mut Input<'_>) -> Res<Clause> {
    count(input)
}

/// One clause with the pause that work needs after it.
pub(crate) fn paused(input: &mut Input<'_>, depth: u32) -> Res<Clause> {
    let start = input.eof_offset();
    let found = clause(input, depth)?;
    if depth > 0 && found == Clause::Aside {
        input.state.asides.borrow_mut().push((start, input.eof_offset()));
    }
    if matches!(found, Clause::Do(_) | Clause::FromHook(..) | Clause::SkipFirst(_)) {
        // `24 sc total` is 24 in all.
        opt((opt(word(&["in"])), word(&["total", "altogether"]))).parse_next(input)?;
        pause(input)?;
    }
    Ok(found)
}

/// Words that begin the next thing that is said.
const PAUSES: &[&str] = &[
    "rep",
    "repeat",
    "repeated",
    "repeating",
    "continue",
    "join",
    "and",
    "then",
    "turn",
    "ending",
    "end",
    "all",
    "as",
    "for",
    "to",
    "counts",
    "counting",
    "this",
    "which",
    "that",
    "without",
    "on",
    "until",
    "increasing",
    "decreasing",
    "with",
    "working",
];

/// Where what is said of work may end.
pub(super) fn stops(input: &mut Input<'_>) -> Res<()> {
    pause(input)
}

/// After work comes a pause, a bracket, an asterisk, a repeat, a join, or the end.
fn pause(input: &mut Input<'_>) -> Res<()> {
    // `sc 3 inc`.
    const SHAPES: [&str; 2] = ["inc", "dec"];
    let counted = input.previous_tokens().next().is_some_and(|token| token.number().is_some());
    let start = input.checkpoint();
    let fits = input.next_token().is_none_or(|token| match &token.kind {
        Kind::Open(_) | Kind::Close(_) | Kind::Dash(_) => true,
        Kind::Sign(sign) => ",;.:*=+!".contains(*sign),
        Kind::Word(word) => PAUSES.contains(&word.as_str()) || (counted && SHAPES.contains(&word.as_str())),
        Kind::Number(_) | Kind::Ordinal(_) => false,
    });
    input.reset(&start);
    if fits { Ok(()) } else { take(|_| None).parse_next(input) }
}
