//! What a designer says for each size, and how often a round repeats: held in every size, printed once for all.

#![allow(clippy::unwrap_used, reason = "a test fails where it panics")]

use proptest::prelude::*;
use roundelay::craft::{Made, Spot, Stitch};
use roundelay::pattern::{Beside, Pattern};
use roundelay::plan::{self, SizePlan};
use roundelay::story::listing;

const SWATCH: &str = "swatch: {stitch: sc, stitches: 16, rounds: 17, width: 11.3, height: 11.1}";

fn read(text: &str) -> Pattern {
    Pattern::read(text.as_bytes()).unwrap_or_else(|report| panic!("{text}\n{report:#?}"))
}

fn pot(parts: &str) -> String {
    let sizes = "sizes: {S: {around: 42}, M: {around: 45}, L: {around: 48}}";
    format!("title: Pot\nkind: basket\n{SWATCH}\n{sizes}\nwork: spiral\nparts:\n{parts}")
}

/// Ends of rounds, from the first to the last.
fn counts(size: &SizePlan) -> Vec<u32> {
    size.rounds.iter().map(|round| round.after).collect()
}

/// A handle over eleven, twelve and thirteen stitches on either side of it: each size has its own numbers, and the pages
/// set them side by side again.
#[test]
fn numbers_of_several_sizes_are_read_and_printed_side_by_side() {
    let text = pot(
        "  - base: {start: {S: ring of 6, M: ring of 6, L: ring of 8}}\n  - wall: {depth: 6, multiple: 4}\n  - rim:\n      \
         written: |\n        sc in each st around (60, 64, 68)\n        sc in next 11 (12, 13) sts, ch 8, sk 8, sc in next \
         22 (24, 26) sts, ch 8, sk 8, sc in each remaining st around\n        sc in each st and ch around – 60 (64, 68)\n        \
         Size L only: sc in each st around (68)\n",
    );
    let plan = read(&text).plan;
    let ends: Vec<(u32, u32)> =
        plan.sizes.iter().map(|size| (size.rounds[0].after, *counts(size).last().unwrap())).collect();
    assert_eq!(ends, [(6, 60), (6, 64), (8, 68)]);
    let rim: Vec<usize> =
        plan.sizes.iter().map(|size| size.rounds.iter().filter(|round| round.part == 2).count()).collect();
    assert_eq!(rim, [3, 3, 4]);
    let printed = listing::pattern(&plan, None);
    assert!(
        printed.contains("sc in next 11 (12, 13) sts, ch 8, sk 8, sc in next 22 (24, 26) sts, ch 8, sk 8"),
        "{printed}"
    );
    assert!(printed.contains("sc in each st and ch around – 60 (64, 68)"), "{printed}");
    assert!(printed.contains("Size L only: Rnd"), "{printed}");
}

#[test]
fn rounds_and_notes_stand_under_the_names_of_sizes() {
    let text = pot(
        "  - base\n  - rim:\n      notes: {S: Work tightly., 1: {M: place a marker}}\n      written:\n        S: |\n          sc in \
         each st around (62)\n        M: [sc in each st around]\n        L: |\n          sc in each st around\n          sc in each st \
         around\n",
    );
    // However many stitches the base ends with, each size has its own rounds.
    let text = text.replace(" (62)", "");
    let plan = read(&text).plan;
    let rim: Vec<usize> =
        plan.sizes.iter().map(|size| size.rounds.iter().filter(|round| round.part == 1).count()).collect();
    assert_eq!(rim, [1, 1, 2]);
    let said = |size: &SizePlan| {
        let rim = size.rounds.iter().find(|round| round.part == 1).unwrap();
        rim.said.as_ref().is_some_and(|said| said.after.iter().any(|note| note == "place a marker"))
    };
    assert_eq!(plan.sizes.iter().map(said).collect::<Vec<_>>(), [false, true, false]);
}

/// One size alone has what was said for it.
#[test]
fn a_size_that_is_published_alone_keeps_what_is_its_own() {
    let text = pot(
        "  - base\n  - wall:\n      depth: {S: 4, M: 6, L: 8}\n  - rim:\n      written: |\n        sc in each st around\n        Size \
         L only: sc in each st around\n",
    );
    for (index, name) in ["S", "M", "L"].into_iter().enumerate() {
        let whole = read(&text).plan.sizes[index].clone();
        let alone = read(&text).of_size(name).unwrap().plan;
        assert_eq!((alone.sizes.len(), counts(&alone.sizes[0])), (1, counts(&whole)), "{name}");
    }
}

