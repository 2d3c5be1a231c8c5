//! The predicted side shape: closed forms, shapes confirmed by a general-purpose optimiser, and findings.

use roundelay::craft::{Foundation, Loops, Stitch};
use roundelay::design::{Kind, Shape};
use roundelay::geometry::{FindingKind, RoundShape, SideShape, predict};
use roundelay::plan::Plan;
use roundelay::units::{Angle, Mm};

use crate::fabric::{self, H, SIX, W, along, at_width, flat, piece, plan, straight};

const TURN: f64 = core::f64::consts::TAU;

fn shape(plan: &Plan) -> SideShape {
    predict(plan, &plan.sizes[0])
}

fn edge(shape: &SideShape) -> RoundShape {
    *shape.rounds.last().expect("a round")
}

/// Fails where a value is more than half a per cent off.
fn close(what: &str, got: f64, wanted: f64) {
    assert!((got / wanted - 1.0).abs() < 0.005, "{what}: {got:.3}, wanted {wanted:.3}");
}

#[test]
fn a_disc_with_the_right_growth_is_flat() {
    let mat = plan(Kind::Mat, Foundation::Ring, &[piece("mat", flat(), (1..=40).map(|k| 6 * k))]);
    let disc = shape(&at_width(mat, SIX));
    close("radius", edge(&disc).radius.mm(), 40.0 * H);
    let lift = disc.rounds.iter().map(|round| round.height.mm().abs()).fold(0.0, f64::max);
    assert!(lift < 0.005 * 40.0 * H, "lifts by {lift} mm");
    assert_eq!(disc.findings, []);
}

#[test]
fn a_disc_in_whole_stitches_is_flat_but_for_the_half_stitches() {
    // The counts nearest to 5.76 a round: the few stitches of the first rounds can't hit their circles.
    let disc = shape(&plan(Kind::Mat, Foundation::Ring, &[piece("mat", flat(), along(|s| s, W, 40))]));
    close("radius", edge(&disc).radius.mm(), 40.0 * H);
    assert!(edge(&disc).height.mm().abs() < 0.025 * 40.0 * H, "dips by {:?}", edge(&disc).height);
    assert_eq!(disc.findings, []);
}

#[test]
fn a_tube_is_straight() {
    let tube = shape(&plan(Kind::Basket, Foundation::ChainRing(60), &[piece("tube", straight(), [60; 50])]));
    for (k, round) in tube.rounds.iter().enumerate() {
        close("radius", round.radius.mm(), 60.0 * W / TURN);
        close("height", round.height.mm(), (k + 1) as f64 * H);
    }
}

#[test]
fn a_cone_stands_at_its_angle() {
    // 3 stitches a round: the cosine of the angle from the horizontal is 3w/(2πh).
    let counts = (1..=40).map(|k| 3 * k);
    let cone = shape(&plan(Kind::Hat, Foundation::Ring, &[piece("point", straight(), counts)]));
    let out = 3.0 * W / (TURN * H);
    close("radius", edge(&cone).radius.mm(), 40.0 * H * out);
    close("height", edge(&cone).height.mm(), 40.0 * H * (1.0 - out * out).sqrt());
}

#[allow(clippy::disallowed_methods, reason = "an expectation is computed apart from the crate's own functions")]
#[test]
fn a_dome_and_a_ball_follow_the_sphere() {
    // On a sphere of radius R a circle at slant distance s from the pole has radius R sin(s/R).
    let quarter = 30;
    let radius = f64::from(quarter) * H * 4.0 / TURN;
    let piece_of = |rounds: u32| {
        let counts = along(|s| radius * (s / radius).sin(), SIX, rounds);
        at_width(plan(Kind::Ball, Foundation::Ring, &[piece("ball", straight(), counts)]), SIX)
    };
    let dome = shape(&piece_of(quarter));
    close("radius", edge(&dome).radius.mm(), radius);
    close("rise", edge(&dome).height.mm(), radius);
    let ball = shape(&piece_of(2 * quarter - 1));
    let widest = ball.rounds.iter().map(|round| round.radius.mm()).fold(0.0, f64::max);
    close("equator", widest, radius);
    let (r, z) = (edge(&ball).radius.mm(), edge(&ball).height.mm());
    assert!(r < 1.5 * H, "closes to {r} mm");
    // What is left of the cap is nearly its chord's sagitta r²/2R.
    close("height", z + r * r / (2.0 * radius), 2.0 * radius);
    assert_eq!((dome.findings, ball.findings), (vec![], vec![]));
}

