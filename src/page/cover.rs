//! The cover: title, picture, and the facts a maker looks for first.

use std::sync::Arc;

use kurbo::{Affine, Point};

use crate::drawing::{Drawing, Ink, Item, printed_at};
use crate::words::Arg;

use super::booklet::title_of;
use super::flow::{CAP_MIDDLE, HEAD_LEADING, bar};
use super::lines::Line;
use super::{Artifact, Bookmark, Document, Owner, Page, Paper, Pictures, Piece, Style, Tag, Target};
use crate::story::{Run, Story};
use crate::units::Mm;

/// Most lines of the title at its full size; longer titles are set smaller.
const TITLE_LINES: usize = 3;
/// Least height of the cover picture; where less is left, it is left out.
const LEAST_PICTURE: f64 = 30.0;
/// Most of the cover below the title that the facts take; what doesn't fit stands in the sections anyway.
const FACTS: f64 = 0.4;

/// A page in the making, filled from the top.
struct Sheet<'a> {
    style: &'a Style,
    page: Page,
    y: f64,
}

impl Sheet<'_> {
    fn lines(&mut self, lines: &[Line], x: f64, size: f64, leading: f64, ink: Ink, element: usize) {
        for (i, line) in lines.iter().enumerate() {
            let at = Point::new(x, self.y + size * leading / 2.0 + CAP_MIDDLE * size);
            for (language, item) in line.items(at, size, ink, i + 1 == lines.len()) {
                self.page.pieces.push(Piece { language, ..Piece::items(Owner::Element(element), vec![item]) });
            }
            self.y += size * leading;
        }
    }

    fn ornament(&mut self, items: Vec<Item>) {
        self.page.pieces.push(Piece::items(Owner::Artifact(Artifact::Ornament), items));
    }
}

/// Adds the cover as the next page; gives the facts that found no room on it.
pub(super) fn add(
    document: &mut Document,
    story: &Story<'_>,
    pictures: &Pictures,
    paper: &Paper,
    style: &Style,
    root: usize,
) -> Vec<(String, String)> {
    let mut sheet = Sheet { style, page: Page::new(paper.width, paper.height), y: style.top - 4.0 };
    head(document, &mut sheet, story, root);
    let facts = Facts::fitting(story, style, (style.foot - sheet.y) * FACTS);
    let top = style.foot - facts.height;
    if let Some(drawing) = &pictures.cover {
        picture(document, &mut sheet, drawing, root, top - style.text * 1.6);
    }
    sheet.y = top;
    facts.put(document, &mut sheet, root);
    let number = document.pages.len();
    document.bookmarks.push(Bookmark {
        title: title_of(story),
        level: 1,
        target: Target { page: number, top: Mm::ZERO },
    });
    document.pages.push(sheet.page);
    facts.left
}

fn head(document: &mut Document, sheet: &mut Sheet<'_>, story: &Story<'_>, root: usize) {
    let style = sheet.style;
    sheet.ornament(vec![bar(style.left, sheet.y, style.left + 26.0, style.strong * 1.6, style.palette.accent)]);
    sheet.y += style.text * 1.4;
    let title = title_of(story);
    let element = document.element(Tag::Heading(1, title.clone()), Some(root));
    let mut size = style.heads[0];
    let mut lines = style.setter.wrap(&[Run::bold(title.clone())], size, style.width());
    while lines.len() > TITLE_LINES && size > style.text {
        size = (size * 0.85).max(style.text);
        lines = style.setter.wrap(&[Run::bold(title.clone())], size, style.width());
    }
    sheet.lines(&lines, style.left, size, HEAD_LEADING, style.palette.accent, element);
    sheet.y += style.text * 0.5;
    let kind = document.element(Tag::Paragraph, Some(root));
    let size = style.text * if style.text > 5.0 { 1.0 } else { 1.15 };
    let lines = style.setter.wrap(&[Run::new(story.words.say("page-pattern"))], size, style.width());
    sheet.lines(&lines, style.left, size, style.leading, style.palette.text, kind);
    if let Some(designer) = story.designer() {
        let by = document.element(Tag::Paragraph, Some(root));
        let text = story.words.with("page-designed-by", &[("name", Arg::Text(designer))]);
        let lines = style.setter.wrap(&[Run::new(text)], style.text, style.width());
        sheet.lines(&lines, style.left, style.text, style.leading, style.palette.quiet, by);
    }
    if let Some(about) = story.about() {
        sheet.y += style.text * 0.8;
        let element = document.element(Tag::Paragraph, Some(root));
        let lines = style.setter.wrap(&[Run::new(about)], style.text, style.line_width);
        sheet.lines(&lines, style.left, style.text, style.leading, style.palette.text, element);
    }
    if let Some(dedication) = story.dedication() {
        sheet.y += style.text * 0.8;
        let element = document.element(Tag::Paragraph, Some(root));
        let lines = style.setter.wrap(&[Run::new(dedication)], style.text, style.line_width);
        sheet.lines(&lines, style.left, style.text, style.leading, style.palette.quiet, element);
    }
    sheet.y += style.text * 1.2;
}

