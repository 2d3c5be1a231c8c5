//! The view from above: the edges of the parts as circles, below the side view on the same axis.

use kurbo::{Circle, Point, Shape, Vec2};

use super::sheet::{Sheet, pattern};
use super::{Scene, Sized};
use crate::drawing::{CURVE, Ends, Ink, PathItem, Stroke};
use crate::units::{Angle, TURN};

/// Draws the circles below everything drawn so far.
pub(super) fn draw(scene: &Scene<'_>, sheet: &mut Sheet) {
    let reach = scene.sizes.iter().map(|size| size.view.reach).fold(0.0, f64::max) * scene.scale;
    let centre = Point::new(0.0, sheet.bounds().y1 + 8.0 + reach);
    for (index, size) in scene.sizes.iter().enumerate() {
        for (radius, sharp) in circles(scene, size) {
            let wide = sharp || (radius - size.view.reach * scene.scale).abs() < 0.5;
            let width = if wide { sheet.style.wide } else { sheet.style.narrow };
            let circle = Circle::new(centre, radius);
            let stroke = Stroke { width, ink: Ink::BLACK, ends: Ends::Butt, dashes: pattern(index, width) };
            let turns = (0..=48).map(|i| Angle::from_radians(f64::from(i) * TURN / 48.0));
            let corners: Vec<Point> = turns.map(|turn| centre + turn.direction() * radius).collect();
            sheet.path(PathItem { path: circle.to_path(CURVE), fill: None, stroke: Some(stroke) }, &corners);
        }
    }
    let arm = reach + 3.0;
    for way in [Vec2::new(arm, 0.0), Vec2::new(0.0, arm)] {
        sheet.centre_line([centre - way, centre + way]);
    }
}

/// Radii on paper of the edges seen from above, and whether they stand out: ends of parts and the widest place, those
/// that look alike once.
fn circles(scene: &Scene<'_>, size: &Sized<'_>) -> Vec<(f64, bool)> {
    let edges = size.view.parts.iter().filter_map(|part| size.view.outline.get(part.to));
    let mut radii: Vec<(f64, bool)> = edges.map(|edge| (edge.x * scene.scale, false)).collect();
    radii.push((size.view.reach * scene.scale, true));
    radii.sort_by(|a, b| a.0.total_cmp(&b.0).then(b.1.cmp(&a.1)));
    radii.dedup_by(|a, b| {
        let alike = (a.0 - b.0).abs() < 1.0;
        b.1 |= alike && a.1;
        alike
    });
    radii.retain(|(radius, _)| *radius > 1.0);
    radii
}
