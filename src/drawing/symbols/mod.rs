//! Our own symbol set: every stitch of the table and every other sign of a chart, drawn as paths in stitch units.
//!
//! The foot of a symbol stands at (0, 0), its head at (0, −height): up is −y, outward in a chart. What is drawn follows
//! what the trade's published conventions say in words (a chain an open oval, a slip stitch a filled dot, a single
//! crochet a cross, a half double a T, taller stitches a T with slashes, one-loop stitches an arc at the foot); the
//! drawing is ours. Shaping is told by weight and by a filled wedge where stitches meet, not by colour.

mod course;
mod pen;
mod sign;
mod stitches;

use kurbo::Affine;

pub use sign::Sign;
pub(in crate::drawing) use sign::{SignRow, Stance};

use crate::craft::Stitch;
use crate::drawing::Symbol;
use crate::geometry::rings::ring_height;

/// The room a symbol is drawn to fit, in stitch units. Strokes keep their weight whatever the room.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Fit {
    /// From foot to head.
    pub height: f64,
    /// Between the outermost heads of an increase or the outermost feet of a decrease.
    pub spread: f64,
    /// How far to the right of the shared foot the middle of the heads stands, or of the middle of the feet the shared
    /// head.
    pub shift: f64,
    /// How far the middle one of the feet of a decrease lies above the line through the outermost: rings are round.
    pub bow: f64,
    /// Width of one stitch's cell.
    pub width: f64,
}

impl Fit {
    /// The room that suits a stitch best.
    pub fn of(stitch: Stitch) -> Self {
        Self { height: ring_height(stitch), spread: 1.0, shift: 0.0, bow: 0.0, width: 1.0 }
    }
}

impl Symbol {
    /// The same at another scale, strokes with it.
    #[must_use]
    pub fn scaled(mut self, by: f64) -> Self {
        for stroke in self.paths.iter_mut().filter_map(|item| item.stroke.as_mut()) {
            stroke.width *= by;
            stroke.dashes.iter_mut().for_each(|dash| *dash *= by);
        }
        self.moved(Affine::scale(by))
    }

    /// The same with left and right changed.
    #[must_use]
    pub fn mirrored(self) -> Self {
        self.moved(Affine::scale_non_uniform(-1.0, 1.0))
    }

    fn moved(mut self, by: Affine) -> Self {
        self.paths.iter_mut().for_each(|item| item.path.apply_affine(by));
        self.bounds = by.transform_rect_bbox(self.bounds);
        self
    }
}
