//! Yarn, hook and swatches.

use super::fields::{listed, shortened};
use super::hooks::{by_us_name, us_names};
use super::measure::{self, is_number};
use super::printed::{Printed, printed};
use super::raw::{RawSwatch, RawYarn};
use super::resolve::Reading;
use super::tree::Text;
use super::weights::YarnWeight;
use super::{Ball, Colour, Said, Swatch, Worked, Yarn, names};
use crate::craft::{Stitch, abbreviation};
use crate::report::{Diagnostic, Report};
use crate::units::{Gauge, Mm, Units};

/// The hook: a diameter, or a US letter and number, which is taken with a warning.
pub(super) fn hook(text: &Text, report: &mut Report) -> Option<Mm> {
    let named = by_us_name(&text.text).filter(|_| !is_number(&text.text));
    let diameter = match named {
        Some(mm) => {
            let message = format!("hook {} is taken as {} mm; letters differ from maker to maker", text.text, mm.mm());
            let help = format!("write `hook: {} mm`", mm.mm());
            report.add(Diagnostic::warning("hook-letter", message).at(text.place).help(help));
            mm
        }
        None if text.text.starts_with(|c: char| c.is_ascii_alphabetic()) => {
            let message = format!("there is no hook `{}`", shortened(&text.text));
            let help = format!("write its millimetres, `hook: 5 mm`; known letters: {}", listed(&us_names()));
            report.add(Diagnostic::error("unknown-hook", message).at(text.place).help(help));
            return None;
        }
        None => measure::hook_length(text, report)?,
    };
    if (0.4..=40.0).contains(&diameter.mm()) {
        return Some(diameter);
    }
    let message = format!("a hook of {} mm is not made", diameter.mm());
    report.add(
        Diagnostic::error("out-of-range", message).at(text.place).help("hooks go from 0.4 mm to 40 mm: `hook: 5 mm`"),
    );
    None
}

/// The yarn; every field may be left out.
pub(super) fn yarn(raw: Option<&RawYarn>, report: &mut Report) -> Yarn {
    let raw = raw.cloned().unwrap_or_default();
    let ball = raw.ball.and_then(|ball| {
        let grams = ball.grams.and_then(|text| measure::grams("grams", &text, report));
        let metres = ball.metres.and_then(|text| measure::metres("metres", &text, 1.0, report));
        let yards = ball.yards.and_then(|text| measure::metres("yards", &text, 0.9144, report));
        Some(Ball { grams: grams?, metres: metres.or(yards)? })
    });
    let allowance = raw.allowance.as_ref().and_then(|text| {
        let share = measure::share("allowance", text, report)?;
        if !(0.0..=1.0).contains(&share) {
            let message = "an allowance is between 0 % and 100 %";
            report.add(Diagnostic::error("out-of-range", message).at(text.place).help("usual is `10 %`"));
        }
        Some(share)
    });
    Yarn {
        weight: raw.weight.as_ref().and_then(|text| weight(text, report)),
        fibre: raw.fibre.as_ref().map(|text| printed(Printed::Fibre, text, report)),
        ball,
        colours: raw.colours.iter().filter_map(|(name, value)| colour(name, value, report)).collect(),
        allowance: allowance.unwrap_or(0.1),
    }
}

fn weight(text: &Text, report: &mut Report) -> Option<Said<u8>> {
    let number = text.text.parse::<u8>().ok().and_then(YarnWeight::by_number);
    let found = number.or_else(|| YarnWeight::by_name(&text.text));
    if found.is_none() {
        let message = format!("there is no yarn weight `{}`", shortened(&text.text));
        let help = format!("weights are 0 to 7, or {}", listed(&YarnWeight::names()));
        report.add(Diagnostic::error("unknown-weight", message).at(text.place).help(help));
    }
    found.map(|weight| Said { value: weight.number, place: Some(text.place) })
}

fn colour(name: &Text, value: &Text, report: &mut Report) -> Option<Colour> {
    let Some(rgb) = hex(&value.text) else {
        let message = format!("the colour {} is `{}`, which is no colour value", name.text, shortened(&value.text));
        let help = "write six hexadecimal figures in quotes, such as \"#2f6f8f\"";
        report.add(Diagnostic::error("wrong-colour", message).at(value.place).help(help));
        return None;
    };
    Some(Colour { name: printed(Printed::Colour, name, report), rgb, place: Some(name.place) })
}

