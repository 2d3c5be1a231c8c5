//! A symbol in its place, its room rounded so that symbols are shared.

use kurbo::{Affine, Point, Vec2};

use crate::drawing::Sign;
use crate::drawing::symbols::{Fit, Stance};
use crate::units::Angle;

/// A symbol with its foot at a point and its head towards another, mm.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Placed {
    pub(super) sign: Sign,
    pub(super) fit: Fit,
    pub(super) foot: Point,
    pub(super) head: Point,
    /// True where its foot is held, as where several rise from one; else its ends share what its room is rounded by.
    pub(super) rooted: bool,
}

impl Placed {
    /// Its room, rounded, and its place; `unit` is a stitch unit in mm.
    pub(super) fn rounded(&self, unit: f64) -> (Rounded, Affine) {
        let rounded = Rounded::new(self.sign, self.fit);
        // Up in a symbol is −y; the turn takes that to the way from foot to head.
        let way = self.head - self.foot;
        let turn = Angle::of_vector(-way.y, way.x).rotation();
        let left_over = if self.rooted { Vec2::ZERO } else { rounded.left_over * (unit / 2.0) };
        (rounded, Affine::translate(self.foot.to_vec2()) * turn * Affine::translate(left_over))
    }
}

/// The room of a symbol in tenths of a stitch unit, so that symbols are shared.
pub(super) struct Rounded {
    height: f64,
    spread: f64,
    shift: f64,
    bow: f64,
    width: f64,
    /// What was rounded off the way to the head, to the right and down, in stitch units.
    left_over: Vec2,
}

impl Rounded {
    fn new(sign: Sign, fit: Fit) -> Self {
        let height = in_tenths(fit.height);
        let shift = (fit.shift * 10.0).round();
        let aside = match sign.row().stance {
            Stance::Turned => 0.0,
            Stance::Slanted | Stance::SharedFoot | Stance::SharedHead => fit.shift - shift / 10.0,
        };
        let left_over = Vec2::new(aside, height / 10.0 - fit.height);
        Self {
            height,
            spread: in_tenths(fit.spread),
            shift,
            bow: (fit.bow * 10.0).ceil(),
            width: in_tenths(fit.width.min(1.0)),
            left_over,
        }
    }

    pub(super) fn fit(&self) -> Fit {
        let Self { height, spread, shift, bow, width, .. } = *self;
        let [height, spread, shift, bow, width] = [height, spread, shift, bow, width].map(|tenths| tenths / 10.0);
        Fit { height, spread, shift, bow, width }
    }

    /// The key of the symbol: its own where the room is the usual one.
    pub(super) fn key(&self, sign: Sign) -> String {
        // A name says only what differs from the usual room, so that most symbols of all charts are named alike.
        let usual = Self::new(sign, sign.fit());
        let shaped = sign.row().is_shaped();
        let (spread, aside) = (shaped && differs(self.spread, usual.spread), self.shift.abs() > 0.5);
        let width = differs(self.width, usual.width);
        let mut key = sign.key();
        if !(differs(self.height, usual.height) || width || spread || aside || self.bow > 0.5) {
            return key;
        }
        key.push_str(&format!("-{}", self.height));
        if width {
            key.push_str(&format!("w{}", self.width));
        }
        if shaped {
            key.push_str(&format!("s{}", self.spread));
        }
        if aside {
            key.push_str(&format!("{}{}", if self.shift < 0.0 { 'l' } else { 'r' }, self.shift.abs()));
        }
        if self.bow > 0.5 {
            key.push_str(&format!("b{}", self.bow));
        }
        key
    }
}

/// A measure of the room in tenths: none is less than a tenth.
fn in_tenths(value: f64) -> f64 {
    (value * 10.0).round().clamp(1.0, 999.0)
}

/// True for two whole numbers that are not the same.
fn differs(a: f64, b: f64) -> bool {
    (a - b).abs() > 0.5
}
