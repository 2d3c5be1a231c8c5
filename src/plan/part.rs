//! Solving one part: from its profile to the choice of counts.

use super::choose::{Entry, FEWEST, Task, Ways, choose};
use super::explain;
use super::profile::factor;
use super::refuse::Impossible;
use super::solve::Solver;
use crate::craft::{Foundation, Round, Stitch};
use crate::design::shapes::{Base, Field, Outline};
use crate::design::{Part, Profile, Shape, Shaping, Start, Tolerance};
use crate::limits;
use crate::report::Place;
use crate::units::{Angle, EPSILON, Mm, TOLERANCE};

/// Weight of the last round of a part, where it has to fit and where it is the free edge of a brim.
const FITTED_EDGE: f64 = 10.0;
const FREE_EDGE: f64 = 2.0;
/// Cost of going from shaped rounds to even ones or back, and in a flat part, where it shows.
const SWITCHED: f64 = 0.002;
const SWITCHED_FLAT: f64 = 1.0;
/// Tolerance within a flat part, beyond what the fabric gives, as a share of the circumference.
const FLAT: f64 = 0.0075;
/// Smallest tolerance anywhere else, in stitches: a round can't be made to fit better than a stitch or two.
const FITTED: f64 = 1.5;
/// Shaping that lies flat enough, over that of a flat part.
const STEADY: f64 = 1.25;

/// Share of their width by which stitches differ before a part counts as worked in narrower or wider ones.
const SAME_WIDTH: f64 = TOLERANCE;
/// How much faster than flat fabric a part may change before it is said to ruffle: the rounding of its rounds.
const RUFFLES: f64 = 1.02;
/// Fewest and most stitches of a first round, over what the fabric needs there: common practice begins a little full.
const FIRST: (f64, f64) = (0.9, 1.4);

/// What a part stands on, as the outline and the choice of counts see it.
struct Entrance {
    /// Circumference that the rounds before give, mm; 0 for a ring.
    real: f64,
    /// Circumference that was wished there, mm.
    wished: f64,
    /// Count said for the first round.
    said: Option<u32>,
}

