//! Counts, growth and yarn against sources outside the project. Each check names its source.

use roundelay::craft::{Begin, Round, Stitch};
use roundelay::design::{Design, Finish, Kind, Shape, Shaping, Start, Swatch, Work};
use roundelay::plan::{PartPlan, SizePlan, audit, spread};
use roundelay::units::{Angle, Gauge, Mm};

use crate::common::{Adjust, design, part, said, size, solved, swatch};

const PI: f64 = core::f64::consts::PI;

fn near(value: f64, expected: f64, within: f64) {
    assert!((value - expected).abs() <= within, "{value} is not within {within} of {expected}");
}

/// A swatch of stitches of some width and height in mm.
fn sized(stitch: Stitch, width: f64, height: f64) -> Swatch {
    swatch(stitch, 100.0 / width, 100.0 / height)
}

/// The solved first and only size.
fn one(design: &Design) -> SizePlan {
    let plan = solved(design);
    assert_eq!(audit(&plan.sizes[0]), Ok(()));
    plan.sizes[0].clone()
}

fn counts(size: &SizePlan) -> Vec<u32> {
    size.rounds.iter().map(|round| round.after).collect()
}

fn flat(around: f64) -> Shape {
    Shape::flat(vec![Mm::new(around)])
}

/// One round that ends at a circumference.
fn one_round(name: &str, stitch: Stitch, height: f64, around: f64) -> roundelay::design::Part {
    part(name, stitch, Shape::taper(vec![Mm::new(height)], vec![Mm::new(around)]))
}

/// A disc of a swatch that ends after about twenty rounds.
fn disc(swatch: Swatch) -> SizePlan {
    let around = 2.0 * PI * 20.0 * swatch.gauge.height.mm();
    // A mat, whose circumference leaves its rounds alone: a crown may come to its own in a round less.
    let parts = vec![part("disc", swatch.stitch, flat(around)).ringed()];
    one(&Design { kind: Kind::Mat, ..design(swatch, vec![size("one", around)], parts) })
}

/// Stitches and rows to 4 in of leaflets: PAC0116-030195M (2021), CAC0116-029868M (2020), CAC0129-028772M (2020),
/// CAC0101-035975M (2024), RHC0101-021719M (2012); 13 hdc × 9 from a hat of 2013 (niftynnifer.com); and the increases
/// a round 2π · stitches / rows that follow.
#[test]
fn flat_growth_of_published_gauges() {
    let published = [
        (Stitch::SC, 22.0, 24.0, 5.76),
        (Stitch::SC, 14.0, 15.0, 5.86),
        (Stitch::SC, 13.0, 14.0, 5.83),
        (Stitch::SC, 15.0, 16.0, 5.89),
        (Stitch::DC, 16.0, 8.0, 12.57),
        (Stitch::HDC, 13.0, 9.0, 9.08),
    ];
    for (stitch, stitches, rows, growth) in published {
        let swatch = sized(stitch, 101.6 / stitches, 101.6 / rows);
        near(swatch.gauge.flat_growth(), growth, 0.005);
        near(disc(swatch).parts[0].growth_needed, growth, 0.005);
    }
}

/// The beret of leaflet PAC0116-030195M (2021), 22 sc × 24 rounds to 4 in, adds six a round; so do most of
/// our rounds.
#[test]
fn a_beret_adds_six_a_round() {
    let disc = disc(sized(Stitch::SC, 101.6 / 22.0, 101.6 / 24.0));
    let sixes = disc.rounds.iter().filter(|round| round.change() == 6).count();
    assert!(sixes * 2 > disc.rounds.len(), "{:?}", counts(&disc));
}

/// First rounds in print: six to ten sc (conixel.com), eight to twelve hdc (mamas2hands, 2017), ten to fourteen dc.
#[test]
fn first_rounds_lie_in_the_printed_ranges() {
    let published = [
        (Stitch::SC, 22.0, 24.0, 6..=10),
        (Stitch::SC, 14.0, 15.0, 6..=10),
        (Stitch::HDC, 13.0, 9.0, 8..=12),
        (Stitch::DC, 16.0, 8.0, 10..=14),
        (Stitch::DC, 13.0, 7.5, 10..=14),
    ];
    for (stitch, stitches, rows, range) in published {
        let first = disc(sized(stitch, 101.6 / stitches, 101.6 / rows)).rounds[0].after;
        assert!(range.contains(&first), "{first} {stitch:?}");
    }
}

