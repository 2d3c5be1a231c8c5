//! What an experienced hand would call well made: rates one knows by heart, rhythms without hiccups, flat that is flat.

use roundelay::craft::Stitch;
use roundelay::design::{Design, Preference, Shape, Shaping, Start, Tolerance};
use roundelay::geometry::predict;
use roundelay::plan::{Plan, SizePlan, solve};
use roundelay::report::Report;
use roundelay::units::{Angle, Mm, TURN};

use crate::common::{Adjust, design, part, size, swatch};

const PREFERENCES: [Preference; 3] = [Preference::Easy, Preference::Balanced, Preference::Close];

fn solved(design: &Design) -> Plan {
    let mut report = Report::new();
    solve(design, &mut report).unwrap_or_else(|| panic!("{report:?}"))
}

fn changes(size: &SizePlan, part: usize) -> Vec<i64> {
    size.rounds.iter().filter(|round| round.part == part).map(|round| round.change()).collect()
}

/// A flat piece of this circumference in stitches of 6 mm that lies flat with `growth` stitches a round.
fn flat(stitch: Stitch, growth: f64, around: f64, prefer: Preference) -> Design {
    let parts = vec![part("crown", stitch, Shape::flat(vec![Mm::new(around)])).ringed()];
    let mut design =
        design(swatch(stitch, 100.0 / 6.0, 100.0 * TURN / (6.0 * growth)), vec![size("one", around)], parts);
    design.prefer = prefer;
    // An edge that has to be held to a per cent takes a stitch or two.
    design.tolerance = Tolerance::Share(0.1);
    design
}

/// Six a round lies flat in single crochet (common practice); swatches that come near to it are worked so.
#[test]
fn a_flat_crown_near_six_a_round_is_worked_in_sixes() {
    let mut odd = Vec::new();
    for growth in [5.8, 5.9, 6.0, 6.1, 6.2] {
        for around in (460..620).step_by(10) {
            for prefer in [Preference::Easy, Preference::Balanced] {
                let plan = solved(&flat(Stitch::SC, growth, f64::from(around), prefer));
                let changes = changes(&plan.sizes[0], 0);
                // The last rounds may bring the circumference in, all in one way.
                let sixes = changes.iter().take_while(|change| **change == 6).count();
                let rest = &changes[sixes..];
                if sixes < 10 || rest.iter().any(|change| *change != rest[0]) {
                    odd.push((growth, around, prefer, changes));
                }
            }
        }
    }
    assert!(odd.len() <= 2, "{} of 160: {odd:#?}", odd.len());
}

/// Whatever the gauge and the size, a solved flat part lies flat.
#[test]
fn solved_flat_parts_lie_flat() {
    let mut odd = Vec::new();
    for (stitch, growth) in
        [(Stitch::SC, 5.5), (Stitch::SC, 6.6), (Stitch::HDC, 8.2), (Stitch::DC, 11.4), (Stitch::TR, 17.3)]
    {
        for around in (200..1000).step_by(90) {
            for prefer in PREFERENCES {
                let plan = solved(&flat(stitch, growth, f64::from(around), prefer));
                for finding in predict(&plan, &plan.sizes[0]).findings {
                    odd.push((growth, around, prefer, finding.sentence, changes(&plan.sizes[0], 0)));
                }
            }
        }
    }
    assert!(odd.is_empty(), "{odd:#?}");
}

/// A brim that grows by a third of its repeat is shaped every third round, not in bursts.
#[test]
fn a_gentle_flare_is_shaped_at_even_intervals() {
    for prefer in [Preference::Easy, Preference::Balanced] {
        for degrees in [15.0, 20.0, 30.0, 40.0] {
            let around = Mm::new(6.0 * 90.0);
            let ring = Start::ChainRing { chains: 90, stitches: Some(90) };
            let parts = vec![
                part("side", Stitch::SC, Shape::straight(vec![Mm::new(30.0)])).starting(ring),
                part("brim", Stitch::SC, Shape::flare(vec![Mm::new(110.0)], vec![Angle::from_degrees(degrees)])),
            ];
            let mut design =
                design(swatch(Stitch::SC, 100.0 / 6.0, 100.0 / 5.73), vec![size("one", around.mm())], parts);
            design.prefer = prefer;
            let changes = changes(&solved(&design).sizes[0], 1);
            let shaped: Vec<usize> = (0..changes.len()).filter(|at| changes[*at] != 0).collect();
            let gaps: Vec<usize> = shaped.windows(2).map(|pair| pair[1] - pair[0]).collect();
            let (least, most) = (gaps.iter().min().unwrap(), gaps.iter().max().unwrap());
            assert!(most - least <= 1, "{degrees}°, {prefer:?}: {changes:?}");
        }
    }
}

/// No round of a dome, flat or brim is shaped at one or two places only: that pulls the fabric to one side.
#[test]
fn no_round_is_shaped_at_one_or_two_places() {
    let mut odd = Vec::new();
    for around in (330..620).step_by(10) {
        for rise in [0.8, 1.0, 1.3] {
            for prefer in PREFERENCES {
                let rise = vec![Mm::new(rise * f64::from(around) / TURN)];
                let dome = Shape::dome(vec![Mm::new(f64::from(around))], rise);
                let parts = vec![part("crown", Stitch::HDC, dome).ringed()];
                let mut design =
                    design(swatch(Stitch::HDC, 100.0 / 6.5, 100.0 / 8.4), vec![size("one", f64::from(around))], parts);
                design.prefer = prefer;
                // An edge that has to be held to a per cent takes a stitch or two.
                design.tolerance = Tolerance::Share(0.1);
                let changes = changes(&solved(&design).sizes[0], 0);
                if changes.iter().any(|change| (1..=2).contains(&change.abs())) {
                    odd.push((around, prefer, changes));
                }
            }
        }
    }
    assert!(odd.is_empty(), "{odd:?}");
}

/// A crown in corners is worked with as many stitches on every side, from its first round on (common practice).
#[test]
fn corners_have_sides_of_one_length() {
    let mut odd = Vec::new();
    for (stitch, growth) in
        [(Stitch::SC, 5.8), (Stitch::SC, 6.3), (Stitch::HDC, 8.1), (Stitch::DC, 9.1), (Stitch::DC, 11.6)]
    {
        for corners in [4, 5, 6, 8] {
            for dome in [false, true] {
                let mut design = flat(stitch, growth, 560.0, Preference::Balanced);
                design.shaping = Shaping::Corners(corners);
                if dome {
                    let shape = Shape::dome(vec![Mm::new(560.0)], vec![Mm::new(90.0)]);
                    design.parts = vec![part("crown", stitch, shape).ringed()];
                }
                let counts: Vec<u32> = solved(&design).sizes[0].rounds.iter().map(|round| round.after).collect();
                if counts.iter().any(|count| !count.is_multiple_of(corners)) {
                    odd.push(format!(
                        "{} of {growth} a round, {corners} corners, dome {dome}: {counts:?}",
                        stitch.row().id
                    ));
                }
            }
        }
    }
    assert!(odd.is_empty(), "{odd:#?}");
}
