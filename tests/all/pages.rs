//! Booklets, wall charts and single pictures as pages: where ink may lie, what is read out, and what outside tools say.

#![allow(clippy::unwrap_used, reason = "a test fails where it panics")]

use std::sync::Arc;

use kurbo::{Affine, Rect, Shape};
use roundelay::drawing::{ChartOptions, ChartView, Drawing, Item, KeyOptions, chart, key};
use roundelay::file::{pdf, text};
use roundelay::geometry::{SideShape, predict};
use roundelay::page::{
    Content, Document, FOOT_MARGIN, MARGIN, Options, Owner, Page, Paper, Pictures, Print, Tag, booklet, wall,
};
use roundelay::pattern::Pattern;
use roundelay::plan::Plan;
use roundelay::publish::pictures::{self, untold, wall_picture, wall_sheet};
use roundelay::report::Report;
use roundelay::story::{RoundsForm, Story};
use roundelay::units::Mm;
use roundelay::words::Language;

use crate::checkers;

const EXAMPLES: [&str; 3] = ["slipway-sun-hat", "ember-beanie", "millrace-basket"];

fn example(name: &str) -> Plan {
    plan_of(&std::fs::read_to_string(format!("examples/{name}.yaml")).unwrap())
}

fn plan_of(text: &str) -> Plan {
    Pattern::read(text.as_bytes()).unwrap_or_else(|report| panic!("{report:#?}")).plan
}

fn pictures(plan: &Plan, options: &Options) -> Pictures {
    let (width, height) = booklet::picture_room(options);
    let draw = |size| Arc::new(chart(plan, size, &ChartOptions { width, height, ..ChartOptions::default() }));
    let first = draw(0);
    Pictures {
        cover: Some(first.clone()),
        piece: None,
        key: Some(Arc::new(key(plan, 0, &KeyOptions { width, ..KeyOptions::default() }))),
        charts: vec![(first, "One size".to_owned())],
        keys: Vec::new(),
        steps: None,
        colours: None,
        true_size: None,
        schematics: Vec::new(),
    }
}

fn variants() -> Vec<(&'static str, Options)> {
    let a4 = || Options::new(Paper::a4());
    vec![
        ("A4", a4()),
        ("Letter", Options { rounds: RoundsForm::Brackets, ..Options::new(Paper::letter()) }),
        ("large", Options { large: true, ..a4() }),
        ("saving", Options { print: Print::InkSaving, plain_words: true, ..a4() }),
        ("black", Options { print: Print::Black, rounds: RoundsForm::PerSize, ..a4() }),
        ("A5", Options::new(Paper::by_name("A5").unwrap())),
    ]
}

fn shapes(plan: &Plan) -> Vec<SideShape> {
    plan.sizes.iter().map(|size| predict(plan, size)).collect()
}

/// What the plan says to someone who sees these pictures.
fn story_of<'a>(plan: &'a Plan, shapes: &'a [SideShape], pictures: &Pictures, options: &Options) -> Story<'a> {
    Story::new(plan, shapes, options.telling(), pictures.illustrations())
}

fn book(plan: &Plan, pictures: &Pictures, options: &Options, report: &mut Report) -> Option<Document> {
    booklet::lay_out(&story_of(plan, &shapes(plan), pictures, options), pictures, options, report)
}

fn laid_out(plan: &Plan, options: &Options) -> Document {
    let mut report = Report::new();
    let document = book(plan, &pictures(plan, options), options, &mut report);
    document.unwrap_or_else(|| panic!("{report:#?}"))
}

/// Room of a piece's ink on the sheet.
fn room(items: &[Item], place: Affine) -> Option<Rect> {
    let rooms = items.iter().filter_map(|item| match item {
        Item::Path(item) => {
            let reach = item.stroke.as_ref().map_or(0.0, |stroke| stroke.width / 2.0);
            Some(item.path.bounding_box().inflate(reach, reach))
        }
        Item::Text(item) => Some(item.bounds()),
        Item::Group(group) => room(&group.items, Affine::IDENTITY),
        Item::Photo(item) => Some(item.area),
        Item::Symbol(_) => None,
    });
    rooms.map(|room| place.transform_rect_bbox(room)).reduce(|a, b| a.union(b))
}

