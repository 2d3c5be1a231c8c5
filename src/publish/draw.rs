//! Single pictures: one row a picture, one a format.

use std::sync::Arc;

use kurbo::Affine;

use super::pictures::{
    chart_key, chart_options, schematic_options, symbols, table_picture, unknown_part, untold, wall_picture,
};
use super::rows::{Named, Row};
use super::view::view;
use crate::drawing::{
    ChartOptions, ChartView, ColoursOptions, Drawing, FrameOptions, PieceOptions, SchematicOptions, StepsOptions,
    TRUE_SIZE, chart, colours, draw_piece, framed, photograph, relaxed, schematic, steps, trials_cut, true_size, worn,
    worn_piece,
};
use crate::file::png::{self, PngOptions};
use crate::file::{pdf, svg};
use crate::geometry::SideShape;
use crate::geometry::piece::{Eye, Stand};
use crate::geometry::rings::repeats;
use crate::limits;
use crate::page::{ChartWish, Document, Options, Paper, wall};
use crate::pattern::{Pattern, waves};
use crate::photo::Photo;
use crate::plan::Plan;
use crate::report::{Diagnostic, Report};
use crate::units::{Angle, Mm};

/// A picture that can be drawn of a pattern by itself.
#[derive(Clone, Copy, Debug)]
pub struct Picture {
    name: &'static str,
    about: &'static str,
    /// Draws it. Nothing, and an error in the report, where it finds no room.
    draw: fn(&Job<'_>, &mut Report) -> Option<Drawing>,
    /// Lays it out on pages that carry more than the picture; nothing where a page shows the picture alone.
    pages: Option<fn(&Job<'_>, &mut Report) -> Option<Document>>,
    /// True where it shows the photograph of the design.
    pub photographed: bool,
    /// True where it shows all pieces of a text together, unless one is asked for.
    pub together: bool,
}

impl Row for Picture {
    fn name(&self) -> &'static str {
        self.name
    }

    fn about(&self) -> &'static str {
        self.about
    }
}

/// A picture that a page shows alone.
const fn alone(name: &'static str, about: &'static str, draw: fn(&Job<'_>, &mut Report) -> Option<Drawing>) -> Picture {
    Picture { name, about, draw, pages: None, photographed: false, together: false }
}

/// The pictures there are.
pub static PICTURES: [Picture; 9] = [
    Picture { pages: Some(wall_chart), ..alone("chart", "The round chart with its key", the_chart) },
    alone("schematic", "The side view with dimensions", the_schematic),
    alone("table", "The rows round by round", the_table),
    alone("key", "The symbols and what they mean", the_key),
    Picture { together: true, ..alone("piece", "The finished piece as it will look", the_piece) },
    alone("steps", "The piece after the rounds to stop at", the_steps),
    alone("colours", "The piece in other colours, to choose among", the_colours),
    Picture {
        pages: Some(true_size_page),
        ..alone("true-size", "The outline of a small piece at its true size", the_true_size)
    },
    Picture {
        photographed: true,
        ..alone("cover", "The picture of the cover: your photograph, else the piece", the_cover)
    },
];

/// How a picture is written.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Format {
    /// Scalable vector graphics.
    Svg,
    /// Pixels.
    Png,
    /// Pages.
    Pdf,
}

/// The formats there are, by the endings of their files.
pub static FORMATS: [Named<Format>; 3] = [
    Named::new("svg", Format::Svg, "Scalable vector graphics"),
    Named::new("png", Format::Png, "Pixels"),
    Named::new("pdf", Format::Pdf, "Pages"),
];

/// What is asked of a single picture.
#[derive(Clone, Debug)]
pub struct DrawOptions {
    /// Paper, ink and letters.
    pub options: Options,
    /// The size to draw, by its name; the first where none is said.
    pub size: Option<String>,
    /// What a chart shows; where nothing is said, the first view that can be read.
    pub view: Option<ChartView>,
    /// A chart of one part only, by its name.
    pub part: Option<String>,
    /// A chart of the rounds up to and with this number.
    pub up_to: Option<u32>,
    /// The hour of the clock at which the rounds of a chart start, 1 to 12; 12 where none is said.
    pub start: Option<u8>,
    /// True for a chart with lines between the repeats.
    pub repeats: bool,
    /// True for a chart with marks where stitches lean, crowd or touch.
    pub demerits: bool,
    /// Home paper that a chart is cut into tiles for.
    pub tiles: Option<Paper>,
    /// True for the key of the whole symbol set.
    pub all_symbols: bool,
    /// True for a schematic of the largest size with all sizes in a row and a table.
    pub all_sizes: bool,
    /// True for a schematic of a hat on its head.
    pub worn: bool,
    /// Height over the horizon from which a piece is seen; what suits it where none is said.
    pub from: Option<Angle>,
    /// Turn of a piece about its axis, to the right.
    pub turn: Option<Angle>,
    /// True for a piece without perspective.
    pub parallel: bool,
    /// What a piece stands on.
    pub on: Stand,
    /// Height over width of the frame that a piece stands in; nothing for as much room as it takes.
    pub frame: Option<f64>,
    /// True for a framed piece with its title.
    pub titled: bool,
    /// Pixels across, whatever the resolution.
    pub across: Option<u32>,
    /// How pixels are made.
    pub pixels: PngOptions,
}

