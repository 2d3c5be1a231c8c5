//! Written rounds counted by themselves, without a swatch: whether they add up, and to how many stitches.

use super::piece::{TextPiece, alone, pieces};
use super::text;
use crate::craft::Stitch;
use crate::design::{self, Body};
use crate::notation::{Source, read_with};
use crate::plan::recount::{Rules, rounds};
use crate::report::{Diagnostic, Report};

/// Rounds and stitches of a text that adds up.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Counted {
    /// Rounds, of all pieces where there are several.
    pub rounds: u32,
    /// Stitches in all of them.
    pub stitches: u64,
}

/// A way of working to read the text with; its measures are not looked at.
const ANY: &str = "swatch: {stitch: sc, stitches: 20, rounds: 20, width: 10, height: 10}\n";

/// Counts a text file of written rounds (see [`text`]) without a swatch: nothing is said of size, yarn or shape, and a
/// round that is worked to a length is refused. Nothing where the report holds an error; the report is whole either way.
pub fn count_rounds(bytes: &[u8]) -> (Option<Counted>, Report) {
    let mut report = Report::new();
    let Some(said) = design::text_of(bytes, &mut report) else { return (None, report) };
    let pieces = pieces(said);
    let texts = (0..pieces.len().max(1)).map(|index| alone(said, &pieces, index));
    let mut all = Some(Counted { rounds: 0, stitches: 0 });
    for text in texts {
        let counted = count(&text, &mut report);
        all = all.zip(counted).map(|(all, own)| Counted {
            rounds: all.rounds.saturating_add(own.rounds),
            stitches: all.stitches.saturating_add(own.stitches),
        });
    }
    (all.filter(|_| !report.has_errors()), report)
}

/// The piece that is asked for, else the first, and that there are others.
pub(super) fn chosen(pieces: &[TextPiece], asked: Option<&str>, report: &mut Report) -> usize {
    let names = || pieces.iter().map(|piece| piece.name.as_str()).collect::<Vec<_>>().join(", ");
    let Some(asked) = asked else {
        if let Some(first) = pieces.first() {
            let message = format!("this text holds {} pieces: {}; {} is taken", pieces.len(), names(), first.name);
            let help = "`publish` makes all of them; `--piece NAME` takes another for `plan` and `draw`";
            report.add(Diagnostic::warning("another-piece", message).help(help));
        }
        return 0;
    };
    let named = |piece: &TextPiece| piece.name.to_lowercase() == asked.trim().to_lowercase();
    let number = || asked.trim().parse::<usize>().ok()?.checked_sub(1).filter(|index| *index < pieces.len());
    if let Some(index) = pieces.iter().position(named).or_else(number) {
        return index;
    }
    let asked = design::shortened(asked);
    let (message, help) = if pieces.is_empty() {
        (format!("there is no piece `{asked}`: the text holds only one"), "leave `--piece` out".to_owned())
    } else {
        (format!("there is no piece `{asked}`"), format!("the pieces are {}", names()))
    };
    report.add(Diagnostic::error("unknown-piece", message).help(help));
    0
}

/// Checks the counts of all pieces but the first.
pub(super) fn count_others(said: &str, pieces: &[TextPiece], report: &mut Report) {
    for index in 1..pieces.len() {
        count(&alone(said, pieces, index), report);
    }
}

/// Counts the rounds of one piece.
fn count(said: &str, report: &mut Report) -> Option<Counted> {
    let beside = design::read_swatch(ANY, &mut Report::new())?;
    let design = text::into_design(said, &beside, report)?;
    let (mut before, mut number, mut stitches) = (0, 1, 0);
    for part in &design.parts {
        let Body::Written(sizes) = &part.body else { continue };
        let lines = sizes.first().map_or(&[][..], Vec::as_slice);
        let sources: Vec<Source<'_>> =
            lines.iter().map(|said| Source { text: &said.value, place: said.place }).collect();
        let rules = Rules { work: design.work, main: Stitch::SC, terms: design.terms, height: None };
        let written = read_with(&sources, (rules.terms, &design.stitches), rules.main, number, report);
        let counted = rounds(&written, (before, number), &rules, report)?;
        stitches += counted.rounds.iter().map(|round| u64::from(round.after)).sum::<u64>();
        number += counted.rounds.len() as u32;
        before = counted.rounds.last().map_or(before, |round| round.after);
    }
    Some(Counted { rounds: number - 1, stitches })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn rounds_are_counted_without_a_swatch() {
        let (counted, report) = count_rounds(b"Rnd 1: 6 sc in ring (6)\nRnd 2: inc around (12)\n");
        assert_eq!(counted, Some(Counted { rounds: 2, stitches: 18 }), "{report:#?}");
        let doll = "Body\nRnd 1: 6 sc in ring (6)\nEar (make 2)\nRnd 1: 4 sc in ring (4)\nRnd 2: inc around (8)\n";
        assert_eq!(count_rounds(doll.as_bytes()).0, Some(Counted { rounds: 3, stitches: 18 }));
        let (counted, report) = count_rounds(doll.replace("(8)", "(9)").as_bytes());
        assert!(counted.is_none() && report.diagnostics.iter().any(|one| one.code == "count-differs"), "{report:#?}");
        let (counted, report) = count_rounds(b"Rnd 1: 6 sc in ring (6)\nRnd 2: inc around (13)\n");
        assert_eq!(counted, None);
        assert!(report.diagnostics.iter().any(|one| one.code == "count-differs"), "{report:#?}");
        assert_eq!(count_rounds(b"\xff").0, None);
        let (counted, report) = count_rounds(b"Rnd 1: 6 sc in ring (6)\nWork even until piece measures 5 cm.\n");
        assert!(counted.is_none() && report.diagnostics.iter().any(|one| one.code == "until-unmeasured"));
    }
}
