//! Thousands of inputs that nobody would write: files changed at random, and designs put together from sound pieces in
//! unsound ways. Whatever comes of one, it is a piece that adds up or a complaint, and never a panic.
//!
//! The seeds are `tests/cases/`, the examples and the written rounds of `tests/rounds/`; the words, in the form of libFuzzer
//! and AFL, stand in `tests/fuzz/dictionary.txt`. `ROUNDELAY_FUZZ=100000` runs so many of each kind; a number after a colon
//! begins another series: `100000:7`. An input that fails is printed, and goes into `tests/cases/` once it is mended.

#![allow(clippy::unwrap_used)]

use std::panic::{self, AssertUnwindSafe};
use std::path::Path;

use roundelay::drawing::{ChartOptions, chart};
use roundelay::file::svg;
use roundelay::page::{Options, Paper};
use roundelay::pattern::{Beside, Pattern};
use roundelay::plan::audit;
use roundelay::publish::{LISTINGS, PRODUCTS, Row, list, publish, stem_of};
use roundelay::report::{Report, clean, codes};

/// Inputs of each kind where nothing else is asked for.
const USUAL: u64 = 300;

/// Numbers that come in the same order every time: the generator `splitmix64` of Steele, Lea and Flood (2014).
struct Chance(u64);

impl Chance {
    fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        z ^ (z >> 31)
    }

    fn below(&mut self, most: usize) -> usize {
        (self.next() % most.max(1) as u64) as usize
    }

    fn of<'t, T>(&mut self, things: &'t [T]) -> &'t T {
        &things[self.below(things.len())]
    }
}

/// How many inputs, and of which series.
fn asked() -> (u64, u64) {
    let said = std::env::var("ROUNDELAY_FUZZ").unwrap_or_default();
    let (count, series) = said.split_once(':').unwrap_or((&said, ""));
    (count.parse().unwrap_or(USUAL), series.parse().unwrap_or(1))
}

fn root() -> &'static Path {
    Path::new(env!("CARGO_MANIFEST_DIR"))
}

/// Files of a folder, in the order of their names.
fn files(folder: &str, ending: &str) -> Vec<Vec<u8>> {
    let mut paths: Vec<_> =
        std::fs::read_dir(root().join(folder)).unwrap().map(|entry| entry.unwrap().path()).collect();
    paths.sort();
    paths.retain(|path| path.extension().is_some_and(|own| own == ending));
    paths.into_iter().map(|path| std::fs::read(path).unwrap()).collect()
}

/// The words of the dictionary.
fn dictionary() -> Vec<Vec<u8>> {
    let text = std::fs::read_to_string(root().join("tests/fuzz/dictionary.txt")).unwrap();
    let word = |line: &str| {
        let inner = line.strip_prefix('"')?.strip_suffix('"')?;
        let mut pieces = inner.split("\\x");
        let mut bytes = pieces.next()?.as_bytes().to_vec();
        for piece in pieces {
            bytes.push(u8::from_str_radix(&piece[..2], 16).unwrap());
            bytes.extend(piece[2..].bytes());
        }
        Some(bytes)
    };
    text.lines().filter_map(word).collect()
}

/// An input changed in a few places: bytes changed, taken out, said twice, words put in, the end of another input put on.
fn changed(seed: &[u8], seeds: &[Vec<u8>], words: &[Vec<u8>], chance: &mut Chance) -> Vec<u8> {
    let mut input = seed.to_vec();
    for _ in 0..=chance.below(6) {
        let at = chance.below(input.len() + 1);
        let end = (at + 1 + chance.below(24)).min(input.len());
        match chance.below(8) {
            0 if at < input.len() => input[at] ^= 1 << chance.below(8),
            1 if at < end => drop(input.drain(at..end)),
            2 if at < end => {
                let again = input[at..end].repeat(1 + chance.below(3));
                input.splice(at..at, again);
            }
            3 => {
                let other = chance.of(seeds);
                let from = chance.below(other.len());
                input.truncate(at);
                input.extend(&other[from..]);
            }
            4 => input.splice(at..at, chance.next().to_string().into_bytes()).for_each(drop),
            _ => input.splice(at..at, chance.of(words).iter().copied()).for_each(drop),
        }
    }
    input
}

