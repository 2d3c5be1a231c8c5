//! How often the repeat of a shaped round is worked: `repeats: 6`, the same in every size, or one of `[6, 7, 8]`.

use super::Start;
use super::fields::{Fields, word};
use super::measure;
use super::raw::RawDesign;
use super::shapes::{Form, Reader};
use super::tree::Text;
use crate::report::{Diagnostic, Report};

/// Fewest and most repeats that can be asked for.
pub(super) const LEAST: u32 = 3;
pub(super) const MOST: u32 = 60;

/// The field of a design or of a part.
pub(super) fn read(fields: &mut Fields<'_>) -> Vec<Text> {
    let Some((_, node)) = fields.take("repeats") else { return Vec::new() };
    node.one_or_more().into_iter().filter_map(|node| word("repeats", node, fields.report())).collect()
}

/// The numbers of repeats that may be used, the smallest first; none where any may.
fn counts(texts: &[Text], report: &mut Report) -> Vec<u32> {
    let one = |text: &Text| measure::count("repeats", text, LEAST, MOST, report);
    let mut counts: Vec<u32> = texts.iter().filter_map(one).collect();
    counts.sort_unstable();
    counts.dedup();
    counts
}

/// Those of the whole design, for every shaped part that says none itself; complains where corners say them already.
pub(super) fn of_design(raw: &RawDesign, cornered: bool, report: &mut Report) -> Vec<u32> {
    let parts = raw.parts.iter().flat_map(|part| &part.repeats);
    if let Some(text) = raw.repeats.iter().chain(parts).find(|_| cornered) {
        let message = "the corners of `shaping` say already how often each round repeats";
        let help = "keep `repeats`, whose shaping is scattered, or `shaping` with its corners";
        report.add(Diagnostic::error("two-measures", message).at(text.place).help(help));
        return Vec::new();
    }
    counts(&raw.repeats, report)
}

impl Reader<'_, '_> {
    /// The numbers of repeats that the shaped rounds of a part of this form may have, begun as `starts` says.
    pub(super) fn repeats(&mut self, form: &Form, starts: &[Start]) -> Vec<u32> {
        let raw = self.raw;
        if form.even {
            if let Some(text) = raw.repeats.first() {
                let help = "every round of it is worked even; `multiple` says what its count is a multiple of";
                self.complain("unused-field", text.place, "`repeats` says nothing of a straight part", help);
            }
            return Vec::new();
        }
        let own = if raw.repeats.is_empty() { self.within.repeats.to_vec() } else { counts(&raw.repeats, self.report) };
        let begun = |start: &Start| match start {
            Start::Ring { stitches } | Start::ChainRing { stitches, .. } => *stitches,
            Start::Before | Start::Chain => None,
        };
        let parted = |begun: &u32| own.is_empty() || own.iter().any(|repeats| begun.is_multiple_of(*repeats));
        // Each size may begin with a number of its own.
        if let Some(begun) = starts.iter().filter_map(begun).find(|begun| !parted(begun)) {
            let place = raw.repeats.first().map_or(raw.name.place, |text| text.place);
            let named: Vec<String> = own.iter().map(u32::to_string).collect();
            let message = format!("{begun} stitches at the start can't be parted into {} repeats", named.join(" or "));
            let help = format!(
                "begin with {} stitches, or leave the number at `start` to us",
                own[0] * begun.div_ceil(own[0])
            );
            self.complain("repeats", place, message, help);
        }
        own
    }
}
