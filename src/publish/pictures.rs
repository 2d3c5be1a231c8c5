//! The pictures of a pattern, each drawn for the room in which it is shown.

use std::sync::Arc;

use rayon::prelude::*;

use crate::drawing::{
    ChartOptions, ChartView, ColoursOptions, Drawing, KeyOptions, LEAST_CELL, PieceOptions, RowTableOptions,
    SchematicOptions, StepsOptions, chart, choose_view, colours, draw_piece, key, least_cell, may_be_true_size,
    photograph, relaxed, row_table, schematic, steps, stops, symbol_sheet, true_size,
};
use crate::geometry::SideShape;
use crate::geometry::piece::Piece;
use crate::geometry::rings::repeats;
use crate::limits;
use crate::page::wall::{self, Wall};
use crate::page::{Options, Paper, Pictures, Print, Style, room_beside};
use crate::photo::Photo;
use crate::plan::{Plan, SizePlan};
use crate::report::{Diagnostic, Report};
use crate::story::{Illustrations, RowTable, Story};
use crate::units::Mm;
use crate::words::Arg;

/// Room that heading and caption take from a page that holds one picture.
const FURNITURE: Mm = Mm::new(34.0);
/// Lines of caption that are reckoned with under a chart that shows every round, and under one that says why it doesn't.
const CAPTION_LINES: [usize; 2] = [1, 3];
/// Share of a page that the schematic of a booklet may fill; in large print it may fill a page but for its caption.
const SCHEMATIC_SHARE: f64 = 0.5;
/// Height that it has even where that is more of a small page.
const LEAST_TALL: Mm = Mm::new(152.0);
/// Sizes of which one schematic gives a table.
const MOST_SIZES: usize = 6;
/// Least share of the full size of a wall chart that the symbols below it may leave.
const LEAST_BESIDE_KEY: f64 = 0.6;
/// Most of a sheet that the symbols take where they have it for themselves, below a heading.
const KEY_SHARE: f64 = 0.88;
/// Least share of its full height that a chart keeps to make room for its symbols under it.
const LEAST_SHARE: f64 = 0.8;
/// Room across on a telephone of 360 pixels, at 96 pixels an inch.
const TELEPHONE: Mm = Mm::new(84.0);
/// Sizes of a key under a chart: scale of the symbols, letters, and widths of a column, wide ones first.
const UNDER_UNIT: Mm = Mm::new(3.7);
const UNDER_LETTERS: Mm = Mm::new(3.2);
const UNDER_COLUMNS: [Mm; 2] = [Mm::new(56.0), Mm::new(42.0)];

/// True for a design so large that what is published of it is made one after the other.
pub(super) fn large(plan: &Plan) -> bool {
    plan.sizes.iter().map(SizePlan::stitches).sum::<u64>() > limits::AT_ONCE as u64
}

/// The sizes of a pattern in space, those that are shown more than once relaxed beforehand. One that is too large to be
/// relaxed is laid out anew each time: that is quick, and it would take much room until the end.
pub(super) struct Spaces<'a> {
    plan: &'a Plan,
    shapes: &'a [SideShape],
    relaxed: Vec<Option<Piece>>,
}

impl<'a> Spaces<'a> {
    /// Relaxes the sizes of these indices, at once where they are small.
    pub(super) fn of(plan: &'a Plan, shapes: &'a [SideShape], shown: impl Fn(usize) -> bool + Sync) -> Self {
        let lay = |index: usize| {
            let (size, shape) = plan.sizes.get(index).zip(shapes.get(index))?;
            (shown(index) && size.stitches() <= limits::MESH as u64).then(|| relaxed(plan, size, shape))
        };
        Self { plan, shapes, relaxed: all_sizes(plan).map(lay).collect() }
    }

    /// A size drawn; nothing where there is no such size.
    pub(super) fn draw(&self, index: usize, options: &PieceOptions) -> Option<Drawing> {
        self.with(index, |size, shape, space| draw_piece(self.plan, size, shape, space, options))
    }

    /// A size step by step; nothing where there is no such size.
    fn steps(&self, index: usize, options: &StepsOptions) -> Option<Drawing> {
        self.with(index, |size, shape, space| steps(self.plan, size, (shape, space), options))
    }

