//! Colours tried: every order or palette once, what each takes, bars to scale, and what is told of contrast.

#![allow(clippy::unwrap_used)]

use roundelay::drawing::{ColoursOptions, Drawing, Item, PathItem, TextItem, colours, contrast, relaxed};
use roundelay::drawing::{Ink, trials_cut};
use roundelay::file::svg;
use roundelay::pattern::Pattern;
use roundelay::sight::Eyes;

fn cap(yarns: &str, more: &str, stripes: &str) -> Pattern {
    let text = format!(
        "title: Banded cap\nkind: hat\nyarn: {{weight: 4, ball: {{grams: 50, metres: 85}}, colours: {{{yarns}}}}}\n{more}\
         swatch: {{stitch: dc, stitches: 16, rounds: 9, width: 12, height: 11.1, grams: 11.4}}\n\
         sizes: {{S: {{head: 54}}}}\nease: -5 %\nwork: joined\nparts:\n\
         \x20 - crown: {{start: ring, shape: flat}}\n  - side: {{depth: 12, colours: [{stripes}]}}\n"
    );
    Pattern::read(text.as_bytes()).unwrap_or_else(|report| panic!("{report:#?}"))
}

const THREE: &str = "moss: \"#6f7a32\", chalk: \"#f2eee4\", night: \"#141722\"";

fn tried(pattern: &Pattern) -> Option<Drawing> {
    let (plan, shape) = (&pattern.plan, &pattern.shapes[0]);
    colours(plan, &plan.sizes[0], (shape, &relaxed(plan, &plan.sizes[0], shape)), &ColoursOptions::default())
}

/// The items of every cell.
fn cells(drawing: &Drawing) -> Vec<Vec<&Item>> {
    let mut cells = Vec::new();
    for item in &drawing.items {
        if let Item::Group(group) = item {
            cells.push(group.items.iter().collect());
        }
    }
    cells
}

fn texts<'d>(items: &[&'d Item]) -> Vec<&'d TextItem> {
    let text = |item: &&'d Item| match item {
        Item::Text(text) => Some(text),
        Item::Path(_) | Item::Symbol(_) | Item::Photo(_) | Item::Group(_) => None,
    };
    items.iter().filter_map(text).collect()
}

fn paths<'d>(items: &[&'d Item]) -> Vec<&'d PathItem> {
    let path = |item: &&'d Item| match item {
        Item::Path(path) => Some(path),
        Item::Text(_) | Item::Symbol(_) | Item::Photo(_) | Item::Group(_) => None,
    };
    items.iter().filter_map(path).collect()
}

/// The metres that a cell states, yarn by yarn.
fn metres(items: &[&Item]) -> Vec<u32> {
    let stated = texts(items).into_iter().filter_map(|text| {
        let (_, amount) = text.text.split_once(": ")?;
        amount.split_once("\u{a0}m")?.0.parse().ok()
    });
    stated.collect()
}

#[test]
fn every_order_is_drawn_once_and_takes_the_same_yarn_in_all() {
    let pattern = cap(THREE, "", "{chalk: 2}, {night: 1}, {moss: rest}");
    let drawing = tried(&pattern).unwrap();
    let cells = cells(&drawing);
    // Six orders of three yarns, and the outline.
    assert_eq!(cells.len(), 7);
    let mut stated: Vec<Vec<u32>> = cells[..6].iter().map(|cell| metres(cell)).collect();
    let own: Vec<f64> = pattern.plan.sizes[0].yarn.iter().map(|using| using.metres).collect();
    assert!(
        stated[0].iter().zip(&own).all(|(stated, own)| f64::from(*stated) >= *own && f64::from(*stated) < own + 5.0)
    );
    assert_eq!(stated[0].len(), 3);
    let mut sorted = stated[0].clone();
    sorted.sort_unstable();
    for order in &stated {
        let mut order = order.clone();
        order.sort_unstable();
        assert_eq!(order, sorted);
    }
    stated.sort();
    stated.dedup();
    assert_eq!(stated.len(), 6, "every order gives each yarn another share");
    assert_eq!(trials_cut(&pattern.plan, &pattern.plan.sizes[0], 24), None);
    assert_eq!(trials_cut(&pattern.plan, &pattern.plan.sizes[0], 4), Some((4, 6)));
}

