//! Stitches that a text defines before its rounds: `V-st: (dc, ch 1, dc) in one stitch`.

use super::grammar::{self, Context};
use super::lex::{Kind, Token};
use crate::craft::Made;
use winnow::stream::{Stateful, TokenSlice};

/// A stitch of the author's own.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct OwnStitch {
    /// Its name, word by word, dashes left out.
    words: Vec<String>,
    /// What is made in one place.
    pub(crate) made: Made,
}

impl OwnStitch {
    /// How many tokens its name takes, where the tokens begin with it.
    pub(crate) fn taken(&self, tokens: &[Token]) -> Option<usize> {
        let mut at = 0;
        for (index, word) in self.words.iter().enumerate() {
            if index > 0 && tokens.get(at).is_some_and(|token| token.kind == Kind::Dash(false)) {
                at += 1;
            }
            let own = tokens.get(at)?.word()?;
            // `V-sts`, `V-stitch`, `shells`.
            let last = index + 1 == self.words.len();
            let many = last && own.strip_suffix('s') == Some(word);
            let stitch = |word: &str| ["st", "sts", "stitch", "stitches"].contains(&word);
            if own != word && !many && !(last && index > 0 && stitch(own) && stitch(word)) {
                return None;
            }
            at += 1;
        }
        Some(at)
    }
}

/// The stitch that a line defines; nothing where it defines none.
pub(super) fn defined(line: &[Token], context: Context<'_>) -> Vec<OwnStitch> {
    const HEADS: &[&str] = &["abbreviations", "special", "stitches", "stitch", "key", "terms", "used", "notes"];
    let colon = |token: &Token| matches!(token.kind, Kind::Sign(':' | '=') | Kind::Dash(true));
    let head = line.iter().take_while(|token| token.word().is_some_and(|word| HEADS.contains(&word))).count();
    let line = match line.get(head) {
        Some(token) if head > 0 && colon(token) => line.get(head + 1..).unwrap_or_default(),
        _ => line,
    };
    let Some(end) = line.iter().take(9).position(colon) else { return Vec::new() };
    let (name, body) = (line.get(..end).unwrap_or_default(), line.get(end + 1..).unwrap_or_default());
    // `V-stitch (V-st)` has two names.
    let bracket = |token: &Token| matches!(token.kind, Kind::Open(_) | Kind::Close(_));
    let names = name.split(bracket).map(|part| part.iter().filter_map(Token::word).map(str::to_owned).collect());
    let names: Vec<Vec<String>> = names.filter(|words: &Vec<String>| (1..=3).contains(&words.len())).collect();
    let body = match body.iter().rposition(|token| matches!(token.word(), Some("in" | "into"))) {
        Some(at) => body.get(..at).unwrap_or_default(),
        None => body,
    };
    let body = match body.last() {
        Some(last) if last.kind == Kind::Sign('.') => body.get(..body.len() - 1).unwrap_or_default(),
        Some(_) | None => body,
    };
    // `Magic ring: 6 sc` is a round.
    let ring = |words: &Vec<String>| {
        words.iter().any(|word| ["ring", "circle", "mr", "round", "rnd"].contains(&word.as_str()))
    };
    if names.iter().any(ring) {
        return Vec::new();
    }
    let mut input = Stateful { input: TokenSlice::new(body), state: context };
    let Ok(made) = grammar::made_in_one(&mut input) else { return Vec::new() };
    if !input.is_empty() {
        return Vec::new();
    }
    names.into_iter().map(|words| OwnStitch { words, made: made.clone() }).collect()
}
