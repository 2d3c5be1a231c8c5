//! The one typeface, compiled in: Atkinson Hyperlegible. Measures, outlines and finds missing characters.
//!
//! Widths come from the same shaping that the PDF and PNG writers use, so a line that fits here fits there.

use std::sync::LazyLock;

use harfrust::{Direction, GlyphBuffer, ShapeOptions, ShapePlan, ShaperData, UnicodeBuffer, script};
use kurbo::{Affine, BezPath, Point};
use skrifa::outline::{DrawSettings, OutlineGlyphCollection, OutlinePen};
use skrifa::prelude::{LocationRef, Size};
use skrifa::{FontRef, GlyphId, MetadataProvider};

/// Name of the family in SVG and CSS.
pub const FAMILY: &str = "Atkinson Hyperlegible";

/// A cut of the typeface.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Face {
    /// Upright, for text.
    #[default]
    Regular,
    /// Bold, for heads and counts.
    Bold,
    /// Italic, sparingly.
    Italic,
}

/// One glyph of a line, measured in ems.
#[derive(Clone, Debug, PartialEq)]
pub struct Glyph {
    /// Its number in the font file.
    pub id: u16,
    /// How far it moves the pen.
    pub advance: f64,
    /// Where it stands from the pen, y upward.
    pub offset: (f64, f64),
    /// Bytes of the text it stands for.
    pub bytes: std::ops::Range<usize>,
}

static REGULAR: &[u8] = include_bytes!("../fonts/AtkinsonHyperlegible-Regular.ttf");
static BOLD: &[u8] = include_bytes!("../fonts/AtkinsonHyperlegible-Bold.ttf");
static ITALIC: &[u8] = include_bytes!("../fonts/AtkinsonHyperlegible-Italic.ttf");

static FILES: LazyLock<[Option<File>; 3]> =
    LazyLock::new(|| [Face::Regular, Face::Bold, Face::Italic].map(|face| File::of(face.data())));

static SHAPERS: LazyLock<[Option<Shaper>; 3]> =
    LazyLock::new(|| FILES.each_ref().map(|file| file.as_ref().map(Shaper::of)));

/// A font file and what is read from it once.
struct File {
    font: FontRef<'static>,
    tables: ShaperData,
}

impl File {
    fn of(data: &'static [u8]) -> Option<Self> {
        let font = FontRef::new(data).ok()?;
        Some(Self { tables: ShaperData::new(&font), font })
    }
}

/// A face ready to shape and to draw with. Making a plan takes longer than shaping a word by it, so the plans for Latin
/// words and for figures and signs alone are made once.
struct Shaper {
    font: &'static FontRef<'static>,
    shaper: harfrust::Shaper<'static>,
    latin: ShapePlan,
    figures: ShapePlan,
    outlines: OutlineGlyphCollection<'static>,
    /// Units of the font in an em.
    em: f64,
    /// Height of a capital in ems.
    capital: f64,
}

impl Shaper {
    fn of(file: &'static File) -> Self {
        let shaper = file.tables.shaper(&file.font).build();
        let plan = |script| ShapePlan::new(&shaper, Direction::LeftToRight, script, None, &[]);
        let (latin, figures) = (plan(Some(script::LATIN)), plan(None));
        let metrics = file.font.metrics(Size::unscaled(), LocationRef::default());
        let em = f64::from(metrics.units_per_em);
        let capital = f64::from(metrics.cap_height.unwrap_or(668.0)) / em;
        Self { font: &file.font, latin, figures, outlines: file.font.outline_glyphs(), em, capital, shaper }
    }

    /// The glyphs of left-to-right text.
    fn shape(&self, text: &str) -> GlyphBuffer {
        let mut buffer = UnicodeBuffer::new();
        buffer.push_str(text);
        buffer.set_direction(Direction::LeftToRight);
        buffer.guess_segment_properties();
        let plan = match buffer.script() {
            script::LATIN => Some(&self.latin),
            script::UNKNOWN => Some(&self.figures),
            _ => None,
        };
        self.shaper.shape(buffer, ShapeOptions::new().plan(plan))
    }

    /// Adds the outline of a glyph; nothing where the face has none.
    fn outline(&self, glyph: GlyphId, path: &mut BezPath, place: Affine) {
        let Some(drawn) = self.outlines.get(glyph) else { return };
        let settings = DrawSettings::unhinted(Size::unscaled(), LocationRef::default());
        // A glyph that the file can't draw is as one that it doesn't have.
        let _ = drawn.draw(settings, &mut Pen { path, place });
    }
}

