//! The commands, as a person or a script meets them: the real binary, its exit status, its two outputs.

#![allow(clippy::unwrap_used)]

use std::fs;
use std::path::{Path, PathBuf};
use std::process::{Command, Output, Stdio};

use serde_json::Value;

const SUN_HAT: &str = "slipway-sun-hat.yaml";
const EXAMPLES: [&str; 3] = [SUN_HAT, "ember-beanie.yaml", "millrace-basket.yaml"];

fn example(name: &str) -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("examples").join(name)
}

fn roundelay(arguments: &[&str]) -> Output {
    Command::new(env!("CARGO_BIN_EXE_roundelay")).args(arguments).stdin(Stdio::null()).output().unwrap()
}

/// Runs with `input` on standard input.
fn fed(arguments: &[&str], input: &[u8]) -> Output {
    use std::io::Write;
    let mut child = Command::new(env!("CARGO_BIN_EXE_roundelay"))
        .args(arguments)
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .stderr(Stdio::piped())
        .spawn()
        .unwrap();
    // A file that is too long is not read to its end: the pipe may break.
    let _ = child.stdin.take().unwrap().write_all(input);
    child.wait_with_output().unwrap()
}

fn status(output: &Output) -> i32 {
    output.status.code().unwrap()
}

fn out(output: &Output) -> String {
    String::from_utf8(output.stdout.clone()).unwrap()
}

fn err(output: &Output) -> String {
    String::from_utf8(output.stderr.clone()).unwrap()
}

fn design_file(folder: &Path, text: &str) -> String {
    let path = folder.join("design.yaml");
    fs::write(&path, text).unwrap();
    path.to_str().unwrap().to_owned()
}

fn path(name: &str) -> String {
    example(name).to_str().unwrap().to_owned()
}

#[test]
fn rounds_are_checked_without_a_swatch_and_drawn_with_one() {
    let folder = tempfile::tempdir().unwrap();
    let file = folder.path().join("mat.txt");
    fs::write(&file, "Rnd 1: 6 sc in ring (6)\nRnd 2: inc around (12)\n").unwrap();
    let file = file.to_str().unwrap();
    let checked = roundelay(&["check", file]);
    assert_eq!(status(&checked), 0, "{}", err(&checked));
    assert!(out(&checked).contains("2 rounds, 18 stitches"), "{}", out(&checked));
    let planned = roundelay(&["plan", file]);
    assert_eq!(status(&planned), 1);
    assert!(err(&planned).contains("no-swatch"), "{}", err(&planned));
    fs::write(file, "Rnd 1: 6 sc in ring (6)\nRnd 2: inc around (13)\n").unwrap();
    let checked = roundelay(&["check", file]);
    assert_eq!(status(&checked), 1);
    assert!(err(&checked).contains("count-differs"), "{}", err(&checked));
}

#[test]
fn new_writes_a_design_that_checks() {
    let folder = tempfile::tempdir().unwrap();
    let file = folder.path().join("hat.yaml");
    let file = file.to_str().unwrap();
    assert_eq!(status(&roundelay(&["new", file])), 0);
    let checked = roundelay(&["check", file]);
    assert_eq!((status(&checked), err(&checked).as_str()), (0, ""));
    assert!(out(&checked).contains("3 sizes"));
}

#[test]
fn new_without_a_file_prints_what_it_would_write() {
    let printed = roundelay(&["new"]);
    assert_eq!(status(&printed), 0);
    assert_eq!(status(&fed(&["check", "-"], &printed.stdout)), 0);
}

#[test]
fn new_never_replaces_a_file() {
    let folder = tempfile::tempdir().unwrap();
    let file = design_file(folder.path(), "mine\n");
    let refused = roundelay(&["new", &file]);
    assert_eq!(status(&refused), 2);
    assert!(err(&refused).contains("exists and stays as it is"));
    assert_eq!(fs::read_to_string(&file).unwrap(), "mine\n");
}

#[test]
fn check_has_nothing_to_say_about_the_examples() {
    for name in EXAMPLES {
        let checked = roundelay(&["check", &path(name)]);
        assert_eq!((status(&checked), err(&checked).as_str()), (0, ""), "{name}");
        assert!(out(&checked).contains("3 sizes"), "{name}");
    }
}

