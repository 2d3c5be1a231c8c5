//! A plan as JSON, for other programs.
//!
//! One object on one line. Fields may be added in later versions; those of the documentation stay. Lengths are
//! millimetres with three decimals.

use serde::Serialize;

use crate::craft::{Loops, OwnStitch, Round, Terms, abbreviation};
use crate::geometry::{Holds, SideShape, Sits, Worn};
use crate::notation::write::Writer;
use crate::notation::{Gaps, Instruction};
use crate::plan::{PartPlan, Plan, ShapedIn, SizePlan, YarnUse};
use crate::story::source_words;
use crate::units::{Mm, tidy};
use crate::words::{Language, Words};

#[derive(Serialize)]
struct PlanJson<'a> {
    title: &'a str,
    terms: &'static str,
    language: &'static str,
    /// Stitches of the maker's own, by which instructions call them.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    stitches: Vec<StitchJson<'a>>,
    sizes: Vec<SizeJson<'a>>,
}

#[derive(Serialize)]
struct StitchJson<'a> {
    name: String,
    whole_name: Option<&'a str>,
    work: String,
    how: Option<&'a str>,
    makes: u32,
}

#[derive(Serialize)]
struct SizeJson<'a> {
    name: &'a str,
    /// Nothing for what isn't worn.
    head_mm: Option<f64>,
    source: String,
    /// What comes out of the counts.
    finished_circumference_mm: f64,
    /// What was asked for.
    wanted_mm: f64,
    rounds: Vec<RoundJson<'a>>,
    /// Stitches that bring a spiral down after its last round; not counted.
    /// Stitches on each side of a last round that is closed flat.
    #[serde(skip_serializing_if = "Option::is_none")]
    closed_flat: Option<u32>,
    step_down: Vec<&'static str>,
    parts: Vec<PartJson<'a>>,
    yarn: Vec<YarnJson<'a>>,
    /// How a hat sits on its head.
    worn: Option<WornJson>,
    warnings: &'a [String],
}

#[derive(Serialize)]
struct RoundJson<'a> {
    round: u32,
    part: &'a str,
    stitch: &'static str,
    r#loop: &'static str,
    stitches_in: u32,
    stitches_out: u32,
    instruction: String,
    /// What the round has when it is done, as makers state it.
    count: String,
    #[serde(skip_serializing_if = "is_zero")]
    slipped: u32,
    worked: Vec<[u32; 2]>,
    colour: Option<&'a str>,
    circumference_mm: f64,
    radius_mm: f64,
    height_mm: f64,
    hoop_strain: f64,
    /// The same on the head, with the height below its top.
    #[serde(skip_serializing_if = "Option::is_none")]
    on_head: Option<OnHeadJson>,
}

#[derive(Serialize)]
struct OnHeadJson {
    radius_mm: f64,
    height_mm: f64,
    hoop_strain: f64,
}

#[derive(Serialize)]
struct WornJson {
    /// What a tape over the head reads from its top down to the edge, and down to the brow and below the ears.
    tape_to_edge_mm: f64,
    tape_to_brow_mm: f64,
    tape_over_ears_mm: f64,
    sits: &'static str,
    /// The round that grips most, and by what share of its own width the head stretches it.
    tightest_round: u32,
    grip: f64,
    holds: &'static str,
}

#[derive(Serialize)]
struct PartJson<'a> {
    name: &'a str,
    rounds: [u32; 2],
    target_mm: f64,
    reached_mm: f64,
    deviation_percent: f64,
    length_mm: f64,
    growth_needed: f64,
    growth_used: f64,
    worst_mm: f64,
    /// What its last count was asked to be a multiple of: `4 + 2`.
    #[serde(skip_serializing_if = "Option::is_none")]
    multiple: Option<String>,
    /// What of its end is folded up.
    #[serde(skip_serializing_if = "Option::is_none")]
    folded: Option<FoldedJson>,
    /// Rounds in which a stitch pattern lets the count change: `plain` ones of its own, or `between` one time through and
    /// the next.
    #[serde(skip_serializing_if = "Option::is_none")]
    shaped_in: Option<&'static str>,
    /// The round with the largest share of its shaping on shaping, and that share.
    stacked: Option<StackedJson>,
    /// The polygon that stacked shaping makes.
    corners: Option<CornersJson>,
    reasons: &'a [String],
}

