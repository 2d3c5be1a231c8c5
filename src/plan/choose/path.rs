//! The shortest path over the rounds of a part, inside a window of counts for every round.
//!
//! A state is (count, gait, place within its interval), and for even rounds the repeat that came before. States are
//! left out that can't be part of a cheaper solution: those that cost, with the least that the rounds after them can
//! cost, more than the bound. That least is the cheapest way on from a count where changing the gait costs nothing.

use super::gait::{Gait, kinship};
use super::{Choice, Entry, Order, Task, UNEVEN, Ways, stacks, unevenness};
use crate::units::EPSILON;

/// Index of a gait that is not yet chosen.
const NONE: usize = usize::MAX;

#[derive(Clone, Copy, Debug)]
struct State {
    /// Index of the gait, or [`NONE`].
    gait: usize,
    /// Rounds of its interval worked, less one; its whole interval more before its first shaping.
    place: u32,
    /// Δ of the last shaped round.
    repeat: i64,
    cost: f64,
    /// Count and index of the state before.
    back: (u32, u32),
}

/// States of one round, by count from the lowest of its window.
struct Layer {
    low: u32,
    states: Vec<Vec<State>>,
    /// For every count and place of every gait but even rounds, one more than the index of its state; 0 for none.
    slots: Vec<u32>,
}

/// A search.
pub(super) struct Search<'a> {
    pub(super) task: &'a Task,
    /// Lowest and highest count of each round.
    pub(super) windows: &'a [(u32, u32)],
    /// The most a solution may cost.
    pub(super) bound: f64,
    pub(super) table: &'a Table,
    pub(super) order: Order,
    /// The only numbers of repeats, where they are limited.
    pub(super) words: Option<&'a [u64]>,
}

/// The gaits of a search and what going from one to another costs.
struct Gaits {
    all: Vec<Gait>,
    /// Cost of going from the first to the second, row by row.
    switch: Vec<f64>,
    /// Cost of beginning with each.
    begin: Vec<f64>,
    /// Cost of every round shaped by each, but for its unevenness: sudden shaping, and the ledge it makes.
    shaping: Vec<f64>,
    /// Where the places of each begin among those of all.
    slot: Vec<usize>,
    /// Places of all together.
    slots: usize,
}

impl Gaits {
    fn cost(&self, from: usize, to: usize) -> f64 {
        self.switch.get(from * self.all.len() + to).copied().unwrap_or(f64::INFINITY)
    }
}

