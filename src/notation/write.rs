//! Writes rounds as instructions, short and exact.
//!
//! One house style throughout: counted repeats in square brackets, `sc in next 4 sts` for runs, `2 sc in next st` for
//! increases, `sc2tog` for decreases, the count in brackets at the end:
//! `[sc in next 4 sts, 2 sc in next st] 6 times (36)`. The same tree can be written for several sizes at a time; where
//! their numbers differ they stand in the trade's bracket form, `6 (7, 8) times`.

use super::shorten::shorten;
use super::tree::{Act, Item, Times};
use crate::craft::{Begin, Below, Build, Close, Foundation, Loops, Made, Op, Round, Spot, Stitch, Terms};
use crate::words::{Arg, Words};

/// Writes in one language and one set of terms.
#[derive(Clone, Copy)]
pub struct Writer<'a> {
    /// The words.
    pub words: &'a Words,
    /// Names of stitches, where the language has two sets.
    pub terms: Terms,
}

/// The instruction of one round worked into what is `below` it, with its count:
/// `[sc in next 4 sts, 2 sc in next st] 6 times (36)`.
pub fn instruction(round: &Round, below: Below<'_>, words: &Words, terms: Terms) -> String {
    let sheet = Sheet::of(round, below);
    let text = Writer { words, terms }.sheets(&[Some(&sheet)]);
    format!("{text} ({})", round.after)
}

/// A round taken apart for writing: what is said before, between and after.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Sheet {
    /// What the round is worked into, for a first round.
    pub(crate) foundation: Option<Foundation>,
    /// Loops said once for the whole round.
    pub(crate) loops: Loops,
    /// Slip stitches that lead to where it begins: how many into stitches, and the one into a space.
    pub(crate) slips: (u32, Option<Op>),
    pub(crate) begin: Begin,
    /// The operation that the turning chain begins, where it counts.
    pub(crate) first: Option<Op>,
    pub(crate) body: Vec<Item>,
    pub(crate) close: Close,
    /// Name of the stitch the join goes into.
    pub(crate) join_into: Stitch,
}

impl Sheet {
    pub(crate) fn of(round: &Round, below: Below<'_>) -> Self {
        let loops = round.loops();
        let plain = |op: &Op| if loops == Loops::Both { op.clone() } else { op.clone().under(Loops::Both) };
        let mut ops: Vec<Op> = round.ops.iter().map(plain).collect();
        if let Below::Round(below) = below {
            name_skipped_chains(&mut ops, below, round.slipped as usize);
        }
        let counts = matches!(round.begin, Begin::Chain { counts: true, .. });
        let (first, rest) = match ops.split_first() {
            Some((first, rest)) if counts => (Some(first.clone()), rest),
            _ => (None, &ops[..]),
        };
        let mut body = shorten(rest);
        let first_round = round.before == 0 && round.number == 1;
        // Bare chains at the start would be read as a turning chain.
        let turning = matches!(round.begin, Begin::Chain { .. });
        if !turning && (first_round || round.close == Close::Join) {
            bracket_first_chains(&mut body);
        }
        let made = round.ops.iter().flat_map(|op| op.made.runs()).next();
        let foundation = match below {
            Below::Foundation(foundation) if first_round => Some(foundation),
            Below::Foundation(_) | Below::Round(_) => None,
        };
        Self {
            foundation,
            loops,
            slips: slips(round),
            begin: round.begin,
            first,
            body,
            close: round.close,
            join_into: made.map_or(round.stitch, |(stitch, _)| stitch),
        }
    }

    /// True where both say the same but for numbers.
    pub(crate) fn alike(&self, other: &Self) -> bool {
        self.foundation.is_some() == other.foundation.is_some()
            && (self.foundation == other.foundation || self.foundation.is_none())
            && (self.loops, self.begin, &self.first) == (other.loops, other.begin, &other.first)
            && self.slips == other.slips
            && (self.close, self.join_into) == (other.close, other.join_into)
            && alike(&self.body, &other.body)
    }

