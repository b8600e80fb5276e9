//! The plan as JSON: every figure at full precision, with its unit in the key.
//!
//! Lengths are in millimetres (`_mm`), areas in square centimetres (`_cm2`), volumes
//! in millilitres (`_ml`), masses in grams (`_g`), densities in grams per millilitre;
//! times of the day are text of 24 hours, stretches of time whole minutes (`_minutes`);
//! money is text in the currency of the lesson, so that no reader rounds it; `costs` gives each
//! amount its currency.

mod costs;
mod room;

use super::advice;
use crate::lesson::{Amount, Life};
use crate::plan::{
    Batch, CanvasPlan, Course, CupPlan, FinishPlan, LayerPlan, Leftover, Order, OrderItem,
    OrderLine, Plan, Poured, Purchase, Reserve, ShopBill,
};
use crate::quantity::units::{in_g_per_ml, in_gram, in_ml, in_mm, in_square_cm};
use crate::quantity::{Date, Length, Spread, Volume};
use serde_json::{Value, json};

/// The whole plan, indented.
pub(super) fn json(plan: &Plan) -> String {
    let heading = &plan.lesson.heading;
    let value = json!({
        "title": heading.title,
        "date": heading.date.map(|date| date.to_string()),
        "currency": plan.lesson.print.currency.code(),
        "class": {
            "students": plan.heads.students,
            "demonstrations": plan.heads.demonstrations,
            "spares": plan.heads.spares,
            "sets": plan.heads.sets(),
            "tables": plan.heads.tables,
        },
        "paint": {
            "student_ml": volumes(plan.student_paint),
            "class_ml": volumes(plan.class_paint),
            "to_mix_ml": in_ml(plan.to_mix()),
        },
        "canvases": plan.canvases.iter().map(canvas).collect::<Vec<_>>(),
        "mixing": plan.mixing.iter().map(batch).collect::<Vec<_>>(),
        "finishing": plan.finishing.iter().map(|need| json!({
            "material": need.material.name,
            "expected_ml": in_ml(need.expected),
            "reserve_ml": in_ml(need.reserve),
            "volume_ml": in_ml(need.volume),
            "mass_g": in_gram(need.mass),
        })).collect::<Vec<_>>(),
        "leftovers": plan.leftovers.iter().map(|left| leftover(left, plan)).collect::<Vec<_>>(),
        "supplies": plan.supplies.iter().map(|need| json!({
            "item": need.item,
            "pieces": need.pieces,
            "washable": need.life == Life::Washable,
        })).collect::<Vec<_>>(),
        "reserve": reserve(plan),
        "weighed": weighed(plan),
        "order": order(&plan.order),
        "cost": costs::cost(plan),
        "timetable": plan.timetable.as_ref().map(room::timetable),
        "room": room::room(&plan.room),
        "warnings": advice::json(&plan.lesson, &plan.advice()),
        "cautions": plan.cautions.iter().map(|caution| &caution.name).collect::<Vec<_>>(),
    });
    format!("{value:#}")
}

/// A course with these days of delivery: its lessons in short, its orders in full.
pub(super) fn course(course: &Course, deliveries: &[Date]) -> String {
    let lessons = course.lessons.iter().zip(course.advice(deliveries)).map(|(plan, said)| {
        json!({
            "title": plan.lesson.heading.title,
            "date": plan.lesson.heading.date.map(|date| date.to_string()),
            "students": plan.heads.students,
            "sets": plan.heads.sets(),
            "mixing": plan.mixing.iter().map(batch).collect::<Vec<_>>(),
            "leftovers": plan.leftovers.iter().map(|left| leftover(left, plan)).collect::<Vec<_>>(),
            "order_alone": plan.order.total.amount().to_string(),
            "warnings": advice::json(&plan.lesson, &said),
        })
    });
    let deliveries = course.deliveries.iter().map(|delivery| {
        json!({
            "day": delivery.day.map(|day| day.to_string()),
            "lessons": delivery.lessons.clone().collect::<Vec<_>>(),
            "order": order(&delivery.order),
        })
    });
    let currency = course.lessons.first().map(|plan| plan.lesson.print.currency.code());
    let value = json!({
        "currency": currency,
        "lessons": lessons.collect::<Vec<_>>(),
        "deliveries": deliveries.collect::<Vec<_>>(),
        "total": course.total().amount().to_string(),
        "lesson_by_lesson": course.lesson_by_lesson.amount().to_string(),
    });
    format!("{value:#}")
}

