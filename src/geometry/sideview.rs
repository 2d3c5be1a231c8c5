//! The side view of a piece as data: its outline right way up, its folds and parts, and what is measured on it.

use kurbo::Point;

use super::SideShape;
use super::corners::{Cornered, cornered};
use crate::craft::{Build, Loops};
use crate::design::Body;
use crate::plan::{Plan, Polygon, SizePlan};
use crate::units::{Mm, TOLERANCE, TURN};

/// Edges whose radii differ by less than this share of the largest are one edge to the eye and the tape: a crown that
/// rounds into its side has the width of the side.
const SAME_EDGE: f64 = 0.04;
/// Least height that is measured, mm: less is about as thick as the fabric itself, and the piece lies flat.
const LEAST_HEIGHT: f64 = 4.0;

/// A part that rises by less than this share of its width is flat.
const FLAT: f64 = 0.2;

/// A part that widens or narrows by less than this share of its length is straight.
pub const STRAIGHT: f64 = 0.1;

/// One size seen from the side, right way up: mm, x from the axis outward, y downward from the highest point.
#[derive(Clone, Debug, PartialEq)]
pub struct SideView {
    /// Right half of the outline, in working order: the start, then the top edge of every round.
    pub outline: Vec<Point>,
    /// True where the last round draws together on the axis.
    pub closed: bool,
    /// Where one part ends and the next begins, and where loop-only rounds fold the fabric.
    pub folds: Vec<Fold>,
    /// The parts, in working order.
    pub parts: Vec<PartExtent>,
    /// What is measured.
    pub measures: Vec<Measure>,
    /// Largest distance from the axis.
    pub reach: f64,
    /// Height over all.
    pub tall: f64,
    /// True where the work starts at the foot, so that the fabric as worked is turned over.
    pub turned: bool,
}

/// A line all round the piece.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Fold {
    /// Its right end.
    pub at: Point,
    /// True where the fabric folds sharply, under one loop; false where a part merely ends.
    pub sharp: bool,
}

/// Where a part lies.
#[derive(Clone, Debug, PartialEq)]
pub struct PartExtent {
    /// Its name.
    pub name: String,
    /// Index into the outline of its foot.
    pub from: usize,
    /// Index into the outline of its last edge.
    pub to: usize,
    /// Length along the fabric.
    pub length: Mm,
    /// Circumference that the counts make at its last edge.
    pub around: Mm,
    /// Index into the outline of where its end is folded up, where it is.
    pub fold: Option<usize>,
    /// The polygon that its last edge is, where shaping stacks into corners.
    pub polygon: Option<Polygon>,
    /// True where it lies flat, or nearly.
    pub flat: bool,
    /// True where it is meant to stand in waves.
    pub ruffled: bool,
}

/// One thing measured.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Measure {
    /// What is measured.
    pub kind: MeasureKind,
    /// The part it belongs to, by index; nothing for the whole piece.
    pub part: Option<usize>,
    /// From here.
    pub from: Point,
    /// To here.
    pub to: Point,
    /// The value, which for lengths along the fabric is more than the way from end to end.
    pub value: Mm,
}

/// Kinds of measures.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum MeasureKind {
    /// Diameter at the end of a part.
    Across,
    /// Between opposite sides of a part that ends as a polygon.
    AcrossFlats,
    /// The same between opposite corners: through the middle, where their number is odd.
    AcrossCorners,
    /// Largest diameter, where that is at no part's end.
    Widest,
    /// Length of a part along the fabric, but for what is folded up.
    Along,
    /// Length that is folded up.
    Folded,
    /// Height over all.
    Height,
    /// Circumference at the end of a part.
    Around,
    /// Width of the opening when the piece lies flat: half its circumference.
    LyingFlat,
}

impl SideView {
    /// Index into the outline of where its end is folded up, where it is.
    pub fn fold(&self) -> Option<usize> {
        self.parts.last().and_then(|part| part.fold)
    }

    /// True for a height at which what is folded up lies over everything else.
    pub fn covers(&self, y: f64) -> bool {
        self.fold().and(self.outline.last()).is_some_and(|edge| y > edge.y)
    }

    /// The outline between the foot and the edge of a part.
    pub fn part_outline(&self, part: &PartExtent) -> &[Point] {
        self.outline.get(part.from..=part.to).unwrap_or_default()
    }

    /// Radius by which a part is measured: of a straight one that of its middle, since its ends are drawn in or out by
    /// what it meets there; of any other that of its last edge.
    fn width_of(&self, part: &PartExtent) -> f64 {
        let way = self.outline.get(part.from..=part.fold.unwrap_or(part.to)).unwrap_or_default();
        let (Some(from), Some(to)) = (way.first(), way.last()) else { return 0.0 };
        let straight = (to.x - from.x).abs() < STRAIGHT * part.length.mm();
        let mut radii: Vec<f64> = way.iter().map(|at| at.x).collect();
        radii.sort_by(f64::total_cmp);
        radii.get(radii.len() / 2).copied().filter(|_| straight).unwrap_or(to.x)
    }

