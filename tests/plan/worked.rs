use super::generated::lessons;
use super::studio::*;
use proptest::prelude::*;
use puddlebook::lesson::{Edge, PolygonSize, Shape};
use puddlebook::plan::{Figure, FigureUnit, Formula, Plan, Step, StepKind};
use puddlebook::quantity::UnitSystem;
use puddlebook::quantity::units::{
    in_gram, in_inch, in_ml, in_mm, in_square_cm, in_square_inch, in_us_fl_oz, inch, mm,
};

/// A figure as a pocket calculator user types it: its decimal digits and nothing more.
fn typed(figure: &Figure) -> f64 {
    format!("{:.*}", usize::from(figure.decimals), figure.shown).parse().unwrap()
}

/// The sum as the sheet words it, on the printed digits; apart from the engine's own.
fn by_pocket_calculator(step: &Step) -> f64 {
    let figures: Vec<f64> = step.from.iter().map(typed).collect();
    match (step.formula, &figures[..]) {
        (Formula::Product, [a, b]) => a * b,
        (Formula::Product, [a, b, c]) => a * b * c,
        (Formula::HalfProduct, [a, b, c]) => a * b * c / 2.0,
        (Formula::TwiceSum, [a, b]) => (a + b) * 2.0,
        (Formula::ProductAroundSum, [a, b, c, d]) => a * (b + c) * d,
        (Formula::Sum, [a, b]) => a + b,
        (Formula::Quotient, [a, b]) => a / b,
        (Formula::PercentOf, [a, b]) => a * b / 100.0,
        (Formula::SumProductRoundedUp, [a, b, c, step]) => {
            let steps = (a + b) * c / step;
            // Steps are counted on fingers: 8.0000000001 are eight.
            let whole = (0..).map(f64::from).find(|whole| *whole >= steps - 1e-9).unwrap();
            whole * step
        }
        other => panic!("no such sum: {other:?}"),
    }
}

/// The plan's own value of what a step gives, in the unit of the figure.
fn from_plan(plan: &Plan, number: usize, step: &Step) -> f64 {
    let canvas = &plan.canvases[number];
    let layer = |name: &str| canvas.layers.iter().find(|layer| layer.name == name).unwrap();
    let cup = |name: &str, colour: &str| {
        layer(name).cups.iter().find(|cup| cup.colour.name == colour).unwrap()
    };
    let area = |area| match step.gives.unit {
        FigureUnit::SquareInch => in_square_inch(area),
        FigureUnit::SquareCentimetre => in_square_cm(area),
        other => panic!("not an area: {other:?}"),
    };
    let volume = |volume| match step.gives.unit {
        FigureUnit::FluidOunce => in_us_fl_oz(volume),
        FigureUnit::Millilitre => in_ml(volume),
        other => panic!("not a volume: {other:?}"),
    };
    match &step.what {
        StepKind::Face => area(canvas.areas.face),
        StepKind::Perimeter => match step.gives.unit {
            FigureUnit::Inch => in_inch(canvas.areas.perimeter),
            FigureUnit::Centimetre => in_mm(canvas.areas.perimeter) / 10.0,
            other => panic!("not a length: {other:?}"),
        },
        StepKind::EdgeArea => area(canvas.areas.edge),
        StepKind::PaintedArea => area(canvas.areas.painted),
        StepKind::LayerPaint { layer: name } => volume(layer(name).paint.typical()),
        StepKind::ColourPaint { layer, colour } => volume(cup(layer, colour).paint),
        StepKind::ColourMass { layer, colour } => in_gram(cup(layer, colour).fill),
    }
}

/// Steps in plain text, as a check sheet.
fn sheet(plan: &Plan) -> String {
    let mut text = String::new();
    for example in &plan.worked {
        text += &format!("{}\n", example.canvas);
        for step in &example.steps {
            let from: Vec<String> = step.from.iter().map(figure).collect();
            text += &format!(
                "  {:?}: {:?} [{}] = {}\n",
                step.what,
                step.formula,
                from.join(", "),
                figure(&step.gives)
            );
        }
    }
    text
}

