//! The end of a hat folded up, as it lies when the piece is done: mirrored at the round where it folds, and clear of what it
//! lies on.

use super::super::mesh::{Head, Net, Vec3};
use crate::plan::{Plan, SizePlan};
use crate::units::hypot;

/// How far the outer layer stands off the inner one, in thicknesses of the fabric.
const OFF: f64 = 1.4;

/// Folds the end up of a mesh whose axis points downward. The fabric shows its other side there.
pub(super) fn turn_up(plan: &Plan, size: &SizePlan, net: &Net, points: &mut [Vec3]) {
    let Some(first) = size.turned_up().map(|folded| folded.first.saturating_sub(1) as usize) else { return };
    let Some(round) = size.rounds.get(first).filter(|_| first > 0 && first < net.rounds.len()) else { return };
    // Ribs stand out of both layers, and those of the inner one would come through the outer.
    let thick = OFF * plan.gauge_of(round).thick.mm();
    // Mean radius and level of every round above the fold, from the top down.
    let level = |own: &std::ops::Range<usize>| {
        let count = own.len().max(1) as f64;
        let own = points.get(own.clone()).unwrap_or_default();
        let (radius, z) = own.iter().fold((0.0, 0.0), |(r, z), p| (r + hypot(p.x, p.y), z + p.z));
        (radius / count, z / count)
    };
    let under: Vec<(f64, f64)> = net.rounds.iter().take(first).map(level).collect();
    let Some(fold) = under.last().map(|(_, z)| *z) else { return };
    let radius_at = |z: f64| {
        let lower = under.iter().rposition(|(_, level)| *level <= z).unwrap_or(0);
        let ((from, top), (to, foot)) = (under[lower], under[(lower + 1).min(under.len() - 1)]);
        let share = if foot > top { ((z - top) / (foot - top)).clamp(0.0, 1.0) } else { 0.0 };
        from + (to - from) * share
    };
    // What brings a spiral down stands on the last of them.
    let turns =
        |(index, head): (usize, &Head)| net.step.contains(&index) || head.round.is_some_and(|round| round >= first);
    let folded: Vec<bool> = net.heads.iter().enumerate().map(turns).collect();
    for (point, _) in points.iter_mut().zip(folded).filter(|(_, folded)| *folded) {
        let z = 2.0 * fold - point.z;
        let far = hypot(point.x, point.y);
        let out = (far.max(radius_at(z)) + thick) / far.max(1e-9);
        *point = Vec3::new(point.x * out, point.y * out, z);
    }
}
