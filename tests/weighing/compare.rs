//! The comparison with the rule of thumb, redone from what is printed.

use super::sample::{LESSON, plan_of, said, written};
use puddlebook::handout::Sheet;
use puddlebook::plan::Plan;
use rust_decimal::Decimal;
use rust_decimal::prelude::ToPrimitive;

/// The sums of step 9 on the answer copy, canvas by canvas.
fn sums(plan: &Plan) -> Vec<String> {
    let text = said(&written(plan, Sheet::Answers).blocks);
    let steps = text.split("Compare with the rule\n").skip(1);
    steps.map(|rest| rest.split("Look back").next().unwrap().to_owned()).collect()
}

/// The numbers of a line, in order, without the exponents of units.
fn numbers(line: &str) -> Vec<f64> {
    let plain = line.replace('²', "");
    let parts = plain.split(|c: char| !(c.is_ascii_digit() || c == '.'));
    parts.filter_map(|part| part.trim_end_matches('.').parse().ok()).collect()
}

fn line<'a>(step: &'a str, part: &str) -> &'a str {
    step.lines().find(|line| line.contains(part)).unwrap_or_else(|| panic!("{part} in {step}"))
}

#[test]
fn a_pocket_calculator_comes_to_the_same() {
    for (units, hundred, whole) in [("us", 1.0, 0.05), ("metric", 100.0, 0.5)] {
        let plan = plan_of(&LESSON.replace("units: us", &format!("units: {units}")));
        let steps = sums(&plan);
        assert_eq!(steps.len(), 2);
        for step in &steps {
            let [grams, weight, used] = numbers(line(step, "By plan"))[..3] else { panic!() };
            let digit = if units == "us" { 0.005 } else { 0.05 };
            assert!((grams / weight - used).abs() <= digit * 1.01, "{step}");
            let [same, rule, _, share] = numbers(line(step, "of the rule"))[..4] else { panic!() };
            assert_eq!(same, used);
            assert!((used / rule * 100.0 - share).abs() <= 0.51, "{step}");
            let cover = line(step, "where the rule covers");
            let all = numbers(cover);
            let (area, again) = (all[0], all[1]);
            let covers = if units == "us" { all[2] } else { all[3] };
            assert_eq!(again, used);
            assert!((area / used * hundred - covers).abs() <= whole * 1.01, "{step}");
            let money = line(step, "Saved");
            let all = numbers(money);
            let (more, less) = (all[0], all[1]);
            let (price, saved) = (all[all.len() - 2], all[all.len() - 1]);
            assert_eq!((more, less), (rule, used));
            assert!(((rule - used) / hundred * price - saved).abs() <= 0.00501, "{step}");
        }
    }
}

/// What all canvases of a kind take, at the price of a fluid ounce, is what the plan says that
/// their paint costs: up to the cent to which that price is rounded.
#[test]
fn the_price_of_mixed_paint_is_that_of_the_plan() {
    let one = LESSON.replace("demonstrations: 2, spares: 1", "demonstrations: 0");
    let (first, rest) = one.split_once("  oval:").unwrap();
    let (_, rest) = rest.split_once("palettes:").unwrap();
    let plan = plan_of(&format!("{first}palettes:{rest}"));
    let paid: Decimal =
        plan.cost.split.canvases[0].layers.iter().map(|layer| layer.total().amount()).sum();
    let all = numbers(line(&sums(&plan)[0], "Saved"));
    let price = all[all.len() - 2];
    let mixed = plan.to_mix().value / 29.573_529_562_5e-6;
    let exact = paid.to_f64().unwrap() / mixed;
    assert!((price - exact).abs() <= 0.00501, "{price} for {exact}");
}

#[test]
fn nothing_is_saved_where_nothing_has_a_price() {
    let (free, _) = LESSON.split_once("shops:").unwrap();
    let missing = LESSON.replace("      - {item: white acrylic, size: 16 fl oz, price: 8}\n", "");
    for text in [free, &missing] {
        let plan = plan_of(text);
        for sheet in [Sheet::Worksheet, Sheet::Answers] {
            let said = said(&written(&plan, sheet).blocks);
            assert!(said.contains("Compare with the rule"));
            assert!(!said.contains("Saved"), "{said}");
        }
    }
    assert!(said(&written(&plan_of(LESSON), Sheet::Worksheet).blocks).contains("Saved"));
}
