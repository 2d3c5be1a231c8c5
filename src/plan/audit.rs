//! The independent recount: adds a size up anew from its operations, trusting none of its figures.

use super::SizePlan;
use crate::craft::{Made, Spot};

/// Checks that a size adds up.
///
/// # Errors
/// The first thing that doesn't: rounds not numbered 1, 2, 3 …; a round that doesn't use up exactly the stitches of
/// the round before; one that makes another number than it states; an operation that makes something of nothing but
/// in the first round or as chains, or works fewer than two together; parts that leave a gap or overlap.
pub fn audit(plan: &SizePlan) -> Result<(), String> {
    let mut standing = 0_u32;
    for (index, round) in plan.rounds.iter().enumerate() {
        let number = round.number;
        if number as usize != index + 1 {
            return Err(format!("round {} is numbered {number}", index + 1));
        }
        if round.before != standing {
            return Err(format!("round {number} starts from {} stitches, there are {standing}", round.before));
        }
        let (mut used, mut made) = (0_u32, 0_u32);
        for op in &round.ops {
            used += op.consumed;
            let counted: u32 = op.made.runs().map(|(stitch, count)| count * u32::from(stitch.row().counts)).sum();
            made += counted;
            let odd = match op.into {
                Spot::Stitch => op.consumed == 0 && index > 0 || op.consumed > 1,
                Spot::Together => op.consumed < 2 || counted == 0,
                Spot::Crossed => op.consumed != 2 || counted != 2,
                Spot::Skip => op.consumed == 0 || op.made != Made::Nothing,
                Spot::Air => op.consumed != 0,
                Spot::Space => op.consumed == 0 && index > 0,
            };
            if odd {
                return Err(format!("round {number} holds an operation that can't be worked: {op:?}"));
            }
        }
        if used != standing {
            return Err(format!("round {number} uses up {used} of {standing} stitches"));
        }
        if made != round.after {
            return Err(format!("round {number} makes {made} stitches and states {}", round.after));
        }
        standing = made;
    }
    parts(plan)
}

fn parts(plan: &SizePlan) -> Result<(), String> {
    let mut next = 1_u32;
    for (index, part) in plan.parts.iter().enumerate() {
        if part.first != next || part.last < part.first {
            return Err(format!("part {} covers rounds {} to {}, not from {next}", part.name, part.first, part.last));
        }
        let own = plan.rounds.iter().filter(|round| (part.first..=part.last).contains(&round.number));
        if own.into_iter().any(|round| round.part != index) {
            return Err(format!("a round of part {} says it belongs to another", part.name));
        }
        next = part.last + 1;
    }
    if next as usize == plan.rounds.len() + 1 {
        Ok(())
    } else {
        Err(format!("the parts cover {} of {} rounds", next - 1, plan.rounds.len()))
    }
}