/// Everything that is done with an input, short of what takes long with large pieces.
fn whole(read: Result<Pattern, Report>) {
    let (report, pattern) = match read {
        Ok(pattern) => (pattern.report.clone(), Some(pattern)),
        Err(report) => {
            assert!(report.has_errors(), "a failure says why");
            (report, None)
        }
    };
    for one in &report.diagnostics {
        assert!(one.message.chars().all(clean::plain), "{}", one.message);
    }
    let Some(pattern) = pattern else { return };
    pattern.plan.sizes.iter().for_each(|size| audit(size).unwrap());
    let stitches: u64 = pattern.plan.sizes.iter().map(|size| size.stitches()).sum();
    if stitches > 4000 {
        return;
    }
    for listing in &LISTINGS {
        list(&pattern, listing, None).unwrap();
    }
    let options = Options::new(Paper::a4());
    let small = PRODUCTS.iter().filter(|product| ["text", "csv", "web"].contains(&product.name()));
    publish(&pattern, "piece", small, &options, &mut Report::new()).unwrap();
    assert!(svg::write(&chart(&pattern.plan, 0, &ChartOptions::default())).ends_with("</svg>\n"));
}

const SWATCH: &[u8] = b"swatch: {stitch: sc, stitches: 16, rounds: 17, width: 11, height: 11.1}\n";

fn rounds(text: &[u8]) -> Result<Pattern, Report> {
    Pattern::read_rounds(text, Some(Beside { name: "swatch", bytes: SWATCH }))
}

/// Runs inputs, and says which one failed.
fn all(kind: &str, mut input: impl FnMut(&mut Chance) -> Vec<u8>, run: impl Fn(&[u8])) {
    let (count, series) = asked();
    for number in 0..count {
        // Each has a beginning of its own, so that one can be run again alone.
        let text = input(&mut Chance(series << 32 | number));
        let failed = panic::catch_unwind(AssertUnwindSafe(|| run(&text))).is_err();
        assert!(!failed, "{kind} {series}/{number} fails:\n{}", String::from_utf8_lossy(&text));
    }
}

#[test]
fn designs_changed_at_random() {
    let seeds = [files("tests/cases", "yaml"), files("examples", "yaml")].concat();
    let words = dictionary();
    all(
        "design",
        |chance| {
            let seed = chance.of(&seeds);
            changed(seed, &seeds, &words, chance)
        },
        |text| whole(Pattern::read(text)),
    );
}

#[test]
fn rounds_changed_at_random() {
    let seeds = [files("tests/cases", "txt"), files("examples", "txt"), files("tests/rounds", "txt")].concat();
    let words = dictionary();
    all(
        "rounds",
        |chance| {
            let seed = chance.of(&seeds);
            changed(seed, &seeds, &words, chance)
        },
        |text| whole(rounds(text)),
    );
}

#[test]
fn swatches_changed_at_random() {
    let seeds = [files("tests/cases", "yaml"), files("examples/swatches", "yaml")].concat();
    let words = dictionary();
    let text = b"Rnd 1: 6 sc in ring (6)\nRnd 2: 2 sc in each st around (12)\n";
    all(
        "swatch",
        |chance| {
            let seed = chance.of(&seeds);
            changed(seed, &seeds, &words, chance)
        },
        |swatch| whole(Pattern::read_rounds(text, Some(Beside { name: "swatch", bytes: swatch }))),
    );
}

/// A number as a maker would write it, or as none would.
fn number(chance: &mut Chance) -> String {
    let plain = chance.below(40);
    match chance.below(12) {
        0 => "0".to_owned(),
        1 => format!("-{plain}"),
        2 => format!("{plain}.{}", chance.below(100)),
        3 => format!("{plain} 1/2"),
        4 => format!("{}", chance.next()),
        5 => format!("1e{}", chance.below(400)),
        6 => format!("{plain} mm"),
        7 => format!("{plain} in"),
        _ => (1 + plain).to_string(),
    }
}

/// A colour as a maker would write it, or nearly.
fn colour(chance: &mut Chance) -> String {
    match chance.below(40) {
        0 => "red".to_owned(),
        1 => "\"#12345\"".to_owned(),
        _ => format!("\"#{:06x}\"", chance.below(1 << 24)),
    }
}

