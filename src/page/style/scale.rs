use crate::handout::Edition;

/// Mean width of a character of English running text in the regular face, in em;
/// counted over a paragraph of ordinary words and spaces.
const MEAN_CHARACTER: f32 = 0.439;

/// A type size with the distance of its baselines, in points.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Size {
    pub size: f32,
    pub leading: f32,
}

impl Size {
    const fn new(size: f32, leading: f32) -> Self {
        Self { size, leading }
    }

    /// Mean width of a character of running text.
    pub fn character(self) -> f32 {
        self.size * MEAN_CHARACTER
    }
}

/// The type scale. Standard: 8.5 pt to 28 pt, neighbours about 1.28 apart, with
/// one step between for tables and notes. Large print: nothing below 16 pt, so
/// the steps are about 1.19; its lines are shorter in characters and stand closer, at 4/3.
#[derive(Debug, Clone, PartialEq)]
pub struct Type {
    /// Small print, header and footer, table headings.
    pub small: Size,
    /// Tables, captions, notes in the margin.
    pub note: Size,
    pub body: Size,
    /// Headings of level 2.
    pub large: Size,
    /// Titles of sheets and cards, readings on cards.
    pub title: Size,
    /// Chapter headings.
    pub chapter: Size,
    /// The title page and numbers that decide.
    pub display: Size,
}

impl Type {
    pub(super) const fn of(edition: Edition) -> Self {
        match edition {
            Edition::Standard => Self {
                small: Size::new(8.5, 11.25),
                note: Size::new(9.5, 12.75),
                body: Size::new(10.5, 15.0),
                large: Size::new(13.5, 18.0),
                title: Size::new(17.0, 22.5),
                chapter: Size::new(22.0, 27.0),
                display: Size::new(28.0, 34.0),
            },
            Edition::LargePrint => Self {
                small: Size::new(16.0, 19.0),
                note: Size::new(16.0, 20.0),
                body: Size::new(18.0, 24.0),
                large: Size::new(21.0, 27.0),
                title: Size::new(25.0, 31.0),
                chapter: Size::new(30.0, 36.0),
                display: Size::new(36.0, 43.0),
            },
        }
    }
}
