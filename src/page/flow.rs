//! Blocks → slabs: slices of a page that are never split, each with what may happen above and below it.

use std::sync::Arc;

use kurbo::{Affine, BezPath, PathEl, Point, Rect};

use crate::drawing::{Anchor, Drawing, Ends, Ink, Item, PathItem, Stroke, TextItem};
use crate::font::Face;
use crate::words::Language;

use super::lines::Line;
use super::paginate::Extent;
use super::{Artifact, Document, Owner, Pictures, Style, Tag};
use crate::story::{Block, Figure, Run, Section, Table};

/// A slice of a page.
#[derive(Clone, Debug, Default)]
pub(super) struct Slab {
    pub(super) extent: Extent,
    /// What it shows; heights from its top, sides from the edge of the sheet.
    pub(super) bits: Vec<Bit>,
    /// The head to repeat over it at the top of a page, by index.
    pub(super) head: Option<usize>,
    /// Bookmark and link target at its top: a name, a title and a level.
    pub(super) anchor: Option<(String, String, u8)>,
}

/// Something shown in a slab.
#[derive(Clone, Debug)]
pub(super) struct Bit {
    pub(super) owner: Owner,
    pub(super) language: Option<Language>,
    pub(super) shows: Shows,
}

impl Bit {
    /// The same so much further down.
    pub(super) fn moved(mut self, down: f64) -> Self {
        let by = kurbo::Vec2::new(0.0, down);
        match &mut self.shows {
            Shows::Items(items) => items.iter_mut().for_each(|item| *item = item.moved(by)),
            Shows::Drawing(_, place) => *place = Affine::translate(by) * *place,
            Shows::PageOf(_, item) => item.at += by,
            Shows::LinkTo(_, area, _) => *area = *area + by,
        }
        self
    }
}

/// What a bit shows.
#[derive(Clone, Debug)]
pub(super) enum Shows {
    /// Items.
    Items(Vec<Item>),
    /// A drawing.
    Drawing(Arc<Drawing>, Affine),
    /// The number of the page an anchor is on, ending at this point.
    PageOf(String, TextItem),
    /// An area that leads to an anchor; nothing is shown.
    LinkTo(String, Rect, String),
}

/// Slabs in the making.
pub(super) struct Flow<'a> {
    pub(super) style: &'a Style,
    pictures: &'a Pictures,
    pub(super) document: &'a mut Document,
    pub(super) slabs: Vec<Slab>,
    /// Table heads to repeat, as artifacts, with their height.
    pub(super) heads: Vec<(f64, Vec<Bit>)>,
    /// Figures that had to be made smaller: title and scale.
    pub(super) shrunk: Vec<(String, f64)>,
    /// Left and right edge in force.
    pub(super) frame: (f64, f64),
    next_gap: f64,
}

/// Cost of ending a page inside a paragraph, between items of a list, and between blocks of a section.
const INSIDE_TEXT: f64 = 0.25;
const BETWEEN_ITEMS: f64 = 0.08;
const BETWEEN_BLOCKS: f64 = 0.04;

impl<'a> Flow<'a> {
    pub(super) fn new(style: &'a Style, pictures: &'a Pictures, document: &'a mut Document) -> Self {
        Self {
            style,
            pictures,
            document,
            slabs: Vec::new(),
            heads: Vec::new(),
            shrunk: Vec::new(),
            frame: (style.left, style.right),
            next_gap: 0.0,
        }
    }

    /// Adds a section: a rule, its heading, and its blocks.
    pub(super) fn section(&mut self, section: &Section, parent: usize) {
        self.section_with(section, parent, |flow, element| flow.blocks(&section.blocks, element));
    }

