//! The written rounds and the rounds in plain words: read again, worked again, counted again.

use std::collections::{BTreeMap, BTreeSet};

use roundelay::craft::{Begin, Close, Foundation, Loops, Round, Stitch};
use roundelay::plan::Plan;

use super::count;
use super::grammar::{Reader, Unit, Worked};
use super::paper::{Block, Paper, Row, cell};
use super::tongue::{Tongue, fit, split};

/// The line of a round as it holds for one size.
#[derive(Debug)]
pub(super) struct Line {
    pub(super) first: usize,
    pub(super) last: usize,
    pub(super) words: String,
    pub(super) count: String,
    pub(super) change: String,
    pub(super) colour: Option<String>,
    /// What it measures after its last round: across or down.
    pub(super) reached: Option<(bool, String)>,
}

/// The numbers of one of several sizes put in the place of all of them: `72 (80, 88)` for the second is `80`.
pub(super) fn resolved(text: &str, size: usize, sizes: usize) -> String {
    let number = |letter: char| letter.is_ascii_digit() || "+–".contains(letter);
    let mut out = String::new();
    let mut rest = text;
    while let Some(at) = rest.find(number) {
        let (before, from) = rest.split_at(at);
        out += before;
        let end = from.find(|letter| !number(letter)).unwrap_or(from.len());
        let (lead, after) = from.split_at(end);
        let inner = after.strip_prefix(" (").and_then(|after| after.split_once(')'));
        let others: Vec<&str> = inner.map_or(Vec::new(), |(inner, _)| inner.split(", ").collect());
        let bracket = sizes > 1
            && others.len() == sizes - 1
            && others.iter().all(|other| !other.is_empty() && other.chars().all(number));
        out += if bracket && size > 0 { others[size - 1] } else { lead };
        rest = inner.filter(|_| bracket).map_or(after, |(_, rest)| rest);
    }
    out + rest
}

/// The lines of a size in working order.
pub(super) fn lines(paper: &Paper, tongue: &Tongue, plan: &Plan, size: usize) -> Vec<Line> {
    let names: Vec<&str> = plan.sizes.iter().map(|size| size.name.as_str()).collect();
    let mut lines = Vec::new();
    let mut own = true;
    let mut every: Option<(usize, usize, String, String)> = None;
    for block in paper.blocks(tongue, "section.rounds") {
        match block {
            Block::Heading(title) => {
                let of = |name: &&str| {
                    names.len() > 1
                        && tongue
                            .one("part-size")
                            .split("{p}")
                            .nth(1)
                            .is_some_and(|end| title.ends_with(&end.replace("{s}", name)))
                };
                own = !names.iter().any(of) || of(&names[size]);
                every = None;
            }
            Block::Text(text) if own => {
                let holes = tongue.read("every", text);
                every = holes.map(|holes| {
                    let [label, begin, end] = ['r', 'b', 'e']
                        .map(|letter| holes.iter().find(|(known, _)| *known == letter).map_or("", |(_, words)| words));
                    let (first, last) = span(&resolved(label, size, names.len()));
                    (first, last, begin.to_owned(), end.to_owned())
                });
            }
            Block::Row(row) if own => {
                let Some(mut line) = line(row, tongue, &names, size) else { continue };
                if let Some((first, last, begin, end)) = &every
                    && (*first..=*last).contains(&line.first)
                {
                    line.words = format!("{begin}, {}, {end}", line.words);
                }
                lines.push(line);
            }
            Block::Text(_) | Block::Row(_) | Block::Item(_) | Block::Picture(_) => {}
        }
    }
    lines
}

/// The first and the last number of a label.
fn span(label: &str) -> (usize, usize) {
    let numbers: Vec<usize> = label.split(|c: char| !c.is_ascii_digit()).filter_map(|part| part.parse().ok()).collect();
    (numbers.first().copied().unwrap_or(0), numbers.last().copied().unwrap_or(0))
}

