//! A flat disc that ends at a circumference.

use super::{Base, Begins, Field, Form, Given, Hint, Measures, Outline, Reader, Shape, largest, of};
use crate::design::PerSize;
use crate::units::{Mm, TURN};

pub(super) static FORM: Form = Form {
    word: "flat",
    about: "Lies flat: a crown, a base, a mat.",
    example: "{shape: flat, around: 54}",
    usual: &["crown", "base", "top"],
    takes: &[Field::Around, Field::Across],
    settle: 0,
    begins: Begins::Middle,
    even: false,
    flat: true,
    curved: false,
    closes: false,
    brim: false,
    hint,
    read,
    extent,
    outline,
};

impl Shape {
    /// A flat disc of this circumference at its edge.
    pub fn flat(around: PerSize<Mm>) -> Self {
        Self { form: &FORM, measures: Measures { around: Some(around), ..Measures::default() } }
    }
}

fn hint(given: &Given<'_>) -> Hint {
    if given.first && given.edge() { Hint::Edge } else { Hint::Nothing }
}

fn read(part: &mut Reader<'_, '_>, first: bool) -> Option<Shape> {
    // Only a first disc can end at the size: a later one would end where it begins.
    part.around(first).map(Shape::flat)
}

fn extent(measures: &Measures, _: Mm) -> (Mm, Mm) {
    let around = largest(measures.around.as_ref());
    (around / TURN, around)
}

fn outline(measures: &Measures, base: Base) -> Option<Outline> {
    let grows = of(measures.around.as_ref(), base.size)?.mm() - base.real;
    let line = Outline::line(base.real, base.factor.copysign(grows), grows.abs() / base.factor);
    // A polygon of stacked corners is no disc: its rounds are held to its sides.
    Some(Outline { flat: base.factor == TURN, ..line })
}