    /// Adds a section whose content is put by `fill` into the section's element.
    pub(super) fn section_with(&mut self, section: &Section, parent: usize, fill: impl FnOnce(&mut Self, usize)) {
        let style = self.style;
        let element = self.document.element(Tag::Section, Some(parent));
        let heading = self.document.element(Tag::Heading(2, section.title.clone()), Some(element));
        // Wide sections go over both columns.
        let wide = section.wide || !style.has_columns();
        let first = self.slabs.len();
        self.frame = (style.left, if wide { style.right } else { style.left + style.column });
        self.gap(style.text * 1.9);
        // A rule at the foot of a page with its section on the next would be a line under nothing: it is kept.
        let mut rule = self.slab(style.text * 0.9, true);
        rule.bits.push(ornament(vec![
            bar(self.frame.0, 0.0, self.frame.1, style.hair, style.palette.rule),
            bar(self.frame.0, 0.0, self.frame.0 + 11.0, style.strong, style.palette.accent),
        ]));
        rule.anchor = Some((section.id.to_owned(), section.title.clone(), 2));
        self.slabs.push(rule);
        let head = self.heading_lines(&section.title, style.heads[1], self.frame.1 - self.frame.0);
        let head_height = head.len() as f64 * style.heads[1] * HEAD_LEADING;
        let mut slab = self.slab(head_height + style.text * 0.4, true);
        slab.bits = self.head_bits(&head, style.heads[1], heading, Point::new(style.left, 0.0));
        self.slabs.push(slab);
        self.next_gap = 0.0;
        fill(self, element);
        self.slabs.iter_mut().skip(first).for_each(|slab| slab.extent.column = !wide);
        self.frame = (style.left, style.right);
    }

    /// Adds blocks in the frame in force.
    pub(super) fn blocks(&mut self, blocks: &[Block], parent: usize) {
        let style = self.style;
        let tables: Vec<&Table> = blocks.iter().filter_map(Block::table).collect();
        let mut wants = self.wants_side_by_side(&tables).into_iter();
        for (i, block) in blocks.iter().enumerate() {
            match block {
                Block::Paragraph(runs) => {
                    let element = self.document.element(Tag::Paragraph, Some(parent));
                    self.paragraph(runs, element, self.frame.0, self.frame.0 + self.line_width());
                    self.gap(style.text * 0.6);
                }
                Block::Heading(title) => self.subheading(title, parent),
                Block::List { numbered, items } => self.list(*numbered, items, parent),
                Block::Table(table) => {
                    let wants = wants.next().unwrap_or_default();
                    self.table(table, &wants, parent);
                    self.gap(style.text * 1.0);
                }
                Block::Figure(figure) => self.figure(figure, parent, i == 0),
            }
            let Some(next) = blocks.get(i + 1) else { continue };
            if let Some(slab) = self.slabs.last_mut() {
                // Words that lead over to a table stay with it, and a section doesn't begin with words alone.
                let leads = matches!(block, Block::Paragraph(_)) && (next.table().is_some() || i == 0);
                slab.extent.keep |= leads;
                slab.extent.cost = slab.extent.cost.max(BETWEEN_BLOCKS);
            }
        }
    }

    fn line_width(&self) -> f64 {
        self.style.line_width.min(self.frame.1 - self.frame.0)
    }

    fn subheading(&mut self, title: &str, parent: usize) {
        let style = self.style;
        let size = style.heads[2];
        let element = self.document.element(Tag::Heading(3, title.to_owned()), Some(parent));
        let lines = self.heading_lines(title, size, self.frame.1 - self.frame.0);
        self.gap(style.text * 1.1);
        let mut slab = self.slab(lines.len() as f64 * size * HEAD_LEADING + style.text * 0.25, true);
        slab.bits = self.head_bits(&lines, size, element, Point::new(self.frame.0, 0.0));
        slab.anchor = Some((String::new(), title.to_owned(), 3));
        self.slabs.push(slab);
        self.next_gap = 0.0;
    }

    fn heading_lines(&self, title: &str, size: f64, width: f64) -> Vec<Line> {
        self.style.setter.wrap(&[Run::bold(title)], size, width)
    }

