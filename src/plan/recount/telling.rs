//! What is told of a round that is read in one of several ways.

use super::doubts;
use super::one::{One, Outcome, first_stitch};
use super::reading::Reading;
use crate::craft::{Begin, Spot, abbreviation};
use crate::notation::Doubt;
use crate::notation::tree::{Act, Item};
use crate::report::Diagnostic;

impl One<'_> {
    /// Says that a round can be meant in two ways, and which was taken.
    pub(super) fn two_meanings(&mut self, (first, made): (&Reading, u32), (other, instead): (&Reading, u32)) {
        let as_written = |how: &str| if how.is_empty() { "as it stands".to_owned() } else { how.to_owned() };
        let message = format!(
            "round {} can be meant in two ways: {} it makes {made}, {} it makes {instead}",
            self.number,
            as_written(first.how),
            as_written(other.how)
        );
        let help = format!("{made} is taken; state the count at the end of the round, `({made})` or `({instead})`");
        self.report.add(Diagnostic::warning("two-meanings", message).at(self.written.place).help(help));
    }

    /// Says where the count alone makes a chain at the start count, or not, against what is usual.
    pub(super) fn tell_chain(&mut self, reading: &Reading) {
        let Some(turning) = self.written.begin else { return };
        let Begin::Chain { counts, .. } = reading.begin else {
            let skips =
                matches!(self.written.items.first(), Some(Item { act: Act::Run(op, _), .. }) if op.into == Spot::Skip);
            if !skips && reading.items.is_none() {
                let message = format!("the count fits only if the ch-{} is a bridge between stitches", turning.chains);
                let help = "say what it passes over, `ch 2, skip next 2 sts`, or check the count";
                self.report.add(Diagnostic::warning("chain-unsaid", message).at(turning.place).help(help));
            }
            return;
        };
        let stitch = turning.stitch.or(first_stitch(&self.written.items)).unwrap_or(self.rules.main);
        if counts == turning.counts.unwrap_or_else(|| self.likely(&turning, stitch)) {
            return;
        }
        let (chains, how) = (turning.chains, if counts { "counts as a stitch" } else { "does not count" });
        let message = format!("the count fits only if the ch-{chains} {how}");
        let help = format!("say so where it stands, `ch {chains} ({how})`, or check the count");
        self.report.add(Diagnostic::warning("chain-unsaid", message).at(turning.place).help(help));
    }

    /// Says where the chains passed over at the start are taken for the first stitch.
    pub(super) fn tell_passed(&mut self, reading: &Reading) {
        if !self.passes_chains(reading) {
            return;
        }
        let message = "the chains passed over at the start count as the first stitch";
        let help = "it is printed as a ring with a chain that counts, which makes the same round; where they don't count, \
                    say so by the count of the round";
        self.report.add(Diagnostic::note("chains-passed", message).at(self.written.place).help(help));
    }

    /// Says where the count alone makes a round repeat all of its words; once, since who writes so does it all through.
    pub(super) fn tell_repeat(&mut self, reading: &Reading) {
        if reading.how != doubts::REPEATED || self.report.diagnostics.iter().any(|known| known.code == "repeat-implied")
        {
            return;
        }
        let message = format!("round {} makes its count only where all of it is repeated around", self.number);
        let help = "say so, `[sc, inc] around`; rounds after it that leave it out are taken in the same way";
        self.report.add(Diagnostic::note("repeat-implied", message).at(self.written.place).help(help));
    }

    /// Says where a loop is meant that has no sign of its own; once.
    pub(super) fn tell_loop(&mut self) {
        let third = self.written.doubts.iter().find_map(|doubt| match doubt {
            Doubt::Third(place) => Some(*place),
            Doubt::Often(..) | Doubt::Each(_) | Doubt::Bare(_) | Doubt::Onto(..) => None,
        });
        if self.report.diagnostics.iter().any(|known| known.code == "third-loop") {
            return;
        }
        if let Some(place) = third {
            let message = "the loop behind the back loop is charted and told as the back loop";
            let help = "the author's own words are kept where they are printed; say it beside the chart";
            self.report.add(Diagnostic::warning("third-loop", message).at(place).help(help));
        }
    }

    /// Says where stitches did not find the kind that they name, or passed over others on the way to it.
    pub(super) fn tell_kinds(&mut self, reading: &Reading, outcome: &Outcome) {
        let named = self.written.doubts.iter().find_map(|doubt| match doubt {
            Doubt::Onto(place, kind) => Some((*place, *kind)),
            Doubt::Often(..) | Doubt::Each(_) | Doubt::Bare(_) | Doubt::Third(_) => None,
        });
        let (Some((place, kind)), Some(_)) = (named, &self.standing.kinds) else { return };
        let kind = abbreviation(kind, self.rules.terms);
        if !reading.onto {
            let message = format!("this names a {kind} to work into, and the stitches below are not all {kind}");
            let help = "it comes out right only where it goes into whatever stands there: write `st` for it";
            self.report.add(Diagnostic::warning("no-such-kind", message).at(place).help(help));
        } else if outcome.passed > 0 {
            let message = format!("on the way to each {kind} this passes over {} other stitches", outcome.passed);
            let help = "write the skips out, `skip next st`, or `st` where any stitch is meant";
            self.report.add(Diagnostic::warning("kind-passed", message).at(place).help(help));
        }
    }
}
