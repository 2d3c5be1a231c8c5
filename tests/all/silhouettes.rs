//! Solved pieces as they come out: four stitches, eleven shapes, three gauges, in a spiral and joined.

use crate::common::{Adjust, design, part, size, swatch};
use roundelay::craft::Stitch;
use roundelay::design::{Body, Design, Part, Shape, Start, Work};
use roundelay::geometry::{FindingKind, SideShape, predict};
use roundelay::plan::{PartPlan, Plan, solve};
use roundelay::report::Report;
use roundelay::units::{Angle, Mm, TURN, hypot};

/// Largest angle between neighbouring rounds within a part, in degrees.
const KNEE: f64 = 35.0;
/// Deepest dent or bump in a part that is all one shape, as a share of its radius.
const DENT: f64 = 0.02;
/// Most by which an edge misses its circumference more than the nearest count does, as a share of it: a hundredth is what a
/// design that says nothing allows, and twice that at the free edge of a brim. Whole repeats are worth that to a maker;
/// `tolerance: 0 %` asks for the nearest count.
const EDGE: f64 = 0.01;
const FREE_EDGE: f64 = 0.02;

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
    // As far as tall stitches can bend: three rounds of the tallest of them.
    let rounded = || part("crown", stitch, Shape::rounded(mm(around), mm(40.0))).ringed();
    let side = || part("side", stitch, Shape::straight(mm(90.0)));
    let tube = |count: u32| {
        let ring = Start::ChainRing { chains: count, stitches: Some(count) };
        part("side", stitch, Shape::straight(mm(90.0))).starting(ring)
    };
    let count = (around / width / 6.0).round() as u32 * 6;
    let flare = |degrees: f64| Shape::flare(mm(100.0), vec![Angle::from_degrees(degrees)]);
    let mut all = vec![
        ("flat".to_owned(), vec![flat()]),
        ("flat with a side".to_owned(), vec![flat(), side()]),
        ("rounded edge".to_owned(), vec![rounded(), side()]),
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

/// How a part came out.
struct Seen {
    piece: String,
    part: String,
    /// Largest angle between neighbouring rounds, in degrees; of a flat part without the last, where it is meant to fold.
    knee: f64,
    /// Deepest dent as a share of the radius.
    dent: f64,
    /// True where shaping that has fallen rises again.
    rises: bool,
    /// Stitches by which the last round misses its circumference more than the nearest count does.
    edge: f64,
    /// Most stitches that the design allows there.
    allowed: f64,
    /// True where a ridge is told.
    told: bool,
    changes: Vec<i64>,
}

/// Rounds at the end of a part that what it meets there bends: twice the length 1/β over which a bend dies out, with β =
/// 3^¼ / √(R t) (Timoshenko and Woinowsky-Krieger, Theory of Plates and Shells, 1959, chapter 15; no sideways contraction).
fn bent(around: f64, thick: f64, height: f64) -> usize {
    let decay = (around / TURN * thick).sqrt() / 3.0_f64.sqrt().sqrt();
    (2.0 * decay / height).ceil() as usize
}

fn seen(piece: &Piece) -> Vec<Seen> {
    let plan = solved(piece);
    let size = &plan.sizes[0];
    let shape = predict(&plan, size);
    let told = shape.findings.iter().any(|finding| finding.kind == FindingKind::Ridges);
    let radius = piece.around / TURN;
    let one = |(index, part): (usize, &PartPlan)| {
        let Body::Profile(profile) = &plan.design.parts[index].body else { panic!("{}", part.name) };
        let (form, gauge) = (profile.shape.form(), plan.gauge(plan.design.parts[index].stitch));
        let points = points(&shape, part.first as usize, part.last as usize);
        // Of one shape are curves all along, and what is straight as far as it isn't bent by what it meets.
        let ends = if form.curved { 0 } else { bent(piece.around, gauge.thick.mm(), gauge.height.mm()) };
        let inner = points.get(ends..points.len().saturating_sub(ends)).filter(|_| !form.flat).unwrap_or_default();
        let changes: Vec<i64> = size.rounds[part.first as usize - 1..part.last as usize]
            .iter()
            .map(|round| round.change())
            .filter(|change| *change != 0)
            .collect();
        let late = |pair: &[i64]| if pair[0] < 0 { pair[1].abs() > pair[0].abs() } else { pair[1] > pair[0] };
        // A ball takes away ever more towards its point.
        let rises = changes.windows(2).any(late) && !form.closes;
        let wished = part.target.mm() / gauge.width.mm();
        let best = (wished - wished.round()).abs();
        let reached = part.reached.mm() / gauge.width.mm();
        Seen {
            piece: piece.name.clone(),
            part: part.name.clone(),
            knee: if form.flat { knee(&points[..points.len() - 1]) } else { knee(&points) },
            dent: dent(inner) / radius,
            rises: rises || form.closes && changes.windows(2).any(|pair| pair[1] > pair[0]),
            edge: if form.even { 0.0 } else { (reached - wished).abs() - best },
            allowed: wished * if form.brim { FREE_EDGE } else { EDGE },
            told,
            changes,
        }
    };
    size.parts.iter().enumerate().map(one).collect()
}

/// What the pieces are: 132 of them, four stitches in three gauges, the middle one joined and the others in a spiral.
#[test]
fn nothing_solved_has_a_knee_a_dent_or_late_growth() {
    let all: Vec<Seen> = pieces().iter().flat_map(seen).collect();
    let mut odd = Vec::new();
    for one in &all {
        if one.knee > KNEE || one.told || one.dent > DENT || one.rises || one.edge > one.allowed.max(0.5) {
            odd.push(format!(
                "{}, {}: knee {:.1}°, dent {:.2} %, edge {:.2} st, {:?}",
                one.piece,
                one.part,
                one.knee,
                100.0 * one.dent,
                one.edge,
                one.changes
            ));
        }
    }
    assert!(odd.is_empty(), "{} of {}:\n{}", odd.len(), all.len(), odd.join("\n"));
}

/// Prints the table of the guide: `cargo test --test all silhouettes -- --ignored --nocapture`.
#[test]
#[ignore = "prints a table"]
fn the_table_of_pieces() {
    let all: Vec<Seen> = pieces().iter().flat_map(seen).collect();
    println!("| piece | part | knee | dent | rises | edge | rounds |\n| --- | --- | --- | --- | --- | --- | --- |");
    for one in &all {
        let rises = if one.rises { "yes" } else { "" };
        let dent = 100.0 * one.dent;
        println!(
            "| {} | {} | {:.1}° | {dent:.2} % | {rises} | {:.2} st | {:?} |",
            one.piece, one.part, one.knee, one.edge, one.changes
        );
    }
    let within = |stitches: f64| all.iter().filter(|one| one.edge <= stitches).count();
    let most = |of: fn(&Seen) -> f64| all.iter().map(of).fold(0.0, f64::max);
    println!(
        "all: knee {:.1}°, dent {:.2} %, rises {}, edge {:.2} st",
        most(|one| one.knee),
        100.0 * most(|one| one.dent),
        all.iter().filter(|one| one.rises).count(),
        most(|one| one.edge)
    );
    println!("edges within half a stitch of the best: {}, within one: {}, of {}", within(0.5), within(1.0), all.len());
}