    fn head_bits(&self, lines: &[Line], size: f64, element: usize, from: Point) -> Vec<Bit> {
        let mut bits = Vec::new();
        for (i, line) in lines.iter().enumerate() {
            let at = from + kurbo::Vec2::new(0.0, i as f64 * size * HEAD_LEADING + baseline(size, size * HEAD_LEADING));
            self.put(&mut bits, line, at, size, self.style.palette.accent, element, i + 1 == lines.len());
        }
        bits
    }

    /// Adds the lines of a paragraph between two edges, without widows or orphans.
    pub(super) fn paragraph(&mut self, runs: &[Run], element: usize, left: f64, right: f64) {
        let style = self.style;
        let lines = self.style.setter.wrap(runs, style.text, right - left);
        let height = style.text * style.leading;
        let count = lines.len();
        for (i, line) in lines.iter().enumerate() {
            // Two lines stay together at either end, so that none is left alone.
            let keep = i == 0 && count > 1 || i + 2 == count;
            let mut slab = self.slab(height, keep);
            slab.extent.cost = if i + 1 < count { INSIDE_TEXT } else { 0.0 };
            let at = Point::new(left, baseline(style.text, height));
            self.put(&mut slab.bits, line, at, style.text, style.palette.text, element, i + 1 == count);
            self.slabs.push(slab);
        }
    }

    fn list(&mut self, numbered: bool, items: &[Vec<Run>], parent: usize) {
        let style = self.style;
        let list = self.document.element(Tag::List(numbered), Some(parent));
        // Numbers of two figures stand clear of the words.
        let indent = style.text * if numbered { 1.9 } else { 1.2 };
        for (i, item) in items.iter().enumerate() {
            let element = self.document.element(Tag::ListItem, Some(list));
            let label = self.document.element(Tag::Label, Some(element));
            let body = self.document.element(Tag::Body, Some(element));
            let first = self.slabs.len();
            self.paragraph(item, body, self.frame.0 + indent, self.frame.0 + self.line_width());
            let at = Point::new(self.frame.0, baseline(style.text, style.text * style.leading));
            let text = if numbered { format!("{}. ", i + 1) } else { "• ".to_owned() };
            let ink = style.palette.accent;
            let bullet = Item::Text(TextItem { face: Face::Bold, ink, ..TextItem::new(text, at, style.text) });
            if let Some(slab) = self.slabs.get_mut(first) {
                slab.bits.push(Bit { owner: Owner::Element(label), language: None, shows: Shows::Items(vec![bullet]) });
            }
            if let Some(slab) = self.slabs.last_mut().filter(|_| i + 1 < items.len()) {
                slab.extent.cost = BETWEEN_ITEMS;
                // Neither the first nor the last item is left alone.
                slab.extent.keep |= i == 0 || i + 2 == items.len();
            }
            self.gap(style.text * 0.3);
        }
        self.gap(style.text * 0.6);
    }

