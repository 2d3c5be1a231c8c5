//! The rows keep what they say.

use super::*;
use crate::drawing::ChartView;
use crate::file::png::PngOptions;
use crate::page::{Options, Paper};
use crate::pattern::{Beside, Pattern};
use crate::report::{Report, Severity};

/// A small disc of written rounds in two parts and two colours.
fn disc() -> Pattern {
    let rounds = "Pebble mat\nMiddle\nRnd 1: with sand, 6 sc in ring (6)\nRnd 2: 2 sc in each st around (12)\n\
        Edge\nRnd 3: with tide, [sc, inc] 6 times (18)\nRnd 4: [2 sc, inc] 6 times (24)\n";
    let swatch = b"swatch: {stitch: sc, stitches: 20, rounds: 20, width: 10, height: 10}\n\
        yarn: {colours: {sand: '#d3bd8f', tide: '#2f6f8f'}}\n";
    Pattern::read_rounds(rounds.as_bytes(), Some(Beside { name: "swatch", bytes: swatch })).unwrap()
}

/// Fails where names are said twice, or are not words of small letters, or a row doesn't say what it is.
fn hold<R: Row>(rows: &'static [R]) {
    for (index, row) in rows.iter().enumerate() {
        let name = row.name();
        assert!(!name.is_empty() && name.chars().all(|c| c.is_ascii_lowercase() || c == '-'), "{name}");
        assert!(!row.about().is_empty() && !row.about().ends_with('.'), "{name}: {}", row.about());
        assert!(by_name(rows, name).is_some_and(|found| std::ptr::eq(found, &rows[index])), "{name} is said twice");
    }
    assert!(by_name(rows, "no such name").is_none());
}

#[test]
fn every_row_has_a_name_of_its_own_and_says_what_it_is() {
    hold(&PRODUCTS);
    hold(&PICTURES);
    hold(&FORMATS);
    hold(&LISTINGS);
    hold(&PRINTS);
    hold(&ROUNDS);
    hold(&VIEWS);
}

#[test]
fn every_product_makes_files_with_its_endings_and_no_other_makes_them() {
    let (pattern, options) = (disc(), Options::new(Paper::a4()));
    let mut names: Vec<String> = Vec::new();
    for product in &PRODUCTS {
        let mut report = Report::new();
        let made = publish(&pattern, "mat", [product], &options, &mut report);
        let made = made.unwrap_or_else(|| panic!("{}: {report:#?}", product.name()));
        for ending in product.endings {
            assert!(made.iter().any(|file| file.name.ends_with(ending)), "{}: no {ending}", product.name());
        }
        for file in made {
            assert!(file.name.starts_with("mat") && !file.bytes.is_empty(), "{}", file.name);
            assert!(product.endings.iter().any(|ending| file.name.ends_with(ending)), "{}", file.name);
            assert!(!names.contains(&file.name), "{} is made twice", file.name);
            names.push(file.name);
        }
    }
    let all = publish(&pattern, "mat", &PRODUCTS, &options, &mut Report::new()).unwrap();
    assert_eq!(all.into_iter().map(|file| file.name).collect::<Vec<_>>(), names);
}

#[test]
fn every_picture_is_drawn_in_every_format() {
    let pattern = disc();
    let pixels = PngOptions { dpi: 20.0, ..PngOptions::default() };
    let asked = DrawOptions { pixels, ..DrawOptions::new(Options::new(Paper::a4())) };
    for picture in &PICTURES {
        for format in &FORMATS {
            let mut report = Report::new();
            let drawn = draw(&pattern, 0, picture, format.value, &asked, &mut report);
            let bytes = drawn.unwrap_or_else(|| panic!("{} as {}: {report:#?}", picture.name(), format.name));
            // The first bytes of each: XML 1.0, the PNG signature (ISO/IEC 15948), the PDF header (ISO 32000).
            let begins: &[u8] = match format.value {
                Format::Svg => b"<",
                Format::Png => b"\x89PNG\r\n\x1a\n",
                Format::Pdf => b"%PDF-",
            };
            assert!(bytes.starts_with(begins), "{} as {}", picture.name(), format.name);
            assert!(misplaced(picture, format.value, &asked).is_none());
        }
    }
}

