//! What a pattern says by what is made: the figures of its sizes, how deep a hat is, how a closed piece is filled, and
//! which words a British page is free of.

#![allow(clippy::unwrap_used, reason = "a test fails where it panics")]

use roundelay::file::text;
use roundelay::geometry::sideview::{MeasureKind, side_view};
use roundelay::page::{Options, Paper, Pictures};
use roundelay::pattern::Pattern;
use roundelay::story::{Block, Illustrations, Story, Table};

fn pattern(text: &str) -> Pattern {
    Pattern::read(text.as_bytes()).unwrap_or_else(|report| panic!("{text}{report:#?}"))
}

fn example(name: &str) -> Pattern {
    pattern(&std::fs::read_to_string(format!("examples/{name}.yaml")).unwrap())
}

const EXAMPLES: [&str; 6] =
    ["duckling-cap", "ember-beanie", "harvest-table-mat", "lanternlight-mandala", "millrace-basket", "slipway-sun-hat"];

fn options() -> Options {
    Options { plain_words: true, ..Options::new(Paper::a4()) }
}

fn tables(pattern: &Pattern) -> Vec<Table> {
    let story = Story::new(&pattern.plan, &pattern.shapes, options().telling(), Illustrations::default());
    let blocks = story.sections().into_iter().flat_map(|section| section.blocks);
    let table = |block| match block {
        Block::Table(table) => Some(table),
        Block::Paragraph(_) | Block::Heading(_) | Block::List { .. } | Block::Figure(_) => None,
    };
    blocks.filter_map(table).collect()
}

fn titles(pattern: &Pattern) -> Vec<String> {
    let sizes = tables(pattern).into_iter().find(|table| table.summary == "Sizes").unwrap();
    sizes.columns.into_iter().map(|column| column.title).collect()
}

fn told(pattern: &Pattern) -> String {
    let story = Story::new(&pattern.plan, &pattern.shapes, options().telling(), Illustrations::default());
    text::write(&story, &Pictures::default()).split_whitespace().collect::<Vec<_>>().join(" ")
}

fn cap(head: &str, side: &str) -> Pattern {
    pattern(&format!(
        "title: Cap\nswatch: {{stitch: sc, stitches: 18, rounds: 20, width: 10, height: 10}}\nease: 0 %\n\
         sizes: {{one: {{head: {head}}}}}\nparts:\n  - crown: {{start: ring, shape: flat}}\n  - side: {{depth: {side}}}\n"
    ))
}

fn ball(around: &str) -> Pattern {
    pattern(&format!(
        "title: Ball\nkind: ball\nwork: spiral\n\
         swatch: {{stitch: sc, stitches: 20, rounds: 21, width: 10, height: 10}}\n\
         sizes: {{one: {{around: {around}}}}}\nparts:\n  - ball: {{start: ring, shape: sphere}}\n"
    ))
}

#[test]
fn every_kind_is_told_by_its_own_figures() {
    let known = [
        ("slipway-sun-hat", "Size|Head|Finished around|Ease|Depth|Brim width|Hat size US (UK)|Rounds|Stitches in all"),
        // A baby's cap is known by age, and has no brim.
        ("duckling-cap", "Size|Head|Finished around|Ease|Depth|Rounds|Stitches in all"),
        ("harvest-table-mat", "Size|Width across|Finished around|Rounds|Stitches in all"),
        ("millrace-basket", "Size|Width across|Finished around|Height|Height folded|Rounds|Stitches in all"),
    ];
    for (name, expected) in known {
        assert_eq!(titles(&example(name)).join("|"), expected, "{name}");
    }
    assert_eq!(titles(&ball("30")).join("|"), "Size|Width across|Finished around|Height|Rounds|Stitches in all");
    let mat = told(&example("harvest-table-mat"));
    assert!(mat.contains("pin out flat") && !mat.contains("over a form"), "{mat}");
}

#[test]
fn a_length_is_one_figure_in_table_and_side_view() {
    let mut seen = 0;
    for name in EXAMPLES {
        let Pattern { plan, shapes, .. } = example(name);
        for (size, shape) in plan.sizes.iter().zip(&shapes) {
            let view = side_view(&plan, size, shape);
            for measure in view.measures.iter().filter(|measure| measure.kind == MeasureKind::Along) {
                assert_eq!(measure.value, size.parts[measure.part.unwrap()].length, "{name}");
                seen += 1;
            }
        }
    }
    assert!(seen > 10);
}

#[test]
fn a_hat_far_from_what_its_head_asks_is_told() {
    // Common practice: a third of the head reaches the brow, four tenths cover the ears; guides go from 0.30 to 0.44.
    for (side, warned) in [("4", true), ("10", false), ("14", false), ("22", true)] {
        let pattern = cap("56", side);
        let depth = pattern.plan.depth(&pattern.plan.sizes[0]).unwrap();
        let outside = !(0.30..=0.44).contains(&(depth.cm() / 56.0));
        let codes: Vec<&str> = pattern.report.diagnostics.iter().map(|one| one.code).collect();
        assert_eq!((codes.contains(&"depth-unusual"), outside), (warned, warned), "{side}: {depth:?} {codes:?}");
    }
    let text = told(&cap("57", "12"));
    assert!(text.contains("one 19 cm (7½ in) 22.8 cm (9 in)"), "{text}");
    // What begins on many chains is open at the top and has no depth.
    let visor = pattern(
        "title: Visor\nswatch: {stitch: sc, stitches: 18, rounds: 20, width: 10, height: 10}\nsizes: {one: {head: 56}}\n\
         parts:\n  - band: {start: chain ring of 96, depth: 5}\n",
    );
    assert_eq!(visor.plan.depth(&visor.plan.sizes[0]), None);
    assert!(!told(&visor).contains("To the brow"));
}

