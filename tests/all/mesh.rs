//! The mesh of stitches in space: it agrees with the body of revolution where that is stable, and with geometry where
//! nothing of revolution can.

use roundelay::craft::{Foundation, Op, Stitch};
use roundelay::design::Kind;
use roundelay::geometry::mesh::{Fabric, Mesh, mesh};
use roundelay::geometry::predict;
use roundelay::pattern::Pattern;
use roundelay::plan::{Plan, spread};
use roundelay::units::{Angle, hypot, power};

use crate::fabric::{H, SIX, along, at_width, flat, piece, plan, straight};

const TURN: f64 = core::f64::consts::TAU;

/// The plan with its increases and decreases shared out over each round, those of odd rounds between those of even.
fn scattered(mut plan: Plan) -> Plan {
    for round in &mut plan.sizes[0].rounds {
        if round.before == 0 || round.change() == 0 {
            continue;
        }
        let (more, places) = (round.change() > 0, round.change().unsigned_abs() as u32);
        let groups = if more { round.before.min(places) } else { places };
        let own = if more { round.before } else { round.after };
        // The golden section keeps the places of neighbouring rounds apart.
        let turn = (f64::from(round.number) * 0.618).fract() * f64::from(own) / f64::from(groups);
        let loops = round.loops();
        let mut ops = Vec::new();
        for (gap, extra) in spread(own, groups, 0).into_iter().zip(spread(places, groups, 0)) {
            ops.extend(std::iter::repeat_n(Op::plain(Stitch::SC).under(loops), gap as usize - 1));
            let shaped = if more { Op::increase(Stitch::SC, 1 + extra) } else { Op::decrease(Stitch::SC, 1 + extra) };
            ops.push(shaped.under(loops));
        }
        ops.rotate_left(turn as usize);
        round.ops = ops;
    }
    plan
}

fn relaxed(plan: &Plan) -> Mesh {
    mesh(plan, &plan.sizes[0], &predict(plan, &plan.sizes[0]), &Fabric::default())
}

/// Mean distance from the axis and mean depth of a round.
fn mean(mesh: &Mesh, round: usize) -> (f64, f64) {
    let own = &mesh.points[mesh.net.rounds[round].clone()];
    let count = own.len() as f64;
    let (x, y) = (own.iter().map(|p| p.x).sum::<f64>() / count, own.iter().map(|p| p.y).sum::<f64>() / count);
    let radius = own.iter().map(|p| hypot(p.x - x, p.y - y)).sum::<f64>() / count;
    (radius, own.iter().map(|p| p.z).sum::<f64>() / count)
}

/// Largest distance between the mesh's rounds and the body's, as a share of the piece.
fn apart(plan: &Plan, mesh: &Mesh) -> f64 {
    let body = predict(plan, &plan.sizes[0]);
    let reach = body.rounds.iter().map(|round| round.radius.mm().max(round.height.mm())).fold(0.0, f64::max);
    // Heights are measured from the middle of each.
    let lifts = body.rounds.iter().enumerate().map(|(i, round)| mean(mesh, i).1 - round.height.mm());
    let top = lifts.sum::<f64>() / body.rounds.len() as f64;
    let off = |(i, round): (usize, &roundelay::geometry::RoundShape)| {
        let (r, z) = mean(mesh, i);
        (r - round.radius.mm()).abs().max((z - top - round.height.mm()).abs()) / reach
    };
    body.rounds.iter().enumerate().map(off).fold(0.0, f64::max)
}

fn agrees(what: &str, plan: &Plan) {
    let mesh = relaxed(plan);
    let off = apart(plan, &mesh);
    assert!(off < 0.01, "{what}: the mesh is {off:.4} of the piece off its body");
}

#[test]
fn a_disc_agrees() {
    let mat = plan(Kind::Mat, Foundation::Ring, &[piece("mat", flat(), (1..=30).map(|k| 6 * k))]);
    agrees("disc", &scattered(at_width(mat, SIX)));
}

#[test]
fn a_tube_agrees() {
    agrees("tube", &plan(Kind::Basket, Foundation::ChainRing(60), &[piece("tube", straight(), [60; 40])]));
}

#[test]
fn a_cone_agrees() {
    let counts = (1..=40).map(|k| 3 * k);
    agrees("cone", &scattered(plan(Kind::Hat, Foundation::Ring, &[piece("point", straight(), counts)])));
}

