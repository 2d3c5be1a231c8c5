//! The outline of a small piece at its true size, to lay or stand the work on, with a square and a ruler that show whether
//! the printer kept to it.

use core::f64::consts::PI;

use kurbo::{BezPath, Circle, Point, Rect, Shape, Vec2};

use super::CURVE;
use super::key::wrap;
use super::piece::{CREST, across, edge};
use crate::drawing::{Anchor, Drawing, Ends, Group, Ink, Item, Origin, PathItem, Role, Stroke, TextItem};
use crate::font::Face;
use crate::geometry::SideShape;
use crate::geometry::mesh::Vec3;
use crate::geometry::piece::{Patch, Piece};
use crate::notation::write::Writer;
use crate::plan::{Plan, SizePlan};
use crate::units::{Angle, Mm};
use crate::words::numbers::{decimal, length};
use crate::words::{Arg, Words};

/// Pieces are drawn at their true size up to this width: what a home printer takes across.
pub const TRUE_SIZE: Mm = Mm::new(180.0);

/// Letters, and their line distance, mm.
const LETTERS: (f64, f64) = (3.4, 4.8);

/// The line that the work is laid on, and those that measure, mm.
const LINES: (f64, f64) = (0.5, 0.18);

/// Side of the square, mm.
const SQUARE: f64 = 50.0;

/// Length of the ruler: whole centimetres above, whole inches below, mm.
const RULER: (u32, u32) = (15, 6);

/// Between what stands below one another, mm.
const GAP: f64 = 6.0;

/// Outlines from this size on hold the square inside, mm.
const HOLDS: f64 = 85.0;

/// What is laid on the page.
enum Outline {
    /// All of a piece that lies flat; where it is round, as wide as every page says.
    Lying(Option<Mm>),
    /// The edge of one that stands, as wide as every page says.
    Edge(Mm),
}

/// The outline of a size; nothing where it is wider than [`TRUE_SIZE`].
fn outline(plan: &Plan, size: &SizePlan, space: &Piece) -> Option<(Outline, BezPath)> {
    let wide = edge(&size.rounds).map(|round| across(plan, round));
    let found = if space.flat {
        let wide = wide.filter(|_| size.polygon().is_none());
        (Outline::Lying(wide), lying(size, space, wide)?)
    } else {
        let wide = wide?;
        (Outline::Edge(wide), Circle::new(Point::ORIGIN, wide.mm() / 2.0).to_path(CURVE))
    };
    let room = found.1.bounding_box();
    let fits = room.width().max(room.height()) <= TRUE_SIZE.mm() && room.width() > 1.0;
    fits.then_some(found)
}

/// False for a body that is far too wide for [`TRUE_SIZE`]: known before it is relaxed, which changes its width by little.
pub fn may_be_true_size(body: &SideShape) -> bool {
    body.rounds.last().is_some_and(|round| round.radius * 2.0 <= TRUE_SIZE * SPARE)
}

/// The outline of a picot, across and up from the foot of the stitch on whose head it stands.
const CROWN: [(f64, f64); 15] = [
    (-0.2, 1.0),
    (-0.3, 1.09),
    (-0.36, 1.2),
    (-0.37, 1.35),
    (-0.33, 1.49),
    (-0.24, 1.61),
    (-0.12, 1.68),
    (0.0, CREST),
    (0.12, 1.68),
    (0.24, 1.61),
    (0.33, 1.49),
    (0.37, 1.35),
    (0.36, 1.2),
    (0.3, 1.09),
    (0.2, 1.0),
];

/// How much wider than it may be at its true size a body may be before it is relaxed.
const SPARE: f64 = 1.2;

