//! The author's notes, beside the rounds they belong to.

use super::solve::Solver;
use crate::craft::Said;
use crate::design::{Note, NoteRound};

impl Solver<'_> {
    /// Puts every note on a round beside that round; tells of those whose round this size has not.
    pub(super) fn note(&mut self) {
        let design = self.design;
        for (index, part) in design.parts.iter().enumerate() {
            let Some((first, last)) = self.parts.get(index).map(|plan| (plan.first, plan.last)) else { continue };
            let count = last + 1 - first;
            let own = |note: &&Note| note.size.as_ref().is_none_or(|size| size.value == self.size.name);
            for note in part.notes.iter().filter(own) {
                let number = match note.round {
                    NoteRound::Part => continue,
                    NoteRound::Nth(number) => number,
                    NoteRound::Last => count,
                };
                let round = (1..=count).contains(&number).then(|| (first + number - 2) as usize);
                if let Some(round) = round.and_then(|index| self.rounds.get_mut(index)) {
                    round.said.get_or_insert_with(Said::default).after.push(note.words.value.clone());
                } else {
                    let message = format!(
                        "the part {} has {count} rounds in size {}, so the note for its round {number} is left out there",
                        part.name.value, self.size.name
                    );
                    let help = format!("write a number up to {count}, or `last` for its last round");
                    self.warn("note-beyond", note.words.place, message, &help);
                }
            }
        }
    }
}