#[test]
fn repeats_are_the_same_in_every_size() {
    for (repeats, allowed) in [("6", &[6][..]), ("[7, 8]", &[7, 8]), ("9", &[9])] {
        let parts = format!("  - base: {{repeats: {repeats}}}\n  - wall: {{depth: 6}}\n");
        let plan = read(&pot(&parts)).plan;
        let of = |size: &SizePlan| {
            let shaped = size.rounds.iter().filter(|round| round.change() != 0);
            let fits = |of: &&u32| shaped.clone().all(|round| round.after.is_multiple_of(**of));
            allowed.iter().find(fits).copied().unwrap_or_else(|| panic!("{repeats}: {:?}", counts(size)))
        };
        let used: Vec<u32> = plan.sizes.iter().map(of).collect();
        assert!(used.windows(2).all(|pair| pair[0] == pair[1]), "{repeats}: {used:?}");
    }
}

/// A brim in sixes begins on a count that six parts, though the crown before it says nothing of repeats.
#[test]
fn what_goes_before_ends_as_repeats_ask() {
    let text = format!(
        "title: Hat\n{SWATCH}\nsizes: {{S: {{head: 53}}, M: {{head: 56}}, L: {{head: 59}}}}\nease: 0 %\ntolerance: 5 %\nparts: [crown, side: {{depth: \
         9}}, brim: {{width: 6, flare: 45°, repeats: 6}}]\n"
    );
    for size in &read(&text).plan.sizes {
        let brim = size.rounds.iter().filter(|round| round.part == 2);
        assert!(brim.clone().all(|round| round.before.is_multiple_of(6) && round.change().rem_euclid(6) == 0));
    }
}

/// Two fifths and a third of the head are common practice for a hat that covers the ears, and one that comes to their
/// middle; what is folded up counts once.
#[test]
fn a_hat_comes_over_the_ears_in_every_size() {
    for (words, share) in [("over the ears", 0.4), ("to mid ear", 1.0 / 3.0)] {
        for fold in ["", ", folded: 4"] {
            for crown in ["crown", "crown: {shape: dome, rise: 8}"] {
                let parts = format!("[{crown}, side: {{depth: {words}{fold}}}]");
                let text =
                    format!("title: Hat\n{SWATCH}\nsizes: {{S: {{head: 54}}, M: {{head: 58}}}}\nparts: {parts}\n");
                let plan = read(&text).plan;
                for size in &plan.sizes {
                    let (depth, wanted) = (plan.depth(size).unwrap().cm(), size.head.unwrap().cm() * share);
                    // Whole rounds of 6.5 mm, and a fold of whole rounds.
                    assert!((depth - wanted).abs() < 0.75, "{words}{fold} {crown}: {depth} for {wanted}");
                }
            }
        }
    }
}

/// Stitches between the openings of a round, from the first opening on.
fn between(size: &SizePlan, round: usize) -> (Vec<u32>, Vec<u32>) {
    let (mut widths, mut gaps, mut gap, mut lead) = (Vec::new(), Vec::new(), 0, None);
    for op in &size.rounds[round].ops {
        match (op.into, &op.made) {
            (Spot::Air, Made::Same(Stitch::CH, chains)) => {
                match lead {
                    None => lead = Some(gap),
                    Some(_) => gaps.push(gap),
                }
                gap = 0;
                widths.push(*chains);
            }
            (Spot::Skip, _) => assert_eq!(widths.last(), Some(&op.consumed)),
            _ => gap += op.consumed,
        }
    }
    gaps.push(gap + lead.unwrap_or(0));
    (widths, gaps)
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 40, failure_persistence: None, ..ProptestConfig::default() })]

    /// As many as are asked for, as wide as is asked, no two gaps more than a stitch apart; the round above goes into the
    /// chains and has as many stitches again.
    #[test]
    fn openings_stand_evenly_in_every_size(number in 1..12_u32, width in 1..4_u32, joined in any::<bool>()) {
        let parts = format!(
            "  - base\n  - wall: {{depth: 6, openings: {{round: 3, number: {number}, width: {width} stitches}}}}\n"
        );
        let work = if joined { "work: joined" } else { "work: spiral" };
        let plan = read(&pot(&parts).replace("work: spiral", work)).plan;
        for size in &plan.sizes {
            plan::audit(size).unwrap();
            let at = size.parts[1].first as usize + 1;
            let (widths, gaps) = between(size, at);
            assert_eq!(widths, vec![width; number as usize]);
            assert!(gaps.iter().max().unwrap() - gaps.iter().min().unwrap() <= 1, "{gaps:?}");
            assert_eq!(size.rounds[at + 1].after, size.rounds[at].before);
        }
        // A maker who reads the words finds the same.
        let name = &plan.sizes[1].name;
        let words = listing::pattern(&plan, Some(name));
        let read = Pattern::read_rounds(words.as_bytes(), Some(Beside { name: "swatch.yaml", bytes: SWATCH.as_bytes() }));
        let read = read.unwrap_or_else(|report| panic!("{words}\n{report:#?}"));
        assert_eq!(counts(&read.plan.sizes[0]), counts(&plan.sizes[1]), "{}", words);
    }
}

