//! Bars: colours of a canvas, and what is needed of what will be there.

use super::ink;
use crate::handout::context::{amount, canvas_paint};
use crate::handout::document::{Bar, BarPart, Bars, Picture, PictureKind, ShareRow, Shares};
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

/// One bar a material that is bought: what is expected to be used, what is in reserve and what
/// is left, in percent of stock and purchase together.
pub(in crate::handout) fn bought(order: &Order, words: &Words, show: &Show) -> Picture {
    let texts = &words.pictures.bought;
    let mut rows = Vec::new();
    let mut alt = Vec::new();
    for line in &order.lines {
        let OrderItem::Material(_) = &line.what else { continue };
        let Purchase::Packs { left_over, .. } = &line.purchase else { continue };
        let Some((needed, reserve, left)) = sizes(line, left_over) else { continue };
        let whole = amount(&at_hand(line, left_over), words, show);
        let blanks = [
            ("item", line.item.as_str()),
            ("whole", &whole),
            ("need", &amount(&line.needed, words, show)),
            ("reserve", &amount(&line.reserve, words, show)),
            ("left", &amount(left_over, words, show)),
        ];
        let label = fill(if reserve > 0.0 { &texts.reserved } else { &texts.bar }, &blanks);
        alt.push(fill(&texts.sentence, &[("bar", &label)]));
        rows.push(ShareRow {
            name: line.item.clone(),
            amount: whole,
            sizes: vec![needed - reserve, reserve, left],
        });
    }
    Picture {
        alt: fill(&texts.alt, &[("bars", &alt.join(" "))]),
        kind: PictureKind::Shares(Shares {
            title: texts.title.clone(),
            parts: vec![texts.expected.clone(), texts.reserve.clone(), texts.left.clone()],
            rows,
        }),
    }
}

/// What there is of an item when the class begins.
fn at_hand(line: &OrderLine, left_over: &Amount) -> Amount {
    match (line.needed, *left_over) {
        (Amount::Volume(needed), Amount::Volume(left)) => Amount::Volume(needed + left),
        (Amount::Mass(needed), Amount::Mass(left)) => Amount::Mass(needed + left),
        (needed, _) => needed,
    }
}

/// Needed, in reserve of it, and left over, on one ruler; `None` where they differ in kind.
fn sizes(line: &OrderLine, left_over: &Amount) -> Option<(f64, f64, f64)> {
    let (needed, reserve, left) = match (&line.needed, &line.reserve, left_over) {
        (Amount::Volume(needed), Amount::Volume(reserve), Amount::Volume(left)) => {
            (in_ml(*needed), in_ml(*reserve), in_ml(*left))
        }
        (Amount::Mass(needed), Amount::Mass(reserve), Amount::Mass(left)) => {
            (in_gram(*needed), in_gram(*reserve), in_gram(*left))
        }
        _ => return None,
    };
    (needed > 0.0).then_some((needed, reserve, left))
}
