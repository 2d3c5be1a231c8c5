//! The tests of the whole, in one binary: it is linked once. `tests/README.md` says what each file holds.

mod common;

mod corners;

mod fabric;

mod scenes;

mod checkers;

mod any_design;

mod as_written;

mod author;

mod bad_wishes;

mod by_kind;

mod cases;

mod chart;

mod colours;
mod commands;
mod cures;

mod examples;

mod folds;

mod fuzz;

mod guide;

mod laws;

mod mesh;

mod notation;

mod multiples;

mod notation_fuzz;

mod outside_counts;

mod one_size;
mod own_stitches;
mod own_words;
mod pages;
mod per_size;

mod photo;
mod piece;
mod piece_seen;

mod printed;

mod published;

mod reference;
mod round_trip;

mod schematic;

mod shape;
mod shaped_patterns;

mod shown;

mod silhouettes;

mod solver_made_well;

mod solver_properties;

mod solver_refusals;

mod solver_samples;

mod special;

mod supply;

mod symbols;

mod sizes_of_work;

mod texts;
mod textures;
mod together;

mod trust;

mod tubes;

mod working;
mod worn;

mod writers;
