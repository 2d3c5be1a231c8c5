//! Marks for printing and joining sheets: none of them is read out.

use kurbo::{BezPath, Circle, Point, Rect, Shape};

use crate::drawing::{Anchor, Ends, Ink, Item, PathItem, ROUGH, Stroke, TextItem};

use super::{CHECK, Style, mark};
use crate::page::Piece;
use crate::page::flow::frame;

/// Arm of a register cross.
const ARM: f64 = 4.0;

/// A square of 50 mm with its measure inside, its top left corner at `corner`.
pub(super) fn check_square(corner: Point, style: &Style) -> Vec<Piece> {
    let area = Rect::from_origin_size(corner, (CHECK, CHECK));
    let label = TextItem {
        anchor: Anchor::Middle,
        ink: style.palette.quiet,
        ..TextItem::new("50 mm", area.center() + kurbo::Vec2::new(0.0, style.small * 0.35), style.small)
    };
    vec![mark(vec![frame(area, style.hair * 1.4, style.palette.text, None), Item::Text(label)])]
}

/// A register mark: a cross in a ring, the same on both sheets that meet there.
pub(super) fn register(at: Point, width: f64, ink: Ink) -> Vec<Item> {
    let mut cross = BezPath::new();
    cross.move_to((at.x - ARM, at.y));
    cross.line_to((at.x + ARM, at.y));
    cross.move_to((at.x, at.y - ARM));
    cross.line_to((at.x, at.y + ARM));
    [cross, Circle::new(at, ARM * 0.5).to_path(ROUGH)].into_iter().map(|path| line(path, width, ink)).collect()
}

/// A line to cut along.
pub(super) fn cut(from: Point, to: Point, width: f64, ink: Ink) -> Item {
    let mut path = BezPath::new();
    path.move_to(from);
    path.line_to(to);
    let stroke = Stroke { width, ink, ends: Ends::Butt, dashes: vec![3.0, 2.0] };
    Item::Path(PathItem { path, fill: None, stroke: Some(stroke) })
}

fn line(path: BezPath, width: f64, ink: Ink) -> Item {
    let stroke = Stroke { width, ink, ends: Ends::Butt, dashes: Vec::new() };
    Item::Path(PathItem { path, fill: None, stroke: Some(stroke) })
}
