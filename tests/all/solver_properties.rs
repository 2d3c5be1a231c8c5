//! What holds for every design: over 10,000 random ones.

use proptest::prelude::*;
use proptest::test_runner::RngSeed;
use roundelay::craft::{Loops, Multiple, Op, Round, Spot, Stitch};
use roundelay::design::{
    Ball, Body, Colour, Design, Finish, Part, Preference, Shape, Shaping, Start, Stripe, Tolerance, Work,
};
use roundelay::plan::{Plan, SizePlan, audit, solve};
use roundelay::report::Report;
use roundelay::units::{Angle, Mm};

use crate::common::{Adjust, design, part, said, size, swatch};

/// Stitches with the usual number of rounds to a stitch's width, so that swatches are like real ones.
const STITCHES: [(Stitch, f64); 4] = [(Stitch::SC, 1.1), (Stitch::HDC, 0.7), (Stitch::DC, 0.55), (Stitch::TR, 0.36)];

fn pick<T: Clone + std::fmt::Debug + 'static>(of: &[T]) -> impl Strategy<Value = T> + use<T> {
    prop::sample::select(of.to_vec())
}

/// A first shape, by kind, circumference and share.
fn opening(kind: u8, around: f64, share: f64) -> Shape {
    let (around, mm) = (vec![Mm::new(around)], Mm::new(around / 4.0 * (0.3 + share)));
    match kind {
        0..=2 => Shape::flat(around),
        3 | 4 => Shape::dome(around, vec![mm]),
        5 => Shape::sphere(around),
        6 => Shape::taper(vec![mm], around),
        7 => Shape::flare(vec![mm], vec![Angle::from_degrees(170.0 * share)]),
        _ => Shape::straight(vec![mm]),
    }
}

/// A later shape.
fn going_on(kind: u8, around: f64, share: f64, length: f64) -> Shape {
    let length = vec![Mm::new(length)];
    match kind {
        0 | 1 => Shape::straight(length),
        2 | 3 => Shape::flare(length, vec![Angle::from_degrees(120.0 * share - 10.0)]),
        4 => Shape::taper(length, vec![Mm::new(around * (0.5 + share))]),
        5 => Shape::flat(vec![Mm::new(around * (0.6 + 0.8 * share))]),
        _ => Shape::close(),
    }
}

prop_compose! {
    fn designs()(
        (main, ratio) in pick(&STITCHES),
        across in 9.0..28.0_f64,
        hand in 0.85..1.15_f64,
        around in 40.0..420.0_f64,
        first in (0..10_u8, 0.0..1.0_f64, prop::option::weighted(0.2, 2..14_u32), prop::option::weighted(0.2, 3..30_u32)),
        later in prop::collection::vec((0..8_u8, 0.0..1.0_f64, 1.0..90.0_f64, pick(&STITCHES), prop::bool::weighted(0.2)), 0..3),
        settle in 0..3_u32,
        most in 2..4_u32,
        prefer in pick(&[Preference::Easy, Preference::Balanced, Preference::Close]),
        tolerance in prop_oneof![
            (0.002..0.08_f64).prop_map(Tolerance::Share),
            (0.5..20.0_f64).prop_map(|mm| Tolerance::Length(Mm::new(mm))),
        ],
        shaping in prop_oneof![4 => Just(Shaping::Scattered), 1 => (3..9_u32).prop_map(Shaping::Corners)],
        work in pick(&[Work::Spiral, Work::Joined { chain_counts: true }, Work::Joined { chain_counts: false }]),
        finish in pick(&[Finish::FastenOff, Finish::SlipStitchEdge, Finish::StepDown]),
        stripes in prop::collection::vec(prop::option::of(0..5_u32), 0..3),
        weighed in prop::option::of(0.01..0.2_f64),
        multiples in prop::collection::vec(prop::option::weighted(0.06, (2..9_u32, 0..3_u32)), 4),
    ) -> Design {
        let (kind, share, stitches, chains) = first;
        let start = match chains {
            Some(chains) => Start::ChainRing { chains, stitches },
            None => Start::Ring { stitches },
        };
        let mut parts = vec![part("first", main, opening(kind, around, share)).starting(start)];
        for (kind, share, length, (other, _), switches) in later {
            let stitch = if switches { other } else { main };
            let loops = if share < 0.2 { Loops::Back } else { Loops::Both };
            parts.push(part("later", stitch, going_on(kind, around, share, length)).settling(settle).folded(loops));
        }
        for (part, multiple) in parts.iter_mut().zip(multiples) {
            part.stripes = stripes.iter().map(|rounds| Stripe { colour: 1, rounds: *rounds }).collect();
            if let Body::Profile(profile) = &mut part.body {
                profile.most = most;
                let multiple = multiple.filter(|_| !profile.shape.form().closes);
                profile.multiple = multiple.map(|(of, plus)| said(Multiple::new(of, plus)));
            }
        }
        let mut swatch = swatch(main, across, across * ratio * hand);
        swatch.gauge.grams = weighed;
        let mut design = design(swatch, vec![size("one", around)], parts);
        let colour = |name: &str| Colour { name: name.to_owned(), rgb: [0; 3], place: None };
        design.yarn.colours = vec![colour("sand"), colour("tide")];
        design.yarn.ball = Some(Ball { grams: 50.0, metres: 100.0 });
        (design.prefer, design.tolerance, design.shaping, design.work) = (prefer, tolerance, shaping, work);
        design.finish = said(finish);
        design
    }
}

