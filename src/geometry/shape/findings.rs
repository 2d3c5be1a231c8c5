//! What the strains mean to a maker: rounds that will ruffle, bind or cup, in plain sentences with a cure.
//!
//! Thresholds. Whole counts miss a circle by up to half a stitch, a soft fold costs 2 or 3 %, and common practice lets
//! 6 sc a round pass where the swatch asks for 5.5 (9 % too many, half of which shows as squeezed rounds); none of that
//! shows in the finished piece. So a finding needs 6 % and a stitch and a half, over two rounds or more.

use super::super::{Finding, FindingKind, RoundShape};
use super::rest::Rest;
use crate::plan::SizePlan;
use crate::units::TURN;

/// Least hoop strain that shows, as a fraction.
pub(super) const SHOWS: f64 = 0.06;

/// Least misfit that shows, in stitches a round.
const STITCHES: f64 = 1.5;

/// Fewest stitches of a round that can bind or cup: the few in the middle of a disc give way, whatever pulls at them.
pub(super) const FEW: f64 = 30.0;

/// A misfit of one round.
struct Misfit {
    kind: FindingKind,
    /// Share of the round's own circumference, above zero.
    share: f64,
    /// The same in stitches.
    stitches: f64,
}

/// Everything worth telling about a shape.
pub(super) fn findings(size: &SizePlan, rest: &Rest, rounds: &[RoundShape]) -> Vec<Finding> {
    let misfits: Vec<Option<Misfit>> = (0..rounds.len()).map(|i| misfit(rest, rounds, i)).collect();
    let kind = |i: usize| misfits.get(i).and_then(|misfit| misfit.as_ref()).map(|misfit| misfit.kind);
    let mut found = Vec::new();
    let mut first = 0;
    while first < misfits.len() {
        let mut last = first;
        while kind(last + 1).is_some() && kind(last + 1) == kind(first) {
            last += 1;
        }
        if kind(first).is_some() && last > first {
            found.extend(tell(size, rest, &misfits, (first, last)));
        }
        first = last + 1;
    }
    found
}

fn misfit(rest: &Rest, rounds: &[RoundShape], i: usize) -> Option<Misfit> {
    let (fabric, shape) = (rest.rounds.get(i)?, rounds.get(i)?);
    let count = fabric.around / fabric.width;
    let of = |kind: FindingKind, share: f64| {
        (share >= SHOWS && share * count >= STITCHES).then_some(Misfit { kind, share, stitches: share * count })
    };
    let cups = fabric.flat.and_then(|wanted| of(FindingKind::Cups, wanted / fabric.around - 1.0));
    let binds = || of(FindingKind::Binds, shape.hoop_strain).filter(|_| count >= FEW);
    cups.or_else(|| of(FindingKind::Ruffles, -shape.hoop_strain)).or_else(binds)
}

fn tell(size: &SizePlan, rest: &Rest, misfits: &[Option<Misfit>], (first, last): (usize, usize)) -> Option<Finding> {
    let run = misfits.get(first..=last)?.iter().zip(first..);
    let (worst, at) = run
        .filter_map(|(misfit, at)| misfit.as_ref().map(|misfit| (misfit, at)))
        .max_by(|(a, _), (b, _)| a.stitches.total_cmp(&b.stitches))?;
    let number = |i: usize| size.rounds.get(i).map_or(i as u32 + 1, |round| round.number);
    let what = format!(
        "Rounds {} to {} {}: about {:.0} {} at round {} ({:.0} %)",
        number(first),
        number(last),
        match worst.kind {
            FindingKind::Ruffles => "will ruffle",
            FindingKind::Cups => "will cup instead of lying flat",
            FindingKind::Binds => "will pull tight",
        },
        worst.stitches,
        match worst.kind {
            FindingKind::Ruffles => "stitches more than there is room for",
            FindingKind::Cups | FindingKind::Binds => "stitches too few",
        },
        number(at),
        worst.share * 100.0,
    );
    let sentence = format!("{what}; {}", cure(size, rest, worst, (first, last)));
    Some(Finding { first: number(first), last: number(last), kind: worst.kind, sentence })
}

/// What to do about it: a gentler rate where the rate is wrong throughout, otherwise more rounds for one sudden jump.
fn cure(size: &SizePlan, rest: &Rest, worst: &Misfit, (first, last): (usize, usize)) -> String {
    let changes =
        || size.rounds.iter().zip(first..).skip(first).take(last + 1 - first).map(|(round, _)| round.change());
    let rounds = (last + 1 - first) as f64;
    let rate = changes().sum::<i64>() as f64 / rounds;
    let flat = rest.rounds[first..=last].iter().map(|round| TURN * round.height / round.width).sum::<f64>() / rounds;
    // A ring's first round isn't a jump, there is nothing before it.
    let steepest = size.rounds.iter().enumerate().skip(first.saturating_sub(3).max(1)).take(last + 4 - first.min(3));
    let steepest = steepest.max_by_key(|(i, round)| (round.change().abs(), usize::MAX - i));
    let steps = |count: f64, one: &str, many: &str| {
        let count = count.ceil().max(1.0);
        if count < 1.5 { format!("one {one}") } else { format!("{count:.0} {many}") }
    };
    match worst.kind {
        FindingKind::Ruffles if rate > flat + 0.4 && !sudden(steepest.map(|(_, round)| round.change()), rate) => {
            format!("work {} a round", steps((rate - flat).round(), "increase fewer", "increases fewer"))
        }
        FindingKind::Ruffles => match steepest {
            Some((_, round)) if round.change() > 0 => format!(
                "work {} after round {}, or share its {} increases over more rounds",
                steps(worst.stitches / flat, "even round", "even rounds"),
                round.number,
                round.change(),
            ),
            _ => "work looser here, or with fewer stitches".to_owned(),
        },
        FindingKind::Cups => {
            format!("work {} a round", steps((flat - rate).round(), "increase more", "increases more"))
        }
        FindingKind::Binds => match steepest {
            Some((_, round)) if round.change() < 0 => format!(
                "share the {} decreases of round {} over {} more",
                -round.change(),
                round.number,
                steps(-(round.change() as f64) / flat - 1.0, "round", "rounds"),
            ),
            _ => format!(
                "work {} a round before them",
                steps(worst.stitches / rounds, "increase more", "increases more")
            ),
        },
    }
}

/// True where one round does far more than the rounds about it.
fn sudden(steepest: Option<i64>, rate: f64) -> bool {
    steepest.is_some_and(|change| change as f64 > 2.0 * rate.max(1.0))
}
