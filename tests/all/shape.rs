//! The predicted side shape: closed forms, shapes confirmed by a general-purpose optimiser, and findings.

use roundelay::craft::{Foundation, Loops, Stitch};
use roundelay::design::{Kind, Shape};
use roundelay::geometry::{FindingKind, RoundShape, SideShape, predict};
use roundelay::plan::Plan;
use roundelay::units::{Angle, Mm, power};

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

/// An edge that is pulled in recovers as e^(−βx) cos βx, with β = 3^¼ / √(R t) where nothing contracts sideways
/// (Timoshenko and Woinowsky-Krieger, Theory of Plates and Shells, 1959, chapter 15, equation for the circular tube).
#[test]
fn the_bend_at_the_edge_of_a_tube_dies_out_as_thin_shells_do() {
    // Rounds far lower than the bend is long, so that their number doesn't show.
    const FINE: f64 = 0.25;
    let mut tube = plan(
        Kind::Basket,
        Foundation::ChainRing(239),
        &[piece("pulled", straight(), [239; 1]), piece("tube", straight(), [240; 1600])],
    );
    for (_, gauge) in &mut tube.gauges {
        *gauge = roundelay::units::Gauge { height: Mm::new(FINE), thick: Mm::new(4.0), ..*gauge };
    }
    let radius = 240.0 * W / TURN;
    let off: Vec<f64> = shape(&tube).rounds.iter().map(|round| round.radius.mm() - radius).collect();
    // Between neighbouring zeros lies half a wave, π/β.
    let zeros: Vec<f64> = (20..off.len() - 20)
        .filter(|k| off[*k] * off[k + 1] < 0.0)
        .map(|k| (k as f64 + off[k] / (off[k] - off[k + 1])) * FINE)
        .collect();
    let beta = 3.0_f64.sqrt().sqrt() / (radius * 4.0).sqrt();
    let wave = zeros[1] - zeros[0];
    assert!((wave * beta / (TURN / 2.0) - 1.0).abs() < 0.02, "{wave} mm, wanted {}", TURN / 2.0 / beta);
    // And from one half wave to the next it falls by e^−π.
    let peak = |from: f64, to: f64| {
        let within = off.iter().enumerate().filter(|(k, _)| (from..to).contains(&(*k as f64 * FINE)));
        within.map(|(_, off)| off.abs()).fold(0.0, f64::max)
    };
    let fall = peak(zeros[1], zeros[1] + wave) / peak(zeros[0], zeros[1]);
    let by = |share: f64| power(core::f64::consts::E, -share * TURN / 2.0);
    assert!((by(1.02)..by(0.98)).contains(&fall), "falls to {fall}");
}

/// Even rounds at the edge of a brim go on outward for a while: fabric turns a corner δ in a curve. Where a cone meets a
/// tube, the corner is squeezed by δ/(4βR), and beyond it the tube is stretched by e^(−π/2) of that at most, π/(2β) further
/// on; which follows from w″″ + 4β⁴ w = 0 on both sides with a step of the slope by δ between them (the equation of the
/// circular tube, Timoshenko and Woinowsky-Krieger, Theory of Plates and Shells, 1959, chapter 15).
#[test]
fn a_brim_turns_into_its_even_rounds_in_a_curve() {
    const FINE: f64 = 0.25;
    // One stitch in six rounds of a quarter of a millimetre: a slope of 0.49 rounds in the radius.
    let brim = (0..400).map(|k| 480 + k / 6);
    let mut hat = plan(
        Kind::Basket,
        Foundation::ChainRing(480),
        &[piece("brim", straight(), brim), piece("even", straight(), [546; 800])],
    );
    for (_, gauge) in &mut hat.gauges {
        *gauge = roundelay::units::Gauge { height: Mm::new(FINE), thick: Mm::new(4.0), ..*gauge };
    }
    let radius = 546.0 * W / TURN;
    let body = shape(&hat);
    let strain = |k: usize| TURN * body.rounds[k].radius.mm() / (546.0 * W) - 1.0;
    let slope = Angle::of_sine(W / TURN / (6.0 * FINE)).radians();
    let beta = 3.0_f64.sqrt().sqrt() / (radius * 4.0).sqrt();
    let squeezed = slope / (4.0 * beta * radius);
    let least = (400..450).map(strain).fold(0.0, f64::min);
    let most = (400..700).map(strain).fold(0.0, f64::max);
    assert!((-strain(400) / squeezed - 1.0).abs() < 0.1, "squeezed by {} for {squeezed}", -strain(400));
    assert!(-least < 1.2 * squeezed, "{least}");
    let stretched = squeezed * power(core::f64::consts::E, -TURN / 4.0);
    assert!((most / stretched - 1.0).abs() < 0.15, "stretched by {most} for {stretched}");
}

#[test]
fn a_cone_stands_at_its_angle() {
    // 3 stitches a round: the cosine of the angle from the horizontal is 3w/(2πh).
    let counts = (1..=40).map(|k| 3 * k);
    let cone = shape(&plan(Kind::Hat, Foundation::Ring, &[piece("point", straight(), counts)]));
    let out = 3.0 * W / (TURN * H);
    // The thickness blunts the tip and opens the edge; between them it is a cone.
    let (from, to) = (cone.rounds[11], cone.rounds[33]);
    close("radius", to.radius.mm() - from.radius.mm(), 22.0 * H * out);
    close("height", to.height.mm() - from.height.mm(), 22.0 * H * (1.0 - out * out).sqrt());
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
    // At a free edge the fabric opens a little; six rounds before it is a ball.
    let (near, at) = (dome.rounds[quarter as usize - 7], f64::from(quarter - 6) * H / radius);
    close("radius", near.radius.mm(), radius * at.sin());
    close("rise", near.height.mm(), radius * (1.0 - at.cos()));
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
/// Computed with scipy by `scipy.optimize.minimize`, method `trust-exact`, gradient tolerance 1e-11, on the formula in the
/// documentation of `geometry::shape::energy` with t = 2.5 mm, f = 1/8 and F = 0.03, written anew in Python: slopes by the complex
/// step, Hessian by central differences of them; the start integrates the growth of the counts, cosine clipped to ±0.98.
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
                (10, 43.8481, 0.0274),
                (20, 84.3099, 8.9596),
                (24, 88.9612, 24.9068),
                (30, 88.2487, 50.2935),
                (42, 90.2065, 100.8092),
                (48, 105.6233, 120.7953),
                (56, 125.9196, 147.7278),
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
                (10, 43.8035, 0.0161),
                (20, 85.9691, 4.3299),
                (21, 87.1521, 8.3944),
                (30, 88.2412, 46.3962),
                (40, 87.9590, 88.7203),
                (42, 101.9306, 98.1554),
                (45, 118.9406, 104.6712),
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
                (6, 43.4870, 25.3830),
                (12, 60.2628, 39.9264),
                (13, 64.6722, 39.9832),
                (15, 73.3390, 40.0165),
                (18, 86.1070, 40.0353),
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
                (5, 21.7587, 0.0191),
                (10, 42.4818, 2.9091),
                (14, 44.9625, 19.1869),
                (18, 42.0755, 35.7364),
                (22, 30.9768, 48.5248),
                (27, 30.3830, 69.1899),
                (32, 43.9715, 85.2860),
                (37, 58.8863, 100.2988),
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
                (5, 29.5624, 10.3321),
                (10, 56.8918, 25.5493),
                (12, 59.4763, 42.0936),
                (13, 57.1262, 50.2223),
                (17, 35.5411, 62.9068),
                (22, 5.8499, 73.9467),
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
