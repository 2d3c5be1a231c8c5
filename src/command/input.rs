//! Reading design files as far as a job needs them.

use std::fs::File;
use std::io::{self, Read};
use std::mem;
use std::path::{Path, PathBuf};

use roundelay::design::{Design, read_swatch, text_of};
use roundelay::file::seal::checksum;
use roundelay::limits;
use roundelay::pattern::piece::pieces;
use roundelay::pattern::{Beside, Pattern};
use roundelay::publish::TextPattern;
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

/// The photograph that a design names, as it was found beside it.
pub(super) struct Photo {
    pub(super) path: PathBuf,
    /// What its file holds, or why that can't be read.
    pub(super) read: Result<Vec<u8>, String>,
}

impl Photo {
    /// Reads the photograph that a design names, or the design beside written rounds, before anything is solved. Nothing
    /// where none is named, or where the design has errors of its own.
    pub(super) fn beside(file: &Path, bytes: &[u8], swatch: Option<&Swatch>) -> Option<Self> {
        let bytes = swatch.filter(|_| holds_rounds(&file.to_string_lossy())).map_or(bytes, |swatch| &swatch.bytes);
        let mut own = Report::new();
        Self::of(&text_of(bytes, &mut own).and_then(|text| read_swatch(text, &mut own))?, file, swatch)
    }

    /// Reads the photograph of a design: its path goes from the folder of the file that names it.
    fn of(design: &Design, file: &Path, swatch: Option<&Swatch>) -> Option<Self> {
        let named = design.photo.as_ref()?;
        let file = swatch.filter(|_| holds_rounds(&file.to_string_lossy())).map_or(file, |swatch| &swatch.path);
        let path = file.parent().unwrap_or(Path::new("")).join(&named.file.value);
        let read = photograph(&path).map_err(|error| error.to_string());
        Some(Self { path, read })
    }

    /// The pattern with the photograph that its design names, and where that was read. No pattern, and an error in the
    /// source, where there is none that can be printed.
    pub(super) fn on(
        pattern: Pattern,
        (file, swatch): (&Path, Option<&Swatch>),
        source: &mut Source,
    ) -> (Option<Pattern>, Option<PathBuf>) {
        match Self::of(pattern.design(), file, swatch) {
            Some(photo) => (photo.shown(pattern, source), Some(photo.path)),
            None => (Some(pattern), None),
        }
    }

    /// What decides what is made of it.
    pub(super) fn checksum(&self) -> String {
        self.read.as_ref().map_or_else(Clone::clone, |bytes| checksum(bytes))
    }

    /// The pattern with its photograph. Nothing, and an error in the source, where there is none that can be printed.
    pub(super) fn shown(&self, pattern: Pattern, source: &mut Source) -> Option<Pattern> {
        let place = pattern.design().photo.as_ref().and_then(|photo| photo.file.place);
        let shown = match &self.read {
            Ok(bytes) => pattern.with_photo(bytes),
            Err(error) => {
                let message = format!("the photograph {} can't be read: {error}", self.path.display());
                let help = "put it there, or write its path from the folder of the design";
                source.report.add(Diagnostic::error("photo-not-found", message).at(place).help(help));
                return None;
            }
        };
        let (told, shown) = match shown {
            Ok(mut pattern) => (mem::take(&mut pattern.report), Some(pattern)),
            Err(report) => (report, None),
        };
        told.diagnostics.into_iter().for_each(|one| source.report.add(one));
        shown
    }
}

/// Reads the file of a photograph up to a byte more than it may have. A pipe or a device would never end.
fn photograph(path: &Path) -> io::Result<Vec<u8>> {
    if !path.metadata()?.is_file() {
        return Err(io::Error::new(io::ErrorKind::InvalidInput, "it is no file"));
    }
    let mut bytes = Vec::new();
    File::open(path)?.take(limits::PHOTO_BYTES as u64 + 1).read_to_end(&mut bytes)?;
    Ok(bytes)
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

/// Every piece of written rounds that hold several, in their author's words or told anew; no pieces, and the errors in
/// the source, where one of them can't be read.
pub(super) fn together(name: String, bytes: &[u8], swatch: Option<&Swatch>, anew: bool) -> (Source, Vec<TextPattern>) {
    let text = text_of(bytes, &mut Report::new()).unwrap_or_default().to_owned();
    let (mut report, mut read) = (Report::new(), Vec::new());
    for piece in pieces(&text) {
        let (own, pattern) = worded(name.clone(), bytes, swatch, (anew, Some(&piece.name)));
        own.report.diagnostics.into_iter().for_each(|one| report.add(one));
        read.extend(pattern.map(|pattern| TextPattern { name: piece.name, made: piece.made, pattern }));
    }
    if report.has_errors() {
        read.clear();
    }
    (Source { name, text, report }, read)
}

/// True for written rounds that hold several pieces.
pub(super) fn holds_pieces(name: &str, bytes: &[u8]) -> bool {
    let text = || text_of(bytes, &mut Report::new());
    holds_rounds(name) && text().is_some_and(|text| pieces(text).len() > 1)
}

/// The complaint about a file that can't be read.
pub(super) fn unreadable(file: &Path, error: &io::Error) -> Source {
    let mut report = Report::new();
    let help = "give the path of a design file, or `-` for standard input";
    report.add(Diagnostic::error("cannot-read", format!("the file can't be read: {error}")).help(help));
    Source { name: file.display().to_string(), text: String::new(), report }
}