#[derive(Serialize)]
struct FoldedJson {
    first_round: u32,
    length_mm: f64,
}

#[derive(Serialize)]
struct StackedJson {
    round: u32,
    share: f64,
}

#[derive(Serialize)]
struct CornersJson {
    corners: u32,
    across_flats_mm: f64,
    across_corners_mm: f64,
}

#[derive(Serialize)]
struct YarnJson<'a> {
    colour: Option<&'a str>,
    metres: f64,
    grams: f64,
    balls: Option<u32>,
    estimated: bool,
}

/// The JSON text of a plan, with the predicted shape of each size in `shapes`, in the order of its sizes. `only` picks
/// one size by its name; a name that there is not gives no sizes.
pub fn plan(plan: &Plan, shapes: &[SideShape], only: Option<&str>) -> String {
    let words = plan.design.words();
    let sizes = plan.sizes.iter().zip(shapes).enumerate();
    let wanted = sizes.filter(|(_, (size, _))| only.is_none_or(|only| only == size.name));
    let writer = Writer { words: &words, terms: plan.design.terms };
    let json = PlanJson {
        title: &plan.design.title.value,
        terms: match plan.design.terms {
            Terms::Us => "US",
            Terms::Uk => "UK",
        },
        language: plan.design.language.tag(),
        stitches: plan.design.stitches.iter().map(|own| stitch(own, &writer)).collect(),
        sizes: wanted.map(|(index, (one, shape))| size(plan, index, one, shape, &words)).collect(),
    };
    // Serializing plain structs of numbers and texts has nothing that can fail.
    serde_json::to_string(&json).unwrap_or_default() + "\n"
}

fn stitch<'a>(own: &'a OwnStitch, writer: &Writer<'_>) -> StitchJson<'a> {
    StitchJson {
        name: writer.own_name(own),
        whole_name: own.name.as_deref(),
        work: writer.spelled(&own.made),
        how: own.how.as_deref(),
        makes: own.made.count(),
    }
}

fn size<'a>(plan: &'a Plan, index: usize, size: &'a SizePlan, shape: &SideShape, words: &Words) -> SizeJson<'a> {
    // Data are English, whatever the pages speak.
    let english = Words::of(Language::EN);
    let source = plan.design.sizes.get(index).and_then(|size| source_words(&size.source, &english));
    let writer = Writer { words, terms: plan.design.terms };
    let rounds = size.rounds.iter().zip(&shape.rounds).map(|(one, at)| {
        let (radius, height, strain) = (mm(at.radius), mm(at.height), tidy(at.hoop_strain, 4));
        RoundJson { radius_mm: radius, height_mm: height, hoop_strain: strain, ..round(plan, size, one, &writer) }
    });
    let on_head = |index: usize| {
        let at = shape.worn.as_ref()?.rounds.get(index)?;
        let strain = tidy(at.hoop_strain, 4);
        Some(OnHeadJson { radius_mm: mm(at.radius), height_mm: mm(at.height), hoop_strain: strain })
    };
    let rounds = rounds.enumerate().map(|(index, round)| RoundJson { on_head: on_head(index), ..round });
    SizeJson {
        name: &size.name,
        head_mm: size.head.map(mm),
        source: source.unwrap_or_else(|| "measured".to_owned()),
        finished_circumference_mm: mm(size.finished),
        wanted_mm: mm(size.wanted),
        rounds: rounds.collect(),
        closed_flat: size.closed_flat(),
        step_down: size.step_down.iter().map(|stitch| abbreviation(*stitch, plan.design.terms)).collect(),
        parts: size.parts.iter().map(|own| part(size, own)).collect(),
        yarn: size.yarn.iter().map(|one| yarn(plan, one)).collect(),
        worn: shape.worn.as_ref().map(worn),
        warnings: &size.warnings,
    }
}