/// A design of pieces that are sound each by itself, with any number anywhere.
fn assembled(chance: &mut Chance) -> Vec<u8> {
    let kind =
        *chance.of(&["hat", "basket", "mat", "ball", "lampshade", "bowl", "bag", "coaster", "ornament", "cover"]);
    let stitch = *chance.of(&["sc", "hdc", "dc", "tr"]);
    let (stitches, height) = (4 + chance.below(40), 2 + chance.below(40));
    let mut text = format!(
        "title: Piece {}\nkind: {kind}\nswatch: {{stitch: {stitch}, stitches: {stitches}, rounds: {height}, width: 12, height: {}}}\n",
        chance.below(1000),
        5 + chance.below(12)
    );
    let measure = if kind == "hat" { "head" } else { *chance.of(&["around", "across"]) };
    let base = 10 + chance.below(50);
    let sizes: Vec<String> =
        (0..=chance.below(3)).map(|size| format!("s{size}: {{{measure}: {}}}", base + 3 * size)).collect();
    text += &format!("sizes: {{{}}}\n", sizes.join(", "));
    for (field, values) in [
        ("work", &["joined", "spiral", "joined, chain counts"][..]),
        ("prefer", &["easy", "balanced", "close"]),
        ("shaping", &["scattered", "6 corners", "4 corners"]),
        ("finish", &["fasten off", "edge of slip stitch", "step down"]),
        ("language", &["en", "de", "fr", "es", "nl"]),
        ("terms", &["US", "UK"]),
        ("hand", &["right", "left"]),
        ("expect", &["firm", "loose", "soft"]),
        ("level", &["basic", "complex", "hard"]),
        ("notes", &["Work loosely.", "[One., Two.]", "{1: no}"]),
        ("materials", &["{eyes: \"2, 8 mm\", wire: 1 m}", "[a bell, a lamp]", "{ribbon: [red, blue]}", "{wool: 1}"]),
        ("assembly", &["Sew it.", "[Sew it., Turn it.]"]),
        ("version", &["1.2, 3 May 2026", "{}"]),
        ("copyright", &["© 2026 A. Maker"]),
        ("photo", &["{file: hat.jpg, alt: a hat}", "{file: pictures/hat.png, alt: \"a hat: blue\"}"]),
    ] {
        if chance.below(3) == 0 {
            text += &format!("{field}: {}\n", chance.of(values));
        }
    }
    let yarns = 1 + chance.below(6);
    if chance.below(2) == 0 {
        let colours = |chance: &mut Chance| {
            let pairs: Vec<String> = (0..yarns).map(|yarn| format!("y{yarn}: {}", colour(chance))).collect();
            pairs.join(", ")
        };
        text += &format!("yarn: {{weight: 4, colours: {{{}}}}}\n", colours(chance));
        let palettes: Vec<String> =
            (0..chance.below(15)).map(|palette| format!("c{palette}: {{{}}}", colours(chance))).collect();
        if !palettes.is_empty() {
            text += &format!("palettes: {{{}}}\n", palettes.join(", "));
        }
    }
    if chance.below(4) == 0 {
        text += &format!("tolerance: {} %\n", chance.below(30));
    }
    text += "parts:\n";
    for part in 0..=chance.below(4) {
        let start = match chance.below(4) {
            0 => format!("start: ring of {}, ", 2 + chance.below(14)),
            1 => format!("start: chain ring of {}, ", 3 + chance.below(90)),
            _ if part == 0 => "start: ring, ".to_owned(),
            _ => String::new(),
        };
        let shape = match chance.below(8) {
            0 => "shape: flat".to_owned(),
            1 => format!("shape: flat, around: {}", number(chance)),
            2 => format!("shape: dome, rise: {}", number(chance)),
            3 => format!("width: {}, flare: {}", number(chance), chance.below(160)),
            4 => format!("shape: taper, depth: {}, around: {}", number(chance), number(chance)),
            5 => "shape: sphere".to_owned(),
            6 => "shape: close".to_owned(),
            _ => format!("depth: {}", number(chance)),
        };
        let more = chance.of(&[
            "",
            "",
            ", settle: 2",
            ", loop: back",
            ", loop: front",
            ", stitch: hdc",
            ", most: triple",
            ", notes: {3: stuff firmly now, last: leave a long tail}",
            ", notes: [Count as you go., Turn it.]",
            ", notes: {0: no, ring: no}",
            ", multiple: 4",
            ", folded: 3",
            ", folded: {s0: 2, s1: 3}",
            ", multiple: 6 + 2",
            ", pattern: [\"FPdc in next, BPdc in next\"]",
            ", pattern: [\"5 dc in next st, sk 2, sc in next, sk 2\", \"BLO sc in each st around\"]",
            ", swatch: {stitches: 12, rounds: 7, width: 10, height: 10}",
        ]);
        let stripes = match chance.below(3) {
            0 if text.contains("\nyarn: ") => {
                let stripe = |chance: &mut Chance| format!("{{y{}: {}}}", chance.below(yarns), 1 + chance.below(4));
                let stripes: Vec<String> = (0..=chance.below(4)).map(|_| stripe(chance)).collect();
                format!(", colours: [{}]", stripes.join(", "))
            }
            _ => String::new(),
        };
        text += &format!("  - p{part}: {{{start}{shape}{more}{stripes}}}\n");
    }
    text.into_bytes()
}

