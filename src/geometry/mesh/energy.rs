//! The energy of a net in space, and its slope.
//!
//! With w and h the width and height of a stitch at rest, a its share of the area against the mean, T the direction of
//! the work at a post, d the way from foot to head, l = d·T its lean and H its length square to the work:
//!
//! E = Σ a (|cᵢ₊₁ − cᵢ|/w − 1)² + Σ a [ (H/h − 1)² + S ((l − l₀)/w)² ] + Σ a B [ κ² + f (θ w/h)² ]
//!
//! What a post leans doesn't lower the round: its height is measured square to the work, as a swatch is, and the lean
//! is shear. Height is measured against the direction of the work on both sides of a post together; lean on either side
//! by itself, half each, since the mean of the two would not see a round that zigzags. On a disc the work turns by π/n on
//! either side, and a post that stands straight seems to lean by that: l₀ allows for it. κ are second differences along
//! the round in stitch widths, θ angles between the posts of a column, each a stiff rod: both along the normal of the
//! fabric alone, since a fabric curves freely in its own plane. B is t²/12w² for a sheet of thickness t, f the stiffness of
//! a hinge and 1 elsewhere. Rounds that lie on a table are held level. All three are as in the shape of revolution.
//!
//! On a head, what would come to lie inside it by g adds a [`HARD`] (g/w)², and the heads of the edge are drawn to the level
//! where the edge of the body of revolution sits: a [`DRAWN`] (z/h)². A filling holds heads at the distances ρ from the axis
//! that the body of revolution has there: [`FIRM`] ((r − ρ)/w)².

use nalgebra_sparse::na::Vector3;

use super::Fabric;
use super::net::Net;
use crate::geometry::shape::{BLOCKING, HINGE, Rest};
use crate::geometry::{HeadForm, RoundShape, SideShape};
use crate::units::{Angle, TURN, hypot};

/// A place or a way in space, mm.
pub type Vec3 = Vector3<f64>;

/// The energy of one net.
#[derive(Clone, Debug)]
pub(super) struct Energy {
    hoops: Vec<Hoop>,
    posts: Vec<Post>,
    bends: Vec<Bend>,
    on: Option<On>,
    /// Of what is filled: heads, how far the filling holds them from the axis, and with what weight.
    filled: Vec<(usize, f64, f64)>,
}

/// What a hat is drawn on.
#[derive(Clone, Debug)]
struct On {
    form: HeadForm,
    /// Weight of every head over the square of its width.
    hard: Vec<f64>,
    /// Heads of the edge with the levels that they are drawn to, each with its weight over the square of its height.
    edge: Vec<(usize, f64, f64)>,
}

#[derive(Clone, Copy, Debug)]
struct Hoop {
    ends: [usize; 2],
    length: f64,
    weight: f64,
}

#[derive(Clone, Debug)]
struct Post {
    head: usize,
    on: std::ops::Range<usize>,
    /// Neighbours of the head, then of the foot: before and after.
    along: [usize; 4],
    height: f64,
    width: f64,
    lean: f64,
    /// Weights of its height and of its lean.
    weight: f64,
    shear: f64,
    /// Weight with which it is held level, against that of its height.
    level: f64,
}

/// The second difference of three points on a line of the fabric, along the normal at the middle one.
#[derive(Clone, Copy, Debug)]
struct Bend {
    /// First, middle and last point.
    points: [usize; 3],
    /// One over the ways between them.
    per: [f64; 2],
    /// Ends of two ways in the fabric, whose cross product is the normal.
    along: [usize; 2],
    up: [usize; 2],
    weight: f64,
}

/// How much harder a head is than fabric: rounds stretched by a tenth sink into it by less than a hundredth of a mm.
const HARD: f64 = 10.0;

/// Weight with which the edge of a hat is drawn on.
const DRAWN: f64 = 0.1;

/// Weight with which a filling holds a fabric out: as firmly as stitches hold together.
const FIRM: f64 = 1.0;

/// Weight with which lace is held level.
const PINNED: f64 = 4.0;

/// The rows of a symmetric matrix: of each the columns that hold something, in order, with what they hold.
pub(super) type Rows = Vec<Vec<(usize, f64)>>;

/// Parts of a residual that change it by less than this share of what its largest can are left out of the stiffness, since
/// most of them stand square to the moves in question: of moves along the work and up the column, and of moves across. Those
/// are what a fabric bends by, and what stretches it where it is curved is small against what bends it: without the small
/// parts the search takes three times as many steps.
pub(super) const SMALL: [f64; 2] = [0.12, 0.01];

/// What a residual changes by when a point moves.
type Part = (usize, Vec3);

