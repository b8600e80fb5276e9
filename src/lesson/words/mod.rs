//! Problems in the words of the teacher: what is wrong, and what would be right. The
//! one place where this room writes for people.

mod example;
mod misread;

use super::limits;
use super::problem::{Form, ProblemKind, Sold, Sort};
use super::source::Unread;
use crate::quantity::units::{in_inch, in_mm};
use crate::quantity::{Dimension, Length};
use example::example;

/// What a message says.
pub(super) struct Words {
    /// The heading: what is wrong.
    pub(super) wrong: String,
    /// Beside the caret, in a few words.
    pub(super) mark: String,
    /// What would be right, one sentence a line.
    pub(super) right: Vec<String>,
    /// Beside the other place, if there is one.
    pub(super) also: &'static str,
}

impl Words {
    fn new(wrong: impl Into<String>, mark: impl Into<String>) -> Self {
        Self { wrong: wrong.into(), mark: mark.into(), right: Vec::new(), also: "first here" }
    }

    fn right(mut self, right: impl Into<String>) -> Self {
        self.right.push(right.into());
        self
    }

    fn also(mut self, also: &'static str) -> Self {
        self.also = also;
        self
    }

    /// "Did you mean", or the whole choice.
    fn choice<'a>(
        self,
        nearest: Option<&str>,
        known: impl IntoIterator<Item = &'a str>,
        of: &str,
    ) -> Self {
        if let Some(nearest) = nearest {
            return self.right(format!("did you mean \"{nearest}\"?"));
        }
        let known: Vec<&str> = known.into_iter().collect();
        match known.as_slice() {
            [] => self.right(format!("there are no {of} yet")),
            [only] => self.right(format!("the only one there is: {only}")),
            _ => self.right(format!("{of}: {}", list(&known))),
        }
    }
}

/// Names set apart by commas; a long list is cut.
fn list(names: &[&str]) -> String {
    const SHOWN: usize = 24;
    let mut shown = names.iter().take(SHOWN).copied().collect::<Vec<_>>().join(", ");
    if names.len() > SHOWN {
        shown.push_str(&format!(" and {} more", names.len() - SHOWN));
    }
    shown
}

/// The last line of a long report.
pub(super) fn and_more(shown: usize) -> String {
    format!("Only the first {shown} problems are shown; put these right and look again.")
}

/// The words for a problem.
pub(super) fn of(kind: &ProblemKind) -> Words {
    match kind {
        ProblemKind::Misread(kind) => misread::of(kind),
        ProblemKind::Unread { .. }
        | ProblemKind::NotYaml { .. }
        | ProblemKind::SeveralDocuments
        | ProblemKind::NotALesson
        | ProblemKind::TooDeep
        | ProblemKind::TooManyValues
        | ProblemKind::StrangeKey
        | ProblemKind::KeyTooLong
        | ProblemKind::Tagged
        | ProblemKind::AliasInItself
        | ProblemKind::DuplicateKey { .. }
        | ProblemKind::LessonKeyInData { .. }
        | ProblemKind::TooManyFiles
        | ProblemKind::FileTwice { .. } => of_file(kind),
        ProblemKind::UnknownKey { .. }
        | ProblemKind::WrongForm { .. }
        | ProblemKind::UnknownWord { .. }
        | ProblemKind::Missing { .. }
        | ProblemKind::Empty { .. } => of_form(kind),
        ProblemKind::Zero { .. }
        | ProblemKind::OutOfRange { .. }
        | ProblemKind::NotADate
        | ProblemKind::NotACurrency { .. }
        | ProblemKind::NotASwatch
        | ProblemKind::NotADropRate
        | ProblemKind::BlankText
        | ProblemKind::TextTooLong
        | ProblemKind::ControlCharacter => of_value(kind),
        ProblemKind::UnknownName { .. }
        | ProblemKind::NameTwice { .. }
        | ProblemKind::NameTaken { .. } => of_name(kind),
        _ => of_meaning(kind),
    }
}

