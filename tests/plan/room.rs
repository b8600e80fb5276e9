//! Tables, what stands on them, and where canvases dry.

use super::generated::lessons;
use super::studio::*;
use proptest::prelude::*;
use puddlebook::lesson::{Canvas, Lesson, Life, Per, PolygonSize, Shape, TableSize};
use puddlebook::plan::{DryingPlan, Extent, Plan};
use puddlebook::quantity::Length;
use puddlebook::quantity::units::{in_inch, in_square_cm, inch, mm, square_cm};
use std::f64::consts::PI;

fn drying(lesson: Lesson) -> DryingPlan {
    planned(lesson).room.drying
}

fn cm(value: f64) -> Length {
    mm(value * 10.0)
}

/// So many of one canvas for one student, on tables of 180 x 75 cm, 5 cm apart.
fn lying(canvas: Canvas, each: u32) -> Lesson {
    let mut lesson = lesson();
    lesson.canvases = vec![Canvas { each: some(each), ..canvas }];
    lesson.room.table = Some(TableSize { length: cm(180.0), width: cm(75.0) });
    lesson
}

fn rectangle(width: f64, height: f64) -> Canvas {
    let shape = Shape::Rectangle { width: cm(width), height: cm(height) };
    Canvas { shape, ..lesson().canvases[0].clone() }
}

#[test]
fn canvases_take_their_rectangle_and_a_gap() {
    let mut lesson = lesson();
    lesson.class.students = students(8);
    (lesson.class.demonstrations, lesson.class.spares) = (1, 1);
    let mut round = lesson.canvases[0].clone();
    round.name = "disc".into();
    round.shape = Shape::Round { diameter: cm(30.0) };
    round.each = some(2);
    lesson.canvases = vec![rectangle(20.0, 25.0), round];
    // 10 sets: 10 x (20 + 5) x (25 + 5) cm2 = 7500 cm2; 20 x 35 x 35 cm2 = 24500 cm2.
    lesson.room.level_surface = Some(square_cm(32_000.0));
    let there = drying(lesson.clone());
    assert_eq!(there.places.iter().map(|place| place.pieces).collect::<Vec<_>>(), [10, 20]);
    assert_near(in_square_cm(there.places[0].area), 7_500.0, 1e-6);
    assert_near(in_square_cm(there.places[1].area), 24_500.0, 1e-6);
    assert_near(in_square_cm(there.area), 32_000.0, 1e-6);
    assert_eq!(there.fits(), Some(true), "to the last square centimetre");
    lesson.room.level_surface = Some(square_cm(31_999.0));
    assert_eq!(drying(lesson.clone()).fits(), Some(false));
    lesson.room.level_surface = None;
    assert_eq!(drying(lesson).fits(), None);
}

#[test]
fn rectangles_around_polygons() {
    let extent = |sides, side| {
        let extent =
            Extent::of(Shape::Polygon { sides, side: inch(side), given: PolygonSize::Side });
        (in_inch(extent.width), in_inch(extent.height))
    };
    // Triangle: side 2, height sqrt(3). Square: itself. Hexagon of side 1: across corners 2,
    // across flats sqrt(3). Octagon of side 1: 1 + sqrt(2) both ways. Pentagon of side 1: its
    // diagonal is the golden ratio, its height sqrt(5 + 2 sqrt(5)) / 2.
    for (sides, side, width, height) in [
        (3, 2.0, 2.0, 3_f64.sqrt()),
        (4, 3.0, 3.0, 3.0),
        (5, 1.0, (1.0 + 5_f64.sqrt()) / 2.0, (5.0 + 2.0 * 5_f64.sqrt()).sqrt() / 2.0),
        (6, 1.0, 2.0, 3_f64.sqrt()),
        (8, 1.0, 1.0 + 2_f64.sqrt(), 1.0 + 2_f64.sqrt()),
    ] {
        let (found_width, found_height) = extent(sides, side);
        assert_near(found_width, width, 1e-12);
        assert_near(found_height, height, 1e-12);
    }
}

