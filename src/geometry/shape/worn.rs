//! A hat on a head: the fabric of least energy whose radius is nowhere under the head's.

use super::super::head::HeadForm;
use super::super::{Holds, RoundShape, Sits, Worn};
use super::rest::{Rest, RestRound};
use super::{newton, rounds_at};
use crate::plan::{OVER_EARS, Plan, SizePlan, TO_BROW};
use crate::units::Mm;

/// How near the brow and the bottom of the ears an edge ends there, as a share of the head: about 8 mm, half the 2 cm by
/// which size guides differ (common practice).
const NEAR: f64 = 0.015;
/// From this share of the head's width on a round can grip: what lies higher only rests on the head.
const GRIPS_FROM: f64 = 0.95;
/// A hat holds from this stretch on, and slips where it is looser than this everywhere (common practice: close hats are made 5
/// to 10 % smaller than the head, loose ones as wide as the head).
const HOLDS: f64 = 0.01;
const SLIPS: f64 = -0.05;
/// More stretch than this presses (common practice: a hat 10 % smaller than the head is snug).
const PINCHES: f64 = 0.14;

/// How a hat whose own shape is `own` sits on its head, drawn on until its crown touches; nothing for what isn't worn, has no
/// crown or no head.
pub(super) fn wear(plan: &Plan, size: &SizePlan, own: &[f64]) -> Option<Worn> {
    let (edge, head) = plan.edge(size).zip(size.head)?;
    let (edge, head) = (edge.checked_sub(1)? as usize, HeadForm::of(head));
    let rest = Rest::on_a_head(plan, size);
    let rounds = rounds_at(&rest, &newton::worn(&rest, own, head, edge));
    let (tightest, grip) = tightest(&rest, &rounds, head, edge);
    let tape = head.tape_to(rounds.get(edge)?.height.mm());
    Some(Worn { head, rounds, edge, tape, grip, tightest })
}

/// The round that grips most, and by how much it is stretched by the head at its level: below nought where no round is.
fn tightest(rest: &Rest, rounds: &[RoundShape], head: HeadForm, edge: usize) -> (usize, f64) {
    let low = |at: &RoundShape| at.height.mm() > 0.0 && head.radius_at(at.height.mm()) > GRIPS_FROM * head.widest();
    let stretch = |(i, at): (usize, &RoundShape)| {
        let own = rest.rounds.get(i).map_or(1.0, RestRound::radius);
        (i, head.radius_at(at.height.mm()) / own - 1.0)
    };
    let gripping = rounds.iter().enumerate().take(edge + 1).filter(|(_, at)| low(at)).map(stretch);
    let at_edge = rounds.get(edge).map_or((edge, 0.0), |at| stretch((edge, at)));
    gripping.reduce(|most, next| if next.1 > most.1 { next } else { most }).unwrap_or(at_edge)
}

impl Worn {
    /// How far down the head it reaches.
    pub fn sits(&self) -> Sits {
        match self.tape / self.head.around() {
            share if share < TO_BROW - 2.0 * NEAR => Sits::Top,
            share if share <= TO_BROW + NEAR => Sits::Brow,
            share if share < OVER_EARS - NEAR => Sits::Between,
            share if share <= OVER_EARS + 2.0 * NEAR => Sits::Ears,
            _ => Sits::Below,
        }
    }

    /// How it holds.
    pub fn holds(&self) -> Holds {
        match self.grip {
            grip if grip < SLIPS => Holds::Slips,
            grip if grip < HOLDS => Holds::Rests,
            grip if grip <= PINCHES => Holds::Grips,
            _ => Holds::Pinches,
        }
    }

