//! The visual system against its outside measures.

use puddlebook::handout::Form;
use puddlebook::ink::Palette;
use puddlebook::lesson::{Edition, Paper};
use puddlebook::page::style::Style;

#[test]
fn paper_is_of_its_standard_size() {
    // ISO 216: A4 is 210 mm by 297 mm; Letter is 8.5 in by 11 in; 72 points to the inch
    // (ISO 32000-1, Table 30) and 25.4 mm to the inch.
    let size = |paper| Style::new(Form::Sheet, paper, Edition::Standard).frame.paper;
    let (width, height) = size(Paper::A4);
    assert!((width - 595.2756).abs() < 1e-3 && (height - 841.8898).abs() < 1e-3);
    assert_eq!(size(Paper::Letter), (612.0, 792.0));
}

#[test]
fn every_text_can_be_read_on_its_ground() {
    // WCAG 2.1, success criterion 1.4.3: 4.5 to 1 at least.
    for surface in Palette::STANDARD.surfaces() {
        let contrast = surface.text.contrast(surface.ground);
        assert!(contrast >= 4.5, "{:?} on {}: {contrast}", surface.text, surface.name);
    }
}

#[test]
fn the_text_column_of_a_book_holds_60_to_72_characters() {
    for paper in [Paper::A4, Paper::Letter] {
        let style = Style::new(Form::Book, paper, Edition::Standard);
        let characters = style.frame.width / style.scale.body.character();
        assert!((60.0..=72.0).contains(&characters), "{characters}");
        let side = style.frame.side.unwrap();
        let part = side.width / style.frame.paper.0;
        assert!((0.2..=0.3).contains(&part), "the side margin is {part} of the page");
    }
}

#[test]
fn large_print_is_set_in_eighteen_points_and_nothing_below_sixteen() {
    let style = Style::new(Form::Book, Paper::A4, Edition::LargePrint);
    assert_eq!(style.scale.body.size, 18.0);
    assert!(style.scale.small.size >= 16.0 && style.scale.note.size >= 16.0);
}
