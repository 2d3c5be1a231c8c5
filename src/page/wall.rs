//! The wall chart: a chart at true size with its title and key, on one large sheet or tiled on home paper.

mod marks;
mod tiles;

use std::sync::Arc;

use kurbo::{Affine, Point, Rect};

use crate::drawing::{Drawing, Item};
use crate::report::{Diagnostic, Report};
use crate::units::{Mm, TOLERANCE};
use crate::words::{Arg, Words};

use super::booklet::{complain_of_lost, title_of};
use super::flow::{CAP_MIDDLE, HEAD_LEADING};
use super::lines::Line;
use super::{
    Artifact, Bookmark, Document, FOOT_MARGIN, MARGIN, Options, Owner, Page, Paper, Piece, Style, Tag, Target,
};
use crate::story::{Run, Story};

pub use tiles::{OVERLAP, Tiling, filling, tiling};

/// Room between title, chart and key.
const GAP: f64 = 6.0;
/// Lowest chart that is drawn; a sheet with less room is too small, and is said to be.
const LEAST_CHART: Mm = Mm::new(30.0);
/// Room left over, so that rounding never makes a sheet too small for itself.
const SLACK: f64 = 0.5;
/// Share of the width that a line of facts may be reckoned to fill: set as a whole it is a little wider than its words
/// and spaces one by one, which letters draw nearer to or further from.
const SPACED: f64 = 0.99;
/// Side of the check square.
pub(super) const CHECK: f64 = 50.0;
/// Room that the check square takes from the width of the key on one sheet.
pub const KEY_INSET: Mm = Mm::new(CHECK + GAP + 1.0);

/// What a wall chart shows.
#[derive(Clone, Debug)]
pub struct Wall {
    /// Index of the size in the plan.
    pub size: usize,
    /// The chart, drawn at the size at which it hangs.
    pub chart: Arc<Drawing>,
    /// Its symbols, explained.
    pub key: Option<Arc<Drawing>>,
    /// True where the symbols take so much of the sheet that they go on a second one.
    pub apart: bool,
}

/// Something on the sheet: what it is, what it shows, where.
struct Placed {
    owner: Owner,
    content: PlacedContent,
    room: Rect,
}

enum PlacedContent {
    Items(Vec<Item>),
    Drawing(Arc<Drawing>, Affine),
}

/// A sheet of any size, before it is printed whole or in tiles.
#[derive(Default)]
struct Sheet {
    placed: Vec<Placed>,
    width: f64,
    height: f64,
}

/// Room for the chart of a size on one sheet of this paper, with its title above and a key of `key_height` below.
pub fn chart_room(story: &Story<'_>, size: usize, paper: &Paper, key_height: Mm, options: &Options) -> (Mm, Mm) {
    let (width, height) = paper.printable();
    let options = Options { paper: paper.clone(), ..options.clone() };
    // The height of the title hangs on the width of the sheet: it is laid out to be measured.
    let band = Band::new(story, size, &options, width.mm()).map_or(0.0, |band| band.height());
    let others = Mm::new(band + 2.0 * GAP + key_height.mm().max(CHECK + 2.0) + SLACK);
    (width, (height - others).max(LEAST_CHART))
}

/// Lays the chart out on one sheet at true size, which lies on its side where it doesn't fit upright, with its symbols
/// below it or on a second sheet. Nothing, and an error in the report, where it fits neither way.
pub fn one_sheet(story: &Story<'_>, wall: &Wall, options: &Options, report: &mut Report) -> Option<Document> {
    let upright = &options.paper;
    // What is complained of is the sheet as it was asked for, not the one that was tried after it.
    let document = on_sheet(story, wall, options, upright)
        .or_else(|complaint| on_sheet(story, wall, options, &upright.turned()).map_err(|_| complaint));
    finish(document.map_err(|complaint| report.add(complaint)).ok()?, story, report)
}

/// The chart on one sheet of just this paper, or the reason why it doesn't fit.
fn on_sheet(story: &Story<'_>, wall: &Wall, options: &Options, paper: &Paper) -> Result<Document, Diagnostic> {
    paper.check()?;
    let (width, height) = paper.printable();
    let mut document = begin(story);
    let below = wall.key.as_ref().filter(|_| !wall.apart);
    let sheet = compose(&mut document, story, wall, below, options, (width.mm(), 1)).unwrap_or_default();
    if sheet.width > width.mm() + TOLERANCE || sheet.height > height.mm() + TOLERANCE {
        return Err(too_large(&sheet, paper));
    }
    let mut page = Page::new(paper.width, paper.height);
    let shift = Affine::translate((MARGIN.mm(), MARGIN.mm()));
    page.pieces.extend(sheet.placed.iter().map(|placed| placed.piece(shift, None)));
    page.pieces.extend(marks::check_square(
        Point::new(paper.width.mm() - MARGIN.mm() - CHECK - 1.0, paper.height.mm() - FOOT_MARGIN.mm() - CHECK - 1.0),
        &wall_style(paper, options),
    ));
    document.pages.push(page);
    if let Some(key) = wall.key.as_ref().filter(|_| wall.apart) {
        key_sheet(&mut document, key, paper, options)?;
    }
    Ok(document)
}

