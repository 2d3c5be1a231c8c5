//! The choice against an exhaustive search that shares no code with it but the constants.

use super::*;
use proptest::prelude::*;

/// J as the module's description states it; nothing where a limit is broken.
fn cost(task: &Task, counts: &[u32], far: f64) -> Option<f64> {
    let lambda = match task.prefer {
        Preference::Easy => 20.0,
        Preference::Balanced => 5.0,
        Preference::Close => 1.0,
    };
    let (mut before, mut repeat, mut was) = match task.entry {
        Entry::First { .. } => (0, 0, None),
        Entry::After { count, repeat } => (count, repeat, None),
    };
    let mut sum = 0.0;
    for (k, &n) in counts.iter().enumerate() {
        let (low, high) = task.bands[k];
        let off = if f64::from(n) < low { low - f64::from(n) } else { (f64::from(n) - high).max(0.0) };
        let tolerance = task.tolerance[k].max(0.4);
        if off > far * tolerance || n < 3 {
            return None;
        }
        sum += off * off / (tolerance * tolerance) * if k + 1 == counts.len() { task.edge } else { 1.0 };
        if before == 0 {
            let Entry::First { least, most } = task.entry else { return None };
            let cornered = (least..=most).any(|n| n % task.corners == 0);
            if n < least || n > most || (cornered && n % task.corners != 0) {
                return None;
            }
            (before, repeat, was) = (n, i64::from(n), Some(true));
            sum += if task.alike.first().is_some_and(|other| *other != repeat) { lambda * 0.25 } else { 0.0 };
            continue;
        }
        let change = i64::from(n) - i64::from(before);
        let shaped = change != 0;
        let stacked = task.corners > 1 && before >= 2 * task.corners;
        if shaped {
            let allowed = match task.ways[k] {
                Ways::Even => false,
                Ways::Grow => change > 0,
                Ways::Shrink => change < 0,
                Ways::Both => true,
            };
            if !allowed || n > before * task.most || 2 * n < before || stacked && change % i64::from(task.corners) != 0
            {
                return None;
            }
            let repeats = if stacked { task.corners } else { change.unsigned_abs() as u32 };
            let common = (1..=repeats).filter(|d| repeats % d == 0 && before % d == 0).max().unwrap_or(1);
            let uneven = if repeats < 3 { 2.0 } else { 1.0 - f64::from(common) / f64::from(repeats) };
            sum += lambda * (2.0 * uneven + if change == repeat { 0.0 } else { 2.0 });
            sum += if change.unsigned_abs() as f64 > task.steady { lambda * 2.0 } else { 0.0 };
            repeat = change;
        }
        sum += if task.alike.get(k).is_some_and(|other| *other != change) { lambda * 0.25 } else { 0.0 };
        sum += if was.is_some_and(|was| was != shaped) { lambda * task.switch } else { 0.0 };
        (before, was) = (n, Some(shaped));
    }
    let (low, high) = task.bands[counts.len() - 1];
    let (last, half) = (f64::from(before), (repeat.unsigned_abs() as f64 / 2.0).max(0.5));
    let even = task.ways.iter().all(|ways| *ways == Ways::Even);
    (even || (last >= low - half - 1e-9 && last <= high + half + 1e-9)).then_some(sum)
}

fn exhaust(task: &Task, counts: &mut Vec<u32>, far: f64, best: &mut Option<f64>) {
    if counts.len() == task.bands.len() {
        if let Some(cost) = cost(task, counts, far) {
            *best = Some(best.map_or(cost, |least: f64| least.min(cost)));
        }
        return;
    }
    let k = counts.len();
    let (low, high) = task.bands[k];
    let reach = far * task.tolerance[k].max(0.4);
    let near = |n: &u32| f64::from(*n) >= low - reach && f64::from(*n) <= high + reach;
    for n in (3..60).filter(near) {
        counts.push(n);
        exhaust(task, counts, far, best);
        counts.pop();
    }
}

