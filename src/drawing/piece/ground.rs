//! The ground that a piece stands on: a soft shadow about its foot, or the light of a lamp; or what it hangs by.

use kurbo::{BezPath, Point, Vec2};

use crate::drawing::{Ends, Ink, Item, PathItem, Stroke};
use crate::geometry::mesh::Vec3;
use crate::geometry::piece::{Form, Piece, View};
use crate::units::{Angle, TURN};

/// Rings of shadow, from the outermost.
const RINGS: u32 = 14;

/// How far the shadow reaches beyond the foot, as a share of the reach.
const SOFT: f64 = 0.13;

/// Grey of the darkest ring.
const DARKEST: f64 = 0.74;

/// How near to the ground a piece touches it, in widths of a stitch: it gives way by half its thickness.
const TOUCHES: f64 = 0.5;

/// Corners of a ring.
const CORNERS: u32 = 40;

/// What lies no higher shades the ground.
pub(super) fn shading(piece: &Piece) -> f64 {
    piece.ground + piece.tall / 3.0 + piece.stitch
}

/// Colour of the ground where a lamp lights it most.
const LIT: [f64; 3] = [255.0, 236.0, 190.0];

/// Length of the loop that a piece hangs by, as a share of its reach, and width, in the same measure.
const LOOP: (f64, f64) = (0.55, 0.13);

/// Corners of the loop, from the middle of the piece's top and up: across and upward, mm.
pub(super) fn hanging(piece: &Piece) -> [Vec3; 7] {
    let (long, wide) = (LOOP.0 * piece.reach, LOOP.1 * piece.reach);
    let at = |across: f64, up: f64| Vec3::new(across, 0.0, piece.ground + piece.tall + up);
    [
        at(0.0, -piece.stitch),
        at(wide, 0.35 * long),
        at(wide, long),
        at(0.0, long),
        at(-wide, long),
        at(-wide, 0.35 * long),
        at(0.0, -piece.stitch),
    ]
}

/// The loop that a piece hangs by, in its yarn.
pub(super) fn cord(piece: &Piece, view: &View, (yarn, scale): (Ink, f64), page: &dyn Fn(Point) -> Point) -> Item {
    let [foot, a, b, top, c, d, end] = hanging(piece).map(|p| page(view.project(&p).0));
    let mut path = BezPath::new();
    path.move_to(foot);
    path.curve_to(a, b, top);
    path.curve_to(c, d, end);
    let width = (0.16 * piece.stitch * scale).max(0.2);
    let stroke = Some(Stroke { width, ink: yarn, ends: Ends::Round, dashes: Vec::new() });
    Item::Path(PathItem { path, fill: None, stroke })
}

/// The shadow of a piece, or where it is `lit` the light that it throws.
pub(super) fn shadow(piece: &Piece, view: &View, lit: bool, page: &dyn Fn(Point) -> Point) -> Vec<Item> {
    // It is darkest where the piece touches the ground; what stands lower than a third of its height shades that too.
    let form: Vec<Vec3> = piece.form.iter().flat_map(Form::facets).flatten().collect();
    let below = |low: f64| -> Vec<Vec2> {
        let points = piece.points.iter().chain(&form);
        points.filter(|p| p.z <= low).map(|p| Vec2::new(p.x, p.y)).collect()
    };
    let (foot, near) = (below(piece.ground + TOUCHES * piece.stitch), below(shading(piece)));
    let reach = |angle: Angle| {
        let way = Vec2::new(angle.cos(), angle.sin());
        let far = |points: &[Vec2]| points.iter().map(|p| p.dot(way)).fold(0.0, f64::max);
        (far(&foot), far(&near))
    };
    let corner = |i: u32| Angle::from_radians(TURN * f64::from(i) / f64::from(CORNERS));
    let reaches: Vec<(f64, f64)> = (0..CORNERS).map(|i| reach(corner(i))).collect();
    let mut items = Vec::new();
    for ring in 0..RINGS {
        let share = f64::from(ring) / f64::from(RINGS - 1);
        let grow = SOFT * piece.reach * (1.0 - share);
        let mut path = BezPath::new();
        for (i, (foot, near)) in reaches.iter().enumerate() {
            let reach = near + (foot - near) * share;
            let angle = corner(i as u32);
            // The lamp stands to the left and behind: the shadow falls a little to the right and forward.
            let at = Vec3::new(
                (reach + grow) * angle.cos() + 0.35 * grow,
                (reach + grow) * angle.sin() - 0.2 * grow,
                piece.ground,
            );
            let point = page(view.project(&at).0);
            if i == 0 { path.move_to(point) } else { path.line_to(point) }
        }
        path.close_path();
        // A shadow fades quickly at first: the square of the share.
        let (faded, grey) = (share * share, 255.0 * (1.0 - (1.0 - DARKEST) * share * share));
        let ink = if lit { LIT.map(|lit| 255.0 + (lit - 255.0) * faded) } else { [grey; 3] };
        items.push(Item::Path(PathItem { path, fill: Some(Ink(ink.map(|level| level.round() as u8))), stroke: None }));
    }
    items
}
