//! Open tubes: begun on a chain as long as the size, and closed flat at their end.

#![allow(clippy::unwrap_used, reason = "a test fails where it panics")]

use roundelay::craft::{Foundation, Round};
use roundelay::file::{csv, text};
use roundelay::geometry::mesh::{Fabric, mesh};
use roundelay::geometry::{predict, side_view};
use roundelay::notation::Instruction;
use roundelay::notation::write::Writer;
use roundelay::page::{Options, Paper, Pictures};
use roundelay::pattern::Pattern;
use roundelay::plan::SizePlan;
use roundelay::story::{Illustrations, Story};
use roundelay::units::{Angle, TURN, hypot};
use roundelay::words::{Language, Words};

/// Eighteen stitches in 10 cm.
const SC: &str = "{stitch: sc, stitches: 18, rounds: 19, width: 10, height: 10}";
const DC: &str = "{stitch: dc, stitches: 18, rounds: 10, width: 10, height: 10}";

fn design(kind: &str, swatch: &str, top: &str, sizes: &str, parts: &str) -> String {
    format!("title: Tube\nkind: {kind}\nswatch: {swatch}\nsizes: {{{sizes}}}\n{top}\nparts:\n{parts}")
}

fn read(text: &str) -> Pattern {
    Pattern::read(text.as_bytes()).unwrap_or_else(|report| panic!("{text}\n{report:#?}"))
}

fn first(size: &SizePlan) -> &Round {
    size.rounds.first().unwrap()
}

const SHADES: &str = "S: {around: 40}, M: {around: 47}, L: {around: 55.5}";

/// As many chains as stitches, in every size the count nearest to its circumference (18 in 10 cm: 72, 84.6 and 99.9), or the
/// nearest multiple that is asked for, or for easy rounds the nearest of sixes.
#[test]
fn a_tube_has_as_many_chains_as_stitches_in_every_size() {
    let cases = [
        ("", "  - body: {start: chain, shape: straight, depth: 8}\n", [72, 85, 100]),
        ("", "  - body: {start: chain, shape: straight, depth: 8, multiple: 4 + 2}\n", [70, 86, 98]),
        ("", "  - body: {start: chain, shape: taper, depth: 8, flare: 20°}\n", [72, 84, 100]),
        ("prefer: easy", "  - body: {start: chain, shape: taper, depth: 8, taper: 20°}\n", [72, 84, 102]),
        ("prefer: close", "  - body: {start: chain, shape: flare, width: 8, flare: 40°}\n", [72, 85, 100]),
        ("shaping: 5 corners", "  - body: {start: chain, shape: flat, around: 90}\n", [70, 85, 100]),
    ];
    for (top, part, counts) in cases {
        let pattern = read(&design("lampshade", SC, top, SHADES, part));
        for (size, count) in pattern.plan.sizes.iter().zip(counts) {
            assert_eq!((size.foundation, first(size).after), (Foundation::ChainRound(count), count), "{part}");
            assert!(first(size).ops.iter().all(|op| op.count() == 1), "{part}");
        }
    }
}

/// The rounds of a size as they are written, in a language.
fn written(pattern: &Pattern, language: Language) -> String {
    let (design, size) = (&pattern.plan.design, &pattern.plan.sizes[0]);
    let words = Words::of(language);
    let writer = Writer { words: &words, terms: design.terms };
    let told = |round: &Round| {
        let instruction = Instruction::of(round, size.below(round));
        format!("        {}: {}\n", round.number, writer.counted(&instruction))
    };
    size.rounds.iter().map(told).collect()
}

#[test]
fn what_is_printed_reads_back_as_the_same_tube_in_every_language() {
    for (work, swatch) in [("spiral", SC), ("spiral", DC), ("joined", SC), ("joined, chain counts", DC)] {
        let part = "  - body: {start: chain, shape: taper, depth: 6, flare: 20°}\n";
        let top = format!("work: {work}");
        let pattern = read(&design("lampshade", swatch, &top, "S: {around: 40}", part));
        for language in Language::ALL {
            let rounds = written(&pattern, language);
            let again =
                design("lampshade", swatch, &top, "S: {around: 40}", &format!("  - all:\n      written: |\n{rounds}"));
            let again = read(&again);
            let (one, other) = (&pattern.plan.sizes[0], &again.plan.sizes[0]);
            assert_eq!(one.foundation, other.foundation, "{rounds}");
            for (one, other) in one.rounds.iter().zip(&other.rounds) {
                assert_eq!((&one.ops, one.after), (&other.ops, other.after), "{rounds}");
            }
        }
    }
}

