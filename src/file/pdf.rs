//! PDF, from pages or from one drawing: tagged by PDF/UA-1, with real text, and the same bytes for the same input.

mod items;
mod tree;

use std::sync::Arc;

use krilla::annotation::{Annotation, LinkAnnotation, Target as LinkTarget};
use krilla::configure::{Accessibility, ConfigurationBuilder};
use krilla::destination::{Destination, XyzDestination};
use krilla::error::KrillaError;
use krilla::geom::{Point, Rect};
use krilla::metadata::Metadata;
use krilla::outline::{Outline, OutlineNode};
use krilla::page::PageSettings;
use krilla::tagging::{ArtifactType, ContentTag, Identifier, SpanTag};
use krilla::{Document as Pdf, SerializeSettings};
use kurbo::Affine;

use crate::drawing::Drawing;
use crate::page::{Artifact, Bookmark, Document, Element, Owner, Page, Tag, Target};
use crate::report::Diagnostic;
use crate::units::Mm;

use items::{Store, matrix};

/// Writes a document.
///
/// # Errors
/// A document without pages or title, or one that PDF/UA-1 forbids; the message names the reason.
pub fn write(document: &Document) -> Result<Vec<u8>, Diagnostic> {
    if document.pages.is_empty() {
        return Err(Diagnostic::error("no-pages", "there are no pages to write"));
    }
    let mut pdf = Pdf::new_with(settings()?);
    let mut store = Store::new()?;
    let mut leaves: Vec<Vec<Identifier>> = vec![Vec::new(); document.elements.len()];
    for page in &document.pages {
        write_page(&mut pdf, document, page, &mut store, &mut leaves)?;
    }
    pdf.set_tag_tree(tree::tag_tree(document, leaves));
    pdf.set_outline(outline(document));
    pdf.set_metadata(metadata(document));
    pdf.finish().map_err(refused)
}

/// Writes one drawing as a document of one page of its own size, a figure with its alternative text.
///
/// # Errors
/// As [`write`].
pub fn write_drawing(drawing: &Drawing) -> Result<Vec<u8>, Diagnostic> {
    let bounds = drawing.bounds;
    let sheet = (Mm::new(bounds.width()), Mm::new(bounds.height()));
    let place = Affine::translate(-bounds.origin().to_vec2());
    let document = Document::of_drawing(Arc::new(drawing.clone()), sheet, place);
    write(&document)
}

fn settings() -> Result<SerializeSettings, Diagnostic> {
    let configuration = ConfigurationBuilder::new().with_accessibility_validator(Accessibility::UA1).finish();
    let configuration =
        configuration.map_err(|_| Diagnostic::error("pdf", "PDF/UA-1 does not go with this version of PDF"))?;
    Ok(SerializeSettings { configuration, enable_tagging: true, ..SerializeSettings::default() })
}

fn metadata(document: &Document) -> Metadata {
    let metadata = Metadata::new()
        .title(document.title.clone())
        .language(document.language.tag().to_owned())
        .creator("Roundelay".to_owned())
        .authors(document.author.clone().into_iter().collect());
    metadata.document_id(format!("roundelay:{}", document.title))
}

