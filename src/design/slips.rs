//! What the YAML parser complains of, in a maker's words and with what to do.

use serde_saphyr::granit_parser::ErrorKind;
use serde_saphyr::{DefaultMessageFormatter, Error, ExternalMessageSource, MessageFormatter};

use crate::report::{Diagnostic, Place};

/// Kinds of slips, each with a cure of its own.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Slip {
    /// Too deep, or too many values.
    TooMuch,
    /// A second document in the file.
    Several,
    /// A tab where YAML wants blanks.
    Tab,
    /// A value that begins with a star or an ampersand.
    Alias,
    /// A bracket or brace that is left open, or closed by another.
    Bracket,
    /// A quotation mark that is left open, or what stands after one.
    Quote,
    /// A second colon in a line.
    Colon,
    /// A value that begins with a sign.
    Sign,
    /// Any other.
    Other,
}

/// The complaint itself, without what the parser wraps it in.
fn bare(error: &Error) -> &Error {
    if let Error::AliasError { error, .. } = error { bare(error) } else { error }
}

impl Slip {
    fn of(error: &Error) -> Self {
        if let Error::ExternalMessage { source, .. } = error
            && let ExternalMessageSource::Parser(scan) = source.as_ref()
        {
            return Self::of_scan(scan.kind());
        }
        // The parser's kinds may grow by some in any version: what isn't named here is another slip.
        let too_much = matches!(
            error,
            Error::Budget { .. }
                | Error::AliasReplayCounterOverflow { .. }
                | Error::AliasReplayLimitExceeded { .. }
                | Error::AliasExpansionLimitExceeded { .. }
                | Error::AliasReplayStackDepthExceeded { .. }
                | Error::RecursiveReferencesRequireWeakTypes { .. }
        );
        if too_much {
            Self::TooMuch
        } else if matches!(error, Error::MultipleDocuments { .. }) {
            Self::Several
        } else if matches!(error, Error::UnknownAnchor { .. }) {
            Self::Alias
        } else {
            Self::Other
        }
    }

    fn of_scan(kind: &ErrorKind) -> Self {
        let slips: [(Self, bool); 7] = [
            (Self::TooMuch, matches!(kind, ErrorKind::RecursionLimitExceeded)),
            (Self::Alias, matches!(kind, ErrorKind::MissingAnchorOrAliasName)),
            (Self::Colon, matches!(kind, ErrorKind::MappingValueNotAllowed)),
            (Self::Sign, matches!(kind, ErrorKind::UnexpectedCharacter { .. })),
            (Self::Tab, is_tab(kind)),
            (Self::Bracket, is_bracket(kind)),
            (Self::Quote, is_quote(kind)),
        ];
        slips.into_iter().find(|(_, is)| *is).map_or(Self::Other, |(slip, _)| slip)
    }

    /// What to do about it, where it stands on this line.
    fn cure(self, line: &str) -> &'static str {
        let rounds = ["Rnd", "rnd", "rep", "sc", "dc", "inc", " st"];
        let round = rounds.iter().any(|word| line.contains(word));
        match self {
            Self::Several => "keep one design in a file: remove the line `---` and what follows it",
            Self::Tab => "indent with spaces: YAML allows no tabs at the start of a line",
            _ if round && (self == Self::Alias || line.trim_start().starts_with("- [")) => {
                "stars and brackets mean something to YAML: write rounds after `written: |`, one round a line, indented"
            }
            Self::Alias => "put a value that begins with `*` in quotes",
            Self::Bracket => "close every `[` with `]` and every `{` with `}`",
            Self::Quote => "close the quotation mark, or put the whole value in quotes",
            Self::Colon => "put a value that holds a colon in quotes, and begin each field on its own line",
            Self::Sign => "put a value that begins with a sign such as `%`, `@` or ` in quotes",
            Self::TooMuch | Self::Other => {
                "look at the indentation and the colons here; `roundelay new` writes a file to compare with"
            }
        }
    }
}

fn is_tab(kind: &ErrorKind) -> bool {
    matches!(
        kind,
        ErrorKind::TabNotAllowed
            | ErrorKind::TabInBlockIndentation
            | ErrorKind::TabAtBlockScalarStart
            | ErrorKind::TabInIndentation
            | ErrorKind::TabInPlainScalar
    )
}

