//! Tables → slabs: columns as wide as they need, rows never split, the head repeated on every page.

use std::collections::BTreeMap;

use kurbo::{Point, Rect};

use crate::font::Face;
use crate::units::{EPSILON, TOLERANCE};

use super::flow::{Bit, Flow, Shows, Slab, bar, baseline, frame, ornament};
use super::{Artifact, Owner, Scope, Tag};
use crate::story::{Cell, Column, Run, Table};

/// Cost of ending a page between two rows.
const INSIDE_TABLE: f64 = 0.15;
/// Share of the width that the growing column has at least, where there is one.
const GROWN: f64 = 0.3;

/// Room left and right of a table's words, in ems.
const INDENT: f64 = 0.4;
/// Most that a column is widened by, in ems, where the table is narrower than the page.
const SPREAD: f64 = 2.0;

/// The same where the long words stand below the others.
const SPREAD_ABOVE: f64 = 0.4;

/// Most tick boxes in a row, where there is room for as many.
const TICKS_ACROSS: u32 = 5;
/// The same where room is scarce.
const FEW_TICKS: u32 = 3;
/// Side of boxes, mm, above which room is always scarce.
const LARGE_TICK: f64 = 5.0;

/// Lines of a row that can stand alone on a page.
const LONELY: f64 = 4.0;

/// Room between columns in ems, and where the long words stand below the others and these need what there is.
const GAP: f64 = 0.9;
const NARROW_GAP: f64 = 0.65;

/// Narrowest growing column, in ems: below that its words go on a line of their own.
const STACKED: f64 = 15.0;

/// Share of the height of tables that closer columns must save.
const WORTH_CLOSER: f64 = 0.02;
/// Added to a width for two lines, in ems: labels alike but for their figures then all break or none does.
const FIGURES: f64 = 0.35;
/// Rows that are tried in several ways before the best is kept for all.
const TRIED: usize = 300;

/// Most lines of boxes to tick in one row.
const TICK_LINES: u32 = 8;

/// What the columns of a table want.
#[derive(Clone, Debug, Default)]
pub(super) struct Wants {
    /// The least and the natural width of each.
    widths: Vec<(f64, f64)>,
    /// True where they are to stand closer together than usual.
    closer: bool,
}

/// Where a column lies and how its words end.
struct Rail {
    left: f64,
    width: f64,
    right: bool,
    /// True where its cells stand on a line of their own below the others.
    below: bool,
}

