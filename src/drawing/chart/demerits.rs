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

/// Most places that are each shown: more can't be told apart, and of them the worst of every round and kind stand for all.
const MOST_SHOWN: usize = 1000;

/// One placed symbol. Its strokes are those of its definition: a chart of a hundred thousand symbols holds them once.
struct Standing<'d> {
    round: u32,
    of: &'d Defined,
    place: Affine,
    room: Rect,
    foot: Point,
    middle: Point,
    lean: f64,
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

fn gather<'a, 'd>(
    item: &'a Item,
    round: u32,
    defined: &'d BTreeMap<&str, Defined>,
    standing: &mut Vec<Standing<'d>>,
    labels: &mut Vec<(u32, &'a TextItem)>,
) {
    match item {
        Item::Path(_) | Item::Photo(_) => {}
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

fn place<'d>(symbol: &SymbolItem, round: u32, of: &'d Defined) -> Standing<'d> {
    let foot = symbol.place * Point::ZERO;
    let room = extent(&placed(&of.0, symbol.place));
    let middle = room.center();
    let (up, out) = (middle - foot, foot.to_vec2());
    let lean = if out.hypot() < TOLERANCE || up.hypot() < TOLERANCE {
        0.0
    } else {
        Angle::of_vector(up.dot(out), up.cross(out)).degrees().abs()
    };
    Standing { round, of, place: symbol.place, room, foot, middle, lean }
}

fn placed(strokes: &Strokes, place: Affine) -> Strokes {
    strokes.iter().map(|(line, half)| (place * *line, *half)).collect()
}

impl Standing<'_> {
    fn strokes(&self) -> Strokes {
        placed(&self.of.0, self.place)
    }

    fn loose(&self) -> bool {
        self.of.1
    }

    /// True where two symbols are much nearer at their feet than in their middles.
    fn fans_out_with(&self, other: &Self) -> bool {
        (other.foot - self.foot).hypot() < 0.6 * (other.middle - self.middle).hypot()
    }
}

/// Lean, and crowding of one symbol on the next of its round.
fn alone(standing: &[Standing<'_>]) -> Vec<Demerit> {
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
        let Some(next) = next.filter(|next| next.round == one.round && !one.loose() && !next.loose()) else { continue };
        let apart = (next.middle - one.middle).hypot();
        if apart < 0.8 * LEAST_CELL.mm() && !fanned {
            found.push(Demerit { kind: DemeritKind::Crowding, round: one.round, amount: apart, at: one.middle });
        }
    }
    found
}

/// Side of squares that hold a few symbols each, however small these are: with more of them in a square, each would be held
/// against many that it can't meet.
fn side(standing: &[Standing<'_>]) -> f64 {
    let rooms = standing.iter().map(|one| one.room.width().max(one.room.height()));
    let mean = rooms.sum::<f64>() / standing.len().max(1) as f64;
    (1.5 * mean).clamp(SQUARES.0, SQUARES.1)
}

/// Squares of a side that a rectangle touches.
fn squares(rect: Rect, side: f64) -> impl Iterator<Item = (i64, i64)> {
    let [x0, x1, y0, y1] = [rect.x0, rect.x1, rect.y0, rect.y1].map(|value| (value / side).floor() as i64);
    let (xs, ys) = (x0..=x1, y0..=y1);
    xs.flat_map(move |x| ys.clone().map(move |y| (x, y)))
}

fn meeting(standing: &[Standing<'_>]) -> Vec<Demerit> {
    let mut grid: BTreeMap<(i64, i64), Vec<usize>> = BTreeMap::new();
    let (mut found, side) = (Vec::new(), side(standing));
    for (index, one) in standing.iter().enumerate() {
        // Only what lies in the same squares can meet it, so time stays linear. Sorted, so that the order is that of
        // the rounds.
        let mut near: Vec<usize> = squares(one.room, side).filter_map(|at| grid.get(&at)).flatten().copied().collect();
        near.sort_unstable();
        near.dedup();
        let strokes = one.strokes();
        // Boxes first: most of those in a square don't come near.
        for other in near.into_iter().map(|other| &standing[other]).filter(|other| one.room.overlaps(other.room)) {
            let depth = meet((&strokes, one.foot), (&other.strokes(), other.foot));
            if depth > ROUNDED {
                let at = one.middle.midpoint(other.middle);
                found.push(Demerit { kind: DemeritKind::Overlap, round: one.round, amount: depth, at });
            }
        }
        squares(one.room, side).for_each(|at| grid.entry(at).or_default().push(index));
    }
    found
}

fn touched(standing: &[Standing<'_>], labels: &[(u32, &TextItem)]) -> Vec<Demerit> {
    let side = side(standing);
    let mut grid: BTreeMap<(i64, i64), Vec<usize>> = BTreeMap::new();
    for (index, (_, label)) in labels.iter().enumerate() {
        squares(label.bounds(), side).for_each(|at| grid.entry(at).or_default().push(index));
    }
    let mut found = Vec::new();
    for one in standing {
        let mut near: Vec<usize> = squares(one.room, side).filter_map(|at| grid.get(&at)).flatten().copied().collect();
        near.sort_unstable();
        near.dedup();
        for (round, label) in near.into_iter().filter_map(|index| labels.get(index)) {
            let depth = depth(&one.strokes(), &body(label));
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

/// The worst of each kind in each round, with how many it stands for.
fn worst(found: Vec<Demerit>) -> Vec<(Demerit, usize)> {
    if found.len() <= MOST_SHOWN {
        return found.into_iter().map(|demerit| (demerit, 1)).collect();
    }
    // The less apart, the worse crowded.
    let badness = |demerit: &Demerit| match demerit.kind {
        DemeritKind::Crowding => -demerit.amount,
        DemeritKind::Overlap | DemeritKind::Lean | DemeritKind::LabelOnInk => demerit.amount,
    };
    let alike = found.chunk_by(|one, other| (one.round, one.kind) == (other.round, other.kind));
    let worst = alike.filter_map(|alike| {
        let worst = alike.iter().max_by(|one, other| badness(one).total_cmp(&badness(other)))?;
        Some((*worst, alike.len()))
    });
    worst.collect()
}

/// The demerits as something to look at: a ring round every place, named.
pub(super) fn overlay(drawing: &Drawing) -> Item {
    let ink = Ink([0xc0, 0, 0x40]);
    let mut items = Vec::new();
    for (demerit, of) in worst(demerits(drawing)) {
        let path = Circle::new(demerit.at, 1.6).to_path(ROUGH);
        let stroke = Stroke { width: 0.3, ink, ends: Ends::Round, dashes: Vec::new() };
        items.push(Item::Path(PathItem { path, fill: None, stroke: Some(stroke) }));
        let many = if of > 1 { format!(" (worst of {of})") } else { String::new() };
        let text = format!("{:?} {:.2}{many}", demerit.kind, demerit.amount);
        let at = demerit.at + kurbo::Vec2::new(1.8, 0.5);
        items.push(Item::Text(TextItem { ink, halo: 0.2, ..TextItem::new(text, at, 1.6) }));
    }
    Item::Group(Group { id: "demerits".to_owned(), role: Role::Decoration, origin: Origin::None, items })
}
