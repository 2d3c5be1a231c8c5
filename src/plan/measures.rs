//! What is measured on a piece by its parts: depth, brim, folded rim, and when a closed piece is filled.

use super::solve::Solver;
use super::{Folded, PartPlan, Plan, SizePlan};
use crate::craft::{Close, Foundation, Loops, Made};
use crate::design::{Body, Design, Finish, Profile};
use crate::report::{Diagnostic, Report};
use crate::units::{Mm, tidy};

/// Share of a head's circumference from the middle of the crown to the brow (common practice: a third).
pub const TO_BROW: f64 = 1.0 / 3.0;
/// The same to the bottom of the ears (common practice: four tenths).
pub const OVER_EARS: f64 = 0.4;
/// Depths outside these shares of the head are told: size guides go from three tenths, a shallow cap, to 0.44, and a
/// hat with a brim sits higher (common practice; the guides disagree by 2 to 3 cm).
const LEAST_DEPTH: f64 = 0.3;
const LEAST_DEPTH_BRIMMED: f64 = 0.25;
const MOST_DEPTH: f64 = 0.44;

/// A piece is filled while its opening still takes a hand or two fingers: before it is under this share of its width
/// (common practice).
const FILLED_AT: f64 = 0.45;
/// A piece whose last round has less than this share of its widest one's stitches is drawn together.
const DRAWN_UP: f64 = 1.0 / 3.0;
/// A hat that begins on a chain is worked from its edge up where it ends with less than this share of its stitches.
const NARROWED: f64 = 0.9;
/// Most chains of a ring that the middle of a crown is worked round.
const SMALL_RING: u32 = 12;

impl Plan {
    /// The last part of a hat where it is a brim: what flares earlier is its shoulder, and shades nobody.
    fn brim_part<'a>(&self, size: &'a SizePlan) -> Option<&'a PartPlan> {
        brim_part(&self.design, size)
    }

    /// True where the piece is worked from its foot up, and so is drawn turned over: by its kind, or a hat that begins at its
    /// edge on a chain and narrows to its top.
    pub fn from_the_foot(&self) -> bool {
        let row = self.design.kind.row();
        let narrows = |size: &SizePlan| {
            let ends = size.rounds.first().zip(size.rounds.last());
            let chained = matches!(size.foundation, Foundation::ChainRound(_));
            chained && ends.is_some_and(|(first, last)| f64::from(last.after) < NARROWED * f64::from(first.after))
        };
        row.from_the_foot || (row.worn && !self.sizes.is_empty() && self.sizes.iter().all(narrows))
    }

    /// Length of the brim along the fabric; nothing without one.
    pub fn brim(&self, size: &SizePlan) -> Option<Mm> {
        self.brim_part(size).map(|part| part.length)
    }

    /// Depth of a hat: from the middle of the crown along the fabric to the edge, or to where a brim begins or the end is
    /// folded up. Nothing for
    /// what isn't worn or has no crown.
    pub fn depth(&self, size: &SizePlan) -> Option<Mm> {
        depth(&self.design, size)
    }

    /// Number of the round at the edge of a hat, before any brim; nothing for what isn't worn or has no crown.
    pub fn edge(&self, size: &SizePlan) -> Option<u32> {
        self.depth(size)?;
        let brim = usize::from(self.brim_part(size).is_some());
        let last = size.parts.get(size.parts.len().checked_sub(brim + 1)?).map(|part| part.last);
        // A hat that is folded up ends where it folds.
        size.turned_up().map_or(last, |folded| Some(folded.first.saturating_sub(1).max(1)))
    }

    /// The part that folds down over the one before it: the last of a basket, where its first round is worked into the
    /// front loops.
    pub fn folded<'a>(&self, size: &'a SizePlan) -> Option<&'a PartPlan> {
        let [_, .., part] = size.parts.as_slice() else { return None };
        let first = size.rounds.get((part.first as usize).checked_sub(1)?)?;
        (self.design.kind.row().folds_down && first.loops() == Loops::Front).then_some(part)
    }

    /// Number of the round before which a closed piece is filled; nothing for what stays open or isn't filled.
    pub fn filled_before(&self, size: &SizePlan) -> Option<u32> {
        let closes = self.design.kind.row().stuffed && size.draws_up();
        let widest = size.rounds.iter().map(|round| round.after).max().filter(|_| closes)?;
        let from = size.rounds.iter().rposition(|round| round.after == widest)? + 1;
        let narrowing = size.rounds.get(from..)?;
        let narrow = |after: u32| f64::from(after) <= FILLED_AT * f64::from(widest);
        let first = narrowing.iter().position(|round| narrow(round.after))?;
        // The last round closes what is left: filling comes before the one before it at the latest.
        let last = narrowing.len().saturating_sub(2);
        narrowing.get(first.min(last)).map(|round| round.number)
    }
}

