//! Light on yarn: Lambert's cosine law, reckoned in linear light by the transfer function of sRGB (IEC 61966-2-1).

use crate::drawing::{Ink, luminance};
use crate::geometry::mesh::Vec3;
use crate::sight::{encoded, linear};

/// Light that comes from everywhere, and from the lamp: over the left shoulder of who looks.
const AMBIENT: f64 = 0.46;
const LAMP: f64 = 0.66;

/// Steps of brightness that are told apart.
const STEPS: f64 = 11.0;

/// The same of a smooth surface.
const SMOOTH: f64 = 60.0;

/// Least luminance of a yarn as drawn: black yarn shows its stitches too.
const DARKEST: f64 = 0.045;

/// The brightness of a surface whose normal, in the view, is `normal`.
pub(super) fn lambert(normal: &Vec3) -> f64 {
    let lamp = Vec3::new(-0.42, 0.62, 0.66);
    AMBIENT + LAMP * normal.dot(&lamp).max(0.0) / lamp.norm()
}

/// How much light reaches a place.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Depth {
    /// Between the strands.
    Gap,
    /// The side of a strand away from the lamp.
    Shade,
    /// A strand.
    Body,
    /// The side of a strand towards the lamp.
    Shine,
    /// The groove between two plies of a strand.
    Ply,
}

/// A yarn in some light.
pub(super) fn ink(yarn: Ink, light: f64, depth: Depth) -> Ink {
    let light = (light * STEPS).round() / STEPS;
    let bright = luminance(yarn);
    // Pale yarn lights its own gaps.
    let (share, white) = match depth {
        Depth::Gap => (0.3 + 0.28 * bright, 0.0),
        Depth::Shade => (0.5 + 0.2 * bright, 0.0),
        Depth::Body => (1.0, 0.0),
        Depth::Shine => (1.22, 0.06),
        Depth::Ply => (0.78, 0.0),
    };
    let lift = (DARKEST - bright).max(0.0);
    Ink(yarn.0.map(|value| encoded((linear(value) + lift) * light * share + white * light)))
}

/// A yarn with a lamp behind it: warm light comes through the gaps, and less of it round the strands, which are lit from
/// outside too.
pub(super) fn before_a_lamp(yarn: Ink, light: f64, depth: Depth) -> Ink {
    const WARM: [u8; 3] = [0xff, 0xd9, 0x8c];
    let light = (light * STEPS).round() / STEPS;
    let (share, through) = match depth {
        Depth::Gap => (0.3, 0.75),
        Depth::Shade => (0.36, 0.08),
        Depth::Body => (0.55, 0.1),
        Depth::Shine => (0.66, 0.16),
        Depth::Ply => (0.44, 0.08),
    };
    let lift = (DARKEST - luminance(yarn)).max(0.0);
    let outside = 0.4 + 0.6 * light;
    let one = |(own, warm): (u8, u8)| encoded((linear(own) + lift) * outside * share + linear(warm) * through);
    let mut mixed = yarn.0;
    mixed.iter_mut().zip(WARM).for_each(|(own, warm)| *own = one((*own, warm)));
    Ink(mixed)
}

/// Something smooth in some light, in steps too fine to be seen.
pub(super) fn plain(own: Ink, light: f64) -> Ink {
    let light = (light * SMOOTH).round() / SMOOTH;
    Ink(own.0.map(|value| encoded(linear(value) * light)))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn light_falls_with_the_cosine() {
        let lamp = Vec3::new(-0.42, 0.62, 0.66).normalize();
        let aside = lamp.cross(&Vec3::x()).normalize();
        let half = lamp * 0.5 + aside * 0.75_f64.sqrt();
        assert!((lambert(&lamp) - AMBIENT - LAMP).abs() < 1e-9);
        assert!((lambert(&half) - AMBIENT - LAMP / 2.0).abs() < 1e-9);
        assert!((lambert(&-lamp) - AMBIENT).abs() < 1e-9);
    }

    #[test]
    fn gaps_are_told_from_strands_in_black_and_in_white_yarn() {
        for yarn in [[0, 0, 0], [0x2c, 0x34, 0x46], [0x80, 0x20, 0x20], [255, 255, 255]] {
            let [gap, body] = [Depth::Gap, Depth::Body].map(|depth| ink(Ink(yarn), 0.9, depth));
            assert!(crate::drawing::contrast(gap, body) > 1.2, "{yarn:?}: {gap:?} {body:?}");
        }
    }

    #[test]
    fn light_comes_through_the_gaps_of_a_shade() {
        for yarn in [[0, 0, 0], [0x2c, 0x34, 0x46], [0x80, 0x20, 0x20], [0xe8, 0xd9, 0xbc], [255, 255, 255]] {
            let [gap, body] = [Depth::Gap, Depth::Body].map(|depth| before_a_lamp(Ink(yarn), 0.9, depth));
            assert!(luminance(gap) > luminance(body), "{yarn:?}: {gap:?} {body:?}");
            assert!(crate::drawing::contrast(gap, body) > 1.15, "{yarn:?}: {gap:?} {body:?}");
        }
    }
}
