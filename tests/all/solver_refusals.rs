//! Wishes that can't be met are refused with the arithmetic and the nearest thing that can be done; doubtful ones are
//! warned about.

use roundelay::craft::Stitch;
use roundelay::design::{Body, Design, Finish, Shape, Start, Stripe, Work};
use roundelay::plan::solve;
use roundelay::report::{Place, Report, Severity};
use roundelay::units::{Angle, Mm};

use crate::common::{self, Adjust, design, part, size, sun_hat, swatch};

fn refused(design: &Design) -> Report {
    let mut report = Report::new();
    assert_eq!(solve(design, &mut report), None);
    assert!(report.has_errors());
    report
}

/// Code, message and help of the only error.
fn error(design: &Design) -> (&'static str, String, String) {
    let report = refused(design);
    let errors: Vec<_> = report.diagnostics.into_iter().filter(|d| d.severity == Severity::Error).collect();
    assert_eq!(errors.len(), 1, "{errors:#?}");
    (errors[0].code, errors[0].message.clone(), errors[0].help.clone().unwrap_or_default())
}

/// A crown of 100 stitches of 5 mm and a part on it.
fn crowned(shape: Shape, settle: u32) -> Design {
    let crown = Shape::flat(vec![Mm::new(500.0)]);
    let parts = vec![part("crown", Stitch::SC, crown).ringed(), part("brim", Stitch::SC, shape).settling(settle)];
    design(swatch(Stitch::SC, 20.0, 20.0), vec![size("M", 500.0)], parts)
}

/// A ball of 3 cm is 9.4 cm round: in rounds of 2 cm that is a small disc.
#[test]
fn a_ball_of_too_few_rounds() {
    let ball = |around: f64| {
        let parts = vec![part("ball", Stitch::TR, Shape::sphere(vec![Mm::new(around)])).ringed()];
        design(swatch(Stitch::TR, 13.0, 5.0), vec![size("M", around)], parts)
    };
    let (code, message, help) = error(&ball(94.0));
    assert_eq!(code, "too-short");
    assert!(message.ends_with(" of 2.0 cm: no ball"), "{message}");
    let least: f64 = help.split(' ').find_map(|word| word.parse().ok()).expect("a figure");
    assert!(solve(&ball(10.0 * least), &mut Report::new()).is_some(), "{help}");
    assert_eq!(error(&ball(9.0 * least)).0, "too-short");
}

#[test]
fn a_side_shorter_than_half_a_round() {
    let (code, message, help) = error(&crowned(Shape::straight(vec![Mm::new(2.0)]), 0));
    assert_eq!(code, "too-short");
    assert_eq!(message, "the brim is 2.0 mm long, less than half a round of 5.0 mm");
    assert_eq!(help, "make it at least 5.0 mm, use a shorter stitch, or leave the part out");
}

#[test]
fn a_brim_that_would_triple_in_a_round() {
    let shape = Shape::taper(vec![Mm::new(5.0)], vec![Mm::new(1500.0)]);
    let (code, message, help) = error(&crowned(shape, 0));
    assert_eq!(code, "unreachable");
    assert!(message.starts_with("the brim of size M can't grow to 300 stitches: from "), "{message}");
    assert!(message.contains("1 shaped round, each at most 2 times the round before, come to "), "{message}");
    assert!(
        help.contains("99.0 cm round (198 stitches) by round 17; make the part longer, let rounds triple"),
        "{help}"
    );
}

#[test]
fn a_taper_that_would_shrink_to_a_quarter() {
    let shape = Shape::taper(vec![Mm::new(5.0)], vec![Mm::new(120.0)]);
    let (code, message, _) = error(&crowned(shape, 0));
    assert_eq!(code, "unreachable");
    assert!(message.contains("can't shrink to 24 stitches"), "{message}");
}

#[test]
fn a_brim_of_two_rounds_that_should_end_with_two_even_ones() {
    let shape = Shape::flare(vec![Mm::new(10.0)], vec![Angle::from_degrees(60.0)]);
    let (code, message, help) = error(&crowned(shape, 2));
    assert_eq!(code, "settle");
    assert_eq!(message, "the brim of size M has 2 rounds and should end with 2 even ones");
    assert!(help.contains("settle 1 or less"), "{help}");
}

