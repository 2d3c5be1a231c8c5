//! Written rounds read, counted and written again.

use roundelay::design::{Terms, Work};
use roundelay::notation::{Source, read};
use roundelay::plan::recount::{Recounted, Rules, rounds};
use roundelay::report::{Report, Severity};
use roundelay::stitch::Stitch;

struct Case<'a> {
    name: &'a str,
    terms: Terms,
    work: Work,
    text: &'a str,
}

fn cases(file: &str) -> Vec<Case<'_>> {
    let case = |block: &'_ str| {
        let (name, text) = block.split_once('\n').unwrap_or((block, ""));
        // Settings are blanked out by the reader's own comments, so that lines keep their numbers.
        let has = |line: &str| text.lines().any(|known| known == line);
        let terms = if has("terms: UK") { Terms::Uk } else { Terms::Us };
        let work = if has("work: joined") { Work::Joined { chain_counts: true } } else { Work::Spiral };
        (name.to_owned(), terms, work)
    };
    file.split("== ")
        .skip(1)
        .map(|block| {
            let (_, terms, work) = case(block);
            let (name, text) = block.split_once('\n').unwrap_or((block, ""));
            Case { name, terms, work, text }
        })
        .collect()
}

fn count(case: &Case<'_>) -> (Option<Recounted>, Report) {
    let mut report = Report::new();
    let text = case.text.replace("terms: UK", "#").replace("work: joined", "#");
    let rules = Rules { work: case.work, main: Stitch::SC, terms: case.terms };
    let written = read(&[Source { text: &text, place: None }], case.terms, Stitch::SC, 1, &mut report);
    let counted = rounds(&written, (0, 1), &rules, &mut report);
    (counted, report)
}

#[test]
fn clean_rounds_count_as_they_say() {
    for case in cases(include_str!("rounds/clean.txt")) {
        let (counted, report) = count(&case);
        let errors: Vec<_> = report.diagnostics.iter().filter(|d| d.severity == Severity::Error).collect();
        assert!(errors.is_empty(), "{}: {errors:#?}", case.name);
        let wanted = case.text.lines().find_map(|line| line.strip_prefix("# counts: ")).unwrap_or_default();
        let counts: Vec<String> = counted.iter().flat_map(|c| &c.rounds).map(|round| round.after.to_string()).collect();
        assert_eq!(counts.join(" "), wanted, "{}", case.name);
        for round in counted.iter().flat_map(|counted| &counted.rounds) {
            assert_eq!(round.sums(), (round.before, round.after), "{}: round {}", case.name, round.number);
        }
    }
}

#[test]
fn mistakes_are_told_beside_their_line() {
    let cases = cases(include_str!("rounds/mistakes.txt"));
    assert!(cases.len() >= 20);
    for case in cases {
        let (counted, report) = count(&case);
        assert_eq!(counted, None, "{} went through", case.name);
        let mut expected = Vec::new();
        for (index, line) in case.text.lines().enumerate() {
            let Some(said) = line.strip_prefix("# expect: ") else { continue };
            let (code, words) = said.split_once(": ").unwrap_or((said, ""));
            expected.push((index, code, words));
        }
        let errors: Vec<_> = report.diagnostics.iter().filter(|d| d.severity == Severity::Error).collect();
        let found: Vec<_> = errors.iter().map(|d| (d.place.map_or(0, |place| place.line), d.code)).collect();
        let mut found_sorted = found.clone();
        found_sorted.sort_unstable();
        let wanted: Vec<_> = expected.iter().map(|(line, code, _)| (*line, *code)).collect();
        assert_eq!(found_sorted, wanted, "{}: {errors:#?}", case.name);
        for (line, code, words) in expected {
            let hit = errors.iter().any(|d| {
                let text = format!("{} {}", d.message, d.help.as_deref().unwrap_or_default());
                d.code == code && text.contains(words)
            });
            assert!(hit, "{}, line {line}: no `{words}` in {errors:#?}", case.name);
        }
    }
}
