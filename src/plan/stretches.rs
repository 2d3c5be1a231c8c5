//! Where the count of a shaped part may change that is worked in a stitch pattern: in its plain rounds, or in a plain round
//! between one time through and the next. The rounds from one such round to the next keep one count, a whole number of
//! repeats; so they are chosen as one.

use super::choose::{Entry, FEWEST, Task, Ways};
use super::texture::Texture;
use crate::craft::Multiple;

/// Rounds of one count, of which only the first may change it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Stretch {
    /// How many.
    pub(super) rounds: u32,
    /// False where the first may not either.
    pub(super) shaped: bool,
}

impl Texture {
    /// Rounds before the first that may change the count.
    pub(super) fn lead(&self) -> u32 {
        let first = self.plain.iter().position(Option::is_some);
        first.map_or(0, |first| (self.set_up.len() + first) as u32)
    }

    /// Rounds from one that may change the count to the next: where plain rounds come at even distances that is theirs,
    /// else it is the whole pattern. Without any, one that is put in before each time through.
    fn every(&self) -> u32 {
        let (all, plain) = (self.lines.len(), self.plain.iter().filter(|line| line.is_some()).count());
        let first = self.plain.iter().position(Option::is_some);
        let Some(first) = first else { return (1 + self.set_up.len() + all) as u32 };
        let apart = all / plain.max(1);
        let even = plain * apart == all && (0..plain).all(|nth| self.plain[(first + nth * apart) % all].is_some());
        if even { apart as u32 } else { all as u32 }
    }

    /// True where the count changes in rounds of the pattern itself.
    pub(super) fn has_plain(&self) -> bool {
        self.plain.iter().any(Option::is_some)
    }

    /// True where the round into a ring is the first of the pattern.
    pub(super) fn begins_plain(&self) -> bool {
        self.has_plain() && self.lead() == 0
    }

    /// The rounds of a shaped part, so many, as they keep their counts: from a ring on, or onto stitches, whose first
    /// round may have to fit them to another width.
    pub(super) fn stretches(&self, rounds: u32, from_ring: bool, rewidened: bool) -> Vec<Stretch> {
        let (lead, every) = (self.lead(), self.every());
        let first = match (from_ring, lead) {
            // The round into the ring is the plain round.
            (_, 0) => Vec::new(),
            (true, lead) => vec![Stretch { rounds: 1 + lead, shaped: true }],
            (false, lead) if rewidened => {
                vec![Stretch { rounds: 1, shaped: true }, Stretch { rounds: lead, shaped: false }]
            }
            (false, lead) => vec![Stretch { rounds: lead, shaped: false }],
        };
        let mut left = rounds;
        let then = std::iter::repeat(Stretch { rounds: every, shaped: true });
        let cut = |stretch: Stretch| {
            let own = stretch.rounds.min(left);
            left -= own;
            Stretch { rounds: own, ..stretch }
        };
        first.into_iter().chain(then).map(cut).take_while(|stretch| stretch.rounds > 0).collect()
    }
}

/// Lets the rounds within a stretch stray: they have the count of its end, which alone is held.
pub(super) fn held_at_ends(task: &mut Task, stretches: &[Stretch]) {
    let mut at = 0;
    for stretch in stretches {
        let end = at + stretch.rounds as usize;
        task.allowed.iter_mut().take(end.saturating_sub(1)).skip(at).for_each(|allowed| *allowed = f64::INFINITY);
        at = end;
    }
}

/// The stretches of a part in a pattern, each as one round: what it comes to at its end, and growth as of all its rounds.
pub(super) fn stretched(task: &Task, stretches: &[Stretch], throughout: Multiple) -> Task {
    let (mut at, mut rows) = (0, Vec::with_capacity(stretches.len()));
    for stretch in stretches {
        let own = at..at + stretch.rounds as usize;
        at = own.end;
        let shaped = task.ways.get(own.clone()).unwrap_or_default().iter().rfind(|ways| **ways != Ways::Even);
        let ways = shaped.copied().filter(|_| stretch.shaped).unwrap_or(Ways::Even);
        rows.push((own.end.saturating_sub(1), ways));
    }
    let of = |values: &[f64]| rows.iter().filter_map(|(end, _)| values.get(*end).copied()).collect();
    let every = stretches.iter().map(|stretch| stretch.rounds).max().unwrap_or(1);
    let first = match (task.ways.first(), stretches.first()) {
        (Some(Ways::Both), Some(stretch)) if stretch.shaped => Some(Ways::Both),
        _ => None,
    };
    let ways = rows.iter().map(|(_, ways)| *ways);
    let entry = match task.entry {
        // A ring may take what closes where nothing within its usual room does.
        Entry::First { least, most } if least < most && !(least..=most).any(|count| throughout.holds(count)) => {
            // A few more pucker, many can't be drawn together.
            let (_, above) = throughout.around(f64::from(least), FEWEST);
            Entry::First { least, most: if above <= 2 * most { above } else { most } }
        }
        entry @ (Entry::First { .. } | Entry::After { .. }) => entry,
    };
    Task {
        entry,
        bands: rows.iter().filter_map(|(end, _)| task.bands.get(*end).copied()).collect(),
        tolerance: of(&task.tolerance),
        allowed: of(&task.allowed),
        ways: first.into_iter().chain(ways.skip(usize::from(first.is_some()))).collect(),
        steady: task.steady * f64::from(every),
        flat: task.flat * f64::from(every),
        throughout,
        // A first round is that of a ring, and not of a whole stretch.
        opens: false,
        ..task.clone()
    }
}

