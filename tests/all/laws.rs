//! The laws of the house, read from the source itself: which room may import which, what no room may do, and how long
//! a file may grow.

use std::collections::BTreeSet;
use std::path::{Path, PathBuf};

use roundelay::report::codes;

/// The rooms from the bottom to the top, and what each may import of the others. A room stands above all it imports,
/// so no two can import each other.
const ROOMS: &[(&str, &[&str])] = &[
    ("units", &[]),
    ("limits", &["units"]),
    ("sight", &["units"]),
    ("report", &["units"]),
    ("photo", &["units", "limits", "sight", "report"]),
    ("craft", FLOOR),
    ("words", &["units", "limits", "report", "craft"]),
    ("notation", &["units", "limits", "report", "craft", "words"]),
    ("font", &["units", "limits", "report"]),
    ("design", &["units", "limits", "report", "craft", "words", "notation", "font"]),
    ("plan", &["units", "limits", "report", "craft", "words", "notation", "design"]),
    ("geometry", &["units", "limits", "report", "craft", "design", "plan"]),
    (
        "pattern",
        &["units", "limits", "sight", "report", "photo", "craft", "words", "notation", "design", "plan", "geometry"],
    ),
    (
        "story",
        &["units", "limits", "report", "craft", "words", "notation", "font", "design", "plan", "geometry", "pattern"],
    ),
    (
        "drawing",
        &[
            "units", "limits", "sight", "report", "photo", "craft", "words", "notation", "font", "design", "plan",
            "geometry", "pattern", "story",
        ],
    ),
    ("page", &["units", "limits", "report", "words", "font", "story", "drawing"]),
    ("file", &["units", "limits", "report", "photo", "words", "font", "pattern", "story", "drawing", "page"]),
    (
        "publish",
        &[
            "units", "limits", "report", "photo", "craft", "words", "notation", "font", "design", "plan", "geometry",
            "pattern", "story", "drawing", "page", "file",
        ],
    ),
    (
        "command",
        &["units", "limits", "report", "words", "design", "pattern", "story", "drawing", "page", "file", "publish"],
    ),
    (
        "web",
        &["units", "limits", "report", "words", "design", "pattern", "story", "drawing", "page", "file", "publish"],
    ),
];

const FLOOR: &[&str] = &["units", "limits", "report"];

/// The data formats, which write out what is in a plan.
const DATA: [&str; 2] = ["src/file/csv.rs", "src/file/json.rs"];

/// What the data formats may import beside what their room may.
const OF_DATA: [&str; 5] = ["craft", "notation", "design", "plan", "geometry"];

/// Most lines of a file.
const MOST_LINES: usize = 600;

/// One source file.
struct Source {
    /// Its path from the root, with forward slashes.
    path: String,
    /// Its text without comments, line by line.
    lines: Vec<String>,
}

impl Source {
    /// The room it stands in: its folder or file of `src/`.
    fn room(&self) -> &str {
        let below = self.path.trim_start_matches("src/");
        below.split(['/', '.']).next().unwrap_or_default()
    }

    /// How many modules deep it stands: 1 for a room itself.
    fn depth(&self) -> usize {
        let parts = self.path.split('/').count() - 1;
        if self.path.ends_with("/mod.rs") { parts - 1 } else { parts }
    }

    /// The rooms whose names it says as modules, by path from the root or by a climb to it.
    fn imports(&self) -> BTreeSet<String> {
        let text = self.lines.join("\n");
        let tests = text.find("#[cfg(test)]\nmod tests {");
        let mut found = BTreeSet::new();
        for root in ["crate::", "roundelay::"] {
            for (at, _) in text.match_indices(root).filter(|(at, _)| starts_word(&text, *at)) {
                found.extend(heads(&text[at + root.len()..]));
            }
        }
        for (at, _) in text.match_indices("super::").filter(|(at, _)| starts_word(&text, *at)) {
            let climbs = text[at..].split("::").take_while(|step| *step == "super").count();
            // A module of tests at the end of a file stands one deeper.
            let depth = self.depth() + usize::from(tests.is_some_and(|tests| tests < at));
            if climbs >= depth && !text[..at].ends_with("super::") {
                found.extend(heads(&text[at + climbs * "super::".len()..]));
            }
        }
        found
    }
}

