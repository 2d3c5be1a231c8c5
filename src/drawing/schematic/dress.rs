//! The side view dressed: the yarn in bands, the opening as an ellipse, a rim as it folds down, the sizes in a row.

use kurbo::{BezPath, Circle, Ellipse, Point, Shape, Vec2};

use super::sheet::Sheet;
use super::side::{STEPS, hanging, mirror, sharp};
use super::smooth::smooth;
use super::{Scene, Sized};
use crate::craft::Round;
use crate::drawing::palette::tint;
use crate::drawing::{Anchor, CURVE, Ends, Ink, PathItem, Stroke, TextItem};
use crate::font::Face;
use crate::units::Angle;

/// Least relative luminance of a band: black letters stand out from it at 8 : 1.
const LIGHT: f64 = 0.36;
/// What is seen of the inside is so much darker.
const INSIDE: f64 = 0.86;
/// Half the height of the ellipse of an opening as a share of its width, and most and least of it, mm.
const SQUASH: f64 = 0.035;
const HALF_HIGH: (f64, f64) = (0.8, 4.0);
/// Waves of the edge of a ruffle all round, how deep they are in half heights of its ellipse, and points that it is drawn by:
/// a sign of what it does, not a count, which only the piece in space knows.
const WAVES: u32 = 14;
const WAVE: f64 = 0.8;
const AROUND: u32 = 560;
/// An opening narrower than this has no ellipse, mm.
const NARROW: f64 = 6.0;
/// An edge within this much of the top or the foot of the piece is open there, mm.
const NEAR: f64 = 1.0;
/// How far a folded rim stands off the side that it lies on, mm.
const OFF: f64 = 1.2;
/// Long dashes and two dots, in line widths: the other position of what moves (ISO 128-2).
const MOVED: [f64; 6] = [14.0, 3.0, 1.0, 3.0, 1.0, 3.0];
/// Height and width of the largest silhouette at most, and between two of them, mm.
const HIGH: f64 = 16.0;
const WIDE: f64 = 34.0;
const GUTTER: f64 = 5.0;
/// Share of the width that a row of silhouettes takes at most.
const ROW: f64 = 0.9;

/// Rounds of one colour, as indices into the outline: from foot to last edge.
struct Band {
    from: usize,
    to: usize,
    ink: Ink,
}

/// The bands of a size; none where there is no colour or no ink for tints.
fn bands_of(scene: &Scene<'_>, size: &Sized<'_>) -> Vec<Band> {
    let colours = &scene.plan.design.yarn.colours;
    let (mut bands, mut from) = (Vec::new(), 0);
    if !scene.options.dressed || colours.is_empty() {
        return bands;
    }
    // What is folded up is a band of its own: it lies on the others.
    let fold = size.view.fold().unwrap_or(usize::MAX);
    let kind = |round: &Round| (round.colour.unwrap_or(0), round.number as usize > fold);
    for alike in size.own.rounds.chunk_by(|one, next| kind(one) == kind(next)) {
        let to = from + alike.len();
        let yarn = alike.first().and_then(|round| colours.get(kind(round).0));
        bands.extend(yarn.map(|yarn| Band { from, to, ink: tint(Ink(yarn.rgb), LIGHT) }));
        from = to;
    }
    bands
}

/// The ink of what is seen of the inside at the edge.
fn inside(bands: &[Band]) -> Ink {
    let darker = |ink: &Ink| Ink(ink.0.map(|value| (f64::from(value) * INSIDE).round() as u8));
    bands.last().map_or(Ink::WHITE, |band| darker(&band.ink))
}

/// The closed way round a stretch of a piece, given its right side.
fn around(right: &[Point], axis: f64) -> BezPath {
    let left = right.iter().rev().map(|at| Point::new(2.0 * axis - at.x, at.y));
    closed(right.iter().copied().chain(left))
}

fn closed(points: impl Iterator<Item = Point>) -> BezPath {
    let mut path = BezPath::new();
    for (index, point) in points.enumerate() {
        if index == 0 { path.move_to(point) } else { path.line_to(point) }
    }
    path.close_path();
    path
}

fn fill(path: BezPath, ink: Ink) -> PathItem {
    PathItem { path, fill: Some(ink), stroke: None }
}

/// Fills the side view with the colours of its rounds, before its outline is drawn.
pub(super) fn bands(scene: &Scene<'_>, size: &Sized<'_>, sheet: &mut Sheet) {
    if size.view.lies_flat() {
        return;
    }
    let right = smooth(&scene.right(size), &sharp(size), STEPS);
    let fold = size.view.fold().unwrap_or(usize::MAX);
    let bands: Vec<Band> = bands_of(scene, size).into_iter().filter(|band| band.from < fold).collect();
    let last = bands.len().saturating_sub(1);
    for (index, band) in bands.iter().enumerate() {
        let Some(own) = right.get(STEPS * band.from..=STEPS * band.to) else { continue };
        // Letters don't lie across the edge between two colours.
        let edge: Vec<Point> = own.last().filter(|_| index < last).map(|at| vec![mirror(*at), *at]).unwrap_or_default();
        sheet.path(fill(around(own, 0.0), band.ink), &edge);
    }
}

