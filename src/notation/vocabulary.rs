//! How stitches are spelled in written rounds, in US and UK terms.

use super::lex::{Kind, Token};
use crate::craft::{Build, Side, Stitch, Terms};
use std::collections::BTreeMap;
use std::sync::LazyLock;

/// Further spellings of stitches, beside the abbreviations of the stitch table: US words, UK words, stitch.
const SPELLINGS: &[(&str, &str, Stitch)] = &[
    ("chain|chains|chs", "chain|chains|chs", Stitch::CH),
    ("sl st|ss|slst|slip stitch|sl stitch|slip st", "sl st|ss|slst|slip stitch|sl stitch|slip st", Stitch::SL_ST),
    ("single crochet|single crochets|scs", "double crochet|double crochets|dcs", Stitch::SC),
    (
        "half double crochet|half double crochets|half double",
        "half treble crochet|half treble|half trebles",
        Stitch::HDC,
    ),
    ("double crochet|double crochets|dcs", "treble crochet|treble|trebles", Stitch::DC),
    ("treble crochet|treble|trebles|trc", "double treble crochet|double treble|double trebles", Stitch::TR),
    ("double treble crochet|double treble|double trebles", "triple treble|triple trebles", Stitch::DTR),
    ("cl|cluster", "cl|cluster", Stitch::CLUSTER),
    ("puff st|puff stitch|puff", "puff st|puff stitch|puff", Stitch::PUFF),
    ("bobble|bo", "bobble|bo", Stitch::BOBBLE),
    ("popcorn|pc", "popcorn|pc", Stitch::POPCORN),
    ("picot|p", "picot|p", Stitch::PICOT),
];

/// Words for stitches built of others, `N` the number of those and `S` any of their spellings: `5-dc popcorn`.
const fn built(build: Build) -> &'static [&'static str] {
    match build {
        Build::Chain | Build::Slip | Build::Cross | Build::Stem => &[],
        Build::Post(Side::Front) => &["fp S", "front post S"],
        Build::Post(Side::Back) => &["bp S", "back post S"],
        Build::Cluster => &["N S cl", "N S cluster"],
        Build::Puff => &["N S puff", "N S puff st", "N S puff stitch"],
        Build::Bobble => &["N S bo", "N S bobble"],
        Build::Popcorn => &["N S pc", "N S popcorn"],
        Build::Picot => &["S N p", "S N picot", "N S p", "N S picot"],
    }
}

/// Words that belong to the other set of terms, with their meaning: where they stand, the file is mixed.
const FOREIGN_TO_US: &[(&str, Stitch)] = &[("htr", Stitch::HDC), ("half treble", Stitch::HDC)];
const FOREIGN_TO_UK: &[(&str, Stitch)] =
    &[("sc", Stitch::SC), ("single crochet", Stitch::SC), ("hdc", Stitch::HDC), ("half double crochet", Stitch::HDC)];

/// Words that are not stitches and still belong to one set of terms.
const ONLY_UK: &[&str] = &["miss", "missing", "tension", "yrh", "yoh"];
const ONLY_US: &[&str] = &["gauge"];

/// The spellings of one set of terms.
#[derive(Debug)]
pub(crate) struct Vocabulary {
    /// Spellings word by word under their first, the longest first; dashes don't count.
    spellings: BTreeMap<String, Vec<(Vec<String>, Stitch)>>,
    pub(crate) terms: Terms,
}

fn split(spelling: &str) -> Vec<String> {
    let words = spelling.split([' ', '-']).map(str::to_lowercase);
    words.filter(|word| !word.is_empty()).collect()
}

/// Every spelling of every stitch.
fn spellings(terms: Terms) -> Vec<(Vec<String>, Stitch)> {
    let us = terms == Terms::Us;
    let foreign = if us { FOREIGN_TO_US } else { FOREIGN_TO_UK };
    let table = Stitch::all().map(|stitch| (if us { stitch.row().us } else { stitch.row().uk }, stitch));
    let listed = SPELLINGS.iter().flat_map(|(in_us, in_uk, stitch)| {
        let words = if us { in_us } else { in_uk };
        words.split('|').map(|spelling| (spelling, *stitch))
    });
    let all = table.chain(listed).chain(foreign.iter().copied());
    let mut spellings: Vec<_> = all.map(|(spelling, stitch)| (split(spelling), stitch)).collect();
    for stitch in Stitch::all() {
        let Some(base) = stitch.built_of() else { continue };
        let bases = spellings.iter().filter(|(_, known)| *known == base).map(|(words, _)| words.join(" "));
        let bases: Vec<String> = bases.collect();
        for form in built(stitch.row().build) {
            let form = form.replace('N', &stitch.row().stems.to_string());
            spellings.extend(bases.iter().map(|base| (split(&form.replace('S', base)), stitch)));
        }
    }
    spellings
}

