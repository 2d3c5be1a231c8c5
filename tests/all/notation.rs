//! Written rounds read, counted and written again.

use roundelay::craft::{Stitch, Terms};
use roundelay::design::Work;
use roundelay::notation::{Source, read};
use roundelay::pattern::{Beside, Pattern};
use roundelay::plan::Plan;
use roundelay::plan::recount::{Recounted, Rules, rounds};
use roundelay::report::{Report, Severity};

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
    let rules = Rules { work: case.work, main: Stitch::SC, terms: case.terms, height: None };
    let written = read(&[Source { text: &text, place: None }], case.terms, Stitch::SC, 1, &mut report);
    let counted = rounds(&written, (0, 1), &rules, &mut report);
    (counted, report)
}

#[test]
fn clean_rounds_count_as_they_say() {
    for case in cases(include_str!("../rounds/clean.txt")) {
        let (counted, report) = count(&case);
        let errors: Vec<_> = report.diagnostics.iter().filter(|d| d.severity == Severity::Error).collect();
        assert!(errors.is_empty(), "{}: {errors:#?}", case.name);
        let wanted = case.text.lines().find_map(|line| line.strip_prefix("# counts: ")).unwrap_or_default();
        let counts: Vec<String> = counted.iter().flat_map(|c| &c.rounds).map(|round| round.after.to_string()).collect();
        assert_eq!(counts.join(" "), wanted, "{}", case.name);
        let sum: u32 = counted.iter().flat_map(|counted| &counted.rounds).map(|round| round.after).sum();
        let said = case.text.lines().find_map(|line| line.strip_prefix("# stitches: "));
        assert!(said.is_none_or(|said| said == sum.to_string()), "{}: {sum} stitches", case.name);
        let kinds = report.diagnostics.iter().find(|found| found.code == "count-kind");
        assert_eq!(kinds, None, "{}", case.name);
        for round in counted.iter().flat_map(|counted| &counted.rounds) {
            assert_eq!(round.sums(), (round.before, round.after), "{}: round {}", case.name, round.number);
        }
    }
}

/// The rounds that the README shows can be worked.
#[test]
fn the_rounds_of_the_readme_count() {
    let lines = include_str!("../../README.md").lines().skip_while(|line| !line.starts_with("    Rnd 1"));
    let text: String =
        lines.take_while(|line| line.starts_with("    ")).map(|line| format!("{}\n", line.trim())).collect();
    let case = Case { name: "README", terms: Terms::Us, work: Work::Joined { chain_counts: true }, text: &text };
    let (counted, report) = count(&case);
    assert_eq!(report.diagnostics, []);
    let counts: Vec<u32> = counted.iter().flat_map(|counted| &counted.rounds).map(|round| round.after).collect();
    assert_eq!(counts, [12, 24, 32, 48]);
}

/// Complaints of a case stand below its bad lines, with the words they hold, and there are no others.
fn told_beside_their_lines(case: &Case<'_>, report: &Report, weighs: impl Fn(Severity) -> bool) {
    let mut expected = Vec::new();
    for (index, line) in case.text.lines().enumerate() {
        let Some(said) = line.strip_prefix("# expect: ") else { continue };
        let (code, words) = said.split_once(": ").unwrap_or((said, ""));
        expected.push((index, code, words));
    }
    let all: Vec<_> = report.diagnostics.iter().filter(|d| weighs(d.severity)).collect();
    let mut found: Vec<_> = all.iter().map(|d| (d.place.map_or(0, |place| place.line), d.code)).collect();
    found.sort_unstable();
    let wanted: Vec<_> = expected.iter().map(|(line, code, _)| (*line, *code)).collect();
    assert_eq!(found, wanted, "{}: {all:#?}", case.name);
    for (line, code, words) in expected {
        let hit = all.iter().any(|d| {
            let text = format!("{} {}", d.message, d.help.as_deref().unwrap_or_default());
            d.code == code && text.contains(words)
        });
        assert!(hit, "{}, line {line}: no `{words}` in {all:#?}", case.name);
    }
}

#[test]
fn mistakes_are_told_beside_their_line() {
    let cases = cases(include_str!("../rounds/mistakes.txt"));
    assert!(cases.len() >= 20);
    for case in cases {
        let (counted, report) = count(&case);
        assert_eq!(counted, None, "{} went through", case.name);
        told_beside_their_lines(&case, &report, |severity| severity == Severity::Error);
    }
}

#[test]
fn doubts_are_told_and_go_through() {
    for case in cases(include_str!("../rounds/doubts.txt")) {
        let (counted, report) = count(&case);
        assert!(counted.is_some(), "{}: {report:#?}", case.name);
        told_beside_their_lines(&case, &report, |_| true);
    }
}

/// The plan of a design, or nothing, with its complaints.
fn counted(text: &str) -> (Option<Plan>, Report) {
    match Pattern::read(text.as_bytes()) {
        Ok(Pattern { plan, report, .. }) => (Some(plan), report),
        Err(report) => (None, report),
    }
}

/// A piece of written rounds with two colours.
fn coloured(rounds: &str) -> (Option<Plan>, Report) {
    let text = format!(
        "title: Stripes\nkind: basket\nyarn: {{weight: 4, colours: {{sand: \"#d9c39a\", Sea-green: \"#2f8f6f\"}}}}\n\
         swatch: {{stitch: sc, stitches: 16, rounds: 17, width: 11.3, height: 11.1}}\nsizes: {{one: {{across: 2.7}}}}\n\
         work: spiral\nparts:\n  - base:\n      written: |\n{rounds}"
    );
    counted(&text)
}

