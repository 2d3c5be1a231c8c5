//! Where head circumferences are from, in words.

use crate::design::heads::{HeadSource, Reference, Whose};
use crate::words::{Arg, Words};

/// Table and row of a head circumference; nothing for one that was measured.
pub fn source_words(source: &HeadSource, words: &Words) -> Option<String> {
    let percentile =
        |percentile: u8| words.with("page-source-percentile", &[("number", Arg::Count(percentile.into()))]);
    match source {
        HeadSource::Measured => None,
        HeadSource::Growth { reference, months, whose, percentile: share } => {
            let reference = words.say(match reference {
                Reference::Who => "page-source-who",
                Reference::Uk90 => "page-source-uk90",
            });
            let whose = words.say(match whose {
                Whose::Boys => "page-source-boys",
                Whose::Girls => "page-source-girls",
                Whose::Both => "page-source-both",
            });
            Some([reference, age(*months, words), whose, percentile(*share)].join(", "))
        }
        HeadSource::Council(row, least, most) => {
            let number = |cm: &f64| crate::words::numbers::decimal(*cm, 1, words.language);
            let (row, least, most) = (words.say(&format!("page-source-{row}")), number(least), number(most));
            let said = [("row", &row), ("least", &least), ("most", &most)].map(|(name, text)| (name, Arg::Text(text)));
            Some(words.with("page-source-council", &said))
        }
        HeadSource::Ansur(row, share) => {
            let who = words.say(&format!("page-source-{row}"));
            Some(["ANSUR\u{a0}II 2012".to_owned(), who, percentile(*share)].join(", "))
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
    use crate::design::heads::look_up;
    use crate::words::Language;

    fn said(table: &str, row: &str, tag: &str) -> String {
        let language = Language::by_tag(tag).unwrap();
        let found = look_up(table, row).unwrap();
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
    fn every_row_has_its_word_in_every_language() {
        let rows = ["preemie", "baby", "toddler", "child", "tween", "woman", "man"].map(|row| ("council", row));
        for (table, row) in rows.into_iter().chain([("ansur", "adult"), ("ansur", "man-p95"), ("who", "newborn-boy")]) {
            for language in Language::ALL {
                let told = said(table, row, language.tag());
                assert!(!told.contains("page-"), "{language:?}: {told}");
            }
        }
    }
}
