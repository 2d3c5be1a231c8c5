//! The rounds in plain words: each taken apart, to its numbers, its colour, what is done clause by clause and its count,
//! and worked again.

use roundelay::plan::Plan;

use super::count;
use super::grammar::{Reader, Unit};
use super::paper::{Block, Paper};
use super::rounds::{abbreviations, colour_name, hold};
use super::tongue::{Tongue, fit};

/// Works every round of a size from its plain words.
pub(super) fn work(paper: &Paper, tongue: &Tongue, plan: &Plan, index: usize) {
    let size = &plan.sizes[index];
    let known = abbreviations(paper, tongue);
    let short = |name: &str| {
        let fits = known.iter().filter(|(_, meaning)| alike(meaning, name));
        fits.max_by_key(|(_, meaning)| shared(meaning, name)).map(|(short, _)| short.clone())
    };
    let reader = Reader { tongue, form: 'p', short: &short, chains_count: false, known: Default::default() };
    let mut below: Vec<Unit> = Vec::new();
    let mut colour = None;
    let mut next = 1;
    for item in plain_items(paper, tongue, plan, index) {
        let told = format!("{} of {}, size {}: “{item}”", tongue.tag, paper.form, size.name);
        let plain = Told::of(&item, tongue).unwrap_or_else(|wrong| panic!("{wrong}: {told}"));
        assert_eq!(plain.first, next, "a round is missing before {told}");
        next = plain.last + 1;
        for number in plain.first..=plain.last {
            let round = &size.rounds[number - 1];
            let clauses: Vec<&str> = plain.clauses.iter().map(String::as_str).collect();
            let worked = reader.work(&clauses, &below).unwrap_or_else(|wrong| panic!("{wrong}: {told}"));
            hold(&worked, plan, (size.foundation, round), tongue, &told);
            count::hold(&plain.count, &reader, &worked, round.own().is_some())
                .unwrap_or_else(|wrong| panic!("{wrong}: the count of {told}"));
            below = worked.top;
            // A change is told where it is made, and nowhere else.
            let now = colour_name(plan, round).filter(|_| plan.design.yarn.colours.len() > 1);
            let changed = now.clone().filter(|now| colour.as_ref() != Some(now));
            let said = plain.colour.clone().filter(|_| number == plain.first);
            assert_eq!(said, changed, "the colour of {told}");
            colour = now.or(colour);
            assert!(plain.before.is_none_or(|before| before == plain.first), "{told}");
        }
    }
    assert_eq!(next, size.rounds.len() + 1, "plain rounds of {} of {}, size {}", tongue.tag, paper.form, size.name);
}

fn plain_items(paper: &Paper, tongue: &Tongue, plan: &Plan, size: usize) -> Vec<String> {
    let names: Vec<&str> = plan.sizes.iter().map(|size| size.name.as_str()).collect();
    let mut own = true;
    let mut items = Vec::new();
    for block in paper.blocks(tongue, "section.plain") {
        match block {
            Block::Heading(title) => {
                let end = tongue.one("part-size").replace("{p}", "").replace("{s}", names[size]);
                own = names.len() == 1 || title.ends_with(&end);
            }
            Block::Item(item) if own && !item.starts_with(tongue.one("p.step-down")) => items.push(item.clone()),
            Block::Item(_) | Block::Text(_) | Block::Row(_) | Block::Picture(_) => {}
        }
    }
    items
}

/// Letters that the words of two names begin with alike.
fn shared(one: &str, other: &str) -> usize {
    let common = |(a, b): (&str, &str)| a.chars().zip(b.chars()).take_while(|(a, b)| a == b).count();
    one.split(' ').zip(other.split(' ')).map(common).sum()
}

/// True for two forms of one name, which differ in a few letters at the end of a word: `feste Masche`, `feste Maschen`.
fn alike(one: &str, other: &str) -> bool {
    let (one, other): (Vec<&str>, Vec<&str>) = (one.split(' ').collect(), other.split(' ').collect());
    let same = |(a, b): (&&str, &&str)| {
        let common = a.chars().zip(b.chars()).take_while(|(a, b)| a == b).count();
        let (least, most) = (a.chars().count().min(b.chars().count()), a.chars().count().max(b.chars().count()));
        let ending = if common >= 8 { 3 } else { 2 };
        (common + ending >= most && common >= 2.min(least)) || (common == least && common >= 3)
    };
    one.len() == other.len() && one.iter().zip(&other).all(same)
}

