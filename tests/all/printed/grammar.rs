//! A round worked as its words say, stitch by stitch, on what the round before left.

use std::cell::RefCell;
use std::collections::BTreeMap;

use super::hand::Hand;
use super::tongue::{Holes, Tongue, fit, split};

/// Keys that say what is made, or hold clauses together: no clause is made by them alone.
const WITHIN: [&str; 22] = [
    "many",
    "one",
    "chains",
    "back",
    "front",
    "then",
    "and",
    "all",
    "aside",
    "begin-colour",
    "change-colour",
    "change-before",
    "stuff",
    "heading",
    "count",
    "counts-kinds",
    "count-spaces",
    "count-stitches",
    "remark",
    "step-down",
    "sequence",
    "do-sequence",
];

/// Where a hook can go: a stitch, by its name, or a chain.
#[derive(Clone, Debug, PartialEq)]
pub(super) enum Unit {
    Chain,
    Stitch,
}

/// What a round made: every stitch by its name in working order, and what the next one is worked into.
#[derive(Debug, Default)]
pub(super) struct Worked {
    pub(super) used: usize,
    pub(super) made: Vec<(String, usize)>,
    pub(super) top: Vec<Unit>,
    pub(super) loops: Option<&'static str>,
    /// Chains that are no stitches of the round, in working order: of a ring, of a foundation, of its start.
    pub(super) chains: Vec<usize>,
    /// Names that stand in the words without being worked: of chains that count, of stitches that are joined to.
    pub(super) named: Vec<String>,
}

/// How words are read: `w` as they are written in short, `p` in plain words.
pub(super) struct Reader<'a> {
    pub(super) tongue: &'a Tongue,
    pub(super) form: char,
    /// A name as it stands in the words → the abbreviation that the pattern explains; nothing where it has none.
    pub(super) short: &'a dyn Fn(&str) -> Option<String>,
    /// True where chains at the start of a round count without a word.
    pub(super) chains_count: bool,
    /// What clauses have been found to mean: the key, and where its holes lie.
    pub(super) known: RefCell<BTreeMap<String, Meaning>>,
}