    /// A size in other colours; nothing where there are none to try, or no such size.
    fn colours(&self, index: usize, options: &ColoursOptions) -> Option<Drawing> {
        self.with(index, |size, shape, space| colours(self.plan, size, (shape, space), options)).flatten()
    }

    fn with<T>(&self, index: usize, draw: impl Fn(&SizePlan, &SideShape, &Piece) -> T) -> Option<T> {
        let (size, shape) = self.plan.sizes.get(index).zip(self.shapes.get(index))?;
        Some(match self.relaxed.get(index)? {
            Some(space) => draw(size, shape, space),
            None => draw(size, shape, &relaxed(self.plan, size, shape)),
        })
    }
}

/// True where the pictures of the booklet show its middle size in space: on the cover, or at its true size.
pub(super) fn spatial(plan: &Plan, shapes: &[SideShape], options: &Options) -> bool {
    options.print == Print::Colour || shapes.get(middle(plan)).is_some_and(may_be_true_size)
}

/// The size that a booklet shows where it shows one.
pub(super) fn middle(plan: &Plan) -> usize {
    plan.middle()
}

/// The indices of the sizes, for work on all of them at once, or on one after the other where they are large.
fn all_sizes(plan: &Plan) -> impl IndexedParallelIterator<Item = usize> {
    let most = if large(plan) { plan.sizes.len() } else { 1 };
    (0..plan.sizes.len()).into_par_iter().with_min_len(most)
}

/// Draws everything that a booklet shows of a plan. `shapes` holds the predicted shape of every size.
pub fn draw(plan: &Plan, shapes: &[SideShape], options: &Options) -> Pictures {
    let shown = spatial(plan, shapes, options);
    draw_with((plan, shapes, None), options, &Spaces::of(plan, shapes, |index| shown && index == middle(plan)))
}

/// Draws it where the sizes may lie in space already, and where there may be a photograph for the cover.
pub(super) fn draw_with(
    (plan, shapes, photo): (&Plan, &[SideShape], Option<&Photo>),
    options: &Options,
    spaces: &Spaces<'_>,
) -> Pictures {
    let style = Style::new(&options.paper, options.print, options.large);
    let (width, height) = (Mm::new(style.width()), Mm::new(style.height()) - FURNITURE);
    let middle = middle(plan);
    let sizes = || all_sizes(plan);
    let keyed: Option<Vec<KeyedChart>> =
        sizes().map(|size| KeyedChart::draw(plan, size, (width, height), options)).collect();
    let (charts, keys): (Vec<(Arc<Drawing>, String)>, _) = match keyed {
        Some(keyed) => keyed.into_iter().map(|keyed| (keyed.chart, keyed.key)).unzip(),
        None => (sizes().map(|size| one_chart(plan, size, (width, height), options)).collect(), vec![]),
    };
    // Nobody buys a piece by its working chart: the cover shows the piece itself, where there is ink for it.
    // A photograph takes its place, and it moves inside.
    let coloured = options.print == Print::Colour;
    let taken = photo.filter(|_| coloured).zip(plan.design.photo.as_ref());
    let taken = taken.map(|(photo, named)| photograph(photo, &named.alt, plan.design.language, (width, height)));
    let (across, down) = if taken.is_some() { (width * INSIDE, height * INSIDE) } else { (width, width) };
    let room = PieceOptions { width: across, height: down, ..PieceOptions::default() };
    let finished = if coloured { spaces.draw(middle, &room).map(Arc::new) } else { None };
    let (finished, inside) = match taken {
        Some(photo) => (Some(Arc::new(photo)), finished.map(|piece| (piece, from_the_pattern(plan, middle)))),
        None => (finished, None),
    };
    // A part of a round piece is no picture of it: its chart is shown whole, however small.
    let cover = if finished.is_some() {
        finished
    } else if matches!(
        view_of(plan, middle, (width, height), options).0,
        ChartView::Sector | ChartView::Part(_) | ChartView::UpTo(_)
    ) {
        Some(Arc::new(chart(plan, middle, &chart_options(ChartView::Whole, width, height, options))))
    } else {
        charts.get(middle).map(|(drawing, _)| drawing.clone())
    };
    let page = Mm::new(style.height() - 3.0 * style.text);
    let tall = if options.large { page } else { (height * SCHEMATIC_SHARE).max(page.min(LEAST_TALL)) };
    let room = SchematicOptions { width, height: tall, ..schematic_options(options) };
    let drawn = schematics(plan, shapes, &room);
    Pictures {
        cover,
        piece: inside,
        key: Some(Arc::new(key_of_page(plan, middle, (width, height), options))),
        steps: on_its_way(spaces, (width, height), options),
        colours: in_colours(spaces, (width, height), options),
        true_size: at_true_size(spaces, (width, height)),
        schematics: drawn.into_iter().map(|drawing| (Arc::new(drawing), String::new())).collect(),
        charts,
        keys,
    }
}