/// Adds a sheet with the symbols.
fn key_sheet(document: &mut Document, key: &Arc<Drawing>, paper: &Paper, options: &Options) -> Result<(), Diagnostic> {
    let style = wall_style(paper, options);
    let (width, height) = paper.printable();
    let mut sheet = Sheet { placed: Vec::new(), width: key.bounds.width(), height: 0.0 };
    let title = Words::of(document.language).say("page-key");
    let root = document.element(Tag::Section, None);
    let heading = document.element(Tag::Heading(2, title.clone()), Some(root));
    let lines = style.setter.wrap(&[Run::bold(title.clone())], style.heads[1], width.mm());
    sheet.lines(&lines, style.heads[1], HEAD_LEADING, style.palette.accent, heading);
    sheet.height += GAP;
    sheet.figure(document, key, root, 0.0);
    if sheet.width > width.mm() + TOLERANCE || sheet.height > height.mm() + TOLERANCE {
        return Err(too_large(&sheet, paper));
    }
    let mut page = Page::new(paper.width, paper.height);
    let shift = Affine::translate((MARGIN.mm(), MARGIN.mm()));
    page.pieces.extend(sheet.placed.iter().map(|placed| placed.piece(shift, None)));
    let target = Target { page: document.pages.len(), top: Mm::ZERO };
    document.bookmarks.push(Bookmark { title, level: 2, target });
    document.pages.push(page);
    Ok(())
}

/// Lays the chart out at true size in tiles on home paper: first a sheet with the map and the check square, then the
/// tiles A1, A2 … B1 …, row by row. Nothing, and an error in the report, where the paper is too small.
pub fn tiled(story: &Story<'_>, wall: &Wall, options: &Options, report: &mut Report) -> Option<Document> {
    if let Err(complaint) = options.paper.check() {
        report.add(complaint);
        return None;
    }
    let mut document = begin(story);
    let least = wall.key.as_ref().map_or(0.0, |key| key.bounds.width());
    let width = wall.chart.bounds.width().max(least);
    // The map is read before the chart, so its elements come first.
    let map = tiles::Map::reserve(&mut document, &story.words);
    let sheet = compose(&mut document, story, wall, wall.key.as_ref(), options, (width, 2))?;
    tiles::print(&mut document, &sheet, wall, &story.words, options, map);
    finish(document, story, report)
}

fn begin(story: &Story<'_>) -> Document {
    let title = story.words.with("page-wall-title", &[("title", Arg::Text(&title_of(story)))]);
    let mut document = Document::new(title.clone(), story.words.language);
    document.author = story.designer().map(str::to_owned);
    document.bookmarks.push(Bookmark { title, level: 1, target: Target { page: 0, top: Mm::ZERO } });
    document
}

fn finish(mut document: Document, story: &Story<'_>, report: &mut Report) -> Option<Document> {
    complain_of_lost(&mut document, story, report);
    Some(document)
}

fn too_large(sheet: &Sheet, paper: &Paper) -> Diagnostic {
    let (width, height) = paper.printable();
    let message = format!(
        "the wall chart is {:.0} × {:.0} mm with its title and key; {} paper has {:.0} × {:.0} mm inside its margins",
        sheet.width,
        sheet.height,
        paper.name,
        width.mm(),
        height.mm()
    );
    Diagnostic::error("wall-too-large", message).help("choose larger paper, or print it in tiles")
}

/// Type of a wall chart: it grows with the sheet, which is read from further away.
fn wall_style(paper: &Paper, options: &Options) -> Style {
    let mut style = Style::new(paper, options.print, options.large);
    let grow = growth(paper);
    // Not the tables: a wall chart has none.
    for size in [&mut style.text, &mut style.small, &mut style.hair, &mut style.heads[0]] {
        *size *= grow;
    }
    style
}

/// How much larger letters and symbols of the key are on a wall sheet than on A4.
pub fn growth(paper: &Paper) -> f64 {
    (paper.width.min(paper.height).mm() / Paper::a4().width.mm()).sqrt().max(1.0)
}

