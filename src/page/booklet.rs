//! The booklet: cover, contents, and the sections of the pattern.

use std::collections::BTreeMap;

use kurbo::{Point, Rect};

use crate::drawing::{Item, TextItem};
use crate::report::{Diagnostic, Report};
use crate::units::{Mm, TOLERANCE};
use crate::words::{Arg, Words};

use super::flow::{Bit, Flow, Shows, baseline, ending_at, room_for_picture};
use super::press::{Running, furnish, print, printable};
use super::{Document, Options, Owner, Pictures, Style, Tag, cover};
use crate::story::{Block, Figure, Section, Story};

/// Pages from which on a booklet has a table of contents.
const CONTENTS_FROM: usize = 12;

/// Most sizes whose side views are all shown, where each has one of its own.
const MOST_SIDE_VIEWS: usize = 3;

/// Lays a story out as a booklet, with the pictures it was told of. Nothing, and errors in the report, where the paper can't hold it; warnings where a
/// picture had to be made smaller or a character is not in the typeface.
pub fn lay_out(story: &Story<'_>, pictures: &Pictures, options: &Options, report: &mut Report) -> Option<Document> {
    if let Err(complaint) = options.paper.check() {
        report.add(complaint);
        return None;
    }
    // Who turns a few pages finds a section without being told where it is.
    let short = printed(story, pictures, options, false);
    let long = short.as_ref().is_ok_and(|(document, _)| document.pages.len() >= CONTENTS_FROM);
    let laid = if long { printed(story, pictures, options, true) } else { short };
    let (mut document, shrunk) = laid.map_err(|complaint| report.add(complaint)).ok()?;
    for (title, scale) in shrunk {
        let message = format!("“{title}” is printed at {:.0} % to fit {} paper", scale * 100.0, options.paper.name);
        report.add(Diagnostic::warning("picture-shrunk", message).help("print on larger paper, or as a wall chart"));
    }
    complain_of_lost(&mut document, story, report);
    Some(document)
}

/// The pages, with or without a table of contents, and the titles of pictures that had to be made smaller, with the scale.
fn printed(
    story: &Story<'_>,
    pictures: &Pictures,
    options: &Options,
    listed: bool,
) -> Result<(Document, Vec<(String, f64)>), Diagnostic> {
    let words = &story.words;
    let style = Style::new(&options.paper, options.print, options.large);
    let mut document = Document::new(title_of(story), words.language);
    document.author = story.designer().map(str::to_owned);
    let mut sections = story.sections();
    thrifty(&mut sections, story, pictures, options);
    keys_under_charts(&mut sections, pictures, &style, words);
    let root = document.element(Tag::Section, None);
    let left = cover::add(&mut document, story, pictures, &options.paper, &style, root);
    sections.extend(story.facts_left(left));
    let mut flow = Flow::new(&style, pictures, &mut document);
    if listed {
        contents(&mut flow, &sections, words, root);
    }
    for section in &sections {
        flow.section(section, root);
    }
    let shrunk = std::mem::take(&mut flow.shrunk);
    print(flow, &options.paper)?;
    let right = if story.size_count() > 1 { story.size_names() } else { String::new() };
    let running = Running { left: title_of(story), right, foot: story.foot() };
    furnish(&mut document, 1, &style, words, &running);
    Ok((document, shrunk))
}

/// Leaves out of the pages what they show once already: of several sizes the chart of the middle one stands for all, with
/// what differs in a table, and a side view with all measures says what a list of them would.
fn thrifty(sections: &mut Vec<Section>, story: &Story<'_>, pictures: &Pictures, options: &Options) {
    let count = story.size_count();
    if let Some(chart) = sections.iter_mut().find(|section| section.id == "chart" && !options.chart.every) {
        let shown = story.middle();
        let one_each = count > 1 && chart.blocks.len() == count;
        if one_each {
            let blocks = std::mem::take(&mut chart.blocks).into_iter().skip(shown).take(1);
            chart.blocks = blocks.chain(story.beside_the_chart()).collect();
        }
    }
    // Side views that would fill a page each are told by the middle one; the measures of all stand in a list.
    if let Some(side) = sections.iter_mut().find(|section| section.id == "side" && !options.chart.every)
        && count > MOST_SIDE_VIEWS
        && side.blocks.len() == count
    {
        side.blocks = std::mem::take(&mut side.blocks).into_iter().skip(story.middle()).take(1).collect();
    }
    if pictures.schematics.len() == 1 {
        sections.retain(|section| section.id != "measures");
    }
}

