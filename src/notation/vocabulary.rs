//! The words that stitches go by in written rounds, in US and UK terms.

use super::lex::{Kind, Token};
use crate::craft::{Stitch, Terms, abbreviation, spellings};
use std::collections::BTreeMap;
use std::sync::LazyLock;

/// Words that are not stitches and still belong to one set of terms.
const ONLY_UK: &[&str] = &["miss", "missing", "tension", "yrh", "yoh"];
const ONLY_US: &[&str] = &["gauge"];

/// The spellings of one set of terms.
#[derive(Debug)]
pub(crate) struct Vocabulary {
    /// Spellings word by word under their first, the longest first; dashes don't count.
    spellings: BTreeMap<String, Vec<(Vec<String>, Stitch)>>,
    /// Spellings of the other set of terms that mean nothing in this one, the longest first: where they stand, the file
    /// is mixed.
    foreign: Vec<(Vec<String>, Stitch)>,
    pub(crate) terms: Terms,
}

fn split((spelling, stitch): (String, Stitch)) -> (Vec<String>, Stitch) {
    (spelling.split(' ').map(str::to_owned).collect(), stitch)
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
        let own: Vec<_> = spellings(terms).into_iter().map(split).collect();
        let means_nothing = |words: &[String]| own.iter().all(|(known, _)| known != words);
        let foreign = spellings(terms.other()).into_iter().map(split);
        let mut foreign: Vec<_> = foreign.filter(|(words, _)| means_nothing(words)).collect();
        foreign.sort_by_key(|(words, _)| std::cmp::Reverse(words.len()));
        let mut by_first: BTreeMap<String, Vec<(Vec<String>, Stitch)>> = BTreeMap::new();
        for (words, stitch) in own.iter().chain(&foreign) {
            let Some(first) = words.first() else { continue };
            by_first.entry(first.clone()).or_default().push((words.clone(), *stitch));
        }
        for words in by_first.values_mut() {
            words.sort_by_key(|(words, _)| std::cmp::Reverse(words.len()));
        }
        Self { spellings: by_first, foreign, terms }
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
        let only = match self.terms {
            Terms::Us => ONLY_UK,
            Terms::Uk => ONLY_US,
        };
        if only.contains(&word) {
            return Some((word.to_owned(), None));
        }
        let stem = word.split(|c: char| c.is_ascii_digit()).next().filter(|stem| stem.len() < word.len());
        for (words, stitch) in &self.foreign {
            let follows = |(token, word): (&Token, &String)| token.word() == Some(word);
            let whole = tokens.len() >= words.len() && tokens.iter().zip(words).all(follows);
            let inside = words.len() == 1 && stem == words.first().map(String::as_str);
            if whole || inside {
                return Some((if inside { word.to_owned() } else { words.join(" ") }, Some(*stitch)));
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
        abbreviation(stitch, self.terms)
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
            ("trtr", "qtr"),
            ("triple treble", "quadruple treble"),
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
    fn every_spelling_of_every_row_is_read_with_blanks_and_with_hyphens() {
        for terms in [Terms::Us, Terms::Uk] {
            for (spelling, stitch) in spellings(terms) {
                for written in [spelling.clone(), spelling.replace(' ', "-"), spelling.to_uppercase()] {
                    assert_eq!(first(&written, terms), Some(stitch), "{written} in {terms:?}");
                }
            }
        }
    }

    #[test]
    fn names_of_the_other_terms_are_given_away() {
        let away = |text, terms| {
            let tokens = tokens(&[Source { text, place: None }]);
            Vocabulary::of(terms).giveaway(&tokens)
        };
        assert_eq!(away("htr", Terms::Us), Some(("htr".to_owned(), Some(Stitch::HDC))));
        assert_eq!(away("half treble in next st", Terms::Us), Some(("half treble".to_owned(), Some(Stitch::HDC))));
        assert_eq!(away("qtr", Terms::Us), Some(("qtr".to_owned(), Stitch::by_id("trtr"))));
        assert_eq!(away("hdc2tog", Terms::Uk), Some(("hdc2tog".to_owned(), Some(Stitch::HDC))));
        assert_eq!(away("single crochet", Terms::Uk), Some(("single crochet".to_owned(), Some(Stitch::SC))));
        assert_eq!(away("trtr", Terms::Us), None);
        assert_eq!(away("trtr", Terms::Uk), None);
        assert_eq!(away("double crochet", Terms::Uk), None);
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
