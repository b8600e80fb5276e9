//! What each handout says.
//!
//! In: a plan and templates. Out: documents, that is words, tables and pictures
//! without a coordinate. Numbers come from the plan and are formatted in
//! `quantity::show`; words come from the templates. This room knows nothing of
//! fonts, pages and PDF.

mod context;
mod cups;
mod document;
mod labels;
mod markdown;
mod measured;
mod order_csv;
mod paper_tools;
mod pictures;
mod sandbox;
mod sheet;
mod sketch;
mod template_fault;
mod templates;
mod used_csv;
mod weigh_csv;
mod words;
mod worksheets;

pub use context::{Context, CostText, FeesText, ReserveLineText};
pub use document::*;
pub use labels::CupLabel;
pub use measured::measured;
pub use order_csv::order_csv;
pub use paper_tools::*;
pub use sheet::{Desk, Sheet, course_order};
pub use sketch::*;
pub use template_fault::{Excerpt, TemplateFault};
pub use templates::{Templates, words_schema};
pub use used_csv::used_csv;
pub use weigh_csv::weigh_csv;
pub use words::Words;
