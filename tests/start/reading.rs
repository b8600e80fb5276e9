//! Canvases and colours in one line, in the many ways in which people write them.

use super::script::begun;
use crate::lesson_tools::read_text;
use puddlebook::lesson::{Canvas, PolygonSize, Shape};
use puddlebook::quantity::units::{in_inch, in_mm};

fn canvas(line: &str) -> Canvas {
    let (_, text, script) = begun(&[("canvas", line)]);
    assert_eq!(script.wrong, [], "{line}");
    read_text(&text).unwrap().canvases.remove(0)
}

/// What is said against a canvas.
fn refused(line: &str) -> String {
    let (.., script) = begun(&[("canvas", line)]);
    assert_eq!(script.wrong.len(), 1, "{line} is wrong");
    script.wrong[0].1.clone()
}

fn shares(line: &str) -> Vec<String> {
    let (_, text, script) = begun(&[("colours", "my own"), ("colours", line)]);
    assert_eq!(script.wrong, [], "{line}");
    let canvas = read_text(&text).unwrap().canvases.remove(0);
    let colours = canvas.layers[0].colours.iter();
    colours.map(|(colour, share)| format!("{} {}", colour.name, share.percent())).collect()
}

#[test]
fn a_canvas_in_one_line() {
    for line in [
        "square 10 x 10 in, 1/2 in deep, 2 each",
        "10 x 10 in, 2 each, depth 1/2 in",
        "Square 10 in; 1/2\" deep; 2 each",
        "10\" x 10\", ½ in deep, 2 each",
        "10x10 in, 0.5 in deep, each 2",
        "a square canvas 10 in by 10 in, 1/2 in deep, 2 each",
        "10 x 10 x 1/2 in, 2 each",
        "10 x 10 in, 1/2 in edge, 2 each",
    ] {
        let canvas = canvas(line);
        let Shape::Rectangle { width, height } = canvas.shape else { panic!("{line}") };
        let sizes = [width, height, canvas.depth].map(in_inch);
        let wanted = [10.0, 10.0, 0.5];
        assert!(sizes.iter().zip(wanted).all(|(a, b)| (a - b).abs() < 1e-9), "{line}: {sizes:?}");
        assert_eq!(canvas.each.get(), 2, "{line}");
    }
}

#[test]
fn canvases_of_every_outline() {
    let round = canvas("round 30 cm, 1.7 cm deep").shape;
    assert!(matches!(round, Shape::Round { diameter } if (in_mm(diameter) - 300.0).abs() < 1e-9));
    assert!(matches!(canvas("oval 8 x 10 in").shape, Shape::Oval { .. }));
    let hexagon = canvas("hexagon 6 in").shape;
    let flats = PolygonSize::AcrossFlats;
    assert!(matches!(hexagon, Shape::Polygon { sides: 6, given, .. } if given == flats));
    let corners = canvas("octagon 20 cm across corners").shape;
    let wanted = PolygonSize::AcrossCorners;
    assert!(matches!(corners, Shape::Polygon { sides: 8, given, .. } if given == wanted));
    let heptagon = canvas("polygon 7 sides, side 4 in, flat").shape;
    assert!(matches!(heptagon, Shape::Polygon { sides: 7, .. }));
}

#[test]
fn what_is_no_canvas_is_said_so() {
    assert!(refused("12 in").contains("write square 12 in or round 12 in"));
    assert!(refused("square 8 x 10 in").contains("write rectangle 8 in x 10 in"));
    assert!(refused("oval 8 in").contains("one of its two sizes is missing"));
    assert!(refused("square 10 x 10").contains("the unit is missing"));
    assert!(refused("big one").contains("not understood as a canvas"));
    assert!(refused("square 10 in, purple").contains("\"purple\" is not understood here"));
    assert!(
        refused("square 10 in, 11 in deep").contains("the edge is deeper than the canvas is wide")
    );
    assert!(refused("polygon 12 cm").contains("how many sides has it?"));
}

#[test]
fn colours_in_parts_and_in_percent() {
    let halves = ["blue 50", "sand 25", "white 25"];
    for line in [
        "blue 2, sand 1, white 1",
        "2 blue, 1 sand, 1 white",
        "2 parts blue, 1 part sand, 1 part white",
        "blue, sand, white 2:1:1",
        "2:1:1 blue, sand, white",
        "blue 50 %, sand 25%, white the rest",
        "50 % blue; 25 % sand; 25 % white",
        "blue 1, sand 1/2, white 0.5",
    ] {
        assert_eq!(shares(line), halves, "{line}");
    }
    assert_eq!(shares("blue, sand, white"), ["blue 33.33", "sand 33.33", "white 33.34"]);
    assert_eq!(shares("night sky"), ["night sky 100"]);
}

#[test]
fn colours_that_do_not_add_up_are_said_so() {
    let refused = |line: &str| {
        let (.., script) = begun(&[("colours", "my own"), ("colours", line)]);
        script.wrong.first().map(|(_, why)| why.clone()).unwrap_or_default()
    };
    assert!(refused("blue, sand 2:1:1").contains("3 parts for 2 colours"));
    assert!(refused("blue 2, sand").contains("some colours have a share and some have none"));
    assert!(refused("blue 2, sand 10 %").contains("do not go together"));
    assert!(refused("blue 0, sand 1").contains("no part of \"blue\""));
    assert!(refused("blue 1, blue 2").contains("twice"));
    assert!(refused(" ; ").contains("no colour is named"));
    assert!(refused("blue 2,1 sand").contains("can be read in two ways"));
    // A comma is missing.
    for line in ["sea glass 40 rust 60", "sea glass 40% rust 60%", "sea glass 2 rust 1 white 1"] {
        assert!(refused(line).contains("is more than one colour"), "{line}");
    }
}
