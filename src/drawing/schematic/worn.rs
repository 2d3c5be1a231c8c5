//! A hat as worn: its outline on the head, the head in grey, and how far down it a tape over the head reads. Parts are named
//! in the side view; here the ears and the jaw would stand in their names.

use std::collections::BTreeMap;

use kurbo::{BezPath, Ellipse, Point, Rect, Shape, Size, Vec2};

use super::dress::turned_up_line;
use super::sheet::Sheet;
use super::side::{closed, hanging, mirror, sharp};
use super::smooth::smooth;
use super::table::wrapped;
use super::{SCALES, Scene, SchematicOptions, Sized, fits};
use crate::drawing::{Anchor, CURVE, Drawing, Ends, Group, Ink, Item, Origin, PathItem, Role, Stroke};
use crate::font::Face;
use crate::geometry::sideview::{Fold, turn_up};
use crate::geometry::{SideShape, Worn, side_view};
use crate::plan::Plan;
use crate::units::{Angle, Mm};
use crate::words::Arg;
use crate::words::numbers::decimal;

/// Light grey of the head; in plain black its outline alone is drawn.
const GREY: Ink = Ink([0xd9, 0xd9, 0xd9]);
/// How far down the neck is drawn, as a share of the circumference: about where a collar is.
const NECK_END: f64 = 0.42;
/// How far an ear stands out, as a share of the circumference.
const EAR_OUT: f64 = 0.03;
/// Steps in which the head's outline is drawn.
const STEPS: u32 = 96;
/// Steps from one round to the next in which the hat's outline is drawn: fine enough to lie on the head between them.
const HAT_STEPS: usize = 12;

/// Draws one size of a hat as worn, at the largest scale that fits; nothing for what isn't worn.
pub fn worn(plan: &Plan, size: usize, shape: &SideShape, options: &SchematicOptions) -> Option<Drawing> {
    let (own, on) = plan.sizes.get(size).zip(shape.worn.as_ref())?;
    let words = plan.design.words();
    let drawn_on = SideShape { rounds: on.rounds.clone(), findings: Vec::new(), worn: None, ..*shape };
    let mut view = side_view(plan, own, &drawn_on);
    // A head rounds what is shaped in corners.
    let edges = on.rounds.iter().map(|round| Point::new(round.radius.mm(), round.height.mm()));
    let raw: Vec<Point> = std::iter::once(Point::new(shape.start.mm(), 0.0)).chain(edges).collect();
    let top = raw.iter().fold(0.0_f64, |top, at| top.min(at.y));
    view.outline = raw.into_iter().map(|at| Point::new(at.x, at.y - top)).collect();
    turn_up(plan, own, &mut view.outline);
    // Its fold is as sharp there.
    let fold = view.fold().and_then(|fold| view.outline.get(fold)).copied();
    view.folds.extend(fold.map(|at| Fold { at, sharp: true }));
    let sized = Sized { name: &own.name, own, head: own.head, view };
    let mut scene = Scene { plan, options, words: &words, sizes: vec![sized], scale: 1.0, lettered: false };
    let room = Size::new(options.width.mm(), options.height.mm());
    let asked = options.scale.filter(|scale| scale.is_finite() && *scale > 0.0);
    let mut sheet = None;
    for scale in asked.map_or(SCALES.to_vec(), |scale| vec![scale]) {
        scene.scale = 1.0 / scale;
        let drawn = draw(&scene, on, -top);
        let done = fits(&drawn, room);
        sheet = Some(drawn);
        if done {
            break;
        }
    }
    let sheet = sheet?;
    let args = [("title", Arg::Text(&plan.design.title.value)), ("size", Arg::Text(&own.name))];
    let title = words.with("schematic-worn-title", &args);
    let how = words.with("schematic-worn-how", &[("length", Arg::Text(&scene.length(on.head.around())))]);
    let marks = marks(&scene, on).into_iter().map(|(_, mark)| mark);
    let marks: Vec<String> = std::iter::once(how).chain(marks).collect();
    let description = format!("{title}{}{}. {}", words.colon(), marks.join(words.semicolon()), tight(&scene, on));
    let role = Role::Object { name: title.clone(), description: description.clone() };
    let bounds = sheet.bounds();
    let group = Group { id: "worn".to_owned(), role, origin: Origin::None, items: sheet.items };
    let items = vec![Item::Group(group)];
    Some(Drawing { bounds, title, description, language: plan.design.language, symbols: BTreeMap::new(), items })
}

/// The levels that are marked on the head, in mm below its top, with what is written beside them: edge, brow, ears.
fn marks(scene: &Scene<'_>, on: &Worn) -> [(f64, String); 3] {
    let [brow, ears] = on.marks();
    let mark = |key: &str, tape: Mm| {
        (on.head.level_at(tape), scene.words.with(key, &[("length", Arg::Text(&scene.length(tape)))]))
    };
    [mark("schematic-worn-edge", on.tape), mark("schematic-worn-brow", brow), mark("schematic-worn-ears", ears)]
}

/// What is said of the tightest round.
fn tight(scene: &Scene<'_>, on: &Worn) -> String {
    let key = if on.grip < -0.005 { "schematic-worn-loose" } else { "schematic-worn-tight" };
    let (round, percent) =
        ((on.tightest + 1).to_string(), decimal((on.grip.abs() * 100.0).round(), 0, scene.words.language));
    scene.words.with(key, &[("round", Arg::Text(&round)), ("percent", Arg::Text(&percent))])
}

