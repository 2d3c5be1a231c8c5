//! The pieces of one text side by side, the waves that `check` tells, what stands out beyond an edge, and the last row of
//! colours tried.

#![allow(clippy::unwrap_used)]

use std::fs;
use std::path::Path;
use std::process::{Command, Output, Stdio};

use kurbo::{Rect, Shape};
use roundelay::drawing::{Drawing, Item, OneOf, PieceOptions, relaxed, together, true_size};
use roundelay::geometry::piece::Eye;
use roundelay::page::{Options, Paper};
use roundelay::pattern::{Beside, Pattern};
use roundelay::publish::{DrawOptions, FORMATS, Format, PICTURES, Row, TextPattern, draw, draw_together};
use roundelay::report::Report;
use roundelay::units::{Angle, Mm};

const SWATCH: &str = "swatch: {stitch: sc, stitches: 20, rounds: 20, width: 10, height: 10}\nkind: ball\n";

const OWL: &str = "Title: Little owl\n\nBody\nRnd 1: 6 sc in magic ring (6)\nRnd 2: inc in each st around (12)\n\
    Rnd 3: [sc, inc] 6 times (18)\nRnd 4: [2 sc, inc] 6 times (24)\nRnds 5-12: sc in each st around (24)\n\n\
    Wing (make 2)\nRnd 1: 6 sc in magic ring (6)\nRnd 2: inc in each st around (12)\nRnds 3-7: sc in each st around (12)\n";

fn read(text: &str, piece: Option<&str>) -> Pattern {
    let beside = Some(Beside { name: "swatch.yaml", bytes: SWATCH.as_bytes() });
    Pattern::read_piece(text.as_bytes(), beside, piece).unwrap_or_else(|report| panic!("{report:#?}"))
}

fn owl() -> Vec<TextPattern> {
    [("Body", 1), ("Wing", 2)]
        .map(|(name, made)| TextPattern { name: name.to_owned(), made, pattern: read(OWL, Some(name)) })
        .into()
}

/// The pieces drawn together, each so often.
fn drawn(pieces: &[TextPattern], options: &PieceOptions) -> Drawing {
    let spaces: Vec<_> = pieces
        .iter()
        .map(|piece| relaxed(&piece.pattern.plan, &piece.pattern.plan.sizes[0], &piece.pattern.shapes[0]))
        .collect();
    let one = |(piece, space)| {
        let piece: &TextPattern = piece;
        let Pattern { plan, shapes, .. } = &piece.pattern;
        OneOf { name: &piece.name, made: piece.made, plan, size: &plan.sizes[0], body: &shapes[0], space }
    };
    let each: Vec<OneOf<'_>> = pieces.iter().zip(&spaces).map(one).collect();
    together(&each, options)
}

/// The rooms of the stitches of every piece, without the shadows under them, which have no line.
fn rooms(drawing: &Drawing) -> Vec<Rect> {
    let of = |item: &Item| {
        let Item::Group(group) = item else { panic!("no piece") };
        let paths = group.items.iter().filter_map(|item| match item {
            Item::Path(path) if path.stroke.is_some() => Some(path.path.bounding_box()),
            Item::Path(_) | Item::Text(_) | Item::Symbol(_) | Item::Photo(_) | Item::Group(_) => None,
        });
        paths.reduce(|one, other| one.union(other)).unwrap()
    };
    drawing.items.iter().map(of).collect()
}

#[test]
fn pieces_stand_side_by_side_on_one_ground_to_one_scale() {
    let front = Eye { from: Angle::ZERO, turn: Angle::ZERO, distance: None };
    let room = PieceOptions { eye: Some(front), width: Mm::new(180.0), height: Mm::new(260.0), scale: None };
    let pieces = owl();
    let drawing = drawn(&pieces, &room);
    assert!(drawing.fits(Mm::new(180.001), Mm::new(260.001)) && drawing.bounds.width() > 179.0, "{:?}", drawing.bounds);
    let [body, wing, other] = rooms(&drawing)[..] else { panic!("{} pieces", drawing.items.len()) };
    assert!(body.x1 < wing.x0 && wing.x1 < other.x0, "{body:?} {wing:?} {other:?}");
    // 24 stitches around and 12: half as wide, but for the thickness of the strands.
    assert!((wing.width() / body.width() - 0.5).abs() < 0.06, "{} of {}", wing.width(), body.width());
    // What a stitch is wide on the page: a 24th of the way around.
    let stitch = body.width() * core::f64::consts::PI / 24.0;
    assert!((wing.y1 - body.y1).abs() < stitch / 2.0, "{} and {} for one ground", wing.y1, body.y1);
    assert!((wing.y1 - other.y1).abs() < 1e-6);
    for words in ["Little owl", "Body, Wing\u{a0}× 2"] {
        assert!(drawing.description.contains(words), "{}", drawing.description);
    }
}

