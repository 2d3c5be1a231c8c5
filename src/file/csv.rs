//! A plan as comma-separated values (RFC 4180), one row a round, for spreadsheets.

use super::json::loop_word;
use crate::craft::{Round, abbreviation};
use crate::geometry::SideShape;
use crate::notation::Instruction;
use crate::notation::write::Writer;
use crate::plan::Plan;
use crate::units::tidy;
use crate::words::Words;

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

/// The CSV text of a plan, with the predicted shape of each size in `shapes`. `only` picks one size by its name.
pub fn plan(plan: &Plan, shapes: &[SideShape], only: Option<&str>) -> String {
    let words = Words::of(plan.design.language);
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
        let down = writer.step_down(&size.step_down);
        let told = |round: &Round| {
            let told = writer.counted(&Instruction::of(round, size.below(round)));
            let down = down.as_ref().filter(|_| Some(round.number) == last);
            down.map_or(told.clone(), |down| format!("{told}; {down}"))
        };
        for (round, at) in size.rounds.iter().zip(&shape.rounds) {
            let colour = round.colour.and_then(|index| plan.design.yarn.colours.get(index));
            write(&[
                size.name.clone(),
                round.number.to_string(),
                size.part_of(round).name.clone(),
                abbreviation(round.stitch, plan.design.terms).to_owned(),
                loop_word(round.loops()).to_owned(),
                round.before.to_string(),
                round.after.to_string(),
                round.change().to_string(),
                told(round),
                colour.map_or_else(String::new, |colour| colour.name.clone()),
                tidy(plan.gauge(round.stitch).circumference(round.after).mm(), 1).to_string(),
                tidy(at.radius.mm(), 1).to_string(),
                tidy(at.height.mm(), 1).to_string(),
                tidy(at.hoop_strain, 4).to_string(),
            ]);
        }
    }
    String::from_utf8(rows.into_inner().unwrap_or_default()).unwrap_or_default()
}
