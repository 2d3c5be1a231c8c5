//! Head circumferences by age and sex, from published tables: a file each, and one list.
//!
//! A [`HeadTable`] is one row with its name, its source in words, its figures and when they are to be taken with care.
//! Its figures are of one of three kinds ([`Rows`]), and reading a row knows these kinds, not the tables.

mod ages;
mod ansur;
mod council;
#[cfg(test)]
mod tests;
mod uk90;
mod who;

use crate::units::Mm;

/// Every table, growth references in the order in which one goes on where the other ends.
pub static TABLES: &[&HeadTable] = &[&ages::TABLE, &who::TABLE, &uk90::TABLE, &council::TABLE, &ansur::TABLE];

/// A head circumference read from a table.
#[derive(Clone, Debug, PartialEq)]
pub struct HeadRow {
    /// Head circumference.
    pub head: Mm,
    /// Table and row, for the pages.
    pub source: HeadSource,
    /// Youngest and oldest age in months, for children.
    pub age_months: Option<Ages>,
    /// Why the row is to be taken with care.
    pub caution: Option<String>,
}

/// Youngest and oldest age in months.
pub type Ages = (u32, u32);

/// Where a head circumference is from.
#[derive(Clone, Debug, Default, PartialEq)]
pub enum HeadSource {
    /// Measured, or not worn.
    #[default]
    Measured,
    /// Read from a table: what is to be said of it, in order.
    Table(Vec<Fact>),
}

/// One thing to be said of a source.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Fact {
    /// A word of the catalogues: that of the key `page-source-` and this name.
    Word(&'static str),
    /// A name that is the same in every language.
    Name(&'static str),
    /// An age in months.
    Age(u32),
    /// A percentile.
    Percentile(u8),
    /// The sentence of the key `page-source-` and the first name, with the word of the second and a range in cm.
    Range(&'static str, &'static str, f64, f64),
}

/// One table.
#[derive(Debug)]
pub struct HeadTable {
    /// Its name in the file.
    pub name: &'static str,
    /// How it is called in print; the name of its sentence where its rows are ranges.
    pub source: Fact,
    /// True where it tells of children: such tables don't join, and heads step where two of them meet.
    pub children: bool,
    /// A row of it as a size names it.
    pub(super) example: &'static str,
    /// The rows there are, for a maker who named another.
    pub help: &'static str,
    rows: Rows,
    caution: fn(&HeadRow) -> Option<String>,
}

/// The figures of a table, in cm.
#[derive(Clone, Copy, Debug)]
enum Rows {
    /// A growth reference: by age in months, with boys' and girls' figures for these percentiles.
    Growth([u8; 3], &'static [Growth]),
    /// By whose head it is, with figures for these percentiles; `adult` is the mean of all.
    Grown([u8; 3], &'static [(&'static str, [f64; 3])]),
    /// A growth reference, and behind its last row those of another table.
    Joined([u8; 3], &'static [Growth], &'static HeadTable),
    /// By name: least and most, of which the middle is taken, and the ages the name is commonly used for.
    Ranges(&'static [(&'static str, f64, f64, Option<Ages>)]),
}

/// A row of a growth reference.
#[derive(Clone, Copy, Debug)]
struct Growth {
    months: u32,
    boys: [f64; 3],
    girls: [f64; 3],
}

const fn growth(months: u32, boys: [f64; 3], girls: [f64; 3]) -> Growth {
    Growth { months, boys, girls }
}

/// The table of this name.
pub fn table(name: &str) -> Option<&'static HeadTable> {
    TABLES.iter().copied().find(|table| table.name == name)
}

/// Names of all tables.
pub fn names() -> Vec<&'static str> {
    TABLES.iter().map(|table| table.name).collect()
}

impl HeadTable {
    /// Reads a row by its name. Fails with what rows there are.
    pub fn row(&self, name: &str) -> Result<HeadRow, String> {
        let name = name.to_lowercase();
        let found = match self.rows {
            Rows::Growth(percentiles, rows) => self.by_age(&name, percentiles, rows),
            Rows::Grown(percentiles, rows) => self.by_whom(&name, percentiles, rows),
            Rows::Ranges(rows) => self.by_range(&name, rows),
            Rows::Joined(percentiles, rows, grown) => {
                self.by_age(&name, percentiles, rows).or_else(|| grown.row(&name).ok())
            }
        };
        let row = found.ok_or(self.help)?;
        Ok(HeadRow { caution: (self.caution)(&row), ..row })
    }

    /// The shortest name of every row.
    pub fn row_names(&self) -> Vec<String> {
        match self.rows {
            Rows::Growth(_, rows) => rows.iter().map(|row| age_name(row.months)).collect(),
            Rows::Joined(_, rows, grown) => {
                rows.iter().map(|row| age_name(row.months)).chain(grown.row_names()).collect()
            }
            Rows::Grown(_, rows) => rows.iter().map(|(name, _)| *name).chain(["adult"]).map(str::to_owned).collect(),
            Rows::Ranges(rows) => rows.iter().map(|(name, ..)| (*name).to_owned()).collect(),
        }
    }

