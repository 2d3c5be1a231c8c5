//! Symbols of stitches, and of several stitches that share a foot or a head.

use kurbo::{Point, Vec2};

use super::Fit;
use super::pen::{BAR, CLEAR, HEAVY, Pen, SLASH, WEIGHT};
use crate::craft::{Build, Loops, Side, Stitch};
use crate::drawing::Symbol;
use crate::geometry::rings::cell_width;
use crate::units::TOLERANCE;

/// Height of the arc that tells one loop, room above it included.
const ARC: f64 = 0.24;

/// One stitch.
pub(super) fn single(stitch: Stitch, loops: Loops, fit: &Fit) -> Symbol {
    let mut pen = Pen::new(WEIGHT);
    let foot = Point::new(0.0, -CLEAR - loop_arc(&mut pen, loops, fit));
    let head = Point::new(fit.shift, CLEAR - fit.height);
    let bar = BAR.min(0.36 * fit.width);
    match stitch.row().build {
        Build::Chain => {
            let half = (cell_width(stitch) * fit.width - WEIGHT) / 2.0 - 0.03;
            pen.oval(Point::new(0.0, -fit.height / 2.0), half.clamp(0.13, 0.25), 0.15, 0.0);
        }
        Build::Slip => pen.dot(Point::new(0.0, (foot.y + head.y) / 2.0), 0.17),
        Build::Cross => {
            pen.line(foot, head);
            pen.across(foot, head, 0.5, bar, 0.0);
        }
        Build::Stem => tall(&mut pen, stitch, foot, head, bar),
        Build::Extended => extended(&mut pen, stitch, foot, head, bar),
        Build::Long => {
            pen.line(foot, head);
            pen.across(foot, head, 0.74, bar, 0.0);
            // The long loop is the whole of it: a foot that stands firm tells it from a cross that was stretched.
            pen.across(foot, head, 0.0, 0.5 * bar, 0.0);
        }
        Build::Spike => spike(&mut pen, stitch, foot, head, bar),
        Build::Loop => looped(&mut pen, foot, head, bar),
        Build::Reverse => reverse(&mut pen, foot, head, bar),
        Build::Linked => linked(&mut pen, foot, head, bar),
        Build::Post(side) => post(&mut pen, stitch, side, head, bar),
        Build::Cluster | Build::Puff | Build::Bobble | Build::Popcorn | Build::Picot => {
            gathered(&mut pen, stitch, foot, Point::new(0.0, head.y), fit);
            pen.set_aside(fit.width.min(1.0), foot, head);
        }
    }
    pen.symbol()
}

/// Several stems or chains in one place, drawn upright in a cell one wide.
fn gathered(pen: &mut Pen, stitch: Stitch, foot: Point, head: Point, fit: &Fit) {
    match stitch.row().build {
        Build::Chain | Build::Slip | Build::Cross | Build::Stem | Build::Post(_) => {}
        Build::Extended | Build::Long | Build::Spike | Build::Loop | Build::Reverse | Build::Linked => {}
        Build::Cluster => cluster(pen, stitch, foot, head),
        Build::Puff => puff(pen, stitch, foot, head),
        Build::Bobble => bobble(pen, stitch, foot, head),
        Build::Popcorn => popcorn(pen, stitch, foot, head),
        Build::Picot => picot(pen, stitch, fit),
    }
}

/// The arc at the foot of a stitch worked under one loop: a cup for the back loop, a roof for the front loop. Gives the
/// height by which the stitch itself must stand higher.
fn loop_arc(pen: &mut Pen, loops: Loops, fit: &Fit) -> f64 {
    let (ends, middle) = match loops {
        Loops::Both => return 0.0,
        Loops::Back => (-CLEAR - 0.17, -CLEAR + 0.05),
        Loops::Front => (-CLEAR - 0.03, -CLEAR - 0.23),
    };
    let lift = (4.0 * middle - ends) / 3.0;
    let half = BAR.min(0.36 * fit.width);
    let at = |share: f64, y: f64| Point::new(share * half, y);
    pen.curve(at(-1.0, ends), at(-0.53, lift), at(0.53, lift), at(1.0, ends));
    match loops {
        Loops::Both => 0.0,
        Loops::Back => 0.16,
        Loops::Front => ARC,
    }
}

/// A stem with its top bar and its slashes: one fewer than its steps of height.
fn tall(pen: &mut Pen, stitch: Stitch, foot: Point, head: Point, bar: f64) {
    pen.line(foot, head);
    pen.level(head, bar);
    draw_slashes(pen, stitch, foot, head, SLASH.min(0.75 * bar));
}

