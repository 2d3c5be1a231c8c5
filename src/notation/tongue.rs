//! Rounds in German, French, Spanish and Dutch: put phrase by phrase into the words of English notation, US terms, before
//! they are read. Which language a text is in is guessed from how many of its words each of them has.
//!
//! The phrases stand in a table for each language, a line each: `in die nächsten {n} m = in each of next {n} sts`. `{n}`
//! and `{m}` are numbers, `{o}` is an ordinal, `{s}` is any stitch of the table's first section.

use super::complain::is_word;
use super::lex::{Kind, Source, Token, tokens};
use std::collections::BTreeMap;
use std::sync::LazyLock;

/// A language that rounds are read in beside English.
pub(super) struct Tongue {
    /// What it is called in English.
    pub(super) name: &'static str,
    /// Its phrases by their first word, the longest first; those that begin with a stitch or a number under nothing.
    phrases: BTreeMap<String, Vec<Phrase>>,
}

struct Phrase {
    from: Vec<Piece>,
    to: Vec<Piece>,
    /// True where it names a stitch.
    stitch: bool,
}

#[derive(Clone, Debug, PartialEq)]
enum Piece {
    Token(Kind),
    Number(char),
    Ordinal(char),
    Stitch,
}

/// What the holes of a phrase hold.
#[derive(Clone, Debug, Default)]
struct Holes {
    numbers: BTreeMap<char, u32>,
    stitch: Vec<Kind>,
}

/// Numbers in words, of all four languages.
const NUMBERS: &[(&[&str], u32)] = &[
    (&["ein", "eine", "einen", "einem", "einer", "un", "une", "una", "uno", "een", "één"], 1),
    (&["zwei", "deux", "dos", "twee"], 2),
    (&["drei", "trois", "tres", "drie"], 3),
    (&["vier", "quatre", "cuatro"], 4),
    (&["fünf", "cinq", "cinco", "vijf"], 5),
    (&["sechs", "six", "seis", "zes"], 6),
    (&["sieben", "sept", "siete", "zeven"], 7),
    (&["acht", "huit", "ocho"], 8),
    (&["neun", "neuf", "nueve", "negen"], 9),
    (&["zehn", "dix", "diez", "tien"], 10),
    (&["elf", "onze", "once"], 11),
    (&["zwölf", "douze", "doce", "twaalf"], 12),
];

const ORDINALS: &[(&[&str], u32)] = &[
    (&["erste", "ersten", "erstes", "erster", "première", "premier", "primera", "primer", "primero", "eerste"], 1),
    (&["zweite", "zweiten", "zweites", "deuxième", "seconde", "segunda", "segundo", "tweede"], 2),
    (&["dritte", "dritten", "drittes", "troisième", "tercera", "tercer", "tercero", "derde"], 3),
    (&["vierte", "vierten", "viertes", "quatrième", "cuarta", "cuarto", "vierde"], 4),
    (&["fünfte", "fünften", "fünftes", "cinquième", "quinta", "quinto", "vijfde"], 5),
    (&["sechste", "sechsten", "sechstes", "sixième", "sexta", "sexto", "zesde"], 6),
];

/// What makes an ordinal of a number: `3.`, `3e`, `3.ª`.
const ENDINGS: &[&str] = &["e", "de", "ste", "er", "ère", "ème", "eme", "ª", "º", "a", "o"];

fn in_words(word: &str, list: &[(&[&str], u32)]) -> Option<u32> {
    list.iter().find(|(words, _)| words.contains(&word)).map(|(_, number)| *number)
}

/// A word as it is compared: with a plain apostrophe.
fn plain(word: &str) -> String {
    word.replace('’', "'")
}

