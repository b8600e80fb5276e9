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
#[command(version, long_version = BUILD, about, max_term_width = WIDTH, after_help = OVERVIEW)]
pub(super) struct Arguments {
    #[command(subcommand)]
    pub(super) command: Command,
}

/// Columns of a help text.
const WIDTH: usize = 80;

/// The version, and what it was built from.
const BUILD: &str = concat!(env!("CARGO_PKG_VERSION"), " (", env!("PUDDLEBOOK_BUILD"), ")");

/// The end of every help text: examples, and what the exit codes mean.
macro_rules! examples {
    ($examples:literal) => {
        concat!(
            "Examples:\n",
            $examples,
            "\n\nExit codes: 0 done, 1 a lesson, weighings or a template are wrong, 2 wrong use, \
             3 could not read or write."
        )
    };
}

const OVERVIEW: &str = examples!(
    "  puddlebook check my-class.yaml            what is wrong with it, if anything
  puddlebook make my-class.yaml             all handouts, into handouts/my-class/
  puddlebook explain canvases               what a key of a lesson means
  puddlebook help make                      more about a command"
);

const STARTING: &str = examples!(
    "  puddlebook start
  puddlebook start my-class.yaml
  puddlebook start my-class.yaml --no-questions --people 8 --technique swipe

Every question has an option, so that nothing need be asked. A canvas is said in a line, as in \
--canvas \"square 10 x 10 in, 1/2 in deep, 2 each\", and so are colours, as in \
--colours \"harbour blue 2, sand 1, white 1\"."
);

const LEARNING: &str = examples!(
    "  puddlebook learn lessons/weighed/*.yaml lessons/weighed/*.csv --out learned

Writes films.yaml (name it under \"use:\" in a lesson, and its plan is made of your own films), \
measured.pdf (planned against weighed) and cups.csv (what was used of each cup).

A file of weighings is YAML for one class, or a table in CSV for any number of them. \"make\" \
writes a table to fill in, weigh.csv, beside the sheet to weigh on."
);

const EXPLAINING: &str = examples!(
    "  puddlebook explain
  puddlebook explain class.students
  puddlebook explain bought elsewhere

A key is named by itself or with the keys above it, with dots or spaces between them, or as an \
error names its place: \"canvases > square > width\"."
);

const SCHEMAS: &str = examples!(
    "  puddlebook schema lesson
  puddlebook schema --out schema

Editors with support for YAML complete and explain keys, and mark what is wrong, where the first \
line of a file names its schema:

  # yaml-language-server: $schema=schema/lesson.json"
);

const COMPLETING: &str = examples!(
    "  puddlebook completions bash

In bash:  puddlebook completions bash > ~/.local/share/bash-completion/completions/puddlebook
In fish:  puddlebook completions fish > ~/.config/fish/completions/puddlebook.fish
In zsh:   into a folder of your $fpath, as _puddlebook"
);

const MANUALS: &str = examples!(
    "  puddlebook manual make
  puddlebook manual --out man

\"man -l man/puddlebook.1\" shows a page; in ~/.local/share/man/man1 \"man puddlebook\" finds it."
);

const PREVIEWING: &str = examples!(
    "  puddlebook preview lessons/boathouse-evening.yaml
  puddlebook preview my-class.yaml --port 8080 --no-browser

The page is served to this machine alone (127.0.0.1) and needs no internet. It shows what \
\"make\" would print, what is wrong with the lesson, and what another number of students or \
another consistency would change; a button writes the change into the file."
);

/// The commands.
#[derive(Debug, Subcommand)]
pub(super) enum Command {
    /// Begin a lesson: a few questions, and a lesson file that is right
    #[command(after_help = STARTING)]
    Start(Box<Start>),
    /// Make the handouts of one or more lessons
    #[command(after_help = examples!(
        "  puddlebook make lessons/boathouse-evening.yaml
  puddlebook make lessons/*.yaml --only order,cards --paper letter"
    ))]
    Make(Make),
    /// Show the numbers of a lesson
    #[command(after_help = examples!(
        "  puddlebook plan lessons/boathouse-evening.yaml
  puddlebook plan lessons/boathouse-evening.yaml --json"
    ))]
    Plan(Plan),
    /// Order for one lesson, or for the lessons of a course together
    #[command(after_help = examples!(
        "  puddlebook order lessons/boathouse-evening.yaml
  puddlebook order lessons/*-evening.yaml --delivery 2026-03-10"
    ))]
    Order(Order),
    /// Learn from weighed cups what the next plan is to use
    #[command(after_help = LEARNING)]
    Learn(Learn),
    /// Show the handouts in the browser, and draw them again whenever the lesson is saved
    #[command(after_help = PREVIEWING)]
    Preview(Preview),
    /// Say whether lessons are right, and what is wrong with them
    #[command(after_help = examples!("  puddlebook check lessons/*.yaml"))]
    Check(Check),
    /// Say what a key of a lesson means, with an example
    #[command(after_help = EXPLAINING)]
    Explain(Explain),
    /// Print what may stand in a file, as a JSON Schema for editors
    #[command(after_help = SCHEMAS)]
    Schema(Schema),
    /// Print completions for a shell
    #[command(after_help = COMPLETING)]
    Completions(Completions),
    /// Print the manual as a man page, or write all of its pages
    #[command(after_help = MANUALS)]
    Manual(Manual),
}

/// Arguments of `explain`.
#[derive(Debug, Args)]
pub(super) struct Explain {
    /// Key of a lesson or of weighings; without one all keys are listed
    pub(super) key: Vec<String>,
}

/// Arguments of `schema`.
#[derive(Debug, Args)]
pub(super) struct Schema {
    /// Kind of file; without one they are listed
    #[arg(value_enum)]
    pub(super) kind: Option<SchemaKind>,
    /// Folder to write into instead; without a kind all of them
    #[arg(long, value_name = "DIR")]
    pub(super) out: Option<PathBuf>,
}

/// Kinds of file that have a schema.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub(super) enum SchemaKind {
    /// One class
    Lesson,
    /// What several lessons share, also films.yaml
    Data,
    /// Weighed cups of one class
    Weighings,
    /// Words of the handouts (words.yaml)
    Words,
}

/// Arguments of `completions`.
#[derive(Debug, Args)]
pub(super) struct Completions {
    /// Shell that is to complete
    #[arg(value_enum)]
    pub(super) shell: clap_complete::Shell,
}

/// Arguments of `manual`.
#[derive(Debug, Args)]
pub(super) struct Manual {
    /// Command whose page is printed; without one the page of the program
    #[arg(value_name = "COMMAND")]
    pub(super) about: Option<String>,
    /// Folder to write all pages into instead
    #[arg(long, value_name = "DIR", conflicts_with = "about")]
    pub(super) out: Option<PathBuf>,
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

/// Arguments of `preview`.
#[derive(Debug, Args)]
pub(super) struct Preview {
    /// Lesson file
    pub(super) lesson: PathBuf,
    /// Port of this machine to serve on; without it one that is free
    #[arg(long, value_name = "PORT", default_value_t = 0, hide_default_value = true)]
    pub(super) port: u16,
    /// Print the address and open no browser
    #[arg(long)]
    pub(super) no_browser: bool,
    #[command(flatten)]
    pub(super) print: Print,
    /// Folder with templates that replace the built-in ones of the same name
    #[arg(long, value_name = "DIR")]
    pub(super) templates: Option<PathBuf>,
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
