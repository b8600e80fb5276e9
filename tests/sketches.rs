//! The schematic drawings of the guide: words at their parts, and proportions that teach.

use proptest::prelude::*;
use puddlebook::chart::{Drawing, draw};
use puddlebook::handout::{
    Block, Desk, DrawnDay, FilmSketch, Part, Picture, PictureKind, Sheet, Sketch, Templates,
};
use puddlebook::ink::{Colour, Faces, PathSegment, Point, Rect, Shape};
use puddlebook::lesson::{self, Lesson};
use puddlebook::plan;
use std::collections::BTreeMap;
use std::path::Path;

use crate::chart_data::{days_sketch, film_sketch, large, parts, picture, room, written_in};
use crate::chart_reader::{bounds, check, extent, filled, texts};
use crate::lesson_tools::files_in;

/// Columns of the guide, of its booklet and of large print, on both papers.
const COLUMNS: [f32; 3] = [327.0, 322.0, 347.0];
const LARGE_COLUMNS: [f32; 2] = [480.0, 497.0];

/// The drawings of a guide by their alternative texts.
fn sketches(lesson: Lesson) -> Vec<(String, Sketch)> {
    let plan = plan::plan(lesson).unwrap();
    let templates = Templates::new(plan.lesson.print.language, &BTreeMap::new()).unwrap();
    let guide = Desk::new(&plan, &templates).unwrap().write(Sheet::Guide).unwrap();
    let sketch = |block| match block {
        Block::Figure { picture: Picture { alt, kind: PictureKind::Sketch(it) }, .. } => {
            Some((alt, it))
        }
        _ => None,
    };
    guide.blocks.into_iter().filter_map(sketch).collect()
}

fn demos() -> impl Iterator<Item = Lesson> {
    let files = files_in("lessons", "yaml").into_iter();
    files.map(|file| lesson::read(&file).unwrap_or_else(|faults| panic!("{faults}")))
}

/// What is written in a drawing, from the top, lines of one text joined.
fn written(drawing: &Drawing) -> String {
    texts(drawing).iter().map(|run| run.text.as_str()).collect::<Vec<_>>().join(" ")
}

#[test]
fn every_chapter_has_its_drawing_with_every_label_in_it() {
    let faces = Faces::new();
    for lesson in demos() {
        let sketches = sketches(lesson);
        assert_eq!(sketches.len(), 7);
        for (alt, sketch) in sketches {
            let kind = PictureKind::Sketch(sketch);
            let small = COLUMNS.map(room).into_iter();
            for room in small.chain(LARGE_COLUMNS.map(large)) {
                let drawing = draw(&picture(kind.clone()), room, &faces);
                check(&drawing, &faces)
                    .unwrap_or_else(|fault| panic!("{alt} in {room:?}: {fault}"));
                let written = written(&drawing);
                let PictureKind::Sketch(sketch) = &kind else { continue };
                for label in written_in(sketch) {
                    assert!(written.contains(&label), "{label:?} is not in {written:?}");
                }
                let tall = drawing.height / room.small_print * 8.5 / 72.0 * 25.4;
                assert!((25.0..80.0).contains(&tall), "{tall} mm in {room:?}: {alt}");
                if room.small_print < 9.0 {
                    assert!(tall < 52.0, "{tall} mm in {room:?}: {alt}");
                }
            }
        }
    }
}

/// Lines do not run through words.
#[test]
fn no_leader_crosses_a_label() {
    let faces = Faces::new();
    for (alt, sketch) in sketches(demos().next().unwrap()) {
        let Sketch::SetUp(_) = sketch else { continue };
        for room in COLUMNS.map(room).into_iter().chain(LARGE_COLUMNS.map(large)) {
            let drawing = draw(&picture(PictureKind::Sketch(sketch.clone())), room, &faces);
            let words: Vec<Rect> = texts(&drawing).iter().map(|run| extent(run, &faces)).collect();
            for (from, to) in lines(&drawing) {
                let along = (0..=40).map(|part| part as f32 / 40.0);
                let mut points = along.map(|share| Point {
                    x: from.x + (to.x - from.x) * share,
                    y: from.y + (to.y - from.y) * share,
                });
                let within = |at: Point, word: &Rect| {
                    (word.x..word.x + word.width).contains(&at.x)
                        && (word.y..word.y + word.height).contains(&at.y)
                };
                assert!(!points.any(|at| words.iter().any(|word| within(at, word))), "{alt}");
            }
        }
    }
}

/// Single straight lines.
fn lines(drawing: &Drawing) -> Vec<(Point, Point)> {
    let lines = drawing.shapes.iter().filter_map(|shape| match shape {
        Shape::Path { segments, stroke: Some(_), .. } => match segments.as_slice() {
            [PathSegment::Move(from), PathSegment::Line(to)] => Some((*from, *to)),
            _ => None,
        },
        _ => None,
    });
    lines.collect()
}