    /// What a tape over the head reads from its top down to the brow and to the bottom of the ears.
    pub fn marks(&self) -> [Mm; 2] {
        [TO_BROW, OVER_EARS].map(|share| self.head.around() * share)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::{TURN, hypot};

    /// Rounds at rest of these circumferences, 1 mm high and thin, so that nothing but stretch tells.
    fn thin(start: f64, around: impl IntoIterator<Item = f64>) -> Rest {
        let (height, width, thick) = (1.0, 1.0, 0.01);
        let of = |around: f64| RestRound {
            around,
            height,
            width,
            thick,
            middle: around / TURN,
            folds: false,
            rises: false,
            flat: None,
            gathered: 1.0,
            blocked: false,
        };
        Rest { start, rounds: around.into_iter().map(of).collect() }
    }

    /// The shape on a head, begun from where the rounds would lie by themselves: the first reaches from the top of the head
    /// down to `level`.
    fn on(mut rest: Rest, head: HeadForm, level: f64) -> Vec<f64> {
        let first = rest.rounds[0].radius();
        rest.rounds[0].height = (first * first + level * level).sqrt();
        let each = rest.rounds.iter().enumerate();
        let own: Vec<f64> = each.flat_map(|(k, round)| [round.radius(), level + k as f64]).collect();
        newton::worn(&rest, &own, head, rest.rounds.len() - 1)
    }

    /// A thin tube on a ball without friction. With σ the length along the ball, L = (r/a − 1)² + (σ′ − 1)² has the first
    /// integral σ′² − (r/a − 1)², the same all along (Beltrami's identity), and r is the ball's own.
    #[test]
    fn a_tube_on_a_ball_stretches_by_the_closed_form() {
        // 5 % narrower than the ball, begun where the ball is as wide as the tube.
        let head = HeadForm::of(Mm::new(560.0));
        let (ball, tube) = (head.widest(), 0.95 * head.widest());
        let level = ball * (1.0 - (1.0 - 0.95_f64 * 0.95).sqrt());
        let x = on(thin(0.0, std::iter::repeat_n(TURN * tube, 26)), head, level);
        let mut integrals = Vec::new();
        for pair in x.chunks_exact(2).collect::<Vec<_>>().windows(2) {
            let [foot, at] = pair else { continue };
            let off = hypot(at[0], ball - at[1]) - ball;
            assert!(off.abs() < 0.01, "{off} mm off the ball at {}", at[1]);
            let (along, around) = (hypot(at[0] - foot[0], at[1] - foot[1]), at[0] / tube - 1.0);
            integrals.push(along * along - around * around);
        }
        let (least, most) =
            integrals.iter().fold((f64::INFINITY, 0.0_f64), |(least, most), one| (least.min(*one), most.max(*one)));
        assert!(most - least < 1e-3 && most > 0.9, "from {least} to {most}");
    }

    /// A thin cone on a post: the rounds that are narrower lie on it, stretched by R/ρ − 1 and no closer or further apart
    /// than they are high, since nothing drives them along; the wider ones stand off at the cone's own angle.
    #[test]
    fn a_cone_on_a_post_stretches_by_the_closed_form() {
        let head = HeadForm::post(Mm::new(560.0));
        let post = head.widest();
        let rest = thin(0.0, (0..60).map(|k| 560.0 * (0.94 + 0.002 * f64::from(k))));
        let radii: Vec<f64> = rest.rounds.iter().map(RestRound::radius).collect();
        let x = on(rest, head, post + 8.0);
        let at: Vec<&[f64]> = x.chunks_exact(2).collect();
        for k in 2..60 {
            // Where it leaves the post it bends over two or three rounds; towards its edge the light pull draws it in.
            let near = match radii[k] - post {
                off if off < -1.5 => 0.02,
                off if off < 1.5 => 0.2,
                _ if k < 55 => 0.001 * radii[k],
                _ => 0.006 * radii[k],
            };
            assert!((at[k][0] - post.max(radii[k])).abs() < near, "round {k}: {} not {}", at[k][0], radii[k]);
            let along = hypot(at[k][0] - at[k - 1][0], at[k][1] - at[k - 1][1]);
            assert!((along - 1.0).abs() < 2e-3, "round {k}: {along}");
        }
        let own = (radii[52] - radii[36]) / 16.0;
        let down = (at[52][1] - at[36][1]) / 16.0;
        assert!((down - (1.0 - own * own).sqrt()).abs() < 2e-3, "{down}");
    }
}