/// An energy and its slope, while it is added up.
struct Sum {
    energy: f64,
    slope: Vec<Vec3>,
}

impl Sum {
    fn of(points: usize) -> Self {
        Self { energy: 0.0, slope: vec![Vec3::zeros(); points] }
    }

    fn add(&mut self, value: f64, weight: f64, parts: &[Part]) {
        self.energy += weight * value * value;
        let by = 2.0 * weight * value;
        parts.iter().for_each(|(at, part)| self.slope[*at] += part * by);
    }
}

impl Energy {
    pub(super) fn of(net: &Net, rest: &Rest, body: &SideShape, fabric: &Fabric, pinned: bool) -> Self {
        let area = |at: usize| (net.heads[at].width * net.heads[at].height).max(1e-6);
        let own = net.ring.end..net.heads.len();
        let mean = own.clone().map(area).sum::<f64>() / own.len().max(1) as f64;
        let share = |at: usize| area(at) / mean;
        let bending = |at: usize| {
            let head = &net.heads[at];
            let round = head.round.and_then(|round| rest.rounds.get(round));
            let thickness = round.map_or(head.stitch.row().thickness, |round| round.thick / round.width);
            fabric.bending * thickness * thickness / 12.0
        };
        let mut energy = Self { hoops: Vec::new(), posts: Vec::new(), bends: Vec::new(), on: None, filled: Vec::new() };
        let turns = turns(net, body);
        for (at, head) in net.heads.iter().enumerate() {
            // Of a small ring the chords are shorter than the arcs.
            let count = head.round.map_or(net.ring.len(), |round| net.rounds[round].len()).max(3) as f64;
            let half = Angle::from_radians(TURN / 2.0 / count);
            let chord = half.sin() / half.radians();
            if let Some(after) = head.after {
                let length = chord * (head.width + net.heads[after].width) / 2.0;
                let weight = if head.round.is_none() { 1.0 } else { share(at) };
                energy.hoops.push(Hoop { ends: [at, after], length, weight });
            }
            let Some(round) = head.round else { continue };
            let blocked = rest.rounds.get(round).is_some_and(|round| round.blocked);
            for foot in &head.feet {
                let middle = (foot.on.start + foot.on.end.max(1) - 1) / 2;
                let side = |at: usize| {
                    let head = &net.heads[at];
                    [head.before.unwrap_or(at), head.after.unwrap_or(at)]
                };
                let ([a, b], [c, d]) = (side(at), side(middle));
                let weight = share(at) / head.feet.len() as f64;
                let half = weight * fabric.shear * net.stands(round) / 2.0;
                let turn = turns.get(round).copied().unwrap_or(0.0);
                // A post that leans on a disc is longer than the round is high, by the bend of the round along its lean;
                // by shaping nearby every post leans up to half a stitch.
                let bent = 2.0 * turn / (head.height * head.width).max(1e-9);
                let lean = foot.lean * foot.lean + head.width * head.width / 12.0;
                let height = head.height * (1.0 - bent * bent * lean / 8.0).max(0.5);
                let sides = [
                    ([a, b, c, d], (weight, 0.0), 0.0),
                    ([a, at, c, middle], (0.0, half), turn),
                    ([at, b, middle, d], (0.0, half), -turn),
                ];
                for (along, (weight, shear), turn) in sides {
                    energy.posts.push(Post {
                        head: at,
                        on: foot.on.clone(),
                        along,
                        height,
                        width: head.width,
                        lean: foot.lean + turn,
                        weight,
                        shear,
                        level: if pinned {
                            PINNED
                        } else if blocked {
                            BLOCKING
                        } else {
                            0.0
                        },
                    });
                }
            }
            energy.bend(net, rest, (at, round), share(at) * bending(at));
        }
        energy
    }

    /// The same drawn on a head whose top is at nought, its edge to `levels`, a head of the net each with its z.
    pub(super) fn drawn_on(self, net: &Net, form: HeadForm, levels: &[(usize, f64)]) -> Self {
        let per = |weight: f64, length: f64| weight / (length * length).max(1e-9);
        let hard = net.heads.iter().map(|head| per(HARD, if head.round.is_some() { head.width } else { head.height }));
        let edge = levels.iter().map(|(at, level)| (*at, *level, per(DRAWN, net.heads[*at].height)));
        Self { on: Some(On { form, hard: hard.collect(), edge: edge.collect() }), ..self }
    }

    /// The same with a filling that holds heads of the net at their distances from the axis.
    pub(super) fn filled(self, net: &Net, reaches: &[(usize, f64)]) -> Self {
        let weight = |at: usize| FIRM / (net.heads[at].width * net.heads[at].width).max(1e-9);
        Self { filled: reaches.iter().map(|(at, reach)| (*at, *reach, weight(*at))).collect(), ..self }
    }

