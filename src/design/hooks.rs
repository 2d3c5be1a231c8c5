//! Hook sizes: millimetres and the letters and numbers in common use.

use crate::units::Mm;

/// Millimetres, the US letter and number, the old UK number. Makers differ in their letters: millimetres decide.
const HOOKS: &[(f64, &str, &str)] = &[
    (2.0, "", "14"),
    (2.25, "B-1", "13"),
    (2.5, "", "12"),
    (2.75, "C-2", ""),
    (3.0, "", "11"),
    (3.25, "D-3", "10"),
    (3.5, "E-4", "9"),
    (3.75, "F-5", ""),
    (4.0, "G-6", "8"),
    (4.5, "7", "7"),
    (5.0, "H-8", "6"),
    (5.5, "I-9", "5"),
    (5.75, "J", ""),
    (6.0, "J-10", "4"),
    (6.5, "K-10 1/2", "3"),
    (7.0, "", "2"),
    (8.0, "L-11", "0"),
    (9.0, "M/N-13", "00"),
    (10.0, "N/P-15", "000"),
    (15.0, "P/Q", ""),
    (16.0, "Q", ""),
    (19.0, "S", ""),
    (25.0, "U", ""),
];

/// The US name of a hook of this diameter, such as `H-8`; nothing for a size without one.
pub fn us_hook(diameter: Mm) -> Option<&'static str> {
    let (_, us, _) = HOOKS.iter().find(|(mm, ..)| (mm - diameter.mm()).abs() < 0.02)?;
    (!us.is_empty()).then_some(*us)
}

/// The old UK number of a hook of this diameter.
pub fn uk_hook(diameter: Mm) -> Option<&'static str> {
    let (.., uk) = HOOKS.iter().find(|(mm, ..)| (mm - diameter.mm()).abs() < 0.02)?;
    (!uk.is_empty()).then_some(*uk)
}

/// The US names, for help.
pub(super) fn us_names() -> Vec<&'static str> {
    HOOKS.iter().map(|(_, us, _)| *us).filter(|us| us.len() > 1).collect()
}

/// The diameter of a hook by its US name: `H-8`, `h/8`, `K-10 1/2`.
pub fn by_us_name(name: &str) -> Option<Mm> {
    let plain = |name: &str| name.to_lowercase().replace(['/', ' ', '-'], "").replace("½", "12");
    let wanted = plain(name.trim().trim_start_matches("US ").trim_start_matches("us "));
    let found = HOOKS.iter().find(|(_, us, _)| !us.is_empty() && plain(us) == wanted);
    found.map(|(mm, ..)| Mm::new(*mm))
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Craft Yarn Council, hook sizes.
    #[test]
    fn letters_and_millimetres() {
        for (name, mm) in [("H-8", 5.0), ("g/6", 4.0), ("K-10 1/2", 6.5), ("B-1", 2.25), ("L-11", 8.0)] {
            assert_eq!(by_us_name(name), Some(Mm::new(mm)), "{name}");
        }
        assert_eq!(us_hook(Mm::new(5.0)), Some("H-8"));
        assert_eq!(uk_hook(Mm::new(4.0)), Some("8"));
        assert_eq!((us_hook(Mm::new(7.0)), by_us_name("H-9"), by_us_name("")), (None, None, None));
    }
}