fn of_file(kind: &ProblemKind) -> Words {
    match kind {
        ProblemKind::Unread { name, why } => unread(name, why),
        ProblemKind::NotYaml { said, tab } => {
            let words = Words::new("this line cannot be understood", said.clone());
            if *tab {
                return words.right("indent with spaces; a tab is not allowed there");
            }
            words
                .right("entries are \"key: value\" with a space after the colon; what belongs together starts in the same column")
                .right("text with a colon, a # or a quotation mark in it goes in quotes: title: \"Pour: an evening\"")
        }
        ProblemKind::SeveralDocuments => {
            Words::new("a file holds one lesson", "a second one starts here")
                .right("take out the line --- or make two files")
        }
        ProblemKind::NotALesson => Words::new("this file has no entries", "here")
            .right("entries are \"key: value\"; start with title: Two Ways to Pour"),
        ProblemKind::TooDeep => Words::new("entries inside entries too many times over", "here")
            .right(format!("up to {} levels", limits::NESTING)),
        ProblemKind::TooManyValues => Words::new("this is more than a lesson can hold", "here")
            .right(format!("up to {} values, copies by * counted", limits::VALUES)),
        ProblemKind::StrangeKey => {
            Words::new("a key is one plain text", "this stands where a key should")
                .right("write \"key: value\"")
        }
        ProblemKind::KeyTooLong => Words::new("this key is too long", "here")
            .right(format!("up to {} characters", limits::NAME_LETTERS)),
        ProblemKind::Tagged => {
            Words::new("a value cannot start with !", "here").right("put the text in quotes")
        }
        ProblemKind::AliasInItself => {
            Words::new("this repeats an entry inside itself", "here").right("write it out")
        }
        ProblemKind::DuplicateKey { key } => {
            Words::new(format!("\"{key}\" stands here twice"), "the second")
                .right("take one of them out, or give it another name")
                .also("the first")
        }
        ProblemKind::LessonKeyInData { key } => {
            Words::new(format!("\"{key}\" belongs in a lesson, not in a data file"), "here")
                .right("move it to the lesson that uses this file")
        }
        ProblemKind::TooManyFiles => {
            Words::new("too many data files", "here").right(format!("up to {}", limits::USED_FILES))
        }
        ProblemKind::FileTwice { name } => {
            Words::new(format!("\"{name}\" is used twice"), "here").right("once is enough")
        }
        _ => unexplained(),
    }
}

fn unread(name: &str, why: &Unread) -> Words {
    let words = |why: &str| Words::new(format!("cannot read {name}: {why}"), "this file");
    match why {
        Unread::NotFound => words("there is no such file")
            .right("data files are named by their path from the lesson's own folder"),
        Unread::NotAFile => words("it is not a file").right("name a file, not a folder"),
        Unread::TooLarge => {
            words("it is too large").right(format!("up to {} kB", limits::FILE_BYTES / 1024))
        }
        Unread::NotText { line } => words(&format!("line {line} holds bytes that are no UTF-8"))
            .right("save the file as \"UTF-8\" in your editor"),
        Unread::Refused(said) => words(said),
    }
}

fn of_form(kind: &ProblemKind) -> Words {
    match kind {
        ProblemKind::UnknownKey { key, nearest, known } => Words::new(
            format!("\"{key}\" is no key that belongs here"),
            "not known",
        )
        .choice(nearest.as_deref(), known.iter().copied(), "keys that belong here"),
        ProblemKind::WrongForm { wanted, found } => {
            let wanted: Vec<&str> = wanted.iter().map(|form| form_word(*form)).collect();
            let wrong = format!("this should be {}", wanted.join(" or "));
            let words = Words::new(wrong, format!("this is {}", form_word(*found)));
            match wanted.as_slice() {
                ["a list", ..] => words.right("a list stands in brackets: [torch, silicone]"),
                _ => words,
            }
        }
        ProblemKind::UnknownWord { word, nearest, known } => Words::new(
            format!("\"{word}\" is no choice here"),
            "not known",
        )
        .choice(nearest.as_deref(), known.iter().copied(), "choices"),
        ProblemKind::Missing { key } => {
            let words = Words::new(format!("\"{key}\" is missing"), "belongs in here");
            match example(key) {
                Some(example) => words.right(format!("for example {key}: {example}")),
                None => words,
            }
        }
        ProblemKind::Empty { key } => {
            let words = Words::new(format!("nothing is written for \"{key}\""), "empty");
            match (key.as_str(), example(key)) {
                ("swatch", _) => words
                    .right("a # starts a comment unless it stands in quotes: swatch: \"#1F5A7A\""),
                (_, Some(example)) => words.right(format!("for example {key}: {example}")),
                _ => words,
            }
        }
        _ => unexplained(),
    }
}

fn form_word(form: Form) -> &'static str {
    match form {
        Form::Text => "one text",
        Form::List => "a list",
        Form::Mapping => "entries with names, each \"key: value\"",
    }
}