    /// True where the piece is so flat that it is best seen from above.
    pub fn lies_flat(&self) -> bool {
        self.tall < 0.25 * self.reach
    }
}

/// Measures one size by its predicted shape.
pub fn side_view(plan: &Plan, size: &SizePlan, shape: &SideShape) -> SideView {
    let turned = plan.from_the_foot();
    let raw = outline(shape);
    let (top, foot) =
        raw.iter().fold((f64::INFINITY, f64::NEG_INFINITY), |(top, foot), p| (top.min(p.y), foot.max(p.y)));
    let (top, foot) = if top.is_finite() { (top, foot) } else { (0.0, 0.0) };
    let upright = raw.iter().map(|p| Point::new(p.x, if turned { foot - p.y } else { p.y - top }));
    let mut outline: Vec<Point> = upright.collect();
    let cornered = cornered(plan, size);
    from_corner_to_corner(&cornered, &mut outline);
    turn_up(plan, size, &mut outline);
    let foot = outline.iter().map(|p| p.y).fold(0.0, f64::max);
    let reach = outline.iter().map(|p| p.x).fold(0.0, f64::max);
    let closed = closes(shape, reach);
    let extents = parts(plan, size, &outline, &cornered);
    let mut view = SideView {
        folds: folds(size, &outline, &extents),
        measures: Vec::new(),
        reach,
        tall: foot,
        closed,
        parts: extents,
        outline,
        turned,
    };
    view.measures = measures(plan, size, &view);
    view
}

/// Turns up what is folded of the end of a hat: it stands off what it lies on by the thickness of the fabric.
pub(crate) fn turn_up(plan: &Plan, size: &SizePlan, outline: &mut [Point]) {
    let Some(folded) = size.turned_up() else { return };
    let first = folded.first.saturating_sub(1) as usize;
    let Some((fold, round)) = outline.get(first).copied().zip(size.rounds.get(first)) else { return };
    let off = plan.gauge_of(round).thick.mm();
    for edge in outline.iter_mut().skip(first + 1) {
        *edge = Point::new(edge.x + off, 2.0 * fold.y - edge.y);
    }
}

fn outline(shape: &SideShape) -> Vec<Point> {
    let start = (!shape.rounds.is_empty()).then(|| Point::new(shape.start.mm(), 0.0));
    let edges = shape.rounds.iter().map(|round| Point::new(round.radius.mm(), round.height.mm()));
    start.into_iter().chain(edges).collect()
}

/// A piece closes where its last rounds narrow to less than a seventh of its width: what is left is drawn together.
fn closes(shape: &SideShape, reach: f64) -> bool {
    match shape.rounds.as_slice() {
        [.., before, last] => last.radius.mm() < reach / 7.0 && last.radius < before.radius,
        _ => false,
    }
}

/// Draws out what is a polygon, whose predicted radius is that to its sides, as it is seen from corner to corner.
fn from_corner_to_corner(cornered: &[Cornered], outline: &mut [Point]) {
    for (round, edge) in cornered.iter().zip(outline.iter_mut().skip(1)) {
        edge.x *= round.points() / round.sides();
    }
}

fn parts(plan: &Plan, size: &SizePlan, outline: &[Point], cornered: &[Cornered]) -> Vec<PartExtent> {
    let last = outline.len().saturating_sub(1);
    let extents = size.parts.iter().map(|part| {
        let from = (part.first.saturating_sub(1) as usize).min(last);
        let to = (part.last as usize).clamp(from, last.max(from));
        let way = outline.get(from..=to).unwrap_or_default();
        let fold = part.folded.map(|folded| (folded.first.saturating_sub(1) as usize).clamp(from, to));
        let end = outline.get(fold.unwrap_or(to));
        let length: f64 = way.windows(2).map(|pair| (pair[1] - pair[0]).hypot()).sum();
        let rise = way.first().zip(end).map_or(0.0, |(a, b)| (b.y - a.y).abs());
        let out = way.first().zip(end).map_or(0.0, |(a, b)| (b.x - a.x).abs());
        let around = circumference(plan, size, to);
        // Where even rounds go on after the corners, its end may be round again.
        let ends = to.checked_sub(1).and_then(|round| cornered.get(round)).is_some_and(|round| round.shows());
        let polygon = size.stacking(part).polygon.filter(|_| ends);
        PartExtent {
            name: part.name.clone(),
            from,
            to,
            length: Mm::new(length),
            around,
            fold,
            polygon,
            flat: rise < FLAT * out,
            ruffled: ruffled(plan, size, part.first),
        }
    });
    extents.collect()
}

