//! Written rounds as the lines of a pattern: even rounds gathered into ranges, several sizes side by side.

use super::write::{Sheet, Writer, across};
use crate::plan::{Plan, Round, SizePlan};
use crate::words::Arg;

/// One line of one size.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct WrittenLine {
    /// Number of its first round.
    pub first: u32,
    /// Number of its last round.
    pub last: u32,
    /// Index into the parts of the size.
    pub part: usize,
    /// Index into the design's colours.
    pub colour: Option<usize>,
    /// `Rnd 5` or `Rnds 8–14`.
    pub label: String,
    /// The instruction with its count.
    pub text: String,
    /// Stitches of each of its rounds.
    pub count: u32,
}

/// One line of several sizes; the lists go by the sizes of the plan, and hold nothing where a size has no such round.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct SizedLine {
    /// Numbers of its first round.
    pub first: Vec<Option<u32>>,
    /// Numbers of its last round.
    pub last: Vec<Option<u32>>,
    /// Index into the parts of each size.
    pub part: usize,
    /// Index into the design's colours.
    pub colour: Option<usize>,
    /// `Rnd 12 (13, 13)`, and which sizes it is for where it isn't for all of them.
    pub label: String,
    /// The instruction with its counts in bracket form.
    pub text: String,
    /// Stitches of each of its rounds.
    pub counts: Vec<Option<u32>>,
}

/// Rounds that say the same, one after another.
pub(super) struct Stretch {
    pub(super) first: u32,
    pub(super) last: u32,
    pub(super) part: usize,
    colour: Option<usize>,
    pub(super) count: u32,
    pub(super) sheet: Sheet,
}

impl Stretch {
    fn of(round: &Round, size: &SizePlan) -> Self {
        let Round { number, part, colour, after, .. } = *round;
        Self { first: number, last: number, part, colour, count: after, sheet: Sheet::of(round, size.foundation) }
    }

    /// True where the other goes on with just the same round.
    fn goes_on(&self, next: &Self) -> bool {
        (self.last + 1, self.part, self.colour, self.count) == (next.first, next.part, next.colour, next.count)
            && self.sheet == next.sheet
    }

    /// True where the other says the same in another size.
    fn alike(&self, other: &Self) -> bool {
        let several = |stretch: &Self| stretch.first < stretch.last;
        (self.part, self.colour, several(self)) == (other.part, other.colour, several(other))
            && self.sheet.alike(&other.sheet)
    }
}

pub(super) fn stretches(size: &SizePlan) -> Vec<Stretch> {
    let mut stretches: Vec<Stretch> = Vec::new();
    for round in &size.rounds {
        let next = Stretch::of(round, size);
        match stretches.last_mut() {
            Some(last) if last.goes_on(&next) => last.last = next.last,
            _ => stretches.push(next),
        }
    }
    stretches
}

impl Writer<'_> {
    /// The lines of one size in working order; alike rounds that follow one another in one part and colour share a
    /// line.
    pub fn rounds(&self, size: &SizePlan) -> Vec<WrittenLine> {
        let line = |stretch: &Stretch| {
            let Stretch { first, last, part, colour, count, ref sheet } = *stretch;
            let label = self.label(&[Some(first)], &[Some(last)]);
            let text = format!("{} ({count})", self.sheets(&[Some(sheet)]));
            WrittenLine { first, last, part, colour, label, text, count }
        };
        stretches(size).iter().map(line).collect()
    }

    /// The lines of all sizes of a plan. Lines that are alike but for their numbers are one line; the order of each
    /// size is kept, and part follows part.
    pub fn sizes(&self, plan: &Plan) -> Vec<SizedLine> {
        let sizes: Vec<Vec<Stretch>> = plan.sizes.iter().map(stretches).collect();
        let mut at = vec![0; sizes.len()];
        let mut lines = Vec::new();
        loop {
            let heads: Vec<Option<&Stretch>> = sizes.iter().zip(&at).map(|(size, at)| size.get(*at)).collect();
            let Some(group) = next_group(&heads) else { return lines };
            for (at, taken) in at.iter_mut().zip(&group) {
                *at += usize::from(taken.is_some());
            }
            let names: Vec<&str> = plan.sizes.iter().map(|size| size.name.as_str()).collect();
            lines.extend(self.sized(&group, &names));
        }
    }

    /// Numbers stand in the order of the sizes that have the line; where others don't, the label says which do.
    fn sized(&self, group: &[Option<&Stretch>], names: &[&str]) -> Option<SizedLine> {
        let lead = group.iter().flatten().next()?;
        let numbers = |number: fn(&Stretch) -> u32| -> Vec<Option<u32>> {
            group.iter().map(|stretch| stretch.map(number)).collect()
        };
        let (first, last) = (numbers(|stretch| stretch.first), numbers(|stretch| stretch.last));
        let counts = numbers(|stretch| stretch.count);
        let there = |values: &[Option<u32>]| values.iter().copied().filter(Option::is_some).collect::<Vec<_>>();
        let sheets: Vec<Option<&Sheet>> = group.iter().flatten().map(|stretch| Some(&stretch.sheet)).collect();
        let (mut label, count) = (self.label(&there(&first), &there(&last)), across(&there(&counts)));
        if sheets.len() < group.len() {
            let own = names.iter().zip(group).filter(|(_, stretch)| stretch.is_some());
            let own = own.map(|(name, _)| *name).collect::<Vec<_>>().join(", ");
            let count = Arg::Count(sheets.len() as u32);
            label =
                self.say("only-sizes", &[("count", count), ("sizes", Arg::Text(&own)), ("label", Arg::Text(&label))]);
        }
        let count = if count.contains(' ') { format!(" – {count}") } else { format!(" ({count})") };
        let text = self.sheets(&sheets) + &count;
        Some(SizedLine { first, last, part: lead.part, colour: lead.colour, label, text, counts })
    }
}

