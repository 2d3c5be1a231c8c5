//! Solving one part: from its profile to the choice of counts.

use std::collections::BTreeSet;

use super::choose::{Choice, Entry, FEWEST, KNEE, Offer, Order, Picked, Task, Ways};
use super::explain;
use super::half::half;
use super::multiples::Asked;
use super::profile::factor;
use super::refuse::Impossible;
use super::solve::Solver;
use super::stretches::{Stretch, held_at_ends, stretched};
use crate::craft::{Foundation, Multiple, Stitch};
use crate::design::shapes::{Base, Field, Outline};
use crate::design::{Body, Part, Preference, Profile, Shape, Shaping, Start, Tolerance};
use crate::limits;
use crate::report::Place;
use crate::units::{Angle, EPSILON, Gauge, Mm, TOLERANCE, TURN};

/// Weight of the last round of a part, where it has to fit and where it is the free edge of a brim.
const FITTED_EDGE: f64 = 20.0;
const FREE_EDGE: f64 = 2.0;
/// Angle between neighbouring rounds from which a knee is seen in the finished piece, in degrees.
const SHARP: f64 = 31.0;
/// Tolerance within a flat part, beyond what the fabric gives, as a share of the circumference.
const FLAT: f64 = 0.0075;
/// Smallest tolerance anywhere else, in stitches: a round can't be made to fit better than a stitch or two.
const FITTED: f64 = 1.5;
/// Smallest tolerance within a dome or a ball, as a share of its circumference: the fabric rounds off what is less.
const ROUNDED: f64 = 0.03;
/// Shaping that lies flat enough, over that of a flat part.
const STEADY: f64 = 1.25;

/// Share of their width by which stitches differ before a part counts as worked in narrower or wider ones.
pub(super) const SAME_WIDTH: f64 = TOLERANCE;
/// How much faster than flat fabric a part may change before it is said to ruffle: the rounding of its rounds.
const RUFFLES: f64 = 1.02;
/// Fewest and most stitches of a first round, over what the fabric needs there: common practice begins a little full.
const FIRST: (f64, f64) = (0.9, 1.4);

/// Fewest rounds of a ball: one that opens, one at its widest, one that closes.
const FEWEST_OF_A_BALL: f64 = 3.0;

/// What a part stands on, as the outline and the choice of counts see it.
pub(super) struct Entrance {
    /// Circumference that the rounds before give, mm; 0 for a ring.
    pub(super) real: f64,
    /// Circumference that was wished there, mm.
    pub(super) wished: f64,
    /// Count said for the first round.
    pub(super) said: Option<u32>,
    /// True where the first round goes evenly into as many chains, and shaping begins after it.
    pub(super) chained: bool,
}

impl Entrance {
    /// One that begins in a point, in a hole or on rounds.
    fn new(real: f64, wished: f64, said: Option<u32>) -> Self {
        Self { real, wished, said, chained: false }
    }
}

/// What a part asks of the rounds of one size.
pub(super) struct Wish<'p> {
    part: &'p Part,
    profile: &'p Profile,
    outline: Outline,
    /// Circumference over radius of a flat piece.
    factor: f64,
    place: Option<Place>,
    /// Its rounds in every number it can be worked in, the nearest first.
    tasks: Vec<Offer>,
    /// What its last round is a multiple of.
    pub(super) asked: Asked,
    /// True for a ball, whose second half mirrors its first.
    mirrored: bool,
    /// For each of the tasks, how its rounds keep their counts in a pattern; empty where each may change it.
    stretches: Vec<Vec<Stretch>>,
    /// What the counts of a pattern are multiples of.
    throughout: Multiple,
}

