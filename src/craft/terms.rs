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

/// The abbreviation of a stitch in these terms.
pub fn abbreviation(stitch: Stitch, terms: Terms) -> &'static str {
    match terms {
        Terms::Us => stitch.row().us,
        Terms::Uk => stitch.row().uk,
    }
}
