//! Charts and drawings, read back from their shapes.

use proptest::prelude::*;
use puddlebook::chart::{Drawing, draw};
use puddlebook::handout::{
    Bar, BarPart, Bars, Coverage, CoverageLine, CoverageMark, Outline, Picture, PictureKind,
    Unfolded, Weight,
};
use puddlebook::ink::{Colour, Faces, PathSegment, Point, Rect, Shape, TextRun};

const WHITE: Colour = Colour::new(255, 255, 255);

fn picture(kind: PictureKind) -> Picture {
    Picture { alt: "a picture".to_owned(), kind }
}

fn coverage() -> Coverage {
    let line =
        |label: &str, slope, emphasis| CoverageLine { label: label.to_owned(), slope, emphasis };
    let mark = |label: &str, x, y| CoverageMark { label: label.to_owned(), x, y };
    Coverage {
        title: "Spun thin paint needs a third less than a straight pour".to_owned(),
        x_label: "Painted area, in\u{b2}".to_owned(),
        y_label: "Mixed paint, fl oz".to_owned(),
        x_max: 300.0,
        lines: vec![
            line("Straight pour", [0.035, 0.04, 0.047], Weight::Strong),
            line("Spun pour, thin", [0.028, 0.033, 0.036], Weight::Strong),
            line("Brushed base, spun colour", [0.010, 0.0135, 0.016], Weight::Quiet),
            line("Dirty pour", [0.035, 0.041, 0.047], Weight::Quiet),
            line("Flip cup", [0.035, 0.039, 0.047], Weight::Quiet),
        ],
        marks: vec![
            mark("10 \u{d7} 10 in", 120.0, 4.8),
            mark("12 \u{d7} 16 in", 220.0, 7.26),
            mark("Demonstration", 126.0, 5.04),
        ],
    }
}

fn part(label: &str, value: f64, swatch: Option<Colour>) -> BarPart {
    BarPart { label: label.to_owned(), value, swatch }
}

fn bars() -> Bars {
    let paint = |r, g, b| Some(Colour::new(r, g, b));
    let bar = |label: &str, parts, mark| Bar { label: label.to_owned(), parts, mark };
    Bars {
        title: "Every canvas in its colours".to_owned(),
        axis: "Mixed paint, mL".to_owned(),
        bars: vec![
            bar(
                "10 \u{d7} 10 in",
                vec![
                    part("Warm white 57 mL", 57.0, paint(250, 248, 240)),
                    part("Ultramarine 43 mL", 43.0, paint(30, 50, 140)),
                    part("Gold 14 mL", 14.0, paint(200, 160, 60)),
                ],
                Some(part("needed 100", 100.0, None)),
            ),
            bar(
                "8 in round",
                vec![
                    part("Warm white 12 mL", 12.0, paint(250, 248, 240)),
                    part("Ultramarine 9 mL", 9.0, paint(30, 50, 140)),
                    part("Gold 3 mL", 3.0, paint(200, 160, 60)),
                ],
                None,
            ),
            bar("Medium", vec![part("in stock 40", 40.0, None), part("buy 60", 60.0, None)], None),
        ],
    }
}

fn unfolded(outline: Outline, depth: f64) -> Unfolded {
    Unfolded {
        outline,
        depth,
        face_label: "100 in\u{b2}".to_owned(),
        edge_label: "5 in\u{b2} each".to_owned(),
        width_label: "10 in".to_owned(),
        height_label: "10 in".to_owned(),
        depth_label: "\u{bd} in".to_owned(),
    }
}

fn every_picture() -> Vec<PictureKind> {
    let rectangle = Outline::Rectangle { width: 10.0, height: 10.0 };
    vec![
        PictureKind::Coverage(coverage()),
        PictureKind::Bars(bars()),
        PictureKind::Unfolded(unfolded(rectangle, 0.5)),
        PictureKind::Unfolded(unfolded(Outline::Rectangle { width: 24.0, height: 6.0 }, 1.5)),
        PictureKind::Unfolded(unfolded(rectangle, 0.0)),
        PictureKind::Unfolded(unfolded(Outline::Oval { width: 12.0, height: 8.0 }, 0.75)),
        PictureKind::Unfolded(unfolded(Outline::Polygon { sides: 6, side: 4.0 }, 0.5)),
        PictureKind::Rings { colours: vec![Colour::new(0, 60, 120), WHITE, Colour::new(9, 9, 9)] },
    ]
}

