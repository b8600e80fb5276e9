//! `order`: what to buy for one lesson or for several together.

use super::disk::write_outputs;
use super::failure::Failure;
use super::lessons::read_all;
use super::say::println;
use super::words::Words;
use super::{advice, args, json};
use crate::handout::{course_order, order_csv};
use crate::ink::Faces;
use crate::lesson::shown;
use crate::lesson::{Language, Lesson};
use crate::plan::{self, Course, Errand, Purchase};
use crate::quantity::show::Show;
use std::fmt::Write;

pub(super) fn order(arguments: &args::Order) -> Result<(), Failure> {
    let lessons: Vec<Lesson> = read_all(&arguments.lessons)?
        .into_iter()
        .map(|(_, mut lesson)| {
            arguments.print.apply(&mut lesson);
            lesson
        })
        .collect();
    let course = plan::course(lessons, &arguments.delivery)
        .map_err(|reason| Failure::Wrong(format!("error: {reason}\n")))?;
    sold_somewhere(&course)?;
    if arguments.json {
        println!("{}", json::course(&course, &arguments.delivery));
        return Ok(());
    }
    let language =
        course.lessons.first().map_or(Language::English, |plan| plan.lesson.print.language);
    let templates = Words::with(arguments.templates.as_deref())?.of(language)?;
    let mut files = Vec::new();
    if let Some(document) = course_order(&course, &templates)? {
        let faces = Faces::new();
        let target = arguments.out.join("order.pdf");
        let pages = crate::page::lay_out(&document, &faces);
        let bytes = crate::pdf::write(&pages, &faces)
            .map_err(|error| Failure::Wrong(format!("error: {}: {error}", shown(&target))))?;
        files.push((target, bytes));
        let target = arguments.out.join("order.csv");
        let errands: Vec<Errand> = course.errands().collect();
        let table = order_csv(&errands, templates.words())
            .map_err(|error| Failure::write(&target, std::io::Error::other(error)))?;
        files.push((target, table));
    }
    write_outputs(&files)?;
    report(&course);
    for (path, _) in &files {
        println!("wrote {}", shown(path));
    }
    for (plan, said) in course.lessons.iter().zip(course.advice(&arguments.delivery)) {
        advice::print(&plan.lesson, &said);
    }
    Ok(())
}

/// An order that leaves something out is none: everything is sold in a shop, or the lesson
/// says that it comes from elsewhere. Lessons without any shop have amounts only.
fn sold_somewhere(course: &Course) -> Result<(), Failure> {
    if course.lessons.first().is_none_or(|plan| plan.lesson.shops.is_empty()) {
        return Ok(());
    }
    let mut unsold: Vec<&str> = Vec::new();
    for line in course.errands().flat_map(|errand| &errand.order.lines) {
        if matches!(line.purchase, Purchase::NoPrice) && !unsold.contains(&line.item.as_str()) {
            unsold.push(&line.item);
        }
    }
    if unsold.is_empty() {
        return Ok(());
    }
    let mut text = String::new();
    for item in unsold {
        // Writing to a string does not fail.
        let _ = writeln!(text, "error: no shop sells \"{item}\"");
    }
    text.push_str(
        "  = help: give it a line in a price list, count it in the stock, or name it under \
         \"bought elsewhere\"\n",
    );
    Err(Failure::Wrong(text))
}

fn report(course: &Course) {
    let Some(first) = course.lessons.first() else { return };
    let print = first.lesson.print;
    let show = Show::new(print.units, print.currency);
    for plan in &course.lessons {
        let heading = &plan.lesson.heading;
        let date = heading.date.map(|date| date.to_string()).unwrap_or_default();
        println!("{date:10}  {}", heading.title);
        println!("            to mix {}", show.measured_both(plan.to_mix()));
    }
    if first.lesson.shops.is_empty() {
        return;
    }
    for errand in course.errands() {
        match errand.day {
            Some(day) => println!("delivery of {day}"),
            None => println!("before the first lesson"),
        }
        for bill in &errand.order.bills {
            println!("  {}  {}", show.money(bill.total()), bill.name);
        }
    }
    println!("to pay      {}", show.money(course.total()));
    if course.lessons.len() > 1 {
        println!("bought lesson by lesson it would be {}", show.money(course.lesson_by_lesson));
    }
}
