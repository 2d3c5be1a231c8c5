//! Finishing, and the cautions.

use super::Story;
use crate::craft::{Close, Foundation, Stitch};
use crate::design::Finish;
use crate::notation::{Gaps, across};
use crate::plan::SizePlan;
use crate::story::{Block, Run, Section};
use crate::units::{Mm, Units};
use crate::words::Arg;

/// Age below which the cautions for small children are printed: cords are the longest, to seven years.
const YOUNG_MONTHS: u32 = 84;
/// Age of babies, who sleep in what they wear.
const BABY_MONTHS: u32 = 36;
/// Head circumferences that belong to these ages where no age is said: WHO Child Growth Standards, 97th percentile of
/// boys at 36 months (52.1 cm) reaches into adult sizes, so the medians at 7 years (about 53 cm, UK 1990 reference)
/// and 36 months (49.5 cm) stand for them.
const YOUNG_HEAD: Mm = Mm::from_cm(53.0);
const BABY_HEAD: Mm = Mm::from_cm(49.5);

impl Story<'_> {
    pub(super) fn finishing(&self) -> Section {
        let mut items = Vec::new();
        let first = self.plan.sizes.first();
        // An edge of slip stitch is a round of the plan already.
        let edged = first.and_then(|size| size.rounds.last()).is_some_and(|round| round.stitch == Stitch::SL_ST);
        let tail = match self.plan.design.units {
            Units::Cm => "20\u{a0}cm (8\u{a0}in)",
            Units::Inches => "8\u{a0}in (20\u{a0}cm)",
        };
        let tail = ("tail", Arg::Text(tail));
        items.push(match self.plan.design.finish.value {
            finish if finish != Finish::CloseFlat && first.is_some_and(SizePlan::draws_up) => {
                self.words.with("page-finish-draw-up", &[tail])
            }
            Finish::CloseFlat => {
                let halves: Vec<Option<u32>> = self.plan.sizes.iter().map(SizePlan::closed_flat).collect();
                let number = across(&halves, u32::to_string, Gaps::OPEN);
                let stitch = self.writer().short(Stitch::SC);
                let args = [("number", Arg::Text(&number)), ("stitch", Arg::Text(&stitch)), tail];
                self.words.with("page-finish-close-flat", &args)
            }
            Finish::SlipStitchEdge if !edged => self.words.with("page-finish-edge", &[tail]),
            Finish::SlipStitchEdge | Finish::FastenOff | Finish::StepDown => {
                // The other way to end is told in the same breath: whoever has cut and joined can't take it any more.
                let usual = self.words.with("page-finish-off", &[tail]);
                [Some(usual), self.invisible()].into_iter().flatten().collect::<Vec<_>>().join(" ")
            }
        });
        if first.is_some_and(|size| size.foundation == Foundation::Ring) {
            items.push(self.say("page-finish-ring"));
        }
        if first.is_some_and(|size| matches!(size.foundation, Foundation::ChainRound(_))) {
            items.push(self.say("page-finish-chain"));
        }
        items.push(self.say("page-finish-ends"));
        items.push(self.say(self.plan.design.kind.row().dried));
        items.extend(self.fold());
        let items = items.into_iter().map(|item| vec![Run::new(item)]).collect();
        self.section("finishing", "page-finishing", false, vec![Block::List { numbered: true, items }])
    }

    /// How the end of a hat is folded up, or the last part of a basket over the one before it, where its first round is
    /// worked for that.
    fn fold(&self) -> Option<String> {
        let last = self.plan.sizes.first().and_then(|size| size.parts.last());
        if let Some(part) = last.filter(|part| part.folded.is_some()) {
            let first = |size: &SizePlan| size.turned_up().map(|folded| folded.first);
            let first: Vec<Option<u32>> = self.plan.sizes.iter().map(first).collect();
            let round = across(&first, u32::to_string, Gaps::OPEN);
            let args = [("part", Arg::Text(&part.name)), ("round", Arg::Text(&round))];
            return Some(self.words.with("page-finish-fold-up", &args));
        }
        let part = self.plan.sizes.first().and_then(|size| self.plan.folded(size))?;
        Some(self.words.with("page-finish-fold", &[("part", Arg::Text(&part.name))]))
    }

    /// How the end is made invisible, where rounds are joined and the last one stays open.
    pub(super) fn invisible(&self) -> Option<String> {
        let size = self.plan.sizes.first().filter(|size| !size.draws_up())?;
        let joined = size.rounds.last()?.close == Close::Join;
        joined.then(|| self.say("page-finish-invisible"))
    }

    pub(super) fn cautions(&self) -> Section {
        let worn = self.plan.design.kind.row().worn;
        let mut keys = self.plan.design.kind.row().cautions.to_vec();
        if worn && self.any_younger(YOUNG_MONTHS, YOUNG_HEAD) {
            keys.push("page-care-cords");
        }
        if worn && self.any_younger(BABY_MONTHS, BABY_HEAD) {
            keys.extend(["page-care-parts", "page-care-sleep", "page-care-ends"]);
        }
        if self.plan.sizes.iter().any(|size| self.plan.brim(size).is_some()) {
            keys.push("page-care-sun");
        }
        for key in self.plan.design.own.materials.iter().flat_map(|material| material.kind.cautions()) {
            // What is said of a toy already names its small parts.
            let told = *key == "page-care-small" && keys.contains(&"page-care-toy");
            if !told && !keys.contains(key) {
                keys.push(key);
            }
        }
        if !keys.is_empty() {
            keys.push("page-care-rules");
        }
        let items: Vec<Vec<Run>> = keys.into_iter().map(|key| vec![Run::new(self.say(key))]).collect();
        let blocks = if items.is_empty() { Vec::new() } else { vec![Block::List { numbered: false, items }] };
        self.section("cautions", "page-cautions", false, blocks)
    }

    fn any_younger(&self, months: u32, head: Mm) -> bool {
        let sizes = &self.plan.design.sizes;
        sizes.iter().any(|size| match (size.age_months, size.head) {
            (Some((youngest, _)), _) => youngest < months,
            (None, Some(around)) => around < head,
            (None, None) => false,
        })
    }
}
