//! The design as written: fields known and in their place, values not yet understood.

use super::fields::{Fields, doubled, word};
use super::heads;
use super::openings::{self, RawOpening};
use super::own;
use super::palettes::{self, RawPalette};
use super::photograph::{self, RawPhotograph};
use super::repeats;
use super::rounds::{self, RawRounds};
use super::rows::{BALL, DESIGN, Group, PART, PART_SWATCH, SIZE, SWATCH, YARN};
use super::shapes::Field;
use super::stitches::{self, RawStitch};
use super::tree::{Node, Text, Value};
use super::{Note, OwnWords};
use crate::report::{Diagnostic, Place, Report};

/// A whole file.
#[derive(Clone, Debug, Default)]
pub(super) struct RawDesign {
    pub(super) place: Place,
    pub(super) title: Option<Text>,
    pub(super) designer: Option<Text>,
    pub(super) about: Option<Text>,
    pub(super) own: OwnWords,
    pub(super) photo: Option<RawPhotograph>,
    pub(super) kind: Option<Text>,
    pub(super) units: Option<Text>,
    pub(super) terms: Option<Text>,
    pub(super) language: Option<Text>,
    pub(super) hand: Option<Text>,
    pub(super) work: Option<Text>,
    pub(super) yarn: Option<RawYarn>,
    pub(super) palettes: Vec<RawPalette>,
    pub(super) stitches: Vec<RawStitch>,
    pub(super) hook: Option<Text>,
    pub(super) expect: Option<Text>,
    pub(super) swatches: Vec<RawSwatch>,
    pub(super) sizes: Vec<RawSize>,
    pub(super) ease: Option<Text>,
    pub(super) parts: Vec<RawPart>,
    pub(super) finish: Option<Text>,
    pub(super) prefer: Option<Text>,
    pub(super) tolerance: Option<Text>,
    pub(super) shaping: Option<Text>,
    /// How often what is repeated is worked in a shaped round.
    pub(super) repeats: Vec<Text>,
}

/// The yarn.
#[derive(Clone, Debug, Default)]
pub(super) struct RawYarn {
    pub(super) weight: Option<Text>,
    pub(super) fibre: Option<Text>,
    pub(super) ball: Option<RawBall>,
    pub(super) colours: Vec<(Text, Text)>,
    pub(super) allowance: Option<Text>,
}

/// One ball.
#[derive(Clone, Debug)]
pub(super) struct RawBall {
    pub(super) grams: Option<Text>,
    pub(super) metres: Option<Text>,
    pub(super) yards: Option<Text>,
}

/// One swatch.
#[derive(Clone, Debug)]
pub(super) struct RawSwatch {
    pub(super) place: Place,
    pub(super) stitch: Option<Text>,
    pub(super) stitches: Option<Text>,
    pub(super) rounds: Option<Text>,
    pub(super) width: Option<Text>,
    pub(super) height: Option<Text>,
    pub(super) thick: Option<Text>,
    pub(super) grams: Option<Text>,
}

/// One size.
#[derive(Clone, Debug)]
pub(super) struct RawSize {
    pub(super) name: Text,
    /// A table whose row is the size's own name.
    pub(super) table: Option<Text>,
    pub(super) head: Option<Text>,
    pub(super) around: Option<Text>,
    pub(super) across: Option<Text>,
    pub(super) age: Option<Text>,
    /// A table and the row to read in it.
    pub(super) row: Option<(Text, Text)>,
}

/// A value that is the same for all sizes or said for each.
#[derive(Clone, Debug)]
pub(super) enum RawPer {
    All(Text),
    Each(Place, Vec<(Text, Text)>),
}

/// Stripes of a part.
#[derive(Clone, Debug)]
pub(super) struct RawStripe {
    pub(super) colour: Text,
    /// A number of rounds or `rest`; nothing for a part all in one colour.
    pub(super) rounds: Option<Text>,
}

