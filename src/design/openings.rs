//! Openings of a part, handles and eyelets: chains over stitches that are left out, evenly round a stated round.

use super::fields::{Fields, shortened};
use super::measure;
use super::model::{Opening, OpeningWidth};
use super::rows::{OPENING, phrase};
use super::shapes::{Form, Reader};
use super::tree::{Node, Text};
use crate::limits;
use crate::report::{Place, Report};
use crate::units::Mm;

/// Most openings in a round.
pub(super) const MOST: u32 = 200;
/// A width in stitches.
pub(super) const STITCHES: &[&str] = &["# stitches", "# stitch", "# sts", "# st"];

/// The openings of one round as written.
#[derive(Clone, Debug)]
pub(super) struct RawOpening {
    pub(super) place: Place,
    round: Option<Text>,
    number: Option<Text>,
    width: Option<Text>,
}

/// The field of a part: one group, or a list of them.
pub(super) fn read(part: &mut Fields<'_>) -> Vec<RawOpening> {
    let Some((_, node)) = part.take("openings") else { return Vec::new() };
    node.one_or_more().into_iter().filter_map(|node| opening(node, part.report())).collect()
}

fn opening(node: Node, report: &mut Report) -> Option<RawOpening> {
    let mut fields = Fields::open(node, "a round of openings", &OPENING, report)?;
    let place = fields.place();
    Some(RawOpening {
        place,
        round: fields.needed("round"),
        number: fields.text("number"),
        width: fields.text("width"),
    })
}

impl Reader<'_, '_> {
    /// The openings of a part of this form.
    pub(super) fn openings(&mut self, form: &Form) -> Vec<Opening> {
        let raw = self.raw;
        if let Some(first) = raw.openings.first().filter(|_| form.closes) {
            let message = format!("the part {} closes, and has no room for openings", raw.name.text);
            self.complain("unused-field", first.place, message, "give `openings` to the straight part before it");
            return Vec::new();
        }
        raw.openings.iter().filter_map(|raw| self.opening(raw)).collect()
    }

    fn opening(&mut self, raw: &RawOpening) -> Option<Opening> {
        let round = measure::count("round", raw.round.as_ref()?, 1, limits::ROUNDS, self.report)?;
        let number = match &raw.number {
            Some(text) => measure::count("number", text, 1, MOST, self.report)?,
            None => 2,
        };
        let width = match &raw.width {
            None => OpeningWidth::Stitches(1),
            Some(text) => self.opening_width(text)?,
        };
        Some(Opening { round, number, width, place: Some(raw.place) })
    }

    fn opening_width(&mut self, text: &Text) -> Option<OpeningWidth> {
        if let Some((_, counts)) = phrase(STITCHES, &text.text) {
            let stitches = counts.first().copied().filter(|stitches| (1..=limits::STITCHES).contains(stitches));
            if stitches.is_none() {
                let message = format!("an opening can't be `{}` wide", shortened(&text.text));
                self.complain("out-of-range", text.place, message, "write `width: 3 stitches`, or a length");
            }
            return stitches.map(OpeningWidth::Stitches);
        }
        let length = measure::length("width", text, self.within.reading.units, self.report)?;
        let (least, most) = (Mm::new(1.0), Mm::from_cm(100.0));
        super::resolve::in_range("width", length, least, most, text.place, self.report)
            .then_some(OpeningWidth::Length(length))
    }
}
