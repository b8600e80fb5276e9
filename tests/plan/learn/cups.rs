//! From cups to the films of canvases.

use super::studio::*;
use crate::plan::studio::*;
use puddlebook::lesson::{CanvasLayer, Lesson, Technique};
use puddlebook::plan::learn::SpreadPart;
use puddlebook::quantity::Date;
use puddlebook::quantity::units::{gram, in_gram, in_ml, in_mm, in_us_fl_oz, mm, us_fl_oz};
use std::sync::Arc;

/// The densities of the plan: 1 part paint of 1.2, 1 part medium of 1.05, 1/4 part water of
/// 0.998 g/mL weigh (1.2 + 1.05 + 0.2495) / 2.25 g/mL. 120 in² are 774.192 cm².
#[test]
fn used_mass_over_density_over_area_is_the_film() {
    let lesson = Arc::new(lesson());
    let mut weighed = class(&lesson, &[]);
    weighed.cups = canvas_of(&lesson, 0, |_, colour| match colour {
        "harbour blue" => gram(46.0),
        "sand" => gram(31.0),
        _ => gram(38.0),
    });
    let learned = learned(&[weighed]);
    let density = 2.4995 / 2.25;
    let film = &learned.films[0];
    assert_eq!((film.cups, film.classes, film.canvases.len()), (3, 1, 1));
    assert_near(in_mm(film.mean.value), 115.0 / density / 774.192 * 10.0, 1e-9);
    assert_near(in_ml(film.canvases[0].used.typical()), 115.0 / density, 1e-9);
    assert_near(in_us_fl_oz(film.canvases[0].planned), 4.8, 1e-9);
}

/// Three cups on a 1 g scale: limits add up, uncertainties add up in quadrature.
#[test]
fn the_scale_reaches_the_film_through_every_cup() {
    let lesson = Arc::new(lesson());
    let mut weighed = class(&lesson, &[]);
    weighed.cups = canvas_of(&lesson, 0, |_, _| gram(40.0));
    for cup in &mut weighed.cups {
        cup.step = gram(1.0);
    }
    let learned = learned(&[weighed]);
    let density = 2.4995 / 2.25;
    let used = learned.films[0].canvases[0].used;
    assert_near(in_ml(used.low()), 117.0 / density, 1e-9);
    assert_near(in_ml(used.high()), 123.0 / density, 1e-9);
    // Each cup: 1 g / sqrt 6; three of them: 1 g / sqrt 2.
    let u = in_mm(learned.films[0].from_scale);
    assert_near(u, (0.5_f64).sqrt() / density / 774.192 * 10.0, 1e-9);
    let cup = &learned.classes[0].cups[0];
    assert_near(in_gram(cup.used.low()), 39.0, 1e-9);
}

/// Classes of one and of four canvases count alike: weights 1/2 and 4 x 1/8.
#[test]
fn the_scale_reaches_the_mean_as_each_canvas_does() {
    let lesson = Arc::new(plain(mm(1.0)));
    let mut classes = [class(&lesson, &[60.0]), class(&lesson, &[61.0, 62.0, 63.0, 64.0])];
    for cup in classes.iter_mut().flat_map(|class| &mut class.cups) {
        cup.step = gram(1.0);
    }
    let one = (1.0_f64 / 6.0).sqrt() / GRAMS_A_MM;
    let found = in_mm(learned(&classes).films[0].from_scale);
    assert_near(found, one * (0.25_f64 + 4.0 / 64.0).sqrt(), 1e-12);
}

/// Common practice, no source: of a batch of 6 fl oz with 2 used, 4 are left, and a canvas of
/// the same size spun with thin paint needs about 4 where the rule says 5. Here the second
/// canvas is weighed: it emptied the cup of what the first had left.
#[test]
fn what_the_first_canvas_left_was_enough_for_the_second() {
    let mut lesson = plain(rule());
    lesson.canvases[0].edge = puddlebook::lesson::Edge::Painted;
    let lesson = Arc::new(lesson);
    let grams = |fl_oz| in_ml(us_fl_oz(fl_oz));
    let mut weighed = class(&lesson, &[]);
    weighed.cups = vec![
        cup(&lesson, 0, (20.0 + grams(6.0), 20.0 + grams(4.0))),
        cup(&lesson, 1, (20.0 + grams(4.0), 20.0)),
    ];
    let learned = learned(&[weighed]);
    let canvases = &learned.films[0].canvases;
    assert_near(in_us_fl_oz(canvases[0].used.typical()), 2.0, 1e-9);
    assert_near(in_us_fl_oz(canvases[1].used.typical()), 4.0, 1e-9);
    let left = in_ml(us_fl_oz(6.0)) - in_ml(canvases[0].used.typical());
    assert_near(left, in_ml(canvases[1].used.typical()), 1e-9);
    // Four of the 4.8 fl oz that the rule gives 120 in²: within the anchor's 0.75 to 0.90.
    let of_rule = in_us_fl_oz(canvases[1].used.typical()) / in_us_fl_oz(canvases[1].planned);
    assert!((0.75..=0.90).contains(&of_rule), "{of_rule}");
}

