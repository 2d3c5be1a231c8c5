//! Text of written rounds → tokens, each with its place in the file.

use crate::report::Place;
use winnow::combinator::{alt, opt};
use winnow::prelude::*;
use winnow::stream::{AsChar, LocatingSlice};
use winnow::token::{any, one_of, take_while};

/// A piece of text with written rounds in it.
#[derive(Clone, Copy, Debug)]
pub struct Source<'a> {
    /// The text, of one line or many.
    pub text: &'a str,
    /// Where it stands in a larger file, as the reader of that file tells it; nothing where the text is the file.
    pub place: Option<Place>,
}

/// Kinds of tokens.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) enum Kind {
    /// `5`; numbers too large for any round are kept as the largest number.
    Number(u32),
    /// `2nd`.
    Ordinal(u32),
    /// Letters, maybe with digits among them, in lower case: `sc2tog`.
    Word(String),
    /// `(`, `[`, `{` or `<`.
    Open(char),
    /// `)`, `]`, `}` or `>`.
    Close(char),
    /// `,`, `;`, `.`, `:`, `=`, `*`, `/` and whatever else.
    Sign(char),
    /// A dash of any length; true where blanks stand on both sides of it.
    Dash(bool),
}

/// A token.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) struct Token {
    pub(crate) kind: Kind,
    pub(crate) place: Place,
    /// Where it starts in the text of its source.
    pub(crate) start: usize,
    /// True where it is the first of its line.
    pub(crate) starts_line: bool,
    /// Which of the sources it is from.
    pub(crate) source: usize,
}

type Text<'i> = LocatingSlice<&'i str>;

/// The ending of an ordinal number: 2nd, 12th.
const fn ending(number: u32) -> &'static str {
    match (number % 100, number % 10) {
        (11..=13, _) => "th",
        (_, 1) => "st",
        (_, 2) => "nd",
        (_, 3) => "rd",
        _ => "th",
    }
}

fn number(input: &mut Text<'_>) -> winnow::Result<Kind> {
    let digits = take_while(1.., AsChar::is_dec_digit).parse_next(input)?;
    let value = digits.parse().unwrap_or(u32::MAX);
    let start = input.checkpoint();
    let letters: &str = take_while(0.., char::is_alphabetic).parse_next(input)?;
    if letters.eq_ignore_ascii_case(ending(value)) {
        return Ok(Kind::Ordinal(value));
    }
    input.reset(&start);
    Ok(Kind::Number(value))
}

fn word(input: &mut Text<'_>) -> winnow::Result<Kind> {
    let letter = |c: char| c.is_alphabetic();
    let start = input.checkpoint();
    let mut whole = (one_of(letter), take_while(0.., |c: char| c.is_alphanumeric() || c == '\'' || c == '’')).take();
    let word: &str = whole.parse_next(input)?;
    // `sc5` is `sc 5`, but the digits of `sc2tog` belong to it.
    let bare = word.trim_end_matches(|c: char| c.is_ascii_digit());
    let bare = if bare.len() < word.len() { run_on(bare, "x") } else { run_on(run_on(word, "blo"), "flo") };
    if bare.len() < word.len() {
        input.reset(&start);
        let count = bare.chars().count();
        return take_while(count..=count, |_| true).map(|w: &str| Kind::Word(w.to_lowercase())).parse_next(input);
    }
    // `6 inc's`.
    let stem = word.strip_suffix("'s").or_else(|| word.strip_suffix("’s")).filter(|stem| is_stem(stem));
    Ok(Kind::Word(stem.unwrap_or(word).to_lowercase()))
}

/// Short names of stitches that other signs are run together with.
const STEMS: [&str; 9] = ["inc", "dec", "sc", "dc", "hdc", "tr", "htr", "dtr", "st"];

fn is_stem(word: &str) -> bool {
    STEMS.iter().any(|known| word.eq_ignore_ascii_case(known))
}

/// The stitch that stands before `x6` or `BLO` without a blank; else all of the word.
fn run_on<'w>(word: &'w str, ending: &str) -> &'w str {
    let at = word.len().saturating_sub(ending.len());
    let (Some(stem), Some(end)) = (word.get(..at), word.get(at..)) else { return word };
    let splits = end.eq_ignore_ascii_case(ending) && is_stem(stem);
    if splits { stem } else { word }
}

fn sign(input: &mut Text<'_>) -> winnow::Result<Kind> {
    any.map(|c: char| match c {
        '(' | '[' | '{' | '<' => Kind::Open(c),
        ')' | ']' | '}' | '>' => Kind::Close(c),
        '×' => Kind::Word("x".to_owned()),
        '∗' | '⁎' | '＊' | '✱' | '★' | '☆' | '†' | '‡' | '§' => Kind::Sign('*'),
        '-' | '‐' | '‑' | '–' | '—' | '−' => Kind::Dash(false),
        _ => Kind::Sign(c),
    })
    .parse_next(input)
}

