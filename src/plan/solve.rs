//! From a design to a plan: every size, every part, every round.

use super::choose::{Choice, Entry, FEWEST, Task, Ways, choose};
use super::explain::{self, Solved};
use super::finish::step_down;
use super::gauges::gauges;
use super::phase::{Manner, Memory};
use super::profile::{Base, Outline, factor};
use super::recount::recount;
use super::round::{Begin, Close, Op, Round};
use super::yarn::yarn;
use super::{Foundation, PartPlan, Plan, SizePlan, colours};
use crate::design::{Body, Design, Finish, Part, Profile, Said, Shape, Shaping, Size, Start, Tolerance, Work};
use crate::report::{Diagnostic, Place, Report};
use crate::stitch::Stitch;
use crate::units::{Gauge, Mm};

/// Most rounds of a part and most stitches of a round; beyond these a length or a swatch is mistaken.
const MOST_ROUNDS: f64 = 2000.0;
const MOST_STITCHES: f64 = 12_000.0;

/// Solves a design for every size.
///
/// Nothing where a wish can't be met; the report then says which, with the arithmetic and the nearest thing that can
/// be done. Warnings go into the report, those about one size into that size too.
pub fn solve(design: &Design, report: &mut Report) -> Option<Plan> {
    let gauges = gauges(design, report)?;
    if design.sizes.is_empty() || design.parts.is_empty() {
        let help = "a design needs at least one size and one part";
        report.add(Diagnostic::error("empty-design", "there is nothing to work").help(help).at(design.title.place));
        return None;
    }
    let mut sizes: Vec<Option<SizePlan>> = Vec::new();
    for (index, size) in design.sizes.iter().enumerate() {
        let before = sizes.last().and_then(Option::as_ref);
        let solved = Solver::new(design, &gauges, (index, size), before, report).solve();
        sizes.push(solved);
    }
    let sizes = sizes.into_iter().collect::<Option<Vec<_>>>()?;
    Some(Plan { design: design.clone(), gauges, sizes })
}

/// What stands at the end of the rounds so far.
#[derive(Clone, Copy)]
struct Standing {
    count: u32,
    /// Circumference wished there, mm.
    wished: f64,
    /// Width of its stitches, mm.
    width: f64,
    /// Δ of the last shaped round.
    repeat: i64,
}

struct Solver<'a> {
    design: &'a Design,
    gauges: &'a [(Stitch, Gauge)],
    index: usize,
    size: &'a Size,
    /// The size solved before, whose instructions are shared where that costs little.
    alike: Option<&'a SizePlan>,
    report: &'a mut Report,
    standing: Option<Standing>,
    memory: Memory,
    foundation: Foundation,
    rounds: Vec<Round>,
    parts: Vec<PartPlan>,
    warnings: Vec<String>,
}

/// How a solved part enters: what it stands on, as the outline and the choice of counts see it.
struct Entrance {
    real: f64,
    wished: f64,
    /// Count said for the first round.
    said: Option<u32>,
}

