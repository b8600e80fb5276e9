//! Problems in the words of the teacher: what is wrong, and what would be right. The
//! one place where this room writes for people.

mod example;
mod meaning;
mod misread;
mod weighing;

use super::limits;
use super::problem::{Form, ProblemKind, Sort};
use super::raw;
use super::slip::YamlSlip;
use super::source::Unread;
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

    pub(super) fn right(mut self, right: impl Into<String>) -> Self {
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
        | ProblemKind::TooManyRows
        | ProblemKind::StrangeKey
        | ProblemKind::KeyTooLong
        | ProblemKind::Tagged
        | ProblemKind::AliasInItself
        | ProblemKind::DuplicateKey { .. }
        | ProblemKind::LessonKeyInData { .. }
        | ProblemKind::TooManyFiles
        | ProblemKind::FileTwice { .. }
        | ProblemKind::UsesItself => of_file(kind),
        ProblemKind::UnknownKey { .. }
        | ProblemKind::WrongForm { .. }
        | ProblemKind::UnknownWord { .. }
        | ProblemKind::Missing { .. }
        | ProblemKind::Empty { .. } => of_form(kind),
        ProblemKind::Zero { .. }
        | ProblemKind::OutOfRange { .. }
        | ProblemKind::NotADate
        | ProblemKind::NotATime
        | ProblemKind::TimeOfDay
        | ProblemKind::NotACurrency { .. }
        | ProblemKind::NotASwatch
        | ProblemKind::NotADropRate
        | ProblemKind::NotAPercentage
        | ProblemKind::NotALevel
        | ProblemKind::LevelTooFine
        | ProblemKind::LevelTooLow
        | ProblemKind::LevelTooHigh
        | ProblemKind::BlankText
        | ProblemKind::TextTooLong
        | ProblemKind::ControlCharacter => of_value(kind),
        ProblemKind::UnknownName { .. }
        | ProblemKind::NameTwice { .. }
        | ProblemKind::NameTaken { .. } => of_name(kind),
        _ => weighing::of(kind).unwrap_or_else(|| meaning::of(kind)),
    }
}

fn of_file(kind: &ProblemKind) -> Words {
    match kind {
        ProblemKind::Unread { name, why } => unread(name, why),
        ProblemKind::NotYaml { said, slip } => not_yaml(said, *slip),
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
        ProblemKind::TooManyRows => Words::new("these tables have too many rows", "from here on")
            .right(format!("up to {} rows in all", limits::TABLE_VALUES / 16)),
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
            let right = match raw::KEYS.contains(&key.as_str()) {
                true => "keep one of them, with all that belongs to it",
                false => "take one of them out, or give it another name",
            };
            Words::new(format!("\"{key}\" stands here twice"), "the second")
                .right(right)
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
        ProblemKind::UsesItself => {
            Words::new("this lesson names itself as a data file", "this file")
                .right("take it out; a lesson needs no list of its own")
        }
        _ => unexplained(),
    }
}

fn not_yaml(said: &str, slip: YamlSlip) -> Words {
    let (mark, right) = match slip {
        YamlSlip::Tab => ("a tab", "indent with spaces; a tab is not allowed there"),
        YamlSlip::OpenBracket => (
            "not closed before this",
            "a { needs its }, a [ its ], and commas stand between what is inside",
        ),
        YamlSlip::OpenQuote => {
            ("not closed before this", "a text that starts with a quotation mark ends with one")
        }
        YamlSlip::ColonInText => (
            "a second colon",
            "a text with a colon in it goes in quotes: title: \"Pour: an evening\"",
        ),
        YamlSlip::NoColon => (
            "not understood",
            "an entry is \"key: value\" with a colon and a space; look at the line above, too",
        ),
        YamlSlip::SignFirst => (
            "a sign of YAML",
            "a text that starts with one of * & ! % @ ` | > goes in quotes: title: \"*Small* class\"",
        ),
        YamlSlip::Columns => (
            "another column",
            "what belongs together starts in the same column, further in than what it belongs to",
        ),
        YamlSlip::Backslash => {
            ("a backslash", "a text with a backslash in it goes in single quotes: 'a \\ b'")
        }
        YamlSlip::Other => (
            "not understood",
            "an entry is \"key: value\"; text with a colon, a # or a quotation mark goes in quotes",
        ),
    };
    Words::new("this line cannot be understood", mark)
        .right(right)
        .right(format!("the YAML parser says: {said}"))
}

/// What helps where a lesson names a file that is not there.
pub(super) const NAMED_FROM: &str =
    "data files are named by their path from the lesson's own folder";

