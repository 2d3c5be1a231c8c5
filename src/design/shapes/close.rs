//! Closes what is open: narrows flat to the middle.

use super::{Base, Begins, Form, Given, Hint, Measures, Outline, Reader, Shape};
use crate::units::Mm;

pub(super) static FORM: Form = Form {
    word: "close",
    about: "Draws what is open flatly together; nothing is left open.",
    example: "{shape: close}",
    usual: &["bottom"],
    takes: &[],
    settle: 0,
    begins: Begins::Never,
    even: false,
    flat: false,
    curved: false,
    closes: true,
    brim: false,
    ruffles: false,
    hint,
    read,
    extent,
    outline,
};

impl Shape {
    /// Narrows flat to the middle.
    pub fn close() -> Self {
        Self { form: &FORM, measures: Measures::default() }
    }
}

fn hint(_: &Given<'_>) -> Hint {
    Hint::Nothing
}

fn read(_: &mut Reader<'_, '_>, _: bool) -> Option<Shape> {
    Some(Shape::close())
}

fn extent(_: &Measures, around: Mm) -> (Mm, Mm) {
    (Mm::ZERO, around)
}

fn outline(_: &Measures, base: Base) -> Option<Outline> {
    let line = Outline::line(base.real, -base.factor, base.real / base.factor);
    Some(Outline { closes: true, ..line })
}