/// A design of a random hat or basket, with what the generator chose to ask of its parts.
fn wished() -> impl Strategy<Value = (String, Option<u32>, Option<u32>)> {
    let patterns = prop::sample::select(vec![
        "",
        "FPdc in next, BPdc in next",
        "2 sc in next, sk 1",
        "BLO sc in each st around",
        "sc in next, ch 1, sk 1",
        "dc in next 2, FPdc in next",
    ]);
    let starts = prop::sample::select(vec!["ring", "ring of 6", "{S: ring of 6, M: ring of 8}"]);
    let repeats = prop::sample::select(vec![None, None, Some(4_u32), Some(6), Some(7), Some(8)]);
    let multiple = prop::sample::select(vec![None, None, Some(2_u32), Some(3), Some(4), Some(5), Some(6)]);
    let shape = (300..640_u32, 20..60_u32, 14..24_u32, 15..26_u32, 3..9_u32, any::<bool>());
    let wishes = (patterns, starts, repeats, multiple, 0..4_u32, any::<bool>());
    (shape, wishes).prop_map(|((around, step, stitches, rounds, depth, spiral), (pattern, start, repeats, multiple, opening, noted))| {
        let own = |name: &str, value: Option<u32>| value.map_or(String::new(), |value| format!(", {name}: {value}"));
        let pattern = if pattern.is_empty() { String::new() } else { format!(", pattern: [\"{pattern}\"]") };
        // A start that its repeats don't part is a case of its own.
        let start = if repeats.is_some() { "ring" } else { start };
        let openings = match opening {
            0 => String::new(),
            number => format!(", openings: {{round: 2, number: {number}, width: 2 stitches}}"),
        };
        let notes = if noted { ", notes: {1: {S: mind the marker}, last: well done}" } else { "" };
        let written = "{S: [sc in each st around], M: [sc in each st around, sc in each st around]}";
        let text = format!(
            "title: Any\nkind: basket\ntolerance: 9 %\nswatch: {{stitch: sc, stitches: {stitches}, rounds: {rounds}, width: 10, \
             height: 10}}\nsizes: {{S: {{around: {} mm}}, M: {{around: {} mm}}}}\nwork: {}\nparts:\n  - base: {{start: {start}{}}}\n  \
             - band: {{shape: straight, depth: {depth}{}{pattern}{notes}}}\n  - rim: {{shape: straight, depth: {depth}{openings}}}\n  \
             - edge: {{written: {written}}}\n",
            around,
            around + step,
            if spiral { "spiral" } else { "joined" },
            own("repeats", repeats),
            own("multiple", multiple),
        );
        (text, repeats, multiple)
    })
}

/// Every round of such a design closes, its repeats and multiples hold in every size, and its words read back to the same
/// counts; what can't be met is refused.
fn hold((text, repeats, multiple): &(String, Option<u32>, Option<u32>)) -> bool {
    let Ok(pattern) = Pattern::read(text.as_bytes()) else { return false };
    let plan = &pattern.plan;
    for size in &plan.sizes {
        plan::audit(size).unwrap_or_else(|wrong| panic!("{wrong}\n{text}"));
        let base = size.rounds.iter().filter(|round| round.part == 0);
        if let Some(repeats) = repeats {
            assert!(base.clone().all(|round| round.after.is_multiple_of(*repeats)), "{text}{:?}", counts(size));
        }
        let band = size.rounds.iter().rfind(|round| round.part == 1).unwrap();
        assert!(multiple.is_none_or(|of| band.after.is_multiple_of(of)), "{text}{:?}", counts(size));
        let words = listing::pattern(plan, Some(&size.name));
        let swatch = text.lines().find(|line| line.starts_with("swatch")).unwrap();
        let read = Pattern::read_rounds(words.as_bytes(), Some(Beside { name: "s.yaml", bytes: swatch.as_bytes() }));
        let read = read.unwrap_or_else(|report| panic!("{text}\n{words}\n{report:#?}"));
        assert_eq!(counts(&read.plan.sizes[0]), counts(size), "{text}\n{words}");
    }
    true
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 100, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn whatever_is_wished_of_repeats_multiples_patterns_and_sizes_closes(wish in wished()) {
        hold(&wish);
    }
}

/// Ten thousand of them: `cargo test --test all ten_thousand -- --ignored`.
#[test]
#[ignore = "takes minutes"]
fn ten_thousand_wishes_close() {
    let mut runner = proptest::test_runner::TestRunner::new(ProptestConfig {
        cases: 10_000,
        failure_persistence: None,
        ..ProptestConfig::default()
    });
    let met = std::cell::Cell::new(0);
    runner
        .run(&wished(), |wish| {
            met.set(met.get() + u32::from(hold(&wish)));
            Ok(())
        })
        .unwrap();
    assert!(met.get() > 5000, "{} of them could be worked", met.get());
}
