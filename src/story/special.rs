//! The special stitches: how each that isn't basic is worked, up to the last pull-through.
//!
//! What is told is put together from how a stitch is built, as its name is, so that a further cluster or post stitch needs
//! no words of its own. How they are worked is common practice.

use std::collections::BTreeSet;

use super::Story;
use crate::craft::{Build, Loops, Op, OwnStitch, Side, Spot, Stitch, Terms};
use crate::notation::write::Writer;
use crate::notation::{Gaps, Numbers};
use crate::story::{Block, Run, Section};
use crate::words::{Arg, Language};

/// Where the hook goes in for one stem.
#[derive(Clone, Copy)]
enum Foot {
    /// Where the instruction says.
    There,
    /// Into the next stitch, for stems worked together.
    Next,
}

impl Story<'_> {
    pub(super) fn special(&self) -> Section {
        let writer = self.writer();
        let mut told = Vec::new();
        for stitch in self.named_stitches() {
            told.extend(stitch_worked(&writer, stitch).map(|how| (named(&writer, stitch), how)));
        }
        let crossed = self.ops().filter(|op| op.into == Spot::Crossed).flat_map(|op| op.made.runs().map(|run| run.0));
        for stitch in crossed.collect::<BTreeSet<_>>() {
            let made = writer.short(stitch);
            told.push((writer.crossed(stitch), writer.say("special-crossed", &[("made", Arg::Text(&made))])));
        }
        for own in self.own_stitches() {
            let how = own_worked(&writer, own);
            told.extend(how.map(|how| (own_named(&writer, own), how)));
        }
        for (stitch, count) in self.worked_together() {
            told.extend(together(&writer, stitch, count).map(|how| (named_together(&writer, stitch, count), how)));
        }
        for (loops, name) in [(Loops::Back, "page-blo"), (Loops::Front, "page-flo")] {
            let how = loops_worked(&writer, loops).filter(|_| self.ops().any(|op| op.loops == loops));
            told.extend(how.map(|how| (writer.say(name, &[]), how)));
        }
        let colon = self.words.colon();
        let item = |(name, how)| vec![Run::bold(name), Run::new(format!("{colon}{how}."))];
        let items: Vec<Vec<Run>> = told.into_iter().map(item).collect();
        let blocks = if items.is_empty() { Vec::new() } else { vec![Block::List { numbered: false, items }] };
        self.section("special", "page-special", false, blocks)
    }

    /// What the stitches of the piece are called in either set of terms, where the two differ; other languages name the
    /// US term beside each of theirs.
    pub(super) fn equivalents(&self) -> Option<Block> {
        if self.words.language != Language::EN {
            return None;
        }
        let both = |stitch: Stitch| (stitch.names(Terms::Us).short, stitch.names(Terms::Uk).short);
        let differing = self.named_stitches().into_iter().map(both).filter(|(us, uk)| us != uk);
        let pair = |(us, uk)| self.with_terms("page-equivalent", &[("us", Arg::Text(us)), ("uk", Arg::Text(uk))]);
        let pairs: Vec<String> = differing.map(pair).collect();
        let told = format!("{}{}.", self.words.colon(), pairs.join(self.words.semicolon()));
        (!pairs.is_empty()).then(|| Block::Paragraph(vec![Run::bold(self.say("page-equivalents")), Run::new(told)]))
    }

    fn with_terms(&self, key: &str, args: &[(&'static str, Arg<'_>)]) -> String {
        self.words.with(key, &[args, &[self.terms()]].concat())
    }

    fn ops(&self) -> impl Iterator<Item = &Op> {
        self.plan.sizes.iter().flat_map(|size| &size.rounds).flat_map(|round| &round.ops)
    }

    /// The stitches of the maker's own that rounds make.
    pub(super) fn own_stitches(&self) -> impl Iterator<Item = &OwnStitch> {
        self.plan.design.stitches.iter().filter(|own| self.ops().any(|op| own.is_made(op)))
    }

    /// Stitches that are worked together, and how many of each.
    fn worked_together(&self) -> BTreeSet<(Stitch, u32)> {
        let together = self.ops().filter(|op| op.into == Spot::Together);
        together.flat_map(|op| op.made.runs().map(|(stitch, _)| (stitch, op.consumed))).collect()
    }
}

