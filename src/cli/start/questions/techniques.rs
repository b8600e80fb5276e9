use super::super::answers::{Answers, LayerAnswer, Shares};
use super::super::ask::{Choice, Complaint, Question, Stop};
use super::super::given::GivenCanvases;
use super::super::interview::Interview;
use super::super::offers::Spoken;
use super::super::reading::line;
use super::nth;
use crate::lesson::Technique;

/// How each kind of canvas is poured, and how the paint for it runs.
pub(in super::super) fn techniques(
    interview: &mut Interview<'_>,
    given: &GivenCanvases,
) -> Result<(), Stop> {
    for at in 0..interview.answers.canvases.len() {
        technique(interview, nth(&given.technique, at), at)?;
        consistency(interview, nth(&given.consistency, at), at)?;
    }
    interview.tell_paint();
    Ok(())
}

fn technique(interview: &mut Interview<'_>, given: Option<&str>, at: usize) -> Result<(), Stop> {
    let question = Question {
        option: "technique",
        words: format!("How is {} poured?", which(&interview.answers, at)),
        help: "arrow keys, then Enter; or type a part of the name".to_owned(),
        offered: like(&interview.answers, at, |canvas| &canvas.technique),
        ..Question::default()
    };
    let choices = choices(&interview.offers.techniques);
    interview.choice(question, &choices, given, |interview, answers, text| {
        pour(answers, at, &line(text), &interview.plan.lesson.techniques, &interview.offers.under)
    })
}

fn consistency(interview: &mut Interview<'_>, given: Option<&str>, at: usize) -> Result<(), Stop> {
    let question = Question {
        option: "consistency",
        words: "How does the paint for it run off the stick?".to_owned(),
        help: "arrow keys, then Enter".to_owned(),
        offered: like(&interview.answers, at, |canvas| &canvas.consistency),
        ..Question::default()
    };
    let choices = choices(&interview.offers.consistencies);
    interview.choice(question, &choices, given, |_, answers, text| {
        if let Some(canvas) = answers.canvases.get_mut(at) {
            canvas.consistency = line(text);
        }
        Ok(())
    })
}

/// What was said of the canvas before, or what is offered for the first.
fn like(
    answers: &Answers,
    at: usize,
    part: fn(&super::super::answers::CanvasAnswer) -> &String,
) -> String {
    answers.canvases.get(at.saturating_sub(1)).map(part).cloned().unwrap_or_default()
}

/// The canvas in a question: its name where there are several.
pub(super) fn which(answers: &Answers, at: usize) -> String {
    match (answers.canvases.as_slice(), answers.canvases.get(at)) {
        ([_, _, ..], Some(canvas)) => format!("\"{}\"", canvas.board.name),
        _ => "it".to_owned(),
    }
}

fn choices(known: &[Spoken]) -> Vec<Choice> {
    let choice = |known: &Spoken| Choice { name: known.name.clone(), meaning: known.says.clone() };
    known.iter().map(choice).collect()
}

/// Changes the technique, and with it the layers that the palette must have: the last one keeps
/// its colours, one under it gets a single colour. The readers know whether there is such a
/// technique.
fn pour<'t>(
    answers: &mut Answers,
    at: usize,
    name: &str,
    known: impl IntoIterator<Item = &'t std::sync::Arc<Technique>>,
    under: &str,
) -> Result<(), Complaint> {
    let Some(canvas) = answers.canvases.get_mut(at) else { return Ok(()) };
    name.clone_into(&mut canvas.technique);
    let Some(technique) = known.into_iter().find(|technique| technique.name == name) else {
        return Ok(());
    };
    let before = &canvas.palette.layers;
    let last = technique.layers.len().saturating_sub(1);
    let layers = technique.layers.iter().enumerate().filter_map(|(nth, layer)| {
        let same = before.iter().find(|before| before.name == layer.name);
        let shares = match same {
            Some(same) => same.shares.clone(),
            None if nth == last => before.last()?.shares.clone(),
            None => single(under),
        };
        Some(LayerAnswer { name: layer.name.clone(), shares })
    });
    canvas.palette.layers = layers.collect();
    Ok(())
}

fn single(colour: &str) -> Shares {
    Shares { colours: vec![(colour.to_owned(), "100 %".to_owned())], parts: String::new() }
}