fn texts(drawing: &Drawing) -> Vec<&TextRun> {
    let runs = drawing.shapes.iter().filter_map(|shape| match shape {
        Shape::Text(run) => Some(run),
        Shape::Path { .. } => None,
    });
    runs.collect()
}

fn text<'a>(drawing: &'a Drawing, wanted: &str) -> &'a TextRun {
    let found = texts(drawing).into_iter().find(|run| run.text == wanted);
    found.unwrap_or_else(|| panic!("no text {wanted:?}"))
}

/// From the tops of capitals to the baseline.
fn extent(run: &TextRun, faces: &Faces) -> Rect {
    let height = faces.metrics(run.face).cap_height * run.size;
    Rect { x: run.origin.x, y: run.origin.y - height, width: run.width(), height }
}

fn points(segments: &[PathSegment]) -> Vec<Point> {
    let points = segments.iter().flat_map(|segment| match *segment {
        PathSegment::Move(p) | PathSegment::Line(p) => vec![p],
        PathSegment::Cubic(a, b, c) => vec![a, b, c],
        PathSegment::Close => Vec::new(),
    });
    points.collect()
}

fn bounds(segments: &[PathSegment]) -> Rect {
    let all = points(segments);
    let low = |of: fn(&Point) -> f32| all.iter().map(of).fold(f32::INFINITY, f32::min);
    let high = |of: fn(&Point) -> f32| all.iter().map(of).fold(f32::NEG_INFINITY, f32::max);
    let (x, y) = (low(|p| p.x), low(|p| p.y));
    Rect { x, y, width: high(|p| p.x) - x, height: high(|p| p.y) - y }
}

fn filled(drawing: &Drawing) -> Vec<(Rect, Colour)> {
    let fills = drawing.shapes.iter().filter_map(|shape| match shape {
        Shape::Path { segments, fill: Some(fill), .. } => Some((bounds(segments), *fill)),
        _ => None,
    });
    fills.collect()
}

fn overlap(a: Rect, b: Rect) -> bool {
    a.x < b.x + b.width && b.x < a.x + a.width && a.y < b.y + b.height && b.y < a.y + a.height
}

/// No two texts overlap, nothing leaves the drawing, every text stands out from what it
/// is written on.
fn check(drawing: &Drawing, faces: &Faces) -> Result<(), String> {
    let all = texts(drawing);
    for (index, run) in all.iter().enumerate() {
        for other in &all[index + 1..] {
            if overlap(extent(run, faces), extent(other, faces)) {
                return Err(format!("{:?} overlaps {:?}", run.text, other.text));
            }
        }
    }
    for shape in &drawing.shapes {
        let (reach, what) = match shape {
            Shape::Text(run) => (extent(run, faces), run.text.clone()),
            Shape::Path { segments, stroke, .. } => {
                let half = stroke.map_or(0.0, |stroke| stroke.width / 2.0);
                let b = bounds(segments);
                let (x, y) = (b.x - half, b.y - half);
                let grown =
                    Rect { x, y, width: b.width + 2.0 * half, height: b.height + 2.0 * half };
                (grown, format!("{segments:?}"))
            }
        };
        let inside = reach.x >= -0.02
            && reach.y >= -0.02
            && reach.x + reach.width <= drawing.width + 0.02
            && reach.y + reach.height <= drawing.height + 0.02;
        if !inside {
            return Err(format!("{what} leaves {} x {}: {reach:?}", drawing.width, drawing.height));
        }
    }
    for run in &all {
        let ground = ground_of(drawing, run, faces);
        let ratio = run.colour.contrast(ground);
        if ratio < 4.5 {
            return Err(format!("{:?} on {ground:?} has {ratio:.2}", run.text));
        }
    }
    Ok(())
}

/// The fill that was painted last under the middle of a text before the text.
fn ground_of(drawing: &Drawing, run: &TextRun, faces: &Faces) -> Colour {
    let place = extent(run, faces);
    let middle = Point { x: place.x + place.width / 2.0, y: place.y + place.height / 2.0 };
    let mut ground = WHITE;
    for shape in &drawing.shapes {
        match shape {
            Shape::Text(other) if std::ptr::eq(other, run) => break,
            Shape::Path { segments, fill: Some(fill), .. } if inside(segments, middle) => {
                ground = *fill;
            }
            _ => {}
        }
    }
    ground
}

