//! The front door.

pub mod text;