/// Share of a page across and down that the piece takes where a photograph stands on the cover.
const INSIDE: f64 = 0.66;

/// Says that a picture is no photograph, and which size it shows.
fn from_the_pattern(plan: &Plan, size: usize) -> String {
    let drawn = plan.design.words().say("page-drawn-from-the-pattern");
    let size = plan.sizes.get(size).map(|size| of_size(plan, size)).unwrap_or_default();
    format!("{drawn} {size}").trim_end().to_owned()
}

/// Stitches of a size above which its steps are drawn on request alone: all of them together take several times what the
/// piece takes.
const STEPPED: u64 = 8000;

/// The middle size on its way, where there is ink for it.
fn on_its_way(spaces: &Spaces<'_>, (width, height): (Mm, Mm), options: &Options) -> Option<(Arc<Drawing>, String)> {
    let plan = spaces.plan;
    let middle = middle(plan);
    let size = plan.sizes.get(middle)?;
    if options.print != Print::Colour || size.stitches() > STEPPED || stops(size).len() < 2 {
        return None;
    }
    let caption = of_size(plan, size);
    let usual = StepsOptions::default();
    let room = if options.large {
        StepsOptions { width, height, letters: Mm::new(LARGE_LETTERS), ..usual }
    } else if width >= STEPS_IN_A_ROW {
        StepsOptions { width, height: height * STEPS_SHARE, letters: Mm::new(STEPS_LETTERS), across: 6 }
    } else {
        StepsOptions { width, height: height * STEPS_SHARE, ..usual }
    };
    Some((Arc::new(spaces.steps(middle, &room)?), caption))
}

/// Width in which all steps stand in one row, and their letters there, mm.
const STEPS_IN_A_ROW: Mm = Mm::new(150.0);
const STEPS_LETTERS: f64 = 2.65;

/// Shares of a page that the steps and the colours tried take: both stand on one.
const STEPS_SHARE: f64 = 0.4;
const COLOURS_SHARE: f64 = 0.36;

/// Says which size a picture shows, where there are several.
fn of_size(plan: &Plan, size: &SizePlan) -> String {
    match plan.sizes.len() {
        1 => String::new(),
        _ => plan.design.words().with("page-of-size", &[("size", Arg::Text(&size.name))]) + ".",
    }
}

/// Ways to dress a piece that a page may show: as many of them as it holds.
const TRIED: [usize; 5] = [13, 11, 8, 5, 2];

/// Letters under a way to dress the piece, mm.
const TRIED_LETTERS: f64 = 3.2;

/// The middle size in other colours, where there is ink for it.
fn in_colours(spaces: &Spaces<'_>, (width, height): (Mm, Mm), options: &Options) -> Option<(Arc<Drawing>, String)> {
    let plan = spaces.plan;
    let middle = middle(plan);
    let size = plan.sizes.get(middle)?;
    if options.print != Print::Colour || size.stitches() > STEPPED {
        return None;
    }
    let letters = Mm::new(if options.large { LARGE_LETTERS } else { TRIED_LETTERS });
    let height = if options.large { height } else { height * COLOURS_SHARE };
    let drawn = |most| spaces.colours(middle, &ColoursOptions { width, height, letters, most });
    let fits = |drawing: &Drawing| drawing.bounds.height() <= height.mm();
    let drawing = TRIED.into_iter().filter_map(drawn).find(fits)?;
    Some((Arc::new(drawing), of_size(plan, size)))
}

/// The middle size at its true size, where it and its ruler fit the page.
fn at_true_size(spaces: &Spaces<'_>, (width, height): (Mm, Mm)) -> Option<(Arc<Drawing>, String)> {
    let plan = spaces.plan;
    let middle = middle(plan);
    let size = plan.sizes.get(middle)?;
    may_be_true_size(spaces.shapes.get(middle)?).then_some(())?;
    let drawing = spaces.with(middle, |size, _, space| true_size(plan, size, space, width)).flatten()?;
    drawing.fits(width, height).then(|| (Arc::new(drawing), of_size(plan, size)))
}

