//! Parts that begin on a chain as long as the size, ruffles, and parts that narrow by an angle: what they need beside the
//! counts.

use super::choose::FEWEST;
use super::explain;
use super::part::Entrance;
use super::solve::Solver;
use crate::craft::Multiple;
use crate::design::shapes::Outline;
use crate::design::{Body, Part, Preference, Profile, Shape, Shaping};
use crate::report::Place;

/// Most by which a chain strays from its circumference for repeats of sixes that divide it, as a share: half of what a
/// multiple may move an edge, and all of it where easy rounds are preferred.
const CHAINS: f64 = 0.0125;
const EASY_CHAINS: f64 = 0.025;
/// Repeats that shaping is most often spread over (common practice).
const SIXES: u32 = 6;
impl Solver<'_> {
    /// How many chains come nearest to a first round of so many stitches: a multiple of what is asked of an even part, of the
    /// corners, and where shaping follows one that its repeats divide, where that is near enough.
    pub(super) fn chains(&self, profile: &Profile, multiple: Multiple, wanted: f64) -> u32 {
        let texture = self.texture(self.parts.len()).map_or(Multiple::ANY, |texture| texture.multiple);
        let multiple = if profile.shape.form().even { multiple } else { texture };
        let corners = match self.design.shaping {
            Shaping::Corners(n) => multiple.both(Multiple::new(n, 0)),
            Shaping::Scattered => None,
        };
        let nearest = |multiple: Multiple| {
            let (below, above) = multiple.around(wanted, FEWEST);
            let off = |count: &u32| (f64::from(*count) - wanted).abs();
            below.into_iter().chain([above]).min_by(|a, b| off(a).total_cmp(&off(b))).unwrap_or(above)
        };
        let count = nearest(corners.unwrap_or(multiple));
        let repeats = match self.design.prefer {
            Preference::Easy => EASY_CHAINS,
            Preference::Balanced => CHAINS,
            Preference::Close => return count,
        };
        let even = |part: &Part| matches!(&part.body, Body::Profile(profile) if profile.shape.form().even);
        if !multiple.is_any() || corners.is_some() || self.design.parts.iter().all(even) {
            return count;
        }
        let divided = nearest(Multiple::new(SIXES, 0));
        let near = (f64::from(divided) - wanted).abs() <= repeats * wanted;
        if near { divided } else { count }
    }

    /// How many rounds a part takes with the even one on its chain: of a length that one is the first, but a disc reaches
    /// its circumference in as many after it.
    pub(super) fn on_chains(
        &mut self,
        part: &Part,
        (shape, entrance): (&Shape, &Entrance),
        rounds: u32,
        place: Option<Place>,
    ) -> Option<u32> {
        if !entrance.chained || shape.form().even {
            return Some(rounds);
        }
        if shape.form().flat {
            return Some(rounds + 1);
        }
        if rounds > 1 {
            return Some(rounds);
        }
        let message = format!(
            "the {} of size {} has one round, which goes into its chain evenly",
            part.name.value, self.size.name
        );
        self.refuse("too-short", place, message, "make it two rounds long at least, so that one can be shaped")
    }

    /// Even rounds at the end of a part: as said, or of a ruffle all but those that its increases take, as few as can grow so.
    pub(super) fn settle(&self, profile: &Profile) -> u32 {
        let Some(fullness) = profile.shape.fullness_of(self.index).filter(|_| profile.settle == 0) else {
            return profile.settle;
        };
        let length = profile.shape.measures().length.as_ref().and_then(|lengths| lengths.get(self.index));
        let rounds = length.map_or(0.0, |length| (*length / self.gauge_at(self.parts.len()).height).round());
        let shaped = ((fullness - 1.0) / f64::from(profile.most.max(2) - 1)).ceil().max(1.0);
        (rounds - shaped).max(0.0) as u32
    }

    /// Refuses what narrows at an angle to less than a round.
    pub(super) fn narrows(
        &mut self,
        part: &Part,
        (shape, outline): (&Shape, &Outline),
        place: Option<Place>,
    ) -> Option<()> {
        let least = f64::from(FEWEST) * self.gauge_at(self.parts.len()).width.mm();
        let by_angle = shape.flare_of(self.index).is_some_and(|angle| angle.degrees() < 0.0);
        if !by_angle || outline.around(outline.shaped) >= least {
            return Some(());
        }
        let (name, size) = (&part.name.value, &self.size.name);
        let message = format!("the {name} of size {size} narrows to nothing before its end");
        let steep = (outline.around(0.0) - outline.around(outline.shaped * 0.01)) / (outline.shaped * 0.01);
        let most = explain::length((outline.around(0.0) - least) / steep.max(f64::MIN_POSITIVE), self.design.units);
        let help =
            format!("make it less than {most} deep, or let it narrow by a smaller angle; `shape: close` closes it");
        self.refuse("narrows-to-nothing", place, message, &help)
    }
}
