//! Reading design files as far as a job needs them.

use std::fs::File;
use std::io::{self, Read};
use std::mem;
use std::path::Path;

use roundelay::design::text_of;
use roundelay::limits;
use roundelay::pattern::{Beside, Pattern};
use roundelay::report::{Diagnostic, Report};

/// A file as read, with its complaints.
pub(super) struct Source {
    /// Its name in complaints.
    pub(super) name: String,
    /// Its text, as the places of complaints count it; empty where it is no text.
    pub(super) text: String,
    /// The complaints.
    pub(super) report: Report,
}

/// Reads a file, or standard input for `-`, up to a byte more than a design may have.
pub(super) fn bytes(path: &Path) -> io::Result<(String, Vec<u8>)> {
    let mut bytes = Vec::new();
    let most = limits::BYTES as u64 + 1;
    if path == Path::new("-") {
        io::stdin().lock().take(most).read_to_end(&mut bytes)?;
        return Ok(("standard input".to_owned(), bytes));
    }
    File::open(path)?.take(most).read_to_end(&mut bytes)?;
    Ok((path.display().to_string(), bytes))
}

/// Reads, solves and predicts a design, or written rounds with the design at `swatch` beside them. What was found wrong
/// is in the source.
pub(super) fn solve(name: String, bytes: &[u8], swatch: Option<&Path>) -> (Source, Option<Pattern>) {
    let read = if name.to_lowercase().ends_with(".txt") { rounds(bytes, swatch) } else { Pattern::read(bytes) };
    let (report, pattern) = match read {
        Ok(mut pattern) => (mem::take(&mut pattern.report), Some(pattern)),
        Err(report) => (report, None),
    };
    // What is no text is told in the report already.
    let text = text_of(bytes, &mut Report::new()).unwrap_or_default().to_owned();
    (Source { name, text, report }, pattern)
}

fn rounds(rounds: &[u8], swatch: Option<&Path>) -> Result<Pattern, Report> {
    let Some(path) = swatch else { return Pattern::read_rounds(rounds, None) };
    match bytes(path) {
        Ok((_, bytes)) => {
            let name = path.display().to_string();
            Pattern::read_rounds(rounds, Some(Beside { name: &name, bytes: &bytes }))
        }
        Err(error) => {
            let message = format!("the design {} for the swatch can't be read: {error}", path.display());
            let mut report = Report::new();
            report.add(Diagnostic::error("cannot-read", message).help("give the path of a design file"));
            Err(report)
        }
    }
}
