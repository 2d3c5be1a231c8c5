//! Written rounds read, counted and written again.

use roundelay::design::{Terms, Work, read as read_design};
use roundelay::notation::{Source, read, text};
use roundelay::plan::recount::{Recounted, Rules, rounds};
use roundelay::plan::solve;
use roundelay::report::{Report, Severity};
use roundelay::stitch::Stitch;

struct Case<'a> {
    name: &'a str,
    terms: Terms,
    work: Work,
    text: &'a str,
}

fn cases(file: &str) -> Vec<Case<'_>> {
    let case = |block| {
        let (name, text) = str::split_once(block, '\n').unwrap_or((block, ""));
        let has = |line: &str| text.lines().any(|known| known == line);
        let terms = if has("terms: UK") { Terms::Uk } else { Terms::Us };
        let work = if has("work: joined") { Work::Joined { chain_counts: true } } else { Work::Spiral };
        Case { name, terms, work, text }
    };
    file.split("== ").skip(1).map(case).collect()
}

fn count(case: &Case<'_>) -> (Option<Recounted>, Report) {
    let mut report = Report::new();
    // Settings become comments, so that lines keep their numbers.
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
        let mut found: Vec<_> = errors.iter().map(|d| (d.place.map_or(0, |place| place.line), d.code)).collect();
        found.sort_unstable();
        let wanted: Vec<_> = expected.iter().map(|(line, code, _)| (*line, *code)).collect();
        assert_eq!(found, wanted, "{}: {errors:#?}", case.name);
        for (line, code, words) in expected {
            let hit = errors.iter().any(|d| {
                let text = format!("{} {}", d.message, d.help.as_deref().unwrap_or_default());
                d.code == code && text.contains(words)
            });
            assert!(hit, "{}, line {line}: no `{words}` in {errors:#?}", case.name);
        }
    }
}

/// A whole text file becomes a design, with the swatch of a design beside it, and a plan like any other.
#[test]
fn a_text_file_becomes_a_plan() {
    let rounds = "Pebble cap\n\nCrown\nRnd 1: 6 sc in ring (6)\nRnd 2: 2 sc in each st around (12)\n\nSide:\n\
        Rnds 3-4: sc in each\n  st around (12)\n";
    let mut report = Report::new();
    let beside = read_design(include_str!("../examples/slipway-sun-hat.yaml"), &mut report);
    let design = beside.and_then(|beside| text::into_design(rounds, &beside, &mut report));
    let plan = design.and_then(|design| solve(&design, &mut report));
    assert!(!report.has_errors(), "{report:#?}");
    let plan = plan.into_iter().next();
    let size = plan.as_ref().and_then(|plan| plan.sizes.first());
    let counts: Vec<u32> = size.iter().flat_map(|size| &size.rounds).map(|round| round.after).collect();
    assert_eq!(counts, [6, 12, 12, 12]);
    let parts: Vec<&str> = size.iter().flat_map(|size| &size.parts).map(|part| part.name.as_str()).collect();
    assert_eq!(parts, ["Crown", "Side"]);
    assert_eq!(plan.map(|plan| plan.design.title.value).as_deref(), Some("Pebble cap"));
}

/// Complaints about a text file stand at its lines and columns.
#[test]
fn a_mistake_in_a_text_file_has_its_place() {
    let rounds = "# mine\nRnd 1: 6 sc in ring (6)\n  Rnd 2: 2 htr in each st around (12)\n";
    let mut report = Report::new();
    let beside = read_design(include_str!("../examples/slipway-sun-hat.yaml"), &mut report);
    let design = beside.and_then(|beside| text::into_design(rounds, &beside, &mut report));
    assert!(design.and_then(|design| solve(&design, &mut report)).is_none());
    let errors = report.diagnostics.iter().filter(|d| d.severity == Severity::Error);
    let found: Vec<_> = errors.map(|d| (d.code, d.place.map(|place| (place.line, place.column)))).collect();
    assert_eq!(found, [("mixed-terms", Some((3, 12)))]);
}
