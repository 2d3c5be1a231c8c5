//! Instructions as data: what a round says, phrase by phrase, before there are words.
//!
//! [`Instruction::of`] takes a round apart; [`Writer`](super::write::Writer) gives its phrases words in a language, and
//! whoever shows them joins those as it likes. An instruction stands for one size, or for several that are alike but
//! for their numbers.

use super::across::{Numbers, without_numbers};
use super::reach::{go_around, into_chains, into_chains_too, into_start, leave_first};
use super::shorten::shorten;
use crate::craft::{Begin, Below, Close, Counted, Foundation, Group, Loops, Made, Op, Own, Round, Said, Spot, Stitch};

/// What is done in a round.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Instruction {
    /// What comes before its stitches: foundation, loops, slip stitches, turning chain.
    pub opening: Vec<Phrase>,
    /// Its stitches.
    pub body: Vec<Phrase>,
    /// What comes after them: the join.
    pub closing: Vec<Phrase>,
    /// What the round has when it is done.
    pub count: Vec<(Counted, Numbers)>,
    /// What its author said of it, for rounds that were written.
    pub said: Option<Said>,
}

/// One thing to do.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Phrase {
    /// What the piece starts from.
    Foundation(Foundation),
    /// So many chains joined into a ring without a twist, for a stitch into each.
    ChainRound(Numbers),
    /// Loops that the whole round is worked under.
    Loops(Loops),
    /// Slip stitches that lead to where the round begins, so many.
    Slips(Op, u32),
    /// The turning chain.
    TurningChain {
        /// Chains.
        chains: u8,
        /// What they stand for.
        stands: Stands,
    },
    /// The stitches that the turning chain is worked together with, given as the whole operation.
    RestTogether(Op),
    /// More stitches in the place where the turning chain stands.
    Rest {
        /// What is made.
        made: Made,
        /// True where that place is a space.
        space: bool,
    },
    /// One operation, so often.
    Run {
        /// The operation.
        op: Op,
        /// How often.
        times: Numbers,
        /// Where it goes.
        reach: Reach,
    },
    /// Several things in order, so often.
    Repeat {
        /// The things.
        body: Vec<Phrase>,
        /// How often.
        times: Numbers,
    },
    /// The end of a joined round.
    Join(Join),
}

/// What a turning chain stands for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Stands {
    /// Nothing.
    Nothing {
        /// True where that has to be said: before tall stitches, and of more chains than one.
        said: bool,
    },
    /// The first stitch, with the loops it is worked under.
    First(Stitch, Loops),
    /// One of the stitches that are worked together first.
    Together,
}

/// Where the stitches of a run go.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Reach {
    /// On from the stitch before.
    Next,
    /// All the way round.
    Around,
    /// Into all that is left once the turning chain stands for the first stitch.
    Remaining,
    /// All the way round, into stitches and chains alike.
    AroundAll,
    /// The same, of all that is left.
    RemainingAll,
    /// Into the ring that the piece starts from.
    Ring,
    /// Into one chain, the first of so many, counted from the hook.
    Chain(u32),
    /// Into the next chains of the ring that the piece starts from.
    NextChains,
    /// Into every chain of that ring.
    EachChain,
    /// Into all chains of it that are left.
    RestChains,
}

/// What the slip stitch at the end of a joined round goes into.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Join {
    /// The top of a turning chain of so many.
    Top(u8),
    /// The first stitch, which is this one.
    First(Stitch),
    /// The first slip stitch of a round of slip stitches.
    Slip,
}

