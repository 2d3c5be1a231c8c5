//! From a design to a plan: every size, every part, every round.

use super::finish::step_down;
use super::gauges::gauges;
use super::phase::Memory;
use super::recount::recount;
use super::yarn::yarn;
use super::{PartPlan, Plan, SizePlan, outcome};
use crate::craft::{Begin, Foundation, Op, Round, Stitch};
use crate::design::{Body, Design, Finish, Part, Said, Size, Work, listed, nearest, shortened};
use crate::limits;
use crate::report::{Diagnostic, Place, Report};
use crate::units::{Gauge, Mm};

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
    let mut room = limits::OPERATIONS;
    for (index, size) in design.sizes.iter().enumerate() {
        let before = sizes.last().and_then(Option::as_ref);
        let mut solver = Solver::new(design, &gauges, (index, size), before, report);
        solver.room = room;
        let solved = solver.solve();
        // A size that is refused took no room, and the next may have a complaint of its own.
        room =
            room.saturating_sub(solved.iter().flat_map(|size| &size.rounds).map(|round| round.ops.len() as u64).sum());
        sizes.push(solved);
    }
    let mut sizes = sizes.into_iter().collect::<Option<Vec<_>>>()?;
    outcome::alike(design, &mut sizes, report);
    super::measures::depths(design, &mut sizes, report);
    Some(Plan { design: design.clone(), gauges, sizes })
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

/// One size being solved.
pub(super) struct Solver<'a> {
    pub(super) design: &'a Design,
    pub(super) gauges: &'a [(Stitch, Gauge)],
    pub(super) index: usize,
    pub(super) size: &'a Size,
    /// The size solved before, whose instructions are shared where that costs little.
    pub(super) alike: Option<&'a SizePlan>,
    pub(super) report: &'a mut Report,
    pub(super) standing: Option<Standing>,
    pub(super) memory: Memory,
    pub(super) foundation: Foundation,
    /// Yarn that a written round named last, index into the design's colours.
    named: Option<usize>,
    pub(super) rounds: Vec<Round>,
    pub(super) parts: Vec<PartPlan>,
    pub(super) warnings: Vec<String>,
    /// Operations that there may still be.
    room: u64,
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
            named: None,
            rounds: Vec::new(),
            parts: Vec::new(),
            warnings: Vec::new(),
            room: limits::OPERATIONS,
        }
    }

    /// Takes the room for so many operations, or refuses a part that would make the design too large.
    pub(super) fn take_room(&mut self, operations: u64, part: &Part) -> Option<()> {
        match self.room.checked_sub(operations) {
            Some(left) => self.room = left,
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

    fn solve(mut self) -> Option<SizePlan> {
        let design = self.design;
        for (index, part) in design.parts.iter().enumerate() {
            match &part.body {
                Body::Profile(profile) => self.profile(part, profile)?,
                Body::Written(lines) => self.written(index, part, lines)?,
            }
        }
        self.fit();
        let step_down = self.finish();
        let yarn = yarn(design, self.gauges, &self.rounds);
        let finished = self.comes_out();
        self.missed(finished);
        // A size without a measure of its own is as wide as its rounds make it.
        let wanted = if self.size.around == Mm::ZERO { finished } else { self.size.around };
        Some(SizePlan {
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
        })
    }

    pub(super) fn gauge(&self, stitch: Stitch) -> Gauge {
        let own = self.gauges.iter().find(|(of, _)| *of == stitch).or(self.gauges.first());
        own.map_or(Gauge { width: Mm::new(5.0), height: Mm::new(5.0), grams: None, assumed: true }, |(_, gauge)| *gauge)
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
        let counted = recount(self.design, index, lines, (before, first), self.report)?;
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
            (Finish::FastenOff, _) => Vec::new(),
        }
    }
}
