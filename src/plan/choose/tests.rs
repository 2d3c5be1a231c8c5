//! The choice against an exhaustive search that shares no code with it but the constants and the list of gaits.

use super::gait::Gait;
use super::*;
use crate::units::{Angle, TURN};
use proptest::prelude::*;

/// One way of working a task.
struct Found {
    cost: f64,
    last: u32,
    words: Vec<u64>,
}

/// What the rounds so far have come to.
#[derive(Clone)]
struct Trail {
    count: u32,
    /// The gait, the rounds of its interval worked, and whether it has shaped any.
    gait: Option<(Gait, u32, bool)>,
    repeat: i64,
    cost: f64,
    words: Vec<u64>,
}

/// Every way of working a task within `far` tolerances, by going round by round through every gait.
struct Exhaust<'a> {
    task: &'a Task,
    far: f64,
    held: Held,
    order: Order,
    gaits: Vec<Gait>,
    found: Vec<Found>,
}

impl Exhaust<'_> {
    fn lambda(&self) -> f64 {
        match self.task.prefer {
            Preference::Easy => 20.0,
            Preference::Balanced => 5.0,
            Preference::Close => 1.0,
        }
    }

    fn angle(&self, rate: f64) -> f64 {
        TURN / 4.0 - Angle::of_sine((rate / self.task.flat).clamp(-1.0, 1.0)).radians()
    }

    fn knee(&self, a: f64, b: f64) -> f64 {
        let turn = self.angle(a) - self.angle(b);
        let seen = self.task.knee * turn * turn;
        seen + seen * seen / 16.0
    }

    /// c of the module's description for two numbers of repeats.
    fn other(before: i64, after: i64) -> f64 {
        let (before, after) = (before.abs(), after.abs());
        let near = (before - after).abs() == 1 || (before - 2 * after).abs() <= 1 || (after - 2 * before).abs() <= 1;
        let divides = before > 0 && (before % after == 0 || after % before == 0);
        if before == after {
            0.0
        } else if near || divides {
            1.5
        } else {
            2.5
        }
    }

    /// Cost of going from one gait to another; nothing where it isn't allowed.
    fn change(&self, from: Gait, place: u32, to: Gait) -> Option<f64> {
        let rates =
            (f64::from(from.change as i32) / f64::from(from.every), f64::from(to.change as i32) / f64::from(to.every));
        let fits = match self.order {
            Order::Falls => rates.1 < rates.0 && to.change <= from.change,
            Order::Rises => rates.1 > rates.0 && to.change >= from.change,
            Order::Any => from != to,
        };
        if !fits || to.change != 0 && from.change != 0 && place != from.every {
            return None;
        }
        let asks = match (from.change, to.change) {
            (_, 0) if self.task.knee == 0.0 => 1.5,
            (_, 0) => 0.5,
            (a, b) if a.abs() == b.abs() => 1.0,
            (a, b) => Self::other(a, b),
        };
        Some(self.lambda() * asks + self.knee(rates.0, rates.1))
    }

    /// Goes on to round `k` by `change`, in the gait given.
    fn step(&mut self, k: usize, trail: &Trail, change: i64, gait: Option<(Gait, u32, bool)>, extra: f64) {
        let task = self.task;
        let Ok(count) = u32::try_from(i64::from(trail.count) + change) else { return };
        let allowed = match task.ways[k] {
            Ways::Even => change == 0,
            Ways::Grow => change >= 0,
            Ways::Shrink => change <= 0,
            Ways::Both => true,
        };
        let even = change > 0 && trail.count.is_multiple_of(task.corners);
        let stacked = task.corners > 1 && (trail.count >= 2 * task.corners || even);
        if !allowed || count > trail.count * task.most || 2 * count < trail.count {
            return;
        }
        if stacked && change % i64::from(task.corners) != 0 {
            return;
        }
        let mut next = Trail { count, gait, cost: trail.cost + extra, ..trail.clone() };
        if change != 0 {
            let repeats = if stacked { task.corners } else { change.unsigned_abs() as u32 };
            let common = (1..=repeats)
                .filter(|d| repeats.is_multiple_of(*d) && trail.count.is_multiple_of(*d))
                .max()
                .unwrap_or(1);
            let uneven = if repeats < 3 { 2.0 } else { 1.0 - f64::from(common) / f64::from(repeats) };
            next.cost += self.lambda() * 2.0 * uneven;
            next.cost += if change.unsigned_abs() as f64 > task.steady { self.lambda() * 2.0 } else { 0.0 };
            next.cost += gait.filter(|(gait, ..)| gait.every > 1).map_or(0.0, |_| self.knee(change as f64, 0.0));
            next.repeat = change;
            if task.ways[k] != Ways::Both {
                next.words.push(change.unsigned_abs());
            }
        }
        self.round(k, next);
    }

    /// Adds what round `k` costs by its distance and goes through every way on.
    fn round(&mut self, k: usize, mut trail: Trail) {
        let task = self.task;
        let (low, high) = task.bands[k];
        let n = f64::from(trail.count);
        let off = if n < low { low - n } else { (n - high).max(0.0) };
        let tolerance = task.tolerance[k].max(0.4);
        let last = k + 1 == task.bands.len();
        let allowed = if self.held == Held::All { task.allowed[k] } else { f64::INFINITY };
        if off > (self.far * tolerance).min(allowed) || trail.count < 3 {
            return;
        }
        if !task.throughout.holds(trail.count) || last && !task.multiple.holds(trail.count) {
            return;
        }
        trail.cost += off * off / (tolerance * tolerance) * if last { task.edge } else { 1.0 };
        if last {
            return self.end(trail);
        }
        let k = k + 1;
        if task.ways[k] == Ways::Even {
            return self.step(k, &trail, 0, trail.gait, 0.0);
        }
        let lambda = self.lambda();
        match trail.gait {
            Some((gait, worked, shaped)) => {
                let worked = worked % gait.every;
                let change = if worked == 0 { gait.change } else { 0 };
                self.step(k, &trail, change, Some((gait, worked + 1, shaped || worked == 0)), 0.0);
                for to in self.gaits.clone() {
                    let place = trail.gait.map_or(0, |(_, place, _)| place);
                    if let Some(cost) = self.change(gait, place, to).filter(|_| shaped) {
                        self.step(k, &trail, to.change, Some((to, 1, true)), cost);
                    }
                }
            }
            None => self.begin(k, &trail, lambda),
        }
    }

    /// Every first gait, begun anywhere.
    fn begin(&mut self, k: usize, trail: &Trail, lambda: f64) {
        for to in self.gaits.clone() {
            let standing = match self.task.entry {
                Entry::First { least, .. } => i64::from(least),
                Entry::After { repeat, .. } => repeat,
            };
            let cost = if to.change == 0 { 0.0 } else { lambda * Self::other(standing, to.change) };
            self.step(k, trail, to.change, Some((to, 1, true)), cost);
            let left = self.task.ways.iter().skip(k + 1).filter(|way| **way != Ways::Even).count() as u32;
            for worked in (2..=to.every).filter(|worked| to.every - worked < left) {
                self.step(k, trail, 0, Some((to, worked, false)), cost);
            }
        }
    }

    fn start(&mut self) {
        let (task, lambda) = (self.task, self.lambda());
        match task.entry {
            Entry::First { least, most } => {
                let cornered = (least..=most).any(|n| n % task.corners == 0);
                for n in (least..=most).filter(|n| !cornered || n % task.corners == 0) {
                    let first = Gait { change: i64::from(n), every: 1 };
                    let missed = ((f64::from(n) - task.flat).abs() - 0.5).max(0.0);
                    let opening = lambda * 8.0 * missed + self.knee(task.flat, f64::from(n));
                    let trail = Trail {
                        count: n,
                        gait: (least != most).then_some((first, 1, true)),
                        repeat: i64::from(n),
                        cost: if task.opens { opening } else { 0.0 },
                        words: vec![u64::from(n)],
                    };
                    self.round(0, trail);
                }
            }
            Entry::After { count, repeat } => {
                let trail = Trail { count, gait: None, repeat, cost: 0.0, words: Vec::new() };
                match task.ways[0] {
                    Ways::Even => self.step(0, &trail, 0, None, 0.0),
                    Ways::Both => {
                        for change in -60..60 {
                            let cost = if change == 0 { 0.0 } else { lambda * Self::other(repeat, change) };
                            self.step(0, &trail, change, None, cost);
                        }
                    }
                    Ways::Grow | Ways::Shrink => self.begin(0, &trail, lambda),
                }
            }
        }
    }

    fn end(&mut self, trail: Trail) {
        let task = self.task;
        let (low, high) = task.bands[task.bands.len() - 1];
        // From one count that fits the multiple and the corners to the next.
        let step = (1..).map(|times| times * task.multiple.of()).find(|step| step.is_multiple_of(task.corners));
        let step = if task.multiple.of() > 1 { f64::from(step.unwrap_or(1)) } else { 1.0 };
        let (last, half) = (f64::from(trail.count), (trail.repeat.unsigned_abs() as f64).max(step) / 2.0);
        let even = task.ways.iter().all(|ways| *ways == Ways::Even);
        if even || (last >= low - half - 1e-9 && last <= high + half + 1e-9) {
            let rate = trail.gait.map(|(gait, ..)| gait.change as f64 / f64::from(gait.every));
            let leaving = rate.zip(task.leaves).map_or(0.0, |(rate, leaves)| self.knee(rate, leaves));
            let mut words = trail.words;
            words.sort_unstable();
            words.dedup();
            self.found.push(Found { cost: trail.cost + leaving, last: trail.count, words });
        }
    }
}