#[test]
fn a_layer_counts_when_every_colour_was_weighed() {
    let lesson = Arc::new(lesson());
    let mut weighed = class(&lesson, &[]);
    weighed.cups = canvas_of(&lesson, 0, |_, _| gram(40.0));
    weighed.cups.extend(canvas_of(&lesson, 1, |_, _| gram(50.0)));
    weighed.cups.remove(4);
    let learned = learned(&[weighed]);
    assert_eq!(learned.films[0].canvases.len(), 1);
    assert_eq!(learned.films[0].cups, 3);
    let [left_out] = learned.left_out.as_slice() else { panic!("{:?}", learned.left_out) };
    assert_eq!((left_out.class, left_out.student.as_str()), (0, "2"));
    assert_eq!(left_out.missing.len(), 1);
    assert_eq!(left_out.missing[0].name, "sand");
    // Its cups stand in the table all the same.
    assert_eq!((learned.classes[0].cups.len(), learned.classes[0].canvases), (5, 2));
}

#[test]
fn alike_canvases_of_one_student_are_told_apart_by_their_piece() {
    let lesson = Arc::new(plain(mm(1.0)));
    let mut weighed = class(&lesson, &[60.0, 70.0]);
    for (piece, cup) in (1..).zip(&mut weighed.cups) {
        cup.student = "1".into();
        cup.piece = piece;
    }
    assert_eq!(learned(&[weighed]).films[0].canvases.len(), 2);
}

#[test]
fn a_class_is_named_and_dated() {
    let mut lesson = plain(mm(1.0));
    lesson.heading.date = Some(Date::constant(2026, 3, 14));
    let lesson = Arc::new(lesson);
    let first = class(&lesson, &[60.0]);
    let mut second = class(&lesson, &[60.0]);
    second.date = Some(Date::constant(2026, 4, 11));
    let learned = learned(&[first, second]);
    let dates: Vec<_> = learned.classes.iter().map(|class| class.date).collect();
    assert_eq!(dates, [Some(Date::constant(2026, 3, 14)), Some(Date::constant(2026, 4, 11))]);
    assert_eq!(learned.classes[0].title, "A first evening (invented)");
}

/// Total over total: 12 + 9 g of 40 + 60 g, and the canvas without a tray does not count.
#[test]
fn what_ran_off_is_a_share_of_what_was_used() {
    let lesson = Arc::new(plain(mm(1.0)));
    let mut weighed = class(&lesson, &[40.0, 60.0, 80.0]);
    weighed.cups[0].tray = Some(gram(12.0));
    weighed.cups[1].tray = Some(gram(9.0));
    let run_off = learned(&[weighed.clone()]).films[0].run_off.unwrap();
    assert_eq!(run_off.canvases, 2);
    assert_near(run_off.share, 0.21, 1e-12);
    for cup in &mut weighed.cups {
        cup.tray = None;
    }
    assert_eq!(learned(&[weighed]).films[0].run_off, None);
}

/// Base and colour are films of their own; the canvas varies as a whole.
#[test]
fn layers_are_films_of_their_own_and_one_canvas() {
    let lesson = Arc::new(two_layers());
    let of = |grams: [(f64, f64); 2]| {
        let mut weighed = class(&lesson, &[]);
        for (student, (base, colour)) in grams.into_iter().enumerate() {
            weighed.cups.extend(canvas_of(&lesson, student, |layer, _| {
                gram(if layer == "base" { base } else { colour })
            }));
        }
        weighed
    };
    // What one layer takes more, the other takes less: whole canvases are all alike but one.
    let classes = [of([(60.0, 20.0), (20.0, 60.0)]), of([(50.0, 30.0), (40.0, 44.0)])];
    let learned = learned(&classes);
    let names: Vec<_> = learned.films.iter().map(|film| film.layer.as_str()).collect();
    assert_eq!(names, ["base", "colour"]);
    assert_eq!((learned.spread.canvases, learned.spread.classes), (4, 2));
    // By hand: 80, 80 and 80, 84 over their mean of 81; within: 8 / 2 = 4, between: 2 x 2 = 4.
    let SpreadPart::Weighed(student) = learned.spread.student else { panic!("weighed") };
    assert_near(student, 2.0 / 81.0, 1e-9);
    assert_eq!(learned.spread.class, SpreadPart::NothingSeen);
    assert_near(learned.spread.raw_class.unwrap(), 0.0, 1e-12);
}

/// A canvas of which one layer lacks teaches the other layer's film and nothing of the spread.
#[test]
fn half_a_canvas_is_no_canvas_of_the_spread() {
    let lesson = Arc::new(two_layers());
    let mut weighed = class(&lesson, &[]);
    weighed.cups = canvas_of(&lesson, 0, |_, _| gram(40.0));
    weighed.cups.pop();
    let learned = learned(&[weighed]);
    assert_eq!(learned.films.len(), 1);
    assert_eq!(learned.films[0].layer, "base");
    // A layer that nobody weighed is not one that lacks a colour.
    assert_eq!((learned.left_out.len(), learned.spread.canvases), (0, 0));
}

fn two_layers() -> Lesson {
    let mut lesson = plain(mm(1.0));
    let layers = vec![layer("base", mm(0.5)), layer("colour", mm(0.5))];
    let canvas = &mut lesson.canvases[0];
    canvas.technique = Arc::new(Technique { layers, ..(*canvas.technique).clone() });
    let base: CanvasLayer = canvas.layers[0].clone();
    canvas.layers.push(base);
    lesson
}
