//! Colours tried: the piece small in every order of its yarns or in the palettes of its design, with what each takes, how
//! well its colours stand out from one another, also to colour-blind eyes, and an outline to colour in by hand.

mod bars;
mod trials;

use kurbo::{Point, Rect, Shape, Vec2};

use super::key::wrap;
use super::piece::Dressed;
use crate::drawing::{Anchor, Drawing, Ends, Group, Ink, Item, Origin, PathItem, PieceOptions, Role, Stroke, TextItem};
use crate::font::Face;
use crate::geometry::SideShape;
use crate::geometry::piece::Piece;
use crate::plan::{Plan, SizePlan, YarnUse};
use crate::sight::{Alike, Eyes};
use crate::story::Amount;
use crate::units::{Mm, Units};
use crate::words::numbers::{bare, decimal};
use crate::words::{Arg, Words};

use bars::{Stripe, bar, stripes};
use trials::{Trial, Trials};

/// How colours are tried.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ColoursOptions {
    /// Width they must fit into.
    pub width: Mm,
    /// Height they must fit into.
    pub height: Mm,
    /// Size of their letters.
    pub letters: Mm,
    /// Most trials shown.
    pub most: usize,
}

impl Default for ColoursOptions {
    fn default() -> Self {
        Self { width: Mm::new(170.0), height: Mm::new(240.0), letters: Mm::new(2.8), most: 24 }
    }
}

/// Between two trials, and between a picture and its words, mm.
const GAP: f64 = 4.0;

/// Widths of the bar beside a piece, of each that shows it as colour-blind eyes see it, and of the gap beside each, mm.
const BAR: (f64, f64, f64) = (4.0, 1.6, 0.6);

/// Least width of a cell, and least height of a picture, mm.
const LEAST: (f64, f64) = (29.0, 14.0);

/// From so many trials on the letters are smaller, by this much.
const SMALL: (usize, f64) = (9, 0.86);

/// Height of a line of words in its letters.
const LINE: f64 = 1.35;

/// Scales of the bars, as one to so many (ISO 5455, and those between).
const SCALES: [f64; 12] = [1.0, 2.0, 2.5, 4.0, 5.0, 10.0, 20.0, 25.0, 50.0, 100.0, 200.0, 500.0];

/// Share of a picture's height that the longest bar takes at most.
const LONGEST: f64 = 0.94;

/// How many ways a size could be dressed, where there are several and so many would not be shown of them.
pub fn trials_cut(plan: &Plan, size: &SizePlan, most: usize) -> Option<(usize, usize)> {
    let trials = Trials::of(plan, size, most, &plan.design.words())?;
    let yarns = size.yarn.iter().filter(|using| using.colour.is_some()).count();
    let all = if trials.moved.is_some() { (1..=yarns).product() } else { trials.all };
    (all > trials.list.len()).then_some((trials.list.len(), all))
}

