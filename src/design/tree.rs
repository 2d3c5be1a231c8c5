//! YAML text → a tree of what is written, each word with its place and nothing yet understood.

use std::fmt;

use serde::de::{Deserialize, Deserializer, MapAccess, SeqAccess, Visitor};
use serde_saphyr::options::{DuplicateKeyPolicy, MergeKeyPolicy, NonFiniteFloatPolicy};
use serde_saphyr::{Location, Spanned};

use super::slips;
use crate::limits;
use crate::report::{Diagnostic, Place, Report};

/// A word or phrase as written, quotes and blanks around it removed.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Text {
    pub(super) text: String,
    pub(super) place: Place,
}

/// One node of the tree.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Node {
    pub(super) place: Place,
    pub(super) value: Value,
}

/// What a node is.
#[derive(Clone, Debug, PartialEq)]
pub(super) enum Value {
    /// Nothing after the colon.
    Nothing,
    /// A word, number or phrase.
    Word(String),
    /// A list.
    List(Vec<Node>),
    /// Fields in the order of the file, repeated keys kept.
    Fields(Vec<(Text, Node)>),
}

impl Node {
    /// What the node is, in the words of a complaint.
    pub(super) fn what(&self) -> &'static str {
        match self.value {
            Value::Nothing => "nothing",
            Value::Word(_) => "a single value",
            Value::List(_) => "a list",
            Value::Fields(_) => "a group of fields",
        }
    }

    /// What stands in a list, or the node itself where it is none: a field that takes one of a kind or several.
    pub(super) fn one_or_more(self) -> Vec<Self> {
        match self.value {
            Value::List(nodes) => nodes,
            Value::Nothing | Value::Word(_) | Value::Fields(_) => vec![self],
        }
    }
}

/// Parses `text` into a tree, or complains and gives nothing.
pub(super) fn parse(text: &str, report: &mut Report) -> Option<Node> {
    let options = serde_saphyr::options! {
        with_snippet: false,
        strict_booleans: true,
        duplicate_keys: DuplicateKeyPolicy::PassThrough,
        merge_keys: MergeKeyPolicy::AsOrdinary,
        non_finite_float_policy: NonFiniteFloatPolicy::AsString,
        budget: serde_saphyr::budget! { max_depth: limits::NESTED, max_nodes: limits::VALUES, max_events: 3 * limits::VALUES },
    };
    match serde_saphyr::from_str_with_options::<Spanned<Loose>>(text, options) {
        Ok(loose) => node(text, loose, report),
        Err(error) => {
            report.add(slips::complaint(text, &error));
            None
        }
    }
}

/// The node as the YAML crate hands it over.
enum Loose {
    Nothing,
    Word(String),
    /// A number or truth value: its own text stands in the source.
    Plain(String),
    List(Vec<Spanned<Self>>),
    Fields(Vec<(Spanned<Self>, Spanned<Self>)>),
}

impl<'de> Deserialize<'de> for Loose {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        deserializer.deserialize_any(LooseVisitor)
    }
}

struct LooseVisitor;

impl<'de> Visitor<'de> for LooseVisitor {
    type Value = Loose;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("a value, a list or fields")
    }

    fn visit_unit<E>(self) -> Result<Loose, E> {
        Ok(Loose::Nothing)
    }

    fn visit_none<E>(self) -> Result<Loose, E> {
        Ok(Loose::Nothing)
    }

    fn visit_bool<E>(self, v: bool) -> Result<Loose, E> {
        Ok(Loose::Plain(v.to_string()))
    }

    fn visit_u64<E>(self, v: u64) -> Result<Loose, E> {
        Ok(Loose::Plain(v.to_string()))
    }

    fn visit_i64<E>(self, v: i64) -> Result<Loose, E> {
        Ok(Loose::Plain(v.to_string()))
    }

    fn visit_u128<E>(self, v: u128) -> Result<Loose, E> {
        Ok(Loose::Plain(v.to_string()))
    }

    fn visit_i128<E>(self, v: i128) -> Result<Loose, E> {
        Ok(Loose::Plain(v.to_string()))
    }

    fn visit_f64<E>(self, v: f64) -> Result<Loose, E> {
        Ok(Loose::Plain(v.to_string()))
    }

    fn visit_str<E>(self, v: &str) -> Result<Loose, E> {
        Ok(Loose::Word(v.to_owned()))
    }

    fn visit_seq<A: SeqAccess<'de>>(self, mut access: A) -> Result<Loose, A::Error> {
        let mut list = Vec::new();
        while let Some(item) = access.next_element()? {
            list.push(item);
        }
        Ok(Loose::List(list))
    }

    fn visit_map<A: MapAccess<'de>>(self, mut access: A) -> Result<Loose, A::Error> {
        let mut fields = Vec::new();
        while let Some(field) = access.next_entry()? {
            fields.push(field);
        }
        Ok(Loose::Fields(fields))
    }
}

