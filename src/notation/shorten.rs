//! The shortest way to say a sequence of operations: runs and nested repeats.
//!
//! The description is exact for the cost below: no other nesting of runs and repeats costs less. A unit that is itself
//! a power is never the cheapest unit, and at each position only O(log n) primitive units repeat, so the tables stay
//! small; finding them takes O(n²) comparisons.

use super::across::Numbers;
use super::phrase::{Phrase, Reach};
use crate::craft::Op;
use std::collections::BTreeMap;

/// What a maker has to take in for each piece of a description, in tenths of a phrase.
const RUN: u32 = 10;
/// A number other than one in a run.
const NUMBER: u32 = 2;
/// A pair of brackets with its number of times.
const REPEAT: u32 = 12;
/// A repeat that holds another one.
const NESTED: u32 = 6;

/// Comparisons allowed for finding repeats; longer rounds get shorter units only.
const EFFORT: usize = 16_000_000;

/// The shortest description of `ops`, in runs and repeats. Deterministic; among equals, plain runs come before repeats.
pub(super) fn shorten(ops: &[Op]) -> Vec<Phrase> {
    let mut kinds: Vec<&Op> = Vec::new();
    let letters = ops.iter().map(|op| {
        kinds.iter().position(|known| *known == op).unwrap_or_else(|| {
            kinds.push(op);
            kinds.len() - 1
        })
    });
    let letters: Vec<usize> = letters.collect();
    let units = repeating_units(&letters);
    let repeating = (0..units.len()).filter(|at| !units[*at].is_empty()).collect();
    let twice = twice_by(&units);
    let mut search = Search { units, repeating, twice, runs: run_lengths(&letters), known: BTreeMap::new() };
    search.solve(0, ops.len());
    search.phrases(ops, 0, ops.len())
}

/// Lengths, up to `longest`, of units that can repeat at all: where letters change inside a unit, they change again a
/// unit later, so the length is the distance of two changes. A plain round has none.
fn possible_units(letters: &[usize], longest: usize) -> Vec<usize> {
    let changes: Vec<usize> = (1..letters.len()).filter(|&at| letters[at] != letters[at - 1]).collect();
    let mut possible = vec![false; longest + 1];
    for (i, from) in changes.iter().enumerate() {
        for to in changes[i + 1..].iter().take_while(|to| **to - from <= longest) {
            possible[to - from] = true;
        }
    }
    (2..=longest).filter(|unit| possible[*unit]).collect()
}

/// How many of the same letter start at each position.
fn run_lengths(letters: &[usize]) -> Vec<usize> {
    let mut runs = vec![1; letters.len()];
    for at in (1..letters.len()).rev() {
        if letters[at] == letters[at - 1] {
            runs[at - 1] = runs[at] + 1;
        }
    }
    runs
}

/// For each position the primitive units longer than one letter that repeat there: (length, times), shortest first.
fn repeating_units(letters: &[usize]) -> Vec<Vec<(usize, usize)>> {
    let length = letters.len();
    let mut units: Vec<Vec<(usize, usize)>> = vec![Vec::new(); length];
    let runs = run_lengths(letters);
    let longest = (length / 2).min(EFFORT / length.max(1));
    for unit in possible_units(letters, longest) {
        let mut agree = 0;
        for at in (0..length - unit).rev() {
            agree = if letters[at] == letters[at + unit] { agree + 1 } else { 0 };
            if agree >= unit
                && runs[at] < unit
                && units[at].iter().all(|(known, times)| unit % known != 0 || known * times < unit)
            {
                units[at].push((unit, 1 + agree / unit));
            }
        }
    }
    units
}

/// For each position the end of the first unit worked twice that starts there or later.
fn twice_by(units: &[Vec<(usize, usize)>]) -> Vec<usize> {
    let mut ends = vec![usize::MAX; units.len()];
    let mut first = usize::MAX;
    for (at, own) in units.iter().enumerate().rev() {
        first = own.iter().map(|(unit, _)| at + 2 * unit).fold(first, usize::min);
        ends[at] = first;
    }
    ends
}

