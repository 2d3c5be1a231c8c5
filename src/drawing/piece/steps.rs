//! The piece on its way: what there is after the rounds that a maker stops at, side by side to one scale.

use core::f64::consts::PI;

use kurbo::{Point, Rect, Vec2};

use super::telling::named;
use super::{PieceOptions, draw_piece, relaxed, room};
use crate::craft::{Build, Round, Spot};
use crate::drawing::{Anchor, Drawing, Group, Item, Origin, Role, TextItem};
use crate::font::Face;
use crate::geometry::mesh::lies_flat;
use crate::geometry::piece::{Eye, Piece};
use crate::geometry::{RoundShape, SideShape, predict};
use crate::plan::{Plan, SizePlan};
use crate::units::{Mm, hypot};
use crate::words::{Arg, Words, numbers};

/// How steps are drawn.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct StepsOptions {
    /// Width they must fit into.
    pub width: Mm,
    /// Height they must fit into.
    pub height: Mm,
    /// Size of their letters.
    pub letters: Mm,
    /// Most of them side by side.
    pub across: usize,
}

impl Default for StepsOptions {
    fn default() -> Self {
        Self { width: Mm::new(170.0), height: Mm::new(240.0), letters: Mm::new(3.4), across: 3 }
    }
}

/// Most steps shown: more than a page holds nobody compares.
const MOST: usize = 9;

/// Rounds alike that make a stretch of straight or of shaped work worth a stop.
const STRETCH: usize = 4;

/// Between two steps, and between a step and its words, mm.
const GAP: f64 = 5.0;

/// Above the first, mm.
const MARGIN: f64 = 2.0;

/// Most lines of words under a step.
const MOST_LINES: f64 = 6.0;

/// Height of a line of words in its letters.
const LINE: f64 = 1.35;

/// A stop for shaping within so many rounds of another is none.
const NEAR: u32 = 3;

/// How far a round may lie from where it comes to lie in the end, in widths of its stitch, for the piece on its way to be
/// cut out of the finished one: what is worked on it draws an edge in or out, and turns a disc down into a side.
const MOVED: f64 = 0.25;

/// The round after which the beginning is shown, of a piece with twice as many.
const START: u32 = 3;

/// Numbers of the rounds after which a maker stops and looks: soon after the start, at the end of a part, before another
/// colour, where shaping begins or ends for a while, and at the end. Of too many, those go first that stand closest after
/// another, ends of parts last of all.
pub fn stops(size: &SizePlan) -> Vec<u32> {
    let ends: Vec<u32> = size.parts.iter().map(|part| part.last).collect();
    let mut stops = ends.clone();
    let next = size.rounds.iter().skip(1);
    let colours = size.rounds.iter().zip(next).filter(|(one, next)| one.colour != next.colour);
    stops.extend(colours.map(|(one, _)| one.number));
    stops.extend((size.rounds.len() as u32 > 2 * START).then_some(START));
    let straight = |round: &Round| round.before == round.after;
    let mut at = 0;
    for alike in size.rounds.chunk_by(|one, next| straight(one) == straight(next)) {
        at += alike.len();
        let last = alike.last().map_or(0, |round| round.number);
        let far = stops.iter().all(|stop| stop.abs_diff(last) > NEAR);
        stops.extend((alike.len() >= STRETCH && at < size.rounds.len() && far).then_some(last));
    }
    stops.sort_unstable();
    stops.dedup();
    while stops.len() > MOST {
        let all = 0..stops.len() - 1;
        let room = |at: usize| stops[at] - if at == 0 { 0 } else { stops[at - 1] };
        let spare = all.clone().filter(|at| !ends.contains(&stops[*at]));
        let first = spare.min_by_key(|at| room(*at)).or(all.min_by_key(|at| room(*at)));
        stops.remove(first.unwrap_or(0));
    }
    stops
}

/// The size as it is after so many rounds.
fn cut(size: &SizePlan, rounds: u32) -> SizePlan {
    let mut cut = size.clone();
    cut.rounds.truncate(rounds as usize);
    cut.parts.retain(|part| part.first <= rounds);
    cut.parts.iter_mut().for_each(|part| part.last = part.last.min(rounds));
    if rounds < size.rounds.len() as u32 {
        cut.step_down.clear();
    }
    cut
}

