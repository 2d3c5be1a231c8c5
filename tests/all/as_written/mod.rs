//! Rounds as makers write them: every style counts as it was worked by hand, or is told; none is wrong without a word.

#![allow(clippy::unwrap_used)]

use roundelay::craft::{Stitch, Terms};
use roundelay::design::Work;
use roundelay::notation::{Source, read};
use roundelay::plan::recount::{Recounted, Rules, rounds};
use roundelay::report::{Report, Severity};

/// A text, what stands before it, and what is to come of it.
struct Line<'t> {
    written: &'t str,
    terms: Terms,
    before: u32,
    counts: Vec<u32>,
    /// The code of the complaint it has to meet.
    told: Option<&'t str>,
    text: String,
}

fn lines(file: &str) -> Vec<Line<'_>> {
    let kept = file.lines().filter(|line| !line.is_empty() && !line.starts_with('#'));
    kept.map(|written| {
        let (head, text) = written.split_once(" | ").unwrap();
        let (before, after) = head.split_once(" > ").unwrap();
        let (terms, before) = before.strip_prefix("UK ").map_or((Terms::Us, before), |rest| (Terms::Uk, rest));
        let (counts, told) = after.split_once("told ").map_or((after, None), |(counts, code)| (counts, Some(code)));
        let counts = counts.split_whitespace().map(|count| count.parse().unwrap()).collect();
        let text = text.replace(" // ", "\n");
        Line { written, terms, before: before.parse().unwrap(), counts, told, text }
    })
    .collect()
}

/// Lines of that half that are read right, at least.
const LEAST: usize = 81;

/// The half of the lines that was never looked at while the reader was made for the others: by a hash of the line.
fn unseen(line: &str) -> bool {
    // FNV-1a, 32 bits.
    let hash = line.bytes().fold(0x811c_9dc5_u32, |hash, byte| (hash ^ u32::from(byte)).wrapping_mul(0x0100_0193));
    (hash >> 16) & 1 == 1
}

fn count(text: &str, terms: Terms, before: u32) -> (Option<Recounted>, Report) {
    let mut report = Report::new();
    let rules = Rules { work: Work::Spiral, main: Stitch::SC, terms };
    // The first number that the text is numbered with.
    let digits = text.split(|c: char| !c.is_ascii_digit()).find(|part| !part.is_empty());
    let first = if before == 0 { 1 } else { digits.and_then(|part| part.parse().ok()).unwrap_or(2) };
    let written = read(&[Source { text, place: None }], terms, Stitch::SC, first, &mut report);
    let counted = rounds(&written, (before, first), &rules, &mut report);
    (counted, report)
}

#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Verdict {
    Right,
    Refused,
    Wrong,
}

fn verdict(line: &Line<'_>) -> (Verdict, String) {
    let (counted, report) = count(&line.text, line.terms, line.before);
    let errors: Vec<_> = report.diagnostics.iter().filter(|one| one.severity == Severity::Error).collect();
    let why = errors.iter().map(|one| format!("{}: {}", one.code, one.message)).collect::<Vec<_>>().join("; ");
    if let Some(code) = line.told {
        let right = report.diagnostics.iter().any(|one| one.code == code);
        return (if right { Verdict::Right } else { Verdict::Wrong }, why);
    }
    match counted {
        None => (Verdict::Refused, why),
        Some(counted) => {
            let counts: Vec<u32> = counted.rounds.iter().map(|round| round.after).collect();
            (if counts == line.counts { Verdict::Right } else { Verdict::Wrong }, format!("{counts:?}"))
        }
    }
}

/// Lines of one half by verdict: how many are right, and the others with what was said.
fn half(second: bool) -> (usize, Vec<(Verdict, String)>) {
    let lines = lines(include_str!("rounds.txt"));
    let verdicts = lines.iter().filter(|line| unseen(line.written) == second).map(|line| (line, verdict(line)));
    let (right, other): (Vec<_>, Vec<_>) = verdicts.partition(|(_, (verdict, _))| *verdict == Verdict::Right);
    let told = other.into_iter().map(|(line, (verdict, why))| (verdict, format!("{}\n    {why}", line.written)));
    (right.len(), told.collect())
}

#[test]
fn the_styles_are_read_and_none_is_wrong_without_a_word() {
    let (right, other) = half(false);
    let shown = other.iter().map(|(verdict, text)| format!("{verdict:?} {text}")).collect::<Vec<_>>().join("\n");
    assert!(other.is_empty(), "{right} right, and not\n{shown}");
    // Of the half that was never looked at while the reader was made, so many are right; the others are refused.
    let (right, other) = half(true);
    assert!(other.iter().all(|(verdict, _)| *verdict == Verdict::Refused), "read wrong");
    assert!(right >= LEAST, "{right} right of {}", right + other.len());
}

/// The places of the numbers of a text.
fn numbers(text: &str) -> Vec<std::ops::Range<usize>> {
    let mut found: Vec<std::ops::Range<usize>> = Vec::new();
    for (at, _) in text.char_indices().filter(|(_, c)| c.is_ascii_digit()) {
        match found.last_mut() {
            Some(last) if last.end == at => last.end = at + 1,
            _ => found.push(at..at + 1),
        }
    }
    found
}

/// A number of a round that reads right, made one more or one less: it is told, or the round still makes what it states
/// of what stands there.
#[test]
fn a_number_changed_is_told_or_truly_closes() {
    let (mut copies, mut told) = (0, 0);
    for line in lines(include_str!("rounds.txt")) {
        if line.told.is_some() || verdict(&line).0 != Verdict::Right {
            continue;
        }
        // The last number of a line that ends in its count.
        let stated = numbers(&line.text)
            .pop()
            .filter(|last| line.text[last.clone()].parse() == Ok(*line.counts.last().unwrap()));
        for place in numbers(&line.text) {
            let number: u32 = line.text[place.clone()].parse().unwrap();
            for changed in [number + 1, number.saturating_sub(1)] {
                let mut text = line.text.clone();
                text.replace_range(place.clone(), &changed.to_string());
                let (counted, report) = count(&text, line.terms, line.before);
                copies += 1;
                let warned = report.diagnostics.iter().any(|one| one.severity != Severity::Note);
                told += usize::from(warned || counted.is_none());
                let Some(counted) = counted.filter(|_| !warned) else { continue };
                assert_ne!(Some(&place), stated.as_ref(), "another count went through: {text}");
                let mut before = line.before;
                for round in &counted.rounds {
                    assert_eq!((round.before, round.after), round.sums(), "{text}");
                    assert!(round.number == 1 || round.before == before, "{text}");
                    before = round.after;
                }
            }
        }
    }
    assert!(copies > 500 && told * 2 > copies, "{told} of {copies}");
}