fn piece_rooms(page: &Page) -> Vec<(Owner, Rect)> {
    let rooms = page.pieces.iter().filter_map(|piece| {
        let room = match &piece.content {
            Content::Items(items) => room(items, piece.place)?,
            Content::Drawing(drawing) => piece.place.transform_rect_bbox(drawing.bounds),
        };
        Some((piece.owner, piece.clip.map_or(room, |clip| clip.intersect(room))))
    });
    rooms.collect()
}

fn assert_inside(document: &Document, what: &str) {
    for (i, page) in document.pages.iter().enumerate() {
        let (width, height) = (page.width.mm(), page.height.mm());
        let inside = Rect::new(MARGIN.mm(), MARGIN.mm(), width - MARGIN.mm(), height - FOOT_MARGIN.mm());
        for (owner, room) in piece_rooms(page) {
            let within = inside.inflate(0.05, 0.05);
            assert!(within.union(room) == within, "{what}, page {}: {owner:?} at {room:?} leaves {inside:?}", i + 1);
        }
    }
}

/// Every text of a page in its place, drawings left out.
fn texts(page: &Page) -> Vec<(String, Rect)> {
    let mut found = Vec::new();
    for piece in &page.pieces {
        let Content::Items(items) = &piece.content else { continue };
        for item in items {
            if let Item::Text(text) = item {
                let mut shown = text.clone();
                shown.text = shown.text.trim_end().to_owned();
                found.push((shown.text.clone(), piece.place.transform_rect_bbox(shown.bounds())));
            }
        }
    }
    found
}

#[test]
fn every_page_keeps_to_its_printable_area_and_no_words_overlap() {
    for name in EXAMPLES {
        let plan = example(name);
        for (variant, options) in variants() {
            let document = laid_out(&plan, &options);
            assert_inside(&document, &format!("{name} {variant}"));
            for (i, page) in document.pages.iter().enumerate() {
                let texts = texts(page);
                for (j, (text, room)) in texts.iter().enumerate() {
                    let clash = texts.iter().skip(j + 1).find(|(_, other)| {
                        let both = room.intersect(*other);
                        both.width() > 0.2 && both.height() > 0.4
                    });
                    assert!(clash.is_none(), "{name} {variant}, page {}: “{text}” lies on {clash:?}", i + 1);
                }
            }
        }
    }
}

/// Lowest ink of a page that is read out.
fn lowest(page: &Page) -> f64 {
    let rooms = piece_rooms(page).into_iter().filter(|(owner, _)| matches!(owner, Owner::Element(_)));
    rooms.map(|(_, room)| room.y1).fold(0.0, f64::max)
}

#[test]
fn no_page_is_nearly_empty() {
    for name in EXAMPLES {
        for (variant, options) in variants().into_iter().filter(|(variant, _)| matches!(*variant, "A4" | "Letter")) {
            let document = laid_out(&example(name), &options);
            for (i, page) in document.pages.iter().enumerate() {
                assert!(lowest(page) > page.height.mm() * 0.25, "{name} {variant}: page {} is nearly empty", i + 1);
            }
        }
    }
}

/// What the tool itself draws for a booklet.
fn drawn(plan: &Plan, options: &Options) -> Pictures {
    pictures::draw(plan, &shapes(plan), options)
}

fn shows(page: &Page, drawing: &Arc<Drawing>) -> bool {
    let is = |content: &Content| matches!(content, Content::Drawing(shown) if Arc::ptr_eq(shown, drawing));
    page.pieces.iter().any(|piece| is(&piece.content))
}

#[test]
fn every_chart_stands_over_its_symbols_or_they_have_a_section() {
    for name in EXAMPLES {
        let plan = example(name);
        for (variant, options) in variants() {
            let pictures = drawn(&plan, &options);
            let document = book(&plan, &pictures, &options, &mut Report::new()).unwrap();
            assert_inside(&document, &format!("{name} {variant}"));
            let key_page = document.pages.iter().any(|page| shows(page, pictures.key.as_ref().unwrap()));
            assert_eq!(key_page, pictures.keys.is_empty(), "{name} {variant}: symbols are missing or told twice");
            // Of several sizes the chart of the middle one stands for all.
            let middle = plan.middle();
            for ((chart, _), key) in pictures.charts.iter().zip(&pictures.keys).skip(middle).take(1) {
                let over = document.pages.iter().any(|page| shows(page, chart) && shows(page, key));
                assert!(over, "{name} {variant}: a chart stands without its symbols");
            }
            if variant == "A4" {
                assert!(!pictures.keys.is_empty(), "{name} {variant}: no room for symbols under the charts");
            }
        }
    }
}

