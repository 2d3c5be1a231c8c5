//! The photograph of the cover: which file, and what it shows in words.

use super::Photograph;
use super::fields::{Fields, shortened};
use super::model::Said;
use super::printed::{Printed, printed};
use super::rows::PHOTOGRAPH;
use super::tree::{Text, Value};
use crate::report::{Diagnostic, Report};

/// A photograph as written.
#[derive(Clone, Debug)]
pub(super) struct RawPhotograph {
    file: Option<Text>,
    alt: Option<Text>,
}

/// What one looks like.
const EXAMPLE: &str = "write `photo: {file: hat.jpg, alt: \"A blue hat on a wooden peg\"}`: the file, and what it shows for \
                       those who can't see it";

/// Reads the photograph of a design; nothing where it has none.
pub(super) fn read(design: &mut Fields<'_>) -> Option<RawPhotograph> {
    let (_, node) = design.take("photo")?;
    let report = design.report();
    if !matches!(node.value, Value::Fields(_)) {
        let message = format!("`photo` takes a file and its words, and here is {}", node.what());
        report.add(Diagnostic::error("wrong-kind", message).at(node.place).help(EXAMPLE));
        return None;
    }
    let mut fields = Fields::open(node, "the photograph", &PHOTOGRAPH, report)?;
    let file = fields.needed("file");
    if !fields.has("alt") {
        let message = "the photograph has no `alt`, the words that stand for it where it can't be seen";
        let place = fields.place();
        fields.report().add(Diagnostic::error("photo-without-words", message).at(place).help(EXAMPLE));
    }
    Some(RawPhotograph { file, alt: fields.text("alt") })
}

/// The photograph, where both its file and its words are there.
pub(super) fn resolve(raw: &RawPhotograph, report: &mut Report) -> Option<Photograph> {
    let alt = raw.alt.as_ref().map(|text| printed(Printed::Alt, text, report));
    let file = raw.file.as_ref()?;
    // What names a drive or begins at the root is found on one machine only, and tells whose that is.
    let elsewhere = file.text.starts_with(['/', '\\', '~']) || file.text.chars().nth(1) == Some(':');
    if elsewhere || file.text.is_empty() {
        let message = format!("`{}` is no path from the design to a file beside it", shortened(&file.text));
        let help = "put the photograph beside the design and write its name: `file: hat.jpg`, `file: pictures/hat.jpg`";
        report.add(Diagnostic::error("photo-elsewhere", message).at(file.place).help(help));
        return None;
    }
    Some(Photograph { file: Said { value: file.text.clone(), place: Some(file.place) }, alt: alt? })
}
