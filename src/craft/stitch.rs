//! The stitch table: one row a stitch, and everything the crate knows of it that is not a word of some language.
//!
//! To add a stitch, add a row to `ROWS`. Stitches built of others (post stitches, clusters, puffs, bobbles, popcorns,
//! picots) take their names, their spellings and their symbol from how they are built; a stitch of a new build needs its
//! names in the catalogues of `src/words/` and its drawing as well.

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
    /// Stems drawn; the chains of a picot.
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

const fn post(id: &'static str, us: &'static str, uk: &'static str, overs: u8, side: Side) -> StitchRow {
    match overs {
        0 => row(id, us, uk, Build::Post(side)),
        _ => tall(id, us, uk, overs, Build::Post(side)),
    }
}

const fn gathered(id: &'static str, us: &'static str, uk: &'static str, of: (u8, u8), build: Build) -> StitchRow {
    let (stems, overs) = of;
    let one = tall(id, us, uk, overs, build);
    StitchRow { stems, yarn: one.yarn * stems as f64 * 0.9, width: 1.2, ..one }
}

const fn picot(id: &'static str, name: &'static str, chains: u8) -> StitchRow {
    let one = row(id, name, name, Build::Picot);
    StitchRow { stems: chains, height: 0.8, yarn: 0.25 + 0.45 * chains as f64, counts: 0, turning: 0, ..one }
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
    post("fpsc", "FPsc", "FPdc", 0, Side::Front),
    post("bpsc", "BPsc", "BPdc", 0, Side::Back),
    post("fphdc", "FPhdc", "FPhtr", 1, Side::Front),
    post("bphdc", "BPhdc", "BPhtr", 1, Side::Back),
    post("fpdc", "FPdc", "FPtr", 2, Side::Front),
    post("bpdc", "BPdc", "BPtr", 2, Side::Back),
    post("fptr", "FPtr", "FPdtr", 3, Side::Front),
    post("bptr", "BPtr", "BPdtr", 3, Side::Back),
    gathered("cluster2", "2-dc cl", "2-tr cl", (2, 2), Build::Cluster),
    gathered("cluster", "3-dc cl", "3-tr cl", (3, 2), Build::Cluster),
    gathered("cluster4", "4-dc cl", "4-tr cl", (4, 2), Build::Cluster),
    gathered("tr-cluster2", "2-tr cl", "2-dtr cl", (2, 3), Build::Cluster),
    gathered("tr-cluster", "3-tr cl", "3-dtr cl", (3, 3), Build::Cluster),
    gathered("puff2", "2-hdc puff", "2-htr puff", (2, 1), Build::Puff),
    gathered("puff", "3-hdc puff", "3-htr puff", (3, 1), Build::Puff),
    gathered("puff4", "4-hdc puff", "4-htr puff", (4, 1), Build::Puff),
    gathered("bobble3", "3-dc bobble", "3-tr bobble", (3, 2), Build::Bobble),
    gathered("bobble4", "4-dc bobble", "4-tr bobble", (4, 2), Build::Bobble),
    gathered("bobble", "5-dc bobble", "5-tr bobble", (5, 2), Build::Bobble),
    gathered("popcorn3", "3-dc pc", "3-tr pc", (3, 2), Build::Popcorn),
    gathered("popcorn4", "4-dc pc", "4-tr pc", (4, 2), Build::Popcorn),
    gathered("popcorn", "5-dc pc", "5-tr pc", (5, 2), Build::Popcorn),
    picot("picot", "ch-3 picot", 3),
    picot("picot4", "ch-4 picot", 4),
];

impl Stitch {
    /// Chain.
    pub const CH: Self = Self::named("ch");
    /// Slip stitch.
    pub const SL_ST: Self = Self::named("sl-st");
    /// Single crochet.
    pub const SC: Self = Self::named("sc");
    /// Half double crochet.
    pub const HDC: Self = Self::named("hdc");
    /// Double crochet.
    pub const DC: Self = Self::named("dc");
    /// Treble.
    pub const TR: Self = Self::named("tr");
    /// Double treble.
    pub const DTR: Self = Self::named("dtr");
    /// Front post double crochet.
    pub const FPDC: Self = Self::named("fpdc");
    /// Back post double crochet.
    pub const BPDC: Self = Self::named("bpdc");
    /// Three-dc cluster.
    pub const CLUSTER: Self = Self::named("cluster");
    /// Three-hdc puff.
    pub const PUFF: Self = Self::named("puff");
    /// Five-dc bobble.
    pub const BOBBLE: Self = Self::named("bobble");
    /// Five-dc popcorn.
    pub const POPCORN: Self = Self::named("popcorn");
    /// Three-chain picot.
    pub const PICOT: Self = Self::named("picot");

    /// The stitch of a row that stands in the table: anything else does not compile.
    const fn named(id: &str) -> Self {
        let wanted = id.as_bytes();
        let mut index = 0;
        while index < ROWS.len() {
            let known = ROWS[index].id.as_bytes();
            let mut at = 0;
            while at < wanted.len() && at < known.len() && wanted[at] == known[at] {
                at += 1;
            }
            if at == wanted.len() && at == known.len() {
                return Self(index as u8);
            }
            index += 1;
        }
        panic!("no such row")
    }

    /// Every stitch of the table, in its order.
    pub fn all() -> impl Iterator<Item = Self> {
        (0..ROWS.len() as u8).map(Self)
    }

    /// The stitch of this short name, such as `sc`.
    pub fn by_id(id: &str) -> Option<Self> {
        Self::all().find(|stitch| stitch.row().id == id)
    }

    /// The stitch it is built of: the one that a post stitch is a form of, that the stems of a cluster are, the chain of
    /// a picot. Nothing for plain stitches.
    pub fn built_of(self) -> Option<Self> {
        let overs = match self.row().build {
            Build::Chain | Build::Slip | Build::Cross | Build::Stem => return None,
            Build::Picot => return Some(Self::CH),
            Build::Post(_) | Build::Cluster | Build::Puff | Build::Bobble | Build::Popcorn => self.row().overs,
        };
        let plain = |row: &StitchRow| matches!(row.build, Build::Cross | Build::Stem) && row.overs == overs;
        Self::all().find(|stitch| plain(stitch.row()))
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
    fn every_id_and_abbreviation_is_one_stitch() {
        for stitch in Stitch::all() {
            assert_eq!(Stitch::by_id(stitch.row().id), Some(stitch));
            let same = |other: &Stitch| other.row().us == stitch.row().us || other.row().uk == stitch.row().uk;
            assert_eq!(Stitch::all().filter(same).count(), 1, "{}", stitch.row().us);
        }
    }

    #[test]
    fn stitches_are_built_of_stitches_of_the_table() {
        assert_eq!(Stitch::by_id("bphdc").and_then(Stitch::built_of), Some(Stitch::HDC));
        assert_eq!(Stitch::by_id("tr-cluster2").and_then(Stitch::built_of), Some(Stitch::TR));
        assert_eq!(Stitch::PUFF.built_of(), Some(Stitch::HDC));
        assert_eq!(Stitch::PICOT.built_of(), Some(Stitch::CH));
        assert_eq!(Stitch::DTR.built_of(), None);
    }
}
