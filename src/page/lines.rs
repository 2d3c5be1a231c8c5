//! Breaking runs of words into lines.

use std::cell::RefCell;
use std::collections::HashMap;

use kurbo::Point;

use crate::drawing::{Ink, Item, TextItem};
use crate::font::Face;
use crate::units::TOLERANCE;
use crate::words::Language;

use crate::story::Run;

/// One line: stretches of words, each with its distance from the line's start.
#[derive(Clone, Debug, Default, PartialEq)]
pub(super) struct Line {
    pub(super) parts: Vec<Part>,
    pub(super) width: f64,
}

/// Words of one run in one line.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Part {
    text: String,
    face: Face,
    language: Option<Language>,
    at: f64,
}

/// A word that can't be broken but at its ends; pieces of several runs may meet in it.
struct Word {
    pieces: Vec<Piece>,
    width: f64,
    space: f64,
}

/// Some letters of one run.
struct Piece {
    text: String,
    face: Face,
    language: Option<Language>,
    width: f64,
}

/// Most words whose widths are remembered.
const KNOWN_WORDS: usize = 4096;

/// Sets runs of words, and remembers how wide each word is in ems: a pattern says the same few words over and over, and
/// shaping one takes far longer than finding it here.
#[derive(Clone, Debug, Default)]
pub(super) struct Setter {
    known: RefCell<[HashMap<String, f64>; 3]>,
}

impl PartialEq for Setter {
    /// What one remembers changes nothing of what it sets.
    fn eq(&self, _: &Self) -> bool {
        true
    }
}

impl Setter {
    /// Width of a word or space set at `size`.
    fn width(&self, face: Face, text: &str, size: f64) -> f64 {
        let mut known = self.known.borrow_mut();
        let [regular, bold, italic] = &mut *known;
        let known = match face {
            Face::Regular => regular,
            Face::Bold => bold,
            Face::Italic => italic,
        };
        if let Some(ems) = known.get(text) {
            return ems * size;
        }
        if known.len() >= KNOWN_WORDS {
            known.clear();
        }
        let ems = face.width(text, 1.0);
        known.insert(text.to_owned(), ems);
        ems * size
    }

    /// Breaks runs set at `size` into lines no wider than `width`. Words break at spaces, and anywhere only where one is
    /// wider than a whole line. Gives no lines for no words.
    pub(super) fn wrap(&self, runs: &[Run], size: f64, width: f64) -> Vec<Line> {
        let mut lines = Vec::new();
        let mut line = Line::default();
        let mut space = 0.0;
        for word in self.words(runs, size).into_iter().flat_map(|word| fitting(word, size, width)) {
            if !line.parts.is_empty() && line.width + space + word.width > width + TOLERANCE {
                lines.push(std::mem::take(&mut line));
            }
            let gap = if line.parts.is_empty() { 0.0 } else { space };
            append(&mut line, word.pieces, gap);
            space = word.space;
        }
        if !line.parts.is_empty() {
            lines.push(line);
        }
        lines
    }

    /// Width of the widest word, and of all words in one line.
    pub(super) fn widths(&self, runs: &[Run], size: f64) -> (f64, f64) {
        let words = self.words(runs, size);
        let widest = words.iter().map(|word| word.width).fold(0.0, f64::max);
        (widest, length(&words))
    }

    /// Least width at which the words stand on two lines, broken at a space.
    pub(super) fn width_in_two(&self, runs: &[Run], size: f64) -> f64 {
        let words = self.words(runs, size);
        let cuts = (0..=words.len()).map(|at| words.split_at(at));
        cuts.map(|(first, second)| length(first).max(length(second))).fold(f64::INFINITY, f64::min)
    }

    fn words(&self, runs: &[Run], size: f64) -> Vec<Word> {
        let mut words: Vec<Word> = Vec::new();
        let mut open = false;
        for run in runs {
            let (face, language) = (run.face, run.language);
            for said in run.text.split_inclusive(|c: char| c == ' ' || c.is_control()) {
                let text = said.trim_end_matches(|c: char| c == ' ' || c.is_control());
                if !text.is_empty() {
                    let piece = Piece { text: text.to_owned(), face, language, width: self.width(face, text, size) };
                    match words.last_mut().filter(|_| open) {
                        Some(word) => {
                            word.width += piece.width;
                            word.pieces.push(piece);
                        }
                        None => words.push(Word { width: piece.width, pieces: vec![piece], space: 0.0 }),
                    }
                }
                open = text.len() == said.len();
                if let Some(word) = words.last_mut().filter(|_| !open) {
                    word.space = self.width(face, " ", size);
                }
            }
        }
        words
    }
}

