//! Parts: what shape each has, where it begins, how long it is in every size.

use super::fields::{listed, shortened, unknown};
use super::raw::{RawPart, RawPer, RawSize, RawStripe};
use super::resolve::{Reading, choose, flare_in_range, in_range, printed, tidy_cm};
use super::tree::Text;
use super::{Body, Colour, Part, PerSize, Profile, Said, Shape, Size, Start, Stripe, Swatch, measure, names};
use crate::craft::{Loops, Stitch};
use crate::report::{Diagnostic, Place, Report};
use crate::units::{Angle, Gauge, Mm};

/// What a part is resolved within.
pub(super) struct Within<'a> {
    pub(super) reading: Reading,
    pub(super) names: &'a [RawSize],
    pub(super) sizes: &'a [Size],
    pub(super) colours: &'a [Colour],
    pub(super) swatches: &'a [Swatch],
}

/// More parts than this are a slip of the hand.
const MOST_PARTS: usize = 40;
/// Longest round and longest part that are solved.
const MOST_STITCHES: f64 = 4000.0;
const MOST_ROUNDS: f64 = 1000.0;

/// Kinds of shapes, before their lengths are known.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Form {
    Flat,
    Dome,
    Straight,
    Flare,
    Taper,
    Sphere,
    Close,
}

const FORMS: &[(&str, Form)] = &[
    ("flat", Form::Flat),
    ("dome", Form::Dome),
    ("straight", Form::Straight),
    ("flare", Form::Flare),
    ("taper", Form::Taper),
    ("sphere", Form::Sphere),
    ("close", Form::Close),
];

/// Shapes that go without saying with the usual names of parts.
const USUAL: &[(&str, Form)] = &[
    ("crown", Form::Flat),
    ("base", Form::Flat),
    ("top", Form::Flat),
    ("side", Form::Straight),
    ("sides", Form::Straight),
    ("body", Form::Straight),
    ("wall", Form::Straight),
    ("band", Form::Straight),
    ("rim", Form::Straight),
    ("cuff", Form::Straight),
    ("brim", Form::Flare),
    ("ball", Form::Sphere),
    ("bottom", Form::Close),
];

const LOOPS: &[(&str, Loops)] = &[("both", Loops::Both), ("back", Loops::Back), ("front", Loops::Front)];
const MOST: &[(&str, u32)] = &[("double", 2), ("triple", 3)];

/// Resolves the parts in working order.
pub(super) fn resolve(raw: &[RawPart], within: &Within<'_>, report: &mut Report) -> Vec<Part> {
    if let Some(part) = raw.get(MOST_PARTS) {
        let message = format!("there are {} parts; {MOST_PARTS} are the most", raw.len());
        report.add(Diagnostic::error("too-many", message).at(part.name.place).help("join parts that are worked alike"));
    }
    let mut parts: Vec<Part> = Vec::new();
    for (index, raw) in raw.iter().take(MOST_PARTS).enumerate() {
        if let Some(first) = parts.iter().find(|part| part.name.value == raw.name.text) {
            let line = first.name.place.map_or(0, |place| place.line);
            let message = format!("two parts are called {}, the first on line {line}", raw.name.text);
            let help = "give each a name of its own, so that a maker can tell them apart";
            report.add(Diagnostic::warning("same-name", message).at(raw.name.place).help(help));
        }
        let part = Reader { raw, within, report: &mut *report }.part(parts.last(), index == 0);
        parts.extend(part);
    }
    parts
}

/// Reads one part.
struct Reader<'a, 'b> {
    raw: &'a RawPart,
    within: &'a Within<'a>,
    report: &'b mut Report,
}

impl Reader<'_, '_> {
    fn part(&mut self, before: Option<&Part>, first: bool) -> Option<Part> {
        let raw = self.raw;
        let main = self.within.swatches.first().map_or(Stitch::SC, |swatch| swatch.stitch);
        let said = raw.stitch.as_ref();
        let stitch = said.map_or(Some(main), |text| names::stitch(text, self.within.reading.terms, self.report));
        let stitch = stitch.unwrap_or(main);
        let stripes = self.stripes();
        let name = Said { value: printed(&raw.name, self.report), place: Some(raw.name.place) };
        if name.value.is_empty() || name.value.chars().count() > 40 {
            self.complain(
                "wrong-name",
                raw.name.place,
                "the name of a part has 1 to 40 characters",
                "write it short: `side`",
            );
        }
        self.reachable(before);
        let loops = choose("loop", raw.loops.as_ref(), LOOPS, self.report).unwrap_or_default();
        let body = match &raw.written {
            Some(rounds) => self.written(rounds),
            None => Body::Profile(self.profile(stitch, first)?),
        };
        Some(Part { name, stitch, loops, stripes, body })
    }

