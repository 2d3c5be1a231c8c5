//! The key: every symbol of a chart with what it means, and the sheet of the whole set.

use std::collections::{BTreeMap, BTreeSet};

use kurbo::{Affine, Point, Rect, Vec2};

use super::{Drawing, Group, Item, Origin, Role, Sign, SymbolItem, TextItem};
use crate::design::{Finish, Terms};
use crate::font::Face;
use crate::plan::{Begin, Close, Foundation, Op, Plan, Round, SizePlan};
use crate::stitch::{Loops, Stitch};
use crate::units::Mm;
use crate::words::{Arg, Language, Words};

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
}

impl Default for KeyOptions {
    fn default() -> Self {
        Self { width: Mm::new(190.0), unit: Mm::new(4.6), letters: Mm::new(3.9), column: Mm::new(60.0) }
    }
}

/// The key to the chart of one size: every symbol it uses, once.
pub fn key(plan: &Plan, size: usize, options: &KeyOptions) -> Drawing {
    let words = Words::of(plan.design.language);
    let signs = plan.sizes.get(size).map(signs).unwrap_or_default();
    let title = words.say("key-title");
    lay_out(title, &signs, plan.design.terms, &words, options)
}

/// The whole symbol set with its names.
pub fn symbol_sheet(language: Language, terms: Terms, options: &KeyOptions) -> Drawing {
    let words = Words::of(language);
    lay_out(words.say("sheet-title"), &Sign::all(), terms, &words, options)
}

/// The signs that the chart of a size uses, in the order of the key.
pub fn signs(size: &SizePlan) -> Vec<Sign> {
    let mut signs = BTreeSet::from([Sign::Start, Sign::Direction]);
    signs.insert(match size.foundation {
        Foundation::Ring => Sign::Ring,
        Foundation::ChainRing(chains) => Sign::ChainRing(chains),
        Foundation::Chain(_) => Sign::Stitch(Stitch::CH, Loops::Both),
    });
    for round in &size.rounds {
        round.ops.iter().for_each(|op| op_signs(op, &mut signs));
        round_signs(round, &mut signs);
    }
    match size.finish {
        Finish::StepDown => drop(signs.insert(Sign::StepDown)),
        Finish::FastenOff | Finish::SlipStitchEdge => {}
    }
    for stitch in &size.step_down {
        signs.insert(Sign::Stitch(*stitch, Loops::Both));
    }
    signs.insert(Sign::FastenOff);
    signs.into_iter().collect()
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
}

/// What a sign means: its short name, where it has one, and its name.
pub(crate) fn meaning(sign: Sign, terms: Terms, words: &Words) -> (String, String) {
    let terms = Arg::Text(match terms {
        Terms::Us => "US",
        Terms::Uk => "UK",
    });
    let short = |stitch: Stitch| words.with(&format!("{}-short", stitch.row().id), &[("terms", terms)]);
    let name = |stitch: Stitch| words.with(stitch.row().id, &[("terms", terms)]);
    let under = |name: String, loops: Loops| match loops {
        Loops::Both => name,
        Loops::Back => words.with("key-back", &[("stitch", Arg::Text(&name))]),
        Loops::Front => words.with("key-front", &[("stitch", Arg::Text(&name))]),
    };
    let several = |key: &str, stitch: Stitch, count: u8| {
        words.with(key, &[("count", Arg::Count(u32::from(count))), ("stitch", Arg::Text(&short(stitch)))])
    };
    let count = |key: &str, count: u32| words.with(key, &[("count", Arg::Count(count))]);
    let plain = |key: &str| words.say(key);
    let long = match sign {
        Sign::Stitch(stitch, Loops::Both) => return (short(stitch), name(stitch)),
        Sign::Stitch(stitch, loops) => under(name(stitch), loops),
        Sign::Increase(stitch, made, loops) => under(several("key-increase", stitch, made), loops),
        Sign::Decrease(stitch, used, loops) => under(several("key-decrease", stitch, used), loops),
        Sign::Fan(stitch, made) => several("key-fan", stitch, made),
        Sign::Space(chains) => count("key-space", u32::from(chains)),
        Sign::TurningChain(chains) => count("key-turning-chain", u32::from(chains)),
        Sign::ChainRing(chains) => count("key-chain-ring", chains),
        Sign::Ring => plain("key-ring"),
        Sign::Start => plain("key-start"),
        Sign::Direction => plain("key-direction"),
        Sign::Join => plain("key-join"),
        Sign::StepDown => plain("key-step-down"),
        Sign::FastenOff => plain("key-fasten-off"),
    };
    (String::new(), long)
}

