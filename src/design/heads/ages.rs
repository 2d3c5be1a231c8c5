//! One table from newborn to adult: the WHO standards to 5 years as they stand; the UK 1990 reference from 6 to 18, lowered
//! by what it lies above them at 4 years, less and less until nothing at 18, so that heads rise without a step; grown
//! heads of ANSUR II. The joining is ours, and the pages say so.

use super::{Fact, Growth, HeadTable, Rows, ansur, growth, no_caution, uk90, who};

pub(super) static TABLE: HeadTable = HeadTable {
    name: "ages",
    source: Fact::Word("ages"),
    children: true,
    example: "ages: child-6y",
    help: "rows of `ages` run from newborn to adult without a step: `newborn`, `baby-1m`, `-3m`, `-6m`, `-9m`, `-12m`, \
           `toddler-18m`, `child-2y`, `-3y`, `-4y`, `-5y`, `-6y`, `-8y`, `-10y`, `teen-12y`, `-14y`, `-16y`, `-18y`, with \
           `-boy` or `-girl` and `-p3`, `-p50` or `-p97` behind it where wanted; then `woman`, `man` and `adult`",
    rows: Rows::Joined([3, 50, 97], ROWS, &ansur::TABLE),
    caution: no_caution,
};

/// The age at which the two references are held against each other, and that at which nothing is taken off.
const MEET: u32 = 48;
const GROWN: u32 = 216;

const fn of_who(at: usize) -> Growth {
    who::ROWS[at]
}

/// A row of the later reference, lowered.
const fn lowered(at: usize) -> Growth {
    let (row, early, late) = (uk90::ROWS[at], who::ROWS[9], uk90::ROWS[0]);
    assert!(early.months == MEET && late.months == MEET);
    let left = (GROWN - row.months) as f64 / (GROWN - MEET) as f64;
    growth(row.months, faded(row.boys, early.boys, late.boys, left), faded(row.girls, early.girls, late.girls, left))
}

const fn faded(row: [f64; 3], early: [f64; 3], late: [f64; 3], left: f64) -> [f64; 3] {
    [row[0] - (late[0] - early[0]) * left, row[1] - (late[1] - early[1]) * left, row[2] - (late[2] - early[2]) * left]
}

const ROWS: &[Growth] = &[
    of_who(0),
    of_who(1),
    of_who(2),
    of_who(3),
    of_who(4),
    of_who(5),
    of_who(6),
    of_who(7),
    of_who(8),
    of_who(9),
    of_who(10),
    lowered(1),
    lowered(2),
    lowered(3),
    lowered(4),
    lowered(5),
    lowered(6),
    lowered(7),
];
