//! What must hold for every lesson.

use super::generated::lessons;
use super::studio::*;
use proptest::prelude::*;
use puddlebook::lesson::{Amount, Lesson, Students};
use puddlebook::plan::{OrderItem, OrderLine, Plan, Purchase};
use puddlebook::quantity::units::{in_gram, in_ml, in_mm, inch};
use puddlebook::quantity::{Mass, Money, UnitSystem, Volume};

/// An amount of a line in millilitres or pieces.
fn measured(line: &OrderLine, amount: Amount) -> f64 {
    match (&line.what, amount) {
        (OrderItem::Material(_), Amount::Volume(volume)) => in_ml(volume),
        (OrderItem::Material(material), Amount::Mass(mass)) => in_ml(mass / material.density),
        (OrderItem::Supply(_), Amount::Pieces(pieces)) => f64::from(pieces),
        other => panic!("not comparable: {other:?}"),
    }
}

fn needs(plan: &Plan) -> Vec<(String, f64)> {
    plan.order.lines.iter().map(|line| (line.item.clone(), measured(line, line.needed))).collect()
}

/// Every item of the first order is in the second, and at least as much of it.
#[track_caller]
fn assert_never_less(few: &Plan, many: &Plan) {
    let many = needs(many);
    for (item, need) in needs(few) {
        let (_, more) = many.iter().find(|(other, _)| *other == item).unwrap();
        assert!(*more >= need * (1.0 - 1e-12), "{item}: {more} after {need}");
    }
}

