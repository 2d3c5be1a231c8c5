//! What is seen of a piece: counted in pixels of the picture and by rays, and measured in both.

use std::collections::BTreeMap;

use kurbo::Point;
use roundelay::design::{Design, Hand};
use roundelay::file::png::{self, PngOptions};
use roundelay::geometry::mesh::{Fabric, mesh};
use roundelay::geometry::piece::{Eye, Piece, View, piece, seen};
use roundelay::geometry::predict;
use roundelay::pattern::{Beside, Pattern};
use roundelay::plan::Plan;
use roundelay::report::Report;
use roundelay::units::Angle;

use crate::common::{ball, dc_beanie, hdc_basket, solved, sun_hat};

/// Pixels that a stitch is wide.
const PIXELS: f64 = 12.0;

/// Ten pieces: designs of the tests, and examples.
fn ten() -> Vec<(String, Plan)> {
    let left = Design { hand: Hand::Left, ..dc_beanie() };
    let designs = [sun_hat(), dc_beanie(), hdc_basket(), ball(), left];
    let mut plans: Vec<(String, Plan)> =
        designs.iter().map(|design| (format!("{} {:?}", design.title.value, design.hand), solved(design))).collect();
    let read =
        |name: &str| std::fs::read(format!("{}/examples/{name}", env!("CARGO_MANIFEST_DIR"))).expect("an example");
    for name in ["duckling-cap.yaml", "ember-beanie.yaml", "millrace-basket.yaml", "slipway-sun-hat.yaml"] {
        plans.push((name.to_owned(), Pattern::read(&read(name)).expect("an example").plan));
    }
    let swatch = read("swatches/cove-cotton.yaml");
    let beside = Beside { name: "cove-cotton.yaml", bytes: &swatch };
    plans.push((
        "cove bowl".to_owned(),
        Pattern::read_rounds(&read("cove-bowl.txt"), Some(beside)).expect("an example").plan,
    ));
    plans
}

fn space(plan: &Plan) -> Piece {
    let size = &plan.sizes[0];
    piece(plan, size, &mesh(plan, size, &predict(plan, size), &Fabric::default()))
}

fn from(degrees: f64) -> Eye {
    Eye { from: Angle::from_degrees(degrees), turn: Angle::ZERO, distance: None }
}

/// The dots of a picture, and how many there are in a row.
fn dots(svg: &str) -> (Vec<[u8; 3]>, usize) {
    let bytes = png::render(svg, &PngOptions { dpi: 25.4, grey: false }, &mut Report::new()).expect("a picture");
    let mut reader = ::png::Decoder::new(std::io::Cursor::new(bytes)).read_info().expect("a PNG");
    let mut dots = vec![0; reader.output_buffer_size().expect("a size")];
    let info = reader.next_frame(&mut dots).expect("dots");
    let per = info.color_type.samples();
    let one = |dot: &[u8]| if per < 3 { [dot[0]; 3] } else { [dot[0], dot[1], dot[2]] };
    (dots[..info.buffer_size()].chunks_exact(per).map(one).collect(), info.width as usize)
}

/// The corners of every patch as they are seen, so many dots a millimetre, with how near they are.
fn projected(space: &Piece, view: &View, scale: f64) -> Vec<[(Point, f64); 4]> {
    let seen = |corner| {
        let (at, near) = view.project(&corner);
        ((at.to_vec2() * scale).to_point(), near)
    };
    space.patches.iter().map(|patch| patch.corners.map(seen)).collect()
}

/// The patches in the order in which they are drawn, each flat in a colour that is its number.
fn flat(quads: &[[(Point, f64); 4]], layers: &[Option<usize>]) -> String {
    let points = || quads.iter().flatten().map(|(point, _)| *point);
    let least =
        points().fold(Point::new(f64::INFINITY, f64::INFINITY), |low, p| Point::new(low.x.min(p.x), low.y.min(p.y)));
    let most = points().fold(Point::new(0.0, 0.0), |high, p| Point::new(high.x.max(p.x), high.y.max(p.y)));
    let (wide, high) = (most.x - least.x + 4.0, most.y - least.y + 4.0);
    let mut order: Vec<(usize, usize)> =
        layers.iter().enumerate().filter_map(|(i, layer)| Some(((*layer)?, i))).collect();
    order.sort_unstable();
    let shape = |(_, i): (usize, usize)| {
        let at = quads[i].map(|(point, _)| point - least.to_vec2());
        let path: Vec<String> = at.iter().map(|p| format!("{:.3},{:.3}", p.x + 2.0, p.y + 2.0)).collect();
        format!("<polygon points=\"{}\" fill=\"#{:06x}\"/>", path.join(" "), i + 1)
    };
    let shapes: String = order.into_iter().map(shape).collect();
    format!(
        "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"{wide}mm\" height=\"{high}mm\" viewBox=\"0 0 {wide} {high}\" \
         shape-rendering=\"crispEdges\"><rect width=\"{wide}\" height=\"{high}\" fill=\"#ffffff\"/>{shapes}</svg>"
    )
}

