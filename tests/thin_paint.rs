//! Why thin paint goes further: the chart of films, and the chapter as a reader with a pocket
//! calculator finds it.

use crate::chart_data::{film_left, picture, room};
use crate::chart_reader::{axis, middle_x, points, text};
use puddlebook::chart::draw;
use puddlebook::handout::{
    Block, Desk, FilmLeft, Inline, Picture, PictureKind, Sheet, Table, Templates,
};
use puddlebook::ink::{Dash, Faces, Point, Shape};
use puddlebook::lesson::{self, Language};
use puddlebook::plan;
use puddlebook::quantity::UnitSystem;
use std::collections::BTreeMap;
use std::path::Path;

#[test]
fn films_end_where_the_axes_say_and_by_their_name() {
    let faces = Faces::new();
    let data = film_left(3);
    let drawing = draw(&picture(PictureKind::FilmLeft(data.clone())), room(480.0), &faces);
    let (x0, x_step) = axis(&drawing, middle_x, |run| run.origin.y);
    let (y0, y_step) = axis(&drawing, |run| run.origin.y, |run| run.origin.x + run.width());
    let number = text(&drawing, "0.5");
    let capitals = faces.metrics(number.face).cap_height * number.size / 2.0;
    let curves: Vec<(Vec<Point>, Dash)> = drawing
        .shapes
        .iter()
        .filter_map(|shape| match shape {
            Shape::Path { segments, stroke: Some(stroke), .. } if stroke.width > 1.7 => {
                Some((points(segments), stroke.dash))
            }
            _ => None,
        })
        .collect();
    assert_eq!(curves.len(), 3);
    for (at, (line, (curve, dash))) in data.lines.iter().zip(&curves).enumerate() {
        assert!(curves[..at].iter().all(|(_, other)| other != dash), "grey says the same");
        for ((time, film), place) in line.points.iter().zip(curve) {
            assert!((place.x - x0 - x_step * *time as f32).abs() < 0.3);
            assert!((place.y - y0 - y_step * *film as f32 + capitals).abs() < 0.3);
        }
        let name = text(&drawing, &line.label);
        let end = curve.last().unwrap();
        assert!((name.origin.y - end.y).abs() < 15.0 && name.origin.x > end.x);
    }
}

/// The guide of a demo lesson in both systems of units.
fn guides() -> Vec<Vec<Block>> {
    let write = |units| {
        let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("lessons/boathouse-evening.yaml");
        let mut lesson = lesson::read(&path).unwrap_or_else(|faults| panic!("{faults}"));
        lesson.print.units = units;
        let plan = plan::plan(lesson).unwrap();
        let templates = Templates::new(Language::English, &BTreeMap::new()).unwrap();
        Desk::new(&plan, &templates).unwrap().write(Sheet::Guide).unwrap().blocks
    };
    [UnitSystem::Us, UnitSystem::Metric].map(write).to_vec()
}

fn words(inlines: &[Inline]) -> String {
    let text = |inline: &Inline| match inline {
        Inline::Text(text) => text.clone(),
        Inline::Emphasis(inner) | Inline::Strong(inner) => words(inner),
        _ => String::new(),
    };
    inlines.iter().map(text).collect()
}

fn numbers(text: &str) -> Vec<f64> {
    let split = text.split(|c: char| !c.is_ascii_digit() && c != '.');
    split.filter_map(|part| part.trim_matches('.').parse().ok()).collect()
}

/// The rows of a table as numbers, the head of each row with its own.
fn rows(table: &Table) -> Vec<Vec<f64>> {
    let row = |cells: &Vec<Vec<Inline>>| {
        numbers(&cells.iter().map(|it| words(it) + " ").collect::<String>())
    };
    table.rows.iter().map(|it| row(&it.cells)).collect()
}

/// The worked sum of the spun board.
fn sum(blocks: &[Block]) -> Vec<Vec<f64>> {
    let table = blocks.iter().find_map(|block| match block {
        Block::Notice { heading, body, .. } if words(heading).ends_with("on the turntable") => {
            body.iter().find_map(|block| match block {
                Block::Table(table) => Some(table),
                _ => None,
            })
        }
        _ => None,
    });
    rows(table.expect("a worked sum"))
}

fn films(blocks: &[Block]) -> Vec<(&Picture, &FilmLeft)> {
    let figures = blocks.iter().filter_map(|block| match block {
        Block::Figure { picture, .. } => match &picture.kind {
            PictureKind::FilmLeft(data) => Some((picture, data)),
            _ => None,
        },
        _ => None,
    });
    figures.collect()
}

/// To so many decimals, as a calculator's answer is written down.
fn to(value: f64, decimals: i32) -> f64 {
    (value * 10_f64.powi(decimals)).round() / 10_f64.powi(decimals)
}

#[test]
fn the_sum_of_the_spun_board_comes_out_on_a_calculator() {
    for guide in guides() {
        let [each, grown, root, film] = &sum(&guide)[..] else { panic!("other steps") };
        // The heads of the rows say 1 + 30 x, and 1.50 ÷.
        let (one, seconds, start) = (grown[0], grown[1], film[0]);
        for paint in 0..3 {
            let printed = grown[2 + paint];
            assert_eq!(to(one + seconds * each[paint], 3), printed);
            assert_eq!(to(printed.sqrt(), 3), root[paint]);
            assert_eq!(to(start / root[paint], 3), film[1 + paint]);
        }
    }
}

#[test]
fn grams_on_a_board_say_its_film() {
    for guide in guides() {
        let table = guide.iter().find_map(|block| match block {
            Block::Table(table) if words(&table.caption).starts_with("What the formulas leave") => {
                Some(table)
            }
            _ => None,
        });
        let table = table.expect("grams on a board");
        let all = numbers(&words(&table.caption))[0];
        let sum = sum(&guide);
        let [.., film] = &sum[..] else { panic!("no films") };
        for (row, film) in rows(table).iter().zip(&film[1..]) {
            // Half a gram is what the printed grams leave open, on either side.
            let open = 0.5 / all + row[0] * 0.5 / (all * all);
            assert!((row[0] / all - film / 1.5).abs() < open, "{row:?} of {all} g, {film} mm");
        }
    }
}

#[test]
fn the_pictures_say_what_their_curves_show() {
    for guide in guides() {
        let shown = films(&guide);
        assert_eq!(shown.len(), 2);
        let worked = sum(&guide);
        for (picture, data) in shown {
            assert!(picture.alt.contains(&data.title), "{}", picture.alt);
            for (line, name) in data.lines.iter().zip(["thin", "medium", "thick"]) {
                let (time, film) = *line.points.last().unwrap();
                let film = format!("{film:.3}");
                assert_eq!(line.label, format!("{name}, {film}\u{202f}mm"));
                let told = format!("{film}\u{202f}mm after {time}\u{202f}s.");
                assert!(picture.alt.contains(&told), "{told} is not in {}", picture.alt);
            }
        }
        let spun: Vec<f64> =
            films(&guide)[0].1.lines.iter().map(|line| numbers(&line.label)[0]).collect();
        assert_eq!(worked[3][1..], spun, "the chart and the sum tell the same films");
    }
}
