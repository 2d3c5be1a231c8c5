//! The row table: what stands in each line of the written rounds, as data. Pages, pictures and texts draw it.

use crate::geometry::{RoundShape, SideShape};
use crate::notation::write::Writer;
use crate::plan::{Plan, SizePlan};
use crate::units::Mm;

/// The written rounds of one size, or of several side by side, part by part.
#[derive(Clone, Debug, PartialEq)]
pub struct RowTable {
    /// Name of the size; nothing where sizes stand side by side.
    pub size: Option<String>,
    /// The parts in working order.
    pub parts: Vec<PartRows>,
}

/// The lines of one part.
#[derive(Clone, Debug, PartialEq)]
pub struct PartRows {
    /// Name of the part.
    pub name: String,
    /// What its lines give the measure of.
    pub measure: Measure,
    /// What the lines of a stretch of rounds all begin and end with, said once.
    pub every: Option<Every>,
    /// The lines in working order.
    pub rows: Vec<RowLine>,
}

/// What every line of a stretch of rounds begins and ends with.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Every {
    /// `Rnds 2–16`.
    pub rounds: String,
    /// How each begins; empty for nothing in common.
    pub begin: String,
    /// How each ends.
    pub end: String,
}

/// What is measured as a part grows.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Measure {
    /// The width across of what lies more flat than upright.
    Across,
    /// The depth from the top of what stands more upright than flat.
    Down,
}

/// One line: a round, or a range of rounds that say the same.
#[derive(Clone, Debug, PartialEq)]
pub struct RowLine {
    /// Numbers of its first and last round, by size; nothing where a size has no such round.
    pub numbers: Vec<Option<(u32, u32)>>,
    /// `Rnd 5`, `Rnds 8–14`, `Rnd 12 (13, 13)`.
    pub label: String,
    /// What to do, without the count.
    pub instruction: String,
    /// Stitches of each round, by size; nothing where a size has no such round.
    pub counts: Vec<Option<u32>>,
    /// Stitches by which the line's first round grows, by size.
    pub changes: Vec<Option<i64>>,
    /// Index into the design's colours.
    pub colour: Option<usize>,
    /// The part's measure after the last round, where the shape is known.
    pub reached: Option<Mm>,
    /// Rounds in the line, of the size that has most: one tick box each.
    pub rounds: u32,
}

impl RowTable {
    /// The table of one size. The shape gives the measures; without it they are left out.
    pub fn of_size(plan: &Plan, size: &SizePlan, shape: Option<&SideShape>, writer: &Writer<'_>) -> Self {
        let mut parts = parts_of(plan, size, shape);
        for line in writer.rounds(size) {
            let Some(part) = parts.get_mut(line.part) else { continue };
            let at = |number: u32| size.rounds.get(number as usize - 1);
            let reached = shape.and_then(|shape| shape.rounds.get(line.last as usize - 1));
            part.rows.push(RowLine {
                instruction: without_count(&line.text).to_owned(),
                label: line.label,
                numbers: vec![Some((line.first, line.last))],
                counts: vec![Some(line.count)],
                changes: vec![at(line.first).map(|round| round.change())],
                colour: line.colour,
                reached: reached.map(|round| measured(round, part.measure)),
                rounds: line.last - line.first + 1,
            });
        }
        parts.retain(|part| !part.rows.is_empty());
        parts.iter_mut().for_each(|part| say_once(part, writer));
        Self { size: Some(size.name.clone()), parts }
    }

    /// The table of all sizes, in the trade's bracket form. It has no measures: they differ by size.
    pub fn of_all(plan: &Plan, writer: &Writer<'_>) -> Self {
        let Some(first) = plan.sizes.first() else { return Self { size: None, parts: Vec::new() } };
        let mut parts = parts_of(plan, first, None);
        for line in writer.sizes(plan) {
            let Some(part) = parts.get_mut(line.part) else { continue };
            let change = |(size, number): (&SizePlan, &Option<u32>)| {
                let round = size.rounds.get((*number)? as usize - 1)?;
                Some(round.change())
            };
            let spans = line.first.iter().zip(&line.last).filter_map(|(first, last)| Some((*last)? - (*first)? + 1));
            part.rows.push(RowLine {
                instruction: without_count(&line.text).to_owned(),
                rounds: spans.max().unwrap_or(1),
                changes: plan.sizes.iter().zip(&line.first).map(change).collect(),
                numbers: line.first.iter().zip(&line.last).map(|(first, last)| first.zip(*last)).collect(),
                label: line.label,
                counts: line.counts,
                colour: line.colour,
                reached: None,
            });
        }
        parts.retain(|part| !part.rows.is_empty());
        parts.iter_mut().for_each(|part| say_once(part, writer));
        Self { size: None, parts }
    }

    /// Share of the lines that hold for some sizes only.
    pub fn split(&self) -> f64 {
        let rows = self.parts.iter().flat_map(|part| &part.rows);
        let split = rows.filter(|row| row.counts.iter().any(Option::is_none)).count();
        split as f64 / self.lines().max(1) as f64
    }

    /// Lines in all parts.
    pub fn lines(&self) -> usize {
        self.parts.iter().map(|part| part.rows.len()).sum()
    }
}

