use super::*;
use crate::craft::{Loops, Stitch};
use crate::report::Severity;
use crate::units::Mm;

const EXAMPLES: [&str; 4] = [
    STARTER,
    include_str!("../../examples/slipway-sun-hat.yaml"),
    include_str!("../../examples/ember-beanie.yaml"),
    include_str!("../../examples/millrace-basket.yaml"),
];

/// A small sound design; the cases below change one line of it.
const SOUND: &str = "\
title: Test hat
units: cm
yarn: {weight: 4, ball: {grams: 50, metres: 85}, colours: {sand: '#d9c39a', tide: '#2f6f8f'}}
hook: 5.5 mm
swatch: {stitch: sc, stitches: 16, rounds: 17, width: 11.3, height: 11.1}
sizes: {S: {head: 54}, M: {head: 57}}
ease: 0 %
work: joined
parts:
  - crown
  - side: {depth: {S: 9, M: 9.5}, colours: {tide: 2, sand: rest}}
  - brim: {width: 7.5, flare: 55°}
";

fn complaints(text: &str) -> (Option<Design>, Vec<Diagnostic>) {
    let mut report = Report::new();
    let design = read(text, &mut report);
    (design, report.diagnostics)
}

/// The sound design with the line that begins with `start` replaced.
fn changed(start: &str, line: &str) -> String {
    assert!(SOUND.lines().any(|old| old.trim_start().starts_with(start)), "{start}");
    let lines = SOUND.lines().map(|old| if old.trim_start().starts_with(start) { line } else { old });
    lines.map(|line| format!("{line}\n")).collect()
}

#[test]
fn the_starter_and_the_examples_are_designs_without_complaint() {
    for text in EXAMPLES {
        let (design, complaints) = complaints(text);
        assert_eq!(complaints, []);
        assert!(design.is_some_and(|design| design.sizes.len() == 3));
    }
}

/// The remarks of the starter name the other values of a field: `units: cm   # cm | in`.
#[test]
fn the_remarks_of_the_starter_tell_the_truth() {
    let mut tried = 0;
    for line in STARTER.lines().filter(|line| line.contains(" | ") && !line.starts_with(['#', ' '])) {
        let (field, remark) = line.split_once('#').unwrap();
        let (name, _) = field.split_once(':').unwrap();
        let values = remark.split([':', ';']).next().unwrap();
        for value in values.split('|').map(|value| value.split('(').next().unwrap().trim()) {
            let (_, complaints) = complaints(&STARTER.replace(line, &format!("{name}: {value}")));
            assert!(complaints.iter().all(|found| found.code != "unknown-value"), "{name}: {value}: {complaints:#?}");
            tried += 1;
        }
    }
    assert!(tried > 15, "{tried}");
}

#[test]
fn the_starter_names_every_field() {
    let words: Vec<&str> = STARTER.split(|c: char| !c.is_ascii_alphanumeric()).collect();
    let untold: Vec<&str> = super::rows::every_field().filter(|field| !words.contains(field)).collect();
    assert!(untold.is_empty(), "{untold:?}");
}

#[test]
fn a_design_is_resolved_with_every_default() {
    let (design, complaints) = complaints(SOUND);
    assert_eq!(complaints, []);
    let design = design.unwrap();
    assert_eq!(design.work, Work::Joined { chain_counts: false });
    assert_eq!(design.sizes[1].around, Mm::from_cm(57.0));
    let Body::Profile(brim) = &design.parts[2].body else { panic!("solved") };
    assert_eq!((brim.settle, brim.most, brim.start.clone()), (2, 2, vec![Start::Before; 2]));
    let Body::Profile(crown) = &design.parts[0].body else { panic!("solved") };
    assert_eq!(crown.shape, Shape::flat(vec![Mm::from_cm(54.0), Mm::from_cm(57.0)]));
    let stripes = [Stripe { colour: 1, rounds: Some(2) }, Stripe { colour: 0, rounds: None }];
    assert_eq!(design.parts[1].stripes, stripes);
    assert_eq!(design.parts[2].stripes, [Stripe { colour: 0, rounds: None }]);
}

