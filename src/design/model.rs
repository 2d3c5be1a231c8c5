//! The design as resolved: nothing optional that has a default, lengths in millimetres.

use super::heads::HeadSource;
use super::kinds::Kind;
use super::shapes::Shape;
use crate::craft::{Loops, Multiple, OwnStitch, Stitch, Terms};
use crate::report::Place;
use crate::units::{Gauge, Mm, Units};
use crate::words::{Language, Words};

/// A value and the place where the file says it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Said<T> {
    /// The value.
    pub value: T,
    /// Where it stands; nothing for a default.
    pub place: Option<Place>,
}

/// One value for every size, in the order of [`Design::sizes`].
pub type PerSize<T> = Vec<T>;

/// A design, ready to be solved.
#[derive(Clone, Debug, PartialEq)]
pub struct Design {
    /// What the piece is called.
    pub title: Said<String>,
    /// Who made the design, for the cover.
    pub designer: Option<String>,
    /// A line or two for the cover.
    pub about: Option<String>,
    /// What the author adds: notes, materials, assembly, whose it is.
    pub own: OwnWords,
    /// A photograph for the cover.
    pub photo: Option<Photograph>,
    /// What the piece is, so that fit hints, ease and cautions fit it.
    pub kind: Kind,
    /// Units of lengths in the printed pages (the other system stands beside them).
    pub units: Units,
    /// Stitch names of the printed pages.
    pub terms: Terms,
    /// Language of the printed pages.
    pub language: Language,
    /// The hand that holds the hook.
    pub hand: Hand,
    /// Joined rounds or a spiral.
    pub work: Work,
    /// The yarn.
    pub yarn: Yarn,
    /// Colours to try, besides those of the yarn.
    pub palettes: Vec<Palette>,
    /// Stitches that rounds may name beside those of the table: the maker's own, each after those it is built of.
    pub stitches: Vec<OwnStitch>,
    /// The hook, by its diameter.
    pub hook: Option<Mm>,
    /// The swatches, the first for the main stitch.
    pub swatches: Vec<Swatch>,
    /// The sizes, smallest first as written.
    pub sizes: Vec<Size>,
    /// Finished circumference over head circumference, less one; below zero fits close.
    pub ease: Said<f64>,
    /// The parts in working order.
    pub parts: Vec<Part>,
    /// How the last round ends.
    pub finish: Said<Finish>,
    /// What the choice of counts prefers.
    pub prefer: Preference,
    /// How far a round may stray from its target circumference before it counts as far.
    pub tolerance: Tolerance,
    /// How shaping is placed from round to round.
    pub shaping: Shaping,
}

/// What an author adds, as it is printed.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct OwnWords {
    /// Notes on the whole pattern.
    pub notes: Vec<String>,
    /// What is needed beside yarn, hook and the usual tools.
    pub materials: Vec<Material>,
    /// How it is put together, step by step.
    pub assembly: Vec<String>,
    /// How hard it is, 1 basic to 4 complex; nothing where the stitches decide.
    pub level: Option<u8>,
    /// For whom it was made.
    pub dedication: Option<String>,
    /// Whose it is.
    pub copyright: Option<String>,
    /// What may be done with it.
    pub licence: Option<String>,
    /// Where questions go.
    pub contact: Option<String>,
    /// Which version it is, and of when.
    pub version: Option<String>,
}

/// Something needed beside the yarn.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Material {
    /// What it is.
    pub kind: MaterialKind,
    /// How much, how large, of what.
    pub words: String,
}

/// What a material is, so that it is called in every language and its cautions are printed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum MaterialKind {
    /// What fills it.
    Stuffing,
    /// Eyes that are pushed through the fabric and locked behind it.
    Eyes,
    /// Buttons, beads and bells.
    Buttons,
    /// Wire.
    Wire,
    /// Handles.
    Handles,
    /// Ribbons, cords and ties.
    Ribbon,
    /// Lining.
    Lining,
    /// A frame or ring that holds its shape, such as that of a lampshade.
    Frame,
    /// Anything else.
    Other,
}

impl MaterialKind {
    /// All of them.
    pub const ALL: [Self; 9] = [
        Self::Stuffing,
        Self::Eyes,
        Self::Buttons,
        Self::Wire,
        Self::Handles,
        Self::Ribbon,
        Self::Lining,
        Self::Frame,
        Self::Other,
    ];

    /// Its word in the file; `page-material-` and this is its message.
    pub const fn word(self) -> &'static str {
        match self {
            Self::Stuffing => "stuffing",
            Self::Eyes => "eyes",
            Self::Buttons => "buttons",
            Self::Wire => "wire",
            Self::Handles => "handles",
            Self::Ribbon => "ribbon",
            Self::Lining => "lining",
            Self::Frame => "frame",
            Self::Other => "other",
        }
    }

    /// Messages of the cautions that go with it.
    pub const fn cautions(self) -> &'static [&'static str] {
        match self {
            Self::Eyes | Self::Buttons => &["page-care-small"],
            Self::Wire | Self::Frame => &["page-care-wire"],
            Self::Ribbon => &["page-care-cords"],
            Self::Stuffing | Self::Handles | Self::Lining | Self::Other => &[],
        }
    }
}