    fn by_age(&self, name: &str, percentiles: [u8; 3], rows: &[Growth]) -> Option<HeadRow> {
        let name = growth_name(name, percentiles)?;
        let found = rows.iter().find(|growth| growth.months == name.months)?;
        let (boys, girls) = (found.boys[name.percentile], found.girls[name.percentile]);
        let (cm, whose) = match (name.boys, name.girls) {
            (true, false) => (boys, "boys"),
            (false, _) => (girls, "girls"),
            (true, true) => ((boys + girls) / 2.0, "both"),
        };
        let percentile = Fact::Percentile(percentiles[name.percentile]);
        let source = HeadSource::Table(vec![self.source, Fact::Age(found.months), Fact::Word(whose), percentile]);
        Some(HeadRow { head: Mm::from_cm(cm), source, age_months: Some((found.months, found.months)), caution: None })
    }

    fn by_whom(&self, name: &str, percentiles: [u8; 3], rows: &[(&'static str, [f64; 3])]) -> Option<HeadRow> {
        let said = name.rsplit_once('-').and_then(|(who, share)| Some((who, which(share, percentiles)?)));
        let (who, at) = said.unwrap_or((name, MEDIAN));
        let (who, cm) = match rows.iter().find(|(row, _)| *row == who) {
            Some((row, values)) => (*row, values[at]),
            None if who == "adult" => {
                ("adult", rows.iter().map(|(_, values)| values[at]).sum::<f64>() / rows.len() as f64)
            }
            None => return None,
        };
        let source = HeadSource::Table(vec![self.source, Fact::Word(who), Fact::Percentile(percentiles[at])]);
        Some(HeadRow { head: Mm::from_cm(cm), source, age_months: None, caution: None })
    }

    fn by_range(&self, name: &str, rows: &[(&'static str, f64, f64, Option<Ages>)]) -> Option<HeadRow> {
        let (row, least, most, age_months) = *rows.iter().find(|(row, ..)| *row == name)?;
        let (Fact::Word(sentence) | Fact::Name(sentence)) = self.source else { return None };
        let source = HeadSource::Table(vec![Fact::Range(sentence, row, least, most)]);
        Some(HeadRow { head: Mm::from_cm((least + most) / 2.0), source, age_months, caution: None })
    }
}

/// Which of three percentiles is the median.
const MEDIAN: usize = 1;

/// Which of its percentiles a word such as `p97` names.
fn which(word: &str, percentiles: [u8; 3]) -> Option<usize> {
    let figure = word.strip_prefix('p')?;
    percentiles.iter().position(|percentile| figure == percentile.to_string())
}

/// A row name of a growth reference taken apart.
struct GrowthName {
    months: u32,
    boys: bool,
    girls: bool,
    percentile: usize,
}

fn growth_name(row: &str, percentiles: [u8; 3]) -> Option<GrowthName> {
    let mut name = GrowthName { months: u32::MAX, boys: true, girls: true, percentile: MEDIAN };
    for word in row.split('-') {
        let figures = word.trim_end_matches(|c: char| !c.is_ascii_digit());
        match (word, &word[figures.len()..], figures.parse::<u32>()) {
            ("newborn", ..) => name.months = 0,
            ("baby" | "toddler" | "child" | "youth" | "teen", ..) => {}
            ("boy" | "boys", ..) => name.girls = false,
            ("girl" | "girls", ..) => name.boys = false,
            (_, "m", Ok(months)) => name.months = months,
            (_, "y", Ok(years)) => name.months = years.checked_mul(12)?,
            _ => name.percentile = which(word, percentiles)?,
        }
    }
    (name.boys || name.girls).then_some(name)
}

/// An age as the name of a row.
fn age_name(months: u32) -> String {
    match months {
        0 => "newborn".to_owned(),
        1..24 => format!("baby-{months}m"),
        _ => format!("child-{}y", months / 12),
    }
}

/// The rows of all growth references, each going on where the one before it ends.
fn growth_rows() -> Vec<Growth> {
    let mut all: Vec<Growth> = Vec::new();
    for table in TABLES {
        if let Rows::Growth(_, rows) = table.rows {
            let last = all.last().map(|row| row.months);
            all.extend(rows.iter().filter(|row| last.is_none_or(|last| row.months > last)));
        }
    }
    all
}

/// The usual heads between two ages: least percentile of the youngest to the most of the oldest, by the reference that
/// covers them; nothing beyond the last age.
pub(super) fn usual(youngest: u32, oldest: u32) -> Option<(Mm, Mm)> {
    let rows = growth_rows();
    let least = rows.iter().rfind(|row| row.months <= youngest)?;
    let most = rows.iter().find(|row| row.months >= oldest)?;
    Some((Mm::from_cm(least.boys[0].min(least.girls[0])), Mm::from_cm(most.boys[2].max(most.girls[2]))))
}

/// Nothing to be careful about.
fn no_caution(_: &HeadRow) -> Option<String> {
    None
}
