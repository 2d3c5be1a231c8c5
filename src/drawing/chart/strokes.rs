//! The strokes of symbols as straight pieces of some thickness, and by how much those of two meet.

use kurbo::{Line, ParamCurve, PathEl, Point, Rect, Shape};

use crate::drawing::{ROUGH, Symbol};
use crate::units::{EPSILON, TOLERANCE};

/// What the numbers of a drawing are rounded by, mm: feet nearer than this are one foot, and symbols that meet by less
/// don't meet.
pub(super) const ROUNDED: f64 = 0.001;

/// Share of their height over which symbols from one foot may meet.
const SHARED: f64 = 0.6;

/// Straight pieces with half their width.
pub(super) type Strokes = Vec<(Line, f64)>;

/// Straight pieces of a symbol with half their width; a filled dot is a point as thick as itself.
pub(super) fn flatten(symbol: &Symbol) -> Strokes {
    let mut lines = Vec::new();
    for item in &symbol.paths {
        let half = item.stroke.as_ref().map_or(0.0, |stroke| stroke.width / 2.0);
        let dots = item.path.elements().iter().any(|element| matches!(element, PathEl::CurveTo(..)));
        // The outline of a filled wedge stands for it; a filled dot becomes a point as thick as itself.
        if item.fill.is_some() && dots {
            let room = item.path.bounding_box();
            lines.push((Line::new(room.center(), room.center()), half + room.width() / 2.0));
            continue;
        }
        let (mut at, mut start) = (Point::ZERO, Point::ZERO);
        kurbo::flatten(&item.path, ROUGH, |element| match element {
            PathEl::MoveTo(to) => (at, start) = (to, to),
            PathEl::LineTo(to) | PathEl::QuadTo(_, to) | PathEl::CurveTo(_, _, to) => {
                lines.push((Line::new(at, to), half));
                at = to;
            }
            PathEl::ClosePath => lines.push((Line::new(at, start), half)),
        });
    }
    lines
}

/// The room that strokes take.
pub(super) fn extent(strokes: &[(Line, f64)]) -> Rect {
    let boxes = strokes.iter().map(|(line, half)| line.bounding_box().inflate(*half, *half));
    boxes.reduce(|all, one| all.union(one)).unwrap_or_default()
}

/// By how much two symbols meet. From one foot they may rise together, but not to their heads.
pub(super) fn meet((one, foot): (&[(Line, f64)], Point), (other, other_foot): (&[(Line, f64)], Point)) -> f64 {
    if (other_foot - foot).hypot() > ROUNDED {
        return depth(one, other);
    }
    // Of the shorter one: above that the longer stands free anyway.
    let clear = SHARED * reach(one, foot).min(reach(other, foot));
    depth(&beyond(one, foot, clear), &beyond(other, foot, clear))
}

/// How far the ends of strokes reach from a foot.
fn reach(strokes: &[(Line, f64)], foot: Point) -> f64 {
    strokes.iter().map(|(line, _)| (line.p1 - foot).hypot()).fold(0.0, f64::max)
}

/// What of a symbol is further than so much from its foot.
fn beyond(strokes: &[(Line, f64)], foot: Point, clear: f64) -> Strokes {
    const PIECES: u32 = 12;
    let step = 1.0 / f64::from(PIECES);
    let mut kept = Strokes::new();
    for (line, half) in strokes {
        let pieces = (0..PIECES).map(|i| line.subsegment(f64::from(i) * step..f64::from(i + 1) * step));
        let outside = pieces.filter(|line| (line.p0 - foot).hypot().min((line.p1 - foot).hypot()) > clear);
        kept.extend(outside.map(|line| (line, *half)));
    }
    kept
}

/// By how much the strokes of two symbols meet; below zero for what lies between them.
pub(super) fn depth(one: &[(Line, f64)], other: &[(Line, f64)]) -> f64 {
    let mut deepest = f64::NEG_INFINITY;
    for (line, half) in one {
        for (with, other_half) in other {
            // Two pieces are no nearer than the boxes round them: most pairs need no closer look.
            let most = half + other_half - apart(*line, *with);
            if most > deepest {
                deepest = deepest.max(half + other_half - distance(*line, *with));
            }
        }
    }
    deepest
}

/// The greater of the gaps between the boxes of two straight pieces across and down; 0 where the boxes overlap.
fn apart(one: Line, other: Line) -> f64 {
    let gap = |a: f64, b: f64, c: f64, d: f64| (c.min(d) - a.max(b)).max(a.min(b) - c.max(d));
    let across = gap(one.p0.x, one.p1.x, other.p0.x, other.p1.x);
    across.max(gap(one.p0.y, one.p1.y, other.p0.y, other.p1.y)).max(0.0)
}

/// Distance of two straight pieces.
fn distance(one: Line, other: Line) -> f64 {
    let crossing = one.crossing_point(other).is_some_and(|at| on(one, at) < EPSILON && on(other, at) < EPSILON);
    if crossing {
        return 0.0;
    }
    let ends = [on(one, other.p0), on(one, other.p1), on(other, one.p0), on(other, one.p1)];
    ends.into_iter().fold(f64::INFINITY, f64::min)
}

/// Distance of a point from a straight piece.
fn on(line: Line, point: Point) -> f64 {
    let way = line.p1 - line.p0;
    let share = ((point - line.p0).dot(way) / way.hypot2().max(TOLERANCE * TOLERANCE)).clamp(0.0, 1.0);
    (line.eval(share) - point).hypot()
}
