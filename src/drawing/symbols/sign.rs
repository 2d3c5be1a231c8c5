//! The rows of the symbol set: one a sign, with every answer that the chart, the key and the demerits ask of it.

use super::{Fit, course, stitches};
use crate::craft::{Build, Loops, Made, Op, Spot, Stitch};
use crate::drawing::Symbol;
use crate::geometry::rings::NEARER;

/// Something that has a symbol, and so a line in the key.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Sign {
    /// An adjustable ring at the centre.
    Ring,
    /// A ring of so many chains, joined.
    ChainRing(u32),
    /// Where the first stitch is worked.
    Start,
    /// The way the work runs.
    Direction,
    /// One stitch.
    Stitch(Stitch, Loops),
    /// Two or three stitches in one: they share a foot.
    Increase(Stitch, u8, Loops),
    /// Two or three stitches worked together: they share a head.
    Decrease(Stitch, u8, Loops),
    /// Two stitches that cross, each in the place of the other.
    Crossed(Stitch, Loops),
    /// More stitches in one place, fanned out; the number is for the key's drawing.
    Fan(Stitch, u8),
    /// Chains over a gap, which later stitches go under.
    Space(u8),
    /// A turning chain of so many chains.
    TurningChain(u8),
    /// A slip stitch that closes a joined round.
    Join,
    /// Where the yarn is cut.
    FastenOff,
}

/// What a sign is made of. A sign of no stitch stands in the room of a single crochet.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(in crate::drawing) struct Of {
    /// The stitch.
    pub(in crate::drawing) stitch: Stitch,
    /// How many stitches or chains; 1 where that is not said.
    pub(in crate::drawing) count: u32,
    /// The loops worked under.
    pub(in crate::drawing) loops: Loops,
}

impl Of {
    /// No stitch in particular.
    const NOTHING: Self = Self { stitch: Stitch::SC, count: 1, loops: Loops::Both };

    /// The count where it numbers stitches or chains drawn one by one.
    fn few(&self) -> u8 {
        u8::try_from(self.count).unwrap_or(u8::MAX)
    }
}

/// How a sign fills the room between foot and head.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(in crate::drawing) enum Stance {
    /// Turned as a whole, its foot to the foot and its head to the head.
    Turned,
    /// Where it leans its head stands aside of its foot, its bar level.
    Slanted,
    /// Arms from one foot to several heads.
    SharedFoot,
    /// Arms from several feet to one head.
    SharedHead,
}

/// The row of a sign: all that is known of it.
#[derive(Clone, Copy, Debug)]
pub(in crate::drawing) struct SignRow {
    /// Name of the symbol in a drawing: letters, figures and hyphens, with `{stitch}`, `{count}` and `{loops}` for what
    /// it is made of.
    pub(in crate::drawing) key: &'static str,
    /// The message of the catalogues that explains it; nothing for a stitch, which goes by its own names.
    pub(in crate::drawing) message: Option<&'static str>,
    /// What it is made of.
    pub(in crate::drawing) of: Of,
    /// The room it is drawn in where nothing else is asked for.
    pub(in crate::drawing) fit: Fit,
    /// How it fills the room of a cell.
    pub(in crate::drawing) stance: Stance,
    /// Its drawing in a room, in stitch units.
    pub(in crate::drawing) draw: fn(&Of, &Fit) -> Symbol,
    /// True where it points the way the work runs, and so is mirrored for the left hand.
    pub(in crate::drawing) points: bool,
    /// True where it lies loose between others, as a chain does: it may be moved aside, and stand close.
    pub(in crate::drawing) loose: bool,
}

