//! Which colours are tried: the palettes of the design, or its yarns in every order.

use crate::drawing::Ink;
use crate::plan::{Plan, SizePlan, YarnUse};
use crate::sight::{Alike, Rgb, alike, contrast};
use crate::words::{Arg, Words};

/// Most yarns that change places: 24 orders.
const MOST_ORDERED: usize = 4;

/// One way to dress the piece.
pub(super) struct Trial {
    /// What it is called.
    pub(super) name: String,
    /// The colours, in the order of the design's yarns.
    pub(super) colours: Vec<Rgb>,
    /// What it takes: name, colour and amount of every yarn that is used.
    pub(super) yarns: Vec<(String, Rgb, YarnUse)>,
    /// The weakest contrast of two colours that meet, with their names, and who can hardly tell any two apart.
    pub(super) meets: Option<Meeting>,
}

/// Colours that meet.
pub(super) struct Meeting {
    pub(super) contrast: f64,
    pub(super) names: (String, String),
    pub(super) alike: Option<Alike>,
}

impl Trial {
    pub(super) fn inks(&self) -> Vec<Ink> {
        self.colours.iter().map(|rgb| Ink(*rgb)).collect()
    }
}

/// What is tried.
pub(super) struct Trials {
    pub(super) list: Vec<Trial>,
    /// How many there would be.
    pub(super) all: usize,
    /// The yarns that change places, where others stay.
    pub(super) moved: Option<Vec<String>>,
}

impl Trials {
    /// At most so many trials of a size; nothing where there is only one.
    pub(super) fn of(plan: &Plan, size: &SizePlan, most: usize, words: &Words) -> Option<Self> {
        let yarn = &plan.design.yarn.colours;
        let own: Vec<Rgb> = yarn.iter().map(|colour| colour.rgb).collect();
        let mut used: Vec<&YarnUse> = size.yarn.iter().filter(|using| using.colour.is_some()).collect();
        let name = |index: usize| yarn.get(index).map_or(String::new(), |colour| colour.name.clone());
        // `worker` tells which yarn works the rounds of each, `colours` what colour these rounds have.
        let trial = |title: String, colours: Vec<Rgb>, worker: &dyn Fn(usize) -> usize| {
            let mut yarns: Vec<(usize, Rgb, YarnUse)> = Vec::new();
            for using in size.yarn.iter() {
                let Some((part, rgb)) = using.colour.and_then(|part| Some((part, *colours.get(part)?))) else {
                    continue;
                };
                yarns.push((worker(part), rgb, using.clone()));
            }
            yarns.sort_by_key(|(yarn, ..)| *yarn);
            let meets = meeting(size, &colours, &|part| name(worker(part)));
            let yarns = yarns.into_iter().map(|(yarn, rgb, using)| (name(yarn), rgb, using)).collect();
            Trial { name: title, colours, yarns, meets }
        };
        let first = trial(words.say("colours-own"), own.clone(), &|part| part);
        if !plan.design.palettes.is_empty() {
            let palettes = plan.design.palettes.iter();
            let palettes = palettes.map(|palette| trial(palette.name.clone(), palette.colours.clone(), &|part| part));
            let list: Vec<Trial> = std::iter::once(first).chain(palettes).take(most).collect();
            return Some(Self { list, all: plan.design.palettes.len() + 1, moved: None });
        }
        // Of many yarns those change places of which most is used.
        used.sort_by(|one, other| other.metres.total_cmp(&one.metres));
        let cut = used.len() > MOST_ORDERED;
        let mut places: Vec<usize> = used.iter().filter_map(|using| using.colour).take(MOST_ORDERED).collect();
        places.sort_unstable();
        let orders = orders(&places);
        if orders.len() < 2 {
            return None;
        }
        let all = orders.len();
        let ordered = orders.into_iter().enumerate().skip(1).take(most.saturating_sub(1)).map(|(number, order)| {
            let worker = |part: usize| places.iter().position(|place| *place == part).map_or(part, |at| order[at]);
            let colours = (0..own.len()).map(|part| own[worker(part)]).collect();
            let title = words.with("colours-order", &[("number", Arg::Count(number as u32 + 1))]);
            trial(title, colours, &worker)
        });
        let list = std::iter::once(first).chain(ordered).collect();
        let moved = cut.then(|| places.iter().map(|place| name(*place)).collect());
        Some(Self { list, all, moved })
    }
}

/// Every order of some things, the first as they are.
fn orders(things: &[usize]) -> Vec<Vec<usize>> {
    if things.is_empty() {
        return vec![Vec::new()];
    }
    let beginning = |at: usize| {
        let mut rest = things.to_vec();
        let first = rest.remove(at);
        orders(&rest).into_iter().map(move |rest| [vec![first], rest].concat())
    };
    (0..things.len()).flat_map(beginning).collect()
}

/// What is to be said of the colours that meet; nothing where none do.
fn meeting(size: &SizePlan, colours: &[Rgb], name: &dyn Fn(usize) -> String) -> Option<Meeting> {
    let pairs = size.meetings().into_iter();
    let pairs = pairs.filter_map(|(one, other)| Some((one, other, *colours.get(one)?, *colours.get(other)?)));
    let pairs: Vec<(usize, usize, Rgb, Rgb)> = pairs.collect();
    let weakest = pairs.iter().map(|(one, other, a, b)| (contrast(*a, *b), *one, *other));
    let (contrast, one, other) = weakest.min_by(|a, b| a.0.total_cmp(&b.0))?;
    let mut eyes = Vec::new();
    let mut all = false;
    for (.., a, b) in &pairs {
        match alike(*a, *b) {
            Some(Alike::All) => all = true,
            Some(Alike::Some(some)) => eyes.extend(some),
            None => {}
        }
    }
    eyes.sort_unstable();
    eyes.dedup();
    let alike = match (all, eyes.is_empty()) {
        (true, _) => Some(Alike::All),
        (false, true) => None,
        (false, false) => Some(Alike::Some(eyes)),
    };
    Some(Meeting { contrast, names: (name(one), name(other)), alike })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn four_things_have_24_orders_and_the_first_is_their_own() {
        let mut found = orders(&[3, 5, 7, 8]);
        assert_eq!((found.len(), &found[0]), (24, &vec![3, 5, 7, 8]));
        found.sort();
        found.dedup();
        assert_eq!(found.len(), 24);
    }
}