/// The line along the heads of the last round, seen from above; as wide as the given width on the mean, where it is round,
/// since a mesh comes out a little smaller or larger than the width that is told.
fn lying(size: &SizePlan, space: &Piece, across: Option<Mm>) -> Option<BezPath> {
    let last = size.rounds.len().checked_sub(1)?;
    let patches = || space.patches.iter().filter(|patch| patch.round == last && patch.edge);
    let above = |p: Vec3| Point::new(p.x, -p.y);
    let heads = |patch: &Patch| [patch.corners[3], patch.corners[2]].map(above);
    // The width is that of the stitches: what stands out over them, loops of chains and picots, is no part of it.
    let stitches: Vec<Point> = patches().filter(|patch| !patch.hangs).flat_map(heads).collect();
    let count = stitches.len().max(1) as f64;
    let about = stitches.iter().fold(Vec2::ZERO, |sum, p| sum + p.to_vec2()) / count;
    let reach = stitches.iter().map(|p| (p.to_vec2() - about).hypot()).sum::<f64>() / count;
    let scale = across.map_or(1.0, |across| across.mm() / 2.0 / reach.max(1e-3));
    // Stitch by stitch on the way round, and each from its one side to the other: its own outline may turn back on itself.
    let turn = |patch: &Patch| {
        let [a, b] = heads(patch);
        let middle = a.midpoint(b) - about;
        Angle::of_vector(middle.x, middle.y).radians()
    };
    let mut round: Vec<&Patch> = patches().collect();
    round.sort_by(|one, other| turn(one).total_cmp(&turn(other)));
    let own = |patch: &Patch| {
        let [a, b] = heads(patch);
        let crown = patch.picot.iter().flat_map(|_| CROWN.map(|(u, v)| above(patch.at(u, v, 0.0))));
        let mut points: Vec<Point> = std::iter::once(a).chain(crown).chain([b]).collect();
        if (a.to_vec2() - about).cross(b.to_vec2() - about) < 0.0 {
            points.reverse();
        }
        points
    };
    let points: Vec<Point> =
        round.into_iter().flat_map(own).map(|p| (about + (p.to_vec2() - about) * scale).to_point()).collect();
    let mut path = BezPath::new();
    for (number, point) in points.iter().enumerate() {
        if number == 0 { path.move_to(*point) } else { path.line_to(*point) }
    }
    path.close_path();
    (points.len() > 2).then_some(path)
}

/// Draws a size at its true size: one millimetre of the drawing is one of the piece. Nothing where it is wider than
/// [`TRUE_SIZE`].
pub fn true_size(plan: &Plan, size: &SizePlan, space: &Piece, width: Mm) -> Option<Drawing> {
    let (kind, path) = outline(plan, size, space)?;
    let words = plan.design.words();
    let own = path.bounding_box();
    let wide = width.mm().max(own.width()).max(f64::from(RULER.0) * 10.0 + 2.0);
    let by = Vec2::new(wide / 2.0, own.height() / 2.0) - own.center().to_vec2();
    let mut sheet = Sheet { items: Vec::new() };
    let moved = kurbo::Affine::translate(by) * path;
    sheet.items.push(Item::Group(Group {
        id: "true-size".to_owned(),
        role: Role::Object { name: words.say("true-size-outline"), description: String::new() },
        origin: Origin::None,
        items: vec![line(moved, LINES.0)],
    }));
    let inside = own.width().min(own.height()) >= HOLDS;
    let corner = match inside {
        true => Point::new((wide - SQUARE) / 2.0, (own.height() - SQUARE) / 2.0),
        false => Point::new((wide - SQUARE) / 2.0, own.height() + GAP),
    };
    sheet.square(plan, size, &words, corner);
    let mut top = if inside { own.height() } else { own.height() + GAP + SQUARE } + GAP;
    let said = told(plan, &kind, own, &words);
    for sentence in &said {
        for words in wrap(sentence, Face::Regular, LETTERS.0, wide) {
            let at = Point::new(wide / 2.0, top + Face::Regular.cap_height(LETTERS.0));
            sheet.items.push(Item::Text(TextItem { anchor: Anchor::Middle, ..TextItem::new(words, at, LETTERS.0) }));
            top += LETTERS.1;
        }
    }
    top += GAP / 2.0;
    let foot = sheet.ruler(Point::new((wide - f64::from(RULER.0) * 10.0) / 2.0, top));
    let args = [("title", Arg::Text(&plan.design.title.value)), ("size", Arg::Text(&size.name))];
    Some(Drawing {
        // Half a line stands over the outline.
        bounds: Rect::new(0.0, -LINES.0, wide, foot),
        title: words.with("true-size-title", &args),
        description: said.join(" "),
        language: plan.design.language,
        symbols: Default::default(),
        items: sheet.items,
    })
}