/// The stretches to write next as one line: of the earliest part, the largest group that is alike.
fn next_group<'a>(heads: &[Option<&'a Stretch>]) -> Option<Vec<Option<&'a Stretch>>> {
    let part = heads.iter().flatten().map(|stretch| stretch.part).min()?;
    let leads = heads.iter().flatten().filter(|stretch| stretch.part == part);
    let group = |lead: &&Stretch| -> Vec<Option<&'a Stretch>> {
        heads.iter().map(|head| head.filter(|stretch| stretch.alike(lead))).collect()
    };
    let groups: Vec<_> = leads.map(group).collect();
    let size = |group: &Vec<Option<&Stretch>>| group.iter().flatten().count();
    let most = groups.iter().map(size).max()?;
    groups.into_iter().find(|group| size(group) == most)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::design::{Finish, Terms};
    use crate::plan::{Begin, Close, Foundation, Op};
    use crate::stitch::Stitch;
    use crate::units::Mm;
    use crate::words::{Language, Words};

    fn size(crown_repeats: u32, even: u32) -> SizePlan {
        let mut rounds = Vec::new();
        let mut add = |ops: Vec<Op>, part| {
            let sums = ops.iter().fold((0, 0), |(used, made), op| (used + op.consumed, made + op.count()));
            let number = rounds.len() as u32 + 1;
            rounds.push(Round {
                number,
                part,
                stitch: Stitch::SC,
                before: sums.0,
                after: sums.1,
                ops,
                colour: None,
                begin: Begin::Spiral,
                close: Close::Spiral,
                target: None,
                place: None,
            });
        };
        add(vec![Op::into_ring(Stitch::SC); crown_repeats as usize], 0);
        add(vec![Op::increase(Stitch::SC, 2); crown_repeats as usize], 0);
        let repeat = [Op::plain(Stitch::SC), Op::increase(Stitch::SC, 2)];
        add(repeat.iter().cycle().take(2 * crown_repeats as usize).cloned().collect(), 0);
        for _ in 0..even {
            add(vec![Op::plain(Stitch::SC); 3 * crown_repeats as usize], 1);
        }
        let (finished, foundation, finish) = (Mm::ZERO, Foundation::Ring, Finish::FastenOff);
        let name = String::new();
        let (parts, step_down, yarn, warnings) = (Vec::new(), Vec::new(), Vec::new(), Vec::new());
        SizePlan { name, head: None, finished, foundation, rounds, parts, finish, step_down, yarn, warnings }
    }

    #[test]
    fn even_rounds_share_a_line() {
        let words = Words::of(Language::En);
        let lines = Writer { words: &words, terms: Terms::Us }.rounds(&size(6, 4));
        let texts: Vec<String> = lines.iter().map(|line| format!("{}: {}", line.label, line.text)).collect();
        assert_eq!(
            texts,
            [
                "Rnd 1: make an adjustable ring, 6 sc in ring (6)",
                "Rnd 2: 2 sc in each st around (12)",
                "Rnd 3: [sc in next st, 2 sc in next st] 6 times (18)",
                "Rnds 4–7: sc in each st around (18)",
            ]
        );
    }

    #[test]
    fn sizes_that_are_alike_share_a_line() {
        let words = Words::of(Language::En);
        let writer = Writer { words: &words, terms: Terms::Us };
        let sizes: Vec<Vec<Stretch>> = [size(6, 4), size(7, 5)].iter().map(stretches).collect();
        let third: Vec<Option<&Stretch>> = sizes.iter().map(|size| size.get(2)).collect();
        let line = writer.sized(&third, &["S", "M"]).map(|line| line.text);
        assert_eq!(line.as_deref(), Some("[sc in next st, 2 sc in next st] 6 (7) times – 18 (21)"));
        let fourth: Vec<Option<&Stretch>> = sizes.iter().map(|size| size.get(3)).collect();
        let label = writer.sized(&fourth, &["S", "M"]).map(|line| line.label);
        assert_eq!(label.as_deref(), Some("Rnds 4 – 7 (8)"));
        let only: Vec<Option<&Stretch>> = vec![None, sizes[1].get(2)];
        let line = writer.sized(&only, &["S", "M"]);
        let line = line.map(|line| format!("{}: {}", line.label, line.text));
        let expected = "Size M only: Rnd 3: [sc in next st, 2 sc in next st] 7 times (21)";
        assert_eq!(line.as_deref(), Some(expected));
    }
}
