//! Beside the line, notation: written rounds ↔ operations.
//!
//! Reads rounds in the trade's published notation, each token with its place, and takes rounds apart into instructions:
//! phrases as data, which become words last, short and exact, in US or UK terms and in any of the languages. Reading
//! back what was written gives the same operations.

mod across;

mod alias;

mod aligned;

mod shorten;

mod assemble;

mod complain;

mod grammar;

mod header;

mod layout;

mod lex;

mod lines;

mod names;

mod numbered;

mod own;

mod phrase;

mod reach;
mod read;

mod remark;

mod tongue;

mod vocabulary;

mod wording;

pub mod plain;

pub mod tree;

pub mod write;

mod written;

pub use across::{Gap, Gaps, Numbers, across};
pub(crate) use complain::{is_adjective, is_word};
pub use lex::Source;
pub use lines::{Label, SizedLine, WrittenLine, lines, sized_lines};
pub(crate) use numbered::{Numbered, numbered};
pub use own::{NameFault, defined_as, defined_in, mentions, name_fault};
pub use phrase::{Instruction, Join, Phrase, Reach, Stands};
pub use read::{read, read_with};
pub use wording::Wording;
pub use written::{Covers, Doubt, JoinedTo, Stated, Turning, WrittenRound};