fn deeper(mut lesson: Lesson) -> Lesson {
    for canvas in &mut lesson.canvases {
        canvas.depth += inch(0.25);
    }
    lesson
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(96))]

    #[test]
    fn paint_is_conserved(lesson in lessons()) {
        let cup_loss = lesson.mixing.cup_loss;
        let plan = planned(lesson);
        let mut set = Volume::default();
        for (canvas, kind) in plan.canvases.iter().zip(&plan.lesson.canvases) {
            let mut layers = Volume::default();
            let mut to_mix = Volume::default();
            for layer in &canvas.layers {
                // Area times film, worked from the plain numbers.
                let area = canvas.areas.painted.value * 1e6;
                let film = in_mm(layer.film.typical());
                assert_near(in_ml(layer.paint.typical()), area * film / 1e3, 1e-9 * area);
                assert_same(layer.paint.typical(), layer.cups.iter().map(|cup| cup.paint).sum());
                layers += layer.paint.typical();
                for cup in &layer.cups {
                    assert_same(cup.batch.need(), cup.paint + cup_loss);
                    to_mix += cup.batch.need();
                }
            }
            assert_same(canvas.paint.typical(), layers);
            assert_same(canvas.to_mix, to_mix);
            set += to_mix * f64::from(kind.each.get());
        }
        assert_same(plan.student_paint.typical(), set);
        assert_same(plan.class_paint.typical(), set * f64::from(plan.heads.sets()));
        let expected: Volume = plan.mixing.iter().map(|batch| batch.expected).sum();
        assert_same(plan.class_paint.typical(), expected);
        assert_same(plan.class_paint.typical(), plan.reserve.expected);
        prop_assert!(plan.class_paint.low() <= plan.class_paint.typical());
        prop_assert!(plan.class_paint.typical() <= plan.class_paint.high());
    }

    #[test]
    fn batches_hold_their_ingredients(lesson in lessons()) {
        let scale = lesson.mixing.scale_step;
        let step = match lesson.print.units {
            UnitSystem::Us => lesson.mixing.step_us,
            UnitSystem::Metric => lesson.mixing.step_metric,
        };
        let plan = planned(lesson);
        let cups = plan.canvases.iter().flat_map(|canvas| &canvas.layers).flat_map(|layer| &layer.cups);
        for batch in &plan.mixing {
            // Enough for what is needed and for every cup, rounded up by less than one step.
            let fills = plan.canvases.iter().zip(&plan.lesson.canvases).flat_map(|(canvas, kind)| {
                let times = f64::from(kind.each.get() * plan.heads.sets());
                let cups = canvas.layers.iter().flat_map(|layer| &layer.cups);
                cups.map(move |cup| (cup, times))
            });
            let fills: Volume = fills
                .filter(|(cup, _)| {
                    cup.colour.name == batch.colour.name && cup.batch.mix.name == batch.mix.name
                })
                .map(|(cup, times)| cup.batch.volume * times)
                .sum();
            let least = batch.need().max(fills);
            prop_assert!(batch.volume >= least);
            let over = ((batch.volume - least) / step).value;
            prop_assert!(over < 1.0);
            let steps = (batch.volume / step).value;
            assert_near(steps, steps.round(), 1e-6);
        }
        for cup in cups {
            // Filled to whole steps of the scale, by less than one of them too much.
            let exact = cup.batch.need() * cup.density();
            prop_assert!(cup.batch.volume >= cup.batch.need());
            assert_near((cup.fill / scale).value, (cup.fill / scale).value.round(), 1e-6);
            prop_assert!(((cup.fill - exact) / scale).value < 1.0);
            let last = cup.batch.ingredients.last().map(|poured| poured.reading);
            prop_assert!(last.is_some_and(|last| (last - cup.fill).abs() < scale / 1e6));
        }
        let cups = plan.canvases.iter().flat_map(|canvas| &canvas.layers).flat_map(|layer| &layer.cups);
        for batch in plan.mixing.iter().chain(cups.map(|cup| &cup.batch)) {
            assert_same(batch.volume, batch.ingredients.iter().map(|poured| poured.volume).sum());
            let mass: Mass = batch.ingredients.iter().map(|poured| poured.mass).sum();
            assert_near((batch.mass / mass).value, 1.0, 1e-12);
            assert_same(batch.volume, batch.mass / batch.density);
            for poured in &batch.ingredients {
                assert_same(poured.volume, poured.mass / poured.material.density);
            }
            // The scale climbs in whole steps to the mass of the batch; each ingredient is
            // off by less than a step.
            let mut before = Mass::default();
            for poured in &batch.ingredients {
                let steps = (poured.reading / scale).value;
                assert_near(steps, steps.round(), 1e-6);
                assert_near(in_gram(poured.reading), in_gram(before + poured.weighed), 1e-9);
                let off = ((poured.weighed - poured.mass) / scale).value;
                prop_assert!(poured.weighed >= Mass::default());
                prop_assert!(off.abs() < 1.0 + 1e-9);
                before = poured.reading;
            }
            prop_assert!((before - batch.mass).abs() <= scale * (0.5 + 1e-9));
        }
    }

    #[test]
    fn the_order_is_enough_and_costs_what_its_packs_cost(lesson in lessons()) {
        let plan = planned(lesson);
        let mut total = Money::ZERO;
        for line in &plan.order.lines {
            let (needed, in_stock) = (measured(line, line.needed), measured(line, line.in_stock));
            assert_near(measured(line, line.to_buy), (needed - in_stock).max(0.0), 1e-6);
            match &line.purchase {
                Purchase::Elsewhere => unreachable!("nothing is bought elsewhere"),
                Purchase::Packs { packs, cost, left_over } => {
                    let bought: f64 = packs
                        .iter()
                        .map(|pack| measured(line, pack.size) * f64::from(pack.count))
                        .sum();
                    prop_assert!(bought + in_stock >= needed * (1.0 - 1e-6));
                    let left = bought + in_stock - needed;
                    assert_near(measured(line, *left_over), left.max(0.0), 1e-6 * needed);
                    let sum: Money = packs.iter().map(|pack| pack.price * pack.count).sum();
                    prop_assert_eq!(*cost, sum);
                    total += sum;
                }
                Purchase::Nothing => {
                    prop_assert!(line.item == "water" || in_stock >= needed * (1.0 - 1e-9));
                }
                Purchase::NoPrice => prop_assert!(false, "{} has a price", line.item),
            }
        }
        prop_assert_eq!(plan.order.total, total);
        prop_assert_eq!(plan.cost.order, total);
        prop_assert!(plan.order.within.is_none());
    }

    #[test]
    fn more_students_never_need_less(lesson in lessons(), more in 1_u32..20) {
        let few = planned(lesson.clone());
        let mut lesson = lesson;
        lesson.class.students = Students::Count(some(few.heads.students + more));
        let many = planned(lesson);
        assert_never_less(&few, &many);
        prop_assert!(many.class_paint.typical() > few.class_paint.typical());
        prop_assert!(many.order.total >= few.order.total);
    }

    #[test]
    fn a_deeper_edge_never_needs_less(lesson in lessons()) {
        let shallow = planned(lesson.clone());
        let deep = planned(deeper(lesson));
        assert_never_less(&shallow, &deep);
        for (shallow, deep) in shallow.canvases.iter().zip(&deep.canvases) {
            prop_assert!(deep.paint.typical() >= shallow.paint.typical());
        }
    }

    #[test]
    fn units_change_steps_and_no_quantity(lesson in lessons()) {
        let in_units = |units| {
            let mut lesson = lesson.clone();
            lesson.print.units = units;
            planned(lesson)
        };
        let (us, metric) = (in_units(UnitSystem::Us), in_units(UnitSystem::Metric));
        prop_assert_eq!(us.student_paint, metric.student_paint);
        prop_assert_eq!(us.class_paint, metric.class_paint);
        for (us, metric) in us.canvases.iter().zip(&metric.canvases) {
            prop_assert_eq!(us.areas, metric.areas);
            prop_assert_eq!(us.paint, metric.paint);
            prop_assert_eq!(us.to_mix, metric.to_mix);
        }
        for (us, metric) in us.mixing.iter().zip(&metric.mixing) {
            prop_assert_eq!(us.need(), metric.need());
        }
        prop_assert_eq!(us.supplies.len(), metric.supplies.len());
        for (us, metric) in us.supplies.iter().zip(&metric.supplies) {
            prop_assert_eq!(us.pieces, metric.pieces);
        }
    }

    #[test]
    fn everything_on_the_list_is_priced(lesson in lessons()) {
        let cost = planned(lesson).cost;
        prop_assert!(cost.unpriced.is_empty());
        // Paint is used up in every lesson, and it is never free.
        prop_assert!(cost.used > Money::ZERO);
    }
}
