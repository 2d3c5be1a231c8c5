//! What is printed in German, French, Spanish and Dutch reads back to the same stitches.

#![allow(clippy::unwrap_used)]

use roundelay::craft::{
    Begin, Below, Build, Close, Foundation, Loops, Made, Op, OwnStitch, Round, Spot, Stitch, Terms,
};
use roundelay::design::Work;
use roundelay::notation::write::Writer;
use roundelay::notation::{Instruction, Source, read};
use roundelay::pattern::Pattern;
use roundelay::plan::recount::{Rules, rounds};
use roundelay::report::Report;
use roundelay::words::{Language, Words};

/// Each language with the word that its rounds are numbered with.
const TONGUES: [(&str, &str); 4] = [("de", "Rd"), ("fr", "Tour"), ("es", "Vuelta"), ("nl", "Toer")];

/// Every round of every example, in every language.
#[test]
fn examples_read_back_in_every_language() {
    let folder = concat!(env!("CARGO_MANIFEST_DIR"), "/examples");
    let files = std::fs::read_dir(folder).unwrap().map(|entry| entry.unwrap().path());
    let designs: Vec<_> = files.filter(|path| path.extension().is_some_and(|ending| ending == "yaml")).collect();
    assert!(designs.len() >= 3);
    for path in designs {
        let plan = Pattern::read(&std::fs::read(&path).unwrap()).unwrap().plan;
        for (tag, word) in TONGUES {
            let language = Language::by_tag(tag).unwrap();
            let (words, terms) = (Words::of(language), Terms::Us);
            for size in &plan.sizes {
                let line = |round: &Round| {
                    let writer = Writer { words: &words, terms };
                    let said = writer.counted(&Instruction::of(round, size.below(round)));
                    format!("{word} {}: {said}\n", round.number)
                };
                let text: String = size.rounds.iter().map(line).collect();
                let mut report = Report::new();
                let rules = Rules { work: plan.design.work, main: Stitch::SC, terms, height: None };
                let written = read(&[Source { text: &text, place: None }], terms, Stitch::SC, 1, &mut report);
                let counted = rounds(&written, (0, 1), &rules, &mut report);
                let Some(counted) = counted else { panic!("{} in {word}: {report:#?}\n{text}", path.display()) };
                assert_eq!(counted.rounds.len(), size.rounds.len(), "{text}");
                for (read, round) in counted.rounds.iter().zip(&size.rounds) {
                    assert_eq!(read.ops, round.ops, "{} in {word}, round {}\n{text}", path.display(), round.number);
                }
                assert_eq!(counted.foundation, size.foundation);
            }
        }
    }
}

/// Every kind of operation with every plain stitch, in every language.
#[test]
fn every_operation_reads_back_in_every_language() {
    let plain = Stitch::all().filter(|stitch| stitch.makes_fabric() && stitch.is_plain_fabric());
    for stitch in plain {
        let (one, two, both) = (Op::plain(stitch), Op::increase(stitch, 2), Op::decrease(stitch, 2));
        let back = one.clone().under(Loops::Back);
        let mixed = Made::Mixed([(stitch, 1), (Stitch::CH, 1), (stitch, 1)].into());
        let mixed = Op { into: Spot::Stitch, consumed: 1, made: mixed, loops: Loops::Both };
        let cases = [
            vec![one.clone(); 6],
            vec![[vec![one.clone(); 2], vec![two.clone()]].concat(); 4].concat(),
            vec![[vec![one.clone(); 3], vec![both]].concat(); 4].concat(),
            vec![back; 6],
            vec![vec![Op::skip(1), two]; 5].concat(),
            vec![vec![one, Op::chains(2), Op::skip(2)]; 5].concat(),
            vec![mixed; 5],
        ];
        for ops in cases {
            assert_reads_back(stitch, &ops);
        }
    }
}

/// Every special stitch of the trade by its name, and pairs that cross.
#[test]
fn special_stitches_read_back_in_every_language() {
    let special = |build| {
        matches!(
            build,
            Build::Extended
                | Build::Long
                | Build::Spike
                | Build::Loop
                | Build::Reverse
                | Build::Linked
                | Build::Post(_)
        )
    };
    let stitches: Vec<Stitch> = Stitch::all().filter(|stitch| special(stitch.row().build)).collect();
    assert!(stitches.len() > 12);
    for stitch in stitches {
        let (one, two) = (Op::plain(stitch), Op::increase(stitch, 2));
        assert_reads_back(stitch, &vec![one.clone(); 6]);
        assert_reads_back(stitch, &vec![[vec![one.clone(); 2], vec![two]].concat(); 4].concat());
        assert_reads_back(stitch, &vec![vec![one, Op::plain(Stitch::SC)]; 5].concat());
    }
    for stitch in [Stitch::SC, Stitch::HDC, Stitch::DC, Stitch::TR] {
        let pair = Op::crossed(stitch);
        assert_reads_back(stitch, &vec![pair.clone(); 6]);
        assert_reads_back(stitch, &vec![vec![Op::plain(Stitch::SC), pair.clone()]; 5].concat());
        assert_reads_back(stitch, &[vec![Op::plain(Stitch::SC); 2], vec![pair; 3]].concat());
    }
    let v = Op { into: Spot::Stitch, consumed: 1, made: OwnStitch::v_stitch().made, loops: Loops::Both };
    assert_reads_back(Stitch::DC, &vec![v.clone(); 6]);
    assert_reads_back(Stitch::DC, &vec![vec![v.clone(), Op::skip(1)]; 6].concat());
    assert_reads_back(Stitch::DC, &vec![vec![Op::plain(Stitch::SC), v.clone(), v]; 6].concat());
}

/// Writes a round of these operations in every language and reads it back.
fn assert_reads_back(stitch: Stitch, ops: &[Op]) {
    let before = ops.iter().map(|op| op.consumed).sum();
    let after = ops.iter().map(Op::count).sum();
    let (begin, close) = (Begin::Spiral, Close::Spiral);
    let round = Round {
        number: 7,
        part: 0,
        stitch,
        before,
        after,
        slipped: 0,
        ops: ops.to_vec(),
        colour: None,
        begin,
        close,
        target: None,
        place: None,
        said: None,
    };
    for (tag, word) in TONGUES {
        let language = Language::by_tag(tag).unwrap();
        let (words, terms) = (Words::of(language).naming(&[OwnStitch::v_stitch()]), Terms::Us);
        let writer = Writer { words: &words, terms };
        let said = writer.counted(&Instruction::of(&round, Below::Foundation(Foundation::Ring)));
        let text = format!("{word} 7: {said}");
        let mut report = Report::new();
        let rules = Rules { work: Work::Spiral, main: Stitch::SC, terms, height: None };
        let written = read(&[Source { text: &text, place: None }], terms, Stitch::SC, 7, &mut report);
        let counted = rounds(&written, (before, 7), &rules, &mut report);
        let Some(counted) = counted else { panic!("{text}: {report:#?}") };
        assert_eq!(counted.rounds[0].ops, round.ops, "{text}");
    }
}