#[test]
fn what_will_ruffle_cup_or_bind_is_told_with_its_cure() {
    let told = |plan: &Plan| -> Vec<(FindingKind, u32, u32, String)> {
        let findings = shape(plan).findings;
        findings.into_iter().map(|f| (f.kind, f.first, f.last, f.sentence)).collect()
    };
    // 8 a round where the swatch asks for 5.76.
    let mat = |step: u32| plan(Kind::Mat, Foundation::Ring, &[piece("mat", flat(), (1..=20).map(|k| step * k))]);
    let [(FindingKind::Ruffles, _, 20, sentence)] = &told(&mat(8))[..] else { panic!("{:?}", told(&mat(8))) };
    assert!(sentence.contains("2 increases fewer a round"), "{sentence}");
    // Common practice: 6 a round passes.
    assert_eq!(told(&mat(6)), []);
    // 4 a round can't lie flat: it stands as the cone that its counts make.
    let [(FindingKind::Cups, _, 20, sentence)] = &told(&mat(4))[..] else { panic!("{:?}", told(&mat(4))) };
    assert!(sentence.contains("2 increases more a round"), "{sentence}");
    // A side that doubles at once, and one that halves at once.
    let jump = |to: u32| {
        let pieces = [piece("tube", straight(), [80; 12]), piece("rest", straight(), vec![to; 8])];
        plan(Kind::Basket, Foundation::ChainRing(80), &pieces)
    };
    let doubled = told(&jump(160));
    assert!(
        doubled
            .iter()
            .any(|(kind, _, _, sentence)| *kind == FindingKind::Ruffles && sentence.contains("after round 13")),
        "{doubled:?}"
    );
    let halved = told(&jump(40));
    assert!(
        halved.iter().any(|(kind, _, _, sentence)| *kind == FindingKind::Binds && sentence.contains("round 13")),
        "{halved:?}"
    );
}

#[test]
fn any_plan_gives_finite_numbers() {
    let counts: [&[u32]; 8] =
        [&[], &[6], &[0], &[0, 0, 0], &[1, 1000, 1, 1000], &[6, 12, 0, 12], &[4_000_000_000; 3], &[2; 100]];
    for (foundation, counts) in
        [Foundation::Ring, Foundation::ChainRing(0), Foundation::ChainRing(9), Foundation::Chain(2)]
            .into_iter()
            .flat_map(|foundation| counts.map(|counts| (foundation, counts)))
    {
        // Small counts only: the operations of a round are a list.
        let counts = counts.iter().map(|&count| count.min(20_000));
        let odd = plan(Kind::Ball, foundation, &[piece("odd", straight(), counts)]);
        for width in [W, 1e-9, 1e9, f64::NAN] {
            let shape = shape(&at_width(odd.clone(), width));
            let finite = |round: &RoundShape| {
                let numbers = [round.radius.mm(), round.height.mm(), round.hoop_strain, round.slant_strain];
                numbers.iter().all(|number| number.is_finite())
            };
            assert!(shape.rounds.iter().all(finite), "{foundation:?}, width {width}");
        }
    }
}

#[test]
fn a_brim_beyond_flat_comes_back_up() {
    let up = Shape::flare(vec![Mm::ZERO], vec![Angle::from_degrees(120.0)]);
    let rate = |n: u32| (1..=n).map(move |k| 120 + 5 * k);
    let pieces = |last: Shape| {
        [
            piece("crown", flat(), (1..=20).map(|k| 6 * k)),
            piece("side", straight(), [120; 10]),
            piece("brim", last, rate(8)).under(Loops::Front),
        ]
    };
    let rises = shape(&plan(Kind::Hat, Foundation::Ring, &pieces(up)));
    assert!(rises.rounds[37].height < rises.rounds[29].height, "turns up");
    let falls = shape(&plan(Kind::Hat, Foundation::Ring, &pieces(straight())));
    assert!(falls.rounds[37].height > falls.rounds[29].height, "goes down");
}

/// Shapes confirmed from outside: (round, r, z) in mm.
///
/// Computed with scipy 1.17.1 (numpy 2.4.6) by `scipy.optimize.minimize`, method `trust-exact`, gradient tolerance
/// 1e-11, on the formula in the documentation of `geometry::shape::energy` with B = 0.002, F = 0.03, written anew in Python with
/// bends from arctan2 as 4 sin²(Δφ/2), Jacobian by hand and Hessian by central differences; the start integrates the
/// growth of the counts, cosine clipped to ±0.98.
struct Confirmed {
    what: &'static str,
    plan: Plan,
    points: &'static [(usize, f64, f64)],
}

