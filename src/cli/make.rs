//! `make`: the handouts of lessons.

use super::beside::way;
use super::disk::write_outputs;
use super::failure::Failure;
use super::lessons::{read_all, work_out};
use super::say::{eprintln, println};
use super::words::Words;
use super::{advice, args};
use crate::crew;
use crate::handout::{Desk, Sheet, Templates, order_csv, weigh_csv};
use crate::ink::Faces;
use crate::lesson::Lesson;
use crate::lesson::shown;
use crate::page::style::Style;
use crate::plan::{Errand, Plan};
use crate::quantity::show::Show;
use crate::{page, pdf};
use indicatif::{ProgressBar, ProgressStyle};
use std::collections::BTreeSet;
use std::io::IsTerminal;
use std::path::{Path, PathBuf};
use std::sync::Arc;

/// A PDF to make of each lesson.
#[derive(Debug, Clone, Copy)]
enum Print {
    /// A handout, page by page.
    Flat(Sheet),
    /// A handout to fold, two pages on a side.
    Booklet(Sheet),
}

/// A finished lesson: its plan and the files to write.
struct Made {
    plan: Plan,
    files: Vec<(PathBuf, Vec<u8>)>,
    /// Characters that the faces lack, by handout.
    missing: Vec<(Print, Vec<char>)>,
}

impl Print {
    fn sheet(self) -> Sheet {
        let (Self::Flat(sheet) | Self::Booklet(sheet)) = self;
        sheet
    }

    /// The word for it in file names.
    fn name(self) -> String {
        match self {
            Self::Flat(sheet) => sheet.word().to_owned(),
            Self::Booklet(sheet) => format!("{}-booklet", sheet.word()),
        }
    }
}

/// A lesson to make, in its words and for its folder.
struct Job<'a> {
    path: &'a Path,
    lesson: Lesson,
    templates: Arc<Templates>,
    folder: PathBuf,
}

/// The PDF of a handout.
struct Finished {
    file: (PathBuf, Vec<u8>),
    missing: Vec<char>,
}

pub(super) fn make(arguments: &args::Make) -> Result<(), Failure> {
    let lessons = read_all(&arguments.lessons)?;
    let mut words = Words::with(arguments.templates.as_deref())?;
    let mut prints: Vec<Print> = sheets(&arguments.only).into_iter().map(Print::Flat).collect();
    if arguments.booklet {
        prints.push(Print::Booklet(Sheet::Guide));
    }
    let folders = folders(&lessons, &arguments.out)?;
    let faces = Faces::new();
    let progress = progress(lessons.len() * prints.len());
    let workshop = Workshop { prints: &prints, faces: &faces, progress: &progress };
    let jobs: Vec<Job<'_>> = lessons
        .into_iter()
        .zip(folders)
        .map(|((path, mut lesson), folder)| {
            arguments.print.apply(&mut lesson);
            let templates = words.of(lesson.print.language)?;
            Ok(Job { path, lesson, templates, folder })
        })
        .collect::<Result<_, Failure>>()?;
    let made = crew::map(jobs, 1, || (), |(), job| workshop.make(job));
    let made: Vec<Made> = made.into_iter().collect::<Result<_, Failure>>()?;
    progress.finish_and_clear();
    for made in &made {
        write_outputs(&made.files)?;
        report(made);
        advice::print(&made.plan.lesson, &made.plan.advice());
    }
    Ok(())
}

/// The kinds asked for, each once; all of them when none is named.
fn sheets(only: &[Sheet]) -> Vec<Sheet> {
    Sheet::ALL.into_iter().filter(|sheet| only.is_empty() || only.contains(sheet)).collect()
}

/// A folder for each lesson; two lessons of one file name would overwrite each other.
fn folders(lessons: &[(&Path, Lesson)], out: &Path) -> Result<Vec<PathBuf>, Failure> {
    let mut taken = BTreeSet::new();
    lessons
        .iter()
        .map(|(path, _)| {
            let stem = path.file_stem().unwrap_or(path.as_os_str());
            if taken.insert(stem.to_os_string()) {
                Ok(out.join(stem))
            } else {
                Err(Failure::Wrong(format!(
                    "error: two lessons are called {}; make them into different --out folders\n",
                    shown(Path::new(stem))
                )))
            }
        })
        .collect()
}