    /// True where the whole body is one operation all the way round.
    fn even(&self) -> bool {
        matches!(&self.body[..], [Item { act: Act::Run(op, _), .. }] if op.consumed > 0)
    }
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

/// The slip stitches at the start of a round: how many go into stitches, and the one into a space, where it begins there.
fn slips(round: &Round) -> (u32, Option<Op>) {
    let slip = Op::plain(Stitch::SL_ST);
    match round.ops.first() {
        Some(Op { into: Spot::Space, consumed, .. }) if round.slipped > 0 => {
            (round.slipped - 1, Some(Op { into: Spot::Space, consumed: *consumed, ..slip }))
        }
        _ => (round.slipped, None),
    }
}

/// The same holds for chains after nothing but slip stitches.
fn bracket_first_chains(body: &mut [Item]) {
    let slips = |item: &&mut Item| matches!(&item.act, Act::Run(op, _) if op.made == Made::Same(Stitch::SL_ST, 1));
    if let Some(item @ Item { act: Act::Run(Op { into: Spot::Air, made: Made::Same(Stitch::CH, _), .. }, _), .. }) =
        body.iter_mut().find(|item| !slips(item))
    {
        *item = Item::unplaced(Act::Repeat(vec![item.clone()], Times::Exactly(1)));
    }
}

fn alike(a: &[Item], b: &[Item]) -> bool {
    let same = |(a, b): (&Item, &Item)| match (&a.act, &b.act) {
        (Act::Run(a, n), Act::Run(b, m)) => a == b && (*n == Times::Exactly(1)) == (*m == Times::Exactly(1)),
        (Act::Repeat(a, _), Act::Repeat(b, _)) => alike(a, b),
        (Act::Same { made: a, .. }, Act::Same { made: b, .. }) => a == b,
        (Act::Run(..) | Act::Repeat(..) | Act::Same { .. }, _) => false,
    };
    a.len() == b.len() && a.iter().zip(b).all(same)
}

/// The same in every size, or what each size has in the trade's bracket form: `72 (80, 88)`; a dash stands for a size
/// that has none.
pub(crate) fn across<T: PartialEq + ToString>(values: &[Option<T>]) -> String {
    let mut known = values.iter().flatten();
    let Some(first) = known.next() else { return "0".to_owned() };
    if known.all(|value| value == first) {
        return first.to_string();
    }
    let show = |value: &Option<T>| value.as_ref().map_or("–".to_owned(), T::to_string);
    let rest: Vec<String> = values.iter().skip(1).map(show).collect();
    format!("{} ({})", values.first().map(show).unwrap_or_default(), rest.join(", "))
}

impl Writer<'_> {
    /// A message of the catalogue with the terms added.
    pub(crate) fn say(&self, key: &str, args: &[(&'static str, Arg<'_>)]) -> String {
        let terms = match self.terms {
            Terms::Us => "US",
            Terms::Uk => "UK",
        };
        let mut all = vec![("terms", Arg::Text(terms))];
        all.extend_from_slice(args);
        self.words.with(key, &all)
    }

    fn with_what(&self, key: &str, what: &str, number: &str) -> String {
        self.say(key, &[("what", Arg::Text(what)), ("number", Arg::Text(number))])
    }

    /// `Rnd 5`, `Rnds 8–14`, `Rnds 8–14 (8–14, 9–16)`.
    pub fn label(&self, first: &[Option<u32>], last: &[Option<u32>]) -> String {
        if first == last {
            return self.say("round-label", &[("number", Arg::Text(&across(first)))]);
        }
        let span = |(first, last): (&Option<u32>, &Option<u32>)| {
            let (first, last) = first.zip(*last)?;
            Some(if first == last { first.to_string() } else { format!("{first}–{last}") })
        };
        let spans: Vec<Option<String>> = first.iter().zip(last).map(span).collect();
        self.say("rounds-label", &[("number", Arg::Text(&across(&spans)))])
    }

