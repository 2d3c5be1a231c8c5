//! Cases of one issue each, one file a case in `tests/cases/`: a design or written rounds, and beside every line what is said
//! of it, after `#!`. What has no place stands on a line of its own at the end.
//!
//! A file is read without these remarks. `ROUNDELAY_CASES=write` writes them anew; read the difference.

#![allow(clippy::unwrap_used)]

use std::collections::{BTreeMap, BTreeSet};
use std::path::{Path, PathBuf};

use roundelay::pattern::{Beside, Pattern};
use roundelay::report::{Diagnostic, Report, Severity, codes};

/// What begins the remark on a complaint.
const MARK: &str = "#!";

/// The swatch that goes with written rounds.
const SWATCH: &[u8] = b"yarn: {weight: 4, colours: {sand: \"#d9c39a\"}}\nhook: 5 mm\n\
    swatch: {stitch: sc, stitches: 20, rounds: 20, width: 10, height: 10}\n";

fn folder() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/cases")
}

/// Every case by its name, in order.
fn cases() -> BTreeMap<String, String> {
    let read = |entry: std::io::Result<std::fs::DirEntry>| {
        let path = entry.unwrap().path();
        (path.file_name().unwrap().to_string_lossy().into_owned(), std::fs::read_to_string(path).unwrap())
    };
    std::fs::read_dir(folder()).unwrap().map(read).collect()
}

/// The text as its maker wrote it, without the remarks.
fn bare(case: &str) -> String {
    let lines = case.lines().filter(|line| !line.starts_with(MARK));
    lines.map(|line| line.split(&format!("  {MARK}")).next().unwrap_or_default().to_owned() + "\n").collect()
}

/// Everything that is said of a case.
fn told(name: &str, text: &str) -> Report {
    let read = if name.ends_with(".txt") {
        Pattern::read_rounds(text.as_bytes(), Some(Beside { name: "swatch.yaml", bytes: SWATCH }))
    } else {
        Pattern::read(text.as_bytes())
    };
    read.map_or_else(|report| report, |pattern| pattern.report)
}

fn remark(one: &Diagnostic) -> String {
    let severity = match one.severity {
        Severity::Error => "error",
        Severity::Warning => "warning",
        Severity::Note => "note",
    };
    format!("{MARK} {severity}[{}] {}", one.code, one.message)
}

/// The text with what is said of it.
fn annotated(text: &str, report: &Report) -> String {
    let count = text.lines().count();
    let mut beside: BTreeMap<usize, Vec<String>> = BTreeMap::new();
    for one in &report.diagnostics {
        // What is missing at the end of a file is told beyond its last line.
        let line = one.place.map_or(usize::MAX, |place| if place.line > count { usize::MAX } else { place.line });
        beside.entry(line).or_default().push(remark(one));
    }
    let line = |(index, line): (usize, &str)| {
        let remarks = beside.get(&(index + 1)).map_or(String::new(), |remarks| format!("  {}", remarks.join("  ")));
        format!("{line}{remarks}\n")
    };
    let lines: String = text.lines().enumerate().map(line).collect();
    let last = beside.get(&usize::MAX).into_iter().flatten();
    lines + &last.map(|remark| format!("{remark}\n")).collect::<String>()
}

#[test]
fn every_case_is_told_as_it_says() {
    let write = std::env::var("ROUNDELAY_CASES").is_ok_and(|value| value == "write");
    for (name, case) in cases() {
        let text = bare(&case);
        let now = annotated(&text, &told(&name, &text));
        if write {
            std::fs::write(folder().join(&name), now).unwrap();
        } else {
            assert_eq!(now, case, "{name}; ROUNDELAY_CASES=write writes the remarks anew");
        }
    }
}

/// One issue a case: little follows from it, and every code that is told has a meaning.
#[test]
fn every_case_has_one_issue_and_little_follows_from_it() {
    for (name, case) in cases() {
        let report = told(&name, &bare(&case));
        let weightiest = report.diagnostics.iter().map(|one| one.severity).max();
        assert!(weightiest.is_some(), "{name}: nothing is said of it");
        let of: BTreeSet<&str> =
            report.diagnostics.iter().filter(|one| Some(one.severity) == weightiest).map(|one| one.code).collect();
        assert!(of.len() <= 3, "{name}: {of:?}");
        for one in &report.diagnostics {
            let known = codes::meaning(one.code);
            assert!(known.is_some(), "{name}: {} means nothing", one.code);
            assert!(!one.message.ends_with('.') && !one.message.contains("  "), "{name}: {}", one.message);
        }
    }
}

#[test]
fn cases_cover_what_can_be_wrong_with_a_text() {
    let cases = cases();
    let told: BTreeSet<&str> =
        cases.iter().flat_map(|(name, case)| told(name, &bare(case)).diagnostics).map(|one| one.code).collect();
    assert!(cases.len() >= 250, "{} cases", cases.len());
    assert!(told.len() >= 80, "{} codes: {told:?}", told.len());
}
