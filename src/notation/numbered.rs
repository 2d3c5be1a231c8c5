//! Where rounds are numbered in a text, before any of them is read.

use super::header::{Numbers, header};
use super::layout;
use super::lex::{Kind, Source, Token, tokens};
use super::tongue::{self, Guess};

/// A line that a numbered round begins.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct Numbered {
    /// The line, from 1.
    pub(crate) line: usize,
    /// The number of its round, the first where there are several.
    pub(crate) number: u32,
    /// True where it speaks of a ring or a chain to work into, as a first round does.
    pub(crate) starts: bool,
}

/// The lines of a text that numbered rounds begin, in any language that is read.
pub(crate) fn numbered(text: &str) -> Vec<Numbered> {
    /// What a first round goes into.
    const STARTS: &[&str] = &["ring", "circle", "mr", "mc", "hook", "loop"];
    let plain = layout::plain(tokens(&[Source { text, place: None }]));
    let tokens = match tongue::guess(&plain) {
        Guess::Other(tongue) => tongue.english(&plain),
        Guess::English | Guess::Unknown => plain,
    };
    let starts = (0..tokens.len()).filter(|at| tokens[*at].starts_line);
    let one = |at: usize| {
        let rest = tokens.get(at..)?;
        let header = header(rest)?;
        let Numbers::These(number, _) = header.numbers else { return None };
        let line = rest.iter().enumerate().take_while(|(index, token)| *index == 0 || !token.starts_line);
        let starts = line.map(|(_, token)| token).filter_map(Token::word).any(|word| STARTS.contains(&word));
        Some(Numbered { line: rest.first()?.place.line, number, starts })
    };
    starts.filter_map(one).collect()
}

/// True for a text that tells its rounds in running prose, as books before about 1910 do: `… in the second round work two
/// in each; third round, …`.
pub(super) fn runs_on(tokens: &[Token], headers: usize) -> bool {
    /// Fewer words than this are no prose.
    const FEW: usize = 40;
    const WHICH: &[&str] = &[
        "first",
        "second",
        "third",
        "fourth",
        "fifth",
        "sixth",
        "seventh",
        "eighth",
        "ninth",
        "tenth",
        "next",
        "following",
        "last",
        "another",
        "each",
        "every",
    ];
    let rounds = ["round", "rounds", "row", "rows", "rnd"];
    let which = |token: &Token| {
        matches!(token.kind, Kind::Ordinal(_)) || token.word().is_some_and(|word| WHICH.contains(&word))
    };
    let told =
        tokens.windows(2).filter(|pair| which(&pair[0]) && pair[1].word().is_some_and(|word| rounds.contains(&word)));
    let words = tokens.iter().filter(|token| token.word().is_some()).count();
    let told = told.count();
    words >= FEW && told >= 2 && told > headers * 2
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn numbered_lines_are_found_in_any_language() {
        let lines =
            |text: &str| numbered(text).iter().map(|one| (one.line, one.number, one.starts)).collect::<Vec<_>>();
        let english = "Body\nRnd 1: 6 sc in ring (6)\nRnds 2-3: inc around\nEar (make 2)\nRnd 1: 4 sc in ring";
        assert_eq!(lines(english), [(2, 1, true), (3, 2, false), (5, 1, true)]);
        let german = "Kopf\nRd 1: 6 fM in den Fadenring (6)\nRd 2: 1 fM in jede M (6)";
        assert_eq!(lines(german), [(2, 1, true), (3, 2, false)]);
    }
}
