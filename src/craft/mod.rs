//! The floor, craft: the words of the trade as values.
//!
//! Stitches with everything the crate knows of them, operations, rounds, pieces of them, and the two sets of terms.
//! Imports nothing above it: languages, notation, designs and plans all speak in these values.

mod build;

mod counted;

mod multiple;

mod own;

mod piece;

mod round;

mod said;

mod spelling;

mod stitch;

mod terms;

pub use build::*;
pub use counted::*;
pub use multiple::*;
pub use own::*;
pub use piece::*;
pub use round::*;
pub use said::*;
pub use spelling::*;
pub use stitch::*;
pub use terms::*;
