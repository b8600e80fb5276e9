//! Fenced blocks: the parts of a handout that Markdown has no words for.

use super::MarkdownFault;
use super::inline::{colour, plain};
use super::reader::{Reader, fault};
use crate::handout::document::{Block, Card, Fact, Inline, Measure, NoticeKind};
use crate::handout::labels::CupLabel;
use crate::lesson::Sign;

const KNOWN: [&str; 18] = [
    "aside",
    "cards",
    "caution",
    "columns",
    "contents",
    "example",
    "index",
    "key-figures",
    "labels",
    "masthead",
    "page-break",
    "picture",
    "practice",
    "remark",
    "ruled",
    "small",
    "step",
    "table",
];

/// Most ruled lines of one directive: more than a page holds.
const MAX_RULED: u32 = 60;

/// Most columns side by side; more would hold no words.
const MAX_COLUMNS: u32 = 4;

/// Adds what the directive means to `blocks`.
pub(super) fn read(
    reader: &Reader<'_>,
    info: &str,
    body: &str,
    blocks: &mut Vec<Block>,
) -> Result<(), MarkdownFault> {
    let info = info.trim();
    let (name, argument) = info.split_once(' ').unwrap_or((info, ""));
    let argument = argument.trim();
    let block = match name {
        "masthead" => masthead(reader, argument, body)?,
        "titlepage" => title_page(reader, argument, body)?,
        "contents" => Block::Contents { title: argument.to_string() },
        "caution" => notice(reader, NoticeKind::Caution(sign(argument)?), body)?,
        "practice" => notice(reader, NoticeKind::Practice, body)?,
        "example" => notice(reader, NoticeKind::Example, body)?,
        "remark" => notice(reader, NoticeKind::Remark, body)?,
        "aside" => Block::Aside(reader.inner(body)?),
        "table" => captioned_table(reader, body)?,
        "picture" => match reader.pictures().get(argument) {
            Some(picture) => {
                Block::Figure { picture: picture.clone(), caption: reader.line(body)? }
            }
            None => {
                let known: Vec<&str> = reader.pictures().keys().map(String::as_str).collect();
                let message = format!("no picture of this name; there are {}", known.join(", "));
                return Err(fault(&message, argument));
            }
        },
        "key-figures" => Block::KeyFigures(facts(reader, body)?),
        "step" => {
            let number =
                argument.parse().map_err(|_| fault("a step has a number: `step 3`", info))?;
            let (heading, rest) = first_line(body);
            Block::Step { number, heading: reader.line(heading)?, body: reader.inner(rest)? }
        }
        "ruled" => match argument.parse() {
            Ok(lines @ 1..=MAX_RULED) => Block::Ruled { lines },
            _ => return Err(fault("ruled lines are counted from 1 to 60: `ruled 4`", info)),
        },
        "cards" => cards(reader, body)?,
        "labels" => labels(reader, body)?,
        "columns" => columns(reader, argument, info, body)?,
        "index" => index(reader, argument, info, body)?,
        "small" => {
            for block in reader.inner(body)? {
                blocks.push(match block {
                    Block::Paragraph(words) => Block::SmallPrint(words),
                    other => other,
                });
            }
            return Ok(());
        }
        "page-break" => Block::PageBreak,
        _ => {
            let message = format!("directives are {} and titlepage", KNOWN.join(", "));
            return Err(fault(&message, info));
        }
    };
    blocks.push(block);
    Ok(())
}

/// Blocks side by side, as wide as the text or, on demand, as the page.
fn columns(
    reader: &Reader<'_>,
    argument: &str,
    info: &str,
    body: &str,
) -> Result<Block, MarkdownFault> {
    let (count, measure) = match argument.split_once(' ') {
        Some((count, "wide")) => (count, Measure::Page),
        _ => (argument, Measure::Text),
    };
    match count.parse() {
        Ok(count @ 1..=MAX_COLUMNS) => {
            Ok(Block::Columns { count, measure, body: reader.inner(body)? })
        }
        _ => Err(fault("columns are counted from 1 to 4: `columns 2`, `columns 2 wide`", info)),
    }
}

/// Entries with the numbers of their pages. A place that is not there is left out, as in a
/// chapter that somebody wrote anew, and so is an entry without any.
fn index(
    reader: &Reader<'_>,
    columns: &str,
    info: &str,
    body: &str,
) -> Result<Block, MarkdownFault> {
    let Ok(count @ 1..=MAX_COLUMNS) = columns.parse() else {
        return Err(fault("an index has from 1 to 4 columns: `index 2`", info));
    };
    let mut groups: Vec<Vec<Inline>> = vec![Vec::new()];
    for line in body.lines().map(str::trim) {
        let Some((term, places)) = line.split_once('|') else {
            match line {
                "" => groups.push(Vec::new()),
                _ => return Err(fault("an entry is `what | place, place`", line)),
            }
            continue;
        };
        let known = places.split(',').map(str::trim).filter(|name| reader.places().contains(*name));
        let mut pages = known.map(|name| Inline::PageOf(name.to_owned())).peekable();
        if pages.peek().is_none() {
            continue;
        }
        let Some(group) = groups.last_mut() else { continue };
        if !group.is_empty() {
            group.push(Inline::Break);
        }
        group.extend(reader.line(term)?);
        group.extend(pages.flat_map(|page| [Inline::Text(", ".to_owned()), page]));
    }
    let body = groups.into_iter().filter(|group| !group.is_empty()).map(Block::Paragraph);
    Ok(Block::Columns { count, measure: Measure::Text, body: body.collect() })
}

