//! Tables: heads, decimal marks, rows, rules.

use super::sample::{document, long_table, pages, paragraph, points, runs, table, text};
use puddlebook::handout::{Block, Form, Inline, Row, RowKind, Table};
use puddlebook::ink::{Faces, Shape};
use puddlebook::page::{Role, TagKind, lay_out};

/// Where the glyph of a byte of a run starts.
fn x_of(run: &puddlebook::ink::TextRun, byte: usize) -> f32 {
    let before = run.glyphs.iter().take_while(|glyph| glyph.start() < byte);
    run.origin.x + before.map(|glyph| glyph.advance).sum::<f32>() * run.size
}

#[test]
fn the_head_is_repeated_on_every_page_and_heard_once() {
    let pages = pages(Form::Sheet, vec![Block::Table(long_table(150))]);
    assert!(pages.pages.len() >= 3);
    for (number, page) in pages.pages.iter().enumerate() {
        let roles: Vec<Role> = runs(page)
            .filter(|(run, _)| run.text.starts_with("Trial"))
            .map(|(_, role)| role)
            .collect();
        assert_eq!(roles.len(), 1, "page {}", number + 1);
        assert_eq!(roles[0] == Role::Artifact, number > 0, "page {}", number + 1);
    }
    let tables = pages.tags.iter().filter(|tag| tag.kind == TagKind::Table).count();
    assert_eq!(tables, 1, "one table stays one over pages");
}

#[test]
fn a_head_is_never_alone_at_the_foot_of_a_page() {
    for rows_before in 0..45 {
        let blocks = vec![Block::Table(long_table(rows_before)), Block::Table(long_table(20))];
        let pages = pages(Form::Sheet, blocks);
        for page in &pages.pages {
            let mut after_head = None;
            for (run, role) in runs(page).filter(|(_, role)| *role != Role::Artifact) {
                let Role::Content(tag) = role else { continue };
                match pages.tags[tag.0].kind {
                    TagKind::ColumnHeader => after_head = Some(0),
                    TagKind::TableCell => after_head = after_head.map(|rows: usize| rows + 1),
                    _ => {}
                }
                let _ = run;
            }
            assert!(after_head.is_none_or(|rows| rows >= 2), "{rows_before} rows before");
        }
    }
}

#[test]
fn numbers_stand_on_the_decimal_mark() {
    let numbers = ["1234.5", "0.25", "12.125", "600", "3½", "7.5 g", "-2.75", "1,000.5"];
    let rows: Vec<[&str; 2]> = numbers.iter().map(|number| ["row", *number]).collect();
    let rows: Vec<&[&str]> = rows.iter().map(<[&str; 2]>::as_slice).collect();
    let pages = pages(Form::Sheet, vec![Block::Table(table(&["Name", "Amount"], &rows))]);
    let mut marks = Vec::new();
    for (run, role) in runs(&pages.pages[0]) {
        let Role::Content(tag) = role else { continue };
        if pages.tags[tag.0].kind != TagKind::TableCell || run.text == "row" {
            continue;
        }
        let at = run.text.find(['.', '½', ' ']).unwrap_or(run.text.len());
        marks.push((x_of(run, at), run.text.clone()));
    }
    assert_eq!(marks.len(), numbers.len());
    for (x, number) in &marks {
        assert!((x - marks[0].0).abs() < 0.02, "{number} stands at {x}, not {}", marks[0].0);
    }
}

#[test]
fn bold_totals_stand_on_the_same_mark() {
    let mut made = table(&["Item", "Cost"], &[&["Paint", "10.49"], &["Medium", "1,214.50"]]);
    made.rows.push(Row {
        kind: RowKind::Total,
        cells: vec![vec![text("Total")], vec![text("1,224.99")]],
    });
    let pages = pages(Form::Sheet, vec![Block::Table(made)]);
    let marks: Vec<f32> = runs(&pages.pages[0])
        .filter(|(run, role)| {
            matches!(role, Role::Content(tag) if pages.tags[tag.0].kind == TagKind::TableCell)
                && run.text.contains('.')
        })
        .map(|(run, _)| x_of(run, run.text.find('.').unwrap()))
        .collect();
    assert_eq!(marks.len(), 3);
    assert!(marks.iter().all(|x| (x - marks[0]).abs() < 0.02), "{marks:?}");
}

#[test]
fn a_row_stays_on_one_page() {
    let long = "a cell of many words that is folded into several lines of its column ".repeat(3);
    let cells: Vec<[&str; 2]> = (0..60).map(|_| [long.as_str(), "1.5"]).collect();
    let rows: Vec<&[&str]> = cells.iter().map(<[&str; 2]>::as_slice).collect();
    let pages = pages(Form::Sheet, vec![Block::Table(table(&["Words", "Amount"], &rows))]);
    assert!(pages.pages.len() > 2);
    let mut page_of = vec![None; pages.tags.len()];
    for (number, page) in pages.pages.iter().enumerate() {
        for (_, role) in runs(page) {
            if let Role::Content(tag) = role {
                assert!(page_of[tag.0].is_none_or(|before| before == number));
                page_of[tag.0] = Some(number);
            }
        }
    }
}

