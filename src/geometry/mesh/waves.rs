//! Waves of a round: how many it hangs in, and how high they are.

use std::ops::Range;

use super::energy::Vec3;
use crate::units::{Mm, hypot};

/// Waves of a round that ruffles, as it lies in space.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Waves {
    /// Number of the round.
    pub round: u32,
    /// How many there are once round.
    pub count: u32,
    /// From their troughs to their crests, on average.
    pub height: Mm,
}

/// What strays less than this share of what strays most is neither crest nor trough.
const STRAYS: f64 = 0.3;

/// Fewer are no waves: a round that leans has one.
const LEAST: u32 = 2;

/// The waves of a round whose heads are `own`, up and down or in and out, whichever is more; nothing where it has none
/// as high as a stitch is wide.
pub(super) fn waves(points: &[Vec3], own: &Range<usize>, round: u32, width: f64) -> Option<Waves> {
    let own = points.get(own.clone())?;
    let ways: [Vec<f64>; 2] = [own.iter().map(|p| p.z).collect(), own.iter().map(|p| hypot(p.x, p.y)).collect()];
    let found = ways.iter().filter_map(|way| crests(way));
    let (count, height) = found.max_by(|a, b| a.1.total_cmp(&b.1))?;
    (height >= width).then_some(Waves { round, count, height: Mm::new(height) })
}

/// How many crests there are once round, and how high above the troughs.
fn crests(values: &[f64]) -> Option<(u32, f64)> {
    let count = values.len();
    let mean = values.iter().sum::<f64>() / count.max(1) as f64;
    let most = values.iter().map(|value| (value - mean).abs()).fold(0.0, f64::max);
    let clear = |at: &usize| (values[at % count] - mean).abs() > STRAYS * most;
    let first = (0..count).find(clear)?;
    // Crests and troughs in turn, of each what strays most.
    let mut extremes: Vec<f64> = Vec::new();
    for at in (first..first + count).filter(clear) {
        let off = values[at % count] - mean;
        match extremes.last_mut() {
            Some(last) if *last * off > 0.0 => *last = if off.abs() > last.abs() { off } else { *last },
            _ => extremes.push(off),
        }
    }
    // The way closes: what it ends with may be what it began with.
    if extremes.len() % 2 == 1 && extremes.len() > 1 {
        let last = extremes.pop()?;
        extremes[0] = if last.abs() > extremes[0].abs() { last } else { extremes[0] };
    }
    let waves = extremes.len() as u32 / 2;
    let height = extremes.iter().map(|off| off.abs()).sum::<f64>() / f64::from(waves.max(1));
    (waves >= LEAST).then_some((waves, height))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::{Angle, TURN};

    /// Ninety stitches, 100 mm from the axis, that go up and down `waves` times by `high` mm and lean to one side.
    fn ring(waves: f64, high: f64, lean: f64) -> Vec<Vec3> {
        let one = |i: u32| {
            let turn = Angle::from_radians(TURN * f64::from(i) / 90.0);
            let z = high / 2.0 * (turn * waves).cos() + lean * turn.sin();
            Vec3::new(100.0 * turn.cos(), 100.0 * turn.sin(), z)
        };
        (0..90).map(one).collect()
    }

    #[test]
    fn waves_are_counted_and_measured() {
        for count in [2, 3, 5, 8, 11] {
            let found = waves(&ring(f64::from(count), 20.0, 0.5), &(0..90), 12, 6.0).expect("waves");
            assert_eq!((found.round, found.count), (12, count));
            assert!((found.height.mm() - 20.0).abs() < 1.0, "{count}: {:?}", found.height);
        }
    }

    #[test]
    fn what_leans_or_lies_flat_has_no_waves() {
        for ring in [ring(8.0, 0.0, 20.0), ring(8.0, 4.0, 0.0), Vec::new()] {
            assert_eq!(waves(&ring, &(0..ring.len()), 12, 6.0), None);
        }
    }
}