#[test]
fn every_listing_tells_the_last_round() {
    let pattern = disc();
    for listing in &LISTINGS {
        let told = list(&pattern, listing, None).unwrap();
        assert!(told.contains("24") && told.contains("Edge"), "{}: {told}", listing.name());
        let unknown = list(&pattern, listing, Some("XL")).unwrap_err();
        assert_eq!((unknown.code, unknown.help.as_deref()), ("unknown-size", Some("its sizes are one")));
    }
}

#[test]
fn what_a_picture_has_no_use_for_is_told() {
    let plain = || DrawOptions::new(Options::new(Paper::a4()));
    let chart = [
        ("--view", DrawOptions { view: Some(ChartView::Bands), ..plain() }),
        ("--part", DrawOptions { part: Some("Edge".to_owned()), ..plain() }),
        ("--up-to", DrawOptions { up_to: Some(2), ..plain() }),
        ("--start", DrawOptions { start: Some(3), ..plain() }),
        ("--repeats", DrawOptions { repeats: true, ..plain() }),
        ("--demerits", DrawOptions { demerits: true, ..plain() }),
        ("--tiles", DrawOptions { tiles: Some(Paper::a4()), ..plain() }),
    ];
    let others = [
        ("schematic", "--all-sizes", DrawOptions { all_sizes: true, ..plain() }),
        ("schematic", "--worn", DrawOptions { worn: true, ..plain() }),
        ("key", "--all-symbols", DrawOptions { all_symbols: true, ..plain() }),
    ];
    let cases = chart.into_iter().map(|(option, asked)| ("chart", option, asked)).chain(others);
    for (own, option, asked) in cases {
        for picture in &PICTURES {
            let told = misplaced(picture, Format::Pdf, &asked);
            let expected = (picture.name() != own).then(|| format!("{option} has no meaning for this picture"));
            assert_eq!(told.map(|complaint| complaint.message), expected, "{option}, {}", picture.name());
        }
    }
    let tiles = DrawOptions { tiles: Some(Paper::a4()), ..plain() };
    assert!(by_name(&PICTURES, "chart").is_some_and(|chart| misplaced(chart, Format::Svg, &tiles).is_some()));
}

#[test]
fn parts_and_rounds_that_are_not_there_are_told() {
    let (pattern, plain) = (disc(), || DrawOptions::new(Options::new(Paper::a4())));
    let code = |asked: DrawOptions| asked.find(&pattern.plan).map_err(|complaint| complaint.code);
    assert_eq!(code(plain()), Ok(0));
    assert_eq!(code(DrawOptions { part: Some("Edge".to_owned()), ..plain() }), Ok(0));
    assert_eq!(code(DrawOptions { part: Some("Brim".to_owned()), ..plain() }), Err("unknown-part"));
    assert_eq!(code(DrawOptions { up_to: Some(4), ..plain() }), Ok(0));
    assert_eq!(code(DrawOptions { up_to: Some(5), ..plain() }), Err("unknown-round"));
    assert_eq!(code(DrawOptions { size: Some("XL".to_owned()), ..plain() }), Err("unknown-size"));
}

/// On a small sheet the warning names views that can be read, and each that it names is one.
#[test]
fn a_chart_too_small_to_read_says_what_can_be_read() {
    let chart = by_name(&PICTURES, "chart").unwrap();
    let paper = Paper::by_name("40x45 mm").unwrap();
    let asked = |view, up_to| DrawOptions { view, up_to, ..DrawOptions::new(Options::new(paper.clone())) };
    let warnings = |asked: &DrawOptions| {
        let mut report = Report::new();
        assert!(draw(&disc(), 0, chart, Format::Svg, asked, &mut report).is_some());
        report.diagnostics.into_iter().filter(|one| one.severity == Severity::Warning).collect::<Vec<_>>()
    };
    let told = warnings(&asked(Some(ChartView::Whole), None));
    let [warning] = &told[..] else { panic!("{told:#?}") };
    assert_eq!(warning.code, "too-small");
    let help = warning.help.as_deref().unwrap_or_default();
    let rounds = help.split("--up-to ").nth(1).and_then(|rest| rest.split('`').next()).and_then(|n| n.parse().ok());
    let rounds: u32 = rounds.unwrap_or_else(|| panic!("{help}"));
    assert_eq!(warnings(&asked(None, Some(rounds))), []);
    assert_eq!(warnings(&asked(None, Some(rounds + 1))).len(), 1);
}
