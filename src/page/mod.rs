//! Stage 5, page: story and drawings → pages at true size.
//!
//! Takes what a pattern says, and its drawings. Gives pages in millimetres with a reading order beside them. Promises that everything lies
//! inside the printable area at 1 : 1, or says why it can't.

pub mod booklet;
mod cover;
mod flow;
mod lines;
mod model;
mod options;
mod paginate;
mod paper;
mod press;
mod style;
mod table;
pub mod wall;

pub use flow::room_beside;
pub use model::*;
pub use options::*;
pub use paper::*;
pub use style::*;
