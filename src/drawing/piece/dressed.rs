//! A piece that is drawn several times over from one place: in other yarns, or as an outline to colour in.

use std::collections::BTreeMap;

use kurbo::{BezPath, Point, Rect};

use super::{FINE, HAIR, PieceOptions, Sheet, on_grid};
use crate::drawing::{Ends, Ink, Item, PathItem, Stroke};
use crate::geometry::SideShape;
use crate::geometry::piece::{Eye, Patch, Piece, Seen, View, seen};
use crate::plan::{Plan, SizePlan};

/// Line about what is to be coloured in, mm, and the ink of it.
const OUTLINE: (f64, Ink) = (0.35, Ink([0x33, 0x33, 0x33]));

/// Line between two rounds.
const FAINT: (f64, Ink) = (0.12, Ink([0xa8, 0xa8, 0xa8]));

/// Lines between rounds lie at least so far apart, mm: of smaller rounds only some have one.
const APART: f64 = 1.2;

/// Width of a stitch on the page above which its strands have a shade, and above which they have a shine, mm.
const SHADED: f64 = 1.6;
const SHINY: f64 = 0.8;

/// A piece, where it is seen from and what is seen of it.
pub(in crate::drawing) struct Dressed<'a> {
    sheet: Sheet<'a>,
    seen: Seen,
}

impl<'a> Dressed<'a> {
    pub(in crate::drawing) fn of(plan: &Plan, body: &SideShape, space: &'a Piece, options: &PieceOptions) -> Self {
        let eye = options.eye.unwrap_or_else(|| Eye::of(space, body));
        let mut sheet = Sheet::of(plan, space, View::new(&eye, space.reach), options);
        // What is drawn so many times over shows no more than can be seen.
        let stitch = space.stitch * sheet.scale;
        sheet.at_least = match stitch {
            wide if wide > SHADED => 0,
            middling if middling > SHINY => FINE.0,
            _ => FINE.1,
        };
        let seen = seen(space, &sheet.view);
        Self { sheet, seen }
    }

    pub(in crate::drawing) const fn bounds(&self) -> Rect {
        self.sheet.bounds
    }

    /// The piece in these yarns, in the order of the design's.
    pub(in crate::drawing) fn in_yarns(&mut self, yarns: Vec<Ink>) -> Vec<Item> {
        self.sheet.yarns = yarns;
        let mut items = self.sheet.ground();
        items.extend(self.sheet.stitches(&self.seen));
        items
    }

    /// The piece without yarn: its outline, a line where the colour changes, and faint ones between rounds.
    pub(in crate::drawing) fn blank(&self, size: &SizePlan) -> Vec<Item> {
        let sheet = &self.sheet;
        let height = sheet.space.patches.first().map_or(1.0, Patch::height) * sheet.scale;
        let every = (APART / height.max(1e-3)).ceil().max(1.0) as usize;
        let colour = |round: usize| size.rounds.get(round).and_then(|round| round.colour);
        let patches = || sheet.space.patches.iter().zip(&self.seen.layers);
        let mut around = BezPath::new();
        let mut lines: BTreeMap<(usize, u8), BezPath> = BTreeMap::new();
        let mut before: Option<(&Patch, bool)> = None;
        for (patch, layer) in patches() {
            let corner = |u: f64, v: f64| on_grid(sheet.place(&patch.at(u, v, 0.0)));
            let faces = sheet.view.turned(&patch.normal()).z >= 0.0;
            let turned = before.is_some_and(|(last, other)| last.round == patch.round && other != faces);
            before = Some((patch, faces));
            let Some(layer) = layer else { continue };
            let corners = [corner(-0.5, 0.0), corner(0.5, 0.0), corner(0.5, 1.0), corner(-0.5, 1.0)];
            polygon(&mut around, corners);
            polygon(lines.entry((*layer, 0)).or_default(), corners);
            let [foot, _, ahead, head] = corners;
            let ends = patch.round + 1 == size.rounds.len() && patch.edge;
            if ends || colour(patch.round) != colour(patch.round + 1) && patch.round + 1 < size.rounds.len() {
                segment(lines.entry((*layer, 2)).or_default(), head, ahead);
            } else if (patch.round + 1) % every == 0 {
                segment(lines.entry((*layer, 1)).or_default(), head, ahead);
            }
            // Where a round turns away from the eye before something else, that ends there.
            if turned && *layer > 0 {
                segment(lines.entry((*layer, 2)).or_default(), foot, head);
            }
        }
        let line = |path: BezPath, (width, ink): (f64, Ink)| {
            let stroke = Some(Stroke { width, ink, ends: Ends::Round, dashes: Vec::new() });
            Item::Path(PathItem { path, fill: None, stroke })
        };
        let mut items = vec![line(around, (2.0 * OUTLINE.0 + HAIR, OUTLINE.1))];
        items.extend(lines.into_iter().map(|((_, rank), path)| match rank {
            0 => {
                let stroke = Stroke { width: HAIR, ink: Ink::WHITE, ends: Ends::Round, dashes: Vec::new() };
                Item::Path(PathItem { path, fill: Some(Ink::WHITE), stroke: Some(stroke) })
            }
            1 => line(path, FAINT),
            _ => line(path, OUTLINE),
        }));
        items
    }
}

fn polygon(path: &mut BezPath, corners: [Point; 4]) {
    path.move_to(corners[0]);
    corners[1..].iter().for_each(|corner| path.line_to(*corner));
    path.close_path();
}

/// Adds a line, which goes on where the last one ended.
fn segment(path: &mut BezPath, from: Point, to: Point) {
    let meets = matches!(path.elements().last(), Some(kurbo::PathEl::LineTo(last)) if last.distance(from) < 0.15);
    if !meets {
        path.move_to(from);
    }
    path.line_to(to);
}
