//! How pages look: type sizes, line weights and the few colours, in the ordinary and the variant prints.

use crate::drawing::Ink;
use crate::units::Mm;

use super::Paper;
use super::lines::Setter;

/// How ink is used.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Print {
    /// One quiet accent colour and light tints.
    #[default]
    Colour,
    /// No tints, thin rules, grey in place of the accent.
    InkSaving,
    /// Black only: no grey, no tints, no yarn colours.
    Black,
}

/// The few colours of a page.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Palette {
    /// Running text.
    pub text: Ink,
    /// Heads, and the bar over a section.
    pub accent: Ink,
    /// Captions, running heads, small print.
    pub quiet: Ink,
    /// Rules and the outlines of boxes.
    pub rule: Ink,
    /// Ground under table heads and facts; nothing where ink is saved.
    pub tint: Option<Ink>,
}

impl Palette {
    /// The colours of a print. All keep their order of darkness in grey.
    pub const fn of(print: Print) -> Self {
        match print {
            Print::Colour => Self {
                text: Ink([0x1c, 0x1c, 0x1c]),
                accent: Ink([0x1b, 0x56, 0x5c]),
                quiet: Ink([0x4f, 0x5a, 0x5a]),
                rule: Ink([0x74, 0x82, 0x82]),
                tint: Some(Ink([0xec, 0xf1, 0xf0])),
            },
            Print::InkSaving => Self {
                text: Ink::BLACK,
                accent: Ink([0x45, 0x45, 0x45]),
                quiet: Ink([0x59, 0x59, 0x59]),
                rule: Ink([0x8a, 0x8a, 0x8a]),
                tint: None,
            },
            Print::Black => {
                Self { text: Ink::BLACK, accent: Ink::BLACK, quiet: Ink::BLACK, rule: Ink::BLACK, tint: None }
            }
        }
    }

    /// Every colour that carries words, with every ground it may stand on.
    pub fn text_pairs(&self) -> Vec<(Ink, Ink)> {
        let grounds = [Some(Ink::WHITE), self.tint];
        let grounds = grounds.into_iter().flatten();
        grounds.flat_map(|ground| [self.text, self.accent, self.quiet].map(|ink| (ink, ground))).collect()
    }
}

/// Sizes and places on a page, all in millimetres.
#[derive(Clone, Debug, PartialEq)]
pub struct Style {
    /// Em height of running text.
    pub text: f64,
    /// Em height of tables.
    pub table: f64,
    /// Em height of captions and running heads.
    pub small: f64,
    /// Em heights of headings by level, from the title down.
    pub heads: [f64; 3],
    /// Line distance as a factor of the em height.
    pub leading: f64,
    /// Side of a tick box.
    pub tick: f64,
    /// Hair rule.
    pub hair: f64,
    /// Strong rule.
    pub strong: f64,
    /// Left edge of everything.
    pub left: f64,
    /// Right edge of everything.
    pub right: f64,
    /// Top of the text.
    pub top: f64,
    /// Foot of the text.
    pub foot: f64,
    /// Width of a column of running text; that of the whole print area where there is no room for two.
    pub column: f64,
    /// Widest running text: about 66 characters.
    pub line_width: f64,
    /// The colours.
    pub palette: Palette,
    /// What sets the words, and remembers their widths.
    pub(super) setter: Setter,
}

/// Room between two columns, mm.
const GUTTER: f64 = 9.0;
/// Share of the em height that an average character of running text is wide in the built-in typeface.
const CHARACTER: f64 = 0.425;
/// Characters in a full line of running text.
const LINE: f64 = 66.0;
/// Fewest characters in a line of a column.
const COLUMN: f64 = 42.0;

/// A height in points as millimetres.
fn points(points: f64) -> f64 {
    Mm::from_points(points).mm()
}

