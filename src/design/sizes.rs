//! Sizes: measured, or read from a published table.

use super::fields::{shortened, unknown};
use super::heads::{self, HeadRow, HeadSource};
use super::printed::{Printed, printed};
use super::raw::RawSize;
use super::resolve::{Reading, in_range, tidy_cm};
use super::tree::Text;
use super::{Size, measure};
use crate::limits;
use crate::report::{Diagnostic, Report};
use crate::units::Mm;

/// Resolves the sizes, one for each as written, also where it complains.
pub(super) fn resolve(raw: &[RawSize], ease: f64, reading: Reading, report: &mut Report) -> Vec<Size> {
    if let Some(size) = raw.get(limits::SIZES) {
        let message = format!("there are {} sizes; {} are the most", raw.len(), limits::SIZES);
        report.add(Diagnostic::error("too-many-sizes", message).at(size.name.place).help("write a second design file"));
    }
    let eased = |size: Size| Size { around: size.head.map_or(size.around, |head| head * (1.0 + ease)), ..size };
    let sizes: Vec<(Size, bool)> = raw
        .iter()
        .take(limits::SIZES)
        .map(|raw| {
            let (size, measured) = size(raw, reading, report);
            (eased(size), measured)
        })
        .collect();
    for pair in sizes.windows(2) {
        if let [(smaller, true), (larger, true)] = pair
            && larger.around <= smaller.around
        {
            let message = format!(
                "size {} ({} cm round) is not larger than size {} ({} cm)",
                larger.name,
                tidy_cm(larger.around),
                smaller.name,
                tidy_cm(smaller.around)
            );
            let help = "write the sizes from the smallest to the largest, each once";
            report.add(Diagnostic::warning("sizes-not-rising", message).at(larger.place).help(help));
        }
    }
    two_tables(raw, report);
    sizes.into_iter().map(|(size, _)| size).collect()
}

/// Growth references don't join: where one ends and the next begins a set of sizes would make a step of 2 cm.
fn two_tables(raw: &[RawSize], report: &mut Report) {
    let table = |size: &RawSize| {
        let table = size.table.as_ref().or(size.row.as_ref().map(|(table, _)| table))?;
        let found = heads::table(&table.text.to_lowercase()).filter(|found| found.children)?;
        Some((found.name, table.place))
    };
    let mut tables = raw.iter().filter_map(table);
    let Some((first, _)) = tables.next() else { return };
    if let Some((second, place)) = tables.find(|(other, _)| *other != first) {
        let message =
            format!("sizes are read from `{first}` and from `{second}`, which don't join: heads step where they meet");
        let help = "read all children's sizes from one table, or measure heads";
        report.add(Diagnostic::warning("two-tables", message).at(place).help(help));
    }
}

/// A size, and whether its measurement is known; where it is complained of, another stands in, so that the parts can
/// still be looked at.
fn size(raw: &RawSize, reading: Reading, report: &mut Report) -> (Size, bool) {
    let name = printed(Printed::Size, &raw.name, report);
    let mut size = Size {
        name,
        head: None,
        around: Mm::from_cm(55.0),
        source: HeadSource::Measured,
        age_months: raw.age.as_ref().and_then(|text| age_of(text, report)),
        place: Some(raw.name.place),
    };
    let said = [raw.head.as_ref(), raw.around.as_ref(), raw.across.as_ref(), raw.row.as_ref().map(|(table, _)| table)];
    if let Some(second) = said.iter().flatten().nth(1) {
        let message = format!("the size {} is measured in two ways", size.name);
        report.add(Diagnostic::error("two-measures", message).at(second.place).help("keep one of them"));
        return (size, false);
    }
    let mut around_known = false;
    if let Some((table, row)) =
        raw.table.as_ref().map(|table| (table, &raw.name)).or(raw.row.as_ref().map(|(t, r)| (t, r)))
    {
        from_table(&mut size, table, row, reading, report);
    } else if let Some(text) = &raw.head {
        size.head = measured_head(text, reading, report);
        of_age(&size, text, report);
    } else if let Some(around) = around(raw, reading, report) {
        size.around = around;
        around_known = true;
    }
    let measured = around_known || size.head.is_some();
    (size, measured)
}

fn around(raw: &RawSize, reading: Reading, report: &mut Report) -> Option<Mm> {
    let (name, text, times) = match (&raw.around, &raw.across) {
        (Some(text), _) => ("around", text, 1.0),
        (None, Some(text)) => ("across", text, core::f64::consts::PI),
        (None, None) => {
            let (word, figure) = reading.kind.row().measured;
            let message = format!("the size {} has no measurement", raw.name.text);
            let help = format!("write `{}: {{{word}: {figure}}}`", raw.name.text);
            report.add(Diagnostic::error("missing-field", message).at(raw.name.place).help(help));
            return None;
        }
    };
    let length = measure::length(name, text, reading.units, report)?;
    in_range(name, length, Mm::from_cm(1.0), Mm::from_cm(700.0), text.place, report).then_some(length * times)
}

