//! What a pattern says of where stitches go, how colours change and how a spiral ends, in every language.

#![allow(clippy::unwrap_used, reason = "a test fails where it panics")]

use roundelay::craft::{Begin, Close};
use roundelay::page::{Options, Paper};
use roundelay::pattern::Pattern;
use roundelay::plan::Plan;
use roundelay::story::{Block, Illustrations, Story};

fn example(name: &str, language: &str) -> Plan {
    let text = std::fs::read_to_string(format!("examples/{name}.yaml")).unwrap();
    plan(&text.replace("language: en", &format!("language: {language}")))
}

fn plan(text: &str) -> Plan {
    Pattern::read(text.as_bytes()).unwrap_or_else(|report| panic!("{report:#?}")).plan
}

/// A joined mat in double crochet, its chain counted or not, with so many rounds of each colour.
fn mat(counts: bool, colours: &str) -> Plan {
    let chain = if counts { "chain counts" } else { "chain does not count" };
    plan(&format!(
        "title: Pool mat\nkind: mat\nyarn: {{colours: {{sand: \"#d9c39a\", tide: \"#2f6f8f\"}}}}\n\
         swatch: {{stitch: dc, stitches: 12, rounds: 7, width: 10, height: 9.8}}\nsizes: {{one: {{across: 24}}}}\n\
         work: joined, {chain}\nparts:\n  - mat: {{shape: flat, colours: {colours}}}\n"
    ))
}

/// The items of the lists of one section.
fn items(plan: &Plan, section: &str) -> Vec<String> {
    let options = Options { plain_words: true, ..Options::new(Paper::a4()) };
    let sections = Story::new(plan, &[], options.telling(), Illustrations::default()).sections();
    let blocks = sections.into_iter().filter(|known| known.id == section).flat_map(|section| section.blocks);
    let list = |block| match block {
        Block::List { items, .. } => items,
        Block::Paragraph(_) | Block::Heading(_) | Block::Table(_) | Block::Figure(_) => Vec::new(),
    };
    let words = |item: Vec<roundelay::story::Run>| item.into_iter().map(|run| run.text).collect::<String>();
    blocks.flat_map(list).map(words).collect()
}

/// The paragraphs of one section.
fn paragraphs(plan: &Plan, section: &str) -> Vec<String> {
    let sections = Story::new(plan, &[], Options::new(Paper::a4()).telling(), Illustrations::default()).sections();
    let blocks = sections.into_iter().filter(|known| known.id == section).flat_map(|section| section.blocks);
    let said = |block| match block {
        Block::Paragraph(runs) => Some(runs.into_iter().map(|run| run.text).collect::<String>()),
        Block::List { .. } | Block::Heading(_) | Block::Table(_) | Block::Figure(_) => None,
    };
    blocks.filter_map(said).collect()
}

fn say(items: &[String], part: &str) -> usize {
    items.iter().filter(|item| item.contains(part)).count()
}

#[test]
fn the_place_of_the_first_stitch_is_one_rule_that_agrees_with_the_counts() {
    let (with, without) = (mat(true, "sand"), mat(false, "sand"));
    let rules = ["the next stitch goes into the one after it", "into the stitch at the foot of the chain"];
    for (plan, counts) in [(&with, true), (&without, false)] {
        let said = items(plan, "working");
        assert_eq!(rules.map(|rule| say(&said, rule)), [usize::from(counts), usize::from(!counts)], "{said:#?}");
        let told = items(plan, "plain");
        for round in plan.sizes[0].rounds.iter().filter(|round| round.before > 0) {
            // The chain that counts stands on the first stitch: its operation is not worked again.
            assert_eq!(round.begin, Begin::Chain { chains: 3, counts });
            assert_eq!(round.ops.iter().map(|op| op.consumed).sum::<u32>(), round.before);
        }
        let (left, all) = (say(&told, "each remaining stitch"), say(&told, "each stitch all the way round"));
        assert!(if counts { left > 0 && all == 0 } else { left == 0 && all > 0 }, "{told:#?}");
    }
}

