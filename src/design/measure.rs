//! Lengths, angles, shares and counts as a maker writes them: `12.4`, `9 cm`, `3 1/2 in`, `55°`, `-2 %`.

use super::fields::shortened;
use super::tree::Text;
use crate::report::{Diagnostic, Report};
use crate::units::{Angle, EPSILON, Mm, Units};

/// A unit that may stand behind a number.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Unit {
    None,
    Mm,
    Cm,
    Metre,
    Inch,
    Yard,
    Degree,
    Percent,
    Gram,
    Ounce,
}

/// The spellings of each unit.
const SPELLINGS: &[(Unit, &[&str])] = &[
    (Unit::None, &[""]),
    (Unit::Mm, &["mm"]),
    (Unit::Cm, &["cm"]),
    (Unit::Metre, &["m", "metre", "metres", "meter", "meters"]),
    (Unit::Inch, &["in", "in.", "inch", "inches", "\"", "″"]),
    (Unit::Yard, &["yd", "yds", "yard", "yards"]),
    (Unit::Degree, &["°", "deg", "degree", "degrees"]),
    (Unit::Percent, &["%", "percent", "per cent"]),
    (Unit::Gram, &["g", "gram", "grams"]),
    (Unit::Ounce, &["oz", "ounce", "ounces"]),
];

/// Fractions that have a character of their own.
const FRACTIONS: &[(char, f64)] = &[
    ('½', 1.0 / 2.0),
    ('¼', 1.0 / 4.0),
    ('¾', 3.0 / 4.0),
    ('⅛', 1.0 / 8.0),
    ('⅜', 3.0 / 8.0),
    ('⅝', 5.0 / 8.0),
    ('⅞', 7.0 / 8.0),
    ('⅓', 1.0 / 3.0),
    ('⅔', 2.0 / 3.0),
];

/// What may stand behind a length; a bare number is in the units of the file.
pub(super) const LENGTHS: &[Unit] = &[Unit::None, Unit::Mm, Unit::Cm, Unit::Metre, Unit::Inch, Unit::Yard];
/// What may stand behind an angle.
pub(super) const ANGLES: &[Unit] = &[Unit::None, Unit::Degree];
/// What stands behind a share.
pub(super) const SHARES: &[Unit] = &[Unit::Percent];
/// What may stand behind a mass.
pub(super) const MASSES: &[Unit] = &[Unit::None, Unit::Gram, Unit::Ounce];
/// What may stand behind a length of yarn.
pub(super) const YARNS: &[Unit] = &[Unit::None, Unit::Metre, Unit::Yard];

/// The numbers with one of these units that [`split`] reads, as a regular expression (ECMA-262, as JSON Schema asks); with a
/// sign before them where `signed`.
pub(super) fn pattern(units: &[Unit], signed: bool) -> String {
    let fraction: String = FRACTIONS.iter().map(|(sign, _)| *sign).collect();
    let bar = "[0-9]{1,6}/[0-9]{1,6}";
    let piece = format!("[0-9]+(?:[.,][0-9]*)?|[.,][0-9]+|{bar}|[0-9]{{0,6}}[{fraction}]");
    let sign = if signed { "(?:[-+−–]\\s*)?" } else { "\\+?" };
    let names = SPELLINGS.iter().filter(|(unit, _)| units.contains(unit)).flat_map(|(_, names)| names.iter());
    let names: Vec<String> = names.map(|name| any_case(name)).collect();
    format!("^\\s*{sign}(?:{piece})(?:\\s+(?:{bar}|[{fraction}]))?\\s*(?:{})\\s*$", names.join("|"))
}

/// A word as a regular expression that reads it in capitals too, with any blanks between its words.
pub(super) fn any_case(word: &str) -> String {
    let letter = |letter: char| match letter {
        'a'..='z' | 'A'..='Z' => format!("[{}{}]", letter.to_ascii_lowercase(), letter.to_ascii_uppercase()),
        ' ' => "\\s+".to_owned(),
        '.' | '/' | '(' | ')' | '+' | '*' | '?' | '[' | ']' | '{' | '}' | '|' | '^' | '$' => format!("\\{letter}"),
        _ => letter.to_string(),
    };
    word.chars().map(letter).collect()
}

