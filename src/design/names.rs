//! Stitch names of the file, in its own terms.

use super::fields::{listed, shortened, unknown};
use super::tree::Text;
use crate::craft::{Stitch, Terms, abbreviation, spellings};
use crate::report::{Diagnostic, Report};

/// The stitch that has this name in these terms, hyphens, blanks and full stops aside.
fn by_name(name: &str, terms: Terms) -> Option<Stitch> {
    let plain = |name: &str| name.to_lowercase().replace(['-', ' ', '.'], "");
    let wanted = plain(name);
    spellings(terms).into_iter().find(|(spelling, _)| plain(spelling) == wanted).map(|(_, stitch)| stitch)
}

/// A stitch that fabric can be made of, by its name in the file.
pub(super) fn stitch(text: &Text, terms: Terms, report: &mut Report) -> Option<Stitch> {
    let fabric = |stitch: &Stitch| stitch.makes_fabric();
    let here = match terms {
        Terms::Us => "US",
        Terms::Uk => "UK",
    };
    match by_name(&text.text, terms) {
        Some(stitch) if fabric(&stitch) => return Some(stitch),
        Some(_) => {
            let message = format!("`{}` makes no fabric of its own", shortened(&text.text));
            report.add(Diagnostic::error("not-a-fabric", message).at(text.place).help("write a stitch such as `sc`"));
        }
        None => {
            let known: Vec<&str> = Stitch::all().filter(fabric).map(|stitch| abbreviation(stitch, terms)).collect();
            let message = format!("in {here} terms there is no stitch");
            if let Some(meant) = by_name(&text.text, terms.other()).filter(fabric) {
                let same = abbreviation(meant, terms);
                let message = format!("{message} `{}`", shortened(&text.text));
                let help = format!("the stitch is called `{same}` in {here} terms; known: {}", listed(&known));
                report.add(Diagnostic::error("unknown-stitch", message).at(text.place).help(help));
            } else {
                report.add(unknown("unknown-stitch", &message, text, &known));
            }
        }
    }
    None
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::report::Place;

    fn read(name: &str, terms: Terms) -> (Option<Stitch>, Report) {
        let mut report = Report::new();
        let text = Text { text: name.to_owned(), place: Place::default() };
        (stitch(&text, terms, &mut report), report)
    }

    #[test]
    fn one_name_is_another_stitch_in_other_terms() {
        assert_eq!(read("dc", Terms::Us).0, Some(Stitch::DC));
        assert_eq!(read("dc", Terms::Uk).0, Some(Stitch::SC));
        assert_eq!(read("tr", Terms::Uk).0, Some(Stitch::DC));
        assert_eq!(read("half treble", Terms::Uk).0, Some(Stitch::HDC));
        assert_eq!(read("Double Crochet", Terms::Us).0, Some(Stitch::DC));
        assert_eq!(read("trtr", Terms::Us).0, Stitch::by_id("trtr"));
        assert_eq!(read("trtr", Terms::Uk).0, Some(Stitch::DTR));
    }

    #[test]
    fn every_stitch_goes_by_every_name_of_its_row() {
        for terms in [Terms::Us, Terms::Uk] {
            for it in Stitch::all() {
                for name in std::iter::once(&it.names(terms).short).chain(it.names(terms).also) {
                    assert_eq!(read(name, terms).0, it.makes_fabric().then_some(it), "{name} in {terms:?}");
                }
            }
        }
    }

    #[test]
    fn a_name_of_the_other_terms_is_explained() {
        let (found, report) = read("sc", Terms::Uk);
        assert_eq!(found, None);
        assert!(report.diagnostics[0].help.as_ref().is_some_and(|help| help.contains("`dc` in UK terms")));
    }

    #[test]
    fn chains_make_no_fabric() {
        assert_eq!(read("ch", Terms::Us).1.diagnostics[0].code, "not-a-fabric");
        assert_eq!(read("xyz", Terms::Us).1.diagnostics[0].code, "unknown-stitch");
    }
}