/// Draws the piece in the colours there are to try, all to one scale; nothing where there is but one way. `body` is its
/// predicted shape and `space` how it lies in space.
pub fn colours(
    plan: &Plan,
    size: &SizePlan,
    (body, space): (&SideShape, &Piece),
    options: &ColoursOptions,
) -> Option<Drawing> {
    let words = plan.design.words();
    let trials = Trials::of(plan, size, options.most, &words)?;
    let small = if trials.list.len() > SMALL.0 { SMALL.1 } else { 1.0 };
    let sheet = Sheet { plan, words, stripes: stripes(plan, size), letters: options.letters.mm() * small };
    let foot = sheet.foot_words(&trials);
    let width = options.width.mm();
    let said: Vec<Caption> = trials.list.iter().map(|trial| sheet.caption(trial)).collect();
    let (grid, shape) = sheet.grid(&said, &foot, options, body, space);
    let mut dressed = Dressed::of(plan, body, space, &PieceOptions { scale: Some(shape), ..PieceOptions::default() });
    let picture = dressed.bounds();
    let scale = sheet.bar_scale(picture.height());
    let mut items = Vec::new();
    // In a narrow cell each of its lines takes two.
    let blanks = (1..=grid.lines).rev().map(|lines| sheet.blank_caption(lines));
    let blank = blanks.into_iter().find(|blank| blank.lines(sheet.letters, grid.cell) <= grid.lines);
    let blank = blank.unwrap_or_else(|| sheet.blank_caption(1));
    for (number, caption) in said.iter().chain([&blank]).enumerate() {
        let trial = trials.list.get(number);
        let corner = grid.corner(number);
        let own = match trial {
            Some(trial) => dressed.in_yarns(trial.inks()),
            None => dressed.blank(size),
        };
        let all = grid.cell - bars_width();
        let by = Vec2::new(corner.x + (all - picture.width()) / 2.0, corner.y) - picture.origin().to_vec2();
        let mut cell: Vec<Item> = own.iter().map(|item| item.moved(by)).collect();
        cell.extend(sheet.bars(Point::new(corner.x + all, corner.y), scale, trial));
        cell.extend(sheet.words_under(caption, Point::new(corner.x, corner.y + grid.high + GAP), grid.cell));
        let role = Role::Object { name: caption.told(), description: String::new() };
        items.push(Item::Group(Group {
            id: format!("colours-{}", number + 1),
            role,
            origin: Origin::None,
            items: cell,
        }));
    }
    let mut top = grid.foot();
    let scale = ("scale", &*decimal(scale, 1, plan.design.language));
    let foot = foot.into_iter().chain([sheet
        .words
        .with(if sheet.upward() { "colours-bars-up" } else { "colours-bars" }, &[(scale.0, Arg::Text(scale.1))])]);
    let mut about = vec![sheet.words.say("steps-about")];
    about.extend(said.iter().map(|caption| format!("{}.", caption.told())));
    for sentence in foot {
        for line in wrap(&sentence, Face::Regular, sheet.letters, width) {
            top += LINE * sheet.letters;
            items.push(Item::Text(TextItem::new(line, Point::new(0.0, top), sheet.letters)));
        }
        about.push(sentence);
    }
    let args = [("title", Arg::Text(&plan.design.title.value)), ("size", Arg::Text(&size.name))];
    Some(Drawing {
        bounds: Rect::new(0.0, -1.0, width, top + 0.5 * sheet.letters),
        title: sheet.words.with("colours-title", &args),
        description: about.join(" "),
        language: plan.design.language,
        symbols: Default::default(),
        items,
    })
}

/// The bars beside a piece, with the gap before them.
fn bars_width() -> f64 {
    2.0 * BAR.2 + BAR.0 + Eyes::ALL.len() as f64 * (BAR.1 + BAR.2)
}

/// What is said under a picture.
struct Caption {
    name: String,
    /// Yarns or stripes, each after a patch of its colour or one to be coloured in.
    patches: Vec<(Option<Ink>, String)>,
    remarks: Vec<String>,
}

impl Caption {
    /// Its lines in a cell of this width.
    fn lines(&self, letters: f64, width: f64) -> usize {
        let remarks = self.remarks.iter().map(|remark| wrap(remark, Face::Regular, letters, width).len());
        let indent = patch(letters).1;
        let patches = self.patches.iter().map(|(_, words)| wrap(words, Face::Regular, letters, width - indent).len());
        wrap(&self.name, Face::Bold, letters, width).len() + patches.sum::<usize>() + remarks.sum::<usize>()
    }

    fn told(&self) -> String {
        let words = self.patches.iter().map(|(_, words)| words).chain(&self.remarks);
        std::iter::once(&self.name).chain(words).cloned().collect::<Vec<_>>().join(", ")
    }
}

/// Height of a patch of colour before words, and how far these are set in, mm.
fn patch(letters: f64) -> (f64, f64) {
    let side = Face::Regular.cap_height(letters);
    (side, 2.2 * side)
}

/// Where the trials stand.
struct Grid {
    /// How many there are.
    count: usize,
    columns: usize,
    cell: f64,
    /// Height of a picture.
    high: f64,
    /// Lines under it.
    lines: usize,
    letters: f64,
}

impl Grid {
    fn row(&self) -> f64 {
        self.high + 2.0 * GAP + LINE * self.letters * self.lines as f64
    }

    fn corner(&self, number: usize) -> Point {
        let (column, row) = (number % self.columns, number / self.columns);
        // The last row stands in the middle where it isn't full.
        let left = (self.count - row * self.columns).min(self.columns);
        let inset = (self.cell + GAP) * (self.columns - left) as f64 / 2.0;
        Point::new(inset + (self.cell + GAP) * column as f64, self.row() * row as f64)
    }

    /// The foot of them all.
    fn foot(&self) -> f64 {
        self.row() * self.count.div_ceil(self.columns) as f64 - GAP
    }
}

