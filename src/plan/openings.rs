//! Openings: in an even round chains over stitches that are left out, as evenly round it as whole stitches allow; the
//! round after it is worked into stitches and chains.

use super::recount::{Rules, onto};
use super::solve::Solver;
use crate::craft::{Made, Round, Spot, Stitch, Terms, abbreviation};
use crate::design::{Body, Opening, OpeningWidth, Part};
use crate::notation::{Source, read};
use crate::report::{Report, Severity};

impl Solver<'_> {
    /// Opens the rounds that are to have openings; nothing where one can't be.
    pub(super) fn open(&mut self) -> Option<()> {
        let design = self.design;
        for (index, part) in design.parts.iter().enumerate() {
            let Body::Profile(profile) = &part.body else { continue };
            for opening in &profile.openings {
                self.opened(index, part, opening)?;
            }
        }
        Some(())
    }

    fn opened(&mut self, index: usize, part: &Part, opening: &Opening) -> Option<()> {
        let plan = self.parts.get(index)?;
        let (first, count) = (plan.first, plan.last + 1 - plan.first);
        let (name, size, wanted) = (&part.name.value, &self.size.name, opening.round);
        // The chains are worked into in the same part.
        if wanted + 1 > count || first + wanted < 3 {
            let message = format!(
                "round {wanted} of the {name} can't have openings in size {size}, which has {count} rounds there"
            );
            let help = match first {
                1 => "openings need a round below them and one above them in their part".to_owned(),
                _ => format!(
                    "one round has to follow in the part: {} is the last that can",
                    count.saturating_sub(1).max(1)
                ),
            };
            return self.refuse("openings", opening.place, message, &help);
        }
        let at = (first + wanted - 2) as usize;
        let (below, own, above) =
            (self.rounds.get(at.checked_sub(1)?)?, self.rounds.get(at)?, self.rounds.get(at + 1)?);
        if !(is_plain(own) && is_plain(above)) {
            let message =
                format!("round {wanted} of the {name} or the one after it is shaped or patterned in size {size}");
            let help = "openings stand in an even round of plain stitches with such a round after it: choose another round, or \
                        a straight part";
            return self.refuse("openings", opening.place, message, help);
        }
        let width = match opening.width {
            OpeningWidth::Stitches(stitches) => stitches,
            OpeningWidth::Length(length) => (length / self.gauge_at(index).width).round().max(1.0) as u32,
        };
        let chains = width.checked_mul(opening.number).filter(|chains| chains + opening.number <= own.before);
        let Some(chains) = chains else {
            let message = format!(
                "{} openings of {width} stitches don't fit into the {} stitches of round {} of size {size}",
                opening.number, own.before, own.number
            );
            return self.refuse(
                "openings",
                opening.place,
                message,
                "make them narrower or fewer; a stitch stands between two",
            );
        };
        let (stitch, number, plain) = (own.stitch, opening.number, own.before - chains);
        let text = words(stitch, (number, width), plain);
        let (below, begins) = (below.clone(), [own.clone(), above.clone()]);
        let lines = [text, format!("{} in each st and ch around", abbreviation(stitch, Terms::Us))];
        let mut standing = below;
        for (offset, (line, as_before)) in lines.iter().zip(begins).enumerate() {
            let round = self.worked(line, &standing, stitch)?;
            let round = Round {
                number: as_before.number,
                begin: as_before.begin,
                close: as_before.close,
                part: as_before.part,
                colour: as_before.colour,
                target: as_before.target,
                place: None,
                said: None,
                ..round
            };
            standing = round.clone();
            *self.rounds.get_mut(at + offset)? = round;
        }
        Some(())
    }

    /// A line worked onto the round below it.
    fn worked(&mut self, line: &str, below: &Round, stitch: Stitch) -> Option<Round> {
        let rules = Rules { work: self.design.work, main: stitch, terms: Terms::Us, height: None };
        let mut own = Report::new();
        let written = read(&[Source { text: line, place: None }], rules.terms, rules.main, below.number + 1, &mut own);
        let round = onto(&written, below, &rules, &mut own).and_then(|mut rounds| rounds.pop());
        own.diagnostics.into_iter().filter(|one| one.severity == Severity::Error).for_each(|one| self.report.add(one));
        round
    }
}

/// True where every stitch of an even round is plain, of one kind and into both loops.
fn is_plain(round: &Round) -> bool {
    let plain =
        |op: &crate::craft::Op| op.into == Spot::Stitch && op.consumed == 1 && op.made == Made::Same(round.stitch, 1);
    round.before == round.after && round.before > 0 && round.ops.iter().all(plain)
}

/// The round in words: so many openings so wide among so many plain stitches, the first and the last gap half of one.
fn words(stitch: Stitch, (number, width): (u32, u32), plain: u32) -> String {
    let short = abbreviation(stitch, Terms::Us);
    let gap = |index: u32| (index + 1) * plain / number - index * plain / number;
    let lead = gap(0).div_ceil(2);
    let mut steps = vec![format!("{short} in next {lead} sts")];
    for index in 0..number {
        let own = if index + 1 < number { gap(index + 1) } else { gap(0) - lead };
        steps.push(format!("ch {width}, sk next {width} sts"));
        steps.push(format!("{short} in next {own} sts"));
    }
    steps.retain(|step| !step.contains("next 0 sts"));
    steps.join(", ")
}