/// What every lesson of a run is made with.
struct Workshop<'a> {
    prints: &'a [Print],
    faces: &'a Faces,
    progress: &'a ProgressBar,
}

impl Workshop<'_> {
    fn make(&self, job: Job<'_>) -> Result<Made, Failure> {
        let Job { path, lesson, templates, folder } = job;
        let plan = work_out(path, lesson)?;
        let desk = Desk::new(&plan, &templates)?;
        let finish = |(): &mut (), &print: &Print| {
            self.progress.set_message(format!("{} {}", shown(path), print.name()));
            let finished = self.finish(&desk, print, &folder);
            self.progress.inc(1);
            finished
        };
        let mut files = Vec::new();
        let mut missing = Vec::new();
        let finished = crew::map(self.prints.iter().collect(), 1, || (), finish);
        for (&print, finished) in self.prints.iter().zip(finished) {
            let finished = finished?;
            files.push(finished.file);
            if !finished.missing.is_empty() {
                missing.push((print, finished.missing));
            }
            let table = match print {
                Print::Flat(Sheet::Order) => {
                    Some(order_csv(&[Errand::of(&plan)], templates.words()))
                }
                Print::Flat(Sheet::Weigh) => Some(weigh_csv(&plan, &way(&folder, path))),
                _ => None,
            };
            if let Some(table) = table {
                let target = folder.join(format!("{}.csv", print.name()));
                let table =
                    table.map_err(|error| Failure::write(&target, std::io::Error::other(error)))?;
                files.push((target, table));
            }
        }
        drop(desk);
        Ok(Made { plan, files, missing })
    }

    /// The PDF of a handout, and the characters that its faces lack.
    fn finish(&self, desk: &Desk<'_>, print: Print, folder: &Path) -> Result<Finished, Failure> {
        let document = desk.write(print.sheet())?;
        let target = folder.join(format!("{}.pdf", print.name()));
        let pages = match print {
            Print::Flat(_) => page::lay_out(&document, self.faces),
            Print::Booklet(_) => {
                let style = Style::booklet(document.form, document.paper, document.edition);
                page::lay_out_in(&document, style, self.faces)
            }
        };
        // A class of hundreds has thousands of pages: what they were made of is not needed now.
        drop(document);
        let written = match print {
            Print::Flat(_) => pdf::write(&pages, self.faces),
            Print::Booklet(_) => pdf::write_booklet(&pages, self.faces),
        };
        let bytes = written
            .map_err(|error| Failure::Wrong(format!("error: {}: {error}", shown(&target))))?;
        Ok(Finished { file: (target, bytes), missing: pages.missing })
    }
}

/// A bar on long work, for people only.
fn progress(steps: usize) -> ProgressBar {
    if !std::io::stderr().is_terminal() {
        return ProgressBar::hidden();
    }
    let bar = ProgressBar::new(u64::try_from(steps).unwrap_or(u64::MAX));
    if let Ok(style) = ProgressStyle::with_template("{bar:30} {pos} of {len}  {msg}") {
        bar.set_style(style);
    }
    bar
}

/// The files, and the three numbers that a teacher wants first.
fn report(made: &Made) {
    let plan = &made.plan;
    let print = plan.lesson.print;
    let show = Show::new(print.units, print.currency);
    println!("{}", plan.lesson.heading.title);
    println!("  paint for each student  {}", show.volume_both(plan.student_paint.typical()));
    println!("  paint to mix in all     {}", show.measured_both(plan.to_mix()));
    if !plan.lesson.shops.is_empty() {
        println!("  to buy                  {}", show.money(plan.order.total));
        println!("  cost of each student    {}", show.money(plan.cost.per_student));
    }
    for (path, _) in &made.files {
        println!("  wrote {}", shown(path));
    }
    for (print, characters) in &made.missing {
        let names: Vec<String> =
            characters.iter().map(|c| format!("{c} (U+{:04X})", u32::from(*c))).collect();
        eprintln!(
            "warning: the {} has characters that the type lacks, shown as a box: {}",
            print.name(),
            names.join(", ")
        );
    }
}
