//! The web page with its tags taken off.

use super::paper::{Block, Paper, Row, Section, flat};

/// What is being read.
#[derive(Default)]
struct Open {
    words: String,
    heads: Vec<String>,
    cells: Vec<String>,
    name: String,
    /// True inside a list of links.
    nav: bool,
    details: bool,
}

pub(super) fn read(page: &str) -> Paper {
    let mut paper = Paper { form: "web page", ..Paper::default() };
    let mut open = Open::default();
    let body = page.find("<body").map_or("", |at| &page[at..]);
    let mut rest = body;
    while let Some(at) = rest.find('<') {
        if let Some(words) = rest.get(..at) {
            open.words += words;
        }
        let end = at + rest[at..].find('>').unwrap_or(rest.len() - at - 1);
        let tag = rest[at + 1..end].split_whitespace().next().unwrap_or_default().to_owned();
        rest = &rest[end + 1..];
        if tag == "svg" {
            rest = rest.find("</svg>").map_or("", |at| &rest[at + 6..]);
            continue;
        }
        element(&tag, &mut open, &mut paper);
    }
    paper
}

fn element(tag: &str, open: &mut Open, paper: &mut Paper) {
    match tag {
        "strong" | "/strong" | "span" | "/span" | "em" | "/em" | "input" => return,
        "nav" => open.nav = true,
        "/nav" => open.nav = false,
        "details" => open.details = true,
        "/details" => open.details = false,
        _ => {}
    }
    let words = flat(&plain(&std::mem::take(&mut open.words)));
    let Some(name) = tag.strip_prefix('/') else {
        if tag == "table" {
            open.heads.clear();
        }
        return;
    };
    let mut push = |block: Block| {
        if let Some(section) = paper.sections.last_mut() {
            section.blocks.push(block);
        }
    };
    match name {
        "h2" => paper.sections.push(Section { title: words, blocks: Vec::new() }),
        "h3" => push(Block::Heading(words)),
        "p" if open.details => push(Block::Picture(words)),
        "p" | "figcaption" => push(Block::Text(words)),
        "li" if !open.nav => push(Block::Item(words)),
        "th" | "td" => open.cells.push(words),
        "tr" if open.heads.is_empty() => open.heads = std::mem::take(&mut open.cells),
        "tr" => {
            let row: Row = open.heads.iter().cloned().zip(std::mem::take(&mut open.cells)).collect();
            push(Block::Row(row));
        }
        "dt" => open.name = words,
        "dd" => paper.facts.push((std::mem::take(&mut open.name), words)),
        _ => {}
    }
}

fn plain(text: &str) -> String {
    let marks = [("&lt;", "<"), ("&gt;", ">"), ("&quot;", "\""), ("&amp;", "&")];
    marks.iter().fold(text.to_owned(), |text, (code, mark)| text.replace(code, mark))
}
