//! Numbers as a language writes them, and lengths in both unit systems.

use crate::units::{Mm, Units, tidy};
use crate::words::{Language, Words};

/// A number with at most `places` decimals, without zeros at its end, with the language's decimal sign.
pub fn decimal(value: f64, places: u32, language: Language) -> String {
    tidy(value, places).to_string().replace('.', Words::of(language).decimal_mark())
}

const QUARTERS: [&str; 4] = ["", "¼", "½", "¾"];
const EIGHTHS: [&str; 8] = ["", "1/8", "¼", "3/8", "½", "5/8", "¾", "7/8"];

/// Under so many inches an eighth is seen: a quarter of an inch would be more than the millimetres beside it allow, and
/// the lengths of parts would not add up to the whole.
const FINE: f64 = 12.0;

/// Inches to the nearest quarter, `22½`; under twelve to the nearest eighth, `1 3/8`.
pub fn inches(length: Mm) -> String {
    inches_in(length, if length.inches().abs() < FINE { &EIGHTHS } else { &QUARTERS })
}

/// Inches to the nearest of the fractions named.
fn inches_in(length: Mm, names: &[&str]) -> String {
    let (inches, parts) = (length.inches(), names.len() as f64);
    let count = (inches.max(0.0) * parts).round() as u64;
    let (whole, rest) = (count / parts as u64, (count % parts as u64) as usize);
    let fraction = names.get(rest).copied().unwrap_or_default();
    match (whole, fraction) {
        (whole, "") => whole.to_string(),
        (0, fraction) => fraction.to_owned(),
        (whole, fraction) if fraction.len() > 2 => format!("{whole}\u{a0}{fraction}"),
        (whole, fraction) => format!("{whole}{fraction}"),
    }
}

/// A length in both systems, the design's own first: `57 cm (22½ in)`.
pub fn length(length: Mm, units: Units, language: Language) -> String {
    let (cm, inches) = (decimal(length.cm(), 1, language), inches(length));
    match units {
        Units::Cm => format!("{cm}\u{a0}cm ({inches}\u{a0}in)"),
        Units::Inches => format!("{inches}\u{a0}in ({cm}\u{a0}cm)"),
    }
}

/// A length in the design's own unit, without its name: to the millimetre, or to an eighth of an inch, so that the
/// figures of a column are of one kind.
pub fn bare(length: Mm, units: Units, language: Language) -> String {
    match units {
        Units::Cm => decimal(length.cm(), 1, language),
        Units::Inches => inches_in(length, &EIGHTHS),
    }
}

/// A change with its sign: `+6`, `–6`, `0`.
pub(crate) fn signed(change: i64) -> String {
    match change {
        0 => "0".to_owned(),
        up if up > 0 => format!("+{up}"),
        down => format!("–{}", down.unsigned_abs()),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn lengths_stand_in_both_systems() {
        assert_eq!(length(Mm::from_cm(57.0), Units::Cm, Language::EN), "57\u{a0}cm (22½\u{a0}in)");
        assert_eq!(
            length(Mm::from_inches(3.75), Units::Inches, Language::by_tag("de").unwrap()),
            "3¾\u{a0}in (9,5\u{a0}cm)"
        );
        assert_eq!(length(Mm::from_inches(1.375), Units::Inches, Language::EN), "1\u{a0}3/8\u{a0}in (3.5\u{a0}cm)");
    }

    #[test]
    fn rounding_carries_into_the_whole() {
        assert_eq!(inches(Mm::from_inches(2.99)), "3");
        assert_eq!(inches(Mm::from_inches(0.02)), "0");
    }
}
