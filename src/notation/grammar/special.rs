//! Words of special stitches: crossed pairs, spikes, and names of several words worked together.

use super::place::{around, times};
use super::words::*;
use super::{Input, Res};
use crate::craft::{Build, Made, Op, Stitch};
use crate::notation::lex::{Kind, Token};
use crate::notation::tree::{Act, Times};
use winnow::combinator::{alt, opt};
use winnow::prelude::*;

/// How many rounds further down: `2 rnds below`. Nothing is noted of how far it was read, for a number behind a place may
/// be the next step with its comma left out.
pub(super) fn rounds_below(input: &mut Input<'_>) -> Res<u32> {
    const NUMBERS: [&str; 3] = ["one", "two", "three"];
    let rest = input.peek_slice(input.eof_offset());
    let is = |at: usize, words: &[&str]| rest.get(at).and_then(Token::word).is_some_and(|word| words.contains(&word));
    let spelled = |token: &Token| NUMBERS.iter().position(|known| token.word() == Some(known)).map(|at| at as u32 + 1);
    let number = rest.first().and_then(|token| token.number().or_else(|| spelled(token))).ok_or(())?;
    let said = is(1, &["rnd", "rnds", "round", "rounds", "row", "rows"]) && is(2, &["below", "down", "lower"]);
    if !said {
        return Err(());
    }
    input.next_slice(3);
    Ok(number)
}

/// `long sc2tog`, `linked dc3tog`: several together of a stitch whose name has several words.
pub(super) fn long_together(input: &mut Input<'_>) -> Res<(Stitch, u32)> {
    const MOST: usize = 3;
    let rest = input.peek_slice(input.eof_offset());
    for at in 1..=MOST {
        let Some(token) = rest.get(at) else { break };
        let Some(word) = token.word().and_then(|word| word.strip_suffix("tog")) else { continue };
        let stem = word.trim_end_matches(|c: char| c.is_ascii_digit());
        let Some(number) = word.get(stem.len()..).and_then(|number| number.parse().ok()) else { continue };
        let mut name = rest.get(..=at).unwrap_or_default().to_vec();
        if let Some(last) = name.last_mut() {
            last.kind = Kind::Word(stem.to_owned());
        }
        if let Some((stitch, taken)) = input.state.vocabulary.stitch(&name).filter(|(_, taken)| *taken == name.len()) {
            input.next_slice(taken);
            return Ok((stitch, number));
        }
    }
    Err(())
}

/// `working in front of dc just made`: which of two that cross lies in front.
pub(super) fn in_front(input: &mut Input<'_>) -> Res<()> {
    let which = word(&["working", "work"]);
    let side = alt(((word(&["in"]), word(&["front"]), word(&["of"])).void(), word(&["behind", "over"])));
    let made = (opt(word(&["just"])), opt(word(&["made", "worked"])));
    (which, side, articles, alt((stitch.void(), stitches_word)), made).void().parse_next(input)
}

/// A single crochet, or a spike of whatever depth, worked so many rounds further down.
pub(super) fn spiked(made: &Made, rounds: u32) -> Option<Made> {
    let Made::Same(stitch, count) = made else { return None };
    let fits = *stitch == Stitch::SC || stitch.row().build == Build::Spike;
    let deep = |own: &Stitch| own.row().build == Build::Spike && u32::from(own.row().stems) == rounds;
    Stitch::all().find(deep).filter(|_| fits).map(|spike| Made::Same(spike, *count))
}

/// `crossed dc pair over next 2 sts`, `6 crossed dc pairs`, `crossed dc around`: two stitches, the second of them worked
/// first.
pub(super) fn crossed_pairs(input: &mut Input<'_>) -> Res<Act> {
    let number = how_many(input)?;
    articles(input)?;
    let mut pair = (word(&["crossed", "cross"]), opt(dash), stitch.verify(|stitch| stitch.is_plain_fabric()));
    let (.., stitch) = pair.parse_next(input)?;
    opt(word(&["pair", "pairs", "st", "sts", "stitch", "stitches"])).parse_next(input)?;
    let under = opt(loops).parse_next(input)?.unwrap_or_default();
    let op = Op::crossed(stitch).under(under);
    let over =
        (word(&["over", "in", "on", "across"]), articles, word(&["next", "following", "foll", "first"]), number_of_sts);
    if let Some(stitches) = opt(over.map(|(.., stitches)| stitches)).parse_next(input)? {
        // Every pair takes two.
        let fits = stitches > 0 && stitches % 2 == 0 && number.is_none_or(|number| number * 2 == stitches);
        return if fits { Ok(Act::Run(op, Times::Exactly(stitches / 2))) } else { Err(()) };
    }
    let often = match number {
        Some(number) => Times::Exactly(number),
        None => opt(alt((times, around))).parse_next(input)?.unwrap_or(Times::Exactly(1)),
    };
    Ok(Act::Run(op, often))
}

fn number_of_sts(input: &mut Input<'_>) -> Res<u32> {
    (number, stitches_word).map(|(number, ())| number).parse_next(input)
}