fn node(text: &str, loose: Spanned<Loose>, report: &mut Report) -> Option<Node> {
    // An alias repeats what its anchor says: its words are those of the anchor, its place is its own.
    let place = place_of(&loose.referenced);
    let source = place_of(&loose.defined);
    let value = match loose.value {
        Loose::Nothing => Value::Nothing,
        Loose::Word(word) => Value::Word(word),
        Loose::Plain(value) => Value::Word(slice(text, source).map_or(value, str::to_owned)),
        Loose::List(items) => {
            Value::List(items.into_iter().map(|item| node(text, item, report)).collect::<Option<_>>()?)
        }
        Loose::Fields(fields) => {
            let fields = fields.into_iter().map(|(key, value)| {
                let key = node(text, key, report)?;
                let value = node(text, value, report)?;
                Some((key_text(key, report)?, value))
            });
            Value::Fields(fields.collect::<Option<_>>()?)
        }
    };
    Some(Node { place, value })
}

fn key_text(key: Node, report: &mut Report) -> Option<Text> {
    if let Value::Word(text) = key.value {
        return Some(Text { text: text.trim().to_owned(), place: key.place });
    }
    let message = format!("the name of a field has to be a word, and here it is {}", key.what());
    report.add(Diagnostic::error("not-a-field", message).at(key.place).help("write `name: value`"));
    None
}

fn place_of(location: &Location) -> Place {
    let span = location.span();
    Place {
        line: location.line() as usize,
        column: location.column() as usize,
        offset: span.byte_offset().unwrap_or(0) as usize,
        length: span.byte_len().unwrap_or(0) as usize,
    }
}

/// The source text at a place.
pub(super) fn slice(text: &str, place: Place) -> Option<&str> {
    text.get(place.offset..place.offset.checked_add(place.length)?)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn tree(text: &str) -> Node {
        let mut report = Report::new();
        let node = parse(text, &mut report);
        assert!(!report.has_errors(), "{report:?}");
        node.unwrap()
    }

    fn field(node: &Node, at: usize) -> (&Text, &Node) {
        match &node.value {
            Value::Fields(fields) => (&fields[at].0, &fields[at].1),
            Value::Nothing | Value::Word(_) | Value::List(_) => panic!("not fields"),
        }
    }

    #[test]
    fn numbers_keep_the_text_they_were_written_with() {
        let node = tree("a: 12.40\nb: 012\nc: 1_000\n");
        let words = [field(&node, 0), field(&node, 1), field(&node, 2)].map(|(_, node)| node.value.clone());
        assert_eq!(words, ["12.40", "012", "1_000"].map(|word| Value::Word(word.to_owned())));
    }

    #[test]
    fn places_count_characters_after_an_accent() {
        let node = tree("é: {ö: 7}\n");
        let (_, inner) = field(&node, 0);
        let (_, seven) = field(inner, 0);
        assert_eq!((seven.place.line, seven.place.column, seven.place.offset), (1, 8, 9));
    }

    #[test]
    fn an_alias_stands_in_its_own_place_with_its_anchors_words() {
        let node = tree("a: &d 9.50\nb: *d\n");
        let (_, alias) = field(&node, 1);
        assert_eq!((alias.place.line, &alias.value), (2, &Value::Word("9.50".to_owned())));
    }

    #[test]
    fn complaints_of_the_parser_have_a_place_and_a_cure() {
        for (text, line, cure) in [
            ("a: [1, 2\n", 1, "close every"),
            ("a: 1\n\tb: 2\n", 2, "tabs"),
            ("a: 1\n---\nb: 2\n", 3, "one design"),
            ("w:\n  - Rnd 3: *sc in next st\n", 2, "written: |"),
            ("w:\n  - [sc, inc] 6 times\n", 2, "written: |"),
            ("a: \"open\n", 1, "quot"),
            ("y: {c: {t: #2f6f8f}}\nz: {a: 1}\n", 1, "in quotes"),
        ] {
            let mut report = Report::new();
            assert_eq!(parse(text, &mut report), None, "{text}");
            let found = &report.diagnostics[0];
            assert_eq!(found.place.map(|place| place.line), Some(line), "{text} {found:?}");
            assert!(found.help.as_ref().is_some_and(|help| help.contains(cure)), "{text} {found:?}");
        }
    }
}