/// How what lies in space is drawn.
pub(super) enum Shot {
    /// On white within a frame.
    Framed(FrameOptions),
    /// As large as the paper takes it.
    Free(PieceOptions),
}

impl DrawOptions {
    /// How something is drawn that is usually seen so.
    pub(super) fn shot(&self, usual: &Eye) -> Shot {
        let (width, height) = self.options.paper.printable();
        let eye = Some(Eye {
            from: self.from.unwrap_or(usual.from),
            turn: self.turn.unwrap_or(usual.turn),
            distance: usual.distance.filter(|_| !self.parallel),
        });
        match self.frame {
            Some(ratio) => {
                let width = width.min(height / ratio);
                Shot::Framed(FrameOptions { width, ratio, titled: self.titled, eye })
            }
            None => Shot::Free(PieceOptions { width, height, eye, scale: None }),
        }
    }

    /// The first size in the usual way, for a print.
    pub fn new(options: Options) -> Self {
        Self {
            options,
            size: None,
            view: None,
            part: None,
            up_to: None,
            start: None,
            repeats: false,
            demerits: false,
            tiles: None,
            all_symbols: false,
            all_sizes: false,
            worn: false,
            from: None,
            turn: None,
            parallel: false,
            on: Stand::Ground,
            frame: None,
            titled: false,
            across: None,
            pixels: PngOptions::default(),
        }
    }

    /// The index of the size that is asked for, or a complaint about a size, a part or a round that the plan doesn't
    /// have, with those it has.
    pub fn find(&self, plan: &Plan) -> Result<usize, Diagnostic> {
        let index = size_of(plan, self.size.as_deref())?;
        let Some(size) = plan.sizes.get(index) else { return Ok(index) };
        let names: Vec<&str> = size.parts.iter().map(|part| part.name.as_str()).collect();
        if let Some(name) = self.part.as_deref().filter(|name| !names.contains(name)) {
            return Err(unknown_part(name, Some(size)));
        }
        let last = size.rounds.len();
        match self.up_to {
            Some(round) if round as usize > last => {
                let complaint = Diagnostic::error("unknown-round", format!("there is no round {round}"));
                Err(complaint.help(format!("size {} has {last} rounds", size.name)))
            }
            _ => Ok(index),
        }
    }
}

/// The index of the size of this name, the first for none, or a complaint on how to name it.
pub(super) fn size_of(plan: &Plan, name: Option<&str>) -> Result<usize, Diagnostic> {
    name.map_or(Ok(0), |name| plan.size_named(name))
}

/// What a picture is drawn from.
pub(super) struct Job<'a> {
    pub(super) plan: &'a Plan,
    shapes: &'a [SideShape],
    photo: Option<&'a Photo>,
    /// Index of the size.
    pub(super) size: usize,
    pub(super) asked: &'a DrawOptions,
}

/// Draws one picture of a size, as [`DrawOptions::find`] gives it, and writes it. Nothing, and an error in the report,
/// where it can't be drawn as asked.
pub fn draw(
    pattern: &Pattern,
    size: usize,
    picture: &Picture,
    format: Format,
    asked: &DrawOptions,
    report: &mut Report,
) -> Option<Vec<u8>> {
    let Pattern { plan, shapes, photo, .. } = pattern;
    let job = Job { plan, shapes, photo: photo.as_deref(), size, asked };
    if let (Format::Pdf, Some(pages)) = (format, picture.pages) {
        let document = pages(&job, report)?;
        return pdf::write(&document).map_err(|complaint| report.add(complaint)).ok();
    }
    written(&(picture.draw)(&job, report)?, format, asked, report)
}

/// A picture as a file.
pub(super) fn written(drawing: &Drawing, format: Format, asked: &DrawOptions, report: &mut Report) -> Option<Vec<u8>> {
    match format {
        Format::Svg => Some(svg::write(drawing).into_bytes()),
        Format::Png => {
            let wide = drawing.bounds.width().max(1e-3) / 25.4;
            let dpi = asked.across.map_or(asked.pixels.dpi, |across| f64::from(across) / wide);
            png::draw(drawing, &PngOptions { dpi, ..asked.pixels }, report)
        }
        Format::Pdf => pdf::write_drawing(drawing).map_err(|complaint| report.add(complaint)).ok(),
    }
}