fn line(row: &Row, tongue: &Tongue, names: &[&str], size: usize) -> Option<Line> {
    let label = cell(row, tongue, "column.round")?;
    let words = cell(row, tongue, "column.do")?;
    // A line for some sizes only gives numbers for those alone.
    let only = tongue.all("only").filter_map(|template| fit(template, label)).next();
    let having: Vec<usize> = match &only {
        Some(holes) => {
            let said: Vec<&str> = holes[0].1.split(", ").collect();
            (0..names.len()).filter(|at| said.contains(&names[*at])).collect()
        }
        None => (0..names.len()).collect(),
    };
    let label = only.map_or(label, |holes| holes[1].1);
    let at = having.iter().position(|known| *known == size)?;
    let (first, last) = span(&resolved(label, at, having.len()));
    let all = |key| resolved(cell(row, tongue, key).unwrap_or_default(), size, names.len());
    let change = row.iter().find(|(title, _)| title == "+/−").map_or("", |(_, change)| change);
    let reached = ["column.across", "column.down"]
        .into_iter()
        .find_map(|key| Some((key == "column.across", cell(row, tongue, key)?.to_owned())));
    Some(Line {
        first,
        last,
        words: resolved(words, at, having.len()),
        count: all("column.count"),
        change: resolved(change, size, names.len()),
        colour: cell(row, tongue, "column.colour").map(str::to_owned),
        reached,
    })
}

/// Abbreviations of the table with what they mean.
pub(super) fn abbreviations(paper: &Paper, tongue: &Tongue) -> Vec<(String, String)> {
    // The first cell and the second, whichever way the table is told.
    let row = |row: &Row| Some((row.first()?.1.clone(), row.get(1)?.1.clone()));
    paper.rows(tongue, "section.abbreviations").filter_map(row).collect()
}

pub(super) fn colour_name(plan: &Plan, round: &Round) -> Option<String> {
    round.colour.and_then(|colour| plan.design.yarn.colours.get(colour)).map(|colour| colour.name.clone())
}

/// What a round of the plan makes, by the names of its stitches.
fn wanted(plan: &Plan, round: &Round, tongue: &Tongue) -> BTreeMap<String, usize> {
    let mut made = BTreeMap::new();
    for (stitch, count) in round.ops.iter().flat_map(|op| op.made.runs()) {
        *made.entry(tongue.name(stitch, plan.design.terms)).or_default() += count as usize;
    }
    made
}

/// Holds what was worked against the plan's round, which `from` begins where it is the first.
pub(super) fn hold(worked: &Worked, plan: &Plan, (from, round): (Foundation, &Round), tongue: &Tongue, told: &str) {
    assert_eq!(worked.used, round.before as usize, "used up by {told}");
    assert_eq!(worked.top.len(), round.after as usize, "made by {told}");
    let mut made: BTreeMap<String, usize> = BTreeMap::new();
    for (name, count) in &worked.made {
        *made.entry(name.clone()).or_default() += count;
    }
    assert_eq!(made, wanted(plan, round, tongue), "stitches of {told}");
    let loops = match round.loops() {
        Loops::Both => None,
        Loops::Back => Some("back"),
        Loops::Front => Some("front"),
    };
    assert_eq!(worked.loops, loops, "loops of {told}");
    let ring = match from {
        Foundation::ChainRing(chains) | Foundation::ChainRound(chains) | Foundation::Chain(chains)
            if round.number == 1 =>
        {
            Some(chains as usize)
        }
        Foundation::Ring | Foundation::ChainRing(_) | Foundation::ChainRound(_) | Foundation::Chain(_) => None,
    };
    let begun = match round.begin {
        Begin::Chain { chains, .. } => Some(usize::from(chains)),
        Begin::Spiral | Begin::Plain => None,
    };
    let mut wanted: Vec<usize> = ring.into_iter().chain(begun).collect();
    let mut chains = worked.chains.clone();
    wanted.sort_unstable();
    chains.sort_unstable();
    assert_eq!(chains, wanted, "chains of {told}");
}

