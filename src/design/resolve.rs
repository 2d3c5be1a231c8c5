//! As written → as meant: every default filled in, every length in millimetres, every name known.

use super::fields::{shortened, told, unknown};
use super::measure::{self, is_share};
use super::printed::{Printed, printed};
use super::raw::{RawDesign, RawPart};
use super::rows::phrase;
use super::shapes::{self, Field};
use super::tree::Text;
use super::{
    Design, Finish, Hand, Kind, Part, Preference, Said, Shaping, Tolerance, Work, materials, palettes, parts,
    photograph, plausible, repeats, sizes, stitches,
};
use crate::craft::{Stitch, Terms};
use crate::report::{Diagnostic, Place, Report};
use crate::units::{Angle, Mm, Units};
use crate::words::Language;

/// What the values of a file are read by.
#[derive(Clone, Copy, Debug)]
pub(super) struct Reading {
    pub(super) units: Units,
    pub(super) terms: Terms,
    pub(super) kind: Kind,
}

/// Resolves a whole file; nothing where the report holds an error in the end.
pub(super) fn resolve(raw: &RawDesign, report: &mut Report) -> Option<Design> {
    let reading = Reading {
        units: choose("units", raw.units.as_ref(), UNITS, report).unwrap_or(Units::Cm),
        terms: choose("terms", raw.terms.as_ref(), TERMS, report).unwrap_or_default(),
        kind: choose("kind", raw.kind.as_ref(), &Kind::ALL.map(|kind| (kind.row().word, kind)), report)
            .unwrap_or(Kind::Hat),
    };
    let title =
        raw.title.as_ref().map(|text| Said { value: printed(Printed::Title, text, report), place: Some(text.place) });
    let yarn = materials::yarn(raw.yarn.as_ref(), report);
    let swatches = materials::swatches(&raw.swatches, reading, report);
    let ease = ease_of(raw, reading, report);
    let sizes = sizes::resolve(&raw.sizes, ease.value, reading, report);
    let main = swatches.first().map_or(Stitch::SC, |swatch| swatch.stitch);
    let shaping = shaping(raw.shaping.as_ref(), report);
    let repeats = repeats::of_design(raw, shaping != Shaping::Scattered, report);
    let within = shapes::Within {
        reading,
        names: &raw.sizes,
        sizes: &sizes,
        colours: &yarn.colours,
        swatches: &swatches,
        repeats: &repeats,
    };
    let parts = parts::resolve(&raw.parts, &within, report);
    let work = work_of(raw.work.as_ref(), main, report);
    let design = Design {
        title: title.unwrap_or(Said { value: String::new(), place: None }),
        designer: raw.designer.as_ref().map(|text| printed(Printed::Designer, text, report)),
        about: raw.about.as_ref().map(|text| printed(Printed::About, text, report)),
        own: raw.own.clone(),
        photo: raw.photo.as_ref().and_then(|photo| photograph::resolve(photo, report)),
        kind: reading.kind,
        units: reading.units,
        terms: reading.terms,
        language: language(raw.language.as_ref(), report),
        hand: choose("hand", raw.hand.as_ref(), HANDS, report).unwrap_or_default(),
        work,
        hook: raw.hook.as_ref().and_then(|text| materials::hook(text, report)),
        stitches: stitches::resolve(&raw.stitches, &parts, reading, report),
        palettes: palettes::resolve(&raw.palettes, &yarn.colours, report),
        yarn,
        swatches,
        sizes,
        ease,
        finish: finish(raw.finish.as_ref(), work, &parts, report),
        parts,
        prefer: choose("prefer", raw.prefer.as_ref(), PREFERENCES, report).unwrap_or_default(),
        tolerance: tolerance(raw.tolerance.as_ref(), reading, report),
        shaping,
    };
    plausible::look(&design, raw, report);
    (!report.has_errors()).then_some(design)
}

pub(super) const UNITS: &[(&str, Units)] = &[("cm", Units::Cm), ("in", Units::Inches)];
pub(super) const TERMS: &[(&str, Terms)] = &[("US", Terms::Us), ("UK", Terms::Uk)];
pub(super) const HANDS: &[(&str, Hand)] = &[("right", Hand::Right), ("left", Hand::Left)];
pub(super) const PREFERENCES: &[(&str, Preference)] =
    &[("easy", Preference::Easy), ("balanced", Preference::Balanced), ("close", Preference::Close)];
