//! What a maker relies on: nothing of theirs is replaced, one design that fails keeps no other from being made, the same
//! bytes however many jobs, and an answer where the output has no room or no reader.

#![allow(clippy::unwrap_used)]

use std::collections::BTreeMap;
use std::fs;
use std::path::Path;
use std::process::{Command, Output, Stdio};

use serde_json::Value;

const MAT: &str = "title: Test mat
kind: mat
swatch: {stitch: sc, stitches: 20, rounds: 20, width: 10, height: 10}
sizes: {S: {across: 5}, M: {across: 6}}
work: spiral
parts:
  - mat: {start: ring of 6, shape: flat}
";

fn command(folder: &Path, arguments: &[&str]) -> Command {
    let mut command = Command::new(env!("CARGO_BIN_EXE_roundelay"));
    command.args(arguments).current_dir(folder).stdin(Stdio::null());
    command
}

fn run(folder: &Path, arguments: &[&str]) -> Output {
    command(folder, arguments).output().unwrap()
}

fn status(output: &Output) -> i32 {
    output.status.code().unwrap()
}

fn err(output: &Output) -> String {
    String::from_utf8(output.stderr.clone()).unwrap()
}

fn out(output: &Output) -> String {
    String::from_utf8(output.stdout.clone()).unwrap()
}

/// A folder with designs of these names.
fn with(designs: &[(&str, &str)]) -> tempfile::TempDir {
    let folder = tempfile::tempdir().unwrap();
    for (name, text) in designs {
        fs::write(folder.path().join(name), text).unwrap();
    }
    folder
}

/// Every file below a folder.
fn files(folder: &Path) -> BTreeMap<String, Vec<u8>> {
    let mut found = BTreeMap::new();
    for entry in fs::read_dir(folder).unwrap() {
        let path = entry.unwrap().path();
        let name = path.file_name().unwrap().to_string_lossy().into_owned();
        if path.is_dir() {
            found.extend(files(&path).into_iter().map(|(below, bytes)| (format!("{name}/{below}"), bytes)));
        } else {
            found.insert(name, fs::read(path).unwrap());
        }
    }
    found
}

#[test]
fn what_the_maker_wrote_is_never_replaced_by_publish() {
    let folder = with(&[("mat.yaml", MAT), ("mat.txt", "my notes"), ("mat.csv", "my sums")]);
    let refused = run(folder.path(), &["publish", "mat.yaml", "-o", "."]);
    assert_eq!(status(&refused), 2, "{}", err(&refused));
    for word in ["mat.txt", "mat.csv", "not made by Roundelay", "--force"] {
        assert!(err(&refused).contains(word), "{word}: {}", err(&refused));
    }
    assert_eq!(files(folder.path()).len(), 3);
    assert_eq!(fs::read_to_string(folder.path().join("mat.txt")).unwrap(), "my notes");
    let forced = run(folder.path(), &["publish", "mat.yaml", "-o", ".", "--force"]);
    assert_eq!(status(&forced), 0, "{}", err(&forced));
    assert!(fs::read_to_string(folder.path().join("mat.txt")).unwrap().contains("TEST MAT"));
}

#[test]
fn what_the_maker_wrote_is_never_replaced_by_draw() {
    let folder = with(&[("mat.yaml", MAT), ("mat.svg", "<svg>mine</svg>")]);
    let draw = |more: &[&str]| run(folder.path(), &[&["draw", "mat.yaml", "chart", "-o", "mat.svg"], more].concat());
    let refused = draw(&[]);
    assert_eq!(status(&refused), 2);
    assert!(err(&refused).contains("mat.svg would be replaced") && err(&refused).contains("--force"));
    assert_eq!(fs::read_to_string(folder.path().join("mat.svg")).unwrap(), "<svg>mine</svg>");
    assert_eq!(status(&draw(&["--force"])), 0);
    // From here on it is the tool's, until someone changes it.
    assert_eq!(status(&draw(&["--large-print"])), 0);
    let edited = fs::read_to_string(folder.path().join("mat.svg")).unwrap().replace("Test mat", "My mat");
    fs::write(folder.path().join("mat.svg"), &edited).unwrap();
    assert_eq!(status(&draw(&[])), 2);
    assert_eq!(fs::read_to_string(folder.path().join("mat.svg")).unwrap(), edited);
}

