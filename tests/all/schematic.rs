//! The schematic: room for every label, dimensions of the predicted shape, true scale, and words for every language.

use kurbo::{Affine, PathEl, Point, Rect};
use roundelay::craft::Foundation;
use roundelay::design::Kind;
use roundelay::drawing::{Drawing, Item, SchematicOptions, TextItem, schematic, worn};
use roundelay::geometry::sideview::MeasureKind;
use roundelay::geometry::{SideShape, predict, side_view};
use roundelay::pattern::Pattern;
use roundelay::plan::Plan;
use roundelay::units::{Angle, Mm, Units};
use roundelay::words::Language;

use crate::fabric::{self, piece, several, straight};

fn example(text: &str) -> Plan {
    Pattern::read(text.as_bytes()).unwrap_or_else(|report| panic!("{report:?}")).plan
}

fn scenes() -> Vec<(&'static str, Plan)> {
    let rate = |step: u32, rounds: u32| (1..=rounds).map(move |k| step * k);
    let ball: Vec<u32> = rate(6, 8).chain([48; 9]).chain((1..=7).map(|k| 48 - 6 * k)).collect();
    let mat = |rounds: u32| vec![piece("mat", fabric::flat(), rate(6, rounds))];
    vec![
        ("sun hat", example(include_str!("../../examples/slipway-sun-hat.yaml"))),
        ("beanie", example(include_str!("../../examples/ember-beanie.yaml"))),
        ("basket", example(include_str!("../../examples/millrace-basket.yaml"))),
        ("ball", several(Kind::Ball, &[("one", None, Foundation::Ring, vec![piece("ball", straight(), ball)])])),
        (
            "mat",
            several(
                Kind::Mat,
                &[("small", None, Foundation::Ring, mat(15)), ("large", None, Foundation::Ring, mat(25))],
            ),
        ),
        (
            "tube",
            several(
                Kind::Basket,
                &[(
                    "tube",
                    None,
                    Foundation::ChainRing(60),
                    vec![piece("a very long name of a part", straight(), [60; 3])],
                )],
            ),
        ),
    ]
}

fn shapes(plan: &Plan) -> Vec<SideShape> {
    plan.sizes.iter().map(|size| predict(plan, size)).collect()
}

fn draw(plan: &Plan, sizes: &[usize], options: &SchematicOptions) -> Drawing {
    let all = shapes(plan);
    let chosen: Vec<SideShape> = sizes.iter().map(|&size| all[size].clone()).collect();
    schematic(plan, sizes, &chosen, options)
}

/// A straight piece of ink, and whether it is dashed, as a head is, which gives way to letters with a halo.
type Line = ([Point; 2], bool);

/// Every text and every straight piece of ink of a drawing.
fn ink(items: &[Item], texts: &mut Vec<TextItem>, lines: &mut Vec<Line>) {
    for item in items {
        match item {
            Item::Text(text) => texts.push(text.clone()),
            Item::Group(group) => ink(&group.items, texts, lines),
            Item::Symbol(_) | Item::Photo(_) => {}
            Item::Path(path) => {
                let (mut at, mut start) = (Point::ZERO, Point::ZERO);
                let dashed = path.stroke.as_ref().is_some_and(|stroke| !stroke.dashes.is_empty());
                kurbo::flatten(&path.path, 0.05, |element| match element {
                    PathEl::MoveTo(p) => (at, start) = (p, p),
                    PathEl::LineTo(p) => {
                        lines.push(([at, p], dashed));
                        at = p;
                    }
                    PathEl::ClosePath => lines.push(([at, start], dashed)),
                    PathEl::QuadTo(..) | PathEl::CurveTo(..) => {}
                });
            }
        }
    }
}

/// A label's own frame: its letters from capital height to a little below the baseline, and the way into that frame.
fn frame(text: &TextItem) -> (Rect, Affine) {
    let flat = TextItem { turn: 0.0, at: Point::ZERO, ..text.clone() }.bounds();
    let letters = Rect::new(flat.x0, -0.7 * text.size, flat.x1, 0.15 * text.size);
    (letters, Angle::from_degrees(-text.turn).rotation() * Affine::translate(-text.at.to_vec2()))
}

/// True where a line, walked in small steps, comes inside a label.
fn crosses(line: &[Point; 2], text: &TextItem) -> bool {
    let (letters, place) = frame(text);
    let steps = ((line[1] - line[0]).hypot() / 0.1).ceil().max(1.0) as usize;
    (0..=steps).any(|i| letters.contains(place * line[0].lerp(line[1], i as f64 / steps as f64)))
}

