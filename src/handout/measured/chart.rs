//! Used against planned, canvas by canvas.

use super::canvases::Painted;
use super::text::class_name;
use crate::handout::context::consistency;
use crate::handout::document::{Picture, PictureKind, RuleLine, WeighedChart, WeighedPoint};
use crate::handout::words::{Words, fill};
use crate::plan::learn::Learned;
use crate::quantity::Volume;
use crate::quantity::show::Show;

/// Rules of thumb whose lines lie nearer together than this are one.
const NEAR: f64 = 1e-3;

/// More lines would be a thicket.
const MOST_RULES: usize = 3;

pub(super) fn chart(
    learned: &Learned,
    painted: &[Painted<'_>],
    words: &Words,
    show: &Show,
) -> Picture {
    let texts = &words.pictures.weighed;
    let groups: Vec<String> =
        learned.classes.iter().map(|class| class_name(class, words)).collect();
    let points = painted.iter().map(|canvas| WeighedPoint {
        group: canvas.class,
        x: show.volume_number(canvas.planned),
        y: [canvas.used.low(), canvas.used.typical(), canvas.used.high()]
            .map(|used| show.volume_number(used)),
    });
    let rules = rules(painted, words);
    let sums = groups.iter().enumerate().map(|(class, name)| {
        let own = || painted.iter().filter(move |canvas| canvas.class == class);
        let blanks = [
            ("class", name.as_str()),
            ("canvases", &own().count().to_string()),
            ("planned", &show.volume(own().map(|canvas| canvas.planned).sum())),
            ("used", &show.volume(own().map(|canvas| canvas.used.typical()).sum())),
        ];
        fill(&texts.class, &blanks)
    });
    let title = title(painted, words, show);
    let said: Vec<String> = rules
        .iter()
        .map(|rule| {
            let share = show.percent(rule.slope);
            fill(&texts.rule_sentence, &[("rule", &rule.label), ("share", &share)])
        })
        .collect();
    Picture {
        alt: fill(
            &texts.alt,
            &[
                ("title", &title),
                ("classes", &sums.collect::<Vec<_>>().join(" ")),
                ("rules", &said.join(" ")),
            ],
        ),
        kind: PictureKind::Weighed(WeighedChart {
            title,
            x_label: fill(&texts.x, &[("unit", show.volume_unit())]),
            y_label: fill(&texts.y, &[("unit", show.volume_unit())]),
            even_label: texts.even.clone(),
            rules,
            groups,
            points: points.collect(),
        }),
    }
}

/// What is seen: how much more or less than planned all canvases took together.
fn title(painted: &[Painted<'_>], words: &Words, show: &Show) -> String {
    let texts = &words.pictures.weighed;
    let planned: Volume = painted.iter().map(|canvas| canvas.planned).sum();
    let used: Volume = painted.iter().map(|canvas| canvas.used.typical()).sum();
    let more = if planned > Volume::default() { (used / planned).value - 1.0 } else { 0.0 };
    let pattern = match (more * 100.0).round() {
        part if part > 0.0 => &texts.title_more,
        part if part < 0.0 => &texts.title_less,
        _ => &texts.title_even,
    };
    fill(pattern, &[("share", &show.percent(more.abs()))])
}

/// One line for each way of pouring that was planned with a film of its own.
fn rules(painted: &[Painted<'_>], words: &Words) -> Vec<RuleLine> {
    let texts = &words.pictures.weighed;
    let mut found: Vec<(f64, Vec<String>)> = Vec::new();
    for canvas in painted {
        let Some(slope) = canvas.rule() else { continue };
        let mut by: Vec<String> =
            canvas.consistencies.iter().map(|it| consistency(*it, words)).collect();
        by.dedup();
        let by = by.join(&words.mixes.between);
        let blanks = [("technique", canvas.technique), ("consistency", by.as_str())];
        let poured = fill(&texts.poured, &blanks);
        match found.iter_mut().find(|(known, _)| (known - slope).abs() < NEAR * slope) {
            Some((_, known)) if known.contains(&poured) => {}
            Some((_, known)) => known.push(poured),
            None => found.push((slope, vec![poured])),
        }
    }
    let alone = found.len() == 1;
    let line = |(slope, poured): (f64, Vec<String>)| {
        let poured = poured.join(&words.order.or);
        let label = match alone {
            true => texts.rule.clone(),
            false => fill(&texts.rule_of, &[("poured", &poured)]),
        };
        RuleLine { label, slope }
    };
    found.into_iter().take(MOST_RULES).map(line).collect()
}
