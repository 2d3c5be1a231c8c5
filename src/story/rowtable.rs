//! The row table: what stands in each line of the written rounds, as data. Pages, pictures and texts draw it.

use crate::craft::Counted;
use crate::craft::{Build, Round};
use crate::design::{Note, NoteRound};
use crate::geometry::{RoundShape, SideShape};
use crate::notation::write::Writer;
use crate::notation::{Gaps, Instruction, Label, Numbers, Phrase, across, lines, sized_lines};
use crate::plan::{Plan, SizePlan};
use crate::units::Mm;
use crate::words::Arg;

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
    /// Its author's notes on all of it.
    pub notes: Vec<PartNote>,
    /// What its lines give the measure of.
    pub grows: Grows,
    /// What the lines of a stretch of rounds all begin and end with, said once.
    pub every: Option<Every>,
    /// The lines in working order.
    pub rows: Vec<RowLine>,
}

/// A note of its author's on a part.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct PartNote {
    /// The size that it is for, where the table holds others too.
    pub size: Option<String>,
    /// The note.
    pub words: String,
}

/// What every line of a stretch of rounds begins and ends with.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Every {
    /// `Rnds 2–16`.
    pub rounds: Label,
    /// How each begins.
    pub begin: Phrase,
    /// How each ends.
    pub end: Phrase,
}

impl Every {
    /// The one sentence for all of them.
    pub fn told(&self, writer: &Writer<'_>) -> String {
        let rounds = writer.label(&self.rounds, Gaps::OPEN);
        let [begin, end] = [&self.begin, &self.end].map(|phrase| writer.phrase(phrase, Gaps::OPEN));
        let (begin, end) = (("begin", Arg::Text(&begin)), ("end", Arg::Text(&end)));
        writer.words.with("page-each-round", &[("rounds", Arg::Text(&rounds)), begin, end])
    }
}

/// What is measured as a part grows.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Grows {
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
    pub label: Label,
    /// What to do, but for what is said once for every round.
    pub instruction: Instruction,
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

impl RowLine {
    /// What each of its rounds has when it is done, as makers state it: `36`, `36 (42)`, `12 dc, 12 ch-2 sps`.
    pub fn counted(&self, writer: &Writer<'_>, gaps: Gaps) -> String {
        match &self.instruction.count[..] {
            [(Counted::Stitches, _)] => across(&self.counts, u32::to_string, gaps),
            // A line is broken between one kind and the next.
            _ => writer.count(&self.instruction, gaps).replace(' ', gaps.word.space()).replace(",\u{a0}", ", "),
        }
    }
}

impl RowTable {
    /// The table of one size. The shape gives the measures; without it they are left out.
    pub fn of_size(plan: &Plan, size: &SizePlan, shape: Option<&SideShape>) -> Self {
        let mut parts = parts_of(plan, size, shape, Some(size));
        for line in lines(size.piece()) {
            let Some(part) = parts.get_mut(line.part) else { continue };
            let at = |number: u32| size.rounds.get(number as usize - 1);
            let reached = shape.and_then(|shape| shape.rounds.get(line.last as usize - 1));
            part.rows.push(RowLine {
                instruction: line.instruction,
                label: line.label,
                numbers: vec![Some((line.first, line.last))],
                counts: vec![Some(line.count)],
                changes: vec![at(line.first).map(|round| size.piece().change(round))],
                colour: line.colour,
                reached: reached.zip(at(line.last)).map(|(shape, round)| grown(plan, round, shape, part.grows)),
                rounds: line.last - line.first + 1,
            });
        }
        parts.retain(|part| !part.rows.is_empty());
        parts.iter_mut().for_each(say_once);
        Self { size: Some(size.name.clone()), parts }
    }

