//! What the program is made of: every package under a licence and from a place that `deny.toml` allows, every one that is
//! asked for by name justified in the guide.

#![allow(clippy::unwrap_used)]

use std::collections::BTreeSet;
use std::path::Path;
use std::process::Command;

use serde_json::Value;

fn root() -> &'static Path {
    Path::new(env!("CARGO_MANIFEST_DIR"))
}

fn text(name: &str) -> String {
    std::fs::read_to_string(root().join(name)).unwrap()
}

/// The quoted words of a list of `deny.toml`.
fn allowed(list: &str) -> BTreeSet<String> {
    let text = text("deny.toml");
    let found = text.split(&format!("\n{list} = [")).nth(1).and_then(|rest| rest.split(']').next()).unwrap();
    found.split('"').skip(1).step_by(2).map(str::to_owned).collect()
}

/// What cargo says of every package of the lock file, without a network; nothing where the packages of other systems were
/// never fetched.
fn packages() -> Option<Vec<Value>> {
    let cargo = std::env::var_os("CARGO").unwrap_or_else(|| "cargo".into());
    let run = Command::new(cargo)
        .args(["metadata", "--locked", "--offline", "--format-version", "1"])
        .current_dir(root())
        .output()
        .unwrap();
    let required = std::env::var("ROUNDELAY_CHECKERS").is_ok_and(|value| value == "required");
    assert!(run.status.success() || !required, "{}", String::from_utf8_lossy(&run.stderr));
    let told: Value = serde_json::from_slice(&run.stdout).ok()?;
    Some(told["packages"].as_array().unwrap().clone())
}

/// True where a licence expression (SPDX 2.3, annex D) can be met with what is allowed.
fn met(expression: &str, allowed: &BTreeSet<String>) -> bool {
    let spaced = expression.replace('/', " OR ").replace('(', " ( ").replace(')', " ) ");
    let words: Vec<&str> = spaced.split_whitespace().collect();
    let (met, rest) = any(&words, allowed);
    met && rest.is_empty()
}

fn any<'w>(words: &'w [&'w str], allowed: &BTreeSet<String>) -> (bool, &'w [&'w str]) {
    let (mut met, mut rest) = every(words, allowed);
    while let Some(("OR", after)) = rest.split_first().map(|(word, after)| (*word, after)) {
        let (other, left) = every(after, allowed);
        (met, rest) = (met || other, left);
    }
    (met, rest)
}

fn every<'w>(words: &'w [&'w str], allowed: &BTreeSet<String>) -> (bool, &'w [&'w str]) {
    let (mut met, mut rest) = one(words, allowed);
    while let Some(("AND", after)) = rest.split_first().map(|(word, after)| (*word, after)) {
        let (other, left) = one(after, allowed);
        (met, rest) = (met && other, left);
    }
    (met, rest)
}

fn one<'w>(words: &'w [&'w str], allowed: &BTreeSet<String>) -> (bool, &'w [&'w str]) {
    match words {
        ["(", inner @ ..] => {
            let (met, rest) = any(inner, allowed);
            (met, rest.strip_prefix(&[")"]).unwrap_or(rest))
        }
        [licence, "WITH", exception, rest @ ..] => (allowed.contains(&format!("{licence} WITH {exception}")), rest),
        [licence, rest @ ..] => (allowed.contains(*licence), rest),
        [] => (false, words),
    }
}

#[test]
fn licence_expressions_are_read_as_the_standard_has_them() {
    let allowed: BTreeSet<String> = ["MIT", "Zlib", "Apache-2.0 WITH LLVM-exception"].map(str::to_owned).into();
    for (expression, fine) in [
        ("MIT", true),
        ("GPL-2.0-only", false),
        ("Apache-2.0 OR MIT", true),
        ("Apache-2.0/MIT", true),
        ("MIT AND GPL-2.0-only", false),
        ("(Apache-2.0 OR MIT) AND Zlib", true),
        ("(Apache-2.0 OR MIT) AND BSD-3-Clause", false),
        ("GPL-2.0-only OR MIT AND Zlib", true),
        ("Apache-2.0 WITH LLVM-exception", true),
        ("MIT MIT", false),
    ] {
        assert_eq!(met(expression, &allowed), fine, "{expression}");
    }
}

#[test]
fn every_package_is_allowed() {
    let Some(packages) = packages() else { return };
    let (licences, registries) = (allowed("allow"), allowed("allow-registry"));
    assert!(packages.len() > 100 && licences.len() > 5 && registries.len() == 1);
    for package in packages.iter().filter(|package| package["name"] != "roundelay") {
        let name = package["name"].as_str().unwrap();
        let licence = package["license"].as_str().unwrap_or_default();
        assert!(met(licence, &licences), "{name}: {licence}");
        let source = package["source"].as_str().unwrap().trim_start_matches("registry+");
        assert!(registries.contains(source), "{name}: {source}");
        let version = package["version"].as_str().unwrap();
        // By number, not by letter: 0.3.9 comes before 0.3.10.
        let number = |at: usize| version.split('.').nth(at).and_then(|part| part.parse().ok()).unwrap_or(u32::MAX);
        let early = [0, 1, 2].map(number) < [0, 3, 10];
        assert!(name != "arrayref" || early, "arrayref {version}: see deny.toml");
        assert_ne!(name, "openssl-sys", "see deny.toml");
    }
}

/// Every package that is asked for by name stands in the guide's table with a reason.
#[test]
fn every_dependency_is_justified() {
    let cargo = text("Cargo.toml");
    let section = cargo.split("[dependencies]\n").nth(1).and_then(|rest| rest.split("\n\n").next()).unwrap();
    let names: Vec<&str> = section.lines().filter_map(|line| line.split(" = ").next()).collect();
    assert!(names.len() > 15, "{names:?}");
    let guide = text("DEVELOPERS.md");
    for name in names {
        let row = guide.lines().find(|line| line.starts_with(&format!("| `{name}` |")));
        assert!(row.is_some_and(|row| row.len() > name.len() + 20), "{name} has no reason in DEVELOPERS.md");
    }
}

/// The list of components names what is linked, with its checksum, in the form of CycloneDX 1.6.
#[test]
fn the_list_of_components_is_whole() {
    let python = Command::new("python3").arg(root().join("tests/components")).output();
    let required = std::env::var("ROUNDELAY_CHECKERS").is_ok_and(|value| value == "required");
    let Ok(run) = python else {
        assert!(!required, "python3 is missing");
        return;
    };
    if !run.status.success() && !required {
        return;
    }
    let list: Value = serde_json::from_slice(&run.stdout).expect("JSON");
    assert_eq!((&list["bomFormat"], &list["specVersion"]), (&Value::from("CycloneDX"), &Value::from("1.6")));
    let components = list["components"].as_array().unwrap();
    let names: BTreeSet<&str> = components.iter().map(|one| one["name"].as_str().unwrap()).collect();
    assert!(names.contains("krilla") && names.contains("resvg") && !names.contains("criterion"), "{names:?}");
    for one in components {
        assert_eq!(one["hashes"][0]["content"].as_str().map(str::len), Some(64), "{one}");
        assert!(
            one["purl"].as_str().unwrap().starts_with("pkg:cargo/") && one["licenses"][0]["expression"].is_string()
        );
    }
}
