//! What lies under the symbols: tints, the colour of the yarn, lines between parts and at folds.

use kurbo::{BezPath, PathEl};

use super::Scene;
use crate::craft::Loops;
use crate::drawing::palette::{line, tint};
use crate::drawing::{Ends, Group, Ink, Item, Origin, PathItem, Role, Stroke};
use crate::geometry::rings::Ring;
use crate::plan::{Plan, SizePlan};

/// Tint of every other round where the yarn has one colour.
const TINT: Ink = Ink([238, 238, 238]);

/// Least luminance of the tints of yarn colours, of one round and the next.
const TINTS: [f64; 2] = [0.87, 0.75];

/// Line between two parts: a grey of contrast 4.5 on white.
pub(crate) const PARTING: Ink = Ink([0x70, 0x70, 0x70]);

/// The line between two parts, its width in mm and its dashes; black and narrower where there are no tints.
pub(crate) const fn parting(tints: bool) -> (Ink, f64, &'static [f64]) {
    if tints { (PARTING, 0.25, &[]) } else { (Ink::BLACK, 0.18, &[]) }
}

/// Line of a fold: its width, its dashes and gaps, mm.
pub(crate) const FOLD: (f64, &[f64]) = (0.35, &[4.0, 1.0, 0.4, 1.0]);

/// The ground of all rings.
pub(super) fn draw(scene: &Scene<'_>) -> Item {
    let mut items = Vec::new();
    for (index, ring) in scene.rings.rings.iter().enumerate() {
        tints(scene, index, ring, &mut items);
    }
    for index in 0..scene.rings.rings.len() {
        lines(scene, index, &mut items);
    }
    items.extend(repeats(scene));
    items.extend(super::corners::draw(scene));
    Item::Group(Group { id: "ground".to_owned(), role: Role::Decoration, origin: Origin::None, items })
}

/// The line that tells a colour from the others without its colour: dashes and gaps in line widths. The colour that most
/// rounds are worked in has none.
pub(crate) fn dashes(plan: &Plan, size: &SizePlan, colour: usize) -> Option<&'static [f64]> {
    const PATTERNS: [&[f64]; 5] = [&[7.0, 3.0], &[1.0, 2.5], &[7.0, 2.5, 1.0, 2.5], &[14.0, 4.0], &[]];
    let colours = (0..plan.design.yarn.colours.len()).rev();
    let main = colours.max_by_key(|of| size.rounds.iter().filter(|round| round.colour == Some(*of)).count())?;
    let place = colour.checked_sub(usize::from(colour > main)).filter(|_| colour != main)?;
    PATTERNS.get(place % PATTERNS.len()).copied()
}

/// The ground and the line of a yarn colour; every other round is a little darker.
pub(crate) fn yarn_inks(rgb: [u8; 3], index: usize) -> (Ink, Ink) {
    let ground = tint(Ink(rgb), TINTS[index % 2]);
    (ground, line(Ink(rgb), ground, 3.0))
}

/// The tint of a ring and the line that tells its colour; without tints the line alone, black.
fn tints(scene: &Scene<'_>, index: usize, ring: &Ring, items: &mut Vec<Item>) {
    let colours = &scene.plan.design.yarn.colours;
    let colour = scene.round_of(ring.row).and_then(|round| round.colour);
    let Some((colour, yarn)) = colour.and_then(|at| Some((at, colours.get(at)?))).filter(|_| colours.len() > 1) else {
        // In one colour every other ring is tinted, so that the eye keeps to its round.
        if index % 2 == 1 && scene.options.tints {
            items.push(Item::Path(area(scene, ring, TINT)));
        }
        return;
    };
    let (ground, mut shade) = yarn_inks(yarn.rgb, index);
    if scene.options.tints {
        items.push(Item::Path(area(scene, ring, ground)));
    } else {
        shade = Ink::BLACK;
    }
    let Some(pattern) = dashes(scene.plan, scene.size, colour) else { return };
    let next = scene.ring(index + 1).and_then(|ring| scene.round_of(ring.row));
    if folds(scene, ring) && next.is_some_and(|next| next.colour == Some(colour)) {
        // The line of the fold runs here; that of the colour runs on the rings after it.
        return;
    }
    let width = (0.13 * scene.unit).min(0.5);
    let path = edge(scene, ring, |along| ring.foot_at(along));
    let dashed = pattern.iter().map(|dash| dash * width).collect();
    let stroke = Stroke { width, ink: shade, ends: Ends::Butt, dashes: dashed };
    items.push(Item::Path(PathItem { path, fill: None, stroke: Some(stroke) }));
}

