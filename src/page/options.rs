//! What a print is made of and made for.

use std::sync::Arc;

use crate::drawing::Drawing;
use crate::geometry::SideShape;

use super::{Paper, Print};

/// How pages are to come out.
#[derive(Clone, Debug, PartialEq)]
pub struct Options {
    /// The sheet.
    pub paper: Paper,
    /// How ink is used.
    pub print: Print,
    /// 18 points throughout, leading 1.5, heavier lines and bigger tick boxes.
    pub large: bool,
    /// How the rounds of several sizes are told.
    pub rounds: RoundsForm,
    /// True for the rounds in plain words too, after the table.
    pub plain_words: bool,
}

/// How the rounds of several sizes are told.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum RoundsForm {
    /// Side by side where the sizes are alike enough, else one table a size.
    #[default]
    Fitting,
    /// Side by side: 72 (80, 88).
    Brackets,
    /// One table a size, with measures.
    PerSize,
}

impl Options {
    /// The ordinary print on a sheet.
    pub fn new(paper: Paper) -> Self {
        Self { paper, print: Print::default(), large: false, rounds: RoundsForm::default(), plain_words: false }
    }
}

/// The pictures of a pattern, drawn at the size at which they are to be printed.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Pictures {
    /// The picture on the cover; made smaller where it must be.
    pub cover: Option<Arc<Drawing>>,
    /// The symbols, explained.
    pub key: Option<Arc<Drawing>>,
    /// The charts in order, each with its caption.
    pub charts: Vec<(Arc<Drawing>, String)>,
    /// The symbols of each chart, small enough to stand under it; empty where they can't stand under every one.
    pub keys: Vec<Arc<Drawing>>,
    /// The side views in order, each with its caption.
    pub schematics: Vec<(Arc<Drawing>, String)>,
    /// The predicted shape of each size of the plan; empty where it isn't known.
    pub shapes: Vec<SideShape>,
}
