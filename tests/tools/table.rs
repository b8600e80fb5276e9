use super::{DEMOS, everywhere, words};
use crate::plan::studio;
use puddlebook::handout::{Block, RowKind, Sheet, Table};
use puddlebook::lesson::{Consistency, Shape, StockSize};
use puddlebook::plan::{stock_area, technique_film};
use puddlebook::quantity::UnitSystem;
use puddlebook::quantity::units::{in_g_per_ml, in_ml, in_square_inch, inch};

fn tables(blocks: &[Block]) -> Vec<&Table> {
    let all = blocks.iter().filter_map(|block| match block {
        Block::Table(table) => Some(table),
        _ => None,
    });
    all.collect()
}

/// The rows under the heading of a unit, as names and numbers.
fn rows(table: &Table, unit: &str) -> Vec<(String, Vec<f64>)> {
    let from = table.rows.iter().position(|row| {
        row.kind == RowKind::Group && words(&row.cells[0]).replace('\u{a0}', " ") == unit
    });
    let rows = table.rows[from.unwrap() + 1..].iter();
    let rows = rows.take_while(|row| row.kind == RowKind::Body).map(|row| {
        let numbers = row.cells[1..].iter().map(|cell| words(cell).parse().unwrap());
        (words(&row.cells[0]), numbers.collect())
    });
    rows.collect()
}

/// The rule of thumb, 1 fl oz for 25 in² of face and sides (common practice): 8 x 10 in with sides
/// of 5/8 in have 80 + 36 x 5/8 = 102.5 in², which take 4.1 fl oz, 121.25 mL.
#[test]
fn a_straight_pour_takes_the_rule_of_thumb() {
    for (plan, document, _) in everywhere("boathouse-evening", Sheet::Tools) {
        if plan.lesson.print.units != UnitSystem::Us {
            continue;
        }
        let table = tables(&document.blocks)[0];
        let at = table
            .columns
            .iter()
            .position(|column| words(&column.heading).replace('\u{a0}', " ") == "8 × 10");
        let at = at.unwrap() - 1;
        let amount = |unit| {
            let rows = rows(table, unit);
            rows.iter().find(|(name, _)| name == "straight pour").unwrap().1[at]
        };
        assert_eq!((amount("fl oz"), amount("mL")), (4.1, 121.0));
    }
}

#[test]
fn amounts_are_those_of_the_engine_in_three_units() {
    for file in DEMOS {
        for (plan, document, _) in everywhere(file, Sheet::Tools) {
            let sizes = plan.lesson.sizes.of(plan.lesson.print.units);
            let tables = tables(&document.blocks);
            let columns: usize = tables.iter().map(|table| table.columns.len() - 1).sum();
            assert_eq!(columns, sizes.len());
            let density = in_g_per_ml(plan.mean_density());
            assert!((1.0..1.5).contains(&density), "plausible for mixed paint");
            for technique in &plan.lesson.techniques {
                let film = technique_film(technique, Consistency::Medium).typical();
                let expected: Vec<f64> =
                    sizes.iter().map(|size| in_ml(stock_area(size) * film)).collect();
                for (unit, factor) in
                    [("mL", 1.0), ("fl oz", 1.0 / 29.573_529_562_5), ("g", density)]
                {
                    let printed: Vec<f64> = tables
                        .iter()
                        .flat_map(|table| {
                            let rows = rows(table, unit);
                            let row = rows.into_iter().find(|(names, _)| {
                                names.split(", ").any(|name| name == technique.name)
                            });
                            row.unwrap().1
                        })
                        .collect();
                    assert_eq!(printed.len(), expected.len());
                    for (printed, expected) in printed.iter().zip(&expected) {
                        let exact = expected * factor;
                        assert!((printed / exact - 1.0).abs() < 0.02, "{unit}: {printed}, {exact}");
                    }
                }
            }
        }
    }
}

/// The same area as a canvas of the lesson of that size.
#[test]
fn a_size_of_the_shops_has_the_area_of_such_a_canvas() {
    let mut lesson = studio::lesson();
    let size = StockSize { width: inch(9.0), height: inch(12.0), depth: inch(0.75) };
    lesson.canvases[0].shape = Shape::Rectangle { width: size.width, height: size.height };
    lesson.canvases[0].depth = size.depth;
    let painted = in_square_inch(studio::planned(lesson).canvases[0].areas.painted);
    // 108 + 42 x 3/4.
    assert!((in_square_inch(stock_area(&size)) - 139.5).abs() < 1e-9);
    assert!((painted - 139.5).abs() < 1e-9);
}
