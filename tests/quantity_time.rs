//! Times of the day, stretches of time and areas as people write them.

use proptest::prelude::*;
use puddlebook::quantity::read::{area, minutes, time_of_day};
use puddlebook::quantity::units::{in_square_cm, in_square_m};
use puddlebook::quantity::{Dimension, MisreadKind, Time};

fn at(hour: i8, minute: i8) -> Option<Time> {
    Some(Time::new(hour, minute, 0, 0).unwrap())
}

#[test]
fn times_of_the_day() {
    assert_eq!(time_of_day("18:30"), at(18, 30));
    assert_eq!(time_of_day(" 9:05 "), at(9, 5));
    assert_eq!(time_of_day("6:30 pm"), at(18, 30));
    assert_eq!(time_of_day("6 PM"), at(18, 0));
    assert_eq!(time_of_day("10 a.m."), at(10, 0));
    assert_eq!(time_of_day("12:15 pm"), at(12, 15), "after noon");
    assert_eq!(time_of_day("12 am"), at(0, 0), "midnight");
    for wrong in ["", "18", "18.30", "24:00", "18:60", "18:3", "13 pm", "0 am", "-1:00", "1:2:3"] {
        assert_eq!(time_of_day(wrong), None, "{wrong}");
    }
}

#[test]
fn stretches_of_time() {
    for (text, expected) in [
        ("15 min", 15),
        ("1 h", 60),
        ("1 h 30 min", 90),
        ("1h30min", 90),
        ("1½ h", 90),
        ("1 1/2 h", 90),
        ("1/3 h", 20),
        ("2 hours 5 minutes", 125),
        ("0.25 h", 15),
    ] {
        assert_eq!(minutes(text).unwrap(), expected, "{text}");
    }
    let wrong = |text: &str| minutes(text).unwrap_err();
    assert_eq!(wrong("2.5 min").kind, MisreadKind::NotWhole);
    assert!(matches!(wrong("15").kind, MisreadKind::MissingUnit { .. }));
    let metres = wrong("1 h 30 m");
    let found = Dimension::Length;
    let kind = MisreadKind::WrongDimension { unit: "m".into(), found, wanted: Dimension::Time };
    assert_eq!(metres.kind, kind);
    assert_eq!(metres.span, 7..8, "the unit of the second part");
    assert!(minutes("99999999999 h").is_err());
}

#[test]
fn areas() {
    assert_eq!(in_square_m(area("3 m²").unwrap()), 3.0);
    assert_eq!(in_square_m(area("3 m2").unwrap()), 3.0);
    // A foot is 0.3048 m (NIST Handbook 44, Appendix C).
    assert!((in_square_m(area("10 sq ft").unwrap()) - 0.929_030_4).abs() < 1e-12);
    assert!((in_square_cm(area("2 in²").unwrap()) - 12.903_2).abs() < 1e-9);
    assert!(matches!(area("3 m").unwrap_err().kind, MisreadKind::WrongDimension { .. }));
}

proptest! {
    #[test]
    fn every_minute_of_the_day_reads_back(hour in 0_i8..24, minute in 0_i8..60) {
        prop_assert_eq!(time_of_day(&format!("{hour}:{minute:02}")), at(hour, minute));
        let half = if hour < 12 { "am" } else { "pm" };
        let twelve = if hour % 12 == 0 { 12 } else { hour % 12 };
        prop_assert_eq!(time_of_day(&format!("{twelve}:{minute:02} {half}")), at(hour, minute));
    }

    #[test]
    fn no_text_breaks_the_reading(text in "\\PC{0,30}") {
        let _ = (time_of_day(&text), minutes(&text), area(&text));
    }
}
