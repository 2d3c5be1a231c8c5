//! The hand that works a round, clause by clause.

use super::grammar::{Reader, Unit, Worked, hole};
use super::tongue::{Holes, split};

/// Where the hand is in the round.
pub(super) struct Hand<'a, 'r> {
    reader: &'r Reader<'a>,
    /// What the round before left, from where the work stands on.
    below: Vec<Unit>,
    /// How much of it is used up.
    at: usize,
    worked: Worked,
    /// False as long as chains would be those that a joined round begins with.
    turned: bool,
}

type Done = Result<(), String>;

impl<'a, 'r> Hand<'a, 'r> {
    pub(super) fn new(reader: &'r Reader<'a>, below: &[Unit], joined: bool, chains: Vec<usize>) -> Self {
        Self { reader, below: below.to_vec(), at: 0, worked: Worked { chains, ..Worked::default() }, turned: !joined }
    }

    /// What the round has come to.
    pub(super) fn done(mut self) -> Worked {
        self.worked.used = self.at;
        self.worked
    }

    fn made(&mut self, made: &[(String, usize)]) -> Done {
        for (name, count) in made {
            let unit = if self.reader.is_chain(name) { Unit::Chain } else { Unit::Stitch };
            if !self.reader.is_picot(name) {
                self.worked.top.extend(std::iter::repeat_n(unit, *count));
            }
            self.worked.made.push((name.clone(), *count));
        }
        Ok(())
    }

    /// A stitch that is named without being worked as one of the round.
    fn names(&mut self, name: impl Into<String>) -> Done {
        self.worked.named.push(name.into());
        Ok(())
    }

    fn loops(&mut self, loops: &'static str) -> Done {
        self.worked.loops = Some(loops);
        Ok(())
    }

    fn left(&self) -> usize {
        self.below.len() - self.at
    }

    fn take(&mut self, count: usize, chains: bool) -> Done {
        let taken = self.below.get(self.at..self.at + count).ok_or_else(|| format!("{} are left", self.left()))?;
        if chains && taken.iter().any(|unit| *unit != Unit::Chain) {
            return Err("there is no such space".to_owned());
        }
        self.at += count;
        Ok(())
    }

    /// Slip stitches on to where the round begins: from the stitch that was joined to, which they leave.
    pub(super) fn slip(&mut self, clause: &str) -> Done {
        let (key, holes) = self.reader.meant(clause).ok_or("no clause")?;
        let by = if key == "space" { 1 } else { self.reader.counted(&holes, 'n').unwrap_or(1) };
        self.below.rotate_left(by);
        self.names(self.reader.tongue_name("sl-st"))
    }

    fn clauses(&mut self, clauses: &[&str]) -> Done {
        clauses.iter().try_for_each(|clause| self.clause(clause))
    }

    pub(super) fn clause(&mut self, clause: &str) -> Done {
        let reader = self.reader;
        let Some((key, holes)) = reader.meant(clause) else { return self.air(clause) };
        let words = || hole(&holes, 'w');
        let number = reader.counted(&holes, 'n');
        let times = number.unwrap_or(1);
        let first = !self.turned;
        self.turned |= !matches!(key, "start" | "all-back" | "all-front");
        match key {
            "start" => Ok(()),
            "chain-ring" => {
                // The round itself is still to begin.
                self.turned = false;
                if reader.form == 'p' {
                    self.turning(&holes)?;
                }
                self.names(reader.tongue.one("stitch.ch"))?;
                self.names(reader.tongue_name("sl-st"))
            }
            "all-back" => self.loops("back"),
            "all-front" => self.loops("front"),
            "next" => self.each(words()?, 1, times),
            "chain-next" => self.over_chains(words()?, times),
            "chain-each" => {
                let left = self.chains_left();
                self.over_chains(words()?, left)
            }
            "around" | "remaining" => {
                let left = self.left();
                if key == "around" && self.at > 0 {
                    return Err(format!("all the way round, where {} are used already", self.at));
                }
                self.each(words()?, 1, left)
            }
            "space" | "space-around" => {
                let chains = reader.counted(&holes, 'm').ok_or("no chains")?;
                let reach = if key == "space" { times } else { self.left() / chains };
                (0..reach).try_for_each(|_| {
                    self.take(chains, true)?;
                    self.made(&reader.what(words()?)?)
                })
            }
            "together" if reader.form == 'w' => self.together(hole(&holes, 's')?, times),
            "together" => {
                let made = reader.what(words()?)?;
                self.take(times, false)?;
                self.made(&made)
            }
            "all-round" => {
                let inner = words()?;
                while self.left() > 0 {
                    let before = self.at;
                    self.clause(inner)?;
                    if self.at == before {
                        return Err("it uses up nothing".to_owned());
                    }
                }
                Ok(())
            }
            "skip" => self.take(times, false),
            "skip-chain" => self.take(times, true),
            "repeat" => {
                let inner = split(words()?, ", ");
                (0..number.ok_or("no number")?).try_for_each(|_| self.clauses(&inner))
            }
            "times" => (0..number.ok_or("no number")?).try_for_each(|_| self.clause(words()?)),
            "same" | "ring" => self.made(&reader.what(words()?)?),
            "nth" => {
                // What was chained before is what the round is worked into.
                self.worked.chains.extend(Some(self.worked.top.len()).filter(|chains| *chains > 0));
                self.worked.made.clear();
                self.worked.top.clear();
                self.made(&reader.what(words()?)?)
            }
            "counts" => {
                self.turning(&holes)?;
                self.counts(hole(&holes, 's')?)
            }
            "counts-not" => self.turning(&holes),
            "counts-together" => {
                let from = (self.worked.made.len(), self.worked.top.len());
                self.names(reader.tongue.one("stitch.ch").to_owned())?;
                self.take(usize::from(!self.below.is_empty()), false)?;
                self.clause(words()?)?;
                self.worked.made.truncate(from.0);
                self.worked.top.truncate(from.1);
                self.counts_as_together(hole(&holes, 's')?)
            }
            "air" => self.air_words(words()?, first),
            "join-first" => self.join_first(hole(&holes, 's')?),
            "join-top" => self.join_top(&holes),
            "join" | "join-first-any" | "join-top-any" => self.names(reader.tongue_name("sl-st")),
            _ => Err(format!("nothing is known of {key}")),
        }
    }

