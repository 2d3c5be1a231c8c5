//! The rows as a JSON Schema (draft 2020-12), by which editors complete and check a design while it is written.

use std::collections::BTreeSet;

use serde_json::{Map, Value as Json, json};

use super::{GROUPS, Group, Row, Takes, Usual};
use crate::craft::{Stitch, Terms, abbreviation, spellings};
use crate::design::hooks::us_names;
use crate::design::measure::{ANGLES, LENGTHS, MASSES, SHARES, Unit, YARNS, any_case, pattern};
use crate::design::printed::Printed;
use crate::design::shapes::{FULL, NARROWS, ROUNDED};
use crate::design::tree::{self, Node, Value};
use crate::report::Report;

/// The schema of a design file, as indented JSON; of a file that holds at least a swatch where `whole` is false. It tells
/// what stands alone in a field: what hangs on other fields (whether a size is known, a shape takes a measure) is told by
/// reading alone.
pub fn schema(whole: bool) -> String {
    let mut schema = Map::new();
    schema.insert("$schema".to_owned(), json!("https://json-schema.org/draft/2020-12/schema"));
    schema.insert("title".to_owned(), json!(if whole { "A design for Roundelay" } else { "A swatch for Roundelay" }));
    let (file, groups) = GROUPS.split_first().map_or((None, GROUPS), |(file, groups)| (Some(*file), groups));
    for (name, value) in file.map(|file| group(file, whole)).iter().flat_map(Map::iter) {
        schema.insert(name.clone(), value.clone());
    }
    let mut shared: Map<String, Json> =
        groups.iter().map(|one| (one.section.to_owned(), Json::Object(group(one, true)))).collect();
    shared.insert("stitch".to_owned(), stitch());
    for (name, units) in [("length", LENGTHS), ("mass", MASSES), ("yarn-length", YARNS)] {
        let written = json!({"type": "string", "pattern": pattern(units, false)});
        shared.insert(name.to_owned(), json!({"anyOf": [{"type": "number", "exclusiveMinimum": 0}, written]}));
    }
    schema.insert("$defs".to_owned(), Json::Object(shared));
    format!("{:#}\n", Json::Object(schema))
}

/// A group: its fields, and which of them have to be there.
fn group(group: &Group, whole: bool) -> Map<String, Json> {
    let rows = (group.rows)();
    let needed = |row: &&Row| row.needed && (whole || row.name == "swatch");
    let required: Vec<&str> = rows.iter().filter(needed).map(|row| row.name).collect();
    let properties: Map<String, Json> = rows.iter().map(|row| (row.name.to_owned(), field(row))).collect();
    let mut object = Map::new();
    object.insert("description".to_owned(), json!(group.about));
    object.insert("type".to_owned(), json!("object"));
    object.insert("properties".to_owned(), Json::Object(properties));
    object.insert("additionalProperties".to_owned(), json!(false));
    if !required.is_empty() {
        object.insert("required".to_owned(), json!(required));
    }
    if !group.one_of.is_empty() {
        let any: Vec<Json> = group.one_of.iter().map(|name| json!({"required": [name]})).collect();
        object.insert("anyOf".to_owned(), json!(any));
    }
    object
}

/// A field: what it takes, what it means, what holds without it, how it is written.
fn field(row: &Row) -> Json {
    let mut field = value(&row.takes);
    field["description"] = json!(row.about);
    if let Usual::Value(usual) = row.usual {
        field["default"] = json!(usual);
    }
    if let Some(example) = example(row) {
        field["examples"] = json!([example]);
    }
    field
}

/// The value of an example, read as a file is.
pub(super) fn example(row: &Row) -> Option<Json> {
    let root = tree::parse(row.example, &mut Report::new())?;
    json(&root).get(row.name).cloned()
}

