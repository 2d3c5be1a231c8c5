//! Plain text: the whole pattern, good enough to work from alone, to be read by a screen reader or sent by mail.

use std::fmt::Write as _;

use crate::page::Pictures;
use crate::story::{Block, Cell, Column, Run, Section, Story, Table};
use crate::words::{Arg, Words};

/// Widest line, in characters.
const WIDTH: usize = 78;

/// Writes the whole pattern as plain text of at most 78 characters a line. The pictures that the story was told of are
/// told in words.
pub fn write(story: &Story<'_>, pictures: &Pictures) -> String {
    let words = &story.words;
    let mut text = String::new();
    let title = story.title();
    paragraph(&mut text, &title.to_uppercase(), "", "");
    line(&mut text, &"=".repeat(title.chars().count().clamp(3, WIDTH)));
    paragraph(&mut text, &words.say("page-pattern"), "", "");
    if let Some(designer) = story.designer() {
        paragraph(&mut text, &words.with("page-designed-by", &[("name", Arg::Text(designer))]), "", "");
    }
    if let Some(about) = story.about() {
        line(&mut text, "");
        paragraph(&mut text, about, "", "");
    }
    if let Some(dedication) = story.dedication() {
        line(&mut text, "");
        paragraph(&mut text, dedication, "", "");
    }
    if let Some(photo) = pictures.cover.as_ref().filter(|cover| cover.photograph().is_some()) {
        line(&mut text, "");
        told(&mut text, &photo.description, words);
    }
    line(&mut text, "");
    for (name, fact) in story.facts() {
        paragraph(&mut text, &format!("{name}{}{fact}", words.colon()), "", "  ");
    }
    for part in story.sections() {
        section(&mut text, &part, words, pictures);
    }
    text
}

fn section(text: &mut String, section: &Section, words: &Words, pictures: &Pictures) {
    line(text, "");
    line(text, "");
    line(text, &section.title.to_uppercase());
    line(text, &"-".repeat(section.title.chars().count().clamp(3, WIDTH)));
    for block in &section.blocks {
        match block {
            Block::Paragraph(runs) => {
                line(text, "");
                paragraph(text, &plain(runs), "", "");
            }
            Block::Heading(title) => {
                line(text, "");
                paragraph(text, &format!("* {title}"), "", "  ");
            }
            Block::List { numbered, items } => list(text, *numbered, items),
            Block::Table(rows) => table(text, rows, words),
            Block::Figure(figure) => {
                let Some(drawing) = pictures.shown(figure.shows) else { continue };
                line(text, "");
                told(text, &drawing.description, words);
                let words = figure.words();
                if !words.is_empty() {
                    paragraph(text, &plain(&words), "  ", "  ");
                }
            }
        }
    }
}

/// A picture in words.
fn told(text: &mut String, description: &str, words: &Words) {
    let what = format!("[{}{}{description}]", words.say("text-picture"), words.colon());
    paragraph(text, &what, "", "  ");
}

fn list(text: &mut String, numbered: bool, items: &[Vec<Run>]) {
    line(text, "");
    for (i, item) in items.iter().enumerate() {
        let label = if numbered { format!("{}. ", i + 1) } else { "- ".to_owned() };
        let indent = " ".repeat(label.chars().count());
        paragraph(text, &plain(item), &label, &indent);
    }
}

/// A table as lines that can be read one after another: narrow ones in columns, others as `head: cell` sentences.
fn table(text: &mut String, table: &Table, words: &Words) {
    line(text, "");
    let cells = |row: &Vec<Cell>| row.iter().map(spoken).collect::<Vec<_>>();
    let mut rows: Vec<Vec<String>> = table.rows.iter().map(cells).collect();
    if table.head {
        rows.insert(0, table.columns.iter().map(|column| column.title.clone()).collect());
    }
    let widest = |column: usize| rows.iter().filter_map(|row| row.get(column)).map(|cell| cell.chars().count()).max();
    let widths: Vec<usize> = (0..table.columns.len()).map(|column| widest(column).unwrap_or_default()).collect();
    let narrow = widths.iter().sum::<usize>() + 3 * widths.len().saturating_sub(1) <= WIDTH;
    // A table of rounds is told in sentences however short they are, so that all its parts read alike.
    let told = table.head && table.columns.len() > 3 && table.columns.iter().any(|column| column.grows);
    if narrow && !told {
        return columns(text, table, &rows, &widths);
    }
    for row in rows.iter().skip(usize::from(table.head)) {
        paragraph(text, &sentence(row, table, words), "", "    ");
    }
}

fn columns(text: &mut String, table: &Table, rows: &[Vec<String>], widths: &[usize]) {
    for (i, row) in rows.iter().enumerate() {
        let mut out = String::new();
        for ((cell, width), column) in row.iter().zip(widths).zip(&table.columns) {
            let pad = " ".repeat(width.saturating_sub(cell.chars().count()));
            let (before, after) = if column.right { (pad.as_str(), "") } else { ("", pad.as_str()) };
            let _ = write!(out, "{before}{cell}{after}   ");
        }
        line(text, out.trim_end());
        if i == 0 && table.head {
            let rule: Vec<String> = widths.iter().map(|width| "-".repeat(*width)).collect();
            line(text, &rule.join("   "));
        }
    }
}

/// The first cell leads, long words follow it bare, and the other cells are called by their columns.
fn sentence(row: &[String], table: &Table, words: &Words) -> String {
    let mut out = String::new();
    for (i, (cell, column)) in row.iter().zip(&table.columns).enumerate().filter(|(_, (cell, _))| !cell.is_empty()) {
        let separator = match i {
            0 => "",
            1 => words.colon(),
            _ => words.semicolon(),
        };
        let bare = i == 0 || column.grows || !table.head || !column.has_words();
        let _ = if bare {
            write!(out, "{separator}{cell}")
        } else {
            write!(out, "{separator}{} {cell}", said(column, words))
        };
    }
    out
}

/// A column's title with what sets it off from its cell.
fn said(column: &Column, words: &Words) -> String {
    if column.title.contains(',') {
        format!("{}{}", column.title, words.colon().trim_end())
    } else {
        column.title.clone()
    }
}

/// A cell's words; tick boxes have none.
fn spoken(cell: &Cell) -> String {
    cell.text()
}

fn plain(runs: &[Run]) -> String {
    runs.iter().map(|run| run.text.as_str()).collect()
}

/// Words broken into lines, though not where a space holds two of them together; the first line begins with `first`,
/// the others with `rest`.
fn paragraph(text: &mut String, words: &str, first: &str, rest: &str) {
    let mut out = first.to_owned();
    let mut empty = true;
    let breaks = |c: char| c.is_whitespace() && c != '\u{a0}';
    for word in words.split(breaks).filter(|word| !word.is_empty()) {
        if !empty && out.chars().count() + 1 + word.chars().count() > WIDTH {
            line(text, &out);
            rest.clone_into(&mut out);
            empty = true;
        }
        if !empty {
            out.push(' ');
        }
        out.push_str(word);
        empty = false;
    }
    line(text, &out);
}

/// A line; what held words together in it is a plain space there, as in any letter.
fn line(text: &mut String, words: &str) {
    text.push_str(&words.replace('\u{a0}', " "));
    text.push('\n');
}
