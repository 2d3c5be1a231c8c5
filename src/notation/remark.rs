//! Tells remarks from work: what a maker says beside the rounds, set aside and told, never lost.

use super::lex::{Kind, Token};
use super::vocabulary::Vocabulary;

/// Words that surely begin a remark: all up to the full stop belongs to it, numbers and stitches too.
const LEADS: &[&str] =
    &["attach", "embroider", "insert", "note", "photo", "picture", "remember", "see", "stuff", "stuffing", "tip"];

/// Words that begin what in brackets explains the step before it.
const EXPLAINS: &[&str] = &["by", "draw", "drawing", "pull", "pulling", "yarn", "yo", "yrh", "that"];

/// Words that speak of work: what holds one is no remark.
const WORK: &[&str] = &[
    "around", "beg", "blo", "bobble", "dec", "decrease", "each", "every", "even", "flo", "inc", "increase", "invdec",
    "loop", "loops", "lp", "lps", "next", "rep", "repeat", "ring", "rnd", "rnds", "round", "rounds", "row", "rows",
    "skip", "sp", "space", "spaces", "sps", "st", "sts", "stitch", "stitches", "times", "together", "tog", "twice",
    "unworked", "x",
];

/// True where the tokens speak of work.
pub(super) fn works(tokens: &[Token], vocabulary: &Vocabulary) -> bool {
    let near = |word: &str| {
        // A stitch with a slip of the finger in it is no remark.
        let short = |known: &&str| known.len() > 1 && strsim::damerau_levenshtein(word, known) == 1;
        word.len() <= 4 && !COMMON.contains(&word) && vocabulary.words().any(|known| short(&known))
    };
    (0..tokens.len()).any(|at| {
        let rest = tokens.get(at..).unwrap_or_default();
        let word = rest.first().and_then(Token::word);
        let number = rest.first().is_some_and(|token| matches!(token.kind, Kind::Number(_) | Kind::Sign('*' | '=')));
        number
            || vocabulary.stitch(rest).is_some()
            || word.is_some_and(|word| WORK.contains(&word) || word.ends_with("tog") || near(word))
    })
}

/// Common words that differ from a stitch's by a letter.
const COMMON: &[&str] = &[
    "a", "as", "do", "go", "he", "i", "in", "is", "it", "so", "to", "the", "up", "we", "you", "he", "of", "or", "on",
    "if", "at", "be", "by", "no", "now", "can", "her", "his", "for", "and", "are", "has", "too", "two", "this", "them",
    "then", "not", "out", "off", "use", "its", "put", "cut", "face", "ears", "head", "body", "with", "from", "your",
    "more", "back", "side", "tail", "pop", "pin", "fit",
];

/// What is at hand beside the work: a sentence that speaks of one and of no work is a remark, numbers and all.
const THINGS: &[&str] = &[
    "apart",
    "arms",
    "bead",
    "beads",
    "bell",
    "button",
    "buttons",
    "circumference",
    "cm",
    "diameter",
    "ears",
    "eye",
    "eyes",
    "felt",
    "gap",
    "hook",
    "inch",
    "inches",
    "legs",
    "long",
    "marker",
    "markers",
    "measures",
    "minutes",
    "mm",
    "mouth",
    "needle",
    "nose",
    "photo",
    "picture",
    "piece",
    "ribbon",
    "strand",
    "strands",
    "stuffing",
    "tail",
    "tall",
    "thread",
    "video",
    "whiskers",
    "wide",
    "wire",
    "yarn",
];

/// Words of work that stand in no sentence about things.
const DOES: &[&str] = &[
    "around", "continue", "dec", "decrease", "each", "even", "every", "inc", "increase", "into", "loop", "loops",
    "next", "rep", "repeat", "same", "skip", "sp", "space", "times", "together", "tog", "twice", "until", "work",
    "working",
];

