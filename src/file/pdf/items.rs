//! Drawing items onto a PDF surface: symbols are written once and placed many times.

use std::collections::BTreeMap;
use std::sync::Arc;

use krilla::color::rgb;
use krilla::geom::{Path, PathBuilder, Point as PdfPoint, Size, Transform};
use krilla::graphic::Graphic;
use krilla::image::Image;
use krilla::paint::{Fill, FillRule, LineCap, LineJoin, Stroke as PdfStroke, StrokeDash};
use krilla::surface::Surface;
use krilla::text::{Font, GlyphId, KrillaGlyph};
use kurbo::{Affine, BezPath, PathEl, Point, Rect, Shape};

use crate::drawing::{Anchor, Drawing, Ends, Ink, Item, PathItem, PhotoItem, Stroke, Symbol, TextItem};
use crate::file::turn_decimals;
use crate::font::Face;
use crate::page::{Content, Piece};
use crate::report::Diagnostic;
use crate::units::{Angle, TOLERANCE, hypot, tidy};

/// Fonts and symbols of one document.
pub(super) struct Store {
    fonts: [Font; 3],
    symbols: BTreeMap<String, Vec<(Symbol, Graphic)>>,
    /// Drawings shown whole, by their address: however many pieces show one, it is written once.
    drawings: Vec<(Arc<Drawing>, Graphic)>,
}

impl Store {
    pub(super) fn new() -> Result<Self, Diagnostic> {
        let font = |face: Face| {
            Font::new(face.data().into(), 0).ok_or_else(|| Diagnostic::error("font", "a built-in font can't be read"))
        };
        let fonts = [font(Face::Regular)?, font(Face::Bold)?, font(Face::Italic)?];
        Ok(Self { fonts, symbols: BTreeMap::new(), drawings: Vec::new() })
    }

    /// Draws a piece; the surface counts in millimetres.
    pub(super) fn piece(&mut self, surface: &mut Surface<'_>, piece: &Piece) {
        let clip = piece.clip.and_then(|area| path(&area.to_path(0.1)));
        if let Some(clip) = &clip {
            surface.push_clip_path(clip, &FillRule::NonZero);
        }
        let placed = piece.place != Affine::IDENTITY;
        if placed {
            surface.push_transform(&matrix(piece.place));
        }
        match &piece.content {
            Content::Items(items) => self.items(surface, items, None, None),
            Content::Drawing(drawing) => {
                let graphic = match piece.clip {
                    None => self.whole(surface, drawing),
                    // Far from the clip nothing is written, so that a tile holds only what it shows.
                    Some(area) => self.compose(surface, drawing, Some(piece.place.inverse().transform_rect_bbox(area))),
                };
                surface.draw_graphic(graphic);
            }
        }
        for _ in 0..u8::from(placed) + u8::from(clip.is_some()) {
            surface.pop();
        }
    }

    fn whole(&mut self, surface: &mut Surface<'_>, drawing: &Arc<Drawing>) -> Graphic {
        if let Some((_, graphic)) = self.drawings.iter().find(|(other, _)| Arc::ptr_eq(other, drawing)) {
            return graphic.clone();
        }
        let graphic = self.compose(surface, drawing, None);
        self.drawings.push((drawing.clone(), graphic.clone()));
        graphic
    }

    /// A drawing as a form of its own: inside it places are said in its millimetres, which takes fewer digits than the
    /// points of a page.
    fn compose(&mut self, surface: &mut Surface<'_>, drawing: &Drawing, shown: Option<Rect>) -> Graphic {
        let mut builder = surface.stream_builder();
        let mut inner = builder.surface();
        self.items(&mut inner, &drawing.items, Some(drawing), shown);
        inner.finish();
        Graphic::new(builder.finish(), false)
    }

