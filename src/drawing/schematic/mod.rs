//! The schematic: a piece from the side, and from above where that helps, with its dimensions at a true scale.
//!
//! Practice of ISO 129-1 for dimension lines, ISO 128 for line widths, ISO 3098 for the height of letters, ISO 5455 for
//! scales. A whole outline is drawn, in the position in which the piece is used: hats and balls from the top down,
//! baskets standing on their base.

mod dimension;
mod dress;
mod head;
mod place;
mod sheet;
mod side;
mod smooth;
mod table;
mod telling;
mod top;
mod worn;

use std::collections::BTreeMap;

use kurbo::{Rect, Size};

use crate::drawing::{Drawing, Group, Item, Origin, Role};
use crate::geometry::{SideShape, SideView, side_view};
use crate::plan::{Plan, SizePlan};
use crate::units::Mm;
use crate::words::numbers::{self, decimal};
use crate::words::{Arg, Words};

use sheet::Sheet;
pub use worn::worn;

/// How a schematic is drawn.
#[derive(Clone, Debug, PartialEq)]
pub struct SchematicOptions {
    /// Width it must fit into.
    pub width: Mm,
    /// Height it must fit into.
    pub height: Mm,
    /// Scale as one to so many, or so many to one below 1; nothing for the largest of the ISO 5455 series that fits.
    pub scale: Option<f64>,
    /// Height of capitals, from the ISO 3098 series: 2.5 mm, 5 mm for large print.
    pub letters: Mm,
    /// Lines twice as wide, for large print.
    pub heavy: bool,
    /// Black only, without greys.
    pub plain_black: bool,
    /// Whether the view from above is drawn; nothing draws it where it fits at the same scale, and always for mats.
    pub top_view: Option<bool>,
    /// Whether a hat shows a head in thin dashes.
    pub head: bool,
    /// Whether the rounds show the colours of their yarn.
    pub dressed: bool,
}

impl Default for SchematicOptions {
    fn default() -> Self {
        Self {
            width: Mm::new(180.0),
            height: Mm::new(180.0),
            scale: None,
            letters: Mm::new(2.5),
            heavy: false,
            plain_black: false,
            top_view: None,
            head: true,
            dressed: true,
        }
    }
}

/// Scales of ISO 5455 as one to so many, largest first: 2 : 1, 1 : 1, 1 : 2, 1 : 5 …, and of the scales between, which the
/// standard leaves to exceptions, the one that spares a hat the step from 1 : 2 to 1 : 5.
const SCALES: [f64; 12] = [0.5, 1.0, 2.0, 2.5, 5.0, 10.0, 20.0, 50.0, 100.0, 200.0, 500.0, 1000.0];

/// How many times smaller a drawing may be for having its values on the lines.
const DEAREST: f64 = 1.3;

/// Share of the width that the bare outline takes at most where not all else fits.
const OUTLINE_SHARE: f64 = 0.6;

/// One size in the schematic.
struct Sized<'a> {
    name: &'a str,
    own: &'a SizePlan,
    head: Option<Mm>,
    view: SideView,
}

impl<'a> Sized<'a> {
    fn of(plan: &Plan, own: &'a SizePlan, shape: &SideShape) -> Self {
        Self { name: &own.name, own, head: own.head, view: side_view(plan, own, shape) }
    }
}

/// Everything a schematic is drawn from.
struct Scene<'a> {
    plan: &'a Plan,
    options: &'a SchematicOptions,
    words: &'a Words,
    sizes: Vec<Sized<'a>>,
    /// Millimetres on paper of one millimetre.
    scale: f64,
    /// True where dimension lines bear letters and the list gives the values: for several sizes, and where values are
    /// too long for the lines.
    lettered: bool,
}

/// Draws the schematic of one size, or of several: the largest with its dimensions, all of them as silhouettes in a row
/// and in a table. `sizes` are indices into the plan's sizes and
/// `shapes[i]` is the predicted shape of `sizes[i]`. Sizes that aren't there are left out; none at all gives an empty
/// drawing. Where nothing fits the width and height, the outline alone is made to fit and the bounds say how large it is.
pub fn schematic(plan: &Plan, sizes: &[usize], shapes: &[SideShape], options: &SchematicOptions) -> Drawing {
    let words = plan.design.words();
    let known = sizes.iter().zip(shapes).filter_map(|(&index, shape)| Some((plan.sizes.get(index)?, shape)));
    let sized = known.map(|(size, shape)| Sized::of(plan, size, shape));
    let sizes: Vec<Sized<'_>> = sized.filter(|size| size.view.reach > 0.0).collect();
    let mut drawing = Drawing {
        bounds: Rect::ZERO,
        title: telling::title(plan, &sizes, &words),
        description: String::new(),
        language: plan.design.language,
        symbols: BTreeMap::new(),
        items: Vec::new(),
    };
    if sizes.is_empty() {
        return drawing;
    }
    drawing.description = telling::description(plan, &sizes, &words);
    let mut scene = Scene { plan, options, words: &words, sizes, scale: 1.0, lettered: false };
    let sheet = scene.fit();
    drawing.bounds = sheet.bounds();
    let role = Role::Object { name: drawing.title.clone(), description: drawing.description.clone() };
    let group = Group { id: "schematic".to_owned(), role, origin: Origin::None, items: sheet.items };
    drawing.items = vec![Item::Group(group)];
    drawing
}

