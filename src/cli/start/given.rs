//! The options of `start`: every question has one.

use crate::lesson::{Language, Paper};
use crate::quantity::UnitSystem;
use clap::Args;
use clap::ValueEnum;
use clap::builder::PossibleValue;
use std::path::PathBuf;

/// Answers that are given on the command line.
#[derive(Debug, Clone, Default, Args)]
pub struct Given {
    #[command(flatten)]
    pub sheets: GivenSheets,
    #[command(flatten)]
    pub heading: GivenHeading,
    #[command(flatten)]
    pub people: GivenPeople,
    #[command(flatten)]
    pub canvases: GivenCanvases,
    #[command(flatten)]
    pub cupboard: GivenCupboard,
}

/// How the handouts are written.
#[derive(Debug, Clone, Default, Args)]
pub struct GivenSheets {
    /// Language of the handouts
    #[arg(long, value_enum)]
    pub language: Option<Language>,
    /// Inches and fluid ounces first, or centimetres and millilitres
    #[arg(long, value_enum)]
    pub units: Option<UnitSystem>,
    /// Paper to print on
    #[arg(long, value_enum)]
    pub paper: Option<Paper>,
}

/// Who, where and when.
#[derive(Debug, Clone, Default, Args)]
pub struct GivenHeading {
    /// What the class is called
    #[arg(long, value_name = "TEXT")]
    pub title: Option<String>,
    /// Who gives it
    #[arg(long, value_name = "NAME")]
    pub teacher: Option<String>,
    /// Where it is given
    #[arg(long, value_name = "TEXT")]
    pub place: Option<String>,
    /// The day, as 2026-03-14
    #[arg(long, value_name = "DATE")]
    pub date: Option<String>,
}

/// Who comes.
#[derive(Debug, Clone, Default, Args)]
pub struct GivenPeople {
    /// How many people come, or their first names: "Ana, Bo, Cem"
    #[arg(long, value_name = "NUMBER")]
    pub people: Option<String>,
    /// The age of the youngest; without it, all are adults
    #[arg(long, value_name = "AGE")]
    pub youngest: Option<String>,
    /// Sets that you pour in front of the class (offered: 1)
    #[arg(long, value_name = "NUMBER")]
    pub demonstrations: Option<String>,
    /// Sets kept ready for mishaps (offered: 1)
    #[arg(long, value_name = "NUMBER")]
    pub spares: Option<String>,
}

/// What is painted. Where canvases are of several kinds, the options behind `--canvas` are taken
/// in the same order, the last one for all that follow.
#[derive(Debug, Clone, Default, Args)]
pub struct GivenCanvases {
    /// A kind of canvas: "square 10 x 10 in, 1/2 in deep, 2 each"; once for each kind
    #[arg(long, value_name = "CANVAS")]
    pub canvas: Vec<String>,
    /// How it is poured; once for each kind of canvas
    #[arg(long, value_name = "NAME")]
    pub technique: Vec<String>,
    /// How the paint runs: thin, medium, thick; once for each kind of canvas
    #[arg(long, value_name = "NAME")]
    pub consistency: Vec<String>,
    /// Its colours: "blue 2, sand 1, white 1", or an offered palette; once for each kind
    #[arg(long, value_name = "COLOURS")]
    pub colours: Vec<String>,
    /// The colour of the base, where a technique has one; once for each kind of canvas
    #[arg(long, value_name = "COLOURS")]
    pub base: Vec<String>,
}

/// What is there already.
#[derive(Debug, Clone, Default, Args)]
pub struct GivenCupboard {
    /// Something in the cupboard: "pouring medium 16 fl oz"; as often as you like
    #[arg(long, value_name = "ITEM")]
    pub cupboard: Vec<String>,
    /// Mixed paint from before: "white, medium, 300 g, 2026-03-01"; as often as you like
    #[arg(long, value_name = "JAR")]
    pub jar: Vec<String>,
}

/// Arguments of `start`.
#[derive(Debug, Args)]
pub(in crate::cli) struct Start {
    /// The lesson file to write; asked when not given
    #[arg(value_name = "LESSON")]
    pub(super) lesson: Option<PathBuf>,
    #[command(flatten)]
    pub(super) given: Given,
    /// Ask nothing: what is not given takes the offered answer
    #[arg(long)]
    pub(super) no_questions: bool,
    /// Write over a file that is there
    #[arg(long)]
    pub(super) replace: bool,
}

impl ValueEnum for Language {
    fn value_variants<'a>() -> &'a [Self] {
        &Self::ALL
    }
    fn to_possible_value(&self) -> Option<PossibleValue> {
        Some(PossibleValue::new(self.tag()))
    }
}