/// How the chart is drawn that was asked for.
fn shown(job: &Job<'_>, report: &mut Report) -> Option<ChartOptions> {
    let asked = job.asked;
    let view = view(job, report)?;
    if asked.repeats && job.plan.sizes.get(job.size).is_some_and(|size| repeats(size) < 2) {
        let message = "the piece has no repeat that every round shares, so none is marked";
        report.add(Diagnostic::warning("no-repeat", message));
    }
    let (width, height) = asked.options.paper.printable();
    Some(ChartOptions {
        start: ChartWish { hour: asked.start, ..ChartWish::default() }.start(),
        repeats: asked.repeats,
        demerits: asked.demerits,
        ..chart_options(view, width, height, &asked.options)
    })
}

fn the_chart(job: &Job<'_>, report: &mut Report) -> Option<Drawing> {
    Some(chart(job.plan, job.size, &shown(job, report)?))
}

/// A chart with its key and the facts: on one sheet, or in tiles on home paper.
fn wall_chart(job: &Job<'_>, report: &mut Report) -> Option<Document> {
    let options = &job.asked.options;
    let wall = wall_picture(job.plan, job.size, &shown(job, report)?, &options.paper, options);
    let story = untold(job.plan, options);
    match &job.asked.tiles {
        Some(home) => wall::tiled(&story, &wall, &Options { paper: home.clone(), ..options.clone() }, report),
        None => wall::one_sheet(&story, &wall, options, report),
    }
}

fn the_schematic(job: &Job<'_>, report: &mut Report) -> Option<Drawing> {
    let options = &job.asked.options;
    let room = room_for(options);
    if job.asked.worn {
        let drawing = job.shapes.get(job.size).and_then(|shape| worn(job.plan, job.size, shape, &room));
        if drawing.is_none() {
            report.add(no_head());
        }
        return fitting(drawing?, 1, options, report);
    }
    let sizes: Vec<usize> = if job.asked.all_sizes { (0..job.plan.sizes.len()).collect() } else { vec![job.size] };
    let shapes: Vec<SideShape> = sizes.iter().filter_map(|size| job.shapes.get(*size).cloned()).collect();
    fitting(schematic(job.plan, &sizes, &shapes, &room), sizes.len(), options, report)
}

/// The complaint about a piece that goes on no head.
fn no_head() -> Diagnostic {
    let help = "only hats that are worked from the middle of the crown, or down to it, are drawn on a head";
    Diagnostic::error("no-head", "there is no head to draw this piece on").help(help)
}

/// Clear room about a picture that stands by itself.
const MARGIN: Mm = Mm::new(5.0);

/// The drawing with clear room about it where it fits the paper; a complaint where it doesn't.
fn fitting(drawing: Drawing, sizes: usize, options: &Options, report: &mut Report) -> Option<Drawing> {
    let room = room_for(options);
    if !drawing.fits(room.width, room.height) {
        report.add(no_room(sizes, &options.paper));
        return None;
    }
    Some(margined(drawing))
}

/// The room that a schematic has which stands by itself.
pub(super) fn room_for(options: &Options) -> SchematicOptions {
    let (width, height) = within_margins(options);
    SchematicOptions { width, height, ..schematic_options(options) }
}

/// The room that the paper leaves within the margin of a picture that stands by itself.
fn within_margins(options: &Options) -> (Mm, Mm) {
    let (width, height) = options.paper.printable();
    (width - MARGIN * 2.0, height - MARGIN * 2.0)
}

/// A picture that stands by itself, with clear room about it.
pub(super) fn margined(drawing: Drawing) -> Drawing {
    Drawing { bounds: drawing.bounds.inflate(MARGIN.mm(), MARGIN.mm()), ..drawing }
}

/// The complaint about a schematic that fits at no scale.
fn no_room(sizes: usize, paper: &Paper) -> Diagnostic {
    let what = if sizes > 1 { format!("{sizes} sizes") } else { "its words".to_owned() };
    let message = format!("the schematic finds no room for {what} on {} paper", paper.name);
    Diagnostic::error("schematic-too-large", message)
        .help("draw one size at a time with --size, or choose larger paper with --paper")
}

fn the_cover(job: &Job<'_>, report: &mut Report) -> Option<Drawing> {
    let design = &job.plan.design;
    match job.photo.zip(design.photo.as_ref()) {
        Some((photo, named)) => {
            Some(photograph(photo, &named.alt, design.language, job.asked.options.paper.printable()))
        }
        None => the_piece(job, report),
    }
}

