//! `draw`: one picture of a design.

use std::path::{Path, PathBuf};

use clap::{Args, ValueEnum};
use roundelay::drawing::{
    ChartOptions, ChartView, LEAST_CELL, SchematicOptions, chart, choose_view, least_cell, readable, schematic,
};
use roundelay::file::png::{self, PngOptions};
use roundelay::file::{Output, pdf, svg};
use roundelay::geometry::SideShape;
use roundelay::geometry::rings::repeats;
use roundelay::page::pictures::{chart_key, chart_options, schematic_options, symbols, table_picture, wall_picture};
use roundelay::page::{Options, Paper, wall};
use roundelay::pattern::Pattern;
use roundelay::plan::Plan;
use roundelay::report::{Diagnostic, Report};
use roundelay::units::{Angle, Mm};

use super::input;
use super::output::{failure, files};
use super::plan::unreadable;
use super::print::{Ink, paper};
use super::{Outcome, show};

/// What to draw, and how.
#[derive(Args, Debug)]
pub(super) struct Draw {
    /// Design file; `-` reads standard input
    pub(super) file: PathBuf,
    /// The picture
    #[arg(value_enum)]
    pub(super) picture: Picture,
    /// File to write; its ending says how: .svg, .png or .pdf
    #[arg(short, long, value_name = "FILE")]
    pub(super) output: PathBuf,
    /// The size to draw, by its name [default: the first]
    #[arg(long)]
    pub(super) size: Option<String>,
    /// Paper to draw for, such as A4, A3, Letter or 200x300mm
    #[arg(long, default_value = "A4", value_parser = paper)]
    pub(super) paper: Paper,
    /// Pixels an inch, 10 to 1200, for .png
    #[arg(long, default_value_t = 300.0, value_parser = dpi)]
    pub(super) dpi: f64,
    /// Shades of grey, for .png
    #[arg(long)]
    pub(super) grey: bool,
    /// Letters of 18 pt and wider lines
    #[arg(long)]
    pub(super) large_print: bool,
    /// How ink is used
    #[arg(long, value_enum, default_value_t)]
    pub(super) ink: Ink,
    /// What the chart shows [default: the first of the three that can be read on the paper]
    #[arg(long, value_enum)]
    pub(super) view: Option<View>,
    /// Chart of one part only, by its name
    #[arg(long, conflicts_with_all = ["view", "up_to"])]
    pub(super) part: Option<String>,
    /// Chart of the rounds up to and with this number
    #[arg(long, value_name = "ROUND", conflicts_with = "view", value_parser = clap::value_parser!(u32).range(1..))]
    pub(super) up_to: Option<u32>,
    /// Chart whose rounds start at this hour of the clock, 1 to 12 [default: 12]
    #[arg(long, value_name = "HOUR", value_parser = clap::value_parser!(u8).range(1..=12))]
    pub(super) start: Option<u8>,
    /// Chart with dotted lines between the repeats
    #[arg(long)]
    pub(super) repeats: bool,
    /// Chart with marks where stitches lean, crowd or touch
    #[arg(long)]
    pub(super) demerits: bool,
    /// Chart as .pdf in tiles on this home paper, to be stuck together to a sheet of --paper
    #[arg(long, value_name = "PAPER", value_parser = paper)]
    pub(super) tiles: Option<Paper>,
    /// Key of the whole symbol set, whatever the chart uses
    #[arg(long)]
    pub(super) all_symbols: bool,
    /// Schematic with all sizes nested
    #[arg(long)]
    pub(super) all_sizes: bool,
}

/// What a chart shows.
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub(super) enum View {
    /// Every round as a ring of its own
    Whole,
    /// Alike rounds as one labelled band
    Bands,
    /// One repeat, large
    Sector,
}

/// The pictures there are.
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub(super) enum Picture {
    /// The round chart with its key
    Chart,
    /// The side view with dimensions
    Schematic,
    /// The rows round by round
    Table,
    /// The symbols and what they mean
    Key,
}

