//! The other ways in which a round can be meant: what its words leave open is decided by what closes.

use crate::craft::{Made, Op, Spot, Stitch};
use crate::notation::tree::{Act, Item, Times};
use crate::notation::{Doubt, WrittenRound};
use crate::report::Place;

/// One way to mean a round.
pub(super) struct Variant {
    pub(super) items: Vec<Item>,
    /// True where a slip stitch at the end is its join.
    pub(super) joins: bool,
    /// The number of stitches at the end that is its count.
    pub(super) count: Option<u32>,
    /// How it differs from what is written; empty where it doesn't.
    pub(super) how: &'static str,
}

/// How stitches are meant that are told before the one place where all of them go.
const IN_ONE: &str = "with all of it in one place";

/// How a round is meant whose words are all repeated, although it doesn't say so.
pub(super) const REPEATED: &str = "repeated around";

const fn same(one: Place, other: Place) -> bool {
    one.offset == other.offset && one.line == other.line && one.column == other.column
}

/// The ways in which the items of a round can be meant, the likeliest first. What repeats all of a round is tried only
/// where a stated count can decide.
pub(super) fn variants(written: &WrittenRound) -> Vec<Variant> {
    let plain = |items: Vec<Item>, how| Variant { items, joins: false, count: None, how };
    let own = written.items.clone();
    let mut variants = Vec::new();
    let surely = gathered(&own, &written.doubts, true);
    if surely != own {
        variants.push(plain(surely.clone(), IN_ONE));
    }
    variants.push(plain(own.clone(), ""));
    let maybe = gathered(&own, &written.doubts, false);
    if maybe != surely {
        variants.push(plain(maybe, IN_ONE));
    }
    let often = changed(&own, &|item| often(item, &written.doubts));
    let each = changed(&own, &|item| each(item, &written.doubts));
    for (other, how) in [(&often, "with the other number of times"), (&each, "with so many in each stitch")] {
        if *other != own {
            variants.push(plain(other.clone(), how));
        }
    }
    if often != own && each != own {
        let both = changed(&often, &|item| self::each(item, &written.doubts));
        variants.push(plain(both, "with so many in each stitch and the other number of times"));
    }
    if let [body @ .., last] = &own[..]
        && !body.is_empty()
        && bare(last, &written.doubts)
        && let Act::Run(Op { made: Made::Same(stitch, 1), .. }, Times::Exactly(number)) = last.act
    {
        let (items, joins) = (body.to_vec(), stitch == Stitch::SL_ST && number == 1);
        if joins {
            // Where it can be either, as over a ring, a slip stitch at the end is the join.
            variants.insert(0, Variant { items, joins, count: None, how: "with the slip stitch as its join" });
        } else if written.stated.is_none() && number > 1 {
            variants.push(Variant { items, joins, count: Some(number), how: "with its last words as its count" });
        }
    }
    // What stands alone and names its place has said all: `sc in next sts` lacks a number.
    let open = !matches!(&own[..], [] | [_]) || own.first().is_some_and(|one| bare(one, &written.doubts));
    // `3 sc + inc x 6`: so often all of it.
    if let ([body @ .., last], true) = (&own[..], written.stated.is_some())
        && let Act::Run(op, Times::Exactly(times @ 2..)) = &last.act
        && !body.is_empty()
        && bare(last, &written.doubts)
        && *op != Op::plain(Stitch::SC)
    {
        let once = Item { act: Act::Run(op.clone(), Times::Exactly(1)), place: last.place };
        let all = Act::Repeat([body, &[once]].concat(), Times::Exactly(*times));
        variants.push(plain(vec![Item { act: all, place: last.place }], "with all of it so often"));
    }
    // `sc 1, inc 1 around`: all of it goes around.
    if let ([body @ .., last], true) = (&own[..], written.stated.is_some())
        && let Act::Run(op, Times::Around { leave: 0 }) = &last.act
        && !body.is_empty()
        && body.iter().all(|item| matches!(item.act, Act::Run(_, Times::Exactly(_))))
    {
        let once = Item { act: Act::Run(op.clone(), Times::Exactly(1)), place: last.place };
        let all = Act::Repeat([body, &[once]].concat(), Times::Around { leave: 0 });
        variants.push(plain(vec![Item { act: all, place: last.place }], "with all of it around"));
    }
    if written.stated.is_some() && !own.iter().any(goes_around) && open {
        for body in if each == own { vec![own] } else { vec![own, each] } {
            let place = body.first().map_or(written.place, |item| item.place);
            let whole = Item { act: Act::Repeat(body, Times::Around { leave: 0 }), place };
            variants.push(plain(vec![whole], REPEATED));
        }
    }
    variants
}

