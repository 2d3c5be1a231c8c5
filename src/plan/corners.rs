//! Shaping stacked into corners on purpose.

use super::shaping::Pattern;
use super::spread::spread;

/// Most stitches gained or lost at one stitch: three in one, three together.
const MOST_AT_ONE: u32 = 2;

/// Where the corners of a round stand.
#[derive(Clone, Debug, Default)]
pub(super) struct Corners {
    /// Stitches of the last round on which they stand, ascending; empty before there are any.
    stitches: Vec<u32>,
    /// True where a corner without a middle goes on before its middle, so that corners run straight over two rounds.
    leading: bool,
}

impl Corners {
    /// Forgets where the corners stood.
    pub(super) fn clear(&mut self) {
        self.stitches.clear();
    }

    /// A round from `before` stitches to `after` with all its shaping at `corners` corners, each on the middle of the
    /// corner below; more than two at a corner go to stitches side by side. Nothing where the change is no multiple of
    /// the corners or corners would run into one another.
    pub(super) fn pattern(&mut self, before: u32, after: u32, corners: u32) -> Option<Pattern> {
        let (grows, change) = (after > before, after.abs_diff(before));
        let each = change.checked_div(corners)?;
        let group = each.div_ceil(MOST_AT_ONE);
        let takes = if grows { group } else { group + each };
        if each == 0 || !change.is_multiple_of(corners) || before < corners.checked_mul(takes)? {
            return None;
        }
        if self.stitches.len() != corners as usize {
            let side = f64::from(before) / f64::from(corners);
            self.stitches = (1..=corners).map(|corner| (f64::from(corner) * side) as u32 - 1).collect();
        }
        // More than three in one stitch makes a hole, so that larger corners stand on several stitches.
        let sizes: Vec<u32> = spread(each, group, 0).into_iter().map(|gained| gained + 1).collect();
        let (mut places, mut next, mut free) = (Vec::new(), Vec::new(), 0);
        for (index, corner) in self.stitches.iter().enumerate() {
            let index = index as u32;
            // The stitches around the corner, but none that another corner needs.
            let first = corner.saturating_sub(takes / 2).clamp(free, before - (corners - index) * takes);
            free = first + takes;
            // Where the group begins among the operations, and among the stitches made.
            let (place, makes, at) = if grows {
                (first, group + each, first + index * each)
            } else {
                (first - index * each, group, first - index * each)
            };
            places.extend((0..group).map(|i| place + i));
            let back = u32::from(makes.is_multiple_of(2) && !self.leading);
            next.push(at + makes / 2 - back);
        }
        let sizes = sizes.iter().copied().cycle().take(places.len()).collect();
        self.stitches = next;
        self.leading = !self.leading;
        Some(Pattern { length: before.min(after), places, sizes, grows })
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::craft::Stitch;

    #[test]
    fn corners_add_up_and_stay_apart() {
        let mut corners = Corners::default();
        let mut before = 12;
        for after in [24, 36, 54, 60, 60 + 6 * 7, 60, 54, 42, 24, 12] {
            let pattern = corners.pattern(before, after, 6).unwrap();
            let sums = pattern.ops(Stitch::DC).iter().fold((0, 0), |sum, op| (sum.0 + op.consumed, sum.1 + op.count()));
            assert_eq!(sums, (before, after));
            assert!(corners.stitches.windows(2).all(|pair| pair[0] < pair[1]));
            assert!(corners.stitches.iter().all(|stitch| *stitch < after));
            before = after;
        }
    }

    #[test]
    fn corners_too_near_are_left_to_be_spread() {
        assert_eq!(Corners::default().pattern(5, 11, 6), None);
        assert_eq!(Corners::default().pattern(30, 37, 6), None);
        assert_eq!(Corners::default().pattern(30, 30, 0), None);
    }
}
