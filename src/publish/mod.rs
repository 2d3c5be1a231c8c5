//! Everything that is published of a plan, as named bytes.

use std::cell::LazyCell;
use std::sync::Arc;

use crate::drawing::{ChartOptions, Drawing, SchematicOptions, schematic};
use crate::geometry::SideShape;
use crate::page::pictures::{schematic_options, table_picture, wall_picture, wall_sheet};
use crate::page::{Options, Pictures, booklet, wall};
use crate::plan::Plan;
use crate::report::Report;

use crate::file::png::{self, PngOptions};
use crate::file::{Output, csv, html, pdf, svg, text};

/// What can be published.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Kind {
    /// The booklet, PDF.
    Booklet,
    /// The web page.
    Web,
    /// The pattern as plain text.
    Text,
    /// The rounds for a spreadsheet.
    Csv,
    /// Charts, schematics and tables of every size, SVG and PNG.
    Pictures,
    /// A wall chart of every size in tiles on home paper, PDF.
    Wall,
}

impl Kind {
    /// All of them.
    pub const ALL: [Self; 6] = [Self::Booklet, Self::Web, Self::Text, Self::Csv, Self::Pictures, Self::Wall];
}

/// Pixels an inch of the pictures that are published beside the SVG.
const DPI: f64 = 150.0;

/// Makes the files of these kinds, their names beginning with `stem`. Nothing, and errors in the report, where a page
/// can't be laid out.
pub fn publish(
    plan: &Plan,
    shapes: &[SideShape],
    stem: &str,
    kinds: &[Kind],
    options: &Options,
    report: &mut Report,
) -> Option<Vec<Output>> {
    // Only drawn where a kind shows them.
    let pictures = LazyCell::new(|| Pictures::draw(plan, shapes, options));
    let file = |name: String, bytes: Vec<u8>| Output { name: format!("{stem}{name}"), bytes };
    let sizes = size_names(plan.sizes.iter().map(|size| size.name.as_str()));
    let mut outputs = Vec::new();
    for kind in kinds {
        match kind {
            Kind::Booklet => {
                let document = booklet::lay_out(plan, &pictures, options, report)?;
                let bytes = pdf::write(&document).map_err(|complaint| report.add(complaint)).ok()?;
                outputs.push(file("-booklet.pdf".into(), bytes));
            }
            Kind::Web => outputs.push(file(".html".into(), html::write(plan, &pictures, options).into_bytes())),
            Kind::Text => outputs.push(file(".txt".into(), text::write(plan, &pictures, options).into_bytes())),
            Kind::Csv => outputs.push(file(".csv".into(), csv::plan(plan, shapes, None).into_bytes())),
            Kind::Pictures => {
                for (name, drawing) in named(plan, shapes, &sizes, &pictures, options) {
                    let written = svg::write(&drawing);
                    let pixels = png::render(&written, &PngOptions { dpi: DPI, ..PngOptions::default() }, report)?;
                    outputs.push(file(format!("-{name}.svg"), written.into_bytes()));
                    outputs.push(file(format!("-{name}.png"), pixels));
                }
            }
            Kind::Wall => {
                for (index, size) in sizes.iter().enumerate() {
                    let sheet = wall::filling(&wall_sheet(plan, index, options), &options.paper);
                    let wall = wall_picture(plan, index, &ChartOptions::default(), &sheet, options);
                    let document = wall::tiled(plan, &wall, options, report)?;
                    let bytes = pdf::write(&document).map_err(|complaint| report.add(complaint)).ok()?;
                    outputs.push(file(format!("-{size}-wall-chart.pdf"), bytes));
                }
            }
        }
    }
    Some(outputs)
}

/// The pictures that are published by themselves, with their names.
fn named(
    plan: &Plan,
    shapes: &[SideShape],
    sizes: &[String],
    pictures: &Pictures,
    options: &Options,
) -> Vec<(String, Arc<Drawing>)> {
    let (width, height) = options.paper.printable();
    let room = SchematicOptions { width, height, ..schematic_options(options) };
    let mut named = Vec::new();
    for (index, name) in sizes.iter().enumerate() {
        let chart = pictures.charts.get(index).map(|(drawing, _)| drawing.clone());
        let side = shapes.get(index..=index).map(|shape| Arc::new(schematic(plan, &[index], shape, &room)));
        let table = table_picture(plan, index, shapes, options).map(Arc::new);
        let of_size = [("chart", chart), ("schematic", side), ("table", table)];
        named.extend(of_size.into_iter().filter_map(|(kind, drawing)| Some((format!("{name}-{kind}"), drawing?))));
    }
    named.extend(pictures.key.iter().map(|drawing| ("key".to_owned(), drawing.clone())));
    named
}

/// Sizes as parts of file names, each different from the others even where upper and lower case are one: those that
/// would be taken for another, or have nothing left, get their number.
fn size_names<'a>(names: impl Iterator<Item = &'a str>) -> Vec<String> {
    let mut taken: Vec<String> = Vec::new();
    let mut free = |name: String| {
        let small = name.to_lowercase();
        let free = !small.is_empty() && !taken.contains(&small);
        if free {
            taken.push(small);
        }
        free.then_some(name)
    };
    let mut named: Vec<Option<String>> = names.map(|name| free(slug(name))).collect();
    for (index, name) in named.iter_mut().enumerate().filter(|(_, name)| name.is_none()) {
        *name = (index + 1..).find_map(|number| free(format!("size-{number}")));
    }
    named.into_iter().flatten().collect()
}

/// A name as part of a file name: letters and figures stay, all else becomes a hyphen.
pub fn slug(name: &str) -> String {
    let safe: String = name.chars().map(|c| if c.is_alphanumeric() { c } else { '-' }).collect();
    safe.split('-').filter(|piece| !piece.is_empty()).collect::<Vec<_>>().join("-")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn no_two_sizes_share_a_file_name() {
        let names = ["S", "s", "S!", "!!", "size 4", "??", "3 months", "μικρό"];
        let expected = ["S", "size-2", "size-3", "size-5", "size-4", "size-6", "3-months", "μικρό"];
        assert_eq!(size_names(names.into_iter()), expected);
    }
}
