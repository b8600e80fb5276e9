//! A table to nodes: CSV as in RFC 4180, with a header row. Columns may come in any order and
//! may be left out; a cell with nothing in it says nothing.
//!
//! A number alone is a reading of the scale of its row, so it gets the unit in which the cell
//! under "scale" is written.

use super::super::decode::unknown_key;
use super::super::problem::{Problem, ProblemKind};
use super::super::source::{FileId, Place};
use super::super::tree::{Content, Log, Node, NodeId, Stands, Tree};
use super::formula::shown;
use crate::quantity::nearest::nearest;
use std::collections::BTreeMap;
use std::ops::Range;

/// The columns of a table of weighings: those that say the class, then those of a cup.
pub const COLUMNS: [&str; 15] = [
    "lesson",
    "date",
    "student",
    "canvas",
    "piece",
    "technique",
    "consistency",
    "layer",
    "colour",
    "before",
    "after",
    "tray",
    "scale",
    "checked",
    "note",
];
/// Those that say the class.
const OF_CLASS: [&str; 2] = ["lesson", "date"];
/// Those without which no row says anything.
const NEEDED: [&str; 6] = ["lesson", "student", "canvas", "colour", "before", "after"];
/// Those that hold readings of the scale.
const READINGS: [&str; 3] = ["before", "after", "tray"];

/// Adds the rows of a table to the tree and gives the roots of its classes: mappings as a YAML
/// file of weighings has them, one for each lesson and date.
pub(super) fn grow(tree: &mut Tree, log: &Log, file: FileId, text: &str) -> Vec<NodeId> {
    let mut table = Table { tree, log, file, text };
    let mut records = records(text).into_iter();
    let Some(head) = records.next() else {
        log.at(Some(table.place(0..0)), ProblemKind::NoWeighings);
        return Vec::new();
    };
    let Some(columns) = table.columns(&head) else { return Vec::new() };
    let mut classes: BTreeMap<(String, String), usize> = BTreeMap::new();
    let mut grown: Vec<(Vec<NodeId>, Vec<NodeId>)> = Vec::new();
    for record in records {
        if record.is_open {
            let place = table.place(record.row.start..record.row.start);
            log.at(Some(place), ProblemKind::OpenCell);
            continue;
        }
        if record.cells.len() != columns.len() {
            let (found, columns) = (record.cells.len(), columns.len());
            let kind = ProblemKind::CellCount { found, columns };
            log.at(Some(table.place(record.row)), kind);
            continue;
        }
        if table.tree.is_full_of_rows() {
            log.at(Some(table.place(record.row)), ProblemKind::TooManyRows);
            break;
        }
        let (key, of_class, row) = table.row(&columns, &record);
        let next = grown.len();
        let class = *classes.entry(key).or_insert(next);
        match grown.get_mut(class) {
            Some((_, rows)) => rows.push(row),
            None => grown.push((of_class, vec![row])),
        }
    }
    if grown.is_empty() && log.is_empty() {
        log.at(Some(table.place(head.row)), ProblemKind::NoCups);
    }
    let roots = grown.into_iter().map(|(of_class, rows)| table.class(of_class, rows));
    roots.collect()
}

/// A row of the file.
struct Record {
    /// From 1.
    line: usize,
    row: Range<usize>,
    cells: Vec<(String, Range<usize>)>,
    /// A quotation mark in it has no end.
    is_open: bool,
}