/// A yarn that a round names holds until the next, over the parts; one that it changes to at its end is that of the
/// round after it.
#[test]
fn rounds_name_their_yarn() {
    let rounds = "        Rnd 1: 6 sc in ring (6)\n        Rnd 2: with sea-green, 2 sc in each st around (12)\n\
        \x20       Rnds 3-4: sc in each st around, change to sand in last st (12)\n        Rnd 5: sc in each st around (12)\n\
        \x20       Rnd 6: using yarn Sea-green, sc in each st around (12)\n  - side:\n      written: |\n\
        \x20       Rnd 7: with a 4 mm hook, sc in each st around (12)\n\
        \x20       Rnd 8: join sand with sl st in any st, sc in each st around (12)\n\
        \x20       Rnd 9: Join colour sea-green, sc in each st around (12)\n\
        \x20       Rnd 10: join with sl st in first st, sc in each st around (12)\n";
    let (plan, report) = coloured(rounds);
    assert_eq!(report.diagnostics, []);
    let rounds = plan.iter().flat_map(|plan| &plan.sizes[0].rounds);
    let colours: Vec<Option<usize>> = rounds.map(|round| round.colour).collect();
    assert_eq!(colours, [0, 1, 1, 1, 0, 1, 1, 0, 1, 1].map(Some));
}

/// Yarns may be called by a letter, as the trade does; where the design has no colours at all, the counts hold.
#[test]
fn yarns_are_called_by_letters_and_may_be_unknown_altogether() {
    let rounds = "        Rnd 1: with A, 6 sc in ring (6)\n        Rnd 2: join yarn B, 2 sc in each st around (12)\n\
        \x20       Rnd 3: with color A, sc in each st around (12)\n";
    let named = |colours: &str| {
        let text = format!(
            "title: Stripes\nkind: basket\nyarn: {{weight: 4{colours}}}\n\
             swatch: {{stitch: sc, stitches: 16, rounds: 17, width: 11.3, height: 11.1}}\nsizes: {{one: {{across: 5}}}}\n\
             work: spiral\nparts:\n  - base:\n      written: |\n{rounds}"
        );
        let (plan, report) = counted(&text);
        let rounds = plan.iter().flat_map(|plan| &plan.sizes[0].rounds);
        let codes: Vec<&str> = report.diagnostics.iter().map(|found| found.code).collect();
        (rounds.map(|round| round.colour).collect::<Vec<_>>(), codes)
    };
    assert_eq!(named(", colours: {A: \"#d9c39a\", B: \"#2f8f6f\"}").0, [0, 1, 0].map(Some));
    let (colours, codes) = named("");
    assert_eq!(colours.len(), 3);
    assert!(codes.contains(&"unknown-colour"), "{codes:?}");
}

#[test]
fn a_yarn_nobody_has_is_an_error_with_a_suggestion() {
    let (plan, report) = coloured("        Rnd 1: with see-green, 6 sc in ring (6)\n");
    assert!(plan.is_none());
    let found = report.diagnostics.iter().find(|found| found.code == "unknown-colour");
    assert!(
        found.is_some_and(|found| found.help.as_deref().is_some_and(|help| help.contains("did you mean `Sea-green`")))
    );
    assert_eq!(found.and_then(|found| found.place).map(|place| (place.line, place.column)), Some((10, 16)));
}

/// The design whose swatch the text files have.
const SUN_HAT: Beside<'_> = Beside { name: "sun hat", bytes: include_bytes!("../../examples/slipway-sun-hat.yaml") };

/// A whole text file becomes a design, with the swatch of a design beside it, and a plan like any other.
#[test]
fn a_text_file_becomes_a_plan() {
    let rounds = "Pebble cap\n\nCrown\nRnd 1: 6 sc in ring (6)\nRnd 2: 2 sc in each st around (12)\n\nSide:\n\
        Rnds 3-4: sc in each\n  st around (12)\n";
    let plan = Pattern::read_rounds(rounds.as_bytes(), Some(SUN_HAT)).expect("rounds that count").plan;
    let size = &plan.sizes[0];
    let counts: Vec<u32> = size.rounds.iter().map(|round| round.after).collect();
    assert_eq!(counts, [6, 12, 12, 12]);
    let parts: Vec<&str> = size.parts.iter().map(|part| part.name.as_str()).collect();
    assert_eq!(parts, ["Crown", "Side"]);
    assert_eq!(plan.design.title.value, "Pebble cap");
}

/// Complaints about a text file stand at its lines and columns.
#[test]
fn a_mistake_in_a_text_file_has_its_place() {
    let rounds = "# mine\nRnd 1: 6 sc in ring (6)\n  Rnd 2: 2 htr in each st around (12)\n";
    let report = Pattern::read_rounds(rounds.as_bytes(), Some(SUN_HAT)).expect_err("mixed terms");
    let errors = report.diagnostics.iter().filter(|d| d.severity == Severity::Error);
    let found: Vec<_> = errors.map(|d| (d.code, d.place.map(|place| (place.line, place.column)))).collect();
    assert_eq!(found, [("mixed-terms", Some((3, 12)))]);
}
