//! Beside the line, notation: written rounds ↔ operations.
//!
//! Reads rounds in the trade's published notation, each token with its place, and writes a plan as instructions: short
//! and exact, in US or UK terms and in any of the languages. Reading back what was written gives the same operations.

mod aligned;

mod shorten;

mod assemble;

mod grammar;

mod header;

mod lex;

mod lines;

mod names;

mod read;

mod vocabulary;

pub mod plain;

pub mod tree;

pub mod write;

pub use assemble::{Covers, Stated, Turning, WrittenRound};
pub use lex::Source;
pub use lines::{SizedLine, WrittenLine};
pub(crate) use read::is_word;
pub use read::{LONGEST_TEXT, MOST_ROUNDS, read};