/// Tasks whose targets wander from a first one as an outline's do, some of them too fast.
fn tasks() -> impl Strategy<Value = Task> {
    let round = (-1.0..8.0_f64, 0.0..1.5_f64, 0.5..1.7_f64, prop::bool::weighted(0.15));
    let start = (4.0..16.0_f64, -3..4_i32, prop::bool::ANY);
    let rounds = prop::collection::vec(round, 1..=5);
    let alike = prop::collection::vec(-6..7_i64, 0..6);
    let manner = (2.0..12.0_f64, 0.0..0.6_f64, 3.0..9.0_f64);
    let prefer = prop_oneof![Just(Preference::Easy), Just(Preference::Balanced), Just(Preference::Close)];
    let corners = prop_oneof![4 => Just(1_u32), 1 => Just(3), 1 => Just(4)];
    (rounds, start, 2..=3_u32, corners, (prefer, alike, manner), prop::bool::ANY).prop_map(
        |(rounds, (start, off, first), most, corners, (prefer, alike, (edge, switch, steady)), shrinks)| {
            let mut target = if shrinks { start + 14.0 } else { start };
            let given = (target as i32 + off).max(3) as u32;
            let (mut bands, mut tolerance, mut ways) = (Vec::new(), Vec::new(), Vec::new());
            for (index, (step, wide, tol, even)) in rounds.iter().enumerate() {
                let step = if *even || first && index == 0 { 0.0 } else { *step };
                target = (if shrinks { target - step } else { target + step }).max(1.0);
                bands.push((target, target + if index + 1 == rounds.len() { 0.0 } else { *wide }));
                tolerance.push(*tol);
                ways.push(match (even, step < 0.0, shrinks) {
                    (true, ..) => Ways::Even,
                    (_, true, _) => Ways::Both,
                    (_, _, true) => Ways::Shrink,
                    (_, _, false) => Ways::Grow,
                });
            }
            let entry = if first {
                Entry::First { least: given, most: given + 3 }
            } else {
                Entry::After { count: given, repeat: i64::from(off) * 2 }
            };
            Task { bands, tolerance, ways, entry, most, corners, edge, switch, steady, alike, prefer }
        },
    )
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 500, failure_persistence: None, ..ProptestConfig::default() })]

    /// No counts are cheaper than the chosen ones, and what is chosen costs what it says.
    #[test]
    fn brute_force_finds_nothing_cheaper(task in tasks()) {
        let mut best = None;
        let mut used = 0.0;
        // The widest windows hold too many counts to try them all.
        for far in FAR.into_iter().take(if task.bands.len() > 3 { 1 } else { 2 }) {
            exhaust(&task, &mut Vec::new(), far, &mut best);
            used = far;
            if best.is_some() {
                break;
            }
        }
        let chosen = choose(&task);
        if let Some(best) = best {
            let chosen = chosen.expect("a solution exists");
            let stated = cost(&task, &chosen.counts, used);
            prop_assert!((chosen.cost - best).abs() < 1e-9, "chosen {chosen:?}, best {best}");
            prop_assert!(stated.is_some_and(|stated| (stated - best).abs() < 1e-9), "{chosen:?} costs {stated:?}");
        } else if let Some(chosen) = chosen {
            prop_assert!(FAR.iter().skip(1).any(|far| cost(&task, &chosen.counts, *far).is_some()));
        }
    }
}

/// A longer case whose steady answer is plain: six more every round on a disc that grows by just six.
#[test]
fn a_disc_that_grows_by_six_is_worked_in_sixes() {
    let bands: Vec<(f64, f64)> = (1..=40).map(|k| (6.0 * f64::from(k), 6.0 * f64::from(k))).collect();
    let task = Task {
        tolerance: vec![1.0; bands.len()],
        ways: vec![Ways::Grow; bands.len()],
        bands,
        entry: Entry::First { least: 4, most: 9 },
        most: 2,
        corners: 1,
        edge: 10.0,
        switch: 0.02,
        steady: 8.0,
        alike: Vec::new(),
        prefer: Preference::Balanced,
    };
    let choice = choose(&task).expect("it can be worked");
    assert_eq!(choice.counts, (1..=40).map(|k| 6 * k).collect::<Vec<u32>>());
    assert!(choice.cost < 1e-8);
}

/// Targets that rise faster than doubling can't be met.
#[test]
fn what_can_not_be_reached_is_refused() {
    let task = Task {
        bands: vec![(30.0, 30.0), (90.0, 90.0)],
        tolerance: vec![1.0; 2],
        ways: vec![Ways::Grow; 2],
        entry: Entry::After { count: 10, repeat: 5 },
        most: 2,
        corners: 1,
        edge: 10.0,
        switch: 0.02,
        steady: 8.0,
        alike: Vec::new(),
        prefer: Preference::Balanced,
    };
    assert_eq!(choose(&task), None);
    assert!(choose(&Task { most: 3, ..task }).is_some());
}