/// Even-odd rule over the corners (curves through their control points).
fn inside(segments: &[PathSegment], at: Point) -> bool {
    let corners = points(segments);
    let pairs = corners.iter().zip(corners.iter().cycle().skip(1));
    let crossings = pairs.filter(|(a, b)| {
        (a.y > at.y) != (b.y > at.y) && at.x < (b.x - a.x) * (at.y - a.y) / (b.y - a.y) + a.x
    });
    crossings.count() % 2 == 1
}

#[test]
fn texts_keep_apart_stay_inside_and_can_be_read() {
    let faces = Faces::new();
    for kind in every_picture() {
        for width in [200.0, 300.0, 390.0, 480.0] {
            let drawing = draw(&picture(kind.clone()), width, &faces);
            assert!(drawing.width <= width + 0.01);
            let name = format!("{kind:?}").chars().take(60).collect::<String>();
            check(&drawing, &faces).unwrap_or_else(|fault| panic!("{name} at {width}: {fault}"));
        }
    }
}

/// Places of numbers on an axis: number and middle of its text.
fn axis(drawing: &Drawing, along: fn(&TextRun) -> f32, across: fn(&TextRun) -> f32) -> (f32, f32) {
    let numbers: Vec<(&TextRun, f32)> = texts(drawing)
        .into_iter()
        .filter_map(|run| Some((run, run.text.parse::<f32>().ok()?)))
        .collect();
    // The numbers of one axis stand in line.
    let line = numbers.iter().map(|(run, _)| across(run)).find(|line| {
        numbers.iter().filter(|(run, _)| (across(run) - line).abs() < 0.1).count() > 2
    });
    let line = line.expect("numbers in line");
    let mut own: Vec<(f32, f32)> = numbers
        .iter()
        .filter(|(run, value)| (across(run) - line).abs() < 0.1 && *value > 0.0)
        .map(|(run, value)| (*value, along(run)))
        .collect();
    own.sort_by(|a, b| a.0.total_cmp(&b.0));
    let ((v1, p1), (v2, p2)) = (own[0], own[own.len() - 1]);
    let step = (p2 - p1) / (v2 - v1);
    for (value, place) in &own {
        assert!((p1 + (value - v1) * step - place).abs() < 0.1, "the axis is not linear");
    }
    (p1 - v1 * step, step)
}

fn middle_x(run: &TextRun) -> f32 {
    run.origin.x + run.width() / 2.0
}

#[test]
fn canvases_lie_where_the_axes_say() {
    let faces = Faces::new();
    let data = coverage();
    let drawing = draw(&picture(PictureKind::Coverage(data.clone())), 480.0, &faces);
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
    let drawing = draw(&picture(PictureKind::Coverage(data)), 480.0, &faces);
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
    let drawing = draw(&picture(PictureKind::Bars(bars())), 480.0, &faces);
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
fn every_label_is_on_the_chart() {
    let faces = Faces::new();
    for width in [300.0, 480.0] {
        let drawing = draw(&picture(PictureKind::Bars(bars())), width, &faces);
        for bar in bars().bars {
            text(&drawing, &bar.label);
            for part in bar.parts.iter().chain(&bar.mark) {
                text(&drawing, &part.label);
            }
        }
        let drawing = draw(&picture(PictureKind::Coverage(coverage())), width, &faces);
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
    let drawing = draw(&picture(PictureKind::Bars(data)), 480.0, &faces);
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
    let drawing = draw(&picture(PictureKind::Unfolded(unfolded(outline, 1.5))), 480.0, &faces);
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
    let drawing = draw(&picture(PictureKind::Unfolded(unfolded(outline, 0.75))), 480.0, &faces);
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
    let one = draw(&picture(kind.clone()), 400.0, &faces);
    assert_eq!(one, draw(&picture(kind), 400.0, &faces));
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
        let drawing = draw(&picture(kind), 300.0, &faces);
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
        let drawing = draw(&picture(PictureKind::Bars(data)), width, &faces);
        prop_assert_eq!(check(&drawing, &faces), Ok(()));
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
        let drawing = draw(&picture(PictureKind::Coverage(data)), width, &faces);
        prop_assert_eq!(check(&drawing, &faces), Ok(()));
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
            let drawing = draw(&picture(PictureKind::Unfolded(unfolded(outline, depth))), width, &faces);
            let found = check(&drawing, &faces);
            prop_assert!(found.is_ok(), "{:?} {}: {:?}", outline, depth, found);
        }
    }
}