/// Perimeter over apothem of a regular n-gon, 2n tan(π/n): 8 for the square and 4√3 for the hexagon (Euclid's
/// polygons; the others by the same formula in any handbook of mathematics).
#[test]
fn stacked_corners_need_the_growth_of_their_polygon() {
    let factors = [(4, 8.0), (6, 6.928), (7, 6.742), (8, 6.627), (12, 6.431), (16, 6.365)];
    for (corners, factor) in factors {
        let around = factor * 20.0 * 5.0;
        let parts = vec![part("disc", Stitch::SC, flat(around)).ringed()];
        let mut design = design(sized(Stitch::SC, 5.0, 5.0), vec![size("one", around)], parts);
        design.shaping = Shaping::Corners(corners);
        near(one(&design).parts[0].growth_needed, factor, 0.002);
    }
}

/// A polygon from a first round of so many, with the growth of its corners.
#[allow(clippy::disallowed_methods, reason = "an expectation is computed apart from the crate's own functions")]
fn polygon(corners: u32, first: u32, rounds: f64, across: f64) -> SizePlan {
    let around = across * rounds * 5.0;
    let start = Start::Ring { stitches: Some(first) };
    let factor = 2.0 * f64::from(corners) * (PI / f64::from(corners)).tan();
    let swatch = sized(Stitch::SC, 5.0, 5.0 * across / factor);
    let parts = vec![part("polygon", Stitch::SC, flat(around)).starting(start)];
    let mut design = design(swatch, vec![size("one", around)], parts);
    design.shaping = Shaping::Corners(corners);
    one(&design)
}

fn corners_of_three(round: &Round, corners: usize) -> bool {
    let places: Vec<usize> = (0..round.ops.len()).filter(|at| round.ops[*at].count() == 3).collect();
    let side = round.before as usize / corners;
    places.len() == corners && places.windows(2).all(|pair| pair[1] - pair[0] == side)
}

/// Thérèse de Dillmont, Encyclopedia of Needlework (Project Gutenberg 20776), fig. 442: a hexagon of 12, 24, 36 …,
/// three in one at six corners.
#[test]
fn dillmonts_hexagon() {
    let hexagon = polygon(6, 12, 9.0, 12.0);
    assert_eq!(counts(&hexagon), (1..=9).map(|k| 12 * k).collect::<Vec<u32>>());
    assert!(hexagon.rounds[1..].iter().all(|round| corners_of_three(round, 6)));
}

/// The same book, fig. 441: a square that grows by eight a round, three in one at four corners.
#[test]
fn dillmonts_square() {
    let square = polygon(4, 8, 9.0, 8.0);
    assert_eq!(counts(&square), (1..=9).map(|k| 8 * k).collect::<Vec<u32>>());
    assert!(square.rounds[1..].iter().all(|round| corners_of_three(round, 4)));
}

/// A tam of 1918 (Project Gutenberg 26113): seven a round to 224 in 32 rounds, then 196, 168 and 112, ten rounds and
/// two rounds even; 5,516 stitches by adding them up.
#[test]
fn the_tam_of_1918() {
    let (width, height) = (5.0, 5.0 * 7.0 / (2.0 * PI));
    let around = |count: f64| count * width;
    let mut parts = vec![part("top", Stitch::SC, flat(around(224.0))).starting(Start::Ring { stitches: Some(7) })];
    for count in [196.0, 168.0, 112.0] {
        parts.push(one_round("under", Stitch::SC, height, around(count)));
    }
    for rounds in [10.0, 2.0] {
        parts.push(part("band", Stitch::SC, Shape::straight(vec![Mm::new(rounds * height)])));
    }
    let tam = one(&design(sized(Stitch::SC, width, height), vec![size("one", around(112.0))], parts));
    let tops: Vec<u32> = (1..=32).map(|k| 7 * k).collect();
    assert_eq!(counts(&tam)[..32], tops);
    assert_eq!(counts(&tam)[32..], [vec![196, 168], vec![112; 13]].concat());
    assert_eq!(tam.stitches(), 5516);
    // The book misses every eighth, seventh and third stitch; here two are worked together as often.
    for (round, repeats, each) in [(33, 28, 8), (34, 28, 7), (35, 56, 3)] {
        let ops = &tam.rounds[round - 1].ops;
        let shaping: Vec<usize> = (0..ops.len()).filter(|at| ops[*at].shapes()).collect();
        assert_eq!(shaping.len(), repeats);
        assert!(shaping.windows(2).all(|pair| pair[1] - pair[0] == each - 1));
    }
}

