use super::*;
use crate::design::{Design, read};
use crate::report::{Diagnostic, Report, Severity};

/// The lines of a group that make a sound design with a field of this name in it, the field itself left out.
fn beside(group: &Group, name: &str) -> Vec<&'static str> {
    let lines: &[&str] = match (group.section, name) {
        ("design", _) => &[
            "title: T",
            "swatch: {stitch: sc, stitches: 16, rounds: 17, width: 11.3, height: 11.1}",
            "sizes: {S: {head: 54}, M: {head: 57}}",
            "parts: [crown, side: {depth: 9}, brim: {width: 6, flare: 42°}]",
            "yarn: {colours: {main: '#3f7d6e'}}",
        ],
        ("photo", _) => &["file: hat.jpg", "alt: A hat"],
        ("yarn", _) => &["weight: 4"],
        ("ball", _) => &["grams: 50", "metres: 85"],
        ("swatch", _) => &["stitch: sc", "stitches: 16", "rounds: 17", "width: 11.3", "height: 11.1"],
        ("openings", _) => &["round: 3"],
        ("part-swatch", _) => &["stitches: 16", "rounds: 17", "width: 11.3", "height: 11.1"],
        ("own-stitch", _) => &["work: \"(2 dc, ch 1, 2 dc)\""],
        ("size", "age") => &["head: 42"],
        ("size", _) => &[],
        ("part", "flare" | "width" | "settle") => &["width: 6", "flare: 42°"],
        ("part", "depth") => &["shape: straight"],
        ("part", "rise") => &["shape: dome"],
        ("part", "fullness") => &["shape: ruffle", "width: 4"],
        ("part", "taper") => &["shape: taper", "depth: 9"],
        ("part", "written") => &[],
        ("part", "setup") => &["shape: straight", "depth: 9", "pattern: [sc in each st]"],
        ("part", "pattern" | "swatch" | "multiple" | "notes" | "folded" | "openings") => {
            &["shape: straight", "depth: 9"]
        }
        ("part", _) => &["shape: flat"],
        (other, _) => panic!("a section {other} that is never tried"),
    };
    lines.iter().copied().filter(|line| !line.starts_with(&format!("{name}:"))).collect()
}

/// A design with this line among those of a group.
fn design(group: &Group, name: &str, line: &str) -> String {
    let lines = |indent: &str| -> String {
        let lines = beside(group, name).into_iter().chain([line]);
        lines.map(|line| format!("{indent}{line}\n")).collect()
    };
    let (kind, size) = match name {
        "around" | "across" if group.section == "size" => ("basket", "size"),
        _ => ("hat", group.section),
    };
    let whole = |field: &str, value: String| {
        let file = beside(&DESIGN, field).into_iter().map(|line| format!("{line}\n")).collect::<String>();
        format!("{file}{}{field}:{value}", if kind == "hat" { "" } else { "kind: basket\n" })
    };
    match size {
        "design" => lines(""),
        "openings" => whole(
            "parts",
            format!(
                "\n  - crown\n  - that:\n      depth: 9\n      shape: straight\n      openings:\n{}",
                lines("        ")
            ),
        ),
        "part-swatch" => whole("parts", format!("\n  - that:\n      swatch:\n{}", lines("        ")))
            .replace("that:\n", "that:\n      shape: flat\n"),
        "own-stitch" => whole("stitches", format!("\n  shell:\n{}", lines("    "))),
        "ball" => whole("yarn", format!("\n  ball:\n{}", lines("    "))),
        "size" => whole("sizes", format!("\n  one:\n{}", lines("    "))),
        "part"
            if matches!(
                name,
                "depth"
                    | "flare"
                    | "width"
                    | "taper"
                    | "fullness"
                    | "settle"
                    | "pattern"
                    | "setup"
                    | "swatch"
                    | "multiple"
                    | "notes"
                    | "folded"
                    | "openings"
            ) =>
        {
            whole("parts", format!("\n  - crown\n  - that:\n{}", lines("      "))).replace("S: 9, M: 9.5", "S: 9, M: 9")
        }
        "part" => whole("parts", format!("\n  - that:\n{}", lines("      "))),
        section => whole(section, format!("\n{}", lines("  "))),
    }
}