#[test]
fn files_of_a_size_that_is_gone_are_named_and_removed_on_request() {
    let folder = with(&[("mat.yaml", MAT)]);
    assert_eq!(status(&run(folder.path(), &["publish", "mat.yaml", "-o", "out"])), 0);
    fs::write(folder.path().join("mat.yaml"), MAT.replace(", M: {across: 6}", "")).unwrap();
    let named = run(folder.path(), &["publish", "mat.yaml", "-o", "out"]);
    assert!(err(&named).contains("mat-M-chart.svg") && err(&named).contains("--remove-old"), "{}", err(&named));
    assert!(folder.path().join("out/mat-M-chart.svg").exists());
    let removed = run(folder.path(), &["publish", "mat.yaml", "-o", "out", "--remove-old", "--fresh"]);
    assert_eq!(status(&removed), 0);
    assert!(err(&removed).contains("removed"), "{}", err(&removed));
    assert!(files(&folder.path().join("out")).keys().all(|name| !name.contains("-M-")));
}

#[test]
fn only_what_has_changed_is_made_anew() {
    let folder = with(&[("mat.yaml", MAT)]);
    let publish = |more: &[&str]| run(folder.path(), &[&["publish", "mat.yaml", "-o", "out"], more].concat());
    let first = publish(&[]);
    let before = files(&folder.path().join("out"));
    let again = publish(&[]);
    assert_eq!((status(&again), out(&again)), (0, out(&first)));
    assert!(err(&again).contains("nothing has changed"), "{}", err(&again));
    assert!(!err(&publish(&["--fresh"])).contains("nothing has changed"));
    assert_eq!(files(&folder.path().join("out")), before);
    for more in [&["--large-print"][..], &["--only", "text"], &["--plain-words"]] {
        assert!(!err(&publish(more)).contains("nothing has changed"), "{more:?}");
    }
    publish(&[]);
    fs::remove_file(folder.path().join("out/mat.csv")).unwrap();
    assert!(!err(&publish(&[])).contains("nothing has changed"));
    assert_eq!(files(&folder.path().join("out")), before);
}

/// The lines of the manifest are those of `sha256sum`.
#[test]
fn the_manifest_holds_the_folder() {
    let folder = with(&[("mat.yaml", MAT)]);
    run(folder.path(), &["publish", "mat.yaml", "-o", "out"]);
    let Some(tool) = crate::checkers::tool("sha256sum") else { return };
    let mut check = Command::new(tool);
    check.args(["--check", "--strict", "--quiet", ".roundelay-manifest"]).current_dir(folder.path().join("out"));
    let checked = check.output().unwrap();
    assert!(checked.status.success(), "{}", err(&checked));
}

#[test]
fn many_designs_are_made_and_one_that_fails_is_named() {
    let broken = MAT.replace("shape: flat", "shape: flot");
    let folder = with(&[("a.yaml", MAT), ("b.yaml", &broken), ("c.yaml", MAT)]);
    let all = ["publish", "a.yaml", "b.yaml", "c.yaml", "no.yaml", "-o", "out", "--only", "text,csv"];
    let published = run(folder.path(), &all);
    assert_eq!(status(&published), 2);
    let told = err(&published);
    assert!(
        told.contains("4 designs: 2 made, 0 unchanged, 2 failed") && told.contains("failed: b.yaml, no.yaml"),
        "{told}"
    );
    assert_eq!(out(&published), "out/a/a.txt\nout/a/a.csv\nout/c/c.txt\nout/c/c.csv\n");
    assert!(!folder.path().join("out/b").exists() && !folder.path().join("out/no").exists());
    let quiet = run(folder.path(), &[&all[..], &["--quiet"]].concat());
    assert_eq!((status(&quiet), out(&quiet).as_str()), (2, ""));
    assert!(err(&quiet).contains("failed: b.yaml, no.yaml") && !err(&quiet).contains("unchanged"), "{}", err(&quiet));
    let sound = run(folder.path(), &["publish", "a.yaml", "c.yaml", "-o", "out", "--only", "text,csv", "--quiet"]);
    assert_eq!((status(&sound), out(&sound), err(&sound)), (0, String::new(), String::new()));
}

