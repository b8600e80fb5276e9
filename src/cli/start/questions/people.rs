use super::super::answers::{People, Students};
use super::super::ask::{Complaint, Question, Stop};
use super::super::given::GivenPeople;
use super::super::interview::Interview;
use super::super::reading::{line, pieces};

/// How many come, how old they are, and the sets besides theirs, which are only given.
pub(in super::super) fn people(
    interview: &mut Interview<'_>,
    given: &GivenPeople,
) -> Result<(), Stop> {
    let question = Question {
        option: "people",
        words: "How many people come?".to_owned(),
        help: "a number, or their first names: Ana, Bo, Cem".to_owned(),
        offered: "8".to_owned(),
        ..Question::default()
    };
    interview.text(question, given.people.as_deref(), |_, answers, text| {
        let names = pieces(text);
        if names.len() < 2 && !text.contains(|c: char| c.is_ascii_digit()) {
            return Err(Complaint::new(
                format!("\"{}\" is no number of people", line(text)),
                "a number such as 9, or first names with commas between: Ana, Bo, Cem",
            ));
        }
        answers.people.students = match names.as_slice() {
            [_, _, ..] => Students::Named(names),
            _ => Students::Count(line(text)),
        };
        Ok(())
    })?;
    let question = Question {
        option: "youngest",
        words: "How old is the youngest?".to_owned(),
        help: "it selects the safety notes; Enter when all are adults".to_owned(),
        ..Question::default()
    };
    interview.text(question, given.youngest.as_deref(), |_, answers, text| {
        answers.people.youngest = line(text);
        Ok(())
    })?;
    sets(interview, "demonstrations", given.demonstrations.as_deref(), |people| {
        &mut people.demonstrations
    })?;
    sets(interview, "spares", given.spares.as_deref(), |people| &mut people.spares)
}

/// Sets besides those of the students, where they are given.
fn sets(
    interview: &mut Interview<'_>,
    option: &'static str,
    given: Option<&str>,
    part: fn(&mut People) -> &mut String,
) -> Result<(), Stop> {
    let Some(given) = given else { return Ok(()) };
    let words = format!("How many {option}?");
    let offered = part(&mut interview.answers.people).clone();
    let question = Question { option, words, offered, ..Question::default() };
    interview.text(question, Some(given), |_, answers, text| {
        *part(&mut answers.people) = line(text);
        Ok(())
    })
}