impl Instruction {
    /// What a round worked into what is `below` it says, with its count.
    pub fn of(round: &Round, below: Below<'_>) -> Self {
        let loops = round.loops();
        let plain = |op: &Op| if loops == Loops::Both { op.clone() } else { op.clone().under(Loops::Both) };
        let mut ops: Vec<Op> = round.ops.iter().map(plain).collect();
        if let Below::Round(below) = below {
            name_skipped_chains(&mut ops, below, round.slipped as usize);
        }
        let first_round = round.before == 0 && round.number == 1;
        let foundation = match below {
            Below::Foundation(foundation) if first_round => Some(foundation),
            Below::Foundation(_) | Below::Round(_) => None,
        };
        let chained = matches!(foundation, Some(Foundation::ChainRound(_)));
        let mut opening = Vec::from_iter(foundation.map(|foundation| match foundation {
            Foundation::ChainRound(chains) => Phrase::ChainRound(Numbers::one(chains)),
            foundation @ (Foundation::Ring | Foundation::ChainRing(_) | Foundation::Chain(_)) => {
                Phrase::Foundation(foundation)
            }
        }));
        opening.extend((loops != Loops::Both).then_some(Phrase::Loops(loops)));
        opening.extend(slips(round));
        // A turning chain that counts is the first stitch of the first operation.
        let (first, rest) = match (round.begin, ops.split_first()) {
            (Begin::Chain { counts: true, .. }, Some((first, rest))) => (Some(first), rest),
            _ => (None, &ops[..]),
        };
        opening.extend(turning_chain(round, first));
        let rise = if first_round && !chained { together_in_ring(rest) } else { None };
        let own = round.own().filter(|own| !own.groups.is_empty());
        let mut body = match (own, rise) {
            (_, Some(rise)) => phrases(&rise),
            (Some(own), None) => go_around(gathered(&own.groups, &ops, ops.len() - rest.len())),
            (None, None) => phrases(rest),
        };
        if first.is_some() {
            leave_first(&mut body);
        }
        if let Below::Round(below) = below {
            into_chains_too(&mut body, below);
        }
        match chained {
            true => into_chains(&mut body, first.is_some()),
            false => into_start(&mut body, foundation),
        }
        // Bare chains at the start would be read as a turning chain.
        let turning = matches!(round.begin, Begin::Chain { .. });
        if !turning && (first_round || round.close == Close::Join) {
            bracket_first_chains(&mut body);
        }
        let closing = Vec::from_iter(join(round).map(Phrase::Join));
        let count = round.own().map(|own| own.count.clone()).filter(|count| !count.is_empty());
        let count = count.unwrap_or_else(|| round.tallied());
        let count = count.into_iter().map(|(what, count)| (what, Numbers::one(count))).collect();
        // The words alone are told from here on.
        let own = |own: Own| Own { groups: Vec::new(), count: Vec::new(), ..own };
        let said = round.said.clone().map(|said| Said { own: said.own.map(own), ..said });
        Self { opening, body, closing, count, said: said.filter(|said| *said != Said::default()) }
    }

    /// The author's own words, where the round has such.
    pub fn own(&self) -> Option<&Own> {
        self.said.as_ref().and_then(|said| said.own.as_ref())
    }

    /// Its phrases in working order.
    pub fn phrases(&self) -> impl Iterator<Item = &Phrase> {
        self.opening.iter().chain(&self.body).chain(&self.closing)
    }

    /// Its first and its last phrase, where there is another one between them. An author's words have none: they are
    /// told as they are.
    pub fn ends(&self) -> Option<(&Phrase, &Phrase)> {
        if self.own().is_some() {
            return None;
        }
        let mut phrases = self.phrases();
        let first = phrases.next()?;
        let last = phrases.skip(1).last()?;
        Some((first, last))
    }

    /// What is left without its first and its last phrase.
    #[must_use]
    pub fn without_ends(mut self) -> Self {
        if let Some(part) =
            [&mut self.opening, &mut self.body, &mut self.closing].into_iter().find(|part| !part.is_empty())
        {
            part.remove(0);
        }
        let _ = [&mut self.closing, &mut self.body, &mut self.opening].into_iter().find_map(Vec::pop);
        self
    }

    /// True where both say the same but for numbers.
    pub fn alike(&self, other: &Self) -> bool {
        // Where parts before it differ, the same words stand at other numbers; what differs in the words is told for each.
        let words = |one: &Self| {
            let [words, counted] = [|own: &Own| without_numbers(&own.words), |own: &Own| without_numbers(&own.counted)];
            let own = |own: Own| Own { rounds: (0, 0), words: words(&own), counted: counted(&own), ..own };
            one.said.clone().map(|said| Said { own: said.own.map(own), ..said })
        };
        let kinds = |one: &Self| one.count.iter().map(|(what, _)| *what).collect::<Vec<_>>();
        alike(&self.opening, &other.opening)
            && self.closing == other.closing
            && alike(&self.body, &other.body)
            && kinds(self) == kinds(other)
            && words(self) == words(other)
    }

