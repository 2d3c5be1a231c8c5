//! The products: one row each, with how it is made.

use std::sync::{Arc, OnceLock};

use rayon::prelude::*;

use super::draw::{margined, room_for};
use super::names::size_names;
use super::pictures::{
    self, Spaces, charts_asked, large, middle, narrow_key, spatial, table_picture, untold, wall_picture, wall_sheet,
    wall_view,
};
use super::rows::Row;
use crate::drawing::{ChartOptions, Drawing, PieceOptions, schematic};
use crate::file::png::{self, PngOptions};
use crate::file::{Output, csv, html, pdf, svg, text};
use crate::page::{Document, Options, Pictures, booklet, wall};
use crate::pattern::Pattern;
use crate::report::Report;
use crate::story::Story;

/// Pixels an inch of the pictures that are published beside the SVG.
const DPI: f64 = 150.0;

/// Pixels an inch of the finished piece: 1,200 pixels across, as shops ask for.
pub(super) const PIECE_DPI: f64 = 190.5;

/// Something that is published of a pattern: one file or several.
#[derive(Clone, Copy, Debug)]
pub struct Product {
    name: &'static str,
    about: &'static str,
    /// How the names of its files end.
    pub endings: &'static [&'static str],
    /// True where it shows the pictures of the booklet.
    pictured: bool,
    /// True where it shows every size in space.
    spatial: bool,
    /// Makes its files. Nothing, and errors in the report, where a page can't be laid out.
    make: fn(&Job<'_>, &Product, &mut Report) -> Option<Vec<Output>>,
}

impl Row for Product {
    fn name(&self) -> &'static str {
        self.name
    }

    fn about(&self) -> &'static str {
        self.about
    }
}

/// All of them, in the order in which they are made.
pub static PRODUCTS: [Product; 7] = [
    Product {
        name: "booklet",
        about: "The booklet",
        endings: &["-booklet.pdf"],
        pictured: true,
        spatial: false,
        make: booklet,
    },
    Product { name: "web", about: "The web page", endings: &[".html"], pictured: true, spatial: false, make: web },
    Product {
        name: "text",
        about: "The pattern as plain text",
        endings: &[".txt"],
        pictured: true,
        spatial: false,
        make: plain_text,
    },
    Product {
        name: "csv",
        about: "The rounds for a spreadsheet",
        endings: &[".csv"],
        pictured: false,
        spatial: false,
        make: spreadsheet,
    },
    Product {
        name: "pictures",
        about: "Charts, schematics and tables",
        endings: &[".svg", ".png"],
        pictured: true,
        spatial: false,
        make: separate_pictures,
    },
    Product {
        name: "piece",
        about: "The finished piece",
        endings: &["-piece.svg", "-piece.png"],
        pictured: false,
        spatial: true,
        make: pieces,
    },
    Product {
        name: "wall",
        about: "Wall charts in tiles",
        endings: &["-wall-chart.pdf"],
        pictured: false,
        spatial: false,
        make: wall_charts,
    },
];

/// Makes the files of these products, their names beginning with `stem`. Nothing, and errors in the report, where a page
/// can't be laid out.
pub fn publish<'p>(
    pattern: &Pattern,
    stem: &str,
    products: impl IntoIterator<Item = &'p Product>,
    options: &Options,
    report: &mut Report,
) -> Option<Vec<Output>> {
    let sizes = size_names(pattern.plan.sizes.iter().map(|size| size.name.as_str()));
    let mut products: Vec<&Product> = products.into_iter().collect();
    if !charts_asked(&pattern.plan, options, report) {
        return None;
    }
    let (every, any) =
        (products.iter().any(|product| product.spatial), products.iter().any(|product| product.pictured));
    let any = any && spatial(&pattern.plan, &pattern.shapes, options);
    let shown = |index| every || any && index == middle(&pattern.plan);
    let spaces = Spaces::of(&pattern.plan, &pattern.shapes, shown);
    let mut job = Job { pattern, stem, options, sizes, spaces, pictures: OnceLock::new() };
    if large(&pattern.plan) {
        // One after the other: first what takes most room while it is made, when the fewest files are held beside it; those
        // beside which the pictures need not be held come last.
        products.sort_by_key(|product| (!product.pictured, product.endings.len() < 2));
        let pictured = products.iter().take_while(|product| product.pictured).count();
        let (pictured, others) = products.split_at(pictured);
        let mut outputs = job.gathered(pictured, report, |product, report| (product.make)(&job, product, report))?;
        job.pictures = OnceLock::new();
        outputs.extend(job.gathered(others, report, |product, report| (product.make)(&job, product, report))?);
        return Some(outputs);
    }
    if products.iter().any(|product| product.pictured) {
        // Before the products are shared out: one that waited for the pictures of another would hold up both.
        job.pictures();
    }
    job.gathered(&products, report, |product, report| (product.make)(&job, product, report))
}

/// What the products are made from.
struct Job<'a> {
    pattern: &'a Pattern,
    stem: &'a str,
    options: &'a Options,
    /// The sizes as parts of file names.
    sizes: Vec<String>,
    /// Its sizes in space.
    spaces: Spaces<'a>,
    /// Only drawn where a product shows them.
    pictures: OnceLock<Pictures>,
}

