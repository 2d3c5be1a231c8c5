//! Papers: the ISO 216 series from its formula, and the sheets of the United States.

use crate::report::Diagnostic;
use crate::units::{Mm, power};

/// Families of sheets: what lies in the same shops and fits the same printers.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Series {
    /// ISO 216, and sheets of any other measures.
    Iso,
    /// The sheets of the United States.
    UnitedStates,
}

impl Series {
    /// Names of its large sheets for wall charts, smallest first.
    pub const fn wall_sheets(self) -> [&'static str; 4] {
        match self {
            Self::Iso => ["A3", "A2", "A1", "A0"],
            Self::UnitedStates => ["Tabloid", "Arch C", "Arch D", "Arch E"],
        }
    }
}

/// A sheet of paper.
#[derive(Clone, Debug, PartialEq)]
pub struct Paper {
    /// Its name, such as `A4`, or its measures.
    pub name: String,
    /// Width, upright.
    pub width: Mm,
    /// Height, upright.
    pub height: Mm,
    /// The family it belongs to.
    pub series: Series,
}

/// Room kept free at the top and the sides: clears the unprintable edge of nearly every home printer.
pub const MARGIN: Mm = Mm::new(10.0);
/// Room kept free at the foot, where ink-jet printers need more.
pub const FOOT_MARGIN: Mm = Mm::new(15.0);
/// Narrowest and lowest printable area a pattern page is laid out in.
const LEAST: (f64, f64) = (70.0, 90.0);
/// The longest side that the PDF format can state without a unit of its own: 14400 points.
const MOST: f64 = 5080.0;

/// Sheets of the United States, width and height in inches: ANSI/ASME Y14.1 (Letter is A, Tabloid B, and C to E) and
/// the architects' series; Legal, Statement and Executive are common practice.
const INCHES: &[(&str, f64, f64)] = &[
    ("Letter", 8.5, 11.0),
    ("Legal", 8.5, 14.0),
    ("Tabloid", 11.0, 17.0),
    ("Statement", 5.5, 8.5),
    ("Executive", 7.25, 10.5),
    ("ANSI C", 17.0, 22.0),
    ("ANSI D", 22.0, 34.0),
    ("ANSI E", 34.0, 44.0),
    ("Arch A", 9.0, 12.0),
    ("Arch B", 12.0, 18.0),
    ("Arch C", 18.0, 24.0),
    ("Arch D", 24.0, 36.0),
    ("Arch E", 36.0, 48.0),
    ("Arch E1", 30.0, 42.0),
];

impl Paper {
    /// The paper of this name: `A0`–`A10`, `B0`–`B10`, a sheet of the United States, or measures such as `200x300 mm`
    /// (also `cm` and `in`). Case and spaces don't matter.
    ///
    /// # Errors
    /// An unknown name, or measures that are not two lengths above zero.
    pub fn by_name(name: &str) -> Result<Self, Diagnostic> {
        let plain = squeeze(name);
        if let Some(paper) = iso(&plain) {
            return Ok(paper);
        }
        if let Some((name, width, height)) = INCHES.iter().find(|(us, ..)| squeeze(us) == plain) {
            return Ok(Self {
                name: (*name).to_owned(),
                width: Mm::from_inches(*width),
                height: Mm::from_inches(*height),
                series: Series::UnitedStates,
            });
        }
        custom(&plain).ok_or_else(|| {
            Diagnostic::error("unknown-paper", format!("there is no paper called “{name}”")).help(
                "name one of A0–A10, B0–B10, Letter, Legal, Tabloid, Arch A–E, or give measures such as 200x300 mm",
            )
        })
    }

    /// A4.
    pub fn a4() -> Self {
        iso_size('a', 4)
    }

    /// Letter.
    pub fn letter() -> Self {
        let (width, height) = (Mm::from_inches(8.5), Mm::from_inches(11.0));
        Self { name: "Letter".to_owned(), width, height, series: Series::UnitedStates }
    }

    /// The same sheet lying on its side.
    #[must_use]
    pub fn turned(&self) -> Self {
        Self { width: self.height, height: self.width, ..self.clone() }
    }

    /// Width and height that can be printed: 10 mm margins, 15 mm at the foot.
    pub fn printable(&self) -> (Mm, Mm) {
        (self.width - MARGIN * 2.0, self.height - MARGIN - FOOT_MARGIN)
    }

    /// Refuses a sheet on which no pattern page can be laid out.
    ///
    /// # Errors
    /// A printable area narrower than 70 mm or lower than 90 mm, or a side over 5080 mm.
    pub fn check(&self) -> Result<(), Diagnostic> {
        let (width, height) = self.printable();
        let (least_width, least_height) = LEAST;
        if width.mm() < least_width || height.mm() < least_height {
            let message = format!(
                "{} paper leaves {:.0} × {:.0} mm inside the margins, and a pattern page needs {least_width} × {least_height} mm",
                self.name,
                width.mm().max(0.0),
                height.mm().max(0.0)
            );
            return Err(Diagnostic::error("paper-too-small", message).help("choose A6 or larger"));
        }
        if self.width.max(self.height).mm() > MOST {
            let message = format!("{} paper is longer than a PDF page can be, {MOST} mm", self.name);
            return Err(Diagnostic::error("paper-too-large", message).help("choose a smaller sheet, or tile the chart"));
        }
        Ok(())
    }
}