/// A round taken apart.
#[derive(Debug, Default)]
struct Told {
    first: usize,
    last: usize,
    colour: Option<String>,
    /// The round before which the colour is changed, where that is said.
    before: Option<usize>,
    /// What is done, repeats written out.
    clauses: Vec<String>,
    /// What there is when it is done: a number, or what it is made up of.
    count: String,
}

/// The first letter as it stands within a sentence.
fn within(sentence: &str) -> String {
    let mut letters = sentence.chars();
    letters.next().map_or(String::new(), |first| first.to_lowercase().to_string() + letters.as_str())
}

impl Told {
    fn of(item: &str, tongue: &Tongue) -> Result<Self, String> {
        let mut told = Self::default();
        let mut sequences: Vec<(String, Vec<String>)> = Vec::new();
        let mut last: Vec<String> = Vec::new();
        for (i, sentence) in item.trim_end_matches('.').split(". ").enumerate() {
            if i == 0 {
                told.heading(sentence, tongue)?;
                continue;
            }
            // A remark of the author's is the last that is said.
            if !told.count.is_empty()
                && tongue.all("p.remark").any(|words| sentence.starts_with(words.split('{').next().unwrap_or(words)))
            {
                break;
            }
            if told.colour(&format!("{sentence}."), tongue) {
                continue;
            }
            let said = within(sentence);
            if let Some(holes) = tongue.read("p.count", &said) {
                told.count = holes[0].1.to_owned();
            } else if let Some(holes) = tongue.read("p.counts-kinds", &said) {
                told.count = holes[0].1.to_owned();
            } else if let Some(holes) = tongue.read("p.do-again", &said) {
                let again = tongue.number(holes[0].1).ok_or("no number")?;
                (1..again).for_each(|_| told.clauses.extend(last.clone()));
            } else if let Some(holes) = tongue.all("p.sequence").find_map(|words| fit(&within(words), &said)) {
                let clauses = clauses(holes[1].1, tongue, &sequences)?;
                sequences.push((holes[0].1.to_owned(), clauses));
            } else if !tongue.all("p.stuff").any(|words| words == said) {
                last = clauses(&said, tongue, &sequences)?;
                told.clauses.extend(last.clone());
            }
        }
        Ok(told)
    }

    fn heading(&mut self, sentence: &str, tongue: &Tongue) -> Result<(), String> {
        let fits = tongue.all("p.heading").find_map(|words| {
            let numbers: Option<Vec<usize>> =
                fit(words, sentence)?.iter().map(|(_, words)| words.parse().ok()).collect();
            numbers
        });
        let numbers = fits.ok_or_else(|| format!("“{sentence}” is no heading"))?;
        (self.first, self.last) = (numbers[0], numbers[numbers.len() - 1]);
        Ok(())
    }

    fn colour(&mut self, sentence: &str, tongue: &Tongue) -> bool {
        for key in ["p.change-before", "p.begin-colour", "p.change-colour"] {
            let Some(holes) = tongue.read(key, sentence) else { continue };
            let said = |letter| holes.iter().find(|(known, _)| *known == letter).map(|(_, words)| (*words).to_owned());
            self.colour = said('c');
            self.before = said('n').and_then(|number| number.parse().ok());
            return true;
        }
        false
    }
}

fn clauses(said: &str, tongue: &Tongue, sequences: &[(String, Vec<String>)]) -> Result<Vec<String>, String> {
    let mut clauses: Vec<String> = Vec::new();
    for clause in said.split(tongue.one("p.then")) {
        // What is done again may be tied on by the same word.
        let again = clauses.last().map(|last| format!("{last}{}{clause}", tongue.one("p.then")));
        let told = |words: &str| ["p.all-round", "p.times"].iter().any(|key| tongue.read(key, words).is_some());
        let again = again.filter(|whole| told(whole) && !told(clause));
        if let Some(whole) = again {
            clauses.pop();
            clauses.push(whole);
            continue;
        }
        let Some(holes) = tongue.all("p.do-sequence").find_map(|words| fit(words, clause)) else {
            clauses.push(clause.to_owned());
            continue;
        };
        let known = sequences.iter().find(|(name, _)| name == holes[0].1);
        let (_, again) = known.ok_or_else(|| format!("“{clause}” names what is not told"))?;
        let times = tongue.number(holes[1].1).ok_or("no number")?;
        (0..times).for_each(|_| clauses.extend(again.clone()));
    }
    Ok(clauses)
}
