//! The head that a hat is worn on, as a form of revolution.
//!
//! Hats are worked round and heads are longer than they are broad, so the form stands for the head in one thing: it is as
//! wide around as the head at every level, and as round as the hat. With C the head's circumference and R = C/2π, it is half
//! a ball of radius R down to the widest level, narrows below that as an ellipse of the half height [`LOWER`] C, and goes on
//! as wide as the neck.
//!
//! Where the figures are from:
//! - The widest level lies R = 0.159 C below the top. The headform of 570 mm for testing helmets has its circumference
//!   102.5 − 12.7 mm below its top, 0.158 C, and those of 500 to 620 mm are of the same proportions (ECE Regulation 22 and
//!   EN 960, from memory), so children's heads have this form too; of babies nothing was found.
//! - The opening of the ear lies 131.1 mm below the top at 574.4 mm around (men), 126.5 at 561.1 (women): ANSUR II, means of
//!   4082 men and 1986 women of the public files (Gordon and others 2014, NATICK/TR-15/007).
//! - Length and breadth there are 199.5 and 154.3 mm (men), 189.8 and 147.8 (women); an ellipse of these is 558 and 532 mm
//!   around, so the tape lies on hair and follows no plain ellipse: the circumference is what the form keeps.
//! - The breadth at the ears is 0.94 of that breadth, the neck 0.64 of the head around (ANSUR II, from memory).

use crate::units::{Angle, Mm, TURN};

/// Half height of the lower ellipse, as a share of the circumference: at the ears it is 0.94 as wide as at the widest.
const LOWER: f64 = 0.195;
/// Width of the neck, as a share of the widest.
const NECK: f64 = 0.64;
/// How far the opening of the ear lies below the top, as a share of the circumference: mean of men and women.
const EAR: f64 = (131.1 / 574.4 + 126.5 / 561.1) / 2.0;
/// Length of an ear, in the same measure (ANSUR II: 64.2 and 59.4 mm).
const EAR_LENGTH: f64 = (64.2 / 574.4 + 59.4 / 561.1) / 2.0;
/// Steps by which a length along the lower ellipse is added up, by Simpson's rule.
const STEPS: u32 = 16;

/// A head. Heights are measured down from its top, on its axis; lengths in mm.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct HeadForm {
    around: f64,
    /// Half height of the lower ellipse.
    lower: f64,
}

impl HeadForm {
    /// The head of this circumference, at least 1 mm.
    pub fn of(around: Mm) -> Self {
        let around = around.mm().max(1.0);
        Self { around, lower: LOWER * around }
    }

    /// Its circumference.
    pub const fn around(self) -> Mm {
        Mm::new(self.around)
    }

    /// Radius at its widest level, and how far that lies below the top.
    pub fn widest(self) -> f64 {
        self.around / TURN
    }

    /// From where to where the ears reach.
    pub fn ears(self) -> (f64, f64) {
        let half = EAR_LENGTH / 2.0;
        ((EAR - half) * self.around, (EAR + half) * self.around)
    }

    /// Radius at a level; nought above the top.
    pub fn radius_at(self, level: f64) -> f64 {
        let widest = self.widest();
        if level <= widest {
            let up = widest - level;
            return (widest * widest - up * up).max(0.0).sqrt();
        }
        let down = ((level - widest) / self.lower).min(1.0);
        widest * (1.0 - down * down).sqrt().max(NECK)
    }

    /// How far a point lies outside the form, below nought within it, and which way that grows, as (r, z).
    pub(super) fn outside(self, [r, z]: [f64; 2]) -> (f64, [f64; 2]) {
        let widest = self.widest();
        if z <= widest {
            let up = widest - z;
            let far = (r * r + up * up).sqrt().max(1e-9);
            return (far - widest, [r / far, -up / far]);
        }
        let half = self.lower;
        let down = ((z - widest) / half).min(1.0);
        let share = (1.0 - down * down).sqrt();
        let steep = if share > NECK { widest * down / (half * share) } else { 0.0 };
        (r - widest * share.max(NECK), [1.0, steep])
    }

    /// The point itself where it lies outside the form, else the one next to it on its surface; (r, z) in mm.
    pub fn clear(self, [r, z]: [f64; 2]) -> [f64; 2] {
        let (outside, [out, down]) = self.outside([r, z]);
        if outside >= 0.0 {
            return [r, z];
        }
        // Below the widest level the way out is level, as far as it is wide there.
        if z > self.widest() { [r - outside, z] } else { [r - outside * out, z - outside * down] }
    }

    /// What a tape over the head reads from its top down to a level.
    pub fn tape_to(self, level: f64) -> Mm {
        let widest = self.widest();
        if level <= widest {
            let up = (widest - level.max(0.0)) / widest;
            return Mm::new(widest * (TURN / 4.0 - Angle::of_sine(up).radians()));
        }
        let half = self.lower;
        let neck = half * (1.0 - NECK * NECK).sqrt();
        let down = (level - widest).min(neck);
        let turned = Angle::of_sine(down / half).radians();
        let speed = |step: u32| {
            let at = Angle::from_radians(turned * f64::from(step) / f64::from(STEPS));
            let (out, along) = (widest * at.sin(), half * at.cos());
            (out * out + along * along).sqrt()
        };
        let inner = (1..STEPS).map(|step| speed(step) * if step.is_multiple_of(2) { 2.0 } else { 4.0 }).sum::<f64>();
        let arc = turned / f64::from(STEPS) / 3.0 * (speed(0) + inner + speed(STEPS));
        Mm::new(widest * TURN / 4.0 + arc + (level - widest - down))
    }

