//! The plan, the ring layout, the predicted shape and the opening rounds as SVG of every example, in snapshots.
//!
//! Meaning comes first: read a difference in the plan before one in the layout, and that before the picture.

use std::fmt::Write as _;

use roundelay::design::Hand;
use roundelay::drawing::{ChartOptions, ChartView, Demerit, DemeritKind, chart, demerits};
use roundelay::file::svg;
use roundelay::geometry::{predict, rings};
use roundelay::pattern::Pattern;
use roundelay::plan::Plan;
use roundelay::story::listing;
use roundelay::units::tidy;

/// Rounds that the snapshot of a picture shows.
const OPENING: u32 = 5;

const EXAMPLES: [&str; 10] = [
    "slipway-sun-hat",
    "ember-beanie",
    "millrace-basket",
    "duckling-cap",
    "harvest-table-mat",
    "lanternlight-mandala",
    "northlight-beanie",
    "orchard-ladder-basket",
    "gloaming-shade",
    "towpath-visor",
];

fn plan_of(name: &str) -> Plan {
    let path = format!("{}/examples/{name}.yaml", env!("CARGO_MANIFEST_DIR"));
    let bytes = std::fs::read(path).expect("the example is there");
    Pattern::read(&bytes).unwrap_or_else(|report| panic!("{name}: {report:#?}")).plan
}

/// Round by round of the first size: where its ring lies in the chart and where the fabric comes to lie.
fn layout_of(plan: &Plan) -> String {
    let size = &plan.sizes[0];
    let rows = rings::Row::each(0..size.rounds.len());
    let (laid, shape) = (rings::layout(size, &rows, &vec![1.0; rows.len()]), predict(plan, size));
    let mut text = String::new();
    for ((round, ring), lies) in size.rounds.iter().zip(&laid.rings).zip(&shape.rounds) {
        let heads = ring.heads.iter().take(3).map(|head| tidy(*head, 2).to_string()).collect::<Vec<_>>().join(" ");
        let (foot, head) = (tidy(ring.foot.0, 2), tidy(ring.head.0, 2));
        let (radius, height) = (tidy(lies.radius.mm(), 1), tidy(lies.height.mm(), 1));
        let _ = writeln!(
            text,
            "round {}: ring {foot} to {head}, heads {heads} …; radius {radius} mm, height {height} mm, strain {}",
            round.number,
            tidy(lies.hoop_strain, 3)
        );
    }
    text
}

fn hold(name: &str) {
    let plan = plan_of(name);
    insta::assert_snapshot!(format!("{name}-plan"), listing::pattern(&plan, None));
    insta::assert_snapshot!(format!("{name}-layout"), layout_of(&plan));
    let opening = ChartOptions { view: ChartView::UpTo(OPENING), ..ChartOptions::default() };
    insta::assert_snapshot!(format!("{name}-opening"), svg::write(&chart(&plan, 0, &opening)).replace("><", ">\n<"));
}

#[test]
fn northlight_beanie_is_as_in_the_snapshots() {
    hold("northlight-beanie");
}

#[test]
fn orchard_ladder_basket_is_as_in_the_snapshots() {
    hold("orchard-ladder-basket");
}

#[test]
fn gloaming_shade_is_as_in_the_snapshots() {
    hold("gloaming-shade");
}

#[test]
fn towpath_visor_is_as_in_the_snapshots() {
    hold("towpath-visor");
}

#[test]
fn slipway_sun_hat_is_as_in_the_snapshots() {
    hold("slipway-sun-hat");
}

#[test]
fn ember_beanie_is_as_in_the_snapshots() {
    hold("ember-beanie");
}

#[test]
fn millrace_basket_is_as_in_the_snapshots() {
    hold("millrace-basket");
}

#[test]
fn duckling_cap_is_as_in_the_snapshots() {
    hold("duckling-cap");
}

#[test]
fn harvest_table_mat_is_as_in_the_snapshots() {
    hold("harvest-table-mat");
}

#[test]
fn lanternlight_mandala_is_as_in_the_snapshots() {
    hold("lanternlight-mandala");
}

/// Every view of every size, for either hand.
#[test]
fn no_two_symbols_of_an_example_overlap() {
    for name in EXAMPLES {
        let mut plan = plan_of(name);
        for hand in [Hand::Right, Hand::Left] {
            plan.design.hand = hand;
            for (index, size) in plan.sizes.iter().enumerate() {
                let mut views = vec![ChartView::Whole, ChartView::Bands, ChartView::Sector];
                views.extend((0..size.parts.len()).map(ChartView::Part));
                views.extend(
                    (1..size.rounds.len() as u32).filter(|last| *last < 10 || last % 8 == 0).map(ChartView::UpTo),
                );
                for view in views {
                    let found = demerits(&chart(&plan, index, &ChartOptions { view, ..ChartOptions::default() }));
                    let ill = |kind| matches!(kind, DemeritKind::Overlap | DemeritKind::LabelOnInk);
                    let bad: Vec<&Demerit> = found.iter().filter(|demerit| ill(demerit.kind)).collect();
                    assert!(bad.is_empty(), "{name}, {hand:?}, {}, {view:?}: {bad:?}", size.name);
                }
            }
        }
    }
}
