//! The rows: what every field is called, what it takes, what holds without it and what it means.

use super::part::PART;
use super::{Group, Row, Takes, Usual, words};
use crate::design::printed::Printed;
use crate::design::weights::YarnWeight;
use crate::design::{Kind, MaterialKind, heads, own, plausible, repeats, resolve};
use crate::words::Language;

/// A field that may be left out, and then says nothing.
pub(super) const fn row(name: &'static str, takes: Takes, example: &'static str, about: &'static str) -> Row {
    Row { name, needed: false, takes, usual: Usual::Nothing, about, example }
}

impl Row {
    pub(super) const fn needed(self) -> Self {
        Self { needed: true, ..self }
    }

    /// With the value that holds where it is left out.
    pub(super) const fn usual(self, value: &'static str) -> Self {
        Self { usual: Usual::Value(value), ..self }
    }

    /// With words on what holds where it is left out.
    pub(super) const fn told(self, usual: &'static str) -> Self {
        Self { usual: Usual::Told(usual), ..self }
    }
}

pub(in crate::design) static DESIGN: Group = Group {
    section: "design",
    about: "The whole file: what is made, from what, in which sizes and parts, and how it is printed.",
    example: "title: My hat",
    rows: || FILE.to_vec(),
    one_of: &[],
};

static ONE_SWATCH: Takes = Takes::Any(&SWATCH_OR_WORDS);
static SWATCH_OR_WORDS: [Takes; 2] = [Takes::Group(&SWATCH), Takes::Counted];
static ONE_STITCH: Takes = Takes::Any(&WORK_OR_FIELDS);
static WORK_OR_FIELDS: [Takes; 2] = [Takes::InOnePlace, Takes::Group(&OWN_STITCH)];
static ONE_SIZE: Takes = Takes::Any(&SIZE_OR_TABLE);
static SIZE_OR_TABLE: [Takes; 2] = [Takes::Group(&SIZE), Takes::Word(heads::names)];

static MATERIALS: [Takes; 2] = [
    Takes::OneOrMore(&Takes::Printed(Printed::Note)),
    Takes::Fixed(material_words, &Takes::OneOrMore(&Takes::Printed(Printed::Note))),
];

fn material_words() -> Vec<&'static str> {
    MaterialKind::ALL.map(MaterialKind::word).to_vec()
}

