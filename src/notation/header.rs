//! Headers of rounds: the numbers they begin with.

use super::lex::{Kind, Token};
use crate::report::Place;
use std::cell::Cell;

/// Which rounds a header stands for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Numbers {
    /// None: it says what comes before them.
    Start,
    /// From this one to that one.
    These(u32, u32),
    /// So many after the last.
    Next(u32),
}

/// The header of a round.
#[derive(Clone, Copy, Debug)]
pub(super) struct Header {
    pub(super) numbers: Numbers,
    pub(super) row: bool,
    /// True where it is a number alone, which only the start of a line makes a header.
    pub(super) bare: bool,
    /// How many rounds it says that there are.
    pub(super) told: Option<u32>,
    pub(super) place: Place,
    /// Tokens of the header.
    pub(super) length: usize,
}

const ROUND_WORDS: &[&str] = &["rnd", "rnds", "round", "rounds", "rd", "rds", "rn", "rdn", "r", "step", "steps"];
const ROW_WORDS: &[&str] = &["row", "rows"];
const ORDINALS: &[&str] =
    &["first", "second", "third", "fourth", "fifth", "sixth", "seventh", "eighth", "ninth", "tenth"];

/// The tokens of a line as its header is looked for in them.
struct Line<'t> {
    tokens: &'t [Token],
    /// How many rounds it says that there are.
    told: Cell<Option<u32>>,
}

