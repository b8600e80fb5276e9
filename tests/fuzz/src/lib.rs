//! What the targets share: the plan of a small lesson, and templates that are read at once.

use puddlebook::lesson::{Unread, read_with};
use puddlebook::plan::{Plan, plan};
use std::collections::BTreeMap;
use std::path::Path;
use std::sync::OnceLock;

/// A right lesson, as short as one can be.
pub const SMALL: &str = include_str!("../words/small.yaml");

/// Its plan, worked out once.
pub fn small() -> &'static Plan {
    static PLAN: OnceLock<Plan> = OnceLock::new();
    PLAN.get_or_init(|| {
        let load = |path: &Path| match path.to_str() {
            Some("small.yaml") => Ok(SMALL.as_bytes().to_vec()),
            _ => Err(Unread::NotFound),
        };
        let lesson = read_with(Path::new("small.yaml"), &load).expect("a right lesson");
        plan(lesson).expect("a lesson that can be planned")
    })
}

/// Every built-in template replaced by one without words, so that a run reads the
/// templates in question and not all of them each time.
pub fn replaced() -> BTreeMap<String, String> {
    let names = [
        "answers", "cards", "exercises", "guide-answers", "guide-cleaning", "guide-consistency",
        "guide-costs", "guide-drying", "guide-glossary", "guide-how-much", "guide-index",
        "guide-materials", "guide-measuring", "guide-mixing", "guide-pouring", "guide-safety",
        "guide-tables", "guide-techniques", "guide-thin-paint", "guide-troubleshooting", "guide",
        "lesson", "measured", "order", "tools-check", "tools-nomogram", "tools-rings", "tools",
        "weigh", "worksheet",
    ];
    names.into_iter().map(|name| (format!("{name}.md"), "x".to_owned())).collect()
}