impl Search<'_> {
    /// The cheapest counts for every last count that cost no more than the bound.
    pub(super) fn run(&self) -> Vec<Choice> {
        let gaits = self.gaits();
        let onward = self.onward(&gaits);
        let mut layers: Vec<Layer> = Vec::with_capacity(self.windows.len());
        for (round, window) in self.windows.iter().enumerate() {
            let rest = onward.get(round).map_or(&[][..], Vec::as_slice);
            let mut layer = match (layers.last(), self.task.entry) {
                (Some(before), _) => self.advance((round, rest), before, *window, &gaits),
                (None, Entry::First { least, most }) => self.first(*window, (least, most), &gaits),
                (None, Entry::After { count, repeat }) => {
                    let state = State { gait: NONE, place: 0, repeat, cost: 0.0, back: (0, 0) };
                    let standing = Layer { low: count, states: vec![vec![state]], slots: Vec::new() };
                    self.advance((round, rest), &standing, *window, &gaits)
                }
            };
            self.settle((round, rest), &mut layer);
            if layer.states.iter().all(Vec::is_empty) {
                return Vec::new();
            }
            layers.push(layer);
        }
        self.trace(&layers, &gaits)
    }

    fn gaits(&self) -> Gaits {
        let mut all = self.task.gaits(self.words);
        if let Entry::First { least, most } = self.task.entry {
            for count in least..=most {
                let first = Gait { change: i64::from(count), every: 1 };
                let said = self.words.is_none_or(|words| words.contains(&u64::from(count)));
                if said && !all.contains(&first) {
                    all.push(first);
                }
            }
        }
        let pairs = all.iter().flat_map(|from| all.iter().map(move |to| (*from, *to)));
        let switch = pairs.map(|(from, to)| self.task.switch(from, to, self.order)).collect();
        let standing = self.task.standing();
        let begin = |gait: &Gait| match gait.change {
            0 => 0.0,
            change => self.task.lambda() * kinship(standing, change.unsigned_abs()),
        };
        let mut slots = 0;
        let slot = |gait: &Gait| {
            slots += 2 * gait.every as usize;
            slots - 2 * gait.every as usize
        };
        let shaping = all.iter().map(|gait| self.task.sudden(gait.change) + self.task.ledge(*gait)).collect();
        Gaits {
            shaping,
            switch,
            begin: all.iter().map(begin).collect(),
            slot: all.iter().map(slot).collect(),
            all,
            slots,
        }
    }

    /// Adds what each count's distance costs and drops what can't be part of a cheaper solution.
    fn settle(&self, (round, rest): (usize, &[f64]), layer: &mut Layer) {
        for (slot, states) in layer.states.iter_mut().enumerate() {
            let deviation = self.task.deviation(round, layer.low + slot as u32);
            let spare = self.bound + EPSILON - rest.get(slot).copied().unwrap_or(0.0);
            states.iter_mut().for_each(|state| state.cost += deviation);
            states.retain(|state| state.cost <= spare && self.task.is_multiple(round, layer.low + slot as u32));
        }
        layer.slots = Vec::new();
    }

    /// For every round and count the least that the rounds after it cost.
    fn onward(&self, gaits: &Gaits) -> Vec<Vec<f64>> {
        let mut changes: Vec<i64> = gaits.all.iter().map(|gait| gait.change).collect();
        changes.sort_unstable();
        changes.dedup();
        let dear = self.task.lambda() * UNEVEN;
        let mut onward: Vec<Vec<f64>> = Vec::new();
        let mut after: Option<(usize, u32, &[f64])> = None;
        for (round, &(low, high)) in self.windows.iter().enumerate().rev() {
            let least = |from: u32| {
                let Some((next, next_low, costs)) = after else {
                    return if self.task.is_multiple(round, from) { 0.0 } else { f64::INFINITY };
                };
                let (fewest, most) = self.task.limits(next, from);
                let to = |change: i64| u32::try_from(i64::from(from) + change).ok();
                let fits = |to: &u32| (fewest..=most).contains(to);
                let cost = |change: &i64| {
                    let to = to(*change).filter(fits)?;
                    let rest = costs.get(to.checked_sub(next_low)? as usize)?;
                    let uneven =
                        if *change == 0 { 0.0 } else { self.table.unevenness(from, *change, self.task.corners) };
                    Some(rest + self.task.deviation(next, to) + dear * uneven)
                };
                changes.iter().filter_map(cost).fold(f64::INFINITY, f64::min)
            };
            let own: Vec<f64> = (low..=high.max(low)).map(least).collect();
            onward.push(own);
            after = onward.last().map(|own| (round, low, own.as_slice()));
        }
        onward.reverse();
        onward
    }

    /// The first round of a ring: any count, but only multiples of the corners where there are any.
    fn first(&self, (low, high): (u32, u32), (least, most): (u32, u32), gaits: &Gaits) -> Layer {
        let corners = self.task.corners.max(1);
        let cornered = most / corners * corners >= least;
        let states = |count: u32| {
            let repeat = i64::from(count);
            let own = gaits.all.iter().position(|gait| *gait == Gait { change: repeat, every: 1 });
            let fits = !cornered || count.is_multiple_of(corners);
            // A count that was said begins no gait: what follows may be anything.
            let gait = if least == most { Some(NONE) } else { own };
            let cost = self.task.opening(count);
            let state = gait.map(|gait| State { gait, place: 0, repeat, cost, back: (0, 0) });
            state.filter(|_| fits).into_iter().collect()
        };
        Layer { low, states: (low..=high).map(states).collect(), slots: Vec::new() }
    }

    /// All states of a round from those of the round before, but for what the bound rules out.
    fn advance(&self, (round, rest): (usize, &[f64]), before: &Layer, (low, high): (u32, u32), gaits: &Gaits) -> Layer {
        let size = (high + 1).saturating_sub(low) as usize;
        let mut next = Layer { low, states: vec![Vec::new(); size], slots: vec![0; size * gaits.slots] };
        // What a state may cost at each count before its deviation.
        let spare: Vec<f64> = (low..=high)
            .zip(rest)
            .map(|(count, rest)| self.bound + EPSILON - rest - self.task.deviation(round, count))
            .collect();
        for (index, states) in before.states.iter().enumerate() {
            let from = before.low + index as u32;
            if states.is_empty() {
                continue;
            }
            let step = Step::new(self, (round, from), &next, &spare, gaits);
            match self.task.way(round) {
                Ways::Even => step.rest(states, &mut next),
                Ways::Both => step.refit(states, &mut next),
                Ways::Grow | Ways::Shrink => {
                    step.go_on(states, &mut next);
                    step.switch(states, &mut next);
                }
            }
        }
        next
    }

    /// The cheapest way to every last count.
    fn trace(&self, layers: &[Layer], gaits: &Gaits) -> Vec<Choice> {
        let Some(last) = layers.last() else { return Vec::new() };
        let mut found = Vec::new();
        for (slot, states) in last.states.iter().enumerate() {
            let count = last.low + slot as u32;
            let ends = states.iter().enumerate().filter(|(_, state)| self.task.edge_fits(count, state.repeat));
            let leaving = |state: &State| {
                let rate = gaits.all.get(state.gait).map(|gait| gait.rate());
                state.cost + rate.map_or(0.0, |rate| self.task.leaving(rate))
            };
            let costs = ends.map(|(index, state)| (leaving(state), index as u32));
            let best = costs.min_by(|a, b| a.0.total_cmp(&b.0));
            let Some((cost, index)) = best.filter(|(cost, _)| *cost <= self.bound + EPSILON) else { continue };
            found.extend(self.back(layers, (count, index)).map(|counts| {
                let words = self.words_of(&counts);
                Choice { counts, cost, words }
            }));
        }
        found
    }

    fn back(&self, layers: &[Layer], (mut count, mut index): (u32, u32)) -> Option<Vec<u32>> {
        let mut counts = Vec::with_capacity(layers.len());
        for layer in layers.iter().rev() {
            counts.push(count);
            let states = layer.states.get(count.checked_sub(layer.low)? as usize)?;
            (count, index) = states.get(index as usize)?.back;
        }
        counts.reverse();
        Some(counts)
    }

    /// The different numbers of repeats of some counts; a round that takes up another width has none.
    fn words_of(&self, counts: &[u32]) -> Vec<u64> {
        let start = match self.task.entry {
            Entry::First { .. } => 0,
            Entry::After { count, .. } => count,
        };
        let before = std::iter::once(start).chain(counts.iter().copied());
        let changes = before.zip(counts).enumerate().filter(|(round, _)| self.task.way(*round) != Ways::Both);
        let mut words: Vec<u64> = changes.map(|(_, (a, b))| u64::from(a.abs_diff(*b))).filter(|w| *w > 0).collect();
        words.sort_unstable();
        words.dedup();
        words
    }
}

