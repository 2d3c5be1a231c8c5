//! Curves that whole stitches can't round: two rounds that meet at an angle which shows.

use super::super::{Finding, FindingKind, SideShape};
use crate::design::Body;
use crate::plan::{Plan, SizePlan};
use crate::units::Angle;

/// Least angle between two rounds of a curve that shows as a ridge, in degrees.
const SHOWS: f64 = 35.0;

/// The sharpest ridge of every curved part that was solved.
pub(super) fn ridges(plan: &Plan, size: &SizePlan, shape: &SideShape) -> Vec<Finding> {
    let solved = |part: usize| match plan.design.parts.get(part).map(|part| &part.body) {
        Some(Body::Profile(profile)) => profile.shape.form().curved,
        Some(Body::Written(_)) | None => false,
    };
    let mut found = Vec::new();
    for (_, part) in size.parts.iter().enumerate().filter(|(index, _)| solved(*index)) {
        let first = (part.first as usize).saturating_sub(1);
        let way = |k: usize| {
            let foot = k.checked_sub(1).and_then(|below| shape.rounds.get(below));
            let (r, z) = foot.map_or((shape.start.mm(), 0.0), |foot| (foot.radius.mm(), foot.height.mm()));
            let edge = shape.rounds.get(k)?;
            Some(Angle::of_vector(edge.radius.mm() - r, edge.height.mm() - z).degrees())
        };
        let bend = |k: usize| Some((k, (way(k + 1)? - way(k)?).abs()));
        let bends = (first..(part.last as usize).saturating_sub(1)).filter_map(bend);
        let sharpest = bends.fold((0, 0.0), |most: (usize, f64), new| if new.1 > most.1 { new } else { most });
        if sharpest.1 <= SHOWS {
            continue;
        }
        let (below, above) = (sharpest.0 as u32 + 1, sharpest.0 as u32 + 2);
        let sentence = format!(
            "Rounds {below} and {above} of the {} meet at {:.0} degrees, which shows as a ridge, as rounds so tall have \
             little room to turn; a shorter stitch or a larger size rounds it",
            part.name, sharpest.1
        );
        found.push(Finding { first: below, last: above, kind: FindingKind::Ridges, meant: false, sentence });
    }
    found
}