fn first_line(body: &str) -> (&str, &str) {
    body.split_once('\n').unwrap_or((body, ""))
}

fn notice(reader: &Reader<'_>, kind: NoticeKind, body: &str) -> Result<Block, MarkdownFault> {
    let (heading, rest) = first_line(body);
    Ok(Block::Notice { kind, heading: reader.line(heading)?, body: reader.inner(rest)? })
}

fn masthead(reader: &Reader<'_>, kind: &str, body: &str) -> Result<Block, MarkdownFault> {
    let (title, rest) = first_line(body);
    let title = plain(&reader.line(title)?);
    Ok(Block::Masthead { kind: kind.to_string(), title, facts: facts(reader, rest)? })
}

fn title_page(reader: &Reader<'_>, picture: &str, body: &str) -> Result<Block, MarkdownFault> {
    let mut lines = body
        .lines()
        .map(|line| Ok(plain(&reader.line(line)?)))
        .collect::<Result<Vec<String>, MarkdownFault>>()?
        .into_iter();
    let title = lines.next().unwrap_or_default();
    let subtitle = lines.next().unwrap_or_default();
    Ok(Block::TitlePage {
        title,
        subtitle,
        lines: lines.filter(|line| !line.is_empty()).collect(),
        picture: reader.pictures().get(picture).cloned(),
    })
}

fn captioned_table(reader: &Reader<'_>, body: &str) -> Result<Block, MarkdownFault> {
    let (caption, rest) = first_line(body);
    match reader.inner(rest)?.into_iter().next() {
        Some(Block::Table(mut table)) => {
            table.caption = reader.line(caption)?;
            Ok(Block::Table(table))
        }
        _ => Err(fault("a table directive is a caption, an empty line and a table", body)),
    }
}

/// The parts of a line between bars; an escaped bar does not part.
fn parts<'l>(reader: &Reader<'_>, line: &'l str) -> Result<Vec<String>, MarkdownFault> {
    let mut parts: Vec<&'l str> = Vec::new();
    let mut from = 0;
    let mut escaped = false;
    for (at, c) in line.char_indices() {
        match c {
            '|' if !escaped => {
                parts.push(line.get(from..at).unwrap_or_default());
                from = at + 1;
            }
            _ => {}
        }
        escaped = c == '\\' && !escaped;
    }
    parts.push(line.get(from..).unwrap_or_default());
    parts.into_iter().map(|part| Ok(plain(&reader.line(part)?))).collect()
}

fn fact(reader: &Reader<'_>, line: &str) -> Result<Fact, MarkdownFault> {
    let mut parts = parts(reader, line)?.into_iter();
    Ok(Fact {
        label: parts.next().unwrap_or_default(),
        value: parts.next().unwrap_or_default(),
        note: parts.next().unwrap_or_default(),
    })
}

fn facts(reader: &Reader<'_>, body: &str) -> Result<Vec<Fact>, MarkdownFault> {
    body.lines().filter(|line| !line.trim().is_empty()).map(|line| fact(reader, line)).collect()
}

fn cards(reader: &Reader<'_>, body: &str) -> Result<Block, MarkdownFault> {
    let mut cards = Vec::new();
    let mut open: Option<Card> = None;
    for line in body.lines().map(str::trim).filter(|line| !line.is_empty()) {
        if line == "---" {
            cards.extend(open.take());
            continue;
        }
        match &mut open {
            None => {
                let head = fact(reader, line)?;
                open = Some(Card {
                    swatch: colour(&head.note),
                    title: head.label,
                    subtitle: head.value,
                    lines: Vec::new(),
                    foot: String::new(),
                });
            }
            Some(card) => match line.strip_prefix("foot:") {
                Some(foot) => card.foot = plain(&reader.line(foot)?),
                None => card.lines.push(fact(reader, line)?),
            },
        }
    }
    cards.extend(open);
    Ok(Block::Cards(cards))
}

/// Labels with a line `---` between them; the first line of each is its title and swatch.
fn labels(reader: &Reader<'_>, body: &str) -> Result<Block, MarkdownFault> {
    let mut labels: Vec<CupLabel> = Vec::new();
    for text in body.split("\n---\n").map(str::trim).filter(|text| !text.is_empty()) {
        let (head, rest) = first_line(text);
        let head = fact(reader, head)?;
        let (swatch, body) = (colour(&head.value), reader.inner(rest)?);
        labels.push(CupLabel { swatch, title: head.label, body });
    }
    Ok(Block::CupLabels(labels))
}

fn sign(name: &str) -> Result<Sign, MarkdownFault> {
    Sign::from_word(name).ok_or_else(|| {
        let known: Vec<&str> = Sign::ALL.iter().map(|sign| sign.word()).collect();
        fault(&format!("signs are {}", known.join(", ")), name)
    })
}
