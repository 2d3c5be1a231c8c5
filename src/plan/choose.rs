//! The choice of counts: a shortest path over (round, count), exact for the cost stated here.
//!
//! For a part of R rounds with counts n₁ … n_R, Δₖ = nₖ − nₖ₋₁, the cost is
//!
//! J = Σₖ ωₖ (dₖ / τₖ)² + λ Σₖ [Δₖ ≠ 0] (a · u(nₖ₋₁, Δₖ) + b · [Δₖ ≠ Δ of the last shaped round]) + λ Σₖ c · [round k
//! is shaped and round k − 1 is not, or the other way round]
//!
//! - dₖ is the distance in stitches of nₖ from the band of circumferences wanted after round k, τₖ the tolerance there
//!   in stitches, never under one stitch; ωₖ is 1, and [`EDGE`] for the last round of the part, which has to fit.
//! - u is how uneven the repeats are: 1 − gcd(n, Δ) / |Δ|, and at least 1 where fewer than three repeats pull the
//!   fabric to one side. It is 0 where the repeats divide the round.
//! - a = [`UNEVEN`], b = [`CHANGED`], c = [`SWITCHED`]; λ is 4 for easy rounds, 1 for balanced, 1/8 for close fit.
//!   A first round into a ring counts as shaped with Δ₁ = n₁; in a later part the first round pays no switch.
//!
//! Limits: at most `most` times and at least half the round before; never shaped against the outline; a round that
//! has to be even is; with n corners Δ is a multiple of n; the last count is within half a repeat of its target, a
//! repeat being |Δ| of the last shaped round, and never nearer than the nearest whole stitch.
//!
//! The state is (round, count, Δ of the last shaped round, shaped or even). What is left out can't matter: a count so
//! far from its target that this round's cost, with the least the other rounds can cost, exceeds the cost of a
//! solution already in hand; and a state that costs b more than another of the same count with a repeat at least as
//! large, as the two differ by at most b in all that follows.

use crate::design::Preference;

/// Weight of the distance at the last round of a part.
pub(super) const EDGE: f64 = 10.0;
/// Cost of repeats that don't divide the round.
pub(super) const UNEVEN: f64 = 2.0;
/// Cost of another number of repeats than before.
pub(super) const CHANGED: f64 = 2.0;
/// Cost of going from shaped rounds to even ones or back.
pub(super) const SWITCHED: f64 = 0.5;
/// Fewest stitches that make a round.
pub(super) const FEWEST: u32 = 3;

/// What the counts of a part have to satisfy. The vectors hold one entry a round.
#[derive(Clone, Debug)]
pub(super) struct Task {
    /// Least and most stitches wanted, as fractions.
    pub(super) bands: Vec<(f64, f64)>,
    /// Tolerance in stitches.
    pub(super) tolerance: Vec<f64>,
    /// True where the round may be shaped.
    pub(super) shaped: Vec<Ways>,
    /// How it begins.
    pub(super) entry: Entry,
    /// Most a round may grow by, as a factor.
    pub(super) most: u32,
    /// Shaping is a multiple of this, 1 but for corners.
    pub(super) multiple: u32,
    /// Weighs how hard the rounds are to remember.
    pub(super) prefer: Preference,
}

/// Ways a round may be shaped.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Ways {
    /// Not at all.
    Even,
    /// It may grow.
    Grow,
    /// It may shrink.
    Shrink,
    /// Either way, where a new stitch has another width.
    Both,
}

/// How a part begins.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Entry {
    /// A first round of any of these counts.
    First {
        /// Fewest.
        least: u32,
        /// Most.
        most: u32,
    },
    /// Worked onto a round.
    After {
        /// Its count.
        count: u32,
        /// Δ of the last shaped round.
        repeat: i64,
    },
}

/// Whether the round before was shaped.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Was {
    Even,
    Shaped,
    Elsewhere,
}

#[derive(Clone, Copy, Debug)]
struct State {
    repeat: i64,
    was: Was,
    cost: f64,
    /// Count and index of the state before.
    back: (u32, u32),
}

/// States of one round, by count from the lowest of its window.
struct Layer {
    low: u32,
    states: Vec<Vec<State>>,
}

impl Layer {
    fn at(&self, count: u32) -> &[State] {
        let index = count.checked_sub(self.low).map(|index| index as usize);
        index.and_then(|index| self.states.get(index)).map_or(&[], Vec::as_slice)
    }
}

/// Counts and what they cost.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Choice {
    /// One count a round.
    pub(super) counts: Vec<u32>,
    /// J of the module's description.
    pub(super) cost: f64,
}

impl Task {
    /// Weight λ of what is hard to remember.
    fn lambda(&self) -> f64 {
        match self.prefer {
            Preference::Easy => 4.0,
            Preference::Balanced => 1.0,
            Preference::Close => 0.125,
        }
    }

    /// Distance of a count from its band in stitches, signed.
    pub(super) fn distance(&self, round: usize, count: u32) -> f64 {
        let (low, high) = self.bands.get(round).copied().unwrap_or_default();
        let n = f64::from(count);
        n - n.clamp(low, high.max(low))
    }

