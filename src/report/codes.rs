//! What every code of a complaint means, and what usually helps.

/// Code, meaning and help of each complaint, in the order of the codes.
const LIST: &str = include_str!("codes.txt");

/// The meaning of one code.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Meaning {
    /// The code, in kebab-case.
    pub code: &'static str,
    /// What it means, in sentences.
    pub means: String,
    /// What usually helps, in a sentence.
    pub helps: String,
}

/// Every code that a complaint may have, in alphabetical order.
pub fn all() -> impl Iterator<Item = Meaning> {
    LIST.split("\n\n").map(|entry| {
        let (code, rest) = entry.trim_start().split_once('\n').unwrap_or((entry, ""));
        let (means, helps) = rest.split_once("\n- ").unwrap_or((rest, ""));
        Meaning { code, means: joined(means), helps: joined(helps) }
    })
}

/// The meaning of a code.
pub fn meaning(code: &str) -> Option<Meaning> {
    all().find(|meaning| meaning.code == code)
}

/// The code most like a word, where one is like it.
pub fn nearest(word: &str) -> Option<&'static str> {
    let likeness = |code: &str| strsim::jaro_winkler(&word.to_lowercase(), code);
    let near = all().map(|meaning| (likeness(meaning.code), meaning.code));
    near.filter(|(likeness, _)| *likeness > LIKE).max_by(|a, b| a.0.total_cmp(&b.0)).map(|(_, code)| code)
}

/// Least likeness of a word to the code that may be meant, of 1.
const LIKE: f64 = 0.75;

/// Lines as one line.
fn joined(lines: &str) -> String {
    lines.split_whitespace().collect::<Vec<_>>().join(" ")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_code_has_a_meaning_and_help_in_sentences() {
        for Meaning { code, means, helps } in all() {
            assert!(code.chars().all(|letter| letter.is_ascii_lowercase() || letter.is_ascii_digit() || letter == '-'));
            for said in [&means, &helps] {
                let whole = said.ends_with('.') && said.starts_with(|first: char| !first.is_lowercase());
                assert!(whole && said.len() > 10, "{code}: {said}");
            }
        }
    }

    #[test]
    fn the_list_is_sorted_and_names_each_code_once() {
        let codes: Vec<&str> = all().map(|meaning| meaning.code).collect();
        for pair in codes.windows(2) {
            assert!(pair[0] < pair[1], "{} stands before {}", pair[0], pair[1]);
        }
    }

    #[test]
    fn a_slip_finds_the_code_that_was_meant() {
        assert_eq!(nearest("unknwon-stich"), Some("unknown-stitch"));
        assert_eq!(nearest("Stitches-Left"), Some("stitches-left"));
        assert_eq!(nearest("§"), None);
        assert_eq!(meaning("too-short").map(|meaning| meaning.code), Some("too-short"));
    }
}
