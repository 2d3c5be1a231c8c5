//! A plan as comma-separated values (RFC 4180), one row a round, for spreadsheets.

use super::json::loop_word;
use crate::craft::{Round, abbreviation};
use crate::geometry::SideShape;
use crate::notation::write::Writer;
use crate::notation::{Instruction, Numbers};
use crate::plan::Plan;
use crate::units::tidy;

/// Names of the columns.
const COLUMNS: [&str; 14] = [
    "size",
    "round",
    "part",
    "stitch",
    "loop",
    "stitches_in",
    "stitches_out",
    "change",
    "instruction",
    "colour",
    "circumference_mm",
    "radius_mm",
    "height_mm",
    "hoop_strain",
];

/// Words as a cell. What a spreadsheet would take for a formula, by how it begins, gets an apostrophe before it, which
/// spreadsheets read as "this is text".
fn words_cell(words: &str) -> String {
    let formula = words.starts_with(['=', '+', '-', '@', '\t', '\r', '＝', '＋', '－', '＠']);
    if formula { format!("'{words}") } else { words.to_owned() }
}

/// The CSV text of a plan, with the predicted shape of each size in `shapes`. `only` picks one size by its name.
pub fn plan(plan: &Plan, shapes: &[SideShape], only: Option<&str>) -> String {
    let words = plan.design.words();
    let mut rows = csv::WriterBuilder::new().terminator(csv::Terminator::CRLF).from_writer(Vec::new());
    let mut write = |row: &[String]| {
        // A vector in memory takes every row.
        let _ = rows.write_record(row);
    };
    write(&COLUMNS.map(str::to_owned));
    for (size, shape) in plan.sizes.iter().zip(shapes).filter(|(size, _)| only.is_none_or(|only| only == size.name)) {
        // The last round of a spiral says how it is brought down, so that the rows are enough to work from.
        let last = size.rounds.last().map(|round| round.number);
        let writer = Writer { words: &words, terms: plan.design.terms };
        let flat = size.closed_flat().map(|halves| writer.close_flat(&Numbers::one(halves)));
        let down = writer.step_down(&size.step_down).or(flat);
        let told = |round: &Round| {
            let told = writer.counted(&Instruction::of(round, size.below(round)));
            let down = down.as_ref().filter(|_| Some(round.number) == last);
            down.map_or(told.clone(), |down| format!("{told}; {down}"))
        };
        for (round, at) in size.rounds.iter().zip(&shape.rounds) {
            let colour = round.colour.and_then(|index| plan.design.yarn.colours.get(index));
            write(&[
                words_cell(&size.name),
                round.number.to_string(),
                words_cell(&size.part_of(round).name),
                abbreviation(round.stitch, plan.design.terms).to_owned(),
                loop_word(round.loops()).to_owned(),
                round.before.to_string(),
                round.after.to_string(),
                round.change().to_string(),
                words_cell(&told(round)),
                colour.map_or_else(String::new, |colour| words_cell(&colour.name)),
                tidy(plan.gauge_of(round).circumference(round.after).mm(), 1).to_string(),
                tidy(at.radius.mm(), 1).to_string(),
                tidy(at.height.mm(), 1).to_string(),
                tidy(at.hoop_strain, 4).to_string(),
            ]);
        }
    }
    String::from_utf8(rows.into_inner().unwrap_or_default()).unwrap_or_default()
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The beginnings are those that the OWASP page "CSV Injection" names.
    #[test]
    fn no_cell_is_a_formula() {
        for words in ["=1+1", "+1", "-1", "@SUM(A1)", "\t=1", "＝1"] {
            assert_eq!(words_cell(words), format!("'{words}"));
        }
        assert_eq!(words_cell("sc in each st (12)"), "sc in each st (12)");
    }
}
