//! The author's words of a round, as they are printed: clean, on one line, in the order they were written in.
//!
//! Blanks and comments become one blank, quotes and dashes those of print. The count stands apart, since it is stated in
//! a place of its own; so do remarks after it, which are no part of the work.

use super::lex::{Kind, Source, Token};
use crate::report::clean;
use std::ops::Range;

/// What a stretch of tokens is to its round.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Sense {
    /// Something to do, or how.
    Work,
    /// The count.
    Count,
    /// Something for the maker's hands or eyes that changes no stitch.
    Aside,
}

/// The author's words of a round.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Wording {
    /// What to do, remarks among it in their places.
    pub words: String,
    /// The count, without brackets.
    pub count: String,
    /// Those remarks once more, each by itself.
    pub asides: Vec<String>,
    /// Remarks after the count.
    pub after: Vec<String>,
}

/// Takes the tokens of a round apart by what each stretch of them is.
pub(super) struct Words<'t> {
    pub(super) sources: &'t [Source<'t>],
    /// The side of the work that the header names in brackets.
    pub(super) side: &'t [Token],
    pub(super) tokens: &'t [Token],
}

impl Words<'_> {
    /// The wording of a round of these stretches, in order; `within` are remarks inside of brackets.
    pub(super) fn wording(&self, spans: &[(Range<usize>, Sense)], within: &[Range<usize>]) -> Wording {
        let is = |wanted: Sense| move |(_, sense): &&(Range<usize>, Sense)| *sense == wanted;
        let worked = spans.iter().rfind(is(Sense::Work)).map_or(0, |(span, _)| span.end);
        let count = spans.iter().filter(is(Sense::Count)).find(|(span, _)| span.start >= worked);
        let (end, rest) = count.map_or((worked, worked), |(span, _)| (span.start, span.end));
        let asides = spans.iter().filter(is(Sense::Aside)).map(|(span, _)| span.clone());
        let after = asides.clone().filter(|span| span.start >= rest);
        let mut asides: Vec<Range<usize>> =
            asides.filter(|span| span.end <= end).chain(within.iter().cloned()).collect();
        asides.sort_by_key(|span| span.start);
        asides.dedup();
        let side = self.text(self.side.iter());
        let counts = |at: &usize| spans.iter().filter(is(Sense::Count)).any(|(span, _)| span.contains(at));
        let kept: Vec<&Token> = (0..end).filter(|at| !counts(at)).filter_map(|at| self.tokens.get(at)).collect();
        let words = [side.clone(), self.text(one_stop(&kept).into_iter())].join(" ");
        Wording {
            words: words.trim().to_owned(),
            count: count.map_or_else(String::new, |(span, _)| self.count(span)),
            asides: [side].into_iter().chain(self.remarks(asides)).filter(|text| !text.is_empty()).collect(),
            after: self.remarks(after.collect()),
        }
    }

    /// The count without the signs around it.
    fn count(&self, span: &Range<usize>) -> String {
        let sign = |token: &&Token| match token.kind {
            Kind::Open(_) | Kind::Close(_) | Kind::Dash(_) | Kind::Sign('=' | ':' | '.') => true,
            Kind::Number(_) | Kind::Ordinal(_) | Kind::Word(_) | Kind::Sign(_) => false,
        };
        let mut tokens: Vec<&Token> =
            self.tokens.get(span.clone()).unwrap_or_default().iter().skip_while(sign).collect();
        while tokens.last().is_some_and(sign) {
            tokens.pop();
        }
        self.text(tokens.into_iter())
    }

    /// Remarks with nothing but stops between them are one.
    fn remarks(&self, spans: Vec<Range<usize>>) -> Vec<String> {
        let mut joined: Vec<Range<usize>> = Vec::new();
        for span in spans {
            let stops = |from: usize| (from..span.start).all(|at| self.tokens.get(at).is_some_and(is_stop));
            match joined.last_mut() {
                Some(last) if last.end >= span.start || stops(last.end) => last.end = last.end.max(span.end),
                _ => joined.push(span),
            }
        }
        joined.into_iter().map(|span| self.text(self.tokens.get(span).unwrap_or_default().iter())).collect()
    }

    /// The text of tokens, without stops at either end.
    fn text<'a>(&self, tokens: impl Iterator<Item = &'a Token>) -> String {
        let mut text = String::new();
        let mut before: Option<&Token> = None;
        let mut quoted = false;
        let stop = |token: &&Token| is_stop(token) && !matches!(token.kind, Kind::Word(_));
        let mut tokens: Vec<&Token> = tokens.skip_while(stop).collect();
        while tokens.last().is_some_and(stop) {
            tokens.pop();
        }
        for token in tokens {
            let apart = before.is_some_and(|before| {
                before.source != token.source || before.start + before.place.length != token.start
            });
            if apart {
                text.push(' ');
            }
            let source = self.sources.get(token.source).map_or("", |source| source.text);
            match source.get(token.start..token.start + token.place.length).unwrap_or_default() {
                "-" if matches!(token.kind, Kind::Dash(true)) => text.push('–'),
                // After a number it stands for inches.
                "\"" if quoted || !matches!(before.map(|before| &before.kind), Some(Kind::Number(_))) => {
                    text.push(if quoted { '”' } else { '“' });
                    quoted = !quoted;
                }
                own => {
                    let shown = own.chars().filter(|c| clean::plain(*c));
                    text.extend(shown.map(|c| if c == '\'' { '’' } else { c }));
                }
            }
            before = Some(token);
        }
        text
    }
}

/// What stands between two things said.
fn is_stop(token: &Token) -> bool {
    matches!(token.kind, Kind::Sign(',' | ';' | '.' | ':') | Kind::Dash(true))
        || matches!(token.word(), Some("and" | "then"))
}

/// Of stops that follow one another where something was taken out, the last alone.
fn one_stop<'t>(tokens: &[&'t Token]) -> Vec<&'t Token> {
    let sign = |token: &Token| matches!(token.kind, Kind::Sign(',' | ';' | '.' | ':'));
    let next = tokens.iter().skip(1).map(Some).chain([None]);
    let kept = tokens.iter().zip(next).filter(|(token, next)| !(sign(token) && next.is_some_and(|next| sign(next))));
    kept.map(|(token, _)| *token).collect()
}

impl Wording {
    /// These words and those that follow them, for a start that is written by itself.
    pub(super) fn before(self, next: Self) -> Self {
        let words = [self.words, next.words].into_iter().filter(|words| !words.is_empty()).collect::<Vec<_>>();
        let asides = [self.asides, self.after, next.asides].concat();
        Self { words: words.join(", "), count: next.count, asides, after: next.after }
    }
}