/// The rows that hold something.
fn records(text: &str) -> Vec<Record> {
    let mut reader = csv::ReaderBuilder::new()
        .has_headers(false)
        .flexible(true)
        .trim(csv::Trim::All)
        .from_reader(text.as_bytes());
    let mut records = Vec::new();
    let mut record = csv::StringRecord::new();
    let (mut line, mut counted) = (1, 0);
    // Text cannot fail to be read as text.
    while let Ok(true) = reader.read_record(&mut record) {
        let from = record.position().map_or(0, |at| usize::try_from(at.byte()).unwrap_or(0));
        let scanned = scan(text, from);
        if record.iter().all(str::is_empty) {
            continue;
        }
        let row = scanned.row;
        line += text.get(counted..row.start).unwrap_or_default().matches('\n').count();
        counted = row.start;
        let spans = scanned.cells.into_iter().map(Some).chain(std::iter::repeat(None));
        let cells = record
            .iter()
            .zip(spans)
            .map(|(cell, span)| (shown(cell).to_owned(), span.unwrap_or_else(|| row.clone())));
        let cells = cells.collect();
        records.push(Record { line, row, cells, is_open: scanned.is_open });
    }
    records
}

/// Where the cells of a row are.
struct Scanned {
    row: Range<usize>,
    cells: Vec<Range<usize>>,
    is_open: bool,
}

/// Finds the cells of the first row that starts at `from` or after the line ends there.
fn scan(text: &str, from: usize) -> Scanned {
    let rest = text.get(from..).unwrap_or_default();
    let start = from + rest.len() - rest.trim_start_matches(['\r', '\n']).len();
    let mut cells = Vec::new();
    let (mut cell, mut quotes) = (start, 0_usize);
    let mut end = text.len();
    let bytes = text.as_bytes().get(start..).unwrap_or_default();
    for (at, byte) in bytes.iter().enumerate().map(|(at, byte)| (start + at, byte)) {
        // A quotation mark inside a text is a letter like any other.
        let opens = || quotes > 0 || text.get(cell..at).is_some_and(|cell| cell.trim().is_empty());
        match byte {
            b'"' if opens() => quotes += 1,
            b',' if quotes % 2 == 0 => {
                cells.push(inner(text, cell..at));
                (cell, quotes) = (at + 1, 0);
            }
            b'\r' | b'\n' if quotes % 2 == 0 => {
                end = at;
                break;
            }
            _ => {}
        }
    }
    cells.push(inner(text, cell..end));
    Scanned { row: start..end, cells, is_open: quotes % 2 == 1 }
}

/// The text of a cell, without the space and the quotation marks around it.
fn inner(text: &str, cell: Range<usize>) -> Range<usize> {
    let bare = |range: Range<usize>| {
        let text = text.get(range.clone()).unwrap_or_default();
        let start = range.start + text.len() - text.trim_start().len();
        start..start + text.trim().len()
    };
    let cell = bare(cell);
    let quoted = text
        .get(cell.clone())
        .is_some_and(|text| text.len() > 1 && text.starts_with('"') && text.ends_with('"'));
    if quoted { bare(cell.start + 1..cell.end - 1) } else { cell }
}

struct Table<'a> {
    tree: &'a mut Tree,
    log: &'a Log,
    file: FileId,
    text: &'a str,
}