/// Explains the symbols under every chart where they fit there, and then nowhere else; or else in a section of their own.
fn keys_under_charts(sections: &mut Vec<Section>, pictures: &Pictures, style: &Style, words: &Words) {
    let Some(chart) = sections.iter_mut().find(|section| section.id == "chart") else { return };
    let mut figures = chart.blocks.iter().filter_map(Block::figure).enumerate();
    // Under every chart or under none: who looks for a symbol must know where to look.
    if figures.all(|(index, figure)| fits_whole(figure, pictures, style, index == 0)) {
        chart.title = words.say("page-chart-and-key");
        sections.retain(|section| section.id != "key");
    } else {
        chart.blocks.iter_mut().for_each(|block| {
            if let Block::Figure(figure) = block {
                figure.key = None;
            }
        });
    }
}

/// True for a figure that fits a page with its caption and its key; the first stands under a heading.
fn fits_whole(figure: &Figure, pictures: &Pictures, style: &Style, headed: bool) -> bool {
    let Some(key) = figure.key.and_then(|key| pictures.shown(key)) else { return false };
    let room = room_for_picture(figure, Some(key), style, style.line_width.min(style.width()), headed);
    pictures.shown(figure.shows).is_some_and(|drawing| drawing.bounds.height() <= room + TOLERANCE)
}

/// Room for a picture in the booklet, so that it can be drawn at the size at which it is printed: the width between the
/// margins, and the height of a page less its heading and a caption.
pub fn picture_room(options: &Options) -> (Mm, Mm) {
    let style = Style::new(&options.paper, options.print, options.large);
    let height = style.height() - style.heads[1] * 2.0 - style.text * 4.0 - 2.0 * style.small * style.leading;
    (Mm::new(style.width()), Mm::new(height.max(0.0)))
}

/// The title, or a name for the nameless: a document must have one.
pub(super) fn title_of(story: &Story<'_>) -> String {
    let title = story.title();
    if title.is_empty() { "Roundelay".to_owned() } else { title.to_owned() }
}

/// Warns of every text with characters that the typeface lacks, after putting question marks in their places.
pub(super) fn complain_of_lost(document: &mut Document, story: &Story<'_>, report: &mut Report) {
    let mut texts: BTreeMap<String, String> = BTreeMap::new();
    for (c, text) in printable(document) {
        texts.entry(text).or_default().push(c);
    }
    for (text, lost) in texts {
        let message = format!("the typeface has no “{lost}” (in “{}”): question marks are printed", text.trim());
        let place = story.title_place().filter(|_| lost.chars().any(|c| story.title().contains(c)));
        report.add(Diagnostic::warning("no-such-glyph", message).at(place).help("write it with Latin letters"));
    }
}

/// The table of contents: a link and a page number for every section.
fn contents(flow: &mut Flow<'_>, sections: &[Section], words: &Words, parent: usize) {
    let style = flow.style;
    let heading = Section { id: "contents", title: words.say("page-contents"), wide: false, blocks: Vec::new() };
    let height = style.text * style.leading * 1.08;
    flow.section_with(&heading, parent, |flow, element| {
        let list = flow.document.element(Tag::Contents, Some(element));
        for section in sections {
            let entry = flow.document.element(Tag::ContentsEntry, Some(list));
            let reference = flow.document.element(Tag::Reference, Some(entry));
            let link = flow.document.element(Tag::Link, Some(reference));
            let owner = Owner::Element(link);
            let right = flow.frame.0 + style.line_width.min(flow.frame.1 - flow.frame.0).min(110.0);
            let y = baseline(style.text, height);
            let mut slab = flow.slab(height, true);
            let title = TextItem {
                ink: style.palette.text,
                ..TextItem::new(format!("{} ", section.title), Point::new(flow.frame.0, y), style.text)
            };
            let number = ending_at("", Point::new(right, y), style.text, style.palette.text);
            let area = Rect::new(flow.frame.0, 0.0, right, height);
            let leads = words.with("page-go-to", &[("title", Arg::Text(&section.title))]);
            let shows = [
                Shows::Items(vec![Item::Text(title)]),
                Shows::PageOf(section.id.to_owned(), number),
                Shows::LinkTo(section.id.to_owned(), area, leads),
            ];
            slab.bits.extend(shows.map(|shows| Bit { owner, language: None, shows }));
            slab.bits.push(flow.dots(&section.title, right, y));
            flow.slabs.push(slab);
        }
        if let Some(last) = flow.slabs.last_mut() {
            last.extent.keep = false;
        }
    });
}
