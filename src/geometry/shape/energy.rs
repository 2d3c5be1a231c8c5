//! The energy of a shape of revolution, with its slope and curvature.
//!
//! With the points pₖ = (rₖ, zₖ) on the edges of the rounds, cₖ the circumference, hₖ the height, tₖ the thickness and
//! ρₖ the mean radius of a round at rest, lₖ = |pₖ − pₖ₋₁|, θ the angle between neighbouring rounds and aₖ the round's
//! share of the area:
//!
//! E = Σ aₖ [ (2πrₖ/cₖ − 1)² + (lₖ/hₖ − 1)² + tₖ²/12 · ((zₖ − zₖ₋₁)/(hₖ ρₖ))² ]
//! \+ Σ f · ½ (aₖ tₖ² + aₖ₊₁ tₖ₊₁²)/12 · 2(1 − cos θ)/h̄²
//!
//! These are the stretch and the bending of a thin sheet of revolution without sideways contraction (Timoshenko and
//! Woinowsky-Krieger, Theory of Plates and Shells, 2nd edition 1959, chapter 15, with Poisson's ratio 0): a bend costs D = t³/12
//! where a stretch costs t. The hoop's curvature is sin φ / ρ, φ the angle from the horizontal; for small bends
//! 2(1 − cos θ) is θ², and it stays smooth up to a fabric folded back on itself. f is 1, and [`HINGE`] at the foot of a
//! loop-only round. Parts that lie on a table are held level, which adds aₖ F ((zₖ − zₖ₋₁)/hₖ)².
//!
//! On a head, a round that would come to lie inside it by g adds aₖ [`HARD`] (g/R)², and the edge is drawn down, which adds
//! −[`PULL`] (2 aₑ/hₑ) zₑ: the edge round e by itself would stretch by that share.

use super::super::head::HeadForm;
use super::band::Band;
use super::findings::SHOWS;
use super::rest::{Rest, RestRound};
use crate::units::{TOLERANCE, TURN};

/// Stiffness of the joint under a loop-only round: one loop of two is half the fabric's thickness, and stiffness goes
/// with its third power.
pub(in crate::geometry) const HINGE: f64 = 1.0 / 8.0;

/// Weight F of lying on a table. A cone that lacks the share δ of the stitches of a flat disc stands at a slope of 2δ squared;
/// held flat it costs δ²/2 in stretch. Held level by δ/4 or more it is better off flat, so half of the share that shows
/// lays flat everything that lacks less; parts that lack more cup in spite of it and aren't held.
pub(in crate::geometry) const BLOCKING: f64 = SHOWS / 2.0;

/// How much harder a head is than fabric: rounds stretched by a tenth sink into it by less than a hundredth of a mm.
const HARD: f64 = 1e4;
/// By how much a hat stretches that is drawn on lightly: about what hangs by its own weight (from feel: a hat of 60 g, and
/// fabric of which 1 cm gives a tenth under 100 g).
const PULL: f64 = 0.001;

type Vec2 = [f64; 2];
type Mat2 = [[f64; 2]; 2];

/// The energy of one piece of fabric.
#[derive(Clone, Debug)]
pub(super) struct Energy {
    start: f64,
    rounds: Vec<Term>,
    joints: Vec<f64>,
    on: Option<On>,
}

/// What a hat is drawn on.
#[derive(Clone, Copy, Debug)]
struct On {
    head: HeadForm,
    /// Unknown that the pull draws down, and what a mm of it gains.
    edge: usize,
    pull: f64,
}

#[derive(Clone, Copy, Debug)]
struct Term {
    share: f64,
    around: f64,
    height: f64,
    /// Weight against a rise: what bending round the axis costs, and the table.
    level: f64,
}

/// Value, slope and curvature at one shape.
#[derive(Clone, Debug)]
pub(super) struct Local {
    /// The slope, two entries a round.
    pub(super) slope: Vec<f64>,
    /// The curvature.
    pub(super) curvature: Band,
}

impl Energy {
    pub(super) fn of(rest: &Rest) -> Self {
        let total: f64 = rest.rounds.iter().map(|round| round.area()).sum();
        let rounds: Vec<Term> = rest
            .rounds
            .iter()
            .map(|round| {
                let share = round.area() / total;
                let held = if round.blocked { BLOCKING } else { 0.0 };
                let hoop = stiffness(round) / (round.middle * round.middle);
                let level = share * (held + hoop) / (round.height * round.height);
                Term { share, around: round.around, height: round.height, level }
            })
            .collect();
        let joints = rest.rounds.windows(2).map(|pair| joint(pair, total)).collect();
        Self { start: rest.start, rounds, joints, on: None }
    }

