//! The shortest path over the rounds of a part, inside a window of counts for every round.
//!
//! A state is (count, Δ of the last shaped round, whether the last round was shaped). Two kinds of states are left out
//! as they can't be part of a cheaper solution: those that cost, with the least that the rounds after them can cost,
//! more than the bound; and those that cost more than b λ above another of the same count with a repeat at least as
//! large, as the two can differ by at most b λ in all that follows, and the larger repeat fits every edge the smaller
//! one does.

use super::{CHANGED, Choice, Entry, Task, UNEVEN, stacks, unevenness};
use crate::units::EPSILON;

/// Whether the round before was shaped.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Was {
    Even,
    Shaped,
    /// It belongs to another part.
    Elsewhere,
}

impl Was {
    /// Cost of what comes next.
    fn switch(self, next: Self, cost: f64) -> f64 {
        if self == Self::Elsewhere || self == next { 0.0 } else { cost }
    }
}

#[derive(Clone, Copy, Debug)]
struct State {
    /// Δ of the last shaped round.
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

/// A search.
pub(super) struct Search<'a> {
    pub(super) task: &'a Task,
    /// Lowest and highest count of each round.
    pub(super) windows: &'a [(u32, u32)],
    /// The least that the rounds after each round cost.
    pub(super) rest: &'a [f64],
    /// Cost of a solution in hand.
    pub(super) bound: f64,
    pub(super) table: &'a Table,
}

impl Search<'_> {
    /// The cheapest counts that cost no more than the bound.
    pub(super) fn run(&self) -> Option<Choice> {
        let mut layers: Vec<Layer> = Vec::with_capacity(self.windows.len());
        for (round, window) in self.windows.iter().enumerate() {
            let mut layer = match (layers.last(), self.task.entry) {
                (Some(before), _) => self.advance(round, before, *window),
                (None, Entry::First { least, most }) => self.first(*window, (least, most)),
                (None, Entry::After { count, repeat }) => {
                    let state = State { repeat, was: Was::Elsewhere, cost: 0.0, back: (0, 0) };
                    self.advance(round, &Layer { low: count, states: vec![vec![state]] }, *window)
                }
            };
            self.settle(round, &mut layer);
            if layer.states.iter().all(Vec::is_empty) {
                return None;
            }
            layers.push(layer);
        }
        self.trace(&layers)
    }

    /// Adds what each count's distance costs and drops what can't be part of a cheaper solution.
    fn settle(&self, round: usize, layer: &mut Layer) {
        let spare = self.spare(round);
        for (slot, states) in layer.states.iter_mut().enumerate() {
            let deviation = self.task.deviation(round, layer.low + slot as u32);
            states.iter_mut().for_each(|state| state.cost += deviation);
            states.retain(|state| state.cost <= spare);
            undominated(states, self.task.lambda() * CHANGED);
        }
    }

    /// What the rounds up to this one may cost.
    fn spare(&self, round: usize) -> f64 {
        self.bound + EPSILON - self.rest.get(round).copied().unwrap_or(0.0)
    }

    /// The first round of a ring: any count, but only multiples of the corners where there are any.
    fn first(&self, (low, high): (u32, u32), (least, most): (u32, u32)) -> Layer {
        let corners = self.task.corners.max(1);
        let cornered = most / corners * corners >= least;
        let states = |count: u32| {
            let repeat = i64::from(count);
            let cost = self.task.unlike(0, repeat);
            let fits = !cornered || count.is_multiple_of(corners);
            fits.then_some(State { repeat, was: Was::Shaped, cost, back: (0, 0) }).into_iter().collect()
        };
        Layer { low, states: (low..=high).map(states).collect() }
    }

    /// All states of a round from those of the round before, but for what the bound rules out.
    fn advance(&self, round: usize, before: &Layer, (low, high): (u32, u32)) -> Layer {
        let deviations: Vec<f64> = (low..=high).map(|count| self.task.deviation(round, count)).collect();
        let mut next = Layer { low, states: vec![Vec::new(); deviations.len()] };
        for (index, states) in before.states.iter().enumerate() {
            let from = before.low + index as u32;
            let Some(cheapest) = Cheapest::of(self.task, states) else { continue };
            let spare = self.spare(round);
            let (fewest, most) = self.task.limits(round, from);
            for to in fewest.max(low)..=most.min(high) {
                let slot = (to - low) as usize;
                let (Some(deviation), Some(made)) = (deviations.get(slot), next.states.get_mut(slot)) else { break };
                let fits = !stacks(from, self.task.corners) || to.abs_diff(from).is_multiple_of(self.task.corners);
                if fits && cheapest.any + deviation <= spare {
                    let change = i64::from(to) - i64::from(from);
                    let unlike = self.task.unlike(round, change) + self.task.sudden(change);
                    self.go((from, to), states, (&cheapest, unlike, spare - deviation), made);
                }
            }
        }
        next
    }

    /// Adds what the states of one count become at another, where that costs no more than `spare`.
    fn go(
        &self,
        (from, to): (u32, u32),
        states: &[State],
        (cheapest, unlike, spare): (&Cheapest, f64, f64),
        made: &mut Vec<State>,
    ) {
        let lambda = self.task.lambda();
        let switch = lambda * self.task.switch;
        let change = i64::from(to) - i64::from(from);
        if change == 0 {
            for (index, state) in states.iter().enumerate() {
                let cost = state.cost + unlike + state.was.switch(Was::Even, switch);
                offer(made, State { was: Was::Even, cost, back: (from, index as u32), ..*state });
            }
            return;
        }
        let (mut cost, mut index) = cheapest.changed;
        for (at, state) in states.iter().enumerate().filter(|(_, state)| state.repeat == change) {
            let same = state.cost + state.was.switch(Was::Shaped, switch);
            if same < cost {
                (cost, index) = (same, at as u32);
            }
        }
        cost += unlike;
        if cost <= spare {
            cost += lambda * UNEVEN * self.table.unevenness(from, change, self.task.corners);
        }
        if cost <= spare {
            made.push(State { repeat: change, was: Was::Shaped, cost, back: (from, index) });
        }
    }

    /// Follows the cheapest end back to the beginning.
    fn trace(&self, layers: &[Layer]) -> Option<Choice> {
        let last = layers.last()?;
        let mut best: Option<(f64, u32, u32)> = None;
        for (slot, states) in last.states.iter().enumerate() {
            let count = last.low + slot as u32;
            for (index, state) in states.iter().enumerate() {
                if self.task.edge_fits(count, state.repeat) && best.is_none_or(|(cost, ..)| state.cost < cost) {
                    best = Some((state.cost, count, index as u32));
                }
            }
        }
        let (cost, mut count, mut index) = best?;
        let mut counts = Vec::with_capacity(layers.len());
        for layer in layers.iter().rev() {
            counts.push(count);
            let states = layer.states.get(count.checked_sub(layer.low)? as usize)?;
            (count, index) = states.get(index as usize)?.back;
        }
        counts.reverse();
        Some(Choice { counts, cost })
    }
}

