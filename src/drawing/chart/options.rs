//! What a chart shows, and how.

use super::{least_cell, least_cells};
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
    /// True for dotted lines between the repeats, where there are several.
    pub repeats: bool,
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
            repeats: false,
            demerits: false,
        }
    }
}

/// Papers a chart may be printed on, smallest first: ISO 216, less 10 mm on three sides and 15 mm at the foot.
const PAPERS: [(&str, f64, f64); 6] = [
    ("A5", 128.0, 185.0),
    ("A4", 190.0, 272.0),
    ("A3", 277.0, 395.0),
    ("A2", 400.0, 569.0),
    ("A1", 574.0, 816.0),
    ("A0", 821.0, 1164.0),
];

fn room((_, across, down): (&str, f64, f64)) -> (Mm, Mm) {
    (Mm::new(across), Mm::new(down))
}

/// Least height and width of a stitch's cell that is printed.
pub const LEAST_CELL: Mm = Mm::new(2.0);

/// Chooses the view of a size for a room, so that no cell is printed under [`LEAST_CELL`]: all rounds, then alike
/// rounds as bands, then one repeat. The reason is a sentence in the design's language; where nothing fits it names the
/// paper that would do, and the view is the one that comes nearest.
pub fn choose_view(plan: &Plan, size: usize, width: Mm, height: Mm) -> (ChartView, String) {
    let words = plan.design.words();
    let options = ChartOptions { width, height, ..ChartOptions::default() };
    let whole = least_cell(plan, size, &options);
    if whole >= LEAST_CELL {
        return (ChartView::Whole, words.with("view-whole", &[("cell", Arg::Text(&millimetres(whole, &words)))]));
    }
    let mut nearest = (ChartView::Whole, whole);
    let rises = plan.sizes.get(size).is_some_and(SizePlan::rises);
    let sector = if rises { "view-sector-rise" } else { "view-sector" };
    for (view, key) in [(ChartView::Bands, "view-bands"), (ChartView::Sector, sector)] {
        let cell = least_cell(plan, size, &ChartOptions { view, ..options.clone() });
        if cell >= LEAST_CELL {
            let (small, large) = (millimetres(whole, &words), millimetres(cell, &words));
            return (view, words.with(key, &[("small", Arg::Text(&small)), ("cell", Arg::Text(&large))]));
        }
        if cell > nearest.1 {
            nearest = (view, cell);
        }
    }
    let whole = least_cells(plan, size, ChartView::Whole, &PAPERS.map(room));
    let paper = PAPERS.iter().zip(whole).find(|(_, cell)| *cell >= LEAST_CELL);
    let small = millimetres(nearest.1, &words);
    let reason = match paper {
        Some(((paper, ..), _)) => words.with("view-paper", &[("cell", Arg::Text(&small)), ("paper", Arg::Text(paper))]),
        None => words.with("view-none", &[("cell", Arg::Text(&small))]),
    };
    (nearest.0, reason)
}

fn millimetres(cell: Mm, words: &Words) -> String {
    crate::words::numbers::decimal(cell.mm(), 1, words.language)
}

/// What can be read of a size, where a chart can't.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Readable {
    /// Views that can be read in the room there is: bands, one repeat, single parts, and as many rounds as there may be.
    pub views: Vec<ChartView>,
    /// Larger papers, smallest first, with the fullest view of each that no smaller one has.
    pub papers: Vec<(&'static str, ChartView)>,
}

/// Looks for views and papers on which no cell is under [`LEAST_CELL`].
pub fn readable(plan: &Plan, size: usize, width: Mm, height: Mm) -> Readable {
    let Some(sized) = plan.sizes.get(size) else { return Readable::default() };
    let here =
        |view: &ChartView| least_cells(plan, size, *view, &[(width, height)]).iter().all(|cell| *cell >= LEAST_CELL);
    let mut views: Vec<ChartView> = [ChartView::Bands, ChartView::Sector].into_iter().filter(here).collect();
    if sized.parts.len() > 1 {
        views.extend((0..sized.parts.len()).map(ChartView::Part).filter(here));
    }
    // Cells only shrink as rounds are added: the last number of rounds that fits lies between one that does and one not.
    let (mut most, mut over) = (0, sized.rounds.len() as u32);
    while most + 1 < over {
        let middle = most.midpoint(over);
        if here(&ChartView::UpTo(middle)) { most = middle } else { over = middle }
    }
    views.extend((most > 0).then_some(ChartView::UpTo(most)));
    let larger = PAPERS.into_iter().filter(|(_, across, down)| *across > width.mm() && *down > height.mm());
    let larger: Vec<(&'static str, f64, f64)> = larger.collect();
    let rooms: Vec<(Mm, Mm)> = larger.iter().copied().map(room).collect();
    let fullest = [ChartView::Whole, ChartView::Bands, ChartView::Sector];
    let cells = fullest.map(|view| (view, least_cells(plan, size, view, &rooms)));
    let mut papers: Vec<(&'static str, ChartView)> = Vec::new();
    for (index, (paper, ..)) in larger.iter().enumerate() {
        let mut fitting = cells.iter().filter(|(_, cells)| cells.get(index).is_some_and(|cell| *cell >= LEAST_CELL));
        let Some((view, _)) = fitting.next() else { continue };
        if papers.iter().all(|(_, told)| told != view) {
            papers.push((paper, *view));
        }
    }
    Readable { views, papers }
}
