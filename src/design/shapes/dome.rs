//! A dome that ends going straight down at a circumference; half a ball where the rise is the radius.

use super::outline::entered;
use super::{Base, Begins, Curve, Field, Form, Given, Hint, Measures, Outline, Reader, Shape, largest, of, place_of};
use crate::design::PerSize;
use crate::design::raw::RawPer;
use crate::design::resolve::tidy_cm;
use crate::units::{Angle, Mm, TURN, hypot};

/// Intervals of the arc table; the length is then good to a millionth.
const ARC_STEPS: usize = 512;
/// Flattest and tallest dome, rise over radius.
const RISES: std::ops::RangeInclusive<f64> = 0.15..=3.0;

pub(super) static FORM: Form = Form {
    word: "dome",
    about: "Rises round, steeper and steeper, and ends going straight down.",
    example: "{shape: dome, around: 54, rise: 9}",
    usual: &[],
    takes: &[Field::Around, Field::Across, Field::Rise],
    settle: 0,
    begins: Begins::Top,
    even: false,
    flat: false,
    curved: true,
    closes: false,
    brim: false,
    ruffles: false,
    hint,
    read,
    extent,
    outline,
};

impl Shape {
    /// A dome of this circumference at its edge and this height, measured straight down.
    pub fn dome(around: PerSize<Mm>, rise: PerSize<Mm>) -> Self {
        let measures = Measures { around: Some(around), rise: Some(rise), ..Measures::default() };
        Self { form: &FORM, measures }
    }
}

fn hint(given: &Given<'_>) -> Hint {
    if given.has(Field::Rise) { Hint::Rise } else { Hint::Nothing }
}

fn read(part: &mut Reader<'_, '_>, _: bool) -> Option<Shape> {
    let around = part.around(true)?;
    let rise = match part.raw.measure(Field::Rise) {
        Some(per) => rise_of(part, per, &around)?,
        None => around.iter().map(|around| *around / TURN).collect(),
    };
    Some(Shape::dome(around, rise))
}

fn rise_of(part: &mut Reader<'_, '_>, per: &RawPer, around: &[Mm]) -> Option<PerSize<Mm>> {
    let rise = part.lengths(Field::Rise, per, Mm::new(1.0), Mm::from_cm(100.0))?;
    for (rise, around) in rise.iter().zip(around) {
        let radius = *around / TURN;
        if !RISES.contains(&(*rise / radius)) {
            let message = format!(
                "a dome {} cm round has a radius of {} cm, and can't rise {} cm",
                tidy_cm(*around),
                tidy_cm(radius),
                tidy_cm(*rise)
            );
            // Rounded inward, so that what is named is allowed.
            let millimetres = |share: f64| radius.mm() * share;
            let (least, most) = (millimetres(*RISES.start()).ceil() / 10.0, millimetres(*RISES.end()).floor() / 10.0);
            let help = format!(
                "a dome so wide rises {least} cm to {most} cm, half a ball by its radius; write `shape: flat` for none, or add a \
                 side for more"
            );
            part.complain("out-of-range", place_of(per), message, &help);
            return None;
        }
    }
    Some(rise)
}

fn extent(measures: &Measures, _: Mm) -> (Mm, Mm) {
    let around = largest(measures.around.as_ref());
    (largest(measures.rise.as_ref()) + around / TURN, around)
}

/// Half an ellipse from the pole to its equator, entered where it is as wide as the part's beginning.
fn outline(measures: &Measures, base: Base) -> Option<Outline> {
    let around = of(measures.around.as_ref(), base.size)?.mm();
    let rise = of(measures.rise.as_ref(), base.size)?.mm();
    let radius = around / TURN;
    let mut arc = vec![0.0];
    let mut length = 0.0;
    for step in 0..ARC_STEPS {
        // Simpson's rule over one interval.
        let at = step as f64;
        let mean =
            (speed(at, radius, rise) + 4.0 * speed(at + 0.5, radius, rise) + speed(at + 1.0, radius, rise)) / 6.0;
        length += mean * TURN / 4.0 / ARC_STEPS as f64;
        arc.push(length);
    }
    let step = (entered(base.real, around) / (TURN / 4.0) * ARC_STEPS as f64).min(ARC_STEPS as f64);
    let (low, high) = (arc[step.floor() as usize], arc[step.ceil() as usize]);
    let from = low + (step - step.floor()) * (high - low);
    let length = length - from;
    let curve = Curve::Ellipse { radius, arc };
    Some(Outline { curve, from, length, shaped: length, closes: false, flat: false })
}

/// Arc length over the ellipse's parameter, at so many steps of its table.
fn speed(step: f64, radius: f64, rise: f64) -> f64 {
    let t = Angle::from_radians(step * TURN / 4.0 / ARC_STEPS as f64);
    hypot(radius * t.cos(), rise * t.sin())
}