    /// So many times the same, each time on the next few.
    fn each(&mut self, words: &str, each: usize, times: usize) -> Done {
        let made = self.reader.what(words)?;
        (0..times).try_for_each(|_| {
            self.take(each, false)?;
            self.made(&made)
        })
    }

    /// Chains of the ring that no stitch stands on yet.
    fn chains_left(&self) -> usize {
        self.worked.chains.first().map_or(0, |chains| chains - self.worked.top.len().min(*chains))
    }

    /// A stitch into each of so many chains of the ring.
    fn over_chains(&mut self, words: &str, times: usize) -> Done {
        if times > self.chains_left() {
            return Err(format!("{times} chains, where {} are left", self.chains_left()));
        }
        let made = self.reader.what(words)?;
        (0..times).try_for_each(|_| self.made(&made))
    }

    fn together(&mut self, name: &str, count: usize) -> Done {
        let short = (self.reader.short)(name).ok_or_else(|| format!("“{name}” is not explained"))?;
        self.take(count, false)?;
        self.made(&[(short, 1)])
    }

    /// Words of what is made and not where: chains and picots, and the chains that a joined round begins with.
    fn air(&mut self, clause: &str) -> Done {
        // A loop may stand beside a decrease.
        for key in ["w.back", "w.front"] {
            if let Some(holes) = self.reader.tongue.read(key, clause).filter(|_| self.reader.form == 'w') {
                return self.clause(hole(&holes, 'w')?);
            }
        }
        let first = !self.turned;
        self.turned = true;
        self.air_words(clause, first)
    }

    fn air_words(&mut self, words: &str, first: bool) -> Done {
        let made = self.reader.what(words)?;
        let chain = made.len() == 1 && self.reader.is_chain(&made[0].0);
        if first && chain && self.reader.form == 'w' {
            if self.reader.chains_count {
                return Err("a chain that counts does not say as what".to_owned());
            }
            self.worked.chains.push(made[0].1);
            return self.names(made[0].0.clone());
        }
        if !made.iter().all(|(name, _)| self.reader.is_chain(name) || self.reader.is_picot(name)) {
            return Err("it is not said where these go".to_owned());
        }
        self.made(&made)
    }

    /// Chains that the round begins with, whether they count or not.
    fn turning(&mut self, holes: &Holes<'_>) -> Done {
        let chains = match self.reader.counted(holes, 'n') {
            Some(chains) => chains,
            None => self.reader.what(hole(holes, 'w')?)?.iter().map(|(_, count)| count).sum(),
        };
        self.worked.chains.push(chains);
        self.names(self.reader.tongue.one("stitch.ch"))
    }

    /// The top of a chain is that of the chain that the round began with.
    fn join_top(&mut self, holes: &Holes<'_>) -> Done {
        let told = holes.iter().map(|(_, words)| words.chars().filter(char::is_ascii_digit).collect::<String>());
        let last = self.worked.chains.last().map(ToString::to_string);
        if told.max() != last {
            return Err(format!("the chain is of {last:?}"));
        }
        self.names(self.reader.tongue_name("sl-st"))
    }

    /// A chain that counts stands on the stitch that was joined to.
    fn counts(&mut self, name: &str) -> Done {
        let made = if self.reader.form == 'w' {
            vec![((self.reader.short)(name).ok_or_else(|| format!("“{name}” is not explained"))?, 1)]
        } else {
            self.reader.what(name)?
        };
        // In a space it takes the place of all its chains.
        let chains =
            self.below[self.at.min(self.below.len())..].iter().take_while(|unit| **unit == Unit::Chain).count();
        self.take(chains.max(usize::from(!self.below.is_empty())), false)?;
        self.made(&made)
    }

    fn counts_as_together(&mut self, name: &str) -> Done {
        let holes = self.reader.tongue.read("w.together", name).filter(|_| self.reader.form == 'w');
        let made = match holes {
            Some(holes) => vec![((self.reader.short)(hole(&holes, 's')?).ok_or("not explained")?, 1)],
            None => self.reader.what(name)?.into_iter().map(|(name, _)| (name, 1)).collect(),
        };
        self.made(&made)
    }

    fn join_first(&mut self, name: &str) -> Done {
        self.names(self.reader.tongue_name("sl-st"))?;
        let first = self.worked.made.first().map(|(name, _)| name.as_str());
        let short = (self.reader.short)(name).ok_or_else(|| format!("“{name}” is not explained"))?;
        if first == Some(&short) { Ok(()) } else { Err(format!("the first stitch is {first:?}")) }
    }
}
