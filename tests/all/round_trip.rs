//! What is written reads back as the same operations.

use proptest::prelude::*;
use roundelay::craft::{Begin, Below, Build, Close, Foundation, Loops, Made, Op, Round, Side, Spot, Stitch, Terms};
use roundelay::design::Work;
use roundelay::notation::write::Writer;
use roundelay::notation::{Instruction, Source, read};
use roundelay::pattern::Pattern;
use roundelay::plan::recount::{Rules, rounds};
use roundelay::report::Report;
use roundelay::words::{Language, Words};

fn basic() -> impl Strategy<Value = Stitch> {
    prop::sample::select(Stitch::all().filter(|stitch| stitch.is_plain_fabric()).collect::<Vec<_>>())
}

fn any_stitch() -> impl Strategy<Value = Stitch> {
    let whole = Stitch::all().filter(|stitch| !matches!(stitch.row().build, Build::Chain | Build::Picot));
    prop::sample::select(whole.collect::<Vec<_>>())
}

/// Post stitches, clusters and the like.
fn built() -> impl Strategy<Value = Stitch> {
    any_stitch().prop_filter("stitches built of others", |stitch| stitch.built_of().is_some())
}

fn picot() -> impl Strategy<Value = Stitch> {
    prop::sample::select(Stitch::all().filter(|stitch| stitch.row().build == Build::Picot).collect::<Vec<_>>())
}

fn group() -> impl Strategy<Value = Made> {
    (basic(), 1..4_u32, 1..4_u32, 1..3_u32).prop_map(|(stitch, before, chains, after)| {
        Made::Mixed(vec![(stitch, before), (Stitch::CH, chains), (stitch, after)].into())
    })
}

fn op() -> impl Strategy<Value = Op> {
    let loops = prop::sample::select(vec![Loops::Both, Loops::Both, Loops::Back, Loops::Front]);
    let made = prop_oneof![
        4 => any_stitch().prop_map(|stitch| Made::Same(stitch, 1)),
        2 => (basic(), 2..6_u32).prop_map(|(stitch, count)| Made::Same(stitch, count)),
        1 => (built(), 2..4_u32).prop_map(|(stitch, count)| Made::Same(stitch, count)),
        1 => group(),
    ];
    prop_oneof![
        6 => (made.clone(), loops.clone()).prop_map(|(made, loops)| Op { into: Spot::Stitch, consumed: 1, made, loops }),
        2 => (basic(), 2..4_u32, loops).prop_map(|(stitch, count, loops)| Op::decrease(stitch, count).under(loops)),
        1 => (1..4_u32).prop_map(Op::skip),
        1 => (1..5_u32).prop_map(Op::chains),
        1 => (1..4_u32, made).prop_map(|(chains, made)| {
            Op { into: Spot::Space, consumed: chains, made, loops: Loops::Both }
        }),
        1 => picot().prop_map(|picot| Op { made: Made::Same(picot, 1), ..Op::chains(1) }),
    ]
}

/// Runs and repeats, as solvers make them.
fn ops(op: impl Strategy<Value = Op>) -> impl Strategy<Value = Vec<Op>> {
    let run = (op, 1..6_usize).prop_map(|(op, times)| vec![op; times]);
    let unit = prop::collection::vec(run, 1..4).prop_map(|runs| runs.concat());
    let repeat = (unit, 1..5_usize).prop_map(|(unit, times)| vec![unit; times].concat());
    prop::collection::vec(repeat, 1..4).prop_map(|repeats| one_skip(repeats.concat()))
}

/// Skips that follow one another are one skip: that is how they are said.
fn one_skip(ops: Vec<Op>) -> Vec<Op> {
    let mut joined: Vec<Op> = Vec::new();
    for op in ops {
        match joined.last_mut() {
            Some(last) if last.into == Spot::Skip && op.into == Spot::Skip => last.consumed += op.consumed,
            _ => joined.push(op),
        }
    }
    joined
}

fn begin() -> impl Strategy<Value = (Begin, Close)> {
    prop_oneof![
        Just((Begin::Spiral, Close::Spiral)),
        (1..5_u8, any::<bool>()).prop_map(|(chains, counts)| (Begin::Chain { chains, counts }, Close::Join)),
    ]
}

fn round(number: u32, ops: Vec<Op>, (begin, close): (Begin, Close)) -> Round {
    let sums = ops.iter().fold((0, 0), |(used, made), op| (used + op.consumed, made + op.count()));
    let (part, stitch, colour, target, place, said) = (0, Stitch::SC, None, None, None, None);
    Round {
        number,
        part,
        stitch,
        before: sums.0,
        after: sums.1,
        slipped: 0,
        ops,
        colour,
        begin,
        close,
        target,
        place,
        said,
    }
}

