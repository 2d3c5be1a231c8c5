//! The fields of a design file, a row each: what reads a file, what explains it and what lets an editor check it ask the
//! same rows, so that none of them can know a field that the others don't.

mod part;
mod reference;
mod schema;
mod table;

use super::printed::Printed;
pub(super) use part::{OPENING, PART};
pub use reference::{ReferenceMiss, reference};
pub use schema::schema;
pub(super) use table::{BALL, DESIGN, OWN_STITCH, PART_SWATCH, PHOTOGRAPH, SIZE, SWATCH, YARN};

/// A group of fields that stand together.
#[derive(Debug)]
pub(super) struct Group {
    /// Its name as a section of the reference.
    pub section: &'static str,
    /// What it is and where it stands.
    pub about: &'static str,
    /// A whole group as a maker writes it.
    pub example: &'static str,
    /// Its fields, in the order in which a maker is told of them.
    pub(super) rows: fn() -> Vec<Row>,
    /// Fields of which one has to be there.
    pub(super) one_of: &'static [&'static str],
}

impl Group {
    /// The row of a field.
    pub(super) fn row(&self, name: &str) -> Option<Row> {
        (self.rows)().into_iter().find(|row| row.name == name)
    }

    /// The names of its fields.
    pub(super) fn names(&self) -> Vec<&'static str> {
        (self.rows)().into_iter().map(|row| row.name).collect()
    }
}

/// Every group, the whole file first.
pub(super) static GROUPS: &[&Group] =
    &[&DESIGN, &PHOTOGRAPH, &YARN, &BALL, &SWATCH, &SIZE, &OWN_STITCH, &PART, &PART_SWATCH, &OPENING];

/// A field.
#[derive(Clone, Copy, Debug)]
pub(super) struct Row {
    /// Its name in the file.
    pub name: &'static str,
    /// True where it has to be there.
    pub needed: bool,
    /// What may stand behind it.
    pub(super) takes: Takes,
    /// What holds where it is left out.
    pub(super) usual: Usual,
    /// What it means to whoever makes the piece.
    pub about: &'static str,
    /// The field as a maker writes it.
    pub example: &'static str,
}

/// What holds where a field is left out.
#[derive(Clone, Copy, Debug)]
pub(super) enum Usual {
    /// Nothing: it is then not said, not printed, not used.
    Nothing,
    /// This very value.
    Value(&'static str),
    /// What hangs on other fields, in words.
    Told(&'static str),
}

/// What may stand behind a field.
#[derive(Clone, Copy, Debug)]
pub(super) enum Takes {
    /// Words that are printed as they are.
    Printed(Printed),
    /// One of these words; capitals don't matter.
    Word(fn() -> Vec<&'static str>),
    /// One of these phrases, in which `#` stands for a number.
    Phrase(&'static [&'static str]),
    /// The name of a stitch.
    Stitch,
    /// The name of a colour of the yarn, or a row of a table: a word that other fields give a meaning to.
    Name(&'static str),
    /// A whole number between two bounds.
    Count(u32, u32),
    /// A number above 0 in halves, up to a bound.
    Halves(u32),
    /// A swatch in one line.
    Counted,
    /// A length.
    Length,
    /// A length that names its unit.
    Measured,
    /// A hook.
    Hook,
    /// An angle of flare.
    Angle,
    /// An angle by which something narrows.
    Narrowing,
    /// How full a ruffle is.
    Fullness,
    /// `rounded` and a length.
    Rounded,
    /// A share in per cent; true where it may lie below nought.
    Share(bool),
    /// A mass.
    Mass,
    /// A length of yarn.
    Yarn,
    /// An age or a range of ages.
    Age,
    /// A colour value.
    Colour,
    /// A file beside the design.
    File,
    /// Written rounds.
    Rounds,
    /// What a round says is made in one place.
    InOnePlace,
    /// A group of fields.
    Group(&'static Group),
    /// Names of the maker's own (of what, in one word), each with a value.
    Named(&'static str, &'static Self),
    /// Any of these names, each with a value.
    Fixed(fn() -> Vec<&'static str>, &'static Self),
    /// One value for all sizes, or one for each.
    PerSize(&'static Self),
    /// One of them, or a list.
    OneOrMore(&'static Self),
    /// A list, in which each has a name of its own and a group of fields that may be left out.
    NamedList(&'static Group),
    /// Any of these.
    Any(&'static [Self]),
}

/// The numbers of a text that is written as one of the phrases says, and which phrase that is.
pub(super) fn phrase(phrases: &[&str], text: &str) -> Option<(usize, Vec<u32>)> {
    let words: Vec<&str> = text.split_whitespace().collect();
    phrases.iter().enumerate().find_map(|(index, phrase)| {
        let wanted: Vec<&str> = phrase.split(' ').collect();
        if wanted.len() != words.len() {
            return None;
        }
        let mut numbers = Vec::new();
        for (wanted, word) in wanted.iter().zip(&words) {
            match *wanted {
                "#" => numbers.push(word.parse().ok()?),
                fixed if !fixed.eq_ignore_ascii_case(word) => return None,
                _ => {}
            }
        }
        Some((index, numbers))
    })
}

/// The words of a list of words with a meaning each.
pub(super) fn words<T>(values: &[(&'static str, T)]) -> Vec<&'static str> {
    values.iter().map(|(word, _)| *word).collect()
}

/// Every field that a design may hold.
#[cfg(test)]
pub(super) fn every_field() -> impl Iterator<Item = &'static str> {
    GROUPS.iter().flat_map(|group| group.names())
}

#[cfg(test)]
mod tests;