    /// Adds a picture, made smaller where it must be; `headed` where it shares its page with the heading of a section.
    fn figure(&mut self, figure: &Figure, parent: usize, headed: bool) {
        let (style, pictures) = (self.style, self.pictures);
        let Some(drawing) = pictures.shown(figure.shows) else { return };
        let key = figure.key.and_then(|key| pictures.shown(key));
        let bounds = drawing.bounds;
        let caption = caption_lines(figure, style, self.line_width());
        let caption_height = caption.len() as f64 * style.table * style.leading;
        let room = (self.frame.1 - self.frame.0, room_for_picture(figure, key, style, self.line_width(), headed));
        let scale = (room.0 / bounds.width()).min(room.1 / bounds.height()).min(1.0);
        // Less than half a percent is rounding, and no size is promised that isn't kept.
        if scale < 0.995 {
            self.shrunk.push((drawing.title.clone(), scale));
        }
        let element = self.document.element(Tag::Figure(drawing.description.clone()), Some(parent));
        let (width, height) = (bounds.width() * scale, bounds.height() * scale);
        let left = self.frame.0 + (room.0 - width).max(0.0) / 2.0;
        let place =
            Affine::translate((left, 0.0)) * Affine::scale(scale) * Affine::translate(-bounds.origin().to_vec2());
        self.gap(style.text * 0.8);
        let gap = if caption.is_empty() { 0.0 } else { style.text * 0.4 };
        let mut slab = self.slab(height + gap + caption_height, false);
        if !figure.title.is_empty() {
            slab.anchor = Some((String::new(), figure.title.clone(), 3));
        }
        slab.bits.push(Bit {
            owner: Owner::Element(element),
            language: Some(drawing.language),
            shows: Shows::Drawing(drawing.clone(), place),
        });
        let words = self.document.element(Tag::Caption, Some(element));
        let middle = left + width / 2.0;
        for (i, line) in caption.iter().enumerate() {
            let y = height + gap + (i as f64 + 0.5) * style.table * style.leading + CAP_MIDDLE * style.table;
            // A caption broader than its picture may not run out at the left.
            let at = Point::new((middle - line.width / 2.0).max(self.frame.0), y);
            self.put(&mut slab.bits, line, at, style.table, style.palette.text, words, i + 1 == caption.len());
        }
        if let Some(key) = key {
            self.key_under(&mut slab, key, parent);
        }
        self.slabs.push(slab);
        self.gap(style.text * 1.2);
    }

    /// Puts the symbols of a picture under it, in the same slab.
    fn key_under(&mut self, slab: &mut Slab, key: &Arc<Drawing>, parent: usize) {
        let style = self.style;
        let element = self.document.element(Tag::Figure(key.description.clone()), Some(parent));
        let top = slab.extent.height + style.text * KEY_GAP;
        let rule = top - style.text * KEY_GAP / 2.0;
        slab.bits.push(ornament(vec![bar(self.frame.0, rule, self.frame.1, style.hair, style.palette.rule)]));
        let place = Affine::translate((self.frame.0, top)) * Affine::translate(-key.bounds.origin().to_vec2());
        let shows = Shows::Drawing(key.clone(), place);
        slab.bits.push(Bit { owner: Owner::Element(element), language: Some(key.language), shows });
        slab.extent.height = top + key.bounds.height();
    }

    /// A slab with the gap that was asked for above it.
    pub(super) fn slab(&mut self, height: f64, keep: bool) -> Slab {
        let before = std::mem::take(&mut self.next_gap);
        Slab { extent: Extent { before, height, keep, ..Extent::default() }, ..Slab::default() }
    }

    /// Asks for room above the next slab; where it is asked for several times the largest holds.
    pub(super) fn gap(&mut self, gap: f64) {
        self.next_gap = self.next_gap.max(gap);
    }

    /// A row of dots from the end of a title to the place of its page number.
    pub(super) fn dots(&self, title: &str, right: f64, y: f64) -> Bit {
        let style = self.style;
        let start = self.frame.0 + Face::Regular.width(title, style.text) + style.text * 0.6;
        let end = right - style.text * 2.0;
        let mut path = BezPath::new();
        path.move_to((start.min(end), y - style.hair));
        path.line_to((end, y - style.hair));
        let stroke = Stroke {
            width: style.hair * 1.5,
            ink: style.palette.rule,
            ends: Ends::Butt,
            dashes: vec![style.hair * 1.5, style.text * 0.4],
        };
        ornament(vec![Item::Path(PathItem { path, fill: None, stroke: Some(stroke) })])
    }

