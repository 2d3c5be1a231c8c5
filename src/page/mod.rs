//! Stage 5, page: drawings → pages at true size.
//!
//! Takes drawings and tables. Gives pages in millimetres with a reading order beside them. Promises that everything lies
//! inside the printable area at 1 : 1, or says why it can't.

pub mod booklet;
mod cover;
mod flow;
mod lines;
mod model;
pub use crate::words::numbers;
mod options;
mod paginate;
mod paper;
pub mod pictures;
mod press;
mod style;
mod table;
pub mod wall;

pub use model::*;
pub use options::*;
pub use paper::*;
pub use style::*;
