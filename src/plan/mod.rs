//! The engine: a lesson becomes a plan.

mod model;

pub use model::*;