fn pieces(text: &str) -> Vec<Piece> {
    let piece = |item: &str| match item {
        "{n}" | "{m}" => Some(Piece::Number(if item == "{n}" { 'n' } else { 'm' })),
        "{o}" => Some(Piece::Ordinal('o')),
        "{n}th" => Some(Piece::Ordinal('n')),
        "{s}" => Some(Piece::Stitch),
        _ => tokens(&[Source { text: item, place: None }]).into_iter().next().map(|token| Piece::Token(token.kind)),
    };
    // `_` stands for nothing: verbs and little words that rounds read without.
    text.split(' ').filter(|item| *item != "_").filter_map(piece).collect()
}

impl Tongue {
    fn new(name: &'static str, table: &str) -> Self {
        let mut phrases: BTreeMap<String, Vec<Phrase>> = BTreeMap::new();
        let mut sections = 0;
        for line in table.lines() {
            sections += usize::from(line.starts_with('#'));
            let Some((from, to)) = line.rsplit_once(" = ") else { continue };
            let (from, to) = (pieces(from), pieces(to));
            let first = match from.first() {
                Some(Piece::Token(Kind::Word(word))) => plain(word),
                Some(_) | None => String::new(),
            };
            let plain = [Kind::Word("st".to_owned()), Kind::Word("sts".to_owned()), Kind::Word("total".to_owned())];
            let stitch = sections == 1 && !matches!(&to[..], [Piece::Token(kind)] if plain.contains(kind));
            phrases.entry(first).or_default().push(Phrase { from, to, stitch });
        }
        for list in phrases.values_mut() {
            list.sort_by_key(|phrase| std::cmp::Reverse(phrase.from.len()));
        }
        Self { name, phrases }
    }