/// What to do first at a position: a unit, how often.
#[derive(Clone, Copy)]
struct Step {
    unit: usize,
    times: usize,
}

struct Solved {
    cost: u32,
    repeats: bool,
    /// The first steps, by offset from the start; empty where no best description passes.
    steps: Vec<Option<Step>>,
}

struct Search {
    units: Vec<Vec<(usize, usize)>>,
    /// The positions at which a unit repeats, in order.
    repeating: Vec<usize>,
    /// For each position the end of the first unit worked twice from there on.
    twice: Vec<usize>,
    runs: Vec<usize>,
    known: BTreeMap<(usize, usize), Solved>,
}

impl Search {
    /// Finds the best description of the letters from `start`, `length` of them, and of every unit it may need.
    fn solve(&mut self, start: usize, length: usize) {
        if self.known.contains_key(&(start, length)) {
            return;
        }
        let end = start + length;
        let mut best = vec![(0, false); length + 1];
        let mut steps = vec![None; length];
        for at in (start..end).rev() {
            let (cost, step) = self.best_step(at, start, end, &best);
            best[at - start] = cost;
            steps[at - start] = Some(step);
        }
        let (cost, repeats) = best[0];
        self.known.insert((start, length), Solved { cost, repeats, steps });
    }

    fn best_step(&mut self, at: usize, start: usize, end: usize, best: &[(u32, bool)]) -> ((u32, bool), Step) {
        let run = self.runs[at].min(end - at);
        let after = |next: usize| best[next - start];
        let number = if run > 1 { NUMBER } else { 0 };
        let (rest, repeats) = after(at + run);
        let mut choice = ((RUN + number + rest, repeats), Step { unit: 1, times: run });
        // A run is cut short only where a repeat can take over.
        let first = self.repeating.partition_point(|next| *next <= at);
        for next in self.repeating[first..].iter().copied().take_while(|next| *next < at + run) {
            let times = next - at;
            if self.units[next].iter().any(|(unit, _)| next + 2 * unit <= end) {
                let (rest, repeats) = after(next);
                let cost = RUN + if times > 1 { NUMBER } else { 0 } + rest;
                if cost < choice.0.0 {
                    choice = ((cost, repeats), Step { unit: 1, times });
                }
            }
        }
        for index in 0..self.units[at].len() {
            let (unit, most) = self.units[at][index];
            let most = most.min((end - at) / unit);
            if most < 2 {
                continue;
            }
            let (inner, repeats) = self.cost(at, unit);
            let own = inner + REPEAT + if repeats { NESTED } else { 0 };
            for times in (2..=most).rev() {
                let cost = own + after(at + unit * times).0;
                if cost < choice.0.0 {
                    choice = ((cost, true), Step { unit, times });
                }
            }
        }
        choice
    }

    /// Cost of the best description of so many letters, and whether it repeats anything. Where nothing stands twice among
    /// them, that is run after run.
    fn cost(&mut self, start: usize, length: usize) -> (u32, bool) {
        let end = start + length;
        if self.twice[start] <= end {
            self.solve(start, length);
            return self.known.get(&(start, length)).map_or((0, false), |solved| (solved.cost, solved.repeats));
        }
        let (mut at, mut cost) = (start, 0);
        while at < end {
            let run = self.runs[at].min(end - at);
            cost += RUN + if run > 1 { NUMBER } else { 0 };
            at += run;
        }
        (cost, false)
    }

