//! From two counts to the operations of a round, in working order.

use super::spread::spread;
use crate::craft::{Op, Stitch};

/// Where the shaping of a round stands.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Pattern {
    /// Operations of the round.
    pub(super) length: u32,
    /// Places of the shaping operations among them, ascending.
    pub(super) places: Vec<u32>,
    /// Stitches that each of those makes where the round grows, or takes up where it shrinks.
    pub(super) sizes: Vec<u32>,
    /// True where the round grows.
    pub(super) grows: bool,
}

/// The balanced pattern from `before` stitches to `after`, every repeat ending with its shaping. More than doubling
/// puts an increase into every stitch, and a larger one into some.
pub(super) fn balanced(before: u32, after: u32) -> Pattern {
    let (grows, change, length) = (after > before, after.abs_diff(before), before.min(after));
    if change > length {
        return Pattern { length, places: (0..length).collect(), sizes: spread(after, length, 0), grows };
    }
    // Shaping ends its repeat: `sc 6, inc` is the trade's order, and the round then ends on an increase as well.
    let ends = spread(length, change, 0).into_iter().scan(0, |end, run| {
        *end += run;
        Some(*end - 1)
    });
    let places: Vec<u32> = ends.collect();
    Pattern { length, sizes: vec![2; places.len()], places, grows }
}

impl Pattern {
    /// The operations.
    pub(super) fn ops(&self, stitch: Stitch) -> Vec<Op> {
        let op = |size: Option<u32>| match size {
            Some(size) if self.grows => Op::increase(stitch, size),
            Some(size) => Op::decrease(stitch, size),
            None => Op::plain(stitch),
        };
        self.walk().map(op).collect()
    }

    /// For every operation the size of its shaping, nothing where it is plain.
    fn walk(&self) -> impl Iterator<Item = Option<u32>> + '_ {
        let mut shaping = self.places.iter().zip(&self.sizes).peekable();
        (0..self.length).map(move |place| shaping.next_if(|(at, _)| **at == place).map(|(_, size)| *size))
    }

    /// The same with its shaping `offset` operations later, round the join. For patterns with shaping of one size.
    pub(super) fn turned(&self, offset: u32) -> Self {
        let mut places: Vec<u32> = self.places.iter().map(|place| (place + offset) % self.length.max(1)).collect();
        places.sort_unstable();
        Self { places, ..self.clone() }
    }

    /// Stitches of the round below that shaping operations take up.
    pub(super) fn taken(&self) -> Vec<u32> {
        // An operation that takes up several stitches moves all that come after it.
        let mut more = 0;
        let mut taken = Vec::new();
        for (place, size) in self.places.iter().zip(&self.sizes) {
            let takes = if self.grows { 1 } else { *size };
            taken.extend((0..takes).map(|i| place + more + i));
            more += takes - 1;
        }
        taken
    }

    /// For every stitch the round makes whether a shaping operation makes it.
    pub(super) fn made(&self) -> Vec<bool> {
        let makes = |size: Option<u32>| if self.grows { size.unwrap_or(1) } else { 1 };
        self.walk().flat_map(|size| std::iter::repeat_n(size.is_some(), makes(size) as usize)).collect()
    }

    /// Places of the shaping as shares of the round, ascending.
    pub(super) fn turns(&self) -> Vec<f64> {
        self.places.iter().map(|place| (f64::from(*place) + 0.5) / f64::from(self.length.max(1))).collect()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn patterns_add_up() {
        for (before, after) in [(6, 12), (7, 19), (45, 51), (44, 51), (51, 44), (12, 6), (100, 57), (9, 27)] {
            let pattern = balanced(before, after);
            let sums = pattern.ops(Stitch::SC).iter().fold((0, 0), |sum, op| (sum.0 + op.consumed, sum.1 + op.count()));
            assert_eq!(sums, (before, after));
            assert_eq!(pattern.made().len(), after as usize);
            assert!(pattern.taken().iter().all(|stitch| *stitch < before));
        }
    }

    #[test]
    fn six_increases_on_forty_five_take_turns_of_seven_and_eight() {
        assert_eq!(balanced(45, 51).places, [6, 14, 21, 29, 36, 44]);
        assert_eq!(balanced(45, 51).turned(1).places, [0, 7, 15, 22, 30, 37]);
    }
}
