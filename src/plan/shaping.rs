//! From two counts to the operations of a round, in working order.

use super::round::Op;
use super::spread::spread;
use crate::stitch::Stitch;

/// Where the shaping of a round stands.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Pattern {
    /// Operations of the round.
    pub(super) length: u32,
    /// Places of the shaping operations among them, ascending.
    pub(super) places: Vec<u32>,
    /// Stitches made at a shaping place of an increase, or taken up at one of a decrease; 1 more at the first `extra`.
    pub(super) size: u32,
    /// Places, as indices into `places`, that take one stitch more.
    pub(super) extra: Vec<bool>,
    /// True where the round grows.
    pub(super) grows: bool,
}

/// The balanced pattern from `before` stitches to `after`, turned by `offset` operations: with offset 0 every repeat
/// ends with its shaping, with offset 1 it begins with it, beyond that the round begins within a repeat.
pub(super) fn balanced(before: u32, after: u32, offset: u32) -> Pattern {
    let grows = after > before;
    let change = after.abs_diff(before);
    let length = before.min(after);
    if grows && change > length {
        return crowded(before, after);
    }
    let mut places: Vec<u32> = Vec::with_capacity(change as usize);
    let mut end = 0;
    for run in spread(length, change, 0) {
        end += run;
        places.push((end - 1 + offset) % length.max(1));
    }
    places.sort_unstable();
    let extra = vec![false; places.len()];
    Pattern { length, places, size: 2, extra, grows }
}

/// More than doubling: every stitch takes an increase, some a larger one.
fn crowded(before: u32, after: u32) -> Pattern {
    let size = after / before.max(1);
    let runs = spread(after, before, 0);
    Pattern {
        length: before,
        places: (0..before).collect(),
        size,
        extra: runs.iter().map(|run| *run > size).collect(),
        grows: true,
    }
}

/// A pattern with its shaping at given places, `each` stitches gained or lost at every one.
pub(super) fn stacked(before: u32, after: u32, places: Vec<u32>, each: u32) -> Pattern {
    let grows = after > before;
    let length = if grows { before } else { before - each * places.len() as u32 };
    let extra = vec![false; places.len()];
    Pattern { length, places, size: each + 1, extra, grows }
}

impl Pattern {
    /// The operations.
    pub(super) fn ops(&self, stitch: Stitch) -> Vec<Op> {
        let mut shaping = self.places.iter().zip(&self.extra).peekable();
        let op = |place: u32| match shaping.next_if(|(at, _)| **at == place) {
            Some((_, extra)) => {
                let size = self.size + u32::from(*extra);
                if self.grows { Op::increase(stitch, size) } else { Op::decrease(stitch, size) }
            }
            None => Op::plain(stitch),
        };
        (0..self.length).map(op).collect()
    }

    /// The same begun `offset` operations earlier.
    pub(super) fn turned(&self, offset: u32) -> Self {
        let mut places: Vec<u32> = self.places.iter().map(|place| (place + offset) % self.length.max(1)).collect();
        places.sort_unstable();
        Self { places, ..self.clone() }
    }

    /// Stitches of the round below that shaping operations take up.
    pub(super) fn taken(&self) -> Vec<u32> {
        let takes = if self.grows { 1 } else { self.size };
        let before = |index: usize| index as u32 * (takes - 1);
        let places = self.places.iter().enumerate();
        places.flat_map(|(index, place)| (0..takes).map(move |i| place + before(index) + i)).collect()
    }

    /// For every stitch the round makes whether a shaping operation makes it.
    pub(super) fn made(&self) -> Vec<bool> {
        let mut made = Vec::new();
        let mut shaping = self.places.iter().zip(&self.extra).peekable();
        for place in 0..self.length {
            let size = shaping.next_if(|(at, _)| **at == place).map(|(_, extra)| self.size + u32::from(*extra));
            let makes = if self.grows { size.unwrap_or(1) } else { 1 };
            made.extend(std::iter::repeat_n(size.is_some(), makes as usize));
        }
        made
    }

    /// Places of the shaping as shares of the round, ascending.
    pub(super) fn turns(&self) -> Vec<f64> {
        self.places.iter().map(|place| (f64::from(*place) + 0.5) / f64::from(self.length.max(1))).collect()
    }
}
