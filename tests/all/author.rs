//! What an author wrote is what is printed: words, grouping, order, remarks and counts.

use proptest::prelude::*;
use roundelay::craft::{Below, Counted, Foundation, Round, Spot, Stitch, Terms};
use roundelay::design::Work;
use roundelay::notation::write::Writer;
use roundelay::notation::{Instruction, Source, plain, read};
use roundelay::page::{Options, Paper};
use roundelay::pattern::{Beside, Pattern};
use roundelay::plan::recount::{Rules, rounds};
use roundelay::publish::{LISTINGS, PRODUCTS, Row, list, publish};
use roundelay::report::Report;
use roundelay::words::{Language, Words};

const SWATCH: &str = include_str!("../../examples/swatches/cove-cotton.yaml");

/// Written rounds with a swatch beside them, to be printed in a language.
fn pattern_in(rounds: &str, language: &str) -> Pattern {
    let swatch = format!("language: {language}\n{SWATCH}");
    let beside = Some(Beside { name: "swatch.yaml", bytes: swatch.as_bytes() });
    Pattern::read_rounds(rounds.as_bytes(), beside).unwrap_or_else(|report| panic!("{report:#?}"))
}

fn pattern(rounds: &str) -> Pattern {
    pattern_in(rounds, "en")
}

fn listing(pattern: &Pattern, name: &str) -> String {
    let listing = LISTINGS.iter().find(|listing| listing.name() == name);
    let text = listing.map(|listing| list(pattern, listing, None));
    text.and_then(Result::ok).unwrap_or_else(|| panic!("no listing {name}"))
}

/// The lines of the rounds in the listing as text.
fn lines(pattern: &Pattern) -> Vec<String> {
    let text = listing(pattern, "text");
    text.lines().skip(2).filter(|line| !line.is_empty()).skip(1).map(str::to_owned).collect()
}

/// A published file as text.
fn product(pattern: &Pattern, name: &str) -> String {
    let products = PRODUCTS.iter().filter(|product| product.name() == name);
    let options = Options { plain_words: true, ..Options::new(Paper::a4()) };
    let made = publish(pattern, "sample", products, &options, &mut Report::new()).unwrap_or_default();
    made.into_iter().map(|output| String::from_utf8_lossy(&output.bytes).into_owned()).collect()
}

/// On one line, as words stand wherever lines are broken.
fn flowing(text: &str) -> String {
    text.replace('\u{a0}', " ").split_whitespace().collect::<Vec<_>>().join(" ")
}

const BALL: &str = "Buoy\nBall\n\
    Rnd 1: With tide, 6 sc in a magic ring (6)\n\
    Rnd 2 (RS): inc x 6 (12)\n\
    Rnd 3: *sc in next st,   inc;\n  rep from * around. = 18 sc # eighteen\n\
    Rnds 4-5: sc around, place a marker (18)\n\
    Rnd 6: sc in each st around (18). Stuff the ball firmly.\n\
    Rnd 7: sc in each st around (18)\n\
    Rnd 8: [sc in next st, dec, move the marker] 6 times (12)\n\
    Rnd 9: Repeat Rnd 6. (12)\n\
    Fasten off, leaving a 30 cm tail. Weave in.\n";

#[test]
fn an_author_is_printed_in_the_author_s_own_words() {
    let printed = lines(&pattern(BALL));
    let expected = [
        "Rnd 1: With tide, 6 sc in a magic ring (6)",
        "Rnd 2: (RS) inc x 6 (12)",
        "Rnd 3: *sc in next st, inc; rep from * around (18 sc)",
        "Rnds 4–5: sc around, place a marker (18)",
        "Rnd 6: sc in each st around (18). Stuff the ball firmly",
        "Rnd 7: sc in each st around (18)",
        "Rnd 8: [sc in next st, dec, move the marker] 6 times (12)",
        "Rnd 9: Repeat Rnd 6 (12). Fasten off, leaving a 30 cm tail. Weave in",
    ];
    assert_eq!(printed, expected);
    // Printed once more, it stays as it is.
    let again = format!("Buoy\nBall\n{}\n", printed.join("\n"));
    assert_eq!(lines(&pattern(&again)), expected);
}

