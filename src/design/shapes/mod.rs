//! Shapes of revolution: a file each, and one list.
//!
//! A [`Form`] is one row with all that is known of a shape: its word in the file, what it takes, how it is read, what it
//! promises, and its outline, the circumference at every slant length. A [`Shape`] is a form with the measures of a
//! part, one for every size. Nobody outside asks which form a shape is; they ask for what it promises.

mod close;
mod dome;
mod flare;
mod flat;
mod outline;
mod reader;
mod ruffle;
mod sphere;
mod straight;
mod taper;
#[cfg(test)]
mod tests;

pub(crate) use outline::{Base, Curve, Outline};
pub(super) use reader::{FULL, NARROWS, REACHES, ROUNDED, Reader, Within, place_of};

use super::PerSize;
use super::raw::RawPart;
use crate::units::{Angle, Mm, TURN};

/// Every shape, in the order in which a maker is told of them.
pub static FORMS: &[&Form] = &[
    &flat::FORM,
    &dome::FORM,
    &straight::FORM,
    &flare::FORM,
    &taper::FORM,
    &ruffle::FORM,
    &sphere::FORM,
    &close::FORM,
];

/// Fields of the file that measure a part, in the order in which they are complained of.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Field {
    /// Slant length of a side.
    Depth,
    /// Slant length of a brim.
    Width,
    /// Height of a dome, straight down.
    Rise,
    /// Angle from straight down by which it widens.
    Flare,
    /// Angle from straight down by which it narrows.
    Taper,
    /// Circumference at the edge.
    Around,
    /// Diameter at the edge.
    Across,
    /// How the edge goes over into what follows.
    Edge,
    /// How many times the stitches of what it stands on.
    Fullness,
}

impl Field {
    /// All of them.
    pub const ALL: [Self; 9] = [
        Self::Depth,
        Self::Width,
        Self::Rise,
        Self::Flare,
        Self::Taper,
        Self::Around,
        Self::Across,
        Self::Edge,
        Self::Fullness,
    ];

    /// Its name in the file.
    pub const fn word(self) -> &'static str {
        match self {
            Self::Depth => "depth",
            Self::Width => "width",
            Self::Rise => "rise",
            Self::Flare => "flare",
            Self::Taper => "taper",
            Self::Around => "around",
            Self::Across => "across",
            Self::Edge => "edge",
            Self::Fullness => "fullness",
        }
    }

    /// True where it is an angle or a share, which says nothing of how long a part is.
    pub(super) const fn is_angle(self) -> bool {
        matches!(self, Self::Flare | Self::Taper | Self::Fullness)
    }
}

/// What a piece can begin with.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Begins {
    /// With a ring in the middle; it can also go on from another part.
    Middle,
    /// With a ring at its top, and nowhere else.
    Top,
    /// With a ring of chains; it goes on from another part otherwise.
    Edge,
    /// It can't: it always goes on from another part.
    Never,
}

/// One shape.
#[derive(Debug)]
pub struct Form {
    /// Its word in the file.
    pub word: &'static str,
    /// What it is, in a sentence or two of the reference.
    pub about: &'static str,
    /// The fields of a part of this shape, as a maker writes them.
    pub example: &'static str,
    /// Names of parts that have this shape where the file says none.
    pub usual: &'static [&'static str],
    /// What it is measured by, in the order in which a maker is told of it.
    pub takes: &'static [Field],
    /// Even rounds at its end where the file says none.
    pub settle: u32,
    /// Where it can stand.
    pub begins: Begins,
    /// True where every round has the same circumference.
    pub even: bool,
    /// True where the fabric lies flat.
    pub flat: bool,
    /// True where its outline bends from flat towards straight down, so that every growth between them is wanted
    /// somewhere; where it closes too, the way back mirrors the way there.
    pub curved: bool,
    /// True where nothing is left open after it.
    pub closes: bool,
    /// True where it is a brim: its edge is free and shades.
    pub brim: bool,
    /// True where it is meant to ruffle.
    pub ruffles: bool,
    /// How strongly a part without a `shape` is taken for this one.
    hint: fn(&Given<'_>) -> Hint,
    /// Reads the measures; true for the first part of a piece.
    read: fn(&mut Reader<'_, '_>, bool) -> Option<Shape>,
    /// Most length along the fabric and most circumference over all sizes, from the largest circumference of a size.
    extent: fn(&Measures, Mm) -> (Mm, Mm),
    /// Its outline in one size; nothing where a measure is missing.
    outline: fn(&Measures, Base) -> Option<Outline>,
}

impl Form {
    /// True where it can grow out of a single point, as what is worked into a ring that is drawn shut does.
    pub fn leaves_a_point(&self) -> bool {
        !self.even && self.begins != Begins::Never
    }

    /// Reads a part of this shape.
    pub(super) fn read(&self, reader: &mut Reader<'_, '_>, first: bool) -> Option<Shape> {
        (self.read)(reader, first)
    }
}

/// How strongly the fields of a part tell of a shape, weakest first.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
enum Hint {
    /// They don't.
    Nothing,
    /// Where the first part ends.
    Edge,
    /// How wide it is and where it ends.
    Width,
    /// How deep it is.
    Depth,
    /// Its usual name.
    Name,
    /// How deep it is and where it ends.
    Slope,
    /// How high it rises.
    Rise,
    /// How far it flares.
    Flare,
    /// How deep it is and how far it flares, or how far it narrows.
    Angle,
}

