//! A ruffle: holds more stitches than there is room for, on purpose.

use super::{Base, Begins, Field, Form, Given, Hint, Measures, Outline, Reader, Shape, largest, of};
use crate::design::PerSize;
use crate::units::Mm;

pub(super) static FORM: Form = Form {
    word: "ruffle",
    about: "Holds so many times the stitches of what it stands on that it stands in waves: its increases come at once, and \
            the rest is even.",
    example: "{shape: ruffle, width: 4, fullness: 2}",
    usual: &["ruffle", "frill"],
    takes: &[Field::Width, Field::Fullness],
    settle: 0,
    begins: Begins::Edge,
    even: false,
    flat: false,
    curved: false,
    closes: false,
    brim: true,
    ruffles: true,
    hint,
    read,
    extent,
    outline,
};

impl Shape {
    /// Goes over this length to so many times the stitches that it begins with.
    pub fn ruffle(width: PerSize<Mm>, fullness: PerSize<f64>) -> Self {
        Self {
            form: &FORM,
            measures: Measures { length: Some(width), fullness: Some(fullness), ..Measures::default() },
        }
    }
}

fn hint(given: &Given<'_>) -> Hint {
    if given.has(Field::Fullness) { Hint::Angle } else { Hint::Nothing }
}

fn read(part: &mut Reader<'_, '_>, _: bool) -> Option<Shape> {
    let width = part.length(Field::Width, "width: 4");
    let Some(per) = part.raw.measure(Field::Fullness) else {
        let message = format!("the part {} has no `fullness`", part.raw.name.text);
        let help = "add `fullness: 2` for twice the stitches of what it stands on";
        part.complain("missing-field", part.raw.name.place, message, help);
        return None;
    };
    let fullness = part.fullness(per)?;
    Some(Shape::ruffle(width?, fullness))
}

fn extent(measures: &Measures, around: Mm) -> (Mm, Mm) {
    let fullness = measures.fullness.iter().flatten().fold(1.0_f64, |most, fullness| most.max(*fullness));
    (largest(measures.length.as_ref()), around * fullness)
}

fn outline(measures: &Measures, base: Base) -> Option<Outline> {
    let width = of(measures.length.as_ref(), base.size)?.mm();
    let fullness = of(measures.fullness.as_ref(), base.size)?;
    let shaped = width - base.settled;
    let line = Outline::line(base.real, (fullness - 1.0) * base.real / shaped.max(f64::MIN_POSITIVE), width);
    Some(Outline { shaped, ..line })
}
