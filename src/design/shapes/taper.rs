//! Widens or narrows evenly to a circumference.

use super::{Base, Begins, Field, Form, Given, Hint, Measures, Outline, Reader, Shape, largest, of};
use crate::design::PerSize;
use crate::units::Mm;

pub(super) static FORM: Form = Form {
    word: "taper",
    about: "Goes straight from one circumference to another, wider or narrower.",
    example: "{shape: taper, depth: 12, around: 62}",
    usual: &[],
    takes: &[Field::Depth, Field::Around, Field::Across],
    settle: 0,
    begins: Begins::Edge,
    even: false,
    flat: false,
    curved: false,
    closes: false,
    brim: false,
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
}

fn hint(given: &Given<'_>) -> Hint {
    // A crown that is given a depth by mistake stays flat, and is told so.
    let flat = given.named.is_some_and(|form| form.flat);
    if given.has(Field::Depth) && given.edge() && !flat { Hint::Slope } else { Hint::Nothing }
}

fn read(part: &mut Reader<'_, '_>, _: bool) -> Option<Shape> {
    let depth = part.length(Field::Depth, "depth: 9");
    let around = part.around(false)?;
    Some(Shape::taper(depth?, around))
}

fn extent(measures: &Measures, _: Mm) -> (Mm, Mm) {
    (largest(measures.length.as_ref()), largest(measures.around.as_ref()))
}

fn outline(measures: &Measures, base: Base) -> Option<Outline> {
    let depth = of(measures.length.as_ref(), base.size)?.mm();
    let around = of(measures.around.as_ref(), base.size)?.mm();
    let shaped = depth - base.settled;
    let line = Outline::line(base.real, (around - base.real) / shaped.max(f64::MIN_POSITIVE), depth);
    Some(Outline { shaped, ..line })
}