fn goes_around(item: &Item) -> bool {
    matches!(item.act, Act::Run(_, Times::Around { .. }) | Act::Repeat(_, Times::Around { .. }))
}

/// The items with each of them changed, all through.
fn changed(items: &[Item], change: &dyn Fn(&Item) -> Option<Act>) -> Vec<Item> {
    let one = |item: &Item| {
        let act = change(item).unwrap_or_else(|| item.act.clone());
        let act = match act {
            Act::Repeat(body, times) => Act::Repeat(changed(&body, change), times),
            act @ (Act::Run(..) | Act::Same { .. } | Act::Skipped(_) | Act::Evenly { .. }) => act,
        };
        Item { act, place: item.place }
    };
    items.iter().map(one).collect()
}

fn often(item: &Item, doubts: &[Doubt]) -> Option<Act> {
    let Act::Repeat(body, Times::Exactly(_)) = &item.act else { return None };
    doubts.iter().find_map(|doubt| match doubt {
        Doubt::Often(place, other) if same(*place, item.place) => {
            Some(Act::Repeat(body.clone(), Times::Exactly(*other)))
        }
        Doubt::Often(..) | Doubt::Each(_) | Doubt::Bare(_) | Doubt::Third(_) | Doubt::Onto(..) => None,
    })
}

/// `2 sc in next 2 sts` as two in each.
fn each(item: &Item, doubts: &[Doubt]) -> Option<Act> {
    let Act::Run(op @ Op { made: Made::Same(stitch, 1), .. }, Times::Exactly(number)) = &item.act else { return None };
    let said = doubts.iter().any(|doubt| matches!(doubt, Doubt::Each(place) if same(*place, item.place)));
    let made = Made::Same(*stitch, *number);
    said.then(|| Act::Run(Op { made, ..op.clone() }, Times::Exactly(*number)))
}

/// True where every stitch names the kind that it goes into.
pub(super) fn all_named(items: &[Item], doubts: &[Doubt]) -> bool {
    items.iter().all(|item| match &item.act {
        Act::Run(op, _) if op.into == Spot::Stitch && op.consumed > 0 => {
            doubts.iter().any(|doubt| matches!(doubt, Doubt::Onto(place, _) if same(*place, item.place)))
        }
        Act::Run(op, _) => op.consumed == 0,
        Act::Repeat(body, _) => all_named(body, doubts),
        Act::Same { .. } | Act::Skipped(_) => true,
        Act::Evenly { .. } => false,
    })
}

/// True where it names one place, or each.
fn placed(item: &Item, times: Times, doubts: &[Doubt]) -> bool {
    matches!(times, Times::Exactly(1) | Times::Around { .. }) && !bare(item, doubts)
}

/// True where it names no place.
fn bare(item: &Item, doubts: &[Doubt]) -> bool {
    doubts.iter().any(|doubt| matches!(doubt, Doubt::Bare(place) if same(*place, item.place)))
}

/// True where several stitches, with chains between them, end as they begin: `2 dc, ch 1, 2 dc in next st`, or go into
/// each stitch, as a whole group does.
fn mirrored(tail: &[Item], last: &Op, times: Times) -> bool {
    let Some(Item { act: Act::Run(first, Times::Exactly(number)), .. }) = tail.first() else { return false };
    let (Made::Same(stitch, 1), Made::Same(other, count)) = (&first.made, &last.made) else { return false };
    stitch == other && number == count && (*number > 1 || matches!(times, Times::Around { .. }))
}

