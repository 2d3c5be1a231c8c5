//! Stage 1, design: YAML text → [`Design`].
//!
//! Takes the text of a design file. Gives a [`Design`] in which every length is in millimetres, every default is filled
//! in and every value that can be wrong later keeps its [`Place`](crate::report::Place). Promises that nothing is left
//! to guess: sizes, depths and widths are there once for every size, ranges are sane, names are known. Fails with
//! complaints that point at line and column and say what to do; many at a time.

mod fields;
mod folds;
pub mod hats;
pub mod heads;
pub mod hooks;
pub mod kinds;
mod materials;
mod measure;
mod model;
mod multiples;
mod names;
mod openings;
mod own;
mod palettes;
mod parts;
mod photograph;
mod plausible;
mod printed;
mod raw;
mod repeats;
mod resolve;
mod rounds;
mod rows;
pub mod shapes;
mod sizes;
mod slips;
mod starter;
mod stitches;
#[cfg(test)]
mod tests;
mod tree;
pub mod weights;

pub(crate) use fields::{listed, nearest, shortened};
pub use kinds::{Kind, SizeFigure};
pub use model::*;
pub use printed::Printed;
pub use rows::{ReferenceMiss, reference, schema};
pub use shapes::Shape;
pub use starter::STARTER;
pub(crate) use stitches::of_rounds;

use crate::limits;
use crate::report::{Diagnostic, Place, Report};

/// Reads a design from the bytes of its file: UTF-8, with or without a byte order mark, up to [`limits::BYTES`]. Places are
/// those of the text as [`text_of`] gives it.
pub fn read_bytes(bytes: &[u8], report: &mut Report) -> Option<Design> {
    let text = text_of(bytes, report)?;
    read(text, report)
}

/// The text of a design file without its byte order mark, or a complaint that it is no text or too large.
pub fn text_of<'b>(bytes: &'b [u8], report: &mut Report) -> Option<&'b str> {
    if bytes.len() > limits::BYTES {
        let message = format!("the file has {} bytes; a design has at most {}", bytes.len(), limits::BYTES);
        report.add(Diagnostic::error("file-too-large", message).help("is this the right file?"));
        return None;
    }
    match std::str::from_utf8(bytes) {
        Ok(text) => Some(text.strip_prefix('\u{feff}').unwrap_or(text)),
        Err(error) => {
            let sound = std::str::from_utf8(&bytes[..error.valid_up_to()]).unwrap_or_default();
            let message = "the file is not UTF-8 text";
            let help = "save it again as UTF-8; is it really a design and not a picture or a word processor's file?";
            let place = Place::in_text(sound, sound.len(), 0);
            report.add(Diagnostic::error("not-utf-8", message).at(place).help(help));
            None
        }
    }
}

/// Reads a design from its text. Gives nothing once the report holds an error, and then as many complaints at a time as
/// can be found; warnings and notes go beside the design.
pub fn read(text: &str, report: &mut Report) -> Option<Design> {
    if text.len() > limits::BYTES {
        text_of(text.as_bytes(), report)?;
    }
    let root = tree::parse(text, report)?;
    let raw = raw::read(text, root, raw::Extent::Whole, report)?;
    resolve::resolve(&raw, report)
}

/// Reads what goes with written rounds in a file of their own: a whole design, or one that leaves out title, sizes and
/// parts, which are then empty. Swatch and complaints are as in [`read`].
pub fn read_swatch(text: &str, report: &mut Report) -> Option<Design> {
    if text.len() > limits::BYTES {
        text_of(text.as_bytes(), report)?;
    }
    let root = tree::parse(text, report)?;
    let raw = raw::read(text, root, raw::Extent::Swatch, report)?;
    resolve::resolve(&raw, report)
}
