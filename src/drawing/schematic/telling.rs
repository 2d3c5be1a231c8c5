//! The schematic in words: its title, and its shape and dimensions for those who don't see it.

use super::Sized;
use crate::geometry::sideview::{Measure, MeasureKind, PartExtent, STRAIGHT, SideView};
use crate::plan::Plan;
use crate::units::EPSILON;
use crate::words::{Arg, Words, numbers};

pub(super) fn title(plan: &Plan, sizes: &[Sized<'_>], words: &Words) -> String {
    let names: Vec<&str> = sizes.iter().map(|size| size.name).collect();
    let (count, names) = (names.len() as u32, names.join(", "));
    let args =
        [("title", Arg::Text(&plan.design.title.value)), ("count", Arg::Count(count)), ("sizes", Arg::Text(&names))];
    words.with("schematic-title", &args)
}

/// Shape of every part from the start on, then the dimensions of every size.
pub(super) fn description(plan: &Plan, sizes: &[Sized<'_>], words: &Words) -> String {
    let Some(first) = sizes.first() else { return String::new() };
    let flat = plan.design.kind.row().flat || sizes.iter().all(|size| size.view.lies_flat());
    let how = match () {
        () if flat => "schematic-from-middle",
        () if first.view.turned => "schematic-from-base",
        () => "schematic-from-top",
    };
    let how = words.say(how);
    let mut sentences = vec![format!("{}.", title(plan, sizes, words)), how];
    sentences.extend(shape(plan, sizes, words));
    sentences.join(" ")
}

/// Shape of every part from the start on, then the dimensions of every size: a sentence each.
pub(super) fn shape(plan: &Plan, sizes: &[Sized<'_>], words: &Words) -> Vec<String> {
    let Some(first) = sizes.first() else { return Vec::new() };
    let view = &first.view;
    let mut sentences = Vec::new();
    for part in &view.parts {
        let runs = words.say(run(view, part));
        sentences
            .push(words.with("schematic-part-says", &[("part", Arg::Text(&part.name)), ("runs", Arg::Text(&runs))]));
    }
    if plan.sizes.iter().any(|size| size.closed_flat().is_some()) {
        sentences.push(words.say("schematic-closed-flat"));
    }
    for size in sizes {
        let told: Vec<String> = size.view.measures.iter().map(|m| measure(plan, size, m, words)).collect();
        let told = told.join(words.semicolon());
        sentences
            .push(words.with("schematic-size-says", &[("size", Arg::Text(size.name)), ("what", Arg::Text(&told))]));
    }
    sentences
}

fn measure(plan: &Plan, size: &Sized<'_>, measure: &Measure, words: &Words) -> String {
    let part = measure.part.and_then(|part| size.view.parts.get(part)).map_or("", |part| part.name.as_str());
    let key = match measure.kind {
        MeasureKind::Across => "schematic-across",
        MeasureKind::AcrossFlats => "schematic-across-flats",
        MeasureKind::AcrossCorners => "schematic-across-corners",
        MeasureKind::Widest => "schematic-widest",
        MeasureKind::Along => "schematic-along",
        MeasureKind::Folded => "schematic-folded",
        MeasureKind::Height => "schematic-height",
        MeasureKind::Around => "schematic-around",
        MeasureKind::LyingFlat => "schematic-flat",
    };
    let name = words.with(key, &[("part", Arg::Text(part))]);
    let length = numbers::length(measure.value, plan.design.units, words.language);
    format!("{name}{}{length}", words.colon())
}

/// How a part runs, seen from its start: flat, straight, widening or narrowing.
fn run(view: &SideView, part: &PartExtent) -> &'static str {
    let way = view.part_outline(part);
    let Some((from, to)) = way.first().zip(way.last()) else { return "schematic-runs-straight" };
    let out = (to.x - from.x) / part.length.mm().max(EPSILON);
    match out {
        _ if part.ruffled => "schematic-runs-ruffled",
        _ if part.flat => "schematic-runs-flat",
        out if out > STRAIGHT => "schematic-runs-wider",
        out if out < -STRAIGHT => "schematic-runs-narrower",
        _ => "schematic-runs-straight",
    }
}
