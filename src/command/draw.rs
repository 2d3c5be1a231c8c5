//! `draw`: one picture of a design.

use std::path::{Path, PathBuf};

use clap::Args;
use roundelay::drawing::ChartView;
use roundelay::file::Output;
use roundelay::file::png::PngOptions;
use roundelay::file::save::Order;
use roundelay::file::seal::sealed;
use roundelay::page::{Options, Paper, Print};
use roundelay::publish::{
    DrawOptions, FORMATS, FRAMES, Format, Named, PICTURES, PRINTS, Picture, STANDS, Stand, VIEWS, by_name, draw,
    draw_together, misplaced,
};
use roundelay::report::Diagnostic;
use roundelay::units::Angle;

use super::input::{Photo, Source, Swatch};
use super::output::{cautions, complaint, failure, files};
use super::plan::unreadable;
use super::progress::Progress;
use super::rows::{one_of, paper};
use super::{Outcome, input, show};

/// What to draw, and how.
#[derive(Args, Debug)]
pub(super) struct Draw {
    /// Design file; `-` reads standard input
    file: PathBuf,
    /// The picture
    #[arg(value_parser = one_of(&PICTURES))]
    picture: &'static Picture,
    /// File to write; its ending says how: .svg, .png or .pdf
    #[arg(short, long, value_name = "FILE")]
    output: PathBuf,
    /// Replace the file even where Roundelay did not make it
    #[arg(long)]
    force: bool,
    /// The size to draw, by its name [default: the first]
    #[arg(long)]
    size: Option<String>,
    /// Paper to draw for, such as A4, A3, Letter or 200x300mm
    #[arg(long, default_value = "A4", value_parser = paper)]
    paper: Paper,
    /// Pixels an inch, 10 to 1200, for .png
    #[arg(long, default_value_t = 300.0, value_parser = dpi)]
    dpi: f64,
    /// Shades of grey, for .png
    #[arg(long)]
    grey: bool,
    /// Letters of 18 pt and wider lines
    #[arg(long)]
    large_print: bool,
    /// How ink is used
    #[arg(long, default_value = PRINTS[0].name, value_parser = one_of(&PRINTS))]
    ink: &'static Named<Print>,
    /// What the chart shows [default: the first of the three that can be read on the paper]
    #[arg(long, value_parser = one_of(&VIEWS))]
    view: Option<&'static Named<ChartView>>,
    /// Written rounds in the shortest words, not in their author's
    #[arg(long)]
    rewrite: bool,
    /// Of written rounds with several pieces this one, by its name or its number [default: the first; for `piece` all of them, side by side]
    #[arg(long, value_name = "NAME")]
    piece: Option<String>,
    /// Chart of one part only, by its name
    #[arg(long, conflicts_with_all = ["view", "up_to"])]
    part: Option<String>,
    /// Chart of the rounds up to and with this number
    #[arg(long, value_name = "ROUND", conflicts_with = "view", value_parser = clap::value_parser!(u32).range(1..))]
    up_to: Option<u32>,
    /// Chart whose rounds start at this hour of the clock, 1 to 12 [default: 12]
    #[arg(long, value_name = "HOUR", value_parser = clap::value_parser!(u8).range(1..=12))]
    start: Option<u8>,
    /// Chart with dotted lines between the repeats
    #[arg(long)]
    repeats: bool,
    /// Chart with marks where stitches lean, crowd or touch
    #[arg(long)]
    demerits: bool,
    /// Chart as .pdf in tiles on this home paper, to be stuck together to a sheet of --paper
    #[arg(long, value_name = "PAPER", value_parser = paper)]
    tiles: Option<Paper>,
    /// Key of the whole symbol set, whatever the chart uses
    #[arg(long)]
    all_symbols: bool,
    /// Schematic of the largest size with all sizes in a row and a table
    #[arg(long)]
    all_sizes: bool,
    /// Schematic of a hat as worn, its head in grey
    #[arg(long, conflicts_with = "all_sizes")]
    worn: bool,
    /// Piece seen from this height over the horizon, from 0° (in front) to 90° (above)
    #[arg(long, value_name = "ANGLE", value_parser = |text: &str| angle(text, 90.0))]
    from: Option<Angle>,
    /// Piece turned to the right by this angle, up to 360°; its rounds start at the back
    #[arg(long, value_name = "ANGLE", value_parser = |text: &str| angle(text, 360.0))]
    turn: Option<Angle>,
    /// Piece in a frame, as shops and social pages show pictures
    #[arg(long, value_parser = one_of(&FRAMES))]
    frame: Option<&'static Named<f64>>,
    /// Piece with its title at the foot of its frame
    #[arg(long, requires = "frame")]
    titled: bool,
    /// Piece so many pixels wide, such as 1200 or 2000, for .png
    #[arg(long, value_name = "WIDTH", conflicts_with = "dpi", value_parser = clap::value_parser!(u32).range(100..=4000))]
    pixels: Option<u32>,
    /// Piece without perspective, so that lengths can be measured
    #[arg(long)]
    parallel: bool,
    /// What the piece stands on
    #[arg(long, value_name = "WHAT", default_value = STANDS[0].name, value_parser = one_of(&STANDS))]
    on: &'static Named<Stand>,
}

fn dpi(text: &str) -> Result<f64, String> {
    let dpi = text.parse().ok().filter(|dpi: &f64| (10.0..=1200.0).contains(dpi));
    dpi.ok_or_else(|| "write a number from 10 to 1200, such as 150 for a screen or 300 for print".to_owned())
}

