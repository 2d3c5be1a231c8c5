//! Wishes and places that can't be: what the real binary does with them, and what it leaves as it was.

#![allow(clippy::unwrap_used)]

use std::collections::BTreeSet;
use std::fs;
use std::path::Path;
use std::process::{Command, Output, Stdio};

const HAT: &str = "title: Test hat
swatch: {stitch: sc, stitches: 22, rounds: 24, width: 12.4, height: 12.2}
sizes: {S: {head: 54}}
ease: -2 %
work: joined
parts:
  - crown: {start: ring, shape: flat}
  - side: {depth: 9}
";

fn command(folder: &Path, arguments: &[&str]) -> Command {
    let mut command = Command::new(env!("CARGO_BIN_EXE_roundelay"));
    command.args(arguments).current_dir(folder).stdin(Stdio::null());
    command
}

/// Runs in `folder`; gives the exit status and what was said.
fn run(folder: &Path, arguments: &[&str]) -> (i32, String) {
    let output = command(folder, arguments).output().unwrap();
    (output.status.code().unwrap(), said(&output))
}

fn said(output: &Output) -> String {
    String::from_utf8_lossy(&output.stderr).into_owned()
}

fn with_hat(text: &str) -> tempfile::TempDir {
    let folder = tempfile::tempdir().unwrap();
    fs::write(folder.path().join("hat.yaml"), text).unwrap();
    folder
}

#[test]
fn wishes_that_can_t_be_end_with_2_and_say_what_can() {
    let folder = with_hat(HAT);
    let cases: [(&[&str], &str); 12] = [
        (&["chart", "-o", "x.svg", "--part", "nose"], "its parts are crown, side"),
        (&["chart", "-o", "x.svg", "--up-to", "9999"], "there is no round 9999"),
        (&["chart", "-o", "x.svg", "--start", "13"], "13 is not in 1..=12"),
        (&["table", "-o", "x.svg", "--start", "6"], "--start has no meaning"),
        (&["chart", "-o", "x.svg", "--size", "XL"], "its sizes are S"),
        (&["chart", "-o", "x.svg", "--tiles", "A4"], "--tiles has no meaning"),
        (&["table", "-o", "x.pdf", "--tiles", "A4"], "--tiles has no meaning"),
        (&["schematic", "-o", "x.svg", "--view", "sector"], "--view has no meaning"),
        (&["key", "-o", "x.svg", "--part", "side"], "--part has no meaning"),
        (&["colours", "-o", "x.svg"], "add other colours for its yarn"),
        (&["chart", "-o", "x.svg", "--all-sizes"], "--all-sizes has no meaning"),
        (&["chart", "-o", "x.png", "--paper", "A0", "--dpi", "1200"], "too large to draw"),
    ];
    for (wish, told) in cases {
        let arguments: Vec<&str> = ["draw", "hat.yaml"].iter().chain(wish).copied().collect();
        let (status, said) = run(folder.path(), &arguments);
        assert!(status == 2 && said.contains(told), "{wish:?}: {status} {said}");
    }
    assert_eq!(fs::read_dir(folder.path()).unwrap().count(), 1);
}

#[test]
fn a_chart_that_can_t_be_read_names_what_can() {
    let folder = with_hat(HAT);
    let draw = |more: &[&str]| {
        let arguments: Vec<&str> = ["draw", "hat.yaml", "chart", "-o", "x.svg"].iter().chain(more).copied().collect();
        run(folder.path(), &arguments)
    };
    for asked in [&["--paper", "A6"][..], &["--paper", "A6", "--view", "whole"], &["--paper", "A5", "--view", "whole"]]
    {
        let (status, said) = draw(asked);
        assert!(status == 0 && said.contains("too small to read"), "{asked:?}: {said}");
        let help = said.split("it can be read with").nth(1).unwrap();
        let offers: Vec<&str> = help.split('`').skip(1).step_by(2).collect();
        assert!(offers.len() > 1, "{help}");
        for offer in offers {
            let mut wish: Vec<&str> = offer.split_whitespace().collect();
            if !wish.contains(&"--paper") {
                wish.extend(&asked[..2]);
            }
            let (status, said) = draw(&wish);
            assert!(status == 0 && !said.contains("too-small"), "{offer}: {said}");
        }
    }
}

