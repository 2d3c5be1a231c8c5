//! The side shape a piece will take: the fabric of revolution that stretches and bends least.
//!
//! The unknowns are where the top edge of every round comes to lie, (r, z); [`energy`] says what is minimised,
//! [`newton`] how. The search is deterministic and its cost is linear in the rounds.

mod band;
mod energy;
mod findings;
mod newton;
mod rest;
mod ridges;
mod worn;

pub(super) use energy::{BLOCKING, HINGE};
pub(super) use findings::SHOWS;
pub(super) use rest::Rest;

use super::{RoundShape, SideShape};
use crate::plan::{Plan, SizePlan};
use crate::units::{Mm, TURN, hypot};

/// Predicts the side shape of one size.
///
/// The piece starts at the top of the axis and goes outward and down; heights are measured down from there. Shapes that
/// the counts leave open (whether a flare goes down or comes back up) follow the design. Finite numbers for every plan,
/// also for one without rounds.
pub fn predict(plan: &Plan, size: &SizePlan) -> SideShape {
    let rest = rest::Rest::of(plan, size);
    let x = newton::shape(&rest);
    let rounds = rounds_at(&rest, &x);
    let findings = findings::findings(plan, size, &rest, &rounds);
    let worn = worn::wear(plan, size, &x);
    let mut shape = SideShape { start: Mm::new(rest.start), rounds, findings, worn };
    let ridges = ridges::ridges(plan, size, &shape);
    shape.findings.extend(ridges);
    shape
}

/// Where rounds lie whose r and z are these, one after the other, and what that stretches.
fn rounds_at(rest: &Rest, x: &[f64]) -> Vec<RoundShape> {
    let mut foot = (rest.start, 0.0);
    let mut rounds = Vec::with_capacity(rest.rounds.len());
    for (fabric, edge) in rest.rounds.iter().zip(x.chunks_exact(2)) {
        let (r, z) = (edge[0].max(0.0), edge[1]);
        let slant = hypot(r - foot.0, z - foot.1);
        rounds.push(RoundShape {
            radius: Mm::new(r),
            height: Mm::new(z),
            hoop_strain: TURN * r / fabric.around * fabric.gathered - 1.0,
            slant_strain: slant / fabric.height - 1.0,
        });
        foot = (r, z);
    }
    rounds
}