#[test]
fn a_table_has_no_upright_rules() {
    let pages = lay_out(&document(Form::Sheet, vec![Block::Table(long_table(20))]), &Faces::new());
    for mark in &pages.pages[0].marks {
        if let Shape::Path { .. } = &mark.shape {
            let points = points(&mark.shape);
            assert!(points.windows(2).all(|pair| (pair[0].y - pair[1].y).abs() < 0.01));
        }
    }
}

#[test]
fn columns_are_as_wide_as_their_words_need() {
    let made = table(
        &["Name", "Amount"],
        &[&["a very long name of a colour indeed", "1"], &["short", "2"]],
    );
    let pages = pages(Form::Sheet, vec![Block::Table(made)]);
    let lines = runs(&pages.pages[0]).filter(|(run, _)| run.text.contains("very long")).count();
    assert_eq!(lines, 1);
    assert!(
        runs(&pages.pages[0]).any(|(run, _)| run.text == "a very long name of a colour indeed")
    );
}

/// A table of groups of so many rows each.
fn grouped(sizes: &[usize]) -> Table {
    let mut made = long_table(0);
    for (group, &rows) in sizes.iter().enumerate() {
        let heading = vec![vec![text(&format!("Group {group}"))], Vec::new()];
        made.rows.push(Row { kind: RowKind::Group, cells: heading });
        made.rows.extend((0..rows).map(|row| Row {
            kind: RowKind::Body,
            cells: vec![vec![text(&format!("Row {group}.{row}"))], vec![text("1.5")]],
        }));
    }
    made
}

#[test]
fn a_group_that_goes_on_says_so_on_the_next_page_and_leaves_no_row_alone() {
    let sizes = [7, 4, 9, 6, 30, 5, 2, 8, 3, 12, 7, 40, 5];
    let mut gone_on = 0;
    for before in 0..40 {
        let mut blocks: Vec<Block> = (0..before).map(|_| paragraph("A line.")).collect();
        blocks.push(Block::Table(grouped(&sizes)));
        let pages = pages(Form::Sheet, blocks);
        for (number, page) in pages.pages.iter().enumerate() {
            let rows: Vec<(usize, usize)> = runs(page)
                .filter_map(|(run, _)| run.text.strip_prefix("Row ")?.split_once('.'))
                .map(|(group, row)| (group.parse().unwrap(), row.parse().unwrap()))
                .collect();
            let all: Vec<(&str, Role)> =
                runs(page).map(|(run, role)| (run.text.as_str(), role)).collect();
            let again: Vec<(&str, Role)> = all
                .windows(2)
                .filter(|pair| pair[1].0 == ", continued")
                .map(|pair| pair[0])
                .collect();
            match rows.first() {
                Some(&(group, row)) if row > 0 => {
                    gone_on += 1;
                    let wanted = format!("Group {group}");
                    assert_eq!(
                        again,
                        [(wanted.as_str(), Role::Artifact)],
                        "{before} before, page {}",
                        number + 1
                    );
                }
                _ => assert!(again.is_empty(), "{before} before, page {}", number + 1),
            }
            for (group, &size) in sizes.iter().enumerate() {
                let here = rows.iter().filter(|(of, _)| *of == group).count();
                assert!(
                    here != 1 && here + 1 != size,
                    "{before} before, page {}: {here} of {size} rows of group {group}",
                    number + 1,
                );
            }
        }
    }
    assert!(gone_on > 20, "too few groups were cut to tell: {gone_on}");
}

#[test]
fn the_rule_of_a_blank_keeps_clear_of_the_rules_of_the_total() {
    let blank = || vec![Inline::Blank { width_mm: 26.0, label: "amount".to_owned() }];
    let mut made = table(&["Colour", "Used, g"], &[&["ochre", ""], &["plum", ""]]);
    for row in &mut made.rows {
        row.cells[1] = blank();
    }
    made.rows.push(Row { kind: RowKind::Total, cells: vec![vec![text("All cups")], blank()] });
    let pages = pages(Form::Sheet, vec![Block::Table(made)]);
    let page = &pages.pages[0];
    let level = |mark: &&puddlebook::page::Mark| match &mark.shape {
        Shape::Path { .. } => Some(points(&mark.shape)[0].y),
        Shape::Text(_) => None,
    };
    let blanks: Vec<f32> =
        page.marks.iter().filter(|m| m.role != Role::Artifact).filter_map(|m| level(&m)).collect();
    let rules: Vec<f32> =
        page.marks.iter().filter(|m| m.role == Role::Artifact).filter_map(|m| level(&m)).collect();
    assert_eq!(blanks.len(), 3);
    for blank in blanks {
        for rule in &rules {
            assert!((rule - blank).abs() > 7.0, "a rule at {rule} beside the blank at {blank}");
        }
    }
}
