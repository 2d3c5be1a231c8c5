//! The rows as a page to read: every section and field with what it means, takes and defaults to, and an example.

use std::fmt::Write as _;

use super::{GROUPS, Group, Row, Takes, Usual};
use crate::craft::{Stitch, Terms, abbreviation};
use crate::design::fields::{listed, nearest};
use crate::design::shapes::{FORMS, FULL, Field, Form, ROUNDED};

/// Characters of a line.
const WIDE: usize = 96;
/// The section on shapes.
const SHAPES: &str = "shapes";

/// A topic that the reference has not: the nearest that it has.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct ReferenceMiss {
    /// The nearest section or field, where one is near.
    pub nearest: Option<&'static str>,
}

/// The reference of the design file as plain text: all of it, or one section or the fields of one name. Fails for any
/// other topic.
pub fn reference(topic: Option<&str>) -> Result<String, ReferenceMiss> {
    let mut text = String::new();
    let Some(topic) = topic else {
        text += "The design file\n\n";
        wrapped(&mut text, 0, OPENING);
        let sections: Vec<&str> = sections().collect();
        wrapped(&mut text, 0, &format!("The sections are {}.", listed(&sections)));
        for group in GROUPS {
            section(&mut text, group);
        }
        shapes(&mut text);
        return Ok(text);
    };
    let topic = topic.to_lowercase();
    if topic == SHAPES {
        shapes(&mut text);
    } else if let Some(group) = GROUPS.iter().find(|group| group.section == topic) {
        section(&mut text, group);
        // `photo` is a field too: what it is for stands where it is one.
        fields(&mut text, &topic);
    } else {
        fields(&mut text, &topic);
    }
    if text.is_empty() {
        let known: Vec<&'static str> = sections().chain(GROUPS.iter().flat_map(|group| group.names())).collect();
        return Err(ReferenceMiss { nearest: nearest(&topic, &known) });
    }
    Ok(text)
}

const OPENING: &str = "A design is a YAML text: names with values, `title: My hat`, what belongs together indented or in \
    braces, lists with dashes or in brackets; whatever follows a # is a remark. `roundelay new` writes one to begin with, \
    `roundelay schema` what lets an editor complete and check it. A length is in the file's `units` where it names none; \
    `9.5 cm`, `95 mm`, `3 3/4 in` and `3½ in` are lengths too.";

fn sections() -> impl Iterator<Item = &'static str> {
    GROUPS.iter().map(|group| group.section).chain([SHAPES])
}

fn heading(text: &mut String, words: &str) {
    if !text.is_empty() {
        text.push('\n');
    }
    let _ = writeln!(text, "{}\n{}\n", words, "-".repeat(words.chars().count()));
}

fn section(text: &mut String, group: &Group) {
    heading(text, group.section);
    wrapped(text, 0, group.about);
    let _ = writeln!(text, "\n    {}", group.example);
    for row in (group.rows)() {
        field(text, &row, None);
    }
}

/// Every field of this name, each with the section it belongs to.
fn fields(text: &mut String, name: &str) {
    for group in GROUPS {
        if let Some(row) = group.row(name) {
            field(text, &row, Some(group));
        }
    }
}

fn field(text: &mut String, row: &Row, of: Option<&Group>) {
    let needed = if row.needed { " (has to be there)" } else { "" };
    let of = of.map_or(String::new(), |group| format!(", of {}", group.section));
    let _ = writeln!(text, "{}{}{of}{needed}", if text.is_empty() { "" } else { "\n" }, row.name);
    let mut letters = row.about.chars();
    let first: String = letters.next().into_iter().flat_map(char::to_uppercase).collect();
    wrapped(text, 4, &(first + letters.as_str()));
    labelled(text, "takes", &told(&row.takes));
    match row.usual {
        Usual::Value(value) => labelled(text, "without", &format!("`{value}`")),
        Usual::Told(words) => labelled(text, "without", words),
        Usual::Nothing => {}
    }
    labelled(text, "example", row.example);
}

fn shapes(text: &mut String) {
    heading(text, SHAPES);
    wrapped(text, 0, "What `shape:` of a part can be, and what each is measured by. Lengths lie along the fabric.");
    for form in FORMS {
        let Form { word, about, example, usual, takes, .. } = form;
        let _ = writeln!(text, "\n{word}");
        wrapped(text, 4, about);
        let takes: Vec<&str> = takes.iter().map(|field: &Field| field.word()).collect();
        labelled(text, "takes", &if takes.is_empty() { "nothing".to_owned() } else { listed(&takes) });
        if !usual.is_empty() {
            labelled(text, "usual", &format!("for a part called {}", listed(usual)));
        }
        labelled(text, "example", example);
    }
}

fn labelled(text: &mut String, label: &str, words: &str) {
    let from = text.len();
    wrapped(text, 13, words);
    text.replace_range(from..from + 13, &format!("    {label:<9}"));
}

