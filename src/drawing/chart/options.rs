//! What a chart shows, and how.

use crate::geometry::rings::Row;
use crate::plan::SizePlan;
use crate::units::{Angle, Mm};

/// Which rounds a chart shows, and as what.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum ChartView {
    /// Every round as a ring of its own.
    #[default]
    Whole,
    /// Runs of alike even rounds as one labelled band.
    Bands,
    /// One repeat, large.
    Sector,
    /// The rounds of one part, by its index.
    Part(usize),
    /// The rounds up to and with this number.
    UpTo(u32),
}

impl ChartView {
    /// The rings it shows.
    pub(super) fn rows(self, size: &SizePlan) -> Vec<Row> {
        let count = size.rounds.len();
        match self {
            Self::Whole | Self::Sector => Row::each(0..count),
            Self::Bands => Row::banded(size),
            Self::UpTo(last) => Row::each(0..count.min(last as usize)),
            Self::Part(part) => size.parts.get(part).map_or(Vec::new(), |part| {
                Row::each((part.first.max(1) as usize - 1).min(count)..(part.last as usize).min(count))
            }),
        }
    }
}

/// How a chart is drawn.
#[derive(Clone, Debug, PartialEq)]
pub struct ChartOptions {
    /// What it shows.
    pub view: ChartView,
    /// Room across.
    pub width: Mm,
    /// Room down.
    pub height: Mm,
    /// Where rounds start, as an angle clockwise from twelve o'clock.
    pub start: Angle,
    /// True for a tint on every other round, or the colour of the yarn where there are several.
    pub tints: bool,
    /// True for an overlay of what is wrong with the placement.
    pub demerits: bool,
}

impl Default for ChartOptions {
    fn default() -> Self {
        Self {
            view: ChartView::Whole,
            width: Mm::new(190.0),
            height: Mm::new(190.0),
            start: Angle::ZERO,
            tints: true,
            demerits: false,
        }
    }
}
