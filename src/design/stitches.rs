//! Stitches of the maker's own: named in the file, built of those of the table.

use super::fields::{Fields, doubled, listed, shortened};
use super::printed::{Printed, printed};
use super::resolve::Reading;
use super::rows::OWN_STITCH;
use super::tree::{Text, Value};
use super::{Body, Part, Said};
use crate::craft::{Made, OwnStitch, Terms, abbreviation};
use crate::limits;
use crate::notation::{NameFault, Source, defined_as, defined_in, mentions, name_fault};
use crate::report::{Diagnostic, Report};

/// A stitch as written.
#[derive(Clone, Debug)]
pub(super) struct RawStitch {
    short: Text,
    work: Option<Text>,
    name: Option<Text>,
    how: Option<Text>,
}

/// What a list of stitches looks like.
const EXAMPLE: &str =
    "write `stitches: {shell: \"(2 dc, ch 1, 2 dc)\"}`: a name, and what is made in one stitch or space";

/// Reads the stitches that a design defines; none where it defines none.
pub(super) fn read(design: &mut Fields<'_>) -> Vec<RawStitch> {
    let Some((_, node)) = design.take("stitches") else { return Vec::new() };
    let report = design.report();
    let what = node.what();
    let Value::Fields(written) = node.value else {
        let message = format!("`stitches` takes a name for each stitch with what it makes, and here is {what}");
        report.add(Diagnostic::error("wrong-kind", message).at(node.place).help(EXAMPLE));
        return Vec::new();
    };
    if let Some((beyond, _)) = written.get(limits::OWN_STITCHES) {
        let message = format!("`stitches` holds {}; {} are the most", written.len(), limits::OWN_STITCHES);
        let help = "write out in their rounds those that are worked once";
        report.add(Diagnostic::error("too-many-stitches-named", message).at(beyond.place).help(help));
    }
    let mut stitches: Vec<RawStitch> = Vec::new();
    for (short, node) in written.into_iter().take(limits::OWN_STITCHES) {
        let same = |other: &&RawStitch| other.short.text.eq_ignore_ascii_case(&short.text);
        if let Some(first) = stitches.iter().find(same) {
            report.add(doubled("`stitches`", &short, first.short.place));
            continue;
        }
        let none = RawStitch { short: short.clone(), work: None, name: None, how: None };
        match node.value {
            Value::Word(text) => {
                let work = Text { text: text.trim().to_owned(), place: node.place };
                stitches.push(RawStitch { work: Some(work), ..none });
            }
            Value::Fields(_) => {
                let Some(mut fields) = Fields::open(node, "the stitch", &OWN_STITCH, report) else { continue };
                let work = fields.needed("work");
                stitches.push(RawStitch { work, name: fields.text("name"), how: fields.text("how"), ..none });
            }
            Value::Nothing | Value::List(_) => {
                let message = format!("the stitch {} does not say what it makes", shortened(&short.text));
                report.add(Diagnostic::error("no-value", message).at(short.place).help(EXAMPLE));
            }
        }
    }
    stitches
}

/// Most stitches that one of a maker's own makes.
const MOST_MADE: u32 = 100;

/// The lines of rounds that may name a stitch: those written out, and those of patterns.
fn lines(parts: &[Part]) -> impl Iterator<Item = &str> {
    fn of(part: &Part) -> Vec<&Said<String>> {
        match &part.body {
            Body::Written(sizes) => sizes.iter().flatten().collect(),
            Body::Profile(profile) => profile.set_up.iter().chain(&profile.pattern).collect(),
        }
    }
    parts.iter().flat_map(of).map(|line| line.value.as_str())
}

