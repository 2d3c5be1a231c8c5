//! Reads what a part measures: lengths, edges and angles, one for every size.

use super::{Field, Form};
use crate::design::fields::shortened;
use crate::design::fields::{listed, unknown};
use crate::design::raw::{RawPart, RawPer, RawSize};
use crate::design::resolve::{Reading, flare_in_range, in_range};
use crate::design::tree::Text;
use crate::design::{Colour, PerSize, Size, Swatch, measure};
use crate::report::{Diagnostic, Place, Report};
use crate::units::{Angle, Mm, tidy};

/// What stands before the radius of a rounded edge.
pub(in crate::design) const ROUNDED: &str = "rounded";
/// Angles by which a part may narrow, in degrees; above 0.
pub(in crate::design) const NARROWS: std::ops::RangeInclusive<f64> = 0.0..=85.0;

/// What a part is resolved within.
pub(in crate::design) struct Within<'a> {
    pub(in crate::design) reading: Reading,
    pub(in crate::design) names: &'a [RawSize],
    pub(in crate::design) sizes: &'a [Size],
    pub(in crate::design) colours: &'a [Colour],
    pub(in crate::design) swatches: &'a [Swatch],
}

/// Reads one part.
pub(in crate::design) struct Reader<'a, 'b> {
    pub(in crate::design) raw: &'a RawPart,
    pub(in crate::design) within: &'a Within<'a>,
    pub(in crate::design) report: &'b mut Report,
}

impl Reader<'_, '_> {
    pub(in crate::design) fn complain(
        &mut self,
        code: &'static str,
        place: Place,
        message: impl Into<String>,
        help: impl Into<String>,
    ) {
        self.report.add(Diagnostic::error(code, message).at(place).help(help));
    }

    /// True where it is said to begin on a chain as long as the size.
    pub(super) fn opens(&self) -> bool {
        self.raw.start.as_ref().is_some_and(|start| start.text.trim().eq_ignore_ascii_case("chain"))
    }

    /// Complains of measures that say nothing about a part of this form, and of those that say one thing twice.
    pub(in crate::design) fn unused(&mut self, form: &Form) {
        let raw = self.raw;
        let takes: Vec<&str> = form.takes.iter().map(|field| field.word()).collect();
        for (field, per) in raw.measures.iter().filter(|(field, _)| !form.takes.contains(field)) {
            let message = format!("`{}` says nothing about a part of shape {}", field.word(), form.word);
            let help = match takes.as_slice() {
                _ if *field == Field::Edge => {
                    "the edge of a crown or base is rounded: give `edge` to that part".to_owned()
                }
                [] => "take it away; the shape follows from the part before".to_owned(),
                takes => format!("this shape takes {}", listed(takes)),
            };
            self.complain("unused-field", place_of(per), message, help);
        }
        if let (Some(around), Some(_)) = (raw.measure(Field::Around), raw.measure(Field::Across)) {
            let help = "keep `around` or `across`";
            self.complain("two-measures", place_of(around), "the end is measured in two ways", help);
        }
        // An angle leads to one edge and an edge is reached by one angle.
        let said = |field: Field| raw.measure(field).filter(|_| form.takes.contains(&field));
        let flare = said(Field::Flare).or(said(Field::Taper));
        if let Some(flare) = flare.filter(|_| raw.measures_edge()) {
            let help = "keep the angle, or the measurement of the edge";
            self.complain("two-measures", place_of(flare), "the flare is said in two ways", help);
        }
    }

    /// Circumference at the edge: as said, across times π, or where allowed that of the size.
    pub(super) fn around(&mut self, of_size: bool) -> Option<PerSize<Mm>> {
        let (least, most) = (Mm::from_cm(0.5), Mm::from_cm(2000.0));
        let raw = self.raw;
        match (raw.measure(Field::Around), raw.measure(Field::Across)) {
            (Some(per), _) => self.lengths(Field::Around, per, least, most),
            (None, Some(per)) => {
                let across = self.lengths(Field::Across, per, least, most)?;
                Some(across.into_iter().map(|across| across * core::f64::consts::PI).collect())
            }
            (None, None) if of_size => Some(self.within.sizes.iter().map(|size| size.around).collect()),
            (None, None) => {
                let message = format!("the part {} does not say where it ends", raw.name.text);
                let help = "add `around:` with its circumference there, or `across:` with its diameter";
                self.complain("missing-field", raw.name.place, message, help);
                None
            }
        }
    }

    /// A length along the fabric that has to be there.
    pub(super) fn length(&mut self, field: Field, example: &str) -> Option<PerSize<Mm>> {
        let Some(per) = self.raw.measure(field) else {
            let message = format!("the part {} has no `{}`", self.raw.name.text, field.word());
            let help = format!("add it, for example `{example}`; it is measured along the fabric");
            self.complain("missing-field", self.raw.name.place, message, help);
            return None;
        };
        self.lengths(field, per, Mm::new(1.0), Mm::from_cm(300.0))
    }