fn order(order: &Order) -> Value {
    json!({
        "lines": order.lines.iter().map(line).collect::<Vec<_>>(),
        "bills": order.bills.iter().map(bill).collect::<Vec<_>>(),
        "total": order.total.amount().to_string(),
        "within": order.within.map(|gap| gap.amount().to_string()),
        "from_one_shop": order.singly.iter().map(|single| json!({
            "shop": single.name,
            "total": single.total.map(|total| total.amount().to_string()),
        })).collect::<Vec<_>>(),
    })
}

/// What the films of the lesson rest on, and the plan beside the one without weighings.
fn weighed(plan: &Plan) -> Value {
    let (Some(basis), Some(compared)) = (plan.weighed(), plan.compared()) else {
        return Value::Null;
    };
    let layers = compared.layers.iter().map(|layer| {
        json!({
            "canvas": layer.canvas,
            "layer": layer.layer,
            "technique": layer.technique,
            "consistency": layer.consistency.word(),
            "cups": layer.weighed.cups,
            "canvases": layer.weighed.canvases,
            "classes": layer.weighed.classes,
            "mean_mm": in_mm(layer.weighed.mean),
            "own_weight": layer.weighed.own_weight.fraction().to_string(),
            "film_before_mm": films(layer.weighed.instead_of),
            "film_now_mm": in_mm(layer.film_now),
            "paint_before_ml": in_ml(layer.paint_before),
            "paint_now_ml": in_ml(layer.paint_now),
        })
    });
    json!({
        "cups": basis.cups,
        "canvases": basis.canvases,
        "classes": basis.classes,
        "layers": layers.collect::<Vec<_>>(),
        "class_before_ml": in_ml(compared.class_before),
        "class_now_ml": in_ml(compared.class_now),
    })
}

/// The argument for the reserve, and what a habit would do instead.
fn reserve(plan: &Plan) -> Value {
    let Reserve { rule, deviations, expected, by_colour, as_one, habit } = &plan.reserve;
    let batches = plan.mixing.iter().zip(&habit.mixing).map(|(batch, volume)| {
        json!({
            "colour": batch.colour.name,
            "mix": batch.mix.name,
            "volume_ml": in_ml(*volume),
        })
    });
    let finishes = plan.finishing.iter().zip(&habit.finishing).map(
        |(need, volume)| json!({ "material": need.material.name, "volume_ml": in_ml(*volume) }),
    );
    json!({
        "enough_in": { "classes": rule.level.classes(), "out_of": rule.level.out_of() },
        "deviations": deviations,
        "class_varies": rule.class_varies.fraction().to_string(),
        "students_vary": rule.students_vary.fraction().to_string(),
        "expected_ml": in_ml(*expected),
        "by_colour_ml": in_ml(*by_colour),
        "as_one_ml": in_ml(*as_one),
        "habit": {
            "extra": habit.extra.fraction().to_string(),
            "mixing": batches.collect::<Vec<_>>(),
            "finishing": finishes.collect::<Vec<_>>(),
            "to_mix_ml": in_ml(habit.to_mix()),
            "total": habit.total.amount().to_string(),
        },
    })
}

fn volumes(volume: Spread<Volume>) -> Value {
    json!({
        "low": in_ml(volume.low()),
        "typical": in_ml(volume.typical()),
        "high": in_ml(volume.high()),
    })
}

fn films(film: Spread<Length>) -> Value {
    json!({
        "low": in_mm(film.low()),
        "typical": in_mm(film.typical()),
        "high": in_mm(film.high()),
    })
}

fn canvas(canvas: &CanvasPlan) -> Value {
    json!({
        "name": canvas.name,
        "face_cm2": in_square_cm(canvas.areas.face),
        "perimeter_mm": in_mm(canvas.areas.perimeter),
        "edge_cm2": in_square_cm(canvas.areas.edge),
        "painted_cm2": in_square_cm(canvas.areas.painted),
        "paint_ml": volumes(canvas.paint),
        "to_mix_ml": in_ml(canvas.to_mix),
        "layers": canvas.layers.iter().map(layer).collect::<Vec<_>>(),
        "finishes": canvas.finishes.iter().map(finish).collect::<Vec<_>>(),
    })
}