impl Job<'_> {
    fn pictures(&self) -> &Pictures {
        let Pattern { plan, shapes, photo, .. } = self.pattern;
        let shown = (plan, &shapes[..], photo.as_deref());
        self.pictures.get_or_init(|| pictures::draw_with(shown, self.options, &self.spaces))
    }

    /// Makes the files of several things, at once where these are small. Their order, and that of the complaints, is that
    /// of the things; nothing where one of them can't be made.
    fn gathered<T: Sync>(
        &self,
        things: &[T],
        report: &mut Report,
        make: impl Fn(&T, &mut Report) -> Option<Vec<Output>> + Sync,
    ) -> Option<Vec<Output>> {
        let one = |thing| {
            let mut own = Report::new();
            (make(thing, &mut own), own)
        };
        let made: Vec<(Option<Vec<Output>>, Report)> = if large(&self.pattern.plan) {
            things.iter().map(one).collect()
        } else {
            things.par_iter().map(one).collect()
        };
        let mut outputs = Vec::new();
        for (files, own) in made {
            own.diagnostics.into_iter().for_each(|complaint| report.add(complaint));
            outputs.extend(files?);
        }
        Some(outputs)
    }

    fn story(&self) -> Story<'_> {
        let Pattern { plan, shapes, .. } = self.pattern;
        Story::new(plan, shapes, self.options.telling(), self.pictures().illustrations())
    }

    fn file(&self, name: &str, bytes: Vec<u8>) -> Output {
        Output { name: format!("{}{name}", self.stem), bytes }
    }

    /// The one file of a product that has no more.
    fn only(&self, product: &Product, text: String) -> Option<Vec<Output>> {
        Some(vec![self.file(product.endings.first()?, text.into_bytes())])
    }
}

fn booklet(job: &Job<'_>, product: &Product, report: &mut Report) -> Option<Vec<Output>> {
    let document = booklet::lay_out(&job.story(), job.pictures(), job.options, report)?;
    Some(vec![job.file(product.endings.first()?, written(&document, report)?)])
}

fn web(job: &Job<'_>, product: &Product, _: &mut Report) -> Option<Vec<Output>> {
    let narrow = narrow_key(&job.pattern.plan, job.options);
    job.only(product, html::write(&job.story(), job.pictures(), &narrow))
}

fn plain_text(job: &Job<'_>, product: &Product, _: &mut Report) -> Option<Vec<Output>> {
    job.only(product, text::write(&job.story(), job.pictures()))
}

fn spreadsheet(job: &Job<'_>, product: &Product, _: &mut Report) -> Option<Vec<Output>> {
    job.only(product, csv::plan(&job.pattern.plan, &job.pattern.shapes, None))
}

/// Charts, schematics and tables of every size, and the key.
fn separate_pictures(job: &Job<'_>, _: &Product, report: &mut Report) -> Option<Vec<Output>> {
    job.gathered(&named(job), report, |(name, drawing), report| {
        let pixels = png::draw(drawing, &PngOptions { dpi: DPI, ..PngOptions::default() }, report)?;
        let vectors = job.file(&format!("-{name}.svg"), svg::write(drawing).into_bytes());
        Some(vec![vectors, job.file(&format!("-{name}.png"), pixels)])
    })
}

/// The finished piece in every size.
fn pieces(job: &Job<'_>, product: &Product, report: &mut Report) -> Option<Vec<Output>> {
    let sizes: Vec<(usize, &String)> = job.sizes.iter().enumerate().collect();
    job.gathered(&sizes, report, |&(index, name), report| {
        let drawing = job.spaces.draw(index, &PieceOptions::default())?;
        let pixels = png::draw(&drawing, &PngOptions { dpi: PIECE_DPI, ..PngOptions::default() }, report)?;
        let files = product.endings.iter().zip([svg::write(&drawing).into_bytes(), pixels]);
        Some(files.map(|(ending, bytes)| job.file(&format!("-{name}{ending}"), bytes)).collect())
    })
}

/// A wall chart of every size in tiles on home paper.
fn wall_charts(job: &Job<'_>, product: &Product, report: &mut Report) -> Option<Vec<Output>> {
    let (plan, options) = (&job.pattern.plan, job.options);
    let sizes: Vec<(usize, &String)> = job.sizes.iter().enumerate().collect();
    job.gathered(&sizes, report, |&(index, size), report| {
        let sheet = wall::filling(&wall_sheet(plan, index, options), &options.paper);
        let view = wall_view(plan, index, options);
        let shown = ChartOptions { view, start: options.chart.start(), ..ChartOptions::default() };
        let wall = wall_picture(plan, index, &shown, &sheet, options);
        let document = wall::tiled(&untold(plan, options), &wall, options, report)?;
        let name = format!("-{size}{}", product.endings.first()?);
        Some(vec![job.file(&name, written(&document, report)?)])
    })
}

fn written(document: &Document, report: &mut Report) -> Option<Vec<u8>> {
    pdf::write(document).map_err(|complaint| report.add(complaint)).ok()
}

/// The pictures that are published by themselves, with their names.
fn named(job: &Job<'_>) -> Vec<(String, Arc<Drawing>)> {
    let (Pattern { plan, shapes, .. }, options, pictures) = (job.pattern, job.options, job.pictures());
    let room = room_for(options);
    let mut named = Vec::new();
    for (index, name) in job.sizes.iter().enumerate() {
        let chart = pictures.charts.get(index).map(|(drawing, _)| drawing.clone());
        let side = shapes.get(index..=index).map(|shape| Arc::new(margined(schematic(plan, &[index], shape, &room))));
        let table = table_picture(plan, index, shapes, options).map(Arc::new);
        let of_size = [("chart", chart), ("schematic", side), ("table", table)];
        named.extend(of_size.into_iter().filter_map(|(kind, drawing)| Some((format!("{name}-{kind}"), drawing?))));
    }
    named.extend(pictures.key.iter().map(|drawing| ("key".to_owned(), drawing.clone())));
    named
}
