//! What of a text may be shown. Every text that a maker wrote, the name of a file as well as a value, comes through here
//! before it reaches a page, a file, a file name or a terminal.

/// True for a character that a terminal, a page or a file shows as itself: no control character, none that turns the
/// direction of writing or is not seen, and no code point that Unicode keeps free of characters.
///
/// The sets are those of Unicode 16.0: `Cc` (general category), the explicit directional formatting characters of UAX #9,
/// the separators U+2028 and U+2029, the invisible operators and tags of the blocks *General Punctuation* and *Tags*, the
/// byte order mark, and the noncharacters of section 23.7. The joiners U+200C and U+200D stay: Persian and emoji need them.
pub fn plain(c: char) -> bool {
    let code = u32::from(c);
    let noncharacter = (0xfdd0..=0xfdef).contains(&code) || code & 0xfffe == 0xfffe;
    let turning = matches!(code, 0x061c | 0x200e | 0x200f | 0x202a..=0x202e | 0x2066..=0x2069);
    let unseen = matches!(code, 0x00ad | 0x200b | 0x2028 | 0x2029 | 0x2060..=0x2065 | 0x206a..=0x206f | 0xfeff);
    let beside = matches!(code, 0xfff9..=0xfffb | 0xe0000..=0xe0fff | 0xe000..=0xf8ff | 0xf0000..=0x10ffff);
    !(c.is_control() || noncharacter || turning || unseen || beside)
}

/// A text on one line without what can't be shown: blanks of every kind, line breaks among them, are single blanks.
pub fn line(text: &str) -> String {
    let mut clean = String::with_capacity(text.len());
    let mut blank = false;
    for c in text.chars() {
        // Blanks that hold words together and thin ones are part of how words are set.
        if c.is_whitespace() && !matches!(c, '\u{a0}' | '\u{202f}') {
            blank = !clean.is_empty();
        } else if plain(c) {
            if blank {
                clean.push(' ');
            }
            blank = false;
            clean.push(c);
        }
    }
    clean
}

/// A sentence of a complaint: on one line, without what can't be shown, and no longer than can be read.
pub fn sentence(text: &str) -> String {
    let clean = line(text);
    match clean.char_indices().nth(LONGEST) {
        Some((at, _)) => format!("{}…", &clean[..at]),
        None => clean,
    }
}

/// Most characters of a sentence.
const LONGEST: usize = 1200;

/// A text for a terminal, line by line: what can't be shown is a question mark for each of its bytes, so that columns and
/// offsets stay.
pub fn lines(text: &str) -> String {
    let show = |c: char| match c {
        '\n' | '\t' => c.to_string(),
        '\r' => ' '.to_string(),
        c if plain(c) => c.to_string(),
        c => "?".repeat(c.len_utf8()),
    };
    text.chars().map(show).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_can_t_be_shown_is_left_out_and_blanks_are_single() {
        assert_eq!(line("  a\t\nb\u{2003} c \u{202e}d\u{0}\u{ffff}e\u{1b}[31m  "), "a b c de[31m");
        assert_eq!(line("\u{fdd0}\u{1fffe}\u{7f}\u{9b}\u{2028}\u{feff}"), "");
    }

    #[test]
    fn letters_of_every_writing_stay() {
        for text in ["Mütze für Ägypten", "帽子", "قبعة", "नी\u{200d}ला", "👩\u{200d}🌾", "e\u{301}"]
        {
            assert_eq!(line(text), text);
        }
    }

    #[test]
    fn a_terminal_gets_every_byte_its_place() {
        let text = "a\u{9b}31m\u{202e}\n\tb\r";
        let shown = lines(text);
        assert_eq!(shown, "a??31m???\n\tb ");
        assert_eq!(shown.len(), text.len());
    }
}