fn figure(figure: &Figure) -> String {
    let unit = match figure.unit {
        FigureUnit::None => "",
        FigureUnit::Percent => " %",
        FigureUnit::Inch => " in",
        FigureUnit::Centimetre => " cm",
        FigureUnit::SquareInch => " in2",
        FigureUnit::SquareCentimetre => " cm2",
        FigureUnit::FluidOunce => " fl oz",
        FigureUnit::Millilitre => " mL",
        FigureUnit::Gram => " g",
        FigureUnit::SquareInchPerFluidOunce => " in2/fl oz",
        FigureUnit::SquareCentimetrePerMillilitre => " cm2/mL",
        FigureUnit::GramPerFluidOunce => " g/fl oz",
        FigureUnit::GramPerMillilitre => " g/mL",
    };
    format!("{:.*}{unit}", usize::from(figure.decimals), figure.shown)
}

/// Common practice, no source: 100 + 4 x 5 = 120 in², 4.8 fl oz.
#[test]
fn the_square_of_the_trade() {
    insta::assert_snapshot!(sheet(&planned(lesson())), @r#"
    square
      Face: Product [10 in, 10 in] = 100 in2
      Perimeter: TwiceSum [10 in, 10 in] = 40 in
      EdgeArea: Product [40 in, 0.5 in] = 20 in2
      PaintedArea: Sum [100 in2, 20 in2] = 120 in2
      LayerPaint { layer: "colour" }: Quotient [120 in2, 25 in2/fl oz] = 4.8 fl oz
      ColourPaint { layer: "colour", colour: "harbour blue" }: PercentOf [4.8 fl oz, 40 %] = 1.92 fl oz
      ColourMass { layer: "colour", colour: "harbour blue" }: SumProductRoundedUp [1.92 fl oz, 0.1 fl oz, 32.85 g/fl oz, 1 g] = 67 g
      ColourPaint { layer: "colour", colour: "sand" }: PercentOf [4.8 fl oz, 25 %] = 1.2 fl oz
      ColourMass { layer: "colour", colour: "sand" }: SumProductRoundedUp [1.2 fl oz, 0.1 fl oz, 32.85 g/fl oz, 1 g] = 43 g
      ColourPaint { layer: "colour", colour: "white" }: PercentOf [4.8 fl oz, 35 %] = 1.68 fl oz
      ColourMass { layer: "colour", colour: "white" }: SumProductRoundedUp [1.68 fl oz, 0.1 fl oz, 32.85 g/fl oz, 1 g] = 59 g
    "#);
}

#[test]
fn an_oval_in_centimetres() {
    let mut lesson = lesson();
    lesson.print.units = UnitSystem::Metric;
    lesson.canvases[0].shape = Shape::Oval { width: mm(400.0), height: mm(300.0) };
    lesson.canvases[0].depth = mm(15.0);
    insta::assert_snapshot!(sheet(&planned(lesson)), @r#"
    square
      Face: Product [3.1416, 20 cm, 15 cm] = 942.5 cm2
      Perimeter: ProductAroundSum [3.1416, 20 cm, 15 cm, 1.0051] = 110.5 cm
      EdgeArea: Product [110.5 cm, 1.5 cm] = 165.8 cm2
      PaintedArea: Sum [942.5 cm2, 165.8 cm2] = 1108.3 cm2
      LayerPaint { layer: "colour" }: Quotient [1108.3 cm2, 5.454 cm2/mL] = 203.2 mL
      ColourPaint { layer: "colour", colour: "harbour blue" }: PercentOf [203.2 mL, 40 %] = 81.3 mL
      ColourMass { layer: "colour", colour: "harbour blue" }: SumProductRoundedUp [81.3 mL, 3 mL, 1.111 g/mL, 1 g] = 94 g
      ColourPaint { layer: "colour", colour: "sand" }: PercentOf [203.2 mL, 25 %] = 50.8 mL
      ColourMass { layer: "colour", colour: "sand" }: SumProductRoundedUp [50.8 mL, 3 mL, 1.111 g/mL, 1 g] = 60 g
      ColourPaint { layer: "colour", colour: "white" }: PercentOf [203.2 mL, 35 %] = 71.1 mL
      ColourMass { layer: "colour", colour: "white" }: SumProductRoundedUp [71.1 mL, 3 mL, 1.111 g/mL, 1 g] = 83 g
    "#);
}

#[test]
fn a_hexagon_and_a_round_panel_without_painted_edge() {
    let mut lesson = lesson();
    let mut round = lesson.canvases[0].clone();
    lesson.canvases[0].shape =
        Shape::Polygon { sides: 6, side: inch(3.0), given: PolygonSize::Side };
    round.name = "round".into();
    round.shape = Shape::Round { diameter: inch(8.0) };
    round.edge = Edge::Bare;
    round.layers[0].colours.truncate(1);
    lesson.canvases.push(round);
    insta::assert_snapshot!(sheet(&planned(lesson)), @r#"
    square
      Face: HalfProduct [6, 3 in, 2.598 in] = 23.38 in2
      Perimeter: Product [6, 3 in] = 18 in
      EdgeArea: Product [18 in, 0.5 in] = 9 in2
      PaintedArea: Sum [23.38 in2, 9 in2] = 32.38 in2
      LayerPaint { layer: "colour" }: Quotient [32.38 in2, 25 in2/fl oz] = 1.295 fl oz
      ColourPaint { layer: "colour", colour: "harbour blue" }: PercentOf [1.295 fl oz, 40 %] = 0.52 fl oz
      ColourMass { layer: "colour", colour: "harbour blue" }: SumProductRoundedUp [0.52 fl oz, 0.1 fl oz, 32.85 g/fl oz, 1 g] = 21 g
      ColourPaint { layer: "colour", colour: "sand" }: PercentOf [1.295 fl oz, 25 %] = 0.32 fl oz
      ColourMass { layer: "colour", colour: "sand" }: SumProductRoundedUp [0.32 fl oz, 0.1 fl oz, 32.85 g/fl oz, 1 g] = 14 g
      ColourPaint { layer: "colour", colour: "white" }: PercentOf [1.295 fl oz, 35 %] = 0.45 fl oz
      ColourMass { layer: "colour", colour: "white" }: SumProductRoundedUp [0.45 fl oz, 0.1 fl oz, 32.85 g/fl oz, 1 g] = 19 g
    round
      Face: Product [3.1416, 4 in, 4 in] = 50.3 in2
      PaintedArea: Sum [50.3 in2, 0 in2] = 50.3 in2
      LayerPaint { layer: "colour" }: Quotient [50.3 in2, 25 in2/fl oz] = 2.01 fl oz
      ColourPaint { layer: "colour", colour: "harbour blue" }: PercentOf [2.01 fl oz, 40 %] = 0.8 fl oz
      ColourMass { layer: "colour", colour: "harbour blue" }: SumProductRoundedUp [0.8 fl oz, 0.1 fl oz, 32.85 g/fl oz, 1 g] = 30 g
    "#);
}

#[test]
fn metric_canvases_in_inches_still_come_out() {
    let mut lesson = lesson();
    lesson.canvases[0].shape = Shape::Rectangle { width: mm(300.0), height: mm(300.0) };
    insta::assert_snapshot!(sheet(&planned(lesson)), @r#"
    square
      Face: Product [11.811 in, 11.811 in] = 139.5 in2
      Perimeter: TwiceSum [11.811 in, 11.811 in] = 47.24 in
      EdgeArea: Product [47.24 in, 0.5 in] = 23.6 in2
      PaintedArea: Sum [139.5 in2, 23.6 in2] = 163.1 in2
      LayerPaint { layer: "colour" }: Quotient [163.1 in2, 25 in2/fl oz] = 6.52 fl oz
      ColourPaint { layer: "colour", colour: "harbour blue" }: PercentOf [6.52 fl oz, 40 %] = 2.61 fl oz
      ColourMass { layer: "colour", colour: "harbour blue" }: SumProductRoundedUp [2.61 fl oz, 0.1 fl oz, 32.85 g/fl oz, 1 g] = 90 g
      ColourPaint { layer: "colour", colour: "sand" }: PercentOf [6.52 fl oz, 25 %] = 1.63 fl oz
      ColourMass { layer: "colour", colour: "sand" }: SumProductRoundedUp [1.63 fl oz, 0.1 fl oz, 32.85 g/fl oz, 1 g] = 57 g
      ColourPaint { layer: "colour", colour: "white" }: PercentOf [6.52 fl oz, 35 %] = 2.28 fl oz
      ColourMass { layer: "colour", colour: "white" }: SumProductRoundedUp [2.28 fl oz, 0.1 fl oz, 32.85 g/fl oz, 1 g] = 79 g
    "#);
}

/// An edge of 5 x 359/3 mm x 39 mm is exactly 233.35 cm², half way between 233.3 and 233.4,
/// and no number of threes in 11.96667 would settle which: the result gets the digit.
#[test]
fn a_result_half_way_between_two_figures_gets_one_more_digit() {
    let mut lesson = lesson();
    lesson.print.units = UnitSystem::Metric;
    lesson.canvases[0].shape =
        Shape::Polygon { sides: 5, side: mm(359.0 / 3.0), given: PolygonSize::Side };
    lesson.canvases[0].depth = mm(39.0);
    let plan = planned(lesson);
    let edge = plan.worked[0].steps.iter().find(|step| step.what == StepKind::EdgeArea).unwrap();
    assert_eq!(figure(&edge.gives), "233.35 cm2");
    assert_eq!(figure(&edge.from[0]), "59.833 cm");
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(256))]

    #[test]
    fn printed_sums_come_out_on_a_pocket_calculator(lesson in lessons()) {
        let plan = planned(lesson);
        for (number, example) in plan.worked.iter().enumerate() {
            for step in &example.steps {
                let half = 0.5 * 10_f64.powi(-i32::from(step.gives.decimals));
                let result = by_pocket_calculator(step);
                prop_assert!(
                    (result - typed(&step.gives)).abs() <= half * (1.0 + 1e-6),
                    "{result} for {step:?}",
                );
                // And what is printed is the plan's figure, not a sum of rounded ones.
                let exact = from_plan(&plan, number, step);
                prop_assert!(
                    (exact - typed(&step.gives)).abs() <= half * (1.0 + 1e-6),
                    "{exact} for {step:?}",
                );
                prop_assert!(step.gives.decimals <= 9);
            }
        }
    }

    /// Digits are added only where they are needed, so a sheet stays fit to be typed: two or
    /// three a figure as a rule, and even for odd sizes in the other units not more than six.
    #[test]
    fn printed_figures_stay_short(lesson in lessons()) {
        let plan = planned(lesson);
        for example in &plan.worked {
            let figures: Vec<&Figure> = example
                .steps
                .iter()
                .flat_map(|step| step.from.iter().chain([&step.gives]))
                .collect();
            let digits: usize = figures.iter().map(|figure| usize::from(figure.decimals)).sum();
            prop_assert!(digits <= 6 * figures.len(), "{}", sheet(&plan));
        }
    }

    /// A figure that a step gives and the next starts from is printed alike in both.
    #[test]
    fn a_result_is_carried_on_as_it_was_printed(lesson in lessons()) {
        for example in planned(lesson).worked {
            let paint = |kind: &StepKind| matches!(kind, StepKind::LayerPaint { .. });
            let mut layer_paint = None;
            let mut painted = None;
            for step in &example.steps {
                match &step.what {
                    StepKind::PaintedArea => painted = Some(step.gives),
                    kind if paint(kind) => {
                        prop_assert_eq!(Some(step.from[0]), painted);
                        layer_paint = Some(step.gives);
                    }
                    StepKind::ColourPaint { .. } => {
                        prop_assert_eq!(Some(step.from[0]), layer_paint);
                    }
                    _ => {}
                }
            }
        }
    }
}
