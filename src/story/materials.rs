//! What is needed, and the swatch.

use super::Story;
use crate::craft::Stitch;
use crate::design::Colour;
use crate::design::hooks::us_hook;
use crate::plan::YarnUse;
use crate::story::{Block, Cell, Column, Section, Table};
use crate::units::{Gauge, Mm, Units};
use crate::words::Arg;
use crate::words::numbers::{decimal, length};

/// The lengths over which a gauge is told, each for itself: ten centimetres are no four inches.
const OVER: [(Mm, &str); 2] = [(Mm::from_cm(10.0), "10\u{a0}cm"), (Mm::from_inches(4.0), "4\u{a0}in")];
/// From so many stitches or rounds on, one decimal keeps the printed gauge within half a per cent of the one used.
const ONE_DECIMAL: f64 = 10.0;
/// Most assumed gauges that are told in a line each.
const FEW_ASSUMED: usize = 2;
/// Of less than so many metres the amounts are told to the metre, yard and gram; of more to the next five.
const BY_ONES: f64 = 50.0;
/// Rounds after which the height of the rounds is measured on the piece itself (common practice).
const FIVE: usize = 5;
/// Metres in a yard, by the international yard and pound agreement of 1959.
const YARD: f64 = 0.9144;

/// Yarn as it is told: never less than is needed, upward, and to the next five where it is much. Length and weight of one
/// yarn alike, so that they agree by the ball.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Amount {
    /// Yards.
    pub yards: f64,
    /// Metres.
    pub metres: f64,
    /// Grams.
    pub grams: f64,
}

impl Amount {
    /// The amount of a yarn.
    pub fn of(yarn: &YarnUse) -> Self {
        let much = yarn.metres >= BY_ONES;
        let up = |value: f64| if much { (value / 5.0).ceil() * 5.0 } else { value.ceil() };
        Self { yards: up(yarn.metres / YARD), metres: up(yarn.metres), grams: up(yarn.grams) }
    }
}