#[test]
fn many_pieces_stand_in_rows() {
    let mut pieces = owl();
    pieces[1].made = 12;
    let room = PieceOptions { width: Mm::new(180.0), height: Mm::new(260.0), ..PieceOptions::default() };
    let drawing = drawn(&pieces, &room);
    let rooms = rooms(&drawing);
    assert_eq!(rooms.len(), 13);
    for (index, one) in rooms.iter().enumerate() {
        assert!(drawing.bounds.union(*one) == drawing.bounds, "{one:?} lies in {:?}", drawing.bounds);
        assert!(rooms[..index].iter().all(|other| other.intersect(*one).area() < 1e-6), "{one:?} overlaps");
    }
    assert!(rooms[12].y1 > rooms[0].y1 + rooms[12].height(), "the last row stands below the first");
}

#[test]
fn they_are_written_in_every_format_and_frame() {
    let pieces = owl();
    for format in FORMATS {
        let asked = DrawOptions { frame: Some(1.0), titled: true, ..DrawOptions::new(Options::new(Paper::a4())) };
        let bytes = draw_together(&pieces, format.value, &asked, &mut Report::new()).unwrap();
        if format.value == Format::Svg {
            let text = String::from_utf8(bytes).unwrap();
            assert!(text.contains("piece-3") && text.contains(">Little owl<"), "{}", &text[..2000]);
        }
    }
}

fn run(folder: &Path, arguments: &[&str]) -> Output {
    let mut command = Command::new(env!("CARGO_BIN_EXE_roundelay"));
    command.args(arguments).args(["--swatch", "swatch.yaml"]).current_dir(folder).stdin(Stdio::null()).output().unwrap()
}

fn told(output: &Output) -> (i32, String) {
    (output.status.code().unwrap(), String::from_utf8_lossy(&output.stderr).into_owned())
}

#[test]
fn a_text_with_pieces_is_drawn_and_published_together() {
    let folder = tempfile::tempdir().unwrap();
    let at = folder.path();
    fs::write(at.join("owl.txt"), OWL).unwrap();
    fs::write(at.join("swatch.yaml"), SWATCH).unwrap();
    assert_eq!(told(&run(at, &["draw", "owl.txt", "piece", "-o", "all.svg"])), (0, String::new()));
    let all = fs::read_to_string(at.join("all.svg")).unwrap();
    assert!(all.contains("The finished pieces: Little owl") && all.contains("piece-3"));
    assert_eq!(told(&run(at, &["draw", "owl.txt", "piece", "--piece", "wing", "-o", "wing.svg"])).0, 0);
    assert!(!fs::read_to_string(at.join("wing.svg")).unwrap().contains("The finished pieces"));
    let (status, words) = told(&run(at, &["draw", "owl.txt", "piece", "--on", "head", "-o", "head.svg"]));
    assert!(status == 2 && words.contains("--piece NAME"), "{words}");
    fs::write(at.join("slip.txt"), OWL.replace("(12)\nRnds 3-7", "(13)\nRnds 3-7")).unwrap();
    assert_eq!(told(&run(at, &["draw", "slip.txt", "piece", "-o", "slip.svg"])).0, 1);
    assert!(!at.join("slip.svg").exists());

    let publish = ["publish", "owl.txt", "--only", "piece"];
    assert_eq!(told(&run(at, &publish)).0, 0);
    let files = ["owl/owl-together.svg", "owl/owl-together.png", "owl/owl-body/owl-body-one-piece.svg"];
    for file in files {
        assert!(at.join(file).is_file(), "{file}");
    }
    let (status, words) = told(&run(at, &publish));
    assert!(status == 0 && words.contains("3 designs: 0 made, 3 unchanged"), "{words}");
    assert_eq!(told(&run(at, &["publish", "owl.txt", "-o", "texts", "--only", "text"])).0, 0);
    assert!(at.join("texts/owl-wing").is_dir() && !at.join("texts/owl-together.svg").exists());
}

/// A disc with so many increases a round.
fn disc(rate: u32) -> String {
    (0..20).fold(format!("Rnd 1: {rate} sc in ring ({rate})\n"), |text, before| match before {
        0 => text + &format!("Rnd 2: 2 sc in each st around ({})\n", 2 * rate),
        _ => text + &format!("Rnd {}: [{before} sc, inc] {rate} times ({})\n", before + 2, rate * (before + 2)),
    })
}

