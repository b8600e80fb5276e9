//! Quantities as people write them, right and wrong.

use proptest::prelude::*;
use puddlebook::quantity::read::{self, Measured};
use puddlebook::quantity::units::{in_inch, in_ml, inch, us_fl_oz};
use puddlebook::quantity::{Decimal, Dimension, MisreadKind};

fn kind<T: std::fmt::Debug>(got: Result<T, puddlebook::quantity::Misread>) -> MisreadKind {
    got.unwrap_err().kind
}

#[test]
fn fractions_as_people_write_them() {
    for (text, inches) in [
        ("12 in", 12.0),
        ("12in", 12.0),
        ("  12   inches ", 12.0),
        ("12\"", 12.0),
        ("3/4 in", 0.75),
        ("1 1/2 in", 1.5),
        ("1-1/2 in", 1.5),
        ("1½ in", 1.5),
        ("1 ½ in", 1.5),
        ("½\"", 0.5),
        ("¼ in", 0.25),
        ("¾ in", 0.75),
        ("⅛ in", 0.125),
        ("⅜ in", 0.375),
        ("⅝ in", 0.625),
        ("⅞ in", 0.875),
        ("2.5 in", 2.5),
        (".5 in", 0.5),
        ("12\u{a0}in", 12.0),
        ("0", 0.0),
    ] {
        let got = read::length(text).unwrap_or_else(|misread| panic!("{text}: {misread:?}"));
        assert!((in_inch(got) - inches).abs() < 1e-12, "{text}: {}", in_inch(got));
    }
    let thirds = in_inch(read::length("⅓ in").unwrap()) + in_inch(read::length("⅔ in").unwrap());
    assert!((thirds - 1.0).abs() < 1e-15);
}

#[test]
fn plain_numbers_shares_and_money_are_exact() {
    assert_eq!(read::count("8").unwrap(), 8);
    assert_eq!(read::number("1/2").unwrap(), 0.5);
    assert_eq!(read::days("2 weeks").unwrap(), 14);
    assert_eq!(read::money("6.49").unwrap().amount(), Decimal::new(649, 2));
    assert_eq!(read::share("12.5 %").unwrap().fraction(), Decimal::new(125, 3));
    assert_eq!(read::share("12 1/2%").unwrap().fraction(), Decimal::new(125, 3));
    assert_eq!(read::amount("24 pieces").unwrap(), Measured::Pieces(24));
    assert_eq!(read::amount("8 fl oz").unwrap(), Measured::Volume(us_fl_oz(8.0)));
}

#[test]
fn a_decimal_comma_is_shown_the_right_way() {
    let corrected = MisreadKind::DecimalComma { corrected: "1.5 in".into() };
    assert_eq!(kind(read::length("1,5 in")), corrected);
    let (thousands, decimal) = ("1000 mL".into(), "1.000 mL".into());
    let both = MisreadKind::ThousandsComma { thousands, decimal };
    assert_eq!(kind(read::volume("1,000 mL")), both);
}

#[test]
fn units_that_are_missing_unknown_or_of_another_kind() {
    let wanted = Dimension::Length;
    assert_eq!(kind(read::length("12")), MisreadKind::MissingUnit { number: "12".into(), wanted });
    let misread = read::length("12 imch").unwrap_err();
    assert_eq!(misread.span, 3..7, "the unit is to blame");
    let nearest = Some("inch");
    assert_eq!(misread.kind, MisreadKind::UnknownUnit { unit: "imch".into(), nearest, wanted });
    assert_eq!(
        kind(read::length("12 g")),
        MisreadKind::WrongDimension { unit: "g".into(), found: Dimension::Mass, wanted }
    );
    let unit_not_wanted = MisreadKind::UnitNotWanted { unit: "people".into(), number: "8".into() };
    assert_eq!(kind(read::count("8 people")), unit_not_wanted);
}

