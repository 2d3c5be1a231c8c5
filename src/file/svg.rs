//! Drawing → SVG: millimetres, groups by round, symbols defined once, text that looks the same without the font.
//!
//! Every line of text is written twice: as outlines of its glyphs, each glyph defined once, which are what is seen; and
//! as real, transparent text on top, which can be selected, searched, edited and read aloud.

use std::collections::{BTreeMap, BTreeSet};
use std::fmt::Write;

use base64::Engine;
use base64::engine::general_purpose::STANDARD as BASE64;
use kurbo::{Affine, BezPath, PathEl, Point};
use svg::Node;
use svg::node::Blob;
use svg::node::element::{Definitions, Description, Element, Group as Svg, Image, Path, Rectangle, Title, Use};

use crate::drawing::{
    Anchor, Drawing, Ends, Group, Ink, Item, PathItem, PhotoItem, Role, Symbol, SymbolItem, TextItem,
};
use crate::font::{FAMILY, Face};
use crate::units::{Angle, EPSILON, TOLERANCE, hypot, tidy};

use super::turn_decimals;

/// Em height at which glyphs are defined.
const EM: f64 = 1000.0;

/// Writes a drawing as a stand-alone SVG 1.1 file (with the roles of the W3C graphics module).
pub fn write(drawing: &Drawing) -> String {
    let mut text = write_inline(drawing, "");
    text.insert_str(0, "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n");
    text.push('\n');
    text
}

/// Writes a drawing as an `svg` element to stand inside a web page, every id beginning with `prefix` so that several
/// can stand in one page.
pub fn write_inline(drawing: &Drawing, prefix: &str) -> String {
    element(drawing, &drawing.items, prefix, true)
}

/// Writes some items of a drawing without the ground under them, to be laid over what is there already.
pub(super) fn write_layer(drawing: &Drawing, items: &[Item]) -> String {
    element(drawing, items, "", false)
}

fn element(drawing: &Drawing, items: &[Item], prefix: &str, grounded: bool) -> String {
    let turn_decimals = drawing.symbols.iter().map(|(key, symbol)| (key.as_str(), turn_decimals(symbol.bounds)));
    let mut writer = Writer { prefix, glyphs: BTreeSet::new(), lines: 0, turn_decimals: turn_decimals.collect() };
    let mut body: Vec<Box<dyn Node>> = Vec::new();
    writer.items(items, &mut |node| body.push(node));
    let bounds = drawing.bounds;
    let (title, desc) = (writer.id("title"), writer.id("desc"));
    let mut root = svg::Document::new()
        .set("width", format!("{}mm", number(bounds.width(), 2)))
        .set("height", format!("{}mm", number(bounds.height(), 2)))
        .set("viewBox", list(&[bounds.x0, bounds.y0, bounds.width(), bounds.height()], 2))
        .set("role", "graphics-document document")
        .set("lang", drawing.language.tag())
        .set("xml:lang", drawing.language.tag())
        .set("font-family", format!("{FAMILY}, sans-serif"))
        .set("aria-labelledby", title.as_str())
        .set("aria-describedby", desc.as_str())
        .add(Title::new(clean(&drawing.title)).set("id", title))
        .add(Description::new().set("id", desc).add(svg::node::Text::new(clean(&drawing.description))));
    let mut definitions = Definitions::new();
    for (key, symbol) in &drawing.symbols {
        definitions = definitions.add(writer.symbol(key, symbol));
    }
    for &(face, glyph) in &writer.glyphs {
        let outline = path_data(&face.glyph_outline(glyph, EM), 0);
        definitions = definitions.add(Path::new().set("id", writer.glyph_id(face, glyph)).set("d", outline));
    }
    root = root.add(definitions);
    // Black symbols on whatever ground the reader has chosen would be lost: the picture brings its own.
    if grounded {
        let ground = Rectangle::new().set("fill", "#fff").set("x", number(bounds.x0, 2)).set("y", number(bounds.y0, 2));
        root = root.add(ground.set("width", number(bounds.width(), 2)).set("height", number(bounds.height(), 2)));
    }
    for node in body {
        root = root.add(node);
    }
    root.to_string()
}

