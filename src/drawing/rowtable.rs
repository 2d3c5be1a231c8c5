//! The row table as a picture of its own: one line a round, no line broken, as wide as its longest instruction.

use std::collections::BTreeMap;

use kurbo::{BezPath, Point, Rect, Shape};

use super::{Anchor, Drawing, Ends, Group, Ink, Item, Origin, PathItem, Role, Stroke, TextItem};
use crate::font::Face;
use crate::notation::write::Writer;
use crate::notation::{Gaps, across};
use crate::plan::Plan;
use crate::story::{Grows, PartRows, RowLine, RowTable};
use crate::units::{Mm, Units, tidy};
use crate::words::numbers::signed;
use crate::words::{Arg, Words, capital};

/// Ink of rules: 3 : 1 on white.
const RULE: Ink = Ink([0x74, 0x82, 0x82]);
/// Ink of heads: 4.5 : 1 on white.
const HEAD: Ink = Ink([0x1b, 0x56, 0x5c]);
/// Room between columns, and the height of a line, in ems.
const GAP: f64 = 1.4;
const LINE: f64 = 1.75;
/// Room of a patch of colour before its name, in ems.
const PATCH: f64 = 1.3;
/// Room round the whole, in ems.
const MARGIN: f64 = 1.0;

/// How the row table is drawn.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct RowTableOptions {
    /// Em height of its words.
    pub letters: Mm,
    /// True for patches of yarn colour beside their names.
    pub swatches: bool,
}

impl Default for RowTableOptions {
    fn default() -> Self {
        Self { letters: Mm::new(3.6), swatches: true }
    }
}

/// Draws the row table of one size, or of all sizes in bracket form.
pub fn row_table(plan: &Plan, table: &RowTable, options: &RowTableOptions) -> Drawing {
    let words = plan.design.words();
    let writer = Writer { words: &words, terms: plan.design.terms };
    let mut pen = Pen { plan, words: &words, writer, options, em: options.letters.mm(), y: 0.0, items: Vec::new() };
    let title = match &table.size {
        Some(size) => {
            words.with("row-table-size", &[("title", Arg::Text(&plan.design.title.value)), ("size", Arg::Text(size))])
        }
        None => words.with("row-table", &[("title", Arg::Text(&plan.design.title.value))]),
    };
    let rows: Vec<Vec<String>> = table.parts.iter().flat_map(|part| &part.rows).map(|row| pen.cells(row)).collect();
    let columns = pen.columns(table, &rows);
    let width = columns.iter().map(|column| column.left + column.width).fold(0.0, f64::max);
    let title_width = Face::Bold.width(&title, pen.em * 1.4);
    pen.y += pen.em * 2.0;
    pen.text(&title, 0.0, pen.em * 1.4, Face::Bold, HEAD);
    for part in &table.parts {
        pen.part(part, &columns, width);
    }
    let margin = MARGIN * pen.em;
    let notes = table.parts.iter().filter_map(|part| part.every.as_ref()).map(|every| every.told(&pen.writer));
    let notes = notes.map(|note| Face::Regular.width(&note, pen.em)).fold(0.0, f64::max);
    let width = width.max(title_width).max(notes);
    let bounds = Rect::new(-margin, -margin * 0.5, width + margin, pen.y + margin * 1.5);
    Drawing {
        bounds,
        description: describe(&title, table, &pen),
        title,
        language: plan.design.language,
        symbols: BTreeMap::new(),
        items: pen.items,
    }
}

/// The table in words, line by line.
fn describe(title: &str, table: &RowTable, pen: &Pen<'_>) -> String {
    let mut lines = vec![format!("{title}.")];
    for part in &table.parts {
        lines.push(format!("{}.", part.name));
        lines.extend(part.every.as_ref().map(|every| every.told(&pen.writer)));
        let line = |row: &RowLine| {
            let (label, instruction, counts) = (pen.label(row), pen.instruction(row), pen.counts(row));
            format!("{label}{}{instruction} ({counts}).", pen.words.colon())
        };
        lines.extend(part.rows.iter().map(line));
    }
    lines.join(" ")
}