impl Line<'_> {
    fn word(&self, at: usize) -> Option<&str> {
        self.tokens.get(at).and_then(Token::word)
    }

    fn number(&self, at: usize) -> Option<u32> {
        self.tokens.get(at).and_then(Token::number)
    }

    /// A number, in words as well.
    fn said(&self, at: usize) -> Option<u32> {
        const WORDS: &[&str] =
            &["one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve"];
        let word = || WORDS.iter().position(|known| self.word(at) == Some(known)).map(|index| index as u32 + 1);
        self.number(at).or_else(word)
    }

    fn dash(&self, at: usize) -> bool {
        matches!(self.tokens.get(at).map(|token| &token.kind), Some(Kind::Dash(_)))
    }

    fn sign(&self, at: usize) -> bool {
        matches!(self.tokens.get(at).map(|token| &token.kind), Some(Kind::Sign(':' | '.' | '=') | Kind::Close(_)))
    }

    /// True for the word for a round; in the second place, true for that for a row.
    fn round(&self, at: usize) -> Option<bool> {
        let word = self.word(at)?;
        let row = ROW_WORDS.contains(&word);
        (row || ROUND_WORDS.contains(&word)).then_some(row)
    }

    /// `2nd`, `second`.
    fn ordinal(&self, at: usize) -> Option<u32> {
        match &self.tokens.get(at)?.kind {
            Kind::Ordinal(number) => Some(*number),
            Kind::Word(word) => ORDINALS.iter().position(|known| known == word).map(|index| index as u32 + 1),
            Kind::Number(_) | Kind::Open(_) | Kind::Close(_) | Kind::Sign(_) | Kind::Dash(_) => None,
        }
    }

    /// What ties the two ends of a range together.
    fn range(&self, at: usize) -> bool {
        self.dash(at) || matches!(self.word(at), Some("to" | "through" | "thru"))
    }

    /// Past `incl.`, `inclusive`, in brackets or behind a comma, which says nothing that a range doesn't.
    fn inclusive(&self, at: usize) -> usize {
        let lead = usize::from(self.comma(at) || self.open(at));
        if !matches!(self.word(at + lead), Some("incl" | "inclusive")) {
            return at;
        }
        let end = at + lead + 1;
        // The stop of an abbreviation, where the colon follows.
        let end = end + usize::from(self.stop(end) && self.sign(end + 1));
        end + usize::from(self.open(at) && self.close(end))
    }

    /// True where a dash between blanks leads from the number of one round to its work: `Rnd 1 – 6 sc in ring`.
    fn works_on(&self, at: usize) -> bool {
        let lead = matches!(self.tokens.get(at).map(|token| &token.kind), Some(Kind::Dash(true)));
        let one = (0..at).rev().find_map(|word| self.word(word)).is_some_and(|word| !word.ends_with('s'));
        lead && one && self.round(at + 1).is_none() && self.word(at + 2).is_some()
    }

    /// What stands between rounds told one by one.
    fn and(&self, at: usize) -> bool {
        let sign = matches!(self.tokens.get(at).map(|token| &token.kind), Some(Kind::Sign(',' | '&' | '/' | '+')));
        sign || self.word(at) == Some("and")
    }

    /// The side that stands behind a header, in brackets, and its colon.
    fn end(&self, mut length: usize) -> usize {
        if matches!(self.word(length + 1), Some("rs" | "ws")) {
            length += 3;
        } else if matches!(self.word(length + 1), Some("right" | "wrong")) && self.word(length + 2) == Some("side") {
            length += 4;
        } else if self.open(length) {
            // `Round 7 (eyelet round):` has a name of its own.
            let named = (length + 1..length + 6).find(|at| self.word(*at).is_none());
            let named = named.filter(|at| *at > length + 1 && self.close(*at));
            let colon = |at: &usize| self.tokens.get(at + 1).is_some_and(|token| token.kind == Kind::Sign(':'));
            length = named.filter(colon).map_or(length, |at| at + 1);
        }
        length + usize::from(self.sign(length))
    }

    /// `Rnd 3:`, `Rounds 8–14.`, `Rnds 5, 6 and 7:`.
    fn numbered(&self) -> Option<(Numbers, bool, usize)> {
        let open = usize::from(self.open(0) || self.word(0) == Some("for"));
        let row = self.round(open)?;
        let at = open + 1 + usize::from(self.stop(open + 1));
        let from = self.number(at).or_else(|| self.said(at).filter(|_| self.sign(at + 1)))?;
        // `R5–R7` names the round twice.
        let again = usize::from(self.round(at + 2).is_some());
        let to = self.number(at + 2 + again).filter(|_| self.range(at + 1) && !self.works_on(at + 1));
        let (to, length) = match to {
            Some(to) => (Some(to), at + 3 + again),
            None => self.listed(from, at + 1),
        };
        // In brackets it ends with one.
        if self.open(0) && !self.close(length) {
            return None;
        }
        let length = self.inclusive(length);
        let (many, told) = self.so_many(length);
        self.told.set(told);
        let mut end = self.end(many);
        if end == many && (self.dash(many) || self.comma(many)) {
            end += 1;
        }
        // `R1` without a blank is one, whatever follows.
        let close = matches!((self.tokens.first(), self.tokens.get(1)), (Some(one), Some(other))
            if one.start + one.place.length == other.start && one.starts_line);
        let bare = end == length && !close && matches!(self.word(0), Some("r" | "rn" | "step" | "steps"));
        (!bare).then_some((Numbers::These(from, to.unwrap_or(from)), row, end))
    }

    /// `4.`, `5-7:`, `8)`.
    fn bare(&self) -> Option<(Numbers, bool, usize)> {
        let from = self.number(0)?;
        let to = self.number(2).filter(|_| self.range(1));
        let end = if to.is_some() { 3 } else { 1 };
        let slash = self.tokens.get(end).is_some_and(|token| token.kind == Kind::Sign('/'));
        // `5 - (3 sc, inc) x 6`.
        let dashed = to.is_none() && self.dash(end) && self.open(end + 1);
        (self.sign(end) || slash || dashed).then_some((Numbers::These(from, to.unwrap_or(from)), false, end + 1))
    }

    fn open(&self, at: usize) -> bool {
        self.tokens.get(at).is_some_and(|token| matches!(token.kind, Kind::Open(_)))
    }

    fn close(&self, at: usize) -> bool {
        self.tokens.get(at).is_some_and(|token| matches!(token.kind, Kind::Close(_)))
    }

    fn comma(&self, at: usize) -> bool {
        self.tokens.get(at).is_some_and(|token| token.kind == Kind::Sign(','))
    }

    /// A full stop.
    fn stop(&self, at: usize) -> bool {
        self.tokens.get(at).is_some_and(|token| token.kind == Kind::Sign('.'))
    }

    /// Past `(3 rounds)`, and how many it tells.
    fn so_many(&self, at: usize) -> (usize, Option<u32>) {
        let told = self.number(at + 1).filter(|_| self.open(at) && self.round(at + 2).is_some() && self.close(at + 3));
        (if told.is_some() { at + 4 } else { at }, told)
    }

    /// The last of rounds told one by one, and the tokens up to there; `length` are those of the first.
    fn listed(&self, from: u32, mut length: usize) -> (Option<u32>, usize) {
        let mut last = from;
        loop {
            let mut at = length;
            while self.and(at) {
                at += 1;
            }
            at += usize::from(at > length && self.round(at).is_some());
            let next = self.number(at);
            if at == length || next.is_none() || next != last.checked_add(1) {
                return ((last > from).then_some(last), length);
            }
            (last, length) = (last + 1, at + 1);
        }
    }

    /// `1st rnd:`, `3rd to 5th rounds:`, `second row:`.
    fn ordinals(&self) -> Option<(Numbers, bool, usize)> {
        // `2 row:` is `2nd row:`.
        let one = || self.number(0).filter(|_| matches!(self.word(1), Some("row" | "rnd" | "round" | "rd")));
        let from = self.ordinal(0).or_else(one)?;
        let (mut to, mut at) = (self.ordinal(2).filter(|_| self.range(1)), 3);
        if to.is_none() {
            at = 1;
            // `10th, 11th and 12th`.
            while let Some(next) = (at..at + 3).find(|next| !self.and(*next)).filter(|next| *next > at)
                && self.ordinal(next) == to.unwrap_or(from).checked_add(1)
            {
                (to, at) = (self.ordinal(next), next + 1);
            }
        }
        let row = self.round(at)?;
        // `5th rnd to 10th rnd`.
        if to.is_none()
            && self.range(at + 1)
            && self.round(at + 3).is_some()
            && let Some(last) = self.ordinal(at + 2)
        {
            (to, at) = (Some(last), at + 3);
        }
        let behind = self.inclusive(at + 1);
        let end = self.end(behind);
        let end = if end == behind && self.dash(end) { end + 1 } else { end };
        // `first round` without a colon may be anything.
        let sure = end > behind || matches!(self.tokens.first().map(|token| &token.kind), Some(Kind::Ordinal(_)));
        sure.then_some((Numbers::These(from, to.unwrap_or(from)), row, end))
    }

    /// `Next rnd:`, `Next 3 rounds:`, `Last round:`.
    fn following(&self) -> Option<(Numbers, bool, usize)> {
        let lead = self.word(0).filter(|word| ["next", "following", "foll", "last", "final"].contains(word))?;
        let count = self.said(1).filter(|_| lead != "last" && lead != "final");
        let at = if count.is_some() { 2 } else { 1 };
        let row = self.round(at)?;
        let end = self.end(at + 1);
        (end > at + 1).then_some((Numbers::Next(count.unwrap_or(1)), row, end))
    }

    /// `Work 3 rnds even`, `Work even for 3 rounds`; what is done in them is left to be read.
    fn even(&self) -> Option<(Numbers, bool, usize)> {
        let lead = matches!(self.word(0), Some("work" | "crochet" | "continue" | "keep"));
        let after = usize::from(self.word(2) == Some("more"));
        let how = matches!(self.word(3 + after), Some("even" | "of" | "in" | "straight" | "without"));
        if lead
            && how
            && let Some(row) = self.round(2 + after)
        {
            return Some((Numbers::Next(self.said(1)?), row, 3 + after));
        }
        // `Repeat Rnd 7 two more times` is rounds of their own.
        let often = |at: usize| {
            let more = usize::from(self.word(at + 1) == Some("more"));
            let times = matches!(self.word(at + 1 + more), Some("times" | "time" | "x"));
            matches!(self.word(at), Some("once" | "twice")) || (self.said(at).is_some() && times)
        };
        let named = usize::from(matches!(self.word(1), Some("the" | "last" | "previous")));
        let again = matches!(self.word(0), Some("rep" | "repeat"));
        if again && (1..=2 + named).any(|at| self.round(at).is_some()) && (2..8).any(often) {
            return Some((Numbers::Next(1), false, 0));
        }
        // `Repeat Rnds 3 and 4 until piece measures 15 cm` is as many rounds as it takes.
        let again = again && self.round(1).is_some();
        let measured = |at: usize| (1..4).any(|next| matches!(self.word(at + next), Some("measures" | "is")));
        if (lead || again) && (1..12).any(|at| self.word(at) == Some("until") && measured(at)) {
            return Some((Numbers::Next(1), false, 0));
        }
        let stitch = self.word(1).is_some_and(|word| ["around", "even", "evenly"].contains(&word));
        let at = (1..8).find(|at| self.word(*at) == Some("for"))?;
        let at = if self.word(at + 1) == Some("another") { at + 1 } else { at };
        let row = self.round(at + 2).or_else(|| self.round(at + 3))?;
        (lead || stitch).then_some((Numbers::Next(self.said(at + 1)?), row, 0))
    }

    /// `No. 5:`.
    fn no(&self) -> Option<(Numbers, bool, usize)> {
        let lead = matches!(self.word(0), Some("no" | "nr")) && self.stop(1) && self.sign(3);
        let number = self.number(2).filter(|_| lead)?;
        Some((Numbers::These(number, number), false, 4))
    }

    /// `Foundation:`.
    fn start(&self) -> Option<(Numbers, bool, usize)> {
        let lead = self.word(0)?;
        let start = matches!(lead, "foundation" | "setup" | "start" | "beginning");
        let end = (1..=3).find(|at| start && self.sign(*at))? + 1;
        Some((Numbers::Start, false, end))
    }
}