/// Letters under a step in large print, mm.
const LARGE_LETTERS: f64 = 6.4;

/// The key for a page of a booklet, with smaller symbols and letters where it would be higher than a small page.
fn key_of_page(plan: &Plan, size: usize, (width, height): (Mm, Mm), options: &Options) -> Drawing {
    let (view, _) = view_of(plan, size, (width, height), options);
    let drawn = chart_key(plan, size, view, width, options);
    if options.large || drawn.bounds.height() <= height.mm() {
        return drawn;
    }
    let small =
        KeyOptions { unit: UNDER_UNIT, letters: UNDER_LETTERS, column: width / 2.0, ..key_options(width, options) };
    key(plan, size, &KeyOptions { bands: view == ChartView::Bands, ..small })
}

/// The key of a booklet once more, in one column that a telephone shows as a whole.
pub fn narrow_key(plan: &Plan, options: &Options) -> Drawing {
    let style = Style::new(&options.paper, options.print, options.large);
    let (width, height) = (Mm::new(style.width()), Mm::new(style.height()) - FURNITURE);
    let size = middle(plan);
    chart_key(plan, size, view_of(plan, size, (width, height), options).0, TELEPHONE, options)
}

/// The view that was asked for, or else the first that can be read in the room, and why it is that one. A repeat that no round
/// shares can't be shown by itself.
fn view_of(plan: &Plan, size: usize, (width, height): (Mm, Mm), options: &Options) -> (ChartView, String) {
    let wish = &options.chart;
    let own = plan.sizes.get(size);
    let part = wish.part.as_ref().and_then(|name| own?.parts.iter().position(|part| part.name == *name));
    let asked = part.map(ChartView::Part).or(wish.view);
    let shared = own.is_some_and(|size| repeats(size) > 1);
    match asked.filter(|view| *view != ChartView::Sector || shared) {
        Some(view) => (view, String::new()),
        None => choose_view(plan, size, width, height),
    }
}

/// The view of a wall chart: the one asked for, or all rounds.
pub(super) fn wall_view(plan: &Plan, size: usize, options: &Options) -> ChartView {
    let paper = options.paper.printable();
    let asked = options.chart.view.is_some() || options.chart.part.is_some();
    if asked { view_of(plan, size, paper, options).0 } else { ChartView::Whole }
}

/// Complaints about charts that were asked for: a part that there is not; a repeat that no round shares, stitches too small
/// to be read, as a warning. False where none can be drawn so.
pub(super) fn charts_asked(plan: &Plan, options: &Options, report: &mut Report) -> bool {
    let wish = &options.chart;
    let names: Vec<&str> = plan.sizes.iter().flat_map(|size| &size.parts).map(|part| part.name.as_str()).collect();
    if let Some(part) = wish.part.as_ref().filter(|part| !names.contains(&part.as_str())) {
        report.add(unknown_part(part, plan.sizes.first()));
        return false;
    }
    let style = Style::new(&options.paper, options.print, options.large);
    let (width, height) = (Mm::new(style.width()), Mm::new(style.height()) - FURNITURE);
    for (index, size) in plan.sizes.iter().enumerate() {
        let (view, _) = view_of(plan, index, (width, height), options);
        if wish.view == Some(ChartView::Sector) && wish.part.is_none() && view != ChartView::Sector {
            let message = format!("size {} has no repeat that every round shares: its chart shows more", size.name);
            let help = "`--view bands` draws alike rounds as one, `--part` the rounds of one part";
            report.add(Diagnostic::warning("no-repeat", message).help(help));
        }
        let cell = least_cell(plan, index, &chart_options(view, width, height, options));
        if (wish.view.is_some() || wish.part.is_some()) && cell < LEAST_CELL {
            let message = format!(
                "the smallest stitch of the chart of size {} is {:.1} mm on {} paper, too small to read",
                size.name,
                cell.mm(),
                options.paper.name
            );
            let help = "leave --view away for a view that can be read, or choose larger paper with --paper";
            report.add(Diagnostic::warning("too-small", message).help(help));
        }
    }
    true
}