/// One part.
#[derive(Clone, Debug)]
pub(super) struct RawPart {
    pub(super) name: Text,
    pub(super) stitch: Option<Text>,
    pub(super) loops: Option<Text>,
    pub(super) colours: Vec<RawStripe>,
    pub(super) shape: Option<Text>,
    pub(super) start: Option<RawPer>,
    pub(super) settle: Option<Text>,
    pub(super) most: Option<Text>,
    pub(super) multiple: Option<Text>,
    pub(super) repeats: Vec<Text>,
    /// Rounds that repeat all the way up.
    pub(super) pattern: Option<Vec<Text>>,
    /// Rounds that are worked once before it.
    pub(super) set_up: Option<Vec<Text>>,
    /// A swatch of this part alone, which names no stitch.
    pub(super) swatch: Option<RawSwatch>,
    /// What is measured, in the order of [`Field::ALL`].
    pub(super) measures: Vec<(Field, RawPer)>,
    pub(super) openings: Vec<RawOpening>,
    pub(super) notes: Vec<Note>,
    /// Length at its end that is folded up.
    pub(super) folded: Option<RawPer>,
    pub(super) written: Option<RawRounds>,
}

impl RawPart {
    /// A measure as written, where it is there.
    pub(super) fn measure(&self, field: Field) -> Option<&RawPer> {
        self.measures.iter().find(|(other, _)| *other == field).map(|(_, per)| per)
    }

    /// True where the part says where it ends.
    pub(super) fn measures_edge(&self) -> bool {
        self.measure(Field::Around).is_some() || self.measure(Field::Across).is_some()
    }
}

/// What a file has to hold.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Extent {
    /// Everything a design needs.
    Whole,
    /// A swatch at least.
    Swatch,
}

/// Reads the tree of a whole file. Gives what can be read even where it complains.
pub(super) fn read(text: &str, root: Node, extent: Extent, report: &mut Report) -> Option<RawDesign> {
    if root.value == Value::Nothing {
        let help = "`roundelay new` writes a design to begin with";
        report.add(Diagnostic::error("empty", "the file is empty").at(root.place).help(help));
        return None;
    }
    let mut fields = Fields::open(root, "the design", &DESIGN, report)?;
    let asked = |fields: &Fields<'_>, name: &str| extent == Extent::Whole || fields.has(name);
    Some(RawDesign {
        place: fields.place(),
        title: if asked(&fields, "title") { fields.needed("title") } else { None },
        designer: fields.text("designer"),
        about: fields.text("about"),
        own: own::read(&mut fields),
        photo: photograph::read(&mut fields),
        kind: fields.text("kind"),
        units: fields.text("units"),
        terms: fields.text("terms"),
        language: fields.text("language"),
        hand: fields.text("hand"),
        work: fields.text("work"),
        yarn: yarn(&mut fields),
        palettes: palettes::read(&mut fields),
        stitches: stitches::read(&mut fields),
        hook: fields.text("hook"),
        expect: fields.text("expect"),
        swatches: swatches(&mut fields),
        sizes: if asked(&fields, "sizes") { sizes(&mut fields) } else { Vec::new() },
        ease: fields.text("ease"),
        parts: if asked(&fields, "parts") { parts(text, &mut fields) } else { Vec::new() },
        finish: fields.text("finish"),
        prefer: fields.text("prefer"),
        tolerance: fields.text("tolerance"),
        shaping: fields.text("shaping"),
        repeats: repeats::read(&mut fields),
    })
}

fn yarn(design: &mut Fields<'_>) -> Option<RawYarn> {
    let (_, node) = design.take("yarn")?;
    let mut fields = Fields::open(node, "the yarn", &YARN, design.report())?;
    let ball = fields.take("ball").and_then(|(_, node)| {
        let mut ball = Fields::open(node, "the ball", &BALL, fields.report())?;
        let grams = ball.needed("grams");
        if !ball.has("yards") && !ball.has("metres") {
            ball.missing("metres");
        }
        Some(RawBall { grams, metres: ball.text("metres"), yards: ball.text("yards") })
    });
    Some(RawYarn {
        weight: fields.text("weight"),
        fibre: fields.text("fibre"),
        ball,
        colours: fields.take("colours").map(|(key, node)| pairs(&key, node, fields.report())).unwrap_or_default(),
        allowance: fields.text("allowance"),
    })
}

