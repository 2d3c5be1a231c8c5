//! Stage 3, geometry: [`Plan`](crate::plan::Plan) → where things lie.
//!
//! Takes a plan. Gives finite millimetres and no ink: the predicted side shape, the ring layout of every stitch, the
//! places of dimension lines. Promises finite numbers for every plan. Never fails; what looks doubtful is a finding.

pub mod mesh;
pub mod piece;
pub mod rings;

mod shape;
pub mod sideview;

pub use shape::predict;
pub use sideview::{SideView, side_view};

use crate::units::Mm;

/// The side shape of one size as it will come out, round by round.
#[derive(Clone, Debug, PartialEq)]
pub struct SideShape {
    /// Radius of the ring that the first round is worked into; none for one that pulls shut.
    pub start: Mm,
    /// One entry a round, in order.
    pub rounds: Vec<RoundShape>,
    /// Rounds that will ruffle, cup, bind or stand up as a ridge.
    pub findings: Vec<Finding>,
}

/// Where the top edge of a round comes to lie.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct RoundShape {
    /// Distance from the axis.
    pub radius: Mm,
    /// Distance below the highest point of the piece's start; a brim that turns up comes back up.
    pub height: Mm,
    /// (2πr − n w) / (n w): below zero the round is squeezed and wants to ruffle, above it is pulled and binds.
    pub hoop_strain: f64,
    /// Stretch of the round's height along the fabric, as a fraction.
    pub slant_strain: f64,
}

/// What a round will do that the maker may not want.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Finding {
    /// First round it is about.
    pub first: u32,
    /// Last round it is about.
    pub last: u32,
    /// What will happen.
    pub kind: FindingKind,
    /// A plain English sentence: what, where, how much, and the cure.
    pub sentence: String,
}

/// Kinds of findings.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum FindingKind {
    /// More stitches than the place has room for.
    Ruffles,
    /// Fewer than the flat needs: the disc bends into a bowl.
    Cups,
    /// Pulled tight.
    Binds,
    /// Two rounds of a curve meet at an angle that shows as a ridge.
    Ridges,
}
