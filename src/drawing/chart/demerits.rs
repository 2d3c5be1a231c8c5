//! Named demerits of a drawn chart: what a critical eye would find in it.

use std::collections::BTreeMap;

use kurbo::{Affine, Circle, Line, Point, Rect, Shape};

use super::options::LEAST_CELL;
use super::strokes::{ROUNDED, Strokes, depth, extent, flatten, meet};
use crate::drawing::{Drawing, Ends, Group, Ink, Item, Origin, PathItem, ROUGH, Role, Stroke, SymbolItem, TextItem};
use crate::units::{Angle, TOLERANCE};

/// A flaw of placement.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum DemeritKind {
    /// Strokes of two symbols meet; the amount is by how many millimetres.
    Overlap,
    /// A symbol leans; the amount is degrees from the radius.
    Lean,
    /// Two symbols of a round stand too close to be read; the amount is their distance in millimetres.
    Crowding,
    /// A line of text touches strokes; the amount is by how many millimetres.
    LabelOnInk,
}

/// One demerit in its place.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Demerit {
    /// What is wrong.
    pub kind: DemeritKind,
    /// The round it is in; 0 outside the rounds.
    pub round: u32,
    /// How wrong, in the unit of the kind.
    pub amount: f64,
    /// Where.
    pub at: Point,
}

/// Degrees from the radius that a symbol may lean.
const MOST_LEAN: f64 = 40.0;

/// A label that touches strokes by less than this is no demerit, mm: its letters don't fill the line they are measured as.
const LABEL_GRACE: f64 = 0.02;

/// Least and greatest side of the squares in which neighbours are looked for, mm.
const SQUARES: (f64, f64) = (0.2, 5.0);

/// One placed symbol.
struct Standing {
    round: u32,
    strokes: Strokes,
    foot: Point,
    middle: Point,
    lean: f64,
    loose: bool,
}

/// A symbol's strokes as it is defined, and whether it lies loose.
type Defined = (Strokes, bool);

/// Finds the demerits of a chart, in the order of its rounds. Symbols that share a foot may meet there. Time is linear
/// in the symbols as long as they are spread over the page.
pub fn demerits(drawing: &Drawing) -> Vec<Demerit> {
    let mut standing = Vec::new();
    let mut labels = Vec::new();
    let defined = drawing.symbols.iter().map(|(key, symbol)| (key.as_str(), (flatten(symbol), symbol.loose)));
    let defined: BTreeMap<&str, Defined> = defined.collect();
    for item in &drawing.items {
        gather(item, 0, &defined, &mut standing, &mut labels);
    }
    let mut found = alone(&standing);
    found.extend(meeting(&standing));
    found.extend(touched(&standing, &labels));
    found.sort_by_key(|demerit| (demerit.round, demerit.kind));
    found
}

fn gather<'a>(
    item: &'a Item,
    round: u32,
    defined: &BTreeMap<&str, Defined>,
    standing: &mut Vec<Standing>,
    labels: &mut Vec<(u32, &'a TextItem)>,
) {
    match item {
        Item::Path(_) => {}
        Item::Text(text) => labels.push((round, text)),
        Item::Symbol(symbol) => standing.extend(defined.get(symbol.key.as_str()).map(|of| place(symbol, round, of))),
        Item::Group(group) => {
            let round = match group.origin {
                Origin::Round(round) => round,
                Origin::None | Origin::Part(_) => round,
            };
            group.items.iter().for_each(|item| gather(item, round, defined, standing, labels));
        }
    }
}

fn place(symbol: &SymbolItem, round: u32, (lines, loose): &Defined) -> Standing {
    let strokes: Vec<_> = lines.iter().map(|(line, half)| (symbol.place * *line, *half)).collect();
    let foot = symbol.place * Point::ZERO;
    let middle = extent(&strokes).center();
    let (up, out) = (middle - foot, foot.to_vec2());
    let lean = if out.hypot() < TOLERANCE || up.hypot() < TOLERANCE {
        0.0
    } else {
        Angle::of_vector(up.dot(out), up.cross(out)).degrees().abs()
    };
    Standing { round, strokes, foot, middle, lean, loose: *loose }
}

impl Standing {
    /// True where two symbols are much nearer at their feet than in their middles.
    fn fans_out_with(&self, other: &Self) -> bool {
        (other.foot - self.foot).hypot() < 0.6 * (other.middle - self.middle).hypot()
    }
}

/// Lean, and crowding of one symbol on the next of its round.
fn alone(standing: &[Standing]) -> Vec<Demerit> {
    let mut found = Vec::new();
    for (index, one) in standing.iter().enumerate().filter(|(_, one)| one.round > 0) {
        let next = standing.get(index + 1);
        let before = index.checked_sub(1).and_then(|before| standing.get(before));
        // What fans out from one foot leans, and stands close, of its nature.
        let fanned = [next, before].into_iter().flatten().any(|other| one.fans_out_with(other));
        if one.lean > MOST_LEAN && !fanned {
            found.push(Demerit { kind: DemeritKind::Lean, round: one.round, amount: one.lean, at: one.middle });
        }
        // Chains may touch: they are read as a row.
        let Some(next) = next.filter(|next| next.round == one.round && !one.loose && !next.loose) else { continue };
        let apart = (next.middle - one.middle).hypot();
        if apart < 0.8 * LEAST_CELL.mm() && !fanned {
            found.push(Demerit { kind: DemeritKind::Crowding, round: one.round, amount: apart, at: one.middle });
        }
    }
    found
}

