//! The front door: text → [`Pattern`].
//!
//! Takes a design file, or written rounds with a design beside them. Gives the plan, the predicted shape of every size,
//! and everything that is to be said of them: complaints of the design, of the plan, and what the shape will do that the
//! maker may not want. Whoever comes in here hears all of it. Fails as the stages behind it do, with a report that holds
//! an error.

mod colours;
mod counted;
mod findings;
mod photograph;
pub mod piece;
pub mod text;
pub mod waves;

pub use counted::{Counted, count_rounds};

use std::sync::Arc;

use rayon::prelude::*;

use crate::design::{self, Design};
use crate::geometry::{SideShape, predict};
use crate::photo::Photo;
use crate::plan::{Plan, solve};
use crate::report::{Diagnostic, Report};

/// A design solved or recounted, with the shape that it will take.
#[derive(Clone, Debug, PartialEq)]
pub struct Pattern {
    /// The rounds of every size, with the design they came from.
    pub plan: Plan,
    /// The predicted side shape of every size, in the order of the plan.
    pub shapes: Vec<SideShape>,
    /// The photograph for the cover, where the design names one and its file was [given](Self::with_photo).
    pub photo: Option<Arc<Photo>>,
    /// Warnings and notes; never an error.
    pub report: Report,
}

/// The design whose swatch, yarn and first size go with written rounds: a whole design file, or only its lines on these.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Beside<'t> {
    /// Its name in complaints, such as its path.
    pub name: &'t str,
    /// Its file.
    pub bytes: &'t [u8],
}

impl Pattern {
    /// Reads, solves or recounts a design file, and predicts its shape. Everything found wrong where that fails.
    pub fn read(bytes: &[u8]) -> Result<Self, Report> {
        let mut report = Report::new();
        match design::read_bytes(bytes, &mut report) {
            Some(design) => Self::solve(&design, report),
            None => Err(report),
        }
    }

    /// Reads and recounts a text file of written rounds (see [`text`]) and predicts its shape. An error says so where
    /// there is no design beside them: rounds alone don't say how large they come out.
    pub fn read_rounds(bytes: &[u8], beside: Option<Beside<'_>>) -> Result<Self, Report> {
        Self::read_piece(bytes, beside, None)
    }

    /// The same of one piece of the text, by its name or its number among the pieces; without one the first is taken, the
    /// counts of the others are checked as well, and that there are others is told.
    pub fn read_piece(bytes: &[u8], beside: Option<Beside<'_>>, piece: Option<&str>) -> Result<Self, Report> {
        let mut report = Report::new();
        let text = design::text_of(bytes, &mut report).unwrap_or_default();
        let pieces = piece::pieces(text);
        let chosen = counted::chosen(&pieces, piece, &mut report);
        let beside = match beside {
            Some(beside) => beside.design(&mut report),
            None => {
                let help = "add `--swatch FILE.yaml`, a design or only its lines on swatch and yarn";
                let message = "written rounds alone don't say how large they come out";
                report.add(Diagnostic::error("no-swatch", message).help(help));
                None
            }
        };
        if let (Some(_), None) = (&beside, piece) {
            counted::count_others(text, &pieces, &mut report);
        }
        let rounds = piece::alone(text, &pieces, chosen);
        match beside.and_then(|beside| text::into_design(&rounds, &beside, &mut report)) {
            Some(design) => Self::solve(&design, report),
            None => Err(report),
        }
    }

    /// Solves or recounts a design and predicts its shape. `report` holds what was said of the design so far.
    pub fn solve(design: &Design, mut report: Report) -> Result<Self, Report> {
        let plan = solve(design, &mut report);
        // Half a plan is of no use: errors found on the way stop here.
        let Some(plan) = plan.filter(|_| !report.has_errors()) else { return Err(report) };
        let shapes: Vec<SideShape> = plan.sizes.par_iter().map(|size| predict(&plan, size)).collect();
        findings::tell(&plan, &shapes, &mut report);
        colours::tell(&plan, &mut report);
        Ok(Self { plan, shapes, photo: None, report })
    }

    /// The same with written rounds in our own words, the shortest, and not in their author's.
    #[must_use]
    pub fn told_anew(self) -> Self {
        Self { plan: self.plan.told_anew(), ..self }
    }

