//! A head in thin dashes, as a hint of fit: our own plain shape, not a likeness and not a measurement.

use kurbo::{BezPath, ParamCurve, PathSeg, Point};

use super::sheet::Sheet;
use super::side::mirror;
use super::{Scene, Sized};
use crate::drawing::{Anchor, Ends, PathItem, Stroke, TextItem};

/// Half the breadth of a head seen from the front, and heights below its top, as shares of its circumference: mean head
/// breadth 154 mm, tragion to top 131 mm at 574 mm around (men of the adult survey ANSUR II); the chin from memory.
const HALF: f64 = 154.3 / 574.4 / 2.0;
const EAR: f64 = 131.1 / 574.4;
const CHIN: f64 = 0.4;

/// Draws the head inside a hat, its top touching the inside of the highest point. Seen from the front it is narrower
/// than the round hat: heads are longer than they are broad.
pub(super) fn draw(scene: &Scene<'_>, size: &Sized<'_>, sheet: &mut Sheet) {
    let Some(head) = size.head else { return };
    let around = head.mm() * scene.scale;
    let top = sheet.style.wide + 0.6;
    let at = |x: f64, y: f64| Point::new(HALF * around * x, around * y + top);
    let mut right = BezPath::new();
    right.move_to(at(0.0, 0.0));
    right.curve_to(at(0.66, 0.0), at(1.0, 0.07), at(1.0, 0.165));
    right.curve_to(at(1.0, EAR), at(0.93, 0.29), at(0.8, 0.335));
    right.curve_to(at(0.62, 0.385), at(0.3, CHIN), at(0.0, CHIN));
    let mut ear = BezPath::new();
    ear.move_to(at(1.0, EAR - 0.04));
    ear.curve_to(at(1.17, EAR - 0.06), at(1.14, EAR + 0.03), at(0.96, EAR + 0.04));
    let narrow = sheet.style.narrow;
    let dashes = vec![6.0 * narrow, 6.0 * narrow];
    for half in [right, ear] {
        let corners: Vec<Point> = half.segments().flat_map(corners).collect();
        let left: Vec<Point> = corners.iter().copied().map(mirror).collect();
        let mut flipped = half.clone();
        flipped.apply_affine(kurbo::Affine::FLIP_X);
        for (path, corners) in [(half, corners), (flipped, left)] {
            let stroke = Stroke { width: narrow, ink: sheet.style.hint, ends: Ends::Butt, dashes: dashes.clone() };
            sheet.hint(PathItem { path, fill: None, stroke: Some(stroke) }, &corners);
        }
    }
}

/// Writes what the dashes are, in the face, where that is free.
pub(super) fn name(scene: &Scene<'_>, size: &Sized<'_>, sheet: &mut Sheet) {
    let Some(head) = size.head else { return };
    let around = head.mm() * scene.scale;
    let words = scene.words.with("schematic-head", &[("length", crate::words::Arg::Text(&scene.length(head)))]);
    let ink = sheet.style.hint;
    let place = |(x, y): (f64, f64)| {
        let text = sheet.text(&words, Point::new(HALF * around * x, around * y), Anchor::Middle);
        TextItem { ink, ..text }
    };
    let places: Vec<TextItem> =
        [0.33, 0.36, 0.3, 0.27].into_iter().flat_map(|y| [(0.45, y), (-0.45, y)]).map(place).collect();
    let beside = Point::new(HALF * around * 0.55, around * 0.385);
    let beside = TextItem { ink, ..sheet.text(&words, beside, Anchor::Start) };
    sheet.write_free(places.into_iter().chain([beside]));
}

fn corners(segment: PathSeg) -> Vec<Point> {
    (0..=6).map(|i| segment.eval(f64::from(i) / 6.0)).collect()
}
