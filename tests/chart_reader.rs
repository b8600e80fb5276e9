//! What can be read back from the shapes of a drawing.

use puddlebook::chart::Drawing;
use puddlebook::ink::{Colour, Faces, PathSegment, Point, Rect, Shape, TextRun};

use crate::chart_data::WHITE;

pub fn texts(drawing: &Drawing) -> Vec<&TextRun> {
    let runs = drawing.shapes.iter().filter_map(|shape| match shape {
        Shape::Text(run) => Some(run),
        Shape::Path { .. } => None,
    });
    runs.collect()
}

pub fn text<'a>(drawing: &'a Drawing, wanted: &str) -> &'a TextRun {
    let found = texts(drawing).into_iter().find(|run| run.text == wanted);
    found.unwrap_or_else(|| panic!("no text {wanted:?}"))
}

/// From the tops of capitals to the baseline.
pub fn extent(run: &TextRun, faces: &Faces) -> Rect {
    let height = faces.metrics(run.face).cap_height * run.size;
    Rect { x: run.origin.x, y: run.origin.y - height, width: run.width(), height }
}

pub fn points(segments: &[PathSegment]) -> Vec<Point> {
    let points = segments.iter().flat_map(|segment| match *segment {
        PathSegment::Move(p) | PathSegment::Line(p) => vec![p],
        PathSegment::Cubic(a, b, c) => vec![a, b, c],
        PathSegment::Close => Vec::new(),
    });
    points.collect()
}

pub fn bounds(segments: &[PathSegment]) -> Rect {
    let all = points(segments);
    let low = |of: fn(&Point) -> f32| all.iter().map(of).fold(f32::INFINITY, f32::min);
    let high = |of: fn(&Point) -> f32| all.iter().map(of).fold(f32::NEG_INFINITY, f32::max);
    let (x, y) = (low(|p| p.x), low(|p| p.y));
    Rect { x, y, width: high(|p| p.x) - x, height: high(|p| p.y) - y }
}

pub fn filled(drawing: &Drawing) -> Vec<(Rect, Colour)> {
    let fills = drawing.shapes.iter().filter_map(|shape| match shape {
        Shape::Path { segments, fill: Some(fill), .. } => Some((bounds(segments), *fill)),
        _ => None,
    });
    fills.collect()
}

pub fn overlap(a: Rect, b: Rect) -> bool {
    a.x < b.x + b.width && b.x < a.x + a.width && a.y < b.y + b.height && b.y < a.y + a.height
}

/// No two texts overlap, nothing leaves the drawing, every text stands out from what it
/// is written on.
pub fn check(drawing: &Drawing, faces: &Faces) -> Result<(), String> {
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
pub fn ground_of(drawing: &Drawing, run: &TextRun, faces: &Faces) -> Colour {
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
pub fn inside(segments: &[PathSegment], at: Point) -> bool {
    let corners = points(segments);
    let pairs = corners.iter().zip(corners.iter().cycle().skip(1));
    let crossings = pairs.filter(|(a, b)| {
        (a.y > at.y) != (b.y > at.y) && at.x < (b.x - a.x) * (at.y - a.y) / (b.y - a.y) + a.x
    });
    crossings.count() % 2 == 1
}

/// Places of numbers on an axis: number and middle of its text.
pub fn axis(
    drawing: &Drawing,
    along: fn(&TextRun) -> f32,
    across: fn(&TextRun) -> f32,
) -> (f32, f32) {
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

pub fn middle_x(run: &TextRun) -> f32 {
    run.origin.x + run.width() / 2.0
}
