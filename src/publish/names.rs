//! Names of published files.

use crate::report::clean::plain;

/// Sizes as parts of file names, each different from the others even where upper and lower case are one: those that
/// would be taken for another, or have nothing left, get their number.
pub(super) fn size_names<'a>(names: impl Iterator<Item = &'a str>) -> Vec<String> {
    let mut taken: Vec<String> = Vec::new();
    let mut free = |name: String| {
        let small = name.to_lowercase();
        let free = !small.is_empty() && !taken.contains(&small);
        if free {
            taken.push(small);
        }
        free.then_some(name)
    };
    let mut named: Vec<Option<String>> = names.map(|name| free(slug(name))).collect();
    for (index, name) in named.iter_mut().enumerate().filter(|(_, name)| name.is_none()) {
        *name = (index + 1..).find_map(|number| free(format!("size-{number}")));
    }
    named.into_iter().flatten().collect()
}

/// The beginning of the names of a design's files, from the name of its own file without the ending: nothing that hides a
/// file, climbs to another folder or has a meaning of its own to a system or a terminal.
pub fn stem_of(name: &str) -> String {
    let safe = |c: char| !matches!(c, '/' | '\\' | ':' | '*' | '?' | '"' | '<' | '>' | '|') && plain(c);
    let stem: String = name.chars().map(|c| if safe(c) { c } else { '-' }).collect();
    let stem = stem.trim_start_matches(['.', '-', ' ']).trim_end_matches(['.', ' ']);
    if stem.is_empty() { "pattern".to_owned() } else { stem.to_owned() }
}

/// A name as part of a file name: letters and figures stay, all else becomes a hyphen.
fn slug(name: &str) -> String {
    let safe: String = name.chars().map(|c| if c.is_alphanumeric() { c } else { '-' }).collect();
    safe.split('-').filter(|piece| !piece.is_empty()).collect::<Vec<_>>().join("-")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_name_of_a_file_begins_the_names_of_all() {
        for (name, stem) in [
            ("hat", "hat"),
            ("my hat.v2", "my hat.v2"),
            ("..", "pattern"),
            ("-", "pattern"),
            ("", "pattern"),
            (".hidden", "hidden"),
            ("a\nb\u{202e}c", "a-b-c"),
            ("été", "été"),
            ("a/b:c", "a-b-c"),
        ] {
            assert_eq!(stem_of(name), stem, "{name:?}");
        }
    }

    #[test]
    fn no_two_sizes_share_a_file_name() {
        let names = ["S", "s", "S!", "!!", "size 4", "??", "3 months", "μικρό"];
        let expected = ["S", "size-2", "size-3", "size-5", "size-4", "size-6", "3-months", "μικρό"];
        assert_eq!(size_names(names.into_iter()), expected);
    }
}
