//! The finished piece as it is drawn: every stitch once, nothing hidden, true widths, both hands.

use roundelay::design::Hand;
use roundelay::drawing::{Item, PieceOptions, piece as drawn};
use roundelay::file::png::{self, PngOptions};
use roundelay::file::svg;
use roundelay::geometry::mesh::{Fabric, Vec3, mesh};
use roundelay::geometry::piece::{Eye, Patch, Piece, View, piece, seen};
use roundelay::geometry::predict;
use roundelay::plan::Plan;
use roundelay::report::Report;
use roundelay::units::Angle;

use crate::common::{ball, dc_beanie, hdc_basket, solved, sun_hat};

/// Millimetres on the page of one millimetre.
const SCALE: f64 = 0.5;

fn plans() -> [Plan; 4] {
    [sun_hat(), dc_beanie(), hdc_basket(), ball()].map(|design| solved(&design))
}

fn space(plan: &Plan) -> Piece {
    let size = &plan.sizes[0];
    piece(plan, size, &mesh(plan, size, &predict(plan, size), &Fabric::default()))
}

fn front() -> Eye {
    Eye { from: Angle::ZERO, turn: Angle::ZERO, distance: None }
}

#[test]
fn every_stitch_is_a_patch_once() {
    for plan in plans() {
        let (size, space) = (&plan.sizes[0], space(&plan));
        assert_eq!(space.patches.len() as u64, size.stitches() + size.step_down.len() as u64);
        let mut heads: Vec<usize> = space.patches.iter().map(|patch| patch.head).collect();
        heads.dedup();
        assert_eq!(heads.len(), space.patches.len());
    }
}

/// How near to the eye a ray through `p` meets a patch, where it does: by the areas of the triangles about the point.
fn meets(patch: &Patch, view: &View, p: &Vec3) -> Option<f64> {
    let at = view.project(p).0;
    let corners = patch.corners.map(|corner| view.project(&corner));
    [[0, 1, 2], [0, 2, 3]].into_iter().find_map(|triangle| {
        let [a, b, c] = triangle.map(|i| corners[i]);
        let area = |p: kurbo::Point, q: kurbo::Point, r: kurbo::Point| (q - p).cross(r - p);
        let whole = area(a.0, b.0, c.0);
        let shares = [area(at, b.0, c.0), area(a.0, at, c.0), area(a.0, b.0, at)].map(|part| part / whole);
        let within = whole.abs() > 1e-9 && shares.iter().all(|share| *share >= 0.0);
        within.then(|| shares[0] * a.1 + shares[1] * b.1 + shares[2] * c.1)
    })
}

#[test]
fn what_is_drawn_is_what_rays_find() {
    for plan in plans().iter().skip(1) {
        let space = space(plan);
        let view = View::new(&Eye { from: Angle::from_degrees(24.0), ..front() }, space.reach);
        let shares = seen(&space, &view).shares;
        let clear = |patch: &Patch| {
            let middle = patch.at(0.0, 0.5, 0.0);
            let near = view.project(&middle).1 + 0.3 * space.stitch;
            !space.patches.iter().any(|other| meets(other, &view, &middle).is_some_and(|other| other > near))
        };
        let rays = space.patches.iter().filter(|patch| clear(patch)).count() as f64;
        let drawn = shares.iter().filter(|share| **share > 0.5).count() as f64;
        assert!((drawn / rays - 1.0).abs() < 0.02, "{}: {drawn} drawn, {rays} by rays", plan.design.title.value);
        assert!(drawn < 0.75 * space.patches.len() as f64, "the back is hidden");
    }
}

#[test]
fn the_left_hand_makes_the_mirror_image() {
    let right = dc_beanie();
    let left = roundelay::design::Design { hand: Hand::Left, ..right.clone() };
    let (right, left) = (space(&solved(&right)), space(&solved(&left)));
    assert_eq!(right.patches.len(), left.patches.len());
    for (right, left) in right.patches.iter().zip(&left.patches) {
        for (r, l) in right.corners.iter().zip(&left.corners) {
            assert!((r.x + l.x).abs() < 1e-9 && (r.y - l.y).abs() < 1e-9 && (r.z - l.z).abs() < 1e-9);
        }
    }
}

/// Columns of a picture that have ink.
fn inked(svg: &str) -> f64 {
    let bytes = png::render(svg, &PngOptions { dpi: 300.0, grey: true }, &mut Report::new()).expect("a picture");
    let mut reader = ::png::Decoder::new(std::io::Cursor::new(bytes)).read_info().expect("a PNG");
    let mut dots = vec![0; reader.output_buffer_size().expect("a size")];
    let info = reader.next_frame(&mut dots).expect("dots");
    let (wide, high) = (info.width as usize, info.height as usize);
    let dark = |x: usize, y: usize| dots[y * wide + x] < 235;
    (0..wide).filter(|x| (0..high).any(|y| dark(*x, y))).count() as f64
}

