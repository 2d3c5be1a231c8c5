//! Folded-up brims: whole rounds nearest to the length, counted once in the depth, drawn folded and told.

#![allow(clippy::unwrap_used, reason = "a test fails where it panics")]

use roundelay::file::text;
use roundelay::geometry::sideview::{MeasureKind, side_view};
use roundelay::page::{Options, Paper, Pictures};
use roundelay::pattern::Pattern;
use roundelay::story::{Illustrations, Story};
use roundelay::units::Mm;

/// Rounds of 5 mm; a rib of 8 cm.
fn beanie(language: &str, folded: &str) -> Pattern {
    let text = format!(
        "title: Beanie\nlanguage: {language}\nswatch: {{stitch: sc, stitches: 18, rounds: 20, width: 10, height: 10}}\nease: 0 %\n\
         sizes: {{S: {{head: 50}}, L: {{head: 58}}}}\nwork: spiral\nparts:\n  - crown: {{start: ring, shape: dome}}\n  \
         - side: {{depth: {{S: 3, L: 4}}}}\n  - rib: {{shape: straight, depth: 8{folded}}}\n"
    );
    Pattern::read(text.as_bytes()).unwrap_or_else(|report| panic!("{report:#?}"))
}

#[test]
fn a_fold_is_of_whole_rounds_and_counts_once() {
    let flat = beanie("en", "");
    for (asked, rounds) in [("4 cm", 8), ("4.2 cm", 8), ("4.3 cm", 9), ("3 mm", 1)] {
        let folded = beanie("en", &format!(", folded: {asked}"));
        for (one, other) in folded.plan.sizes.iter().zip(&flat.plan.sizes) {
            assert_eq!(one.rounds, other.rounds, "folding changes no stitch");
            let up = one.turned_up().unwrap();
            let last = one.rounds.last().unwrap().number;
            assert_eq!((last + 1 - up.first, up.length), (rounds, Mm::new(5.0) * f64::from(rounds)), "{asked}");
            let (with, without) = (folded.plan.depth(one).unwrap(), flat.plan.depth(other).unwrap());
            assert!((without - with - up.length).abs() < Mm::new(1e-9));
            assert_eq!(folded.plan.edge(one), Some(up.first - 1));
        }
    }
}

#[test]
fn each_size_can_fold_its_own_length() {
    let pattern = beanie("en", ", folded: {S: 2 cm, L: 4 cm}");
    let lengths: Vec<Mm> = pattern.plan.sizes.iter().map(|size| size.turned_up().unwrap().length).collect();
    assert_eq!(lengths, [Mm::new(20.0), Mm::new(40.0)]);
}

#[test]
fn the_side_view_ends_at_the_fold_and_shows_the_rest_over_it() {
    let (flat, folded) = (beanie("en", ""), beanie("en", ", folded: 4 cm"));
    for index in 0..2 {
        let view = |pattern: &Pattern| side_view(&pattern.plan, &pattern.plan.sizes[index], &pattern.shapes[index]);
        let (flat, folded) = (view(&flat), view(&folded));
        assert!((flat.tall - folded.tall - 40.0).abs() < 1.0, "{} {}", flat.tall, folded.tall);
        let fold = folded.fold().unwrap();
        assert!((folded.outline[fold].y - folded.tall).abs() < 1e-9, "nothing lies below the fold");
        // Above the fold by as much as hung below it, and outside what it lies on.
        let (edge, hung) = (folded.outline.last().unwrap(), flat.outline.last().unwrap());
        assert!((edge.y + hung.y - 2.0 * folded.tall).abs() < 1e-9);
        assert!(folded.outline[fold + 1..].iter().all(|at| at.x > folded.outline[fold].x));
        let value = |kind| folded.measures.iter().filter(move |m| m.kind == kind && m.part == Some(2)).map(|m| m.value);
        assert_eq!(value(MeasureKind::Folded).collect::<Vec<_>>(), [Mm::new(40.0)]);
        assert!(value(MeasureKind::Along).all(|along| (along - Mm::new(40.0)).abs() < Mm::new(5.1)));
    }
}

#[test]
fn every_language_tells_the_fold_and_the_side_that_shows() {
    for (language, said) in [
        ("en", ["folded up and outward", "the wrong side of the work", "Fold the part “rib” up"]),
        ("de", ["nach außen hochgeschlagen", "die linke Seite", "Den Teil „rib“ am Fuß von Runde"]),
        ("fr", ["se retroussent vers l’extérieur", "l’envers y est visible", "Retrousser la partie « rib »"]),
        ("es", ["se doblan hacia arriba y hacia fuera", "se ve el revés", "Dobla la parte «rib»"]),
        ("nl", ["naar buiten omhoog geslagen", "de verkeerde kant", "Sla het deel ‘rib’"]),
    ] {
        let pattern = beanie(language, ", folded: 4 cm");
        let telling = Options::new(Paper::a4()).telling();
        let story = Story::new(&pattern.plan, &pattern.shapes, telling, Illustrations::default());
        let told = text::write(&story, &Pictures::default());
        let told = told.split_whitespace().collect::<Vec<_>>().join(" ");
        for said in said {
            assert!(told.contains(said), "{language} lacks {said}");
        }
    }
}

/// In space the end lies over the side as it does in the side view: nothing hangs below the fold, and every stitch of the
/// end is further out than those it lies on. On the head too.
#[test]
fn the_piece_in_space_is_folded_too() {
    let pattern = beanie("en", ", folded: 4 cm");
    for (size, shape) in pattern.plan.sizes.iter().zip(&pattern.shapes) {
        let first = size.turned_up().unwrap().first as usize - 1;
        let alone = roundelay::drawing::relaxed(&pattern.plan, size, shape);
        let mesh = roundelay::geometry::mesh::mesh(&pattern.plan, size, shape, &Default::default());
        let worn = roundelay::geometry::piece::on_head(&pattern.plan, size, &mesh, shape).unwrap();
        for piece in [alone, worn] {
            let radius = |head: usize| roundelay::units::hypot(piece.points[head].x, piece.points[head].y);
            let of =
                |from: usize, to: usize| piece.patches.iter().filter(move |patch| (from..to).contains(&patch.round));
            let fold: Vec<f64> = of(first - 1, first).map(|patch| piece.points[patch.head].z).collect();
            let level = fold.iter().sum::<f64>() / fold.len() as f64;
            let under =
                of(first - 8, first).map(|patch| radius(patch.head)).sum::<f64>() / of(first - 8, first).count() as f64;
            for patch in of(first, size.rounds.len()) {
                // A spiral climbs by a round of 5 mm.
                assert!(piece.points[patch.head].z > level - 5.0, "round {}", patch.round + 1);
            }
            let over = of(first, size.rounds.len()).map(|patch| radius(patch.head)).sum::<f64>()
                / of(first, size.rounds.len()).count() as f64;
            assert!(over > under + 1.0, "{over} over {under}");
        }
    }
}
