use super::{DEMOS, everywhere};
use puddlebook::handout::{Block, CupLabel, Document, Inline, Sheet};
use puddlebook::page::TagKind;
use puddlebook::quantity::units::in_gram;

fn labels(document: &Document) -> &[CupLabel] {
    let labels = document.blocks.iter().find_map(|block| match block {
        Block::CupLabels(labels) => Some(labels),
        _ => None,
    });
    labels.unwrap()
}

fn text(block: &Block) -> String {
    match block {
        Block::Paragraph(words) => super::words(words),
        other => panic!("not a paragraph: {other:?}"),
    }
}

#[test]
fn every_cup_of_the_class_has_a_label_with_its_grams() {
    for file in DEMOS {
        for (plan, document, pages) in everywhere(file, Sheet::Tools) {
            let labels = labels(&document);
            let of_set =
                plan.lesson.canvases.iter().zip(&plan.canvases).map(|(canvas, planned)| {
                    let cups: usize = planned.layers.iter().map(|layer| layer.cups.len()).sum();
                    canvas.each.get() as usize * cups
                });
            assert_eq!(labels.len(), of_set.sum::<usize>() * plan.heads.sets() as usize);
            let grams = |label: &CupLabel| -> f64 {
                let fill = text(&label.body[1]);
                let fill = fill.strip_prefix("Fill ").unwrap();
                fill.trim_end_matches('g').trim().parse().unwrap()
            };
            let filled: f64 = labels.iter().map(grams).sum();
            let planned =
                plan.lesson.canvases.iter().zip(&plan.canvases).map(|(canvas, planned)| {
                    let cups = planned.layers.iter().flat_map(|layer| &layer.cups);
                    f64::from(canvas.each.get()) * cups.map(|cup| in_gram(cup.fill)).sum::<f64>()
                });
            let planned = planned.sum::<f64>() * f64::from(plan.heads.sets());
            assert!((filled - planned).abs() < 0.5, "{file}: {filled} and {planned} g");
            for label in labels {
                assert!(label.swatch.is_some());
                let Block::Paragraph(words) = &label.body[2] else { panic!("no blanks") };
                let blanks = words.iter().filter(|word| matches!(word, Inline::Blank { .. }));
                assert_eq!(blanks.count(), 2);
            }
            let fields = pages.tags.iter().filter(|tag| matches!(tag.kind, TagKind::Field(_)));
            assert_eq!(fields.count(), 2 * labels.len(), "each weighing is a field");
        }
    }
}

#[test]
fn labels_go_through_students_in_their_order() {
    let all = everywhere("boathouse-evening", Sheet::Tools);
    let labels = labels(&all[0].1);
    assert_eq!(text(&labels[0].body[0]), "Student 1: square");
    assert_eq!((labels[0].title.as_str(), labels[3].title.as_str()), ("harbour blue", "sea glass"));
    assert_eq!(text(&labels[labels.len() - 1].body[0]), "Spare: upright");
}