#[test]
fn told_anew_it_is_our_shortest_form_and_no_remark_is_lost() {
    let anew = pattern(BALL).told_anew();
    assert_eq!(
        lines(&anew),
        [
            "Rnd 1: with tide, make an adjustable ring, 6 sc in ring (6)",
            "Rnd 2: 2 sc in each st around (12). (RS)",
            "Rnd 3: [sc in next st, 2 sc in next st] 6 times (18)",
            "Rnds 4–5: sc in each st around (18). Place a marker",
            "Rnd 6: sc in each st around (18). Stuff the ball firmly",
            "Rnd 7: sc in each st around (18)",
            "Rnd 8: [sc in next st, sc2tog] 6 times (12). Move the marker",
            "Rnd 9: sc in each st around (12). Fasten off, leaving a 30 cm tail. Weave in",
        ]
    );
    let ops =
        |pattern: &Pattern| pattern.plan.sizes[0].rounds.iter().map(|round| round.ops.clone()).collect::<Vec<_>>();
    let back = pattern(&format!("Buoy\nBall\n{}\n", lines(&anew).join("\n")));
    assert_eq!(ops(&back), ops(&anew));
}

#[test]
fn every_product_has_the_author_s_words_and_remarks() {
    let pattern = pattern(BALL);
    let words = ["*sc in next st, inc; rep from * around", "[sc in next st, dec, move the marker] 6 times"];
    let remarks = ["Stuff the ball firmly", "Fasten off, leaving a 30 cm tail"];
    for name in ["text", "web", "csv", "pictures"] {
        let text = flowing(&product(&pattern, name));
        for part in words.iter().chain(&remarks) {
            // A text has columns whose lines are broken on their own.
            assert!(name == "text" || text.contains(part), "{name} lacks {part}");
        }
        assert!(text.contains("tuff the ball"), "{name}");
    }
    for name in ["table", "json"] {
        let text = listing(&pattern, name);
        assert!(words.iter().chain(&remarks).all(|part| text.contains(part)), "{text}");
    }
    // Plain words are our own, and keep what stands beside the work.
    assert!(flowing(&product(&pattern, "web")).contains("Note: Stuff the ball firmly."));
}

#[test]
fn words_that_an_author_shortens_are_among_the_abbreviations() {
    let text = product(&pattern(BALL), "text");
    for row in ["inc        ", "dec        ", "rep from *  "] {
        assert!(text.contains(row), "{row}: {text}");
    }
    let anew = product(&pattern(BALL).told_anew(), "text");
    assert!(!anew.contains("rep from *") && !anew.contains("\ninc  "), "{anew}");
}

#[test]
fn another_language_keeps_grouping_order_ranges_and_remarks() {
    let german = lines(&pattern_in(BALL, "de"));
    let expected = [
        "Rd 1: mit tide, Fadenring, 6 fM in den Ring (6)",
        "Rd 2: 2 fM in jede M der Vorrunde (12). „(RS)“",
        "Rd 3: [1 fM in die nächste M, 2 fM in die nächste M] 6-mal (18 fM)",
        "Rd 4–5: 1 fM in jede M der Vorrunde (18). „Place a marker“",
        "Rd 6: 1 fM in jede M der Vorrunde (18). „Stuff the ball firmly“",
        "Rd 7: 1 fM in jede M der Vorrunde (18)",
        "Rd 8: [1 fM in die nächste M, 2 fM zus abm] 6-mal (12). „Move the marker“",
        "Rd 9: 1 fM in jede M der Vorrunde (12). „Fasten off, leaving a 30 cm tail. Weave in“",
    ];
    assert_eq!(german, expected);
    // What a shorter form would turn about or take together stays as it was written.
    let shifted = "Rnd 1: 6 sc in ring\nRnd 2: 2 sc in each st around\n\
                   Rnd 3: sc in next st, inc, *sc in next st, inc; rep from * 4 more times\n";
    let told =
        "1 fM in die nächste M, 2 fM in die nächste M, [1 fM in die nächste M, 2 fM in die nächste M] 5-mal (18)";
    let german = pattern_in(shifted, "de");
    assert!(lines(&german).iter().any(|line| line.ends_with(told)), "{:?}", lines(&german));
    assert!(lines(&german.told_anew()).iter().all(|line| !line.ends_with(told)));
}