/// Whatever is asked for by name: papers, codes, stems of files.
#[test]
fn wishes_at_random() {
    let words = [
        dictionary(),
        ["A4", "Letter", "200x300mm", "B5 ", "8.5 × 11 in", "x", "é", "/", ".."].map(Vec::from).to_vec(),
    ]
    .concat();
    let (count, _) = asked();
    for number in 0..10 * count {
        let chance = &mut Chance(number);
        let wish = (0..=chance.below(5)).flat_map(|_| chance.of(&words).clone()).collect::<Vec<u8>>();
        let wish = String::from_utf8_lossy(&wish);
        if let Ok(paper) = Paper::by_name(&wish)
            && paper.check().is_ok()
        {
            let (width, height) = paper.printable();
            assert!(width.mm() > 0.0 && height.mm() > 0.0 && width.mm().is_finite(), "{wish}");
        }
        codes::nearest(&wish);
        let stem = stem_of(&wish);
        assert!(!stem.is_empty() && !stem.contains(['/', '\\']) && !stem.starts_with('.'), "{wish:?}: {stem:?}");
        assert!(stem.chars().all(clean::plain), "{wish:?}");
    }
}

#[test]
fn designs_put_together_at_random() {
    all("assembled", assembled, |text| whole(Pattern::read(text)));
}

/// Words of a command line: commands, options and what they take, sound and unsound, and the files that lie there.
const ARGUMENTS: [&str; 64] = [
    "check",
    "plan",
    "draw",
    "publish",
    "new",
    "explain",
    "help",
    "--help",
    "--version",
    "hat.yaml",
    "round.txt",
    "missing.yaml",
    "notes.txt",
    ".",
    "--swatch",
    "--output",
    "-o",
    "out",
    "out.svg",
    "out.png",
    "out.pdf",
    "notes.txt",
    "chart",
    "schematic",
    "table",
    "key",
    "piece",
    "colours",
    "true-size",
    "--frame",
    "--pixels",
    "symbols",
    "wall",
    "--size",
    "M",
    "XXL",
    "--format",
    "json",
    "csv",
    "--view",
    "whole",
    "sector",
    "--paper",
    "A4",
    "1x1mm",
    "--jobs",
    "0",
    "2",
    "--report",
    "text",
    "--only",
    "text,csv",
    "--rewrite",
    "--plain-words",
    "--dpi",
    "72",
    "--up-to",
    "3",
    "--start",
    "6",
    "--quiet",
    "--fresh",
    "--",
    "-",
];

/// Whatever is asked of the program itself: it ends with a status that means something, in plain words, and what the
/// maker has written is as it was.
#[test]
fn arguments_at_random() {
    let words = dictionary();
    let (count, series) = asked();
    let folder = tempfile::tempdir().unwrap();
    let kept = [
        ("hat.yaml", std::fs::read(root().join("examples/duckling-cap.yaml")).unwrap()),
        ("round.txt", b"Rnd 1: 6 sc in ring (6)\nRnd 2: 2 sc in each st around (12)\n".to_vec()),
        ("notes.txt", b"mine\n".to_vec()),
    ];
    for (name, bytes) in &kept {
        std::fs::write(folder.path().join(name), bytes).unwrap();
    }
    for number in 0..count.div_ceil(4) {
        let chance = &mut Chance(series << 32 | number);
        let mut arguments: Vec<String> = Vec::new();
        for at in 0..1 + chance.below(8) {
            let word = match chance.below(12) {
                0 => String::from_utf8_lossy(chance.of(&words[..]).as_slice()).replace('\0', ""),
                1 => self::number(chance),
                _ if at == 0 => (*chance.of(&ARGUMENTS[..6])).to_owned(),
                _ => (*chance.of(&ARGUMENTS)).to_owned(),
            };
            // What would write over a file because it is told to is no finding.
            if word != "--force" {
                arguments.push(word);
            }
        }
        let ended = std::process::Command::new(env!("CARGO_BIN_EXE_roundelay"))
            .args(&arguments)
            .current_dir(folder.path())
            .stdin(std::process::Stdio::null())
            .output()
            .unwrap();
        let said = String::from_utf8_lossy(&ended.stderr).into_owned();
        assert!(matches!(ended.status.code(), Some(0..=2)), "{arguments:?}: {:?}\n{said}", ended.status);
        assert!(!said.contains("panicked"), "{arguments:?}\n{said}");
        assert!(said.chars().all(|c| matches!(c, '\n' | '\t') || clean::plain(c)), "{arguments:?}\n{said:?}");
        assert!(ended.status.success() || !said.is_empty(), "{arguments:?} says nothing");
        for (name, bytes) in &kept {
            assert_eq!(std::fs::read(folder.path().join(name)).unwrap(), *bytes, "{arguments:?} changed {name}");
        }
    }
}