impl Flow<'_> {
    /// Adds a table in the frame in force, its columns wanting the widths `wants`.
    pub(super) fn table(&mut self, table: &Table, wants: &Wants, parent: usize) {
        let style = self.style;
        let rails = self.rails(table, wants);
        let edge = rails.iter().map(|rail| rail.left + rail.width).fold(0.0, f64::max);
        let right = if edge > 0.0 { edge + style.table * INDENT } else { self.frame.1 };
        let element = self.document.element(Tag::Table(table.summary.clone()), Some(parent));
        let mut head = None;
        if table.head {
            let cells: Vec<Cell> = table.columns.iter().map(|column| Cell::bold(column.title.clone())).collect();
            let part = self.document.element(Tag::TableHead, Some(element));
            let mut slab = self.row(&cells, &rails, part, Some(Scope::Column), false);
            // A head alone at the foot of a page heads nothing.
            slab.extent.keep = true;
            if let Some(tint) = style.palette.tint {
                slab.bits.insert(0, ornament(vec![bar(self.frame.0, 0.0, right, slab.extent.height, tint)]));
            }
            slab.bits.push(ornament(vec![bar(
                self.frame.0,
                slab.extent.height - style.hair * 2.0,
                right,
                style.hair * 2.0,
                style.palette.accent,
            )]));
            self.heads.push(self.repeated(&slab, &table.continued));
            head = Some(self.heads.len() - 1);
            self.slabs.push(slab);
        }
        let part = self.document.element(Tag::TableBody, Some(element));
        let pieces: Vec<(Vec<Cell>, bool, bool)> = table.rows.iter().flat_map(|row| self.pieces(row, &rails)).collect();
        let count = pieces.len();
        for (i, (cells, first, last)) in pieces.iter().enumerate() {
            let mut slab = self.row(cells, &rails, part, None, table.row_heads && *first);
            let height = slab.extent.height;
            if *last {
                slab.bits.push(ornament(vec![bar(
                    self.frame.0,
                    height - style.hair,
                    right,
                    style.hair,
                    style.palette.rule,
                )]));
            }
            // Two rows stay together at either end.
            slab.extent.keep = i == 0 && count > 1 || i + 2 == count;
            slab.extent.cost = if i + 1 < count { INSIDE_TABLE } else { 0.0 };
            slab.head = head.filter(|_| i > 0);
            slab.extent.repeat = slab.head.and_then(|head| self.heads.get(head)).map_or(0.0, |(height, _)| *height);
            self.slabs.push(slab);
        }
        // A last row of many lines is not lonely on a page.
        if let [.., before, last] = self.slabs.as_mut_slice() {
            before.extent.keep &= count < 3 || last.extent.height < LONELY * style.table * style.leading;
        }
    }

    /// A table's head for the next page, under a line that says what goes on there.
    fn repeated(&self, head: &Slab, continued: &str) -> (f64, Vec<Bit>) {
        let style = self.style;
        let owner = Owner::Artifact(Artifact::Head);
        let lines = self.style.setter.wrap(&[Run::bold(continued)], style.table, self.frame.1 - self.frame.0);
        let line = style.table * style.leading;
        let mut bits = Vec::new();
        for (i, words) in lines.iter().enumerate() {
            let at = Point::new(self.frame.0, i as f64 * line + baseline(style.table, line));
            let items = words.items(at, style.table, style.palette.accent, i + 1 == lines.len());
            let shows = Shows::Items(items.into_iter().map(|(_, item)| item).collect());
            bits.push(Bit { owner, language: None, shows });
        }
        let down = lines.len() as f64 * line + if lines.is_empty() { 0.0 } else { style.table * 0.3 };
        bits.extend(head.bits.iter().cloned().map(|bit| Bit { owner, ..bit.moved(down) }));
        (down + head.extent.height, bits)
    }

    /// A row with no more boxes to tick than a page breaks well at, and the rows below it that hold the rest of them in
    /// the widest column; each with whether it is the first and the last of these.
    fn pieces(&self, cells: &[Cell], rails: &[Rail]) -> Vec<(Vec<Cell>, bool, bool)> {
        let most: Vec<u32> = rails.iter().map(|rail| self.ticks_across(rail.width) * TICK_LINES).collect();
        let kept = cells.iter().zip(&most).map(|(cell, most)| Cell { ticks: cell.ticks.min(*most), ..cell.clone() });
        let kept: Vec<Cell> = kept.collect();
        let mut rest: u32 = cells.iter().zip(&kept).map(|(cell, kept)| cell.ticks - kept.ticks).sum();
        let widest = (0..rails.len()).max_by(|a, b| rails[*a].width.total_cmp(&rails[*b].width)).unwrap_or(0);
        let mut pieces = vec![(kept, true, rest == 0)];
        while let (Some(most), true) = (most.get(widest), rest > 0) {
            let ticks = rest.min(*most);
            rest -= ticks;
            let mut cells = vec![Cell::default(); rails.len()];
            cells[widest] = Cell::ticks(ticks);
            pieces.push((cells, false, rest == 0));
        }
        pieces
    }

    /// One row. `heads` makes every cell a head of its column; `first_head` makes the first cell the head of its row.
    fn row(&mut self, cells: &[Cell], rails: &[Rail], part: usize, heads: Option<Scope>, first_head: bool) -> Slab {
        let style = self.style;
        let row = self.document.element(Tag::Row, Some(part));
        let pad = style.table * 0.19;
        let mut owners = Vec::new();
        for i in 0..cells.len().min(rails.len()) {
            let tag = match heads {
                Some(scope) => Tag::HeaderCell(scope),
                None if first_head && i == 0 => Tag::HeaderCell(Scope::Row),
                None => Tag::Cell,
            };
            owners.push(self.document.element(tag, Some(row)));
        }
        let mut slab = self.slab(0.0, false);
        let mut top = pad;
        for below in [false, true] {
            let mut height: f64 = if below { 0.0 } else { style.table * style.leading };
            for ((cell, rail), owner) in cells.iter().zip(rails).zip(&owners) {
                if rail.below == below {
                    height = height.max(self.cell(&mut slab, cell, rail, *owner, top));
                }
            }
            top += height;
        }
        slab.extent.height = top + pad + style.hair;
        slab
    }

    /// Puts a cell at its rail and gives its height.
    fn cell(&self, slab: &mut Slab, cell: &Cell, rail: &Rail, owner: usize, top: f64) -> f64 {
        if cell.ticks > 0 {
            return self.ticks(slab, cell.ticks, rail, owner, top);
        }
        self.cell_words(slab, cell, rail, owner, top)
    }

    fn cell_words(&self, slab: &mut Slab, cell: &Cell, rail: &Rail, owner: usize, pad: f64) -> f64 {
        let style = self.style;
        let line = style.table * style.leading;
        let indent = self.swatch_room(cell);
        let lines = self.style.setter.wrap(&cell.runs, style.table, (rail.width - indent).max(style.table));
        if let Some(rgb) = cell.swatch {
            let side = style.table * 0.8;
            let top = pad + (line - side) / 2.0;
            let area = Rect::new(rail.left, top, rail.left + side, top + side);
            let item = frame(area, style.hair * 1.5, style.palette.text, Some(crate::drawing::Ink(rgb)));
            slab.bits.push(ornament(vec![item]));
        }
        for (i, words) in lines.iter().enumerate() {
            let left = if rail.right { rail.left + rail.width - words.width } else { rail.left + indent };
            let at = Point::new(left, pad + i as f64 * line + baseline(style.table, line));
            self.put(&mut slab.bits, words, at, style.table, style.palette.text, owner, i + 1 == lines.len());
        }
        lines.len() as f64 * line
    }

    fn swatch_room(&self, cell: &Cell) -> f64 {
        if cell.swatch.is_some() { self.style.table * 1.2 } else { 0.0 }
    }

    fn ticks(&self, slab: &mut Slab, count: u32, rail: &Rail, owner: usize, pad: f64) -> f64 {
        let style = self.style;
        let pitch = style.tick * 1.35;
        // Boxes larger than a line make the line as high as they need.
        let line = (style.table * style.leading).max(pitch);
        // Rows of boxes as even as they can be.
        let rows = count.div_ceil(self.ticks_across(rail.width));
        let across = count.div_ceil(rows.max(1)).max(1);
        let mut items = Vec::new();
        for i in 0..count {
            let (column, row) = (i % across, i / across);
            let x = rail.left + f64::from(column) * pitch;
            let y = pad + f64::from(row) * line + (line - style.tick) / 2.0;
            let area = Rect::new(x, y, x + style.tick, y + style.tick);
            items.push(frame(area, style.hair * 1.6, style.palette.text, None));
        }
        slab.bits.push(Bit { owner: Owner::Element(owner), language: None, shows: Shows::Items(items) });
        f64::from(count.div_ceil(across)) * line
    }

    fn ticks_across(&self, width: f64) -> u32 {
        let pitch = self.style.tick * 1.35;
        (((width + 0.35 * self.style.tick + TOLERANCE) / pitch).floor() as u32).clamp(1, 12)
    }

    /// Room between columns: less of it where then no words need to be broken, or where otherwise even the longest word
    /// would be.
    fn gap_between(&self, wants: &[(f64, f64)]) -> f64 {
        let (usual, narrow) = (self.style.table * GAP, self.style.table * NARROW_GAP);
        let whole = self.frame.1 - self.frame.0 - 2.0 * self.style.table * INDENT;
        let gaps = wants.len().max(2) as f64 - 1.0;
        let least: f64 = wants.iter().map(|(least, _)| least).sum();
        // What each gap could have if no words were broken.
        let fitting = (whole - natural_width(wants)) / gaps;
        if fitting >= narrow {
            fitting.min(usual)
        } else if least + usual * gaps > whole {
            narrow
        } else {
            usual
        }
    }

    /// The least and the natural widths that the columns of each table want; tables of a kind want the same. Where the
    /// words only fit on one line if boxes to tick stand closer together, these do, in more lines.
    pub(super) fn wants_side_by_side(&self, tables: &[&Table]) -> Vec<Wants> {
        let mut kinds = BTreeMap::new();
        let wants = self.widths_side_by_side(tables);
        let eased = tables.iter().zip(wants).map(|(table, widths)| {
            let alike =
                || -> Vec<&Table> { tables.iter().copied().filter(|other| other.kind() == table.kind()).collect() };
            let eased = kinds.entry(table.kind()).or_insert_with(|| self.eased(&alike(), widths));
            eased.clone()
        });
        eased.collect()
    }

    /// What tables of one kind want: where that saves lines, columns give way to the growing one, with two lines instead
    /// of one, fewer boxes side by side, or less room between them.
    fn eased(&self, tables: &[&Table], widths: Vec<(f64, f64)>) -> Wants {
        let usual = Wants { widths, closer: false };
        let Some(first) = tables.first().filter(|table| table.columns.iter().any(|column| column.grows)) else {
            return usual;
        };
        // Every column but the growing one as narrow as two lines allow, where that is narrower than one.
        let mut widths = usual.widths.clone();
        for (i, (want, column)) in widths.iter_mut().zip(&first.columns).enumerate() {
            let narrow = tables.iter().map(|table| self.folded(table, i)).fold(0.0, f64::max);
            let narrow = narrow + FIGURES * self.style.table;
            if !column.grows && narrow < want.1 {
                *want = (narrow, narrow);
            }
        }
        let mut best = Wants { widths, closer: true };
        let mut height = self.height_of(tables, &best);
        // What gave way without need takes its room again.
        let apart = Wants { closer: false, ..best.clone() };
        let other = self.height_of(tables, &apart);
        // Closer columns read worse: they must earn it.
        if other * (1.0 - WORTH_CLOSER) <= height {
            (best, height) = (apart, other);
        }
        for (i, want) in usual.widths.iter().enumerate().rev() {
            let mut tried = best.clone();
            match tried.widths.get_mut(i) {
                Some(width) if width != want => *width = *want,
                _ => continue,
            }
            let other = self.height_of(tables, &tried);
            if other <= height + TOLERANCE {
                (best, height) = (tried, other);
            }
        }
        if self.height_of(tables, &usual) <= height + TOLERANCE { usual } else { best }
    }

    /// Width of a column whose cells stand in two lines at most.
    fn folded(&self, table: &Table, index: usize) -> f64 {
        let size = self.style.table;
        let title = table.columns.get(index).map_or("", |column| &column.title);
        let title = if table.head { self.style.setter.width_in_two(&[Run::bold(title)], size) } else { 0.0 };
        let cells = table.rows.iter().filter_map(|row| row.get(index)).map(|cell| {
            let across = cell.ticks.div_ceil(cell.ticks.div_ceil(FEW_TICKS).max(1));
            let boxes = self.style.tick * 1.35 * f64::from(across);
            (self.style.setter.width_in_two(&cell.runs, size) + self.swatch_room(cell)).max(boxes)
        });
        cells.fold(title, f64::max)
    }

    /// Height of the first rows of tables whose columns get what they want.
    fn height_of(&self, tables: &[&Table], wants: &Wants) -> f64 {
        let rows = tables.iter().flat_map(|table| {
            let rails = self.rails(table, wants);
            table.rows.iter().map(move |row| self.row_height(row, &rails)).collect::<Vec<_>>()
        });
        rows.take(TRIED).sum()
    }

    fn row_height(&self, cells: &[Cell], rails: &[Rail]) -> f64 {
        let style = self.style;
        let line = style.table * style.leading;
        // What stands below the others, and the others, each as high as the highest of its cells.
        let heights = [false, true].map(|below| {
            let cells = cells.iter().zip(rails).filter(|(_, rail)| rail.below == below).map(|(cell, rail)| {
                if cell.ticks > 0 {
                    let rows = cell.ticks.div_ceil(self.ticks_across(rail.width));
                    return f64::from(rows) * line.max(style.tick * 1.35);
                }
                let width = (rail.width - self.swatch_room(cell)).max(style.table);
                self.style.setter.wrap(&cell.runs, style.table, width).len() as f64 * line
            });
            cells.fold(if below { 0.0 } else { line }, f64::max)
        });
        heights[0] + heights[1]
    }

    fn widths_side_by_side(&self, tables: &[&Table]) -> Vec<Vec<(f64, f64)>> {
        // The large boxes of large print leave the room to the words.
        let across = if self.style.tick > LARGE_TICK { FEW_TICKS } else { TICKS_ACROSS };
        let wants = self.wants_with(tables, across);
        if wants.iter().all(|wants| self.fit(wants)) {
            return wants;
        }
        // Fewer boxes side by side cost lines: only where that saves words from being broken.
        let closer = self.wants_with(tables, FEW_TICKS);
        if closer.iter().all(|wants| self.fit(wants)) { closer } else { wants }
    }

    /// True where no words need to be broken with narrow gaps between the columns.
    fn fit(&self, wants: &[(f64, f64)]) -> bool {
        let gaps = wants.len().max(2) as f64 - 1.0;
        let edges = 2.0 * self.style.table * INDENT;
        natural_width(wants) + gaps * self.style.table * NARROW_GAP + edges <= self.frame.1 - self.frame.0
    }

    fn wants_with(&self, tables: &[&Table], across: u32) -> Vec<Vec<(f64, f64)>> {
        let mut widest: BTreeMap<_, Vec<(f64, f64)>> = BTreeMap::new();
        for table in tables {
            let own: Vec<(f64, f64)> =
                table.columns.iter().enumerate().map(|(i, column)| self.wants(table, i, column, across)).collect();
            let most = widest.entry(table.kind()).or_insert_with(|| own.clone());
            for (most, own) in most.iter_mut().zip(own) {
                *most = (most.0.max(own.0), most.1.max(own.1));
            }
        }
        tables.iter().map(|table| widest.get(&table.kind()).cloned().unwrap_or_default()).collect()
    }

    /// Shares the frame's width out among the columns.
    fn rails(&self, table: &Table, wants: &Wants) -> Vec<Rail> {
        let indent = self.style.table * INDENT;
        let count = table.columns.len();
        let Wants { widths: wants, closer } = wants;
        let mut gap = if *closer { self.style.table * NARROW_GAP } else { self.gap_between(wants) };
        let mut room = self.frame.1 - self.frame.0 - 2.0 * indent - gap * (count.max(1) as f64 - 1.0);
        let mut widths = share(wants, &table.columns, room);
        let least = self.style.table * STACKED;
        let narrow = table.columns.iter().zip(&widths).any(|(column, width)| column.grows && *width < least);
        // Of three columns or fewer the growing one has the most of the width anyway.
        let below = count > 3 && narrow;
        if below {
            // The long words go on a line of their own, and the others share the width without them.
            let others = wants.iter().zip(&table.columns);
            let others = others.map(|(want, column)| if column.grows { (0.0, 0.0) } else { *want });
            let wants: Vec<(f64, f64)> = others.collect();
            let columns: Vec<Column> =
                table.columns.iter().map(|column| Column { grows: false, ..column.clone() }).collect();
            gap = self.style.table * NARROW_GAP;
            room = self.frame.1 - self.frame.0 - gap * (count as f64 - 2.0) - 2.0 * indent;
            widths = share(&wants, &columns, room);
        }
        // What no column grows into is shared out, a little to each.
        let mut left_over = (room - widths.iter().sum::<f64>()).max(0.0);
        // A title that is broken only to save room stands on one line where there is room after all.
        for (width, column) in widths.iter_mut().zip(&table.columns).filter(|_| table.head) {
            let lacks = Face::Bold.width(&column.title, self.style.table) + TOLERANCE - *width;
            if lacks > 0.0 && lacks <= left_over {
                *width += lacks;
                left_over -= lacks;
            }
        }
        // Columns over a line of words spread little, so that boxes to tick have a line for themselves.
        let spread = if below { SPREAD_ABOVE } else { SPREAD };
        let each = (left_over / count.max(1) as f64).min(self.style.table * spread);
        let mut left = self.frame.0 + indent;
        let mut rails = Vec::new();
        for (width, column) in widths.into_iter().zip(&table.columns) {
            if below && column.grows {
                let width = self.frame.1 - self.frame.0 - 2.0 * indent;
                rails.push(Rail { left: self.frame.0 + indent, width, right: false, below });
                continue;
            }
            let width = if count > 2 { width + each } else { width };
            rails.push(Rail { left, width, right: column.right, below: false });
            left += width + gap;
        }
        // Beside nothing, boxes to tick take what is left of the line.
        if let Some(last) = rails.iter_mut().rev().find(|rail| !rail.below).filter(|rail| below && !rail.right) {
            last.width = last.width.max(self.frame.1 - indent - last.left);
        }
        rails
    }

    /// The least and the natural width of a column with `most_ticks` boxes side by side.
    fn wants(&self, table: &Table, index: usize, column: &Column, most_ticks: u32) -> (f64, f64) {
        let size = self.style.table;
        let head = [Run::bold(column.title.clone())];
        let (mut least, mut natural) = if table.head { self.style.setter.widths(&head, size) } else { (0.0, 0.0) };
        natural = natural.min(least * 1.6);
        for cell in table.rows.iter().filter_map(|row| row.get(index)) {
            let extra = self.swatch_room(cell);
            let box_pitch = self.style.tick * 1.35;
            let (word, line) = self.style.setter.widths(&cell.runs, size);
            let across = cell.ticks.div_ceil(cell.ticks.div_ceil(most_ticks).max(1));
            least = least.max(word + extra).max(box_pitch * f64::from(across.min(FEW_TICKS)));
            natural = natural.max(line + extra).max(box_pitch * f64::from(across));
        }
        (least, natural.max(least))
    }
}