/// Splits `-3 1/2 in` into its number and its unit.
fn split(text: &str) -> Option<(f64, Unit)> {
    let end = text
        .char_indices()
        .rev()
        .find(|(_, c)| c.is_ascii_digit() || FRACTIONS.iter().any(|(f, _)| f == c))
        .map(|(at, c)| at + c.len_utf8())?;
    let unit = text[end..].trim().to_lowercase();
    let unit = SPELLINGS.iter().find(|(_, names)| names.contains(&unit.as_str()))?.0;
    Some((number(text[..end].trim())?, unit))
}

/// A number: `12`, `12.4`, `12,4`, `.5`, `3 1/2`, `3/4`, `3½`, with a sign before it.
fn number(text: &str) -> Option<f64> {
    let (sign, text) = match text.strip_prefix(['-', '−', '–']) {
        Some(rest) => (-1.0, rest.trim_start()),
        None => (1.0, text.strip_prefix('+').unwrap_or(text).trim_start()),
    };
    let mut total = 0.0;
    let mut words = 0;
    for (at, word) in text.split_whitespace().enumerate() {
        // Only a fraction may follow a whole number.
        if at > 0 && !(at == 1 && (word.contains('/') || word.chars().all(|c| fraction(c).is_some()))) {
            return None;
        }
        total += piece(word)?;
        words += 1;
    }
    (words > 0).then_some(sign * total).filter(|value: &f64| value.is_finite())
}

fn fraction(c: char) -> Option<f64> {
    FRACTIONS.iter().find(|(f, _)| *f == c).map(|(_, value)| *value)
}

/// One word of a number: digits with a point or comma, a fraction with a bar, a fraction character behind digits.
fn piece(word: &str) -> Option<f64> {
    if let Some((over, under)) = word.split_once('/') {
        let (over, under) = (digits(over)?, digits(under)?);
        return (under > 0.0).then_some(over / under);
    }
    if let Some((last, value)) = word.chars().next_back().and_then(|c| Some((c, fraction(c)?))) {
        let whole = &word[..word.len() - last.len_utf8()];
        return Some(value + if whole.is_empty() { 0.0 } else { digits(whole)? });
    }
    let plain = word.replacen(',', ".", 1);
    plain.chars().all(|c| c.is_ascii_digit() || c == '.').then(|| plain.parse().ok())?
}

fn digits(text: &str) -> Option<f64> {
    (!text.is_empty() && text.len() < 7 && text.bytes().all(|b| b.is_ascii_digit())).then(|| text.parse().ok())?
}

fn wrong_unit(name: &str, text: &Text, want: &str) -> Diagnostic {
    let message = format!("`{name}` is {want}, and `{}` is none", shortened(&text.text));
    Diagnostic::error("wrong-unit", message).at(text.place)
}

/// A length. A bare number is in the units of the file.
pub(super) fn length(name: &str, text: &Text, units: Units, report: &mut Report) -> Option<Mm> {
    let bare = match units {
        Units::Cm => Unit::Cm,
        Units::Inches => Unit::Inch,
    };
    length_bare(name, text, bare, report)
}

/// The diameter of a hook. A bare number is in millimetres, as hooks are named.
pub(super) fn hook_length(text: &Text, report: &mut Report) -> Option<Mm> {
    length_bare("hook", text, Unit::Mm, report)
}

/// True where the text begins with a number.
pub(super) fn is_number(text: &str) -> bool {
    split(text).is_some() || text.starts_with(|c: char| c.is_ascii_digit() || c == '.' || c == '-')
}

fn length_bare(name: &str, text: &Text, bare: Unit, report: &mut Report) -> Option<Mm> {
    let mm = split(&text.text).and_then(|(value, unit)| match if unit == Unit::None { bare } else { unit } {
        Unit::Mm => Some(Mm::new(value)),
        Unit::Cm => Some(Mm::from_cm(value)),
        Unit::Metre => Some(Mm::from_cm(value * 100.0)),
        Unit::Inch => Some(Mm::from_inches(value)),
        Unit::Yard => Some(Mm::from_inches(value * 36.0)),
        Unit::None | Unit::Degree | Unit::Percent | Unit::Gram | Unit::Ounce => None,
    });
    if mm.is_none() {
        let help = "write a number with its unit, such as `9.5 cm`, `95 mm` or `3 3/4 in`; a bare number is in the \
                    file's `units`";
        report.add(wrong_unit(name, text, "a length").help(help));
    }
    mm
}