/// A girl's hat of about 1922 (thecostumersmanifesto.com): six and six more every round, 12 in across at about 30
/// rounds, then every fifth stitch skipped; the print's next "every fifth" leaves four over, here nothing is.
#[test]
fn a_girls_hat_of_1922() {
    let (height, around) = (6.0 * 25.4 / 30.0, PI * 12.0 * 25.4);
    let width = around / 180.0;
    let next = 144.0 * 4.0 / 5.0 * width;
    let parts = vec![
        part("crown", Stitch::SC, flat(around)).ringed(),
        one_round("edge", Stitch::SC, height, 144.0 * width),
        one_round("edge", Stitch::SC, height, next),
    ];
    let hat = one(&design(sized(Stitch::SC, width, height), vec![size("one", around)], parts));
    assert_eq!(counts(&hat)[..30], (1..=30).map(|k| 6 * k).collect::<Vec<u32>>());
    assert_eq!(counts(&hat)[30], 144);
    near(f64::from(counts(&hat)[31]), 115.2, 2.0);
    near(height / width, 0.955, 0.001);
}

/// Pillbox no. 2317 (spool 215): 48 decreased to 42 by every eighth, back to 48 by every seventh, and again to 42; a
/// charity hat (headhuggers.org, cpatt01): 54 to 60 by every ninth.
#[test]
fn pillbox_steps_fall_in_whole_repeats() {
    for (from, to, every) in [(48, 42, 8), (42, 48, 7), (54, 60, 9)] {
        let width = 5.0;
        let start = Start::ChainRing { chains: from, stitches: None };
        let parts = vec![
            part("side", Stitch::SC, Shape::straight(vec![Mm::new(5.0)])).starting(start),
            one_round("step", Stitch::SC, 5.0, f64::from(to) * width),
        ];
        let steps = one(&design(sized(Stitch::SC, width, 5.0), vec![size("one", 200.0)], parts));
        assert_eq!(counts(&steps), [from, to]);
        let shaping = steps.rounds[1].ops.iter().filter(|op| op.shapes()).count() as u32;
        assert_eq!(shaping * every, from);
    }
}

/// The Swagger hat (spool 149, no. 28) and a leaflet's 22 in: a crown 7 in across for a head of 22 in, as 22 / π =
/// 7.0028.
#[test]
fn a_crown_is_the_head_over_pi_across() {
    let around = 22.0 * 25.4;
    let parts = vec![part("crown", Stitch::SC, flat(around)).ringed()];
    let hat = one(&design(sized(Stitch::SC, 5.0, 4.8), vec![size("one", around)], parts));
    let across = hat.parts[0].wanted_length.map_or(0.0, |radius| 2.0 * radius.inches());
    near(across, 7.0028, 0.0001);
}

/// A brimmed hat of 1942 (no. 2623): 13 stitches to 2 in and 126 stitches make 19.4 in round; nine more on 87 and six
/// on 96 fall in runs that differ by at most one.
#[test]
fn a_brimmed_hat_of_1942() {
    let gauge = Gauge {
        width: Mm::from_inches(2.0 / 13.0),
        height: Mm::new(4.0),
        thick: Mm::new(2.0),
        grams: None,
        assumed: false,
    };
    near(gauge.circumference(126).inches(), 19.4, 0.05);
    assert_eq!(spread(87, 9, 0).iter().filter(|run| **run == 10).count(), 6);
    assert_eq!(spread(96, 6, 0), [16; 6]);
}

/// A brim that slopes a below the horizontal grows by 2π (h/w) cos a a round (the developed cone of any handbook):
/// 5.8, 5.0, 4.1 and 2.9 at 0, 30, 45 and 60 degrees for h/w = 0.92.
#[test]
fn brims_grow_with_the_cosine_of_their_slope() {
    for (slope, growth) in [(0.0, 5.78), (30.0, 5.01), (45.0, 4.09), (60.0, 2.89)] {
        let (around, height) = (560.0, 4.6);
        let brim = Shape::flare(vec![Mm::new(15.0 * height)], vec![Angle::from_degrees(90.0 - slope)]);
        let parts = vec![part("crown", Stitch::SC, flat(around)).ringed(), part("brim", Stitch::SC, brim)];
        let hat = one(&design(sized(Stitch::SC, 5.0, height), vec![size("one", around)], parts));
        near(hat.parts[1].growth_needed, growth, 0.01);
        near(hat.parts[1].growth_used, growth, 0.35);
    }
}