#[test]
fn check_tells_the_waves_of_what_ruffles_and_of_nothing_else() {
    let ruffled = read(&disc(12), None);
    let waves = ruffled.waves();
    let [note] = &waves[..] else { panic!("{waves:#?}") };
    assert!(note.code == "waves" && note.message.contains(" waves, ") && note.place.is_some(), "{note:?}");
    // The same that the picture of it tells.
    let piece = PICTURES.iter().find(|picture| picture.name() == "piece").unwrap();
    let mut report = Report::new();
    draw(&ruffled, 0, piece, Format::Svg, &DrawOptions::new(Options::new(Paper::a4())), &mut report).unwrap();
    let drawn = report.diagnostics.iter().find(|one| one.code == "waves").unwrap();
    assert_eq!(drawn.message, note.message);
    assert_eq!(read(&disc(6), None).waves(), []);

    let folder = tempfile::tempdir().unwrap();
    fs::write(folder.path().join("swatch.yaml"), SWATCH).unwrap();
    for (rate, there) in [(12, true), (6, false)] {
        fs::write(folder.path().join("disc.txt"), disc(rate)).unwrap();
        let (status, words) = told(&run(folder.path(), &["check", "disc.txt"]));
        assert_eq!((status, words.contains("from trough to crest")), (0, there), "{rate}: {words}");
    }
}

/// The outline of a mat at its true size.
fn outline(text: &str) -> Rect {
    let swatch = SWATCH.replace("ball", "mat");
    let beside = Some(Beside { name: "swatch.yaml", bytes: swatch.as_bytes() });
    let pattern = Pattern::read_rounds(text.as_bytes(), beside).unwrap();
    let (plan, shape) = (&pattern.plan, &pattern.shapes[0]);
    let space = relaxed(plan, &plan.sizes[0], shape);
    let drawing = true_size(plan, &plan.sizes[0], &space, Mm::new(190.0)).unwrap();
    let Item::Group(group) = &drawing.items[0] else { panic!("no outline") };
    let Item::Path(path) = &group.items[0] else { panic!("no line") };
    path.path.bounding_box()
}

#[test]
fn what_stands_out_beyond_the_edge_belongs_to_the_outline() {
    let mat: String = disc(6).lines().take(13).map(|line| format!("{line}\n")).collect();
    let plain = format!("{mat}Rnd 14: [12 sc, inc] 6 times (84)\n");
    let picots = format!("{mat}Rnd 14: [6 sc, ch-3 picot, 6 sc, inc, ch-3 picot] 6 times (84)\n");
    let (plain, with) = (outline(&plain), outline(&picots));
    // A picot reaches seven tenths of its stitch, here 5 mm, beyond its head; of twelve none need stand at the very sides.
    let (wider, higher) = (with.width() - plain.width(), with.height() - plain.height());
    assert!((1.5..7.5).contains(&wider) && (1.5..7.5).contains(&higher), "{wider} and {higher} mm more");
}

/// Three in a row and one left: that one stands in the middle.
#[test]
fn the_last_row_of_colours_stands_in_the_middle() {
    let design = "title: Two-tone mat\nkind: mat\nyarn: {weight: 4, colours: {sand: \"#d9c39a\", tide: \"#2f6f8f\"}}\n\
        palettes: {a: {sand: \"#aa3333\"}, b: {sand: \"#33aa33\"}, c: {sand: \"#3333aa\"}, d: {sand: \"#aaaa33\"},\n\
        \x20 e: {sand: \"#33aaaa\"}}\n\
        swatch: {stitch: sc, stitches: 20, rounds: 20, width: 10, height: 10}\nsizes: {S: {across: 8}}\nwork: spiral\n\
        parts:\n  - mat: {start: ring of 6, shape: flat, colours: {sand: 4, tide: rest}}\n";
    let pattern = Pattern::read(design.as_bytes()).unwrap();
    let (plan, shape) = (&pattern.plan, &pattern.shapes[0]);
    let space = relaxed(plan, &plan.sizes[0], shape);
    let options = roundelay::drawing::ColoursOptions::default();
    let drawing = roundelay::drawing::colours(plan, &plan.sizes[0], (shape, &space), &options).unwrap();
    type Places = Vec<(f64, f64)>;
    let lefts: Places = drawing
        .items
        .iter()
        .filter_map(|item| match item {
            Item::Group(group) => Some(&group.items),
            Item::Path(_) | Item::Text(_) | Item::Symbol(_) | Item::Photo(_) => None,
        })
        .map(|items| {
            let texts = items.iter().filter_map(|item| match item {
                Item::Text(text) => Some(text.at),
                Item::Path(_) | Item::Symbol(_) | Item::Photo(_) | Item::Group(_) => None,
            });
            let first = texts.reduce(|one, other| if other.y < one.y { other } else { one }).unwrap();
            (first.x, first.y)
        })
        .collect();
    let last = lefts.iter().map(|(_, y)| *y).fold(0.0, f64::max);
    let (rest, full): (Places, Places) = lefts.into_iter().partition(|(_, y)| (last - y).abs() < 1.0);
    let columns = full.iter().filter(|(_, y)| (full[0].1 - y).abs() < 1.0).count();
    assert!(columns > rest.len(), "{columns} in a row, {} in the last: a case that shows nothing", rest.len());
    let middle = |row: &[(f64, f64)]| (row[0].0 + row[row.len() - 1].0) / 2.0;
    assert!((middle(&full[..columns]) - middle(&rest)).abs() < 0.01, "{full:?} {rest:?}");
}
