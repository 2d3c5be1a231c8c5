//! Reading design files as far as a job needs them.

use std::fs::File;
use std::io::{self, Read};
use std::mem;
use std::path::{Path, PathBuf};

use roundelay::design::text_of;
use roundelay::limits;
use roundelay::pattern::{Beside, Pattern};
use roundelay::report::{Diagnostic, Report};

use super::Outcome;
use super::output::failure;

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

/// The design whose swatch goes with written rounds.
pub(super) struct Swatch {
    pub(super) path: PathBuf,
    pub(super) bytes: Vec<u8>,
}

impl Swatch {
    /// Reads it, or says that it can't be read.
    pub(super) fn read(path: &Path) -> Result<Self, Outcome> {
        let read = bytes(path).map_err(|error| {
            let message = format!("the design {} for the swatch can't be read: {error}", path.display());
            failure(&message, "give the path of a design file, or only of its lines on swatch and yarn")
        });
        Ok(Self { path: path.to_owned(), bytes: read?.1 })
    }
}

/// True for the name of a file of written rounds; any other holds a design.
pub(super) fn holds_rounds(name: &str) -> bool {
    name.to_lowercase().ends_with(".txt")
}

/// Reads, solves and predicts a design, or written rounds, or one piece of them, with the design of the swatch beside them. What was found wrong
/// is in the source.
pub(super) fn solve(
    name: String,
    bytes: &[u8],
    swatch: Option<&Swatch>,
    piece: Option<&str>,
) -> (Source, Option<Pattern>) {
    let read = if holds_rounds(&name) {
        let beside = swatch.map(|swatch| (swatch.path.display().to_string(), &swatch.bytes));
        Pattern::read_piece(bytes, beside.as_ref().map(|(name, bytes)| Beside { name, bytes }), piece)
    } else {
        Pattern::read(bytes)
    };
    let (report, pattern) = match read {
        Ok(mut pattern) => (mem::take(&mut pattern.report), Some(pattern)),
        Err(report) => (report, None),
    };
    // What is no text is told in the report already.
    let text = text_of(bytes, &mut Report::new()).unwrap_or_default().to_owned();
    (Source { name, text, report }, pattern)
}

/// The same, with written rounds in their author's words or, where asked, told anew.
pub(super) fn worded(
    name: String,
    bytes: &[u8],
    swatch: Option<&Swatch>,
    (anew, piece): (bool, Option<&str>),
) -> (Source, Option<Pattern>) {
    let (source, pattern) = solve(name, bytes, swatch, piece);
    (source, if anew { pattern.map(Pattern::told_anew) } else { pattern })
}

/// The complaint about a file that can't be read.
pub(super) fn unreadable(file: &Path, error: &io::Error) -> Source {
    let mut report = Report::new();
    let help = "give the path of a design file, or `-` for standard input";
    report.add(Diagnostic::error("cannot-read", format!("the file can't be read: {error}")).help(help));
    Source { name: file.display().to_string(), text: String::new(), report }
}
