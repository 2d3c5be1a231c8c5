//! The round chart, on plans of our own invention.

use roundelay::craft::{Begin, Close, Spot, Stitch};
use roundelay::design::Hand;
use roundelay::drawing::{
    ChartOptions, ChartView, Demerit, DemeritKind, Drawing, Item, LEAST_CELL, Origin, Sign, chart, choose_view,
    demerits, least_cell,
};
use roundelay::file::{pdf, png, svg};
use roundelay::geometry::rings::{Row, layout};
use roundelay::pattern::Pattern;
use roundelay::plan::Plan;
use roundelay::report::Report;
use roundelay::units::{Angle, Mm};

use crate::scenes;

#[test]
fn a_chart_names_every_round_for_readers_who_can_not_see_it() {
    let plan = scenes::hat();
    let drawing = chart(&plan, 0, &ChartOptions::default());
    let text = svg::write(&drawing);
    assert_eq!(text.matches("role=\"graphics-object group\"").count(), plan.sizes[0].rounds.len());
    // What is worked in the round is said, and how many stitches it then has.
    let told = text.split("<title>Round 12</title>\n<desc>").nth(1).and_then(|rest| rest.split("</desc>").next());
    let told = told.expect("a description");
    assert!(
        told.contains("two single crochets in the next stitch") && told.contains("You have 72 stitches."),
        "{told}"
    );
    assert!(drawing.description.contains("anticlockwise"), "{}", drawing.description);
}

#[test]
fn two_thousand_four_hundred_stitches_take_less_than_200_kb_as_svg_and_80_kb_as_pdf() {
    let plan = scenes::disc(Stitch::SC, 28, 6);
    assert!(plan.sizes[0].stitches() >= 2400);
    let drawing = chart(&plan, 0, &ChartOptions::default());
    let text = svg::write(&drawing);
    assert!(text.len() < 200_000, "{} bytes", text.len());
    let pages = pdf::write_drawing(&drawing).unwrap();
    assert!(pages.len() < 80_000, "{} bytes", pages.len());
}

