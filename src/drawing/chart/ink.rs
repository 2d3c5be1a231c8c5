//! The ink of symbols as straight pieces of some thickness, and by how much two inks meet.

use kurbo::{Line, ParamCurve, PathEl, Point, Rect, Shape};

use crate::drawing::Symbol;

/// Feet nearer than this are one foot, mm.
const ONE_FOOT: f64 = 0.001;

/// Share of their height over which symbols from one foot may meet.
const SHARED: f64 = 0.6;

/// Straight pieces with half their width.
pub(super) type Strokes = Vec<(Line, f64)>;

/// Straight pieces of a symbol's ink with half their width; a filled dot is a point as thick as itself.
pub(super) fn flatten(symbol: &Symbol) -> Strokes {
    let mut lines = Vec::new();
    for item in &symbol.paths {
        let half = item.stroke.as_ref().map_or(0.0, |stroke| stroke.width / 2.0);
        let dots = item.path.elements().iter().any(|element| matches!(element, PathEl::CurveTo(..)));
        if item.fill.is_some() && dots {
            let room = item.path.bounding_box();
            lines.push((Line::new(room.center(), room.center()), half + room.width() / 2.0));
            continue;
        }
        let (mut at, mut start) = (Point::ZERO, Point::ZERO);
        kurbo::flatten(&item.path, 0.01, |element| match element {
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

/// The room that ink takes.
pub(super) fn extent(strokes: &[(Line, f64)]) -> Rect {
    let boxes = strokes.iter().map(|(line, half)| line.bounding_box().inflate(*half, *half));
    boxes.reduce(|all, one| all.union(one)).unwrap_or_default()
}

/// By how much two symbols meet. From one foot they may rise together, but not to their heads.
pub(super) fn meet((one, foot): (&[(Line, f64)], Point), (other, other_foot): (&[(Line, f64)], Point)) -> f64 {
    if (other_foot - foot).hypot() > ONE_FOOT {
        return depth(one, other);
    }
    let reach = |ink: &[(Line, f64)]| ink.iter().map(|(line, _)| (line.p1 - foot).hypot()).fold(0.0, f64::max);
    let clear = SHARED * reach(one).min(reach(other));
    depth(&beyond(one, foot, clear), &beyond(other, foot, clear))
}

/// The ink of a symbol that is further than so much from its foot.
fn beyond(ink: &[(Line, f64)], foot: Point, clear: f64) -> Strokes {
    const PIECES: u32 = 12;
    let pieces = |(line, half): &(Line, f64)| {
        let (line, half, step) = (*line, *half, 1.0 / f64::from(PIECES));
        (0..PIECES).map(move |i| (line.subsegment(f64::from(i) * step..f64::from(i + 1) * step), half))
    };
    let outside = |(line, _): &(Line, f64)| (line.p0 - foot).hypot().min((line.p1 - foot).hypot()) > clear;
    ink.iter().flat_map(pieces).filter(outside).collect()
}

/// By how much two inks meet; below zero for what lies between them.
pub(super) fn depth(one: &[(Line, f64)], other: &[(Line, f64)]) -> f64 {
    let mut deepest = f64::NEG_INFINITY;
    for (line, half) in one {
        for (with, other_half) in other {
            deepest = deepest.max(half + other_half - distance(*line, *with));
        }
    }
    deepest
}

/// Distance of two straight pieces.
fn distance(one: Line, other: Line) -> f64 {
    let crossing = one.crossing_point(other).is_some_and(|at| on(one, at) < 1e-9 && on(other, at) < 1e-9);
    if crossing {
        return 0.0;
    }
    let ends = [on(one, other.p0), on(one, other.p1), on(other, one.p0), on(other, one.p1)];
    ends.into_iter().fold(f64::INFINITY, f64::min)
}

/// Distance of a point from a straight piece.
fn on(line: Line, point: Point) -> f64 {
    let way = line.p1 - line.p0;
    let share = ((point - line.p0).dot(way) / way.hypot2().max(1e-12)).clamp(0.0, 1.0);
    (line.eval(share) - point).hypot()
}
