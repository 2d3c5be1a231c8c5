//! Stitches that a design or a text defines: read, counted, drawn by what they are built of, and told by their names
//! wherever the pattern is read. Counts are worked by hand.

#![allow(clippy::unwrap_used, reason = "a test fails where it panics")]

use roundelay::craft::{Made, Op, Spot, Stitch};
use roundelay::file::{json, text};
use roundelay::geometry::{SideShape, predict};
use roundelay::page::{Options, Paper, Pictures};
use roundelay::pattern::{Pattern, text::into_design};
use roundelay::plan::{Plan, audit, solve};
use roundelay::report::Report;
use roundelay::story::{Block, Story};
use roundelay::words::Language;

const MAT: &str = "title: Tidepool mat\nkind: mat\nwork: joined\n\
    swatch: {stitch: dc, stitches: 14, rounds: 7, width: 10, height: 10}\nsizes: {one: {across: 20}}\n\
    stitches:\n  shell: {work: \"(2 dc, ch 1, 2 dc)\", name: tidepool shell, how: Work it loosely.}\n  twin: (V-st, V-st)\n\
    parts:\n  - all:\n      written: |\n        \
    Rnd 1: ch 3 (counts as dc), 11 dc in ring, sl st to top of ch-3 to join (12)\n        \
    Rnd 2: ch 1 (does not count), [sc in next st, shell in next st] 6 times, sl st to first sc to join\n        \
    Rnd 3: ch 1 (does not count), *sc in next sc, twin in next shell; rep from * around, sl st to first sc to join\n        \
    Rnd 4: ch 1 (does not count), [sc in next sc, ch 3, V-st in ch-1 sp of next V-st, V-st in next V-st] 6 times, sl st to first sc to join\n";

fn plan_of(text: &str) -> Plan {
    Pattern::read(text.as_bytes()).unwrap_or_else(|report| panic!("{report:#?}")).plan
}

fn runs(made: &Made) -> Vec<(Stitch, u32)> {
    made.runs().collect()
}

const SHELL: [(Stitch, u32); 3] = [(Stitch::DC, 2), (Stitch::CH, 1), (Stitch::DC, 2)];
const TWIN: [(Stitch, u32); 5] = [(Stitch::DC, 1), (Stitch::CH, 1), (Stitch::DC, 2), (Stitch::CH, 1), (Stitch::DC, 1)];

#[test]
fn rounds_that_name_them_are_counted_by_what_they_are_built_of() {
    let plan = plan_of(MAT);
    let size = &plan.sizes[0];
    assert_eq!(audit(size), Ok(()));
    // 6 sc and 6 shells of four dc and a chain; 6 sc and 6 twins of four dc and two chains; in the last one 6 sc, 6
    // chain-threes and 12 V-stitches of two dc and a chain.
    let counts: Vec<u32> = size.rounds.iter().map(|round| round.after).collect();
    assert_eq!(counts, [12, 36, 42, 60]);
    let stitches: Vec<u32> = size.rounds.iter().map(|round| round.stitches()).collect();
    assert_eq!(stitches, [12, 30, 30, 30]);
    let groups =
        |round: usize| size.rounds[round].ops.iter().filter(|op| op.made.runs().count() > 1).collect::<Vec<&Op>>();
    assert!(groups(1).len() == 6 && groups(1).iter().all(|op| runs(&op.made) == SHELL && op.into == Spot::Stitch));
    // Into the space of the shell below, not into the shell as if it were one stitch.
    assert!(groups(2).len() == 6 && groups(2).iter().all(|op| runs(&op.made) == TWIN && op.into == Spot::Space));
    // One into each space of a twin.
    assert!(groups(3).len() == 12 && groups(3).iter().all(|op| op.into == Spot::Space && op.count() == 3));
}

/// Everything that a plan says as plain text, and the names and explanations of its special stitches.
fn told(plan: &Plan) -> (String, Vec<(String, String)>) {
    let shapes: Vec<SideShape> = plan.sizes.iter().map(|size| predict(plan, size)).collect();
    let pictures = Pictures::default();
    let options = Options::new(Paper::a4());
    let story = Story::new(plan, &shapes, options.telling(), pictures.illustrations());
    let mut special = Vec::new();
    for section in story.sections().iter().filter(|section| section.id == "special") {
        for block in &section.blocks {
            let Block::List { items, .. } = block else { continue };
            let own = |runs: &Vec<roundelay::story::Run>| (runs[0].text.clone(), runs[1].text.clone());
            special.extend(items.iter().map(own));
        }
    }
    (text::write(&story, &pictures), special)
}