fn write_page(
    pdf: &mut Pdf,
    document: &Document,
    page: &Page,
    store: &mut Store,
    leaves: &mut [Vec<Identifier>],
) -> Result<(), Diagnostic> {
    let (width, height) = (page.width.points() as f32, page.height.points() as f32);
    let settings = PageSettings::from_wh(width, height)
        .ok_or_else(|| Diagnostic::error("pdf", format!("a page of {width} × {height} points can't be written")))?;
    let mut sheet = pdf.start_page_with(settings);
    let mut surface = sheet.surface();
    surface.push_transform(&matrix(Affine::scale(Mm::new(1.0).points())));
    for piece in &page.pieces {
        let tag = piece.language.filter(|language| *language != document.language).map(|language| language.tag());
        let tag = match piece.owner {
            Owner::Element(_) => ContentTag::Span(SpanTag::empty().with_lang(tag)),
            Owner::Artifact(kind) => ContentTag::Artifact(artifact(kind)),
        };
        let identifier = surface.start_tagged(tag);
        store.piece(&mut surface, piece);
        surface.end_tagged();
        if let Some(leaf) = leaf_of(piece.owner, leaves) {
            leaf.push(identifier);
        }
    }
    surface.pop();
    surface.finish();
    for link in &page.links {
        let scale = Mm::new(1.0).points();
        let (x0, y0, x1, y1) = (link.area.x0 * scale, link.area.y0 * scale, link.area.x1 * scale, link.area.y1 * scale);
        let Some(area) = Rect::from_ltrb(x0 as f32, y0 as f32, x1 as f32, y1 as f32) else { continue };
        let target = LinkTarget::Destination(Destination::Xyz(destination(document, link.target)));
        let annotation = Annotation::new_link(LinkAnnotation::new(area, target), Some(link.description.clone()));
        let identifier = sheet.add_tagged_annotation(annotation);
        if let Some(leaf) = leaves.get_mut(link.element) {
            leaf.push(identifier);
        }
    }
    sheet.finish();
    Ok(())
}

fn leaf_of(owner: Owner, leaves: &mut [Vec<Identifier>]) -> Option<&mut Vec<Identifier>> {
    match owner {
        Owner::Element(element) => leaves.get_mut(element),
        Owner::Artifact(_) => None,
    }
}

fn artifact(kind: Artifact) -> krilla::tagging::Artifact {
    krilla::tagging::Artifact::with_kind(match kind {
        Artifact::Head => ArtifactType::Header,
        Artifact::Foot => ArtifactType::Footer,
        Artifact::Ornament => ArtifactType::Layout,
        Artifact::Marks => ArtifactType::Page,
    })
}

/// Page index and distance from the top, in points, kept inside the document.
fn destination(document: &Document, target: Target) -> XyzDestination {
    let page = target.page.min(document.pages.len().saturating_sub(1));
    XyzDestination::new(page, Point::from_xy(0.0, target.top.points() as f32))
}

fn outline(document: &Document) -> Outline {
    let mut outline = Outline::new();
    let mut rest = document.bookmarks.as_slice();
    while let Some(node) = branch(document, &mut rest, 1) {
        outline.push_child(node);
    }
    outline
}

/// The first bookmark of `rest` with everything deeper that follows it; a bookmark above `level` ends the branch.
fn branch(document: &Document, rest: &mut &[Bookmark], level: u8) -> Option<OutlineNode> {
    let (first, mut after) = rest.split_first().filter(|(first, _)| first.level >= level)?;
    let mut node = OutlineNode::new(first.title.clone(), destination(document, first.target));
    while let Some(child) = branch(document, &mut after, first.level + 1) {
        node.push_child(child);
    }
    *rest = after;
    Some(node)
}

fn refused(error: KrillaError) -> Diagnostic {
    let reason = if let KrillaError::Validation(reasons) = &error {
        reasons.iter().map(|(reason, _)| format!("{reason:?}")).collect::<Vec<_>>().join("; ")
    } else {
        error.to_string()
    };
    Diagnostic::error("pdf", format!("the PDF can't be written: {reason}"))
}

/// Ready-made parts of a document for tests of the writers.
#[cfg(test)]
mod tests {
    use kurbo::{BezPath, Circle, Rect, Shape};

    use super::*;
    use crate::drawing::{Anchor, Ink, Item, PathItem, Stroke, Symbol, SymbolItem, TextItem};
    use crate::page::{Piece, Scope};
    use crate::words::Language;

