//! Every lesson that ships is right, and says what it is meant to say.

use crate::lesson_tools::{SMALL, files_in, in_project, read_files, read_text, small_with};
use puddlebook::lesson::{
    Amount, Consistency, Edge, Edition, Ingredient, Language, Lesson, MaterialKind, Paper, Per,
    PolygonSize, Practice, ReserveRule, Shape, Students, When, read,
};
use puddlebook::quantity::units::{in_gram, in_inch, in_ml, in_mm, in_square_cm, inch};
use puddlebook::quantity::{Currency, Decimal, UnitSystem};

fn shipped(name: &str) -> Lesson {
    read(&in_project("lessons").join(name)).unwrap_or_else(|faults| panic!("{faults}"))
}

#[test]
fn every_shipped_lesson_reads_clean() {
    let lessons = files_in("lessons", "yaml");
    assert!(lessons.len() >= 3);
    for path in lessons {
        let lesson = read(&path).unwrap_or_else(|faults| panic!("{faults}"));
        let note = lesson.heading.note.unwrap_or_default();
        let invented = match lesson.print.language {
            Language::English => "invented",
            Language::Spanish => "inventados",
        };
        assert!(note.contains(invented), "{} says that it is invented", path.display());
        for canvas in &lesson.canvases {
            assert_eq!(canvas.layers.len(), canvas.technique.layers.len());
            for layer in &canvas.layers {
                let sum: Decimal = layer.colours.iter().map(|(_, share)| share.fraction()).sum();
                assert_eq!(sum, Decimal::ONE, "shares are the whole, exactly");
            }
        }
    }
}

#[test]
fn everything_that_a_shipped_lesson_needs_can_be_bought_or_is_there() {
    for path in files_in("lessons", "yaml") {
        let lesson = read(&path).unwrap_or_else(|faults| panic!("{faults}"));
        let mut needed: Vec<String> =
            lesson.supplies.iter().map(|rule| rule.item.clone()).collect();
        for canvas in &lesson.canvases {
            for layer in &canvas.layers {
                needed.extend(layer.colours.iter().map(|(colour, _)| colour.paint.name.clone()));
                needed.extend(layer.mix.parts.iter().filter_map(|part| match &part.what {
                    Ingredient::Other(material) if material.kind != MaterialKind::Water => {
                        Some(material.name.clone())
                    }
                    _ => None,
                }));
            }
            needed.extend(canvas.finishes.iter().map(|finish| finish.material.name.clone()));
        }
        let packs = lesson.shops.into_iter().flat_map(|shop| shop.packs).collect::<Vec<_>>();
        for item in needed {
            let sold = packs.iter().any(|pack| pack.item == item);
            let there = lesson.stock.iter().any(|line| line.item == item);
            assert!(sold || there, "{}: {item}", path.display());
        }
    }
}

#[test]
fn the_boathouse_lesson() {
    let mut lesson = shipped("boathouse-evening.yaml");
    assert_eq!(lesson.print.units, UnitSystem::Us);
    assert_eq!(lesson.print.paper, Paper::Letter);
    assert_eq!(lesson.print.edition, Edition::Standard);
    assert_eq!(lesson.print.currency, Currency::USD);
    assert!(matches!(lesson.class.students, Students::Count(n) if n.get() == 8));
    let names: Vec<_> = lesson.canvases.iter().map(|canvas| canvas.name.as_str()).collect();
    assert_eq!(names, ["square", "upright"], "in the order of the file");
    let square = &lesson.canvases[0];
    assert_eq!(square.shape, Shape::Rectangle { width: inch(10.0), height: inch(10.0) });
    assert_eq!(in_inch(square.depth), 0.5);
    assert_eq!(square.edge, Edge::Painted);
    assert_eq!(square.technique.name, "straight pour");
    let shares: Vec<_> = square.layers[0]
        .colours
        .iter()
        .map(|(colour, share)| (colour.name.as_str(), share.percent().to_string()))
        .collect();
    assert_eq!(
        shares,
        [("harbour blue", "40".into()), ("sand", "25".into()), ("white", "35".into())]
    );
    assert_eq!(square.finishes[0].material.kind, MaterialKind::Varnish);
    assert_eq!(lesson.canvases[1].layers[0].mix.consistency, Consistency::Thin);
    assert_eq!(lesson.stock[0].item, "white acrylic");
    let shop = lesson.shops.remove(0);
    let paint = &lesson.canvases[0].layers[0].colours[0].0.paint;
    assert!(shop.packs.iter().any(|pack| pack.item == paint.name));
}