    /// The bends at a head: along its round, and in the columns through its feet.
    fn bend(&mut self, net: &Net, rest: &Rest, (at, round): (usize, usize), weight: f64) {
        let head = &net.heads[at];
        let single = |at: usize| match &net.heads[at].feet[..] {
            [foot] if foot.on.len() == 1 => Some(foot.on.start),
            _ => None,
        };
        if let (Some(before), Some(after), Some(foot)) = (head.before, head.after, single(at)) {
            let per = 1.0 / head.width;
            let (along, up) = ([before, after], [foot, at]);
            self.bends.push(Bend { points: [before, at, after], per: [per, per], along, up, weight });
        }
        let folds = rest.rounds.get(round).is_some_and(|round| round.folds);
        let Some(middle) = single(at) else { return };
        let (Some(foot), Some(before), Some(after)) =
            (single(middle), net.heads[middle].before, net.heads[middle].after)
        else {
            return;
        };
        let (upper, lower) = (head.height, net.heads[middle].height);
        let along = [before, after];
        let (points, up) = ([foot, middle, at], [foot, at]);
        let over = 2.0 * head.width / (upper + lower);
        let weight = weight * over * over * if folds { HINGE } else { 1.0 };
        self.bends.push(Bend { points, per: [1.0 / lower, 1.0 / upper], along, up, weight });
    }

    /// Calls `with` with every residual: its value, its weight, and what it changes by when points move.
    fn residuals(&self, x: &[Vec3], with: &mut impl FnMut(f64, f64, &[Part])) {
        self.threads(x, with);
        Self::leans(&self.posts, x, with);
    }

    /// The residuals of what runs along the rounds and of the bends.
    fn threads(&self, x: &[Vec3], with: &mut impl FnMut(f64, f64, &[Part])) {
        for hoop in &self.hoops {
            let [a, b] = hoop.ends;
            let way = x[b] - x[a];
            let length = way.norm().max(1e-9);
            let per = way / (length * hoop.length);
            with(length / hoop.length - 1.0, hoop.weight, &[(a, -per), (b, per)]);
        }
        for bend in &self.bends {
            bend.residual(x, with);
        }
        if let Some(on) = &self.on {
            on.residuals(x, with);
        }
        for (at, reach, weight) in &self.filled {
            let (p, far) = (x[*at], hypot(x[*at].x, x[*at].y));
            let out = if far > 1e-9 { 1.0 / far } else { 0.0 };
            with(far - reach, *weight, &[(*at, Vec3::new(p.x * out, p.y * out, 0.0))]);
        }
    }

    /// The residuals of posts.
    fn leans(posts: &[Post], x: &[Vec3], with: &mut impl FnMut(f64, f64, &[Part])) {
        let mut parts = Vec::new();
        for post in posts {
            post.residuals(x, &mut parts, with);
        }
    }

    /// The energy at a shape, and its slope. Summed in three shares of about one size, always the same ones: so the sum
    /// is the same on any number of cores.
    pub(super) fn at(&self, x: &[Vec3]) -> (f64, Vec<Vec3>) {
        let (early, late) = self.posts.split_at(self.posts.len() / 2);
        let posts = |posts: &[Post]| {
            let mut sum = Sum::of(x.len());
            Self::leans(posts, x, &mut |value, weight, parts| sum.add(value, weight, parts));
            sum
        };
        let threads = || {
            let mut sum = Sum::of(x.len());
            self.threads(x, &mut |value, weight, parts| sum.add(value, weight, parts));
            sum
        };
        let (mut all, (late, threads)) = rayon::join(|| posts(early), || rayon::join(|| posts(late), threads));
        let slopes = all.slope.iter_mut().zip(late.slope.iter().zip(&threads.slope));
        slopes.for_each(|(to, (late, threads))| *to += late + threads);
        (all.energy + late.energy + threads.energy, all.slope)
    }

    /// The curvature of the energy (by Gauss and Newton) for moves of every point along its own direction, the points
    /// in the places that `place` gives them, without what is smaller than a share of the largest. Summed as it comes: most
    /// of its terms fall on few entries.
    pub(super) fn stiffness(&self, x: &[Vec3], ways: &[Vec3], place: &[usize], small: f64) -> Rows {
        let mut rows: Rows = vec![Vec::new(); x.len()];
        let mut own: Vec<(usize, f64)> = Vec::new();
        self.residuals(x, &mut |_, weight, parts| {
            own.clear();
            own.extend(parts.iter().map(|(at, by)| (*at, by.dot(&ways[*at]))));
            let most = parts.iter().map(|(_, by)| by.norm_squared()).fold(0.0, f64::max).sqrt();
            own.retain(|(_, by)| by.abs() > small * most);
            for (i, a) in &own {
                let row = &mut rows[place[*i]];
                for (j, b) in &own {
                    let (column, value) = (place[*j], 2.0 * weight * a * b);
                    match row.binary_search_by_key(&column, |(column, _)| *column) {
                        Ok(at) => row[at].1 += value,
                        Err(at) => row.insert(at, (column, value)),
                    }
                }
            }
        });
        rows
    }
}