/// Everything that the first attempt that finds anything finds; nothing after two of them, as the others see too many counts.
fn exhaust(task: &Task) -> Vec<Found> {
    for (far, ordered, held) in FAR.into_iter().take(if task.bands.len() > 3 { 1 } else { 2 }) {
        if held == Held::All && !ordered && !(task.bands.len() > 1 && task.allowed[0].is_finite()) {
            continue;
        }
        let order = if ordered { task.order } else { Order::Any };
        let mut gaits = task.gaits(None);
        if let Entry::First { least, most } = task.entry {
            gaits.extend((least..=most).map(|n| Gait { change: i64::from(n), every: 1 }));
            gaits.dedup();
        }
        let mut search = Exhaust { task, far, held, order, gaits, found: Vec::new() };
        search.start();
        if !search.found.is_empty() {
            return search.found;
        }
    }
    Vec::new()
}

/// Tasks whose targets wander from a first one as an outline's do, some of them too fast.
fn tasks(rounds: usize, fastest: f64, room: u32) -> impl Strategy<Value = Task> {
    let round = (-1.0..fastest, 0.0..1.5_f64, 0.5..1.7_f64, prop::bool::weighted(0.15));
    let strict = prop_oneof![2 => Just(f64::INFINITY), 1 => 0.5..2.0_f64];
    let start = (4.0..16.0_f64, -3..4_i32, prop::bool::ANY);
    let rounds = prop::collection::vec(round, 1..=rounds);
    let manner = (2.0..22.0_f64, 2.0..fastest.max(3.0), 3.0..9.0_f64, 0.0..9.0_f64);
    let shape = (prop::option::of(-1.0..1.0_f64), prop::bool::ANY, prop::bool::ANY, prop::bool::ANY, prop::bool::ANY);
    let prefer = prop_oneof![Just(Preference::Easy), Just(Preference::Balanced), Just(Preference::Close)];
    let corners = prop_oneof![4 => Just(1_u32), 1 => Just(3), 1 => Just(4)];
    let multiple =
        prop_oneof![2 => Just(Multiple::ANY), 1 => (2..7_u32, 0..3_u32).prop_map(|(of, plus)| Multiple::new(of, plus))];
    // What a stitch pattern closes on, in every round.
    let throughout =
        prop_oneof![3 => Just(Multiple::ANY), 1 => (2..5_u32, 0..2_u32).prop_map(|(of, plus)| Multiple::new(of, plus))];
    let corners = (corners, multiple, throughout);
    (rounds, start, 2..=3_u32, corners, (prefer, manner, shape), prop::bool::ANY, strict).prop_map(
        move |(
            rounds,
            (start, off, first),
            most,
            (corners, multiple, throughout),
            (prefer, manner, shape),
            shrinks,
            strict,
        )| {
            let allowed = vec![strict; rounds.len()];
            let (edge, steady, flat, knee) = manner;
            let (leaves, opens, curved, rises, laid) = shape;
            let mut target = if shrinks { start + 14.0 } else { start };
            let given = (target as i32 + off).max(3) as u32;
            let (mut bands, mut tolerance, mut ways) = (Vec::new(), Vec::new(), Vec::new());
            for (index, (step, wide, tol, even)) in rounds.iter().enumerate() {
                let step = if *even || first && index == 0 { 0.0 } else { *step };
                target = (if shrinks { target - step } else { target + step }).max(1.0);
                bands.push((target, target + if index + 1 == rounds.len() { 0.0 } else { *wide }));
                tolerance.push(*tol);
                ways.push(match (even, step < 0.0 && index == 0 && !first, shrinks) {
                    (true, ..) => Ways::Even,
                    (_, true, _) => Ways::Both,
                    (_, _, true) => Ways::Shrink,
                    (_, _, false) => Ways::Grow,
                });
            }
            let entry = if first {
                Entry::First { least: given, most: given + room }
            } else {
                Entry::After { count: given, repeat: i64::from(off) * 2 }
            };
            let order = if rises { Order::Rises } else { Order::Falls };
            let knee = if laid { 0.0 } else { knee };
            Task {
                bands,
                tolerance,
                allowed,
                ways,
                entry,
                most,
                corners,
                multiple,
                throughout,
                edge,
                steady,
                flat,
                knee,
                leaves,
                opens,
                curved,
                order,
                prefer,
            }
        },
    )
}