/// Degrees, with or without their sign, from 0 to `most`.
fn angle(text: &str, most: f64) -> Result<Angle, String> {
    let degrees = text.trim_end_matches('°').trim_end().parse().ok();
    let degrees = degrees.filter(|degrees: &f64| (0.0..=most).contains(degrees));
    degrees.map(Angle::from_degrees).ok_or_else(|| format!("write an angle from 0° to {most}°, such as 20°"))
}

impl Draw {
    fn options(&self) -> DrawOptions {
        DrawOptions {
            options: Options { large: self.large_print, print: self.ink.value, ..Options::new(self.paper.clone()) },
            size: self.size.clone(),
            view: self.view.map(|view| view.value),
            part: self.part.clone(),
            up_to: self.up_to,
            start: self.start,
            repeats: self.repeats,
            demerits: self.demerits,
            tiles: self.tiles.clone(),
            all_symbols: self.all_symbols,
            all_sizes: self.all_sizes,
            worn: self.worn,
            from: self.from,
            turn: self.turn,
            parallel: self.parallel,
            on: self.on.value,
            frame: self.frame.map(|frame| frame.value),
            titled: self.titled,
            across: self.pixels,
            pixels: PngOptions { dpi: self.dpi, grey: self.grey },
        }
    }

    /// The name of the file to write and its format, or why there is none.
    fn target(&self) -> Result<(&str, Format), Outcome> {
        let ending = self.output.extension().and_then(|ending| ending.to_str()).unwrap_or_default().to_lowercase();
        let example = "write for example `-o chart.svg`";
        let Some(format) = by_name(&FORMATS, &ending) else {
            let message = format!("{} has none of the endings {}", self.output.display(), endings());
            return Err(failure(&message, example));
        };
        match self.output.file_name().and_then(|name| name.to_str()) {
            Some(name) => Ok((name, format.value)),
            None => Err(failure(&format!("{} is no file name", self.output.display()), example)),
        }
    }
}

/// `.svg, .png and .pdf`.
fn endings() -> String {
    let endings = FORMATS.map(|format| format!(".{}", format.name));
    match endings.split_last() {
        Some((last, others)) if !others.is_empty() => format!("{} and {last}", others.join(", ")),
        _ => endings.concat(),
    }
}

/// Solves a design, draws the picture and writes it.
pub(super) fn run(wish: &Draw, swatch: Option<&Swatch>) -> Outcome {
    let (target, format) = match wish.target() {
        Ok(target) => target,
        Err(outcome) => return outcome,
    };
    let asked = wish.options();
    if let Some(useless) = misplaced(wish.picture, format, &asked) {
        return complaint(&useless);
    }
    let (name, bytes) = match input::bytes(&wish.file) {
        Ok(read) => read,
        Err(error) => return unreadable(&wish.file, &error),
    };
    let progress = Progress::new(1);
    let all = wish.picture.together && wish.piece.is_none() && input::holds_pieces(&name, &bytes);
    let job = Job { wish, name, bytes: &bytes, swatch, format, asked: &asked };
    let (source, read, drawn) = if all { job.all_pieces() } else { job.one() };
    drop(progress);
    show::complaints(&source);
    let bytes = match drawn {
        Some(Ok(Some(bytes))) => bytes,
        // A sound design that can't be drawn as wished has no errors; the wish has.
        Some(Ok(None)) => return Outcome::CouldNotRun,
        Some(Err(unknown)) => return complaint(&unknown),
        None => return Outcome::DesignErrors,
    };
    let folder = wish.output.parent().filter(|folder| !folder.as_os_str().is_empty()).unwrap_or(Path::new("."));
    let beside = swatch.map(|swatch| swatch.path.as_path()).into_iter().chain(read.as_deref());
    let read: Vec<&Path> = std::iter::once(wish.file.as_path()).chain(beside).collect();
    let outputs = [Output { name: target.to_owned(), bytes: sealed(bytes) }];
    let order = Order { folder, outputs: &outputs, force: wish.force, source: None };
    match files(&order, &read, "give a folder that can be written") {
        Ok(saved) => {
            cautions(&saved);
            Outcome::Done
        }
        Err((message, help)) => failure(&message, &help),
    }
}

/// What came of a picture: the source with its complaints, the photograph that was read, and the picture, where the design
/// has no errors.
type Drawn = (Source, Option<PathBuf>, Option<Result<Option<Vec<u8>>, Diagnostic>>);

/// What is drawn, and how.
struct Job<'a> {
    wish: &'a Draw,
    name: String,
    bytes: &'a [u8],
    swatch: Option<&'a Swatch>,
    format: Format,
    asked: &'a DrawOptions,
}

impl Job<'_> {
    /// Draws a design, or one piece of written rounds.
    fn one(self) -> Drawn {
        let Self { wish, swatch, format, asked, .. } = self;
        let (mut source, pattern) = input::worded(self.name, self.bytes, swatch, (wish.rewrite, wish.piece.as_deref()));
        let (pattern, photo) = match pattern {
            Some(pattern) if wish.picture.photographed => Photo::on(pattern, (&wish.file, swatch), &mut source),
            pattern => (pattern, None),
        };
        let drawn = pattern.map(|pattern| {
            let size = asked.find(&pattern.plan)?;
            Ok(draw(&pattern, size, wish.picture, format, asked, &mut source.report))
        });
        (source, photo, drawn)
    }

    /// Draws all pieces of written rounds side by side.
    fn all_pieces(self) -> Drawn {
        let (mut source, pieces) = input::together(self.name, self.bytes, self.swatch, self.wish.rewrite);
        let drawn = pieces.first().map(|first| {
            self.asked.find(&first.pattern.plan)?;
            Ok(draw_together(&pieces, self.format, self.asked, &mut source.report))
        });
        (source, None, drawn)
    }
}
