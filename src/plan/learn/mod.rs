//! What weighed cups teach: films and spreads for the next plan.
//!
//! In: classes whose cups were weighed. Out: [`Learned`], or the rows that look like ounces
//! typed as grams. The stages, each in its file, in the order in which they use each other:
//!
//! ```text
//! doubt                          rows to look at again
//! reading -> cups -> layers      what each layer of each canvas took, and how surely
//! effects -> spread              how much of that is the class, how much the hand
//! mean -> shrink -> film         what to plan with from now on
//! ```
//!
//! Masses, areas and densities are those of the plan. This room must not know how a weighing
//! was written down or how a film is printed.

mod cups;
mod doubt;
pub mod effects;
mod film;
mod layers;
pub mod mean;
mod model;
pub mod reading;
pub mod shrink;
mod spread;

pub use model::*;

use crate::lesson::WeighedClass;

/// Learns from the cups of all classes together.
///
/// # Errors
///
/// The rows, in their order, whose full cup is about 28 times lighter or heavier than what was
/// planned for it, unless the row says that it was checked.
pub fn learn(classes: &[WeighedClass]) -> Result<Learned, Vec<Doubt>> {
    let doubts: Vec<Doubt> = classes.iter().flat_map(doubt::doubts).collect();
    if !doubts.is_empty() {
        return Err(doubts);
    }
    let layers::Weighed { layers, left_out } = layers::weighed(classes);
    let planned = spread::planned(classes);
    let spread = spread::spread(&layers, planned);
    let films = film::films(&layers, planned, &spread);
    Ok(Learned { classes: classes.iter().map(cups::class).collect(), films, spread, left_out })
}