fn named(writer: &Writer<'_>, stitch: Stitch) -> String {
    let (short, name) = (writer.short(stitch), writer.name(stitch));
    writer.say("special-name", &[("short", Arg::Text(&short)), ("name", Arg::Text(&name))])
}

fn named_together(writer: &Writer<'_>, stitch: Stitch, count: u32) -> String {
    let (short, number) = (writer.short(stitch), count.to_string());
    writer.say("write-together", &[("stitch", Arg::Text(&short)), ("number", Arg::Text(&number))])
}

/// What a stitch of the maker's own is called: in rounds, and by its whole name where it has one.
fn own_named(writer: &Writer<'_>, own: &OwnStitch) -> String {
    let short = writer.own_name(own);
    let name = if own.trade { Some(writer.say(OwnStitch::V, &[])) } else { own.name.clone() };
    name.map_or(short.clone(), |name| {
        writer.say("special-name", &[("short", Arg::Text(&short)), ("name", Arg::Text(&name))])
    })
}

/// How a stitch of the maker's own is worked: in its maker's words, then what it is made of and what it adds to a round.
fn own_worked(writer: &Writer<'_>, own: &OwnStitch) -> Option<String> {
    let adds: Vec<_> = own.adds().into_iter().map(|(what, count)| (what, Numbers::one(count))).collect();
    let (made, adds) = (writer.spelled(&own.made), writer.tallied(&adds, Gaps::OPEN));
    let told = writer.say("special-own", &[("made", Arg::Text(&made)), ("adds", Arg::Text(&adds))]);
    let how = own.how.as_ref().map(|how| how.trim_end_matches('.').to_owned());
    Some(how.map_or(told.clone(), |how| format!("{how}{}{told}", writer.words.semicolon())))
}

/// How a stitch is worked, as one sentence without its full stop; nothing for the basic ones.
fn stitch_worked(writer: &Writer<'_>, stitch: Stitch) -> Option<String> {
    let row = stitch.row();
    let stems = u32::from(row.stems);
    let several = |base: Stitch| writer.several(base, stems);
    match row.build {
        _ if row.basic => None,
        Build::Chain | Build::Slip => None,
        Build::Cross | Build::Stem | Build::Post(_) => Some(whole(writer, stitch)),
        Build::Cluster | Build::Puff => Some(gathered(writer, stitch)),
        Build::Bobble => Some(joined(&[gathered(writer, stitch), writer.say("special-push-out", &[])])),
        Build::Popcorn => {
            let made = several(stitch.built_of()?);
            Some(writer.say("special-popcorn", &[("made", Arg::Text(&made))]))
        }
        Build::Extended | Build::Long | Build::Linked => Some(whole(writer, stitch)),
        Build::Loop => Some(writer.say("special-loop", &[])),
        Build::Reverse => {
            let way = writer.say("special-reverse", &[]);
            Some(joined(&[way, writer.say("special-draw-up", &[]), close(writer, row.steps, 1)]))
        }
        Build::Spike => {
            let way = writer.say("special-spike", &[("count", Arg::Count(stems))]);
            let covers = writer.say("special-spike-covers", &[]);
            Some(joined(&[way, close(writer, row.steps, 1)]) + writer.words.semicolon() + &covers)
        }
        Build::Picot => {
            let made = several(stitch.built_of()?);
            Some(writer.say("special-picot", &[("made", Arg::Text(&made))]))
        }
    }
}

