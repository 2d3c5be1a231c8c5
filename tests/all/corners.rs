//! A crown in corners on a round side: the corners fade, in the mesh of stitches as in the body and the side view.

use kurbo::Point;
use roundelay::geometry::mesh::{Fabric, mesh};
use roundelay::geometry::sideview::MeasureKind;
use roundelay::geometry::{SideView, side_view};
use roundelay::pattern::Pattern;
use roundelay::units::hypot;

/// A hat in sc of 5.6 mm by 5.3 with its crown in so many corners, and a brim where there is one.
fn hat(corners: u32, brim: &str) -> Pattern {
    hat_for(56.0, corners, brim)
}

fn hat_for(head: f64, corners: u32, brim: &str) -> Pattern {
    let text = format!(
        "title: Hat\nkind: hat\nswatch: {{stitch: sc, stitches: 18, rounds: 19, width: 10, height: 10}}\nease: 0 %\n\
         sizes: {{one: {{head: {head}}}}}\nwork: joined\nshaping: {corners} corners\nparts:\n  \
         - crown: {{start: ring, shape: flat}}\n  - side: {{depth: 11}}\n{brim}"
    );
    Pattern::read(text.as_bytes()).unwrap_or_else(|report| panic!("{report:#?}"))
}

fn view(pattern: &Pattern) -> SideView {
    side_view(&pattern.plan, &pattern.plan.sizes[0], &pattern.shapes[0])
}

/// How far every round is a polygon of `corners`, from 0 to 1, by the largest and the smallest distance from the axis.
fn in_the_mesh(pattern: &Pattern, corners: u32) -> Vec<f64> {
    let size = &pattern.plan.sizes[0];
    let mesh = mesh(&pattern.plan, size, &pattern.shapes[0], &Fabric::default());
    let whole = 1.0 / roundelay::units::Angle::from_degrees(180.0 / f64::from(corners)).cos() - 1.0;
    let one = |own: &std::ops::Range<usize>| {
        let own = &mesh.points[own.clone()];
        let n = own.len() as f64;
        let (x, y) = (own.iter().map(|p| p.x).sum::<f64>() / n, own.iter().map(|p| p.y).sum::<f64>() / n);
        let reach = own.iter().map(|p| hypot(p.x - x, p.y - y));
        let (most, least) = reach.fold((0.0_f64, f64::INFINITY), |(most, least), r| (most.max(r), least.min(r)));
        (most / least - 1.0) / whole
    };
    mesh.net.rounds.iter().map(one).collect()
}

/// How far every round is drawn as a polygon: what it is drawn wider than it is predicted.
fn in_the_view(pattern: &Pattern, corners: u32) -> Vec<f64> {
    let whole = 1.0 / roundelay::units::Angle::from_degrees(180.0 / f64::from(corners)).cos() - 1.0;
    let (view, shape) = (view(pattern), &pattern.shapes[0]);
    let edges = view.outline.iter().skip(1).zip(&shape.rounds);
    edges.map(|(drawn, round)| (drawn.x / round.radius.mm() - 1.0) / whole).collect()
}

#[test]
fn corners_fade_down_a_side_as_they_do_in_the_mesh() {
    for corners in [6, 8] {
        let pattern = hat(corners, "");
        let crown = pattern.plan.sizes[0].parts[0].last as usize;
        let (mesh, view) = (in_the_mesh(&pattern, corners), in_the_view(&pattern, corners));
        let in_the_crown = mesh[crown - 2].max(mesh[crown - 1]);
        assert!(in_the_crown > 0.7, "{mesh:?}");
        // Thick fabric rounds the corners of the crown itself off a little: what counts is how they go from there.
        for (k, (drawn, mesh)) in view.iter().zip(&mesh).enumerate().skip(crown) {
            let mesh = mesh / in_the_crown;
            assert!((drawn - mesh).abs() < 0.25, "{corners} corners, round {}: {drawn:.2}, mesh {mesh:.2}", k + 1);
        }
        assert!(view[crown - 1] > 0.99, "{view:?}");
        let falls = view.windows(2).skip(crown - 1).all(|pair| pair[1] < pair[0] + 1e-9);
        assert!(falls && view[view.len() - 1] < 0.01, "{view:?}");
    }
}

