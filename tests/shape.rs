//! The predicted side shape: closed forms, shapes confirmed by a general-purpose optimiser, and findings.

mod fabric;

use fabric::{H, W, along, flat, piece, plan, straight};
use roundelay::design::Kind;
use roundelay::geometry::{RoundShape, SideShape, predict};
use roundelay::plan::{Foundation, Plan};
use roundelay::stitch::Stitch;
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
