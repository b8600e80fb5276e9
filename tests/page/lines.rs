//! Lines of a paragraph.

use super::sample::{PROSE, pages, paragraph, runs};
use puddlebook::handout::{Block, Form};
use puddlebook::ink::{Face, Faces, Figures, TextRun};
use puddlebook::page::Role;

/// The lines of the only paragraph of a book.
fn lines(words: &str) -> Vec<TextRun> {
    let pages = pages(Form::Book, vec![paragraph(words)]);
    let content = |page| {
        runs(page)
            .filter(|(_, role)| *role != Role::Artifact)
            .map(|(run, _)| run.clone())
            .collect::<Vec<_>>()
    };
    pages.pages.iter().flat_map(content).collect()
}

/// Widths of the gaps between the words of a line, in em; none at its end.
fn gaps(run: &TextRun) -> Vec<f32> {
    let spaces = run.glyphs.iter().filter(|glyph| glyph.slice(&run.text) == Some(" "));
    spaces.map(|glyph| glyph.advance).filter(|&advance| advance > 0.0).collect()
}

#[test]
fn justified_lines_end_together_and_gaps_of_a_line_are_equal() {
    let lines = lines(&format!("{PROSE} {PROSE}"));
    assert!(lines.len() > 8);
    let (last, others) = lines.split_last().unwrap();
    let width = others[0].width();
    for line in others {
        assert!((line.width() - width).abs() < 0.05, "{} and {width}", line.width());
        let gaps = gaps(line);
        assert!(gaps.iter().all(|gap| (gap - gaps[0]).abs() < 1e-4));
        assert!(gaps.iter().all(|gap| (0.16..=0.5).contains(gap)), "{gaps:?}");
    }
    assert!(last.width() <= width + 0.05);
}

/// Gaps that a first-fit setter would leave: each line takes the words that fit.
fn first_fit_gaps(words: &str, measure: f32) -> Vec<f32> {
    let faces = Faces::new();
    let width = |word: &str| faces.measure(Face::Regular, Figures::Proportional, 10.5, word);
    let space = width(" ");
    let (mut gaps, mut line, mut count) = (Vec::new(), 0.0, 0);
    for word in words.split_whitespace() {
        let with = line + width(word) + space * count as f32;
        if with > measure {
            gaps.push((measure - line) / (count - 1) as f32 / 10.5);
            (line, count) = (0.0, 0);
        }
        line += width(word);
        count += 1;
    }
    gaps
}

#[test]
fn lines_fitted_together_are_more_even_than_lines_filled_one_by_one() {
    // The mean square of the gaps' departures from the space of the face: what Knuth
    // and Plass (1981) bring down by choosing all breaks of a paragraph together.
    let words = format!("{PROSE} {PROSE} {PROSE}").replace("neighbour", "near");
    let set = lines(&words);
    let measure = set[0].width();
    let fitted: Vec<f32> =
        set[..set.len() - 1].iter().filter_map(|line| gaps(line).first().copied()).collect();
    let greedy = first_fit_gaps(&words, measure);
    let uneven = |gaps: &[f32]| {
        gaps.iter().map(|gap| (gap - 0.256).powi(2)).sum::<f32>() / gaps.len() as f32
    };
    assert!(uneven(&fitted) < uneven(&greedy), "{} {}", uneven(&fitted), uneven(&greedy));
}

#[test]
fn a_number_stays_with_its_unit() {
    for unit in ["\u{202F}fl\u{202F}oz", "\u{A0}mL"] {
        for words in 1..40 {
            let text =
                format!("{}{}12{unit} and more words to fill a line", "word ".repeat(words), "x");
            for line in lines(&text) {
                assert!(!line.text.trim_end().ends_with("12"), "{:?}", line.text);
            }
        }
    }
}

#[test]
fn a_range_of_numbers_and_a_minus_sign_stay_whole() {
    for words in 1..40 {
        let text = format!(
            "{}12–15 and \u{2212}4 and so on to the end of the line",
            "word ".repeat(words)
        );
        for line in lines(&text) {
            assert!(!line.text.trim_end().ends_with(['–', '\u{2212}']), "{:?}", line.text);
        }
    }
}

#[test]
fn a_word_wider_than_the_column_is_broken_and_whole() {
    let word = "abcdefghij".repeat(40);
    let lines = lines(&format!("before {word} after"));
    assert!(lines.len() > 3);
    let heard: String = lines.iter().map(|line| line.text.as_str()).collect();
    assert!(super::sample::plain(&heard).contains(&word));
}

#[test]
fn hyphens_at_line_ends_are_soft() {
    let lines = lines(&"unbelievably extraordinary mischaracterisation ".repeat(12));
    assert!(lines.iter().any(|line| line.text.ends_with('\u{AD}')));
    assert!(lines.iter().all(|line| !line.text.ends_with('-')));
}

#[test]
fn other_languages_are_not_divided_by_english_patterns() {
    let mut document = super::sample::document(
        Form::Book,
        vec![paragraph(&"unbelievably extraordinary mischaracterisation ".repeat(12))],
    );
    document.language = "de".to_owned();
    let pages = puddlebook::page::lay_out(&document, &Faces::new());
    for page in &pages.pages {
        assert!(runs(page).all(|(run, _)| !run.text.contains('\u{AD}')));
    }
}

#[test]
fn sheets_are_ragged_with_even_gaps() {
    let pages = pages(Form::Sheet, vec![paragraph(PROSE)]);
    for (run, role) in runs(&pages.pages[0]) {
        if role != Role::Artifact {
            assert!(gaps(run).iter().all(|gap| (gap - 0.256).abs() < 1e-3));
        }
    }
}

#[test]
fn blanks_leave_eight_millimetres_for_a_hand() {
    let blank = |label: &str| {
        Block::Paragraph(vec![
            super::sample::text("Area: "),
            puddlebook::handout::Inline::Blank { width_mm: 40.0, label: label.to_owned() },
        ])
    };
    let pages = pages(Form::Sheet, vec![blank("first"), blank("second")]);
    let lines: Vec<f32> = runs(&pages.pages[0])
        .filter(|(run, _)| run.text.starts_with("Area"))
        .map(|(run, _)| run.origin.y)
        .collect();
    assert!(lines[1] - lines[0] >= 8.0 / 25.4 * 72.0);
}