/// How near to the eye a ray meets a patch, where it does.
fn meets(quad: &[(Point, f64); 4], at: Point) -> Option<f64> {
    [[0, 1, 2], [0, 2, 3]].into_iter().find_map(|triangle| {
        let [a, b, c] = triangle.map(|i| quad[i]);
        let area = |p: Point, q: Point, r: Point| (q - p).cross(r - p);
        let whole = area(a.0, b.0, c.0);
        let shares = [area(at, b.0, c.0), area(a.0, at, c.0), area(a.0, b.0, at)].map(|part| part / whole);
        let within = whole.abs() > 1e-9 && shares.iter().all(|share| *share >= 0.0);
        within.then(|| shares[0] * a.1 + shares[1] * b.1 + shares[2] * c.1)
    })
}

/// The share of rays through a patch that meet nothing nearer.
fn clear(quads: &[[(Point, f64); 4]], own: usize, stitch: f64) -> f64 {
    let [a, b, c, d] = quads[own];
    let bounds = |quad: &[(Point, f64); 4]| {
        let [x, y] = [quad.map(|(p, _)| p.x), quad.map(|(p, _)| p.y)];
        let span =
            |v: [f64; 4]| v.into_iter().fold((f64::INFINITY, f64::NEG_INFINITY), |(l, h), v| (l.min(v), h.max(v)));
        (span(x), span(y))
    };
    let ((left, right), (top, foot)) = bounds(&quads[own]);
    let near: Vec<&[(Point, f64); 4]> = quads
        .iter()
        .enumerate()
        .filter(|(i, quad)| {
            let ((l, r), (t, f)) = bounds(quad);
            *i != own && l <= right && r >= left && t <= foot && f >= top
        })
        .map(|(_, quad)| quad)
        .collect();
    let places = [0.1, 0.3, 0.5, 0.7, 0.9];
    let mut free = 0;
    for (u, v) in places.iter().flat_map(|u| places.iter().map(move |v| (*u, *v))) {
        let (foot, head) = (a.0.lerp(b.0, u), d.0.lerp(c.0, u));
        let at = foot.lerp(head, v);
        let mine = (a.1 * (1.0 - u) + b.1 * u) * (1.0 - v) + (d.1 * (1.0 - u) + c.1 * u) * v;
        free += usize::from(!near.iter().any(|quad| meets(quad, at).is_some_and(|other| other > mine + stitch)));
    }
    free as f64 / 25.0
}

/// An id per stitch, rendered flat by resvg, against rays.
#[test]
fn the_stitches_counted_in_the_picture_are_those_that_rays_find() {
    for (what, plan) in ten() {
        let space = space(&plan);
        let view = View::new(&from(24.0), space.reach);
        let layers = seen(&space, &view).layers;
        let quads = projected(&space, &view, PIXELS / space.stitch);
        let mut counts: BTreeMap<[u8; 3], f64> = BTreeMap::new();
        dots(&flat(&quads, &layers)).0.into_iter().for_each(|dot| *counts.entry(dot).or_default() += 1.0);
        let (mut counted, mut rays) = (0.0, 0.0);
        for (i, quad) in quads.iter().enumerate() {
            let [a, b, c, d] = quad.map(|(p, _)| p);
            let room = ((c - a).cross(d - b) / 2.0).abs();
            // What is seen edge on has no dots to count.
            if room < 8.0 {
                continue;
            }
            let [_, red, green, blue] = (i as u32 + 1).to_be_bytes();
            counted += f64::from(u8::from(counts.get(&[red, green, blue]).copied().unwrap_or(0.0) > 0.5 * room));
            rays += f64::from(u8::from(clear(&quads, i, 0.5 * space.stitch) > 0.5));
        }
        assert!(rays > 50.0 && rays < 0.8 * quads.len() as f64, "{what}: {rays} of {}", quads.len());
        assert!((counted / rays - 1.0).abs() < 0.01, "{what}: {counted} counted, {rays} by rays");
    }
}

/// Columns of a picture that have a stitch, in millimetres of the piece.
fn across(space: &Piece, eye: &Eye) -> f64 {
    let view = View::new(eye, space.reach);
    let scale = 4.0 * PIXELS / space.stitch;
    let quads = projected(space, &view, scale);
    let (dots, wide) = dots(&flat(&quads, &seen(space, &view).layers));
    let column = |x: usize| dots.iter().skip(x).step_by(wide).any(|dot| *dot != [255; 3]);
    (0..wide).filter(|x| column(*x)).count() as f64 / scale
}

/// From in front and from above a piece is as wide as its mesh, which may be 1 % off its body.
#[test]
fn widths_in_pixels_are_the_predicted_diameters() {
    for (design, round) in [(dc_beanie(), true), (hdc_basket(), true), (ball(), false)] {
        let plan = solved(&design);
        let body = predict(&plan, &plan.sizes[0]);
        let predicted = 2.0 * body.rounds.iter().map(|round| round.radius.mm()).fold(0.0, f64::max);
        let space = space(&plan);
        let x = || space.patches.iter().flat_map(|patch| patch.corners).map(|corner| corner.x);
        let relaxed = x().fold(0.0, f64::max) - x().fold(0.0, f64::min);
        for got in [0.0, 90.0].map(|degrees| across(&space, &from(degrees))) {
            assert!((got / relaxed - 1.0).abs() < 0.005, "{:?}: {got:.2} mm of {relaxed:.2} mm", design.kind);
            // Its increases stand one on another and make the ball a little cornered.
            assert!(
                !round || (got / predicted - 1.0).abs() < 0.01,
                "{:?}: {got:.2} mm of {predicted:.2} mm",
                design.kind
            );
        }
    }
}
