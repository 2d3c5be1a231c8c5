//! Everything that is published of a plan, as named bytes.

use crate::drawing::Drawing;
use crate::geometry::SideShape;
use crate::page::{Options, Pictures, booklet};
use crate::plan::Plan;
use crate::report::Report;

use super::png::{self, PngOptions};
use super::{Output, csv, html, pdf, svg, text};

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
}

impl Kind {
    /// All of them.
    pub const ALL: [Self; 5] = [Self::Booklet, Self::Web, Self::Text, Self::Csv, Self::Pictures];
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
    let pictures = Pictures::draw(plan, shapes, options);
    let file = |name: String, bytes: Vec<u8>| Output { name: format!("{stem}{name}"), bytes };
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
                for (name, drawing) in named(plan, &pictures) {
                    let written = svg::write(drawing);
                    let pixels = png::render(&written, &PngOptions { dpi: DPI, ..PngOptions::default() }, report)?;
                    outputs.push(file(format!("-{name}.svg"), written.into_bytes()));
                    outputs.push(file(format!("-{name}.png"), pixels));
                }
            }
        }
    }
    Some(outputs)
}

/// The pictures that are published by themselves, with their names.
fn named<'a>(plan: &'a Plan, pictures: &'a Pictures) -> impl Iterator<Item = (String, &'a Drawing)> {
    let charts = plan.sizes.iter().zip(&pictures.charts);
    let charts = charts.map(|(size, (drawing, _))| (format!("{}-chart", slug(&size.name)), &**drawing));
    let key = pictures.key.iter().map(|drawing| ("key".to_owned(), &**drawing));
    charts.chain(key)
}

/// A name as part of a file name: letters and figures stay, all else becomes a hyphen.
pub fn slug(name: &str) -> String {
    let safe: String = name.chars().map(|c| if c.is_alphanumeric() { c } else { '-' }).collect();
    safe.split('-').filter(|piece| !piece.is_empty()).collect::<Vec<_>>().join("-")
}
