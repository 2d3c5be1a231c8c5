//! The reference and the schema of design files, and an outside judge of the schema: the package `jsonschema` of PyPI, an
//! implementation of JSON Schema draft 2020-12.

#![allow(clippy::unwrap_used)]

use std::io::Write as _;
use std::process::{Command, Stdio};

use roundelay::design::{STARTER, read, schema};
use roundelay::report::Report;
use serde_json::Value;

use crate::checkers::python;

/// A sound design, which every case below breaks in one place.
const SOUND: &str = "\
title: Test hat
about: A hat
kind: hat
units: cm
terms: US
language: en
hand: right
photo: {file: hat.jpg, alt: A hat}
yarn: {weight: 4, fibre: cotton, ball: {grams: 50, metres: 85}, colours: {sand: '#d9c39a', tide: '#2f6f8f'}, allowance: 10 %}
palettes: {dusk: {sand: '#8a7f6a'}}
hook: 5.5 mm
swatch: {stitch: sc, stitches: 16, rounds: 17.5, width: 11.3, height: 11.1, thick: 3.5 mm, grams: 11}
sizes: {S: {head: 54, age: 10 years}, M: {head: 21 3/4 in}}
ease: 0 %
work: joined
finish: fasten off
prefer: easy
tolerance: 2 %
shaping: 6 corners
parts:
  - crown: {shape: flat, start: ring of 6, most: double}
  - side: {depth: {S: 9, M: 9.5}, loop: back, colours: {tide: 2, sand: rest}}
  - brim: {width: 7.5, flare: 55°, settle: 2, stitch: sc}
";

/// What is broken: the words that stand there, and what is put in their place.
const BROKEN: &[(&str, &str)] = &[
    ("title: Test hat\n", ""),
    ("title: Test hat", "title: ''"),
    ("title: Test hat", "title: [Test, hat]"),
    ("title: Test hat", "titel: Test hat"),
    ("kind: hat", "kind: sock"),
    ("units: cm", "units: feet"),
    ("terms: US", "terms: AU"),
    ("language: en", "language: English"),
    ("hand: right", "hand: both"),
    ("file: hat.jpg", "file: /home/hat.jpg"),
    (", alt: A hat", ""),
    ("weight: 4", "weight: 9"),
    ("weight: 4", "weight: sturdy"),
    ("grams: 50, ", ""),
    ("grams: 50, metres: 85", "grams: 50"),
    ("metres: 85", "metres: 0"),
    ("'#d9c39a'", "sandy"),
    ("'#d9c39a'", "'#d9c3'"),
    ("allowance: 10 %", "allowance: 10"),
    ("fibre: cotton", "fiber: cotton"),
    ("{dusk: {sand: '#8a7f6a'}}", "[dusk]"),
    ("hook: 5.5 mm", "hook: 55"),
    ("hook: 5.5 mm", "hook: -5"),
    ("stitch: sc, stitches: 16", "stitch: xyz, stitches: 16"),
    ("stitch: sc, stitches: 16", "stitch: sc, stitches: 16.3"),
    ("rounds: 17.5, ", ""),
    ("{stitch: sc, stitches: 16, rounds: 17.5, width: 11.3, height: 11.1, thick: 3.5 mm, grams: 11}", "16 sc in 10 cm"),
    ("width: 11.3", "width: 11.3 kg"),
    ("width: 11.3", "width: -11.3"),
    ("thick: 3.5 mm", "thick: 0"),
    ("head: 54, age: 10 years", "head: 54, age: ten"),
    ("head: 54, age: 10 years", "hat: 54"),
    ("{head: 21 3/4 in}", "whom"),
    ("sizes: {S: {head: 54, age: 10 years}, M: {head: 21 3/4 in}}", "sizes: {}"),
    ("ease: 0 %", "ease: 0"),
    ("ease: 0 %", "ease: loose"),
    ("work: joined", "work: apart"),
    ("finish: fasten off", "finish: cut"),
    ("prefer: easy", "prefer: quick"),
    ("tolerance: 2 %", "tolerance: wide"),
    ("shaping: 6 corners", "shaping: six corners"),
    ("start: ring of 6", "start: ring with 6"),
    ("shape: flat", "shape: square"),
    ("most: double", "most: much"),
    ("loop: back", "loop: left"),
    ("tide: 2, sand", "tide: 0, sand"),
    ("tide: 2, sand", "tide: two, sand"),
    ("S: 9, M: 9.5", "S: deep, M: 9.5"),
    ("flare: 55°", "flare: 155"),
    ("flare: 55°", "flare: 55 %"),
    ("settle: 2", "settle: 51"),
    ("width: 7.5", "wide: 7.5"),
    ("crown: {shape: flat, start: ring of 6, most: double}", "[crown]"),
    ("parts:\n", "parts: []\npart:\n"),
];