/// Names with a single value each: colours, or a value for each size.
pub(super) fn pairs(key: &Text, node: Node, report: &mut Report) -> Vec<(Text, Text)> {
    let what = node.what();
    let Value::Fields(written) = node.value else {
        let message = format!("`{}` takes names with a value each, and here is {what}", key.text);
        let help = format!("write `{}: {{name: value, name: value}}`", key.text);
        report.add(Diagnostic::error("wrong-kind", message).at(node.place).help(help));
        return Vec::new();
    };
    let mut pairs: Vec<(Text, Text)> = Vec::new();
    for (name, node) in written {
        if let Some((first, _)) = pairs.iter().find(|(other, _)| other.text == name.text) {
            report.add(doubled(&format!("`{}`", key.text), &name, first.place));
        } else if node.value == Value::Nothing {
            let message = format!("`{}` has no value", name.text);
            let help = "write its value after the colon; a colour such as \"#2f6f8f\" needs its quotation marks";
            report.add(Diagnostic::error("no-value", message).at(name.place).help(help));
        } else if let Some(text) = word(&name.text, node, report) {
            pairs.push((name, text));
        }
    }
    pairs
}

fn swatches(design: &mut Fields<'_>) -> Vec<RawSwatch> {
    if !design.has("swatch") {
        design.missing("swatch");
        return Vec::new();
    }
    let Some((_, node)) = design.take("swatch") else { return Vec::new() };
    let read = |node: Node, report: &mut Report| match &node.value {
        Value::Word(said) => in_words(said, node.place, report),
        Value::Nothing | Value::List(_) | Value::Fields(_) => swatch(node, &SWATCH, report),
    };
    node.one_or_more().into_iter().filter_map(|node| read(node, design.report())).collect()
}

/// Words between the counts of a swatch that is said in one line, and before the length they were counted over.
const ROUNDS: [&str; 5] = ["rounds", "round", "rnds", "rnd", "rows"];
const OVER: [&str; 3] = ["in", "over", "="];

/// A swatch as makers say it: `18 sc and 20 rounds in 10 cm`, both counted over the same length.
fn in_words(said: &str, place: Place, report: &mut Report) -> Option<RawSwatch> {
    let spaced = said.replace(", ", " ").replace('=', " = ");
    let words: Vec<&str> = spaced.split_whitespace().filter(|word| !matches!(*word, "and" | "x" | "by")).collect();
    let text = |words: &[&str]| Some(Text { text: words.join(" "), place }).filter(|text| !text.text.is_empty());
    let rounds = words.iter().position(|word| ROUNDS.contains(&word.to_lowercase().as_str()));
    let over = words.iter().position(|word| OVER.contains(word));
    let read = || {
        let (rounds, over) = (rounds?, over?);
        // Number, stitch, number, `rounds`, `in`, length.
        let counted = over == rounds + 1 && rounds >= 3;
        let length = text(words.get(over + 1..)?);
        counted.then(|| RawSwatch {
            place,
            stitch: text(&words[1..rounds - 1]),
            stitches: text(&words[..1]),
            rounds: text(&words[rounds - 1..rounds]),
            width: length.clone(),
            height: length,
            thick: None,
            grams: None,
        })
    };
    let swatch = read().filter(|swatch| swatch.width.is_some());
    if swatch.is_none() {
        let message = "this does not read as a swatch";
        let help =
            "say it as `swatch: 18 sc and 20 rounds in 10 cm`, or with the fields of `roundelay help design swatch`";
        report.add(Diagnostic::error("wrong-swatch", message).at(place).help(help));
    }
    swatch
}

