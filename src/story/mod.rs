//! What a pattern says, section by section. Booklet and plain text are both made of this, so that neither tells less.

mod block;
mod closing;
pub mod listing;
mod materials;
mod rounds;
mod rowtable;
mod sizes;
mod sources;
mod telling;
mod working;

use std::cell::OnceCell;
use std::collections::BTreeSet;
use std::sync::Arc;

use crate::craft::{Stitch, Terms};
use crate::drawing::Drawing;
use crate::notation::write::Writer;
use crate::plan::Plan;
use crate::words::{Arg, Words};

use crate::page::{Options, Pictures};

pub use block::*;
pub use rowtable::*;
pub use sources::source_words;

/// What the sections are made from.
pub struct Story<'a> {
    /// The plan.
    pub plan: &'a Plan,
    /// Its pictures.
    pub pictures: &'a Pictures,
    /// How it is to be printed.
    pub options: &'a Options,
    /// The words of its language.
    pub words: &'a Words,
    /// The written rounds: one table for all sizes, or one a size. Written when they are first asked for; the facts
    /// alone do without.
    tables: OnceCell<Vec<RowTable>>,
    /// The stitches that the plan makes.
    stitches: OnceCell<Vec<Stitch>>,
}

impl<'a> Story<'a> {
    /// Gathers what the sections are made from.
    pub fn new(plan: &'a Plan, pictures: &'a Pictures, options: &'a Options, words: &'a Words) -> Self {
        Self { plan, pictures, options, words, tables: OnceCell::new(), stitches: OnceCell::new() }
    }

    fn tables(&self) -> &[RowTable] {
        self.tables.get_or_init(|| rounds::round_tables(self.plan, self.pictures, self.options))
    }

    /// Every stitch that the plan makes, in the table's order.
    fn stitches(&self) -> &[Stitch] {
        self.stitches.get_or_init(|| {
            let rounds = self.plan.sizes.iter().flat_map(|size| &size.rounds);
            let mut made = BTreeSet::new();
            for op in rounds.flat_map(|round| &round.ops) {
                made.extend(op.made.runs().map(|(stitch, _)| stitch));
            }
            Stitch::all().filter(|stitch| made.contains(stitch)).collect()
        })
    }

    /// The sections in reading order; those with nothing to say are left out.
    pub fn sections(&self) -> Vec<Section> {
        let sections = [
            self.need(),
            self.swatch(),
            self.sizes(),
            self.working(),
            self.abbreviations(),
            self.key(),
            self.charts(),
            self.rounds(),
            self.plain_rounds(),
            self.finishing(),
            self.cautions(),
        ];
        sections.into_iter().filter(|section| !section.blocks.is_empty()).collect()
    }

    /// The facts of the cover: a name and what is to be said of it.
    pub fn facts(&self) -> Vec<(String, String)> {
        let design = &self.plan.design;
        let mut facts = Vec::new();
        if self.plan.sizes.len() > 1 || design.sizes.iter().any(|size| size.head.is_some()) {
            facts.push((self.say("page-sizes"), self.size_names()));
        }
        let level = self.say(&format!("page-level-{}", self.level()));
        facts.push((self.say("page-level"), level));
        facts.extend(self.yarn_fact().map(|yarn| (self.say("page-yarn"), yarn)));
        facts.extend(self.hook_fact().map(|hook| (self.say("page-hook"), hook)));
        facts.extend(self.gauge().map(|gauge| (self.say("page-swatch"), gauge)));
        facts
    }

    /// Names of the sizes in a row; of many the first and the last.
    pub fn size_names(&self) -> String {
        let names: Vec<&str> = self.plan.sizes.iter().map(|size| size.name.as_str()).collect();
        match names.as_slice() {
            [first, .., last] if names.len() > 8 => format!("{first} – {last} ({})", names.len()),
            names => names.join(" · "),
        }
    }

    fn key(&self) -> Section {
        let figure = |drawing: &Arc<Drawing>| Figure {
            drawing: drawing.clone(),
            title: String::new(),
            caption: String::new(),
            key: None,
        };
        self.section("key", "page-key", true, self.pictures.key.iter().map(figure).map(Block::Figure).collect())
    }

    fn charts(&self) -> Section {
        let mut figures = self.figures(&self.pictures.charts);
        for (figure, key) in figures.iter_mut().zip(&self.pictures.keys) {
            figure.key = Some(key.clone());
        }
        self.section("chart", "page-chart", true, figures.into_iter().map(Block::Figure).collect())
    }

    /// The pictures as figures; those that show one size of several are called after it.
    fn figures(&self, drawings: &[(Arc<Drawing>, String)]) -> Vec<Figure> {
        let sizes = &self.plan.sizes;
        let one_each = sizes.len() > 1 && drawings.len() == sizes.len();
        let title = |index: usize| match sizes.get(index).filter(|_| one_each) {
            Some(size) => self.words.with("page-of-size", &[("size", Arg::Text(&size.name))]),
            None => String::new(),
        };
        let figure = |(index, (drawing, caption)): (usize, &(Arc<Drawing>, String))| Figure {
            drawing: drawing.clone(),
            title: title(index),
            caption: caption.clone(),
            key: None,
        };
        drawings.iter().enumerate().map(figure).collect()
    }

    fn section(&self, id: &'static str, title: &str, wide: bool, blocks: Vec<Block>) -> Section {
        Section { id, title: self.say(title), wide, blocks }
    }

    fn say(&self, key: &str) -> String {
        self.words.with(key, &[self.terms()])
    }

    /// The set of terms, for messages that depend on it.
    fn terms(&self) -> (&'static str, Arg<'static>) {
        let terms = match self.plan.design.terms {
            Terms::Us => "US",
            Terms::Uk => "UK",
        };
        ("terms", Arg::Text(terms))
    }

    fn writer(&self) -> Writer<'a> {
        Writer { words: self.words, terms: self.plan.design.terms }
    }

    /// The project level by the Craft Yarn Council's four definitions (2018): 1 basic to 4 complex.
    fn level(&self) -> u8 {
        let stitches = self.stitches();
        let basic = |stitch: &&Stitch| stitch.row().basic;
        let special = stitches.len() - stitches.iter().filter(basic).count();
        let colours = self.plan.design.yarn.colours.len() > 1;
        let kinds = stitches.iter().filter(basic).filter(|stitch| **stitch != Stitch::CH).count();
        let mut rounds = self.plan.sizes.iter().flat_map(|size| &size.rounds);
        let loops = rounds.any(|round| round.loops() != crate::craft::Loops::Both);
        match (special, colours || loops || kinds > 2) {
            (0, false) => 1,
            (0, true) => 2,
            (1 | 2, _) => 3,
            _ => 4,
        }
    }
}
