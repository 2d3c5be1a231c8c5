//! Named demerits of a drawn chart: what a critical eye would mark in it.

use std::collections::BTreeMap;

use kurbo::{Affine, Circle, Line, Point, Rect, Shape};

use super::ink::{Strokes, depth, extent, flatten, meet};
use super::options::LEAST_CELL;
use crate::drawing::{Drawing, Ends, Group, Ink, Item, Origin, PathItem, Role, Stroke, SymbolItem, TextItem};
use crate::units::Angle;

/// A flaw of placement.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum DemeritKind {
    /// Ink of two symbols meets; the amount is by how many millimetres.
    Overlap,
    /// A symbol leans; the amount is degrees from the radius.
    Lean,
    /// Two symbols of a round stand too close to be read; the amount is their distance in millimetres.
    Crowding,
    /// A line of text touches ink; the amount is by how many millimetres.
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

/// Symbols that meet by less than this are no demerit, mm: what numbers are rounded by.
const GRACE: f64 = 0.001;

/// The same for a label, whose letters don't fill the line they are measured as.
const LABEL_GRACE: f64 = 0.02;

/// Side of the squares in which neighbours are looked for, mm.
const SQUARE: f64 = 5.0;

/// The ink of one placed symbol.
struct Inked {
    round: u32,
    strokes: Strokes,
    foot: Point,
    middle: Point,
    lean: f64,
    chain: bool,
}

/// Finds the demerits of a chart, in the order of its rounds. Symbols that share a foot may meet there. Time is linear
/// in the symbols as long as they are spread over the page.
pub fn demerits(drawing: &Drawing) -> Vec<Demerit> {
    let mut ink = Vec::new();
    let mut labels = Vec::new();
    let flat: BTreeMap<&str, Strokes> =
        drawing.symbols.iter().map(|(key, symbol)| (key.as_str(), flatten(symbol))).collect();
    for item in &drawing.items {
        gather(item, 0, &flat, &mut ink, &mut labels);
    }
    let mut found = alone(&ink);
    found.extend(meeting(&ink));
    found.extend(touched(&ink, &labels));
    found.sort_by_key(|demerit| (demerit.round, demerit.kind));
    found
}

fn gather<'a>(
    item: &'a Item,
    round: u32,
    flat: &BTreeMap<&str, Strokes>,
    ink: &mut Vec<Inked>,
    labels: &mut Vec<(u32, &'a TextItem)>,
) {
    match item {
        Item::Path(_) => {}
        Item::Text(text) => labels.push((round, text)),
        Item::Symbol(symbol) => ink.extend(flat.get(symbol.key.as_str()).map(|lines| inked(symbol, round, lines))),
        Item::Group(group) => {
            let round = match group.origin {
                Origin::Round(round) => round,
                Origin::None | Origin::Part(_) => round,
            };
            group.items.iter().for_each(|item| gather(item, round, flat, ink, labels));
        }
    }
}

fn inked(symbol: &SymbolItem, round: u32, lines: &[(Line, f64)]) -> Inked {
    let strokes: Vec<_> = lines.iter().map(|(line, half)| (symbol.place * *line, *half)).collect();
    let foot = symbol.place * Point::ZERO;
    let middle = extent(&strokes).center();
    let (up, out) = (middle - foot, foot.to_vec2());
    let lean = if out.hypot() < 1e-6 || up.hypot() < 1e-6 {
        0.0
    } else {
        Angle::of_vector(up.dot(out), up.cross(out)).degrees().abs()
    };
    Inked { round, strokes, foot, middle, lean, chain: symbol.key.starts_with("ch") }
}