/// True for what lies by then as it will lie in the end: no ruffles and no lace, which the rounds to come change in any
/// case, and no round further off than [`MOVED`] from where it is in the `whole`. The rest is relaxed by itself.
fn stays(size: &SizePlan, body: &SideShape, whole: &SideShape, width: f64) -> bool {
    let lace = size.rounds.iter().flat_map(|round| &round.ops).any(|op| op.into == Spot::Space);
    let off = |(own, later): (&RoundShape, &RoundShape)| {
        hypot((own.radius - later.radius).mm(), (own.height - later.height).mm())
    };
    let moved = body.rounds.iter().zip(&whole.rounds).map(off).fold(0.0, f64::max);
    body.findings.is_empty() && !lace && moved < MOVED * width
}

/// The piece after so many rounds.
struct Step {
    rounds: u32,
    cut: SizePlan,
    body: SideShape,
    space: Piece,
    eye: Eye,
}

impl Step {
    /// `whole` and `finished` are the body of the whole size and where it lies in space.
    fn of(plan: &Plan, size: &SizePlan, (whole, finished): (&SideShape, &Piece), rounds: u32) -> Self {
        let cut = cut(size, rounds);
        let body = predict(plan, &cut);
        let done = rounds as usize >= size.rounds.len();
        let width = cut.rounds.last().map_or(0.0, |round| plan.gauge_of(round).width.mm());
        let space = if done || stays(&cut, &body, whole, width) {
            finished.after(rounds as usize)
        } else {
            relaxed(plan, &cut, &body)
        };
        let eye = Eye::usual(if lies_flat(&body) { &body } else { whole });
        Self { rounds, cut, body, space, eye }
    }
}

/// The piece as it lies after so many rounds, before any other is worked on them; see [`steps`].
pub fn on_its_way(plan: &Plan, size: &SizePlan, shape: (&SideShape, &Piece), rounds: u32) -> Piece {
    Step::of(plan, size, shape, rounds).space
}

/// Draws the piece after each of its [`stops`], all to one scale, with the stitches, the width and the depth there are.
/// `whole` is its predicted shape and `finished` how it lies in space: the last step is that very piece.
pub fn steps(plan: &Plan, size: &SizePlan, (whole, finished): (&SideShape, &Piece), options: &StepsOptions) -> Drawing {
    let step = |rounds| Step::of(plan, size, (whole, finished), rounds);
    let steps: Vec<Step> = stops(size).into_iter().map(step).collect();
    // Rows as even as they can be: seven in two are four and three.
    let rows = steps.len().div_ceil(options.across.max(1)).max(1);
    let (columns, rows) = (steps.len().div_ceil(rows).max(1), rows as f64);
    let cell = (options.width.mm() - GAP * (columns - 1) as f64) / columns as f64;
    let high = options.height.mm() / rows - MOST_LINES * LINE * options.letters.mm() - 2.0 * GAP;
    let high = high.max(cell / 4.0);
    let seen = |step: &Step, scale| PieceOptions { eye: Some(step.eye), scale: Some(scale), ..PieceOptions::default() };
    // The widest moment of a piece may lie before its end.
    let fitting = steps.iter().map(|step| {
        let alone = room(plan, &step.body, &step.space, &seen(step, 1.0));
        (cell / alone.width()).min(high / alone.height())
    });
    let scale = fitting.fold(f64::INFINITY, f64::min);
    let words = plan.design.words();
    let drawn = steps.iter().map(|step| Drawn {
        picture: draw_piece(plan, &step.cut, &step.body, &step.space, &seen(step, scale)),
        words: said(plan, size, step, &words),
    });
    let drawn: Vec<Drawn> = drawn.collect();
    let title = named(plan, size, "steps-title");
    let told = drawn.iter().map(|step| format!("{}.", step.words.join(", ")));
    let description = std::iter::once(words.say("steps-about")).chain(told).collect::<Vec<_>>().join(" ");
    let (items, bounds) = laid(drawn, columns, cell, options.letters.mm());
    Drawing { bounds, title, description, language: plan.design.language, symbols: Default::default(), items }
}

/// A step on the page: its picture, and what is said under it.
struct Drawn {
    picture: Drawing,
    words: Vec<String>,
}

/// True for a round that the fabric ends with: slip stitches along its edge add nothing to it.
fn is_fabric(round: &Round) -> bool {
    round.stitch.row().build != Build::Slip
}