impl Table<'_> {
    fn place(&self, span: Range<usize>) -> Place {
        Place { file: self.file, span }
    }

    /// Which column each cell of the header names; `None` for one that nobody knows.
    fn columns(&mut self, head: &Record) -> Option<Vec<Option<&'static str>>> {
        let place = Some(self.place(head.row.clone()));
        let [_, _, ..] = head.cells.as_slice() else {
            let first = head.cells.first().map_or("", |(text, _)| text);
            let kind = match first.contains([';', '\t']) {
                true => ProblemKind::NotCommas,
                false => ProblemKind::NoWeighings,
            };
            self.log.at(place, kind);
            return None;
        };
        let mut columns: Vec<Option<&'static str>> = Vec::new();
        let mut meant = Vec::new();
        for (name, span) in &head.cells {
            let name = name.to_lowercase();
            let known = COLUMNS.into_iter().find(|column| **column == name);
            let column = known.filter(|known| !columns.contains(&Some(known)));
            columns.push(column);
            match known {
                Some(known) if column.is_none() => {
                    let first = columns.iter().position(|column| *column == Some(known));
                    let first = first.and_then(|at| head.cells.get(at));
                    let also = first.map(|(_, span)| self.place(span.clone()));
                    let kind = ProblemKind::DuplicateKey { key: name };
                    let (place, path) = (Some(self.place(span.clone())), Vec::new());
                    self.log.add(Problem { place, path, kind, also });
                }
                Some(_) => {}
                None if name.is_empty() => {}
                None => {
                    let nearest = nearest(&name, COLUMNS);
                    meant.extend(nearest);
                    let stands = Stands::UnderKey { key: name, place: self.place(span.clone()) };
                    let node = self.push(span.clone(), stands, Content::Refused);
                    unknown_key(self.tree, self.log, node, (nearest, &COLUMNS));
                }
            }
        }
        let missing = |key: &&'static str| !columns.contains(&Some(key)) && !meant.contains(key);
        for key in NEEDED.into_iter().filter(missing) {
            self.log.at(place.clone(), ProblemKind::NotSaid { key });
        }
        NEEDED.into_iter().all(|key| columns.contains(&Some(key))).then_some(columns)
    }

    /// What a row says of its class, the nodes of that, and the node of the row.
    fn row(
        &mut self,
        columns: &[Option<&'static str>],
        record: &Record,
    ) -> ((String, String), Vec<NodeId>, NodeId) {
        let (key, place) = (format!("row {}", record.line), self.place(record.row.clone()));
        let stands = Stands::UnderKey { key, place };
        let row = self.push(record.row.clone(), stands, Content::Mapping(Vec::new()));
        let cell = |wanted: &str| {
            let at = columns.iter().position(|column| *column == Some(wanted));
            at.and_then(|at| record.cells.get(at)).map_or("", |(text, _)| text.as_str())
        };
        // Where no scale is said, that is told; its readings are no further problem.
        let unit =
            Some(unit(cell("scale"))).filter(|unit| !unit.is_empty()).unwrap_or("g").to_owned();
        let (mut of_class, mut of_cup) = (Vec::new(), Vec::new());
        for (column, (text, span)) in columns.iter().zip(&record.cells) {
            let Some(column) = *column else { continue };
            let mut text = text.clone();
            if READINGS.contains(&column) && is_number(&text) {
                text = format!("{text} {unit}");
            }
            let stands = self.text.get(span.clone()) == Some(text.as_str());
            let (verbatim, empty) = (stands.then_some(span.start), text.is_empty());
            let place = self.place(span.clone());
            let key = Stands::UnderKey { key: column.to_owned(), place };
            let node = self.push(span.clone(), key, Content::Text { text, verbatim, empty });
            let is_of_class = OF_CLASS.contains(&column);
            if !is_of_class && let Some(node) = self.tree.nodes.get_mut(node.0) {
                node.parent = Some(row);
            }
            if is_of_class { of_class.push(node) } else { of_cup.push(node) }
        }
        if let Some(row) = self.tree.nodes.get_mut(row.0) {
            row.content = Content::Mapping(of_cup);
        }
        ((cell("lesson").to_owned(), cell("date").to_owned()), of_class, row)
    }

    /// The mapping of a class.
    fn class(&mut self, mut of_class: Vec<NodeId>, rows: Vec<NodeId>) -> NodeId {
        let cups = Stands::UnderKey { key: "cups".to_owned(), place: self.place(0..0) };
        of_class.push(self.push(0..0, cups, Content::List(rows)));
        self.push(0..0, Stands::Root, Content::Mapping(of_class))
    }

    fn push(&mut self, span: Range<usize>, stands: Stands, content: Content) -> NodeId {
        let place = self.place(span);
        self.tree.nodes.push(Node { place, parent: None, stands, content });
        NodeId(self.tree.nodes.len() - 1)
    }
}

/// The unit behind a number.
fn unit(amount: &str) -> &str {
    amount.trim_start_matches(|c: char| !c.is_alphabetic()).trim()
}

/// Whether a cell holds a number and nothing else.
fn is_number(text: &str) -> bool {
    !text.is_empty() && !text.contains(char::is_alphabetic)
}