#[test]
fn palettes_stand_in_for_orders_and_a_yarn_they_leave_out_keeps_its_colour() {
    let more = "palettes: {harbour: {moss: \"#22304a\"}, berry: {moss: \"#7a2048\", chalk: \"#e9c9d2\"}}\n";
    let pattern = cap(THREE, more, "{chalk: 2}, {night: 1}, {moss: rest}");
    let drawing = tried(&pattern).unwrap();
    let cells = cells(&drawing);
    let names: Vec<&str> = cells.iter().map(|cell| texts(cell)[0].text.as_str()).collect();
    assert_eq!(names, ["As designed", "harbour", "berry", "To colour in"]);
    let fills = |cell: usize| -> Vec<Ink> { paths(&cells[cell]).iter().filter_map(|path| path.fill).collect() };
    assert!(fills(1).contains(&Ink([0x22, 0x30, 0x4a])) && fills(1).contains(&Ink([0xf2, 0xee, 0xe4])));
    assert!(!fills(1).contains(&Ink([0x6f, 0x7a, 0x32])));
    // Beside it the same as three kinds of colour-blind eyes see it.
    for eyes in Eyes::ALL {
        assert!(fills(2).contains(&Ink(eyes.see([0x7a, 0x20, 0x48]))), "{eyes:?}");
    }
    // The outline holds no yarn.
    assert!(fills(3).iter().all(|ink| *ink == Ink::WHITE));
}

#[test]
fn one_yarn_without_palettes_leaves_nothing_to_try() {
    assert!(tried(&cap("moss: \"#6f7a32\"", "", "{moss: rest}")).is_none());
    assert!(tried(&cap("moss: \"#6f7a32\"", "palettes: {one: {moss: \"#e9c9d2\"}}\n", "{moss: rest}")).is_some());
}

#[test]
fn of_five_yarns_four_change_places_and_that_is_told() {
    let yarns = format!("{THREE}, rust: \"#a06233\", sea: \"#2f6f8f\"");
    let pattern = cap(&yarns, "", "{chalk: 2}, {night: 1}, {rust: 2}, {sea: 2}, {moss: rest}");
    let drawing = tried(&pattern).unwrap();
    assert_eq!(cells(&drawing).len(), 25);
    assert!(drawing.description.contains("moss, chalk, rust, sea change places"), "{}", drawing.description);
    assert_eq!(trials_cut(&pattern.plan, &pattern.plan.sizes[0], 24), Some((24, 120)));
}

#[test]
fn bars_are_to_the_scale_that_is_stated() {
    let pattern = cap(THREE, "", "{chalk: 2}, {night: 1}, {moss: rest}");
    let drawing = tried(&pattern).unwrap();
    let (_, rest) = drawing.description.split_once("1\u{a0}:\u{a0}").unwrap();
    let scale: f64 = rest.split(|c: char| !c.is_ascii_digit() && c != '.').next().unwrap().parse().unwrap();
    let size = &pattern.plan.sizes[0];
    let depth: f64 = size.rounds.iter().map(|round| pattern.plan.gauge(round.stitch).height.mm()).sum();
    let blank = &cells(&drawing)[6];
    // The last frame of the outline's cell is that of its bar; above it the stripes.
    let frame = paths(blank).into_iter().rfind(|path| path.fill.is_none()).unwrap();
    let high = kurbo::Shape::bounding_box(&frame.path).height();
    assert!((high * scale / depth - 1.0).abs() < 1e-6, "{high} at 1 : {scale} for {depth}");
}

#[test]
fn contrast_is_told_in_the_language_of_the_design() {
    let more = "language: de\npalettes: {herbst: {moss: \"#6f7a32\", chalk: \"#a06233\"}}\n";
    let pattern = cap("moss: \"#3f5d32\", chalk: \"#f2eee4\"", more, "{chalk: 2}, {moss: rest}");
    let told = tried(&pattern).unwrap().description;
    let ratio = contrast(Ink([0x3f, 0x5d, 0x32]), Ink([0xf2, 0xee, 0xe4]));
    let ratio = format!("Kontrast {}\u{a0}:\u{a0}1", (ratio * 10.0).round() / 10.0).replace('.', ",");
    assert!(told.contains(&ratio), "{ratio}: {told}");
    assert!(told.contains("gleich für rotblinde, grünblinde Augen"), "{told}");
}

#[test]
fn the_same_colours_come_out_as_the_same_bytes() {
    let pattern = cap(THREE, "", "{chalk: 2}, {night: 1}, {moss: rest}");
    let write = || svg::write(&tried(&pattern).unwrap());
    assert_eq!(write(), write());
}
