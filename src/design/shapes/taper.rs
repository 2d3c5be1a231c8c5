//! Widens or narrows evenly, to a circumference or by an angle.

use super::{Base, Begins, Field, Form, Given, Hint, Measures, Outline, Reader, Shape, largest, of, place_of};
use crate::design::PerSize;
use crate::units::{Angle, Mm, TURN};

pub(super) static FORM: Form = Form {
    word: "taper",
    about: "Goes straight from one circumference to another, wider or narrower: to the one said, or by an angle from \
            straight down, out by `flare` or in by `taper`.",
    example: "{shape: taper, depth: 12, around: 62}",
    usual: &[],
    takes: &[Field::Depth, Field::Around, Field::Across, Field::Flare, Field::Taper],
    settle: 0,
    begins: Begins::Edge,
    even: false,
    flat: false,
    curved: false,
    closes: false,
    brim: false,
    ruffles: false,
    hint,
    read,
    extent,
    outline,
};

impl Shape {
    /// Goes to this circumference over this slant length.
    pub fn taper(depth: PerSize<Mm>, around: PerSize<Mm>) -> Self {
        Self { form: &FORM, measures: Measures { length: Some(depth), around: Some(around), ..Measures::default() } }
    }

    /// Goes over this slant length at this angle from straight down: wider, or narrower where it is below nought.
    pub fn slope(depth: PerSize<Mm>, angle: PerSize<Angle>) -> Self {
        Self { form: &FORM, measures: Measures { length: Some(depth), flare: Some(angle), ..Measures::default() } }
    }
}

fn hint(given: &Given<'_>) -> Hint {
    // A crown that is given a depth by mistake stays flat, and is told so.
    let flat = given.named.is_some_and(|form| form.flat);
    // A brim that is given a depth for its width stays one.
    let brim = given.named.is_some_and(|form| form.brim);
    let depth = given.has(Field::Depth);
    match (given.has(Field::Taper), given.has(Field::Flare)) {
        (_, true) if depth && !brim => Hint::Angle,
        (true, _) => Hint::Angle,
        (false, _) if depth && given.edge() && !flat => Hint::Slope,
        (false, _) => Hint::Nothing,
    }
}

fn read(part: &mut Reader<'_, '_>, _: bool) -> Option<Shape> {
    let depth = part.length(Field::Depth, "depth: 9");
    let raw = part.raw;
    match (raw.measure(Field::Flare), raw.measure(Field::Taper)) {
        (Some(flare), None) => {
            let angle = part.angle(flare)?;
            Some(Shape::slope(depth?, angle))
        }
        (None, Some(taper)) => {
            let angle = part.narrowing(taper)?;
            Some(Shape::slope(depth?, angle.into_iter().map(|angle| angle * -1.0).collect()))
        }
        (Some(_), Some(taper)) => {
            let help = "keep `flare`, by which it widens, or `taper`, by which it narrows";
            part.complain("two-measures", place_of(taper), "the slope is said in two ways", help);
            None
        }
        (None, None) if !raw.measures_edge() => {
            let message = format!("the part {} does not say where it ends", raw.name.text);
            let help = "add `around:` with its circumference there or `across:` with its diameter; or its angle from straight \
                        down, `flare: 20°` outward or `taper: 20°` inward";
            part.complain("missing-field", raw.name.place, message, help);
            None
        }
        (None, None) => {
            let around = part.around(false)?;
            Some(Shape::taper(depth?, around))
        }
    }
}

fn extent(measures: &Measures, around: Mm) -> (Mm, Mm) {
    let depth = largest(measures.length.as_ref());
    match &measures.around {
        Some(_) => (depth, largest(measures.around.as_ref())),
        // At most flat out.
        None => (depth, around + depth * TURN),
    }
}

fn outline(measures: &Measures, base: Base) -> Option<Outline> {
    let depth = of(measures.length.as_ref(), base.size)?.mm();
    let shaped = depth - base.settled;
    let Some(around) = of(measures.around.as_ref(), base.size) else {
        let line = Outline::line(base.real, base.factor * of(measures.flare.as_ref(), base.size)?.sin(), depth);
        return Some(Outline { shaped, ..line });
    };
    let around = around.mm();
    let line = Outline::line(base.real, (around - base.real) / shaped.max(f64::MIN_POSITIVE), depth);
    Some(Outline { shaped, ..line })
}
