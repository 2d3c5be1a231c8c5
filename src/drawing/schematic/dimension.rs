//! Dimension lines by the practice of ISO 129-1: narrow continuous lines, a gap at the outline and a small overrun, a
//! filled narrow arrowhead at each end, the value above the line and parallel to it, read from below or from the right.

use kurbo::{Point, Vec2};

use super::sheet::Sheet;
use crate::drawing::{Anchor, TextItem};
use crate::units::{Angle, TOLERANCE};

/// Gap between the outline and an extension line, mm.
const GAP: f64 = 1.0;

/// From the outline to the first dimension line, mm.
pub(super) const FIRST: f64 = 10.0;

/// From one dimension line to the next, mm.
pub(super) const NEXT: f64 = 8.0;

/// Room kept clear between a dimension line and a line that ends before it, mm.
const APART: f64 = 1.5;

/// A length to be dimensioned, in mm on paper.
#[derive(Clone, Copy, Debug)]
pub(super) struct Dimension<'a> {
    /// One end.
    pub(super) from: Point,
    /// The other end.
    pub(super) to: Point,
    /// Which way the dimension line stands off, of length 1 and square to the dimension line.
    pub(super) off: Vec2,
    /// How far everything drawn on this side reaches along `off`.
    pub(super) beyond: f64,
    /// Value, one line.
    pub(super) value: &'a str,
}

/// A dimension in one place.
struct Placed {
    feet: [Point; 2],
    ends: [Point; 2],
    /// Dimension line with what runs past its arrows.
    line: [Point; 2],
    /// Towards the outline.
    inner: Vec2,
    inward: bool,
    /// True where the value stands between the arrows.
    between: bool,
    texts: Vec<TextItem>,
}

impl Dimension<'_> {
    /// Draws the dimension as near to the outline as it goes: `FIRST` away, then further by `NEXT`. Gives false where
    /// nothing within `tries` lines is free.
    pub(super) fn draw(&self, sheet: &mut Sheet, tries: usize) -> bool {
        let step = (NEXT + 1.5 * (sheet.style.letters - 2.5)).max(NEXT);
        let ways: Vec<Placed> = (0..tries).flat_map(|line| self.ways(sheet, FIRST + step * line as f64)).collect();
        // A value between its arrows reads best, even a line or two further out.
        let (between, beyond): (Vec<Placed>, Vec<Placed>) = ways.into_iter().partition(|placed| placed.between);
        let Some(placed) = between.into_iter().chain(beyond).find(|placed| placed.free(sheet)) else {
            return false;
        };
        placed.draw(sheet);
        true
    }

    /// The ways in which the value can stand at one distance: above the line; in two lines above and below it; beyond
    /// its end.
    fn ways(&self, sheet: &Sheet, distance: f64) -> Vec<Placed> {
        // The end that stands out least gets the longer extension line.
        let reaches = [self.from, self.to].map(|p| p.to_vec2().dot(self.off));
        let level = reaches[0].max(reaches[1]).max(self.beyond) + distance;
        let ends = [self.from + self.off * (level - reaches[0]), self.to + self.off * (level - reaches[1])];
        let span = ends[1] - ends[0];
        let mut along = if span.hypot() > 0.0 { span.normalize() } else { self.off.turn_90() };
        // Letters run to the right, or upward where the line stands upright.
        let runs = along.x > TOLERANCE || (along.x.abs() <= TOLERANCE && along.y < 0.0);
        if !runs {
            along = -along;
        }
        let (first, last) = if runs { (ends[0], ends[1]) } else { (ends[1], ends[0]) };
        let up = Vec2::new(along.y, -along.x);
        let em = sheet.style.em();
        let (above, below) = (0.22 * em + 0.8, 0.75 * em + 0.8);
        let turn = Angle::of_vector(along.x, along.y).degrees();
        let text = |words: &str, at: Point, anchor| TextItem { turn, ..sheet.text(words, at, anchor) };
        let feet = [self.from + self.off * GAP, self.to + self.off * GAP];
        let placed =
            |inward, line, texts| Placed { feet, ends, inner: -self.off, inward, line, between: line == ends, texts };
        let room = span.hypot() - 2.0 * sheet.style.arrow();
        let middle = first.midpoint(last);
        let mut ways = Vec::new();
        let whole = text(self.value, middle + up * above, Anchor::Middle);
        if width_of(&whole) <= room {
            // In the middle, or a little aside where something crosses there.
            let slack = (room - width_of(&whole)) / 2.0;
            for aside in [0.0, -0.6, 0.6, -0.95, 0.95] {
                let at = whole.at + along * (aside * slack);
                ways.push(placed(false, ends, vec![TextItem { at, ..whole.clone() }]));
            }
        }
        if let Some((one, other)) = self.value.split_once(" (") {
            let one = text(one, middle + up * above, Anchor::Middle);
            let other = text(&format!("({other}"), middle - up * below, Anchor::Middle);
            if width_of(&one) <= room && width_of(&other) <= room {
                ways.push(placed(false, ends, vec![one, other]));
            }
        }
        let tail = 2.0 * sheet.style.arrow();
        let width = width_of(&whole);
        let inward = room < sheet.style.arrow();
        let start = if inward { tail } else { 0.0 };
        let past = last + along * (tail + width + 1.0);
        let before = first - along * (tail + width + 1.0);
        let after_text = text(self.value, last + along * tail + up * above, Anchor::Start);
        ways.push(placed(inward, [first - along * start, past], vec![after_text]));
        let before_text = text(self.value, first - along * tail + up * above, Anchor::End);
        ways.push(placed(inward, [before, last + along * start], vec![before_text]));
        ways
    }
}

fn width_of(item: &TextItem) -> f64 {
    item.face.width(&item.text, item.size)
}

/// An extension line from its foot past the end of the dimension line.
fn extension(foot: Point, end: Point, overrun: f64) -> [Point; 2] {
    let way = end - foot;
    let way = if way.hypot() > 0.0 { way.normalize() } else { Vec2::ZERO };
    [foot, end + way * overrun]
}

impl Placed {
    /// Lines drawn: the extension lines with their overrun, and the dimension line.
    fn lines(&self, sheet: &Sheet) -> Vec<[Point; 2]> {
        let overrun = sheet.style.overrun();
        let [first, last] = [0, 1].map(|i| extension(self.feet[i], self.ends[i], overrun));
        vec![first, last, self.line]
    }

    fn free(&self, sheet: &Sheet) -> bool {
        let lines = self.lines(sheet);
        let crossing = lines.iter().all(|[from, to]| sheet.clear(*from, *to));
        let apart = self.ends.map(|end| end.lerp(self.ends[0].midpoint(self.ends[1]), 0.1) + self.inner * APART);
        let lone = sheet.uncrossed(self.line[0], self.line[1]) && sheet.uncrossed(apart[0], apart[1]);
        crossing && lone && self.texts.iter().all(|text| sheet.free(text))
    }

    fn draw(self, sheet: &mut Sheet) {
        for [from, to] in self.lines(sheet) {
            sheet.thin(from, to);
        }
        let way = self.ends[1] - self.ends[0];
        let way = if self.inward { -way } else { way };
        if way.hypot() > 0.0 {
            sheet.arrow(self.ends[1], way);
            sheet.arrow(self.ends[0], -way);
        }
        self.texts.into_iter().for_each(|text| sheet.write(text));
    }
}
