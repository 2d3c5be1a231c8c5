//! A brim: widens at an angle from straight down.

use super::{Base, Begins, Field, Form, Given, Hint, Measures, Outline, Reader, Shape, largest, of};
use crate::design::PerSize;
use crate::units::{Angle, Mm, TURN};

pub(super) static FORM: Form = Form {
    word: "flare",
    about: "Widens at one angle: a brim. Said by its outer edge instead, it goes straight to it.",
    example: "{shape: flare, width: 7.5, flare: 55°}",
    usual: &["brim"],
    takes: &[Field::Width, Field::Flare, Field::Around, Field::Across],
    // A brim that ends on shaping ruffles (common practice).
    settle: 2,
    begins: Begins::Edge,
    even: false,
    flat: false,
    curved: false,
    closes: false,
    brim: true,
    ruffles: false,
    hint,
    read,
    extent,
    outline,
};

impl Shape {
    /// Widens over this length at this angle from straight down.
    pub fn flare(width: PerSize<Mm>, angle: PerSize<Angle>) -> Self {
        Self { form: &FORM, measures: Measures { length: Some(width), flare: Some(angle), ..Measures::default() } }
    }
}

fn hint(given: &Given<'_>) -> Hint {
    match (given.has(Field::Flare), given.has(Field::Width) && given.edge()) {
        (true, _) => Hint::Flare,
        (false, true) => Hint::Width,
        (false, false) => Hint::Nothing,
    }
}

fn read(part: &mut Reader<'_, '_>, _: bool) -> Option<Shape> {
    let width = part.length(Field::Width, "width: 7.5");
    match part.raw.measure(Field::Flare) {
        // Said by its outer edge it is a taper that keeps the usual even rounds of a brim.
        None if part.raw.measures_edge() => {
            let width = width?;
            Some(Shape::taper(width, part.around(false)?))
        }
        None => {
            let message = format!("the part {} has no `flare`", part.raw.name.text);
            let help = "add `flare: 55°` (0° straight down, 90° flat out), or `around:` with its outer edge";
            part.complain("missing-field", part.raw.name.place, message, help);
            None
        }
        Some(flare) => {
            let angle = part.angle(flare);
            Some(Shape::flare(width?, angle?))
        }
    }
}

fn extent(measures: &Measures, around: Mm) -> (Mm, Mm) {
    let width = largest(measures.length.as_ref());
    (width, around + width * TURN)
}

fn outline(measures: &Measures, base: Base) -> Option<Outline> {
    let width = of(measures.length.as_ref(), base.size)?.mm();
    let angle = of(measures.flare.as_ref(), base.size)?;
    let line = Outline::line(base.real, base.factor * angle.sin(), width);
    // The even rounds at the end lie at the same angle but grow no more.
    Some(Outline { shaped: width - base.settled, ..line })
}
