//! Pictures to draw, of every kind.

use puddlebook::chart::Room;
use puddlebook::handout::{
    Bar, BarPart, Bars, Coverage, CoverageLine, CoverageMark, DaysSketch, DecimalMark, DotFill,
    DrawnDay, FeeCurve, FeeDot, FilmLeft, FilmLine, FilmSketch, Outline, Part, Picture,
    PictureKind, RuleLine, SetUpBefore, SetUpDrying, SetUpSketch, Sketch, Unfolded, WeighedChart,
    WeighedPoint, Weight,
};
use puddlebook::ink::Colour;

/// A room in small print of the usual size.
pub const fn room(width: f32) -> Room {
    Room { width, small_print: 8.5, decimal: DecimalMark::Point }
}

/// A room on a page in large print: nothing below 16 points.
pub const fn large(width: f32) -> Room {
    Room { width, small_print: 16.0, decimal: DecimalMark::Point }
}

pub const WHITE: Colour = Colour::new(255, 255, 255);

pub fn picture(kind: PictureKind) -> Picture {
    Picture { alt: "a picture".to_owned(), kind }
}

pub fn coverage() -> Coverage {
    let line =
        |label: &str, slope, emphasis| CoverageLine { label: label.to_owned(), slope, emphasis };
    let mark = |label: &str, x, y| CoverageMark { label: label.to_owned(), x, y };
    Coverage {
        title: "Spun thin paint needs a third less than a straight pour".to_owned(),
        x_label: "Painted area, in\u{b2}".to_owned(),
        y_label: "Mixed paint, fl oz".to_owned(),
        band_label: "shaded: usual range".to_owned(),
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

pub fn part(label: &str, value: f64, swatch: Option<Colour>) -> BarPart {
    BarPart { label: label.to_owned(), value, swatch }
}

pub fn bars() -> Bars {
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

/// What a class of each size would pay, with one class marked.
pub fn fee_curve(fees: &[f64], here: usize, asked: Option<f64>) -> FeeCurve {
    let dot = |(at, fee): (usize, &f64)| FeeDot {
        students: at as u32 + 1,
        fee: *fee,
        fill: if asked.is_none_or(|asked| *fee <= asked) { DotFill::Filled } else { DotFill::Open },
    };
    FeeCurve {
        title: "A fee of $48.00 pays from 8 students on".to_owned(),
        x_label: "Students".to_owned(),
        y_label: "Fee for each student (USD)".to_owned(),
        line_label: "pays for itself".to_owned(),
        dot_label: "filled: the fee asked pays; open: it does not".to_owned(),
        dots: fees.iter().enumerate().map(dot).collect(),
        asked: asked.map(|fee| (fee, "fee asked, $48.00".to_owned())),
        here: Some((here, "this class: $43.31".to_owned())),
    }
}

/// 240 paid once and 12 for each.
pub fn fees_of(classes: u32) -> Vec<f64> {
    (1..=classes).map(|students| 240.0 / f64::from(students) + 12.0).collect()
}

/// Canvases of two sizes in so many classes, and one that stands alone.
pub fn weighed(classes: usize, rules: &[f64]) -> WeighedChart {
    let rule = |slope: &f64| RuleLine {
        label: format!("rule of thumb, spun pour {slope}"),
        slope: *slope,
    };
    let canvas = |at: usize| {
        let x = [3.27, 4.8][at % 2];
        let used = x * (0.75 + 0.03 * (at * 7 % 11) as f64);
        WeighedPoint { group: at % classes, x, y: [used - 0.12, used, used + 0.12] }
    };
    let alone = WeighedPoint { group: 0, x: 1.1, y: [1.2, 1.3, 1.4] };
    WeighedChart {
        title: "The canvases took 9 % less than planned".to_owned(),
        x_label: "Planned (fl oz)".to_owned(),
        y_label: "Used (fl oz)".to_owned(),
        even_label: "as planned".to_owned(),
        rules: rules.iter().map(rule).collect(),
        groups: (1..=classes).map(|at| format!("Two Ways to Pour, {at} March 2026")).collect(),
        points: (0..8 * classes).map(canvas).chain([alone]).collect(),
    }
}

/// So many films that thin from 1.5 mm, each slower than the one before, over a minute.
pub fn film_left(lines: u32) -> FilmLeft {
    let line = |at: u32| {
        let film = |time: u32| 1.5 / (1.0 + f64::from(time) / 3_f64.powi(at as i32)).sqrt();
        FilmLine {
            label: format!("paint {at}, {:.3} mm", film(60)),
            points: (0..=60).map(|time| (f64::from(time), film(time))).collect(),
        }
    };
    FilmLeft {
        title: "60 s of spinning leave 0.392 mm of thin paint and 0.976 mm of thick".to_owned(),
        x_label: "Seconds of spinning".to_owned(),
        y_label: "Film left on the board (mm)".to_owned(),
        lines: (1..=lines).map(line).collect(),
    }
}

pub fn unfolded(outline: Outline, depth: f64) -> Unfolded {
    let (height, middle) = match outline {
        Outline::Rectangle { .. } | Outline::Oval { .. } => ("10 in", ""),
        Outline::Polygon { .. } => ("", "8\u{2154} in"),
    };
    Unfolded {
        outline,
        depth,
        face_label: "100 in\u{b2}".to_owned(),
        edge_label: "5 in\u{b2} each".to_owned(),
        width_label: "10 in".to_owned(),
        height_label: height.to_owned(),
        depth_label: "\u{bd} in".to_owned(),
        middle_label: middle.to_owned(),
        blank_mm: 0.0,
    }
}

/// With words for the figures, as on a sheet.
pub fn asked(outline: Outline, depth: f64) -> Unfolded {
    let middle = match outline {
        Outline::Rectangle { .. } | Outline::Oval { .. } => "",
        Outline::Polygon { .. } => "from the middle to a side",
    };
    Unfolded {
        face_label: String::new(),
        edge_label: String::new(),
        width_label: "one side".to_owned(),
        depth_label: "depth".to_owned(),
        middle_label: middle.to_owned(),
        blank_mm: 20.0,
        ..unfolded(outline, depth)
    }
}

pub fn every_picture() -> Vec<PictureKind> {
    let rectangle = Outline::Rectangle { width: 10.0, height: 10.0 };
    vec![
        PictureKind::Coverage(coverage()),
        PictureKind::Bars(bars()),
        PictureKind::Fees(fee_curve(&fees_of(16), 7, Some(48.0))),
        PictureKind::Fees(fee_curve(&fees_of(60), 29, Some(20.0))),
        PictureKind::Fees(fee_curve(&fees_of(12), 0, None)),
        PictureKind::Fees(fee_curve(&fees_of(12), 0, Some(900.0))),
        PictureKind::Fees(fee_curve(&[8.0, 4.0, 2.67, 2.0, 3.2, 2.67], 4, Some(2.4))),
        PictureKind::Fees(fee_curve(&[0.0; 12], 3, Some(0.0))),
        PictureKind::Weighed(weighed(3, &[1.2])),
        PictureKind::Weighed(weighed(9, &[1.02, 1.5, 2.9])),
        PictureKind::Weighed(weighed(1, &[])),
        PictureKind::FilmLeft(film_left(3)),
        PictureKind::FilmLeft(film_left(5)),
        PictureKind::FilmLeft(film_left(0)),
        PictureKind::Unfolded(unfolded(rectangle, 0.5)),
        PictureKind::Unfolded(unfolded(Outline::Rectangle { width: 24.0, height: 6.0 }, 1.5)),
        PictureKind::Unfolded(unfolded(rectangle, 0.0)),
        PictureKind::Unfolded(unfolded(Outline::Oval { width: 12.0, height: 8.0 }, 0.75)),
        PictureKind::Unfolded(unfolded(Outline::Polygon { sides: 6, side: 4.0 }, 0.5)),
        PictureKind::Unfolded(asked(Outline::Polygon { sides: 6, side: 4.0 }, 0.5)),
        PictureKind::Unfolded(asked(Outline::Polygon { sides: 3, side: 4.0 }, 0.0)),
        PictureKind::Unfolded(unfolded(Outline::Polygon { sides: 3, side: 4.0 }, 0.5)),
        PictureKind::Sketch(film_sketch()),
        PictureKind::Sketch(set_up_sketch()),
        PictureKind::Sketch(Sketch::Ribbons(parts("mound of paint on paint"))),
        PictureKind::Sketch(Sketch::Pours(parts(""))),
        PictureKind::Sketch(Sketch::WashWater(parts("pour off slowly, as local rules allow"))),
        PictureKind::Sketch(Sketch::Faults(parts("surplus is still on its way down"))),
        PictureKind::Sketch(days_sketch(&[0, 1, 3, 7, 14])),
        PictureKind::Sketch(days_sketch(&[0, 1, 3, 7, 10, 14, 17, 21, 28, 40])),
        PictureKind::Sketch(days_sketch(&[0])),
        PictureKind::Sketch(days_sketch(&[])),
        PictureKind::Rings { colours: vec![Colour::new(0, 60, 120), WHITE, Colour::new(9, 9, 9)] },
    ]
}

/// Parts of a sketch: names of one and two words by turns.
pub fn parts<const N: usize>(words: &str) -> [Part; N] {
    std::array::from_fn(|number| Part {
        name: if number % 2 == 0 { "swipe".to_owned() } else { format!("straight pour {number}") },
        words: words.to_owned(),
    })
}

pub fn film_sketch() -> Sketch {
    let stages = parts("pigment and plastic hang in water");
    Sketch::Film(FilmSketch { stages, water: "water".to_owned() })
}

pub fn set_up_sketch() -> Sketch {
    let word = |word: &str| word.to_owned();
    Sketch::SetUp(SetUpSketch {
        before: SetUpBefore {
            name: word("before the pour"),
            level: word("spirit level, laid both ways"),
            canvas: word("canvas"),
            feet: word("feet"),
            tray: word("tray"),
        },
        drying: SetUpDrying {
            name: word("while it dries"),
            cover: word("carton against dust"),
            film: word("wet paint"),
            drip: word("drip"),
            gap: word("a gap for the damp air that gets out"),
        },
    })
}

/// What to do on some days, little and much by turns.
pub fn days_sketch(days: &[u32]) -> Sketch {
    let task = |day: &u32| DrawnDay {
        day: *day,
        name: format!("day {day}"),
        date: format!("{} September", 1 + day % 30),
        words: match day % 3 {
            0 => "try a fingertip; peel off the tape, trim, sign the back".to_owned(),
            _ => "varnish".to_owned(),
        },
    };
    Sketch::Days(DaysSketch {
        dry: "dry".to_owned(),
        soft: "still soft".to_owned(),
        dry_through: 14,
        days: days.iter().map(task).collect(),
    })
}

/// Everything that is written in a sketch, piece by piece.
pub fn written_in(sketch: &Sketch) -> Vec<String> {
    let of = |parts: &[Part]| -> Vec<String> {
        parts.iter().flat_map(|part| [part.name.clone(), part.words.clone()]).collect()
    };
    match sketch {
        Sketch::Film(film) => [of(&film.stages), vec![film.water.clone()]].concat(),
        Sketch::SetUp(SetUpSketch { before, drying }) => {
            let before = [&before.name, &before.level, &before.canvas, &before.feet, &before.tray];
            let drying = [&drying.name, &drying.cover, &drying.film, &drying.drip, &drying.gap];
            before.into_iter().chain(drying).cloned().collect()
        }
        Sketch::Ribbons(parts) => of(parts),
        Sketch::Pours(parts) | Sketch::Faults(parts) => of(parts),
        Sketch::WashWater(parts) => of(parts),
        Sketch::Days(line) => {
            let days = line.days.iter();
            let days = days.flat_map(|day| [&day.name, &day.date, &day.words]);
            days.chain([&line.dry, &line.soft]).cloned().collect()
        }
    }
}
