//! Slabs → pages: shares them out, repeats table heads, adds running heads and page numbers, resolves links.

use std::collections::BTreeMap;

use kurbo::{Affine, Point, Rect, Vec2};

use crate::drawing::{Item, TextItem};
use crate::font::Face;
use crate::report::Diagnostic;
use crate::units::Mm;
use crate::words::{Arg, Words};

use super::flow::{Bit, Flow, Shows, Slab, ending_at};
use super::paginate::{page_starts, places};
use super::{Artifact, Bookmark, Content, Document, Link, Owner, Page, Paper, Piece, Style, Target};

/// Running words of every page but the first.
#[derive(Clone, Debug)]
pub(super) struct Running {
    /// At the head, left.
    pub(super) left: String,
    /// At the head, right.
    pub(super) right: String,
    /// At the foot, left.
    pub(super) foot: String,
}

/// Links and page numbers that wait until every anchor has its page.
#[derive(Default)]
struct Pending {
    links: Vec<(usize, usize, String, Rect, String)>,
    numbers: Vec<(usize, Owner, String, TextItem)>,
}

/// Puts the slabs on pages after those the document has.
pub(super) fn print(flow: Flow<'_>, paper: &Paper) -> Result<(), Diagnostic> {
    let (style, document, slabs, heads) = (flow.style, flow.document, flow.slabs, flow.heads);
    let extents: Vec<_> = slabs.iter().map(|slab| slab.extent).collect();
    let starts = page_starts(&extents, style.height()).map_err(|tall| too_tall(&slabs, tall, paper, style))?;
    let mut pending = Pending::default();
    let mut anchors: BTreeMap<String, Target> = BTreeMap::new();
    let mut rest = slabs.into_iter();
    for (i, &start) in starts.iter().enumerate() {
        let end = starts.get(i + 1).copied().unwrap_or(extents.len());
        let mut page = Page::new(paper.width, paper.height);
        let number = document.pages.len();
        let (places, _) = places(extents.get(start..end).unwrap_or_default());
        for (slab, at) in rest.by_ref().take(end - start).zip(places) {
            let x = if at.second { style.second_column() } else { 0.0 };
            let y = style.top + at.top;
            if let Some((height, bits)) = slab.head.filter(|_| at.headed).and_then(|head| heads.get(head)) {
                bits.iter().cloned().for_each(|bit| place(bit, (x, y - height), number, &mut page, &mut pending));
            }
            if let Some((id, title, level)) = slab.anchor {
                let target = Target { page: number, top: Mm::new(y - 3.0) };
                document.bookmarks.push(Bookmark { title, level, target });
                if !id.is_empty() {
                    anchors.insert(id, target);
                }
            }
            slab.bits.into_iter().for_each(|bit| place(bit, (x, y), number, &mut page, &mut pending));
        }
        document.pages.push(page);
    }
    resolve(document, pending, &anchors);
    Ok(())
}

fn too_tall(slabs: &[Slab], tall: usize, paper: &Paper, style: &Style) -> Diagnostic {
    let height = slabs.get(tall).map_or(0.0, |slab| slab.extent.height + slab.extent.repeat);
    let message = format!(
        "a row or picture {height:.0} mm high can't be put on {} paper, which leaves {:.0} mm for text",
        paper.name,
        style.height()
    );
    Diagnostic::error("too-tall", message).help("choose a larger paper, or leave large print off")
}

fn place(bit: Bit, (x, y): (f64, f64), number: usize, page: &mut Page, pending: &mut Pending) {
    let down = Affine::translate((x, y));
    let piece = match bit.shows {
        Shows::Items(items) => Piece { place: down, ..Piece::items(bit.owner, items) },
        Shows::Drawing(drawing, place) => Piece::drawing(bit.owner, drawing, down * place),
        Shows::PageOf(anchor, item) => {
            let item = TextItem { at: item.at + Vec2::new(x, y), ..item };
            pending.numbers.push((number, bit.owner, anchor, item));
            return;
        }
        Shows::LinkTo(anchor, area, description) => {
            if let Owner::Element(element) = bit.owner {
                let area = area + Vec2::new(x, y);
                pending.links.push((number, element, anchor, area, description));
            }
            return;
        }
    };
    page.pieces.push(Piece { language: bit.language.or(piece.language), ..piece });
}

fn resolve(document: &mut Document, pending: Pending, anchors: &BTreeMap<String, Target>) {
    for (number, element, anchor, area, description) in pending.links {
        let (Some(page), Some(target)) = (document.pages.get_mut(number), anchors.get(&anchor)) else { continue };
        page.links.push(Link { area, target: *target, description, element });
    }
    for (number, owner, anchor, item) in pending.numbers {
        let (Some(page), Some(target)) = (document.pages.get_mut(number), anchors.get(&anchor)) else { continue };
        let item = TextItem { text: (target.page + 1).to_string(), ..item };
        page.pieces.push(Piece::items(owner, vec![Item::Text(item)]));
    }
}

