//! A whole plan in compact text, so that a change of any number is seen.

use super::studio::*;
use puddlebook::lesson::{Amount, CanvasLayer, Edge, Lesson, Life, Per, Shape, Technique};
use puddlebook::plan::{Batch, Plan, Purchase};
use puddlebook::quantity::units::{
    gram, in_g_per_ml, in_gram, in_ml, in_mm, in_square_cm, inch, mm,
};
use puddlebook::quantity::{Spread, Volume};
use std::fmt::Write;
use std::sync::Arc;

/// Eight students and a demonstration; a straight pour, and a round panel with a brushed
/// base and spun colour that is varnished later.
fn two_ways_to_pour() -> Lesson {
    let mut lesson = lesson();
    lesson.class.students = students(8);
    lesson.class.demonstrations = 1;
    lesson.reserve = reserve((19, 20), 8, 15);
    let mut spun = lesson.canvases[0].clone();
    spun.name = "round panel".into();
    spun.shape = Shape::Round { diameter: inch(8.0) };
    spun.edge = Edge::Bare;
    spun.each = some(2);
    spun.technique = Arc::new(Technique {
        name: "brushed base with spun colour".into(),
        layers: vec![layer("base", mm(0.47)), layer("colour", mm(0.176))],
        ..(*straight_pour()).clone()
    });
    spun.layers = vec![
        CanvasLayer { mix: thin(), colours: vec![(colour("white"), percent(100))] },
        CanvasLayer {
            mix: thin(),
            colours: vec![(colour("harbour blue"), percent(70)), (colour("white"), percent(30))],
        },
    ];
    spun.finishes = vec![varnish()];
    lesson.canvases.push(spun);
    lesson.supplies = vec![
        supply("gloves", 1.0, Per::Student, Life::UsedUp),
        supply("stir sticks", 1.0, Per::ColourCup, Life::UsedUp),
        supply("drop cloth", 1.0, Per::Table, Life::Washable),
    ];
    lesson.stock = vec![
        stocked("pouring medium", Amount::Mass(gram(300.0))),
        stocked("stir sticks", Amount::Pieces(40)),
    ];
    lesson.shops = shop(vec![
        pack(
            "harbour blue acrylic",
            Amount::Volume(puddlebook::quantity::units::us_fl_oz(8.0)),
            649,
        ),
        pack("sand acrylic", Amount::Volume(puddlebook::quantity::units::us_fl_oz(4.0)), 399),
        pack("white acrylic", Amount::Volume(puddlebook::quantity::units::us_fl_oz(8.0)), 599),
        pack("white acrylic", Amount::Volume(puddlebook::quantity::units::us_fl_oz(16.0)), 999),
        pack("pouring medium", Amount::Volume(puddlebook::quantity::units::us_fl_oz(32.0)), 1899),
        pack("gloves", Amount::Pieces(20), 499),
        pack("stir sticks", Amount::Pieces(100), 320),
    ]);
    lesson
}

#[test]
fn two_ways_to_pour_in_numbers() {
    insta::assert_snapshot!(text(&planned(two_ways_to_pour())));
}

fn text(plan: &Plan) -> String {
    let mut text = String::new();
    write(&mut text, plan).unwrap();
    text
}

