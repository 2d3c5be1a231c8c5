//! Stitch patterns: rounds that repeat up a part, read as written rounds are, and what they need of a count.
//!
//! In a part that is shaped the count changes in the plain rounds of its pattern; where it has none, in a plain round
//! between one time through and the next. Each change is by whole repeats, so that every round of the pattern closes.
//!
//! A line that goes round by itself is taken as it is; any other is one repeat and is worked around. Over which multiple
//! the rounds close is found by working them: twice through on every small round of stitches.

use super::gauges::mean;
use super::recount::{Rules, onto};
use super::solve::Solver;
use crate::craft::{Begin, Build, Close, Loops, Made, Multiple, Op, Round, Stitch};
use crate::design::{Body, Design, Part, Said, Work};
use crate::notation::tree::{Act, Item, Times};
use crate::notation::{Source, WrittenRound, read_with};
use crate::report::{Diagnostic, Place, Report, Severity};
use crate::units::Gauge;

/// Largest round on which a pattern is tried: repeats of up to a third of it are found.
const TRIED: u32 = 180;
/// Fewest stitches on which a pattern is tried.
const FEWEST: u32 = 3;

/// A stitch pattern that closes.
#[derive(Clone, Debug)]
pub(super) struct Texture {
    /// Rounds worked once before the others.
    pub(super) set_up: Vec<WrittenRound>,
    pub(super) lines: Vec<WrittenRound>,
    /// Which of the lines are plain, with their stitch and loops.
    pub(super) plain: Vec<Option<(Stitch, Loops)>>,
    rules: Rules,
    /// What every count that it closes on is a multiple of.
    pub(super) multiple: Multiple,
    /// Where it stands.
    pub(super) place: Option<Place>,
    /// Its rounds on the smallest count, the second time through.
    pub(super) sample: Vec<Round>,
}

/// Reads the pattern of every part that has one; nothing where one can't be read or doesn't close.
pub(super) fn textures(design: &Design, report: &mut Report) -> Option<Vec<Option<Texture>>> {
    let mut fine = true;
    let mut of = |part: &Part| {
        let Body::Profile(profile) = &part.body else { return None };
        let lines = Some(&profile.pattern).filter(|lines| !lines.is_empty())?;
        let texture = Texture::read(design, part, (&profile.set_up, lines), report);
        fine &= texture.is_some();
        texture
    };
    let textures = design.parts.iter().map(&mut of).collect();
    fine.then_some(textures)
}

/// True where an item goes round by itself.
fn goes_round(item: &Item) -> bool {
    match &item.act {
        Act::Run(_, times) | Act::Repeat(_, times) => matches!(times, Times::Around { .. }),
        Act::Evenly { .. } => true,
        Act::Same { .. } | Act::Skipped(_) => false,
    }
}

/// One line as a round that goes round, whatever count it states.
fn around(line: WrittenRound) -> WrittenRound {
    let items = match line.items.iter().any(goes_round) {
        true => line.items,
        false => vec![Item { act: Act::Repeat(line.items, Times::Around { leave: 0 }), place: line.place }],
    };
    WrittenRound { items, stated: None, ..line }
}

