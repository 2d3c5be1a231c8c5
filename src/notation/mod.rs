//! Beside the line, notation: written rounds ↔ operations.
//!
//! Reads rounds in the trade's published notation, each token with its place, and writes a plan as instructions: short
//! and exact, in US or UK terms and in any of the languages. Reading back what was written gives the same operations.

mod shorten;

mod lines;

pub use lines::{SizedLine, WrittenLine};

pub mod tree;

pub mod write;
