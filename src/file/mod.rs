//! Stage 6, file: pages and drawings → named bytes.
//!
//! Takes pages, drawings and plans. Gives bytes that depend on nothing but their input: no clock, no locale, no system
//! font, no chance. One module, `save`, writes to disk: beside the old file first, then in its place.

pub mod csv;
pub mod html;
pub mod json;
pub mod listing;
pub mod pdf;
pub mod png;
pub mod publish;
pub mod save;
pub mod svg;
pub mod text;

/// A file to be written.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Output {
    /// File name without folder.
    pub name: String,
    /// Its content.
    pub bytes: Vec<u8>,
}
