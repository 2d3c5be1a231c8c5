//! Every text that a maker writes, in every field and both kinds of files, put through everything that is made of it:
//! nothing that speaks to a terminal, turns the writing round or is no character comes out anywhere.

#![allow(clippy::unwrap_used)]

use std::process::{Command, Stdio};

use roundelay::design::Printed;
use roundelay::file::Output;
use roundelay::page::{Options, Paper};
use roundelay::pattern::{Beside, Pattern};
use roundelay::publish::{LISTINGS, PRODUCTS, list, publish, stem_of};
use roundelay::report::{Report, clean};

use crate::checkers::{extracted, tool};
use crate::photo::grey_photo;

/// A control of each set, an escape, bidirectional marks and overrides, what is not seen, and noncharacters.
const FOUL: [char; 14] = [
    '\u{7}', '\u{1b}', '\u{7f}', '\u{9b}', '\u{ad}', '\u{200b}', '\u{200e}', '\u{202e}', '\u{2066}', '\u{2028}',
    '\u{feff}', '\u{fdd0}', '\u{fffe}', '\u{ffff}',
];

/// A word with one of them inside.
fn word(clean: &str, foul: char) -> String {
    let (first, rest) = clean.split_at(2);
    format!("{first}{foul}{rest}")
}

/// The word in double quotes, as YAML 1.2 (5.7) lets every character be written.
fn quoted(word: &str) -> String {
    let escaped = |c: char| if c.is_ascii_alphanumeric() { c.to_string() } else { format!("\\U{:08x}", u32::from(c)) };
    format!("\"{}\"", word.chars().map(escaped).collect::<String>())
}

/// A mat whose every printed text has this character inside.
fn mat(foul: char) -> String {
    let [title, designer, about, alt, fibre, colour, palette, part, size, stitch, note, imprint] = [
        "Titleword",
        "Designerword",
        "Aboutword",
        "Altword",
        "Fibreword",
        "Colourword",
        "Paletteword",
        "Partword",
        "Sizeword",
        "Stitchword",
        "Noteword",
        "Imprintword",
    ]
    .map(|clean| quoted(&word(clean, foul)));
    format!(
        "title: {title}\ndesigner: {designer}\nabout: {about}\nnotes: {note}\ncopyright: {imprint}\nkind: mat\nphoto: {{file: mat.png, alt: {alt}}}\n\
         yarn: {{weight: 4, fibre: {fibre}, colours: {{{colour}: \"#2f6f8f\"}}}}\n\
         palettes: {{{palette}: {{{colour}: \"#d9c39a\"}}}}\n\
         swatch: {{stitch: sc, stitches: 20, rounds: 20, width: 10, height: 10}}\n\
         stitches: {{knot: {{work: \"2 sc\", name: {stitch}}}}}\n\
         sizes: {{{size}: {{across: 5}}}}\nwork: spiral\nparts:\n  - {part}: {{start: ring of 6, shape: flat}}\n  \
         - edge: {{written: \"knot in each st around\"}}\n"
    )
}

fn look(text: &str, what: &str) {
    let foul = text.chars().find(|c| !matches!(c, '\n' | '\t' | '\r') && !clean::plain(*c));
    assert_eq!(foul, None, "{what}");
}

/// Looks at the text of files, and at what a reader gets out of a PDF.
fn look_at(outputs: &[Output], what: &str) -> String {
    let mut seen = String::new();
    for output in outputs {
        look(&output.name, what);
        let text = match String::from_utf8(output.bytes.clone()) {
            Ok(text) => text,
            Err(_) if output.name.ends_with(".pdf") => match tool("pdftotext") {
                // A form feed ends every page.
                Some(tool) => extracted(&tool, &output.bytes).replace('\u{c}', "\n"),
                None => continue,
            },
            Err(_) => continue,
        };
        look(&text, &format!("{what}: {}", output.name));
        seen += &text;
    }
    seen
}

fn everything(pattern: &Pattern, stem: &str) -> Vec<Output> {
    let (options, mut report) = (Options::new(Paper::a4()), Report::new());
    publish(pattern, stem, &PRODUCTS, &options, &mut report).unwrap_or_else(|| panic!("{report:#?}"))
}

#[test]
fn no_field_of_a_design_brings_a_hidden_character_into_what_is_made() {
    for foul in FOUL {
        let what = format!("U+{:04X}", u32::from(foul));
        let pattern = Pattern::read(mat(foul).as_bytes()).unwrap_or_else(|report| panic!("{what}: {report:#?}"));
        let hidden = pattern.report.diagnostics.iter().filter(|one| one.code == "hidden-character").count();
        let blank = foul.is_whitespace();
        assert_eq!(hidden, if blank { 0 } else { 12 }, "{what}: {:#?}", pattern.report);
        let pattern = pattern.with_photo(&grey_photo()).unwrap_or_else(|report| panic!("{what}: {report:#?}"));
        let seen = look_at(&everything(&pattern, &stem_of(&word("filename", foul))), &what);
        if !blank {
            for clean in [
                "Titleword",
                "Designerword",
                "Aboutword",
                "Altword",
                "Fibreword",
                "Colourword",
                "Paletteword",
                "Partword",
                "Sizeword",
                "Stitchword",
                "Noteword",
                "Imprintword",
            ] {
                assert!(seen.contains(clean), "{what}: {clean} is shown");
            }
        }
        for listing in &LISTINGS {
            look(&list(&pattern, listing, None).unwrap(), &what);
        }
    }
}

