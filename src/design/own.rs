//! What authors add in words of their own: notes, materials, assembly, and what stands on cover and foot.

use super::fields::{Fields, doubled, unknown, word};
use super::printed::{Printed, printed};
use super::tree::{Node, Text, Value};
use super::{Material, MaterialKind, Note, NoteRound, OwnWords, Said};
use crate::limits;
use crate::report::{Diagnostic, Report};

/// The words for how hard a pattern is, the easiest first.
pub(super) const LEVELS: &[(&str, u8)] = &[("basic", 1), ("easy", 2), ("intermediate", 3), ("complex", 4)];
/// The word for the last round of a part.
const LAST: &str = "last";

/// Reads what the author of a design adds.
pub(super) fn read(design: &mut Fields<'_>) -> OwnWords {
    let line = |name: &str, design: &mut Fields<'_>| {
        let text = design.text(name)?;
        Some(printed(Printed::Imprint, &text, design.report()))
    };
    OwnWords {
        notes: lines("notes", design),
        materials: materials(design),
        assembly: lines("assembly", design),
        level: level(design),
        dedication: line("dedication", design),
        copyright: line("copyright", design),
        licence: line("licence", design),
        contact: line("contact", design),
        version: line("version", design),
    }
}

fn level(design: &mut Fields<'_>) -> Option<u8> {
    let text = design.text("level");
    super::resolve::choose("level", text.as_ref(), LEVELS, design.report())
}

/// One sentence or a list of them.
fn lines(name: &str, fields: &mut Fields<'_>) -> Vec<String> {
    let Some((_, node)) = fields.take(name) else { return Vec::new() };
    let texts = texts(name, node, fields.report());
    texts.iter().map(|text| printed(Printed::Note, text, fields.report())).collect()
}

fn texts(name: &str, node: Node, report: &mut Report) -> Vec<Text> {
    let nodes = node.one_or_more();
    if let Some(beyond) = nodes.get(limits::NOTES) {
        let message = format!("`{name}` holds {} entries; {} are the most", nodes.len(), limits::NOTES);
        let help = "join those that belong together";
        report.add(Diagnostic::error("too-many-notes", message).at(beyond.place).help(help));
    }
    nodes.into_iter().take(limits::NOTES).filter_map(|node| word(name, node, report)).collect()
}

fn materials(design: &mut Fields<'_>) -> Vec<Material> {
    let Some((_, node)) = design.take("materials") else { return Vec::new() };
    let report = design.report();
    let other = |texts: Vec<Text>, report: &mut Report| -> Vec<Material> {
        let one = |text: &Text| Material { kind: MaterialKind::Other, words: printed(Printed::Note, text, report) };
        texts.iter().map(one).collect()
    };
    let Value::Fields(written) = node.value else {
        let texts = texts("materials", node, report);
        return other(texts, report);
    };
    let known: Vec<&str> = MaterialKind::ALL.iter().map(|kind| kind.word()).collect();
    let mut materials = Vec::new();
    for (name, node) in written {
        match MaterialKind::ALL.into_iter().find(|kind| kind.word() == name.text.to_lowercase()) {
            Some(kind) => {
                let texts = texts(&name.text, node, report);
                materials
                    .extend(texts.iter().map(|text| Material { kind, words: printed(Printed::Note, text, report) }));
            }
            None => report.add(unknown("unknown-field", "there is no kind of material", &name, &known)),
        }
    }
    materials
}

/// The notes of a part: for all of it, or by the number of its round.
pub(super) fn notes(part: &mut Fields<'_>) -> Vec<Note> {
    let Some((_, node)) = part.take("notes") else { return Vec::new() };
    let report = part.report();
    let mut notes = Vec::new();
    gather(node, (NoteRound::Part, None), &mut notes, report);
    notes
}

/// Gathers notes by rounds and sizes, whichever stands outside. What is neither number nor `last` is the name of a size;
/// whether there is one is asked where they are known.
fn gather(node: Node, (round, size): (NoteRound, Option<Said<String>>), notes: &mut Vec<Note>, report: &mut Report) {
    let Value::Fields(written) = node.value else {
        for text in texts("notes", node, report) {
            let words = Said { value: printed(Printed::Note, &text, report), place: Some(text.place) };
            notes.push(Note { round, size: size.clone(), words });
        }
        return;
    };
    let mut keys: Vec<Text> = Vec::new();
    for (key, node) in written {
        if let Some(first) = keys.iter().find(|other| other.text == key.text) {
            report.add(doubled("`notes`", &key, first.place));
            continue;
        }
        let number = key.text.parse::<u32>().ok().filter(|number| (1..=limits::ROUNDS).contains(number));
        let own = number.map(NoteRound::Nth).or(key.text.eq_ignore_ascii_case(LAST).then_some(NoteRound::Last));
        match (own, round, &size) {
            (Some(own), NoteRound::Part, _) => gather(node, (own, size.clone()), notes, report),
            (None, _, None) => {
                let name = Said { value: key.text.clone(), place: Some(key.place) };
                gather(node, (round, Some(name)), notes, report);
            }
            (Some(_), NoteRound::Nth(_) | NoteRound::Last, _) | (None, _, Some(_)) => {
                let message = format!("`notes` can't stand at `{}` here", super::shortened(&key.text));
                let help =
                    "write rounds and in them sizes, or sizes and in them rounds: `notes: {12: {S: stuff firmly now}}`";
                report.add(Diagnostic::error("unknown-value", message).at(key.place).help(help));
            }
        }
        keys.push(key);
    }
}
