mod charts;
mod faces;
mod pdf;
mod pdf_reader;
mod pdf_sample;
mod pdf_tags;