fn dpi(text: &str) -> Result<f64, String> {
    let dpi = text.parse().ok().filter(|dpi: &f64| (10.0..=1200.0).contains(dpi));
    dpi.ok_or_else(|| "write a number from 10 to 1200, such as 150 for a screen or 300 for print".to_owned())
}

/// How a picture is written.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Ending {
    /// Scalable vector graphics.
    Svg,
    /// Pixels.
    Png,
    /// A page.
    Pdf,
}

impl Ending {
    fn of(path: &Path) -> Option<Self> {
        match path.extension()?.to_str()?.to_lowercase().as_str() {
            "svg" => Some(Self::Svg),
            "png" => Some(Self::Png),
            "pdf" => Some(Self::Pdf),
            _ => None,
        }
    }
}

/// Solves a design, draws the picture and writes it.
pub(super) fn run(wish: &Draw, swatch: Option<&Path>) -> Outcome {
    let Some(ending) = Ending::of(&wish.output) else {
        let message = format!("{} has none of the endings .svg, .png and .pdf", wish.output.display());
        return failure(&message, "write for example `-o chart.svg`");
    };
    let Some(name) = wish.output.file_name().and_then(|name| name.to_str()) else {
        return failure(&format!("{} is no file name", wish.output.display()), "write for example `-o chart.svg`");
    };
    if let Some((message, help)) = misplaced(wish, ending) {
        return failure(&message, help);
    }
    let (source, bytes) = match input::bytes(&wish.file) {
        Ok(read) => read,
        Err(error) => return unreadable(&wish.file, &error),
    };
    let (mut source, solved) = input::solve(source, &bytes, swatch);
    let named = solved.as_ref().map(|solved| known(&solved.plan, wish));
    let drawn = match (&solved, &named) {
        (Some(solved), Some(Ok(()))) => picture(solved, wish, ending, &mut source.report),
        _ => None,
    };
    show::complaints(&source);
    if let Some(Err((message, help))) = named {
        return failure(&message, &help);
    }
    let Some(bytes) = drawn else {
        // A sound design that can't be drawn as wished has no errors; the wish has.
        return if solved.is_some() { Outcome::CouldNotRun } else { Outcome::DesignErrors };
    };
    let folder = wish.output.parent().filter(|folder| !folder.as_os_str().is_empty()).unwrap_or(Path::new("."));
    let read: Vec<&Path> = std::iter::once(wish.file.as_path()).chain(swatch).collect();
    let outputs = [Output { name: name.to_owned(), bytes }];
    files(folder, &outputs, &read, "give a folder that can be written")
        .map_or_else(|outcome| outcome, |_| Outcome::Done)
}

/// An option that the picture has no use for, and where it has its place.
fn misplaced(wish: &Draw, ending: Ending) -> Option<(String, &'static str)> {
    let chart = wish.picture == Picture::Chart;
    let options = [
        (wish.view.is_some() && !chart, "--view", "it says what a chart shows"),
        (wish.part.is_some() && !chart, "--part", "it says what a chart shows"),
        (wish.up_to.is_some() && !chart, "--up-to", "it says what a chart shows"),
        (wish.start.is_some() && !chart, "--start", "it turns a chart"),
        (wish.repeats && !chart, "--repeats", "it marks the repeats of a chart"),
        (wish.demerits && !chart, "--demerits", "it marks the stitches of a chart"),
        (wish.tiles.is_some() && !(chart && ending == Ending::Pdf), "--tiles", "it cuts a chart as .pdf"),
        (wish.all_sizes && wish.picture != Picture::Schematic, "--all-sizes", "it nests the sizes of a schematic"),
        (wish.all_symbols && wish.picture != Picture::Key, "--all-symbols", "it adds to a key"),
    ];
    let (_, option, help) = options.into_iter().find(|(misplaced, ..)| *misplaced)?;
    Some((format!("{option} has no meaning for this picture"), help))
}