fn confirmed() -> Vec<Confirmed> {
    let rate = |from: u32, step: u32, rounds: u32| (1..=rounds).map(move |k| from + step * k);
    let narrowing = |from: u32, step: u32, rounds: u32| (1..=rounds).map(move |k| from - step * k);
    let ring = |kind: Kind, pieces: &[fabric::Piece]| plan(kind, Foundation::Ring, pieces);
    vec![
        Confirmed {
            what: "sun hat with a soft crown edge",
            plan: ring(
                Kind::Hat,
                &[
                    piece("crown", flat(), rate(0, 6, 20)),
                    piece("side", straight(), [120; 22]),
                    piece("brim", straight(), rate(120, 4, 12).chain([168, 168])),
                ],
            ),
            points: &[
                (10, 43.7412, 0.0000),
                (20, 86.3051, 0.2715),
                (24, 88.3880, 16.4981),
                (30, 88.2004, 41.8949),
                (42, 89.1536, 92.5777),
                (48, 105.8659, 111.5244),
                (56, 124.3268, 138.9358),
            ],
        },
        Confirmed {
            what: "crisp hat: back-loop folds, dc brim, slip-stitch edge",
            plan: ring(
                Kind::Hat,
                &[
                    piece("crown", flat(), rate(0, 6, 20)),
                    piece("side", straight(), [120; 20]).under(Loops::Back),
                    piece("brim", straight(), [126, 138, 150, 162]).of(Stitch::DC).under(Loops::Front),
                    piece("edge", straight(), [162]).of(Stitch::SL_ST),
                ],
            ),
            points: &[
                (10, 43.7958, 0.0000),
                (20, 86.4195, 0.0000),
                (21, 87.5163, 4.0892),
                (30, 88.1992, 42.1442),
                (40, 87.6089, 84.4568),
                (42, 101.5852, 93.1455),
                (45, 119.6833, 95.1183),
            ],
        },
        Confirmed {
            what: "tube from a chain ring that doubles into a ruffle",
            plan: plan(
                Kind::Basket,
                Foundation::ChainRing(60),
                &[piece("tube", straight(), [60; 12]), piece("ruffle", straight(), [120; 6])],
            ),
            points: &[
                (6, 43.9472, 25.3982),
                (12, 60.2487, 37.7302),
                (13, 64.6586, 37.7303),
                (15, 73.3258, 37.7303),
                (18, 86.0940, 37.7303),
            ],
        },
        Confirmed {
            what: "vase with a waist",
            plan: ring(
                Kind::Basket,
                &[
                    piece("base", flat(), rate(0, 6, 10)),
                    piece("side", straight(), [60; 8]),
                    piece("waist", straight(), narrowing(60, 5, 4).chain([40; 5])),
                    piece("mouth", straight(), rate(40, 4, 10)),
                ],
            ),
            points: &[
                (5, 21.8497, 0.0000),
                (10, 43.1263, 0.3060),
                (14, 44.1028, 17.0183),
                (18, 43.3487, 33.8551),
                (22, 29.9135, 43.9665),
                (27, 29.7814, 65.0512),
                (32, 44.1038, 80.5833),
                (37, 58.8003, 95.8161),
            ],
        },
        Confirmed {
            what: "cushion in hdc with a dc side, closed",
            plan: ring(
                Kind::Ball,
                &[
                    piece("top", straight(), rate(0, 8, 10)).of(Stitch::HDC),
                    piece("side", straight(), [80; 3]).of(Stitch::DC),
                    piece("bottom", straight(), narrowing(80, 8, 9)).of(Stitch::HDC),
                ],
            ),
            points: &[
                (5, 29.3965, 11.9960),
                (10, 58.1538, 25.0480),
                (12, 58.9883, 41.9404),
                (13, 58.2873, 50.3777),
                (17, 35.2839, 60.8181),
                (22, 5.8801, 72.7952),
            ],
        },
    ]
}

#[test]
fn mixed_shapes_agree_with_a_general_purpose_optimiser() {
    for Confirmed { what, plan, points } in confirmed() {
        let shape = shape(&plan);
        for &(k, r, z) in points {
            let got = shape.rounds[k - 1];
            let off = (got.radius.mm() - r).abs().max((got.height.mm() - z).abs());
            assert!(off < 0.002, "{what}, round {k}: {:.4}, {:.4}", got.radius.mm(), got.height.mm());
        }
    }
}