const FILE: &[Row] = &[
        row("title", Takes::Printed(Printed::Title), "title: Slipway sun hat", "What the piece is called, on every page.")
            .needed(),
        row(
            "designer",
            Takes::Printed(Printed::Designer),
            "designer: A. Maker",
            "Whose design it is, on the cover.",
        ),
        row(
            "about",
            Takes::Printed(Printed::About),
            "about: A plain hat with a small brim.",
            "A line or two below the title, in your own words.",
        ),
        row("dedication", Takes::Printed(Printed::Imprint), "dedication: For the long beach", "For whom it was made, on the cover."),
    row(
        "version",
        Takes::Printed(Printed::Imprint),
        "version: 1.2, 3 May 2026",
        "Which version of the pattern it is, with its date, on the cover and at the foot of every page.",
    ),
    row(
        "copyright",
        Takes::Printed(Printed::Imprint),
        "copyright: © 2026 A. Maker",
        "Whose pattern it is, on the cover and at the foot of every page.",
    ),
    row(
        "licence",
        Takes::Printed(Printed::Imprint),
        "licence: For your own use; finished pieces may be sold.",
        "What may be done with it, on the cover.",
    ),
    row("contact", Takes::Printed(Printed::Imprint), "contact: help@example.org", "Where questions go, on the cover."),
    row(
        "level",
        Takes::Word(|| words(own::LEVELS)),
        "level: easy",
        "How hard it is, in the four words of the trade.",
    )
    .told("what its stitches, colours and loops make it"),
    row(
        "notes",
        Takes::OneOrMore(&Takes::Printed(Printed::Note)),
        "notes: [Work loosely., The right side faces out.]",
        "What a maker should know before beginning, in your own words: one sentence or a list. Parts and rounds have notes \
         of their own.",
    ),
    row(
        "materials",
        Takes::Any(&MATERIALS),
        "materials: {stuffing: 40 g, eyes: \"2 safety eyes, 8 mm\", other: a saucer}",
        "What is needed beside yarn, hook and the usual tools. Under its kind it is called so in every language, and the \
         usual cautions for it are printed.",
    ),
    row(
        "assembly",
        Takes::OneOrMore(&Takes::Printed(Printed::Note)),
        "assembly: [Sew the handles on., Line the base.]",
        "How it is put together once the rounds are done: one step or a list.",
    ),
        row(
            "photo",
            Takes::Group(&PHOTOGRAPH),
            "photo: {file: hat.jpg, alt: \"A green hat on a wooden peg\"}",
            "A photograph of the finished piece for the cover.",
        ),
        row(
            "kind",
            Takes::Word(|| Kind::ALL.map(|kind| kind.row().word).to_vec()),
            "kind: hat",
            "What is made: it decides how sizes are measured, which way up the piece is drawn, what its table of sizes \
             says and which cautions are printed.",
        )
        .usual("hat"),
        row(
            "units",
            Takes::Word(|| words(resolve::UNITS)),
            "units: cm",
            "The unit of every length of the file that names none, and the one that is printed first.",
        )
        .usual("cm"),
        row(
            "terms",
            Takes::Word(|| words(resolve::TERMS)),
            "terms: US",
            "Whose names the stitches have, here and in print: a UK double crochet is a US single crochet.",
        )
        .usual("US"),
        row(
            "language",
            Takes::Word(|| Language::ALL.map(Language::tag).to_vec()),
            "language: de",
            "The language of what is printed. What you write yourself stays as you wrote it.",
        )
        .usual("en"),
        row(
            "hand",
            Takes::Word(|| words(resolve::HANDS)),
            "hand: left",
            "The hand that holds the hook: for the left, charts run the other way round.",
        )
        .usual("right"),
        row(
            "work",
            Takes::Word(|| words(resolve::WORKS)),
            "work: spiral",
            "How one round follows another: joined with a slip stitch and begun with a chain, or on and on as a spiral. \
             `chain counts` takes the chain for the first stitch of its round.",
        )
        .told("`joined`; the chain counts as a stitch from chain 3 on"),
        row("yarn", Takes::Group(&YARN), "yarn: {weight: 4, fibre: cotton}", "The yarn and its colours."),
        row(
            "palettes",
            Takes::Named("palette", &Takes::Named("colour", &Takes::Colour)),
            "palettes: {harbour: {main: \"#2f6f8f\"}}",
            "Other colours to try for the yarns of `yarn: colours`; a yarn that is left out keeps its own.",
        ),
        row(
            "stitches",
            Takes::Named("stitch", &ONE_STITCH),
            "stitches: {shell: \"(2 dc, ch 1, 2 dc)\"}",
            "Stitches of your own: a name for what is made in one stitch or space, which written rounds and patterns may \
             say. Each is counted, drawn by what it is built of and told among the special stitches.",
        ),
        row("hook", Takes::Hook, "hook: 5 mm", "The hook the swatch was worked with, for the page of materials."),
        row(
            "swatch",
            Takes::OneOrMore(&ONE_SWATCH),
            "swatch: {stitch: sc, stitches: 16, rounds: 17, width: 10, height: 10}",
            "What you counted and measured on a swatch in this yarn, with this hook, by your hands: every count of the \
             pattern follows from it. A list holds one for each stitch; the first is the main stitch.",
        )
        .needed(),
        row(
            "expect",
            Takes::Word(|| words(plausible::EXPECTED)),
            "expect: firm",
            "That the fabric is meant to be firmer or looser than is usual for its yarn, as that of a toy or a scarf is: \
             swatch and hook are then not doubted for it.",
        ),
        row(
            "sizes",
            Takes::Named(
                "size",
                &ONE_SIZE,
            ),
            "sizes: {S: {head: 54}, M: {head: 57}}",
            "The sizes by their names, smallest first. A bare table name reads the row of the size's own name: \
             `child-4y: who`.",
        )
        .needed(),
        row(
            "ease",
            Takes::Share(true),
            "ease: -5 %",
            "How much wider than the head the finished hat is: below nought it is stretched when worn. Only for what is \
             worn; other pieces measure what their size says.",
        )
        .told("`-5 %` for a hat without a brim, `0 %` for all others"),
        row(
            "parts",
            Takes::NamedList(&PART),
            "parts: [crown, side: {depth: 9}, brim: {width: 6, flare: 42°}]",
            "The parts in the order in which they are worked; each goes on from the edge of the one before.",
        )
        .needed(),
        row(
            "finish",
            Takes::Word(|| words(resolve::FINISHES)),
            "finish: edge of slip stitch",
            "How the last round ends: plainly, with a round of slip stitch, with a few shorter stitches that bring the \
             end of a spiral down to the round below, or closed flat: its halves are laid together and worked through both \
             layers, so its count is kept even.",
        )
        .told("`step down` for a spiral that ends open, `fasten off` for all others"),
        row(
            "prefer",
            Takes::Word(|| words(resolve::PREFERENCES)),
            "prefer: easy",
            "What wins where a round can't be both: `easy` takes counts whose repeats come out even and are the same from \
             round to round, `close` those nearest to the shape.",
        )
        .usual("balanced"),
        row(
            "tolerance",
            Takes::Any(&[Takes::Share(false), Takes::Length]),
            "tolerance: 2 %",
            "How far a round's circumference may stand off its shape before you are told, in rounds and at edges alike; \
             within it the easier count is taken. It is no promise: where whole stitches or repeats come no nearer, the \
             round stays, with a warning. Half a stitch is always let pass.",
        )
        .told("edges are told from 1 % off, the free edge of a brim from 2 %, rounds between them never"),
        row(
            "shaping",
            Takes::Phrase(resolve::SHAPINGS),
            "shaping: 6 corners",
            "Where increases and decreases fall: scattered, so that no corners show, or one above the other into so many \
             corners (3 to 60); every count is then a multiple of the corners.",
        )
        .usual("scattered"),
    row(
        "repeats",
        Takes::OneOrMore(&Takes::Count(repeats::LEAST, repeats::MOST)),
        "repeats: 6",
        "The `repeats` of all shaped parts that say none themselves.",
    ),
];

