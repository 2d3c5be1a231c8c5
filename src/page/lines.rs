//! Breaking runs of words into lines.

use kurbo::Point;

use crate::drawing::{Ink, Item, TextItem};
use crate::font::Face;
use crate::words::Language;

use super::Run;

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

/// A word that can't be broken but at its ends; parts of several runs may meet in it.
struct Word {
    parts: Vec<(String, Face, Option<Language>)>,
    width: f64,
    space: f64,
}

/// Breaks runs set at `size` into lines no wider than `width`. Words break at spaces, and anywhere only where one is
/// wider than a whole line. Gives no lines for no words.
pub(super) fn wrap(runs: &[Run], size: f64, width: f64) -> Vec<Line> {
    let mut lines = Vec::new();
    let mut line = Line::default();
    let mut space = 0.0;
    for word in words(runs, size).into_iter().flat_map(|word| fitting(word, size, width)) {
        if !line.parts.is_empty() && line.width + space + word.width > width + 1e-6 {
            lines.push(std::mem::take(&mut line));
        }
        let gap = if line.parts.is_empty() { 0.0 } else { space };
        append(&mut line, word.parts, gap, size);
        space = word.space;
    }
    if !line.parts.is_empty() {
        lines.push(line);
    }
    lines
}

/// Width of the widest word, and of all words in one line.
pub(super) fn widths(runs: &[Run], size: f64) -> (f64, f64) {
    let words = words(runs, size);
    let widest = words.iter().map(|word| word.width).fold(0.0, f64::max);
    let spaces: f64 = words.iter().rev().skip(1).map(|word| word.space).sum();
    (widest, words.iter().map(|word| word.width).sum::<f64>() + spaces)
}

fn words(runs: &[Run], size: f64) -> Vec<Word> {
    let mut words: Vec<Word> = Vec::new();
    let mut open = false;
    for run in runs {
        let clean: String = run.text.chars().map(|c| if c.is_control() { ' ' } else { c }).collect();
        for piece in clean.split_inclusive(' ') {
            let text = piece.trim_end_matches(' ');
            let part = (text.to_owned(), run.face, run.language);
            match words.last_mut().filter(|_| open) {
                Some(word) if !text.is_empty() => word.parts.push(part),
                None if !text.is_empty() => words.push(Word { parts: vec![part], width: 0.0, space: 0.0 }),
                Some(_) | None => {}
            }
            open = text.len() == piece.len();
            if let Some(word) = words.last_mut().filter(|_| !open) {
                word.space = run.face.width(" ", size);
            }
        }
    }
    for word in &mut words {
        word.width = word.parts.iter().map(|(text, face, _)| face.width(text, size)).sum();
    }
    words
}

/// The word itself, or its pieces where it is wider than a line.
fn fitting(word: Word, size: f64, width: f64) -> Vec<Word> {
    if word.width <= width {
        return vec![word];
    }
    let mut pieces: Vec<Word> = Vec::new();
    for (text, face, language) in word.parts {
        let mut piece = String::new();
        for c in text.chars() {
            piece.push(c);
            if piece.chars().count() > 1 && face.width(&piece, size) > width {
                piece.pop();
                pieces.push(one(std::mem::take(&mut piece), face, language, size));
                piece.push(c);
            }
        }
        pieces.push(one(piece, face, language, size));
    }
    if let Some(last) = pieces.last_mut() {
        last.space = word.space;
    }
    pieces
}

fn one(text: String, face: Face, language: Option<Language>, size: f64) -> Word {
    let width = face.width(&text, size);
    Word { parts: vec![(text, face, language)], width, space: 0.0 }
}

fn append(line: &mut Line, parts: Vec<(String, Face, Option<Language>)>, space: f64, size: f64) {
    let mut gap = space;
    for (text, face, language) in parts {
        let width = face.width(&text, size);
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
        let lines = wrap(&runs, 4.0, 40.0);
        assert!(lines.len() > 2 && lines.iter().all(|line| line.width <= 40.0));
        let joined = texts(&lines).join(" ").split_whitespace().collect::<Vec<_>>().join(" ");
        assert_eq!(joined, text);
    }

    #[test]
    fn a_word_wider_than_the_column_is_cut_and_not_clipped() {
        let lines = wrap(&[Run::new("m".repeat(400))], 4.0, 50.0);
        assert!(lines.iter().all(|line| line.width <= 50.0));
        assert_eq!(texts(&lines).concat().len(), 400);
    }

    #[test]
    fn runs_that_touch_stay_together() {
        let lines = wrap(&[Run::new("one ("), Run::bold("126"), Run::new(") two")], 4.0, 15.0);
        assert!(texts(&lines).iter().any(|line| line.trim() == "(126)"), "{:?}", texts(&lines));
    }
}
