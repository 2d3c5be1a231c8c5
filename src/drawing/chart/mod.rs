//! The round chart: rings from the centre outward, every stitch on the stitch it is worked into.

mod corners;
mod demerits;
mod ends;
mod ground;
mod lane;
mod options;
mod placed;
mod squeeze;
mod stitches;
mod strokes;
mod telling;

use std::collections::BTreeMap;

use kurbo::{BezPath, Point, Rect};

use ground::PARTING;
pub(super) use ground::{FOLD, dashes, parting, yarn_inks};

pub use demerits::{Demerit, DemeritKind, demerits};
pub use options::{ChartOptions, ChartView, LEAST_CELL, Readable, choose_view, readable};

use crate::craft::Round;
use crate::design::Hand;
use crate::drawing::{Drawing, Group, Item, Origin, Role, Sign, Symbol, SymbolItem};
use crate::geometry::rings::{Frame, Ring, Rings, Row, layout, repeats, rough};
use crate::plan::{Plan, SizePlan};
use crate::units::{Angle, Mm, TOLERANCE, TURN};
use crate::words::Words;

use super::symbols::Fit;
use lane::Lane;
use placed::Placed;

/// Clear room around the outermost ring, in stitch units; the arrow of direction runs in it.
const RIM: f64 = 1.2;

/// How far to either side the direction of a line is measured, radians.
const ASIDE: f64 = 1e-4;

/// Largest scale: millimetres of one stitch unit.
const LARGEST_UNIT: f64 = 9.0;

/// Least height of letters, mm.
const LEAST_LETTERS: f64 = 1.9;

/// Draws the round chart of one size. A size that isn't there gives an empty drawing.
pub fn chart(plan: &Plan, size: usize, options: &ChartOptions) -> Drawing {
    let words = plan.design.words();
    let mut drawing = Drawing {
        bounds: Rect::ZERO,
        title: String::new(),
        description: String::new(),
        language: plan.design.language,
        symbols: BTreeMap::new(),
        items: Vec::new(),
    };
    let Some(sized) = plan.sizes.get(size) else { return drawing };
    drawing.title = telling::title(plan, sized, options.view, &words);
    drawing.description = telling::description(plan, sized, options, &words);
    let mut scene = Scene::new(plan, sized, options, words);
    drawing.items = scene.draw();
    drawing.bounds = scene.bounds();
    drawing.symbols = scene.symbols;
    if options.demerits {
        let overlay = demerits::overlay(&drawing);
        drawing.items.push(overlay);
    }
    drawing
}

/// Least height or width of a stitch's cell as a chart would be drawn; nothing at all for a size that isn't there.
pub fn least_cell(plan: &Plan, size: usize, options: &ChartOptions) -> Mm {
    let cells = least_cells(plan, size, options.view, &[(options.width, options.height)]);
    cells.first().copied().unwrap_or(Mm::ZERO)
}

/// The same for several rooms, across and down, of one view.
fn least_cells(plan: &Plan, size: usize, view: ChartView, rooms: &[(Mm, Mm)]) -> Vec<Mm> {
    let Some(sized) = plan.sizes.get(size) else { return vec![Mm::ZERO; rooms.len()] };
    let options = ChartOptions { view, ..ChartOptions::default() };
    let mut scene = Scene::begun(plan, sized, &options, plan.design.words());
    let mut cells = Vec::with_capacity(rooms.len());
    for (width, height) in rooms {
        scene.room = (width.mm(), height.mm());
        scene.scale();
        let least = scene.rings.rings.iter().map(Ring::least_cell).fold(f64::INFINITY, f64::min);
        // What has no repeats has no sector: nothing of it can be read.
        let missing = view == ChartView::Sector && scene.share.is_none();
        cells.push(if least.is_finite() && !missing { Mm::new(least * scene.unit) } else { Mm::ZERO });
    }
    cells
}

/// Everything one chart is drawn from.
struct Scene<'a> {
    plan: &'a Plan,
    size: &'a SizePlan,
    options: &'a ChartOptions,
    words: Words,
    rings: Rings,
    lanes: Vec<Lane>,
    frame: Frame,
    /// Room across and down, mm.
    room: (f64, f64),
    /// Millimetres of one stitch unit.
    unit: f64,
    /// Em height of labels, mm.
    letters: f64,
    /// Of how many repeats one is drawn.
    share: Option<u32>,
    symbols: BTreeMap<String, Symbol>,
    flattened: squeeze::Flattened,
}