impl Face {
    /// The font file.
    pub const fn data(self) -> &'static [u8] {
        match self {
            Self::Regular => REGULAR,
            Self::Bold => BOLD,
            Self::Italic => ITALIC,
        }
    }

    fn shaper(self) -> Option<&'static Shaper> {
        match self {
            Self::Regular => SHAPERS[0].as_ref(),
            Self::Bold => SHAPERS[1].as_ref(),
            Self::Italic => SHAPERS[2].as_ref(),
        }
    }

    /// Width of a line of `text` set at `size`, in the unit of `size` (its em height). No kerning across lines.
    pub fn width(self, text: &str, size: f64) -> f64 {
        self.shape(text, size, |_, _| {})
    }

    /// Outlines of a line of `text` set at `size`, its baseline starting at (0, 0), y downward.
    pub fn outline(self, text: &str, size: f64) -> BezPath {
        let mut path = BezPath::new();
        if let Some(shaper) = self.shaper() {
            let scale = size / shaper.em;
            self.shape(text, size, |glyph, at| {
                let place = Affine::translate(at.to_vec2()) * Affine::scale_non_uniform(scale, -scale);
                shaper.outline(glyph, &mut path, place);
            });
        }
        path
    }

    /// The glyphs of a line of `text` set at `size`, each with its point on a baseline that starts at (0, 0).
    pub fn glyphs(self, text: &str, size: f64) -> Vec<(u16, Point)> {
        let mut glyphs = Vec::with_capacity(text.len());
        self.shape(text, size, |glyph, at| glyphs.push((glyph.to_u32() as u16, at)));
        glyphs
    }

    /// Outline of one glyph set at `size`, its origin at (0, 0), y downward; empty where the face has none.
    pub fn glyph_outline(self, glyph: u16, size: f64) -> BezPath {
        let mut path = BezPath::new();
        if let Some(shaper) = self.shaper() {
            let scale = size / shaper.em;
            shaper.outline(GlyphId::from(glyph), &mut path, Affine::scale_non_uniform(scale, -scale));
        }
        path
    }

    /// The glyphs of a line of left-to-right `text` in order, measured in ems, each with the text it stands for.
    pub fn shaped(self, text: &str) -> Vec<Glyph> {
        let Some(shaper) = self.shaper() else { return Vec::new() };
        let em = shaper.em;
        let shaped = shaper.shape(text);
        let clusters: Vec<usize> = shaped.glyph_infos().iter().map(|info| info.cluster as usize).collect();
        let end_of = |start: usize| clusters.iter().copied().find(|&other| other > start).unwrap_or(text.len());
        let glyphs = shaped.glyph_infos().iter().zip(shaped.glyph_positions());
        let one = |(info, position): (&harfrust::GlyphInfo, &harfrust::GlyphPosition)| {
            let start = info.cluster as usize;
            Glyph {
                id: info.glyph_id as u16,
                advance: f64::from(position.x_advance) / em,
                offset: (f64::from(position.x_offset) / em, f64::from(position.y_offset) / em),
                bytes: start..end_of(start),
            }
        };
        glyphs.map(one).collect()
    }

    /// Height of a capital at `size`.
    pub fn cap_height(self, size: f64) -> f64 {
        self.shaper().map_or(0.0, |shaper| shaper.capital * size)
    }

    /// The first character the face has no glyph for.
    pub fn missing(self, text: &str) -> Option<char> {
        let letters = self.shaper()?.font.charmap();
        // Most letters by far are of the alphabet, which every face has.
        text.chars().find(|&c| !c.is_ascii_alphanumeric() && !c.is_control() && letters.map(c).is_none())
    }

    fn shape(self, text: &str, size: f64, mut each: impl FnMut(GlyphId, Point)) -> f64 {
        let Some(shaper) = self.shaper() else { return 0.0 };
        let scale = size / shaper.em;
        let shaped = shaper.shape(text);
        let mut x = 0.0;
        for (info, position) in shaped.glyph_infos().iter().zip(shaped.glyph_positions()) {
            let at = Point::new(x + f64::from(position.x_offset) * scale, -f64::from(position.y_offset) * scale);
            each(GlyphId::new(info.glyph_id), at);
            x += f64::from(position.x_advance) * scale;
        }
        x
    }
}

struct Pen<'a> {
    path: &'a mut BezPath,
    place: Affine,
}

impl Pen<'_> {
    fn at(&self, x: f32, y: f32) -> Point {
        self.place * Point::new(f64::from(x), f64::from(y))
    }
}

impl OutlinePen for Pen<'_> {
    fn move_to(&mut self, x: f32, y: f32) {
        let to = self.at(x, y);
        self.path.move_to(to);
    }

    fn line_to(&mut self, x: f32, y: f32) {
        let to = self.at(x, y);
        self.path.line_to(to);
    }

    fn quad_to(&mut self, x1: f32, y1: f32, x: f32, y: f32) {
        let (control, to) = (self.at(x1, y1), self.at(x, y));
        self.path.quad_to(control, to);
    }

    fn curve_to(&mut self, x1: f32, y1: f32, x2: f32, y2: f32, x: f32, y: f32) {
        let (first, second, to) = (self.at(x1, y1), self.at(x2, y2), self.at(x, y));
        self.path.curve_to(first, second, to);
    }

    fn close(&mut self) {
        self.path.close_path();
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn width_grows_with_size_and_ends_where_the_outline_ends() {
        use kurbo::Shape;
        let (small, large) = (Face::Regular.width("Round 12", 5.0), Face::Regular.width("Round 12", 10.0));
        assert!((2.0 * small - large).abs() < 1e-9);
        let ink = Face::Regular.outline("Round 12", 10.0).bounding_box();
        assert!((ink.x1 - large).abs() < 1.0 && ink.y0 < -6.0 && ink.y1 > -0.5);
    }

    #[test]
    fn glyphs_cover_the_text_and_add_up_to_its_width() {
        let text = "fine größe 12";
        let glyphs = Face::Regular.shaped(text);
        let width: f64 = glyphs.iter().map(|glyph| glyph.advance).sum();
        assert!((width * 10.0 - Face::Regular.width(text, 10.0)).abs() < 1e-9);
        assert_eq!(glyphs.last().map(|glyph| glyph.bytes.end), Some(text.len()));
    }

    #[test]
    fn missing_characters_are_found() {
        assert_eq!(Face::Regular.missing("½ × 3 — ok"), None);
        assert_eq!(Face::Regular.missing("a → b"), Some('→'));
    }
}
