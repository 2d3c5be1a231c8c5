//! The rows of a part: where it begins, what it is worked in, how it ends, and what it measures.

use super::table::{PART_SWATCH, row};
use super::{Group, Row, Takes, words};
use crate::design::printed::Printed;
use crate::design::shapes::{FORMS, Field, REACHES};
use crate::design::{multiples, openings, parts, repeats};
use crate::limits;

pub(in crate::design) static PART: Group = Group {
    section: "part",
    about: "Each of `parts:` is a name of your own with the fields below. A crown, side or brim of that name knows its \
            shape; a part is solved from its shape and measures, or recounted from `written`.",
    example: "- side: {shape: straight, depth: {S: 9, M: 9.5}}",
    rows: || {
        let measures = Field::ALL.map(Field::row);
        [BEGINS, &measures, ENDS].concat()
    },
    one_of: &[],
};

/// How a part begins.
const BEGINS: &[Row] = &[
    row(
        "shape",
        Takes::Word(|| FORMS.iter().map(|form| form.word).collect()),
        "shape: flat",
        "What becomes of it; see the shapes below for what each is measured by.",
    )
    .told("by the name of the part and its measures"),
    row("stitch", Takes::Stitch, "stitch: hdc", "The stitch it is worked in.").told("that of the first swatch"),
    row(
        "loop",
        Takes::Word(|| words(parts::LOOPS)),
        "loop: back",
        "The loops its first round is worked into: one loop alone makes a fold there.",
    )
    .usual("both"),
    row(
        "colours",
        Takes::Any(&[
            Takes::Name("colour"),
            Takes::OneOrMore(&Takes::Named(
                "colour",
                &Takes::Any(&[Takes::Count(1, 1000), Takes::Word(|| vec!["rest"])]),
            )),
        ]),
        "colours: {tide: 2, sand: rest}",
        "One colour, or stripes in rounds; `rest` takes what the others leave. A list lets a colour come again: \
         `[{sand: 3}, {tide: 2}, {sand: rest}]`; without the list it is read too, though YAML allows a name but once.",
    )
    .told("the first colour of the yarn"),
    row(
        "start",
        Takes::PerSize(&Takes::Phrase(parts::STARTS)),
        "start: ring of 8",
        "How the first part begins: into an adjustable ring, with so many stitches (2 to 60) where you say so; on \
                 chains joined into a ring; or, with `chain`, on as many chains as its first round has stitches, joined as \
                 wide as the size: an ear warmer, a visor, a cowl, a shade, or a hat that is worked from its edge up.",
    )
    .usual("ring"),
];

/// A note, or notes by the names of sizes or the numbers of rounds.
static NOTES: [Takes; 2] = [
    Takes::OneOrMore(&Takes::Printed(Printed::Note)),
    Takes::Named("number of a round, `last` or size", &Takes::Any(&NOTE_OF_ONE)),
];
static NOTE_OF_ONE: [Takes; 2] = [
    Takes::OneOrMore(&Takes::Printed(Printed::Note)),
    Takes::Named("of them", &Takes::OneOrMore(&Takes::Printed(Printed::Note))),
];

/// How it ends.
const ENDS: &[Row] = &[
    row(
        "settle",
        Takes::Any(&[Takes::Count(0, parts::MOST_SETTLED), Takes::Measured]),
        "settle: 2",
        "How many of its rounds, at its end, are worked even, or over what length: they are taken from its length, \
                 not added to it. An even end keeps a brim from ruffling.",
    )
    .told("2 for a brim, 0 for all others"),
    row(
        "most",
        Takes::Word(|| words(parts::MOST)),
        "most: triple",
        "How far one round may grow: to twice the stitches of the round below, or to three times.",
    )
    .usual("double"),
    row(
        "multiple",
        Takes::Any(&[Takes::Count(2, multiples::MOST), Takes::Phrase(multiples::WORDINGS)]),
        "multiple: 4 + 2",
        "What the count of its last round is a multiple of, in every size, with so many stitches over, so that ribs, shells \
         and motifs fit; all rounds of a straight part hold it.",
    ),
    row(
        "repeats",
        Takes::OneOrMore(&Takes::Count(repeats::LEAST, repeats::MOST)),
        "repeats: 6",
        "How often what is repeated is worked in each of its shaped rounds, or a multiple of that, in every size; of a list \
         the size takes what suits it best.",
    )
    .told("what the shape asks for, as alike in all sizes as can be"),
    row(
        "pattern",
        Takes::Rounds,
        "pattern: [\"FPdc in next, BPdc in next\"]",
        "A stitch pattern that the part is worked in: its rounds, which repeat all the way up; the multiple follows from them. \
         A part that is shaped changes its count in the plain rounds of the pattern, or, where it has none, in a plain \
         round between one time through and the next.",
    ),
    row(
        "setup",
        Takes::Rounds,
        "setup: [\"dc in each st around\"]",
        "Rounds that are worked once before `pattern` begins, where its first round stands on something else than its last.",
    ),
    row(
        "swatch",
        Takes::Group(&PART_SWATCH),
        "swatch: {stitches: 18, rounds: 14, width: 10, height: 10}",
        "A swatch of this part alone, in its pattern.",
    )
    .told("the swatch of its stitch"),
    row(
        "notes",
        Takes::Any(&NOTES),
        "notes: {4: stuff firmly now, last: leave a long tail}",
        "Your own words on the part, above its rounds; or beside the rounds of these numbers, 1 for its first. Under the \
         name of a size they are for that size: `{S: work tightly, 4: {M: place a marker}}`.",
    ),
    row(
        "folded",
        Takes::PerSize(&Takes::Length),
        "folded: 4 cm",
        "How much of its end is folded up, outward, when a hat is done: of the last part, whose depth is all of its fabric; \
         what is folded counts once in the depth of the hat.",
    ),
    row(
        "openings",
        Takes::OneOrMore(&ONE_OPENING),
        "openings: {round: 3, number: 2, width: 9 cm}",
        "Handles and eyelets: chains over stitches that are left out, evenly round one of its even rounds, in every size; \
         the round after it is worked into the chains.",
    ),
    row(
        "written",
        Takes::PerSize(&Takes::Rounds),
        "written: \"Rnd 1: 6 sc in ring (6)\"",
        "Its rounds as you write them, one a line below `written: |`, instead of a shape: they are recounted, and \
                 printed in your words. Where sizes differ, write as many numbers as there are sizes, `60 (64, 68)` or \
                 `(60, 64, 68)`, begin a line with `Size M only:`, or write the rounds of each size below its name.",
    ),
];

