use super::*;
use crate::common::solved;
use crate::design::{Body, Design, STARTER, read};
use crate::report::Report;
use crate::units::TURN;

/// Circumference of a design's only size, and what its flat and round parts are measured by, mm.
const AROUND: f64 = 540.0;

/// A design whose first or second part has the example of a form.
fn example(form: &Form) -> String {
    let first = match form.begins {
        Begins::Middle | Begins::Top => "",
        Begins::Edge | Begins::Never => "  - crown\n",
    };
    format!(
        "title: Example\nswatch: {{stitch: sc, stitches: 16, rounds: 17, width: 11.3, height: 11.1}}\n\
         sizes: {{one: {{around: 54}}}}\nkind: basket\nwork: spiral\nparts:\n{first}  - piece: {}\n",
        form.example
    )
}

fn designed(text: &str) -> Design {
    let mut report = Report::new();
    let design = read(text, &mut report);
    design.unwrap_or_else(|| panic!("{text}\n{report:#?}"))
}

/// The last part of a design.
fn last(design: &Design) -> Shape {
    let Body::Profile(profile) = &design.parts.last().unwrap().body else { panic!("solved") };
    profile.shape.clone()
}

/// The outline of a shape that goes on from a circumference.
fn outline(shape: &Shape, real: f64) -> Outline {
    shape.outline(Base { size: 0, real, wished: real, settled: 0.0, factor: TURN }).unwrap()
}

fn mm(value: f64) -> PerSize<Mm> {
    vec![Mm::new(value)]
}

#[test]
fn every_form_is_read_by_its_word_and_solved() {
    for form in FORMS {
        let design = designed(&example(form));
        assert_eq!(last(&design).form().word, form.word);
        let plan = solved(&design);
        let part = plan.sizes[0].parts.last().unwrap();
        assert!(part.last >= part.first && part.length > Mm::ZERO, "{}", form.word);
        let closed = plan.sizes[0].rounds.last().unwrap().after <= 12;
        assert_eq!(closed, form.closes, "{}", form.word);
    }
}

#[test]
fn words_and_usual_names_are_said_once() {
    let mut seen: Vec<&str> = Vec::new();
    for word in FORMS.iter().map(|form| form.word) {
        assert!(!seen.contains(&word), "{word}");
        seen.push(word);
    }
    let mut names: Vec<&str> = Vec::new();
    for name in FORMS.iter().flat_map(|form| form.usual) {
        assert!(!names.contains(name), "{name}");
        names.push(name);
    }
}

#[test]
fn usual_names_stand_for_their_forms() {
    for form in FORMS {
        for name in form.usual {
            let fields = form.example.replacen(&format!("shape: {}", form.word), "", 1).replacen("{, ", "{", 1);
            let text = example(form).replace(&format!("piece: {}", form.example), &format!("{name}: {fields}"));
            let text = if *name == "crown" { text } else { text.replace("  - crown\n", "  - start: {shape: flat}\n") };
            assert_eq!(last(&designed(&text)).form().word, form.word, "{text}");
        }
    }
}

/// Every field that a form doesn't take is complained of, every one that it takes is not.
#[test]
fn forms_take_their_fields_and_no_others() {
    for form in FORMS {
        for field in Field::ALL {
            let text = example(form)
                .replace(&format!("{{shape: {}", form.word), &format!("{{shape: {}, {}: 12", form.word, field.word()));
            // The example may say the field already, which is another complaint.
            if form.example.contains(&format!("{}:", field.word())) {
                assert!(form.takes.contains(&field), "{} {}", form.word, field.word());
                continue;
            }
            let mut report = Report::new();
            let _ = read(&text, &mut report);
            let unused = report.diagnostics.iter().any(|found| found.code == "unused-field");
            assert_eq!(unused, !form.takes.contains(&field), "{} {}: {report:#?}", form.word, field.word());
        }
    }
}

#[test]
fn the_starter_tells_of_every_form_and_what_it_takes() {
    let words: Vec<&str> = FORMS.iter().map(|form| form.word).collect();
    assert!(STARTER.contains(&format!("shape: {}", words.join(" | "))), "{words:?}");
    for form in FORMS {
        let starts = format!("{}: ", form.word);
        let columns = STARTER.lines().filter(|line| line.starts_with("#   ")).flat_map(|line| line[1..].split("   "));
        let told = columns.map(str::trim).find_map(|column| column.strip_prefix(&starts));
        let told = told.unwrap_or_else(|| panic!("{}", form.word));
        for field in Field::ALL {
            let said = told.split([' ', ',']).any(|word| word == field.word());
            assert!(!said || form.takes.contains(&field), "{}: {told}", form.word);
            // The edge is told of in general, and a flare leads to one by its angle.
            let edge = matches!(field, Field::Around | Field::Across);
            assert!(said || edge || !form.takes.contains(&field), "{}: {told}", form.word);
        }
    }
}

#[test]
fn every_outline_is_finite_and_begins_and_ends_where_it_should() {
    for form in FORMS {
        let real = if matches!(form.begins, Begins::Middle | Begins::Top) { 0.0 } else { AROUND };
        let outline = outline(&last(&designed(&example(form))), real);
        assert!((outline.around(0.0) - real).abs() < 1e-6, "{}", form.word);
        for step in 0..=200 {
            let around = outline.around(outline.length * f64::from(step) / 200.0);
            assert!(around.is_finite() && around >= 0.0, "{} {step}", form.word);
        }
        let end = outline.around(outline.length);
        assert_eq!(end < 1e-6, form.closes, "{}", form.word);
        assert_eq!(outline.closes, form.closes, "{}", form.word);
        let middle = outline.around(outline.length / 2.0);
        assert_eq!((middle - real).abs() < 1e-6, form.even, "{}", form.word);
    }
}

