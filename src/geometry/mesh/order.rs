//! The order in which unknowns are eliminated: nested dissection by where the stitches lie.
//!
//! A net of n stitches, eliminated half by half with the seam between the halves last, fills in about n log n entries;
//! in working order it would fill in n times the stitches of a round.

/// A stitch on the unrolled net.
#[derive(Clone, Copy, Debug)]
pub(super) struct Spot {
    /// Index of its unknown.
    pub(super) index: usize,
    /// Its round, as a number.
    pub(super) row: f64,
    /// Angle along the work, a turn being 1.
    pub(super) turn: f64,
    /// Stitches of its round.
    pub(super) count: f64,
}

/// Fewer are not worth halving.
const FEW: usize = 24;

/// Half the breadth of a seam, in rounds or stitches: a bend reaches over two of them.
const REACH: f64 = 1.1;

/// All indices, in the order of elimination.
pub(super) fn dissect(spots: &[Spot]) -> Vec<usize> {
    // The net closes on itself: it is cut open first, so the cut comes last.
    let (cut, open): (Vec<Spot>, Vec<Spot>) =
        spots.iter().partition(|spot| spot.turn.min(1.0 - spot.turn) * spot.count < REACH);
    let mut order = Vec::with_capacity(spots.len());
    halve(open, &mut order);
    halve(cut, &mut order);
    order
}

fn halve(mut spots: Vec<Spot>, order: &mut Vec<usize>) {
    if spots.len() <= FEW {
        order.extend(spots.iter().map(|spot| spot.index));
        return;
    }
    let span = |value: &dyn Fn(&Spot) -> f64| {
        let (least, most) = spots
            .iter()
            .map(value)
            .fold((f64::INFINITY, f64::NEG_INFINITY), |(least, most), v| (least.min(v), most.max(v)));
        most - least
    };
    let widest = spots.iter().map(|spot| spot.count).fold(0.0, f64::max);
    let upright = span(&|spot| spot.row) > span(&|spot| spot.turn) * widest;
    let key = |spot: &Spot| if upright { spot.row } else { spot.turn };
    spots.sort_by(|a, b| key(a).total_cmp(&key(b)).then(a.index.cmp(&b.index)));
    let middle = key(&spots[spots.len() / 2]);
    let (mut low, mut high, mut seam) = (Vec::new(), Vec::new(), Vec::new());
    for spot in spots {
        let off = if upright { spot.row - middle } else { (spot.turn - middle) * spot.count };
        match off {
            off if off.abs() < REACH => seam.push(spot),
            off if off < 0.0 => low.push(spot),
            _ => high.push(spot),
        }
    }
    if low.is_empty() || high.is_empty() {
        order.extend(low.iter().chain(&high).chain(&seam).map(|spot| spot.index));
        return;
    }
    halve(low, order);
    halve(high, order);
    order.extend(seam.iter().map(|spot| spot.index));
}