/// True where the part that begins with this round is meant to ruffle.
fn ruffled(plan: &Plan, size: &SizePlan, first: u32) -> bool {
    let round = first.checked_sub(1).and_then(|first| size.rounds.get(first as usize));
    let part = round.and_then(|round| plan.design.parts.get(round.part));
    part.is_some_and(|part| matches!(&part.body, Body::Profile(profile) if profile.shape.form().ruffles))
}

fn folds(size: &SizePlan, outline: &[Point], parts: &[PartExtent]) -> Vec<Fold> {
    let mut found = Vec::new();
    for (foot, round) in size.rounds.iter().enumerate().skip(1) {
        let sharp = round.loops() != Loops::Both || parts.iter().any(|part| part.fold == Some(foot));
        let begins = parts.iter().any(|part| part.from == foot);
        if let Some(&at) = outline.get(foot).filter(|_| sharp || begins) {
            found.push(Fold { at, sharp });
        }
    }
    found
}

fn measures(plan: &Plan, size: &SizePlan, view: &SideView) -> Vec<Measure> {
    let mut found = Vec::new();
    let around = |edge: usize| circumference(plan, size, edge).mm();
    let mut first = None;
    for (index, part) in view.parts.iter().enumerate() {
        let way = view.part_outline(part);
        // The length of a flat part is half the difference of its widths: it would be said twice.
        if let (Some(&from), Some(&to), false) = (way.first(), way.last(), part.flat) {
            // As long as its rounds are high: what the maker measures, and what stands in the table of parts.
            let value = size.parts.get(index).map_or(part.length, |part| part.length);
            let folded = size.parts.get(index).and_then(|part| part.folded);
            let fold = part.fold.and_then(|fold| view.outline.get(fold)).zip(folded);
            match fold {
                None => found.push(Measure { kind: MeasureKind::Along, part: Some(index), from, to, value }),
                Some((&fold, folded)) => {
                    let (own, turned) = (value - folded.length, folded.length);
                    let along = Measure { kind: MeasureKind::Along, part: Some(index), from, to: fold, value: own };
                    found.extend((own > Mm::new(TOLERANCE)).then_some(along));
                    let outer = Point::new(to.x, fold.y);
                    found.push(Measure {
                        kind: MeasureKind::Folded,
                        part: Some(index),
                        from: outer,
                        to,
                        value: turned,
                    });
                }
            }
        }
        // Of edges alike the last is measured, where the first of them is.
        let at = view.measured_edge(part);
        let y = *first.get_or_insert(at.y);
        if view.shows_edge(index) {
            match part.polygon {
                Some(polygon) => {
                    let across = [
                        (MeasureKind::AcrossFlats, polygon.across_flats),
                        (MeasureKind::AcrossCorners, polygon.across_corners),
                    ];
                    found.extend(across.map(|(kind, across)| {
                        Measure::level(kind, Some(index), Point::new(across.mm() / 2.0, y), across.mm())
                    }));
                }
                // In waves it is nowhere as wide as its stitches would be in a circle.
                None if part.ruffled => {}
                None => {
                    let across = 2.0 * around(part.to) / TURN;
                    found.push(Measure::level(MeasureKind::Across, Some(index), Point::new(at.x, y), across));
                }
            }
            first = None;
        }
    }
    // What is folded up stands off by its thickness, which nobody measures.
    let own = view.outline.iter().enumerate().take(view.fold().map_or(usize::MAX, |fold| fold + 1));
    if let Some((index, &widest)) = own.max_by(|(_, a), (_, b)| a.x.total_cmp(&b.x)) {
        // Where the piece is widest between its edges, no measure of an edge tells how wide.
        let shown = found.iter().any(|m| match m.kind {
            MeasureKind::Across => view.alike(m.to, widest),
            MeasureKind::AcrossCorners => m.to.x > widest.x || view.alike(m.to, widest),
            MeasureKind::AcrossFlats
            | MeasureKind::Widest
            | MeasureKind::Along
            | MeasureKind::Folded
            | MeasureKind::Height
            | MeasureKind::Around
            | MeasureKind::LyingFlat => false,
        });
        let waves = view.parts.iter().any(|part| part.ruffled && (part.from..=part.to).contains(&index));
        if !shown && !waves {
            found.push(Measure::level(MeasureKind::Widest, None, widest, 2.0 * around(index) / TURN));
        }
        let height = Measure {
            kind: MeasureKind::Height,
            part: None,
            from: Point::new(widest.x, 0.0),
            to: Point::new(widest.x, view.tall),
            value: Mm::new(view.tall),
        };
        // What lies flat has no height worth a line.
        if view.tall >= LEAST_HEIGHT {
            found.push(height);
        }
    }
    for (index, part) in view.parts.iter().enumerate().filter(|(index, _)| view.shows_edge(*index)) {
        let at = view.measured_edge(part);
        found.push(Measure::level(MeasureKind::Around, Some(index), at, around(part.to)));
    }
    if plan.design.kind.row().worn {
        let edge = |part: usize| view.parts.get(part).map_or(0, |part| part.to);
        let half = opening(size, view).map(|(index, at)| (Some(index), at, around(edge(index)) / 2.0));
        found.extend(half.map(|(part, at, value)| Measure::level(MeasureKind::LyingFlat, part, at, value)));
    }
    if let (Some(_), Some((last, part))) = (size.closed_flat(), view.parts.iter().enumerate().next_back()) {
        let told = found.iter().any(|m| m.kind == MeasureKind::LyingFlat && m.part == Some(last));
        let wide = Measure::level(MeasureKind::LyingFlat, Some(last), view.measured_edge(part), around(part.to) / 2.0);
        found.extend((!told).then_some(wide));
    }
    found
}

