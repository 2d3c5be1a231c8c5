//! The small syntax tree of written rounds, as they are read.

use crate::craft::{Loops, Made, Op, Spot, Stitch};
use crate::report::Place;

/// How often something is done.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Times {
    /// Just so often.
    Exactly(u32),
    /// As often as it takes to use up the round, but for the last so many stitches.
    Around {
        /// Stitches left at the end of the round, 0 for none.
        leave: u32,
    },
}

/// One thing to do.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Act {
    /// One operation, so often.
    Run(Op, Times),
    /// Several things in order, so often.
    Repeat(Vec<Item>, Times),
    /// More stitches in the stitch (or space) that was worked last.
    Same {
        /// What to make.
        made: Made,
        /// True where it says space, and not stitch.
        space: bool,
    },
    /// One stitch in the stitch that was skipped just before the last one.
    Skipped(Op),
    /// So many increases or decreases spread evenly over what is left, with stitches in between.
    Evenly {
        /// The increase or the decrease.
        shape: Op,
        /// The stitch in between.
        plain: Op,
        /// How many.
        times: u32,
    },
}

/// One thing to do and where it was written.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Item {
    /// What to do.
    pub act: Act,
    /// Where it stands.
    pub place: Place,
}

impl Item {
    /// True for slip stitches into one stitch or space after another.
    pub(super) fn slips(&self) -> bool {
        match &self.act {
            Act::Run(op, Times::Exactly(_)) if op.made == Made::Same(Stitch::SL_ST, 1) => {
                op.into == Spot::Space || (op.into == Spot::Stitch && op.consumed == 1)
            }
            Act::Run(..) | Act::Repeat(..) | Act::Same { .. } | Act::Skipped(_) | Act::Evenly { .. } => false,
        }
    }

    /// The item under other loops, all through, where it says none itself.
    pub(super) fn under(self, loops: Loops) -> Self {
        if loops == Loops::Both {
            return self;
        }
        let act = match self.act {
            Act::Run(op, times) if op.loops == Loops::Both => Act::Run(op.under(loops), times),
            Act::Repeat(body, times) => Act::Repeat(body.into_iter().map(|item| item.under(loops)).collect(), times),
            Act::Skipped(op) if op.loops == Loops::Both => Act::Skipped(op.under(loops)),
            act @ (Act::Run(..) | Act::Same { .. } | Act::Skipped(_) | Act::Evenly { .. }) => act,
        };
        Self { act, ..self }
    }
}
