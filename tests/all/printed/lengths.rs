//! Lengths as they are printed, in both units, and how far rounding may take them.

use super::tongue::Tongue;

/// A printed length.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Length {
    pub(super) cm: f64,
    pub(super) inches: f64,
    /// True where inches come first.
    inches_first: bool,
}

/// A number of inches: `22½`, `1 7/8`, `¾`.
pub(super) fn inches(text: &str) -> Option<f64> {
    let parts = [("¼", 0.25), ("½", 0.5), ("¾", 0.75)];
    if let Some((whole, part)) = parts.iter().find_map(|(sign, part)| Some((text.strip_suffix(sign)?, part))) {
        let whole = if whole.is_empty() { 0.0 } else { whole.parse().ok()? };
        return Some(whole + part);
    }
    let (whole, part) = match text.rsplit_once(' ') {
        Some((whole, part)) => (whole.parse().ok()?, part),
        None if text.contains('/') => (0.0, text),
        None => return text.parse().ok(),
    };
    let (top, bottom) = part.split_once('/')?;
    Some(whole + top.parse::<f64>().ok()? / bottom.parse::<f64>().ok()?)
}

/// The inches that a text ends with.
fn last_inches(text: &str) -> Option<f64> {
    let mut words = text.rsplit(' ');
    let last = words.next()?.trim_start_matches(['(', 'Ø']);
    let both = words.next().filter(|_| last.contains('/')).and_then(|whole| inches(&format!("{whole} {last}")));
    both.or_else(|| inches(last))
}

/// Every length of a text that stands in both units.
pub(super) fn all(text: &str, tongue: &Tongue) -> Vec<Length> {
    let mut found = Vec::new();
    for (mark, end, inches_first) in [(" cm (", " in)", false), (" in (", " cm)", true)] {
        for (at, _) in text.match_indices(mark) {
            let (before, after) = (&text[..at], &text[at + mark.len()..]);
            let Some(inner) = after.find(end).map(|end| &after[..end]) else { continue };
            let lead = before.rsplit(' ').next().unwrap_or_default();
            let (cm, inches) = if inches_first {
                (tongue.decimal(inner), last_inches(before))
            } else {
                (tongue.decimal(lead), inches(inner))
            };
            found.extend(cm.zip(inches).map(|(cm, inches)| Length { cm, inches, inches_first }));
        }
    }
    found
}

/// Holds that a text is this length, in mm, within its rounding: a millimetre, a quarter of an inch, under two inches an
/// eighth.
pub(super) fn hold(text: Option<&str>, mm: f64, inches_first: bool, tongue: &Tongue, what: &str) {
    let text = text.unwrap_or_else(|| panic!("{}: no {what}", tongue.tag));
    let found = all(text, tongue);
    let [length] = found[..] else { panic!("{}: “{text}” is no length: {what}", tongue.tag) };
    let (cm, inches) = (mm / 10.0, mm / 25.4);
    let step = if inches < 2.0 { 0.0625 } else { 0.125 };
    assert!((length.cm - cm).abs() <= 0.0501, "{}: {what} is {text}, not {cm} cm", tongue.tag);
    assert!((length.inches - inches).abs() <= step + 1e-6, "{}: {what} is {text}, not {inches} in", tongue.tag);
    assert_eq!(length.inches_first, inches_first, "{}: {what} is {text}", tongue.tag);
}
