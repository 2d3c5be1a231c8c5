//! What a chart says to a reader who can't see it.

use super::ChartOptions;
use crate::design::Hand;
use crate::drawing::Sign;
use crate::drawing::key::meaning;
use crate::plan::{Close, Plan, Round, SizePlan};
use crate::stitch::Loops;
use crate::words::{Arg, Words};

/// The chart's short name.
pub(super) fn title(plan: &Plan, size: &SizePlan, words: &Words) -> String {
    words.with("chart-title", &[("title", Arg::Text(&plan.design.title.value)), ("size", Arg::Text(&size.name))])
}

/// Shape, rounds and counts in words.
pub(super) fn description(plan: &Plan, size: &SizePlan, options: &ChartOptions, words: &Words) -> String {
    let spiral = size.rounds.first().is_some_and(|round| round.close == Close::Spiral);
    let way = words.say(if plan.design.hand == Hand::Right { "chart-anticlockwise" } else { "chart-clockwise" });
    let work = words.say(if spiral { "chart-spiral" } else { "chart-joined" });
    let clock = ((options.start.degrees() / 30.0).round() as i64).rem_euclid(12);
    let clock = if clock == 0 { 12 } else { clock as u32 };
    let count = |round: Option<&Round>| Arg::Count(round.map_or(0, |round| round.after));
    let mut said = vec![words.with(
        "chart-says",
        &[
            ("way", Arg::Text(&way)),
            ("work", Arg::Text(&work)),
            ("clock", Arg::Count(clock)),
            ("rounds", Arg::Count(size.rounds.len() as u32)),
            ("first", count(size.rounds.first())),
            ("last", count(size.rounds.last())),
            ("sum", Arg::Count(size.stitches().min(u64::from(u32::MAX)) as u32)),
        ],
    )];
    for part in &size.parts {
        let last = size.rounds.get((part.last as usize).saturating_sub(1));
        said.push(words.with(
            "chart-part-says",
            &[
                ("part", Arg::Text(&part.name)),
                ("from", Arg::Count(part.first)),
                ("to", Arg::Count(part.last)),
                ("count", count(last)),
            ],
        ));
    }
    said.join(" ")
}

/// Name and description of a round, or of a band of rounds that are alike.
pub(super) fn round(plan: &Plan, round: &Round, last: &Round, words: &Words) -> (String, String) {
    let name = if last.number > round.number {
        words.with("chart-rounds", &[("from", Arg::Count(round.number)), ("to", Arg::Count(last.number))])
    } else {
        words.with("chart-round", &[("round", Arg::Count(round.number))])
    };
    let stitch = meaning(Sign::Stitch(round.stitch, Loops::Both), plan.design.terms, words).1;
    let mut said =
        vec![words.with("chart-round-says", &[("count", Arg::Count(round.after)), ("stitch", Arg::Text(&stitch))])];
    let change = round.change();
    if round.before > 0 {
        let by = Arg::Count(change.unsigned_abs().min(u64::from(u32::MAX)) as u32);
        said.push(match change {
            0 => words.say("chart-even"),
            1.. => words.with("chart-more", &[("by", by)]),
            _ => words.with("chart-fewer", &[("by", by)]),
        });
    }
    match round.loops() {
        Loops::Both => {}
        Loops::Back => said.push(words.say("chart-back-loop")),
        Loops::Front => said.push(words.say("chart-front-loop")),
    }
    if let Some(colour) = round.colour.and_then(|colour| plan.design.yarn.colours.get(colour)) {
        said.push(words.with("chart-colour", &[("colour", Arg::Text(&colour.name))]));
    }
    (name, said.join(" "))
}
