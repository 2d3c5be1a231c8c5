//! Kinds of pieces: one row each, with every answer that hangs on what is made.

/// What is made.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Kind {
    /// Worn on a head: sizes are head measurements, ease applies.
    Hat,
    /// A basket or bowl: sizes are finished circumferences.
    Basket,
    /// Flat work: a mat or mandala.
    Mat,
    /// A closed shape: a ball.
    Ball,
    /// A bowl: stands open, and holds things.
    Bowl,
    /// A bag: carried by its handles.
    Bag,
    /// A lampshade: hangs or stands with its top up, round a bulb.
    Lampshade,
    /// A cover: goes over a pot, a jar or a cushion from above.
    Cover,
    /// A visor or head band: worn on a head, open on top.
    Visor,
    /// A coaster: a small mat.
    Coaster,
    /// An ornament: closed, hung up.
    Ornament,
}

/// One figure of a size, as its table gives it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum SizeFigure {
    /// Circumference of the head it is made for.
    Head,
    /// Circumference that comes out.
    Around,
    /// By how much it is wider than the head.
    Ease,
    /// From the middle of the crown along the fabric to the edge, or to where a brim begins.
    Depth,
    /// Length of the brim along the fabric.
    Brim,
    /// Width across.
    Across,
    /// Height of the whole piece as it stands.
    Height,
    /// The same with its last part folded down.
    Folded,
    /// Hat size as labelled.
    HatSize,
}

/// All that is known of a kind.
#[derive(Debug)]
pub struct KindRow {
    /// Its word in the file.
    pub word: &'static str,
    /// True where it is worn on a head: sizes are heads, ease applies, and brims shade.
    pub worn: bool,
    /// The field that measures a size, with an example of its figure.
    pub measured: (&'static str, u32),
    /// True where the work begins at its foot, so that it is drawn turned over.
    pub from_the_foot: bool,
    /// True where all of it is wanted flat, written rounds too. Its circumference then says nothing of its rounds.
    pub flat: bool,
    /// True where it stands or lies on a table, which holds its flat parts level.
    pub rests: bool,
    /// True where a last part under the front loops folds down over the one before it.
    pub folds_down: bool,
    /// What the table of sizes gives of each, in this order.
    pub sizes: &'static [SizeFigure],
    /// True where it is closed and filled.
    pub stuffed: bool,
    /// True where it is hung up by a loop.
    pub hangs: bool,
    /// True where it is lit from within.
    pub glows: bool,
    /// Message that says how it is washed and dried into shape.
    pub dried: &'static str,
    /// Messages of the cautions that hold for every piece of the kind, whatever its size.
    pub cautions: &'static [&'static str],
}

/// What holds for a hat.
const WORN: KindRow = KindRow {
    word: "hat",
    worn: true,
    measured: ("head", 56),
    from_the_foot: false,
    flat: false,
    rests: false,
    folds_down: false,
    sizes: &[
        SizeFigure::Head,
        SizeFigure::Around,
        SizeFigure::Ease,
        SizeFigure::Depth,
        SizeFigure::Brim,
        SizeFigure::HatSize,
    ],
    stuffed: false,
    hangs: false,
    glows: false,
    dried: "page-dry-hat",
    cautions: &[],
};

static HAT: KindRow = WORN;
static VISOR: KindRow = KindRow {
    word: "visor",
    sizes: &[SizeFigure::Head, SizeFigure::Around, SizeFigure::Ease, SizeFigure::Brim],
    ..WORN
};

/// What holds for a piece that is not worn, where its row says nothing else.
const NOT_WORN: KindRow = KindRow {
    word: "",
    worn: false,
    measured: ("around", 80),
    from_the_foot: false,
    flat: false,
    rests: false,
    folds_down: false,
    sizes: &[SizeFigure::Across, SizeFigure::Around, SizeFigure::Height],
    stuffed: false,
    hangs: false,
    glows: false,
    dried: "page-dry-flat",
    cautions: &[],
};

static BASKET: KindRow = KindRow {
    word: "basket",
    from_the_foot: true,
    rests: true,
    folds_down: true,
    sizes: &[SizeFigure::Across, SizeFigure::Around, SizeFigure::Height, SizeFigure::Folded],
    dried: "page-dry-basket",
    cautions: &["page-care-heat"],
    ..NOT_WORN
};
static MAT: KindRow = KindRow {
    word: "mat",
    flat: true,
    rests: true,
    sizes: &[SizeFigure::Across, SizeFigure::Around],
    cautions: &["page-care-heat"],
    ..NOT_WORN
};
static BALL: KindRow = KindRow {
    word: "ball",
    stuffed: true,
    dried: "page-dry-ball",
    cautions: &["page-care-toy", "page-care-ends"],
    ..NOT_WORN
};