/// A note of the author's on a part.
#[derive(Clone, Debug, PartialEq)]
pub struct Note {
    /// Where it stands.
    pub round: NoteRound,
    /// The name of the size that it is for, where it isn't for all.
    pub size: Option<Said<String>>,
    /// The note.
    pub words: Said<String>,
}

/// Where in a part a note stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum NoteRound {
    /// Above its rounds.
    Part,
    /// At this round of the part, from 1 on.
    Nth(u32),
    /// At its last round.
    Last,
}

impl Design {
    /// The words of its printed pages, its own stitches among them.
    pub fn words(&self) -> Words {
        Words::of(self.language).naming(&self.stitches)
    }

    /// The same for one of its sizes, by its index, alone: without sizes where it has none of this index.
    #[must_use]
    pub fn of_size(mut self, size: usize) -> Self {
        self.sizes = self.sizes.into_iter().skip(size).take(1).collect();
        for part in &mut self.parts {
            match &mut part.body {
                Body::Profile(profile) => {
                    profile.shape = profile.shape.of_size(size);
                    profile.start = one_of(&profile.start, size);
                    profile.folded = profile.folded.as_ref().map(|folded| one_of(folded, size));
                }
                Body::Written(lines) => *lines = one_of(lines, size),
            }
        }
        self
    }
}

/// What belongs to one size.
fn one_of<T: Clone>(each: &PerSize<T>, size: usize) -> PerSize<T> {
    each.get(size).cloned().into_iter().collect()
}

/// A photograph of the finished piece.
#[derive(Clone, Debug, PartialEq)]
pub struct Photograph {
    /// Its file, by its path from the folder of the design.
    pub file: Said<String>,
    /// What it shows, in words.
    pub alt: String,
}

/// The hand that holds the hook.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Hand {
    /// Rounds run anticlockwise.
    #[default]
    Right,
    /// Rounds run clockwise; charts are mirrored.
    Left,
}

/// How one round follows another.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Work {
    /// Each round closes with a slip stitch and begins with a turning chain.
    Joined {
        /// True where the turning chain counts as the first stitch.
        chain_counts: bool,
    },
    /// Round runs into round without a join.
    Spiral,
}

/// The yarn.
#[derive(Clone, Debug, PartialEq)]
pub struct Yarn {
    /// Number in the published yarn weight system, 0 to 7.
    pub weight: Option<Said<u8>>,
    /// What it is spun from.
    pub fibre: Option<String>,
    /// Grams and metres of one ball.
    pub ball: Option<Ball>,
    /// The colours, in the order of the file; empty for a single unnamed colour.
    pub colours: Vec<Colour>,
    /// Share added to the yarn needed, for tails and chance; 0.1 is a tenth.
    pub allowance: f64,
}

/// One ball of yarn.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Ball {
    /// Grams.
    pub grams: f64,
    /// Metres.
    pub metres: f64,
}

/// A yarn colour.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Colour {
    /// Its name.
    pub name: String,
    /// Red, green, blue.
    pub rgb: [u8; 3],
    /// Where it stands.
    pub place: Option<Place>,
}

/// Other colours for the same yarns.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Palette {
    /// Its name.
    pub name: String,
    /// Red, green, blue of every yarn, in the order of [`Yarn::colours`].
    pub colours: Vec<[u8; 3]>,
    /// Where it stands.
    pub place: Option<Place>,
}

/// A swatch, measured.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Swatch {
    /// The stitch it is worked in.
    pub stitch: Stitch,
    /// What was counted and measured.
    pub worked: Worked,
    /// What follows from it.
    pub gauge: Gauge,
    /// Where it stands.
    pub place: Option<Place>,
}

/// What was counted and measured in a swatch.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Worked {
    /// Stitches across its width, in halves.
    pub stitches: f64,
    /// Rounds up its height, in halves.
    pub rounds: f64,
    /// Its width.
    pub width: Mm,
    /// Its height.
    pub height: Mm,
}

/// One size.
#[derive(Clone, Debug, PartialEq)]
pub struct Size {
    /// Its name.
    pub name: String,
    /// Head circumference; nothing for what is not worn.
    pub head: Option<Mm>,
    /// Finished circumference: head with ease, or as said.
    pub around: Mm,
    /// Where the measurement comes from.
    pub source: HeadSource,
    /// Youngest and oldest age in months, where the size is for children of a known age.
    pub age_months: Option<(u32, u32)>,
    /// Where it stands.
    pub place: Option<Place>,
}

