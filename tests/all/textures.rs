//! Stitch patterns in a part: the multiple that follows from their words, rounds that close in every size, and what a
//! swatch of the part's own changes. Multiples are counted by hand.

#![allow(clippy::unwrap_used, reason = "a test fails where it panics")]

use roundelay::craft::{Op, Stitch};
use roundelay::pattern::Pattern;
use roundelay::plan::audit;
use roundelay::report::Report;
use roundelay::units::Mm;

fn basket(rest: &str, lines: &[&str]) -> String {
    let lines: Vec<String> = lines.iter().map(|line| format!("        {line}\n")).collect();
    format!(
        "title: Basket\nkind: basket\nswatch: {{stitch: sc, stitches: 18, rounds: 19, width: 10, height: 10}}\n\
         sizes: {{S: {{across: 14}}, M: {{across: 17.5}}, L: {{across: 22}}}}\ntolerance: 8 %\n{rest}\nparts:\n  \
         - base: {{start: ring, shape: flat}}\n  - side:\n      shape: straight\n      depth: 8\n      pattern: |\n{}",
        lines.concat()
    )
}

fn read(text: &str) -> Result<Pattern, Report> {
    Pattern::read(text.as_bytes())
}

const PATTERNS: [(&[&str], &str); 12] = [
    (&["FPdc in next, BPdc in next"], "2"),
    (&["FPdc around next 2 sts, BPdc around next 2 sts"], "4"),
    (&["BLO sc in each st around"], ""),
    (&["sc in each st around", "BLO hdc in each st around"], ""),
    (&["5 dc in next st, sk 2 sts, sc in next st, sk 2 sts"], "6"),
    (&["(2 dc, ch 1, 2 dc) in next st, sk 4 sts"], "5"),
    (&["(dc, ch 1, dc) in next st, sk 2 sts", "sc in each st around"], "3"),
    (&["dc in next st, ch 1, sk next st"], "2"),
    (&["dc in next st, ch 1, sk next st", "sc in each st around"], "2"),
    (&["sc in next 2 sts, *dc in next 3 sts, sc in next 2 sts; rep from * around"], "5 + 2"),
    (&["[sc, dc] around", "[dc, sc] around", "sc in next 3 sts, dc in next st"], "4"),
    (&["sk next st, dc in next st, dc in same st"], "2"),
];

#[test]
fn the_multiple_follows_from_the_pattern() {
    for (lines, multiple) in PATTERNS {
        for work in ["work: joined", "work: spiral"] {
            let pattern = read(&basket(work, lines)).unwrap_or_else(|report| panic!("{lines:?} {report:#?}"));
            for size in &pattern.plan.sizes {
                assert_eq!(audit(size), Ok(()), "{lines:?}");
                let side = &size.parts[1];
                assert_eq!(side.multiple.map_or(String::new(), |multiple| multiple.to_string()), multiple, "{lines:?}");
                let own = size.rounds.iter().filter(|round| round.part == 1);
                let last = size.rounds[side.last as usize - 1].after;
                assert!(own.into_iter().all(|round| round.after == last), "{lines:?}");
            }
        }
    }
}

#[test]
fn the_rounds_of_a_pattern_come_in_turn() {
    let lines = ["5 dc in next st, sk 2 sts, sc in next st, sk 2 sts", "sc in each st around"];
    let pattern = read(&basket("work: spiral", &lines)).unwrap();
    let shells = |ops: &[Op]| ops.iter().any(|op| op.count() == 5);
    for size in &pattern.plan.sizes {
        // Rounds that change the count are plain, and the pattern begins after them.
        let own: Vec<_> =
            size.rounds.iter().filter(|round| round.part == 1).skip_while(|round| round.change() != 0).collect();
        assert!(own.len() > 5);
        for (index, round) in own.iter().enumerate() {
            assert_eq!(shells(&round.ops), index % 2 == 0, "{}", round.number);
        }
    }
}