#[test]
fn a_table_that_goes_on_says_what_goes_on() {
    let document = laid_out(&example("harvest-table-mat"), &Options::new(Paper::a4()));
    let heads = document.pages.iter().flat_map(|page| &page.pieces).filter_map(|piece| match &piece.content {
        Content::Items(items) => Some((piece.owner, items)),
        Content::Drawing(_) => None,
    });
    let mut told = 0;
    for (owner, items) in heads {
        for item in items {
            if matches!(item, Item::Text(text) if text.text.contains("(continued)")) {
                told += 1;
                // It stands for the eye alone; read aloud, the table is one.
                assert!(matches!(owner, Owner::Artifact(_)));
            }
        }
    }
    assert!(told >= 1);
}

#[test]
fn large_print_draws_a_wide_hat_no_smaller_than_one_to_five() {
    fn scale(items: &[Item]) -> Option<f64> {
        items.iter().find_map(|item| match item {
            Item::Text(text) => {
                let told = text.text.replace('\u{a0}', " ");
                told.split_once("1 : ")
                    .and_then(|(_, rest)| rest.trim_end_matches('.').split(". ").next()?.parse().ok())
            }
            Item::Group(group) => scale(&group.items),
            Item::Path(_) | Item::Symbol(_) | Item::Photo(_) => None,
        })
    }
    let plan = example("slipway-sun-hat");
    for paper in [Paper::a4(), Paper::letter()] {
        let pictures = drawn(&plan, &Options { large: true, ..Options::new(paper) });
        for (schematic, _) in &pictures.schematics {
            let scale = scale(&schematic.items).unwrap_or(f64::INFINITY);
            assert!(scale <= 5.0, "1 : {scale}");
        }
    }
}

#[test]
fn french_sets_off_its_colons() {
    let source = std::fs::read_to_string("examples/ember-beanie.yaml").unwrap();
    let mut plan = plan_of(&source);
    plan.design.language = Language::by_tag("fr").unwrap();
    let options = Options::new(Paper::a4());
    let pictures = drawn(&plan, &options);
    let told = text::write(&story_of(&plan, &shapes(&plan), &pictures, &options), &pictures);
    assert!(told.contains("Fil : "), "{told}");
    let bad = told.lines().find(|line| line.trim_start().starts_with(':') || line.contains("Fil:"));
    assert!(bad.is_none(), "{bad:?}");
    let told = told.split_whitespace().collect::<Vec<_>>().join(" ");
    // Where heads are from is told in the language of the page too.
    assert!(told.contains("6 ans, moyenne des garçons et des filles, 50e percentile ; ANSUR"), "{told}");
}

#[test]
fn the_tree_is_sound() {
    let document = laid_out(&example("slipway-sun-hat"), &Options::new(Paper::a4()));
    let mut level = 0;
    let mut cells = vec![0_usize; document.elements.len()];
    for (i, element) in document.elements.iter().enumerate() {
        assert!(element.parent.is_none_or(|parent| parent < i), "a child stands before its parent");
        if let Tag::Heading(next, words) = &element.tag {
            assert!(*next <= level + 1 && !words.is_empty(), "heading “{words}” skips from {level} to {next}");
            level = *next;
        } else if let Tag::Figure(alt) = &element.tag {
            assert!(alt.len() > 20, "a figure says only “{alt}”");
        } else if matches!(&element.tag, Tag::HeaderCell(_) | Tag::Cell) {
            cells[element.parent.unwrap()] += 1;
        }
    }
    // Rows of one table have the same number of cells.
    let rows = document.elements.iter().enumerate().filter(|(_, element)| element.tag == Tag::Row);
    let mut widths = std::collections::BTreeMap::new();
    for (i, row) in rows {
        let table = document.elements[row.parent.unwrap()].parent.unwrap();
        let width = *widths.entry(table).or_insert(cells[i]);
        assert_eq!(cells[i], width, "row {i}");
    }
    assert!(document.pages.iter().all(|page| page.links.is_empty()), "contents of so few pages");
    let large = laid_out(&example("slipway-sun-hat"), &Options { large: true, ..Options::new(Paper::a4()) });
    assert!(
        large.pages.len() >= 12 && large.pages.iter().any(|page| page.links.len() >= 8),
        "the contents lead nowhere"
    );
}

