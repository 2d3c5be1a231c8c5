//! Palettes: other colours for the yarns of a design, to be tried.

use super::fields::{Fields, doubled, listed, shortened, unknown};
use super::materials::hex;
use super::printed::{Printed, printed};
use super::raw::pairs;
use super::tree::{Text, Value};
use super::{Colour, Palette};
use crate::limits;
use crate::report::{Diagnostic, Report, clean};

/// A palette as written: its name, and yarns with a colour each.
#[derive(Clone, Debug)]
pub(super) struct RawPalette {
    name: Text,
    colours: Vec<(Text, Text)>,
}

/// What a list of palettes looks like.
const EXAMPLE: &str = "write `palettes: {harbour: {sand: \"#e8e4da\", tide: \"#27406b\"}}`, with your yarns";

/// Reads the palettes of a design; none where it has none.
pub(super) fn read(design: &mut Fields<'_>) -> Vec<RawPalette> {
    let Some((_, node)) = design.take("palettes") else { return Vec::new() };
    let report = design.report();
    let what = node.what();
    let Value::Fields(written) = node.value else {
        let message = format!("`palettes` takes the name of each palette with its colours, and here is {what}");
        report.add(Diagnostic::error("wrong-kind", message).at(node.place).help(EXAMPLE));
        return Vec::new();
    };
    let mut palettes: Vec<RawPalette> = Vec::new();
    for (name, node) in written {
        if let Some(first) = palettes.iter().find(|palette| palette.name.text == name.text) {
            report.add(doubled("`palettes`", &name, first.name.place));
        } else if node.value == Value::Nothing {
            let message = format!("the palette {} has no colours", shortened(&name.text));
            report.add(Diagnostic::error("no-value", message).at(name.place).help(EXAMPLE));
        } else {
            let colours = pairs(&name, node, report);
            palettes.push(RawPalette { name, colours });
        }
    }
    palettes
}

/// Gives every yarn of every palette a colour: its own where the palette says none.
pub(super) fn resolve(raw: &[RawPalette], yarns: &[Colour], report: &mut Report) -> Vec<Palette> {
    if let Some(beyond) = raw.get(limits::PALETTES) {
        let message = format!("there are {} palettes; at most {} are tried", raw.len(), limits::PALETTES);
        let help = "keep those that you would choose among";
        report.add(Diagnostic::error("too-many-palettes", message).at(beyond.name.place).help(help));
    }
    raw.iter().take(limits::PALETTES).map(|raw| palette(raw, yarns, report)).collect()
}

fn palette(raw: &RawPalette, yarns: &[Colour], report: &mut Report) -> Palette {
    let mut colours: Vec<[u8; 3]> = yarns.iter().map(|yarn| yarn.rgb).collect();
    let known: Vec<&str> = yarns.iter().map(|yarn| yarn.name.as_str()).collect();
    for (yarn, value) in &raw.colours {
        let wanted = clean::line(&yarn.text);
        let index = known.iter().position(|name| *name == wanted);
        if known.is_empty() {
            let message = format!("there is no yarn `{}` to give a colour to", shortened(&yarn.text));
            let help = "name the colours under `yarn` first: `colours: {sand: \"#d9c39a\"}`";
            report.add(Diagnostic::error("unknown-colour", message).at(yarn.place).help(help));
        } else if index.is_none() {
            report.add(unknown("unknown-colour", "the yarn has no colour", yarn, &known));
        }
        let rgb = hex(&value.text);
        if rgb.is_none() {
            let message = format!("the colour {} is `{}`, which is no colour value", yarn.text, shortened(&value.text));
            let help = "write six hexadecimal figures in quotes, such as \"#2f6f8f\"";
            report.add(Diagnostic::error("wrong-colour", message).at(value.place).help(help));
        }
        if let Some((colour, rgb)) = index.and_then(|index| colours.get_mut(index)).zip(rgb) {
            *colour = rgb;
        }
    }
    let name = printed(Printed::Palette, &raw.name, report);
    if !raw.colours.is_empty() && yarns.iter().map(|yarn| yarn.rgb).eq(colours.iter().copied()) && !report.has_errors()
    {
        let message = format!("the palette {name} has the colours of the yarn itself");
        let help = format!("give another colour to one of {}, or take the palette away", listed(&known));
        report.add(Diagnostic::warning("same-palette", message).at(raw.name.place).help(help));
    }
    Palette { name, colours, place: Some(raw.name.place) }
}
