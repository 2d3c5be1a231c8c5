//! How stitches are spelled in written rounds, in US and UK terms.

use super::lex::{Kind, Token};
use crate::design::Terms;
use crate::stitch::Stitch;

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
    ("fp dc|front post dc|front post double crochet", "fp tr|front post tr|front post treble", Stitch::FPDC),
    ("bp dc|back post dc|back post double crochet", "bp tr|back post tr|back post treble", Stitch::BPDC),
    ("3 dc cluster|cl|cluster", "3 tr cluster|cl|cluster", Stitch::CLUSTER),
    (
        "3 hdc puff st|3 hdc puff stitch|puff st|puff stitch|puff",
        "3 htr puff st|puff st|puff stitch|puff",
        Stitch::PUFF,
    ),
    ("5 dc bo|bobble|bo", "5 tr bo|bobble|bo", Stitch::BOBBLE),
    ("5 dc popcorn|popcorn|pc", "5 tr popcorn|popcorn|pc", Stitch::POPCORN),
    ("ch 3 p|picot", "ch 3 p|picot", Stitch::PICOT),
];

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
    /// Spellings word by word, the longest first; dashes don't count.
    spellings: Vec<(Vec<String>, Stitch)>,
    pub(crate) terms: Terms,
}

fn split(spelling: &str) -> Vec<String> {
    let words = spelling.split([' ', '-']).map(str::to_lowercase);
    words.filter(|word| !word.is_empty()).collect()
}

impl Vocabulary {
    pub(crate) fn of(terms: Terms) -> Self {
        let us = terms == Terms::Us;
        let foreign = if us { FOREIGN_TO_US } else { FOREIGN_TO_UK };
        let table = Stitch::all().map(|stitch| (if us { stitch.row().us } else { stitch.row().uk }, stitch));
        let listed = SPELLINGS.iter().flat_map(|(in_us, in_uk, stitch)| {
            let words = if us { in_us } else { in_uk };
            words.split('|').map(|spelling| (spelling, *stitch))
        });
        let all = table.chain(listed).chain(foreign.iter().copied());
        let mut spellings: Vec<_> = all.map(|(spelling, stitch)| (split(spelling), stitch)).collect();
        spellings.sort_by_key(|(words, _)| std::cmp::Reverse(words.len()));
        Self { spellings, terms }
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
        self.spellings.iter().find_map(|(words, stitch)| fits(words).map(|taken| (*stitch, taken)))
    }

    /// The stitch of a single word such as the `sc` of `sc2tog`.
    pub(crate) fn stem(&self, word: &str) -> Option<Stitch> {
        let one = |(words, _): &&(Vec<String>, Stitch)| matches!(&words[..], [only] if only == word);
        self.spellings.iter().find(one).map(|(_, stitch)| *stitch)
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
        self.spellings.iter().flat_map(|(words, _)| words.iter().map(String::as_str))
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
            ("FPdc", "FPtr"),
        ];
        for (us, uk) in pairs {
            let stitch = first(us, Terms::Us);
            assert!(stitch.is_some(), "{us}");
            assert_eq!(stitch, first(uk, Terms::Uk), "{us} and {uk}");
        }
    }
}