static BOWL: KindRow = KindRow {
    word: "bowl",
    from_the_foot: true,
    rests: true,
    sizes: &[SizeFigure::Across, SizeFigure::Around, SizeFigure::Height],
    dried: "page-dry-basket",
    cautions: &["page-care-heat"],
    ..NOT_WORN
};
static BAG: KindRow = KindRow {
    word: "bag",
    from_the_foot: true,
    rests: true,
    dried: "page-dry-flat",
    cautions: &["page-care-bag"],
    ..NOT_WORN
};
static LAMPSHADE: KindRow =
    KindRow { word: "lampshade", glows: true, dried: "page-dry-basket", cautions: &["page-care-lamp"], ..NOT_WORN };
static COVER: KindRow = KindRow { word: "cover", dried: "page-dry-basket", cautions: &["page-care-cover"], ..NOT_WORN };
static COASTER: KindRow = KindRow {
    word: "coaster",
    measured: ("around", 31),
    flat: true,
    rests: true,
    sizes: &[SizeFigure::Across, SizeFigure::Around],
    cautions: &["page-care-heat"],
    ..NOT_WORN
};
static ORNAMENT: KindRow = KindRow {
    word: "ornament",
    measured: ("around", 24),
    stuffed: true,
    hangs: true,
    dried: "page-dry-ball",
    cautions: &["page-care-ornament", "page-care-ends"],
    ..NOT_WORN
};

impl Kind {
    /// All of them, in the order in which a maker is told of them.
    pub const ALL: [Self; 11] = [
        Self::Hat,
        Self::Visor,
        Self::Basket,
        Self::Bowl,
        Self::Bag,
        Self::Mat,
        Self::Coaster,
        Self::Ball,
        Self::Ornament,
        Self::Lampshade,
        Self::Cover,
    ];

    /// Its row.
    pub fn row(self) -> &'static KindRow {
        match self {
            Self::Hat => &HAT,
            Self::Basket => &BASKET,
            Self::Mat => &MAT,
            Self::Ball => &BALL,
            Self::Bowl => &BOWL,
            Self::Bag => &BAG,
            Self::Lampshade => &LAMPSHADE,
            Self::Cover => &COVER,
            Self::Visor => &VISOR,
            Self::Coaster => &COASTER,
            Self::Ornament => &ORNAMENT,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::common::solved;
    use crate::design::{STARTER, read};
    use crate::report::Report;

    /// Which way up a piece is drawn follows from where its work begins: a shade hangs from its top, a bowl stands on it.
    #[test]
    fn what_hangs_is_drawn_from_its_top_and_what_stands_from_its_foot() {
        let (stands, hangs) = ([Kind::Basket, Kind::Bowl, Kind::Bag], [Kind::Lampshade, Kind::Cover, Kind::Visor]);
        assert!(stands.iter().all(|kind| kind.row().from_the_foot && kind.row().rests));
        assert!(hangs.iter().all(|kind| !kind.row().from_the_foot && !kind.row().rests && !kind.row().stuffed));
    }

    #[test]
    fn every_kind_is_read_by_its_word_and_solved() {
        let words: Vec<&str> = Kind::ALL.iter().map(|kind| kind.row().word).collect();
        assert!(STARTER.contains(&format!("# {}", words.join(" | "))), "{words:?}");
        for kind in Kind::ALL {
            let (field, figure) = kind.row().measured;
            let text = format!(
                "title: T\nkind: {}\nswatch: {{stitch: sc, stitches: 16, rounds: 17, width: 11.3, height: 11.1}}\n\
                 sizes: {{one: {{{field}: {figure}}}}}\nparts: [crown]\n",
                kind.row().word
            );
            let mut report = Report::new();
            let design = read(&text, &mut report).unwrap_or_else(|| panic!("{text}{report:#?}"));
            assert_eq!((design.kind, design.sizes[0].head.is_some()), (kind, kind.row().worn));
            assert_eq!(solved(&design).sizes.len(), 1, "{text}");
        }
    }
}
