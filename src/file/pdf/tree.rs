//! The structure tree.

use std::num::NonZeroU16;

use krilla::tagging::{Identifier, ListNumbering, Node, TableHeaderScope, Tag as PdfTag, TagGroup, TagKind, TagTree};

use super::{Document, Element, Tag};
use crate::page::Scope;

/// Hangs every element under its parent, in order: an element's own ink first, then its children.
pub(super) fn tag_tree(document: &Document, leaves: Vec<Vec<Identifier>>) -> TagTree {
    let mut groups: Vec<Option<TagGroup>> = Vec::with_capacity(document.elements.len());
    for (element, leaves) in document.elements.iter().zip(leaves) {
        groups.push(Some(TagGroup::with_children(kind(element), leaves.into_iter().map(Node::Leaf).collect())));
    }
    // Parents stand before their children, so going backwards every group is complete when it is hung up; children
    // arrive last first and are turned round when their parent's turn comes.
    let mut children: Vec<Vec<TagGroup>> = vec![Vec::new(); document.elements.len()];
    let mut roots = Vec::new();
    for (index, element) in document.elements.iter().enumerate().rev() {
        let Some(mut group) = groups.get_mut(index).and_then(Option::take) else { continue };
        let own = children.get_mut(index).map(std::mem::take).unwrap_or_default();
        group.children.extend(own.into_iter().rev().map(Node::Group));
        if group.children.is_empty() && !may_be_empty(&element.tag) {
            continue;
        }
        match element.parent.and_then(|parent| children.get_mut(parent)) {
            Some(siblings) => siblings.push(group),
            None => roots.push(group),
        }
    }
    let mut tree = TagTree::new();
    for group in roots.into_iter().rev() {
        tree.push(group);
    }
    tree
}

/// An empty cell keeps its place in the row.
fn may_be_empty(tag: &Tag) -> bool {
    matches!(tag, Tag::Cell | Tag::HeaderCell(_))
}

fn kind(element: &Element) -> TagKind {
    let kind: TagKind = match &element.tag {
        Tag::Section => PdfTag::Section.into(),
        Tag::Heading(level, title) => {
            let level = NonZeroU16::new(u16::from(*level)).unwrap_or(NonZeroU16::MIN);
            PdfTag::Hn(level, Some(title.clone())).into()
        }
        Tag::Paragraph => PdfTag::P.into(),
        Tag::List(numbered) => {
            let numbering = if *numbered { ListNumbering::Decimal } else { ListNumbering::Disc };
            PdfTag::L(numbering).into()
        }
        Tag::ListItem => PdfTag::LI.into(),
        Tag::Label => PdfTag::Lbl.into(),
        Tag::Body => PdfTag::LBody.into(),
        Tag::Table(summary) => PdfTag::Table.with_summary(Some(summary.clone())).into(),
        Tag::TableHead => PdfTag::THead.into(),
        Tag::TableBody => PdfTag::TBody.into(),
        Tag::Row => PdfTag::TR.into(),
        Tag::HeaderCell(scope) => PdfTag::TH(match scope {
            Scope::Row => TableHeaderScope::Row,
            Scope::Column => TableHeaderScope::Column,
        })
        .into(),
        Tag::Cell => PdfTag::TD.into(),
        Tag::Figure(alt) => PdfTag::Figure(Some(alt.clone())).into(),
        Tag::Caption => PdfTag::Caption.into(),
        Tag::Contents => PdfTag::TOC.into(),
        Tag::ContentsEntry => PdfTag::TOCI.into(),
        Tag::Reference => PdfTag::Reference.into(),
        Tag::Link => PdfTag::Link.into(),
    };
    kind.with_lang(element.language.map(|language| language.tag().to_owned()))
}