    /// The stitches after the last round that bring a spiral down, as one sentence; nothing for none.
    pub fn step_down(&self, stitches: &[Stitch]) -> Option<String> {
        let ops: Vec<Op> = stitches.iter().map(|stitch| Op::plain(*stitch)).collect();
        let body = shorten(&ops);
        let what = self.list(&[Some(&body[..])], false);
        (!ops.is_empty()).then(|| self.say("write-step-down", &[("what", Arg::Text(&what))]))
    }

    /// Operations of a whole round, without its beginning, end and count.
    pub(crate) fn ops(&self, ops: &[Op]) -> String {
        let body = shorten(ops);
        let even = matches!(&body[..], [Item { act: Act::Run(op, _), .. }] if op.consumed > 0);
        self.list(&[Some(&body[..])], even)
    }

    /// The words of sheets that are alike, one a size, without counts.
    pub(crate) fn sheets(&self, sheets: &[Option<&Sheet>]) -> String {
        let Some(lead) = sheets.iter().flatten().next() else { return String::new() };
        let mut pieces: Vec<String> = Vec::new();
        pieces.extend(lead.foundation.map(|foundation| self.foundation(foundation)));
        match lead.loops {
            Loops::Both => {}
            Loops::Back => pieces.push(self.say("write-all-back", &[])),
            Loops::Front => pieces.push(self.say("write-all-front", &[])),
        }
        pieces.extend(self.slips(lead));
        pieces.extend(self.begin(lead));
        let bodies: Vec<Option<&[Item]>> = sheets.iter().map(|sheet| sheet.map(|sheet| &sheet.body[..])).collect();
        if !lead.body.is_empty() {
            let hook = match lead.foundation {
                Some(Foundation::Chain(chains)) => Hook::Chain(chains),
                _ => Hook::Ring,
            };
            pieces.push(self.list_from(&bodies, lead.even(), hook));
        }
        pieces.extend(self.join(lead));
        pieces.join(", ")
    }

    fn foundation(&self, foundation: Foundation) -> String {
        match foundation {
            Foundation::Ring => self.say("write-start-ring", &[]),
            Foundation::ChainRing(chains) => self.with_what("write-start-chain-ring", "", &chains.to_string()),
            Foundation::Chain(chains) => self.chains(chains),
        }
    }

    fn chains(&self, chains: u32) -> String {
        self.with_what("write-chains", "", &chains.to_string())
    }

    fn chain_counts(&self, chains: u8, stitch: &str) -> String {
        let number = chains.to_string();
        let (number, stitch) = (("number", Arg::Text(&number)), ("stitch", Arg::Text(stitch)));
        self.say("write-chain-counts", &[number, stitch, ("count", Arg::Count(chains.into()))])
    }

    /// The slip stitches that lead to where the round begins.
    fn slips(&self, sheet: &Sheet) -> Vec<String> {
        let (stitches, space) = &sheet.slips;
        let slip = Op::plain(Stitch::SL_ST);
        let stitches = (*stitches > 0).then(|| self.run(&slip, &[Some(*stitches)], false, Hook::Ring));
        let space = space.as_ref().map(|space| self.run(space, &[Some(1)], false, Hook::Ring));
        stitches.into_iter().chain(space).collect()
    }

    /// The turning chain, and what is left of the operation it begins.
    fn begin(&self, sheet: &Sheet) -> Vec<String> {
        let Begin::Chain { chains, counts } = sheet.begin else { return Vec::new() };
        let tall = sheet.join_into.row().overs > 0;
        let Some(first) = sheet.first.as_ref().filter(|_| counts) else {
            let key = if tall || chains > 1 { "write-chain-counts-not" } else { "write-chains" };
            let number = chains.to_string();
            return vec![self.say(key, &[("number", Arg::Text(&number)), ("count", Arg::Count(chains.into()))])];
        };
        let stitch = first.made.runs().next().map_or(Stitch::SC, |(stitch, _)| stitch);
        if first.into == Spot::Together && first.consumed > 1 {
            let rest = Op { into: Spot::Stitch, consumed: 1, made: Made::Same(stitch, 1), loops: first.loops };
            let rest = self.run(&rest, &[Some(first.consumed - 1)], false, Hook::Ring);
            let whole = self.what(&first.clone().under(Loops::Both));
            let told = self.say("write-counts-together", &[("what", Arg::Text(&rest)), ("stitch", Arg::Text(&whole))]);
            return vec![self.chains(u32::from(chains)), told];
        }
        let mut pieces = vec![self.chain_counts(chains, &self.looped(self.short(stitch), first.loops))];
        let rest = without_first(&first.made);
        if rest.count() > 0 || rest.runs().next().is_some() {
            let key = if first.into == Spot::Space { "write-same-space" } else { "write-same" };
            pieces.push(self.with_what(key, &self.made(&rest), ""));
        }
        pieces
    }