/// True where a length is written with its unit.
pub(super) fn is_length(text: &str) -> bool {
    split(text).is_some_and(|(_, unit)| unit != Unit::None && LENGTHS.contains(&unit))
}

/// An angle in degrees; the sign ° may be left out.
pub(super) fn angle(name: &str, text: &Text, report: &mut Report) -> Option<Angle> {
    match split(&text.text) {
        Some((value, Unit::None | Unit::Degree)) => Some(Angle::from_degrees(value)),
        _ => {
            report.add(wrong_unit(name, text, "an angle").help("write degrees, such as `55°` or `55 deg`"));
            None
        }
    }
}

/// A share in per cent; the sign has to be there, so that 2 is never mistaken for 2 %.
pub(super) fn share(name: &str, text: &Text, report: &mut Report) -> Option<f64> {
    match split(&text.text) {
        Some((value, Unit::Percent)) => Some(value / 100.0),
        Some((value, Unit::None)) => {
            report.add(wrong_unit(name, text, "a per cent").help(format!("write `{value} %`")));
            None
        }
        _ => {
            report.add(wrong_unit(name, text, "a per cent").help("write a number and the sign, such as `-2 %`"));
            None
        }
    }
}

/// True where the text is meant as a per cent.
pub(super) fn is_share(text: &str) -> bool {
    matches!(split(text), Some((_, Unit::Percent)))
}

/// A mass in grams.
pub(super) fn grams(name: &str, text: &Text, report: &mut Report) -> Option<f64> {
    let value = match split(&text.text) {
        Some((value, Unit::None | Unit::Gram)) => Some(value),
        Some((value, Unit::Ounce)) => Some(value * 28.349_523_125),
        _ => None,
    };
    match value {
        Some(value) if value > 0.0 && value <= 10_000.0 => Some(value),
        Some(_) => {
            let message = format!("`{name}` is `{}`, which no kitchen scale shows", shortened(&text.text));
            report.add(
                Diagnostic::error("out-of-range", message).at(text.place).help("write grams above 0, up to 10 000"),
            );
            None
        }
        None => {
            report.add(
                wrong_unit(name, text, "a mass").help("write grams, such as `50` or `50 g`, or ounces, `1.75 oz`"),
            );
            None
        }
    }
}

/// Metres of yarn; `bare` metres where no unit is said.
pub(super) fn metres(name: &str, text: &Text, bare_metres: f64, report: &mut Report) -> Option<f64> {
    let value = match split(&text.text) {
        Some((value, Unit::None)) => Some(value * bare_metres),
        Some((value, Unit::Metre)) => Some(value),
        Some((value, Unit::Yard)) => Some(value * 0.9144),
        _ => None,
    };
    match value {
        Some(value) if value > 0.0 && value <= 20_000.0 => Some(value),
        Some(_) => {
            let message = format!("`{name}` is `{}`, which no ball holds", shortened(&text.text));
            report.add(Diagnostic::error("out-of-range", message).at(text.place).help("write the length on the label"));
            None
        }
        None => {
            report.add(wrong_unit(name, text, "a length of yarn").help("write metres, `85 m`, or yards, `93 yd`"));
            None
        }
    }
}

/// A whole number between two bounds.
pub(super) fn count(name: &str, text: &Text, least: u32, most: u32, report: &mut Report) -> Option<u32> {
    let value = text.text.parse::<u32>().ok().filter(|value| (least..=most).contains(value));
    if value.is_none() {
        let message =
            format!("`{name}` is a whole number from {least} to {most}, and `{}` is not", shortened(&text.text));
        report.add(
            Diagnostic::error("wrong-count", message).at(text.place).help(format!("write `{name}: {least}` or more")),
        );
    }
    value
}