/// From the top down no round is drawn apart from its neighbours, where the crown fits: 78 stitches are what twelve rounds
/// lie flat with. (At 56 cm round the crown is 102 stitches where flat fabric has 98, and the side bulges below it.)
#[test]
fn the_passage_has_no_step() {
    let pattern = hat_for(43.4, 6, "");
    let crown = &pattern.plan.sizes[0].parts[0];
    assert_eq!((crown.last, pattern.plan.sizes[0].rounds[crown.last as usize - 1].after), (12, 78));
    let outline = view(&pattern).outline;
    let crown = pattern.plan.sizes[0].parts[0].last as usize;
    let step = |pair: &[Point]| (pair[1].x - pair[0].x).abs();
    for pair in outline[crown..].windows(2) {
        assert!(step(pair) < 0.25 * 5.3, "{pair:?}");
    }
}

/// The crown is measured as the hexagon that it is and the side as the circle; 165 stitches of 5.56 mm or so, the handbook's
/// C / (n tan(π/n)) and C / (n sin(π/n)).
#[test]
fn crown_and_side_are_measured_each_as_it_is() {
    let pattern = hat(6, "");
    let view = view(&pattern);
    let around = pattern.plan.sizes[0].parts[0].reached.mm();
    let value = |kind: MeasureKind, part: usize| {
        let found = view.measures.iter().find(|measure| measure.kind == kind && measure.part == Some(part));
        found.unwrap_or_else(|| panic!("{kind:?} of part {part}: {:?}", view.measures)).value.mm()
    };
    assert!((value(MeasureKind::AcrossFlats, 0) - around / (2.0 * 3.0_f64.sqrt())).abs() < 1e-6);
    assert!((value(MeasureKind::AcrossCorners, 0) - around / 3.0).abs() < 1e-6);
    assert!((value(MeasureKind::Across, 1) - around / core::f64::consts::PI).abs() < 1e-6);
}

/// A brim keeps the curve of what it stands on until it has more stitches from its corners than from there.
#[test]
fn a_brim_that_less_than_doubles_is_round() {
    let pattern = hat(6, "  - brim: {width: 6, flare: 60°, settle: 1}\n");
    let size = &pattern.plan.sizes[0];
    assert_eq!(size.stacking(&size.parts[2]).polygon, None);
    assert!(
        view(&pattern)
            .measures
            .iter()
            .all(|measure| measure.part != Some(2) || measure.kind != MeasureKind::AcrossFlats)
    );
    assert!(size.stacking(&size.parts[0]).polygon.is_some());
}

/// Increases that stand above each other in every second round make a polygon of twice as many corners. In a large mat it
/// would show, so that neither the plan nor the mesh may have it: there its edge is as round as a polygon of four times
/// as many, 1/cos(180°/24) = 1.0086, and a little for the step of the spiral.
#[test]
fn a_large_mat_in_sixes_is_round_in_the_plan_and_in_the_mesh() {
    let text = "title: Mat\nkind: mat\nswatch: {stitch: sc, stitches: 18, rounds: 19, width: 10, height: 10}\n\
                sizes: {one: {across: 44}}\nwork: joined\nparts:\n  - mat: {start: ring of 6, shape: flat}\n";
    let pattern = Pattern::read(text.as_bytes()).unwrap_or_else(|report| panic!("{report:#?}"));
    let size = &pattern.plan.sizes[0];
    assert!(size.rounds.iter().skip(1).take(36).all(|round| round.change() == 6));
    assert_eq!(size.stacking(&size.parts[0]).polygon, None);
    let mesh = mesh(&pattern.plan, size, &pattern.shapes[0], &Fabric::default());
    let reach = |round: usize| {
        let own = mesh.points[mesh.net.rounds[round].clone()].iter().map(|p| hypot(p.x, p.y));
        own.fold((0.0_f64, f64::INFINITY), |(most, least), r| (most.max(r), least.min(r)))
    };
    for round in [34, 36, 38] {
        let (most, least) = reach(round);
        assert!(most / least < 1.018, "round {}: {:.4}", round + 1, most / least);
    }
}