/// The step from one count of a round to the next round.
struct Step<'a> {
    search: &'a Search<'a>,
    from: u32,
    /// Fewest and most stitches onto which the round may be shaped.
    limits: (u32, u32),
    /// Cost of repeats that don't divide the round at all.
    dear: f64,
    /// What a state of the next round may cost, by count.
    spare: &'a [f64],
    gaits: &'a Gaits,
    /// Rounds after this one that may be shaped.
    left: u32,
    /// For each gait where shaping by it leads.
    shaped: Vec<Option<Landing>>,
}

/// A count of the next round that can be reached.
#[derive(Clone, Copy)]
struct Landing {
    /// Its place in the window.
    at: usize,
    /// What the shaping costs.
    cost: f64,
    /// What a state may cost there.
    spare: f64,
}

impl<'a> Step<'a> {
    fn new(
        search: &'a Search<'a>,
        (round, from): (usize, u32),
        next: &Layer,
        spare: &'a [f64],
        gaits: &'a Gaits,
    ) -> Self {
        let left = search.task.ways.iter().skip(round + 1).filter(|way| **way != Ways::Even).count() as u32;
        let limits = search.task.limits(round, from);
        let dear = search.task.lambda() * UNEVEN;
        let mut step = Self { search, from, limits, dear, spare, gaits, left, shaped: Vec::new() };
        let of = |(gait, shaping): (&Gait, &f64)| {
            let landing = step.landing(next.low, gait.change)?;
            Some(Landing { cost: landing.cost + shaping, ..landing })
        };
        step.shaped = gaits.all.iter().zip(&gaits.shaping).map(of).collect();
        step
    }