fn draw_slashes(pen: &mut Pen, stitch: Stitch, foot: Point, head: Point, half: f64) {
    let slashes = stitch.row().steps.saturating_sub(1);
    let length = (head - foot).hypot().max(TOLERANCE);
    // Where stems fan out from one foot their cells are narrow, and there is room for slashes further up only.
    let middle = if half < 0.16 { 0.62 } else { 0.52 };
    // Up to three are told by their number; four look like three in print, so they spread over more of the stem and reach
    // further out.
    let (apart, half) = if slashes > 3 { (0.45_f64, 1.35 * half) } else { (0.4, half) };
    let step = apart.min(0.55 * length / f64::from(slashes.max(1)));
    for i in 0..slashes {
        let off = f64::from(i) - f64::from(slashes - 1) / 2.0;
        pen.across(foot, head, middle + off * step / length, half, 0.35 * half);
    }
}

/// A stem, or a cross, whose foot hooks round the post below: to the right from the front, to the left from the back.
fn post(pen: &mut Pen, stitch: Stitch, side: Side, head: Point, bar: f64) {
    let way = match side {
        Side::Front => 1.0,
        Side::Back => -1.0,
    };
    let girth = (bar / BAR).min(1.0);
    let foot = Point::new(0.0, -CLEAR - 0.2);
    if stitch.row().steps > 0 {
        tall(pen, stitch, foot, head, bar);
    } else {
        pen.line(foot, head);
        pen.across(foot, head, 0.62, bar, 0.0);
    }
    let tip = Point::new(0.32 * way * girth, -CLEAR - 0.26);
    let low = -CLEAR + 0.07;
    pen.curve(foot, Point::new(0.0, low), Point::new(0.3 * way * girth, low), tip);
}

/// The stitch that is extended, on the chain at its foot.
fn extended(pen: &mut Pen, stitch: Stitch, foot: Point, head: Point, bar: f64) {
    let up = (head - foot) / (head - foot).hypot().max(TOLERANCE);
    // From one foot several part slowly: theirs lie further up, where they are apart.
    let low = if bar < BAR { 0.3 } else { 0.1 };
    pen.line(foot, foot + up * (low - 0.1));
    pen.oval(foot + up * low, 0.16_f64.min(0.5 * bar), 0.1, 0.0);
    let foot = foot + up * (low + 0.1);
    if stitch.row().steps > 0 {
        tall(pen, stitch, foot, head, bar);
    } else {
        pen.line(foot, head);
        pen.across(foot, head, 0.5, bar, 0.0);
    }
}

/// A cross whose foot is driven down into the fabric: an arrow head for each round.
fn spike(pen: &mut Pen, stitch: Stitch, foot: Point, head: Point, bar: f64) {
    pen.line(foot, head);
    pen.across(foot, head, 0.78, bar, 0.0);
    let way = (head - foot) / (head - foot).hypot().max(TOLERANCE);
    let right = Vec2::new(-way.y, way.x);
    for i in 0..stitch.row().stems {
        let tip = foot + way * (0.19 * f64::from(i));
        for side in [-1.0, 1.0] {
            pen.line(tip, tip + way * 0.15 + right * (side * 0.6 * bar));
        }
    }
}

/// A cross with a loop that hangs from its arms and comes to a point at its foot, so that two may share that.
fn looped(pen: &mut Pen, foot: Point, head: Point, bar: f64) {
    pen.line(foot, head);
    pen.across(foot, head, 0.74, bar, 0.0);
    let arms = foot.lerp(head, 0.74);
    let way = head - foot;
    for side in [-1.0, 1.0] {
        let arm = arms + Vec2::new(side * bar, 0.0);
        pen.curve(
            arm,
            arm - way * 0.38,
            foot + Vec2::new(side * (if bar < BAR { 0.3 } else { 0.7 }) * bar, 0.0) + way * 0.1,
            foot,
        );
    }
}

/// A cross with an arrow head on the arm that points back against the work.
fn reverse(pen: &mut Pen, foot: Point, head: Point, bar: f64) {
    pen.line(foot, head);
    pen.across(foot, head, 0.5, bar, 0.0);
    let way = (head - foot) / (head - foot).hypot().max(TOLERANCE);
    let right = Vec2::new(-way.y, way.x);
    let tip = foot.midpoint(head) + right * bar;
    for side in [-1.0, 1.0] {
        pen.line(tip, tip - right * 0.17 + way * (side * 0.15));
    }
}

/// A stem that hangs on the stitch before it instead of on a yarn over: a tie to that side, and no slash.
fn linked(pen: &mut Pen, foot: Point, head: Point, bar: f64) {
    pen.line(foot, head);
    pen.level(head, bar);
    let middle = foot.lerp(head, 0.5);
    let tie = middle + Vec2::new(1.1 * bar, 0.0);
    pen.line(middle, tie);
    pen.line(tie - Vec2::new(0.0, 0.13), tie + Vec2::new(0.0, 0.13));
}