fn layer(layer: &LayerPlan) -> Value {
    json!({
        "name": layer.name,
        "mix": layer.layer.mix.name,
        "consistency": layer.layer.mix.consistency.word(),
        "film_mm": films(layer.film),
        "paint_ml": volumes(layer.paint),
        "cups": layer.cups.iter().map(cup).collect::<Vec<_>>(),
    })
}

fn cup(cup: &CupPlan) -> Value {
    json!({
        "colour": cup.colour.name,
        "share": cup.share.fraction().to_string(),
        "paint_ml": in_ml(cup.paint),
        "fill_g": in_gram(cup.fill),
        "batch": batch(&cup.batch),
    })
}

fn finish(plan: &FinishPlan) -> Value {
    json!({
        "name": plan.finish.name,
        "material": plan.finish.material.name,
        "coats": plan.finish.coats,
        "after_days": plan.finish.after_days,
        "paint_ml": volumes(plan.paint),
    })
}

fn batch(batch: &Batch) -> Value {
    json!({
        "colour": batch.colour.name,
        "mix": batch.mix.name,
        "cups": batch.cups,
        "expected_ml": in_ml(batch.expected),
        "reserve_ml": in_ml(batch.reserve),
        "need_ml": in_ml(batch.need()),
        "from_jars_ml": in_ml(batch.from_jars),
        "volume_ml": in_ml(batch.volume),
        "mass_g": in_gram(batch.mass),
        "density_g_per_ml": in_g_per_ml(batch.density),
        "ingredients": batch.ingredients.iter().map(poured).collect::<Vec<_>>(),
    })
}

fn poured(poured: &Poured) -> Value {
    json!({
        "material": poured.material.name,
        "volume_ml": in_ml(poured.volume),
        "mass_g": in_gram(poured.mass),
        "weighed_g": in_gram(poured.weighed),
        "reading_g": in_gram(poured.reading),
        "drops": poured.drops,
    })
}

fn line(line: &OrderLine) -> Value {
    let purchase = match &line.purchase {
        Purchase::Nothing => json!({ "kind": "nothing" }),
        Purchase::Elsewhere => json!({ "kind": "elsewhere" }),
        Purchase::NoPrice => json!({ "kind": "no price" }),
        Purchase::Packs { packs, cost, left_over } => json!({
            "kind": "packs",
            "packs": packs.iter().map(|pack| json!({
                "shop": pack.shop,
                "count": pack.count,
                "size": amount(&pack.size),
                "price": pack.price.amount().to_string(),
            })).collect::<Vec<_>>(),
            "cost": cost.amount().to_string(),
            "left_over": amount(left_over),
        }),
    };
    json!({
        "item": line.item,
        "kind": match &line.what {
            OrderItem::Material(_) => "material",
            OrderItem::Supply(_) => "supply",
        },
        "by_lesson": line.by_lesson.iter().map(amount).collect::<Vec<_>>(),
        "needed": amount(&line.needed),
        "reserve": amount(&line.reserve),
        "in_stock": amount(&line.in_stock),
        "to_buy": amount(&line.to_buy),
        "purchase": purchase,
    })
}

fn bill(bill: &ShopBill) -> Value {
    json!({
        "shop": bill.shop,
        "name": bill.name,
        "goods": bill.goods.amount().to_string(),
        "delivery": bill.delivery.amount().to_string(),
        "total": bill.total().amount().to_string(),
    })
}

fn leftover(left: &Leftover, plan: &Plan) -> Value {
    json!({
        "colour": left.colour.name,
        "mix": left.mix.name,
        "volume_ml": in_ml(left.volume),
        "mass_g": in_gram(left.mass),
        "last_day": left.last_day.map(|day| day.to_string()),
        "covers": left.covers(plan).iter().map(|cover| json!({
            "canvas": cover.canvas,
            "layer": cover.layer,
            "cups": cover.cups,
        })).collect::<Vec<_>>(),
    })
}

fn amount(amount: &Amount) -> Value {
    match amount {
        Amount::Volume(volume) => json!({ "ml": in_ml(*volume) }),
        Amount::Mass(mass) => json!({ "g": in_gram(*mass) }),
        Amount::Pieces(pieces) => json!({ "pieces": pieces }),
    }
}
