//! Written rounds as the lines of a pattern: even rounds gathered into ranges, several sizes side by side.

use super::aligned::rows;
use super::write::{Sheet, Writer, across};
use crate::craft::Round;
use crate::plan::{Plan, SizePlan};
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
        Self { first: number, last: number, part, colour, count: after, sheet: Sheet::of(round, size.below(round)) }
    }

    /// True where the other goes on with just the same round.
    fn goes_on(&self, next: &Self) -> bool {
        (self.last + 1, self.part, self.colour, self.count) == (next.first, next.part, next.colour, next.count)
            && self.sheet == next.sheet
    }

    /// True where the other says the same in another size.
    pub(super) fn alike(&self, other: &Self) -> bool {
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
        let names: Vec<&str> = plan.sizes.iter().map(|size| size.name.as_str()).collect();
        rows(&sizes).iter().filter_map(|row| self.sized(row, &names)).collect()
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

#[cfg(test)]
mod tests {
    use super::*;
    use crate::craft::{Begin, Close, Foundation, Op, Stitch, Terms};
    use crate::design::Finish;
    use crate::units::Mm;
    use crate::words::{Language, Words};

    fn piece(rounds: Vec<(Vec<Op>, usize)>) -> SizePlan {
        let round = |(number, (ops, part)): (u32, (Vec<Op>, usize))| {
            let (before, after) = ops.iter().fold((0, 0), |(used, made), op| (used + op.consumed, made + op.count()));
            let (stitch, begin, close) = (Stitch::SC, Begin::Spiral, Close::Spiral);
            let (colour, target, place) = (None, None, None);
            Round { number, part, stitch, before, after, slipped: 0, ops, colour, begin, close, target, place }
        };
        let rounds = (1..).zip(rounds).map(round).collect();
        let (finished, foundation, finish) = (Mm::ZERO, Foundation::Ring, Finish::FastenOff);
        let name = String::new();
        let (parts, step_down, yarn, warnings) = (Vec::new(), Vec::new(), Vec::new(), Vec::new());
        SizePlan { name, head: None, finished, foundation, rounds, parts, finish, step_down, yarn, warnings }
    }

    fn size(crown_repeats: u32, even: u32) -> SizePlan {
        let repeats = crown_repeats as usize;
        let repeat = [Op::plain(Stitch::SC), Op::increase(Stitch::SC, 2)];
        let crown = [
            vec![Op::into_ring(Stitch::SC); repeats],
            vec![Op::increase(Stitch::SC, 2); repeats],
            repeat.iter().cycle().take(2 * repeats).cloned().collect(),
        ];
        let side = vec![vec![Op::plain(Stitch::SC); 3 * repeats]; even as usize];
        let (crown, side) = (crown.into_iter().map(|ops| (ops, 0)), side.into_iter().map(|ops| (ops, 1)));
        piece(crown.chain(side).collect())
    }

    #[test]
    fn even_rounds_share_a_line() {
        let words = Words::of(Language::EN);
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
        let words = Words::of(Language::EN);
        let writer = Writer { words: &words, terms: Terms::Us };
        let sizes: Vec<Vec<Stretch>> = [size(6, 4), size(7, 5)].iter().map(stretches).collect();
        let third: Vec<Option<&Stretch>> = sizes.iter().map(|size| size.get(2)).collect();
        let line = writer.sized(&third, &["S", "M"]).map(|line| line.text);
        assert_eq!(line.as_deref(), Some("[sc in next st, 2 sc in next st] 6 (7) times – 18 (21)"));
        let fourth: Vec<Option<&Stretch>> = sizes.iter().map(|size| size.get(3)).collect();
        let label = writer.sized(&fourth, &["S", "M"]).map(|line| line.label);
        assert_eq!(label.as_deref(), Some("Rnds 4–7 (4–8)"));
        let only: Vec<Option<&Stretch>> = vec![None, sizes[1].get(2)];
        let line = writer.sized(&only, &["S", "M"]);
        let line = line.map(|line| format!("{}: {}", line.label, line.text));
        let expected = "Size M only: Rnd 3: [sc in next st, 2 sc in next st] 7 times (21)";
        assert_eq!(line.as_deref(), Some(expected));
    }

    /// Told apart by the stitch of each round: `sd|h` is a round of sc and one of dc, then one of hdc in the next part.
    fn shown(sizes: &[&str]) -> Vec<String> {
        let size = |letters: &&str| {
            let mut part = 0;
            let mut rounds = Vec::new();
            for letter in letters.chars() {
                match letter {
                    's' => rounds.push((vec![Op::plain(Stitch::SC); 2], part)),
                    'd' => rounds.push((vec![Op::plain(Stitch::DC); 2], part)),
                    'h' => rounds.push((vec![Op::plain(Stitch::HDC); 2], part)),
                    _ => part += 1,
                }
            }
            stretches(&piece(rounds))
        };
        let sizes: Vec<Vec<Stretch>> = sizes.iter().map(size).collect();
        let cell = |stretch: &Option<&Stretch>| stretch.map_or("-".to_owned(), |stretch| stretch.first.to_string());
        rows(&sizes).iter().map(|row| row.iter().map(cell).collect()).collect()
    }

    #[test]
    fn sizes_are_lined_up_in_as_few_lines_as_they_take() {
        assert_eq!(shown(&["sdh", "dhs"]), ["1-", "21", "32", "-3"]);
        assert_eq!(shown(&["sdsh", "hdsh"]), ["1-", "-1", "22", "33", "44"]);
        assert_eq!(shown(&["sd", "d", "sd"]), ["1-1", "212"]);
        assert_eq!(shown(&["sd|h", "s|dh"]), ["11", "2-", "-2", "33"]);
        assert!(shown(&[]).is_empty());
    }
}
