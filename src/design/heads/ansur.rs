//! ANSUR II (US Army 2012, NATICK/TR-15/007), head circumference: 5th, 50th and 95th percentile in cm.

use super::{Fact, HeadTable, Rows, no_caution};

pub(super) static TABLE: HeadTable = HeadTable {
    name: "ansur",
    source: Fact::Name("ANSUR\u{a0}II 2012"),
    children: false,
    example: "ansur: woman",
    help: "rows of `ansur` are `woman`, `man` and `adult` (mean of both), with `-p5`, `-p50` or `-p95` behind it where \
           wanted",
    rows: Rows::Grown([5, 50, 95], &[("woman", [53.2, 56.0, 59.7]), ("man", [54.8, 57.4, 60.1])]),
    caution: no_caution,
};
