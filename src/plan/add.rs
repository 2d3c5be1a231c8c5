//! Adding the rounds of a solved part, with their attributes and the figures of the part.

use super::choose::{Choice, Entry, Task};
use super::explain::Solved;
use super::finish::rise;
use super::phase::Manner;
use super::solve::{Solver, Standing};
use super::{PartPlan, ShapedIn, colours};
use crate::craft::{Begin, Close, Loops, Op, Round, Stitch};
use crate::design::shapes::Outline;
use crate::design::{Part, Preference, Profile, Start, Work};
use crate::units::Mm;

impl Solver<'_> {
    /// Adds the rounds of a solved part and its figures.
    pub(super) fn add(
        &mut self,
        part: &Part,
        profile: &Profile,
        outline: &Outline,
        task: &Task,
        (choice, views): (&Choice, Vec<(Preference, usize, f64)>),
    ) -> Option<()> {
        let gauge = self.gauge_at(self.parts.len());
        let width = gauge.width.mm();
        let first = self.rounds.len() as u32 + 1;
        let colours = self.colours(part, choice.counts.len() as u32);
        let begin = self.begin(part.stitch, first == 1);
        let manner = Manner {
            shaping: self.design.shaping,
            prefer: self.design.prefer,
            flat: self.design.kind.row().flat,
            chain_counts: matches!(begin, Begin::Chain { counts: true, .. }),
        };
        let mut worked = 0;
        for (index, (count, colour)) in choice.counts.iter().copied().zip(colours).enumerate() {
            let before = self.standing.map_or(0, |standing| standing.count);
            let target = f64::from(count) - task.distance(index, count);
            // One round under one loop folds the fabric; more would make ridges.
            let loops = if index == 0 { part.loops } else { Loops::default() };
            // A round that changes the count is plain: one of the pattern's own, or one between its rounds.
            if before > 0 && before == count && self.texture(self.parts.len()).is_some() {
                let round = self.textured(worked)?;
                let part = self.parts.len();
                self.standing = Some(Standing {
                    count,
                    wished: target * width,
                    width,
                    repeat: self.standing.map_or(0, |standing| standing.repeat),
                });
                self.rounds.push(Round { part, colour, target: Some(Mm::new(target * width)), ..round });
                worked += 1;
                continue;
            }
            let texture = self.texture(self.parts.len()).filter(|_| !profile.shape.form().even);
            let plain = texture.filter(|texture| before > 0 || texture.begins_plain());
            let plain = plain.and_then(|texture| texture.plain_at(worked));
            let (stitch, loops) = plain.unwrap_or((part.stitch, loops));
            // One that is put in begins the pattern anew.
            worked = if plain.is_some() {
                worked + 1
            } else if texture.is_some() {
                0
            } else {
                worked
            };
            let ops: Vec<Op> = match before {
                0 if self.design.work == Work::Spiral => rise(stitch, count),
                0 => (0..count).map(|_| Op::into_ring(stitch)).collect(),
                _ => self.memory.round(stitch, before, count, &manner),
            };
            let change = i64::from(count) - i64::from(before);
            // An even round keeps in mind what the last shaped one did, so that shaping goes on as it was after it.
            let repeat = if change == 0 { self.standing.map_or(0, |standing| standing.repeat) } else { change };
            self.standing = Some(Standing { count, wished: target * width, width, repeat });
            self.rounds.push(Round {
                number: first + index as u32,
                part: self.parts.len(),
                stitch,
                before,
                after: count,
                slipped: 0,
                ops: ops.into_iter().map(|op| op.under(loops)).collect(),
                colour,
                begin: self.begin(stitch, before == 0),
                close: self.close(),
                target: Some(Mm::new(target * width)),
                place: None,
                said: None,
            });
        }
        let end = task.bands.last().map_or(0.0, |band| band.0);
        // The next part starts from the edge as wished, not from the last round's own place within its band.
        if let Some(standing) = &mut self.standing {
            standing.wished = end * width;
        }
        self.note_stray(task, &choice.counts, (first, width));
        let mut plan = self.figures(part, profile, outline, task, (choice, views));
        plan.folded = self.folded(profile, first);
        if self.texture(self.parts.len()).is_some() {
            // The rounds of a pattern may differ in height, and the last time through needn't be whole.
            let own = self.rounds.iter().skip(first as usize - 1);
            plan.length = own.fold(Mm::ZERO, |sum, round| sum + self.gauge_of(round).height);
        }
        if let Some(texture) = self.texture(self.parts.len()).filter(|_| !profile.shape.form().even) {
            let within = if texture.has_plain() { ShapedIn::Plain } else { ShapedIn::Between };
            let shown = match within {
                ShapedIn::Plain => "The count changes in the plain rounds of the pattern".to_owned(),
                ShapedIn::Between => "The pattern has no plain round: the count changes in a plain round between one time through and the next".to_owned(),
            };
            plan.reasons.push(format!("{shown}, by a multiple of {} stitches", texture.multiple.of()));
            plan.shaped_in = Some(within);
        }
        self.lacks += plan.wanted_length.map_or(0.0, |wanted| (wanted - plan.length).mm());
        self.parts.push(PartPlan { first, last: self.rounds.len() as u32, ..plan });
        Some(())
    }

    fn figures(
        &self,
        part: &Part,
        profile: &Profile,
        outline: &Outline,
        task: &Task,
        (choice, views): (&Choice, Vec<(Preference, usize, f64)>),
    ) -> PartPlan {
        let gauge = self.gauge_at(self.parts.len());
        let (width, height) = (gauge.width.mm(), gauge.height.mm());
        let rounds = choice.counts.len() as u32;
        let (end, last) = (task.bands.last().map_or(0.0, |band| band.0), choice.counts.last().copied().unwrap_or(0));
        let distances = choice.counts.iter().enumerate().map(|(round, count)| task.distance(round, *count));
        let worst = distances.fold(0.0_f64, |most, new| if new.abs() > most.abs() { new } else { most });
        let (start, steps) = match task.entry {
            Entry::First { .. } => (choice.counts.first().copied().unwrap_or(0), rounds.saturating_sub(1)),
            Entry::After { count, .. } => (count, rounds),
        };
        let settle = if profile.shape.form().even { 0 } else { self.settle(profile) };
        let shaped = f64::from(steps.saturating_sub(settle).max(1));
        // The first round of a piece is chosen, not grown: growth is counted from it on both sides.
        let begun = match task.entry {
            Entry::First { .. } if profile.start.get(self.index) == Some(&Start::Chain) => outline.around(0.0),
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
            made_up: self.made_up(profile),
            first: self.rounds.len() as u32 + 1 - rounds,
            growth,
            units: self.design.units,
            gauges: self.gauges,
            views,
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
            multiple: self.worked_over(profile),
            folded: None,
            shaped_in: None,
            reasons: solved.reasons(),
        }
    }

    pub(super) fn colours(&mut self, part: &Part, rounds: u32) -> Vec<Option<usize>> {
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

    pub(super) fn begin(&self, stitch: Stitch, first: bool) -> Begin {
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

    pub(super) fn close(&self) -> Close {
        match self.design.work {
            Work::Joined { .. } => Close::Join,
            Work::Spiral => Close::Spiral,
        }
    }
}