/// By how much a straight post of each round seems to lean against the work on one side of it, mm: the turn of the work,
/// half a stitch of the round and half a stitch of the one below, times what the round adds to the radius.
fn turns(net: &Net, body: &SideShape) -> Vec<f64> {
    let per = |count: usize| if count > 2 { TURN / 4.0 / count as f64 } else { 0.0 };
    let (mut reach, mut below) = (body.start.mm(), net.ring.len());
    let one = |(own, round): (&std::ops::Range<usize>, &RoundShape)| {
        let grown = round.radius.mm() - reach;
        let turn = if below > 2 { per(own.len()) + per(below) } else { 2.0 * per(own.len()) };
        (reach, below) = (round.radius.mm(), own.len());
        turn * grown
    };
    net.rounds.iter().zip(&body.rounds).map(one).collect()
}

impl Post {
    fn residuals(&self, x: &[Vec3], parts: &mut Vec<Part>, with: &mut impl FnMut(f64, f64, &[Part])) {
        let per = 1.0 / self.on.len().max(1) as f64;
        let d = x[self.head] - x[self.on.clone()].iter().sum::<Vec3>() * per;
        let [a, b, p, q] = self.along;
        let along = x[b] - x[a] + x[q] - x[p];
        let length = along.norm();
        let (t, inverse) = if length > 1e-6 { (along / length, 1.0 / length) } else { (Vec3::zeros(), 0.0) };
        let lean = d.dot(&t);
        let square = d - t * lean;
        let mut tell = |value: f64, weight: f64, to_d: Vec3, to_t: Vec3| {
            parts.clear();
            parts.push((self.head, to_d));
            parts.extend(self.on.clone().map(|at| (at, -to_d * per)));
            parts.extend([(a, -to_t), (b, to_t), (p, -to_t), (q, to_t)]);
            with(value, weight, parts);
        };
        if self.weight > 0.0 {
            let height = square.norm().max(1e-9);
            let up = square / height;
            let strain = height / self.height - 1.0;
            tell(strain, self.weight, up / self.height, up * (-lean * inverse / self.height));
        }
        if self.shear > 0.0 {
            let shear = (lean - self.lean) / self.width;
            tell(shear, self.shear, t / self.width, square * (inverse / self.width));
        }
        if self.level > 0.0 {
            let rise = Vec3::new(0.0, 0.0, 1.0 / self.height);
            tell(d.z / self.height, self.weight * self.level, rise, Vec3::zeros());
        }
    }
}

impl On {
    fn residuals(&self, x: &[Vec3], with: &mut impl FnMut(f64, f64, &[Part])) {
        for (at, (p, weight)) in x.iter().zip(&self.hard).enumerate() {
            let far = hypot(p.x, p.y);
            let (outside, [out, down]) = self.form.outside([far, p.z]);
            if outside < 0.0 {
                let out = if far > 1e-9 { out / far } else { 0.0 };
                with(outside, *weight, &[(at, Vec3::new(p.x * out, p.y * out, down))]);
            }
        }
        for (at, level, weight) in &self.edge {
            with(x[*at].z - level, *weight, &[(*at, Vec3::z())]);
        }
    }
}

impl Bend {
    fn residual(&self, x: &[Vec3], with: &mut impl FnMut(f64, f64, &[Part])) {
        let ([a, b, c], [p, q]) = (self.points, self.per);
        let e = (x[c] - x[b]) * q - (x[b] - x[a]) * p;
        let along = x[self.along[1]] - x[self.along[0]];
        let up = x[self.up[1]] - x[self.up[0]];
        let normal = along.cross(&up);
        let size = normal.norm();
        if size < 1e-9 {
            return;
        }
        let n = normal / size;
        let bend = e.dot(&n);
        let g = (e - n * bend) / size;
        let (to_along, to_up) = (up.cross(&g), g.cross(&along));
        let parts = [
            (a, n * p),
            (b, n * (-p - q)),
            (c, n * q),
            (self.along[1], to_along),
            (self.along[0], -to_along),
            (self.up[1], to_up),
            (self.up[0], -to_up),
        ];
        with(bend, self.weight, &parts);
    }
}
