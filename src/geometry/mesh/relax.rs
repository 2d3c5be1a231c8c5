//! The search for the net of least energy: a quasi-Newton method (L-BFGS) whose first guess at the curvature is factored
//! once for many steps.
//!
//! The fabric is stiff along the round and up the column and soft across. So the guess is three matrices, one for moves
//! in each of these directions at every stitch; between them the three leave out only what couples the directions, and
//! the last few steps tell of that. A step is taken only where it lowers the energy. The factorisation is
//! nalgebra-sparse's Cholesky: plain loops, whose arithmetic is the same on every processor.

use std::collections::VecDeque;

use nalgebra_sparse::CscMatrix;
use nalgebra_sparse::factorization::CscCholesky;
use rayon::prelude::*;

use super::energy::{Energy, Rows, SMALL, Vec3};
use super::net::Net;

/// Steps remembered.
const MEMORY: usize = 10;

/// Steps with one guess at the curvature.
const KEPT: usize = 60;

/// A net whose heads move less than this share of a stitch in a step is at rest.
const STILL: f64 = 2e-3;

/// So is one whose energy falls by less than a given share in so many steps: what still moves then are single stitches
/// that slide past one another.
const EVEN: usize = 5;

/// Nets of at most so many heads are factored in all directions at once.
const AT_ONCE: usize = 6000;

/// A stiffness so small that it only holds the net in its place.
const HOLD: f64 = 1e-4;

/// The directions of the fabric at every head: along the work, up the column, across.
struct Frames([Vec<Vec3>; 3]);

impl Frames {
    fn of(net: &Net, x: &[Vec3]) -> Self {
        let mut frames = [vec![Vec3::x(); x.len()], vec![Vec3::y(); x.len()], vec![Vec3::z(); x.len()]];
        let mut above = vec![None; x.len()];
        for (at, head) in net.heads.iter().enumerate() {
            head.feet.iter().for_each(|foot| above[foot.on.start] = Some(at));
        }
        for (at, head) in net.heads.iter().enumerate() {
            let along = x[head.after.unwrap_or(at)] - x[head.before.unwrap_or(at)];
            let up = x[above[at].unwrap_or(at)] - x[head.feet.first().map_or(at, |foot| foot.on.start)];
            let Some(t) = along.try_normalize(1e-9) else { continue };
            let Some(u) = (up - t * up.dot(&t)).try_normalize(1e-9) else { continue };
            (frames[0][at], frames[1][at], frames[2][at]) = (t, u, t.cross(&u));
        }
        Self(frames)
    }
}

struct Guess<'a> {
    order: &'a [usize],
    frames: Frames,
    factors: [Lower; 3],
}

/// A lower triangular factor by columns, of each its diagonal first, packed to half of the room that it is computed in:
/// reading it is most of the time of a step.
struct Lower {
    starts: Vec<usize>,
    rows: Vec<u32>,
    values: Vec<f64>,
}

impl Lower {
    fn of(matrix: &CscMatrix<f64>) -> Option<Self> {
        let (starts, rows, values) = CscCholesky::factor(matrix).ok()?.take_l().disassemble();
        let rows = rows.into_iter().map(u32::try_from).collect::<Result<_, _>>().ok()?;
        Some(Self { starts, rows, values })
    }

    /// The entries of a column.
    fn column(&self, at: usize) -> impl Iterator<Item = (usize, f64)> {
        let own = self.starts[at]..self.starts[at + 1];
        let rows = self.rows[own.clone()].iter().map(|row| *row as usize);
        rows.zip(self.values[own].iter().copied())
    }

    /// What, times this and times its transpose, is `right`; in place.
    fn solve(&self, right: &mut [f64]) {
        for at in 0..right.len() {
            let mut own = self.column(at);
            let Some((_, diagonal)) = own.next() else { continue };
            right[at] /= diagonal;
            let known = right[at];
            own.for_each(|(row, value)| right[row] -= value * known);
        }
        for at in (0..right.len()).rev() {
            let mut own = self.column(at);
            let Some((_, diagonal)) = own.next() else { continue };
            let below: f64 = own.map(|(row, value)| value * right[row]).sum();
            right[at] = (right[at] - below) / diagonal;
        }
    }
}

impl<'a> Guess<'a> {
    fn of(energy: &Energy, net: &Net, x: &[Vec3], order: &'a [usize], hold: f64) -> Option<Self> {
        let frames = Frames::of(net, x);
        let count = order.len();
        let mut place = vec![0; count];
        order.iter().enumerate().for_each(|(new, old)| place[*old] = new);
        let factor = |ways: &[Vec3], small: f64| Lower::of(&matrix(energy.stiffness(x, ways, &place, small), hold)?);
        let [along, up, across] = &frames.0;
        // The fullest first, while nothing else is held: a factor takes much room while it is made.
        let across = || factor(across, SMALL[1]);
        let (along, up) = (|| factor(along, SMALL[0]), || factor(up, SMALL[0]));
        let (across, (along, up)) =
            if count <= AT_ONCE { rayon::join(across, || rayon::join(along, up)) } else { (across(), (along(), up())) };
        Some(Self { order, frames, factors: [along?, up?, across?] })
    }