/// The last round of the fabric.
pub(in crate::drawing) fn edge(rounds: &[Round]) -> Option<&Round> {
    rounds.iter().rfind(|round| is_fabric(round))
}

/// How wide a round is across, by its count.
pub(in crate::drawing) fn across(plan: &Plan, round: &Round) -> Mm {
    plan.gauge_of(round).circumference(round.after) / PI
}

/// What is said of a step, line by line.
fn said(plan: &Plan, size: &SizePlan, step: &Step, words: &Words) -> Vec<String> {
    let Step { rounds, cut, body, .. } = step;
    let mut said = vec![words.with("steps-after", &[("round", Arg::Count(*rounds))])];
    let Some(last) = edge(&cut.rounds) else { return said };
    let shown = |value: Mm| numbers::length(value, plan.design.units, plan.design.language);
    said.push(words.with("steps-stitches", &[("count", Arg::Count(last.stitches()))]));
    said.push(words.with("steps-across", &[("length", Arg::Text(&shown(across(plan, last))))]));
    let say = |key: &str, value: Mm| words.with(key, &[("length", Arg::Text(&shown(value)))]);
    let brimmed = plan.brim(size).and(size.parts.last()).is_some_and(|brim| brim.first <= *rounds);
    if lies_flat(body) || brimmed {
        return said;
    }
    // Of what is worn, along the fabric, as a tape is laid; of the rest, how high it stands.
    said.push(if plan.design.kind.row().worn {
        let deep =
            cut.rounds.iter().filter(|round| is_fabric(round)).map(|round| plan.gauge_of(round).height.mm()).sum();
        say("steps-deep", Mm::new(deep))
    } else {
        let heights = || body.rounds.iter().map(|round| round.height.mm());
        say("steps-high", Mm::new(heights().fold(0.0, f64::max) - heights().fold(0.0, f64::min)))
    });
    said
}

/// Words in as many lines as they take in a cell: a measure stays whole, what it is the measure of stands under it.
fn fitted(said: &str, face: Face, letters: f64, cell: f64) -> Vec<String> {
    match said.split_once(") ").filter(|_| face.width(said, letters) > cell) {
        Some((measure, what)) => vec![format!("{measure})"), what.to_owned()],
        None => vec![said.to_owned()],
    }
}

/// The steps in rows, those of a row on one line, their words under them.
fn laid(steps: Vec<Drawn>, columns: usize, cell: f64, letters: f64) -> (Vec<Item>, Rect) {
    let (mut items, mut top, mut number) = (Vec::new(), 0.0, 0);
    let wide = (cell + GAP) * columns as f64 - GAP;
    let mut steps = steps.into_iter().peekable();
    while steps.peek().is_some() {
        let row: Vec<Drawn> = steps.by_ref().take(columns).collect();
        let high = row.iter().map(|step| step.picture.bounds.height()).fold(0.0, f64::max);
        let mut lines = 0;
        for (column, step) in row.into_iter().enumerate() {
            number += 1;
            let left = (cell + GAP) * column as f64;
            let bounds = step.picture.bounds;
            let by =
                Vec2::new(left + (cell - bounds.width()) / 2.0 - bounds.x0, top + high - bounds.height() - bounds.y0);
            let own = step.picture.items.iter().map(|item| item.moved(by)).collect();
            let said = step.words.join(", ");
            let role = Role::Object { name: said, description: String::new() };
            items.push(Item::Group(Group { id: format!("step-{number}"), role, origin: Origin::None, items: own }));
            let words: Vec<(Face, String)> = step
                .words
                .iter()
                .enumerate()
                .flat_map(|(at, said)| {
                    let face = if at == 0 { Face::Bold } else { Face::Regular };
                    fitted(said, face, letters, cell).into_iter().map(move |line| (face, line))
                })
                .collect();
            lines = lines.max(words.len());
            for (line, (face, words)) in words.into_iter().enumerate() {
                let at = Point::new(left + cell / 2.0, top + high + GAP + LINE * letters * line as f64);
                items.push(Item::Text(TextItem { face, anchor: Anchor::Middle, ..TextItem::new(words, at, letters) }));
            }
        }
        top += high + 2.0 * GAP + LINE * letters * lines as f64;
    }
    (items, Rect::new(0.0, -MARGIN, wide, (top - GAP).max(1.0)))
}
