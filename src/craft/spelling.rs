//! Every way in which stitches are spelled: what their rows call them, and after how they are built of others.

use super::{Stitch, Terms};

/// Every spelling of every stitch in these terms, in the singular and in the plural: in small letters, a blank wherever a
/// hyphen or a blank may stand. Abbreviations come before whole names.
pub fn spellings(terms: Terms) -> Vec<(String, Stitch)> {
    let mut all: Vec<(String, Stitch)> = Vec::new();
    let plain = |spelling: &str| spelling.to_lowercase().replace('-', " ");
    for short in [true, false] {
        for stitch in Stitch::all() {
            let names = stitch.names(terms);
            let names = if short { std::slice::from_ref(&names.short) } else { names.also };
            for name in names {
                all.extend(numbers(plain(name)).map(|spelling| (spelling, stitch)));
            }
        }
    }
    for stitch in Stitch::all() {
        let Some(base) = stitch.built_of() else { continue };
        let bases: Vec<String> = all.iter().filter(|(_, known)| *known == base).map(|(name, _)| name.clone()).collect();
        let (build, stems) = (stitch.row().build.row(), stitch.row().stems.to_string());
        for form in build.spellings {
            let form = form.replace('N', &stems);
            for spelling in bases.iter().map(|base| form.replace('S', base)) {
                let both = if build.plural { 2 } else { 1 };
                all.extend(numbers(spelling).take(both).map(|spelling| (spelling, stitch)));
            }
        }
    }
    all
}

/// The singular, and the plural where it isn't too short to have one or too like a singular itself: `dc` and `dcs`,
/// `slip stitch` and `slip stitches`.
fn numbers(singular: String) -> impl Iterator<Item = String> {
    let plural = match singular.len() {
        0..2 => None,
        _ if singular.ends_with("stitch") => Some(format!("{singular}es")),
        _ if singular.ends_with('s') => None,
        _ => Some(format!("{singular}s")),
    };
    std::iter::once(singular).chain(plural)
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::collections::BTreeMap;

    #[test]
    fn no_spelling_is_two_stitches() {
        for terms in [Terms::Us, Terms::Uk] {
            let mut known: BTreeMap<String, Stitch> = BTreeMap::new();
            for (spelling, stitch) in spellings(terms) {
                assert_eq!(*known.entry(spelling.clone()).or_insert(stitch), stitch, "{spelling} in {terms:?}");
            }
            assert!(Stitch::all().all(|stitch| known.values().any(|it| *it == stitch)));
        }
    }

    #[test]
    fn stitches_are_spelled_in_the_plural_too() {
        let known = spellings(Terms::Us);
        let find = |wanted: &str| known.iter().find(|(spelling, _)| spelling == wanted).map(|(_, stitch)| *stitch);
        assert_eq!(find("slip stitches"), Some(Stitch::SL_ST));
        assert_eq!(find("triple trebles"), Stitch::by_id("trtr"));
        assert_eq!(find("front post double crochets"), Some(Stitch::FPDC));
        assert_eq!(find("5 dc popcorns"), Some(Stitch::POPCORN));
        assert_eq!(find("fp dcss"), None);
    }
}
