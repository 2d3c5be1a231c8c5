//! Symbols of one round that would meet are drawn narrower, step by step, until they don't.

use std::collections::BTreeMap;

use kurbo::{Affine, Rect, Vec2};

use super::ink::{Strokes, extent, flatten, meet};
use super::placed::Placed;
use crate::craft::Build;
use crate::design::Hand;
use crate::drawing::Sign;

/// How far a chain is moved in a step, in stitch units.
const AWAY: f64 = 0.06;

/// Ink of symbols, by their keys, in mm about their feet.
pub(super) type Inks = BTreeMap<String, (Rect, Strokes)>;

/// By how much narrower a step is.
const STEP: f64 = 0.85;

/// How many steps are tried at most.
const STEPS: usize = 12;

/// Share of its width below which narrowing a symbol has come to nothing.
const HOPELESS: f64 = 0.2;

/// How many of those that follow a symbol may meet it.
const REACH: usize = 3;

/// Least room between two inks, in stitch units.
const AIR: f64 = 0.02;

/// Narrows the symbols that meet one of their next neighbours, and moves chains out of the way of stems. Linear in the
/// symbols.
pub(super) fn clear(items: &mut [Placed], unit: f64, hand: Hand, inks: &mut Inks) {
    let way = if hand == Hand::Right { AWAY * unit } else { -AWAY * unit };
    let mut keys: Vec<(String, Affine)> = items.iter().map(|placed| ink(placed, unit, inks)).collect();
    let before: Vec<f64> = items.iter().map(|placed| placed.fit.width).collect();
    let mut look: Vec<usize> = (0..items.len()).collect();
    for _ in 0..STEPS {
        // How hard each is pushed the way the work runs; a chain gives way to a chain less than to a stem.
        let mut tight: BTreeMap<usize, i32> = BTreeMap::new();
        for &index in &look {
            for other in index + 1..(index + 1 + REACH).min(items.len()) {
                if meets((&items[index], &keys[index]), (&items[other], &keys[other]), AIR * unit, inks) {
                    *tight.entry(index).or_default() -= if is_chain(&items[other]) { 1 } else { 2 };
                    *tight.entry(other).or_default() += if is_chain(&items[index]) { 1 } else { 2 };
                }
            }
        }
        if tight.is_empty() {
            return;
        }
        for (&index, push) in &tight {
            let placed = &mut items[index];
            placed.fit.width = STEP * placed.fit.width.min(1.0);
            if is_chain(placed) {
                let up = placed.head - placed.foot;
                let along = Vec2::new(up.y, -up.x) * (way * f64::from(push.signum()) / up.hypot().max(1e-9));
                placed.foot += along;
                placed.head += along;
            }
            keys[index] = ink(placed, unit, inks);
        }
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

fn is_chain(placed: &Placed) -> bool {
    matches!(placed.sign, Sign::Stitch(stitch, _) if stitch.row().build == Build::Chain)
}

/// The key and the place of a symbol, its ink kept.
fn ink(placed: &Placed, unit: f64, inks: &mut Inks) -> (String, Affine) {
    let (rounded, place) = placed.rounded(unit);
    let key = rounded.key(placed.sign);
    if !inks.contains_key(&key) {
        let strokes = flatten(&placed.sign.symbol(&rounded.fit()).scaled(unit));
        inks.insert(key.clone(), (extent(&strokes), strokes));
    }
    (key, place)
}

fn meets(one: (&Placed, &(String, Affine)), other: (&Placed, &(String, Affine)), air: f64, inks: &Inks) -> bool {
    let ((placed, (key, place)), (with, (with_key, with_place))) = (one, other);
    let (Some((room, strokes)), Some((with_room, with_strokes))) = (inks.get(key), inks.get(with_key)) else {
        return false;
    };
    let boxed = place.transform_rect_bbox(*room).inflate(air, air);
    if !boxed.overlaps(with_place.transform_rect_bbox(*with_room)) {
        return false;
    }
    let set = |strokes: &Strokes, place: &Affine| -> Strokes {
        strokes.iter().map(|(line, half)| (*place * *line, *half)).collect()
    };
    meet((&set(strokes, place), placed.foot), (&set(with_strokes, with_place), with.foot)) > -air
}
