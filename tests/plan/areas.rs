use super::studio::{assert_near, lesson, planned};
use puddlebook::lesson::{Edge, PolygonSize, Shape};
use puddlebook::plan::Areas;
use puddlebook::quantity::units::{in_inch, in_mm, in_square_cm, in_square_inch, inch, mm};
use std::f64::consts::{PI, TAU};

fn areas(shape: Shape, depth_inch: f64) -> Areas {
    let mut lesson = lesson();
    lesson.canvases[0].shape = shape;
    lesson.canvases[0].depth = inch(depth_inch);
    planned(lesson).canvases[0].areas
}

fn rectangle(width: f64, height: f64) -> Shape {
    Shape::Rectangle { width: inch(width), height: inch(height) }
}

/// Common practice, no source: 100 + 4 x 5 = 120 in².
#[test]
fn ten_by_ten_with_half_inch_sides_is_a_hundred_and_twenty_square_inches() {
    let areas = areas(rectangle(10.0, 10.0), 0.5);
    assert_near(in_square_inch(areas.face), 100.0, 1e-9);
    assert_near(in_inch(areas.perimeter), 40.0, 1e-9);
    assert_near(in_square_inch(areas.edge), 20.0, 1e-9);
    assert_near(in_square_inch(areas.painted), 120.0, 1e-9);
}

#[test]
fn a_bare_edge_takes_no_paint() {
    let mut lesson = lesson();
    lesson.canvases[0].edge = Edge::Bare;
    let areas = planned(lesson).canvases[0].areas;
    assert_near(in_square_inch(areas.edge), 0.0, 0.0);
    assert_near(in_square_inch(areas.painted), 100.0, 1e-9);
    assert_near(in_inch(areas.perimeter), 40.0, 1e-9);
}

#[test]
fn a_panel_without_depth_has_no_edge() {
    let areas = areas(rectangle(8.0, 5.0), 0.0);
    assert_near(in_square_inch(areas.painted), 40.0, 1e-9);
}

/// Closed forms of the circle.
#[test]
fn a_round_canvas_of_thirty_centimetres() {
    let areas = areas(Shape::Round { diameter: mm(300.0) }, 0.0);
    assert_near(in_square_cm(areas.face), PI * 15.0 * 15.0, 1e-9);
    assert_near(in_mm(areas.perimeter), PI * 300.0, 1e-9);
}

/// Values recorded by tests/reference/ellipse_perimeter.py (versions in its output).
#[test]
fn ovals_have_the_perimeter_of_the_elliptic_integral() {
    let recorded = include_str!("../reference/ellipse_perimeter.csv");
    let mut checked = 0;
    for line in recorded.lines().filter(|line| line.starts_with(|first: char| first.is_numeric())) {
        let [long, short, perimeter] =
            line.split(',').map(|cell| cell.parse::<f64>().unwrap()).collect::<Vec<_>>()[..]
        else {
            panic!("not three values: {line}");
        };
        for (width, height) in [(long, short), (short, long)] {
            let shape = Shape::Oval { width: inch(2.0 * width), height: inch(2.0 * height) };
            let areas = areas(shape, 0.0);
            assert_near(in_inch(areas.perimeter) / perimeter, 1.0, 1e-12);
            assert_near(in_square_inch(areas.face), PI * long * short, 1e-9 * long * short);
        }
        checked += 1;
    }
    assert_eq!(checked, 13);
}

/// The corners are walked round and the area taken by the shoelace formula, which knows
/// nothing of tangents.
#[test]
fn polygons_agree_with_their_corners() {
    for sides in 3..=24 {
        let side = 4.0;
        let radius = side / (2.0 * (PI / f64::from(sides)).sin());
        let corner = |n: u32| {
            let turn = TAU * f64::from(n) / f64::from(sides);
            (radius * turn.cos(), radius * turn.sin())
        };
        let twice: f64 = (0..sides)
            .map(|n| {
                let ((x, y), (next_x, next_y)) = (corner(n), corner(n + 1));
                x * next_y - next_x * y
            })
            .sum();
        let areas =
            areas(Shape::Polygon { sides, side: inch(side), given: PolygonSize::Side }, 0.75);
        assert_near(in_square_inch(areas.face), twice / 2.0, 1e-9);
        assert_near(in_inch(areas.perimeter), f64::from(sides) * side, 1e-9);
        assert_near(in_square_inch(areas.edge), f64::from(sides) * side * 0.75, 1e-9);
    }
}

/// Closed form: 3 sqrt(3) / 2 x side².
#[test]
fn a_hexagon_by_its_closed_form() {
    let areas = areas(Shape::Polygon { sides: 6, side: inch(3.0), given: PolygonSize::Side }, 0.0);
    assert_near(in_square_inch(areas.face), 1.5 * 3.0_f64.sqrt() * 9.0, 1e-9);
}
