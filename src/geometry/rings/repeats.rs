//! How often a piece repeats itself round the ring.

use crate::craft::Op;
use crate::plan::SizePlan;
use crate::units::gcd;

/// Into how many equal shares every round of a size can be cut, each share worked the same; 1 where there is none.
/// A round that begins further on than the one below is not cut. Linear in the stitches.
pub fn repeats(size: &SizePlan) -> u32 {
    // Slip stitches turn each round against the last: no straight cut meets the start of every repeat.
    if size.rounds.iter().any(|round| round.slipped > 0) {
        return 1;
    }
    // The few lower stitches over which a spiral rises are no pattern.
    let plain = usize::from(size.rises());
    let rise = size.rounds.first().map_or(0, |first| first.after * plain as u32);
    size.rounds.iter().skip(plain).fold(rise, |all, round| gcd(all.into(), times(&round.ops).into()) as u32).max(1)
}

/// How often the shortest pattern that makes up the operations is worked: the failure function of Knuth, Morris and
/// Pratt gives the longest part that is both a beginning and an end, and what it leaves is the shortest period.
fn times(ops: &[Op]) -> u32 {
    let mut border = vec![0_usize; ops.len()];
    let mut length = 0;
    for i in 1..ops.len() {
        while length > 0 && ops[i] != ops[length] {
            length = border[length - 1];
        }
        if ops[i] == ops[length] {
            length += 1;
        }
        border[i] = length;
    }
    let period = ops.len() - border.last().copied().unwrap_or(0);
    if period > 0 && ops.len().is_multiple_of(period) { (ops.len() / period) as u32 } else { 1 }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::craft::Stitch;

    #[test]
    fn the_shortest_pattern_counts() {
        let (plain, inc) = (Op::plain(Stitch::SC), Op::increase(Stitch::SC, 2));
        assert_eq!(times(&vec![plain.clone(); 7]), 7);
        assert_eq!(times(&[plain.clone(), inc.clone(), plain.clone(), inc.clone()]), 2);
        assert_eq!(times(&[plain.clone(), inc, plain]), 1);
        assert_eq!(times(&[]), 1);
    }
}
