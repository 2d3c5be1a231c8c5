//! Colours that can be told from one another: contrast by WCAG 2.2, tints that carry black symbols, lines that show.

use super::Ink;
use crate::sight;

/// Relative luminance by WCAG 2.2, from 0 (black) to 1 (white).
pub fn luminance(Ink(rgb): Ink) -> f64 {
    sight::luminance(rgb)
}

/// Contrast ratio by WCAG 2.2, from 1 to 21.
pub fn contrast(Ink(one): Ink, Ink(other): Ink) -> f64 {
    sight::contrast(one, other)
}

/// Some of one colour, the rest of another; `share` is that of the first.
fn mix(Ink(one): Ink, Ink(other): Ink, share: f64) -> Ink {
    Ink(core::array::from_fn(|i| (f64::from(one[i]) * share + f64::from(other[i]) * (1.0 - share)).round() as u8))
}

/// The strongest tint of a colour, in steps of a twentieth, that is no darker than `least` in relative luminance.
pub(super) fn tint(ink: Ink, least: f64) -> Ink {
    let tints = (0..=20).rev().map(|twentieths| mix(ink, Ink::WHITE, f64::from(twentieths) / 20.0));
    tints.into_iter().find(|tint| luminance(*tint) >= least).unwrap_or(Ink::WHITE)
}

/// The colour itself, darkened as far as it takes to stand out from `ground` at a contrast of `least`.
pub(super) fn line(ink: Ink, ground: Ink, least: f64) -> Ink {
    let shades = (0..=20).rev().map(|twentieths| mix(ink, Ink::BLACK, f64::from(twentieths) / 20.0));
    shades.into_iter().find(|shade| contrast(*shade, ground) >= least).unwrap_or(Ink::BLACK)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_yarn_gives_a_tint_for_black_and_a_line_that_shows() {
        for rgb in [[0, 0, 0], [255, 255, 255], [0xd9, 0xc3, 0x9a], [0x2f, 0x6f, 0x8f], [255, 255, 0], [0, 0, 255]] {
            for least in [0.55, 0.75] {
                let ground = tint(Ink(rgb), least);
                assert!(contrast(Ink::BLACK, ground) > 7.0);
                assert!(contrast(line(Ink(rgb), ground, 3.0), ground) >= 3.0);
            }
        }
    }
}