impl<'a> Scene<'a> {
    /// A scene with every stitch in its place.
    fn new(plan: &'a Plan, size: &'a SizePlan, options: &'a ChartOptions, words: Words) -> Self {
        let mut scene = Self::begun(plan, size, options, words);
        scene.scale();
        // One repeat was settled when it was begun; whole rings wait for their lanes, whose width the letters say.
        if scene.share.is_none() {
            let widths = scene.lane_widths();
            scene.rings = layout(size, &options.view.rows(size), &widths);
        }
        scene
    }

    /// A scene whose scale is still to be found. One repeat has its lane beside it, so that its rings are settled; of
    /// all other views they are rough.
    fn begun(plan: &'a Plan, size: &'a SizePlan, options: &'a ChartOptions, words: Words) -> Self {
        let rows = options.view.rows(size);
        let share = match options.view {
            ChartView::Sector => Some(repeats(size)).filter(|repeats| *repeats > 1),
            ChartView::Whole | ChartView::Bands | ChartView::Part(_) | ChartView::UpTo(_) => None,
        };
        // To find the scale of a whole chart its radii are enough; one repeat is turned upright by its angles.
        let place = if share.is_some() { layout } else { rough };
        Self {
            plan,
            size,
            options,
            words,
            rings: place(size, &rows, &[]),
            lanes: Vec::new(),
            frame: Frame { start: options.start, hand: plan.design.hand },
            room: (options.width.mm(), options.height.mm()),
            unit: 1.0,
            letters: 1.0,
            share,
            symbols: BTreeMap::new(),
            flattened: squeeze::Flattened::new(),
        }
    }

    /// Finds scale, letters, lanes and radii. The lanes' width hangs on the size of the letters, that on the scale, and
    /// that on the lanes: two rounds do.
    fn scale(&mut self) {
        let rows = self.options.view.rows(self.size);
        for _ in 0..2 {
            self.unit = self.fitting_unit();
            // Letters go with the stitches, but never so small that they can't be read.
            self.letters = (0.62 * self.unit).max(LEAST_LETTERS);
            self.lanes = rows.iter().enumerate().map(|(index, row)| Lane::of(self, index, row)).collect();
            if self.share.is_none() {
                self.rings = rough(self.size, &rows, &self.lane_widths());
            }
            self.aim();
        }
        // Once more, for the lanes have changed since.
        self.unit = self.fitting_unit();
    }

    /// Widths of the lanes, in stitch units.
    fn lane_widths(&self) -> Vec<f64> {
        let mut widths: Vec<f64> = self.lanes.iter().map(Lane::width).collect();
        lane::taper(&mut widths, &self.lanes);
        widths
    }

    /// Turns one repeat so that it stands upright, the outer rings counting more.
    fn aim(&mut self) {
        // A whole chart has its start where it was asked for.
        if self.share.is_none() {
            return;
        }
        let (mut sum, mut weight) = (0.0, 0.0);
        for ring in &self.rings.rings {
            sum += ring.head.0 * (ring.from() + self.until(ring)) / 2.0;
            weight += ring.head.0;
        }
        let middle = Angle::from_radians(sum / weight.max(TOLERANCE));
        self.frame.start = if self.frame.hand == Hand::Right { middle } else { Angle::ZERO - middle };
    }

    fn fitting_unit(&self) -> f64 {
        let extent = self.extent();
        let (across, down) = (self.room.0 / extent.width(), self.room.1 / extent.height());
        // A chart of few rounds is not blown up to fill its room.
        across.min(down).min(LARGEST_UNIT)
    }

    fn bounds(&self) -> Rect {
        self.extent().scale_from_origin(self.unit)
    }

    /// Room the chart takes, in stitch units, the centre at (0, 0): the circle of the last ring, or what one repeat and
    /// the lane beside it reach.
    fn extent(&self) -> Rect {
        let outer = self.rings.outer() + RIM;
        if self.share.is_none() {
            return Rect::new(-outer, -outer, outer, outer);
        }
        let low = self.rings.centre;
        let mut extent = Rect::new(-low, -low, low, low);
        for (ring, lane) in self.rings.rings.iter().zip(&self.lanes) {
            let from = ring.from() - (lane.width() + 0.5) / ring.foot.0.max(0.5);
            // A sector's arcs bulge beyond its corners: a few points along each find how far.
            for step in 0..=6 {
                let along = from + (self.until(ring) - from) * f64::from(step) / 6.0;
                let top = ring.head_at(along) + ring.crest;
                for radius in [ring.foot_at(along), top] {
                    extent = extent.union_pt(self.frame.point(along, radius));
                }
            }
        }
        // Heads and chains reach past the middle of their cells, and the arrow of direction needs its room on top.
        extent.inset(0.6).union_pt(Point::new(0.0, extent.y0 - RIM))
    }

