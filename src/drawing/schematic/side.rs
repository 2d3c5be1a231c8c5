//! The side view: outlines, folds, centre line, part names and dimensions.

use kurbo::{Point, Vec2};

use super::dimension::Dimension;
use super::sheet::Sheet;
use super::smooth::smooth;
use super::table::Shown;
use super::{Scene, Sized, dress, head, place};
use crate::drawing::Ink;
use crate::geometry::sideview::{Measure, MeasureKind};
use crate::units::{EPSILON, TOLERANCE};

/// Steps from one round to the next in which outlines are drawn.
pub(super) const STEPS: usize = 4;

/// Draws the side view with its axis at x = 0. Gives whether most dimensions found their line.
pub(super) fn draw(scene: &Scene<'_>, measures: &mut [Shown], sheet: &mut Sheet) -> bool {
    let Some(largest) = scene.master() else { return true };
    dress::bands(scene, largest, sheet);
    outline(scene, largest, sheet);
    dress::cuff(scene, largest, sheet);
    dress::opening(scene, largest, sheet);
    folds(scene, largest, sheet);
    dress::rim(scene, largest, sheet);
    let headed = scene.plan.design.kind.row().worn && scene.options.head && scene.sizes.len() == 1;
    if headed {
        head::draw(scene, largest, sheet);
    }
    centre_line(scene, largest, sheet);
    let complete = dimensions(scene, largest, measures, sheet);
    place::part_names(scene, largest, sheet);
    if headed {
        head::name(scene, largest, sheet);
    }
    complete
}

impl Scene<'_> {
    /// A point of a size on paper.
    pub(super) fn on_paper(&self, point: Point) -> Point {
        Point::new(point.x * self.scale, point.y * self.scale)
    }

    /// Right half of the outline of a size on paper.
    pub(super) fn right(&self, size: &Sized<'_>) -> Vec<Point> {
        size.view.outline.iter().map(|&p| self.on_paper(p)).collect()
    }
}

/// The same point on the left.
pub(super) fn mirror(point: Point) -> Point {
    Point::new(-point.x, point.y)
}

/// The whole outline, closed by the line on which the piece ends.
pub(super) fn outline(scene: &Scene<'_>, size: &Sized<'_>, sheet: &mut Sheet) {
    let right = smooth(&scene.right(size), &sharp(size), STEPS);
    closed(hanging(size, &right, STEPS), sheet);
}

/// Of the right half of an outline in so many steps a round what is not folded up.
pub(super) fn hanging<'r>(size: &Sized<'_>, right: &'r [Point], steps: usize) -> &'r [Point] {
    let fold = size.view.fold().map_or(right.len(), |fold| steps * fold + 1);
    right.get(..fold).unwrap_or(right)
}

/// The outline whose right half, on paper, is this.
pub(super) fn closed(right: &[Point], sheet: &mut Sheet) {
    let mut around: Vec<Point> = right.iter().rev().copied().map(mirror).collect();
    around.extend(right.iter().skip(usize::from(right.first().is_some_and(|p| p.x < EPSILON))));
    around.extend(around.first().copied());
    sheet.line(&around, sheet.style.wide, Ink::BLACK, Vec::new());
}

/// Which points of the outline are sharp folds.
pub(super) fn sharp(size: &Sized<'_>) -> Vec<bool> {
    let folds_sharply = size.view.folds.iter().filter(|fold| fold.sharp);
    size.view.outline.iter().map(|at| folds_sharply.clone().any(|fold| fold.at == *at)).collect()
}

/// Where parts end and the fabric folds.
fn folds(scene: &Scene<'_>, size: &Sized<'_>, sheet: &mut Sheet) {
    for fold in size.view.folds.iter().filter(|fold| !size.view.covers(fold.at.y)) {
        let right = scene.on_paper(fold.at);
        // A part that merely ends is an imaginary edge: its line stops short of the outline.
        let inset = if fold.sharp { 0.0 } else { 1.5_f64.min(right.x / 4.0) };
        let end = Point::new(right.x - inset, right.y);
        if end.x > 1.0 {
            sheet.thin(mirror(end), end);
        }
    }
}

/// A long-dash-dot line on the axis, a little longer than the piece.
fn centre_line(scene: &Scene<'_>, size: &Sized<'_>, sheet: &mut Sheet) {
    let tall = size.view.tall * scene.scale;
    sheet.centre_line([Point::new(0.0, -4.0), Point::new(0.0, tall + 4.0)]);
}