impl Solver<'_> {
    /// What is folded up of a part whose first round has this number, and whose rounds are there: the number of rounds
    /// that comes nearest to the length asked for, one at least.
    pub(super) fn folded(&self, profile: &Profile, first: u32) -> Option<Folded> {
        let wanted = profile.folded.as_ref()?.get(self.index)?;
        let own = self.rounds.get(first as usize - 1..)?;
        let (mut length, mut from) = (Mm::ZERO, self.rounds.len() as u32 + 1);
        for round in own.iter().rev() {
            let height = self.gauge_of(round).height;
            if length > Mm::ZERO && (length + height - *wanted).abs() > (length - *wanted).abs() {
                break;
            }
            (length, from) = (length + height, round.number);
        }
        Some(Folded { first: from, length })
    }
}

impl SizePlan {
    /// The end that is folded up, where it has one.
    pub fn turned_up(&self) -> Option<Folded> {
        self.parts.last().and_then(|part| part.folded)
    }

    /// True where its first round begins in shorter stitches, so that a spiral rises without a step.
    pub fn rises(&self) -> bool {
        let first = self.rounds.first().filter(|first| first.close == Close::Spiral && first.target.is_some());
        first.is_some_and(|first| first.ops.first().is_some_and(|op| op.made != Made::Same(first.stitch, 1)))
    }

    /// Stitches on each side of a last round that is closed flat; nothing where it isn't.
    pub fn closed_flat(&self) -> Option<u32> {
        let last = self.rounds.last().filter(|_| self.finish == Finish::CloseFlat)?;
        Some(last.after / 2)
    }

    /// True where the last stitches are drawn together into a closed end.
    pub fn draws_up(&self) -> bool {
        let widest = self.rounds.iter().map(|round| round.after).max().unwrap_or(0);
        self.rounds.last().is_some_and(|last| f64::from(last.after) < DRAWN_UP * f64::from(widest))
    }
}

fn brim_part<'a>(design: &Design, size: &'a SizePlan) -> Option<&'a PartPlan> {
    let brim = design.parts.last().is_some_and(|part| match &part.body {
        Body::Profile(profile) => profile.shape.form().brim,
        Body::Written(_) => false,
    });
    size.parts.last().filter(|_| brim && design.kind.row().worn)
}

fn depth(design: &Design, size: &SizePlan) -> Option<Mm> {
    // A ring of many chains goes round the head: what is measured from it is no depth.
    let middle = match size.foundation {
        Foundation::Ring => true,
        Foundation::ChainRing(chains) => chains <= SMALL_RING,
        Foundation::ChainRound(_) | Foundation::Chain(_) => false,
    };
    let crowned = design.kind.row().worn && middle;
    let brim = usize::from(brim_part(design, size).is_some());
    let own = size.parts.get(..size.parts.len().checked_sub(brim)?)?;
    let folded = size.turned_up().map_or(Mm::ZERO, |folded| folded.length);
    let length = own.iter().fold(Mm::ZERO, |sum, part| sum + part.length) - folded;
    (crowned && length > Mm::ZERO).then_some(length)
}

/// Warns of hats that are far shallower or deeper than their heads ask for.
pub(super) fn depths(design: &Design, sizes: &mut [SizePlan], report: &mut Report) {
    for (index, size) in sizes.iter_mut().enumerate() {
        let Some((depth, head)) = depth(design, size).zip(size.head) else { continue };
        let least = if brim_part(design, size).is_some() { LEAST_DEPTH_BRIMMED } else { LEAST_DEPTH };
        let share = depth / head;
        if (least..=MOST_DEPTH).contains(&share) {
            continue;
        }
        let cm = |length: Mm| tidy(length.cm(), 1);
        let message = format!(
            "size {} comes out {} cm deep from the middle of the crown to the edge; a head of {} cm asks for {} cm to \
             the brow and {} cm over the ears",
            size.name,
            cm(depth),
            cm(head),
            cm(head * TO_BROW),
            cm(head * OVER_EARS)
        );
        size.warnings.push(message.clone());
        let help = if share < least {
            "make the side deeper, unless it is meant to sit on top of the head"
        } else {
            "make the side shallower, unless it is meant to be folded up or to hang loose"
        };
        let place = design.sizes.get(index).and_then(|size| size.place);
        report.add(Diagnostic::warning("depth-unusual", message).help(help).at(place));
    }
}
