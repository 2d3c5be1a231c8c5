//! A smooth way through the edges of rounds.

use kurbo::{CubicBez, ParamCurve, Point, Vec2};

use crate::units::{EPSILON, TOLERANCE};

/// A smooth way through points, so many steps from each to the next, with corners where it is sharp: cubic arcs whose
/// tangents are those of the parabola through three neighbours, so that uneven heights of rounds don't make it swing. It
/// ends as a circle would go on. From the axis it leaves level, where it isn't the point of something steep: fabric has
/// no point there.
pub(super) fn smooth(points: &[Point], sharp: &[bool], steps: usize) -> Vec<Point> {
    let last = points.len().saturating_sub(1);
    let mut way: Vec<Point> = points.first().copied().into_iter().collect();
    for i in 0..last {
        let length = (points[i + 1] - points[i]).hypot() / 3.0;
        let arc = CubicBez::new(
            points[i],
            points[i] + tangent(points, sharp, i, i + 1) * length,
            points[i + 1] - tangent(points, sharp, i + 1, i) * length,
            points[i + 1],
        );
        way.extend((1..=steps).map(|step| arc.eval(step as f64 / steps as f64)));
    }
    way
}

/// Direction of the way at point `i`, towards the end of the points.
fn tangent(points: &[Point], sharp: &[bool], i: usize, other: usize) -> Vec2 {
    let own = slope(points[i.min(other)], points[i.max(other)]);
    if sharp.get(i) == Some(&true) {
        return own;
    }
    if i > 0 && i + 1 < points.len() {
        return through(points, i);
    }
    if i == 0 && points[0].x < EPSILON && own.y.abs() < own.x {
        return Vec2::new(1.0, 0.0);
    }
    let bends = other > 0 && other + 1 < points.len() && sharp.get(other) != Some(&true);
    if bends {
        let inner = through(points, other);
        let mirrored = own * (2.0 * own.dot(inner)) - inner;
        return mirrored / mirrored.hypot().max(TOLERANCE);
    }
    own
}

/// Direction at a point between two others.
fn through(points: &[Point], i: usize) -> Vec2 {
    let (before, after) = ((points[i] - points[i - 1]).hypot(), (points[i + 1] - points[i]).hypot());
    let mixed = slope(points[i - 1], points[i]) * after + slope(points[i], points[i + 1]) * before;
    mixed / (before + after).max(TOLERANCE)
}

fn slope(from: Point, to: Point) -> Vec2 {
    (to - from) / (to - from).hypot().max(TOLERANCE)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::Angle;

    /// Points on a circle give the circle, from the level tip to the free end.
    #[test]
    fn few_points_on_a_circle_are_joined_by_the_circle() {
        let at = |turn: u32| {
            let angle = Angle::from_degrees(22.5 * f64::from(turn));
            Point::new(100.0 * angle.sin(), 100.0 - 100.0 * angle.cos())
        };
        let points: Vec<Point> = (0..=6).map(at).collect();
        for p in smooth(&points, &[], 12) {
            let off = (p - Point::new(0.0, 100.0)).hypot() - 100.0;
            assert!(off.abs() < 0.2, "{off} at {p}");
        }
    }

    #[test]
    fn a_steep_point_stays_one() {
        let points = [(0.0, 0.0), (3.0, 10.0), (6.0, 20.0)].map(|(x, y)| Point::new(x, y));
        assert!(smooth(&points, &[], 8).iter().all(|p| (p.y * 0.3 - p.x).abs() < 1e-9));
    }
}
