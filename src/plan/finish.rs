//! How a spiral begins and ends level.

use crate::craft::{Op, Stitch};

/// What is worked into the ring in the first round of a spiral: shorter stitches first, so that it rises without a step,
/// sc → hdc → dc → tr → dtr (common practice), then `count` in all. A round too small for that begins as it goes on.
pub(super) fn rise(stitch: Stitch, count: u32) -> Vec<Op> {
    let mut shorter = step_down(stitch);
    shorter.retain(|stitch| *stitch != Stitch::SL_ST);
    shorter.reverse();
    let rest = count.saturating_sub(shorter.len() as u32);
    if shorter.is_empty() || (shorter.len() as u32) * LEAST_LEVEL > count {
        return (0..count).map(|_| Op::into_ring(stitch)).collect();
    }
    let made = shorter.into_iter().chain(std::iter::repeat_n(stitch, rest as usize));
    made.map(Op::into_ring).collect()
}

/// A first round is as many times as long as its rise at least, or there would be no round left at full height.
const LEAST_LEVEL: u32 = 3;

/// Shorter stitches after the last round of a spiral, tallest first, so that its end sinks to the round below:
/// dtr → tr → dc → hdc → sc → slip stitch (common practice).
pub(super) fn step_down(last: Stitch) -> Vec<Stitch> {
    let plain = |stitch: &Stitch| stitch.is_plain() && *stitch != Stitch::CH;
    let mut shorter: Vec<Stitch> =
        Stitch::all().filter(plain).filter(|stitch| stitch.row().height < last.row().height).collect();
    shorter.sort_by(|a, b| b.row().height.total_cmp(&a.row().height));
    shorter
}