fn the_steps(job: &Job<'_>, _: &mut Report) -> Option<Drawing> {
    let (width, height) = job.asked.options.paper.printable();
    let (size, shape) = job.plan.sizes.get(job.size).zip(job.shapes.get(job.size))?;
    let room = StepsOptions { width, height, ..StepsOptions::default() };
    Some(steps(job.plan, size, (shape, &relaxed(job.plan, size, shape)), &room))
}

fn the_colours(job: &Job<'_>, report: &mut Report) -> Option<Drawing> {
    let (width, height) = within_margins(&job.asked.options);
    let (size, shape) = job.plan.sizes.get(job.size).zip(job.shapes.get(job.size))?;
    let room = ColoursOptions { width, height, ..ColoursOptions::default() };
    let drawing = colours(job.plan, size, (shape, &relaxed(job.plan, size, shape)), &room);
    if drawing.is_none() {
        let message = "the piece is worked in one colour, and no other is given to try";
        let help =
            "add other colours for its yarn: `palettes: {harbour: {sand: \"#e8e4da\"}}`, with the names under `yarn`";
        report.add(Diagnostic::error("nothing-to-try", message).help(help));
    }
    if let Some((shown, all)) = trials_cut(job.plan, size, room.most) {
        let message = format!("{shown} of {all} ways to dress the piece are drawn");
        let help = "list those that you would choose among as `palettes:` in the design";
        report.add(Diagnostic::note("colours-cut", message).help(help));
    }
    drawing.map(margined)
}

fn the_true_size(job: &Job<'_>, report: &mut Report) -> Option<Drawing> {
    outline_of(job, report).map(margined)
}

fn outline_of(job: &Job<'_>, report: &mut Report) -> Option<Drawing> {
    let (width, height) = job.asked.options.paper.printable();
    let (size, shape) = job.plan.sizes.get(job.size).zip(job.shapes.get(job.size))?;
    let drawing = true_size(job.plan, size, &relaxed(job.plan, size, shape), width);
    let drawing = drawing.filter(|drawing| drawing.fits(width, height));
    if drawing.is_none() {
        let message = format!("size {} is too wide to be drawn at its true size on {} paper", size.name, paper_of(job));
        let help = format!("up to {} cm are drawn; choose a smaller size with --size", TRUE_SIZE.cm());
        report.add(Diagnostic::error("wider-than-paper", message).help(help));
    }
    drawing
}

fn paper_of<'j>(job: &Job<'j>) -> &'j str {
    &job.asked.options.paper.name
}

/// The outline on a sheet of the paper, so that a printer has nothing to fit.
fn true_size_page(job: &Job<'_>, report: &mut Report) -> Option<Document> {
    let drawing = outline_of(job, report)?;
    let paper = &job.asked.options.paper;
    let (width, _) = paper.printable();
    let side = (paper.width - width) / 2.0 + (width - Mm::new(drawing.bounds.width())) / 2.0;
    let margin = (paper.width - width) / 2.0;
    let place = Affine::translate((side.mm() - drawing.bounds.x0, margin.mm() - drawing.bounds.y0));
    Some(Document::of_drawing(Arc::new(drawing), (paper.width, paper.height), place))
}

fn the_piece(job: &Job<'_>, report: &mut Report) -> Option<Drawing> {
    let (size, shape) = job.plan.sizes.get(job.size).zip(job.shapes.get(job.size))?;
    if size.stitches() > limits::MESH as u64 {
        let message = format!("a piece of {} stitches is drawn as a plain body of revolution", size.stitches());
        let help = format!("up to {} stitches, corners and waves are drawn as well", limits::MESH);
        report.add(Diagnostic::note("piece-not-relaxed", message).help(help));
    }
    let asked = job.asked;
    let space = match asked.on {
        Stand::Ground => relaxed(job.plan, size, shape),
        Stand::Head => worn_piece(job.plan, size, shape).or_else(|| {
            report.add(no_head());
            None
        })?,
    };
    if let Some(waves) = &space.waves {
        report.add(waves::told(waves, shape));
    }
    Some(match asked.shot(&Eye::of(&space, shape)) {
        Shot::Framed(options) => framed(job.plan, size, (shape, &space), &options),
        Shot::Free(options) => draw_piece(job.plan, size, shape, &space, &options),
    })
}

fn the_table(job: &Job<'_>, _: &mut Report) -> Option<Drawing> {
    table_picture(job.plan, job.size, job.shapes, &job.asked.options)
}

fn the_key(job: &Job<'_>, _: &mut Report) -> Option<Drawing> {
    let options = &job.asked.options;
    let (width, _) = options.paper.printable();
    if job.asked.all_symbols {
        return Some(symbols(job.plan, width, options));
    }
    // Whether the chart can be read is no matter of the key's.
    let view = view(job, &mut Report::new())?;
    Some(chart_key(job.plan, job.size, view, width, options))
}