/// What stands above a chart: its title, and the facts below it.
struct Band {
    style: Style,
    size_of_title: f64,
    title: Vec<Line>,
    facts: Vec<Line>,
}

impl Band {
    /// The band of a size so wide, in the type that goes with the paper of `options`.
    fn new(story: &Story<'_>, size: usize, options: &Options, width: f64) -> Option<Self> {
        let style = wall_style(&options.paper, options);
        let title = title_of(story);
        let natural = crate::font::Face::Bold.width(&title, 1.0);
        // On one line where that can be; smaller than its facts a title is no longer one, and breaks instead.
        let size_of_title = style.heads[0].min((width - 0.1) / natural.max(0.1)).max(style.text);
        // Whose it is hangs with it: a chart on a wall has no other page.
        let foot = story.foot();
        let facts = [story.size_facts(size)?, foot].into_iter().filter(|said| !said.is_empty());
        let facts = facts.flat_map(|said| style.setter.wrap(&[Run::new(said)], style.text, width * SPACED)).collect();
        let title = style.setter.wrap(&[Run::bold(title)], size_of_title, width);
        Some(Self { title, facts, size_of_title, style })
    }

    fn height(&self) -> f64 {
        let title = self.title.len() as f64 * self.size_of_title * HEAD_LEADING;
        title + self.facts.len() as f64 * self.style.text * self.style.leading
    }
}

/// Title over chart over key, so wide, the title a heading of that level.
fn compose(
    document: &mut Document,
    story: &Story<'_>,
    wall: &Wall,
    key: Option<&Arc<Drawing>>,
    options: &Options,
    (width, level): (f64, u8),
) -> Option<Sheet> {
    let band = Band::new(story, wall.size, options, width)?;
    let style = &band.style;
    let root = document.element(Tag::Section, None);
    let mut sheet = Sheet { placed: Vec::new(), width, height: 0.0 };
    let heading = document.element(Tag::Heading(level, title_of(story)), Some(root));
    sheet.lines(&band.title, band.size_of_title, HEAD_LEADING, style.palette.accent, heading);
    let about = document.element(Tag::Paragraph, Some(root));
    sheet.lines(&band.facts, style.text, style.leading, style.palette.text, about);
    sheet.height += GAP;
    let chart = wall.chart.bounds;
    sheet.figure(document, &wall.chart, root, (width - chart.width()) / 2.0);
    sheet.width = width.max(chart.width());
    sheet.height += GAP;
    match key {
        // The check square stands beside the key, and may be the higher of the two.
        Some(key) => {
            let from = sheet.height;
            sheet.figure(document, key, root, 0.0);
            sheet.width = sheet.width.max(key.bounds.width());
            sheet.height = sheet.height.max(from + CHECK + 2.0);
        }
        None => sheet.height += CHECK + 2.0,
    }
    Some(sheet)
}

impl Sheet {
    fn lines(&mut self, lines: &[Line], size: f64, leading: f64, ink: crate::drawing::Ink, element: usize) {
        for (i, line) in lines.iter().enumerate() {
            let at = Point::new(0.0, self.height + size * leading / 2.0 + CAP_MIDDLE * size);
            let items = line.items(at, size, ink, i + 1 == lines.len()).into_iter().map(|(_, item)| item).collect();
            let room = Rect::new(0.0, self.height, line.width, self.height + size * leading);
            self.placed.push(Placed { owner: Owner::Element(element), content: PlacedContent::Items(items), room });
            self.height += size * leading;
        }
    }

    fn figure(&mut self, document: &mut Document, drawing: &Arc<Drawing>, root: usize, left: f64) {
        let element = document.element(Tag::Figure(drawing.description.clone()), Some(root));
        let bounds = drawing.bounds;
        let place = Affine::translate((left, self.height)) * Affine::translate(-bounds.origin().to_vec2());
        let room = place.transform_rect_bbox(bounds);
        let content = PlacedContent::Drawing(drawing.clone(), place);
        self.placed.push(Placed { owner: Owner::Element(element), content, room });
        self.height += bounds.height();
    }
}

impl Placed {
    fn piece(&self, shift: Affine, clip: Option<Rect>) -> Piece {
        let piece = match &self.content {
            PlacedContent::Items(items) => Piece { place: shift, ..Piece::items(self.owner, items.clone()) },
            PlacedContent::Drawing(drawing, place) => Piece::drawing(self.owner, drawing.clone(), shift * *place),
        };
        Piece { clip, ..piece }
    }
}

/// Pieces that are marks and not read out.
fn mark(items: Vec<Item>) -> Piece {
    Piece::items(Owner::Artifact(Artifact::Marks), items)
}
