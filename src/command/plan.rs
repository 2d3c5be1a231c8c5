//! `plan`: the rounds, as a table, as text, as JSON or as CSV.

use std::path::Path;

use roundelay::file::{csv, json};
use roundelay::story::listing;

use super::output::{data, failure};
use super::{Outcome, PlanFormat, input, show};

/// Solves a design and prints its rounds.
pub(super) fn run(file: &Path, size: Option<&str>, format: PlanFormat, swatch: Option<&Path>) -> Outcome {
    let (name, bytes) = match input::bytes(file) {
        Ok(read) => read,
        Err(error) => return unreadable(file, &error),
    };
    let (source, solved) = input::solve(name, &bytes, swatch);
    show::complaints(&source);
    let Some(solved) = solved else { return Outcome::DesignErrors };
    let (plan, shapes) = (&solved.plan, &solved.shapes);
    if let Err((message, help)) = input::known_size(plan, size) {
        return failure(&message, &help);
    }
    data(&match format {
        PlanFormat::Table => listing::table(plan, shapes, size),
        PlanFormat::Text => listing::pattern(plan, size),
        PlanFormat::Json => json::plan(plan, shapes, size),
        PlanFormat::Csv => csv::plan(plan, shapes, size),
    })
}

/// Says that a design file can't be read.
pub(super) fn unreadable(file: &Path, error: &std::io::Error) -> Outcome {
    let message = format!("{} can't be read: {error}", file.display());
    failure(&message, "give the path of a design file, or `-` for standard input")
}