    /// Where a change leads, within the limits.
    fn landing(&self, low: u32, change: i64) -> Option<Landing> {
        let to = u32::try_from(i64::from(self.from) + change).ok()?;
        let corners = self.search.task.corners;
        let at = to.checked_sub(low)? as usize;
        let spare = *self.spare.get(at)?;
        let cornered = !stacks(self.from, change, corners) || to.abs_diff(self.from).is_multiple_of(corners);
        if to < self.limits.0 || to > self.limits.1 || !cornered {
            return None;
        }
        let uneven = if change == 0 { 0.0 } else { self.search.table.unevenness(self.from, change, corners) };
        Some(Landing { at, cost: self.dear * uneven, spare })
    }

    /// Adds a state where it lands; the cheaper of two that nothing later can tell apart.
    fn put(&self, next: &mut Layer, landing: Landing, state: State) {
        let cost = state.cost + landing.cost;
        let Some(states) = next.states.get_mut(landing.at) else { return };
        if cost > landing.spare || !cost.is_finite() {
            return;
        }
        let new = State { cost, ..state };
        // Even rounds and those before the first gait are told apart by their repeat too, all others by their slot.
        let own = self.gaits.all.get(new.gait).filter(|gait| gait.change != 0);
        let slot = own.and_then(|_| self.gaits.slot.get(new.gait));
        let slot = slot.map(|slot| landing.at * self.gaits.slots + slot + new.place as usize);
        let slot = slot.and_then(|slot| next.slots.get_mut(slot));
        let old = match &slot {
            Some(slot) => (**slot as usize).checked_sub(1),
            None => states.iter().position(|old| old.gait == new.gait && old.repeat == new.repeat),
        };
        match old.and_then(|old| states.get_mut(old)) {
            Some(old) if new.cost < old.cost => *old = new,
            Some(_) => {}
            None => {
                states.push(new);
                if let Some(slot) = slot {
                    *slot = states.len() as u32;
                }
            }
        }
    }

    /// Everything goes on even, whatever its gait.
    fn rest(&self, states: &[State], next: &mut Layer) {
        let Some(landing) = self.landing(next.low, 0) else { return };
        for (at, state) in states.iter().enumerate() {
            self.put(next, landing, State { back: (self.from, at as u32), ..*state });
        }
    }

    /// The first round onto stitches of another width, in no gait.
    fn refit(&self, states: &[State], next: &mut Layer) {
        let task = self.search.task;
        let (fewest, most) = self.limits;
        for to in fewest.max(next.low)..=most.min(next.low + next.states.len() as u32) {
            let change = i64::from(to) - i64::from(self.from);
            let Some(landing) = self.landing(next.low, change) else { continue };
            for (at, state) in states.iter().enumerate() {
                let asks = kinship(state.repeat.unsigned_abs(), change.unsigned_abs());
                let (differs, repeat) = match change {
                    0 => (0.0, state.repeat),
                    _ => (task.sudden(change) + task.lambda() * asks, change),
                };
                let back = (self.from, at as u32);
                self.put(next, landing, State { cost: state.cost + differs, repeat, back, ..*state });
            }
        }
    }