/// Corners of the polygon one by one, from its definition.
#[test]
fn no_corner_of_a_polygon_lies_outside() {
    for sides in 3_u32..=24 {
        let extent =
            Extent::of(Shape::Polygon { sides, side: inch(1.0), given: PolygonSize::Side });
        let n = f64::from(sides);
        let radius = 0.5 / (PI / n).sin();
        // The first side lies flat below.
        let corners = (0..sides).map(|corner| {
            let angle = -PI / 2.0 + PI / n + 2.0 * PI * f64::from(corner) / n;
            (radius * angle.cos(), radius * angle.sin())
        });
        let corners: Vec<_> = corners.collect();
        let span = |values: Vec<f64>| {
            let high = values.iter().copied().fold(f64::MIN, f64::max);
            high - values.iter().copied().fold(f64::MAX, f64::min)
        };
        assert_near(in_inch(extent.width), span(corners.iter().map(|c| c.0).collect()), 1e-9);
        assert_near(in_inch(extent.height), span(corners.iter().map(|c| c.1).collect()), 1e-9);
    }
}

#[test]
fn rows_on_tables_by_hand() {
    let tables = |canvas: Canvas, each| drying(lying(canvas, each)).on_tables.unwrap().tables;
    // 20 x 25 cm: along the table, 25 cm each way up, (180 + 5) / (20 + 5) = 7 in a row of 30 cm,
    // or (180 + 5) / (25 + 5) = 6 in a row of 25 cm; 30 / 7 = 4.29 against 25 / 6 = 4.17 cm of
    // the table's width for each, so the second. (75 + 5) / 25 = 3 rows: 18 on a table.
    assert_eq!(tables(rectangle(20.0, 25.0), 18), Some(1));
    assert_eq!(tables(rectangle(20.0, 25.0), 19), Some(2));
    assert_eq!(tables(rectangle(20.0, 25.0), 36), Some(2));
    // As large as the table, turned: it fits alone. A hair larger: not at all.
    assert_eq!(tables(rectangle(75.0, 180.0), 3), Some(3));
    assert_eq!(tables(rectangle(75.1, 180.0), 1), None);
    let no_size = drying(Lesson { canvases: vec![rectangle(20.0, 25.0)], ..lesson() });
    assert!(no_size.on_tables.is_none());
}

#[test]
fn rows_of_two_kinds_share_a_table() {
    let mut lesson = lying(rectangle(30.0, 40.0), 4);
    let mut small = rectangle(10.0, 10.0);
    small.each = some(12);
    lesson.canvases.push(small);
    // 30 x 40: (180 + 5) / 35 = 5 in a row of 45 cm, 9 cm each, or 185 / 45 = 4 in a row of
    // 35 cm, 8.75 cm each: one row of 35 cm. 10 x 10: 185 / 15 = 12 in a row of 15 cm.
    // 35 + 15 = 50 cm of 75 + 5 cm: one table, with room for two more small rows.
    let tables = |lesson: &Lesson| drying(lesson.clone()).on_tables.unwrap().tables;
    assert_eq!(tables(&lesson), Some(1));
    lesson.canvases[1].each = some(36);
    assert_eq!(tables(&lesson), Some(1));
    lesson.canvases[1].each = some(37);
    assert_eq!(tables(&lesson), Some(2));
}

#[test]
fn days_of_drying_and_finishing() {
    let mut lesson = lesson();
    lesson.heading.date = Some("2026-02-27".parse().unwrap());
    lesson.canvases[0].finishes = vec![varnish()];
    let plan = drying(lesson.clone());
    assert_eq!(plan.from, Some("2026-02-27".parse().unwrap()));
    // Three days later, February having 28.
    assert_eq!(plan.until, Some("2026-03-02".parse().unwrap()));
    assert_eq!(plan.finishes[0].date, Some("2026-03-13".parse().unwrap()));
    assert_eq!((plan.finishes[0].coats, plan.finishes[0].after_days), (2, 14));
    lesson.heading.date = None;
    let plan = drying(lesson);
    assert_eq!((plan.days, plan.from, plan.until), (3, None, None));
    assert_eq!(plan.finishes[0].date, None);
}

