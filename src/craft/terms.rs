//! The two sets of names that stitches have in English.

use super::Stitch;

/// Names of stitches.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
pub enum Terms {
    /// United States.
    #[default]
    Us,
    /// United Kingdom.
    Uk,
}

impl Terms {
    /// The other set.
    pub const fn other(self) -> Self {
        match self {
            Self::Us => Self::Uk,
            Self::Uk => Self::Us,
        }
    }
}

/// The abbreviation of a stitch in these terms.
pub fn abbreviation(stitch: Stitch, terms: Terms) -> &'static str {
    stitch.names(terms).short
}