struct Writer<'a> {
    prefix: &'a str,
    glyphs: BTreeSet<(Face, u16)>,
    lines: usize,
    turn_decimals: BTreeMap<&'a str, u32>,
}

impl Writer<'_> {
    fn id(&self, name: &str) -> String {
        format!("{}{name}", self.prefix)
    }

    fn glyph_id(&self, face: Face, glyph: u16) -> String {
        let cut = match face {
            Face::Regular => 'r',
            Face::Bold => 'b',
            Face::Italic => 'i',
        };
        format!("{}{cut}{glyph}", self.prefix)
    }

    fn symbol(&self, key: &str, symbol: &Symbol) -> Box<dyn Node> {
        if let [only] = &symbol.paths[..] {
            return Box::new(path(only, 3).set("id", self.id(key)));
        }
        let group = Svg::new().set("id", self.id(key));
        Box::new(symbol.paths.iter().fold(group, |group, item| group.add(path(item, 3))))
    }

    /// Symbols are for the eye: a run of them is hidden as one from readers of the tree.
    fn items(&mut self, items: &[Item], add: &mut dyn FnMut(Box<dyn Node>)) {
        let mut rest = items;
        while let Some(first) = rest.first() {
            let run = rest.iter().take_while(|item| matches!(item, Item::Symbol(_))).count();
            if run > 0 {
                let mut group = Svg::new().set("aria-hidden", "true");
                for item in &rest[..run] {
                    if let Item::Symbol(symbol) = item {
                        group = group.add(self.placed(symbol));
                    }
                }
                // As text at once: a tree of a hundred thousand nodes would take twenty times the room.
                add(Box::new(Blob::new(group.to_string())));
                rest = &rest[run..];
                continue;
            }
            match first {
                Item::Path(item) => add(Box::new(path(item, 2))),
                Item::Text(item) => add(Box::new(self.text(item))),
                Item::Photo(item) => add(Box::new(photograph(item))),
                Item::Group(group) => add(Box::new(self.group(group))),
                Item::Symbol(_) => {}
            }
            rest = &rest[1..];
        }
    }

    fn placed(&self, item: &SymbolItem) -> Use {
        let placed = Use::new().set("href", format!("#{}{}", self.prefix, item.key));
        let turn_decimals = self.turn_decimals.get(item.key.as_str()).copied().unwrap_or(1);
        match transform(item.place, turn_decimals) {
            place if place.is_empty() => placed,
            place => placed.set("transform", place),
        }
    }

    fn group(&mut self, group: &Group) -> Svg {
        let mut node = Svg::new();
        if !group.id.is_empty() {
            node = node.set("id", self.id(&group.id));
        }
        match &group.role {
            Role::Plain => {}
            Role::Decoration => node = node.set("aria-hidden", "true"),
            Role::Object { name, description } => {
                node = node.set("role", "graphics-object group").add(Title::new(clean(name)));
                if !description.is_empty() {
                    node = node.add(Description::new().add(svg::node::Text::new(clean(description))));
                }
            }
        }
        let mut children: Vec<Box<dyn Node>> = Vec::new();
        self.items(&group.items, &mut |child| children.push(child));
        children.into_iter().fold(node, Svg::add)
    }

    fn text(&mut self, item: &TextItem) -> Svg {
        let words = clean(&item.text);
        let width = item.face.width(&words, item.size);
        let left = match item.anchor {
            Anchor::Start => 0.0,
            Anchor::Middle => -width / 2.0,
            Anchor::End => -width,
        };
        let turn = Angle::from_degrees(item.turn).rotation();
        let place = Affine::translate(item.at.to_vec2() + (turn * Point::new(left, 0.0)).to_vec2()) * turn;
        let mut real = Element::new("text");
        real.assign("font-size", number(item.size, 2));
        real.assign("textLength", number(width, 2));
        real.assign("lengthAdjust", "spacingAndGlyphs");
        real.assign("fill-opacity", 0);
        match item.face {
            Face::Regular => {}
            Face::Bold => real.assign("font-weight", "bold"),
            Face::Italic => real.assign("font-style", "italic"),
        }
        real.append(svg::node::Text::new(words.as_str()));
        Svg::new().set("transform", transform(place, 2)).add(self.outlines(item, &words)).add(real)
    }

    /// The glyphs of a line; under them, where a halo is wanted, the same glyphs stroked in white.
    fn outlines(&mut self, item: &TextItem, words: &str) -> Svg {
        let scale = item.size / EM;
        let mut seen = Svg::new();
        for (glyph, at) in item.face.glyphs(words, EM) {
            if item.face.glyph_outline(glyph, EM).is_empty() {
                continue;
            }
            self.glyphs.insert((item.face, glyph));
            let mut placed = Use::new().set("href", format!("#{}", self.glyph_id(item.face, glyph)));
            for (axis, value) in [("x", tidy(at.x, 0)), ("y", tidy(at.y, 0))] {
                if value != 0.0 {
                    placed = placed.set(axis, number(value, 0));
                }
            }
            seen = seen.add(placed);
        }
        let line = Svg::new().set("aria-hidden", "true").set("transform", format!("scale({})", number(scale, 6)));
        let line = if item.ink == Ink::BLACK { line } else { line.set("fill", colour(item.ink)) };
        if item.halo <= 0.0 {
            return line.add(seen);
        }
        self.lines += 1;
        let id = self.id(&format!("t{}", self.lines));
        let halo = Use::new()
            .set("href", format!("#{id}"))
            .set("stroke", "#fff")
            .set("stroke-linejoin", "round")
            .set("stroke-width", number(2.0 * item.halo / scale, 0));
        line.add(halo).add(seen.set("id", id))
    }
}

