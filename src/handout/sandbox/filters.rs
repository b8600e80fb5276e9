//! The filters that templates may name, each with a counter of what it gets and gives.

use super::meter::{made, size, spend};
use super::rules::FILTERS;
use std::collections::HashMap;
use std::sync::Arc;
use tera::{Filter, Tera, Value};

/// A filter of the engine that is counted.
struct Counted {
    filter: Arc<dyn Filter>,
    /// What it gives may be as large as what it gets times its arguments.
    multiplies: bool,
}

impl Filter for Counted {
    fn filter(&self, value: &Value, arguments: &HashMap<String, Value>) -> tera::Result<Value> {
        let given = arguments.values().map(size).sum::<u64>();
        let value_size = size(value);
        spend(match self.multiplies {
            true => value_size.saturating_mul(1 + given),
            false => value_size + given,
        })?;
        let filtered = self.filter.filter(value, arguments)?;
        made(size(&filtered));
        Ok(filtered)
    }

    fn is_safe(&self) -> bool {
        self.filter.is_safe()
    }
}

/// Leaves the filters that templates may name, and counts each.
pub(super) fn furnish(tera: &mut Tera) {
    tera.filters.retain(|name, _| FILTERS.contains(&name.as_str()));
    for (name, filter) in &mut tera.filters {
        let multiplies = name == "join";
        *filter = Arc::new(Counted { filter: Arc::clone(filter), multiplies });
    }
}
