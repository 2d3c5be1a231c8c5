//! Reads rounds in the trade's published notation.
//!
//! The text is cut into rounds at their numbers, so that a slip in one round is no trouble for the next; inside a round
//! reading goes on after the next comma. What can't be read is complained about at the word where reading stopped.

use super::alias;
use super::assemble::Builder;
use super::complain::complain;
use super::grammar::{self, Clause, Input, Notes};
use super::header::{Header, Numbers, header};
use super::layout;
use super::lex::{Kind, Source, Token, tokens};
use super::numbered;
use super::own::{self, Named};
use super::remark;
use super::tongue::{self, Guess};
use super::vocabulary::Vocabulary;
use super::wording::{Sense, Wording, Words};
use super::written::WrittenRound;
use crate::craft::{OwnStitch, Stitch, Terms};
use crate::limits;
use crate::report::{Diagnostic, Place, Report};
use std::collections::BTreeSet;
use std::ops::Range;
use winnow::combinator::{alt, opt};
use winnow::prelude::*;
use winnow::stream::{Stateful, TokenSlice};

/// Reads written rounds. `main` is the stitch that a bare `inc` or `dec` means where the round names no other; `next`
/// is the number of the first round where none is written. Rounds that could not be read in full are there with
/// `whole` false, and the report holds an error about each.
pub fn read(sources: &[Source<'_>], terms: Terms, main: Stitch, next: u32, report: &mut Report) -> Vec<WrittenRound> {
    read_with(sources, (terms, &[]), main, next, report)
}

/// The same with stitches of the maker's own, which the rounds may name.
pub fn read_with(
    sources: &[Source<'_>],
    (terms, own): (Terms, &[OwnStitch]),
    main: Stitch,
    next: u32,
    report: &mut Report,
) -> Vec<WrittenRound> {
    let length: usize = sources.iter().map(|source| source.text.len()).sum();
    if length > limits::BYTES {
        let message = format!("the written rounds are {length} bytes long; {} is the most that is read", limits::BYTES);
        report.add(Diagnostic::error("text-too-long", message).at(sources.first().and_then(|source| source.place)));
        return Vec::new();
    }
    let mut vocabulary = Vocabulary::of(terms);
    let mut tokens = alias::spelled_out(layout::plain(tokens(sources)), sources, vocabulary);
    let guess = tongue::guess(&tokens);
    let foreign = matches!(guess, Guess::Other(_));
    match guess {
        Guess::English => {}
        Guess::Other(tongue) => {
            tokens = tongue.english(&tokens);
            vocabulary = Vocabulary::of(Terms::Us);
            let message = format!("these rounds are read as {}", tongue.name);
            let help = "they are printed in the tool's own words for them, in the language of the design";
            report.add(Diagnostic::note("read-as", message).at(tokens.first().map(|token| token.place)).help(help));
        }
        Guess::Unknown => {
            let message = "these words are none of the notation, nor of a language that is read";
            let help = "rounds are read in English, and in German, French, Spanish and Dutch where they are written in \
                        short: `Rnd 2: inc in each st (12)`";
            report.add(
                Diagnostic::error("other-language", message).at(tokens.first().map(|token| token.place)).help(help),
            );
            return Vec::new();
        }
    }
    let chunks = chunks(&tokens, vocabulary);
    let numbered = chunks.iter().any(|chunk| chunk.header.is_some());
    let headers = chunks.iter().filter(|chunk| chunk.header.is_some()).count();
    if numbered::runs_on(&tokens, headers) {
        let message = "this text tells its rounds in running prose, as old books do: it isn't read";
        let help = "write each round on a line of its own with its number: `Rnd 3: [sc, inc] 6 times (18)`";
        report.add(Diagnostic::error("running-prose", message).at(tokens.first().map(|token| token.place)).help(help));
        return Vec::new();
    }
    let first = chunks.iter().position(|chunk| chunk.header.is_some()).unwrap_or(0);
    let from = chunks.get(first).map_or(0, |chunk| chunk.start);
    mixed_terms(tokens.get(from..).unwrap_or_default(), vocabulary, report);
    // A V-stitch that nobody defines is the usual one.
    let own = [&Named::all(own)[..], &Named::all(&[OwnStitch::v_stitch()])].concat();
    let mut reader = Reader { sources, vocabulary, main, report, next, complaints: 0, set_aside: Vec::new(), own };
    let mut rounds: Vec<WrittenRound> = Vec::new();
    let mut early = from;
    // Where the first number is 2, what stands above it is the first round.
    let second =
        chunks.get(first).and_then(|chunk| chunk.header).is_some_and(|header| header.numbers == Numbers::These(2, 2));
    for (index, chunk) in chunks.into_iter().enumerate() {
        let before = numbered && index < first;
        if before && reader.preface(&chunk, second) {
            continue;
        }
        early = early.min(chunk.start);
        let Some(round) = reader.round(chunk) else { continue };
        rounds.push(round);
    }
    reader.tell_set_aside();
    // A round above the first number is held to the terms as well; what is only told there is not.
    mixed_terms(tokens.get(early..from).unwrap_or_default(), vocabulary, report);
    if foreign {
        // What its author wrote is in another language than what the tool says around it.
        rounds.iter_mut().for_each(|round| round.wording = Wording::default());
    }
    // A chain after the join of a round is the beginning of the next.
    for at in 1..rounds.len() {
        let leads = rounds[at - 1].leads;
        let next = &mut rounds[at];
        if next.begin.is_none() && next.same_as.is_none() {
            next.begin = leads;
        }
    }
    merge_foundations(rounds)
}

/// Complains about the first of each word that belongs to the other set of terms.
fn mixed_terms(tokens: &[Token], vocabulary: &Vocabulary, report: &mut Report) {
    let (these, others) = match vocabulary.terms {
        Terms::Us => ("US", "UK"),
        Terms::Uk => ("UK", "US"),
    };
    let mut seen = BTreeSet::new();
    let mut stop = 0;
    for (at, token) in tokens.iter().enumerate() {
        let Some((word, stitch)) = vocabulary.giveaway(tokens.get(at..).unwrap_or_default()) else { continue };
        if at < stop || !seen.insert(word.clone()) {
            continue;
        }
        stop = at + word.split(' ').count();
        let called = stitch.map(|stitch| format!(": {}", vocabulary.short(stitch))).unwrap_or_default();
        let message = format!("`{word}` is a {others} word, but these rounds are in {these} terms");
        let help = format!("say `terms: {others}` if all of it is, or write it in {these} terms{called}");
        report.add(Diagnostic::error("mixed-terms", message).at(token.place).help(help));
    }
}

/// A stretch of tokens that is one round.
pub(super) struct Chunk<'t> {
    pub(super) header: Option<Header>,
    /// The side of the work that the header names, with its brackets.
    side: &'t [Token],
    pub(super) tokens: &'t [Token],
    /// Where it begins among all tokens.
    start: usize,
    /// How many of the tokens are the round; behind them are lines that are none of it.
    work: usize,
}

/// Cuts the tokens at their headers, or at their lines where there are no headers.
pub(super) fn chunks<'t>(tokens: &'t [Token], vocabulary: &Vocabulary) -> Vec<Chunk<'t>> {
    let mut starts: Vec<(usize, Option<Header>)> = Vec::new();
    let mut numbered = false;
    let mut source = None;
    for (at, token) in tokens.iter().enumerate() {
        let after_stop = at > 0 && matches!(tokens[at - 1].kind, Kind::Sign('.') | Kind::Close(_));
        let header = (token.starts_line || after_stop).then(|| header(&tokens[at..])).flatten();
        let header = header.filter(|header| token.starts_line || (header.length > 2 && !header.bare));
        if header.is_some() {
            numbered = true;
            starts.push((at, header));
        } else if source != Some(token.source) || token.starts_line {
            starts.push((at, None));
        }
        source = Some(token.source);
    }
    // Where rounds are numbered, a line without a number goes on with the round above it.
    let mut opened = false;
    starts.retain(|(_, header)| {
        opened |= header.is_some();
        !numbered || !opened || header.is_some()
    });
    let ends = starts.iter().skip(1).map(|(at, _)| *at).chain([tokens.len()]);
    let cut = |((start, header), end): (&(usize, Option<Header>), usize)| {
        let from = start + header.map_or(0, |header| header.length);
        let head = tokens.get(*start..from).unwrap_or_default();
        let at = |wanted: fn(&Kind) -> bool| head.iter().skip(1).position(|token| wanted(&token.kind));
        let side = at(|kind| matches!(kind, Kind::Open(_))).zip(at(|kind| matches!(kind, Kind::Close(_))));
        let side = side.and_then(|(open, close)| head.get(open + 1..close + 2)).unwrap_or_default();
        let tokens = tokens.get(from..end).unwrap_or_default();
        let work = if numbered { own_lines(tokens, vocabulary) } else { tokens.len() };
        Chunk { header: *header, side, tokens, start: *start, work }
    };
    starts.iter().zip(ends).map(cut).collect()
}

