//! The words of each language as they stand in print, with what a maker takes them to mean. They are written down here
//! again, so that a catalogue that says another thing than it means is found out.

use roundelay::craft::{Build, Side, Stitch, Terms};

/// One language.
pub(super) struct Tongue {
    pub(super) tag: &'static str,
    lines: Vec<(&'static str, &'static str)>,
}

/// What stands in the holes of a template, by their letters.
pub(super) type Holes<'t> = Vec<(char, &'t str)>;

pub(super) const TAGS: [&str; 5] = ["en", "de", "fr", "es", "nl"];

impl Tongue {
    pub(super) fn of(tag: &str) -> Self {
        let (tag, text) = match tag {
            "de" => ("de", include_str!("words/de.txt")),
            "fr" => ("fr", include_str!("words/fr.txt")),
            "es" => ("es", include_str!("words/es.txt")),
            "nl" => ("nl", include_str!("words/nl.txt")),
            _ => ("en", include_str!("words/en.txt")),
        };
        let line = |line: &'static str| {
            let (key, words) = line.split_once('=').unwrap_or_else(|| panic!("{tag}: “{line}”"));
            let words = words.trim();
            (key.trim(), words.strip_prefix('"').and_then(|words| words.strip_suffix('"')).unwrap_or(words))
        };
        Self { tag, lines: text.lines().filter(|line| !line.is_empty()).map(line).collect() }
    }

    /// Everything that is said under a key.
    pub(super) fn all<'k>(&self, key: &'k str) -> impl Iterator<Item = &'static str> + use<'_, 'k> {
        self.lines.iter().filter(move |(known, _)| *known == key).map(|(_, words)| *words)
    }

    pub(super) fn one(&self, key: &str) -> &'static str {
        self.all(key).next().unwrap_or_else(|| panic!("{}: no words for {key}", self.tag))
    }

    /// Keys that begin so, without their beginning, with their words.
    pub(super) fn under<'k>(&'k self, lead: &'k str) -> impl Iterator<Item = (&'static str, &'static str)> + use<'k> {
        self.lines.iter().filter_map(move |(key, words)| Some((key.strip_prefix(lead)?, *words)))
    }

    /// The words of a key, filled by some text.
    pub(super) fn read<'t>(&self, key: &str, text: &'t str) -> Option<Holes<'t>> {
        self.all(key).find_map(|template| fit(template, text))
    }

    /// A number in figures, or in words.
    pub(super) fn number(&self, text: &str) -> Option<usize> {
        let words = || self.all("number").flat_map(str::split_whitespace);
        let place = || words().position(|words| words.split(',').any(|word| word == text));
        text.parse().ok().or_else(|| Some(place()? + 1))
    }

    /// A number with its decimals.
    pub(super) fn decimal(&self, text: &str) -> Option<f64> {
        let mark = self.one("decimal");
        if mark != "." && text.contains('.') { None } else { text.replace(mark, ".").parse().ok() }
    }

    /// What a stitch is called in rounds.
    pub(super) fn name(&self, stitch: Stitch, terms: Terms) -> String {
        let row = stitch.row();
        let built = match row.build {
            Build::Post(Side::Front) => "built.fp",
            Build::Post(Side::Back) => "built.bp",
            Build::Cluster => "built.cluster",
            Build::Puff => "built.puff",
            Build::Bobble => "built.bobble",
            Build::Popcorn => "built.popcorn",
            Build::Picot => "built.picot",
            Build::Extended => "built.extended",
            Build::Long => "built.long",
            Build::Spike if row.stems == 1 => "built.spike",
            Build::Spike => "built.spikes",
            Build::Loop => "built.loop",
            Build::Reverse => "built.reverse",
            Build::Linked => "built.linked",
            Build::Chain | Build::Slip | Build::Cross | Build::Stem => {
                let own = self.all(&format!("uk.{}", row.id)).next().filter(|_| terms == Terms::Uk);
                return own.unwrap_or_else(|| self.one(&format!("stitch.{}", row.id))).to_owned();
            }
        };
        let of = stitch.built_of().map_or(String::new(), |of| self.name(of, terms));
        self.one(built).replace("{s}", &of).replace("{n}", &row.stems.to_string())
    }
}

/// What stands in the holes of a template where a text is made by it: a word in `{n}`, `{m}` and `{o}`, any words in the
/// others, as few as will do, with all their brackets closed.
pub(super) fn fit<'t>(template: &str, text: &'t str) -> Option<Holes<'t>> {
    let Some(at) = template.find('{') else { return (template == text).then(Vec::new) };
    let rest = text.strip_prefix(&template[..at])?;
    let hole = template[at + 1..].chars().next()?;
    let after = &template[at + 3..];
    let with = |end: usize| {
        let mut holes = fit(after, &rest[end..])?;
        holes.insert(0, (hole, &rest[..end]));
        Some(holes)
    };
    if matches!(hole, 'n' | 'm' | 'o') {
        // Figures, or a word of letters; the place of a chain is told by both, `2nd`.
        let figures = rest.starts_with(|letter: char| letter.is_ascii_digit());
        let own = |letter: char| match (hole, figures) {
            ('o', _) => letter.is_alphanumeric() || letter == '.',
            (_, true) => letter.is_ascii_digit() || ".,".contains(letter),
            (_, false) => letter.is_alphabetic(),
        };
        let most = rest.find(|letter| !own(letter)).unwrap_or(rest.len());
        return (1..=most).rev().filter(|end| rest.is_char_boundary(*end)).find_map(with);
    }
    let ends = rest.char_indices().map(|(at, _)| at).chain([rest.len()]).filter(|end| *end > 0);
    ends.filter(|end| level(&rest[..*end]) == Some(0)).find_map(with)
}

/// How many brackets stand open at the end; nothing where one closes that wasn't opened.
pub(super) fn level(text: &str) -> Option<u32> {
    let mut open = 0_u32;
    for letter in text.chars() {
        match letter {
            '(' | '[' => open += 1,
            ')' | ']' => open = open.checked_sub(1)?,
            _ => {}
        }
    }
    Some(open)
}

/// The pieces of a text between separators that stand outside all brackets.
pub(super) fn split<'t>(text: &'t str, separator: &str) -> Vec<&'t str> {
    let mut pieces = Vec::new();
    let mut start = 0;
    for (at, _) in text.match_indices(separator) {
        if at >= start && level(&text[start..at]) == Some(0) {
            pieces.push(&text[start..at]);
            start = at + separator.len();
        }
    }
    pieces.push(&text[start..]);
    pieces
}