/// The mandala lies flat with its chains, clusters and shells; the mat and the cap are plain rounds.
#[test]
fn check_has_nothing_to_say_about_the_smaller_examples() {
    for (name, summary) in [
        ("lanternlight-mandala.yaml", "1 size, 9 rounds, 432 stitches"),
        ("harvest-table-mat.yaml", "1 size, 60 rounds"),
        ("duckling-cap.yaml", "2 sizes, 8 to 10 rounds"),
    ] {
        let checked = roundelay(&["check", &path(name)]);
        assert_eq!((status(&checked), err(&checked).as_str()), (0, ""), "{name}");
        assert!(out(&checked).contains(summary), "{name}: {}", out(&checked));
    }
}

#[test]
fn check_shows_file_line_column_snippet_and_help() {
    let folder = tempfile::tempdir().unwrap();
    let file = design_file(folder.path(), &fs::read_to_string(example(SUN_HAT)).unwrap().replace("hook:", "hok:"));
    let checked = roundelay(&["check", &file]);
    assert_eq!((status(&checked), out(&checked).as_str()), (1, ""));
    let told = err(&checked);
    for words in ["error[unknown-field]", "design.yaml:14:1", "hok: 4.5 mm", "did you mean `hook`", "1 error"] {
        assert!(told.contains(words), "{words}: {told}");
    }
    assert!(!told.contains('\u{1b}'), "no colours where nobody looks: {told}");
}

