//! The published yarn weight system 0–7, and what gauge and hook go with each weight.

use crate::craft::Stitch;

/// One yarn weight.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct YarnWeight {
    /// Its number.
    pub number: u8,
    /// Its name.
    pub name: &'static str,
    /// Other names in use.
    also: &'static [&'static str],
    /// The stitch the gauge is given in.
    pub stitch: Stitch,
    /// Fewest and most stitches in 4 inches (10.16 cm).
    pub stitches: (f64, f64),
    /// Thinnest and thickest hook, mm.
    pub hook: (f64, f64),
}

const fn weight(
    number: u8,
    name: &'static str,
    also: &'static [&'static str],
    stitches: (f64, f64),
    hook: (f64, f64),
) -> YarnWeight {
    YarnWeight { number, name, also, stitch: Stitch::SC, stitches, hook }
}

/// Craft Yarn Council, standard yarn weight system, crochet gauge and hook by weight. The council calls it a guideline.
const WEIGHTS: &[YarnWeight] = &[
    YarnWeight { stitch: Stitch::DC, ..weight(0, "lace", &["thread"], (32.0, 42.0), (1.4, 2.25)) },
    weight(1, "super fine", &["sock", "fingering", "baby"], (21.0, 32.0), (2.25, 3.5)),
    weight(2, "fine", &["sport"], (16.0, 20.0), (3.5, 4.5)),
    weight(3, "light", &["dk", "light worsted"], (12.0, 17.0), (4.5, 5.5)),
    weight(4, "medium", &["worsted", "afghan", "aran"], (11.0, 14.0), (5.5, 6.5)),
    weight(5, "bulky", &["chunky", "craft", "rug"], (8.0, 11.0), (6.5, 9.0)),
    weight(6, "super bulky", &["roving"], (7.0, 9.0), (9.0, 15.0)),
    weight(7, "jumbo", &[], (1.0, 6.0), (15.0, 40.0)),
];

impl YarnWeight {
    /// The weight of this number, 0 to 7.
    pub fn by_number(number: u8) -> Option<&'static Self> {
        WEIGHTS.iter().find(|weight| weight.number == number)
    }

    /// The weight of this name: `worsted`, `DK`, `super bulky`.
    pub fn by_name(name: &str) -> Option<&'static Self> {
        let name = name.to_lowercase();
        WEIGHTS.iter().find(|weight| weight.name == name || weight.also.contains(&name.as_str()))
    }

    /// Every name in use.
    pub(super) fn every_name() -> Vec<&'static str> {
        WEIGHTS.iter().flat_map(|weight| std::iter::once(weight.name).chain(weight.also.iter().copied())).collect()
    }

    /// All names, for help.
    pub(super) fn names() -> Vec<&'static str> {
        WEIGHTS.iter().map(|weight| weight.name).collect()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Craft Yarn Council, standard yarn weight system: worsted is 4, 11–14 sc in 4 in on 5.5–6.5 mm.
    #[test]
    fn weights_by_number_and_name() {
        let medium = YarnWeight::by_number(4).unwrap();
        assert_eq!((medium.stitches, medium.hook), ((11.0, 14.0), (5.5, 6.5)));
        assert_eq!(YarnWeight::by_name("DK").map(|weight| weight.number), Some(3));
        assert_eq!(YarnWeight::by_name("worsted"), Some(medium));
        assert_eq!(YarnWeight::by_number(8), None);
    }
}
