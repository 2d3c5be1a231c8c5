//! What is said of words that can't be read.

use super::grammar::DEEPEST;
use super::lex::{Kind, Token};
use super::vocabulary::Vocabulary;
use crate::craft::Terms;
use crate::report::{Diagnostic, Place};

/// Words of the notation that are no stitches, for telling unknown words from misplaced ones.
const KNOWN: &[&str] = &[
    "in",
    "into",
    "next",
    "each",
    "st",
    "sts",
    "stitch",
    "stitches",
    "around",
    "rep",
    "repeat",
    "from",
    "times",
    "more",
    "sk",
    "skip",
    "miss",
    "inc",
    "dec",
    "tog",
    "join",
    "to",
    "first",
    "last",
    "same",
    "ring",
    "sp",
    "space",
    "blo",
    "flo",
    "back",
    "front",
    "loop",
    "loops",
    "only",
    "of",
    "the",
    "and",
    "then",
    "turn",
    "shell",
    "counts",
    "count",
    "does",
    "not",
    "as",
    "working",
    "work",
    "with",
    "magic",
    "mr",
    "circle",
    "loosely",
    "adjustable",
    "make",
    "form",
    "hook",
    "rnd",
    "round",
    "row",
    "once",
    "twice",
    "all",
    "end",
    "top",
    "a",
    "an",
    "x",
    "over",
    "on",
    "both",
    "remaining",
    "rem",
    "inv",
    "invisible",
    "it",
    "at",
    "following",
    "total",
];

/// True for a word that belongs to the name of a stitch and just as well to that of a part: `Long side`, `Spikes`.
pub(crate) fn is_adjective(word: &str) -> bool {
    ["spike", "long", "reverse", "linked", "extended", "elongated", "crab"].contains(&word)
}

/// True for a word that rounds are written with.
pub(crate) fn is_word(word: &str) -> bool {
    let stitch = |terms| Vocabulary::of(terms).words().any(|known| known == word);
    let start = ["foundation", "setup", "start", "beginning", "fasten", "change", "using"].contains(&word);
    KNOWN.contains(&word) || start || stitch(Terms::Us) || stitch(Terms::Uk)
}

/// Says why the word at `stop` could not be read.
pub(super) fn complain(
    tokens: &[Token],
    stop: usize,
    vocabulary: &Vocabulary,
    too_deep: bool,
    round: Place,
) -> Diagnostic {
    if too_deep {
        let message = format!("brackets stand more than {DEEPEST} deep in brackets");
        return Diagnostic::error("too-deep", message).at(round);
    }
    let Some(token) = tokens.get(stop) else {
        let last = tokens.last().map_or(round, |token| token.place);
        let open = tokens.iter().filter(|token| matches!(token.kind, Kind::Open(_))).count();
        let closed = tokens.iter().filter(|token| matches!(token.kind, Kind::Close(_))).count();
        return if open > closed {
            Diagnostic::error("bracket-open", "a bracket is opened but never closed").at(last).help(
                "close it after the last stitch of the repeat and say how often: `[sc in next 4 sts, inc] 6 times`",
            )
        } else {
            Diagnostic::error("unfinished", "the round breaks off here: something should follow").at(last).help(
                "after brackets say how often, `[sc, inc] 6 times`, or where, `(2 dc, ch 2, 2 dc) in next ch-2 sp`",
            )
        };
    };
    let known = |word: &str| KNOWN.contains(&word) || vocabulary.words().any(|known| known == word);
    match token.word() {
        Some("shell" | "shells" | "sh") => {
            let (tall, help) = match vocabulary.terms {
                Terms::Us => ("dc", "write `5-dc shell in next st`, or `5 dc in next st`"),
                Terms::Uk => ("tr", "write `5-tr shell in next st`, or `5 tr in next st`"),
            };
            let message = format!("a shell is made of some number of stitches, such as 5 {tall}, and none is said");
            Diagnostic::error("bare-shell", message).at(token.place).help(help)
        }
        Some("along" | "other" | "opposite")
            if tokens.iter().skip(stop).take(4).any(|token| token.word() == Some("side")) =>
        {
            Diagnostic::error(
                "oval",
                "this goes along both sides of a chain: an oval, which can't be drawn as a round chart",
            )
            .at(token.place)
            .help("start in an adjustable ring, or in a ring of chains: `ch 4, sl st to first ch to form a ring`")
        }
        Some(word) if !known(word) => unknown(word, token.place, vocabulary),
        _ => {
            let after = stop.checked_sub(1).and_then(|before| tokens.get(before)).map(Token::show);
            let after = after.map(|before| format!(" after `{before}`")).unwrap_or_default();
            Diagnostic::error("not-understood", format!("`{}` makes no sense here{after}", token.show()))
                .at(token.place)
                .help("a step is written like `sc in next 5 sts`, `2 sc in next st`, `sc2tog`, `[sc, inc] 6 times`; commas stand between steps")
        }
    }
}

fn unknown(word: &str, place: Place, vocabulary: &Vocabulary) -> Diagnostic {
    let all = vocabulary.words().chain(KNOWN.iter().copied()).filter(|known| known.len() > 1);
    let near = all.map(|known| (strsim::damerau_levenshtein(word, known), known)).min();
    // A slip of the finger, not another word: short words differ by one letter.
    let near = near.filter(|(distance, known)| *distance <= if known.len().min(word.len()) > 4 { 2 } else { 1 });
    let complaint = Diagnostic::error("unknown-word", format!("`{word}` is not a word of the notation")).at(place);
    match near {
        Some((_, known)) if word.len() < 40 => complaint.help(format!("did you mean `{known}`?")),
        _ => complaint.help(
            "stitches are named by their abbreviations, such as sc, hdc, dc, sl st, ch, sc2tog, FPdc, 5-dc popcorn",
        ),
    }
}
