//! The piece in a frame of one shape, as shops and social pages show pictures.

use kurbo::{Point, Rect, Shape, Vec2};

use super::{PieceOptions, draw_piece};
use crate::drawing::key::wrap;
use crate::drawing::{Anchor, Drawing, Ink, Item, PathItem, TextItem};
use crate::font::Face;
use crate::geometry::SideShape;
use crate::geometry::piece::{Eye, Piece};
use crate::plan::{Plan, SizePlan};
use crate::units::Mm;

/// How a piece is framed.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct FrameOptions {
    /// Width of the frame.
    pub width: Mm,
    /// Its height over its width.
    pub ratio: f64,
    /// True for the title of the piece at its foot.
    pub titled: bool,
    /// Where the piece is seen from; nothing for what suits it.
    pub eye: Option<Eye>,
}

/// Clear room within the frame, as a share of its width.
const INSET: f64 = 0.05;

/// Em height of the title, as a share of the width, and its line distance in that.
const TITLE: (f64, f64) = (0.05, 1.25);

/// Most lines of the title.
const TITLE_LINES: usize = 2;

/// Draws a piece on white within a frame, as large as it fits, its title below it where that is wished.
pub fn framed(plan: &Plan, size: &SizePlan, (body, space): (&SideShape, &Piece), options: &FrameOptions) -> Drawing {
    let title = if options.titled { plan.design.title.value.trim() } else { "" };
    frame(title, options, |width, height| {
        draw_piece(plan, size, body, space, &PieceOptions { width, height, eye: options.eye, scale: None })
    })
}

/// What is drawn for the room within a frame, with its title at the foot, if any.
pub(super) fn frame(title: &str, options: &FrameOptions, draw: impl FnOnce(Mm, Mm) -> Drawing) -> Drawing {
    let (wide, high) = (options.width.mm(), options.width.mm() * options.ratio);
    let inset = INSET * wide;
    let title = if title.is_empty() { Vec::new() } else { lines(title, wide - 2.0 * inset) };
    let letters = title.first().map_or(0.0, |(_, size)| *size);
    let foot = if title.is_empty() { 0.0 } else { inset / 2.0 + TITLE.1 * letters * title.len() as f64 };
    let room = Rect::new(inset, inset, wide - inset, high - inset - foot);
    let drawn = draw(Mm::new(room.width()), Mm::new(room.height()));
    let by: Vec2 = room.center() - drawn.bounds.center();
    let bounds = Rect::new(0.0, 0.0, wide, high);
    let mut items = vec![Item::Path(PathItem { path: bounds.to_path(0.1), fill: Some(Ink::WHITE), stroke: None })];
    items.extend(drawn.items.iter().map(|item| item.moved(by)));
    for (number, (words, letters)) in title.into_iter().enumerate() {
        let y = room.y1 + inset / 2.0 + TITLE.1 * letters * number as f64 + Face::Bold.cap_height(letters);
        let line = TextItem::new(words, Point::new(wide / 2.0, y), letters);
        items.push(Item::Text(TextItem { face: Face::Bold, anchor: Anchor::Middle, ink: INK, ..line }));
    }
    Drawing { bounds, items, ..drawn }
}

/// Ink of the title.
const INK: Ink = Ink([0x1c, 0x1c, 0x1c]);

/// The title in lines with their em height: smaller letters where it is long.
fn lines(words: &str, width: f64) -> Vec<(String, f64)> {
    let mut letters = TITLE.0 * width / (1.0 - 2.0 * INSET);
    loop {
        let lines = wrap(words, Face::Bold, letters, width);
        let fits = lines.iter().all(|line| Face::Bold.width(line, letters) <= width);
        if fits && lines.len() <= TITLE_LINES || letters < width / 60.0 {
            return lines.into_iter().map(|line| (line, letters)).collect();
        }
        letters *= 0.9;
    }
}
