//! The handouts there are, and how each is written from a plan.

use super::context::{CanvasText, Context, FeesText, order, thin_paint, tools, weigh};
use super::document::{Block, Document, Form};
use super::markdown::{self, Pictures};
use super::pictures::{self, bought, pictures};
use super::sandbox::Allowance;
use super::template_fault::TemplateFault;
use super::templates::{Templates, tera_context};
use super::words::fill;
use crate::plan::{self, Course, Errand, Plan};

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
    /// A row for each cup, weighed before and after.
    Weigh,
    /// The worksheets worked, for the teacher.
    Answers,
    /// To print and use with a ruler, a canvas or a cup.
    Tools,
    /// The book for beginners.
    Guide,
}

impl Sheet {
    /// All handouts, in the order in which they are made.
    pub const ALL: [Self; 8] = [
        Self::Order,
        Self::Lesson,
        Self::Cards,
        Self::Worksheet,
        Self::Weigh,
        Self::Answers,
        Self::Tools,
        Self::Guide,
    ];

    /// The word for it in file names and on the command line.
    pub fn word(self) -> &'static str {
        match self {
            Self::Order => "order",
            Self::Lesson => "lesson",
            Self::Cards => "cards",
            Self::Worksheet => "worksheet",
            Self::Weigh => "weigh",
            Self::Answers => "answers",
            Self::Tools => "tools",
            Self::Guide => "guide",
        }
    }

    fn form(self) -> Form {
        match self {
            Self::Order
            | Self::Lesson
            | Self::Worksheet
            | Self::Weigh
            | Self::Answers
            | Self::Tools => Form::Sheet,
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
            Self::Weigh => "weigh.md",
            Self::Answers => "answers.md",
            Self::Tools => "tools.md",
            Self::Guide => "guide.md",
        }
    }
}

