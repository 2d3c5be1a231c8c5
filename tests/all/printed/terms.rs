//! Abbreviations and special stitches: whatever is used is explained, and whatever is explained is used.

use std::collections::BTreeSet;

use roundelay::craft::{Loops, Spot};
use roundelay::plan::Plan;

use super::paper::Paper;
use super::rounds::{self, abbreviations};
use super::tongue::Tongue;

/// Holds the table of abbreviations and the special stitches against what the rounds use; `names` are the stitches that
/// they name.
pub(super) fn check(paper: &Paper, tongue: &Tongue, plan: &Plan, names: &BTreeSet<String>) {
    let table = abbreviations(paper, tongue);
    let mut told = String::new();
    for size in 0..plan.sizes.len() {
        for line in rounds::lines(paper, tongue, plan, size) {
            told += &format!(" {} {} ", line.words, line.count);
        }
    }
    let labels = paper.rows(tongue, "section.rounds").flatten().map(|(_, cell)| cell.as_str());
    let ends: Vec<&str> = paper.said(tongue, "section.finishing").chain(labels).collect();
    let everything = format!("{told} {}", ends.join(" "));
    let words: Vec<&str> = everything.split(|c: char| c.is_whitespace() || ",;:()[]*".contains(c)).collect();
    let place = format!("{} of {}", tongue.tag, paper.form);
    for (short, meaning) in &table {
        let forms = || short.split(", ").map(|form| form.trim_end_matches(" …"));
        let tog = |form: &str| form.ends_with("tog") && words.iter().any(|word| word.ends_with("tog"));
        let used = forms().any(|form| names.contains(form) || tog(form) || stands(&words, form));
        assert!(used, "{place}: nothing uses “{short}” ({meaning})");
    }
    let lost = names.iter().find(|name| !table.iter().any(|(short, _)| short == *name));
    assert!(lost.is_none(), "{place}: {lost:?} is not explained");
    let explained = |word: &str| table.iter().any(|(short, _)| short.split([',', ' ']).any(|form| form == word));
    let lost = tongue.all("short").find(|short| words.contains(short) && !explained(short));
    assert!(lost.is_none(), "{place}: “{lost:?}” is not explained");
    let lost = words.iter().find(|word| word.ends_with("tog") && !table.iter().any(|(short, _)| short.contains("tog")));
    assert!(lost.is_none(), "{place}: “{lost:?}” is not explained");
    special(paper, tongue, plan, names, &place);
}

/// True where all words of a form follow each other, whatever their endings.
fn stands(words: &[&str], form: &str) -> bool {
    let form: Vec<&str> = form.split([' ', '*']).filter(|word| !word.is_empty()).collect();
    // A number before a name is that of an example.
    let bare = |word: &str| word.trim_start_matches(|c: char| c.is_ascii_digit() || c == '-').replace('ö', "o");
    let same = |(word, form): (&&str, &&str)| {
        let (word, form) = (bare(word), bare(form));
        let common = word.chars().zip(form.chars()).take_while(|(a, b)| a == b).count();
        let most = word.chars().count().max(form.chars().count());
        word == form || (most > 5 && common + 2 >= most) || (common >= 3 && common == form.chars().count())
    };
    words.windows(form.len()).any(|words| words.iter().zip(&form).all(same))
}

fn special(paper: &Paper, tongue: &Tongue, plan: &Plan, names: &BTreeSet<String>, place: &str) {
    let terms = plan.design.terms;
    let basic: Vec<String> = ["ch", "sl-st", "sc", "hdc", "dc"]
        .into_iter()
        .filter_map(roundelay::craft::Stitch::by_id)
        .map(|stitch| tongue.name(stitch, terms))
        .collect();
    let mut wanted: BTreeSet<String> = names.iter().filter(|name| !basic.contains(name)).cloned().collect();
    let mut loops = BTreeSet::new();
    for op in plan.sizes.iter().flat_map(|size| &size.rounds).flat_map(|round| &round.ops) {
        if op.into == Spot::Together {
            let together = |stitch| {
                tongue
                    .one("w.together")
                    .replace("{s}", &tongue.name(stitch, terms))
                    .replace("{n}", &op.consumed.to_string())
            };
            wanted.extend(op.made.runs().map(|(stitch, _)| together(stitch)));
        }
        loops.extend((op.loops != Loops::Both).then_some(op.loops == Loops::Back));
    }
    let told: Vec<&str> = paper.said(tongue, "section.special").collect();
    let heads = || told.iter().map(|told| told.split(tongue.one("colon")).next().unwrap_or_default());
    for name in &wanted {
        let lead =
            |head: &str| head == name || head.strip_prefix(name.as_str()).is_some_and(|rest| rest.starts_with(" ("));
        assert_eq!(heads().filter(|head| lead(head)).count(), 1, "{place}: how {name} is worked: {told:#?}");
    }
    for back in &loops {
        let name = tongue.one(if *back { "loops.back" } else { "loops.front" });
        assert!(heads().any(|head| head == name), "{place}: how {name} is worked: {told:#?}");
    }
    assert_eq!(told.len(), wanted.len() + loops.len(), "{place}: {told:#?} for {wanted:?}");
    // An explanation goes on to the end of the work: it is a sentence and more than a name.
    let short = told.iter().find(|told| !told.ends_with('.') || told.split(' ').count() < 8);
    assert!(short.is_none(), "{place}: {short:?}");
}
