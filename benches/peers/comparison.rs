//! The comparison document of `benches/peers`: the same words, tables, bars and form that
//! other makers of PDFs set there, as a whole process and in process.
//!
//! `comparison OUT.pdf CONTENT.json [CONTENT.json …]` sets each content in turn into the same
//! file and prints the seconds of each; `benches/peers/compare.py` makes the contents, runs
//! everybody and prints the ratios.

use std::error::Error;
use std::path::Path;
use std::time::Instant;

use puddlebook::handout::{
    Align, Bar, BarPart, Bars, Block, Column, DecimalMark, Document, Edition, Form, HeadingLevel,
    Inline, Paper, Picture, PictureKind, Row, RowKind, Table,
};
use puddlebook::ink::Faces;
use puddlebook::page::style::{Edges, MM, Running, Style};
use puddlebook::{page, pdf};
use serde::Deserialize;

type Fallible<T> = Result<T, Box<dyn Error>>;

#[derive(Deserialize)]
struct Content {
    title: String,
    lang: String,
    sections: Vec<Section>,
}

#[derive(Deserialize)]
struct Section {
    title: String,
    subs: Vec<Sub>,
    chart: Chart,
    table: Option<Trials>,
    form: Option<Blanks>,
}

#[derive(Deserialize)]
struct Sub {
    title: String,
    paras: Vec<String>,
}

#[derive(Deserialize)]
struct Chart {
    caption: String,
    labels: Vec<String>,
    values: Vec<f64>,
}

#[derive(Deserialize)]
struct Trials {
    caption: String,
    head: Vec<String>,
    rows: Vec<Vec<String>>,
}

#[derive(Deserialize)]
struct Blanks {
    title: String,
    fields: Vec<String>,
    head: Vec<String>,
    rows: usize,
    pages: usize,
}

fn main() -> Fallible<()> {
    let arguments: Vec<String> = std::env::args().skip(1).collect();
    let [out, contents @ ..] = arguments.as_slice() else {
        return Err("comparison OUT.pdf CONTENT.json [CONTENT.json …]".into());
    };
    for content in contents {
        let start = Instant::now();
        make(Path::new(out), Path::new(content))?;
        println!("{:.4} s", start.elapsed().as_secs_f64());
    }
    Ok(())
}

/// Everything from the content to the file, nothing warm.
fn make(out: &Path, content: &Path) -> Fallible<()> {
    let content: Content = serde_json::from_slice(&std::fs::read(content)?)?;
    let document = document(content);
    let faces = Faces::new();
    let pages = page::lay_out_in(&document, style(), &faces);
    std::fs::write(out, pdf::write(&pages, &faces)?)?;
    Ok(())
}

/// The measure, margins and type size that the others have.
fn style() -> Style {
    let mut style = Style::new(Form::Sheet, Paper::A4, Edition::Standard);
    style.running = Running { edges: Edges::Justified, longest: f32::INFINITY };
    style.scale.body.leading = 14.0;
    style.frame.left = 20.0 * MM;
    style.frame.width = 170.0 * MM;
    style.frame.full_width = style.frame.width;
    style.frame.top = 20.0 * MM;
    style.frame.height = (255.0 * MM / 14.0).floor() * 14.0;
    style
}

fn document(content: Content) -> Document {
    let mut blocks = vec![
        Block::Masthead { kind: String::new(), title: content.title.clone(), facts: Vec::new() },
        Block::Contents { title: "Contents".to_owned() },
        Block::PageBreak,
    ];
    let mut anchors = 0;
    let mut heading = |level, text: String| {
        anchors += 1;
        Block::Heading { level, text: plain(text), anchor: format!("h{anchors}") }
    };
    for section in content.sections {
        blocks.push(heading(HeadingLevel::One, section.title));
        let mut chart = Some(section.chart);
        for sub in section.subs {
            blocks.push(heading(HeadingLevel::Two, sub.title));
            blocks.extend(sub.paras.into_iter().map(|text| Block::Paragraph(plain(text))));
            blocks.extend(chart.take().map(figure));
        }
        blocks.extend(section.table.map(trials));
        if let Some(form) = section.form {
            for page in 0..form.pages {
                blocks.push(Block::PageBreak);
                blocks.push(match page {
                    0 => heading(HeadingLevel::One, form.title.clone()),
                    _ => heading(HeadingLevel::Two, format!("{} (continued)", form.title)),
                });
                blocks.push(Block::Paragraph(fields(&form)));
                blocks.push(blank_rows(&form, page));
            }
            blocks.push(Block::PageBreak);
        }
    }
    if blocks.last() == Some(&Block::PageBreak) {
        blocks.pop();
    }
    Document {
        title: content.title,
        author: None,
        language: content.lang,
        decimal: DecimalMark::Point,
        date: None,
        form: Form::Sheet,
        paper: Paper::A4,
        edition: Edition::Standard,
        header: (String::new(), String::new()),
        footer: String::new(),
        folio: "Page {page} of {pages}".to_owned(),
        continued: ", continued".to_owned(),
        tick_box: "box to tick".to_owned(),
        ruled_line: "line {line} of {lines}".to_owned(),
        cut_to: String::new(),
        blocks,
    }
}

fn plain(text: String) -> Vec<Inline> {
    vec![Inline::Text(text)]
}

fn figure(chart: Chart) -> Block {
    let said: Vec<String> =
        chart.labels.iter().zip(&chart.values).map(|(label, v)| format!("{label} {v}")).collect();
    let alt = format!("{}. Bars: {}.", chart.caption, said.join(", "));
    let bar = |(label, value): (String, f64)| Bar {
        label,
        parts: vec![BarPart { label: value.to_string(), value, swatch: None }],
        mark: None,
    };
    let bars = chart.labels.into_iter().zip(chart.values).map(bar).collect();
    let kind = Bars { title: String::new(), axis: "mean rating".to_owned(), bars };
    let picture = Picture { alt, kind: PictureKind::Bars(kind) };
    Block::Figure { picture, caption: plain(chart.caption) }
}

fn trials(table: Trials) -> Block {
    let row = |cells: Vec<String>| Row {
        kind: RowKind::Body,
        cells: cells.into_iter().map(plain).collect(),
    };
    Block::Table(Table {
        caption: plain(table.caption),
        columns: table.head.into_iter().map(column).collect(),
        rows: table.rows.into_iter().map(row).collect(),
    })
}

fn column(heading: String) -> Column {
    Column { heading: plain(heading), align: Align::Left }
}

fn blank(width_mm: f32, label: String) -> Inline {
    Inline::Blank { width_mm, label }
}

fn fields(form: &Blanks) -> Vec<Inline> {
    let field =
        |name: &String| [Inline::Text(format!(" {name}: ")), blank(35.0, name.to_lowercase())];
    form.fields.iter().flat_map(field).collect()
}

fn blank_rows(form: &Blanks, page: usize) -> Block {
    let row = |row: usize| {
        let number = (page * form.rows + row + 1).to_string();
        let cell = |head: &String| vec![blank(28.0, format!("{head}, step {number}"))];
        let blanks = form.head.iter().skip(1).map(cell);
        Row {
            kind: RowKind::Body,
            cells: std::iter::once(plain(number.clone())).chain(blanks).collect(),
        }
    };
    Block::Table(Table {
        caption: Vec::new(),
        columns: form.head.iter().cloned().map(column).collect(),
        rows: (0..form.rows).map(row).collect(),
    })
}
