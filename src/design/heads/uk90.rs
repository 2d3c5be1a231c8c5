//! UK 1990 growth reference, reanalysed 2009, head circumference from 4 years; the girls' last row is of 17 years.

use super::{Fact, Growth, HeadTable, Rows, growth, who};

pub(super) static TABLE: HeadTable = HeadTable {
    name: "uk90",
    source: Fact::Word("uk90"),
    children: true,
    example: "uk90: child-10y",
    help: "rows of `uk90` are named by age: `child-4y`, `-6y`, `-8y`, `-10y`, `-12y`, `-14y`, `-16y`, `-18y`, with \
           `-boy` or `-girl` and `-p3`, `-p50` or `-p97` behind it where wanted",
    rows: Rows::Growth([3, 50, 97], ROWS),
    caution: who::disagrees,
};

pub(super) const ROWS: &[Growth] = &[
    growth(48, [49.5, 52.2, 55.0], [48.9, 51.1, 53.4]),
    growth(72, [50.3, 53.2, 56.1], [49.9, 52.2, 54.4]),
    growth(96, [50.9, 53.9, 56.8], [50.7, 53.0, 55.3]),
    growth(120, [51.5, 54.5, 57.5], [51.4, 53.7, 56.1]),
    growth(144, [52.1, 55.1, 58.2], [51.9, 54.4, 56.8]),
    growth(168, [52.7, 55.9, 59.0], [52.4, 54.9, 57.4]),
    growth(192, [53.4, 56.6, 59.8], [52.7, 55.3, 57.9]),
    growth(216, [54.0, 57.3, 60.5], [52.9, 55.5, 58.1]),
];
