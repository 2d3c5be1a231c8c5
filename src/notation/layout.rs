//! What a page does to rounds beside their words: bullets, boxes to tick, bold marks, table bars, dots that lead to the
//! count. They are taken away, or become the sign that they stand for.

use super::header::header;
use super::lex::{Kind, Token};

/// Signs that only adorn.
fn adorns(sign: char) -> bool {
    let kept = ['×', '“', '”', '„', '«', '»', '‘', '’', '″', '′', '…', '½', '¼', '¾', '°', '&'];
    matches!(sign, '_' | '`') || (!sign.is_ascii() && !sign.is_alphanumeric() && !kept.contains(&sign))
}

/// The tokens without what only adorns them.
pub(super) fn plain(tokens: Vec<Token>) -> Vec<Token> {
    let mut plain: Vec<Token> = Vec::with_capacity(tokens.len());
    let mut rest = &tokens[..];
    // Whether a token that started a line was taken away, and the line is in bold.
    let (mut starts, mut bold) = (false, false);
    // How many `<` are open on the line.
    let mut angles = 0_usize;
    while let [token, after @ ..] = rest {
        let mut token = token.clone();
        bold &= !token.starts_line;
        angles = if token.starts_line { 0 } else { angles };
        token.starts_line |= starts;
        starts = false;
        // Only where a line starts, so that a long row of signs costs no more than others.
        let bullet = if token.starts_line { ornament(rest, 3) } else { None };
        let taken = match (token.starts_line, bullet) {
            (true, Some(length)) => {
                bold = length == 2 && double_star(rest);
                length
            }
            (false, _) if leads_to_count(rest) => {
                token.kind = Kind::Dash(true);
                0
            }
            (_, _) if matches!(token.kind, Kind::Sign(sign) if adorns(sign)) => 1,
            (_, _) if bold && double_star(rest) => {
                bold = false;
                2
            }
            (true, None) if token.kind == Kind::Sign('|') => 1,
            (_, _) => 0,
        };
        if taken > 0 {
            starts = token.starts_line;
            rest = rest.get(taken..).unwrap_or_default();
            continue;
        }
        let here = rest;
        rest = after;
        // `>>`, `->`, `»` and `::` part number, work and count.
        if let Some(taken) = arrow(here, angles) {
            token.kind = Kind::Dash(true);
            rest = here.get(taken..).unwrap_or_default();
            plain.push(token);
            continue;
        }
        match token.kind {
            Kind::Open('<') => angles += 1,
            Kind::Close('>') => angles = angles.saturating_sub(1),
            // In a table a number alone is that of the round.
            Kind::Sign('|') if plain.last().is_some_and(|last| last.starts_line && last.number().is_some()) => {
                token.kind = Kind::Sign(':');
            }
            Kind::Sign('|') => token.kind = Kind::Sign(','),
            Kind::Sign('~') => token.kind = Kind::Dash(true),
            Kind::Sign('…') => {
                token.kind = Kind::Dash(true);
                rest = past(rest, |kind| matches!(kind, Kind::Sign('…' | '.')));
            }
            Kind::Sign('.') => {
                let dots = rest.iter().take_while(|next| next.kind == Kind::Sign('.')).count();
                // Three dots and more lead to the count.
                if dots >= 2 {
                    token.kind = Kind::Dash(true);
                    rest = rest.get(dots..).unwrap_or_default();
                } else if plain.last().is_some_and(|word| abbreviated(word, &token, rest.first())) {
                    continue;
                }
            }
            // `=>` leads to the count, and so do two strokes.
            Kind::Sign('=') => rest = past(rest, |kind| *kind == Kind::Close('>')),
            Kind::Sign('/') if rest.first().is_some_and(|next| next.kind == Kind::Sign('/')) => {
                token.kind = Kind::Dash(true);
                rest = past(rest, |kind| *kind == Kind::Sign('/'));
            }
            Kind::Sign('/') if plain.last().is_some_and(|word| apart(word, &token)) => token.kind = Kind::Sign(','),
            Kind::Sign('*') if double_star(here) => {
                rest = rest.get(1..).unwrap_or_default();
            }
            Kind::Word(ref word) => {
                if let Some((whole, taken)) = letters(word, rest) {
                    let last =
                        taken.checked_sub(1).and_then(|last| rest.get(last)).map_or(token.place, |last| last.place);
                    token.place.length = (last.offset + last.length).saturating_sub(token.place.offset);
                    token.kind = Kind::Word(whole.to_owned());
                    rest = rest.get(taken..).unwrap_or_default();
                }
            }
            Kind::Number(_) | Kind::Ordinal(_) | Kind::Open(_) | Kind::Close(_) => {}
            Kind::Sign(_) | Kind::Dash(_) => {}
        }
        plain.push(token);
    }
    plain
}

