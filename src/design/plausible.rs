//! What can be worked but looks doubtful: gauges against the published ranges, brims too narrow to shade.

use super::fields::listed;
use super::hats::least_sun_brim;
use super::raw::RawDesign;
use super::resolve::{choose, tidy_cm};
use super::weights::YarnWeight;
use super::{Body, Design, Part, Profile, Size, Swatch};
use crate::craft::abbreviation;
use crate::report::{Diagnostic, Place, Report};
use crate::units::{EPSILON, Mm, tidy};

/// How far outside the published ranges a swatch or a hook may lie before it is mentioned; they are guidelines.
const ROOM: f64 = 0.15;

/// A head from this size on is a grown one where no age is said (ANSUR II, median of women), cm.
const GROWN_CM: f64 = 56.0;
/// Fewest stitches across a swatch that measures well.
const SWATCH_STITCHES: u32 = 8;
/// Yarn in a stitch over the usual yarn, least and most that pass; half or double of it is a slip of the scale.
const HELD: std::ops::RangeInclusive<f64> = 0.55..=1.9;
/// Flares that shade, in degrees from straight down: steeper ones are cuffs or bells, wider ones turn up.
const SHADES: std::ops::RangeInclusive<f64> = 20.0..=120.0;
/// Up to this many degrees from straight down a brim is the drop of a bucket hat.
const BUCKET: f64 = 50.0;

/// A fabric that is meant to be other than usual.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Expected {
    /// Denser, as of a toy or a basket.
    Firm,
    /// More open, as of a scarf or a net.
    Loose,
}

/// The words for it.
pub(super) const EXPECTED: &[(&str, Expected)] = &[("firm", Expected::Firm), ("loose", Expected::Loose)];

/// Looks over a resolved design and warns.
pub(super) fn look(design: &Design, raw: &RawDesign, report: &mut Report) {
    let expected = choose("expect", raw.expect.as_ref(), EXPECTED, report);
    for swatch in &design.swatches {
        proportions(swatch, design, report);
        mass(swatch, design, report);
        let weight = design.yarn.weight.and_then(|weight| YarnWeight::by_number(weight.value));
        if let Some(weight) = weight {
            density(swatch, weight, (design, expected), report);
        }
    }
    for swatch in &raw.swatches {
        let count = swatch.stitches.as_ref().and_then(|text| text.text.parse::<u32>().ok());
        if let Some(count) = count.filter(|count| *count < SWATCH_STITCHES) {
            let message = format!("a swatch {count} stitches wide is too small to measure well");
            let help = "work at least 10 cm (4 in) and measure its middle: one stitch miscounted shifts every size";
            report.add(Diagnostic::warning("small-swatch", message).at(swatch.place).help(help));
        }
    }
    hook(design, expected, raw.hook.as_ref().map(|text| text.place), report);
    if design.kind.row().worn {
        for part in &design.parts {
            brim(part, &design.sizes, report);
        }
    }
}

fn proportions(swatch: &Swatch, design: &Design, report: &mut Report) {
    let Some((least, most)) = swatch.stitch.row().ratio else { return };
    let ratio = swatch.gauge.height / swatch.gauge.width;
    if (least..=most).contains(&ratio) {
        return;
    }
    let name = abbreviation(swatch.stitch, design.terms);
    let message = format!(
        "by this swatch a round of {name} is {} times as high as a stitch is wide; usual is {least} to {most}",
        tidy(ratio, 2)
    );
    let help = "count again: stitches across `width`, rounds up `height`; a swatch worked in rounds measures best";
    report.add(Diagnostic::warning("unusual-gauge", message).at(swatch.place).help(help));
}

/// A weighed swatch against the yarn that its stitches must hold.
fn mass(swatch: &Swatch, design: &Design, report: &mut Report) {
    let usual = swatch.stitch.row().held.map(|times| swatch.gauge.width.mm() * times);
    let (Some(grams), Some(ball), Some(usual)) = (swatch.gauge.grams, design.yarn.ball, usual) else { return };
    let held = grams * ball.metres / ball.grams * 1000.0;
    if HELD.contains(&(held / usual)) {
        return;
    }
    let message = format!(
        "by its weight the swatch has {} cm of yarn in a stitch; about {} cm is usual for its width",
        tidy(held / 10.0, 1),
        tidy(usual / 10.0, 1)
    );
    let help = "weigh the swatch again, without its tails, and look at the grams and metres of the ball";
    report.add(Diagnostic::warning("unusual-weight", message).at(swatch.place).help(help));
}