/// How many of the tokens of a round are on lines that go on with it. A line that is no round is no part of one.
fn own_lines(tokens: &[Token], vocabulary: &Vocabulary) -> usize {
    let starts = (1..tokens.len()).filter(|at| tokens[*at].starts_line);
    let loose = |at: &usize| {
        let line = tokens.get(*at..).unwrap_or_default();
        let end = line.iter().skip(1).position(|token| token.starts_line).map_or(line.len(), |end| end + 1);
        !remark::goes_on(line.get(..end).unwrap_or_default(), &tokens[at - 1], vocabulary)
    };
    starts.into_iter().find(loose).unwrap_or(tokens.len())
}

struct Reader<'r> {
    sources: &'r [Source<'r>],
    vocabulary: &'static Vocabulary,
    main: Stitch,
    report: &'r mut Report,
    next: u32,
    complaints: usize,
    /// What was taken for a remark, with its place.
    set_aside: Vec<(String, Place)>,
    /// Stitches that the text defines.
    own: Vec<Named>,
}

impl Reader<'_> {
    /// Takes a line before the first numbered round: a title, what is needed, the author's own stitches. False where it
    /// says what the first round is worked into, or is a round.
    fn preface(&mut self, chunk: &Chunk<'_>, second: bool) -> bool {
        let (notes, vocabulary, main) = (Notes::default(), self.vocabulary, self.main);
        let defined = own::defined(chunk.tokens, notes.context(vocabulary, main, &[]));
        if defined.is_empty() {
            let mut scratch = Report::new();
            let (sources, next) = (self.sources, self.next);
            let (complaints, set_aside, own) = (0, Vec::new(), self.own.clone());
            let mut other =
                Reader { sources, vocabulary, main, report: &mut scratch, next, complaints, set_aside, own };
            let again =
                Chunk { header: None, side: chunk.side, tokens: chunk.tokens, start: chunk.start, work: chunk.work };
            let works = other.round(again).is_some_and(|round| {
                let works = second && !round.items.is_empty() && round.first == 1;
                round.whole
                    && (round.only_starts() || !round.items.is_empty())
                    && (works || other.set_aside.is_empty() || round.foundation.is_some())
            });
            // What begins like work is told where it can't be read.
            let begins = |token: &Token| matches!(token.word(), Some("join" | "ch" | "chain"));
            let begins = chunk.tokens.first().is_some_and(begins) || vocabulary.stitch(chunk.tokens).is_some();
            let all = 0..chunk.tokens.len();
            let stitch = all.clone().any(|at| vocabulary.stitch(chunk.tokens.get(at..).unwrap_or_default()).is_some());
            let counted = stitch && all.into_iter().any(|at| counts(chunk.tokens, at));
            if works || begins || counted {
                return false;
            }
        }
        // What the text says of itself comes before what is usual.
        self.own.splice(0..0, defined);
        if let Some(first) = chunk.tokens.first() {
            let length = chunk.tokens.len();
            let place = span(chunk.tokens, length, 0);
            self.set_aside.push((told(chunk.tokens), Place { line: first.place.line, ..place }));
        }
        true
    }

    fn round(&mut self, chunk: Chunk<'_>) -> Option<WrittenRound> {
        let place = chunk.header.map(|header| header.place).or(chunk.tokens.first().map(|token| token.place))?;
        let row = chunk.header.is_some_and(|header| header.row);
        let numbers = chunk.header.map_or(Numbers::Start, |header| header.numbers);
        let (first, last) = match numbers {
            Numbers::Start => (self.next, self.next),
            Numbers::These(first, last) => (first, last),
            Numbers::Next(count) => (self.next, self.next.saturating_add(count.saturating_sub(1))),
        };
        if first == 0 || last < first || last - first >= limits::ROUNDS {
            let message = format!(
                "rounds {first}–{last} are no range of at most {} rounds that counts up from 1",
                limits::ROUNDS
            );
            self.report.add(Diagnostic::error("round-range", message).at(place));
            return None;
        }
        self.next = last.saturating_add(1);
        if chunk.tokens.len() > limits::ROUND_WORDS {
            let message = format!(
                "round {first} is {} words and signs long; {} is the most that is read",
                chunk.tokens.len(),
                limits::ROUND_WORDS
            );
            self.report.add(Diagnostic::error("round-too-long", message).at(place));
            return None;
        }
        let main = self.main_stitch(chunk.tokens.get(..chunk.work).unwrap_or_default());
        let numbered = numbers != Numbers::Start;
        let mut builder = Builder::new((first, last), numbered, row, place, &mut *self.report);
        if let Some(told) = chunk.header.and_then(|header| header.told) {
            builder.add(Clause::Rounds(told), place);
        }
        let (notes, own) = (Notes::default(), self.own.clone());
        let context = grammar::Context { first: first == 1, ..notes.context(self.vocabulary, main, &own) };
        let Notes { furthest, too_deep, asides, doubts } = &notes;
        let (mut spans, mut loose) = (Vec::new(), Vec::new());
        let range = |from: usize, to: usize| chunk.work - from..chunk.work - to;
        let tokens = chunk.tokens.get(..chunk.work).unwrap_or_default();
        let mut input = Stateful { input: TokenSlice::new(tokens), state: context };
        while !input.is_empty() {
            furthest.set(input.eof_offset());
            let at = input.eof_offset();
            let stopped = input.previous_tokens().next().is_some_and(|token| token.kind == Kind::Sign('.'));
            let may_end = stopped && builder.has_work();
            let bracket = input.peek_token().is_some_and(|token| matches!(token.kind, Kind::Open(_)));
            // `In a magic ring: 8 sc.` is work; before all work only a bracket holds a count.
            let fresh = builder.is_fresh() && !bracket;
            let closing = |input: &mut Input<'_>| match may_end {
                true => alt((grammar::closing_count, grammar::final_count)).parse_next(input),
                false if fresh => Err(()),
                false => grammar::closing_count(input),
            };
            if fresh && input.peek_token().is_some_and(|token| token.kind == Kind::Dash(true)) {
                input.next_token();
                continue;
            }
            if let Ok(Some(count)) = opt(closing).parse_next(&mut input) {
                spans.push((range(at, input.eof_offset()), sense(&count)));
                builder.add(count, span(tokens, at, input.eof_offset()));
                continue;
            }
            if matches!(opt(grammar::separator).parse_next(&mut input), Ok(Some(()))) {
                continue;
            }
            furthest.set(at);
            let read = grammar::paused(&mut input, 0);
            match read {
                Ok(clause) => {
                    spans.push((range(at, input.eof_offset()), sense(&clause)));
                    builder.add(clause, span(tokens, at, input.eof_offset()));
                }
                Err(()) => {
                    let start = tokens.len() - at;
                    let counted = spans.iter().any(|(_, sense)| *sense == Sense::Count);
                    let behind = || counted.then(|| behind_count(tokens, start, self.vocabulary)).flatten();
                    if let Some(length) = behind().or_else(|| remark::remark(tokens, start, self.vocabulary)) {
                        let said = tokens.get(start..start + length).unwrap_or_default();
                        self.set_aside.push((told(said), span(tokens, at, at - length)));
                        spans.push((start..start + length, Sense::Aside));
                        input.input.reset_to_start();
                        input.next_slice(start + length);
                        continue;
                    }
                    if let Some(end) = loose_line(tokens, start, &spans).filter(|_| builder.has_work()) {
                        loose.push(start..end);
                        spans.push((start..end, Sense::Aside));
                        input.input.reset_to_start();
                        input.next_slice(end);
                        continue;
                    }
                    self.complaints += 1;
                    let stop = tokens.len() - furthest.get().min(tokens.len());
                    let complaint = complain(tokens, stop, self.vocabulary, too_deep.get(), place);
                    builder.broken((self.complaints <= limits::COMPLAINTS).then_some(complaint));
                    recover(&mut input, tokens, at, stop);
                }
            }
        }
        let mut within: Vec<_> = asides.borrow().iter().map(|(from, to)| range(*from, *to)).collect();
        // What was read twice on the way to its clause stands there once.
        within.sort_by_key(|range| (range.start, range.end));
        within.dedup();
        let mut round = builder.finish(doubts.take());
        // `Foundation ring: wind yarn round finger.` says nothing to be counted.
        let idle = round.items.is_empty() && round.begin.is_none() && round.foundation.is_none();
        if idle && round.whole && !numbered && chunk.header.is_some() {
            self.next = first;
            return None;
        }
        self.next = self.next.max(round.last.saturating_add(1));
        for line in loose {
            self.loose_line(tokens, line);
        }
        self.loose_lines(chunk.tokens, chunk.work, &mut spans);
        let words = Words { sources: self.sources, side: chunk.side, tokens: chunk.tokens };
        round.wording = words.wording(&spans, &within);
        if round.only_starts() && !numbered {
            self.next = first;
        }
        Some(round)
    }

    /// Lines behind a round that are none of it become remarks; where they speak of work, that is a warning.
    fn loose_lines(&mut self, tokens: &[Token], work: usize, spans: &mut Vec<(Range<usize>, Sense)>) {
        let mut start = work;
        while start < tokens.len() {
            let next = tokens.iter().skip(start + 1).position(|token| token.starts_line);
            let end = next.map_or(tokens.len(), |next| start + 1 + next);
            // What speaks of work is told, and not printed as a remark.
            if !self.loose_line(tokens, start..end) {
                spans.push((start..end, Sense::Aside));
            }
            start = end;
        }
    }

    /// Tells of a line that is no round; true where it speaks of work.
    fn loose_line(&mut self, tokens: &[Token], line: Range<usize>) -> bool {
        let place = span(tokens, tokens.len() - line.start, tokens.len() - line.end);
        let line = tokens.get(line).unwrap_or_default();
        let works = speaks_of_work(line, self.vocabulary);
        if works {
            let message = format!("`{}` speaks of work, but is no round: it has no number", told(line));
            let help = "number it like the other rounds if it is one; here it is kept as a remark";
            self.report.add(Diagnostic::warning("no-round", message).at(place).help(help));
        } else {
            self.set_aside.push((told(line), place));
        }
        works
    }

    /// One note of all that was taken for remarks.
    fn tell_set_aside(&mut self) {
        const MOST: usize = 12;
        let Some((_, place)) = self.set_aside.first() else { return };
        let one = |(text, place): &(String, Place)| format!("line {} `{text}`", place.line);
        let mut told: Vec<String> = self.set_aside.iter().take(MOST).map(one).collect();
        if let Some(more) = self.set_aside.len().checked_sub(MOST).filter(|more| *more > 0) {
            told.push(format!("and {more} more"));
        }
        let message = format!("kept as remarks, since they speak of no work: {}", told.join(", "));
        let help = "look whether any of these says how to work; if so, write it as a step";
        self.report.add(Diagnostic::note("set-aside", message).at(*place).help(help));
    }

    /// The stitch that `inc` means in a round: the first it names.
    fn main_stitch(&self, tokens: &[Token]) -> Stitch {
        let named = (0..tokens.len()).filter_map(|at| {
            let rest = tokens.get(at..).unwrap_or_default();
            let whole = self.vocabulary.stitch(rest).map(|(stitch, _)| stitch);
            let inside = || {
                let stem = rest.first()?.word()?.strip_suffix("tog")?;
                self.vocabulary.stem(stem.trim_end_matches(|c: char| c.is_ascii_digit()))
            };
            whole.or_else(inside)
        });
        named.into_iter().find(|stitch| stitch.is_plain_fabric()).unwrap_or(self.main)
    }
}

