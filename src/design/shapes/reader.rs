//! Reads what a part measures: lengths, edges and angles, one for every size.

use super::{Field, Form};
use crate::design::fields::shortened;
use crate::design::fields::{listed, unknown};
use crate::design::raw::{RawPart, RawPer, RawSize};
use crate::design::resolve::{Reading, flare_in_range, in_range, tidy_cm};
use crate::design::tree::Text;
use crate::design::{Colour, PerSize, Size, Swatch, measure};
use crate::report::{Diagnostic, Place, Report};
use crate::units::{Angle, Mm, tidy};

/// What stands before the radius of a rounded edge.
pub(in crate::design) const ROUNDED: &str = "rounded";
/// Angles by which a part may narrow, in degrees; above 0.
pub(in crate::design) const NARROWS: std::ops::RangeInclusive<f64> = 0.0..=85.0;

/// How far a hat comes down, with its depth from the middle of the crown to its edge as a share of the head: common
/// practice.
pub(in crate::design) const REACHES: &[(&str, f64)] = &[("over the ears", 0.4), ("to mid ear", 1.0 / 3.0)];
/// Fullness of ruffles: less than the first lies in no waves, and more than the last can't be pushed together.
pub(in crate::design) const FULL: std::ops::RangeInclusive<f64> = 1.2..=5.0;

/// What a part is resolved within.
pub(in crate::design) struct Within<'a> {
    pub(in crate::design) reading: Reading,
    pub(in crate::design) names: &'a [RawSize],
    pub(in crate::design) sizes: &'a [Size],
    pub(in crate::design) colours: &'a [Colour],
    pub(in crate::design) swatches: &'a [Swatch],
    pub(in crate::design) repeats: &'a [u32],
}

impl<'a> Within<'a> {
    /// The sizes as the file names them.
    pub(in crate::design) fn size_names(&self) -> Vec<&'a str> {
        self.names.iter().map(|size| size.name.text.as_str()).collect()
    }
}

/// Reads one part.
pub(in crate::design) struct Reader<'a, 'b> {
    pub(in crate::design) raw: &'a RawPart,
    pub(in crate::design) within: &'a Within<'a>,
    /// Length along the fabric of the parts before it, for every size; empty where they are written out.
    pub(in crate::design) above: &'a [Mm],
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
        let is_chain = |text: &Text| text.text.trim().eq_ignore_ascii_case("chain");
        self.raw.start.as_ref().is_some_and(|start| match start {
            RawPer::All(text) => is_chain(text),
            RawPer::Each(_, each) => each.iter().all(|(_, text)| is_chain(text)),
        })
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

    /// The depth of a straight part: a length, or as far as makes the whole hat reach the ears.
    pub(super) fn depth(&mut self) -> Option<PerSize<Mm>> {
        let share = |text: &Text| {
            let said = text.text.split_whitespace().collect::<Vec<_>>().join(" ").to_lowercase();
            REACHES.iter().find(|(words, _)| *words == said).map(|(_, share)| *share)
        };
        let Some((share, place)) = self.raw.measure(Field::Depth).and_then(|per| match per {
            RawPer::All(text) => Some((share(text)?, text.place)),
            RawPer::Each(..) => None,
        }) else {
            return self.length(Field::Depth, "depth: 9");
        };
        let sizes = self.within.sizes;
        if !self.within.reading.kind.row().worn || sizes.iter().any(|size| size.head.is_none()) {
            let help = "write the length of the part, `depth: 9`";
            self.complain("not-worn", place, "only a hat reaches the ears", help);
            return None;
        }
        if self.above.len() < sizes.len() {
            let message = "how deep the written rounds before it are is not known here";
            self.complain("missing-field", place, message, "write the length of the part, `depth: 9`");
            return None;
        }
        let mut depths = Vec::new();
        // What is folded up counts once in the depth of a hat.
        let folded = self.raw.folded.as_ref().and_then(|per| {
            let mut own = Reader { report: &mut Report::new(), ..*self };
            own.lengths_of("folded", per, Mm::ZERO, Mm::from_cm(100.0))
        });
        for (at, (size, above)) in sizes.iter().zip(self.above).enumerate() {
            let folded = folded.as_ref().and_then(|folded| folded.get(at).copied()).unwrap_or_default();
            let whole = size.head.unwrap_or_default() * share + folded;
            if whole - *above < Mm::new(1.0) {
                let message = format!(
                    "the parts before {} are {} cm long in size {}, and the hat is to be {} cm deep",
                    self.raw.name.text,
                    tidy_cm(*above),
                    size.name,
                    tidy_cm(whole)
                );
                self.complain("length-range", place, message, "make the parts before it shorter, or say a depth");
                return None;
            }
            depths.push(whole - *above);
        }
        Some(depths)
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

    /// How full ruffles are.
    pub(super) fn fullness(&mut self, per: &RawPer) -> Option<PerSize<f64>> {
        let name = Field::Fullness.word();
        self.per_size(name, per, |text, report| measure::times(name, text, FULL, report))
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
    pub(in crate::design) fn per_size<T: Copy>(
        &mut self,
        name: &str,
        per: &RawPer,
        read: impl Fn(&Text, &mut Report) -> Option<T>,
    ) -> Option<PerSize<T>> {
        match per {
            RawPer::All(text) => {
                let value = read(text, self.report)?;
                Some(vec![value; self.within.sizes.len()])
            }
            RawPer::Each(place, each) => self.each(name, *place, each, |text, _, report| read(text, report)),
        }
    }

    /// One value for every size out of those by the names of the sizes; `read` hears the index of the size.
    pub(in crate::design) fn each<V, T>(
        &mut self,
        name: &str,
        place: Place,
        each: &[(Text, V)],
        read: impl Fn(&V, usize, &mut Report) -> Option<T>,
    ) -> Option<PerSize<T>> {
        let sizes = self.within.size_names();
        for (key, _) in each.iter().filter(|(key, _)| !sizes.contains(&key.text.as_str())) {
            let message = format!("`{name}` is given for a size that there is not:");
            self.report.add(unknown("unknown-size", &message, key, &sizes));
        }
        let values: Vec<(&str, Option<T>)> = sizes
            .iter()
            .enumerate()
            .filter_map(|(index, size)| Some((index, each.iter().find(|(key, _)| key.text == *size)?)))
            .map(|(index, (key, value))| (key.text.as_str(), read(value, index, self.report)))
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
