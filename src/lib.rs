//! puddlebook: PDF teaching workbooks for acrylic paint pouring.
//!
//! One direction of flow, each step a plain value:
//!
//! ```text
//! lesson file -> Lesson -> Plan -> Document -> Pages -> PDF bytes
//! ```

pub mod chart;
pub mod cli;
pub mod handout;
pub mod ink;
pub mod lesson;
pub mod page;
pub mod pdf;
pub mod plan;
pub mod quantity;
