//! The predicted side shape: closed forms, shapes confirmed by a general-purpose optimiser, and findings.

mod fabric;

use fabric::{H, W, along, flat, piece, plan, straight};
use roundelay::design::Kind;
use roundelay::geometry::{RoundShape, SideShape, predict};
use roundelay::plan::{Foundation, Plan};
use roundelay::stitch::{Loops, Stitch};
use roundelay::units::{Gauge, Mm};

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
    // A gauge whose flat growth is 6 stitches a round exactly: w = 2πh/6.
    let mut mat = plan(Kind::Mat, Foundation::Ring, &[piece("mat", flat(), (1..=40).map(|k| 6 * k))]);
    mat.gauges = vec![(Stitch::SC, Gauge { width: Mm::new(TURN * H / 6.0), ..mat.gauge(Stitch::SC) })];
    let disc = shape(&mat);
    close("radius", edge(&disc).radius.mm(), 40.0 * H);
    let lift = disc.rounds.iter().map(|round| round.height.mm().abs()).fold(0.0, f64::max);
    assert!(lift < 0.005 * 40.0 * H, "lifts by {lift} mm");
    assert_eq!(disc.findings, []);
}

#[test]
fn a_disc_in_whole_stitches_is_flat_but_for_the_half_stitches() {
    // The counts nearest to 5.76 a round.
    let disc = shape(&plan(Kind::Mat, Foundation::Ring, &[piece("mat", flat(), along(|s| s, H, 40))]));
    close("radius", edge(&disc).radius.mm(), 40.0 * H);
    assert!(edge(&disc).height.mm().abs() < 0.02 * 40.0 * H, "dips by {:?}", edge(&disc).height);
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

#[test]
fn a_dome_and_a_ball_follow_the_sphere() {
    // On a sphere of radius R a circle at slant distance s from the pole has radius R sin(s/R).
    let radius = 80.0;
    let quarter = (radius * TURN / 4.0 / H).round();
    let radius = quarter * H * 4.0 / TURN;
    let profile = |s: f64| radius * (s / radius).sin();
    let dome =
        shape(&plan(Kind::Hat, Foundation::Ring, &[piece("dome", straight(), along(profile, H, quarter as u32))]));
    close("radius", edge(&dome).radius.mm(), radius);
    close("rise", edge(&dome).height.mm(), radius);
    let ball = shape(&plan(
        Kind::Ball,
        Foundation::Ring,
        &[piece("ball", straight(), along(profile, H, 2 * quarter as u32 - 1))],
    ));
    let widest = ball.rounds.iter().map(|round| round.radius.mm()).fold(0.0, f64::max);
    close("equator", widest, radius);
    assert!(edge(&ball).radius.mm() < 1.5 * H, "closes: {}", edge(&ball).radius.mm());
    close(
        "height with what is left of the cap",
        edge(&ball).height.mm() + edge(&ball).radius.mm().powi(2) / (2.0 * radius),
        2.0 * radius,
    );
    assert_eq!((dome.findings, ball.findings), (vec![], vec![]));
}

/// Shapes confirmed from outside: (round, r, z) in mm.
///
/// Computed with scipy 1.17.1 (numpy 2.4.6) by `scipy.optimize.minimize`, method `trust-exact`, gradient tolerance
/// 1e-11, on the formula in the documentation of `geometry::shape::energy` with B = 0.0005, written anew in Python with
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
                (10, 43.7796, 0.0000),
                (20, 86.1834, 1.5742),
                (24, 88.2178, 17.9912),
                (30, 88.2008, 43.3912),
                (42, 88.7628, 94.1350),
                (48, 105.8412, 112.8388),
                (56, 123.7949, 140.0576),
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
                (10, 43.7889, 0.0000),
                (20, 86.4061, 0.0000),
                (21, 87.7988, 3.9979),
                (30, 88.2008, 42.0737),
                (40, 87.9770, 84.4030),
                (42, 101.5503, 92.5342),
                (45, 119.7542, 92.9418),
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
                (6, 44.0699, 25.3999),
                (12, 60.2443, 37.1071),
                (13, 64.6543, 37.1071),
                (15, 73.3215, 37.1071),
                (18, 86.0898, 37.1071),
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
                (5, 21.8771, 0.0000),
                (10, 43.0809, 1.0729),
                (14, 44.0970, 17.8545),
                (18, 43.7521, 34.7620),
                (22, 29.6023, 43.9241),
                (27, 29.5536, 65.0756),
                (32, 44.1008, 80.4383),
                (37, 58.8005, 95.6681),
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
                (5, 29.3998, 11.9880),
                (10, 58.5523, 24.4464),
                (12, 58.8566, 41.3742),
                (13, 58.6117, 49.8373),
                (17, 35.2786, 59.7791),
                (22, 5.8801, 71.7701),
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
