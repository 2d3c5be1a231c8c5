//! How far every round is a polygon: wholly where shaping stacks into corners, and less and less where even rounds go on
//! from there, as corners fade.
//!
//! A tube bent into n waves at its edge, where the fold lets it turn, forgets them as w = e^(−ξ) cos ξ, with ξ = μ s,
//! μ = n² (t²/12)^¼ / (√2 R^(3/2)), s the length along the fabric, R its radius and t its thickness: the solution without
//! moment at the edge of w″″ = −(t²/12) n⁸/R⁶ w, which the equations of thin shells become for waves that are short around
//! and long along the tube (Donnell, Stability of thin-walled tubes under torsion, NACA Report 479, 1933; no sideways
//! contraction). From the first quarter of its wave on it is called round.

use crate::craft::Round;
use crate::plan::{Plan, Polygon, SizePlan};
use crate::units::{Angle, TURN, power};

/// How far a round is a polygon.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Cornered {
    corners: u32,
    /// From 0, a circle, to 1.
    share: f64,
}

impl Cornered {
    /// A circle.
    const ROUND: Self = Self { corners: 3, share: 0.0 };

    /// Half the angle that a side is seen under.
    fn half(self) -> Angle {
        Angle::from_radians(TURN / 2.0 / f64::from(self.corners))
    }

    /// Radius to the sides over that of a circle of the same circumference.
    pub(super) fn sides(self) -> f64 {
        1.0 + self.share * (self.half().radians() / self.half().tan() - 1.0)
    }

    /// The same to the corners.
    pub(super) fn points(self) -> f64 {
        1.0 + self.share * (self.half().radians() / self.half().sin() - 1.0)
    }

    /// True where it is more a polygon than a circle.
    pub(super) fn shows(self) -> bool {
        self.share >= 0.5
    }
}

/// One entry a round, in order.
pub(super) fn cornered(plan: &Plan, size: &SizePlan) -> Vec<Cornered> {
    let mut found = Vec::with_capacity(size.rounds.len());
    let polygons: Vec<Option<Polygon>> = size.parts.iter().map(|part| size.stacking(part).polygon).collect();
    // The last polygon, and ξ since then.
    let (mut edge, mut since) = (Cornered::ROUND, 0.0);
    for round in &size.rounds {
        let own = polygons.get(round.part).copied().flatten();
        match own.filter(|polygon| (polygon.first..=polygon.last).contains(&round.number)) {
            Some(polygon) => {
                edge = Cornered { corners: polygon.corners, share: polygon.share_of(round.after) };
                since = 0.0;
            }
            None => since += fading(plan, round, edge.corners),
        }
        let left = power(core::f64::consts::E, -since) * Angle::from_radians(since.min(TURN / 4.0)).cos();
        found.push(Cornered { share: edge.share * left, ..edge });
    }
    found
}

/// By how much ξ grows in a round; a quarter of a wave where the gauge says nothing.
fn fading(plan: &Plan, round: &Round, corners: u32) -> f64 {
    let gauge = plan.gauge_of(round);
    let radius = gauge.circumference(round.after).mm() / TURN;
    let bent = power(gauge.thick.mm() * gauge.thick.mm() / 12.0, 0.25);
    let waves = f64::from(corners * corners);
    let grows = waves * bent / (core::f64::consts::SQRT_2 * power(radius.max(1.0), 1.5)) * gauge.height.mm();
    if grows.is_finite() && grows > 0.0 { grows } else { TURN / 4.0 }
}