/// The instruction of a round in English, with its count.
fn written(round: &Round, below: Below<'_>, terms: Terms) -> String {
    Writer { words: &Words::of(Language::EN), terms }.counted(&Instruction::of(round, below))
}

/// Reads the round from its own instruction.
fn back(round: &Round, foundation: Foundation, terms: Terms) -> Result<(Round, Foundation), String> {
    let text = written(round, Below::Foundation(foundation), terms);
    // A line of a chain alone is what comes before a round, unless it has a number.
    let chain = matches!(round.begin, Begin::Chain { counts: true, .. }) && round.ops.len() == 1;
    let text = if chain { format!("Rnd {}: {text}", round.number) } else { text };
    let mut report = Report::new();
    let work = match round.close {
        Close::Join => Work::Joined { chain_counts: false },
        Close::Spiral => Work::Spiral,
    };
    let rules = Rules { work, main: Stitch::SC, terms, height: None };
    let written = read(&[Source { text: &text, place: None }], terms, Stitch::SC, round.number, &mut report);
    let counted = rounds(&written, (round.before, round.number), &rules, &mut report);
    let one = counted.and_then(|counted| counted.rounds.into_iter().next().map(|round| (round, counted.foundation)));
    one.ok_or_else(|| format!("{text}\n{:#?}", report.diagnostics))
}

fn assert_same(round: &Round, foundation: Foundation) {
    for terms in [Terms::Us, Terms::Uk] {
        let text = written(round, Below::Foundation(foundation), terms);
        match back(round, foundation, terms) {
            Err(complaint) => panic!("{complaint}"),
            Ok((read, from)) => {
                assert_eq!(read.ops, round.ops, "{text}");
                assert_eq!((read.before, read.after), (round.before, round.after), "{text}");
                assert_eq!((read.begin, read.close), (round.begin, round.close), "{text}");
                assert_eq!(read.slipped, round.slipped, "{text}");
                assert!(round.before > 0 || from == foundation, "{text}");
            }
        }
    }
}

/// True where something is used up and something but chains is made.
fn is_a_round(ops: &[Op]) -> bool {
    let used: u32 = ops.iter().map(|op| op.consumed).sum();
    let counts = |(stitch, _): (Stitch, u32)| stitch != Stitch::CH && stitch.row().counts > 0;
    used > 0 && ops.iter().flat_map(|op| op.made.runs()).any(counts)
}

/// True where a turning chain can stand for the first stitch.
fn can_begin(ops: &[Op]) -> bool {
    ops.first().is_some_and(|op| {
        let first = op.made.runs().next().is_some_and(|(stitch, _)| stitch.is_plain_fabric());
        first && matches!(op.into, Spot::Stitch | Spot::Together)
    })
}

fn can_begin_in_space(op: &Op) -> bool {
    can_begin(&[Op { into: Spot::Stitch, ..op.clone() }])
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::with_cases(400) })]

    #[test]
    fn random_rounds_read_back(ops in ops(op()), begin in begin()) {
        prop_assume!(is_a_round(&ops));
        prop_assume!(!matches!(begin.0, Begin::Chain { counts: true, .. }) || can_begin(&ops));
        assert_same(&round(7, ops, begin), Foundation::Ring);
    }

    /// Rounds that begin further on than the one below, in a stitch or in a space.
    #[test]
    fn random_rounds_after_slip_stitches_read_back(
        ops in ops(op()), chains in 1..5_u8, counts in any::<bool>(), slipped in 1..9_u32
    ) {
        prop_assume!(is_a_round(&ops));
        prop_assume!(!counts || can_begin(&ops) || ops[0].into == Spot::Space && can_begin_in_space(&ops[0]));
        let round = round(7, ops, (Begin::Chain { chains, counts }, Close::Join));
        prop_assume!(slipped < round.before);
        assert_same(&Round { slipped, ..round }, Foundation::Ring);
    }

    #[test]
    fn random_rounds_under_one_loop_read_back(ops in ops(op()), back in any::<bool>(), begin in begin()) {
        let loops = if back { Loops::Back } else { Loops::Front };
        let ops: Vec<Op> = ops.into_iter().map(|op| op.under(loops)).collect();
        prop_assume!(is_a_round(&ops));
        prop_assume!(!matches!(begin.0, Begin::Chain { counts: true, .. }) || can_begin(&ops));
        assert_same(&round(7, ops, begin), Foundation::Ring);
    }

    #[test]
    fn random_starts_read_back(stitch in basic(), count in 1..20_usize, chains in 2..8_u32, which in 0..3, begin in begin()) {
        let foundation = match which {
            0 => Foundation::Ring,
            1 => Foundation::ChainRing(chains),
            _ => Foundation::Chain(chains),
        };
        let begin = if begin.0 == Begin::Spiral { (Begin::Plain, begin.1) } else { begin };
        prop_assume!(which < 2 || begin.0 == Begin::Plain);
        assert_same(&round(1, vec![Op::into_ring(stitch); count], begin), foundation);
    }
}