/// A photograph inside the file itself.
fn photograph(item: &PhotoItem) -> Image {
    let area = item.area;
    let image = Image::new().set("href", data_url(item)).set("preserveAspectRatio", "none");
    let image = image.set("x", number(area.x0, 2)).set("y", number(area.y0, 2));
    image.set("width", number(area.width(), 2)).set("height", number(area.height(), 2))
}

/// A photograph as an address that holds it (RFC 2397).
pub(super) fn data_url(item: &PhotoItem) -> String {
    format!("data:image/jpeg;base64,{}", BASE64.encode(item.photo.jpeg().unwrap_or_default()))
}

fn path(item: &PathItem, decimals: u32) -> Path {
    let mut node = Path::new().set("d", path_data(&item.path, decimals));
    match item.fill {
        None => node = node.set("fill", "none"),
        Some(Ink::BLACK) => {}
        Some(ink) => node = node.set("fill", colour(ink)),
    }
    let Some(stroke) = &item.stroke else { return node };
    node = node.set("stroke", colour(stroke.ink)).set("stroke-width", number(stroke.width, 3));
    if stroke.ends == Ends::Round {
        node = node.set("stroke-linecap", "round").set("stroke-linejoin", "round");
    }
    if stroke.dashes.is_empty() { node } else { node.set("stroke-dasharray", list(&stroke.dashes, 2)) }
}

/// The shortest transform list that says an affine map to a hundredth of a millimetre.
fn transform(place: Affine, turn_decimals: u32) -> String {
    let [a, b, c, d, x, y] = place.as_coeffs();
    let mut said = String::new();
    if tidy(x, 2) != 0.0 || tidy(y, 2) != 0.0 {
        let _ = write!(said, "translate({})", list(&[x, y], 2));
    }
    let similar = (a - d).abs() < TOLERANCE && (b + c).abs() < TOLERANCE;
    if !similar {
        let _ = write!(said, "matrix({} 0 0)", list(&[a, b, c, d], 4));
        return said;
    }
    let (turn, scale) = (Angle::of_vector(a, b).degrees(), hypot(a, b));
    if tidy(turn, turn_decimals) != 0.0 {
        let _ = write!(said, "rotate({})", number(turn, turn_decimals));
    }
    if (scale - 1.0).abs() > EPSILON.sqrt() {
        let _ = write!(said, "scale({})", number(scale, 4));
    }
    said
}

/// Pieces of a path from which on it is written in steps from point to point, which are shorter numbers.
const MANY: usize = 25;

