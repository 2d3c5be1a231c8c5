//! How far shaping stands on shaping, which makes corners of a round.

use super::{PartPlan, SizePlan};
use crate::craft::{Op, Round};
use crate::units::{Angle, Mm, TURN};

/// Share of a round's shaping on shaping from which it counts as stacked.
const STACKED: f64 = 0.75;
/// Fewest and most corners that show.
const CORNERS: std::ops::RangeInclusive<u32> = 3..=12;

/// Share of a polygon from which a round is one.
const HALF: f64 = 0.5;
/// Most even rounds at the end of a part that still are the edge of its polygon.
const EDGE: u32 = 3;

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
    /// Number of the last one: even rounds after it only keep its corners for a while.
    pub last: u32,
    /// Count of the round that its part stands on; 0 for a ring. What is round there keeps its curve beside the corners.
    pub base: u32,
    /// Twice the radius to the sides, C / (n tan(π / n)) for a circumference C.
    pub across_flats: Mm,
    /// Twice the radius to the corners, C / (n sin(π / n)).
    pub across_corners: Mm,
}

impl Polygon {
    /// How far a round of so many stitches is a polygon and no longer as round as what the part stands on: the share of
    /// its stitches that came in at the corners.
    pub fn share_of(&self, count: u32) -> f64 {
        (1.0 - f64::from(self.base) / f64::from(count.max(1))).max(0.0)
    }

    fn of(corners: u32, (first, last): (u32, u32), base: u32, around: Mm) -> Self {
        let (n, half) = (f64::from(corners), Angle::from_radians(TURN / 2.0 / f64::from(corners)));
        Self {
            corners,
            first,
            last,
            base,
            across_flats: around * (1.0 / (n * half.tan())),
            across_corners: around * (1.0 / (n * half.sin())),
        }
    }
}

/// Share of the shaping of `above` that stands on stitches which shaping of `below` made; nothing where `above` has no
/// shaping or `below` no plain stitch. What gives back in the same round what it takes, as shells do, is no shaping.
pub fn share_stacked(below: &Round, above: &Round) -> Option<f64> {
    let mut made: Vec<bool> =
        below.ops.iter().flat_map(|op| std::iter::repeat_n(op.shapes(), op.count() as usize)).collect();
    if made.iter().all(|shaped| *shaped) {
        return None;
    }
    if above.change() == 0 {
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

/// At how many places a round is shaped, stitches side by side being one; each of them where there is nothing between.
fn places(round: &Round) -> u32 {
    let shapes: Vec<bool> = round.ops.iter().map(Op::shapes).collect();
    let Some(plain) = shapes.iter().position(|shapes| !shapes) else { return shapes.len() as u32 };
    let turned = shapes[plain..].iter().chain(&shapes[..plain]).copied();
    let begins = |before: &mut bool, shapes: bool| Some(!std::mem::replace(before, shapes) && shapes);
    turned.scan(false, begins).filter(|begins| *begins).count() as u32
}

impl SizePlan {
    /// The polygon that the size ends as, where it does.
    pub fn polygon(&self) -> Option<Polygon> {
        self.polygon_at(self.rounds.last()?)
    }

    /// The polygon that the part of a round ends as, where that round is one.
    pub fn polygon_at(&self, round: &Round) -> Option<Polygon> {
        let polygon = self.stacking(self.parts.get(round.part)?).polygon;
        polygon.filter(|polygon| (polygon.first..=polygon.last).contains(&round.number))
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
        let corners = shares.last().map(|(round, _)| places(round)).filter(|n| CORNERS.contains(n));
        let polygon = corners.and_then(|n| {
            let stacked = shares.iter().filter(|(round, share)| places(round) == n && *share >= STACKED).count();
            let mut cornered = self.rounds.iter().filter(|round| own(round) && round.before > 0 && places(round) == n);
            let first = cornered.next().map_or(part.first, |round| round.number);
            let last = cornered.next_back().map_or(first, |round| round.number);
            // Corners outlast a few even rounds at an edge; more of them are a side.
            let last = if part.last - last <= EDGE { part.last } else { last };
            let base = self.rounds.iter().find(|round| own(round)).map_or(0, |round| round.before);
            let polygon = Polygon::of(n, (first, last), base, part.reached);
            let count = self.rounds.iter().rfind(|round| own(round)).map_or(0, |round| round.after);
            let shows = polygon.share_of(count) >= HALF;
            (shows && stacked >= 2 && 2 * stacked > shares.len()).then_some(polygon)
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