impl Texture {
    fn read(
        design: &Design,
        part: &Part,
        (set_up, lines): (&[Said<String>], &[Said<String>]),
        report: &mut Report,
    ) -> Option<Self> {
        let rules = Rules { work: design.work, main: part.stitch, terms: design.terms, height: None };
        let mut written = Vec::with_capacity(set_up.len() + lines.len());
        for line in set_up.iter().chain(lines) {
            let source = Source { text: &line.value, place: line.place };
            let mut own = Report::new();
            let rounds = read_with(&[source], (rules.terms, &design.stitches), rules.main, 2, &mut own);
            let failed = own.has_errors();
            own.diagnostics.into_iter().for_each(|complaint| report.add(complaint));
            match <[WrittenRound; 1]>::try_from(rounds) {
                Ok([round]) if !failed && !round.items.is_empty() => written.push(around(round)),
                Ok(_) | Err(_) if failed => return None,
                Ok(_) | Err(_) => {
                    let help = "write one round to a line, without its number: `FPdc in next, BPdc in next`";
                    let message = "this line of the pattern is not one round";
                    report.add(Diagnostic::error("pattern", message).at(line.place).help(help));
                    return None;
                }
            }
        }
        let place = lines.first().and_then(|line| line.place);
        let repeated = written.split_off(set_up.len());
        let twice: Vec<&WrittenRound> = written.iter().chain(&repeated).chain(&repeated).collect();
        let closing: Vec<u32> = (FEWEST..=TRIED).filter(|count| keeps(&twice, *count, &rules)).take(3).collect();
        let [first, second, third] = closing[..] else {
            report.add(unclosed(&twice, &rules));
            return None;
        };
        let multiple = Multiple::new(second - first, first);
        if third - second != second - first {
            let message = "this pattern closes on some counts and not on others, by no multiple";
            let help = "let every line use up as many stitches in each repeat";
            report.add(Diagnostic::error("pattern", message).at(place).help(help));
            return None;
        }
        let mut own = Report::new();
        let sample = worked(&twice, first, &rules, &mut own)?.split_off(written.len() + repeated.len());
        // What is doubtful about its words is told once; that it states no count is as it should be.
        let doubts = own.diagnostics.into_iter().filter(|one| one.severity != Severity::Error);
        doubts.for_each(|doubt| report.add(doubt));
        let plain = sample.iter().map(plain_round).collect();
        Some(Self { set_up: written, lines: repeated, plain, rules, multiple, place, sample })
    }

    /// Which of its lines the part has come to after so many rounds of the pattern; nothing in its set-up.
    fn line_at(&self, index: usize) -> Option<usize> {
        index.checked_sub(self.set_up.len()).map(|index| index % self.lines.len().max(1))
    }

    /// The stitch and the loops of the plain round that comes after so many rounds of the pattern, where it is one.
    pub(super) fn plain_at(&self, index: usize) -> Option<(Stitch, Loops)> {
        self.plain.get(self.line_at(index)?).copied().flatten()
    }

    /// The round of the part at `index` of its pattern rounds, onto the one below.
    fn round(&self, index: usize, below: &Round, report: &mut Report) -> Option<Round> {
        let line = match self.line_at(index) {
            Some(line) => self.lines.get(line)?,
            None => self.set_up.get(index)?,
        };
        let number = below.number + 1;
        let line = WrittenRound { first: number, last: number, ..line.clone() };
        onto(&[line], below, &self.rules, report)?.pop()
    }
}

/// The stitch and the loops of a round of one in each, of a stitch that increases and decreases are made of.
fn plain_round(round: &Round) -> Option<(Stitch, Loops)> {
    let first = round.ops.first()?;
    let Made::Same(stitch, 1) = first.made else { return None };
    let flat = matches!(
        stitch.row().build,
        Build::Cross | Build::Stem | Build::Extended | Build::Long | Build::Linked | Build::Loop
    );
    let plain = Op::plain(stitch).under(first.loops);
    (flat && round.ops.iter().all(|op| *op == plain)).then_some((stitch, first.loops))
}

/// A round of so many plain stitches.
fn plain(count: u32, stitch: Stitch) -> Round {
    Round {
        number: 1,
        part: 0,
        stitch,
        before: 0,
        after: count,
        slipped: 0,
        ops: vec![Op::into_ring(stitch); count as usize],
        colour: None,
        begin: Begin::Plain,
        close: Close::Spiral,
        target: None,
        place: None,
        said: None,
    }
}

/// The rounds worked onto so many stitches.
fn worked(lines: &[&WrittenRound], count: u32, rules: &Rules, report: &mut Report) -> Option<Vec<Round>> {
    let numbered = lines.iter().zip(2..);
    let lines: Vec<WrittenRound> =
        numbered.map(|(line, number)| WrittenRound { first: number, last: number, ..(*line).clone() }).collect();
    onto(&lines, &plain(count, rules.main), rules, report)
}

