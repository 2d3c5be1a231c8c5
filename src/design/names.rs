//! Stitch names of the file, in its own terms.

use super::fields::{listed, shortened, unknown};
use super::tree::Text;
use crate::craft::{Build, Stitch, Terms, abbreviation};
use crate::report::{Diagnostic, Report};

/// Whole names beside the abbreviations: the stitch, its US and its UK name.
const WHOLE: &[(Stitch, &str, &str)] = &[
    (Stitch::SL_ST, "slip stitch", "slip stitch"),
    (Stitch::SC, "single crochet", "double crochet"),
    (Stitch::HDC, "half double crochet", "half treble"),
    (Stitch::DC, "double crochet", "treble"),
    (Stitch::TR, "treble", "double treble"),
    (Stitch::DTR, "double treble", "triple treble"),
    (Stitch::CLUSTER, "cluster", "cluster"),
    (Stitch::PUFF, "puff", "puff"),
    (Stitch::BOBBLE, "bobble", "bobble"),
    (Stitch::POPCORN, "popcorn", "popcorn"),
];

/// The stitch of this name in these terms: its abbreviation, its whole name, or an id that means the same in both.
fn by_name(name: &str, terms: Terms) -> Option<Stitch> {
    let plain = |name: &str| name.to_lowercase().replace(['-', ' ', '.'], "");
    let wanted = plain(name);
    let whole = WHOLE.iter().find(|(_, us, uk)| {
        plain(match terms {
            Terms::Us => us,
            Terms::Uk => uk,
        }) == wanted
    });
    let short = Stitch::all().find(|stitch| plain(abbreviation(*stitch, terms)) == wanted);
    short.or(whole.map(|(stitch, ..)| *stitch))
}

/// A stitch that fabric can be made of, by its name in the file.
pub(super) fn stitch(text: &Text, terms: Terms, report: &mut Report) -> Option<Stitch> {
    let fabric = |stitch: &Stitch| !matches!(stitch.row().build, Build::Chain | Build::Picot | Build::Slip);
    let (here, other) = match terms {
        Terms::Us => ("US", Terms::Uk),
        Terms::Uk => ("UK", Terms::Us),
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
            if let Some(meant) = by_name(&text.text, other).filter(fabric) {
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