/// Where the stems of a stitch stand in its middle, evenly across from `-half` to `half`.
fn stems(stitch: Stitch, half: f64) -> impl Iterator<Item = f64> {
    let count = stitch.row().stems.max(1);
    let last = f64::from(count - 1).max(1.0);
    (0..count).map(move |i| half * (2.0 * f64::from(i) / last - 1.0))
}

/// Half the width of what three, four, five stems or more are pushed out to.
fn fullness(stitch: Stitch, halves: [f64; 3]) -> f64 {
    halves[usize::from(stitch.row().stems.clamp(3, 5)) - 3]
}

/// Part-worked stems, closed at foot and head, each with its slashes.
fn cluster(pen: &mut Pen, stitch: Stitch, foot: Point, head: Point) {
    let half: f64 = [0.24, 0.31, 0.38][usize::from(stitch.row().stems.clamp(2, 4)) - 2];
    // Slashes of neighbours keep apart.
    let slash = (0.6 * half / f64::from(stitch.row().stems.max(2) - 1)).min(0.14);
    pen.across(foot, head, 1.0, 0.24, 0.0);
    let slashes = stitch.row().steps.saturating_sub(1);
    for x in stems(stitch, half) {
        if x == 0.0 {
            pen.line(foot, head);
        } else {
            pen.bow(foot, head, x);
        }
        for i in 0..slashes {
            let rise = 0.38 * (f64::from(i) - f64::from(slashes - 1) / 2.0);
            let middle = foot.midpoint(head) + Vec2::new(x, -rise);
            pen.line(middle + Vec2::new(-slash, 0.06), middle + Vec2::new(slash, -0.06));
        }
    }
}

/// Long loose loops: a drop with a round top, the inner loops as lines within.
fn puff(pen: &mut Pen, stitch: Stitch, foot: Point, head: Point) {
    let height = foot.y - head.y;
    let shoulder = head.y + 0.34;
    for side in [-1.0, 1.0] {
        let x = 0.36 * side;
        pen.curve(
            foot,
            Point::new(0.1 * side, foot.y - 0.25 * height),
            Point::new(x, shoulder + 0.3),
            Point::new(x, shoulder),
        );
        pen.curve(Point::new(x, shoulder), Point::new(x, shoulder - 0.21), Point::new(0.2 * side, head.y), head);
    }
    for x in stems(stitch, 0.36).filter(|x| x.abs() < 0.3) {
        pen.line(foot, Point::new(x, shoulder + 0.1));
    }
}

/// Stems closed at foot and head and pushed out: a ball of as many ribs on a short stalk, under a bar.
fn bobble(pen: &mut Pen, stitch: Stitch, foot: Point, head: Point) {
    let neck = head.lerp(foot, 0.7);
    for bulge in stems(stitch, fullness(stitch, [0.28, 0.39, 0.5])) {
        pen.bow(neck, head, bulge);
    }
    pen.line(foot, neck);
    pen.across(foot, head, 1.0, 0.24, 0.0);
}

/// Whole stems that spread from the foot, gathered under one chain.
fn popcorn(pen: &mut Pen, stitch: Stitch, foot: Point, head: Point) {
    let (top, half) = (head.y + 0.42, fullness(stitch, [0.33, 0.42, 0.54]));
    for x in stems(stitch, half) {
        let drop = 0.16 * (x / half) * (x / half);
        pen.line(foot, Point::new(x, top + drop));
    }
    pen.curve(
        Point::new(-half, top + 0.16),
        Point::new(-0.48 * half, top - 0.06),
        Point::new(0.48 * half, top - 0.06),
        Point::new(half, top + 0.16),
    );
    pen.oval(Point::new(0.0, head.y + 0.14), 0.27, 0.14, 0.0);
}

/// A loop of chains on a foot: one on either side, the others across the top.
fn picot(pen: &mut Pen, stitch: Stitch, fit: &Fit) {
    let base = Point::new(0.0, -CLEAR);
    let room = fit.height - 2.0 * CLEAR;
    // Where each chain lies, and its turn.
    let chains: &[(f64, f64, f64)] = if stitch.row().stems < 4 {
        &[(-0.26, 0.42, -0.35), (0.0, 0.9, core::f64::consts::FRAC_PI_2), (0.26, 0.42, 0.35)]
    } else {
        &[(-0.25, 0.3, -0.7), (-0.24, 0.84, 0.8), (0.25, 0.3, 0.7), (0.24, 0.84, -0.8)]
    };
    for (x, y, turn) in chains {
        pen.oval(base + Vec2::new(*x, -y * room), 0.13, 0.23, *turn);
    }
    pen.line(base + Vec2::new(-0.12, 0.0), base + Vec2::new(0.12, 0.0));
}

