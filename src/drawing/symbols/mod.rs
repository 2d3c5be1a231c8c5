//! Our own symbol set: every stitch of the table and every mark of a chart, drawn as paths in stitch units.
//!
//! The foot of a symbol stands at (0, 0), its head at (0, −height): up is −y, outward in a chart. What is drawn follows
//! what the trade's published conventions say in words (a chain an open oval, a slip stitch a filled dot, a single
//! crochet a cross, a half double a T, taller stitches a T with slashes, one-loop stitches an arc at the foot); the
//! drawing is ours. Shaping is told by weight and by a filled wedge where stitches meet, not by colour.

mod marks;
mod pen;
mod stitches;

use kurbo::Affine;

use crate::craft::{Build, Loops, Made, Op, Spot, Stitch};
use crate::drawing::Symbol;
use crate::geometry::rings::{NEARER, ring_height};

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
    /// More stitches in one place, fanned out; the number is for the key's drawing.
    Fan(Stitch, u8),
    /// Chains over a gap, which later stitches go under.
    Space(u8),
    /// A turning chain of so many chains.
    TurningChain(u8),
    /// A slip stitch that closes a joined round.
    Join,
    /// Shorter stitches that bring a spiral down to the round below.
    StepDown,
    /// Where the yarn is cut.
    FastenOff,
}

/// The room a symbol is drawn to fit, in stitch units. Strokes keep their weight whatever the room.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Fit {
    /// From foot to head.
    pub height: f64,
    /// Between the outermost heads of an increase or the outermost feet of a decrease.
    pub spread: f64,
    /// How far to the right of the shared foot the middle of the heads stands, or of the middle of the feet the shared
    /// head.
    pub shift: f64,
    /// How far the middle one of the feet of a decrease lies above the line through the outermost: rings are round.
    pub bow: f64,
    /// Width of one stitch's cell.
    pub width: f64,
}

impl Fit {
    /// The room that suits a stitch best.
    pub fn of(stitch: Stitch) -> Self {
        Self { height: ring_height(stitch), spread: 1.0, shift: 0.0, bow: 0.0, width: 1.0 }
    }
}

impl Sign {
    /// The one symbol that an operation is drawn as where its stitches share a foot or a head; nothing where every
    /// stitch has a symbol of its own.
    pub fn shared(op: &Op) -> Option<Self> {
        let simple = |stitch: Stitch| matches!(stitch.row().build, Build::Cross | Build::Stem);
        match (op.into, &op.made) {
            (Spot::Stitch, Made::Same(stitch, count @ 2..=3)) if op.consumed == 1 && simple(*stitch) => {
                Some(Self::Increase(*stitch, *count as u8, op.loops))
            }
            (Spot::Together, Made::Same(stitch, 1)) => {
                Some(Self::Decrease(*stitch, op.consumed.clamp(2, 9) as u8, op.loops))
            }
            (Spot::Stitch | Spot::Together | Spot::Space | Spot::Air | Spot::Skip, _) => None,
        }
    }

    /// Name of the symbol in a drawing: letters, figures and hyphens.
    pub fn key(&self) -> String {
        let loops = |loops: Loops| match loops {
            Loops::Both => "",
            Loops::Back => "-bl",
            Loops::Front => "-fl",
        };
        match *self {
            Self::Ring => "ring".to_owned(),
            Self::ChainRing(chains) => format!("ring-{chains}"),
            Self::Start => "start".to_owned(),
            Self::Direction => "way".to_owned(),
            Self::Stitch(stitch, under) => format!("{}{}", stitch.row().id, loops(under)),
            Self::Increase(stitch, count, under) => format!("{}-inc{count}{}", stitch.row().id, loops(under)),
            Self::Decrease(stitch, count, under) => format!("{}-dec{count}{}", stitch.row().id, loops(under)),
            Self::Fan(stitch, count) => format!("{}-fan{count}", stitch.row().id),
            Self::Space(chains) => format!("space-{chains}"),
            Self::TurningChain(chains) => format!("turn-{chains}"),
            Self::Join => "join".to_owned(),
            Self::StepDown => "step".to_owned(),
            Self::FastenOff => "end".to_owned(),
        }
    }

