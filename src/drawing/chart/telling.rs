//! What a chart says to a reader who can't see it.

use super::{ChartOptions, ChartView};
use crate::craft::{Close, Round};
use crate::design::Hand;
use crate::geometry::rings::repeats;
use crate::notation::plain;
use crate::plan::{Plan, SizePlan};
use crate::words::{Arg, Words};

/// The chart's short name; a chart of some of the rounds names them.
pub(super) fn title(plan: &Plan, size: &SizePlan, view: ChartView, words: &Words) -> String {
    let args = [("title", Arg::Text(&plan.design.title.value)), ("size", Arg::Text(&size.name))];
    let whole = words.with("chart-title", &args);
    let of = match view {
        ChartView::Whole | ChartView::Bands | ChartView::Sector => None,
        ChartView::Part(part) => size.parts.get(part).map(|part| part.name.clone()),
        ChartView::UpTo(_) => shown(size, view).and_then(|rounds| Some(span(rounds.first()?, rounds.last()?, words))),
    };
    of.map_or(whole.clone(), |of| format!("{whole} · {of}"))
}

/// The rounds that a view shows.
fn shown(size: &SizePlan, view: ChartView) -> Option<&[Round]> {
    let rows = view.rows(size);
    size.rounds.get(rows.first()?.first..=rows.last()?.last)
}

/// Shape, rounds and counts in words, of the rounds that are shown.
pub(super) fn description(plan: &Plan, size: &SizePlan, options: &ChartOptions, words: &Words) -> String {
    let rounds = shown(size, options.view).unwrap_or_default();
    let spiral = rounds.first().is_some_and(|round| round.close == Close::Spiral);
    let way = words.say(if plan.design.hand == Hand::Right { "chart-anticlockwise" } else { "chart-clockwise" });
    let work = words.say(if spiral { "chart-spiral" } else { "chart-joined" });
    let clock = ((options.start.degrees() / 30.0).round() as i64).rem_euclid(12);
    let clock = if clock == 0 { 12 } else { clock as u32 };
    let sum: u64 = rounds.iter().map(|round| u64::from(round.stitches())).sum();
    // What it is and of which size comes first: that is what tells whether to listen on.
    let mut said = vec![format!("{}.", title(plan, size, options.view, words))];
    said.push(words.with(
        "chart-says",
        &[
            ("way", Arg::Text(&way)),
            ("work", Arg::Text(&work)),
            ("clock", Arg::Count(clock)),
            ("rounds", Arg::Count(rounds.len() as u32)),
            ("first", Arg::Count(rounds.first().map_or(0, Round::stitches))),
            ("last", Arg::Count(rounds.last().map_or(0, Round::stitches))),
            ("sum", Arg::Count(sum.min(u64::from(u32::MAX)) as u32)),
        ],
    ));
    for (index, part) in size.parts.iter().enumerate() {
        let mut own = rounds.iter().filter(|round| round.part == index);
        let Some(first) = own.next() else { continue };
        let last = own.next_back().unwrap_or(first);
        said.push(words.with(
            "chart-part-says",
            &[
                ("part", Arg::Text(&part.name)),
                ("from", Arg::Count(first.number)),
                ("to", Arg::Count(last.number)),
                ("count", Arg::Count(last.stitches())),
            ],
        ));
    }
    if let Some(polygon) = rounds.last().and_then(|last| size.polygon_at(last)) {
        said.push(words.with("chart-corners", &[("count", Arg::Count(polygon.corners))]) + ".");
    }
    if options.view == ChartView::Sector && repeats(size) > 1 {
        said.push(words.with("chart-repeat", &[("count", Arg::Count(repeats(size)))]) + ".");
    }
    said.join(" ")
}

/// `Round 4`, `Rounds 4 to 9`.
fn span(first: &Round, last: &Round, words: &Words) -> String {
    if last.number > first.number {
        words.with("chart-rounds", &[("from", Arg::Count(first.number)), ("to", Arg::Count(last.number))])
    } else {
        words.with("chart-round", &[("round", Arg::Count(first.number))])
    }
}

/// Name and description of a round, or of a band of rounds that are alike: what is worked in it, in plain words, so
/// that who can't see the round can work it.
pub(super) fn round(plan: &Plan, size: &SizePlan, round: &Round, last: &Round, words: &Words) -> (String, String) {
    let name = span(round, last, words);
    // The name says which round it is.
    let mut said: Vec<String> = plain::steps(round, size.below(round), words, plan.design.terms);
    said.remove(0);
    let change = size.piece().change(round);
    if round.before > 0 {
        let by = Arg::Count(change.unsigned_abs().min(u64::from(u32::MAX)) as u32);
        said.push(match change {
            0 => words.say("chart-even"),
            1.. => words.with("chart-more", &[("by", by)]),
            _ => words.with("chart-fewer", &[("by", by)]),
        });
    }
    if let Some(colour) = round.colour.and_then(|colour| plan.design.yarn.colours.get(colour)) {
        said.push(words.with("chart-colour", &[("colour", Arg::Text(&colour.name))]));
    }
    (name, said.join(" "))
}
