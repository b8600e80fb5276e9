//! What is not heard: headers, numbers of pages, the footer of all pages but the last, and
//! heads of tables that are repeated. Nothing else, so that no word of a handout is lost.

use puddlebook::handout::{Block, RowKind};

use super::handouts::Handout;
use super::said::plain;
use super::wished::{Scribe, tables};
use super::{all_keep, ensure};
use crate::pdf_reader::ReadPage;

#[test]
fn headers_and_numbers_of_pages_stand_on_each_page_and_are_not_heard() {
    all_keep(furniture);
}

#[test]
fn nothing_but_furniture_and_repeated_heads_is_not_heard() {
    all_keep(known);
}

/// A gap wider than this, in em, parts what stands left and right on a line.
const APART: f32 = 1.0;

/// The texts of a page that are not heard, line by line.
fn unheard(page: &ReadPage) -> Vec<String> {
    let mut lines: Vec<String> = Vec::new();
    for sequence in page.sequences.iter().filter(|sequence| sequence.mcid.is_none()) {
        let mut end = None;
        for glyph in &sequence.glyphs {
            let goes_on = end.is_some_and(|(x, y): (f32, f32)| {
                y == glyph.y && (glyph.x - x).abs() < APART * glyph.size
            });
            match lines.last_mut() {
                Some(line) if goes_on => line.push_str(&glyph.text),
                _ => lines.push(glyph.text.clone()),
            }
            end = Some((glyph.end, glyph.y));
        }
    }
    lines.iter().map(|line| plain(line)).filter(|line| !line.is_empty()).collect()
}

/// "Page 2 of 5" as two numbers, by the pattern of the document.
fn folio(pattern: &str, line: &str) -> Option<(usize, usize)> {
    let (before, rest) = pattern.split_once("{page}")?;
    let (between, after) = rest.split_once("{pages}")?;
    let (page, pages) = line.strip_prefix(before)?.strip_suffix(after)?.split_once(between)?;
    Some((page.parse().ok()?, pages.parse().ok()?))
}

pub fn furniture(Handout { document, file, .. }: &Handout) -> Result<(), String> {
    let sections = document.blocks.iter().filter_map(|block| match block {
        Block::Section { header } => Some(header),
        _ => None,
    });
    let mut headers = sections.peekable();
    let mut header = headers.peek().copied().unwrap_or(&document.header);
    let bare = matches!(document.blocks.first(), Some(Block::TitlePage { .. }));
    let mut before: Option<(usize, usize)> = None;
    for (index, page) in file.pages.iter().enumerate() {
        let unheard = unheard(page);
        let folios: Vec<(usize, usize)> =
            unheard.iter().filter_map(|line| folio(&document.folio, line)).collect();
        if bare && index == 0 {
            ensure(unheard.is_empty(), || format!("the title page has {unheard:?} on it"))?;
            before = Some((1, file.pages.len()));
            continue;
        }
        let [(number, count)] = folios[..] else {
            return Err(format!("the numbers of page {index} are {folios:?}"));
        };
        let follows = match before {
            Some((last, of)) if last < of => (number, count) == (last + 1, of),
            _ => number == 1,
        };
        ensure(follows, || format!("{number} of {count} follows {before:?}"))?;
        before = Some((number, count));
        if number == 1 {
            header = headers.next().unwrap_or(header);
            continue;
        }
        for wanted in [&header.0, &header.1] {
            let wanted = plain(wanted);
            ensure(
                wanted.is_empty() || unheard.iter().any(|line| stands_for(line, &wanted)),
                || format!("page {index} has no header {wanted:?} but {unheard:?}"),
            )?;
        }
    }
    ensure(headers.next().is_none(), || "a section has no first page".to_owned())?;
    ensure(before.is_some_and(|(number, count)| number == count), || {
        format!("the last page is {before:?}")
    })
}

/// Whether a line is a text, or as much of it as there was room for.
fn stands_for(line: &str, text: &str) -> bool {
    line == text || line.strip_suffix('…').is_some_and(|begin| text.starts_with(begin))
}

pub fn known(handout: &Handout) -> Result<(), String> {
    let Handout { document, file, .. } = handout;
    let scribe = Scribe::new(handout);
    let mut known = vec![plain(&document.footer)];
    for table in tables(&document.blocks) {
        known.extend(table.columns.iter().map(|column| plain(&scribe.words(&column.heading))));
        let groups = table.rows.iter().filter(|row| row.kind == RowKind::Group);
        known.extend(groups.filter_map(|row| {
            Some(plain(&format!("{}{}", scribe.words(row.cells.first()?), document.continued)))
        }));
    }
    let sections = document.blocks.iter().filter_map(|block| match block {
        Block::Section { header } => Some(header),
        _ => None,
    });
    let headers: Vec<String> = sections
        .chain([&document.header])
        .flat_map(|(left, right)| [plain(left), plain(right)])
        .collect();
    for (index, page) in file.pages.iter().enumerate() {
        for line in unheard(page) {
            let is_known = folio(&document.folio, &line).is_some()
                || headers.iter().any(|header| stands_for(&line, header))
                || known.iter().any(|known| known.contains(&line));
            ensure(is_known, || format!("{line:?} on page {index} is not heard"))?;
        }
    }
    Ok(())
}
