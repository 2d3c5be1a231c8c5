//! Complaints about counts, each with its arithmetic and the nearest instruction that works.

use super::Rules;
use crate::craft::{Loops, Made, Op, Round, Spot, Stitch, Terms, abbreviation};
use crate::notation::tree::{Act, Item, Times};
use crate::notation::write::Writer;
use crate::notation::{Stated, WrittenRound};
use crate::plan::spread;
use crate::report::{Diagnostic, Place};
use crate::words::{Language, Words};

/// Longer rounds get no suggestion written out.
const LONGEST: u32 = 5_000;

fn stitches(count: u32) -> String {
    if count == 1 { "1 stitch".to_owned() } else { format!("{count} stitches") }
}

/// The repeat whose number of times is most likely to be wrong, the only one of the round: stitches that it uses, how
/// often it is worked, where it stands, and what it makes.
fn likely_repeat(items: &[Item]) -> Option<(u32, u32, Place, u32)> {
    let mut found = items.iter().filter_map(|item| match &item.act {
        Act::Repeat(body, Times::Exactly(times)) => {
            let used = body.iter().map(|item| match &item.act {
                Act::Run(op, Times::Exactly(times)) => op.consumed.saturating_mul(*times),
                Act::Run(..) | Act::Repeat(..) | Act::Same { .. } | Act::Skipped(_) | Act::Evenly { .. } => 0,
            });
            let made = body.iter().map(|item| match &item.act {
                Act::Run(op, Times::Exactly(times)) => op.count().saturating_mul(*times),
                Act::Run(..) | Act::Repeat(..) | Act::Same { .. } | Act::Skipped(_) | Act::Evenly { .. } => 0,
            });
            let (used, made) = (used.fold(0, u32::saturating_add), made.fold(0, u32::saturating_add));
            Some((used, *times, item.place, made))
        }
        Act::Run(..) | Act::Repeat(..) | Act::Same { .. } | Act::Skipped(_) | Act::Evenly { .. } => None,
    });
    let only = found.next();
    only.filter(|(used, ..)| *used > 0 && found.next().is_none())
}

/// The round uses up another number of stitches than stand there.
pub(super) fn unused(
    written: &WrittenRound,
    number: u32,
    before: u32,
    used: u32,
    ops: &[Op],
    rules: &Rules,
) -> Diagnostic {
    let what = format!("round {number} uses up {}, but {before} stand there", stitches(used));
    let (code, message) = if used < before {
        ("stitches-left", format!("{what}: {} left over", before - used))
    } else {
        ("stitches-missing", format!("{what}: {} missing", used - before))
    };
    let repeat = likely_repeat(&written.items);
    let complaint = Diagnostic::error(code, message).at(repeat.map_or(written.place, |(_, _, place, _)| place));
    let other = repeat.and_then(|(each, times, _, makes)| {
        let outside = i64::from(used) - i64::from(each) * i64::from(times);
        let room = i64::from(before) - outside;
        let other = (room > 0 && room % i64::from(each) == 0).then(|| room / i64::from(each))?;
        // What does not make the stated count is no cure.
        let made: i64 = ops.iter().map(|op| i64::from(op.count())).sum();
        let would = made + (other - i64::from(times)) * i64::from(makes);
        let stated = written.stated.as_ref().and_then(Stated::stitches);
        stated.is_none_or(|stated| i64::from(stated) == would).then_some(other)
    });
    if let Some(other) = other {
        let (each, times, ..) = repeat.unwrap_or_default();
        return complaint.help(format!(
            "the repeat uses {}; worked {other} times and not {times} it uses them all",
            stitches(each)
        ));
    }
    let made = written.stated.as_ref().and_then(Stated::stitches);
    let grown = i64::from(before) + change_by(ops);
    let after = made.or(u32::try_from(grown).ok()).unwrap_or(before);
    match spreading(before, after, main(ops, rules), rules.terms).filter(|_| plain(ops)) {
        Some(text) => complaint.help(format!("from {before} to {after}: `{text}`")),
        None => complaint,
    }
}