/// So many times as many: `2`, `1.5`, `2½`.
pub(super) fn times(
    name: &str,
    text: &Text,
    within: std::ops::RangeInclusive<f64>,
    report: &mut Report,
) -> Option<f64> {
    let value = number(text.text.trim()).filter(|value| within.contains(value));
    if value.is_none() {
        let (least, most) = (within.start(), within.end());
        let message = format!("`{name}` is a number from {least} to {most}, and `{}` is not", shortened(&text.text));
        let help = format!("write `{name}: 2` for twice as many stitches, `{name}: 1.5` for half as many more");
        report.add(Diagnostic::error("wrong-count", message).at(text.place).help(help));
    }
    value
}

/// A count that may stop half-way, as stitches across a swatch do: `17`, `17.5`, `17½`.
pub(super) fn halves(name: &str, text: &Text, most: u32, report: &mut Report) -> Option<f64> {
    let whole_halves = |value: &f64| (value * 2.0 - (value * 2.0).round()).abs() < EPSILON;
    let value = number(text.text.trim()).filter(|value| (0.5..=f64::from(most)).contains(value));
    let value = value.filter(whole_halves);
    if value.is_none() {
        let message =
            format!("`{name}` is a number from ½ to {most} in halves, and `{}` is not", shortened(&text.text));
        let help = format!("count to the nearest half, such as `{name}: 17.5`");
        report.add(Diagnostic::error("wrong-count", message).at(text.place).help(help));
    }
    value
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::report::Place;

    fn text(text: &str) -> Text {
        Text { text: text.to_owned(), place: Place::default() }
    }

    fn mm(written: &str, units: Units) -> Option<f64> {
        length("depth", &text(written), units, &mut Report::new()).map(|mm| (mm.mm() * 1e6).round() / 1e6)
    }

    #[test]
    fn stitches_of_a_swatch_may_be_halves() {
        let read = |written: &str| halves("stitches", &text(written), 2000, &mut Report::new());
        assert_eq!([read("17"), read("17.5"), read("17,5"), read("17½")], [17.0, 17.5, 17.5, 17.5].map(Some));
        for wrong in ["17.3", "0", "-4", "many", "2001", ""] {
            assert_eq!(read(wrong), None, "{wrong}");
        }
    }

    #[test]
    fn lengths_in_every_spelling() {
        for (written, want) in [
            ("12.4", 124.0),
            ("12,4", 124.0),
            ("9 cm", 90.0),
            ("9cm", 90.0),
            ("7.5 mm", 7.5),
            ("3 1/2 in", 88.9),
            ("3½ in", 88.9),
            ("3 ½\"", 88.9),
            ("3/4 inch", 19.05),
            ("0.5 m", 500.0),
            ("-2 cm", -20.0),
        ] {
            assert_eq!(mm(written, Units::Cm), Some(want), "{written}");
        }
        assert_eq!(mm("22", Units::Inches), Some(558.8));
    }

    #[test]
    fn what_is_no_length_is_refused() {
        for written in
            ["", "cm", "ten", "9 kg", "9 %", "9°", "1 2 3", "1/0 in", "3 4", "--3", "1e9", "inf", ".", "9 cm cm", "½½"]
        {
            assert_eq!(mm(written, Units::Cm), None, "{written}");
        }
    }

    #[test]
    fn a_share_needs_its_sign() {
        let mut report = Report::new();
        assert_eq!(share("ease", &text("-2 %"), &mut report), Some(-0.02));
        assert_eq!(share("ease", &text("-2"), &mut report), None);
        assert_eq!(report.diagnostics[0].help.as_deref(), Some("write `-2 %`"));
    }

    #[test]
    fn angles_are_degrees() {
        let mut report = Report::new();
        for written in ["55", "55°", "55 deg"] {
            assert!(angle("flare", &text(written), &mut report).is_some_and(|a| (a.degrees() - 55.0).abs() < 1e-9));
        }
        assert_eq!(angle("flare", &text("55 %"), &mut report), None);
    }

    #[test]
    fn yards_and_ounces_are_taken() {
        let mut report = Report::new();
        assert_eq!(metres("metres", &text("100 yd"), 1.0, &mut report), Some(91.44));
        assert!(grams("grams", &text("1.75 oz"), &mut report).is_some_and(|g| (g - 49.61).abs() < 0.01));
    }
}
