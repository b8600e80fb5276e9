//! Shaping: the faces as they are measured and set.

use puddlebook::ink::{Colour, Face, Faces, Figures, Point};

const INK: Colour = Colour::new(0, 0, 0);

#[test]
fn the_measures_of_every_face_are_in_its_own_tables() {
    // hhea and OS/2 tables of the font files: 1974 and -426 of 2000 units.
    let faces = Faces::new();
    for face in Face::ALL {
        let metrics = faces.metrics(face);
        assert!((metrics.ascender - 0.987).abs() < 1e-4);
        assert!((metrics.descender + 0.213).abs() < 1e-4);
        assert!(metrics.cap_height > 0.71 && metrics.cap_height < 0.73);
        assert!(metrics.x_height > 0.50 && metrics.x_height < 0.52);
    }
}

#[test]
fn tabular_figures_are_of_one_width_and_proportional_ones_are_not() {
    let faces = Faces::new();
    let width = |figures, text| faces.shape(Face::Regular, figures, text).width;
    for digit in ["0", "2", "3", "4", "5", "6", "7", "8", "9"] {
        assert_eq!(width(Figures::Tabular, digit), width(Figures::Tabular, "1"));
    }
    assert!(width(Figures::Proportional, "1") < width(Figures::Proportional, "8"));
}

#[test]
fn pairs_are_kerned_and_ligatures_joined() {
    let faces = Faces::new();
    let shape = |text| faces.shape(Face::Regular, Figures::Proportional, text);
    assert!(shape("AV").width < shape("A").width + shape("V").width - 0.02);
    let joined = shape("fi");
    assert_eq!(joined.glyphs.len(), 1);
    assert_eq!(joined.glyphs[0].text, 0..2);
}

#[test]
fn digits_around_a_fraction_slash_become_a_fraction() {
    let faces = Faces::new();
    let plain = faces.shape(Face::Regular, Figures::Tabular, "34").width;
    let fraction = faces.shape(Face::Regular, Figures::Tabular, "3\u{2044}4");
    assert!(fraction.width < plain, "{} is set no smaller than {plain}", fraction.width);
    assert_eq!(fraction.missing, []);
}

#[test]
fn a_character_that_the_face_lacks_is_named_and_seen() {
    let faces = Faces::new();
    let shaped = faces.shape(Face::Regular, Figures::Proportional, "a水b");
    assert_eq!(shaped.missing, ['水']);
    assert_eq!(shaped.glyphs.len(), 3);
    assert!(shaped.glyphs.iter().all(|g| g.id != 0));
    assert!(shaped.glyphs[1].advance > 0.4);
    assert_eq!(shaped.glyphs[1].text, 1..4);
    assert_eq!(shaped.glyphs[2].text, 4..5);
}

#[test]
fn characters_that_only_steer_the_setting_leave_no_mark() {
    let faces = Faces::new();
    let shape = |text| faces.shape(Face::Regular, Figures::Proportional, text);
    let plain = shape("AVA");
    let steered = shape("A\u{AD}V\u{2060}\u{200B}A");
    assert_eq!(steered.width, plain.width);
    assert_eq!(steered.missing, []);
    let texts: Vec<_> = steered.glyphs.iter().map(|g| g.text.clone()).collect();
    assert_eq!(texts, [0..1, 3..4, 10..11]);
}

#[test]
fn a_word_is_shaped_once() {
    let faces = Faces::new();
    let first = faces.shape(Face::Bold, Figures::Tabular, "varnish");
    let second = faces.shape(Face::Bold, Figures::Tabular, "varnish");
    assert!(std::sync::Arc::ptr_eq(&first, &second));
}

#[test]
fn a_run_is_as_wide_as_it_is_measured_and_its_glyphs_stand_for_its_text() {
    let faces = Faces::new();
    let text = "Mix ½ cup  of thin paint – first";
    let origin = Point { x: 10.0, y: 20.0 };
    let run = faces.run(Face::Italic, 11.0, INK, origin, text);
    let measured = faces.measure(Face::Italic, Figures::Proportional, 11.0, text);
    assert!((run.width() - measured).abs() < 1e-3);
    let read: String = run.glyphs.iter().map(|g| g.slice(&run.text).unwrap()).collect();
    assert_eq!(read, text);
}

#[test]
fn every_character_of_the_trade_is_in_every_face() {
    let faces = Faces::new();
    let text = "“”‘’–—…×÷±≈≤≥→°²³½¼¾⅓⅔⅛⅜⅝⅞µ%‰€£$¥·•−\u{2044}\u{A0}\u{202F}\u{2009}\u{2011}ÄÖÜßéñ";
    for face in Face::ALL {
        assert_eq!(faces.shape(face, Figures::Tabular, text).missing, []);
    }
}
