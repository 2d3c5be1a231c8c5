//! The gauge of every stitch a design uses.

use super::texture::Texture;
use crate::craft::{Build, Round, Stitch, abbreviation};
use crate::design::{Body, Design, Part};
use crate::report::{Diagnostic, Report};
use crate::units::{Gauge, Mm};

/// Gauges of the swatches, of every stitch a part is worked in, and of the shorter stitches a finish may need.
///
/// A stitch without its own swatch is scaled from the first swatch by the usual height ratios, sc : hdc : dc : tr =
/// 1 : 1.5 : 2 : 3 (common practice), by the width and by the yarn of its row; a warning says so for every stitch a
/// part is worked in. Nothing where no swatch can be used.
pub(super) fn gauges(
    design: &Design,
    textures: &[Option<Texture>],
    report: &mut Report,
) -> Option<Vec<(Stitch, Gauge)>> {
    for swatch in &design.swatches {
        let Gauge { width, height, .. } = swatch.gauge;
        if !(sane(width.mm()) && sane(height.mm())) {
            let name = abbreviation(swatch.stitch, design.terms);
            let message = format!("the {name} swatch gives stitches without a size");
            let help = "give the width and height of the swatch and how many stitches and rounds lie in it";
            report.add(Diagnostic::error("swatch-size", message).help(help).at(swatch.place));
            return None;
        }
    }
    let Some(main) = design.swatches.first() else {
        let message = "there is no swatch, so no stitch has a size";
        let help = "work a swatch in the round and give its stitches, rounds, width and height";
        report.add(Diagnostic::error("no-swatch", message).help(help));
        return None;
    };
    let mut known: Vec<(Stitch, Gauge)> = Vec::new();
    for swatch in &design.swatches {
        if !known.iter().any(|(stitch, _)| *stitch == swatch.stitch) {
            known.push((swatch.stitch, swatch.gauge));
        }
    }
    let asked: Vec<Stitch> =
        design.parts.iter().enumerate().flat_map(|(at, part)| measured(part, textures.get(at))).collect();
    // A pattern is one fabric: what is assumed of its stitches is said once, and one swatch cures it.
    let mut told: Vec<Stitch> = Vec::new();
    for (at, part) in design.parts.iter().enumerate() {
        let Some(texture) = textures.get(at).and_then(Option::as_ref) else { continue };
        let assumed = |stitch: &Stitch| !told.contains(stitch) && !known.iter().any(|(of, _)| of == stitch);
        let assumed: Vec<Stitch> = measured(part, textures.get(at)).into_iter().filter(assumed).collect();
        if assumed.is_empty() {
            continue;
        }
        let name = |stitch: &Stitch| abbreviation(*stitch, design.terms);
        let names = in_words(&assumed.iter().map(name).collect::<Vec<_>>());
        let (part, from) = (&part.name.value, name(&main.stitch));
        let message = format!("the size of the {part} in {names} is assumed from the {from} swatch");
        let help = "work a swatch in the pattern and give it to the part: \
                    `swatch: {stitches: 18, rounds: 14, width: 10, height: 10}`";
        report.add(Diagnostic::warning("gauge-assumed", message).help(help).at(texture.place));
        told.extend(assumed);
    }
    for stitch in asked.iter().copied().chain(Stitch::all()) {
        if known.iter().any(|(of, _)| *of == stitch) {
            continue;
        }
        known.push((stitch, scaled(main.stitch, main.gauge, stitch)));
        if asked.contains(&stitch) && !told.contains(&stitch) {
            let name = |stitch| abbreviation(stitch, design.terms);
            let (own, from) = (name(stitch), name(main.stitch));
            let message = format!("the size of {own} is assumed from the {from} swatch; work a swatch in {own}");
            // The four that most work is made of; the heights after them go on by one.
            let plain = Stitch::all().filter(|stitch| stitch.is_plain_fabric()).take(4);
            let heights: Vec<String> = plain.map(|it| format!("{} {}", name(it), it.row().height)).collect();
            let help = format!("the usual heights are {}, but hands differ", heights.join(", "));
            report.add(Diagnostic::warning("gauge-assumed", message).help(help).at(main.place));
        }
    }
    Some(known)
}

/// `FPdc, BPdc and dc`.
fn in_words(names: &[&str]) -> String {
    match names {
        [most @ .., last] if !most.is_empty() => format!("{} and {last}", most.join(", ")),
        names => names.concat(),
    }
}

