//! puddlebook: from a lesson file to the handouts of an acrylic pouring class.
//!
//! One direction of flow, each step a plain value:
//!
//! ```text
//! lesson file -> Lesson -> Plan -> Document -> Pages -> PDF bytes
//! ```
//!
//! The whole run is five calls:
//!
//! ```
//! use puddlebook::{handout, ink, lesson, page, pdf, plan};
//! use std::{collections::BTreeMap, path::Path};
//!
//! # fn main() -> Result<(), Box<dyn std::error::Error>> {
//! // load: every problem of the file at once, or a lesson without any
//! let lesson = lesson::read(Path::new("lessons/boathouse-evening.yaml"))
//!     .map_err(|faults| faults.render(lesson::Style::Plain))?;
//! // plan: areas, amounts, packs, cost
//! let plan = plan::plan(lesson)?;
//! // write up: words, tables and pictures, still without a place on paper
//! let templates = handout::Templates::new(plan.lesson.print.language, &BTreeMap::new())?;
//! let order = handout::Desk::new(&plan, &templates)?.write(handout::Sheet::Order)?;
//! // lay out: every mark in its place
//! let faces = ink::Faces::new();
//! let pages = page::lay_out(&order, &faces);
//! // export
//! let bytes = pdf::write(&pages, &faces)?;
//! assert!(bytes.starts_with(b"%PDF-"));
//! # Ok(())
//! # }
//! ```
//!
//! Two rooms are vocabulary and know no stage: [`quantity`] (amounts, money, how they are
//! read and shown) and [`ink`] (shapes, faces, shaped words). [`chart`] draws pictures for
//! [`page`]; [`preview`] shows the outcome in a browser, [`cli`] is the command line. DEVELOPERS.md says where to change what.

pub mod chart;
pub mod cli;
mod crew;
pub mod handout;
pub mod ink;
pub mod lesson;
pub mod page;
pub mod pdf;
pub mod plan;
pub mod preview;
pub mod quantity;
mod unfinished;
