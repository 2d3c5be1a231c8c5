//! The count of a round as makers state it: stitches by kind, and spaces, whose chains are no stitches.

use super::{Below, Piece, Round, Stitch};

/// What a count counts.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Counted {
    /// Stitches of any kind.
    Stitches,
    /// Stitches of one kind, or chains one by one.
    Of(Stitch),
    /// Spaces of so many chains.
    Spaces(u32),
}

impl Round {
    /// Stitches of the round, the chains of its spaces not among them.
    pub fn stitches(&self) -> u32 {
        self.after.saturating_sub(self.number_of(Stitch::CH))
    }

    /// The count of the round. Where there are no chains it is one number; where there are, the stitches of each kind
    /// and the spaces of each length, in the order in which they first come.
    pub fn tallied(&self) -> Vec<(Counted, u32)> {
        let spaces = self.spaces();
        if spaces.is_empty() {
            return vec![(Counted::Stitches, self.after)];
        }
        let mut tallied: Vec<(Counted, u32)> = Vec::new();
        let stitches = self.runs().filter(|(stitch, _)| *stitch != Stitch::CH);
        let stitches = stitches.map(|(stitch, count)| (Counted::Of(stitch), count));
        for (what, count) in stitches.chain(spaces.into_iter().map(|chains| (Counted::Spaces(chains), 1))) {
            match tallied.iter_mut().find(|(known, _)| *known == what) {
                Some((_, sum)) => *sum += count,
                None => tallied.push((what, count)),
            }
        }
        tallied
    }

    /// True where the round has just so many of this.
    pub fn has(&self, what: Counted, count: u32) -> bool {
        let own = match what {
            Counted::Stitches => self.stitches(),
            Counted::Of(stitch) => self.number_of(stitch),
            Counted::Spaces(chains) => self.spaces().into_iter().filter(|own| *own == chains).count() as u32,
        };
        own == count
    }

    /// Stitches that count, one run after another.
    fn runs(&self) -> impl Iterator<Item = (Stitch, u32)> + '_ {
        let runs = self.ops.iter().flat_map(|op| op.made.runs());
        runs.map(|(stitch, count)| (stitch, count * u32::from(stitch.row().counts))).filter(|(_, count)| *count > 0)
    }

    fn number_of(&self, stitch: Stitch) -> u32 {
        self.runs().filter(|(own, _)| *own == stitch).map(|(_, count)| count).sum()
    }

    /// The chains of each space, in order: chains that follow one another are one space.
    fn spaces(&self) -> Vec<u32> {
        let mut spaces = Vec::new();
        let mut open = false;
        for (stitch, count) in self.runs() {
            match spaces.last_mut() {
                Some(chains) if open && stitch == Stitch::CH => *chains += count,
                _ if stitch == Stitch::CH => spaces.push(count),
                _ => {}
            }
            open = stitch == Stitch::CH;
        }
        spaces
    }
}

impl Piece<'_> {
    /// Stitches by which a round of it grows, the chains of spaces left out of both counts.
    pub fn change(self, round: &Round) -> i64 {
        let before = match self.below(round) {
            Below::Round(below) => below.stitches(),
            Below::Foundation(_) => round.before,
        };
        i64::from(round.stitches()) - i64::from(before)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::common;
    use crate::craft::{Foundation, Loops, Made, Op, Spot};

    fn times(count: usize, ops: &[Op]) -> Vec<Op> {
        ops.iter().cycle().take(count * ops.len()).cloned().collect()
    }

    #[test]
    fn a_round_without_chains_is_one_number() {
        let ops = [times(6, &[Op::plain(Stitch::SC)]), times(6, &[Op::plain(Stitch::DC)])].concat();
        let round = common::round(4, ops);
        assert_eq!((round.tallied(), round.stitches()), (vec![(Counted::Stitches, 12)], 12));
        assert!(round.has(Counted::Of(Stitch::SC), 6) && !round.has(Counted::Of(Stitch::SC), 12));
    }

    #[test]
    fn chains_are_spaces_and_no_stitches() {
        let mesh = common::round(2, times(12, &[Op::plain(Stitch::DC), Op::chains(2)]));
        assert_eq!(mesh.after, 36);
        assert_eq!(mesh.tallied(), [(Counted::Of(Stitch::DC), 12), (Counted::Spaces(2), 12)]);
        // Chains in a group, chains that follow one another, and a picot, which counts for nothing.
        let made = Made::Mixed([(Stitch::DC, 2), (Stitch::CH, 1), (Stitch::DC, 2)].into());
        let group = Op { into: Spot::Stitch, consumed: 1, made, loops: Loops::Both };
        let lace = common::round(3, times(6, &[Op::plain(Stitch::SC), Op::chains(2), Op::chains(3), group]));
        let expected = [
            (Counted::Of(Stitch::SC), 6),
            (Counted::Of(Stitch::DC), 24),
            (Counted::Spaces(5), 6),
            (Counted::Spaces(1), 6),
        ];
        assert_eq!((lace.tallied(), lace.stitches()), (expected.to_vec(), 30));
        assert!(lace.has(Counted::Of(Stitch::CH), 36) && lace.has(Counted::Stitches, 30));
    }

    #[test]
    fn a_round_grows_by_stitches_and_not_by_chains() {
        let rounds = [
            common::round(1, times(12, &[Op::into_ring(Stitch::DC)])),
            common::round(2, times(12, &[Op::plain(Stitch::DC), Op::chains(2)])),
            common::round(3, times(12, &[Op::increase(Stitch::SC, 2), Op::skip(2)])),
        ];
        let piece = Piece { foundation: Foundation::Ring, rounds: &rounds };
        let changes: Vec<i64> = rounds.iter().map(|round| piece.change(round)).collect();
        assert_eq!(changes, [12, 0, 12]);
    }
}
