//! The gauge of every stitch a design uses.

use crate::craft::{Stitch, abbreviation};
use crate::design::Design;
use crate::report::{Diagnostic, Report};
use crate::units::Gauge;

/// Gauges of the swatches, of every stitch a part is worked in, and of the shorter stitches a finish may need.
///
/// A stitch without its own swatch is scaled from the first swatch by the usual height ratios, sc : hdc : dc : tr =
/// 1 : 1.5 : 2 : 3 (common practice), by the width and by the yarn of its row; a warning says so for every stitch a
/// part is worked in. Nothing where no swatch can be used.
pub(super) fn gauges(design: &Design, report: &mut Report) -> Option<Vec<(Stitch, Gauge)>> {
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
    let asked: Vec<Stitch> = design.parts.iter().map(|part| part.stitch).collect();
    for stitch in asked.iter().copied().chain(Stitch::all()) {
        if known.iter().any(|(of, _)| *of == stitch) {
            continue;
        }
        known.push((stitch, scaled(main.stitch, main.gauge, stitch)));
        if asked.contains(&stitch) {
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