/// Every row of the stitch table: plain, several in one stitch, together, and on top of a turning chain.
#[test]
fn every_stitch_is_written_and_read_back() {
    for stitch in Stitch::all().filter(|stitch| stitch.makes_fabric()) {
        let (one, two) = (Op::plain(stitch), Op::increase(stitch, 2));
        // Stitches that are closed together in themselves are not worked together with others.
        let alone = matches!(stitch.row().build, Build::Cluster | Build::Puff | Build::Bobble | Build::Popcorn);
        let together = if alone { Vec::new() } else { vec![Op::decrease(stitch, 2)] };
        let ops = [vec![one; 3], vec![two.clone()], together].concat();
        assert_same(&round(7, vec![ops; 4].concat(), (Begin::Spiral, Close::Spiral)), Foundation::Ring);
        assert_same(&round(7, vec![two.clone(); 6], (Begin::Spiral, Close::Spiral)), Foundation::Ring);
        if stitch.is_plain_fabric() {
            let begin = (Begin::Chain { chains: stitch.row().turning, counts: true }, Close::Join);
            assert_same(&round(7, vec![two; 6], begin), Foundation::Ring);
            assert_same(&round(1, vec![Op::into_ring(stitch); 9], (Begin::Plain, begin.1)), Foundation::Ring);
        }
    }
}

/// The same in the words of a maker, by the abbreviation and by the whole name of every row.
#[test]
fn every_stitch_is_read_as_makers_write_it() {
    for (stitch, terms) in Stitch::all().flat_map(|stitch| [(stitch, Terms::Us), (stitch, Terms::Uk)]) {
        if !stitch.makes_fabric() {
            continue;
        }
        let (names, chains) = (stitch.names(terms), stitch.row().turning);
        for name in std::iter::once(&names.short).chain(names.also) {
            let plain = format!("*{name} in next 3 sts, (2 {name}) in next st; rep from * around (20)");
            let again = format!("*{name} in next st, {name} in same st, {name} in next 2 sts; rep from * around (16)");
            let mut cases = vec![
                (plain, [vec![Op::plain(stitch); 3], vec![Op::increase(stitch, 2)]].concat(), 4),
                (again, [vec![Op::increase(stitch, 2)], vec![Op::plain(stitch); 2]].concat(), 4),
            ];
            if stitch.is_plain_fabric() {
                let counts =
                    format!("ch {chains} (counts as {name}), {name} in same st, 2 {name} in each st around, join");
                cases.push((counts, vec![Op::increase(stitch, 2)], 12));
                cases.push((format!("[{name} 2 tog] 6 times (6)"), vec![Op::decrease(stitch, 2)], 6));
            }
            if stitch.is_plain_fabric() && !name.contains(' ') {
                cases.push((format!("{name}2tog around (6)"), vec![Op::decrease(stitch, 2)], 6));
            }
            for (text, ops, times) in cases {
                let ops = vec![ops; times].concat();
                let before = ops.iter().map(|op| op.consumed).sum();
                let mut report = Report::new();
                let written = read(&[Source { text: &text, place: None }], terms, Stitch::SC, 2, &mut report);
                let rules = Rules { work: Work::Spiral, main: Stitch::SC, terms, height: None };
                let counted = rounds(&written, (before, 2), &rules, &mut report);
                let read: Vec<&[Op]> =
                    counted.iter().flat_map(|counted| &counted.rounds).map(|round| &*round.ops).collect();
                assert_eq!(read, [&*ops], "{text}: {:#?}", report.diagnostics);
            }
        }
    }
}

