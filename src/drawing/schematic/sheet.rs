//! The sheet a schematic grows on: pens, letters, and a memory of the room that is taken.

use kurbo::{BezPath, Point, Rect, Vec2};

use super::SchematicOptions;
use crate::drawing::{Anchor, Ends, Ink, Item, PathItem, Stroke, TextItem};
use crate::font::Face;
use crate::units::Angle;

/// Clear room kept around letters, mm.
const CLEAR: f64 = 0.4;

/// Grey of hints: 4.54 : 1 on white by the WCAG formula.
const HINT: Ink = Ink([0x76, 0x76, 0x76]);

/// Line widths and letter heights of one schematic, mm, from the series of ISO 128-2 and ISO 3098-1.
#[derive(Clone, Copy, Debug)]
pub(super) struct Style {
    /// Outlines.
    pub(super) wide: f64,
    /// Everything else: half of it.
    pub(super) narrow: f64,
    /// Height of a capital.
    pub(super) letters: f64,
    /// Ink of hints.
    pub(super) hint: Ink,
}

impl Style {
    pub(super) fn of(options: &SchematicOptions) -> Self {
        let (wide, narrow) = if options.heavy { (1.0, 0.5) } else { (0.5, 0.25) };
        let hint = if options.plain_black { Ink::BLACK } else { HINT };
        Self { wide, narrow, letters: options.letters.mm().max(1.8), hint }
    }

    /// Em height whose capitals are as high as asked.
    pub(super) fn em(&self) -> f64 {
        self.letters / Face::Regular.cap_height(1.0).max(0.1)
    }

    /// Length of an arrowhead: a little more than the letters are high.
    pub(super) fn arrow(&self) -> f64 {
        1.2 * self.letters
    }

    /// How far extension lines run past the dimension line: eight line widths.
    pub(super) fn overrun(&self) -> f64 {
        8.0 * self.narrow
    }
}

/// Four corners of a line of letters, in order.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Quad([Point; 4]);

impl Quad {
    /// The room of a line of text with clear room around it.
    pub(super) fn of(text: &TextItem) -> Self {
        let flat = TextItem { turn: 0.0, at: Point::ZERO, ..text.clone() };
        let room = flat.bounds();
        // A line of figures and capitals: its ink ends at the baseline but for commas and brackets.
        let room = Rect::new(room.x0, room.y0, room.x1, 0.22 * text.size).inflate(CLEAR, CLEAR);
        let turn = Angle::from_degrees(text.turn).direction();
        let place = |x: f64, y: f64| text.at + Vec2::new(x * turn.x - y * turn.y, x * turn.y + y * turn.x);
        Self([place(room.x0, room.y0), place(room.x1, room.y0), place(room.x1, room.y1), place(room.x0, room.y1)])
    }

    /// True where the quad and the polygon share any point, by their separating axes.
    fn meets(&self, other: &[Point]) -> bool {
        let axes = (0..4).map(|i| (self.0[(i + 1) % 4] - self.0[i]).turn_90());
        let theirs = (0..other.len()).map(|i| (other[(i + 1) % other.len()] - other[i]).turn_90());
        axes.chain(theirs).filter(|axis| axis.hypot2() > 0.0).all(|axis| {
            let ((a, b), (c, d)) = (span(&self.0, axis), span(other, axis));
            a <= d && c <= b
        })
    }

    fn bounds(&self) -> Rect {
        let start = Rect::from_points(self.0[0], self.0[0]);
        self.0.iter().fold(start, |room, &p| room.union_pt(p))
    }
}

/// On which side of the way from `p` to `q` a point lies: above zero on one, below zero on the other.
fn side(p: Point, q: Point, r: Point) -> f64 {
    (q - p).cross(r - p)
}

/// From where to where points reach along an axis.
fn span(points: &[Point], axis: Vec2) -> (f64, f64) {
    let along = points.iter().map(|p| p.to_vec2().dot(axis));
    along.fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), v| (low.min(v), high.max(v)))
}

/// What is drawn so far.
#[derive(Clone, Debug)]
pub(super) struct Sheet {
    pub(super) style: Style,
    pub(super) items: Vec<Item>,
    lines: Vec<[Point; 2]>,
    /// Lines that letters may lie on where nothing else is free.
    hints: Vec<[Point; 2]>,
    letters: Vec<Quad>,
    room: Option<Rect>,
    /// Width that letters beside the outline must not exceed.
    width: f64,
}

impl Sheet {
    pub(super) fn new(options: &SchematicOptions) -> Self {
        let (style, width) = (Style::of(options), options.width.mm());
        Self { style, items: Vec::new(), lines: Vec::new(), hints: Vec::new(), letters: Vec::new(), room: None, width }
    }

    /// Room taken, with half a line around it.
    pub(super) fn bounds(&self) -> Rect {
        self.room.unwrap_or(Rect::ZERO).inflate(self.style.wide / 2.0, self.style.wide / 2.0)
    }

