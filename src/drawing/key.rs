//! The key: every symbol of a chart with what it means, and the sheet of the whole set.

use std::collections::{BTreeMap, BTreeSet};

use kurbo::{Affine, BezPath, Point, Rect, Shape, Vec2};

use super::chart::{FOLD, dashes, parting, yarn_inks};
use super::symbols::SignRow;
use super::{
    Drawing, Ends, Group, Ink, Item, Origin, PathItem, ROUGH, Role, Sign, Stroke, Symbol, SymbolItem, TextItem,
};
use crate::craft::{Begin, Close, Foundation, Loops, Op, Round, Stitch, Terms};
use crate::design::Hand;
use crate::font::Face;
use crate::geometry::rings::Row;
use crate::notation::write::Writer;
use crate::plan::{Plan, SizePlan};
use crate::units::Mm;
use crate::words::{Arg, Language, Words};

type Symbols = BTreeMap<String, Symbol>;

/// How a key is laid out.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct KeyOptions {
    /// Room across.
    pub width: Mm,
    /// Scale of the symbols: length of one stitch unit.
    pub unit: Mm,
    /// Em height of the words.
    pub letters: Mm,
    /// Least width of a column; as many columns are set as fit.
    pub column: Mm,
    /// True for a chart that shows alike rounds as bands.
    pub bands: bool,
    /// True for a chart on the colours of the yarn.
    pub tints: bool,
}

impl Default for KeyOptions {
    fn default() -> Self {
        let (unit, letters, column) = (Mm::new(4.6), Mm::new(3.9), Mm::new(60.0));
        Self { width: Mm::new(190.0), unit, letters, column, bands: false, tints: true }
    }
}

/// The key to the chart of one size: everything it uses, once.
pub fn key(plan: &Plan, size: usize, options: &KeyOptions) -> Drawing {
    let words = plan.design.words();
    let (mut symbols, mut lines) = (Symbols::new(), Vec::new());
    if let Some(size) = plan.sizes.get(size) {
        let left = plan.design.hand == Hand::Left;
        for sign in signs(size) {
            lines.push(sign_line(sign, options.unit.mm(), left, plan.design.terms, &words, &mut symbols));
        }
        lines.extend(other_lines(plan, size, options, &words));
    }
    lay_out(words.say("key-title"), lines, symbols, &words, options)
}

/// The whole symbol set with its names.
pub fn symbol_sheet(language: Language, terms: Terms, options: &KeyOptions) -> Drawing {
    let words = Words::of(language);
    let (mut symbols, mut lines) = (Symbols::new(), Vec::new());
    for sign in Sign::all() {
        lines.push(sign_line(sign, options.unit.mm(), false, terms, &words, &mut symbols));
    }
    lay_out(words.say("sheet-title"), lines, symbols, &words, options)
}

/// The signs that the chart of a size uses, in the order of the key.
pub fn signs(size: &SizePlan) -> Vec<Sign> {
    let mut used = BTreeSet::from([Sign::Start, Sign::Direction]);
    used.insert(match size.foundation {
        Foundation::Ring => Sign::Ring,
        Foundation::ChainRing(chains) => Sign::ChainRing(chains),
        Foundation::ChainRound(_) | Foundation::Chain(_) => Sign::Stitch(Stitch::CH, Loops::Both),
    });
    for round in &size.rounds {
        round.ops.iter().for_each(|op| op_signs(op, &mut used));
        round_signs(round, &mut used);
    }
    for stitch in &size.step_down {
        used.insert(Sign::Stitch(*stitch, Loops::Both));
    }
    used.insert(Sign::FastenOff);
    used.into_iter().collect()
}

fn op_signs(op: &Op, signs: &mut BTreeSet<Sign>) {
    if let Some(sign) = Sign::shared(op) {
        signs.insert(sign);
        return;
    }
    signs.extend(op.made.runs().map(|(stitch, _)| Sign::Stitch(stitch, op.loops)));
}

fn round_signs(round: &Round, signs: &mut BTreeSet<Sign>) {
    if let Begin::Chain { chains, .. } = round.begin {
        signs.insert(Sign::TurningChain(chains));
    }
    if round.close == Close::Join {
        signs.insert(Sign::Join);
    }
    if round.slipped > 0 {
        signs.insert(Sign::Stitch(Stitch::SL_ST, Loops::Both));
    }
}

/// What a sign means: its short name, where it has one, and its name.
pub(crate) fn meaning(sign: Sign, terms: Terms, words: &Words) -> (String, String) {
    let writer = Writer { words, terms };
    let SignRow { message, of, .. } = sign.row();
    let short = writer.short(of.stitch);
    let args = [("count", Arg::Count(of.count)), ("stitch", Arg::Text(&short))];
    let name = message.map_or_else(|| writer.name(of.stitch), |message| words.with(message, &args));
    let under = match of.loops {
        Loops::Both if message.is_none() => return (short, name),
        Loops::Both => return (String::new(), name),
        Loops::Back => "key-back",
        Loops::Front => "key-front",
    };
    (String::new(), words.with(under, &[("stitch", Arg::Text(&name))]))
}

