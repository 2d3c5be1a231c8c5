//! Written rounds as they are read: what was said, nothing expanded yet.

use super::tree::Item;
use super::wording::Wording;
use crate::craft::{Counted, Foundation, Loops, Stitch};
use crate::report::Place;
use crate::units::Mm;

/// A round as it was written, nothing expanded yet.
#[derive(Clone, Debug, PartialEq)]
pub struct WrittenRound {
    /// Number of the first round it stands for.
    pub first: u32,
    /// Number of the last round it stands for.
    pub last: u32,
    /// False where it goes without a number of its own.
    pub numbered: bool,
    /// What it is worked into, where it says so.
    pub foundation: Option<Foundation>,
    /// The chain from the hook that the first stitch goes into, for a start from a chain.
    pub from_hook: Option<u32>,
    /// Slip stitches before that chain, to begin further on.
    pub slipped: Vec<Item>,
    /// The chain it begins with.
    pub begin: Option<Turning>,
    /// The chain after its join, which the next round begins with.
    pub leads: Option<Turning>,
    /// Loops said for the whole round.
    pub loops: Loops,
    /// What to do.
    pub items: Vec<Item>,
    /// True where it closes with a join, false where it says not to.
    pub joined: Option<bool>,
    /// What it is joined to.
    pub joined_to: JoinedTo,
    /// The count it states.
    pub stated: Option<Stated>,
    /// The yarn it names before its first stitch.
    pub colour: Option<(String, Place)>,
    /// The yarn it changes to once it has begun, which is that of the next round.
    pub next_colour: Option<(String, Place)>,
    /// How long the piece is when it is done so often as that takes.
    pub until: Option<(Mm, Place)>,
    /// True where it says that each of its rounds is shaped so.
    pub each: bool,
    /// The rounds it repeats, first and last.
    pub same_as: Option<(u32, u32, Place)>,
    /// What of it can be read in two ways.
    pub doubts: Vec<Doubt>,
    /// True where it calls itself a row.
    pub row: bool,
    /// What its author wrote.
    pub wording: Wording,
    /// Where it starts.
    pub place: Place,
    /// False where some of it could not be read; it was complained about.
    pub whole: bool,
}

impl WrittenRound {
    /// True where it only says what the first round is worked into.
    pub(crate) fn only_starts(&self) -> bool {
        let begun = self.foundation.is_some() || self.begin.is_some() || !(self.whole || self.numbered);
        self.items.is_empty() && self.stated.is_none() && self.same_as.is_none() && begun
    }
}

/// The chain that a round begins with.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Turning {
    /// Chains.
    pub chains: u32,
    /// Whether it counts as a stitch, where that is said.
    pub counts: Option<bool>,
    /// The stitch it counts as, where that is said.
    pub stitch: Option<Stitch>,
    /// Loops of that stitch.
    pub loops: Loops,
    /// True where the first item is the whole operation that the chain begins.
    pub included: bool,
    /// True where the first stitch is passed over after it: it stands on that one where it counts.
    pub skips: bool,
    /// Where it stands.
    pub place: Place,
}

/// The count stated for a round.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Stated {
    /// How many.
    pub count: u32,
    /// Of what.
    pub covers: Covers,
    /// Spaces, where their chains aren't told.
    pub spaces: Option<u32>,
    /// How many of what, as it was stated.
    pub list: Vec<(Counted, u32)>,
    /// Where it stands.
    pub place: Place,
}

/// What a stated count counts.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Covers {
    /// Stitches, and chains or not: chain spaces are often left out (common practice).
    Stitches,
    /// Stitches and the chains of spaces.
    All,
    /// The chains of spaces alone.
    Spaces,
}

impl Stated {
    /// Stitches of the round, where it states them.
    pub(crate) fn stitches(&self) -> Option<u32> {
        (self.covers != Covers::Spaces).then_some(self.count)
    }

    /// How many of which stitch, where it names them.
    pub(crate) fn kinds(&self) -> impl Iterator<Item = (Stitch, u32)> + '_ {
        self.list.iter().filter_map(|(what, count)| match what {
            Counted::Of(stitch) if *stitch != Stitch::CH => Some((*stitch, *count)),
            Counted::Of(_) | Counted::Stitches | Counted::Spaces(_) => None,
        })
    }
}

/// What a round is joined to.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum JoinedTo {
    /// It doesn't say.
    Unsaid,
    /// A stitch: the chain at the start is none.
    Stitch,
    /// The chain at the start, which so counts: its n-th, or its top (0).
    Chain(u32),
}

/// What can be read in two ways; what closes decides.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Doubt {
    /// The repeat that stands here may be done so often instead.
    Often(Place, u32),
    /// `2 sc in next 2 sts`: one in each, or two in each.
    Each(Place),
    /// Stitches without a place: into the next ones, or into the space that is named after them.
    Bare(Place),
    /// The loop behind the back loop, which is taken for that.
    Third(Place),
    /// Stitches that go into the next of this kind; where they can't, into whatever comes.
    Onto(Place, Stitch),
}
