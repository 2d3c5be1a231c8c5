//! The stitch table: one row a stitch, and everything the crate knows of it that is not a word of some language.
//!
//! To add a stitch, add a row to `ROWS`; a plain one needs its names in the catalogues of `src/words/` as well. Stitches
//! built of others (post stitches, clusters, puffs, bobbles, popcorns, picots, extended and spike stitches) take their names, their spellings and their
//! symbol from how they are built.

use super::{Build, Side, Terms};

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

/// What a stitch is called in one set of terms.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Names {
    /// Its abbreviation.
    pub short: &'static str,
    /// Its whole name, then whatever else it is called: in the singular, capitals, hyphens and blanks aside. Design
    /// files and written rounds may use any of them.
    pub also: &'static [&'static str],
}

/// One row of the stitch table. Ratios are to a single crochet of the same maker, by common practice.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct StitchRow {
    /// Short name used in design files and JSON: the US abbreviation in lower case. Also the key of its words.
    pub id: &'static str,
    /// Names in US terms.
    pub us: Names,
    /// Names in UK terms.
    pub uk: Names,
    /// Height against a single crochet.
    pub height: f64,
    /// Width against a single crochet.
    pub width: f64,
    /// Yarn in one stitch against a single crochet.
    pub yarn: f64,
    /// Thickness of its fabric as a share of the width of the stitch.
    pub thickness: f64,
    /// Height of a round over width of a stitch: the least and the most that published gauges show. Nothing where none
    /// are published.
    pub ratio: Option<(f64, f64)>,
    /// Length of the yarn in one stitch over its width. Nothing where it has not been measured.
    pub held: Option<f64>,
    /// Steps of height: 0 a single crochet, 1 half double, 2 double, 3 treble and so on. From a double crochet on one more
    /// than the yarn-overs before the hook goes in.
    pub steps: u8,
    /// Stems drawn; the chains of a picot.
    pub stems: u8,
    /// Chains that stand for the stitch at the start of a joined round.
    pub turning: u8,
    /// How many it counts for in a round.
    pub counts: u8,
    /// True for the basic stitches that a first project is worked in.
    pub basic: bool,
    /// How it is built.
    pub build: Build,
}

