//! The written rounds.

use super::Story;
use crate::geometry::SideShape;
use crate::notation::{Gap, Gaps, across};
use crate::plan::Plan;
use crate::story::{
    Block, Cell, Column, Grows, PartNote, PartRows, RoundsForm, RowLine, RowTable, Run, Section, Table,
};
use crate::units::Units;
use crate::words::numbers::{bare, signed};
use crate::words::{Arg, capital};

/// Most sizes that stand side by side.
const MOST_IN_BRACKETS: usize = 8;
/// Most sizes whose numbers are held together on one line.
const FEW_SIZES: usize = 3;
/// The number of times after a repeat stays on one line with what follows it, its word or the numbers of other sizes.
const TIMES_HELD: Gaps = Gaps { word: Gap::Held, bracket: Gap::Held, comma: Gap::Open };
/// Share of lines for some sizes only, above which sizes are too unlike to stand together.
const SPLIT: f64 = 0.12;

/// The row tables of a plan: one for all sizes, or one a size.
pub(super) fn round_tables(plan: &Plan, shapes: &[SideShape], form: RoundsForm) -> Vec<RowTable> {
    let one = |(i, size)| RowTable::of_size(plan, size, shapes.get(i));
    let each = || plan.sizes.iter().enumerate().map(one).collect::<Vec<_>>();
    if plan.sizes.len() < 2 {
        return each();
    }
    match form {
        RoundsForm::PerSize => each(),
        RoundsForm::Brackets => vec![RowTable::of_all(plan)],
        RoundsForm::Fitting => {
            let all = RowTable::of_all(plan);
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
        let writer = self.writer();
        for table in tables {
            for part in &table.parts {
                let title = self.part_title(part, table.size.as_deref());
                blocks.push(Block::Heading(title.clone()));
                let told = |note: &PartNote| match &note.size {
                    Some(size) => writer.of_sizes(std::slice::from_ref(size), &note.words, Gaps::OPEN),
                    None => note.words.clone(),
                };
                blocks.extend(part.notes.iter().map(|one| Block::text(told(one))));
                blocks.extend(part.every.as_ref().map(|every| Block::text(every.told(&writer))));
                blocks.push(Block::Table(self.part_rounds(part, &title)));
            }
            // With the rounds of each size that has a table of its own: a maker reads but that one.
            blocks.extend(self.step_down().map(Block::text));
        }
        self.section("rounds", "page-rounds", true, blocks)
    }

    /// How a spiral comes down after its last round, the same in every size; nothing where it doesn't.
    fn step_down(&self) -> Option<String> {
        let stitches = &self.plan.sizes.first()?.step_down;
        let names: Vec<String> = stitches.iter().map(|stitch| self.writer().short(*stitch)).collect();
        let args = [("stitches", Arg::Text(&names.join(", "))), ("count", Arg::Count(names.len() as u32))];
        (!names.is_empty()).then(|| self.words.with("page-finish-step-down", &args))
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

    fn part_rounds(&self, part: &PartRows, title: &str) -> Table {
        let colours = self.plan.design.yarn.colours.len() > 1;
        let measures = part.rows.iter().any(|row| row.reached.is_some());
        let mut columns = vec![Column::words(self.say("page-round")), Column::wide(self.say("page-instruction"))];
        columns.extend(["page-stitches", "page-change"].map(|key| Column::numbers(self.say(key))));
        if measures {
            columns.push(Column::numbers(self.say(match part.grows {
                Grows::Across => "page-across",
                Grows::Down => "page-down",
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
        let writer = self.writer();
        let (told, remarks) = (writer.instruction(&row.instruction, TIMES_HELD), writer.remarks(&row.instruction));
        let mut instruction = vec![Run::new(if remarks.is_empty() { told } else { told + "." })];
        instruction.extend(remarks.into_iter().map(|text| Run::remark(format!(" {text}."))));
        // Numbers of a few sizes stay on one line with each other.
        let few = Gap::held(row.counts.len() <= FEW_SIZES);
        let label = writer.label(&row.label, Gaps { word: Gap::Held, bracket: Gap::Open, comma: few });
        let mut cells = vec![Cell::bold(label), Cell { runs: instruction, ..Cell::default() }];
        // The stitches of a few sizes stay on one line; their changes may be broken before the bracket.
        let whole = Gaps { word: Gap::Held, bracket: few, comma: few };
        cells.push(Cell::bold(row.counted(&writer, whole)));
        cells.push(Cell::new(across(&row.changes, |change| signed(*change), Gaps { bracket: Gap::Open, ..whole })));
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
