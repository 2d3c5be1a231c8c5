//! What stands in a round: its chain spaces, its stitches by kind, how its operations are gathered.

use crate::craft::{Group, Op, Stitch};

/// The chain spaces of a round: position of the first chain among its stitches, and chains.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub(super) struct Spaces(Vec<(u32, u32)>);

impl Spaces {
    pub(super) fn of(ops: &[Op]) -> Self {
        let mut spaces: Vec<(u32, u32)> = Vec::new();
        let mut at = 0_u32;
        for (stitch, count) in ops.iter().flat_map(|op| op.made.runs()) {
            let count = count * u32::from(stitch.row().counts);
            match spaces.last_mut() {
                Some((start, chains)) if stitch == Stitch::CH && *start + *chains == at => *chains += count,
                _ if stitch == Stitch::CH => spaces.push((at, count)),
                _ => {}
            }
            at += count;
        }
        Self(spaces)
    }

    /// The space that a position is in.
    pub(super) fn around(&self, at: u32) -> Option<(u32, u32)> {
        let index = self.0.partition_point(|(start, _)| *start <= at).checked_sub(1)?;
        self.0.get(index).copied().filter(|(start, chains)| at < start + chains)
    }

    /// How many there are.
    pub(super) fn number(&self) -> u32 {
        u32::try_from(self.0.len()).unwrap_or(u32::MAX)
    }

    /// The same of a round that begins `by` stitches further on.
    pub(super) fn rotated(&self, by: u32, stitches: u32) -> Self {
        let mut spaces = Vec::with_capacity(self.0.len() + 1);
        for &(start, chains) in &self.0 {
            // What is left of a space that the new beginning falls into.
            let before = by.saturating_sub(start).min(chains);
            if before < chains {
                spaces.push(((start + before + stitches).saturating_sub(by) % stitches.max(1), chains - before));
            }
            if before > 0 && start < by {
                spaces.push(((start + stitches).saturating_sub(by), before));
            }
        }
        spaces.sort_unstable();
        Self(spaces)
    }

    /// The first space at or after a position.
    pub(super) fn after(&self, at: u32) -> Option<(u32, u32)> {
        let index = self.0.partition_point(|(start, _)| *start < at);
        self.0.get(index).copied()
    }
}

/// The stitches that operations make, one by one.
pub(super) fn kinds(ops: &[Op]) -> Vec<Stitch> {
    let runs = ops.iter().flat_map(|op| op.made.runs());
    runs.flat_map(|(stitch, count)| std::iter::repeat_n(stitch, count as usize * usize::from(stitch.row().counts)))
        .collect()
}

/// True where the groups follow one another without a gap from the first of these operations to the last.
pub(super) fn covers(groups: &[Group], ops: std::ops::Range<usize>) -> bool {
    let mut at = ops.start;
    let follow = groups.iter().all(|group| {
        let follows = group.ops.start == at && group.ops.end > at;
        at = group.ops.end;
        let mut within = group.ops.start;
        let passes = group.passes.iter().all(|pass| {
            let start = within;
            within = pass.last().map_or(start, |last| last.ops.end);
            covers(pass, start..within)
        });
        follows && passes && (group.passes.is_empty() || within == group.ops.end)
    });
    follow && at == ops.end
}