/// How complaints read: each slip with its line, its snippet and what to do.
#[test]
fn complaints_of_a_design_full_of_slips() {
    let folder = tempfile::tempdir().unwrap();
    let text = "\
title: Hat → brim
yarn: {weight: 12, colours: {sand: \"#d9c39a\"}}
hook: H
swatch: {stitch: dc, stitches: 16, rounds: 0, width: 11.3 kg, height: 11.1}
sizes:
  S: {head: 5 m}
  M: {who: child-7y}
  L: 57
ease: -2
works: spiral
parts:
  - crown: {shape: doom}
  - side: {depth: {S: 9, XL: 10}, colours: {tide: 2, sand: rest}}
  - brim: {width: 7.5}
";
    design_file(folder.path(), text);
    let checked = Command::new(env!("CARGO_BIN_EXE_roundelay"))
        .args(["check", "design.yaml"])
        .current_dir(folder.path())
        .output()
        .unwrap();
    assert_eq!(status(&checked), 1);
    insta::assert_snapshot!(err(&checked));
}

#[test]
fn warnings_don_t_change_the_exit_status() {
    let folder = tempfile::tempdir().unwrap();
    let doubtful = fs::read_to_string(example(SUN_HAT)).unwrap().replace("hook: 4.5 mm", "hook: 9 mm");
    let file = design_file(folder.path(), &doubtful);
    let checked = roundelay(&["check", &file]);
    assert_eq!(status(&checked), 0);
    assert!(err(&checked).contains("warning[unusual-hook]") && err(&checked).contains("design.yaml: 1 warning"));
    let planned = roundelay(&["plan", &file, "--format", "json"]);
    assert_eq!(status(&planned), 0);
    assert!(serde_json::from_slice::<Value>(&planned.stdout).is_ok(), "warnings stay out of the data");
}

#[test]
fn check_json_has_every_field() {
    let folder = tempfile::tempdir().unwrap();
    let file = design_file(folder.path(), "title: x\nparts: [crown]\nsizes: {S: {head: 0}}\nswatch: {}\n");
    let checked = roundelay(&["check", "--format", "json", &file, &path(SUN_HAT)]);
    assert_eq!((status(&checked), err(&checked).as_str()), (1, ""));
    let complaints: Vec<Value> = serde_json::from_slice(&checked.stdout).unwrap();
    let head = complaints.iter().find(|complaint| complaint["code"] == "out-of-range").unwrap();
    assert_eq!((&head["line"], &head["column"]), (&Value::from(3), &Value::from(19)));
    assert_eq!((head["severity"].as_str(), head["file"].as_str()), (Some("error"), Some(file.as_str())));
    assert!(head["message"].is_string() && head["help"].is_string());
    assert!(complaints.len() > 4, "many at a time: {complaints:#?}");
}

#[test]
fn a_file_that_is_not_there_ends_with_2_and_the_others_are_still_checked() {
    let checked = roundelay(&["check", "no-such-file.yaml", &path(SUN_HAT)]);
    assert_eq!(status(&checked), 2);
    assert!(err(&checked).contains("no-such-file.yaml"));
    assert!(out(&checked).contains(SUN_HAT));
    for arguments in [["plan", "no-such-file.yaml"], ["publish", "no-such-file.yaml"]] {
        assert_eq!(status(&roundelay(&arguments)), 2, "{arguments:?}");
    }
}

#[test]
fn explain_tells_one_code_or_all_and_suggests_the_nearest() {
    let one = roundelay(&["explain", "stitches-left"]);
    assert_eq!(status(&one), 0);
    assert!(out(&one).starts_with("stitches-left\n\nA round uses up fewer stitches"), "{}", out(&one));
    assert!(out(&one).contains("What helps: "), "{}", out(&one));
    let all = roundelay(&["explain"]);
    assert_eq!(status(&all), 0);
    assert!(out(&all).lines().filter(|line| !line.starts_with(' ')).count() > 100, "{}", out(&all));
    let slip = roundelay(&["explain", "stiches-lef"]);
    assert_eq!((status(&slip), out(&slip).as_str()), (2, ""));
    assert!(err(&slip).contains("did you mean `stitches-left`?"), "{}", err(&slip));
}

#[test]
fn usage_errors_end_with_2_and_help_with_0() {
    for arguments in
        [&[][..], &["polish"], &["plan"], &["plan", "x", "--format", "xml"], &["draw", "x", "poem", "-o", "y.svg"]]
    {
        assert_eq!(status(&roundelay(arguments)), 2, "{arguments:?}");
    }
    for command in ["new", "check", "plan", "draw", "publish", "schema"] {
        for help in [roundelay(&[command, "--help"]), roundelay(&["help", command])] {
            assert_eq!(status(&help), 0, "{command}");
            assert!(out(&help).contains("Usage: roundelay"), "{command}");
        }
    }
    assert!(out(&roundelay(&["help", "design"])).contains("\ntolerance\n"));
    assert!(out(&roundelay(&["help", "design", "flare"])).starts_with("flare, of part\n"));
    assert!(out(&roundelay(&["schema"])).contains("2020-12"));
    for topics in [&["polish"][..], &["design", "depht"]] {
        assert_eq!(status(&roundelay(&[&["help"], topics].concat())), 2, "{topics:?}");
    }
}

#[test]
fn what_is_no_design_ends_with_1_and_a_message() {
    for (input, words) in [
        (&b""[..], "the file is empty"),
        (b"\xff\xfe", "not UTF-8"),
        (b"title: [", "YAML"),
        (b"just words", "group of fields"),
        (&vec![b'#'; 2_000_000], "at most 1048576"),
    ] {
        for command in ["check", "plan"] {
            let ended = fed(&[command, "-"], input);
            assert_eq!(status(&ended), 1, "{words}");
            assert!(err(&ended).contains(words), "{words}: {}", err(&ended));
        }
    }
}

#[test]
fn control_characters_of_a_file_don_t_reach_the_terminal() {
    let ended = fed(&["check", "-"], "title: \"x\"\nhook: \u{9b}31m \u{7f}\n".as_bytes());
    assert!(!err(&ended).chars().any(|c| c.is_control() && c != '\n'), "{}", err(&ended));
}

/// The contract of `plan --format json`.
#[test]
fn plan_json_is_as_promised_and_its_sums_agree() {
    for name in EXAMPLES {
        let planned = roundelay(&["plan", &path(name), "--format", "json"]);
        assert_eq!(status(&planned), 0, "{}", err(&planned));
        let plan: Value = serde_json::from_slice(&planned.stdout).unwrap();
        assert!(plan["title"].is_string() && ["US", "UK"].contains(&plan["terms"].as_str().unwrap()));
        let sizes = plan["sizes"].as_array().unwrap();
        assert_eq!(sizes.len(), 3);
        for size in sizes {
            json_size(size);
        }
    }
}

fn json_size(size: &Value) {
    assert!(size["name"].is_string() && size["warnings"].is_array());
    assert!(size["head_mm"].is_number() || size["head_mm"].is_null());
    let mut before = 0;
    let rounds = size["rounds"].as_array().unwrap();
    for (at, round) in rounds.iter().enumerate() {
        assert_eq!(round["round"], at + 1);
        for text in ["part", "stitch", "instruction"] {
            assert!(round[text].is_string(), "{text}");
        }
        for number in ["circumference_mm", "radius_mm", "height_mm", "hoop_strain"] {
            assert!(round[number].is_number(), "{number}");
        }
        assert!(["both", "back", "front"].contains(&round["loop"].as_str().unwrap()));
        assert!(round["colour"].is_string() || round["colour"].is_null());
        let worked = round["worked"].as_array().unwrap();
        let sum = |at: usize| worked.iter().map(|op| op[at].as_u64().unwrap()).sum::<u64>();
        assert_eq!((Some(sum(0)), Some(sum(1))), (round["stitches_in"].as_u64(), round["stitches_out"].as_u64()));
        assert_eq!(sum(0), before, "round {} uses up the round before", at + 1);
        before = sum(1);
    }
    let parts = size["parts"].as_array().unwrap();
    let last = parts.last().and_then(|part| part["rounds"][1].as_u64());
    assert_eq!(last, Some(rounds.len() as u64));
    for part in parts {
        assert!(
            part["target_mm"].is_number() && part["reached_mm"].is_number() && part["deviation_percent"].is_number()
        );
    }
    for used in size["yarn"].as_array().unwrap() {
        assert!(used["metres"].as_f64().unwrap() > 0.0 && used["grams"].as_f64().unwrap() > 0.0);
    }
}

#[test]
fn plan_csv_has_a_row_a_round() {
    let planned = roundelay(&["plan", &path(SUN_HAT), "--format", "csv", "--size", "M"]);
    let text = out(&planned);
    let mut rows = csv::Reader::from_reader(text.as_bytes());
    let headings = rows.headers().unwrap().clone();
    assert_eq!(headings.iter().take(4).collect::<Vec<_>>(), ["size", "round", "part", "stitch"]);
    let rows: Vec<csv::StringRecord> = rows.records().collect::<Result<_, _>>().unwrap();
    for (at, row) in rows.iter().enumerate() {
        assert_eq!((&row[0], &row[1]), ("M", (at + 1).to_string().as_str()));
    }
    assert!(rows.len() > 30);
}

#[test]
fn plan_prints_one_size_or_all() {
    for format in ["table", "text"] {
        let all = out(&roundelay(&["plan", &path(SUN_HAT), "--format", format]));
        assert!(all.contains("Slipway sun hat") && all.contains("crown"), "{all}");
        let one = out(&roundelay(&["plan", &path(SUN_HAT), "--format", format, "--size", "L"]));
        assert!(one.contains('L') && one.len() < all.len(), "{one}");
    }
    let unknown = roundelay(&["plan", &path(SUN_HAT), "--size", "XXL"]);
    assert_eq!(status(&unknown), 2);
    assert!(err(&unknown).contains("its sizes are S, M, L"));
}

#[test]
fn the_same_design_gives_the_same_plan_from_anywhere() {
    let folder = tempfile::tempdir().unwrap();
    let here = roundelay(&["plan", &path(SUN_HAT), "--format", "json"]);
    let there = Command::new(env!("CARGO_BIN_EXE_roundelay"))
        .args(["plan", &path(SUN_HAT), "--format", "json"])
        .current_dir(folder.path())
        .env("TZ", "Pacific/Auckland")
        .env("LC_ALL", "de_DE.UTF-8")
        .output()
        .unwrap();
    assert_eq!(here.stdout, there.stdout);
}

#[test]
fn a_folder_that_can_t_be_written_ends_with_2() {
    let folder = tempfile::tempdir().unwrap();
    // A file where the folder should be can't be written into, whoever runs the test.
    let taken = design_file(folder.path(), "taken");
    let published = roundelay(&["publish", &path(SUN_HAT), "-o", &taken]);
    assert_eq!(status(&published), 2);
    assert!(err(&published).contains("can't be written"), "{}", err(&published));
    assert_eq!(fs::read_to_string(&taken).unwrap(), "taken");
}

#[test]
fn papers_and_resolutions_are_looked_at_before_anything_is_done() {
    for wrong in [["--paper", "B55"], ["--paper", "3x4 mm"], ["--dpi", "0"], ["--dpi", "many"]] {
        let drawn = roundelay(&["draw", &path(SUN_HAT), "chart", "-o", "chart.png", wrong[0], wrong[1]]);
        assert_eq!(status(&drawn), 2, "{wrong:?}");
        assert!(err(&drawn).contains(wrong[0]), "{}", err(&drawn));
    }
    assert_eq!(status(&roundelay(&["publish", &path(SUN_HAT), "--paper", "foolscape"])), 2);
}

#[test]
fn draw_asks_for_an_ending_it_knows() {
    let drawn = roundelay(&["draw", &path(SUN_HAT), "chart", "-o", "chart.bmp"]);
    assert_eq!(status(&drawn), 2);
    assert!(err(&drawn).contains(".svg, .png and .pdf"));
}

/// Written rounds in a text file go the whole way with nothing but a swatch beside them.
#[test]
fn a_text_file_is_checked_planned_drawn_and_published() {
    let folder = tempfile::tempdir().unwrap();
    let (rounds, swatch) = (path("cove-bowl.txt"), path("swatches/cove-cotton.yaml"));
    let run = |args: &[&str]| roundelay(&[args, &["--swatch", &swatch]].concat());
    let checked = run(&["check", &rounds]);
    assert_eq!((status(&checked), err(&checked).as_str()), (0, ""));
    assert!(out(&checked).contains("1 size, 18 rounds, 726 stitches"), "{}", out(&checked));
    let planned = out(&run(&["plan", &rounds, "--format", "text"]));
    for line in [
        "Cove bowl\n",
        "# one: 33.8 cm",
        "\nRim\n",
        "Rnd 14: with tide, *sc in next 7 sts, inc; rep from * around (54)",
    ] {
        assert!(planned.contains(line), "{line}: {planned}");
    }
    let anew = out(&run(&["plan", &rounds, "--format", "text", "--rewrite"]));
    assert!(anew.contains("Rnd 14: with tide, [sc in next 7 sts, 2 sc in next st] 6 times (54)"), "{anew}");
    let chart = folder.path().join("chart.svg");
    assert_eq!(status(&run(&["draw", &rounds, "chart", "-o", chart.to_str().unwrap()])), 0);
    assert!(fs::read_to_string(chart).unwrap().contains("Cove bowl"));
    let published = folder.path().join("cove");
    assert_eq!(status(&run(&["publish", &rounds, "-o", published.to_str().unwrap()])), 0);
    for name in ["booklet.pdf", "one-chart.svg", "one-schematic.png", "one-table.svg", "one-wall-chart.pdf"] {
        assert!(published.join(format!("cove-bowl-{name}")).is_file(), "{name}");
    }
    let pattern = fs::read_to_string(published.join("cove-bowl.txt")).unwrap();
    assert!(pattern.contains("Rnds 10–13: sc in each st around; Stitches 48"), "{pattern}");
    let alone = roundelay(&["plan", &rounds]);
    assert_eq!(status(&alone), 1);
    assert!(err(&alone).contains("--swatch FILE.yaml"), "{}", err(&alone));
}

/// A text with several pieces: each is checked and published, and each can be drawn by its name.
#[test]
fn every_piece_of_a_text_is_published_and_can_be_drawn() {
    let folder = tempfile::tempdir().unwrap();
    let swatch = path("swatches/cove-cotton.yaml");
    let doll = folder.path().join("owlet.txt");
    let text = "Body\nRnd 1: 6 sc in magic ring (6)\nRnd 2: inc around (12)\nRnds 3-5: sc around (12)\n\n\
        Wing (make 2)\nRnd 1: 4 sc in magic ring (4)\nRnd 2: inc around (8)\nRnd 3: sc around (8)\n";
    fs::write(&doll, text).unwrap();
    let doll = doll.to_str().unwrap();
    let run = |args: &[&str]| roundelay(&[args, &["--swatch", &swatch]].concat());
    let to = folder.path().join("made");
    let published = run(&["publish", doll, "-o", to.to_str().unwrap(), "--only", "text"]);
    assert_eq!(status(&published), 0, "{}", err(&published));
    let of = |piece: &str| fs::read_to_string(to.join(piece).join(format!("{piece}.txt"))).unwrap();
    assert!(of("owlet-body").contains("Rnd 1: 6 sc") && !of("owlet-body").contains("4 sc"), "{}", of("owlet-body"));
    assert!(of("owlet-wing").contains("Rnd 1: 4 sc") && !of("owlet-wing").contains(": 6 sc"), "{}", of("owlet-wing"));
    let checked = run(&["check", doll]);
    assert_eq!(status(&checked), 0);
    assert!(err(&checked).contains("2 pieces: Body, Wing; Body is taken"), "{}", err(&checked));
    let planned = out(&run(&["plan", doll, "--piece", "wing"]));
    assert!(planned.contains("4 sc in") && !planned.contains(": 6 sc in"), "{planned}");
    let chart = folder.path().join("wing.svg");
    assert_eq!(status(&run(&["draw", doll, "chart", "--piece", "2", "-o", chart.to_str().unwrap()])), 0);
    assert!(fs::read_to_string(chart).unwrap().contains("Wing"));
    let none = run(&["plan", doll, "--piece", "tail"]);
    assert_eq!(status(&none), 1);
    assert!(err(&none).contains("the pieces are Body, Wing"), "{}", err(&none));
    // A slip in a later piece is found, whichever is taken.
    fs::write(folder.path().join("slip.txt"), text.replace("(8)\nRnd 3", "(9)\nRnd 3")).unwrap();
    let slip = run(&["check", folder.path().join("slip.txt").to_str().unwrap()]);
    assert_eq!(status(&slip), 1);
}

/// Rounds that begin in a space, after slip stitches, go through every command as any others do.
#[test]
fn a_text_file_with_slip_stitches_is_checked_planned_and_drawn() {
    let folder = tempfile::tempdir().unwrap();
    let (rounds, swatch) = (path("harbour-light-coaster.txt"), path("swatches/cove-cotton.yaml"));
    let run = |args: &[&str]| roundelay(&[args, &["--swatch", &swatch]].concat());
    let checked = run(&["check", &rounds]);
    assert_eq!((status(&checked), err(&checked).as_str()), (0, ""));
    let planned = out(&run(&["plan", &rounds, "--format", "text"]));
    let own = "Rnd 5: Sl st in next 4 sc and in next ch-2 sp, ch 3 (counts as dc), (dc, ch 1, dc) in same sp, dc in next 5 sc, \
               *(2 dc, ch 1, dc) in next ch-2 sp, dc in next 5 sc; rep from * 4 more times, join (48 dc, 6 ch-1 sps)";
    assert!(planned.contains(own), "{planned}");
    let planned = out(&run(&["plan", &rounds, "--format", "text", "--rewrite"]));
    let fifth = "Rnd 5: sl st in next 4 sts, sl st in next ch-2 sp, ch 3 (counts as dc), (dc, ch 1, dc) in same sp, dc in next \
                 5 sts, [(2 dc, ch 1, dc) in next ch-2 sp, dc in next 5 sts] 5 times, sl st to top of ch-3 to join (48 \
                 dc, 6 ch-1 sps)";
    assert!(planned.contains(fifth), "{planned}");
    let json = out(&run(&["plan", &rounds, "--format", "json"]));
    assert_eq!(json.matches("\"slipped\":").count(), 2, "rounds 3 and 5 begin further on");
    let chart = folder.path().join("chart.svg");
    assert_eq!(status(&run(&["draw", &rounds, "chart", "-o", chart.to_str().unwrap()])), 0);
    assert!(fs::read_to_string(chart).unwrap().contains("Harbour light coaster"));
}
