//! The round chart, on plans of our own invention.

mod scenes;

use roundelay::drawing::{ChartOptions, ChartView, chart};
use roundelay::file::svg;
use roundelay::stitch::Stitch;

#[test]
fn a_chart_names_every_round_for_readers_who_can_not_see_it() {
    let plan = scenes::hat();
    let drawing = chart(&plan, 0, &ChartOptions::default());
    let text = svg::write(&drawing);
    assert_eq!(text.matches("role=\"graphics-object group\"").count(), plan.sizes[0].rounds.len());
    assert!(text.contains("<title>Round 12</title>\n<desc>72 stitches: "));
    assert!(drawing.description.contains("anticlockwise"), "{}", drawing.description);
}

#[test]
fn two_thousand_four_hundred_stitches_take_less_than_200_kb() {
    let plan = scenes::disc(Stitch::SC, 28, 6);
    assert!(plan.sizes[0].stitches() >= 2400);
    let text = svg::write(&chart(&plan, 0, &ChartOptions::default()));
    assert!(text.len() < 200_000, "{} bytes", text.len());
}

#[test]
fn alike_rounds_make_one_band() {
    let bands = chart(&scenes::hat(), 0, &ChartOptions { view: ChartView::Bands, ..ChartOptions::default() });
    let text = svg::write(&bands);
    assert!(text.contains("<title>Rounds 14 to 22</title>"), "{}", &text[..2000]);
}

#[test]
fn a_size_that_is_not_there_gives_an_empty_drawing() {
    assert!(chart(&scenes::hat(), 7, &ChartOptions::default()).items.is_empty());
}