/// The header at the start of the tokens.
pub(super) fn header(tokens: &[Token]) -> Option<Header> {
    let place = tokens.first()?.place;
    let line = Line { tokens, told: Cell::new(None) };
    let worded = line.start().or_else(|| line.numbered()).or_else(|| line.ordinals()).or_else(|| line.following());
    let worded = worded.or_else(|| line.even()).or_else(|| line.no());
    let bare = worded.is_none();
    let (numbers, row, length) = worded.or_else(|| line.bare())?;
    let told = line.told.get();
    Some(Header { numbers, row, bare, told, place, length })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::notation::lex::{Source, tokens};

    #[test]
    fn headers_in_the_usual_ways() {
        let cases = [
            ("Rnd 3: sc", Some((Numbers::These(3, 3), 3))),
            ("R1: sc", Some((Numbers::These(1, 1), 3))),
            ("Rounds 8–14. sc", Some((Numbers::These(8, 14), 5))),
            ("Rnds 5, 6 and 7: sc", Some((Numbers::These(5, 7), 7))),
            ("Rounds 2 & 3: sc", Some((Numbers::These(2, 3), 5))),
            ("Rnd 5 (RS): sc", Some((Numbers::These(5, 5), 6))),
            ("Round 1 (right side): sc", Some((Numbers::These(1, 1), 7))),
            ("Rnd 6 - sc", Some((Numbers::These(6, 6), 3))),
            ("R1 – 6sc in ring", Some((Numbers::These(1, 1), 3))),
            ("Rnds 1 – 6 sc in ring", Some((Numbers::These(1, 6), 4))),
            ("Round 1 – 6: sc", Some((Numbers::These(1, 6), 5))),
            ("1st rnd: sc", Some((Numbers::These(1, 1), 3))),
            ("3rd to 5th rounds: sc", Some((Numbers::These(3, 5), 5))),
            ("Second round: sc", Some((Numbers::These(2, 2), 3))),
            ("Next rnd: sc", Some((Numbers::Next(1), 3))),
            ("Next 3 rnds: sc", Some((Numbers::Next(3), 4))),
            ("Foundation: ch 4", Some((Numbers::Start, 2))),
            ("rnd 5, 8 sc", Some((Numbers::These(5, 5), 3))),
            ("(Rnd 5) sc", Some((Numbers::These(5, 5), 4))),
            ("For rounds 7-9, sc", Some((Numbers::These(7, 9), 6))),
            ("Round five: sc", Some((Numbers::These(5, 5), 3))),
            ("Next three rnds: sc", Some((Numbers::Next(3), 4))),
            ("Work even for 3 rounds", Some((Numbers::Next(3), 0))),
            ("No. 5: sc", Some((Numbers::These(5, 5), 4))),
            ("r 6 sc", None),
            ("4. sc around", Some((Numbers::These(4, 4), 2))),
            ("5-7) sc around", Some((Numbers::These(5, 7), 4))),
            ("8: sc around", Some((Numbers::These(8, 8), 2))),
            ("Rnd. 5: sc", Some((Numbers::These(5, 5), 4))),
            ("2 row: sc", Some((Numbers::These(2, 2), 3))),
            ("Round 11-13 - sc", Some((Numbers::These(11, 13), 5))),
            ("10th, 11th and 12th rnds: sc", Some((Numbers::These(10, 12), 7))),
            ("R5-R7: sc", Some((Numbers::These(5, 7), 6))),
            ("Rnd 5 and Rnd 6: sc", Some((Numbers::These(5, 6), 6))),
            ("Rnds 5-7 (3 rnds): sc", Some((Numbers::These(5, 7), 9))),
            ("Work 3 rnds even", Some((Numbers::Next(3), 3))),
            ("2 rows of sc", None),
            ("12 sc, inc", None),
            ("next 3 sts", None),
            ("first round of the hat", None),
            ("2nd ch from hook", None),
        ];
        for (text, expected) in cases {
            let found = header(&tokens(&[Source { text, place: None }]));
            assert_eq!(found.map(|header| (header.numbers, header.length)), expected, "{text}");
        }
    }
}