/// Path data with absolute coordinates, or in steps where the path has many pieces.
fn path_data(path: &BezPath, decimals: u32) -> String {
    let pieces = path.elements().iter().filter(|element| matches!(element, PathEl::MoveTo(_))).count();
    if pieces >= MANY {
        return steps(path, decimals);
    }
    let mut data = String::new();
    for element in path.elements() {
        let (letter, points): (char, &[Point]) = match element {
            PathEl::MoveTo(p) => ('M', &[*p]),
            PathEl::LineTo(p) => ('L', &[*p]),
            PathEl::QuadTo(p, q) => ('Q', &[*p, *q]),
            PathEl::CurveTo(p, q, r) => ('C', &[*p, *q, *r]),
            PathEl::ClosePath => ('Z', &[]),
        };
        data.push(letter);
        let flat: Vec<f64> = points.iter().flat_map(|point| [point.x, point.y]).collect();
        data.push_str(&numbers(&flat, decimals));
    }
    data
}

/// Path data in steps. Every point is rounded before its step is taken, so that nothing drifts; a letter that is the
/// same as the one before is left out, and so is the one of a line after a move.
fn steps(path: &BezPath, decimals: u32) -> String {
    let round = |p: &Point| Point::new(tidy(p.x, decimals), tidy(p.y, decimals));
    let (mut data, mut at, mut start, mut last) = (String::new(), Point::ORIGIN, Point::ORIGIN, ' ');
    for element in path.elements() {
        let (letter, points): (char, &[Point]) = match element {
            PathEl::MoveTo(p) => ('m', &[*p]),
            PathEl::LineTo(p) => ('l', &[*p]),
            PathEl::QuadTo(p, q) => ('q', &[*p, *q]),
            PathEl::CurveTo(p, q, r) => ('c', &[*p, *q, *r]),
            PathEl::ClosePath => ('z', &[]),
        };
        let flat: Vec<f64> = points.iter().map(|p| round(p) - at).flat_map(|by| [by.x, by.y]).collect();
        let said = numbers(&flat, decimals);
        let goes_on = letter == last && letter != 'm' && letter != 'z' || (last, letter) == ('m', 'l');
        if !goes_on {
            data.push(letter);
        } else if !said.starts_with('-') {
            data.push(' ');
        }
        data.push_str(&said);
        match element {
            PathEl::MoveTo(p) => {
                at = round(p);
                start = at;
            }
            PathEl::LineTo(p) | PathEl::QuadTo(_, p) | PathEl::CurveTo(_, _, p) => at = round(p),
            PathEl::ClosePath => at = start,
        }
        last = letter;
    }
    data
}

/// Numbers with a blank between two.
fn list(values: &[f64], decimals: u32) -> String {
    values.iter().map(|value| number(*value, decimals)).collect::<Vec<_>>().join(" ")
}

/// Numbers for path data: a blank between two, but where the sign of the second parts them already.
fn numbers(values: &[f64], decimals: u32) -> String {
    let mut list = String::new();
    for (i, value) in values.iter().enumerate() {
        let next = number(*value, decimals);
        if i > 0 && !next.starts_with('-') {
            list.push(' ');
        }
        list.push_str(&next);
    }
    list
}

/// A number rounded through `tidy`, without a nought before the point.
fn number(value: f64, decimals: u32) -> String {
    let said = tidy(if value.is_finite() { value } else { 0.0 }, decimals).to_string();
    match said.strip_prefix("0.") {
        Some(rest) => format!(".{rest}"),
        None => said.strip_prefix("-0.").map_or(said.clone(), |rest| format!("-.{rest}")),
    }
}

fn colour(Ink([r, g, b]): Ink) -> String {
    let short = [r, g, b].iter().all(|c| c % 17 == 0);
    if short { format!("#{:x}{:x}{:x}", r / 17, g / 17, b / 17) } else { format!("#{r:02x}{g:02x}{b:02x}") }
}

/// Without characters that XML forbids.
fn clean(text: &str) -> String {
    let forbidden = |c: char| (c < ' ' && !matches!(c, '\t' | '\n' | '\r')) || matches!(c, '\u{fffe}' | '\u{ffff}');
    text.chars().filter(|c| !forbidden(*c)).collect()
}
