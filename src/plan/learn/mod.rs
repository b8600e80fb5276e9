//! What weighed cups teach: films and spreads for the next plan.
//!
//! In: classes whose cups were weighed. Out: [`Learned`].

mod model;

pub use model::*;
