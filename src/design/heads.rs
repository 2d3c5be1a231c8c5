//! Head circumferences by age and sex, from published tables; every row says where it is from.

use crate::units::Mm;

/// A head circumference read from a table.
#[derive(Clone, Debug, PartialEq)]
pub struct HeadRow {
    /// Head circumference.
    pub head: Mm,
    /// Table and row, for the pages.
    pub source: HeadSource,
    /// Youngest and oldest age in months, for children.
    pub age_months: Option<(u32, u32)>,
    /// Why the row is to be taken with care.
    pub caution: Option<String>,
}

/// Where a head circumference is from.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub enum HeadSource {
    /// Measured, or not worn.
    #[default]
    Measured,
    /// A growth reference.
    Growth {
        /// Which one.
        reference: Reference,
        /// Age in months.
        months: u32,
        /// Whose heads.
        whose: Whose,
        /// The percentile.
        percentile: u8,
    },
    /// The Craft Yarn Council's chart: a row's name with its least and most in cm, of which the middle is taken.
    Council(&'static str, f64, f64),
    /// ANSUR II: a row's name, and the percentile.
    Ansur(&'static str, u8),
}

/// The growth references.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Reference {
    /// WHO Child Growth Standards, 2006.
    Who,
    /// UK 1990 growth reference.
    Uk90,
}

/// Whose heads a growth reference tells of.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Whose {
    /// Boys'.
    Boys,
    /// Girls'.
    Girls,
    /// The mean of both.
    Both,
}

/// A row of a growth reference: age in months, boys' and girls' 3rd, 50th and 97th percentile in cm.
struct Growth {
    months: u32,
    boys: [f64; 3],
    girls: [f64; 3],
}

const fn growth(months: u32, boys: [f64; 3], girls: [f64; 3]) -> Growth {
    Growth { months, boys, girls }
}

/// WHO Child Growth Standards, head circumference for age (2006), from their published L, M and S.
const WHO: &[Growth] = &[
    growth(0, [32.1, 34.46, 36.9], [31.7, 33.88, 36.1]),
    growth(1, [35.0, 37.24, 39.4], [34.3, 36.52, 38.7]),
    growth(3, [38.3, 40.50, 42.7], [37.2, 39.52, 41.9]),
    growth(6, [41.0, 43.34, 45.6], [39.8, 42.21, 44.7]),
    growth(9, [42.6, 45.00, 47.4], [41.3, 43.83, 46.3]),
    growth(12, [43.6, 46.06, 48.5], [42.3, 44.89, 47.4]),
    growth(18, [44.9, 47.37, 49.9], [43.6, 46.24, 48.8]),
    growth(24, [45.7, 48.25, 50.8], [44.6, 47.18, 49.8]),
    growth(36, [46.8, 49.46, 52.1], [45.9, 48.51, 51.2]),
    growth(48, [47.5, 50.21, 53.0], [46.7, 49.33, 52.0]),
    growth(60, [47.9, 50.74, 53.5], [47.2, 49.92, 52.6]),
];

/// UK 1990 growth reference, reanalysed 2009, head circumference from 4 years; the girls' last row is of 17 years.
const UK90: &[Growth] = &[
    growth(48, [49.5, 52.2, 55.0], [48.9, 51.1, 53.4]),
    growth(72, [50.3, 53.2, 56.1], [49.9, 52.2, 54.4]),
    growth(96, [50.9, 53.9, 56.8], [50.7, 53.0, 55.3]),
    growth(120, [51.5, 54.5, 57.5], [51.4, 53.7, 56.1]),
    growth(144, [52.1, 55.1, 58.2], [51.9, 54.4, 56.8]),
    growth(168, [52.7, 55.9, 59.0], [52.4, 54.9, 57.4]),
    growth(192, [53.4, 56.6, 59.8], [52.7, 55.3, 57.9]),
    growth(216, [54.0, 57.3, 60.5], [52.9, 55.5, 58.1]),
];

/// Youngest and oldest age in months.
type Ages = (u32, u32);

/// Craft Yarn Council, head circumference chart: least and most in cm, and the ages the name is commonly used for, in
/// months (common practice; the chart itself names no ages).
const COUNCIL: &[(&str, f64, f64, Option<Ages>)] = &[
    ("preemie", 23.0, 30.5, Some((0, 0))),
    ("baby", 35.5, 40.5, Some((0, 12))),
    ("toddler", 40.5, 46.0, Some((12, 36))),
    ("child", 45.5, 51.0, Some((36, 120))),
    ("tween", 51.0, 56.0, Some((120, 168))),
    ("woman", 53.0, 58.5, None),
    ("man", 56.0, 61.0, None),
];

/// ANSUR II (US Army 2012, NATICK/TR-15/007), head circumference: 5th, 50th and 95th percentile in cm.
const ANSUR: &[(&str, [f64; 3])] = &[("woman", [53.2, 56.0, 59.7]), ("man", [54.8, 57.4, 60.1])];

