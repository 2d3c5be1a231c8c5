//! The whole pattern → one web page that needs nothing else: font, pictures and styles stand inside it.
//!
//! The page follows the reading order of the booklet, works without scripts, fits a phone, and prints.

use std::sync::Arc;

use base64::Engine;
use base64::engine::general_purpose::STANDARD as BASE64;
use maud::{DOCTYPE, Markup, PreEscaped, html};

use crate::drawing::Drawing;
use crate::font::{FAMILY, Face};
use crate::page::Pictures;
use crate::story::{Block, Cell, Column, Figure, Run, Section, Story, Table};
use crate::words::{Arg, Words};

use super::seal::digest;
use super::svg;

/// Writes the whole pattern as a web page in the language of the story, with the pictures it was told of. On narrow
/// screens the drawing `narrow` stands in place of the key. Tick boxes are named after the head of their row.
pub fn write(story: &Story<'_>, pictures: &Pictures, narrow: &Drawing) -> String {
    let words = &story.words;
    let (title, sections) = (story.title(), story.sections());
    let style = font_faces() + include_str!("html/page.css");
    let page = html! {
        (DOCTYPE)
        html lang=(words.language.tag()) {
            head {
                meta charset="utf-8";
                meta name="viewport" content="width=device-width, initial-scale=1";
                meta http-equiv="Content-Security-Policy" content=(policy(&style, photographed(pictures)));
                title { (title) }
                style { (PreEscaped(&style)) }
            }
            body {
                (heading(story, &sections, pictures))
                main {
                    @for (number, section) in sections.iter().enumerate() {
                        (written_section(section, number, words, pictures, Some(narrow).filter(|_| section.id == "key")))
                    }
                }
            }
        }
    };
    page.into_string()
}

/// What the page may do: show itself in this style and with the fonts inside it, and the photograph inside it where there
/// is one. It loads nothing, runs nothing and sends nothing (W3C Content Security Policy Level 3, as a `meta` element, with
/// the hash of the one style).
fn policy(style: &str, photographed: bool) -> String {
    let hash = BASE64.encode(digest(style.as_bytes()));
    let images = if photographed { " img-src data:;" } else { "" };
    format!(
        "default-src 'none'; style-src 'sha256-{hash}'; font-src data:;{images} base-uri 'none'; form-action 'none'"
    )
}

/// True for one of the charts, which the page shows anyway.
fn charted(cover: &Arc<Drawing>, pictures: &Pictures) -> bool {
    pictures.charts.iter().any(|(chart, _)| Arc::ptr_eq(chart, cover))
}

/// True where a photograph stands on the cover.
fn photographed(pictures: &Pictures) -> bool {
    pictures.cover.as_ref().is_some_and(|cover| cover.photograph().is_some())
}

/// Title, designer, the facts of the cover, its picture and the contents.
fn heading(story: &Story<'_>, sections: &[Section], pictures: &Pictures) -> Markup {
    let words = &story.words;
    html! {
        header {
            h1 { (story.title()) }
            @if let Some(designer) = story.designer() {
                p.designer { (words.with("page-designed-by", &[("name", Arg::Text(designer))])) }
            }
            @if let Some(about) = story.about() { p.about { (about) } }
            @if let Some(dedication) = story.dedication() { p.dedication { (dedication) } }
            @if let Some(cover) = pictures.cover.as_ref().filter(|cover| !charted(cover, pictures)) { figure.cover { (picture(cover, "cover")) } }
            dl { @for (name, fact) in story.facts() { div { dt { (name) } dd { (fact) } } } }
            nav aria-label=(words.say("page-contents")) {
                ul { @for section in sections { li { a href={ "#" (section.id) } { (section.title) } } } }
            }
        }
    }
}

fn font_faces() -> String {
    let face = |face: Face, weight: u32, style: &str| {
        let data = BASE64.encode(face.data());
        format!(
            "@font-face{{font-family:'{FAMILY}';font-weight:{weight};font-style:{style};\
             src:url(data:font/ttf;base64,{data}) format('truetype')}}\n"
        )
    };
    face(Face::Regular, 400, "normal") + &face(Face::Bold, 700, "normal")
}

/// One section; on narrow screens the drawing `narrow` stands in place of its figures.
fn written_section(
    section: &Section,
    number: usize,
    words: &Words,
    pictures: &Pictures,
    narrow: Option<&Drawing>,
) -> Markup {
    html! {
        section id=(section.id) aria-labelledby={ (section.id) "-title" } {
            h2 id={ (section.id) "-title" } { (section.title) }
            @if let Some(drawing) = narrow { div.narrow { (picture(drawing, &format!("s{number}n"))) } }
            @for (index, block) in section.blocks.iter().enumerate() {
                (written_block(block, &format!("s{number}b{index}"), words, pictures))
            }
        }
    }
}