fn broken(old: &str, new: &str) -> String {
    assert_eq!(SOUND.matches(old).count(), 1, "{old}");
    SOUND.replace(old, new)
}

/// Whether the outside judge takes each of these, by the schema of whole designs or of what stands beside rounds.
fn judged(schema: &str, texts: &[String]) -> Option<Vec<bool>> {
    let python = python()?;
    let files: Vec<Value> = texts.iter().map(|text| serde_saphyr::from_str(text).unwrap()).collect();
    let input = serde_json::to_string(&(serde_json::from_str::<Value>(schema).unwrap(), files)).unwrap();
    let judge = "import json, sys, jsonschema\n\
                 schema, files = json.load(sys.stdin)\n\
                 jsonschema.Draft202012Validator.check_schema(schema)\n\
                 valid = jsonschema.Draft202012Validator(schema)\n\
                 print(json.dumps([valid.is_valid(file) for file in files]))\n";
    let mut run =
        Command::new(python).args(["-c", judge]).stdin(Stdio::piped()).stdout(Stdio::piped()).spawn().unwrap();
    run.stdin.take().unwrap().write_all(input.as_bytes()).unwrap();
    let output = run.wait_with_output().unwrap();
    assert!(output.status.success());
    Some(serde_json::from_slice(&output.stdout).unwrap())
}

/// Every design of `examples/`, and the starter.
fn designs() -> Vec<String> {
    let folder = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("examples");
    let paths = std::fs::read_dir(folder).unwrap().map(|entry| entry.unwrap().path());
    let paths = paths.filter(|path| path.extension().is_some_and(|ending| ending == "yaml"));
    paths.map(|path| std::fs::read_to_string(path).unwrap()).chain([STARTER.to_owned()]).collect()
}

#[test]
fn reading_refuses_every_broken_design() {
    assert!(read(SOUND, &mut Report::new()).is_some());
    assert!(BROKEN.len() >= 40, "{}", BROKEN.len());
    for (old, new) in BROKEN {
        let mut report = Report::new();
        assert!(read(&broken(old, new), &mut report).is_none(), "{old} -> {new}");
        assert!(report.diagnostics.iter().any(|found| found.place.is_some() && found.help.is_some()), "{new}");
    }
}

#[test]
fn an_outside_judge_takes_every_example_by_the_schema_and_refuses_every_broken_design() {
    let sound: Vec<String> = designs().into_iter().chain([SOUND.to_owned()]).collect();
    let broken: Vec<String> = BROKEN.iter().map(|(old, new)| broken(old, new)).collect();
    let texts: Vec<String> = sound.iter().chain(&broken).cloned().collect();
    let Some(judged) = judged(&schema(true), &texts) else { return };
    for (index, (text, taken)) in texts.iter().zip(judged).enumerate() {
        assert_eq!(taken, index < sound.len(), "{text}");
    }
}

#[test]
fn an_outside_judge_takes_files_beside_rounds_by_their_own_schema() {
    let folder = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("examples/swatches");
    let read = |entry: std::io::Result<std::fs::DirEntry>| std::fs::read_to_string(entry.unwrap().path()).unwrap();
    let mut texts: Vec<String> = std::fs::read_dir(folder).unwrap().map(read).collect();
    assert!(!texts.is_empty());
    texts.push("title: No swatch\n".to_owned());
    let Some(judged) = judged(&schema(false), &texts) else { return };
    let (last, first) = judged.split_last().unwrap();
    assert!(first.iter().all(|taken| *taken), "{first:?}");
    assert!(!last, "a file without a swatch");
}
