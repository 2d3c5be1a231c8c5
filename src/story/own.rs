//! What the author adds, as it stands in the pattern: in the author's own words, in every language.

use super::Story;
use crate::story::{Block, Cell, Run, Section, Table};

impl Story<'_> {
    /// Notes on the whole pattern.
    pub(super) fn notes(&self) -> Section {
        let blocks = self.listed(false, &self.plan.design.own.notes);
        self.section("notes", "page-notes", false, blocks)
    }

    /// How the piece is put together.
    pub(super) fn assembly(&self) -> Section {
        let steps = &self.plan.design.own.assembly;
        let blocks = self.listed(steps.len() > 1, steps);
        self.section("assembly", "page-assembly", false, blocks)
    }

    fn listed(&self, numbered: bool, said: &[String]) -> Vec<Block> {
        match said {
            [] => Vec::new(),
            [one] => vec![Block::text(one.clone())],
            several => {
                let items = several.iter().map(|said| vec![Run::new(said.clone())]).collect();
                vec![Block::List { numbered, items }]
            }
        }
    }

    /// What is needed beside the yarn: its kind, and the author's words.
    pub(super) fn materials(&self) -> impl Iterator<Item = Vec<Cell>> {
        self.plan.design.own.materials.iter().map(|material| {
            let kind = self.say(&format!("page-material-{}", material.kind.word()));
            vec![Cell::bold(kind), Cell::new(material.words.clone())]
        })
    }

    /// For whom it was made.
    pub fn dedication(&self) -> Option<&str> {
        self.plan.design.own.dedication.as_deref()
    }

    /// Whose it is, of when, and what may be done with it: facts for the cover.
    pub(super) fn imprint(&self) -> Vec<(String, String)> {
        let own = &self.plan.design.own;
        let said = [
            ("page-version", &own.version),
            ("page-copyright", &own.copyright),
            ("page-licence", &own.licence),
            ("page-contact", &own.contact),
        ];
        said.into_iter().filter_map(|(key, said)| Some((self.say(key), said.clone()?))).collect()
    }

    /// Facts that found no room on a cover, as a section of their own; nothing where all did.
    pub fn facts_left(&self, facts: Vec<(String, String)>) -> Option<Section> {
        let rows: Vec<Vec<Cell>> =
            facts.into_iter().map(|(name, fact)| vec![Cell::bold(name), Cell::new(fact)]).collect();
        let table = Table::facts(self.say("page-imprint"), rows);
        (!table.rows.is_empty()).then(|| self.section("imprint", "page-imprint", false, vec![Block::Table(table)]))
    }

    /// What stands at the foot of every page: whose it is, and which version; nothing where neither is said.
    pub fn foot(&self) -> String {
        let own = &self.plan.design.own;
        let version = own.version.as_ref().map(|version| format!("{} {version}", self.say("page-version")));
        own.copyright.clone().into_iter().chain(version).collect::<Vec<_>>().join(" · ")
    }
}
