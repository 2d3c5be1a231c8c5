//! Reads a group of fields one by one and complains of what is unknown, doubled, missing or of the wrong kind.

use super::rows::Group;
use super::tree::{Node, Text, Value};
use crate::limits;
use crate::report::{Diagnostic, Place, Report};

/// A group of fields being read.
pub(super) struct Fields<'a> {
    /// What the group is, in the words of a complaint: `the yarn`, `the part crown`.
    of: String,
    /// The rows of what it may hold.
    group: &'static Group,
    place: Place,
    fields: Vec<(Text, Node)>,
    report: &'a mut Report,
}

impl<'a> Fields<'a> {
    /// Opens `node`, complains of unknown and repeated names; nothing if it holds no fields.
    pub(super) fn open(
        node: Node,
        of: impl Into<String>,
        group: &'static Group,
        report: &'a mut Report,
    ) -> Option<Self> {
        let (of, known) = (of.into(), group.names());
        let place = node.place;
        let what = node.what();
        let Value::Fields(written) = node.value else {
            let message = format!("{of} has to be a group of fields, and here is {what}");
            let help =
                format!("write it so: `{}`; it may hold {}; {}", group.example, listed(&known), told(group.section));
            report.add(Diagnostic::error("wrong-kind", message).at(place).help(help));
            return None;
        };
        let mut fields: Vec<(Text, Node)> = Vec::new();
        for (key, value) in written {
            if report.diagnostics.len() >= limits::COMPLAINTS {
                let message = "there is more to complain of; mend these first";
                report.add(Diagnostic::error("too-many-complaints", message).at(key.place));
                break;
            }
            if !known.contains(&key.text.as_str()) {
                let complaint = unknown("unknown-field", &format!("{of} has no field"), &key, &known);
                let help = complaint.help.clone().unwrap_or_default();
                let complaint = complaint.help(format!("{help}; {}", told(group.section)));
                // Between braces the comma of `54,5` ends the value.
                let comma = key.text.chars().all(|c| c.is_ascii_digit());
                report.add(if comma { complaint.help("write a decimal point: 54.5, not 54,5") } else { complaint });
            } else if let Some((first, _)) = fields.iter().find(|(other, _)| other.text == key.text) {
                report.add(doubled(&of, &key, first.place));
            } else {
                fields.push((key, value));
            }
        }
        Some(Self { of, group, place, fields, report })
    }

    /// Where the group begins.
    pub(super) fn place(&self) -> Place {
        self.place
    }

    /// The report, for complaints about values.
    pub(super) fn report(&mut self) -> &mut Report {
        self.report
    }

    /// Takes out a field with the place of its name. A field without a value is complained of.
    pub(super) fn take(&mut self, name: &str) -> Option<(Text, Node)> {
        debug_assert!(self.group.names().contains(&name), "{name} is read but has no row");
        let at = self.fields.iter().position(|(key, _)| key.text == name)?;
        let (key, node) = self.fields.remove(at);
        if node.value != Value::Nothing {
            return Some((key, node));
        }
        let message = format!("`{name}` has no value");
        let help = "write its value after the colon, or take the field away; a value that begins with # needs quotes";
        self.report.add(Diagnostic::error("no-value", message).at(key.place).help(help));
        None
    }

    /// Takes out a field that holds one value.
    pub(super) fn text(&mut self, name: &str) -> Option<Text> {
        let (key, node) = self.take(name)?;
        word(&key.text, node, self.report)
    }

    /// Takes out a field that has to be there and holds one value.
    pub(super) fn needed(&mut self, name: &'static str) -> Option<Text> {
        if self.has(name) {
            return self.text(name);
        }
        self.missing(name);
        None
    }

    /// True where the field is there and not yet taken.
    pub(super) fn has(&self, name: &str) -> bool {
        self.fields.iter().any(|(key, _)| key.text == name)
    }

    /// Complains that a field is missing.
    pub(super) fn missing(&mut self, name: &str) {
        let message = format!("{} has no `{name}`", self.of);
        let example = self.group.row(name).map_or(name, |row| row.example);
        let help = format!("add it, for example `{example}`; {}", told(name));
        self.report.add(Diagnostic::error("missing-field", message).at(self.place).help(help));
    }
}

/// Where the reference tells of a section or a field.
pub(super) fn told(topic: &str) -> String {
    match topic {
        "design" => "`roundelay help design` says what they mean".to_owned(),
        topic => format!("`roundelay help design {topic}` says what it means"),
    }
}

/// The single value of a node, or a complaint.
pub(super) fn word(name: &str, node: Node, report: &mut Report) -> Option<Text> {
    let what = node.what();
    if let Value::Word(text) = node.value {
        return Some(Text { text: text.trim().to_owned(), place: node.place });
    }
    let message = format!("`{name}` takes a single value, and here is {what}");
    report.add(Diagnostic::error("wrong-kind", message).at(node.place).help(format!("write `{name}: value`")));
    None
}

/// The complaint of a repeated name.
pub(super) fn doubled(of: &str, key: &Text, first: Place) -> Diagnostic {
    let message = format!("{of} says `{}` twice, first on line {}", key.text, first.line);
    Diagnostic::error("twice", message).at(key.place).help("keep one of the two")
}

/// The complaint of an unknown name, with the nearest known one or all of them.
pub(super) fn unknown(code: &'static str, message: &str, key: &Text, known: &[&str]) -> Diagnostic {
    let help = match nearest(&key.text, known) {
        Some(near) => format!("did you mean `{near}`? Known: {}", listed(known)),
        None => format!("known: {}", listed(known)),
    };
    Diagnostic::error(code, format!("{message} `{}`", shortened(&key.text))).at(key.place).help(help)
}

/// The known word most like this one, where one is like it at all.
pub(crate) fn nearest<'k>(text: &str, known: &[&'k str]) -> Option<&'k str> {
    let text = text.to_lowercase();
    if text.chars().count() > 40 {
        return None;
    }
    let likeness = |other: &str| {
        let other = other.to_lowercase();
        // Part of a word is likeness enough: `color` for `colours`, `rows` for `rounds` is not caught by letters alone.
        strsim::jaro_winkler(&text, &other).max(strsim::normalized_damerau_levenshtein(&text, &other))
    };
    let best = known.iter().map(|other| (likeness(other), *other)).max_by(|a, b| a.0.total_cmp(&b.0))?;
    (best.0 > 0.75).then_some(best.1)
}

/// The words as a list in a sentence.
pub(crate) fn listed(words: &[&str]) -> String {
    match words {
        [] => "none".to_owned(),
        [one] => format!("`{one}`"),
        [most @ .., last] => {
            let most: Vec<String> = most.iter().map(|word| format!("`{word}`")).collect();
            format!("{} and `{last}`", most.join(", "))
        }
    }
}

/// A value as shown in a complaint: not longer than a line can bear.
pub(crate) fn shortened(text: &str) -> String {
    let clean: String = text.chars().map(|c| if c.is_control() { ' ' } else { c }).take(41).collect();
    if clean.chars().count() > 40 { clean.chars().take(39).chain(['…']).collect() } else { clean }
}
