//! What a chart shows, and how.

use super::least_cell;
use crate::geometry::rings::Row;
use crate::plan::{Plan, SizePlan};
use crate::units::{Angle, Mm};
use crate::words::{Arg, Words};

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

/// Papers a chart may be printed on, smallest first: ISO 216, less 10 mm on three sides and 15 mm at the foot.
const PAPERS: [(&str, f64, f64); 5] =
    [("A4", 190.0, 272.0), ("A3", 277.0, 395.0), ("A2", 400.0, 569.0), ("A1", 574.0, 816.0), ("A0", 821.0, 1164.0)];

/// Least height and width of a stitch's cell that is printed.
pub const LEAST_CELL: Mm = Mm::new(2.0);

/// Chooses the view of a size for a room, so that no cell is printed under [`LEAST_CELL`]: all rounds, then alike
/// rounds as bands, then one repeat. The reason is a sentence in the design's language; where nothing fits it names the
/// paper that would do, and the view is the one that comes nearest.
pub fn choose_view(plan: &Plan, size: usize, width: Mm, height: Mm) -> (ChartView, String) {
    let words = Words::of(plan.design.language);
    let least = |view: ChartView, width: Mm, height: Mm| {
        least_cell(plan, size, &ChartOptions { view, width, height, ..ChartOptions::default() })
    };
    let millimetres = |cell: Mm| crate::words::numbers::decimal(cell.mm(), 1, words.language);
    let whole = least(ChartView::Whole, width, height);
    if whole >= LEAST_CELL {
        return (ChartView::Whole, words.with("view-whole", &[("cell", Arg::Text(&millimetres(whole)))]));
    }
    let mut nearest = (ChartView::Whole, whole);
    for (view, key) in [(ChartView::Bands, "view-bands"), (ChartView::Sector, "view-sector")] {
        let cell = least(view, width, height);
        if cell >= LEAST_CELL {
            let (small, large) = (millimetres(whole), millimetres(cell));
            return (view, words.with(key, &[("small", Arg::Text(&small)), ("cell", Arg::Text(&large))]));
        }
        if cell > nearest.1 {
            nearest = (view, cell);
        }
    }
    let fits = |(_, width, height): &&(&str, f64, f64)| {
        least(ChartView::Whole, Mm::new(*width), Mm::new(*height)) >= LEAST_CELL
    };
    let small = millimetres(nearest.1);
    let reason = match PAPERS.iter().find(fits) {
        Some((paper, ..)) => words.with("view-paper", &[("cell", Arg::Text(&small)), ("paper", Arg::Text(paper))]),
        None => words.with("view-none", &[("cell", Arg::Text(&small))]),
    };
    (nearest.0, reason)
}
