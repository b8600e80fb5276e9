//! What can be asked for.

use super::start::given::Start;
use crate::handout::Sheet;
use crate::lesson::{self, Edition, Lesson, Paper};
use crate::quantity::{Date, UnitSystem};
use clap::builder::PossibleValue;
use clap::{Args, Parser, Subcommand, ValueEnum};
use std::path::PathBuf;

/// From a lesson file to a supply order, mixing cards, worksheets and a beginner’s
/// guide for acrylic paint pouring.
#[derive(Debug, Parser)]
#[command(version, about, max_term_width = 90, after_help = EXIT_CODES)]
pub(super) struct Arguments {
    #[command(subcommand)]
    pub(super) command: Command,
}

const EXIT_CODES: &str = "Exit codes: 0 done, 1 a lesson, weighings or a template are wrong, \
                          2 wrong use, 3 could not read or write.";

const STARTING: &str = "\
Every question has an option, so that nothing need be asked:

  puddlebook start my-class.yaml --no-questions --people 8 \\
      --canvas \"square 10 x 10 in, 1/2 in deep, 2 each\" --technique \"straight pour\" \\
      --colours \"harbour blue 2, sand 1, white 1\" --cupboard \"pouring medium 16 fl oz\"";

const LEARNING: &str = "\
Writes films.yaml (name it under \"use:\" in a lesson, and its plan is made of your own films), \
measured.pdf (planned against weighed) and cups.csv (what was used of each cup).

A file of weighings is YAML for one class, or a table in CSV for any number of them. \"make\" \
writes a table to fill in, weigh.csv, beside the sheet to weigh on.

