//! Roundelay: crochet worked in the round, from a design file to a printed pattern.
//!
//! The way of the data, one folder a stage; a stage knows only the stages above it in this table:
//!
//! | stage | module | takes → gives |
//! | --- | --- | --- |
//! | 1 design | [`design`] | YAML text → `Design` |
//! | 2 plan | [`plan`] | `Design` → `Plan`: rounds and stitches, whole numbers only |
//! | 3 geometry | [`geometry`] | `Plan` → where things lie, in millimetres, no ink |
//! | the front door | [`pattern`] | text → `Pattern`: plan, shapes and everything to be said of them |
//! | 4 story | [`story`] | `Pattern` → what it says: sections of blocks, row tables |
//! | 4 drawing | [`drawing`] | geometry and row tables → `Drawing`: paths, texts, placed symbols, groups |
//! | 5 page | [`page`] | story and drawings → pages at true size |
//! | 6 file | [`file`] | pages, drawings and story → bytes |
//! | products | [`publish`] | `Pattern` → named files, single pictures, listings: one row each |
//!
//! Below all of them stand [`units`], [`report`], [`craft`] (stitch, operation, round), [`words`] (languages), [`font`],
//! [`photo`] (photographs) and [`notation`] (written rounds).
//!
//! The library never prints, never touches the disk (but for `file::save`), and never panics on input.
//!
//! From the text of a design to a chart as SVG:
//!
//! ```
//! use roundelay::drawing::{ChartOptions, chart};
//! use roundelay::file::svg;
//! use roundelay::pattern::Pattern;
//!
//! let design = "
//! title: Pebble mat
//! kind: mat
//! swatch: {stitch: sc, stitches: 20, rounds: 22, width: 10, height: 10}
//! sizes: {small: {across: 9}}
//! work: spiral
//! parts:
//!   - mat: {start: ring, shape: flat}
//! ";
//! let pattern = Pattern::read(design.as_bytes()).expect("a sound design");
//! assert!(pattern.report.warnings().is_empty());
//! let drawing = chart(&pattern.plan, 0, &ChartOptions::default());
//! let picture = svg::write(&drawing);
//! assert!(picture.contains("<title>Round 1</title>"));
//! ```

#[cfg(test)]
extern crate self as roundelay;

#[cfg(test)]
#[path = "../tests/all/common.rs"]
pub(crate) mod common;

pub mod sight;
pub mod units;

pub mod report;

pub mod photo;

pub mod craft;

pub mod words;

pub mod font;

pub mod notation;

pub mod design;

pub mod plan;

pub mod geometry;
pub mod limits;

pub mod pattern;

pub mod story;

pub mod drawing;

pub mod page;

pub mod file;

pub mod publish;
