//! Cards and labels are cut to one size, which is the one that is said.

use super::{DEMOS, MM, everywhere, lines};
use puddlebook::handout::Sheet;
use puddlebook::ink::{Dash, Shape};
use puddlebook::page::{Pages, Role};
use std::collections::BTreeSet;

/// "Every piece is 56 × 32 mm."
fn said(pages: &Pages) -> Option<(f32, f32)> {
    let texts =
        pages.pages.iter().flat_map(|page| &page.marks).filter_map(|mark| match &mark.shape {
            Shape::Text(run) => Some(run.text.as_str()),
            Shape::Path { .. } => None,
        });
    let line = texts.filter_map(|text| text.split_once("Every piece is ")).next()?.1;
    let (width, rest) = line.split_once('×')?;
    let height = rest.trim().trim_end_matches('.').trim_end_matches("mm");
    Some((width.trim().parse().ok()?, height.trim().parse().ok()?))
}

/// Widths and heights of the pieces between broken lines, in tenths of a millimetre.
fn pieces(pages: &Pages) -> BTreeSet<(i32, i32)> {
    let mut sizes = BTreeSet::new();
    for page in &pages.pages {
        let shapes: Vec<&Shape> = page
            .marks
            .iter()
            .filter(|mark| mark.role == Role::Artifact)
            .map(|mark| &mark.shape)
            .collect();
        let broken: Vec<_> =
            lines(&shapes).into_iter().filter(|(.., stroke)| stroke.dash == Dash::Dashed).collect();
        // Four lines to a piece: top, bottom, left, right.
        for four in broken.chunks(4) {
            let (top, bottom) = (four[0].0.y, four[1].0.y);
            let (left, right) = (four[2].0.x, four[3].0.x);
            let tenths = |points: f32| (points / MM * 10.0).round() as i32;
            sizes.insert((tenths(right - left), tenths(bottom - top)));
        }
    }
    sizes
}

#[test]
fn all_pieces_have_the_size_that_is_said() {
    for file in DEMOS {
        for sheet in [Sheet::Cards, Sheet::Tools] {
            for (plan, _, pages) in everywhere(file, sheet) {
                let (width, height) = said(&pages).expect("a size");
                let sizes: Vec<(i32, i32)> = pieces(&pages).into_iter().collect();
                let expected = ((width * 10.0) as i32, (height * 10.0) as i32);
                assert_eq!(sizes, [expected], "{file}, {sheet:?}, {:?}", plan.lesson.print);
            }
        }
    }
}

#[test]
fn labels_fit_three_beside_each_other_or_two_in_large_print() {
    use puddlebook::lesson::Edition;
    for (plan, _, pages) in everywhere("boathouse-evening", Sheet::Tools) {
        let size = said(&pages).unwrap();
        match plan.lesson.print.edition {
            Edition::Standard => assert_eq!(size, (56.0, 32.0)),
            Edition::LargePrint => assert_eq!(size, (84.0, 45.0)),
        }
    }
}
