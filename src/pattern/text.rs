//! Whole text files of written rounds, made into designs with the swatch of another design beside them.
//!
//! Lines of rounds stand as a maker types them. A line of a few words without numbers, such as `Crown` or `BRIM:`, names
//! the part that follows; where two such lines follow one another at the top, the first is the title. `Title:`, `Part:`
//! and `Terms:` (US or UK) before a name say the same outright. `#` begins a comment. Where no line speaks of joining, the
//! rounds run on in a spiral.

use crate::craft::{Loops, Stitch, Terms};
use crate::design::heads::HeadSource;
use crate::design::{Body, Design, Finish, Part, Photograph, Printed, Said, Size, Work};
use crate::design::{of_rounds, shortened};
use crate::limits;
use crate::notation::{is_adjective, is_word};
use crate::report::{Diagnostic, Place, Report};
use crate::units::Mm;

/// A line that is no round.
enum Heading<'t> {
    Title(&'t str),
    Part(&'t str),
    Terms(&'t str),
    /// A few bare words.
    Bare(&'t str),
}

/// The written rounds of a text as a design: swatch, yarn, way of working and first size are those of the design
/// `beside` it; without a size the piece comes out as the rounds make it. Nothing once the report holds an error about the text.
pub fn into_design(text: &str, beside: &Design, report: &mut Report) -> Option<Design> {
    if text.len() > limits::BYTES {
        let message = format!("the text is {} bytes long; {} is the most that is read", text.len(), limits::BYTES);
        report.add(Diagnostic::error("text-too-long", message));
        return None;
    }
    let stitch = beside.swatches.first().map_or(Stitch::SC, |swatch| swatch.stitch);
    let mut file = File { title: None, terms: beside.terms, parts: Vec::new(), bare: None, stitch, joins: false };
    let mut offset = 0;
    for (index, line) in text.split('\n').enumerate() {
        let code = line.split('#').next().unwrap_or_default();
        let inset = code.len() - code.trim_start().len();
        let column = code.get(..inset).map_or(0, |blank| blank.chars().count()) + 1;
        let code = code.trim();
        let place = Place { line: index + 1, column, offset: offset + inset, length: code.len() };
        if !code.is_empty() {
            file.line(code, place, report);
        }
        offset += line.len() + 1;
    }
    file.into_design(beside, report)
}

/// The size of rounds that go with no measure: they come out as they come out.
fn only_size() -> Size {
    let source = HeadSource::Measured;
    Size { name: "one".to_owned(), head: None, around: Mm::ZERO, source, age_months: None, place: None }
}

struct File {
    title: Option<Said<String>>,
    terms: Terms,
    parts: Vec<Part>,
    /// A heading with nothing after it yet.
    bare: Option<Said<String>>,
    stitch: Stitch,
    /// True once a line closes a round.
    joins: bool,
}

/// Words that close a round.
const JOINS: &[&str] = &["join", "sl st to", "ss to", "sl st in first", "ss in first", "sl st in top"];

fn heading(line: &str) -> Option<Heading<'_>> {
    if let Some((key, value)) = line.split_once(':') {
        let value = value.trim();
        match key.trim().to_lowercase().as_str() {
            "title" => return Some(Heading::Title(value)),
            "part" => return Some(Heading::Part(value)),
            "terms" => return Some(Heading::Terms(value)),
            _ => {}
        }
    }
    let words = line.trim_end_matches(':');
    // `Ear (make 2)` names a part as well.
    let core = words.split_once('(').filter(|(_, rest)| makes(rest)).map_or(words, |(core, _)| core.trim_end());
    let first = words.split_whitespace().next()?.to_lowercase();
    let others = || core.split_whitespace().skip(1).any(|word| is_word(&word.to_lowercase()));
    let works = is_word(&first) && (!is_adjective(&first) || others());
    (names(core, char::is_alphabetic) && !works).then_some(Heading::Bare(words))
}

/// True for a few words of such letters, as names are.
pub(super) fn names(words: &str, letter: fn(char) -> bool) -> bool {
    let bare = words.chars().all(|c| letter(c) || matches!(c, ' ' | '-' | '\'' | '’' | '&'));
    bare && (1..=5).contains(&words.split_whitespace().count())
}

/// True for `make 2)`, `x2)`: how many of a piece are made.
fn makes(rest: &str) -> bool {
    let Some(inside) = rest.trim_end().trim_end_matches(':').strip_suffix(')') else { return false };
    let lower = inside.to_lowercase();
    let lead = ["make", "work", "x", "×"].iter().find_map(|lead| lower.strip_prefix(lead));
    lead.is_some_and(|number| !number.is_empty() && number.chars().all(|c| c.is_alphanumeric() || c == ' '))
}

impl File {
    fn line(&mut self, line: &str, place: Place, report: &mut Report) {
        let said = |text: &str| Said { value: text.to_owned(), place: Some(place) };
        let title = |text: &str, report: &mut Report| said(&Printed::Title.read(text, place, report));
        let name = |text: &str, report: &mut Report| said(&Printed::Part.read(text, place, report));
        match heading(line) {
            Some(Heading::Title(said_title)) => self.title = Some(title(said_title, report)),
            Some(Heading::Part(said_name)) => self.part(name(said_name, report)),
            Some(Heading::Terms(terms)) => match terms.to_uppercase().as_str() {
                "US" => self.terms = Terms::Us,
                "UK" => self.terms = Terms::Uk,
                _ => report.add(
                    Diagnostic::error("unknown-terms", format!("`{}` is neither US nor UK", shortened(terms)))
                        .at(place)
                        .help("write `Terms: US` or `Terms: UK`"),
                ),
            },
            Some(Heading::Bare(words)) => {
                if let Some(before) = self.bare.replace(name(words, report)) {
                    if self.title.is_none() && self.parts.is_empty() {
                        self.title = Some(before);
                    } else {
                        self.part(before);
                    }
                }
            }
            None => {
                let lower = line.to_lowercase();
                let ring = lower.contains("ring") || lower.contains("circle");
                self.joins |= !ring && JOINS.iter().any(|words| lower.contains(words));
                if let Some(name) = self.bare.take() {
                    self.part(name);
                }
                if self.parts.is_empty() {
                    self.part(Said { value: "rounds".to_owned(), place: Some(place) });
                }
                if let Some(Part { body: Body::Written(sizes), .. }) = self.parts.last_mut() {
                    sizes.iter_mut().for_each(|rounds| rounds.push(said(line)));
                }
            }
        }
    }

    fn part(&mut self, name: Said<String>) {
        let (stitch, loops, stripes) = (self.stitch, Loops::Both, Vec::new());
        self.parts.push(Part {
            name,
            stitch,
            loops,
            stripes,
            notes: Vec::new(),
            body: Body::Written(vec![Vec::new()]),
        });
    }

    fn into_design(mut self, beside: &Design, report: &mut Report) -> Option<Design> {
        let written =
            |part: &Part| matches!(&part.body, Body::Written(sizes) if sizes.iter().all(|rounds| !rounds.is_empty()));
        self.parts.retain(written);
        if self.parts.is_empty() {
            let help = "write one round a line, such as `Rnd 1: 6 sc in ring (6)`";
            report.add(Diagnostic::error("no-rounds", "the text holds no rounds").help(help));
        }
        if let [first, _, ..] = &beside.sizes[..] {
            let message = format!("written rounds are one size: `{}` of the design beside them is taken", first.name);
            report.add(Diagnostic::note("one-size", message));
        }
        if report.has_errors() {
            return None;
        }
        let work = match (self.joins, beside.work) {
            (true, joined @ Work::Joined { .. }) => joined,
            (true, Work::Spiral) => Work::Joined { chain_counts: true },
            (false, _) => Work::Spiral,
        };
        let title = self.title.or(Some(beside.title.clone()).filter(|title| !title.value.is_empty()));
        let title = title.or(self.parts.first().map(|part| part.name.clone()));
        let stitches = of_rounds(&self.parts, self.terms, &beside.stitches);
        Some(Design {
            work,
            stitches: beside.stitches.iter().cloned().chain(stitches).collect(),
            title: title.unwrap_or(Said { value: String::new(), place: None }),
            terms: self.terms,
            sizes: vec![beside.sizes.first().cloned().unwrap_or_else(only_size)],
            parts: self.parts,
            finish: Said { value: Finish::FastenOff, place: None },
            // It stands in another file than these rounds.
            photo: beside.photo.clone().map(|photo| Photograph { file: Said { place: None, ..photo.file }, ..photo }),
            ..beside.clone()
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn kind(line: &str) -> &'static str {
        match heading(line) {
            Some(Heading::Title(_)) => "title",
            Some(Heading::Part(_)) => "part",
            Some(Heading::Terms(_)) => "terms",
            Some(Heading::Bare(_)) => "bare",
            None => "round",
        }
    }

    #[test]
    fn headings_are_told_from_rounds() {
        let cases = [
            ("Title: Pebble cap", "title"),
            ("part: brim", "part"),
            ("Terms: UK", "terms"),
            ("Crown", "bare"),
            ("EAR FLAPS:", "bare"),
            ("Ear (make 2)", "bare"),
            ("Wings (x2):", "bare"),
            ("Spike (make 5)", "bare"),
            ("Long side", "bare"),
            ("Reverse sc around", "round"),
            ("Rnd 7 (make 2)", "round"),
            ("Rnd 1: 6 sc in ring (6)", "round"),
            ("sc in each st around", "round"),
            ("inc around", "round"),
            ("rep from * around (24)", "round"),
            ("Foundation: ch 4, join to form a ring", "round"),
            ("Fasten off", "round"),
        ];
        for (line, expected) in cases {
            assert_eq!(kind(line), expected, "{line}");
        }
    }
}