/// Lengths of the runs of plain operations between shaping ones, cyclically.
fn gaps(ops: &[Op]) -> Vec<usize> {
    let places: Vec<usize> = (0..ops.len()).filter(|at| ops[*at].shapes()).collect();
    let next = places.iter().cycle().skip(1);
    places.iter().zip(next).map(|(here, there)| (there + ops.len() - here - 1) % ops.len()).collect()
}

fn spread_evenly(round: &Round) -> bool {
    let gaps = gaps(&round.ops);
    gaps.iter().max().zip(gaps.iter().min()).is_none_or(|(most, least)| most - least <= 1)
}

/// Stitches by which the last shaped round up to this one changed; a first round counts as shaped.
fn repeat(size: &SizePlan, last: u32) -> f64 {
    let shaped = size.rounds[..last as usize].iter().rev().map(Round::change).find(|change| *change != 0);
    shaped.unwrap_or(0).unsigned_abs() as f64
}

/// Stitches from one count that fits all multiples and corners of a design to the next; 1 where none are asked for.
fn step(design: &Design) -> u32 {
    let multiple = |part: &Part| match &part.body {
        Body::Profile(profile) => profile.multiple.as_ref().map(|multiple| multiple.value.of()),
        Body::Written(_) => None,
    };
    let multiples: Vec<u32> = design.parts.iter().filter_map(multiple).collect();
    let corners = match design.shaping {
        Shaping::Corners(corners) if !multiples.is_empty() => corners,
        Shaping::Corners(_) | Shaping::Scattered => 1,
    };
    let fits = |step: &u32| multiples.iter().chain([&corners]).all(|of| step.is_multiple_of(*of));
    (1..).find(fits).unwrap_or(1)
}

fn check(design: &Design, plan: &Plan) -> Result<(), TestCaseError> {
    for size in &plan.sizes {
        prop_assert_eq!(audit(size), Ok(()));
        for round in &size.rounds {
            prop_assert_eq!(round.sums(), (round.before, round.after));
            let Body::Profile(profile) = &design.parts[round.part].body else { continue };
            if round.number > 1 {
                prop_assert!(round.after <= round.before * profile.most && round.after * 2 >= round.before);
            }
            if design.shaping == Shaping::Scattered {
                prop_assert!(spread_evenly(round), "round {} {:?}", round.number, gaps(&round.ops));
            }
            prop_assert!(round.ops.iter().all(|op| op.into != Spot::Skip && op.count() <= 12));
            prop_assert!(round.colour.is_none_or(|colour| colour < 2));
        }
        for (part, asked) in size.parts.iter().zip(&design.parts) {
            let width = plan.gauge(asked.stitch).width;
            let edge = if Some(part) == size.parts.last() && design.finish.value == Finish::SlipStitchEdge {
                part.last - 1
            } else {
                part.last
            };
            let half = (repeat(size, edge).max(f64::from(step(design))) / 2.0).max(0.5);
            let off = (part.reached - part.target).abs() / width;
            prop_assert!(off <= half + 1e-6, "{} is {off} off, half a repeat is {half}", part.name);
            if let Body::Profile(profile) = &asked.body
                && let Some(multiple) = &profile.multiple
            {
                let count = size.rounds[edge as usize - 1].after;
                prop_assert!(multiple.value.holds(count), "{count} is no multiple of {}", multiple.value);
            }
            if let Body::Profile(profile) = &asked.body
                && !profile.shape.form().even
            {
                let end = &size.rounds[(edge - profile.settle) as usize..edge as usize];
                prop_assert!(end.iter().all(|round| round.change() == 0));
            }
        }
        prop_assert!(size.yarn.iter().all(|yarn| yarn.grams > 0.0 && yarn.metres > 0.0 && yarn.grams.is_finite()));
    }
    Ok(())
}

proptest! {
    #![proptest_config(ProptestConfig {
        cases: 10_000,
        failure_persistence: None,
        rng_seed: RngSeed::Fixed(20),
        ..ProptestConfig::default()
    })]

    /// Whatever is asked for is solved to a plan that adds up and keeps its limits, the same every time, or refused
    /// with an error; never a panic.
    #[test]
    fn every_design_is_solved_or_refused(design in designs()) {
        let mut report = Report::new();
        let plan = solve(&design, &mut report);
        prop_assert_eq!(plan.is_none(), report.has_errors());
        if let Some(plan) = plan {
            check(&design, &plan)?;
            if plan.sizes[0].rounds.len() % 4 == 0 {
                prop_assert_eq!(solve(&design, &mut Report::new()), Some(plan));
            }
        }
    }
}

/// Most of those designs can be solved, or the test above would say little.
#[test]
fn most_random_designs_can_be_solved() {
    use proptest::strategy::ValueTree;
    use proptest::test_runner::TestRunner;
    let mut runner = TestRunner::deterministic();
    let solved = (0..400).filter(|_| {
        let design = designs().new_tree(&mut runner).unwrap().current();
        solve(&design, &mut Report::new()).is_some()
    });
    let solved = solved.count();
    assert!(solved > 220, "{solved} of 400 solved");
}