#[test]
fn a_ball_is_filled_while_its_opening_still_takes_a_hand() {
    for around in ["20", "30", "60"] {
        let pattern = ball(around);
        let size = &pattern.plan.sizes[0];
        let before = pattern.plan.filled_before(size).unwrap();
        let (widest, last) = (size.rounds.iter().map(|round| round.after).max().unwrap(), size.rounds.len() as u32);
        let opening = size.rounds[before as usize - 1].before;
        assert!(before < last && opening * 100 >= widest * 45, "{around}: before {before} of {last}, {opening}");
        let text = told(&pattern);
        assert!(text.contains("clean stuffing"), "{text}");
        assert!(text.contains(&format!("Stuff firmly before round {before}")), "{text}");
        assert!(text.contains(&format!("Round {before}. Stuff the piece firmly now.")), "{text}");
        assert!(text.contains("through the front loop of each stitch of the last round"), "{text}");
    }
    let cap = told(&cap("56", "12"));
    assert!(!cap.contains("tuff") && !cap.contains("through the front loop of each stitch"), "{cap}");
}

#[test]
fn a_folded_rim_says_which_side_it_shows() {
    let basket = example("millrace-basket");
    let text = told(&basket);
    let firsts: Vec<u32> = basket.plan.sizes.iter().map(|size| basket.plan.folded(size).unwrap().first).collect();
    let turned = format!("turn the work before round {} ({}, {})", firsts[0], firsts[1], firsts[2]);
    assert!(text.contains(&turned), "{turned}: {text}");
    for (size, first) in basket.plan.sizes.iter().zip(firsts) {
        assert_eq!(size.rounds[first as usize - 1].loops(), roundelay::craft::Loops::Front);
    }
    assert!(!told(&example("slipway-sun-hat")).contains("turn the work"));
}

#[test]
fn the_ring_is_closed_early_and_the_height_of_rounds_measured_on_the_piece() {
    for name in ["slipway-sun-hat", "millrace-basket", "harvest-table-mat"] {
        let pattern = example(name);
        let text = told(&pattern);
        assert!(text.contains("close the ring after round 1 or 2"), "{text}");
        let five = pattern.plan.gauge(pattern.plan.sizes[0].rounds[0].stitch).height * 5.0;
        let said = format!(
            "measure {}",
            roundelay::words::numbers::length(five, pattern.plan.design.units, roundelay::words::Language::EN)
        );
        assert!(text.contains(&said.replace('\u{a0}', " ")), "{said}: {text}");
    }
}

/// UK terms; common practice of British patterns.
#[test]
fn a_british_page_holds_no_american_word() {
    let hat = std::fs::read_to_string("examples/slipway-sun-hat.yaml").unwrap();
    let british = hat.replace("terms: US", "terms: UK").replace("stitch: sc", "stitch: dc");
    // What the designer says is the designer's.
    let british = british.replace("single crochet", "double crochet");
    assert!(british.contains("terms: UK") && british.contains("stitch: dc"));
    for text in [told(&pattern(&british)), told(&example("millrace-basket"))] {
        // The line of equivalents is there to name both.
        let from = text.find("US and UK terms:").unwrap();
        let own = text[..from].to_owned() + text[from..].split_once(". ").unwrap().1;
        for word in ["US", "single", "sc", "hdc", "Gauge", "gauge", "sk", "skip", "bulky", "worsted", "light", "sl"] {
            let held = own.split(|c: char| !c.is_alphanumeric()).any(|own| own == word);
            assert!(!held, "{word} on a British page");
        }
    }
}

/// A tall stitch at the start of a spiral would stand as a step: it rises over lower ones (common practice).
#[test]
fn a_tall_spiral_rises_and_reads_back() {
    let cap = |stitch: &str, work: &str| {
        format!(
            "title: Cap\nkind: hat\nswatch: {{stitch: {stitch}, stitches: 14, rounds: 8, width: 10, height: 10}}\n\
             sizes: {{one: {{head: 56}}}}\nease: 0 %\nwork: {work}\nparts:\n  - crown: {{start: ring, shape: flat}}\n  - side: {{depth: 9}}\n"
        )
    };
    for (stitch, lower) in [("sc", ""), ("hdc", "(sc, "), ("dc", "(sc, hdc, "), ("tr", "(sc, hdc, dc, ")] {
        let spiral = pattern(&cap(stitch, "spiral"));
        let first = &spiral.plan.sizes[0].rounds[0];
        let (count, rise) = (first.after, lower.matches(',').count() as u32);
        let said = match rise {
            0 => format!("{count} {stitch} in ring"),
            _ => format!("{lower}{} {stitch}) in ring", count - rise),
        };
        let text = told(&spiral);
        assert!(text.contains(&said), "{said}: {text}");
        assert_eq!(text.contains("begins with shorter stitches"), rise > 0);
        // The stitches it only rises over need no swatch, but are in the list of abbreviations.
        assert!(!text.contains("assumed"), "{text}");
        assert!(!told(&pattern(&cap(stitch, "joined"))).contains("begins with shorter stitches"));
        let written = format!("Rnd 1: make an adjustable ring, {said} ({count})\n");
        let swatch = "swatch: {stitch: dc, stitches: 14, rounds: 8, width: 10, height: 10}\n";
        let text = format!(
            "title: T\n{swatch}sizes: {{one: {{head: 56}}}}\nease: 0 %\nwork: spiral\nparts:\n  - cap:\n      written: |\n        {written}"
        );
        let read = Pattern::read(text.as_bytes()).unwrap_or_else(|report| panic!("{text}{report:#?}"));
        assert_eq!(read.plan.sizes[0].rounds[0].ops, first.ops, "{said}");
    }
}