#[test]
fn an_ounce_is_refused_where_it_may_be_fluid() {
    assert_eq!(kind(read::amount("8 oz")), MisreadKind::BareOunce { number: "8".into() });
    assert_eq!(kind(read::volume("1 1/2 oz")), MisreadKind::BareOunce { number: "1 1/2".into() });
    assert!(read::mass("8 oz").is_ok(), "a weight is asked for, so it can only be one");
    assert!(matches!(read::amount("8 oz weight"), Ok(Measured::Mass(_))));
}

#[test]
fn numbers_that_are_none() {
    let wanted = Dimension::Length;
    assert_eq!(kind(read::length("  ")), MisreadKind::Empty { wanted });
    for text in
        ["wide", "ten in", "NaN in", "inf in", "1.2.3 in", "5. in", "1/ in", "12 5 in", "½½"]
    {
        let kind = kind(read::length(text));
        let unknown = matches!(kind, MisreadKind::UnknownUnit { .. });
        assert!(unknown || kind == MisreadKind::NotANumber { wanted }, "{text}: {kind:?}");
    }
    assert_eq!(kind(read::length("-1/2 in")), MisreadKind::Negative);
    assert_eq!(kind(read::length("\u{2212}2 in")), MisreadKind::Negative);
    assert_eq!(kind(read::length("3/0 in")), MisreadKind::ZeroDenominator);
    assert_eq!(kind(read::length(&format!("{} in", "9".repeat(40)))), MisreadKind::TooLarge);
    assert_eq!(kind(read::count("2.5")), MisreadKind::NotWhole);
    assert_eq!(kind(read::count("99999999999")), MisreadKind::TooLarge);
    assert_eq!(kind(read::share("33 1/3 %")), MisreadKind::NotExact);
    assert_eq!(kind(read::share("104 %")), MisreadKind::MoreThanWhole);
}

proptest! {
    #[test]
    fn no_text_breaks_the_reading(text in "\\PC{0,40}") {
        let reads = [
            read::length(&text).err(),
            read::volume(&text).err(),
            read::density(&text).err(),
            read::amount(&text).err(),
            read::share(&text).err(),
            read::money(&text).err(),
            read::days(&text).err(),
        ];
        for misread in reads.into_iter().flatten() {
            prop_assert!(text.get(misread.span).is_some(), "a span cuts a letter");
        }
    }

    #[test]
    fn nearly_right_texts_do_not_break_it_either(text in "[-0-9 ./,½⅓inmfloz%\"]{0,12}") {
        for misread in [read::length(&text).err(), read::amount(&text).err()].into_iter().flatten() {
            prop_assert!(text.get(misread.span).is_some(), "a span cuts a letter");
        }
    }

    #[test]
    fn the_choice_of_unit_changes_no_quantity(sixteenths in 1_u32..10_000) {
        let inches = f64::from(sixteenths) / 16.0;
        let as_inches = read::length(&format!("{sixteenths}/16 in")).unwrap();
        let as_mm = read::length(&format!("{} mm", inches * 25.4)).unwrap();
        let as_feet = read::length(&format!("{sixteenths}/192 ft")).unwrap();
        for other in [as_mm, as_feet, inch(inches)] {
            prop_assert!((in_inch(other) / in_inch(as_inches) - 1.0).abs() < 1e-13);
        }
    }

    #[test]
    fn a_decimal_reads_back_as_written(hundredths in 1_u32..1_000_000) {
        let text = format!("{}.{:02} mL", hundredths / 100, hundredths % 100);
        let read = in_ml(read::volume(&text).unwrap());
        prop_assert!((read - f64::from(hundredths) / 100.0).abs() < 1e-9);
        let price = format!("{}.{:02}", hundredths / 100, hundredths % 100);
        let money = puddlebook::quantity::read::money(&price).unwrap();
        prop_assert_eq!(money.amount(), Decimal::new(i64::from(hundredths), 2));
    }
}