/// One line of the key, its picture about (0, 0).
struct Line {
    id: String,
    picture: Vec<Item>,
    extent: Rect,
    short: String,
    name: String,
}

/// The line of a sign; its symbol is defined on the way.
fn sign_line(sign: Sign, unit: f64, left: bool, terms: Terms, words: &Words, symbols: &mut Symbols) -> Line {
    let (short, name) = meaning(sign, terms, words);
    let symbol = sign.symbol(&sign.fit()).scaled(unit);
    let symbol = if left && sign.points() { symbol.mirrored() } else { symbol };
    let extent = symbol.bounds;
    symbols.insert(sign.key(), symbol);
    let picture = vec![Item::Symbol(SymbolItem { key: sign.key(), place: Affine::IDENTITY })];
    Line { id: sign.key(), picture, extent, short, name }
}

/// What a chart shows besides symbols: the labels at the start of rounds, bands, folds, the colours of the yarn.
fn other_lines(plan: &Plan, size: &SizePlan, options: &KeyOptions, words: &Words) -> Vec<Line> {
    let letters = options.letters.mm();
    let mut lines = Vec::new();
    if let Some(round) = size.rounds.last() {
        let args = [("round", Arg::Count(round.number)), ("count", Arg::Count(round.stitches()))];
        let text = format!("{} · {}", round.number, round.stitches());
        lines.push(label_line("label", text, words.with("key-label", &args), letters));
    }
    if let Some(band) = Row::banded(size).into_iter().find(|row| row.is_band() && options.bands) {
        let count = size.rounds.get(band.first).map_or(0, Round::stitches);
        let (from, to) = (band.first as u32 + 1, band.last as u32 + 1);
        let args = [("from", Arg::Count(from)), ("to", Arg::Count(to)), ("count", Arg::Count(count))];
        let text = format!("{from}–{to} · {count}");
        lines.push(label_line("band", text, words.with("key-band", &args), letters));
    }
    if size.parts.len() > 1 {
        let (ink, width, dashes) = parting(options.tints);
        lines.push(stroke_line("parting", ink, width, dashes, words.say("key-parting")));
    }
    if size.rounds.iter().any(|round| round.before > 0 && round.loops() != Loops::Both) {
        let (width, dashes) = FOLD;
        lines.push(stroke_line("fold", Ink::BLACK, width, dashes, words.say("key-fold")));
    }
    if size.polygon().is_some() {
        let mut path = BezPath::new();
        path.move_to((-0.8, 0.5));
        path.line_to((0.0, -0.5));
        path.line_to((0.8, 0.5));
        let stroke = Stroke { width: 0.35, ink: Ink::BLACK, ends: Ends::Round, dashes: Vec::new() };
        let picture = vec![Item::Path(PathItem { path, fill: None, stroke: Some(stroke) })];
        let extent = Rect::new(-1.0, -1.0, 1.0, 1.0);
        lines.push(Line {
            id: "corner".to_owned(),
            picture,
            extent,
            short: String::new(),
            name: words.say("key-corner"),
        });
    }
    lines.extend(colour_lines(plan, size, options));
    lines
}

/// A label as it stands at the start of a round.
fn label_line(id: &str, text: String, name: String, letters: f64) -> Line {
    let half = Face::Regular.width(&text, letters) / 2.0;
    let extent = Rect::new(-half, -0.4 * letters, half, 0.4 * letters);
    let at = Point::new(-half, Face::Regular.cap_height(letters) / 2.0);
    let picture = vec![Item::Text(TextItem::new(text, at, letters))];
    Line { id: id.to_owned(), picture, extent, short: String::new(), name }
}

/// The colours of the yarn with the line that tells each; without tints the lines alone, black.
fn colour_lines(plan: &Plan, size: &SizePlan, options: &KeyOptions) -> Vec<Line> {
    let colours = &plan.design.yarn.colours;
    let mut lines = Vec::new();
    for (index, colour) in colours.iter().enumerate().filter(|_| colours.len() > 1) {
        if !size.rounds.iter().any(|round| round.colour == Some(index)) {
            continue;
        }
        let (ground, shade) = yarn_inks(colour.rgb, 1);
        let dashes = dashes(plan, size, index).map(|dashes| dashes.iter().map(|dash| dash * 0.5).collect());
        let shade = if options.tints { shade } else { Ink::BLACK };
        let mut line = stroke_line(&format!("colour-{}", index + 1), shade, 0.5, &[], colour.name.clone());
        let seen: Vec<Item> = line.picture.drain(..).filter_map(|item| with_dashes(item, dashes.as_ref())).collect();
        let fill = Rect::new(-6.0, -2.2, 6.0, 2.2);
        let area = PathItem { path: fill.to_path(ROUGH), fill: Some(ground), stroke: None };
        if options.tints {
            line.extent = fill;
            line.picture.push(Item::Path(area));
        } else if seen.is_empty() {
            continue;
        }
        line.picture.extend(seen);
        lines.push(line);
    }
    lines
}

