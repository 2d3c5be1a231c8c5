//! The written rounds.

use super::Story;
use crate::drawing::{capital, side_by_side, signed};
use crate::notation::write::Writer;
use crate::page::numbers::bare;
use crate::page::{Options, Pictures, RoundsForm};
use crate::plan::Plan;
use crate::story::{Block, Cell, Column, Every, Measure, PartRows, RowLine, RowTable, Run, Section, Table};
use crate::units::Units;
use crate::words::Arg;

/// Most sizes that stand side by side.
const MOST_IN_BRACKETS: usize = 5;
/// Most sizes whose numbers are held together on one line.
const FEW_SIZES: usize = 3;
/// Share of lines for some sizes only, above which sizes are too unlike to stand together.
const SPLIT: f64 = 0.12;

/// The row tables of a plan: one for all sizes, or one a size.
pub(super) fn round_tables(plan: &Plan, pictures: &Pictures, options: &Options, writer: &Writer<'_>) -> Vec<RowTable> {
    let one = |(i, size)| RowTable::of_size(plan, size, pictures.shapes.get(i), writer);
    let each = || plan.sizes.iter().enumerate().map(one).collect::<Vec<_>>();
    if plan.sizes.len() < 2 {
        return each();
    }
    match options.rounds {
        RoundsForm::PerSize => each(),
        RoundsForm::Brackets => vec![RowTable::of_all(plan, writer)],
        RoundsForm::Fitting => {
            let all = RowTable::of_all(plan, writer);
            let alike = all.split() <= SPLIT;
            if alike && plan.sizes.len() <= MOST_IN_BRACKETS { vec![all] } else { each() }
        }
    }
}

impl Story<'_> {
    pub(super) fn rounds(&self) -> Section {
        let tables = self.tables();
        let mut blocks = Vec::new();
        if tables.iter().flat_map(|table| &table.parts).flat_map(|part| &part.rows).any(|row| row.reached.is_some()) {
            let unit = self.say(match self.plan.design.units {
                Units::Cm => "page-centimetres",
                Units::Inches => "page-inches",
            });
            blocks.push(Block::text(self.words.with("page-measured", &[("unit", Arg::Text(&unit))])));
        }
        for table in tables {
            for part in &table.parts {
                let title = self.part_title(part, table.size.as_deref());
                blocks.push(Block::Heading(title.clone()));
                blocks.extend(part.every.as_ref().map(|every| Block::text(self.every_round(every))));
                blocks.push(Block::Table(self.part_rounds(part, &title)));
            }
        }
        self.section("rounds", "page-rounds", true, blocks)
    }

    /// True where the rounds of all sizes stand side by side.
    pub(super) fn in_brackets(&self) -> bool {
        self.tables().first().is_some_and(|table| table.size.is_none())
    }

    fn part_title(&self, part: &PartRows, size: Option<&str>) -> String {
        let name = capital(&part.name);
        match size.filter(|_| self.plan.sizes.len() > 1) {
            Some(size) => self.words.with("page-part-size", &[("part", Arg::Text(&name)), ("size", Arg::Text(size))]),
            None => name,
        }
    }

    fn every_round(&self, every: &Every) -> String {
        let key = if every.begin.is_empty() { "page-each-round-end" } else { "page-each-round" };
        let (rounds, begin, end) = (Arg::Text(&every.rounds), Arg::Text(&every.begin), Arg::Text(&every.end));
        self.words.with(key, &[("rounds", rounds), ("begin", begin), ("end", end)])
    }

    fn part_rounds(&self, part: &PartRows, title: &str) -> Table {
        let colours = self.plan.design.yarn.colours.len() > 1;
        let measures = part.rows.iter().any(|row| row.reached.is_some());
        let mut columns = vec![Column::words(self.say("page-round")), Column::wide(self.say("page-instruction"))];
        columns.extend(["page-stitches", "page-change"].map(|key| Column::numbers(self.say(key))));
        if measures {
            columns.push(Column::numbers(self.say(match part.measure {
                Measure::Across => "page-across",
                Measure::Down => "page-down",
            })));
        }
        if colours {
            columns.push(Column::words(self.say("page-colour")));
        }
        columns.push(Column::words(self.say("page-done")));
        let rows = part.rows.iter().map(|row| self.round_cells(row, measures, colours)).collect();
        let summary = self.words.with("page-rounds-of", &[("part", Arg::Text(title))]);
        let continued = self.words.with("page-continued", &[("title", Arg::Text(title))]);
        Table { summary, continued, columns, head: true, row_heads: true, rows }
    }

    fn round_cells(&self, row: &RowLine, measures: bool, colours: bool) -> Vec<Cell> {
        let instruction = vec![Run::new(times_together(&row.instruction))];
        let few = row.counts.len() <= FEW_SIZES;
        let label = label_together(&row.label, few);
        let mut cells = vec![Cell::bold(label), Cell { runs: instruction, ..Cell::default() }];
        // The stitches of a few sizes stay on one line; their changes may be broken before the bracket.
        let counts = side_by_side(&row.counts, |count| count.to_string());
        cells.push(Cell::bold(if few { counts.replace(' ', "\u{a0}") } else { counts }));
        let changes = side_by_side(&row.changes, |change| signed(*change));
        cells.push(Cell::new(if few { changes.replace(", ", ",\u{a0}") } else { changes }));
        if measures {
            let reached = row.reached.map(|reached| bare(reached, self.plan.design.units, self.words.language));
            cells.push(Cell::new(reached.unwrap_or("–".to_owned())));
        }
        if colours {
            cells.push(self.colour_cell(row.colour));
        }
        cells.push(Cell::ticks(row.rounds));
        cells
    }
}

