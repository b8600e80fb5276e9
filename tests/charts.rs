//! Charts and drawings, read back from their shapes.

use proptest::prelude::*;
use puddlebook::chart::{Drawing, draw};
use puddlebook::handout::{
    Bar, Bars, Coverage, CoverageLine, CoverageMark, Outline, PictureKind, Weight,
};
use puddlebook::ink::{Colour, Faces, PathSegment, Point, Rect, Shape};

use crate::chart_data::{
    WHITE, asked, bars, coverage, every_picture, fee_curve, fees_of, large, part, picture, room,
    unfolded,
};
use crate::chart_reader::{axis, bounds, check, filled, middle_x, points, text, texts};

#[test]
fn texts_keep_apart_stay_inside_and_can_be_read() {
    let faces = Faces::new();
    for kind in every_picture() {
        for width in [200.0, 300.0, 390.0, 480.0] {
            for room in [room(width), large(width * 1.6)] {
                let drawing = draw(&picture(kind.clone()), room, &faces);
                assert!(drawing.width <= room.width + 0.01);
                let name = format!("{kind:?}").chars().take(60).collect::<String>();
                check(&drawing, &faces)
                    .unwrap_or_else(|fault| panic!("{name} in {room:?}: {fault}"));
            }
        }
    }
}

#[test]
fn texts_grow_with_the_print_of_the_page() {
    let faces = Faces::new();
    for kind in every_picture() {
        let small = draw(&picture(kind.clone()), room(480.0), &faces);
        let grown = draw(&picture(kind), large(480.0), &faces);
        assert!(texts(&small).iter().all(|run| (8.0..=10.5).contains(&run.size)));
        assert!(texts(&grown).iter().all(|run| (14.0..=21.0).contains(&run.size)));
    }
}

#[test]
fn a_hexagon_shows_its_side_and_how_far_that_is_from_the_middle() {
    let faces = Faces::new();
    let outline = Outline::Polygon { sides: 6, side: 3.0 };
    for data in [unfolded(outline, 0.5), asked(outline, 0.5)] {
        let drawing = draw(&picture(PictureKind::Unfolded(data.clone())), room(480.0), &faces);
        // The face is drawn first; it lies on a side.
        let face = drawing.shapes.iter().find_map(|shape| match shape {
            Shape::Path { segments, fill: Some(_), .. } => Some(bounds(segments)),
            _ => None,
        });
        let face = face.expect("a face");
        let side = face.width / 2.0;
        let foot = Point { x: face.x + side, y: face.y + face.height };
        let line = drawing.shapes.iter().find_map(|shape| match shape {
            Shape::Path { segments, fill: None, stroke: Some(_) } => {
                let ends = points(segments);
                let down = ends.last().is_some_and(|end| {
                    (end.x - foot.x).abs() < 0.1 && (end.y - foot.y).abs() < 0.1
                });
                down.then(|| bounds(segments))
            }
            _ => None,
        });
        // In a hexagon of equilateral triangles: half the root of three (Euclid IV.15).
        let line = line.expect("a line to the side");
        assert!(line.width < 0.01 && (line.height / side - 0.75_f32.sqrt()).abs() < 0.001);
        let all: Vec<&str> = texts(&drawing).iter().map(|run| run.text.as_str()).collect();
        let all = all.join(" ");
        for label in [&data.width_label, &data.middle_label, &data.face_label, &data.depth_label] {
            assert!(all.contains(label.as_str()), "{label} is not in {all}");
        }
    }
}

#[test]
fn the_chart_says_what_its_bands_are() {
    let faces = Faces::new();
    for room in [room(300.0), room(480.0), large(480.0)] {
        let drawing = draw(&picture(PictureKind::Coverage(coverage())), room, &faces);
        text(&drawing, "shaded: usual range");
    }
    let mut bare = coverage();
    bare.lines.iter_mut().for_each(|line| line.emphasis = Weight::Quiet);
    let drawing = draw(&picture(PictureKind::Coverage(bare)), room(480.0), &faces);
    assert!(texts(&drawing).iter().all(|run| !run.text.contains("shaded")));
}