    fn draw(&mut self) -> Vec<Item> {
        // Back to front: tints lie under stitches, and names over both.
        let mut items = vec![ground::draw(self)];
        items.extend(stitches::foundation(self));
        for index in 0..self.rings.rings.len() {
            let group = self.round(index);
            items.push(group);
        }
        items.push(ends::draw(self));
        let names = lane::part_names(self);
        items.push(Item::Group(Group {
            id: "parts".to_owned(),
            role: Role::Decoration,
            origin: Origin::None,
            items: names,
        }));
        items
    }

    /// How many repeats are parted by lines, where that is asked for and there are several.
    fn parted(&self) -> Option<u32> {
        let asked = self.options.repeats && self.share.is_none();
        asked.then(|| repeats(self.size)).filter(|repeats| *repeats > 1)
    }

    /// A point of the drawing, from an angle along the work and a radius in stitch units.
    fn at(&self, along: f64, radius: f64) -> Point {
        let point = self.frame.point(along, radius);
        Point::new(point.x * self.unit, point.y * self.unit)
    }

    /// The angle up to which a ring is drawn.
    fn until(&self, ring: &Ring) -> f64 {
        let whole = ring.to();
        let Some((repeats, round)) = self.share.zip(self.round_of(ring.row)) else { return whole };
        let shown = round.ops.len() / repeats as usize;
        let past = ring.seats.iter().position(|seat| seat.op >= shown);
        match past.map(|past| (ring.seats.get(past.wrapping_sub(1)), ring.seats.get(past))) {
            Some((Some(last), Some(next))) => (last.at + next.at) / 2.0,
            Some(_) | None => whole,
        }
    }

    /// A line from one angle to another at a radius that may change along it: cubics over at most an eighth of a turn,
    /// each with the true directions at its ends.
    fn arc(&self, from: f64, to: f64, radius: impl Fn(f64) -> f64) -> BezPath {
        // An eighth of a turn as one cubic is off by less than a thousandth of the radius.
        let pieces = ((to - from) / TURN * 8.0).ceil().max(1.0);
        let step = (to - from) / pieces;
        let at = |along: f64| self.at(along, radius(along));
        let slope = |along: f64| (at(along + ASIDE) - at(along - ASIDE)) / (2.0 * ASIDE);
        let mut path = BezPath::new();
        path.move_to(at(from));
        for i in 0..pieces as u32 {
            let (a, b) = (from + step * f64::from(i), from + step * f64::from(i + 1));
            path.curve_to(at(a) + slope(a) * (step / 3.0), at(b) - slope(b) * (step / 3.0), at(b));
        }
        path
    }

    fn round_of(&self, row: Row) -> Option<&'a Round> {
        self.size.rounds.get(row.first)
    }

    fn ring(&self, index: usize) -> Option<&Ring> {
        self.rings.rings.get(index)
    }

    /// A symbol with its foot at a point and its head towards another.
    fn symbol(&mut self, sign: Sign, fit: Fit, foot: Point, head: Point) -> Item {
        self.put(&Placed { sign, fit, foot, head, rooted: false })
    }

    fn put(&mut self, placed: &Placed) -> Item {
        let (rounded, place) = placed.rounded(self.unit);
        let key = rounded.key(placed.sign);
        let (unit, left) = (self.unit, self.frame.hand == Hand::Left && placed.sign.points());
        self.symbols.entry(key.clone()).or_insert_with(|| {
            let symbol = placed.sign.symbol(&rounded.fit()).scaled(unit);
            if left { symbol.mirrored() } else { symbol }
        });
        Item::Symbol(SymbolItem { key, place })
    }

    fn round(&mut self, index: usize) -> Item {
        let Some((ring, round)) = self.ring(index).and_then(|ring| Some((ring.row, self.round_of(ring.row)?))) else {
            return Item::Group(Group {
                id: String::new(),
                role: Role::Plain,
                origin: Origin::None,
                items: Vec::new(),
            });
        };
        let mut items = stitches::draw(self, index);
        items.extend(lane::draw(self, index));
        // A band is told as the rounds it stands for, from its first to its last.
        let last = self.size.rounds.get(ring.last).unwrap_or(round);
        let (name, description) = telling::round(self.plan, self.size, round, last, &self.words);
        Item::Group(Group {
            id: format!("round-{}", round.number),
            role: Role::Object { name, description },
            origin: Origin::Round(round.number),
            items,
        })
    }
}
