//! The one test binary: behaviour through the public interface, one file a subject.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

mod architecture;
mod chart_data;
mod chart_reader;
mod charts;
mod commands;
mod faces;
mod handouts;
mod language;
mod learning;
mod lesson_shipped;
mod lesson_together;
mod lesson_tools;
mod lesson_wrong;
mod page;
mod pdf;
mod pdf_booklet;
mod pdf_fields;
mod pdf_file;
mod pdf_reader;
mod pdf_sample;
mod pdf_tags;
mod pdf_tree;
mod plan;
mod printed;
mod quantity_coin;
mod quantity_read;
mod quantity_time;
mod quantity_units;
mod readme;
mod tagged;
mod thin_paint;
mod weighing;
mod weighings;
