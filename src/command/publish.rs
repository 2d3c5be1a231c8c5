//! `publish`: everything a maker needs, in a folder.

use std::path::{Path, PathBuf};

use clap::Args;
use roundelay::file::Output;
use roundelay::file::save::save;
use roundelay::page::Paper;
use roundelay::report::Report;

use super::draw::paper;
use super::input::{self, Solved};
use super::output::{data, failure};
use super::plan::unreadable;
use super::{Outcome, show};

/// What to publish, and how.
#[derive(Args, Debug)]
pub(super) struct Publish {
    /// Design file; `-` reads standard input
    pub(super) file: PathBuf,
    /// Folder to write into, made where it isn't there [default: the name of the design file without its ending]
    #[arg(short, long, value_name = "FOLDER")]
    pub(super) output: Option<PathBuf>,
    /// Paper of the booklet, such as A4, Letter or A3
    #[arg(long, default_value = "A4", value_parser = paper)]
    pub(super) paper: Paper,
    /// Letters of 18 pt and wider lines
    #[arg(long)]
    pub(super) large_print: bool,
}

/// Solves a design, makes every file and writes them, all or none.
pub(super) fn run(wish: &Publish, swatch: Option<&Path>) -> Outcome {
    let (name, bytes) = match input::bytes(&wish.file) {
        Ok(read) => read,
        Err(error) => return unreadable(&wish.file, &error),
    };
    let (mut source, solved) = input::solve(name, &bytes, swatch);
    let stem = wish.file.file_stem().and_then(|stem| stem.to_str()).filter(|stem| *stem != "-").unwrap_or("pattern");
    let made = solved.and_then(|solved| everything(&solved, stem, wish, &mut source.report));
    show::complaints(&source);
    let Some(outputs) = made else { return Outcome::DesignErrors };
    let folder = wish.output.clone().unwrap_or_else(|| PathBuf::from(stem));
    match save(&folder, &outputs) {
        Ok(paths) => data(&paths.iter().map(|path| format!("{}\n", path.display())).collect::<String>()),
        Err(error) => failure(&error, "give a folder that can be written, with `-o FOLDER`"),
    }
}

/// Every file of a pattern called `stem`, or complaints and nothing.
fn everything(solved: &Solved, stem: &str, wish: &Publish, report: &mut Report) -> Option<Vec<Output>> {
    let _ = (&wish.paper, wish.large_print, report);
    let (plan, shapes) = (&solved.plan, &solved.shapes);
    let file = |ending: &str, text: String| Output { name: format!("{stem}.{ending}"), bytes: text.into_bytes() };
    Some(vec![
        file("txt", roundelay::file::listing::pattern(plan, None)),
        file("csv", roundelay::file::csv::plan(plan, shapes, None)),
        file("json", roundelay::file::json::plan(plan, shapes, None)),
    ])
}