    /// The same drawn on a head whose top touches the middle of the start, by round `edge`, counted from 0.
    pub(super) fn on(self, head: HeadForm, edge: usize) -> Self {
        let pull = self.rounds.get(edge).map_or(0.0, |term| 2.0 * PULL * term.share / term.height);
        Self { on: Some(On { head, edge: 2 * edge + 1, pull }), ..self }
    }

    /// Edge of round `k`, from 1; 0 is the ring.
    fn point(&self, x: &[f64], k: usize) -> Vec2 {
        if k == 0 { [self.start, 0.0] } else { [x[2 * k - 2], x[2 * k - 1]] }
    }

    /// Length and direction of round `k`, from 1.
    fn slant(&self, x: &[f64], k: usize) -> (f64, Vec2) {
        let (foot, edge) = (self.point(x, k - 1), self.point(x, k));
        let (dr, dz) = (edge[0] - foot[0], edge[1] - foot[1]);
        let length = (dr * dr + dz * dz).sqrt();
        // A round without length points outward; a millionth of a round keeps the curvature finite.
        let least = TOLERANCE * self.rounds[k - 1].height;
        if length > least { (length, [dr / length, dz / length]) } else { (least, [1.0, 0.0]) }
    }

    /// The energy at a shape.
    pub(super) fn value(&self, x: &[f64]) -> f64 {
        let mut sum = 0.0;
        let mut before: Option<Vec2> = None;
        for (i, term) in self.rounds.iter().enumerate() {
            let (length, way) = self.slant(x, i + 1);
            let (hoop, slant) = (TURN * x[2 * i] / term.around - 1.0, length / term.height - 1.0);
            sum += term.share * (hoop * hoop + slant * slant);
            let rise = self.point(x, i + 1)[1] - self.point(x, i)[1];
            sum += term.level * rise * rise;
            sum += self.inside(x, i).map_or(0.0, |(depth, weight, _)| weight * depth * depth);
            if let Some(inner) = before {
                sum += self.joints[i - 1] * (1.0 - dot(inner, way));
            }
            before = Some(way);
        }
        let drawn = self.on.and_then(|on| Some(on.pull * x.get(on.edge)?));
        sum - drawn.unwrap_or(0.0)
    }

    /// How far round `i`, counted from 0, lies inside the head, below nought, with what the square of that costs and the way out.
    fn inside(&self, x: &[f64], i: usize) -> Option<(f64, f64, Vec2)> {
        let head = self.on?.head;
        let (outside, way) = head.outside([x[2 * i], x[2 * i + 1]]);
        let weight = HARD * self.rounds[i].share / (head.widest() * head.widest());
        (outside < 0.0).then_some((outside, weight, way))
    }

    /// Stiffness of every unknown by stretch alone; the measure in which steps are damped.
    pub(super) fn stiffness(&self) -> Vec<f64> {
        let each = self.rounds.iter().flat_map(|term| {
            let (hoop, slant) = (TURN / term.around, 1.0 / term.height);
            [2.0 * term.share * (hoop * hoop + slant * slant); 2]
        });
        each.collect()
    }

    /// Slope and curvature at a shape.
    pub(super) fn local(&self, x: &[f64]) -> Local {
        let mut local = Local { slope: vec![0.0; x.len()], curvature: Band::zero(x.len()) };
        for (i, term) in self.rounds.iter().enumerate() {
            let per_mm = TURN / term.around;
            local.slope[2 * i] += 2.0 * term.share * (per_mm * x[2 * i] - 1.0) * per_mm;
            local.curvature.add(2 * i, 2 * i, 2.0 * term.share * per_mm * per_mm);
            self.stretch(x, i + 1, term, &mut local);
            self.block(x, i + 1, term, &mut local);
            if i > 0 && self.joints[i - 1] > 0.0 {
                self.bend(x, i, self.joints[i - 1], &mut local);
            }
            if let Some((depth, weight, way)) = self.inside(x, i) {
                let ends = [(i + 1, 1.0), (0, 0.0)];
                let force = 2.0 * weight * depth;
                local.add_slope([force * way[0], force * way[1]], &ends);
                local.add_curvature(&mat(|a, b| 2.0 * weight * way[a] * way[b]), &ends, &ends);
            }
        }
        if let Some(slope) = self.on.and_then(|on| Some((on.pull, local.slope.get_mut(on.edge)?))) {
            *slope.1 -= slope.0;
        }
        local
    }