pub(in crate::design) static PHOTOGRAPH: Group = Group {
    section: "photo",
    about: "`photo:` puts a photograph on the cover of booklet and web page; the drawing moves inside. What the camera \
            wrote into the file (place, time, name) is left out.",
    example: "photo: {file: hat.jpg, alt: \"A green hat on a wooden peg\"}",
    rows: || OF_PHOTOGRAPH.to_vec(),
    one_of: &[],
};

const OF_PHOTOGRAPH: &[Row] = &[
    row("file", Takes::File, "file: hat.jpg", "A PNG or JPEG file, by its path from the design.").needed(),
    row(
        "alt",
        Takes::Printed(Printed::Alt),
        "alt: \"A green hat on a wooden peg\"",
        "What it shows, for those who can't see it.",
    )
    .needed(),
];

pub(in crate::design) static YARN: Group = Group {
    section: "yarn",
    about: "`yarn:` is what the piece is made of; every field may be left out.",
    example: "yarn: {weight: 4, fibre: cotton, ball: {grams: 50, metres: 85}, colours: {main: \"#3f7d6e\"}}",
    rows: || OF_YARN.to_vec(),
    one_of: &[],
};

const OF_YARN: &[Row] = &[
    row(
        "weight",
        Takes::Any(&[Takes::Count(0, 7), Takes::Word(YarnWeight::every_name)]),
        "weight: 4",
        "The number or name of the yarn weight system; swatch and hook are held against what is published for it.",
    ),
    row("fibre", Takes::Printed(Printed::Fibre), "fibre: cotton", "What it is spun from."),
    row(
        "ball",
        Takes::Group(&BALL),
        "ball: {grams: 50, metres: 85}",
        "What the label of one ball says, so that balls can be counted.",
    ),
    row(
        "colours",
        Takes::Named("colour", &Takes::Colour),
        "colours: {sand: \"#d9c39a\", tide: \"#2f6f8f\"}",
        "The yarns by your names for their colours, each with its value. The first is the one that parts without \
                 `colours` are worked in.",
    ),
    row(
        "allowance",
        Takes::Share(false),
        "allowance: 15 %",
        "What is added to the yarn worked out, for tails and chance, up to 100 %.",
    )
    .usual("10 %"),
];

pub(in crate::design) static BALL: Group = Group {
    section: "ball",
    about: "`ball:` under `yarn:` holds the weight of one ball and its length, in metres or in yards.",
    example: "ball: {grams: 50, metres: 85}",
    rows: || OF_BALL.to_vec(),
    one_of: &["metres", "yards"],
};

