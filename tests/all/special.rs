//! Special stitches: whoever uses one is told how it is worked, wherever the pattern is read.

use std::collections::BTreeSet;

use roundelay::craft::{Loops, Spot, Terms};
use roundelay::file::text;
use roundelay::geometry::{SideShape, predict};
use roundelay::page::{Options, Paper, Pictures};
use roundelay::pattern::Pattern;
use roundelay::plan::Plan;
use roundelay::story::{Block, Story};
use roundelay::words::Language;

const SAMPLE: &str = include_str!("../../examples/lanternlight-mandala.yaml");

fn plan_of(text: &str) -> Plan {
    Pattern::read(text.as_bytes()).unwrap_or_else(|report| panic!("{report:#?}")).plan
}

/// Everything the pattern says as plain text, each paragraph of the special stitches and the names they are told under.
fn told(plan: &Plan) -> (String, Vec<String>, BTreeSet<String>) {
    let shapes: Vec<SideShape> = plan.sizes.iter().map(|size| predict(plan, size)).collect();
    let pictures = Pictures::default();
    let options = Options::new(Paper::a4());
    let story = Story::new(plan, &shapes, options.telling(), pictures.illustrations());
    let sections = story.sections();
    let lists = sections.iter().filter(|section| section.id == "special").flat_map(|section| &section.blocks);
    let mut items = Vec::new();
    let mut names = BTreeSet::new();
    for list in lists {
        let Block::List { items: told, .. } = list else { panic!("{list:?}") };
        for runs in told {
            let name = runs[0].text.split(" (").next().unwrap_or_default();
            assert!(names.insert(name.to_owned()), "{name} is told twice");
            items.push(runs.iter().map(|run| run.text.as_str()).collect());
        }
    }
    (text::write(&story, &pictures), items, names)
}

/// English names of what must be told, from the operations themselves.
fn wanted(plan: &Plan) -> BTreeSet<String> {
    let mut wanted = BTreeSet::new();
    for op in plan.sizes.iter().flat_map(|size| &size.rounds).flat_map(|round| &round.ops) {
        for (stitch, _) in op.made.runs() {
            let short = stitch.names(plan.design.terms).short;
            if !stitch.row().basic {
                wanted.insert(short.to_owned());
            }
            if op.into == Spot::Together {
                wanted.insert(format!("{short}{}tog", op.consumed));
            }
        }
        match op.loops {
            Loops::Both => {}
            Loops::Back => wanted.extend(["BLO".to_owned()]),
            Loops::Front => wanted.extend(["FLO".to_owned()]),
        }
    }
    wanted
}

#[test]
fn every_example_tells_each_special_stitch_that_it_uses_and_no_other() {
    let mut seen = BTreeSet::new();
    for entry in std::fs::read_dir("examples").expect("the examples are there") {
        let path = entry.expect("an entry").path();
        if path.extension().is_none_or(|ending| ending != "yaml") {
            continue;
        }
        let mut plan = plan_of(&std::fs::read_to_string(&path).expect("it is text"));
        for terms in [Terms::Us, Terms::Uk] {
            (plan.design.terms, plan.design.language) = (terms, Language::EN);
            let (_, _, names) = told(&plan);
            let wanted = wanted(&plan);
            assert_eq!(names, wanted, "{}", path.display());
            seen.extend(wanted);
        }
        let count = wanted(&plan).len();
        for language in Language::ALL {
            plan.design.language = language;
            assert_eq!(told(&plan).1.len(), count, "{} in {language:?}", path.display());
        }
    }
    assert!(["3-dc cl", "3-tr cl", "ch-3 picot", "FLO"].iter().all(|name| seen.contains(*name)), "{seen:?}");
}

#[test]
fn the_text_prints_every_step_and_what_the_stitches_are_called_elsewhere() {
    let mut plan = plan_of(SAMPLE);
    let flat = |text: &str| text.split_whitespace().collect::<Vec<_>>().join(" ");
    for language in Language::ALL {
        plan.design.language = language;
        let (text, items, _) = told(&plan);
        assert_eq!(items.len(), 2, "{language:?}");
        assert!(items.iter().all(|item| flat(&text).contains(&flat(item))), "{language:?}: {items:?}");
        let both = text.contains("dc (US) = tr (UK)");
        assert_eq!(both, language == Language::EN, "{language:?}");
    }
    (plan.design.terms, plan.design.language) = (Terms::Uk, Language::EN);
    assert!(told(&plan).0.contains("dc (UK) = sc (US)"));
}
