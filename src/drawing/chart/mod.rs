//! The round chart: rings from the centre outward, every stitch on the stitch it is worked into.

mod ground;
mod lane;
mod options;
mod stitches;
mod telling;

use std::collections::BTreeMap;

use kurbo::{Affine, Point, Rect};

pub use options::{ChartOptions, ChartView};

use crate::drawing::{Drawing, Group, Item, Origin, Role, Sign, Symbol, SymbolItem};
use crate::geometry::rings::{Frame, Ring, Rings, Row, layout};
use crate::plan::{Plan, Round, SizePlan};
use crate::words::Words;

use super::symbols::Fit;
use lane::Lane;

/// Clear room around the outermost ring, in stitch units; the arrow of direction runs in it.
const RIM: f64 = 1.2;

/// Largest scale: millimetres of one stitch unit.
const LARGEST_UNIT: f64 = 9.0;

/// Least height of letters, mm.
const LEAST_LETTERS: f64 = 1.9;

/// Draws the round chart of one size. A size that isn't there gives an empty drawing.
pub fn chart(plan: &Plan, size: usize, options: &ChartOptions) -> Drawing {
    let words = Words::of(plan.design.language);
    let mut drawing = Drawing {
        bounds: Rect::ZERO,
        title: String::new(),
        description: String::new(),
        language: plan.design.language,
        symbols: BTreeMap::new(),
        items: Vec::new(),
    };
    let Some(sized) = plan.sizes.get(size) else { return drawing };
    drawing.title = telling::title(plan, sized, &words);
    drawing.description = telling::description(plan, sized, options, &words);
    let mut scene = Scene::new(plan, sized, options, words);
    drawing.items = scene.draw();
    drawing.bounds = scene.bounds();
    drawing.symbols = scene.symbols;
    drawing
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
    /// Millimetres of one stitch unit.
    unit: f64,
    /// Em height of labels, mm.
    letters: f64,
    symbols: BTreeMap<String, Symbol>,
}

impl<'a> Scene<'a> {
    fn new(plan: &'a Plan, size: &'a SizePlan, options: &'a ChartOptions, words: Words) -> Self {
        let rows = options.view.rows(size);
        let frame = Frame { start: options.start, hand: plan.design.hand };
        let mut scene = Self {
            plan,
            size,
            options,
            words,
            rings: layout(size, &rows, &[]),
            lanes: Vec::new(),
            frame,
            unit: 1.0,
            letters: 1.0,
            symbols: BTreeMap::new(),
        };
        // The lanes' width hangs on the size of the letters, that on the scale, and that on the lanes: two rounds do.
        for _ in 0..2 {
            scene.unit = scene.fitting_unit();
            scene.letters = (0.62 * scene.unit).max(LEAST_LETTERS);
            scene.lanes = rows.iter().map(|row| Lane::of(&scene, row)).collect();
            let widths: Vec<f64> = scene.lanes.iter().map(|lane| lane.width()).collect();
            scene.rings = layout(size, &rows, &widths);
        }
        scene.unit = scene.fitting_unit();
        scene
    }

    fn fitting_unit(&self) -> f64 {
        let room = self.options.width.min(self.options.height).mm();
        (room / (2.0 * (self.rings.outer() + RIM))).min(LARGEST_UNIT)
    }

    fn bounds(&self) -> Rect {
        let half = (self.rings.outer() + RIM) * self.unit;
        Rect::new(-half, -half, half, half)
    }

    fn draw(&mut self) -> Vec<Item> {
        let mut items = vec![ground::draw(self)];
        items.extend(self.centre());
        for index in 0..self.rings.rings.len() {
            let group = self.round(index);
            items.push(group);
        }
        items
    }

    /// A point of the drawing, from an angle along the work and a radius in stitch units.
    fn at(&self, along: f64, radius: f64) -> Point {
        let point = self.frame.point(along, radius);
        Point::new(point.x * self.unit, point.y * self.unit)
    }

    fn round_of(&self, row: Row) -> Option<&'a Round> {
        self.size.rounds.get(row.first)
    }

    fn ring(&self, index: usize) -> Option<&Ring> {
        self.rings.rings.get(index)
    }

    /// A symbol with its foot at a point and its head towards another.
    fn symbol(&mut self, sign: Sign, fit: Fit, foot: Point, head: Point) -> Item {
        let key = self.define(sign, fit);
        let way = head - foot;
        let turn = crate::units::Angle::of_vector(-way.y, way.x);
        Item::Symbol(SymbolItem { key, place: Affine::translate(foot.to_vec2()) * turn.rotation() })
    }

    /// The key of a symbol in a room, rounded to a tenth of a stitch unit so that symbols are shared.
    fn define(&mut self, sign: Sign, fit: Fit) -> String {
        let tenth = |value: f64| (value * 10.0).round().clamp(1.0, 999.0);
        let (height, spread, width) = (tenth(fit.height), tenth(fit.spread), tenth(fit.width.min(1.0)));
        let usual = sign.fit();
        let mut key = sign.key();
        let shaped = matches!(sign, Sign::Increase(..) | Sign::Decrease(..));
        let differs = |a: f64, b: f64| (a - tenth(b)).abs() > 0.5;
        if differs(height, usual.height) || differs(width, usual.width) || (shaped && differs(spread, usual.spread)) {
            key.push_str(&format!("-{height}"));
            if differs(width, usual.width) {
                key.push_str(&format!("w{width}"));
            }
            if shaped {
                key.push_str(&format!("s{spread}"));
            }
        }
        let unit = self.unit;
        let fit = Fit { height: height / 10.0, spread: spread / 10.0, width: width / 10.0 };
        self.symbols.entry(key.clone()).or_insert_with(|| sign.symbol(&fit).scaled(unit));
        key
    }

    /// What the first ring stands on.
    fn centre(&mut self) -> Vec<Item> {
        stitches::foundation(self)
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
        let last = self.size.rounds.get(ring.last).unwrap_or(round);
        let (name, description) = telling::round(self.plan, round, last, &self.words);
        Item::Group(Group {
            id: format!("round-{}", round.number),
            role: Role::Object { name, description },
            origin: Origin::Round(round.number),
            items,
        })
    }
}