    fn weight(&self, round: usize) -> f64 {
        let edge = if round + 1 == self.bands.len() { EDGE } else { 1.0 };
        let tolerance = self.tolerance.get(round).copied().unwrap_or(1.0).max(1.0);
        edge / (tolerance * tolerance)
    }

    fn deviation(&self, round: usize, count: u32) -> f64 {
        let distance = self.distance(round, count);
        self.weight(round) * distance * distance
    }

    /// Whether the round may go from one count to another.
    fn allows(&self, round: usize, from: u32, to: u32) -> bool {
        let ways = self.shaped.get(round).copied().unwrap_or(Ways::Even);
        let change = i64::from(to) - i64::from(from);
        let fits = change % i64::from(self.multiple.max(1)) == 0;
        let limits =
            u64::from(to) <= u64::from(from) * u64::from(self.most.max(1)) && u64::from(to) * 2 >= u64::from(from);
        change == 0
            || (fits
                && limits
                && match ways {
                    Ways::Even => false,
                    Ways::Grow => change > 0,
                    Ways::Shrink => change < 0,
                    Ways::Both => true,
                })
    }

    fn hardness(&self, from: u32, change: i64, repeat: i64, was: Was) -> f64 {
        let shaped = if change == 0 { Was::Even } else { Was::Shaped };
        let switched = if was == Was::Elsewhere || was == shaped { 0.0 } else { SWITCHED };
        let shaping = if change == 0 {
            0.0
        } else {
            UNEVEN * unevenness(from, change, self.multiple) + if change == repeat { 0.0 } else { CHANGED }
        };
        self.lambda() * (switched + shaping)
    }

    fn edge_fits(&self, count: u32, repeat: i64) -> bool {
        let Some(last) = self.bands.len().checked_sub(1) else { return true };
        // An even part goes on with the count it was given.
        if self.shaped.iter().all(|ways| *ways == Ways::Even) {
            return true;
        }
        self.distance(last, count).abs() <= (repeat.unsigned_abs() as f64 / 2.0).max(0.5) + 1e-9
    }
}

/// How uneven the repeats of a shaped round are, from 0 to 1.
pub(super) fn unevenness(from: u32, change: i64, corners: u32) -> f64 {
    let repeats = if corners > 1 { u64::from(corners) } else { change.unsigned_abs() };
    if repeats < 3 {
        return 1.0;
    }
    1.0 - gcd(u64::from(from), repeats) as f64 / repeats as f64
}

pub(super) fn gcd(a: u64, b: u64) -> u64 {
    if b == 0 { a } else { gcd(b, a % b) }
}

/// The cheapest counts, or nothing where no counts keep the limits.
pub(super) fn choose(task: &Task) -> Option<Choice> {
    let floors: Vec<f64> = (0..task.bands.len()).map(|round| floor(task, round)).collect();
    let all: f64 = floors.iter().sum();
    let mut best: Option<Choice> = None;
    for reach in [3.0, 12.0, 48.0, 1e9] {
        let windows = windows(task, |_| reach);
        best = search(task, &windows, &floors, f64::INFINITY);
        let Some(first) = &best else { continue };
        // The cost in hand says how far from its target a count can lie in any better solution.
        let spare = |round: usize| {
            let floor = floors.get(round).copied().unwrap_or(0.0);
            libm::sqrt(((first.cost - all + floor) / task.weight(round)).max(0.0)) + 1e-6
        };
        let needed = self::windows(task, spare);
        let covered = windows.iter().zip(&needed).all(|(have, need)| have.0 <= need.0 && have.1 >= need.1);
        if !covered {
            best = search(task, &needed, &floors, first.cost).or(best);
        }
        break;
    }
    best
}

/// The least a round can cost.
fn floor(task: &Task, round: usize) -> f64 {
    let (low, high) = task.bands.get(round).copied().unwrap_or_default();
    let near = [low.floor(), low.ceil(), high.floor()];
    let counts = near.map(|n| task.deviation(round, (n.clamp(0.0, 1e9) as u32).max(FEWEST)));
    counts.into_iter().fold(f64::INFINITY, f64::min)
}

/// For every round the counts within a reach of its band that the limits can get to.
fn windows(task: &Task, reach: impl Fn(usize) -> f64) -> Vec<(u32, u32)> {
    let mut within = match task.entry {
        Entry::First { least, most } => (u64::from(least), u64::from(most)),
        Entry::After { count, .. } => (u64::from(count), u64::from(count)),
    };
    let mut windows = Vec::with_capacity(task.bands.len());
    for (round, (low, high)) in task.bands.iter().enumerate() {
        if round > 0 || matches!(task.entry, Entry::After { .. }) {
            let ways = task.shaped.get(round).copied().unwrap_or(Ways::Even);
            let (down, up) = (matches!(ways, Ways::Shrink | Ways::Both), matches!(ways, Ways::Grow | Ways::Both));
            within.0 = if down { within.0.div_ceil(2) } else { within.0 };
            within.1 = if up { (within.1 * u64::from(task.most.max(1))).min(1 << 30) } else { within.1 };
        }
        let reach = reach(round);
        let nearest = ((low - reach).floor().clamp(0.0, 1e9) as u32).max(FEWEST);
        let farthest = (high + reach).ceil().clamp(0.0, 1e9) as u32;
        windows.push((nearest.max(within.0 as u32), farthest.min(within.1 as u32)));
    }
    windows
}