/// A kind of column.
struct ColumnRow {
    /// The message that stands over it; nothing where that hangs on what the part grows in.
    title: Option<&'static str>,
    face: Face,
    /// True where its cells stand right, as numbers do.
    right: bool,
    /// True where a patch of the yarn's colour stands before its words.
    patch: bool,
    /// What stands in it in a line; an empty text where it is not shown.
    cell: fn(&Pen<'_>, &RowLine) -> String,
}

/// The kinds of columns from left to right.
const COLUMNS: [ColumnRow; 6] = [
    ColumnRow {
        title: Some("page-round"),
        face: Face::Bold,
        right: false,
        patch: false,
        cell: |pen, row| pen.label(row),
    },
    ColumnRow {
        title: Some("page-instruction"),
        face: Face::Regular,
        right: false,
        patch: false,
        cell: |pen, row| pen.instruction(row),
    },
    ColumnRow {
        title: Some("page-stitches"),
        face: Face::Bold,
        right: true,
        patch: false,
        cell: |pen, row| pen.counts(row),
    },
    ColumnRow {
        title: Some("page-change"),
        face: Face::Regular,
        right: true,
        patch: false,
        cell: |pen, row| pen.changes(row),
    },
    ColumnRow { title: None, face: Face::Regular, right: true, patch: false, cell: |pen, row| pen.reached(row) },
    ColumnRow {
        title: Some("page-colour"),
        face: Face::Regular,
        right: false,
        patch: true,
        cell: |pen, row| pen.colour(row),
    },
];

/// A column in its place; no width where it is not shown.
struct Column {
    row: &'static ColumnRow,
    title: String,
    left: f64,
    width: f64,
}

struct Pen<'a> {
    plan: &'a Plan,
    words: &'a Words,
    writer: Writer<'a>,
    options: &'a RowTableOptions,
    em: f64,
    y: f64,
    items: Vec<Item>,
}

