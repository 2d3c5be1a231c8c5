//! The piece as shops show it, and at its true size: frames of so many pixels, words that a PNG carries, and outlines that
//! measure what they say once they are on paper.

#![allow(clippy::unwrap_used)]

use kurbo::{Rect, Shape};
use roundelay::drawing::{Drawing, Item, relaxed, true_size};
use roundelay::page::{Options, Paper};
use roundelay::pattern::{Beside, Pattern};
use roundelay::publish::{DrawOptions, FORMATS, PICTURES, by_name, draw, misplaced};
use roundelay::report::Report;
use roundelay::units::Mm;

use crate::checkers;

fn mat(across: f64, language: &str) -> Pattern {
    let text = format!(
        "title: Little mat\nkind: mat\nlanguage: {language}\nyarn: {{weight: 4, colours: {{dew: \"#d7e3dc\", fir: \"#20473a\"}}}}\n\
         swatch: {{stitch: sc, stitches: 16, rounds: 17, width: 10, height: 10}}\nsizes: {{one: {{across: {across}}}}}\n\
         work: joined\nparts:\n  - mat: {{start: ring, shape: flat, colours: [{{dew: 5}}, {{fir: rest}}]}}\n"
    );
    Pattern::read(text.as_bytes()).unwrap_or_else(|report| panic!("{report:#?}"))
}

fn made(pattern: &Pattern, picture: &str, format: &str, asked: &DrawOptions) -> Result<Vec<u8>, Report> {
    let mut report = Report::new();
    let (picture, format) = (by_name(&PICTURES, picture).unwrap(), by_name(&FORMATS, format).unwrap().value);
    assert!(misplaced(picture, format, asked).is_none());
    draw(pattern, 0, picture, format, asked, &mut report).ok_or(report)
}

fn usual() -> DrawOptions {
    DrawOptions::new(Options::new(Paper::a4()))
}

/// Width and height of a PNG, and the texts that go with it.
fn read(bytes: &[u8]) -> ((u32, u32), Vec<(String, String)>) {
    let reader = png::Decoder::new(std::io::Cursor::new(bytes)).read_info().unwrap();
    let info = reader.info();
    let texts = info.utf8_text.iter().map(|chunk| (chunk.keyword.clone(), chunk.get_text().unwrap()));
    ((info.width, info.height), texts.collect())
}

#[test]
fn frames_have_as_many_pixels_as_were_asked_for() {
    let pattern = mat(12.0, "en");
    for (ratio, across, high) in [(1.0, 1200, 1200), (1.25, 1200, 1500), (1.5, 2000, 3000)] {
        let asked = DrawOptions { frame: Some(ratio), across: Some(across), titled: true, ..usual() };
        assert_eq!(read(&made(&pattern, "piece", "png", &asked).unwrap()).0, (across, high));
    }
    let svg = |titled| {
        let asked = DrawOptions { frame: Some(1.0), titled, ..usual() };
        String::from_utf8(made(&pattern, "piece", "svg", &asked).unwrap()).unwrap()
    };
    let shown = |svg: &str| svg.matches(">Little mat<").count();
    assert_eq!((shown(&svg(true)), shown(&svg(false))), (1, 0));
    let piece = by_name(&PICTURES, "piece").unwrap();
    let useless = DrawOptions { across: Some(1200), ..usual() };
    assert!(misplaced(piece, by_name(&FORMATS, "svg").unwrap().value, &useless).is_some());
}

#[test]
fn a_png_says_in_five_languages_what_it_shows() {
    let surfaces = [
        ("en", "close, of small Vs", "Colours: dew, fir"),
        ("de", "dicht, aus kleinen V", "Farben: dew, fir"),
        ("fr", "serrée, de petits V", "Couleurs\u{a0}: dew, fir"),
        ("es", "tupida, de pequeñas V", "Colores: dew, fir"),
        ("nl", "dicht, van kleine V’s", "Kleuren: dew, fir"),
    ];
    for (language, surface, colours) in surfaces {
        let pattern = mat(8.0, language);
        let (_, texts) = read(&made(&pattern, "piece", "png", &DrawOptions { across: Some(200), ..usual() }).unwrap());
        let told = |keyword: &str| texts.iter().find(|(other, _)| other == keyword).unwrap().1.clone();
        assert!(told("Title").contains("Little mat"));
        for part in [surface, colours, "cm"] {
            assert!(told("Description").contains(part), "{language}: {part}: {}", told("Description"));
        }
    }
}

