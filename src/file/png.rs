//! SVG → PNG through resvg, with no font but our own, at any resolution, in colour or grey.

use std::borrow::Cow;
use std::io::Write;
use std::sync::{Arc, LazyLock};

use kurbo::Rect;
use resvg::usvg;
use tiny_skia::{Color, ColorU8, FilterQuality, Pixmap, PixmapPaint, Transform};

use super::svg;
use crate::drawing::{Drawing, Item};
use crate::font::{FAMILY, Face};
use crate::photo::Photo;
use crate::report::{Diagnostic, Report};

/// Most pixels written: about an A1 sheet at 300 dpi, which takes some 300 MB while it is drawn.
const MOST_PIXELS: f64 = 75e6;

/// Pixels above which a warning is given: about A2 at 300 dpi.
const MANY_PIXELS: f64 = 36e6;

/// Things that are drawn at once: what resvg makes of a symbol takes a hundred times its room in the drawing.
const LAYER: usize = 5_000;

/// How a picture is turned into pixels.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PngOptions {
    /// Pixels an inch.
    pub dpi: f64,
    /// True for shades of grey, which takes half the room.
    pub grey: bool,
}

impl Default for PngOptions {
    fn default() -> Self {
        Self { dpi: 300.0, grey: false }
    }
}

/// Draws a drawing on white, by way of its SVG. Nothing, and an error in the report, where the picture would be larger than
/// can be drawn; a warning where it is very large.
pub fn draw(drawing: &Drawing, options: &PngOptions, report: &mut Report) -> Option<Vec<u8>> {
    let things = loose(&drawing.items);
    let photo = |item: &Item| matches!(item, Item::Photo(_));
    // Vectors first, if only none of them: they say how large the sheet is.
    let mut layers: Vec<&[&Item]> = if things.first().is_none_or(|item| photo(item)) { vec![&[]] } else { Vec::new() };
    layers.extend(things.chunk_by(|one, other| !photo(one) && !photo(other)).flat_map(|run| run.chunks(LAYER)));
    fn written<'d>(drawing: &Drawing, layer: &[&'d Item]) -> Layer<'d> {
        match layer {
            [Item::Photo(item)] => Layer::Photo(&item.photo, item.area - drawing.bounds.origin().to_vec2()),
            vectors => {
                let items: Vec<Item> = vectors.iter().copied().cloned().collect();
                Layer::Vectors(svg::write_layer(drawing, &items).into())
            }
        }
    }
    let words = [("Title", drawing.title.as_str()), ("Description", drawing.description.as_str())];
    told(paint(layers.into_iter().map(|layer| written(drawing, layer)), (options, &words), report), report)
}

/// Draws an SVG on white. Nothing, and an error in the report, where the text is no SVG or the picture would be larger
/// than can be drawn; a warning where it is very large.
pub fn render(svg: &str, options: &PngOptions, report: &mut Report) -> Option<Vec<u8>> {
    told(paint([Layer::Vectors(svg.into())], (options, &[]), report), report)
}

fn told(drawn: Result<Vec<u8>, Box<Diagnostic>>, report: &mut Report) -> Option<Vec<u8>> {
    drawn.map_err(|complaint| report.add(*complaint)).ok()
}

/// The things of a drawing, back to front, out of their groups: those have no look of their own.
fn loose(items: &[Item]) -> Vec<&Item> {
    let mut things = Vec::new();
    for item in items {
        match item {
            Item::Group(group) => things.extend(loose(&group.items)),
            Item::Path(_) | Item::Text(_) | Item::Symbol(_) | Item::Photo(_) => things.push(item),
        }
    }
    things
}

/// What is painted at once.
enum Layer<'a> {
    /// An SVG of the size of the sheet.
    Vectors(Cow<'a, str>),
    /// A photograph over this room of the sheet, mm.
    Photo(&'a Photo, Rect),
}

/// Draws one layer over the other, the first on white. The picture carries `words` under their keywords.
fn paint<'a>(
    layers: impl IntoIterator<Item = Layer<'a>>,
    (options, words): (&PngOptions, &[(&str, &str)]),
    report: &mut Report,
) -> Result<Vec<u8>, Box<Diagnostic>> {
    if !(options.dpi.is_finite() && options.dpi > 0.0) {
        let error = Diagnostic::error("dpi-out-of-range", format!("{} dpi is no resolution", options.dpi));
        return Err(Box::new(error.help("give a number above 0, such as 150 for a screen or 300 for print")));
    }
    let reading = reading_options();
    let scale = (options.dpi / 96.0) as f32;
    let mut canvas = None;
    for layer in layers {
        let text = match layer {
            Layer::Vectors(text) => text,
            Layer::Photo(photo, area) => {
                if let Some(canvas) = &mut canvas {
                    lay(canvas, photo, area, options.dpi / 25.4);
                }
                continue;
            }
        };
        let tree = usvg::Tree::from_str(&text, &reading).map_err(|cause| {
            Diagnostic::error("svg-unreadable", format!("the drawing can't be read as SVG: {cause}"))
        })?;
        let pixmap = match &mut canvas {
            Some(pixmap) => pixmap,
            None => canvas.insert(blank(tree.size(), options, report)?),
        };
        resvg::render(&tree, Transform::from_scale(scale, scale), &mut pixmap.as_mut());
    }
    let encoded = canvas.map(|canvas| encode(&canvas, options, words)).transpose();
    let encoded = encoded.map_err(|cause| {
        Box::new(Diagnostic::error("png-not-written", format!("the PNG can't be written: {cause}")))
    })?;
    Ok(encoded.unwrap_or_default())
}

