//! The guides say what is true: every path they name exists, every option they name is one of the tool's.

use std::path::Path;
use std::process::Command;

const GUIDES: [&str; 3] = ["README.md", "DEVELOPERS.md", "tests/README.md"];

fn root() -> &'static Path {
    Path::new(env!("CARGO_MANIFEST_DIR"))
}

/// Words in back quotes and on lines indented as commands.
fn named(guide: &str) -> Vec<String> {
    let text = std::fs::read_to_string(root().join(guide)).expect("the guide is there");
    let quoted = text.split('`').skip(1).step_by(2).flat_map(str::split_whitespace);
    let commands = text.lines().filter(|line| line.starts_with("    ")).flat_map(str::split_whitespace);
    quoted.chain(commands).map(|word| word.trim_matches([',', '.', ':', ')', '(']).to_owned()).collect()
}

#[test]
fn every_path_exists() {
    let folders = ["src/", "tests/", "examples/", "out/", "fonts/", ".ci/"];
    for guide in GUIDES {
        let words = named(guide);
        let paths = words.iter().filter(|word| folders.iter().any(|folder| word.starts_with(folder)));
        for path in paths.filter(|path| !path.contains(['*', '…']) && !path.contains("NAME")) {
            assert!(root().join(path).exists(), "{guide} names {path}, which isn't there");
        }
    }
}

#[test]
fn every_picture_and_link_exists() {
    for guide in GUIDES {
        let path = root().join(guide);
        let text = std::fs::read_to_string(&path).expect("the guide is there");
        let links = text.split("](").skip(1).filter_map(|rest| rest.split_once(')')).map(|(link, _)| link);
        for link in links.filter(|link| !link.contains("://") && !link.starts_with('#')) {
            assert!(path.with_file_name(link).exists(), "{guide} shows {link}, which isn't there");
        }
    }
}

#[test]
fn every_option_of_the_tool_exists() {
    let mut help = String::new();
    for command in ["new", "check", "plan", "draw", "publish", "explain"] {
        let run = Command::new(env!("CARGO_BIN_EXE_roundelay")).args(["help", command]).output().expect("it runs");
        help.push_str(&String::from_utf8_lossy(&run.stdout));
    }
    for guide in GUIDES {
        let text = std::fs::read_to_string(root().join(guide)).expect("the guide is there");
        let calls = text.lines().filter(|line| line.contains("roundelay "));
        for option in calls.flat_map(str::split_whitespace).filter(|word| word.starts_with("--") && word.len() > 2) {
            let option = option.trim_matches(['`', ',', '.', ')']);
            assert!(help.contains(option), "{guide} names {option}, which no command has");
        }
    }
}
