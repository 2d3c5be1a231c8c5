//! Craft Yarn Council, head circumference chart: least and most in cm, and the ages the name is commonly used for, in
//! months (common practice; the chart itself names no ages).

use super::{Fact, HeadRow, HeadSource, HeadTable, Rows};

pub(super) static TABLE: HeadTable = HeadTable {
    name: "council",
    source: Fact::Word("council"),
    children: true,
    example: "council: toddler",
    help: "rows of `council` are `preemie`, `baby`, `toddler`, `child`, `tween`, `woman` and `man`",
    rows: Rows::Ranges(&[
        ("preemie", 23.0, 30.5, Some((0, 0))),
        ("baby", 35.5, 40.5, Some((0, 12))),
        ("toddler", 40.5, 46.0, Some((12, 36))),
        ("child", 45.5, 51.0, Some((36, 120))),
        ("tween", 51.0, 56.0, Some((120, 168))),
        ("woman", 53.0, 58.5, None),
        ("man", 56.0, 61.0, None),
    ]),
    caution: low,
};

/// The ranges for small children lie below every measured head.
fn low(row: &HeadRow) -> Option<String> {
    let HeadSource::Table(facts) = &row.source else { return None };
    let [Fact::Range(_, name @ ("baby" | "toddler" | "child"), least, most)] = facts.as_slice() else { return None };
    Some(format!(
        "the council's range for {name}, {least} to {most} cm, lies well below measured children (WHO medians: \
         45.5 cm at 12 months, 49.0 cm at 3 years)"
    ))
}