/// Henderson and Taimina, Crocheting the Hyperbolic Plane (Math. Intelligencer 23(2), 2001): growth in the constant
/// ratio (N + 1) / N makes a surface of radius h / ln((N + 1) / N), 5.48 h for N = 5 and 12.49 h for N = 12.
#[allow(clippy::disallowed_methods, reason = "an expectation is computed apart from the crate's own functions")]
#[test]
fn constant_ratio_growth_has_a_constant_radius() {
    for (n, radius) in [(5, 5.48), (12, 12.49)] {
        let (first, rounds) = (60 * n, 25);
        let mut count = first;
        for _ in 0..rounds {
            // One more in every n-th stitch: each run of the spread takes one increase.
            count += spread(count, count / n, 0).len() as u32;
        }
        let ratio = (f64::from(count) / f64::from(first)).ln() / f64::from(rounds);
        near(1.0 / ratio, radius, 0.01 * radius);
    }
}

/// A ball of circumference C has the area C² / π and is C / 2 from pole to pole; a half ball C² / 2π and C / 4
/// (Archimedes).
#[test]
fn balls_and_domes_have_their_area() {
    let (around, width, height) = (600.0, 4.0, 3.6);
    // Near the middle the first rounds grow as flat fabric does and are fuller than the ball, so two per cent are allowed.
    let area = |size: &SizePlan| size.rounds.iter().map(|round| f64::from(round.after)).sum::<f64>() * width * height;
    let solve = |shape: Shape| {
        let parts = vec![part("piece", Stitch::SC, shape).ringed()];
        one(&design(sized(Stitch::SC, width, height), vec![size("one", around)], parts))
    };
    let ball = solve(Shape::sphere(vec![Mm::new(around)]));
    near(area(&ball) / (around * around / PI), 1.0, 0.02);
    near(ball.parts[0].length.mm() + height, around / 2.0, height / 2.0);
    let rise = vec![Mm::new(around / (2.0 * PI))];
    let dome = solve(Shape::dome(vec![Mm::new(around)], rise));
    // The counts are those of the upper edges of rounds, so half the last round is too much.
    let above = area(&dome) - around * height / 2.0;
    near(above / (around * around / (2.0 * PI)), 1.0, 0.02);
    near(dome.parts[0].wanted_length.map_or(0.0, Mm::mm), around / 4.0, 0.001);
}

/// A quarter of an ellipse by Ramanujan's formula for its perimeter, π (3(a + b) − √((3a + b)(a + 3b))).
#[test]
fn a_low_dome_is_a_quarter_of_an_ellipse_long() {
    let (radius, rise) = (90.0, 55.0);
    let around = 2.0 * PI * radius;
    let dome = Shape::dome(vec![Mm::new(around)], vec![Mm::new(rise)]);
    let parts = vec![part("dome", Stitch::SC, dome).ringed()];
    let hat = one(&design(sized(Stitch::SC, 4.0, 3.7), vec![size("one", around)], parts));
    let root = ((3.0 * radius + rise) * (radius + 3.0 * rise)).sqrt();
    let quarter = PI * (3.0 * (radius + rise) - root) / 4.0;
    near(hat.parts[0].wanted_length.map_or(0.0, Mm::mm), quarter, 0.01);
}

/// A tube of 600 mm round and 300 mm deep in some stitch, from an sc swatch.
fn tube(stitch: Stitch, grams: Option<f64>) -> SizePlan {
    let mut swatch = sized(Stitch::SC, 101.6 / 12.5, 101.6 / 13.5);
    swatch.gauge.grams = grams;
    let chains = (600.0 / swatch.gauge.width.mm()).round() as u32;
    let start = Start::ChainRing { chains, stitches: None };
    let side = part("side", stitch, Shape::straight(vec![Mm::new(300.0)])).starting(start);
    let mut design = design(swatch, vec![size("one", 600.0)], vec![side]);
    design.yarn.allowance = 0.0;
    one(&design)
}

