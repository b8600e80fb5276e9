//! How a film of paint flows: why thin paint goes further, for teaching.
//!
//! In: a fluid, a film and a time. Out: the film that is left of it on a spinning board
//! ([`SpunFilm`]) or a tilted one ([`TiltedFilm`]), and how far a blob has spread on a level
//! one ([`Blob`]). The three formulas are old and tested, but of liquids simpler than paint:
//! Newtonian (as stiff when stirred as at rest), without surface tension, not drying, on a
//! surface that is clean, even and wet. So they explain, they compare, and they order nothing:
//! no other part of the engine uses this room. [`Demonstration`] is what the guide shows of
//! it, [`SpreadTarget`] what is printed to pour on.

mod blob;
mod demonstration;
mod fluid;
mod spun;
mod target;
mod tilted;

pub use blob::{Blob, fluid_that_reaches, volume_that_reaches};
pub use demonstration::Demonstration;
pub use fluid::{Fluid, water_viscosity};
pub use spun::SpunFilm;
pub use target::{Band, Ring, SpreadTarget};
pub use tilted::{Tilt, TiltedFilm};
