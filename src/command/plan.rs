//! `plan`: the rounds, in one of the ways of the listings.

use std::path::{Path, PathBuf};

use clap::Args;
use roundelay::publish::{LISTINGS, Listing, Row, list};

use super::input::Swatch;
use super::output::{complaint, data, failure};
use super::progress::Progress;
use super::rows::one_of;
use super::{Outcome, input, show};

/// What to list, and how.
#[derive(Args, Debug)]
pub(super) struct Plan {
    /// Design file; `-` reads standard input
    file: PathBuf,
    /// Only this size, by its name
    #[arg(long)]
    size: Option<String>,
    /// Written rounds in the shortest words, not in their author's
    #[arg(long)]
    rewrite: bool,
    /// Of written rounds with several pieces this one, by its name or its number [default: the first]
    #[arg(long, value_name = "NAME")]
    piece: Option<String>,
    /// How to print
    #[arg(long, default_value = LISTINGS[0].name(), value_parser = one_of(&LISTINGS))]
    format: &'static Listing,
}

/// Solves a design and prints its rounds.
pub(super) fn run(wish: &Plan, swatch: Option<&Swatch>) -> Outcome {
    let (name, bytes) = match input::bytes(&wish.file) {
        Ok(read) => read,
        Err(error) => return unreadable(&wish.file, &error),
    };
    let progress = Progress::new(1);
    let (source, pattern) = input::worded(name, &bytes, swatch, (wish.rewrite, wish.piece.as_deref()));
    drop(progress);
    show::complaints(&source);
    let Some(pattern) = pattern else { return Outcome::DesignErrors };
    match list(&pattern, wish.format, wish.size.as_deref()) {
        Ok(text) => data(&text),
        Err(unknown) => complaint(&unknown),
    }
}

/// Says that a design file can't be read.
pub(super) fn unreadable(file: &Path, error: &std::io::Error) -> Outcome {
    let message = format!("{} can't be read: {error}", file.display());
    failure(&message, "give the path of a design file, or `-` for standard input")
}