#[test]
fn the_kiln_yard_lesson_changes_one_value_of_a_technique() {
    let lesson = shipped("kiln-yard-rounds.yaml");
    assert_eq!(lesson.print.currency, Currency::EUR);
    assert!(matches!(&lesson.class.students, Students::Named(names) if names.len() == 6));
    let film = lesson.canvases[0].technique.layers[0].films.of(Consistency::Medium);
    assert!((in_mm(film.typical()) - 1.88).abs() < 1e-12, "from the lesson");
    assert!((in_mm(film.high()) - 2.25).abs() < 1e-12, "from the built-in table");
    let mixes: Vec<_> =
        lesson.canvases[1].layers.iter().map(|layer| layer.mix.name.as_str()).collect();
    assert_eq!(mixes, ["medium", "thin"], "one mix a layer");
    let turntable = lesson.supplies.iter().find(|rule| rule.item == "turntable").unwrap();
    assert_eq!(turntable.per, Per::Table);
}

#[test]
fn the_youth_lesson_has_hexagons_and_notes_of_its_own() {
    let lesson = shipped("youth-hexagons.yaml");
    assert_eq!(lesson.class.youngest_age, Some(11));
    assert_eq!(lesson.practices, [Practice::HairDryer]);
    let Shape::Polygon { sides, side, given } = lesson.canvases[0].shape else {
        panic!("a polygon")
    };
    assert_eq!((sides, given), (6, PolygonSize::AcrossFlats));
    // A hexagon of 6 in across flats has sides of 6 / sqrt(3) in.
    assert!((in_inch(side) - 6.0 / 3.0_f64.sqrt()).abs() < 1e-12);
    assert!(lesson.cautions.iter().any(|caution| caution.name == "shoes"));
    assert!(lesson.cautions.iter().any(|caution| matches!(caution.when, When::Always)));
    assert!(!lesson.supplies.iter().any(|rule| rule.item == "push pins"), "taken off the list");
}

#[test]
fn a_small_lesson_gets_everything_else_from_the_defaults() {
    let lesson = read_text(SMALL).unwrap_or_else(|faults| panic!("{faults}"));
    assert_eq!(lesson.print.units, UnitSystem::Metric);
    assert_eq!(lesson.print.paper, Paper::A4);
    assert_eq!(lesson.print.currency, Currency::EUR, "metric without a price list");
    assert_eq!(lesson.class.per_table.get(), 4);
    assert_eq!((lesson.class.demonstrations, lesson.class.spares), (0, 0));
    assert!(lesson.shops.is_empty() && lesson.stock.is_empty());
    assert_eq!(lesson.techniques.len(), 8);
    assert_eq!(lesson.mixes.len(), 3);
    assert!(!lesson.supplies.is_empty() && !lesson.cautions.is_empty());
    assert!((in_ml(lesson.mixing.cup_loss) - 3.0).abs() < 1e-12);
    assert!((in_gram(lesson.mixing.scale_step) - 1.0).abs() < 1e-12);
    let us = small_with("class:", "units: us\nclass:").unwrap();
    assert_eq!(us.print.currency, Currency::USD, "US units without a price list");
}

#[test]
fn a_level_is_written_in_classes_or_in_percent() {
    let level = |text: &str| {
        let lesson = read_text(&format!("{SMALL}reserve: {{enough in: {text}}}\n"));
        let level = lesson.unwrap_or_else(|faults| panic!("{faults}")).reserve.level;
        (level.classes(), level.out_of())
    };
    for text in ["19 classes out of 20", "19 out of 20", "19 of 20", "19 of 20 classes", "95 %"] {
        assert_eq!(level(text), (19, 20), "{text}");
    }
    assert_eq!(level("1 class out of 2"), (1, 2));
    assert_eq!(level("50%"), (1, 2));
    assert_eq!(level("97.5 %"), (39, 40));
    assert_eq!(level("99.9 %"), (999, 1000));
    assert_eq!(level("95 of 100"), (95, 100), "as it was written");
}

#[test]
fn a_lesson_may_change_a_part_of_its_reserve() {
    let rule = read_text(SMALL).unwrap_or_else(|faults| panic!("{faults}")).reserve;
    assert_eq!((rule.level.classes(), rule.level.out_of()), (19, 20));
    let percents = |rule: ReserveRule| {
        [rule.class_varies, rule.students_vary, rule.habit].map(|part| part.percent().to_string())
    };
    assert_eq!(percents(rule), ["8", "15", "15"], "the built-in estimates");
    let changed = read_text(&format!("{SMALL}reserve: {{students vary by: 0 %, habit: 1/4 %}}\n"));
    let changed = changed.unwrap_or_else(|faults| panic!("{faults}")).reserve;
    assert_eq!(changed.level, rule.level);
    assert_eq!(percents(changed), ["8", "0", "0.25"]);
}

