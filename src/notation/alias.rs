//! Short names that a text gives to stitches before its rounds: `X = sc, V = inc, A = dec`. Below, what they stand for is
//! put in their place.

use super::complain::is_word;
use super::header::header;
use super::lex::{Kind, Source, Token};
use super::vocabulary::Vocabulary;
use crate::report::Place;

/// A short name, word by word, and what it stands for.
struct Alias {
    /// As they were written: a letter alone is told from a small one.
    words: Vec<String>,
    means: Vec<Kind>,
}

/// Whoever defines more names than these is no maker.
const MOST: usize = 40;

/// Words for shaping, which a name may stand for beside a stitch.
const SHAPING: &[&str] = &["inc", "increase", "dec", "decrease", "invdec"];

/// The tokens with the names of the text's own put into words of the notation.
pub(super) fn spelled_out(tokens: Vec<Token>, sources: &[Source<'_>], vocabulary: &Vocabulary) -> Vec<Token> {
    let text = |token: &Token| {
        let source = sources.get(token.source).map_or("", |source| source.text);
        source.get(token.start..token.start + token.place.length).unwrap_or_default().to_owned()
    };
    let worded = |at: usize| tokens[at].starts_line && header(&tokens[at..]).is_some();
    let Some(begin) = (0..tokens.len()).find(|at| worded(*at)) else { return tokens };
    let (preface, rounds) = tokens.split_at(begin);
    let ends = |token: &Token| matches!(token.kind, Kind::Sign(',' | ';' | '.') | Kind::Open(_) | Kind::Close(_));
    let mut known: Vec<Alias> = Vec::new();
    let mut from = 0;
    for at in 0..=preface.len() {
        if at < preface.len() && !preface[at].starts_line && !ends(&preface[at]) {
            continue;
        }
        known.extend(defined(preface.get(from..at).unwrap_or_default(), &text, vocabulary));
        from = if at < preface.len() && ends(&preface[at]) { at + 1 } else { at };
    }
    if known.is_empty() || known.len() > MOST {
        return tokens;
    }
    let mut spelled = preface.to_vec();
    let mut at = 0;
    while let Some(rest) = rounds.get(at..).filter(|rest| !rest.is_empty()) {
        let before = at.checked_sub(1).and_then(|before| rounds.get(before));
        at += replaced(rest, before, &known, &text, &mut spelled);
    }
    spelled
}

/// The name that a stretch between two stops defines: `X = sc`, `A: decrease`.
fn defined(said: &[Token], text: &dyn Fn(&Token) -> String, vocabulary: &Vocabulary) -> Option<Alias> {
    let tie = |token: &Token| matches!(token.kind, Kind::Sign(':' | '=') | Kind::Dash(_));
    let last = said.iter().take(8).rposition(tie)?;
    let head = said.get(..last)?;
    // `Abbreviations: X = sc`.
    let head = head.get(head.iter().rposition(|token| token.kind == Kind::Sign(':')).map_or(0, |at| at + 1)..)?;
    let (words, means) = (head, said.get(last + 1..)?);
    let letter = matches!(words, [one] if one.word().is_some_and(|word| word.chars().count() == 1));
    // A longer name has to be put equal: `Side: sc` is none.
    let sure = letter || said.get(last).is_some_and(|token| token.kind == Kind::Sign('='));
    let own = |token: &Token| token.word().is_some_and(|word| sure && (letter || !is_word(word) || words.len() > 1));
    let named = (1..=2).contains(&words.len()) && words.iter().all(own) && vocabulary.stitch(words).is_none();
    let stitch = vocabulary.stitch(means).is_some_and(|(_, taken)| taken == means.len());
    let shaping = match means {
        [one] => one.word().is_some_and(|word| SHAPING.contains(&word)),
        [lead, one] => {
            ["invisible", "inv", "sc"].contains(&lead.word()?) && one.word().is_some_and(|word| SHAPING.contains(&word))
        }
        _ => false,
    };
    (named && (stitch || shaping)).then(|| Alias {
        words: words.iter().map(text).collect(),
        means: means.iter().map(|token| token.kind.clone()).collect(),
    })
}

/// Puts the first of the tokens, or what it stands for, behind those that are spelled out; how many were taken.
fn replaced(
    rest: &[Token],
    before: Option<&Token>,
    known: &[Alias],
    text: &dyn Fn(&Token) -> String,
    spelled: &mut Vec<Token>,
) -> usize {
    let Some(first) = rest.first() else { return 0 };
    if first.word().is_none() {
        spelled.push(first.clone());
        return 1;
    }
    // `(X, V) x 6`: behind a bracket it says how often.
    let number = |at: usize| rest.get(at).is_some_and(|token| token.number().is_some());
    let work = before.is_some_and(|token| match token.kind {
        Kind::Close(_) | Kind::Sign('*') => true,
        Kind::Word(_) => number(1),
        Kind::Number(_) => matches!(rest.get(1).map(|token| &token.kind), Some(Kind::Open(_))),
        Kind::Ordinal(_) | Kind::Open(_) | Kind::Sign(_) | Kind::Dash(_) => false,
    });
    let often = first.word() == Some("x") && work;
    let fits = |alias: &&Alias| {
        let letter = matches!(&alias.words[..], [one] if one.chars().count() == 1);
        let same = |(token, word): (&Token, &String)| {
            let own = text(token);
            if letter { own == *word } else { own.eq_ignore_ascii_case(word) }
        };
        rest.len() >= alias.words.len() && rest.iter().zip(&alias.words).all(same)
    };
    let whole = known.iter().filter(fits).max_by_key(|alias| alias.words.len()).filter(|_| !often);
    let mut put = |token: &Token, start: usize, length: usize, means: &[Kind], starts_line: bool| {
        for (index, kind) in means.iter().enumerate() {
            // All but the first take no room.
            let (start, length) = if index == 0 { (start, length) } else { (start + length, 0) };
            let offset = token.place.offset + (start - token.start);
            let column = token.place.column + (start - token.start);
            let place = Place { length: length.max(1), offset, column, ..token.place };
            let starts_line = starts_line && index == 0;
            spelled.push(Token { kind: kind.clone(), place, start, starts_line, source: token.source });
        }
    };
    if let Some(alias) = whole {
        let end = rest.get(alias.words.len() - 1).map_or(first.start, |last| last.start + last.place.length);
        put(first, first.start, end.saturating_sub(first.start), &alias.means, first.starts_line);
        return alias.words.len();
    }
    // `XXV`: letters that are run together.
    let own = text(first);
    let one = |letter: char| known.iter().find(|alias| matches!(&alias.words[..], [word] if word.chars().eq([letter])));
    let letters: Option<Vec<(usize, &Alias)>> =
        own.char_indices().map(|(at, letter)| Some((at, one(letter)?))).collect();
    match letters.filter(|letters| letters.len() > 1 && own.is_ascii()) {
        Some(letters) => {
            for (at, alias) in letters {
                if at > 0 {
                    put(first, first.start + at, 0, &[Kind::Sign(',')], false);
                }
                put(first, first.start + at, 1, &alias.means, first.starts_line && at == 0);
            }
        }
        None => spelled.push(first.clone()),
    }
    1
}