    /// Lengths within a range.
    pub(super) fn lengths(&mut self, field: Field, per: &RawPer, least: Mm, most: Mm) -> Option<PerSize<Mm>> {
        self.lengths_of(field.word(), per, least, most)
    }

    /// The same for a field of any name.
    pub(in crate::design) fn lengths_of(
        &mut self,
        name: &str,
        per: &RawPer,
        least: Mm,
        most: Mm,
    ) -> Option<PerSize<Mm>> {
        let units = self.within.reading.units;
        self.per_size(name, per, |text, report| {
            let length = measure::length(name, text, units, report)?;
            in_range(name, length, least, most, text.place, report).then_some(length)
        })
    }

    /// Angles from straight down.
    pub(super) fn angle(&mut self, per: &RawPer) -> Option<PerSize<Angle>> {
        self.per_size(Field::Flare.word(), per, |text, report| {
            let angle = measure::angle(Field::Flare.word(), text, report)?;
            flare_in_range(angle, text.place, report).then_some(angle)
        })
    }

    /// Angles from straight down by which a part narrows.
    pub(super) fn narrowing(&mut self, per: &RawPer) -> Option<PerSize<Angle>> {
        let name = Field::Taper.word();
        self.per_size(name, per, |text, report| {
            let angle = measure::angle(name, text, report)?;
            if angle.degrees() > 0.0 && NARROWS.contains(&angle.degrees()) {
                return Some(angle);
            }
            let message = format!("a taper of {}° can't be worked", tidy(angle.degrees(), 1));
            let help = "0° would go on straight down and 90° flat inward; what widens is said by `flare`, and what lies flat \
                        by `shape: flat` with its `around`";
            report.add(Diagnostic::error("out-of-range", message).at(text.place).help(help));
            None
        })
    }

    /// Radii of rounded edges.
    pub(super) fn rounded(&mut self, per: &RawPer) -> Option<PerSize<Mm>> {
        let (name, units) = (Field::Edge.word(), self.within.reading.units);
        self.per_size(name, per, |text, report| {
            let words = text.text.trim();
            let radius = words.get(..ROUNDED.len()).filter(|word| word.eq_ignore_ascii_case(ROUNDED));
            let Some(radius) = radius.and_then(|_| words.get(ROUNDED.len()..)) else {
                let message = format!("`edge` can't be `{}`", shortened(&text.text));
                let help = "write `rounded` and the radius by which it bends, such as `edge: rounded 2 cm`; without `edge` \
                            it is folded sharply";
                report.add(Diagnostic::error("unknown-value", message).at(text.place).help(help));
                return None;
            };
            let radius = Text { text: radius.trim().to_owned(), place: text.place };
            let length = measure::length(name, &radius, units, report)?;
            in_range(name, length, Mm::new(1.0), Mm::from_cm(100.0), text.place, report).then_some(length)
        })
    }

    /// One value for every size, in their order.
    fn per_size<T: Copy>(
        &mut self,
        name: &str,
        per: &RawPer,
        read: impl Fn(&Text, &mut Report) -> Option<T>,
    ) -> Option<PerSize<T>> {
        let (place, each) = match per {
            RawPer::All(text) => {
                let value = read(text, self.report)?;
                return Some(vec![value; self.within.sizes.len()]);
            }
            RawPer::Each(place, each) => (*place, each),
        };
        let sizes: Vec<&str> = self.within.names.iter().map(|size| size.name.text.as_str()).collect();
        for (key, _) in each.iter().filter(|(key, _)| !sizes.contains(&key.text.as_str())) {
            let message = format!("`{name}` is given for a size that there is not:");
            self.report.add(unknown("unknown-size", &message, key, &sizes));
        }
        let values: Vec<(&str, Option<T>)> = sizes
            .iter()
            .filter_map(|size| each.iter().find(|(key, _)| key.text == *size))
            .map(|(key, text)| (key.text.as_str(), read(text, self.report)))
            .collect();
        let missing: Vec<&str> =
            sizes.iter().copied().filter(|size| !values.iter().any(|(name, _)| name == size)).collect();
        if !missing.is_empty() {
            let message = format!("`{name}` has no value for {}", listed(&missing));
            let help = "give one for each size, or a single value for all";
            self.complain("missing-size", place, message, help);
            return None;
        }
        values.into_iter().map(|(_, value)| value).collect()
    }
}

/// Where a measure stands.
pub(in crate::design) fn place_of(per: &RawPer) -> Place {
    match per {
        RawPer::All(text) => text.place,
        RawPer::Each(place, _) => *place,
    }
}
