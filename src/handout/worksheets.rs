//! Worksheets, with the exercises of each student behind them.

use super::context::{CanvasText, ExerciseSheetText, exercises};
use super::document::Block;
use super::markdown;
use super::pictures::canvas_name;
use super::sandbox::Allowance;
use super::sheet::{Desk, Sheet};
use super::template_fault::TemplateFault;
use super::templates::serialized;
use super::words::fill;
use crate::lesson::{Edition, Students};
use crate::quantity::UnitSystem;
use serde::Serialize;

/// The template of one student's exercises.
const EXERCISES: &str = "exercises.md";

/// The sheets so far, and what may still be written.
struct Stack {
    blocks: Vec<Block>,
    allowance: Allowance,
}

/// What the template of one student's exercises may name.
#[derive(Serialize)]
struct ExercisePage<'a> {
    title: &'a str,
    date: &'a str,
    units: UnitSystem,
    large_print: bool,
    seed: &'a str,
    #[serde(flatten)]
    sheet: &'a ExerciseSheetText,
}

impl Desk<'_> {
    /// One sheet for each named student and canvas; for a mere number of students
    /// one for each canvas, to be copied. Every one is a section: its pages say whose they
    /// are, also when they fall apart. The exercises of a student follow the sheets.
    pub(super) fn worksheets(&self) -> Result<Vec<Block>, TemplateFault> {
        let mut exercises = self.exercise_sheets().into_iter();
        let mut stack = Stack { blocks: Vec::new(), allowance: Allowance::whole() };
        match &self.plan.lesson.class.students {
            Students::Named(names) => {
                for name in names {
                    self.canvas_sheets(name, &mut stack)?;
                    if let Some(sheet) = exercises.next() {
                        self.exercise_page(&sheet, &mut stack)?;
                    }
                }
            }
            Students::Count(_) => {
                self.canvas_sheets("", &mut stack)?;
                exercises.try_for_each(|sheet| self.exercise_page(&sheet, &mut stack))?;
            }
        }
        Ok(stack.blocks)
    }

    /// The worksheets worked, the exercises of all students behind them.
    pub(super) fn answers(&self) -> Result<Vec<Block>, TemplateFault> {
        let mut context = self.context.clone();
        if let Some(exercises) = &self.plan.exercises {
            context.insert("exercise_seed", &exercises.seed);
            context.insert("exercise_sheets", &self.exercise_sheets());
        }
        self.blocks(Sheet::Answers, &context)
    }

    fn exercise_sheets(&self) -> Vec<ExerciseSheetText> {
        let words = self.templates.words();
        let show = words.show(&self.plan.lesson.print);
        let of_class = self.plan.exercises.as_ref();
        let sheets = of_class.map(|all| exercises(self.plan, all, words, &show));
        sheets.unwrap_or_default()
    }

    fn canvas_sheets(&self, student: &str, stack: &mut Stack) -> Result<(), TemplateFault> {
        let mut context = self.context.clone();
        context.insert("student", student);
        for (at, canvas) in self.canvases.iter().enumerate() {
            stack.blocks.push(self.section(&self.running(student, canvas)));
            context.insert("canvas", canvas);
            context.insert("canvas_picture", &format!("{}-blank", canvas_name(at)));
            let (pictures, allowance) = (&self.pictures, &mut stack.allowance);
            let sheet = self.blocks_within(Sheet::Worksheet, &context, pictures, allowance)?;
            stack.blocks.extend(sheet);
        }
        Ok(())
    }

    fn exercise_page(
        &self,
        sheet: &ExerciseSheetText,
        stack: &mut Stack,
    ) -> Result<(), TemplateFault> {
        let print = &self.plan.lesson.print;
        let words = &self.templates.words().running;
        let page = ExercisePage {
            title: &self.plan.lesson.heading.title,
            date: self.context.get("date").and_then(|date| date.as_str()).unwrap_or_default(),
            units: print.units,
            large_print: print.edition == Edition::LargePrint,
            seed: self.plan.exercises.as_ref().map_or("", |all| &all.seed),
            sheet,
        };
        stack.blocks.push(self.section(&fill(&words.exercises, &[("student", &sheet.student)])));
        let allowance = &mut stack.allowance;
        let markdown = self.templates.render(EXERCISES, &serialized(&page)?, allowance)?;
        let read = markdown::read(&markdown, &self.pictures);
        stack.blocks.extend(read.map_err(|fault| fault.of(EXERCISES))?);
        Ok(())
    }

    /// A section with the title of the class, and its own words, at the head of its pages.
    fn section(&self, right: &str) -> Block {
        let title = self.plan.lesson.heading.title.clone();
        Block::Section { header: (title, right.to_owned()) }
    }

    /// The head of the pages of a worksheet.
    fn running(&self, student: &str, canvas: &CanvasText) -> String {
        let words = self.templates.words();
        let pattern =
            if student.is_empty() { &words.running.unnamed } else { &words.running.named };
        fill(pattern, &[("student", student), ("canvas", &canvas.name)])
    }
}
