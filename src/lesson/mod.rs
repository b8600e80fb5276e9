//! The lesson file: read, checked, resolved.

mod model;

pub use model::*;