/// Adds running heads and page numbers to every page from `first` on.
pub(super) fn furnish(document: &mut Document, first: usize, style: &Style, words: &Words, running: &Running) {
    let count = document.pages.len();
    let size = style.small;
    for (i, page) in document.pages.iter_mut().enumerate().skip(first) {
        let head = (style.top - style.text * 2.2).max(super::MARGIN.mm() + size * 0.8);
        // The title goes first; what stands at the right takes the room it leaves, or less than a third of the line.
        let left = fit(&running.left, size, style.width() * 0.7);
        let taken = Face::Bold.width(&left, size) + size * 2.0;
        let right = fit(&running.right, size, style.width() - taken);
        let mut items = vec![Item::Text(TextItem {
            ink: style.palette.accent,
            face: Face::Bold,
            ..TextItem::new(left, Point::new(style.left, head), size)
        })];
        if !right.is_empty() {
            items.push(Item::Text(ending_at(right, Point::new(style.right, head), size, style.palette.quiet)));
        }
        page.pieces.push(Piece::items(Owner::Artifact(Artifact::Head), items));
        let (number, of) = (i as u32 + 1, count as u32);
        let words = words.with("page-number", &[("page", Arg::Count(number)), ("pages", Arg::Count(of))]);
        // The page number stands low, but above the edge that printers can't reach.
        let at = Point::new(style.right, page.height.mm() - super::FOOT_MARGIN.mm() - size * 0.3);
        let taken = Face::Bold.width(&words, size) + size * 2.0;
        let number = ending_at(words, at, size, style.palette.quiet);
        let mut items = vec![Item::Text(number)];
        if !running.foot.is_empty() {
            let words = fit(&running.foot, size, style.width() - taken);
            let ink = style.palette.quiet;
            items.push(Item::Text(TextItem { ink, ..TextItem::new(words, Point::new(style.left, at.y), size) }));
        }
        page.pieces.push(Piece::items(Owner::Artifact(Artifact::Foot), items));
    }
}

/// Text cut at its end, with an ellipsis, so that it is no wider than `width`.
pub(super) fn fit(text: &str, size: f64, width: f64) -> String {
    let face = Face::Bold;
    if face.width(text, size) <= width {
        return text.to_owned();
    }
    let mut cut = String::new();
    for c in text.chars() {
        cut.push(c);
        if face.width(&cut, size) + face.width("…", size) > width {
            cut.pop();
            break;
        }
    }
    format!("{}…", cut.trim_end())
}

/// Replaces every character that the typeface lacks in a document, and gives the first text of each.
pub(super) fn printable(document: &mut Document) -> BTreeMap<char, String> {
    let mut lost = BTreeMap::new();
    for piece in document.pages.iter_mut().flat_map(|page| &mut page.pieces) {
        match &mut piece.content {
            Content::Items(items) => items.iter_mut().for_each(|item| clean(item, &mut lost)),
            Content::Drawing(drawing) => {
                if drawing.items.iter().any(lacks) {
                    let mut copy = (**drawing).clone();
                    copy.items.iter_mut().for_each(|item| clean(item, &mut lost));
                    *drawing = std::sync::Arc::new(copy);
                }
            }
        }
    }
    lost
}

fn lacks(item: &Item) -> bool {
    match item {
        Item::Text(text) => text.text.chars().any(|c| c.is_control()) || text.face.missing(&text.text).is_some(),
        Item::Group(group) => group.items.iter().any(lacks),
        Item::Path(_) | Item::Symbol(_) | Item::Photo(_) => false,
    }
}

/// What is printed for a character: a blank for one that controls, a question mark for one that the typeface lacks.
fn printed(c: char, face: Face) -> char {
    match c {
        _ if c.is_control() => ' ',
        _ if face.missing(c.encode_utf8(&mut [0; 4])).is_some() => '?',
        _ => c,
    }
}

fn clean(item: &mut Item, lost: &mut BTreeMap<char, String>) {
    match item {
        Item::Text(text) if text.text.chars().any(|c| c.is_control()) || text.face.missing(&text.text).is_some() => {
            let words = text.text.clone();
            text.text = words.chars().map(|c| printed(c, text.face)).collect();
            for c in words.chars().filter(|c| printed(*c, text.face) == '?' && *c != '?') {
                lost.entry(c).or_insert_with(|| words.clone());
            }
        }
        Item::Group(group) => group.items.iter_mut().for_each(|item| clean(item, lost)),
        Item::Text(_) | Item::Path(_) | Item::Symbol(_) | Item::Photo(_) => {}
    }
}