/// Tokens as they are quoted in a message: not too many of them.
fn told(tokens: &[Token]) -> String {
    const MOST: usize = 12;
    let words: Vec<String> = tokens.iter().take(MOST).map(Token::show).collect();
    let more = if tokens.len() > MOST { " …" } else { "" };
    format!("{}{more}", words.join(" ").replace(" ,", ",").replace(" .", "."))
}

/// What a clause is to its round.
const fn sense(clause: &Clause) -> Sense {
    if matches!(clause, Clause::Aside | Clause::Turn) {
        Sense::Aside
    } else if matches!(clause, Clause::Count(_)) {
        Sense::Count
    } else {
        Sense::Work
    }
}

/// From the token with `from` tokens left to the one before `to` tokens are left.
fn span(tokens: &[Token], from: usize, to: usize) -> Place {
    let first = tokens.get(tokens.len() - from).map(|token| token.place).unwrap_or_default();
    let last = (tokens.len() - to).checked_sub(1).and_then(|at| tokens.get(at)).map_or(first, |token| token.place);
    Place { length: (last.offset + last.length).saturating_sub(first.offset), ..first }
}

/// The end of the line that begins at `start`, where that can't be read and nothing before it was left open.
fn loose_line(tokens: &[Token], start: usize, spans: &[(Range<usize>, Sense)]) -> Option<usize> {
    let before = tokens.get(start.checked_sub(1)?)?;
    let open = matches!(before.kind, Kind::Sign(',' | ';' | ':' | '*') | Kind::Dash(_) | Kind::Open(_));
    let counted = spans.iter().any(|(_, sense)| *sense == Sense::Count);
    let stopped = matches!(before.kind, Kind::Sign('.' | '!')) || counted;
    let round =
        tokens.get(start)?.word().is_some_and(|word| ["rnd", "round", "row", "rnds", "rounds", "rows"].contains(&word));
    let begins = tokens.get(start)?.starts_line && !open && stopped && !round;
    let next = tokens.iter().skip(start + 1).position(|token| token.starts_line);
    begins.then(|| next.map_or(tokens.len(), |next| start + 1 + next))
}