#[test]
fn a_basket_is_as_wide_as_its_mesh() {
    let plan = solved(&hdc_basket());
    let body = predict(&plan, &plan.sizes[0]);
    let options = PieceOptions { eye: Some(front()), scale: Some(SCALE), ..PieceOptions::default() };
    let got = inked(&svg::write(&drawn(&plan, &plan.sizes[0], &body, &options))) * 25.4 / 300.0;
    let (space, view) = (space(&plan), View::new(&front(), 1.0));
    let across = space.points.iter().map(|point| view.project(point).0.x);
    let (least, most) = across.fold((0.0_f64, 0.0_f64), |(least, most), x| (least.min(x), most.max(x)));
    let wanted = SCALE * (most - least);
    assert!((got / wanted - 1.0).abs() < 0.005, "{got:.2} mm against {wanted:.2} mm");
}

#[test]
fn a_sun_hat_is_a_small_file_and_the_same_one_twice() {
    let plan = solved(&sun_hat());
    let body = predict(&plan, &plan.sizes[0]);
    let one = || svg::write(&drawn(&plan, &plan.sizes[0], &body, &PieceOptions::default()));
    let picture = one();
    assert!(plan.sizes[0].stitches() > 2000);
    assert!(picture.len() < 250_000, "{} bytes", picture.len());
    assert_eq!(picture, one());
}

/// A maker stops soon after the start, where a part ends, before another colour and at the end.
#[test]
fn the_steps_stop_where_a_maker_looks_and_say_what_the_rounds_give() {
    let text = std::fs::read(concat!(env!("CARGO_MANIFEST_DIR"), "/examples/slipway-sun-hat.yaml")).unwrap();
    let pattern = roundelay::pattern::Pattern::read(&text).unwrap();
    let (plan, size) = (&pattern.plan, &pattern.plan.sizes[1]);
    let stops = roundelay::drawing::stops(size);
    assert!(size.parts.iter().all(|part| stops.contains(&part.last)), "{stops:?}");
    let changes = size.rounds.windows(2).filter(|pair| pair[0].colour != pair[1].colour).map(|pair| pair[0].number);
    assert!(changes.clone().count() == 2 && changes.clone().all(|at| stops.contains(&at)), "{stops:?}");
    assert!(stops.is_sorted() && stops.last() == Some(&(size.rounds.len() as u32)));
    let shape = &pattern.shapes[1];
    let finished = roundelay::drawing::relaxed(plan, size, shape);
    let options = roundelay::drawing::StepsOptions::default();
    let drawn = roundelay::drawing::steps(plan, size, (shape, &finished), &options);
    let groups = drawn.items.iter().filter(|item| matches!(item, roundelay::drawing::Item::Group(_))).count();
    assert_eq!(groups, stops.len());
    for stop in &stops {
        let round = &size.rounds[*stop as usize - 1];
        assert!(drawn.description.contains(&format!("After round {stop}, {} stitches, ", round.stitches())));
    }
    // What is worn is told as deep as its rounds are high, as long as there is no brim.
    let brim = size.parts.last().unwrap().first;
    assert_eq!(
        drawn.description.matches(" deep").count(),
        stops.iter().filter(|stop| (17..brim).contains(stop)).count()
    );
}

/// After some rounds a piece is the first part of itself, its edge open, as wide as its stitches say.
#[test]
fn a_piece_on_its_way_is_part_of_the_finished_one_and_as_wide_as_is_told() {
    for plan in [sun_hat(), dc_beanie(), hdc_basket()].map(|design| solved(&design)) {
        let (size, whole) = (&plan.sizes[0], space(&plan));
        let body = predict(&plan, size);
        for stop in roundelay::drawing::stops(size) {
            let part = whole.after(stop as usize);
            let rounds = &size.rounds[..stop as usize];
            let step = if stop as usize == size.rounds.len() { size.step_down.len() } else { 0 };
            let wanted: u32 = rounds.iter().map(roundelay::craft::Round::stitches).sum();
            assert_eq!(part.patches.len(), wanted as usize + step);
            let own: Vec<&Patch> = part.patches.iter().filter(|patch| patch.round + 1 == stop as usize).collect();
            assert!(own.iter().all(|patch| patch.edge) || step > 0);
            assert!(part.patches.iter().zip(&whole.patches).all(|(one, same)| one.corners == same.corners));
            let last = rounds.last().unwrap();
            let (count, told) = (own.len() as f64, plan.gauge(last.stitch).circumference(last.after).mm());
            let predicted = body.rounds[stop as usize - 1].radius.mm() * std::f64::consts::TAU;
            // The few stitches in the middle of a disc give way, and a turned edge springs a little.
            if count < 30.0 {
                continue;
            }
            let middle = own.iter().map(|patch| whole.points[patch.head]).sum::<Vec3>() / count;
            let out = |patch: &&Patch| (whole.points[patch.head] - middle).xy().norm();
            let round = own.iter().map(out).sum::<f64>() / count * std::f64::consts::TAU;
            // As wide as the body is predicted; a brim holds the end of its side out by 3 % of what the counts give.
            let title = &plan.design.title.value;
            assert!((round / predicted - 1.0).abs() < 0.02, "{title}: after {stop} {round:.1} for {predicted:.1}");
            assert!((round / told - 1.0).abs() < 0.035, "{title}: after {stop} {round:.1} for {told:.1}");
        }
    }
}

