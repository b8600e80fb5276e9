//! The answers, as texts of the lesson file: it is the readers of that file who judge them.

use super::ask::Complaint;
use super::offers::Offers;
use super::questions::offered_canvas;
use super::reading::{board, shares};
use crate::lesson::{Language, Paper};
use crate::quantity::UnitSystem;

/// All answers so far; what has not been asked holds what is offered.
#[derive(Debug, Clone)]
pub(super) struct Answers {
    pub(super) sheets: Sheets,
    pub(super) heading: Heading,
    pub(super) people: People,
    /// In the order in which they were named; never empty.
    pub(super) canvases: Vec<CanvasAnswer>,
    /// Items and amounts.
    pub(super) stock: Vec<(String, String)>,
    pub(super) jars: Vec<JarAnswer>,
}

impl Answers {
    /// What is offered to somebody who only presses Enter.
    pub(super) fn offered(sheets: Sheets, offers: &Offers) -> Result<Self, Complaint> {
        let nothing = || Complaint::new("nothing is offered in this language", "choose another");
        let technique = offers.techniques.first().ok_or_else(nothing)?;
        let consistency = offers.consistencies.first().ok_or_else(nothing)?;
        let palette = offers.palettes.first().ok_or_else(nothing)?;
        let layer = LayerAnswer { name: offers.layer.clone(), shares: shares(&palette.parts)? };
        let canvas = CanvasAnswer {
            board: board(offered_canvas(sheets.units), &offers.outlines)?,
            technique: technique.name.clone(),
            consistency: consistency.name.clone(),
            palette: PaletteAnswer { name: palette.name.clone(), layers: vec![layer] },
        };
        Ok(Self {
            sheets,
            heading: Heading { title: offers.title.clone(), ..Heading::default() },
            people: People {
                students: Students::Count("8".to_owned()),
                demonstrations: "1".to_owned(),
                spares: "1".to_owned(),
                youngest: String::new(),
            },
            canvases: vec![canvas],
            stock: Vec::new(),
            jars: Vec::new(),
        })
    }
}

/// How the handouts are written.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Sheets {
    pub(super) language: Language,
    pub(super) units: UnitSystem,
    pub(super) paper: Paper,
}

/// What stands above it all; empty where nothing is said.
#[derive(Debug, Clone, Default)]
pub(super) struct Heading {
    pub(super) title: String,
    pub(super) teacher: String,
    pub(super) place: String,
    pub(super) date: String,
}

/// Who comes.
#[derive(Debug, Clone)]
pub(super) struct People {
    pub(super) students: Students,
    pub(super) demonstrations: String,
    pub(super) spares: String,
    /// Empty where all are adults.
    pub(super) youngest: String,
}

/// A number, or first names.
#[derive(Debug, Clone)]
pub(super) enum Students {
    Count(String),
    Named(Vec<String>),
}

/// One kind of canvas and how it is poured.
#[derive(Debug, Clone)]
pub(super) struct CanvasAnswer {
    pub(super) board: Board,
    pub(super) technique: String,
    pub(super) consistency: String,
    pub(super) palette: PaletteAnswer,
}

/// A canvas before anything is on it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Board {
    pub(super) name: String,
    /// `rectangle`, `round`, `oval` or `polygon`.
    pub(super) shape: &'static str,
    /// Keys of the lesson file and what they say.
    pub(super) sizes: Vec<(&'static str, String)>,
    pub(super) depth: String,
    /// `painted` or `bare`.
    pub(super) edge: &'static str,
    pub(super) each: String,
}

/// Colours for each layer of a technique.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct PaletteAnswer {
    pub(super) name: String,
    pub(super) layers: Vec<LayerAnswer>,
}

/// The colours of one layer.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct LayerAnswer {
    pub(super) name: String,
    pub(super) shares: Shares,
}

/// Colours and their shares.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Shares {
    /// Colours and texts such as `40 %` or `the rest`.
    pub(super) colours: Vec<(String, String)>,
    /// The parts that were said, as `2 : 1 : 1`; empty where none were.
    pub(super) parts: String,
}

/// Mixed paint from before.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct JarAnswer {
    pub(super) colour: String,
    pub(super) mix: String,
    pub(super) amount: String,
    pub(super) mixed: String,
}