fn alone(task: &Task) -> Option<(Picked, f64)> {
    let offers = vec![vec![Offer { task: task.clone(), extra: 0.0 }]];
    let (mut picked, cost) = choose_all(&offers).ok()?;
    Some((picked.pop()?, cost))
}

fn cheapest(costs: impl Iterator<Item = f64>) -> Option<f64> {
    costs.min_by(f64::total_cmp)
}

fn kinds(task: &Task, words: usize) -> f64 {
    task.lambda() * KINDS * words as f64
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 400, failure_persistence: None, max_global_rejects: 9000, ..ProptestConfig::default() })]

    /// No counts of one size are cheaper than the chosen ones.
    #[test]
    fn brute_force_finds_nothing_cheaper(task in tasks(4, 8.0, 3)) {
        let found = exhaust(&task);
        let best = cheapest(found.iter().map(|found| found.cost));
        let attempt = solutions(&task);
        match (best, attempt) {
            (Some(best), Some((_, choices))) => {
                let chosen = cheapest(choices.iter().map(|choice| choice.cost));
                prop_assert!(chosen.is_some_and(|cost| (cost - best).abs() < 1e-9), "chosen {choices:?}, best {best}");
            }
            (Some(best), None) => prop_assert!(false, "{best} can be done"),
            (None, _) => {}
        }
    }

    /// No choice for two sizes together is cheaper than the chosen one.
    #[test]
    fn brute_force_finds_nothing_cheaper_for_two_sizes(one in tasks(3, 3.0, 1), two in tasks(3, 3.0, 1)) {
        let two = Task { prefer: one.prefer, ..two };
        // More numbers of repeats to choose from are no longer tried in every combination.
        let words: std::collections::BTreeSet<u64> = one.words().into_iter().chain(two.words()).collect();
        prop_assume!(words.len() <= 8);
        let (found, others) = (exhaust(&one), exhaust(&two));
        let last = |task: &Task, n: u32| {
            let (low, high) = task.bands[task.bands.len() - 1];
            f64::from(n) - f64::from(n).clamp(low, high)
        };
        let tolerance = |task: &Task| task.tolerance[task.tolerance.len() - 1].max(0.4);
        let middle = (tolerance(&one) + tolerance(&two)) / 2.0;
        let pair = |a: &Found, b: &Found| {
            let words: std::collections::BTreeSet<u64> = a.words.iter().chain(&b.words).copied().collect();
            let step = (last(&two, b.last) - last(&one, a.last)) / middle;
            a.cost + b.cost + kinds(&one, words.len()) + STEPS * step * step
        };
        let best = cheapest(found.iter().flat_map(|a| others.iter().map(move |b| pair(a, b))));
        let offer = |task: Task| vec![Offer { task, extra: 0.0 }];
        let chosen = choose_all(&[offer(one.clone()), offer(two.clone())]);
        if let Some(best) = best {
            let cost = chosen.as_ref().map(|(_, cost)| *cost);
            prop_assert!(cost.is_ok_and(|cost| cost < best + 1e-9), "chosen {chosen:?}, best {best}");
        }
    }
}