    fn items(&mut self, surface: &mut Surface<'_>, items: &[Item], drawing: Option<&Drawing>, shown: Option<Rect>) {
        // Where everything is shown, nothing needs to be measured.
        let visible = |room: &dyn Fn() -> Rect| shown.is_none_or(|shown| overlaps(shown, room()));
        for item in items {
            match item {
                Item::Path(item) => {
                    let reach = item.stroke.as_ref().map_or(0.0, |stroke| stroke.width);
                    if visible(&|| item.path.control_box().inflate(reach, reach)) {
                        draw_path(surface, item);
                    }
                }
                Item::Text(item) => {
                    if visible(&|| item.bounds().inflate(item.halo, item.halo)) {
                        self.text(surface, item);
                    }
                }
                Item::Symbol(item) => {
                    let symbol = drawing.and_then(|drawing| drawing.symbols.get(&item.key));
                    let room = |symbol: &Symbol| item.place.transform_rect_bbox(symbol.bounds);
                    if let Some(symbol) = symbol.filter(|symbol| visible(&|| room(symbol))) {
                        let graphic = self.graphic(surface, &item.key, symbol);
                        surface.push_transform(&placed(item.place, symbol.bounds));
                        surface.draw_graphic(graphic);
                        surface.pop();
                    }
                }
                Item::Photo(item) => {
                    if visible(&|| item.area) {
                        photograph(surface, item);
                    }
                }
                Item::Group(group) => self.items(surface, &group.items, drawing, shown),
            }
        }
    }

    fn graphic(&mut self, surface: &mut Surface<'_>, key: &str, symbol: &Symbol) -> Graphic {
        let known = self.symbols.get(key).and_then(|all| all.iter().find(|(other, _)| other == symbol));
        if let Some((_, graphic)) = known {
            return graphic.clone();
        }
        let mut builder = surface.stream_builder();
        let mut inner = builder.surface();
        for path in &symbol.paths {
            draw_path(&mut inner, path);
        }
        inner.finish();
        let graphic = Graphic::new(builder.finish(), false);
        self.symbols.entry(key.to_owned()).or_default().push((symbol.clone(), graphic.clone()));
        graphic
    }

    fn text(&self, surface: &mut Surface<'_>, item: &TextItem) {
        let glyphs = item.face.shaped(&item.text);
        let width: f64 = glyphs.iter().map(|glyph| glyph.advance * item.size).sum();
        let left = match item.anchor {
            Anchor::Start => 0.0,
            Anchor::Middle => -width / 2.0,
            Anchor::End => -width,
        };
        let turned = item.turn != 0.0;
        let start = if turned { Point::new(left, 0.0) } else { item.at + kurbo::Vec2::new(left, 0.0) };
        if turned {
            surface.push_transform(&matrix(turn_about(item.at, item.turn)));
        }
        if item.halo > 0.0 {
            let halo = Stroke { width: 2.0 * item.halo, ink: Ink::WHITE, ends: Ends::Round, dashes: Vec::new() };
            let path = Affine::translate(start.to_vec2()) * item.face.outline(&item.text, item.size);
            draw_path(surface, &PathItem { path, fill: None, stroke: Some(halo) });
        }
        surface.set_fill(Some(fill(item.ink)));
        surface.set_stroke(None);
        let font = match item.face {
            Face::Regular => &self.fonts[0],
            Face::Bold => &self.fonts[1],
            Face::Italic => &self.fonts[2],
        };
        let glyphs: Vec<KrillaGlyph> = glyphs.into_iter().map(pdf_glyph).collect();
        let start = PdfPoint::from_xy(number(start.x), number(start.y));
        surface.draw_glyphs(start, &glyphs, font.clone(), &item.text, number(item.size), false);
        if turned {
            surface.pop();
        }
    }
}

fn pdf_glyph(glyph: crate::font::Glyph) -> KrillaGlyph {
    let (x, y) = (glyph.offset.0 as f32, glyph.offset.1 as f32);
    KrillaGlyph::new(GlyphId::new(u32::from(glyph.id)), glyph.advance as f32, x, y, 0.0, glyph.bytes, None)
}

/// Turn by degrees clockwise about a point, by way of the crate's own sine.
fn turn_about(at: Point, degrees: f64) -> Affine {
    let turn = Angle::from_degrees(degrees);
    let (sin, cos) = (turn.sin(), turn.cos());
    Affine::new([cos, sin, -sin, cos, at.x, at.y])
}

fn overlaps(a: Rect, b: Rect) -> bool {
    a.x0 <= b.x1 && b.x0 <= a.x1 && a.y0 <= b.y1 && b.y0 <= a.y1
}