#[test]
fn what_is_printed_reads_back_as_the_same_rounds() {
    use roundelay::notation::Instruction;
    use roundelay::notation::write::Writer;
    use roundelay::words::{Language, Words};
    let words = Words::of(Language::EN);
    for (lines, _) in PATTERNS {
        let pattern = read(&basket("work: joined", lines)).unwrap();
        let (design, size) = (&pattern.plan.design, &pattern.plan.sizes[0]);
        let writer = Writer { words: &words, terms: design.terms };
        let told = |round: &roundelay::craft::Round| {
            let instruction = Instruction::of(round, size.below(round));
            format!("        Rnd {}: {}\n", round.number, writer.counted(&instruction))
        };
        let rounds: String = size.rounds.iter().map(told).collect();
        let rounds =
            rounds.replacen("Rnd 1: ", "Rnd 1: make an adjustable ring, ", usize::from(!rounds.contains("adjustable")));
        let again = format!(
            "title: Again\nkind: basket\nswatch: {{stitch: sc, stitches: 18, rounds: 19, width: 10, height: 10}}\n\
             sizes: {{S: {{across: 14}}}}\nwork: joined\nparts:\n  - all:\n      written: |\n{rounds}"
        );
        let again = read(&again).unwrap_or_else(|report| panic!("{rounds}{report:#?}"));
        for (one, other) in size.rounds.iter().zip(&again.plan.sizes[0].rounds) {
            assert_eq!(one.ops, other.ops, "{lines:?} {}", told(one));
        }
    }
}

/// A swatch of its own is 20 stitches and 8 rounds in 10 cm: 5 mm wide and 12.5 mm high, whatever the stitches are made of.
#[test]
fn a_swatch_of_its_own_gives_width_and_height() {
    let lines = ["5 dc in next st, sk 2 sts, sc in next st, sk 2 sts"];
    let text = basket("work: joined", &lines).replace(
        "      depth: 8\n",
        "      depth: 10\n      swatch: {stitches: 20, rounds: 8, width: 10, height: 10}\n",
    );
    let pattern = read(&text).unwrap();
    let told = pattern.report.diagnostics.iter().any(|one| one.code == "gauge-assumed");
    assert!(!told, "{:?}", pattern.report);
    for size in &pattern.plan.sizes {
        let (base, side) = (&size.parts[0], &size.parts[1]);
        // A plain round that brings in the stitches is lower than those of the pattern.
        let own: Vec<_> = size.rounds.iter().filter(|round| round.part == 1).collect();
        let plain = own.iter().filter(|round| round.change() != 0).count();
        let left = side.length - Mm::new(12.5) * (own.len() - plain) as f64;
        assert_eq!((own.len(), plain), (8, 1));
        assert!(left > Mm::new(3.0) && left < Mm::new(12.5), "{left:?}");
        let last = &size.rounds[side.last as usize - 1];
        assert!((side.reached - Mm::new(5.0) * f64::from(last.after)).abs() < Mm::new(1e-6));
        // Narrower stitches than those of the base, and more of them on about the same circumference.
        assert!(last.after > size.rounds[base.last as usize - 1].after);
        assert!((side.reached / base.reached - 1.0).abs() < 0.05);
        let shape = &pattern.shapes[pattern.plan.sizes.iter().position(|other| other.name == size.name).unwrap()];
        let at = shape.rounds.last().unwrap().radius.mm() * core::f64::consts::TAU;
        assert!((at / side.reached.mm() - 1.0).abs() < 0.05, "{at} {:?}", side.reached);
    }
}

#[test]
fn a_chain_in_front_of_joined_rounds_takes_no_stitch() {
    let pattern = read(&basket("work: joined", &["FPdc in next, BPdc in next"])).unwrap();
    let last = pattern.plan.sizes[0].rounds.last().unwrap();
    let posts = last.ops.iter().flat_map(|op| op.made.runs()).map(|(_, count)| count).sum::<u32>();
    assert_eq!((posts, last.stitch), (last.after, Stitch::FPDC));
}
