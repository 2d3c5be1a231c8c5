//! Gaits: how a run of rounds is shaped, by how many stitches and every how manieth round.

use super::{CHANGED, EVENS, EVENS_FLAT, Entry, KNEE, Order, RELATED, RHYTHM, Task, Ways};
use crate::units::Angle;

/// Most rounds from shaping to shaping where the outline is curved.
const SLOWEST_CURVED: u32 = 3;
/// How far the rate of a gait may be from the rate that a straight outline wants, as a factor.
const NEAR_RATE: f64 = 1.6;

/// Shaping by `change` stitches in one round of every `every`; by none for even rounds.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Gait {
    pub(super) change: i64,
    pub(super) every: u32,
}

impl Gait {
    /// Even rounds.
    pub(super) const EVEN: Self = Self { change: 0, every: 1 };

    /// Stitches a round.
    pub(super) fn rate(self) -> f64 {
        self.change as f64 / f64::from(self.every)
    }

    /// Cost of going over to another gait, in units of λ: little where the number of repeats stays or only the rhythm
    /// changes, more where it becomes a divisor, a multiple, about half or double, or one more or less, most for any other.
    fn change_to(self, other: Self, evens: f64) -> f64 {
        match (self.change.unsigned_abs(), other.change.unsigned_abs()) {
            (_, 0) => evens,
            (before, after) if before == after => RHYTHM,
            (before, after) => kinship(before, after),
        }
    }
}

/// Cost of one number of repeats after another, in units of λ.
pub(super) fn kinship(before: u64, after: u64) -> f64 {
    let divides = before > 0 && (before.is_multiple_of(after) || after.is_multiple_of(before));
    let halves = before.abs_diff(2 * after) <= 1 || after.abs_diff(2 * before) <= 1;
    match before.abs_diff(after) {
        0 => 0.0,
        1 => RELATED,
        _ if divides || halves => RELATED,
        _ => CHANGED,
    }
}

impl Task {
    /// All gaits the rounds may take, even rounds first; of repeats the `words` only, where there are any.
    pub(super) fn gaits(&self, words: Option<&[u64]>) -> Vec<Gait> {
        let (fastest, slowest) = self.rates();
        let most = self.fastest_shaping(fastest);
        let mut gaits = vec![Gait::EVEN];
        for change in 1..=most {
            if words.is_some_and(|words| !words.contains(&change)) {
                continue;
            }
            // Corners take whole steps: where one in every round is too few, two in some are all that helps.
            let next = self.corners > 1 && (change as f64) < fastest + f64::from(self.corners);
            let few = if next { 1.0 } else { (change as f64 / (fastest * NEAR_RATE).max(1e-9)).ceil().max(1.0) } as u32;
            let many = if self.curved {
                SLOWEST_CURVED
            } else {
                (change as f64 * NEAR_RATE / slowest.max(1e-9)).floor().clamp(0.0, self.bands.len() as f64) as u32
            };
            // A last round may bring the edge in by less than the others.
            let many = many.max(1);
            // One or two repeats pull to one side; with even rounds between them no dome is made. Twice at every corner and
            // then not at all is what once in each of both does better.
            let twice = self.corners > 1 && change >= 2 * u64::from(self.corners);
            let many = if self.curved && change < 3 || twice { 1 } else { many };
            for every in few..=many {
                let up = Gait { change: change as i64, every };
                gaits.extend(self.shrinks(false).then_some(up));
                gaits.extend(self.shrinks(true).then_some(Gait { change: -up.change, ..up }));
            }
        }
        gaits
    }

    /// Every number of repeats that could be used.
    pub(super) fn words(&self) -> Vec<u64> {
        let first = match self.entry {
            Entry::First { least, most } => least..most + 1,
            Entry::After { .. } => 0..0,
        };
        let gaits = self.gaits(None).into_iter().map(|gait| gait.change.unsigned_abs()).filter(|word| *word > 0);
        gaits.chain(first.map(u64::from)).collect()
    }

    /// Most stitches one round is shaped by.
    fn fastest_shaping(&self, fastest: f64) -> u64 {
        // In a pattern nothing less than a repeat of it helps.
        let corners = f64::from(self.corners.max(1)).max(f64::from(self.throughout.of()));
        (self.steady.max(1.25 * fastest).max(corners).ceil() as u64).min(2000)
    }

    /// The largest and the smallest growth that the bands ask of any shaped round, without their signs.
    fn rates(&self) -> (f64, f64) {
        let middle = |round: usize| self.bands.get(round).map_or(0.0, |band| (band.0 + band.1) / 2.0);
        // The last round goes to its edge from wherever the band has room.
        let inner = if self.bands.len() > 3 { self.bands.len() - 1 } else { self.bands.len() };
        let shaped: Vec<usize> = (1..inner).filter(|round| self.way(*round) != Ways::Even).collect();
        let steps = shaped.iter().map(|round| (middle(*round) - middle(round - 1)).abs());
        let (fastest, slowest) =
            steps.fold((0.0_f64, f64::INFINITY), |(most, least), step| (most.max(step), least.min(step)));
        // A single round has no step of its own: what the part stands on gives it.
        let entered = (middle(0) - self.entered()).abs();
        if shaped.is_empty() {
            return (entered, entered);
        }
        let entered = entered.clamp(slowest / 4.0, fastest.max(slowest / 4.0) * 2.0);
        // Even rounds at the end leave the others more to do.
        let rounds = self.ways.iter().filter(|way| **way != Ways::Even).count().max(1) as f64;
        let whole = (middle(self.bands.len().saturating_sub(1)) - self.entered()).abs() / rounds;
        (fastest.max(entered).max(whole), slowest.min(entered))
    }

    fn entered(&self) -> f64 {
        match self.entry {
            Entry::First { .. } => 0.0,
            Entry::After { count, .. } => f64::from(count),
        }
    }

    fn shrinks(&self, down: bool) -> bool {
        let way = if down { Ways::Shrink } else { Ways::Grow };
        self.ways.iter().any(|of| *of == way || *of == Ways::Both)
    }

    /// Angle from the horizontal at which fabric goes on that grows at a rate.
    fn slope(&self, rate: f64) -> f64 {
        let out = (rate / self.flat.max(1e-9)).clamp(-1.0, 1.0);
        Angle::of_vector(out, (1.0 - out * out).sqrt()).radians()
    }

    /// What the ledge costs that even rounds between shaped ones make.
    pub(super) fn ledge(&self, gait: Gait) -> f64 {
        if gait.every == 1 { 0.0 } else { self.knee(gait.change as f64, 0.0) }
    }

    /// What the knee between two rates costs.
    pub(super) fn knee(&self, before: f64, after: f64) -> f64 {
        let angle = self.slope(after) - self.slope(before);
        let seen = self.knee * angle * angle;
        seen * (1.0 + seen / KNEE)
    }

    /// Cost of going from one gait to another; without end where the order of shaping forbids it.
    pub(super) fn switch(&self, from: Gait, to: Gait, order: Order) -> f64 {
        let fits = match order {
            Order::Falls => to.rate() < from.rate() && to.change <= from.change,
            Order::Rises => to.rate() > from.rate() && to.change >= from.change,
            Order::Any => to != from,
        };
        let evens = if self.knee == 0.0 { EVENS_FLAT } else { EVENS };
        if fits { self.lambda() * from.change_to(to, evens) + self.knee(from.rate(), to.rate()) } else { f64::INFINITY }
    }
}