/// Complaints about labels of a drawing that touch each other, a line, or the edge.
fn collisions(drawing: &Drawing) -> Vec<String> {
    let (mut texts, mut lines) = (Vec::new(), Vec::new());
    ink(&drawing.items, &mut texts, &mut lines);
    let mut complaints = Vec::new();
    for (i, text) in texts.iter().enumerate() {
        let (letters, place) = frame(text);
        let corners =
            [(letters.x0, letters.y0), (letters.x1, letters.y0), (letters.x1, letters.y1), (letters.x0, letters.y1)];
        let corners = corners.map(|(x, y)| place.inverse() * Point::new(x, y));
        if corners.iter().any(|&corner| !drawing.bounds.inflate(0.01, 0.01).contains(corner)) {
            complaints.push(format!("“{}” leaves the drawing", text.text));
        }
        for (line, dashed) in &lines {
            if !(*dashed && text.halo > 0.0) && crosses(line, text) {
                complaints.push(format!("“{}” stands on a line {line:?}", text.text));
            }
        }
        for other in &texts[i + 1..] {
            if (0..4).any(|i| crosses(&[corners[i], corners[(i + 1) % 4]], other)) {
                complaints.push(format!("“{}” meets “{}”", text.text, other.text));
            }
        }
    }
    for line in lines.iter().flat_map(|(line, _)| line) {
        if !drawing.bounds.inflate(0.3, 0.3).contains(*line) {
            complaints.push(format!("a line leaves the drawing at {line:?}"));
        }
    }
    complaints
}

fn variants() -> Vec<SchematicOptions> {
    let plain = SchematicOptions::default();
    vec![
        SchematicOptions {
            letters: Mm::new(5.0),
            heavy: true,
            plain_black: true,
            height: Mm::new(250.0),
            ..plain.clone()
        },
        SchematicOptions { width: Mm::new(90.0), height: Mm::new(120.0), ..plain.clone() },
        SchematicOptions { top_view: Some(true), head: false, height: Mm::new(300.0), ..plain.clone() },
        plain,
    ]
}

#[test]
fn no_label_touches_a_label_or_a_line() {
    for (what, plan) in scenes() {
        let all: Vec<usize> = (0..plan.sizes.len()).collect();
        for options in variants() {
            for sizes in [vec![0], all.clone()] {
                let drawing = draw(&plan, &sizes, &options);
                assert_eq!(collisions(&drawing), Vec::<String>::new(), "{what} {sizes:?} {options:?}");
            }
        }
    }
}

#[test]
fn the_largest_scale_of_the_series_that_fits_is_taken_and_stated() {
    for (what, plan) in scenes() {
        let drawing = draw(&plan, &[0], &SchematicOptions::default());
        let (width, height) = (drawing.bounds.width(), drawing.bounds.height());
        assert!(width <= 180.0 && height <= 180.0, "{what}: {width} × {height}");
        let mut texts = Vec::new();
        ink(&drawing.items, &mut texts, &mut Vec::new());
        assert!(texts.iter().any(|text| text.text.starts_with("Scale ")), "{what} states no scale");
    }
}

#[test]
fn ink_is_to_scale() {
    // A tube of 60 stitches: its two sides stand as far apart on paper as the scale says.
    let tube = vec![piece("tube", straight(), [60; 12])];
    let plan = several(Kind::Basket, &[("tube", None, Foundation::ChainRing(60), tube)]);
    let options = SchematicOptions { scale: Some(2.0), ..SchematicOptions::default() };
    let drawing = draw(&plan, &[0], &options);
    let mut lines = Vec::new();
    ink(&drawing.items, &mut Vec::new(), &mut lines);
    let across = 60.0 * fabric::W / core::f64::consts::PI / 2.0;
    let level = |line: &&[Point; 2]| (line[0].y - line[1].y).abs() < 1e-6 && (line[0].x + line[1].x).abs() < 1e-6;
    assert!(
        lines
            .iter()
            .map(|(line, _)| line)
            .filter(level)
            .any(|line| ((line[0].x - line[1].x).abs() - across).abs() < 1e-3)
    );
}

#[test]
fn measures_are_what_a_tape_finds_and_the_drawing_shows_them() {
    let plan = example(include_str!("../../examples/slipway-sun-hat.yaml"));
    for (size, shape) in plan.sizes.iter().zip(shapes(&plan)) {
        let view = side_view(&plan, size, &shape);
        let last = shape.rounds.last().expect("a round");
        let of = |kind: MeasureKind| view.measures.iter().filter(move |measure| measure.kind == kind);
        let brim = of(MeasureKind::Across).next_back().expect("a brim");
        let counted = size.parts.last().expect("a brim").reached;
        assert!((brim.value / counted - core::f64::consts::FRAC_1_PI).abs() < 1e-9);
        // Thick fabric goes on as it was: the even rounds at the edge are held out and give by a few per cent.
        assert!((brim.value / last.radius - 2.0).abs() < 0.08, "drawn {:?}, said {:?}", last.radius * 2.0, brim.value);
        let around = of(MeasureKind::Around).next_back().expect("a brim");
        assert_eq!(around.value, counted);
        let lying = of(MeasureKind::LyingFlat).next().expect("an opening");
        assert!((lying.value / size.finished - 0.5).abs() < 0.02, "{:?} of {:?}", lying.value, size.finished);
    }
}

