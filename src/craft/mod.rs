//! The floor, craft: the words of the trade as values.
//!
//! Stitches with everything the crate knows of them, operations, rounds, pieces of them, and the two sets of terms.
//! Imports nothing above it: languages, notation, designs and plans all speak in these values.

mod piece;

mod round;

mod stitch;

mod terms;

pub use piece::*;
pub use round::*;
pub use stitch::*;
pub use terms::*;