/// The complaint about a part that a size doesn't have.
pub(super) fn unknown_part(name: &str, size: Option<&SizePlan>) -> Diagnostic {
    let names: Vec<&str> = size.into_iter().flat_map(|size| &size.parts).map(|part| part.name.as_str()).collect();
    let complaint = Diagnostic::error("unknown-part", format!("the design has no part `{name}`"));
    complaint.help(format!("its parts are {}", names.join(", ")))
}

/// The chart of a size in the first view that can be read in the room, with its caption.
fn one_chart(plan: &Plan, size: usize, (width, height): (Mm, Mm), options: &Options) -> (Arc<Drawing>, String) {
    let (view, reason) = view_of(plan, size, (width, height), options);
    let drawing = chart(plan, size, &chart_options(view, width, height, options));
    (Arc::new(drawing), if view == ChartView::Whole { String::new() } else { reason })
}

/// A chart that leaves room for its symbols under it.
struct KeyedChart {
    chart: (Arc<Drawing>, String),
    key: Arc<Drawing>,
}

impl KeyedChart {
    /// The same view as would be chosen for the whole room, still to be read and hardly smaller; nothing where that can't
    /// be.
    fn draw(plan: &Plan, size: usize, (width, height): (Mm, Mm), options: &Options) -> Option<Self> {
        let style = Style::new(&options.paper, options.print, options.large);
        let (view, _) = view_of(plan, size, (width, height), options);
        let lines = CAPTION_LINES[usize::from(view != ChartView::Whole)];
        let tall = height.min(width);
        // One chart for several sizes has what differs in them below it, where that leaves it large enough.
        let one = plan.sizes.len() > 1 && !options.chart.every;
        let table = style.text * 4.0 + style.table * 1.95 * (plan.sizes.len() + 1) as f64;
        let below = if one { vec![table, 0.0] } else { vec![0.0] };
        let ways = below.into_iter().flat_map(|below| UNDER_COLUMNS.map(|column| (below, column)));
        ways.into_iter().find_map(|(below, column)| {
            let small = KeyOptions { unit: UNDER_UNIT, letters: UNDER_LETTERS, column, ..key_options(width, options) };
            let key = key(plan, size, &KeyOptions { bands: view == ChartView::Bands, ..small });
            // The first chart stands under the section's heading, or the only one. A little is left for rounding.
            let left = Mm::new(room_beside(&style, lines, Some(key.bounds.height()), size == 0 || one) - below - 0.1);
            // The cheap looks first: a chart need not be laid out to see that it would be small.
            let fits = !options.large
                && left >= tall * LEAST_SHARE
                && least_cell(plan, size, &chart_options(view, width, left, options)) >= LEAST_CELL
                && view_of(plan, size, (width, left), options).0 == view;
            fits.then(|| Self { chart: one_chart(plan, size, (width, left), options), key: Arc::new(key) })
        })
    }
}

/// The sizes in one schematic where the table of their measures fits; else one each.
fn schematics(plan: &Plan, shapes: &[SideShape], room: &SchematicOptions) -> Vec<Drawing> {
    let all: Vec<usize> = (0..plan.sizes.len()).collect();
    if all.len() <= MOST_SIZES {
        let all_in_one = schematic(plan, &all, shapes, room);
        if all_in_one.fits(room.width, room.height) || all.len() < 2 {
            return vec![all_in_one];
        }
    }
    all.iter().zip(shapes).map(|(&size, shape)| schematic(plan, &[size], std::slice::from_ref(shape), room)).collect()
}

/// How a chart is drawn for a print.
pub fn chart_options(view: ChartView, width: Mm, height: Mm, options: &Options) -> ChartOptions {
    let (tints, start) = (options.print == Print::Colour, options.chart.start());
    ChartOptions { view, width, height, start, tints, ..ChartOptions::default() }
}

/// How a schematic is drawn for a print.
pub fn schematic_options(options: &Options) -> SchematicOptions {
    let letters = if options.large { Mm::new(5.0) } else { Mm::new(2.5) };
    let (plain_black, dressed) = (options.print == Print::Black, options.print == Print::Colour);
    SchematicOptions { letters, heavy: options.large, plain_black, dressed, ..SchematicOptions::default() }
}

