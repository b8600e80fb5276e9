use super::super::answers::Heading;
use super::super::ask::{Question, Stop};
use super::super::given::GivenHeading;
use super::super::interview::Interview;
use super::super::reading::line;

const SKIP: &str = "Enter leaves it out";

/// Title, teacher, place and day.
pub(in super::super) fn heading(
    interview: &mut Interview<'_>,
    given: &GivenHeading,
) -> Result<(), Stop> {
    let question = Question {
        option: "title",
        words: "What is the class called?".to_owned(),
        help: "it heads every handout".to_owned(),
        offered: interview.answers.heading.title.clone(),
        ..Question::default()
    };
    ask(interview, question, given.title.as_deref(), |heading| &mut heading.title)?;
    let teacher = optional("teacher", "Who gives it?", SKIP);
    ask(interview, teacher, given.teacher.as_deref(), |heading| &mut heading.teacher)?;
    let place = optional("place", "Where?", SKIP);
    ask(interview, place, given.place.as_deref(), |heading| &mut heading.place)?;
    let help = "year-month-day, as 2026-03-14; Enter leaves it out";
    let date = optional("date", "On which day?", help);
    ask(interview, date, given.date.as_deref(), |heading| &mut heading.date)
}

fn optional(option: &'static str, words: &str, help: &str) -> Question {
    Question { option, words: words.to_owned(), help: help.to_owned(), ..Question::default() }
}

fn ask(
    interview: &mut Interview<'_>,
    question: Question,
    given: Option<&str>,
    part: fn(&mut Heading) -> &mut String,
) -> Result<(), Stop> {
    interview.text(question, given, |_, answers, text| {
        *part(&mut answers.heading) = line(text);
        Ok(())
    })
}
