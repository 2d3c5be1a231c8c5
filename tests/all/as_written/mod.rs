//! Rounds as makers write them: every style counts as it was worked by hand, or is told; none is wrong without a word.

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
fn figures_by_half() {
    for second in [false, true] {
        let (right, other) = half(second);
        let wrong = other.iter().filter(|(v, _)| *v == Verdict::Wrong).count();
        eprintln!("half {second}: right {right}, refused {}, wrong {wrong}", other.len() - wrong);
        if !second {
            for (verdict, text) in &other {
                eprintln!("{verdict:?} {text}");
            }
        }
    }
}