    fn complain(&mut self, code: &'static str, place: Place, message: impl Into<String>, help: impl Into<String>) {
        self.report.add(Diagnostic::error(code, message).at(place).help(help));
    }

    /// A part after a closed one has nothing to be worked into.
    fn reachable(&mut self, before: Option<&Part>) {
        if let Some(before) = before.filter(|before| before.closes()) {
            let (name, closed) = (&self.raw.name.text, &before.name.value);
            let message =
                format!("the part {name} can't be reached: {closed} closes the piece, so nothing is left to work into");
            let help = format!("put {name} before {closed}, or take it away");
            self.complain("out-of-reach", self.raw.name.place, message, help);
        }
    }

    fn written(&mut self, rounds: &[Text]) -> Body {
        let raw = self.raw;
        let lengths = [&raw.depth, &raw.width, &raw.rise, &raw.flare, &raw.around, &raw.across];
        let words = [&raw.shape, &raw.start, &raw.settle, &raw.most, &raw.loops];
        let place = lengths.into_iter().flatten().map(place_of).next();
        let place = place.or(words.into_iter().flatten().map(|text| text.place).next());
        if let Some(place) = place {
            let message = format!("the part {} is written out, and also given a shape to be solved for", raw.name.text);
            let help = "keep `written`, which is then recounted, or the fields of the shape";
            self.complain("written-and-solved", place, message, help);
        }
        Body::Written(rounds.iter().map(|text| Said { value: text.text.clone(), place: Some(text.place) }).collect())
    }

    fn profile(&mut self, stitch: Stitch, first: bool) -> Option<Profile> {
        let form = self.form(first)?;
        self.unused(form);
        let start = self.start(form, first);
        let shape = self.shape(form, first)?;
        let raw = self.raw;
        let longest = [&raw.depth, &raw.width, &raw.rise, &raw.around, &raw.across].into_iter().flatten().next();
        let place = longest.map_or(raw.name.place, place_of);
        self.bounded(&shape, stitch, place);
        let settle = raw.settle.as_ref().and_then(|text| measure::count("settle", text, 0, 50, self.report));
        let most = choose("most", raw.most.as_ref(), MOST, self.report).unwrap_or(2);
        let usual = if form == Form::Flare { 2 } else { 0 };
        Some(Profile { start: start?, shape, settle: settle.unwrap_or(usual), most, place: Some(place) })
    }

    fn form(&mut self, first: bool) -> Option<Form> {
        let raw = self.raw;
        if raw.shape.is_some() {
            return choose("shape", raw.shape.as_ref(), FORMS, self.report);
        }
        let ends = raw.around.is_some() || raw.across.is_some();
        let usual = USUAL.iter().find(|(name, _)| raw.name.text.eq_ignore_ascii_case(name)).map(|(_, form)| *form);
        let told = match (raw.flare.is_some(), raw.rise.is_some(), raw.depth.is_some()) {
            (true, ..) => Some(Form::Flare),
            (_, true, _) => Some(Form::Dome),
            (_, _, true) if ends && usual != Some(Form::Flat) => Some(Form::Taper),
            _ => None,
        };
        let plain = match (raw.depth.is_some(), raw.width.is_some()) {
            (true, _) => Some(Form::Straight),
            (_, true) if ends => Some(Form::Flare),
            _ => (first && ends).then_some(Form::Flat),
        };
        let form = told.or(usual).or(plain);
        if form.is_none() {
            let words: Vec<&str> = FORMS.iter().map(|(word, _)| *word).collect();
            let message = format!("the part {} has no `shape`", raw.name.text);
            let help = format!("write one of {}, or `written: |` with its rounds", listed(&words));
            self.complain("missing-field", raw.name.place, message, help);
        }
        form
    }

