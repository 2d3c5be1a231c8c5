//! Complaints shown to people, and as JSON.

use std::fmt;
use std::io::{self, IsTerminal};

use miette::{GraphicalReportHandler, GraphicalTheme, LabeledSpan, NamedSource, SourceCode};
use roundelay::report::{Diagnostic, Place, Report, Severity, clean};
use serde::Serialize;

use super::input::Source;
use super::output::{note, shown};

/// A line longer than this is not shown with its complaint.
const LONGEST_LINE: usize = 300;

/// A complaint with the text it is about, as miette wants it.
struct Shown<'a> {
    diagnostic: &'a Diagnostic,
    source: Option<&'a NamedSource<String>>,
}

impl fmt::Debug for Shown<'_> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.diagnostic.message)
    }
}

impl fmt::Display for Shown<'_> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.diagnostic.message)
    }
}

impl std::error::Error for Shown<'_> {}

impl miette::Diagnostic for Shown<'_> {
    fn code<'b>(&'b self) -> Option<Box<dyn fmt::Display + 'b>> {
        Some(Box::new(format!("{}[{}]", severity(self.diagnostic.severity), self.diagnostic.code)))
    }

    fn severity(&self) -> Option<miette::Severity> {
        Some(match self.diagnostic.severity {
            Severity::Note => miette::Severity::Advice,
            Severity::Warning => miette::Severity::Warning,
            Severity::Error => miette::Severity::Error,
        })
    }

    fn help<'b>(&'b self) -> Option<Box<dyn fmt::Display + 'b>> {
        self.diagnostic.help.as_ref().map(|help| Box::new(help) as Box<dyn fmt::Display + 'b>)
    }

    fn source_code(&self) -> Option<&dyn SourceCode> {
        self.source.map(|source| source as &dyn SourceCode)
    }

    fn labels(&self) -> Option<Box<dyn Iterator<Item = LabeledSpan> + '_>> {
        let place = self.source.and(self.diagnostic.place)?;
        Some(Box::new(std::iter::once(LabeledSpan::underline((place.offset, place.length)))))
    }
}

fn severity(severity: Severity) -> &'static str {
    match severity {
        Severity::Note => "note",
        Severity::Warning => "warning",
        Severity::Error => "error",
    }
}

/// Shows the complaints about a file on standard error, in the order of its lines, and how many there are.
pub(super) fn complaints(source: &Source) {
    let plain = !io::stderr().is_terminal();
    let colour = !plain && std::env::var_os("NO_COLOR").is_none_or(|value| value.is_empty());
    let theme = match (plain, colour) {
        (true, _) => GraphicalTheme::none(),
        (false, true) => GraphicalTheme::unicode(),
        (false, false) => GraphicalTheme::unicode_nocolor(),
    };
    // What isn't read by eye is searched by machine: no line is broken there.
    let width = if plain { usize::MAX / 4 } else { 100 };
    let handler = GraphicalReportHandler::new_themed(theme).with_width(width).with_context_lines(1).with_links(false);
    let text = NamedSource::new(clean::line(&source.name), clean::lines(&source.text));
    for diagnostic in in_order(&source.report) {
        let line = diagnostic.place.and_then(|place| source.text.lines().nth(place.line.saturating_sub(1)));
        let fits = line.is_some_and(|line| line.len() <= LONGEST_LINE);
        let complaint = Shown { diagnostic, source: fits.then_some(&text) };
        let mut out = String::new();
        if handler.render_report(&mut out, &complaint).is_ok() {
            shown(out.trim_end());
        }
        if !fits {
            note(&format!("  in {}\n", where_(&source.name, diagnostic.place)));
        }
    }
    if let Some(line) = counts(&source.report) {
        note(&format!("{}: {line}", source.name));
    }
}

fn where_(name: &str, place: Option<Place>) -> String {
    place.map_or_else(|| name.to_owned(), |place| format!("{name}:{}:{}", place.line, place.column))
}

fn in_order(report: &Report) -> Vec<&Diagnostic> {
    let mut sorted: Vec<&Diagnostic> = report.diagnostics.iter().collect();
    sorted.sort_by_key(|diagnostic| diagnostic.place.map_or((usize::MAX, 0), |place| (place.line, place.column)));
    sorted
}

/// `2 errors, 1 warning`; nothing for none.
fn counts(report: &Report) -> Option<String> {
    let count = |severity, one: &str, more: &str| match report.count(severity) {
        0 => None,
        1 => Some(format!("1 {one}")),
        n => Some(format!("{n} {more}")),
    };
    let counts = [
        count(Severity::Error, "error", "errors"),
        count(Severity::Warning, "warning", "warnings"),
        count(Severity::Note, "note", "notes"),
    ];
    let counts: Vec<String> = counts.into_iter().flatten().collect();
    (!counts.is_empty()).then(|| counts.join(", "))
}

/// A complaint in `check --format json`.
#[derive(Serialize)]
pub(super) struct JsonComplaint<'a> {
    file: String,
    line: Option<usize>,
    column: Option<usize>,
    code: &'a str,
    severity: &'static str,
    message: &'a str,
    help: Option<&'a str>,
}

/// The complaints about a file for JSON, in the order of its lines.
pub(super) fn json(source: &Source) -> Vec<JsonComplaint<'_>> {
    let one = |diagnostic| complaint(&source.name, diagnostic);
    in_order(&source.report).into_iter().map(one).collect()
}

fn complaint<'a>(file: &str, diagnostic: &'a Diagnostic) -> JsonComplaint<'a> {
    JsonComplaint {
        file: clean::line(file),
        line: diagnostic.place.map(|place| place.line),
        column: diagnostic.place.map(|place| place.column),
        code: diagnostic.code,
        severity: severity(diagnostic.severity),
        message: &diagnostic.message,
        help: diagnostic.help.as_deref(),
    }
}
