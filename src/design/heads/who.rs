//! WHO Child Growth Standards, head circumference for age (2006), from their published L, M and S.

use super::{Fact, Growth, HeadRow, HeadTable, MEDIAN, Rows, growth, uk90};

pub(super) static TABLE: HeadTable = HeadTable {
    name: "who",
    source: Fact::Word("who"),
    children: true,
    example: "who: child-4y",
    help: "rows of `who` are named by age: `newborn`, `baby-1m`, `-3m`, `-6m`, `-9m`, `-12m`, `toddler-18m`, \
           `child-2y`, `-3y`, `-4y`, `-5y`, with `-boy` or `-girl` and `-p3`, `-p50` or `-p97` behind it where wanted",
    rows: Rows::Growth([3, 50, 97], ROWS),
    caution: disagrees,
};

pub(super) const ROWS: &[Growth] = &[
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

/// Where this table and the UK 1990 reference overlap they differ by about 2 cm; they must not be joined into one row of
/// sizes unseen.
pub(super) fn disagrees(row: &HeadRow) -> Option<String> {
    let (months, _) = row.age_months?;
    let (who, uk) = (median(ROWS, months)?, median(uk90::ROWS, 48)?);
    match months {
        48 => {
            Some(format!("published heads disagree at 4 years: WHO says {who:.1} cm, the UK 1990 reference {uk:.1} cm"))
        }
        60 => Some(format!(
            "published heads disagree here: WHO says {who:.1} cm at 5 years, the UK 1990 reference {uk:.1} cm at 4 years"
        )),
        _ => None,
    }
}

/// Mean of boys' and girls' medians at an age.
fn median(rows: &[Growth], months: u32) -> Option<f64> {
    rows.iter().find(|row| row.months == months).map(|row| (row.boys[MEDIAN] + row.girls[MEDIAN]) / 2.0)
}