/// How so many stitches are worked together; nothing for stitches that can't be.
fn together(writer: &Writer<'_>, stitch: Stitch, count: u32) -> Option<String> {
    let row = stitch.row();
    let (each, stems) = match row.build {
        Build::Chain | Build::Slip | Build::Popcorn | Build::Picot => return None,
        Build::Loop | Build::Reverse | Build::Spike => return None,
        Build::Cross | Build::Stem | Build::Post(_) | Build::Extended | Build::Long | Build::Linked => {
            (joined(&stem(writer, stitch, Foot::Next)), 1)
        }
        Build::Cluster | Build::Puff | Build::Bobble => {
            let stems = u32::from(row.stems);
            (times(writer, "special-times-same", &joined(&stem(writer, stitch, Foot::Next)), stems), stems)
        }
    };
    let all = times(writer, "special-times", &each, count);
    Some(joined(&[all, close(writer, row.steps, stems * count)]))
}

/// Which loop the hook goes under; nothing where it is both.
fn loops_worked(writer: &Writer<'_>, loops: Loops) -> Option<String> {
    match loops {
        Loops::Both => None,
        Loops::Back => Some(writer.say("special-back-loop", &[])),
        Loops::Front => Some(writer.say("special-front-loop", &[])),
    }
}

/// One stem up to where it is finished.
fn whole(writer: &Writer<'_>, stitch: Stitch) -> String {
    let steps = stitch.row().steps;
    let mut clauses = entered(writer, stitch, Foot::There);
    clauses.push(if steps < 2 { close(writer, steps, 1) } else { pulled_off(writer, steps) });
    joined(&clauses)
}

/// Stems in one place, closed together.
fn gathered(writer: &Writer<'_>, stitch: Stitch) -> String {
    let (steps, stems) = (stitch.row().steps, u32::from(stitch.row().stems));
    let each = joined(&stem(writer, stitch, Foot::There));
    joined(&[times(writer, "special-times-same", &each, stems), close(writer, steps, stems)])
}

/// One stem without its last pull-through.
fn stem(writer: &Writer<'_>, stitch: Stitch, foot: Foot) -> Vec<String> {
    let mut clauses = entered(writer, stitch, foot);
    let steps = stitch.row().steps;
    if steps >= 2 {
        clauses.push(pulled_off(writer, steps - 1));
    }
    clauses
}

/// The yarn over the hook, the hook in, and the yarn drawn up.
fn entered(writer: &Writer<'_>, stitch: Stitch, foot: Foot) -> Vec<String> {
    let row = stitch.row();
    let mut clauses = Vec::new();
    let overs = if row.steps < 2 { row.steps } else { row.steps - 1 };
    if row.build == Build::Linked {
        clauses.push(writer.say("special-linked", &[]));
    } else if overs > 0 {
        clauses.push(writer.say("special-yarn-over", &[("count", Arg::Count(overs.into()))]));
    }
    let way = if let Build::Post(side) = row.build {
        match side {
            Side::Front => "special-front-post",
            Side::Back => "special-back-post",
        }
    } else {
        "special-insert"
    };
    let foot = match foot {
        Foot::There => "there",
        Foot::Next => "next",
    };
    clauses.push(writer.say(way, &[("foot", Arg::Text(foot))]));
    let draw = if row.build == Build::Puff {
        "special-draw-long"
    } else if row.build == Build::Long {
        "special-draw-tall"
    } else {
        "special-draw-up"
    };
    clauses.push(writer.say(draw, &[]));
    clauses.extend((row.build == Build::Extended).then(|| writer.say("special-extend", &[])));
    clauses
}

/// Loops taken off the hook by twos, so many times.
fn pulled_off(writer: &Writer<'_>, count: u8) -> String {
    writer.say("special-pull-off", &[("count", Arg::Count(count.into()))])
}

/// The last pull-through, through the loop that was on the hook and what so many stems have left on it: the stem of a half
/// double crochet leaves its yarn-over too.
fn close(writer: &Writer<'_>, steps: u8, stems: u32) -> String {
    let each = if steps == 1 { 2 } else { 1 };
    writer.say("special-close", &[("loops", Arg::Count(1 + each * stems))])
}

fn times(writer: &Writer<'_>, key: &str, what: &str, count: u32) -> String {
    writer.say(key, &[("what", Arg::Text(what)), ("count", Arg::Count(count))])
}