fn is_bracket(kind: &ErrorKind) -> bool {
    matches!(
        kind,
        ErrorKind::MisplacedFlowCollectionEnd
            | ErrorKind::MismatchedFlowCollectionEnd { .. }
            | ErrorKind::UnclosedFlowCollection { .. }
    )
}

fn is_quote(kind: &ErrorKind) -> bool {
    matches!(
        kind,
        ErrorKind::DocumentIndicatorInQuotedScalar
            | ErrorKind::UnclosedQuotedScalar
            | ErrorKind::InvalidQuotedScalarIndent
            | ErrorKind::InvalidTrailingSingleQuotedScalar
            | ErrorKind::InvalidTrailingDoubleQuotedScalar
            | ErrorKind::UnknownQuotedScalarEscape
            | ErrorKind::InvalidQuotedScalarHexEscape
            | ErrorKind::InvalidLowSurrogateHexEscape
            | ErrorKind::InvalidLowSurrogate
            | ErrorKind::MissingLowSurrogate
            | ErrorKind::UnpairedLowSurrogate
            | ErrorKind::InvalidUnicodeEscape
    )
}

/// Turns the parser's complaint into one that a maker understands.
pub(super) fn complaint(text: &str, error: &Error) -> Diagnostic {
    let slip = Slip::of(bare(error));
    let place = error.location().map(|location| {
        let offset = location.span().byte_offset().map(|offset| offset as usize);
        let offset = offset.unwrap_or_else(|| offset_of(text, location.line() as usize, location.column() as usize));
        let offset = if slip == Slip::Tab { leading_tab(text, offset).unwrap_or(offset) } else { offset };
        Place::in_text(text, offset, text[floor(text, offset)..].chars().next().map_or(0, char::len_utf8))
    });
    let line = place.and_then(|place| text.lines().nth(place.line.saturating_sub(1))).unwrap_or_default();
    if let Some(colour) = place.and_then(|place| bare_colour(text, place.offset)) {
        let message = "a colour without quotation marks: the # makes a remark of the rest of its line";
        let help = "put the value in quotes, such as \"#2f6f8f\"";
        return Diagnostic::error("not-yaml", message).at(colour).help(help);
    }
    let message = match slip {
        Slip::TooMuch => "the file is nested too deeply or has too many values to be a design".to_owned(),
        Slip::Several => "the file holds more than one design".to_owned(),
        Slip::Tab | Slip::Alias | Slip::Bracket | Slip::Quote | Slip::Colon | Slip::Sign | Slip::Other => {
            format!("the file can't be read as YAML: {}", DefaultMessageFormatter.format_message(bare(error)))
        }
    };
    Diagnostic::error("not-yaml", message).at(place).help(slip.cure(line))
}

/// A hexadecimal colour without quotes inside braces, which swallows the closing brace and lets the parser complain of
/// something further down.
fn bare_colour(text: &str, before: usize) -> Option<Place> {
    let mut start = 0;
    for line in text.split_inclusive('\n').take_while(|line| {
        start += line.len();
        start - line.len() <= before
    }) {
        let Some(at) = line.find(": #").map(|at| at + 2) else { continue };
        let figures = line[at + 1..].bytes().take_while(u8::is_ascii_hexdigit).count();
        if (figures == 3 || figures == 6) && line[..at].contains('{') {
            return Some(Place::in_text(text, start - line.len() + at, figures + 1));
        }
    }
    None
}

/// The parser complains of a tab where the value before it began; this is the tab itself.
fn leading_tab(text: &str, from: usize) -> Option<usize> {
    let start = text[..floor(text, from)].rfind('\n').map_or(0, |end| end + 1);
    let mut at = start;
    for line in text[start..].split_inclusive('\n') {
        let indent = line.len() - line.trim_start().len();
        if let Some(tab) = line[..indent].find('\t') {
            return Some(at + tab);
        }
        at += line.len();
    }
    None
}

fn floor(text: &str, offset: usize) -> usize {
    let mut offset = offset.min(text.len());
    while !text.is_char_boundary(offset) {
        offset -= 1;
    }
    offset
}

fn offset_of(text: &str, line: usize, column: usize) -> usize {
    let start: usize = text.split_inclusive('\n').take(line.saturating_sub(1)).map(str::len).sum();
    let rest = text.get(start..).unwrap_or_default();
    start + rest.chars().take(column.saturating_sub(1)).map(char::len_utf8).sum::<usize>()
}
