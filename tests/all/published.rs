//! `out/` and its manifest say what the tool makes of the examples, and it does so wherever and whenever it is run.

use std::collections::BTreeMap;
use std::path::Path;
use std::process::Command;

use sha2::{Digest, Sha256};

type Files = BTreeMap<String, Vec<u8>>;

/// Most that `out/` may hold in all, bytes: a clone stays light.
const MOST: usize = 4_000_000;

fn root() -> &'static Path {
    Path::new(env!("CARGO_MANIFEST_DIR"))
}

/// Every file below a folder, by its path from there.
fn files(folder: &Path) -> Files {
    let mut found = Files::new();
    let mut folders = vec![folder.to_owned()];
    while let Some(next) = folders.pop() {
        for entry in std::fs::read_dir(&next).unwrap_or_else(|error| panic!("{}: {error}", next.display())) {
            let path = entry.expect("an entry").path();
            if path.is_dir() {
                folders.push(path);
            } else {
                let name = path.strip_prefix(folder).expect("below the folder").to_string_lossy().into_owned();
                found.insert(name, std::fs::read(&path).expect("a file"));
            }
        }
    }
    found
}

/// What is committed of what is made: everything in `out/` but its own readme and manifest.
fn committed() -> Files {
    let mut files = files(&root().join("out"));
    files.retain(|name, _| name != "README.md" && name != "MANIFEST");
    files
}

/// Checksum and size of bytes as a line of the manifest has them.
fn told(bytes: &[u8]) -> String {
    let sum: String = Sha256::digest(bytes).iter().map(|byte| format!("{byte:02x}")).collect();
    format!("{sum} {}", bytes.len())
}

/// What the manifest says of each file it names.
fn manifest() -> BTreeMap<String, String> {
    let text = std::fs::read_to_string(root().join("out/MANIFEST")).expect("the manifest is there");
    let lines = text.lines().filter(|line| !line.starts_with('#'));
    let named = lines.map(|line| line.rsplit_once(' ').unwrap_or_else(|| panic!("no line of a manifest: {line}")));
    named.map(|(told, name)| (name.to_owned(), told.to_owned())).collect()
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
fn out_and_its_manifest_are_what_is_made() {
    let folder = tempfile::tempdir().expect("a folder");
    let all = folder.path().join("all");
    let mut refresh = Command::new(root().join("tests/refresh"));
    let run = refresh.arg("--all").arg(&all).env("ROUNDELAY", env!("CARGO_BIN_EXE_roundelay")).output();
    let run = run.expect("it runs");
    assert!(run.status.success(), "{}", String::from_utf8_lossy(&run.stderr));
    let (mut committed, mut manifest) = (committed(), manifest());
    for (name, bytes) in files(&all) {
        match (committed.remove(&name), manifest.remove(&name)) {
            (Some(old), None) => assert!(old == bytes, "out/{name} is stale; `tests/refresh` writes it anew"),
            (None, Some(old)) => assert_eq!(old, told(&bytes), "{name} is stale in out/MANIFEST; `tests/refresh`"),
            (Some(_), Some(_)) => panic!("{name} is committed and in the manifest"),
            (None, None) => panic!("{name} is neither in out/ nor in out/MANIFEST; `tests/refresh` adds it"),
        }
    }
    assert!(committed.is_empty(), "nothing makes these of out/: {:?}", committed.keys());
    assert!(manifest.is_empty(), "nothing makes these of out/MANIFEST: {:?}", manifest.keys());
}

/// A picture or a book that is committed stays in the history whole each time it changes.
#[test]
fn a_clone_is_light() {
    let readme = std::fs::read_to_string(root().join("README.md")).expect("the readme is there");
    let committed = committed();
    for name in committed.keys() {
        let text = [".txt", ".csv", ".svg"].iter().any(|ending| name.ends_with(ending));
        assert!(text || readme.contains(&format!("](out/{name})")), "out/{name} is neither text nor in the README");
    }
    let bytes: usize = committed.values().map(Vec::len).sum();
    assert!(bytes < MOST, "out/ holds {bytes} bytes");
}

#[test]
fn place_time_zone_and_locale_change_no_byte() {
    let design = root().join("examples/millrace-basket.yaml");
    let away = tempfile::tempdir().expect("a folder");
    let variables = [("TZ", "Pacific/Auckland"), ("LANG", "tr_TR.UTF-8"), ("LC_ALL", "tr_TR.UTF-8"), ("HOME", "/")];
    assert_same(&published(&design, root(), &[]), &published(&design, away.path(), &variables), "from elsewhere");
}