#[test]
fn the_report_as_json_has_an_entry_a_design() {
    let folder = with(&[("a.yaml", MAT), ("b.yaml", "title: x\n"), ("c.yaml", MAT)]);
    fs::create_dir_all(folder.path().join("out/c")).unwrap();
    fs::write(folder.path().join("out/c/c.csv"), "mine").unwrap();
    let all = ["publish", "a.yaml", "b.yaml", "c.yaml", "-o", "out", "--only", "csv", "--report", "json"];
    let entries = |output: &Output| serde_json::from_slice::<Vec<Value>>(&output.stdout).unwrap();
    let published = run(folder.path(), &all);
    assert_eq!((status(&published), err(&published).as_str()), (2, ""));
    let found = entries(&published);
    let ends: Vec<&str> = found.iter().map(|entry| entry["end"].as_str().unwrap()).collect();
    assert_eq!(ends, ["made", "failed", "failed"]);
    assert_eq!(found[0]["files"][0], "out/a/a.csv");
    assert!(found[1]["complaints"].as_array().unwrap().iter().any(|one| one["code"] == "missing-field"));
    assert!(found[2]["why"].as_str().unwrap().contains("not made by Roundelay"), "{found:#?}");
    assert_eq!(entries(&run(folder.path(), &all))[0]["end"], "unchanged");
}

#[test]
fn any_number_of_jobs_makes_the_same_bytes() {
    let folder = with(&[("a.yaml", MAT), ("b.yaml", &MAT.replace("Test mat", "Other mat"))]);
    for jobs in ["1", "2", "7"] {
        let published = run(folder.path(), &["publish", "a.yaml", "b.yaml", "-o", jobs, "--jobs", jobs]);
        assert_eq!(status(&published), 0, "{}", err(&published));
    }
    let one = files(&folder.path().join("1"));
    assert!(one.len() > 20 && one == files(&folder.path().join("2")) && one == files(&folder.path().join("7")));
}

#[test]
fn designs_that_would_share_a_folder_are_refused_before_the_work() {
    let folder = with(&[("a.yaml", MAT), ("A.yml", MAT)]);
    let published = run(folder.path(), &["publish", "a.yaml", "A.yml", "-o", "out"]);
    assert_eq!(status(&published), 2);
    assert!(err(&published).contains("a.yaml and A.yml would both go to"), "{}", err(&published));
    assert!(!folder.path().join("out").exists());
}

#[test]
fn odd_names_of_files_lead_nowhere_else() {
    let folder = with(&[]);
    let inner = folder.path().join("in");
    fs::create_dir(&inner).unwrap();
    for name in ["...yaml", ".yaml", "..hat.yaml", "-.yaml"] {
        fs::write(inner.join(name), MAT).unwrap();
        let published = run(&inner, &["publish", &format!("./{name}"), "--only", "csv"]);
        assert_eq!(status(&published), 0, "{name}: {}", err(&published));
        assert_eq!(fs::read_dir(folder.path()).unwrap().count(), 1, "{name} stays below");
    }
    let long = format!("{}.yaml", "n".repeat(249));
    fs::write(inner.join(&long), MAT).unwrap();
    let published = run(&inner, &["publish", &long, "-o", "long"]);
    assert_eq!(status(&published), 2);
    assert!(err(&published).contains("255 are the most"), "{}", err(&published));
    assert!(!inner.join("long").exists());
}

#[test]
fn a_swatch_that_is_not_there_could_not_run() {
    let folder = with(&[("mat.yaml", MAT), ("mat.txt", "Rnd 1: 6 sc in ring (6)\n")]);
    for file in ["mat.yaml", "mat.txt"] {
        for command in ["check", "plan", "publish"] {
            let ended = run(folder.path(), &[command, file, "--swatch", "missing.yaml"]);
            assert_eq!(status(&ended), 2, "{command} {file}");
            assert!(err(&ended).contains("missing.yaml for the swatch can't be read"), "{}", err(&ended));
        }
    }
}

/// `/dev/full` of Linux takes no byte: every write to it says that the disk is full.
#[cfg(target_os = "linux")]
#[test]
fn an_output_without_room_is_told() {
    let folder = with(&[("mat.yaml", MAT)]);
    for arguments in [
        &["--help"][..],
        &["--version"],
        &["help", "draw"],
        &["new"],
        &["check", "mat.yaml"],
        &["check", "mat.yaml", "--format", "json"],
        &["plan", "mat.yaml"],
        &["explain"],
        &["publish", "mat.yaml", "--only", "csv"],
    ] {
        let full = fs::OpenOptions::new().write(true).open("/dev/full").unwrap();
        let ended = command(folder.path(), arguments).stdout(full).output().unwrap();
        assert_eq!(status(&ended), 2, "{arguments:?}");
    }
    let full = fs::OpenOptions::new().write(true).open("/dev/full").unwrap();
    let ended = command(folder.path(), &["check", "mat.yaml"]).stderr(full).output().unwrap();
    assert_eq!(status(&ended), 0);
}