/// What is known of a part without a `shape`.
struct Given<'a> {
    raw: &'a RawPart,
    first: bool,
    /// The shape that goes with its name.
    named: Option<&'static Form>,
}

impl Given<'_> {
    fn has(&self, field: Field) -> bool {
        self.raw.measure(field).is_some()
    }

    /// True where the part says where it ends.
    fn edge(&self) -> bool {
        self.has(Field::Around) || self.has(Field::Across)
    }
}

/// The form of this word, capitals aside.
pub(super) fn form(word: &str) -> Option<&'static Form> {
    FORMS.iter().copied().find(|form| form.word.eq_ignore_ascii_case(word))
}

/// The form that goes without saying with the fields and the name of a part.
pub(super) fn unsaid(raw: &RawPart, first: bool) -> Option<&'static Form> {
    let goes_with = |form: &&'static Form| form.usual.iter().any(|name| raw.name.text.eq_ignore_ascii_case(name));
    let given = Given { raw, first, named: FORMS.iter().copied().find(goes_with) };
    let strength = |form: &'static Form| {
        let name = if given.named.is_some_and(|named| named.word == form.word) { Hint::Name } else { Hint::Nothing };
        name.max((form.hint)(&given))
    };
    let best = FORMS.iter().copied().max_by_key(|form| strength(form))?;
    (strength(best) > Hint::Nothing).then_some(best)
}

/// What a part measures, one value for every size; nothing where its shape has no such measure. Lengths lie along the
/// fabric unless they say otherwise.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Measures {
    /// Its depth or width.
    pub length: Option<PerSize<Mm>>,
    /// Circumference at its edge, of a ball at its equator.
    pub around: Option<PerSize<Mm>>,
    /// Height from the top to the edge, straight down.
    pub rise: Option<PerSize<Mm>>,
    /// Angle from straight down: 0° goes on as a side does, 90° stands flat out, above 90° turns up; below 0° narrows.
    pub flare: Option<PerSize<Angle>>,
    /// Radius of the quarter of a circle by which its edge goes over from flat to straight down.
    pub edge: Option<PerSize<Mm>>,
    /// Stitches at its edge over those that it stands on.
    pub fullness: Option<PerSize<f64>>,
}

/// The measure of one size.
fn of<T: Copy>(measure: Option<&PerSize<T>>, size: usize) -> Option<T> {
    measure?.get(size).copied()
}

/// The largest measure of all sizes.
fn largest(measure: Option<&PerSize<Mm>>) -> Mm {
    measure.into_iter().flatten().fold(Mm::ZERO, |most, length| most.max(*length))
}

/// A shape with the measures of a part.
#[derive(Clone, Debug)]
pub struct Shape {
    form: &'static Form,
    measures: Measures,
}

impl PartialEq for Shape {
    fn eq(&self, other: &Self) -> bool {
        self.form.word == other.form.word && self.measures == other.measures
    }
}

impl Shape {
    /// Its row, with all that it promises.
    pub fn form(&self) -> &'static Form {
        self.form
    }

    /// Its measures.
    pub fn measures(&self) -> &Measures {
        &self.measures
    }

    /// The same with the measures of one size alone.
    #[must_use]
    pub(super) fn of_size(&self, size: usize) -> Self {
        let Measures { length, around, rise, flare, edge, fullness } = &self.measures;
        let lengths = |measure: &Option<PerSize<Mm>>| of(measure.as_ref(), size).map(|value| vec![value]);
        let measures = Measures {
            length: lengths(length),
            around: lengths(around),
            rise: lengths(rise),
            flare: of(flare.as_ref(), size).map(|angle| vec![angle]),
            edge: lengths(edge),
            fullness: of(fullness.as_ref(), size).map(|fullness| vec![fullness]),
        };
        Self { form: self.form, measures }
    }

    /// The angle by which it flares in a size; nothing for shapes that say none.
    pub fn flare_of(&self, size: usize) -> Option<Angle> {
        of(self.measures.flare.as_ref(), size)
    }

    /// How many times the stitches of what it stands on a ruffle has in a size; nothing for what isn't meant to ruffle.
    pub fn fullness_of(&self, size: usize) -> Option<f64> {
        of(self.measures.fullness.as_ref(), size)
    }

    /// The circumference at which a disc begins to bend in a size; nothing for what has no rounded edge.
    pub fn bends_at(&self, size: usize) -> Option<Mm> {
        let edge = of(self.measures.edge.as_ref(), size)?;
        Some(of(self.measures.around.as_ref(), size)? - edge * TURN)
    }

    /// Its outline in one size; nothing where a measure is missing.
    pub(crate) fn outline(&self, base: Base) -> Option<Outline> {
        (self.form.outline)(&self.measures, base)
    }

    /// Most length along the fabric and most circumference over all sizes, where `around` is the largest circumference
    /// of a size.
    pub(super) fn extent(&self, around: Mm) -> (Mm, Mm) {
        (self.form.extent)(&self.measures, around)
    }
}
