//! A symbol in its place, its room rounded so that symbols are shared.

use kurbo::{Affine, Point, Vec2};

use crate::drawing::Sign;
use crate::drawing::symbols::Fit;
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
        let tenth = |value: f64| (value * 10.0).round().clamp(1.0, 999.0);
        let height = tenth(fit.height);
        let shift = (fit.shift * 10.0).round();
        let aside = if sign.shears() || sign.is_shaped() { fit.shift - shift / 10.0 } else { 0.0 };
        let left_over = Vec2::new(aside, height / 10.0 - fit.height);
        Self {
            height,
            spread: tenth(fit.spread),
            shift,
            bow: (fit.bow * 10.0).ceil(),
            width: tenth(fit.width.min(1.0)),
            left_over,
        }
    }

    pub(super) fn fit(&self) -> Fit {
        let Self { height, spread, shift, bow, width, .. } = self;
        let tenth = |value: &f64| value / 10.0;
        Fit { height: tenth(height), spread: tenth(spread), shift: tenth(shift), bow: tenth(bow), width: tenth(width) }
    }

    /// The key of the symbol: its own where the room is the usual one.
    pub(super) fn key(&self, sign: Sign) -> String {
        let usual = Self::new(sign, sign.fit());
        let differs = |a: f64, b: f64| (a - b).abs() > 0.5;
        let (spread, aside) = (sign.is_shaped() && differs(self.spread, usual.spread), self.shift.abs() > 0.5);
        let width = differs(self.width, usual.width);
        let mut key = sign.key();
        if !(differs(self.height, usual.height) || width || spread || aside || self.bow > 0.5) {
            return key;
        }
        key.push_str(&format!("-{}", self.height));
        if width {
            key.push_str(&format!("w{}", self.width));
        }
        if sign.is_shaped() {
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
