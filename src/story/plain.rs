//! The rounds once more, in plain words and whole sentences.

use super::Story;
use crate::notation::plain;
use crate::story::{Block, Run, Section};
use crate::words::{Arg, capital};

impl Story<'_> {
    /// Every size's rounds in sentences, where they are asked for.
    pub(super) fn plain_rounds(&self) -> Section {
        let mut blocks = Vec::new();
        let sizes = self.plan.sizes.iter().filter(|_| self.telling.plain_words);
        for size in sizes {
            let mut part = usize::MAX;
            let mut colour = None;
            let mut items: Vec<Vec<Run>> = Vec::new();
            for told in plain::rounds(size.piece(), &self.words, self.plan.design.terms) {
                if told.part != part {
                    push_list(&mut blocks, &mut items);
                    part = told.part;
                    let name = size.parts.get(part).map_or(String::new(), |part| capital(&part.name));
                    blocks.push(Block::Heading(match self.plan.sizes.len() {
                        1 => name,
                        _ => self
                            .words
                            .with("page-part-size", &[("part", Arg::Text(&name)), ("size", Arg::Text(&size.name))]),
                    }));
                }
                let mut sentences = told.sentences;
                // Before the round, after its number.
                let filled =
                    self.plan.filled_before(size).is_some_and(|round| (told.first..=told.last).contains(&round));
                sentences.splice(1..1, filled.then(|| self.say("say-stuff")));
                let change = self.colour_change(colour, told.colour, (told.first, told.last));
                // After the number of the round.
                sentences.splice(1..1, change);
                colour = told.colour.or(colour);
                items.push(vec![Run::new(sentences.join(" "))]);
            }
            let step_down = plain::step_down(&size.step_down, &self.words, self.plan.design.terms);
            let closed =
                size.closed_flat().map(|halves| plain::close_flat(halves, &self.words, self.plan.design.terms));
            items.extend(step_down.into_iter().chain(closed).map(|told| vec![Run::new(told)]));
            push_list(&mut blocks, &mut items);
        }
        self.section("plain", "page-plain-rounds", true, blocks)
    }

    /// The sentence that takes up another colour for these rounds; nothing where the yarn stays or there is but one.
    fn colour_change(&self, last: Option<usize>, next: Option<usize>, (from, to): (u32, u32)) -> Option<String> {
        let colours = &self.plan.design.yarn.colours;
        let colour = next.filter(|next| colours.len() > 1 && last != Some(*next))?;
        let key = match (last, from == to) {
            (None, _) => "say-colour-first",
            (Some(_), true) => "say-colour",
            // Of rounds told together, only the first begins with a change.
            (Some(_), false) => "say-colour-before",
        };
        let (name, number) = (&colours.get(colour)?.name, from.to_string());
        Some(self.words.with(key, &[("colour", Arg::Text(name)), ("number", Arg::Text(&number))]))
    }
}

fn push_list(blocks: &mut Vec<Block>, items: &mut Vec<Vec<Run>>) {
    if !items.is_empty() {
        blocks.push(Block::List { numbered: false, items: std::mem::take(items) });
    }
}
