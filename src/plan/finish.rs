//! How the last round ends.

use crate::craft::Stitch;

/// Shorter stitches after the last round of a spiral, tallest first, so that its end sinks to the round below:
/// dtr → tr → dc → hdc → sc → slip stitch (common practice).
pub(super) fn step_down(last: Stitch) -> Vec<Stitch> {
    let plain = |stitch: &Stitch| stitch.is_plain() && *stitch != Stitch::CH;
    let mut shorter: Vec<Stitch> =
        Stitch::all().filter(plain).filter(|stitch| stitch.row().height < last.row().height).collect();
    shorter.sort_by(|a, b| b.row().height.total_cmp(&a.row().height));
    shorter
}