/// Stitches whose size a part goes by: those of its pattern, or its own; none where it has a swatch of its own.
fn measured(part: &Part, texture: Option<&Option<Texture>>) -> Vec<Stitch> {
    if matches!(&part.body, Body::Profile(profile) if profile.swatch.is_some()) {
        return Vec::new();
    }
    let Some(texture) = texture.and_then(Option::as_ref) else { return vec![part.stitch] };
    let ops = texture.sample.iter().flat_map(|round| &round.ops);
    let mut stitches: Vec<Stitch> = ops.flat_map(|op| op.made.runs()).map(|(stitch, _)| stitch).collect();
    stitches.retain(|stitch| stitch.makes_fabric());
    stitches.sort_unstable();
    stitches.dedup();
    stitches
}

/// How much wider, taller and thicker stitches are in a part than in their own swatches.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Scale {
    wide: f64,
    tall: f64,
    thick: f64,
}

impl Scale {
    /// From what stitches have to what they have in a part.
    pub(super) fn of(base: Gauge, own: Gauge) -> Self {
        Self { wide: own.width / base.width, tall: own.height / base.height, thick: own.thick / base.thick }
    }

    /// The gauge of a stitch in that part.
    pub(super) fn applied(self, gauge: Gauge) -> Gauge {
        let (width, height) = (gauge.width * self.wide, gauge.height * self.tall);
        Gauge { width, height, thick: gauge.thick * self.thick, ..gauge }
    }
}

/// For every part that has a pattern or a swatch of its own, how its stitches differ from their swatches.
pub(super) fn scales(design: &Design, gauges: &[(Stitch, Gauge)], textures: &[Option<Texture>]) -> Vec<Option<Scale>> {
    let one = |(at, part): (usize, &Part)| {
        let own = match &part.body {
            Body::Profile(profile) => profile.swatch.as_ref().map(|swatch| swatch.gauge),
            Body::Written(_) => None,
        };
        let texture = textures.get(at).and_then(Option::as_ref);
        let base = texture.map_or(of(gauges, part.stitch), |texture| mean(gauges, texture.sample.iter()));
        (own.is_some() || texture.is_some()).then(|| Scale::of(base, own.unwrap_or(base)))
    };
    design.parts.iter().enumerate().map(one).collect()
}

/// The gauge of a stitch; where it is missing, one of 5 mm.
pub(super) fn of(gauges: &[(Stitch, Gauge)], stitch: Stitch) -> Gauge {
    let known = gauges.iter().find(|(of, _)| *of == stitch).or(gauges.first());
    known.map_or(
        Gauge { width: Mm::new(5.0), height: Mm::new(5.0), thick: Mm::new(2.5), grams: None, assumed: true },
        |(_, gauge)| *gauge,
    )
}

/// The gauge that rounds of several stitches have together: the width of all that counts, chains among it, and the
/// height and thickness of all but the chains, each by its number.
pub(super) fn mean<'a>(gauges: &[(Stitch, Gauge)], rounds: impl Iterator<Item = &'a Round>) -> Gauge {
    let runs = rounds.flat_map(|round| round.ops.iter().flat_map(|op| op.made.runs()));
    let (mut count, mut tall, mut sum) = (0.0, 0.0, (0.0, 0.0, 0.0));
    for (stitch, made) in runs {
        let (gauge, made) = (of(gauges, stitch), f64::from(made * u32::from(stitch.row().counts)));
        count += made;
        sum.0 += made * gauge.width.mm();
        if stitch.row().build != Build::Chain {
            tall += made;
            sum.1 += made * gauge.height.mm();
            sum.2 += made * gauge.thick.mm();
        }
    }
    let main = of(gauges, Stitch::SC);
    if count == 0.0 || tall == 0.0 {
        return main;
    }
    let (width, height, thick) = (sum.0 / count, sum.1 / tall, sum.2 / tall);
    Gauge { width: Mm::new(width), height: Mm::new(height), thick: Mm::new(thick), grams: None, assumed: true }
}

/// The gauge of a round: of its stitch, and where its part has a pattern or a swatch of its own, of all its stitches there.
pub(super) fn of_round(gauges: &[(Stitch, Gauge)], scale: Option<Scale>, round: &Round) -> Gauge {
    scale.map_or_else(|| of(gauges, round.stitch), |scale| scale.applied(mean(gauges, std::iter::once(round))))
}

/// Whether a length of a stitch can be one.
fn sane(mm: f64) -> bool {
    mm.is_finite() && (0.05..=500.0).contains(&mm)
}

/// The gauge of one stitch scaled to another by the rows of the two.
fn scaled(from: Stitch, gauge: Gauge, to: Stitch) -> Gauge {
    let (from, to) = (from.row(), to.row());
    Gauge {
        width: gauge.width * (to.width / from.width),
        height: gauge.height * (to.height / from.height),
        thick: gauge.thick * (to.thickness * to.width / (from.thickness * from.width)),
        grams: gauge.grams.map(|grams| grams * to.yarn / from.yarn),
        assumed: true,
    }
}
