//! The fee at which a class pays for itself, with few students and with many.

use crate::handout::document::{DotFill, FeeCurve, FeeDot, Picture, PictureKind};
use crate::handout::words::{Words, fill};
use crate::plan::{Fees, Plan};
use crate::quantity::Money;
use crate::quantity::show::Show;
use rust_decimal::prelude::ToPrimitive;

/// The curve, this class and the fee that is asked.
pub(in crate::handout) fn fees(plan: &Plan, fees: &Fees, words: &Words) -> Picture {
    let show = words.show(&plan.lesson.print);
    let texts = &words.pictures.fee;
    let own = plan.heads.students;
    let here = fees.classes.iter().position(|class| class.students == own);
    let here = here.and_then(|at| Some((at, fees.classes.get(at)?)));
    let asked = fees.asked.map(|asked| show.money(asked));
    let dots = fees.classes.iter().map(|class| FeeDot {
        students: class.students,
        fee: height(class.fee),
        fill: if fees.asked.is_none() || fees.pays(class) {
            DotFill::Filled
        } else {
            DotFill::Open
        },
    });
    let points: Vec<String> = fees
        .classes
        .iter()
        .map(|class| {
            let students = class.students.to_string();
            fill(&texts.point, &[("students", &students), ("fee", &show.money(class.fee))])
        })
        .collect();
    let asked_sentence = asked.as_ref().map(|fee| fill(&texts.asked_sentence, &[("fee", fee)]));
    let title = title(plan, fees, words, &show);
    Picture {
        alt: fill(
            &texts.alt,
            &[
                ("points", &points.join(&texts.between)),
                ("asked", asked_sentence.as_deref().unwrap_or_default()),
                ("title", &title),
            ],
        ),
        kind: PictureKind::Fees(FeeCurve {
            title,
            x_label: texts.x.clone(),
            y_label: fill(&texts.y, &[("currency", plan.lesson.print.currency.code())]),
            line_label: texts.line.clone(),
            dot_label: if asked.is_some() { texts.dots.clone() } else { String::new() },
            dots: dots.collect(),
            asked: fees.asked.map(|fee| {
                (height(fee), fill(&texts.asked, &[("fee", asked.as_deref().unwrap_or_default())]))
            }),
            here: here.map(|(at, class)| {
                let students = own.to_string();
                let fee = show.money(class.fee);
                (at, fill(&texts.here, &[("students", &students), ("fee", &fee)]))
            }),
        }),
    }
}

/// What is seen: from how many students on the fee pays, or else what this class would need.
fn title(plan: &Plan, fees: &Fees, words: &Words, show: &Show) -> String {
    let texts = &words.pictures.fee;
    let last = fees.classes.last().map(|class| class.students).unwrap_or_default();
    let (pattern, students, fee) = match (fees.asked, fees.pays_from()) {
        (None, _) => (&texts.title, plan.heads.students, plan.cost.balance.pays_for_itself),
        (Some(asked), None) => (&texts.title_never, last, asked),
        (Some(asked), Some(1)) if fees.fails_again().is_empty() => {
            (&texts.title_always, last, asked)
        }
        (Some(asked), Some(from)) if fees.fails_again().is_empty() => {
            (&texts.title_from, from, asked)
        }
        (Some(asked), Some(from)) => (&texts.title_first, from, asked),
    };
    fill(pattern, &[("students", &students.to_string()), ("fee", &show.money(fee))])
}

/// Money as a height on paper.
fn height(money: Money) -> f64 {
    money.amount().to_f64().unwrap_or_default()
}
