//! Stage 1, design: YAML text → [`Design`].
//!
//! Takes the text of a design file. Gives a [`Design`] in which every length is in millimetres, every default is filled
//! in and every value that can be wrong later keeps its [`Place`](crate::report::Place). Promises that nothing is left
//! to guess: sizes, depths and widths are there once for every size, ranges are sane, names are known. Fails with
//! complaints that point at line and column and say what to do; many at a time.

mod model;

pub use model::*;