/// The size, the part and the last round of a chart that the plan has, or a complaint on which it has.
fn known(plan: &Plan, wish: &Draw) -> Result<(), (String, String)> {
    input::known_size(plan, wish.size.as_deref())?;
    let Some(size) = plan.sizes.get(wanted_size(plan, wish)) else { return Ok(()) };
    let names: Vec<&str> = size.parts.iter().map(|part| part.name.as_str()).collect();
    if let Some(name) = wish.part.as_deref().filter(|name| !names.contains(name)) {
        return Err((format!("the design has no part `{name}`"), format!("its parts are {}", names.join(", "))));
    }
    let last = size.rounds.len();
    match wish.up_to {
        Some(round) if round as usize > last => {
            Err((format!("there is no round {round}"), format!("size {} has {last} rounds", size.name)))
        }
        _ => Ok(()),
    }
}

/// The index of the size to draw.
fn wanted_size(plan: &Plan, wish: &Draw) -> usize {
    wish.size.as_ref().and_then(|name| plan.sizes.iter().position(|size| size.name == *name)).unwrap_or(0)
}

/// The bytes of the picture in the way its ending says, or complaints and nothing.
fn picture(solved: &Pattern, wish: &Draw, ending: Ending, report: &mut Report) -> Option<Vec<u8>> {
    let plan = &solved.plan;
    let size = wanted_size(plan, wish);
    let options = Options { large: wish.large_print, print: wish.ink.print(), ..Options::new(wish.paper.clone()) };
    let (width, height) = wish.paper.printable();
    let drawing = match wish.picture {
        Picture::Chart => {
            let view = view(plan, size, wish, report)?;
            if wish.repeats && plan.sizes.get(size).is_some_and(|size| repeats(size) < 2) {
                let message = "the piece has no repeat that every round shares, so none is marked";
                report.add(Diagnostic::warning("no-repeat", message));
            }
            let hour = f64::from(wish.start.unwrap_or(12) % 12);
            let shown = ChartOptions {
                start: Angle::from_degrees(30.0 * hour),
                repeats: wish.repeats,
                demerits: wish.demerits,
                ..chart_options(view, width, height, &options)
            };
            if ending == Ending::Pdf {
                return wall_chart(plan, size, &shown, wish, &options, report);
            }
            chart(plan, size, &shown)
        }
        Picture::Schematic => {
            let sizes: Vec<usize> = if wish.all_sizes { (0..plan.sizes.len()).collect() } else { vec![size] };
            let shapes: Vec<SideShape> = sizes.iter().filter_map(|size| solved.shapes.get(*size).cloned()).collect();
            let room = SchematicOptions { width, height, ..schematic_options(&options) };
            let drawing = schematic(plan, &sizes, &shapes, &room);
            if drawing.bounds.width() > width.mm() || drawing.bounds.height() > height.mm() {
                report.add(no_room(sizes.len(), &wish.paper));
                return None;
            }
            drawing
        }
        Picture::Table => table_picture(plan, size, &solved.shapes, &options)?,
        Picture::Key if wish.all_symbols => symbols(plan, width, &options),
        Picture::Key => {
            let view = view(plan, size, wish, &mut Report::new())?;
            chart_key(plan, size, view, width, &options)
        }
    };
    match ending {
        Ending::Svg => Some(svg::write(&drawing).into_bytes()),
        Ending::Png => png::render(&svg::write(&drawing), &PngOptions { dpi: wish.dpi, grey: wish.grey }, report),
        Ending::Pdf => pdf::write_drawing(&drawing).map_err(|complaint| report.add(complaint)).ok(),
    }
}

/// The complaint about a schematic that fits at no scale.
fn no_room(sizes: usize, paper: &Paper) -> Diagnostic {
    let what = if sizes > 1 { format!("{sizes} nested sizes") } else { "its words".to_owned() };
    let message = format!("the schematic finds no room for {what} on {} paper", paper.name);
    Diagnostic::error("schematic-too-large", message)
        .help("draw one size at a time with --size, or choose larger paper with --paper")
}

