//! One answer after the other: each is put into the lesson, which is read and planned with it.

use super::answers::{Answers, Sheets};
use super::ask::{Ask, Choice, Complaint, Next, Question, Stop};
use super::offers::Offers;
use super::questions;
use super::{consequence, draft, sheet};
use crate::cli::start::given::Given;
use crate::plan::Plan;
use std::path::Path;

/// An interview under way.
pub(super) struct Interview<'a> {
    pub(super) ask: &'a mut dyn Ask,
    pub(super) offers: Offers,
    /// What holds so far.
    pub(super) answers: Answers,
    /// Its plan.
    pub(super) plan: Plan,
    /// What was last said of its paint.
    told: String,
}

/// A lesson that was begun: right, planned, and not written yet.
#[derive(Debug)]
pub struct Begun {
    answers: Answers,
    offers: Offers,
    plan: Plan,
}

impl Begun {
    /// The lesson file that is to stand at `path`.
    ///
    /// # Errors
    /// What is wrong with it, which is a fault of the program.
    pub fn text(&self, path: &Path) -> Result<String, Complaint> {
        draft::finished(&self.answers, &self.offers, path, &self.plan)
    }

    /// What the answers come to.
    pub fn plan(&self) -> &Plan {
        &self.plan
    }

    /// A name for the file, from the title.
    pub fn file_name(&self) -> String {
        sheet::file_name(&self.answers.heading.title)
    }
}

/// Asks what has not been given. `locale` is the language and country of the machine, as
/// `en_US`, from which units and paper are offered.
///
/// # Errors
/// [`Stop`] when somebody leaves.
pub fn interview(ask: &mut dyn Ask, given: &Given, locale: &str) -> Result<Begun, Stop> {
    let sheets = questions::sheets(ask, &given.sheets, locale)?;
    let mut interview = Interview::new(ask, sheets)?;
    questions::heading(&mut interview, &given.heading)?;
    questions::people(&mut interview, &given.people)?;
    questions::canvases(&mut interview, &given.canvases)?;
    questions::techniques(&mut interview, &given.canvases)?;
    questions::colours(&mut interview, &given.canvases)?;
    questions::cupboard(&mut interview, &given.cupboard)?;
    let Interview { ask, offers, answers, plan, .. } = interview;
    ask.say(&consequence::order(&plan));
    Ok(Begun { answers, offers, plan })
}

impl<'a> Interview<'a> {
    fn new(ask: &'a mut dyn Ask, sheets: Sheets) -> Result<Self, Stop> {
        let offers = Offers::of(sheets.language).map_err(|error| {
            Stop::Unready(Complaint { wrong: error.to_string(), right: Vec::new() })
        })?;
        let answers = Answers::offered(sheets, &offers).map_err(Stop::Unready)?;
        let plan = draft::plan(&answers, &offers).map_err(Stop::Unready)?;
        Ok(Self { ask, offers, answers, plan, told: String::new() })
    }

    /// Says how much paint that is, where it has not been said.
    pub(super) fn tell_paint(&mut self) {
        let paint = consequence::paint(&self.plan);
        if paint != self.told {
            self.ask.say(&paint);
            self.told = paint;
        }
    }

    /// Asks for a line of text until it is right. What was given counts as the first answer.
    pub(super) fn text(
        &mut self,
        question: Question,
        given: Option<&str>,
        put: impl Fn(&Self, &mut Answers, &str) -> Result<(), Complaint>,
    ) -> Result<(), Stop> {
        self.until_right(question, given, |ask, question| ask.text(question), put)
    }

    /// Asks for one of the choices.
    pub(super) fn choice(
        &mut self,
        question: Question,
        choices: &[Choice],
        given: Option<&str>,
        put: impl Fn(&Self, &mut Answers, &str) -> Result<(), Complaint>,
    ) -> Result<(), Stop> {
        let offered = choices.iter().position(|choice| choice.name == question.offered);
        let choose = |ask: &mut dyn Ask, question: &Question| {
            let at = ask.choose(question, choices, offered.unwrap_or_default())?;
            Ok(choices.get(at).map(|choice| choice.name.clone()).unwrap_or_default())
        };
        self.until_right(question, given, choose, put)
    }

    fn until_right(
        &mut self,
        mut question: Question,
        given: Option<&str>,
        answer: impl Fn(&mut dyn Ask, &Question) -> Result<String, Stop>,
        put: impl Fn(&Self, &mut Answers, &str) -> Result<(), Complaint>,
    ) -> Result<(), Stop> {
        let mut given = given.map(str::to_owned);
        loop {
            let answer = match given.take() {
                Some(given) => given,
                None => answer(self.ask, &question)?,
            };
            let mut answers = self.answers.clone();
            let planned =
                put(self, &mut answers, &answer).and_then(|()| draft::plan(&answers, &self.offers));
            match planned {
                Ok(plan) => {
                    self.answers = answers;
                    self.plan = plan;
                    return Ok(());
                }
                Err(complaint) => match self.ask.wrong(&question, &answer, &complaint) {
                    Next::AskAgain => question.before = answer,
                    Next::GoOn => return Ok(()),
                },
            }
        }
    }
}
