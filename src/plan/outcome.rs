//! What comes out of the counts, held against what was asked for.
//!
//! A pattern promises what its counts make: the finished measure is taken from the rounds, and a wish that they miss by
//! more than the tolerance is told, as are sizes that were asked for as two and come out as one.

use super::SizePlan;
use super::solve::Solver;
use super::strays::WIDEST;
use crate::craft::{Build, Foundation, Round};
use crate::design::{Body, Design, Preference, Tolerance};
use crate::report::{Diagnostic, Report};
use crate::units::{EPSILON, Mm, tidy};

/// Share of a measure under which nobody can tell a difference with a tape: half a per cent.
const UNSEEN: f64 = 0.005;
/// Share of a measure within which a miss is only noted where the design says no tolerance.
const USUAL: f64 = 0.025;
/// Share of its measure by which a hat that comes out is another size: sizes of heads are 3 to 5 % apart.
const OUT_OF_REACH: f64 = 0.15;
/// Rounds of no more stitches than this can't come much nearer than they do.
const FEW: u32 = 20;

impl Solver<'_> {
    /// The finished circumference at rest: that of the round where the size's own measure is taken. It is taken where a
    /// part ends or is widest, at the one of these nearest to the wish, the last of those equally near; without a wish
    /// the widest round counts.
    pub(super) fn comes_out(&self) -> Mm {
        let around = |round: &Round| self.gauge_of(round).circumference(round.after);
        // An edge of slip stitches is drawn in by hand and measures nothing.
        let fabric = |round: &&Round| round.stitch.row().build != Build::Slip;
        let widest = |part: usize| {
            let own = self.rounds.iter().filter(fabric).filter(move |round| round.part == part).map(around);
            own.reduce(Mm::max)
        };
        let last = |part: usize| self.rounds.iter().filter(fabric).rfind(|round| round.part == part).map(around);
        // A chain is as long as the size, and what is worked on it goes on from there.
        let chained = matches!(self.foundation, Foundation::ChainRound(_));
        let begins = self.rounds.first().filter(|_| chained).map(around);
        let measured =
            begins.into_iter().chain((0..self.parts.len()).flat_map(|part| [widest(part), last(part)]).flatten());
        let wanted = self.size.around;
        if wanted == Mm::ZERO {
            return measured.reduce(Mm::max).unwrap_or(Mm::ZERO);
        }
        let off = |at: &Mm| (*at - wanted).abs().mm();
        let nearest = measured.collect::<Vec<_>>().into_iter().rev().min_by(|a, b| off(a).total_cmp(&off(b)));
        nearest.unwrap_or(wanted)
    }

    /// Refuses a hat of solved parts and few stitches that comes out so far over its head that it is another size.
    pub(super) fn reaches(&mut self, finished: Mm) -> Option<()> {
        let wanted = self.size.around;
        let solved = self.design.parts.iter().all(|part| matches!(part.body, Body::Profile(_)));
        let crowned = self.design.kind.row().worn && solved && self.foundation == Foundation::Ring;
        // A piece that closes again is no hat, and ends with few stitches however wide it is.
        let widest = self.rounds.iter().map(|round| round.after).max();
        let few = self.rounds.last().is_some_and(|last| last.after <= FEW && Some(last.after) == widest);
        let far = wanted > Mm::ZERO && finished - wanted > wanted * OUT_OF_REACH;
        if !crowned || !few || !far {
            return Some(());
        }
        let cm = |length: Mm| tidy(length.cm(), 1);
        let head = self.size.head.map_or(wanted, |head| head * (finished / wanted));
        let message = format!(
            "size {} can't be reached: whole rounds come no nearer than {} cm around, and {} cm were asked for",
            self.size.name,
            cm(finished),
            cm(wanted)
        );
        let help = format!(
            "make it for a head of {} cm or so, or work it in a shorter stitch or in finer yarn, with a swatch of that",
            cm(head)
        );
        self.refuse("head-out-of-reach", self.size.place, message, &help)
    }

    /// Warns where what comes out misses what was asked for by more than the tolerance.
    pub(super) fn missed(&mut self, finished: Mm) {
        let wanted = self.size.around;
        if wanted == Mm::ZERO || self.rounds.is_empty() {
            return;
        }
        let allowed = self.design.tolerance.of(wanted);
        let off = finished - wanted;
        if off.abs() <= allowed.max(wanted * UNSEEN) {
            return;
        }
        let more = if off > Mm::ZERO { "more" } else { "less" };
        let message = format!(
            "size {} comes out {} cm around where {} cm were asked for: {} % {more}",
            self.size.name,
            tidy(finished.cm(), 1),
            tidy(wanted.cm(), 1),
            tidy((off / wanted).abs() * 100.0, 1)
        );
        let help = self.cure(off, wanted);
        let solved = self.design.parts.iter().all(|part| matches!(part.body, Body::Profile(_)));
        // Where nobody said how near, what the solver chose is no mistake of the design's.
        if solved && self.design.tolerance == Tolerance::Usual && off.abs() <= wanted * USUAL {
            self.report.add(Diagnostic::note("misses-size", message).at(self.size.place).help(help));
        } else {
            self.warn("misses-size", self.size.place, message, &help);
        }
    }

    /// What helps where a size misses its measure: what can be written into the design.
    fn cure(&self, off: Mm, wanted: Mm) -> String {
        // Rounded up, so that what is written is enough.
        let enough = ((off / wanted).abs() * 200.0 + EPSILON).ceil() / 2.0;
        let allowed = format!("`tolerance: {} %` says that this will do", tidy(enough, 1));
        let gauge = self.rounds.last().map(|round| self.gauge_of(round));
        let stitches = gauge.map_or(0.0, |gauge| (off / gauge.width).abs().round());
        let written = self.design.parts.iter().any(|part| matches!(part.body, Body::Written(_)));
        match () {
            () if enough > WIDEST * 100.0 => {
                let side = if off > Mm::ZERO { "fewer" } else { "more" };
                format!(
                    "its widest round wants about {stitches} stitches {side}; or ask for the measure that comes out"
                )
            }
            () if stitches < 1.0 => format!("no whole count comes nearer; {allowed}"),
            // Nothing that prefers closer counts gets past a multiple.
            () if self.parts.iter().any(|part| part.multiple.is_some()) => {
                format!("its counts are held to the multiple that is asked for; {allowed}")
            }
            () if !written && self.design.prefer != Preference::Close => {
                format!("`prefer: close` keeps nearer to the measures; {allowed}")
            }
            () => format!("no other counts keep to the rest of the design as well; {allowed}"),
        }
    }
}

