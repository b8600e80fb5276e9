//! What a good colleague would say of lessons, on the terminal and as data.

mod words;

use super::say::eprintln;
use crate::lesson::{Lesson, Notice, Style, Weight, render_notices};
use crate::plan::{Advice, Plan, Warning};
use crate::preview::{Remark, Spot};
use crate::quantity::show::Show;
use serde_json::{Value, json};
use std::ops::AddAssign;

/// Prints what there is to say of a lesson; what it accepts is not said again.
pub(super) fn print(lesson: &Lesson, advice: &Advice<'_>) {
    let said = text(lesson, advice, Style::Coloured);
    if let Some(lines) = said.strip_suffix('\n') {
        eprintln!("{lines}");
    }
}

/// What there is to say of a plan, for the page of the preview.
pub(super) fn remarks(plan: &Plan) -> Vec<Remark> {
    let lesson = &plan.lesson;
    let show = Show::new(lesson.print.units, lesson.print.currency);
    let remark = |warning: &Warning| {
        let Notice { matter, mark, help, place, .. } = notice(lesson, warning, &show);
        let spot = place.and_then(|place| Spot::of(&place, lesson.origins.sources()?));
        Remark { matter, figures: mark, help, spot }
    };
    plan.advice().open.iter().map(remark).collect()
}

/// What is printed: warnings, then what is accepted in vain.
fn text(lesson: &Lesson, advice: &Advice<'_>, style: Style) -> String {
    let show = Show::new(lesson.print.units, lesson.print.currency);
    let open = advice.open.iter().map(|warning| notice(lesson, warning, &show));
    let idle = advice.idle.iter().map(|accepted| {
        let name = accepted.concern.word();
        let path = vec!["accepted".to_owned(), name.to_owned()];
        let words = words::of_idle(accepted);
        Notice {
            weight: Weight::Note,
            name: name.to_owned(),
            matter: words.matter,
            mark: words.mark,
            place: lesson.origins.name_place(&path),
            path,
            help: words.help,
        }
    });
    let notices: Vec<Notice> = open.chain(idle).collect();
    let sources = lesson.origins.sources().cloned().unwrap_or_default();
    render_notices(&notices, &sources, style)
}

fn notice(lesson: &Lesson, warning: &Warning, show: &Show) -> Notice {
    let words = words::of(&warning.matter, show);
    let name = warning.matter.concern().word();
    let mut help = words.help;
    help.push(words::how_to_accept(name));
    Notice {
        weight: Weight::Warning,
        name: name.to_owned(),
        matter: words.matter,
        mark: words.mark,
        place: lesson.origins.place(&warning.path),
        path: warning.path.clone(),
        help,
    }
}

/// All there is to say of a lesson as data, what it accepts with its reason.
pub(super) fn json(lesson: &Lesson, advice: &Advice<'_>) -> Value {
    let open = advice.open.iter().map(|warning| (warning, None));
    let accepted = advice.accepted.iter();
    let accepted = accepted.map(|(warning, accepted)| (warning, Some(accepted.reason.as_str())));
    let all = open.chain(accepted).map(|(warning, reason)| of_warning(lesson, warning, reason));
    all.collect()
}

fn of_warning(lesson: &Lesson, warning: &Warning, reason: Option<&str>) -> Value {
    let show = Show::new(lesson.print.units, lesson.print.currency);
    let words = words::of(&warning.matter, &show);
    let place = lesson.origins.place(&warning.path).and_then(|place| {
        let sources = lesson.origins.sources()?;
        let (line, column) = sources.line_and_column(&place);
        let file = &sources.get(place.file)?.name;
        Some(json!({ "file": file, "line": line, "column": column }))
    });
    json!({
        "name": warning.matter.concern().word(),
        "message": format!("{}: {}", words.matter, words.mark),
        "help": words.help,
        "path": warning.path,
        "place": place,
        "accepted": reason,
    })
}

/// How many lessons there are, and how much there is to say of them.
#[derive(Debug, Clone, Copy, Default)]
pub(super) struct Counts {
    lessons: usize,
    open: usize,
    accepted: usize,
    idle: usize,
}

impl AddAssign<&Advice<'_>> for Counts {
    fn add_assign(&mut self, advice: &Advice<'_>) {
        self.lessons += 1;
        self.open += advice.open.len();
        self.accepted += advice.accepted.len();
        self.idle += advice.idle.len();
    }
}

impl Counts {
    /// In a line.
    pub(super) fn text(self) -> String {
        let of = |count: usize, what: &str| match count {
            0 => format!("no {what}s"),
            1 => format!("1 {what}"),
            _ => format!("{count} {what}s"),
        };
        let mut line =
            format!("{} right, {}", of(self.lessons, "lesson"), of(self.open, "warning"));
        if self.accepted > 0 {
            line.push_str(&format!(", {} accepted", self.accepted));
        }
        if self.idle > 0 {
            line.push_str(&format!(", {} accepted in vain", self.idle));
        }
        line
    }
}
