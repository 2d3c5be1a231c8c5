//! Parts: what shape each has, where it begins, how long it is in every size.

use super::fields::{listed, shortened, unknown};
use super::printed::{Printed, printed};
use super::raw::{RawPart, RawStripe};
use super::resolve::choose;
use super::rounds::{self, RawRounds};
use super::rows::phrase;
use super::shapes::{self, Base, Begins, FORMS, Form, Reader, Within, place_of};
use super::tree::Text;
use super::{Body, Colour, Part, PerSize, Profile, Said, Shape, Start, Stripe, Swatch, materials, measure, names};
use crate::craft::{Loops, Stitch};
use crate::limits;
use crate::report::{Diagnostic, Place, Report};
use crate::units::{Gauge, Mm, TURN};

pub(super) const LOOPS: &[(&str, Loops)] = &[("both", Loops::Both), ("back", Loops::Back), ("front", Loops::Front)];
/// Most even rounds at the end of a part.
pub(super) const MOST_SETTLED: u32 = 50;
pub(super) const MOST: &[(&str, u32)] = &[("double", 2), ("triple", 3)];

/// Ways to begin: a ring, and one of so many stitches; chains in a ring, and so many stitches into it; a chain as long as the
/// size.
pub(super) const STARTS: &[&str] = &["ring", "ring of #", "chain ring of #", "chain ring of # with #", "chain"];

/// Resolves the parts in working order.
pub(super) fn resolve(raw: &[RawPart], within: &Within<'_>, report: &mut Report) -> Vec<Part> {
    if let Some(part) = raw.get(limits::PARTS) {
        let message = format!("there are {} parts; {} are the most", raw.len(), limits::PARTS);
        report.add(
            Diagnostic::error("too-many-parts", message).at(part.name.place).help("join parts that are worked alike"),
        );
    }
    let mut parts: Vec<Part> = Vec::new();
    for (index, raw) in raw.iter().take(limits::PARTS).enumerate() {
        if let Some(first) = parts.iter().find(|part| part.name.value == raw.name.text) {
            let line = first.name.place.map_or(0, |place| place.line);
            let message = format!("two parts are called {}, the first on line {line}", raw.name.text);
            let help = "give each a name of its own, so that a maker can tell them apart";
            report.add(Diagnostic::warning("same-name", message).at(raw.name.place).help(help));
        }
        let above = within.sizes.iter().enumerate().filter_map(|(at, size)| length(&parts, at, size.around));
        let above: Vec<Mm> = above.collect();
        let part = Reader { raw, within, above: &above, report: &mut *report }.part(parts.last(), index == 0);
        parts.extend(part);
    }
    for early in raw.iter().rev().skip(1).filter_map(|part| part.folded.as_ref()) {
        let message = "only the last part folds up; this one has parts below it";
        let help = "move `folded` to the last part";
        report.add(Diagnostic::error("unused-field", message).at(place_of(early)).help(help));
    }
    parts
}

/// How long these parts are along the fabric in the size at an index, whose circumference is given; nothing where one is
/// written out.
fn length(parts: &[Part], size: usize, around: Mm) -> Option<Mm> {
    parts.iter().try_fold(Mm::ZERO, |all, part| match &part.body {
        Body::Profile(profile) => {
            let base = Base { size, real: 0.0, wished: around.mm(), settled: 0.0, factor: TURN };
            Some(all + Mm::new(profile.shape.outline(base)?.length))
        }
        Body::Written(_) => None,
    })
}

