//! Which rounds a chart shows, each as a ring of its own or several as a band.

use super::is_plain;
use crate::craft::Round;
use crate::plan::SizePlan;

/// Least number of alike rounds that are worth a band.
const BAND: usize = 3;

/// One ring of a chart: the rounds it stands for, as indices into [`SizePlan::rounds`].
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Row {
    /// The first, which is the one drawn.
    pub first: usize,
    /// The last.
    pub last: usize,
}

impl Row {
    /// True where it stands for several rounds.
    pub const fn is_band(&self) -> bool {
        self.last > self.first
    }

    /// Every round of a range of indices as a ring of its own.
    pub fn each(rounds: std::ops::Range<usize>) -> Vec<Self> {
        rounds.map(|index| Self { first: index, last: index }).collect()
    }

    /// The rounds of a size, runs of alike even rounds of one part and colour as one band.
    pub fn banded(size: &SizePlan) -> Vec<Self> {
        let mut rows: Vec<Self> = Vec::new();
        let mut index = 0;
        while index < size.rounds.len() {
            let run = alike(&size.rounds[index..]);
            // Of two alike rounds a band would save one ring only.
            let last = if run >= BAND { index + run - 1 } else { index };
            rows.push(Self { first: index, last });
            index = last + 1;
        }
        rows
    }
}

/// How many rounds from the first on are plain, even and the same.
fn alike(rounds: &[Round]) -> usize {
    let Some(first) = rounds.first() else { return 0 };
    // Shaped rounds are what a chart is read for, alike or not: they always stand alone.
    if !first.ops.iter().all(is_plain) {
        return 1;
    }
    let same = rounds.iter().take_while(|round| {
        round.part == first.part && round.colour == first.colour && round.close == first.close && round.ops == first.ops
    });
    same.count()
}
