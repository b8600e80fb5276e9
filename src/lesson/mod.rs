//! The lesson file: read, checked, resolved.
//!
//! In: a lesson file and the data files that it names, or any text in their place.
//! Out: a [`Lesson`] in which no invalid value can exist, or [`Faults`]: every problem
//! at once, each with its place. This room knows nothing of the sums of the trade.
//!
//! Text grows to a tree of nodes that know where they stand (`grow`), the files are
//! looked over (`survey`) and laid over each other (`merge`), nodes become the raw types
//! that say which keys there are (`decode`, `field`, `raw`), and those are checked
//! (`check`). Problems are values until `words` puts them into words and `render` shows
//! the line. Weighings (`weighings`) are read in the same way, and so is the lesson that they
//! name. What could not be read (`unseen`) hides nothing else and blames nothing.

mod catalogue;
mod check;
mod decode;
mod defaults;
mod desk;
mod edit;
mod faults;
mod field;
mod grow;
mod keys;
mod legible;
mod level;
mod limits;
mod load;
mod merge;
mod model;
mod notice;
mod origins;
mod problem;
mod raw;
mod render;
mod schema;
mod slip;
mod source;
mod survey;
mod tree;
mod unseen;
mod weighings;
mod words;

pub use edit::{Unplaced, edit, form_at};
pub use faults::{Faults, Said, Style};
pub use keys::{Found, KeyHelp, Need, explain, keys};
pub use load::{read, read_with};
pub use model::*;
pub use notice::{Notice, Weight, render_notices};
pub use origins::Origins;
pub use problem::{Form, PartOfCanvas, Problem, ProblemKind, Sold, Sort};
pub use schema::{FileKind, schema};
pub use slip::YamlSlip;
pub(crate) use source::shown;
pub use source::{FileId, Place, SourceFile, Sources, Unread, from_disk};
pub use weighings::{
    COLUMNS as WEIGHING_COLUMNS, Weighings, harmless, read_weighings, read_weighings_with,
};