    /// Takes room that nothing is drawn in yet.
    pub(super) fn take_room(&mut self, room: Rect) {
        self.grow(room);
    }

    fn grow(&mut self, by: Rect) {
        self.room = Some(self.room.map_or(by, |room| room.union(by)));
    }

    /// Draws a chain of straight lines.
    pub(super) fn line(&mut self, points: &[Point], width: f64, ink: Ink, dashes: Vec<f64>) {
        let Some((&first, rest)) = points.split_first() else { return };
        let mut path = BezPath::new();
        path.move_to(first);
        rest.iter().for_each(|&p| path.line_to(p));
        self.take(points);
        let ends = if rest.len() > 1 && dashes.is_empty() { Ends::Round } else { Ends::Butt };
        let stroke = Some(Stroke { width, ink, ends, dashes });
        self.items.push(Item::Path(PathItem { path, fill: None, stroke }));
    }

    /// Draws a centre line: long dashes and dots.
    pub(super) fn centre_line(&mut self, ends: [Point; 2]) {
        let narrow = self.style.narrow;
        self.line(&ends, narrow, Ink::BLACK, [24.0, 3.0, 0.5, 3.0].map(|part| part * narrow).to_vec());
    }

    /// Remembers a chain of lines as taken.
    pub(super) fn take(&mut self, points: &[Point]) {
        for pair in points.windows(2) {
            self.lines.push([pair[0], pair[1]]);
            self.grow(Rect::from_points(pair[0], pair[1]));
        }
    }

    /// Draws a thin continuous black line.
    pub(super) fn thin(&mut self, from: Point, to: Point) {
        self.line(&[from, to], self.style.narrow, Ink::BLACK, Vec::new());
    }

    /// Draws a path as it is; its corners are taken as lines.
    pub(super) fn path(&mut self, item: PathItem, corners: &[Point]) {
        self.take(corners);
        self.items.push(Item::Path(item));
    }

    /// Draws a path that is only a hint.
    pub(super) fn hint(&mut self, item: PathItem, corners: &[Point]) {
        for pair in corners.windows(2) {
            self.hints.push([pair[0], pair[1]]);
            self.grow(Rect::from_points(pair[0], pair[1]));
        }
        self.items.push(Item::Path(item));
    }

    /// Draws a filled narrow arrowhead whose point is at `at`, flying along `way`.
    pub(super) fn arrow(&mut self, at: Point, way: Vec2) {
        let (long, half) = (self.style.arrow(), self.style.arrow() / 6.0);
        let way = way.normalize();
        let (back, across) = (at - way * long, way.turn_90() * half);
        let mut path = BezPath::new();
        path.move_to(at);
        path.line_to(back + across);
        path.line_to(back - across);
        path.close_path();
        self.path(PathItem { path, fill: Some(Ink::BLACK), stroke: None }, &[back + across, back - across]);
    }

    /// A line of letters in the sheet's size.
    pub(super) fn text(&self, words: &str, at: Point, anchor: Anchor) -> TextItem {
        TextItem { anchor, ..TextItem::new(words, at, self.style.em()) }
    }

    /// Writes letters.
    pub(super) fn write(&mut self, text: TextItem) {
        let quad = Quad::of(&text);
        self.grow(quad.bounds());
        self.letters.push(quad);
        self.items.push(Item::Text(text));
    }

    /// True where letters would touch neither letters nor lines, nor make the sheet too wide.
    pub(super) fn free(&self, text: &TextItem) -> bool {
        let quad = Quad::of(text);
        self.free_of_all_but_hints(text) && !self.hints.iter().any(|line| quad.meets(line))
    }

    /// The same, though they may lie on a hint.
    pub(super) fn free_of_all_but_hints(&self, text: &TextItem) -> bool {
        let quad = Quad::of(text);
        let wide = self.bounds().union(quad.bounds()).width() > self.width;
        !wide
            && !self.letters.iter().any(|other| quad.meets(&other.0))
            && !self.lines.iter().any(|line| quad.meets(line))
    }

    /// True where a line would cross no letters.
    pub(super) fn clear(&self, from: Point, to: Point) -> bool {
        !self.letters.iter().any(|letters| letters.meets(&[from, to]))
    }

    /// True where a line would cross no other line.
    pub(super) fn uncrossed(&self, from: Point, to: Point) -> bool {
        !self.lines.iter().chain(&self.hints).any(|[a, b]| {
            // Each has its ends on either side of the other.
            side(from, to, *a) * side(from, to, *b) < 0.0 && side(*a, *b, from) * side(*a, *b, to) < 0.0
        })
    }

    /// Writes letters in the first of several places that is free; gives false where none is.
    pub(super) fn write_free(&mut self, places: impl IntoIterator<Item = TextItem>) -> bool {
        let place = places.into_iter().find(|text| self.free(text));
        place.map(|text| self.write(text)).is_some()
    }
}