    fn join(&self, sheet: &Sheet) -> Option<String> {
        let name = self.short(sheet.join_into);
        match (sheet.close, sheet.begin) {
            (Close::Spiral, _) => None,
            (Close::Join, Begin::Chain { chains, counts: true }) => {
                Some(self.with_what("write-join-chain", "", &chains.to_string()))
            }
            (Close::Join, _) if sheet.join_into == Stitch::SL_ST => Some(self.say("write-join-plain", &[])),
            (Close::Join, Begin::Chain { .. } | Begin::Plain | Begin::Spiral) => {
                Some(self.say("write-join", &[("stitch", Arg::Text(&name))]))
            }
        }
    }

    /// Items in order, `even` where the only one goes all the way round.
    fn list(&self, lists: &[Option<&[Item]>], even: bool) -> String {
        self.list_from(lists, even, Hook::Ring)
    }

    fn list_from(&self, lists: &[Option<&[Item]>], even: bool, hook: Hook) -> String {
        let length = lists.iter().flatten().map(|list| list.len()).next().unwrap_or_default();
        let one = |index: usize| {
            let items: Vec<Option<&Item>> = lists.iter().map(|list| list.and_then(|list| list.get(index))).collect();
            self.item(&items, even, hook)
        };
        (0..length).map(one).collect::<Vec<_>>().join(", ")
    }

    fn item(&self, items: &[Option<&Item>], even: bool, hook: Hook) -> String {
        let times: Vec<Option<u32>> = items.iter().map(|item| item.and_then(|item| exact_times(&item.act))).collect();
        let Some(lead) = items.iter().flatten().next() else { return String::new() };
        match &lead.act {
            Act::Run(op, _) => self.run(op, &times, even, hook),
            Act::Same { made, .. } => self.with_what("write-same", &self.made(made), ""),
            Act::Repeat(..) => {
                let bodies: Vec<Option<&[Item]>> = items.iter().map(|item| item.and_then(|i| body(&i.act))).collect();
                let what = self.list_from(&bodies, false, hook);
                self.with_what("write-repeat", &what, &across(&times))
            }
        }
    }