#[test]
fn a_ball_agrees() {
    let radius = 24.0 * H * 4.0 / TURN;
    let counts = along(|s| radius * Angle::from_radians(s / radius).sin(), SIX, 47);
    let ball = at_width(plan(Kind::Ball, Foundation::Ring, &[piece("ball", straight(), counts)]), SIX);
    agrees("ball", &scattered(ball));
}

/// Largest and smallest distance from the axis in a round.
fn reaches(mesh: &Mesh, round: usize) -> (f64, f64) {
    let reach = mesh.points[mesh.net.rounds[round].clone()].iter().map(|p| hypot(p.x, p.y));
    reach.fold((0.0, f64::INFINITY), |(most, least), reach| (most.max(reach), least.min(reach)))
}

#[test]
fn stacked_increases_make_a_hexagon() {
    // Six triangles whose height is √3/2 of their side lie flat: so do stitches of that height and width.
    let counts = (1..=24).map(|k| 6 * k);
    let mat = plan(Kind::Mat, Foundation::Ring, &[piece("mat", flat(), counts)]);
    let mut mat = at_width(mat, H / 0.75_f64.sqrt());
    for round in mat.sizes[0].rounds.iter_mut().skip(1) {
        let plain = (round.before / 6 - 1) as usize;
        let side = || std::iter::repeat_n(Op::plain(Stitch::SC), plain).chain([Op::increase(Stitch::SC, 2)]);
        round.ops = (0..6).flat_map(|_| side()).collect();
    }
    let mesh = relaxed(&mat);
    let (corners, flats) = reaches(&mesh, 23);
    // A regular hexagon is 2/√3 = 1.155 times as wide across its corners as across its flats.
    assert!((corners / flats / (2.0 / 3.0_f64.sqrt()) - 1.0).abs() < 0.05, "{corners:.1} and {flats:.1} mm");
}

#[test]
fn growth_by_a_constant_ratio_makes_the_hyperbolic_plane() {
    // Henderson & Taimina, Crocheting the hyperbolic plane (Mathematical Intelligencer 23, 2001): where the number of
    // stitches grows by the ratio q a round, R = h/ln q (here q = e^(1/9)); a circle of radius r in it is
    // 2πR sinh(r/R) around.
    let radius = 9.0 * H;
    let e = |exponent: f64| power(core::f64::consts::E, exponent);
    let around = |r: f64| TURN * radius * (e(r / radius) - e(-r / radius)) / 2.0;
    let counts = (1..=16).map(|k| (around(f64::from(k) * H) / SIX).round() as u32);
    let wavy = scattered(at_width(plan(Kind::Mat, Foundation::Ring, &[piece("mat", flat(), counts)]), SIX));
    // A limp fabric, which gives up its stretch altogether.
    let body = predict(&wavy, &wavy.sizes[0]);
    let mesh = mesh(&wavy, &wavy.sizes[0], &body, &Fabric { bending: 0.1, ..Fabric::default() });
    for round in [9, 15] {
        let own = mesh.net.rounds[round].clone();
        let next = |at: usize| mesh.net.heads[at].after.unwrap_or(own.start);
        let long: f64 = own.clone().map(|at| (mesh.points[next(at)] - mesh.points[at]).norm()).sum();
        let wanted = around((round as f64 + 1.0) * H);
        assert!((long / wanted - 1.0).abs() < 0.01, "round {}: {long:.1} for {wanted:.1} mm", round + 1);
    }
    // The disc has the area 2πR² (cosh(r/R) − 1), strip by strip as long as its edges and as high as its stitches.
    let (mut covered, mut inner) = (0.0, 0.0);
    for own in &mesh.net.rounds {
        let neighbour = |at: Option<usize>, other: usize| mesh.points[at.unwrap_or(other)];
        let (mut outer, mut high) = (0.0, 0.0);
        for at in own.clone() {
            let head = &mesh.net.heads[at];
            outer += (neighbour(head.after, own.start) - mesh.points[at]).norm();
            let way = (neighbour(head.after, at) - neighbour(head.before, at)).normalize();
            let post = mesh.points[at] - mesh.points[head.feet[0].on.start];
            high += (post - way * post.dot(&way)).norm() / own.len() as f64;
        }
        covered += (inner + outer) / 2.0 * high;
        inner = outer;
    }
    let share = 16.0 * H / radius;
    let disc = TURN * radius * radius * ((e(share) + e(-share)) / 2.0 - 1.0);
    assert!((covered / disc - 1.0).abs() < 0.02, "{covered:.0} of {disc:.0} mm²");
    let found = mesh.waves.expect("waves");
    assert!(found.round == 16 && (2..=16).contains(&found.count), "{found:?}");
    let depth = mesh.points.iter().map(|p| p.z);
    let waves = depth.clone().fold(0.0, f64::max) - depth.fold(0.0, f64::min);
    assert!(waves > 2.0 * H, "it ruffles, by {waves:.1} mm");
    assert!(found.height.mm() > H && found.height.mm() < 1.01 * waves, "{found:?} of {waves:.1} mm");
}