/// True where the rounds can be worked on so many stitches, and keep them.
fn keeps(lines: &[&WrittenRound], count: u32, rules: &Rules) -> bool {
    let rounds = worked(lines, count, rules, &mut Report::new());
    rounds.is_some_and(|rounds| rounds.iter().all(|round| round.after == count))
}

/// Why a pattern closes on no count: the first line that can't be worked, or that changes the count.
fn unclosed(lines: &[&WrittenRound], rules: &Rules) -> Diagnostic {
    for end in 1..=lines.len() {
        let (before, own) = (&lines[..end - 1], &lines[..end]);
        let place = own.last().map(|line| line.place);
        if (FEWEST..=TRIED).any(|count| keeps(own, count, rules)) {
            continue;
        }
        let mut fits = (FEWEST..=TRIED).filter(|count| before.is_empty() || keeps(before, *count, rules));
        let changed = fits.clone().find_map(|count| {
            let rounds = worked(own, count, rules, &mut Report::new())?;
            Some((count, rounds.last()?.after))
        });
        if let Some((count, after)) = changed {
            let message = format!("this round of the pattern makes {after} stitches of {count}");
            let help = "let each repeat make as many stitches and chains as it uses up, so that the count stays";
            return Diagnostic::error("pattern", message).at(place).help(help);
        }
        let mut own_report = Report::new();
        let last = fits.next_back().unwrap_or(TRIED);
        worked(own, last, rules, &mut own_report);
        if let Some(why) = own_report.diagnostics.into_iter().find(|one| one.severity == Severity::Error) {
            return why;
        }
    }
    let help = "let each repeat use up the stitches that the round before makes";
    Diagnostic::error("pattern", "this pattern closes on no count").at(lines.first().map(|line| line.place)).help(help)
}

impl Solver<'_> {
    /// The pattern of the part at an index.
    pub(super) fn texture(&self, part: usize) -> Option<&Texture> {
        self.textures.get(part).and_then(Option::as_ref)
    }

    /// A round of the pattern of the part that is being added, the `index`-th of them, onto the last one.
    pub(super) fn textured(&mut self, index: usize) -> Option<Round> {
        let below = self.rounds.last()?;
        let texture = self.textures.get(self.parts.len()).and_then(Option::as_ref)?;
        let mut own = Report::new();
        let round = texture.round(index, below, &mut own);
        own.diagnostics.into_iter().filter(|one| one.severity == Severity::Error).for_each(|one| self.report.add(one));
        let round = round?;
        let first = round.ops.first().and_then(|op| op.made.runs().next()).map_or(round.stitch, |(first, _)| first);
        // A chain in front of what says none counts for nothing: the first stitch is worked as it is written.
        let begin = match (round.begin, self.design.work) {
            (Begin::Plain, Work::Joined { .. }) if first.row().turning > 0 => {
                Begin::Chain { chains: first.row().turning, counts: false }
            }
            (begin, _) => begin,
        };
        let said = round.said.and_then(|said| said.told_anew());
        Some(Round { begin, said, place: None, ..round })
    }

    /// The gauge of a part: of its own swatch, of its pattern, or of its stitch.
    pub(super) fn gauge_at(&self, index: usize) -> Gauge {
        let part = self.design.parts.get(index);
        let own = part.and_then(|part| match &part.body {
            Body::Profile(profile) => profile.swatch.as_ref().map(|swatch| swatch.gauge),
            Body::Written(_) => None,
        });
        let stitch = part.map_or(Stitch::SC, |part| part.stitch);
        own.unwrap_or_else(|| match self.texture(index) {
            Some(texture) => mean(self.gauges, texture.sample.iter()),
            None => self.gauge(stitch),
        })
    }
}