impl Reader<'_, '_> {
    fn part(&mut self, before: Option<&Part>, first: bool) -> Option<Part> {
        let raw = self.raw;
        let main = self.within.swatches.first().map_or(Stitch::SC, |swatch| swatch.stitch);
        let said = raw.stitch.as_ref();
        let stitch = said.map_or(Some(main), |text| names::stitch(text, self.within.reading.terms, self.report));
        let stitch = stitch.unwrap_or(main);
        let stripes = self.stripes();
        let name = Said { value: printed(Printed::Part, &raw.name, self.report), place: Some(raw.name.place) };
        self.reachable(before);
        let loops = choose("loop", raw.loops.as_ref(), LOOPS, self.report).unwrap_or_default();
        let body = match &raw.written {
            Some(rounds) => self.written(rounds)?,
            None => Body::Profile(Box::new(self.profile(stitch, first)?)),
        };
        self.sizes_of_notes();
        Some(Part { name, stitch, loops, stripes, notes: raw.notes.clone(), body })
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

    /// Complains of notes for sizes that there are not.
    fn sizes_of_notes(&mut self) {
        let names = self.within.size_names();
        for size in self.raw.notes.iter().filter_map(|note| note.size.as_ref()) {
            let (Some(place), false) = (size.place, names.contains(&size.value.as_str())) else { continue };
            let message = format!("`notes` can't stand at `{}`: it is no round and no size", shortened(&size.value));
            let help = format!(
                "write the number of a round of this part, 1 for its first, or `last`, or a size ({}): `notes: {{12: stuff firmly now}}`",
                listed(&names)
            );
            self.complain("unknown-value", place, message, help);
        }
    }

    fn written(&mut self, rounds: &RawRounds) -> Option<Body> {
        let raw = self.raw;
        let words = [&raw.shape, &raw.settle, &raw.most, &raw.multiple, &raw.loops];
        let repeats = raw.repeats.first().map(|text| text.place);
        let place = raw.measures.first().map(|(_, per)| place_of(per)).or(raw.start.as_ref().map(place_of));
        let place = place.or(words.into_iter().flatten().map(|text| text.place).next());
        let pattern = raw.pattern.iter().chain(&raw.set_up).flatten().next().map(|text| text.place);
        let place = place.or(repeats).or(raw.openings.first().map(|openings| openings.place));
        let place =
            place.or(raw.folded.as_ref().map(place_of)).or(pattern).or(raw.swatch.as_ref().map(|swatch| swatch.place));
        if let Some(place) = place {
            let message = format!("the part {} is written out, and also given a shape to be solved for", raw.name.text);
            let help = "keep `written`, which is then recounted, or the fields of the shape";
            self.complain("written-and-solved", place, message, help);
        }
        let names = self.within.size_names();
        let of_size = |lines: &[Text], size: usize, report: &mut Report| -> Vec<Said<String>> {
            let own = lines.iter().filter_map(|line| rounds::of_size(line, size, &names, report));
            own.map(|line| Said { value: line.text, place: Some(line.place) }).collect()
        };
        Some(Body::Written(match rounds {
            RawRounds::All(lines) => {
                (0..self.within.sizes.len()).map(|size| of_size(lines, size, self.report)).collect()
            }
            RawRounds::Each(place, each) => {
                self.each("written", *place, each, |lines, size, report| Some(of_size(lines, size, report)))?
            }
        }))
    }

    /// The rounds that repeat up a part, and those that are worked once before them.
    fn pattern(&mut self, form: &Form) -> (Vec<Said<String>>, Vec<Said<String>>) {
        let raw = self.raw;
        let (lines, set_up) = (raw.pattern.as_deref().unwrap_or_default(), raw.set_up.as_deref().unwrap_or_default());
        if let Some(first) = lines.first().filter(|_| form.closes) {
            let message =
                format!("the part {} closes, and a stitch pattern does not grow small enough for that", raw.name.text);
            let help = "give `pattern` to a part that stays open, before this one";
            self.complain("unused-field", first.place, message, help);
        }
        if let Some(first) = set_up.first().filter(|_| lines.is_empty()) {
            let message =
                format!("the part {} has set-up rounds, and no pattern that they could set up", raw.name.text);
            let help = "write the rounds that repeat after them: `pattern: [\"FPdc in next, BPdc in next\"]`";
            self.complain("unused-field", first.place, message, help);
        }
        if let (Some(loops), false) = (&raw.loops, lines.is_empty()) {
            let help = "write it in the pattern itself: `BLO sc in each st around`";
            self.complain("unused-field", loops.place, "`loop` says nothing of a part with a pattern", help);
        }
        let said = |text: &Text| Said { value: text.text.clone(), place: Some(text.place) };
        (lines.iter().map(said).collect(), set_up.iter().map(said).collect())
    }

    /// Even rounds at the end: their number, or the length that comes nearest to whole rounds.
    fn settle(&mut self, text: &Text, stitch: Stitch) -> Option<u32> {
        if !measure::is_length(&text.text) {
            return measure::count("settle", text, 0, MOST_SETTLED, self.report);
        }
        let length = measure::length("settle", text, self.within.reading.units, self.report)?;
        let height = gauge_of(stitch, self.within.swatches)?.height;
        let rounds = (length / height).round();
        if (0.0..=f64::from(MOST_SETTLED)).contains(&rounds) {
            return Some(rounds as u32);
        }
        let message = format!("`settle: {}` is {rounds:.0} rounds, and 0 to {MOST_SETTLED} are possible", text.text);
        let help = format!("one round is {:.1} mm high", height.mm());
        self.complain("out-of-range", text.place, message, help);
        None
    }

    fn profile(&mut self, stitch: Stitch, first: bool) -> Option<Profile> {
        let form = self.form(first)?;
        self.unused(form);
        let start = self.start(form, first);
        let shape = form.read(self, first)?;
        let raw = self.raw;
        let longest = raw.measures.iter().find(|(field, _)| !field.is_angle());
        let place = longest.map_or(raw.name.place, |(_, per)| place_of(per));
        self.bounded(&shape, stitch, place);
        let settle = raw.settle.as_ref().and_then(|text| self.settle(text, stitch));
        let most = choose("most", raw.most.as_ref(), MOST, self.report).unwrap_or(2);
        let (settle, multiple) = (settle.unwrap_or(form.settle), self.multiple(form));
        let (pattern, set_up) = self.pattern(form);
        let within = self.within;
        let swatch = raw.swatch.as_ref();
        let swatch = swatch.and_then(|raw| materials::swatch(raw, Some(stitch), within.reading, self.report));
        let folded = self.folded(&shape);
        let start = start?;
        let repeats = self.repeats(form, &start);
        let openings = self.openings(form);
        let place = Some(place);
        Some(Profile {
            start,
            shape,
            settle,
            most,
            repeats,
            multiple,
            pattern,
            set_up,
            folded,
            openings,
            swatch,
            place,
        })
    }

    fn form(&mut self, first: bool) -> Option<&'static Form> {
        let raw = self.raw;
        if raw.shape.is_some() {
            let words: Vec<(&str, &'static Form)> = FORMS.iter().map(|form| (form.word, *form)).collect();
            return choose("shape", raw.shape.as_ref(), &words, self.report);
        }
        let form = shapes::unsaid(raw, first);
        if form.is_none() {
            let words: Vec<&str> = FORMS.iter().map(|form| form.word).collect();
            let message = format!("the part {} has no `shape`", raw.name.text);
            let help = format!("write one of {}, or `written: |` with its rounds", listed(&words));
            self.complain("missing-field", raw.name.place, message, help);
        }
        form
    }

    fn start(&mut self, form: &Form, first: bool) -> Option<PerSize<Start>> {
        let Some(per) = &self.raw.start else {
            let start = self.start_as(form, first, None)?;
            return Some(vec![start; self.within.sizes.len()]);
        };
        let starts = self.per_size("start", per, start_of)?;
        starts.into_iter().map(|start| self.start_as(form, first, Some((start, place_of(per))))).collect()
    }

    fn start_as(&mut self, form: &Form, first: bool, start: Option<(Start, Place)>) -> Option<Start> {
        let raw = self.raw;
        if !first {
            if let Some((_, place)) = start {
                let message = "only the first part has a start; this one goes on from the part before";
                self.complain("unused-field", place, message, "take `start` away");
            }
            if form.begins == Begins::Top {
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
        match (form.begins, start) {
            (Begins::Top, Some((Start::Chain, place))) => {
                let message =
                    format!("the part {} begins at its top, and a chain round the size has none", raw.name.text);
                let help = "take `start` away, or begin with `shape: straight`, `taper`, `flare` or `flat`";
                self.complain("unused-field", place, message, help);
                None
            }
            (Begins::Middle | Begins::Top, start) => {
                Some(start.map_or(Start::Ring { stitches: None }, |(start, _)| start))
            }
            (Begins::Edge, Some((start @ (Start::ChainRing { .. } | Start::Chain), _))) => Some(start),
            (Begins::Edge | Begins::Never, _) => {
                let message =
                    format!("the part {} can't be reached: nothing leads up to its circumference", raw.name.text);
                let help = "begin with a flat or domed crown or base, or with `start: chain` for an open tube as wide as the size";
                self.complain("out-of-reach", raw.name.place, message, help);
                None
            }
        }
    }

    /// Keeps rounds and stitches within what can be solved, and what anyone would work.
    fn bounded(&mut self, shape: &Shape, stitch: Stitch, place: Place) {
        let Some(gauge) = gauge_of(stitch, self.within.swatches) else { return };
        let own = self.within.sizes.iter().fold(Mm::ZERO, |most, size| most.max(size.around));
        let (along, around) = shape.extent(own);
        let (rounds, stitches) = (along / gauge.height, around / gauge.width);
        if rounds > f64::from(limits::ROUNDS) || stitches > f64::from(limits::STITCHES) {
            let message = format!(
                "the part {} would take about {rounds:.0} rounds of up to {stitches:.0} stitches",
                self.raw.name.text
            );
            let help = format!(
                "{} rounds and {} stitches are the most; look at the units of the lengths and of the swatch",
                limits::ROUNDS,
                limits::STITCHES
            );
            self.complain("part-too-large", place, message, help);
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
        Some(text) if !takes_rest(raw) => Some(measure::count(&raw.colour.text, text, 1, limits::ROUNDS, report)?),
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
fn start_of(text: &Text, report: &mut Report) -> Option<Start> {
    let said = phrase(STARTS, &text.text).filter(|(_, counts)| counts.iter().all(|count| (2..=2000).contains(count)));
    let found = said.and_then(|(index, counts)| match (index, counts.as_slice()) {
        (0, []) => Some(Start::Ring { stitches: None }),
        (1, [stitches]) if *stitches <= 60 => Some(Start::Ring { stitches: Some(*stitches) }),
        (2, [chains]) => Some(Start::ChainRing { chains: *chains, stitches: None }),
        (3, [chains, stitches]) => Some(Start::ChainRing { chains: *chains, stitches: Some(*stitches) }),
        (4, []) => Some(Start::Chain),
        _ => None,
    });
    if found.is_none() {
        let message = format!("`start` can't be `{}`", shortened(&text.text));
        let help = "write `ring`, `ring of 8` (stitches, up to 60), `chain ring of 4`, `chain ring of 4 with 12` stitches, or `chain` for \
             an open tube as wide as the size";
        report.add(Diagnostic::error("unknown-value", message).at(text.place).help(help));
    }
    found
}

/// The gauge of a stitch: from its swatch, or by the usual ratios from the first.
fn gauge_of(stitch: Stitch, swatches: &[Swatch]) -> Option<Gauge> {
    let own = swatches.iter().find(|swatch| swatch.stitch == stitch);
    let swatch = own.or(swatches.first())?;
    let (from, to) = (swatch.stitch.row(), stitch.row());
    let gauge = swatch.gauge;
    Some(Gauge {
        width: gauge.width * (to.width / from.width),
        height: gauge.height * (to.height / from.height),
        thick: gauge.thick * (to.thickness * to.width / (from.thickness * from.width)),
        ..gauge
    })
}
