//! Cures that complaints name between backticks as lines of a design: each is written in, and its complaint is gone.

use roundelay::pattern::Pattern;
use roundelay::report::{Diagnostic, Severity};

/// A cap in tall stitches with these lines at its top, for these sizes.
fn cap(lines: &[&str], start: &str, sizes: &str) -> String {
    format!(
        "title: Cap\n{}\nswatch: {{stitch: dc, stitches: 18, rounds: 10, width: 13.6, height: 13.3}}\n\
         sizes: {{{sizes}}}\nwork: spiral\nparts:\n  - crown: {{start: {start}, shape: dome}}\n  - side: {{depth: 8}}\n",
        lines.join("\n")
    )
}

fn complaints(design: &str) -> Vec<Diagnostic> {
    let report = match Pattern::read(design.as_bytes()) {
        Ok(pattern) => pattern.report,
        Err(report) => report,
    };
    report.diagnostics
}

/// The lines that a help names, such as `prefer: close`.
fn cures(help: &str) -> Vec<String> {
    let named = help.split('`').skip(1).step_by(2);
    named.filter(|named| named.contains(": ")).map(str::to_owned).collect()
}

/// The design with a line at its top, in place of the one of the same field.
fn cured(design: &str, line: &str) -> String {
    let field = line.split(": ").next().unwrap_or_default();
    let others = design.lines().filter(|other| !other.starts_with(&format!("{field}: ")));
    let mut lines: Vec<&str> = others.collect();
    lines.insert(1, line);
    lines.join("\n") + "\n"
}

#[test]
fn every_cure_that_is_named_can_be_written_and_cures() {
    let one = "M: {head: 54.3}";
    let designs = [
        ("hat-slips", cap(&["ease: 12 %"], "ring", one)),
        ("hat-pinches", cap(&["ease: -18 %"], "ring", one)),
        ("usual-ease", cap(&["tolerance: 5 %"], "ring", one)),
        ("strays", cap(&["ease: 0 %", "tolerance: 1 %"], "ring of 10", "S: {head: 50}, L: {head: 56}")),
        ("misses-size", cap(&["ease: 0 %", "tolerance: 0.1 %"], "ring", "M: {head: 54}")),
    ];
    for (code, design) in designs {
        let told = complaints(&design);
        let told = told.iter().find(|one| one.code == code).unwrap_or_else(|| panic!("{code}: {told:#?}"));
        assert!(told.severity != Severity::Error, "{told:?}");
        let cures = cures(told.help.as_deref().unwrap_or_default());
        let Some(cure) = cures.last() else { panic!("{code} names no cure: {told:?}") };
        let after = complaints(&cured(&design, cure));
        assert!(!after.iter().any(|one| one.code == code), "{code} with `{cure}`: {after:#?}");
    }
}

/// What the solver chose where nobody said how near is noted and not warned of.
#[test]
fn what_nobody_asked_for_is_no_warning() {
    for cm in ["50", "52.3", "53", "54.3", "56", "57.7", "60"] {
        let told = complaints(&cap(&["ease: -5 %"], "ring", &format!("M: {{head: {cm}}}")));
        let warned: Vec<&Diagnostic> = told.iter().filter(|one| one.severity == Severity::Warning).collect();
        assert!(warned.is_empty(), "{cm} cm: {warned:#?}");
    }
}