impl Sign {
    /// The row of the sign: the one place that tells the signs apart.
    pub(in crate::drawing) fn row(&self) -> SignRow {
        match *self {
            Self::Ring => SignRow {
                key: "ring",
                message: Some("key-ring"),
                of: Of::NOTHING,
                fit: Fit::of(Stitch::SC),
                stance: Stance::Turned,
                draw: |_, _| course::ring(),
                points: false,
                loose: false,
            },
            Self::ChainRing(chains) => SignRow {
                key: "ring-{count}",
                message: Some("key-chain-ring"),
                of: Of { count: chains, ..Of::NOTHING },
                fit: Fit::of(Stitch::SC),
                stance: Stance::Turned,
                draw: |of, _| course::chain_ring(of.count),
                points: false,
                loose: false,
            },
            Self::Start => SignRow {
                key: "start",
                message: Some("key-start"),
                of: Of::NOTHING,
                fit: Fit::of(Stitch::SC),
                stance: Stance::Turned,
                draw: |_, fit| course::start(fit),
                points: true,
                loose: false,
            },
            Self::Direction => SignRow {
                key: "way",
                message: Some("key-direction"),
                of: Of::NOTHING,
                fit: Fit::of(Stitch::SC),
                stance: Stance::Turned,
                draw: |_, _| course::direction(),
                points: true,
                loose: false,
            },
            Self::Stitch(stitch, loops) => SignRow {
                key: "{stitch}{loops}",
                message: None,
                of: Of { stitch, count: 1, loops },
                fit: Fit::of(stitch),
                stance: stance(stitch, loops),
                draw: |of, fit| stitches::single(of.stitch, of.loops, fit),
                points: matches!(stitch.row().build, Build::Linked | Build::Reverse),
                loose: stitch.row().build == Build::Chain,
            },
            Self::Increase(stitch, made, loops) => SignRow {
                key: "{stitch}-inc{count}{loops}",
                message: Some("key-increase"),
                of: Of { stitch, count: u32::from(made), loops },
                fit: Fit { spread: NEARER * f64::from(made.max(1) - 1), ..Fit::of(stitch) },
                stance: Stance::SharedFoot,
                draw: |of, fit| stitches::increase(of.stitch, of.few(), of.loops, fit),
                points: false,
                loose: false,
            },
            Self::Decrease(stitch, used, loops) => SignRow {
                key: "{stitch}-dec{count}{loops}",
                message: Some("key-decrease"),
                of: Of { stitch, count: u32::from(used), loops },
                fit: Fit { spread: f64::from(used.max(1) - 1), ..Fit::of(stitch) },
                stance: Stance::SharedHead,
                draw: |of, fit| stitches::decrease(of.stitch, of.few(), of.loops, fit),
                points: false,
                loose: false,
            },
            Self::Crossed(stitch, loops) => SignRow {
                key: "{stitch}-crossed{loops}",
                message: Some("key-crossed"),
                of: Of { stitch, count: 2, loops },
                fit: Fit::of(stitch),
                stance: Stance::SharedFoot,
                draw: |of, fit| stitches::crossed(of.stitch, of.loops, fit),
                points: false,
                loose: false,
            },
            Self::Fan(stitch, made) => SignRow {
                key: "{stitch}-fan{count}",
                message: Some("key-fan"),
                of: Of { stitch, count: u32::from(made), ..Of::NOTHING },
                fit: Fit::of(stitch),
                stance: Stance::Turned,
                draw: |of, fit| stitches::fan(of.stitch, of.few(), fit),
                points: false,
                loose: false,
            },
            Self::Space(chains) => SignRow {
                key: "space-{count}",
                message: Some("key-space"),
                of: Of { count: u32::from(chains), ..Of::NOTHING },
                fit: Fit::of(Stitch::SC),
                stance: Stance::Turned,
                draw: |of, _| course::space(of.few()),
                points: false,
                loose: false,
            },
            Self::TurningChain(chains) => SignRow {
                key: "turn-{count}",
                message: Some("key-turning-chain"),
                of: Of { count: u32::from(chains), ..Of::NOTHING },
                fit: Fit { height: 0.35 + 0.5 * f64::from(chains), ..Fit::of(Stitch::SC) },
                stance: Stance::Slanted,
                draw: |of, fit| course::turning_chain(of.few(), fit),
                points: false,
                loose: false,
            },
            Self::Join => SignRow {
                key: "join",
                message: Some("key-join"),
                of: Of::NOTHING,
                fit: Fit::of(Stitch::SC),
                stance: Stance::Turned,
                draw: |_, _| course::join(),
                points: false,
                loose: false,
            },
            Self::FastenOff => SignRow {
                key: "end",
                message: Some("key-fasten-off"),
                of: Of::NOTHING,
                fit: Fit::of(Stitch::SC),
                stance: Stance::Turned,
                draw: |_, _| course::fasten_off(),
                points: true,
                loose: false,
            },
        }
    }

    /// Every sign of the set in the order of the key: what a chart of anything may use.
    pub fn all() -> Vec<Self> {
        let mut all = vec![Self::Ring, Self::ChainRing(6), Self::Start, Self::Direction];
        all.extend(Stitch::all().map(|stitch| Self::Stitch(stitch, Loops::Both)));
        // Taller ones are shaped and worked under one loop in the same way, and the sheet stays one page.
        let shaped = || Stitch::all().filter(|stitch| stitch.is_plain_fabric() && stitch.row().steps <= 3);
        for loops in [Loops::Back, Loops::Front] {
            all.extend(shaped().filter(|stitch| stitch.row().basic).map(|stitch| Self::Stitch(stitch, loops)));
        }
        for count in [2, 3] {
            all.extend(shaped().map(|stitch| Self::Increase(stitch, count, Loops::Both)));
        }
        for count in [2, 3] {
            all.extend(shaped().map(|stitch| Self::Decrease(stitch, count, Loops::Both)));
        }
        let crossed = shaped().filter(|stitch| stitch.row().basic).map(|stitch| Self::Crossed(stitch, Loops::Both));
        all.extend(crossed);
        all.extend([Self::Fan(Stitch::DC, 5), Self::Space(3)]);
        all.extend([1, 2, 3].map(Self::TurningChain));
        all.extend([Self::Join, Self::FastenOff]);
        all
    }

