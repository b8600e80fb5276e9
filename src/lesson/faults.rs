use super::problem::{Problem, ProblemKind};
use super::render;
use super::source::Sources;
use super::words;
use std::fmt;

/// All that is wrong with a lesson, and the files it stands in.
#[derive(Debug, Clone)]
pub struct Faults {
    problems: Vec<Problem>,
    sources: Sources,
}

/// A problem in words alone, for where there is no file to show yet.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Said {
    /// What is wrong.
    pub wrong: String,
    /// The text to blame; empty where nothing is written or where it is longer than a line.
    pub text: String,
    /// What would be right, one sentence each.
    pub right: Vec<String>,
}

/// Longest text that is shown in a sentence, in characters.
const SHOWN_LETTERS: usize = 60;

/// How a message may look.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Style {
    /// Letters only.
    Plain,
    /// With the colours of a terminal.
    Coloured,
}

impl Faults {
    /// Problems in the order of their files and lines.
    pub(super) fn new(mut problems: Vec<Problem>, sources: Sources) -> Self {
        problems.sort_by_key(|problem| {
            problem.place.as_ref().map(|place| (place.file, place.span.start))
        });
        Self { problems, sources }
    }

    /// In the order of files and lines; never empty.
    pub fn problems(&self) -> &[Problem] {
        &self.problems
    }

    /// The files that were read.
    pub fn sources(&self) -> &Sources {
        &self.sources
    }

    /// The lesson file or the weighings themselves could not be read, so that nothing is known about what
    /// it says.
    pub fn is_unread(&self) -> bool {
        self.problems.iter().any(|problem| {
            let unread = matches!(
                problem.kind,
                ProblemKind::Unread { .. } | ProblemKind::WeighingsUnread { .. }
            );
            problem.place.is_none() && unread
        })
    }

    /// For people, in sentences: each problem without its line.
    pub fn said(&self) -> Vec<Said> {
        self.problems.iter().map(|problem| self.sentence(problem)).collect()
    }

    fn sentence(&self, problem: &Problem) -> Said {
        let words = words::of(&problem.kind);
        let blamed = problem.place.as_ref().and_then(|place| {
            self.sources.get(place.file)?.text.get(place.span.clone()).map(str::trim)
        });
        let short = |text: &&str| !text.contains('\n') && text.chars().count() <= SHOWN_LETTERS;
        let text = blamed.filter(short).unwrap_or_default().to_owned();
        Said { wrong: words.wrong, text, right: words.right }
    }

    /// For people: each problem with its line, and what would be right.
    pub fn render(&self, style: Style) -> String {
        render::render(&self.problems, &self.sources, style)
    }
}

impl fmt::Display for Faults {
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        formatter.write_str(&self.render(Style::Plain))
    }
}

impl std::error::Error for Faults {}