/// The key to the chart of a size in one of its views.
pub fn chart_key(plan: &Plan, size: usize, view: ChartView, width: Mm, options: &Options) -> Drawing {
    key(plan, size, &KeyOptions { bands: view == ChartView::Bands, ..key_options(width, options) })
}

/// The whole symbol set, in the language and terms of a plan.
pub fn symbols(plan: &Plan, width: Mm, options: &Options) -> Drawing {
    symbol_sheet(plan.design.language, plan.design.terms, &key_options(width, options))
}

fn key_options(width: Mm, options: &Options) -> KeyOptions {
    let plain = KeyOptions { width, tints: options.print == Print::Colour, ..KeyOptions::default() };
    if options.large { grown(plain, Mm::from_points(18.0) / plain.letters) } else { plain }
}

/// A key with larger symbols and letters.
fn grown(key: KeyOptions, by: f64) -> KeyOptions {
    KeyOptions { unit: key.unit * by, letters: key.letters * by, column: key.column * by, ..key }
}

/// The row table of a size as a picture of its own.
pub fn table_picture(plan: &Plan, size: usize, shapes: &[SideShape], options: &Options) -> Option<Drawing> {
    let table = RowTable::of_size(plan, plan.sizes.get(size)?, shapes.get(size));
    let plain = RowTableOptions { swatches: options.print != Print::Black, ..RowTableOptions::default() };
    let large = RowTableOptions { letters: Mm::from_points(18.0), ..plain };
    Some(row_table(plan, &table, if options.large { &large } else { &plain }))
}

/// A wall chart for one sheet of `paper`: the key is drawn first, and the chart fills what it leaves, whatever room `shown`
/// speaks of.
pub fn wall_picture(plan: &Plan, size: usize, shown: &ChartOptions, paper: &Paper, options: &Options) -> Wall {
    let view = shown.view;
    let (width, _) = paper.printable();
    let beside = KeyOptions { bands: view == ChartView::Bands, ..key_options(width - wall::KEY_INSET, options) };
    let below = key(plan, size, &grown(beside, wall::growth(paper)));
    let story = untold(plan, options);
    let left = wall::chart_room(&story, size, paper, Mm::new(below.bounds.height()), options);
    let whole = wall::chart_room(&story, size, paper, Mm::ZERO, options);
    let apart = left.1 < whole.1.min(whole.0) * LEAST_BESIDE_KEY;
    let (room, key) = if apart { (whole, key_alone(plan, size, view, paper, options)) } else { (left, below) };
    let tints = options.print == Print::Colour;
    let chart = chart(plan, size, &ChartOptions { width: room.0, height: room.1, tints, ..shown.clone() });
    Wall { size, chart: Arc::new(chart), key: Some(Arc::new(key)), apart }
}

/// The key for a sheet of its own: in one column, or in two where it would be too high.
fn key_alone(plan: &Plan, size: usize, view: ChartView, paper: &Paper, options: &Options) -> Drawing {
    let (width, height) = paper.printable();
    let bands = view == ChartView::Bands;
    let one = grown(KeyOptions { bands, ..key_options(width, options) }, wall::growth(paper));
    let drawn = key(plan, size, &one);
    if Mm::new(drawn.bounds.height()) <= height * KEY_SHARE {
        return drawn;
    }
    key(plan, size, &KeyOptions { column: width / 2.0, ..one })
}

/// The smallest large sheet, of the family that the paper of `options` belongs to, on which every round of a size can be
/// read; the largest where none is large enough.
pub fn wall_sheet(plan: &Plan, size: usize, options: &Options) -> Paper {
    let names = options.paper.series.wall_sheets();
    let sheets: Vec<Paper> = names.iter().filter_map(|name| Paper::by_name(name).ok()).collect();
    let story = untold(plan, options);
    let mut fitting = sheets.iter().filter(|paper| {
        let (width, height) = wall::chart_room(&story, size, paper, Mm::ZERO, options);
        let options = ChartOptions { width, height, ..ChartOptions::default() };
        least_cell(plan, size, &options) >= LEAST_CELL
    });
    fitting.next().or(sheets.last()).cloned().unwrap_or_else(Paper::a4)
}

/// The story of a plan for what shows little of it: without measures and without pictures.
pub fn untold<'a>(plan: &'a Plan, options: &Options) -> Story<'a> {
    Story::new(plan, &[], options.telling(), Illustrations::default())
}