#[test]
fn canvases_lie_where_the_axes_say() {
    let faces = Faces::new();
    let data = coverage();
    let drawing = draw(&picture(PictureKind::Coverage(data.clone())), room(480.0), &faces);
    let (x0, x_step) = axis(&drawing, middle_x, |run| run.origin.y);
    let (y0, y_step) = axis(&drawing, |run| run.origin.y, |run| run.origin.x + run.width());
    let dots: Vec<Rect> = drawing
        .shapes
        .iter()
        .filter_map(|shape| match shape {
            Shape::Path { segments, fill: Some(_), .. } if segments.len() == 6 => {
                Some(bounds(segments)).filter(|b| b.width < 8.0)
            }
            _ => None,
        })
        .collect();
    assert_eq!(dots.len(), data.marks.len());
    let capitals = {
        let number = texts(&drawing).into_iter().find(|run| run.text == "5").expect("a number");
        faces.metrics(number.face).cap_height * number.size / 2.0
    };
    for (mark, dot) in data.marks.iter().zip(dots) {
        let x = x0 + x_step * mark.x as f32;
        let y = y0 + y_step * mark.y as f32 - capitals;
        assert!((dot.x + dot.width / 2.0 - x).abs() < 0.3, "{} is not at {x}", mark.label);
        assert!((dot.y + dot.height / 2.0 - y).abs() < 0.3, "{} is not at {y}", mark.label);
    }
}

#[test]
fn lines_end_where_their_slope_says_and_by_their_name() {
    let faces = Faces::new();
    let data = coverage();
    let drawing = draw(&picture(PictureKind::Coverage(data)), room(480.0), &faces);
    let (x0, x_step) = axis(&drawing, middle_x, |run| run.origin.y);
    let (y0, y_step) = axis(&drawing, |run| run.origin.y, |run| run.origin.x + run.width());
    let strong = drawing.shapes.iter().find_map(|shape| match shape {
        Shape::Path { segments, stroke: Some(stroke), .. } if stroke.width > 1.7 => {
            Some(points(segments))
        }
        _ => None,
    });
    let ends = strong.expect("a strong line");
    let rise = (ends[1].y - ends[0].y) / y_step;
    let run = (ends[1].x - ends[0].x) / x_step;
    assert!((rise / run - 0.04).abs() < 0.0002, "{rise} over {run}");
    assert!((ends[0].x - x0).abs() < 0.3 && (y0 - ends[0].y).abs() < 4.0);
    let name = text(&drawing, "Straight pour");
    assert!((name.origin.y - ends[1].y).abs() < 15.0 && name.origin.x > ends[1].x);
}

#[test]
fn bars_are_as_long_as_their_values() {
    let faces = Faces::new();
    let drawing = draw(&picture(PictureKind::Bars(bars())), room(480.0), &faces);
    let (x0, step) = axis(&drawing, middle_x, |run| run.origin.y);
    let grounds = filled(&drawing);
    let mut from = 0.0;
    for part in &bars().bars[0].parts {
        let (area, _) = grounds
            .iter()
            .find(|(area, fill)| Some(*fill) == part.swatch && area.height > 14.0)
            .expect("a part");
        assert!((area.x - x0 - step * from).abs() < 0.1, "{area:?} starts not at {from}");
        assert!((area.width - step * part.value as f32).abs() < 0.1, "{area:?} {}", part.value);
        from += part.value as f32;
    }
    // The tick of what is needed crosses its bar at 100.
    let tick = drawing.shapes.iter().find_map(|shape| match shape {
        Shape::Path { segments, stroke: Some(stroke), .. } if (stroke.width - 1.6).abs() < 0.01 => {
            Some(bounds(segments))
        }
        _ => None,
    });
    let tick = tick.expect("a tick");
    assert!((tick.x - x0 - step * 100.0).abs() < 0.1 && tick.height > 18.0);
}

#[test]
fn dots_lie_where_the_axes_say_and_open_ones_do_not_pay() {
    let faces = Faces::new();
    let fees = fees_of(16);
    let drawing =
        draw(&picture(PictureKind::Fees(fee_curve(&fees, 7, Some(40.0)))), room(480.0), &faces);
    // 40 for each pays with 9 and more: 240 / 9 + 12 = 38.67, 240 / 8 + 12 = 42. The end of the
    // upright axis is 1.8 times what matters, 1.8 x 42 = 75.6: 240 / 4 + 12 = 72 is below it.
    let dots: Vec<(Rect, Colour)> =
        filled(&drawing).into_iter().filter(|(at, _)| (at.width - 3.8).abs() < 0.01).collect();
    assert_eq!(dots.len(), 13);
    let white = dots.iter().filter(|(_, fill)| *fill == WHITE).count();
    assert_eq!(white, 5, "4 to 8");
    let here = filled(&drawing).into_iter().find(|(at, _)| (at.width - 6.0).abs() < 0.01);
    assert_eq!(here.expect("the dot of this class").1, WHITE, "it is one of those");
    let centre = |at: &Rect| (at.x + at.width / 2.0, at.y + at.height / 2.0);
    let (origin_x, student) = axis(&drawing, middle_x, |run| run.origin.y);
    let (origin_y, coin) = axis(&drawing, |run| run.origin.y, |run| run.origin.x + run.width());
    let number = text(&drawing, "20");
    let capitals = faces.metrics(number.face).cap_height * number.size / 2.0;
    for ((at, _), (students, fee)) in dots.iter().zip((4..=16).zip(&fees[3..])) {
        let (x, y) = centre(at);
        let wanted =
            (origin_x + student * students as f32, origin_y + coin * *fee as f32 - capitals);
        assert!((x - wanted.0).abs() < 0.3, "{students}: {x} is not {}", wanted.0);
        assert!((y - wanted.1).abs() < 0.3, "{students}: {y} is not {}", wanted.1);
    }
}

