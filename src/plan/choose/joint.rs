//! One choice for all sizes: the cheapest counts of each, with as few numbers of repeats as they can share and steps
//! from size to size as they are wished.
//!
//! Given the numbers of repeats, the sizes are a chain, each bound to the next by the counts of their last rounds, and
//! the cheapest choice is found exactly. What each size costs at least by itself says how many different numbers of
//! repeats a cheaper choice can have. All sets of so many are tried while they are few ([`MOST_TRIED`]); else single
//! numbers are dropped or changed for others as long as it gets cheaper.

use super::{Attempt, Choice, KINDS, STEPS, Task, ends, solutions};
use crate::design::Preference;
use crate::units::EPSILON;

/// Most rounds, over all sets of numbers of repeats, for which sets are tried one by one.
const MOST_TRIED: usize = 60_000;

/// One way of working a part in a size: a number of rounds with what it costs besides.
#[derive(Clone, Debug)]
pub(in crate::plan) struct Offer {
    pub(in crate::plan) task: Task,
    pub(in crate::plan) extra: f64,
}

impl Offer {
    /// The same with another preference.
    pub(in crate::plan) fn preferring(&self, prefer: Preference) -> Self {
        let task = Task { prefer, ..self.task.clone() };
        Self { extra: self.extra / self.task.lambda() * task.lambda(), task }
    }
}

/// What was picked for a size: which offer, and its counts.
#[derive(Clone, Debug, PartialEq)]
pub(in crate::plan) struct Picked {
    pub(in crate::plan) offer: usize,
    pub(in crate::plan) choice: Choice,
}

/// One size: its offers that can be worked, each with where to look.
struct Size<'a> {
    offers: Vec<(usize, &'a Offer, Attempt)>,
    /// The least it can cost by itself.
    floor: f64,
}

impl Size<'_> {
    /// The cheapest for every last count that cost no more than `spare` above the least.
    fn ends(&self, words: Option<&[u64]>, spare: f64) -> Vec<Picked> {
        let mut own = Vec::new();
        for (at, offer, attempt) in &self.offers {
            let choices = ends(&offer.task, attempt, words, self.floor + spare - offer.extra);
            own.extend(choices.into_iter().map(|choice| priced(*at, offer, choice)));
        }
        cheapest_each(own)
    }
}

/// The cheapest choice for all sizes and its cost.
///
/// # Errors
/// The index of the first size that can't be worked.
pub(in crate::plan) fn choose_all(sizes: &[Vec<Offer>]) -> Result<(Vec<Picked>, f64), usize> {
    let lambda = sizes.iter().flatten().map(|offer| offer.task.lambda()).fold(0.0, f64::max);
    let (mut known, mut alone) = (Vec::new(), Vec::new());
    for (index, offers) in sizes.iter().enumerate() {
        let mut size = Size { offers: Vec::new(), floor: 0.0 };
        let mut found: Vec<Picked> = Vec::new();
        for (at, offer) in offers.iter().enumerate() {
            let Some((attempt, choices)) = solutions(&offer.task) else { continue };
            // What needs wider limits isn't held against what doesn't.
            let best = size.offers.first().map_or(usize::MAX, |(_, _, other): &(_, _, Attempt)| other.rank);
            if attempt.rank > best {
                continue;
            }
            if attempt.rank < best {
                (size.offers, found) = (Vec::new(), Vec::new());
            }
            size.offers.push((at, offer, attempt));
            found.extend(choices.into_iter().map(|choice| priced(at, offer, choice)));
        }
        let cheapest = found.into_iter().min_by(|a, b| a.choice.cost.total_cmp(&b.choice.cost)).ok_or(index)?;
        size.floor = cheapest.choice.cost;
        known.push(size);
        alone.push(vec![cheapest]);
    }
    let tasks: Vec<&Task> =
        known.iter().filter_map(|size| size.offers.first().map(|(_, offer, _)| &offer.task)).collect();
    // What the sizes cost when each is chosen by itself, and then with the same repeats together, bounds what any of
    // them may cost in the joint choice.
    let (bound, picked) = chain(&tasks, &alone).ok_or(0_usize)?;
    let floors: f64 = known.iter().map(|size| size.floor).sum();
    let used = words(&picked);
    let search = Sets { known: &known, tasks: &tasks, floors, lambda };
    let mut best = (bound + search.price(used.len()), picked);
    if known.len() > 1 {
        search.improve(&used, &mut best);
    }
    match search.candidates(best.0) {
        Some(sets) => {
            for set in sets {
                search.improve(&set, &mut best);
            }
        }
        None => search.descend(&mut best),
    }
    Ok((best.1, best.0))
}

fn priced(offer: usize, of: &Offer, choice: Choice) -> Picked {
    Picked { offer, choice: Choice { cost: choice.cost + of.extra, ..choice } }
}

/// The cheapest for every last count.
fn cheapest_each(mut found: Vec<Picked>) -> Vec<Picked> {
    let last = |picked: &Picked| picked.choice.counts.last().copied().unwrap_or(0);
    found.sort_by(|a, b| last(a).cmp(&last(b)).then(a.choice.cost.total_cmp(&b.choice.cost)));
    found.dedup_by_key(|picked| last(picked));
    found
}

/// The numbers of repeats that any size uses, ascending.
fn words(picked: &[Picked]) -> Vec<u64> {
    let mut words: Vec<u64> = picked.iter().flat_map(|picked| picked.choice.words.iter().copied()).collect();
    words.sort_unstable();
    words.dedup();
    words
}

