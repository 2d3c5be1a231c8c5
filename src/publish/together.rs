//! The pieces of one text, drawn together.

use rayon::prelude::*;

use super::draw::{DrawOptions, Format, Shot, written};
use crate::drawing::{Drawing, OneOf, PieceOptions, relaxed, together, together_framed};
use crate::file::Output;
use crate::file::png::PngOptions;
use crate::geometry::piece::{Piece, Stand};
use crate::pattern::Pattern;
use crate::report::{Diagnostic, Report};

/// A piece of a text, solved.
#[derive(Clone, Debug)]
pub struct TextPattern {
    /// What it is called.
    pub name: String,
    /// How many of it are made.
    pub made: u32,
    /// Its rounds and its shape.
    pub pattern: Pattern,
}

/// Endings of the files that show the pieces of a text together.
const ENDINGS: [(&str, Format); 2] = [("-together.svg", Format::Svg), ("-together.png", Format::Png)];

/// Draws the pieces of a text side by side and writes them. Nothing, and an error in the report, where they can't be drawn
/// as asked.
pub fn draw_together(
    pieces: &[TextPattern],
    format: Format,
    asked: &DrawOptions,
    report: &mut Report,
) -> Option<Vec<u8>> {
    if asked.on != Stand::Ground {
        let message = "--on has no meaning for several pieces side by side";
        report.add(Diagnostic::error("misplaced-option", message).help("add `--piece NAME` for one of them"));
        return None;
    }
    let spaces = spaces(pieces);
    let each = side_by_side(pieces, &spaces);
    let drawing = match asked.shot(&OneOf::eye(&each)) {
        Shot::Framed(options) => together_framed(&each, &options),
        Shot::Free(options) => together(&each, &options),
    };
    written(&drawing, format, asked, report)
}

/// The files that show the pieces of a text together, their names beginning with `stem`. Nothing, and errors in the report,
/// where one can't be drawn.
pub fn publish_together(
    pieces: &[TextPattern],
    stem: &str,
    asked: &DrawOptions,
    report: &mut Report,
) -> Option<Vec<Output>> {
    let spaces = spaces(pieces);
    let drawing: Drawing = together(&side_by_side(pieces, &spaces), &PieceOptions::default());
    let asked = DrawOptions { pixels: PngOptions { dpi: super::products::PIECE_DPI, grey: false }, ..asked.clone() };
    let file = |(ending, format): (&str, Format)| {
        let bytes = written(&drawing, format, &asked, report)?;
        Some(Output { name: format!("{stem}{ending}"), bytes })
    };
    ENDINGS.into_iter().map(file).collect()
}

/// Every piece in space; a text has one size of each.
fn spaces(pieces: &[TextPattern]) -> Vec<Option<Piece>> {
    let lay = |piece: &TextPattern| {
        let Pattern { plan, shapes, .. } = &piece.pattern;
        Some(relaxed(plan, plan.sizes.first()?, shapes.first()?))
    };
    pieces.par_iter().map(lay).collect()
}

fn side_by_side<'a>(pieces: &'a [TextPattern], spaces: &'a [Option<Piece>]) -> Vec<OneOf<'a>> {
    let one = |(piece, space): (&'a TextPattern, &'a Option<Piece>)| {
        let Pattern { plan, shapes, .. } = &piece.pattern;
        let (size, body) = plan.sizes.first().zip(shapes.first())?;
        Some(OneOf { name: &piece.name, made: piece.made, plan, size, body, space: space.as_ref()? })
    };
    pieces.iter().zip(spaces).filter_map(one).collect()
}
