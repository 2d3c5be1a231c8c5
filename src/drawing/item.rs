//! The drawing vocabulary: closed, so that every writer handles every item.

use std::collections::BTreeMap;
use std::sync::Arc;

use kurbo::{Affine, BezPath, Point, Rect, Vec2};

use crate::font::Face;
use crate::photo::Photo;
use crate::units::{Angle, Mm};
use crate::words::Language;

/// Most that a curve may stand off the circle or ellipse it is drawn for, in the unit of its path.
pub(crate) const CURVE: f64 = 1e-3;

/// The same of circles that only mark a place, and of the straight pieces that a curve is measured by.
pub(crate) const ROUGH: f64 = 0.01;

/// A picture, in millimetres.
#[derive(Clone, Debug, PartialEq)]
pub struct Drawing {
    /// Everything lies inside.
    pub bounds: Rect,
    /// Short name, for a title element and the page's caption.
    pub title: String,
    /// What it shows, in words: shape, rounds and counts; the alternative text.
    pub description: String,
    /// Language of its words.
    pub language: Language,
    /// Symbols it places, by key.
    pub symbols: BTreeMap<String, Symbol>,
    /// What is drawn, back to front.
    pub items: Vec<Item>,
}

impl Drawing {
    /// The photograph, where it shows nothing else.
    pub fn photograph(&self) -> Option<&PhotoItem> {
        match &self.items[..] {
            [Item::Photo(photo)] => Some(photo),
            _ => None,
        }
    }

    /// True where it goes into this room.
    pub fn fits(&self, width: Mm, height: Mm) -> bool {
        self.bounds.width() <= width.mm() && self.bounds.height() <= height.mm()
    }
}

/// A reusable shape, drawn once and placed many times.
#[derive(Clone, Debug, PartialEq)]
pub struct Symbol {
    /// What it is drawn of.
    pub paths: Vec<PathItem>,
    /// Outer edge of its ink.
    pub bounds: Rect,
    /// True where it lies loose between others, as a chain does, and so may stand close to them.
    pub loose: bool,
}

/// One thing drawn.
#[derive(Clone, Debug, PartialEq)]
pub enum Item {
    /// A path, filled or stroked.
    Path(PathItem),
    /// A line of text.
    Text(TextItem),
    /// A symbol in its place.
    Symbol(SymbolItem),
    /// A photograph in its place.
    Photo(PhotoItem),
    /// Items that belong together.
    Group(Group),
}

/// A photograph in its place.
#[derive(Clone, Debug, PartialEq)]
pub struct PhotoItem {
    /// The photograph, with as many pixels as are to be written.
    pub photo: Arc<Photo>,
    /// The room that it fills, whatever its proportion.
    pub area: Rect,
}

/// A path.
#[derive(Clone, Debug, PartialEq)]
pub struct PathItem {
    /// Its outline.
    pub path: BezPath,
    /// Fill by the nonzero rule.
    pub fill: Option<Ink>,
    /// Stroke.
    pub stroke: Option<Stroke>,
}

/// A stroke.
#[derive(Clone, Debug, PartialEq)]
pub struct Stroke {
    /// Width, mm.
    pub width: f64,
    /// Colour.
    pub ink: Ink,
    /// Ends and corners.
    pub ends: Ends,
    /// Lengths of dashes and gaps, mm; empty for a continuous line.
    pub dashes: Vec<f64>,
}

/// Ends and corners of strokes.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Ends {
    /// Cut square at the end point, mitred corners.
    #[default]
    Butt,
    /// Round ends and corners.
    Round,
}

/// An opaque colour: red, green, blue.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Ink(pub [u8; 3]);

impl Ink {
    /// Black.
    pub const BLACK: Self = Self([0, 0, 0]);
    /// White.
    pub const WHITE: Self = Self([255, 255, 255]);
}

/// A line of text.
#[derive(Clone, Debug, PartialEq)]
pub struct TextItem {
    /// The words.
    pub text: String,
    /// Point on the baseline that `anchor` speaks of.
    pub at: Point,
    /// Clockwise turn about `at`, degrees.
    pub turn: f64,
    /// Em height, mm.
    pub size: f64,
    /// Cut.
    pub face: Face,
    /// Which part of the line stands at `at`.
    pub anchor: Anchor,
    /// Colour.
    pub ink: Ink,
    /// A halo of this width in white behind the words, mm; 0 for none.
    pub halo: f64,
}

/// Which part of a line of text stands at its point.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Anchor {
    /// Its start.
    #[default]
    Start,
    /// Its middle.
    Middle,
    /// Its end.
    End,
}

/// A symbol in its place.
#[derive(Clone, Debug, PartialEq)]
pub struct SymbolItem {
    /// Key into [`Drawing::symbols`].
    pub key: String,
    /// From symbol units to the drawing.
    pub place: Affine,
}

/// Items that belong together.
#[derive(Clone, Debug, PartialEq)]
pub struct Group {
    /// Id, unique in the drawing: letters, figures and hyphens. Empty for none.
    pub id: String,
    /// What the group is to a reader who can't see it.
    pub role: Role,
    /// What it is of, to point a late complaint at its source.
    pub origin: Origin,
    /// The items, back to front.
    pub items: Vec<Item>,
}

/// What a group is to a reader who can't see it.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub enum Role {
    /// Nothing of its own.
    #[default]
    Plain,
    /// An object with a name and a description, such as a round.
    Object {
        /// Its name.
        name: String,
        /// What a reader should hear of it.
        description: String,
    },
    /// Ornament: not read out.
    Decoration,
}

/// What a group is of.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Origin {
    /// Nothing in particular.
    #[default]
    None,
    /// A round, by its number.
    Round(u32),
    /// A part, by its index.
    Part(usize),
}

impl Item {
    /// The same, moved.
    #[must_use]
    pub fn moved(&self, by: Vec2) -> Self {
        let mut item = self.clone();
        match &mut item {
            Self::Path(path) => path.path.apply_affine(Affine::translate(by)),
            Self::Text(text) => text.at += by,
            Self::Symbol(symbol) => symbol.place = Affine::translate(by) * symbol.place,
            Self::Photo(photo) => photo.area = photo.area + by,
            Self::Group(group) => group.items = group.items.iter().map(|item| item.moved(by)).collect(),
        }
        item
    }
}

impl TextItem {
    /// Black text at a point, em height in mm.
    pub fn new(text: impl Into<String>, at: Point, size: f64) -> Self {
        Self {
            text: text.into(),
            at,
            turn: 0.0,
            size,
            face: Face::Regular,
            anchor: Anchor::Start,
            ink: Ink::BLACK,
            halo: 0.0,
        }
    }

    /// Room the line takes, turned with it, from ascender to descender.
    pub fn bounds(&self) -> Rect {
        let width = self.face.width(&self.text, self.size);
        let left = match self.anchor {
            Anchor::Start => 0.0,
            Anchor::Middle => -width / 2.0,
            Anchor::End => -width,
        };
        let flat = Rect::new(left, -0.75 * self.size, left + width, 0.25 * self.size);
        let turn = Affine::translate(self.at.to_vec2()) * Angle::from_degrees(self.turn).rotation();
        turn.transform_rect_bbox(flat)
    }
}