/// The council gives sc in 4 in; the taller plain stitches come out about as wide, so they are measured by the same range.
fn density(swatch: &Swatch, weight: &YarnWeight, (design, expected): (&Design, Option<Expected>), report: &mut Report) {
    let in_four_inches = Mm::from_inches(4.0) / swatch.gauge.width;
    let (least, most) = weight.stitches;
    let room = if swatch.stitch == weight.stitch { ROOM } else { 2.0 * ROOM };
    if !swatch.stitch.is_plain_fabric() || (least * (1.0 - room)..=most * (1.0 + room)).contains(&in_four_inches) {
        return;
    }
    let is = if in_four_inches > most { Expected::Firm } else { Expected::Loose };
    if expected == Some(is) {
        return;
    }
    let name = abbreviation(swatch.stitch, design.terms);
    let measured_in = abbreviation(weight.stitch, design.terms);
    let message = format!(
        "{} {name} in 4 in is unusual for yarn of weight {} ({}): published are {least} to {most} {measured_in}",
        tidy(in_four_inches, 1),
        weight.number,
        weight.name
    );
    let help = "check the swatch, the yarn weight and the hook; where the fabric is meant to be so, `expect: firm` or `expect: loose` says it";
    report.add(Diagnostic::warning("unusual-gauge", message).at(swatch.place).help(help));
}

fn hook(design: &Design, expected: Option<Expected>, place: Option<Place>, report: &mut Report) {
    let weight = design.yarn.weight.and_then(|weight| YarnWeight::by_number(weight.value));
    let (Some(weight), Some(hook)) = (weight, design.hook) else { return };
    let (least, most) = weight.hook;
    if (least * (1.0 - ROOM)..=most * (1.0 + ROOM)).contains(&hook.mm()) {
        return;
    }
    let makes = if hook.mm() < least { Expected::Firm } else { Expected::Loose };
    if expected == Some(makes) {
        return;
    }
    let message = format!(
        "a hook of {} mm is unusual for yarn of weight {} ({}): published are {least} to {most} mm",
        hook.mm(),
        weight.number,
        weight.name
    );
    let help = "a thin hook makes a firm fabric, a thick one a loose one: check both figures, or say `expect: firm` or `expect: loose`";
    report.add(Diagnostic::warning("unusual-hook", message).at(place).help(help));
}

/// A brim narrower than health agencies ask for shade, in sizes whose age is known or whose head is grown.
fn brim(part: &Part, sizes: &[Size], report: &mut Report) {
    let Body::Profile(profile) = &part.body else { return };
    let Profile { shape, place, .. } = &**profile;
    let measures = shape.measures();
    let (true, Some(width), Some(angle)) = (shape.form().brim, &measures.length, &measures.flare) else { return };
    let mut narrow: Vec<(&str, Mm)> = Vec::new();
    for ((size, width), angle) in sizes.iter().zip(width).zip(angle) {
        let degrees = angle.degrees();
        if !SHADES.contains(&degrees) {
            continue;
        }
        let grown = size.age_months.is_none() && size.head.is_some_and(|head| head.cm() >= GROWN_CM - EPSILON);
        if size.age_months.is_some() || grown {
            let least = least_sun_brim(size.age_months.map(|(youngest, _)| youngest), degrees <= BUCKET);
            if *width < least {
                narrow.push((&size.name, least));
            }
        }
    }
    let Some(least) = narrow.iter().map(|(_, least)| *least).reduce(Mm::max) else { return };
    let names: Vec<&str> = narrow.iter().map(|(name, _)| *name).collect();
    let message =
        format!("the {} is narrower than health agencies ask of a sun hat for {}", part.name.value, listed(&names));
    let help = format!("for shade make it at least {} cm wide there; for show it may stay", tidy_cm(least));
    report.add(Diagnostic::warning("narrow-brim", message).at(*place).help(help));
}
