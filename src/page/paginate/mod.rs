//! Strips become pages.
//!
//! Stages: `plan` (which strips make a page), `place` (where each stands on it),
//! `press` (marks, links and outline with their final coordinates). In: strips in
//! order. Out: pages without header and footer. Must not know: blocks.

mod place;
mod plan;
mod press;
mod track;

pub(super) use place::{Placed, place};
pub(super) use plan::plan;
pub(super) use press::{Numbers, press};