/// Lays a photograph on the sheet, its edges on whole pixels.
fn lay(canvas: &mut Pixmap, photo: &Photo, area: Rect, scale: f64) {
    let edge = |mm: f64| (mm * scale).round();
    let (left, top) = (edge(area.x0), edge(area.y0));
    let (width, height) = ((edge(area.x1) - left).max(1.0), (edge(area.y1) - top).max(1.0));
    // What is to be smaller is averaged first: to pick pixels would make patterns of its texture.
    let photo = photo.shrunk(width as u32, height as u32);
    let (across, down) = photo.size();
    let Some(mut pixels) = Pixmap::new(across, down) else { return };
    for (pixel, [red, green, blue]) in pixels.pixels_mut().iter_mut().zip(photo.pixels()) {
        *pixel = ColorU8::from_rgba(*red, *green, *blue, 255).premultiply();
    }
    let (wide, tall) = (width / f64::from(across), height / f64::from(down));
    let place = Transform::from_row(wide as f32, 0.0, 0.0, tall as f32, left as f32, top as f32);
    let paint = PixmapPaint { quality: FilterQuality::Bicubic, ..PixmapPaint::default() };
    canvas.draw_pixmap(0, 0, pixels.as_ref(), &paint, place, None);
}

/// A white sheet for a picture of this size.
fn blank(size: usvg::Size, options: &PngOptions, report: &mut Report) -> Result<Pixmap, Box<Diagnostic>> {
    let scale = options.dpi / 96.0;
    let (width, height) = (f64::from(size.width()) * scale, f64::from(size.height()) * scale);
    let (width, height) = ((width - 1e-3).ceil().max(1.0), (height - 1e-3).ceil().max(1.0));
    weigh(width, height, options.dpi, report)?;
    let mut pixmap = Pixmap::new(width as u32, height as u32)
        .ok_or_else(|| Diagnostic::error("png-too-large", format!("{width} × {height} pixels can't be drawn")))?;
    pixmap.fill(Color::WHITE);
    Ok(pixmap)
}

/// Only our own typeface; what asks for another gets ours.
fn reading_options() -> usvg::Options<'static> {
    static FONTS: LazyLock<Arc<usvg::fontdb::Database>> = LazyLock::new(|| {
        let mut fonts = usvg::fontdb::Database::new();
        for face in [Face::Regular, Face::Bold, Face::Italic] {
            fonts.load_font_data(face.data().to_vec());
        }
        fonts.set_sans_serif_family(FAMILY);
        Arc::new(fonts)
    });
    usvg::Options { font_family: FAMILY.to_owned(), fontdb: FONTS.clone(), ..usvg::Options::default() }
}

fn weigh(width: f64, height: f64, dpi: f64, report: &mut Report) -> Result<(), Box<Diagnostic>> {
    let pixels = width * height;
    if pixels > MOST_PIXELS {
        let fits = (dpi * (MOST_PIXELS / pixels).sqrt()).floor();
        let message = format!("a picture of {width} × {height} pixels at {dpi} dpi is too large to draw");
        let help = format!("ask for at most {fits} dpi, or write SVG or PDF, which stay sharp at any size");
        return Err(Box::new(Diagnostic::error("png-too-large", message).help(help)));
    }
    if pixels > MANY_PIXELS {
        let message = format!("the picture has {width} × {height} pixels and takes much memory to draw");
        report.add(Diagnostic::warning("png-large", message).help("a lower dpi is enough for most printers"));
    }
    Ok(())
}

fn encode(pixmap: &Pixmap, options: &PngOptions, words: &[(&str, &str)]) -> Result<Vec<u8>, png::EncodingError> {
    let mut bytes = Vec::new();
    let mut encoder = png::Encoder::new(&mut bytes, pixmap.width(), pixmap.height());
    let per_metre = (options.dpi / 0.0254).round() as u32;
    encoder.set_pixel_dims(Some(png::PixelDimensions { xppu: per_metre, yppu: per_metre, unit: png::Unit::Meter }));
    encoder.set_depth(png::BitDepth::Eight);
    encoder.set_color(if options.grey { png::ColorType::Grayscale } else { png::ColorType::Rgb });
    // What it shows goes with it, in UTF-8 (ISO/IEC 15948, 11.3.3.4).
    for (keyword, text) in words.iter().filter(|(_, text)| !text.is_empty()) {
        encoder.add_itxt_chunk((*keyword).to_owned(), (*text).to_owned())?;
    }
    // Plain paper with flat ink: without a filter its bytes repeat, so that the files come out a fifth smaller than with
    // the filters that suit photographs, in a third of the time.
    encoder.set_deflate_compression(png::DeflateCompression::Level(3));
    encoder.set_filter(png::Filter::NoFilter);
    // Row by row: all bytes of a large sheet at once take as much room as the sheet.
    let mut header = encoder.write_header()?;
    let mut writer = header.stream_writer()?;
    for row in pixmap.pixels().chunks(pixmap.width() as usize) {
        let opaque = row.iter().map(|pixel| [pixel.red(), pixel.green(), pixel.blue()]);
        let row: Vec<u8> = if options.grey { opaque.map(luma).collect() } else { opaque.flatten().collect() };
        writer.write_all(&row)?;
    }
    writer.finish()?;
    header.finish()?;
    Ok(bytes)
}

/// Luma of an opaque pixel, weights of ITU-R BT.601 in thousandths.
fn luma([r, g, b]: [u8; 3]) -> u8 {
    ((299 * u32::from(r) + 587 * u32::from(g) + 114 * u32::from(b) + 500) / 1000) as u8
}