/// True where a line names a stitch, a repeat or a count.
fn speaks_of_work(line: &[Token], vocabulary: &Vocabulary) -> bool {
    const AGAIN: [&str; 6] = ["rep", "repeat", "same", "continue", "around", "x"];
    (0..line.len()).any(|at| {
        let rest = line.get(at..).unwrap_or_default();
        let again = rest.first().and_then(Token::word).is_some_and(|word| AGAIN.contains(&word));
        vocabulary.stitch(rest).is_some() || again || counts(line, at)
    })
}

/// How many tokens from `at` on are what is told behind the count of a round: all to the end of the line where none of it
/// speaks of work, as a line of its own would be.
fn behind_count(tokens: &[Token], at: usize, vocabulary: &Vocabulary) -> Option<usize> {
    let stopped = tokens.get(at.checked_sub(1)?).is_some_and(|token| matches!(token.kind, Kind::Sign('.' | '!')));
    let rest = tokens.get(at..).filter(|_| stopped)?;
    let end = rest.iter().skip(1).position(|token| token.starts_line).map_or(rest.len(), |end| end + 1);
    let line = rest.get(..end)?;
    let named = line.first().is_some_and(|token| token.word().is_some());
    // An author's remark is quoted among words of another language, and may speak of work.
    let quoted = line.first().is_some_and(|token| matches!(token.kind, Kind::Sign('„' | '“' | '«' | '‘')));
    (quoted || (named && !speaks_of_work(line, vocabulary))).then_some(end)
}