    /// The table of all sizes, in the trade's bracket form. It has no measures: they differ by size.
    pub fn of_all(plan: &Plan) -> Self {
        let Some(first) = plan.sizes.first() else { return Self { size: None, parts: Vec::new() } };
        let mut parts = parts_of(plan, first, None, None);
        for line in sized_lines(&plan.pieces()) {
            let Some(part) = parts.get_mut(line.part) else { continue };
            let change = |(size, number): (&SizePlan, &Option<u32>)| {
                let round = size.rounds.get((*number)? as usize - 1)?;
                Some(size.piece().change(round))
            };
            let spans = line.first.iter().zip(&line.last).filter_map(|(first, last)| Some((*last)? - (*first)? + 1));
            part.rows.push(RowLine {
                instruction: line.instruction,
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
        parts.iter_mut().for_each(say_once);
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

/// The parts of a size, without lines yet; for that size only, or for all.
fn parts_of(plan: &Plan, size: &SizePlan, shape: Option<&SideShape>, only: Option<&SizePlan>) -> Vec<PartRows> {
    let part = |(i, part): (usize, &crate::plan::PartPlan)| {
        let name = plan.design.parts.get(i).map_or(part.name.clone(), |said| said.name.value.clone());
        let notes = plan.design.parts.get(i).into_iter().flat_map(|said| &said.notes);
        let notes = notes.filter(|note| note.round == NoteRound::Part).filter(|note| match (&note.size, only) {
            (Some(of), Some(only)) => of.value == only.name,
            (None, _) | (_, None) => true,
        });
        let own = |note: &Note| PartNote {
            size: note.size.as_ref().filter(|_| only.is_none()).map(|size| size.value.clone()),
            words: note.words.value.clone(),
        };
        let notes = notes.map(own).collect();
        PartRows {
            name,
            notes,
            grows: shape.map_or(Grows::Down, |shape| flat_or_upright(shape, part)),
            every: None,
            rows: Vec::new(),
        }
    };
    size.parts.iter().enumerate().map(part).collect()
}

/// A part is measured across where it grows more outward than downward.
fn flat_or_upright(shape: &SideShape, part: &crate::plan::PartPlan) -> Grows {
    let start = (part.first as usize).checked_sub(2).and_then(|i| shape.rounds.get(i));
    let end = (part.last as usize).checked_sub(1).and_then(|i| shape.rounds.get(i));
    let zero = RoundShape { radius: Mm::ZERO, height: Mm::ZERO, hoop_strain: 0.0, slant_strain: 0.0 };
    let (start, end) = (start.unwrap_or(&zero), end.unwrap_or(&zero));
    let (out, down) = ((end.radius - start.radius).abs(), (end.height - start.height).abs());
    if out > down { Grows::Across } else { Grows::Down }
}

/// The measure of a part after a round: the width that its counts make, as everywhere else that one is printed, or the
/// depth of the predicted shape.
fn grown(plan: &Plan, round: &Round, shape: &RoundShape, grows: Grows) -> Mm {
    let fabric = round.stitch.row().build != Build::Slip;
    match grows {
        Grows::Across if fabric => plan.gauge_of(round).circumference(round.after) / core::f64::consts::PI,
        Grows::Across => shape.radius * 2.0,
        Grows::Down => shape.height,
    }
}

/// Takes what the longest stretch of lines begins and ends with out of each and says it once for all of them, where
/// that stretch has three lines or more. Lines outside the stretch stay as they are.
fn say_once(part: &mut PartRows) {
    let ends: Vec<Option<(&Phrase, &Phrase)>> = part.rows.iter().map(|row| row.instruction.ends()).collect();
    let mut best = 0..0;
    let mut start = 0;
    for at in 0..ends.len() {
        let same = |a: usize| ends.get(a) == ends.get(at) && ends.get(at).is_some_and(Option::is_some);
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
    let Some((begin, end)) = ends.get(best.start).copied().flatten() else { return };
    let (begin, end) = (begin.clone(), end.clone());
    let Some(rows) = part.rows.get_mut(best) else { return };
    let (Some(first), Some(last)) = (rows.first(), rows.last()) else { return };
    let numbers = |row: &RowLine| row.numbers.clone().into_iter().flatten();
    let rounds = Label {
        first: Numbers::several(numbers(first).map(|(first, _)| first)),
        last: Numbers::several(numbers(last).map(|(_, last)| last)),
        only: Vec::new(),
    };
    for row in rows {
        row.instruction = row.instruction.clone().without_ends();
    }
    part.every = Some(Every { rounds, begin, end });
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::craft::{Begin, Below, Close, Foundation, Op, Round, Stitch};
    use crate::notation::{Join, Stands};

    /// A row of a joined round that increases so often and begins with so many chains.
    fn row(number: u32, chains: u8, increases: usize) -> RowLine {
        let repeat = [vec![Op::plain(Stitch::SC); number as usize - 1], vec![Op::increase(Stitch::SC, 2)]].concat();
        let ops = vec![repeat; increases].concat();
        let (before, after) = (number * increases as u32, (number + 1) * increases as u32);
        let (part, stitch, slipped, colour, target, place, said) = (0, Stitch::SC, 0, None, None, None, None);
        let (begin, close) = (Begin::Chain { chains, counts: false }, Close::Join);
        let round =
            Round { number, part, stitch, before, after, slipped, ops, colour, begin, close, target, place, said };
        RowLine {
            numbers: vec![Some((number, number))],
            label: Label { first: Numbers::one(number), last: Numbers::one(number), only: Vec::new() },
            instruction: Instruction::of(&round, Below::Foundation(Foundation::Ring)),
            counts: vec![Some(after)],
            changes: vec![Some(round.change())],
            colour,
            reached: None,
            rounds: 1,
        }
    }

    fn said(rows: Vec<RowLine>) -> PartRows {
        let mut part = PartRows { name: String::new(), notes: Vec::new(), grows: Grows::Across, every: None, rows };
        say_once(&mut part);
        part
    }

    #[test]
    fn what_three_lines_begin_and_end_with_is_said_once() {
        let part = said(vec![row(2, 2, 6), row(3, 1, 6), row(4, 1, 6), row(5, 1, 6)]);
        let every = Every {
            rounds: Label { first: Numbers::one(3), last: Numbers::one(5), only: Vec::new() },
            begin: Phrase::TurningChain { chains: 1, stands: Stands::Nothing { said: false } },
            end: Phrase::Join(Join::First(Stitch::SC)),
        };
        assert_eq!(part.every, Some(every));
        let phrases: Vec<usize> = part.rows.iter().map(|row| row.instruction.phrases().count()).collect();
        assert_eq!(phrases, [3, 1, 1, 1]);
    }

    #[test]
    fn two_lines_are_left_as_they_are() {
        let part = said(vec![row(2, 2, 6), row(3, 1, 6), row(4, 1, 6)]);
        assert_eq!(part.every, None);
        assert!(part.rows.iter().all(|row| row.instruction.phrases().count() == 3));
    }
}