impl Story<'_> {
    pub(super) fn need(&self) -> Section {
        let facts = [("page-yarn", self.yarn_fact()), ("page-hook", self.hook_fact())];
        let mut rows: Vec<Vec<Cell>> = facts
            .into_iter()
            .filter_map(|(key, fact)| Some(vec![Cell::bold(self.say(key)), Cell::new(fact?)]))
            .collect();
        rows.extend(self.materials());
        let extras = if self.plan.design.kind.row().stuffed { "page-extras-list-stuffed" } else { "page-extras-list" };
        rows.push(vec![Cell::bold(self.say("page-extras")), Cell::new(self.say(extras))]);
        let facts = Table::facts(self.say("page-need"), rows);
        let mut blocks = vec![Block::Table(facts)];
        if self.plan.sizes.iter().any(|size| !size.yarn.is_empty()) {
            blocks.push(Block::Heading(self.say("page-yarn-amounts")));
            blocks.push(Block::Table(self.amounts()));
            let estimated = self.plan.sizes.iter().flat_map(|size| &size.yarn).any(|yarn| yarn.estimated);
            let key = if estimated { "page-yarn-estimated" } else { "page-yarn-weighed" };
            let percent = decimal(self.plan.design.yarn.allowance * 100.0, 0, self.words.language);
            let note = self.words.with(key, &[("percent", Arg::Text(&percent))]);
            blocks.push(Block::text(note));
        }
        self.section("need", "page-need", false, blocks)
    }

    pub(super) fn swatch(&self) -> Section {
        let (assumed, known): (Vec<_>, Vec<_>) = self.gauges().partition(|(_, gauge)| gauge.assumed);
        let gauges = if assumed.len() > FEW_ASSUMED { known } else { self.gauges().collect() };
        let lines = gauges.iter().flat_map(|(stitch, gauge)| self.gauge_lines(*stitch, gauge));
        let mut blocks: Vec<Block> = lines.map(Block::text).collect();
        if assumed.len() > FEW_ASSUMED {
            let [(_, name), _] = self.over();
            let note = self.words.with("page-gauges-assumed", &[("length", Arg::Text(name))]);
            blocks.push(Block::text(note.clone()));
            blocks.push(Block::Table(self.assumed_table(&assumed, note)));
        }
        if !blocks.is_empty() {
            blocks.push(Block::text(self.say("page-gauge-advice")));
            blocks.extend(self.five_rounds().map(Block::text));
        }
        self.section("swatch", "page-swatch", false, blocks)
    }

    /// What five rounds measure, and what helps where they don't: the height of the rounds is what a swatch of a few
    /// rounds tells least surely. Nothing for what is shorter or begins in several stitches.
    fn five_rounds(&self) -> Option<String> {
        let rounds = self.plan.sizes.first()?.rounds.get(..FIVE)?;
        let stitch = rounds.first()?.stitch;
        let height = self.plan.gauge(stitch).height * FIVE as f64;
        let even = self.plan.sizes.iter().flat_map(|size| &size.rounds).any(|round| round.change() == 0);
        let flat = self.plan.design.kind.row().flat;
        let alike = rounds.iter().all(|round| round.stitch == stitch) && (even || flat);
        let key = if flat { "page-five-rounds-flat" } else { "page-five-rounds" };
        let length = length(height, self.plan.design.units, self.words.language);
        alike.then(|| self.words.with(key, &[("length", Arg::Text(&length))]))
    }

    /// Weight, fibre and ball in one line; nothing where none is known.
    pub(super) fn yarn_fact(&self) -> Option<String> {
        let yarn = &self.plan.design.yarn;
        let mut parts = Vec::new();
        if let Some(weight) = yarn.weight {
            let name = self.say(&format!("page-weight-{}", weight.value.min(7)));
            let number = u32::from(weight.value);
            parts.push(
                self.words.with("page-yarn-weight", &[("number", Arg::Count(number)), ("name", Arg::Text(&name))]),
            );
        }
        parts.extend(yarn.fibre.clone());
        if let Some(ball) = yarn.ball {
            let [grams, metres, yards] =
                [ball.grams, ball.metres, ball.metres / YARD].map(|amount| self.number(amount));
            let key = if self.in_inches() { "page-ball-yards" } else { "page-ball" };
            let amounts = [("grams", &grams), ("metres", &metres), ("yards", &yards)];
            parts.push(self.words.with(key, &amounts.map(|(name, amount)| (name, Arg::Text(amount)))));
        }
        (!parts.is_empty()).then(|| parts.join(", "))
    }

    /// The hook in millimetres, with its common letter.
    pub(super) fn hook_fact(&self) -> Option<String> {
        let hook = self.plan.design.hook?;
        let size = decimal(hook.mm(), 2, self.words.language);
        Some(match us_hook(hook).filter(|_| !self.british()) {
            Some(letter) => {
                self.words.with("page-hook-letter", &[("size", Arg::Text(&size)), ("letter", Arg::Text(letter))])
            }
            None => format!("{size}\u{a0}mm"),
        })
    }

    /// The gauge of the main stitch in one line, in the design's own unit: `13.2 dc and 7.5 rounds over 10 cm`.
    pub fn gauge(&self) -> Option<String> {
        let (stitch, gauge) = self.gauges().next()?;
        let [over, _] = self.over();
        Some(self.gauge_over(&self.writer().short(*stitch), gauge, over))
    }

    /// The gauges of the stitches that a swatch is worked in.
    fn gauges(&self) -> impl Iterator<Item = &(Stitch, Gauge)> {
        let used = self.fabric();
        self.plan.gauges.iter().filter(move |(stitch, _)| used.contains(stitch) && stitch.makes_fabric())
    }

    /// Stitches and rounds of gauges that are only assumed, those that are alike in one line.
    fn assumed_table(&self, gauges: &[&(Stitch, Gauge)], summary: String) -> Table {
        let [(length, _), _] = self.over();
        let mut lines: Vec<(Vec<String>, [String; 2])> = Vec::new();
        for (stitch, gauge) in gauges {
            let size = [length / gauge.width, length / gauge.height].map(|count| self.counted(count));
            let short = self.writer().short(*stitch);
            match lines.iter_mut().find(|(_, other)| *other == size) {
                Some((shorts, _)) => shorts.push(short),
                None => lines.push((vec![short], size)),
            }
        }
        let row = |(shorts, size): (Vec<String>, [String; 2])| {
            let shorts: Vec<String> = shorts.iter().map(|short| short.replace(' ', "\u{a0}")).collect();
            std::iter::once(Cell::bold(shorts.join(", "))).chain(size.map(Cell::new)).collect()
        };
        Table {
            summary,
            continued: String::new(),
            columns: vec![
                Column::wide(self.say("page-short")),
                Column::numbers(self.say("page-stitches")),
                Column::numbers(self.say("page-rounds")),
            ],
            head: true,
            row_heads: true,
            rows: lines.into_iter().map(row).collect(),
        }
    }

    /// Over what a gauge is told, the design's own unit first.
    fn over(&self) -> [(Mm, &'static str); 2] {
        let [metric, inches] = OVER;
        if self.in_inches() { [inches, metric] } else { [metric, inches] }
    }

    /// The gauge over one length: `13.2 dc and 7.5 rounds over 10 cm`.
    fn gauge_over(&self, stitch: &str, gauge: &Gauge, (length, name): (Mm, &str)) -> String {
        let (stitches, rounds) = (self.counted(length / gauge.width), self.counted(length / gauge.height));
        let args = [("stitches", &*stitches), ("stitch", stitch), ("rounds", &rounds), ("length", name)];
        self.words.with("page-gauge", &args.map(|(name, text)| (name, Arg::Text(text))))
    }

    /// A gauge in both units, with the swatch that it was measured on where there was one.
    fn gauge_lines(&self, stitch: Stitch, gauge: &Gauge) -> Vec<String> {
        let short = self.writer().short(stitch);
        let over = self.over().map(|over| self.gauge_over(&short, gauge, over)).join(self.words.semicolon());
        let swatch = self.plan.design.swatches.iter().find(|swatch| swatch.stitch == stitch);
        let Some(swatch) = swatch.filter(|_| !gauge.assumed) else {
            return vec![format!("{over} {}", self.say("page-gauge-assumed"))];
        };
        let decimals = |value: f64| decimal(value, 2, self.words.language);
        let sides = [swatch.worked.width, swatch.worked.height];
        let size = if self.in_inches() {
            sides.map(|side| decimals(side.inches())).join("\u{a0}×\u{a0}") + "\u{a0}in"
        } else {
            sides.map(|side| decimals(side.cm())).join("\u{a0}×\u{a0}") + "\u{a0}cm"
        };
        let [stitches, rounds] = [swatch.worked.stitches, swatch.worked.rounds].map(decimals);
        let args = [("stitches", &*stitches), ("stitch", &short), ("rounds", &rounds), ("size", &size)];
        vec![self.words.with("page-gauge-worked", &args.map(|(name, text)| (name, Arg::Text(text)))), over]
    }

    /// Stitches or rounds over a length, so exactly that the piece comes out by them.
    fn counted(&self, value: f64) -> String {
        decimal(value, if value < ONE_DECIMAL { 2 } else { 1 }, self.words.language)
    }

    pub(super) fn number(&self, value: f64) -> String {
        let places = if value < 20.0 { 1 } else { 0 };
        decimal(value, places, self.words.language)
    }

    /// Yarn for each size and colour.
    fn amounts(&self) -> Table {
        let colours = !self.plan.design.yarn.colours.is_empty();
        let balls = self.plan.sizes.iter().flat_map(|size| &size.yarn).any(|yarn| yarn.balls.is_some());
        let mut columns = vec![Column::words(self.say("page-size"))];
        if colours {
            columns.push(Column::words(self.say("page-colour")));
        }
        if self.in_inches() {
            columns.push(Column::numbers(self.say("page-yards")));
        }
        columns.extend(["page-metres", "page-grams"].map(|key| Column::numbers(self.say(key))));
        if balls {
            columns.push(Column::numbers(self.say("page-balls")));
        }
        let mut rows = Vec::new();
        for size in &self.plan.sizes {
            for yarn in &size.yarn {
                let mut row = vec![Cell::bold(size.name.clone())];
                if colours {
                    row.push(self.colour_cell(yarn.colour));
                }
                row.extend(self.amount_cells(yarn));
                if balls {
                    row.push(Cell::new(yarn.balls.map_or("–".to_owned(), |balls| balls.to_string())));
                }
                rows.push(row);
            }
        }
        Table {
            summary: self.say("page-yarn-amounts"),
            continued: String::new(),
            columns,
            head: true,
            row_heads: true,
            rows,
        }
    }

    fn in_inches(&self) -> bool {
        self.plan.design.units == Units::Inches
    }

    fn amount_cells(&self, yarn: &YarnUse) -> Vec<Cell> {
        let amount = Amount::of(yarn);
        let yards = self.in_inches().then_some(amount.yards);
        yards.into_iter().chain([amount.metres, amount.grams]).map(|value| Cell::new(self.number(value))).collect()
    }

    /// A colour's patch and name; a dash for the single unnamed colour.
    pub(super) fn colour_cell(&self, colour: Option<usize>) -> Cell {
        let known = colour.and_then(|colour| self.plan.design.yarn.colours.get(colour));
        let patch = |colour: &Colour| self.telling.patches.then_some(colour.rgb);
        known.map_or(Cell::new("–"), |colour| Cell { swatch: patch(colour), ..Cell::new(colour.name.clone()) })
    }
}
