//! Whether what was written comes out in the size that was asked for.

use super::solve::Solver;
use crate::design::Body;
use crate::units::{Mm, tidy};

/// Share of the finished circumference that a hat must reach somewhere.
const ENOUGH: f64 = 0.95;

impl Solver<'_> {
    /// Warns of a hat with written rounds whose widest round is too small for its head. Solved parts see to their
    /// circumference themselves, and how wide a written brim should be nobody says.
    pub(super) fn fit(&mut self) {
        let design = self.design;
        let Some(written) = design.parts.iter().find(|part| matches!(part.body, Body::Written(_))) else { return };
        let around = |round: &crate::craft::Round| self.gauge_of(round).circumference(round.after);
        let widest = self.rounds.iter().map(around).fold(Mm::ZERO, Mm::max);
        let wanted = self.size.around;
        if !design.kind.row().worn || widest >= wanted * ENOUGH {
            return;
        }
        let stitches = (wanted / self.gauge(written.stitch).width).round();
        let message = format!(
            "size {} is nowhere wider than {} cm, and {} cm are wanted round the head",
            self.size.name,
            tidy(widest.cm(), 1),
            tidy(wanted.cm(), 1)
        );
        let help = format!("the rounds round the head want about {stitches} stitches");
        self.warn("hat-too-small", written.name.place, message, &help);
    }
}

#[cfg(test)]
mod tests {
    use crate::design;
    use crate::plan::solve;
    use crate::report::Report;

    fn complaints(top: &str) -> Vec<&'static str> {
        let text = format!(
            "title: Cap\nswatch: {{stitch: sc, stitches: 16, rounds: 17, width: 11.3, height: 11.1}}\nease: 0 %\n\
             sizes: {{one: {{head: 12}}}}\nwork: spiral\nparts:\n  - top:\n      written: |\n{top}"
        );
        let mut report = Report::new();
        let plan = design::read(&text, &mut report).and_then(|design| solve(&design, &mut report));
        assert!(plan.is_some(), "{report:?}");
        report.diagnostics.iter().map(|found| found.code).collect()
    }

    /// 12 cm of 7.06 mm stitches are 17 stitches.
    #[test]
    fn a_written_hat_must_reach_round_the_head() {
        let six = "        Rnd 1: 6 sc in ring (6)\n        Rnd 2: 2 sc in each st around (12)\n";
        assert!(complaints(six).contains(&"hat-too-small"));
        let enough = format!("{six}        Rnd 3: [sc in next st, 2 sc in next st] 6 times (18)\n");
        assert!(!complaints(&enough).contains(&"hat-too-small"));
    }
}
