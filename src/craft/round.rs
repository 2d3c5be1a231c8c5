//! A round and the operations it is worked in.

use crate::craft::{Loops, Said, Stitch};
use crate::limits;
use crate::report::Place as SourcePlace;
use crate::units::Mm;

/// One round of a plan.
#[derive(Clone, Debug, PartialEq)]
pub struct Round {
    /// From 1.
    pub number: u32,
    /// Index into the parts of its size.
    pub part: usize,
    /// The stitch that most of it is worked in.
    pub stitch: Stitch,
    /// Stitches of the round before, all used up; 0 for the first round, worked into a ring.
    pub before: u32,
    /// Stitches of this round.
    pub after: u32,
    /// Stitches of the round before that slip stitches pass over at its start, to begin further on: they are the last
    /// that the operations use up.
    pub slipped: u32,
    /// Everything done, in working order.
    pub ops: Vec<Op>,
    /// Index into the design's colours.
    pub colour: Option<usize>,
    /// How it begins.
    pub begin: Begin,
    /// How it ends.
    pub close: Close,
    /// Circumference wanted here, for solved rounds.
    pub target: Option<Mm>,
    /// Where it was written, for recounted rounds.
    pub place: Option<SourcePlace>,
    /// What its author said of it, for recounted rounds.
    pub said: Option<Said>,
}

/// How a round begins.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Begin {
    /// Runs on from the round before.
    Spiral,
    /// A turning chain; where it counts it is the first stitch of the first operation.
    Chain {
        /// Chains.
        chains: u8,
        /// True where it stands for the first stitch.
        counts: bool,
    },
    /// Nothing: the maker joins or goes on as the words before say.
    Plain,
}

/// How a round ends.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Close {
    /// Runs on into the next.
    Spiral,
    /// A slip stitch into the first stitch, which never counts.
    Join,
}

/// One operation: so many stitches of the round before become so many of this one.
#[derive(Clone, Debug, PartialEq, Eq, Hash)]
pub struct Op {
    /// Where the hook goes.
    pub into: Spot,
    /// Stitches of the round before that it uses up.
    pub consumed: u32,
    /// What is made, in order, all from one foot unless `into` says otherwise.
    pub made: Made,
    /// Loops the hook goes under.
    pub loops: Loops,
}

/// Where an operation goes.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Spot {
    /// The next stitch (the centre ring in the first round).
    Stitch,
    /// The next `consumed` stitches, worked together into one.
    Together,
    /// The next two stitches, one stitch in each, the second of them first: the two cross.
    Crossed,
    /// The space under the next `consumed` chains.
    Space,
    /// Nowhere: chains that bridge a gap, or a picot on top.
    Air,
    /// Nothing is made: the next `consumed` stitches are skipped.
    Skip,
}

/// What an operation makes.
#[derive(Clone, Debug, PartialEq, Eq, Hash)]
pub enum Made {
    /// Nothing, for a skip.
    Nothing,
    /// So many of one stitch.
    Same(Stitch, u32),
    /// Runs of several stitches in one place, such as (dc, ch 2, dc).
    Mixed(Box<[(Stitch, u32)]>),
}

impl Made {
    /// The runs of stitches, in order.
    pub fn runs(&self) -> impl Iterator<Item = (Stitch, u32)> + '_ {
        let same = match self {
            Self::Same(stitch, count) => Some((*stitch, *count)),
            Self::Nothing | Self::Mixed(_) => None,
        };
        let mixed = match self {
            Self::Mixed(runs) => &runs[..],
            Self::Nothing | Self::Same(..) => &[],
        };
        same.into_iter().chain(mixed.iter().copied())
    }

    /// What these runs make in one place, those of one stitch that follow one another joined; nothing for none, and for
    /// more than can be counted.
    pub fn of_runs(all: impl IntoIterator<Item = (Stitch, u32)>) -> Option<Self> {
        let mut runs: Vec<(Stitch, u32)> = Vec::new();
        for (stitch, count) in all {
            match runs.last_mut() {
                Some((last, number)) if *last == stitch => *number = number.checked_add(count)?,
                _ => runs.push((stitch, count)),
            }
        }
        match runs[..] {
            [] => None,
            [(stitch, count)] => Some(Self::Same(stitch, count)),
            _ => Some(Self::Mixed(runs.into_boxed_slice())),
        }
    }

    /// The same so often, all in one place; nothing where that is more than anybody works there.
    pub fn times(&self, times: u32) -> Option<Self> {
        if let Self::Same(stitch, count) = self {
            return count.checked_mul(times).map(|count| Self::Same(*stitch, count));
        }
        (times <= limits::IN_ONE_PLACE).then_some(())?;
        Self::of_runs((0..times).flat_map(|_| self.runs()))
    }

    /// Stitches counted for the round (a picot counts for none).
    pub fn count(&self) -> u32 {
        self.runs().map(|(stitch, count)| count * u32::from(stitch.row().counts)).fold(0, u32::saturating_add)
    }
}