/// `3 sc, ch 3, 3 sc in next ch-5 sp` with all of it in that space; in a stitch as well, but for `sure` only where it can
/// hardly be meant otherwise.
fn gathered(items: &[Item], doubts: &[Doubt], sure: bool) -> Vec<Item> {
    let mut gathered: Vec<Item> = Vec::new();
    for item in items {
        let act = match &item.act {
            Act::Repeat(body, times) => Act::Repeat(self::gathered(body, doubts, sure), *times),
            Act::Run(op @ Op { into: Spot::Space | Spot::Stitch, .. }, times)
                if op.into == Spot::Space || (op.consumed == 1 && placed(item, *times, doubts)) =>
            {
                let loose = |before: &&Item| match &before.act {
                    Act::Run(Op { into: Spot::Air, .. }, Times::Exactly(_)) => true,
                    Act::Run(Op { into: Spot::Stitch, made: Made::Same(_, 1), .. }, Times::Exactly(_)) => {
                        bare(before, doubts)
                    }
                    Act::Run(..) | Act::Repeat(..) | Act::Same { .. } | Act::Skipped(_) | Act::Evenly { .. } => false,
                };
                let taken = gathered.iter().rev().take_while(loose).count();
                let start = gathered.len() - taken;
                let tail = gathered.get(start..).unwrap_or_default();
                // It begins with stitches, and chains stand between them.
                let skip = tail.iter().position(|item| bare(item, doubts)).unwrap_or(taken);
                let tail = tail.get(skip..).unwrap_or_default().to_vec();
                let fits = op.into == Spot::Space || !sure || mirrored(&tail, op, *times);
                if tail.len() < 2 || tail.iter().all(|item| bare(item, doubts)) || !fits {
                    item.act.clone()
                } else {
                    gathered.truncate(start + skip);
                    let mut runs: Vec<(Stitch, u32)> = Vec::new();
                    let before = tail.iter().flat_map(|item| match &item.act {
                        Act::Run(op, Times::Exactly(times)) => {
                            op.made.runs().map(|(stitch, count)| (stitch, count.saturating_mul(*times))).collect()
                        }
                        Act::Run(..) | Act::Repeat(..) | Act::Same { .. } | Act::Skipped(_) | Act::Evenly { .. } => {
                            Vec::new()
                        }
                    });
                    for (stitch, count) in before.chain(op.made.runs()) {
                        match runs.last_mut() {
                            Some((last, number)) if *last == stitch => *number = number.saturating_add(count),
                            _ => runs.push((stitch, count)),
                        }
                    }
                    Act::Run(Op { made: Made::Mixed(runs.into_boxed_slice()), ..op.clone() }, *times)
                }
            }
            act @ (Act::Run(..) | Act::Same { .. } | Act::Skipped(_) | Act::Evenly { .. }) => act.clone(),
        };
        gathered.push(Item { act, place: item.place });
    }
    gathered
}

/// `each` inside of a repeat is the next.
pub(super) fn each_is_next(items: &[Item]) -> Vec<Item> {
    let inside = |item: &Item| match &item.act {
        Act::Run(op @ Op { into: Spot::Space, .. }, Times::Around { leave: 0 }) => {
            Some(Act::Run(op.clone(), Times::Exactly(1)))
        }
        Act::Run(..) | Act::Repeat(..) | Act::Same { .. } | Act::Skipped(_) | Act::Evenly { .. } => None,
    };
    let one = |item: &Item| match &item.act {
        Act::Repeat(body, times) => Item { act: Act::Repeat(changed(body, &inside), *times), place: item.place },
        Act::Run(..) | Act::Same { .. } | Act::Skipped(_) | Act::Evenly { .. } => item.clone(),
    };
    items.iter().map(one).collect()
}
