//! What can be asked of a picture or a product besides, by name.

use super::draw::{DrawOptions, Format, Picture};
use super::rows::{Named, Row};
use crate::drawing::ChartView;
use crate::geometry::piece::Stand;
use crate::page::Print;
use crate::report::Diagnostic;
use crate::story::RoundsForm;

/// How ink is used; the first is the usual way.
pub static PRINTS: [Named<Print>; 3] = [
    Named::new("colour", Print::Colour, "One accent colour, light tints, the colours of the yarn"),
    Named::new("saving", Print::InkSaving, "No tints, thin rules"),
    Named::new("black", Print::Black, "Black only"),
];

/// How the rounds of several sizes stand; the first is the usual way.
pub static ROUNDS: [Named<RoundsForm>; 3] = [
    Named::new("fitting", RoundsForm::Fitting, "Side by side where the sizes are alike enough, else one table a size"),
    Named::new("brackets", RoundsForm::Brackets, "Side by side in brackets: 72 (80, 88)"),
    Named::new("per-size", RoundsForm::PerSize, "One table a size, with measures"),
];

/// Which sizes have a chart in a booklet; the first is the usual way.
pub static CHARTS: [Named<bool>; 2] = [
    Named::new("one", false, "The middle size, with what differs in the others as a table"),
    Named::new("all", true, "Every size"),
];

/// What a chart shows.
pub static VIEWS: [Named<ChartView>; 3] = [
    Named::new("whole", ChartView::Whole, "Every round as a ring of its own"),
    Named::new("bands", ChartView::Bands, "Alike rounds as one labelled band"),
    Named::new("sector", ChartView::Sector, "One repeat, large"),
];

/// What a piece stands on; the first is the usual way.
pub static STANDS: [Named<Stand>; 2] = [
    Named::new("ground", Stand::Ground, "As it stands or lies by itself"),
    Named::new("head", Stand::Head, "A hat on a plain form of the head that it is made for"),
];

/// Frames of a piece, by their height over their width.
pub static FRAMES: [Named<f64>; 3] = [
    Named::new("square", 1.0, "As high as it is wide"),
    Named::new("tall", 1.25, "4 wide, 5 high"),
    Named::new("slim", 1.5, "2 wide, 3 high"),
];

/// An option that has its place with one picture.
struct Extra {
    name: &'static str,
    /// True where it is asked for.
    asked: fn(&DrawOptions) -> bool,
    /// The picture it belongs to.
    picture: &'static str,
    /// The format it belongs to; nothing for all.
    format: Option<Format>,
    /// What it does there.
    does: &'static str,
}

const fn extra(
    name: &'static str,
    asked: fn(&DrawOptions) -> bool,
    picture: &'static str,
    does: &'static str,
) -> Extra {
    Extra { name, asked, picture, format: None, does }
}

const EXTRAS: [Extra; 17] = [
    extra("view", |asked| asked.view.is_some(), "chart", "it says what a chart shows"),
    extra("part", |asked| asked.part.is_some(), "chart", "it says what a chart shows"),
    extra("up-to", |asked| asked.up_to.is_some(), "chart", "it says what a chart shows"),
    extra("start", |asked| asked.start.is_some(), "chart", "it turns a chart"),
    extra("repeats", |asked| asked.repeats, "chart", "it marks the repeats of a chart"),
    extra("demerits", |asked| asked.demerits, "chart", "it marks the stitches of a chart"),
    Extra {
        format: Some(Format::Pdf),
        ..extra("tiles", |asked| asked.tiles.is_some(), "chart", "it cuts a chart as .pdf")
    },
    extra("all-sizes", |asked| asked.all_sizes, "schematic", "it adds the other sizes to a schematic"),
    extra("worn", |asked| asked.worn, "schematic", "it draws a schematic of a hat on its head"),
    extra("all-symbols", |asked| asked.all_symbols, "key", "it adds to a key"),
    extra("from", |asked| asked.from.is_some(), "piece", "it says where a piece is seen from"),
    extra("turn", |asked| asked.turn.is_some(), "piece", "it turns a piece"),
    extra("parallel", |asked| asked.parallel, "piece", "it draws a piece without perspective"),
    extra("on", |asked| asked.on != Stand::Ground, "piece", "it says what a piece stands on"),
    extra("frame", |asked| asked.frame.is_some(), "piece", "it frames a piece"),
    extra("titled", |asked| asked.titled, "piece", "it puts the title into the frame of a piece"),
    Extra {
        format: Some(Format::Png),
        ..extra("pixels", |asked| asked.across.is_some(), "piece", "it says how wide a piece is as .png")
    },
];

/// The complaint about the first option that the picture has no use for in this format, with where it has its place.
pub fn misplaced(picture: &Picture, format: Format, asked: &DrawOptions) -> Option<Diagnostic> {
    let placed = |extra: &Extra| picture.name() == extra.picture && extra.format.is_none_or(|only| only == format);
    let extra = EXTRAS.iter().find(|extra| (extra.asked)(asked) && !placed(extra))?;
    let message = format!("--{} has no meaning for this picture", extra.name);
    Some(Diagnostic::error("misplaced-option", message).help(extra.does))
}