/// Stitches by which the operations grow the round.
fn change_by(ops: &[Op]) -> i64 {
    ops.iter().map(|op| i64::from(op.count()) - i64::from(op.consumed)).sum()
}

/// True for plain stitches under both loops: what is offered in their place loses nothing of them.
fn plain(ops: &[Op]) -> bool {
    let fabric = |stitch: Stitch| stitch.is_plain_fabric() || stitch == Stitch::SL_ST;
    ops.iter().all(|op| op.loops == Loops::Both && op.made.runs().all(|(stitch, _)| fabric(stitch)))
}

fn main(ops: &[Op], rules: &Rules) -> Stitch {
    let tall = |stitch: &Stitch| *stitch != Stitch::CH && stitch.row().counts > 0;
    ops.iter().flat_map(|op| op.made.runs()).map(|(stitch, _)| stitch).find(tall).unwrap_or(rules.main)
}

/// A repeat that goes around doesn't divide what is there.
pub(super) fn leaves(
    written: &WrittenRound,
    (available, each): (u32, u32),
    start: u32,
    body: &[Op],
    place: Place,
    rules: &Rules,
) -> Diagnostic {
    let (repeats, over) = (available / each, available % each);
    let message = match repeats {
        0 => format!("one repeat needs {}, and only {available} are there", stitches(each)),
        1 => format!("{} are 1 repeat of {each} with {over} left over", stitches(available)),
        _ => format!("{} are {repeats} repeats of {each} with {over} left over", stitches(available)),
    };
    let complaint = Diagnostic::error("around-leaves", message).at(place);
    let change = change_by(body);
    let stated = written.stated.as_ref().and_then(Stated::stitches);
    let stated = stated.map(|stated| i64::from(stated) - i64::from(start));
    // The nearest whole number of repeats keeps their kind; the stated count decides where there is one.
    let near = (f64::from(available) / f64::from(each)).round().max(1.0) as i64;
    let after = stated.unwrap_or(i64::from(available) + near * change);
    let text = u32::try_from(after)
        .ok()
        .filter(|_| plain(body))
        .and_then(|after| spreading(available, after, main(body, rules), rules.terms).map(|text| (after, text)));
    match text {
        Some((after, text)) => complaint.help(format!("spread as `{text}`, which makes {after}")),
        None => complaint.help(format!("end with `{} more`, or change the count of the round before", stitches(over))),
    }
}

/// The round makes other chain spaces than it states.
/// Other spaces than are stated: `chains` in all, or so many spaces where their number is another.
pub(super) fn other_spaces(stated: &Stated, chains: u32, spaces: Option<u32>) -> Diagnostic {
    let message = match (spaces, stated.spaces) {
        (Some(made), Some(stated)) => format!("this round makes {made} chain spaces, but it states {stated}"),
        _ => format!("the spaces of this round have {chains} chains in all, but it states {}", stated.count),
    };
    let help = "count the chain spaces, or state the stitches: `(16 dc, 16 ch-1 sps)`";
    Diagnostic::error("count-differs", message).at(stated.place).help(help)
}

/// The round makes another number than it states.
pub(super) fn miscounted(
    written: &WrittenRound,
    before: Option<u32>,
    made: u32,
    chain: Option<(u8, bool)>,
    rules: &Rules,
) -> Diagnostic {
    let (stated, place) = written.stated.as_ref().map_or((made, written.place), |stated| (stated.count, stated.place));
    let message = format!("this round makes {}, but it states {stated}", stitches(made));
    let complaint = Diagnostic::error("count-differs", message).at(place);
    if let Some((chains, counts)) = chain {
        let other = if counts { made.checked_sub(1) } else { made.checked_add(1) };
        if other == Some(stated) {
            let instead = if counts { "does not count" } else { "counts as a stitch" };
            return complaint
                .help(format!("the count fits if the ch-{chains} {instead}: say so, `ch {chains} ({instead})`"));
        }
    }
    let from = before.filter(|before| *before > 0);
    let stitch = filling(written, rules);
    match from.and_then(|before| spreading(before, stated, stitch, rules.terms).map(|text| (before, text))) {
        Some((before, text)) => complaint.help(format!("state ({made}), or for {stated} of {before} write `{text}`")),
        None => complaint.help(format!("state ({made}), or make {stated} stitches")),
    }
}

