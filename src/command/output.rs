//! Where the output of a job goes.

use std::fmt::Display;
use std::fs;
use std::io::{self, ErrorKind, Write};
use std::path::{Path, PathBuf};

use roundelay::file::Output;
use roundelay::file::save::{Order, SaveError, Saved, save};
use roundelay::report::{Diagnostic, clean};

use super::Outcome;

/// Writes files into a folder, or says why not: a message and what helps. No file takes the place of one that was `read`.
pub(super) fn files(order: &Order<'_>, read: &[&Path], help: &str) -> Result<Saved, (String, String)> {
    let place = |output: &Output| fs::canonicalize(order.folder.join(&output.name)).ok();
    let read = |path: &PathBuf| read.iter().any(|read| fs::canonicalize(read).is_ok_and(|read| read == *path));
    if let Some(path) = order.outputs.iter().filter_map(place).find(read) {
        let message = format!("{} would be replaced, and it was read to make this", path.display());
        return Err((message, "write to another place, with `-o`".to_owned()));
    }
    save(order).map_err(|error| {
        let help = match error {
            SaveError::Failed { .. } => help,
            SaveError::Foreign(_) => "write to another place, with `-o`, or replace what is there with `--force`",
        };
        (error.to_string(), help.to_owned())
    })
}

/// Says what there is to say of files that were written.
pub(super) fn cautions(saved: &Saved) {
    for caution in &saved.cautions {
        note(&format!("warning: {caution}"));
    }
    let told = |paths: &[PathBuf]| paths.iter().map(|path| path.display().to_string()).collect::<Vec<_>>().join(", ");
    if !saved.removed.is_empty() {
        note(&format!("removed, as no longer made: {}", told(&saved.removed)));
    }
    if !saved.outdated.is_empty() {
        note(&format!("note: of an earlier run and no longer made: {}", told(&saved.outdated)));
        note("help: `--remove-old` removes such files");
    }
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

/// Writes lines to standard error, without anything in them that speaks to a terminal.
pub(super) fn note(lines: &str) {
    shown(&clean::lines(lines));
}

/// Writes lines to standard error as they are; where nobody can hear it, nothing is lost.
pub(super) fn shown(lines: &str) {
    let _ = writeln!(io::stderr().lock(), "{lines}");
}
