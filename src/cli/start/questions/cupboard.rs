use super::super::ask::{Question, Stop};
use super::super::consequence;
use super::super::given::GivenCupboard;
use super::super::interview::Interview;
use super::super::reading::{jar, stocked};
use crate::plan::Plan;

/// What is there already.
pub(in super::super) fn cupboard(
    interview: &mut Interview<'_>,
    given: &GivenCupboard,
) -> Result<(), Stop> {
    interview.ask.say(&consequence::needs(&interview.plan));
    let question = Question {
        option: "cupboard",
        words: "What of it is in your cupboard?".to_owned(),
        help: "as pouring medium 16 fl oz, apron 10; Enter when nothing is".to_owned(),
        ..Question::default()
    };
    let said = together(&given.cupboard);
    interview.text(question, said.as_deref(), |interview, answers, text| {
        let stock = stocked(text)?.into_iter();
        answers.stock =
            stock.map(|(item, amount)| (known(&interview.plan, item), amount)).collect();
        Ok(())
    })?;
    if !interview.answers.stock.is_empty() {
        interview.ask.say(&consequence::saved(&interview.plan));
    }
    jars(interview, given)
}

/// Mixed paint is as old as the day of the lesson says; without a day nobody is asked.
fn jars(interview: &mut Interview<'_>, given: &GivenCupboard) -> Result<(), Stop> {
    let said = together(&given.jar);
    if interview.answers.heading.date.is_empty() && said.is_none() {
        return Ok(());
    }
    let question = Question {
        option: "jar",
        words: "Is mixed paint left from before?".to_owned(),
        help: "as white, medium, 300 g, 2026-03-01; a second one after a ; or Enter for none"
            .to_owned(),
        ..Question::default()
    };
    interview.text(question, said.as_deref(), |interview, answers, text| {
        let mixes = interview.plan.lesson.mixes.iter().map(|mix| mix.name.as_str());
        let mixes: Vec<&str> = mixes.collect();
        let written = text.split(';').filter(|jar| !jar.trim().is_empty());
        answers.jars = written.map(|text| jar(text, &mixes)).collect::<Result<_, _>>()?;
        Ok(())
    })
}

/// What was given several times, in one line.
fn together(given: &[String]) -> Option<String> {
    (!given.is_empty()).then(|| given.join("; "))
}

/// An item by its right name, where it is only written large, or is the name of a colour.
fn known(plan: &Plan, item: String) -> String {
    let lower = item.to_lowercase();
    let lines = plan.order.lines.iter().map(|line| &line.item);
    let paints = plan.mixing.iter().map(|batch| &batch.colour);
    let same = lines.clone().find(|known| known.to_lowercase() == lower).cloned();
    let paint = paints.clone().find(|colour| colour.name.to_lowercase() == lower);
    same.or_else(|| paint.map(|colour| colour.paint.name.clone())).unwrap_or(item)
}