/// Most rounds begin where the one before began, and say nothing of slip stitches.
const fn is_zero(slipped: &u32) -> bool {
    *slipped == 0
}

/// A round without its predicted shape.
fn round<'a>(plan: &'a Plan, size: &'a SizePlan, round: &Round, writer: &Writer<'_>) -> RoundJson<'a> {
    let instruction = Instruction::of(round, size.below(round));
    RoundJson {
        round: round.number,
        part: &size.part_of(round).name,
        stitch: abbreviation(round.stitch, plan.design.terms),
        r#loop: loop_word(round.loops()),
        stitches_in: round.before,
        stitches_out: round.after,
        instruction: writer.counted(&instruction),
        count: writer.count(&instruction, Gaps::OPEN),
        slipped: round.slipped,
        worked: round.ops.iter().map(|op| [op.consumed, op.count()]).collect(),
        colour: colour(plan, round.colour),
        circumference_mm: mm(plan.gauge_of(round).circumference(round.after)),
        radius_mm: 0.0,
        height_mm: 0.0,
        hoop_strain: 0.0,
        on_head: None,
    }
}

fn worn(worn: &Worn) -> WornJson {
    let [brow, ears] = worn.marks();
    WornJson {
        tape_to_edge_mm: mm(worn.tape),
        tape_to_brow_mm: mm(brow),
        tape_over_ears_mm: mm(ears),
        sits: match worn.sits() {
            Sits::Top => "above the brow",
            Sits::Brow => "to the brow",
            Sits::Between => "between brow and ears",
            Sits::Ears => "over the ears",
            Sits::Below => "below the ears",
        },
        tightest_round: worn.tightest as u32 + 1,
        grip: tidy(worn.grip, 4),
        holds: match worn.holds() {
            Holds::Slips => "slips",
            Holds::Rests => "rests",
            Holds::Grips => "grips",
            Holds::Pinches => "pinches",
        },
    }
}

fn part<'a>(size: &SizePlan, part: &'a PartPlan) -> PartJson<'a> {
    let stacking = size.stacking(part);
    PartJson {
        name: &part.name,
        rounds: [part.first, part.last],
        target_mm: mm(part.target),
        reached_mm: mm(part.reached),
        deviation_percent: tidy(part.deviation_percent(), 3),
        length_mm: mm(part.length),
        growth_needed: tidy(part.growth_needed, 3),
        growth_used: tidy(part.growth_used, 3),
        worst_mm: mm(part.worst),
        multiple: part.multiple.map(|multiple| multiple.to_string()),
        shaped_in: part.shaped_in.map(|within| match within {
            ShapedIn::Plain => "plain",
            ShapedIn::Between => "between",
        }),
        folded: part.folded.map(|folded| FoldedJson { first_round: folded.first, length_mm: mm(folded.length) }),
        stacked: stacking.most.map(|(round, share)| StackedJson { round, share: tidy(share, 3) }),
        corners: stacking.polygon.filter(|polygon| polygon.last == part.last).map(|polygon| CornersJson {
            corners: polygon.corners,
            across_flats_mm: mm(polygon.across_flats),
            across_corners_mm: mm(polygon.across_corners),
        }),
        reasons: &part.reasons,
    }
}

fn yarn<'a>(plan: &'a Plan, used: &YarnUse) -> YarnJson<'a> {
    YarnJson {
        colour: colour(plan, used.colour),
        metres: tidy(used.metres, 1),
        grams: tidy(used.grams, 1),
        balls: used.balls,
        estimated: used.estimated,
    }
}

fn colour(plan: &Plan, index: Option<usize>) -> Option<&str> {
    index.and_then(|index| plan.design.yarn.colours.get(index)).map(|colour| colour.name.as_str())
}

fn mm(length: Mm) -> f64 {
    tidy(length.mm(), 3)
}

/// The loops of a round in one word: `both`, `back` or `front`.
pub(super) fn loop_word(loops: Loops) -> &'static str {
    match loops {
        Loops::Both => "both",
        Loops::Back => "back",
        Loops::Front => "front",
    }
}