#[test]
fn several_stripes_may_share_the_rest() {
    let text = changed("- side", "  - side: {depth: 9, colours: [{tide: rest}, {sand: 2}, {tide: rest}]}");
    let (design, complaints) = complaints(&text);
    assert_eq!(complaints, []);
    let rounds: Vec<Option<u32>> = design.unwrap().parts[1].stripes.iter().map(|stripe| stripe.rounds).collect();
    assert_eq!(rounds, [None, Some(2), None]);
}

#[test]
fn uk_terms_name_uk_stitches() {
    let (design, _) = complaints(EXAMPLES[3]);
    let design = design.unwrap();
    assert_eq!(design.swatches[0].stitch, Stitch::HDC);
    assert_eq!((design.parts[1].loops, design.parts[2].loops), (Loops::Back, Loops::Front));
}

#[test]
fn written_rounds_keep_their_lines() {
    let text = changed(
        "- crown",
        "  - crown:\n      written: |\n        Rnd 1: 6 sc in ring (6)\n\n        Rnd 2: *inc; rep\n",
    );
    let (design, complaints) = complaints(&text);
    assert_eq!(complaints, []);
    let Body::Written(sizes) = &design.unwrap().parts[0].body else { panic!("written") };
    let rounds = &sizes[0];
    let told: Vec<(&str, usize, usize)> = rounds
        .iter()
        .map(|round| (round.value.as_str(), round.place.unwrap().line, round.place.unwrap().column))
        .collect();
    assert_eq!(told, [("Rnd 1: 6 sc in ring (6)", 12, 9), ("Rnd 2: *inc; rep", 14, 9)]);
    for round in rounds {
        let place = round.place.unwrap();
        assert_eq!(&text[place.offset..place.offset + place.length], round.value);
    }
}

#[test]
fn written_rounds_can_stand_in_a_list() {
    let text = changed(
        "- crown",
        "  - crown:\n      written:\n        - Rnd 1: 6 sc in ring (6)\n        - 2 sc in each st\n",
    );
    let (design, complaints) = complaints(&text);
    assert_eq!(complaints, []);
    let Body::Written(sizes) = &design.unwrap().parts[0].body else { panic!("written") };
    let rounds = &sizes[0];
    assert_eq!(rounds[0].value, "Rnd 1: 6 sc in ring (6)");
    assert_eq!(rounds[1].value, "2 sc in each st");
    let place = rounds[0].place.unwrap();
    assert_eq!(&text[place.offset..place.offset + place.length], rounds[0].value);
}