    /// The level to which a tape over the head reads so much: the inverse of [`HeadForm::tape_to`].
    pub fn level_at(self, tape: Mm) -> f64 {
        // A tape never goes down faster than it is long.
        let (mut above, mut below) = (0.0, tape.mm().max(0.0));
        for _ in 0..60 {
            let middle = f64::midpoint(above, below);
            if self.tape_to(middle) < tape { above = middle } else { below = middle }
        }
        below
    }
}

#[cfg(test)]
impl HeadForm {
    /// A post with a round top, for closed forms: as wide all the way down.
    pub(super) fn post(around: Mm) -> Self {
        Self { lower: f64::INFINITY, ..Self::of(around) }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_form_is_as_wide_around_as_the_head() {
        for cm in [36.0, 50.0, 57.4] {
            let head = HeadForm::of(Mm::from_cm(cm));
            let widest = (0..200).map(|mm| head.radius_at(f64::from(mm))).fold(0.0, f64::max);
            assert!((widest * TURN - 10.0 * cm).abs() < 0.1, "{cm} cm: {}", widest * TURN);
        }
    }

    /// ECE Regulation 22, headforms A, E, J, M and O, from memory: circumference in cm, and how far the top lies above the
    /// plane of reference, which lies 12.7 mm below the circumference, and above the plane through the ears.
    #[test]
    fn helmets_are_tested_on_heads_of_the_same_proportions() {
        let forms =
            [(50.0, 90.0, 24.0), (54.0, 96.0, 26.0), (57.0, 102.5, 27.5), (60.0, 107.0, 29.0), (62.0, 110.0, 30.0)];
        for (cm, above, plane) in forms {
            let head = HeadForm::of(Mm::from_cm(cm));
            assert!((head.widest() - (above - 12.7)).abs() < 3.0, "{cm} cm: widest {}", head.widest());
            let ear = f64::midpoint(head.ears().0, head.ears().1);
            assert!((ear - (above + plane)).abs() < 2.5, "{cm} cm: ear {ear}");
        }
    }

    /// The breadth at the ears is 0.94 of the largest.
    #[test]
    fn the_head_narrows_towards_the_ears() {
        let head = HeadForm::of(Mm::new(574.4));
        let ear = f64::midpoint(head.ears().0, head.ears().1);
        assert!((head.radius_at(ear) / head.widest() - 0.94).abs() < 0.01, "{}", head.radius_at(ear));
        assert!((head.radius_at(300.0) / head.widest() - NECK).abs() < 1e-12);
    }

    #[test]
    fn a_tape_over_the_top_reads_a_quarter_of_a_circle_to_the_widest_level() {
        let head = HeadForm::of(Mm::new(560.0));
        assert!((head.tape_to(head.widest()).mm() - 140.0).abs() < 1e-9);
        assert!(head.tape_to(0.0).mm().abs() < 1e-9);
        for tape in [20.0, 100.0, 150.0, 190.0, 230.0, 300.0] {
            let level = head.level_at(Mm::new(tape));
            assert!((head.tape_to(level).mm() - tape).abs() < 1e-6, "{tape}: {level}");
        }
    }

    /// Common practice: a hat a third of the head deep reaches the brow, which is level with the ears' middle where the hat
    /// is drawn down at the back, and one of four tenths covers them.
    #[test]
    fn a_hat_of_four_tenths_covers_the_ears_and_one_of_a_third_half_of_them() {
        let head = HeadForm::of(Mm::new(560.0));
        let (top, lobe) = head.ears();
        let (third, four) = (head.level_at(Mm::new(560.0 / 3.0)), head.level_at(Mm::new(224.0)));
        assert!(top < third && third < lobe, "{top} {third} {lobe}");
        assert!(four > lobe, "{four} {lobe}");
    }

    #[test]
    fn what_lies_inside_is_moved_to_the_surface() {
        let head = HeadForm::of(Mm::new(560.0));
        for (r, z) in [(10.0, 3.0), (80.0, 60.0), (85.0, 100.0), (50.0, 190.0)] {
            let [out, at] = head.clear([r, z]);
            assert!((out - head.radius_at(at)).abs() < 1e-9 && out > r, "{r} {z}: {out} {at}");
        }
        let [out, at] = head.clear([100.0, 100.0]);
        assert!((out - 100.0).abs() < 1e-12 && (at - 100.0).abs() < 1e-12, "what lies outside stays");
    }

    #[test]
    fn outside_agrees_with_the_radius_and_its_slope() {
        let head = HeadForm::of(Mm::new(560.0));
        for level in [5.0, 40.0, 89.0, 100.0, 140.0, 200.0] {
            let radius = head.radius_at(level);
            assert!(head.outside([radius, level]).0.abs() < 1e-9, "{level}");
            let (_, way) = head.outside([radius, level]);
            let next = head.outside([radius + 1e-4 * way[0], level + 1e-4 * way[1]]).0;
            assert!(next > 0.0 && (next / 1e-4 - (way[0] * way[0] + way[1] * way[1])).abs() < 1e-3, "{level}: {next}");
        }
    }
}
