//! The questions, in the order in which they are asked.

mod canvases;
mod colours;
mod cupboard;
mod heading;
mod people;
mod sheets;
mod techniques;

pub(super) use canvases::{canvases, offered as offered_canvas};
pub(super) use colours::colours;
pub(super) use cupboard::cupboard;
pub(super) use heading::heading;
pub(super) use people::people;
pub(super) use sheets::sheets;
pub(super) use techniques::techniques;

/// What was given for one of several canvases: the last one holds for all that follow.
fn nth(given: &[String], at: usize) -> Option<&str> {
    given.get(at).or(given.last()).map(String::as_str)
}
