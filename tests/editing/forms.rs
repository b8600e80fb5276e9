//! Patterns of quantities fit whatever the program reads as one.

use proptest::prelude::*;
use puddlebook::quantity::{Dimension, pattern, read};
use serde_json::json;

fn fits(pattern: &str, text: &str) -> bool {
    jsonschema::is_valid(&json!({"pattern": pattern}), &json!(text))
}

/// Numbers and what looks like them, with units of every dimension and what looks like them.
fn quantity() -> impl Strategy<Value = String> {
    let number = prop_oneof![
        "[0-9]{0,3}(\\.[0-9]{0,3})?",
        "[0-9]{1,2}[ -]{0,2}[0-9]{1,2}[/⁄][0-9]{1,2}",
        "[0-9]{0,2} ?[½¼¾⅓⅞]",
        "0{1,2}(/[0-9])?",
    ];
    let unit = prop_oneof![
        "(in|IN|Inch|\"|″|cm|mm|Metres|ft)",
        "(mL|ML|fl oz|Fl  Oz|fl\\. oz\\.|floz|cups?|gal|imperial fl oz|oz|L)",
        "(g|Grams|kg|lb|ounces|oz by weight)",
        "(g/mL|kg/L|g/fl oz|m²|sq ft|ft2|%|per cent|days|weeks|pieces|pc|min|h|hours)",
        "[a-z]{0,3}",
    ];
    (" {0,2}", number, " {0,2}", unit, " {0,1}")
        .prop_map(|(a, b, c, d, e)| [a, b, c, d, e].concat())
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(2_000))]

    #[test]
    fn what_is_read_fits_its_pattern(text in quantity(), more in quantity()) {
        use Dimension::{Area, Density, Days, Length, Mass, Pieces, Share, Volume};
        let measured = |wanted: &[Dimension]| pattern::measured(wanted);
        for (is_read, pattern) in [
            (read::length(&text).is_ok(), measured(&[Length])),
            (read::area(&text).is_ok(), measured(&[Area])),
            (read::volume(&text).is_ok(), measured(&[Volume])),
            (read::mass(&text).is_ok(), measured(&[Mass])),
            (read::density(&text).is_ok(), measured(&[Density])),
            (read::days(&text).is_ok(), measured(&[Days])),
            (read::percent(&text).is_ok(), measured(&[Share])),
            (read::amount(&text).is_ok(), measured(&[Volume, Mass, Pieces])),
            (read::number(&text).is_ok(), pattern::number()),
            (read::minutes(&text).is_ok(), pattern::lasting()),
        ] {
            if is_read {
                prop_assert!(fits(&pattern, &text), "{text:?} does not fit {pattern}");
            }
        }
        let both = format!("{text}{more}");
        if read::minutes(&both).is_ok() {
            prop_assert!(fits(&pattern::lasting(), &both), "{both:?}");
        }
    }
}

#[test]
fn what_is_refused_for_its_unit_does_not_fit() {
    let length = pattern::measured(&[Dimension::Length]);
    for text in ["10", "10 inn", "10,5 in", "-1 in", "10 g", "ten in", "1. in", "10 in wide"] {
        assert!(read::length(text).is_err() && !fits(&length, text), "{text}");
    }
    let amount = pattern::measured(&[Dimension::Volume, Dimension::Mass, Dimension::Pieces]);
    assert!(!fits(&amount, "8 oz"), "an ounce alone may be either");
    assert!(fits(&amount, "8 oz weight") && fits(&amount, "8 fl oz"));
    assert!(fits(&length, "0") && fits(&length, "1 1/2 in") && fits(&length, "1½\""));
}