/// How many tokens of a sentence speak of things at hand; a point between two digits ends none.
fn things(rest: &[Token], vocabulary: &Vocabulary) -> Option<usize> {
    let digit = |at: usize| rest.get(at).is_some_and(|token| token.number().is_some());
    let stop = |at: &usize| match rest[*at].kind {
        Kind::Sign('.') => !(digit(*at - 1) && digit(at + 1)),
        Kind::Sign('!' | '*' | '=') | Kind::Open(_) | Kind::Close(_) | Kind::Dash(true) => true,
        Kind::Number(_) | Kind::Ordinal(_) | Kind::Word(_) | Kind::Sign(_) | Kind::Dash(false) => rest[*at].starts_line,
    };
    let end = (1..rest.len()).find(stop).unwrap_or(rest.len());
    let said = rest.get(..end)?;
    let word = |token: &Token, words: &[&str]| token.word().is_some_and(|word| words.contains(&word));
    // `each 40 cm long`.
    let measured =
        |at: usize| word(&said[at], &["each"]) && said.get(at + 1).is_some_and(|next| next.number().is_some());
    let work = |at: usize| {
        (word(&said[at], DOES) && !measured(at)) || vocabulary.stitch(said.get(at..).unwrap_or_default()).is_some()
    };
    let told = said.iter().any(|token| word(token, THINGS)) && !(0..said.len()).any(work);
    let stopped = rest.get(end).is_some_and(|token| matches!(token.kind, Kind::Sign('.' | '!')) && !token.starts_line);
    told.then_some(end + usize::from(stopped))
}

/// How many tokens from `at` on are a remark. A clause stands alone where a sentence begins there.
pub(super) fn remark(tokens: &[Token], at: usize, vocabulary: &Vocabulary) -> Option<usize> {
    let rest = tokens.get(at..)?;
    let first = rest.first()?;
    if matches!(first.kind, Kind::Open(_)) {
        let end = rest.iter().position(|token| matches!(token.kind, Kind::Close(_)))?;
        let inside = rest.get(1..end)?;
        let sure =
            inside.first().and_then(Token::word).is_some_and(|word| LEADS.contains(&word) || EXPLAINS.contains(&word));
        // `(To dec, draw up …)`.
        let how = inside.first().and_then(Token::word) == Some("to")
            && inside
                .get(1)
                .and_then(Token::word)
                .is_some_and(|word| ["dec", "decrease", "inc", "increase", "make"].contains(&word));
        let sure = sure || how;
        let words = inside.iter().any(|token| token.word().is_some());
        let flat = inside.iter().all(|token| !matches!(token.kind, Kind::Open(_)));
        let remark = sure || !works(inside, vocabulary) || things(inside, vocabulary) == Some(inside.len());
        return (flat && words && remark).then_some(end + 1);
    }
    let lead = first.word()?;
    let stops = |wanted: &dyn Fn(&Kind) -> bool| {
        let stop = rest.iter().skip(1).position(|token| token.starts_line || wanted(&token.kind));
        stop.map_or(rest.len(), |at| at + 1)
    };
    if LEADS.contains(&lead) {
        return Some(stops(&|kind| matches!(kind, Kind::Sign('.' | '!'))));
    }
    let before = at.checked_sub(1).and_then(|before| tokens.get(before));
    let after = |token: &Token| matches!(token.kind, Kind::Sign('.' | '!' | ',' | ';') | Kind::Close(_));
    if before.is_none_or(after)
        && let Some(length) = things(rest, vocabulary)
    {
        return Some(length);
    }
    let begins = before.is_none_or(|token| matches!(token.kind, Kind::Sign('.' | '!') | Kind::Close(_)));
    let end = stops(&|kind| matches!(kind, Kind::Sign(',' | ';' | '.' | ':' | '!') | Kind::Open(_) | Kind::Dash(true)));
    let clause = rest.get(..end)?;
    let several = clause.iter().filter(|token| token.word().is_some()).count() > 1;
    (begins && several && !works(clause, vocabulary)).then_some(end)
}

/// True where a line, which has no number of its own, goes on with the round above it, whose last token is `before`.
pub(super) fn goes_on(line: &[Token], before: &Token, vocabulary: &Vocabulary) -> bool {
    // Words that a line may begin with to go on, beside those of work.
    const ON: &[&str] = &[
        "again",
        "and",
        "beginning",
        "break",
        "change",
        "close",
        "counts",
        "cut",
        "do",
        "end",
        "fasten",
        "finish",
        "fo",
        "for",
        "from",
        "hide",
        "in",
        "into",
        "join",
        "leave",
        "leaving",
        "mark",
        "move",
        "of",
        "pair",
        "place",
        "pm",
        "pull",
        "secure",
        "sew",
        "thread",
        "then",
        "to",
        "total",
        "trim",
        "turn",
        "until",
        "weave",
        "with",
        "work",
    ];
    let open = matches!(before.kind, Kind::Sign(',' | ';' | ':' | '*') | Kind::Dash(_) | Kind::Open(_));
    let word = line.first().and_then(Token::word);
    let own = |word: &str| {
        ON.contains(&word) || LEADS.contains(&word) || works(line.get(..1).unwrap_or_default(), vocabulary)
    };
    open || word.is_none_or(|word| own(word) || vocabulary.stitch(line).is_some())
}
