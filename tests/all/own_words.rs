//! What an author adds in words of their own stands in every product and language, and its cautions with it.

#![allow(clippy::unwrap_used)]

use roundelay::page::{Options, Paper};
use roundelay::pattern::Pattern;
use roundelay::publish::{LISTINGS, PRODUCTS, Row, by_name, list, publish};
use roundelay::report::Report;

use crate::checkers::{extracted, tool};

/// A toy of our own invention, all of whose words are its author's.
const TOY: &str = "\
title: Pebble
kind: basket
level: intermediate
dedication: For the long beach
version: 1.2, 3 May 2026
copyright: © 2026 A. Maker
licence: Finished pieces may be sold.
contact: help@example.org
notes: [Work tightly., The right side faces out.]
materials: {eyes: \"2 safety eyes, 8 mm\", wire: 30 cm, other: a saucer}
assembly: [Set the eyes., Sew the base on.]
swatch: {stitch: sc, stitches: 20, rounds: 20, width: 10, height: 10}
sizes: {S: {around: 24}, M: {around: 30}}
work: spiral
parts:
  - base: {notes: Begin loosely.}
  - side: {depth: {S: 4, M: 6}, notes: {2: stuff firmly now, 12: nearly there, last: leave a long tail}}
";

/// Everything above that is printed as it stands.
const SAID: [&str; 14] = [
    "For the long beach",
    "1.2, 3 May 2026",
    "© 2026 A. Maker",
    "Finished pieces may be sold.",
    "help@example.org",
    "Work tightly.",
    "The right side faces out.",
    "2 safety eyes, 8 mm",
    "30 cm",
    "a saucer",
    "Set the eyes.",
    "Sew the base on.",
    "Begin loosely.",
    "leave a long tail",
];

fn read(text: &str) -> Pattern {
    Pattern::read(text.as_bytes()).unwrap_or_else(|report| panic!("{report:#?}"))
}

/// The words of a product, on one line.
fn product(pattern: &Pattern, name: &str) -> String {
    let rows = [*by_name(&PRODUCTS, name).unwrap()];
    let (options, mut report) = (Options::new(Paper::a4()), Report::new());
    let made = publish(pattern, "pebble", &rows, &options, &mut report).unwrap();
    let bytes = &made[0].bytes;
    let text = match tool("pdftotext").filter(|_| made[0].name.ends_with(".pdf")) {
        Some(tool) => extracted(&tool, bytes),
        None => String::from_utf8_lossy(bytes).replace("&amp;", "&"),
    };
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}

#[test]
fn an_authors_words_stand_in_every_product_and_language() {
    for language in ["en", "de", "fr", "es", "nl"] {
        let pattern = read(&format!("language: {language}\n{TOY}"));
        for name in ["text", "web", "booklet"] {
            if name == "booklet" && tool("pdftotext").is_none() {
                continue;
            }
            let text = product(&pattern, name).to_lowercase();
            for said in SAID {
                assert!(text.contains(&said.to_lowercase()), "{language} {name}: {said}\n{text}");
            }
        }
    }
}

#[test]
fn notes_stand_beside_their_rounds_in_every_size_and_are_told_where_there_is_no_such_round() {
    let pattern = read(TOY);
    let beyond: Vec<_> = pattern.report.diagnostics.iter().filter(|found| found.code == "note-beyond").collect();
    // Twenty rounds in 10 cm: the side has 8 rounds in S, 12 in M.
    assert_eq!(beyond.len(), 1, "{:#?}", pattern.report);
    assert!(beyond[0].message.contains("8 rounds in size S") && beyond[0].place.is_some());
    for size in &pattern.plan.sizes {
        let side = &size.parts[1];
        let noted = |words: &str| -> Vec<u32> {
            let holds = |round: &&roundelay::craft::Round| {
                round.said.as_ref().is_some_and(|said| said.after.iter().any(|after| after == words))
            };
            size.rounds.iter().filter(holds).map(|round| round.number).collect()
        };
        assert_eq!(noted("stuff firmly now"), [side.first + 1]);
        assert_eq!(noted("leave a long tail"), [side.last]);
        assert_eq!(noted("nearly there").len(), usize::from(size.name == "M"));
    }
    for listing in &LISTINGS {
        let text = list(&pattern, listing, None).unwrap();
        let shown = text.to_lowercase().contains("stuff firmly now");
        assert!(shown || listing.name() == "table", "{}: {text}", listing.name());
    }
}

#[test]
fn materials_bring_the_usual_cautions_and_defer_to_local_rules() {
    let text = product(&read(TOY), "text");
    for caution in ["none for a child under three", "turn the ends in", "not legal advice"] {
        assert!(text.contains(caution), "{caution}: {text}");
    }
    let plain = TOY.lines().filter(|line| !line.starts_with("materials")).collect::<Vec<_>>().join("\n");
    assert!(!product(&read(&plain), "text").contains("turn the ends in"));
}

#[test]
fn the_level_is_the_authors_where_it_is_said() {
    assert!(product(&read(TOY), "text").contains("Intermediate:"));
    assert!(product(&read(&TOY.replace("level: intermediate\n", "")), "text").contains("Basic:"));
}