/// Words in lines of [`WIDE`] characters, this far from the edge; what stands between accents stays on one line.
fn wrapped(text: &mut String, indent: usize, words: &str) {
    let mut pieces: Vec<String> = Vec::new();
    let mut open = false;
    for word in words.split_whitespace() {
        match pieces.last_mut().filter(|_| open) {
            Some(piece) => *piece += &format!(" {word}"),
            None => pieces.push(word.to_owned()),
        }
        open ^= word.matches('`').count() % 2 == 1;
    }
    let mut wide = usize::MAX;
    for piece in pieces {
        let count = piece.chars().count();
        if wide.saturating_add(count + 1) > WIDE {
            let _ = write!(text, "{}{}{piece}", if wide == usize::MAX { "" } else { "\n" }, " ".repeat(indent));
            wide = indent + count;
        } else {
            let _ = write!(text, " {piece}");
            wide += count + 1;
        }
    }
    text.push('\n');
}

/// What a value may be, in words.
fn told(takes: &Takes) -> String {
    match *takes {
        Takes::Printed(printed) => format!("your own words, up to {} characters", printed.most()),
        Takes::Word(words) => either(&words()),
        Takes::Phrase(phrases) => {
            let shown: Vec<String> = phrases.iter().map(|phrase| phrase.replace('#', "N")).collect();
            let shown: Vec<&str> = shown.iter().map(String::as_str).collect();
            format!("{}, with a number for N", either(&shown))
        }
        Takes::Stitch => {
            let stitches = |terms| -> Vec<&str> {
                Stitch::all()
                    .filter(|stitch| stitch.is_plain_fabric())
                    .map(|stitch| abbreviation(stitch, terms))
                    .collect()
            };
            format!(
                "a stitch by its short or full name in the file's `terms`: {} (US), {} (UK), or one that is built of them, \
                 such as `FPdc`",
                listed(&stitches(Terms::Us)),
                listed(&stitches(Terms::Uk))
            )
        }
        Takes::Name("row") => "a row of the table, by its name".to_owned(),
        Takes::Name(what) => format!("the name of a {what}"),
        Takes::Count(least, most) => format!("a whole number, {least} to {most}"),
        Takes::Halves(most) => format!("a number in halves, up to {most}"),
        Takes::Counted => "one line, `18 sc and 20 rounds in 10 cm`".to_owned(),
        Takes::Length => "a length".to_owned(),
        Takes::Measured => "a length with its unit".to_owned(),
        Takes::Hook => {
            "its millimetres, or a US letter and number such as `H-8`, which is taken with a warning".to_owned()
        }
        Takes::Angle => "an angle in degrees, `55°` or `55`".to_owned(),
        Takes::Narrowing => "an angle in degrees, `20°` or `20`, up to 85".to_owned(),
        Takes::Fullness => format!("a number, {} to {}", FULL.start(), FULL.end()),
        Takes::Rounded => format!("`{ROUNDED}` and the radius by which it bends, `{ROUNDED} 2 cm`"),
        Takes::Share(true) => "a share with its sign, below or above nought: `-2 %`".to_owned(),
        Takes::Share(false) => "a share with its sign: `2 %`".to_owned(),
        Takes::Mass => "grams, or ounces with their unit".to_owned(),
        Takes::Yarn => "a length of yarn".to_owned(),
        Takes::Age => "an age or a range: `4 years`, `3-6 months`".to_owned(),
        Takes::Colour => "a colour value in quotes, `\"#2f6f8f\"`".to_owned(),
        Takes::File => "the path of a file beside the design".to_owned(),
        Takes::Rounds => "rounds, one a line, below `written: |`, or as a list".to_owned(),
        Takes::InOnePlace => "what is made in one place, as rounds say it: `(2 dc, ch 1, 2 dc)`".to_owned(),
        Takes::Group(group) => format!("the fields of section `{}`", group.section),
        Takes::Named(what, of) => format!("names of your own, each {what} with {}", told(of)),
        Takes::Fixed(names, of) => format!("{}, each with {}", either(&names()), told(of)),
        Takes::PerSize(of) => format!("{}; one for all sizes, or one for each", told(of)),
        Takes::OneOrMore(of) => format!("{}; or a list of them", told(of)),
        Takes::NamedList(group) => {
            format!("a list of names of your own, each alone or with the fields of section `{}`", group.section)
        }
        Takes::Any(of) => of.iter().map(told).collect::<Vec<_>>().join(", or "),
    }
}

/// `a`, `b` or `c`.
fn either(words: &[&str]) -> String {
    match words {
        [most @ .., last] if !most.is_empty() => {
            let most: Vec<String> = most.iter().map(|word| format!("`{word}`")).collect();
            format!("{} or `{last}`", most.join(", "))
        }
        words => listed(words),
    }
}