/// Every language says what the twisted chain is about, and once.
#[test]
fn every_language_warns_of_a_twist() {
    let twists = [
        ("without twisting", "chain that is twisted"),
        ("unverdreht", "kette, die dann verdreht"),
        ("sans torsion", "chaînette tordue"),
        ("sin torcer", "si entonces está torcida"),
        ("zonder draaien", "ketting die dan gedraaid"),
    ];
    for (language, twist) in ["en", "de", "fr", "es", "nl"].into_iter().zip(twists) {
        let top = format!("language: {language}");
        let pattern =
            read(&design("visor", SC, &top, "M: {head: 56}", "  - band: {start: chain, shape: straight, depth: 5}\n"));
        let told = plain(&pattern);
        assert!(told.to_lowercase().contains(twist.0) && told.to_lowercase().contains(twist.1), "{language}: {told}");
    }
}

fn plain(pattern: &Pattern) -> String {
    let telling = Options::new(Paper::a4()).telling();
    let story = Story::new(&pattern.plan, &pattern.shapes, telling, Illustrations::default());
    text::write(&story, &Pictures::default()).split_whitespace().collect::<Vec<_>>().join(" ")
}

/// A tube is open at its top: as wide there as its stitches, with nothing drawn shut (a circle of radius C / 2π).
#[test]
fn a_tube_is_drawn_open_at_both_ends() {
    let pattern = read(&design(
        "visor",
        SC,
        "ease: 0 %",
        "M: {head: 56}",
        "  - band: {start: chain, shape: straight, depth: 8}\n",
    ));
    let (plan, size) = (&pattern.plan, &pattern.plan.sizes[0]);
    let view = side_view(plan, size, &predict(plan, size));
    let radius = f64::from(first(size).after) * 1000.0 / 180.0 / TURN;
    for edge in [view.outline.first().unwrap(), view.outline.last().unwrap()] {
        assert!((edge.x - radius).abs() < 0.02 * radius, "{edge:?} {radius}");
    }
    assert!(!view.closed && !view.turned);
}

/// A hat that begins at its edge is drawn with its edge down, and may end open at its top.
#[test]
fn a_hat_begun_at_its_edge_stands_on_it() {
    for crown in ["{shape: flat, around: 14}", "{shape: close}"] {
        let parts = format!("  - band: {{start: chain, shape: straight, depth: 12}}\n  - crown: {crown}\n");
        let pattern = read(&design("hat", SC, "ease: 0 %", "M: {head: 56}", &parts));
        let (plan, size) = (&pattern.plan, &pattern.plan.sizes[0]);
        let view = side_view(plan, size, &predict(plan, size));
        assert!(view.turned && view.outline.first().unwrap().y > view.outline.last().unwrap().y, "{crown}");
        assert_eq!(view.closed, crown.contains("close"), "{crown}");
        let told = pattern.report.diagnostics.iter().find(|one| one.code == "shape");
        assert!(told.is_none(), "{told:?}");
    }
}

/// The posts of the first round stand on their chains: they lean by less than a stitch, whatever rises on them.
#[test]
fn posts_stand_on_their_chains() {
    for (work, swatch) in [("spiral", SC), ("spiral", DC), ("joined", DC)] {
        let top = format!("work: {work}");
        let part = "  - body: {start: chain, shape: straight, depth: 8}\n";
        let pattern = read(&design("lampshade", swatch, &top, "S: {around: 36}", part));
        let (plan, size) = (&pattern.plan, &pattern.plan.sizes[0]);
        let mesh = mesh(plan, size, &predict(plan, size), &Fabric::default());
        let leans = mesh.net.rounds[0].clone().map(|at| {
            let foot = mesh.net.heads[at].feet[0].on.start;
            let (head, foot) = (mesh.points[at], mesh.points[foot]);
            let turn = Angle::of_vector(foot.x, foot.y).radians() - Angle::of_vector(head.x, head.y).radians();
            let turn = (turn + 1.5 * TURN).rem_euclid(TURN) - TURN / 2.0;
            (turn * hypot(head.x, head.y) / mesh.net.heads[at].width).abs()
        });
        let mean = leans.sum::<f64>() / f64::from(first(size).after);
        assert!(mean < 0.5, "{work} {swatch}: {mean}");
    }
}

