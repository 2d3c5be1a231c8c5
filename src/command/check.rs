//! `check`: read, solve or recount, report.

use std::path::{Path, PathBuf};

use roundelay::design::text_of;
use roundelay::pattern::{Pattern, count_rounds};
use roundelay::report::Report;

use super::input::{self, Photo, Source, Swatch};
use super::output::data;
use super::progress::Progress;
use super::{CheckFormat, Outcome, show};

/// Checks every file, and ends as the worst of them does.
pub(super) fn run(files: &[PathBuf], format: CheckFormat, swatch: Option<&Swatch>) -> Outcome {
    let progress = Progress::new(files.len());
    let checked: Vec<(Source, Option<String>, Outcome)> = files
        .iter()
        .map(|file| {
            let checked = check(file, swatch);
            progress.done(&checked.0.name);
            checked
        })
        .collect();
    drop(progress);
    let worst = checked.iter().map(|(.., outcome)| *outcome).max().unwrap_or(Outcome::Done);
    let printed = match format {
        CheckFormat::Text => {
            let mut text = String::new();
            for (source, solved, _) in &checked {
                show::complaints(source);
                text += solved.as_deref().unwrap_or_default();
            }
            data(&text)
        }
        CheckFormat::Json => {
            let all: Vec<_> = checked.iter().flat_map(|(source, ..)| show::json(source)).collect();
            data(&(serde_json::to_string_pretty(&all).unwrap_or_default() + "\n"))
        }
    };
    worst.max(printed)
}

fn check(file: &Path, swatch: Option<&Swatch>) -> (Source, Option<String>, Outcome) {
    match input::bytes(file) {
        Ok((name, bytes)) => {
            let alone = swatch.is_none() && input::holds_rounds(&name);
            let (source, solved) = if alone {
                count(name, &bytes)
            } else {
                let (mut source, solved) = input::solve(name, &bytes, swatch, None);
                let solved = solved.and_then(|solved| Photo::on(solved, (file, swatch), &mut source).0);
                for note in solved.iter().flat_map(Pattern::waves) {
                    source.report.add(note);
                }
                let told = solved.map(|solved| summary(&source.name, &solved));
                (source, told)
            };
            let outcome = if source.report.has_errors() { Outcome::DesignErrors } else { Outcome::Done };
            (source, solved, outcome)
        }
        Err(error) => (input::unreadable(file, &error), None, Outcome::CouldNotRun),
    }
}

/// Written rounds without a swatch are counted: `hat.txt: 12 rounds, 312 stitches, counted`, and what a swatch would add.
fn count(name: String, bytes: &[u8]) -> (Source, Option<String>) {
    let (counted, report) = count_rounds(bytes);
    let told = counted.map(|counted| {
        let (rounds, stitches) = (counted.rounds, counted.stitches);
        format!("{name}: {rounds} rounds, {stitches} stitches, counted; add `--swatch FILE.yaml` for size and shape\n")
    });
    // What is no text is told in the report already.
    let text = text_of(bytes, &mut Report::new()).unwrap_or_default().to_owned();
    (Source { name, text, report }, told)
}

/// `hat.yaml: 3 sizes, 48 to 52 rounds, 5210 to 6120 stitches`.
fn summary(name: &str, solved: &Pattern) -> String {
    let sizes = &solved.plan.sizes;
    let range = |values: Vec<u64>| match (values.iter().min(), values.iter().max()) {
        (Some(least), Some(most)) if least < most => format!("{least} to {most}"),
        (Some(least), _) => least.to_string(),
        (None, _) => "0".to_owned(),
    };
    let rounds = range(sizes.iter().map(|size| size.rounds.len() as u64).collect());
    let stitches = range(sizes.iter().map(|size| size.stitches()).collect());
    let count = if sizes.len() == 1 { "1 size".to_owned() } else { format!("{} sizes", sizes.len()) };
    format!("{name}: {count}, {rounds} rounds, {stitches} stitches\n")
}
