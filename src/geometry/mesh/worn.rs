//! A hat's net on the head that it is made for: every stitch moved as its round is moved there, so that it keeps the
//! waves, the corners and the lean that it has by itself, and then let go again with the head within it.

use super::energy::{Energy, Vec3};
use super::relax::relax;
use super::start::{angles, on_outline, outline, within};
use super::{EVEN, Fabric, Mesh, order, spots, steps};
use crate::geometry::SideShape;
use crate::geometry::shape::Rest;
use crate::plan::{Plan, SizePlan};
use crate::units::hypot;

/// A round nearer than this to the head lies on it, mm.
const TOUCHES: f64 = 1.0;

impl Mesh {
    /// The size whose body this is on its head, whose top is where heights begin; nothing for what isn't worn.
    pub fn on_head(&self, plan: &Plan, size: &SizePlan, body: &SideShape, fabric: &Fabric) -> Option<Self> {
        let worn = body.worn.as_ref()?;
        let (own, on) = (outline(body.start, &body.rounds), outline(body.start, &worn.rounds));
        let at = |index: usize| {
            let round = self.net.heads[index].round?;
            let heads = &self.net.rounds[round];
            let share = if heads.contains(&index) { within(size, round, heads, index - heads.start) } else { 0.0 };
            Some((round + 1) as f64 + share)
        };
        let levels: Vec<f64> = (0..self.points.len()).map(|index| at(index).unwrap_or(0.0)).collect();
        // A fabric in space drifts along its axis.
        let drift = self.points.iter().zip(&levels).map(|(p, level)| p.z - on_outline(&own, *level).0[1]).sum::<f64>();
        let drift = drift / self.points.len().max(1) as f64;
        let moved = |(p, level): (&Vec3, &f64)| {
            let ([from_r, from_z], [to_r, to_z]) = (on_outline(&own, *level).0, on_outline(&on, *level).0);
            let far = hypot(p.x, p.y);
            let (mut r, mut z) = ((far + to_r - from_r).max(0.0), p.z - drift + to_z - from_z);
            let (outside, way) = worn.head.outside([r, z]);
            // Where its round lies on the head, so does the stitch: a head smooths what stands up by itself.
            if outside < 0.0 || worn.head.outside([to_r, to_z]).0 < TOUCHES {
                let back = -outside / (way[0] * way[0] + way[1] * way[1]).max(1e-9);
                (r, z) = (r + way[0] * back, z + way[1] * back);
            }
            let out = if far > 1e-9 { r / far } else { 0.0 };
            Vec3::new(p.x * out, p.y * out, z)
        };
        let mut points = self.points.iter().zip(&levels).map(moved).collect();
        if self.net.heads.len() > 3 && !self.too_large {
            let rest = Rest::on_a_head(plan, size);
            let own = self.net.rounds.get(worn.edge).cloned().unwrap_or_default();
            let edge: Vec<(usize, f64)> = own.map(|at| (at, on_outline(&on, levels[at]).0[1])).collect();
            let energy = Energy::of(&self.net, &rest, body, fabric, false).drawn_on(&self.net, worn.head, &edge);
            let order = order::dissect(&spots(&self.net, &angles(&self.net)));
            relax(&energy, &self.net, &mut points, &order, self.net.width(), (steps(&self.net), EVEN.0));
        }
        Some(Self { net: self.net.clone(), points, ..*self })
    }
}
