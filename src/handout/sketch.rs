//! Drawings of the trade, as data: what is drawn, and the words at its parts.

/// A schematic drawing. Sizes in it are believable and not to scale.
#[derive(Debug, Clone, PartialEq)]
pub enum Sketch {
    Film(FilmSketch),
    SetUp(SetUpSketch),
    /// The ribbon test: thin, medium, thick.
    Ribbons([Part; 3]),
    /// Straight pour, flip cup, ring pour, swipe, blown pour, spun pour.
    Pours([Part; 6]),
    Days(DaysSketch),
    /// Wash water: in the evening, in the morning, its water, its sludge.
    WashWater([Part; 4]),
    /// Crazing, pinholes, craters, a puddle, drips, a bare rim.
    Faults([Part; 6]),
}

/// Something drawn by itself.
#[derive(Debug, Clone, PartialEq)]
pub struct Part {
    pub name: String,
    /// Quiet words below the name; may be empty.
    pub words: String,
}

/// A film of paint in section as it dries: wet, with a skin, dry.
#[derive(Debug, Clone, PartialEq)]
pub struct FilmSketch {
    pub stages: [Part; 3],
    /// What leaves it.
    pub water: String,
}

/// A canvas on its feet, from the side: before it is poured on, and while it dries.
#[derive(Debug, Clone, PartialEq)]
pub struct SetUpSketch {
    pub before: SetUpBefore,
    pub drying: SetUpDrying,
}

/// Words at an empty canvas.
#[derive(Debug, Clone, PartialEq)]
pub struct SetUpBefore {
    pub name: String,
    pub level: String,
    pub canvas: String,
    pub feet: String,
    pub tray: String,
}

/// Words at a canvas with paint on it.
#[derive(Debug, Clone, PartialEq)]
pub struct SetUpDrying {
    pub name: String,
    pub cover: String,
    pub film: String,
    pub drip: String,
    /// Between the cover and what it stands on.
    pub gap: String,
}

/// The days after a pour on a line, under a film that dries from the top.
#[derive(Debug, Clone, PartialEq)]
pub struct DaysSketch {
    /// Written in the film.
    pub dry: String,
    pub soft: String,
    /// By time; days between them are left out.
    pub days: Vec<DrawnDay>,
}

/// One day of the line.
#[derive(Debug, Clone, PartialEq)]
pub struct DrawnDay {
    /// Since the pour.
    pub day: u32,
    pub name: String,
    /// The date; empty in a lesson without one.
    pub date: String,
    /// What to do.
    pub words: String,
}
