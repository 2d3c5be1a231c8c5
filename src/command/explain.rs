//! `explain`: what the code of a complaint means.

use std::fmt::Write as _;

use roundelay::report::codes;

use super::Outcome;
use super::output::{data, failure};

/// Prints what a code means and what helps, or all codes with their meanings.
pub(super) fn run(code: Option<&str>) -> Outcome {
    let Some(code) = code else {
        let mut text = String::new();
        for meaning in codes::all() {
            let _ = writeln!(text, "{}\n    {}", meaning.code, meaning.means);
        }
        return data(&text);
    };
    match codes::meaning(code) {
        Some(meaning) => data(&format!("{}\n\n{}\n\nWhat helps: {}\n", meaning.code, meaning.means, meaning.helps)),
        None => {
            let help = match codes::nearest(code) {
                Some(near) => format!("did you mean `{near}`? `roundelay explain` lists them all"),
                None => "`roundelay explain` lists them all".to_owned(),
            };
            failure(&format!("no complaint has the code `{code}`"), &help)
        }
    }
}