/// Filled shapes in each of so many equal columns of a drawing.
fn columns(drawing: &Drawing, count: usize) -> Vec<Vec<(Rect, Colour)>> {
    let mut columns = vec![Vec::new(); count];
    for (area, colour) in filled(drawing) {
        let middle = (area.x + area.width / 2.0) / drawing.width * count as f32;
        columns[(middle as usize).min(count - 1)].push((area, colour));
    }
    columns
}

/// Grains are the only round black things.
fn grains(column: &[(Rect, Colour)]) -> usize {
    let ink = Colour::new(0x1C, 0x21, 0x26);
    let round = |area: &Rect| (area.width - area.height).abs() < 0.01 && area.width < 2.5;
    column.iter().filter(|(area, colour)| *colour == ink && round(area)).count()
}

/// Height of the grounds of paint, all together.
fn paint(column: &[(Rect, Colour)]) -> f32 {
    let is_paint = |colour: &Colour| colour.r < 0xF5 && colour.r > 0x40;
    let grounds = column.iter().filter(|(_, colour)| is_paint(colour));
    let (low, high) = grounds.fold((f32::MAX, f32::MIN), |(low, high), (area, _)| {
        (low.min(area.y), high.max(area.y + area.height))
    });
    high - low
}

/// The grains stay and the water goes: 35 % of the film are left, the volume solids of worked
/// examples of the coatings trade (8.0 mil wet for 2.8 mil dry).
#[test]
fn a_film_that_dries_loses_height_and_no_grain() {
    let drawing = draw(&picture(PictureKind::Sketch(film_sketch())), room(327.0), &Faces::new());
    let columns = columns(&drawing, 3);
    let heights: Vec<f32> = columns.iter().map(|column| paint(column)).collect();
    assert!((heights[2] / heights[0] - 2.8 / 8.0).abs() < 0.001, "{heights:?}");
    assert!(heights[0] > heights[1] && heights[1] > heights[2], "{heights:?}");
    let grains: Vec<usize> = columns.iter().map(|column| grains(column)).collect();
    assert!(grains[0] > 40 && grains.iter().all(|count| *count == grains[0]), "{grains:?}");
}

/// Nothing of the water's solids is lost over night, and poured water stands level.
#[test]
fn what_is_in_the_wash_water_settles() {
    let kind = PictureKind::Sketch(Sketch::WashWater(parts("clear")));
    let drawing = draw(&picture(kind), room(347.0), &Faces::new());
    let columns = columns(&drawing, 4);
    let (evening, morning) = (grains(&columns[0]), grains(&columns[1]));
    assert!(evening > 20 && evening == morning, "{evening} and {morning}");
    let quarter = drawing.width / 4.0;
    let third = |at: &Point| (2.0 * quarter..3.0 * quarter).contains(&at.x);
    let mut surfaces = lines(&drawing).into_iter().filter(|(from, _)| third(from));
    assert!(surfaces.any(|(from, to)| (from.y - to.y).abs() < 0.01 && (to.x - from.x) > 20.0));
}

#[test]
fn the_thicker_the_paint_the_higher_its_mound() {
    let kind = PictureKind::Sketch(Sketch::Ribbons(parts("sinks")));
    let drawing = draw(&picture(kind), room(327.0), &Faces::new());
    let mounds = columns(&drawing, 3).into_iter().map(|column| {
        let paint = column.iter().filter(|(area, colour)| colour.r < 0xF5 && area.width > 10.0);
        let mut tops: Vec<f32> = paint.map(|(area, _)| area.y).collect();
        tops.sort_by(f32::total_cmp);
        tops.last().unwrap() - tops[0]
    });
    let mounds: Vec<f32> = mounds.collect();
    assert!(mounds[0] < 0.01 && mounds[1] > 1.0 && mounds[2] > 2.0 * mounds[1], "{mounds:?}");
}

/// The film is all soft at the pour, and dry through after two weeks.
#[test]
fn a_film_dries_from_the_top_until_day_fourteen() {
    let faces = Faces::new();
    let drawing =
        draw(&picture(PictureKind::Sketch(days_sketch(&[0, 3, 14]))), room(327.0), &faces);
    let grounds: Vec<(Rect, Colour)> =
        filled(&drawing).into_iter().filter(|(area, _)| area.width > 300.0).collect();
    let [(whole, _), (dried, _)] = grounds[..] else { panic!("{grounds:?}") };
    assert!((whole.y - dried.y).abs() < 0.01);
    assert!((whole.height - dried.height).abs() < 0.01, "it reaches the floor");
    let front = drawing.shapes.iter().find_map(|shape| match shape {
        Shape::Path { segments, fill: None, stroke: Some(_) } if bounds(segments).width > 300.0 => {
            Some(crate::chart_reader::points(segments))
        }
        _ => None,
    });
    let front = front.unwrap();
    assert!((front[0].y - whole.y).abs() < 0.5, "nothing is dry at the pour");
    assert!(front.windows(2).all(|pair| pair[0].y <= pair[1].y && pair[0].x < pair[1].x));
    for (day, at) in [(0, 0), (3, 1), (14, 2)] {
        let name = texts(&drawing).into_iter().find(|run| run.text == format!("day {day}"));
        assert!((name.unwrap().origin.x - front[at].x).abs() < 1.0, "day {day}");
    }
}