/// How many tokens are an arrow, a double colon or a quotation mark that stands by itself.
fn arrow(tokens: &[Token], angles: usize) -> Option<usize> {
    let is = |token: &Token, sign: fn(&Kind) -> bool| sign(&token.kind) && !token.starts_line;
    let first = tokens.first()?;
    const LONGEST: usize = 8;
    let dashes = |token: &&Token| is(token, |kind| matches!(kind, Kind::Dash(_)));
    let led = matches!(first.kind, Kind::Dash(_));
    let lead = if led { 1 + tokens.iter().skip(1).take(LONGEST).take_while(dashes).count() } else { 0 };
    let heads = tokens.iter().skip(lead).take(LONGEST);
    let heads = heads.take_while(|token| is(token, |kind| *kind == Kind::Close('>'))).count();
    if heads > 0 && (angles == 0 || lead > 0) {
        return Some(lead + heads);
    }
    let twice = first.kind == Kind::Sign(':')
        && tokens.get(1).is_some_and(|next| next.kind == Kind::Sign(':') && !apart(first, next));
    let alone = first.kind == Kind::Sign('»') && tokens.get(1).is_some_and(|next| apart(first, next));
    if twice { Some(2) } else { alone.then_some(1) }
}

/// `… x6 • 30`: an ornament between blanks, then a number, which ends the line.
fn leads_to_count(tokens: &[Token]) -> bool {
    let [bullet, number, rest @ ..] = tokens else { return false };
    let adorned = matches!(bullet.kind, Kind::Sign(sign) if adorns(sign) && sign != '_' && sign != '`');
    // Two tell that it isn't one alone, however long the line is.
    let plain = rest.iter().take_while(|token| !token.starts_line && !adornment(token)).take(2);
    let named = plain.clone().count() <= 1 && plain.clone().all(|token| token.word().is_some());
    adorned && number.number().is_some() && !number.starts_line && apart(bullet, number) && named
}

fn adornment(token: &Token) -> bool {
    matches!(token.kind, Kind::Sign(sign) if adorns(sign))
}

/// What follows behind tokens of this kind on the same line.
fn past(rest: &[Token], kind: fn(&Kind) -> bool) -> &[Token] {
    let taken = rest.iter().take_while(|next| kind(&next.kind) && !next.starts_line).count();
    rest.get(taken..).unwrap_or_default()
}

/// True where a blank stands between the two.
fn apart(one: &Token, other: &Token) -> bool {
    one.source != other.source || one.start + one.place.length < other.start
}

/// True where the full stop behind a word only shortens it, and the sentence goes on: `1 tr. in next st`.
fn abbreviated(word: &Token, stop: &Token, next: Option<&Token>) -> bool {
    const SHORT: &[&str] = &[
        "st", "sts", "sp", "sps", "rnd", "rnds", "rep", "beg", "ch", "chs", "tr", "sc", "dc", "hdc", "htr", "dtr",
        "sl", "ss", "lp", "lps", "tog", "sk", "inc", "dec", "inv", "rem", "prev", "foll",
    ];
    const ON: &[&str] = &[
        "in", "into", "to", "of", "around", "from", "and", "at", "over", "on", "until", "st", "sts", "times", "next",
        "dec",
    ];
    let short = word.word().is_some_and(|word| SHORT.contains(&word));
    let often = word.word() == Some("rep") && next.is_some_and(|next| next.number().is_some());
    let on = often || next.and_then(Token::word).is_some_and(|next| ON.contains(&next));
    let on = on && next.is_some_and(|next| !next.starts_line);
    short && on && !apart(word, stop)
}