impl Wish<'_> {
    /// What there is to choose: all rounds, or the first half of a ball up to its equator.
    pub(super) fn offers(&self) -> Vec<Offer> {
        let offers = self.tasks.iter().zip(&self.stretches);
        let one = |(offer, stretches): (&Offer, &Vec<Stretch>)| match (self.mirrored, &stretches[..]) {
            (true, _) => Offer { task: half(&offer.task), ..*offer },
            (false, []) => offer.clone(),
            (false, stretches) => Offer { task: stretched(&offer.task, stretches, self.throughout), ..*offer },
        };
        offers.map(one).collect()
    }

    /// What each preference comes to, where they differ: the kinds of rounds to remember, and by how much the farthest
    /// round misses its circumference, in stitches.
    fn views(&self, picked: &Picked, others: &[(Preference, Picked)]) -> Vec<(Preference, usize, f64)> {
        let view = |prefer: Preference, picked: &Picked| {
            let offer = self.tasks.get(picked.offer)?;
            let counts = self.whole(picked).counts;
            let far = counts.iter().enumerate().map(|(round, count)| offer.task.distance(round, *count).abs());
            // Even rounds are a kind too.
            let entered = match offer.task.entry {
                Entry::First { .. } => counts.first().copied().unwrap_or(0),
                Entry::After { count, .. } => count,
            };
            let before = std::iter::once(entered).chain(counts.iter().copied());
            let kinds = before.zip(&counts).map(|(before, after)| i64::from(*after) - i64::from(before));
            let kinds: BTreeSet<i64> = kinds.collect();
            Some((prefer, kinds.len(), far.fold(0.0, f64::max)))
        };
        if others.iter().all(|(_, other)| other.choice.counts == picked.choice.counts) {
            return Vec::new();
        }
        let own = self.tasks.first().map(|offer| offer.task.prefer).and_then(|prefer| view(prefer, picked));
        own.into_iter().chain(others.iter().filter_map(|(prefer, other)| view(*prefer, other))).collect()
    }

    /// All rounds of what was chosen.
    fn whole(&self, picked: &Picked) -> Choice {
        let choice = &picked.choice;
        let stretches = self.stretches.get(picked.offer).map_or(&[][..], Vec::as_slice);
        if !stretches.is_empty() {
            let kept = choice.counts.iter().zip(stretches);
            let counts = kept.flat_map(|(count, stretch)| std::iter::repeat_n(*count, stretch.rounds as usize));
            return Choice { counts: counts.collect(), ..choice.clone() };
        }
        let mut counts = choice.counts.clone();
        if self.mirrored {
            let all = self.tasks.get(picked.offer).map_or(0, |offer| offer.task.bands.len());
            let missing = all.saturating_sub(counts.len());
            let back: Vec<u32> = counts.iter().rev().skip(counts.len() - missing.min(counts.len())).copied().collect();
            counts.extend(back);
        }
        Choice { counts, ..choice.clone() }
    }
}

/// Where a round stands in its part.
enum Within {
    /// Within a flat part.
    Flat,
    /// Within a curved part with so many stitches where it is widest.
    Curve(f64),
    /// At its edge, or in a part that goes straight.
    Edge,
}

