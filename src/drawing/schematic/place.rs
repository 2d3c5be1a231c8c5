//! Names of parts, each in the first place that is free.

use kurbo::{Point, Vec2};

use super::sheet::Sheet;
use super::side::mirror;
use super::{Scene, Sized};
use crate::drawing::{Anchor, TextItem};
use crate::font::Face;

/// Writes the name of every part inside its outline, or beside it with a leader.
pub(super) fn part_names(scene: &Scene<'_>, size: &Sized<'_>, sheet: &mut Sheet) {
    for part in &size.view.parts {
        let way: Vec<Point> = size.view.part_outline(part).iter().map(|&p| scene.on_paper(p)).collect();
        let Some(&middle) = way.get(way.len() / 2) else { continue };
        // A name stands where its part is seen: a folded one on what is folded up, others above it.
        let end = size.view.part_outline(part).len();
        let hidden = |at: &usize| size.view.outline.get(part.from + at).is_some_and(|at| size.view.covers(at.y));
        let seen: Vec<Point> = match part.fold {
            Some(fold) => way.get(fold.saturating_sub(part.from)..).unwrap_or_default().to_vec(),
            None => (0..end).filter(|at| !hidden(at)).filter_map(|at| way.get(at)).copied().collect(),
        };
        let places = inside(sheet, &part.name, &seen);
        if !sheet.write_free(places) && !beside(sheet, &part.name, mirror(middle)) {
            let outer = way.get(way.len() * 3 / 4).copied().unwrap_or(middle);
            below(sheet, &part.name, mirror(outer));
        }
    }
}

/// Places between the outlines at the heights of a part: left of the axis, then right of it.
fn inside(sheet: &Sheet, name: &str, way: &[Point]) -> Vec<TextItem> {
    let (top, foot) = way.iter().fold((f64::INFINITY, f64::NEG_INFINITY), |(a, b), p| (a.min(p.y), b.max(p.y)));
    let cap = sheet.style.letters;
    let mut places = Vec::new();
    for share in [0.5, 0.7, 0.3, 0.85, 0.15] {
        let base = top + share * (foot - top) + cap / 2.0;
        // A crown is narrower at the heads of the letters than at their feet.
        let wide = reach(way, base).min(reach(way, base - cap));
        for x in [-0.45, 0.45, -0.62, 0.62, -0.3, 0.3] {
            let text = sheet.text(name, Point::new(x * wide, base), Anchor::Middle);
            let half = text.face.width(name, text.size) / 2.0 + 1.0;
            if base - cap > top + 0.8 && base < foot - 0.8 && (x * wide).abs() + half < wide {
                places.push(text);
            }
        }
    }
    places
}

/// How far an outline reaches from the axis at some height; 0 where it doesn't pass there.
fn reach(way: &[Point], y: f64) -> f64 {
    let crossing = |pair: &[Point]| {
        let [a, b] = pair else { return None };
        let share = (y - a.y) / (b.y - a.y);
        (0.0..=1.0).contains(&share).then_some(a.x + share * (b.x - a.x))
    };
    way.windows(2).filter_map(crossing).fold(0.0, f64::max)
}

/// A name outside with a leader line to the outline; gives false where there is no room for it.
fn beside(sheet: &mut Sheet, name: &str, at: Point) -> bool {
    let width = Face::Regular.width(name, sheet.style.em());
    let outside = [(-1.0, -1.0), (-1.4, -0.5), (-0.6, -1.5), (-1.4, 0.6), (-1.0, 1.2), (1.0, -1.0), (1.4, 0.6)];
    for (x, y) in outside {
        for distance in [7.0, 11.0, 16.0, 23.0, 32.0, 44.0] {
            let knee = at + Vec2::new(x, y) * distance;
            let (anchor, side) = if x < 0.0 { (Anchor::End, -1.0) } else { (Anchor::Start, 1.0) };
            let text = sheet.text(name, knee + Vec2::new(side, sheet.style.letters / 2.0), anchor);
            let start = at + (knee - at).normalize() * 0.5;
            let on_axis = (knee.x - side * width).abs() < 1.0;
            if !on_axis && sheet.free(&text) && sheet.clear(at, knee) && sheet.uncrossed(start, knee) {
                sheet.thin(at, knee);
                sheet.write(text);
                return true;
            }
        }
    }
    false
}

/// A name under a flat top that dimension lines surround, with a leader line up to it; the dashes of a head may give way.
fn below(sheet: &mut Sheet, name: &str, at: Point) {
    for distance in [5.0, 8.0, 12.0, 17.0] {
        let knee = at + Vec2::new(0.15, 1.0) * distance;
        let text = sheet.text(name, knee + Vec2::new(1.0, sheet.style.letters / 2.0), Anchor::Start);
        if sheet.free_of_all_but_hints(&text) {
            sheet.thin(at, knee);
            sheet.write(TextItem { halo: 0.25 * sheet.style.letters, ..text });
            return;
        }
    }
}
