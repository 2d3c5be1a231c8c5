//! Stitches of a maker's own: a name for what is made in one place.

use super::{Counted, Made, Op, Stitch};
use crate::report::Place;

/// A stitch that a design defines, built of those of the table.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct OwnStitch {
    /// What rounds call it.
    pub short: String,
    /// Its whole name, where it has one beside that.
    pub name: Option<String>,
    /// How it is worked, in its maker's words.
    pub how: Option<String>,
    /// What is made in one stitch or space.
    pub made: Made,
    /// True for a stitch of the trade, which every language names in its own words, under [`OwnStitch::V`].
    pub trade: bool,
    /// Where it is defined.
    pub place: Option<Place>,
}

impl OwnStitch {
    /// The messages that name a V-stitch are under this key.
    pub const V: &'static str = "v-st";

    /// A V-stitch as rounds mean it where they don't say otherwise: two double crochets with a chain between them, in
    /// one place (common practice).
    pub fn v_stitch() -> Self {
        let made = Made::Mixed([(Stitch::DC, 1), (Stitch::CH, 1), (Stitch::DC, 1)].into());
        Self { short: "V-st".to_owned(), name: None, how: None, made, trade: true, place: None }
    }

    /// What it adds to a round: stitches of each kind, and spaces.
    pub fn adds(&self) -> Vec<(Counted, u32)> {
        let mut adds: Vec<(Counted, u32)> = Vec::new();
        for (stitch, count) in self.made.runs().filter(|(stitch, _)| stitch.row().counts > 0) {
            let (what, count) =
                if stitch == Stitch::CH { (Counted::Spaces(count), 1) } else { (Counted::Of(stitch), count) };
            match adds.iter_mut().find(|(known, _)| *known == what) {
                Some((_, sum)) => *sum += count,
                None => adds.push((what, count)),
            }
        }
        adds
    }

    /// True where an operation makes it.
    pub fn is_made(&self, op: &Op) -> bool {
        op.made == self.made
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_own_stitch_adds_stitches_and_spaces() {
        let v = OwnStitch::v_stitch();
        assert_eq!(v.adds(), [(Counted::Of(Stitch::DC), 2), (Counted::Spaces(1), 1)]);
        // A picot adds nothing; two runs of one kind are added up.
        let made = [(Stitch::DC, 2), (Stitch::CH, 2), (Stitch::PICOT, 1), (Stitch::DC, 3), (Stitch::SC, 1)];
        let shell = OwnStitch { made: Made::Mixed(made.into()), trade: false, ..v };
        let adds = [(Counted::Of(Stitch::DC), 5), (Counted::Spaces(2), 1), (Counted::Of(Stitch::SC), 1)];
        assert_eq!(shell.adds(), adds);
        assert_eq!(shell.made.count(), 8);
    }
}
