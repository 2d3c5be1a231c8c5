//! A large sheet cut into tiles for home paper.

use std::sync::Arc;

use kurbo::{Affine, Point, Rect, Shape, Vec2};

use crate::drawing::{Anchor, Drawing, Item, TextItem};
use crate::font::Face;
use crate::page::flow::{baseline, frame};
use crate::page::{
    Artifact, Bookmark, Document, FOOT_MARGIN, MARGIN, Options, Owner, Page, Paper, Piece, Style, Tag, Target,
};
use crate::story::Run;
use crate::units::{EPSILON, Mm};
use crate::words::{Arg, Words};

use super::{CHECK, Placed, PlacedContent, Sheet, Wall, mark, marks};

/// Width of the strip that neighbouring tiles share.
pub const OVERLAP: Mm = Mm::new(12.0);
/// Strip at the foot of each tile for its name.
const NAME: f64 = 9.0;

/// How a sheet is cut.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Tiling {
    /// Tiles side by side.
    pub columns: usize,
    /// Rows of tiles.
    pub rows: usize,
    /// Width of a tile, the shared strips included.
    pub width: Mm,
    /// Height of a tile, the shared strips included.
    pub height: Mm,
}

/// Cuts a sheet of `width` × `height` into tiles that fit the paper: ⌈(W − o)/(w − o)⌉ each way, o being what two
/// tiles share.
pub fn tiling(width: Mm, height: Mm, paper: &Paper) -> Tiling {
    let (tile_width, printable) = paper.printable();
    let tile_height = printable - Mm::new(NAME);
    Tiling {
        columns: tiles_along(width, tile_width),
        rows: tiles_along(height, tile_height),
        width: tile_width,
        height: tile_height,
    }
}

/// How many tiles a side takes; one that fits but for rounding takes no more.
fn tiles_along(whole: Mm, tile: Mm) -> usize {
    ((whole - OVERLAP) / (tile - OVERLAP) - EPSILON).ceil().max(1.0) as usize
}

/// The sheet that as many tiles of home paper make as the printable area of `sheet` takes: drawn for it, a chart fills
/// the tiles.
pub fn filling(sheet: &Paper, home: &Paper) -> Paper {
    let (width, height) = sheet.printable();
    let tiles = tiling(width, height, home);
    let last = tiles.area(tiles.rows - 1, tiles.columns - 1);
    let (width, height) = (Mm::new(last.x1) + MARGIN * 2.0, Mm::new(last.y1) + MARGIN + FOOT_MARGIN);
    Paper { width, height, ..sheet.clone() }
}

impl Tiling {
    /// The part of the sheet that a tile shows.
    fn area(&self, row: usize, column: usize) -> Rect {
        let (width, height, overlap) = (self.width.mm(), self.height.mm(), OVERLAP.mm());
        let corner = Point::new(column as f64 * (width - overlap), row as f64 * (height - overlap));
        Rect::from_origin_size(corner, (width, height))
    }

    /// Its name: a letter for the row, a number for the column.
    fn name(row: usize, column: usize) -> String {
        let mut letters = String::new();
        let mut rest = row + 1;
        while rest > 0 {
            letters.insert(0, char::from(b'A' + ((rest - 1) % 26) as u8));
            rest = (rest - 1) / 26;
        }
        format!("{letters}{}", column + 1)
    }

    fn each(&self) -> impl Iterator<Item = (usize, usize)> + '_ {
        (0..self.rows).flat_map(|row| (0..self.columns).map(move |column| (row, column)))
    }
}

/// Elements of the sheet with the map.
pub(super) struct Map {
    title: usize,
    heading: usize,
    how: usize,
    check: usize,
    figure: usize,
}

impl Map {
    pub(super) fn reserve(document: &mut Document, words: &Words) -> Self {
        let root = document.element(Tag::Section, None);
        let title = Tag::Heading(1, document.title.clone());
        Self {
            title: document.element(title, Some(root)),
            heading: document.element(Tag::Heading(2, words.say("page-map")), Some(root)),
            how: document.element(Tag::Paragraph, Some(root)),
            check: document.element(Tag::Paragraph, Some(root)),
            figure: document.element(Tag::Figure(words.say("page-map")), Some(root)),
        }
    }
}