    /// a (l/h − 1)² of round `k`.
    fn stretch(&self, x: &[f64], k: usize, term: &Term, local: &mut Local) {
        let (length, u) = self.slant(x, k);
        let per_mm = 1.0 / term.height;
        let force = 2.0 * term.share * (length * per_mm - 1.0) * per_mm;
        let along = 2.0 * term.share * per_mm * per_mm;
        let across = force / length;
        let second = mat(|a, b| along * u[a] * u[b] + across * (unit(a, b) - u[a] * u[b]));
        local.add_slope([force * u[0], force * u[1]], &[(k, 1.0), (k - 1, -1.0)]);
        local.add_curvature(&second, &[(k, 1.0), (k - 1, -1.0)], &[(k, 1.0), (k - 1, -1.0)]);
    }

    /// level (z − z')² of round `k`.
    fn block(&self, x: &[f64], k: usize, term: &Term, local: &mut Local) {
        let rise = self.point(x, k)[1] - self.point(x, k - 1)[1];
        let ends = [(k, 1.0), (k - 1, -1.0)];
        local.add_slope([0.0, 2.0 * term.level * rise], &ends);
        local.add_curvature(&[[0.0, 0.0], [0.0, 2.0 * term.level]], &ends, &ends);
    }

    /// weight · (1 − u·v) of the joint between rounds `k` and `k + 1`.
    fn bend(&self, x: &[f64], k: usize, weight: f64, local: &mut Local) {
        let ((l1, u), (l2, v)) = (self.slant(x, k), self.slant(x, k + 1));
        let c = dot(u, v);
        let p = [v[0] - c * u[0], v[1] - c * u[1]];
        let q = [u[0] - c * v[0], u[1] - c * v[1]];
        let (inner, outer) = ([(k, 1.0), (k - 1, -1.0)], [(k + 1, 1.0), (k, -1.0)]);
        local.add_slope([-weight * p[0] / l1, -weight * p[1] / l1], &inner);
        local.add_slope([-weight * q[0] / l2, -weight * q[1] / l2], &outer);
        let own = |d: Vec2, p: Vec2, l: f64| {
            mat(|a, b| weight * (d[a] * p[b] + p[a] * d[b] + c * (unit(a, b) - d[a] * d[b])) / (l * l))
        };
        let cross = mat(|a, b| -weight * (unit(a, b) - v[a] * v[b] - u[a] * q[b]) / (l1 * l2));
        let turned = mat(|a, b| cross[b][a]);
        local.add_curvature(&own(u, p, l1), &inner, &inner);
        local.add_curvature(&own(v, q, l2), &outer, &outer);
        local.add_curvature(&cross, &inner, &outer);
        local.add_curvature(&turned, &outer, &inner);
    }
}

/// Weight of the joint between two rounds of a fabric of so much area: next to none where the outer one folds.
fn joint(pair: &[RestRound], total: f64) -> f64 {
    let [inner, outer] = pair else { return 0.0 };
    let height = (inner.height + outer.height) / 2.0;
    let stiff = inner.area() * stiffness(inner) + outer.area() * stiffness(outer);
    let free = if outer.folds { HINGE } else { 1.0 };
    free * stiff / (height * height * total)
}

type Ends = [(usize, f64); 2];

impl Local {
    /// Adds a slope by a round's vector to its two ends. Point 0 is the ring and doesn't move.
    fn add_slope(&mut self, by: Vec2, ends: &Ends) {
        for &(point, sign) in ends.iter().filter(|end| end.0 > 0) {
            self.slope[2 * point - 2] += sign * by[0];
            self.slope[2 * point - 1] += sign * by[1];
        }
    }

    fn add_curvature(&mut self, by: &Mat2, rows: &Ends, columns: &Ends) {
        for &(row, row_sign) in rows.iter().filter(|end| end.0 > 0) {
            for &(column, column_sign) in columns.iter().filter(|end| end.0 > 0) {
                for (a, line) in by.iter().enumerate() {
                    for (b, value) in line.iter().enumerate() {
                        self.curvature.add(2 * row - 2 + a, 2 * column - 2 + b, row_sign * column_sign * value);
                    }
                }
            }
        }
    }
}

/// t²/12: what a curvature costs against a stretch, mm².
fn stiffness(round: &RestRound) -> f64 {
    round.thick * round.thick / 12.0
}

fn dot(a: Vec2, b: Vec2) -> f64 {
    a[0] * b[0] + a[1] * b[1]
}

fn unit(a: usize, b: usize) -> f64 {
    if a == b { 1.0 } else { 0.0 }
}

fn mat(entry: impl Fn(usize, usize) -> f64) -> Mat2 {
    [[entry(0, 0), entry(0, 1)], [entry(1, 0), entry(1, 1)]]
}