/// True where no path and no longer word goes on before this.
fn starts_word(text: &str, at: usize) -> bool {
    !text[..at].ends_with(|before: char| before.is_alphanumeric() || before == '_')
}

/// The first names of what is imported: one, or those of a group in braces.
fn heads(rest: &str) -> Vec<String> {
    let word = |text: &str| -> String {
        text.trim_start().chars().take_while(|letter| letter.is_alphanumeric() || *letter == '_').collect()
    };
    let Some(group) = rest.strip_prefix('{') else { return vec![word(rest)] };
    let (mut depth, mut start, mut found) = (0, 0, Vec::new());
    for (at, letter) in group.char_indices() {
        match letter {
            '{' => depth += 1,
            '}' if depth > 0 => depth -= 1,
            ',' if depth > 0 => {}
            ',' | '}' => {
                found.push(word(&group[start..at]));
                start = at + 1;
                if letter == '}' {
                    break;
                }
            }
            _ => {}
        }
    }
    found
}

fn root() -> &'static Path {
    Path::new(env!("CARGO_MANIFEST_DIR"))
}

/// The Rust files below a folder, in order.
fn paths(folder: &str) -> Vec<PathBuf> {
    let (mut folders, mut found) = (vec![root().join(folder)], Vec::new());
    while let Some(next) = folders.pop() {
        for entry in std::fs::read_dir(next).expect("a folder") {
            let path = entry.expect("an entry").path();
            if path.is_dir() {
                folders.push(path);
            } else if path.extension().is_some_and(|ending| ending == "rs") {
                found.push(path);
            }
        }
    }
    found.sort();
    found
}

fn sources() -> Vec<Source> {
    let source = |path: PathBuf| {
        let text = std::fs::read_to_string(&path).expect("a source file");
        let code = |line: &str| if line.trim_start().starts_with("//") { String::new() } else { line.to_owned() };
        let path = path.strip_prefix(root()).expect("below the root").to_string_lossy().replace('\\', "/");
        Source { path, lines: text.lines().map(code).collect() }
    };
    paths("src").into_iter().map(source).collect()
}

/// Every place of the source where one of these stands, but in the files named.
fn places(words: &[&str], except: &[&str]) -> Vec<String> {
    let mut found = Vec::new();
    for source in sources().iter().filter(|source| !except.iter().any(|path| source.path.starts_with(path))) {
        for (index, line) in source.lines.iter().enumerate() {
            let said = words.iter().any(|word| {
                let mut places = line.match_indices(word);
                places.any(|(at, _)| starts_word(line, at))
            });
            if said {
                found.push(format!("{}:{}: {}", source.path, index + 1, line.trim()));
            }
        }
    }
    found
}

/// True where a complaint's code could be written so.
fn is_code(word: &str) -> bool {
    let letters = word.chars().all(|letter| letter.is_ascii_lowercase() || letter.is_ascii_digit() || letter == '-');
    letters && word.starts_with(|first: char| first.is_ascii_lowercase())
}

/// The text between the first two quotes.
fn quoted(text: &str) -> Option<&str> {
    text.split('"').nth(1)
}

/// The functions that take the code of a complaint first, by their signatures.
fn complainers(texts: &[(String, String)]) -> BTreeSet<String> {
    let signatures = texts.iter().flat_map(|(_, text)| text.split("fn ").skip(1));
    let taking =
        signatures.filter(|rest| rest.split_once(')').is_some_and(|(head, _)| head.contains("code: &'static str")));
    let name = |rest: &str| rest.split(['(', '<']).next().unwrap_or_default().to_owned();
    taking.map(name).collect()
}