fn unread(name: &str, why: &Unread) -> Words {
    let words = |why: &str| Words::new(format!("cannot read {name}: {why}"), "this file");
    match why {
        Unread::NotFound => words("there is no such file"),
        Unread::NotAFile => {
            words("it is not a file").right("name a file, not a folder or a device")
        }
        Unread::TooLarge => {
            let is_table = name.to_lowercase().ends_with(".csv");
            let most = if is_table { limits::TABLE_BYTES } else { limits::FILE_BYTES };
            words("it is too large").right(format!("up to {} kB", most / 1024))
        }
        Unread::NotText { line } => words(&format!("line {line} holds bytes that are no UTF-8"))
            .right("save the file as \"UTF-8\" in your editor"),
        Unread::Utf16 => words("it is written in UTF-16, which some editors call \"Unicode\"")
            .right("save the file as \"UTF-8\" in your editor"),
        Unread::Nul { line } => words(&format!("line {line} holds characters that are no text"))
            .right("the file may be damaged; save it anew as text, in \"UTF-8\""),
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
        ProblemKind::WrongForm { key, wanted, found, keys } => {
            let wanted: Vec<&str> = wanted.iter().map(|form| form_word(*form)).collect();
            let wrong = format!("this should be {}", wanted.join(" or "));
            let words = Words::new(wrong, format!("this is {}", form_word(*found)));
            example_or_keys(words, key, keys)
        }
        ProblemKind::UnknownWord { word, nearest, known } => Words::new(
            format!("\"{word}\" is no choice here"),
            "not known",
        )
        .choice(nearest.as_deref(), known.iter().copied(), "choices"),
        ProblemKind::Missing { key, part } => {
            let words = match part {
                Some(part) if part.starts_with("no. ") => Words::new(
                    format!("\"{key}\" is missing in {part} of this list"),
                    "belongs in here",
                ),
                Some(part) => {
                    Words::new(format!("\"{key}\" is missing in \"{part}\""), "belongs in here")
                }
                None => {
                    Words::new(format!("this lesson has no \"{key}\""), "anywhere in this file")
                }
            };
            match (part.as_deref(), example::of_weighed(key)) {
                (Some("weighed"), Some(example)) => {
                    words.right(format!("for example {key}: {example}"))
                }
                _ => for_example(words, key),
            }
        }
        ProblemKind::Empty { key, keys } => {
            let words = Words::new(format!("nothing is written for \"{key}\""), "empty");
            if key == "swatch" {
                return words
                    .right("a # starts a comment unless it is in quotes: swatch: \"#1F5A7A\"");
            }
            example_or_keys(words, key, keys)
        }
        _ => unexplained(),
    }
}

fn example_or_keys(words: Words, key: &str, keys: &[&str]) -> Words {
    match keys {
        [] => for_example(words, key),
        _ => words.right(format!("keys that belong here: {}", list(keys))),
    }
}

fn for_example(words: Words, key: &str) -> Words {
    match example(key) {
        Some(example) => words.right(format!("for example {key}: {example}")),
        None => words,
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
        ProblemKind::TimeOfDay => {
            Words::new("this should be a length of time", "a time of the day")
                .right("how long it takes: 45 min, 1 h or 1 h 30 min")
        }
        ProblemKind::NotATime => Words::new("this is no time of the day", "not understood")
            .right("hours and minutes with a colon, for example 18:30 or 6:30 pm"),
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
        ProblemKind::NotAPercentage => {
            Words::new("this should be a percentage", "not understood").right("for example 15 %")
        }
        ProblemKind::NotALevel => {
            Words::new("this does not say how often the paint is to be enough", "not understood")
                .right("for example 19 classes out of 20, 19 of 20, or 95 %")
        }
        ProblemKind::LevelTooFine => {
            Words::new("nobody knows this so exactly", "too many decimals")
                .right("one decimal is plenty, for example 97.5 %")
        }
        ProblemKind::LevelTooLow => {
            Words::new("most classes would run short", "less than half of the classes")
                .right("allowed: 50 % to 99.9 %")
                .right("50 % (1 class out of 2) mixes what is expected, with nothing in reserve")
        }
        ProblemKind::LevelTooHigh => {
            Words::new("no reserve is enough in every class", "more than 99.9 %")
                .right("allowed: 50 % to 99.9 % (999 classes out of 1000)")
                .right("for an accident, such as a cup that is knocked over, keep spares instead")
        }
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
            Words::new(format!("\"{name}\" stands in this list twice"), "again")
                .right("take one out")
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
        Sort::Supply => ("supply", "supplies"),
        Sort::Item => ("paint, material or supply", "things that can be bought"),
        Sort::Canvas => ("canvas", "canvases"),
        Sort::Painter => ("student", "who pours"),
        Sort::Concern => ("warning", "warnings"),
    }
}

fn unexplained() -> Words {
    Words::new("something in this lesson could not be read", "here")
}