const OF_BALL: &[Row] = &[
    row("grams", Takes::Mass, "grams: 50", "Its weight; ounces with their unit, `1.75 oz`.").needed(),
    row("metres", Takes::Yarn, "metres: 85", "Its length in metres."),
    row("yards", Takes::Yarn, "yards: 93", "Its length in yards."),
];

pub(in crate::design) static SWATCH: Group = Group {
    section: "swatch",
    about: "`swatch:` holds what you counted and measured. Work it in rounds where the piece is, larger than what you \
            measure; lay it flat and don't pull it.",
    example: "swatch: {stitch: sc, stitches: 16, rounds: 17, width: 10.8, height: 11.1, grams: 11.4}",
    rows: || std::iter::once(WORKED_IN).chain(COUNTED.iter().copied()).collect(),
    one_of: &[],
};

const WORKED_IN: Row = row("stitch", Takes::Stitch, "stitch: sc", "The stitch it is worked in.").needed();

/// What is counted and measured.
const COUNTED: &[Row] = &[
    row("stitches", Takes::Halves(2000), "stitches: 16", "Stitches across `width`, to the nearest half: `17.5`.")
        .needed(),
    row("rounds", Takes::Halves(2000), "rounds: 17", "Rounds up `height`, to the nearest half.").needed(),
    row("width", Takes::Length, "width: 10.8", "How wide so many stitches are.").needed(),
    row("height", Takes::Length, "height: 11.1", "How high so many rounds are.").needed(),
    row(
        "thick",
        Takes::Length,
        "thick: 3.5 mm",
        "How thick the fabric is, between two rulers that are laid on without pressing: it bends as it is thick, \
                 so the side view becomes truer.",
    )
    .told("what is usual for the stitch at its width"),
    row("grams", Takes::Mass, "grams: 11.4", "What these stitches weigh, without tails: gives the yarn of every size.")
        .told("the yarn is estimated from the width of the stitches"),
];

pub(in crate::design) static PART_SWATCH: Group = Group {
    section: "part-swatch",
    about: "`swatch:` of a part holds what you counted and measured in what that part alone is worked in; it names no stitch.",
    example: "swatch: {stitches: 18, rounds: 14, width: 10, height: 10}",
    rows: || COUNTED.to_vec(),
    one_of: &[],
};

pub(in crate::design) static SIZE: Group = Group {
    section: "size",
    about: "Each of `sizes:` is measured in one way: what is worn by the head, all else round or across. Or it is read \
            from a published table by its row; measured heads are better.",
    example: "S: {head: 54}",
    rows: || {
        let tables = heads::TABLES.iter().map(|table| row(table.name, Takes::Name("row"), table.example, table.help));
        MEASURED.iter().copied().chain(tables).collect()
    },
    one_of: &[],
};

const MEASURED: &[Row] = &[
    row("head", Takes::Length, "head: 56", "Circumference of the head, round the brow above the ears."),
    row("around", Takes::Length, "around: 80", "Finished circumference of what is not worn."),
    row("across", Takes::Length, "across: 30", "The same, said by the diameter."),
    row(
        "age",
        Takes::Age,
        "age: 3-6 months",
        "Whose age it is for: the head is held against the tables, and what has to be said of babies and children \
                 is printed.",
    ),
];

pub(in crate::design) static OWN_STITCH: Group = Group {
    section: "own-stitch",
    about: "Each of `stitches:` is a name of your own with what it makes, or with the fields below.",
    example: "shell: {work: \"(2 dc, ch 1, 2 dc)\", name: garden shell}",
    rows: || OF_A_STITCH.to_vec(),
    one_of: &[],
};

const OF_A_STITCH: &[Row] = &[
    row(
        "work",
        Takes::InOnePlace,
        "work: \"(2 dc, ch 1, 2 dc)\"",
        "What is made in one stitch or space, in the words of rounds; stitches of your own may be among it.",
    )
    .needed(),
    row("name", Takes::Printed(Printed::Stitch), "name: garden shell", "Its whole name, beside that in rounds."),
    row(
        "how",
        Takes::Printed(Printed::Note),
        "how: Draw up the loops long and close them with a firm chain.",
        "How it is worked, in your own words, printed among the special stitches.",
    ),
];
