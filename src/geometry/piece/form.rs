//! What a hat stands on in space: the plain form of a head, with a foot.

use crate::geometry::HeadForm;
use crate::geometry::mesh::Vec3;
use crate::units::{Angle, Mm, TURN};

/// How far down the form goes, as a share of the head's circumference: about where a collar is.
const END: f64 = 0.42;

/// Room under a brim that hangs lower, in the same measure.
const CLEAR: f64 = 0.05;

/// Height of its foot, in the same measure, and its width as a share of the widest.
const FOOT: (f64, f64) = (0.1, 0.76);

/// Facets from top to foot, and once round.
const FACETS: (u32, u32) = (72, 90);

/// A form of revolution about the z axis, mm, z upward.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Form {
    head: HeadForm,
    /// By how much it is smaller than the head: half the fabric lies between it and the middle of the stitches.
    under: f64,
    /// Level of its top.
    pub top: f64,
    /// Level that it stands on.
    pub foot: f64,
}

impl Form {
    /// The form of a head whose top lies at z = 0, under a hat that reaches down to `lowest`.
    pub(super) fn under(head: HeadForm, under: f64, lowest: f64) -> Self {
        let around = head.around().mm();
        Self { head, under, top: -under, foot: (-END * around).min(lowest - CLEAR * around) }
    }

    /// The head's circumference.
    pub const fn around(&self) -> Mm {
        self.head.around()
    }

    /// Radius at a level of z.
    pub fn radius_at(&self, z: f64) -> f64 {
        let own = (self.head.radius_at(-z) - self.under).max(0.0);
        let (high, wide) = (FOOT.0 * self.around().mm(), FOOT.1 * self.head.widest());
        let share = ((self.foot + high - z) / high).clamp(0.0, 1.0);
        own + (wide - own).max(0.0) * share * share * share
    }

    /// The level of its neck, on which the head stands; seen from above, the head hides what lies lower.
    pub fn neck(&self) -> f64 {
        self.foot + FOOT.0 * self.around().mm()
    }

    /// Its surface in rows from the top: of each facet its corners, upper left first as seen from outside, then round.
    pub fn facets(&self) -> Vec<[Vec3; 4]> {
        let (rows, around) = FACETS;
        // Finer where it is rounder: at its top and at its foot.
        let level = |row: u32| {
            let turn = Angle::from_radians(TURN / 2.0 * f64::from(row) / f64::from(rows));
            self.top + (self.foot - self.top) * (1.0 - turn.cos()) / 2.0
        };
        let corner = |row: u32, place: u32| {
            let turn = Angle::from_radians(TURN * f64::from(place) / f64::from(around));
            let z = level(row);
            let radius = if row == 0 { 0.0 } else { self.radius_at(z) };
            Vec3::new(radius * turn.cos(), radius * turn.sin(), z)
        };
        let facet = |row, place| {
            [corner(row, place), corner(row, place + 1), corner(row + 1, place + 1), corner(row + 1, place)]
        };
        (0..rows)
            .flat_map(|row| (0..around).map(move |place| (row, place)))
            .map(|(row, place)| facet(row, place))
            .collect()
    }

    /// The facets that are seen, with those that touch them and are covered by nothing: at its outline slivers show of
    /// facets that are too narrow there to count as seen.
    pub(super) fn with_neighbours(seen: &[bool], bare: &[bool]) -> Vec<bool> {
        let around = FACETS.1 as usize;
        let one = |at: usize| {
            let (row, place) = (at / around, at % around);
            let rows = row.saturating_sub(1)..=row + 1;
            let mut places = rows.flat_map(|row| [around - 1, 0, 1].map(|off| row * around + (place + off) % around));
            places.any(|near| seen.get(near).copied().unwrap_or(false))
        };
        seen.iter().zip(bare).enumerate().map(|(at, (seen, bare))| *seen || (*bare && one(at))).collect()
    }
}

/// The way out of a facet.
pub fn facing([a, b, c, d]: &[Vec3; 4]) -> Vec3 {
    let normal = (c - a).cross(&(b - d));
    let normal = normal.try_normalize(1e-12).unwrap_or_else(Vec3::z);
    // It is convex but for its foot, which faces outward too.
    let middle = (a + b + c + d) / 4.0;
    if normal.x * middle.x + normal.y * middle.y < 0.0 { -normal } else { normal }
}