/// Adds the sheet with the map, then the tiles.
pub(super) fn print(
    document: &mut Document,
    sheet: &Sheet,
    wall: &Wall,
    words: &Words,
    options: &Options,
    elements: Map,
) {
    let style = Style::new(&options.paper, options.print, options.large);
    let tiles = tiling(Mm::new(sheet.width), Mm::new(sheet.height), &options.paper);
    let page = map_page(document, sheet, &tiles, words, &style, options, &elements);
    document.pages.push(page);
    // The picture is centred on the tiles, so that the outer tiles are filled alike.
    let last = tiles.area(tiles.rows - 1, tiles.columns - 1);
    let centre = Vec2::new((last.x1 - sheet.width) / 2.0, (last.y1 - sheet.height) / 2.0);
    for (row, column) in tiles.each() {
        let area = tiles.area(row, column);
        let to_page = Vec2::new(MARGIN.mm() - area.x0, MARGIN.mm() - area.y0);
        let clip = area + to_page;
        let mut page = Page::new(options.paper.width, options.paper.height);
        let shown = area - centre;
        // A tile writes only what it shows, so that twenty tiles are not twenty whole charts.
        for placed in sheet.placed.iter().filter(|placed| !placed.room.intersect(shown).is_zero_area()) {
            page.pieces.push(placed.piece(Affine::translate(to_page + centre), Some(clip)));
        }
        page.pieces.push(mark(tile_marks(&tiles, row, column, clip, &style)));
        let name = Tiling::name(row, column);
        let count = (tiles.rows * tiles.columns) as u32;
        let label = words.with("page-tile-of", &[("name", Arg::Text(&name)), ("count", Arg::Count(count))]);
        let at = Point::new(MARGIN.mm(), clip.y1 + NAME - 2.0);
        let text = TextItem { face: Face::Bold, ink: style.palette.accent, ..TextItem::new(label, at, style.small) };
        let title = TextItem {
            anchor: Anchor::End,
            ink: style.palette.quiet,
            ..TextItem::new(
                crate::page::press::fit(&wall.chart.title, style.small, clip.width() * 0.6),
                Point::new(clip.x1, at.y),
                style.small,
            )
        };
        let foot = vec![Item::Text(text), Item::Text(title)];
        page.pieces.push(Piece::items(Owner::Artifact(Artifact::Foot), foot));
        let target = Target { page: document.pages.len(), top: Mm::ZERO };
        let title = words.with("page-tile", &[("name", Arg::Text(&name))]);
        document.bookmarks.push(Bookmark { title, level: 2, target });
        document.pages.push(page);
    }
}

/// Cut lines along the middle of every shared strip, and register marks where they cross.
fn tile_marks(tiling: &Tiling, row: usize, column: usize, clip: Rect, style: &Style) -> Vec<Item> {
    // Just inside the clip: on its edge half of a line would be cut away.
    let ends = clip.inflate(-style.hair, -style.hair);
    let half = OVERLAP.mm() / 2.0;
    let ink = style.palette.rule;
    let (left, right) = (column > 0, column + 1 < tiling.columns);
    let (above, below) = (row > 0, row + 1 < tiling.rows);
    let xs: Vec<f64> = [(left, clip.x0 + half), (right, clip.x1 - half)].into_iter().filter_map(on).collect();
    let ys: Vec<f64> = [(above, clip.y0 + half), (below, clip.y1 - half)].into_iter().filter_map(on).collect();
    let mut items = Vec::new();
    for &x in &xs {
        items.push(marks::cut(Point::new(x, ends.y0), Point::new(x, ends.y1), style.hair, ink));
        items.extend(marks::register(Point::new(x, clip.center().y), style.hair, ink));
    }
    for &y in &ys {
        items.push(marks::cut(Point::new(ends.x0, y), Point::new(ends.x1, y), style.hair, ink));
        items.extend(marks::register(Point::new(clip.center().x, y), style.hair, ink));
    }
    for &x in &xs {
        for &y in &ys {
            items.extend(marks::register(Point::new(x, y), style.hair, ink));
        }
    }
    items
}

fn on((there, value): (bool, f64)) -> Option<f64> {
    there.then_some(value)
}

/// The first sheet: what to do, the check square, and the map.
fn map_page(
    document: &mut Document,
    sheet: &Sheet,
    tiling: &Tiling,
    words: &Words,
    style: &Style,
    options: &Options,
    elements: &Map,
) -> Page {
    let mut page = Page::new(options.paper.width, options.paper.height);
    let mut y = style.top;
    let title = words.say("page-map");
    let overlap = (OVERLAP.mm().round() as u32).to_string();
    let how = words.with("page-map-how", &[("overlap", Arg::Text(&overlap))]);
    let text_left = style.left + CHECK + 8.0;
    let mut put = |runs: &[Run], size: f64, left: f64, ink, element: usize, y: &mut f64| {
        let height = size * style.leading;
        // Headings run as far as the page does, text only as far as an eye follows.
        let widest = if size > style.text { f64::INFINITY } else { style.line_width };
        let lines = style.setter.wrap(runs, size, (style.right - left).min(widest));
        for (i, line) in lines.iter().enumerate() {
            let at = Point::new(left, *y + baseline(size, height));
            let items = line.items(at, size, ink, i + 1 == lines.len()).into_iter().map(|(_, item)| item).collect();
            page.pieces.push(Piece::items(Owner::Element(element), items));
            *y += height;
        }
    };
    let name = [Run::bold(document.title.clone())];
    put(&name, style.heads[1] * 1.4, style.left, style.palette.accent, elements.title, &mut y);
    y += style.text * 0.6;
    put(&[Run::bold(title)], style.heads[1], style.left, style.palette.text, elements.heading, &mut y);
    y += style.text;
    let top = y;
    put(&[Run::new(how)], style.text, text_left, style.palette.text, elements.how, &mut y);
    y += style.text * 0.6;
    put(&[Run::new(words.say("page-check-square"))], style.text, text_left, style.palette.text, elements.check, &mut y);
    page.pieces.extend(marks::check_square(Point::new(style.left, top), style));
    y = y.max(top + CHECK) + style.text * 2.0;
    let names: Vec<String> = tiling.each().map(|(row, column)| Tiling::name(row, column)).collect();
    let alt = format!("{}{}{}", words.say("page-map"), words.colon(), names.join(", "));
    if let Some(element) = document.elements.get_mut(elements.figure) {
        element.tag = Tag::Figure(alt);
    }
    let room = Rect::new(style.left, y, style.right, style.foot);
    page.pieces.extend(map(sheet, tiling, room, style, elements.figure));
    page
}

