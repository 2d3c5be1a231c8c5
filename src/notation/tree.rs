//! The small syntax tree of written rounds, as they are read.

use crate::craft::{Made, Op};
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