    /// Puts a line of words.
    #[expect(clippy::too_many_arguments, reason = "a line needs its place, its look and its owner")]
    pub(super) fn put(
        &self,
        bits: &mut Vec<Bit>,
        line: &Line,
        at: Point,
        size: f64,
        ink: Ink,
        element: usize,
        last: bool,
    ) {
        for (language, item) in line.items(at, size, ink, last) {
            // Words of one element in one language are one bit, so that they are read out in one breath.
            let joins = bits.last().is_some_and(|bit| bit.owner == Owner::Element(element) && bit.language == language);
            match bits.last_mut().filter(|_| joins).map(|bit| &mut bit.shows) {
                Some(Shows::Items(items)) => items.push(item),
                _ => bits.push(Bit { owner: Owner::Element(element), language, shows: Shows::Items(vec![item]) }),
            }
        }
    }
}

/// Room above the symbols under a picture, in ems.
const KEY_GAP: f64 = 1.6;

/// Height left for a picture on a page that it shares with its caption and its symbols, and where it is `headed` with a
/// section's heading of one line.
pub(super) fn room_for_picture(
    figure: &Figure,
    key: Option<&Arc<Drawing>>,
    style: &Style,
    line_width: f64,
    headed: bool,
) -> f64 {
    let lines = caption_lines(figure, style, line_width).len();
    room_beside(style, lines, key.map(|key| key.bounds.height()), headed)
}

/// The same for a caption of so many lines and symbols of this height.
pub fn room_beside(style: &Style, lines: usize, key: Option<f64>, headed: bool) -> f64 {
    let caption = lines as f64 * style.table * style.leading + style.text * 0.4;
    let heading = if headed { style.text * 2.2 + style.heads[1] * HEAD_LEADING } else { 0.0 };
    style.height() - caption - heading - key.map_or(0.0, |key| key + style.text * KEY_GAP)
}

fn caption_lines(figure: &Figure, style: &Style, line_width: f64) -> Vec<Line> {
    style.setter.wrap(&figure.words(), style.table, line_width)
}

/// Line distance of headings.
pub(super) const HEAD_LEADING: f64 = 1.2;
/// From the middle of a line to its baseline, in ems: half a capital.
pub(super) const CAP_MIDDLE: f64 = 0.334;

/// Where the baseline of a line lies in its slab.
pub(super) fn baseline(size: f64, height: f64) -> f64 {
    height / 2.0 + CAP_MIDDLE * size
}

/// Ink that is not read out.
pub(super) fn ornament(items: Vec<Item>) -> Bit {
    Bit { owner: Owner::Artifact(Artifact::Ornament), language: None, shows: Shows::Items(items) }
}

/// A filled bar from a corner, `x1` to the right and `thick` down.
pub(super) fn bar(x0: f64, y0: f64, x1: f64, thick: f64, ink: Ink) -> Item {
    let path = outline(Rect::new(x0, y0, x1, y0 + thick));
    Item::Path(PathItem { path, fill: Some(ink), stroke: None })
}

/// The outline of a rectangle, in just the memory it needs: pages of tables hold hundreds.
fn outline(area: Rect) -> BezPath {
    BezPath::from_vec(vec![
        PathEl::MoveTo(area.origin()),
        PathEl::LineTo(Point::new(area.x1, area.y0)),
        PathEl::LineTo(Point::new(area.x1, area.y1)),
        PathEl::LineTo(Point::new(area.x0, area.y1)),
        PathEl::ClosePath,
    ])
}

/// An outlined box.
pub(super) fn frame(area: Rect, width: f64, ink: Ink, fill: Option<Ink>) -> Item {
    let stroke = Stroke { width, ink, ends: Ends::Butt, dashes: Vec::new() };
    Item::Path(PathItem { path: outline(area), fill, stroke: Some(stroke) })
}

/// A line of text that ends at a point.
pub(super) fn ending_at(text: impl Into<String>, at: Point, size: f64, ink: Ink) -> TextItem {
    TextItem { anchor: Anchor::End, ink, ..TextItem::new(text, at, size) }
}