/// Width of columns side by side with all their words on one line.
fn natural_width(wants: &[(f64, f64)]) -> f64 {
    wants.iter().map(|(_, natural)| natural).sum()
}

/// Widths for columns that want (least, natural): natural where there is room, what is left to growing columns;
/// otherwise between least and natural in one proportion; and where even the least is too much, shares of it.
fn share(wants: &[(f64, f64)], columns: &[Column], room: f64) -> Vec<f64> {
    let grows: Vec<bool> = columns.iter().map(|column| column.grows).collect();
    let growing = grows.iter().filter(|grows| **grows).count() as f64;
    let fixed: f64 = wants.iter().zip(&grows).filter(|(_, grows)| !**grows).map(|((_, natural), _)| natural).sum();
    let least: f64 = wants.iter().map(|(least, _)| least).sum();
    let growing_least: f64 = wants.iter().zip(&grows).filter(|(_, grows)| **grows).map(|((least, _), _)| *least).sum();
    if growing > 0.0 && room - fixed >= growing_least.max(GROWN * room) {
        let each = (room - fixed) / growing;
        return wants.iter().zip(&grows).map(|((_, natural), grows)| if *grows { each } else { *natural }).collect();
    }
    let natural: f64 = wants.iter().map(|(_, natural)| natural).sum();
    if natural <= room {
        return wants.iter().map(|(_, natural)| *natural).collect();
    }
    if least >= room {
        return wants.iter().map(|(width, _)| width * room / least.max(EPSILON)).collect();
    }
    let ease = (room - least) / (natural - least).max(EPSILON);
    wants.iter().map(|(least, natural)| least + (natural - least) * ease).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn columns(grows: &[bool]) -> Vec<Column> {
        grows.iter().map(|&grows| Column { grows, ..Column::words("x") }).collect()
    }

    #[test]
    fn shared_widths_never_exceed_the_room() {
        let cases: [&[(f64, f64)]; 3] =
            [&[(10.0, 20.0), (20.0, 300.0)], &[(90.0, 90.0), (90.0, 95.0)], &[(5.0, 8.0), (5.0, 9.0)]];
        for wants in cases {
            for grows in [[false, false], [false, true]] {
                let widths = share(wants, &columns(&grows), 100.0);
                assert!(widths.iter().sum::<f64>() <= 100.0 + 1e-6, "{wants:?} {grows:?} {widths:?}");
            }
        }
    }

    #[test]
    fn the_growing_column_takes_what_is_left() {
        assert_eq!(share(&[(10.0, 20.0), (20.0, 300.0)], &columns(&[false, true]), 100.0), [20.0, 80.0]);
    }
}