fn disc(growth: f64, rounds: u32) -> Task {
    let bands: Vec<(f64, f64)> = (1..=rounds).map(|k| (growth * f64::from(k), growth * f64::from(k))).collect();
    Task {
        tolerance: vec![1.0; bands.len()],
        allowed: vec![f64::INFINITY; bands.len()],
        ways: vec![Ways::Grow; bands.len()],
        bands,
        entry: Entry::First { least: 4, most: 9 },
        most: 2,
        corners: 1,
        multiple: Multiple::ANY,
        throughout: Multiple::ANY,
        edge: 10.0,
        steady: 8.0,
        flat: growth,
        knee: 0.0,
        leaves: None,
        opens: true,
        curved: false,
        order: Order::Falls,
        prefer: Preference::Balanced,
    }
}

/// A longer case whose steady answer is plain: six more every round on a disc that grows by just six.
#[test]
fn a_disc_that_grows_by_six_is_worked_in_sixes() {
    let (picked, cost) = alone(&disc(6.0, 40)).expect("it can be worked");
    assert_eq!(picked.choice.counts, (1..=40).map(|k| 6 * k).collect::<Vec<u32>>());
    assert!((cost - kinds(&disc(6.0, 40), 1)).abs() < 1e-8);
}

/// In a pattern over a multiple of four a disc that grows by six is worked in fours and eights, every count a multiple.
#[test]
fn a_pattern_keeps_every_count_a_multiple() {
    let task = Task { throughout: Multiple::new(4, 0), entry: Entry::First { least: 4, most: 8 }, ..disc(6.0, 9) };
    let (picked, _) = alone(&task).expect("it can be worked");
    assert!(picked.choice.counts.iter().all(|count| count % 4 == 0), "{:?}", picked.choice.counts);
    assert!(task.distance(8, picked.choice.counts[8]).abs() <= 2.0, "{:?}", picked.choice.counts);
}

/// Targets that rise faster than doubling can't be met.
#[test]
fn what_can_not_be_reached_is_refused() {
    let task = Task {
        bands: vec![(30.0, 30.0), (90.0, 90.0)],
        tolerance: vec![1.0; 2],
        ways: vec![Ways::Grow; 2],
        entry: Entry::After { count: 10, repeat: 5 },
        opens: false,
        ..disc(6.0, 2)
    };
    assert_eq!(alone(&task).map(|(picked, _)| picked), None);
    assert!(alone(&Task { most: 3, ..task }).is_some());
}
