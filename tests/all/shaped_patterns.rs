//! Stitch patterns in parts that are shaped: every round recounted, the count changed where it may be and by whole repeats
//! only, and edges that come to what was asked. What can't be closed is refused on its line with a cure.

#![allow(clippy::unwrap_used, reason = "a test fails where it panics")]

use roundelay::craft::{Made, Op, Round};
use roundelay::file::json;
use roundelay::geometry::{SideShape, predict};
use roundelay::pattern::Pattern;
use roundelay::plan::{ShapedIn, audit};
use roundelay::report::{Report, Severity};
use roundelay::words::Language;

/// Patterns with the multiple that they close on, counted by hand, and where the count changes.
const PATTERNS: [(&str, u32, ShapedIn); 7] = [
    ("[\"sc in each st\", \"FPdc in next, BPdc in next\"]", 2, ShapedIn::Plain),
    ("[\"FPdc in next, BPdc in next\", \"sc in each st\"]", 2, ShapedIn::Plain),
    ("[\"sc in each st\", \"5 dc in next st, sk 2 sts, sc in next st, sk 2 sts\"]", 6, ShapedIn::Plain),
    ("[\"hdc in each st\", \"sc in each st\", \"(dc, ch 1, dc) in next st, sk 2 sts\"]", 3, ShapedIn::Plain),
    ("[\"BLO sc in each st around\"]", 1, ShapedIn::Plain),
    ("[\"FPdc in next, BPdc in next\"]", 2, ShapedIn::Between),
    ("[\"dc in next st, ch 1, sk next st\", \"sc in next st, ch 1, sk next ch\"]", 2, ShapedIn::Between),
];

fn basket(work: &str, parts: &str) -> String {
    format!(
        "title: Reed basket\nkind: basket\nwork: {work}\n\
         swatch: {{stitch: sc, stitches: 18, rounds: 19, width: 10, height: 10}}\n\
         sizes: {{S: {{across: 16}}, M: {{across: 22}}, L: {{across: 30}}}}\ntolerance: 8 %\nparts:\n{parts}"
    )
}

fn read(text: &str) -> Result<Pattern, Report> {
    Pattern::read(text.as_bytes())
}

fn is_plain(round: &Round) -> bool {
    let flat = |op: &Op| matches!(op.made, Made::Same(stitch, _) if stitch.is_plain_fabric());
    round.ops.iter().all(flat)
}

/// Works every pattern in a part and looks at all of its rounds.
fn assert_closes(parts: impl Fn(&str) -> String, index: usize) {
    for (pattern, of, within) in PATTERNS {
        for work in ["joined", "spiral"] {
            let text = basket(work, &parts(pattern));
            let read = read(&text).unwrap_or_else(|report| panic!("{text}{report:#?}"));
            for size in &read.plan.sizes {
                assert_eq!(audit(size), Ok(()), "{text}");
                let part = &size.parts[index];
                assert_eq!(part.shaped_in, Some(within), "{text}");
                let own: Vec<&Round> = size.rounds.iter().filter(|round| round.part == index).collect();
                let change = |round: &&&Round| round.after != round.before && round.before > 0;
                for round in own.iter().filter(change) {
                    assert!(is_plain(round), "round {} of {text}", round.number);
                }
                // Whatever is no plain round stands on a whole number of repeats.
                let textured = own.iter().filter(|round| !is_plain(round));
                let counts: Vec<u32> = textured.map(|round| round.after).collect();
                assert!(counts.len() * 4 >= own.len() || of == 1, "{counts:?} {text}");
                assert!(counts.iter().all(|count| count % of == 0), "{counts:?} {text}");
                let off = (part.reached - part.target).abs() / part.target;
                assert!(off < 0.08, "{off} {text}");
            }
        }
    }
}

#[test]
fn a_side_that_widens_or_narrows_is_worked_in_any_pattern() {
    for around in ["{S: 62, M: 84, L: 112}", "{S: 42, M: 58, L: 80}"] {
        let side = |pattern: &str| {
            format!(
                "  - base: {{start: ring, shape: flat}}\n  - side: {{shape: taper, depth: 12, around: {around}, pattern: {pattern}}}\n"
            )
        };
        assert_closes(side, 1);
    }
}

#[test]
fn a_brim_flares_in_any_pattern() {
    let brim = |pattern: &str| {
        format!(
            "  - base: {{start: ring, shape: flat}}\n  - side: {{shape: straight, depth: 6}}\n  \
             - brim: {{shape: flare, width: 9, flare: 40°, settle: 2, pattern: {pattern}}}\n"
        )
    };
    assert_closes(brim, 2);
}

#[test]
fn a_flat_base_is_worked_in_any_pattern() {
    assert_closes(|pattern| format!("  - base: {{start: ring, shape: flat, most: triple, pattern: {pattern}}}\n"), 0);
}

#[test]
fn a_dome_is_worked_in_any_pattern() {
    let dome = |pattern: &str| {
        format!(
            "  - top: {{start: ring, shape: dome, rise: {{S: 7, M: 10, L: 14}}, most: triple, pattern: {pattern}}}\n"
        )
    };
    assert_closes(dome, 0);
}