/// A regular hexagon with sides a is 2a wide from corner to corner and √3 a from side to side.
#[test]
fn what_is_shaped_in_corners_is_measured_and_drawn_as_a_polygon() {
    let text = "title: Six\nkind: mat\nswatch: {stitch: sc, stitches: 20, rounds: 22, width: 10, height: 10}\n\
                sizes: {one: {around: 60}}\nwork: spiral\nshaping: 6 corners\nparts:\n  - mat: {start: ring, shape: flat}\n";
    let plan = example(text);
    let view = side_view(&plan, &plan.sizes[0], &predict(&plan, &plan.sizes[0]));
    let side = plan.sizes[0].parts[0].reached.mm() / 6.0;
    let of =
        |kind: MeasureKind| view.measures.iter().find(|measure| measure.kind == kind).map(|found| found.value.mm());
    let near = |kind, wanted: f64| of(kind).is_some_and(|found| (found - wanted).abs() < 1e-6);
    assert!(near(MeasureKind::AcrossCorners, 2.0 * side), "{:?}", view.measures);
    assert!(near(MeasureKind::AcrossFlats, 3.0_f64.sqrt() * side), "{:?}", view.measures);
    assert_eq!(of(MeasureKind::Across).or(of(MeasureKind::Widest)), None);
    // The outline is that from corner to corner.
    assert!((view.reach / side - 1.0).abs() < 0.02, "{} of {side}", view.reach);
}

#[test]
fn a_basket_stands_on_its_base() {
    let plan = example(include_str!("../../examples/millrace-basket.yaml"));
    let view = side_view(&plan, &plan.sizes[1], &predict(&plan, &plan.sizes[1]));
    let (start, end) = (view.outline[0], view.outline[view.outline.len() - 1]);
    assert!(start.y > end.y, "{start:?} {end:?}");
}

#[test]
fn the_words_tell_shape_and_dimensions_in_every_language() {
    for language in Language::ALL {
        let mut plan = example(include_str!("../../examples/slipway-sun-hat.yaml"));
        plan.design.language = language;
        plan.design.units = Units::Inches;
        let drawing = draw(&plan, &[0, 1, 2], &SchematicOptions::default());
        assert!(drawing.title.contains("Slipway sun hat"));
        for told in ["crown", "brim", " in (", " cm)", "L:"] {
            let description = drawing.description.replace('\u{a0}', " ").replace(" :", ":");
            assert!(description.contains(told), "{language:?} doesn't tell {told:?}: {description}");
        }
        assert!(!drawing.description.contains("schematic-"), "{}", drawing.description);
        assert_eq!(collisions(&drawing), Vec::<String>::new(), "{language:?}");
    }
}

#[test]
fn a_hat_as_worn_fits_its_paper_and_tells_where_it_sits_in_every_language() {
    for (what, plan) in scenes().into_iter().take(2) {
        for language in Language::ALL {
            let mut plan = plan.clone();
            plan.design.language = language;
            for options in variants() {
                let shape = predict(&plan, &plan.sizes[0]);
                let drawing = worn(&plan, 0, &shape, &options).expect("a hat");
                assert_eq!(collisions(&drawing), Vec::<String>::new(), "{what} {language:?} {options:?}");
                let (width, height) = (drawing.bounds.width(), drawing.bounds.height());
                assert!(
                    width <= options.width.mm() && height <= options.height.mm(),
                    "{what} {language:?} {width} × {height}"
                );
                assert!(!drawing.description.contains("schematic-"), "{}", drawing.description);
                assert!(drawing.description.contains(&plan.sizes[0].name), "{}", drawing.description);
            }
        }
    }
}

#[test]
fn what_is_not_worn_is_not_drawn_on_a_head() {
    let basket = example(include_str!("../../examples/millrace-basket.yaml"));
    let shape = predict(&basket, &basket.sizes[0]);
    assert_eq!((worn(&basket, 0, &shape, &SchematicOptions::default()), shape.worn), (None, None));
}

#[test]
fn nothing_to_draw_is_no_reason_to_fail() {
    let plan = several(Kind::Hat, &[("none", None, Foundation::Ring, vec![piece("crown", straight(), [])])]);
    let shapes = shapes(&plan);
    for sizes in [&[][..], &[0], &[7]] {
        assert_eq!(schematic(&plan, sizes, &shapes, &SchematicOptions::default()).items, []);
    }
}
