//! The half of a ball that is chosen; the other mirrors it.

use super::choose::{Entry, FEWEST, Task};

/// The rounds of a ball up to its equator, where it goes straight down.
pub(super) fn half(task: &Task) -> Task {
    let rounds = task.bands.len().div_ceil(2);
    // What more than doubled could not be halved again.
    let mut half = Task { leaves: Some(0.0), edge: 1.0, most: task.most.min(2), ..task.clone() };
    half.bands.truncate(rounds);
    half.tolerance.truncate(rounds);
    half.allowed.truncate(rounds);
    half.ways.truncate(rounds);
    // Its first round is its last one too, which has to be within half a repeat of the edge wanted there. In few rounds
    // a repeat can't be more than what is left to the equator.
    if let (Entry::First { least, most }, Some((low, high))) = (half.entry, task.bands.last()) {
        let largest = if task.corners > 1 { f64::from(task.corners) } else { task.flat };
        let equator = half.bands.last().map_or(0.0, |equator| equator.0);
        let fits = |count: &u32| {
            let count = f64::from(*count);
            let left = ((equator - count) / (rounds as f64 - 1.0).max(1.0)).floor();
            let off = (low - count).max(count - high);
            off <= (largest.min(left) / 2.0).max(0.5)
        };
        let fewest = (least..=most).find(fits);
        let widest = (least..=most).rev().find(fits);
        // Where none fits the nearest is taken.
        let nearest = (high.round() as u32).clamp(FEWEST.max(least.min(most)), most.max(FEWEST));
        half.entry = Entry::First { least: fewest.unwrap_or(nearest), most: widest.unwrap_or(nearest) };
    }
    half
}
