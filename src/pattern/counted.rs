//! Written rounds counted by themselves, without a swatch: whether they add up, and to how many stitches.

use super::text;
use crate::craft::Stitch;
use crate::design::{self, Body};
use crate::notation::{Source, read};
use crate::plan::recount::{Rules, rounds};
use crate::report::Report;

/// Rounds and stitches of a text that adds up.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Counted {
    /// Rounds, of the first piece where there are several.
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
    let beside = design::read_swatch(ANY, &mut Report::new());
    let said = design::text_of(bytes, &mut report);
    let design = said.zip(beside).and_then(|(said, beside)| text::into_design(said, &beside, &mut report));
    let Some(design) = design else { return (None, report) };
    let (mut before, mut number, mut stitches) = (0, 1, 0);
    for part in &design.parts {
        let Body::Written(lines) = &part.body else { continue };
        let sources: Vec<Source<'_>> =
            lines.iter().map(|said| Source { text: &said.value, place: said.place }).collect();
        let rules = Rules { work: design.work, main: Stitch::SC, terms: design.terms, height: None };
        let written = read(&sources, rules.terms, rules.main, number, &mut report);
        let counted = rounds(&written, (before, number), &rules, &mut report);
        let Some(counted) = counted.filter(|_| !report.has_errors()) else { return (None, report) };
        stitches += counted.rounds.iter().map(|round| u64::from(round.after)).sum::<u64>();
        number += counted.rounds.len() as u32;
        before = counted.rounds.last().map_or(before, |round| round.after);
    }
    (Some(Counted { rounds: number - 1, stitches }), report)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn rounds_are_counted_without_a_swatch() {
        let (counted, report) = count_rounds(b"Rnd 1: 6 sc in ring (6)\nRnd 2: inc around (12)\n");
        assert_eq!(counted, Some(Counted { rounds: 2, stitches: 18 }), "{report:#?}");
        let (counted, report) = count_rounds(b"Rnd 1: 6 sc in ring (6)\nRnd 2: inc around (13)\n");
        assert_eq!(counted, None);
        assert!(report.diagnostics.iter().any(|one| one.code == "count-differs"), "{report:#?}");
        assert_eq!(count_rounds(b"\xff").0, None);
        let (counted, report) = count_rounds(b"Rnd 1: 6 sc in ring (6)\nWork even until piece measures 5 cm.\n");
        assert!(counted.is_none() && report.diagnostics.iter().any(|one| one.code == "until-unmeasured"));
    }
}
