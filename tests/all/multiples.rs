//! Multiples of stitches: held in every size, with corners too, and refused with measures that fit.

#![allow(clippy::unwrap_used, reason = "a test fails where it panics")]

use roundelay::file::text;
use roundelay::page::{Options, Paper, Pictures};
use roundelay::pattern::Pattern;
use roundelay::report::Report;
use roundelay::story::{Illustrations, Story};

fn cap(top: &str, sizes: &str, rib: &str) -> String {
    format!(
        "title: Cap\n{top}\nswatch: {{stitch: sc, stitches: 18, rounds: 19, width: 10, height: 10}}\nease: 0 %\n\
         sizes: {{{sizes}}}\nwork: spiral\nparts:\n  - crown: {{start: ring, shape: flat}}\n  - side: {{depth: 9}}\n  \
         - rib: {{shape: straight, depth: 4, {rib}}}\n"
    )
}

fn read(text: &str) -> Result<Pattern, Report> {
    Pattern::read(text.as_bytes())
}

/// The last count of every part, for every size.
fn ends(pattern: &Pattern) -> Vec<Vec<u32>> {
    let of = |size: &roundelay::plan::SizePlan| {
        size.parts.iter().map(|part| size.rounds[part.last as usize - 1].after).collect()
    };
    pattern.plan.sizes.iter().map(of).collect()
}

const SIZES: &str = "S: {head: 50}, M: {head: 54.5}, L: {head: 58}";

#[test]
fn the_crown_ends_as_the_rib_below_it_asks_in_every_size() {
    for (rib, of, plus) in [("multiple: 4", 4, 0), ("multiple: 4 + 2", 4, 2), ("multiple: multiple of 5 plus 1", 5, 1)]
    {
        let pattern = read(&cap("", SIZES, rib)).unwrap();
        for size in ends(&pattern) {
            assert!(size.iter().all(|count| count % of == plus), "{rib}: {size:?}");
        }
    }
}

#[test]
fn corners_and_a_multiple_both_hold() {
    let pattern = read(&cap("shaping: 6 corners\ntolerance: 8 %", SIZES, "multiple: 4")).unwrap();
    assert!(ends(&pattern).iter().flatten().all(|count| count % 12 == 0), "{:?}", ends(&pattern));
}

/// Parts of their own multiples: one that shapes between them meets the second where it ends.
#[test]
fn a_part_that_is_shaped_goes_from_one_multiple_to_another() {
    let brim = cap("", SIZES, "multiple: 8") + "  - brim: {width: 5, flare: 40°, multiple: 7}\n";
    for size in ends(&read(&brim).unwrap()) {
        assert!(size[2] % 8 == 0 && size[3] % 7 == 0, "{size:?}");
    }
}

#[test]
fn what_is_refused_names_heads_and_a_tolerance_that_fit() {
    let report = read(&cap("", "M: {head: 55}", "multiple: 12")).err().unwrap();
    let told = report.diagnostics.iter().find(|one| one.code == "multiple").unwrap();
    // 55 cm are 99 stitches of 18 in 10 cm: 96 are 53.3 cm, 108 are 60 cm.
    assert!(
        told.message.contains("wants 99 stitches") && told.message.contains("gives 96, 3 % less"),
        "{}",
        told.message
    );
    let help = told.help.as_deref().unwrap();
    assert!(help.starts_with("a head of 53.3 cm or 60 cm fits (96 or 108 stitches)"), "{help}");
    for head in [53.3, 60.0] {
        let fits = read(&cap("", &format!("M: {{head: {head}}}"), "multiple: 12"));
        assert!(fits.is_ok(), "{head}: {fits:?}");
    }
    let cure = help.split('`').find(|cure| cure.starts_with("tolerance")).unwrap();
    assert!(read(&cap(cure, "M: {head: 55}", "multiple: 12")).is_ok(), "{cure}");
}

#[test]
fn every_language_tells_the_multiple_with_its_counts() {
    for (language, said) in [
        ("en", "a multiple of 4 stitches: it ends with 88 (96, 104)"),
        ("de", "durch 4 teilbar ist: Er endet mit 88 (96, 104)"),
        ("fr", "un multiple de 4 mailles : elle se termine avec 88 (96, 104)"),
        ("es", "un múltiplo de 4 puntos: termina con 88 (96, 104)"),
        ("nl", "deelbaar is door 4: het eindigt met 88 (96, 104)"),
    ] {
        let pattern = read(&cap(&format!("language: {language}"), SIZES, "multiple: 4")).unwrap();
        let telling = Options::new(Paper::a4()).telling();
        let story = Story::new(&pattern.plan, &pattern.shapes, telling, Illustrations::default());
        let told = text::write(&story, &Pictures::default()).replace('\n', " ");
        let told: String = told.split(' ').filter(|word| !word.is_empty()).collect::<Vec<_>>().join(" ");
        assert!(told.contains(said), "{language}: {told}");
    }
}