fn of_value(kind: &ProblemKind) -> Words {
    match kind {
        ProblemKind::Zero { allowed } => {
            Words::new("zero is not possible here", "zero").right(format!("allowed: {allowed}"))
        }
        ProblemKind::OutOfRange { allowed } => {
            Words::new("this is out of range", "out of range").right(format!("allowed: {allowed}"))
        }
        ProblemKind::NotADate => Words::new("this is no date", "no such day")
            .right("year-month-day, for example 2026-03-14"),
        ProblemKind::NotACurrency { nearest } => {
            let words = Words::new("this is no currency", "not known");
            match nearest {
                Some(code) => words.right(format!("did you mean {code}?")),
                None => words.right("three letters of ISO 4217, for example USD or EUR"),
            }
        }
        ProblemKind::NotASwatch => Words::new("this is no colour of the screen", "not understood")
            .right("a # and six digits from 0 to F, in quotes: \"#1F5A7A\""),
        ProblemKind::NotADropRate => Words::new("this says no number of drops", "not understood")
            .right("drops for an amount of mixed paint: 3 per 100 mL"),
        ProblemKind::BlankText => Words::new("nothing is written here", "empty"),
        ProblemKind::TextTooLong => Words::new("this text is too long", "here")
            .right(format!("up to {} characters", limits::TEXT_LETTERS)),
        ProblemKind::ControlCharacter => {
            Words::new("this text holds a character that cannot be printed", "here")
                .right("write it again by hand, or paste it as plain text")
        }
        _ => unexplained(),
    }
}

fn of_name(kind: &ProblemKind) -> Words {
    match kind {
        ProblemKind::UnknownName { sort, name, nearest, known } => {
            let (one, many) = sort_words(*sort);
            Words::new(format!("there is no {one} called \"{name}\""), "not known").choice(
                nearest.as_deref(),
                known.iter().map(String::as_str),
                many,
            )
        }
        ProblemKind::NameTwice { name } => {
            Words::new(format!("\"{name}\" stands in this list twice"), "again").right(
                "take one out; two people of one name need a letter more: \"Ana B\", \"Ana K\"",
            )
        }
        ProblemKind::NameTaken { name } => {
            Words::new(format!("\"{name}\" is the name of something else"), "taken")
                .right("give one of them another name")
                .also("this has the name")
        }
        _ => unexplained(),
    }
}

fn sort_words(sort: Sort) -> (&'static str, &'static str) {
    match sort {
        Sort::Technique => ("technique", "techniques"),
        Sort::Mix => ("mix", "mixes"),
        Sort::Palette => ("palette", "palettes"),
        Sort::Finish => ("finish", "finishes"),
        Sort::Colour => ("colour", "colours"),
        Sort::Material => ("material", "materials"),
        Sort::Item => ("paint, material or supply", "things that can be bought"),
    }
}

