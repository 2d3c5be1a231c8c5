//! `draw`: one picture of a design.

use std::path::{Path, PathBuf};

use clap::{Args, ValueEnum};
use roundelay::file::Output;
use roundelay::file::save::save;
use roundelay::page::Paper;
use roundelay::report::{Diagnostic, Report};

use super::input::{self, Solved};
use super::output::failure;
use super::plan::unreadable;
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

/// A paper that pages can be laid out on, by its name or measures.
pub(super) fn paper(name: &str) -> Result<Paper, String> {
    let told = |complaint: Diagnostic| match complaint.help {
        Some(help) => format!("{}; {help}", complaint.message),
        None => complaint.message,
    };
    let paper = Paper::by_name(name).map_err(told)?;
    paper.check().map_err(told)?;
    Ok(paper)
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
    let (source, bytes) = match input::bytes(&wish.file) {
        Ok(read) => read,
        Err(error) => return unreadable(&wish.file, &error),
    };
    let (mut source, solved) = input::solve(source, &bytes, swatch);
    let named = solved.as_ref().map(|solved| input::known_size(&solved.plan, wish.size.as_deref()));
    let drawn = match (&solved, &named) {
        (Some(solved), Some(Ok(()))) => picture(solved, wish, ending, &mut source.report),
        _ => None,
    };
    show::complaints(&source);
    if let Some(Err((message, help))) = named {
        return failure(&message, &help);
    }
    let Some(bytes) = drawn else { return Outcome::DesignErrors };
    let folder = wish.output.parent().filter(|folder| !folder.as_os_str().is_empty()).unwrap_or(Path::new("."));
    match save(folder, &[Output { name: name.to_owned(), bytes }]) {
        Ok(_) => Outcome::Done,
        Err(error) => failure(&error, "give a folder that can be written"),
    }
}

/// The bytes of the picture in the way its ending says, or complaints and nothing.
fn picture(solved: &Solved, wish: &Draw, ending: Ending, report: &mut Report) -> Option<Vec<u8>> {
    let _ = (solved, wish.picture, &wish.paper, wish.dpi, wish.grey, wish.large_print, ending);
    report.add(Diagnostic::error("not-drawn", "pictures can't be drawn yet"));
    None
}
