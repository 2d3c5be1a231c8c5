//! The pages as laid out: pieces of ink in their places, and beside them the tree that says what they are.

use std::sync::Arc;

use kurbo::{Affine, Rect};

use crate::drawing::{Drawing, Item};
use crate::units::Mm;
use crate::words::Language;

/// A document, ready to be written.
#[derive(Clone, Debug, PartialEq)]
pub struct Document {
    /// Its title, shown by readers in place of the file name; never empty.
    pub title: String,
    /// Who made it.
    pub author: Option<String>,
    /// Language of everything that doesn't say otherwise.
    pub language: Language,
    /// The pages in order.
    pub pages: Vec<Page>,
    /// The structure tree in reading order; every parent stands before its children.
    pub elements: Vec<Element>,
    /// Bookmarks in reading order.
    pub bookmarks: Vec<Bookmark>,
}

/// One page.
#[derive(Clone, Debug, PartialEq)]
pub struct Page {
    /// Width of the sheet.
    pub width: Mm,
    /// Height of the sheet.
    pub height: Mm,
    /// What is printed on it, back to front, and in reading order within each element.
    pub pieces: Vec<Piece>,
    /// Areas that lead elsewhere.
    pub links: Vec<Link>,
}

/// Some ink and whose it is. Coordinates are millimetres from the top left corner of the sheet.
#[derive(Clone, Debug, PartialEq)]
pub struct Piece {
    /// The element it belongs to.
    pub owner: Owner,
    /// Language of its words where it isn't the document's.
    pub language: Option<Language>,
    /// From the content's coordinates to the sheet.
    pub place: Affine,
    /// Nothing outside this part of the sheet is shown.
    pub clip: Option<Rect>,
    /// What is printed.
    pub content: Content,
}

/// What a piece belongs to.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Owner {
    /// An element, by its index in [`Document::elements`].
    Element(usize),
    /// Nothing that is read out.
    Artifact(Artifact),
}

/// Kinds of ink that is not read out.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Artifact {
    /// A running head, or a table head repeated on the next page.
    Head,
    /// A page number.
    Foot,
    /// Rules, tints, ornaments.
    Ornament,
    /// Marks for printing and joining sheets.
    Marks,
}

/// What a piece shows.
#[derive(Clone, Debug, PartialEq)]
pub enum Content {
    /// Paths and texts; symbols need a drawing.
    Items(Vec<Item>),
    /// A whole drawing.
    Drawing(Arc<Drawing>),
}

/// An element of the structure tree. Its pieces come before its child elements.
#[derive(Clone, Debug, PartialEq)]
pub struct Element {
    /// What it is.
    pub tag: Tag,
    /// The element it lies in, by index; nothing for the root.
    pub parent: Option<usize>,
    /// Language where it isn't the parent's.
    pub language: Option<Language>,
}

/// What an element is.
#[derive(Clone, Debug, PartialEq)]
pub enum Tag {
    /// A part of the document with a heading of its own.
    Section,
    /// A heading of a level from 1, with its words.
    Heading(u8, String),
    /// A paragraph.
    Paragraph,
    /// A list; true where its labels are numbers.
    List(bool),
    /// An item of a list.
    ListItem,
    /// The label of a list item.
    Label,
    /// The body of a list item.
    Body,
    /// A table, with a sentence on what it holds.
    Table(String),
    /// The head rows of a table.
    TableHead,
    /// The other rows of a table.
    TableBody,
    /// A row.
    Row,
    /// A header cell.
    HeaderCell(Scope),
    /// A cell.
    Cell,
    /// A picture, with what it shows in words.
    Figure(String),
    /// The caption of a figure or table.
    Caption,
    /// A table of contents.
    Contents,
    /// An entry of it.
    ContentsEntry,
    /// A reference within an entry.
    Reference,
    /// A link.
    Link,
}

/// What a header cell is the head of.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Scope {
    /// Its row.
    Row,
    /// Its column.
    Column,
}

/// A bookmark.
#[derive(Clone, Debug, PartialEq)]
pub struct Bookmark {
    /// Its words.
    pub title: String,
    /// Depth from 1; never more than one deeper than the bookmark before.
    pub level: u8,
    /// Where it leads.
    pub target: Target,
}

/// A place in the document.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Target {
    /// Index of the page.
    pub page: usize,
    /// Distance from the top of the page.
    pub top: Mm,
}

/// An area that leads elsewhere.
#[derive(Clone, Debug, PartialEq)]
pub struct Link {
    /// Its room on the sheet, mm.
    pub area: Rect,
    /// Where it leads.
    pub target: Target,
    /// What it does, for a reader who can't see it.
    pub description: String,
    /// The [`Tag::Link`] element it belongs to.
    pub element: usize,
}

impl Document {
    /// An empty document.
    pub fn new(title: impl Into<String>, language: Language) -> Self {
        Self {
            title: title.into(),
            author: None,
            language,
            pages: Vec::new(),
            elements: Vec::new(),
            bookmarks: Vec::new(),
        }
    }

    /// A document of one page that shows one drawing at its own size.
    pub fn of_drawing(drawing: Arc<Drawing>, (width, height): (Mm, Mm), place: Affine) -> Self {
        let mut document = Self::new(drawing.title.clone(), drawing.language);
        let figure = document.element(Tag::Figure(drawing.description.clone()), None);
        let mut page = Page::new(width, height);
        let title = drawing.title.clone();
        page.pieces.push(Piece::drawing(Owner::Element(figure), drawing, place));
        document.pages.push(page);
        document.bookmarks.push(Bookmark { title, level: 1, target: Target { page: 0, top: Mm::ZERO } });
        document
    }

    /// Adds an element and gives its index.
    pub fn element(&mut self, tag: Tag, parent: Option<usize>) -> usize {
        self.elements.push(Element { tag, parent, language: None });
        self.elements.len() - 1
    }
}

impl Page {
    /// An empty page.
    pub fn new(width: Mm, height: Mm) -> Self {
        Self { width, height, pieces: Vec::new(), links: Vec::new() }
    }
}

impl Piece {
    /// Items in sheet coordinates.
    pub fn items(owner: Owner, items: Vec<Item>) -> Self {
        Self { owner, language: None, place: Affine::IDENTITY, clip: None, content: Content::Items(items) }
    }

    /// A drawing in its place.
    pub fn drawing(owner: Owner, drawing: Arc<Drawing>, place: Affine) -> Self {
        let language = Some(drawing.language);
        Self { owner, language, place, clip: None, content: Content::Drawing(drawing) }
    }
}