/// A lesson with two canvases, as they are finished and when.
fn lesson(date: &str, finishes: [&str; 2]) -> Lesson {
    let canvas = |name: &str, finishes: &str| {
        format!(
            "  {name}: {{shape: round, diameter: 20 cm, depth: 2 cm, technique: straight pour, \
             consistency: medium, palette: one, finishes: [{finishes}]}}\n"
        )
    };
    let text = format!(
        "title: A class\nunits: metric\n{date}\nclass: {{students: 2}}\ncanvases:\n{}{}\
         palettes: {{one: {{colour: {{white: the rest}}}}}}\ncolours: {{white: {{swatch: \"#FFFFFF\"}}}}\n",
        canvas("moon", finishes[0]),
        canvas("sun", finishes[1]),
    );
    lesson::read_with(Path::new("test.yaml"), &|_| Ok(text.clone().into_bytes()))
        .unwrap_or_else(|faults| panic!("{faults}"))
}

fn days(lesson: Lesson) -> (String, Vec<DrawnDay>) {
    let days = sketches(lesson).into_iter().find_map(|(alt, sketch)| match sketch {
        Sketch::Days(line) => Some((alt, line.days)),
        _ => None,
    });
    days.unwrap()
}

#[test]
fn the_days_are_those_of_the_class_and_of_its_finishes() {
    let dated = "date: 2026-02-24";
    let (alt, line) = days(lesson(dated, ["brushed varnish", "brushed varnish, poured varnish"]));
    let numbers: Vec<u32> = line.iter().map(|day| day.day).collect();
    assert_eq!(numbers, [0, 1, 3, 7, 14, 21]);
    let dates: Vec<&str> = line.iter().map(|day| day.date.as_str()).collect();
    let wanted = ["24 February", "25 February", "27 February", "3 March", "10 March", "17 March"];
    assert_eq!(dates, wanted);
    assert_eq!(line[4].words, "moon, sun: brushed varnish");
    assert_eq!(line[5].words, "sun: poured varnish");
    assert!(alt.contains("day 14, 10 March: moon, sun: brushed varnish."), "{alt}");
}

#[test]
fn a_finish_on_a_day_of_the_line_joins_it_and_without_any_varnish_is_free() {
    let (_, line) = days(lesson("", ["isolation coat", ""]));
    let day = line.iter().find(|day| day.day == 7).unwrap();
    assert!(day.words.ends_with("; moon: isolation coat"), "{}", day.words);
    assert!(day.date.is_empty());
    assert_eq!(line.last().unwrap().day, 7);
    let (_, line) = days(lesson("", ["", ""]));
    assert_eq!(line.last().unwrap().day, 14);
}

/// The word beside the arrows has room where the row is just wide enough for its panels.
#[test]
fn what_leaves_a_film_is_named_within_the_picture() {
    let faces = Faces::new();
    let part = |words: &str| Part { name: "a".to_owned(), words: words.to_owned() };
    let stages = [part("a"), part("a"), part("a")];
    let film = Sketch::Film(FilmSketch { stages, water: "lo que se va".to_owned() });
    let picture = picture(PictureKind::Sketch(film));
    for step in 0..1200_u16 {
        let width = 200.0 + f32::from(step) / 4.0;
        assert_eq!(check(&draw(&picture, room(width), &faces), &faces), Ok(()), "{width}");
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 40, failure_persistence: None, ..ProptestConfig::default() })]

    /// Another language has other words.
    #[test]
    fn words_of_any_length_keep_apart(
        words in prop::collection::vec("[a-z]{1,13}( [a-z]{1,13}){0,8}", 12),
        width in 200.0_f32..500.0,
    ) {
        let faces = Faces::new();
        let six: [Part; 6] = std::array::from_fn(|number| Part {
            name: words[number].clone(),
            words: words[number + 6].clone(),
        });
        let [a, b, c, d, ..] = six.clone();
        let stages = [a.clone(), b.clone(), c.clone()];
        for sketch in [
            Sketch::Film(FilmSketch { stages, water: "lo que se va".to_owned() }),
            Sketch::Ribbons([a.clone(), b.clone(), c.clone()]),
            Sketch::WashWater([a, b, c, d]),
            Sketch::Pours(six.clone()),
            Sketch::Faults(six),
        ] {
            let picture = picture(PictureKind::Sketch(sketch));
            for room in [room(width), large(width * 1.6)] {
                prop_assert_eq!(check(&draw(&picture, room, &faces), &faces), Ok(()));
            }
        }
    }
}