    /// The one symbol that an operation is drawn as where its stitches share a foot or a head; nothing where every
    /// stitch has a symbol of its own.
    pub fn shared(op: &Op) -> Option<Self> {
        match (op.into, &op.made) {
            (Spot::Stitch, Made::Same(stitch, count @ 2..=3)) if op.consumed == 1 && stitch.is_plain_fabric() => {
                Some(Self::Increase(*stitch, *count as u8, op.loops))
            }
            (Spot::Together, Made::Same(stitch, 1)) => {
                Some(Self::Decrease(*stitch, op.consumed.clamp(2, 9) as u8, op.loops))
            }
            (Spot::Crossed, Made::Same(stitch, _)) => Some(Self::Crossed(*stitch, op.loops)),
            (Spot::Stitch | Spot::Together | Spot::Crossed | Spot::Space | Spot::Air | Spot::Skip, _) => None,
        }
    }

    /// Name of the symbol in a drawing: letters, figures and hyphens.
    pub fn key(&self) -> String {
        let SignRow { key, of, .. } = self.row();
        let loops = match of.loops {
            Loops::Both => "",
            Loops::Back => "-bl",
            Loops::Front => "-fl",
        };
        key.replace("{stitch}", of.stitch.row().id).replace("{count}", &of.count.to_string()).replace("{loops}", loops)
    }

    /// The room it is drawn in where nothing else is asked for.
    pub fn fit(&self) -> Fit {
        self.row().fit
    }

    /// Its drawing, in stitch units.
    pub fn symbol(&self, fit: &Fit) -> Symbol {
        let row = self.row();
        Symbol { loose: row.loose, ..(row.draw)(&row.of, fit) }
    }

    /// True where the sign points the way the work runs, and so is mirrored for the left hand.
    pub fn points(&self) -> bool {
        self.row().points
    }
}

impl SignRow {
    /// True where it shows several stitches that share a foot or a head.
    pub(in crate::drawing) fn is_shaped(&self) -> bool {
        matches!(self.stance, Stance::SharedFoot | Stance::SharedHead)
    }
}

/// How a stitch that leans is drawn. A cross is told by its slant alone unless there is an arc at its foot; a chain, a
/// dot and a picot have no bar that must lie level.
fn stance(stitch: Stitch, loops: Loops) -> Stance {
    match stitch.row().build {
        Build::Cross | Build::Loop | Build::Reverse if loops == Loops::Both => Stance::Turned,
        Build::Chain | Build::Slip | Build::Picot => Stance::Turned,
        Build::Cross
        | Build::Stem
        | Build::Post(_)
        | Build::Cluster
        | Build::Puff
        | Build::Bobble
        | Build::Popcorn
        | Build::Extended
        | Build::Long
        | Build::Spike
        | Build::Loop
        | Build::Reverse
        | Build::Linked => Stance::Slanted,
    }
}

#[cfg(test)]
mod tests {
    use std::collections::BTreeSet;

    use super::*;
    use crate::words::{Language, Words};

    #[test]
    fn every_row_answers_and_no_two_share_a_name() {
        let mut keys = BTreeSet::new();
        for sign in Sign::all() {
            let (row, key) = (sign.row(), sign.key());
            assert!(key.chars().all(|c| c.is_ascii_alphanumeric() || c == '-'), "{key}");
            assert!(keys.insert(key), "{sign:?} has the name of another");
            assert!(row.fit.height > 0.0 && row.fit.width > 0.0, "{sign:?} has no room");
            let symbol = sign.symbol(&row.fit);
            assert!(!symbol.paths.is_empty() && symbol.bounds.area() > 0.0, "{sign:?} draws nothing");
            for language in Language::ALL {
                let known = row.message.is_none_or(|message| Words::of(language).has(message));
                assert!(known, "{sign:?} is not explained in {language:?}");
            }
        }
    }

    #[test]
    fn the_set_shows_every_kind_of_sign() {
        // A new kind of sign can't be built before it stands here, nor pass before the set shows it.
        let kinds = Sign::all().into_iter().map(|sign| match sign {
            Sign::Ring => 0,
            Sign::ChainRing(_) => 1,
            Sign::Start => 2,
            Sign::Direction => 3,
            Sign::Stitch(..) => 4,
            Sign::Increase(..) => 5,
            Sign::Decrease(..) => 6,
            Sign::Fan(..) => 7,
            Sign::Space(_) => 8,
            Sign::TurningChain(_) => 9,
            Sign::Join => 10,
            Sign::FastenOff => 11,
            Sign::Crossed(..) => 12,
        });
        assert_eq!(kinds.collect::<BTreeSet<_>>(), (0..=12).collect());
    }

    #[test]
    fn what_lies_loose_says_so_in_its_symbol() {
        let chain = Sign::Stitch(Stitch::CH, Loops::Both);
        assert!(chain.symbol(&chain.fit()).loose);
        let single = Sign::Stitch(Stitch::SC, Loops::Both);
        assert!(!single.symbol(&single.fit()).loose);
    }
}