/// The shape and the dimensions of one size in words.
pub(super) fn told(plan: &Plan, size: &SizePlan, shape: &SideShape) -> String {
    let sized = Sized::of(plan, size, shape);
    telling::shape(plan, &[sized], &plan.design.words()).join(" ")
}

impl Scene<'_> {
    /// Draws at the scale asked for, or at the largest that fits.
    fn fit(&mut self) -> Sheet {
        let room = Size::new(self.options.width.mm(), self.options.height.mm());
        let asked = self.options.scale.filter(|scale| scale.is_finite() && *scale > 0.0);
        let scales = asked.map_or(SCALES.to_vec(), |scale| vec![scale]);
        let top = self.options.top_view.unwrap_or(self.mostly_flat());
        let (step, lettered) = if self.sizes.len() > 1 {
            (self.largest(&scales, top, room, true), true)
        } else {
            let (values, letters) = (self.largest(&scales, top, room, false), self.largest(&scales, top, room, true));
            // Values on the lines read best, but not at the price of a much smaller drawing.
            let [by_values, by_letters] =
                [values, letters].map(|step| scales.get(step).copied().unwrap_or(f64::INFINITY));
            if by_values <= by_letters * DEAREST { (values, false) } else { (letters, true) }
        };
        match scales.get(step) {
            Some(scale) => self.set(*scale, lettered),
            None => self.make_do(&scales, top, room),
        }
        if self.options.top_view.is_none() && !top && self.plan.design.kind.row().worn {
            let (with_top, _) = self.draw(true);
            if fits(&with_top, room) {
                return with_top;
            }
        }
        self.draw(top).0
    }

    fn set(&mut self, scale: f64, lettered: bool) {
        (self.scale, self.lettered) = (1.0 / scale, lettered);
    }

    /// Index of the largest scale that fits, with lines for most dimensions; their number where none does.
    fn largest(&mut self, scales: &[f64], top: bool, room: Size, lettered: bool) -> usize {
        let fitting = scales.iter().position(|&scale| {
            self.set(scale, lettered);
            // A cheap look first: nothing can fit whose bare outline doesn't.
            self.widest() * self.scale <= room.width && {
                let (sheet, complete) = self.draw(top);
                complete && fits(&sheet, room)
            }
        });
        fitting.unwrap_or(scales.len())
    }

    /// Where nothing fits with lines for most dimensions: letters, and the largest scale that fits with the rest of the
    /// measures in the list; where even the list doesn't fit, the largest at which the outline leaves room beside it.
    fn make_do(&mut self, scales: &[f64], top: bool, room: Size) {
        let mut bare = None;
        let whole = scales.iter().find(|scale| {
            self.set(**scale, true);
            if self.widest() * self.scale > OUTLINE_SHARE * room.width {
                return false;
            }
            bare.get_or_insert(**scale);
            fits(&self.draw(top).0, room)
        });
        let scale = whole.copied().or(bare).or(scales.last().copied()).unwrap_or(1.0);
        self.set(scale, true);
    }

    /// The size that is drawn with its dimensions: the largest, whose lines have most room.
    fn master(&self) -> Option<&Sized<'_>> {
        self.sizes.iter().max_by(|a, b| a.view.reach.total_cmp(&b.view.reach))
    }

    fn widest(&self) -> f64 {
        2.0 * self.master().map_or(0.0, |size| size.view.reach)
    }

    fn mostly_flat(&self) -> bool {
        self.plan.design.kind.row().flat || self.sizes.iter().all(|size| size.view.lies_flat())
    }

    /// The drawing at the scale of the moment, and whether most dimensions found their line.
    fn draw(&self, top: bool) -> (Sheet, bool) {
        let mut sheet = Sheet::new(self.options);
        let mut measures = table::measures(self);
        let all = side::draw(self, &mut measures, &mut sheet);
        if top {
            top::draw(self, &mut sheet);
        }
        if self.sizes.len() > 1 {
            dress::silhouettes(self, self.mostly_flat(), &mut sheet);
        }
        table::draw(self, &measures, &mut sheet);
        (sheet, all)
    }

    /// `Scale 1 : 2`.
    fn scale_words(&self) -> String {
        let (one, other) = if self.scale > 1.0 { (self.scale, 1.0) } else { (1.0, 1.0 / self.scale) };
        let [one, other] = [one, other].map(|value| decimal(value, 2, self.words.language));
        let scale = format!("{one}\u{a0}:\u{a0}{other}");
        self.words.with("schematic-scale", &[("scale", Arg::Text(&scale))])
    }

    fn length(&self, length: Mm) -> String {
        numbers::length(length, self.plan.design.units, self.words.language)
    }
}

fn fits(sheet: &Sheet, room: Size) -> bool {
    let bounds = sheet.bounds();
    bounds.width() <= room.width && bounds.height() <= room.height
}