/// A maker's test in worsted yarn on a 5 mm hook (windchilde.com): 31.42, 32.08 and 31.6 in of yarn to a square inch
/// of sc, hdc and dc, so that by area all three take the same within a few per cent.
#[test]
fn yarn_by_area() {
    let measured = [(Stitch::SC, 31.42), (Stitch::HDC, 32.08), (Stitch::DC, 31.6)];
    for (stitch, inches) in measured {
        let tube = tube(stitch, None);
        let area = f64::from(tube.rounds[0].after) * 101.6 / 12.5 * tube.parts[0].length.mm();
        near(tube.yarn[0].metres * 1000.0 / area * 25.4, inches, 0.03 * inches);
        assert!(tube.yarn[0].estimated);
    }
    let [sc, dc] = [Stitch::SC, Stitch::DC].map(|stitch| {
        let tube = tube(stitch, Some(0.1));
        tube.yarn[0].grams / tube.parts[0].length.mm()
    });
    near(dc / sc, 31.6 / 31.42, 0.07);
}

/// The same test by stitch: 1 : 1.48 : 1.92 for sc, hdc and dc in a row of one width.
#[test]
fn yarn_by_stitch() {
    near(Stitch::HDC.row().yarn / Stitch::SC.row().yarn, 1.48, 0.03);
    near(Stitch::DC.row().yarn / Stitch::SC.row().yarn, 1.92, 0.03);
}

/// Swatch weighing, by an article on yarn estimates (sdrta.net): 50 × 60 in at 13 dc and 7.5 rows to 4 in are 18,281
/// stitches, and the yarn is the grams of one stitch times that.
#[test]
fn weighed_yarn_is_grams_a_stitch() {
    let mut swatch = sized(Stitch::DC, 101.6 / 13.0, 101.6 / 7.5);
    swatch.gauge.grams = Some(0.05);
    let start = Start::ChainRing { chains: 195, stitches: None };
    let side = Shape::straight(vec![Mm::from_inches(50.0)]);
    let mut blanket = design(swatch, vec![size("one", 1524.0)], vec![part("tube", Stitch::DC, side).starting(start)]);
    blanket.yarn.allowance = 0.1;
    let tube = one(&blanket);
    near(tube.stitches() as f64, 18_281.0, 0.005 * 18_281.0);
    // Two stitches of the first round are lower, so that the spiral rises: they take a little less.
    near(tube.yarn[0].grams, tube.stitches() as f64 * 0.05 * 1.1, 0.05);
    assert!(!tube.yarn[0].estimated);
}

/// Chains to turn with in the book of 1918 (Project Gutenberg 26113): sc 1, hdc 2, dc 3, tr 4, dtr 5; and the craft
/// council's reading guide: one chain before sc never counts, taller ones count unless the pattern says otherwise.
#[test]
fn turning_chains() {
    for (stitch, chains) in [(Stitch::SC, 1), (Stitch::HDC, 2), (Stitch::DC, 3), (Stitch::TR, 4), (Stitch::DTR, 5)] {
        let around = 600.0;
        let mut design = design(
            sized(stitch, 6.0, 10.0),
            vec![size("one", around)],
            vec![part("disc", stitch, flat(around)).ringed()],
        );
        design.work = Work::Joined { chain_counts: true };
        let begin = Begin::Chain { chains, counts: stitch != Stitch::SC };
        assert!(one(&design).rounds.iter().all(|round| round.begin == begin));
    }
}

/// A spiral steps down through every shorter stitch, tr, dc, hdc, sc to slip stitch (common practice).
#[test]
fn spirals_step_down() {
    let parts = vec![part("disc", Stitch::TR, flat(600.0)).ringed()];
    let mut spiral = design(sized(Stitch::TR, 6.0, 15.0), vec![size("one", 600.0)], parts);
    spiral.finish = said(Finish::StepDown);
    assert_eq!(one(&spiral).step_down, [Stitch::DC, Stitch::HDC, Stitch::SC, Stitch::SL_ST]);
}

/// A list of counts of a dc beanie in print (gist by jnf): 11, 22, 33, 44 on a gauge that grows by eleven.
#[test]
fn a_beanie_of_elevens() {
    let swatch = sized(Stitch::DC, 101.6 / 13.0, 101.6 / 7.43);
    near(swatch.gauge.flat_growth(), 11.0, 0.01);
    let around = 44.0 * 101.6 / 13.0;
    let parts = vec![part("top", Stitch::DC, flat(around)).ringed()];
    let beanie = one(&design(swatch, vec![size("one", around)], parts));
    assert_eq!(counts(&beanie), [11, 22, 33, 44]);
    let PartPlan { growth_used, .. } = beanie.parts[0];
    near(growth_used, 11.0, 1e-9);
}
