//! A text as a lesson beside the data files of the demo lessons: it is read, and what is a
//! lesson is planned; what is none is answered in words.
#![no_main]

use libfuzzer_sys::fuzz_target;
use puddlebook::lesson::{Style, Unread, read_with};
use puddlebook::plan::plan;
use std::path::Path;

fuzz_target!(|bytes: &[u8]| {
    let load = |path: &Path| match path.to_str() {
        Some("lesson.yaml") => Ok(bytes.to_vec()),
        Some("data/colours.yaml") => Ok(include_bytes!("../../../lessons/data/colours.yaml").to_vec()),
        Some("data/shop.yaml") => Ok(include_bytes!("../../../lessons/data/shop.yaml").to_vec()),
        Some("data/stock.yaml") => Ok(include_bytes!("../../../lessons/data/stock.yaml").to_vec()),
        // A lesson that names itself is met as a data file.
        Some("data/own.yaml") => Ok(bytes.to_vec()),
        _ => Err(Unread::NotFound),
    };
    match read_with(Path::new("lesson.yaml"), &load) {
        Ok(lesson) => {
            if let Err(reason) = plan(lesson) {
                assert!(!reason.to_string().is_empty());
            }
        }
        Err(faults) => {
            assert!(!faults.problems().is_empty());
            assert!(!faults.render(Style::Coloured).is_empty());
        }
    }
});