#[cfg(test)]
mod tests {
    use super::super::texture::{Texture, textures};
    use crate::design::read as design;
    use crate::report::Report;

    /// The pattern of the second part of a basket whose sides flare.
    fn texture(pattern: &str) -> Texture {
        let text = format!(
            "title: T\nkind: basket\nswatch: {{stitch: sc, stitches: 16, rounds: 17, width: 10, height: 10}}\n\
             sizes: {{one: {{across: 16}}}}\nparts:\n  - base\n  - side: {{shape: taper, depth: 8, around: 60, {pattern}}}\n"
        );
        let mut report = Report::new();
        let design = design(&text, &mut report).unwrap_or_else(|| panic!("{report:#?}"));
        let textures = textures(&design, &mut report).unwrap_or_else(|| panic!("{report:#?}"));
        textures.into_iter().flatten().next().expect("a pattern")
    }

    fn lengths(texture: &Texture, rounds: u32, ring: bool, rewidened: bool) -> Vec<(u32, bool)> {
        texture.stretches(rounds, ring, rewidened).iter().map(|stretch| (stretch.rounds, stretch.shaped)).collect()
    }

    #[test]
    fn counts_change_in_the_plain_rounds_of_a_pattern() {
        let ribs = texture("pattern: [sc in each st, \"FPdc in next, BPdc in next\"]");
        assert_eq!(lengths(&ribs, 7, false, false), [(2, true), (2, true), (2, true), (1, true)]);
        assert_eq!(lengths(&ribs, 5, true, false), [(2, true), (2, true), (1, true)]);
        assert!(ribs.begins_plain() && ribs.plain_at(0).is_some() && ribs.plain_at(1).is_none());
        // Where the plain round comes second, the first keeps the count it is given.
        let late = texture("pattern: [\"FPdc in next, BPdc in next\", sc in each st]");
        assert_eq!(lengths(&late, 6, false, false), [(1, false), (2, true), (2, true), (1, true)]);
        assert_eq!(lengths(&late, 6, false, true), [(1, true), (1, false), (2, true), (2, true)]);
        assert_eq!(lengths(&late, 6, true, false), [(2, true), (2, true), (2, true)]);
        // Two plain rounds at even distances, and two that aren't.
        let even = texture(
            "pattern: [sc in each st, \"FPdc in next, BPdc in next\", sc in each st, \"BPdc in next, FPdc in next\"]",
        );
        assert_eq!(lengths(&even, 5, false, false), [(2, true), (2, true), (1, true)]);
        let odd = texture("pattern: [sc in each st, sc in each st, \"FPdc in next, BPdc in next\"]");
        assert_eq!(lengths(&odd, 7, false, false), [(3, true), (3, true), (1, true)]);
    }

    #[test]
    fn counts_change_between_where_a_pattern_has_no_plain_round() {
        let ribs = texture("pattern: [\"FPdc in next, BPdc in next\"]");
        assert_eq!(lengths(&ribs, 5, false, false), [(2, true), (2, true), (1, true)]);
        assert!(!ribs.has_plain() && !ribs.begins_plain() && ribs.lead() == 0);
        let shells = texture(
            "setup: [\"5 dc in next st, sk 2 sts, sc in next st, sk 2 sts\"], \
             pattern: [\"sc in next st, sk 1 st, sc in next st, sk 1 st, 4 dc in next st, sk 1 st\"]",
        );
        assert_eq!(shells.multiple.of(), 6);
        assert_eq!(lengths(&shells, 7, false, false), [(3, true), (3, true), (1, true)]);
    }
}