/// True where a ring is worked under one loop, and so folds the fabric at its foot.
fn folds(scene: &Scene<'_>, ring: &Ring) -> bool {
    scene.round_of(ring.row).is_some_and(|round| round.before > 0 && round.loops() != Loops::Both)
}

/// A line where a part begins, a line of long dashes and dots where a round of one loop folds the fabric.
fn lines(scene: &Scene<'_>, index: usize, items: &mut Vec<Item>) {
    let Some((ring, round)) = scene.ring(index).and_then(|ring| Some((ring, scene.round_of(ring.row)?))) else {
        return;
    };
    let below = index.checked_sub(1).and_then(|below| scene.round_of(scene.ring(below)?.row));
    let part = below.is_some_and(|below| below.part != round.part);
    let fold = folds(scene, ring);
    // Within a part one round follows another without a line: the stitches themselves part them.
    if !part && !fold {
        return;
    }
    let path = edge(scene, ring, |along| ring.foot_at(along) - ring.margin);
    let (ink, width, pattern) = if fold { (Ink::BLACK, FOLD.0, FOLD.1) } else { parting(scene.options.tints) };
    let stroke = Stroke { width, ink, ends: Ends::Butt, dashes: pattern.to_vec() };
    items.push(Item::Path(PathItem { path, fill: None, stroke: Some(stroke) }));
}

/// A ring in one colour: one broad stroke where its height is the same all round, which is short to write.
fn area(scene: &Scene<'_>, ring: &Ring, ink: Ink) -> PathItem {
    let (start, end) = (ring.head.0 - ring.foot.0, ring.head.1 - ring.foot.1);
    // Less than a fiftieth of a stitch higher at one end is not seen.
    if (start - end).abs() < 0.02 {
        let path = edge(scene, ring, |along| (ring.foot_at(along) + ring.head_at(along)) / 2.0);
        let width = (start + 2.0 * ring.margin) * scene.unit;
        let stroke = Stroke { width, ink, ends: Ends::Butt, dashes: Vec::new() };
        return PathItem { path, fill: None, stroke: Some(stroke) };
    }
    let mut path = edge(scene, ring, |along| ring.head_at(along) + ring.margin);
    let inner = edge(scene, ring, |along| ring.foot_at(along) - ring.margin).reverse_subpaths();
    for element in inner.elements() {
        match *element {
            PathEl::MoveTo(to) => path.line_to(to),
            PathEl::LineTo(_) | PathEl::QuadTo(..) | PathEl::CurveTo(..) | PathEl::ClosePath => path.push(*element),
        }
    }
    path.close_path();
    PathItem { path, fill: Some(ink), stroke: None }
}

/// A line round a ring from its first cell to its last, at a radius that may change along it.
fn edge(scene: &Scene<'_>, ring: &Ring, radius: impl Fn(f64) -> f64) -> BezPath {
    scene.arc(ring.from(), scene.until(ring), radius)
}

/// Dotted lines between the repeats, from ring to ring between the stitches.
fn repeats(scene: &Scene<'_>) -> Option<Item> {
    let count = scene.parted()? as usize;
    let mut path = BezPath::new();
    for repeat in 1..count {
        for (index, ring) in scene.rings.rings.iter().enumerate() {
            // A round whose stitches are not shared out evenly has no place between two repeats: the line passes over
            // it.
            let Some(head) = between(&ring.heads, repeat, count) else { continue };
            let foot = between(&scene.rings.parents(index), repeat, count).unwrap_or(head);
            let (foot, head) = (scene.at(foot, ring.foot_at(foot)), scene.at(head, ring.head_at(head)));
            if index == 0 {
                path.move_to(foot);
            } else {
                path.line_to(foot);
            }
            path.line_to(head);
        }
    }
    let width = 0.3;
    let stroke = Stroke { width, ink: Ink::BLACK, ends: Ends::Round, dashes: vec![0.01, 1.1] };
    Some(Item::Path(PathItem { path, fill: None, stroke: Some(stroke) }))
}

/// The angle between the last stitch of a repeat and the first of the next; nothing where they are not shared out.
fn between(angles: &[f64], repeat: usize, count: usize) -> Option<f64> {
    let next = angles.len().is_multiple_of(count).then_some(repeat * angles.len() / count)?;
    Some((angles.get(next.checked_sub(1)?)? + angles.get(next)?) / 2.0)
}