/// What is closed flat has as many stitches on one side as on the other, in every size and under any multiple.
#[test]
fn what_is_closed_flat_ends_even() {
    let parts = [
        "  - base: {start: ring, shape: flat}\n  - side: {shape: straight, depth: 8}\n",
        "  - body: {start: chain, shape: straight, depth: 8, multiple: 5}\n",
        "  - body: {start: chain, shape: taper, depth: 8, taper: 15°}\n",
    ];
    for part in parts {
        let sizes = "S: {around: 29}, M: {around: 33.3}, L: {around: 37.8}";
        let pattern = read(&design("bag", SC, "finish: close flat\ntolerance: 8 %", sizes, part));
        for size in &pattern.plan.sizes {
            let last = size.rounds.last().unwrap().after;
            assert_eq!((last % 2, size.closed_flat()), (0, Some(last / 2)), "{part} {last}");
        }
        let half = pattern.plan.sizes[0].closed_flat().unwrap();
        assert!(plain(&pattern).contains("through both layers"), "{part}");
        let shapes: Vec<_> = pattern.plan.sizes.iter().map(|size| predict(&pattern.plan, size)).collect();
        let rows = csv::plan(&pattern.plan, &shapes, Some("S"));
        assert!(rows.contains(&format!("to close: lay flat, {half} sc through both layers")), "{rows}");
    }
}

/// A ruffle has so many times the stitches of what it stands on in every size, comes at once and goes on even; it is told as
/// meant, pulls at nothing, and stands in waves.
#[test]
fn a_ruffle_is_as_full_as_it_is_wanted_and_meant() {
    for (fullness, shaped) in [("1.5", 1), ("2", 1), ("3", 2), ("4", 3)] {
        let parts = format!(
            "  - crown: {{start: ring, shape: flat}}\n  - side: {{shape: straight, depth: 8}}\n  - frill: {{width: 4, fullness: {fullness}}}\n"
        );
        let pattern = read(&design("hat", SC, "ease: 0 %\nwork: spiral", "S: {head: 52}, M: {head: 56}", &parts));
        for (size, shape) in pattern.plan.sizes.iter().zip(&pattern.shapes) {
            let (side, frill) = (&size.parts[1], &size.parts[2]);
            let own = &size.rounds[frill.first as usize - 1..frill.last as usize];
            let wanted = f64::from(size.rounds[side.last as usize - 1].after) * fullness.parse::<f64>().unwrap();
            assert!((f64::from(own.last().unwrap().after) - wanted).abs() < 1.0, "{fullness} {wanted}");
            assert_eq!(own.iter().filter(|round| round.change() != 0).count(), shaped, "{fullness}");
            assert!(
                !shape.findings.is_empty() && shape.findings.iter().all(|found| found.meant),
                "{:?}",
                shape.findings
            );
            let view = side_view(&pattern.plan, size, shape);
            assert!(view.parts[2].ruffled && !view.parts[1].ruffled);
        }
        let codes = |code: &str| pattern.report.diagnostics.iter().filter(|one| one.code == code).count();
        assert!(codes("ruffle") > 0 && codes("ruffles") == 0 && codes("shape") == 0, "{:?}", pattern.report);
        if fullness == "2" {
            let (plan, size) = (&pattern.plan, &pattern.plan.sizes[0]);
            let waves = mesh(plan, size, &predict(plan, size), &Fabric::default()).waves.unwrap();
            assert!(waves.count >= 4 && waves.height.cm() > 1.0, "{waves:?}");
        }
    }
}
