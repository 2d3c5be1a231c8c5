//! What is measured, how it is labelled, and the list of measures under the drawing.

use kurbo::Point;

use super::Scene;
use super::sheet::Sheet;
use crate::drawing::{Anchor, TextItem};
use crate::font::Face;
use crate::geometry::sideview::{Measure, MeasureKind};
use crate::words::Arg;

/// Clear room between columns, mm.
const GUTTER: f64 = 6.0;

/// One measure as shown.
pub(super) struct Shown {
    /// The measure of the largest size.
    pub(super) measure: Measure,
    /// What stands on its dimension line: the value, or a letter where there are several sizes.
    pub(super) label: String,
    /// Its name.
    pub(super) name: String,
    /// True where it has a dimension line.
    pub(super) drawn: bool,
    /// Values by size, where the size has this measure.
    values: Vec<Option<String>>,
}

/// The measures of the sizes. Sizes of one design have the same parts; one that lacks a measure shows a dash.
pub(super) fn measures(scene: &Scene<'_>) -> Vec<Shown> {
    let Some(largest) = scene.master() else { return Vec::new() };
    let mut shown = Vec::new();
    for measure in &largest.view.measures {
        let values = scene.sizes.iter().map(|size| {
            let mut own = size.view.measures.iter();
            let own = own.find(|own| own.kind == measure.kind && own.part == measure.part)?;
            Some(scene.length(own.value))
        });
        let drawn = !matches!(measure.kind, MeasureKind::Around | MeasureKind::LyingFlat);
        let own = scene.length(measure.value);
        let told = |key| scene.words.with(key, &[("length", Arg::Text(&own))]);
        let label = match measure.kind {
            _ if scene.lettered => letter(shown.len()),
            MeasureKind::Across | MeasureKind::Widest => format!("Ø\u{a0}{own}"),
            MeasureKind::AcrossFlats => told("schematic-flats"),
            MeasureKind::AcrossCorners => told("schematic-corners"),
            MeasureKind::Along
            | MeasureKind::Folded
            | MeasureKind::Height
            | MeasureKind::Around
            | MeasureKind::LyingFlat => own,
        };
        shown.push(Shown {
            measure: *measure,
            label,
            name: name(scene, largest, measure),
            drawn,
            values: values.collect(),
        });
    }
    shown
}

/// A, B … Z, AA …
fn letter(index: usize) -> String {
    let own = char::from(b'A' + (index % 26) as u8);
    if index < 26 { own.to_string() } else { format!("{}{own}", letter(index / 26 - 1)) }
}

/// What a measure is called.
pub(super) fn name(scene: &Scene<'_>, size: &super::Sized<'_>, measure: &Measure) -> String {
    let part = measure.part.and_then(|part| size.view.parts.get(part)).map_or("", |part| part.name.as_str());
    let key = match measure.kind {
        MeasureKind::Across => "schematic-across",
        MeasureKind::AcrossFlats => "schematic-across-flats",
        MeasureKind::AcrossCorners => "schematic-across-corners",
        MeasureKind::Widest => "schematic-widest",
        MeasureKind::Along => "schematic-along",
        MeasureKind::Folded => "schematic-folded",
        MeasureKind::Height => "schematic-height",
        MeasureKind::Around => "schematic-around",
        MeasureKind::LyingFlat => "schematic-flat",
    };
    scene.words.with(key, &[("part", Arg::Text(part))])
}

/// Draws the list under everything else, centred on the axis: for one size what has no dimension line, for several
/// sizes everything. The scale and what the figures mean stand below it.
pub(super) fn draw(scene: &Scene<'_>, measures: &[Shown], sheet: &mut Sheet) {
    let (several, lettered) = (scene.sizes.len() > 1, scene.lettered);
    let rows: Vec<&Shown> = measures.iter().filter(|shown| lettered || !shown.drawn).collect();
    let em = sheet.style.em();
    let names = rows.iter().map(|row| Face::Regular.width(&row.name, em)).fold(0.0, f64::max);
    let letters = if lettered { Face::Regular.width("W", em) + 2.5 } else { 0.0 };
    let cells = rows
        .iter()
        .flat_map(|row| row.values.iter().flatten())
        .map(|value| Face::Regular.width(value, em))
        .fold(0.0, f64::max);
    let heads = scene.sizes.iter().map(|size| Face::Bold.width(size.name, em)).fold(0.0, f64::max);
    let column = cells.max(heads) + GUTTER;
    let line = 1.75 * sheet.style.letters;
    let total = letters + names + column * scene.sizes.len() as f64;
    let left = -total / 2.0;
    let mut y = sheet.bounds().y1 + 6.0 + sheet.style.letters;
    if several {
        header(scene, sheet, left + letters + names, column, y);
        y += line;
    }
    for row in rows {
        if lettered {
            let label = sheet.text(&row.label, Point::new(left, y), Anchor::Start);
            sheet.write(TextItem { face: Face::Bold, ..label });
        }
        sheet.write(sheet.text(&row.name, Point::new(left + letters, y), Anchor::Start));
        for (index, value) in row.values.iter().enumerate() {
            let x = left + letters + names + column * (index as f64 + 1.0);
            let value = value.as_deref().unwrap_or("–");
            sheet.write(sheet.text(value, Point::new(x, y), Anchor::End));
        }
        y += line;
    }
    y += 0.3 * line;
    for note in notes(scene, |text| Face::Regular.width(text, em) <= 0.95 * scene.options.width.mm()) {
        sheet.write(sheet.text(&note, Point::new(0.0, y), Anchor::Middle));
        y += line;
    }
}

/// The scale and what the figures mean, in lines as long as they may be.
fn notes(scene: &Scene<'_>, fits: impl Fn(&str) -> bool) -> Vec<String> {
    let mut words = vec![scene.scale_words() + "."];
    let mut measures = scene.sizes.iter().flat_map(|size| &size.view.measures);
    let round = measures.any(|measure| matches!(measure.kind, MeasureKind::Across | MeasureKind::Widest));
    if !scene.lettered && round {
        words.push(scene.words.say("schematic-note-across"));
    }
    words.push(scene.words.say("schematic-note-along"));
    wrapped(&words.join(" "), fits)
}

/// Words in lines as long as they may be.
pub(super) fn wrapped(words: &str, fits: impl Fn(&str) -> bool) -> Vec<String> {
    let mut lines: Vec<String> = Vec::new();
    for word in words.split(' ') {
        match lines.last_mut() {
            Some(line) if fits(&format!("{line} {word}")) => {
                line.push(' ');
                line.push_str(word);
            }
            _ => lines.push(word.to_owned()),
        }
    }
    lines
}

/// Names of the sizes over their columns.
fn header(scene: &Scene<'_>, sheet: &mut Sheet, left: f64, column: f64, y: f64) {
    for (index, size) in scene.sizes.iter().enumerate() {
        let end = left + column * (index as f64 + 1.0);
        let head = sheet.text(size.name, Point::new(end, y), Anchor::End);
        sheet.write(TextItem { face: Face::Bold, ..head });
    }
}