impl<'a> Solver<'a> {
    fn new(
        design: &'a Design,
        gauges: &'a [(Stitch, Gauge)],
        (index, size): (usize, &'a Size),
        alike: Option<&'a SizePlan>,
        report: &'a mut Report,
    ) -> Self {
        Self {
            design,
            gauges,
            index,
            size,
            alike,
            report,
            standing: None,
            memory: Memory::default(),
            foundation: Foundation::Ring,
            rounds: Vec::new(),
            parts: Vec::new(),
            warnings: Vec::new(),
        }
    }

    fn solve(mut self) -> Option<SizePlan> {
        let design = self.design;
        for (index, part) in design.parts.iter().enumerate() {
            match &part.body {
                Body::Profile(profile) => self.profile(part, profile)?,
                Body::Written(lines) => self.written(index, part, lines)?,
            }
        }
        let step_down = self.finish();
        let yarn = yarn(design, self.gauges, &self.rounds);
        Some(SizePlan {
            name: self.size.name.clone(),
            head: self.size.head,
            finished: self.size.around,
            foundation: self.foundation,
            rounds: self.rounds,
            parts: self.parts,
            finish: design.finish.value,
            step_down,
            yarn,
            warnings: self.warnings,
        })
    }

    fn gauge(&self, stitch: Stitch) -> Gauge {
        let own = self.gauges.iter().find(|(of, _)| *of == stitch).or(self.gauges.first());
        own.map_or(Gauge { width: Mm::new(5.0), height: Mm::new(5.0), grams: None, assumed: true }, |(_, gauge)| *gauge)
    }

    fn refuse<T>(&mut self, code: &'static str, place: Option<Place>, message: String, help: &str) -> Option<T> {
        self.report.add(Diagnostic::error(code, message).help(help).at(place));
        None
    }

    fn warn(&mut self, code: &'static str, place: Option<Place>, message: String, help: &str) {
        self.warnings.push(message.clone());
        self.report.add(Diagnostic::warning(code, message).help(help).at(place));
    }

    /// Solves one part and adds its rounds.
    fn profile(&mut self, part: &Part, profile: &Profile) -> Option<()> {
        let gauge = self.gauge(part.stitch);
        let place = profile.place.or(part.name.place);
        self.lengths(part, &profile.shape, place)?;
        let entrance = self.entrance(part, profile, place)?;
        let base = Base {
            size: self.index,
            real: entrance.real,
            wished: entrance.wished,
            settled: f64::from(profile.settle) * gauge.height.mm(),
            factor: factor(self.design.shaping),
        };
        let Some(outline) = Outline::new(&profile.shape, base) else {
            let message = format!("the {} has no length for size {}", part.name.value, self.size.name);
            return self.refuse("missing-length", place, message, "give one length for every size");
        };
        let rounds = self.count_rounds(part, profile, &outline, place)?;
        let task = self.task(part, profile, &outline, &entrance, rounds);
        let widest = task.bands.iter().fold(0.0_f64, |most, band| most.max(band.1));
        if widest > MOST_STITCHES {
            let message = format!("the {} would have {widest:.0} stitches in a round", part.name.value);
            return self.refuse("too-large", place, message, "check the units of the lengths and of the swatch");
        }
        let Some(choice) = choose(&task) else {
            let first = self.rounds.len() as u32 + 1;
            let names = (part.name.value.as_str(), self.size.name.as_str());
            self.report.add(explain::impossible(&task, first, place, names, gauge.width.mm()));
            return None;
        };
        self.steepness(part, &outline, base.factor, place);
        self.add(part, profile, &outline, &task, &choice);
        Some(())
    }

    /// Refuses lengths that can't be worked.
    fn lengths(&mut self, part: &Part, shape: &Shape, place: Option<Place>) -> Option<()> {
        let at = self.index;
        let pick = |values: &[Mm]| values.get(at).map(|value| value.mm());
        let asked: Vec<(&str, Option<f64>)> = match shape {
            Shape::Flat { around } | Shape::Sphere { around } => vec![("circumference", pick(around))],
            Shape::Dome { around, rise } => vec![("circumference", pick(around)), ("rise", pick(rise))],
            Shape::Straight { depth } => vec![("depth", pick(depth))],
            Shape::Flare { width, angle } => {
                let angle = angle.get(at).map(|angle| angle.radians());
                vec![("width", pick(width)), ("flare", angle.map(|a| if a.is_finite() { 1.0 } else { a }))]
            }
            Shape::Taper { depth, around } => vec![("depth", pick(depth)), ("circumference", pick(around))],
            Shape::Close => Vec::new(),
        };
        for (what, value) in asked {
            let fine = value.is_none_or(|mm| mm.is_finite() && mm > 0.0 && mm < 1e5);
            if !fine {
                let shown = value.unwrap_or(0.0);
                let name = &part.name.value;
                let message = format!("the {what} of the {name} is {shown} mm in size {}", self.size.name);
                return self.refuse("length-range", place, message, "give a length above 0 and below 100 m");
            }
        }
        Some(())
    }

    /// What the part stands on.
    fn entrance(&mut self, part: &Part, profile: &Profile, place: Option<Place>) -> Option<Entrance> {
        let name = part.name.value.clone();
        match (profile.start, self.standing) {
            (Start::Before, Some(standing)) => {
                let real = f64::from(standing.count) * standing.width;
                Some(Entrance { real, wished: standing.wished, said: None })
            }
            (Start::Before, None) => {
                let message = format!("the {name} comes first and has nothing to stand on");
                self.refuse("no-start", place, message, "start the first part with a ring or a ring of chains")
            }
            (Start::Ring { .. } | Start::ChainRing { .. }, Some(_)) => {
                let message = format!("the {name} starts with a ring, but rounds stand before it");
                self.refuse("late-start", place, message, "only the first part starts with a ring")
            }
            (Start::Ring { stitches }, None) => {
                self.foundation = Foundation::Ring;
                if let Shape::Straight { .. } | Shape::Close = profile.shape {
                    let message = format!("the {name} can't go on straight from a point");
                    let help = "put a crown or base before it, or start with a ring of chains";
                    return self.refuse("no-start", place, message, help);
                }
                self.ring_count(stitches, place)?;
                Some(Entrance { real: 0.0, wished: 0.0, said: stitches })
            }
            (Start::ChainRing { chains, stitches }, None) => {
                self.foundation = Foundation::ChainRing(chains);
                self.ring_count(Some(chains), place)?;
                self.ring_count(stitches, place)?;
                let real = f64::from(chains) * self.gauge(Stitch::CH).width.mm();
                if let Shape::Straight { .. } = profile.shape {
                    // A tube has as many stitches as are said, or one for every chain.
                    let count = stitches.unwrap_or(chains);
                    let wished = f64::from(count) * self.gauge(part.stitch).width.mm();
                    return Some(Entrance { real, wished, said: Some(count) });
                }
                Some(Entrance { real, wished: real, said: stitches })
            }
        }
    }

    fn ring_count(&mut self, count: Option<u32>, place: Option<Place>) -> Option<()> {
        match count {
            Some(count) if count < FEWEST || f64::from(count) > MOST_STITCHES => {
                let message = format!("a ring of {count} can't be worked round");
                self.refuse("ring-count", place, message, "three is the least that closes to a round; six is usual")
            }
            _ => Some(()),
        }
    }

    /// How many rounds the part takes.
    fn count_rounds(&mut self, part: &Part, profile: &Profile, outline: &Outline, place: Option<Place>) -> Option<u32> {
        let height = self.gauge(part.stitch).height.mm();
        let (rounds, name, units) = (outline.rounds(height), part.name.value.clone(), self.design.units);
        let (have, one) = (explain::length(outline.length, units), explain::length(height, units));
        if rounds < 1.0 {
            let message = if outline.closes {
                format!("the {name} is {have} from edge to middle; a round of {one} and the drawing in need more")
            } else {
                format!("the {name} is {have} long, less than half a round of {one}")
            };
            let help = format!("make it at least {one}, use a shorter stitch, or leave the part out");
            return self.refuse("too-short", place, message, &help);
        }
        if rounds > MOST_ROUNDS {
            let message = format!("the {name} would take {rounds:.0} rounds of {one}");
            return self.refuse("too-long", place, message, "check the units of the lengths and of the swatch");
        }
        let rounds = rounds as u32;
        let shapes = !matches!(profile.shape, Shape::Straight { .. });
        if shapes && rounds <= profile.settle {
            let message = format!("the {name} has {rounds} rounds and should end with {} even ones", profile.settle);
            let help = format!("keep at least one round for shaping: settle {} or less", rounds - 1);
            return self.refuse("settle", place, message, &help);
        }
        Some(rounds)
    }

    fn task(&self, part: &Part, profile: &Profile, outline: &Outline, entrance: &Entrance, rounds: u32) -> Task {
        let gauge = self.gauge(part.stitch);
        let (width, height) = (gauge.width.mm(), gauge.height.mm());
        let bands: Vec<(f64, f64)> = outline.bands(rounds, profile.settle, height);
        let bands: Vec<(f64, f64)> = bands.into_iter().map(|(low, high)| (low / width, high / width)).collect();
        let tolerance = |band: &(f64, f64)| match self.design.tolerance {
            Tolerance::Length(length) => length.mm() / width,
            Tolerance::Share(share) => share * (band.0 + band.1) / 2.0,
        };
        let entry = match self.standing {
            Some(standing) => Entry::After { count: standing.count, repeat: standing.repeat },
            None => first_round(entrance.said, outline.around(height) / width, &bands),
        };
        let rewidened = self.standing.is_some_and(|standing| (standing.width - width).abs() > 1e-6 * width);
        let ways =
            ways(&bands, entrance.real / width, rounds.saturating_sub(profile.settle), &profile.shape, rewidened);
        Task {
            tolerance: bands.iter().map(tolerance).collect(),
            ways,
            bands,
            entry,
            most: profile.most.max(1),
            corners: match self.design.shaping {
                Shaping::Corners(n) => n.max(1),
                Shaping::Scattered => 1,
            },
            alike: self.alike(),
            prefer: self.design.prefer,
        }
    }

    /// What the rounds of this part change by in the size solved before.
    fn alike(&self) -> Vec<i64> {
        let part = self.parts.len();
        let rounds = self.alike.map_or(&[][..], |size| &size.rounds);
        rounds.iter().filter(|round| round.part == part).map(Round::change).collect()
    }

    /// Warns of a part that widens faster than flat fabric can.
    fn steepness(&mut self, part: &Part, outline: &Outline, factor: f64, place: Option<Place>) {
        let change = outline.around(outline.shaped) - outline.around(0.0);
        if change.abs() > factor * outline.shaped * 1.02 {
            let most = explain::length(outline.around(0.0) + factor * outline.shaped, self.design.units);
            let name = &part.name.value;
            let message =
                format!("the {name} of size {} changes faster than flat fabric can and will ruffle", self.size.name);
            self.warn("ruffles", place, message, &format!("flat it would end {most} round; make it longer"));
        }
    }

    /// Adds the rounds of a solved part and its figures.
    fn add(&mut self, part: &Part, profile: &Profile, outline: &Outline, task: &Task, choice: &Choice) {
        let gauge = self.gauge(part.stitch);
        let width = gauge.width.mm();
        let first = self.rounds.len() as u32 + 1;
        let colours = self.colours(part, choice.counts.len() as u32);
        let begin = self.begin(part.stitch, first == 1);
        let manner = Manner {
            shaping: self.design.shaping,
            prefer: self.design.prefer,
            chain_counts: matches!(begin, Begin::Chain { counts: true, .. }),
        };
        for (index, (count, colour)) in choice.counts.iter().copied().zip(colours).enumerate() {
            let before = self.standing.map_or(0, |standing| standing.count);
            let target = f64::from(count) - task.distance(index, count);
            let loops = if index == 0 { part.loops } else { Default::default() };
            let ops: Vec<Op> = match before {
                0 => (0..count).map(|_| Op::into_ring(part.stitch)).collect(),
                _ => self.memory.round(part.stitch, before, count, &manner),
            };
            let change = i64::from(count) - i64::from(before);
            let repeat = if change == 0 { self.standing.map_or(0, |standing| standing.repeat) } else { change };
            self.standing = Some(Standing { count, wished: target * width, width, repeat });
            self.rounds.push(Round {
                number: first + index as u32,
                part: self.parts.len(),
                stitch: part.stitch,
                before,
                after: count,
                ops: ops.into_iter().map(|op| op.under(loops)).collect(),
                colour,
                begin: self.begin(part.stitch, before == 0),
                close: self.close(),
                target: Some(Mm::new(target * width)),
                place: None,
            });
        }
        let end = task.bands.last().map_or(0.0, |band| band.0);
        if let Some(standing) = &mut self.standing {
            standing.wished = end * width;
        }
        let plan = self.figures(part, profile, outline, task, choice);
        self.parts.push(PartPlan { first, last: self.rounds.len() as u32, ..plan });
    }

    fn figures(&self, part: &Part, profile: &Profile, outline: &Outline, task: &Task, choice: &Choice) -> PartPlan {
        let gauge = self.gauge(part.stitch);
        let (width, height) = (gauge.width.mm(), gauge.height.mm());
        let rounds = choice.counts.len() as u32;
        let (end, last) = (task.bands.last().map_or(0.0, |band| band.0), choice.counts.last().copied().unwrap_or(0));
        let distances = choice.counts.iter().enumerate().map(|(round, count)| task.distance(round, *count));
        let worst = distances.fold(0.0_f64, |most, new| if new.abs() > most.abs() { new } else { most });
        let (start, steps) = match task.entry {
            Entry::First { .. } => (choice.counts.first().copied().unwrap_or(0), rounds.saturating_sub(1)),
            Entry::After { count, .. } => (count, rounds),
        };
        let settle = if matches!(profile.shape, Shape::Straight { .. }) { 0 } else { profile.settle };
        let shaped = f64::from(steps.saturating_sub(settle).max(1));
        let begun = match task.entry {
            Entry::First { .. } => outline.around(outline.shaped / f64::from(rounds.saturating_sub(settle).max(1))),
            Entry::After { .. } => outline.around(0.0),
        };
        let growth = ((end - begun / width) / shaped, (f64::from(last) - f64::from(start)) / shaped);
        let wanted = outline.length - if outline.closes { height } else { 0.0 };
        let solved = Solved {
            task,
            counts: &choice.counts,
            shape: &profile.shape,
            gauge,
            stitch: part.stitch,
            wanted,
            first: self.rounds.len() as u32 + 1 - rounds,
            growth,
            units: self.design.units,
            gauges: self.gauges,
        };
        PartPlan {
            name: part.name.value.clone(),
            first: 0,
            last: 0,
            target: Mm::new(end * width),
            reached: gauge.circumference(last),
            wanted_length: Some(Mm::new(wanted)),
            length: gauge.height * f64::from(rounds),
            growth_needed: growth.0,
            growth_used: growth.1,
            worst: Mm::new(worst * width),
            reasons: solved.reasons(),
        }
    }

    fn colours(&mut self, part: &Part, rounds: u32) -> Vec<Option<usize>> {
        if part.stripes.is_empty() {
            let first = (!self.design.yarn.colours.is_empty()).then_some(0);
            return vec![first; rounds as usize];
        }
        let (colours, lacking) = colours::stripes(&part.stripes, rounds);
        if lacking > 0 {
            let message = format!(
                "the stripes of the {} ask for {} rounds and size {} has {rounds}",
                part.name.value,
                rounds + lacking,
                self.size.name
            );
            self.warn("stripes-cut", part.name.place, message, "the last stripes are cut; shorten one or use `rest`");
        }
        colours
    }

    fn begin(&self, stitch: Stitch, first: bool) -> Begin {
        let row = stitch.row();
        match self.design.work {
            // A chain before single crochet never counts (common practice).
            Work::Joined { chain_counts } if row.turning > 0 => {
                Begin::Chain { chains: row.turning, counts: chain_counts && row.turning > 1 }
            }
            Work::Joined { .. } => Begin::Plain,
            Work::Spiral if first => Begin::Plain,
            Work::Spiral => Begin::Spiral,
        }
    }

    fn close(&self) -> Close {
        match self.design.work {
            Work::Joined { .. } => Close::Join,
            Work::Spiral => Close::Spiral,
        }
    }

    /// Takes over a part whose rounds are written.
    fn written(&mut self, index: usize, part: &Part, lines: &[Said<String>]) -> Option<()> {
        let first = self.rounds.len() as u32 + 1;
        let before = self.standing.map_or(0, |standing| standing.count);
        let counted = recount(self.design, index, lines, (before, first), self.report)?;
        if first == 1 {
            self.foundation = counted.foundation;
        }
        let colours = self.colours(part, counted.rounds.len() as u32);
        let part_index = self.parts.len();
        let mut length = Mm::ZERO;
        for (round, colour) in counted.rounds.into_iter().zip(colours) {
            let gauge = self.gauge(round.stitch);
            length += gauge.height;
            let change = round.change();
            let repeat = self.standing.map_or(0, |standing| standing.repeat);
            self.standing = Some(Standing {
                count: round.after,
                wished: gauge.circumference(round.after).mm(),
                width: gauge.width.mm(),
                repeat: if change == 0 { repeat } else { change },
            });
            self.rounds.push(Round { part: part_index, colour, ..round });
        }
        self.memory.forget();
        let last = self.rounds.len() as u32;
        if last < first {
            let message = format!("the {} has no rounds", part.name.value);
            return self.refuse("no-rounds", part.name.place, message, "write at least one round");
        }
        let reached = self.standing.map_or(Mm::ZERO, |standing| Mm::new(standing.wished));
        let own: Vec<i64> = self.rounds.iter().skip(first as usize - 1).map(Round::change).collect();
        let shaped = own.iter().filter(|change| **change != 0).count().max(1);
        let growth = own.iter().sum::<i64>() as f64 / shaped as f64;
        self.parts.push(PartPlan {
            name: part.name.value.clone(),
            first,
            last,
            target: reached,
            reached,
            wanted_length: None,
            length,
            growth_needed: growth,
            growth_used: growth,
            worst: Mm::ZERO,
            reasons: vec!["Worked as written".to_owned()],
        });
        Some(())
    }

    /// Adds an edge round, or gives the stitches of the step down.
    fn finish(&mut self) -> Vec<Stitch> {
        let Some(last) = self.rounds.last().cloned() else { return Vec::new() };
        match (self.design.finish.value, self.design.work) {
            (Finish::SlipStitchEdge, _) => {
                let number = last.number + 1;
                let ops = (0..last.after).map(|_| Op::plain(Stitch::SL_ST)).collect();
                let begin = match self.design.work {
                    Work::Joined { .. } => Begin::Plain,
                    Work::Spiral => Begin::Spiral,
                };
                if let Some(part) = self.parts.last_mut() {
                    part.last = number;
                }
                self.rounds.push(Round {
                    number,
                    stitch: Stitch::SL_ST,
                    before: last.after,
                    ops,
                    begin,
                    place: None,
                    ..last
                });
                Vec::new()
            }
            (Finish::StepDown, Work::Spiral) => step_down(last.stitch),
            (Finish::StepDown, Work::Joined { .. }) => {
                let message = "joined rounds end level and need no step down".to_owned();
                self.warn("no-step", self.design.finish.place, message, "fasten off, or work in a spiral");
                Vec::new()
            }
            (Finish::FastenOff, _) => Vec::new(),
        }
    }
}

/// Counts a first round may have: as said, or around what the fabric needs one round's height from the middle.
fn first_round(said: Option<u32>, natural: f64, bands: &[(f64, f64)]) -> Entry {
    if let Some(count) = said {
        return Entry::First { least: count, most: count };
    }
    let (mut least, mut most) = (0.9 * natural, 1.4 * natural);
    if let [(low, high)] = bands {
        // A part of one round has to fit at once.
        (least, most) = (least.min(*low), most.max(*high));
    }
    let least = (least.ceil().clamp(0.0, MOST_STITCHES) as u32).max(FEWEST);
    Entry::First { least, most: (most.ceil().clamp(0.0, MOST_STITCHES) as u32).max(least) }
}

/// How each round may be shaped.
fn ways(bands: &[(f64, f64)], start: f64, shaped: u32, shape: &Shape, rewidened: bool) -> Vec<Ways> {
    let mut before = start;
    let mut ways = Vec::with_capacity(bands.len());
    for (index, (low, high)) in bands.iter().enumerate() {
        let middle = (low + high) / 2.0;
        let change = middle - before;
        before = middle;
        let straight = matches!(shape, Shape::Straight { .. });
        ways.push(if index == 0 && rewidened {
            Ways::Both
        } else if straight || index as u32 >= shaped || change.abs() < 1e-9 {
            Ways::Even
        } else if change > 0.0 {
            Ways::Grow
        } else {
            Ways::Shrink
        });
    }
    ways
}