    /// This one for its sizes and, with their numbers beside them, for those of another that is alike.
    #[must_use]
    pub fn beside(&self, other: &Self) -> Self {
        let counts = self.count.iter().zip(&other.count);
        let count = counts.map(|((what, own), (_, other))| (*what, own.beside(other))).collect();
        let opening = beside(&self.opening, &other.opening);
        Self { opening, body: beside(&self.body, &other.body), count, ..self.clone() }
    }
}

/// Stitches of a first round, of several kinds one after the other, as what is made in one place: the rise of a spiral
/// reads `(sc, hdc, 8 dc) in ring`.
fn together_in_ring(ops: &[Op]) -> Option<[Op; 1]> {
    let mut runs: Vec<(Stitch, u32)> = Vec::new();
    for op in ops {
        let (Spot::Stitch, 0, Loops::Both, Made::Same(stitch, 1)) = (op.into, op.consumed, op.loops, &op.made) else {
            return None;
        };
        match runs.iter().position(|(known, _)| known == stitch) {
            Some(at) if at + 1 == runs.len() => runs[at].1 += 1,
            Some(_) => return None,
            None => runs.push((*stitch, 1)),
        }
    }
    let made = Made::Mixed(runs.into_boxed_slice());
    let several = made.runs().nth(1).is_some();
    several.then_some([Op { into: Spot::Stitch, consumed: 0, made, loops: Loops::Both }])
}

/// Operations of a whole round, or of what is left of it after its turning chain, in as few phrases as they take.
pub(super) fn phrases(ops: &[Op]) -> Vec<Phrase> {
    go_around(shorten(ops))
}

/// Operations from number `from` on as an author gathered them: repeats as they stand, each step in as few phrases as it
/// takes. A repeat that does not do the same every time is taken apart.
fn gathered(groups: &[Group], ops: &[Op], from: usize) -> Vec<Phrase> {
    let mut gathered = Vec::new();
    for group in groups.iter().filter(|group| group.ops.end > from) {
        let own = ops.get(group.ops.start.max(from)..group.ops.end).unwrap_or_default();
        let passes: Vec<Vec<Phrase>> = group.passes.iter().map(|pass| self::gathered(pass, ops, from)).collect();
        match passes.split_first() {
            Some((first, [])) if group.ops.start >= from => gathered.extend(first.iter().cloned()),
            Some((first, rest)) if group.ops.start >= from && rest.iter().all(|pass| pass == first) => {
                gathered.push(Phrase::Repeat { body: first.clone(), times: Numbers::one(passes.len() as u32) });
            }
            Some(_) | None => gathered.extend(shorten(own)),
        }
    }
    gathered
}

/// Gives the skips that pass over nothing but chains those chains as what they make: so the writer tells them from
/// skipped stitches.
fn name_skipped_chains(ops: &mut [Op], below: &Round, slipped: usize) {
    let runs = below.ops.iter().flat_map(|op| op.made.runs());
    let stitches: Vec<Stitch> = runs
        .flat_map(|(stitch, count)| std::iter::repeat_n(stitch, count as usize * usize::from(stitch.row().counts)))
        .collect();
    let mut stitches = stitches.iter().cycle().skip(slipped).take(stitches.len()).copied();
    for op in ops {
        let used: Vec<Stitch> = stitches.by_ref().take(op.consumed as usize).collect();
        if op.into == Spot::Skip && !used.is_empty() && used.iter().all(|stitch| *stitch == Stitch::CH) {
            op.made = Made::Same(Stitch::CH, op.consumed);
        }
    }
}

/// The slip stitches at the start of a round: those into stitches, and the one into a space, where it begins there.
fn slips(round: &Round) -> Vec<Phrase> {
    let slip = Op::plain(Stitch::SL_ST);
    let (stitches, space) = match round.ops.first() {
        Some(Op { into: Spot::Space, consumed, .. }) if round.slipped > 0 => {
            (round.slipped - 1, Some(Op { into: Spot::Space, consumed: *consumed, ..slip.clone() }))
        }
        _ => (round.slipped, None),
    };
    let stitches = (stitches > 0).then_some(Phrase::Slips(slip, stitches));
    stitches.into_iter().chain(space.map(|space| Phrase::Slips(space, 1))).collect()
}