/// Whole stitches that share a foot, heavy, a filled wedge where they part.
pub(super) fn increase(stitch: Stitch, count: u8, loops: Loops, fit: &Fit) -> Symbol {
    let mut pen = Pen::new(HEAVY);
    let foot = Point::new(0.0, -CLEAR - loop_arc(&mut pen, loops, fit));
    let ends = across(fit.spread, count, Point::new(fit.shift, CLEAR + 0.02 - fit.height));
    for head in &ends {
        arm(&mut pen, stitch, foot, *head, bar_of(fit, count));
        if stitch.row().build != Build::Cross {
            pen.level(*head, bar_of(fit, count));
        }
    }
    wedge(&mut pen, foot, &ends);
    pen.symbol()
}

/// Stitches that share a head, heavy, a filled wedge where they meet; tall ones under one top bar.
pub(super) fn decrease(stitch: Stitch, count: u8, loops: Loops, fit: &Fit) -> Symbol {
    let mut pen = Pen::new(HEAVY);
    let lift = loop_arc(&mut pen, loops, fit);
    let head = Point::new(fit.shift, CLEAR + 0.02 - fit.height);
    let mut ends = across(fit.spread, count, Point::new(0.0, -CLEAR - 0.02 - lift));
    for foot in &mut ends {
        let aside = 2.0 * foot.x / fit.spread.max(TOLERANCE);
        foot.y -= fit.bow * (1.0 - aside * aside);
    }
    for foot in &ends {
        arm(&mut pen, stitch, head, *foot, bar_of(fit, count));
    }
    if stitch.row().build != Build::Cross {
        pen.level(head, 0.8 * BAR.min(0.36 * fit.width));
    }
    wedge(&mut pen, head, &ends);
    pen.symbol()
}

/// Two stitches from two feet to two heads, each over to the other's side.
pub(super) fn crossed(stitch: Stitch, loops: Loops, fit: &Fit) -> Symbol {
    let mut pen = Pen::new(WEIGHT);
    let lift = loop_arc(&mut pen, loops, fit);
    let feet = across(fit.spread, 2, Point::new(0.0, -CLEAR - lift));
    let heads = across(fit.spread, 2, Point::new(fit.shift, CLEAR - fit.height));
    let bar = bar_of(fit, 2);
    for (foot, head) in feet.iter().zip(heads.iter().rev()) {
        arm(&mut pen, stitch, *foot, *head, bar);
        if stitch.row().build != Build::Cross {
            pen.level(*head, bar);
        }
    }
    pen.symbol()
}

/// So many whole stitches from one foot, as in a shell.
pub(super) fn fan(stitch: Stitch, count: u8, fit: &Fit) -> Symbol {
    let mut pen = Pen::new(WEIGHT);
    let foot = Point::new(0.0, -CLEAR);
    let radius = fit.height - 2.0 * CLEAR;
    let middle = f64::from(count.saturating_sub(1)) / 2.0;
    for i in 0..count {
        let x = (f64::from(i) - middle) * 0.62;
        let head = foot + Vec2::new(x, -(radius * radius - 0.6 * x * x).max(0.1).sqrt());
        tall(&mut pen, stitch, foot, head, 0.2);
    }
    pen.symbol()
}

/// An arm from where the stitches meet to its own end, with its bar or its slashes towards that end.
fn arm(pen: &mut Pen, stitch: Stitch, meet: Point, end: Point, bar: f64) {
    pen.line(meet, end);
    if stitch.row().build == Build::Extended {
        pen.oval(end.lerp(meet, 0.08), 0.6 * bar, 0.08, 0.0);
    }
    if stitch.row().build == Build::Cross {
        pen.across(meet, end, 0.7, 0.8 * bar, 0.0);
        return;
    }
    let slashes = stitch.row().steps.saturating_sub(1);
    let step = 0.36 / (end - meet).hypot().max(0.36);
    for i in 0..slashes {
        let along = 0.66 + step * (f64::from(i) - f64::from(slashes - 1) / 2.0);
        pen.across(meet, end, along, 0.7 * bar, 0.25 * bar);
    }
}

/// Half of a bar on one of several arms, clear of its neighbours.
fn bar_of(fit: &Fit, count: u8) -> f64 {
    (0.26 * fit.spread / f64::from(count.max(2) - 1)).min(0.26).min(0.36 * fit.width)
}

/// Points spread evenly across `spread` about a middle.
fn across(spread: f64, count: u8, middle: Point) -> Vec<Point> {
    let last = f64::from(count.max(2) - 1);
    (0..count).map(|i| middle + Vec2::new(spread * (f64::from(i) / last - 0.5), 0.0)).collect()
}

/// The filled wedge between the outermost arms.
fn wedge(pen: &mut Pen, meet: Point, ends: &[Point]) {
    if let (Some(first), Some(last)) = (ends.first(), ends.last()) {
        pen.filled(&[meet, meet.lerp(*first, 0.42), meet.lerp(*last, 0.42)]);
    }
}