/// What a brim draws out, and a side turns down, lies by then as it was worked: by itself.
#[test]
fn a_step_before_its_edge_changes_lies_by_itself() {
    let text = std::fs::read(concat!(env!("CARGO_MANIFEST_DIR"), "/examples/slipway-sun-hat.yaml")).unwrap();
    let pattern = roundelay::pattern::Pattern::read(&text).unwrap();
    let (plan, size, shape) = (&pattern.plan, &pattern.plan.sizes[1], &pattern.shapes[1]);
    let finished = roundelay::drawing::relaxed(plan, size, shape);
    let brim = size.parts.last().unwrap().first;
    let on_its_way = |rounds| roundelay::drawing::on_its_way(plan, size, (shape, &finished), rounds);
    let reach = |piece: &Piece, round: u32| {
        let own: Vec<&Patch> = piece.patches.iter().filter(|patch| patch.round + 1 == round as usize).collect();
        let middle = own.iter().map(|patch| piece.points[patch.head]).sum::<Vec3>() / own.len() as f64;
        own.iter().map(|patch| (piece.points[patch.head] - middle).xy().norm()).sum::<f64>() / own.len() as f64
    };
    // The side ends as wide as it is half way down, which the brim widens by more than a quarter of a stitch.
    let side = on_its_way(brim - 1);
    let flare = |piece: &Piece| reach(piece, brim - 1) - reach(piece, brim - 5);
    assert!(flare(&side).abs() < 0.12 * side.stitch, "{:.2} mm of {:.2} mm", flare(&side), side.stitch);
    assert!(flare(&finished) > 0.25 * side.stitch, "{:.2} mm of {:.2} mm", flare(&finished), side.stitch);
    // The crown lies flatter until the side is worked on it.
    let crown = on_its_way(size.parts[0].last);
    let last = size.parts[0].last;
    let level = |piece: &Piece, round: u32| {
        let own = piece.patches.iter().filter(|patch| patch.round + 1 == round as usize);
        let (sum, count) = own.fold((0.0, 0.0), |(sum, count), patch| (sum + piece.points[patch.head].z, count + 1.0));
        sum / count
    };
    let fall = |piece: &Piece| level(piece, last / 2) - level(piece, last);
    let (flat, turned) = (fall(&crown), fall(&finished));
    assert!(turned > 1.5 * crown.stitch && flat < 0.6 * turned, "{flat:.2} and {turned:.2} mm");
    // What nothing changes is cut out of the finished piece.
    assert_eq!(on_its_way(brim - 9), finished.after(brim as usize - 9));
}

/// The rounds of a bowl that would lie flat do, on the table.
#[test]
fn a_bowl_stands_on_its_base() {
    let read = |name: &str| std::fs::read(format!("{}/examples/{name}", env!("CARGO_MANIFEST_DIR"))).unwrap();
    let swatch = read("swatches/cove-cotton.yaml");
    let beside = roundelay::pattern::Beside { name: "cove-cotton.yaml", bytes: &swatch };
    let pattern = roundelay::pattern::Pattern::read_rounds(&read("cove-bowl.txt"), Some(beside)).unwrap();
    let space = space(&pattern.plan);
    let base = pattern.plan.sizes[0].parts[0].last as usize;
    for round in 0..base - 1 {
        let own = space.patches.iter().filter(|patch| patch.round == round);
        let (sum, count) = own.fold((0.0, 0.0), |(sum, count), patch| (sum + space.points[patch.head].z, count + 1.0));
        let high = sum / count - space.ground;
        assert!(high < 0.3 * space.stitch, "round {}: {high:.2} mm above the table", round + 1);
    }
    assert!(space.tall > 7.0 * space.stitch);
}

