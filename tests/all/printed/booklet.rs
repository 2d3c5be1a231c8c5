//! The booklet as two tools of Poppler give it back: `pdfinfo -struct-text` with the tree of what is read out,
//! `pdftotext -layout` as the ink lies on its pages.

use super::paper::{Block, Paper, Row, Section, flat};
use crate::checkers;

/// The booklet, and its pages as they lie; nothing where the tools are missing and not required.
pub(super) fn read(pdf: &[u8]) -> Option<(Paper, String)> {
    let (tree, laid) = (checkers::tool("pdfinfo")?, checkers::tool("pdftotext")?);
    let told = checkers::said_of(&tree, &["-struct-text"], pdf);
    Some((paper(&told), checkers::extracted(&laid, pdf)))
}

/// An element of the tree: its name, and all the words below it.
struct Element {
    depth: usize,
    name: String,
    words: String,
}

fn elements(told: &str) -> Vec<Element> {
    let mut found: Vec<Element> = Vec::new();
    for line in told.lines() {
        let text = line.trim_start();
        let depth = line.len() - text.len();
        if let Some(words) = text.strip_prefix('"').and_then(|text| text.strip_suffix('"')) {
            let above = found.iter_mut().rev().find(|element| element.depth < depth);
            if let Some(element) = above {
                element.words += words;
            }
        } else if !text.starts_with('/') {
            let name = text.split([' ', ':']).next().unwrap_or_default().to_owned();
            found.push(Element { depth, name, words: String::new() });
        }
    }
    found
}

fn paper(told: &str) -> Paper {
    let mut paper = Paper { form: "booklet", ..Paper::default() };
    let mut heads: Vec<String> = Vec::new();
    let mut row: Option<Row> = None;
    let mut label = String::new();
    let mut head = false;
    for element in elements(told) {
        let words = flat(&element.words);
        let Some(section) = paper.sections.last_mut() else {
            match element.name.as_str() {
                "H2" => paper.sections.push(Section { title: words, blocks: Vec::new() }),
                "Lbl" => label = words,
                "LBody" => paper.facts.push((std::mem::take(&mut label), words)),
                _ => {}
            }
            continue;
        };
        let name = element.name.as_str();
        if !matches!(name, "TH" | "TD" | "Span") {
            section.blocks.extend(row.take().filter(|row| !row.is_empty()).map(Block::Row));
        }
        match name {
            "H2" => paper.sections.push(Section { title: words, blocks: Vec::new() }),
            "H3" => section.blocks.push(Block::Heading(words)),
            "P" | "Caption" => section.blocks.push(Block::Text(words)),
            "LBody" => section.blocks.push(Block::Item(words)),
            "Table" => heads.clear(),
            "THead" => head = true,
            "TBody" => head = false,
            "TR" if !head => row = Some(Row::new()),
            "TH" if head => heads.push(words),
            "TH" | "TD" => {
                if let Some(row) = &mut row {
                    let title = heads.get(row.len()).cloned().unwrap_or_default();
                    row.push((title, words));
                }
            }
            _ => {}
        }
    }
    if let (Some(section), Some(row)) = (paper.sections.last_mut(), row) {
        section.blocks.push(Block::Row(row));
    }
    paper
}