#[test]
fn a_drawing_of_nothing_can_be_written() {
    let drawing = Drawing { items: Vec::new(), ..chart(&scenes::hat(), 0, &ChartOptions::default()) };
    assert!(pdf::write_drawing(&drawing).is_ok());
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

/// The charts of all plans in this file, each with its name.
fn charts() -> Vec<(&'static str, Plan, Drawing)> {
    let plans = [
        ("hat", scenes::hat()),
        ("mat", scenes::disc(Stitch::SC, 20, 6)),
        ("plate", scenes::disc(Stitch::DC, 9, 12)),
        ("cap", scenes::cap()),
        ("mandala", scenes::mandala()),
    ];
    plans.map(|(name, plan)| (name, plan.clone(), chart(&plan, 0, &ChartOptions::default()))).into()
}

#[test]
fn no_two_symbols_overlap_and_no_label_lies_on_ink() {
    for (name, _, drawing) in charts() {
        let bad = demerits(&drawing);
        let bad: Vec<_> = bad.iter().filter(|d| !matches!(d.kind, DemeritKind::Lean)).collect();
        assert!(bad.is_empty(), "{name}: {bad:?}");
    }
}

/// Rounds so far from any fabric that stitches lie down are left out.
#[test]
fn no_two_symbols_of_mixed_rounds_overlap() {
    let mut seen = 0;
    for seed in 1..=300_u64 {
        let mut plan = scenes::motifs::by_chance(seed);
        plan.design.hand = if seed % 2 == 0 { Hand::Right } else { Hand::Left };
        let found = demerits(&chart(&plan, 0, &ChartOptions::default()));
        if found.iter().any(|d| d.kind == DemeritKind::Lean && d.amount > 65.0) {
            continue;
        }
        let bad: Vec<_> = found.iter().filter(|d| d.kind == DemeritKind::Overlap).collect();
        assert!(bad.is_empty(), "seed {seed}: {bad:?}");
        seen += 1;
    }
    assert!(seen > 200, "{seen}");
}

const SHAPES: [&str; 5] = [
    "kind: ball\nsizes: {s: {across: 6}, l: {across: 11}}\nparts:\n  - ball: {start: ring, shape: sphere}\n",
    "kind: hat\nsizes: {s: {head: 46}, l: {head: 58}}\nshaping: 8 corners\nparts:\n  - crown: {shape: dome, rise: 8}
  - side: {depth: 8, loop: front}\n  - brim: {width: 6, flare: 40°, settle: 1}\n",
    "kind: hat\nsizes: {s: {head: 40}, l: {head: 60}}\nprefer: easy\nparts:\n  - crown: {shape: flat}\n  - side: {depth: 9}\n",
    "kind: basket\nsizes: {s: {across: 9}, l: {across: 18}}\nprefer: close\nparts:\n  - base: {shape: flat}
  - wall: {depth: 7, loop: back}\n",
    "kind: mat\nsizes: {s: {across: 12}, l: {across: 27}}\nparts:\n  - mat: {start: chain ring of 6, shape: flat}\n",
];

/// Solved plans of every stitch, way of working and shape, closing balls among them.
#[test]
fn no_two_symbols_of_a_solved_plan_overlap() {
    let mut seen = 0;
    for (stitch, rounds) in [("sc", 20), ("hdc", 14), ("dc", 10), ("tr", 7)] {
        for work in ["spiral", "joined", "\"joined, chain counts\""] {
            for (index, shape) in SHAPES.iter().enumerate() {
                let hand = if (seen + index) % 2 == 0 { "right" } else { "left" };
                let swatch = format!("{{stitch: {stitch}, stitches: 18, rounds: {rounds}, width: 10, height: 10}}");
                let text = format!("title: By the dozen\nhand: {hand}\nwork: {work}\nswatch: {swatch}\n{shape}");
                let Ok(Pattern { plan, .. }) = Pattern::read(text.as_bytes()) else { continue };
                for size in 0..plan.sizes.len() {
                    let options = ChartOptions::default();
                    let (view, _) = choose_view(&plan, size, options.width, options.height);
                    let found = demerits(&chart(&plan, size, &ChartOptions { view, ..options }));
                    let ill = |d: &&Demerit| matches!(d.kind, DemeritKind::Overlap | DemeritKind::LabelOnInk);
                    let bad: Vec<_> = found.iter().filter(ill).collect();
                    assert!(bad.is_empty(), "size {size} of {text}: {bad:?}");
                    seen += 1;
                }
            }
        }
    }
    assert!(seen > 80, "{seen}");
}

/// A decrease stands over the stitches it joins, however few a ball closes with.
#[test]
fn a_ball_closes_in_stitches_that_draw_together() {
    let text = "title: Sea ball\nwork: spiral\nswatch: {stitch: sc, stitches: 20, rounds: 22, width: 10, height: 10}\n";
    let plan = Pattern::read(format!("{text}{}", SHAPES[0]).as_bytes()).unwrap().plan;
    for size in &plan.sizes {
        let rows = Row::each(0..size.rounds.len());
        let rings = layout(size, &rows, &vec![3.0; rows.len()]);
        for (index, ring) in rings.rings.iter().enumerate() {
            let parents = rings.parents(index);
            let joins = ring.seats.iter().filter(|seat| size.rounds[index].ops[seat.op].into == Spot::Together);
            for seat in joins {
                let used = &parents[seat.parent..seat.parent + size.rounds[index].ops[seat.op].consumed as usize];
                let spread = (used[used.len() - 1] - used[0]) * ring.foot_at(seat.at);
                let aside = (seat.at - used.iter().sum::<f64>() / used.len() as f64) * ring.head_at(seat.at);
                // Six stitches round ring 34 have 36 stitch units each.
                assert!(
                    spread < 3.4 && aside.abs() < 1.3,
                    "round {}: {spread:.2}, {aside:.2}",
                    size.rounds[index].number
                );
            }
        }
    }
}

/// Pieces whose rounds begin further on, after slip stitches into a space.
fn shifted() -> [Plan; 2] {
    let square = "Foundation: ch 4, join with sl st to form a ring
        Rnd 1: ch 3 (counts as dc), 2 dc in ring, ch 2, [3 dc in ring, ch 2] 3 times, join (20)
        Rnd 2: sl st in next 2 dc and in next ch-2 sp, ch 3, (2 dc, ch 2, 3 dc) in same sp, \
*ch 1, (3 dc, ch 2, 3 dc) in next ch-2 sp; rep from * 2 more times, ch 1, join (36)
        Rnd 3: sl st in next 2 dc and in next ch-2 sp, ch 3, (2 dc, ch 2, 3 dc) in same sp, \
*ch 1, 3 dc in next ch-1 sp, ch 1, (3 dc, ch 2, 3 dc) in next ch-2 sp; rep from * 2 more times, \
ch 1, 3 dc in next ch-1 sp, ch 1, join (52)";
    let doily = "Rnd 1: make a ring, ch 3 (counts as dc), 15 dc in ring, join (16)
        Rnd 2: ch 3 (counts as dc), ch 1, *dc in next dc, ch 1; rep from * around, join (32)
        Rnd 3: sl st in next ch-1 sp, ch 1, 2 sc in each ch-1 sp around, join (32)
        Rnd 4: ch 1, *sc in next st, ch 3, sk next st; rep from * around, join (64)
        Rnd 5: sl st in next ch-3 sp, ch 1, *sc in next ch-3 sp, ch 4; rep from * around, join (80)
        Rnd 6: ch 1, *sc in next sc, (2 hdc, dc, ch-3 picot, dc, 2 hdc) in next ch-4 sp; rep from * around, join (112)";
    [square, doily].map(scenes::written)
}

#[test]
fn rounds_begun_further_on_overlap_nothing_and_stand_on_what_they_are_worked_into() {
    for mut plan in shifted() {
        let size = &plan.sizes[0];
        let rows = Row::each(0..size.rounds.len());
        let rings = layout(size, &rows, &vec![1.6; rows.len()]);
        for (index, (ring, round)) in
            rings.rings.iter().zip(&size.rounds).enumerate().filter(|(_, (_, r))| r.slipped > 0)
        {
            let parents = rings.parents(index);
            let worked = ring.seats.iter().filter(|seat| round.ops[seat.op].consumed > 0);
            let asides = worked.map(|seat| {
                let own = &parents[seat.parent..seat.parent + round.ops[seat.op].consumed as usize];
                let under = own.iter().sum::<f64>() / own.len() as f64;
                (seat.at - under).abs() * ring.middle()
            });
            let asides: Vec<f64> = asides.collect();
            assert!(asides.iter().sum::<f64>() / (asides.len() as f64) < 0.8, "round {}: {asides:?}", round.number);
            assert!(ring.lane > rings.rings[index - 1].lane, "round {}", round.number);
        }
        let views = [ChartView::Whole].into_iter().chain((2..=size.rounds.len() as u32).map(ChartView::UpTo));
        for (view, hand) in views.flat_map(|view| [(view, Hand::Right), (view, Hand::Left)]) {
            plan.design.hand = hand;
            let found = demerits(&chart(&plan, 0, &ChartOptions { view, ..ChartOptions::default() }));
            let bad: Vec<_> = found.iter().filter(|d| !matches!(d.kind, DemeritKind::Lean)).collect();
            assert!(bad.is_empty(), "{view:?}, {hand:?}: {bad:?}");
        }
    }
}

#[test]
fn demerits_are_found_where_there_are_some() {
    let mut drawing = chart(&scenes::disc(Stitch::SC, 4, 6), 0, &ChartOptions::default());
    assert!(demerits(&drawing).is_empty());
    // Twice as heavy a drawing on the same places.
    for symbol in drawing.symbols.values_mut() {
        *symbol = symbol.clone().scaled(2.2);
    }
    assert!(demerits(&drawing).iter().any(|d| d.kind == DemeritKind::Overlap));
    let small = ChartOptions { width: Mm::new(30.0), ..ChartOptions::default() };
    let cramped = demerits(&chart(&scenes::disc(Stitch::SC, 10, 6), 0, &small));
    assert!(cramped.iter().any(|d| d.kind == DemeritKind::Crowding));
}

#[test]
fn every_stitch_made_is_drawn_once() {
    // Increases and decreases are one symbol; turning chains stand for the stitches they count as.
    for (name, plan, drawing) in charts() {
        for round in &plan.sizes[0].rounds {
            let wanted: usize = round
                .ops
                .iter()
                .map(|op| match Sign::shared(op) {
                    Some(_) => 1,
                    None => op.made.runs().map(|(_, count)| count as usize).sum(),
                })
                .sum();
            // A starting chain parts an increase into the chain and the stitch beside it.
            let starting = matches!(round.begin, Begin::Chain { counts: true, .. });
            let parted = starting.then(|| round.ops.first().filter(|op| Sign::shared(op).is_some()));
            let parted = parted.flatten().map_or(0, |op| op.count() as usize - 1);
            let extra = usize::from(matches!(round.begin, Begin::Chain { counts: false, .. }))
                + usize::from(round.close == Close::Join);
            let drawn = symbols_of(&drawing.items, round.number);
            assert_eq!(drawn, wanted + parted + extra, "{name}, round {}", round.number);
        }
    }
}

fn symbols_of(items: &[Item], round: u32) -> usize {
    let of = |item: &Item| match item {
        Item::Group(group) if group.origin == Origin::Round(round) => {
            group.items.iter().filter(|item| matches!(item, Item::Symbol(_))).count()
        }
        Item::Group(_) | Item::Symbol(_) | Item::Path(_) | Item::Text(_) | Item::Photo(_) => 0,
    };
    items.iter().map(of).sum()
}

#[test]
fn everything_lies_inside_the_bounds() {
    for (name, _, mut drawing) in charts() {
        // Drawn with a margin of 20 mm, which has to stay white.
        let side = drawing.bounds.width();
        drawing.bounds = drawing.bounds.inflate(20.0, 20.0);
        let options = png::PngOptions { dpi: 50.8, grey: true };
        let bytes = png::render(&svg::write(&drawing), &options, &mut Report::new()).unwrap();
        let pixmap = resvg::tiny_skia::Pixmap::decode_png(&bytes).unwrap();
        let inside = 39..(40 + (2.0 * side).ceil() as usize + 1);
        for (at, pixel) in pixmap.pixels().iter().enumerate() {
            let (x, y) = (at % pixmap.width() as usize, at / pixmap.width() as usize);
            let white = pixel.red() > 250;
            assert!(white || (inside.contains(&x) && inside.contains(&y)), "{name}: ink at {x}, {y}");
        }
    }
}

#[test]
fn the_left_hand_gets_the_mirror_image() {
    let right = scenes::disc(Stitch::SC, 5, 6);
    let mut left = right.clone();
    left.design.hand = Hand::Left;
    let options = ChartOptions::default();
    let (right, left) = (chart(&right, 0, &options), chart(&left, 0, &options));
    assert!(left.description.contains(" clockwise"), "{}", left.description);
    let feet = |drawing: &Drawing| {
        let mut feet = Vec::new();
        drawing.items.iter().for_each(|item| places(item, &mut feet));
        feet
    };
    for (one, other) in feet(&right).iter().zip(feet(&left)) {
        assert!((one.0 + other.0).abs() < 1e-6 && (one.1 - other.1).abs() < 1e-6, "{one:?} {other:?}");
    }
}

fn places(item: &Item, feet: &mut Vec<(f64, f64)>) {
    match item {
        Item::Symbol(symbol) => {
            let at = symbol.place.translation();
            feet.push((at.x, at.y));
        }
        Item::Group(group) => group.items.iter().for_each(|item| places(item, feet)),
        Item::Path(_) | Item::Text(_) | Item::Photo(_) => {}
    }
}

#[test]
fn rounds_start_at_any_hour_and_repeats_are_parted() {
    for plan in [scenes::cap(), scenes::mandala()] {
        for hour in 1..=12 {
            let start = Angle::from_degrees(30.0 * f64::from(hour));
            let drawing = chart(&plan, 0, &ChartOptions { start, repeats: true, ..ChartOptions::default() });
            assert!(drawing.description.contains(&format!("start at {hour} o'clock")), "{}", drawing.description);
            let ill = |d: &&Demerit| matches!(d.kind, DemeritKind::Overlap | DemeritKind::LabelOnInk);
            let bad: Vec<_> = demerits(&drawing).into_iter().filter(|d| ill(&d)).collect();
            assert!(bad.is_empty(), "hour {hour}: {bad:?}");
        }
    }
    let parted = |repeats| chart(&scenes::mandala(), 0, &ChartOptions { repeats, ..ChartOptions::default() });
    assert!(svg::write(&parted(true)).contains("Dotted lines: 12 repeats"));
    assert!(!svg::write(&parted(false)).contains("Dotted lines"));
}

#[test]
fn the_view_is_chosen_so_that_no_cell_is_under_two_millimetres() {
    let room = Mm::new(190.0);
    let small = scenes::disc(Stitch::SC, 20, 6);
    assert_eq!(choose_view(&small, 0, room, room).0, ChartView::Whole);
    let (view, reason) = choose_view(&scenes::disc(Stitch::SC, 60, 6), 0, room, room);
    assert_eq!(view, ChartView::Sector);
    assert!(reason.contains("One repeat"), "{reason}");
    let (_, reason) = choose_view(&scenes::disc(Stitch::SC, 180, 6), 0, room, room);
    assert!(reason.contains("A1") || reason.contains("A0"), "{reason}");
    let options = ChartOptions { view, ..ChartOptions::default() };
    assert!(least_cell(&scenes::disc(Stitch::SC, 60, 6), 0, &options) >= LEAST_CELL);
}

#[test]
fn the_chart_of_a_small_mat_is_as_in_the_snapshot() {
    let plan = scenes::disc(Stitch::SC, 3, 6);
    insta::assert_snapshot!(svg::write(&chart(&plan, 0, &ChartOptions::default())));
}

#[test]
fn stitches_stand_on_their_parents() {
    for plan in [scenes::hat(), scenes::cap(), scenes::mandala()] {
        let size = &plan.sizes[0];
        let rows = Row::each(0..size.rounds.len());
        let rings = layout(size, &rows, &vec![2.0; rows.len()]);
        for (index, ring) in rings.rings.iter().enumerate() {
            let round = &size.rounds[index];
            assert_eq!(ring.heads.len(), round.after as usize, "round {}", round.number);
            assert!(ring.heads.windows(2).all(|pair| pair[0] < pair[1]), "round {} in order", round.number);
            let parents = rings.parents(index);
            for seat in &ring.seats {
                let used = &parents[seat.parent..seat.parent + round.ops[seat.op].consumed as usize];
                for parent in used {
                    let cells = (seat.at - parent).abs() / ring.unit;
                    assert!(cells < 3.5, "round {}: op {} is {cells:.1} cells off", round.number, seat.op);
                }
            }
        }
    }
}
