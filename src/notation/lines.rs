//! Written rounds as the lines of a pattern: even rounds gathered into ranges, several sizes side by side.

use super::across::{Numbers, side_by_side};
use super::aligned::rows;
use super::phrase::Instruction;
use crate::craft::{Begin, Op, Own, Piece, Round};

/// What a line is called: its rounds, in the sizes that have them.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Label {
    /// Numbers of the first round.
    pub first: Numbers,
    /// Numbers of the last round.
    pub last: Numbers,
    /// Names of the sizes that have the line, where not all of them do.
    pub only: Vec<String>,
}

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
    /// What it is called.
    pub label: Label,
    /// What is done in each of its rounds.
    pub instruction: Instruction,
    /// Stitches of each of its rounds.
    pub count: u32,
}

/// One line of several sizes; the lists go by the sizes, and hold nothing where a size has no such round.
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
    /// What it is called.
    pub label: Label,
    /// What is done in each of its rounds, with the numbers of the sizes that have it.
    pub instruction: Instruction,
    /// Stitches of each of its rounds.
    pub counts: Vec<Option<u32>>,
}

/// Rounds that say the same, one after another.
pub(super) struct Stretch {
    pub(super) first: u32,
    pub(super) last: u32,
    pub(super) part: usize,
    pub(super) colour: Option<usize>,
    pub(super) count: u32,
    pub(super) instruction: Instruction,
    /// How each begins, and what its turning chain begins: rounds that differ in this are not worked alike, even where
    /// they read alike.
    start: (Begin, Option<Op>),
}

impl Stretch {
    fn of(round: &Round, piece: Piece<'_>) -> Self {
        let Round { number, part, colour, after, begin, .. } = *round;
        let counts = matches!(begin, Begin::Chain { counts: true, .. });
        let start = (begin, round.ops.first().filter(|_| counts).cloned());
        let instruction = Instruction::of(round, piece.below(round));
        Self { first: number, last: number, part, colour, count: after, instruction, start }
    }

    /// True where the other goes on with just the same round.
    fn goes_on(&self, next: &Self) -> bool {
        (self.last + 1, self.part, self.colour, &self.start) == (next.first, next.part, next.colour, &next.start)
            && self.instruction == next.instruction
    }

    /// True where the other says the same in another size.
    pub(super) fn alike(&self, other: &Self) -> bool {
        let several = |stretch: &Self| stretch.first < stretch.last;
        (self.part, self.colour, &self.start, several(self)) == (other.part, other.colour, &other.start, several(other))
            && self.instruction.alike(&other.instruction)
    }
}

pub(super) fn stretches(piece: Piece<'_>) -> Vec<Stretch> {
    let mut stretches: Vec<Stretch> = Vec::new();
    for round in piece.rounds {
        let next = Stretch::of(round, piece);
        match stretches.last_mut() {
            Some(last) if last.goes_on(&next) => last.last = next.last,
            _ => stretches.push(next),
        }
    }
    stretches
}

/// The lines of one size in working order; alike rounds that follow one another in one part and colour share a line.
pub fn lines(piece: Piece<'_>) -> Vec<WrittenLine> {
    let line = |stretch: Stretch| {
        let Stretch { first, last, part, colour, count, instruction, .. } = stretch;
        let label = Label { first: Numbers::one(first), last: Numbers::one(last), only: Vec::new() };
        WrittenLine { first, last, part, colour, label, instruction, count }
    };
    stretches(piece).into_iter().map(line).collect()
}