/// The turning chain, and what is left of the operation it begins, where it counts.
fn turning_chain(round: &Round, first: Option<&Op>) -> Vec<Phrase> {
    let Begin::Chain { chains, .. } = round.begin else { return Vec::new() };
    let Some(first) = first else {
        let said = chains > 1 || first_made(round).row().steps > 0;
        return vec![Phrase::TurningChain { chains, stands: Stands::Nothing { said } }];
    };
    if first.into == Spot::Together && first.consumed > 1 {
        let chain = Phrase::TurningChain { chains, stands: Stands::Together };
        return vec![chain, Phrase::RestTogether(first.clone())];
    }
    let stitch = first.made.runs().next().map_or(Stitch::SC, |(stitch, _)| stitch);
    let chain = Phrase::TurningChain { chains, stands: Stands::First(stitch, first.loops) };
    let made = without_first(&first.made);
    let rest = (made != Made::Nothing).then(|| Phrase::Rest { made, space: first.into == Spot::Space });
    std::iter::once(chain).chain(rest).collect()
}

/// What is left to make once the first stitch is made.
fn without_first(made: &Made) -> Made {
    let mut runs: Vec<(Stitch, u32)> = made.runs().collect();
    if let Some((_, count)) = runs.first_mut() {
        *count = count.saturating_sub(1);
    }
    runs.retain(|(_, count)| *count > 0);
    match runs[..] {
        [] => Made::Nothing,
        [(stitch, count)] => Made::Same(stitch, count),
        _ => Made::Mixed(runs.into_boxed_slice()),
    }
}

/// The first stitch that the round makes, which a join goes into.
fn first_made(round: &Round) -> Stitch {
    let made = round.ops.iter().flat_map(|op| op.made.runs()).next();
    made.map_or(round.stitch, |(stitch, _)| stitch)
}

fn join(round: &Round) -> Option<Join> {
    match (round.close, round.begin) {
        (Close::Spiral, _) => None,
        (Close::Join, Begin::Chain { chains, counts: true }) => Some(Join::Top(chains)),
        (Close::Join, Begin::Chain { .. } | Begin::Plain | Begin::Spiral) => Some(match first_made(round) {
            Stitch::SL_ST => Join::Slip,
            stitch => Join::First(stitch),
        }),
    }
}

/// A repeat of its own for chains that a round begins with, though slip stitches lead there.
fn bracket_first_chains(body: &mut [Phrase]) {
    let slips =
        |phrase: &&mut Phrase| matches!(phrase, Phrase::Run { op, .. } if op.made == Made::Same(Stitch::SL_ST, 1));
    if let Some(phrase @ Phrase::Run { op: Op { into: Spot::Air, made: Made::Same(Stitch::CH, _), .. }, .. }) =
        body.iter_mut().find(|phrase| !slips(phrase))
    {
        *phrase = Phrase::Repeat { body: vec![phrase.clone()], times: Numbers::one(1) };
    }
}

fn alike(a: &[Phrase], b: &[Phrase]) -> bool {
    let same = |(a, b): (&Phrase, &Phrase)| match (a, b) {
        (Phrase::Run { op: a, times: n, reach: to }, Phrase::Run { op: b, times: m, reach: too }) => {
            // Once is said in other words than several times.
            (a, to, n.all(1)) == (b, too, m.all(1))
        }
        (Phrase::Repeat { body: a, .. }, Phrase::Repeat { body: b, .. }) => alike(a, b),
        (Phrase::ChainRound(_), Phrase::ChainRound(_)) => true,
        (a, b) => a == b,
    };
    a.len() == b.len() && a.iter().zip(b).all(same)
}

