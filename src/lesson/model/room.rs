use crate::quantity::{Area, Length, Volume};

/// Tables, and where canvases dry.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Room {
    /// The size of one table.
    pub table: Option<TableSize>,
    /// All that is level and free to dry on.
    pub level_surface: Option<Area>,
    /// Between two drying canvases.
    pub gap: Length,
    /// Days until a canvas is dry to the touch.
    pub drying_days: u32,
}

/// A table seen from above.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct TableSize {
    pub length: Length,
    pub width: Length,
}

/// Water for washing up, after scraping and wiping.
#[derive(Debug, Clone, PartialEq)]
pub struct Washing {
    /// For the jug, after each batch.
    pub after_each_batch: Volume,
    /// For one piece of a supply that comes back; supplies that are not named need none.
    pub each_piece: Vec<(String, Volume)>,
    /// What one bucket is filled with; more than nothing.
    pub bucket: Volume,
}
