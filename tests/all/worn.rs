//! Hats on heads: where they sit, how much their rounds are stretched, and what a maker is told of it.

use kurbo::{BezPath, PathEl, Shape};
use roundelay::drawing::{Item, SchematicOptions, worn};
use roundelay::geometry::{Holds, Sits};
use roundelay::pattern::Pattern;

/// A cap of a dome and a side, in sc of 5 mm by 4.5, for a head of 56 cm.
fn cap(ease: &str, depth: f64) -> Pattern {
    let text = format!(
        "title: Cap\nkind: hat\nswatch: {{stitch: sc, stitches: 20, rounds: 22, width: 10, height: 10}}\nease: {ease}\n\
         sizes: {{one: {{head: 56}}}}\nwork: spiral\nparts:\n  - crown: {{start: ring, shape: dome}}\n  - side: {{depth: {depth}}}\n"
    );
    Pattern::read(text.as_bytes()).unwrap_or_else(|report| panic!("{text}{report:#?}"))
}

fn codes(pattern: &Pattern) -> Vec<&'static str> {
    pattern.report.diagnostics.iter().map(|one| one.code).collect()
}

#[test]
fn a_close_hat_is_stretched_by_what_it_is_smaller_than_the_head() {
    for (ease, smaller) in [("-4 %", 0.04), ("-8 %", 0.08)] {
        let pattern = cap(ease, 8.0);
        let worn = pattern.shapes[0].worn.as_ref().expect("a hat");
        let comes_out = pattern.plan.sizes[0].finished.mm() / 560.0;
        assert!((comes_out - (1.0 - smaller)).abs() < 0.015, "{ease}: {comes_out}");
        // The round at the head's widest level is stretched to the head.
        let widest =
            worn.rounds.iter().map(|round| round.radius).fold(roundelay::units::Mm::ZERO, roundelay::units::Mm::max);
        assert!((worn.grip - (1.0 / comes_out - 1.0)).abs() < 0.01, "{ease}: {} {comes_out}", worn.grip);
        assert!((widest.mm() / worn.head.widest() - 1.0).abs() < 0.01, "{widest:?}");
        assert_eq!(worn.holds(), Holds::Grips, "{ease}");
    }
}

#[test]
fn no_round_lies_inside_the_head() {
    for ease in ["-12 %", "-5 %", "0 %", "10 %"] {
        let pattern = cap(ease, 9.0);
        let worn = pattern.shapes[0].worn.as_ref().expect("a hat");
        for (k, round) in worn.rounds.iter().enumerate() {
            let head = worn.head.radius_at(round.height.mm());
            assert!(round.radius.mm() > head - 0.05, "{ease}, round {}: {:?} of {head}", k + 1, round.radius);
        }
    }
}

/// By common practice a third of the head reaches the brow and four tenths cover the ears.
#[test]
fn the_deeper_the_side_the_further_down_it_sits() {
    let mut before = 0.0;
    let mut sits = Vec::new();
    for depth in [1.0, 4.0, 6.5, 8.5, 12.0] {
        let pattern = cap("-5 %", depth);
        let worn = pattern.shapes[0].worn.as_ref().expect("a hat");
        assert!(worn.tape.mm() > before + 10.0, "{depth} cm: {:?}", worn.tape);
        before = worn.tape.mm();
        sits.push(worn.sits());
    }
    assert_eq!(sits, [Sits::Top, Sits::Brow, Sits::Between, Sits::Ears, Sits::Below]);
}

/// The cure that a warning names is one: written into the design, the warning is gone.
#[test]
fn what_slips_or_pinches_is_told_with_an_ease_that_holds() {
    for (ease, code) in [("10 %", "hat-slips"), ("-18 %", "hat-pinches")] {
        let pattern = cap(ease, 8.0);
        let told = pattern.report.diagnostics.iter().find(|one| one.code == code);
        let told = told.unwrap_or_else(|| panic!("{ease}: {:?}", pattern.report));
        let help = told.help.as_deref().unwrap_or_default();
        let cure = help.split("`ease: ").nth(1).and_then(|rest| rest.split('`').next()).expect("a cure");
        let cured = cap(cure, 8.0);
        assert!(!codes(&cured).iter().any(|code| code.starts_with("hat-")), "{cure}: {:?}", codes(&cured));
    }
    for ease in ["-10 %", "-5 %", "0 %", "3 %"] {
        assert!(!codes(&cap(ease, 8.0)).iter().any(|code| code.starts_with("hat-")), "{ease}");
    }
}

#[test]
fn a_ring_round_the_ears_has_no_crown_to_sit_on() {
    let text = "title: Band\nkind: hat\nswatch: {stitch: sc, stitches: 20, rounds: 22, width: 10, height: 10}\n\
                sizes: {one: {head: 56}}\nwork: spiral\nparts:\n  - band: {start: chain ring of 106, shape: straight, depth: 9}\n";
    let pattern = Pattern::read(text.as_bytes()).unwrap_or_else(|report| panic!("{report:#?}"));
    assert_eq!(pattern.shapes[0].worn, None);
}

/// Filled and open paths of a drawing, back to front.
fn paths(items: &[Item]) -> Vec<(bool, &BezPath)> {
    items.iter().flat_map(of).collect()
}

fn of(item: &Item) -> Vec<(bool, &BezPath)> {
    match item {
        Item::Path(path) => vec![(path.fill.is_some(), &path.path)],
        Item::Group(group) => paths(&group.items),
        Item::Text(_) | Item::Symbol(_) | Item::Photo(_) => Vec::new(),
    }
}

/// A cap of eight tall rounds: the line through them is a curve with a level top, and no part of it runs through the head.
#[test]
fn a_cap_of_few_rounds_is_drawn_round_the_head() {
    let text = "title: Cap\nkind: hat\nswatch: {stitch: dc, stitches: 12, rounds: 7, width: 10, height: 9.8}\nease: -7 %\n\
                sizes: {one: {head: 36}}\nwork: joined\nparts:\n  - crown: {start: ring, shape: flat}\n  - side: {depth: 5.6}\n";
    let pattern = Pattern::read(text.as_bytes()).unwrap_or_else(|report| panic!("{report:#?}"));
    let drawn = worn(&pattern.plan, 0, &pattern.shapes[0], &SchematicOptions::default()).expect("a hat");
    let all = paths(&drawn.items);
    let head = all.iter().rfind(|(filled, _)| *filled).expect("a head").1;
    let hat = all.iter().filter(|(filled, _)| !filled).max_by_key(|(_, path)| path.elements().len()).expect("a hat").1;
    let points: Vec<kurbo::Point> = hat
        .elements()
        .iter()
        .filter_map(|element| match element {
            PathEl::MoveTo(p) | PathEl::LineTo(p) => Some(*p),
            PathEl::QuadTo(..) | PathEl::CurveTo(..) | PathEl::ClosePath => None,
        })
        .collect();
    assert!(points.len() > 8 * 2 * 10, "{}", points.len());
    for p in &points {
        // Two hundredths of a millimetre further out it is outside.
        let out = kurbo::Point::new(p.x + 0.02 * p.x.signum(), p.y - 0.02);
        assert!(!head.contains(out), "{p} runs through the head");
    }
    // The steps beside the top are all but level, as in a circle.
    let top = points.iter().copied().fold(points[0], |top, p| if p.y < top.y { p } else { top });
    let near = points.iter().filter(|p| (p.x - top.x).abs() < 1.0 && p.y < top.y + 5.0);
    for p in near {
        assert!(p.y - top.y < 0.1, "{p} beside {top}");
    }
}