#[test]
fn colours_change_as_the_rounds_close() {
    let joined = items(&mat(true, "[{sand: 1}, {tide: 1}, {sand: rest}]"), "working");
    let [slip, pull, carry, cut, step] = [
        "slip stitch that joins the round before",
        "last pull-through of the stitch before",
        "one or two rounds of another colour",
        "Cut the old yarn",
        "step of one round",
    ];
    assert_eq!([slip, pull, carry, cut, step].map(|part| say(&joined, part)), [1, 0, 1, 0, 0], "{joined:#?}");
    let once = items(&mat(true, "[{sand: 2}, {tide: rest}]"), "working");
    assert_eq!([slip, pull, carry, cut, step].map(|part| say(&once, part)), [1, 0, 0, 1, 0], "{once:#?}");
    let spiral = items(&example("ember-beanie", "en"), "working");
    assert_eq!([slip, pull, carry, cut, step].map(|part| say(&spiral, part)), [0, 1, 1, 0, 1], "{spiral:#?}");
    let plain = items(&mat(true, "sand"), "working");
    assert_eq!([slip, pull, carry, cut, step].map(|part| say(&plain, part)), [0; 5], "{plain:#?}");
}

/// Every change in the plan has its sentence, at its round, and there are no others.
#[test]
fn plain_words_tell_every_change_of_colour_at_its_round() {
    let changes = [
        ("en", ["Begin with ", "Change to ", " before round "]),
        ("de", ["Beginne mit ", "Wechsle ", "vor Runde "]),
        ("fr", ["Commencez avec ", "Passez à ", " avant le tour "]),
        ("es", ["Empieza con ", "Cambia a ", " antes de la vuelta "]),
        ("nl", ["Begin met ", "Wissel ", "vóór toer "]),
    ];
    for name in ["ember-beanie", "slipway-sun-hat", "duckling-cap"] {
        for (language, [begin, change, before]) in changes {
            let plan = example(name, language);
            let told = items(&plan, "plain");
            let rounds = plan.sizes.iter().flat_map(|size| size.rounds.windows(2));
            let changed: Vec<_> = rounds.filter(|pair| pair[0].colour != pair[1].colour).collect();
            assert!(!changed.is_empty());
            assert_eq!((say(&told, begin), say(&told, change)), (plan.sizes.len(), changed.len()), "{told:#?}");
            for pair in changed {
                let colour = &plan.design.yarn.colours[pair[1].colour.unwrap()].name;
                let (number, at) = (pair[1].number, format!("{before}{}", pair[1].number));
                let fits = |item: &&String| {
                    let mut sentences = item.split(". ");
                    let heading = sentences.next().unwrap_or_default();
                    let next = sentences.next().unwrap_or_default();
                    let named = next.contains(change) && next.contains(colour.as_str());
                    let single = heading.ends_with(&format!(" {number}"));
                    named && (single || next.contains(&at))
                };
                assert!(told.iter().any(|item| fits(&item)), "{name}, {language}, round {number}: {told:#?}");
            }
        }
    }
}

#[test]
fn a_spiral_steps_down_by_one_stitch_of_each_kind() {
    let ends = [
        ("en", "Step down", "the next 3 stitches with one each of hdc, sc, sl st", "one into each stitch"),
        ("de", "Lass die Spirale", "die nächsten 3 Maschen", "in jede Masche nur eine"),
        ("fr", "Descendez", "les 3 mailles suivantes", "une par maille"),
        ("es", "Baja hacia", "los 3 puntos siguientes", "uno por punto"),
        ("nl", "Laat de spiraal", "de volgende 3 steken", "één per steek"),
    ];
    for (language, told, over, each) in ends {
        let plan = example("ember-beanie", language);
        assert!(plan.sizes.iter().all(|size| size.step_down.len() == 3));
        assert!(plan.sizes.iter().flat_map(|size| &size.rounds).all(|round| round.close == Close::Spiral));
        assert_eq!(say(&items(&plan, "plain"), told), plan.sizes.len(), "{language}");
        // Told with the rounds, and there alone: told again at the end it would be worked twice.
        let words = |section: &str| paragraphs(&plan, section).join(" ");
        let rounds = words("rounds");
        assert!(rounds.contains(over) && rounds.contains(each), "{language}: {rounds}");
        let finish = items(&plan, "finishing").join(" ");
        assert!(!finish.contains(over), "{language}: {finish}");
    }
}