/// Width of words in one line.
fn length(words: &[Word]) -> f64 {
    let spaces: f64 = words.iter().rev().skip(1).map(|word| word.space).sum();
    words.iter().map(|word| word.width).sum::<f64>() + spaces
}

/// The word itself, or its pieces where it is wider than a line.
fn fitting(word: Word, size: f64, most: f64) -> Vec<Word> {
    if word.width <= most {
        return vec![word];
    }
    let mut cuts: Vec<Word> = Vec::new();
    for Piece { text, face, language, .. } in word.pieces {
        let mut cut = String::new();
        for c in text.chars() {
            cut.push(c);
            if cut.chars().nth(1).is_some() && face.width(&cut, size) > most {
                cut.pop();
                cuts.push(one(std::mem::take(&mut cut), face, language, size));
                cut.push(c);
            }
        }
        cuts.push(one(cut, face, language, size));
    }
    if let Some(last) = cuts.last_mut() {
        last.space = word.space;
    }
    cuts
}

fn one(text: String, face: Face, language: Option<Language>, size: f64) -> Word {
    let width = face.width(&text, size);
    Word { pieces: vec![Piece { text, face, language, width }], width, space: 0.0 }
}

fn append(line: &mut Line, pieces: Vec<Piece>, space: f64) {
    let mut gap = space;
    for Piece { text, face, language, width } in pieces {
        let last = line.parts.last_mut().filter(|last| last.face == face && last.language == language);
        match last {
            Some(last) => {
                if gap > 0.0 {
                    last.text.push(' ');
                }
                last.text.push_str(&text);
            }
            None => {
                // A space between words of different cuts belongs to the words before, so that it is read out too.
                if let Some(before) = line.parts.last_mut().filter(|_| gap > 0.0) {
                    before.text.push(' ');
                }
                line.parts.push(Part { text, face, language, at: line.width + gap });
            }
        }
        line.width += gap + width;
        gap = 0.0;
    }
}

impl Line {
    /// The line as texts, starting at `at` on its baseline, by language. A line that is not the last ends with a
    /// space, so that words don't run together when the text is read out.
    pub(super) fn items(&self, at: Point, size: f64, ink: Ink, last: bool) -> Vec<(Option<Language>, Item)> {
        let count = self.parts.len();
        let item = |(i, part): (usize, &Part)| {
            let mut text = part.text.clone();
            if i + 1 == count && !last {
                text.push(' ');
            }
            let at = Point::new(at.x + part.at, at.y);
            (part.language, Item::Text(TextItem { face: part.face, ink, ..TextItem::new(text, at, size) }))
        };
        self.parts.iter().enumerate().map(item).collect()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn texts(lines: &[Line]) -> Vec<String> {
        lines.iter().map(|line| line.parts.iter().map(|part| part.text.as_str()).collect()).collect()
    }

    #[test]
    fn lines_are_no_wider_than_the_column_and_lose_no_word() {
        let text = "Work the first round into the ring and pull the tail until the hole has closed";
        let runs = [Run::new(&text[..30]), Run::bold(&text[30..])];
        let lines = Setter::default().wrap(&runs, 4.0, 40.0);
        assert!(lines.len() > 2 && lines.iter().all(|line| line.width <= 40.0));
        let joined = texts(&lines).join(" ").split_whitespace().collect::<Vec<_>>().join(" ");
        assert_eq!(joined, text);
    }

    #[test]
    fn a_word_wider_than_the_column_is_cut_and_not_clipped() {
        let lines = Setter::default().wrap(&[Run::new("m".repeat(400))], 4.0, 50.0);
        assert!(lines.iter().all(|line| line.width <= 50.0));
        assert_eq!(texts(&lines).concat().len(), 400);
    }

    #[test]
    fn runs_that_touch_stay_together() {
        let lines = Setter::default().wrap(&[Run::new("one ("), Run::bold("126"), Run::new(") two")], 4.0, 15.0);
        assert!(texts(&lines).iter().any(|line| line.trim() == "(126)"), "{:?}", texts(&lines));
    }
}
