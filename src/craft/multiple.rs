//! Counts that a stitch pattern repeats over: every so many stitches, and so many more.

use crate::units::gcd;
use std::fmt;

/// Counts of `of`, 2 `of`, 3 `of` … stitches and `plus` more, as makers state them: a multiple of 4 plus 2.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Multiple {
    of: u32,
    plus: u32,
}

impl Multiple {
    /// Every count.
    pub const ANY: Self = Self { of: 1, plus: 0 };
    /// Even counts.
    pub const EVEN: Self = Self { of: 2, plus: 0 };

    /// A multiple of `of` (at least 1) and `plus` more.
    pub fn new(of: u32, plus: u32) -> Self {
        Self { of: of.max(1), plus: plus % of.max(1) }
    }

    /// Stitches from one such count to the next.
    pub fn of(self) -> u32 {
        self.of
    }

    /// True where every count is one.
    pub fn is_any(self) -> bool {
        self.of == 1
    }

    /// True where a count is one.
    pub fn holds(self, count: u32) -> bool {
        count % self.of == self.plus
    }

    /// Counts that are both; nothing where no count can be (the Chinese remainder theorem).
    pub fn both(self, other: Self) -> Option<Self> {
        let (own, others) = (u64::from(self.of), u64::from(other.of));
        let of = own * others / gcd(own, others);
        // One of every so many of ours is the other's, or none ever is.
        let plus = (0..other.of).map(|i| u64::from(self.plus) + u64::from(i) * u64::from(self.of));
        let plus = plus.map(|plus| plus % of).find(|plus| plus % u64::from(other.of) == u64::from(other.plus))?;
        Some(Self { of: u32::try_from(of).ok()?, plus: u32::try_from(plus).ok()? })
    }

    /// The nearest such counts at or below and at or above a number of stitches, none of them less than `fewest`.
    pub fn around(self, wanted: f64, fewest: u32) -> (Option<u32>, u32) {
        let (of, plus) = (f64::from(self.of), f64::from(self.plus));
        let steps = ((wanted - plus) / of + 1e-9).floor().max(0.0);
        let below =
            Some((steps * of + plus) as u32).filter(|below| *below >= fewest && f64::from(*below) <= wanted + 1e-6);
        let first = (self.plus..).step_by(self.of as usize).find(|count| *count >= fewest).unwrap_or(fewest);
        let exact = below.filter(|below| (f64::from(*below) - wanted).abs() < 1e-6);
        let above = exact.unwrap_or_else(|| below.map_or(first, |below| below + self.of).max(first));
        (below, above)
    }
}

impl fmt::Display for Multiple {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self.plus {
            0 => write!(f, "{}", self.of),
            plus => write!(f, "{} + {plus}", self.of),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn both_are_the_counts_that_are_each() {
        for (of, plus, other, more) in
            [(4, 0, 6, 0), (4, 2, 6, 0), (4, 1, 6, 0), (5, 3, 7, 6), (1, 0, 9, 4), (8, 2, 12, 6)]
        {
            let (a, b) = (Multiple::new(of, plus), Multiple::new(other, more));
            let counts: Vec<u32> = (0..400).filter(|count| a.holds(*count) && b.holds(*count)).collect();
            match a.both(b) {
                Some(both) => assert_eq!(counts, (0..400).filter(|count| both.holds(*count)).collect::<Vec<u32>>()),
                None => assert_eq!(counts, Vec::<u32>::new()),
            }
        }
    }

    #[test]
    fn the_nearest_counts_stand_on_both_sides() {
        let ribs = Multiple::new(4, 2);
        assert_eq!(ribs.around(63.0, 3), (Some(62), 66));
        assert_eq!(ribs.around(62.0, 3), (Some(62), 62));
        assert_eq!(ribs.around(4.5, 3), (None, 6));
        assert_eq!(Multiple::new(40, 0).around(12.3, 3), (None, 40));
        assert_eq!((ribs.to_string(), Multiple::new(6, 12).to_string()), ("4 + 2".to_owned(), "6".to_owned()));
    }
}