impl Vocabulary {
    /// Those of these terms.
    pub(crate) fn of(terms: Terms) -> &'static Self {
        static US: LazyLock<Vocabulary> = LazyLock::new(|| Vocabulary::new(Terms::Us));
        static UK: LazyLock<Vocabulary> = LazyLock::new(|| Vocabulary::new(Terms::Uk));
        match terms {
            Terms::Us => &US,
            Terms::Uk => &UK,
        }
    }

    fn new(terms: Terms) -> Self {
        let mut by_first: BTreeMap<String, Vec<(Vec<String>, Stitch)>> = BTreeMap::new();
        for (words, stitch) in spellings(terms) {
            let Some(first) = words.first() else { continue };
            by_first.entry(first.clone()).or_default().push((words, stitch));
        }
        for words in by_first.values_mut() {
            words.sort_by_key(|(words, _)| std::cmp::Reverse(words.len()));
        }
        Self { spellings: by_first, terms }
    }

    /// The stitch that the tokens begin with, and how many tokens its name takes.
    pub(crate) fn stitch(&self, tokens: &[Token]) -> Option<(Stitch, usize)> {
        let fits = |words: &[String]| {
            let mut at = 0;
            for (index, word) in words.iter().enumerate() {
                if index > 0 && tokens.get(at).is_some_and(|token| token.kind == Kind::Dash(false)) {
                    at += 1;
                }
                let same = match &tokens.get(at)?.kind {
                    Kind::Word(known) => known == word,
                    Kind::Number(number) => word.parse() == Ok(*number),
                    Kind::Ordinal(_) | Kind::Open(_) | Kind::Close(_) | Kind::Sign(_) | Kind::Dash(_) => false,
                };
                if !same {
                    return None;
                }
                at += 1;
            }
            Some(at)
        };
        let listed = match &tokens.first()?.kind {
            Kind::Word(word) => self.spellings.get(word)?,
            Kind::Number(number) => self.spellings.get(&number.to_string())?,
            Kind::Ordinal(_) | Kind::Open(_) | Kind::Close(_) | Kind::Sign(_) | Kind::Dash(_) => return None,
        };
        listed.iter().find_map(|(words, stitch)| fits(words).map(|taken| (*stitch, taken)))
    }

    /// The stitch of a single word such as the `sc` of `sc2tog`.
    pub(crate) fn stem(&self, word: &str) -> Option<Stitch> {
        self.spellings.get(word)?.iter().find(|(words, _)| words.len() == 1).map(|(_, stitch)| *stitch)
    }

    /// The word that gives away the other set of terms, at the start of the tokens: how it is written, and what it is
    /// called in these terms.
    pub(crate) fn giveaway(&self, tokens: &[Token]) -> Option<(String, Option<Stitch>)> {
        let word = tokens.first()?.word()?;
        let (foreign, only) = match self.terms {
            Terms::Us => (FOREIGN_TO_US, ONLY_UK),
            Terms::Uk => (FOREIGN_TO_UK, ONLY_US),
        };
        if only.contains(&word) {
            return Some((word.to_owned(), None));
        }
        let stem = word.split(|c: char| c.is_ascii_digit()).next().filter(|stem| stem.len() < word.len());
        for (spelling, stitch) in foreign {
            let words = split(spelling);
            let follows = |(token, word): (&Token, &String)| token.word() == Some(word);
            let whole = tokens.len() >= words.len() && tokens.iter().zip(&words).all(follows);
            let inside = words.len() == 1 && stem == words.first().map(String::as_str);
            if whole || inside {
                return Some((if inside { word.to_owned() } else { (*spelling).to_owned() }, Some(*stitch)));
            }
        }
        None
    }

    /// Every word of every spelling, for suggestions.
    pub(crate) fn words(&self) -> impl Iterator<Item = &str> {
        self.spellings.values().flatten().flat_map(|(words, _)| words.iter().map(String::as_str))
    }

    /// The abbreviation of a stitch.
    pub(crate) fn short(&self, stitch: Stitch) -> &'static str {
        match self.terms {
            Terms::Us => stitch.row().us,
            Terms::Uk => stitch.row().uk,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::notation::lex::{Source, tokens};

    fn first(text: &str, terms: Terms) -> Option<Stitch> {
        let tokens = tokens(&[Source { text, place: None }]);
        Vocabulary::of(terms).stitch(&tokens).filter(|(_, taken)| *taken == tokens.len()).map(|(stitch, _)| stitch)
    }

    /// US and UK pairs of the Craft Yarn Council's abbreviation list.
    #[test]
    fn the_published_pairs_name_the_same_stitch() {
        let pairs = [
            ("ch", "ch"),
            ("sl st", "ss"),
            ("sc", "dc"),
            ("hdc", "htr"),
            ("dc", "tr"),
            ("tr", "dtr"),
            ("dtr", "trtr"),
            ("single crochet", "double crochet"),
            ("half double crochet", "half treble"),
            ("double crochet", "treble"),
            ("treble", "double treble"),
            ("double treble", "triple treble"),
            ("FPsc", "FPdc"),
            ("BPhdc", "BPhtr"),
            ("FPdc", "FPtr"),
            ("BPtr", "BPdtr"),
        ];
        for (us, uk) in pairs {
            let stitch = first(us, Terms::Us);
            assert!(stitch.is_some(), "{us}");
            assert_eq!(stitch, first(uk, Terms::Uk), "{us} and {uk}");
        }
    }

    #[test]
    fn stitches_built_of_others_are_spelled_after_them() {
        let cases = [
            ("4-dc cl", "cluster4"),
            ("2 double crochet cluster", "cluster2"),
            ("3-treble cluster", "tr-cluster"),
            ("cluster", "cluster"),
            ("front post half double crochet", "fphdc"),
            ("bp sc", "bpsc"),
            ("3-dc bobble", "bobble3"),
            ("4-hdc puff stitch", "puff4"),
            ("ch-4 picot", "picot4"),
            ("4-ch picot", "picot4"),
            ("ch 3 p", "picot"),
        ];
        for (spelling, id) in cases {
            assert_eq!(first(spelling, Terms::Us), Stitch::by_id(id), "{spelling}");
        }
    }
}