/// A reader that has seen enough, as `head` has, is no failure.
#[test]
fn an_output_without_a_reader_is_no_failure() {
    let folder = with(&[("mat.yaml", MAT)]);
    for arguments in [&["explain"][..], &["--help"], &["plan", "mat.yaml", "--format", "json"], &["check", "mat.yaml"]]
    {
        let mut child =
            command(folder.path(), arguments).stdout(Stdio::piped()).stderr(Stdio::piped()).spawn().unwrap();
        drop(child.stdout.take());
        let ended = child.wait_with_output().unwrap();
        assert!(status(&ended) == 0 && !err(&ended).contains("error"), "{arguments:?}: {}", err(&ended));
    }
}

/// A run that the system ends in the midst of writing (a file may not grow beyond 8 KiB here) leaves the old edition, and
/// the next run leaves no litter of it.
#[cfg(unix)]
#[test]
fn a_run_that_is_ended_while_it_writes_leaves_the_old_edition() {
    let folder = with(&[("mat.yaml", MAT)]);
    assert_eq!(status(&run(folder.path(), &["publish", "mat.yaml", "-o", "out"])), 0);
    let before = files(&folder.path().join("out"));
    fs::write(folder.path().join("mat.yaml"), MAT.replace("Test mat", "Other mat")).unwrap();
    let ended = Command::new("sh")
        .args(["-c", "ulimit -f 16; exec \"$0\" publish mat.yaml -o out", env!("CARGO_BIN_EXE_roundelay")])
        .current_dir(folder.path())
        .output()
        .unwrap();
    assert!(!ended.status.success());
    let mut left = files(&folder.path().join("out"));
    left.retain(|name, _| name == ".roundelay-manifest" || !name.starts_with(".roundelay-"));
    assert_eq!(left, before);
    assert_eq!(status(&run(folder.path(), &["publish", "mat.yaml", "-o", "out"])), 0);
    let after = files(&folder.path().join("out"));
    assert_eq!(after.keys().collect::<Vec<_>>(), before.keys().collect::<Vec<_>>());
}

#[test]
fn many_files_are_written_where_few_may_be_open() {
    let folder = with(&[("mat.yaml", MAT)]);
    let script = "ulimit -n 16; exec \"$0\" publish mat.yaml -o out --jobs 1";
    let ended = Command::new("sh")
        .args(["-c", script, env!("CARGO_BIN_EXE_roundelay")])
        .current_dir(folder.path())
        .output()
        .unwrap();
    assert!(ended.status.success(), "{}", err(&ended));
    assert!(files(&folder.path().join("out")).len() > 16);
}

/// On a terminal, as util-linux's `script` makes one.
#[cfg(target_os = "linux")]
#[test]
fn whoever_waits_at_a_terminal_sees_that_it_goes_on() {
    let folder = tempfile::tempdir().unwrap();
    let mat = "title: Mat\nkind: mat\nswatch: {stitch: sc, stitches: 20, rounds: 20, width: 10, height: 10}\nsizes: {one: {across: 78}}\nwork: spiral\nparts:\n  - mat: {start: ring of 6, shape: flat}\n";
    fs::write(folder.path().join("mat.yaml"), mat).unwrap();
    let asked = format!("{} draw mat.yaml piece -o piece.svg", env!("CARGO_BIN_EXE_roundelay"));
    let Ok(seen) = Command::new("script").args(["-qec", &asked, "/dev/null"]).current_dir(folder.path()).output()
    else {
        return;
    };
    let seen = String::from_utf8_lossy(&seen.stdout).into_owned();
    // A sign that turns, the seconds, and the line is cleared at the end.
    assert!(seen.contains("0s") || seen.contains("1s"), "{seen:?}");
    assert!(folder.path().join("piece.svg").exists() && seen.trim_end().ends_with("\u{1b}[2K"), "{seen:?}");
}