/// The count fits, but not for the stitches it names. Post stitches count as the stitch they are forms of, and
/// clusters, puffs and the like may be called by the stitch they are built of (common practice).
pub(super) fn other_kinds(stated: &Stated, round: &Round, rules: &Rules) -> Option<Diagnostic> {
    let made = |fits: &dyn Fn(Stitch) -> bool| -> u32 {
        let runs = round.ops.iter().flat_map(|op| op.made.runs());
        runs.filter(|(stitch, _)| fits(*stitch)).map(|(_, count)| count).sum()
    };
    let built_of = |said: Stitch| move |made: Stitch| made == said || made.built_of() == Some(said);
    let right =
        |(stitch, count): &(Stitch, u32)| made(&|made| made == *stitch) == *count || made(&built_of(*stitch)) == *count;
    let (wrong, count) = stated.kinds().find(|kind| !right(kind))?;
    let mut kinds: Vec<(Stitch, u32)> = Vec::new();
    let counted = round.ops.iter().flat_map(|op| op.made.runs()).filter(|(stitch, _)| stitch.row().counts > 0);
    for (stitch, count) in counted {
        match kinds.iter_mut().find(|(known, _)| *known == stitch) {
            Some((_, sum)) => *sum += count,
            None => kinds.push((stitch, count)),
        }
    }
    let name = |stitch| abbreviation(stitch, rules.terms);
    let made: Vec<String> = kinds.iter().map(|(stitch, count)| format!("{count} {}", name(*stitch))).collect();
    let (number, wrong) = (round.number, name(wrong));
    let message = format!("round {number} states {count} {wrong}, but is made of {}", made.join(", "));
    let help = format!("state `({})`, or only the number, or check which stitch is meant", made.join(", "));
    Some(Diagnostic::warning("count-kind", message).at(stated.place).help(help))
}

/// The stitch to fill a round with: the first plain one that it names.
fn filling(written: &WrittenRound, rules: &Rules) -> Stitch {
    fn find(items: &[Item]) -> Option<Stitch> {
        items.iter().find_map(|item| match &item.act {
            Act::Run(op, _) => op.made.runs().map(|(stitch, _)| stitch).find(|it| it.is_plain_fabric()),
            Act::Repeat(body, _) => find(body),
            Act::Evenly { plain, .. } => plain.made.runs().map(|(stitch, _)| stitch).next(),
            Act::Same { .. } | Act::Skipped(_) => None,
        })
    }
    find(&written.items).unwrap_or(rules.main)
}

/// An instruction that makes `after` stitches of `before`, its shaping spread evenly; nothing where that takes more
/// than doubling or halving.
fn spreading(before: u32, after: u32, stitch: Stitch, terms: Terms) -> Option<String> {
    if before == 0 || before > LONGEST || after > before.checked_mul(2)? || after.checked_mul(2)? < before {
        return None;
    }
    let plain = Op::plain(stitch);
    let (shape, shapes) = if after >= before {
        (Op::increase(stitch, 2), after - before)
    } else {
        (Op { into: Spot::Together, consumed: 2, made: Made::Same(stitch, 1), loops: Loops::Both }, before - after)
    };
    let mut ops = Vec::new();
    if shapes == 0 {
        ops = vec![plain; before as usize];
    } else {
        for gap in spread(before.checked_sub(shapes * shape.consumed)?, shapes, 0) {
            ops.extend(std::iter::repeat_n(plain.clone(), gap as usize));
            ops.push(shape.clone());
        }
    }
    let words = Words::of(Language::EN);
    Some(Writer { words: &words, terms }.ops(&ops))
}