/// The key of a clause, and where in it the holes lie; nothing where it says only what is made.
pub(super) type Meaning = Option<(&'static str, Vec<(char, usize, usize)>)>;

impl Reader<'_> {
    /// Works the clauses of a round over the one before it.
    pub(super) fn work(&self, clauses: &[&str], below: &[Unit]) -> Result<Worked, String> {
        let takes = |clause: Option<&&str>| {
            let key = clause.and_then(|clause| self.meant(clause)).map(|(key, _)| key);
            matches!(key, Some("chain-ring" | "counts-together"))
        };
        // Chains that are closed to a ring are what the round is worked into; those that count with the stitches after
        // them are told there.
        let taken = |at: usize| self.chain(clauses[at]).filter(|_| takes(clauses.get(at + 1)));
        let own = (0..clauses.len()).filter(|at| taken(*at).is_none());
        let chains: Vec<usize> = (0..clauses.len()).filter_map(taken).collect();
        let clauses: Vec<&str> = own.map(|at| clauses[at]).collect();
        let clauses = &clauses[..];
        let joined =
            clauses.last().is_some_and(|last| self.meant(last).is_some_and(|(key, _)| key.starts_with("join")));
        let mut hand = Hand::new(self, below, joined, chains);
        let lead = self.lead(clauses, joined);
        for (i, clause) in clauses.iter().enumerate() {
            let done = if lead.contains(&i) { hand.slip(clause) } else { hand.clause(clause) };
            done.map_err(|wrong| format!("{wrong} in “{clause}”"))?;
        }
        Ok(hand.done())
    }

    /// The slip stitches that lead to where a joined round begins: those before its chain.
    fn lead(&self, clauses: &[&str], joined: bool) -> Vec<usize> {
        let key = |clause: &&str| self.meant(clause).map(|(key, _)| key);
        let opening = |key: &str| matches!(key, "start" | "all-back" | "all-front");
        let from = clauses.iter().take_while(|clause| key(clause).is_some_and(opening)).count();
        let slip = |clause: &&str| {
            let name = self.meant(clause).and_then(|(_, holes)| self.what(hole(&holes, 'w').ok()?).ok());
            name.is_some_and(|made| made.len() == 1 && made[0].0 == self.tongue_name("sl-st"))
        };
        let count = clauses[from..].iter().take_while(|clause| slip(clause)).count();
        let chain = clauses
            .get(from + count)
            .is_some_and(|clause| matches!(key(clause), Some("counts" | "counts-not")) || self.chain(clause).is_some());
        if joined && chain { (from..from + count).collect() } else { Vec::new() }
    }

    pub(super) fn tongue_name(&self, id: &str) -> String {
        let own = self.tongue.one(&format!("stitch.{id}"));
        let british = self.tongue.all(&format!("uk.{id}")).next();
        let known = |name: &&str| (self.short)(name).is_some();
        [Some(own), british].into_iter().flatten().find(known).unwrap_or(own).to_owned()
    }

    /// What a clause means: the key whose words say most of it.
    pub(super) fn meant<'t>(&self, clause: &'t str) -> Option<(&'static str, Holes<'t>)> {
        let known = self.known.borrow().get(clause).cloned();
        let meaning = known.unwrap_or_else(|| {
            let meaning = self.meaning(clause);
            self.known.borrow_mut().insert(clause.to_owned(), meaning.clone());
            meaning
        });
        let (key, holes) = meaning?;
        Some((key, holes.into_iter().map(|(letter, from, to)| (letter, &clause[from..to])).collect()))
    }

    fn meaning(&self, clause: &str) -> Meaning {
        let lead = if self.form == 'w' { "w." } else { "p." };
        let said = self.tongue.under(lead).filter(|(key, words)| {
            let tail = words.rsplit('}').next().unwrap_or_default();
            clause.ends_with(tail) && !WITHIN.contains(key)
        });
        let fits = said.filter_map(|(key, words)| Some((words, key, fit(words, clause)?)));
        let literal = |words: &str| words.split(['{', '}']).step_by(2).map(str::len).sum::<usize>();
        let sound = fits.filter(|(_, _, holes)| {
            holes.iter().all(|(letter, words)| !"nm".contains(*letter) || self.tongue.number(words).is_some())
        });
        // What is done again holds a whole clause.
        let again = |key: &str| matches!(key, "times" | "repeat") || (key == "all-round" && self.form == 'p');
        let (_, key, holes) = sound.max_by_key(|(words, key, _)| (again(key), literal(words)))?;
        let from = |words: &str| words.as_ptr() as usize - clause.as_ptr() as usize;
        Some((key, holes.into_iter().map(|(letter, words)| (letter, from(words), from(words) + words.len())).collect()))
    }

    /// How many chains bare words tell of.
    fn chain(&self, clause: &str) -> Option<usize> {
        let words = match self.meant(clause) {
            None => clause,
            Some(("air", holes)) => hole(&holes, 'w').ok()?,
            Some(_) => return None,
        };
        let made = self.what(words).ok()?;
        (made.len() == 1 && self.is_chain(&made[0].0)).then(|| made[0].1)
    }

    pub(super) fn is_chain(&self, name: &str) -> bool {
        name == self.tongue.one("stitch.ch")
    }

    /// A picot stands on a stitch and counts for none; so its name tells.
    pub(super) fn is_picot(&self, name: &str) -> bool {
        let pattern = self.tongue.one("built.picot");
        let chain = self.tongue.one("stitch.ch");
        (2..=9).any(|n| name == pattern.replace("{n}", &n.to_string()).replace("{s}", chain))
    }

    /// What is made in one place: each stitch by its abbreviation, with how many.
    pub(super) fn what(&self, words: &str) -> Result<Vec<(String, usize)>, String> {
        let mut words = words;
        for key in ["w.back", "w.front"].into_iter().filter(|_| self.form == 'w') {
            if let Some(holes) = self.tongue.read(key, words) {
                words = hole(&holes, 'w')?;
            }
        }
        if self.form == 'w' {
            let inner = words.strip_prefix('(').and_then(|words| words.strip_suffix(')'));
            return split(inner.unwrap_or(words), ", ").into_iter().map(|item| self.item(item)).collect();
        }
        for aside in self.tongue.all("p.aside") {
            words = words.strip_suffix(',').unwrap_or(words);
            words = words.strip_suffix(aside).unwrap_or(words);
        }
        let words = words.strip_suffix(self.tongue.one("p.all")).unwrap_or(words);
        let items = words.split(", ").flat_map(|item| item.split(self.tongue.one("p.and")));
        items.map(|item| self.item(item)).collect()
    }

    fn item(&self, item: &str) -> Result<(String, usize), String> {
        let named = |name: &str| (self.short)(name);
        if let Some(count) =
            self.tongue.read("w.chains", item).filter(|_| self.form == 'w').and_then(|holes| self.counted(&holes, 'n'))
        {
            let chain = self.tongue.one("stitch.ch");
            return named(chain).map(|name| (name, count)).ok_or_else(|| format!("“{chain}” is not explained"));
        }
        let many = if self.form == 'w' { "w.many" } else { "p.many" };
        let counted =
            self.tongue.read(many, item).and_then(|holes| Some((hole(&holes, 's').ok()?, self.counted(&holes, 'n')?)));
        let alone = self.tongue.all("w.one").next().map(|_| (item, 1));
        let (name, count) = counted.or(alone).ok_or_else(|| format!("“{item}” tells no number"))?;
        named(name).map(|name| (name, count)).ok_or_else(|| format!("“{name}” is not explained"))
    }

    pub(super) fn counted(&self, holes: &Holes<'_>, letter: char) -> Option<usize> {
        self.tongue.number(hole(holes, letter).ok()?)
    }
}

pub(super) fn hole<'t>(holes: &Holes<'t>, letter: char) -> Result<&'t str, String> {
    holes.iter().find(|(known, _)| *known == letter).map(|(_, words)| *words).ok_or_else(|| format!("no {letter}"))
}