    /// The room it is drawn in where nothing else is asked for.
    pub fn fit(&self) -> Fit {
        match *self {
            Self::Stitch(stitch, _) | Self::Fan(stitch, _) => Fit::of(stitch),
            Self::Increase(stitch, count, _) => Fit { spread: NEARER * f64::from(count.max(1) - 1), ..Fit::of(stitch) },
            Self::Decrease(stitch, count, _) => Fit { spread: f64::from(count.max(1) - 1), ..Fit::of(stitch) },
            Self::TurningChain(chains) => Fit { height: 0.35 + 0.5 * f64::from(chains), ..Fit::of(Stitch::SC) },
            Self::Ring
            | Self::ChainRing(_)
            | Self::Start
            | Self::Direction
            | Self::Space(_)
            | Self::Join
            | Self::StepDown
            | Self::FastenOff => Fit::of(Stitch::SC),
        }
    }

    /// Its drawing, in stitch units.
    pub fn symbol(&self, fit: &Fit) -> Symbol {
        match *self {
            Self::Stitch(stitch, loops) => stitches::single(stitch, loops, fit),
            Self::Increase(stitch, count, loops) => stitches::increase(stitch, count, loops, fit),
            Self::Decrease(stitch, count, loops) => stitches::decrease(stitch, count, loops, fit),
            Self::Fan(stitch, count) => stitches::fan(stitch, count, fit),
            Self::TurningChain(chains) => marks::turning_chain(chains, fit),
            Self::Space(chains) => marks::space(chains),
            Self::Ring => marks::ring(),
            Self::ChainRing(chains) => marks::chain_ring(chains),
            Self::Start => marks::start(fit),
            Self::Direction => marks::direction(),
            Self::Join => marks::join(),
            Self::StepDown => marks::step_down(),
            Self::FastenOff => marks::fasten_off(),
        }
    }

    /// True where a stitch that leans is drawn with its head aside of its foot, its bar level.
    pub(in crate::drawing) fn shears(&self) -> bool {
        let Self::Stitch(stitch, loops) = self else { return matches!(self, Self::TurningChain(_)) };
        match stitch.row().build {
            Build::Cross => *loops != Loops::Both,
            Build::Chain | Build::Slip | Build::Picot => false,
            Build::Stem | Build::Post(_) | Build::Cluster | Build::Puff | Build::Bobble | Build::Popcorn => true,
        }
    }

    /// True where it shows several stitches that share a foot or a head.
    pub(in crate::drawing) const fn is_shaped(&self) -> bool {
        matches!(self, Self::Increase(..) | Self::Decrease(..))
    }

    /// True where the sign points the way the work runs, and so is mirrored for the left hand.
    pub const fn points(&self) -> bool {
        matches!(self, Self::Start | Self::Direction | Self::StepDown | Self::FastenOff)
    }

    /// Every sign of the set in the order of the key: what a chart of anything may use.
    pub fn all() -> Vec<Self> {
        let mut all = vec![Self::Ring, Self::ChainRing(6), Self::Start, Self::Direction];
        all.extend(Stitch::all().map(|stitch| Self::Stitch(stitch, Loops::Both)));
        for loops in [Loops::Back, Loops::Front] {
            all.extend([Stitch::SC, Stitch::HDC, Stitch::DC].map(|stitch| Self::Stitch(stitch, loops)));
        }
        let shaped = [Stitch::SC, Stitch::HDC, Stitch::DC, Stitch::TR];
        for count in [2, 3] {
            all.extend(shaped.map(|stitch| Self::Increase(stitch, count, Loops::Both)));
        }
        for count in [2, 3] {
            all.extend(shaped.map(|stitch| Self::Decrease(stitch, count, Loops::Both)));
        }
        all.extend([Self::Fan(Stitch::DC, 5), Self::Space(3)]);
        all.extend([1, 2, 3].map(Self::TurningChain));
        all.extend([Self::Join, Self::StepDown, Self::FastenOff]);
        all
    }
}

impl Symbol {
    /// The same at another scale, strokes with it.
    #[must_use]
    pub fn scaled(mut self, by: f64) -> Self {
        for stroke in self.paths.iter_mut().filter_map(|item| item.stroke.as_mut()) {
            stroke.width *= by;
            stroke.dashes.iter_mut().for_each(|dash| *dash *= by);
        }
        self.moved(Affine::scale(by))
    }

    /// The same with left and right changed.
    #[must_use]
    pub fn mirrored(self) -> Self {
        self.moved(Affine::scale_non_uniform(-1.0, 1.0))
    }

    fn moved(mut self, by: Affine) -> Self {
        self.paths.iter_mut().for_each(|item| item.path.apply_affine(by));
        self.bounds = by.transform_rect_bbox(self.bounds);
        self
    }
}