#[test]
fn they_are_told_in_every_language_and_by_their_names() {
    let plan = plan_of(MAT);
    let (all, special) = told(&plan);
    let own: Vec<&(String, String)> = special.iter().filter(|(name, _)| !name.contains("BLO")).collect();
    let find = |name: &str| own.iter().find(|(own, _)| own == name).map(|(_, how)| how.as_str());
    assert_eq!(
        find("shell (tidepool shell)"),
        Some(": Work it loosely; (2 dc, ch 1, 2 dc) in one stitch or space, which makes 4 dc, 1 ch-1 sp.")
    );
    let twin = find("twin").unwrap();
    assert!(twin.contains("(dc, ch 1, 2 dc, ch 1, dc)") && twin.contains("4 dc, 2 ch-1 sps"), "{twin}");
    assert!(all.contains("shell in next st") && all.contains("tidepool shell"), "{all}");
    let mut ways = std::collections::BTreeSet::new();
    for language in Language::ALL {
        let mut plan = plan.clone();
        plan.design.language = language;
        let (all, special) = told(&plan);
        let (_, shell) = special.iter().find(|(name, _)| name.starts_with("shell (")).unwrap();
        // The maker's own words stay as they are; what it makes is told in the language of the page.
        assert!(shell.contains("Work it loosely") && ways.insert(shell.clone()), "{shell}");
        assert!(all.matches("shell").count() > 3 && all.contains("twin"), "{all}");
        // Rounds call it by its name; what it is made of is told once.
        assert!(!all.contains("{ $") && !all.contains("special-own"), "{all}");
    }
}

#[test]
fn data_name_them_with_what_they_are() {
    let plan = plan_of(MAT);
    let shapes: Vec<SideShape> = plan.sizes.iter().map(|size| predict(&plan, size)).collect();
    let data = json::plan(&plan, &shapes, None);
    assert!(
        data.contains("\"name\":\"shell\",\"whole_name\":\"tidepool shell\",\"work\":\"(2 dc, ch 1, 2 dc)\""),
        "{data}"
    );
    assert!(data.contains("\"how\":\"Work it loosely.\",\"makes\":5"), "{data}");
}

const BASKET: &str = "title: Reed basket\nkind: basket\nwork: joined\n\
    swatch: {stitch: dc, stitches: 14, rounds: 7, width: 10, height: 10}\nsizes: {S: {across: 14}, M: {across: 18}}\n\
    tolerance: 8 %\nstitches: {reed: \"(dc, ch 1, dc)\"}\nparts:\n  - base: {start: ring, shape: flat}\n  \
    - side: {shape: straight, depth: 9, pattern: [\"reed in next st, sk 2 sts\", \"reed in next reed, sk next dc\"]}\n";

#[test]
fn patterns_are_worked_in_them() {
    for work in ["joined", "spiral"] {
        // The second line goes into the spaces of the first, past the dc before and after each.
        let plan = plan_of(&BASKET.replace("work: joined", &format!("work: {work}")).replace(", sk next dc", ""));
        for size in &plan.sizes {
            assert_eq!(audit(size), Ok(()));
            let side = &size.parts[1];
            assert_eq!(side.multiple.map(|multiple| multiple.of()), Some(3));
            let last = &size.rounds[side.last as usize - 1];
            let reeds = last.ops.iter().filter(|op| op.count() == 3).count() as u32;
            assert_eq!(reeds * 3, last.after);
        }
        let (all, _) = told(&plan);
        assert!(all.contains("reed in next st") && all.contains("reed in next ch-1 sp"), "{all}");
    }
}

#[test]
fn texts_define_them_above_their_rounds() {
    let beside = plan_of(MAT).design;
    let beside = roundelay::design::Design { stitches: Vec::new(), ..beside };
    let said = "Fern mat\nSpecial stitch: fern (fn): (tr, ch 2, tr) in one stitch\n\
        Rnd 1: 6 sc in magic ring, sl st to first sc (6)\nRnd 2: ch 1, fern in each st around, sl st to first tr\n";
    let mut report = Report::new();
    let design = into_design(said, &beside, &mut report).unwrap();
    let names: Vec<&str> = design.stitches.iter().map(|own| own.short.as_str()).collect();
    assert_eq!(names, ["fn"], "{report:#?}");
    assert_eq!(design.stitches[0].name.as_deref(), Some("fern"));
    let plan = solve(&design, &mut report).unwrap_or_else(|| panic!("{report:#?}"));
    assert_eq!(plan.sizes[0].rounds[1].after, 24);
    let (all, special) = told(&plan);
    assert!(
        special.iter().any(|(name, how)| name == "fn (fern)" && how.contains("(tr, ch 2, tr)")),
        "{special:?} {all}"
    );
}

#[test]
fn rounds_told_anew_read_back_as_the_same() {
    let mut report = Report::new();
    let design = roundelay::design::read(BASKET.replace(", sk next dc", "").as_str(), &mut report).unwrap();
    let plan = solve(&design, &mut report).unwrap();
    let size = &plan.sizes[0];
    let words = plan.design.words();
    let writer = roundelay::notation::write::Writer { words: &words, terms: plan.design.terms };
    let told = |round: &roundelay::craft::Round| {
        let instruction = roundelay::notation::Instruction::of(round, size.below(round));
        format!("        Rnd {}: {}\n", round.number, writer.counted(&instruction))
    };
    let rounds: String = size.rounds.iter().map(told).collect();
    let head = BASKET.split_once("parts:").unwrap().0;
    let again =
        plan_of(&format!("{head}parts:\n  - all:\n      written: |\n{rounds}").replace(", M: {across: 18}", ""));
    for (one, other) in size.rounds.iter().zip(&again.sizes[0].rounds) {
        assert_eq!(one.ops, other.ops, "{}", told(one));
    }
}