#[test]
fn tables_are_shared_evenly_and_set() {
    let mut lesson = lesson();
    lesson.class.students = students(10);
    (lesson.class.demonstrations, lesson.class.spares) = (1, 1);
    lesson.canvases[0].each = some(2);
    lesson.supplies = vec![
        supply("gloves", 1.25, Per::Student, Life::UsedUp),
        supply("colour cups", 1.0, Per::ColourCup, Life::UsedUp),
        supply("drop cloth", 1.0, Per::Table, Life::Washable),
        supply("scale", 1.0, Per::Class, Life::Washable),
    ];
    let room = planned(lesson).room;
    // Ten at three tables of up to four: 4 + 3 + 3.
    let kinds: Vec<_> = room.tables.iter().map(|kind| (kind.students, kind.tables)).collect();
    assert_eq!(kinds, [(4, 1), (3, 2)]);
    let set: Vec<_> = room
        .setting
        .iter()
        .map(|set| (set.item.as_str(), set.each_table.as_slice(), set.teacher, set.pieces))
        .collect();
    assert_eq!(
        set,
        [
            // Two for each; two sets of two for the teacher.
            ("square", [8, 6].as_slice(), 4, 24),
            // One for each; 12.5 is 13 in all, 13 - 4 - 2 x 3 = 3, the teacher's among them.
            ("gloves", [4, 3].as_slice(), 3, 13),
            // Three colours on two canvases.
            ("colour cups", [24, 18].as_slice(), 12, 72),
            ("drop cloth", [1, 1].as_slice(), 0, 3),
            ("scale", [0, 0].as_slice(), 1, 1),
        ]
    );
}

/// The room that a plan needs: area, and tables.
fn needs(plan: &Plan) -> (f64, u32) {
    let drying = &plan.room.drying;
    (in_square_cm(drying.area), drying.on_tables.unwrap().tables.unwrap())
}

/// Any lesson, on tables that every generated canvas fits.
fn on_large_tables(mut lesson: Lesson, length: u32, width: u32) -> Lesson {
    let [length, width] = [length, width].map(|size| mm(f64::from(size)));
    lesson.room.table = Some(TableSize { length, width });
    lesson
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(96))]

    #[test]
    fn more_canvases_never_need_less_room(
        lesson in lessons(),
        table in (1_700_u32..4_000, 1_700_u32..3_000),
        more in 1_u32..30,
        gap in 0_u32..120,
        kind in any::<prop::sample::Index>(),
    ) {
        let mut lesson = on_large_tables(lesson, table.0, table.1);
        lesson.room.gap = mm(f64::from(gap));
        let before = needs(&planned(lesson.clone()));
        let mut crowd = lesson.clone();
        crowd.class.spares += more;
        let mut busy = lesson;
        let index = kind.index(busy.canvases.len());
        let each = busy.canvases[index].each.get() + more;
        busy.canvases[index].each = some(each);
        for other in [crowd, busy] {
            let after = needs(&planned(other));
            prop_assert!(after.0 > before.0);
            prop_assert!(after.1 >= before.1);
        }
    }

    #[test]
    fn tables_hold_what_lies_on_them(
        lesson in lessons(),
        table in (1_700_u32..4_000, 1_700_u32..3_000),
    ) {
        let plan = planned(on_large_tables(lesson, table.0, table.1));
        let drying = &plan.room.drying;
        let (_, tables) = needs(&plan);
        // The gap behind the last row and canvas may hang over the rim.
        let gap = drying.gap;
        let lying = drying.on_tables.unwrap().table;
        let one = in_square_cm((lying.length + gap) * (lying.width + gap));
        prop_assert!(f64::from(tables) * one >= in_square_cm(drying.area) * (1.0 - 1e-9));
        let pieces: u32 = drying.places.iter().map(|place| place.pieces).sum();
        prop_assert!(tables <= pieces, "a table for each is always enough");
        for place in &drying.places {
            let face = plan.canvases.iter().find(|canvas| canvas.name == place.canvas).unwrap();
            prop_assert!(place.each >= face.areas.face, "the face lies in its rectangle");
        }
    }

    #[test]
    fn tables_and_teacher_get_everything(lesson in lessons()) {
        let plan = planned(lesson);
        let room = &plan.room;
        let seated: u32 = room.tables.iter().map(|kind| kind.students * kind.tables).sum();
        prop_assert_eq!(seated, plan.heads.students);
        prop_assert_eq!(room.tables.iter().map(|kind| kind.tables).sum::<u32>(), plan.heads.tables);
        for set in &room.setting {
            let on_tables: u32 =
                room.tables.iter().zip(&set.each_table).map(|(kind, each)| kind.tables * each).sum();
            prop_assert_eq!(on_tables + set.teacher, set.pieces, "{}", set.item);
        }
    }
}