/// The stitches that rounds of a design may name, each after those it is built of.
pub(super) fn resolve(raw: &[RawStitch], parts: &[Part], reading: Reading, report: &mut Report) -> Vec<OwnStitch> {
    let mut open: Vec<(&RawStitch, OwnStitch)> = Vec::new();
    for one in raw {
        if let (Some(work), true) = (&one.work, fits(one, reading, report)) {
            open.push((one, named(one, work, report)));
        }
    }
    let mut own: Vec<OwnStitch> = Vec::new();
    let all: Vec<OwnStitch> = open.iter().map(|(_, stitch)| stitch.clone()).collect();
    let mut broken = false;
    // Whatever is built of others waits for them.
    while !open.is_empty() {
        let waits = |one: &RawStitch, open: &[(&RawStitch, OwnStitch)]| {
            let work = one.work.as_ref().map_or("", |work| &work.text);
            open.iter().any(|(_, other)| mentions(work, other))
        };
        let Some(at) = (0..open.len()).find(|at| !waits(open[*at].0, &open)) else { break };
        let (one, stitch) = open.remove(at);
        let Some(work) = &one.work else { continue };
        match defined_as(&Source { text: &work.text, place: Some(work.place) }, reading.terms, &own) {
            Ok(made) if made.count() > MOST_MADE => {
                let message =
                    format!("`{}` makes more than {MOST_MADE} stitches in one place", shortened(&stitch.short));
                let help = "write fewer; what is repeated stands in the rounds: `[shell in next st] 12 times`";
                report.add(Diagnostic::error("own-stitch", message).at(work.place).help(help));
                broken = true;
            }
            Ok(made) if made.count() > 1 || made.runs().nth(1).is_some() => own.push(OwnStitch { made, ..stitch }),
            Ok(made) => {
                let known = made.runs().next().map_or("a stitch", |(stitch, _)| abbreviation(stitch, reading.terms));
                let message = format!("`{}` is only another name for {known}", shortened(&stitch.short));
                let help = "a stitch of your own is built of several; call this one by the name it has";
                report.add(Diagnostic::error("own-stitch", message).at(work.place).help(help));
                broken = true;
            }
            Err(why) => {
                report.add(why);
                broken = true;
            }
        }
    }
    // What waits for one that is broken is not to be blamed.
    if !broken {
        circles(&open, report);
    }
    unused(&all, parts, report);
    own.extend(of_rounds(parts, reading.terms, &own));
    own
}

/// The stitches that the rounds of these parts define themselves, and a V-stitch where they name one that nobody defines;
/// those that are defined already aside.
pub(crate) fn of_rounds(parts: &[Part], terms: Terms, own: &[OwnStitch]) -> Vec<OwnStitch> {
    let mut found: Vec<OwnStitch> = Vec::new();
    for part in parts {
        let Body::Written(sizes) = &part.body else { continue };
        // What one size defines, the others do in the same words.
        let lines = sizes.first().map_or(&[][..], Vec::as_slice);
        let sources: Vec<Source<'_>> =
            lines.iter().map(|said| Source { text: &said.value, place: said.place }).collect();
        let said = defined_in(&sources, terms, &[own, &found].concat());
        let known = |one: &OwnStitch| own.iter().chain(&found).any(|known| mentions(&one.short, known));
        let said: Vec<OwnStitch> = said.into_iter().filter(|one| !known(one)).collect();
        found.extend(said);
    }
    let usual = OwnStitch::v_stitch();
    let known = own.iter().chain(&found).any(|own| mentions(&own.short, &usual));
    found.extend(Some(usual).filter(|usual| !known && lines(parts).any(|line| mentions(line, usual))));
    found
}

/// A stitch that makes nothing yet.
fn named(raw: &RawStitch, work: &Text, report: &mut Report) -> OwnStitch {
    OwnStitch {
        short: printed(Printed::Stitch, &raw.short, report),
        name: raw.name.as_ref().map(|name| printed(Printed::Stitch, name, report)),
        how: raw.how.as_ref().map(|how| printed(Printed::Note, how, report)),
        made: Made::Nothing,
        trade: false,
        place: Some(work.place),
    }
}

/// True where rounds can call a stitch by its name, or a complaint.
fn fits(raw: &RawStitch, reading: Reading, report: &mut Report) -> bool {
    let name = &raw.short;
    let Some(fault) = name_fault(&name.text, reading.terms) else { return true };
    let shown = shortened(&name.text);
    let (message, help) = match fault {
        NameFault::NoWords => (
            format!("rounds can't call a stitch `{shown}`"),
            "give it a name of one to three words, in letters: `shell`, `garden knot`",
        ),
        NameFault::Taken(stitch) => (
            match abbreviation(stitch, reading.terms) {
                short if short.eq_ignore_ascii_case(&shown) => format!("`{shown}` is a stitch already"),
                short => format!("`{shown}` is a stitch already: {short}"),
            },
            "give yours another name, such as `my knot`, so that nobody works the other",
        ),
        NameFault::Meant => (
            format!("`{shown}` means something else in rounds"),
            "give it a name that says nothing of the work yet, such as `shell` or `knot`",
        ),
    };
    report.add(Diagnostic::error("own-stitch-name", message).at(name.place).help(help));
    false
}