/// A V-stitch with its space takes the room of three stitches; the first round of them goes into stitches, the others go
/// into spaces.
#[test]
fn set_up_rounds_are_worked_once() {
    let parts = "  - base: {start: ring, shape: flat}\n  - side:\n      shape: straight\n      depth: 8\n      \
        setup: [\"V-st in next st, sk next 2 sts\"]\n      pattern: [\"V-st in next V-st\"]\n";
    for work in ["joined", "spiral"] {
        let read = read(&basket(work, parts)).unwrap_or_else(|report| panic!("{report:#?}"));
        for size in &read.plan.sizes {
            assert_eq!(audit(size), Ok(()));
            let side = &size.parts[1];
            assert_eq!(side.multiple.map(|multiple| multiple.of()), Some(3));
            let own: Vec<&Round> = size.rounds.iter().filter(|round| round.part == 1 && !is_plain(round)).collect();
            assert!(own.len() > 3);
            let into_spaces = |round: &Round| round.ops.iter().any(|op| op.into == roundelay::craft::Spot::Space);
            assert!(!into_spaces(own[0]) && own[1..].iter().all(|round| into_spaces(round)));
        }
    }
}

#[test]
fn after_a_shaping_round_a_set_up_is_worked_again() {
    let parts = "  - base: {start: ring, shape: flat}\n  - side:\n      shape: taper\n      depth: 12\n      \
        around: {S: 62, M: 84, L: 112}\n      setup: [\"V-st in next st, sk next 2 sts\"]\n      pattern: [\"V-st in next V-st\"]\n";
    let read = read(&basket("joined", parts)).unwrap_or_else(|report| panic!("{report:#?}"));
    for size in &read.plan.sizes {
        assert_eq!(audit(size), Ok(()));
        let own: Vec<&Round> = size.rounds.iter().filter(|round| round.part == 1).collect();
        for pair in own.windows(2).filter(|pair| pair[0].change() != 0) {
            assert!(pair[1].ops.iter().all(|op| op.into != roundelay::craft::Spot::Space), "{}", pair[1].number);
        }
        assert!(own.iter().filter(|round| round.change() != 0).count() > 1);
    }
}

#[test]
fn pages_say_where_the_count_changes_in_every_language() {
    for (pattern, key) in [(PATTERNS[0].0, "plain"), (PATTERNS[5].0, "between")] {
        let mut said = std::collections::BTreeSet::new();
        for language in Language::ALL {
            let parts = format!(
                "  - base: {{start: ring, shape: flat}}\n  - side: {{shape: taper, depth: 12, around: {{S: 62, M: 84, L: 112}}, pattern: {pattern}}}\n"
            );
            let text = basket("joined", &parts).replace("kind:", &format!("language: {}\nkind:", language.tag()));
            let plan = read(&text).unwrap().plan;
            let shapes: Vec<SideShape> = plan.sizes.iter().map(|size| predict(&plan, size)).collect();
            let pictures = roundelay::page::Pictures::default();
            let options = roundelay::page::Options::new(roundelay::page::Paper::a4());
            let story = roundelay::story::Story::new(&plan, &shapes, options.telling(), pictures.illustrations());
            let told = roundelay::file::text::write(&story, &pictures);
            let words = plan.design.words();
            let line = words.with(&format!("page-pattern-{key}"), &[("part", roundelay::words::Arg::Text("side"))]);
            let flowing = told.split_whitespace().collect::<Vec<_>>().join(" ");
            assert!(flowing.contains(&line.split_whitespace().collect::<Vec<_>>().join(" ")), "{told}");
            assert!(said.insert(line));
            assert!(json::plan(&plan, &shapes, None).contains(&format!("\"shaped_in\":\"{key}\"")));
        }
    }
}

#[test]
fn what_can_not_be_closed_is_refused_with_a_cure() {
    let told = |parts: &str| {
        let report = read(&basket("joined", parts)).err().unwrap();
        let errors = report.diagnostics.into_iter().filter(|one| one.severity == Severity::Error);
        errors.map(|one| (one.code, one.help.is_some(), one.place.is_some())).next().unwrap()
    };
    // Forty stitches to a repeat leave a narrow base no way to change.
    let wide =
        "  - base: {start: ring, shape: flat, pattern: [\"sc in each st\", \"dc in next 39 sts, FPdc in next st\"]}\n";
    assert_eq!(told(wide), ("pattern", true, true));
    // A ball closes, and no pattern can.
    let ball =
        "  - base: {start: ring, shape: flat}\n  - top: {shape: close, pattern: [\"FPdc in next, BPdc in next\"]}\n";
    assert_eq!(told(ball), ("unused-field", true, true));
    let bare = "  - base: {start: ring, shape: flat}\n  - side: {shape: straight, depth: 6, setup: [sc in each st]}\n";
    assert_eq!(told(bare), ("unused-field", true, true));
}