impl Measure {
    /// A measure from side to side at the height of `at`.
    fn level(kind: MeasureKind, part: Option<usize>, at: Point, value: f64) -> Self {
        Self { kind, part, from: Point::new(-at.x, at.y), to: at, value: Mm::new(value) }
    }
}

impl SideView {
    /// Right end of the last edge of a part.
    fn edge(&self, part: &PartExtent) -> Option<Point> {
        self.outline.get(part.fold.unwrap_or(part.to)).copied()
    }

    /// The same at the width by which the part is measured.
    fn measured_edge(&self, part: &PartExtent) -> Point {
        Point::new(self.width_of(part), self.edge(part).unwrap_or_default().y)
    }

    /// True for two edges that are one to the eye and the tape.
    fn alike(&self, one: Point, other: Point) -> bool {
        (one.x - other.x).abs() < SAME_EDGE * self.reach
    }

    /// True where a part ends in an opening and not drawn together.
    fn is_open(&self, index: usize) -> bool {
        !(self.closed && index + 1 == self.parts.len())
    }

    /// True where the end of a part is measured: not where the piece closes, and not where the next part ends alike.
    fn shows_edge(&self, index: usize) -> bool {
        let (own, next) = (self.parts.get(index), self.parts.get(index + 1).filter(|_| self.is_open(index + 1)));
        let ends = |part: Option<&PartExtent>| part.map(|part| self.edge(part).unwrap_or_default());
        // Of two edges with the same stitches one may be drawn in by what it meets: to the tape they are one.
        let counted = own.zip(next).is_some_and(|(own, next)| own.around == next.around);
        // A polygon that goes over into a round is neither.
        let fades = own.zip(next).is_some_and(|(own, next)| own.polygon.is_some() && next.polygon.is_none());
        let again = !fades && (counted || ends(own).zip(ends(next)).is_some_and(|(own, next)| self.alike(own, next)));
        self.is_open(index) && !again
    }
}

/// The circumference that is printed for an edge of the outline: what a tape laid along its stitches measures, which is
/// what the counts make. The edge that is drawn may be drawn in or out a little by what it meets. Slip stitches at the
/// edge lie on the round before them.
fn circumference(plan: &Plan, size: &SizePlan, edge: usize) -> Mm {
    let rounds = size.rounds.get(..edge).unwrap_or_default();
    let fabric = rounds.iter().rfind(|round| round.stitch.row().build != Build::Slip);
    fabric.map_or(Mm::ZERO, |round| plan.gauge_of(round).circumference(round.after))
}

/// The edge of a hat that goes round the head: the last one that comes out nearest to the finished circumference.
fn opening(size: &SizePlan, view: &SideView) -> Option<(usize, Point)> {
    let edges = view.parts.iter().enumerate().filter(|(_, part)| view.edge(part).is_some());
    let edges = edges.map(|(i, part)| (i, view.measured_edge(part)));
    let wanted = if size.finished > Mm::ZERO { size.finished.mm() / TURN } else { view.reach };
    // Counted in whole edges off, so that of edges alike the last is taken.
    let step = (SAME_EDGE * view.reach).max(TOLERANCE);
    let off = edges.map(|(i, at)| (((at.x - wanted).abs() / step).floor(), i, at));
    let nearest = off.min_by(|(a, i, _), (b, j, _)| a.total_cmp(b).then(j.cmp(i)));
    nearest.map(|(_, i, at)| (i, at))
}
