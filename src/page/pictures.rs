//! The pictures of a pattern, each drawn at the size at which the pages show it.

use std::sync::Arc;

use crate::drawing::{ChartOptions, Drawing, KeyOptions, chart, key};
use crate::geometry::SideShape;
use crate::plan::Plan;
use crate::units::Mm;
use crate::words::{Arg, Words};

use super::{Options, Pictures, Style};

/// Room that heading, caption and running head take from a page that holds one picture.
const FURNITURE: Mm = Mm::new(34.0);

impl Pictures {
    /// Draws everything that a booklet shows of a plan. `shapes` holds the predicted shape of every size.
    pub fn draw(plan: &Plan, shapes: &[SideShape], options: &Options) -> Self {
        let words = Words::of(plan.design.language);
        let style = Style::new(&options.paper, options.print, options.large);
        let (width, height) = (Mm::new(style.width()), Mm::new(style.height()));
        let middle = plan.sizes.len() / 2;
        let charts = (0..plan.sizes.len()).map(|size| {
            let room = ChartOptions { width, height: height - FURNITURE, ..ChartOptions::default() };
            let caption = words.with("page-chart-of", &[("size", Arg::Text(&plan.sizes[size].name))]);
            (Arc::new(chart(plan, size, &room)), caption)
        });
        let charts: Vec<(Arc<Drawing>, String)> = charts.collect();
        Self {
            cover: charts.get(middle).map(|(drawing, _)| drawing.clone()),
            key: Some(Arc::new(key(plan, middle, &KeyOptions { width, ..KeyOptions::default() }))),
            charts,
            schematics: Vec::new(),
            shapes: shapes.to_vec(),
        }
    }
}