fn picture(document: &mut Document, sheet: &mut Sheet<'_>, drawing: &Arc<Drawing>, root: usize, foot: f64) {
    let (style, bounds) = (sheet.style, drawing.bounds);
    let room = foot - sheet.y;
    if room < LEAST_PICTURE || bounds.width() <= 0.0 || bounds.height() <= 0.0 {
        return;
    }
    let scale = (style.width() / bounds.width()).min(room / bounds.height());
    let left = style.left + (style.width() - bounds.width() * scale) / 2.0;
    let top = sheet.y + (room - bounds.height() * scale) / 2.0;
    let place = Affine::translate((left, top)) * Affine::scale(scale) * Affine::translate(-bounds.origin().to_vec2());
    let figure = document.element(Tag::Figure(drawing.description.clone()), Some(root));
    sheet.page.pieces.push(Piece::drawing(Owner::Element(figure), printed_at(drawing, scale), place));
}

/// The facts at the foot of the cover, in columns, each a name over what is said of it.
struct Facts {
    rows: Vec<Vec<(Vec<Line>, Vec<Line>)>>,
    pitch: f64,
    height: f64,
    /// Those that there is no room for.
    left: Vec<(String, String)>,
}

impl Facts {
    fn fitting(story: &Story<'_>, style: &Style, room: f64) -> Self {
        let facts = story.facts();
        let columns = if style.width() / style.text > 38.0 { 2 } else { 1 };
        let gap = style.text * 1.6;
        let pitch = (style.width() + gap) / columns as f64;
        let set = facts.iter().map(|(name, fact)| {
            let fact = style.setter.wrap(&[Run::new(fact.clone())], style.text, pitch - gap);
            (style.setter.wrap(&[Run::bold(name.clone())], style.small, pitch - gap), fact)
        });
        let set: Vec<(Vec<Line>, Vec<Line>)> = set.collect();
        let mut rows: Vec<Vec<_>> = set.chunks(columns).map(<[_]>::to_vec).collect();
        let mut heights: Vec<f64> = rows.iter().map(|row| row_height(row, style)).collect();
        while rows.len() > 1 && heights.iter().sum::<f64>() > room {
            rows.pop();
            heights.pop();
        }
        let height = heights.iter().sum();
        let left = facts.into_iter().skip(rows.len() * columns).collect();
        Self { rows, pitch, height, left }
    }

    fn put(&self, document: &mut Document, sheet: &mut Sheet<'_>, root: usize) {
        let style = sheet.style;
        let list = document.element(Tag::List(false), Some(root));
        for row in &self.rows {
            let top = sheet.y;
            sheet.ornament(vec![bar(style.left, top, style.right, style.hair, style.palette.rule)]);
            for (i, (name, fact)) in row.iter().enumerate() {
                let item = document.element(Tag::ListItem, Some(list));
                let label = document.element(Tag::Label, Some(item));
                let body = document.element(Tag::Body, Some(item));
                let x = style.left + i as f64 * self.pitch;
                sheet.y = top + style.text * 0.45;
                sheet.lines(name, x, style.small, style.leading, style.palette.accent, label);
                sheet.lines(fact, x, style.text, style.leading, style.palette.text, body);
            }
            sheet.y = top + row_height(row, style);
        }
    }
}

fn row_height(row: &[(Vec<Line>, Vec<Line>)], style: &Style) -> f64 {
    let heights = row
        .iter()
        .map(|(name, fact)| (name.len() as f64 * style.small + fact.len() as f64 * style.text) * style.leading);
    heights.fold(0.0, f64::max) + style.text * 1.0
}