#[test]
fn no_line_of_written_rounds_does_either() {
    let swatch = b"swatch: {stitch: sc, stitches: 20, rounds: 20, width: 10, height: 10}\n";
    for foul in FOUL.into_iter().filter(|c| !c.is_whitespace()) {
        let what = format!("U+{:04X}", u32::from(foul));
        let (title, part) = (word("Titleword", foul), word("Partword", foul));
        let text =
            format!("Title: {title}\nPart: {part}\nRnd 1: 6 sc in ring (6)\nRnd 2: 2 sc in each st around (12)\n");
        let beside = Some(Beside { name: "swatch", bytes: swatch });
        let pattern =
            Pattern::read_rounds(text.as_bytes(), beside).unwrap_or_else(|report| panic!("{what}: {report:#?}"));
        let seen = look_at(&everything(&pattern, "mat"), &what);
        assert!(seen.contains("Titleword") && seen.contains("Partword"), "{what}");
    }
}

/// The same characters where they are wrong altogether: in names of fields, values, rounds, names of files.
#[test]
fn no_complaint_carries_one_to_the_terminal() {
    let folder = tempfile::tempdir().unwrap();
    for foul in FOUL.into_iter().filter(|c| *c != '\u{feff}') {
        let odd = word("nonsense", foul);
        let texts = [
            format!("{}: 1\n{}", quoted(&odd), mat('x')),
            mat('x').replace("kind: mat", &format!("kind: {}", quoted(&odd))),
            mat('x').replace("stitch: sc", &format!("stitch: {}", quoted(&odd))),
            mat('x').replace("across: 5", &format!("across: {}", quoted(&odd))),
            mat('x').replace("ring of 6", &quoted(&odd)),
            format!("title: {odd}\n"),
            format!("Rnd 1: {odd} in ring\n"),
        ];
        for (index, text) in texts.iter().enumerate() {
            let name = format!("{odd}.{}", if index == 6 { "txt" } else { "yaml" });
            std::fs::write(folder.path().join(&name), text).unwrap();
            for format in ["text", "json"] {
                let mut check = Command::new(env!("CARGO_BIN_EXE_roundelay"));
                check.args(["check", "--format", format, &name]).current_dir(folder.path()).stdin(Stdio::null());
                let output = check.output().unwrap();
                assert_ne!(output.status.code(), Some(0), "{odd:?} {index}");
                for said in [output.stdout, output.stderr] {
                    look(&String::from_utf8(said).unwrap(), &format!("{odd:?} {index} {format}"));
                }
            }
        }
    }
}

#[test]
fn every_text_has_a_limit_that_is_told_with_its_place() {
    let fields = [
        "Titlexword",
        "Designexrword",
        "Aboutxword",
        "Altxword",
        "Fibrexword",
        "Colourxword",
        "Palettexword",
        "Partxword",
        "Sizexword",
        "Stitchxword",
        "Notexword",
        "Imprintxword",
    ];
    let plain = mat('x');
    for (what, field) in Printed::ALL.into_iter().zip(fields) {
        let field = word(&field.replace('x', ""), 'x');
        assert!(plain.contains(&field), "{field}: {plain}");
        let most = what.most();
        for (count, fits) in [(most, true), (most + 1, false), (900, most >= 900)] {
            let text = plain.replace(&field, &"m".repeat(count));
            match Pattern::read(text.as_bytes()) {
                Ok(_) => assert!(fits, "{what:?}: {count}"),
                Err(report) => {
                    assert!(!fits, "{what:?}: {count}: {report:#?}");
                    let told = report
                        .diagnostics
                        .iter()
                        .find(|one| ["wrong-title", "wrong-name", "wrong-words"].contains(&one.code));
                    assert!(told.is_some_and(|one| one.place.is_some()), "{what:?}: {report:#?}");
                }
            }
        }
    }
}

/// Marks that pile up on one letter are characters too, and a text of them takes no longer than another.
#[test]
fn a_text_of_nothing_but_marks_is_read_and_refused() {
    let text = mat('x').replace("Abxoutword", &"\u{301}".repeat(200_000));
    let report = Pattern::read(text.as_bytes()).unwrap_err();
    assert_eq!(report.diagnostics.iter().filter(|one| one.code == "wrong-words").count(), 1, "{report:#?}");
}