    /// All of them.
    fn all() -> &'static [Self] {
        static ALL: LazyLock<Vec<Tongue>> = LazyLock::new(|| {
            vec![
                Tongue::new("German", include_str!("tongue/de.txt")),
                Tongue::new("French", include_str!("tongue/fr.txt")),
                Tongue::new("Spanish", include_str!("tongue/es.txt")),
                Tongue::new("Dutch", include_str!("tongue/nl.txt")),
            ]
        });
        &ALL
    }

    /// The phrase that the tokens begin with, how many tokens it takes, and what its holes hold.
    fn find(&self, tokens: &[Token], stitches: bool) -> Option<(&Phrase, usize, Holes)> {
        let word = tokens.first()?.word().map(plain);
        let named = word.and_then(|word| self.phrases.get(&word)).into_iter().flatten();
        let open = self.phrases.get("").into_iter().flatten();
        let fits = named.chain(open).filter(|phrase| phrase.stitch || !stitches).filter_map(|phrase| {
            // A stitch that begins with another is not looked for inside of one.
            if stitches && phrase.from.first() == Some(&Piece::Stitch) {
                return None;
            }
            let (taken, holes) = self.fits(&phrase.from, tokens)?;
            Some((phrase, taken, holes))
        });
        fits.max_by_key(|(_, taken, _)| *taken)
    }

    fn fits(&self, from: &[Piece], tokens: &[Token]) -> Option<(usize, Holes)> {
        let (mut at, mut holes) = (0, Holes::default());
        for piece in from {
            let token = tokens.get(at)?;
            if at > 0 && token.starts_line {
                return None;
            }
            match piece {
                Piece::Token(kind) => {
                    let same = match (kind, &token.kind) {
                        (Kind::Dash(_), Kind::Dash(_)) | (Kind::Open(_), Kind::Open(_)) => true,
                        (Kind::Close(_), Kind::Close(_)) => true,
                        (Kind::Word(one), Kind::Word(other)) => *one == plain(other),
                        (one, other) => one == other,
                    };
                    at += usize::from(same);
                    if !same {
                        return None;
                    }
                }
                Piece::Number(letter) => {
                    let said = token.number().or_else(|| in_words(token.word()?, NUMBERS))?;
                    holes.numbers.insert(*letter, said);
                    at += 1;
                }
                Piece::Ordinal(letter) => {
                    let (said, taken) = ordinal(tokens.get(at..)?)?;
                    holes.numbers.insert(*letter, said);
                    at += taken;
                }
                Piece::Stitch => {
                    let rest = tokens.get(at..)?;
                    let (phrase, taken, own) = self.find(rest, true)?;
                    holes.stitch = phrase.to.iter().flat_map(|piece| filled(piece, &own)).collect();
                    at += taken;
                }
            }
        }
        Some((at, holes))
    }

    /// How many of the words belong to phrases of this language.
    fn knows(&self, tokens: &[Token]) -> usize {
        let (mut at, mut known) = (0, 0);
        while let Some(rest) = tokens.get(at..).filter(|rest| !rest.is_empty()) {
            let taken = self.find(rest, false).map_or(0, |(_, taken, _)| taken);
            known += rest.iter().take(taken).filter(|token| token.word().is_some()).count();
            at += taken.max(1);
        }
        known
    }

    /// The tokens in English. What stands for a phrase has its place; words that are no phrase stay.
    pub(super) fn english(&self, tokens: &[Token]) -> Vec<Token> {
        let mut english = Vec::with_capacity(tokens.len());
        let mut at = 0;
        // What began a line and was left out leaves that to what follows.
        let mut begins = false;
        while let Some(rest) = tokens.get(at..).filter(|rest| !rest.is_empty()) {
            let (Some((phrase, taken, holes)), Some(first)) = (self.find(rest, false), rest.first()) else {
                english.extend(rest.first().cloned().map(|mut token: Token| {
                    token.starts_line |= std::mem::take(&mut begins);
                    // `une maille serrée` is one.
                    if let Some(number) = token.word().and_then(|word| in_words(word, NUMBERS)) {
                        token.kind = Kind::Number(number);
                    }
                    token
                }));
                at += 1;
                continue;
            };
            begins |= first.starts_line;
            if phrase.to.is_empty() {
                at += taken;
                continue;
            }
            let starts = std::mem::take(&mut begins);
            let end = rest.get(taken - 1).map_or(first.start, |last| last.start + last.place.length);
            let length = end.saturating_sub(first.start);
            let kinds = phrase.to.iter().flat_map(|piece| filled(piece, &holes));
            english.extend(kinds.enumerate().map(|(index, kind)| {
                // All but the first take no room.
                let (start, length) = if index == 0 { (first.start, length) } else { (end, 0) };
                let place = crate::report::Place { length: length.max(1), ..first.place };
                Token { kind, place, start, starts_line: starts && index == 0, source: first.source }
            }));
            at += taken;
        }
        english
    }
}

/// The number of an ordinal, and how many tokens it takes.
fn ordinal(tokens: &[Token]) -> Option<(u32, usize)> {
    let first = tokens.first()?;
    if let Kind::Ordinal(number) = first.kind {
        return Some((number, 1));
    }
    if let Some(number) = first.word().and_then(|word| in_words(word, ORDINALS)) {
        return Some((number, 1));
    }
    let number = first.number()?;
    let stop = usize::from(tokens.get(1).is_some_and(|token| token.kind == Kind::Sign('.')));
    let ending = tokens.get(1 + stop).and_then(Token::word).is_some_and(|word| ENDINGS.contains(&word));
    let taken = 1 + stop + usize::from(ending);
    (taken > 1).then_some((number, taken))
}

fn filled(piece: &Piece, holes: &Holes) -> Vec<Kind> {
    let number = |letter: &char| holes.numbers.get(letter).copied().unwrap_or_default();
    match piece {
        Piece::Token(kind) => vec![kind.clone()],
        Piece::Number(letter) => vec![Kind::Number(number(letter))],
        Piece::Ordinal(letter) => vec![Kind::Ordinal(number(letter))],
        Piece::Stitch => holes.stitch.clone(),
    }
}

