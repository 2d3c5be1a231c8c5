//! The lane between the last stitch of a round and the first: turning chain, number and count, name of the part, join.

use kurbo::{Point, Vec2};

use super::Scene;
use crate::craft::{Begin, Close, Round};
use crate::drawing::{Item, TextItem};
use crate::font::Face;
use crate::geometry::rings::{Ring, Row, SLIP};
use crate::units::{Angle, EPSILON};
use crate::words::Arg;

/// What stands in the lane of one ring, in stitch units along it, from the first stitch back to the last.
#[derive(Clone, Debug, Default, PartialEq)]
pub(super) struct Lane {
    chain: f64,
    label: f64,
    part: f64,
    join: f64,
    number: String,
    count: String,
    place: Label,
}

/// Where number and count of a ring stand.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
enum Label {
    /// In the lane.
    #[default]
    Lane,
    /// In the gap above the ring that slip stitches leave, before its start.
    Above,
    /// In the gap below the ring, past the slip stitches that lead to its start.
    Below,
}

impl Lane {
    pub(super) fn of(scene: &Scene<'_>, index: usize, row: &Row) -> Self {
        let Some(round) = scene.round_of(*row) else { return Self::default() };
        let number =
            if row.is_band() { format!("{}–{}", round.number, row.last + 1) } else { round.number.to_string() };
        let count = format!(" · {}", round.stitches());
        let width = Face::Bold.width(&number, scene.letters) + Face::Regular.width(&count, scene.letters);
        // Where slip stitches run over the heads, there is no lane for a label, but a gap beside them.
        let place = match (scene.begins_further(index), scene.begins_further(index + 1)) {
            (true, _) => Label::Below,
            (false, true) => Label::Above,
            (false, false) => Label::Lane,
        };
        let outer = scene.ring(index).map_or(f64::NEG_INFINITY, |ring| ring.head.0);
        let named = scene.part_span(round).is_some_and(|span| span.named && outer >= span.inner);
        Self {
            chain: if matches!(round.begin, Begin::Chain { counts: false, .. }) { 0.6 } else { 0.0 },
            label: if place == Label::Lane { width / scene.unit + 0.5 } else { 0.0 },
            part: if named { 1.5 * scene.letters / scene.unit } else { 0.0 },
            join: if round.close == Close::Join { 1.0 } else { 0.0 },
            number,
            count,
            place,
        }
    }

    /// True where number and count stand in it.
    pub(super) fn has_label(&self) -> bool {
        self.place == Label::Lane
    }

    pub(super) fn width(&self) -> f64 {
        self.chain + self.label + self.part + self.join
    }
}

/// The most by which a lane is narrower than the next one, in stitch units.
const TAPER: f64 = 0.5;

/// The same for a lane without a label, whose stitches share the lean with those above.
const BARE: f64 = 1.2;

/// Widens lanes so that none is much narrower than its neighbours, and a long label leaves the stitches of its round
/// upright. A lane without a label has a smaller part in it.
pub(super) fn taper(widths: &mut [f64], lanes: &[Lane]) {
    let labelled: Vec<bool> = (0..widths.len()).map(|i| lanes.get(i).is_none_or(Lane::has_label)).collect();
    for i in (1..widths.len()).filter(|i| labelled[*i] && labelled[i - 1]) {
        widths[i] = widths[i].max(widths[i - 1] - TAPER);
    }
    for i in (1..widths.len()).rev().filter(|i| labelled[*i]) {
        // From outside in: the outer ring sets how much its inner neighbour may lack, and never gives up its own room.
        let most = if labelled[i - 1] { TAPER } else { BARE };
        widths[i - 1] = widths[i - 1].max(widths[i] - most);
    }
}

/// The rings of one part, as radii where its name has to fit.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct PartSpan {
    inner: f64,
    outer: f64,
    /// True where its name fits.
    named: bool,
}

