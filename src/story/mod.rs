//! What a pattern says, section by section, without ink: booklet, web page and plain text are all made of this, so that
//! none tells less.
//!
//! Takes a plan with its shapes, how it is to be told, and which pictures there are. Gives sections of blocks, and row
//! tables. Never fails.

mod block;
mod closing;
pub mod listing;
mod materials;
mod own;
mod plain;
mod rounds;
mod rowtable;
mod sizes;
mod sources;
mod special;
mod told;
mod working;

use std::cell::OnceCell;
use std::collections::BTreeSet;

use crate::craft::{Close, Round, Stitch, Terms};
use crate::geometry::SideShape;
use crate::notation::write::Writer;
use crate::notation::{Gaps, Label, Numbers};
use crate::plan::{PartPlan, Plan, SizePlan};
use crate::report::Place;
use crate::words::numbers::length;
use crate::words::{Arg, Language, Words};

pub use block::*;
pub use materials::Amount;
pub use rowtable::*;
pub use sources::source_words;
pub use told::*;

/// What the sections are made from.
pub struct Story<'a> {
    plan: &'a Plan,
    /// The predicted shape of each size; empty where it isn't known.
    shapes: &'a [SideShape],
    telling: Telling,
    illustrations: Illustrations,
    /// The words of its language.
    pub words: Words,
    /// The written rounds: one table for all sizes, or one a size. Written when they are first asked for; the facts
    /// alone do without.
    tables: OnceCell<Vec<RowTable>>,
    /// The stitches that the plan makes.
    stitches: OnceCell<Vec<Stitch>>,
}

impl<'a> Story<'a> {
    /// Gathers what the sections are made from. Without `shapes`, one a size, the rounds have no measures.
    pub fn new(plan: &'a Plan, shapes: &'a [SideShape], telling: Telling, illustrations: Illustrations) -> Self {
        let words = plan.design.words();
        Self { plan, shapes, telling, illustrations, words, tables: OnceCell::new(), stitches: OnceCell::new() }
    }