#[test]
fn a_fee_is_written_at_its_line_and_this_class_at_its_dot() {
    let faces = Faces::new();
    for asked in [None, Some(48.0)] {
        let data = fee_curve(&fees_of(16), 7, asked);
        let drawing = draw(&picture(PictureKind::Fees(data)), room(480.0), &faces);
        text(&drawing, "this class: $43.31");
        text(&drawing, "pays for itself");
        let labels = texts(&drawing).iter().filter(|run| run.text == "fee asked, $48.00").count();
        assert_eq!(labels, usize::from(asked.is_some()));
    }
}

#[test]
fn every_label_is_on_the_chart() {
    let faces = Faces::new();
    for width in [300.0, 480.0] {
        let drawing = draw(&picture(PictureKind::Bars(bars())), room(width), &faces);
        for bar in bars().bars {
            text(&drawing, &bar.label);
            for part in bar.parts.iter().chain(&bar.mark) {
                text(&drawing, &part.label);
            }
        }
        let drawing = draw(&picture(PictureKind::Coverage(coverage())), room(width), &faces);
        let all: Vec<&str> = texts(&drawing).iter().map(|run| run.text.as_str()).collect();
        let all = all.join(" ");
        for label in coverage().lines.iter().map(|l| &l.label) {
            let whole = label.split(' ').all(|word| all.contains(word));
            assert!(whole, "{label} is missing at {width}");
        }
        for mark in coverage().marks {
            assert!(all.contains(&mark.label), "{} is missing at {width}", mark.label);
        }
    }
}

#[test]
fn light_paint_has_an_outline() {
    let faces = Faces::new();
    let mut data = bars();
    data.bars[0].parts[0].swatch = Some(WHITE);
    let drawing = draw(&picture(PictureKind::Bars(data)), room(480.0), &faces);
    let (area, _) = filled(&drawing)
        .into_iter()
        .find(|(area, fill)| *fill == WHITE && area.height > 14.0)
        .expect("a white part");
    let outlined = drawing.shapes.iter().any(|shape| match shape {
        Shape::Path { segments, fill: None, stroke: Some(stroke) } => {
            let own = bounds(segments);
            stroke.colour.contrast(WHITE) > 3.0
                && (own.x - area.x).abs() < 0.1
                && (own.width - area.width).abs() < 0.1
        }
        _ => false,
    });
    assert!(outlined);
}

#[test]
fn an_unfolded_canvas_is_to_scale() {
    let faces = Faces::new();
    let outline = Outline::Rectangle { width: 16.0, height: 12.0 };
    let drawing =
        draw(&picture(PictureKind::Unfolded(unfolded(outline, 1.5))), room(480.0), &faces);
    let areas: Vec<Rect> = filled(&drawing).into_iter().map(|(area, _)| area).collect();
    // Four strips, then the face over them.
    let [top, bottom, left, right, face] = areas[..5] else { panic!("{areas:?}") };
    let scale = face.width / 16.0;
    let near = |a: f32, b: f32| (a - b).abs() < 0.05;
    assert!(near(face.height, 12.0 * scale));
    for strip in [top, bottom] {
        assert!(near(strip.width, face.width) && near(strip.height, 1.5 * scale), "{strip:?}");
    }
    for strip in [left, right] {
        assert!(near(strip.height, face.height) && near(strip.width, 1.5 * scale), "{strip:?}");
    }
    assert!(near(top.y + top.height, face.y) && near(bottom.y, face.y + face.height));
    assert!(near(left.x + left.width, face.x) && near(right.x, face.x + face.width));
}