pub(in crate::design) static OPENING: Group = Group {
    section: "openings",
    about: "`openings:` of a part, once or as a list: two wide ones opposite each other are handles, many narrow ones \
            take a cord or a ribbon.",
    example: "openings: {round: 2, number: 12}",
    rows: || OPENINGS.to_vec(),
    one_of: &[],
};

static ONE_OPENING: Takes = Takes::Group(&OPENING);

const OPENINGS: &[Row] = &[
    row("round", Takes::Count(1, limits::ROUNDS), "round: 3", "The round of the part, 1 for its first.").needed(),
    row("number", Takes::Count(1, openings::MOST), "number: 2", "How many, evenly round it.").usual("2"),
    row(
        "width",
        Takes::Any(&[Takes::Length, Takes::Phrase(openings::STITCHES)]),
        "width: 9 cm",
        "How wide each is, as a length or in stitches: as many chains.",
    )
    .usual("1 stitch"),
];

impl Field {
    /// Its row: what it measures.
    const fn row(self) -> Row {
        let (takes, example, about): (&'static Takes, _, _) = match self {
            Self::Depth => (
                &Takes::Any(&[Takes::Length, Takes::Word(|| words(REACHES))]),
                "depth: {S: 9, M: 9.5}",
                "Length along the fabric, from the edge of the part before to its own; of the straight side of a hat also \
                 how far the whole hat is to come down: two fifths of the head over the ears, a third to mid ear (common \
                 practice).",
            ),
            Self::Width => (&Takes::Length, "width: 7.5", "Width of a brim along the fabric."),
            Self::Rise => (
                &Takes::Length,
                "rise: 9",
                "Height of a dome, straight down; a dome as high as its radius is half a ball.",
            ),
            Self::Flare => (
                &Takes::Angle,
                "flare: 55°",
                "How far a brim stands off: 0° goes straight down, 90° stands flat out, up to 150° turns up. A taper widens \
                 by it.",
            ),
            Self::Taper => (
                &Takes::Narrowing,
                "taper: 20°",
                "The angle from straight down by which a taper narrows, in place of the circumference at its end.",
            ),
            Self::Around => (
                &Takes::Length,
                "around: 54",
                "Circumference at its edge, of a ball round its middle. A crown without it ends at the size.",
            ),
            Self::Across => (&Takes::Length, "across: 17", "The same, said by the diameter."),
            Self::Edge => (
                &Takes::Rounded,
                "edge: rounded 2 cm",
                "How the edge of a crown or base goes over into the side: by a quarter of a circle of this radius, from flat to \
                 straight down, instead of a sharp fold. `around` is still where it ends. Of a radius of 2 cm the edge takes \
                 3.1 cm of fabric, goes 2 cm outward and 2 cm down; as all of the crown it counts in the depth of a hat, so \
                 that the side is 2 cm shorter for the same height.",
            ),
            Self::Fullness => (
                &Takes::Fullness,
                "fullness: 2",
                "How many times the stitches of what it stands on a ruffle has: 2 stands in waves, 3 in deep ones.",
            ),
        };
        row(self.word(), Takes::PerSize(takes), example, about)
    }
}