    /// The title, without blanks round it; empty for the nameless.
    pub fn title(&self) -> &'a str {
        self.plan.design.title.value.trim()
    }

    /// Where the title stands in the design file.
    pub const fn title_place(&self) -> Option<Place> {
        self.plan.design.title.place
    }

    /// Who designed the piece.
    pub fn designer(&self) -> Option<&'a str> {
        self.plan.design.designer.as_deref()
    }

    /// A few sentences about the piece.
    pub fn about(&self) -> Option<&'a str> {
        self.plan.design.about.as_deref().map(str::trim)
    }

    /// How many sizes there are.
    pub const fn size_count(&self) -> usize {
        self.plan.sizes.len()
    }

    fn tables(&self) -> &[RowTable] {
        self.tables.get_or_init(|| rounds::round_tables(self.plan, self.shapes, self.telling.rounds))
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

    /// The stitches that fabric is made of: all but those that a spiral only rises or ends over.
    fn fabric(&self) -> Vec<Stitch> {
        let rounds = || self.plan.sizes.iter().flat_map(|size| &size.rounds);
        let rises = |round: &Round| round.number == 1 && round.close == Close::Spiral && round.target.is_some();
        let makes = |round: &Round, stitch: Stitch| {
            round.stitch == stitch
                || !rises(round) && round.ops.iter().flat_map(|op| op.made.runs()).any(|(made, _)| made == stitch)
        };
        let made = self.stitches().iter().copied();
        made.filter(|stitch| rounds().any(|round| makes(round, *stitch))).collect()
    }

    /// The sections in reading order; those with nothing to say are left out.
    pub fn sections(&self) -> Vec<Section> {
        let sections = [
            self.notes(),
            self.need(),
            self.swatch(),
            self.sizes(),
            self.fit(),
            self.side_view(),
            self.measures(),
            self.one_picture("piece", "page-piece", Illustration::Piece, self.illustrations.piece.as_ref()),
            self.working(),
            self.abbreviations(),
            self.special(),
            self.one_picture("steps", "page-steps", Illustration::Steps, self.illustrations.steps.as_ref()),
            self.one_picture("colours", "page-colours", Illustration::Colours, self.illustrations.colours.as_ref()),
            self.key(),
            self.charts(),
            self.rounds(),
            self.plain_rounds(),
            self.assembly(),
            self.finishing(),
            self.cautions(),
            self.one_picture(
                "true-size",
                "page-true-size",
                Illustration::TrueSize,
                self.illustrations.true_size.as_ref(),
            ),
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
        facts.extend(self.imprint());
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

    /// Size, measure and counts of one size in a line, and its gauge.
    pub fn size_facts(&self, size: usize) -> Option<String> {
        let size = self.plan.sizes.get(size)?;
        let around = length(size.finished, self.plan.design.units, self.words.language);
        let counts = format!("{} {}", self.words.say("page-rounds"), size.rounds.len());
        let stitches = format!("{} {}", self.words.say("page-stitches-total"), size.stitches());
        let mut facts = vec![format!("{} {}", self.words.say("page-finished"), around), counts, stitches];
        if self.plan.sizes.len() > 1 {
            facts.insert(0, format!("{} {}", self.words.say("page-size"), size.name));
        }
        facts.extend(self.gauge());
        Some(facts.join("\u{a0}· "))
    }

    fn key(&self) -> Section {
        let figure = Figure { shows: Illustration::Key, title: String::new(), caption: String::new(), key: None };
        let blocks = if self.illustrations.key { vec![Block::Figure(figure)] } else { Vec::new() };
        self.section("key", "page-key", true, blocks)
    }

    fn charts(&self) -> Section {
        let mut figures = self.figures(&self.illustrations.charts, Illustration::Chart);
        for (index, figure) in figures.iter_mut().enumerate().take(self.illustrations.chart_keys) {
            figure.key = Some(Illustration::ChartKey(index));
        }
        self.section("chart", "page-chart", true, figures.into_iter().map(Block::Figure).collect())
    }

    /// The index of the size that is shown where one is.
    pub fn middle(&self) -> usize {
        self.plan.middle()
    }

    /// What differs in the sizes that have no chart of their own: part by part the rounds, and the stitches of the last.
    pub fn beside_the_chart(&self) -> Vec<Block> {
        let Some(shown) = self.plan.sizes.get(self.middle()) else { return Vec::new() };
        let writer = self.writer();
        let cell = |part: &PartPlan, size: &SizePlan| {
            let numbers = |number| Numbers::one(number);
            let label = Label { first: numbers(part.first), last: numbers(part.last), only: Vec::new() };
            let count = size.rounds.get(part.last as usize - 1).map_or(0, |round| round.after).to_string();
            let stitches = self.words.with("write-count-stitches", &[("number", Arg::Text(&count))]);
            Cell::new(format!("{}: {stitches}", writer.label(&label, Gaps::OPEN)))
        };
        let row = |size: &SizePlan| {
            let cells = size.parts.iter().map(|part| cell(part, size));
            std::iter::once(Cell::bold(size.name.clone())).chain(cells).collect()
        };
        let parts = self.plan.design.parts.iter().map(|part| Column::words(part.name.value.clone()));
        let told = self.words.with("page-chart-others", &[("size", Arg::Text(&shown.name))]);
        let table = Table {
            summary: told.clone(),
            continued: String::new(),
            columns: std::iter::once(Column::words(self.say("page-size"))).chain(parts).collect(),
            head: true,
            row_heads: true,
            rows: self.plan.sizes.iter().map(row).collect(),
        };
        vec![Block::text(told), Block::Table(table)]
    }

    /// A section of one picture, where there is one with its caption.
    fn one_picture(&self, id: &'static str, title: &str, shows: Illustration, caption: Option<&String>) -> Section {
        let figure = |caption: &String| Figure { shows, title: String::new(), caption: caption.clone(), key: None };
        let figures = caption.into_iter().map(figure).map(Block::Figure).collect();
        self.section(id, title, true, figures)
    }

    /// The pictures as figures; those that show one size of several are called after it.
    fn figures(&self, captions: &[String], shows: fn(usize) -> Illustration) -> Vec<Figure> {
        let sizes = &self.plan.sizes;
        let one_each = sizes.len() > 1 && captions.len() == sizes.len();
        let title = |index: usize| match sizes.get(index).filter(|_| one_each) {
            Some(size) => self.words.with("page-of-size", &[("size", Arg::Text(&size.name))]),
            None => String::new(),
        };
        let figure = |(index, caption): (usize, &String)| Figure {
            shows: shows(index),
            title: title(index),
            caption: caption.clone(),
            key: None,
        };
        captions.iter().enumerate().map(figure).collect()
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

    /// True for an English pattern in UK terms, which holds no US word where it can say it in its own.
    fn british(&self) -> bool {
        self.words.language == Language::EN && self.plan.design.terms == Terms::Uk
    }

    fn writer(&self) -> Writer<'_> {
        Writer { words: &self.words, terms: self.plan.design.terms }
    }

    /// The level that the author gives; or the project level by the Craft Yarn Council's four definitions (2018): 1 basic to 4 complex.
    fn level(&self) -> u8 {
        if let Some(level) = self.plan.design.own.level {
            return level;
        }
        let stitches = self.fabric();
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
