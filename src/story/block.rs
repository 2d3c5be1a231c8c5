//! What a pattern says, before it is laid out: sections of blocks. Pages and the plain text are both made of these.

use crate::font::Face;
use crate::words::Language;

/// Words of one cut and one language.
#[derive(Clone, Debug, PartialEq)]
pub struct Run {
    /// The words.
    pub text: String,
    /// Their cut.
    pub face: Face,
    /// Their language where it isn't the document's.
    pub language: Option<Language>,
}

impl Run {
    /// Upright words.
    pub fn new(text: impl Into<String>) -> Self {
        Self { text: text.into(), face: Face::Regular, language: None }
    }

    /// Words that stand apart from those beside them.
    pub fn remark(text: impl Into<String>) -> Self {
        Self { face: Face::Italic, ..Self::new(text) }
    }

    /// Bold words.
    pub fn bold(text: impl Into<String>) -> Self {
        Self { face: Face::Bold, ..Self::new(text) }
    }
}

/// A part of the pattern under a heading of its own.
#[derive(Clone, Debug, PartialEq)]
pub struct Section {
    /// Short name, unique among the sections: what links point at.
    pub id: &'static str,
    /// Its heading.
    pub title: String,
    /// True where it takes the whole width; its heading then stands over it and not beside it.
    pub wide: bool,
    /// What it says.
    pub blocks: Vec<Block>,
}

/// One block.
#[derive(Clone, Debug, PartialEq)]
pub enum Block {
    /// A paragraph.
    Paragraph(Vec<Run>),
    /// A heading within the section, with a bookmark.
    Heading(String),
    /// A list.
    List {
        /// True where its items are numbered.
        numbered: bool,
        /// The items.
        items: Vec<Vec<Run>>,
    },
    /// A table.
    Table(Table),
    /// A picture.
    Figure(Figure),
}

impl Block {
    /// A paragraph of upright words.
    pub fn text(text: impl Into<String>) -> Self {
        Self::Paragraph(vec![Run::new(text)])
    }

    /// The table, where it is one.
    pub fn table(&self) -> Option<&Table> {
        match self {
            Self::Table(table) => Some(table),
            Self::Paragraph(_) | Self::Heading(_) | Self::List { .. } | Self::Figure(_) => None,
        }
    }

    /// The picture, where it is one.
    pub fn figure(&self) -> Option<&Figure> {
        match self {
            Self::Figure(figure) => Some(figure),
            Self::Paragraph(_) | Self::Heading(_) | Self::List { .. } | Self::Table(_) => None,
        }
    }
}

/// A picture that the pattern speaks of; whoever lays it out has it drawn.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Illustration {
    /// The piece, drawn from the pattern.
    Piece,
    /// The symbols, explained.
    Key,
    /// One of the charts, by its index.
    Chart(usize),
    /// The symbols of one of the charts, explained.
    ChartKey(usize),
    /// One of the side views, by its index.
    Schematic(usize),
    /// The piece after the rounds to stop at.
    Steps,
    /// The piece in other colours.
    Colours,
    /// The outline at its true size.
    TrueSize,
}

/// A picture with its caption.
#[derive(Clone, Debug, PartialEq)]
pub struct Figure {
    /// The picture.
    pub shows: Illustration,
    /// What sets it off from the pictures beside it, such as its size; empty for none. It leads the caption and gives a
    /// bookmark.
    pub title: String,
    /// A sentence under it; empty for none.
    pub caption: String,
    /// The symbols of the picture, explained, to stand under it; nothing where they are explained elsewhere.
    pub key: Option<Illustration>,
}

impl Figure {
    /// The words under it: its title, set off, and its caption. None where it has neither.
    pub fn words(&self) -> Vec<Run> {
        let title = if self.title.is_empty() { None } else { Some(Run::bold(format!("{}.", self.title))) };
        let gap = if self.title.is_empty() || self.caption.is_empty() { "" } else { " " };
        let caption = if self.caption.is_empty() { None } else { Some(Run::new(format!("{gap}{}", self.caption))) };
        title.into_iter().chain(caption).collect()
    }
}

/// A table.
#[derive(Clone, Debug, PartialEq)]
pub struct Table {
    /// What it holds, for a reader who can't see it.
    pub summary: String,
    /// What stands over its head where it goes on over a page; empty for nothing.
    pub continued: String,
    /// Its columns.
    pub columns: Vec<Column>,
    /// True where the columns' titles are printed as a head row.
    pub head: bool,
    /// True where the first cell of every row is its head.
    pub row_heads: bool,
    /// Its rows; each has a cell for every column.
    pub rows: Vec<Vec<Cell>>,
}

impl Table {
    /// Names with what is to be said of each, without a head.
    pub(super) fn facts(summary: String, rows: Vec<Vec<Cell>>) -> Self {
        let columns = vec![Column::words(""), Column::wide("")];
        Self { summary, continued: String::new(), columns, head: false, row_heads: true, rows }
    }

    /// What kinds of columns it has, and whether they have heads: tables that are alike in this can stand on the same
    /// rails.
    pub fn kind(&self) -> (bool, Vec<(bool, bool)>) {
        (self.head, self.columns.iter().map(|column| (column.right, column.grows)).collect())
    }
}

/// A column of a table.
#[derive(Clone, Debug, PartialEq)]
pub struct Column {
    /// Its title.
    pub title: String,
    /// True for numbers, which end at one edge.
    pub right: bool,
    /// True where it takes the room the others leave.
    pub grows: bool,
}

impl Column {
    /// A column of words.
    pub fn words(title: impl Into<String>) -> Self {
        Self { title: title.into(), right: false, grows: false }
    }

    /// A column of numbers.
    pub fn numbers(title: impl Into<String>) -> Self {
        Self { right: true, ..Self::words(title) }
    }

    /// True where its title can be said aloud; signs such as `+/−` can't, and their cells speak for themselves.
    pub fn has_words(&self) -> bool {
        self.title.chars().any(char::is_alphabetic)
    }

    /// The column that takes what is left.
    pub fn wide(title: impl Into<String>) -> Self {
        Self { grows: true, ..Self::words(title) }
    }
}

/// A cell of a table.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Cell {
    /// Its words.
    pub runs: Vec<Run>,
    /// A patch of yarn colour before them.
    pub swatch: Option<[u8; 3]>,
    /// Tick boxes in place of words.
    pub ticks: u32,
}

impl Cell {
    /// A cell of upright words.
    pub fn new(text: impl Into<String>) -> Self {
        Self { runs: vec![Run::new(text)], ..Self::default() }
    }

    /// A cell of bold words.
    pub fn bold(text: impl Into<String>) -> Self {
        Self { runs: vec![Run::bold(text)], ..Self::default() }
    }

    /// A cell of `count` tick boxes.
    pub fn ticks(count: u32) -> Self {
        Self { ticks: count, ..Self::default() }
    }

    /// Its words without their cut.
    pub fn text(&self) -> String {
        self.runs.iter().map(|run| run.text.as_str()).collect()
    }
}