/// The abbreviation whose letters stand apart, `s c`, `h.d.c.`, `half d c`, and how many tokens follow that belong to it.
fn letters(first: &str, rest: &[Token]) -> Option<(&'static str, usize)> {
    const WHOLE: [(&[&str], &str); 9] = [
        (&["s", "c"], "sc"),
        (&["d", "c"], "dc"),
        (&["h", "d", "c"], "hdc"),
        (&["half", "d", "c"], "hdc"),
        (&["half", "dc"], "hdc"),
        (&["hf", "dc"], "hdc"),
        (&["half", "tr"], "htr"),
        (&["h", "tr"], "htr"),
        (&["d", "tr"], "dtr"),
    ];
    let fits = |letters: &[&str]| {
        if letters.first() != Some(&first) {
            return None;
        }
        let (mut at, mut dotted) = (0, false);
        for letter in letters.iter().skip(1) {
            dotted = rest.get(at).is_some_and(|next| next.kind == Kind::Sign('.'));
            at += usize::from(dotted);
            let own = rest.get(at).filter(|next| next.word() == Some(letter) && !next.starts_line)?;
            at += usize::from(own.word().is_some());
        }
        // Its last full stop belongs to it unless a sentence ends there.
        let on = rest.get(at + 1).is_some_and(|next| !next.starts_line && (next.word().is_some() || is_close(next)));
        // So does it where the next round begins.
        let next = rest.get(at + 1..).and_then(header).is_some_and(|header| !header.bare);
        let stop = dotted && on && !next && rest.get(at).is_some_and(|next| next.kind == Kind::Sign('.'));
        Some(at + usize::from(stop))
    };
    WHOLE.iter().find_map(|(letters, whole)| fits(letters).map(|taken| (*whole, taken)))
}

fn is_close(token: &Token) -> bool {
    matches!(token.kind, Kind::Close(_))
}

/// Two asterisks without a blank between them.
fn double_star(tokens: &[Token]) -> bool {
    let [one, two, ..] = tokens else { return false };
    one.kind == Kind::Sign('*') && two.kind == Kind::Sign('*') && one.start + 1 == two.start
}

/// The tokens of a bullet, a box or a bold mark in front of a round's number, or of so many others before that.
fn ornament(tokens: &[Token], others: u32) -> Option<usize> {
    let is = |at: usize, wanted: fn(&Kind) -> bool| tokens.get(at).is_some_and(|token| wanted(&token.kind));
    let open = is(0, |kind| matches!(kind, Kind::Open('[')));
    let ticked = usize::from(tokens.get(1).and_then(Token::word) == Some("x"));
    let length = if open && is(1 + ticked, |kind| matches!(kind, Kind::Close(']'))) {
        2 + ticked
    } else if double_star(tokens) {
        2
    } else if is(0, |kind| matches!(kind, Kind::Sign('*' | '+') | Kind::Dash(_) | Kind::Close('>'))) {
        1
    } else {
        return None;
    };
    let rest = tokens.get(length..).unwrap_or_default();
    // A bold mark may follow the bullet.
    (header(rest).is_some() || (length == 1 && others > 0 && ornament(rest, others - 1).is_some())).then_some(length)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::notation::lex::{Source, tokens};

    fn shown(text: &str) -> String {
        let plain = plain(tokens(&[Source { text, place: None }]));
        plain.iter().map(Token::show).collect::<Vec<_>>().join(" ")
    }

    #[test]
    fn ornaments_go_and_repeats_stay() {
        let cases = [
            ("• Rnd 2: sc", "rnd 2 : sc"),
            ("- **Rnd 2:** *sc, inc*", "rnd 2 : * sc , inc *"),
            ("[x] Rnd 2: sc", "rnd 2 : sc"),
            ("| Rnd 2 | sc | 6 |", "rnd 2 , sc , 6 ,"),
            ("Rnd 2: *sc, inc; rep from *", "rnd 2 : * sc , inc ; rep from *"),
            ("* sc in next st", "* sc in next st"),
            ("Rnd 2: 6 s.c. in 1 s c ..... 6", "rnd 2 : 6 sc in 1 sc – 6"),
        ];
        for (text, expected) in cases {
            assert_eq!(shown(text), expected, "{text}");
        }
    }
}
