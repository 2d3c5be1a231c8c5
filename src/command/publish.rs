//! `publish`: everything a maker needs, in a folder.

use std::path::{Path, PathBuf};

use clap::{Args, ValueEnum};
use roundelay::file::Output;
use roundelay::page::{Options, Paper, RoundsForm};
use roundelay::pattern::Pattern;
use roundelay::publish::{Kind, publish};
use roundelay::report::Report;

use super::input;
use super::output::{data, files};
use super::plan::unreadable;
use super::print::{Ink, paper};
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
    /// How ink is used
    #[arg(long, value_enum, default_value_t)]
    pub(super) ink: Ink,
    /// The rounds in plain words too, without abbreviations or brackets
    #[arg(long)]
    pub(super) plain_words: bool,
    /// How the rounds of several sizes stand
    #[arg(long, value_enum, default_value_t)]
    pub(super) rounds: Rounds,
    /// Only these: several with commas between them
    #[arg(long, value_enum, value_delimiter = ',', value_name = "WHAT")]
    pub(super) only: Vec<Only>,
}

/// How the rounds of several sizes stand.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, ValueEnum)]
pub(super) enum Rounds {
    /// Side by side where the sizes are alike enough, else one table a size
    #[default]
    Fitting,
    /// Side by side in brackets: 72 (80, 88)
    Brackets,
    /// One table a size, with measures
    PerSize,
}

impl Rounds {
    fn form(self) -> RoundsForm {
        match self {
            Self::Fitting => RoundsForm::Fitting,
            Self::Brackets => RoundsForm::Brackets,
            Self::PerSize => RoundsForm::PerSize,
        }
    }
}

/// What can be published by itself.
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub(super) enum Only {
    /// The booklet
    Booklet,
    /// The web page
    Web,
    /// The pattern as plain text
    Text,
    /// The rounds for a spreadsheet
    Csv,
    /// Charts, schematics and tables
    Pictures,
    /// Wall charts in tiles
    Wall,
}

impl Only {
    fn kind(self) -> Kind {
        match self {
            Self::Booklet => Kind::Booklet,
            Self::Web => Kind::Web,
            Self::Text => Kind::Text,
            Self::Csv => Kind::Csv,
            Self::Pictures => Kind::Pictures,
            Self::Wall => Kind::Wall,
        }
    }
}

/// Solves a design, makes every file and writes them, all or none.
pub(super) fn run(wish: &Publish, swatch: Option<&Path>) -> Outcome {
    let (name, bytes) = match input::bytes(&wish.file) {
        Ok(read) => read,
        Err(error) => return unreadable(&wish.file, &error),
    };
    let (mut source, solved) = input::solve(name, &bytes, swatch);
    let stem = wish.file.file_stem().and_then(|stem| stem.to_str()).filter(|stem| *stem != "-").unwrap_or("pattern");
    let sound = solved.is_some();
    let made = solved.and_then(|solved| everything(&solved, stem, wish, &mut source.report));
    show::complaints(&source);
    let Some(outputs) = made else { return if sound { Outcome::CouldNotRun } else { Outcome::DesignErrors } };
    let folder = wish.output.clone().unwrap_or_else(|| PathBuf::from(stem));
    let read: Vec<&Path> = std::iter::once(wish.file.as_path()).chain(swatch).collect();
    match files(&folder, &outputs, &read, "give a folder that can be written, with `-o FOLDER`") {
        Ok(paths) => data(&paths.iter().map(|path| format!("{}\n", path.display())).collect::<String>()),
        Err(outcome) => outcome,
    }
}

/// Every file of a pattern called `stem`, or complaints and nothing.
fn everything(solved: &Pattern, stem: &str, wish: &Publish, report: &mut Report) -> Option<Vec<Output>> {
    let options = Options {
        large: wish.large_print,
        print: wish.ink.print(),
        rounds: wish.rounds.form(),
        plain_words: wish.plain_words,
        ..Options::new(wish.paper.clone())
    };
    let kinds =
        if wish.only.is_empty() { Kind::ALL.to_vec() } else { wish.only.iter().map(|only| only.kind()).collect() };
    publish(&solved.plan, &solved.shapes, stem, &kinds, &options, report)
}