pub(super) fn hex(text: &str) -> Option<[u8; 3]> {
    let figures = text.strip_prefix('#')?;
    let value = |c: u8| char::from(c).to_digit(16).map(|value| value as u8);
    let values: Vec<u8> = figures.bytes().map(value).collect::<Option<_>>()?;
    match values[..] {
        [r, g, b] => Some([r * 17, g * 17, b * 17]),
        [r, s, g, h, b, c] => Some([r * 16 + s, g * 16 + h, b * 16 + c]),
        _ => None,
    }
}

/// Most stitches or rounds that are counted in a swatch.
const MOST_COUNTED: u32 = 2000;

/// The swatches, one for each stitch.
pub(super) fn swatches(raw: &[RawSwatch], reading: Reading, report: &mut Report) -> Vec<Swatch> {
    let mut swatches: Vec<Swatch> = Vec::new();
    for swatch in raw.iter().filter_map(|raw| named(raw, reading, report)).collect::<Vec<_>>() {
        if swatches.iter().any(|other| other.stitch == swatch.stitch) {
            let message = format!("there are two swatches in {}", abbreviation(swatch.stitch, reading.terms));
            report.add(Diagnostic::error("twice", message).at(swatch.place).help("keep one for each stitch"));
        }
        swatches.push(swatch);
    }
    swatches
}

fn named(raw: &RawSwatch, reading: Reading, report: &mut Report) -> Option<Swatch> {
    let stitch = raw.stitch.as_ref().and_then(|text| names::stitch(text, reading.terms, report));
    swatch(raw, stitch, reading, report)
}

/// A swatch that is worked in this stitch.
pub(super) fn swatch(raw: &RawSwatch, stitch: Option<Stitch>, reading: Reading, report: &mut Report) -> Option<Swatch> {
    let stitches = raw.stitches.as_ref().and_then(|text| measure::halves("stitches", text, MOST_COUNTED, report));
    let rounds = raw.rounds.as_ref().and_then(|text| measure::halves("rounds", text, MOST_COUNTED, report));
    let width = raw.width.as_ref().and_then(|text| swatch_length("width", text, reading.units, report));
    let height = raw.height.as_ref().and_then(|text| swatch_length("height", text, reading.units, report));
    let grams = raw.grams.as_ref().and_then(|text| measure::grams("grams", text, report));
    let worked = Worked { stitches: stitches?, rounds: rounds?, width: width?, height: height? };
    let (width, height) = (worked.width / worked.stitches, worked.height / worked.rounds);
    for (name, size, text) in [("wide", width, &raw.width), ("high", height, &raw.height)] {
        if !(0.3..=120.0).contains(&size.mm()) {
            let message = format!("by this swatch a stitch is {:.2} mm {name}, which can't be", size.mm());
            let help = "look at the numbers and their unit: stitches across the width, rounds up the height";
            let place = text.as_ref().map(|text| text.place);
            report.add(Diagnostic::error("impossible-gauge", message).at(place).help(help));
        }
    }
    let stitch = stitch?;
    let usual = width * stitch.row().thickness;
    let thick = match &raw.thick {
        Some(text) => thickness(text, usual, reading.units, report)?,
        None => usual,
    };
    let grams = grams.map(|grams| grams / (worked.stitches * worked.rounds));
    let gauge = Gauge { width, height, thick, grams, assumed: false };
    Some(Swatch { stitch, worked, gauge, place: Some(raw.place) })
}

/// A measured thickness, which has to lie between a quarter and four times what the stitch usually has.
fn thickness(text: &Text, usual: Mm, units: Units, report: &mut Report) -> Option<Mm> {
    let thick = measure::length("thick", text, units, report)?;
    if thick >= usual * 0.25 && thick <= usual * 4.0 {
        return Some(thick);
    }
    let message = format!(
        "a fabric {:.1} mm thick can't be: with stitches of this width it has about {:.1} mm, and {:.1} to {:.1} mm \
         can be worked",
        thick.mm(),
        usual.mm(),
        usual.mm() * 0.25,
        usual.mm() * 4.0
    );
    let help = "lay the swatch between two rulers without pressing it and measure the gap, such as `thick: 3.5 mm`, or \
                leave `thick` out";
    report.add(Diagnostic::error("impossible-thickness", message).at(text.place).help(help));
    None
}

fn swatch_length(name: &str, text: &Text, units: Units, report: &mut Report) -> Option<Mm> {
    let length = measure::length(name, text, units, report)?;
    if length.mm() > 0.0 {
        return Some(length);
    }
    let message = format!("the {name} of a swatch is more than 0");
    report.add(
        Diagnostic::error("out-of-range", message).at(text.place).help("measure the middle of a swatch, lying flat"),
    );
    None
}