/// Lean, and crowding of one symbol on the next of its round.
fn alone(ink: &[Inked]) -> Vec<Demerit> {
    let mut found = Vec::new();
    for (index, one) in ink.iter().enumerate().filter(|(_, one)| one.round > 0) {
        let next = ink.get(index + 1);
        let before = index.checked_sub(1).and_then(|before| ink.get(before));
        let same_foot = |other: &Inked| (other.foot - one.foot).hypot() < 0.6 * (other.middle - one.middle).hypot();
        let fanned = next.is_some_and(same_foot) || before.is_some_and(same_foot);
        if one.lean > MOST_LEAN && !fanned {
            found.push(Demerit { kind: DemeritKind::Lean, round: one.round, amount: one.lean, at: one.middle });
        }
        let Some(next) = next.filter(|next| next.round == one.round && !one.chain && !next.chain) else { continue };
        let apart = (next.middle - one.middle).hypot();
        if apart < 0.8 * LEAST_CELL.mm() && !fanned {
            found.push(Demerit { kind: DemeritKind::Crowding, round: one.round, amount: apart, at: one.middle });
        }
    }
    found
}

/// Squares that a rectangle touches.
fn squares(rect: Rect) -> impl Iterator<Item = (i64, i64)> {
    let square = |value: f64| (value / SQUARE).floor() as i64;
    let (xs, ys) = (square(rect.x0)..=square(rect.x1), square(rect.y0)..=square(rect.y1));
    xs.flat_map(move |x| ys.clone().map(move |y| (x, y)))
}

fn meeting(ink: &[Inked]) -> Vec<Demerit> {
    let mut grid: BTreeMap<(i64, i64), Vec<usize>> = BTreeMap::new();
    let mut found = Vec::new();
    let boxes: Vec<Rect> = ink.iter().map(|one| extent(&one.strokes)).collect();
    for (index, one) in ink.iter().enumerate() {
        let mut near: Vec<usize> = squares(boxes[index]).filter_map(|at| grid.get(&at)).flatten().copied().collect();
        near.sort_unstable();
        near.dedup();
        for other in near {
            let depth = if boxes[index].overlaps(boxes[other]) {
                meet((&one.strokes, one.foot), (&ink[other].strokes, ink[other].foot))
            } else {
                0.0
            };
            if depth > GRACE {
                let at = one.middle.midpoint(ink[other].middle);
                found.push(Demerit { kind: DemeritKind::Overlap, round: one.round, amount: depth, at });
            }
        }
        squares(boxes[index]).for_each(|at| grid.entry(at).or_default().push(index));
    }
    found
}

fn touched(ink: &[Inked], labels: &[(u32, &TextItem)]) -> Vec<Demerit> {
    let mut grid: BTreeMap<(i64, i64), Vec<usize>> = BTreeMap::new();
    for (index, (_, label)) in labels.iter().enumerate() {
        squares(label.bounds()).for_each(|at| grid.entry(at).or_default().push(index));
    }
    let mut found = Vec::new();
    for one in ink {
        let room = extent(&one.strokes);
        let mut near: Vec<usize> = squares(room).filter_map(|at| grid.get(&at)).flatten().copied().collect();
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
    let half = 0.25 * label.size;
    let place = Affine::translate(label.at.to_vec2()) * Angle::from_degrees(label.turn).rotation();
    let line = Line::new((level.x0 + half, -half), (level.x1 - half, -half));
    vec![(place * line, half)]
}

/// The demerits as something to look at: a ring round every place, named.
pub(super) fn overlay(drawing: &Drawing) -> Item {
    let ink = Ink([0xc0, 0, 0x40]);
    let mut items = Vec::new();
    for demerit in demerits(drawing) {
        let path = Circle::new(demerit.at, 1.6).to_path(0.01);
        let stroke = Stroke { width: 0.3, ink, ends: Ends::Round, dashes: Vec::new() };
        items.push(Item::Path(PathItem { path, fill: None, stroke: Some(stroke) }));
        let text = format!("{:?} {:.2}", demerit.kind, demerit.amount);
        let at = demerit.at + kurbo::Vec2::new(1.8, 0.5);
        items.push(Item::Text(TextItem { ink, halo: 0.2, ..TextItem::new(text, at, 1.6) }));
    }
    Item::Group(Group { id: "demerits".to_owned(), role: Role::Decoration, origin: Origin::None, items })
}