/// A plan at the writing desk: its words and pictures are made once for all sheets.
pub struct Desk<'a> {
    pub(super) plan: &'a Plan,
    pub(super) templates: &'a Templates,
    pub(super) canvases: Vec<CanvasText>,
    pub(super) context: tera::Context,
    pub(super) pictures: Pictures,
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
        let blocks = match sheet {
            Sheet::Worksheet => self.worksheets()?,
            Sheet::Answers => self.answers()?,
            Sheet::Weigh => self.weigh()?,
            Sheet::Tools => self.tools()?,
            Sheet::Guide => self.guide()?,
            Sheet::Lesson => self.lesson()?,
            _ => self.blocks(sheet, &self.context)?,
        };
        Ok(self.document(sheet, blocks))
    }

    fn document(&self, sheet: Sheet, blocks: Vec<Block>) -> Document {
        let words = self.templates.words();
        let heading = &self.plan.lesson.heading;
        let name = match sheet {
            Sheet::Order => &words.sheets.order,
            Sheet::Lesson => &words.sheets.lesson,
            Sheet::Cards => &words.sheets.cards,
            Sheet::Worksheet => &words.sheets.worksheet,
            Sheet::Weigh => &words.sheets.weigh,
            Sheet::Answers => &words.sheets.answers,
            Sheet::Tools => &words.sheets.tools,
            Sheet::Guide => &words.sheets.guide,
        };
        Document {
            title: format!("{name}: {}", heading.title),
            author: heading.teacher.clone(),
            language: words.language.clone(),
            decimal: words.numbers.decimal,
            date: heading.date.map(|date| date.to_string()),
            form: sheet.form(),
            paper: self.plan.lesson.print.paper,
            edition: self.plan.lesson.print.edition,
            header: (heading.title.clone(), name.clone()),
            footer: heading.note.clone().unwrap_or_default(),
            folio: words.folio.clone(),
            continued: words.continued.clone(),
            tick_box: words.tick_box.clone(),
            ruled_line: words.ruled_line.clone(),
            cut_to: words.cut_to.clone(),
            blocks,
        }
    }

    /// Writes the order of an errand; the desk is that of its first lesson.
    fn write_order(&self, errand: &Errand) -> Result<Vec<Block>, TemplateFault> {
        let words = self.templates.words();
        let show = words.show(&self.plan.lesson.print);
        let mut context = self.context.clone();
        context.insert("order", &order(errand, words, &show));
        let mut pictures = self.pictures.clone();
        pictures.insert("need-bought".to_string(), bought(errand.order, words, &show));
        self.blocks_with(Sheet::Order, &context, &pictures)
    }

    /// The lesson sheet alone shows what other classes would cost, which takes as long as their
    /// orders; what a teacher earns is nothing for the guide.
    fn lesson(&self) -> Result<Vec<Block>, TemplateFault> {
        let words = self.templates.words();
        let fees = plan::fees(self.plan);
        let mut context = self.context.clone();
        context.insert("fees", &FeesText::of(self.plan, &fees, words));
        let mut pictures = self.pictures.clone();
        pictures.insert("fee".to_string(), pictures::fees(self.plan, &fees, words));
        self.blocks_with(Sheet::Lesson, &context, &pictures)
    }

    /// The guide alone shows how paint flows.
    fn guide(&self) -> Result<Vec<Block>, TemplateFault> {
        let words = self.templates.words();
        let show = words.show(&self.plan.lesson.print);
        let mut context = self.context.clone();
        context.insert("thin_paint", &thin_paint(self.plan, words, &show));
        let mut pictures = self.pictures.clone();
        pictures.insert("film-spun".to_string(), pictures::spun(&show, words));
        pictures.insert("film-tilted".to_string(), pictures::tilted(&show, words));
        self.blocks_with(Sheet::Guide, &context, &pictures)
    }

    /// The weigh sheet alone goes through all cups of the class.
    fn weigh(&self) -> Result<Vec<Block>, TemplateFault> {
        let words = self.templates.words();
        let show = words.show(&self.plan.lesson.print);
        let mut context = self.context.clone();
        context.insert("weigh", &weigh(self.plan, words, &show));
        self.blocks(Sheet::Weigh, &context)
    }

    /// The tools alone have labels for all cups, and drawings that are measured with.
    fn tools(&self) -> Result<Vec<Block>, TemplateFault> {
        let words = self.templates.words();
        let show = words.show(&self.plan.lesson.print);
        let mut context = self.context.clone();
        context.insert("tools", &tools(self.plan, words, &show));
        let mut pictures = self.pictures.clone();
        pictures.extend(pictures::tools(self.plan, words, &show));
        self.blocks_with(Sheet::Tools, &context, &pictures)
    }

    pub(super) fn blocks(
        &self,
        sheet: Sheet,
        context: &tera::Context,
    ) -> Result<Vec<Block>, TemplateFault> {
        self.blocks_with(sheet, context, &self.pictures)
    }

    fn blocks_with(
        &self,
        sheet: Sheet,
        context: &tera::Context,
        pictures: &Pictures,
    ) -> Result<Vec<Block>, TemplateFault> {
        self.blocks_within(sheet, context, pictures, &mut Allowance::whole())
    }

    /// As one of several templates of a handout.
    pub(super) fn blocks_within(
        &self,
        sheet: Sheet,
        context: &tera::Context,
        pictures: &Pictures,
        allowance: &mut Allowance,
    ) -> Result<Vec<Block>, TemplateFault> {
        let template = sheet.template();
        let markdown = self.templates.render(template, context, allowance)?;
        markdown::read(&markdown, pictures).map_err(|fault| fault.of(template))
    }
}

/// The order of several lessons is not called after the first of them.
fn titled(document: Document, course: &Course, templates: &Templates) -> Document {
    let words = templates.words();
    let count = course.lessons.len();
    if count < 2 {
        return document;
    }
    let title = fill(&words.order.course, &[("count", &count.to_string())]);
    let (_, sheet) = document.header;
    Document {
        title: format!("{}: {title}", words.sheets.order),
        header: (title, sheet),
        ..document
    }
}

/// Writes the orders of a course, one after the other.
///
/// # Errors
/// What a template gets wrong.
pub fn course_order(
    course: &Course,
    templates: &Templates,
) -> Result<Option<Document>, TemplateFault> {
    let mut document: Option<Document> = None;
    for errand in course.errands() {
        let Some(first) = errand.lessons.first() else { continue };
        let desk = Desk::new(first, templates)?;
        let blocks = desk.write_order(&errand)?;
        match &mut document {
            Some(document) => {
                document.blocks.push(Block::PageBreak);
                document.blocks.extend(blocks);
            }
            None => document = Some(titled(desk.document(Sheet::Order, blocks), course, templates)),
        }
    }
    Ok(document)
}
