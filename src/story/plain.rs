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
                items.push(vec![Run::new(told.sentences.join(" "))]);
            }
            push_list(&mut blocks, &mut items);
        }
        self.section("plain", "page-plain-rounds", true, blocks)
    }
}

fn push_list(blocks: &mut Vec<Block>, items: &mut Vec<Vec<Run>>) {
    if !items.is_empty() {
        blocks.push(Block::List { numbered: false, items: std::mem::take(items) });
    }
}
