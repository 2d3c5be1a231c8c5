//! From a design to a plan: every size, every part, every round.

use std::cell::Cell;

use rayon::prelude::*;

use super::choose::{Offer, Picked, choose_all};
use super::finish::step_down;
use super::gauges::{self, Scale, scales};
use super::part::Wish;
use super::phase::Memory;
use super::recount::recount;
use super::strays::{self, Stray};
use super::texture::{Texture, textures};
use super::yarn::yarn;
use super::{PartPlan, Plan, SizePlan, outcome};
use crate::craft::{Begin, Foundation, Op, Round, Stitch};
use crate::design::{Body, Design, Finish, Part, Preference, Profile, Said, Size, Work, listed, nearest, shortened};
use crate::limits;
use crate::report::{Diagnostic, Place, Report};
use crate::units::{Gauge, Mm};

/// Solves a design for every size.
///
/// Nothing where a wish can't be met; the report then says which, with the arithmetic and the nearest thing that can
/// be done. Warnings go into the report, those about one size into that size too.
pub fn solve(design: &Design, report: &mut Report) -> Option<Plan> {
    let textures = textures(design, report)?;
    let gauges = gauges::gauges(design, &textures, report)?;
    let scales = scales(design, &gauges, &textures);
    let fabric = Fabric { gauges, textures, scales };
    if design.sizes.is_empty() || design.parts.is_empty() {
        let help = "a design needs at least one size and one part";
        report.add(Diagnostic::error("empty-design", "there is nothing to work").help(help).at(design.title.place));
        return None;
    }
    // A size that is refused takes the room of its parts with it: the design is refused anyway.
    let room = Cell::new(limits::OPERATIONS);
    let mut solvers: Vec<Solver<'_>> =
        design.sizes.iter().enumerate().map(|size| Solver::new(design, &fabric, &room, size)).collect();
    for (index, part) in design.parts.iter().enumerate() {
        match &part.body {
            Body::Profile(profile) => together(&mut solvers, part, profile),
            Body::Written(lines) => {
                for solver in solvers.iter_mut().filter(|solver| !solver.failed) {
                    let lines = lines.get(solver.index).map_or(&[][..], Vec::as_slice);
                    solver.failed = solver.written(index, part, lines).is_none();
                }
            }
        }
    }
    let (mut sizes, mut strays) = (Vec::new(), Vec::new());
    for mut solver in solvers {
        strays.push(std::mem::take(&mut solver.strays));
        let (own, size) = solver.end();
        own.diagnostics.into_iter().for_each(|found| report.add(found));
        sizes.push(size);
    }
    let mut sizes = sizes.into_iter().collect::<Option<Vec<_>>>()?;
    outcome::alike(design, &mut sizes, report);
    super::measures::depths(design, &mut sizes, report);
    strays::tell(design, &strays, &mut sizes, report);
    let Fabric { gauges, scales, .. } = fabric;
    Some(Plan { design: design.clone(), gauges, scales, sizes })
}