/// Every code that the source gives to a complaint, outside its tests.
fn codes_used() -> BTreeSet<String> {
    let shown = |source: Source| {
        let text = source.lines.join("\n");
        let end = text.find("#[cfg(test)]\nmod tests {").unwrap_or(text.len());
        (source.path, text[..end].to_owned())
    };
    let texts: Vec<(String, String)> =
        sources().into_iter().filter(|source| !source.path.ends_with("/tests.rs")).map(shown).collect();
    let mut used = BTreeSet::new();
    for name in complainers(&texts) {
        for (path, text) in &texts {
            for (at, _) in text.match_indices(&format!("{name}(")).filter(|(at, _)| starts_word(text, *at)) {
                let given = text[at + name.len() + 1..].trim_start();
                let made_here = text[..at].ends_with("Diagnostic::");
                if let Some(code) = given.strip_prefix('"').and(quoted(given)).filter(|code| is_code(code)) {
                    used.insert(code.to_owned());
                } else {
                    assert!(!made_here || given.starts_with("code,"), "{path}: a complaint is given no plain code");
                }
            }
        }
    }
    // A code chosen before the complaint is made: `let (code, message) = if … { ("this", …) } else { ("that", …) };`.
    for (_, text) in &texts {
        for (at, _) in text.match_indices("let (code, ") {
            let chosen = text[at..].split(";\n").next().unwrap_or_default();
            let words = chosen.split("(\"").skip(1).filter_map(|rest| rest.split('"').next());
            used.extend(words.filter(|word| is_code(word)).map(str::to_owned));
        }
    }
    used
}

#[test]
fn every_code_has_one_meaning_and_none_is_dead() {
    let known: BTreeSet<String> = codes::all().map(|meaning| meaning.code.to_owned()).collect();
    let used = codes_used();
    assert!(used.len() > 100, "the source is read: {used:?}");
    assert_eq!(used.difference(&known).collect::<Vec<_>>(), [""; 0], "without a meaning in src/report/codes.txt");
    assert_eq!(known.difference(&used).collect::<Vec<_>>(), [""; 0], "in src/report/codes.txt, but used nowhere");
}

#[test]
fn a_room_stands_above_all_it_may_import() {
    for (index, (room, may)) in ROOMS.iter().enumerate() {
        for other in *may {
            assert!(ROOMS[..index].iter().any(|(below, _)| below == other), "{other} does not stand below {room}");
        }
    }
}

#[test]
fn imports_go_down_the_rooms() {
    let mut faults = Vec::new();
    for source in sources().iter().filter(|source| !matches!(source.path.as_str(), "src/lib.rs" | "src/main.rs")) {
        let Some((room, may)) = ROOMS.iter().find(|(name, _)| *name == source.room()) else {
            faults.push(format!("{} stands in no room of the table", source.path));
            continue;
        };
        for other in source.imports() {
            let is_room = ROOMS.iter().any(|(name, _)| **name == other);
            let data = DATA.contains(&source.path.as_str()) && OF_DATA.contains(&other.as_str());
            if is_room && other != *room && !may.contains(&other.as_str()) && !data {
                faults.push(format!("{} imports {other}, which {room} may not", source.path));
            }
        }
    }
    assert_eq!(faults, [""; 0]);
}

#[test]
fn the_library_keeps_to_itself() {
    let printing = ["print!", "println!", "eprint!", "eprintln!", "dbg!", "std::io::stdout", "std::io::stderr"];
    let reaching = ["std::fs", "std::env", "std::net", "std::process", "std::time", "std::thread", "thread_local!"];
    let command = ["src/main.rs", "src/command/"];
    assert_eq!(places(&printing, &command), [""; 0], "the library prints");
    let found = places(&reaching, &[&command[..], &["src/file/save"]].concat());
    assert_eq!(found, [""; 0], "the library reaches outside, or keeps something from one call to the next");
}

#[test]
fn nothing_is_left_to_do_later() {
    let later = [["TO", "DO"].concat(), ["FIX", "ME"].concat(), ["XX", "X"].concat()];
    for path in [paths("src"), paths("tests")].concat() {
        let text = std::fs::read_to_string(&path).expect("a source file");
        for word in &later {
            assert!(!text.contains(word.as_str()), "{} says {word}", path.display());
        }
    }
}

#[test]
fn no_file_grows_too_long() {
    for path in [paths("src"), paths("tests")].concat() {
        let lines = std::fs::read_to_string(&path).expect("a source file").lines().count();
        assert!(lines <= MOST_LINES, "{} has {lines} lines; {MOST_LINES} are the most", path.display());
    }
}