/// The start of the line changed, the new line, the code of the complaint, the text it points at, words of its message
/// or help.
type Case = (&'static str, &'static str, &'static str, &'static str, &'static str);

/// Slips that can't be worked with.
const WRONG: &[Case] = &[
    ("title", "titel: x", "unknown-field", "titel", "did you mean `title`"),
    ("title", "title:", "no-value", "title", "after the colon"),
    ("title", "title: [a]", "wrong-kind", "[", "a single value"),
    ("units", "units: kg", "unknown-value", "kg", "`cm` and `in`"),
    ("units", "title: again", "twice", "title", "first on line 1"),
    ("yarn", "yarn: {weight: 9}", "unknown-weight", "9", "0 to 7"),
    ("yarn", "yarn: {colours: {sand: red, tide: '#2f6f8f'}}", "wrong-colour", "red", "hexadecimal"),
    ("yarn", "yarn: {colours: {sand: '#d9c39g', tide: '#2f6f8f'}}", "wrong-colour", "'#d9c39g'", "hexadecimal"),
    (
        "yarn",
        "yarn: {colours: {sand: '#d9c39a', tide: '#2f6f8f'}, ball: {grams: 0, metres: 85}}",
        "out-of-range",
        "0",
        "scale",
    ),
    ("hook", "hook: 5 cm", "out-of-range", "5 cm", "0.4 mm"),
    ("hook", "hook: five", "unknown-hook", "five", "`H-8`"),
    ("hook", "hook: H", "unknown-hook", "H", "`H-8`"),
    (
        "swatch",
        "swatch: {stitch: sc, stitches: 0, rounds: 17, width: 11.3, height: 11.1}",
        "wrong-count",
        "0,",
        "from ½",
    ),
    ("swatch", "swatch: {stitch: sc, stitches: 16, rounds: 17, width: 11.3}", "missing-field", "{stitch", "`height`"),
    (
        "swatch",
        "swatch: {stitch: sc, stitches: 16, rounds: 17, width: 11.3 kg, height: 11.1}",
        "wrong-unit",
        "11.3 kg",
        "a length",
    ),
    (
        "swatch",
        "swatch: {stitch: sc, stitches: 16, rounds: 17, width: 0, height: 11.1}",
        "out-of-range",
        "0,",
        "more than 0",
    ),
    (
        "swatch",
        "swatch: {stitch: sc, stitches: 16, rounds: 17, width: 11 m, height: 11.1}",
        "impossible-gauge",
        "11 m",
        "mm wide",
    ),
    (
        "swatch",
        "swatch: {stitch: sc, stitches: 16, rounds: 17, width: 11.3, height: 11.1, thick: 0}",
        "impossible-thickness",
        "0}",
        "0.0 mm thick",
    ),
    (
        "swatch",
        "swatch: {stitch: sc, stitches: 16, rounds: 17, width: 11.3, height: 11.1, thick: 5 cm}",
        "impossible-thickness",
        "5 cm",
        "between two rulers",
    ),
    (
        "swatch",
        "swatch: {stitch: htr, stitches: 16, rounds: 17, width: 11.3, height: 11.1}",
        "unknown-stitch",
        "htr",
        "`hdc` in US terms",
    ),
    ("sizes", "sizes: {S: {head: 0}, M: {head: 57}}", "out-of-range", "0}", "10 cm and 80 cm"),
    ("sizes", "sizes: {S: {head: 54}, M: {head: 5 m}}", "out-of-range", "5 m", "look at the unit"),
    ("sizes", "sizes: {S: {head: 54}, M: {head: 57}, M: {head: 60}}", "twice", "M: {head: 60", "keep one"),
    ("sizes", "sizes: {S: {head: 54}, M: {}}", "missing-field", "M: {}", "head: 56"),
    ("sizes", "sizes: {S: {head: 54}, M: who}", "unknown-row", "M: who", "rows of `who`"),
    ("sizes", "sizes: {S: {head: 54}, M: whom}", "unknown-table", "whom", "did you mean `who`"),
    ("sizes", "sizes: {S: {head: 54}, M: {head: 57, around: 60}}", "two-measures", "60}}", "keep one"),
    ("sizes", "sizes: {S: 54, M: 57}", "missing-field", "54", "`S: {head: 54}`"),
    ("sizes", "sizes: [54, 57]", "wrong-kind", "[54", "write `sizes:"),
    ("ease", "ease: -2", "wrong-unit", "-2", "`-2 %`"),
    ("ease", "ease: -60 %", "out-of-range", "-60", "nobody can wear"),
    ("work", "work: spirral", "unknown-value", "spirral", "did you mean `spiral`"),
    ("- crown", "  - crown: {start: rings}", "unknown-value", "rings", "`ring of 8`"),
    ("- crown", "  - crown: {depth: 5}", "unused-field", "5}", "shape flat"),
    ("- crown", "  - crown: {shape: dome, rise: 40}", "out-of-range", "40", "radius"),
    ("- crown", "  - crown: {shape: straight, depth: 4}", "out-of-reach", "crown", "start: chain"),
    ("- crown", "  - crown: {shape: round}", "unknown-value", "round", "`dome`"),
    ("- crown", "  - crown: {written: 'Rnd 1: 6 sc', shape: flat}", "written-and-solved", "flat}", "keep `written`"),
    ("- crown", "  - {crown: {}, side: {}}", "wrong-kind", "side: {}", "one name"),
    ("- side", "  - side: {depth: {S: 9}, colours: tide}", "missing-size", "depth", "`M`"),
    ("- side", "  - side: {depth: {S: 9, M: 9, XL: 9}}", "unknown-size", "XL", "`S` and `M`"),
    ("- side", "  - side: {depht: 9}", "unknown-field", "depht", "did you mean `depth`"),
    ("- side", "  - side: {depth: 0}", "out-of-range", "0}", "look at the unit"),
    ("- side", "  - side: {depth: 9, colours: {tyde: 2, sand: rest}}", "unknown-colour", "tyde", "did you mean `tide`"),
    ("- side", "  - side: {depth: 9, start: ring}", "unused-field", "ring}", "only the first part"),
    ("- side", "  - side: {depth: 9, shape: close}", "unused-field", "9,", "take it away"),
    ("- side", "  - side: {shape: close}", "out-of-reach", "brim", "side closes the piece"),
    ("- brim", "  - brim: {width: 6}", "missing-field", "brim", "`flare: 55°`"),
    ("- brim", "  - brim: {width: 6, flare: 200°}", "out-of-range", "200°", "90°"),
    ("- brim", "  - brim: {width: 6, flare: 5 cm}", "wrong-unit", "5 cm", "an angle"),
    ("- brim", "  - shelf: {}", "missing-field", "shelf", "`shape`"),
];

/// What is amiss with the complaint that a case expects; nothing where all is as it should be.
fn amiss(text: &str, code: &str, at: &str, words: &str, severity: Severity) -> Option<String> {
    let (design, complaints) = complaints(text);
    if design.is_some() == (severity == Severity::Error) {
        return Some(format!("the design is {}: {complaints:#?}", if design.is_some() { "taken" } else { "refused" }));
    }
    let Some(found) = complaints.iter().find(|complaint| complaint.code == code) else {
        return Some(format!("no {code} in {complaints:#?}"));
    };
    let points = found.place.is_some_and(|place| text[place.offset..].starts_with(at));
    let told = format!("{} / {}", found.message, found.help.as_deref().unwrap_or_default());
    let right = found.severity == severity && points && told.contains(words);
    (!right).then(|| format!("{found:#?}"))
}

fn each(cases: &[Case], severity: Severity) {
    let wrong = cases.iter().filter_map(|(start, line, code, at, words)| {
        let amiss = amiss(&changed(start, line), code, at, words, severity)?;
        Some(format!("{line} ({code} at `{at}`, {words}): {amiss}"))
    });
    let wrong: Vec<String> = wrong.collect();
    assert!(wrong.is_empty(), "{}", wrong.join("\n\n"));
}

#[test]
fn each_slip_is_told_with_its_place_and_its_cure() {
    each(WRONG, Severity::Error);
}

#[test]
fn many_slips_are_told_at_a_time() {
    let text = "title: x\nswatch: {stitch: qq, stitches: 0}\nsizes: {S: {head: 0}}\nease: 2\nparts:\n  - side: {depth: 3 kg}\n";
    let (_, complaints) = complaints(text);
    let errors = complaints.iter().filter(|complaint| complaint.severity == Severity::Error).count();
    assert!(errors >= 8, "{complaints:#?}");
}

/// Doubtful but not wrong: the design stands and a warning says why.
const DOUBTFUL: &[Case] = &[
    ("title", "title: Hat → brim", "missing-character", "→", "`→`"),
    ("hook", "hook: H-8", "hook-letter", "H-8", "5 mm"),
    ("hook", "hook: 12 mm", "unusual-hook", "12 mm", "5.5 to 6.5 mm"),
    (
        "swatch",
        "swatch: {stitch: sc, stitches: 30, rounds: 31, width: 11.3, height: 11.1}",
        "unusual-gauge",
        "{stitch",
        "11 to 14",
    ),
    (
        "swatch",
        "swatch: {stitch: sc, stitches: 16, rounds: 8, width: 11.3, height: 11.1}",
        "unusual-gauge",
        "{stitch",
        "times as high",
    ),
    (
        "swatch",
        "swatch: {stitch: sc, stitches: 6, rounds: 6, width: 4.3, height: 4}",
        "small-swatch",
        "{stitch",
        "10 cm",
    ),
    (
        "swatch",
        "swatch: {stitch: sc, stitches: 16, rounds: 17, width: 11.3, height: 11.1, grams: 120}",
        "unusual-weight",
        "{stitch",
        "weigh the swatch again",
    ),
    ("sizes", "sizes: {S: {head: 57}, M: {head: 54}}", "sizes-not-rising", "M: {head: 54", "smallest"),
    ("sizes", "sizes: {S: {who: child-4y}, M: {head: 54}}", "sources-disagree", "child-4y", "51.7"),
    (
        "sizes",
        "sizes: {S: {council: toddler}, M: {head: 54}}",
        "sources-disagree",
        "toddler",
        "below measured children",
    ),
    ("sizes", "sizes: {S: {who: child-3y}, M: {uk90: child-6y}}", "two-tables", "uk90", "don't join"),
    ("sizes", "sizes: {S: {head: 52, age: 3-6 months}, M: {head: 54}}", "unusual-head", "52,", "37.2 cm to 45.6 cm"),
    ("ease", "ease: 25 %", "unusual-ease", "25 %", "common practice"),
    ("work", "work: joined, chain counts", "chain-1", "joined", "hardly ever"),
    ("- brim", "  - brim: {width: 5.5, flare: 70°}", "narrow-brim", "5.5", "7.5 cm"),
    ("- brim", "  - side: {depth: 5}", "same-name", "side", "line 11"),
];

#[test]
fn each_doubt_is_a_warning_with_its_place() {
    each(DOUBTFUL, Severity::Warning);
}

#[test]
fn brims_are_measured_by_age() {
    let brim = |sizes: &str, width: &str| {
        let text = changed("sizes", sizes)
            .replace("width: 7.5, flare: 55°", width)
            .replace("depth: {S: 9, M: 9.5}", "depth: 9");
        complaints(&text).1.iter().any(|complaint| complaint.code == "narrow-brim")
    };
    let child = "sizes: {S: {uk90: child-6y}}";
    assert!(!brim(child, "width: 5, flare: 70°"));
    assert!(brim(child, "width: 4.9, flare: 70°"));
    // The brim of a bucket hat may be 6 cm for a grown head; a cuff is no brim.
    let grown = "sizes: {S: {ansur: man}}";
    assert!(!brim(grown, "width: 6, flare: 45°"));
    assert!(brim(grown, "width: 6, flare: 60°"));
    assert!(!brim(grown, "width: 3, flare: 5°"));
}

#[test]
fn texts_that_are_no_design_are_told_as_such() {
    for (bytes, code) in [
        (&b""[..], "empty"),
        (b"# only a remark\n", "empty"),
        (b"hello", "wrong-kind"),
        (b"- a\n- b\n", "wrong-kind"),
        (b"\x89PNG\r\n\x1a\n\0\0", "not-utf-8"),
        (b"title: \xff", "not-utf-8"),
        (b"{{{{{{{{{{{{{{{{{{{{{{{{{{{{{{{{{{{{{{{{", "not-yaml"),
        (b"\0\x01\x02", "not-yaml"),
        (b"a: &a [x,x]\nb: &b [*a,*a]\nc: [*b,*b]\n", "unknown-field"),
    ] {
        let mut report = Report::new();
        assert_eq!(read_bytes(bytes, &mut report), None);
        assert!(report.diagnostics.iter().any(|found| found.code == code), "{code}: {report:?}");
    }
    let mut report = Report::new();
    assert_eq!(read_bytes(&vec![b'a'; crate::limits::BYTES + 1], &mut report), None);
    assert_eq!(report.diagnostics[0].code, "file-too-large");
}

#[test]
fn a_byte_order_mark_is_no_part_of_the_design() {
    let mut report = Report::new();
    let bytes = [b"\xef\xbb\xbf", SOUND.as_bytes()].concat();
    assert!(read_bytes(&bytes, &mut report).is_some(), "{report:?}");
}

mod any_input {
    use proptest::prelude::*;

    use super::{EXAMPLES, SOUND, complaints};
    use crate::design::read_bytes;
    use crate::report::Report;

    /// Words that mean something somewhere in a design, and signs that mean something to YAML.
    const WORDS: &[&str] = &[
        "",
        "0",
        "-1",
        "9 cm",
        "1e99",
        "55°",
        "%",
        "-2 %",
        "{",
        "}",
        "[",
        "]",
        ": ",
        "- ",
        "\n",
        "  ",
        "#",
        "*a",
        "&a ",
        "|\n",
        "'",
        "\"",
        "~",
        "ring",
        "chain ring of 9",
        "dome",
        "close",
        "sphere",
        "who",
        "rest",
        "written",
        "crown",
        "side",
        "{S: 1}",
        "\u{0}",
        "\t",
        "→",
        "é",
        "<<",
        "?",
        "!!str ",
        "99999999999999999999",
        "½",
        "sc",
        "basket",
    ];

    /// Every place a complaint points at lies in the text.
    fn check(text: &str) {
        let (design, complaints) = complaints(text);
        for complaint in &complaints {
            let place = complaint.place.unwrap_or_default();
            assert!(text.get(place.offset..place.offset + place.length).is_some(), "{complaint:?}");
        }
        if let Some(design) = design {
            assert!(!design.parts.is_empty() && !design.sizes.is_empty());
            assert!(design.swatches.iter().all(|swatch| swatch.gauge.flat_growth().is_finite()));
        } else {
            assert!(complaints.iter().any(|complaint| complaint.severity == crate::report::Severity::Error));
        }
    }

    proptest! {
        #![proptest_config(ProptestConfig::with_cases(400))]

        #[test]
        fn bytes_never_panic(bytes in prop::collection::vec(any::<u8>(), 0..400)) {
            let mut report = Report::new();
            let design = read_bytes(&bytes, &mut report);
            prop_assert!(design.is_some() || report.has_errors());
        }

        #[test]
        fn changed_words_never_panic(
            example in 0..5_usize,
            changes in prop::collection::vec((any::<prop::sample::Index>(), 0..12_usize, 0..WORDS.len()), 1..6),
        ) {
            let mut text = if example == 4 { SOUND.to_owned() } else { EXAMPLES[example].to_owned() };
            for (at, length, word) in changes {
                let mut from = at.index(text.len() + 1);
                while !text.is_char_boundary(from) {
                    from -= 1;
                }
                let mut to = (from + length).min(text.len());
                while !text.is_char_boundary(to) {
                    to -= 1;
                }
                text.replace_range(from..to.max(from), WORDS[word]);
            }
            check(&text);
        }

        #[test]
        fn shuffled_lines_never_panic(example in 0..5_usize, seed in prop::collection::vec(any::<prop::sample::Index>(), 1..8)) {
            let text = if example == 4 { SOUND } else { EXAMPLES[example] };
            let mut lines: Vec<&str> = text.lines().collect();
            for index in seed {
                let line = lines.remove(index.index(lines.len()));
                lines.insert(index.index(lines.len() + 1), line);
            }
            check(&lines.join("\n"));
        }
    }
}

#[test]
fn a_swatch_may_be_said_in_one_line() {
    let sound = changed("swatch", "swatch: {stitch: sc, stitches: 18, rounds: 20.5, width: 10, height: 10}");
    let wanted = complaints(&sound).0.expect("a design").swatches[0];
    for said in ["18 sc and 20.5 rounds in 10 cm", "18 sc, 20½ rnds = 10", "18 single crochet x 20.5 rows over 100 mm"]
    {
        let (design, complaints) = complaints(&changed("swatch", &format!("swatch: {said}")));
        let swatch = design.unwrap_or_else(|| panic!("{said}: {complaints:#?}")).swatches[0];
        assert_eq!(
            (swatch.stitch, swatch.worked, swatch.gauge),
            (wanted.stitch, wanted.worked, wanted.gauge),
            "{said}"
        );
    }
    for (wrong, code) in [
        ("18 sc in 10 cm", "wrong-swatch"),
        ("18 and 20 rounds in 10 cm", "wrong-swatch"),
        ("18 sc and 20 rounds", "wrong-swatch"),
        ("eighteen sc and 20 rounds in 10 cm", "wrong-count"),
        ("18 sc and 20 rounds in ten", "wrong-unit"),
        ("18 xyz and 20 rounds in 10 cm", "unknown-stitch"),
    ] {
        let (design, complaints) = complaints(&changed("swatch", &format!("swatch: {wrong}")));
        assert!(design.is_none() && complaints.iter().any(|found| found.code == code), "{wrong}: {complaints:#?}");
    }
}

#[test]
fn a_fabric_that_is_meant_to_be_firm_is_not_doubted_for_it() {
    let firm = changed("swatch", "swatch: {stitch: sc, stitches: 24, rounds: 25, width: 10, height: 10}");
    let firm = firm.replace("hook: 5.5 mm", "hook: 3 mm");
    let doubts = |text: &str| -> Vec<&'static str> {
        let (_, found) = complaints(text);
        found.iter().map(|found| found.code).filter(|code| code.starts_with("unusual")).collect()
    };
    assert_eq!(doubts(&firm), ["unusual-gauge", "unusual-hook"]);
    assert_eq!(doubts(&format!("expect: firm\n{firm}")), [""; 0]);
    assert_eq!(doubts(&format!("expect: loose\n{firm}")), ["unusual-gauge", "unusual-hook"]);
}
