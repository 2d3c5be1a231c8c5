//! Counts that have to be a multiple of something, so that ribs, shells and motifs fit.
//!
//! A multiple is held by the last round of its part, and so by the even rounds before it; an even part has as many
//! stitches in every round. Where an even part goes on from a solved one in stitches of the same width, its multiple
//! is that one's to meet as well, so that no round needs to be mended where the pattern begins.

use super::choose::{Entry, FEWEST, Offer, Task, choose_all};
use super::part::SAME_WIDTH;
use super::solve::Solver;
use super::strays::WIDEST;
use crate::craft::Multiple;
use crate::design::{Body, Finish, Part, Profile, Shaping, Tolerance};
use crate::report::{Diagnostic, Place};
use crate::units::{EPSILON, Mm, TOLERANCE, Units, tidy};

/// Share of a circumference by which a multiple may move an edge where the design says no tolerance: sizes of heads are
/// 3 to 5 % apart.
const MOVED: f64 = 0.025;

/// What is asked of the last round of a part, by itself and by what goes on from it.
#[derive(Clone, Debug)]
pub(super) struct Asked {
    /// All of it together.
    pub(super) multiple: Multiple,
    /// Who asks for what.
    by: Vec<Asker>,
}

/// A part that asks for a multiple.
#[derive(Clone, Debug)]
struct Asker {
    part: String,
    multiple: Multiple,
    place: Option<Place>,
}

impl Asked {
    /// As it is told of one part: `a multiple of 8 for the rib`, and of the rib itself without its name.
    fn told(&self, of: &str) -> String {
        let whose = |asker: &Asker| if asker.part == of { String::new() } else { format!(" for the {}", asker.part) };
        let asker = |asker: &Asker| format!("a multiple of {}{}", asker.multiple, whose(asker));
        let askers: Vec<String> = self.by.iter().map(asker).collect();
        match askers.len() {
            0 | 1 => askers.concat(),
            _ => format!("{}: of {}", askers.join(" and "), self.multiple),
        }
    }

    fn place(&self) -> Option<Place> {
        self.by.last().and_then(|asker| asker.place)
    }
}

