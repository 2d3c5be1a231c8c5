//! What went wrong or looks doubtful, where it stands in the file, and what to do about it.
//!
//! Every stage takes a [`Report`] to write into and hands back its value, or nothing once the report holds an error.
//! Many complaints are gathered at a time, and warnings travel beside the value they are about.

pub mod clean;
pub mod codes;

/// A stretch of the source text. Lines and columns count from 1, offset and length are bytes.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Place {
    /// Line, from 1.
    pub line: usize,
    /// Column in characters, from 1.
    pub column: usize,
    /// Byte offset from the start of the text.
    pub offset: usize,
    /// Length in bytes; 0 points between two characters.
    pub length: usize,
}

impl Place {
    /// The place of `length` bytes at `offset` of `text`; an offset beyond the text points at its end.
    pub fn in_text(text: &str, offset: usize, length: usize) -> Self {
        let mut offset = offset.min(text.len());
        while !text.is_char_boundary(offset) {
            offset -= 1;
        }
        let before = &text[..offset];
        let line = before.matches('\n').count() + 1;
        let column = before.rsplit('\n').next().unwrap_or_default().chars().count() + 1;
        Self { line, column, offset, length: length.min(text.len() - offset) }
    }
}

/// How much a complaint weighs.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Severity {
    /// Worth knowing, nothing to do.
    Note,
    /// The result stands, but look at this.
    Warning,
    /// No result until this is mended.
    Error,
}

/// One complaint.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Diagnostic {
    /// How much it weighs.
    pub severity: Severity,
    /// A short stable name in kebab-case, such as `unknown-field`; tests and scripts hold on to it.
    pub code: &'static str,
    /// What is wrong, in a maker's words, one sentence without a full stop at its end.
    pub message: String,
    /// What to do about it.
    pub help: Option<String>,
    /// Where it stands.
    pub place: Option<Place>,
}

impl Diagnostic {
    /// An error with its stable name and message.
    pub fn error(code: &'static str, message: impl Into<String>) -> Self {
        Self { severity: Severity::Error, code, message: message.into(), help: None, place: None }
    }

    /// A warning with its stable name and message.
    pub fn warning(code: &'static str, message: impl Into<String>) -> Self {
        Self { severity: Severity::Warning, ..Self::error(code, message) }
    }

    /// A note with its stable name and message.
    pub fn note(code: &'static str, message: impl Into<String>) -> Self {
        Self { severity: Severity::Note, ..Self::error(code, message) }
    }

    /// Points at a place of the source.
    #[must_use]
    pub fn at(mut self, place: impl Into<Option<Place>>) -> Self {
        self.place = place.into();
        self
    }

    /// Says what to do.
    #[must_use]
    pub fn help(mut self, help: impl Into<String>) -> Self {
        self.help = Some(help.into());
        self
    }
}

/// All complaints about one job, in the order in which they were found.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Report {
    /// The complaints.
    pub diagnostics: Vec<Diagnostic>,
}

impl Report {
    /// An empty report.
    pub fn new() -> Self {
        Self::default()
    }

    /// Adds a complaint; the same complaint at the same place is kept once.
    pub fn add(&mut self, mut diagnostic: Diagnostic) {
        // What a maker wrote is in it, and it goes to a terminal.
        diagnostic.message = clean::sentence(&diagnostic.message);
        diagnostic.help = diagnostic.help.map(|help| clean::sentence(&help));
        if !self.diagnostics.contains(&diagnostic) {
            self.diagnostics.push(diagnostic);
        }
    }

    /// True once an error was added.
    pub fn has_errors(&self) -> bool {
        self.count(Severity::Error) > 0
    }

    /// How many complaints weigh just this much.
    pub fn count(&self, severity: Severity) -> usize {
        self.diagnostics.iter().filter(|d| d.severity == severity).count()
    }

    /// The messages of the warnings, in order.
    pub fn warnings(&self) -> Vec<String> {
        let warnings = self.diagnostics.iter().filter(|d| d.severity == Severity::Warning);
        warnings.map(|d| d.message.clone()).collect()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_place_counts_characters_not_bytes() {
        let place = Place::in_text("größe: 1\nhead: ä", 17, 3);
        assert_eq!((place.line, place.column), (2, 7));
    }

    #[test]
    fn the_same_complaint_is_kept_once() {
        let mut report = Report::new();
        report.add(Diagnostic::warning("w", "twice"));
        report.add(Diagnostic::warning("w", "twice"));
        assert_eq!(report.warnings(), ["twice"]);
    }
}
