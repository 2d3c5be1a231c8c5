//! What the author of a round wrote of it, kept beside what it means.

use super::{Counted, Round, Terms};
use std::ops::Range;

/// What an author said of a round.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Said {
    /// The author's own words; nothing where they are to be told anew.
    pub own: Option<Own>,
    /// Remarks within those words, such as `place a marker`: whoever tells the round anew sets them apart.
    pub asides: Vec<String>,
    /// Remarks after the count.
    pub after: Vec<String>,
}

/// An author's own words, in English.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Own {
    /// The terms they are in.
    pub terms: Terms,
    /// First and last number of the rounds that they tell together.
    pub rounds: (u32, u32),
    /// The words of one round, without number and count, on one line.
    pub words: String,
    /// True where they name the yarn.
    pub yarn: bool,
    /// The count as the author broke it down, where that is true; empty where it is but one number or not there.
    pub count: Vec<(Counted, u32)>,
    /// The same in the author's words: `12 cl, 12 ch-2 sps`.
    pub counted: String,
    /// How the operations of the round are gathered.
    pub groups: Vec<Group>,
}

/// Operations that an author wrote as one.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Group {
    /// Which of the round's operations.
    pub ops: Range<usize>,
    /// For a repeat, what is done each time; empty for a step.
    pub passes: Vec<Vec<Group>>,
}

impl Said {
    /// The same without the words: the remarks, where there are any, which nothing else tells.
    pub fn told_anew(&self) -> Option<Self> {
        let remarks = self.asides.iter().chain(&self.after).next().is_some();
        remarks.then(|| Self { own: None, ..self.clone() })
    }
}

impl Round {
    /// The author's own words of it, where there are such.
    pub fn own(&self) -> Option<&Own> {
        self.said.as_ref().and_then(|said| said.own.as_ref())
    }
}

impl Group {
    /// The same groups for operations of which each became so many others; `from[i]` is where operation `i` now stands.
    pub fn moved(groups: &[Self], from: &[usize]) -> Vec<Self> {
        let at = |index: usize| from.get(index).or(from.last()).copied().unwrap_or(index);
        let moved = |group: &Self| Self {
            ops: at(group.ops.start)..at(group.ops.end),
            passes: group.passes.iter().map(|pass| Self::moved(pass, from)).collect(),
        };
        groups.iter().map(moved).collect()
    }
}
