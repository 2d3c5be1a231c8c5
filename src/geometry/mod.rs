//! Stage 3, geometry: [`Plan`](crate::plan::Plan) → where things lie.
//!
//! Takes a plan. Gives finite millimetres and no ink: the predicted side shape, the ring layout of every stitch, the
//! places of dimension lines. Promises finite numbers for every plan. Never fails; what looks doubtful is a finding.

pub mod mesh;
pub mod piece;
pub mod rings;

mod corners;
mod head;
mod shape;
pub mod sideview;

pub use head::HeadForm;
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
    /// How it sits on its head; nothing for what isn't worn or has no crown.
    pub worn: Option<Worn>,
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

/// A hat on the head that it is made for.
#[derive(Clone, Debug, PartialEq)]
pub struct Worn {
    /// The head; its top is where heights begin.
    pub head: HeadForm,
    /// One entry a round, in order: strains against the fabric at rest.
    pub rounds: Vec<RoundShape>,
    /// Index of the round at its edge, before any brim.
    pub edge: usize,
    /// What a tape over the head reads from its top down to the edge.
    pub tape: Mm,
    /// Stretch of the round that grips the head most; below nought what the hat is wider than the head.
    pub grip: f64,
    /// Index of that round.
    pub tightest: usize,
}

/// How far down a head a hat reaches.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Sits {
    /// Above the brow.
    Top,
    /// To the brow.
    Brow,
    /// Between the brow and the bottom of the ears.
    Between,
    /// Over the ears.
    Ears,
    /// Further down.
    Below,
}

/// How a hat holds on to a head.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Holds {
    /// No round is tight: it slips.
    Slips,
    /// It rests on the head.
    Rests,
    /// It holds.
    Grips,
    /// It is too tight to be worn for long.
    Pinches,
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
    /// True for what the design means to ruffle.
    pub meant: bool,
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