#[test]
fn lengths_of_nothing_and_of_no_number() {
    for depth in [0.0, -30.0, f64::NAN, f64::INFINITY, 1e9] {
        assert_eq!(error(&crowned(Shape::straight(vec![Mm::new(depth)]), 0)).0, "length-range");
    }
    assert_eq!(error(&crowned(Shape::straight(Vec::new()), 0)).0, "missing-length");
}

#[test]
fn a_hole_that_is_already_closed() {
    let small = Shape::flat(vec![Mm::new(45.0)]);
    let parts = vec![part("base", Stitch::SC, small).ringed(), part("top", Stitch::SC, Shape::close())];
    let (code, _, help) = error(&common::design(swatch(Stitch::SC, 20.0, 20.0), vec![size("M", 45.0)], parts));
    assert_eq!(code, "too-short");
    assert!(help.contains("draw the last round together"), "{help}");
}

#[test]
fn parts_that_have_nothing_to_stand_on_or_too_much() {
    let mut design = sun_hat();
    design.parts.remove(0);
    assert_eq!(error(&design).0, "no-start");
    let mut design = sun_hat();
    let crown = design.parts[0].clone();
    design.parts.push(crown);
    // Each size would say the same; it is said once.
    assert_eq!(error(&design).0, "late-start");
    let side = Shape::straight(vec![Mm::new(50.0)]);
    let parts = vec![part("side", Stitch::SC, side).ringed()];
    assert_eq!(error(&common::design(swatch(Stitch::SC, 20.0, 20.0), vec![size("M", 500.0)], parts)).0, "no-start");
}

#[test]
fn rings_too_small_and_pieces_too_large() {
    let mut design = sun_hat();
    design.parts[0] = design.parts[0].clone().starting(Start::Ring { stitches: Some(2) });
    assert_eq!(error(&design).0, "ring-count");
    let huge = Shape::straight(vec![Mm::new(90_000.0)]);
    assert_eq!(error(&crowned(huge, 0)).0, "part-too-large");
}

#[test]
fn swatches_that_give_no_size() {
    let mut design = sun_hat();
    design.swatches[0].gauge.width = Mm::ZERO;
    assert_eq!(error(&design).0, "swatch-size");
    design.swatches.clear();
    assert_eq!(error(&design).0, "no-swatch");
    let mut design = sun_hat();
    design.sizes.clear();
    assert_eq!(error(&design).0, "empty-design");
}

#[test]
fn errors_stand_at_the_field_that_asks_for_too_much() {
    let mut design = crowned(Shape::straight(vec![Mm::new(2.0)]), 0);
    let place = Place { line: 12, column: 5, offset: 200, length: 3 };
    if let Body::Profile(profile) = &mut design.parts[1].body {
        profile.place = Some(place);
    }
    assert_eq!(refused(&design).diagnostics[0].place, Some(place));
}

#[test]
fn what_is_only_doubtful_is_warned_about() {
    let warned = |design: &Design| {
        let mut report = Report::new();
        let plan = solve(design, &mut report).unwrap_or_else(|| panic!("{report:#?}"));
        let codes: Vec<&str> = report.diagnostics.iter().map(|d| d.code).collect();
        (codes, plan.sizes[0].warnings.len())
    };
    // A second stitch without a swatch, and a brim that widens faster than flat fabric can.
    let mut hat = sun_hat();
    hat.parts[2].stitch = Stitch::HDC;
    assert_eq!(warned(&hat), (vec!["gauge-assumed"], 0));
    let steep = Shape::taper(vec![Mm::new(50.0)], vec![Mm::new(900.0)]);
    assert_eq!(warned(&crowned(steep, 0)), (vec!["ruffles", "depth-unusual"], 2));
    let mut striped = sun_hat();
    striped.sizes.truncate(1);
    striped.parts[1].stripes = vec![Stripe { colour: 0, rounds: Some(40) }];
    assert_eq!(warned(&striped), (vec!["stripes-cut"], 1));
    let mut level = sun_hat();
    level.sizes.truncate(1);
    level.finish.value = Finish::StepDown;
    assert_eq!(level.work, Work::Joined { chain_counts: false });
    assert_eq!(warned(&level), (vec!["no-step"], 1));
}