const fn names(short: &'static str, also: &'static [&'static str]) -> Names {
    Names { short, also }
}

const fn row(id: &'static str, us: Names, uk: Names, build: Build) -> StitchRow {
    StitchRow {
        id,
        us,
        uk,
        height: 1.0,
        width: 1.0,
        yarn: 1.0,
        thickness: THICK,
        ratio: None,
        held: None,
        steps: 0,
        stems: 1,
        turning: 1,
        counts: 1,
        basic: false,
        build,
    }
}

/// A stitch of so many steps, a single crochet among them. Heights and yarn are common practice; a stitch of a step that
/// isn't here does not compile.
const fn tall(id: &'static str, us: Names, uk: Names, steps: u8, build: Build) -> StitchRow {
    let (height, yarn, turning) = match steps {
        0 => (1.0, 1.0, 1),
        1 => (1.5, 1.5, 2),
        2 => (2.0, 1.9, 3),
        3 => (3.0, 2.5, 4),
        4 => (4.0, 3.1, 5),
        5 => (5.0, 3.7, 6),
        _ => panic!("say how high a stitch of so many steps is"),
    };
    StitchRow { height, yarn, steps, turning, ..row(id, us, uk, build) }
}

/// A plain stitch that fabric is made of.
///
/// Ratios: sc 0.85–1.11, hdc about 1.45, dc 1.7–2.0 in published gauges, with a tenth of room; from tr on by the usual
/// heights. Yarn held: 10.6, 15.7 and 20.4 inches to the inch of single row measured in medium yarn with a 5 mm hook; tr
/// by the usual 2.5 times sc. Thickness: fabrics are 0.4 to 0.6 of a stitch width thick, and the thinner for their width
/// the longer their posts are (common practice); the shares in between are our judgement.
const fn plain(id: &'static str, us: Names, uk: Names, steps: u8) -> StitchRow {
    let build = if steps == 0 { Build::Cross } else { Build::Stem };
    let (ratio, held, thickness) = match steps {
        0 => ((0.77, 1.22), Some(10.6), THICK),
        1 => ((1.1, 1.75), Some(15.7), 0.56),
        2 => ((1.5, 2.3), Some(20.4), 0.52),
        3 => ((2.1, 3.4), Some(26.5), 0.48),
        4 => ((2.8, 4.6), None, 0.44),
        5 => ((3.5, 5.8), None, THIN),
        _ => panic!("say what gauges of a stitch of so many steps show"),
    };
    let one = tall(id, us, uk, steps, build);
    StitchRow { ratio: Some(ratio), held, thickness, basic: steps <= 2, ..one }
}

/// A post stitch: raised, and so as thick as fabric gets.
const fn post(id: &'static str, us: &'static str, uk: &'static str, steps: u8, side: Side) -> StitchRow {
    tall(id, names(us, &[]), names(uk, &[]), steps, Build::Post(side))
}

/// Several stems of so many steps in one place, pushed out of the fabric, which is as thick as it gets beside them.
const fn gathered(id: &'static str, us: Names, uk: Names, of: (u8, u8), build: Build) -> StitchRow {
    let (stems, steps) = of;
    let one = tall(id, us, uk, steps, build);
    StitchRow { stems, yarn: one.yarn * stems as f64 * 0.9, width: 1.2, ..one }
}

const fn picot(id: &'static str, own: Names, chains: u8) -> StitchRow {
    let one = row(id, own, own, Build::Picot);
    let thickness = THIN;
    StitchRow { stems: chains, height: 0.8, yarn: 0.25 + 0.45 * chains as f64, counts: 0, turning: 0, thickness, ..one }
}

/// An extended stitch: halfway in height between the stitch and the next taller one (that it lies between them is common
/// practice, how far is our judgement), with the yarn of a chain more.
const fn extended(id: &'static str, us: &'static str, uk: &'static str, steps: u8) -> StitchRow {
    let one = tall(id, names(us, &[]), names(uk, &[]), steps, Build::Extended);
    let next = tall(id, names(us, &[]), names(uk, &[]), steps + 1, Build::Extended);
    StitchRow { height: (one.height + next.height) / 2.0, yarn: one.yarn + 0.3, ..one }
}

/// A single crochet over so many rounds below, whose long loops lie on the fabric.
const fn spike(id: &'static str, us: Names, uk: Names, rounds: u8) -> StitchRow {
    let one = tall(id, us, uk, 0, Build::Spike);
    StitchRow { stems: rounds, yarn: 1.0 + 0.5 * rounds as f64, ..one }
}

/// The thickest and the thinnest that a fabric is, as a share of the width of its stitch (common practice).
const THICK: f64 = 0.6;
const THIN: f64 = 0.4;

const CHAIN: Names = names("ch", &["chain"]);
const LOOP: Names = names("lp st", &["loop stitch", "loop st", "lpst"]);
const CRAB: &[&str] = &["crab stitch", "crab st"];
const CLUSTER: &[&str] = &["cluster", "cl"];
const PUFF: &[&str] = &["puff", "puff st", "puff stitch", "pf", "pf st"];
const BOBBLE: &[&str] = &["bobble", "bo"];
const POPCORN: &[&str] = &["popcorn", "pc", "pc st", "popcorn st", "popcorn stitch", "pop"];

/// The table. Height ratios sc : hdc : dc : tr = 1 : 1.5 : 2 : 3 and yarn per stitch 1 : 1.5 : 1.9 are common practice.
/// A chain is as wide as a stitch: in filet work n chains bridge n stitches and the mesh stays square to the solid blocks
/// (common practice).
const ROWS: &[StitchRow] = &[
    StitchRow { height: 0.4, yarn: 0.45, thickness: THIN, basic: true, ..row("ch", CHAIN, CHAIN, Build::Chain) },
    StitchRow {
        height: 0.3,
        yarn: 0.5,
        turning: 0,
        basic: true,
        ..row(
            "sl-st",
            names("sl st", &["slip stitch", "slip st", "sl stitch", "slst", "ss"]),
            names("ss", &["slip stitch", "slip st", "sl stitch", "slst", "sl st"]),
            Build::Slip,
        )
    },
    plain("sc", names("sc", &["single crochet"]), names("dc", &["double crochet"]), 0),
    plain(
        "hdc",
        names("hdc", &["half double crochet", "half double"]),
        names("htr", &["half treble", "half treble crochet"]),
        1,
    ),
    plain("dc", names("dc", &["double crochet"]), names("tr", &["treble", "treble crochet"]), 2),
    plain(
        "tr",
        names("tr", &["treble", "treble crochet", "trc"]),
        names("dtr", &["double treble", "double treble crochet"]),
        3,
    ),
    plain(
        "dtr",
        names("dtr", &["double treble", "double treble crochet"]),
        names("trtr", &["triple treble", "triple treble crochet"]),
        4,
    ),
    plain(
        "trtr",
        names("trtr", &["triple treble", "triple treble crochet"]),
        names("qtr", &["quadruple treble", "quadruple treble crochet", "quad tr"]),
        5,
    ),
    post("fpsc", "FPsc", "FPdc", 0, Side::Front),
    post("bpsc", "BPsc", "BPdc", 0, Side::Back),
    post("fphdc", "FPhdc", "FPhtr", 1, Side::Front),
    post("bphdc", "BPhdc", "BPhtr", 1, Side::Back),
    post("fpdc", "FPdc", "FPtr", 2, Side::Front),
    post("bpdc", "BPdc", "BPtr", 2, Side::Back),
    post("fptr", "FPtr", "FPdtr", 3, Side::Front),
    post("bptr", "BPtr", "BPdtr", 3, Side::Back),
    gathered("cluster2", names("2-dc cl", &[]), names("2-tr cl", &[]), (2, 2), Build::Cluster),
    gathered("cluster", names("3-dc cl", CLUSTER), names("3-tr cl", CLUSTER), (3, 2), Build::Cluster),
    gathered("cluster4", names("4-dc cl", &[]), names("4-tr cl", &[]), (4, 2), Build::Cluster),
    gathered("tr-cluster2", names("2-tr cl", &[]), names("2-dtr cl", &[]), (2, 3), Build::Cluster),
    gathered("tr-cluster", names("3-tr cl", &[]), names("3-dtr cl", &[]), (3, 3), Build::Cluster),
    gathered("puff2", names("2-hdc puff", &[]), names("2-htr puff", &[]), (2, 1), Build::Puff),
    gathered("puff", names("3-hdc puff", PUFF), names("3-htr puff", PUFF), (3, 1), Build::Puff),
    gathered("puff4", names("4-hdc puff", &[]), names("4-htr puff", &[]), (4, 1), Build::Puff),
    gathered("bobble3", names("3-dc bobble", &[]), names("3-tr bobble", &[]), (3, 2), Build::Bobble),
    gathered("bobble4", names("4-dc bobble", &[]), names("4-tr bobble", &[]), (4, 2), Build::Bobble),
    gathered("bobble", names("5-dc bobble", BOBBLE), names("5-tr bobble", BOBBLE), (5, 2), Build::Bobble),
    gathered("popcorn3", names("3-dc pc", &[]), names("3-tr pc", &[]), (3, 2), Build::Popcorn),
    gathered("popcorn4", names("4-dc pc", &[]), names("4-tr pc", &[]), (4, 2), Build::Popcorn),
    gathered("popcorn", names("5-dc pc", POPCORN), names("5-tr pc", POPCORN), (5, 2), Build::Popcorn),
    extended("esc", "esc", "edc", 0),
    extended("ehdc", "ehdc", "ehtr", 1),
    extended("edc", "edc", "etr", 2),
    // As tall as a half double crochet, by the loop alone.
    StitchRow {
        height: 1.5,
        yarn: 1.3,
        ..tall("long-sc", names("long sc", &[]), names("long dc", &[]), 0, Build::Long)
    },
    spike(
        "spike",
        names("spike sc", &["spike single crochet", "spike stitch", "spike st", "spike"]),
        names("spike dc", &["spike double crochet", "spike stitch", "spike st", "spike"]),
        1,
    ),
    spike("spike2", names("2-rnd spike sc", &[]), names("2-rnd spike dc", &[]), 2),
    spike("spike3", names("3-rnd spike sc", &[]), names("3-rnd spike dc", &[]), 3),
    // The loop takes about twice the yarn of the stitch itself (common practice).
    StitchRow { yarn: 3.0, ..tall("loop-st", LOOP, LOOP, 0, Build::Loop) },
    tall("rsc", names("rsc", CRAB), names("rdc", CRAB), 0, Build::Reverse),
    StitchRow { yarn: 1.7, ..tall("linked-dc", names("linked dc", &[]), names("linked tr", &[]), 2, Build::Linked) },
    picot("picot", names("ch-3 picot", &["picot", "p"]), 3),
    picot("picot4", names("ch-4 picot", &[]), 4),
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
        if self.is_plain() {
            return None;
        }
        if self.row().build == Build::Picot {
            return Some(Self::CH);
        }
        Self::all().find(|stitch| stitch.is_plain_fabric() && stitch.row().steps == self.row().steps)
    }

    /// True where it is built of no other stitch.
    pub const fn is_plain(self) -> bool {
        self.row().build.row().plain
    }

    /// True where fabric is made of it, and so a swatch can be.
    pub const fn makes_fabric(self) -> bool {
        self.row().build.row().fabric
    }

    /// True for single crochet and the taller stitches after it: plain, and what fabric is made of.
    pub const fn is_plain_fabric(self) -> bool {
        self.is_plain() && self.makes_fabric()
    }

    /// What it is called in these terms.
    pub const fn names(self, terms: Terms) -> &'static Names {
        match terms {
            Terms::Us => &self.row().us,
            Terms::Uk => &self.row().uk,
        }
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
            let same = |other: &Stitch| {
                let alike = |terms| other.names(terms).short == stitch.names(terms).short;
                alike(Terms::Us) || alike(Terms::Uk)
            };
            assert_eq!(Stitch::all().filter(same).count(), 1, "{}", stitch.row().id);
        }
    }

    #[test]
    fn stitches_are_built_of_stitches_of_the_table() {
        assert_eq!(Stitch::by_id("bphdc").and_then(Stitch::built_of), Some(Stitch::HDC));
        assert_eq!(Stitch::by_id("tr-cluster2").and_then(Stitch::built_of), Some(Stitch::TR));
        assert_eq!(Stitch::PUFF.built_of(), Some(Stitch::HDC));
        assert_eq!(Stitch::PICOT.built_of(), Some(Stitch::CH));
        assert_eq!(Stitch::DTR.built_of(), None);
        for stitch in Stitch::all() {
            assert_eq!(stitch.is_plain(), stitch.built_of().is_none(), "{}", stitch.row().id);
        }
    }

    #[test]
    fn every_row_is_a_stitch_that_can_be_made() {
        for stitch in Stitch::all() {
            let row = stitch.row();
            let sizes = [row.height, row.yarn, row.thickness];
            assert!(sizes.iter().all(|size| *size > 0.0 && size.is_finite()) && row.stems > 0, "{}", row.id);
            assert!((THIN..=THICK).contains(&row.thickness), "{} is no fabric", row.id);
            assert_eq!(row.ratio.is_some(), stitch.is_plain_fabric(), "{}", row.id);
            assert!(!row.basic || stitch.is_plain(), "{} is built of others and no basic stitch", row.id);
            let (usual, of_its_own) = (row.height / row.width, stitch.is_plain_fabric());
            let fits = row.ratio.is_some_and(|(least, most)| (least..=most).contains(&usual));
            assert!(!of_its_own || fits, "{}: its own height is unusual", row.id);
        }
    }

    #[test]
    fn taller_stitches_hold_more_yarn_and_make_thinner_fabric_for_their_width() {
        let plain: Vec<&StitchRow> = Stitch::all().filter(|it| it.is_plain_fabric()).map(|it| it.row()).collect();
        for pair in plain.windows(2) {
            assert!(pair[0].steps + 1 == pair[1].steps && pair[0].turning + 1 == pair[1].turning, "{}", pair[1].id);
            assert!(pair[0].height < pair[1].height && pair[0].yarn < pair[1].yarn, "{}", pair[1].id);
            assert!(pair[0].thickness > pair[1].thickness, "{}", pair[1].id);
            assert!(pair[0].ratio < pair[1].ratio, "{}", pair[1].id);
        }
    }
}
