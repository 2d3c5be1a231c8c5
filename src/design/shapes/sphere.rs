//! A whole ball from pole to pole, closed at the end.

use super::outline::entered;
use super::{Base, Begins, Curve, Field, Form, Given, Hint, Measures, Outline, Reader, Shape, largest, of};
use crate::design::PerSize;
use crate::units::{Mm, TURN};

pub(super) static FORM: Form = Form {
    word: "sphere",
    about: "A ball, from pole to pole; nothing is left open.",
    example: "{shape: sphere, around: 30}",
    usual: &["ball"],
    takes: &[Field::Around, Field::Across],
    settle: 0,
    begins: Begins::Top,
    even: false,
    flat: false,
    curved: true,
    closes: true,
    brim: false,
    ruffles: false,
    hint,
    read,
    extent,
    outline,
};

impl Shape {
    /// A ball of this circumference at its equator.
    pub fn sphere(around: PerSize<Mm>) -> Self {
        Self { form: &FORM, measures: Measures { around: Some(around), ..Measures::default() } }
    }
}

fn hint(_: &Given<'_>) -> Hint {
    Hint::Nothing
}

fn read(part: &mut Reader<'_, '_>, _: bool) -> Option<Shape> {
    part.around(true).map(Shape::sphere)
}

fn extent(measures: &Measures, _: Mm) -> (Mm, Mm) {
    let around = largest(measures.around.as_ref());
    (around / 2.0, around)
}

/// A great circle from pole to pole, entered where it is as wide as the part's beginning.
fn outline(measures: &Measures, base: Base) -> Option<Outline> {
    let around = of(measures.around.as_ref(), base.size)?.mm();
    let pole_to_pole = around / 2.0;
    let from = entered(base.real, around) / (TURN / 2.0) * pole_to_pole;
    let length = pole_to_pole - from;
    Some(Outline { curve: Curve::Sine { around }, from, length, shaped: length, closes: true, flat: false })
}