/// One line of the key, measured.
struct Entry {
    sign: Sign,
    lines: Vec<(String, Face)>,
    name: String,
    height: f64,
}

fn lay_out(title: String, signs: &[Sign], terms: Terms, words: &Words, options: &KeyOptions) -> Drawing {
    let (width, unit, letters) = (options.width.mm(), options.unit.mm(), options.letters.mm());
    let columns = (width / options.column.mm().max(20.0)).floor().max(1.0);
    let column = width / columns;
    let picture = 3.2 * unit;
    let mut symbols = BTreeMap::new();
    let mut entries = Vec::new();
    for &sign in signs {
        let (short, name) = meaning(sign, terms, words);
        let symbol = sign.symbol(&sign.fit()).scaled(unit);
        let mut lines = Vec::new();
        if !short.is_empty() && short != name {
            lines.push((short.clone(), Face::Bold));
        }
        let wrapped = wrap(&name, Face::Regular, letters, column - picture - letters);
        lines.extend(wrapped.into_iter().map(|line| (line, Face::Regular)));
        let height = symbol.bounds.height().max(lines.len() as f64 * 1.3 * letters) + 0.8 * unit;
        symbols.insert(sign.key(), symbol);
        entries.push(Entry { sign, lines, name: format!("{short} {name}").trim().to_owned(), height });
    }
    let rows = entries.len().div_ceil(columns as usize);
    let mut items = Vec::new();
    let mut bottom = 0.0_f64;
    for (index, block) in entries.chunks(rows.max(1)).enumerate() {
        let mut y = 0.0;
        for entry in block {
            let corner = Point::new(index as f64 * column, y);
            if let Some(symbol) = symbols.get(&entry.sign.key()) {
                items.push(draw_entry(entry, symbol.bounds, corner, picture, letters));
            }
            y += entry.height;
        }
        bottom = bottom.max(y);
    }
    let description = entries.iter().map(|entry| entry.name.as_str()).collect::<Vec<_>>().join("; ");
    let bounds = Rect::new(0.0, 0.0, width, bottom);
    Drawing { bounds, title, description, language: words.language, symbols, items }
}

fn draw_entry(entry: &Entry, ink: Rect, corner: Point, picture: f64, letters: f64) -> Item {
    let middle = corner + Vec2::new(picture / 2.0, entry.height / 2.0);
    let place = Affine::translate(middle - ink.center());
    let mut items = vec![Item::Symbol(SymbolItem { key: entry.sign.key(), place })];
    let leading = 1.3 * letters;
    let first = middle.y - leading * (entry.lines.len() as f64 - 1.0) / 2.0 + Face::Regular.cap_height(letters) / 2.0;
    for (i, (line, face)) in entry.lines.iter().enumerate() {
        let at = Point::new(corner.x + picture + 0.3 * letters, first + leading * i as f64);
        items.push(Item::Text(TextItem { face: *face, ..TextItem::new(line.clone(), at, letters) }));
    }
    let role = Role::Object { name: entry.name.clone(), description: String::new() };
    Item::Group(Group { id: format!("key-{}", entry.sign.key()), role, origin: Origin::None, items })
}

/// Breaks words into lines no wider than `width`, a word longer than that on a line of its own.
fn wrap(text: &str, face: Face, size: f64, width: f64) -> Vec<String> {
    let mut lines: Vec<String> = Vec::new();
    for word in text.split_whitespace() {
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