impl Scene<'_> {
    /// True for a ring that begins further on than the one below.
    fn begins_further(&self, index: usize) -> bool {
        self.ring(index).is_some_and(|ring| ring.shift.is_some())
    }

    /// The rings of a part, by its index.
    fn rings_of(&self, part: usize) -> impl DoubleEndedIterator<Item = &Ring> {
        self.rings.rings.iter().filter(move |ring| self.round_of(ring.row).is_some_and(|round| round.part == part))
    }

    /// The span of the part of a round; nothing where the piece has one part only.
    pub(super) fn part_span(&self, round: &Round) -> Option<PartSpan> {
        let part = self.size.parts.get(round.part).filter(|_| self.size.parts.len() > 1)?;
        let (first, last) = (self.rings_of(round.part).next()?, self.rings_of(round.part).next_back()?);
        // Below this radius the lane has no room beside the counts.
        let inner = first.foot.0.max(3.6);
        let outer = last.head.0;
        // A name that would run over the ends of its part is read as that of its neighbour: it goes into a corner.
        let room = Face::Italic.width(&part.name, self.letters) / self.unit + 0.8;
        Some(PartSpan { inner, outer, named: outer - inner >= room })
    }
}

/// Number and count of a ring.
pub(super) fn draw(scene: &Scene<'_>, index: usize) -> Vec<Item> {
    let (Some(ring), Some(lane)) = (scene.ring(index), scene.lanes.get(index)) else { return Vec::new() };
    let radius = (ring.foot.0 + ring.head.0) / 2.0;
    // Near the centre the lane may be narrower than its label: the label gives way.
    let room = if scene.share.is_some() { 1.0 } else { ring.lane_width * radius / lane.width().max(0.1) };
    let share = room.min(1.0);
    // Below four fifths letters are no longer read as those of the other labels: rather they reach over their lane.
    let size = scene.letters * share.max(0.8);
    let from_first = share * (lane.chain + lane.label / 2.0);
    let (bold, rest) = (Face::Bold.width(&lane.number, size), Face::Regular.width(&lane.count, size));
    let half = (bold + rest) / 2.0 / scene.unit;
    let (along, radius) = match lane.place {
        Label::Lane => (ring.from() - from_first / radius, radius),
        Label::Above => {
            let gap = ring.head.0 + ring.crest - SLIP;
            (ring.from() - half / gap, gap)
        }
        Label::Below => {
            let gap = ring.foot.0 - SLIP;
            (scene.rings.begins_over(index) + (half + 0.55) / gap, gap)
        }
    };
    let (turn, middle) = (upright(scene.frame.clock(along)), scene.at(along, radius));
    let drop = Face::Regular.cap_height(size) / 2.0;
    let place = |x: f64| middle + (turn.rotation() * Point::new(x, drop)).to_vec2();
    let turned = |text: &str, x: f64| TextItem { turn: turn.degrees(), ..TextItem::new(text, place(x), size) };
    let start = -(bold + rest) / 2.0;
    let number = TextItem { face: Face::Bold, ..turned(&lane.number, start) };
    vec![Item::Text(number), Item::Text(turned(&lane.count, start + bold))]
}

/// Least em height of what stands in a corner, mm: there is room there whatever the size of the stitches.
const CORNER_LETTERS: f64 = 3.2;

