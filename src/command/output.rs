//! Where the output of a job goes.

use std::fmt::Display;
use std::io::{self, ErrorKind, Write};

use super::Outcome;

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

/// Writes a line to standard error; where nobody can hear it, nothing is lost.
pub(super) fn note(line: &str) {
    let _ = writeln!(io::stderr().lock(), "{line}");
}
