//! Symbols of one round that would meet are drawn narrower, step by step, until they don't.

use std::collections::BTreeMap;

use kurbo::{Affine, Rect, Vec2};

use super::placed::Placed;
use super::strokes::{Strokes, extent, flatten, meet};
use crate::design::Hand;
use crate::units::EPSILON;

/// How far a chain is moved in a step, in stitch units.
const AWAY: f64 = 0.06;

/// Symbols as straight pieces, by their keys, in mm about their feet.
pub(super) type Flattened = BTreeMap<String, (Rect, Strokes)>;

/// By how much narrower a step is.
const STEP: f64 = 0.85;

/// How many steps are tried at most.
const STEPS: usize = 12;

/// Share of its width below which narrowing a symbol has come to nothing.
const HOPELESS: f64 = 0.2;

/// How many of those that follow a symbol may meet it.
const REACH: usize = 3;

/// Least room between two symbols, in stitch units.
const AIR: f64 = 0.02;

/// Narrows the symbols that meet one of their next neighbours, and moves chains out of the way of stems. Linear in the
/// symbols.
pub(super) fn clear(items: &mut [Placed], unit: f64, hand: Hand, flattened: &mut Flattened) {
    let way = if hand == Hand::Right { AWAY * unit } else { -AWAY * unit };
    let mut keys: Vec<(String, Affine)> = items.iter().map(|placed| flattened_at(placed, unit, flattened)).collect();
    let before: Vec<f64> = items.iter().map(|placed| placed.fit.width).collect();
    let mut look: Vec<usize> = (0..items.len()).collect();
    for _ in 0..STEPS {
        // How hard each is pushed the way the work runs; a chain gives way to a chain less than to a stem.
        let mut tight: BTreeMap<usize, i32> = BTreeMap::new();
        for &index in &look {
            // Only its next neighbours: others of the round are too far off, and other rounds keep clear at foot and
            // head.
            for other in index + 1..(index + 1 + REACH).min(items.len()) {
                if meets((&items[index], &keys[index]), (&items[other], &keys[other]), AIR * unit, flattened) {
                    *tight.entry(index).or_default() -= if items[other].sign.row().loose { 1 } else { 2 };
                    *tight.entry(other).or_default() += if items[index].sign.row().loose { 1 } else { 2 };
                }
            }
        }
        // Nothing meets any more.
        if tight.is_empty() {
            return;
        }
        for (&index, push) in &tight {
            let placed = &mut items[index];
            placed.fit.width = STEP * placed.fit.width.min(1.0);
            if placed.sign.row().loose {
                let up = placed.head - placed.foot;
                let along = Vec2::new(up.y, -up.x) * (way * f64::from(push.signum()) / up.hypot().max(EPSILON));
                placed.foot += along;
                placed.head += along;
            }
            keys[index] = flattened_at(placed, unit, flattened);
        }
        // Only those that were changed, and those that may meet them, need another look.
        look = tight.keys().flat_map(|index| index.saturating_sub(REACH)..=*index).collect();
        look.sort_unstable();
        look.dedup();
    }
    // What meets however narrow it is drawn is better drawn whole.
    for (placed, width) in items.iter_mut().zip(before) {
        if placed.fit.width < HOPELESS * width {
            placed.fit.width = width;
        }
    }
}

/// The key and the place of a symbol, its straight pieces kept.
fn flattened_at(placed: &Placed, unit: f64, flattened: &mut Flattened) -> (String, Affine) {
    let (rounded, place) = placed.rounded(unit);
    let key = rounded.key(placed.sign);
    if !flattened.contains_key(&key) {
        let strokes = flatten(&placed.sign.symbol(&rounded.fit()).scaled(unit));
        flattened.insert(key.clone(), (extent(&strokes), strokes));
    }
    (key, place)
}

fn meets(
    one: (&Placed, &(String, Affine)),
    other: (&Placed, &(String, Affine)),
    air: f64,
    flattened: &Flattened,
) -> bool {
    let ((placed, (key, place)), (with, (with_key, with_place))) = (one, other);
    let (Some((room, strokes)), Some((with_room, with_strokes))) = (flattened.get(key), flattened.get(with_key)) else {
        return false;
    };
    // Boxes first: to compare strokes takes long.
    let boxed = place.transform_rect_bbox(*room).inflate(air, air);
    if !boxed.overlaps(with_place.transform_rect_bbox(*with_room)) {
        return false;
    }
    meet((&set(strokes, place), placed.foot), (&set(with_strokes, with_place), with.foot)) > -air
}

/// Strokes in their place.
fn set(strokes: &Strokes, place: &Affine) -> Strokes {
    strokes.iter().map(|(line, half)| (*place * *line, *half)).collect()
}
