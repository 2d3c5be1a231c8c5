//! Stage 5, page: drawings → pages at true size.
//!
//! Takes drawings and tables. Gives pages in millimetres with a reading order beside them. Promises that everything lies
//! inside the printable area at 1 : 1, or says why it can't.

mod model;
mod paper;

pub use model::*;
pub use paper::*;
