//! What `draw` and `publish` are both asked about print: the paper and the ink.

use clap::ValueEnum;
use roundelay::page::{Paper, Print};
use roundelay::report::Diagnostic;

/// A paper that pages can be laid out on, by its name or measures.
pub(super) fn paper(name: &str) -> Result<Paper, String> {
    let told = |complaint: Diagnostic| match complaint.help {
        Some(help) => format!("{}; {help}", complaint.message),
        None => complaint.message,
    };
    let paper = Paper::by_name(name).map_err(told)?;
    paper.check().map_err(told)?;
    Ok(paper)
}

/// How ink is used.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, ValueEnum)]
pub(super) enum Ink {
    /// One accent colour, light tints, the colours of the yarn
    #[default]
    Colour,
    /// No tints, thin rules
    Saving,
    /// Black only
    Black,
}

impl Ink {
    /// The print it asks for.
    pub(super) fn print(self) -> Print {
        match self {
            Self::Colour => Print::Colour,
            Self::Saving => Print::InkSaving,
            Self::Black => Print::Black,
        }
    }
}
