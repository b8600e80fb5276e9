use super::super::answers::{Answers, PaletteAnswer, Shares};
use super::super::ask::{Choice, Question, Stop};
use super::super::consequence;
use super::super::given::GivenCanvases;
use super::super::interview::Interview;
use super::super::reading::{line, shares};
use super::nth;
use super::techniques::which;

/// The last of the offered palettes.
const OWN: &str = "colours of my own";

/// Which colours each kind of canvas gets, and how much of each.
pub(in super::super) fn colours(
    interview: &mut Interview<'_>,
    given: &GivenCanvases,
) -> Result<(), Stop> {
    for at in 0..interview.answers.canvases.len() {
        match nth(&given.colours, at) {
            Some(given) => typed(interview, at, Some(given))?,
            None => chosen(interview, at)?,
        }
        base(interview, at, nth(&given.base, at))?;
    }
    interview.ask.say(&consequence::colours(&interview.plan));
    Ok(())
}

/// One of the offered palettes, or colours of one’s own.
fn chosen(interview: &mut Interview<'_>, at: usize) -> Result<(), Stop> {
    let palettes = &interview.offers.palettes;
    let mut choices: Vec<Choice> = palettes
        .iter()
        .map(|palette| Choice { name: palette.name.clone(), meaning: palette.parts.clone() })
        .collect();
    let own = choices.len();
    choices.push(Choice { name: OWN.to_owned(), meaning: String::new() });
    let before = interview.answers.canvases.get(at.saturating_sub(1));
    let before = before.map(|canvas| canvas.palette.name.as_str()).unwrap_or_default();
    let offered = choices.iter().position(|choice| choice.name == before).unwrap_or(own);
    let question = Question {
        option: "colours",
        words: format!("Which colours does {} get?", which(&interview.answers, at)),
        help: "the numbers are parts; arrow keys, then Enter".to_owned(),
        ..Question::default()
    };
    let chosen = interview.ask.choose(&question, &choices, offered)?;
    let palette = interview.offers.palettes.get(chosen).map(|palette| palette.name.clone());
    typed(interview, at, palette.as_deref())
}

/// Colours in a line, or the name of an offered palette.
fn typed(interview: &mut Interview<'_>, at: usize, given: Option<&str>) -> Result<(), Stop> {
    let offered = interview.offers.palettes.first();
    let question = Question {
        option: "colours",
        words: "Which colours, and how many parts of each?".to_owned(),
        help: "or in percent: blue 40 %, sand 25 %, white the rest".to_owned(),
        offered: offered.map(|palette| palette.parts.clone()).unwrap_or_default(),
        ..Question::default()
    };
    interview.text(question, given, |interview, answers, text| {
        let text = line(text);
        let known = interview.offers.palettes.iter().find(|palette| palette.name == text);
        let (name, parts) = match known {
            Some(palette) => (palette.name.clone(), palette.parts.as_str()),
            None => (interview.offers.own.clone(), text.as_str()),
        };
        let shares = shares(parts)?;
        if let Some(PaletteAnswer { name: called, layers }) = palette(answers, at) {
            *called = name;
            if let Some(layer) = layers.last_mut() {
                layer.shares = shares;
            }
        }
        Ok(())
    })
}

/// The colours of the layers under the last one, where a technique has such.
fn base(interview: &mut Interview<'_>, at: usize, given: Option<&str>) -> Result<(), Stop> {
    let canvas = interview.answers.canvases.get(at);
    let Some([_, ..]) = canvas.and_then(|canvas| canvas.palette.layers.split_last()).map(|p| p.1)
    else {
        return Ok(());
    };
    let question = Question {
        option: "base",
        words: "Which colour is the base under them?".to_owned(),
        help: "or several, with parts: white 3, sand 1".to_owned(),
        offered: interview.offers.under.clone(),
        ..Question::default()
    };
    interview.text(question, given, |_, answers, text| {
        let shares: Shares = shares(text)?;
        if let Some(palette) = palette(answers, at)
            && let Some((_, under)) = palette.layers.split_last_mut()
        {
            under.iter_mut().for_each(|layer| layer.shares = shares.clone());
        }
        Ok(())
    })
}

fn palette(answers: &mut Answers, at: usize) -> Option<&mut PaletteAnswer> {
    answers.canvases.get_mut(at).map(|canvas| &mut canvas.palette)
}