    /// A chart-like drawing of `count` placed symbols.
    pub(crate) fn dotted(count: usize) -> Drawing {
        let ring = Circle::new((0.0, 0.0), 1.0).to_path(0.01);
        let stroke = Stroke { width: 0.18, ink: Ink::BLACK, ends: Default::default(), dashes: Vec::new() };
        let path = PathItem { path: ring, fill: None, stroke: Some(stroke) };
        let symbol = Symbol { paths: vec![path], bounds: Rect::new(-1.1, -1.1, 1.1, 1.1), loose: false };
        let place = |i: usize| {
            crate::units::Angle::from_radians(i as f64 * 0.11).rotation()
                * Affine::translate((5.0 + i as f64 * 0.035, 0.0))
        };
        let mut items: Vec<Item> =
            (0..count).map(|i| Item::Symbol(SymbolItem { key: "o".into(), place: place(i) })).collect();
        let label = TextItem { anchor: Anchor::Middle, halo: 0.3, ..TextItem::new("Rnd 12", (0.0, 0.0).into(), 4.0) };
        items.push(Item::Text(label));
        Drawing {
            bounds: Rect::new(-95.0, -95.0, 95.0, 95.0),
            title: "Dots".into(),
            description: "Dots on a spiral, of no meaning.".into(),
            language: Language::EN,
            symbols: [("o".to_owned(), symbol)].into(),
            items,
        }
    }

    #[test]
    fn a_drawing_becomes_a_small_file_and_the_same_one_each_time() {
        let drawing = dotted(2400);
        let bytes = write_drawing(&drawing).unwrap();
        assert!(bytes.starts_with(b"%PDF-1.7") && bytes.len() < 80_000, "{} bytes", bytes.len());
        assert_eq!(bytes, write_drawing(&drawing).unwrap());
    }

    #[test]
    fn a_figure_without_words_is_refused() {
        let complaint = write_drawing(&Drawing { description: String::new(), ..dotted(2) }).unwrap_err();
        assert!(complaint.message.contains("MissingAltText"), "{}", complaint.message);
    }

    #[test]
    fn a_character_without_a_glyph_is_refused_and_not_printed_as_a_box() {
        let mut drawing = dotted(0);
        drawing.items.push(Item::Text(TextItem::new("あ", (0.0, 10.0).into(), 4.0)));
        assert!(write_drawing(&drawing).is_err());
    }

    #[test]
    fn every_tag_can_be_written() {
        let mut document = Document::new("All tags", Language::EN);
        let mut page = Page::new(Mm::new(210.0), Mm::new(297.0));
        let section = document.element(Tag::Section, None);
        let mut say = |document: &mut Document, tag: Tag, parent: usize, y: f64| {
            let element = document.element(tag, Some(parent));
            let text = Item::Text(TextItem::new("words", (20.0, y).into(), 4.0));
            page.pieces.push(Piece::items(Owner::Element(element), vec![text]));
            element
        };
        say(&mut document, Tag::Heading(1, "words".into()), section, 20.0);
        say(&mut document, Tag::Paragraph, section, 30.0);
        let list = document.element(Tag::List(false), Some(section));
        let item = document.element(Tag::ListItem, Some(list));
        say(&mut document, Tag::Label, item, 40.0);
        say(&mut document, Tag::Body, item, 45.0);
        let table = document.element(Tag::Table("two words".into()), Some(section));
        for (part, cell) in [(Tag::TableHead, Tag::HeaderCell(Scope::Column)), (Tag::TableBody, Tag::Cell)] {
            let part = document.element(part, Some(table));
            let row = document.element(Tag::Row, Some(part));
            say(&mut document, cell, row, 60.0);
        }
        page.pieces.push(Piece::items(
            Owner::Artifact(Artifact::Ornament),
            vec![Item::Path(PathItem { path: BezPath::new(), fill: Some(Ink::BLACK), stroke: None })],
        ));
        document.pages.push(page);
        document.bookmarks.push(Bookmark {
            title: "words".into(),
            level: 1,
            target: Target { page: 0, top: Mm::new(10.0) },
        });
        assert!(write(&document).is_ok());
    }
}
