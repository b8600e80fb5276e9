//! Bars: colours of a canvas, and what is needed of what will be there.

use super::ink;
use crate::handout::context::{amount, canvas_paint};
use crate::handout::document::{Bar, BarPart, Bars, Picture, PictureKind};
use crate::handout::words::{Words, fill};
use crate::lesson::Amount;
use crate::plan::{Order, OrderItem, OrderLine, Plan, Purchase};
use crate::quantity::Volume;
use crate::quantity::show::Show;
use crate::quantity::units::{in_gram, in_ml};

/// One bar a canvas and layer, its colours end to end.
pub(super) fn colours(plan: &Plan, words: &Words, show: &Show) -> Picture {
    let texts = &words.pictures.colours;
    let mut bars = Vec::new();
    let mut alt = Vec::new();
    let mut most = (Volume::default(), String::new());
    for canvas in &plan.canvases {
        let amounts = canvas_paint(canvas, show);
        for (layer, amounts) in canvas.layers.iter().zip(&amounts.parts) {
            let label = match canvas.layers.len() {
                1 => canvas.name.clone(),
                _ => fill(&texts.layer, &[("canvas", &canvas.name), ("layer", &layer.name)]),
            };
            let parts: Vec<BarPart> = layer
                .cups
                .iter()
                .zip(&amounts.parts)
                .map(|(cup, amount)| BarPart {
                    label: format!("{} {}", cup.colour.name, amount.whole),
                    value: show.volume_number(cup.paint),
                    swatch: Some(ink(cup.colour.swatch)),
                })
                .collect();
            for (cup, amount) in layer.cups.iter().zip(&amounts.parts) {
                if cup.paint > most.0 {
                    let values = [
                        ("colour", cup.colour.name.as_str()),
                        ("canvas", &label),
                        ("paint", &amount.whole),
                    ];
                    most = (cup.paint, fill(&texts.title, &values));
                }
            }
            alt.push(described(&texts.bar, &label, &parts));
            bars.push(Bar { label, parts, mark: None });
        }
    }
    Picture {
        alt: fill(&texts.alt, &[("bars", &alt.join(" "))]),
        kind: PictureKind::Bars(Bars {
            title: most.1,
            axis: fill(&texts.axis, &[("unit", show.volume_unit())]),
            bars,
        }),
    }
}

fn described(pattern: &str, label: &str, parts: &[BarPart]) -> String {
    let parts: Vec<&str> = parts.iter().map(|part| part.label.as_str()).collect();
    fill(pattern, &[("label", label), ("parts", &parts.join(", "))])
}

/// One bar a material that is bought: needed and left, in percent of stock and
/// purchase together.
pub(in crate::handout) fn bought(order: &Order, words: &Words, show: &Show) -> Picture {
    let texts = &words.pictures.bought;
    let mut fullest = (0.0, String::new());
    let mut bars = Vec::new();
    let mut alt = Vec::new();
    for line in &order.lines {
        let OrderItem::Material(_) = &line.what else { continue };
        let Purchase::Packs { left_over, .. } = &line.purchase else { continue };
        let Some(needed) = needed_percent(line, left_over) else { continue };
        let need = amount(&line.needed, words, show);
        let left = amount(left_over, words, show);
        if needed > fullest.0 {
            let share = show.percent(needed / 100.0);
            fullest = (needed, fill(&texts.title, &[("item", &line.item), ("share", &share)]));
        }
        let label = fill(&texts.bar, &[("item", &line.item), ("need", &need), ("left", &left)]);
        let part = |value| BarPart { label: String::new(), value, swatch: None };
        alt.push(fill(&texts.sentence, &[("bar", &label)]));
        bars.push(Bar { label, parts: vec![part(needed), part(100.0 - needed)], mark: None });
    }
    Picture {
        alt: fill(&texts.alt, &[("bars", &alt.join(" "))]),
        kind: PictureKind::Bars(Bars { title: fullest.1, axis: texts.axis.clone(), bars }),
    }
}

/// Needed in percent of needed and left over; `None` where the two differ in kind.
fn needed_percent(line: &OrderLine, left_over: &Amount) -> Option<f64> {
    let (needed, left) = match (&line.needed, left_over) {
        (Amount::Volume(needed), Amount::Volume(left)) => (in_ml(*needed), in_ml(*left)),
        (Amount::Mass(needed), Amount::Mass(left)) => (in_gram(*needed), in_gram(*left)),
        (Amount::Pieces(needed), Amount::Pieces(left)) => (f64::from(*needed), f64::from(*left)),
        _ => return None,
    };
    (needed > 0.0).then(|| 100.0 * needed / (needed + left))
}