fn outline(pattern: &Pattern) -> Option<(Drawing, Rect)> {
    let (plan, shape) = (&pattern.plan, &pattern.shapes[0]);
    let drawing = true_size(plan, &plan.sizes[0], &relaxed(plan, &plan.sizes[0], shape), Mm::new(190.0))?;
    let Item::Group(group) = &drawing.items[0] else { panic!("no outline") };
    let Item::Path(path) = &group.items[0] else { panic!("no line") };
    let room = path.path.bounding_box();
    Some((drawing, room))
}

#[test]
fn an_outline_is_as_wide_as_the_piece_and_prints_so() {
    let pattern = mat(15.0, "en");
    let (_, room) = outline(&pattern).unwrap();
    let predicted = 2.0 * pattern.shapes[0].rounds.last().unwrap().radius.mm();
    // The rim of a mesh is no circle: its bumps stand out a little.
    assert!((room.width() / predicted - 1.0).abs() < 0.03, "{} for {predicted}", room.width());
    let pdf = made(&pattern, "true-size", "pdf", &usual()).unwrap();
    let Some(tool) = checkers::tool("pdftoppm") else { return };
    // An A4 sheet, so that nothing is fitted to the page.
    if let Some(tool) = checkers::tool("pdfinfo") {
        let said = checkers::said_of(&tool, &[], &pdf);
        assert!(said.contains("(A4)"), "{said}");
    }
    let dpi = 600.0;
    let pages = checkers::raster(&tool, &pdf, dpi);
    let [page] = &pages[..] else { panic!("{} pages", pages.len()) };
    // Of the rows that cross the outline, above the words below it, the leftmost and the rightmost dot.
    let row = |mm: f64| (mm / 25.4 * dpi) as u32;
    let rows = row(10.0)..row(10.0 + room.height());
    let dark: Vec<u32> = page.dark(128).filter(|(_, y)| rows.contains(y)).map(|(x, _)| x).collect();
    let wide = f64::from(dark.iter().max().unwrap() - dark.iter().min().unwrap() + 1) * 25.4 / dpi;
    // Half of the line lies outside at either side: 0.5 mm.
    let measured = wide - 0.5;
    assert!((measured / room.width() - 1.0).abs() < 0.002, "{measured} printed for {}", room.width());
}

/// The width that stands under the last step stands beside the outline as well, whether the mesh came out so or not.
#[test]
fn an_outline_tells_the_width_that_the_steps_tell() {
    let swatch = include_bytes!("../../examples/swatches/cove-cotton.yaml");
    let beside = Beside { name: "cove-cotton.yaml", bytes: swatch };
    let written = |text: &[u8]| Pattern::read_piece(text, Some(beside), None).unwrap();
    for pattern in [
        written(include_bytes!("../../examples/cove-bowl.txt")),
        written(include_bytes!("../../examples/harbour-light-coaster.txt")),
        Pattern::read(include_bytes!("../../examples/lanternlight-mandala.yaml")).unwrap(),
        Pattern::read(include_bytes!("../../examples/duckling-cap.yaml")).unwrap(),
    ] {
        let svg = |picture: &str| String::from_utf8(made(&pattern, picture, "svg", &usual()).unwrap()).unwrap();
        let steps = svg("steps");
        let (before, _) = steps.rsplit_once(" across<").expect("a width under the last step");
        let width = before.rsplit('>').next().unwrap();
        assert!(
            svg("true-size").contains(&format!("{width} across")),
            "{width} of {}",
            pattern.plan.design.title.value
        );
    }
}

#[test]
fn what_is_wider_than_18_cm_has_no_outline() {
    assert!(outline(&mat(17.0, "en")).is_some());
    let wide = mat(20.0, "en");
    assert!(outline(&wide).is_none());
    let report = made(&wide, "true-size", "pdf", &usual()).unwrap_err();
    assert!(report.diagnostics.iter().any(|one| one.code == "wider-than-paper"), "{report:#?}");
}