    fn solve(&self, right: &[Vec3]) -> Vec<Vec3> {
        let column = |(factor, ways): (&Lower, &Vec<Vec3>)| {
            let mut column: Vec<f64> = self.order.iter().map(|&at| right[at].dot(&ways[at])).collect();
            factor.solve(&mut column);
            column
        };
        let columns: Vec<Vec<f64>> = self.factors.par_iter().zip(&self.frames.0).map(column).collect();
        let mut solution = vec![Vec3::zeros(); right.len()];
        for (column, ways) in columns.iter().zip(&self.frames.0) {
            for (&at, by) in self.order.iter().zip(column) {
                solution[at] += ways[at] * *by;
            }
        }
        solution
    }
}

/// A symmetric matrix, so much added on its diagonal: its rows are its columns.
fn matrix(mut rows: Rows, hold: f64) -> Option<CscMatrix<f64>> {
    for (i, row) in rows.iter_mut().enumerate() {
        match row.binary_search_by_key(&i, |(column, _)| *column) {
            Ok(at) => row[at].1 += hold,
            Err(at) => row.insert(at, (i, hold)),
        }
    }
    let starts = rows.iter().scan(0, |end, row| {
        *end += row.len();
        Some(*end)
    });
    let starts = std::iter::once(0).chain(starts).collect();
    let (places, values) = rows.iter().flatten().copied().unzip();
    CscMatrix::try_from_csc_data(rows.len(), rows.len(), starts, places, values).ok()
}

fn dot(a: &[Vec3], b: &[Vec3]) -> f64 {
    a.iter().zip(b).map(|(a, b)| a.dot(b)).sum()
}

fn add(to: &mut [Vec3], by: &[Vec3], share: f64) {
    to.iter_mut().zip(by).for_each(|(to, by)| *to += by * share);
}

/// A step taken: the move, the change of the slope, and one over their product.
struct Step {
    moved: Vec<Vec3>,
    turned: Vec<Vec3>,
    per: f64,
}

/// Lets the net go from `x`, at most so many steps, until the energy is even to a share; `width` is that of a stitch.
pub(super) fn relax(
    energy: &Energy,
    net: &Net,
    x: &mut Vec<Vec3>,
    order: &[usize],
    width: f64,
    (steps, even): (usize, f64),
) {
    let (mut value, mut slope) = energy.at(x);
    let mut taken = 0;
    let mut fallen = VecDeque::from([value]);
    while taken < steps {
        let Some(guess) = Guess::of(energy, net, x, order, HOLD / (width * width)) else { return };
        let mut past: Vec<Step> = Vec::new();
        for _ in 0..KEPT {
            taken += 1;
            let way = downhill(&guess, &past, &slope);
            let along = dot(&way, &slope);
            if along >= 0.0 || !along.is_finite() {
                return;
            }
            let Some((next, to, lower)) = descend(energy, x, &way, value, along) else { return };
            let moved: Vec<Vec3> = next.iter().zip(x.iter()).map(|(next, x)| next - x).collect();
            let turned: Vec<Vec3> = to.iter().zip(&slope).map(|(to, slope)| to - slope).collect();
            let farthest = moved.iter().map(|moved| moved.norm_squared()).fold(0.0, f64::max).sqrt();
            let product = dot(&moved, &turned);
            if product > 1e-14 * dot(&moved, &moved).sqrt() * dot(&turned, &turned).sqrt() {
                past.push(Step { moved, turned, per: 1.0 / product });
            }
            if past.len() > MEMORY {
                past.remove(0);
            }
            (*x, slope, value) = (next, to, lower);
            fallen.push_back(value);
            let before = if fallen.len() > EVEN { fallen.pop_front() } else { None };
            if farthest < STILL * width || before.is_some_and(|before| before - value < even * value) {
                return;
            }
        }
    }
}

/// The way down by the slope, the guess and what the last steps have told of the curvature.
fn downhill(guess: &Guess<'_>, past: &[Step], slope: &[Vec3]) -> Vec<Vec3> {
    let mut q = slope.to_vec();
    let mut shares = Vec::with_capacity(past.len());
    for step in past.iter().rev() {
        let share = step.per * dot(&step.moved, &q);
        add(&mut q, &step.turned, -share);
        shares.push(share);
    }
    let mut way = guess.solve(&q);
    for (step, share) in past.iter().zip(shares.iter().rev()) {
        let back = step.per * dot(&step.turned, &way);
        add(&mut way, &step.moved, share - back);
    }
    way.iter_mut().for_each(|way| *way = -*way);
    way
}

/// The longest of ever shorter steps that lowers the energy enough: the new places, the energy and its slope.
fn descend(energy: &Energy, x: &[Vec3], way: &[Vec3], value: f64, along: f64) -> Option<(Vec<Vec3>, Vec<Vec3>, f64)> {
    let mut share = 1.0;
    while share > 1e-6 {
        let mut next = x.to_vec();
        add(&mut next, way, share);
        let (lower, slope) = energy.at(&next);
        if lower.is_finite() && lower <= value + 1e-4 * share * along {
            return Some((next, slope, lower));
        }
        share *= 0.4;
    }
    None
}