/// Reads row `row` of `table` (`who`, `uk90`, `council` or `ansur`). Fails with what rows there are.
pub fn look_up(table: &str, row: &str) -> Result<HeadRow, String> {
    match table {
        "who" => growth_row(&WHO_TABLE, row),
        "uk90" => growth_row(&UK90_TABLE, row),
        "council" => council_row(row),
        "ansur" => ansur_row(row),
        _ => Err("known tables are `who`, `uk90`, `council` and `ansur`".to_owned()),
    }
}

struct GrowthTable {
    reference: Reference,
    rows: &'static [Growth],
    help: &'static str,
}

const WHO_TABLE: GrowthTable = GrowthTable {
    reference: Reference::Who,
    rows: WHO,
    help: "rows of `who` are named by age: `newborn`, `baby-1m`, `-3m`, `-6m`, `-9m`, `-12m`, `toddler-18m`, \
           `child-2y`, `-3y`, `-4y`, `-5y`, with `-boy` or `-girl` and `-p3`, `-p50` or `-p97` behind it where wanted",
};

const UK90_TABLE: GrowthTable = GrowthTable {
    reference: Reference::Uk90,
    rows: UK90,
    help: "rows of `uk90` are named by age: `child-4y`, `-6y`, `-8y`, `-10y`, `-12y`, `-14y`, `-16y`, `-18y`, with \
           `-boy` or `-girl` and `-p3`, `-p50` or `-p97` behind it where wanted",
};

/// A row name of a growth table taken apart.
struct GrowthName {
    months: u32,
    boys: bool,
    girls: bool,
    percentile: usize,
}

fn growth_name(row: &str) -> Option<GrowthName> {
    let mut name = GrowthName { months: u32::MAX, boys: true, girls: true, percentile: 1 };
    for word in row.to_lowercase().split('-') {
        let figures = word.trim_end_matches(|c: char| !c.is_ascii_digit());
        match (word, &word[figures.len()..], figures.parse::<u32>()) {
            ("newborn", ..) => name.months = 0,
            ("baby" | "toddler" | "child" | "youth" | "teen", ..) => {}
            ("boy" | "boys", ..) => name.girls = false,
            ("girl" | "girls", ..) => name.boys = false,
            ("p3", ..) => name.percentile = 0,
            ("p50", ..) => name.percentile = 1,
            ("p97", ..) => name.percentile = 2,
            (_, "m", Ok(months)) => name.months = months,
            (_, "y", Ok(years)) => name.months = years.checked_mul(12)?,
            _ => return None,
        }
    }
    (name.boys || name.girls).then_some(name)
}

fn growth_row(table: &GrowthTable, row: &str) -> Result<HeadRow, String> {
    let name = growth_name(row).ok_or(table.help)?;
    let found = table.rows.iter().find(|growth| growth.months == name.months).ok_or(table.help)?;
    let (boys, girls) = (found.boys[name.percentile], found.girls[name.percentile]);
    let (cm, whose) = match (name.boys, name.girls) {
        (true, false) => (boys, Whose::Boys),
        (false, _) => (girls, Whose::Girls),
        (true, true) => ((boys + girls) / 2.0, Whose::Both),
    };
    let percentile = [3, 50, 97][name.percentile];
    let source = HeadSource::Growth { reference: table.reference, months: found.months, whose, percentile };
    Ok(HeadRow {
        head: Mm::from_cm(cm),
        source,
        age_months: Some((found.months, found.months)),
        caution: sources_disagree(found.months),
    })
}

/// The usual heads between two ages: 3rd percentile of the youngest to 97th of the oldest, by the reference that covers
/// them; nothing beyond 18 years.
pub(super) fn usual(youngest: u32, oldest: u32) -> Option<(Mm, Mm)> {
    let rows = || WHO.iter().chain(UK90.iter().filter(|row| row.months > 60));
    let least = rows().rfind(|row| row.months <= youngest)?;
    let most = rows().find(|row| row.months >= oldest)?;
    Some((Mm::from_cm(least.boys[0].min(least.girls[0])), Mm::from_cm(most.boys[2].max(most.girls[2]))))
}

/// Where WHO and UK90 overlap they differ by about 2 cm; they must not be joined into one row of sizes unseen.
fn sources_disagree(months: u32) -> Option<String> {
    let row =
        |rows: &[Growth], months| rows.iter().find(|row| row.months == months).map(|r| (r.boys[1] + r.girls[1]) / 2.0);
    let (who, uk) = (row(WHO, months), row(UK90, 48));
    match (months, who, uk) {
        (48, Some(who), Some(uk)) => {
            Some(format!("published heads disagree at 4 years: WHO says {who:.1} cm, the UK 1990 reference {uk:.1} cm"))
        }
        (60, Some(who), Some(uk)) => Some(format!(
            "published heads disagree here: WHO says {who:.1} cm at 5 years, the UK 1990 reference {uk:.1} cm at 4 years"
        )),
        _ => None,
    }
}