/// The lines of several sizes, each a piece and a name. Lines that are alike but for their numbers are one line; the
/// order of each size is kept, and part follows part.
pub fn sized_lines(pieces: &[(Piece<'_>, &str)]) -> Vec<SizedLine> {
    let sizes: Vec<Vec<Stretch>> = pieces.iter().map(|(piece, _)| stretches(*piece)).collect();
    let names: Vec<&str> = pieces.iter().map(|(_, name)| *name).collect();
    rows(&sizes).iter().filter_map(|row| sized(row, &names)).collect()
}

/// Numbers stand in the order of the sizes that have the line; where others don't, the label says which do.
fn sized(group: &[Option<&Stretch>], names: &[&str]) -> Option<SizedLine> {
    let mut there = group.iter().flatten();
    let lead = there.next()?;
    let mut instruction = there.fold(lead.instruction.clone(), |all, stretch| all.beside(&stretch.instruction));
    if let Some(own) = instruction.said.as_mut().and_then(|said| said.own.as_mut()) {
        let all: Vec<&Own> = group.iter().flatten().filter_map(|stretch| stretch.instruction.own()).collect();
        own.words = side_by_side(&all.iter().map(|own| own.words.as_str()).collect::<Vec<_>>());
        own.counted = side_by_side(&all.iter().map(|own| own.counted.as_str()).collect::<Vec<_>>());
    }
    let numbers =
        |number: fn(&Stretch) -> u32| -> Vec<Option<u32>> { group.iter().map(|stretch| stretch.map(number)).collect() };
    let (first, last) = (numbers(|stretch| stretch.first), numbers(|stretch| stretch.last));
    let having = names.iter().zip(group).filter(|(_, stretch)| stretch.is_some());
    let only: Vec<String> = having.map(|(name, _)| (*name).to_owned()).collect();
    let label = Label {
        first: Numbers::several(first.iter().flatten().copied()),
        last: Numbers::several(last.iter().flatten().copied()),
        only: if only.len() < group.len() { only } else { Vec::new() },
    };
    let counts = numbers(|stretch| stretch.count);
    Some(SizedLine { first, last, part: lead.part, colour: lead.colour, label, instruction, counts })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::common;
    use crate::craft::{Foundation, Stitch, Terms};
    use crate::notation::across::Gaps;
    use crate::notation::write::Writer;
    use crate::words::{Language, Words};

    fn rounds(rounds: Vec<(Vec<Op>, usize)>) -> Vec<Round> {
        let round = |(number, (ops, part)): (u32, (Vec<Op>, usize))| Round { part, ..common::round(number, ops) };
        (1..).zip(rounds).map(round).collect()
    }

    fn piece(rounds: &[Round]) -> Piece<'_> {
        Piece { foundation: Foundation::Ring, rounds }
    }

    fn size(crown_repeats: u32, even: u32) -> Vec<Round> {
        let repeats = crown_repeats as usize;
        let repeat = [Op::plain(Stitch::SC), Op::increase(Stitch::SC, 2)];
        let crown = [
            vec![Op::into_ring(Stitch::SC); repeats],
            vec![Op::increase(Stitch::SC, 2); repeats],
            repeat.iter().cycle().take(2 * repeats).cloned().collect(),
        ];
        let side = vec![vec![Op::plain(Stitch::SC); 3 * repeats]; even as usize];
        let (crown, side) = (crown.into_iter().map(|ops| (ops, 0)), side.into_iter().map(|ops| (ops, 1)));
        rounds(crown.chain(side).collect())
    }

    fn told(label: &Label, instruction: &Instruction) -> String {
        let writer = Writer { words: &Words::of(Language::EN), terms: Terms::Us };
        format!("{}: {}", writer.label(label, Gaps::OPEN), writer.counted(instruction))
    }

    #[test]
    fn even_rounds_share_a_line() {
        let lines = lines(piece(&size(6, 4)));
        let texts: Vec<String> = lines.iter().map(|line| told(&line.label, &line.instruction)).collect();
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
        let (small, large) = (size(6, 4), size(7, 5));
        let lines = sized_lines(&[(piece(&small), "S"), (piece(&large), "M")]);
        let texts: Vec<String> = lines.iter().map(|line| told(&line.label, &line.instruction)).collect();
        assert_eq!(
            texts,
            [
                "Rnd 1: make an adjustable ring, 6 (7) sc in ring – 6 (7)",
                "Rnd 2: 2 sc in each st around – 12 (14)",
                "Rnd 3: [sc in next st, 2 sc in next st] 6 (7) times – 18 (21)",
                "Rnds 4–7 (4–8): sc in each st around – 18 (21)",
            ]
        );
    }

    #[test]
    fn a_line_of_some_sizes_says_which() {
        let (small, large) = (size(6, 0), size(7, 0));
        let lines = sized_lines(&[(piece(&small[..2]), "S"), (piece(&large), "M")]);
        let last = lines.last().map(|line| (told(&line.label, &line.instruction), line.counts.clone()));
        let expected = "Size M only: Rnd 3: [sc in next st, 2 sc in next st] 7 times (21)";
        assert_eq!(last, Some((expected.to_owned(), vec![None, Some(21)])));
    }

    #[test]
    fn rounds_that_begin_in_other_ways_stay_apart() {
        let mut spiral = size(6, 3);
        spiral[4].begin = Begin::Plain;
        let firsts: Vec<(u32, u32)> = lines(piece(&spiral)).iter().map(|line| (line.first, line.last)).collect();
        assert_eq!(firsts, [(1, 1), (2, 2), (3, 3), (4, 4), (5, 5), (6, 6)]);
    }

    /// Told apart by the stitch of each round: `sd|h` is a round of sc and one of dc, then one of hdc in the next part.
    fn shown(sizes: &[&str]) -> Vec<String> {
        let size = |letters: &&str| {
            let mut part = 0;
            let mut worked = Vec::new();
            for letter in letters.chars() {
                match letter {
                    's' => worked.push((vec![Op::plain(Stitch::SC); 2], part)),
                    'd' => worked.push((vec![Op::plain(Stitch::DC); 2], part)),
                    'h' => worked.push((vec![Op::plain(Stitch::HDC); 2], part)),
                    _ => part += 1,
                }
            }
            stretches(piece(&rounds(worked)))
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
