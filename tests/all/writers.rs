//! The SVG and PNG writers, on a small drawing of every item.

use std::collections::BTreeMap;

use kurbo::{Affine, Circle, Point, Rect, Shape};
use roundelay::drawing::{
    Anchor, Drawing, Ends, Group, Ink, Item, Origin, PathItem, Role, Stroke, Symbol, SymbolItem, TextItem,
};
use roundelay::file::{png, svg};
use roundelay::font::Face;
use roundelay::report::Report;
use roundelay::units::Angle;
use roundelay::words::Language;

fn dot(radius: f64) -> Symbol {
    let circle = Circle::new((0.0, 0.0), radius);
    let path = PathItem { path: circle.to_path(1e-3), fill: Some(Ink::BLACK), stroke: None };
    Symbol { paths: vec![path], bounds: circle.bounding_box(), loose: false }
}

fn sample() -> Drawing {
    let bounds = Rect::new(-30.0, -20.0, 30.0, 20.0);
    let stroke = Stroke { width: 0.35, ink: Ink([0, 0x72, 0xb2]), ends: Ends::Round, dashes: vec![1.0, 0.5] };
    let frame = PathItem { path: bounds.inset(-1.0).to_path(1e-3), fill: None, stroke: Some(stroke) };
    let place = |x: f64, degrees: f64| {
        let place = Affine::translate((x, 4.0)) * Angle::from_degrees(degrees).rotation();
        Item::Symbol(SymbolItem { key: "dot".to_owned(), place })
    };
    let halo = TextItem {
        halo: 0.4,
        face: Face::Bold,
        anchor: Anchor::Middle,
        turn: 30.0,
        ..TextItem::new("Round 7", Point::new(0.0, 0.0), 5.0)
    };
    let round = Group {
        id: "round-7".to_owned(),
        role: Role::Object { name: "Round 7".to_owned(), description: "42 sc, <6 more> & done".to_owned() },
        origin: Origin::Round(7),
        items: vec![place(-8.0, 0.0), place(8.0, 33.25), Item::Text(halo)],
    };
    Drawing {
        bounds,
        title: "Slipway <sun> hat".to_owned(),
        description: "A flat disc & a brim.\u{1}".to_owned(),
        language: Language::EN,
        symbols: BTreeMap::from([("dot".to_owned(), dot(1.5))]),
        items: vec![Item::Path(frame), Item::Group(round)],
    }
}

#[test]
fn svg_is_as_in_the_snapshot() {
    insta::assert_snapshot!(svg::write(&sample()));
}

#[test]
fn svg_in_a_web_page_has_ids_of_its_own() {
    let inline = svg::write_inline(&sample(), "size-M-");
    assert!(!inline.contains("<?xml"));
    for part in inline.split("id=\"").skip(1) {
        assert!(part.starts_with("size-M-"), "{}", &part[..20.min(part.len())]);
    }
    for part in inline.split("href=\"").skip(1) {
        assert!(part.starts_with("#size-M-"));
    }
}

#[test]
fn an_independent_reader_finds_the_size_and_the_ink() {
    let tree = resvg::usvg::Tree::from_str(&svg::write(&sample()), &resvg::usvg::Options::default()).unwrap();
    assert!((f64::from(tree.size().width()) - 60.0 / 25.4 * 96.0).abs() < 0.01);
    // Without any font loaded the words are there all the same: their outlines are drawn.
    let ink = tree.root().abs_bounding_box();
    assert!(ink.width() > 200.0);
    assert!(tree.root().has_children());
}

#[test]
fn png_is_drawn_at_the_resolution_asked_for() {
    let svg = svg::write(&sample());
    let mut report = Report::new();
    for (dpi, width, height) in [(96.0, 227, 152), (25.4, 60, 40)] {
        let bytes = png::render(&svg, &png::PngOptions { dpi, grey: false }, &mut report).unwrap();
        let pixmap = resvg::tiny_skia::Pixmap::decode_png(&bytes).unwrap();
        assert_eq!((pixmap.width(), pixmap.height()), (width, height));
        assert!(pixmap.pixels().iter().any(|p| p.red() < 60), "nothing drawn");
    }
    assert!(report.diagnostics.is_empty());
}

#[test]
fn grey_png_is_grey_and_smaller() {
    let svg = svg::write(&sample());
    let mut report = Report::new();
    let colour = png::render(&svg, &png::PngOptions { dpi: 300.0, grey: false }, &mut report).unwrap();
    let grey = png::render(&svg, &png::PngOptions { dpi: 300.0, grey: true }, &mut report).unwrap();
    assert!(grey.len() < colour.len());
    let pixmap = resvg::tiny_skia::Pixmap::decode_png(&grey).unwrap();
    assert!(pixmap.pixels().iter().all(|p| p.red() == p.green() && p.green() == p.blue()));
}

#[test]
fn what_can_not_be_drawn_is_said() {
    let svg = svg::write(&sample());
    let mut report = Report::new();
    assert_eq!(png::render(&svg, &png::PngOptions { dpi: 90_000.0, grey: false }, &mut report), None);
    assert_eq!(png::render(&svg, &png::PngOptions { dpi: f64::NAN, grey: false }, &mut report), None);
    assert_eq!(png::render("no svg", &png::PngOptions::default(), &mut report), None);
    let codes: Vec<_> = report.diagnostics.iter().map(|d| d.code).collect();
    assert_eq!(codes, ["png-too-large", "dpi-out-of-range", "svg-unreadable"]);
    assert!(report.diagnostics[0].help.as_ref().unwrap().contains("dpi"));
}
