//! Windows of counts for every round, and whether the end can be reached at all.

use super::{Entry, FEWEST, Held, Task, Ways};

impl Task {
    /// For every round the lowest and the highest count no more than `far` tolerances off its band that the limits can
    /// get to, and no more than is allowed where that is held. A window with nothing in it has its lowest above its
    /// highest.
    pub(super) fn windows(&self, far: f64, held: Held) -> Vec<(u32, u32)> {
        let mut windows = self.reached();
        let last = self.bands.len().saturating_sub(1);
        for (round, (window, band)) in windows.iter_mut().zip(&self.bands).enumerate() {
            let holds = held == Held::All || held == Held::Edge && round == last;
            let allowed = self.allowed.get(round).copied().filter(|_| holds).unwrap_or(f64::INFINITY);
            let reach = (far * self.tolerance(round)).min(allowed);
            let lowest = (band.0 - reach).ceil().clamp(0.0, 1e9) as u32;
            let highest = (band.1 + reach).floor().clamp(0.0, 1e9) as u32;
            *window = (lowest.max(window.0).max(FEWEST), highest.min(window.1));
        }
        windows
    }

    /// Fewest and most stitches that the limits can get to in every round, whatever the targets.
    pub(in crate::plan) fn reached(&self) -> Vec<(u32, u32)> {
        let (mut within, given) = match self.entry {
            Entry::First { least, most } => ((least, most), 1),
            Entry::After { count, .. } => ((count, count), 0),
        };
        let mut reached = Vec::with_capacity(self.bands.len());
        for (round, way) in self.ways.iter().enumerate() {
            if round >= given {
                let (half, most) = (within.0.div_ceil(2), within.1.saturating_mul(self.most.max(1)));
                within = match way {
                    Ways::Even => within,
                    Ways::Grow => (within.0, most),
                    Ways::Shrink => (half, within.1),
                    Ways::Both => (half, most),
                };
            }
            reached.push(within);
        }
        reached
    }

    /// False where even the fastest shaping leaves the last round too far from its target.
    pub(super) fn can_end(&self) -> bool {
        let (Some((low, high)), Some((fewest, most))) = (self.bands.last(), self.reached().last().copied()) else {
            return true;
        };
        if self.goes_on_even() {
            return true;
        }
        // No repeat is larger than the round it is worked into, so half of that is the most an edge may be off.
        let slack = f64::from(most.max(1)) / 2.0 + 1.0;
        high + slack >= f64::from(fewest) && low - slack <= f64::from(most)
    }
}
