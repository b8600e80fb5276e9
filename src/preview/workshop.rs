use super::fields::{Fields, Wish, seat};
use super::inputs::Inputs;
use super::order::Order;
use super::remark::Remark;
use super::version::{Handout, Look, Version};
use super::{Advise, Dress, OwnTemplates};
use crate::handout::{Context, Desk, Sheet, Templates, Words};
use crate::ink::Faces;
use crate::lesson::{Faults, Lesson, Style, shown};
use crate::{crew, page, pdf, plan};
use std::path::{Path, PathBuf};
use std::sync::Arc;

/// Makes versions of one lesson.
pub(super) struct Workshop {
    lesson: PathBuf,
    dress: Dress,
    templates: OwnTemplates,
    advise: Advise,
    faces: Faces,
}

/// What a lesson with a wish comes to.
pub(super) struct Tried {
    pub(super) version: Version,
    /// Why the wish cannot be written into the file, if so.
    pub(super) unwritable: Option<String>,
}

impl Workshop {
    pub(super) fn new(
        lesson: PathBuf,
        dress: Dress,
        templates: OwnTemplates,
        advise: Advise,
    ) -> Self {
        Self { lesson, dress, templates, advise, faces: Faces::new() }
    }

    /// The path of the lesson.
    pub(super) fn lesson(&self) -> &Path {
        &self.lesson
    }

    /// Reads all that a version is made of.
    pub(super) fn gather(&self) -> (Inputs, Result<Lesson, Faults>) {
        Inputs::read(&self.lesson, (self.templates)())
    }

    /// Makes a version of what was gathered; or says what is wrong, as on the terminal.
    pub(super) fn make(
        &self,
        inputs: &Arc<Inputs>,
        lesson: Result<Lesson, Faults>,
    ) -> Result<Version, String> {
        let lesson = lesson.map_err(|faults| told(&faults))?;
        self.version(inputs, lesson, inputs.text())
    }

    /// Makes a version of the same files with a wish, which changes none of them.
    pub(super) fn try_out(&self, inputs: &Arc<Inputs>, wish: &Wish) -> Result<Tried, String> {
        let read = |text: &str| inputs.read_with(text).map_err(|faults| told(&faults));
        let mut text = inputs.text().to_owned();
        let (mut lesson, mut unwritable) = (read(&text)?, None);
        match wish.write_into(&text) {
            Ok(written) => {
                lesson = read(&written)?;
                text = written;
            }
            // A number cannot take the place of names; what it would come to can be shown.
            Err(why) => {
                let Some(count) = wish.students().filter(|_| Fields::of(&lesson, &text).named())
                else {
                    return Err(why);
                };
                text = wish.without_students().write_into(&text)?;
                lesson = read(&text)?;
                seat(&mut lesson.class, count);
                unwritable = Some(NAMED.to_owned());
            }
        }
        Ok(Tried { version: self.version(inputs, lesson, &text)?, unwritable })
    }

    fn version(
        &self,
        inputs: &Arc<Inputs>,
        mut lesson: Lesson,
        text: &str,
    ) -> Result<Version, String> {
        (self.dress)(&mut lesson.print);
        let own = inputs.templates.as_ref().map_err(Clone::clone)?;
        let language = lesson.print.language;
        let templates = Templates::new(language, own).map_err(|fault| format!("error: {fault}"))?;
        let fields = Fields::of(&lesson, text);
        let plan = plan::plan(lesson)
            .map_err(|reason| format!("error: {}: {reason}", shown(&self.lesson)))?;
        let desk = Desk::new(&plan, &templates).map_err(|fault| format!("error: {fault}"))?;
        let sheets = Sheet::ALL.iter().collect();
        let made = crew::map(sheets, 1, || (), |(), sheet| self.handout(&desk, *sheet, &templates));
        let mut handouts = Vec::with_capacity(made.len());
        let mut remarks = (self.advise)(&plan);
        for made in made {
            let (handout, remark) = made?;
            handouts.push(handout);
            remarks.extend(remark);
        }
        Ok(Version {
            inputs: Arc::clone(inputs),
            title: plan.lesson.heading.title.clone(),
            language: language.tag(),
            order: Order::of(&Context::of(&plan, templates.words())),
            fields,
            handouts,
            remarks,
        })
    }

    /// A handout, and what is to be said about it.
    fn handout(
        &self,
        desk: &Desk<'_>,
        sheet: Sheet,
        templates: &Templates,
    ) -> Result<(Handout, Option<Remark>), String> {
        let document = desk.write(sheet).map_err(|fault| format!("error: {fault}"))?;
        let pages = page::lay_out(&document, &self.faces);
        drop(document);
        let pdf = pdf::write(&pages, &self.faces)
            .map_err(|error| format!("error: {}: {error}", sheet.word()))?;
        let handout = Handout {
            sheet,
            name: name(sheet, templates.words()),
            pdf: Arc::new(pdf),
            size: pages.size,
            looks: pages.pages.iter().map(Look::of).collect(),
        };
        Ok((handout, missing(sheet, &pages.missing)))
    }
}

/// Why a number cannot be written where names stand.
const NAMED: &str = "The lesson knows its students by name. Add or take away names in the file.";

/// What a handout is called.
fn name(sheet: Sheet, words: &Words) -> String {
    let sheets = &words.sheets;
    let name = match sheet {
        Sheet::Order => &sheets.order,
        Sheet::Lesson => &sheets.lesson,
        Sheet::Cards => &sheets.cards,
        Sheet::Worksheet => &sheets.worksheet,
        Sheet::Weigh => &sheets.weigh,
        Sheet::Answers => &sheets.answers,
        Sheet::Tools => &sheets.tools,
        Sheet::Guide => &sheets.guide,
    };
    name.clone()
}

fn missing(sheet: Sheet, characters: &[char]) -> Option<Remark> {
    let names: Vec<String> =
        characters.iter().map(|c| format!("{c} (U+{:04X})", u32::from(*c))).collect();
    (!names.is_empty()).then(|| {
        let sheet = sheet.word();
        let matter = format!("the {sheet} has characters that the type lacks");
        Remark::new(matter, format!("a box stands for {}", names.join(", ")))
    })
}

/// The problems of a lesson in the words of the terminal.
pub(super) fn told(faults: &Faults) -> String {
    let text = faults.render(Style::Plain);
    if faults.is_unread() {
        return text.lines().next().unwrap_or_default().to_owned();
    }
    text.trim_end().to_owned()
}