/// Shortest first, so that it comes to lie nearest to the outline. What finds no room goes into the list instead.
fn dimensions(scene: &Scene<'_>, size: &Sized<'_>, measures: &mut [Shown], sheet: &mut Sheet) -> bool {
    let mut listed = 0;
    let count = measures.iter().filter(|shown| shown.drawn).count();
    let mut drawn: Vec<&mut Shown> = measures.iter_mut().filter(|shown| shown.drawn).collect();
    drawn.sort_by(|a, b| {
        rank(a.measure.kind).cmp(&rank(b.measure.kind)).then(a.measure.value.mm().total_cmp(&b.measure.value.mm()))
    });
    for shown in drawn {
        shown.drawn = places(scene, size, &shown.measure).into_iter().any(|(from, to, off)| {
            let beyond = if off.x.abs() < EPSILON { lowest(scene, size, off) } else { f64::NEG_INFINITY };
            Dimension { from, to, off, beyond, value: &shown.label }.draw(sheet, 6)
        });
        listed += usize::from(!shown.drawn);
    }
    2 * listed <= count
}

/// Which kinds are drawn first: those that have the fewest places.
fn rank(kind: MeasureKind) -> u8 {
    match kind {
        MeasureKind::Along | MeasureKind::Folded => 0,
        MeasureKind::AcrossFlats => 1,
        MeasureKind::Across | MeasureKind::AcrossCorners | MeasureKind::Widest => 2,
        MeasureKind::Height => 3,
        MeasureKind::Around | MeasureKind::LyingFlat => 4,
    }
}

/// How far the outline reaches up or down, along `off`.
fn lowest(scene: &Scene<'_>, size: &Sized<'_>, off: Vec2) -> f64 {
    let points = scene.right(size).into_iter();
    points.map(|p| p.to_vec2().dot(off)).fold(f64::NEG_INFINITY, f64::max)
}

/// Where a dimension may stand, best first: its two ends and the way it stands off.
fn places(scene: &Scene<'_>, size: &Sized<'_>, measure: &Measure) -> Vec<(Point, Point, Vec2)> {
    let (from, to) = (scene.on_paper(measure.from), scene.on_paper(measure.to));
    let tall = size.view.tall * scene.scale;
    match measure.kind {
        MeasureKind::Along | MeasureKind::Folded => {
            let way = to - from;
            let length = way.hypot();
            if length < TOLERANCE {
                return Vec::new();
            }
            // Outward, seen from the axis; an upright part has it on its right.
            let square = way.turn_90() / length;
            let out = upright(if square.x >= 0.0 { square } else { -square });
            let left = (mirror(from), mirror(to), Vec2::new(-out.x, out.y));
            // The part that reaches furthest stands on the right, what it would hide on the left.
            let furthest = from.x.max(to.x) > size.view.reach * scene.scale - 1.0;
            if furthest { vec![(from, to, out), left] } else { vec![left, (from, to, out)] }
        }
        MeasureKind::Across | MeasureKind::AcrossFlats | MeasureKind::AcrossCorners | MeasureKind::Widest => {
            let upper = (from, to, Vec2::new(0.0, -1.0));
            let lower = (from, to, Vec2::new(0.0, 1.0));
            if to.y < tall / 2.0 { vec![upper, lower] } else { vec![lower, upper] }
        }
        MeasureKind::Height => {
            let x = size.view.reach * scene.scale;
            let right = scene.right(size);
            let [top, foot] = [0.0, tall].map(|y| {
                let near = right.iter().filter(|p| (p.y - y).abs() < 1.0).map(|p| p.x);
                Point::new(near.fold(0.0, f64::max).min(x), y)
            });
            vec![(top, foot, Vec2::new(1.0, 0.0)), (mirror(top), mirror(foot), Vec2::new(-1.0, 0.0))]
        }
        MeasureKind::Around | MeasureKind::LyingFlat => Vec::new(),
    }
}

/// A direction that is level but for a few degrees, made level: a side is dimensioned upright though its rounds sway.
fn upright(out: Vec2) -> Vec2 {
    if out.y.abs() < 0.08 { Vec2::new(out.x.signum(), 0.0) } else { out }
}