#[test]
fn spaces_are_counted_apart_in_every_language() {
    let mesh = "Rnd 1: 12 dc in ring (12)\nRnd 2: *dc in next st, ch 2; rep from * around (36)\n\
                Rnd 3: *sc in next dc, 3 dc in next ch-2 sp; rep from * around (48)\n";
    for (language, count, said) in [
        ("en", "(12 dc, 12 ch-2 sps)", "You have twelve double crochets and twelve spaces of two chains."),
        ("de", "(12 Stb, 12 2-Lm-Bögen)", "Du hast zwölf Stäbchen und zwölf Bögen, die je zwei Luftmaschen lang sind."),
        ("fr", "(12 B, 12 arceaux de 2 ml)", "Vous avez douze brides et douze arceaux à deux mailles en l’air."),
        ("es", "(12 pa, 12 arcos de 2 cad)", "Tienes doce puntos altos y doce arcos de dos cadenetas."),
        ("nl", "(12 stk, 12 bogen van 2 l)", "Je hebt twaalf stokjes en twaalf bogen van twee lossen."),
    ] {
        let pattern = pattern_in(mesh, language);
        let told = lines(&pattern);
        assert!(told[0].ends_with("(12)") && told[1].ends_with(count) && told[2].ends_with("(48)"), "{told:?}");
        let words = Words::of(Language::by_tag(language).unwrap_or(Language::EN));
        let size = &pattern.plan.sizes[0];
        let steps = plain::steps(&size.rounds[1], size.below(&size.rounds[1]), &words, Terms::Us);
        assert_eq!(steps.last().map(String::as_str), Some(said));
        let bracketed = count.trim_matches(['(', ')']);
        for name in ["web", "csv", "pictures"] {
            assert!(flowing(&product(&pattern, name)).contains(bracketed), "{language} {name}");
        }
    }
}

#[test]
fn a_breakdown_stays_as_it_was_written_where_it_is_true() {
    let mesh = |count: &str| {
        let text = format!("Rnd 1: 12 dc in ring (12)\nRnd 2: *dc in next st, ch 2; rep from * around {count}\n");
        lines(&pattern(&text))[1].clone()
    };
    for kept in
        ["(12 dc, 12 ch-2 sps)", "(12 ch-2 sps and 12 dc)", "(12 sts, 12 ch-2 sps)", "(12 dc, 24 ch)", "(12 dc)"]
    {
        assert!(mesh(kept).ends_with(kept), "{kept}: {}", mesh(kept));
    }
    // A bare number counts chains as stitches, or leaves out what the next round needs to know.
    for bare in ["(36)", "(12)", ""] {
        assert!(mesh(bare).ends_with("around (12 dc, 12 ch-2 sps)"), "{}", mesh(bare));
    }
}

#[test]
fn numbers_that_name_other_rounds_are_not_told_where_rounds_are_numbered_otherwise() {
    let text = "Base\nRnd 1: 6 sc in ring (6)\nRnd 2: inc around (12)\n\
                Rim\nRnd 1: sc around (12)\nRnd 2: repeat Rnd 1 (12)\n";
    assert_eq!(lines(&pattern(text)).last().map(String::as_str), Some("Rnd 4: sc around (12)"));
}

/// Steps in makers' words, with the stitches each uses up.
const STEPS: [(&str, u32); 16] = [
    ("sc in next 3 sts", 3),
    ("inc", 1),
    ("2 hdc in next st", 1),
    ("dc in next st, dc in same st", 1),
    ("dc in next st, ch 1, dc in same st", 1),
    ("ch 2, sk next 2 sts", 2),
    ("(2 dc, ch 1, dc) in next st", 1),
    ("sc2tog", 2),
    ("dec", 2),
    ("5-dc shell in next st", 1),
    ("hdc FLO in next 2 sts", 2),
    ("sk next st", 1),
    ("3-dc cl in next st", 1),
    ("sc in next st and in next st", 2),
    ("place a marker", 0),
    ("[sc in next st, inc] twice", 4),
];