/// The cheapest way on from one count, whatever the next shaping.
struct Cheapest {
    /// Cost of the cheapest state.
    any: f64,
    /// Cost and index of the state from which another shaping than before is cheapest.
    changed: (f64, u32),
}

impl Cheapest {
    fn of(task: &Task, states: &[State]) -> Option<Self> {
        let first = states.first()?;
        let mut cheapest = Self { any: first.cost, changed: (f64::INFINITY, 0) };
        for (index, state) in states.iter().enumerate() {
            cheapest.any = cheapest.any.min(state.cost);
            let cost = state.cost + task.lambda() * (state.was.switch(Was::Shaped, task.switch) + CHANGED);
            if cost < cheapest.changed.0 {
                cheapest.changed = (cost, index as u32);
            }
        }
        Some(cheapest)
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
    for was in [Was::Even, Was::Shaped] {
        // From the largest repeat down, each has to beat the cheapest so far plus what a change costs.
        let own = |state: &&State| state.was == was;
        let Some(best) = states.iter().filter(own).min_by(|a, b| a.cost.total_cmp(&b.cost)).copied() else { continue };
        let beaten = |state: &State, by: &State| {
            state.repeat.unsigned_abs() <= by.repeat.unsigned_abs() && state.cost > by.cost + changed + EPSILON
        };
        states.retain(|state| state.was != was || !beaten(state, &best));
        let mut order: Vec<(u64, f64)> =
            states.iter().filter(own).map(|state| (state.repeat.unsigned_abs(), state.cost)).collect();
        order.sort_by(|a, b| b.0.cmp(&a.0).then(a.1.total_cmp(&b.1)));
        let mut least = f64::INFINITY;
        order.retain(|(_, cost)| {
            let keeps = *cost < least;
            least = least.min(*cost);
            keeps
        });
        let covered = |state: &State| {
            let larger = order.partition_point(|(reach, _)| *reach >= state.repeat.unsigned_abs());
            let cheapest = larger.checked_sub(1).and_then(|at| order.get(at));
            cheapest.is_some_and(|(_, cost)| state.cost > cost + changed + EPSILON)
        };
        states.retain(|state| state.was != was || !covered(state));
    }
}

/// Unevenness of the smaller repeats, looked up.
pub(super) struct Table {
    rows: Vec<Vec<f64>>,
}

impl Table {
    /// For shaping of less than `size` stitches.
    pub(super) fn new(size: u32) -> Self {
        let row = |change: u32| (0..change).map(|from| unevenness(from, i64::from(change), 1)).collect();
        Self { rows: (0..size).map(row).collect() }
    }

    fn unevenness(&self, from: u32, change: i64, corners: u32) -> f64 {
        let size = change.unsigned_abs() as usize;
        let known = self.rows.get(size).filter(|row| !stacks(from, corners) && !row.is_empty());
        let looked_up = known.and_then(|row| row.get(from as usize % size));
        looked_up.copied().unwrap_or_else(|| unevenness(from, change, corners))
    }
}
