//! The piece in words: where it is seen from, its colours, its stitches, its shape and its size.

use crate::craft::{Build, Loops, Spot, Stitch};
use crate::drawing::schematic;
use crate::geometry::SideShape;
use crate::geometry::piece::{Eye, Piece};
use crate::notation::write::Writer;
use crate::plan::{Plan, SizePlan};
use crate::words::{Arg, numbers};

/// Higher than this over the horizon, degrees, a piece is seen from above.
const ABOVE: f64 = 50.0;

/// Most stitches that are named.
const NAMED: usize = 4;

pub(super) fn title(plan: &Plan, size: &SizePlan) -> String {
    named(plan, size, "piece-title")
}

/// The message that names a picture of a size.
pub(super) fn named(plan: &Plan, size: &SizePlan, key: &str) -> String {
    let args = [("title", Arg::Text(&plan.design.title.value)), ("size", Arg::Text(&size.name))];
    plan.design.words().with(key, &args)
}

pub(super) fn description(plan: &Plan, size: &SizePlan, (body, space): (&SideShape, &Piece), eye: &Eye) -> String {
    let words = plan.design.words();
    let from = if eye.from.degrees() > ABOVE { "piece-from-above" } else { "piece-from-front" };
    let mut sentences = vec![format!("{}.", title(plan, size)), words.say(from)];
    if let Some(form) = &space.form {
        let around = numbers::length(form.around(), plan.design.units, plan.design.language);
        sentences.push(words.with("piece-on-head", &[("length", Arg::Text(&around))]));
    }
    let kind = plan.design.kind.row();
    let shown = [(kind.hangs, "piece-hangs"), (kind.glows, "piece-glows")];
    sentences.extend(shown.into_iter().filter(|(so, _)| *so).map(|(_, key)| words.say(key)));
    if let Some(waves) = &space.waves {
        let high = numbers::length(waves.height, plan.design.units, plan.design.language);
        let args =
            [("round", Arg::Count(waves.round)), ("count", Arg::Count(waves.count)), ("length", Arg::Text(&high))];
        sentences.push(words.with("piece-ruffles", &args));
    }
    let writer = Writer { words: &words, terms: plan.design.terms };
    let worked = stitches(size).into_iter().map(|stitch| writer.name(stitch)).collect::<Vec<_>>().join(", ");
    sentences.push(words.with("piece-worked", &[("stitches", Arg::Text(&worked))]));
    sentences.extend(textures(size).into_iter().map(|key| words.say(key)));
    let colours: Vec<&str> = plan.design.yarn.colours.iter().map(|colour| colour.name.as_str()).collect();
    if !colours.is_empty() {
        sentences.push(words.with("piece-colours", &[("colours", Arg::Text(&colours.join(", ")))]));
    }
    sentences.push(schematic::told(plan, size, body));
    sentences.join(" ")
}

/// What the surface looks like: that of the main stitch, and what stands out of it.
fn textures(size: &SizePlan) -> Vec<&'static str> {
    let main = stitches(size).first().map(|stitch| stitch.row());
    let surface = main.and_then(|row| match (row.build, row.steps) {
        (Build::Cross | Build::Loop | Build::Linked, _) => Some("piece-texture-close"),
        (Build::Stem, 1) | (Build::Extended | Build::Long, 0) => Some("piece-texture-middling"),
        (Build::Stem | Build::Extended, _) => Some("piece-texture-tall"),
        _ => None,
    });
    let made = || size.rounds.iter().flat_map(|round| &round.ops).flat_map(|op| op.made.runs()).map(|run| run.0);
    let any = |builds: fn(Build) -> bool| made().any(|stitch| builds(stitch.row().build));
    let loops = size.rounds.iter().any(|round| round.loops() != Loops::Both);
    let raised = any(|build| matches!(build, Build::Post(_)));
    let bodies = any(|build| matches!(build, Build::Cluster | Build::Puff | Build::Bobble | Build::Popcorn));
    let holes = size.rounds.iter().flat_map(|round| &round.ops).any(|op| op.into == Spot::Space);
    let more = [
        (loops, "piece-texture-ridges"),
        (raised, "piece-texture-ribs"),
        (bodies, "piece-texture-bodies"),
        (holes, "piece-texture-holes"),
    ];
    surface.into_iter().chain(more.into_iter().filter(|(there, _)| *there).map(|(_, key)| key)).collect()
}

/// The stitches that rounds are worked in, those of most rounds first.
fn stitches(size: &SizePlan) -> Vec<Stitch> {
    let mut counts: Vec<(Stitch, usize)> = Vec::new();
    for round in &size.rounds {
        match counts.iter_mut().find(|(stitch, _)| *stitch == round.stitch) {
            Some((_, count)) => *count += 1,
            None => counts.push((round.stitch, 1)),
        }
    }
    counts.sort_by_key(|(_, count)| std::cmp::Reverse(*count));
    counts.into_iter().take(NAMED).map(|(stitch, _)| stitch).collect()
}