impl Solver<'_> {
    /// Solves one part and adds its rounds.
    pub(super) fn profile(&mut self, part: &Part, profile: &Profile) -> Option<()> {
        let gauge = self.gauge(part.stitch);
        let place = profile.place.or(part.name.place);
        self.lengths(part, &profile.shape, place)?;
        let entrance = self.entrance(part, profile, place)?;
        // Shaping starts from what the rounds before give, an even side from what was wished there: else the half stitch
        // by which a crown misses its size would be carried down the side.
        let base = Base {
            size: self.index,
            real: entrance.real,
            wished: entrance.wished,
            settled: f64::from(profile.settle) * gauge.height.mm(),
            factor: factor(self.design.shaping),
        };
        let Some(outline) = profile.shape.outline(base) else {
            let message = format!("the {} has no length for size {}", part.name.value, self.size.name);
            return self.refuse("missing-length", place, message, "give one length for every size");
        };
        let rounds = self.count_rounds(part, profile, &outline, place)?;
        let mut task = self.task(part, profile, &outline, &entrance, rounds);
        // Before choosing: the search would take long over counts that nobody works.
        let widest = task.bands.iter().fold(0.0_f64, |most, band| most.max(band.1));
        if widest > f64::from(limits::STITCHES) {
            let message = format!("the {} would have {widest:.0} stitches in a round", part.name.value);
            return self.refuse("part-too-large", place, message, "check the units of the lengths and of the swatch");
        }
        let mut choice = choose(&task);
        // But for a mat a circumference says nothing of rounds: another number may lead to it in fewer odd steps.
        if !self.design.kind.row().flat {
            for other in outline.other_rounds(gauge.height.mm()).filter(|other| *other > profile.settle) {
                let another = self.task(part, profile, &outline, &entrance, other);
                let Some(mut found) = choose(&another) else { continue };
                // Weighed as odd rounds are, so that the two can be held against each other at every preference.
                found.cost += another.lambda() * outline.misfit(f64::from(other), gauge.height.mm());
                if choice.as_ref().is_none_or(|old| found.cost < old.cost) {
                    (task, choice) = (another, Some(found));
                }
            }
        }
        let Some(choice) = choice else {
            let impossible = Impossible {
                task: &task,
                part: &part.name.value,
                size: &self.size.name,
                first: self.rounds.len() as u32 + 1,
                width: gauge.width.mm(),
                units: self.design.units,
                place,
            };
            self.report.add(impossible.diagnostic());
            return None;
        };
        // Only now: a part that can't be worked at all is not also said to ruffle.
        self.take_room(choice.counts.iter().map(|count| u64::from(*count)).sum(), part)?;
        self.steepness(part, &outline, base.factor, place);
        self.add(part, profile, &outline, &task, &choice);
        Some(())
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
                if !profile.shape.form().leaves_a_point() {
                    let message = format!("the {name} can't go on straight from a point");
                    let help = "put a crown or base before it, or start with a ring of chains";
                    return self.refuse("no-start", place, message, help);
                }
                self.ring_count(stitches, place)?;
                // A ring of yarn is drawn shut: the outline begins in a point.
                Some(Entrance { real: 0.0, wished: 0.0, said: stitches })
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
                    let wished = f64::from(count) * self.gauge(part.stitch).width.mm();
                    return Some(Entrance { real, wished, said: Some(count) });
                }
                Some(Entrance { real, wished: real, said: stitches })
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
        let height = self.gauge(part.stitch).height.mm();
        let (rounds, name, units) = (outline.rounds(height), part.name.value.clone(), self.design.units);
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

    /// What the counts of the part have to satisfy, in stitches of its own gauge.
    fn task(&self, part: &Part, profile: &Profile, outline: &Outline, entrance: &Entrance, rounds: u32) -> Task {
        let gauge = self.gauge(part.stitch);
        let (width, height) = (gauge.width.mm(), gauge.height.mm());
        let bands: Vec<(f64, f64)> =
            outline.bands(rounds, profile.settle, height, entrance.said.map(|count| f64::from(count) * width));
        let bands: Vec<(f64, f64)> = bands.into_iter().map(|(low, high)| (low / width, high / width)).collect();
        // Corners stand up a little however they are counted, so that only scattered shaping is held to lying flat.
        let flat = profile.shape.form().flat && self.design.shaping == Shaping::Scattered;
        let last = bands.len().saturating_sub(1);
        let tolerance = |(round, band)| self.round_tolerance(band, width, flat && round < last);
        let entry = match self.standing {
            Some(standing) => Entry::After { count: standing.count, repeat: standing.repeat },
            None => first_round(entrance.said, outline.around(height) / width, &bands),
        };
        // A wider stitch wants fewer of them on the same circumference, whichever way the part goes.
        let rewidened = self.standing.is_some_and(|standing| (standing.width - width).abs() > SAME_WIDTH * width);
        let shaped = rounds.saturating_sub(profile.settle);
        Task {
            tolerance: bands.iter().enumerate().map(tolerance).collect(),
            ways: ways(&bands, entrance.real / width, shaped, &profile.shape, rewidened),
            bands,
            entry,
            most: profile.most.max(1),
            corners: match self.design.shaping {
                Shaping::Corners(n) => n.max(1),
                Shaping::Scattered => 1,
            },
            edge: if profile.shape.form().brim { FREE_EDGE } else { FITTED_EDGE },
            switch: if flat { SWITCHED_FLAT } else { SWITCHED },
            steady: self.steady(height / width),
            alike: self.alike(),
            prefer: self.design.prefer,
        }
    }

    /// By how much a round may stray from the middle of its band, in stitches; within a flat part what matters is that
    /// the fabric can lie flat.
    fn round_tolerance(&self, band: &(f64, f64), width: f64, within_flat: bool) -> f64 {
        let middle = (band.0 + band.1) / 2.0;
        if within_flat {
            return FLAT * middle;
        }
        let asked = match self.design.tolerance {
            Tolerance::Length(length) => length.mm() / width,
            Tolerance::Share(share) => share * middle,
        };
        asked.max(FITTED)
    }

    /// Most by which a round can change and be steady, at least once at every corner.
    fn steady(&self, ratio: f64) -> f64 {
        let most = STEADY * factor(self.design.shaping) * ratio;
        match self.design.shaping {
            Shaping::Corners(n) => (most / f64::from(n.max(1))).ceil() * f64::from(n),
            Shaping::Scattered => most,
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
        if change.abs() > factor * outline.shaped * RUFFLES {
            let most = explain::length(outline.around(0.0) + factor * outline.shaped, self.design.units);
            let name = &part.name.value;
            let message =
                format!("the {name} of size {} changes faster than flat fabric can and will ruffle", self.size.name);
            self.warn("ruffles", place, message, &format!("flat it would end {most} round; make it longer"));
        }
    }
}

/// Counts a first round may have: as said, or around what the fabric needs one round's height from the middle.
fn first_round(said: Option<u32>, natural: f64, bands: &[(f64, f64)]) -> Entry {
    if let Some(count) = said {
        return Entry::First { least: count, most: count };
    }
    let (mut least, mut most) = (FIRST.0 * natural, FIRST.1 * natural);
    if let [(low, high)] = bands {
        // A part of one round has to fit at once.
        (least, most) = (least.min(*low), most.max(*high));
    }
    let least = (least.ceil().clamp(0.0, f64::from(limits::STITCHES)) as u32).max(FEWEST);
    Entry::First { least, most: (most.ceil().clamp(0.0, f64::from(limits::STITCHES)) as u32).max(least) }
}

/// How each round may be shaped.
fn ways(bands: &[(f64, f64)], start: f64, shaped: u32, shape: &Shape, rewidened: bool) -> Vec<Ways> {
    let mut before = start;
    let mut found = Vec::with_capacity(bands.len());
    for (index, (low, high)) in bands.iter().enumerate() {
        let middle = (low + high) / 2.0;
        let change = middle - before;
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