/// Warns of sizes that were asked for as two and come out as one, as wide as each other.
pub(super) fn alike(design: &Design, sizes: &mut [SizePlan], report: &mut Report) {
    for later in 1..sizes.len() {
        let (before, rest) = sizes.split_at_mut(later);
        let Some(size) = rest.first_mut() else { continue };
        let apart = |first: &SizePlan| (first.wanted - size.wanted).abs() > size.wanted * UNSEEN;
        let Some(first) = before.iter().find(|first| first.finished == size.finished && apart(first)) else { continue };
        let message = format!(
            "sizes {} and {} both come out {} cm around: they are one size",
            first.name,
            size.name,
            tidy(size.finished.cm(), 1)
        );
        size.warnings.push(message.clone());
        let place = design.sizes.get(later).and_then(|size| size.place);
        let help = "leave one of them out, or move their measures further apart than a stitch is wide";
        report.add(Diagnostic::warning("sizes-alike", message).help(help).at(place));
    }
}

#[cfg(test)]
mod tests {
    use crate::design;
    use crate::plan::{Plan, solve};
    use crate::report::Report;
    use crate::units::Mm;

    fn cap(sizes: &str, tolerance: &str) -> (Plan, Vec<&'static str>) {
        let text = format!(
            "title: Cap\nswatch: {{stitch: dc, stitches: 18, rounds: 10, width: 13.6, height: 13.3}}\nease: 0 %\n\
             tolerance: {tolerance}\nsizes: {{{sizes}}}\nwork: spiral\n\
             parts:\n  - crown: {{start: ring, shape: dome}}\n  - side: {{depth: 8}}\n"
        );
        let mut report = Report::new();
        let plan = design::read(&text, &mut report).and_then(|design| solve(&design, &mut report));
        let codes = report.diagnostics.iter().map(|one| one.code).collect();
        (plan.unwrap_or_else(|| panic!("{report:?}")), codes)
    }

    #[test]
    fn what_comes_out_is_what_the_counts_make() {
        let (plan, _) = cap("M: {head: 53}", "5 %");
        let last = plan.sizes[0].rounds.last().unwrap();
        assert_eq!(plan.sizes[0].finished, plan.gauge_of(last).circumference(last.after));
        assert_eq!(plan.sizes[0].wanted, Mm::from_cm(53.0));
    }

    #[test]
    fn a_missed_wish_is_told_with_its_figures() {
        // Stitches of 7.6 mm come no nearer to 54.3 cm than 71 or 72 of them: 1.2 % off or 0.2 %.
        let off = |plan: &Plan| (plan.sizes[0].finished / plan.sizes[0].wanted - 1.0).abs();
        for (tolerance, allowed) in [("0.1 %", 0.005), ("1 %", 0.01), ("8 %", 0.08)] {
            let (plan, codes) = cap("M: {head: 54.3}", tolerance);
            assert_eq!(codes.contains(&"misses-size"), off(&plan) > allowed, "{tolerance}: {} off", off(&plan));
        }
        let (plan, codes) = cap("M: {head: 54}", "0.1 %");
        assert!(off(&plan) > 0.005 && codes.contains(&"misses-size"), "{} off, {codes:?}", off(&plan));
    }

    #[test]
    fn crown_and_side_miss_the_depth_by_half_a_round_at_most() {
        let (mut told, height) = (0, 13.3);
        for tenths in 50..90 {
            let text = format!(
                "title: Cap\nswatch: {{stitch: dc, stitches: 18, rounds: 10, width: 13.6, height: {height}}}\nease: 0 %\n\
                 sizes: {{S: {{head: 50}}, L: {{head: 57}}}}\nwork: spiral\n\
                 parts:\n  - crown: {{start: ring, shape: dome}}\n  - side: {{depth: {}}}\n",
                f64::from(tenths) / 10.0
            );
            let mut report = Report::new();
            let plan = design::read(&text, &mut report).and_then(|design| solve(&design, &mut report));
            for size in plan.expect("a hat").sizes {
                let off = size.parts.iter().map(|part| (part.length - part.wanted_length.unwrap()).mm()).sum::<f64>();
                assert!(off.abs() <= height / 2.0 + 1e-6, "{tenths}: {off}");
                told += usize::from(size.parts[1].reasons.iter().any(|reason| reason.contains("than its own length")));
            }
        }
        assert!(told > 5, "{told}");
    }

    #[test]
    fn sizes_that_come_out_as_one_are_told() {
        assert!(cap("A: {head: 53}, B: {head: 53.6}", "5 %").1.contains(&"sizes-alike"));
        assert!(!cap("A: {head: 50}, B: {head: 58}", "5 %").1.contains(&"sizes-alike"));
    }
}