/// The view of the chart that was asked for, or the one that can be read on the paper, with the reason as a note.
fn view(plan: &Plan, size: usize, wish: &Draw, report: &mut Report) -> Option<ChartView> {
    let (width, height) = wish.paper.printable();
    let asked = match (&wish.part, wish.up_to, wish.view) {
        (Some(name), ..) => {
            let part = plan.sizes.get(size)?.parts.iter().position(|part| part.name == *name)?;
            Some(ChartView::Part(part))
        }
        (None, Some(round), _) => Some(ChartView::UpTo(round)),
        (None, None, Some(View::Whole)) => Some(ChartView::Whole),
        (None, None, Some(View::Bands)) => Some(ChartView::Bands),
        (None, None, Some(View::Sector)) => Some(ChartView::Sector),
        (None, None, None) => None,
    };
    let Some(view) = asked else {
        let (view, reason) = choose_view(plan, size, width, height);
        if least(plan, size, view, wish) < LEAST_CELL {
            report.add(too_small(plan, size, view, wish));
        } else if view != ChartView::Whole {
            report.add(Diagnostic::note("view-chosen", reason.trim_end_matches('.')));
        }
        return Some(view);
    };
    let cell = least(plan, size, view, wish);
    if view == ChartView::Sector && cell == Mm::ZERO {
        let message = "the piece has no repeat that every round shares, so all of it is drawn";
        report.add(Diagnostic::warning("no-repeat", message).help("`--view bands` draws alike rounds as one"));
    } else if cell < LEAST_CELL {
        report.add(too_small(plan, size, view, wish));
    }
    Some(view)
}

/// The warning that a chart can't be read, with what to add to the command for one that can.
fn too_small(plan: &Plan, size: usize, view: ChartView, wish: &Draw) -> Diagnostic {
    let (width, height) = wish.paper.printable();
    let cell = least(plan, size, view, wish);
    let readable = readable(plan, size, width, height);
    let mut ways: Vec<String> = Vec::new();
    for (paper, view) in readable.papers {
        ways.push(format!("`--paper {paper}{}`", flag(plan, size, view)));
    }
    ways.extend(readable.views.iter().map(|view| format!("`{}`", flag(plan, size, *view).trim())));
    let message = format!("the smallest stitch is {:.1} mm on {} paper, too small to read", cell.mm(), wish.paper.name);
    let help = match ways.split_last() {
        None => "no single sheet is large enough, not for one repeat: draw fewer rounds with --up-to".to_owned(),
        Some((only, [])) => format!("it can be read with {only}"),
        Some((last, ways)) => format!("it can be read with {} or {last}", ways.join(", ")),
    };
    Diagnostic::warning("too-small", message).help(help)
}

/// A view as it is asked for on the command line, a space before it.
fn flag(plan: &Plan, size: usize, view: ChartView) -> String {
    match view {
        ChartView::Whole => String::new(),
        ChartView::Bands => " --view bands".to_owned(),
        ChartView::Sector => " --view sector".to_owned(),
        ChartView::UpTo(round) => format!(" --up-to {round}"),
        ChartView::Part(part) => {
            let name = plan.sizes.get(size).and_then(|size| size.parts.get(part)).map_or("", |part| part.name.as_str());
            let quote = if name.contains(char::is_whitespace) { "\"" } else { "" };
            format!(" --part {quote}{name}{quote}")
        }
    }
}

fn least(plan: &Plan, size: usize, view: ChartView, wish: &Draw) -> Mm {
    let (width, height) = wish.paper.printable();
    least_cell(plan, size, &ChartOptions { view, width, height, ..ChartOptions::default() })
}

/// A wall chart: on one sheet, or in tiles on home paper.
fn wall_chart(
    plan: &Plan,
    size: usize,
    shown: &ChartOptions,
    wish: &Draw,
    options: &Options,
    report: &mut Report,
) -> Option<Vec<u8>> {
    let wall = wall_picture(plan, size, shown, &wish.paper, options);
    let document = match &wish.tiles {
        Some(home) => wall::tiled(plan, &wall, &Options { paper: home.clone(), ..options.clone() }, report)?,
        None => wall::one_sheet(plan, &wall, options, report)?,
    };
    pdf::write(&document).map_err(|complaint| report.add(complaint)).ok()
}