/// A hat stands on its form as far down as the fit says, and nowhere within it.
#[test]
fn a_hat_on_a_head_lies_where_the_fit_puts_it() {
    for design in [sun_hat(), dc_beanie()] {
        let plan = solved(&design);
        let (size, body) = (&plan.sizes[0], predict(&plan, &plan.sizes[0]));
        let worn = body.worn.as_ref().expect("a hat");
        let space = roundelay::drawing::worn_piece(&plan, size, &body).expect("a hat");
        let form = space.form.expect("a form");
        assert!((form.around() - worn.head.around()).mm().abs() < 1e-9);
        for point in &space.points {
            let (own, far) = (form.radius_at(point.z), point.xy().norm());
            assert!(point.z > form.top || far > own - 1e-6, "{far:.2} mm out where the form is {own:.2} mm");
        }
        let edge = &worn.rounds[worn.edge];
        let own = space.patches.iter().filter(|patch| patch.round == worn.edge);
        let (sum, count) = own.fold((0.0, 0.0), |(sum, count), patch| (sum + space.points[patch.head].z, count + 1.0));
        assert!(
            (-sum / count - edge.height.mm()).abs() < 0.5 * space.stitch,
            "{} for {}",
            -sum / count,
            edge.height.mm()
        );
        // Every round is as wide as the fit says, though here all its stitches have found their places themselves.
        for (k, round) in worn.rounds.iter().enumerate().take(worn.edge + 1).skip(2) {
            let own = space.patches.iter().filter(|patch| patch.round == k);
            let (sum, count) =
                own.fold((0.0, 0.0), |(sum, count), patch| (sum + space.points[patch.head].xy().norm(), count + 1.0));
            let off = (sum / count - round.radius.mm()).abs();
            assert!(off < 0.4 * space.stitch, "round {}: {off:.2} mm off {:?}", k + 1, round.radius);
        }
        // All the way down to the ground, which the hat doesn't reach.
        assert!(space.ground < -worn.rounds.iter().map(|round| round.height.mm()).fold(0.0, f64::max));
        let view = View::new(&Eye::of(&space, &body), space.reach);
        let seen = seen(&space, &view);
        let below = seen.layers.iter().flatten().any(|layer| *layer > seen.form_layer);
        assert!(below && seen.form.iter().any(|seen| *seen), "the hat covers what is seen of the form");
    }
    let basket = solved(&hdc_basket());
    assert!(roundelay::drawing::worn_piece(&basket, &basket.sizes[0], &predict(&basket, &basket.sizes[0])).is_none());
}

/// A shade is drawn lit, an ornament by its loop and without a shadow, and the words of the picture say so.
#[test]
fn shades_glow_and_ornaments_hang() {
    let draw = |kind: &str| {
        let text = format!(
            "title: Thing\nkind: {kind}\nyarn: {{weight: 3, colours: {{berry: \"#8b1e3f\"}}}}\n\
             swatch: {{stitch: sc, stitches: 24, rounds: 26, width: 10, height: 10}}\n\
             sizes: {{one: {{around: 24}}}}\nwork: spiral\nparts:\n  - ball: {{start: ring of 6, shape: sphere}}\n"
        );
        let pattern = roundelay::pattern::Pattern::read(text.as_bytes()).unwrap_or_else(|report| panic!("{report:#?}"));
        let (plan, body) = (&pattern.plan, &pattern.shapes[0]);
        drawn(plan, &plan.sizes[0], body, &PieceOptions::default())
    };
    let fills = |drawing: &roundelay::drawing::Drawing| {
        let Item::Group(group) = &drawing.items[0] else { panic!("no group") };
        let path = |item: &Item| match item {
            Item::Path(path) => path.fill.map(|ink| ink.0),
            Item::Text(_) | Item::Symbol(_) | Item::Photo(_) | Item::Group(_) => None,
        };
        group.items.iter().filter_map(path).collect::<Vec<_>>()
    };
    let grey = |fills: &[[u8; 3]]| fills.iter().filter(|[r, g, b]| r == g && g == b).count();
    let (ball, shade, ornament) = (draw("ball"), draw("lampshade"), draw("ornament"));
    assert!(grey(&fills(&ball)) > 10, "a ball has a shadow");
    assert!(grey(&fills(&ornament)) == 0 && ornament.description.contains("hangs by a loop"));
    assert!(ornament.bounds.height() / ornament.bounds.width() > ball.bounds.height() / ball.bounds.width());
    assert!(shade.description.contains("lit from within") && !ball.description.contains("lit from within"));
    let warm = fills(&shade).iter().filter(|[r, _, b]| i32::from(*r) - i32::from(*b) > 60 && *r > 200).count();
    assert!(warm > 3, "{warm} warm surfaces");
}