    /// Complains of lengths that say nothing about a part of this form.
    fn unused(&mut self, form: Form) {
        let used: &[&str] = match form {
            Form::Flat | Form::Sphere => &["around", "across"],
            Form::Dome => &["around", "across", "rise"],
            Form::Straight => &["depth"],
            Form::Flare => &["width", "flare", "around", "across"],
            Form::Taper => &["depth", "around", "across"],
            Form::Close => &[],
        };
        let word = FORMS.iter().find(|(_, other)| *other == form).map_or("", |(word, _)| word);
        let raw = self.raw;
        let fields = [
            ("depth", &raw.depth),
            ("width", &raw.width),
            ("rise", &raw.rise),
            ("flare", &raw.flare),
            ("around", &raw.around),
            ("across", &raw.across),
        ];
        for (name, field) in fields {
            if let Some(field) = field.as_ref().filter(|_| !used.contains(&name)) {
                let message = format!("`{name}` says nothing about a part of shape {word}");
                let help = match used {
                    [] => "take it away; the shape follows from the part before".to_owned(),
                    _ => format!("this shape takes {}", listed(used)),
                };
                self.complain("unused-field", place_of(field), message, help);
            }
        }
        if let (Some(around), Some(_)) = (&raw.around, &raw.across) {
            self.complain(
                "two-measures",
                place_of(around),
                "the end is measured in two ways",
                "keep `around` or `across`",
            );
        }
        if let (Form::Flare, Some(flare), true) = (form, &raw.flare, raw.around.is_some() || raw.across.is_some()) {
            let help = "keep `flare`, or the measurement of the outer edge";
            self.complain("two-measures", place_of(flare), "the flare is said in two ways", help);
        }
    }

    fn start(&mut self, form: Form, first: bool) -> Option<Start> {
        let raw = self.raw;
        let start = match &raw.start {
            Some(text) => Some((start(text, self.report)?, text.place)),
            None => None,
        };
        if !first {
            if let Some((_, place)) = start {
                let message = "only the first part has a start; this one goes on from the part before";
                self.complain("unused-field", place, message, "take `start` away");
            }
            if matches!(form, Form::Dome | Form::Sphere) {
                let message =
                    format!("the part {} can't be reached: a dome or a ball begins at its top", raw.name.text);
                self.complain(
                    "out-of-reach",
                    raw.name.place,
                    message,
                    "make it the first part, or use `shape: close` to end one",
                );
            }
            return Some(Start::Before);
        }
        match (form, start) {
            (Form::Flat | Form::Dome | Form::Sphere, start) => {
                Some(start.map_or(Start::Ring { stitches: None }, |(start, _)| start))
            }
            (Form::Straight | Form::Flare | Form::Taper, Some((start @ Start::ChainRing { .. }, _))) => Some(start),
            (Form::Straight | Form::Flare | Form::Taper | Form::Close, _) => {
                let message =
                    format!("the part {} can't be reached: nothing leads up to its circumference", raw.name.text);
                let help =
                    "begin with a flat or domed crown or base, or with `start: chain ring of 90` for an open tube";
                self.complain("out-of-reach", raw.name.place, message, help);
                None
            }
        }
    }

    fn shape(&mut self, form: Form, first: bool) -> Option<Shape> {
        let raw = self.raw;
        Some(match form {
            // Only a first disc can end at the size: a later one would end where it begins.
            Form::Flat => Shape::Flat { around: self.around(first)? },
            Form::Dome => {
                let around = self.around(true)?;
                let rise = match &raw.rise {
                    Some(rise) => self.rise(rise, &around)?,
                    None => around.iter().map(|around| *around / core::f64::consts::TAU).collect(),
                };
                Shape::Dome { around, rise }
            }
            Form::Straight => Shape::Straight { depth: self.length("depth", raw.depth.as_ref(), "depth: 9")? },
            Form::Flare => {
                let width = self.length("width", raw.width.as_ref(), "width: 7.5");
                match &raw.flare {
                    None if raw.around.is_some() || raw.across.is_some() => {
                        Shape::Taper { depth: width?, around: self.around(false)? }
                    }
                    None => {
                        let message = format!("the part {} has no `flare`", raw.name.text);
                        let help =
                            "add `flare: 55°` (0° straight down, 90° flat out), or `around:` with its outer edge";
                        self.complain("missing-field", raw.name.place, message, help);
                        return None;
                    }
                    Some(flare) => {
                        let angle = self.angle(flare);
                        Shape::Flare { width: width?, angle: angle? }
                    }
                }
            }
            Form::Taper => {
                let depth = self.length("depth", raw.depth.as_ref(), "depth: 9");
                Shape::Taper { around: self.around(false)?, depth: depth? }
            }
            Form::Sphere => Shape::Sphere { around: self.around(true)? },
            Form::Close => Shape::Close,
        })
    }

