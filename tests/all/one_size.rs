//! One size of a design published alone: solved with the others, printed as if there were no other.

#![allow(clippy::unwrap_used)]

use std::process::{Command, Stdio};

use roundelay::page::{Options, Paper};
use roundelay::pattern::Pattern;
use roundelay::publish::{PRODUCTS, by_name, publish};
use roundelay::report::Report;

/// A hat whose sizes differ in every measure.
const HAT: &str = "\
title: Ebb hat
swatch: {stitch: sc, stitches: 16, rounds: 17, width: 10.8, height: 11.1}
sizes: {S: {head: 54}, M: {head: 57}, L: {head: 60}}
work: spiral
parts:
  - crown
  - side: {depth: {S: 8, M: 9, L: 10}}
  - brim: {width: {S: 5, M: 6, L: 7}, flare: {S: 40°, M: 45°, L: 50°}}
";

fn read() -> Pattern {
    Pattern::read(HAT.as_bytes()).unwrap_or_else(|report| panic!("{report:#?}"))
}

#[test]
fn a_size_alone_has_the_rounds_it_has_among_the_others() {
    let all = read();
    for (index, name) in ["S", "M", "L"].into_iter().enumerate() {
        let alone = read().of_size(name).unwrap();
        assert_eq!(alone.plan.sizes, [all.plan.sizes[index].clone()]);
        assert_eq!(alone.shapes, [all.shapes[index].clone()]);
        assert_eq!(alone.design().sizes, [all.design().sizes[index].clone()]);
        // Read by itself, with its measures said for all sizes, the design is the same.
        let (depth, width, flare) = (8 + index, 5 + index, 40 + 5 * index);
        let sizes = format!("{{{name}: {{head: {}}}}}", 54 + 3 * index);
        let text = HAT
            .replace("{S: {head: 54}, M: {head: 57}, L: {head: 60}}", &sizes)
            .replace("{S: 8, M: 9, L: 10}", &depth.to_string())
            .replace("{S: 5, M: 6, L: 7}", &width.to_string())
            .replace("{S: 40°, M: 45°, L: 50°}", &format!("{flare}°"));
        let own = Pattern::read(text.as_bytes()).unwrap();
        let shapes = |pattern: &Pattern| -> Vec<roundelay::design::Body> {
            pattern.design().parts.iter().map(|part| part.body.clone()).collect()
        };
        let placeless = |bodies: Vec<roundelay::design::Body>| -> Vec<String> {
            let said = |body: &roundelay::design::Body| match body {
                roundelay::design::Body::Profile(profile) => format!("{:?}", profile.shape),
                roundelay::design::Body::Written(rounds) => format!("{rounds:?}"),
            };
            bodies.iter().map(said).collect()
        };
        assert_eq!(placeless(shapes(&alone)), placeless(shapes(&own)), "{name}");
    }
    let unknown = read().of_size("XL").unwrap_err();
    assert_eq!((unknown.code, unknown.help.as_deref()), ("unknown-size", Some("its sizes are S, M, L")));
}

#[test]
fn a_size_alone_names_no_other_and_has_no_brackets() {
    let rows = [*by_name(&PRODUCTS, "text").unwrap()];
    let text = |pattern: &Pattern| {
        let (options, mut report) = (Options::new(Paper::a4()), Report::new());
        let made = publish(pattern, "hat", &rows, &options, &mut report).unwrap();
        String::from_utf8(made[0].bytes.clone()).unwrap()
    };
    let counts = |pattern: &Pattern, size: usize| {
        pattern.plan.sizes[size].rounds.iter().map(|round| round.after).max().unwrap().to_string()
    };
    let (all, alone) = (read(), read().of_size("M").unwrap());
    let said = text(&alone);
    assert!(said.contains(&counts(&all, 1)) && !said.contains(&counts(&all, 2)), "{said}");
    assert!(text(&all).contains(&counts(&all, 2)));
    assert!(!said.contains("Size S") && !said.contains("S · M"), "{said}");
}

#[test]
fn it_is_published_into_a_folder_of_its_own() {
    let folder = tempfile::tempdir().unwrap();
    std::fs::write(folder.path().join("hat.yaml"), HAT).unwrap();
    let run = |size: &str| {
        let mut run = Command::new(env!("CARGO_BIN_EXE_roundelay"));
        run.args(["publish", "hat.yaml", "--only", "text", "--size", size]);
        run.current_dir(folder.path()).stdin(Stdio::null()).output().unwrap()
    };
    assert_eq!(run("M").status.code(), Some(0));
    assert!(folder.path().join("hat-M/hat.txt").is_file() && !folder.path().join("hat").exists());
    let wrong = run("XL");
    assert_eq!(wrong.status.code(), Some(2));
    assert!(String::from_utf8_lossy(&wrong.stderr).contains("its sizes are S, M, L"));
    assert!(!folder.path().join("hat-XL").exists());
}
