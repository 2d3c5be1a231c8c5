//! Solved pieces as they come out: four stitches, ten shapes, three gauges, in a spiral and joined.

use crate::common::{Adjust, design, part, size, swatch};
use roundelay::craft::Stitch;
use roundelay::design::{Body, Design, Part, Shape, Start, Work};
use roundelay::geometry::{FindingKind, SideShape, predict};
use roundelay::plan::{Plan, solve};
use roundelay::report::Report;
use roundelay::units::{Angle, Mm, TURN, hypot};

/// Largest angle between neighbouring rounds within a part, in degrees.
const KNEE: f64 = 35.0;
/// Deepest dent or bump in a part that is all one shape, as a share of its radius.
const DENT: f64 = 0.02;

/// One piece and what it is called.
struct Piece {
    name: String,
    design: Design,
    around: f64,
}

fn pieces() -> Vec<Piece> {
    let stitches = [(Stitch::SC, 0.95), (Stitch::HDC, 1.35), (Stitch::DC, 1.8), (Stitch::TR, 2.6)];
    let mut pieces = Vec::new();
    for (stitch, ratio) in stitches {
        for (at, (width, around)) in [(4.2, 500.0), (6.0, 560.0), (8.0, 610.0)].into_iter().enumerate() {
            for (name, parts) in parts(stitch, around, width) {
                let swatch = swatch(stitch, 100.0 / width, 100.0 / (width * ratio));
                let mut design = design(swatch, vec![size("one", around)], parts);
                if at % 2 == 1 {
                    design.work = Work::Joined { chain_counts: true };
                }
                pieces.push(Piece { name: format!("{name} in {} of {width} mm", stitch.row().id), design, around });
            }
        }
    }
    pieces
}

fn parts(stitch: Stitch, around: f64, width: f64) -> Vec<(String, Vec<Part>)> {
    let mm = |value: f64| vec![Mm::new(value)];
    let one = |shape: Shape| vec![part("top", stitch, shape).ringed()];
    let radius = around / TURN;
    let flat = || part("crown", stitch, Shape::flat(mm(around))).ringed();
    let side = || part("side", stitch, Shape::straight(mm(90.0)));
    let tube = |count: u32| {
        let ring = Start::ChainRing { chains: count, stitches: Some(count) };
        part("side", stitch, Shape::straight(mm(90.0))).starting(ring)
    };
    let count = (around / width / 6.0).round() as u32 * 6;
    let flare = |degrees: f64| Shape::flare(mm(100.0), vec![Angle::from_degrees(degrees)]);
    let mut all = vec![
        ("flat".to_owned(), vec![flat()]),
        ("rounded edge".to_owned(), vec![flat(), side()]),
        ("ball".to_owned(), one(Shape::sphere(mm(around)))),
        ("taper".to_owned(), vec![tube(count), part("end", stitch, Shape::taper(mm(160.0), mm(around * 0.6)))]),
    ];
    for rise in [0.75, 1.0, 1.25] {
        let dome = part("crown", stitch, Shape::dome(mm(around), mm(rise * radius))).ringed();
        all.push((format!("dome of {rise}"), vec![dome, side()]));
    }
    for degrees in [20.0, 40.0, 65.0] {
        all.push((format!("flare of {degrees}"), vec![tube(count), part("brim", stitch, flare(degrees))]));
    }
    all
}

fn solved(piece: &Piece) -> Plan {
    let mut report = Report::new();
    solve(&piece.design, &mut report).unwrap_or_else(|| panic!("{}: {report:?}", piece.name))
}

/// Points of a part, from its foot.
fn points(shape: &SideShape, first: usize, last: usize) -> Vec<(f64, f64)> {
    let foot = first
        .checked_sub(2)
        .map_or((shape.start.mm(), 0.0), |k| (shape.rounds[k].radius.mm(), shape.rounds[k].height.mm()));
    let own = shape.rounds[first - 1..last].iter().map(|round| (round.radius.mm(), round.height.mm()));
    std::iter::once(foot).chain(own).collect()
}

/// Largest angle between neighbouring rounds, in degrees.
fn knee(points: &[(f64, f64)]) -> f64 {
    let way = |pair: &[(f64, f64)]| Angle::of_vector(pair[1].0 - pair[0].0, pair[1].1 - pair[0].1).degrees();
    let ways: Vec<f64> = points.windows(2).map(way).collect();
    ways.windows(2).map(|pair| (pair[1] - pair[0]).abs()).fold(0.0, f64::max)
}

/// How far points lie at most on the wrong side of the chord of two others, for a line that bends one way all along: the
/// depth of its dents, or of its bumps where it bends the other way.
fn dent(points: &[(f64, f64)]) -> f64 {
    let depth = |side: f64| {
        let mut deepest = 0.0_f64;
        for i in 0..points.len() {
            for j in i + 2..points.len() {
                let (a, b) = (points[i], points[j]);
                let long = hypot(b.0 - a.0, b.1 - a.1).max(1e-9);
                for p in &points[i + 1..j] {
                    let off = ((b.0 - a.0) * (p.1 - a.1) - (b.1 - a.1) * (p.0 - a.0)) / long;
                    deepest = deepest.max(side * off);
                }
            }
        }
        deepest
    };
    depth(1.0).min(depth(-1.0))
}

#[test]
fn nothing_solved_has_a_knee_a_dent_or_late_growth() {
    let (mut odd, mut knees, mut dents, mut late, mut edges) = (Vec::new(), 0.0_f64, 0.0_f64, 0, 0.0_f64);
    let (pieces, mut ridges) = (pieces(), 0);
    for piece in &pieces {
        let plan = solved(piece);
        let size = &plan.sizes[0];
        let shape = predict(&plan, size);
        for (index, part) in size.parts.iter().enumerate() {
            let Body::Profile(profile) = &plan.design.parts[index].body else { continue };
            let form = profile.shape.form();
            let points = points(&shape, part.first as usize, part.last as usize);
            // Where a flat top meets what comes after it, it is meant to fold.
            let knee = if form.flat { knee(&points[..points.len() - 1]) } else { knee(&points) };
            let told = shape.findings.iter().any(|finding| finding.kind == FindingKind::Ridges);
            ridges += usize::from(told);
            // Sides and brims are bent at their ends by what they meet there; of one shape are curves.
            let dent = if form.curved { dent(&points) / (piece.around / TURN) } else { 0.0 };
            let changes: Vec<i64> = size.rounds[part.first as usize - 1..part.last as usize]
                .iter()
                .map(|round| round.change())
                .filter(|change| *change != 0)
                .collect();
            let rises = form.curved && changes.windows(2).any(|pair| pair[1] > pair[0]);
            let width = plan.gauge(plan.design.parts[index].stitch).width.mm();
            let edge = (part.reached.mm() - part.target.mm()).abs() / width;
            (knees, dents, edges) = (knees.max(knee), dents.max(dent), edges.max(edge));
            late += u32::from(rises);
            if knee > KNEE && !told || dent > DENT || rises {
                odd.push(format!(
                    "{}, {}: knee {knee:.1}°, dent {:.1} %, edge {edge:.1} st, {changes:?}",
                    piece.name,
                    part.name,
                    100.0 * dent
                ));
            }
        }
    }
    println!("{} pieces: knee {knees:.1}°, dent {:.2} %, late {late}, edge {edges:.1} st", pieces.len(), 100.0 * dents);
    // In the tallest and widest stitches a small curve has no room to turn, and says so.
    assert!(ridges <= 4, "{ridges} ridges");
    assert!(odd.is_empty(), "{} of {}:\n{}", odd.len(), pieces.len(), odd.join("\n"));
}
