//! The view from above: the edges of the parts as circles, or polygons where shaping makes corners, below the side view
//! on the same axis.

use kurbo::{BezPath, Circle, Point, Shape, Vec2};

use super::sheet::Sheet;
use super::{Scene, Sized};
use crate::drawing::{CURVE, Ends, Ink, PathItem, Stroke};
use crate::geometry::sideview::PartExtent;
use crate::units::{Angle, TURN};

/// Draws the circles below everything drawn so far.
pub(super) fn draw(scene: &Scene<'_>, sheet: &mut Sheet) {
    let Some(size) = scene.master() else { return };
    let reach = edges(scene, size).iter().map(|edge| edge.radius).fold(0.0, f64::max);
    let centre = Point::new(0.0, sheet.bounds().y1 + 8.0 + reach);
    for Edge { radius, sharp, corners } in edges(scene, size) {
        let wide = sharp || (radius - reach).abs() < 0.5;
        let width = if wide { sheet.style.wide } else { sheet.style.narrow };
        let stroke = Stroke { width, ink: Ink::BLACK, ends: Ends::Butt, dashes: Vec::new() };
        let places = corners.unwrap_or(48);
        // A corner on the right, where the side view has its own.
        let turns = (0..=places).map(|i| Angle::from_radians(f64::from(i) * TURN / f64::from(places)));
        let points: Vec<Point> = turns.map(|turn| centre + turn.direction() * radius).collect();
        let path = match corners {
            None => Circle::new(centre, radius).to_path(CURVE),
            Some(_) => {
                let mut path = BezPath::from_vec(Vec::new());
                for (i, point) in points.iter().take(places as usize).enumerate() {
                    if i == 0 { path.move_to(*point) } else { path.line_to(*point) }
                }
                path.close_path();
                path
            }
        };
        sheet.path(PathItem { path, fill: None, stroke: Some(stroke) }, &points);
    }
    let arm = reach + 3.0;
    for way in [Vec2::new(arm, 0.0), Vec2::new(0.0, arm)] {
        sheet.centre_line([centre - way, centre + way]);
    }
}

/// An edge seen from above, in mm on paper.
struct Edge {
    /// Radius, of a polygon to its corners.
    radius: f64,
    /// True where it stands out.
    sharp: bool,
    /// Corners of a polygon.
    corners: Option<u32>,
}

/// The edges seen from above: ends of parts and the widest place, those that look alike once.
fn edges(scene: &Scene<'_>, size: &Sized<'_>) -> Vec<Edge> {
    let of = |part: &PartExtent| {
        let edge = size.view.outline.get(part.to)?;
        let radius = part.polygon.map_or(edge.x, |polygon| polygon.across_corners.mm() / 2.0);
        Some(Edge { radius: radius * scene.scale, sharp: false, corners: part.polygon.map(|polygon| polygon.corners) })
    };
    let mut edges: Vec<Edge> = size.view.parts.iter().filter_map(of).collect();
    let widest = size.view.reach * scene.scale;
    // A polygon that is the widest place stands for it.
    match edges.iter_mut().find(|edge| edge.corners.is_some() && edge.radius > widest - 1.0) {
        Some(edge) => edge.sharp = true,
        None => edges.push(Edge { radius: widest, sharp: true, corners: None }),
    }
    edges.sort_by(|a, b| a.radius.total_cmp(&b.radius).then(b.sharp.cmp(&a.sharp)));
    edges.dedup_by(|a, b| {
        let alike = (a.radius - b.radius).abs() < 1.0 && a.corners == b.corners;
        b.sharp |= alike && a.sharp;
        alike
    });
    edges.retain(|edge| edge.radius > 1.0);
    edges
}