/// Solves one part for all sizes at once, so that they are shaped alike. Sizes that can't be worked are left out, and
/// the others chosen without them, so that every size has its complaints.
fn together(solvers: &mut [Solver<'_>], part: &Part, profile: &Profile) {
    let mut wishes: Vec<(usize, Wish<'_>)> = Vec::new();
    for (index, solver) in solvers.iter_mut().enumerate().filter(|(_, solver)| !solver.failed) {
        match solver.wish(part, profile) {
            Some(wish) => wishes.push((index, wish)),
            None => solver.failed = true,
        }
    }
    while !wishes.is_empty() {
        let offers: Vec<Vec<Offer>> = wishes.iter().map(|(_, wish)| wish.offers()).collect();
        let (chosen, others) = rayon::join(|| choose_all(&offers), || others(&offers));
        match chosen {
            Ok((picked, _)) => {
                for (at, ((index, wish), picked)) in wishes.iter().zip(&picked).enumerate() {
                    let others = others.iter().filter_map(|(prefer, picked)| Some((*prefer, picked.get(at)?.clone())));
                    if let Some(solver) = solvers.get_mut(*index) {
                        solver.failed = solver.grant(wish, picked, others.collect()).is_none();
                    }
                }
                return;
            }
            Err(at) => {
                let (index, wish) = wishes.remove(at);
                if let Some(solver) = solvers.get_mut(index) {
                    solver.impossible(&wish);
                    solver.failed = true;
                }
            }
        }
    }
}

/// What the other preferences would pick, so that the plan can say what they cost against each other.
fn others(offers: &[Vec<Offer>]) -> Vec<(Preference, Vec<Picked>)> {
    let own = offers.iter().flatten().map(|offer| offer.task.prefer).next();
    let all = [Preference::Easy, Preference::Balanced, Preference::Close];
    let of = |prefer: Preference| {
        let one = |offer: &Offer| offer.preferring(prefer);
        let offers: Vec<Vec<Offer>> = offers.iter().map(|size| size.iter().map(one).collect()).collect();
        Some((prefer, choose_all(&offers).ok()?.0))
    };
    all.into_par_iter().filter(|prefer| Some(*prefer) != own).filter_map(of).collect()
}

/// What stands at the end of the rounds so far.
#[derive(Clone, Copy)]
pub(super) struct Standing {
    /// Its stitches.
    pub(super) count: u32,
    /// Circumference wished there, mm.
    pub(super) wished: f64,
    /// Width of its stitches, mm.
    pub(super) width: f64,
    /// Δ of the last shaped round.
    pub(super) repeat: i64,
}

/// What is known of the stitches of all parts.
struct Fabric {
    gauges: Vec<(Stitch, Gauge)>,
    textures: Vec<Option<Texture>>,
    scales: Vec<Option<Scale>>,
}

/// One size being solved.
pub(super) struct Solver<'a> {
    pub(super) design: &'a Design,
    pub(super) gauges: &'a [(Stitch, Gauge)],
    pub(super) textures: &'a [Option<Texture>],
    pub(super) scales: &'a [Option<Scale>],
    pub(super) index: usize,
    pub(super) size: &'a Size,
    /// What is to be said of it.
    pub(super) report: Report,
    /// True once a part can't be worked.
    failed: bool,
    pub(super) standing: Option<Standing>,
    /// Depth that the parts so far lack of what is wanted of them, mm; below zero where they are deeper.
    pub(super) lacks: f64,
    pub(super) memory: Memory,
    pub(super) foundation: Foundation,
    /// Yarn that a written round named last, index into the design's colours.
    named: Option<usize>,
    pub(super) rounds: Vec<Round>,
    pub(super) parts: Vec<PartPlan>,
    pub(super) warnings: Vec<String>,
    pub(super) strays: Vec<Stray>,
    /// Operations that there may still be in all sizes.
    room: &'a Cell<u64>,
}

impl<'a> Solver<'a> {
    fn new(design: &'a Design, fabric: &'a Fabric, room: &'a Cell<u64>, (index, size): (usize, &'a Size)) -> Self {
        Self {
            design,
            gauges: &fabric.gauges,
            textures: &fabric.textures,
            scales: &fabric.scales,
            index,
            size,
            report: Report::new(),
            failed: false,
            standing: None,
            lacks: 0.0,
            memory: Memory::default(),
            foundation: Foundation::Ring,
            named: None,
            rounds: Vec::new(),
            parts: Vec::new(),
            warnings: Vec::new(),
            strays: Vec::new(),
            room,
        }
    }

    /// Takes the room for so many operations, or refuses a part that would make the design too large.
    pub(super) fn take_room(&mut self, operations: u64, part: &Part) -> Option<()> {
        match self.room.get().checked_sub(operations) {
            Some(left) => self.room.set(left),
            None => {
                let most = limits::OPERATIONS;
                let message = format!(
                    "with the {} of size {} the design has more than {most} stitches in all sizes",
                    part.name.value, self.size.name
                );
                let help = "check the units of the lengths and of the swatch; many large sizes go into a design each";
                return self.refuse("piece-too-large", part.name.place, message, help);
            }
        }
        Some(())
    }

    /// Its complaints, and the size where all its parts could be worked.
    fn end(mut self) -> (Report, Option<SizePlan>) {
        if self.failed {
            return (self.report, None);
        }
        let design = self.design;
        if self.open().is_none() {
            return (self.report, None);
        }
        self.fit();
        self.note();
        if self.halves().is_none() {
            return (self.report, None);
        }
        let step_down = self.finish();
        let yarn = yarn(design, self.gauges, &self.rounds);
        let finished = self.comes_out();
        if self.reaches(finished).is_none() {
            return (self.report, None);
        }
        self.missed(finished);
        // A size without a measure of its own is as wide as its rounds make it.
        let wanted = if self.size.around == Mm::ZERO { finished } else { self.size.around };
        let size = SizePlan {
            name: self.size.name.clone(),
            head: self.size.head,
            wanted,
            finished,
            foundation: self.foundation,
            rounds: self.rounds,
            parts: self.parts,
            finish: design.finish.value,
            step_down,
            yarn,
            warnings: self.warnings,
        };
        (self.report, Some(size))
    }

    pub(super) fn gauge(&self, stitch: Stitch) -> Gauge {
        gauges::of(self.gauges, stitch)
    }

    /// The gauge of a round, by all its stitches where its part has a pattern or a swatch of its own.
    pub(super) fn gauge_of(&self, round: &Round) -> Gauge {
        gauges::of_round(self.gauges, self.scales.get(round.part).copied().flatten(), round)
    }

    pub(super) fn refuse<T>(
        &mut self,
        code: &'static str,
        place: Option<Place>,
        message: String,
        help: &str,
    ) -> Option<T> {
        self.report.add(Diagnostic::error(code, message).help(help).at(place));
        None
    }

    pub(super) fn warn(&mut self, code: &'static str, place: Option<Place>, message: String, help: &str) {
        self.warnings.push(message.clone());
        self.report.add(Diagnostic::warning(code, message).help(help).at(place));
    }

    /// Takes over a part whose rounds are written.
    fn written(&mut self, index: usize, part: &Part, lines: &[Said<String>]) -> Option<()> {
        let first = self.rounds.len() as u32 + 1;
        // Counted against what really stands there, not against what was wished.
        let before = self.standing.map_or(0, |standing| standing.count);
        let counted = recount(self.design, index, lines, (before, first), &mut self.report)?;
        if first == 1 {
            self.foundation = counted.foundation;
        }
        self.take_room(counted.rounds.iter().map(|round| round.ops.len() as u64).sum(), part)?;
        let mut colours = self.colours(part, counted.rounds.len() as u32);
        // A colour named in an earlier part goes on where no stripes say otherwise: nobody changes yarn unasked.
        if let (Some(_), true) = (self.named, part.stripes.is_empty()) {
            colours.fill(self.named);
        }
        self.named_colours(&counted.named, &mut colours)?;
        let part_index = self.parts.len();
        let mut length = Mm::ZERO;
        for (round, colour) in counted.rounds.into_iter().zip(colours) {
            let gauge = self.gauge(round.stitch);
            length += gauge.height;
            // A solved part may follow: what it stands on is wished to be what the counts give.
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
        // Written shaping stands where its maker put it; a solved part after it scatters from its own beginning.
        self.memory.forget();
        let last = self.rounds.len() as u32;
        if last < first {
            let message = format!("the {} has no rounds", part.name.value);
            return self.refuse("no-rounds", part.name.place, message, "write at least one round");
        }
        let reached = self.standing.map_or(Mm::ZERO, |standing| Mm::new(standing.wished));
        let own: Vec<i64> = self.rounds.iter().skip(first as usize - 1).map(Round::change).collect();
        // Even rounds are left out, as they are of a solved part's growth.
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
            multiple: None,
            folded: None,
            shaped_in: None,
            reasons: vec!["Worked as written".to_owned()],
        });
        Some(())
    }

    /// Colours that written rounds name themselves; each holds until the next one named, over any stripes.
    fn named_colours(&mut self, named: &[(usize, String, Place)], colours: &mut [Option<usize>]) -> Option<()> {
        let known: Vec<&str> = self.design.yarn.colours.iter().map(|colour| colour.name.as_str()).collect();
        let letters = |name: &str| name.chars().filter(|c| c.is_alphanumeric()).collect::<String>().to_lowercase();
        let mut fine = true;
        for (from, name, place) in named {
            match known.iter().position(|known| letters(known) == letters(name)) {
                Some(index) => {
                    colours.iter_mut().skip(*from).for_each(|colour| *colour = Some(index));
                    self.named = Some(index);
                }
                None => {
                    let message = format!("the yarn has no colour `{}`", shortened(name));
                    // Without any colours the piece is drawn in one, which takes nothing from its counts.
                    if known.is_empty() {
                        let help =
                            format!("name it in the design: `yarn: {{colours: {{{}: \"#2f6f8f\"}}}}`", shortened(name));
                        self.report.add(Diagnostic::warning("unknown-colour", message).at(*place).help(help));
                        continue;
                    }
                    let help = match nearest(name, &known) {
                        Some(near) => format!("did you mean `{near}`? Its colours are {}", listed(&known)),
                        None => format!("its colours are {}", listed(&known)),
                    };
                    self.report.add(Diagnostic::error("unknown-colour", message).at(*place).help(help));
                    fine = false;
                }
            }
        }
        fine.then_some(())
    }

    /// Refuses to close flat what has no halves: a last round that was written with an odd count.
    fn halves(&mut self) -> Option<()> {
        let Some(last) = self.rounds.last() else { return Some(()) };
        let (count, number) = (last.after, last.number);
        if self.design.finish.value != Finish::CloseFlat || count % 2 == 0 {
            return Some(());
        }
        let message = format!(
            "size {} ends with {count} stitches, and a round that is closed flat has as many on one side as on the other",
            self.size.name
        );
        let help = format!("let round {number} make {} or {} stitches", count - 1, count + 1);
        self.refuse("close-flat", self.design.finish.place, message, &help)
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
                    slipped: 0,
                    ops,
                    begin,
                    place: None,
                    said: None,
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
            (Finish::FastenOff | Finish::CloseFlat, _) => Vec::new(),
        }
    }
}