impl Solver<'_> {
    /// What a part asks of the rounds of this size, in every way it can be worked; complains where there is none.
    pub(super) fn wish<'p>(&mut self, part: &'p Part, profile: &'p Profile) -> Option<Wish<'p>> {
        let gauge = self.gauge_at(self.parts.len());
        let place = profile.place.or(part.name.place);
        self.lengths(part, &profile.shape, place)?;
        let asked = self.asked()?;
        let entrance = self.entrance(part, profile, (asked.multiple, place))?;
        // Shaping starts from what the rounds before give, an even side from what was wished there: else the half stitch
        // by which a crown misses its size would be carried down the side.
        let base = Base {
            size: self.index,
            real: entrance.real,
            wished: entrance.wished,
            settled: f64::from(self.settle(profile)) * gauge.height.mm(),
            factor: factor(self.design.shaping),
        };
        let Some(outline) = profile.shape.outline(base) else {
            let message = format!("the {} has no length for size {}", part.name.value, self.size.name);
            return self.refuse("missing-length", place, message, "give one length for every size");
        };
        let rounds = self.count_rounds(part, profile, &outline, place)?;
        let rounds = self.on_chains(part, (&profile.shape, &entrance), rounds, place)?;
        self.narrows(part, (&profile.shape, &outline), place)?;
        // The first of the numbers of repeats that may be used stands for all of them until they are chosen among.
        let mut repeats = profile.repeats.iter().map(|repeats| Some(*repeats)).collect::<Vec<_>>();
        if repeats.is_empty() {
            repeats.push(None);
        }
        let task = self.task(profile, &outline, (&entrance, asked.multiple), (rounds, repeats[0]));
        // Before choosing: the search would take long over counts that nobody works.
        let widest = task.bands.iter().fold(0.0_f64, |most, band| most.max(band.1));
        if widest > f64::from(limits::STITCHES) {
            let message = format!("the {} would have {widest:.0} stitches in a round", part.name.value);
            return self.refuse("part-too-large", place, message, "check the units of the lengths and of the swatch");
        }
        // But for a mat a circumference says nothing of rounds: another number may lead to it in fewer odd steps.
        let height = gauge.height.mm();
        let free = !self.design.kind.row().flat && !entrance.chained;
        let settle = self.settle(profile);
        let others = outline.other_rounds(height).filter(|other| free && *other > settle);
        let other = |(rounds, repeats): (u32, Option<u32>)| {
            let task = self.task(profile, &outline, (&entrance, asked.multiple), (rounds, repeats));
            Offer { extra: task.lambda() * outline.misfit(f64::from(rounds), height), task }
        };
        let mut tasks = vec![Offer { task, extra: 0.0 }];
        tasks.extend(repeats.iter().skip(1).map(|repeats| {
            let task = self.task(profile, &outline, (&entrance, asked.multiple), (rounds, *repeats));
            Offer { task, extra: 0.0 }
        }));
        tasks.extend(others.flat_map(|rounds| repeats.iter().map(move |repeats| (rounds, *repeats))).map(other));
        let form = profile.shape.form();
        let mirrored =
            form.curved && form.closes && self.standing.is_none() && entrance.said.is_none() && entrance.real == 0.0;
        let texture = self.texture(self.parts.len()).filter(|_| !form.even);
        let stretches = |offer: &Offer| {
            let rewidened = offer.task.ways.first() == Some(&Ways::Both);
            let rounds = offer.task.bands.len() as u32;
            texture.map_or(Vec::new(), |texture| texture.stretches(rounds, self.standing.is_none(), rewidened))
        };
        let stretches: Vec<Vec<Stretch>> = tasks.iter().map(stretches).collect();
        for (offer, stretches) in tasks.iter_mut().zip(&stretches) {
            held_at_ends(&mut offer.task, stretches);
        }
        let throughout = texture.map_or(Multiple::ANY, |texture| texture.multiple);
        Some(Wish { part, profile, outline, factor: base.factor, place, tasks, asked, mirrored, stretches, throughout })
    }

    /// Complains that no counts can be found.
    pub(super) fn impossible(&mut self, wish: &Wish<'_>) {
        let Some(offer) = wish.tasks.first() else { return };
        if self.no_stretch(wish.part, &offer.task) {
            return;
        }
        if self.no_multiple(wish.part, &offer.task, &wish.asked) {
            return;
        }
        let impossible = Impossible {
            task: &offer.task,
            part: &wish.part.name.value,
            size: &self.size.name,
            first: self.rounds.len() as u32 + 1,
            width: self.gauge_at(self.parts.len()).width.mm(),
            units: self.design.units,
            place: wish.place,
        };
        self.report.add(impossible.diagnostic());
    }

    /// Adds the rounds that were picked for a part.
    pub(super) fn grant(&mut self, wish: &Wish<'_>, picked: &Picked, others: Vec<(Preference, Picked)>) -> Option<()> {
        let offer = wish.tasks.get(picked.offer)?;
        let choice = wish.whole(picked);
        self.within_multiple(wish.part, &offer.task, &wish.asked, &choice.counts)?;
        // Only now: a part that can't be worked at all is not also said to ruffle.
        self.take_room(choice.counts.iter().map(|count| u64::from(*count)).sum(), wish.part)?;
        self.steepness(wish.part, &wish.outline, wish.factor, wish.place);
        let views = wish.views(picked, &others);
        self.add(wish.part, wish.profile, &wish.outline, &offer.task, (&choice, views))
    }

    /// Refuses lengths that can't be worked.
    fn lengths(&mut self, part: &Part, shape: &Shape, place: Option<Place>) -> Option<()> {
        let (at, measures) = (self.index, shape.measures());
        let of = |values: &Option<Vec<Mm>>| values.as_ref().and_then(|values| values.get(at)).map(|value| value.mm());
        let along = if shape.form().takes.contains(&Field::Width) { "width" } else { "depth" };
        let angle = shape.flare_of(at).map(Angle::radians);
        let asked = [
            (along, of(&measures.length)),
            ("circumference", of(&measures.around)),
            ("rise", of(&measures.rise)),
            ("edge", of(&measures.edge)),
            ("flare", angle.map(|angle| if angle.is_finite() { 1.0 } else { angle })),
        ];
        for (what, value) in asked {
            let fine = value.is_none_or(|mm| mm.is_finite() && mm > 0.0 && mm < limits::LENGTH_MM);
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
    fn entrance(
        &mut self,
        part: &Part,
        profile: &Profile,
        (multiple, place): (Multiple, Option<Place>),
    ) -> Option<Entrance> {
        let name = part.name.value.clone();
        let start = profile.start.get(self.index).copied().unwrap_or(Start::Before);
        match (start, self.standing) {
            (Start::Before, Some(standing)) => {
                let real = f64::from(standing.count) * standing.width;
                Some(Entrance::new(real, standing.wished, None))
            }
            (Start::Before, None) => {
                let message = format!("the {name} comes first and has nothing to stand on");
                self.refuse("no-start", place, message, "start the first part with a ring or a ring of chains")
            }
            (Start::Ring { .. } | Start::ChainRing { .. } | Start::Chain, Some(_)) => {
                let message = format!("the {name} starts with a ring, but rounds stand before it");
                self.refuse("late-start", place, message, "only the first part starts with a ring")
            }
            (Start::Ring { stitches }, None) => {
                self.foundation = Foundation::Ring;
                if !profile.shape.form().leaves_a_point() {
                    let message = format!("the {name} can't go on straight from a point");
                    let help = "put a crown or base before it, or start with a ring of chains";
                    return self.refuse("no-start", place, message, help);
                }
                self.ring_count(stitches, place)?;
                // A ring of yarn is drawn shut: the outline begins in a point.
                Some(Entrance::new(0.0, 0.0, stitches))
            }
            (Start::Chain, None) => {
                let width = self.gauge_at(self.parts.len()).width.mm();
                let count = self.chains(profile, multiple, self.size.around.mm() / width);
                self.ring_count(Some(count), place)?;
                self.foundation = Foundation::ChainRound(count);
                let wished = self.size.around.mm();
                Some(Entrance { real: f64::from(count) * width, wished, said: Some(count), chained: true })
            }
            (Start::ChainRing { chains, stitches }, None) => {
                self.foundation = Foundation::ChainRing(chains);
                self.ring_count(Some(chains), place)?;
                self.ring_count(stitches, place)?;
                // Chains don't draw shut, so that the hole is as wide as they are long.
                let real = f64::from(chains) * self.gauge(Stitch::CH).width.mm();
                if profile.shape.form().even {
                    // A tube has as many stitches as are said, or one for every chain.
                    let count = stitches.unwrap_or(chains);
                    let wished = f64::from(count) * self.gauge_at(self.parts.len()).width.mm();
                    if count == chains {
                        self.foundation = Foundation::ChainRound(chains);
                    }
                    return Some(Entrance::new(real, wished, Some(count)));
                }
                Some(Entrance::new(real, real, stitches))
            }
        }
    }

    fn ring_count(&mut self, count: Option<u32>, place: Option<Place>) -> Option<()> {
        match count {
            Some(count) if !(FEWEST..=limits::STITCHES).contains(&count) => {
                let message = format!("a ring of {count} can't be worked round");
                self.refuse("ring-count", place, message, "three is the least that closes to a round; six is usual")
            }
            _ => Some(()),
        }
    }

    /// How many rounds the part takes.
    fn count_rounds(&mut self, part: &Part, profile: &Profile, outline: &Outline, place: Option<Place>) -> Option<u32> {
        let height = self.gauge_at(self.parts.len()).height.mm();
        let own = outline.rounds(height);
        // A side makes up for what the crown's whole rounds lose or gain, so that the depth of a hat misses by half a round.
        let made_up = self.made_up(profile);
        let rounds = match own >= 1.0 && made_up != 0.0 {
            true => ((outline.length + made_up) / height).round().max(1.0),
            false => own,
        };
        let (name, units) = (part.name.value.clone(), self.design.units);
        let (have, one) = (explain::length(outline.length, units), explain::length(height, units));
        if rounds < 1.0 {
            let message = if outline.closes {
                format!(
                    "the {name} is {have} from edge to middle, too little for a round of {one} and drawing in the rest"
                )
            } else {
                format!("the {name} is {have} long, less than half a round of {one}")
            };
            let help = if outline.closes {
                "leave the part out and draw the last round together with the yarn".to_owned()
            } else {
                format!("make it at least {one}, use a shorter stitch, or leave the part out")
            };
            return self.refuse("too-short", place, message, &help);
        }
        if outline.closes && profile.shape.form().curved && rounds < FEWEST_OF_A_BALL {
            let noun = if rounds < 1.5 { "round" } else { "rounds" };
            let message = format!(
                "the {name} of size {} is {have} from middle to middle, {rounds:.0} {noun} of {one}: no ball",
                self.size.name
            );
            // From middle to middle is half of what it is round, and the last half round of it is drawn in.
            let least = explain::length(2.0 * (FEWEST_OF_A_BALL + 0.5) * height, units);
            let help = format!("make it at least {least} round, or work it in a shorter stitch");
            return self.refuse("too-short", place, message, &help);
        }
        if rounds > f64::from(limits::ROUNDS) {
            let message = format!("the {name} would take {rounds:.0} rounds of {one}");
            return self.refuse("part-too-large", place, message, "check the units of the lengths and of the swatch");
        }
        let rounds = rounds as u32;
        // A straight part is even all through, whatever settles.
        if !profile.shape.form().even && rounds <= profile.settle {
            let noun = if rounds == 1 { "round" } else { "rounds" };
            let message = format!(
                "the {name} of size {} has {rounds} {noun} and should end with {} even ones",
                self.size.name, profile.settle
            );
            let help = format!("keep at least one round for shaping: settle {} or less, or a longer part", rounds - 1);
            return self.refuse("settle", place, message, &help);
        }
        Some(rounds)
    }

    /// What a part makes up for of the depth that those before it lack, mm: the even side of a hat alone can.
    pub(super) fn made_up(&self, profile: &Profile) -> f64 {
        if self.design.kind.row().worn && profile.shape.form().even { self.lacks } else { 0.0 }
    }

    /// What the counts of the part have to satisfy, in stitches of its own gauge.
    fn task(
        &self,
        profile: &Profile,
        outline: &Outline,
        (entrance, multiple): (&Entrance, Multiple),
        (rounds, repeats): (u32, Option<u32>),
    ) -> Task {
        let gauge = self.gauge_at(self.parts.len());
        let (width, height) = (gauge.width.mm(), gauge.height.mm());
        let form = profile.shape.form();
        // On a chain the first round is even, and the shape begins above it.
        let chained = entrance.chained && !form.even;
        let said = entrance.said.filter(|_| !chained).map(|count| f64::from(count) * width);
        let settle = self.settle(profile);
        let own = outline.bands(rounds - u32::from(chained), settle, height, said);
        let bands: Vec<(f64, f64)> = chained.then_some((entrance.real, entrance.real)).into_iter().chain(own).collect();
        let bands: Vec<(f64, f64)> = bands.into_iter().map(|(low, high)| (low / width, high / width)).collect();
        let widest = bands.iter().fold(0.0_f64, |most, band| most.max(band.1));
        // Corners stand up a little however they are counted, so that only scattered shaping is held to lying flat.
        let flat = form.flat && self.design.shaping == Shaping::Scattered;
        let last = bands.len().saturating_sub(1);
        let within = |round: usize| match round < last {
            true if flat => Within::Flat,
            true if outline.lies_flat((round + 1) as f64 * height) => Within::Flat,
            // A rounded edge is few rounds long, and what a dome may smooth over would leave nothing of it.
            true if form.curved && !outline.bends() => Within::Curve(widest),
            _ => Within::Edge,
        };
        let tolerance = |(round, band)| self.round_tolerance(band, width, within(round));
        // A wider stitch wants fewer of them on the same circumference, whichever way the part goes.
        let rewidened = self.standing.is_some_and(|standing| (standing.width - width).abs() > SAME_WIDTH * width);
        // An even part keeps what it is given, however far that is from its own wish.
        let free = form.even;
        let allowed = |(round, band): (usize, &(f64, f64))| match free {
            // Even rounds keep the multiple of what they go on from.
            _ if round == last && !multiple.is_any() && (!free || rewidened) => {
                self.allowed_by_multiple(band, width, multiple)
            }
            true => f64::INFINITY,
            false => self.allowed(band, width, round == last, form.brim),
        };
        // So many repeats in every round are to the counts what corners are; where they stand is another matter.
        let corners = match self.design.shaping {
            Shaping::Corners(n) => n.max(1),
            Shaping::Scattered => repeats.unwrap_or(1).max(1),
        };
        let entry = match self.standing {
            Some(standing) => Entry::After { count: standing.count, repeat: standing.repeat },
            None => first_round(entrance.said, outline.around(height) / width, &bands, corners),
        };
        let shaped = rounds.saturating_sub(settle);
        Task {
            tolerance: bands.iter().enumerate().map(tolerance).collect(),
            allowed: bands.iter().enumerate().map(allowed).collect(),
            ways: ways(&bands, entrance.real / width, shaped, &profile.shape, rewidened),
            bands,
            entry,
            most: profile.most.max(1),
            corners,
            multiple,
            throughout: Multiple::ANY,
            edge: if form.brim { FREE_EDGE } else { FITTED_EDGE },
            steady: self.steady(height / width, corners),
            flat: factor(self.design.shaping) * height / width,
            knee: knee(&profile.shape, gauge, widest * width),
            leaves: (form.curved && !form.closes).then_some(0.0),
            opens: (form.curved || form.flat) && self.standing.is_none() && entrance.said.is_none(),
            curved: form.curved,
            order: order(&profile.shape, outline),
            prefer: self.design.prefer,
        }
    }

    /// By how much a round may stray from its band, in stitches; within a flat part what matters is that the fabric can
    /// lie flat, and a curve rounds off what is less than its own share.
    fn round_tolerance(&self, band: &(f64, f64), width: f64, within: Within) -> f64 {
        let middle = (band.0 + band.1) / 2.0;
        let asked = self.design.tolerance.of(Mm::new(middle * width)).mm() / width;
        match within {
            Within::Flat => FLAT * middle,
            Within::Curve(widest) => asked.max(FITTED).max(ROUNDED * widest),
            Within::Edge => asked.max(FITTED),
        }
    }

    /// By how much a round may stray from its band before the designer is told, in stitches: half of one at least, as no
    /// whole count may come nearer. Where the design doesn't say, edges alone are held, and the free one of a brim less.
    pub(super) fn allowed(&self, band: &(f64, f64), width: f64, edge: bool, brim: bool) -> f64 {
        let tolerance = self.design.tolerance;
        let asked: f64 = tolerance.of(Mm::new((band.0 + band.1) / 2.0 * width)).mm() / width;
        match (tolerance, edge, brim) {
            (Tolerance::Usual, false, _) => f64::INFINITY,
            (Tolerance::Usual, true, true) => (2.0 * asked).max(0.5),
            _ => asked.max(0.5),
        }
    }

    /// Most by which a round can change and be steady, at least once at every corner.
    fn steady(&self, ratio: f64, corners: u32) -> f64 {
        let most = STEADY * factor(self.design.shaping) * ratio;
        if corners > 1 { (most / f64::from(corners)).ceil() * f64::from(corners) } else { most }
    }

    /// Warns of a part that widens faster than flat fabric can.
    fn steepness(&mut self, part: &Part, outline: &Outline, factor: f64, place: Option<Place>) {
        let change = outline.around(outline.shaped) - outline.around(0.0);
        let form = match &part.body {
            Body::Profile(profile) => Some(profile.shape.form()),
            Body::Written(_) => None,
        };
        if !form.is_some_and(|form| form.ruffles) && change.abs() > factor * outline.shaped * RUFFLES {
            let most = explain::length(outline.around(0.0) + factor * outline.shaped, self.design.units);
            let name = &part.name.value;
            let message =
                format!("the {name} of size {} changes faster than flat fabric can and will ruffle", self.size.name);
            self.warn("ruffles", place, message, &format!("flat it would end {most} round; make it longer"));
        }
    }
}

/// Weight κ of a knee of an outline this far round, per square radian. The thickness t rounds it off: at radius R a
/// bend decays with β = 3^¼ / √(R t), and a knee θ leaves θ β h/2 between neighbouring rounds of height h. A flat part is
/// laid flat and has none.
fn knee(shape: &Shape, gauge: Gauge, around: f64) -> f64 {
    let form = shape.form();
    if form.flat || form.even || form.ruffles {
        return 0.0;
    }
    let decay = 3.0_f64.sqrt().sqrt() / (around / TURN * gauge.thick.mm()).sqrt();
    let left = (decay * gauge.height.mm() / 2.0).min(1.0) / Angle::from_degrees(SHARP).radians();
    KNEE * left * left
}

/// How the rates of a part follow one another: they fall, and those of a part that narrows to an edge fall off too.
fn order(shape: &Shape, outline: &Outline) -> Order {
    let narrows = outline.around(outline.shaped) < outline.around(0.0);
    let form = shape.form();
    if narrows && !(form.curved || form.flat || form.closes) { Order::Rises } else { Order::Falls }
}

/// Counts a first round may have: as said, or around what the fabric needs one round's height from the middle, and so far
/// that there is one with as many stitches for every corner.
fn first_round(said: Option<u32>, natural: f64, bands: &[(f64, f64)], corners: u32) -> Entry {
    if let Some(count) = said {
        return Entry::First { least: count, most: count };
    }
    let (mut least, mut most) = (FIRST.0 * natural, FIRST.1 * natural);
    if let [(low, high)] = bands {
        // A part of one round has to fit at once.
        (least, most) = (least.min(*low), most.max(*high));
    }
    if corners > 1 {
        let nearest = (natural / f64::from(corners)).round().max(1.0) * f64::from(corners);
        (least, most) = (least.min(nearest), most.max(nearest));
    }
    let least = (least.ceil().clamp(0.0, f64::from(limits::STITCHES)) as u32).max(FEWEST);
    Entry::First { least, most: (most.ceil().clamp(0.0, f64::from(limits::STITCHES)) as u32).max(least) }
}

/// How each round may be shaped.
fn ways(bands: &[(f64, f64)], start: f64, shaped: u32, shape: &Shape, rewidened: bool) -> Vec<Ways> {
    // The bands of a flat part have room, and its edge may lie below the middle of the one before.
    let whole = bands.last().map_or(0.0, |(low, high)| (low + high) / 2.0 - start);
    let mut before = start;
    let mut found = Vec::with_capacity(bands.len());
    for (index, (low, high)) in bands.iter().enumerate() {
        let middle = (low + high) / 2.0;
        let change = if shape.form().flat { whole } else { middle - before };
        before = middle;
        found.push(if index == 0 && rewidened {
            Ways::Both
        } else if shape.form().even || index as u32 >= shaped || change.abs() < EPSILON {
            // Never both ways elsewhere: a round that gives back what the one before took shows as a ridge.
            Ways::Even
        } else if change > 0.0 {
            Ways::Grow
        } else {
            Ways::Shrink
        });
    }
    found
}
