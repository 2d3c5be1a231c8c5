//! The mesh of stitches in space: it agrees with the body of revolution where that is stable, and with geometry where
//! nothing of revolution can.

use roundelay::craft::{Foundation, Op, Stitch};
use roundelay::design::Kind;
use roundelay::geometry::mesh::{Fabric, Mesh, mesh};
use roundelay::geometry::predict;
use roundelay::plan::{Plan, spread};

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
    let radius = own.iter().map(|p| (p.x - x).hypot(p.y - y)).sum::<f64>() / count;
    (radius, own.iter().map(|p| p.z).sum::<f64>() / count)
}

/// Largest distance between the mesh's rounds and the body's, as a share of the piece.
fn apart(plan: &Plan, mesh: &Mesh) -> f64 {
    let body = predict(plan, &plan.sizes[0]);
    let reach = body.rounds.iter().map(|round| round.radius.mm().max(round.height.mm())).fold(0.0, f64::max);
    let top = mean(mesh, 0).1 - body.rounds[0].height.mm();
    let off = |(i, round): (usize, &roundelay::geometry::RoundShape)| {
        let (r, z) = mean(mesh, i);
        let off = (r - round.radius.mm()).abs().max((z - top - round.height.mm()).abs()) / reach;
        if std::env::var("SHOW").is_ok() {
            println!("{i}: r {r:.2} {:.2}  z {:.2} {:.2}", round.radius.mm(), z - top, round.height.mm());
        }
        off
    };
    body.rounds.iter().enumerate().map(off).fold(0.0, f64::max)
}

fn agrees(what: &str, plan: &Plan) {
    let start = std::time::Instant::now();
    let mesh = relaxed(plan);
    let took = start.elapsed();
    let off = apart(plan, &mesh);
    println!("{what}: {} heads, off {off:.4}, strain {:.4}, {took:?}", mesh.points.len(), mesh.strain);
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
    let counts = along(|s| radius * (s / radius).sin(), SIX, 47);
    let ball = at_width(plan(Kind::Ball, Foundation::Ring, &[piece("ball", straight(), counts)]), SIX);
    agrees("ball", &scattered(ball));
}