/// One part of the piece.
#[derive(Clone, Debug, PartialEq)]
pub struct Part {
    /// Its name, shown in the pages: `crown`, `side`, `brim` …
    pub name: Said<String>,
    /// The stitch it is worked in.
    pub stitch: Stitch,
    /// Loops of its first round: a loop-only round folds the fabric.
    pub loops: Loops,
    /// Colour of every round: stripes in order, each a colour index and a number of rounds; 0 rounds takes the rest.
    pub stripes: Vec<Stripe>,
    /// Notes of its author's.
    pub notes: Vec<Note>,
    /// What it is made of.
    pub body: Body,
}

impl Part {
    /// True where nothing is left open after it.
    pub fn closes(&self) -> bool {
        matches!(&self.body, Body::Profile(profile) if profile.shape.form().closes)
    }
}

/// A run of rounds in one colour.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Stripe {
    /// Index into [`Yarn::colours`].
    pub colour: usize,
    /// Rounds; nothing takes what the other stripes leave.
    pub rounds: Option<u32>,
}

/// What a part is made of.
#[derive(Clone, Debug, PartialEq)]
pub enum Body {
    /// To be solved.
    Profile(Box<Profile>),
    /// Written rounds of each size, to be recounted.
    Written(PerSize<Vec<Said<String>>>),
}

/// How a part begins.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Start {
    /// An adjustable ring; the count is the solver's choice where it isn't said.
    Ring {
        /// Stitches in the first round.
        stitches: Option<u32>,
    },
    /// A ring of chains, joined.
    ChainRing {
        /// Chains in the ring.
        chains: u32,
        /// Stitches worked into it.
        stitches: Option<u32>,
    },
    /// As many chains as the first round has stitches, joined into a ring as wide as the size, and a stitch into each.
    Chain,
    /// Goes on from the part before.
    Before,
}

/// The side outline of a part, over the slant length along the fabric.
#[derive(Clone, Debug, PartialEq)]
pub struct Profile {
    /// How it begins in each size.
    pub start: PerSize<Start>,
    /// Its shape.
    pub shape: Shape,
    /// Rounds worked even at the end of the part.
    pub settle: u32,
    /// Most stitches a round may grow by, as a factor: 2 doubles, 3 where tripling is allowed.
    pub most: u32,
    /// How often what is repeated may be worked in its shaped rounds, or a multiple of that; empty where any number will do.
    pub repeats: Vec<u32>,
    /// What the count of its last round is a multiple of.
    pub multiple: Option<Said<Multiple>>,
    /// Rounds that repeat from its first round on, each as it goes round; empty where it is all of one stitch.
    pub pattern: Vec<Said<String>>,
    /// Rounds that are worked once before the pattern begins.
    pub set_up: Vec<Said<String>>,
    /// Length at its end that is folded up over what lies above it.
    pub folded: Option<PerSize<Mm>>,
    /// Openings in its rounds.
    pub openings: Vec<Opening>,
    /// A swatch of this part alone.
    pub swatch: Option<Swatch>,
    /// Place of the field that decides the length, for messages.
    pub place: Option<Place>,
}

/// Openings of one round: chains over stitches that are left out.
#[derive(Clone, Debug, PartialEq)]
pub struct Opening {
    /// The round of the part, from 1 on.
    pub round: u32,
    /// How many, evenly round it.
    pub number: u32,
    /// How wide each is.
    pub width: OpeningWidth,
    /// Where they stand.
    pub place: Option<Place>,
}

/// How wide an opening is.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum OpeningWidth {
    /// By its stitches.
    Stitches(u32),
    /// By a length.
    Length(Mm),
}

/// How the last round ends.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Finish {
    /// Fasten off.
    FastenOff,
    /// A last round of slip stitch.
    SlipStitchEdge,
    /// Shorter stitches bring a spiral down to the round below.
    StepDown,
    /// The last round is laid flat, and its halves are joined through both layers.
    CloseFlat,
}

/// What the choice of counts prefers.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Preference {
    /// Rounds that are easy to remember.
    Easy,
    /// Some of both.
    #[default]
    Balanced,
    /// Rounds as close to the wanted shape as can be.
    Close,
}

/// How far a round may stray.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub enum Tolerance {
    /// Nothing was said: edges by a hundredth, and the rounds between them as they come.
    #[default]
    Usual,
    /// By a length.
    Length(Mm),
    /// By a share of the target; 0.02 is 2 %.
    Share(f64),
}

impl Tolerance {
    /// By how much a circumference of `around` may be off.
    pub fn of(self, around: Mm) -> Mm {
        match self {
            Self::Usual => around * 0.01,
            Self::Length(length) => length,
            Self::Share(share) => around * share,
        }
    }
}

/// How shaping is placed from round to round.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Shaping {
    /// Spread so that it doesn't stack.
    #[default]
    Scattered,
    /// Stacked into this many corners, on purpose.
    Corners(u32),
}