#[test]
fn the_same_plan_gives_the_same_bytes() {
    let (plan, options) = (example("ember-beanie"), Options::new(Paper::a4()));
    let write = || pdf::write(&laid_out(&plan, &options)).unwrap();
    assert_eq!(write(), write());
}

#[test]
fn a_booklet_is_under_600_kilobytes() {
    let bytes = pdf::write(&laid_out(&example("slipway-sun-hat"), &Options::new(Paper::a4()))).unwrap();
    assert!(bytes.len() < 600_000, "{} bytes", bytes.len());
}

#[test]
fn pages_have_the_papers_size_in_points() {
    // 1 point is 1/72 in; A4 is 210 × 297 mm by ISO 216, Letter 8.5 × 11 in.
    let plan = example("ember-beanie");
    for (options, width, height) in [
        (Options::new(Paper::a4()), "595.27", "841.88"),
        (Options::new(Paper::letter()), "612", "792"),
        (Options::new(Paper::by_name("A3").unwrap()), "841.88", "1190.5"),
    ] {
        let bytes = pdf::write(&laid_out(&plan, &options)).unwrap();
        let found = String::from_utf8_lossy(&bytes);
        let at = found.find("/MediaBox").unwrap();
        let media: String = found[at..].chars().take_while(|c| *c != ']').collect();
        assert!(media.contains(&format!("[0 0 {width}")) && media.contains(&format!(" {height}")), "{media}");
    }
}

#[test]
fn every_language_prints_without_a_missing_word_or_letter() {
    let source = std::fs::read_to_string("examples/slipway-sun-hat.yaml").unwrap();
    for language in Language::ALL {
        let mut plan = plan_of(&source);
        plan.design.language = language;
        let options = Options::new(Paper::a4());
        let mut report = Report::new();
        let pictures = pictures(&plan, &options);
        let document = book(&plan, &pictures, &options, &mut report).unwrap();
        assert!(!report.diagnostics.iter().any(|d| d.code == "no-such-glyph"), "{language:?}: {report:#?}");
        let printed: Vec<String> = document.pages.iter().flat_map(texts).map(|(text, _)| text).collect();
        let told = text::write(&story_of(&plan, &shapes(&plan), &pictures, &options), &pictures);
        for words in printed.iter().map(String::as_str).chain(told.lines()) {
            let key = words.split([' ', ':']).find(|word| word.starts_with("page-") || word.starts_with("text-"));
            assert!(key.is_none(), "{language:?}: “{words}”");
        }
        assert!(pdf::write(&document).is_ok());
    }
}

#[test]
fn odd_wishes_are_laid_out_or_refused_with_a_reason() {
    let source = std::fs::read_to_string("examples/slipway-sun-hat.yaml").unwrap();
    let mut plan = plan_of(&source);
    plan.design.title.value = "An endless title ".repeat(24) + &"m".repeat(60);
    plan.design.designer = Some("編み物 さん".to_owned());
    let size = plan.sizes[0].clone();
    let names = (0..60).map(|i| format!("size number {i}"));
    plan.sizes = names.map(|name| roundelay::plan::SizePlan { name, ..size.clone() }).collect();
    for (variant, options) in variants() {
        let mut report = Report::new();
        let shown = pictures(&plan, &options);
        let document =
            booklet::lay_out(&story_of(&plan, &[], &shown, &options), &shown, &options, &mut report).unwrap();
        assert_inside(&document, variant);
        assert!(report.diagnostics.iter().any(|d| d.code == "no-such-glyph"), "{variant}: the lost letters go unsaid");
        assert!(pdf::write(&document).is_ok());
    }
    let mut report = Report::new();
    let stamp = Options::new(Paper::by_name("60x60 mm").unwrap());
    assert!(book(&plan, &Pictures::default(), &stamp, &mut report).is_none());
    assert!(report.diagnostics.iter().any(|d| d.code == "paper-too-small"), "{report:#?}");
}