/// What the drawing is made from.
struct Sheet<'a> {
    plan: &'a Plan,
    words: Words,
    stripes: Vec<Stripe>,
    letters: f64,
}

impl Sheet<'_> {
    /// True for what stands on its first round.
    fn upward(&self) -> bool {
        self.plan.from_the_foot()
    }

    /// As many columns as give the largest pictures, and the scale of these.
    fn grid(
        &self,
        said: &[Caption],
        foot: &[String],
        options: &ColoursOptions,
        body: &SideShape,
        space: &Piece,
    ) -> (Grid, f64) {
        let (width, height) = (options.width.mm(), options.height.mm());
        let one = PieceOptions { scale: Some(1.0), ..PieceOptions::default() };
        let alone = Dressed::of(self.plan, body, space, &one).bounds();
        let feet: usize = foot.iter().map(|words| wrap(words, Face::Regular, self.letters, width).len()).sum();
        // The bars are explained in three lines at most.
        let below = LINE * self.letters * (feet + 3) as f64;
        let most = ((width + GAP) / (LEAST.0 + GAP)).floor().max(1.0) as usize;
        let grids = (1..=most.min(said.len() + 1)).map(|columns| {
            let cell = (width - GAP * (columns - 1) as f64) / columns as f64;
            let lines = said.iter().map(|caption| caption.lines(self.letters, cell)).max().unwrap_or(0);
            let rows = (said.len() + 1).div_ceil(columns) as f64;
            let high = (height - below) / rows - LINE * self.letters * lines as f64 - 2.0 * GAP;
            // Where the words leave no room, the page grows.
            let fits = high >= LEAST.1;
            let scale = ((cell - bars_width()) / alone.width()).min(high.max(LEAST.1) / alone.height());
            let high = alone.height() * scale;
            (Grid { count: said.len() + 1, columns, cell, high, lines, letters: self.letters }, scale, fits)
        });
        let best = grids.max_by(|one, other| one.2.cmp(&other.2).then(one.1.total_cmp(&other.1)));
        let whole = || (Grid { count: 1, columns: 1, cell: width, high: height, lines: 1, letters: self.letters }, 1.0);
        best.map_or_else(whole, |(grid, scale, _)| (grid, scale))
    }

    /// One of the scales, so that the bar is no longer than a picture is high.
    fn bar_scale(&self, high: f64) -> f64 {
        let depth: f64 = self.stripes.iter().map(|stripe| stripe.depth.mm()).sum();
        let fits = |scale: &&f64| depth / **scale <= high * LONGEST;
        SCALES.iter().find(fits).copied().unwrap_or(depth / high.max(1.0))
    }

    /// The bar of a trial, and how colour-blind eyes see it; a blank one for none.
    fn bars(&self, corner: Point, scale: f64, trial: Option<&Trial>) -> Vec<Item> {
        let up = self.upward();
        let left = corner.x + 2.0 * BAR.2;
        let Some(trial) = trial else {
            return bar(&self.stripes, (left, corner.y, BAR.0), (scale, up), None);
        };
        let mut items = bar(&self.stripes, (left, corner.y, BAR.0), (scale, up), Some(&trial.inks()));
        let mut left = left + BAR.0 + BAR.2;
        for eyes in Eyes::ALL {
            let seen: Vec<Ink> = trial.colours.iter().map(|rgb| Ink(eyes.see(*rgb))).collect();
            items.extend(bar(&self.stripes, (left, corner.y, BAR.1), (scale, up), Some(&seen)));
            left += BAR.1 + BAR.2;
        }
        items
    }

    fn caption(&self, trial: &Trial) -> Caption {
        let patches = trial.yarns.iter().map(|(name, rgb, using)| (Some(Ink(*rgb)), self.amount(name, using)));
        let mut remarks = Vec::new();
        if let Some(meeting) = &trial.meets {
            let ratio = decimal(meeting.contrast, 1, self.plan.design.language);
            let (one, other) = &meeting.names;
            let args = [("ratio", Arg::Text(&ratio)), ("one", Arg::Text(one)), ("other", Arg::Text(other))];
            let key = if trial.yarns.len() > 2 { "colours-contrast-least" } else { "colours-contrast" };
            remarks.push(self.words.with(key, &args));
            remarks.extend(meeting.alike.as_ref().map(|alike| self.alike(alike)));
        }
        Caption { name: trial.name.clone(), patches: patches.collect(), remarks }
    }

    fn alike(&self, alike: &Alike) -> String {
        let eyes = match alike {
            Alike::All => return self.words.say("colours-alike"),
            Alike::Some(eyes) => eyes.iter().map(|eyes| self.words.say(kind(*eyes))).collect::<Vec<_>>(),
        };
        self.words.with("colours-alike-to", &[("eyes", Arg::Text(&eyes.join(", ")))])
    }

    /// `sand: 115 m (47 g)`.
    fn amount(&self, name: &str, using: &YarnUse) -> String {
        let amount = Amount::of(using);
        let number = |value: f64| decimal(value, 0, self.plan.design.language);
        let long = match self.plan.design.units {
            Units::Cm => format!("{}\u{a0}m", number(amount.metres)),
            Units::Inches => format!("{}\u{a0}yd", number(amount.yards)),
        };
        format!("{name}{}{long} ({}\u{a0}g)", self.words.colon(), number(amount.grams))
    }

    /// What is said under the outline: its stripes, in no more than so many lines.
    fn blank_caption(&self, lines: usize) -> Caption {
        let room = lines.saturating_sub(1).max(1);
        let shown = if self.stripes.len() <= room { room } else { room - 1 };
        let told = |stripe: &Stripe| {
            let units = self.plan.design.units;
            let unit = if units == Units::Cm { "cm" } else { "in" };
            let deep = format!("{}\u{a0}{unit}", bare(stripe.depth, units, self.plan.design.language));
            let (first, last) = (stripe.rounds.0.to_string(), stripe.rounds.1);
            let args = [("first", Arg::Text(&first)), ("last", Arg::Count(last)), ("length", Arg::Text(&deep))];
            let key = if stripe.rounds.0 == last { "colours-stripe-one" } else { "colours-stripe" };
            (None, self.words.with(key, &args))
        };
        let left = self.stripes.len().saturating_sub(shown) as u32;
        let more = (left > 0).then(|| self.words.with("colours-stripes-more", &[("count", Arg::Count(left))]));
        Caption {
            name: self.words.say("colours-blank"),
            patches: self.stripes.iter().take(shown).map(told).collect(),
            remarks: more.into_iter().collect(),
        }
    }

    fn foot_words(&self, trials: &Trials) -> Vec<String> {
        let mut words = Vec::new();
        if let Some(moved) = &trials.moved {
            words.push(self.words.with("colours-moved", &[("yarns", Arg::Text(&moved.join(", ")))]));
        }
        if trials.list.len() < trials.all {
            let args = [("shown", Arg::Count(trials.list.len() as u32)), ("all", Arg::Count(trials.all as u32))];
            words.push(self.words.with("colours-cut", &args));
        }
        words
    }

    fn words_under(&self, caption: &Caption, corner: Point, cell: f64) -> Vec<Item> {
        let letters = self.letters;
        let mut items = Vec::new();
        let mut y = corner.y;
        let mut line = |words: String, face: Face, x: f64, y: f64| {
            let anchor = Anchor::Start;
            items.push(Item::Text(TextItem { face, anchor, ..TextItem::new(words, Point::new(x, y), letters) }));
        };
        for words in wrap(&caption.name, Face::Bold, letters, cell) {
            line(words, Face::Bold, corner.x, y);
            y += LINE * letters;
        }
        let (side, indent) = patch(letters);
        let mut patches = Vec::new();
        for (ink, words) in &caption.patches {
            let path = Rect::new(corner.x, y - side, corner.x + 1.6 * side, y).to_path(0.1);
            let edge = Stroke { width: 0.15, ink: Ink([0x5c, 0x5c, 0x5c]), ends: Ends::Butt, dashes: Vec::new() };
            patches.push(Item::Path(PathItem { path, fill: ink.or(Some(Ink::WHITE)), stroke: Some(edge) }));
            for words in wrap(words, Face::Regular, letters, cell - indent) {
                line(words, Face::Regular, corner.x + indent, y);
                y += LINE * letters;
            }
        }
        for remark in caption.remarks.iter().flat_map(|remark| wrap(remark, Face::Regular, letters, cell)) {
            line(remark, Face::Regular, corner.x, y);
            y += LINE * letters;
        }
        items.extend(patches);
        items
    }
}

/// The word for eyes.
const fn kind(eyes: Eyes) -> &'static str {
    match eyes {
        Eyes::Protan => "colours-eyes-red",
        Eyes::Deutan => "colours-eyes-green",
        Eyes::Tritan => "colours-eyes-blue",
    }
}
