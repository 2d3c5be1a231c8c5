//! Sizes and what the counts make of them.

use super::Story;
use crate::craft::Stitch;
use crate::design::SizeFigure;
use crate::design::hats::{uk_hat_size, us_hat_size};
use crate::geometry::sideview::{MeasureKind, side_view};
use crate::geometry::{Holds, Sits, Worn};
use crate::plan::{OVER_EARS, PartPlan, Polygon, SizePlan, TO_BROW};
use crate::story::{Block, Cell, Column, Illustration, Section, Table};
use crate::units::Mm;
use crate::words::Arg;
use crate::words::numbers::{decimal, length};

/// Most sizes that stand side by side in large print.
const SIDE_BY_SIDE: usize = 3;
/// Hats are labelled by size from about this head on: a baby's cap is known by age.
const LEAST_LABELLED: Mm = Mm::from_cm(48.0);

impl Story<'_> {
    pub(super) fn sizes(&self) -> Section {
        let mut blocks = vec![Block::Table(self.size_table())];
        let design = &self.plan.design;
        let mut sources: Vec<String> =
            design.sizes.iter().filter_map(|size| super::source_words(&size.source, &self.words)).collect();
        sources.dedup();
        if design.kind.row().worn && !sources.is_empty() {
            let source = sources.join(self.words.semicolon());
            blocks.push(Block::text(self.words.with("page-size-source", &[("source", Arg::Text(&source))])));
        }
        self.section("sizes", "page-sizes", true, blocks)
    }

    /// The side view with its measures.
    pub(super) fn side_view(&self) -> Section {
        let figures = self.figures(&self.illustrations.schematics, Illustration::Schematic);
        self.section("side", "page-side-view", true, figures.into_iter().map(Block::Figure).collect())
    }

    /// How deep a hat is asked to be, and how it sits.
    pub(super) fn fit(&self) -> Section {
        let mut blocks = Vec::new();
        if let Some(table) = self.depth_asked() {
            blocks.push(Block::Heading(self.say("page-depth-asked")));
            blocks.push(Block::text(self.say("page-depth-note")));
            let brim = self.plan.sizes.iter().any(|size| self.plan.brim(size).is_some());
            blocks.extend(brim.then(|| Block::text(self.say("page-depth-brim"))));
            blocks.push(Block::Table(table));
        }
        blocks.extend(self.on_the_head());
        self.section("fit", "page-fit", false, blocks)
    }

    /// What every part measures in every size.
    pub(super) fn measures(&self) -> Section {
        let mut blocks = vec![Block::text(self.say("page-measures-note"))];
        let last = self.plan.sizes.iter().filter_map(|size| size.rounds.last());
        let edged = last.into_iter().any(|last| last.stitch == Stitch::SL_ST);
        blocks.extend(edged.then(|| Block::text(self.say("page-measures-edge"))));
        blocks.push(Block::Table(self.part_table()));
        self.section("measures", "page-measures", false, blocks)
    }

    fn size_table(&self) -> Table {
        let mut columns = vec![Column::words(self.say("page-size"))];
        let mut rows: Vec<Vec<Cell>> = self.plan.sizes.iter().map(|size| vec![Cell::bold(size.name.clone())]).collect();
        for figure in self.plan.design.kind.row().sizes {
            let cells: Vec<Option<String>> =
                (0..self.plan.sizes.len()).map(|size| self.size_figure(*figure, size)).collect();
            // What no size has is not asked about.
            if cells.iter().all(Option::is_none) {
                continue;
            }
            let (key, numbers) = title(*figure);
            columns.push(if numbers { Column::numbers(self.say(key)) } else { Column::words(self.say(key)) });
            for (row, cell) in rows.iter_mut().zip(cells) {
                row.push(Cell::new(cell.unwrap_or("–".to_owned())));
            }
        }
        columns.extend(["page-rounds", "page-stitches-total"].map(|key| Column::numbers(self.say(key))));
        for (row, size) in rows.iter_mut().zip(&self.plan.sizes) {
            row.extend([size.rounds.len().to_string(), size.stitches().to_string()].map(Cell::new));
        }
        let table = Table {
            summary: self.say("page-sizes"),
            continued: String::new(),
            columns,
            head: true,
            row_heads: true,
            rows,
        };
        // In large letters the titles of so many columns would stand in four lines; a few sizes stand side by side.
        if self.telling.large && self.plan.sizes.len() <= SIDE_BY_SIDE { turned(table) } else { table }
    }

    /// One figure of a size as it is printed; nothing where the size has none.
    fn size_figure(&self, figure: SizeFigure, index: usize) -> Option<String> {
        let size = self.plan.sizes.get(index)?;
        let length = |value: Mm| length(value, self.plan.design.units, self.words.language);
        match figure {
            SizeFigure::Head => size.head.map(length),
            SizeFigure::Around => Some(length(size.finished)),
            SizeFigure::Across => match size.polygon() {
                Some(polygon) => Some(self.across(&polygon)),
                None => Some(length(size.finished / core::f64::consts::PI)),
            },
            SizeFigure::Ease => size.head.map(|head| self.ease(size.finished / head - 1.0)),
            SizeFigure::Depth => self.plan.depth(size).map(length),
            SizeFigure::Brim => self.plan.brim(size).map(length),
            SizeFigure::Height => self.height(index).map(length),
            SizeFigure::Folded => {
                let folded = self.plan.folded(size)?;
                // A rim that is longer than the piece is high does not fold down over it.
                self.height(index).map(|height| height - folded.length).filter(|left| *left > Mm::ZERO).map(length)
            }
            SizeFigure::HatSize => size.head.filter(|head| *head >= LEAST_LABELLED).map(|head| self.hat_size(head)),
        }
    }

    /// How wide a polygon is, between its sides and between its corners.
    fn across(&self, polygon: &Polygon) -> String {
        let told = |key, across| {
            let across = length(across, self.plan.design.units, self.words.language);
            self.words.with(key, &[("length", Arg::Text(&across))])
        };
        let flats = told("schematic-flats", polygon.across_flats);
        flats + ", " + &told("schematic-corners", polygon.across_corners)
    }

    /// Height of a size as it stands; nothing for what lies flat or where the shape isn't known.
    fn height(&self, index: usize) -> Option<Mm> {
        let (size, shape) = self.plan.sizes.get(index).zip(self.shapes.get(index))?;
        let view = side_view(self.plan, size, shape);
        view.measures.iter().find(|measure| measure.kind == MeasureKind::Height).map(|measure| measure.value)
    }

    /// How deep a head of each size asks a hat to be; nothing for what has no depth of its own.
    fn depth_asked(&self) -> Option<Table> {
        let heads: Vec<(&SizePlan, Mm)> = self
            .plan
            .sizes
            .iter()
            .filter_map(|size| self.plan.depth(size).and(size.head).map(|head| (size, head)))
            .collect();
        let keys = ["page-size", "page-to-brow", "page-over-ears"];
        let row = |(size, head): &(&SizePlan, Mm)| {
            let asked = [TO_BROW, OVER_EARS].map(|share| self.length_cell(Some(*head * share)));
            std::iter::once(Cell::bold(size.name.clone())).chain(asked).collect()
        };
        let table = Table {
            summary: self.say("page-depth-asked"),
            continued: String::new(),
            columns: keys.map(|key| Column::words(self.say(key))).to_vec(),
            head: true,
            row_heads: true,
            rows: heads.iter().map(row).collect(),
        };
        (!heads.is_empty()).then_some(table)
    }

    /// How a hat of each size sits on the head it is made for, and which way it is meant to be worn.
    fn on_the_head(&self) -> Vec<Block> {
        let worn: Vec<(&SizePlan, &Worn)> = self
            .plan
            .sizes
            .iter()
            .zip(self.shapes)
            .filter_map(|(size, shape)| Some((size, shape.worn.as_ref()?)))
            .collect();
        if worn.is_empty() {
            return Vec::new();
        }
        let columns = vec![
            Column::words(self.say("page-size")),
            Column::words(self.say("page-worn-tape")),
            Column::words(self.say("page-worn-reaches")),
            Column::numbers(self.say("page-worn-stretch")),
            Column::words(self.say("page-worn-holds")),
        ];
        let row = |(size, worn): &(&SizePlan, &Worn)| {
            let sits = match worn.sits() {
                Sits::Top => "page-worn-top",
                Sits::Brow => "page-worn-brow",
                Sits::Between => "page-worn-between",
                Sits::Ears => "page-worn-ears",
                Sits::Below => "page-worn-below",
            };
            let holds = match worn.holds() {
                Holds::Slips => "page-worn-slips",
                Holds::Rests => "page-worn-rests",
                Holds::Grips => "page-worn-grips",
                Holds::Pinches => "page-worn-pinches",
            };
            vec![
                Cell::bold(size.name.clone()),
                self.length_cell(Some(worn.tape)),
                Cell::new(self.say(sits)),
                Cell::new(self.ease(worn.grip)),
                Cell::new(self.say(holds)),
            ]
        };
        let rows = worn.iter().map(row).collect();
        let summary = self.say("page-worn");
        let table = Table { summary, continued: String::new(), columns, head: true, row_heads: true, rows };
        let mut blocks =
            vec![Block::Heading(self.say("page-worn")), Block::text(self.say("page-worn-note")), Block::Table(table)];
        let between = worn.iter().any(|(_, worn)| worn.sits() == Sits::Between);
        blocks.extend(between.then(|| Block::text(self.say("page-worn-way"))));
        blocks
    }

    fn part_table(&self) -> Table {
        let parts = || self.plan.sizes.iter().flat_map(|size| size.parts.iter().map(move |part| (size, part)));
        let keys = ["page-size", "page-part", "page-around", "page-length"];
        let columns = keys.map(|key| Column::words(self.say(key))).to_vec();
        let row = |(size, part): (&SizePlan, &PartPlan)| {
            let lengths = [part.reached, part.length].map(|length| self.length_cell(Some(length)));
            [Cell::bold(size.name.clone()), Cell::new(part.name.clone())].into_iter().chain(lengths).collect()
        };
        let rows = parts().map(row).collect();
        Table {
            summary: self.say("page-measures"),
            continued: String::new(),
            columns,
            head: true,
            row_heads: true,
            rows,
        }
    }

    /// The ease that a size really has: by how much it is wider than the head, `−2 %`.
    fn ease(&self, share: f64) -> String {
        let percent = decimal((share * 100.0).round().abs(), 0, self.words.language);
        let sign = if percent == "0" {
            ""
        } else if share < 0.0 {
            "−"
        } else {
            "+"
        };
        format!("{sign}{percent}\u{a0}%")
    }

    /// Hat size as labelled: US (UK), in an English pattern in UK terms the UK's alone.
    fn hat_size(&self, head: Mm) -> String {
        let [us, uk] = [us_hat_size(head), uk_hat_size(head)].map(|size| size.replace(' ', "\u{a0}"));
        if self.british() { uk } else { format!("{us} ({uk})") }
    }

    fn length_cell(&self, value: Option<Mm>) -> Cell {
        Cell::new(value.map_or("–".to_owned(), |value| length(value, self.plan.design.units, self.words.language)))
    }
}

