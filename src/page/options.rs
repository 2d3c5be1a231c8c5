//! What a print is made of and made for.

use std::sync::Arc;

use crate::drawing::{ChartView, Drawing};
use crate::story::{Illustration, Illustrations, RoundsForm, Telling};
use crate::units::Angle;

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
    /// What is asked of its charts.
    pub chart: ChartWish,
}

/// What is asked of the charts of a print.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct ChartWish {
    /// What they show; nothing for the first view that can be read.
    pub view: Option<ChartView>,
    /// A single part, by its name.
    pub part: Option<String>,
    /// True for a chart of every size in the booklet, not of the middle one alone.
    pub every: bool,
    /// The hour of the clock at which their rounds start, 1 to 12; 12 where none is said.
    pub hour: Option<u8>,
}

impl ChartWish {
    /// Where their rounds start, clockwise from the top.
    pub fn start(&self) -> Angle {
        Angle::from_degrees(30.0 * f64::from(self.hour.unwrap_or(12) % 12))
    }
}

impl Options {
    /// The ordinary print on a sheet.
    pub fn new(paper: Paper) -> Self {
        Self {
            paper,
            print: Print::default(),
            large: false,
            rounds: RoundsForm::default(),
            plain_words: false,
            chart: ChartWish::default(),
        }
    }

    /// How a pattern is told that is printed so.
    pub fn telling(&self) -> Telling {
        let patches = self.print != Print::Black;
        Telling { rounds: self.rounds, plain_words: self.plain_words, large: self.large, patches }
    }
}

/// The pictures of a pattern, drawn at the size at which they are to be printed.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Pictures {
    /// The picture on the cover; made smaller where it must be.
    pub cover: Option<Arc<Drawing>>,
    /// The piece as it is drawn from the pattern, with its caption, where a photograph stands on the cover.
    pub piece: Option<(Arc<Drawing>, String)>,
    /// The symbols, explained.
    pub key: Option<Arc<Drawing>>,
    /// The charts in order, each with its caption.
    pub charts: Vec<(Arc<Drawing>, String)>,
    /// The symbols of each chart, small enough to stand under it; empty where they can't stand under every one.
    pub keys: Vec<Arc<Drawing>>,
    /// The side views in order, each with its caption.
    pub schematics: Vec<(Arc<Drawing>, String)>,
    /// The piece on its way, with its caption.
    pub steps: Option<(Arc<Drawing>, String)>,
    /// The piece in other colours, with its caption.
    pub colours: Option<(Arc<Drawing>, String)>,
    /// The outline at its true size, with its caption.
    pub true_size: Option<(Arc<Drawing>, String)>,
}

impl Pictures {
    /// What a story can speak of where these pictures go with it.
    pub fn illustrations(&self) -> Illustrations {
        let captions = |drawn: &[(Arc<Drawing>, String)]| drawn.iter().map(|(_, caption)| caption.clone()).collect();
        Illustrations {
            piece: self.piece.as_ref().map(|(_, caption)| caption.clone()),
            key: self.key.is_some(),
            charts: captions(&self.charts),
            chart_keys: self.keys.len(),
            schematics: captions(&self.schematics),
            steps: self.steps.as_ref().map(|(_, caption)| caption.clone()),
            colours: self.colours.as_ref().map(|(_, caption)| caption.clone()),
            true_size: self.true_size.as_ref().map(|(_, caption)| caption.clone()),
        }
    }

    /// The picture that a story speaks of; nothing where it was told of others.
    pub fn shown(&self, illustration: Illustration) -> Option<&Arc<Drawing>> {
        match illustration {
            Illustration::Piece => self.piece.as_ref().map(|(drawing, _)| drawing),
            Illustration::Key => self.key.as_ref(),
            Illustration::Chart(index) => self.charts.get(index).map(|(drawing, _)| drawing),
            Illustration::ChartKey(index) => self.keys.get(index),
            Illustration::Schematic(index) => self.schematics.get(index).map(|(drawing, _)| drawing),
            Illustration::Steps => self.steps.as_ref().map(|(drawing, _)| drawing),
            Illustration::Colours => self.colours.as_ref().map(|(drawing, _)| drawing),
            Illustration::TrueSize => self.true_size.as_ref().map(|(drawing, _)| drawing),
        }
    }
}