impl Solver<'_> {
    /// What is asked of the last round of the part that comes next; complains where no count is all of it.
    pub(super) fn asked(&mut self) -> Option<Asked> {
        let design = self.design;
        let mut asked = Asked { multiple: Multiple::ANY, by: Vec::new() };
        let (mut width, mut closing) = (None, None);
        for (index, part) in design.parts.iter().enumerate().skip(self.parts.len()) {
            let Body::Profile(profile) = &part.body else { break };
            let own = self.gauge_at(index).width.mm();
            let same = |width: f64| (width - own).abs() <= SAME_WIDTH * own;
            let later = index > self.parts.len();
            // A shaped part whose pattern begins before its count may change has to be given what that closes on.
            let led = self.texture(index).is_some_and(|texture| texture.lead() > 0);
            let even = profile.shape.form().even;
            let goes_on = width.is_none_or(|width| same(width) && (even || led));
            if later && !goes_on {
                // A part that is shaped in so many repeats begins with a count that they part.
                if let ([repeats], true) = (profile.repeats.as_slice(), width.is_none_or(same)) {
                    let multiple = Multiple::new(*repeats, 0);
                    if let Some(both) = asked.multiple.both(multiple) {
                        asked.multiple = both;
                        asked.by.push(Asker { part: part.name.value.clone(), multiple, place: part.name.place });
                    }
                }
                break;
            }
            width = Some(own);
            if design.finish.value == Finish::CloseFlat && index + 1 == design.parts.len() && (!later || even) {
                let place = design.finish.place;
                closing = Some(Asker { part: "flat closing".to_owned(), multiple: Multiple::EVEN, place });
            }
            // The last count of a shaped part is its own affair.
            let own = profile.multiple.as_ref().filter(|_| !later || even);
            let own = own.map(|multiple| (multiple.value, multiple.place));
            let texture = self.texture(index).map(|texture| (texture.multiple, texture.place));
            for (multiple, place) in own.into_iter().chain(texture).filter(|(multiple, _)| !multiple.is_any()) {
                let asker = Asker { part: part.name.value.clone(), multiple, place };
                let Some(both) = asked.multiple.both(asker.multiple) else {
                    let message = format!(
                        "no count of stitches is {} and a multiple of {} for the {}",
                        asked.told(""),
                        asker.multiple,
                        asker.part
                    );
                    let help = "give both parts multiples that some count fits, or shape a part between them";
                    return self.refuse("multiple", asker.place, message, help);
                };
                asked.multiple = both;
                asked.by.push(asker);
            }
            if later && !even {
                break;
            }
        }
        if let Some(closing) = closing {
            let Some(both) = asked.multiple.both(closing.multiple) else {
                let message = format!("no count of stitches is {} and even, as closing flat asks", asked.told(""));
                let help = "take another multiple, or `finish: fasten off`";
                return self.refuse("multiple", closing.place, message, help);
            };
            asked.multiple = both;
            asked.by.push(closing);
        }
        Some(asked)
    }

    /// The multiple that the part which is being added is worked over by itself.
    pub(super) fn worked_over(&self, profile: &Profile) -> Option<Multiple> {
        let own = profile.multiple.as_ref().map_or(Multiple::ANY, |multiple| multiple.value);
        let texture = self.texture(self.parts.len()).map_or(Multiple::ANY, |texture| texture.multiple);
        own.both(texture).filter(|multiple| !multiple.is_any())
    }

    /// By how much a multiple may move the edge of a part, in stitches: what the design allows, and where that isn't said
    /// a fortieth.
    pub(super) fn allowed_by_multiple(&self, band: &(f64, f64), width: f64, multiple: Multiple) -> f64 {
        let wanted = (band.0 + band.1) / 2.0;
        let asked = match self.design.tolerance {
            Tolerance::Usual => wanted * MOVED,
            tolerance @ (Tolerance::Length(_) | Tolerance::Share(_)) => {
                tolerance.of(Mm::new(wanted * width)).mm() / width
            }
        };
        // An even count is never more than a stitch away.
        asked.max(if multiple == Multiple::EVEN { 1.0 } else { 0.5 })
    }

    /// Refuses a count that is a multiple but further off than that allows.
    pub(super) fn within_multiple(&mut self, part: &Part, task: &Task, asked: &Asked, counts: &[u32]) -> Option<()> {
        let last = task.bands.len().saturating_sub(1);
        let (Some(band), Some(count)) = (task.bands.last(), counts.last()) else { return Some(()) };
        let (off, allowed) = (task.distance(last, *count), task.allowed.last().copied().unwrap_or(f64::INFINITY));
        if asked.multiple.is_any() || off.abs() <= allowed + EPSILON {
            return Some(());
        }
        let wanted = f64::from(*count) - off;
        let share = (off / wanted).abs();
        let all = with_corners(task, asked.multiple);
        let corners = match (self.design.shaping, task.corners) {
            (_, 0 | 1) => String::new(),
            _ if all == Some(asked.multiple) => String::new(),
            (Shaping::Corners(_), n) => format!(" and {n} corners"),
            (Shaping::Scattered, n) => format!(" in {n} repeats"),
        };
        let message = format!(
            "size {} has no count that fits: the {} wants {} stitches at its end, and {}{corners} gives {count}, \
             {} % {} where {} % is allowed",
            self.size.name,
            part.name.value,
            tidy(wanted, 1),
            asked.told(&part.name.value),
            tidy(share * 100.0, 1),
            if off > 0.0 { "more" } else { "less" },
            tidy(allowed / wanted * 100.0, 1),
        );
        let nearest = self.nearest((band.0, wanted), all.unwrap_or(asked.multiple));
        // Rounded up, so that what is written is enough.
        let enough = (share * 200.0 + EPSILON).ceil() / 2.0;
        let wider = match enough <= WIDEST * 100.0 {
            true => format!("; or write `tolerance: {} %`", tidy(enough, 1)),
            false => String::new(),
        };
        self.refuse("multiple", asked.place(), message, &format!("{nearest}{wider}, or take a smaller multiple"))
    }

    /// The measures nearest to what is wanted that counts of a multiple have.
    fn nearest(&self, (band, wanted): (f64, f64), multiple: Multiple) -> String {
        let width = self.gauge_at(self.parts.len()).width.mm();
        let (below, above) = multiple.around(wanted, FEWEST);
        let counts: Vec<u32> = below.into_iter().chain([above]).collect();
        let around = self.size.around.mm();
        let own = around > 0.0 && (band * width / around - 1.0).abs() < TOLERANCE;
        let measure = |count: &u32| {
            let length = f64::from(*count) * width;
            let shown = match self.size.head.filter(|_| own) {
                Some(head) => head.mm() * length / around,
                None => length,
            };
            match self.design.units {
                Units::Cm => format!("{} cm", tidy(shown / 10.0, 1)),
                Units::Inches => format!("{} in", tidy(shown / 25.4, 2)),
            }
        };
        let what = match (own, self.size.head) {
            (true, Some(_)) => "a head of",
            _ => "a circumference of",
        };
        let measures: Vec<String> = counts.iter().map(measure).collect();
        let counts: Vec<String> = counts.iter().map(u32::to_string).collect();
        format!("{what} {} fits ({} stitches)", measures.join(" or "), counts.join(" or "))
    }

    /// Complains of a pattern whose rounds keep a shaped part from reaching its counts. True where they do.
    pub(super) fn no_stretch(&mut self, part: &Part, task: &Task) -> bool {
        let even = matches!(&part.body, Body::Profile(profile) if profile.shape.form().even);
        let Some(texture) = self.texture(self.parts.len()).filter(|_| !even) else { return false };
        if choose_all(&[vec![Offer { task: task.clone(), extra: 0.0 }]]).is_err() {
            return false;
        }
        let (of, lead, place) = (texture.multiple, texture.lead(), texture.place);
        let (name, size) = (&part.name.value, &self.size.name);
        let standing = match task.entry {
            Entry::After { count, .. } => Some(count).filter(|count| lead > 0 && !of.holds(*count)),
            Entry::First { .. } => None,
        };
        let (message, help) = match standing {
            Some(count) => (
                format!(
                    "the {name} of size {size} goes on with {count} stitches, and its pattern is worked over a multiple of {of}"
                ),
                "let the part before end with such a count, or begin the pattern with a plain round: `sc in each st around`",
            ),
            None => (
                format!(
                    "the pattern leaves the {name} of size {size} too few rounds in which its count may change, by a multiple of {} stitches",
                    of.of()
                ),
                "take a pattern with fewer stitches to a repeat or with more plain rounds among its own, write `most: triple`, or give the pattern to a straight part",
            ),
        };
        self.report.add(Diagnostic::error("pattern", message).help(help).at(place));
        true
    }

    /// Complains where nothing but a multiple keeps a part from being worked. True where it does.
    pub(super) fn no_multiple(&mut self, part: &Part, task: &Task, asked: &Asked) -> bool {
        if asked.multiple.is_any() {
            return false;
        }
        let free = Task { multiple: Multiple::ANY, ..task.clone() };
        if choose_all(&[vec![Offer { task: free, extra: 0.0 }]]).is_err() {
            return false;
        }
        let (name, size) = (&part.name.value, &self.size.name);
        let standing = match task.entry {
            Entry::First { least, most } if least == most => Some(least),
            Entry::First { .. } => None,
            Entry::After { count, .. } => Some(count),
        };
        let even = |part: &Part| matches!(&part.body, Body::Profile(profile) if profile.shape.form().even);
        let (message, help) = match standing.filter(|_| even(part)) {
            Some(count) => {
                let (below, above) = asked.multiple.around(f64::from(count), FEWEST);
                let fitting: Vec<String> = below.into_iter().chain([above]).map(|fits| fits.to_string()).collect();
                let fitting = fitting.join(" or ");
                let over = below.map_or(String::new(), |below| format!(", {} too many", count - below));
                let message = format!(
                    "the {name} of size {size} goes on with {count} stitches, and is to have {}{over}",
                    asked.told(name)
                );
                let help = match self.rounds.last() {
                    Some(last) => format!("let round {} make {fitting} stitches", last.number),
                    None => format!("begin with {fitting} stitches"),
                };
                (message, help)
            }
            None => {
                let message = format!("no counts lead the {name} of size {size} to {}", asked.told(name));
                (message, "take a smaller multiple, more rounds, or no corners".to_owned())
            }
        };
        let complaint = Diagnostic::error("multiple", message).help(help).at(asked.place());
        self.report.add(complaint);
        true
    }
}

/// A multiple together with what stacked corners make of every count; nothing where no count is both.
fn with_corners(task: &Task, multiple: Multiple) -> Option<Multiple> {
    if task.corners <= 1 {
        return Some(multiple);
    }
    let begun = match task.entry {
        Entry::First { least, most } if least == most => least,
        Entry::First { .. } => 0,
        Entry::After { count, .. } => count,
    };
    multiple.both(Multiple::new(task.corners, begun))
}
