//! A printed pattern as a reader has it before them, whichever form it was printed in: sections, paragraphs, rows.

use super::tongue::Tongue;

/// A row of a table: the title of each column with its cell.
pub(super) type Row = Vec<(String, String)>;

#[derive(Debug)]
pub(super) enum Block {
    Text(String),
    Heading(String),
    Item(String),
    Row(Row),
    /// What is said of a picture.
    Picture(String),
}

#[derive(Debug, Default)]
pub(super) struct Section {
    pub(super) title: String,
    pub(super) blocks: Vec<Block>,
}

/// A whole pattern.
#[derive(Debug, Default)]
pub(super) struct Paper {
    /// Which form it is, for whoever looks for what is wrong.
    pub(super) form: &'static str,
    /// The facts of the cover.
    pub(super) facts: Row,
    pub(super) sections: Vec<Section>,
}

/// Words with one plain space between them.
pub(super) fn flat(text: &str) -> String {
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}

/// A cell of a row by the key of its column.
pub(super) fn cell<'r>(row: &'r Row, tongue: &Tongue, key: &str) -> Option<&'r str> {
    let titles: Vec<&str> = tongue.all(key).collect();
    assert!(!titles.is_empty(), "{}: no words for {key}", tongue.tag);
    row.iter().find(|(title, _)| titles.contains(&title.as_str())).map(|(_, cell)| cell.as_str())
}

impl Paper {
    /// The blocks of a section; none where it isn't there.
    pub(super) fn blocks(&self, tongue: &Tongue, key: &str) -> &[Block] {
        let called =
            |section: &&Section| tongue.all(key).any(|title| title.to_uppercase() == section.title.to_uppercase());
        self.sections.iter().find(called).map_or(&[], |section| &section.blocks)
    }

    pub(super) fn rows<'p>(&'p self, tongue: &Tongue, key: &str) -> impl Iterator<Item = &'p Row> + use<'p> {
        self.blocks(tongue, key).iter().filter_map(|block| match block {
            Block::Row(row) => Some(row),
            Block::Text(_) | Block::Heading(_) | Block::Item(_) | Block::Picture(_) => None,
        })
    }

    /// Paragraphs and items of lists.
    pub(super) fn said<'p>(&'p self, tongue: &Tongue, key: &str) -> impl Iterator<Item = &'p str> + use<'p> {
        self.blocks(tongue, key).iter().filter_map(|block| match block {
            Block::Text(text) | Block::Item(text) => Some(text.as_str()),
            Block::Row(_) | Block::Heading(_) | Block::Picture(_) => None,
        })
    }

    pub(super) fn pictures(&self) -> impl Iterator<Item = &str> {
        self.sections.iter().flat_map(|section| &section.blocks).filter_map(|block| match block {
            Block::Picture(told) => Some(told.as_str()),
            Block::Row(_) | Block::Heading(_) | Block::Text(_) | Block::Item(_) => None,
        })
    }
}