/// The sheet made small, with the tiles over it.
fn map(sheet: &Sheet, tiling: &Tiling, room: Rect, style: &Style, figure: usize) -> Vec<Piece> {
    let last = tiling.area(tiling.rows - 1, tiling.columns - 1);
    let scale = (room.width() / last.x1).min(room.height() / last.y1);
    let centre = Vec2::new((last.x1 - sheet.width) / 2.0, (last.y1 - sheet.height) / 2.0);
    let to_page = Affine::translate(room.origin().to_vec2()) * Affine::scale(scale);
    let mut pieces: Vec<Piece> = Vec::new();
    let drawings = sheet.placed.iter().filter_map(Placed::drawing);
    for (drawing, place) in drawings {
        // Only its outline: at this scale the chart itself would be a grey blot.
        let outline = (to_page * Affine::translate(centre) * place).transform_rect_bbox(drawing.bounds);
        // A chart of whole rings is a disc, one repeat is not; the map shows which.
        let round = (outline.width() / outline.height() - 1.0).abs() < 0.1;
        let path = if round { outline.to_ellipse().to_path(0.05) } else { outline.to_path(0.1) };
        let item = Item::Path(crate::drawing::PathItem {
            path,
            fill: style.palette.tint,
            stroke: Some(outline_stroke(style)),
        });
        pieces.push(Piece::items(Owner::Element(figure), vec![item]));
    }
    let mut items = Vec::new();
    for (row, column) in tiling.each() {
        let area = to_page.transform_rect_bbox(tiling.area(row, column));
        items.push(frame(area, style.hair * 1.4, style.palette.accent, None));
        let size = style.heads[2].min(area.height() * 0.3);
        let label = TextItem {
            face: Face::Bold,
            anchor: Anchor::Middle,
            ink: style.palette.accent,
            halo: size * 0.15,
            ..TextItem::new(Tiling::name(row, column), area.center() + Vec2::new(0.0, size * 0.35), size)
        };
        items.push(Item::Text(label));
    }
    pieces.push(Piece::items(Owner::Element(figure), items));
    pieces
}

fn outline_stroke(style: &Style) -> crate::drawing::Stroke {
    let ends = crate::drawing::Ends::Butt;
    crate::drawing::Stroke { width: style.hair, ink: style.palette.rule, ends, dashes: Vec::new() }
}

impl Placed {
    fn drawing(&self) -> Option<(&Arc<Drawing>, Affine)> {
        match &self.content {
            PlacedContent::Drawing(drawing, place) => Some((drawing, *place)),
            PlacedContent::Items(_) => None,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn tiles_cover_the_sheet_and_share_their_edges() {
        for (width, height) in [(100.0, 100.0), (190.0, 263.0), (191.0, 264.0), (841.0, 1189.0), (368.0, 500.0)] {
            let tiling = tiling(Mm::new(width), Mm::new(height), &Paper::a4());
            let last = tiling.area(tiling.rows - 1, tiling.columns - 1);
            assert!(last.x1 >= width - 1e-6 && last.y1 >= height - 1e-6, "{width} × {height}: {tiling:?}");
            let fewer = last.x1 - (tiling.width - OVERLAP).mm();
            assert!(tiling.columns == 1 || fewer < width, "{width}: a column too many");
            let (first, second) = (tiling.area(0, 0), tiling.area(0, 1));
            assert!((first.x1 - second.x0 - OVERLAP.mm()).abs() < 1e-9);
        }
    }

    #[test]
    fn tiles_are_named_by_row_and_column() {
        assert_eq!([Tiling::name(0, 0), Tiling::name(1, 2), Tiling::name(26, 0)], ["A1", "B3", "AA1"]);
    }
}
