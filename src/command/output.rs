//! Where the output of a job goes.

use std::fmt::Display;
use std::fs;
use std::io::{self, ErrorKind, Write};
use std::path::{Path, PathBuf};

use roundelay::file::Output;
use roundelay::file::save::save;
use roundelay::report::Diagnostic;

use super::Outcome;

/// Writes files into a folder and gives their paths, or says why not. No file takes the place of one that was `read`.
pub(super) fn files(folder: &Path, outputs: &[Output], read: &[&Path], help: &str) -> Result<Vec<PathBuf>, Outcome> {
    let place = |output: &Output| fs::canonicalize(folder.join(&output.name)).ok();
    let read = |path: &PathBuf| read.iter().any(|read| fs::canonicalize(read).is_ok_and(|read| read == *path));
    if let Some(path) = outputs.iter().filter_map(place).find(read) {
        let message = format!("{} would be replaced, and it was read to make this", path.display());
        return Err(failure(&message, "write to another place, with `-o`"));
    }
    save(folder, outputs).map_err(|error| failure(&error, help))
}

/// Writes data to standard output. A reader that has seen enough and closed the pipe is no failure.
pub(super) fn data(text: &str) -> Outcome {
    let mut out = io::stdout().lock();
    match out.write_all(text.as_bytes()).and_then(|()| out.flush()) {
        Ok(()) => Outcome::Done,
        Err(error) if error.kind() == ErrorKind::BrokenPipe => Outcome::Done,
        Err(error) => failure(&format!("standard output can't be written: {error}"), ""),
    }
}

/// Says on standard error why a job could not run, and what to do where there is something to do.
pub(super) fn failure(message: &dyn Display, help: &str) -> Outcome {
    note(&format!("error: {message}"));
    if !help.is_empty() {
        note(&format!("help: {help}"));
    }
    Outcome::CouldNotRun
}

/// Says on standard error what is wrong with what was asked for.
pub(super) fn complaint(about: &Diagnostic) -> Outcome {
    failure(&about.message, about.help.as_deref().unwrap_or_default())
}

/// Writes a line to standard error; where nobody can hear it, nothing is lost.
pub(super) fn note(line: &str) {
    let _ = writeln!(io::stderr().lock(), "{line}");
}