fn hanging(plan: &Plan, paper: &Paper) -> wall::Wall {
    let key = Arc::new(key(plan, 0, &KeyOptions::default()));
    let options = Options::new(paper.clone());
    let (width, height) = wall::chart_room(&untold(plan, &options), 0, paper, Mm::new(key.bounds.height()), &options);
    let chart = Arc::new(chart(plan, 0, &ChartOptions { width, height, ..ChartOptions::default() }));
    wall::Wall { size: 0, chart, key: Some(key), apart: false }
}

#[test]
fn a_wall_chart_fits_its_sheet_or_says_which_it_needs() {
    let plan = example("ember-beanie");
    for name in ["A4", "A3", "A2", "A1", "A0", "Letter", "Tabloid", "Arch C", "Arch E"] {
        let paper = Paper::by_name(name).unwrap();
        let wall = hanging(&plan, &paper);
        let mut report = Report::new();
        let document =
            wall::one_sheet(&untold(&plan, &Options::new(paper.clone())), &wall, &Options::new(paper), &mut report);
        assert_inside(&document.unwrap_or_else(|| panic!("{name}: {report:#?}")), name);
    }
    for name in ["A4", "Letter", "A3", "A2"] {
        let options = Options { large: true, ..Options::new(Paper::by_name(name).unwrap()) };
        for view in [ChartView::Whole, ChartView::Bands, ChartView::Sector] {
            let wall =
                wall_picture(&plan, 0, &ChartOptions { view, ..ChartOptions::default() }, &options.paper, &options);
            let mut report = Report::new();
            let document = wall::one_sheet(&untold(&plan, &options), &wall, &options, &mut report);
            assert_inside(&document.unwrap_or_else(|| panic!("{name} {view:?}: {report:#?}")), name);
        }
    }
    // The key alone fills a post card.
    let post_card = Options::new(Paper::by_name("A6").unwrap());
    let bands = ChartOptions { view: ChartView::Bands, ..ChartOptions::default() };
    let wall = wall_picture(&plan, 0, &bands, &post_card.paper, &post_card);
    let mut report = Report::new();
    assert!(wall::one_sheet(&untold(&plan, &post_card), &wall, &post_card, &mut report).is_none());
    assert!(report.diagnostics.iter().any(|d| d.code == "wall-too-large"), "{report:#?}");
    let wall = hanging(&plan, &Paper::by_name("A2").unwrap());
    let mut report = Report::new();
    assert!(
        wall::one_sheet(&untold(&plan, &Options::new(Paper::a4())), &wall, &Options::new(Paper::a4()), &mut report)
            .is_none()
    );
    assert!(report.diagnostics.iter().any(|d| d.code == "wall-too-large"));
}

fn chart_places<'a>(document: &'a Document, chart: &'a Arc<Drawing>) -> impl Iterator<Item = (usize, Affine, Rect)> {
    let pages = document.pages.iter().enumerate();
    pages.filter_map(|(i, page)| {
        let shows = |content: &Content| matches!(content, Content::Drawing(drawing) if Arc::ptr_eq(drawing, chart));
        let piece = page.pieces.iter().find(|piece| shows(&piece.content))?;
        Some((i, piece.place, piece.clip?))
    })
}

/// Whatever is dark in the whole chart is dark on a tile too, at the same place and scale.
#[test]
fn the_tiles_together_show_the_whole_chart() {
    let Some(tool) = checkers::tool("pdftoppm") else { return };
    let plan = example("ember-beanie");
    let wall = hanging(&plan, &Paper::by_name("A3").unwrap());
    let mut report = Report::new();
    let document =
        wall::tiled(&untold(&plan, &Options::new(Paper::a4())), &wall, &Options::new(Paper::a4()), &mut report)
            .unwrap();
    assert_inside(&document, "tiles");
    let dpi = 72.0;
    let scale = dpi / 25.4;
    let whole = checkers::raster(&tool, &pdf::write_drawing(&wall.chart).unwrap(), dpi);
    let tiles = checkers::raster(&tool, &pdf::write(&document).unwrap(), dpi);
    let places: Vec<_> = chart_places(&document, &wall.chart).collect();
    assert!(places.len() >= 4);
    let origin = wall.chart.bounds.origin().to_vec2();
    let mut dark = 0;
    for (x, y) in whole[0].dark(90) {
        dark += 1;
        let at = kurbo::Point::new((f64::from(x) + 0.5) / scale, (f64::from(y) + 0.5) / scale) + origin;
        let shown = places.iter().any(|(page, place, clip)| {
            let at = *place * at;
            clip.contains(at) && tiles[*page].darkest_near(at.x * scale, at.y * scale) < 200
        });
        assert!(shown, "the chart's ink at {at:?} is on no tile");
    }
    assert!(dark > 1000, "only {dark} dark dots");
}

