//! `out/` holds what `publish` makes of the examples, and does so wherever and whenever it is run.

use std::collections::BTreeMap;
use std::path::{Path, PathBuf};
use std::process::Command;

type Files = BTreeMap<String, Vec<u8>>;

fn root() -> &'static Path {
    Path::new(env!("CARGO_MANIFEST_DIR"))
}

/// The design files of `examples/`, in order.
fn examples() -> Vec<PathBuf> {
    let entries = std::fs::read_dir(root().join("examples")).expect("the examples are there");
    let paths = entries.map(|entry| entry.expect("an entry").path());
    let mut designs: Vec<PathBuf> = paths.filter(|path| path.extension().is_some_and(|end| end == "yaml")).collect();
    designs.sort();
    designs
}

fn files(folder: &Path) -> Files {
    let entries = std::fs::read_dir(folder).unwrap_or_else(|error| panic!("{}: {error}", folder.display()));
    let read = |path: PathBuf| {
        let name = path.file_name().map(|name| name.to_string_lossy().into_owned());
        (name.unwrap_or_default(), std::fs::read(&path).expect("a file"))
    };
    entries.map(|entry| read(entry.expect("an entry").path())).collect()
}

/// What `publish` writes, run in a folder with these variables set.
fn published(design: &Path, from: &Path, variables: &[(&str, &str)]) -> Files {
    let folder = tempfile::tempdir().expect("a folder");
    let mut command = Command::new(env!("CARGO_BIN_EXE_roundelay"));
    command.arg("publish").arg(design).arg("-o").arg(folder.path()).current_dir(from).envs(variables.iter().copied());
    let run = command.output().expect("it runs");
    assert!(run.status.success(), "{}: {}", design.display(), String::from_utf8_lossy(&run.stderr));
    files(folder.path())
}

fn assert_same(fresh: &Files, other: &Files, what: &str) {
    assert_eq!(fresh.keys().collect::<Vec<_>>(), other.keys().collect::<Vec<_>>(), "{what}");
    for (name, bytes) in fresh {
        assert!(Some(bytes) == other.get(name), "{what}: {name} has other bytes; `tests/refresh` writes out/ anew");
    }
}

#[test]
fn out_is_what_publish_makes_of_the_examples() {
    for design in examples() {
        let name = design.file_stem().expect("a name");
        let fresh = published(&design, root(), &[]);
        assert_same(&fresh, &files(&root().join("out").join(name)), &name.to_string_lossy());
    }
}

#[test]
fn place_time_zone_and_locale_change_no_byte() {
    let design = root().join("examples/millrace-basket.yaml");
    let away = tempfile::tempdir().expect("a folder");
    let variables = [("TZ", "Pacific/Auckland"), ("LANG", "tr_TR.UTF-8"), ("LC_ALL", "tr_TR.UTF-8"), ("HOME", "/")];
    assert_same(&published(&design, root(), &[]), &published(&design, away.path(), &variables), "from elsewhere");
}