fn of_meaning(kind: &ProblemKind) -> Words {
    match kind {
        ProblemKind::NoCanvases => Words::new("a lesson needs a canvas", "none here"),
        ProblemKind::TooManyCanvases => Words::new("too many kinds of canvas", "here")
            .right(format!("up to {}", limits::CANVASES)),
        ProblemKind::NoStudents => Words::new("a class needs a student", "nobody here")
            .right("a number, or first names in brackets: [Ana, Bo, Cem]"),
        ProblemKind::TooManyStudents => {
            Words::new("too many students", "here").right("up to 1000")
        }
        ProblemKind::NoColours => Words::new("this layer has no colours", "none here")
            .right("a colour and its share: white: 100 %"),
        ProblemKind::TooManyColours => Words::new("too many colours in one layer", "here")
            .right(format!("up to {}", limits::COLOURS)),
        ProblemKind::SharesNotWhole { percent } => {
            let wrong = format!("the shares of this layer add up to {percent} %, not 100 %");
            Words::new(wrong, format!("{percent} % in all"))
                .right("change the shares, or write \"the rest\" for one colour")
        }
        ProblemKind::RestLeavesNothing { percent } => {
            let wrong = format!("the other colours make {percent} % already: no rest is left");
            Words::new(wrong, "nothing left").right("lower the other shares, or take this one out")
        }
        ProblemKind::RestTwice => {
            Words::new("only one colour can take the rest", "the second").right("give a share in percent")
        }
        ProblemKind::LayerMissing { technique, layer } => {
            let wrong = format!("\"{technique}\" has a layer \"{layer}\" that is missing here");
            Words::new(wrong, format!("no layer \"{layer}\""))
                .right(format!("add \"{layer}:\" with its colours or its mix"))
                .also("this is the palette")
        }
        ProblemKind::LayerUnknown { technique, layer, nearest, known } => {
            let wrong = format!("\"{technique}\" has no layer called \"{layer}\"");
            Words::new(wrong, "not known").choice(
                nearest.as_deref(),
                known.iter().map(String::as_str),
                "its layers",
            )
        }
        ProblemKind::NotForShape { key, shape, wanted } => {
            Words::new(format!("\"{key}\" is no size of shape \"{shape}\""), "does not fit")
                .right(format!("what fits: {}", wanted.join(", ")))
        }
        ProblemKind::PolygonSize { given: 0 } => {
            Words::new("the size of this polygon is missing", "belongs in here")
                .right("one of side, across flats, across corners; for example across flats: 6 in")
        }
        ProblemKind::PolygonSize { given } => {
            Words::new(format!("this polygon has {given} sizes"), "too many")
                .right("keep one of side, across flats, across corners")
        }
        ProblemKind::OddAcross { key } => {
            Words::new(format!("a polygon with an odd number of sides has no \"{key}\""), "here")
                .right("give the length of one side: \"side: 4 in\"")
        }
        ProblemKind::EdgeTooDeep { depth, across } => {
            let wrong = "the edge is deeper than the canvas is wide";
            Words::new(wrong, format!("{} deep", length(*depth)))
                .right(format!("the canvas is {} wide; its edge is at most that", length(*across)))
        }
        ProblemKind::SpreadOrder => Words::new("low, typical and high are out of order", "here")
            .right("low is the smallest, high the largest: {low: 1.2 mm, typical: 1.5 mm, high: 1.8 mm}"),
        ProblemKind::NoLayers => Words::new("a technique needs a layer", "none here"),
        ProblemKind::PaintIsAColour => Words::new("paints stand under \"colours\"", "not here")
            .right("other kinds: medium, water, additive, varnish"),
        ProblemKind::NoPaintInMix => Words::new("there is no paint in this mix", "paint is missing")
            .right("the paint of each colour is called \"paint\": {paint: 1, pouring medium: 2}"),
        ProblemKind::NotAnIngredient { name } => {
            Words::new(format!("\"{name}\" does not go into a mix"), "here")
                .right("what does: media, water and additives")
        }
        ProblemKind::NoDropSize { material } => {
            Words::new(format!("nobody says how large a drop of \"{material}\" is"), "counted in drops")
                .right("add it to the material: drop: 0.05 mL")
                .also("this is the material")
        }
        ProblemKind::NotAFinish { material } => {
            Words::new(format!("\"{material}\" does not go over a dry canvas"), "here")
                .right("what does: varnishes and media")
        }
        ProblemKind::PaintDensities { paint } => {
            Words::new(format!("two colours say different densities of \"{paint}\""), "here")
                .right("one paint has one density")
                .also("the other")
        }
        ProblemKind::PriceDecimals { currency, decimals } => {
            let wrong = format!("prices in {currency} have {decimals} decimals");
            Words::new(wrong, "more decimals").right(format!("round it to {decimals} decimals"))
        }
        ProblemKind::NotComparable { item, sold, found } => {
            let (how, right) = match sold {
                Sold::ByVolumeOrWeight => ("by volume or weight", "for example 8 fl oz, 250 mL or 1 kg"),
                Sold::ByThePiece => ("by the piece", "for example 100 pieces"),
            };
            let mark = match found {
                Dimension::Pieces => "pieces",
                Dimension::Mass => "a weight",
                _ => "a volume",
            };
            Words::new(format!("\"{item}\" is needed {how}"), mark).right(right)
        }
        ProblemKind::WhenNotOne => Words::new("this should say one occasion", "here").right(
            "always, {doing: [torch]}, {younger than: 16} or {pigments: [cobalt]}",
        ),
        _ => unexplained(),
    }
}

fn unexplained() -> Words {
    Words::new("something in this lesson could not be read", "here")
}

fn length(length: Length) -> String {
    let inches = (in_inch(length) * 100.0).round() / 100.0;
    let mm = (in_mm(length) * 10.0).round() / 10.0;
    format!("{inches} in ({mm} mm)")
}