/// One block; `key` is unique in the page.
fn written_block(block: &Block, key: &str, words: &Words, pictures: &Pictures) -> Markup {
    match block {
        Block::Paragraph(runs) => html! { p { (written_runs(runs)) } },
        Block::Heading(title) => html! { h3 { (title) } },
        Block::List { numbered: true, items } => html! { ol { @for item in items { li { (written_runs(item)) } } } },
        Block::List { numbered: false, items } => html! { ul { @for item in items { li { (written_runs(item)) } } } },
        Block::Table(table) => written_table(table, words),
        Block::Figure(figure) => html! {
            @if let Some(drawing) = pictures.shown(figure.shows) { (written_figure(figure, drawing, key)) }
        },
    }
}

fn written_runs(runs: &[Run]) -> Markup {
    html! {
        @for run in runs {
            @let language = run.language.map(|language| language.tag());
            @match (run.face, language) {
                (Face::Regular, None) => (run.text),
                (Face::Regular, language) => span lang=[language] { (run.text) },
                (Face::Bold, language) => strong lang=[language] { (run.text) },
                (Face::Italic, language) => em lang=[language] { (run.text) },
            }
        }
    }
}

fn written_figure(figure: &Figure, drawing: &Drawing, key: &str) -> Markup {
    html! {
        figure {
            div.picture tabindex="0" role="group" aria-label=(drawing.title) { (picture(drawing, key)) }
            @let caption = figure.words();
            @if !caption.is_empty() { figcaption { (written_runs(&caption)) } }
            details { summary { (drawing.title) } p { (drawing.description) } }
        }
    }
}

fn picture(drawing: &Drawing, key: &str) -> Markup {
    if let Some(item) = drawing.photograph() {
        let (width, height) = item.photo.size();
        return html! { img src=(svg::data_url(item)) alt=(drawing.description) width=(width) height=(height); };
    }
    PreEscaped(svg::write_inline(drawing, &format!("{key}-")))
}

fn written_table(table: &Table, words: &Words) -> Markup {
    // On a phone the rows of a wide table with long words are told one under another. The roles keep it a table there.
    let told = table.head && table.columns.len() > 3 && table.columns.iter().any(|column| column.grows);
    let role = |name: &'static str| told.then_some(name);
    html! {
        div.table.told[told] tabindex="0" role="region" aria-label=(table.summary) {
            table role=[role("table")] {
                caption.hidden { (table.summary) }
                thead class=[(!table.head).then_some("hidden")] role=[role("rowgroup")] {
                    tr role=[role("row")] {
                        @for column in &table.columns {
                            th scope="col" class=[kind(column)] role=[role("columnheader")] { (column.title) }
                        }
                    }
                }
                tbody role=[role("rowgroup")] {
                    @for row in &table.rows {
                        tr role=[role("row")] {
                            @for (at, (cell, column)) in row.iter().zip(&table.columns).enumerate() {
                                @let content = written_cell(cell, row, words);
                                @let label = (told && !column.grows && cell.ticks == 0 && column.has_words()).then_some(&column.title);
                                @if at == 0 && table.row_heads {
                                    th scope="row" class=[kind(column)] role=[role("rowheader")] { (content) }
                                } @else {
                                    td class=[kind(column).or((cell.ticks > 0).then_some("ticks"))] role=[role("cell")] data-label=[label] { (content) }
                                }
                            }
                        }
                    }
                }
            }
        }
    }
}

fn kind(column: &Column) -> Option<&'static str> {
    match (column.right, column.grows) {
        (true, _) => Some("number"),
        (false, true) => Some("grows"),
        (false, false) => None,
    }
}

fn written_cell(cell: &Cell, row: &[Cell], words: &Words) -> Markup {
    let head = row.first().map(Cell::text).unwrap_or_default();
    html! {
        @if let Some([red, green, blue]) = cell.swatch {
            svg.swatch aria-hidden="true" viewBox="0 0 1 1" {
                rect width="1" height="1" fill=(format!("#{red:02x}{green:02x}{blue:02x}")) {}
            }
        }
        @for tick in 1..=cell.ticks {
            @let name = words.with("web-tick", &[("row", Arg::Text(&head)), ("number", Arg::Count(tick))]);
            input type="checkbox" aria-label=(name);
        }
        (written_runs(&cell.runs))
    }
}