/// The shortest path inside the windows, costing no more than `bound`.
fn search(task: &Task, windows: &[(u32, u32)], floors: &[f64], bound: f64) -> Option<Choice> {
    let bound = bound + 1e-9;
    let mut rest: f64 = floors.iter().sum();
    let mut layers: Vec<Layer> = Vec::with_capacity(windows.len());
    for (round, window) in windows.iter().enumerate() {
        rest -= floors.get(round).copied().unwrap_or(0.0);
        let mut layer = match (layers.last(), task.entry) {
            (None, Entry::First { .. }) => first_layer(*window),
            (None, Entry::After { count, repeat }) => {
                let state = State { repeat, was: Was::Elsewhere, cost: 0.0, back: (0, 0) };
                let before = Layer { low: count, states: vec![vec![state]] };
                advance(task, round, &before, *window)
            }
            (Some(before), _) => advance(task, round, before, *window),
        };
        for (index, states) in layer.states.iter_mut().enumerate() {
            let deviation = task.deviation(round, layer.low + index as u32);
            states.iter_mut().for_each(|state| state.cost += deviation);
            states.retain(|state| state.cost + rest <= bound);
            undominated(states, task.lambda() * CHANGED);
        }
        layers.push(layer);
    }
    trace(task, &layers)
}

fn first_layer((low, high): (u32, u32)) -> Layer {
    let state = |count: u32| State { repeat: i64::from(count), was: Was::Shaped, cost: 0.0, back: (0, 0) };
    Layer { low, states: (low..=high).map(|count| vec![state(count)]).collect() }
}

/// All states of a round from those of the round before.
fn advance(task: &Task, round: usize, before: &Layer, (low, high): (u32, u32)) -> Layer {
    let mut next = Layer { low, states: vec![Vec::new(); (high + 1).saturating_sub(low) as usize] };
    for (index, states) in before.states.iter().enumerate() {
        let from = before.low + index as u32;
        if states.is_empty() {
            continue;
        }
        for (slot, made) in next.states.iter_mut().enumerate() {
            let to = low + slot as u32;
            if task.allows(round, from, to) {
                step(task, from, to, states, made);
            }
        }
    }
    next
}

/// Adds what the states of one count become at another.
fn step(task: &Task, from: u32, to: u32, states: &[State], made: &mut Vec<State>) {
    let change = i64::from(to) - i64::from(from);
    let became = |state: &State| state.cost + task.hardness(from, change, state.repeat, state.was);
    if change == 0 {
        for (index, state) in states.iter().enumerate() {
            let even = State { was: Was::Even, cost: became(state), back: (from, index as u32), ..*state };
            offer(made, even);
        }
        return;
    }
    let mut cheapest: Option<State> = None;
    for (index, state) in states.iter().enumerate() {
        let cost = became(state);
        if cheapest.is_none_or(|best| cost < best.cost) {
            cheapest = Some(State { repeat: change, was: Was::Shaped, cost, back: (from, index as u32) });
        }
    }
    if let Some(state) = cheapest {
        offer(made, state);
    }
}

/// Keeps the cheaper of two states that nothing later can tell apart; of equals the first.
fn offer(states: &mut Vec<State>, new: State) {
    match states.iter_mut().find(|old| old.repeat == new.repeat && old.was == new.was) {
        Some(old) if new.cost < old.cost => *old = new,
        Some(_) => {}
        None => states.push(new),
    }
}

/// Drops states that another of the same count makes needless.
fn undominated(states: &mut Vec<State>, changed: f64) {
    if states.len() < 2 {
        return;
    }
    let all = states.clone();
    states.retain(|state| {
        let better = |other: &State| {
            other.was == state.was
                && other.repeat != state.repeat
                && other.repeat.abs() >= state.repeat.abs()
                && other.cost + changed < state.cost
        };
        !all.iter().any(better)
    });
}

/// Follows the cheapest end back to the beginning.
fn trace(task: &Task, layers: &[Layer]) -> Option<Choice> {
    let last = layers.last()?;
    let mut best: Option<(f64, u32, u32)> = None;
    for (slot, states) in last.states.iter().enumerate() {
        let count = last.low + slot as u32;
        for (index, state) in states.iter().enumerate() {
            if task.edge_fits(count, state.repeat) && best.is_none_or(|(cost, ..)| state.cost < cost) {
                best = Some((state.cost, count, index as u32));
            }
        }
    }
    let (cost, mut count, mut index) = best?;
    let mut counts = Vec::with_capacity(layers.len());
    for layer in layers.iter().rev() {
        counts.push(count);
        (count, index) = layer.at(count).get(index as usize)?.back;
    }
    counts.reverse();
    Some(Choice { counts, cost })
}
