//! Typesetting, judged by the positions of marks before anything is drawn.

mod cards;
mod columns;
mod contents;
mod generated;
mod geometry;
mod keeping;
mod large_print;
mod lines;
mod reading;
pub mod sample;
mod sections;
mod structure;
mod style;
mod tables;