    /// One operation, so often.
    fn run(&self, op: &Op, times: &[Option<u32>], even: bool, hook: Hook) -> String {
        let once = times.iter().flatten().all(|times| *times == 1);
        let number = across(times);
        let what = self.what(op);
        let pick = |one: &'static str, more: &'static str, around: &'static str| match (even, once) {
            (true, _) => around,
            (false, true) => one,
            (false, false) => more,
        };
        match op.into {
            Spot::Skip => {
                let skipped: Vec<Option<u32>> = times.iter().map(|n| n.map(|n| n * op.consumed)).collect();
                let key = match (op.consumed == 1 && once, &op.made) {
                    (true, Made::Same(Stitch::CH, _)) => "write-skip-chain",
                    (false, Made::Same(Stitch::CH, _)) => "write-skip-chains",
                    (true, Made::Nothing | Made::Same(..) | Made::Mixed(_)) => "write-skip",
                    (false, Made::Nothing | Made::Same(..) | Made::Mixed(_)) => "write-skip-run",
                };
                self.with_what(key, "", &across(&skipped))
            }
            Spot::Air if once => what,
            Spot::Air => self.with_what("write-repeat", &what, &number),
            Spot::Together if even => self.with_what("write-together-around", &what, &number),
            Spot::Together if once => what,
            Spot::Together => self.with_what("write-together-run", &what, &number),
            Spot::Space => {
                let chains = op.consumed.to_string();
                let key = pick("write-space", "write-space-run", "write-space-around");
                let args = [("what", &what), ("number", &number), ("chains", &chains)];
                self.say(key, &args.map(|(name, text)| (name, Arg::Text(text))))
            }
            Spot::Stitch if op.consumed == 0 => self.ring_run(op, &number, once, hook),
            Spot::Stitch => {
                let post = matches!(&op.made, Made::Same(stitch, _) if matches!(stitch.row().build, Build::Post(_)));
                let plain = matches!(op.made, Made::Same(_, 1));
                let key = match (post, plain) {
                    (true, _) => pick("write-post", "write-post-run", "write-post-around"),
                    (false, true) => pick("write-next", "write-next-run", "write-around"),
                    (false, false) => pick("write-next", "write-next-each", "write-around"),
                };
                self.with_what(key, &what, &number)
            }
        }
    }

    fn ring_run(&self, op: &Op, number: &str, once: bool, hook: Hook) -> String {
        let what = match &op.made {
            Made::Same(stitch, 1) if !once => {
                let name = self.short(*stitch);
                let args = [("number", Arg::Text(number)), ("stitch", Arg::Text(&name))];
                self.looped(self.say("write-several", &args), op.loops)
            }
            Made::Nothing | Made::Same(..) | Made::Mixed(_) => self.what(op),
        };
        let text = match hook {
            Hook::Ring => self.with_what("write-ring", &what, ""),
            Hook::Chain(chains) => {
                self.say("write-nth-chain", &[("what", Arg::Text(&what)), ("number", Arg::Count(chains))])
            }
        };
        // Several of one stitch are a number; several groups are a repeat.
        if once || matches!(op.made, Made::Same(_, 1)) { text } else { self.with_what("write-repeat", &text, number) }
    }

    /// What is made by one operation, without where: `sc`, `2 sc`, `(2 dc, ch 2, 2 dc)`, `sc2tog`.
    fn what(&self, op: &Op) -> String {
        let text = match (&op.made, op.into) {
            (Made::Same(stitch, _), Spot::Together) => {
                let (name, number) = (self.short(*stitch), op.consumed.to_string());
                self.say("write-together", &[("stitch", Arg::Text(&name)), ("number", Arg::Text(&number))])
            }
            (made, _) => self.made(made),
        };
        self.looped(text, op.loops)
    }

    fn looped(&self, text: String, loops: Loops) -> String {
        match loops {
            Loops::Both => text,
            Loops::Back => self.with_what("write-back", &text, ""),
            Loops::Front => self.with_what("write-front", &text, ""),
        }
    }

    fn made(&self, made: &Made) -> String {
        let one = |(stitch, count): (Stitch, u32)| {
            let name = self.short(stitch);
            let number = count.to_string();
            match (stitch, count) {
                (Stitch::CH, count) => self.chains(count),
                (_, 1) => self.say("write-single", &[("stitch", Arg::Text(&name))]),
                _ => self.say("write-several", &[("number", Arg::Text(&number)), ("stitch", Arg::Text(&name))]),
            }
        };
        let parts: Vec<String> = made.runs().map(one).collect();
        match made {
            Made::Mixed(_) => format!("({})", parts.join(", ")),
            Made::Nothing | Made::Same(..) => parts.join(", "),
        }
    }
}

/// What stitches of a first round go into.
#[derive(Clone, Copy)]
enum Hook {
    Ring,
    Chain(u32),
}

fn exact_times(act: &Act) -> Option<u32> {
    match act {
        Act::Run(_, Times::Exactly(times)) | Act::Repeat(_, Times::Exactly(times)) => Some(*times),
        Act::Run(..) | Act::Repeat(..) | Act::Same { .. } => None,
    }
}

fn body(act: &Act) -> Option<&[Item]> {
    match act {
        Act::Repeat(body, _) => Some(body),
        Act::Run(..) | Act::Same { .. } => None,
    }
}