Example: puddlebook learn lessons/weighed/*.yaml lessons/weighed/*.csv --out learned";

/// The commands.
#[derive(Debug, Subcommand)]
pub(super) enum Command {
    /// Begin a lesson: a few questions, and a lesson file that is right
    #[command(after_help = STARTING)]
    Start(Box<Start>),
    /// Make the handouts of one or more lessons
    #[command(
        after_help = "Example: puddlebook make lessons/boathouse-evening.yaml --only order,cards"
    )]
    Make(Make),
    /// Show the numbers of a lesson
    #[command(after_help = "Example: puddlebook plan lessons/boathouse-evening.yaml --json")]
    Plan(Plan),
    /// Order for one lesson, or for the lessons of a course together
    #[command(
        after_help = "Example: puddlebook order lessons/*-evening.yaml --delivery 2026-03-10"
    )]
    Order(Order),
    /// Learn from weighed cups what the next plan is to use
    #[command(after_help = LEARNING)]
    Learn(Learn),
    /// Say whether lessons are right, and what is wrong with them
    #[command(after_help = "Example: puddlebook check lessons/*.yaml")]
    Check(Check),
}

/// Arguments of `make`.
#[derive(Debug, Args)]
pub(super) struct Make {
    /// Lesson files
    #[arg(required = true, value_name = "LESSON")]
    pub(super) lessons: Vec<PathBuf>,
    /// Folder for the handouts; each lesson gets a folder of its own in it
    #[arg(long, value_name = "DIR", default_value = "handouts")]
    pub(super) out: PathBuf,
    /// Make only these handouts
    #[arg(long, value_name = "KIND,…", value_delimiter = ',')]
    pub(super) only: Vec<Sheet>,
    /// Make the guide as a booklet too: print it on both sides, turned over the short edge,
    /// fold it in the middle and staple
    #[arg(long)]
    pub(super) booklet: bool,
    #[command(flatten)]
    pub(super) print: Print,
    /// Folder with templates that replace the built-in ones of the same name
    #[arg(long, value_name = "DIR")]
    pub(super) templates: Option<PathBuf>,
}

/// Arguments of `plan`.
#[derive(Debug, Args)]
pub(super) struct Plan {
    /// Lesson file
    pub(super) lesson: PathBuf,
    /// Print every figure as JSON
    #[arg(long)]
    pub(super) json: bool,
    /// Show amounts in these units first
    #[arg(long, value_enum)]
    pub(super) units: Option<UnitSystem>,
}

/// Arguments of `order`.
#[derive(Debug, Args)]
pub(super) struct Order {
    /// Lesson files; their dates put them in order
    #[arg(required = true, value_name = "LESSON")]
    pub(super) lessons: Vec<PathBuf>,
    /// Folder for the order as PDF and CSV
    #[arg(long, value_name = "DIR", default_value = "handouts/order")]
    pub(super) out: PathBuf,
    /// Days on which something can be delivered, as 2026-03-10; without them everything is
    /// bought at once
    #[arg(long, value_name = "DATE,…", value_delimiter = ',', value_parser = date)]
    pub(super) delivery: Vec<Date>,
    /// Print every figure as JSON, and write nothing
    #[arg(long)]
    pub(super) json: bool,
    #[command(flatten)]
    pub(super) print: Print,
    /// Folder with templates that replace the built-in ones of the same name
    #[arg(long, value_name = "DIR")]
    pub(super) templates: Option<PathBuf>,
}

fn date(text: &str) -> Result<Date, String> {
    text.trim().parse().map_err(|_| "a day is written year-month-day, as 2026-03-10".to_owned())
}

/// Arguments of `learn`.
#[derive(Debug, Args)]
pub(super) struct Learn {
    /// Files of weighings; all of them are learned from together
    #[arg(required = true, value_name = "WEIGHINGS")]
    pub(super) weighings: Vec<PathBuf>,
    /// Folder for what is learned
    #[arg(long, value_name = "DIR", default_value = "learned")]
    pub(super) out: PathBuf,
    #[command(flatten)]
    pub(super) print: Print,
    /// Folder with templates that replace the built-in ones of the same name
    #[arg(long, value_name = "DIR")]
    pub(super) templates: Option<PathBuf>,
}

/// Arguments of `check`.
#[derive(Debug, Args)]
pub(super) struct Check {
    /// Lesson files
    #[arg(required = true, value_name = "LESSON")]
    pub(super) lessons: Vec<PathBuf>,
}

/// Choices that the command line makes instead of the lesson.
#[derive(Debug, Args)]
pub(super) struct Print {
    /// Paper to print on
    #[arg(long, value_enum)]
    paper: Option<Paper>,
    /// Show amounts in these units first
    #[arg(long, value_enum)]
    units: Option<UnitSystem>,
    /// Set everything in 18 point type
    #[arg(long)]
    large_print: bool,
}

impl Print {
    /// Lays the choices over those of the lesson.
    pub(super) fn apply(&self, lesson: &mut Lesson) {
        self.choose(&mut lesson.print);
    }

    /// Lays the choices over others.
    pub(super) fn choose(&self, print: &mut lesson::Print) {
        print.paper = self.paper.unwrap_or(print.paper);
        print.units = self.units.unwrap_or(print.units);
        if self.large_print {
            print.edition = Edition::LargePrint;
        }
    }
}

impl ValueEnum for Sheet {
    fn value_variants<'a>() -> &'a [Self] {
        &Self::ALL
    }
    fn to_possible_value(&self) -> Option<PossibleValue> {
        Some(PossibleValue::new(self.word()))
    }
}

impl ValueEnum for Paper {
    fn value_variants<'a>() -> &'a [Self] {
        &[Self::A4, Self::Letter]
    }
    fn to_possible_value(&self) -> Option<PossibleValue> {
        Some(PossibleValue::new(match self {
            Self::A4 => "a4",
            Self::Letter => "letter",
        }))
    }
}

impl ValueEnum for UnitSystem {
    fn value_variants<'a>() -> &'a [Self] {
        &[Self::Us, Self::Metric]
    }
    fn to_possible_value(&self) -> Option<PossibleValue> {
        Some(PossibleValue::new(match self {
            Self::Us => "us",
            Self::Metric => "metric",
        }))
    }
}
