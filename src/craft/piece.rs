//! A piece of work as it is made: what it starts from, and round on round.

use crate::craft::{Below, Foundation, Round};

/// The rounds of one size, from the first.
#[derive(Clone, Copy, Debug)]
pub struct Piece<'a> {
    /// What the first round is worked into.
    pub foundation: Foundation,
    /// The rounds in working order, numbered from 1.
    pub rounds: &'a [Round],
}

impl<'a> Piece<'a> {
    /// What a round of it is worked into.
    pub fn below(self, round: &Round) -> Below<'a> {
        let before = (round.number as usize).checked_sub(2).and_then(|before| self.rounds.get(before));
        before.map_or(Below::Foundation(self.foundation), Below::Round)
    }
}