    /// The same for one of its sizes alone, by its name: solved with all the others, printed as if there were no other.
    /// Fails with what sizes there are.
    pub fn of_size(self, name: &str) -> Result<Self, Diagnostic> {
        let index = self.plan.size_named(name)?;
        let Self { plan, shapes, photo, report } = self;
        let sizes = plan.sizes.into_iter().skip(index).take(1).collect();
        let plan = Plan { design: plan.design.of_size(index), sizes, ..plan };
        Ok(Self { plan, shapes: shapes.into_iter().skip(index).take(1).collect(), photo, report })
    }

    /// The design, with every default filled in.
    pub const fn design(&self) -> &Design {
        &self.plan.design
    }
}

impl Beside<'_> {
    /// The design; its own complaints are for a check of its own.
    fn design(self, report: &mut Report) -> Option<Design> {
        let mut own = Report::new();
        let design = design::text_of(self.bytes, &mut own).and_then(|text| design::read_swatch(text, &mut own));
        let design = design.filter(|_| !own.has_errors());
        if design.is_none() {
            let message = format!("the design {} has errors of its own", self.name);
            let help = format!("run `roundelay check {}` to see them", self.name);
            report.add(Diagnostic::error("swatch-errors", message).help(help));
        }
        design
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::report::Severity;

    const SWATCH: &str = "swatch: {stitch: sc, stitches: 20, rounds: 20, width: 10, height: 10}\n";

    fn disc(rate: u32) -> String {
        (0..20).fold(format!("Rnd 1: {rate} sc in ring ({rate})\n"), |text, before| match before {
            0 => text + &format!("Rnd 2: 2 sc in each st around ({})\n", 2 * rate),
            _ => {
                let each = before;
                text + &format!("Rnd {}: [{each} sc, inc] {rate} times ({})\n", before + 2, rate * (before + 2))
            }
        })
    }

    fn beside(bytes: &str) -> Option<Beside<'_>> {
        Some(Beside { name: "swatch.yaml", bytes: bytes.as_bytes() })
    }

    fn codes(report: &Report, severity: Severity) -> Vec<&str> {
        report.diagnostics.iter().filter(|one| one.severity == severity).map(|one| one.code).collect()
    }

    #[test]
    fn what_the_shape_will_do_is_a_warning_at_its_round() {
        let rounds = disc(12);
        let pattern = Pattern::read_rounds(rounds.as_bytes(), beside(SWATCH)).unwrap();
        let shape: Vec<_> = pattern.report.diagnostics.iter().filter(|one| one.code == "shape").collect();
        let [warning] = shape[..] else { panic!("{:#?}", pattern.report) };
        assert_eq!(warning.severity, Severity::Warning);
        assert!(warning.message.contains("will ruffle"), "{}", warning.message);
        let finding = &pattern.shapes[0].findings[0];
        assert_eq!(warning.place.map(|place| place.line), Some(finding.first as usize));
    }

    #[test]
    fn a_disc_that_lies_flat_has_no_such_warning() {
        let pattern = Pattern::read_rounds(disc(6).as_bytes(), beside(SWATCH)).unwrap();
        assert_eq!(codes(&pattern.report, Severity::Warning), Vec::<&str>::new());
        assert_eq!((pattern.plan.sizes[0].rounds.len(), pattern.shapes[0].rounds.len()), (21, 21));
        assert_eq!(pattern.design(), &pattern.plan.design);
    }

    #[test]
    fn every_failure_hands_back_its_report() {
        let cases = [
            (Pattern::read(b"\xff"), "not-utf-8"),
            (Pattern::read_rounds(b"\xff", None), "no-swatch"),
            (Pattern::read_rounds(disc(6).as_bytes(), None), "no-swatch"),
            (Pattern::read_rounds(disc(6).as_bytes(), beside("swatch: much")), "swatch-errors"),
            (Pattern::read_rounds(b"# nothing\n", beside(SWATCH)), "no-rounds"),
        ];
        for (read, code) in cases {
            let report = read.unwrap_err();
            assert!(codes(&report, Severity::Error).contains(&code), "{code}: {report:#?}");
        }
        let report = Pattern::read_rounds(b"Rnd 1: 6 sc in ring (7)\n", beside(SWATCH)).unwrap_err();
        assert!(report.has_errors());
    }
}
