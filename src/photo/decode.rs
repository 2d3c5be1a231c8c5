//! The bytes of a PNG or a JPEG → pixels, and how the camera was held. Sides are looked at before pixels are.

use std::io::Cursor;

use png::{Decoder, Transformations};
use zune_jpeg::JpegDecoder;
use zune_jpeg::zune_core::colorspace::ColorSpace;
use zune_jpeg::zune_core::options::DecoderOptions;

use super::turn::Turn;
use super::{Photo, SAVE_ANEW, scale};
use crate::limits;
use crate::report::Diagnostic;

/// Longest side that either format can say in a JPEG.
const LONGEST: usize = 65_535;

/// Pixels as they stand in a file.
pub(super) struct Decoded {
    pub(super) width: u32,
    pub(super) height: u32,
    /// Samples a pixel: grey, grey and opacity, colour, colour and opacity.
    channels: usize,
    samples: Vec<u8>,
    pub(super) turn: Turn,
}

impl Decoded {
    /// With so many pixels across and down, before it is turned.
    pub(super) fn scaled(&self, size: (u32, u32)) -> Photo {
        scale::scaled((self.width, self.height), size, |row| self.row(row))
    }

    /// A row in red, green and blue; what can be seen through lies on white.
    fn row(&self, row: usize) -> Vec<[u8; 3]> {
        let long = self.width as usize * self.channels;
        let row = self.samples.get(row * long..(row + 1) * long).unwrap_or_default();
        let over = |sample: u8, opacity: u8| {
            let (sample, opacity) = (u32::from(sample), u32::from(opacity));
            ((sample * opacity + 255 * (255 - opacity) + 127) / 255) as u8
        };
        let pixel = |samples: &[u8]| match *samples {
            [grey] => [grey; 3],
            [grey, opacity] => [over(grey, opacity); 3],
            [red, green, blue] => [red, green, blue],
            [red, green, blue, opacity] => [red, green, blue].map(|sample| over(sample, opacity)),
            _ => [255; 3],
        };
        row.chunks_exact(self.channels).map(pixel).collect()
    }
}

/// Decodes either format, which its first bytes tell apart.
pub(super) fn decode(bytes: &[u8]) -> Result<Decoded, Box<Diagnostic>> {
    // ISO/IEC 15948, 5.2, and ISO/IEC 10918-1, B.1.1.3.
    if bytes.starts_with(b"\x89PNG\r\n\x1a\n") {
        return of_png(bytes);
    }
    if bytes.starts_with(b"\xff\xd8\xff") {
        return of_jpeg(bytes);
    }
    let message = "the file of the photograph is neither a PNG nor a JPEG";
    Err(Box::new(Diagnostic::error("photo-no-picture", message).help(SAVE_ANEW)))
}

fn of_png(bytes: &[u8]) -> Result<Decoded, Box<Diagnostic>> {
    let mut decoder = Decoder::new(Cursor::new(bytes));
    decoder.set_transformations(Transformations::normalize_to_color8());
    let info = decoder.read_header_info().map_err(|_| broken())?;
    let (width, height) = (info.width, info.height);
    weigh(width as usize, height as usize)?;
    let mut reader = decoder.read_info().map_err(|_| broken())?;
    let info = reader.info();
    let turn = info.exif_metadata.as_ref().map_or_else(Turn::default, |exif| Turn::of_exif(exif));
    let channels = reader.output_color_type().0.samples();
    let mut samples = vec![0; reader.output_buffer_size().ok_or_else(broken)?];
    reader.next_frame(&mut samples).map_err(|_| broken())?;
    Ok(Decoded { width, height, channels, samples, turn })
}

fn of_jpeg(bytes: &[u8]) -> Result<Decoded, Box<Diagnostic>> {
    // Plain loops everywhere: other instructions, chosen by the processor, might round otherwise. And nothing is made up for
    // data that are missing.
    let options = DecoderOptions::default()
        .set_use_unsafe(false)
        .set_strict_mode(true)
        .set_max_width(LONGEST)
        .set_max_height(LONGEST);
    let mut decoder = JpegDecoder::new_with_options(Cursor::new(bytes), options);
    decoder.decode_headers().map_err(|_| broken())?;
    let info = decoder.info().ok_or_else(broken)?;
    weigh(info.width.into(), info.height.into())?;
    let (out, channels) = match decoder.input_colorspace() {
        Some(ColorSpace::Luma) => (ColorSpace::Luma, 1),
        Some(ColorSpace::YCbCr | ColorSpace::RGB) => (ColorSpace::RGB, 3),
        Some(ColorSpace::CMYK | ColorSpace::YCCK) => {
            let message =
                "the photograph is in CMYK, the colours of a printing press, which no screen shows as they are";
            return Err(Box::new(Diagnostic::error("photo-in-cmyk", message).help(SAVE_ANEW)));
        }
        _ => return Err(broken()),
    };
    let turn = decoder.exif().map_or_else(Turn::default, |exif| Turn::of_exif(exif));
    decoder.set_options(options.jpeg_set_out_colorspace(out));
    let samples = decoder.decode().map_err(|_| broken())?;
    let (width, height) = (u32::from(info.width), u32::from(info.height));
    Ok(Decoded { width, height, channels, samples, turn })
}

/// Refuses what would take more memory than a photograph is worth.
fn weigh(width: usize, height: usize) -> Result<(), Box<Diagnostic>> {
    if width as u64 * height as u64 <= limits::PHOTO_PIXELS {
        return Ok(());
    }
    let most = limits::PHOTO_PIXELS / 1_000_000;
    let message = format!("the photograph has {width} × {height} pixels; at most {most} million are read");
    let help = format!("save it smaller: {} pixels on the long side are printed", limits::PHOTO_SIDE);
    Err(Box::new(Diagnostic::error("photo-too-large", message).help(help)))
}

fn broken() -> Box<Diagnostic> {
    let message = "the file of the photograph is broken, or of a rare kind";
    Box::new(Diagnostic::error("photo-broken", message).help(SAVE_ANEW))
}