/// Works every round of a size from its lines; gives every name that its words use.
pub(super) fn work(paper: &Paper, tongue: &Tongue, plan: &Plan, index: usize) -> BTreeSet<String> {
    let size = &plan.sizes[index];
    let known = abbreviations(paper, tongue);
    let short = |name: &str| known.iter().find(|(short, _)| short == name).map(|(short, _)| short.clone());
    let rule = paper.said(tongue, "section.working").any(|said| said == tongue.one("chain-counts-rule"));
    let reader = Reader { tongue, form: 'w', short: &short, chains_count: rule, known: Default::default() };
    let mut below: Vec<Unit> = Vec::new();
    let mut names = BTreeSet::new();
    let mut next = 1;
    for line in lines(paper, tongue, plan, index) {
        let told = format!("{} of {}, size {}, {line:?}", tongue.tag, paper.form, size.name);
        assert_eq!(line.first, next, "a round is missing before {told}");
        for number in line.first..=line.last {
            let round = size.rounds.get(number - 1).unwrap_or_else(|| panic!("too many rounds: {told}"));
            // An author's own words are free: what they come to is read from the plain words.
            let own = round.own().filter(|own| tongue.tag == "en" && own.terms == plan.design.terms);
            let words = own_words(&line.words, tongue);
            let read = || reader.work(&split(words, ", "), &below).unwrap_or_else(|wrong| panic!("{wrong}: {told}"));
            let worked = if own.is_some() { by_plan(plan, round, tongue) } else { read() };
            if own.is_none() {
                hold(&worked, plan, (size.foundation, round), tongue, &told);
            } else {
                let begun = matches!(round.begin, Begin::Chain { .. }).then_some(Stitch::CH);
                let joined = (round.close == Close::Join).then_some(Stitch::SL_ST);
                let named = begun.into_iter().chain(joined);
                names.extend(named.map(|stitch| tongue.name(stitch, plan.design.terms)));
            }
            count::hold(&line.count, &reader, &worked, round.own().is_some())
                .unwrap_or_else(|wrong| panic!("{wrong}: the count of {told}"));
            let change = count::stitches(&worked.top) as i64 - count::stitches(&below) as i64;
            if number == line.first {
                let said = line.change.replace('–', "-").replace('+', "");
                assert_eq!(said.parse(), Ok(change), "the change of {told}");
            }
            let coloured = plan.design.yarn.colours.len() > 1;
            assert_eq!(line.colour, colour_name(plan, round).filter(|_| coloured), "the colour of {told}");
            names.extend(worked.made.into_iter().map(|(name, _)| name).chain(worked.named));
            below = worked.top;
        }
        next = line.last + 1;
    }
    assert_eq!(next, size.rounds.len() + 1, "rounds of {} of {}, size {}", tongue.tag, paper.form, size.name);
    names
}

/// What is to be done, without the remarks that an author made on it.
fn own_words<'w>(words: &'w str, tongue: &Tongue) -> &'w str {
    let quote = tongue.one("w.remark").split('{').next().unwrap_or_default();
    let end = words.find(&format!(". {quote}"));
    end.map_or(words, |end| &words[..end])
}

/// A round as the plan has it.
fn by_plan(plan: &Plan, round: &Round, tongue: &Tongue) -> Worked {
    let mut worked = Worked { used: round.before as usize, ..Worked::default() };
    for (stitch, count) in round.ops.iter().flat_map(|op| op.made.runs()) {
        worked.made.push((tongue.name(stitch, plan.design.terms), count as usize));
        let unit = if stitch == Stitch::CH { Unit::Chain } else { Unit::Stitch };
        worked.top.extend(std::iter::repeat_n(unit, (count * u32::from(stitch.row().counts)) as usize));
    }
    worked
}