/// The parts of a size, without lines yet.
fn parts_of(plan: &Plan, size: &SizePlan, shape: Option<&SideShape>) -> Vec<PartRows> {
    let part = |(i, part): (usize, &crate::plan::PartPlan)| {
        let name = plan.design.parts.get(i).map_or(part.name.clone(), |said| said.name.value.clone());
        PartRows {
            name,
            measure: shape.map_or(Measure::Down, |shape| flat_or_upright(shape, part)),
            every: None,
            rows: Vec::new(),
        }
    };
    size.parts.iter().enumerate().map(part).collect()
}

/// A part is measured across where it grows more outward than downward.
fn flat_or_upright(shape: &SideShape, part: &crate::plan::PartPlan) -> Measure {
    let start = (part.first as usize).checked_sub(2).and_then(|i| shape.rounds.get(i));
    let end = (part.last as usize).checked_sub(1).and_then(|i| shape.rounds.get(i));
    let zero = RoundShape { radius: Mm::ZERO, height: Mm::ZERO, hoop_strain: 0.0, slant_strain: 0.0 };
    let (start, end) = (start.unwrap_or(&zero), end.unwrap_or(&zero));
    let (out, down) = ((end.radius - start.radius).abs(), (end.height - start.height).abs());
    if out > down { Measure::Across } else { Measure::Down }
}

fn measured(round: &RoundShape, measure: Measure) -> Mm {
    match measure {
        Measure::Across => round.radius * 2.0,
        Measure::Down => round.height,
    }
}

/// Takes what the longest stretch of lines begins and ends with out of each and says it once for all of them, where
/// that stretch has three lines or more. Lines outside the stretch stay as they are.
fn say_once(part: &mut PartRows, writer: &Writer<'_>) {
    let ends: Vec<(String, String)> = part.rows.iter().map(|row| begin_and_end(&row.instruction)).collect();
    let mut best = 0..0;
    let mut start = 0;
    for at in 0..ends.len() {
        let same = |a: usize| ends.get(a) == ends.get(at) && ends.get(at).is_some_and(|(_, end)| !end.is_empty());
        if !same(start) {
            start = at;
        }
        if same(start) && at + 1 - start > best.len() {
            best = start..at + 1;
        }
    }
    // The stretch is named after its first and last line, which therefore hold for every size.
    let whole = |at: &usize| part.rows.get(*at).is_some_and(|row| row.numbers.iter().all(Option::is_some));
    let (first, last) = (best.clone().find(whole), best.rev().find(whole));
    let best = first.zip(last).map_or(0..0, |(first, last)| first..last + 1);
    if best.len() < 3 {
        return;
    }
    let Some((begin, end)) = ends.get(best.start).cloned() else { return };
    let Some(rows) = part.rows.get_mut(best) else { return };
    let numbers = |rows: &[RowLine], last: bool| -> Vec<Option<u32>> {
        let row = if last { rows.last() } else { rows.first() };
        let pick = |(first, end): (u32, u32)| if last { end } else { first };
        row.map(|row| row.numbers.iter().map(|numbers| numbers.map(pick)).collect()).unwrap_or_default()
    };
    let rounds = writer.label(&numbers(rows, false), &numbers(rows, true));
    for row in rows.iter_mut() {
        let bare = row.instruction.strip_suffix(&format!(", {end}")).unwrap_or(&row.instruction);
        let bare = if begin.is_empty() { bare } else { bare.strip_prefix(&format!("{begin}, ")).unwrap_or(bare) };
        row.instruction = bare.to_owned();
    }
    part.every = Some(Every { rounds, begin, end });
}

/// The first and the last clause of an instruction with three clauses or more, brackets not taken apart.
fn begin_and_end(text: &str) -> (String, String) {
    let mut depth = 0_i32;
    let mut cuts = Vec::new();
    for (at, c) in text.char_indices() {
        depth += i32::from(matches!(c, '(' | '[')) - i32::from(matches!(c, ')' | ']'));
        if depth == 0 && text[at..].starts_with(", ") {
            cuts.push(at);
        }
    }
    match cuts.as_slice() {
        [first, .., last] => (text[..*first].to_owned(), text[last + 2..].to_owned()),
        _ => (String::new(), String::new()),
    }
}

/// An instruction without the count at its end, which the table shows in a column of its own.
fn without_count(text: &str) -> &str {
    let end = if text.ends_with(')') {
        text.rfind(" – ").filter(|at| is_count(&text[*at + " – ".len()..]))
    } else {
        None
    };
    let end = end.or_else(|| text.rfind(" (").filter(|at| is_count(&text[*at + 1..])));
    end.map_or(text, |end| &text[..end])
}

fn is_count(text: &str) -> bool {
    text.contains('(') && text.chars().all(|c| c.is_ascii_digit() || matches!(c, '(' | ')' | ' ' | ',' | '–'))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn only_the_count_is_taken_off() {
        let cases = [
            ("[sc in next 4 sts, 2 sc in next st] 6 times (36)", "[sc in next 4 sts, 2 sc in next st] 6 times"),
            ("sc in next 3 (4, 4) sts – 72 (80, 88)", "sc in next 3 (4, 4) sts"),
            ("ch 3 (counts as dc)", "ch 3 (counts as dc)"),
            ("sc in each st around – 72 (–, 88)", "sc in each st around"),
        ];
        for (text, bare) in cases {
            assert_eq!(without_count(text), bare);
        }
    }
}