impl Op {
    /// One plain stitch.
    pub fn plain(stitch: Stitch) -> Self {
        Self::increase(stitch, 1)
    }

    /// `count` stitches into the next one.
    pub fn increase(stitch: Stitch, count: u32) -> Self {
        Self { into: Spot::Stitch, consumed: 1, made: Made::Same(stitch, count), loops: Loops::Both }
    }

    /// The next `count` stitches worked together.
    pub fn decrease(stitch: Stitch, count: u32) -> Self {
        Self { into: Spot::Together, consumed: count, made: Made::Same(stitch, 1), loops: Loops::Both }
    }

    /// A stitch in each of the next two stitches, the second of them first.
    pub fn crossed(stitch: Stitch) -> Self {
        Self { into: Spot::Crossed, consumed: 2, made: Made::Same(stitch, 2), loops: Loops::Both }
    }

    /// One stitch of the first round, worked into the ring: it uses up nothing.
    pub fn into_ring(stitch: Stitch) -> Self {
        Self { consumed: 0, ..Self::plain(stitch) }
    }

    /// The next `count` stitches skipped.
    pub fn skip(count: u32) -> Self {
        Self { into: Spot::Skip, consumed: count, made: Made::Nothing, loops: Loops::Both }
    }

    /// `count` chains into the air.
    pub fn chains(count: u32) -> Self {
        Self { into: Spot::Air, consumed: 0, made: Made::Same(Stitch::CH, count), loops: Loops::Both }
    }

    /// The same under other loops.
    #[must_use]
    pub fn under(self, loops: Loops) -> Self {
        Self { loops, ..self }
    }

    /// Stitches counted for the round.
    pub fn count(&self) -> u32 {
        self.made.count()
    }

    /// True where it is neither one for one nor a bridge of chains: an increase, a decrease, a skip, a group.
    pub fn shapes(&self) -> bool {
        self.into != Spot::Air && self.consumed > 0 && self.consumed != self.count()
    }
}

impl Round {
    /// Loops of the whole round: one loop only where every operation is under that loop.
    pub fn loops(&self) -> Loops {
        let first = self.ops.first().map_or(Loops::Both, |op| op.loops);
        if self.ops.iter().all(|op| op.loops == first) { first } else { Loops::Both }
    }

    /// Stitches by which the round grew.
    pub fn change(&self) -> i64 {
        i64::from(self.after) - i64::from(self.before)
    }

    /// True for a first round of so many single stitches, one for each chain of its foundation.
    pub fn goes_into_each(&self, chains: u32) -> bool {
        let single = |op: &Op| op.consumed == 0 && op.into == Spot::Stitch && op.count() == 1;
        self.after == chains && self.ops.len() == chains as usize && self.ops.iter().all(single)
    }

    /// Used up and made, added up anew from the operations.
    pub fn sums(&self) -> (u32, u32) {
        self.ops.iter().fold((0, 0), |(used, made), op| (used + op.consumed, made + op.count()))
    }
}

/// What the first round is worked into.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Foundation {
    /// An adjustable ring.
    Ring,
    /// Chains joined into a ring that the first round is worked into.
    ChainRing(u32),
    /// As many chains joined into a ring, and a stitch worked into each: an open tube begins so.
    ChainRound(u32),
    /// This many chains, and the first round is worked into the last of them (`ch 2, 6 sc in 2nd ch from hook`).
    Chain(u32),
}

/// What a round is worked into.
#[derive(Clone, Copy, Debug)]
pub enum Below<'a> {
    /// What the piece starts from.
    Foundation(Foundation),
    /// The round before.
    Round(&'a Round),
}
