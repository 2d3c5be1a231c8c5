//! The stripes of a piece as bars, to scale.

use kurbo::{Rect, Shape};

use crate::drawing::{Ends, Ink, Item, PathItem, Stroke};
use crate::plan::{Plan, SizePlan};
use crate::units::Mm;

/// Rounds of one colour that follow one another.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Stripe {
    /// Index into the design's colours.
    pub(super) colour: Option<usize>,
    /// Numbers of its first and last round.
    pub(super) rounds: (u32, u32),
    /// How deep it is along the fabric.
    pub(super) depth: Mm,
}

/// The stripes in working order.
pub(super) fn stripes(plan: &Plan, size: &SizePlan) -> Vec<Stripe> {
    let alike = size.rounds.chunk_by(|one, next| one.colour == next.colour);
    let stripe = |rounds: &[crate::craft::Round]| {
        let (first, last) = rounds.first().zip(rounds.last())?;
        let depth = rounds.iter().map(|round| plan.gauge_of(round).height.mm()).sum();
        Some(Stripe { colour: first.colour, rounds: (first.number, last.number), depth: Mm::new(depth) })
    };
    alike.filter_map(stripe).collect()
}

/// Line about a bar, mm.
const EDGE: f64 = 0.18;

/// One bar: the stripes from its top down, or from its foot up, one millimetre of it for `scale` of the fabric. Without
/// yarns it is left blank.
pub(super) fn bar(
    stripes: &[Stripe],
    (left, top, width): (f64, f64, f64),
    (scale, up): (f64, bool),
    yarns: Option<&[Ink]>,
) -> Vec<Item> {
    let ink = Ink([0x5c, 0x5c, 0x5c]);
    let line = || Some(Stroke { width: EDGE, ink, ends: Ends::Butt, dashes: Vec::new() });
    let high: f64 = stripes.iter().map(|stripe| stripe.depth.mm() / scale).sum();
    let mut at = if up { top + high } else { top };
    let mut items = Vec::new();
    for stripe in stripes {
        let deep = stripe.depth.mm() / scale;
        let from = if up { at - deep } else { at };
        at = if up { at - deep } else { at + deep };
        let path = Rect::new(left, from, left + width, from + deep).to_path(0.1);
        let fill = yarns.and_then(|yarns| yarns.get(stripe.colour.unwrap_or(0)).copied());
        // Blank, every stripe has a line about it; in colour, the bar as a whole.
        let stroke = if yarns.is_none() { line() } else { None };
        items.push(Item::Path(PathItem { path, fill: fill.or(Some(Ink::WHITE)), stroke }));
    }
    let path = Rect::new(left, top, left + width, top + high).to_path(0.1);
    items.push(Item::Path(PathItem { path, fill: None, stroke: line() }));
    items
}