fn swatch(node: Node, group: &'static Group, report: &mut Report) -> Option<RawSwatch> {
    let mut fields = Fields::open(node, "the swatch", group, report)?;
    let names = group.row("stitch").is_some();
    Some(RawSwatch {
        place: fields.place(),
        stitch: if names { fields.needed("stitch") } else { None },
        stitches: fields.needed("stitches"),
        rounds: fields.needed("rounds"),
        width: fields.needed("width"),
        height: fields.needed("height"),
        thick: fields.text("thick"),
        grams: fields.text("grams"),
    })
}

fn sizes(design: &mut Fields<'_>) -> Vec<RawSize> {
    if !design.has("sizes") {
        design.missing("sizes");
        return Vec::new();
    }
    let Some((key, node)) = design.take("sizes") else { return Vec::new() };
    let report = design.report();
    let what = node.what();
    let Value::Fields(written) = node.value else {
        let message = format!("`sizes` takes the name of each size with its measurement, and here is {what}");
        let help = "write `sizes: {S: {head: 54}, M: {head: 57}}`";
        report.add(Diagnostic::error("wrong-kind", message).at(node.place).help(help));
        return Vec::new();
    };
    if written.is_empty() {
        report.add(Diagnostic::error("missing-field", "there is no size").at(key.place).help("write `S: {head: 54}`"));
    }
    let mut sizes: Vec<RawSize> = Vec::new();
    for (name, node) in written {
        if let Some(first) = sizes.iter().find(|size| size.name.text == name.text) {
            report.add(doubled("`sizes`", &name, first.name.place));
        } else if let Some(size) = size(name, node, report) {
            sizes.push(size);
        }
    }
    sizes
}

fn size(name: Text, node: Node, report: &mut Report) -> Option<RawSize> {
    let empty = RawSize { name, table: None, head: None, around: None, across: None, age: None, row: None };
    if let Value::Word(text) = node.value {
        let table = Text { text: text.trim().to_owned(), place: node.place };
        return Some(RawSize { table: Some(table), ..empty });
    }
    let mut fields = Fields::open(node, format!("the size {}", empty.name.text), &SIZE, report)?;
    let mut rows = heads::names().into_iter().filter_map(|table| {
        let (key, node) = fields.take(table)?;
        let row = word(table, node, fields.report())?;
        Some((key, row))
    });
    let row = rows.next();
    if let Some((second, _)) = rows.next() {
        drop(rows);
        let message = format!("the size {} is read from two tables", empty.name.text);
        fields.report().add(Diagnostic::error("two-measures", message).at(second.place).help("keep one of them"));
    }
    Some(RawSize {
        head: fields.text("head"),
        around: fields.text("around"),
        across: fields.text("across"),
        age: fields.text("age"),
        row,
        ..empty
    })
}

fn parts(text: &str, design: &mut Fields<'_>) -> Vec<RawPart> {
    if !design.has("parts") {
        design.missing("parts");
        return Vec::new();
    }
    let Some((key, node)) = design.take("parts") else { return Vec::new() };
    let report = design.report();
    let what = node.what();
    let Value::List(nodes) = node.value else {
        let message = format!("`parts` takes a list in working order, and here is {what}");
        let help = "begin each part on its own line with a dash: `- crown: {shape: flat}`";
        report.add(Diagnostic::error("wrong-kind", message).at(node.place).help(help));
        return Vec::new();
    };
    if nodes.is_empty() {
        let message = "there is no part";
        report.add(Diagnostic::error("missing-field", message).at(key.place).help("write `- crown: {shape: flat}`"));
    }
    nodes.into_iter().filter_map(|node| part(text, node, report)).collect()
}