fn council_row(row: &str) -> Result<HeadRow, String> {
    let wanted = row.to_lowercase();
    let found = COUNCIL.iter().find(|(name, ..)| *name == wanted);
    let (name, least, most, age_months) = found.ok_or_else(|| {
        let names: Vec<&str> = COUNCIL.iter().map(|row| row.0).collect();
        format!("rows of `council` are {}", super::fields::listed(&names))
    })?;
    let source = HeadSource::Council(name, *least, *most);
    let low = matches!(*name, "baby" | "toddler" | "child");
    let caution = low.then(|| {
        format!(
            "the council's range for {name}, {least} to {most} cm, lies well below measured children (WHO medians: \
             45.5 cm at 12 months, 49.0 cm at 3 years)"
        )
    });
    Ok(HeadRow { head: Mm::from_cm((least + most) / 2.0), source, age_months: *age_months, caution })
}

fn ansur_row(row: &str) -> Result<HeadRow, String> {
    let wanted = row.to_lowercase();
    let (who, percentile) = match wanted.rsplit_once('-') {
        Some((who, "p5")) => (who, 0),
        Some((who, "p50")) => (who, 1),
        Some((who, "p95")) => (who, 2),
        _ => (wanted.as_str(), 1),
    };
    let mean = |at: usize| ANSUR.iter().map(|(_, values)| values[at]).sum::<f64>() / ANSUR.len() as f64;
    let (name, cm) = match (who, ANSUR.iter().find(|(name, _)| *name == who)) {
        (_, Some((name, values))) => (*name, values[percentile]),
        ("adult", None) => ("adult", mean(percentile)),
        _ => {
            return Err("rows of `ansur` are `woman`, `man` and `adult` (mean of both), with `-p5`, `-p50` or `-p95` \
                        behind it where wanted"
                .to_owned());
        }
    };
    let source = HeadSource::Ansur(name, [5, 50, 95][percentile]);
    Ok(HeadRow { head: Mm::from_cm(cm), source, age_months: None, caution: None })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn cm(table: &str, row: &str) -> f64 {
        look_up(table, row).unwrap().head.cm()
    }

    /// Daily values of the WHO head circumference standards (`hcanthro.txt`): day, boys' M and S, girls' M and S. With
    /// L = 1 a percentile is M (1 + S z), z = ∓1.8808 for the 3rd and 97th.
    #[test]
    fn who_rows_follow_from_the_published_m_and_s() {
        let daily = [
            ("newborn", 34.4618, 0.03686, 33.8787, 0.03496),
            ("baby-12m", 46.0637, 0.02789, 44.894, 0.03027),
            ("child-2y", 48.2536, 0.02821, 47.1845, 0.02957),
            ("child-5y", 50.7372, 0.02945, 49.9225, 0.0285),
        ];
        for (row, boys_m, boys_s, girls_m, girls_s) in daily {
            for (sex, m, s) in [("boy", boys_m, boys_s), ("girl", girls_m, girls_s)] {
                for (percentile, z) in [("p3", -1.8808), ("p50", 0.0), ("p97", 1.8808)] {
                    let row = format!("{row}-{sex}-{percentile}");
                    let value: f64 = m * (1.0 + s * z);
                    assert!((cm("who", &row) - value).abs() < 0.06, "{row}: {value}");
                }
            }
        }
    }

    /// UK 1990 growth reference (reanalysed 2009): boys' median 52.2 cm at 4 and 57.3 at 18 years.
    #[test]
    fn uk90_rows_by_name() {
        assert!((cm("uk90", "child-4y-boy") - 52.2).abs() < 1e-9);
        assert!((cm("uk90", "youth-18y-boy") - 57.3).abs() < 1e-9);
        assert!((cm("uk90", "child-8y") - 53.45).abs() < 1e-9);
    }

    /// ANSUR II public data files, 4 082 men and 1 986 women: P5 548 and P95 601 mm for men, median 560 for women.
    #[test]
    fn ansur_percentiles() {
        assert!((cm("ansur", "man-p5") - 54.8).abs() < 1e-9);
        assert!((cm("ansur", "man-p95") - 60.1).abs() < 1e-9);
        assert!((cm("ansur", "woman") - 56.0).abs() < 1e-9);
        assert!((cm("ansur", "adult") - 56.7).abs() < 1e-9);
    }

    #[test]
    fn conflicts_between_sources_are_told() {
        for (table, row) in [("who", "child-4y"), ("who", "child-5y"), ("uk90", "child-4y"), ("council", "toddler")] {
            assert!(look_up(table, row).unwrap().caution.is_some(), "{table} {row}");
        }
        assert!(look_up("who", "child-2y").unwrap().caution.is_none());
    }

    #[test]
    fn usual_heads_span_the_ages() {
        let (least, most) = usual(3, 6).unwrap();
        assert!((least.cm() - 37.2).abs() < 1e-9 && (most.cm() - 45.6).abs() < 1e-9);
        assert_eq!(usual(216, 300), None);
    }

    #[test]
    fn an_unknown_row_lists_the_rows() {
        for (table, row) in
            [("who", "child-7y"), ("who", "boy-girl-2y"), ("uk90", "x"), ("council", "4y"), ("ansur", "")]
        {
            assert!(look_up(table, row).unwrap_err().contains("rows of"), "{table} {row}");
        }
    }
}