    /// Everything that goes on in its gait.
    fn go_on(&self, states: &[State], next: &mut Layer) {
        let even = self.landing(next.low, 0);
        for (at, state) in states.iter().enumerate() {
            let Some(gait) = self.gaits.all.get(state.gait) else { continue };
            let full = (state.place + 1).is_multiple_of(gait.every);
            let place = if full { 0 } else { state.place + 1 };
            let landing = if place == 0 { self.shaped.get(state.gait).copied().flatten() } else { even };
            let shaped = place == 0 && gait.change != 0;
            let repeat = if shaped { gait.change } else { state.repeat };
            if let Some(landing) = landing {
                self.put(next, landing, State { place, repeat, back: (self.from, at as u32), ..*state });
            }
        }
    }

    /// Everything that goes over to another gait, or begins its first.
    fn switch(&self, states: &[State], next: &mut Layer) {
        let full = |state: &State| self.gaits.all.get(state.gait).is_none_or(|gait| state.place + 1 == gait.every);
        let ready: Vec<(usize, &State)> = states.iter().enumerate().filter(|(_, state)| full(state)).collect();
        for (to, gait) in self.gaits.all.iter().enumerate() {
            if gait.change == 0 {
                self.go_even(to, states, next);
                continue;
            }
            let begin = self.gaits.begin.get(to).copied().unwrap_or(0.0);
            if let Some(landing) = self.shaped.get(to).copied().flatten() {
                let mut best = (landing.spare - landing.cost, None);
                for &(at, state) in &ready {
                    if state.cost > best.0 {
                        continue;
                    }
                    let cost = match state.gait {
                        NONE => state.cost + begin,
                        from => state.cost + self.gaits.cost(from, to),
                    };
                    if cost < best.0 {
                        best = (cost, Some(at as u32));
                    }
                }
                if let (cost, Some(at)) = best {
                    let begun = State { gait: to, place: 0, repeat: gait.change, cost, back: (self.from, at) };
                    self.put(next, landing, begun);
                }
            }
            // The first gait may begin anywhere in its interval, if it comes to its shaping.
            let Some(even) = self.landing(next.low, 0).filter(|_| gait.every > 1) else { continue };
            for (at, state) in states.iter().enumerate().filter(|(_, state)| state.gait == NONE) {
                for place in gait.every.saturating_sub(self.left).max(1)..gait.every {
                    let back = (self.from, at as u32);
                    self.put(
                        next,
                        even,
                        State { gait: to, place: gait.every + place, cost: state.cost + begin, back, ..*state },
                    );
                }
            }
        }
    }

    /// Everything that goes over to even rounds, which keep apart what repeat came before them, as the edge has to
    /// know it.
    fn go_even(&self, to: usize, states: &[State], next: &mut Layer) {
        let Some(landing) = self.landing(next.low, 0) else { return };
        // A gait that was begun comes to its shaping first.
        let begun = |state: &State| self.gaits.all.get(state.gait).is_none_or(|gait| state.place < gait.every);
        for (at, state) in states.iter().enumerate().filter(|(_, state)| state.gait != to && begun(state)) {
            let cost = if state.gait == NONE { 0.0 } else { self.gaits.cost(state.gait, to) };
            let back = (self.from, at as u32);
            self.put(next, landing, State { gait: to, place: 0, cost: state.cost + cost, back, ..*state });
        }
    }
}

/// Unevenness of the smaller repeats, looked up.
#[derive(Clone, Debug)]
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
        let known = self.rows.get(size).filter(|row| !stacks(from, change, corners) && !row.is_empty());
        let looked_up = known.and_then(|row| row.get(from as usize % size));
        looked_up.copied().unwrap_or_else(|| unevenness(from, change, corners))
    }
}