pub(super) const FINISHES: &[(&str, Finish)] = &[
    ("fasten off", Finish::FastenOff),
    ("edge of slip stitch", Finish::SlipStitchEdge),
    ("step down", Finish::StepDown),
    ("close flat", Finish::CloseFlat),
];
/// Joined rounds, and whether their chain is said to count; a spiral has none.
pub(super) const WORKS: &[(&str, Option<bool>)] = &[
    ("joined", None),
    ("joined, chain counts", Some(true)),
    ("joined, chain does not count", Some(false)),
    ("spiral", None),
];
/// Shaping scattered, or in so many corners.
pub(super) const SHAPINGS: &[&str] = &["scattered", "# corners"];

/// The value of a word out of a short list; capitals don't matter.
pub(super) fn choose<T: Copy>(name: &str, text: Option<&Text>, values: &[(&str, T)], report: &mut Report) -> Option<T> {
    let text = text?;
    let wanted = text.text.split_whitespace().collect::<Vec<_>>().join(" ").to_lowercase();
    let found = values.iter().find(|(word, _)| word.to_lowercase() == wanted);
    if found.is_none() {
        let words: Vec<&str> = values.iter().map(|(word, _)| *word).collect();
        let complaint = unknown("unknown-value", &format!("`{name}` can't be"), text, &words);
        let help = complaint.help.clone().unwrap_or_default();
        report.add(complaint.help(format!("{help}; {}", told(name))));
    }
    found.map(|(_, value)| *value)
}

fn language(text: Option<&Text>, report: &mut Report) -> Language {
    let values = Language::ALL.map(|language| (language.tag(), language));
    choose("language", text, &values, report).unwrap_or_default()
}

fn ease_of(raw: &RawDesign, reading: Reading, report: &mut Report) -> Said<f64> {
    let usual = usual_ease(reading.kind, &raw.parts);
    let Some(text) = &raw.ease else {
        if usual < 0.0 {
            let message = format!("no `ease` is given; this hat is made {} % smaller than the head", -usual * 100.0);
            let help = "write `ease: -5 %` to say so, or another figure; `0 %` for the very measure of the head";
            report.add(Diagnostic::note("usual-ease", message).at(raw.place).help(help));
        }
        return Said { value: usual, place: None };
    };
    let value = measure::share("ease", text, report);
    let percent = value.unwrap_or(0.0) * 100.0;
    if !(-25.0..=40.0).contains(&percent) {
        let message = format!("an ease of {percent} % makes a piece that nobody can wear");
        let help = "close hats take -5 % to -10 %, sun hats 0 % to 4 %; the limits are -25 % and 40 %";
        report.add(Diagnostic::error("out-of-range", message).at(text.place).help(help));
    } else if !(-12.0..=15.0).contains(&percent) {
        let message = format!("an ease of {percent} % is unusual");
        let help = "close hats take -5 % to -10 %, sun hats 0 % to 4 % (common practice)";
        report.add(Diagnostic::warning("unusual-ease", message).at(text.place).help(help));
    }
    if !reading.kind.row().worn && value.is_some() {
        let message = "ease belongs to what is worn; it changes nothing here";
        report.add(Diagnostic::warning("unused-field", message).at(text.place).help("take the line away"));
    }
    Said { value: if reading.kind.row().worn { value.unwrap_or(usual) } else { 0.0 }, place: Some(text.place) }
}

/// Ease where the file says none: nothing for a brimmed hat, 5 % close for one without (common practice: about 2.5 cm).
fn usual_ease(kind: Kind, parts: &[RawPart]) -> f64 {
    if kind.row().worn && !parts.iter().any(is_brim) { -0.05 } else { 0.0 }
}

/// True where a part is said to be a brim.
fn is_brim(part: &RawPart) -> bool {
    let form = part.shape.as_ref().and_then(|text| shapes::form(&text.text));
    // A part that is given a depth is no brim, whatever its angle.
    let flares = part.measure(Field::Flare).is_some() && part.measure(Field::Depth).is_none();
    form.map_or(flares, |form| form.brim)
}

fn work_of(text: Option<&Text>, main: Stitch, report: &mut Report) -> Work {
    // Common practice: chain 1 never counts, chain 3 and more do; chain 2 does for some makers and not for others.
    let usual = main.row().turning >= 3;
    let spiral = text.is_some_and(|text| text.text.eq_ignore_ascii_case("spiral"));
    if spiral {
        return Work::Spiral;
    }
    let said = choose("work", text, WORKS, report).flatten();
    if said.is_none() && main.row().turning == 2 {
        let message = "the chain 2 at the start of a round is taken as not counting; some makers count it";
        let help = "write `work: joined, chain counts` or `work: joined, chain does not count`";
        report.add(Diagnostic::note("chain-2", message).at(text.map(|text| text.place)).help(help));
    }
    if said == Some(true) && main.row().turning < 2 {
        let message = "a chain 1 that counts as a stitch leaves a gap at the join; it hardly ever counts";
        let help = "write `work: joined`";
        report.add(Diagnostic::warning("chain-1", message).at(text.map(|text| text.place)).help(help));
    }
    Work::Joined { chain_counts: said.unwrap_or(usual) }
}