fn write(out: &mut String, plan: &Plan) -> std::fmt::Result {
    let heads = plan.heads;
    writeln!(
        out,
        "{} students, {} demonstration, {} spare: {} sets, {} tables",
        heads.students,
        heads.demonstrations,
        heads.spares,
        heads.sets(),
        heads.tables
    )?;
    for canvas in &plan.canvases {
        let areas = canvas.areas;
        writeln!(
            out,
            "{}: face {:.3} + edge {:.3} = {:.3} cm2",
            canvas.name,
            in_square_cm(areas.face),
            in_square_cm(areas.edge),
            in_square_cm(areas.painted)
        )?;
        for layer in &canvas.layers {
            let film = layer.film.typical();
            writeln!(out, "  {} {:.4} mm: {}", layer.name, in_mm(film), spread(layer.paint))?;
            for cup in &layer.cups {
                writeln!(out, "    {:.3} mL of {}", in_ml(cup.paint), batch(&cup.batch))?;
            }
        }
        for finish in &canvas.finishes {
            writeln!(out, "  {}: {}", finish.finish.name, spread(finish.paint))?;
        }
        writeln!(out, "  paint {}, to mix {:.3} mL", spread(canvas.paint), in_ml(canvas.to_mix))?;
    }
    writeln!(out, "student {}", spread(plan.student_paint))?;
    writeln!(out, "class {}", spread(plan.class_paint))?;
    for class_batch in &plan.mixing {
        writeln!(out, "  {}", batch(class_batch))?;
    }
    for need in &plan.finishing {
        let (volume, mass) = (in_ml(need.volume), in_gram(need.mass));
        let reserve = in_ml(need.reserve);
        writeln!(
            out,
            "finishing: {} {volume:.3} mL, {reserve:.3} of it in reserve, {mass:.3} g",
            need.material.name
        )?;
    }
    let reserve = &plan.reserve;
    writeln!(
        out,
        "reserve: {:.4} deviations, {:.3} mL on {:.3} mL; as one paint {:.3} mL",
        reserve.deviations,
        in_ml(reserve.by_colour),
        in_ml(reserve.expected),
        in_ml(reserve.as_one)
    )?;
    let by_habit: Vec<String> =
        reserve.habit.mixing.iter().map(|volume| format!("{:.3}", in_ml(*volume))).collect();
    writeln!(
        out,
        "by habit: {} = {:.3} mL, {}",
        by_habit.join(" + "),
        in_ml(reserve.habit.to_mix()),
        reserve.habit.total.amount()
    )?;
    for line in &plan.order.lines {
        write!(
            out,
            "{}: {} ({} reserve) - {} = {}; ",
            line.item,
            amount(line.needed),
            amount(line.reserve),
            amount(line.in_stock),
            amount(line.to_buy)
        )?;
        match &line.purchase {
            Purchase::Nothing => writeln!(out, "nothing to buy")?,
            Purchase::NoPrice => writeln!(out, "no price")?,
            Purchase::Elsewhere => writeln!(out, "elsewhere")?,
            Purchase::Packs { packs, cost, left_over } => {
                for pack in packs {
                    let price = pack.price.amount();
                    write!(out, "{} x {} at {price}, ", pack.count, amount(pack.size))?;
                }
                writeln!(out, "{}, {} over", cost.amount(), amount(*left_over))?;
            }
        }
    }
    let cost = &plan.cost;
    writeln!(
        out,
        "cost {}, {} a student, {} used; no price for {}",
        cost.order.amount(),
        cost.per_student.amount(),
        cost.used.amount(),
        cost.unpriced.join(", ")
    )
}

fn batch(batch: &Batch) -> String {
    let ingredients: Vec<String> = batch
        .ingredients
        .iter()
        .map(|poured| {
            format!(
                "{} {:.2} mL {:.2} g to {} g",
                poured.material.name,
                in_ml(poured.volume),
                in_gram(poured.mass),
                in_gram(poured.reading).round()
            )
        })
        .collect();
    format!(
        "{} {}, {} cups, {:.3} + {:.3} up to {:.3} mL, {:.3} g at {:.4} g/mL: {}",
        batch.mix.name,
        batch.colour.name,
        batch.cups,
        in_ml(batch.expected),
        in_ml(batch.reserve),
        in_ml(batch.volume),
        in_gram(batch.mass),
        in_g_per_ml(batch.density),
        ingredients.join(", ")
    )
}

fn spread(paint: Spread<Volume>) -> String {
    let [low, typical, high] = [paint.low(), paint.typical(), paint.high()].map(in_ml);
    format!("{low:.3} / {typical:.3} / {high:.3} mL")
}

fn amount(amount: Amount) -> String {
    match amount {
        Amount::Volume(volume) => format!("{:.3} mL", in_ml(volume)),
        Amount::Mass(mass) => format!("{:.3} g", in_gram(mass)),
        Amount::Pieces(pieces) => format!("{pieces} pieces"),
    }
}
