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
    /// Message that says how it is washed and dried into shape.
    pub dried: &'static str,
    /// Messages of the cautions that hold for every piece of the kind, whatever its size.
    pub cautions: &'static [&'static str],
}

static HAT: KindRow = KindRow {
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
    dried: "page-dry-hat",
    cautions: &[],
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

impl Kind {
    /// All of them, in the order in which a maker is told of them.
    pub const ALL: [Self; 4] = [Self::Hat, Self::Basket, Self::Mat, Self::Ball];

    /// Its row.
    pub fn row(self) -> &'static KindRow {
        match self {
            Self::Hat => &HAT,
            Self::Basket => &BASKET,
            Self::Mat => &MAT,
            Self::Ball => &BALL,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::common::solved;
    use crate::design::{STARTER, read};
    use crate::report::Report;

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
