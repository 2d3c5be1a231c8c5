//! Photographs: the bytes of a PNG or a JPEG → upright pixels, no more of them than print needs, and nothing else that
//! the file holds.
//!
//! Cameras write into their files when, where and with what a picture was taken, and often a small copy of it from before it
//! was cut. None of that may go out with a pattern, so nothing of a file is handed on: it is decoded, turned as the
//! camera was held, made smaller and encoded anew. What can't be decoded is complained of; its size is looked at
//! before its pixels are.

mod decode;
mod scale;
mod turn;

use jpeg_encoder::{Encoder, ImageBuffer, JpegColorType, rgb_to_ycbcr};

use crate::limits;
use crate::report::Diagnostic;

/// Quality of what is printed, of 100: at this one no blocks are seen on paper.
const QUALITY: u8 = 88;

/// What helps where a file can't be used as it is.
const SAVE_ANEW: &str = "open it in a program for pictures and save it anew as JPEG or PNG, in RGB";

/// An upright photograph without anything but its pixels.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Photo {
    width: u32,
    height: u32,
    /// Red, green and blue of every pixel, row by row from the top; as many as the sides say.
    rgb: Vec<[u8; 3]>,
}

impl Photo {
    /// Reads a PNG or a JPEG of at most [`limits::PHOTO_BYTES`] and [`limits::PHOTO_PIXELS`]: turned upright by its
    /// Exif orientation, over white where it can be seen through, and no longer than [`limits::PHOTO_SIDE`].
    /// An error, without a place, where it is none or can't be printed.
    pub fn read(bytes: &[u8]) -> Result<Self, Box<Diagnostic>> {
        if bytes.len() > limits::PHOTO_BYTES {
            let most = limits::PHOTO_BYTES >> 20;
            let message = format!("the photograph has {} bytes; at most {most} MB are read", bytes.len());
            let help =
                format!("save it as a JPEG, or smaller: {} pixels on the long side are printed", limits::PHOTO_SIDE);
            return Err(Box::new(Diagnostic::error("photo-too-large", message).help(help)));
        }
        let decoded = decode::decode(bytes)?;
        let side = limits::PHOTO_SIDE;
        let small = decoded.scaled(fitting((decoded.width, decoded.height), (side, side)));
        Ok(turn::upright(small, decoded.turn))
    }

    /// Pixels across and down.
    pub const fn size(&self) -> (u32, u32) {
        (self.width, self.height)
    }

    /// Its pixels row by row from the top: red, green, blue.
    pub fn pixels(&self) -> &[[u8; 3]] {
        &self.rgb
    }

    /// The same with no more pixels than so many across and down; never with more than it has.
    pub fn within(&self, most: (u32, u32)) -> Self {
        let size = fitting(self.size(), most);
        if size == self.size() { self.clone() } else { scale::scaled(self.size(), size, |row| self.row(row).to_vec()) }
    }

    /// With just so many pixels across and down, each of which at most what it has.
    pub fn shrunk(&self, width: u32, height: u32) -> Self {
        let size = (width.clamp(1, self.width), height.clamp(1, self.height));
        scale::scaled(self.size(), size, |row| self.row(row).to_vec())
    }

    /// A baseline JPEG of it with nothing but what it takes to decode it. Nothing where a side is longer than that format
    /// can say, which none is that was read.
    pub fn jpeg(&self) -> Option<Vec<u8>> {
        let rows = Rows { photo: self, width: self.width.try_into().ok()?, height: self.height.try_into().ok()? };
        let mut bytes = Vec::new();
        Encoder::new(&mut bytes, QUALITY).encode_image(rows).ok()?;
        Some(bytes)
    }

    fn row(&self, row: usize) -> &[[u8; 3]] {
        let width = self.width as usize;
        self.rgb.get(row * width..(row + 1) * width).unwrap_or_default()
    }
}

/// A photograph as the encoder takes it, row by row. An image of a kind that it knows would link the coders of all kinds.
struct Rows<'a> {
    photo: &'a Photo,
    width: u16,
    height: u16,
}

impl ImageBuffer for Rows<'_> {
    fn get_jpeg_color_type(&self) -> JpegColorType {
        JpegColorType::Ycbcr
    }

    fn width(&self) -> u16 {
        self.width
    }

    fn height(&self) -> u16 {
        self.height
    }

    fn fill_buffers(&self, row: u16, [luma, blue, red, _]: &mut [Vec<u8>; 4]) {
        for [r, g, b] in self.photo.row(row.into()) {
            let (y, cb, cr) = rgb_to_ycbcr(*r, *g, *b);
            luma.push(y);
            blue.push(cb);
            red.push(cr);
        }
    }
}

/// The largest sides of the same proportion that go into `most`; as they are where they do.
fn fitting((width, height): (u32, u32), most: (u32, u32)) -> (u32, u32) {
    let by = (f64::from(most.0) / f64::from(width)).min(f64::from(most.1) / f64::from(height)).min(1.0);
    let side = |side: u32, most: u32| ((f64::from(side) * by).round() as u32).clamp(1, most.max(1));
    (side(width, most.0), side(height, most.1))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn sides_keep_their_proportion_and_never_grow() {
        for (size, most, expected) in [
            ((4000, 3000), (2400, 2400), (2400, 1800)),
            ((3000, 4000), (2400, 2400), (1800, 2400)),
            ((400, 300), (2400, 2400), (400, 300)),
            ((400, 300), (200, 10), (13, 10)),
            ((50_000, 1), (2400, 2400), (2400, 1)),
        ] {
            assert_eq!(fitting(size, most), expected, "{size:?} into {most:?}");
        }
    }
}
