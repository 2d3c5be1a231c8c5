//! A flat disc that ends at a circumference, and one whose edge is rounded.

use super::outline::entered;
use super::{Base, Begins, Curve, Field, Form, Given, Hint, Measures, Outline, Reader, Shape, largest, of, place_of};
use crate::design::PerSize;
use crate::design::raw::RawPer;
use crate::design::resolve::tidy_cm;
use crate::units::{Mm, TURN};

pub(super) static FORM: Form = FLAT;
/// The same with a rounded edge, which bends as a dome does.
static ROUNDED: Form = Form { flat: false, curved: true, outline: rounded, ..FLAT };

const FLAT: Form = Form {
    word: "flat",
    about: "Lies flat: a crown, a base, a mat. With a rounded edge it goes over from flat to straight down.",
    example: "{shape: flat, around: 54}",
    usual: &["crown", "base", "top"],
    takes: &[Field::Around, Field::Across, Field::Edge],
    settle: 0,
    begins: Begins::Middle,
    even: false,
    flat: true,
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
    /// A flat disc of this circumference at its edge.
    pub fn flat(around: PerSize<Mm>) -> Self {
        Self { form: &FORM, measures: Measures { around: Some(around), ..Measures::default() } }
    }

    /// A disc that goes over into straight down by a quarter of a circle of this radius, and ends at this circumference.
    pub fn rounded(around: PerSize<Mm>, edge: PerSize<Mm>) -> Self {
        let measures = Measures { around: Some(around), edge: Some(edge), ..Measures::default() };
        Self { form: &ROUNDED, measures }
    }
}

fn hint(given: &Given<'_>) -> Hint {
    let said = given.edge() || given.has(Field::Edge);
    if given.first && said { Hint::Edge } else { Hint::Nothing }
}

fn read(part: &mut Reader<'_, '_>, first: bool) -> Option<Shape> {
    // Only a first disc can end at the size: a later one would end where it begins, and so would one begun on a chain.
    let around = part.around(first && !part.opens());
    let Some(per) = part.raw.measure(Field::Edge) else { return around.map(Shape::flat) };
    let edge = edge_of(part, per, (first, around.as_deref()))?;
    Some(Shape::rounded(around?, edge))
}

/// The radius of a rounded edge, which is at most that of its disc.
fn edge_of(part: &mut Reader<'_, '_>, per: &RawPer, disc: (bool, Option<&[Mm]>)) -> Option<PerSize<Mm>> {
    let name = &part.raw.name.text;
    if part.within.reading.kind.row().flat {
        let message = format!("a piece of this kind lies flat, and a rounded edge would turn the part {name} down");
        let help = "take `edge` away, or make it a bowl: `kind: bowl`, and a side after this part";
        part.complain("unused-field", place_of(per), message, help);
        return None;
    }
    let (first, Some(around)) = disc else { return None };
    if !first {
        let message = format!("`edge` rounds a crown or base that grows from its middle, and the part {name} goes on");
        let help = "take `edge` away, or give it to the first part; a `taper` bends less sharply than a flat part";
        part.complain("unused-field", place_of(per), message, help);
        return None;
    }
    let edge = part.rounded(per)?;
    let larger = edge.iter().zip(around).zip(part.within.sizes).find(|((edge, around), _)| **edge > **around / TURN);
    if let Some(((edge, around), size)) = larger {
        let radius = *around / TURN;
        let message = format!(
            "the edge is rounded by {} cm, and the part {name} has a radius of {} cm in size {}",
            tidy_cm(*edge),
            tidy_cm(radius),
            size.name
        );
        // Rounded inward, so that what is named is allowed.
        let most = radius.mm().floor() / 10.0;
        let help = format!("round it by {most} cm at most, or take `shape: dome`, which is round all over");
        part.complain("out-of-range", place_of(per), message, help);
        return None;
    }
    Some(edge)
}

fn extent(measures: &Measures, _: Mm) -> (Mm, Mm) {
    let around = largest(measures.around.as_ref());
    // A rounded edge is π/2 times as long as the part of the disc that it takes the place of.
    let edge = largest(measures.edge.as_ref()) * (TURN / 4.0 - 1.0);
    (around / TURN + edge, around)
}

/// A disc up to where its edge bends, and a quarter of a circle; entered where it is as wide as the part's beginning.
fn rounded(measures: &Measures, base: Base) -> Option<Outline> {
    let radius = of(measures.around.as_ref(), base.size)?.mm() / base.factor;
    let bend = of(measures.edge.as_ref(), base.size)?.mm().min(radius);
    let disc = radius - bend;
    let start = base.real / base.factor;
    let from = if start <= disc { start } else { disc + bend * entered(start - disc, bend) };
    let length = disc + bend * TURN / 4.0 - from;
    let curve = Curve::Rounded { disc, bend, factor: base.factor };
    Some(Outline { curve, from, length, shaped: length, closes: false, flat: false })
}

fn outline(measures: &Measures, base: Base) -> Option<Outline> {
    let grows = of(measures.around.as_ref(), base.size)?.mm() - base.real;
    let line = Outline::line(base.real, base.factor.copysign(grows), grows.abs() / base.factor);
    // A polygon of stacked corners is no disc: its rounds are held to its sides.
    Some(Outline { flat: base.factor == TURN, ..line })
}