#[test]
fn time_and_room_of_the_shipped_lessons() {
    let boathouse = shipped("boathouse-evening.yaml");
    let timetable = boathouse.timetable.unwrap();
    assert_eq!(timetable.start.to_string(), "18:30:00", "6:30 pm");
    assert_eq!(timetable.booked_until.unwrap().to_string(), "21:30:00");
    assert_eq!(timetable.steps[0].minutes, 15);
    // 24 ft² are 24 x 0.3048² m².
    let surface = boathouse.room.level_surface.unwrap();
    assert!((in_square_cm(surface) / 1e4 - 24.0 * 0.3048 * 0.3048).abs() < 1e-9);
    let table = boathouse.room.table.unwrap();
    assert!((in_inch(table.length) - 72.0).abs() < 1e-9);
    assert!((in_inch(table.width) - 30.0).abs() < 1e-9);
    assert_eq!(boathouse.room.drying_days, 3, "from the built-in file");
    let youth = shipped("youth-hexagons.yaml").timetable.unwrap();
    assert_eq!(youth.start.to_string(), "10:00:00", "10 am");
    assert_eq!(youth.booked_until.unwrap().to_string(), "13:00:00", "1 pm");
}

#[test]
fn a_lesson_needs_no_timetable_and_no_size_of_the_room() {
    let lesson = read_text(SMALL).unwrap();
    assert!(lesson.timetable.is_none());
    assert!(lesson.room.table.is_none() && lesson.room.level_surface.is_none());
    assert!((in_mm(lesson.room.gap) - 50.0).abs() < 1e-9);
    assert!(in_ml(lesson.washing.bucket) > 0.0);
    let own = format!("{SMALL}washing:\n  each piece: {{apron: 300 mL, drip tray: 0}}\n");
    let pieces = read_text(&own).unwrap().washing.each_piece;
    let of = |item: &str| in_ml(pieces.iter().find(|(name, _)| name == item).unwrap().1).round();
    assert_eq!((of("apron"), of("drip tray"), of("paint strainer")), (300.0, 0.0, 500.0));
}

#[test]
fn later_files_win_key_by_key() {
    let lesson = format!("use: [data/a.yaml, data/b.yaml]\n{SMALL}mixing: {{cup loss: 5 mL}}\n");
    let a = "mixing: {cup loss: 1 mL, scale step: 0.1 g}\nstock: {white acrylic: 100 mL}\n";
    let b = "mixing: {scale step: 0.5 g}\nstock: {pouring medium: 1 kg}\n";
    let files: [(&str, &[u8]); 3] = [
        ("folder/lesson.yaml", lesson.as_bytes()),
        ("folder/data/a.yaml", a.as_bytes()),
        ("folder/data/b.yaml", b.as_bytes()),
    ];
    let lesson = read_files(&files).unwrap_or_else(|faults| panic!("{faults}"));
    assert!((in_ml(lesson.mixing.cup_loss) - 5.0).abs() < 1e-12, "the lesson over its files");
    assert!((in_gram(lesson.mixing.scale_step) - 0.5).abs() < 1e-12, "the last file wins");
    let stock: Vec<_> = lesson.stock.iter().map(|line| line.item.as_str()).collect();
    assert_eq!(stock, ["white acrylic", "pouring medium"]);
    assert!(matches!(lesson.stock[1].amount, Amount::Mass(_)));
}

#[test]
fn line_ends_of_other_systems_and_a_byte_order_mark_are_fine() {
    let windows = format!("\u{feff}{}", SMALL.replace('\n', "\r\n"));
    let lesson = read_text(&windows).unwrap_or_else(|faults| panic!("{faults}"));
    assert_eq!(lesson.heading.title, "A small class");
    let faults = read_text(&windows.replace("10 in", "10 imch")).unwrap_err();
    let place = faults.problems()[0].place.as_ref().unwrap();
    assert_eq!(faults.sources().line_and_column(place), (6, 15));
}

#[test]
fn an_anchor_repeats_what_was_written() {
    let text = SMALL
        .replace("  square:", "  square: &size")
        .replace("palettes:", "  second: *size\npalettes:");
    let lesson = read_text(&text).unwrap_or_else(|faults| panic!("{faults}"));
    assert_eq!(lesson.canvases[1].name, "second");
    assert_eq!(lesson.canvases[1].shape, lesson.canvases[0].shape);
}

#[test]
fn sides_of_polygons() {
    let hexagon = |size: &str| {
        let old = "shape: rectangle\n    width: 10 in\n    height: 10 in";
        let new = format!("shape: polygon\n    sides: 6\n    {size}");
        match small_with(old, &new).unwrap_or_else(|faults| panic!("{faults}")).canvases[0].shape {
            Shape::Polygon { side, .. } => in_inch(side),
            other => panic!("{other:?}"),
        }
    };
    assert!((hexagon("side: 3 in") - 3.0).abs() < 1e-12);
    assert!((hexagon("across corners: 6 in") - 3.0).abs() < 1e-12, "two sides make the diameter");
    assert!((hexagon("across flats: 6 in") - 3.464_101_615_137_754_4).abs() < 1e-12);
}
