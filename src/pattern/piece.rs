//! Texts of written rounds with several pieces in them: head, body, two ears.
//!
//! A piece begins where a round numbered 1 goes into a ring or a chain after rounds of another; the line of a few words above
//! it is its name. What stands above the first piece, such as terms and stitches of the author's own, holds for all.

use std::ops::Range;

use super::text::names;
use crate::notation::{Numbered, is_word, numbered};

/// A piece of a text.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct TextPiece {
    /// What it is called; `piece 2` where nothing says so. No two of a text are called alike.
    pub name: String,
    /// How many of it are made, as the line of its name says: `Ear (make 2)`; 1 where it doesn't.
    pub made: u32,
    /// Its lines, from 0.
    lines: Range<usize>,
    /// The line that its first round begins, from 0.
    first: usize,
}

/// The pieces of a text; none where it holds only one.
pub fn pieces(text: &str) -> Vec<TextPiece> {
    let lines: Vec<&str> = text.split('\n').collect();
    let rounds = numbered(text);
    let begins = |at: usize, one: &Numbered| one.number == 1 && (at == 0 || one.starts);
    let starts: Vec<usize> =
        rounds.iter().enumerate().filter(|(at, one)| begins(*at, one)).map(|(_, one)| one.line - 1).collect();
    if starts.len() < 2 {
        return Vec::new();
    }
    let mut pieces: Vec<TextPiece> = Vec::new();
    for (index, first) in starts.iter().copied().enumerate() {
        let above = rounds.iter().map(|one| one.line).take_while(|line| *line <= first).last().unwrap_or(0);
        let named = (above..first).rev().find_map(|at| Some((at, called(lines.get(at)?)?)));
        let head = named.as_ref().map_or(first, |(at, _)| *at);
        let made = named.as_ref().and_then(|(at, _)| made(lines.get(*at)?)).unwrap_or(1);
        let own = named.map_or_else(|| format!("piece {}", index + 1), |(_, name)| name);
        let mut name = own.clone();
        for number in 2.. {
            if pieces.iter().all(|piece| !piece.name.eq_ignore_ascii_case(&name)) {
                break;
            }
            name = format!("{own} {number}");
        }
        if let Some(last) = pieces.last_mut() {
            last.lines.end = head;
        }
        pieces.push(TextPiece { name, made, lines: head..lines.len(), first });
    }
    pieces
}

/// The text with all other pieces blanked out, so that its lines and columns stay where they are.
pub fn alone(text: &str, pieces: &[TextPiece], index: usize) -> String {
    let Some(own) = pieces.get(index) else { return text.to_owned() };
    let preface = pieces.first().map_or(0, |first| first.lines.start);
    let line = |(at, line): (usize, &str)| {
        if at < preface || own.lines.contains(&at) { line.to_owned() } else { " ".repeat(line.len()) }
    };
    text.split('\n').enumerate().map(line).collect::<Vec<_>>().join("\n")
}

/// The name that a line gives to what follows: a few words, `Ear (make 2)`, `BODY:`.
fn called(line: &str) -> Option<String> {
    let line = line.trim().trim_matches(['*', '_', '#', '-', '=', ' ']);
    let (words, key) = match line.split_once(':') {
        Some((key, value)) if key.trim().eq_ignore_ascii_case("part") => (value, true),
        _ => (line, false),
    };
    let words = words.split(['(', '[', ',']).next()?.trim().trim_end_matches(':').trim();
    let first = words.split_whitespace().next()?.to_lowercase();
    let work = !key && (is_word(&first) || !first.starts_with(char::is_alphabetic));
    (names(words, char::is_alphanumeric) && !work).then(|| words.to_owned())
}

/// Most of a piece that are drawn side by side.
const MOST_MADE: u32 = 12;

/// How many are made of what a line names: `(make 2)`, `(make two)`, `(x2)`, `(2 x)`.
fn made(line: &str) -> Option<u32> {
    let inside = line.split_once(['(', '['])?.1.split([')', ']']).next()?.to_lowercase();
    let said = inside.trim_start_matches(['x', '×']).trim_end_matches(['x', '×']);
    let words = said.split_whitespace().filter(|word| !matches!(*word, "make" | "work" | "x" | "×"));
    let number = |word: &str| match word {
        "two" => Some(2),
        "three" => Some(3),
        "four" => Some(4),
        _ => word.parse().ok(),
    };
    let numbers: Vec<u32> = words.filter_map(number).collect();
    numbers.first().map(|count| (*count).clamp(1, MOST_MADE))
}

#[cfg(test)]
mod tests {
    use super::*;

    const DOLL: &str = "Terms: US\n\nBODY\nRnd 1: 6 sc in magic ring (6)\nRnd 2: inc around (12)\nFasten off.\n\n\
        Ear (make 2)\nRnd 1: 4 sc in magic ring (4)\nRnd 2: inc around (8)\n\nEar\nRnd 1: 5 sc in magic ring (5)\n";

    #[test]
    fn pieces_are_found_by_their_first_rounds_and_named_by_the_line_above() {
        let names: Vec<String> = pieces(DOLL).into_iter().map(|piece| piece.name).collect();
        assert_eq!(names, ["BODY", "Ear", "Ear 2"]);
        assert_eq!(pieces(DOLL).iter().map(|piece| piece.made).collect::<Vec<_>>(), [1, 2, 1]);
        for (line, count) in [
            ("Ear (make two)", Some(2)),
            ("Leg [x4]:", Some(4)),
            ("Leg (4x)", Some(4)),
            ("Spike (make 40)", Some(12)),
            ("Ear (make 0)", Some(1)),
            ("Ear (the left one)", None),
            ("Ear", None),
        ] {
            assert_eq!(made(line), count, "{line}");
        }
        assert_eq!(pieces("Rnd 1: 6 sc in ring\nRnd 2: inc around\n"), []);
        // A brim that is counted from 1 is worked on what stands there.
        assert_eq!(pieces("Crown\nRnd 1: 6 sc in ring\nRnd 2: inc around\nBrim\nRnd 1: sc around\n"), []);
    }

    #[test]
    fn a_piece_alone_keeps_its_lines_and_what_stands_above_all() {
        let pieces = pieces(DOLL);
        let ear = alone(DOLL, &pieces, 1);
        assert_eq!(ear.len(), DOLL.len());
        assert!(ear.starts_with("Terms: US") && !ear.contains("BODY") && !ear.contains("5 sc"));
        assert_eq!(ear.lines().position(|line| line.starts_with("Rnd 1: 4 sc")), Some(8));
    }
}