    /// Circumference at the edge: as said, across times π, or where allowed that of the size.
    fn around(&mut self, of_size: bool) -> Option<PerSize<Mm>> {
        let (least, most) = (Mm::from_cm(0.5), Mm::from_cm(2000.0));
        match (&self.raw.around, &self.raw.across) {
            (Some(per), _) => self.lengths("around", per, least, most),
            (None, Some(per)) => {
                let across = self.lengths("across", per, least, most)?;
                Some(across.into_iter().map(|across| across * core::f64::consts::PI).collect())
            }
            (None, None) if of_size => Some(self.within.sizes.iter().map(|size| size.around).collect()),
            (None, None) => {
                let message = format!("the part {} does not say where it ends", self.raw.name.text);
                let help = "add `around:` with its circumference there, or `across:` with its diameter";
                self.complain("missing-field", self.raw.name.place, message, help);
                None
            }
        }
    }

    fn length(&mut self, name: &'static str, per: Option<&RawPer>, example: &str) -> Option<PerSize<Mm>> {
        let Some(per) = per else {
            let message = format!("the part {} has no `{name}`", self.raw.name.text);
            let help = format!("add it, for example `{example}`; it is measured along the fabric");
            self.complain("missing-field", self.raw.name.place, message, help);
            return None;
        };
        self.lengths(name, per, Mm::new(1.0), Mm::from_cm(300.0))
    }

    fn rise(&mut self, per: &RawPer, around: &[Mm]) -> Option<PerSize<Mm>> {
        let rise = self.lengths("rise", per, Mm::new(1.0), Mm::from_cm(100.0))?;
        for (rise, around) in rise.iter().zip(around) {
            let radius = *around / core::f64::consts::TAU;
            if !(0.15..=3.0).contains(&(*rise / radius)) {
                let message = format!(
                    "a dome {} cm round has a radius of {} cm, and can't rise {} cm",
                    tidy_cm(*around),
                    tidy_cm(radius),
                    tidy_cm(*rise)
                );
                let help = "half a ball rises by its radius; write `shape: flat` for none, or add a side for more";
                self.complain("out-of-range", place_of(per), message, help);
                return None;
            }
        }
        Some(rise)
    }

    fn lengths(&mut self, name: &str, per: &RawPer, least: Mm, most: Mm) -> Option<PerSize<Mm>> {
        let units = self.within.reading.units;
        self.per_size(name, per, |text, report| {
            let length = measure::length(name, text, units, report)?;
            in_range(name, length, least, most, text.place, report).then_some(length)
        })
    }

    fn angle(&mut self, per: &RawPer) -> Option<PerSize<Angle>> {
        self.per_size("flare", per, |text, report| {
            let angle = measure::angle("flare", text, report)?;
            flare_in_range(angle, text.place, report).then_some(angle)
        })
    }

    /// One value for every size, in their order.
    fn per_size<T: Copy>(
        &mut self,
        name: &str,
        per: &RawPer,
        read: impl Fn(&Text, &mut Report) -> Option<T>,
    ) -> Option<PerSize<T>> {
        let (place, each) = match per {
            RawPer::All(text) => {
                let value = read(text, self.report)?;
                return Some(vec![value; self.within.sizes.len()]);
            }
            RawPer::Each(place, each) => (*place, each),
        };
        let sizes: Vec<&str> = self.within.names.iter().map(|size| size.name.text.as_str()).collect();
        for (key, _) in each.iter().filter(|(key, _)| !sizes.contains(&key.text.as_str())) {
            let message = format!("`{name}` is given for a size that there is not:");
            self.report.add(unknown("unknown-size", &message, key, &sizes));
        }
        let values: Vec<(&str, Option<T>)> = sizes
            .iter()
            .filter_map(|size| each.iter().find(|(key, _)| key.text == *size))
            .map(|(key, text)| (key.text.as_str(), read(text, self.report)))
            .collect();
        let missing: Vec<&str> =
            sizes.iter().copied().filter(|size| !values.iter().any(|(name, _)| name == size)).collect();
        if !missing.is_empty() {
            let message = format!("`{name}` has no value for {}", listed(&missing));
            let help = "give one for each size, or a single value for all";
            self.complain("missing-size", place, message, help);
            return None;
        }
        values.into_iter().map(|(_, value)| value).collect()
    }

