//! Arguments that name a row of the library.

use clap::builder::{PossibleValue, PossibleValuesParser, TypedValueParser};
use roundelay::page::Paper;
use roundelay::publish::{Row, by_name};
use roundelay::report::Diagnostic;

/// A row by its name; the help tells what each is.
pub(super) fn one_of<R: Row + Sync>(rows: &'static [R]) -> impl TypedValueParser<Value = &'static R> {
    let names = rows.iter().map(|row| PossibleValue::new(row.name()).help(row.about()));
    PossibleValuesParser::new(names).try_map(|name| by_name(rows, &name).ok_or("no such name"))
}

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
