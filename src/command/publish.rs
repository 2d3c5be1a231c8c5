//! `publish`: everything a maker needs, in a folder.

use std::path::{Path, PathBuf};

use clap::Args;
use roundelay::page::{Options, Paper, Print};
use roundelay::publish::{Named, PRINTS, PRODUCTS, Product, ROUNDS, publish};
use roundelay::story::RoundsForm;

use super::input;
use super::output::{data, files};
use super::plan::unreadable;
use super::rows::{one_of, paper};
use super::{Outcome, show};

/// What to publish, and how.
#[derive(Args, Debug)]
pub(super) struct Publish {
    /// Design file; `-` reads standard input
    file: PathBuf,
    /// Folder to write into, made where it isn't there [default: the name of the design file without its ending]
    #[arg(short, long, value_name = "FOLDER")]
    output: Option<PathBuf>,
    /// Paper of the booklet, such as A4, Letter or A3
    #[arg(long, default_value = "A4", value_parser = paper)]
    paper: Paper,
    /// Letters of 18 pt and wider lines
    #[arg(long)]
    large_print: bool,
    /// How ink is used
    #[arg(long, default_value = PRINTS[0].name, value_parser = one_of(&PRINTS))]
    ink: &'static Named<Print>,
    /// The rounds in plain words too, without abbreviations or brackets
    #[arg(long)]
    plain_words: bool,
    /// How the rounds of several sizes stand
    #[arg(long, default_value = ROUNDS[0].name, value_parser = one_of(&ROUNDS))]
    rounds: &'static Named<RoundsForm>,
    /// Only these: several with commas between them
    #[arg(long, value_delimiter = ',', value_name = "WHAT", value_parser = one_of(&PRODUCTS))]
    only: Vec<&'static Product>,
}

/// Solves a design, makes every file and writes them, all or none.
pub(super) fn run(wish: &Publish, swatch: Option<&Path>) -> Outcome {
    let (name, bytes) = match input::bytes(&wish.file) {
        Ok(read) => read,
        Err(error) => return unreadable(&wish.file, &error),
    };
    let (mut source, pattern) = input::solve(name, &bytes, swatch);
    let stem = wish.file.file_stem().and_then(|stem| stem.to_str()).filter(|stem| *stem != "-").unwrap_or("pattern");
    let products = if wish.only.is_empty() { PRODUCTS.iter().collect() } else { wish.only.clone() };
    let report = &mut source.report;
    let made = pattern.as_ref().and_then(|pattern| publish(pattern, stem, products, &options(wish), report));
    show::complaints(&source);
    let Some(outputs) = made else {
        return if pattern.is_some() { Outcome::CouldNotRun } else { Outcome::DesignErrors };
    };
    let folder = wish.output.clone().unwrap_or_else(|| PathBuf::from(stem));
    let read: Vec<&Path> = std::iter::once(wish.file.as_path()).chain(swatch).collect();
    match files(&folder, &outputs, &read, "give a folder that can be written, with `-o FOLDER`") {
        Ok(paths) => data(&paths.iter().map(|path| format!("{}\n", path.display())).collect::<String>()),
        Err(outcome) => outcome,
    }
}

fn options(wish: &Publish) -> Options {
    Options {
        large: wish.large_print,
        print: wish.ink.value,
        rounds: wish.rounds.value,
        plain_words: wish.plain_words,
        ..Options::new(wish.paper.clone())
    }
}