#[test]
fn a_round_canvas_has_a_strip_as_long_as_its_rim() {
    let faces = Faces::new();
    let outline = Outline::Oval { width: 8.0, height: 8.0 };
    let drawing =
        draw(&picture(PictureKind::Unfolded(unfolded(outline, 0.75))), room(480.0), &faces);
    let areas: Vec<Rect> = filled(&drawing).into_iter().map(|(area, _)| area).collect();
    let face = areas[0];
    let strip = areas.iter().copied().max_by(|a, b| a.width.total_cmp(&b.width)).expect("a strip");
    assert!((strip.width / face.width - std::f32::consts::PI).abs() < 0.001);
    assert!((strip.height / face.width - 0.75 / 8.0).abs() < 0.001);
}

#[test]
fn the_cover_is_always_the_same_and_small() {
    let faces = Faces::new();
    let colours = vec![Colour::new(0, 60, 120), WHITE, Colour::new(200, 120, 40)];
    let kind = PictureKind::Rings { colours: colours.clone() };
    let one = draw(&picture(kind.clone()), room(400.0), &faces);
    assert_eq!(one, draw(&picture(kind), room(400.0), &faces));
    let segments: usize = one
        .shapes
        .iter()
        .map(|shape| match shape {
            Shape::Path { segments, .. } => segments.len(),
            Shape::Text(_) => 0,
        })
        .sum();
    assert!((300..2000).contains(&segments), "{segments}");
    let used: Vec<Colour> = filled(&one).into_iter().map(|(_, fill)| fill).collect();
    assert!(used.len() > 15 && colours.iter().all(|colour| used.contains(colour)));
    // Rings lie within each other.
    let rings: Vec<Rect> = filled(&one).into_iter().map(|(area, _)| area).collect();
    assert!(rings.windows(2).all(|pair| pair[1].width < pair[0].width));
}

#[test]
fn empty_and_senseless_data_draw_what_there_is() {
    let faces = Faces::new();
    let nothing = Coverage { lines: vec![], marks: vec![], x_max: f64::NAN, ..coverage() };
    let empty = Bars { bars: vec![], ..bars() };
    let zero = Bars {
        bars: vec![Bar {
            label: "None".to_owned(),
            parts: vec![part("0 mL", 0.0, None), part("?", f64::NAN, None)],
            mark: None,
        }],
        ..bars()
    };
    let flat = unfolded(Outline::Rectangle { width: 0.0, height: -1.0 }, f64::INFINITY);
    for kind in [
        PictureKind::Coverage(nothing),
        PictureKind::Bars(empty),
        PictureKind::Bars(zero),
        PictureKind::Unfolded(flat),
        PictureKind::Rings { colours: vec![] },
    ] {
        let drawing = draw(&picture(kind), room(300.0), &faces);
        check(&drawing, &faces).expect("a sound drawing");
        assert!(drawing.height > 0.0 && drawing.height.is_finite());
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 40, failure_persistence: None, ..ProptestConfig::default() })]

    /// Whatever the values, labels keep apart and inside.
    #[test]
    fn labels_of_any_bars_keep_apart(
        values in prop::collection::vec(prop::collection::vec(0.5_f64..900.0, 1..6), 1..5),
        mark in 1.0_f64..2000.0,
        width in 260.0_f32..520.0,
    ) {
        let faces = Faces::new();
        let bars = values
            .iter()
            .enumerate()
            .map(|(index, values)| Bar {
                label: format!("Canvas {index}"),
                parts: values
                    .iter()
                    .enumerate()
                    .map(|(number, &value)| {
                        let level = (value * 7.3) as u8;
                        let swatch = (number % 2 == 0).then(|| Colour::new(level, 200, 255 - level));
                        part(&format!("Paint {value:.1} mL"), value, swatch)
                    })
                    .collect(),
                mark: (index % 2 == 0).then(|| part("needed", mark, None)),
            })
            .collect();
        let data = Bars { title: "Any".to_owned(), axis: "mL".to_owned(), bars };
        let picture = picture(PictureKind::Bars(data));
        for room in [room(width), large(width * 1.6)] {
            let drawing = draw(&picture, room, &faces);
            prop_assert_eq!(check(&drawing, &faces), Ok(()));
        }
    }

    #[test]
    fn labels_of_any_coverage_keep_apart(
        slopes in prop::collection::vec(0.005_f64..0.06, 1..8),
        places in prop::collection::vec(10.0_f64..400.0, 0..6),
        width in 260.0_f32..520.0,
    ) {
        let faces = Faces::new();
        let lines: Vec<CoverageLine> = slopes
            .iter()
            .enumerate()
            .map(|(index, &slope)| CoverageLine {
                label: format!("Technique number {index}"),
                slope: [slope * 0.8, slope, slope * 1.2],
                emphasis: if index % 3 == 0 { Weight::Strong } else { Weight::Quiet },
            })
            .collect();
        let marks = places
            .iter()
            .enumerate()
            .map(|(index, &x)| CoverageMark { label: format!("Canvas {index}"), x, y: x * slopes[0] })
            .collect();
        let data = Coverage { lines, marks, x_max: 300.0, ..coverage() };
        let picture = picture(PictureKind::Coverage(data));
        for room in [room(width), large(width * 1.6)] {
            let drawing = draw(&picture, room, &faces);
            prop_assert_eq!(check(&drawing, &faces), Ok(()));
        }
    }

    #[test]
    fn any_canvas_stays_inside(
        w in 2.0_f64..40.0,
        h in 2.0_f64..40.0,
        depth in 0.0_f64..2.0,
        sides in 3_u32..9,
        width in 200.0_f32..520.0,
    ) {
        let faces = Faces::new();
        for outline in [
            Outline::Rectangle { width: w, height: h },
            Outline::Oval { width: w, height: h },
            Outline::Polygon { sides, side: w },
        ] {
            for data in [unfolded(outline, depth), asked(outline, depth)] {
                let kind = PictureKind::Unfolded(data);
                for room in [room(width), large(width * 1.6)] {
                    let drawing = draw(&picture(kind.clone()), room, &faces);
                    let found = check(&drawing, &faces);
                    prop_assert!(found.is_ok(), "{:?} {}: {:?}", outline, depth, found);
                }
            }
        }
    }
}

