//! The handouts there are, and how each is written from a plan.

use super::context::{CanvasText, Context};
use super::document::{Block, Document, Form};
use super::markdown::{self, MarkdownFault, Pictures};
use super::pictures::{canvas_name, pictures};
use super::templates::{TemplateFault, Templates, tera_context};
use crate::lesson::Students;
use crate::plan::Plan;

/// The kinds of handouts.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Sheet {
    /// What to buy.
    Order,
    /// Timetable, tables, drying, washing-up and safety, for the teacher on the day.
    Lesson,
    /// One card a batch for the mixing table.
    Cards,
    /// Blank, for each student and canvas.
    Worksheet,
    /// The worksheets worked, for the teacher.
    Answers,
    /// The book for beginners.
    Guide,
}

impl Sheet {
    /// All handouts, in the order in which they are made.
    pub const ALL: [Self; 6] =
        [Self::Order, Self::Lesson, Self::Cards, Self::Worksheet, Self::Answers, Self::Guide];

    /// The word for it in file names and on the command line.
    pub fn word(self) -> &'static str {
        match self {
            Self::Order => "order",
            Self::Lesson => "lesson",
            Self::Cards => "cards",
            Self::Worksheet => "worksheet",
            Self::Answers => "answers",
            Self::Guide => "guide",
        }
    }

    fn form(self) -> Form {
        match self {
            Self::Order | Self::Lesson | Self::Worksheet | Self::Answers => Form::Sheet,
            Self::Cards => Form::Cards,
            Self::Guide => Form::Book,
        }
    }

    fn template(self) -> &'static str {
        match self {
            Self::Order => "order.md",
            Self::Lesson => "lesson.md",
            Self::Cards => "cards.md",
            Self::Worksheet => "worksheet.md",
            Self::Answers => "answers.md",
            Self::Guide => "guide.md",
        }
    }
}

/// A plan at the writing desk: its words and pictures are made once for all sheets.
pub struct Desk<'a> {
    plan: &'a Plan,
    templates: &'a Templates,
    canvases: Vec<CanvasText>,
    context: tera::Context,
    pictures: Pictures,
}

impl<'a> Desk<'a> {
    /// Lays out what the sheets draw on.
    pub fn new(plan: &'a Plan, templates: &'a Templates) -> Result<Self, TemplateFault> {
        let context = Context::of(plan, templates.words());
        Ok(Self {
            plan,
            templates,
            context: tera_context(&context)?,
            canvases: context.canvases,
            pictures: pictures(plan, templates.words()),
        })
    }

    /// Writes one handout.
    pub fn write(&self, sheet: Sheet) -> Result<Document, TemplateFault> {
        let words = self.templates.words();
        let heading = &self.plan.lesson.heading;
        let name = match sheet {
            Sheet::Order => &words.sheets.order,
            Sheet::Lesson => &words.sheets.lesson,
            Sheet::Cards => &words.sheets.cards,
            Sheet::Worksheet => &words.sheets.worksheet,
            Sheet::Answers => &words.sheets.answers,
            Sheet::Guide => &words.sheets.guide,
        };
        let blocks = match sheet {
            Sheet::Worksheet => self.worksheets()?,
            _ => self.blocks(sheet, &self.context)?,
        };
        Ok(Document {
            title: format!("{name}: {}", heading.title),
            author: heading.teacher.clone(),
            language: words.language.clone(),
            date: heading.date.map(|date| date.to_string()),
            form: sheet.form(),
            paper: self.plan.lesson.print.paper,
            edition: self.plan.lesson.print.edition,
            header: (heading.title.clone(), name.clone()),
            footer: heading.note.clone().unwrap_or_default(),
            folio: words.folio.clone(),
            blocks,
        })
    }

    /// One sheet for each named student and canvas; for a mere number of students
    /// one for each canvas, to be copied.
    fn worksheets(&self) -> Result<Vec<Block>, TemplateFault> {
        let nobody = [String::new()];
        let students: &[String] = match &self.plan.lesson.class.students {
            Students::Named(names) => names,
            Students::Count(_) => &nobody,
        };
        let mut blocks = Vec::new();
        let mut context = self.context.clone();
        for student in students {
            for (at, canvas) in self.canvases.iter().enumerate() {
                if !blocks.is_empty() {
                    blocks.push(Block::PageBreak);
                }
                context.insert("student", student);
                context.insert("canvas", canvas);
                context.insert("canvas_picture", &format!("{}-blank", canvas_name(at)));
                blocks.extend(self.blocks(Sheet::Worksheet, &context)?);
            }
        }
        Ok(blocks)
    }

    fn blocks(&self, sheet: Sheet, context: &tera::Context) -> Result<Vec<Block>, TemplateFault> {
        let template = sheet.template();
        let markdown = self.templates.render(template, context)?;
        markdown::read(&markdown, &self.pictures).map_err(|fault| in_template(template, fault))
    }
}

fn in_template(template: &str, fault: MarkdownFault) -> TemplateFault {
    TemplateFault {
        template: template.to_string(),
        message: format!("{}, at “{}”", fault.message, fault.excerpt),
    }
}