fn joined(clauses: &[String]) -> String {
    clauses.join(", ")
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::words::Words;

    fn each_writer(tell: impl Fn(&Writer<'_>, &str)) {
        for language in Language::ALL {
            for terms in [Terms::Us, Terms::Uk] {
                tell(&Writer { words: &Words::of(language), terms }, language.tag());
            }
        }
    }

    fn assert_filled(told: &str, what: &str) {
        let unfilled = ["special-", "page-", "-say", "-many", "{", "$"];
        assert!(!told.is_empty() && unfilled.iter().all(|key| !told.contains(key)), "{what}: {told}");
    }

    fn english<T>(tell: impl Fn(&Writer<'_>) -> T) -> T {
        tell(&Writer { words: &Words::of(Language::EN), terms: Terms::Us })
    }

    fn worked(id: &str) -> Option<String> {
        english(|writer| Stitch::by_id(id).and_then(|stitch| stitch_worked(writer, stitch)))
    }

    #[test]
    fn every_stitch_that_is_not_basic_is_told_in_every_language_and_in_its_own_way() {
        each_writer(|writer, tag| {
            let mut ways = BTreeSet::new();
            for stitch in Stitch::all() {
                let id = stitch.row().id;
                let how = stitch_worked(writer, stitch);
                assert_eq!(how.is_none(), stitch.row().basic, "{tag}: {id}");
                assert_filled(&named(writer, stitch), id);
                if let Some(how) = how {
                    assert_filled(&how, id);
                    assert!(ways.insert(how), "{tag}: {id} is worked as another is");
                }
            }
        });
    }

    #[test]
    fn what_is_worked_together_and_loops_are_told_in_every_language() {
        each_writer(|writer, tag| {
            for stitch in Stitch::all() {
                let alone = matches!(stitch.row().build, Build::Popcorn | Build::Loop);
                let can = stitch.row().build.row().fabric && !alone;
                let how = together(writer, stitch, 2);
                assert_eq!(how.is_some(), can, "{tag}: {}", stitch.row().id);
                how.iter().for_each(|how| assert_filled(how, tag));
            }
            let loops = [Loops::Both, Loops::Back, Loops::Front].map(|loops| loops_worked(writer, loops));
            assert!(loops[0].is_none() && loops[1] != loops[2], "{tag}");
            loops.iter().flatten().for_each(|how| assert_filled(how, tag));
        });
    }

    /// Loops on the hook before the last pull-through are common practice: 4 for a 3-dc cluster, 7 for a puff of three,
    /// 6 for a 5-dc bobble, 3 for sc2tog, 5 for hdc2tog, 4 for dc3tog.
    #[test]
    fn the_last_pull_through_is_through_as_many_loops_as_are_on_the_hook() {
        let ends =
            |told: Option<String>, loops: &str| told.is_some_and(|told| told.contains(&format!("all {loops} loops")));
        assert!(ends(worked("cluster"), "4") && ends(worked("puff"), "7") && ends(worked("bobble"), "6"));
        let tog = |stitch, count| english(|writer| together(writer, stitch, count));
        assert!(ends(tog(Stitch::SC, 2), "3") && ends(tog(Stitch::HDC, 2), "5") && ends(tog(Stitch::DC, 3), "4"));
        assert!(ends(worked("fphdc"), "3"));
        assert!(worked("fpsc").is_some_and(|told| told.ends_with("both loops on the hook")));
    }

    #[test]
    fn stitches_are_worked_step_by_step() {
        let cluster = "[yarn over, insert the hook in the stitch or space, draw up a loop, yarn over, draw through two \
                       loops] 3 times in the same place, yarn over, draw through all 4 loops on the hook";
        assert_eq!(worked("cluster").as_deref(), Some(cluster));
        let treble = "yarn over twice, insert the hook in the stitch or space, draw up a loop, (yarn over, draw through \
                      two loops) 3 times";
        assert_eq!(worked("tr").as_deref(), Some(treble));
        let sc2tog = "[insert the hook in the next stitch, draw up a loop] 2 times, yarn over, draw through all 3 loops \
                      on the hook";
        assert_eq!(english(|writer| together(writer, Stitch::SC, 2)).as_deref(), Some(sc2tog));
    }
}
