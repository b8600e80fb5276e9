use super::{Matter, Warning, path};
use crate::plan::Plan;
use crate::plan::jars::{is_idle, last_day_of};

/// Jars that the lesson would take from, if their paint still kept.
pub(super) fn old(plan: &Plan) -> impl Iterator<Item = Warning> + '_ {
    let day = plan.lesson.heading.date;
    let jars = plan.lesson.jars.iter().enumerate();
    let wanted = jars.filter(|(_, jar)| !is_idle(jar, &plan.mixing));
    wanted.filter_map(move |(at, jar)| {
        let lesson = day?;
        let last_day = last_day_of(jar, &plan.lesson).filter(|last| *last < lesson)?;
        let matter = Matter::OldJar {
            colour: jar.colour.clone(),
            mix: jar.mix.clone(),
            amount: jar.amount,
            last_day,
            lesson,
        };
        Some(Warning { matter, path: path(["jars", &format!("no. {}", at + 1), "mixed"]) })
    })
}