fn blanks(input: &mut Text<'_>) -> winnow::Result<()> {
    let comment = (one_of('#'), opt(take_while(0.., |c: char| c != '\n')));
    let _: () = winnow::combinator::repeat(0.., alt((take_while(1.., char::is_whitespace).void(), comment.void())))
        .parse_next(input)?;
    Ok(())
}

/// Where reading stands in one source; it only goes forward, so that telling places is quick.
struct Cursor {
    base: Option<Place>,
    /// Bytes between the place and the first character of the text: 1 for a quoted text.
    inset: usize,
    line: usize,
    column: usize,
    offset: usize,
}

impl Cursor {
    fn of(source: &Source<'_>) -> Self {
        let longer = source.place.map_or(0, |place| place.length.saturating_sub(source.text.len()));
        Self { base: source.place, inset: usize::from(longer >= 2), line: 1, column: 1, offset: 0 }
    }

    fn place(&mut self, text: &str, offset: usize, length: usize) -> Place {
        for passed in text.get(self.offset..offset).unwrap_or_default().chars() {
            (self.line, self.column) = if passed == '\n' { (self.line + 1, 1) } else { (self.line, self.column + 1) };
        }
        self.offset = offset;
        let Self { line, column, .. } = *self;
        let Some(base) = self.base else { return Place { line, column, offset, length } };
        let column = if line == 1 { base.column + self.inset + column - 1 } else { column };
        Place { line: base.line + line - 1, column, offset: base.offset + self.inset + offset, length }
    }
}

/// The tokens of all sources. Comments run from `#` to the end of their line.
pub(crate) fn tokens(sources: &[Source<'_>]) -> Vec<Token> {
    let mut tokens = Vec::new();
    for (index, source) in sources.iter().enumerate() {
        tokens_of(source, index, &mut tokens);
    }
    tokens
}

fn tokens_of(source: &Source<'_>, index: usize, tokens: &mut Vec<Token>) {
    let mut cursor = Cursor::of(source);
    let mut input = LocatingSlice::new(source.text);
    let mut last_end = 0;
    let mut first = true;
    loop {
        if blanks(&mut input).is_err() || input.is_empty() {
            return;
        }
        let Ok((mut kind, span)) = alt((number, word, sign)).with_span().parse_next(&mut input) else { return };
        let gap = source.text.get(last_end..span.start).unwrap_or_default();
        if kind == Kind::Dash(false) {
            let after = source.text.get(span.end..).unwrap_or_default();
            kind = Kind::Dash(!gap.is_empty() && after.starts_with(char::is_whitespace));
        }
        let place = cursor.place(source.text, span.start, span.len());
        let starts_line = first || gap.contains('\n');
        tokens.push(Token { kind, place, start: span.start, starts_line, source: index });
        last_end = span.end;
        first = false;
    }
}

impl Token {
    /// The word, in lower case.
    pub(crate) fn word(&self) -> Option<&str> {
        if let Kind::Word(word) = &self.kind { Some(word) } else { None }
    }

    /// The number.
    pub(crate) fn number(&self) -> Option<u32> {
        if let Kind::Number(number) = self.kind { Some(number) } else { None }
    }

    /// How it looks, for messages.
    pub(crate) fn show(&self) -> String {
        match &self.kind {
            Kind::Number(number) => number.to_string(),
            Kind::Ordinal(number) => format!("{number}{}", ending(*number)),
            Kind::Word(word) => word.clone(),
            Kind::Open(sign) | Kind::Close(sign) | Kind::Sign(sign) => sign.to_string(),
            Kind::Dash(_) => "–".to_owned(),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn kinds(text: &str) -> Vec<Kind> {
        tokens(&[Source { text, place: None }]).into_iter().map(|token| token.kind).collect()
    }

    fn word(text: &str) -> Kind {
        Kind::Word(text.to_owned())
    }

    #[test]
    fn words_numbers_and_signs() {
        assert_eq!(kinds("Sc2tog 6x"), [word("sc2tog"), Kind::Number(6), word("x")]);
        assert_eq!(kinds("incx6"), [word("inc"), word("x"), Kind::Number(6)]);
        assert_eq!(kinds("scBLO"), [word("sc"), word("blo")]);
        assert_eq!(kinds("sc5, 2nd"), [word("sc"), Kind::Number(5), Kind::Sign(','), Kind::Ordinal(2)]);
        assert_eq!(
            kinds("ch-2 – 18 # not this"),
            [word("ch"), Kind::Dash(false), Kind::Number(2), Kind::Dash(true), Kind::Number(18),]
        );
    }

    #[test]
    fn places_inside_a_scalar_are_places_of_the_file() {
        let place = Place { line: 12, column: 7, offset: 200, length: 9 };
        let token = tokens(&[Source { text: "6 sc inc!", place: Some(place) }]).into_iter().nth(2);
        let expected = Place { line: 12, column: 12, offset: 205, length: 3 };
        assert_eq!(token.map(|token| token.place), Some(expected));
        let quoted = Place { length: 11, ..place };
        let token = tokens(&[Source { text: "6 sc inc!", place: Some(quoted) }]).into_iter().nth(2);
        assert_eq!(token.map(|token| token.place.column), Some(13));
    }
}