/// A chart drawn for home tiles leaves less than a tile's overlap and a margin of them empty at its sides.
#[test]
fn a_tiled_chart_fills_its_tiles() {
    let plan = example("ember-beanie");
    for home in [Paper::a4(), Paper::letter()] {
        let options = Options::new(home.clone());
        let sheet = wall::filling(&wall_sheet(&plan, 0, &options), &home);
        let wall = wall_picture(&plan, 0, &ChartOptions::default(), &sheet, &options);
        let document = wall::tiled(&untold(&plan, &options), &wall, &options, &mut Report::new()).unwrap();
        assert_inside(&document, &home.name);
        let (width, _) = sheet.printable();
        assert!(wall.chart.bounds.width() > 0.9 * width.mm(), "{} on {home:?}", wall.chart.bounds);
        let tiles = wall::tiling(width, sheet.printable().1, &home);
        assert!(document.pages.len() <= 1 + tiles.columns * tiles.rows);
    }
}

#[test]
fn the_check_square_measures_50_mm() {
    let Some(tool) = checkers::tool("pdftoppm") else { return };
    let plan = example("ember-beanie");
    let wall = hanging(&plan, &Paper::by_name("A3").unwrap());
    let document = wall::tiled(
        &untold(&plan, &Options::new(Paper::letter())),
        &wall,
        &Options::new(Paper::letter()),
        &mut Report::new(),
    )
    .unwrap();
    // Ten dots to the millimetre.
    let pages = checkers::raster(&tool, &pdf::write(&document).unwrap(), 254.0);
    let part = (800, 1020);
    let (across, down) = (pages[0].longest_run(true, part), pages[0].longest_run(false, part));
    assert!((499..=506).contains(&across) && (499..=506).contains(&down), "{across} × {down} tenths of a millimetre");
}

/// Every round stands in the file's text, in order, with its count.
#[test]
fn extracted_text_holds_every_round_in_order() {
    let Some(tool) = checkers::tool("pdftotext") else { return };
    let plan = example("slipway-sun-hat");
    let options = Options { rounds: RoundsForm::PerSize, ..Options::new(Paper::a4()) };
    let bytes = pdf::write(&laid_out(&plan, &options)).unwrap();
    let text = checkers::extracted(&tool, &bytes);
    let mut rest = text.as_str();
    let words = roundelay::words::Words::of(plan.design.language);
    let writer = roundelay::notation::write::Writer { words: &words, terms: plan.design.terms };
    for size in &plan.sizes {
        for line in roundelay::notation::lines(size.piece()) {
            let label = writer.label(&line.label, roundelay::notation::Gaps::OPEN);
            let at = rest.find(&label).unwrap_or_else(|| panic!("{label} of size {} is missing", size.name));
            rest = &rest[at + label.len()..];
            let count = line.count.to_string();
            assert!(rest.find(&count).is_some_and(|at| at < 600), "{label}: no count {count}");
        }
    }
}

#[test]
fn outside_tools_find_nothing_wrong() {
    let plan = example("slipway-sun-hat");
    let mut files = Vec::new();
    for (variant, options) in variants() {
        files.push((variant.to_owned(), pdf::write(&laid_out(&plan, &options)).unwrap()));
    }
    let wall = hanging(&plan, &Paper::by_name("A2").unwrap());
    let mut report = Report::new();
    let sheet = wall::one_sheet(
        &untold(&plan, &Options::new(Paper::by_name("A2").unwrap())),
        &wall,
        &Options::new(Paper::by_name("A2").unwrap()),
        &mut report,
    )
    .unwrap();
    files.push(("wall".to_owned(), pdf::write(&sheet).unwrap()));
    let tiles = wall::tiled(&untold(&plan, &Options::new(Paper::a4())), &wall, &Options::new(Paper::a4()), &mut report)
        .unwrap();
    files.push(("tiles".to_owned(), pdf::write(&tiles).unwrap()));
    files.push(("drawing".to_owned(), pdf::write_drawing(&wall.chart).unwrap()));
    checkers::check(&files);
}