/// What is folded up, over the side that it lies on: in the colours of its rounds, and opaque where it has none.
pub(super) fn cuff(scene: &Scene<'_>, size: &Sized<'_>, sheet: &mut Sheet) {
    let right = smooth(&scene.right(size), &sharp(size), STEPS);
    turned_up(scene, size, (&right, 0.0), sheet.style.wide, sheet);
}

/// The same of an outline in so many steps a round about an axis, its lines of this width.
fn turned_up(scene: &Scene<'_>, size: &Sized<'_>, (right, axis): (&[Point], f64), width: f64, sheet: &mut Sheet) {
    let Some(fold) = size.view.fold() else { return };
    let last = size.view.outline.len().saturating_sub(1);
    let bands = bands_of(scene, size);
    let over: Vec<&Band> = bands.iter().filter(|band| band.from >= fold).collect();
    let whole = Band { from: fold, to: last, ink: Ink::WHITE };
    for band in if over.is_empty() { vec![&whole] } else { over } {
        sheet.path(fill(around(&outer(right, (band.from, band.to), (fold, STEPS)), axis), band.ink), &[]);
    }
    let way = outer(right, (fold, last), (fold, STEPS));
    sheet.line(&turned(&way, axis), width, Ink::BLACK, Vec::new());
}

/// The closed line round what is folded up, of an outline in so many steps a round; nothing where nothing is.
pub(super) fn turned_up_line(size: &Sized<'_>, right: &[Point], steps: usize) -> Option<Vec<Point>> {
    let (fold, last) = (size.view.fold()?, size.view.outline.len().checked_sub(1)?);
    Some(turned(&outer(right, (fold, last), (fold, steps)), 0.0))
}

/// The right side of what is folded up between two rounds. At the fold itself the fabric has gone round already.
fn outer(right: &[Point], (from, to): (usize, usize), (fold, steps): (usize, usize)) -> Vec<Point> {
    if from != fold {
        return right.get(steps * from..=steps * to).unwrap_or_default().to_vec();
    }
    let own = right.get(steps * (from + 1)..=steps * to).unwrap_or_default();
    let foot = right.get(steps * fold).zip(own.first()).map(|(fold, next)| Point::new(next.x, fold.y));
    foot.into_iter().chain(own.iter().copied()).collect()
}

/// Right side and left side as one closed line.
fn turned(right: &[Point], axis: f64) -> Vec<Point> {
    let left = right.iter().rev().map(|at| Point::new(2.0 * axis - at.x, at.y));
    right.iter().copied().chain(left).chain(right.first().copied()).collect()
}

/// The opening at the top or the foot, a little from above or from below.
pub(super) fn opening(scene: &Scene<'_>, size: &Sized<'_>, sheet: &mut Sheet) {
    let right = scene.right(size);
    let end = size.view.fold().map_or(right.len().saturating_sub(1), |fold| fold);
    let Some(&edge) = right.get(end).filter(|edge| 2.0 * edge.x > NARROW) else { return };
    let foot = size.view.tall * scene.scale;
    if size.view.closed || size.view.lies_flat() || edge.y.min(foot - edge.y) > NEAR {
        return;
    }
    let half = (SQUASH * 2.0 * edge.x).clamp(HALF_HIGH.0, HALF_HIGH.1);
    let ellipse = Ellipse::new(Point::new(0.0, edge.y), Vec2::new(edge.x, half), 0.0);
    let stroke = Stroke { width: sheet.style.wide, ink: Ink::BLACK, ends: Ends::Round, dashes: Vec::new() };
    let mut corners = Vec::new();
    kurbo::flatten(ellipse.path_elements(CURVE), 0.1, |element| corners.extend(element.end_point()));
    let path = match size.view.parts.last().filter(|part| part.ruffled) {
        Some(_) => {
            // The line of the edge goes with the waves.
            sheet.path(fill(ellipse.to_path(CURVE), inside(&bands_of(scene, size))), &corners);
            corners = waves(edge, half);
            closed(corners.iter().copied())
        }
        None => ellipse.to_path(CURVE),
    };
    sheet.path(PathItem { path, fill: Some(inside(&bands_of(scene, size))), stroke: Some(stroke) }, &corners);
}

/// The edge of a ruffle, seen from a little below: an ellipse of this half width and height that goes up and down.
fn waves(edge: Point, half: f64) -> Vec<Point> {
    let deep = WAVE * half;
    let at = |step: u32| {
        let turn = Angle::from_degrees(f64::from(step) * 360.0 / f64::from(AROUND));
        Point::new(
            edge.x * turn.cos(),
            edge.y + half * turn.sin() + deep * turn.sin().abs() * (turn * f64::from(WAVES)).cos(),
        )
    };
    (0..AROUND).map(at).collect()
}