impl Style {
    /// The style for a paper and a print; large print is 18 points throughout with leading 1.5.
    pub fn new(paper: &Paper, print: Print, large: bool) -> Self {
        let (width, height) = (paper.width.mm(), paper.height.mm());
        let side_margin = (width * 0.085).clamp(10.0, 18.0);
        let (left, right) = (side_margin, width - side_margin);
        let sizes = if large { [18.0, 18.0, 18.0] } else { [10.0, 9.0, 8.5] };
        let [text, table, small] = sizes.map(points);
        let line_width = text * CHARACTER * LINE;
        let half = (right - left - GUTTER) / 2.0;
        // Large letters need the whole width, and so do small sheets.
        let column = if !large && half >= text * CHARACTER * COLUMN { half } else { right - left };
        let heads = if large { [32.0, 24.0, 20.0] } else { [30.0, 14.0, 11.0] };
        Self {
            text,
            table,
            small,
            heads: heads.map(points),
            leading: if large { 1.5 } else { 1.36 },
            tick: if large { 6.0 } else { 3.1 },
            hair: if large { 0.35 } else { 0.18 },
            strong: if large { 1.4 } else { 0.9 },
            left,
            right,
            top: if large { 26.0 } else { 24.0 },
            foot: height - if large { 27.0 } else { 22.0 },
            column,
            line_width: line_width.min(right - left),
            palette: Palette::of(print),
            setter: Setter::default(),
        }
    }

    /// Width of the whole print area.
    pub fn width(&self) -> f64 {
        self.right - self.left
    }

    /// Height of the print area between the running head and the page number.
    pub fn height(&self) -> f64 {
        self.foot - self.top
    }

    /// True where running text stands in two columns.
    pub fn has_columns(&self) -> bool {
        self.column < self.width()
    }

    /// Where the second column begins, from the left edge of the first.
    pub(super) fn second_column(&self) -> f64 {
        self.column + GUTTER
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::drawing::{contrast, luminance};

    #[test]
    fn every_pair_of_colours_has_contrast_enough() {
        for print in [Print::Colour, Print::InkSaving, Print::Black] {
            let palette = Palette::of(print);
            for (ink, ground) in palette.text_pairs() {
                assert!(contrast(ink, ground) >= 4.5, "{print:?}: {ink:?} on {ground:?}");
            }
            for ground in [Some(Ink::WHITE), palette.tint].into_iter().flatten() {
                assert!(contrast(palette.rule, ground) >= 3.0, "{print:?}: rule on {ground:?}");
            }
            assert!(
                luminance(palette.accent) <= luminance(palette.quiet)
                    && luminance(palette.quiet) <= luminance(palette.rule)
            );
        }
    }

    #[test]
    fn a_full_line_holds_60_to_70_characters() {
        let style = Style::new(&Paper::a4(), Print::Colour, false);
        let sentence = "Work the first round into the ring and pull the tail until the hole has closed. ";
        let width = crate::font::Face::Regular.width(&sentence.repeat(10), style.text) / (10.0 * sentence.len() as f64);
        let characters = style.line_width / width;
        assert!((60.0..=70.0).contains(&characters), "{characters}");
    }

    #[test]
    fn columns_stand_side_by_side_where_their_lines_are_long_enough() {
        let style = Style::new(&Paper::a4(), Print::Colour, false);
        assert!(style.has_columns() && (2.0 * style.column + GUTTER - style.width()).abs() < 1e-9);
        let small = Paper::by_name("A5").unwrap();
        for narrow in [Style::new(&Paper::a4(), Print::Colour, true), Style::new(&small, Print::Colour, false)] {
            assert!(!narrow.has_columns() && (narrow.column - narrow.width()).abs() < 1e-9);
        }
    }

    #[test]
    fn large_print_is_18_points_with_leading_1_5() {
        let style = Style::new(&Paper::letter(), Print::Colour, true);
        for size in [style.text, style.table, style.small] {
            assert!(size >= Mm::from_points(18.0).mm() - 1e-9);
        }
        assert!(style.leading >= 1.5);
    }
}