/// Goes on after the next comma outside of brackets, past the token that could not be read.
fn recover(input: &mut Input<'_>, tokens: &[Token], at: usize, stop: usize) {
    let start = tokens.len() - at;
    // The input may stand anywhere; it is set to where the clause began.
    input.input.reset_to_start();
    input.next_slice(start);
    let mut depth = 0_usize;
    let mut taken = start;
    while let Some(token) = input.next_token() {
        match token.kind {
            // The count of a round that can't be read still stands.
            Kind::Open(_) if depth == 0 && taken > stop && counts(tokens, taken) => {
                input.input.reset_to_start();
                input.next_slice(taken);
                return;
            }
            Kind::Open(_) => depth += 1,
            Kind::Close(_) => depth = depth.saturating_sub(1),
            Kind::Sign(',' | ';' | '.') if depth == 0 && taken >= stop => return,
            Kind::Number(_) | Kind::Ordinal(_) | Kind::Word(_) | Kind::Sign(_) | Kind::Dash(_) => {}
        }
        taken += 1;
    }
}

/// True where `(24)`, `(24 sts)` or `(= 24)` stands at a bracket with no number of times behind it.
fn counts(tokens: &[Token], at: usize) -> bool {
    let equals = usize::from(tokens.get(at + 1).is_some_and(|token| token.kind == Kind::Sign('=')));
    let open = tokens.get(at).is_some_and(|token| matches!(token.kind, Kind::Open(_)));
    let number = open && tokens.get(at + 1 + equals).is_some_and(|token| token.number().is_some());
    let rest = tokens.get(at..).unwrap_or_default();
    let end = rest.iter().position(|token| matches!(token.kind, Kind::Close(_)));
    let after = end.and_then(|end| rest.get(end + 1));
    let last = after.is_none_or(|token| token.starts_line || matches!(token.kind, Kind::Sign('.' | ',' | ';')));
    number && end.is_some() && last
}

/// A piece that only says what the first round is worked into joins the round after it.
fn merge_foundations(rounds: Vec<WrittenRound>) -> Vec<WrittenRound> {
    let mut merged: Vec<WrittenRound> = Vec::new();
    let mut waiting: Option<WrittenRound> = None;
    for mut round in rounds {
        if let Some(start) = waiting.take() {
            let chain = start.begin.map(|begin| crate::craft::Foundation::Chain(begin.chains));
            round.foundation = round.foundation.or(start.foundation).or(chain.filter(|_| round.from_hook.is_some()));
            round.whole &= start.whole;
            round.wording = start.wording.before(round.wording);
        }
        if round.only_starts() {
            waiting = Some(round);
        } else {
            merged.push(round);
        }
    }
    merged.extend(waiting);
    merged
}