fn json(node: &Node) -> Json {
    match &node.value {
        Value::Nothing => Json::Null,
        Value::Word(word) => {
            let number = word.parse::<f64>().ok().filter(|number| number.is_finite());
            match (word.parse::<i64>(), number) {
                (Ok(whole), _) => json!(whole),
                (Err(_), Some(number)) => json!(number),
                (Err(_), None) => json!(word),
            }
        }
        Value::List(nodes) => nodes.iter().map(json).collect(),
        Value::Fields(fields) => fields.iter().map(|(key, node)| (key.text.clone(), json(node))).collect(),
    }
}

fn reference(name: &str) -> Json {
    json!({"$ref": format!("#/$defs/{name}")})
}

/// Any of these schemas.
fn any(of: impl IntoIterator<Item = Json>) -> Json {
    json!({"anyOf": of.into_iter().collect::<Vec<Json>>()})
}

/// Words that an editor offers, and that may be written in capitals too.
fn word(words: &[&str]) -> Json {
    let patterns: Vec<String> = words.iter().map(|word| any_case(word)).collect();
    any([json!({"enum": words}), json!({"type": "string", "pattern": format!("^\\s*(?:{})\\s*$", patterns.join("|"))})])
}

/// A stitch: the short names, which an editor offers, or any that is put together of the words that such names have.
fn stitch() -> Json {
    let fabric = |stitch: &Stitch| stitch.makes_fabric();
    let short = |terms| Stitch::all().filter(fabric).map(move |stitch| abbreviation(stitch, terms));
    let offered: BTreeSet<&str> = short(Terms::Us).chain(short(Terms::Uk)).collect();
    let names = spellings(Terms::Us).into_iter().chain(spellings(Terms::Uk)).filter(|(_, stitch)| fabric(stitch));
    let words: BTreeSet<String> = names
        .flat_map(|(name, _)| name.split([' ', '-', '.']).map(str::to_owned).collect::<Vec<_>>())
        .filter(|word| word.starts_with(|first: char| first.is_ascii_alphabetic()))
        .collect();
    let words: Vec<String> = words.iter().map(|word| any_case(word)).collect();
    let pattern = format!("^\\s*(?:(?:[0-9]+|{})[-. ]*)+\\s*$", words.join("|"));
    any([json!({"enum": offered}), json!({"type": "string", "maxLength": 60, "pattern": pattern})])
}

/// A name of the maker's own, or words: a number is one too.
fn scalar(most: usize) -> Json {
    json!({"type": ["string", "number", "boolean"], "minLength": 1, "maxLength": most})
}

