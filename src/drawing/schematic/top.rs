//! The view from above: the edges of the parts as circles, below the side view on the same axis.

use kurbo::{Circle, Point, Shape, Vec2};

use super::sheet::{Sheet, pattern};
use super::{Scene, Sized};
use crate::drawing::{Ends, Ink, PathItem, Stroke};

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
            let corner = |i: u32| centre + Vec2::from_angle(f64::from(i) * crate::units::TURN / 48.0) * radius;
            let corners: Vec<Point> = (0..=48).map(corner).collect();
            sheet.path(PathItem { path: circle.to_path(1e-3), fill: None, stroke: Some(stroke) }, &corners);
        }
    }
    let narrow = sheet.style.narrow;
    let dashes = || [24.0, 3.0, 0.5, 3.0].map(|part| part * narrow).to_vec();
    let arm = reach + 3.0;
    for way in [Vec2::new(arm, 0.0), Vec2::new(0.0, arm)] {
        sheet.line(&[centre - way, centre + way], narrow, Ink::BLACK, dashes());
    }
}

/// Radii on paper of the edges seen from above, and whether they stand out: ends of parts and the widest place, those
/// that look alike once.
fn circles(scene: &Scene<'_>, size: &Sized<'_>) -> Vec<(f64, bool)> {
    let edge = |at: usize| size.view.outline.get(at).map(|p| p.x * scene.scale);
    let mut radii: Vec<(f64, bool)> = size.view.parts.iter().filter_map(|part| Some((edge(part.to)?, false))).collect();
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