/// Where a rim comes to lie that folds down, as the other position of what moves.
pub(super) fn rim(scene: &Scene<'_>, size: &Sized<'_>, sheet: &mut Sheet) {
    let folded = scene.plan.folded(size.own).and(size.view.parts.last());
    let right = scene.right(size);
    let Some(own) = folded.and_then(|part| right.get(part.from..=part.to)) else { return };
    let Some(&fold) = own.first() else { return };
    let down = |at: &Point| Point::new(at.x + OFF, 2.0 * fold.y - at.y);
    let side: Vec<Point> = std::iter::once(fold).chain(own.iter().skip(1).map(down)).collect();
    let left: Vec<Point> = side.iter().copied().map(mirror).collect();
    let narrow = sheet.style.narrow;
    let dashes = || MOVED.map(|part| part * narrow).to_vec();
    for way in [&side, &left] {
        sheet.line(way, narrow, Ink::BLACK, dashes());
    }
    if let Some(&edge) = side.last() {
        sheet.line(&[mirror(edge), edge], narrow, Ink::BLACK, dashes());
    }
}

/// All sizes in rows under the drawing, to one scale, with their names.
pub(super) fn silhouettes(scene: &Scene<'_>, flat: bool, sheet: &mut Sheet) {
    let most = |value: &dyn Fn(&Sized<'_>) -> f64| scene.sizes.iter().map(value).fold(1e-6, f64::max);
    let wide = 2.0 * most(&|size| size.view.reach);
    let tall = if flat { wide } else { most(&|size| size.view.tall) };
    let scale = (HIGH / tall).min(WIDE / wide);
    let name = |size: &Sized<'_>| Face::Regular.width(size.name, sheet.style.em());
    let cells: Vec<f64> = scene.sizes.iter().map(|size| (2.0 * size.view.reach * scale).max(name(size))).collect();
    let mut rows: Vec<(f64, Vec<usize>)> = Vec::new();
    for (index, cell) in cells.iter().enumerate() {
        match rows.last_mut() {
            Some((wide, row)) if *wide + GUTTER + cell <= ROW * scene.options.width.mm() => {
                *wide += GUTTER + cell;
                row.push(index);
            }
            _ => rows.push((*cell, vec![index])),
        }
    }
    let mut foot = sheet.bounds().y1 + GUTTER;
    for (wide, row) in rows {
        foot += tall * scale;
        let mut left = -wide / 2.0;
        for index in row {
            let Some((size, cell)) = scene.sizes.get(index).zip(cells.get(index)) else { continue };
            let axis = left + cell / 2.0;
            silhouette(scene, size, (Point::new(axis, foot), scale, flat), sheet);
            let at = Point::new(axis, foot + 1.5 + sheet.style.letters);
            let name: TextItem = sheet.text(size.name, at, Anchor::Middle);
            sheet.write(name);
            left += cell + GUTTER;
        }
        foot += 1.5 + 1.75 * sheet.style.letters;
    }
}

/// One size, standing on a point; what is flat lies as it is seen from above.
fn silhouette(scene: &Scene<'_>, size: &Sized<'_>, (foot, scale, flat): (Point, f64, bool), sheet: &mut Sheet) {
    let bands = bands_of(scene, size);
    let stroke = Stroke { width: sheet.style.narrow, ink: Ink::BLACK, ends: Ends::Round, dashes: Vec::new() };
    if flat {
        let radius = size.view.reach * scale;
        let centre = Point::new(foot.x, foot.y - radius);
        for band in bands.iter().rev() {
            let edge = size.view.outline.get(band.to).map_or(0.0, |at| at.x * scale);
            sheet.path(fill(Circle::new(centre, edge).to_path(CURVE), band.ink), &[]);
        }
        let path = Circle::new(centre, radius).to_path(CURVE);
        let mut corners = Vec::new();
        kurbo::flatten(path.iter(), 0.1, |element| corners.extend(element.end_point()));
        sheet.path(PathItem { path, fill: None, stroke: Some(stroke) }, &corners);
        return;
    }
    let place = |at: &Point| Point::new(foot.x + at.x * scale, foot.y + (at.y - size.view.tall) * scale);
    let right: Vec<Point> = smooth(&size.view.outline.iter().map(place).collect::<Vec<_>>(), &sharp(size), STEPS);
    let fold = size.view.fold().unwrap_or(usize::MAX);
    for band in bands.iter().filter(|band| band.from < fold) {
        let own = right.get(STEPS * band.from..=STEPS * band.to).unwrap_or_default();
        sheet.path(fill(around(own, foot.x), band.ink), &[]);
    }
    let hangs = hanging(size, &right, STEPS);
    let corners: Vec<Point> =
        hangs.iter().copied().chain(hangs.iter().rev().map(|at| Point::new(2.0 * foot.x - at.x, at.y))).collect();
    sheet.path(PathItem { path: around(hangs, foot.x), fill: None, stroke: Some(stroke) }, &corners);
    turned_up(scene, size, (&right, foot.x), sheet.style.narrow, sheet);
}
