//! Sizes and what the counts make of them.

use super::Story;
use crate::design::hats::{uk_hat_size, us_hat_size};
use crate::plan::{PartPlan, SizePlan};
use crate::story::{Block, Cell, Column, Illustration, Section, Table};
use crate::units::Mm;
use crate::words::Arg;
use crate::words::numbers::{decimal, length};

/// Most sizes that stand side by side in large print.
const SIDE_BY_SIDE: usize = 3;

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
        blocks.extend(
            self.figures(&self.illustrations.schematics, Illustration::Schematic).into_iter().map(Block::Figure),
        );
        blocks.push(Block::Heading(self.say("page-measures")));
        blocks.push(Block::text(self.say("page-measures-note")));
        blocks.push(Block::Table(self.part_table()));
        self.section("sizes", "page-sizes", true, blocks)
    }

    fn size_table(&self) -> Table {
        let heads = self.plan.sizes.iter().any(|size| size.head.is_some());
        let mut columns = vec![Column::words(self.say("page-size"))];
        if heads {
            columns.push(Column::words(self.say("page-head")));
        }
        columns.push(Column::words(self.say("page-finished")));
        if heads {
            columns.push(Column::numbers(self.say("page-ease")));
            columns.push(Column::words(self.say("page-hat-size")));
        }
        columns.extend(["page-rounds", "page-stitches-total"].map(|key| Column::numbers(self.say(key))));
        let row = |size: &SizePlan| {
            let mut row = vec![Cell::bold(size.name.clone())];
            if heads {
                row.push(self.length_cell(size.head));
            }
            row.push(self.length_cell(Some(size.finished)));
            if heads {
                row.push(Cell::new(size.head.map_or("–".to_owned(), |head| self.ease(size.finished / head - 1.0))));
                row.push(Cell::new(size.head.map_or("–".to_owned(), hat_size)));
            }
            row.push(Cell::new(size.rounds.len().to_string()));
            row.push(Cell::new(size.stitches().to_string()));
            row
        };
        let rows = self.plan.sizes.iter().map(row).collect();
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

/// Hat size labels, US (UK).
fn hat_size(head: Mm) -> String {
    format!("{} ({})", us_hat_size(head).replace(' ', "\u{a0}"), uk_hat_size(head).replace(' ', "\u{a0}"))
}