/// Names of the parts, along the lane; those that find no room there stand in a corner, with their rounds.
pub(super) fn part_names(scene: &Scene<'_>) -> Vec<Item> {
    let mut items = Vec::new();
    let mut left_over = Vec::new();
    for (index, part) in scene.size.parts.iter().enumerate() {
        let first = scene.rings_of(index).next().and_then(|ring| scene.round_of(ring.row));
        let Some(span) = first.and_then(|round| scene.part_span(round)) else { continue };
        // A name is tried along its lane first, where it is seen beside what it names.
        let placed = if span.named { along_lane(scene, span, &part.name) } else { None };
        match placed {
            Some(name) => items.push(name),
            None if part.first == part.last => left_over.push(format!("{} {}", part.first, part.name)),
            None => left_over.push(format!("{}–{} {}", part.first, part.last, part.name)),
        }
    }
    if let Some(repeats) = scene.share {
        left_over.push(scene.words.with("chart-repeat", &[("count", Arg::Count(repeats))]));
    }
    if let Some(count) = scene.parted() {
        left_over.push(scene.words.with("chart-repeats", &[("count", Arg::Count(count))]));
    }
    let (corner, size) = (scene.bounds(), scene.letters.max(CORNER_LETTERS));
    for (line, text) in left_over.into_iter().rev().enumerate() {
        let at = Point::new(corner.x0 + 0.5, corner.y1 - (0.4 + 1.3 * line as f64) * size);
        items.push(Item::Text(TextItem { face: Face::Italic, ..TextItem::new(text, at, size) }));
    }
    items
}

/// A part's name in its zone of the lane, set along the way the lane takes there, in the middle between the counts and
/// the joins beside it.
fn along_lane(scene: &Scene<'_>, span: PartSpan, name: &str) -> Option<Item> {
    let size = scene.letters;
    let width = Face::Italic.width(name, size);
    let middle = (span.inner + span.outer) / 2.0;
    let half = width / scene.unit / 2.0 + 0.5;
    let lanes = scene.rings.rings.iter().zip(&scene.lanes);
    let beside = lanes.filter(|(ring, _)| ring.head.0 > middle - half && ring.foot.0 < middle + half);
    let edges: Vec<(Point, Point)> = beside.map(|(ring, lane)| free_between(scene, ring, lane)).collect();
    let (first, last) = (edges.first()?, edges.last()?);
    let (inner, outer) = (first.0.midpoint(first.1), last.0.midpoint(last.1));
    // The lane may run aslant from ring to ring; over one ring there is only the radius.
    let way = if edges.len() > 1 { outer - inner } else { outer.to_vec2() };
    let across = {
        let across = Vec2::new(-way.y, way.x) / way.hypot().max(EPSILON);
        // From the counts to the joins, whichever hand works.
        if across.dot(first.1 - first.0) < 0.0 { -across } else { across }
    };
    let counts = edges.iter().map(|(counts, _)| across.dot(*counts - inner)).fold(f64::NEG_INFINITY, f64::max);
    let joins = edges.iter().map(|(_, joins)| across.dot(*joins - inner)).fold(f64::INFINITY, f64::min);
    let centre = inner.midpoint(outer) + across * ((counts + joins) / 2.0);
    let mut turn = Angle::of_vector(way.x, way.y);
    // Names that stand nearly upright all read from below.
    if turn.degrees() > 75.0 || turn.degrees() < -105.0 {
        turn = turn + Angle::from_degrees(180.0);
    }
    let drop = Face::Italic.cap_height(size) / 2.0;
    let start = turn.rotation() * Point::new(-width / 2.0, drop);
    let at = centre + Vec2::new(start.x, start.y);
    Some(Item::Text(TextItem { face: Face::Italic, turn: turn.degrees(), ..TextItem::new(name, at, size) }))
}

/// Where the room between the count and the join of a ring begins and ends.
fn free_between(scene: &Scene<'_>, ring: &Ring, lane: &Lane) -> (Point, Point) {
    let radius = ring.middle();
    let counts = ring.from() - (lane.chain + lane.label) / radius;
    let joins = ring.from() - ring.lane_width + lane.join / radius;
    (scene.at(counts, radius), scene.at(joins, radius))
}

/// A clock direction as a turn of text that stands across it and never upside down.
fn upright(clock: Angle) -> Angle {
    let turn = clock.degrees().rem_euclid(360.0);
    Angle::from_degrees(if turn > 90.0 && turn <= 270.0 { turn - 180.0 } else { turn })
}
