//! Where head circumferences are from, in words.

use crate::design::heads::{Fact, HeadSource};
use crate::words::{Arg, Words};

/// Table and row of a head circumference; nothing for one that was measured.
pub fn source_words(source: &HeadSource, words: &Words) -> Option<String> {
    match source {
        HeadSource::Measured => None,
        HeadSource::Table(facts) => {
            let said: Vec<String> = facts.iter().map(|fact| fact_words(fact, words)).collect();
            Some(said.join(", "))
        }
    }
}

/// One thing said of a source.
fn fact_words(fact: &Fact, words: &Words) -> String {
    match *fact {
        Fact::Word(name) => words.say(&format!("page-source-{name}")),
        Fact::Name(name) => name.to_owned(),
        Fact::Age(months) => age(months, words),
        Fact::Percentile(share) => words.with("page-source-percentile", &[("number", Arg::Count(share.into()))]),
        Fact::Range(table, row, least, most) => {
            let [least, most] = [least, most].map(|cm| crate::words::numbers::decimal(cm, 1, words.language));
            let row = words.say(&format!("page-source-{row}"));
            let said = [("row", &row), ("least", &least), ("most", &most)].map(|(name, text)| (name, Arg::Text(text)));
            words.with(&format!("page-source-{table}"), &said)
        }
    }
}

/// `newborn`, `6 months`, `4 years`.
fn age(months: u32, words: &Words) -> String {
    match months {
        0 => words.say("page-source-newborn"),
        1..24 => words.with("page-source-months", &[("count", Arg::Count(months))]),
        _ => words.with("page-source-years", &[("count", Arg::Count(months / 12))]),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::design::heads::{TABLES, table};
    use crate::words::Language;

    fn said(name: &str, row: &str, tag: &str) -> String {
        let language = Language::by_tag(tag).unwrap();
        let found = table(name).unwrap().row(row).unwrap();
        source_words(&found.source, &Words::of(language)).unwrap().replace('\u{a0}', " ")
    }

    #[test]
    fn sources_are_told_in_the_language_of_the_pages() {
        let english = "UK 1990 growth reference, 6 years, mean of boys and girls, 50th percentile";
        assert_eq!(said("uk90", "child-6y", "en"), english);
        assert_eq!(
            said("who", "baby-1m-girl-p3", "de"),
            "WHO-Wachstumsstandards 2006, 1 Monat, Mädchen, 3. Perzentile"
        );
        assert_eq!(said("ansur", "woman", "fr"), "ANSUR II 2012, femme, 50e percentile");
    }

    #[test]
    fn every_row_of_every_table_is_told_in_every_language() {
        for table in TABLES {
            for row in table.row_names().into_iter().chain(["man-p95".to_owned(), "newborn-boy".to_owned()]) {
                let Ok(found) = table.row(&row) else { continue };
                for language in Language::ALL {
                    let told = source_words(&found.source, &Words::of(language)).unwrap();
                    assert!(!told.contains("page-"), "{language:?}: {told}");
                }
            }
        }
    }
}
