//! The pictures of a pattern, each drawn for the room in which it is shown.

use std::sync::Arc;

use crate::drawing::{
    ChartOptions, ChartView, Drawing, KeyOptions, LEAST_CELL, RowTableOptions, SchematicOptions, chart, choose_view,
    key, least_cell, row_table, schematic, symbol_sheet,
};
use crate::geometry::{RowTable, SideShape};
use crate::notation::write::Writer;
use crate::plan::Plan;
use crate::units::Mm;
use crate::words::Words;

use super::wall::{self, Wall};
use super::{Options, Paper, Pictures, Print, Style};

/// Room that heading and caption take from a page that holds one picture.
const FURNITURE: Mm = Mm::new(34.0);
/// Share of a page that the schematic of a booklet may fill; in large print nearly all of it.
const SCHEMATIC_SHARE: [f64; 2] = [0.76, 0.95];
/// Sizes that can be told apart when they are nested in one schematic.
const MOST_NESTED: usize = 6;
/// Large sheets for wall charts, smallest first: ISO 216 and the sheets of the United States.
const SHEETS: [[&str; 4]; 2] = [["A3", "A2", "A1", "A0"], ["Tabloid", "Arch C", "Arch D", "Arch E"]];

impl Pictures {
    /// Draws everything that a booklet shows of a plan. `shapes` holds the predicted shape of every size.
    pub fn draw(plan: &Plan, shapes: &[SideShape], options: &Options) -> Self {
        let style = Style::new(&options.paper, options.print, options.large);
        let (width, height) = (Mm::new(style.width()), Mm::new(style.height()) - FURNITURE);
        let middle = plan.sizes.len() / 2;
        let charts = (0..plan.sizes.len()).map(|index| {
            let (view, reason) = choose_view(plan, index, width, height);
            let drawing = chart(plan, index, &chart_options(view, width, height, options));
            let caption = if view == ChartView::Whole { String::new() } else { reason };
            (Arc::new(drawing), caption)
        });
        let charts: Vec<(Arc<Drawing>, String)> = charts.collect();
        let room = SchematicOptions {
            width,
            height: height * SCHEMATIC_SHARE[usize::from(options.large)],
            ..schematic_options(options)
        };
        let schematics = schematics(plan, shapes, &room);
        Self {
            cover: charts.get(middle).map(|(drawing, _)| drawing.clone()),
            key: Some(Arc::new(chart_key(plan, middle, choose_view(plan, middle, width, height).0, width, options))),
            schematics: schematics.into_iter().map(|drawing| (Arc::new(drawing), String::new())).collect(),
            charts,
            shapes: shapes.to_vec(),
        }
    }
}

/// The sizes nested in one schematic where they can be told apart and the list of their measures fits; else one each.
fn schematics(plan: &Plan, shapes: &[SideShape], room: &SchematicOptions) -> Vec<Drawing> {
    let all: Vec<usize> = (0..plan.sizes.len()).collect();
    if all.len() <= MOST_NESTED {
        let nested = schematic(plan, &all, shapes, room);
        let fits = nested.bounds.width() <= room.width.mm() && nested.bounds.height() <= room.height.mm();
        if fits || all.len() < 2 {
            return vec![nested];
        }
    }
    all.iter().zip(shapes).map(|(&size, shape)| schematic(plan, &[size], std::slice::from_ref(shape), room)).collect()
}

/// How a chart is drawn for a print.
pub fn chart_options(view: ChartView, width: Mm, height: Mm, options: &Options) -> ChartOptions {
    ChartOptions { view, width, height, tints: options.print == Print::Colour, ..ChartOptions::default() }
}

/// How a schematic is drawn for a print.
pub fn schematic_options(options: &Options) -> SchematicOptions {
    let letters = if options.large { Mm::new(5.0) } else { Mm::new(2.5) };
    let plain_black = options.print == Print::Black;
    SchematicOptions { letters, heavy: options.large, plain_black, ..SchematicOptions::default() }
}

/// The key to the chart of a size in one of its views.
pub fn chart_key(plan: &Plan, size: usize, view: ChartView, width: Mm, options: &Options) -> Drawing {
    key(plan, size, &KeyOptions { bands: view == ChartView::Bands, ..key_options(width, options) })
}

/// The whole symbol set, in the language and terms of a plan.
pub fn symbols(plan: &Plan, width: Mm, options: &Options) -> Drawing {
    symbol_sheet(plan.design.language, plan.design.terms, &key_options(width, options))
}

fn key_options(width: Mm, options: &Options) -> KeyOptions {
    let plain = KeyOptions { width, tints: options.print == Print::Colour, ..KeyOptions::default() };
    if options.large { grown(plain, Mm::from_points(18.0) / plain.letters) } else { plain }
}

/// A key with larger symbols and letters.
fn grown(key: KeyOptions, by: f64) -> KeyOptions {
    KeyOptions { unit: key.unit * by, letters: key.letters * by, column: key.column * by, ..key }
}

/// The row table of a size as a picture of its own.
pub fn table_picture(plan: &Plan, size: usize, shapes: &[SideShape], options: &Options) -> Option<Drawing> {
    let words = Words::of(plan.design.language);
    let writer = Writer { words: &words, terms: plan.design.terms };
    let table = RowTable::of_size(plan, plan.sizes.get(size)?, shapes.get(size), &writer);
    let plain = RowTableOptions { swatches: options.print != Print::Black, ..RowTableOptions::default() };
    let large = RowTableOptions { letters: Mm::from_points(18.0), ..plain };
    Some(row_table(plan, &table, if options.large { &large } else { &plain }))
}

/// A wall chart for one sheet of `paper`: the key is drawn first, and the chart fills what it leaves.
pub fn wall_picture(plan: &Plan, size: usize, view: ChartView, paper: &Paper, options: &Options) -> Wall {
    let (width, _) = paper.printable();
    let beside = KeyOptions { bands: view == ChartView::Bands, ..key_options(width - wall::KEY_INSET, options) };
    let key = key(plan, size, &grown(beside, wall::growth(paper)));
    let (width, height) = wall::chart_room(plan, size, paper, Mm::new(key.bounds.height()), options);
    let chart = chart(plan, size, &chart_options(view, width, height, options));
    Wall { size, chart: Arc::new(chart), key: Some(Arc::new(key)) }
}

/// The smallest large sheet, of the family that the paper of `options` belongs to, on which every round of a size can be
/// read; the largest where none is large enough.
pub fn wall_sheet(plan: &Plan, size: usize, options: &Options) -> Paper {
    let home = &options.paper;
    let american = home.name.starts_with(['L', 'T']) || home.name.starts_with("Arch");
    let sheets = SHEETS[usize::from(american)].iter().filter_map(|name| Paper::by_name(name).ok());
    let sheets: Vec<Paper> = sheets.collect();
    let fits = |paper: &&Paper| {
        let (width, height) = wall::chart_room(plan, size, paper, Mm::ZERO, options);
        let options = ChartOptions { width, height, ..ChartOptions::default() };
        least_cell(plan, size, &options) >= LEAST_CELL
    };
    sheets.iter().find(fits).or(sheets.last()).cloned().unwrap_or_else(Paper::a4)
}
