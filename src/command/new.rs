//! `new`: a commented starter design.

use std::io::ErrorKind;
use std::path::Path;

use roundelay::design::STARTER;
use roundelay::file::save::{SaveError, save_new};

use super::Outcome;
use super::output::{data, failure, note};

/// Writes the starter design to a new file, or to standard output.
pub(super) fn run(file: Option<&Path>) -> Outcome {
    let Some(path) = file.filter(|path| *path != Path::new("-")) else {
        return data(STARTER);
    };
    match save_new(path, STARTER.as_bytes()) {
        Ok(()) => {
            note(&format!("{} is a design to begin with; `roundelay check` says how it stands", path.display()));
            Outcome::Done
        }
        Err(SaveError::Failed { cause, .. }) if cause.kind() == ErrorKind::AlreadyExists => {
            failure(&format!("{} exists and stays as it is", path.display()), "give another name")
        }
        Err(error) => failure(&error, "give a file in a folder that exists and can be written"),
    }
}
