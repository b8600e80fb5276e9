use crate::quantity::{Length, UnitSystem};

/// A rectangular canvas as shops have it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct StockSize {
    pub width: Length,
    pub height: Length,
    /// Of the edge, zero for a flat panel; no more than the canvas is wide.
    pub depth: Length,
}

/// Sizes for the table of paint, in the order of the file; a list may be empty.
#[derive(Debug, Clone, PartialEq)]
pub struct StockSizes {
    pub us: Vec<StockSize>,
    pub metric: Vec<StockSize>,
}

impl StockSizes {
    /// Those that are sold where people measure so.
    pub fn of(&self, units: UnitSystem) -> &[StockSize] {
        match units {
            UnitSystem::Us => &self.us,
            UnitSystem::Metric => &self.metric,
        }
    }
}
