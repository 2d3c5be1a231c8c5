//! How stitches are built, and what follows from it for every stitch of a build.

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
    /// A tall stitch: a stem with a top bar and `steps − 1` slashes.
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
    /// A stitch with a chain between its foot and the rest of it, and so between that stitch and the next taller one.
    Extended,
    /// A stitch whose loop is drawn up long, with nothing more to it.
    Long,
    /// A stitch worked so many rounds further down than the others, over what stands there.
    Spike,
    /// A stitch with a long loop that hangs on the far side of the fabric.
    Loop,
    /// A stitch worked backwards, from left to right with the right hand: a corded edge.
    Reverse,
    /// A tall stitch without a yarn over: its first loop is drawn up through the stitch before it.
    Linked,
}

/// What follows from how a stitch is built.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct BuildRow {
    /// The messages that name its stitches stand under this key of the catalogues; under the id of each stitch where
    /// there is none.
    pub words: Option<&'static str>,
    /// How its stitches are spelled after the stitch they are built of, in the singular: `S` is any spelling of that
    /// stitch, `N` how many there are of it, as in `5-dc popcorn`.
    pub spellings: &'static [&'static str],
    /// True where the trade puts the spellings in the plural too; of post stitches it does that to the stitch inside.
    pub plural: bool,
    /// True where its stitches are built of no other.
    pub plain: bool,
    /// True where its stitches make fabric, and so are worked in swatches.
    pub fabric: bool,
}

impl Build {
    /// What follows from it.
    pub const fn row(self) -> BuildRow {
        let plain = BuildRow { words: None, spellings: &[], plural: false, plain: true, fabric: true };
        match self {
            Self::Chain | Self::Slip => BuildRow { fabric: false, ..plain },
            Self::Cross | Self::Stem => plain,
            Self::Post(Side::Front) => of("fp", &["fp S", "front post S"], false),
            Self::Post(Side::Back) => of("bp", &["bp S", "back post S"], false),
            Self::Cluster => of("cluster", &["N S cl", "N S cluster"], true),
            Self::Puff => of("puff", &["N S puff", "N S puff st", "N S puff stitch"], true),
            Self::Bobble => of("bobble", &["N S bo", "N S bobble"], true),
            Self::Popcorn => of("popcorn", &["N S pc", "N S popcorn"], true),
            Self::Extended => of("extended", &["e S", "ext S", "ex S", "extended S"], true),
            Self::Long => of("long", &["long S", "elongated S"], true),
            // How many rounds down is part of each name, so that no two share their words.
            Self::Spike => {
                let names: &[&str] = &["N rnd spike S", "N round spike S", "N row spike S"];
                BuildRow { words: None, fabric: false, ..of("spike", names, true) }
            }
            Self::Loop => of("loop", &[], true),
            Self::Reverse => BuildRow { fabric: false, ..of("reverse", &["r S", "rev S", "reverse S"], true) },
            Self::Linked => of("linked", &["linked S"], true),
            Self::Picot => {
                BuildRow { fabric: false, ..of("picot", &["S N p", "S N picot", "N S p", "N S picot"], true) }
            }
        }
    }
}

const fn of(words: &'static str, spellings: &'static [&'static str], plural: bool) -> BuildRow {
    BuildRow { words: Some(words), spellings, plural, plain: false, fabric: true }
}