/// What a value has to be.
fn value(takes: &Takes) -> Json {
    match *takes {
        Takes::Printed(printed) => scalar(printed.most()),
        Takes::Word(words) => word(&words()),
        Takes::Phrase(phrases) => {
            let phrase = |phrase: &&str| any_case(phrase).replace('#', "[0-9]+");
            let pattern = phrases.iter().map(phrase).collect::<Vec<_>>().join("|");
            let offered: Vec<&str> = phrases.iter().copied().filter(|phrase| !phrase.contains('#')).collect();
            let written = json!({"type": "string", "pattern": format!("^\\s*(?:{pattern})\\s*$")});
            if offered.is_empty() { written } else { any([json!({"enum": offered}), written]) }
        }
        Takes::Stitch => reference("stitch"),
        Takes::Name(_) => scalar(Printed::About.most()),
        Takes::Count(least, most) => json!({"type": "integer", "minimum": least, "maximum": most}),
        Takes::Halves(most) => any([
            json!({"type": "number", "minimum": 0.5, "maximum": most, "multipleOf": 0.5}),
            json!({"type": "string", "pattern": "^\\s*[0-9]*(?:½|[.,][05]|\\s1/2)\\s*$"}),
        ]),
        Takes::Counted => {
            let pattern = "^\\s*[0-9][0-9.½]*\\s+[^0-9 ].*\\s[0-9][0-9.½]*\\s+(?:[rR]ounds?|[rR]nds?|rows)\\s*(?:in|over|=)\\s*[0-9].*$";
            json!({"type": "string", "pattern": pattern})
        }
        Takes::Length => reference("length"),
        Takes::Measured => {
            let units: Vec<Unit> = LENGTHS.iter().copied().filter(|unit| *unit != Unit::None).collect();
            json!({"type": "string", "pattern": pattern(&units, false)})
        }
        Takes::Hook => any([
            json!({"type": "number", "minimum": 0.4, "maximum": 40}),
            json!({"type": "string", "pattern": pattern(LENGTHS, false)}),
            json!({"enum": us_names()}),
            json!({"type": "string", "pattern": "^\\s*(?:[uU][sS] )?[a-zA-Z][-/ a-zA-Z0-9½]*$"}),
        ]),
        Takes::Angle => any([
            json!({"type": "number", "minimum": 0, "maximum": 150}),
            json!({"type": "string", "pattern": pattern(ANGLES, false)}),
        ]),
        Takes::Narrowing => any([
            json!({"type": "number", "exclusiveMinimum": 0, "maximum": NARROWS.end()}),
            json!({"type": "string", "pattern": pattern(ANGLES, false)}),
        ]),
        Takes::Fullness => any([
            json!({"type": "number", "minimum": FULL.start(), "maximum": FULL.end()}),
            json!({"type": "string", "pattern": "^\\s*[0-9][0-9.,½ /]*$"}),
        ]),
        Takes::Rounded => {
            let length = pattern(LENGTHS, false);
            let length = length.strip_prefix("^\\s*").unwrap_or(&length);
            json!({"type": "string", "pattern": format!("^\\s*{}\\s*{length}", any_case(ROUNDED))})
        }
        Takes::Share(signed) => json!({"type": "string", "pattern": pattern(SHARES, signed)}),
        Takes::Mass => reference("mass"),
        Takes::Yarn => reference("yarn-length"),
        Takes::Age => {
            json!({"type": "string", "pattern": "^\\s*[0-9]{1,3}(?:\\s*[-–]\\s*[0-9]{1,3})? (?:month|year)s?\\s*$"})
        }
        Takes::Colour => json!({"type": "string", "pattern": "^\\s*#[0-9a-fA-F]{3}(?:[0-9a-fA-F]{3})?\\s*$"}),
        Takes::File => json!({"type": "string", "pattern": "^(?![/\\\\~])(?!.:).+$"}),
        Takes::Rounds => {
            let line = json!({"type": ["string", "object"], "minProperties": 1, "maxProperties": 1});
            any([json!({"type": "string", "minLength": 1}), json!({"type": "array", "minItems": 1, "items": line})])
        }
        Takes::InOnePlace => json!({"type": "string", "minLength": 1}),
        Takes::Group(group) => reference(group.section),
        Takes::Named(_, of) => json!({"type": "object", "minProperties": 1, "additionalProperties": value(of)}),
        Takes::Fixed(names, of) => {
            let names: Map<String, Json> = names().into_iter().map(|name| (name.to_owned(), value(of))).collect();
            json!({"type": "object", "minProperties": 1, "properties": names, "additionalProperties": false})
        }
        Takes::PerSize(of) => {
            any([value(of), json!({"type": "object", "minProperties": 1, "additionalProperties": value(of)})])
        }
        Takes::OneOrMore(of) => any([value(of), json!({"type": "array", "minItems": 1, "items": value(of)})]),
        Takes::NamedList(group) => {
            let fields = any([reference(group.section), json!({"type": "null"})]);
            let named =
                json!({"type": "object", "minProperties": 1, "maxProperties": 1, "additionalProperties": fields});
            json!({"type": "array", "minItems": 1, "items": any([scalar(Printed::Part.most()), named])})
        }
        Takes::Any(of) => any(of.iter().map(value)),
    }
}