/// A photograph as a JPEG, whose pixels are smoothed as the reader's program likes.
fn photograph(surface: &mut Surface<'_>, item: &PhotoItem) {
    let image = item.photo.jpeg().and_then(|jpeg| Image::from_jpeg(jpeg.into(), false).ok());
    let size = Size::from_wh(item.area.width() as f32, item.area.height() as f32);
    if let Some((image, size)) = image.zip(size) {
        surface.push_transform(&matrix(Affine::translate(item.area.origin().to_vec2())));
        surface.draw_image(image, size);
        surface.pop();
    }
}

fn draw_path(surface: &mut Surface<'_>, item: &PathItem) {
    let Some(path) = path(&item.path) else { return };
    if item.fill.is_none() && item.stroke.is_none() {
        return;
    }
    surface.set_fill(item.fill.map(fill));
    surface.set_stroke(item.stroke.as_ref().map(stroke));
    surface.draw_path(&path);
}

fn fill(ink: Ink) -> Fill {
    Fill { paint: colour(ink).into(), ..Fill::default() }
}

fn colour(ink: Ink) -> rgb::Color {
    let [red, green, blue] = ink.0;
    rgb::Color::new(red, green, blue)
}

fn stroke(stroke: &Stroke) -> PdfStroke {
    let (line_cap, line_join) = match stroke.ends {
        Ends::Butt => (LineCap::Butt, LineJoin::Miter),
        Ends::Round => (LineCap::Round, LineJoin::Round),
    };
    let dashes: Vec<f32> = stroke.dashes.iter().map(|length| number(*length)).collect();
    let dash = (!dashes.is_empty()).then_some(StrokeDash { array: dashes, offset: 0.0 });
    PdfStroke {
        paint: colour(stroke.ink).into(),
        width: number(stroke.width),
        line_cap,
        line_join,
        dash,
        ..PdfStroke::default()
    }
}

/// A number as it leaves for the file: three places of a millimetre.
fn number(value: f64) -> f32 {
    tidy(value, 3) as f32
}

/// The transform of a placed symbol, to a hundredth of a millimetre and the turn that its reach asks for.
fn placed(place: Affine, bounds: Rect) -> Transform {
    let [a, b, c, d, x, y] = place.as_coeffs();
    let turned = (a - d).abs() < TOLERANCE && (b + c).abs() < TOLERANCE && (hypot(a, b) - 1.0).abs() < TOLERANCE;
    if !turned {
        return matrix(place);
    }
    let turn = Angle::from_degrees(tidy(Angle::of_vector(a, b).degrees(), turn_decimals(bounds)));
    let (sin, cos) = (tidy(turn.sin(), 4) as f32, tidy(turn.cos(), 4) as f32);
    Transform::from_row(cos, sin, -sin, cos, tidy(x, 2) as f32, tidy(y, 2) as f32)
}

/// A transform as krilla wants it; the turning part keeps six places.
pub(super) fn matrix(affine: Affine) -> Transform {
    let [a, b, c, d, e, f] = affine.as_coeffs();
    let turn = |value: f64| tidy(value, 6) as f32;
    Transform::from_row(turn(a), turn(b), turn(c), turn(d), number(e), number(f))
}

/// A path with finite points; nothing where there is nothing to draw.
fn path(outline: &BezPath) -> Option<Path> {
    let mut builder = PathBuilder::new();
    let xy = |point: Point| (number(point.x), number(point.y));
    for element in outline.elements() {
        match *element {
            PathEl::MoveTo(to) => {
                let (x, y) = xy(to);
                builder.move_to(x, y);
            }
            PathEl::LineTo(to) => {
                let (x, y) = xy(to);
                builder.line_to(x, y);
            }
            PathEl::QuadTo(control, to) => {
                let ((x1, y1), (x, y)) = (xy(control), xy(to));
                builder.quad_to(x1, y1, x, y);
            }
            PathEl::CurveTo(first, second, to) => {
                let ((x1, y1), (x2, y2), (x, y)) = (xy(first), xy(second), xy(to));
                builder.cubic_to(x1, y1, x2, y2, x, y);
            }
            PathEl::ClosePath => builder.close(),
        }
    }
    builder.finish()
}
