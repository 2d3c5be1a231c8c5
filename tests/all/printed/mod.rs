//! An independent reader of what is printed: the plain text, the booklet and the web page of a pattern are read as a
//! maker reads them, with words and a grammar written down here again, and held against the counts, the gauge and the
//! shape of the plan and against each other.

#![allow(clippy::unwrap_used, reason = "a test fails where it panics")]

mod booklet;
mod count;
mod designs;
mod figures;
mod grammar;
mod hand;
mod lengths;
mod paper;
mod plain;
mod rounds;
mod slips;
mod swatch;
mod terms;
mod text;
mod tongue;
mod web;

use std::collections::BTreeSet;

use roundelay::file::{html, pdf, text as written};
use roundelay::page::{Options, Paper as Sheet, Pictures, booklet as book};
use roundelay::pattern::{Beside, Pattern};
use roundelay::publish::pictures;
use roundelay::report::Report;
use roundelay::story::Story;
use roundelay::units::Units;
use roundelay::words::Language;

use paper::{Block, Paper, flat};
use tongue::{TAGS, Tongue};

/// The design files and the written pieces; the largest last.
const EXAMPLES: [&str; 8] = [
    "slipway-sun-hat.yaml",
    "ember-beanie.yaml",
    "millrace-basket.yaml",
    "duckling-cap.yaml",
    "lanternlight-mandala.yaml",
    "cove-bowl.txt",
    "harbour-light-coaster.txt",
    "harvest-table-mat.yaml",
];

fn example(name: &str, tag: &str, units: Units) -> Pattern {
    let bytes = std::fs::read(format!("examples/{name}")).unwrap();
    let swatch = std::fs::read("examples/swatches/cove-cotton.yaml").unwrap();
    let beside = Beside { name: "cove-cotton.yaml", bytes: &swatch };
    let read = if name.ends_with(".txt") { Pattern::read_rounds(&bytes, Some(beside)) } else { Pattern::read(&bytes) };
    told_in(read.unwrap_or_else(|report| panic!("{name}: {report:#?}")), tag, units)
}

fn told_in(mut pattern: Pattern, tag: &str, units: Units) -> Pattern {
    pattern.plan.design.language = Language::by_tag(tag).unwrap();
    pattern.plan.design.units = units;
    pattern
}

/// The same in our own words where an author wrote them.
fn anew(pattern: Pattern) -> Pattern {
    Pattern { plan: pattern.plan.told_anew(), ..pattern }
}

fn options() -> Options {
    Options { plain_words: true, ..Options::new(Sheet::a4()) }
}

fn story<'p>(pattern: &'p Pattern, pictures: &Pictures) -> Story<'p> {
    Story::new(&pattern.plan, &pattern.shapes, options().telling(), pictures.illustrations())
}

/// Everything that is held of one paper.
fn hold(paper: &Paper, tongue: &Tongue, pattern: &Pattern) {
    figures::check(paper, tongue, pattern);
    let mut names = BTreeSet::new();
    for size in 0..pattern.plan.sizes.len() {
        names.extend(rounds::work(paper, tongue, &pattern.plan, size));
        plain::work(paper, tongue, &pattern.plan, size);
    }
    let ends = pattern.plan.sizes.iter().flat_map(|size| &size.step_down);
    names.extend(ends.map(|stitch| tongue.name(*stitch, pattern.plan.design.terms)));
    terms::check(paper, tongue, &pattern.plan, &names);
}

/// The plain text alone, without pictures.
fn hold_text(pattern: &Pattern) {
    let tongue = Tongue::of(pattern.plan.design.language.tag());
    let pictures = Pictures::default();
    hold(&text::read(&written::write(&story(pattern, &pictures), &pictures), &tongue), &tongue, pattern);
}

/// All three forms, with their pictures, and that they say the same.
fn hold_all(pattern: &Pattern) {
    let tongue = Tongue::of(pattern.plan.design.language.tag());
    let drawn = pictures::draw(&pattern.plan, &pattern.shapes, &options());
    let story = story(pattern, &drawn);
    let text = text::read(&written::write(&story, &drawn), &tongue);
    let page = web::read(&html::write(&story, &drawn, &pictures::narrow_key(&pattern.plan, &options())));
    for paper in [&text, &page] {
        hold(paper, &tongue, pattern);
        let shapes = paper.pictures().filter(|told| told.starts_with(tongue.one("shape"))).count();
        let charts = paper.pictures().filter(|told| told.starts_with(tongue.one("chart"))).count();
        assert!(shapes > 0 && charts == pattern.plan.sizes.len(), "pictures of the {}", paper.form);
    }
    same(&text, &page, &tongue);
    let document = book::lay_out(&story, &drawn, &options(), &mut Report::new()).unwrap();
    let Some((booklet, laid)) = booklet::read(&pdf::write(&document).unwrap()) else { return };
    hold(&booklet, &tongue, pattern);
    same(&text, &booklet, &tongue);
    // What lies on the pages as ink, drawings and all, is nothing but what is told.
    let told = |paper: &Paper| -> Vec<lengths::Length> {
        let words = paper.sections.iter().flat_map(|section| &section.blocks).map(|block| match block {
            Block::Text(words) | Block::Item(words) | Block::Picture(words) | Block::Heading(words) => words.clone(),
            Block::Row(row) => row.iter().map(|(_, cell)| cell.as_str()).collect::<Vec<_>>().join("; "),
        });
        lengths::all(&words.collect::<Vec<_>>().join("; "), &tongue)
    };
    let known = told(&text);
    let laid = flat(&laid);
    for length in lengths::all(&laid, &tongue) {
        assert!(known.contains(&length), "{length:?} stands on a page and is told nowhere");
    }
    // Of more than three side views that would fill a page each, the pages show that of the middle size.
    let mut shapes: Vec<&str> = text.pictures().filter(|told| told.starts_with(tongue.one("shape"))).collect();
    if shapes.len() > 3 {
        shapes = shapes.into_iter().skip(pattern.plan.middle()).take(1).collect();
    }
    for told in shapes {
        for length in lengths::all(told, &tongue) {
            let cm = format!("{} cm", length.cm).replace('.', tongue.one("decimal"));
            assert!(laid.contains(&cm), "{cm} is told of the drawing and stands nowhere on it");
        }
    }
}

