//! How far what is done once goes: all the way round, into what is left, into the ring or the chains that a piece starts
//! from.

use super::phrase::{Phrase, Reach};
use crate::craft::{Build, Foundation, Op, Round, Spot, Stitch};

/// One operation for the whole round, or for what is left of it, goes all the way round.
pub(super) fn go_around(mut phrases: Vec<Phrase>) -> Vec<Phrase> {
    if let [Phrase::Run { op, reach, .. }] = &mut phrases[..]
        && op.consumed > 0
    {
        *reach = Reach::Around;
    }
    phrases
}

/// Where the round below has chains among its stitches, what goes into every one goes into those too.
pub(super) fn into_chains_too(phrases: &mut [Phrase], below: &Round) {
    let chained = || below.ops.iter().flat_map(|op| op.made.runs()).any(|(stitch, _)| stitch == Stitch::CH);
    if let [Phrase::Run { op: Op { into: Spot::Stitch, consumed: 1, made, .. }, reach, .. }] = phrases
        && !made.runs().any(|(stitch, _)| matches!(stitch.row().build, Build::Post(_)))
        && chained()
    {
        *reach = match *reach {
            Reach::Around => Reach::AroundAll,
            Reach::Remaining => Reach::RemainingAll,
            other @ (Reach::Next
            | Reach::AroundAll
            | Reach::RemainingAll
            | Reach::Ring
            | Reach::Chain(_)
            | Reach::NextChains
            | Reach::EachChain
            | Reach::RestChains) => other,
        };
    }
}

/// A round worked evenly goes into what is left, where its turning chain already stands on the first place. Of stitches
/// worked together the words tell no place that could be counted twice.
pub(super) fn leave_first(phrases: &mut [Phrase]) {
    if let [Phrase::Run { op: Op { into: Spot::Stitch | Spot::Space, .. }, reach, .. }] = phrases
        && *reach == Reach::Around
    {
        *reach = Reach::Remaining;
    }
}

/// Stitches that use up nothing go into what the piece starts from.
pub(super) fn into_start(phrases: &mut [Phrase], foundation: Option<Foundation>) {
    let start = match foundation {
        Some(Foundation::Chain(chains)) => Reach::Chain(chains),
        Some(Foundation::Ring | Foundation::ChainRing(_) | Foundation::ChainRound(_)) | None => Reach::Ring,
    };
    for phrase in phrases {
        match phrase {
            Phrase::Run { op: Op { into: Spot::Stitch, consumed: 0, .. }, reach, .. } => *reach = start,
            Phrase::Repeat { body, .. } => into_start(body, foundation),
            Phrase::Foundation(_) | Phrase::ChainRound(_) | Phrase::Loops(_) | Phrase::Slips(..) => {}
            Phrase::TurningChain { .. }
            | Phrase::RestTogether(_)
            | Phrase::Rest { .. }
            | Phrase::Run { .. }
            | Phrase::Join(_) => {}
        }
    }
}

/// Stitches that use up nothing go into the chains of a ring one by one, the last of several kinds into all that are left;
/// so do all where the turning chain stands on the first.
pub(super) fn into_chains(phrases: &mut [Phrase], begun: bool) {
    let last = phrases.len().saturating_sub(1);
    for (at, phrase) in phrases.iter_mut().enumerate() {
        if let Phrase::Run { op: Op { into: Spot::Stitch, consumed: 0, .. }, reach, .. } = phrase {
            *reach = match (at == last, begun || last > 0) {
                (false, _) => Reach::NextChains,
                (true, true) => Reach::RestChains,
                (true, false) => Reach::EachChain,
            };
        }
    }
}
