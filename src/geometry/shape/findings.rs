//! What the strains mean to a maker: rounds that will ruffle, bind or cup, in plain sentences with a cure.
//!
//! Thresholds. Whole counts miss a circle by up to half a stitch, a soft fold costs 2 or 3 %, and common practice lets
//! 6 sc a round pass where the swatch asks for 5.5 (9 % too many, half of which shows as squeezed rounds); none of that
//! shows in the finished piece. So a finding needs 6 % and a stitch and a half, over two rounds or more.

use super::super::{Finding, FindingKind, RoundShape};
use super::rest::{Rest, is_ruffle};
use crate::plan::{Plan, SizePlan};
use crate::units::TURN;

/// Least hoop strain that shows, as a fraction.
pub(in crate::geometry) const SHOWS: f64 = 0.06;

/// Least misfit that shows, in stitches a round.
const STITCHES: f64 = 1.5;

/// Fewest stitches of a round that can bind or cup: the few in the middle of a disc give way, whatever pulls at them.
pub(super) const FEW: f64 = 30.0;

/// How a round misfits.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Fault {
    Ruffles,
    Cups,
    Binds,
}

impl From<Fault> for FindingKind {
    fn from(fault: Fault) -> Self {
        match fault {
            Fault::Ruffles => Self::Ruffles,
            Fault::Cups => Self::Cups,
            Fault::Binds => Self::Binds,
        }
    }
}

/// A misfit of one round.
struct Misfit {
    kind: Fault,
    /// Share of the round's own circumference, above zero.
    share: f64,
    /// The same in stitches.
    stitches: f64,
}

/// Everything worth telling about a shape.
pub(super) fn findings(plan: &Plan, size: &SizePlan, rest: &Rest, rounds: &[RoundShape]) -> Vec<Finding> {
    let meant: Vec<bool> = size.rounds.iter().map(|round| is_ruffle(plan, round)).collect();
    let misfits: Vec<Option<Misfit>> = (0..rounds.len()).map(|i| misfit(rest, rounds, i)).collect();
    let kinds: Vec<Option<(Fault, bool)>> =
        misfits.iter().zip(&meant).map(|(misfit, meant)| Some((misfit.as_ref()?.kind, *meant))).collect();
    let mut found = Vec::new();
    let mut first = 0;
    for run in kinds.chunk_by(|one, next| one == next) {
        // One round off is forgiven: its neighbours share what it lacks.
        let ruffle = run.iter().all(|kind| matches!(kind, Some((Fault::Ruffles, true))));
        if ruffle {
            found.extend(wanted(size, &misfits, (first, first + run.len() - 1)));
        } else if run.len() > 1 && run.iter().all(Option::is_some) {
            found.extend(tell(size, rest, &misfits, (first, first + run.len() - 1)));
        }
        first += run.len();
    }
    found
}

/// Tells of a ruffle that it does.
fn wanted(size: &SizePlan, misfits: &[Option<Misfit>], (first, last): (usize, usize)) -> Option<Finding> {
    let most = misfits.get(first..=last)?.iter().flatten().map(|misfit| misfit.stitches).fold(0.0, f64::max);
    let (from, to) = (number(size, first), number(size, last));
    let what = if from == to { format!("Round {from} ruffles") } else { format!("Rounds {from} to {to} ruffle") };
    let sentence = format!("{what}, as is meant: about {most:.0} stitches more than there is room for");
    Some(Finding { first: from, last: to, kind: FindingKind::Ruffles, meant: true, sentence })
}

fn misfit(rest: &Rest, rounds: &[RoundShape], i: usize) -> Option<Misfit> {
    let (fabric, shape) = (rest.rounds.get(i)?, rounds.get(i)?);
    let count = fabric.around / fabric.width;
    let flat = fabric.flat.filter(|_| count >= FEW);
    let cups = flat.and_then(|wanted| Misfit::of(Fault::Cups, wanted / fabric.around - 1.0, count));
    cups.or_else(|| Misfit::of(Fault::Ruffles, -shape.hoop_strain, count))
        .or_else(|| Misfit::of(Fault::Binds, shape.hoop_strain, count).filter(|_| count >= FEW))
}

impl Misfit {
    /// A misfit by a share of `count` stitches; nothing for one that doesn't show.
    fn of(kind: Fault, share: f64, count: f64) -> Option<Self> {
        let stitches = share * count;
        (share >= SHOWS && stitches >= STITCHES).then_some(Self { kind, share, stitches })
    }
}

fn tell(size: &SizePlan, rest: &Rest, misfits: &[Option<Misfit>], (first, last): (usize, usize)) -> Option<Finding> {
    let run = misfits.get(first..=last)?.iter().zip(first..);
    let (worst, at) = run
        .filter_map(|(misfit, at)| misfit.as_ref().map(|misfit| (misfit, at)))
        .max_by(|(a, _), (b, _)| a.stitches.total_cmp(&b.stitches))?;
    let what = format!(
        "Rounds {} to {} {}: about {:.0} {} at round {} ({:.0} %)",
        number(size, first),
        number(size, last),
        match worst.kind {
            Fault::Ruffles => "will ruffle",
            Fault::Cups => "will cup instead of lying flat",
            Fault::Binds => "will pull tight",
        },
        worst.stitches,
        match worst.kind {
            Fault::Ruffles => "stitches more than there is room for",
            Fault::Cups | Fault::Binds => "stitches too few",
        },
        number(size, at),
        worst.share * 100.0,
    );
    let sentence = format!("{what}; {}", cure(size, rest, worst, (first, last)));
    let (first, last) = (number(size, first), number(size, last));
    Some(Finding { first, last, kind: worst.kind.into(), meant: false, sentence })
}

/// Number of a round by its index.
fn number(size: &SizePlan, index: usize) -> u32 {
    size.rounds.get(index).map_or(index as u32 + 1, |round| round.number)
}

/// A number of things in words, one at least.
fn steps(count: f64, one: &str, many: &str) -> String {
    let count = count.ceil().max(1.0);
    if count < 1.5 { format!("one {one}") } else { format!("{count:.0} {many}") }
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
    match worst.kind {
        Fault::Ruffles if rate > flat + 0.4 && !sudden(steepest.map(|(_, round)| round.change()), rate) => {
            format!("work {} a round", steps((rate - flat).round(), "increase fewer", "increases fewer"))
        }
        Fault::Ruffles => match steepest {
            Some((_, round)) if round.change() > 0 => format!(
                "work {} after round {}, or share its {} increases over more rounds",
                steps(worst.stitches / flat, "even round", "even rounds"),
                round.number,
                round.change(),
            ),
            _ => "work looser here, or with fewer stitches".to_owned(),
        },
        Fault::Cups => {
            format!("work {} a round", steps((flat - rate).round(), "increase more", "increases more"))
        }
        Fault::Binds => match steepest {
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