/// A cap worked in one spiral.
fn cap(stitch: &str, width: f64, rounds: f64) -> Pattern {
    let text = format!(
        "title: Cap\nkind: hat\nease: -5 %\nwork: spiral\nsizes: {{one: {{head: 55}}}}\n\
         swatch: {{stitch: {stitch}, stitches: 20, rounds: 10, width: {width}, height: {rounds}}}\n\
         parts:\n  - crown: {{shape: dome, rise: 8}}\n  - side: {{depth: 8}}\n"
    );
    Pattern::read(text.as_bytes()).unwrap_or_else(|report| panic!("{report:#?}"))
}

/// By how much every round leans, mm: how far it is off its height on the body on one side, and as far under it across.
fn leans(pattern: &Pattern) -> Vec<f64> {
    let (plan, body) = (&pattern.plan, &pattern.shapes[0]);
    let mesh = mesh(plan, &plan.sizes[0], body, &Fabric::default());
    let heights: Vec<f64> = std::iter::once(0.0).chain(body.rounds.iter().map(|round| round.height.mm())).collect();
    let lean = |(round, own): (usize, &std::ops::Range<usize>)| {
        let (mut cos, mut sin) = (0.0, 0.0);
        for (i, at) in own.clone().enumerate() {
            let level = round as f64 + 0.5 + (i as f64 + 0.5) / own.len() as f64;
            let low = (level as usize).min(heights.len() - 2);
            let (share, point) = (level - low as f64, mesh.points[at]);
            let off = point.z - heights[low] - (heights[low + 1] - heights[low]) * share;
            let far = hypot(point.x, point.y).max(1e-9);
            cos += off * point.x / far;
            sin += off * point.y / far;
        }
        2.0 * hypot(cos, sin) / own.len() as f64
    };
    mesh.net.rounds.iter().enumerate().map(lean).collect()
}

/// The middle of a spiral is uneven by itself: that doesn't push the crown over to one side.
#[test]
fn crowns_of_spirals_stand_upright() {
    for (stitch, width, rounds) in [("sc", 11.0, 5.2), ("hdc", 12.0, 8.0), ("dc", 14.0, 12.5), ("tr", 14.0, 17.0)] {
        let pattern = cap(stitch, width, rounds);
        let leans = leans(&pattern);
        // Two fifths of a stitch, of which there are twenty in so many cm.
        let most = 0.4 * 10.0 * width / 20.0;
        assert!(leans.iter().skip(1).all(|lean| *lean < most), "{stitch}: {leans:.1?}");
    }
}

/// What is filled is as round as its filling: no stitch strays from its round by more than a stitch.
#[test]
fn a_filling_holds_a_ball_round() {
    let text = "title: Bauble\nkind: ornament\nswatch: {stitch: sc, stitches: 24, rounds: 26, width: 10, height: 10}\n\
        sizes: {one: {around: 24}}\nwork: joined\nparts:\n  - ball: {start: ring of 6, shape: sphere}\n";
    let pattern = Pattern::read(text.as_bytes()).unwrap_or_else(|report| panic!("{report:#?}"));
    let (plan, body) = (&pattern.plan, &pattern.shapes[0]);
    let mesh = mesh(plan, &plan.sizes[0], body, &Fabric::default());
    let width = 100.0 / 24.0;
    for (round, own) in mesh.net.rounds.iter().enumerate().filter(|(_, own)| own.len() > 12) {
        let reach: Vec<f64> = own.clone().map(|at| hypot(mesh.points[at].x, mesh.points[at].y)).collect();
        let mean = reach.iter().sum::<f64>() / reach.len() as f64;
        let most = reach.iter().map(|reach| (reach - mean).abs()).fold(0.0, f64::max);
        assert!(most < width, "round {}: {most:.2} mm of {mean:.1}", round + 1);
        assert!((mean - body.rounds[round].radius.mm()).abs() < width / 4.0, "round {}: {mean:.1}", round + 1);
    }
}