/// Holds that two papers say the same, row by row and sentence by sentence.
fn same(one: &Paper, other: &Paper, tongue: &Tongue) {
    let fact = |(name, told): &(String, String)| one.facts.iter().any(|fact| fact.0 == *name && fact.1 == *told);
    assert!(!other.facts.is_empty() && other.facts.iter().all(fact), "{:?} of the {}", other.facts, other.form);
    for (key, title) in tongue.under("section.") {
        let key = format!("section.{key}");
        // What a booklet leaves out stands in the table of its side view, and is held there.
        if key == "section.measures" && other.form == "booklet" && other.blocks(tongue, &key).is_empty() {
            continue;
        }
        let cells = |paper: &Paper| -> Vec<Vec<String>> {
            let filled =
                |row: &paper::Row| row.iter().map(|(_, cell)| cell.clone()).filter(|cell| !cell.is_empty()).collect();
            let rows = paper.rows(tongue, &key).map(filled);
            // Facts in two columns are told as sentences where they are long.
            rows.filter(|row: &Vec<String>| key != "section.need" || row.len() > 2).collect()
        };
        assert_eq!(cells(one), cells(other), "{title} of {} and {}", one.form, other.form);
        // Captions lie beside their pictures, which differ.
        if key != "section.sizes" {
            let said = |paper: &Paper| {
                let said = paper.said(tongue, &key).map(str::to_owned);
                // Facts in two columns are one paragraph of the text where they are long.
                said.filter(|said| key != "section.need" || said.ends_with('.')).collect::<Vec<_>>()
            };
            assert_eq!(said(one), said(other), "{title} of {} and {}", one.form, other.form);
        }
    }
}

/// Holds a case; false, with everything that was found said already, where it does not hold.
fn holds(what: &str, case: impl FnOnce()) -> bool {
    let held = std::panic::catch_unwind(std::panic::AssertUnwindSafe(case)).is_ok();
    if !held {
        eprintln!("… in {what}\n");
    }
    held
}

#[test]
fn the_text_of_every_example_says_what_comes_out_in_every_language_and_both_units() {
    let mut failed = 0;
    for name in EXAMPLES {
        for tag in TAGS {
            for units in [Units::Cm, Units::Inches] {
                let pattern = example(name, tag, units);
                failed += usize::from(!holds(name, || hold_text(&pattern)));
                if tag == "en" && pattern.plan.sizes[0].rounds.iter().any(|round| round.said.is_some()) {
                    let pattern = anew(pattern);
                    failed += usize::from(!holds(name, || hold_text(&pattern)));
                }
            }
        }
    }
    assert_eq!(failed, 0);
}

#[test]
fn text_booklet_and_web_page_of_every_example_say_the_same() {
    let units = [Units::Cm, Units::Inches, Units::Inches].into_iter().cycle();
    let mut failed = 0;
    for ((name, tag), units) in EXAMPLES.into_iter().zip(TAGS.into_iter().cycle()).zip(units) {
        failed += usize::from(!holds(name, || hold_all(&example(name, tag, units))));
    }
    assert_eq!(failed, 0);
}

#[test]
fn two_hundred_random_designs_say_what_comes_out() {
    let mut chance = designs::Chance(11);
    let files = (0..600).map(|_| designs::design(&mut chance));
    let made = files.filter_map(|file| Some((Pattern::read(file.as_bytes()).ok()?, file))).take(200);
    let mut failed = 0;
    let mut held = 0;
    for (pattern, file) in made {
        failed += usize::from(!holds(&file, || hold_text(&pattern)));
        if held % 40 == 7 {
            failed += usize::from(!holds(&file, || hold_all(&pattern)));
        }
        held += 1;
    }
    assert_eq!((failed, held), (0, 200));
}

#[test]
fn written_pieces_say_what_comes_out_in_every_language() {
    let (mut held, mut failed) = (0, 0);
    for (rounds, design) in designs::written() {
        let beside = Beside { name: "swatch.yaml", bytes: design.as_bytes() };
        let Ok(pattern) = Pattern::read_rounds(rounds.as_bytes(), Some(beside)) else { continue };
        for tag in TAGS {
            let told = told_in(pattern.clone(), tag, Units::Cm);
            let told = if held % 2 == 0 { anew(told) } else { told };
            failed += usize::from(!holds(&rounds, || hold_text(&told)));
        }
        held += 1;
    }
    assert_eq!(failed, 0);
    assert!(held >= 8, "only {held} pieces can be read");
}