fn part(text: &str, node: Node, report: &mut Report) -> Option<RawPart> {
    let (name, node) = part_name(node, report)?;
    let node = match node.value {
        // `- crown` and `- crown:` are a crown with every default.
        Value::Nothing => Node { value: Value::Fields(Vec::new()), ..node },
        Value::Word(_) | Value::List(_) | Value::Fields(_) => node,
    };
    let mut fields = Fields::open(node, format!("the part {}", name.text), &PART, report)?;
    Some(RawPart {
        stitch: fields.text("stitch"),
        loops: fields.text("loop"),
        colours: fields.take("colours").map(|(key, node)| stripes(&key, node, fields.report())).unwrap_or_default(),
        shape: fields.text("shape"),
        start: per(&mut fields, "start"),
        settle: fields.text("settle"),
        most: fields.text("most"),
        multiple: fields.text("multiple"),
        repeats: repeats::read(&mut fields),
        pattern: fields.take("pattern").map(|(key, node)| rounds::lines_of(text, &key, node, fields.report())),
        set_up: fields.take("setup").map(|(key, node)| rounds::lines_of(text, &key, node, fields.report())),
        swatch: fields.take("swatch").and_then(|(_, node)| swatch(node, &PART_SWATCH, fields.report())),
        measures: Field::ALL.into_iter().filter_map(|field| Some((field, per(&mut fields, field.word())?))).collect(),
        openings: openings::read(&mut fields),
        notes: own::notes(&mut fields),
        folded: per(&mut fields, "folded"),
        written: fields.take("written").map(|(key, node)| rounds::read(text, &key, node, fields.report())),
        name,
    })
}

fn part_name(node: Node, report: &mut Report) -> Option<(Text, Node)> {
    let place = node.place;
    let what = node.what();
    match node.value {
        Value::Word(text) => {
            let name = Text { text: text.trim().to_owned(), place };
            return Some((name, Node { place, value: Value::Nothing }));
        }
        Value::Fields(mut fields) if fields.len() == 1 => return fields.pop(),
        Value::Fields(fields) => {
            let place = fields.get(1).map_or(place, |(second, _)| second.place);
            let message = "a part has one name, and its fields stand indented under it";
            let help =
                "write `- side: {depth: 9}`, or indent the fields by four blanks; begin the next part with a dash";
            report.add(Diagnostic::error("wrong-kind", message).at(place).help(help));
        }
        Value::List(_) | Value::Nothing => {
            let message = format!("a part has a name, and here is {what}");
            report.add(Diagnostic::error("wrong-kind", message).at(place).help("write `- crown: {shape: flat}`"));
        }
    }
    None
}

fn per(fields: &mut Fields<'_>, name: &'static str) -> Option<RawPer> {
    let (key, node) = fields.take(name)?;
    match node.value {
        Value::Fields(_) => Some(RawPer::Each(key.place, pairs(&key, node, fields.report()))),
        Value::List(_) => {
            let message = format!("`{name}` takes one value, or one for each size by its name");
            let help = format!("write `{name}: 9`, or `{name}: {{S: 9, M: 9.5}}` with your sizes");
            fields.report().add(Diagnostic::error("wrong-kind", message).at(node.place).help(help));
            None
        }
        Value::Nothing | Value::Word(_) => word(name, node, fields.report()).map(RawPer::All),
    }
}

fn stripes(key: &Text, node: Node, report: &mut Report) -> Vec<RawStripe> {
    // A colour may come again, in a list or among the names.
    let named = |node: Node, report: &mut Report| -> Vec<RawStripe> {
        let place = node.place;
        let nodes = match node.value {
            Value::Fields(fields) => fields.into_iter().map(|field| Value::Fields(vec![field])).collect(),
            value @ (Value::Nothing | Value::Word(_) | Value::List(_)) => vec![value],
        };
        let pairs = nodes.into_iter().flat_map(|value| pairs(key, Node { place, value }, report));
        pairs.map(|(colour, rounds)| RawStripe { colour, rounds: Some(rounds) }).collect()
    };
    match node.value {
        Value::Word(text) => {
            let colour = Text { text: text.trim().to_owned(), place: node.place };
            vec![RawStripe { colour, rounds: None }]
        }
        Value::List(nodes) => nodes.into_iter().flat_map(|node| named(node, report)).collect(),
        Value::Nothing | Value::Fields(_) => named(node, report),
    }
}