fn measured_head(text: &Text, reading: Reading, report: &mut Report) -> Option<Mm> {
    if !worn(text, reading, report) {
        return None;
    }
    let head = measure::length("head", text, reading.units, report)?;
    if !in_range("head", head, Mm::from_cm(10.0), Mm::from_cm(80.0), text.place, report) {
        return None;
    }
    if !(23.0..=66.0).contains(&head.cm()) {
        let message = format!("a head of {} cm is outside every published table", tidy_cm(head));
        let help = "newborn to adult heads are 31 cm to 64 cm (12 in to 25 in); look at the unit, and measure round the brow, above the ears";
        report.add(Diagnostic::warning("unusual-head", message).at(text.place).help(help));
    }
    Some(head)
}

/// A head far from the published heads of its age: 1 cm below the 3rd or above the 97th percentile.
fn of_age(size: &Size, text: &Text, report: &mut Report) {
    let (Some(head), Some((youngest, oldest))) = (size.head, size.age_months) else { return };
    let Some((least, most)) = heads::usual(youngest, oldest) else { return };
    let room = Mm::from_cm(1.0);
    if head < least - room || head > most + room {
        let message = format!("a head of {} cm is unusual at the age of size {}", tidy_cm(head), size.name);
        let help = format!("published heads are {} cm to {} cm there", tidy_cm(least), tidy_cm(most));
        report.add(Diagnostic::warning("unusual-head", message).at(text.place).help(help));
    }
}

fn worn(text: &Text, reading: Reading, report: &mut Report) -> bool {
    if reading.kind.row().worn {
        return true;
    }
    let message = "only a hat is sized by the head";
    let help = "write `around:` with the finished circumference, or `across:` with the diameter";
    report.add(Diagnostic::error("not-worn", message).at(text.place).help(help));
    false
}

fn from_table(size: &mut Size, table: &Text, row: &Text, reading: Reading, report: &mut Report) {
    let name = table.text.to_lowercase();
    if measure::is_number(&table.text) {
        let (word, _) = reading.kind.row().measured;
        let message = format!("the size {} does not say what is measured", size.name);
        let help = format!("write `{}: {{{word}: {}}}`", size.name, shortened(&table.text));
        report.add(Diagnostic::error("missing-field", message).at(table.place).help(help));
        return;
    }
    let Some(found) = heads::table(&name) else {
        let message = format!("the size {} is neither measured nor in a table called", size.name);
        let mut complaint = unknown("unknown-table", &message, table, &heads::names());
        let help = complaint.help.take().unwrap_or_default();
        report.add(complaint.help(format!("write `{}: {{head: 56}}`; of tables, {help}", size.name)));
        return;
    };
    if !worn(row, reading, report) {
        return;
    }
    match found.row(&row.text) {
        Ok(HeadRow { head, source, age_months, caution }) => {
            size.head = Some(head);
            size.source = source;
            size.age_months = size.age_months.or(age_months);
            if let Some(caution) = caution {
                let help = format!("measure the head and write `head: {}` where you can", tidy_cm(head));
                report.add(Diagnostic::warning("sources-disagree", caution).at(row.place).help(help));
            }
        }
        Err(help) => {
            let message = format!("the table `{name}` has no row `{}`", shortened(&row.text));
            report.add(Diagnostic::error("unknown-row", message).at(row.place).help(help));
        }
    }
}

/// An age or a range of ages: `4 years`, `6 months`, `3-6 months`.
fn age_of(text: &Text, report: &mut Report) -> Option<(u32, u32)> {
    let read = || {
        let (figures, unit) = text.text.trim().rsplit_once(' ')?;
        let times = match unit {
            "month" | "months" => 1,
            "year" | "years" => 12,
            _ => return None,
        };
        let (least, most) = figures.split_once(['-', '–']).unwrap_or((figures, figures));
        let months = |figure: &str| figure.trim().parse::<u32>().ok().filter(|age| *age <= 120).map(|age| age * times);
        let (least, most) = (months(least)?, months(most)?);
        (least <= most).then_some((least, most))
    };
    let age = read();
    if age.is_none() {
        let message = format!("`{}` is no age", shortened(&text.text));
        let help = "write `age: 4 years`, `age: 6 months` or `age: 3-6 months`";
        report.add(Diagnostic::error("wrong-age", message).at(text.place).help(help));
    }
    age
}
