//! The stitch table: one row a stitch, and everything the crate knows of it that is not a word of some language.
//!
//! To add a stitch, add a row to `ROWS`, its constant on [`Stitch`], and its names to the catalogues in `src/words/`.

/// A stitch of the table.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Stitch(u8);

/// Which loops of the stitch below the hook goes under.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Loops {
    /// Both, the plain case.
    #[default]
    Both,
    /// The back loop only: the fabric folds towards the maker.
    Back,
    /// The front loop only.
    Front,
}

/// The side of the fabric from which a post stitch goes round its stitch.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Side {
    /// Raised towards the maker.
    Front,
    /// Raised away from the maker.
    Back,
}

/// How a stitch is built, and so how its symbol is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Build {
    /// A chain: an open oval.
    Chain,
    /// A slip stitch: a filled dot.
    Slip,
    /// A single crochet: a cross.
    Cross,
    /// A tall stitch: a stem with a top bar and `overs − 1` slashes.
    Stem,
    /// A tall stitch round the post of the stitch below.
    Post(Side),
    /// Several part-worked stems in one place, closed together at the top.
    Cluster,
    /// Long loose loops in one place, closed together: an outline without slashes.
    Puff,
    /// Several stems in one place, closed together and pushed out: a fat cluster.
    Bobble,
    /// Several whole stems in one place, gathered under one chain.
    Popcorn,
    /// A little loop of chains on top of the round; adds nothing to the count.
    Picot,
}

/// One row of the stitch table. Ratios are to a single crochet of the same maker, by common practice.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct StitchRow {
    /// Short name used in design files and JSON: the US abbreviation in lower case. Also the key of its words.
    pub id: &'static str,
    /// Abbreviation in US terms.
    pub us: &'static str,
    /// Abbreviation in UK terms.
    pub uk: &'static str,
    /// Height against a single crochet.
    pub height: f64,
    /// Width against a single crochet.
    pub width: f64,
    /// Yarn in one stitch against a single crochet.
    pub yarn: f64,
    /// Yarn-overs before the hook goes in.
    pub overs: u8,
    /// Stems drawn.
    pub stems: u8,
    /// Chains that stand for the stitch at the start of a joined round.
    pub turning: u8,
    /// How many it counts for in a round.
    pub counts: u8,
    /// How it is built.
    pub build: Build,
}

const fn row(id: &'static str, us: &'static str, uk: &'static str, build: Build) -> StitchRow {
    StitchRow { id, us, uk, height: 1.0, width: 1.0, yarn: 1.0, overs: 0, stems: 1, turning: 1, counts: 1, build }
}

const fn tall(id: &'static str, us: &'static str, uk: &'static str, overs: u8, build: Build) -> StitchRow {
    let (height, yarn, turning) = match overs {
        1 => (1.5, 1.5, 2),
        2 => (2.0, 1.9, 3),
        3 => (3.0, 2.5, 4),
        _ => (4.0, 3.1, 5),
    };
    StitchRow { height, yarn, overs, turning, ..row(id, us, uk, build) }
}

const fn gathered(
    id: &'static str,
    us: &'static str,
    uk: &'static str,
    overs: u8,
    stems: u8,
    build: Build,
) -> StitchRow {
    let one = tall(id, us, uk, overs, build);
    StitchRow { stems, yarn: one.yarn * stems as f64 * 0.9, width: 1.2, ..one }
}

/// The table. Height ratios sc : hdc : dc : tr = 1 : 1.5 : 2 : 3 and yarn per stitch 1 : 1.5 : 1.9 are common practice.
/// A chain is as wide as a stitch: in filet work n chains bridge n stitches and the mesh stays square to the solid blocks
/// (common practice).
const ROWS: &[StitchRow] = &[
    StitchRow { height: 0.4, yarn: 0.45, ..row("ch", "ch", "ch", Build::Chain) },
    StitchRow { height: 0.3, yarn: 0.5, turning: 0, ..row("sl-st", "sl st", "ss", Build::Slip) },
    row("sc", "sc", "dc", Build::Cross),
    tall("hdc", "hdc", "htr", 1, Build::Stem),
    tall("dc", "dc", "tr", 2, Build::Stem),
    tall("tr", "tr", "dtr", 3, Build::Stem),
    tall("dtr", "dtr", "trtr", 4, Build::Stem),
    tall("fpdc", "FPdc", "FPtr", 2, Build::Post(Side::Front)),
    tall("bpdc", "BPdc", "BPtr", 2, Build::Post(Side::Back)),
    gathered("cluster", "3-dc cl", "3-tr cl", 2, 3, Build::Cluster),
    gathered("puff", "3-hdc puff", "3-htr puff", 1, 3, Build::Puff),
    gathered("bobble", "5-dc bobble", "5-tr bobble", 2, 5, Build::Bobble),
    gathered("popcorn", "5-dc pc", "5-tr pc", 2, 5, Build::Popcorn),
    StitchRow {
        height: 0.8,
        yarn: 1.6,
        counts: 0,
        turning: 0,
        ..row("picot", "ch-3 picot", "ch-3 picot", Build::Picot)
    },
];

impl Stitch {
    /// Chain.
    pub const CH: Self = Self(0);
    /// Slip stitch.
    pub const SL_ST: Self = Self(1);
    /// Single crochet.
    pub const SC: Self = Self(2);
    /// Half double crochet.
    pub const HDC: Self = Self(3);
    /// Double crochet.
    pub const DC: Self = Self(4);
    /// Treble.
    pub const TR: Self = Self(5);
    /// Double treble.
    pub const DTR: Self = Self(6);
    /// Front post double crochet.
    pub const FPDC: Self = Self(7);
    /// Back post double crochet.
    pub const BPDC: Self = Self(8);
    /// Three-dc cluster.
    pub const CLUSTER: Self = Self(9);
    /// Three-hdc puff.
    pub const PUFF: Self = Self(10);
    /// Five-dc bobble.
    pub const BOBBLE: Self = Self(11);
    /// Five-dc popcorn.
    pub const POPCORN: Self = Self(12);
    /// Three-chain picot.
    pub const PICOT: Self = Self(13);

    /// Every stitch of the table, in its order.
    pub fn all() -> impl Iterator<Item = Self> {
        (0..ROWS.len() as u8).map(Self)
    }

    /// The stitch of this short name, such as `sc`.
    pub fn by_id(id: &str) -> Option<Self> {
        Self::all().find(|stitch| stitch.row().id == id)
    }

    /// Its row.
    pub const fn row(self) -> &'static StitchRow {
        &ROWS[self.0 as usize]
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn constants_name_their_rows() {
        let named = [("ch", Stitch::CH), ("sc", Stitch::SC), ("tr", Stitch::TR), ("picot", Stitch::PICOT)];
        for (id, stitch) in named {
            assert_eq!(Stitch::by_id(id), Some(stitch));
        }
    }
}