    /// Keeps rounds and stitches within what can be solved, and what anyone would work.
    fn bounded(&mut self, shape: &Shape, stitch: Stitch, place: Place) {
        let Some(gauge) = gauge(stitch, self.within.swatches) else { return };
        let largest = |lengths: &[Mm]| lengths.iter().fold(Mm::ZERO, |most, length| most.max(*length));
        let own = largest(&self.within.sizes.iter().map(|size| size.around).collect::<Vec<_>>());
        let (along, around) = match shape {
            Shape::Flat { around } => (largest(around) / core::f64::consts::TAU, largest(around)),
            Shape::Dome { around, rise } => (largest(rise) + largest(around) / core::f64::consts::TAU, largest(around)),
            Shape::Straight { depth } => (largest(depth), own),
            Shape::Flare { width, .. } => (largest(width), own + largest(width) * core::f64::consts::TAU),
            Shape::Taper { depth, around } => (largest(depth), largest(around)),
            Shape::Sphere { around } => (largest(around) / 2.0, largest(around)),
            Shape::Close => (Mm::ZERO, own),
        };
        let (rounds, stitches) = (along / gauge.height, around / gauge.width);
        if rounds > MOST_ROUNDS || stitches > MOST_STITCHES {
            let message = format!(
                "the part {} would take about {rounds:.0} rounds of up to {stitches:.0} stitches",
                self.raw.name.text
            );
            let help = format!(
                "{MOST_ROUNDS} rounds and {MOST_STITCHES} stitches are the most; look at the units of the lengths and of the swatch"
            );
            self.complain("too-large", place, message, help);
        }
    }

    fn stripes(&mut self) -> Vec<Stripe> {
        let raw = self.raw;
        let colours = self.within.colours;
        if raw.colours.is_empty() {
            // Written rounds may name their own; without stripes they go on in the last one named.
            if raw.written.is_some() {
                return Vec::new();
            }
            return colours.first().map(|_| Stripe { colour: 0, rounds: None }).into_iter().collect();
        }
        raw.colours.iter().filter_map(|raw| stripe(raw, colours, self.report)).collect()
    }
}

fn takes_rest(stripe: &RawStripe) -> bool {
    stripe.rounds.as_ref().is_none_or(|text| text.text.eq_ignore_ascii_case("rest"))
}

fn stripe(raw: &RawStripe, colours: &[Colour], report: &mut Report) -> Option<Stripe> {
    let rounds = match &raw.rounds {
        Some(text) if !takes_rest(raw) => Some(measure::count(&raw.colour.text, text, 1, 1000, report)?),
        Some(_) | None => None,
    };
    let found = colours.iter().position(|colour| colour.name == raw.colour.text);
    if found.is_none() {
        let known: Vec<&str> = colours.iter().map(|colour| colour.name.as_str()).collect();
        if known.is_empty() {
            let message = format!("there is no colour `{}`", shortened(&raw.colour.text));
            let help = "name the colours under `yarn`: `colours: {sand: \"#d9c39a\"}`";
            report.add(Diagnostic::error("unknown-colour", message).at(raw.colour.place).help(help));
        } else {
            report.add(unknown("unknown-colour", "there is no colour", &raw.colour, &known));
        }
    }
    Some(Stripe { colour: found?, rounds })
}

/// `ring`, `ring of 8`, `chain ring of 4`, `chain ring of 4 with 12`.
fn start(text: &Text, report: &mut Report) -> Option<Start> {
    let words: Vec<&str> = text.text.split_whitespace().collect();
    let count = |word: &str| word.parse::<u32>().ok().filter(|count| (2..=2000).contains(count));
    let found = match words[..] {
        ["ring"] => Some(Start::Ring { stitches: None }),
        ["ring", "of", stitches] => {
            count(stitches).filter(|count| *count <= 60).map(|count| Start::Ring { stitches: Some(count) })
        }
        ["chain", "ring", "of", chains] => count(chains).map(|chains| Start::ChainRing { chains, stitches: None }),
        ["chain", "ring", "of", chains, "with", stitches] => {
            count(chains).zip(count(stitches)).map(|(chains, count)| Start::ChainRing { chains, stitches: Some(count) })
        }
        _ => None,
    };
    if found.is_none() {
        let message = format!("`start` can't be `{}`", shortened(&text.text));
        let help =
            "write `ring`, `ring of 8` (stitches, up to 60), `chain ring of 4`, or `chain ring of 4 with 12` stitches";
        report.add(Diagnostic::error("unknown-value", message).at(text.place).help(help));
    }
    found
}

/// The gauge of a stitch: from its swatch, or by the usual ratios from the first.
fn gauge(stitch: Stitch, swatches: &[Swatch]) -> Option<Gauge> {
    let own = swatches.iter().find(|swatch| swatch.stitch == stitch);
    let swatch = own.or(swatches.first())?;
    let (from, to) = (swatch.stitch.row(), stitch.row());
    let gauge = swatch.gauge;
    Some(Gauge {
        width: gauge.width * (to.width / from.width),
        height: gauge.height * (to.height / from.height),
        ..gauge
    })
}

fn place_of(per: &RawPer) -> Place {
    match per {
        RawPer::All(text) => text.place,
        RawPer::Each(place, _) => *place,
    }
}