fn told(text: &str) -> (Option<Design>, Vec<Diagnostic>) {
    let mut report = Report::new();
    let design = read(text, &mut report);
    (design, report.diagnostics.into_iter().filter(|found| found.severity == Severity::Error).collect())
}

fn rows() -> impl Iterator<Item = (&'static Group, Row)> {
    GROUPS.iter().flat_map(|group| (group.rows)().into_iter().map(move |row| (*group, row)))
}

#[test]
fn every_example_is_read() {
    for (group, row) in rows() {
        // Colours of an example are those of a yarn that has them.
        let yarn = "yarn: {colours: {main: '#3f7d6e'}}";
        let yarns = "yarn: {colours: {main: '#3f7d6e', sand: '#d9c39a', tide: '#2f6f8f'}}";
        let text = design(group, row.name, row.example).replace(yarn, yarns);
        let (read, complaints) = told(&text);
        assert!(read.is_some(), "{} of {}: {complaints:#?}\n{text}", row.name, group.section);
        assert!(schema::example(&row).is_some(), "{} of {}", row.name, group.section);
    }
}

#[test]
fn what_is_said_to_hold_without_a_field_is_what_holds() {
    let mut tried = 0;
    for (group, row) in rows() {
        let Usual::Value(usual) = row.usual else { continue };
        let line = format!("{}: {usual}", row.name);
        let (said, complaints) = told(&design(group, row.name, &line));
        assert!(said.is_some(), "{line}: {complaints:#?}");
        // As long, so that all else keeps its place.
        let unsaid = told(&design(group, row.name, &format!("#{}", &line[1..]))).0;
        assert_eq!(said, unsaid, "{line}");
        tried += 1;
    }
    assert!(tried > 9, "{tried}");
}

#[test]
fn every_row_is_read_and_every_other_field_refused() {
    for (group, row) in rows() {
        let text = design(group, row.name, &format!("{}: [[1], {{a: [2]}}]", row.name));
        let line = text.lines().position(|line| line.contains("[[1]")).unwrap() + 1;
        let (_, complaints) = told(&text);
        let found = complaints.iter().find(|found| found.place.is_some_and(|place| place.line == line));
        assert!(found.is_some_and(|found| found.code != "unknown-field"), "{}: {complaints:#?}\n{text}", row.name);
        let (_, complaints) = told(&design(group, row.name, &format!("{}x: 1", row.name)));
        let found = complaints.iter().find(|found| found.code == "unknown-field").expect("a complaint");
        let section = format!("`roundelay help design {}`", group.section).replace("design design", "design");
        assert!(found.help.as_ref().is_some_and(|help| help.contains(&section)), "{found:#?}");
    }
}

#[test]
fn the_reference_tells_of_every_section_and_field() {
    let whole = reference(None).unwrap();
    assert!(whole.lines().all(|line| line.chars().count() <= 120), "{whole}");
    for (group, row) in rows() {
        let section = reference(Some(group.section)).unwrap();
        // A section whose name is a field too is followed by that field.
        let (alone, _) = section.split_once(&format!("\n{}, of ", group.section)).unwrap_or((&section, ""));
        assert!(whole.contains(alone), "{alone}");
        let field = reference(Some(row.name)).unwrap();
        assert!(field.contains(row.example) && section.contains(row.example), "{field}");
    }
    assert!(reference(Some("shapes")).unwrap().contains("dome"));
    assert_eq!(reference(Some("depht")), Err(ReferenceMiss { nearest: Some("depth") }));
    assert_eq!(reference(Some("kaleidoscope")), Err(ReferenceMiss { nearest: None }));
}

#[test]
fn a_phrase_is_read_by_its_words_and_numbers() {
    let phrases = ["ring", "ring of #", "chain ring of # with #"];
    assert_eq!(phrase(&phrases, " Ring "), Some((0, vec![])));
    assert_eq!(phrase(&phrases, "ring  of 8"), Some((1, vec![8])));
    assert_eq!(phrase(&phrases, "chain ring of 4 with 12"), Some((2, vec![4, 12])));
    for wrong in ["", "rings", "ring of", "ring of eight", "ring of 8 9", "chain ring of 4"] {
        assert_eq!(phrase(&phrases, wrong), None, "{wrong}");
    }
}
