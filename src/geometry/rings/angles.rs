//! Angles of one ring: least squares between parents and even spacing.

use super::radii::LEAST_WIDTH as FULL;
use crate::units::{EPSILON, TOLERANCE};

/// How stiff even spacing is against the pull of what a stitch stands on and of what stands on it, in a ring whose cells
/// are one stitch unit wide. The root of it is the number of stitches over which a crowded place is smoothed out.
const STIFFNESS: f64 = 0.5;

/// Pull of its even place on a stitch, so that what increases and decreases crowd or thin out is spread over the rounds
/// that follow.
const EASE: f64 = 0.15;

/// Share of its even gap that two neighbours may come closer where the ring is full.
const GIVE: f64 = 0.12;

/// Something that takes room on a ring.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Node {
    /// Room it takes, radians.
    pub(super) width: f64,
    /// Mean angle of what it stands on and of what stands on it.
    pub(super) ideal: Option<f64>,
    /// Weight of that angle.
    pub(super) pull: f64,
    /// Half of the cell at its edges, radians, of which some may be given away.
    pub(super) edge: f64,
}

impl Node {
    /// How hard it is held at its ideal angle; not at all where it has none.
    fn held(&self) -> f64 {
        if self.ideal.is_some() { self.pull } else { 0.0 }
    }
}

/// Angles of the middles of the nodes. The first node is the lane, which always has an ideal angle; widths add up to a turn.
/// `room` is the width of a cell in stitch units: where there is room to spare, spacing matters less and neighbours may
/// come as near as in a full ring.
///
/// With u the distance from even spacing and q the ideal one, Σ a (u − q)² + e Σ u² + b Σ (uᵢ₊₁ − uᵢ)² is least where
/// (a + e + 2b) uᵢ − b uᵢ₋₁ − b uᵢ₊₁ = a q, round the ring: a cyclic tridiagonal system.
pub(super) fn solve(nodes: &[Node], room: f64) -> Vec<f64> {
    let even = evenly(nodes);
    // The cyclic system needs three; two nodes have nothing to compromise on.
    if nodes.len() < 3 {
        return even;
    }
    // Even spacing matters where cells touch. With room to spare a stitch may as well stand right on its parent.
    let spare = room.max(1.0);
    let loose = 1.0 / (spare * spare);
    let (stiffness, ease) = (STIFFNESS * loose, EASE * loose);
    let diagonal: Vec<f64> = nodes.iter().map(|node| node.held() + ease + 2.0 * stiffness).collect();
    let forces = nodes.iter().zip(&even).map(|(node, even)| node.held() * (node.ideal.unwrap_or(*even) - even));
    let mut off = cyclic(&diagonal, -stiffness, &forces.collect::<Vec<_>>());
    // Roomy cells may give away all that a full ring would not have had.
    let give = GIVE.max(1.0 - FULL / room.max(TOLERANCE));
    keep_apart(&mut off, nodes, give);
    even.iter().zip(off).map(|(even, off)| even + off).collect()
}

/// Node after node, turned so that they lie as near their ideal angles as they can.
fn evenly(nodes: &[Node]) -> Vec<f64> {
    let mut edge = -nodes.first().map_or(0.0, |lane| lane.width / 2.0);
    let mut even = Vec::with_capacity(nodes.len());
    for node in nodes {
        even.push(edge + node.width / 2.0);
        edge += node.width;
    }
    let pulled = nodes.iter().zip(&even).filter_map(|(node, even)| Some((node.pull * (node.ideal? - even), node.pull)));
    let (sum, pull) = pulled.fold((0.0, 0.0), |(sum, pull), (one, own)| (sum + one, pull + own));
    // Even spacing leaves one freedom, its turn, and the weighted mean takes it.
    let turn = if pull > 0.0 { sum / pull } else { 0.0 };
    even.iter_mut().for_each(|angle| *angle += turn);
    even
}

/// Solves a symmetric cyclic tridiagonal system with equal off-diagonals: elimination without the two corners, then
/// Sherman and Morrison's correction for them.
fn cyclic(diagonal: &[f64], side: f64, right: &[f64]) -> Vec<f64> {
    let count = diagonal.len();
    let (Some(&first), Some(&last)) = (diagonal.first(), diagonal.last()) else { return Vec::new() };
    // Any number but zero would do; this one doubles the first pivot, so that nothing is lost to cancellation.
    let gamma = -first;
    let mut cut = diagonal.to_vec();
    cut[0] = first - gamma;
    cut[count - 1] = last - side * side / gamma;
    let mut corner = vec![0.0; count];
    corner[0] = gamma;
    corner[count - 1] = side;
    let plain = tridiagonal(&cut, side, right);
    let along = tridiagonal(&cut, side, &corner);
    let fact = (plain[0] + side * plain[count - 1] / gamma) / (1.0 + along[0] + side * along[count - 1] / gamma);
    plain.iter().zip(along).map(|(plain, along)| plain - fact * along).collect()
}