/// The drawing at the scale of the moment; `down` is how far the top of the head lies below that of the hat.
fn draw(scene: &Scene<'_>, on: &Worn, down: f64) -> Sheet {
    let mut sheet = Sheet::new(scene.options);
    let Some(size) = scene.sizes.first() else { return sheet };
    head(scene, on, down, &mut sheet);
    let hat = hat(scene, size, on, down);
    closed(hanging(size, &hat, HAT_STEPS), &mut sheet);
    if let Some(cuff) = turned_up_line(size, &hat, HAT_STEPS) {
        sheet.line(&cuff, sheet.style.wide, Ink::BLACK, Vec::new());
    }
    let reach = size.view.reach.max(on.head.widest() * 1.2) * scene.scale;
    let narrow = sheet.style.narrow;
    let mut lowest = f64::NEG_INFINITY;
    let mut marked: Vec<(bool, f64, String)> =
        marks(scene, on).into_iter().enumerate().map(|(index, (level, text))| (index == 0, level, text)).collect();
    marked.sort_by(|a, b| a.1.total_cmp(&b.1));
    for (own, level, text) in marked {
        let y = (level + down) * scene.scale;
        let (from, to) = (Point::new(on.head.radius_at(level) * scene.scale, y), Point::new(reach + 3.0, y));
        // The edge of the hat is told by a full line, what it is held against by dashes.
        let dashes = if own { Vec::new() } else { vec![4.0 * narrow, 4.0 * narrow] };
        // Letters of marks close together stand below each other.
        let base = (y + sheet.style.letters / 2.0).max(lowest);
        let knee = Point::new(to.x + 2.0, base - sheet.style.letters / 2.0);
        sheet.line(&[from, to, knee], narrow, Ink::BLACK, dashes);
        lowest = base + 1.7 * sheet.style.letters;
        let text = sheet.text(&text, Point::new(knee.x + 1.0, base), Anchor::Start);
        sheet.write(text);
    }
    let line = 1.75 * sheet.style.letters;
    // Below the whole, marks and all, so that the two are no wider than the wider of them.
    let middle = sheet.bounds().center().x;
    let mut y = sheet.bounds().y1 + 4.0 + sheet.style.letters;
    let head = scene.words.with("schematic-head", &[("length", Arg::Text(&scene.length(on.head.around())))]);
    let scale = scene.scale_words();
    let (em, width) = (sheet.style.em(), 0.95 * scene.options.width.mm());
    let fits = |text: &str| Face::Regular.width(text, em) <= width;
    for text in wrapped(&format!("{scale}\u{a0}· {head}"), fits).into_iter().chain(wrapped(&tight(scene, on), fits)) {
        sheet.write(sheet.text(&text, Point::new(middle, y), Anchor::Middle));
        y += line;
    }
    sheet
}

/// Right half of the hat on paper. Its rounds lie on the head or outside it; so does the curve through them.
fn hat(scene: &Scene<'_>, size: &Sized<'_>, on: &Worn, down: f64) -> Vec<Point> {
    let clear = |p: Point| {
        let [r, z] = on.head.clear([p.x / scene.scale, p.y / scene.scale - down]);
        Point::new(r * scene.scale, (z + down) * scene.scale)
    };
    smooth(&scene.right(size), &sharp(size), HAT_STEPS).into_iter().map(clear).collect()
}

/// The head form with its ears, down to the neck.
fn head(scene: &Scene<'_>, on: &Worn, down: f64, sheet: &mut Sheet) {
    let at = |x: f64, level: f64| Point::new(x * scene.scale, (level + down) * scene.scale);
    let around = on.head.around().mm();
    let end = NECK_END * around;
    // By the square of the step, so that the flat top is drawn as finely as the sides.
    let levels =
        (0..=STEPS).map(|step| end * (f64::from(step) / f64::from(STEPS)) * (f64::from(step) / f64::from(STEPS)));
    let right: Vec<Point> = levels.map(|level| at(on.head.radius_at(level), level)).collect();
    let left: Vec<Point> = right.iter().rev().copied().map(mirror).collect();
    let (top, lobe) = on.head.ears();
    let lug = |side: f64| {
        let (out, middle) = (EAR_OUT * around, f64::midpoint(top, lobe));
        let centre = at(side * (on.head.radius_at(middle) + 0.4 * out), middle);
        let radii = Vec2::new(out, (lobe - top) / 2.0) * scene.scale;
        // Ears stand a little off at the top.
        Ellipse::new(centre, radii, Angle::from_degrees(side * 8.0).radians()).to_path(CURVE)
    };
    let mut form = BezPath::new();
    for (index, point) in right.iter().chain(&left).enumerate() {
        if index == 0 { form.move_to(*point) } else { form.line_to(*point) }
    }
    form.close_path();
    let plain = scene.options.plain_black;
    let stroke = Stroke { width: sheet.style.narrow, ink: sheet.style.hint, ends: Ends::Round, dashes: Vec::new() };
    for (path, corners) in [(lug(1.0), &right[..0]), (lug(-1.0), &right[..0]), (form, &right[..])] {
        let fill = if plain { Ink::WHITE } else { GREY };
        sheet.hint(PathItem { path, fill: Some(fill), stroke: Some(stroke.clone()) }, corners);
    }
    sheet.take_room(Rect::from_points(left.last().copied().unwrap_or_default(), at(on.head.widest() * 1.2, end)));
    sheet.take_room(Rect::from_points(at(-on.head.widest() * 1.2, end), at(0.0, 0.0)));
}
