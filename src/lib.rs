//! Roundelay: crochet worked in the round, from a design file to a printed pattern.
//!
//! The way of the data, one folder a stage; a stage knows only the stages before it:
//!
//! | stage | module | takes → gives |
//! | --- | --- | --- |
//! | 1 design | [`design`] | YAML text → `Design` |
//! | 2 plan | [`plan`] | `Design` → `Plan`: rounds and stitches, whole numbers only |
//! | 3 geometry | [`geometry`] | `Plan` → where things lie, in millimetres, no ink |
//! | 4 drawing | [`drawing`] | geometry → `Drawing`: paths, texts, placed symbols, groups |
//! | 5 page | [`page`] | drawings → pages at true size |
//! | 6 file | [`file`] | pages → named bytes |
//!
//! Beside the line stand [`units`], [`report`], [`stitch`], [`font`], [`notation`] (written rounds) and [`words`]
//! (terms and languages).
//!
//! The library never prints, never touches the disk (but for `file::save`), and never panics on input.

#[cfg(test)]
extern crate self as roundelay;

#[cfg(test)]
#[path = "../tests/all/common.rs"]
pub(crate) mod common;

pub mod units;

pub mod report;

pub mod craft;

pub mod words;

pub mod font;

pub mod notation;

pub mod design;

pub mod plan;

pub mod geometry;
pub mod limits;

pub mod pattern;

pub mod drawing;

pub mod story;

pub mod page;

pub mod file;

pub mod publish;
