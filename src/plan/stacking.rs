//! How far shaping stands on shaping, which makes corners of a round.

use super::{PartPlan, SizePlan};
use crate::craft::{Op, Round};
use crate::units::{Angle, Mm, TURN};

/// Share of a round's shaping on shaping from which it counts as stacked.
const STACKED: f64 = 0.75;
/// Fewest and most corners that show.
const CORNERS: std::ops::RangeInclusive<u32> = 3..=12;

/// How the shaping of a part is stacked.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Stacking {
    /// The round with the largest share of its shaping on the shaping of the round below, from 0 to 1. Rounds onto one
    /// without plain stitches are left out, as they have no choice.
    pub most: Option<(u32, f64)>,
    /// What it makes of the part's last round, where most shaped rounds are stacked at the same number of places.
    pub polygon: Option<Polygon>,
}

/// A polygon of the circumference of a round.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Polygon {
    /// Its corners, n.
    pub corners: u32,
    /// Number of the first round that shapes in all of them: before it the piece is still round.
    pub first: u32,
    /// Twice the radius to the sides, C / (n tan(π / n)) for a circumference C.
    pub across_flats: Mm,
    /// Twice the radius to the corners, C / (n sin(π / n)).
    pub across_corners: Mm,
}

impl Polygon {
    /// Radius to the sides over that of a circle of the same circumference: π / (n tan(π / n)).
    pub fn flatness(&self) -> f64 {
        TURN / 2.0 / (f64::from(self.corners) * self.half().tan())
    }

    /// Half the angle that a side is seen under from the middle.
    pub fn half(&self) -> Angle {
        Angle::from_radians(TURN / 2.0 / f64::from(self.corners))
    }

    fn of(corners: u32, first: u32, around: Mm) -> Self {
        let (n, half) = (f64::from(corners), Angle::from_radians(TURN / 2.0 / f64::from(corners)));
        Self {
            corners,
            first,
            across_flats: around * (1.0 / (n * half.tan())),
            across_corners: around * (1.0 / (n * half.sin())),
        }
    }
}

/// Share of the shaping of `above` that stands on stitches which shaping of `below` made; nothing where `above` has no
/// shaping or `below` no plain stitch.
pub fn share_stacked(below: &Round, above: &Round) -> Option<f64> {
    let mut made: Vec<bool> =
        below.ops.iter().flat_map(|op| std::iter::repeat_n(op.shapes(), op.count() as usize)).collect();
    if made.iter().all(|shaped| *shaped) {
        return None;
    }
    // A round that slips to its beginning starts so many stitches further on.
    let slipped = above.slipped as usize % made.len().max(1);
    made.rotate_left(slipped);
    let (mut at, mut all, mut on) = (0_usize, 0_u32, 0_u32);
    for op in &above.ops {
        let end = at + op.consumed as usize;
        if op.shapes() {
            all += 1;
            on += u32::from(made.get(at..end).is_some_and(|feet| feet.contains(&true)));
        }
        at = end;
    }
    (all > 0).then(|| f64::from(on) / f64::from(all))
}

impl SizePlan {
    /// The polygons that all parts end as; nothing where any is round, which draws the others round.
    pub fn polygons(&self) -> Option<Vec<Polygon>> {
        self.parts.iter().map(|part| self.stacking(part).polygon).collect()
    }

    /// The polygon that the size ends as, where it does.
    pub fn polygon(&self) -> Option<Polygon> {
        self.parts.last().and_then(|part| self.stacking(part).polygon)
    }

    /// How the shaping of a part is stacked.
    pub fn stacking(&self, part: &PartPlan) -> Stacking {
        let own = |round: &Round| (part.first..=part.last).contains(&round.number);
        let pairs = self.rounds.iter().zip(self.rounds.iter().skip(1)).filter(|(_, above)| own(above));
        let shares: Vec<(&Round, f64)> =
            pairs.filter_map(|(below, above)| share_stacked(below, above).map(|share| (above, share))).collect();
        let most = shares.iter().fold(None, |most: Option<(u32, f64)>, (round, share)| match most {
            Some((_, least)) if *share <= least => most,
            _ => Some((round.number, *share)),
        });
        let places = |round: &Round| round.ops.iter().filter(|op| Op::shapes(op)).count() as u32;
        let corners = shares.last().map(|(round, _)| places(round)).filter(|n| CORNERS.contains(n));
        let polygon = corners.and_then(|n| {
            let stacked = shares.iter().filter(|(round, share)| places(round) == n && *share >= STACKED).count();
            let first = self.rounds.iter().find(|round| own(round) && round.before > 0 && places(round) == n);
            let first = first.map_or(part.first, |round| round.number);
            (stacked >= 2 && 2 * stacked > shares.len()).then(|| Polygon::of(n, first, part.reached))
        });
        Stacking { most, polygon }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::design;
    use crate::plan::solve;
    use crate::report::Report;

    fn stacking(rounds: &str) -> Stacking {
        let text = format!(
            "title: Disc\nswatch: {{stitch: sc, stitches: 20, rounds: 20, width: 10, height: 10}}\nkind: mat\n\
             sizes: {{one: {{across: 5}}}}\nwork: spiral\nparts:\n  - disc:\n      written: |\n        Rnd 1: 6 sc in ring (6)\n        \
             Rnd 2: 2 sc in each st around (12)\n        Rnd 3: [sc in next st, 2 sc in next st] 6 times (18)\n{rounds}"
        );
        let mut report = Report::new();
        let plan = design::read(&text, &mut report).and_then(|design| solve(&design, &mut report));
        let plan = plan.unwrap_or_else(|| panic!("{report:?}"));
        plan.sizes[0].stacking(&plan.sizes[0].parts[0])
    }

    /// Every increase into the second stitch of the one below: the hexagon everybody has made.
    #[test]
    fn increases_on_increases_make_a_hexagon() {
        let stacking = stacking(
            "        Rnd 4: [sc in next 2 sts, 2 sc in next st] 6 times (24)\n        \
             Rnd 5: [sc in next 3 sts, 2 sc in next st] 6 times (30)\n",
        );
        assert_eq!(stacking.most, Some((4, 1.0)));
        let polygon = stacking.polygon.expect("a hexagon");
        assert_eq!(polygon.corners, 6);
        // 30 stitches of 5 mm: sides of 25 mm, so 50 mm from corner to corner and 25 √3 mm from side to side.
        assert!((polygon.across_corners.mm() - 50.0).abs() < 1e-9);
        assert!((polygon.across_flats.mm() - 43.301_270_2).abs() < 1e-6);
    }

    #[test]
    fn increases_between_increases_make_none() {
        let stacking = stacking(
            "        Rnd 4: [2 sc in next st, sc in next 2 sts] 6 times (24)\n        \
             Rnd 5: [sc in next 3 sts, 2 sc in next st] 6 times (30)\n",
        );
        // No round stands on shaping at all, so the first one that is asked, round 2 on the ring, is named.
        assert_eq!(stacking, Stacking { most: Some((2, 0.0)), polygon: None });
    }
}