/// Side of squares that hold a few symbols each, however small these are: with more of them in a square, each would be held
/// against many that it can't meet.
fn side(standing: &[Standing]) -> f64 {
    let rooms = standing.iter().map(|one| extent(&one.strokes)).map(|room| room.width().max(room.height()));
    let mean = rooms.sum::<f64>() / standing.len().max(1) as f64;
    (1.5 * mean).clamp(SQUARES.0, SQUARES.1)
}

/// Squares of a side that a rectangle touches.
fn squares(rect: Rect, side: f64) -> impl Iterator<Item = (i64, i64)> {
    let [x0, x1, y0, y1] = [rect.x0, rect.x1, rect.y0, rect.y1].map(|value| (value / side).floor() as i64);
    let (xs, ys) = (x0..=x1, y0..=y1);
    xs.flat_map(move |x| ys.clone().map(move |y| (x, y)))
}

fn meeting(standing: &[Standing]) -> Vec<Demerit> {
    let mut grid: BTreeMap<(i64, i64), Vec<usize>> = BTreeMap::new();
    let (mut found, side) = (Vec::new(), side(standing));
    let boxes: Vec<Rect> = standing.iter().map(|one| extent(&one.strokes)).collect();
    for (index, one) in standing.iter().enumerate() {
        // Only what lies in the same squares can meet it, so time stays linear. Sorted, so that the order is that of
        // the rounds.
        let mut near: Vec<usize> =
            squares(boxes[index], side).filter_map(|at| grid.get(&at)).flatten().copied().collect();
        near.sort_unstable();
        near.dedup();
        for other in near {
            // Boxes first: most of those in a square don't come near.
            let depth = if boxes[index].overlaps(boxes[other]) {
                meet((&one.strokes, one.foot), (&standing[other].strokes, standing[other].foot))
            } else {
                0.0
            };
            if depth > ROUNDED {
                let at = one.middle.midpoint(standing[other].middle);
                found.push(Demerit { kind: DemeritKind::Overlap, round: one.round, amount: depth, at });
            }
        }
        squares(boxes[index], side).for_each(|at| grid.entry(at).or_default().push(index));
    }
    found
}

fn touched(standing: &[Standing], labels: &[(u32, &TextItem)]) -> Vec<Demerit> {
    let side = side(standing);
    let mut grid: BTreeMap<(i64, i64), Vec<usize>> = BTreeMap::new();
    for (index, (_, label)) in labels.iter().enumerate() {
        squares(label.bounds(), side).for_each(|at| grid.entry(at).or_default().push(index));
    }
    let mut found = Vec::new();
    for one in standing {
        let room = extent(&one.strokes);
        let mut near: Vec<usize> = squares(room, side).filter_map(|at| grid.get(&at)).flatten().copied().collect();
        near.sort_unstable();
        near.dedup();
        for (round, label) in near.into_iter().filter_map(|index| labels.get(index)) {
            let depth = depth(&one.strokes, &body(label));
            if depth > LABEL_GRACE {
                found.push(Demerit { kind: DemeritKind::LabelOnInk, round: *round, amount: depth, at: label.at });
            }
        }
    }
    found
}

/// The middle line of a line of text, as thick as its small letters are high.
fn body(label: &TextItem) -> Strokes {
    let level = TextItem { turn: 0.0, at: Point::ZERO, ..label.clone() }.bounds();
    // Ascenders and descenders are thin and few: the band of the small letters is what must stay clear.
    let half = 0.25 * label.size;
    let set = Affine::translate(label.at.to_vec2()) * Angle::from_degrees(label.turn).rotation();
    let line = Line::new((level.x0 + half, -half), (level.x1 - half, -half));
    vec![(set * line, half)]
}

/// The demerits as something to look at: a ring round every place, named.
pub(super) fn overlay(drawing: &Drawing) -> Item {
    let ink = Ink([0xc0, 0, 0x40]);
    let mut items = Vec::new();
    for demerit in demerits(drawing) {
        let path = Circle::new(demerit.at, 1.6).to_path(ROUGH);
        let stroke = Stroke { width: 0.3, ink, ends: Ends::Round, dashes: Vec::new() };
        items.push(Item::Path(PathItem { path, fill: None, stroke: Some(stroke) }));
        let text = format!("{:?} {:.2}", demerit.kind, demerit.amount);
        let at = demerit.at + kurbo::Vec2::new(1.8, 0.5);
        items.push(Item::Text(TextItem { ink, halo: 0.2, ..TextItem::new(text, at, 1.6) }));
    }
    Item::Group(Group { id: "demerits".to_owned(), role: Role::Decoration, origin: Origin::None, items })
}
