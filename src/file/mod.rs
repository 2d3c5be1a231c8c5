//! Stage 6, file: pages and drawings → named bytes.
//!
//! Takes pages, drawings and plans. Gives bytes that depend on nothing but their input: no clock, no locale, no system
//! font, no chance. One module, `save`, writes to disk: beside the old file first, then in its place.

pub mod csv;
pub mod html;
pub mod json;
pub mod pdf;
pub mod png;
pub mod save;
pub mod seal;
pub mod svg;
pub mod text;

/// Decimals of a turn, in degrees, that keep the far end of a symbol within 0.05 mm of its place. Whole degrees say the
/// same few turns again and again, which packs well.
fn turn_decimals(bounds: kurbo::Rect) -> u32 {
    let corners = [bounds.x0, bounds.y0, bounds.x1, bounds.y1];
    let reach = corners.iter().fold(0.0_f64, |reach, side| reach.max(side.abs()));
    match reach {
        reach if reach < 5.7 => 0,
        reach if reach < 57.0 => 1,
        _ => 2,
    }
}

/// A file to be written.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Output {
    /// File name without folder.
    pub name: String,
    /// Its content.
    pub bytes: Vec<u8>,
}
