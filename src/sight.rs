//! Colours as eyes see them: light, contrast, how far two colours lie apart, and what colour-blind eyes make of them.
//!
//! A colour is red, green and blue of sRGB (IEC 61966-2-1), 0 to 255.

use core::f64::consts::E;

use crate::units::{Angle, EPSILON, TURN, hypot, power};

/// A colour: red, green, blue.
pub type Rgb = [u8; 3];

/// A channel of sRGB as light, from 0 to 1.
pub fn linear(channel: u8) -> f64 {
    let share = f64::from(channel) / 255.0;
    if share <= 0.040_45 { share / 12.92 } else { power((share + 0.055) / 1.055, 2.4) }
}

/// Light as a channel of sRGB; below 0 and above 1 as the nearest that there is.
pub fn encoded(light: f64) -> u8 {
    let light = light.clamp(0.0, 1.0);
    let share = if light <= 0.003_130_8 { light * 12.92 } else { 1.055 * power(light, 1.0 / 2.4) - 0.055 };
    (share * 255.0).round() as u8
}

/// Relative luminance by WCAG 2.2, from 0 (black) to 1 (white).
pub fn luminance(rgb: Rgb) -> f64 {
    let [red, green, blue] = rgb.map(linear);
    0.2126 * red + 0.7152 * green + 0.0722 * blue
}

/// Contrast ratio by WCAG 2.2, from 1 to 21.
pub fn contrast(one: Rgb, other: Rgb) -> f64 {
    let (one, other) = (luminance(one), luminance(other));
    (one.max(other) + 0.05) / (one.min(other) + 0.05)
}

/// Eyes that lack one of the three kinds of cones.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Eyes {
    /// Without those for long waves: red looks dark, and like green.
    Protan,
    /// Without those for middle waves: red looks like green.
    Deutan,
    /// Without those for short waves: blue looks like green.
    Tritan,
}

impl Eyes {
    /// All of them.
    pub const ALL: [Self; 3] = [Self::Protan, Self::Deutan, Self::Tritan];

    /// What they make of light, as a matrix on linear red, green and blue: Machado, Oliveira and Fernandes, A
    /// Physiologically-based Model for Simulation of Color Vision Deficiency (2009), at the severity of 1.
    const fn matrix(self) -> [[f64; 3]; 3] {
        match self {
            Self::Protan => [
                [0.152_286, 1.052_583, -0.204_868],
                [0.114_503, 0.786_281, 0.099_216],
                [-0.003_882, -0.048_116, 1.051_998],
            ],
            Self::Deutan => [
                [0.367_322, 0.860_646, -0.227_968],
                [0.280_085, 0.672_501, 0.047_413],
                [-0.011_820, 0.042_940, 0.968_881],
            ],
            Self::Tritan => [
                [1.255_528, -0.076_749, -0.178_779],
                [-0.078_411, 0.930_809, 0.147_602],
                [0.004_733, 0.691_367, 0.303_900],
            ],
        }
    }

    /// What a colour looks like to them.
    pub fn see(self, rgb: Rgb) -> Rgb {
        let light = rgb.map(linear);
        self.matrix().map(|row| encoded(row.iter().zip(light).map(|(share, light)| share * light).sum()))
    }
}

/// Lightness, green to red and blue to yellow: CIELAB (ISO/CIE 11664-4) under the daylight D65 of sRGB.
pub fn lab(rgb: Rgb) -> [f64; 3] {
    let [red, green, blue] = rgb.map(linear);
    // IEC 61966-2-1; the rows over their sums, which are white.
    let [x, y, z] = [[0.4124, 0.3576, 0.1805], [0.2126, 0.7152, 0.0722], [0.0193, 0.1192, 0.9505]].map(|[r, g, b]| {
        let share = (r * red + g * green + b * blue) / (r + g + b);
        let least = 6.0 / 29.0;
        if share > least * least * least { power(share, 1.0 / 3.0) } else { share / (3.0 * least * least) + 4.0 / 29.0 }
    });
    [116.0 * y - 16.0, 500.0 * (x - y), 200.0 * (y - z)]
}

/// How far two colours lie apart: CIEDE2000 (ISO/CIE 11664-6), in which 1 is just seen where they touch.
pub fn difference(one: Rgb, other: Rgb) -> f64 {
    apart(lab(one), lab(other))
}

/// Differences below this are hardly seen between two yarns, whose own light and shade differ by more (our choice: flat
/// colours side by side are told apart from 1 on).
const HARDLY: f64 = 10.0;

/// Who can hardly tell two colours apart.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Alike {
    /// Nobody can well.
    All,
    /// Those who see as these eyes do.
    Some(Vec<Eyes>),
}