/// Thomas' elimination; the system is diagonally dominant, so no pivot is small.
fn tridiagonal(diagonal: &[f64], side: f64, right: &[f64]) -> Vec<f64> {
    let mut up = Vec::with_capacity(diagonal.len());
    let mut solution = Vec::with_capacity(diagonal.len());
    let (mut above, mut value) = (0.0, 0.0);
    for (i, (diagonal, right)) in diagonal.iter().zip(right).enumerate() {
        let below = if i == 0 { 0.0 } else { side };
        let pivot = diagonal - below * above;
        above = side / pivot;
        value = (right - below * value) / pivot;
        up.push(above);
        solution.push(value);
    }
    for i in (0..solution.len().saturating_sub(1)).rev() {
        solution[i] -= up[i] * solution[i + 1];
    }
    solution
}

/// Where two nodes came nearer than they may, moves them the least that parts them: pooled averages of the offsets with
/// what may be given away of the gaps, the share `give` of the cells at them, added up; the lane is held.
fn keep_apart(off: &mut [f64], nodes: &[Node], give: f64) {
    let Some((&start, lane)) = off.first().zip(nodes.first()) else { return };
    // slack[i]: what may be given away between the lane and node i.
    let mut slack = Vec::with_capacity(nodes.len());
    slack.push(0.0);
    let (mut most, mut edge) = (0.0, lane.edge);
    for node in nodes.iter().skip(1) {
        most += give * (edge + node.edge);
        slack.push(most);
        edge = node.edge;
    }
    most += give * (edge + lane.edge);
    let near = (1..off.len()).any(|i| off[i] + slack[i] < off[i - 1] + slack[i - 1] - EPSILON);
    let ends = off.last().is_some_and(|last| *last > start + most - slack[off.len() - 1]);
    // The usual case: nothing came too near, and the least squares stand as they are.
    if !near && !ends {
        return;
    }
    let mut pools: Vec<(f64, usize)> = Vec::new();
    for (i, offset) in off.iter().enumerate().skip(1) {
        // With the gaps taken off, offsets that must not fall: pooled neighbours share their mean until none does.
        let mut pool = (offset + slack[i], 1);
        while let Some(&(mean, count)) = pools.last() {
            if mean <= pool.0 {
                break;
            }
            pool = ((mean * count as f64 + pool.0 * pool.1 as f64) / (count + pool.1) as f64, count + pool.1);
            pools.pop();
        }
        pools.push(pool);
    }
    let held = pools.iter().flat_map(|(mean, count)| std::iter::repeat_n(*mean, *count));
    for (i, mean) in (1..off.len()).zip(held) {
        // The lane is held, so what runs into it from either side stops there.
        off[i] = mean.clamp(start, start + most) - slack[i];
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::TURN;

    fn ring(ideals: &[Option<f64>]) -> Vec<Node> {
        let width = TURN / (ideals.len() + 1) as f64;
        let lane = Node { width, ideal: Some(0.0), pull: 12.0, edge: 0.0 };
        let nodes = ideals.iter().map(|ideal| Node { width, ideal: *ideal, pull: 1.0, edge: width / 2.0 });
        std::iter::once(lane).chain(nodes).collect()
    }

    #[test]
    fn the_cyclic_system_is_solved() {
        let (diagonal, side) = ([5.0, 4.0, 6.0, 4.5, 5.5], -1.0);
        let right = [1.0, -2.0, 3.0, 0.5, 2.0];
        let x = cyclic(&diagonal, side, &right);
        for i in 0..5 {
            let got = diagonal[i] * x[i] + side * (x[(i + 4) % 5] + x[(i + 1) % 5]);
            assert!((got - right[i]).abs() < 1e-12, "row {i}: {got}");
        }
    }

    #[test]
    fn parents_in_even_places_are_stood_on() {
        let ideals: Vec<_> = (1..12).map(|i| Some(TURN * f64::from(i) / 12.0)).collect();
        for (i, angle) in solve(&ring(&ideals), 1.0).iter().enumerate() {
            assert!((angle - TURN * i as f64 / 12.0).abs() < 1e-9);
        }
    }

    #[test]
    fn neighbours_stay_apart_however_parents_crowd() {
        let crowd: Vec<_> = (0..40).map(|i| Some(if i % 7 == 0 { 6.0 } else { 0.3 })).collect();
        let nodes = ring(&crowd);
        let angles = solve(&nodes, FULL);
        for pair in angles.windows(2) {
            assert!(pair[1] - pair[0] >= (1.0 - GIVE) * nodes[0].width - 1e-9);
        }
        assert!(angles[0] + TURN - angles[40] >= (1.0 - GIVE) * nodes[0].width - 1e-9);
    }
}
