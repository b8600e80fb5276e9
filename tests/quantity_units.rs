//! Conversions against NIST SP 811 (2008), Appendix B.8, and NIST Handbook 44,
//! Appendix C, to the full printed digits.

use puddlebook::quantity::read;
use uom::si::{length, mass, mass_density, volume};

/// Two binary numbers that print the same 15 digits.
fn same(got: f64, printed: f64) -> bool {
    (got - printed).abs() <= printed.abs() * 5e-16
}

#[test]
fn lengths() {
    // SP 811 B.8: inch 2.54 E-02 m, foot 3.048 E-01 m.
    for (text, metres) in [
        ("1 in", 0.0254),
        ("1 ft", 0.3048),
        ("1 mm", 0.001),
        ("1 cm", 0.01),
        ("1 m", 1.0),
        ("3/4 in", 0.01905),
        ("12 in", 0.3048),
    ] {
        let got = read::length(text).unwrap().get::<length::meter>();
        assert!(same(got, metres), "{text}: {got} m, printed {metres}");
    }
}

#[test]
fn volumes() {
    // SP 811 B.8 prints seven digits; the exact values follow from the gallon of
    // 231 in³ (Handbook 44, Appendix C, "exact" column), in mL.
    for (text, millilitres) in [
        ("1 fl oz", 29.573_529_562_5),
        ("1 cup", 236.588_236_5),
        ("1 pt", 473.176_473),
        ("1 qt", 946.352_946),
        ("1 gal", 3_785.411_784),
        ("1 imperial fl oz", 28.413_062_5),
        ("1 imperial gal", 4_546.09),
        ("1 L", 1_000.0),
    ] {
        let got = read::volume(text).unwrap().get::<volume::cubic_meter>() * 1e6;
        assert!(same(got, millilitres), "{text}: {got} mL, printed {millilitres}");
    }
    let printed = 2.957_353e-5;
    let got = read::volume("1 fl oz").unwrap().get::<volume::cubic_meter>();
    assert_eq!(format!("{got:.6e}"), format!("{printed:.6e}"), "SP 811 prints 2.957 353 E-05");
}

#[test]
fn masses() {
    // Handbook 44, Appendix C: pound 453.592 37 g, ounce 28.349 523 125 g, exactly.
    for (text, grams) in [
        ("1 lb", 453.592_37),
        ("1 oz", 28.349_523_125),
        ("1 oz weight", 28.349_523_125),
        ("1 kg", 1_000.0),
        ("40 g", 40.0),
    ] {
        let got = read::mass(text).unwrap().get::<mass::kilogram>() * 1e3;
        assert!(same(got, grams), "{text}: {got} g, printed {grams}");
    }
}

#[test]
fn densities() {
    // SP 811 B.8: pound per US gallon 1.198 264 E+02 kg/m³; 119.826427 in REFERENCES
    // from the exact pound and gallon.
    let got = read::density("1 lb/gal").unwrap().get::<mass_density::kilogram_per_cubic_meter>();
    assert_eq!(format!("{got:.6}"), "119.826427");
    let water = read::density("1 kg/L").unwrap();
    assert_eq!(water, read::density("1 g/mL").unwrap());
    let ounce = read::density("1 g/fl oz").unwrap().get::<mass_density::kilogram_per_cubic_meter>();
    assert!(same(ounce * 29.573_529_562_5, 1e3));
}