/// Radius at a slant length.
type Radius<'a> = &'a dyn Fn(f64) -> f64;

/// Closed forms of r(s), the radius at slant length s from where a part begins with the radius r₀: a disc r₀ + s, a cone
/// r₀ + s sin α, a cylinder r₀, a ball R sin(s / R) (elementary geometry).
#[test]
fn outlines_match_their_closed_forms() {
    let (r0, ball) = (60.0, AROUND / TURN);
    let angle = Angle::from_degrees(55.0);
    let depth: f64 = 120.0;
    let (wide, edge) = (AROUND / TURN, 25.0);
    let rounded = |s: f64| match s - (wide - edge) {
        past if past > 0.0 => wide - edge + edge * Angle::from_radians(past / edge).sin(),
        _ => s,
    };
    let cases: [(Shape, f64, Radius<'_>); 13] = [
        (Shape::ruffle(mm(40.0), vec![2.5]), r0, &|s| r0 * (1.0 + 1.5 * s / 40.0)),
        (Shape::flat(mm(AROUND)), r0, &|s| r0 + s),
        (Shape::rounded(mm(AROUND), mm(edge)), 0.0, &rounded),
        (Shape::rounded(mm(AROUND), mm(edge)), 10.0, &|s| rounded(s + 10.0)),
        (Shape::slope(mm(depth), vec![angle]), r0, &|s| r0 + s * angle.sin()),
        (Shape::slope(mm(60.0), vec![angle * -1.0]), r0, &|s| r0 - s * angle.sin()),
        (Shape::flat(mm(100.0)), r0, &|s| r0 - s),
        (Shape::flare(mm(75.0), vec![angle]), r0, &|s| r0 + s * angle.sin()),
        (Shape::straight(mm(90.0)), r0, &|_| r0),
        (Shape::taper(mm(depth), mm(TURN * 90.0)), r0, &|s| r0 + s * 30.0 / depth),
        (Shape::dome(mm(AROUND), mm(ball)), 0.0, &|s| ball * Angle::from_radians(s / ball).sin()),
        (Shape::sphere(mm(AROUND)), 0.0, &|s| ball * Angle::from_radians(s / ball).sin()),
        (Shape::close(), r0, &|s| r0 - s),
    ];
    for (shape, from, closed) in &cases {
        let outline = outline(shape, TURN * from);
        for step in 0..=100 {
            let s = outline.length * f64::from(step) / 100.0;
            let radius = outline.around(s) / TURN;
            assert!((radius - closed(s)).abs() < 1e-3, "{} {s}: {radius}", shape.form().word);
        }
    }
    let tried: Vec<&str> = cases.iter().map(|(shape, ..)| shape.form().word).collect();
    assert!(FORMS.iter().all(|form| tried.contains(&form.word)), "a form without its closed form: {tried:?}");
}

/// A disc whose edge is rounded is as long as its disc and a quarter of a circle (elementary geometry); rounded by its whole
/// radius it is half a ball.
#[test]
fn rounded_edges_are_as_long_as_their_discs_and_quarters() {
    let radius = AROUND / TURN;
    for edge in [5.0, 25.0, radius] {
        let outline = outline(&Shape::rounded(mm(AROUND), mm(edge)), 0.0);
        let long = radius - edge + edge * TURN / 4.0;
        assert!((outline.length - long).abs() < 1e-9 && (outline.around(long) - AROUND).abs() < 1e-9, "{edge}");
        // It ends straight down, and was flat up to where it bends.
        let ends = (outline.around(long) - outline.around(long - 0.01)) / 0.01;
        assert!(ends < 0.02 * TURN, "{edge} {ends}");
        assert!(outline.lies_flat(radius - edge) && !outline.lies_flat(radius - edge + 1.0), "{edge}");
    }
    let half = outline(&Shape::dome(mm(AROUND), mm(radius)), 0.0);
    let whole = outline(&Shape::rounded(mm(AROUND), mm(radius)), 0.0);
    for step in 0..=50 {
        let s = half.length * f64::from(step) / 50.0;
        assert!((half.around(s) - whole.around(s)).abs() < 0.01, "{s}");
    }
}

/// A ball or dome that begins with a hole is entered where it is as wide as the hole; a quarter of the way round, a
/// dome as high as its radius has gone π/2 of its radius less what was left out.
#[test]
fn balls_and_domes_are_entered_at_their_holes() {
    let radius = AROUND / TURN;
    let hole = AROUND * Angle::from_degrees(30.0).sin();
    for (shape, whole) in [(Shape::sphere(mm(AROUND)), TURN / 2.0), (Shape::dome(mm(AROUND), mm(radius)), TURN / 4.0)] {
        let outline = outline(&shape, hole);
        assert!((outline.around(0.0) - hole).abs() < 0.5, "{}", shape.form().word);
        assert!((outline.length - radius * (whole - TURN / 12.0)).abs() < 0.5, "{}", outline.length);
    }
}

/// The same measures are another shape in another form.
#[test]
fn shapes_of_other_measures_are_other_shapes() {
    assert_eq!(Shape::flat(mm(1.0)), Shape::flat(mm(1.0)));
    assert_ne!(Shape::flat(mm(1.0)), Shape::sphere(mm(1.0)));
    assert_ne!(Shape::flat(mm(1.0)), Shape::flat(mm(2.0)));
}
