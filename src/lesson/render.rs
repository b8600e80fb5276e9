use super::faults::Style;
use super::limits;
use super::notice::{Notice, Weight};
use super::problem::{Problem, ProblemKind};
use super::source::{Place, Sources, Unread};
use super::words;
use annotate_snippets::{
    Annotation, AnnotationKind, Group, Level, Origin, Renderer, Snippet, Title,
};

/// Lines longer than this, in bytes, are not shown.
const LONGEST_LINE: usize = 2_000;

/// All problems, each with its line and what would be right, and how many there are.
pub(super) fn render(problems: &[Problem], sources: &Sources, style: Style) -> String {
    let mut out = of_all(problems.iter().map(of_problem), sources, style);
    if problems.len() >= limits::PROBLEMS {
        out.push_str(&words::and_more(problems.len()));
        out.push('\n');
    }
    out
}

/// All notices, each with its line and what would help.
pub(super) fn render_notices(notices: &[Notice], sources: &Sources, style: Style) -> String {
    of_all(notices.iter().map(of_notice), sources, style)
}

/// What is shown of a problem or a notice.
struct Shown<'a> {
    title: Title<'a>,
    place: Option<&'a Place>,
    also: Option<&'a Place>,
    path: &'a [String],
    /// Beside the caret.
    mark: String,
    /// Beside the other place.
    also_mark: &'static str,
    help: Vec<String>,
}

fn of_problem(problem: &Problem) -> Shown<'_> {
    let mut words = words::of(&problem.kind);
    let is_lost = matches!(problem.kind, ProblemKind::Unread { why: Unread::NotFound, .. });
    if is_lost && problem.place.is_some() {
        words = words.right(words::NAMED_FROM);
    }
    Shown {
        title: Level::ERROR.primary_title(words.wrong),
        place: problem.place.as_ref(),
        also: problem.also.as_ref(),
        path: &problem.path,
        mark: words.mark,
        also_mark: words.also,
        help: words.right,
    }
}

fn of_notice(notice: &Notice) -> Shown<'_> {
    let level = match notice.weight {
        Weight::Warning => Level::WARNING,
        Weight::Note => Level::NOTE,
    };
    Shown {
        title: level.primary_title(&notice.matter).id(&notice.name),
        place: notice.place.as_ref(),
        also: None,
        path: &notice.path,
        mark: notice.mark.clone(),
        also_mark: "",
        help: notice.help.clone(),
    }
}

fn of_all<'a>(all: impl Iterator<Item = Shown<'a>>, sources: &'a Sources, style: Style) -> String {
    let renderer = match style {
        Style::Plain => Renderer::plain(),
        Style::Coloured => Renderer::styled(),
    };
    let mut out = String::new();
    for shown in all {
        out.push_str(&renderer.render(&[group(shown, sources)]));
        out.push_str("\n\n");
    }
    out
}

fn group<'a>(shown: Shown<'a>, sources: &'a Sources) -> Group<'a> {
    let mut group = Group::with_title(shown.title);
    if let Some(place) = shown.place {
        let same = shown.also.filter(|also| also.file == place.file);
        group = match snippet(place, same, shown.mark, shown.also_mark, sources) {
            Some(snippet) => group.element(snippet),
            None => group.element(origin(place, sources)),
        };
        if let (Some(also), None) = (shown.also, same) {
            let (line, column) = sources.line_and_column(also);
            let name = sources.get(also.file).map_or("", |file| file.name.as_str());
            let note = format!("{}: {name}:{line}:{column}", shown.also_mark);
            group = group.element(Level::NOTE.message(note));
        }
    }
    if !shown.path.is_empty() {
        group = group.element(Level::NOTE.message(format!("in {}", shown.path.join(" > "))));
    }
    group.elements(shown.help.into_iter().map(|help| Level::HELP.message(help)))
}

/// Where a line stands that is too long to be shown.
fn origin<'a>(place: &Place, sources: &'a Sources) -> Origin<'a> {
    let (line, column) = sources.line_and_column(place);
    let name = sources.get(place.file).map_or("", |file| file.name.as_str());
    Origin::path(name).line(line).char_column(column)
}

/// The line of a place, and the line of another place of the same file; `None` when
/// one of them is too long.
fn snippet<'a>(
    place: &Place,
    also: Option<&Place>,
    mark: String,
    also_mark: &'static str,
    sources: &'a Sources,
) -> Option<Snippet<'a, Annotation<'a>>> {
    let name = sources.get(place.file).map_or("", |file| file.name.as_str());
    let text = sources.text(place.file);
    let whole = also.map_or(place.span.clone(), |also| {
        also.span.start.min(place.span.start)..also.span.end.max(place.span.end)
    });
    // Only the lines that are shown: a long file is not searched for every problem.
    let start = text.get(..whole.start).and_then(|before| before.rfind('\n'));
    let start = start.map_or(0, |newline| newline + 1);
    let end = text.get(whole.end..).and_then(|after| after.find('\n'));
    let end = end.map_or(text.len(), |length| whole.end + length);
    // The carriage return of a line end of Windows is no letter of the line.
    let end = end - usize::from(text.get(whole.end..end).is_some_and(|rest| rest.ends_with('\r')));
    let lines = text.get(start..end).unwrap_or_default();
    let line = text.get(..start).unwrap_or_default().matches('\n').count() + 1;
    let inside = |place: &Place| {
        let first = place.span.start - start;
        // One line is enough to find the rest.
        let rest = lines.get(first..).unwrap_or_default();
        let line_end = rest.find('\n').map_or(lines.len(), |length| first + length);
        first..(place.span.end - start).min(line_end).max(first)
    };
    if lines.lines().any(|line| line.len() > LONGEST_LINE) {
        return None;
    }
    let primary = AnnotationKind::Primary.span(inside(place)).label(mark);
    let context = also.map(|also| AnnotationKind::Context.span(inside(also)).label(also_mark));
    let snippet = Snippet::source(lines).line_start(line).path(name);
    Some(snippet.annotation(primary).annotations(context))
}