/// Of each size's choices those that cost least together with the steps between them.
fn chain(tasks: &[&Task], sizes: &[Vec<Picked>]) -> Option<(f64, Vec<Picked>)> {
    let last = |picked: &Picked| picked.choice.counts.last().copied().unwrap_or(0);
    let mut costs: Vec<Vec<(f64, usize)>> = Vec::new();
    for (index, (task, own)) in tasks.iter().zip(sizes).enumerate() {
        let before = index.checked_sub(1).and_then(|i| Some((tasks.get(i)?, sizes.get(i)?, costs.get(i)?)));
        let cost = |picked: &Picked| match before {
            None => (picked.choice.cost, 0),
            Some((other, theirs, so_far)) => {
                let tolerance = (task.last_tolerance() + other.last_tolerance()) / 2.0;
                let ways = theirs.iter().zip(so_far).enumerate().map(|(at, (their, (cost, _)))| {
                    let step = (task.last_distance(last(picked)) - other.last_distance(last(their))) / tolerance;
                    (cost + STEPS * step * step + picked.choice.cost, at)
                });
                ways.min_by(|a, b| a.0.total_cmp(&b.0)).unwrap_or((f64::INFINITY, 0))
            }
        };
        costs.push(own.iter().map(cost).collect());
    }
    let ends = costs.last()?.iter().enumerate();
    let (mut at, (least, _)) = ends.min_by(|a, b| a.1.0.total_cmp(&b.1.0))?;
    let mut picked = Vec::new();
    for (own, costs) in sizes.iter().zip(&costs).rev() {
        picked.push(own.get(at)?.clone());
        at = costs.get(at)?.1;
    }
    picked.reverse();
    least.is_finite().then_some((*least, picked))
}

/// The search over sets of numbers of repeats.
struct Sets<'a> {
    known: &'a [Size<'a>],
    tasks: &'a [&'a Task],
    /// The least each can cost by itself, added up.
    floors: f64,
    lambda: f64,
}

impl Sets<'_> {
    fn price(&self, words: usize) -> f64 {
        self.lambda * KINDS * words as f64
    }

    /// Rounds of the longest size.
    fn rounds(&self) -> usize {
        self.tasks.iter().map(|task| task.bands.len()).max().unwrap_or(1).max(1)
    }

    /// Every number of repeats that any size could use.
    fn alphabet(&self) -> Vec<u64> {
        let offers = self.known.iter().flat_map(|size| &size.offers);
        let mut all: Vec<u64> = offers.flat_map(|(_, offer, _)| offer.task.words()).collect();
        all.sort_unstable();
        all.dedup();
        all
    }

    /// All sets so small that they can cost less than `best`, the smallest first; nothing where they are too many.
    fn candidates(&self, best: f64) -> Option<Vec<Vec<u64>>> {
        let all = self.alphabet();
        let mut longer: Vec<Vec<u64>> = vec![Vec::new()];
        let mut sets = Vec::new();
        while let Some(length) = longer.first().map(Vec::len) {
            if self.floors + self.price(length) >= best - EPSILON {
                break;
            }
            sets.extend(longer.iter().cloned());
            if sets.len().saturating_add(longer.len().saturating_mul(all.len()) / (length + 1))
                > MOST_TRIED / self.rounds()
            {
                return None;
            }
            let grown = |set: &Vec<u64>| -> Vec<Vec<u64>> {
                let more = all.iter().filter(|word| set.last().is_none_or(|last| *word > last));
                more.map(|word| set.iter().copied().chain([*word]).collect()).collect()
            };
            longer = longer.iter().flat_map(grown).collect();
        }
        Some(sets)
    }

    /// Takes over a set of repeats where it is cheaper. True where it is.
    fn improve(&self, set: &[u64], best: &mut (f64, Vec<Picked>)) -> bool {
        let within = best.0 - self.price(set.len());
        if within <= self.floors + EPSILON {
            return false;
        }
        let mut found = Vec::new();
        for size in self.known {
            let own = size.ends(Some(set), within - self.floors);
            if own.is_empty() {
                return false;
            }
            found.push(own);
        }
        let Some((cost, picked)) = chain(self.tasks, &found) else { return false };
        let cost = cost + self.price(words(&picked).len());
        let better = cost < best.0 - EPSILON;
        if better {
            *best = (cost, picked);
        }
        better
    }

    /// Without any limit to the repeats first; then drops single numbers of them as long as that is cheaper.
    fn descend(&self, best: &mut (f64, Vec<Picked>)) {
        let spare = best.0 - self.floors;
        let free: Vec<Vec<Picked>> = self.known.iter().map(|size| size.ends(None, spare)).collect();
        if let Some((cost, picked)) = chain(self.tasks, &free).filter(|_| self.known.len() > 1) {
            let cost = cost + self.price(words(&picked).len());
            if cost < best.0 - EPSILON {
                *best = (cost, picked);
            }
        }
        let all = self.alphabet();
        loop {
            let set = words(&best.1);
            let without = |word: &u64| -> Vec<u64> { set.iter().copied().filter(|other| other != word).collect() };
            let fewer: Vec<Vec<u64>> = set.iter().map(without).collect();
            let with = |set: &Vec<u64>, word: u64| {
                let mut other: Vec<u64> = set.iter().copied().chain([word]).collect();
                other.sort_unstable();
                other
            };
            let changed = fewer.iter().flat_map(|set| all.iter().map(|word| with(set, *word)));
            let near: Vec<Vec<u64>> = fewer.iter().cloned().chain(changed).collect();
            let better = near.into_iter().filter(|set| self.improve(set, best)).count();
            if better == 0 {
                return;
            }
        }
    }
}