/// What language tokens are in.
pub(super) enum Guess {
    /// English, or too little to tell.
    English,
    /// One of the others.
    Other(&'static Tongue),
    /// None of these.
    Unknown,
}

/// Guesses it from how many of the words each language has.
pub(super) fn guess(tokens: &[Token]) -> Guess {
    const NEUTRAL: [&str; 4] = ["r", "t", "v", "x"];
    /// Fewer words than this tell nothing.
    const FEW: usize = 12;
    // Letters that number rounds and say how often are of no language.
    let words = tokens.iter().filter_map(Token::word).filter(|word| !NEUTRAL.contains(word));
    let mut known: BTreeMap<&str, bool> = BTreeMap::new();
    let (mut all, mut english) = (0_usize, 0_usize);
    for word in words {
        all += 1;
        // Looked up once for each word, however often it comes.
        let own = *known.entry(word).or_insert_with(|| is_word(word) || word.ends_with("tog"));
        english += usize::from(own);
    }
    if english * 10 >= all * 6 {
        return Guess::English;
    }
    let best = Tongue::all().iter().map(|tongue| (tongue.knows(tokens), tongue));
    // The first of equals.
    let best = best.reduce(|best, next| if next.0 > best.0 { next } else { best });
    match best {
        Some((known, tongue)) if known > english && known * 2 > all => Guess::Other(tongue),
        Some((known, _)) if all >= FEW && english.max(known) * 10 < all * 3 => Guess::Unknown,
        Some(_) | None => Guess::English,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn shown(text: &str) -> String {
        let tokens = tokens(&[Source { text, place: None }]);
        match guess(&tokens) {
            Guess::Other(tongue) => {
                let words: Vec<String> = tongue.english(&tokens).iter().map(Token::show).collect();
                format!("{}: {}", tongue.name, words.join(" "))
            }
            Guess::English => "English".to_owned(),
            Guess::Unknown => "unknown".to_owned(),
        }
    }

    #[test]
    fn phrases_are_put_into_english() {
        let cases = [
            ("Rd 3: [1 fM, 1 Zun] 6-mal (18)", "German: rnd 3 : [ 1 sc , 1 inc ] 6 times ( 18 )"),
            ("je 1 Stb in die nächsten 5 M", "German: , 1 dc in each of next 5 sts"),
            ("Tour 3 : 2 ms rab ens, aug", "French: rnd 3 : sc 2 tog , inc"),
            ("Vuelta 3: 1 pb en cada p (18 p)", "Spanish: rnd 3 : 1 sc in each st around ( 18 st )"),
            ("Toer 3: 1 v in elke steek (18 steken)", "Dutch: rnd 3 : 1 sc in each st around ( 18 sts )"),
            ("Rnd 3: sc in each st around (18)", "English"),
        ];
        for (text, expected) in cases {
            assert_eq!(shown(text), expected, "{text}");
        }
    }

    #[test]
    fn every_stitch_of_a_table_is_one_in_english() {
        let vocabulary = super::super::vocabulary::Vocabulary::of(crate::craft::Terms::Us);
        for tongue in Tongue::all() {
            let plain =
                |phrase: &&Phrase| phrase.stitch && phrase.from.iter().all(|piece| matches!(piece, Piece::Token(_)));
            for phrase in tongue.phrases.values().flatten().filter(plain) {
                let kinds = phrase.to.iter().flat_map(|piece| filled(piece, &Holes::default()));
                let text = kinds.map(|kind| if let Kind::Word(word) = kind { word } else { String::new() });
                let text = text.collect::<Vec<_>>().join(" ");
                let english = tokens(&[Source { text: &text, place: None }]);
                // A V-stitch is a name for several, which every text knows.
                let v = text.replace("sts", "st").split_whitespace().eq(["v", "st"]).then_some(english.len());
                let found = vocabulary.stitch(&english).map(|(_, taken)| taken).or(v);
                assert_eq!(found, Some(english.len()), "{text} in {}", tongue.name);
            }
        }
    }
}
