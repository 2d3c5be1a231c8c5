//! Straight down: every round as the one before.

use super::{Base, Begins, Field, Form, Given, Hint, Measures, Outline, Reader, Shape, largest, of};
use crate::design::PerSize;
use crate::units::Mm;

pub(super) static FORM: Form = Form {
    word: "straight",
    about: "Goes straight down: every round has the same stitches.",
    example: "{shape: straight, depth: 9}",
    usual: &["side", "sides", "body", "wall", "band", "rim", "cuff"],
    takes: &[Field::Depth],
    settle: 0,
    begins: Begins::Edge,
    even: true,
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
    /// Straight down for this length.
    pub fn straight(depth: PerSize<Mm>) -> Self {
        Self { form: &FORM, measures: Measures { length: Some(depth), ..Measures::default() } }
    }
}

fn hint(given: &Given<'_>) -> Hint {
    if given.has(Field::Depth) { Hint::Depth } else { Hint::Nothing }
}

fn read(part: &mut Reader<'_, '_>, _: bool) -> Option<Shape> {
    part.depth().map(Shape::straight)
}

fn extent(measures: &Measures, around: Mm) -> (Mm, Mm) {
    (largest(measures.length.as_ref()), around)
}

fn outline(measures: &Measures, base: Base) -> Option<Outline> {
    // What was wished, not what whole stitches gave: a side is not to carry on the rounding of a crown.
    Some(Outline::line(base.wished, 0.0, of(measures.length.as_ref(), base.size)?.mm()))
}
