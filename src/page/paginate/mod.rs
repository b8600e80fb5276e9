//! Strips become pages.
//!
//! Stages: `plan` (which strips make a page), `drift` (figures that had better stand later),
//! `place` (where each stands on it),
//! `press` (marks, links and outline with their final coordinates). In: strips in
//! order. Out: pages without header and footer. Must not know: blocks.

mod drift;
mod place;
mod plan;
mod press;
mod track;

pub(super) use drift::drift;
pub(super) use place::{Placed, place};
pub(super) use press::{Numbers, press};
