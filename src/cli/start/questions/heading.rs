use super::super::answers::{Answers, Heading};
use super::super::ask::{Question, Stop};
use super::super::given::GivenHeading;
use super::super::interview::Interview;
use super::super::reading::line;

/// Title, teacher, place and day.
pub(in super::super) fn heading(
    interview: &mut Interview<'_>,
    given: &GivenHeading,
) -> Result<(), Stop> {
    let title = interview.answers.heading.title.clone();
    let asked: [(
        &'static str,
        &str,
        &str,
        String,
        &Option<String>,
        fn(&mut Heading) -> &mut String,
    ); 4] = [
        (
            "title",
            "What is the class called?",
            "it heads every handout",
            title,
            &given.title,
            |h| &mut h.title,
        ),
        ("teacher", "Who gives it?", SKIP, String::new(), &given.teacher, |h| &mut h.teacher),
        ("place", "Where?", SKIP, String::new(), &given.place, |h| &mut h.place),
        ("date", "On which day?", DAY, String::new(), &given.date, |h| &mut h.date),
    ];
    for (option, words, help, offered, given, part) in asked {
        let question = Question {
            option,
            words: words.to_owned(),
            help: help.to_owned(),
            offered,
            ..Question::default()
        };
        interview.text(question, given.as_deref(), |_, answers: &mut Answers, text| {
            *part(&mut answers.heading) = line(text);
            Ok(())
        })?;
    }
    Ok(())
}

const SKIP: &str = "Enter leaves it out";
const DAY: &str = "year-month-day, as 2026-03-14; Enter leaves it out";