/// What is left to make once the first stitch is made.
pub(crate) fn without_first(made: &Made) -> Made {
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

#[cfg(test)]
mod tests {
    use super::*;
    use crate::words::Language;

    fn round(number: u32, begin: Begin, close: Close, ops: Vec<Op>) -> Round {
        let sums = ops.iter().fold((0, 0), |(used, made), op| (used + op.consumed, made + op.count()));
        let stitch = Stitch::SC;
        let (part, colour, target, place) = (0, None, None, None);
        Round {
            number,
            part,
            stitch,
            before: sums.0,
            after: sums.1,
            slipped: 0,
            ops,
            colour,
            begin,
            close,
            target,
            place,
        }
    }

    fn us(round: &Round) -> String {
        instruction(round, Below::Foundation(Foundation::Ring), &Words::of(Language::EN), Terms::Us)
    }

    fn spiral(ops: Vec<Op>) -> String {
        us(&round(2, Begin::Spiral, Close::Spiral, ops))
    }

    fn times(count: usize, ops: &[Op]) -> Vec<Op> {
        ops.iter().cycle().take(count * ops.len()).cloned().collect()
    }

    #[test]
    fn plain_rounds_and_shaping() {
        let (sc, inc, dec) = (Op::plain(Stitch::SC), Op::increase(Stitch::SC, 2), Op::decrease(Stitch::SC, 2));
        assert_eq!(spiral(times(72, std::slice::from_ref(&sc))), "sc in each st around (72)");
        assert_eq!(spiral(times(6, std::slice::from_ref(&inc))), "2 sc in each st around (12)");
        assert_eq!(spiral(times(6, std::slice::from_ref(&dec))), "sc2tog around (6)");
        let repeat = [vec![sc.clone(); 4], vec![inc]].concat();
        assert_eq!(spiral(times(6, &repeat)), "[sc in next 4 sts, 2 sc in next st] 6 times (36)");
        let repeat = [vec![sc; 2], vec![dec]].concat();
        assert_eq!(spiral(times(6, &repeat)), "[sc in next 2 sts, sc2tog] 6 times (18)");
    }

    #[test]
    fn a_first_round_says_what_it_is_worked_into() {
        let first = round(1, Begin::Spiral, Close::Spiral, times(6, &[Op::into_ring(Stitch::SC)]));
        assert_eq!(us(&first), "make an adjustable ring, 6 sc in ring (6)");
        let words = Words::of(Language::EN);
        let chain = instruction(&first, Below::Foundation(Foundation::Chain(2)), &words, Terms::Uk);
        assert_eq!(chain, "ch 2, 6 dc in 2nd ch from hook (6)");
        let ring = instruction(&first, Below::Foundation(Foundation::ChainRing(4)), &words, Terms::Us);
        assert_eq!(ring, "ch 4, sl st to first ch to form a ring, 6 sc in ring (6)");
    }

    #[test]
    fn joined_rounds_begin_with_their_chain_and_end_with_their_join() {
        let begin = Begin::Chain { chains: 3, counts: true };
        let ops = [vec![Op::increase(Stitch::DC, 2)], times(11, &[Op::increase(Stitch::DC, 2)])].concat();
        assert_eq!(
            us(&round(2, begin, Close::Join, ops)),
            "ch 3 (counts as dc), dc in same st, 2 dc in each st around, sl st to top of ch-3 to join (24)"
        );
        let begin = Begin::Chain { chains: 1, counts: false };
        let ops = times(8, &[Op::plain(Stitch::SC).under(Loops::Back)]);
        assert_eq!(
            us(&round(2, begin, Close::Join, ops)),
            "working in BLO, ch 1, sc in each st around, sl st to first sc to join (8)"
        );
    }

    #[test]
    fn numbers_of_several_sizes_stand_in_brackets() {
        assert_eq!(across(&[Some(72), Some(80), Some(88)]), "72 (80, 88)");
        assert_eq!(across(&[Some(72), None, Some(72)]), "72");
        assert_eq!(across(&[None, Some(80), Some(88)]), "– (80, 88)");
    }
}
