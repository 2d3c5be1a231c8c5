//! What a plan can be listed as: one row a format.

use super::draw::size_of;
use super::rows::Row;
use crate::file::{csv, json};
use crate::geometry::SideShape;
use crate::pattern::Pattern;
use crate::plan::Plan;
use crate::report::Diagnostic;
use crate::story::listing;

/// A way to list a plan.
#[derive(Clone, Copy, Debug)]
pub struct Listing {
    name: &'static str,
    about: &'static str,
    write: fn(&Plan, &[SideShape], Option<&str>) -> String,
}

impl Row for Listing {
    fn name(&self) -> &'static str {
        self.name
    }

    fn about(&self) -> &'static str {
        self.about
    }
}

/// The ways there are; the first is the usual one.
pub static LISTINGS: [Listing; 5] = [
    Listing {
        name: "table",
        about: "Each size as a table of rounds, with what its parts reach and the yarn",
        write: listing::table,
    },
    Listing {
        name: "text",
        about: "The written pattern, all sizes side by side",
        write: |plan, _, only| listing::pattern(plan, only),
    },
    Listing {
        name: "sizes",
        about: "The counts of all sizes in columns, and what each size comes to",
        write: |plan, _, only| listing::sizes(plan, only),
    },
    Listing { name: "json", about: "Everything, for other programs", write: json::plan },
    Listing { name: "csv", about: "One row a round, for spreadsheets", write: csv::plan },
];

/// Lists the rounds of every size, or of the size called `only`; a complaint where there is no such size.
pub fn list(pattern: &Pattern, listing: &Listing, only: Option<&str>) -> Result<String, Diagnostic> {
    size_of(&pattern.plan, only)?;
    Ok((listing.write)(&pattern.plan, &pattern.shapes, only))
}