/// The table with its columns as rows; the first column's cells become the titles.
fn turned(table: Table) -> Table {
    let Table { summary, continued, columns, head, row_heads, rows } = table;
    let mut titles = columns.into_iter().map(|column| column.title);
    let first = Column::words(titles.next().unwrap_or_default());
    let sizes = rows.iter().map(|row| Column::words(row.first().map_or(String::new(), Cell::text)));
    let turned = titles.enumerate().map(|(i, title)| {
        let cells = rows.iter().map(|row| row.get(i + 1).cloned().unwrap_or_default());
        std::iter::once(Cell::bold(title)).chain(cells).collect()
    });
    let turned = turned.collect();
    Table { summary, continued, columns: std::iter::once(first).chain(sizes).collect(), head, row_heads, rows: turned }
}

/// Message of a column's title, and whether its cells are numbers.
const fn title(figure: SizeFigure) -> (&'static str, bool) {
    match figure {
        SizeFigure::Head => ("page-head", false),
        SizeFigure::Around => ("page-finished", false),
        SizeFigure::Ease => ("page-ease", true),
        SizeFigure::Depth => ("page-depth", false),
        SizeFigure::Brim => ("page-brim-width", false),
        SizeFigure::Across => ("page-wide", false),
        SizeFigure::Height => ("page-height", false),
        SizeFigure::Folded => ("page-height-folded", false),
        SizeFigure::HatSize => ("page-hat-size", false),
    }
}