    fn phrases(&mut self, ops: &[Op], start: usize, length: usize) -> Vec<Phrase> {
        self.solve(start, length);
        let steps: Vec<Option<Step>> =
            self.known.get(&(start, length)).map(|solved| solved.steps.clone()).unwrap_or_default();
        let mut phrases = Vec::new();
        let mut at = 0;
        while let Some(Some(step)) = steps.get(at) {
            let times = Numbers::one(step.times as u32);
            phrases.push(if step.unit == 1 {
                Phrase::Run { op: ops[start + at].clone(), times, reach: Reach::Next }
            } else {
                Phrase::Repeat { body: self.phrases(ops, start + at, step.unit), times }
            });
            at += step.unit * step.times;
        }
        phrases
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::craft::Stitch;

    fn ops(pattern: &str) -> Vec<Op> {
        let op = |letter| match letter {
            'i' => Op::increase(Stitch::SC, 2),
            'd' => Op::decrease(Stitch::SC, 2),
            _ => Op::plain(Stitch::SC),
        };
        pattern.chars().map(op).collect()
    }

    fn show(phrases: &[Phrase]) -> String {
        let one = |phrase: &Phrase| {
            if let Phrase::Repeat { body, times } = phrase {
                return format!("[{}]{}", show(body), times.first());
            }
            let Phrase::Run { op, times, .. } = phrase else { panic!("{phrase:?}") };
            let letter = if op.shapes() { if op.consumed == 1 { 'i' } else { 'd' } } else { '.' };
            format!("{letter}{}", times.first())
        };
        phrases.iter().map(one).collect::<Vec<_>>().join(" ")
    }

    #[test]
    fn repeats_are_found_whole_nested_and_across_runs() {
        let cases = [
            ("......", ".6"),
            ("..i..i..i", "[.2 i1]3"),
            (".i..i..i..i.", "[.1 i1 .1]4"),
            (".i.i...i.i...i.i..", "[[.1 i1]2 .2]3"),
            ("...i", ".3 i1"),
            ("i.i.i.i", "i1 [.1 i1]3"),
        ];
        for (pattern, expected) in cases {
            assert_eq!(show(&shorten(&ops(pattern))), expected, "{pattern}");
        }
    }

    #[test]
    fn a_round_of_two_thousand_is_one_short_repeat() {
        let long = "...................i".repeat(100);
        assert_eq!(show(&shorten(&ops(&long))), "[.19 i1]100");
    }

    /// Cost of a description, and whether it repeats anything.
    fn cost(phrases: &[Phrase]) -> (u32, bool) {
        let one = |phrase: &Phrase| {
            if let Phrase::Repeat { body, .. } = phrase {
                let (inner, repeats) = cost(body);
                return (inner + REPEAT + if repeats { NESTED } else { 0 }, true);
            }
            let Phrase::Run { times, .. } = phrase else { panic!("{phrase:?}") };
            (RUN + if times.first() > 1 { NUMBER } else { 0 }, false)
        };
        phrases.iter().map(one).fold((0, false), |(sum, any), (cost, repeats)| (sum + cost, any || repeats))
    }

    /// The least cost of any nesting of runs and repeats, by trying them all: first with, then without a repeat in it.
    fn by_force(pattern: &str, known: &mut BTreeMap<String, [u32; 2]>) -> [u32; 2] {
        if pattern.is_empty() {
            return [u32::MAX / 2, 0];
        }
        if let Some(best) = known.get(pattern) {
            return *best;
        }
        let mut best = [u32::MAX / 2; 2];
        let first = pattern.chars().next();
        let run = pattern.chars().take_while(|letter| Some(*letter) == first).count();
        for times in 1..=run {
            let [with, without] = by_force(&pattern[times..], known);
            let own = RUN + if times > 1 { NUMBER } else { 0 };
            best = [best[0].min(own + with), best[1].min(own + without)];
        }
        for unit in 2..=pattern.len() / 2 {
            let body = &pattern[..unit];
            let [with, without] = by_force(body, known);
            let mut end = unit;
            while pattern[end..].starts_with(body) {
                end += unit;
                let rest = by_force(&pattern[end..], known).into_iter().min().unwrap_or(0);
                best[0] = best[0].min((with + NESTED).min(without) + REPEAT + rest);
            }
        }
        known.insert(pattern.to_owned(), best);
        best
    }

    #[test]
    fn nothing_shorter_is_found_by_trying_everything() {
        let mut known = BTreeMap::new();
        for length in 1..=12 {
            for bits in 0..1_u32 << length {
                let letter = |i: u32| if bits >> i & 1 == 1 { 'i' } else { '.' };
                let pattern: String = (0..length).map(letter).collect();
                let least = by_force(&pattern, &mut known).into_iter().min().unwrap_or(0);
                assert_eq!(cost(&shorten(&ops(&pattern))).0, least, "{pattern}");
            }
        }
    }
}