/// Complains of stitches that are built of one another, and so of nothing.
fn circles(open: &[(&RawStitch, OwnStitch)], report: &mut Report) {
    let Some((first, own)) = open.first() else { return };
    let place = first.work.as_ref().map_or(first.short.place, |work| work.place);
    let alone = first.work.as_ref().is_some_and(|work| mentions(&work.text, own));
    let message = if alone {
        format!("the stitch {} is made of itself", shortened(&first.short.text))
    } else {
        let names: Vec<&str> = open.iter().map(|(raw, _)| raw.short.text.as_str()).collect();
        format!("these stitches are made of one another: {}", listed(&names))
    };
    let help = "say what it is made of in stitches that are known: `(2 dc, ch 1, 2 dc)`";
    report.add(Diagnostic::error("own-stitch-circle", message).at(place).help(help));
}

/// Tells of stitches that no round and no other stitch names.
fn unused(own: &[OwnStitch], parts: &[Part], report: &mut Report) {
    // By what they are called: one whose own words can't be read is named all the same.
    for stitch in own {
        let others = report.has_errors();
        if !others && !lines(parts).any(|line| mentions(line, stitch)) {
            let message = format!("no round names the stitch {}", shortened(&stitch.short));
            let help = "name it in a round or a pattern, `shell in next st`, or take it away; it is not printed";
            let place = stitch.place;
            report.add(Diagnostic::warning("own-stitch-unused", message).at(place).help(help));
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::craft::Stitch;
    use crate::design::read as design;

    fn told(stitches: &str, rounds: &str) -> (Vec<OwnStitch>, Vec<(String, usize)>) {
        let text = format!(
            "title: T\nkind: mat\nswatch: {{stitch: sc, stitches: 16, rounds: 17, width: 11.3, height: 11.1}}\n\
             sizes: {{one: {{across: 20}}}}\nstitches:\n{stitches}parts:\n  - all:\n      written: |\n        {rounds}\n"
        );
        let mut report = Report::new();
        let own = design(&text, &mut report).map(|design| design.stitches).unwrap_or_default();
        let codes =
            report.diagnostics.iter().filter(|one| one.code.starts_with("own-stitch") || one.code == "unknown-word");
        (own, codes.map(|one| (one.code.to_owned(), one.place.map_or(0, |place| place.line))).collect())
    }

    #[test]
    fn stitches_are_built_of_those_of_the_table_and_of_one_another() {
        let (own, codes) = told(
            "  twin: (fan, fan)\n  fan: {work: \"(2 dc, ch 1, 2 dc)\", name: garden fan, how: Work loosely.}\n",
            "Rnd 1: (twin, ch 2) 3 times in ring, fan in ring",
        );
        assert_eq!(codes, []);
        let [fan, twin] = &own[..] else { panic!("{own:?}") };
        assert_eq!((fan.short.as_str(), fan.made.count(), twin.made.count()), ("fan", 5, 10));
        assert_eq!((fan.name.as_deref(), fan.how.as_deref()), (Some("garden fan"), Some("Work loosely.")));
        let runs: Vec<(Stitch, u32)> = twin.made.runs().collect();
        assert_eq!(runs, [(Stitch::DC, 2), (Stitch::CH, 1), (Stitch::DC, 4), (Stitch::CH, 1), (Stitch::DC, 2)]);
    }

    #[test]
    fn a_v_stitch_is_known_where_it_is_named() {
        let (own, codes) = told("  fan: 5 dc\n", "Rnd 1: 6 V-sts in ring, fan in ring");
        assert_eq!((own.len(), codes), (2, Vec::new()));
        assert!(own[1].trade);
        let (own, _) = told("  V-st: (tr, ch 2, tr)\n", "Rnd 1: 6 V-sts in ring");
        assert_eq!(own.len(), 1);
        assert!(!own[0].trade && own[0].made.runs().any(|(stitch, _)| stitch == Stitch::TR));
    }

    #[test]
    fn what_is_wrong_with_a_stitch_is_told_on_its_line() {
        let rounds = "Rnd 1: 6 sc in ring (6)";
        for (stitches, code) in [
            ("  dc: (2 dc, ch 1, 2 dc)\n", "own-stitch-name"),
            ("  join: (2 dc, ch 1, 2 dc)\n", "own-stitch-name"),
            ("  \"5\": (2 dc, ch 1, 2 dc)\n", "own-stitch-name"),
            ("  fan: (2 dcx, ch 1, 2 dc)\n", "unknown-word"),
            ("  fan: dc2tog\n", "own-stitch"),
            ("  fan: dc\n", "own-stitch"),
            ("  fan: (fan, dc)\n", "own-stitch-circle"),
            ("  fan: (leaf, dc)\n  leaf: (fan, dc)\n", "own-stitch-circle"),
            ("  fan: (2 dc, ch 1, 2 dc)\n", "own-stitch-unused"),
        ] {
            let (_, codes) = told(stitches, rounds);
            assert_eq!(codes, [(code.to_owned(), 6)], "{stitches}");
        }
    }
}
