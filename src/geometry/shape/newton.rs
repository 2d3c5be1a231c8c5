//! The search for the shape of least energy: Newton's method, damped where the valley bends.

use super::super::head::HeadForm;
use super::energy::Energy;
use super::rest::Rest;

/// Most steps taken. Well made fabric needs ten to thirty.
const STEPS: usize = 250;

/// A step shorter than this share of the shortest round ends the search.
const SHORT: f64 = 1e-9;

/// Damping, as a share of the stiffness by stretch: what the search begins with, below what it is left off, what it begins
/// with again, and above what no step is looked for.
const DAMPING: f64 = 1e-3;
const NO_DAMPING: f64 = 1e-9;
const DAMPED_AGAIN: f64 = 1e-8;
const MOST_DAMPING: f64 = 1e12;

/// A step that promises to lower the energy by less than this is lost in the rounding of its sum.
const NOTHING_GAINED: f64 = 1e-18;

/// The shape of least energy found: r and z of every round, mm. Where parts may lie flat or cup, both are tried.
pub(super) fn shape(rest: &Rest) -> Vec<f64> {
    let energy = Energy::of(rest);
    let (value, x) = relax(&energy, rest, guess(rest, false));
    if !rest.rounds.iter().any(|round| round.blocked) {
        return x;
    }
    let (other, flat) = relax(&energy, rest, guess(rest, true));
    if other < value { flat } else { x }
}

/// The shape of a hat drawn on a head by round `edge`, counted from 0: from its own shape, with what would lie within the
/// head moved out to it.
pub(super) fn worn(rest: &Rest, own: &[f64], head: HeadForm, edge: usize) -> Vec<f64> {
    let energy = Energy::of(rest).on(head, edge);
    let moved = own.chunks_exact(2).flat_map(|at| [at[0].max(head.radius_at(at[1])), at[1]]);
    relax(&energy, rest, moved.collect()).1
}

/// The shape that is reached from a guess by going downhill, and its energy.
///
/// Every accepted step lowers the energy, so the numbers stay finite whatever the fabric.
fn relax(energy: &Energy, rest: &Rest, guess: Vec<f64>) -> (f64, Vec<f64>) {
    let stiffness = energy.stiffness();
    let least = rest.rounds.iter().map(|round| round.height).fold(f64::INFINITY, f64::min) * SHORT;
    let mut x = guess;
    let mut value = energy.value(&x);
    let mut damping = DAMPING;
    for _ in 0..STEPS {
        let local = energy.local(&x);
        let downhill: Vec<f64> = local.slope.iter().map(|slope| -slope).collect();
        let Some((next, lower, step)) =
            descend(energy, &local.curvature, &stiffness, &downhill, (&x, value), &mut damping)
        else {
            break;
        };
        (x, value) = (next, lower);
        if step < least {
            break;
        }
    }
    (value, x)
}

/// One step that lowers the energy: more damping until one is found, less again after a good one. Gives the new shape,
/// its energy and the longest move.
fn descend(
    energy: &Energy,
    curvature: &super::band::Band,
    stiffness: &[f64],
    downhill: &[f64],
    (x, value): (&[f64], f64),
    damping: &mut f64,
) -> Option<(Vec<f64>, f64, f64)> {
    while *damping < MOST_DAMPING {
        let shift: Vec<f64> = stiffness.iter().map(|s| s * *damping).collect();
        if let Some(step) = curvature.solve(&shift, downhill) {
            let next: Vec<f64> = x.iter().zip(&step).map(|(x, step)| x + step).collect();
            let lower = energy.value(&next);
            // What the slope alone promises is twice what a parabola keeps.
            let promised: f64 = step.iter().zip(downhill).map(|(step, slope)| step * slope).sum::<f64>() / 2.0;
            let longest = step.iter().fold(0.0_f64, |longest, step| longest.max(step.abs()));
            if lower.is_finite() && value - lower >= 0.1 * promised {
                *damping = if *damping > NO_DAMPING { *damping / 5.0 } else { 0.0 };
                return Some((next, lower, longest));
            }
            if promised < NOTHING_GAINED {
                return None;
            }
        }
        *damping = (*damping * 4.0).max(DAMPED_AGAIN);
    }
    None
}

/// A good guess: every round leaves at the angle whose cosine is its growth over its height, as far as there is one.
/// Growth is averaged over a few neighbours, so that the half stitches lost to whole counts don't set the angle, but
/// never across a fold. With `flat` the rounds that are blocked start all but flat.
fn guess(rest: &Rest, flat: bool) -> Vec<f64> {
    const NEAR: usize = 3;
    const ALMOST: f64 = 0.999;
    let rounds = &rest.rounds;
    let radii: Vec<f64> = [rest.start].into_iter().chain(rounds.iter().map(|round| round.radius())).collect();
    let (mut r, mut z) = (rest.start, 0.0);
    let mut x = Vec::with_capacity(2 * rounds.len());
    for (i, round) in rounds.iter().enumerate() {
        let first =
            (0..NEAR.min(i)).find(|back| rounds[i - back].folds).map_or(i.saturating_sub(NEAR), |back| i - back);
        let last = (i + 1..rounds.len().min(i + NEAR + 1))
            .find(|&k| rounds[k].folds)
            .unwrap_or(rounds.len().min(i + NEAR + 1));
        let height: f64 = rounds[first..last].iter().map(|near| near.height).sum();
        let out = ((radii[last] - radii[first]) / height).clamp(-1.0, 1.0);
        let out = if flat && round.blocked { out.max(ALMOST) } else { out };
        let down = (1.0 - out * out).sqrt();
        r = (r + out * round.height).max(0.0);
        z += if round.rises { -down } else { down } * round.height;
        x.extend([r, z]);
    }
    x
}