/// Steps, a bracket or an asterisk over them, and the stitches they use up.
fn clause() -> impl Strategy<Value = (String, u32)> {
    let steps = prop::collection::vec(prop::sample::select(STEPS.to_vec()), 1..4);
    (steps, 1..5_u32, 0..3_u8).prop_map(|(steps, times, form)| {
        let words = steps.iter().map(|(words, _)| *words).collect::<Vec<_>>().join(", ");
        let used: u32 = steps.iter().map(|(_, used)| used).sum();
        match (form, used) {
            (1, 1..) => (format!("[{words}] {times} times"), used * times),
            (2, 1..) => (format!("*{words}; rep from * {times} more times"), used * (times + 1)),
            _ => (words, used),
        }
    })
}

fn counted(text: &str, terms: Terms, before: u32) -> Result<Round, String> {
    let mut report = Report::new();
    let rules = Rules { work: Work::Spiral, main: Stitch::SC, terms, height: None };
    let written = read(&[Source { text, place: None }], terms, Stitch::SC, 7, &mut report);
    let counted = rounds(&written, (before, 7), &rules, &mut report);
    let round = counted.and_then(|counted| counted.rounds.into_iter().next());
    round.ok_or_else(|| format!("{text}\n{:#?}", report.diagnostics))
}

fn told(round: &Round, terms: Terms) -> String {
    let writer = Writer { words: &Words::of(Language::EN), terms };
    let told = writer.counted(&Instruction::of(round, Below::Foundation(Foundation::Ring)));
    format!("Rnd 7: {told}")
}

/// Skips that follow one another are one skip however they were written.
fn one_skip(round: &Round) -> Vec<roundelay::craft::Op> {
    let mut joined: Vec<roundelay::craft::Op> = Vec::new();
    for op in &round.ops {
        match joined.last_mut() {
            Some(last) if last.into == Spot::Skip && op.into == Spot::Skip => last.consumed += op.consumed,
            _ => joined.push(op.clone()),
        }
    }
    joined
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::with_cases(300) })]

    /// As it was written, told anew, and told in the other terms: the same operations every time.
    #[test]
    fn what_an_author_wrote_reads_back_however_it_is_told(
        clauses in prop::collection::vec(clause(), 1..4), remark in any::<bool>()
    ) {
        let words: Vec<&str> = clauses.iter().map(|(words, _)| words.as_str()).collect();
        let words = format!("sc in next st, {}", words.join(", "));
        let before = 1 + clauses.iter().map(|(_, used)| used).sum::<u32>();
        let text = format!("Rnd 7: {words}{}", if remark { ". Stuff firmly." } else { "" });
        let round = counted(&text, Terms::Us, before).unwrap_or_else(|complaint| panic!("{complaint}"));
        let printed = told(&round, Terms::Us);
        // A remark at the end, before any count, stands behind the count.
        let work = words.trim_end_matches(", place a marker");
        prop_assert!(printed.starts_with(&format!("Rnd 7: {work} (")), "{printed} of {text}");
        prop_assert_eq!(printed.contains("Stuff firmly"), remark);
        let own = counted(&printed, Terms::Us, before).unwrap_or_else(|complaint| panic!("{complaint}"));
        prop_assert_eq!(&own.ops, &round.ops, "{}", printed);
        prop_assert_eq!(told(&own, Terms::Us), printed);
        let marked = words.contains("marker");
        let anew = Round { said: round.said.clone().and_then(|said| said.told_anew()), ..round.clone() };
        for (round, terms) in [(&anew, Terms::Us), (&round, Terms::Uk)] {
            let text = told(round, terms);
            let back = counted(&text, terms, before).unwrap_or_else(|complaint| panic!("{complaint}"));
            prop_assert_eq!(one_skip(&back), one_skip(round), "{}", text);
            prop_assert!(text.contains("lace a marker") || !marked, "{}", text);
        }
        let sums = round.tallied().into_iter().map(|(what, count)| match what {
            Counted::Spaces(chains) => count * chains,
            Counted::Stitches | Counted::Of(_) => count,
        });
        prop_assert_eq!(sums.sum::<u32>(), round.after);
    }
}
