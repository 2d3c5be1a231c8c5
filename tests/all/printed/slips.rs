//! The reader is read itself: whatever is changed in a sound pattern is found out.

use roundelay::file::{html, text as written};
use roundelay::page::Pictures;
use roundelay::pattern::Pattern;
use roundelay::publish::pictures;
use roundelay::units::Units;

use super::tongue::Tongue;
use super::{anew, example, hold, options, story, text, web};

/// One digit in so many is changed, so that those of every kind are.
const EACH: usize = 7;

/// Sentences of figures that are no figures of the piece: how heads differ, where measures are from.
const GENERAL: [&str; 3] = ["differ by", "percentile", "UK 1990"];

fn finds(text: &str, tongue: &Tongue, pattern: &Pattern) -> bool {
    let read = || hold(&text::read(text, tongue), tongue, pattern);
    std::panic::catch_unwind(std::panic::AssertUnwindSafe(read)).is_err()
}

/// Where the digits stand that are told of the piece: the figures of yarn, swatch and sizes, the rounds in both forms.
fn digits(text: &str, tongue: &Tongue) -> Vec<usize> {
    let titles: Vec<(&str, String)> =
        tongue.under("section.").map(|(key, title)| (key, title.to_uppercase())).collect();
    let (mut at, mut section, mut figures) = (0, "", false);
    let mut found = Vec::new();
    for line in text.split_inclusive('\n') {
        if let Some((key, _)) = titles.iter().find(|(_, title)| title == line.trim_end()) {
            (section, figures) = (key, false);
        }
        figures |= line.starts_with("* ");
        let own = match section {
            "need" => figures && !line.contains('%'),
            "swatch" | "sizes" | "fit" | "measures" | "rounds" | "plain" => true,
            _ => false,
        };
        if own && !GENERAL.iter().any(|words| line.contains(words)) {
            found.extend(line.char_indices().filter(|(_, c)| c.is_ascii_digit()).map(|(offset, _)| at + offset));
        }
        at += line.len();
    }
    found
}

#[test]
fn a_digit_changed_anywhere_is_found_out() {
    let mut tried = 0;
    for (name, units) in [("ember-beanie.yaml", Units::Inches), ("harbour-light-coaster.txt", Units::Cm)] {
        let (tongue, pattern) = (Tongue::of("en"), anew(example(name, "en", units)));
        let drawn = pictures::draw(&pattern.plan, &pattern.shapes, &options());
        let sound = written::write(&story(&pattern, &drawn), &drawn);
        assert!(!finds(&sound, &tongue, &pattern));
        for at in digits(&sound, &tongue).into_iter().step_by(EACH) {
            // Far enough that no rounding hides it.
            let digit = (sound.as_bytes()[at] - b'0' + 5) % 10;
            let changed = format!("{}{digit}{}", &sound[..at], &sound[at + 1..]);
            let around: String = sound.chars().skip(sound[..at].chars().count().saturating_sub(40)).take(60).collect();
            assert!(finds(&changed, &tongue, &pattern), "{name}: {digit} goes unseen in “…{around}…”");
            tried += 1;
        }
    }
    assert!(tried > 120, "{tried} changes");
}

#[test]
fn words_changed_or_left_out_are_found_out() {
    let changes: [(&str, &[(&str, &str)]); 3] = [
        (
            "ember-beanie.yaml",
            &[
                ("Colour ash", "Colour ember"),
                ("Change to ash", "Change to ember"),
                ("Begin with ember. ", ""),
                ("hdc         half double crochet\n", ""),
                ("Rnd, Rnds   round, rounds", "Rnd, Rnds   round, rounds\nsk          skip"),
                ("2 dc in each st around", "2 sc in each st around"),
                ("[dc in next st, 2 dc in next st]", "[dc in next st, dc in next st]"),
                ("Work two double crochets", "Work two single crochets"),
                ("65 in the last", "66 in the last"),
                ("−6 %", "+6 %"),
                ("over 10 cm; ", "over 11 cm; "),
            ],
        ),
        (
            "lanternlight-mandala.yaml",
            &[
                ("sp, sps", "spc"),
                ("- ch-3 picot (", "- ch-4 picot ("),
                ("(ch 2, dc) in same st", "(ch 3, dc) in same st"),
                ("sk next ch]", "sk next 2 ch]"),
                ("sl st to first hdc", "sl st to first sc"),
                ("ch-3 picot, hdc) in", "ch-3 picot, 2 hdc) in"),
                ("Sequence A is", "Sequence B is"),
                ("Pass over the next\n", "Pass over the next two\n"),
            ],
        ),
        (
            "millrace-basket.yaml",
            &[("working in BLO, ", ""), ("working in FLO", "working in BLO"), ("- FLO: ", "- FL: ")],
        ),
    ];
    for (name, changes) in changes {
        let (tongue, pattern) = (Tongue::of("en"), anew(example(name, "en", Units::Cm)));
        let drawn = pictures::draw(&pattern.plan, &pattern.shapes, &options());
        let sound = written::write(&story(&pattern, &drawn), &drawn);
        assert!(!finds(&sound, &tongue, &pattern));
        for (from, to) in changes {
            assert!(sound.contains(from), "{name} no longer says “{from}”");
            assert!(finds(&sound.replacen(from, to, 1), &tongue, &pattern), "{name}: “{to}” goes unseen for “{from}”");
        }
    }
}

#[test]
fn a_sentence_that_one_form_lacks_is_found_out() {
    let (tongue, pattern) = (Tongue::of("en"), example("cove-bowl.txt", "en", Units::Cm));
    let pictures = Pictures::default();
    let story = story(&pattern, &pictures);
    let narrow = pictures::narrow_key(&pattern.plan, &options());
    let (text, page) = (written::write(&story, &pictures), html::write(&story, &pictures, &narrow));
    let same = |page: &str| {
        let (text, page) = (text::read(&text, &tongue), web::read(page));
        let held = || super::same(&text, &page, &tongue);
        std::panic::catch_unwind(std::panic::AssertUnwindSafe(held)).is_ok()
    };
    assert!(same(&page));
    for (from, to) in
        [("Weave the tails in", "Weave tails in"), (">726<", ">727<"), ("<dd>16 sc and", "<dd>16 sc  &amp;")]
    {
        assert!(page.contains(from), "the page no longer says “{from}”");
        assert!(!same(&page.replacen(from, to, 1)), "“{to}” goes unseen");
    }
}