fn finish(text: Option<&Text>, work: Work, parts: &[Part], report: &mut Report) -> Said<Finish> {
    let place = text.map(|text| text.place);
    // A closed piece ends in a gathered round: there is no edge to bring level.
    let usual = if work == Work::Spiral && !parts.last().is_some_and(Part::closes) {
        Finish::StepDown
    } else {
        Finish::FastenOff
    };
    let value = choose("finish", text, FINISHES, report).unwrap_or(usual);
    if value == Finish::StepDown && work != Work::Spiral {
        let message = "joined rounds end level; only a spiral is stepped down";
        let help = "write `finish: fasten off`, or `work: spiral`";
        report.add(Diagnostic::error("step-down", message).at(place).help(help));
    }
    if let (Finish::CloseFlat, Some(closed)) = (value, parts.last().filter(|part| part.closes())) {
        let message = format!("the part {} closes the piece already: no edge is left to close flat", closed.name.value);
        let help = "take `finish` away, or end with a part that stays open";
        report.add(Diagnostic::error("close-flat", message).at(place).help(help));
    }
    Said { value, place }
}

fn tolerance(text: Option<&Text>, reading: Reading, report: &mut Report) -> Tolerance {
    let usual = Tolerance::Usual;
    let Some(text) = text else { return usual };
    let (tolerance, sane) = if is_share(&text.text) {
        let share = measure::share("tolerance", text, report).unwrap_or(0.01);
        (Tolerance::Share(share), (0.0005..=0.1).contains(&share))
    } else {
        let Some(length) = measure::length("tolerance", text, reading.units, report) else { return usual };
        (Tolerance::Length(length), (0.2..=60.0).contains(&length.mm()))
    };
    if !sane {
        let message = "a tolerance is between 0.05 % and 10 %, or between 0.2 mm and 60 mm";
        report.add(
            Diagnostic::error("out-of-range", message)
                .at(text.place)
                .help("write `tolerance: 1 %` or `tolerance: 3 mm`"),
        );
    }
    tolerance
}

fn shaping(text: Option<&Text>, report: &mut Report) -> Shaping {
    let Some(text) = text else { return Shaping::Scattered };
    let said = phrase(SHAPINGS, &text.text).and_then(|(index, counts)| match (index, counts.as_slice()) {
        (0, []) => Some(Shaping::Scattered),
        (1, [corners]) if (3..=60).contains(corners) => Some(Shaping::Corners(*corners)),
        _ => None,
    });
    if said.is_none() {
        let message = format!("`shaping` can't be `{}`", shortened(&text.text));
        let help = "write `shaping: scattered`, or `shaping: 6 corners` with 3 to 60 corners";
        report.add(Diagnostic::error("unknown-value", message).at(text.place).help(help));
    }
    said.unwrap_or_default()
}

/// True where a length lies in a range, or a complaint with the range in the units of the file.
pub(super) fn in_range(name: &str, value: Mm, least: Mm, most: Mm, place: Place, report: &mut Report) -> bool {
    if value >= least && value <= most {
        return true;
    }
    let message = format!("`{name}` is {} cm, which can't be", tidy_cm(value));
    let help = format!("it lies between {} cm and {} cm; look at the unit", tidy_cm(least), tidy_cm(most));
    report.add(Diagnostic::error("out-of-range", message).at(place).help(help));
    false
}

/// Centimetres as shown in a complaint.
pub(super) fn tidy_cm(length: Mm) -> f64 {
    crate::units::tidy(length.cm(), 2)
}

/// True where an angle of flare is one that a brim can have, or a complaint.
pub(super) fn flare_in_range(angle: Angle, place: Place, report: &mut Report) -> bool {
    if (0.0..=150.0).contains(&angle.degrees()) {
        return true;
    }
    let message = format!("a flare of {}° can't be worked", crate::units::tidy(angle.degrees(), 1));
    let help = "0° goes on straight down, 90° stands flat out, up to 150° turns back up";
    report.add(Diagnostic::error("out-of-range", message).at(place).help(help));
    false
}