/// A level line, as it runs round the chart.
fn stroke_line(id: &str, ink: Ink, width: f64, dashes: &[f64], name: String) -> Line {
    let mut path = BezPath::new();
    path.move_to((-6.0, 0.0));
    path.line_to((6.0, 0.0));
    let stroke = Stroke { width, ink, ends: Ends::Butt, dashes: dashes.to_vec() };
    let picture = vec![Item::Path(PathItem { path, fill: None, stroke: Some(stroke) })];
    Line { id: id.to_owned(), picture, extent: Rect::new(-6.0, -1.0, 6.0, 1.0), short: String::new(), name }
}

/// The same stroke in other dashes; nothing for a colour that has no line.
fn with_dashes(item: Item, dashes: Option<&Vec<f64>>) -> Option<Item> {
    let dashes = dashes?;
    match item {
        Item::Path(mut path) => {
            path.stroke.iter_mut().for_each(|stroke| stroke.dashes.clone_from(dashes));
            Some(Item::Path(path))
        }
        Item::Text(_) | Item::Symbol(_) | Item::Photo(_) | Item::Group(_) => Some(item),
    }
}

/// A line with its words broken to fit a column.
struct Entry {
    line: Line,
    words: Vec<(String, Face)>,
    height: f64,
}

impl Entry {
    /// A line whose words have so much room across.
    fn of(line: Line, room: f64, letters: f64, unit: f64) -> Self {
        let mut words = Vec::new();
        if !line.short.is_empty() && line.short != line.name {
            words.push((line.short.clone(), Face::Bold));
        }
        let wrapped = wrap(&line.name, Face::Regular, letters, room);
        words.extend(wrapped.into_iter().map(|line| (line, Face::Regular)));
        let height = line.extent.height().max(words.len() as f64 * 1.3 * letters) + 0.8 * unit;
        Self { line, words, height }
    }
}

fn lay_out(title: String, lines: Vec<Line>, symbols: Symbols, words: &Words, options: &KeyOptions) -> Drawing {
    let language = words.language;
    let (width, unit, letters) = (options.width.mm(), options.unit.mm(), options.letters.mm());
    let columns = (width / options.column.mm().max(20.0)).floor().max(1.0);
    let column = width / columns;
    let picture = (3.2 * unit).max(lines.iter().map(|line| line.extent.width()).fold(0.0, f64::max));
    let room = column - picture - letters;
    let entries: Vec<Entry> = lines.into_iter().map(|line| Entry::of(line, room, letters, unit)).collect();
    let names = entries.iter().map(|entry| full_name(&entry.line));
    let names = names.collect::<Vec<_>>().join(words.semicolon());
    let description = format!("{title}{}{names}", words.colon());
    let rows = entries.len().div_ceil(columns as usize);
    let mut items = Vec::new();
    let mut bottom = 0.0_f64;
    for (index, block) in entries.chunks(rows.max(1)).enumerate() {
        let mut y = 0.0;
        for entry in block {
            items.push(draw_entry(entry, Point::new(index as f64 * column, y), picture, letters));
            y += entry.height;
        }
        bottom = bottom.max(y);
    }
    Drawing { bounds: Rect::new(0.0, 0.0, width, bottom), title, description, language, symbols, items }
}

fn full_name(line: &Line) -> String {
    format!("{} {}", line.short, line.name).trim().to_owned()
}

fn draw_entry(entry: &Entry, corner: Point, picture: f64, letters: f64) -> Item {
    let middle = corner + Vec2::new(picture / 2.0, entry.height / 2.0);
    let offset = middle - entry.line.extent.center();
    let mut items: Vec<Item> = entry.line.picture.iter().map(|item| item.moved(offset)).collect();
    let leading = 1.3 * letters;
    let first = middle.y - leading * (entry.words.len() as f64 - 1.0) / 2.0 + Face::Regular.cap_height(letters) / 2.0;
    for (i, (line, face)) in entry.words.iter().enumerate() {
        let at = Point::new(corner.x + picture + 0.6 * letters, first + leading * i as f64);
        items.push(Item::Text(TextItem { face: *face, ..TextItem::new(line.clone(), at, letters) }));
    }
    let role = Role::Object { name: full_name(&entry.line), description: String::new() };
    Item::Group(Group { id: format!("key-{}", entry.line.id), role, origin: Origin::None, items })
}

/// Breaks words into lines no wider than `width`, a word longer than that on a line of its own.
pub(super) fn wrap(text: &str, face: Face, size: f64, width: f64) -> Vec<String> {
    let mut lines: Vec<String> = Vec::new();
    // What a language holds together stays together.
    for word in text.split([' ', '\n']).filter(|word| !word.is_empty()) {
        match lines.last_mut() {
            Some(line) if face.width(&format!("{line} {word}"), size) <= width => {
                line.push(' ');
                line.push_str(word);
            }
            _ => lines.push(word.to_owned()),
        }
    }
    lines
}
