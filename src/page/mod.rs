//! Stage 5, page: drawings → pages at true size.
//!
//! Takes drawings and tables. Gives pages in millimetres with a reading order beside them. Promises that everything lies
//! inside the printable area at 1 : 1, or says why it can't.

mod block;
mod flow;
mod lines;
mod model;
mod paginate;
mod paper;
mod press;
mod style;
mod table;

pub use block::*;
pub use model::*;
pub use paper::*;
pub use style::*;