/// A label whose numbers stay on one line with the word before them, and those of a few sizes with each other.
fn label_together(label: &str, few: bool) -> String {
    let mut held = String::new();
    let mut open = false;
    for (at, c) in label.char_indices() {
        open = c == '(' || open && c != ')';
        let number = label[at..].chars().nth(1).is_some_and(|next| next.is_ascii_digit());
        let after_word = label[..at].ends_with(char::is_alphabetic);
        held.push(if c == ' ' && (number && after_word || open && few) { '\u{a0}' } else { c });
    }
    held
}

/// The number of times after a repeat stays on one line with its word: `] 5 times`.
fn times_together(text: &str) -> String {
    let mut pieces = text.split("] ");
    let first = pieces.next().unwrap_or_default().to_owned();
    pieces.fold(first, |mut held, piece| {
        let number = piece.bytes().take_while(u8::is_ascii_digit).count();
        held.push_str("] ");
        match piece.get(number..).and_then(|rest| rest.strip_prefix(' ')).filter(|_| number > 0) {
            Some(rest) => {
                held.push_str(&piece[..number]);
                held.push('\u{a0}');
                held.push_str(rest);
            }
            None => held.push_str(piece),
        }
        held
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_label_breaks_before_its_bracket() {
        assert_eq!(label_together("Rnds 8–9 (8, 7–9)", true), "Rnds\u{a0}8–9 (8,\u{a0}7–9)");
        assert_eq!(label_together("Rnds 8–9 (8, 7–9)", false), "Rnds\u{a0}8–9 (8, 7–9)");
        assert_eq!(label_together("Size M only: Rnd 9", true), "Size M only: Rnd\u{a0}9");
    }

    #[test]
    fn only_the_space_before_times_is_held() {
        assert_eq!(times_together("[sc, inc] 6 times, sl st"), "[sc, inc] 6\u{a0}times, sl st");
        assert_eq!(times_together("sc in next 3 sts"), "sc in next 3 sts");
        assert_eq!(times_together("[sc] 5 (6, 6) times"), "[sc] 5\u{a0}(6, 6) times");
    }
}
