//! The symbol set: complete, explained in every language, and told apart at print size.

use kurbo::{Affine, Rect, Vec2};
use roundelay::craft::{Stitch, Terms};
use roundelay::drawing::{Drawing, Item, KeyOptions, Sign, SymbolItem, symbol_sheet};
use roundelay::file::svg;
use roundelay::words::Language;

/// Pixels of a millimetre in these tests: 600 dots an inch.
const SCALE: f64 = 600.0 / 25.4;

/// A symbol printed in pure black, its longer side 2.5 mm, in the middle of a 3 mm square. Blank where it can't be read.
fn print(sign: Sign) -> Vec<bool> {
    let symbol = sign.symbol(&sign.fit());
    let longer = symbol.bounds.width().max(symbol.bounds.height());
    let symbol = symbol.scaled(2.5 / longer);
    let place = Affine::translate(Vec2::new(1.5, 1.5) - symbol.bounds.center().to_vec2());
    let drawing = Drawing {
        bounds: Rect::new(0.0, 0.0, 3.0, 3.0),
        title: "one symbol".to_owned(),
        description: String::new(),
        language: Language::EN,
        symbols: [("it".to_owned(), symbol)].into(),
        items: vec![Item::Symbol(SymbolItem { key: "it".to_owned(), place })],
    };
    let side = (3.0 * SCALE).ceil() as u32;
    let read = resvg::usvg::Tree::from_str(&svg::write(&drawing), &resvg::usvg::Options::default());
    let (Ok(tree), Some(mut pixmap)) = (read, resvg::tiny_skia::Pixmap::new(side, side)) else { return Vec::new() };
    let scale = (SCALE * 25.4 / 96.0) as f32;
    resvg::render(&tree, resvg::tiny_skia::Transform::from_scale(scale, scale), &mut pixmap.as_mut());
    // The picture brings a white ground: what is printed is what is dark.
    pixmap.pixels().iter().map(|pixel| pixel.red() < 128).collect()
}

/// Ink of `one` further than 0.08 mm from any ink of `other`, as a share of the ink of `one`.
fn alone(one: &[bool], other: &[bool]) -> f64 {
    let side = (one.len() as f64).sqrt() as usize;
    let reach = (0.08 * SCALE).round() as isize;
    let near = |at: usize| {
        let (x, y) = ((at % side) as isize, (at / side) as isize);
        (-reach..=reach).any(|dy| {
            (-reach..=reach).any(|dx| {
                let (x, y) = (x + dx, y + dy);
                let inside = (0..side as isize).contains(&x) && (0..side as isize).contains(&y);
                inside && dx * dx + dy * dy <= reach * reach && other[y as usize * side + x as usize]
            })
        })
    };
    let ink = one.iter().filter(|ink| **ink).count();
    let far = (0..one.len()).filter(|&at| one[at] && !near(at)).count();
    far as f64 / ink.max(1) as f64
}

#[test]
fn any_two_symbols_differ_clearly_at_two_and_a_half_millimetres() {
    let prints: Vec<_> = Sign::all().into_iter().map(|sign| (sign, print(sign))).collect();
    for (i, (sign, ink)) in prints.iter().enumerate() {
        assert!(ink.iter().any(|ink| *ink), "{sign:?} is blank");
        for (other, below) in &prints[..i] {
            let differ = alone(ink, below).max(alone(below, ink));
            assert!(differ > 0.06, "{sign:?} and {other:?} look alike: {differ:.3}");
        }
    }
}

#[test]
fn every_stitch_of_the_table_has_a_symbol() {
    for stitch in Stitch::all() {
        assert!(Sign::all().iter().any(|sign| matches!(sign, Sign::Stitch(it, _) if *it == stitch)), "{stitch:?}");
    }
}

#[test]
fn every_symbol_is_explained_in_every_language() {
    for language in Language::ALL {
        for terms in [Terms::Us, Terms::Uk] {
            let sheet = symbol_sheet(language, terms, &KeyOptions::default());
            assert_eq!(sheet.items.len(), Sign::all().len());
            assert!(!sheet.description.contains("key-"), "{}", sheet.description);
            assert!(!sheet.description.contains("{$"), "{}", sheet.description);
        }
    }
}

#[test]
fn feet_and_heads_keep_within_their_ring() {
    for sign in Sign::all() {
        if !matches!(sign, Sign::Stitch(..) | Sign::Increase(..) | Sign::Decrease(..) | Sign::TurningChain(_)) {
            continue;
        }
        let (fit, symbol) = (sign.fit(), sign.symbol(&sign.fit()));
        assert!(symbol.bounds.y1 <= 0.0 && symbol.bounds.y0 >= -fit.height - 0.001, "{sign:?}: {:?}", symbol.bounds);
    }
}