impl Pen<'_> {
    fn text(&mut self, text: &str, x: f64, size: f64, face: Face, ink: Ink) {
        let item = TextItem { face, ink, ..TextItem::new(text, Point::new(x, self.y), size) };
        self.items.push(Item::Text(item));
    }

    fn label(&self, row: &RowLine) -> String {
        self.writer.label(&row.label, Gaps::OPEN)
    }

    fn instruction(&self, row: &RowLine) -> String {
        let told = std::iter::once(self.writer.instruction(&row.instruction, Gaps::OPEN));
        told.chain(self.writer.remarks(&row.instruction)).collect::<Vec<_>>().join(". ")
    }

    fn counts(&self, row: &RowLine) -> String {
        row.counted(&self.writer, Gaps::OPEN)
    }

    fn changes(&self, row: &RowLine) -> String {
        across(&row.changes, |change| signed(*change), Gaps::OPEN)
    }

    fn reached(&self, row: &RowLine) -> String {
        row.reached.map_or(String::new(), |reached| match self.plan.design.units {
            Units::Cm => tidy(reached.cm(), 1).to_string(),
            Units::Inches => tidy(reached.inches(), 1).to_string(),
        })
    }

    /// Name of the yarn, where there are several.
    fn colour(&self, row: &RowLine) -> String {
        let colours = &self.plan.design.yarn.colours;
        let colour = row.colour.and_then(|colour| colours.get(colour)).filter(|_| colours.len() > 1);
        colour.map_or(String::new(), |colour| colour.name.clone())
    }

    fn cells(&self, row: &RowLine) -> Vec<String> {
        COLUMNS.iter().map(|column| (column.cell)(self, row)).collect()
    }

    fn columns(&self, table: &RowTable, rows: &[Vec<String>]) -> Vec<Column> {
        // The longest of the names of what parts grow in, so that there is room for every one.
        let names = table.parts.iter().map(|part| self.grows(part.grows));
        let longest = names.max_by_key(|name| name.chars().count()).unwrap_or_default();
        let mut left = 0.0;
        let mut columns = Vec::new();
        for (i, row) in COLUMNS.iter().enumerate() {
            let cells = rows.iter().filter_map(|row| row.get(i));
            let widest = cells.map(|cell| row.face.width(cell, self.em)).fold(0.0, f64::max);
            if widest == 0.0 {
                columns.push(Column { row, title: String::new(), left, width: 0.0 });
                continue;
            }
            let title = row.title.map_or_else(|| longest.clone(), |key| self.words.say(key));
            let patch = if row.patch { self.em * PATCH } else { 0.0 };
            let width = (widest + patch).max(Face::Bold.width(&title, self.em));
            columns.push(Column { row, title, left, width });
            left += width + GAP * self.em;
        }
        columns
    }

    fn grows(&self, grows: Grows) -> String {
        self.words.say(match grows {
            Grows::Across => "page-across",
            Grows::Down => "page-down",
        })
    }

    fn part(&mut self, part: &PartRows, columns: &[Column], width: f64) {
        self.y += self.em * 2.6;
        self.text(&capital(&part.name), 0.0, self.em * 1.15, Face::Bold, HEAD);
        if let Some(every) = &part.every {
            let note = every.told(&self.writer);
            self.y += self.em * LINE;
            self.text(&note, 0.0, self.em, Face::Regular, Ink::BLACK);
        }
        self.y += self.em * LINE;
        for column in columns.iter().filter(|column| column.width > 0.0) {
            let title = column.row.title.map_or_else(|| self.grows(part.grows), |_| column.title.clone());
            let item = self.aligned(&title, column, Face::Bold, 0.0);
            self.items.push(item);
        }
        self.rule(width, 2.0);
        for row in &part.rows {
            self.row(row, columns);
            self.rule(width, 1.0);
        }
    }

    fn row(&mut self, row: &RowLine, columns: &[Column]) {
        self.y += self.em * LINE;
        let mut items = Vec::new();
        for (cell, column) in self.cells(row).iter().zip(columns).filter(|(cell, _)| !cell.is_empty()) {
            let patch = if column.row.patch && self.options.swatches { self.em * PATCH } else { 0.0 };
            if patch > 0.0 {
                items.extend(self.patch(row, column.left));
            }
            items.push(self.aligned(cell, column, column.row.face, patch));
        }
        let first = row.numbers.iter().flatten().next().map(|(first, _)| *first);
        let origin = first.map_or(Origin::None, Origin::Round);
        self.items.push(Item::Group(Group { id: String::new(), role: Role::Plain, origin, items }));
    }

    fn patch(&self, row: &RowLine, left: f64) -> Option<Item> {
        let colour = self.plan.design.yarn.colours.get(row.colour?)?;
        let side = self.em * 0.8;
        let path = Rect::from_origin_size((left, self.y - side * 0.92), (side, side)).to_path(0.1);
        let stroke = Stroke { width: self.em * 0.06, ink: Ink::BLACK, ends: Ends::Butt, dashes: Vec::new() };
        Some(Item::Path(PathItem { path, fill: Some(Ink(colour.rgb)), stroke: Some(stroke) }))
    }

    fn aligned(&self, text: &str, column: &Column, face: Face, indent: f64) -> Item {
        let (x, anchor) = if column.row.right {
            (column.left + column.width, Anchor::End)
        } else {
            (column.left + indent, Anchor::Start)
        };
        Item::Text(TextItem { face, anchor, ..TextItem::new(text, Point::new(x, self.y), self.em) })
    }

    fn rule(&mut self, width: f64, weight: f64) {
        let y = self.y + self.em * 0.55;
        let mut path = BezPath::new();
        path.move_to((0.0, y));
        path.line_to((width, y));
        let stroke = Stroke { width: weight * self.em * 0.05, ink: RULE, ends: Ends::Butt, dashes: Vec::new() };
        self.items.push(Item::Path(PathItem { path, fill: None, stroke: Some(stroke) }));
    }
}