fn beside(a: &[Phrase], b: &[Phrase]) -> Vec<Phrase> {
    let both = |(a, b): (&Phrase, &Phrase)| match (a, b) {
        (Phrase::Run { op, times, reach }, Phrase::Run { times: others, .. }) => {
            Phrase::Run { op: op.clone(), times: times.beside(others), reach: *reach }
        }
        (Phrase::Repeat { body, times }, Phrase::Repeat { body: other, times: others }) => {
            Phrase::Repeat { body: beside(body, other), times: times.beside(others) }
        }
        (Phrase::ChainRound(chains), Phrase::ChainRound(others)) => Phrase::ChainRound(chains.beside(others)),
        (a, _) => a.clone(),
    };
    a.iter().zip(b).map(both).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::common;

    fn round(begin: Begin, close: Close, ops: Vec<Op>) -> Round {
        let number = if ops.iter().all(|op| op.consumed == 0) { 1 } else { 2 };
        Round { begin, close, ..common::round(number, ops) }
    }

    fn of(round: &Round) -> Instruction {
        Instruction::of(round, Below::Foundation(Foundation::Ring))
    }

    fn run(op: Op, times: u32) -> Phrase {
        Phrase::Run { op, times: Numbers::one(times), reach: Reach::Next }
    }

    fn increases(repeats: usize, plain: usize) -> Round {
        let repeat = [vec![Op::plain(Stitch::SC); plain], vec![Op::increase(Stitch::SC, 2)]].concat();
        round(Begin::Spiral, Close::Spiral, vec![repeat; repeats].concat())
    }

    #[test]
    fn a_round_of_a_spiral_is_its_stitches_and_its_count() {
        let body = vec![run(Op::plain(Stitch::SC), 4), run(Op::increase(Stitch::SC, 2), 1)];
        let expected = Instruction {
            opening: Vec::new(),
            body: vec![Phrase::Repeat { body, times: Numbers::one(6) }],
            closing: Vec::new(),
            count: vec![(Counted::Stitches, Numbers::one(36))],
            said: None,
        };
        assert_eq!(of(&increases(6, 4)), expected);
    }

    #[test]
    fn a_first_round_goes_into_its_foundation() {
        let first = round(Begin::Spiral, Close::Spiral, vec![Op::into_ring(Stitch::SC); 6]);
        for (foundation, reach) in [
            (Foundation::Ring, Reach::Ring),
            (Foundation::ChainRing(4), Reach::Ring),
            (Foundation::Chain(2), Reach::Chain(2)),
        ] {
            let instruction = Instruction::of(&first, Below::Foundation(foundation));
            assert_eq!(instruction.opening, [Phrase::Foundation(foundation)]);
            let times = Numbers::one(6);
            assert_eq!(instruction.body, [Phrase::Run { op: Op::into_ring(Stitch::SC), times, reach }]);
        }
    }

    /// A spiral of tall stitches rises from low ones, one in each chain, and the last kind takes what is left; so it does
    /// where the turning chain stands on the first.
    #[test]
    fn a_first_round_goes_into_each_chain_of_an_open_tube() {
        let run = |stitch, count, reach| Phrase::Run { op: Op::into_ring(stitch), times: Numbers::one(count), reach };
        let of = |begin, ops: Vec<Op>| {
            let count = ops.len() as u32;
            let first = round(begin, Close::Spiral, ops);
            Instruction::of(&first, Below::Foundation(Foundation::ChainRound(count)))
        };
        let plain = of(Begin::Spiral, vec![Op::into_ring(Stitch::SC); 84]);
        assert_eq!(plain.opening, [Phrase::ChainRound(Numbers::one(84))]);
        assert_eq!(plain.body, [run(Stitch::SC, 84, Reach::EachChain)]);
        let rise = [vec![Op::into_ring(Stitch::SC)], vec![Op::into_ring(Stitch::HDC); 20]].concat();
        let low = run(Stitch::SC, 1, Reach::NextChains);
        assert_eq!(of(Begin::Spiral, rise).body, [low, run(Stitch::HDC, 20, Reach::RestChains)]);
        let begin = Begin::Chain { chains: 3, counts: true };
        let counted = of(begin, vec![Op::into_ring(Stitch::DC); 60]);
        assert_eq!(counted.body, [run(Stitch::DC, 59, Reach::RestChains)]);
    }

    #[test]
    fn a_joined_round_opens_with_its_chain_and_closes_with_its_join() {
        let begin = Begin::Chain { chains: 3, counts: true };
        let instruction = of(&round(begin, Close::Join, vec![Op::increase(Stitch::DC, 2).under(Loops::Back); 12]));
        let stands = Stands::First(Stitch::DC, Loops::Both);
        let opening = [
            Phrase::Loops(Loops::Back),
            Phrase::TurningChain { chains: 3, stands },
            Phrase::Rest { made: Made::Same(Stitch::DC, 1), space: false },
        ];
        assert_eq!(instruction.opening, opening);
        let (op, times, reach) = (Op::increase(Stitch::DC, 2), Numbers::one(11), Reach::Remaining);
        assert_eq!(instruction.body, [Phrase::Run { op, times, reach }]);
        assert_eq!(instruction.closing, [Phrase::Join(Join::Top(3))]);
        let begin = Begin::Chain { chains: 1, counts: false };
        let instruction = of(&round(begin, Close::Join, vec![Op::plain(Stitch::SC); 12]));
        let stands = Stands::Nothing { said: false };
        assert_eq!(instruction.opening, [Phrase::TurningChain { chains: 1, stands }]);
        assert_eq!(instruction.closing, [Phrase::Join(Join::First(Stitch::SC))]);
    }

    #[test]
    fn a_chain_that_begins_a_decrease_is_one_of_its_stitches() {
        let begin = Begin::Chain { chains: 2, counts: true };
        let instruction = of(&round(begin, Close::Join, vec![Op::decrease(Stitch::DC, 2); 6]));
        let chain = Phrase::TurningChain { chains: 2, stands: Stands::Together };
        assert_eq!(instruction.opening, [chain, Phrase::RestTogether(Op::decrease(Stitch::DC, 2))]);
    }

    #[test]
    fn slip_stitches_lead_into_the_space_where_the_round_begins() {
        let group = Op { into: Spot::Space, consumed: 2, made: Made::Same(Stitch::DC, 3), loops: Loops::Both };
        let begin = Begin::Chain { chains: 3, counts: true };
        let lace = Round { slipped: 3, ..round(begin, Close::Join, vec![group; 4]) };
        let space = Op { into: Spot::Space, consumed: 2, ..Op::plain(Stitch::SL_ST) };
        let opening = of(&lace).opening;
        assert_eq!(opening[..2], [Phrase::Slips(Op::plain(Stitch::SL_ST), 2), Phrase::Slips(space, 1)]);
        assert_eq!(opening[3], Phrase::Rest { made: Made::Same(Stitch::DC, 2), space: true });
    }

    #[test]
    fn sizes_that_are_alike_are_one_instruction() {
        let (small, large) = (of(&increases(6, 4)), of(&increases(7, 5)));
        assert!(small.alike(&large));
        // Once is not said as several times are.
        assert!(!small.alike(&of(&increases(6, 1))));
        let both = small.beside(&large);
        assert_eq!(both.count, [(Counted::Stitches, Numbers::several([36, 49]))]);
        let Some(Phrase::Repeat { body, times }) = both.body.first() else { panic!("{both:?}") };
        assert_eq!(*times, Numbers::several([6, 7]));
        assert!(matches!(&body[0], Phrase::Run { times, .. } if *times == Numbers::several([4, 5])), "{body:?}");
        assert!(matches!(&body[1], Phrase::Run { times, .. } if times.all(1)), "{body:?}");
    }

    #[test]
    fn ends_are_the_first_and_the_last_of_three_phrases() {
        let begin = Begin::Chain { chains: 1, counts: false };
        let instruction = of(&round(begin, Close::Join, vec![Op::plain(Stitch::SC); 12]));
        let ends = instruction.ends().map(|(first, last)| (first.clone(), last.clone()));
        assert_eq!(ends, Some((instruction.opening[0].clone(), instruction.closing[0].clone())));
        let bare = instruction.clone().without_ends();
        assert_eq!(bare, Instruction { opening: Vec::new(), closing: Vec::new(), ..instruction });
        assert_eq!(bare.ends(), None);
        let two = Op::decrease(Stitch::SC, 2);
        let body = round(Begin::Spiral, Close::Spiral, vec![Op::plain(Stitch::SC), two, Op::increase(Stitch::SC, 2)]);
        assert_eq!(of(&body).without_ends().body, [run(Op::decrease(Stitch::SC, 2), 1)]);
    }
}