fn squeeze(name: &str) -> String {
    name.chars()
        .filter(|c| !c.is_whitespace())
        .map(|c| if c == '×' { 'x' } else { c })
        .collect::<String>()
        .to_lowercase()
}

fn iso(plain: &str) -> Option<Paper> {
    let series = plain.chars().next().filter(|c| matches!(c, 'a' | 'b'))?;
    let number = plain.get(1..)?.parse::<u32>().ok().filter(|n| *n <= 10)?;
    Some(iso_size(series, number))
}

/// ISO 216: A0 is 2^(−1/4) × 2^(1/4) m, B0 1 × √2 m; each next size is the last one halved across its long side,
/// rounded down to whole millimetres.
fn iso_size(series: char, number: u32) -> Paper {
    let long_of_zero = if series == 'a' { power(2.0, 0.25) } else { core::f64::consts::SQRT_2 };
    let (mut long, mut short) =
        ((long_of_zero * 1000.0).round(), (1000.0 * long_of_zero / core::f64::consts::SQRT_2).round());
    for _ in 0..number {
        (long, short) = (short, (long / 2.0).floor());
    }
    let name = format!("{}{number}", series.to_ascii_uppercase());
    Paper { name, width: Mm::new(short), height: Mm::new(long), series: Series::Iso }
}

fn custom(plain: &str) -> Option<Paper> {
    let units = [("mm", Mm::new(1.0)), ("cm", Mm::from_cm(1.0)), ("in", Mm::from_inches(1.0)), ("", Mm::new(1.0))];
    let (rest, unit) = units.into_iter().find_map(|(name, unit)| plain.strip_suffix(name).map(|rest| (rest, unit)))?;
    let (width, height) = rest.split_once('x')?;
    let (width, height) = (unit * positive(width)?, unit * positive(height)?);
    let name = format!("{} × {} mm", width.mm().round(), height.mm().round());
    Some(Paper { name, width, height, series: Series::Iso })
}

/// A number above zero.
fn positive(text: &str) -> Option<f64> {
    text.parse::<f64>().ok().filter(|v| v.is_finite() && *v > 0.0)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn size(name: &str) -> (f64, f64) {
        let paper = Paper::by_name(name).unwrap();
        (paper.width.mm(), paper.height.mm())
    }

    fn is(name: &str, width: f64, height: f64) {
        let (w, h) = size(name);
        assert!((w - width).abs() < 1e-9 && (h - height).abs() < 1e-9, "{name} is {w} × {h}");
    }

    /// ISO 216:2007, table 1 (values from memory but for A2 to A4, which the trade's handbooks repeat).
    #[test]
    fn the_iso_series_comes_out_of_its_formula() {
        let a = [(841.0, 1189.0), (594.0, 841.0), (420.0, 594.0), (297.0, 420.0), (210.0, 297.0), (148.0, 210.0)];
        for (number, (width, height)) in a.into_iter().enumerate() {
            is(&format!("A{number}"), width, height);
        }
        is("b4", 250.0, 353.0);
        is("B5", 176.0, 250.0);
        is("A10", 26.0, 37.0);
    }

    #[test]
    fn sheets_of_the_united_states_are_whole_inches() {
        is("Letter", 215.9, 279.4);
        is("legal", 215.9, 355.6);
        is("Tabloid", 279.4, 431.8);
        is("arch e", 914.4, 1219.2);
    }

    #[test]
    fn every_sheet_has_a_family_whose_wall_sheets_there_are() {
        for (name, ..) in INCHES {
            assert_eq!(Paper::by_name(name).unwrap().series, Series::UnitedStates, "{name}");
        }
        for name in ["A4", "b5", "200x300 mm"] {
            assert_eq!(Paper::by_name(name).unwrap().series, Series::Iso, "{name}");
        }
        for series in [Series::Iso, Series::UnitedStates] {
            let sheets = series.wall_sheets().map(|name| Paper::by_name(name).unwrap());
            assert!(sheets.iter().all(|sheet| sheet.series == series));
            assert!(sheets.windows(2).all(|pair| pair[0].width < pair[1].width));
        }
    }

    #[test]
    fn measures_make_a_paper_and_nonsense_does_not() {
        is("200 x 300 mm", 200.0, 300.0);
        is("20×30cm", 200.0, 300.0);
        for bad in ["", "A11", "C4x", "0x100 mm", "nan x 3", "-3x4mm", "letterr"] {
            assert!(Paper::by_name(bad).is_err(), "{bad} was taken for a paper");
        }
    }

    #[test]
    fn a_stamp_is_refused_with_a_reason() {
        let complaint = Paper::by_name("60x60 mm").unwrap().check().unwrap_err();
        assert!(complaint.message.contains("40 × 35 mm"), "{}", complaint.message);
        assert!(Paper::by_name("A6").unwrap().check().is_ok());
        assert!(Paper::by_name("9999x300 mm").unwrap().check().is_err());
    }
}