/// Who can hardly tell two colours apart; nothing where all can.
pub fn alike(one: Rgb, other: Rgb) -> Option<Alike> {
    if difference(one, other) < HARDLY {
        return Some(Alike::All);
    }
    let blind = |eyes: &Eyes| difference(eyes.see(one), eyes.see(other)) < HARDLY;
    let eyes: Vec<Eyes> = Eyes::ALL.into_iter().filter(blind).collect();
    (!eyes.is_empty()).then_some(Alike::Some(eyes))
}

/// CIEDE2000 of two places in CIELAB.
fn apart([light, a, b]: [f64; 3], [other_light, other_a, other_b]: [f64; 3]) -> f64 {
    let seventh = |chroma: f64| {
        let chroma = power(chroma.max(1e-12), 7.0);
        (chroma / (chroma + power(25.0, 7.0))).sqrt()
    };
    let grey = 1.5 - 0.5 * seventh((hypot(a, b) + hypot(other_a, other_b)) / 2.0);
    let (a, other_a) = (a * grey, other_a * grey);
    let (chroma, other_chroma) = (hypot(a, b), hypot(other_a, other_b));
    let turned = |a: f64, b: f64| Angle::of_vector(a, b).radians().rem_euclid(TURN);
    let (hue, other_hue) = (turned(a, b), turned(other_a, other_b));
    let (turn, between) = if chroma * other_chroma == 0.0 {
        (0.0, hue + other_hue)
    } else {
        let turn = other_hue - hue;
        // The short way round.
        let turn = if turn.abs() <= TURN / 2.0 + EPSILON { turn } else { turn - TURN.copysign(turn) };
        (turn, hue + turn / 2.0)
    };
    let sine = |radians: f64| Angle::from_radians(radians).sin();
    let cosine = |times: f64, degrees: f64| (Angle::from_radians(times * between) + Angle::from_degrees(degrees)).cos();
    let (mean_light, mean_chroma) = ((light + other_light) / 2.0, (chroma + other_chroma) / 2.0);
    let along =
        1.0 - 0.17 * cosine(1.0, -30.0) + 0.24 * cosine(2.0, 0.0) + 0.32 * cosine(3.0, 6.0) - 0.2 * cosine(4.0, -63.0);
    let off = (mean_light - 50.0) * (mean_light - 50.0);
    let by_light = (other_light - light) / (1.0 + 0.015 * off / (20.0 + off).sqrt());
    let by_chroma = (other_chroma - chroma) / (1.0 + 0.045 * mean_chroma);
    let by_hue = 2.0 * (chroma * other_chroma).sqrt() * sine(turn / 2.0) / (1.0 + 0.015 * mean_chroma * along);
    let blue = (Angle::from_radians(between.rem_euclid(TURN)).degrees() - 275.0) / 25.0;
    let leaning = sine(Angle::from_degrees(60.0 * power(E, -blue * blue)).radians()) * -2.0 * seventh(mean_chroma);
    (by_light * by_light + by_chroma * by_chroma + by_hue * by_hue + leaning * by_chroma * by_hue).max(0.0).sqrt()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn contrast_is_that_of_wcag() {
        // WCAG 2.2, understanding 1.4.3 and 1.4.6; the last from the formula of the standard.
        let pairs = [([0x76; 3], 4.54), ([0x59; 3], 7.0), ([0x94; 3], 3.03), ([0, 0, 255], 8.59), ([0; 3], 21.0)];
        for (rgb, ratio) in pairs {
            assert!((contrast(rgb, [255; 3]) - ratio).abs() < 0.01, "{rgb:?}");
        }
    }

    #[test]
    fn srgb_runs_there_and_back() {
        for value in 0..=255 {
            assert_eq!(encoded(linear(value)), value);
        }
    }

    #[test]
    fn red_and_green_of_one_lightness_are_one_to_red_blind_eyes() {
        // Greys stay what they are: the rows of every matrix add up to 1, as those of the paper do.
        for eyes in Eyes::ALL {
            for row in eyes.matrix() {
                assert!((row.iter().sum::<f64>() - 1.0).abs() < 2e-6, "{eyes:?}");
            }
            for grey in [0, 90, 200, 255] {
                assert_eq!(eyes.see([grey; 3]), [grey; 3], "{eyes:?}");
            }
        }
        // The matrix at work on the primaries: its columns, as light.
        assert_eq!(Eyes::Protan.see([255, 0, 0]), [encoded(0.152_286), encoded(0.114_503), 0]);
        assert_eq!(Eyes::Deutan.see([0, 255, 0]), [encoded(0.860_646), encoded(0.672_501), encoded(0.042_94)]);
        assert_eq!(Eyes::Tritan.see([0, 0, 255]), [0, encoded(0.147_602), encoded(0.3039)]);
        // A moss and a rust that differ to most eyes; to tritan eyes still.
        let (moss, rust) = ([0x6f, 0x7a, 0x32], [0xa0, 0x62, 0x33]);
        let seen = |eyes: Eyes| difference(eyes.see(moss), eyes.see(rust));
        assert!(difference(moss, rust) > 25.0 && seen(Eyes::Tritan) > 15.0);
        assert!(seen(Eyes::Deutan) < 3.0, "{}", seen(Eyes::Deutan));
    }

    #[test]
    fn lightness_and_hues_are_those_of_cielab() {
        // The primaries of sRGB under D65, from the formulas of ISO/CIE 11664-4 (rounded to a tenth).
        let known = [
            ([255, 0, 0], [53.2, 80.1, 67.2]),
            ([0, 255, 0], [87.7, -86.2, 83.2]),
            ([0, 0, 255], [32.3, 79.2, -107.9]),
            ([255, 255, 255], [100.0, 0.0, 0.0]),
        ];
        for (rgb, place) in known {
            for (found, known) in lab(rgb).into_iter().zip(place) {
                assert!((found - known).abs() < 0.1, "{rgb:?}: {:?}", lab(rgb));
            }
        }
    }

    /// Sharma, Wu and Dalal, The CIEDE2000 Color-Difference Formula (2005), table 1: two places and how far apart.
    const PUBLISHED: [[f64; 7]; 34] = [
        [50.0, 2.6772, -79.7751, 50.0, 0.0, -82.7485, 2.0425],
        [50.0, 3.1571, -77.2803, 50.0, 0.0, -82.7485, 2.8615],
        [50.0, 2.8361, -74.0200, 50.0, 0.0, -82.7485, 3.4412],
        [50.0, -1.3802, -84.2814, 50.0, 0.0, -82.7485, 1.0],
        [50.0, -1.1848, -84.8006, 50.0, 0.0, -82.7485, 1.0],
        [50.0, -0.9009, -85.5211, 50.0, 0.0, -82.7485, 1.0],
        [50.0, 0.0, 0.0, 50.0, -1.0, 2.0, 2.3669],
        [50.0, -1.0, 2.0, 50.0, 0.0, 0.0, 2.3669],
        [50.0, 2.49, -0.001, 50.0, -2.49, 0.0009, 7.1792],
        [50.0, 2.49, -0.001, 50.0, -2.49, 0.0010, 7.1792],
        [50.0, 2.49, -0.001, 50.0, -2.49, 0.0011, 7.2195],
        [50.0, 2.49, -0.001, 50.0, -2.49, 0.0012, 7.2195],
        [50.0, -0.001, 2.49, 50.0, 0.0009, -2.49, 4.8045],
        [50.0, -0.001, 2.49, 50.0, 0.0010, -2.49, 4.8045],
        [50.0, -0.001, 2.49, 50.0, 0.0011, -2.49, 4.7461],
        [50.0, 2.5, 0.0, 50.0, 0.0, -2.5, 4.3065],
        [50.0, 2.5, 0.0, 73.0, 25.0, -18.0, 27.1492],
        [50.0, 2.5, 0.0, 61.0, -5.0, 29.0, 22.8977],
        [50.0, 2.5, 0.0, 56.0, -27.0, -3.0, 31.9030],
        [50.0, 2.5, 0.0, 58.0, 24.0, 15.0, 19.4535],
        [50.0, 2.5, 0.0, 50.0, 3.1736, 0.5854, 1.0],
        [50.0, 2.5, 0.0, 50.0, 3.2972, 0.0, 1.0],
        [50.0, 2.5, 0.0, 50.0, 1.8634, 0.5757, 1.0],
        [50.0, 2.5, 0.0, 50.0, 3.2592, 0.3350, 1.0],
        [60.2574, -34.0099, 36.2677, 60.4626, -34.1751, 39.4387, 1.2644],
        [63.0109, -31.0961, -5.8663, 62.8187, -29.7946, -4.0864, 1.2630],
        [61.2901, 3.7196, -5.3901, 61.4292, 2.2480, -4.9620, 1.8731],
        [35.0831, -44.1164, 3.7933, 35.0232, -40.0716, 1.5901, 1.8645],
        [22.7233, 20.0904, -46.6940, 23.0331, 14.9730, -42.5619, 2.0373],
        [36.4612, 47.8580, 18.3852, 36.2715, 50.5065, 21.2231, 1.4146],
        [90.8027, -2.0831, 1.4410, 91.1528, -1.6435, 0.0447, 1.4441],
        [90.9257, -0.5406, -0.9208, 88.6381, -0.8985, -0.7239, 1.5381],
        [6.7747, -0.2908, -2.4247, 5.8714, -0.0985, -2.2286, 0.6377],
        [2.0776, 0.0795, -1.1350, 0.9033, -0.0636, -0.5514, 0.9082],
    ];

    #[test]
    fn colours_lie_apart_as_published() {
        for [l, a, b, m, c, d, known] in PUBLISHED {
            let found = apart([l, a, b], [m, c, d]);
            assert!((found - known).abs() < 1e-4, "{l} {a} {b}, {m} {c} {d}: {found} for {known}");
            assert!((apart([m, c, d], [l, a, b]) - found).abs() < 1e-9);
        }
    }
}