/// What is to be done with the page.
fn told(plan: &Plan, kind: &Outline, own: Rect, words: &Words) -> Vec<String> {
    let shown = |value: f64| length(Mm::new(value), plan.design.units, plan.design.language);
    let first = match kind {
        Outline::Lying(across) => {
            let (wide, high) = (own.width(), own.height());
            let size = match across {
                Some(across) => shown(across.mm()),
                None if (wide - high).abs() < 0.02 * wide => shown(wide),
                None => format!("{} × {}", shown(wide), shown(high)),
            };
            words.with("true-size-lay", &[("length", Arg::Text(&size))])
        }
        Outline::Edge(across) => {
            let around = shown(across.mm() * PI);
            let across = shown(across.mm());
            words.with("true-size-stand", &[("length", Arg::Text(&across)), ("around", Arg::Text(&around))])
        }
    };
    vec![first, words.say("true-size-check")]
}

fn line(path: BezPath, width: f64) -> Item {
    let stroke = Stroke { width, ink: Ink::BLACK, ends: Ends::Butt, dashes: Vec::new() };
    Item::Path(PathItem { path, fill: None, stroke: Some(stroke) })
}

/// Depth of the stroke of a ruler, mm: of so many of which `whole` make one that is numbered.
fn tick(number: u32, whole: u32) -> f64 {
    match number % whole {
        0 => 5.0,
        half if half * 2 == whole => 3.5,
        _ => 2.0,
    }
}

/// The drawing in the making.
struct Sheet {
    items: Vec<Item>,
}

impl Sheet {
    fn middle(&mut self, words: String, at: Point) {
        self.items.push(Item::Text(TextItem { anchor: Anchor::Middle, ..TextItem::new(words, at, LETTERS.0) }));
    }

    /// The square, with how many stitches and rounds it holds.
    fn square(&mut self, plan: &Plan, size: &SizePlan, words: &Words, corner: Point) {
        let square = Rect::new(corner.x, corner.y, corner.x + SQUARE, corner.y + SQUARE);
        self.items.push(line(square.to_path(CURVE), LINES.1));
        let language = plan.design.language;
        let mut said = vec![format!("{}\u{a0}cm", decimal(SQUARE / 10.0, 0, language))];
        if let Some(round) = size.rounds.first() {
            let gauge = plan.gauge_of(round);
            let writer = Writer { words, terms: plan.design.terms };
            let count = |one: Mm| decimal(SQUARE / one.mm().max(0.1), 1, language);
            let (stitches, rounds, stitch) = (count(gauge.width), count(gauge.height), writer.short(round.stitch));
            let args = [("stitches", &*stitches), ("stitch", &*stitch), ("rounds", &*rounds)];
            said.push(words.with("true-size-square", &args.map(|(name, text)| (name, Arg::Text(text)))));
        }
        let lines: Vec<String> =
            said.iter().flat_map(|words| wrap(words, Face::Regular, LETTERS.0, SQUARE - 4.0)).collect();
        let first = square.center().y - LETTERS.1 * (lines.len() as f64 - 1.0) / 2.0;
        for (number, words) in lines.into_iter().enumerate() {
            let y = first + LETTERS.1 * number as f64 + Face::Regular.cap_height(LETTERS.0) / 2.0;
            self.middle(words, Point::new(square.center().x, y));
        }
    }

    /// The ruler: centimetres above, inches below. Gives its foot.
    fn ruler(&mut self, corner: Point) -> f64 {
        let level = corner.y + LETTERS.1 + 5.0;
        let long = f64::from(RULER.0) * 10.0;
        let mut path = BezPath::new();
        let mut stroke = |x: f64, down: f64| {
            path.move_to((corner.x + x, level));
            path.line_to((corner.x + x, level + down));
        };
        for mm in 0..=RULER.0 * 10 {
            stroke(f64::from(mm), -tick(mm, 10));
        }
        // Six inches are longer than the ruler.
        for eighth in 0..RULER.1 * 8 {
            stroke(f64::from(eighth) * 25.4 / 8.0, tick(eighth, 8));
        }
        path.move_to((corner.x, level));
        path.line_to((corner.x + long, level));
        self.items.push(line(path, LINES.1));
        for cm in 0..=RULER.0 {
            let words = if cm == RULER.0 { format!("{cm}\u{a0}cm") } else { cm.to_string() };
            self.middle(words, Point::new(corner.x + f64::from(cm) * 10.0, level - 6.0));
        }
        let below = level + 6.0 + Face::Regular.cap_height(LETTERS.0);
        for inch in 0..RULER.1 {
            let words = if inch + 1 == RULER.1 { format!("{inch}\u{a0}in") } else { inch.to_string() };
            self.middle(words, Point::new(corner.x + f64::from(inch) * 25.4, below));
        }
        below + 1.0
    }
}