/// Ends of the level lines of a drawing that are so long, in points.
fn level_lines(drawing: &Drawing, long: f32) -> Vec<Rect> {
    let ends = drawing.shapes.iter().filter_map(|shape| match shape {
        Shape::Path { segments, stroke: Some(_), .. } => match segments.as_slice() {
            [PathSegment::Move(a), PathSegment::Line(b)] => Some((*a, *b)),
            _ => None,
        },
        _ => None,
    });
    ends.filter(|(a, b)| (a.y - b.y).abs() < 0.01 && ((b.x - a.x) - long).abs() < 0.1)
        .map(|(a, b)| Rect { x: a.x, y: a.y, width: b.x - a.x, height: 0.0 })
        .collect()
}

#[test]
fn a_canvas_to_measure_has_a_line_to_write_on_at_every_dimension() {
    const MM: f32 = 72.0 / 25.4;
    let faces = Faces::new();
    let cases = [
        (Outline::Rectangle { width: 10.0, height: 10.0 }, 3),
        (Outline::Oval { width: 12.0, height: 8.0 }, 3),
        (Outline::Polygon { sides: 6, side: 4.0 }, 3),
    ];
    for (outline, dimensions) in cases {
        // Hands do not grow with the print.
        for room in [room(480.0), large(480.0)] {
            let asked = draw(&picture(PictureKind::Unfolded(asked(outline, 0.75))), room, &faces);
            let lines = level_lines(&asked, 20.0 * MM);
            assert_eq!(lines.len(), dimensions, "{outline:?} in {room:?}");
            for line in lines {
                assert!(line.x >= 0.0 && line.x + line.width <= asked.width + 0.1, "{line:?}");
            }
            let given =
                draw(&picture(PictureKind::Unfolded(unfolded(outline, 0.75))), room, &faces);
            assert!(level_lines(&given, 20.0 * MM).is_empty(), "{outline:?}");
        }
    }
}

#[test]
fn nought_is_centred_under_its_tick_and_the_axis_ends_with_the_longest_bar() {
    let mut data = bars();
    data.bars = vec![Bar {
        label: "medium".to_owned(),
        parts: vec![part("", 33.3, None), part("", 100.0 - 33.3, None)],
        mark: None,
    }];
    let drawing = draw(&picture(PictureKind::Bars(data)), room(400.0), &Faces::new());
    let centre = |wanted: &str| middle_x(text(&drawing, wanted));
    let bars = filled(&drawing).into_iter().filter(|(_, colour)| *colour != WHITE);
    let ends = bars.map(|(area, _)| (area.x, area.x + area.width));
    let (left, right) = ends.fold((f32::MAX, f32::MIN), |(a, b), (x, y)| (a.min(x), b.max(y)));
    assert!((centre("0") - left).abs() < 0.5, "{} is not {left}", centre("0"));
    assert!((centre("100") - right).abs() < 0.5, "{} is not {right}", centre("100"));
}