#[test]
fn rounds_made_by_hand_read_back() {
    let (dc, inc) = (Op::plain(Stitch::DC), Op::increase(Stitch::DC, 2));
    let counts = (Begin::Chain { chains: 3, counts: true }, Close::Join);
    let spread: Vec<Op> =
        [4, 5, 5, 4, 5].into_iter().flat_map(|gap| [vec![dc.clone(); gap], vec![inc.clone()]].concat()).collect();
    assert_same(&round(9, spread.clone(), counts), Foundation::Ring);
    assert_same(&round(9, spread, (Begin::Spiral, Close::Spiral)), Foundation::Ring);
    let narrowed = vec![Op::decrease(Stitch::DC, 2); 12];
    assert_same(&round(9, narrowed, counts), Foundation::Ring);
    let ribs: Vec<Op> = [Side::Front, Side::Back]
        .into_iter()
        .map(|side| Op::plain(if side == Side::Front { Stitch::FPDC } else { Stitch::BPDC }))
        .collect();
    assert_same(&round(9, vec![ribs; 20].concat(), (Begin::Spiral, Close::Spiral)), Foundation::Ring);
    // Slip stitches all round and a bridge after them lead nowhere: they are the round.
    let space = Op { into: Spot::Space, ..Op::plain(Stitch::SL_ST) };
    for (loops, slip) in [(Loops::Both, Op::plain(Stitch::SL_ST)), (Loops::Front, space)] {
        let ops = [vec![slip; 5], vec![Op::chains(2)]].concat();
        let ops: Vec<Op> = ops.into_iter().map(|op| op.under(loops)).collect();
        assert_same(&round(9, ops, (Begin::Spiral, Close::Spiral)), Foundation::Ring);
    }
    // One stitch, and the chain stands for it.
    for (stitch, chains) in [(Stitch::SC, 1), (Stitch::HDC, 2), (Stitch::DC, 3), (Stitch::TR, 4)] {
        let begin = (Begin::Chain { chains, counts: true }, Close::Join);
        assert_same(&round(7, vec![Op::plain(stitch)], begin), Foundation::Ring);
    }
    let edge = vec![Op::plain(Stitch::SL_ST); 80];
    assert_same(&round(9, edge, (Begin::Plain, Close::Join)), Foundation::Ring);
}

/// Where the chain counts, the words say what is left, and are read back as that.
#[test]
fn what_is_left_after_a_chain_that_counts_reads_back() {
    let space = Op { into: Spot::Space, consumed: 2, made: Made::Same(Stitch::DC, 3), loops: Loops::Both };
    let cases = [
        (Op::plain(Stitch::DC), "(counts as dc), dc in each remaining st, sl st"),
        (Op::increase(Stitch::DC, 2), "dc in same st, 2 dc in each remaining st, sl st"),
        (space, "2 dc in same sp, 3 dc in each remaining ch-2 sp, sl st"),
    ];
    for (op, words) in cases {
        let slipped = op.consumed - 1;
        let round = round(9, vec![op; 20], (Begin::Chain { chains: 3, counts: true }, Close::Join));
        // A slip stitch leads into the space.
        let round = Round { slipped, ..round };
        let text = written(&round, Below::Foundation(Foundation::Ring), Terms::Us);
        assert!(text.contains(words) && !text.contains("around"), "{text}");
        assert_same(&round, Foundation::Ring);
    }
}

/// Every example, solved, written and read again, has the same operations.
#[test]
fn examples_read_back() {
    let folder = concat!(env!("CARGO_MANIFEST_DIR"), "/examples");
    let files = std::fs::read_dir(folder).into_iter().flatten().flatten().map(|entry| entry.path());
    let designs: Vec<_> = files.filter(|path| path.extension().is_some_and(|ending| ending == "yaml")).collect();
    assert!(designs.len() >= 3);
    for path in designs {
        let pattern = Pattern::read(&std::fs::read(&path).unwrap_or_default());
        let plan = pattern.unwrap_or_else(|report| panic!("{} is not solved: {report:#?}", path.display())).plan;
        for (size, terms) in plan.sizes.iter().flat_map(|size| [(size, Terms::Us), (size, Terms::Uk)]) {
            let line = |round: &Round| format!("Rnd {}: {}\n", round.number, written(round, size.below(round), terms));
            let text: String = size.rounds.iter().map(line).collect();
            let mut report = Report::new();
            let rules = Rules { work: plan.design.work, main: Stitch::SC, terms, height: None };
            let written = read(&[Source { text: &text, place: None }], terms, Stitch::SC, 1, &mut report);
            let counted = rounds(&written, (0, 1), &rules, &mut report);
            let Some(counted) = counted else { panic!("{}: {report:#?}", path.display()) };
            assert_eq!(counted.foundation, size.foundation);
            for (read, round) in counted.rounds.iter().zip(&size.rounds) {
                assert_eq!(read.ops, round.ops, "{}, round {}", path.display(), round.number);
                assert_eq!((read.begin, read.close), (round.begin, round.close), "round {}", round.number);
            }
            assert_eq!(counted.rounds.len(), size.rounds.len());
        }
    }
}