#[test]
fn what_was_read_is_never_replaced() {
    let folder = with_hat(HAT);
    let rounds = "Rnd 1: 6 sc in ring (6)\nRnd 2: 2 sc in each st around (12)\n";
    fs::write(folder.path().join("disc.txt"), rounds).unwrap();
    let (status, said) =
        run(folder.path(), &["publish", "disc.txt", "--swatch", "hat.yaml", "--only", "text", "-o", "."]);
    assert!(status == 2 && said.contains("disc.txt would be replaced"), "{status} {said}");
    assert_eq!(fs::read_to_string(folder.path().join("disc.txt")).unwrap(), rounds);
    fs::write(folder.path().join("hat.svg"), HAT).unwrap();
    let (status, _) = run(folder.path(), &["draw", "hat.svg", "key", "-o", "./hat.svg"]);
    assert_eq!(status, 2);
    assert_eq!(fs::read_to_string(folder.path().join("hat.svg")).unwrap(), HAT);
}

#[test]
fn a_read_only_picture_stays() {
    let folder = with_hat(HAT);
    let path = folder.path().join("key.svg");
    fs::write(&path, "old").unwrap();
    let mut rights = fs::metadata(&path).unwrap().permissions();
    rights.set_readonly(true);
    fs::set_permissions(&path, rights).unwrap();
    let (status, said) = run(folder.path(), &["draw", "hat.yaml", "key", "-o", "key.svg"]);
    assert!(status == 2 && said.contains("it is read-only"), "{status} {said}");
    assert_eq!(fs::read_to_string(&path).unwrap(), "old");
}

#[test]
fn sizes_that_look_alike_get_files_of_their_own() {
    let sizes = r#"{"S": {head: 52}, "s": {head: 53}, "S!": {head: 54}, "!": {head: 55}}"#;
    let folder = with_hat(&HAT.replace("{S: {head: 54}}", sizes));
    let output = command(folder.path(), &["publish", "hat.yaml", "--only", "wall", "-o", "out"]).output().unwrap();
    assert_eq!(output.status.code(), Some(0), "{}", said(&output));
    let names = fs::read_dir(folder.path().join("out")).unwrap();
    let names: BTreeSet<String> = names
        .map(|file| file.unwrap().file_name().to_string_lossy().to_lowercase())
        .filter(|name| !name.starts_with('.'))
        .collect();
    assert_eq!(names.len(), 4, "{names:?}");
}

#[test]
fn hundreds_of_rounds_alike_have_a_box_each_on_every_page() {
    let folder = with_hat(&HAT.replace("depth: 9", "depth: 150"));
    for more in [&[][..], &["--large-print"], &["--paper", "A6"]] {
        let arguments = ["publish", "hat.yaml", "--only", "booklet", "-o", "out"];
        let arguments: Vec<&str> = arguments.iter().chain(more).copied().collect();
        let (status, said) = run(folder.path(), &arguments);
        assert_eq!(status, 0, "{more:?}: {said}");
    }
}

#[test]
fn a_mat_of_a_million_stitches_is_written_out() {
    let mat = "title: Test mat
kind: mat
swatch: {stitch: sc, stitches: 18, rounds: 19, width: 10, height: 10}
sizes: {one: {across: 300}}
work: spiral
parts:
  - mat: {start: ring of 6, shape: flat}
";
    let folder = with_hat(mat);
    let output = command(folder.path(), &["plan", "hat.yaml", "--format", "csv"]).output().unwrap();
    assert_eq!(output.status.code(), Some(0), "{}", said(&output));
    assert!(String::from_utf8_lossy(&output.stdout).lines().count() > 250);
}

#[test]
fn slips_of_the_pen_are_told_with_their_cure() {
    let cases = [
        (HAT.replace("head: 54", "head: 54,5"), "write a decimal point: 54.5, not 54,5"),
        (HAT.replace("Test hat", &"Long ".repeat(80)), "this one has 399"),
        (format!("{HAT}---\n{HAT}"), "the file holds more than one design"),
        ("[".repeat(50_000), "nested too deeply"),
    ];
    for (text, told) in cases {
        let folder = with_hat(&text);
        let (status, said) = run(folder.path(), &["check", "hat.yaml"]);
        assert!(status == 1 && said.contains(told), "{told}: {status} {said}");
    }
}
